//! Absurd money: each figure is refused by name, with what was met and the limit, and nothing is written.

use fivebar_core::ledger::decide::{Command, MoneyCommand, Much, Now, On, PaidOf, PayOrder, SaleCommand, SellOrder, decide};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::TillSet;
use fivebar_core::ledger::kind::sale::{OfferHeard, Paid};
use fivebar_core::quantity::{Currency, Decimal, Key, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::story::tell;

const TOLD: &str = "
2026-05-04 08:00 +02:00 workshop USD inch
job stool \"Stool\" 3 spec
spend 40 glue on stool
tag 145 stool
agree 100 for 1 stool fetched deposit 20 as deal
sell 1 stool for 145 as one
";

/// The last line of these is refused so.
#[track_caller]
fn check(lines: &str, why: &str) {
    let story = tell(&format!("{TOLD}{lines}"));
    let [(_, refused)] = story.refused.as_slice() else { panic!("{lines}: {:?}", story.refused) };
    assert_eq!(refused.to_string(), format!("refused: {why}"), "{lines}");
}

#[test]
fn each_is_refused_by_name_and_limit() {
    check("offer 400 for 0 stool", "NothingAsked");
    check("offer 400 for 9999 stool", "NotThatMany { asked: 9999, there: 2 }");
    check("offer 400 for 1000000 stool", "TooManyAtOnce { would_be: 1000000, most: 9999 }");
    check("sell 3 stool for 145", "NotThatMany { asked: 3, there: 1 }");
    check("agree 100 for 9 stool fetched", "NotThatMany { asked: 9, there: 1 }");
    check("agree 100 for 1 stool fetched deposit 101", "MoreThanPrice { met: 101.00 USD, price: 100.00 USD }");
    check("pay 300 for stool bank sale one", "MoreThanDue { met: 300.00 USD, due: 245.00 USD }");
    check("pay 0 for stool bank sale one", "NothingAsked");
    check("cancel deal on stool kept 50", "MoreThanReceived { met: 50.00 USD, received: 0.00 USD }");
    check("consign 1 stool tag 145 share 1.4", "ShareOutOfRange { met: 1.4 }");
    check("consign 9 stool tag 145 share 0.4", "NotThatMany { asked: 9, there: 1 }");
    check("job many \"Many\" 1000000 spec", "TooManyAtOnce { would_be: 1000000, most: 9999 }");
    check("till tax 4", "ShareOutOfRange { met: 4 }");
    check("till fee 1", "ShareOutOfRange { met: 1 }");
    check("till tax 0.5 fee 0.7", "FeesEatThePrice { tax: 0.5, fee: 0.7 }");
    check("till tax 0.5\ntill fee 0.7", "FeesEatThePrice { tax: 0.5, fee: 0.7 }");
    check("till fee 0.7\ntill tax 0.5 top", "FeesEatThePrice { tax: 0.5, fee: 0.7 }");
    check("till cash 1000.01", "CoinOutOfRange { met: 1000.01 USD, least: 0.01 USD, most: 1000.00 USD }");
    check("tag 0 stool", "NoPrice { met: 0.00 USD }");
    check("settle 146 stool", "MoreThanPrice { met: 146.00 USD, price: 145.00 USD }");
    check("rate tax 0.6 profit 0.8", "RateOutOfReach { tax: 0.6, profit: 0.8 }");
    check("rate hours 100 logged 0", "NoHours");
    check("rate hours 100 logged 200", "LoggedBeyondAll { logged: Span(720000000), all: Span(360000000) }");
    check("spend 40 of 32 at 34.90 finish on stool", "MoreThanPack { used: 40, holds: 32 }");
    check("guess stool buys 1.5", "ShareOutOfRange { met: 1.5 }");
    check("guess stool k 1", "GuessTooFlat { met: 1, above: 1.05 }");
    check("guess stool asks 1000000", "TooManyAsk { met: 1000000, most: 100 }");
}

/// Sums and shares below nothing, which no story can tell.
#[test]
fn nothing_below_nothing() {
    let story = tell(TOLD);
    let job = story.names.job("stool").unwrap();
    let met = Money::book(Decimal::from(-5), Currency::USD).unwrap();
    let check = |command: Command, why: Refusal| {
        let now = Now { wall: story.now, chance: [1; 10] };
        assert_eq!(decide(&story.book, &command, now).err(), Some(why), "{command:?}");
    };
    let below = Refusal::MoneyBelowNothing { met };
    check(
        Command::Sale(SaleCommand::Hear(OfferHeard { job, n: 1, sum: met, paid: None, carried: None, said: None, asked: None })),
        below.clone(),
    );
    let sale = SellOrder { job, n: 1, sum: met, tax: None, agreed: None, paid: None, carried: None, buyer: None, when: None, heard: false };
    check(Command::Sale(SaleCommand::Sell(sale)), below.clone());
    let agreed = story.book.entries().find(|(entry, _)| entry.fact.kind() == "PriceAgreed").unwrap().0.id;
    let pay = PayOrder { job, sum: met, paid: Paid::Notes, fee: None, of: PaidOf::Agreed(agreed), when: None };
    check(Command::Sale(SaleCommand::Pay(pay)), below.clone());
    check(Command::Money(MoneyCommand::SetTag { job, sum: met }), below.clone());
    let spend = MoneyCommand::Spend { on: On::Job(job), much: Much::Whole(met), kind: Key::read("glue").unwrap(), what: None, when: None };
    check(Command::Money(spend), below);
    let tax = Decimal::new(-1, 1);
    let (currency, exact) = (Currency::USD, Some(Exact(tax)));
    let till = TillSet { tax: exact, ..TillSet::of(currency) };
    check(Command::Money(MoneyCommand::SetTill(till)), Refusal::BelowNothing { met: tax });
}
