//! Law of an order that is paid bit by bit: whatever comes in ahead, in parts, in notes or by bank, whatever the order is changed to and what goes
//! back, what was received and what is due, less what is over, is the price and the coins that were written down as rounding.

use fivebar_core::ledger::fold::{self, Job};
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::story::{Story, tell};
use proptest::prelude::*;

/// The smallest coin, in cents.
const COIN: i64 = 5;

/// What a maker does with the order.
#[derive(Clone, Copy, Debug)]
enum Does {
    /// So much of what is due comes in, in thousandths; in notes or by bank.
    Pays(i64, bool),
    /// The order is another sum from now on, in cents.
    Changes(i64),
    /// It is to come in by two parts, the first so many thousandths.
    Parts(i64),
    /// What is over goes back, all of it; in notes or by bank.
    HandsBack(bool),
}

fn does() -> impl Strategy<Value = Does> {
    prop_oneof![
        4 => (1i64..1_000, any::<bool>()).prop_map(|(part, notes)| Does::Pays(part, notes)),
        2 => any::<bool>().prop_map(|notes| Does::Pays(1_000, notes)),
        2 => (1i64..90_000).prop_map(Does::Changes),
        1 => (1i64..1_000).prop_map(Does::Parts),
        1 => any::<bool>().prop_map(Does::HandsBack),
    ]
}

/// The order as it is reckoned by hand, in cents, and the lines that tell it.
struct Order {
    lines: String,
    changed: usize,
    price: i64,
    received: i64,
    rounded: i64,
    has_parts: bool,
}

fn coins(cents: i64) -> i64 {
    (cents + COIN / 2) / COIN * COIN
}

fn told(cents: i64) -> String {
    format!("{}.{:02}", cents / 100, cents % 100)
}

fn how(notes: bool) -> &'static str {
    if notes { "notes" } else { "bank" }
}

impl Order {
    fn new(price: i64, deposit: i64) -> Order {
        let lines = format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\ntill tax 0 inside cash 0.05\njob stool \"Stool\" 1 order\nagree {} for 1 stool fetched deposit {} as deal0\n",
            told(price),
            told(deposit)
        );
        Order { lines, changed: 0, price, received: 0, rounded: 0, has_parts: false }
    }

    /// What is due; below nothing where more came in.
    fn lacks(&self) -> i64 {
        self.price + self.rounded - self.received
    }

    fn does(&mut self, does: Does) {
        let (lacks, deal) = (self.lacks(), self.changed);
        match does {
            Does::Pays(part, notes) if 0 < lacks => {
                let sum = (lacks * part / 1_000).max(1);
                self.lines += &format!("pay {} for stool {} agreed deal{deal}\n", told(sum), how(notes));
                let pays_off = notes && (sum == lacks || sum == coins(lacks));
                let came = if pays_off { coins(lacks) } else { sum };
                self.received += came;
                self.rounded += if pays_off { came - lacks } else { 0 };
            }
            Does::HandsBack(notes) if lacks < 0 => {
                self.lines += &format!("hand-back {} for stool {} agreed deal{deal}\n", told(-lacks), how(notes));
                let back = if notes { coins(-lacks) } else { -lacks };
                self.received -= back;
                self.rounded -= back + lacks;
            }
            Does::Changes(price) => {
                self.changed += 1;
                self.lines += &format!("agree {} for 1 stool fetched replaces deal{deal} as deal{}\n", told(price), self.changed);
                (self.price, self.has_parts) = (price, false);
            }
            Does::Parts(part) => {
                let first = (self.price * part / 1_000).max(1);
                if first < self.price {
                    self.lines += &format!("parts deal{deal} on stool {} {}\n", told(first), told(self.price - first));
                    self.has_parts = true;
                }
            }
            Does::Pays(..) | Does::HandsBack(_) => {}
        }
    }
}

fn cents(sum: Money) -> i64 {
    i64::try_from((sum.amount() * Decimal::ONE_HUNDRED).normalize()).unwrap()
}

fn job(story: &Story) -> Job {
    fold::job(&story.book, story.names.job("stool").unwrap()).unwrap()
}

proptest! {
    #[test]
    fn staged_sums_add_up(price in 1i64..90_000, deposit in 0i64..1_000, does in prop::collection::vec(does(), 0..9), notes in any::<bool>()) {
        let mut order = Order::new(price, (price * deposit / 1_000).max(1));
        for one in does {
            order.does(one);
            let story = tell(&order.lines);
            prop_assert_eq!(&story.refused, &[], "{}", order.lines);
            let (job, usd) = (job(&story), Currency::USD);
            let selling = &job.selling;
            let agreement = selling.open().next().unwrap();
            let over = selling.over(usd).unwrap().iter().map(|over| cents(over.sum)).sum::<i64>();
            let (received, due) = (cents(selling.received(usd).unwrap()), cents(selling.still_due(usd, agreement).unwrap()));
            prop_assert_eq!(received + due - over, order.price + order.rounded, "{}", order.lines);
            prop_assert_eq!((received, due, over), (order.received, order.lacks().max(0), (-order.lacks()).max(0)), "{}", order.lines);
            prop_assert_eq!(cents(selling.rounded(usd).unwrap()), order.rounded, "{}", order.lines);
            if order.has_parts {
                let parts = selling.parts_due(usd, agreement).unwrap();
                prop_assert_eq!(parts.iter().map(|(_, lacks)| cents(*lacks)).sum::<i64>(), due, "{}", order.lines);
            }
        }
        // Handed over and paid, nothing is due and nothing over but what came in beyond the price.
        order.lines += &format!("sell 1 stool for {} {} agreed deal{}\n", told(order.price), how(notes), order.changed);
        let story = tell(&order.lines);
        prop_assert_eq!(&story.refused, &[], "{}", order.lines);
        let (job, lacks) = (job(&story), order.lacks());
        let came = if notes { coins(lacks.max(0)) } else { lacks.max(0) };
        prop_assert_eq!(cents(job.selling.received(Currency::USD).unwrap()), order.received + came, "{}", order.lines);
        prop_assert_eq!(cents(job.due().unwrap()), lacks.min(0), "{}", order.lines);
    }
}

/// 0.02 are left when it is handed over in notes, and the smallest coin is 0.05: nobody can hand them over, and nobody owes them.
#[test]
fn what_no_coin_pays_is_not_owed_after_the_hand_over() {
    let order = "2026-03-02 09:00 -05:00 workshop USD inch\ntill tax 0 inside cash 0.05\njob stool \"Stool\" 1 order\n\
        agree 29.79 for 1 stool fetched as deal\npay 29.77 for stool bank agreed deal\nsell 1 stool for 29.79 notes agreed deal\n";
    let story = tell(order);
    assert_eq!(story.refused, []);
    let (job, usd) = (job(&story), Currency::USD);
    let found = [job.selling.received(usd), job.due(), job.selling.rounded(usd)].map(|sum| cents(sum.unwrap()));
    assert_eq!(found, [2977, 0, -2]);
}
