//! Several tax rates and none, in front of a buyer: one tap changes the sale in hand, and no other.

use super::*;
use fivebar_core::ledger::fold::TaxBy;

/// Three stools at 150 each, 5.5 % inside; a rate of 2 % beside it.
fn stools(more: &str) -> Maker {
    let shop = "2026-05-04 08:00 -05:00 workshop USD inch\ntill tax 0.055 inside\n";
    Maker::told(&format!("{shop}{more}job stools \"Stools\" 3 spec\ntag 150 stools\n"), "stools")
}

const LOW: &str = "tax-rate \"Reduced\" 0.02 top as low\n";

/// Tax line and rate of the last sale.
fn last(maker: &Maker) -> (String, String) {
    let sales = shop(&maker.app).job(maker.job).unwrap().selling.sales;
    let sale = sales.last().unwrap();
    (sale.tax.to_string(), sale.rate.to_string())
}

fn low(maker: &Maker) -> TaxBy {
    TaxBy::Named(maker.app.own.workshop().taxes[0].id)
}

#[test]
fn one_rate_stays_as_simple_as_it_was() {
    let mut maker = stools("");
    let job = maker.job;
    maker.tap(Tap::Offer(job)).hides(&["Tax of this sale"]).bargain(BargainTap::PayAndHours);
    maker.shows(&["Tax of this sale", "5.5 %", "usual, inside", "No tax"]).bargain(BargainTap::Tax(TaxBy::Untaxed));
    maker.bargain(BargainTap::PayAndHours).shows(&["Sold at 150"]).bargain(BargainTap::Sold);
    assert_eq!(last(&maker), ("0.00 USD".into(), "0".into()));
    // The next buyer pays tax again.
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Sold);
    assert_eq!(last(&maker), ("7.82 USD".into(), "0.055".into()));
    let mut untaxed = Maker::told("2026-05-04 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 1 spec\ntag 150 stools\n", "stools");
    let job = untaxed.job;
    untaxed.tap(Tap::Offer(job)).bargain(BargainTap::PayAndHours).hides(&["Tax of this sale"]);
}

/// On top at 2 % the buyer of a tag of 150 hands over 153; what a buyer sees goes along.
#[test]
fn a_rate_is_one_tap_on_the_offer_itself() {
    let mut maker = stools(LOW);
    let (job, low) = (maker.job, low(&maker));
    maker.tap(Tap::Offer(job)).shows(&["Tax of this sale", "Reduced", "2 %, on top", "Sold at 150"]);
    maker.bargain(BargainTap::Tax(low)).shows(&["Sold at 153"]).tap(Tap::Show(job)).shows(&["$153", "with tax"]).tap(Tap::Hide);
    maker.bargain(BargainTap::Sold);
    assert_eq!(last(&maker), ("3.00 USD".into(), "0.02".into()));
    // Left without a sale, the next offer is taxed as usual.
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Tax(low)).tap(Tap::Close).tap(Tap::Offer(job)).shows(&["Sold at 150"]);
}

/// What is agreed without tax is handed over without it.
#[test]
fn an_agreement_keeps_the_tax_it_was_spoken_with() {
    let mut maker = stools(LOW);
    let (job, sum) = (maker.job, maker.money("140"));
    maker
        .offer("140")
        .bargain(BargainTap::Tax(TaxBy::Untaxed))
        .tap(Tap::Agree(AgreeTap::Open(job, Some(sum))))
        .tap(Tap::Agree(AgreeTap::Save));
    let agreed = shop(&maker.app).job(job).unwrap().selling.agreements[0].id;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed)))).tap(Tap::Deal(DealTap::HandedOver));
    assert_eq!(last(&maker), ("0.00 USD".into(), "0".into()));
}

#[test]
fn the_list_and_its_paper_say_what_is_not_taxed_as_usual() {
    let one = "job desk \"Desk\" 1 spec\ntag 500 desk\njob-tax desk none\n";
    let mut maker = stools(&format!("{LOW}{one}"));
    maker.shows(&["tax as each says", "no tax"]).tap(Tap::Paper).shows(&["tax as each says", ">no tax<"]);
    stools(LOW).shows(&["by card, tax inside"]).hides(&["no tax"]);
}

/// 5.5 % on top of 150 is 158.25.
const TOP: &str = "2026-05-04 08:00 -05:00 workshop USD inch\ntill tax 0.055 top\n";

fn on_top(n: u32) -> Maker {
    Maker::told(&format!("{TOP}{LOW}job stools \"Stools\" {n} spec\ntag 150 stools\n"), "stools")
}

/// The tax chosen for one buyer is gone once they are: the face, a new agreement and the next offer go by the job's own.
#[test]
fn what_one_buyer_is_taxed_with_is_not_the_next_ones() {
    let of = |tap| Tap::Agree(tap);
    for leaving in
        [vec![Tap::Bargain(BargainTap::NoSale)], vec![Tap::Close], vec![of(AgreeTap::Open(on_top(3).job, None)), of(AgreeTap::Save)]]
    {
        let mut maker = on_top(3);
        let (job, free) = (maker.job, AgreeTap::Open(maker.job, None));
        maker.offer("140").bargain(BargainTap::Tax(TaxBy::Untaxed));
        let said = format!("{leaving:?}");
        for tap in leaving {
            maker.tap(tap);
        }
        let before = shop(&maker.app).job(job).unwrap().selling.agreements.len();
        assert_eq!(maker.app.price.over, Over::Nothing, "{said}");
        maker.tap(Tap::Show(job)).shows(&["$158.25", "with tax"]).tap(Tap::Hide);
        maker.tap(Tap::More(job)).tap(of(free)).shows(&["158.25"]).tap(of(AgreeTap::Save));
        let made = shop(&maker.app).job(job).unwrap().selling.agreements[before].clone();
        assert_eq!((made.sum.to_string(), made.tax), ("158.25 USD".into(), None), "{said}");
    }
}

/// One stool at 100, agreed without tax.
fn untaxed() -> (Maker, Id) {
    let mut maker = on_top(1);
    let (job, sum) = (maker.job, maker.money("100"));
    maker.offer("100").bargain(BargainTap::Tax(TaxBy::Untaxed)).tap(Tap::Agree(AgreeTap::Open(job, Some(sum))));
    maker.tap(Tap::Agree(AgreeTap::Save));
    let agreed = shop(&maker.app).job(job).unwrap().selling.agreements[0].id;
    (maker, agreed)
}

/// Rate of the agreement that stands, and its sum.
fn stands(maker: &Maker) -> (String, Option<String>) {
    let job = shop(&maker.app).job(maker.job).unwrap();
    let open = job.selling.open().next().unwrap();
    (open.sum.to_string(), open.tax.map(|tax| tax.rate.to_string()))
}

/// 200 of an agreement without tax are 200: there is no tax to add, on the form and on the offer.
#[test]
fn a_change_of_order_reckons_by_the_tax_it_was_agreed_with() {
    let (mut maker, agreed) = untaxed();
    let job = maker.job;
    let of = |tap| Tap::Agree(tap);
    maker.tap(of(AgreeTap::Change(job, agreed, None))).hides(&["with tax"]).tap(of(AgreeTap::Pad(agree::Field::Price)));
    maker.hides(&["It is without tax"]).press("200").tap(of(AgreeTap::PadBeforeTax)).tap(of(AgreeTap::Save));
    assert_eq!(stands(&maker), ("200.00 USD".into(), Some("0".into())));
    maker.tap(Tap::Offer(job)).hides(&["number pad, with tax"]).bargain(BargainTap::Pad).hides(&["It is without tax"]);
    maker.press("210").bargain(BargainTap::PadBeforeTax).shows(&["Change the order to 210"]);
}

/// The usual tax is a choice too where another was agreed.
#[test]
fn a_change_of_order_goes_back_to_the_usual_tax() {
    let (mut maker, _) = untaxed();
    let job = maker.job;
    maker.offer("211").shows(&["aria-pressed=\"true\"><span>No tax"]).bargain(BargainTap::Tax(TaxBy::Usual));
    maker.shows(&["aria-pressed=\"true\"><span>5.5 %"]);
    let (agreed, sum) = (shop(&maker.app).job(job).unwrap().selling.open().next().unwrap().id, maker.money("211"));
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, Some(sum)))).tap(Tap::Agree(AgreeTap::Save));
    assert_eq!(stands(&maker), ("211.00 USD".into(), Some("0.055".into())));
}

/// The form says the tax of what is agreed, and another is a tap: what the tag comes to goes along, a sum that was named stays.
#[test]
fn an_agreement_says_its_tax_and_takes_another() {
    let mut maker = on_top(3);
    let (job, of) = (maker.job, |tap| Tap::Agree(tap));
    maker.tap(of(AgreeTap::Open(job, None))).shows(&[
        "Tax of this sale",
        "aria-pressed=\"true\"><span>5.5 %",
        "Agreed price, with tax",
        "158.25",
    ]);
    maker.tap(of(AgreeTap::Tax(TaxBy::Untaxed))).shows(&["aria-pressed=\"true\"><span>No tax", ">150<"]).hides(&["with tax", "158.25"]);
    maker.tap(of(AgreeTap::Pad(agree::Field::Price))).press("120").tap(of(AgreeTap::PadDone)).tap(of(AgreeTap::Tax(TaxBy::Usual)));
    maker.shows(&[">120<", "Agreed price, with tax"]).tap(of(AgreeTap::Tax(TaxBy::Untaxed))).tap(of(AgreeTap::Save));
    assert_eq!(stands(&maker), ("120.00 USD".into(), Some("0".into())));
    // Where nothing is taxed there is nothing to choose.
    let mut plain = Maker::told("2026-05-04 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 1 spec\ntag 150 stools\n", "stools");
    let job = plain.job;
    plain.tap(of(AgreeTap::Open(job, None))).hides(&["Tax of this sale"]);
}

/// What was agreed with the usual tax is that rate, once: a rate is no second choice beside itself.
#[test]
fn the_rate_that_was_agreed_is_no_second_choice_beside_itself() {
    let mut maker = on_top(1);
    let (job, sum) = (maker.job, maker.money("100"));
    maker.offer("100").bargain(BargainTap::Tax(TaxBy::Usual)).tap(Tap::Agree(AgreeTap::Open(job, Some(sum))));
    maker.tap(Tap::Agree(AgreeTap::Save));
    let usual = crate::app::taxes::tax(&maker.app, Currency::USD, TaxBy::Usual);
    let choices = crate::app::taxes::choices(&maker.app, Currency::USD, TaxBy::Agreed(usual));
    assert!(choices.contains(&(TaxBy::Usual, true)) && !choices.iter().any(|(by, _)| matches!(by, TaxBy::Agreed(_))), "{choices:?}");
}
