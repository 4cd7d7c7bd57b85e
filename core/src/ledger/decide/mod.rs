//! Orders: a command and a book give the facts of one act, or a refusal. Nothing is written here.

mod bench;
mod book;
mod breaks;
mod brought;
mod cans;
mod dates;
mod estimate;
mod gallery;
mod haul;
mod helper;
mod job;
mod left;
mod mend;
mod money;
mod plan;
mod restore;
mod rests;
mod sale;
mod sought;
mod stock;
mod taxes;
mod turned;
mod uncut;
mod wait;
mod wood;

pub use bench::{BenchCommand, start_from};
pub use book::{BookCommand, PHOTOS_MOST};
pub use brought::{BringBackOrder, LetKeepOrder};
pub use dates::{DatesCommand, OFF_MOST};
pub use estimate::EstimateCommand;
pub use haul::{HaulCommand, PileFacts, labels_lying};
pub use job::JobCommand;
pub use left::{LeftOver, left_of};
pub use money::{MoneyCommand, Much, On};
pub use plan::{PlanCommand, SAW_MOST, without_plans};
pub use sale::{GiveUpOrder, HandBackOrder, PaidOf, PayOrder, SaleCommand, SellOrder};
pub use stock::{Figures, Lying, OnTheScale, StockCommand};
pub use taxes::{TAX_NAME_MOST, TAXES_MOST};
pub use turned::{Turned, turned};
pub use uncut::{LeftBy, Uncut, left_by};
pub use wait::{Laid, WaitCommand};
pub use wood::WoodCommand;

use super::Book;
use super::entry::{Entry, Fact};
use super::stamp::Clock;
use crate::quantity::{Id, Listed, Wall};
use crate::refusal::Answer;

/// What a person orders.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    Haul(HaulCommand),
    Stock(Lying, StockCommand),
    Wood(WoodCommand),
    Plan(PlanCommand),
    Bench(BenchCommand),
    Wait(WaitCommand),
    Job(JobCommand),
    Estimate(EstimateCommand),
    Dates(DatesCommand),
    Money(MoneyCommand),
    Sale(SaleCommand),
    Book(BookCommand),
}

/// The moment of a command, taken once, and the chance its names are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Now {
    pub wall: Wall,
    pub chance: [u8; 10],
}

/// The facts of one act, each with the name its entry will have.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    now: Now,
    facts: Vec<(Id, Fact)>,
}

impl Act {
    pub fn new(now: Now) -> Act {
        Act { now, facts: vec![] }
    }

    pub fn now(&self) -> Now {
        self.now
    }

    /// Adds a fact; returns the name of its entry, for the facts that follow.
    pub fn add(&mut self, fact: impl Into<Fact>) -> Id {
        let id = Id::new(self.now.wall.at, counted(self.now.chance, self.facts.len()));
        self.facts.push((id, fact.into()));
        id
    }

    pub fn facts(&self) -> &[(Id, Fact)] {
        &self.facts
    }

    /// The entries, stamped in order and after all in the book that they rest on. Several share the name of the first as their act.
    pub fn stamped(self, book: &Book, clock: &mut Clock) -> Vec<Entry> {
        let act = if 1 < self.facts.len() { self.facts.first().map(|(id, _)| *id) } else { None };
        let wall = self.now.wall;
        let newest = self.facts.iter().filter_map(|(id, fact)| book.newest_before(*id, fact)).max();
        newest.into_iter().for_each(|stamp| clock.lift_over(stamp));
        self.facts.into_iter().map(|(id, fact)| Entry { id, stamp: clock.next(wall.at), wall, act, fact }).listed()
    }
}

/// The chance of the nth fact of an act: its last four bytes count on, so that no two facts have one name.
fn counted(chance: [u8; 10], nth: usize) -> [u8; 10] {
    let [a, b, c, d, e, f, last @ ..] = chance;
    let [w, x, y, z] = u32::from_be_bytes(last).wrapping_add(u32::try_from(nth).unwrap_or(u32::MAX)).to_be_bytes();
    [a, b, c, d, e, f, w, x, y, z]
}

/// What a command gives, seen from the book as it stands.
///
/// # Errors
/// The refusal that names what can't be and its limit; nothing is changed.
pub fn decide(book: &Book, command: &Command, now: Now) -> Answer<Act> {
    let mut act = Act::new(now);
    match command {
        Command::Haul(command) => haul::decide(book, command, &mut act)?,
        Command::Stock(at, command) => stock::decide(book, *at, command, &mut act)?,
        Command::Wood(command) => wood::decide(book, command, &mut act)?,
        Command::Plan(command) => plan::decide(book, command, &mut act)?,
        Command::Bench(command) => bench::decide(book, command, &mut act)?,
        Command::Wait(command) => wait::decide(book, command, &mut act)?,
        Command::Job(command) => job::decide(book, command, &mut act)?,
        Command::Estimate(command) => estimate::decide(book, command, &mut act)?,
        Command::Dates(command) => dates::decide(book, command, &mut act)?,
        Command::Money(command) => money::decide(book, command, &mut act)?,
        Command::Sale(command) => sale::decide(book, command, &mut act)?,
        Command::Book(command) => book::decide(book, command, &mut act)?,
    }
    left::settle(book, &mut act);
    Ok(act)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::kind::book::Forgotten;
    use crate::quantity::Set;

    /// A design may have more than 256 parts and operations, and each is an entry with a name of its own.
    #[test]
    fn inv08_no_two_facts_of_an_act_have_one_name() {
        for chance in [[0; 10], [7; 10], [255; 10]] {
            let mut act = Act::new(Now { wall: Wall::default(), chance });
            let person = Id::new(Wall::default().at, [1; 10]);
            let mut names = Set::new();
            assert!((0..70_000).all(|_| names.insert(act.add(Forgotten { person }))), "{chance:?}");
        }
    }
}
