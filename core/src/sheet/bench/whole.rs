//! An operation the maker is done with, though none of its pieces was noted.

use crate::bench::{Bench, Kind, On, Run};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Moment};
use crate::sheet::estimate::coats::is_one_coat;
use crate::sheet::estimate::left::batch_of;

/// What saying "done with it" writes of an operation: its last run, and of how many pieces it is then done. None of one that was not begun,
/// is done, or of which some pieces are noted and others are left; of coats those that are noted were all, also where the plan alone said on how
/// many pieces they are, until something else is made: one more may follow, unless each coat is planned by itself.
pub fn whole((bench, book): (&Bench, &Book), (on, op): (On, &str), now: Moment) -> Option<(Id, Count)> {
    let On::Job(id) = on else { return None };
    let last: &Run = bench.on(on).rfind(|run| run.work.op == op && !run.work.rework)?;
    let job = fold::job(book, id).filter(|job| job.ended.is_none())?;
    let batch = batch_of(bench, (&job, op), now);
    let coats = bench.is_coated(on, op) && !is_one_coat(bench, &job, op);
    let may_follow =
        || coats && batch.only_planned && bench.on(on).rfind(|run| run.work.kind == Kind::Make).is_some_and(|it| it.id == last.id);
    if (batch.is_done() && !may_follow()) || (0 < batch.n && !coats) {
        return None;
    }
    let each = if last.work.kind == Kind::Make { job.pieces } else { 1 };
    let usual = if coats { batch.n } else { batch.of.unwrap_or(each) };
    Some((last.id, usual.max(1)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Subject;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::kind::job::OperationPlanned;
    use crate::ledger::told::{Phone, at};
    use crate::quantity::Span;
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

    /// Two coats are noted, and dry: those were all.
    #[test]
    fn the_coats_that_are_noted_were_all() {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stands");
        let run = phone.start(10, "coat", on);
        for minute in [20, 40] {
            phone.bench(minute, BenchCommand::Done { run, n: 1 }).unwrap();
            let fact = crate::ledger::kind::wait::WaitBegan {
                op: "coat".into(),
                n: 1,
                span: Span::minutes(60),
                what: crate::quantity::Key::read("coat").unwrap(),
                job: Some(phone_id(on)),
                run: Some(run),
                stuff: None,
            };
            phone.note(minute, fact);
        }
        phone.stop(50, run);
        assert_eq!(whole((&phone.runs(), &phone.book), (on, "coat"), at(60)), Some((run, 2)));
        phone.bench(61, BenchCommand::Whole { run, of: 2 }).unwrap();
        assert_eq!(phone.runs().batch(on, "coat", at(62)).of, Some(2));
    }
}
