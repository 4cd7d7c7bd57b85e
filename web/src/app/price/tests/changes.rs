//! A change of order: what becomes of its deposit, and of payments that were planned.

use super::super::agree::{AgreeTap, Field};
use super::super::deal::DealTap;
use super::super::parts::PartsTap;
use super::*;

fn told(lines: &str) -> Maker {
    Maker::told(&format!("2026-05-22 08:14 -05:00 workshop USD inch\njob stools \"Chair\" 1 order\n{lines}"), "stools")
}

fn open_deal(maker: &mut Maker) -> Id {
    let row = sheet(&maker.app).unwrap().agreed[0].clone();
    maker.tap(Tap::Deal(DealTap::Open(row.job, PaidOf::Agreed(row.agreed))));
    row.agreed
}

fn price(maker: &mut Maker, sum: &str) {
    maker.tap(Tap::Agree(AgreeTap::Pad(Field::Price))).press(sum).tap(Tap::Agree(AgreeTap::PadDone));
}

/// A deposit that was asked of another sum is no more than the price; one that is typed stands in its own way.
#[test]
fn the_deposit_of_a_changed_order_goes_down_to_its_price() {
    let mut maker = told("agree 300 for 1 stools fetched deposit 150 as deal\npay 150 for stools bank agreed deal\n");
    let (job, agreed) = (maker.job, open_deal(&mut maker));
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None)));
    price(&mut maker, "100");
    maker.shows(&["100, deposit 100"]);
    price(&mut maker, "600");
    maker.shows(&["600, deposit 150"]);
    maker.tap(Tap::Agree(AgreeTap::Pad(Field::Deposit))).press("700").tap(Tap::Agree(AgreeTap::PadDone));
    maker.tap(Tap::Agree(AgreeTap::Save)).shows(&["is more than the price"]).say(Msg::Common(Common::Understood));
    maker.tap(Tap::Close);
    open_deal(&mut maker);
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None)));
    price(&mut maker, "100");
    maker.tap(Tap::Agree(AgreeTap::Save)).hides(&["is more than the price"]).shows(&["Take back: agreed 100"]);
}

/// 530 with 265 ahead, then in three of which 212 came in, changed to 600: the payments took the place of the deposit, so none is asked; that they
/// are to be planned anew is said until they are, or it is in one sum after all.
#[test]
fn payments_take_the_place_of_the_deposit_and_are_planned_anew() {
    let story = "agree 530 for 1 stools fetched deposit 265 as deal\nparts deal on stools 212 due 2026-05-22 159 due 2026-06-05 159\n\
        pay 212 for stools bank agreed deal\n";
    let again = "payments are to be planned anew";
    for how in [PartsTap::Save, PartsTap::Whole] {
        let mut maker = told(story);
        let (job, agreed) = (maker.job, open_deal(&mut maker));
        maker.hides(&[again]).tap(Tap::Agree(AgreeTap::Change(job, agreed, None)));
        price(&mut maker, "600");
        maker.shows(&[again]).hides(&["deposit 265"]).tap(Tap::Agree(AgreeTap::Save));
        let agreed = open_deal(&mut maker);
        maker.shows(&[again, "388.00"]).hides(&["53.00"]);
        if how == PartsTap::Save {
            // Once all of it came in there is nothing left to plan.
            let rest = maker.money("388");
            maker.tap(Tap::Deal(DealTap::Received(rest))).shows(&["All of it is paid."]).hides(&[again]).say(Msg::Common(Common::TakeBack));
            open_deal(&mut maker);
            maker.shows(&[again]);
        }
        maker.tap(Tap::Parts(PartsTap::Open(job, agreed))).shows(&["In one sum after all"]).tap(Tap::Parts(how));
        open_deal(&mut maker);
        maker.hides(&[again]);
    }
}
