//! What lies first in the rack: what likely comes next, what comes after it, what was done lately, where each other job stands.
//!
//! Forty operations stay to hand by leaving most of them to the list of all.

use super::{Choice, LATEST, Look, Rack};
use crate::bench::{Kind, On, Run, Stage};
use crate::ledger::fold;
use crate::quantity::{Id, Listed, Set, Sorted, order_by_key};

/// Boards of the job in hand that lie below what runs.
pub const BELOW: usize = 4;

/// Boards of what was done before on the job in hand.
pub const EARLIER: usize = 3;

/// Boards of other jobs, one each.
pub const JOBS: usize = 8;

/// An operation that followed another.
#[derive(Default)]
struct Followed {
    /// How often on jobs of the same design, how often on any; when last.
    often: (usize, usize, usize),
    how: Option<(Kind, Stage)>,
}

/// What is around: what runs, or was stopped last.
pub(super) type Here = (Option<Choice>, Option<Choice>);

/// The rack around what runs or was stopped last.
pub(super) fn rack(look: &Look, planned: Vec<Choice>, latest: &[Choice], (running, last): Here) -> Rack {
    let likely = running.as_ref().or(last.as_ref()).map(|here| look.followers(here)).unwrap_or_default();
    let mut rack = in_working_order(look, planned, &running, last.as_ref());
    next_first(look, &mut rack, likely, running.as_ref().or(last.as_ref()));
    let stood = last.as_ref().map(|last| last.on);
    // What the maker said to be done with is not carried on.
    if let Some(last) = last.filter(|last| last.rework || !look.bench.is_done_with(last.on, &last.op)) {
        // What is done whole makes room for what comes next.
        let place = if last.batch.is_done() { rack.below.len().min(1) } else { 0 };
        rack.below.insert(place, last);
        rack.next = rack.next.map(|next| if next < place { next } else { next.saturating_add(1) });
    }
    let all = rack.below.iter().chain(&rack.earlier).cloned().listed();
    rack.below.truncate(BELOW);
    let behind = std::mem::take(&mut rack.earlier);
    let own = running.as_ref().map(|running| running.on).or(rack.below.first().map(|first| first.on)).or(stood);
    for choice in latest.iter().filter(|choice| Some(choice.on) == own || !choice.batch.is_done()) {
        if !rack.has(choice) && !running.as_ref().is_some_and(|running| running.is_same(choice)) {
            rack.lately.push(choice.clone());
        }
    }
    rack.earlier = behind.into_iter().filter(|choice| !rack.has(choice)).take(EARLIER).listed();
    let here = running.as_ref().map(|running| running.on).or(rack.below.first().map(|first| first.on));
    rack.jobs = look.jobs(here);
    rack.jobs.retain(|choice| !rack.below.iter().chain(&rack.lately).any(|other| other.on == choice.on));
    rack.jobs.truncate(JOBS);
    rack.more = all.iter().filter(|choice| !rack.has(choice)).count();
    rack
}

impl Rack {
    fn has(&self, choice: &Choice) -> bool {
        let boards = self.above.iter().chain(&self.below).chain(&self.lately).chain(&self.jobs).chain(&self.earlier);
        boards.into_iter().any(|other| other.is_same(choice))
    }
}

/// What is planned, in working order: the one before what runs, what is still to come, what is behind.
fn in_working_order(look: &Look, planned: Vec<Choice>, running: &Option<Choice>, last: Option<&Choice>) -> Rack {
    let here = running.as_ref().or(last);
    let at = planned.iter().position(|choice| here.is_some_and(|here| here.is_same(choice)));
    let mut rack = Rack::default();
    for (place, choice) in planned.into_iter().enumerate() {
        match at {
            Some(at) if place == at => {}
            // What was passed over is still to do.
            Some(at) if place < at && !look.is_behind(&choice) => rack.below.push(choice),
            Some(at) if running.is_some() && place.checked_add(1) == Some(at) => rack.above = Some(choice),
            Some(at) if place < at => rack.earlier.push(choice),
            None if look.is_behind(&choice) => rack.earlier.push(choice),
            _ => rack.below.push(choice),
        }
    }
    rack
}

/// What comes next lies first: by the plan of the job what is still to do of it, as its own page says; where nothing is, what followed
/// most often, as far as it is still to be done here.
fn next_first(look: &Look, rack: &mut Rack, likely: Vec<(String, Kind, Stage)>, here: Option<&Choice>) {
    let Some(on) = here.map(|here| here.on).filter(|on| matches!(on, On::Job(_))) else { return };
    // What is behind makes room for what is to do.
    order_by_key(&mut rack.below, |choice| (choice.batch.is_done(), look.is_behind(choice)));
    rack.next = Some(0).filter(|_| rack.below.first().is_some_and(|first| !look.is_behind(first)));
    if rack.next.is_some() {
        return;
    }
    let planned = |rack: &Rack, op: &str| rack.above.iter().chain(&rack.earlier).chain(&rack.below).any(|choice| choice.op == op);
    let unplanned = likely.into_iter().filter(|(op, ..)| !planned(rack, op)).map(|operation| look.named(operation, on));
    let next = unplanned.listed().into_iter().find(|choice| look.may_follow(choice));
    rack.next = next.is_some().then_some(0).or(rack.below.iter().position(|choice| !choice.batch.is_done()));
    rack.below.splice(0..0, next);
}

impl Look<'_> {
    /// Behind, but for what took less than was planned of it and of which no piece is noted: that is begun and not done.
    fn is_behind(&self, choice: &Choice) -> bool {
        let is_short = || self.bench.thought_for(choice.on, &choice.op).is_some_and(|thought| choice.batch.all() < thought);
        choice.is_behind() && (choice.batch.is_done() || 0 < choice.batch.n || !is_short())
    }

    /// The operations that followed one in own jobs, the most often first; those of jobs of the same design before the others.
    pub(in crate::sheet) fn followers(&self, here: &Choice) -> Vec<(String, Kind, Stage)> {
        let On::Job(job) = here.on else { return vec![] };
        let design = fold::design_of(self.book, job);
        let mut designs: Sorted<Id, bool> = Sorted::new();
        let mut before: Sorted<Id, &Run> = Sorted::new();
        let mut found: Sorted<String, Followed> = Sorted::new();
        let own = self.own().filter(|run| !run.work.rework);
        for (nth, run) in own.enumerate() {
            let On::Job(of) = run.work.on else { continue };
            if self.not_typical.contains(&of) {
                continue;
            }
            let follows = before.get(&of).is_some_and(|one| one.work.op == here.op && one.work.op != run.work.op);
            before.insert(of, run);
            if follows {
                let same = *designs.entry(of).or_insert_with(|| design.is_some() && fold::design_of(self.book, of) == design);
                let there = found.entry(run.work.op.clone()).or_default();
                let often = (there.often.0.saturating_add(usize::from(same)), there.often.1.saturating_add(1), nth);
                *there = Followed { often, how: Some((run.work.kind, run.work.stage)) };
            }
        }
        let named = |(op, followed): (&String, &Followed)| followed.how.map(|(kind, stage)| (followed.often, (op.clone(), kind, stage)));
        let mut found = found.iter().filter_map(named).listed();
        order_by_key(&mut found, |(often, _)| std::cmp::Reverse(*often));
        found.into_iter().map(|(_, operation)| operation).listed()
    }

    /// Whether an operation nobody planned may come next on its job: it is not behind, and does not go back. It would, were it of an
    /// earlier stage than what was finished there, or did it come before what was done there wherever both were done.
    pub(in crate::sheet) fn may_follow(&self, choice: &Choice) -> bool {
        let done: Set<&str> = self.bench.on(choice.on).map(|run| run.work.op.as_str()).collect();
        let finished = self.bench.on(choice.on).any(|run| run.work.stage == Stage::Finish);
        let back = finished && choice.stage < Stage::Finish;
        !choice.is_behind() && !back && !self.comes_before(&choice.op, &done)
    }

    /// Whether an operation was begun before one of these on more of the own jobs than after it.
    fn comes_before(&self, op: &str, done: &Set<&str>) -> bool {
        let mut firsts: Sorted<(Id, &str), usize> = Sorted::new();
        for (nth, run) in self.own().enumerate().filter(|(_, run)| run.work.op == op || done.contains(run.work.op.as_str())) {
            if let On::Job(job) = run.work.on {
                firsts.entry((job, &run.work.op)).or_insert(nth);
            }
        }
        let mut before: Sorted<&str, (usize, usize)> = Sorted::new();
        for ((job, other), first) in firsts.iter().filter(|((_, other), _)| *other != op) {
            let Some(own) = firsts.get(&(*job, op)) else { continue };
            let (earlier, later) = before.entry(other).or_default();
            if own < first { *earlier = earlier.saturating_add(1) } else { *later = later.saturating_add(1) }
        }
        before.values().any(|(earlier, later)| later < earlier)
    }

    /// Where each other job that goes on stands: what was done on it last, the job worked on last first.
    fn jobs(&self, here: Option<On>) -> Vec<Choice> {
        let mut seen: Set<On> = here.into_iter().collect();
        let mut found = vec![];
        for run in self.own().rev() {
            let on = run.work.on;
            if on == On::Nothing || seen.contains(&on) {
                continue;
            }
            seen.insert(on);
            if !fold::is_ended(self.book, on) {
                found.push(self.choice(run));
            }
        }
        found
    }

    /// The latest of each operation and job that the maker is not done with, the newest first.
    pub(super) fn latest(&self) -> Vec<Choice> {
        let mut found: Vec<&Run> = vec![];
        let mut ended: Sorted<On, bool> = Sorted::new();
        for run in self.own().rev() {
            let same = |other: &&Run| (&other.work.op, other.work.on, other.work.rework) == (&run.work.op, run.work.on, run.work.rework);
            let on = run.work.on;
            if !found.iter().any(same) && !*ended.entry(on).or_insert_with(|| fold::is_ended(self.book, on)) {
                found.push(run);
            }
            if LATEST <= found.len() {
                break;
            }
        }
        found.into_iter().map(|run| self.choice(run)).listed()
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BenchSheet, Seen, bench};
    use super::*;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::kind::job::OperationPlanned;
    use crate::ledger::kind::plan::DesignUsed;
    use crate::ledger::told::Phone;

    fn job(on: On) -> Id {
        if let On::Job(id) = on { id } else { unreachable!() }
    }

    fn plan(phone: &mut Phone, on: On, ops: &[&str]) {
        for op in ops {
            let op = (*op).to_owned();
            phone.note(1, OperationPlanned { job: job(on), op, kind: Kind::Make, stage: None, span: None, pieces: None });
        }
    }

    fn seen(phone: &Phone, minute: i64) -> BenchSheet {
        bench(&phone.book, Seen { now: phone.wall(minute), ..Seen::default() })
    }

    fn ops(choices: &[Choice]) -> String {
        choices.iter().map(|choice| choice.op.as_str()).listed().join(" ")
    }

    /// What was done one after another on earlier jobs, those of the same design marked; the plan of this one, what runs on it: what
    /// lies below it.
    #[test]
    fn what_followed_most_often_comes_next() {
        let check = |past: &[(bool, &str)], planned: &[&str], runs: &str, below: &str| {
            let mut phone = Phone::new("a");
            let (design, this) = (phone.job(0, "the design"), phone.job(0, "this"));
            phone.note(1, DesignUsed { job: job(this), design: job(design) });
            plan(&mut phone, this, planned);
            let mut minute = 10;
            for (nth, (same, steps)) in past.iter().enumerate() {
                let on = phone.job(minute, &format!("old {nth}"));
                if *same {
                    phone.note(minute, DesignUsed { job: job(on), design: job(design) });
                }
                for step in steps.split(' ') {
                    minute += 10;
                    phone.start(minute, step, on);
                }
            }
            phone.start(minute + 10, runs, this);
            let shown = seen(&phone, minute + 20);
            let next = shown.rack.next.and_then(|next| shown.rack.below.get(next)).map(|c| c.op.as_str()).unwrap_or("-");
            assert_eq!(format!("{}, {next}", ops(&shown.rack.below)), below, "{past:?} {planned:?} {runs}");
        };
        check(&[], &["saw", "sand", "oil"], "saw", "sand oil, sand");
        // The job's own plan goes before what is usual.
        check(&[(false, "saw oil")], &["saw", "sand", "oil"], "saw", "sand oil, sand");
        check(&[(true, "saw sand")], &["saw", "oil", "sand"], "saw", "oil sand, oil");
        check(&[(false, "saw tea")], &["saw", "sand", "oil"], "saw", "sand oil, sand");
        check(&[(false, "saw tea")], &["saw"], "saw", "tea, tea");
        check(&[(false, "saw oil"), (false, "saw oil"), (true, "saw sand")], &["saw"], "saw", "sand, sand");
        check(&[(false, "saw oil"), (false, "saw sand"), (false, "saw sand")], &["saw"], "saw", "sand, sand");
        // What was passed over comes before what is after it.
        check(&[], &["saw", "sand", "oil", "hang"], "oil", "saw sand hang, saw");
        check(&[(false, "saw glue")], &[], "saw", "glue, glue");
        check(&[], &[], "saw", ", -");
    }

    /// The shelf is sanded and oiled, or only sanded; glue up followed that on the stools, begun before it there: it does not go back.
    #[test]
    fn what_is_next_never_goes_back() {
        let check = |stools: &str, shelf: &str, planned: &[&str], next: &str| {
            let mut phone = Phone::new("a");
            let (stool, this) = (phone.job(0, "stools"), phone.job(0, "shelf"));
            plan(&mut phone, this, planned);
            let mut minute = 10;
            for (on, steps) in [(stool, stools), (this, shelf)] {
                for step in steps.split(' ') {
                    minute += 10;
                    let stage = if step == "oil" { Stage::Finish } else { Stage::Make };
                    let work = crate::bench::Work { stage, ..crate::ledger::told::work(step, on) };
                    phone.bench(minute, BenchCommand::Start { work, ago: crate::quantity::Span::ZERO }).unwrap();
                }
            }
            let rack = seen(&phone, minute + 10).rack;
            let found = rack.next.and_then(|next| rack.below.get(next)).map(|c| c.op.as_str()).unwrap_or("-");
            assert_eq!(found, next, "{stools}; {shelf}");
        };
        check("saw sand glue", "saw sand", &[], "glue");
        check("saw oil glue", "saw oil", &[], "-"); // it is finished: no way back to making
        check("glue sand glue", "saw sand", &[], "-"); // it was begun before the sanding
        check("glue sand glue", "saw sand", &["glue"], "glue"); // planned, and not begun
        check("saw sand glue", "glue saw sand", &[], "-");
    }

    /// The doors of the cabinet hang before it is coated, and the lamps were coated last: its own coat is next, as its page says, and the
    /// lamps' is nowhere above.
    #[test]
    fn the_next_step_of_the_job_in_hand_lies_first() {
        let mut phone = Phone::new("a");
        let (cabinet, lamps) = (phone.job(0, "cabinet"), phone.job(0, "lamps"));
        plan(&mut phone, cabinet, &["sand", "coat", "hang"]);
        phone.bench(2, BenchCommand::PlanBatch { job: job(lamps), op: "coat".into(), n: 1 }).unwrap();
        for (minute, op, on) in [(10, "sand", cabinet), (20, "coat", lamps), (30, "hang", cabinet)] {
            let run = phone.start(minute, op, on);
            phone.bench(minute + 5, BenchCommand::Done { run, n: 1 }).unwrap();
            phone.stop(minute + 9, run);
        }
        let rack = seen(&phone, 50).rack;
        assert_eq!((ops(&rack.below), rack.next, ops(&rack.lately)), ("hang coat".into(), Some(1), "sand".into()));
        let shop = crate::sheet::Shop::of(&phone.book, crate::ledger::told::at(50));
        let next = crate::sheet::job::job(&shop, job(cabinet)).unwrap().next;
        assert_eq!(next, crate::sheet::job::NextAct::WorkOn { op: Some("coat".into()) });
    }

    /// Trimming was planned for 45 minutes and took 15, or all of them, before another job was taken up and this one again.
    #[test]
    fn what_is_begun_and_not_done_comes_next() {
        let check = |took: i64, next: &str| {
            let mut phone = Phone::new("a");
            let (this, other) = (phone.job(0, "this"), phone.job(0, "other"));
            for op in ["trim", "saw", "glue"] {
                let span = Some(crate::quantity::Span::minutes(45));
                phone.note(1, OperationPlanned { job: job(this), op: op.into(), kind: Kind::Make, stage: None, span, pieces: None });
            }
            for (minute, op, on) in [(100, "trim", this), (100 + took, "plane", other), (200, "saw", this)] {
                phone.start(minute, op, on);
            }
            let rack = seen(&phone, 210).rack;
            let found = rack.next.and_then(|next| rack.below.get(next)).map(|choice| choice.op.as_str());
            assert_eq!(found, Some(next), "{took}");
        };
        check(15, "trim");
        check(45, "glue");
    }

    #[test]
    fn a_batch_that_is_done_is_not_what_comes_next() {
        let mut phone = Phone::new("a");
        let (old, this) = (phone.job(0, "old"), phone.job(0, "this"));
        plan(&mut phone, this, &["saw", "sand", "oil"]);
        phone.bench(2, BenchCommand::PlanBatch { job: job(this), op: "sand".into(), n: 1 }).unwrap();
        for (minute, op, on) in [(10, "saw", old), (20, "sand", old), (30, "sand", this)] {
            let run = phone.start(minute, op, on);
            if on == this {
                phone.bench(minute + 5, BenchCommand::Done { run, n: 1 }).unwrap();
            }
        }
        phone.start(40, "saw", this);
        let rack = seen(&phone, 50).rack;
        assert_eq!((ops(&rack.below), rack.next), ("oil sand".into(), Some(0)));
    }

    /// Six planned operations of one piece each; some are done, then one is begun again: what lies below it, and what is next.
    #[test]
    fn what_is_to_do_is_never_lost_below_what_is_done() {
        let check = |done: &str, again: &str, below: &str| {
            let mut phone = Phone::new("a");
            let this = phone.job(0, "this");
            plan(&mut phone, this, &["a", "b", "c", "d", "e", "f"]);
            for (nth, op) in ["a", "b", "c", "d", "e", "f"].into_iter().enumerate() {
                phone.bench(2, BenchCommand::PlanBatch { job: job(this), op: op.into(), n: 1 }).unwrap();
                if done.contains(op) {
                    let run = phone.start(10 + 10 * nth as i64, op, this);
                    phone.bench(15 + 10 * nth as i64, BenchCommand::Done { run, n: 1 }).unwrap();
                    phone.stop(19 + 10 * nth as i64, run);
                }
            }
            phone.start(100, again, this);
            let rack = seen(&phone, 110).rack;
            let next = rack.next.and_then(|next| rack.below.get(next)).map(|c| c.op.as_str()).unwrap_or("-");
            assert_eq!(format!("{}, {next}", ops(&rack.below)), below, "{done}, {again} again");
        };
        check("abcde", "a", "f b c d, f");
        check("abcdef", "a", "b c d e, -");
        check("abce", "a", "d f b c, d");
        check("", "a", "b c d e, b");
    }

    #[test]
    fn forty_operations_and_six_jobs_leave_a_dozen_boards() {
        let mut phone = Phone::new("a");
        let names = ["bench", "stands", "table", "shelf", "stool", "box"];
        let jobs = names.map(|name| phone.job(0, name));
        let all: Vec<String> = (0..40).map(|nth| format!("step {nth}")).collect();
        plan(&mut phone, jobs[0], &all.iter().map(String::as_str).collect::<Vec<_>>());
        for (nth, on) in jobs.into_iter().enumerate() {
            phone.start(10 + nth as i64, "sand", on);
        }
        for nth in 0..10 {
            phone.start(20 + nth, &format!("step {nth}"), jobs[0]);
        }
        let rack = seen(&phone, 100).rack;
        assert_eq!(rack.above.as_ref().map(|c| c.op.as_str()), Some("step 8"));
        assert_eq!((ops(&rack.below), ops(&rack.lately)), ("step 10 step 11 step 12 step 13".into(), "step 7 step 6".into()));
        let names = rack.jobs.iter().map(|c| c.name.as_deref().unwrap()).listed();
        assert_eq!(names, ["box", "stool", "shelf", "table", "stands"], "one tap to each");
        assert_eq!(ops(&rack.earlier), "step 0 step 1 step 2");
        assert_eq!(rack.more, 26 + 3);
    }

    /// Sanding stops at 50 and is done with at 60. Begun again at 65 and told from 50 on it is carried on; rework leaves it done.
    #[test]
    fn what_is_begun_again_is_done_with_no_more_however_long_ago_it_is_said_to_have_begun() {
        let check = |ago: i64, rework: bool, is_done: bool| {
            let mut phone = Phone::new("a");
            let stands = phone.job(0, "stands");
            let run = phone.start(10, "sand", stands);
            phone.stop(50, run);
            phone.bench(60, BenchCommand::Whole { run, of: 1 }).unwrap();
            assert!(phone.runs().is_done_with(stands, "sand"));
            let work = crate::bench::Work { rework, ..crate::ledger::told::work("sand", stands) };
            let again = phone.bench(65, BenchCommand::Start { work, ago: crate::quantity::Span::minutes(ago) }).unwrap();
            phone.stop(80, again);
            assert_eq!(phone.runs().is_done_with(stands, "sand"), is_done, "{ago} {rework}");
            let carried = seen(&phone, 81).rack.below.first().is_some_and(|first| first.op == "sand");
            assert_eq!(carried, !is_done || rework, "{ago} {rework}");
        };
        check(0, false, false);
        check(15, false, false);
        check(0, true, true);
        check(15, true, true);
    }
}
