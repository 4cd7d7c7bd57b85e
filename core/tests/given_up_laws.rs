//! Law of a debt that is given up: whatever is paid, struck, put back and given up, in whatever order and on two phones, what came in is the sum of the
//! payments that stand, and what is owed, less what is over, is what the prices lack of it.

mod maker;

use fivebar_core::ledger::decide::{BookCommand, Command, LetKeepOrder, PaidOf, PayOrder, SaleCommand};
use fivebar_core::ledger::fold::{self, Job};
use fivebar_core::ledger::kind::sale::{Paid, PiecesBroughtBack};
use fivebar_core::quantity::{Currency, Decimal, Id, Money};
use fivebar_core::story::tell;
use maker::Maker;
use proptest::prelude::*;

const USD: Currency = Currency::USD;

/// What a maker does on one of two phones.
#[derive(Clone, Copy, Debug)]
enum Does {
    /// So much of what is due comes in, in thousandths.
    Pays(i64),
    /// So much of what the sale lacks will not be paid, in thousandths.
    GivesUp(i64),
    /// A payment, or what was given up, is struck.
    Strikes(usize),
    /// One of those stands again.
    PutsBack(usize),
    /// Each has what the other wrote.
    Meets,
}

fn does() -> impl Strategy<Value = (usize, Does)> {
    let does = prop_oneof![
        4 => (1i64..=1_000).prop_map(Does::Pays),
        3 => (1i64..=1_000).prop_map(Does::GivesUp),
        3 => any::<usize>().prop_map(Does::Strikes),
        3 => any::<usize>().prop_map(Does::PutsBack),
        2 => Just(Does::Meets),
    ];
    (0usize..2, does)
}

/// One sold later by itself; and one of two that were agreed, with a deposit, the other still to be handed over.
const SOLD: [&str; 3] = [
    "job more \"More\" 2 spec\nsell 1 more for 150.01 as one\n",
    "job more \"More\" 2 order\nagree 300.01 for 2 more fetched as deal\npay 40 for more bank agreed deal\nsell 2 more for 300.01 agreed deal as one\n",
    "job more \"More\" 2 order\nagree 300.01 for 2 more fetched as deal\npay 40 for more bank agreed deal\nsell 1 more for 150.01 agreed deal as one\n",
];

struct Two {
    phones: [Maker; 2],
    job: Id,
    sale: Id,
    struck: Vec<Id>,
}

impl Two {
    fn begin(lines: &str) -> Two {
        let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\ntill tax 0.055 inside\n{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let mut first = Maker::new(USD);
        first.book = story.book.clone();
        let second = first.far("second");
        let job = story.names.job("more").unwrap();
        let sale = fold::job(&story.book, job).unwrap().selling.sales[0].id;
        let mut two = Two { phones: [first, second], job, sale, struck: vec![] };
        for (phone, minute) in [(0, 720), (1, 725)] {
            two.phones[phone].at((2026, 3, 2), minute, -5);
        }
        two
    }

    fn job(&self, phone: usize) -> Job {
        fold::job(&self.phones[phone].book, self.job).unwrap()
    }

    /// What cannot be done is refused, and nothing comes of it.
    fn does(&mut self, phone: usize, does: Does) {
        let job = self.job(phone);
        let (sale, of) = (job.selling.sale(self.sale).unwrap(), self.job);
        let lacks = sale.sum.minus(job.selling.paid(USD, sale.id).unwrap()).unwrap();
        let part = |of: Money, part: i64| Money::book(of.amount() * Decimal::from(part) / Decimal::ONE_THOUSAND, USD).unwrap();
        let command = match does {
            Does::Pays(so) => {
                let open = job.selling.open().next();
                let due = open.map_or(lacks, |open| job.selling.still_due(USD, open).unwrap());
                let to = open.map_or(PaidOf::Sale(self.sale), |open| PaidOf::Agreed(open.id));
                Command::Sale(SaleCommand::Pay(PayOrder { job: of, sum: part(due, so), paid: Paid::Bank, fee: None, of: to, when: None }))
            }
            Does::GivesUp(so) => {
                Command::Sale(SaleCommand::LetKeep(LetKeepOrder { job: of, sale: self.sale, sum: part(lacks, so), when: None }))
            }
            Does::Strikes(nth) => {
                let payments = job.selling.payments.iter().map(|payment| payment.id);
                let lines: Vec<Id> = payments.chain(sale.back.iter().map(|back| back.entry)).collect();
                let Some(line) = lines.get(nth % lines.len().max(1)) else { return };
                self.struck.push(*line);
                Command::Book(BookCommand::Strike { line: *line })
            }
            Does::PutsBack(nth) => {
                let Some(line) = self.struck.get(nth % self.struck.len().max(1)) else { return };
                Command::Book(BookCommand::Restore { act: *line })
            }
            Does::Meets => {
                let book = self.phones[0].merged(&self.phones[1]);
                self.phones.iter_mut().for_each(|phone| phone.book = book.clone());
                return;
            }
        };
        self.phones[phone].pass(2);
        let _ = self.phones[phone].try_order(command);
    }

    #[track_caller]
    fn holds(&self, phone: usize) {
        let job = self.job(phone);
        let selling = &job.selling;
        let sum = |sums: Vec<Money>| Money::sum(USD, sums).unwrap();
        let came = sum(selling.payments.iter().map(|payment| payment.sum).collect());
        assert_eq!(selling.received(USD).unwrap(), came);
        let unpaid = selling.unpaid(USD).unwrap();
        assert!(unpaid.iter().all(|(_, lacks)| Decimal::ZERO < lacks.amount()), "{unpaid:?}");
        let orders = selling.open_orders();
        let due = orders.iter().map(|order| selling.due_of_order(USD, order).unwrap()).chain(unpaid.iter().map(|(_, lacks)| *lacks));
        let (due, over) = (sum(due.collect()), sum(selling.over(USD).unwrap().iter().map(|over| over.sum).collect()));
        assert_eq!(job.due().unwrap(), due.minus(over).unwrap(), "{due:?} {over:?}");
    }
}

proptest! {
    #[test]
    fn what_came_in_is_what_payments_say(of in 0usize..3, all in prop::collection::vec(does(), 0..14)) {
        let mut two = Two::begin(SOLD[of]);
        for (phone, does) in all {
            two.does(phone, does);
            (0..2).for_each(|phone| two.holds(phone));
        }
        two.does(0, Does::Meets);
        two.holds(0);
    }
}

/// 100 for one that is handed over; 70 came in. They are struck on one phone and the debt is given up there, while they stood on the other: where
/// both meet the 70 are not gone.
#[test]
fn a_payment_that_is_put_back_after_its_debt_was_given_up_came_in() {
    let mut two = Two::begin("job more \"More\" 1 spec\nsell 1 more for 100 as one\npay 70 for more bank sale one\n");
    let payment = two.job(0).selling.payments[0].id;
    let of = |two: &mut Two, phone: usize, command| {
        two.phones[phone].pass(2);
        two.phones[phone].order(command);
    };
    of(&mut two, 0, Command::Book(BookCommand::Strike { line: payment }));
    two.does(0, Does::Meets);
    two.does(0, Does::GivesUp(1_000));
    of(&mut two, 1, Command::Book(BookCommand::Restore { act: payment }));
    two.does(0, Does::Meets);
    let job = two.job(0);
    let over = job.selling.over(USD).unwrap();
    let figures = [job.selling.received(USD).unwrap(), job.due().unwrap(), over[0].sum].map(|sum| sum.to_string());
    assert_eq!(figures, ["70.00 USD", "-70.00 USD", "70.00 USD"]);
}

/// The same on one phone: nothing is due by then, and the payment is not put back before what was given up is struck.
#[test]
fn a_payment_is_not_put_back_while_its_debt_is_given_up() {
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\njob more \"More\" 1 spec\nsell 1 more for 100 as one\n";
    let lines = "pay 70 for more bank sale one as paid\nundo paid\nlet-keep 100 of sale one on more as kept\n";
    for (then, received) in [("restore paid", None), ("undo kept\nrestore paid", Some("70"))] {
        let story = tell(&format!("{start}{lines}{then}"));
        let job = fold::job(&story.book, story.names.job("more").unwrap()).unwrap();
        let (came, due) = (job.selling.received(USD).unwrap(), job.due().unwrap());
        let is_refused = format!("{:?}", story.refused).contains("MoreThanDue");
        assert_eq!((is_refused, came.amount().to_string().as_str()), (received.is_none(), received.unwrap_or("0")), "{then}");
        assert_eq!(due.amount().to_string(), if is_refused { "0" } else { "30" }, "{then}");
    }
}

/// Written before what went back was written down: of 100 that were given up 70 go back as soon as they came, as ever.
#[test]
fn what_does_not_say_what_went_back_is_read_as_before() {
    let mut two = Two::begin("job more \"More\" 1 spec\nsell 1 more for 100 as one\npay 70 for more bank sale one\n");
    let (job, sale, sum) = (two.job, two.sale, two.phones[0].money("100"));
    let tax = two.job(0).selling.sales[0].tax;
    for (back, received) in [(None, "0.00 USD"), (Some(Money::zero(USD)), "70.00 USD")] {
        let mut phone = two.phones[0].far("other");
        phone.pass(1);
        phone.note(PiecesBroughtBack { job, sale, n: 0, sum, tax, kept: None, when: None, back });
        two.phones[1].book = phone.book;
        assert_eq!(two.job(1).selling.received(USD).unwrap().to_string(), received);
    }
}
