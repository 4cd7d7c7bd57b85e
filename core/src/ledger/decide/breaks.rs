//! A break in a run that has ended: it stopped when the break began, and went on as time written down afterwards when that was over.

use super::Act;
use super::bench::{beyond_default, done, free, mend, on_what};
use crate::bench::{Bench, Head, Run};
use crate::ledger::kind::bench as kind;
use crate::ledger::kind::book::Struck;
use crate::quantity::{Id, Moment, Wall};
use crate::refusal::{Answer, Refusal};

/// The rest after the break is of the same work, with those who worked along after it began; the pieces stay where they were noted, at their
/// moments, with what was put to wait with them. A break at an end of the run is no break: the run began later, or stopped sooner. Of a run that
/// may be a forgotten stop its end comes first: a break answers for nothing.
pub(super) fn take_out(bench: &Bench, run: &Run, (from, to): (Moment, Moment), act: &mut Act) -> Answer<()> {
    let (start, end) = (run.started.at, run.end(act.now().wall.at));
    if run.is_running() {
        return Err(Refusal::NotThere);
    }
    if bench.is_doubtful(run, act.now().wall.at) {
        return Err(Refusal::EndToSettle { run: run.id });
    }
    within((start, end), (from, to))?;
    let wall = |at| Wall::new(at, run.started.offset);
    match (from == start, to == end) {
        (true, true) => Err(Refusal::BreakNotInRun { met: from, start, end }),
        (true, false) => mend(bench, run, (Some(wall(to)), None, &None), act),
        (false, true) => mend(bench, run, (None, Some(from), &None), act),
        (false, false) => {
            free(bench, run.work.person, (to, end), Some(run.id))?;
            mend(bench, run, (None, Some(from), &None), act)?;
            let rest = rest(run, (wall(to), end), act);
            let rest = act.add(rest);
            run.heads.iter().for_each(|head| along((run, head), (from, to, end), rest, act));
            done(rest)
        }
    }
}

/// Ends that are in order and lie in the run.
fn within((start, end): (Moment, Moment), (from, to): (Moment, Moment)) -> Answer<()> {
    if to <= from {
        return Err(Refusal::EndNotAfterStart { start: from, end: to });
    }
    let outside = [from, to].into_iter().find(|at| *at < start || end < *at);
    outside.map_or(Ok(()), |met| Err(Refusal::BreakNotInRun { met, start, end }))
}

fn rest(run: &Run, (from, stop): (Wall, Moment), act: &Act) -> kind::RunRecalled {
    let work = run.work.clone();
    let ((job, haul), (stage, rework)) = (on_what(work.on), beyond_default(&work));
    let place = Some(from.offset).filter(|place| *place != act.now().wall.offset);
    let (op, kind, person) = (work.op, work.kind, work.person);
    kind::RunRecalled { op, kind, start: from.at, stop, job, haul, stage, person, rework, heads: None, place }
}

/// Who was there after the break is at the rest; nobody is at what ended with the break for longer than that.
fn along((run, head): (&Run, &Head), (from, to, end): (Moment, Moment, Moment), rest: Id, act: &mut Act) {
    let (came, went) = (head.from.max(to), head.to.unwrap_or(end).min(end));
    if came < went {
        let (person, pay, until) = (head.person, head.pay, head.to.map(|_| went));
        for _ in 0..head.n {
            act.add(kind::HelperRecalled { run: rest, from: came, to: until, person, pay });
        }
    }
    let is_own = head.id != run.id;
    if is_own && from <= head.from {
        act.add(Struck { entries: vec![head.id] });
    } else if is_own && head.to.is_some_and(|gone| from < gone) {
        act.add(kind::HelperMended { run: run.id, helper: head.id, from: None, to: Some(from), pay: None });
    }
}

#[cfg(test)]
mod tests {
    use super::super::wait::{Laid, WaitCommand};
    use super::super::{BenchCommand, Command};
    use super::*;
    use crate::bench::Shares;
    use crate::ledger::fold;
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Currency, Decimal, Key, Listed, Money, Span};

    /// Sand from 5 to 245 (9:05 to 13:05), with a piece at 60, two at 200, and a helper at 18 an hour from 30 on.
    fn sand() -> (Phone, Id) {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let run = phone.start(5, "sand", stands);
        let pay = Money::whole(Decimal::new(18, 0), Currency::USD);
        phone.bench(30, BenchCommand::HelperJoins { run, person: None, pay }).unwrap();
        phone.bench(60, BenchCommand::Done { run, n: 1 }).unwrap();
        phone.bench(200, BenchCommand::Done { run, n: 2 }).unwrap();
        phone.stop(245, run);
        (phone, run)
    }

    fn of(run: Id, from: i64, to: i64) -> BenchCommand {
        BenchCommand::Break { run, from: at(from), to: at(to) }
    }

    /// Of each part of sand: its minutes, its pieces, its minutes with those who worked along.
    fn parts(phone: &Phone) -> Vec<(i64, u32, i64)> {
        let now = at(400);
        phone.runs().runs().map(|run| (run.worked(now).as_minutes(), run.done(), run.labour(now).as_minutes())).collect()
    }

    /// Breaks from 70 to 80 and from 210 to 220, whichever is told first: the pieces stay where they were noted, at their own time.
    #[test]
    fn two_breaks_leave_each_piece_at_its_time() {
        let noted = |breaks: [(i64, i64); 2]| {
            let (mut phone, run) = sand();
            phone.bench(300, BenchCommand::Done { run, n: 4 }).unwrap();
            for (from, to) in breaks {
                let bench = phone.runs();
                let of_it = bench.runs().rfind(|run| run.started.at <= at(from)).unwrap().id;
                phone.bench(400, of(of_it, from, to)).unwrap();
            }
            let notes = |run: &Run| run.notches.iter().map(|note| (at(0).until(note.at).as_minutes(), note.n)).listed();
            phone.runs().runs().map(notes).listed()
        };
        let parts = [vec![(60, 1), (200, 2), (300, 4)], vec![], vec![]];
        assert_eq!(noted([(70, 80), (210, 220)]), parts);
        assert_eq!(noted([(210, 220), (70, 80)]), parts);
        assert_eq!(noted([(70, 80), (190, 220)]), parts);
    }

    /// Lunch from 180 to 225 (12:00 to 12:45): 175 minutes before it and 20 after, by hand.
    #[test]
    fn lunch_is_in_no_total_and_the_pieces_stay() {
        let (mut phone, run) = sand();
        assert_eq!(parts(&phone), [(240, 3, 240 + 215)]);
        let all = |phone: &Phone| {
            let bench = phone.runs();
            let run = bench.run(run).unwrap();
            let batch = bench.batch(run.work.on, "sand", at(400));
            let paid = bench.runs().flat_map(|run| run.paid(at(400))).map(|(_, _, span)| span.as_minutes()).sum::<i64>();
            (batch.n, batch.all().as_minutes(), paid)
        };
        assert_eq!(all(&phone), (3, 240, 215));
        let rest = phone.bench(300, of(run, 180, 225)).unwrap();
        assert_eq!(parts(&phone), [(175, 3, 175 + 150), (20, 0, 20 + 20)]);
        assert_eq!(all(&phone), (3, 195, 170));
        let bench = phone.runs();
        let shares: Vec<Shares> = bench.runs().map(|run| run.shares(at(400))).collect();
        let minutes = |nth: usize| (shares[nth].corrected.as_minutes(), shares[nth].recalled.as_minutes());
        assert_eq!([minutes(0), minutes(1)], [(175, 0), (0, 20)], "an end that nobody clocked");
        assert_eq!(bench.runs().map(|run| run.doubts(at(400))).collect::<Vec<_>>(), [vec![], vec![]]);
        let act = phone.book.entry(rest).unwrap().0.act.unwrap();
        phone.take_back(301, act);
        assert_eq!((parts(&phone), all(&phone)), (vec![(240, 3, 240 + 215)], (3, 240, 215)), "one act");
    }

    /// Six pieces by the end of a first run, then a second one, and only then lunch of the first: 200 minutes for six, whenever that is said.
    #[test]
    fn pieces_keep_their_moments() {
        let (mut phone, run) = sand();
        let stands = phone.runs().run(run).unwrap().work.on;
        phone.bench(246, BenchCommand::DoneInAll { run, n: 6 }).unwrap();
        let second = phone.start(300, "sand", stands);
        phone.stop(420, second);
        let batch = |phone: &Phone| phone.runs().batch(stands, "sand", at(500));
        let before = batch(&phone);
        phone.bench(490, of(run, 180, 225)).unwrap();
        let after = batch(&phone);
        assert_eq!([before.n, after.n], [6, 6]);
        assert_eq!([before.time, after.time].map(|time| time.as_minutes()), [240, 195], "up to the last of them");
        assert_eq!([before.since, after.since].map(|time| time.as_minutes()), [120, 120]);
    }

    /// Two more are put in clamps at 240; at 250 lunch is taken out: they wait as they did.
    #[test]
    fn what_waits_waits_on() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let run = phone.start(5, "glue", stands);
        let laid = Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(90) };
        phone.order(240, Command::Wait(WaitCommand::Clamp { run, n: 2, laid })).unwrap();
        phone.stop(245, run);
        let waits = |phone: &Phone| fold::waits(&phone.book).all().map(|wait| (wait.n, wait.off())).collect::<Vec<_>>();
        assert_eq!(waits(&phone), [(2, at(330))]);
        phone.bench(250, of(run, 180, 225)).unwrap();
        assert_eq!(waits(&phone), [(2, at(330))]);
    }

    /// Nobody said when it stopped: the three hours up to lunch would be answered for by lunch, with all that came after.
    #[test]
    fn the_end_of_a_run_in_question_comes_before_its_break() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let run = phone.start(5, "sand", stands);
        phone.stop(5 + 23 * 60, run);
        let later = 5 + 24 * 60;
        assert_eq!(phone.bench(later, of(run, 185, 230)), Err(Refusal::EndToSettle { run }));
        phone.bench(later, BenchCommand::Confirm { run }).unwrap();
        assert!(phone.bench(later, of(run, 185, 230)).is_ok());
    }

    #[test]
    fn a_break_at_an_end_moves_that_end() {
        for (from, to, wanted) in [(5, 25, vec![(220, 3, 435)]), (205, 245, vec![(200, 3, 375)])] {
            let (mut phone, run) = sand();
            phone.bench(300, of(run, from, to)).unwrap();
            assert_eq!(parts(&phone), wanted, "{from} to {to}");
        }
    }

    #[test]
    fn a_break_out_of_the_run_is_refused() {
        let (mut phone, run) = sand();
        let out = |met: i64| Refusal::BreakNotInRun { met: at(met), start: at(5), end: at(245) };
        for (from, to, refused) in [
            (4, 25, out(4)),
            (200, 246, out(246)),
            (5, 245, out(5)),
            (60, 60, Refusal::EndNotAfterStart { start: at(60), end: at(60) }),
            (60, 50, Refusal::EndNotAfterStart { start: at(60), end: at(50) }),
        ] {
            assert_eq!(phone.bench(300, of(run, from, to)), Err(refused), "{from} to {to}");
        }
        let stands = phone.job(301, "frame");
        let runs = phone.start(302, "plane", stands);
        assert_eq!(phone.bench(400, of(runs, 310, 320)), Err(Refusal::NotThere), "it goes on");
    }

    /// A second phone wrote time down that lies in the same hours: no minute is counted twice, and in the break it is counted.
    #[test]
    fn no_minute_of_another_run_counts_twice() {
        for (from, to, before, after) in [(230, 240, 240, 195), (190, 220, 240, 195 + 30)] {
            let (mut phone, run) = sand();
            let mut other = Phone::new("b");
            let work = crate::ledger::told::work("mail", crate::bench::On::Nothing);
            other.bench(280, BenchCommand::Recall { work, start: at(from), stop: at(to), heads: 1 }).unwrap();
            phone.merge(&other);
            let all = |phone: &Phone| phone.minutes(400).iter().map(|(_, minutes)| minutes).sum::<i64>();
            assert_eq!(all(&phone), before, "{from} to {to}");
            phone.bench(300, of(run, 180, 225)).unwrap();
            assert_eq!(all(&phone), after, "{from} to {to}");
        }
    }
}
