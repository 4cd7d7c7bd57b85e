//! How many pieces each operation of a job has: the later word counts, whether it was said at the bench or with the plan.

use crate::ledger::{Entry, Fact};
use crate::quantity::{Count, Id, Moment, Set, Sorted};

/// An operation of a job.
pub(super) type Meant = (Id, String);

/// The last word on how many pieces there are.
struct Word {
    n: Count,
    /// On how many pieces a coat of it is: as was said before the maker was done with it.
    each: Option<Count>,
    /// Somebody said so at the bench; the plan repeats it at most.
    at_bench: bool,
    /// The plan named a number, this one or another.
    in_plan: bool,
    /// When it was said as the maker was done with it.
    done: Option<Moment>,
}

/// Where a number was said: at the bench or with the plan, and as the maker was done with it.
#[derive(Clone, Copy)]
struct Said {
    at_bench: bool,
    done: Option<Moment>,
}

/// How many pieces operations have.
#[derive(Default)]
pub(super) struct Pieces {
    pub all: Sorted<Meant, Count>,
    /// Of those, the ones that only the plan says.
    pub only_planned: Set<Meant>,
    /// What is coated, and how many pieces each coat is on.
    pub coated: Sorted<Meant, Option<Count>>,
    /// What the maker is done with, and since when.
    pub done: Sorted<Meant, Moment>,
}

/// What was said so far.
#[derive(Default)]
pub(super) struct Numbers(Sorted<Meant, Word>);

impl Numbers {
    /// A plan without a number takes back its own, and what put that right; of what was said at the bench alone it says nothing. Done is done
    /// when the tap counts, which is not before what was tapped before it.
    pub fn take(&mut self, entry: &Entry, tapped: Moment) {
        match &entry.fact {
            Fact::BatchPlanned(f) => {
                let done = (f.done == Some(true)).then_some(tapped);
                self.put((f.job, f.op.clone()), f.n, Said { at_bench: true, done });
            }
            Fact::OperationPlanned(f) => match f.pieces.filter(|n| 0 < *n) {
                Some(n) => self.put((f.job, f.op.clone()), n, Said { at_bench: false, done: None }),
                None => self.take_back((f.job, f.op.clone())),
            },
            _ => {}
        }
    }

    fn take_back(&mut self, meant: Meant) {
        if self.0.get(&meant).is_some_and(|word| word.in_plan) {
            self.0.remove(&meant);
        }
    }

    /// A plan that repeats the number that stands changes nothing of what was said of it.
    fn put(&mut self, meant: Meant, n: Count, Said { at_bench, done }: Said) {
        if let Some(word) = self.0.get_mut(&meant).filter(|word| !at_bench && word.n == n) {
            word.in_plan = true;
            return;
        }
        let word = self.0.entry(meant).or_insert(Word { n, each: None, at_bench, in_plan: false, done });
        let each = if done.is_some() { word.each } else { Some(n) };
        *word = Word { n, each, at_bench, in_plan: word.in_plan || !at_bench, done };
    }

    /// How many there are of an operation.
    pub fn of(&self, job: Id, op: &str) -> Option<Count> {
        self.0.get(&(job, op.to_owned())).map(|word| word.n)
    }

    /// All of them, and of what is coated how many pieces a coat is on; none where nobody said.
    pub fn with_coats(self, coated: &Set<Meant>) -> Pieces {
        let mut found = Pieces { coated: coated.iter().map(|meant| (meant.clone(), None)).collect(), ..Pieces::default() };
        for (meant, word) in self.0 {
            found.coated.get_mut(&meant).into_iter().for_each(|each| *each = word.each);
            if !word.at_bench {
                found.only_planned.insert(meant.clone());
            }
            word.done.and_then(|done| found.done.insert(meant.clone(), done));
            found.all.insert(meant, word.n);
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use crate::bench::{Kind, On};
    use crate::ledger::decide::{BenchCommand, Command, WaitCommand};
    use crate::ledger::kind::job::OperationPlanned;
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Count, Id, Key, Span};

    /// Two coats on both of two stools, and the maker is done with them: 4 are noted, 2 for each coat.
    fn coated() -> (Phone, On, Id) {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stools");
        plan(&mut phone, on, (1, 60, Some(2)));
        let mut last = None;
        for minute in [100, 2_000] {
            let run = phone.start(minute, "coat", on);
            let laid = crate::ledger::decide::Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_440) };
            phone.order(minute + 20, Command::Wait(WaitCommand::Clamp { run, n: 2, laid })).unwrap();
            phone.stop(minute + 30, run);
            last = Some(run);
        }
        (phone, on, last.unwrap())
    }

    fn plan(phone: &mut Phone, on: On, (minute, minutes, pieces): (i64, i64, Option<Count>)) {
        let On::Job(job) = on else { unreachable!() };
        let span = Some(Span::minutes(minutes));
        phone.note(minute, OperationPlanned { job, op: "coat".into(), kind: Kind::Make, stage: None, span, pieces });
    }

    fn job(on: On) -> Id {
        let On::Job(job) = on else { unreachable!() };
        job
    }

    #[track_caller]
    fn check((phone, on): (&Phone, On), is_done: bool, (of, each): (Option<Count>, Option<Count>)) {
        let bench = phone.runs();
        assert_eq!(bench.is_done_with(on, "coat"), is_done);
        assert_eq!((bench.batch(on, "coat", at(9_000)).of, bench.coated_each(on, "coat")), (of, each));
    }

    /// The form of the plan is filled with the number that stands: a change of its minutes alone takes nothing back of what was said at the bench.
    #[test]
    fn a_plan_that_repeats_the_number_leaves_what_was_done_with() {
        let (mut phone, on, run) = coated();
        check((&phone, on), false, (Some(2), Some(2)));
        phone.bench(2_040, BenchCommand::Whole { run, of: 4 }).unwrap();
        check((&phone, on), true, (Some(4), Some(2)));
        plan(&mut phone, on, (2_050, 90, Some(4)));
        check((&phone, on), true, (Some(4), Some(2)));
        // Another number is another word.
        plan(&mut phone, on, (2_060, 90, Some(3)));
        check((&phone, on), false, (Some(3), Some(3)));
    }

    /// That there are as many is said at the bench of the pieces: more is to come of a further coat.
    #[test]
    fn a_number_said_at_the_bench_is_a_new_word() {
        let (mut phone, on, run) = coated();
        phone.bench(2_040, BenchCommand::Whole { run, of: 4 }).unwrap();
        phone.bench(2_050, BenchCommand::PlanBatch { job: job(on), op: "coat".into(), n: 4 }).unwrap();
        check((&phone, on), false, (Some(4), Some(4)));
    }

    /// The clock was set back by half an hour after the run began: done is done, and lies not before the start.
    #[test]
    fn inv05_done_with_it_on_a_clock_set_back() {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stools");
        let run = phone.start(100, "coat", on);
        phone.bench(70, BenchCommand::Whole { run, of: 2 }).unwrap();
        check((&phone, on), true, (Some(2), None));
        phone.stop(75, run);
        check((&phone, on), true, (Some(2), None));
    }
}
