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
