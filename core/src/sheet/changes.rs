//! What was put right of a run, and when.

use crate::bench::Mender;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Listed, Wall};

/// One word on a run, as it was said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// When it was said.
    pub at: Wall,
    pub start: Option<Wall>,
    pub stop: Option<Wall>,
    pub op: Option<String>,
    /// The maker took the end that was proposed.
    pub proposed: bool,
}

/// What was put right of a run, the first word first. One that names nothing said that the run is right as it stands.
pub fn changes(book: &Book, run: Id) -> Vec<Change> {
    let said = |entry: &Entry| match &entry.fact {
        Fact::RunMended(f) if f.run == run => {
            let place = |at| Wall::new(at, entry.wall.offset);
            let (start, stop) = (f.start.map(place), f.stop.map(place));
            Some(Change { at: entry.wall, start, stop, op: f.op.clone(), proposed: f.by == Mender::Proposed })
        }
        _ => None,
    };
    book.about(Subject::Bench).filter_map(said).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::told::{Phone, at};

    #[test]
    fn each_word_on_a_run_is_kept_with_its_time() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "sand", On::Nothing);
        let other = phone.start(100, "oil", On::Nothing);
        phone.bench(110, BenchCommand::StopAt { run, at: at(47), by: Mender::Proposed }).unwrap();
        let mend = BenchCommand::Mend { run, start: Some(at(10)), stop: None, op: Some("scrape".into()) };
        let struck = phone.bench(120, mend).unwrap();
        phone.bench(130, BenchCommand::Confirm { run: other }).unwrap();
        let told = |phone: &Phone| {
            let minutes = |wall: Option<Wall>| wall.map(|wall| at(0).until(wall.at).as_minutes());
            changes(&phone.book, run)
                .iter()
                .map(|c| (minutes(Some(c.at)), minutes(c.start), minutes(c.stop), c.op.clone(), c.proposed))
                .listed()
        };
        let first = (Some(110), None, Some(47), None, true);
        assert_eq!(told(&phone), [first.clone(), (Some(120), Some(10), None, Some("scrape".into()), false)]);
        phone.take_back(140, struck);
        assert_eq!(told(&phone), [first], "a word that was taken back is no change");
        let confirmed = changes(&phone.book, other);
        assert_eq!((confirmed.len(), confirmed[0].start, confirmed[0].op.clone()), (1, None, None));
    }
}
