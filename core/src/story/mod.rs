//! A story: a maker's days written as text, a command with its clock time on each line. docs/STORIES.md settles the grammar.
//!
//! Pure: text comes in, a book comes out. A line that can't be read or is refused is told with its number, and the story goes on.
//! Ids and stamps come from the moment and the number of the line, so the same story always gives the same bytes.

mod bench;
mod book;
mod dates;
mod design;
mod estimate;
mod haul;
mod job;
mod money;
mod names;
mod sale;
mod size;
mod stock;
mod taxes;
mod time;
mod wait;
mod words;

pub use words::Unread;

use crate::ledger::decide::{Command, Now, decide};
use crate::ledger::people::People;
use crate::ledger::{Book, Clock, Device, Fact};
use crate::quantity::{Currency, Id, Moment, Offset, Units, Wall};
use crate::refusal::Refusal;
use names::Names;
use std::fmt;
use words::Words;

/// The demo of five plant stands.
pub const STANDS: &str = include_str!("../../../tests/stories/stands.txt");
/// The demo of a hall shoe bench.
pub const BENCH: &str = include_str!("../../../tests/stories/bench.txt");

/// Why a line changed nothing.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// It does not follow the grammar.
    Unread(Unread),
    /// The app would have refused it.
    Refused(Refusal),
}

/// For us and for whoever writes a story.
impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Why::Unread(Unread { met: Some(met), expected }) => write!(f, "unreadable: met `{met}`, expected {expected}"),
            Why::Unread(Unread { met: None, expected }) => write!(f, "unreadable: the line ends, expected {expected}"),
            Why::Refused(refusal) => write!(f, "refused: {refusal:?}"),
        }
    }
}

impl From<Refusal> for Why {
    fn from(refusal: Refusal) -> Why {
        Why::Refused(refusal)
    }
}

impl From<Unread> for Why {
    fn from(unread: Unread) -> Why {
        Why::Unread(unread)
    }
}

/// What a line of a story comes to.
type Told = Result<(), Why>;

/// What a story gave.
#[derive(Clone, Debug)]
pub struct Story {
    pub book: Book,
    pub people: People,
    /// Lines that changed nothing, by their number from 1.
    pub refused: Vec<(u32, Why)>,
    /// The moment of the last line.
    pub now: Wall,
    /// What the names of the story name.
    pub names: Names,
}

/// Tells a story from its first line to its last.
pub fn tell(text: &str) -> Story {
    let mut teller = Teller::new();
    for line in text.lines() {
        teller.line = teller.line.saturating_add(1);
        let before = (teller.story.clone(), teller.clock, teller.workshop);
        if let Err(why) = teller.tell(line) {
            // What was written before the fault was met is taken back; only the time of the story goes on.
            let now = teller.story.now;
            (teller.story, teller.clock, teller.workshop) = before;
            teller.story.now = now;
            teller.story.refused.push((teller.line, why));
        }
    }
    teller.story
}

/// Who tells: the story so far, and what the next line builds on.
struct Teller {
    story: Story,
    clock: Clock,
    line: u32,
    orders: u8,
    workshop: (Currency, Units),
}

impl Teller {
    fn new() -> Teller {
        let story = Story {
            book: Book::default(),
            people: People::new(),
            refused: vec![],
            now: Wall::new(Moment::at(0), Offset::UTC),
            names: Names::default(),
        };
        let clock = Clock::new(Device::new([0; 8]), None);
        Teller { story, clock, line: 0, orders: 0, workshop: (Currency::USD, Units::Inch) }
    }

    fn tell(&mut self, line: &str) -> Told {
        let mut words = Words::of(line);
        if words.is_done() {
            return Ok(());
        }
        self.story.now = time::read(&mut words, self.story.now)?;
        self.orders = 0;
        self.story.names.to_mark = None;
        let verb = words.word("a command")?;
        match verb {
            "workshop" | "person" | "forget" | "undo" | "restore" | "copy" => book::tell(self, verb, &mut words),
            "start" | "stop" | "stopped" | "done" | "confirm" | "mend" | "recall" | "helper" | "batch" => {
                bench::tell(self, verb, &mut words)
            }
            "job" | "about" | "part" | "plan" | "plan-cost" | "end" | "reopen" | "typical" | "not-typical" | "lesson" => {
                job::tell(self, verb, &mut words)
            }
            "old-job" | "estimate" | "all-planned" => estimate::tell(self, verb, &mut words),
            "spend" | "credit" | "open-can" | "use-can" | "empty-can" | "belongs" | "tool" | "tool-sold" | "came-back" | "back-in-can"
            | "drive" | "rate" | "till" | "boards" | "tag" | "settle" => money::tell(self, verb, &mut words),
            "offer" | "asked" | "like" | "resale" | "guess" | "agree" | "parts" | "cancel" | "sell" | "pay" | "hand-back" | "consign"
            | "gallery" | "not-for-sale" | "reverse" | "bring-back" | "let-keep" => sale::tell(self, verb, &mut words),
            "keep-design" | "rename-design" | "drop-design" | "make-again" | "parts-of" => design::tell(self, verb, &mut words),
            verb if dates::VERBS.contains(&verb) => dates::tell(self, verb, &mut words),
            verb if wait::VERBS.contains(&verb) => wait::tell(self, verb, &mut words),
            verb if taxes::VERBS.contains(&verb) => taxes::tell(self, verb, &mut words),
            verb if stock::VERBS.contains(&verb) => stock::tell(self, verb, &mut words),
            _ => haul::tell(self, verb, &mut words),
        }?;
        if words.has("as") {
            let (name, marked) = (words.word("a name")?.to_owned(), self.story.names.to_mark.or(self.story.names.last_act));
            marked.map(|id| self.story.names.marks.insert(name, id));
        }
        Ok(words.done()?)
    }

    /// The act of a command is written into the book; the ids and facts of its entries come back.
    fn order(&mut self, command: &Command) -> Result<Vec<(Id, Fact)>, Why> {
        let [a, b, c, d] = self.line.to_be_bytes();
        let chance = [0, 0, 0, a, b, c, d, 0, self.orders, 0];
        self.orders = self.orders.saturating_add(1);
        let act = decide(&self.story.book, command, Now { wall: self.story.now, chance })?;
        let facts = act.facts().to_vec();
        for entry in act.stamped(&self.story.book, &mut self.clock) {
            self.story.book.add(&entry);
        }
        self.story.names.last_act = facts.first().map(|(id, _)| *id);
        Ok(facts)
    }
}

/// The id of the first fact that is of a kind.
fn id_of(facts: &[(Id, Fact)], is: impl Fn(&Fact) -> bool) -> Result<Id, Why> {
    let found = facts.iter().find(|(_, fact)| is(fact)).map(|(id, _)| *id);
    found.ok_or(Why::Refused(Refusal::NotThere))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;

    const DAY: &str = "
# A bin of ends.
2026-03-03 08:41 -05:00 workshop USD inch
leave for yard
09:04 at the bin
09:06 pile strips ash-white 1 1/16 x 2 1/4 x 21.5 in
count 24 strips
09:07 count 40 strips
09:08 count 3 strips
undo
09:10 reject 65 strips twist   # there are only 64
09:11 paint the door
reject 2 strips twist
09:42 homeward
10:05 home
trip 23 miles at 0.725
";

    #[test]
    fn a_line_with_too_many_words_changes_nothing() {
        let text = DAY.to_owned() + "count 24 strips please\n";
        let (without, with) = (tell(DAY), tell(&text));
        assert_eq!(with.refused.len(), without.refused.len() + 1);
        assert!(with.book.lines().eq(without.book.lines()));
    }

    #[test]
    fn a_day_is_told_and_what_is_refused_is_named() {
        let story = tell(DAY);
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        assert_eq!((haul.taken(), haul.rejected(), haul.good()), (64, 2, 62));
        assert_eq!(haul.spent().unwrap().to_string(), "16.68 USD");
        assert_eq!((haul.trips[0].wheel().as_minutes(), haul.trips[0].bin().as_minutes()), (46, 38));
        let refused: Vec<u32> = story.refused.iter().map(|(line, _)| *line).collect();
        assert_eq!(refused, [11, 12], "{:?}", story.refused);
        assert_eq!(story.refused[0].1, Why::Refused(Refusal::NotThatMany { asked: 65, there: 64 }));
    }

    #[test]
    fn inv04_the_same_story_gives_the_same_bytes() {
        let (one, other) = (tell(DAY), tell(DAY));
        assert!(one.book.lines().eq(other.book.lines()));
    }
}
