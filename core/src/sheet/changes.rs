//! What was put right of a run or a count, and when.

mod count;
mod pieces;

pub use count::{OfCount, of_count};
pub use pieces::{StruckPieces, can_be_put_back, struck_pieces};

use crate::bench::{Bench, Head, Mender, On};
use crate::ledger::kind::bench::HelperRecalled;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Listed, Money, Wall, order_by_key};

/// What was said of a helper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OfHelper {
    pub from: Option<Wall>,
    pub to: Option<Wall>,
    pub pay: Option<Money>,
    pub how: How,
}

/// What a word on a helper says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// They were forgotten, and written down with this.
    Forgotten,
    /// They were still there after a switch.
    Stayed,
    /// Their times or their pay were put right.
    Mended,
}

/// One word on a run, as it was said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Change {
    /// When it was said.
    pub at: Wall,
    pub start: Option<Wall>,
    pub stop: Option<Wall>,
    pub op: Option<String>,
    /// Of what it was.
    pub on: Option<On>,
    pub helper: Option<OfHelper>,
    /// Pieces that were noted in it and are struck.
    pub pieces: Option<StruckPieces>,
    /// The maker took the end that was proposed.
    pub proposed: bool,
}

/// What was put right of a run, the first word first. One that names nothing said that the run is right as it stands.
pub fn changes((bench, book): (&Bench, &Book), run: Id) -> Vec<Change> {
    let said = |entry: &Entry| {
        let place = |at| Wall::new(at, entry.wall.offset);
        let helper = |from: Option<_>, to: Option<_>, pay, how| Some(OfHelper { from: from.map(place), to: to.map(place), pay, how });
        let none = Change { at: entry.wall, ..Change::default() };
        Some(match &entry.fact {
            Fact::RunMended(f) if f.run == run => {
                let start = f.start.map(|at| f.place.map_or(place(at), |place| Wall::new(at, place)));
                let stop = f.stop.map(place);
                Change { start, stop, op: f.op.clone(), proposed: f.by == Mender::Proposed, ..none }
            }
            Fact::RunMoved(f) if f.run == run => {
                Change { on: Some(f.job.map(On::Job).or(f.haul.map(On::Haul)).unwrap_or(On::Nothing)), ..none }
            }
            Fact::RunRenamed(f) if f.run == run => Change { op: Some(f.op.clone()), ..none },
            Fact::HelperRecalled(f) if f.run == run => Change { helper: helper(Some(f.from), f.to, f.pay, recalled(bench, f)), ..none },
            Fact::HelperMended(f) if f.run == run => Change { helper: helper(f.from, f.to, f.pay, How::Mended), ..none },
            _ => return None,
        })
    };
    let of_pieces = struck_pieces(book, run).into_iter().map(|it| Change { at: it.at, pieces: Some(it), ..Change::default() });
    let mut all = book.about(Subject::Bench).filter_map(said).chain(of_pieces).listed();
    order_by_key(&mut all, |change| change.at.at);
    all
}

/// Who was at the run before the switch, and is written down from the start on, had stayed.
fn recalled(bench: &Bench, said: &HelperRecalled) -> How {
    let before = bench.run(said.run).and_then(|run| Some((bench.before_the_switch(run)?, run.started.at)));
    let stayed = before.is_some_and(|(before, start)| {
        let was = |head: &Head| (head.person, head.pay, head.from.max(start)) == (said.person, said.pay, said.from);
        said.to.is_none() && before.heads.iter().any(was)
    });
    if stayed { How::Stayed } else { How::Forgotten }
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
            changes((&phone.runs(), &phone.book), run)
                .iter()
                .map(|c| (minutes(Some(c.at)), minutes(c.start), minutes(c.stop), c.op.clone(), c.proposed))
                .listed()
        };
        let first = (Some(110), None, Some(47), None, true);
        assert_eq!(told(&phone), [first.clone(), (Some(120), Some(10), None, Some("scrape".into()), false)]);
        phone.bench(131, BenchCommand::RecallHelper { run: other, from: at(105), to: None, pay: None }).unwrap();
        let of: Vec<_> = changes((&phone.runs(), &phone.book), other).into_iter().filter_map(|change| change.helper).collect();
        assert_eq!(of, [OfHelper { from: Some(phone.wall(105)), to: None, pay: None, how: How::Forgotten }]);
        phone.take_back(140, struck);
        assert_eq!(told(&phone), [first], "a word that was taken back is no change");
        let confirmed = changes((&phone.runs(), &phone.book), other);
        assert_eq!((confirmed.len(), confirmed[0].start, confirmed[0].op.clone()), (2, None, None));
    }
}
