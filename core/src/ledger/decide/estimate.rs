//! Orders about estimates: tell old jobs, keep an estimate as it is given.

use super::Act;
use super::job::{PLAN_MOST, found, going_on, some_pieces};
use crate::bench::On;
use crate::bench::estimate::factor::{RATIO_MOST, is_sound};
use crate::ledger::kind::book::Struck;
use crate::ledger::kind::estimate as kind;
use crate::ledger::{Book, fold};
use crate::quantity::{Decimal, Id, Span};
use crate::refusal::{Answer, Refusal};

/// The most old jobs that are told in one act.
pub const TOLD_MOST: usize = 50;

/// What can be ordered of estimates.
#[derive(Clone, Debug, PartialEq)]
pub enum EstimateCommand {
    /// Old jobs, told together.
    Tell(Vec<kind::OldJobTold>),
    /// An old job is put right: the line that told it, and how it was.
    Retell { line: Id, job: kind::OldJobTold },
    /// The estimate of a job, as the sheet worked it out.
    Keep(kind::EstimateMade),
    /// The operations of a job are all there is to do, or not.
    SayWhole(kind::WholePlanned),
    /// The estimate of a job is reckoned with the factor, or without.
    SetFactor(kind::FactorSet),
}

pub(super) fn decide(book: &Book, command: &EstimateCommand, act: &mut Act) -> Answer<()> {
    match command {
        EstimateCommand::Tell(jobs) => {
            match jobs.len() {
                0 => return Err(Refusal::NothingAsked),
                met if TOLD_MOST < met => return Err(Refusal::TooManyOldJobs { met, most: TOLD_MOST }),
                _ => jobs.iter().try_for_each(told)?,
            }
            jobs.iter().for_each(|job| tell(job, act));
            Ok(())
        }
        EstimateCommand::Retell { line, job } => retell(book, (*line, job), act),
        EstimateCommand::Keep(facts) => keep(book, facts, act),
        EstimateCommand::SayWhole(facts) => whole(book, facts, act),
        EstimateCommand::SetFactor(facts) => factor(book, facts, act),
    }
}

/// Nothing is written that is so already.
fn factor(book: &Book, facts: &kind::FactorSet, act: &mut Act) -> Answer<()> {
    going_on(book, facts.job)?;
    if found(book, facts.job)?.without_factor != facts.with {
        return Err(Refusal::NothingAsked);
    }
    act.add(facts.clone());
    Ok(())
}

/// Nothing is written that is so already; where nothing is planned and nothing was worked, nothing can be all of it.
fn whole(book: &Book, facts: &kind::WholePlanned, act: &mut Act) -> Answer<()> {
    going_on(book, facts.job)?;
    let job = found(book, facts.job)?;
    let worked = || fold::bench(book).on(On::Job(job.id)).next().is_some();
    if job.whole_planned == facts.whole || (facts.whole && job.operations.is_empty() && !worked()) {
        return Err(Refusal::NothingAsked);
    }
    act.add(facts.clone());
    Ok(())
}

fn tell(job: &kind::OldJobTold, act: &mut Act) {
    act.add(kind::OldJobTold { name: job.name.trim().to_owned(), ..job.clone() });
}

/// The line as it stood counts no more, whatever name the job has now; what another phone made of it meanwhile is of the same job.
fn retell(book: &Book, (line, job): (Id, &kind::OldJobTold), act: &mut Act) -> Answer<()> {
    let known = fold::workshop(book).old_jobs;
    let old = known.iter().find(|old| old.entry == line).ok_or(Refusal::NotThere)?;
    told(job)?;
    if old.is_so(job) {
        return Err(Refusal::NothingAsked);
    }
    act.add(Struck { entries: vec![line] });
    tell(&kind::OldJobTold { first: Some(old.first), told_for: old.told_for, ..job.clone() }, act);
    Ok(())
}

fn told(job: &kind::OldJobTold) -> Answer<()> {
    super::wood::named(&job.name)?;
    lasts(job.span)?;
    job.pieces.map_or(Ok(()), some_pieces)?;
    if let Some(met) = job.sum.filter(|sum| sum.amount() <= Decimal::ZERO) {
        return Err(Refusal::NoPrice { met });
    }
    if let Some(thought) = job.thought {
        lasts(thought)?;
        let ratio = Decimal::from(job.span.as_ms()).checked_div(Decimal::from(thought.as_ms()));
        in_reach(ratio.unwrap_or_default())?;
    }
    Ok(())
}

/// A minute at least, and no more than may be planned.
fn lasts(met: Span) -> Answer<()> {
    let least = Span::minutes(1);
    if least <= met && met <= PLAN_MOST { Ok(()) } else { Err(Refusal::HoursOutOfRange { met, least, most: PLAN_MOST }) }
}

/// A factor between a tenth and ten.
fn in_reach(met: Decimal) -> Answer<()> {
    let most = Decimal::from(RATIO_MOST);
    let least = Decimal::ONE.checked_div(most).unwrap_or_default();
    if is_sound(met) { Ok(()) } else { Err(Refusal::FactorOutOfRange { met, least, most }) }
}

fn keep(book: &Book, facts: &kind::EstimateMade, act: &mut Act) -> Answer<()> {
    going_on(book, facts.job)?;
    [Some(facts.low), Some(facts.likely), Some(facts.high), facts.thought].into_iter().flatten().try_for_each(lasts)?;
    if facts.likely < facts.low || facts.high < facts.likely {
        return Err(Refusal::HoursOutOfRange { met: facts.likely, least: facts.low, most: facts.high });
    }
    facts.factor.map_or(Ok(()), |factor| in_reach(factor.0))?;
    if let Some(met) = facts.allowance.map(|share| share.0).filter(|met| *met < Decimal::ZERO || Decimal::ONE <= *met) {
        return Err(Refusal::ShareOutOfRange { met });
    }
    act.add(facts.clone());
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::{Command, JobCommand};
    use super::*;
    use crate::bench::On;
    use crate::ledger::fold;
    use crate::ledger::kind::Exact;
    use crate::ledger::told::Phone;
    use crate::quantity::{Currency, Money};

    fn told(name: &str, minutes: i64) -> kind::OldJobTold {
        kind::OldJobTold {
            name: name.into(),
            span: Span::minutes(minutes),
            thought: None,
            sum: None,
            piece: None,
            pieces: None,
            first: None,
            told_for: None,
        }
    }

    fn made(job: Id, [low, likely, high]: [i64; 3]) -> kind::EstimateMade {
        let [low, likely, high] = [low, likely, high].map(Span::minutes);
        kind::EstimateMade { job, low, likely, high, thought: None, factor: None, jobs: None, allowance: None }
    }

    fn job(on: On) -> Id {
        if let On::Job(id) = on { id } else { unreachable!() }
    }

    #[track_caller]
    fn check(phone: &mut Phone, command: EstimateCommand, refused: Option<Refusal>) {
        assert_eq!(phone.order(9, Command::Estimate(command)).err(), refused);
    }

    #[test]
    fn bad_old_jobs_are_refused_by_name_and_limit() {
        let mut phone = Phone::new("a");
        let hours = |met| Some(Refusal::HoursOutOfRange { met: Span::minutes(met), least: Span::minutes(1), most: PLAN_MOST });
        let dollars = |sum: i64| Money::whole(Decimal::from(sum), Currency::USD).unwrap();
        let factor = |met: Decimal| Some(Refusal::FactorOutOfRange { met, least: Decimal::new(1, 1), most: Decimal::TEN });
        let cases = [
            (told("Stool", 60), None),
            (told(" ", 60), Some(Refusal::NameMissing)),
            (told(&"x".repeat(61), 60), Some(Refusal::NameTooLong { met: 61, most: 60 })),
            (told("Stool", 0), hours(0)),
            (told("Stool", -5), hours(-5)),
            (told("Stool", 600_000), hours(600_000)),
            (kind::OldJobTold { sum: Some(dollars(0)), ..told("Stool", 60) }, Some(Refusal::NoPrice { met: dollars(0) })),
            (kind::OldJobTold { sum: Some(dollars(-9)), ..told("Stool", 60) }, Some(Refusal::NoPrice { met: dollars(-9) })),
            (kind::OldJobTold { pieces: Some(0), ..told("Stool", 60) }, Some(Refusal::NothingAsked)),
            (
                kind::OldJobTold { pieces: Some(1_000_000), ..told("Stool", 60) },
                Some(Refusal::TooManyAtOnce { would_be: 1_000_000, most: 9_999 }),
            ),
            (kind::OldJobTold { thought: Some(Span::ZERO), ..told("Stool", 60) }, hours(0)),
            (kind::OldJobTold { thought: Some(Span::minutes(6)), ..told("Stool", 60) }, None),
            (kind::OldJobTold { thought: Some(Span::minutes(5)), ..told("Stool", 60) }, factor(Decimal::from(12))),
            (kind::OldJobTold { thought: Some(Span::minutes(1_000)), ..told("Stool", 60) }, factor(Decimal::new(6, 2))),
        ];
        for (old, refused) in cases {
            check(&mut phone, EstimateCommand::Tell(vec![old]), refused);
        }
        check(&mut phone, EstimateCommand::Tell(vec![]), Some(Refusal::NothingAsked));
        check(&mut phone, EstimateCommand::Tell(vec![told("Stool", 60); 51]), Some(Refusal::TooManyOldJobs { met: 51, most: 50 }));
        let before = phone.book.len();
        check(&mut phone, EstimateCommand::Tell(vec![told("Table", 60), told("", 60)]), Some(Refusal::NameMissing));
        assert_eq!(phone.book.len(), before, "all of an act or nothing");
    }

    #[test]
    fn the_same_name_replaces_an_old_job_and_an_act_is_taken_back_whole() {
        let mut phone = Phone::new("a");
        let shown = |phone: &Phone| {
            let old = fold::workshop(&phone.book).old_jobs;
            old.iter().map(|old| (old.name.clone(), old.span.as_minutes())).collect::<Vec<_>>()
        };
        phone.order(1, Command::Estimate(EstimateCommand::Tell(vec![told("Stool", 60), told(" Table ", 90)]))).unwrap();
        let again = phone.order(2, Command::Estimate(EstimateCommand::Tell(vec![told("stool", 70), told("Shelf", 5)]))).unwrap();
        assert_eq!(shown(&phone), [("Table".into(), 90), ("stool".into(), 70), ("Shelf".into(), 5)]);
        let act = phone.book.entry(again).and_then(|(entry, _)| entry.act).unwrap();
        phone.take_back(3, act);
        assert_eq!(shown(&phone), [("Stool".into(), 60), ("Table".into(), 90)]);
    }

    /// Under another name or the same: the line as it stood is gone with the act, and comes back with it; struck after that, neither counts.
    #[test]
    fn an_old_job_is_put_right() {
        for name in ["Bar stool", "stool"] {
            let mut phone = Phone::new("a");
            let shown = |phone: &Phone| {
                let old = fold::workshop(&phone.book).old_jobs;
                old.iter().map(|old| (old.name.clone(), old.span.as_minutes())).collect::<Vec<_>>()
            };
            phone.order(1, Command::Estimate(EstimateCommand::Tell(vec![told("Stool", 60), told("Table", 90)]))).unwrap();
            let before = shown(&phone);
            let line = fold::workshop(&phone.book).old_jobs[0].entry;
            let retell = |job| Command::Estimate(EstimateCommand::Retell { line, job });
            assert_eq!(phone.order(2, retell(told("Stool", 60))), Err(Refusal::NothingAsked));
            assert_eq!(phone.order(2, retell(told(" ", 60))), Err(Refusal::NameMissing));
            assert_eq!(shown(&phone), before);
            let mended = phone.order(3, retell(told(name, 70))).unwrap();
            assert_eq!(shown(&phone), [("Table".into(), 90), (name.into(), 70)]);
            let act = phone.book.entry(mended).and_then(|(entry, _)| entry.act).unwrap();
            phone.take_back(4, act);
            assert_eq!(shown(&phone), before);
            phone.order(5, Command::Book(super::super::BookCommand::Restore { act })).unwrap();
            let line = fold::workshop(&phone.book).old_jobs[1].entry;
            phone.order(6, Command::Book(super::super::BookCommand::Strike { line })).unwrap();
            assert_eq!(shown(&phone), [("Table".into(), 90)]);
        }
    }

    /// Three told at once: each goes alone, the first too, whose entry names the act; and comes back alone.
    #[test]
    fn one_of_several_old_jobs_is_struck_and_put_back() {
        use super::super::BookCommand::{Restore, Strike};
        let all = ["Stool", "Table", "Shelf"];
        for nth in 0..all.len() {
            let mut phone = Phone::new("a");
            phone.order(1, Command::Estimate(EstimateCommand::Tell(all.map(|name| told(name, 60)).to_vec()))).unwrap();
            let line = fold::workshop(&phone.book).old_jobs[nth].entry;
            let other = fold::workshop(&phone.book).old_jobs[(nth + 1) % all.len()].entry;
            let shown = |phone: &Phone| fold::workshop(&phone.book).old_jobs.iter().map(|old| old.name.clone()).collect::<Vec<_>>();
            let but = |gone: &[usize]| (0..all.len()).filter(|nth| !gone.contains(nth)).map(|nth| all[nth]).collect::<Vec<_>>();
            phone.order(2, Command::Book(Strike { line })).unwrap();
            assert_eq!(shown(&phone), but(&[nth]));
            phone.order(3, Command::Book(Strike { line: other })).unwrap();
            phone.order(4, Command::Book(Restore { act: line })).unwrap();
            assert_eq!(shown(&phone), but(&[(nth + 1) % all.len()]));
        }
    }

    #[test]
    fn an_estimate_is_kept_as_it_was_given() {
        let mut phone = Phone::new("a");
        let stool = job(phone.job(0, "Stool"));
        let hours = |met, least, most| {
            let [met, least, most] = [met, least, most].map(Span::minutes);
            Some(Refusal::HoursOutOfRange { met, least, most })
        };
        let keep = EstimateCommand::Keep;
        check(&mut phone, keep(made(stool, [0, 10, 20])), hours(0, 1, 599_940));
        check(&mut phone, keep(made(stool, [30, 10, 20])), hours(10, 30, 20));
        check(&mut phone, keep(made(stool, [5, 30, 20])), hours(30, 5, 20));
        check(&mut phone, keep(made(Id::new(crate::ledger::told::at(0), [9; 10]), [5, 10, 20])), Some(Refusal::NotThere));
        let factor = |met: i64| kind::EstimateMade { factor: Some(Exact(Decimal::from(met))), ..made(stool, [5, 10, 20]) };
        let refused = Refusal::FactorOutOfRange { met: Decimal::from(11), least: Decimal::new(1, 1), most: Decimal::TEN };
        check(&mut phone, keep(factor(11)), Some(refused));
        let allowance = kind::EstimateMade { allowance: Some(Exact(Decimal::ONE)), ..made(stool, [5, 10, 20]) };
        check(&mut phone, keep(allowance), Some(Refusal::ShareOutOfRange { met: Decimal::ONE }));
        let likely = |phone: &Phone| fold::job(&phone.book, stool).unwrap().kept.map(|kept| kept.likely.as_minutes());
        assert_eq!(likely(&phone), None);
        phone.order(10, Command::Estimate(keep(made(stool, [5, 10, 20])))).unwrap();
        let later = phone.order(11, Command::Estimate(keep(made(stool, [5, 15, 20])))).unwrap();
        assert_eq!(likely(&phone), Some(15));
        phone.take_back(12, later);
        assert_eq!(likely(&phone), Some(10));
        phone.order(13, Command::Job(JobCommand::End { job: stool, hauls: vec![] })).unwrap();
        check(&mut phone, keep(made(stool, [5, 10, 20])), Some(Refusal::JobHasEnded));
        let again = Command::Book(super::super::BookCommand::Restore { act: later });
        assert_eq!(phone.order(14, again).err(), Some(Refusal::JobHasEnded), "what it was judged by stays");
    }

    /// An operation of one piece lasts a minute at least and no longer than a run may; of several, that for each.
    #[test]
    fn an_operation_of_no_time_or_over_48_hours_is_refused() {
        let mut phone = Phone::new("a");
        let five = job(phone.job(0, "Five stools"));
        let plan = |minutes, pieces| {
            let (op, kind) = ("carve".into(), crate::bench::Kind::Make);
            crate::ledger::kind::job::OperationPlanned { job: five, op, kind, stage: None, span: Some(Span::minutes(minutes)), pieces }
        };
        for (minutes, pieces, most) in [
            (0, Some(1), Some(2_880)),
            (1, Some(1), None),
            (2_880, Some(1), None),
            (2_881, Some(1), Some(2_880)),
            (14_400, None, None),
            (14_401, None, Some(14_400)),
        ] {
            let refused = most.map(|most| Refusal::HoursOutOfRange {
                met: Span::minutes(minutes),
                least: Span::minutes(1),
                most: Span::minutes(most),
            });
            assert_eq!(phone.order(1, Command::Job(JobCommand::PlanOperation(plan(minutes, pieces)))).err(), refused, "{minutes}");
        }
    }
}
