//! An operation the maker is done with, though none of its pieces was noted.

use crate::bench::{Bench, Kind, On, Run};
use crate::ledger::fold::Job;
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Moment};
use crate::sheet::estimate::coats::is_one_coat;
use crate::sheet::estimate::left::batch_of;

/// What saying "done with it" writes of an operation: its last run, and of how many pieces it is then done. None of one that was not begun,
/// is done, or of which some pieces are noted and others are left, but where each of them was put to wait and nobody said how many there are: one
/// clamping may hold all (ours); a first coat is on all pieces, also where the plan alone said on how many they
/// are, until something else is made: one more may follow, unless each coat is planned by itself.
pub fn whole((bench, book): (&Bench, &Book), (on, op): (On, &str), now: Moment) -> Option<(Id, Count)> {
    let On::Job(id) = on else { return None };
    let last: &Run = bench.on(on).rfind(|run| run.work.op == op && !run.work.rework)?;
    let job = fold::job(book, id).filter(|job| job.ended.is_none())?;
    let batch = batch_of(bench, (&job, op), now);
    let coats = bench.is_coated(on, op) && !is_one_coat(bench, &job, op);
    let may_follow =
        || coats && batch.only_planned && bench.on(on).rfind(|run| run.work.kind == Kind::Make).is_some_and(|it| it.id == last.id);
    let each = if last.work.kind == Kind::Make { job.pieces } else { 1 };
    let may_be_all = || batch.n < batch.of.unwrap_or(each) && is_all_clamped(bench, (on, op), now);
    if (batch.is_done() && !may_follow()) || (0 < batch.n && !coats && !may_be_all()) {
        return None;
    }
    let usual = if coats { all_coated(bench, (&job, op), batch.n) } else { batch.of.unwrap_or(each) };
    Some((last.id, usual.max(1)))
}

/// Each piece of an operation that is noted was put to wait as it was, and how many there are nobody said at the bench.
fn is_all_clamped(bench: &Bench, (on, op): (On, &str), now: Moment) -> bool {
    let runs = || bench.on(on).filter(|run| run.work.op == op && !run.work.rework);
    let is_clamped = |run: &Run| run.notches.iter().all(|notch| run.clamped.contains(&notch.at));
    bench.batch(on, op, now).of.is_none() && runs().all(is_clamped)
}

/// Pieces that are coated once the maker is done with it: those that are noted, and where they are fewer than there are, all (ours). One noted in
/// each run is a coat then, and not a piece.
fn all_coated(bench: &Bench, (job, op): (&Job, &str), noted: Count) -> Count {
    let planned = job.operations.iter().find(|planned| planned.op == op).and_then(|planned| planned.pieces);
    let each = bench.coated_each(On::Job(job.id), op).or(planned).unwrap_or(job.pieces).max(1);
    if each <= noted {
        return noted;
    }
    let runs = bench.on(On::Job(job.id)).filter(|run| run.work.op == op && 0 < run.done()).count();
    let coats = Count::try_from(runs).ok().filter(|runs| *runs == noted);
    coats.unwrap_or(1).max(1).saturating_mul(each)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Subject;
    use crate::ledger::decide::{BenchCommand, Command, Laid, WaitCommand};
    use crate::ledger::kind::job::{JobEnded, OperationPlanned};
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Key, Span};
    use crate::refusal::Refusal;
    use crate::sheet::Shop;
    use crate::sheet::bench::{BenchSheet, Seen, bench};
    use crate::sheet::estimate::rows_of;

    /// Five stands, sanded for an hour of the three that were planned, then oil; pieces that were said and noted: of how many it is done.
    #[test]
    fn an_operation_without_pieces_is_done_when_it_is_said() {
        let check = |said: Option<Count>, noted: Count, then: Option<Count>| {
            let mut phone = Phone::new("a");
            let on = phone.job(0, "stands");
            let On::Job(job) = on else { unreachable!() };
            for op in ["sand", "oil"] {
                let (op, span) = (op.to_owned(), Some(Span::minutes(180)));
                phone.note(1, OperationPlanned { job, op, kind: Kind::Make, stage: None, span, pieces: None });
            }
            if let Some(n) = said {
                phone.bench(2, BenchCommand::PlanBatch { job, op: "sand".into(), n }).unwrap();
            }
            let run = phone.start(10, "sand", on);
            if 0 < noted {
                phone.bench(20, BenchCommand::Done { run, n: noted }).unwrap();
            }
            phone.stop(70, run);
            let found = |phone: &Phone| whole((&phone.runs(), &phone.book), (on, "sand"), at(80));
            assert_eq!(found(&phone), then.map(|n| (run, n)), "{said:?} {noted}");
            let Some(of) = then else { return };
            let left = |phone: &Phone| {
                let shop = Shop::of(&phone.book, at(90));
                let rows = rows_of(&shop, (&shop.job(job).unwrap(), shop.history()), false);
                rows.iter().find(|row| row.op.as_deref() == Some("sand")).map(|row| row.to_come().as_minutes()).unwrap_or_default()
            };
            let seen = |phone: &Phone| bench(&phone.book, Seen { now: phone.wall(90), ..Seen::default() });
            let first = |sheet: BenchSheet| sheet.rack.below.first().map(|one| one.op.clone());
            assert!(0 < left(&phone));
            assert_eq!(first(seen(&phone)), Some("sand".into()));
            let entries = phone.book.about(Subject::Bench).count();
            let last = phone.bench(85, BenchCommand::Whole { run, of }).unwrap();
            assert_eq!((left(&phone), found(&phone), first(seen(&phone))), (0, None, Some("oil".into())));
            assert_eq!(phone.bench(86, BenchCommand::Whole { run, of }), Err(Refusal::NothingAsked));
            assert_eq!(phone.runs().of_job(job, at(90)).own.total().as_minutes(), 60, "no minute more");
            let act = phone.book.entry(last).and_then(|(entry, _)| entry.act).unwrap_or(last);
            phone.take_back(87, act);
            assert_eq!(phone.book.about(Subject::Bench).count(), entries);
            assert!(0 < left(&phone) && found(&phone).is_some());
        };
        check(None, 0, Some(5));
        check(Some(3), 0, Some(3));
        check(Some(3), 1, None);
        check(Some(1), 1, None);
        check(None, 2, None);
    }

    #[test]
    fn what_was_not_begun_is_not_done() {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stands");
        assert_eq!(whole((&phone.runs(), &phone.book), (on, "sand"), at(1)), None);
        assert_eq!(whole((&phone.runs(), &phone.book), (On::Nothing, "sand"), at(1)), None);
        assert_eq!(phone.bench(2, BenchCommand::Whole { run: phone_id(on), of: 1 }), Err(Refusal::NotThere));
    }

    fn phone_id(on: On) -> Id {
        if let On::Job(id) = on { id } else { unreachable!() }
    }

    /// Five stands; so many are noted as coated in each run, a day apart. Of how many it is done, and what the same coats take on five others.
    #[track_caller]
    fn coated(noted: &[Count], of: Count) {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stands");
        let job = phone_id(on);
        for (minute, n) in (0..).step_by(1_440).zip(noted) {
            let run = phone.start(minute + 10, "coat", on);
            let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_200) };
            phone.order(minute + 20, Command::Wait(WaitCommand::Clamp { run, n: *n, laid })).unwrap();
            phone.stop(minute + 70, run);
        }
        let runs = i64::try_from(noted.len()).unwrap();
        let now = 1_440 * runs;
        let (run, said) = whole((&phone.runs(), &phone.book), (on, "coat"), at(now)).unwrap();
        assert_eq!(said, of, "{noted:?}");
        phone.bench(now, BenchCommand::Whole { run, of }).unwrap();
        phone.note(now + 1, JobEnded { job, hauls: vec![] });
        let On::Job(other) = phone.job(now + 2, "other stands") else { unreachable!() };
        let (op, span) = ("coat".to_owned(), Some(Span::minutes(10)));
        phone.note(now + 3, OperationPlanned { job: other, op, kind: Kind::Make, stage: None, span, pieces: None });
        let shop = Shop::of(&phone.book, at(now + 4));
        let rows = rows_of(&shop, (&shop.job(other).unwrap(), shop.history()), false);
        // An hour each run; how the first piece and those after it share it moves the middle a little.
        let likely = rows[0].likely.as_minutes();
        assert!((60 * runs..=70 * runs).contains(&likely), "{noted:?}: {likely}");
    }

    #[test]
    fn coats_are_on_all_pieces_once_the_maker_is_done() {
        coated(&[1], 5);
        coated(&[5], 5);
        coated(&[3], 5);
        coated(&[1, 1], 10);
        coated(&[1, 1, 1], 15);
        coated(&[5, 5], 10);
        coated(&[2, 3], 5);
        coated(&[5, 1], 6);
    }

    /// Four stools in one clamping: whether that is all of it the maker says, where nobody said at the bench how many there are.
    #[test]
    fn one_clamping_may_hold_all() {
        let found = |glued: &str| {
            let told = format!(
                "2026-03-02 08:00 +00:00 workshop EUR metric\njob stools \"Stools\" 4 order\n09:00 start \"glue up\" make on stools\n{glued}stop\n"
            );
            let story = crate::story::tell(&told);
            assert_eq!(story.refused, [], "{told}");
            let on = On::Job(story.names.job("stools").unwrap());
            whole((&fold::bench(&story.book), &story.book), (on, "glue up"), story.now.at).map(|(_, of)| of)
        };
        assert_eq!(found("09:30 clamped 1 glue 90 min\n09:31 "), Some(4));
        assert_eq!(found("09:30 clamped 4 glue 90 min\n09:31 "), None);
        assert_eq!(found("batch 4 \"glue up\" for stools\n09:30 clamped 1 glue 90 min\n09:31 "), None);
        assert_eq!(found("09:20 done 1\n09:30 clamped 1 glue 90 min\n09:31 "), None);
    }
}
