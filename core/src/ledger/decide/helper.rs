//! A run put right beyond its ends: of which job it was, and who worked along, from when to when, for what pay.

use super::Act;
use super::bench::{done, no_crowd, on_known, on_what, payable};
use crate::bench::{Bench, Head, On, Run};
use crate::ledger::Book;
use crate::ledger::kind::bench as kind;
use crate::quantity::{Id, Moment, Money};
use crate::refusal::{Answer, Refusal};

/// Its pieces and helpers go along: each helper's pay has to be a cost of the other job too.
pub(super) fn move_run(book: &Book, run: &Run, on: On, act: &mut Act) -> Answer<()> {
    on_known(book, on)?;
    if on == run.work.on {
        return Err(Refusal::NothingAsked);
    }
    for head in &run.heads {
        payable(book, on, head.pay)?;
    }
    let (job, haul) = on_what(on);
    done(act.add(kind::RunMoved { run: run.id, job, haul }))
}

pub(super) fn recall(book: &Book, run: &Run, (from, to, pay): (Moment, Option<Moment>, Option<Money>), act: &mut Act) -> Answer<()> {
    within(run, (from, to), act)?;
    no_crowd(run.heads_most((from, to.unwrap_or(run.end(act.now().wall.at))), None).saturating_add(1))?;
    payable(book, run.work.on, pay)?;
    done(act.add(kind::HelperRecalled { run: run.id, from, to, person: None, pay }))
}

/// Those of the run before come along, each from the start of this one, or from when they came.
pub(super) fn stay(book: &Book, bench: &Bench, run: &Run, act: &mut Act) -> Answer<()> {
    let heads = bench.at_the_switch(run);
    if heads.is_empty() {
        return Err(Refusal::NothingAsked);
    }
    for head in heads {
        payable(book, run.work.on, head.pay)?;
        act.add(kind::HelperRecalled { run: run.id, from: head.from, to: None, person: head.person, pay: head.pay });
    }
    Ok(())
}

/// Those of the run before went with the switch: they are at this one for no minute.
pub(super) fn gone(bench: &Bench, run: &Run, act: &mut Act) -> Answer<()> {
    let heads = bench.at_the_switch(run);
    let before = bench.before_the_switch(run).filter(|_| !heads.is_empty()).ok_or(Refusal::NothingAsked)?;
    for head in heads {
        act.add(kind::HelperMended { run: before.id, helper: head.id, from: None, to: Some(head.from), pay: None });
    }
    Ok(())
}

/// What is put right of a helper.
type Words = (Id, Option<Moment>, Option<Moment>, Option<Money>);

pub(super) fn mend(book: &Book, run: &Run, (helper, from, to, pay): Words, act: &mut Act) -> Answer<()> {
    let head = run.heads.iter().find(|head| head.id == helper).ok_or(Refusal::NotThere)?;
    if from.is_none() && to.is_none() && pay.is_none() {
        return Err(Refusal::NothingAsked);
    }
    if from.is_some() || to.is_some() {
        let end = run.end(act.now().wall.at);
        let (from, to) = (from.unwrap_or(head.from.max(run.started.at)), to.or(head.to.map(|to| to.min(end))));
        within(run, (from, to), act)?;
        once(run, head, (from, to.unwrap_or(end)))?;
        no_crowd(run.heads_most((from, to.unwrap_or(end)), Some(head.id)).saturating_add(head.n))?;
    }
    payable(book, run.work.on, pay)?;
    done(act.add(kind::HelperMended { run: run.id, helper, from, to, pay }))
}

/// Who was named is at one run once at a time.
fn once(run: &Run, head: &Head, (from, to): (Moment, Moment)) -> Answer<()> {
    let mut others = run.heads.iter().filter(|other| head.person.is_some() && other.person == head.person && other.id != head.id);
    let is_there = |other: &Head| other.from < to && other.to.is_none_or(|left| from < left);
    if others.any(is_there) { Err(Refusal::HelperThere) } else { Ok(()) }
}

/// Ends that are in order and lie in the run.
fn within(run: &Run, (from, to): (Moment, Option<Moment>), act: &Act) -> Answer<()> {
    let (start, end) = (run.started.at, run.end(act.now().wall.at));
    let to = to.unwrap_or(end);
    if to <= from {
        return Err(Refusal::EndNotAfterStart { start: from, end: to });
    }
    match [from, to].into_iter().find(|at| *at < start || end < *at) {
        Some(met) => Err(Refusal::NotInRun { met, start, end }),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BenchCommand, Command, WaitCommand};
    use super::*;
    use crate::bench::{Kind, Stage};
    use crate::ledger::fold;
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Currency, Decimal};

    fn dollars(amount: i64) -> Money {
        Money::whole(Decimal::from(amount), Currency::USD).unwrap()
    }

    /// A run of the first job from 0 to 60 with two pieces, and another job.
    fn told() -> (Phone, Id, On) {
        let mut phone = Phone::new("a");
        let (stools, shelf) = (phone.job(0, "stools"), phone.job(0, "shelf"));
        let run = phone.start(0, "sand", stools);
        phone.bench(20, BenchCommand::Done { run, n: 2 }).unwrap();
        phone.stop(60, run);
        (phone, run, shelf)
    }

    fn recall(run: Id, from: i64, to: Option<i64>) -> BenchCommand {
        BenchCommand::RecallHelper { run, from: at(from), to: to.map(at), pay: Some(dollars(18)) }
    }

    /// A helper from minute 10 on, two switches at 60 and 90, a stop at 120: each run that nobody answered for is asked about, one after
    /// the other, and never again.
    #[test]
    fn each_switch_is_asked_about_until_it_is_answered() {
        let check = |answers: &[fn(Id) -> BenchCommand], asked: &[&str], labour: [i64; 3]| {
            let mut phone = Phone::new("a");
            let stools = phone.job(0, "stools");
            let first = phone.start(0, "carry", stools);
            phone.bench(10, BenchCommand::HelperJoins { run: first, person: None, pay: Some(dollars(18)) }).unwrap();
            phone.start(60, "sand", stools);
            let last = phone.start(90, "oil", stools);
            phone.stop(120, last);
            let to_settle = |phone: &Phone| phone.runs().with_heads_to_settle(None, at(0)).into_iter().cloned().collect::<Vec<_>>();
            for answer in answers {
                let run = to_settle(&phone)[0].id;
                phone.bench(130, answer(run)).unwrap();
                assert_eq!(phone.bench(131, answer(run)), Err(Refusal::NothingAsked));
            }
            assert_eq!(to_settle(&phone).iter().map(|run| &*run.work.op).collect::<Vec<_>>(), asked);
            assert_eq!(phone.runs().with_heads_to_settle(None, at(61)), Vec::<&Run>::new(), "long ago");
            assert_eq!(phone.runs().runs().map(|run| run.labour(at(200)).as_minutes()).collect::<Vec<_>>(), labour);
        };
        let stay = |run| BenchCommand::HelpersStay { run };
        let gone = |run| BenchCommand::HelpersGone { run };
        check(&[], &["sand"], [110, 30, 30]);
        check(&[gone], &[], [110, 30, 30]);
        check(&[stay], &["oil"], [110, 60, 30]);
        check(&[stay, stay], &[], [110, 60, 60]);
        check(&[stay, gone], &[], [110, 60, 30]);
    }

    /// Two helpers from minute 10 and 20 on, one left at 30, a switch at 60, or so long before: who may have stayed, from when, and the
    /// labour of the second run by 120.
    #[test]
    fn who_was_there_at_a_switch_may_stay() {
        let check = |ago: i64, switch: bool, from: &[i64], labour: i64| {
            let mut phone = Phone::new("a");
            let stools = phone.job(0, "stools");
            let first = phone.start(0, "carry", stools);
            for (minute, pay) in [(10, 18), (20, 15), (50, 15)] {
                phone.bench(minute, BenchCommand::HelperJoins { run: first, person: None, pay: Some(dollars(pay)) }).unwrap();
                if minute == 20 {
                    phone.bench(30, BenchCommand::HelperLeaves { run: first, person: None }).unwrap();
                }
            }
            if !switch {
                phone.stop(60, first);
            }
            let work = crate::ledger::told::work("sand", stools);
            phone.bench(60, BenchCommand::Start { work, ago: crate::quantity::Span::minutes(ago) }).unwrap();
            let run = phone.runs().running(None).cloned().unwrap();
            assert_eq!(
                phone.runs().at_the_switch(&run).iter().map(|head| head.from).collect::<Vec<_>>(),
                from.iter().map(|m| at(*m)).collect::<Vec<_>>()
            );
            let stay = phone.bench(70, BenchCommand::HelpersStay { run: run.id });
            assert_eq!(stay.err(), from.is_empty().then_some(Refusal::NothingAsked));
            assert_eq!(phone.runs().run(run.id).unwrap().labour(at(120)).as_minutes(), labour, "{ago} {switch}");
            assert_eq!(phone.bench(71, BenchCommand::HelpersStay { run: run.id }), Err(Refusal::NothingAsked), "asked once");
        };
        check(0, true, &[60, 60], 180);
        check(15, true, &[45, 50], 75 + 75 + 70);
        check(0, false, &[], 60);
    }

    #[test]
    fn a_run_goes_to_another_job_or_none_with_its_pieces_helpers_and_waits() {
        let (mut phone, run, shelf) = told();
        phone.bench(70, recall(run, 10, Some(40))).unwrap();
        let laid =
            super::super::Laid { what: crate::quantity::Key::read("glue").unwrap(), stuff: None, span: crate::quantity::Span::minutes(90) };
        phone.order(71, Command::Wait(WaitCommand::Clamp { run, n: 1, laid })).unwrap();
        for (minute, on) in [(72, shelf), (73, On::Nothing), (74, shelf)] {
            phone.bench(minute, BenchCommand::Move { run, on }).unwrap();
            let runs = phone.runs();
            let moved = runs.run(run).unwrap();
            assert_eq!((moved.work.on, moved.done(), moved.labour(at(80)).as_minutes()), (on, 3, 90));
            assert_eq!(runs.on(on).count(), 1);
            let waits = fold::waits(&phone.book);
            assert_eq!(waits.all().map(|wait| wait.job.map_or(On::Nothing, On::Job)).collect::<Vec<_>>(), [on]);
        }
        assert_eq!(phone.bench(75, BenchCommand::Move { run, on: shelf }).err(), Some(Refusal::NothingAsked));
        assert_eq!(phone.bench(75, BenchCommand::Move { run, on: On::Job(run) }).err(), Some(Refusal::NotThere));
    }

    #[test]
    fn an_operation_that_is_picked_brings_its_kind_and_stage() {
        let (mut phone, run, _) = told();
        let office = BenchCommand::Rename { run, op: "messages".into(), kind: Kind::Office, stage: Stage::Sell };
        phone.bench(70, office).unwrap();
        let work = phone.runs().run(run).unwrap().work.clone();
        assert_eq!((work.op.as_str(), work.kind, work.stage), ("messages", Kind::Office, Stage::Sell));
        let said = |op: &str| BenchCommand::Rename { run, op: op.into(), kind: Kind::Make, stage: Stage::Finish };
        assert_eq!(phone.bench(71, said(" ")).err(), Some(Refusal::NameMissing));
        phone.bench(72, said("oil")).unwrap();
        assert_eq!(phone.runs().run(run).unwrap().work.stage, Stage::Finish);
    }

    /// A helper from and to; how many minutes they worked, or why not.
    #[track_caller]
    fn check(from: i64, to: Option<i64>, found: Result<i64, Refusal>) {
        let (mut phone, run, _) = told();
        let said = phone.bench(70, recall(run, from, to));
        let minutes = phone.runs().run(run).unwrap().labour(at(70)).as_minutes() - 60;
        assert_eq!(said.map(|_| minutes), found, "{from} to {to:?}");
    }

    /// A run from 0 to 100 of one, with so many who came at 10 and went at 50; then somebody more.
    #[test]
    fn the_21st_head_is_refused_however_they_are_told_of() {
        use crate::ledger::told::work;
        let too_many = Err(Refusal::TooManyHeads { would_be: 21, most: 20 });
        let check = |many: u32, word: &dyn Fn(Id, &[Id]) -> BenchCommand, answer: Answer<()>| {
            let mut phone = Phone::new("a");
            let run = phone.start(0, "carry", On::Nothing);
            let heads: Vec<Id> =
                (0..many).map(|_| phone.bench(10, BenchCommand::HelperJoins { run, person: None, pay: None }).unwrap()).collect();
            assert_eq!(phone.bench(20, word(run, &heads)).map(drop), answer, "{many}");
        };
        let joins = |run: Id, _: &[Id]| BenchCommand::HelperJoins { run, person: None, pay: None };
        let was = |from: i64, to: Option<i64>| {
            move |run: Id, _: &[Id]| BenchCommand::RecallHelper { run, from: at(from), to: to.map(at), pay: None }
        };
        check(18, &joins, Ok(()));
        check(19, &joins, too_many.clone());
        check(19, &was(10, None), too_many.clone());
        check(19, &was(5, Some(10)), Ok(())); // gone when the others came
        check(19, &was(5, Some(15)), too_many.clone()); // still there then
        check(19, &was(5, None), too_many.clone());
        check(18, &was(5, None), Ok(()));
        let recall =
            |heads| move |_: Id, _: &[Id]| BenchCommand::Recall { work: work("saw", On::Nothing), start: at(-60), stop: at(-10), heads };
        check(0, &recall(20), Ok(()));
        check(0, &recall(21), too_many.clone());
        // Who was there before the others is put right to have stayed.
        let mut phone = Phone::new("a");
        let run = phone.start(0, "carry", On::Nothing);
        let early = phone.bench(20, BenchCommand::RecallHelper { run, from: at(2), to: Some(at(8)), pay: None }).unwrap();
        for _ in 0..19 {
            phone.bench(20, BenchCommand::RecallHelper { run, from: at(10), to: None, pay: None }).unwrap();
        }
        let to = |to: i64| BenchCommand::MendHelper { run, helper: early, from: None, to: Some(at(to)), pay: None };
        assert_eq!([10, 11].map(|minute| phone.bench(20, to(minute)).map(drop)), [Ok(()), too_many]);
    }

    #[test]
    fn a_helper_who_was_forgotten_is_written_down_within_the_run() {
        check(0, Some(60), Ok(60));
        check(10, Some(40), Ok(30));
        check(10, None, Ok(50));
        let not_in = |met: i64| Err(Refusal::NotInRun { met: at(met), start: at(0), end: at(60) });
        check(-1, Some(40), not_in(-1));
        check(10, Some(61), not_in(61));
        check(40, Some(40), Err(Refusal::EndNotAfterStart { start: at(40), end: at(40) }));
        check(60, None, Err(Refusal::EndNotAfterStart { start: at(60), end: at(60) }));
    }

    #[test]
    fn a_helpers_times_and_pay_are_put_right_and_the_last_word_stands() {
        let (mut phone, run, _) = told();
        let helper = phone.bench(70, recall(run, 10, Some(40))).unwrap();
        let mend =
            |from: Option<i64>, to: Option<i64>, pay| BenchCommand::MendHelper { run, helper, from: from.map(at), to: to.map(at), pay };
        phone.bench(71, mend(Some(5), None, None)).unwrap();
        phone.bench(72, mend(None, Some(50), None)).unwrap();
        phone.bench(73, mend(None, None, Some(dollars(20)))).unwrap();
        let seen = |phone: &Phone| phone.runs().run(run).unwrap().paid(at(80));
        assert_eq!(seen(&phone).iter().map(|(_, pay, span)| (*pay, span.as_minutes())).collect::<Vec<_>>(), [(dollars(20), 45)]);
        phone.bench(74, mend(None, None, Some(dollars(0)))).unwrap();
        assert_eq!(seen(&phone), [], "pay of nothing is no pay");
        assert_eq!(phone.bench(75, mend(None, None, None)).err(), Some(Refusal::NothingAsked));
        assert_eq!(phone.bench(75, mend(Some(50), None, None)).err(), Some(Refusal::EndNotAfterStart { start: at(50), end: at(50) }));
        phone.take_back(76, helper);
        assert_eq!(phone.runs().run(run).unwrap().heads, [], "a helper who was struck is gone, with what was said of them");
    }

    /// Named, from 10 to 20 and from 30 to 40: the first stay may be put right up to the second, and not into it.
    #[test]
    fn a_named_helpers_stays_do_not_meet() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "carry", On::Nothing);
        let ada = Some(run);
        let joins = |minute, phone: &mut Phone| phone.bench(minute, BenchCommand::HelperJoins { run, person: ada, pay: None }).unwrap();
        let first = joins(10, &mut phone);
        phone.bench(20, BenchCommand::HelperLeaves { run, person: ada }).unwrap();
        joins(30, &mut phone);
        phone.bench(40, BenchCommand::HelperLeaves { run, person: ada }).unwrap();
        phone.stop(60, run);
        let to = |minute| BenchCommand::MendHelper { run, helper: first, from: None, to: Some(at(minute)), pay: None };
        assert_eq!([30, 31].map(|minute| phone.bench(70, to(minute)).map(drop)), [Ok(()), Err(Refusal::HelperThere)]);
        assert_eq!(phone.runs().run(run).unwrap().labour(at(70)).as_minutes(), 60 + 20 + 10);
    }

    /// Two phones put the same helper right, one the times, one the pay and the time again: both words stand, the later of two on one, whichever
    /// book is read into the other, and each is taken back alone.
    #[test]
    fn words_of_two_phones_on_a_helper_stand_together() {
        let (mut one, run, _) = told();
        let helper = one.bench(70, recall(run, 10, Some(40))).unwrap();
        let mut other = Phone::new("b");
        other.merge(&one);
        let mend =
            |from: Option<i64>, to: Option<i64>, pay| BenchCommand::MendHelper { run, helper, from: from.map(at), to: to.map(at), pay };
        one.bench(71, mend(Some(5), Some(45), None)).unwrap();
        let later = other.bench(72, mend(None, Some(50), Some(dollars(20)))).unwrap();
        one.merge(&other);
        other.merge(&one);
        let seen = |phone: &Phone| {
            let run = phone.runs().run(run).unwrap().clone();
            (
                run.labour(at(80)).as_minutes() - 60,
                run.paid(at(80)).iter().map(|(_, pay, span)| (*pay, span.as_minutes())).collect::<Vec<_>>(),
            )
        };
        assert_eq!([seen(&one), seen(&other)], [45, 45].map(|minutes| (minutes, vec![(dollars(20), minutes)])));
        one.take_back(80, later);
        assert_eq!(seen(&one), (40, vec![(dollars(18), 40)]), "the times of the first stand, and the pay of before");
    }

    #[test]
    fn a_helper_who_stays_leaves_with_a_tap() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "sand", On::Nothing);
        phone.bench(30, recall(run, 10, None)).unwrap();
        phone.bench(40, BenchCommand::HelperLeaves { run, person: None }).unwrap();
        phone.stop(60, run);
        assert_eq!(phone.runs().run(run).unwrap().labour(at(90)).as_minutes(), 90);
    }
}
