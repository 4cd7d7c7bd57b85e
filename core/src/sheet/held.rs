//! Pieces of a job that wait and may not come off yet: how many of them, until when, and what they hold up.

use super::Shop;
use super::meanwhile::needs;
use crate::bench::wait::{Wait, What};
use crate::bench::{Bench, Kind, On};
use crate::ledger::fold::Job;
use crate::quantity::{Count, Id, Listed, Set};

/// Pieces that wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Held {
    /// So many of those that are left of the job.
    pub n: Count,
    pub left: Count,
    /// What comes off last.
    pub last: Wait,
}

/// What waits of the pieces of a job that are left; none where nothing does.
pub fn held(shop: &Shop, job: &Job) -> Option<Held> {
    of(shop, job, |_| true)
}

/// The same, where work on an operation needs what waits of every piece: none of them is free. What makes nothing needs none.
pub fn held_up(shop: &Shop, job: &Job, (op, kind): (&str, Kind), of_part: fn(&str) -> bool) -> Option<Held> {
    let held = of(shop, job, |wait| needs(&shop.bench, job, op, (wait, of_part)))?;
    (kind == Kind::Make && held.left <= held.n).then_some(held)
}

/// Coats that are wet under one that a run puts on next; none where a piece has none that is wet, or has that coat already.
pub fn wet_below(shop: &Shop, job: &Job, run: Id) -> Option<Held> {
    let below = of(shop, job, |wait| wait.what() == What::Coat && wait.run != Some(run))?;
    (below.left <= below.n).then_some(below)
}

fn of(shop: &Shop, job: &Job, counts: impl Fn(&Wait) -> bool) -> Option<Held> {
    let waits = shop.waits().on().filter(|wait| wait.job == Some(job.id) && !wait.is_over(shop.now) && counts(wait)).listed();
    let last = waits.iter().max_by_key(|wait| wait.off())?;
    let (left, n) = (job.left(), pieces(&shop.bench, job, &waits));
    (0 < left).then(|| Held { n: n.min(left), left, last: (*last).clone() })
}

/// Whole pieces that are wet lie beside those in clamps, of which several parts may be of one piece (ours). Of an operation with more pieces than the job
/// each is a part of one: where such parts are wet, all that waits may be of the same pieces, and there are as many as of the operation with most.
fn pieces(bench: &Bench, job: &Job, waits: &[&Wait]) -> Count {
    let ops: Set<&str> = waits.iter().map(|wait| bench.op_of(wait)).collect();
    let on = On::Job(job.id);
    let parts_of = |op: &str| {
        let planned = || job.operations.iter().find(|planned| planned.op == op).and_then(|planned| planned.pieces);
        // What is noted of coats is more than there are pieces.
        let all = if bench.is_coated(on, op) { bench.coated_each(on, op) } else { planned() };
        all.filter(|all| job.pieces < *all)
    };
    let still = |op: &str, whole: bool| {
        let of_it = waits.iter().filter(|wait| bench.op_of(wait) == op && wait.is_whole() == whole);
        let n = of_it.fold(0, |sum: Count, wait| sum.saturating_add(wait.still()));
        parts_of(op).map_or(n, |all| n.saturating_mul(job.pieces).div_ceil(all))
    };
    let most = |whole: bool| ops.iter().map(|op| still(op, whole)).max().unwrap_or_default();
    if waits.iter().any(|wait| wait.is_whole() && parts_of(bench.op_of(wait)).is_some()) {
        return most(true).max(most(false));
    }
    let wet = ops.iter().fold(0, |sum: Count, op| sum.saturating_add(still(op, true)));
    wet.saturating_add(most(false))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::tell;

    /// Of four stools what waits, and whether that holds up sanding them and sending a message.
    #[track_caller]
    fn check(told: &str, waits: Option<(Count, Count)>, holds_up: bool) {
        let story = tell(&format!("2026-03-02 08:00 +00:00 workshop EUR metric\njob stools \"Stools\" 4 spec\n{told}"));
        assert_eq!(story.refused, [], "{told}");
        let shop = Shop::of(&story.book, story.now.at);
        let job = shop.job(story.names.job("stools").unwrap()).unwrap();
        assert_eq!(held(&shop, &job).map(|held| (held.n, held.left)), waits, "{told}");
        let of = |kind| held_up(&shop, &job, ("sand", kind), |op| op == "glue legs").is_some();
        assert_eq!((of(Kind::Make), of(Kind::Office)), (holds_up, false), "{told}");
    }

    #[test]
    fn pieces_that_wait_are_counted_once() {
        check("", None, false);
        check("wait \"coat\" coat n 4 for stools 600 min", Some((4, 4)), true);
        check("wait \"coat\" coat n 3 for stools 600 min", Some((3, 4)), false);
        check("wait \"coat\" coat n 4 for stools 600 min\n19:00 about stools note \"x\"", None, false);
        check("wait \"glue up\" glue n 4 for stools 90 min", Some((4, 4)), true);
        check("wait \"glue legs\" glue n 16 for stools 90 min", Some((4, 4)), false);
        check("wait \"glue legs\" glue n 2 for stools 90 min\nwait \"glue tops\" glue n 3 for stools 90 min", Some((3, 4)), false);
        // Four of sixteen legs are of one stool, five of two.
        let legs = |more: &str| format!("plan \"legs\" make 60 min for stools pieces 16\n{more}");
        check(&legs("wait \"legs\" glue n 4 for stools 90 min"), Some((1, 4)), false);
        check(&legs("wait \"legs\" coat n 5 for stools 600 min"), Some((2, 4)), false);
        // Four of sixteen legs and a seat, or four of eight rails, may be of one stool; coats on whole ones are not.
        let parts = |more: &str| {
            legs(&format!("plan \"seats\" make 60 min for stools pieces 4\nplan \"rails\" make 9 min for stools pieces 8\n{more}"))
        };
        check(&parts("wait \"legs\" coat n 4 for stools 600 min\nwait \"seats\" coat n 1 for stools 600 min"), Some((1, 4)), false);
        check(&parts("wait \"legs\" coat n 4 for stools 600 min\nwait \"rails\" coat n 4 for stools 600 min"), Some((2, 4)), false);
        check(&parts("wait \"legs\" coat n 4 for stools 600 min\nwait \"seats\" glue n 1 for stools 90 min"), Some((1, 4)), false);
        check(&parts("wait \"legs\" coat n 16 for stools 600 min\nwait \"seats\" coat n 1 for stools 600 min"), Some((4, 4)), true);
        check(&parts("wait \"oil\" coat n 1 for stools 600 min\nwait \"wax\" coat n 1 for stools 600 min"), Some((2, 4)), false);
        check(&parts("wait \"oil\" coat n 1 for stools 600 min\nwait \"legs\" glue n 4 for stools 90 min"), Some((2, 4)), false);
        check("sell 3 stools for 120\nwait \"coat\" coat n 3 for stools 600 min", Some((1, 1)), true);
    }

    /// Coated on three days, all five each time, and nobody took them off: they are five that are wet, also once the maker is done with it, which
    /// writes down that fifteen were noted.
    #[test]
    fn further_coats_are_on_the_same_pieces() {
        use crate::ledger::decide::{BenchCommand, Command, Laid, WaitCommand};
        use crate::ledger::kind::job::{JobDescribed, OperationPlanned};
        use crate::ledger::told::{Phone, at};
        use crate::quantity::{Key, Span};
        for planned in [None, Some(5)] {
            let mut phone = Phone::new("a");
            let on @ On::Job(job) = phone.job(0, "stands") else { unreachable!() };
            phone.note(1, JobDescribed { pieces: Some(5), ..JobDescribed::of(job) });
            let op: String = "coat".into();
            phone.note(1, OperationPlanned { job, op, kind: Kind::Make, stage: None, span: None, pieces: planned });
            let held = |phone: &Phone, minute| {
                let shop = Shop::of(&phone.book, at(minute));
                held(&shop, &shop.job(job).unwrap()).map(|held| (held.n, held.left))
            };
            for minute in [600, 2_060, 3_520] {
                let run = phone.start(minute, "coat", on);
                let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_440) };
                phone.order(minute + 5, Command::Wait(WaitCommand::Clamp { run, n: 5, laid })).unwrap();
                phone.stop(minute + 6, run);
                assert_eq!(held(&phone, minute + 10), Some((5, 5)));
            }
            let run = phone.runs().runs().last().unwrap().id;
            phone.bench(3_540, BenchCommand::Whole { run, of: 15 }).unwrap();
            assert_eq!(held(&phone, 3_550), Some((5, 5)), "{planned:?}");
        }
    }
}
