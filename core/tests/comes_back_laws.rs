//! What goes back with pieces, or with an order that comes to nothing, is what had come in by then: what comes in later is not gone.

mod maker;

use fivebar_core::ledger::decide::{BringBackOrder, Command, HandBackOrder, LetKeepOrder, PaidOf, PayOrder, SaleCommand, SellOrder};
use fivebar_core::ledger::fold::{self, ComesBack, Job};
use fivebar_core::ledger::kind::sale::{AgreementCancelled, Carried, Paid, PriceAgreed, SaleReversed};
use fivebar_core::quantity::{Currency, Decimal, Id, Money};
use fivebar_core::story::tell;
use maker::Maker;
use proptest::prelude::*;

const USD: Currency = Currency::USD;
const PAIR: &str = "2026-03-03 08:00 -05:00 workshop USD inch\ntill fee 0.03 fixed 0.30\njob pair \"Pair\" 5 order\n";

/// After these lines: what came in, what is due (below nothing: over), and what fees took.
#[track_caller]
fn check(lines: &str, sums: [&str; 3]) {
    let story = tell(&format!("{PAIR}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    let job = fold::job(&story.book, story.names.job("pair").unwrap()).unwrap();
    let found = [job.selling.received(USD), job.due(), job.selling.fees(USD)].map(|sum| sum.unwrap().amount().to_string());
    assert_eq!(found, sums.map(str::to_owned), "{lines}");
}

/// Handed over, not paid, made good and handed over again: all of it comes in after that, whatever it is written to.
#[test]
fn what_comes_in_after_a_piece_came_back_came_in() {
    let one = "agree 100 for 1 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\nbring-back 1 of sale one on pair again\n";
    check(one, ["0", "100", "0"]);
    check(&format!("{one}pay 100 for pair bank agreed deal\nsell 1 pair for 100 agreed deal\n"), ["100", "0", "0"]);
    // A deposit of 40 that is kept for it, then 60 by card: 60 x 0.03 + 0.30 = 2.10.
    let begun =
        "agree 100 for 1 pair fetched deposit 40 as deal\npay 40 for pair bank agreed deal\nsell 1 pair for 100 agreed deal as one\n";
    let rest = "pay 60 for pair card agreed deal\nsell 1 pair for 100 agreed deal\n";
    check(&format!("{begun}bring-back 1 of sale one on pair kept 40 again\n{rest}"), ["100", "0", "2.1"]);
    let two = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\nsell 1 pair for 100 agreed deal as two\n";
    check(&format!("{two}bring-back 1 of sale two on pair again\nsell 1 pair for 100 bank agreed deal\n"), ["200", "0", "0"]);
    // Of two in one sale one comes back; 200 x 0.03 + 0.30 = 6.30.
    let three = "agree 300 for 3 pair fetched as deal\nsell 2 pair for 200 agreed deal as one\nbring-back 1 of sale one on pair again\n";
    check(&format!("{three}pay 200 for pair card agreed deal\n"), ["200", "100", "6.3"]);
    // No order: 150 x 0.03 + 0.30 = 4.80.
    let none = "sell 1 pair for 100 as one\nreverse sale one on pair\nsell 1 pair for 100 as two\nsell 1 pair for 50 as three\n";
    check(&format!("{none}pay 150 for pair card sale three\n"), ["150", "0", "4.8"]);
}

/// A debt that is given up is filled by no later money, with an order and without one.
#[test]
fn what_comes_in_after_a_debt_was_given_up_came_in() {
    let two = "sell 1 pair for 100 as one\nsell 1 pair for 100 as two\n";
    check(&format!("{two}let-keep 30 of sale one on pair\npay 170 for pair bank sale one\n"), ["170", "0", "0"]);
    let three = format!("{two}let-keep 100 of sale one on pair\nsell 1 pair for 50 as three\n");
    check(&format!("{three}pay 150 for pair bank sale three\n"), ["150", "0", "0"]);
    let agreed = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\nsell 1 pair for 100 agreed deal as two\n";
    let given_up = format!("{agreed}let-keep 30 of sale one on pair\n");
    check(&format!("{given_up}undo two\npay 170 for pair bank agreed deal\n"), ["170", "0", "0"]);
    check(&format!("{given_up}undo two\nsell 1 pair for 100 bank agreed deal\n"), ["170", "0", "0"]);
    let back = "bring-back 1 of sale two on pair again\nsell 1 pair for 100 bank agreed deal\n";
    check(&format!("{given_up}{back}"), ["170", "0", "0"]);
}

/// What was over of a sale, for others of its order, stays theirs when it comes back.
#[test]
fn what_was_paid_for_others_stays_when_a_piece_comes_back() {
    let begun = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\npay 120 for pair bank sale one\n";
    check(begun, ["120", "80", "0"]);
    check(&format!("{begun}bring-back 1 of sale one on pair again\n"), ["20", "180", "0"]);
}

/// What went back by hand goes back once: it is nobody's debt, and is not over again.
#[test]
fn what_went_back_by_hand_is_over_no_more() {
    let begun = "agree 90 for 1 pair fetched as deal\nsell 1 pair for 90 agreed deal as one\npay 90 for pair bank sale one\n\
        let-keep 20 of sale one on pair\nbring-back 1 of sale one on pair kept 70 again\nagree 50 for 1 pair fetched replaces deal as less\n";
    check(begun, ["70", "-20", "0"]);
    check(&format!("{begun}hand-back 20 for pair bank agreed less\n"), ["50", "0", "0"]);
    let two = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 bank agreed deal as one\nsell 1 pair for 100 bank agreed deal as two\n\
        bring-back 1 of sale two on pair kept 100 again\nsell 1 pair for 70 agreed deal as less\n";
    check(two, ["200", "-30", "0"]);
    check(&format!("{two}hand-back 30 for pair bank agreed deal\n"), ["170", "0", "0"]);
}

/// What was given up, or paid, is struck after the piece came back: what comes in then came in.
#[test]
fn what_is_struck_after_a_piece_came_back_takes_no_later_money() {
    let begun = "agree 100 for 1 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\npay 60 for pair bank sale one\n";
    let given_up = "let-keep 40 of sale one on pair as off\nbring-back 1 of sale one on pair kept 60 again\nundo off\n";
    check(&format!("{begun}{given_up}"), ["60", "40", "0"]);
    check(&format!("{begun}{given_up}pay 40 for pair bank agreed deal\n"), ["100", "0", "0"]);
    let two = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\npay 100 for pair bank sale one as paid\n\
        bring-back 1 of sale one on pair again\nundo paid\n";
    check(two, ["0", "200", "0"]);
    check(&format!("{two}pay 80 for pair bank agreed deal\n"), ["80", "120", "0"]);
}

/// A payment fails after something went back: what went back did all the same, as far as there was money of the same order, and is owed again; and no
/// more is kept than is left after it.
#[test]
fn what_went_back_did_though_a_payment_failed() {
    let two = "sell 2 pair for 200 as one\npay 100 for pair bank sale one as first\npay 100 for pair bank sale one\nbring-back 1 of sale one on pair\n";
    check(two, ["100", "0", "0"]);
    check(&format!("{two}undo first\n"), ["0", "100", "0"]);
    let one = "sell 1 pair for 100 as one\npay 40 for pair bank sale one as first\npay 60 for pair bank sale one\n";
    check(&format!("{one}let-keep 30 of sale one on pair\nundo first\n"), ["30", "40", "0"]);
    check(&format!("{one}bring-back 1 of sale one on pair kept 40\nundo first\n"), ["0", "0", "0"]);
    let order = "agree 200 for 2 pair fetched as deal\npay 100 for pair bank agreed deal as first\nsell 1 pair for 100 agreed deal as one\n\
        pay 100 for pair bank agreed deal\nsell 1 pair for 100 agreed deal as two\nbring-back 1 of sale two on pair again\nundo first\n";
    check(order, ["0", "200", "0"]);
    // What was to be kept of it and never came is not made good by what another piece was paid.
    let kept = "agree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\npay 100 for pair bank sale one\n\
        sell 1 pair for 100 agreed deal as two\npay 100 for pair bank sale two as last\nbring-back 1 of sale two on pair kept 100 ends\n";
    check(kept, ["200", "0", "0"]);
    check(&format!("{kept}undo last\n"), ["100", "0", "0"]);
    let ahead = "agree 100 for 1 pair fetched as deal\npay 20 for pair bank agreed deal as first\npay 30 for pair bank agreed deal\n";
    check(&format!("{ahead}cancel deal on pair kept 20\nundo first\n"), ["0", "0", "0"]);
}

/// Two phones that do not know of each other: what each says went back went back, and what came in for the one that is back is over, nobody else's.
#[test]
fn what_two_phones_say_went_back_did() {
    let begun = "sell 1 pair for 100 as anna\npay 60 for pair bank sale anna\nsell 1 pair for 100 as ben\n";
    let less = |told: &Told, sum: &str| LetKeepOrder {
        job: told.job,
        sale: told.job().selling.sales[0].id,
        sum: told.maker.money(sum),
        when: None,
    };
    let back = |told: &Told| {
        let sale = told.job().selling.sales[0].id;
        SaleCommand::BringBack(BringBackOrder { job: told.job, sale, n: 1, kept: None, ends: false, again: false, when: None })
    };
    let pay = |told: &Told| {
        let (sum, of) = (told.maker.money("40"), PaidOf::Sale(told.job().selling.sales[0].id));
        SaleCommand::Pay(PayOrder { job: told.job, sum, paid: Paid::Bank, fee: None, of, when: None })
    };
    let keep = |sum: &'static str| move |told: &Told| SaleCommand::LetKeep(less(told, sum));
    // What each does, what came in for all of it, what Ben owes, and what is over of Anna's.
    type Does<'a> = &'a dyn Fn(&Told) -> SaleCommand;
    let rows: [(Does<'_>, Does<'_>, [&str; 3]); 6] = [
        // 40 will not be paid, and all comes back, 60 with it.
        (&keep("40"), &back, ["0", "100", "0"]),
        (&back, &keep("40"), ["0", "100", "0"]),
        // 20 go back with 60 off, twice: 20 are left of what came in, and nothing of the price.
        (&keep("60"), &keep("60"), ["20", "100", "20"]),
        // All comes back on both, with her 60.
        (&back, &back, ["0", "100", "0"]),
        // She brings it back with her 60; her other 40 came in on the other phone.
        (&back, &pay, ["40", "100", "40"]),
        (&pay, &back, ["40", "100", "40"]),
    ];
    for (nth, (one, other, sums)) in rows.into_iter().enumerate() {
        let mut told = Told::begin(begun);
        let mut far = Told { maker: told.maker.far("far"), job: told.job, in_hand: told.in_hand };
        for (phone, does, minutes) in [(&mut told, one, 1), (&mut far, other, 2)] {
            phone.maker.at((2026, 3, 3), 730, -5);
            phone.maker.pass(minutes);
            let command = does(phone);
            phone.maker.order(Command::Sale(command));
        }
        told.maker.book = told.maker.merged(&far.maker);
        let job = told.job();
        let over = Money::sum(USD, job.selling.over(USD).unwrap().iter().map(|over| over.sum)).unwrap();
        let owed = Money::sum(USD, job.selling.unpaid(USD).unwrap().iter().map(|(_, lacks)| *lacks)).unwrap();
        let found = [job.selling.received(USD).unwrap(), owed, over].map(|sum| sum.amount().to_string());
        assert_eq!(found, sums.map(str::to_owned), "{nth}");
    }
}

/// What one does next.
#[derive(Clone, Copy, Debug)]
enum Does {
    /// So many thousandths of what is due come in, for the order or for a sale.
    Pays(i64, usize),
    /// One more is handed over, of the order where it goes on.
    HandsOver,
    /// So many pieces of a sale come back, and so many thousandths of what came in for them are kept.
    BringsBack(usize, u32, i64, bool),
    /// So much of what a sale lacks will not be paid.
    GivesUp(usize, i64),
    /// A sale is taken back.
    TakesBack(usize, i64),
    /// The order comes to nothing, and so much of what lies ahead is kept.
    Cancels(i64),
    /// The order is one for so much for each of its pieces.
    Changes(i64),
    /// What is over goes back by hand.
    HandsBack(usize),
}

fn does() -> impl Strategy<Value = Does> {
    let part = || prop_oneof![Just(0), Just(1_000), 1i64..1_000];
    prop_oneof![
        4 => (part(), 0usize..4).prop_map(|(part, nth)| Does::Pays(part, nth)),
        4 => Just(Does::HandsOver),
        3 => (0usize..4, 1u32..3, part(), any::<bool>()).prop_map(|(nth, n, part, again)| Does::BringsBack(nth, n, part, again)),
        2 => (0usize..4, part()).prop_map(|(nth, part)| Does::GivesUp(nth, part)),
        1 => (0usize..4, part()).prop_map(|(nth, part)| Does::TakesBack(nth, part)),
        1 => part().prop_map(Does::Cancels),
        2 => (1i64..50).prop_map(Does::Changes),
        3 => (0usize..2).prop_map(Does::HandsBack),
    ]
}

struct Told {
    maker: Maker,
    job: Id,
    /// What came in, less what was said to go back.
    in_hand: Money,
}

impl Told {
    fn begin(lines: &str) -> Told {
        let story = tell(&format!("{PAIR}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let mut maker = Maker::new(USD);
        maker.book = story.book.clone();
        maker.at((2026, 3, 3), 720, -5);
        let job = story.names.job("pair").unwrap();
        let in_hand = fold::job(&maker.book, job).unwrap().selling.received(USD).unwrap();
        Told { maker, job, in_hand }
    }

    fn job(&self) -> Job {
        fold::job(&self.maker.book, self.job).unwrap()
    }

    /// The order, and what its doing adds to the money in hand.
    fn command(&self, does: Does) -> Option<(SaleCommand, Money)> {
        let (job, of, none) = (self.job(), self.job, Money::zero(USD));
        let selling = &job.selling;
        let part = |of: Money, part: i64| Money::book(of.amount() * Decimal::from(part) / Decimal::ONE_THOUSAND, USD).unwrap();
        let sale = |nth: usize| selling.standing().nth(nth);
        let less = |sum: Money| none.minus(sum).unwrap();
        Some(match does {
            Does::Pays(so, nth) => {
                let (due, of_it) = match (selling.open().next(), sale(nth)) {
                    (Some(open), None) => (selling.still_due(USD, open).unwrap(), PaidOf::Agreed(open.id)),
                    (_, Some(sale)) => (selling.lacks(USD, sale).unwrap(), PaidOf::Sale(sale.id)),
                    (None, None) => return None,
                };
                let sum = part(due, so);
                (SaleCommand::Pay(PayOrder { job: of, sum, paid: Paid::Bank, fee: None, of: of_it, when: None }), sum)
            }
            Does::HandsOver => {
                let open = selling.open().next();
                let (agreed, left) = (open.map(|open| open.id), open.map_or(1, |open| open.n - open.sold));
                let rest = open.map_or(self.maker.money("33.35"), |open| open.sum.minus(open.sold_for).unwrap());
                let sum = Money::book(rest.amount().max(Decimal::ZERO) / Decimal::from(left), USD).unwrap();
                let (paid, carried, heard) = (None, Some(Carried::Fetched), false);
                let order = SellOrder { job: of, n: 1, sum, tax: None, agreed, paid, carried, buyer: None, when: None, heard };
                (SaleCommand::Sell(order), none)
            }
            Does::BringsBack(nth, n, so, again) => {
                let sale = sale(nth)?;
                let came = selling.came_for(USD, (sale.id, ComesBack { n, coin: None })).unwrap();
                let kept = part(came, so);
                let order = BringBackOrder { job: of, sale: sale.id, n, kept: Some(kept), ends: false, again, when: None };
                (SaleCommand::BringBack(order), less(came.minus(kept).unwrap()))
            }
            Does::GivesUp(nth, so) => {
                let sale = sale(nth)?;
                let sum = part(selling.lacks(USD, sale).unwrap(), so);
                (SaleCommand::LetKeep(LetKeepOrder { job: of, sale: sale.id, sum, when: None }), none)
            }
            Does::TakesBack(nth, so) => {
                let sale = sale(nth)?;
                let came = selling.paid(USD, sale.id).unwrap();
                let kept = part(came, so);
                let fact = SaleReversed { job: of, sale: sale.id, kept: Some(kept), when: None, back: None };
                (SaleCommand::Reverse(fact), less(came.minus(kept).unwrap()))
            }
            Does::Cancels(so) => {
                let open = selling.open().next()?;
                let came = selling.received_ahead(USD, open.id).unwrap();
                let kept = part(came, so);
                let fact = AgreementCancelled { job: of, agreed: open.id, kept: Some(kept), no_show: None, back: None };
                (SaleCommand::Cancel(fact), less(came.minus(kept).unwrap()))
            }
            Does::Changes(each) => {
                let open = selling.open().next()?;
                let n = open.n.saturating_sub(open.sold);
                let sum = Money::whole(Decimal::from(each) * Decimal::from(n), USD).unwrap();
                let (carried, replaces) = (Carried::Fetched, Some(open.id));
                let (deposit, due, buyer, rate, side) = (None, None, None, None, None);
                (SaleCommand::Agree(PriceAgreed { job: of, n, sum, carried, deposit, due, buyer, replaces, rate, side }), none)
            }
            Does::HandsBack(nth) => {
                let over = *selling.over(USD).unwrap().get(nth)?;
                let (sum, agreed, sale) = (over.sum, over.agreed, over.sale);
                (SaleCommand::HandBack(HandBackOrder { job: of, sum, paid: Paid::Bank, agreed, sale, when: None }), less(sum))
            }
        })
    }

    /// Nobody is asked for what is over of the same, and nothing is over that was never there.
    #[track_caller]
    fn holds(&self, all: &[Does]) {
        let job = self.job();
        let selling = &job.selling;
        let sum = |sums: Vec<Money>| Money::sum(USD, sums).unwrap();
        let over = sum(selling.over(USD).unwrap().iter().map(|over| over.sum).collect());
        let orders = selling.open_orders();
        let owed = selling.unpaid(USD).unwrap().into_iter().map(|(_, lacks)| lacks);
        let due = sum(orders.iter().map(|order| selling.due_of_order(USD, order).unwrap()).chain(owed).collect());
        assert_eq!(job.due().unwrap(), due.minus(over).unwrap(), "{all:?}: {due} less {over}");
    }

    /// What cannot be done is refused, and nothing comes of it.
    fn does(&mut self, does: Does) {
        let Some((command, adds)) = self.command(does) else { return };
        self.maker.pass(1);
        if self.maker.try_order(Command::Sale(command)).is_ok() {
            self.in_hand = self.in_hand.plus(adds).unwrap();
        }
    }
}

proptest! {
    /// What came in is the payments less what was said to go back, each as it was when it was said; none of it comes or goes later.
    #[test]
    fn what_came_in_is_what_was_said(begun in 0usize..3, all in prop::collection::vec(does(), 0..14)) {
        let begun = ["", "agree 133.40 for 4 pair fetched as deal\n", "agree 66.70 for 2 pair fetched as deal\npay 20.01 for pair bank agreed deal\n"][begun];
        let mut told = Told::begin(begun);
        for (nth, one) in all.iter().enumerate() {
            told.does(*one);
            let found = told.job().selling.received(USD).unwrap();
            prop_assert_eq!(found, told.in_hand, "{:?}", &all[..=nth]);
            told.holds(&all[..=nth]);
        }
    }
}
