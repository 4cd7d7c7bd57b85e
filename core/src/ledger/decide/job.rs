//! Orders about jobs: begin, describe, plan, end, reopen, mark.

use super::Act;
use crate::ledger::fold::{self, Job, Part};
use crate::ledger::kind::book::Struck;
use crate::ledger::kind::job as kind;
use crate::ledger::kind::job::{For, HaulUsed};
use crate::ledger::{Book, Fact, Subject};
use crate::quantity::{Count, Currency, Decimal, Id, Length, Listed, PILE_MOST, Span, Units};
use crate::refusal::{Answer, Refusal};

/// The most an operation may be thought to take: 9 999 hours.
pub const PLAN_MOST: Span = Span::minutes(9_999 * 60);

/// What can be ordered of a job.
#[derive(Clone, Debug, PartialEq)]
pub enum JobCommand {
    Begin {
        name: String,
        currency: Currency,
        units: Units,
        pieces: Count,
        made_for: For,
    },
    Describe(kind::JobDescribed),
    PlanPart(kind::PartPlanned),
    /// A part by another name: the one it had goes in the same act.
    RenamePart {
        was: String,
        part: kind::PartPlanned,
    },
    PlanOperation(kind::OperationPlanned),
    /// An operation is not planned after all.
    StrikeOperation {
        job: Id,
        op: String,
    },
    PlanCost(kind::CostPlanned),
    /// "Done with this job": the shares of its hauls as the sheet computed them are frozen.
    End {
        job: Id,
        hauls: Vec<HaulUsed>,
    },
    Reopen {
        job: Id,
    },
    Mark {
        job: Id,
        typical: bool,
    },
    WriteLesson {
        job: Id,
        text: String,
    },
}

pub(super) fn decide(book: &Book, command: &JobCommand, act: &mut Act) -> Answer<()> {
    match command {
        JobCommand::Begin { name, currency, units, pieces, made_for } => {
            some_pieces(*pieces)?;
            let (name, currency, units, pieces, made_for) = (name.clone(), *currency, *units, *pieces, *made_for);
            act.add(kind::JobBegan { name, currency, units, pieces, made_for });
        }
        JobCommand::Describe(facts) => describe(&found(book, facts.job)?, facts, act)?,
        JobCommand::PlanPart(facts) => plan_part(&found(book, facts.job)?, facts, act)?,
        JobCommand::RenamePart { was, part } => {
            let job = found(book, part.job)?;
            plan_part(&job, &kind::PartPlanned { name: was.clone(), n: 0, ..part.clone() }, act)?;
            plan_part(&job, part, act)?;
        }
        JobCommand::PlanOperation(facts) => plan_operation(&found(book, facts.job)?, facts, act)?,
        JobCommand::StrikeOperation { job, op } => strike_operation(book, (found(book, *job)?.id, op), act)?,
        JobCommand::PlanCost(facts) => {
            super::money::plain(fold::job::facts::same(found(book, facts.job)?.currency, facts.sum)?)?;
            act.add(facts.clone());
        }
        JobCommand::End { job, hauls } => end(&found(book, *job)?, hauls, act)?,
        JobCommand::Reopen { job } => {
            if found(book, *job)?.ended.is_none() {
                return Err(Refusal::JobNotEnded);
            }
            act.add(kind::JobReopened { job: *job });
        }
        JobCommand::Mark { job, typical } => {
            found(book, *job)?;
            act.add(kind::JobMarked { job: *job, typical: *typical });
        }
        JobCommand::WriteLesson { job, text } => {
            found(book, *job)?;
            act.add(kind::LessonWritten { job: *job, text: text.clone() });
        }
    }
    Ok(())
}

/// A job that the maker is not done with: one that is keeps its wood and its share.
pub(super) fn going_on(book: &Book, job: Id) -> Answer<()> {
    if found(book, job)?.ended.is_some() { Err(Refusal::JobHasEnded) } else { Ok(()) }
}

pub(super) fn found(book: &Book, job: Id) -> Answer<Job> {
    fold::job(book, job).ok_or(Refusal::NotThere)
}

pub(super) fn some_pieces(n: Count) -> Answer<()> {
    match n {
        0 => Err(Refusal::NothingAsked),
        n if n <= PILE_MOST => Ok(()),
        n => Err(Refusal::TooManyAtOnce { would_be: n, most: PILE_MOST }),
    }
}

/// A job can't have fewer pieces than are sold, promised or with a gallery.
fn describe(job: &Job, facts: &kind::JobDescribed, act: &mut Act) -> Answer<()> {
    if let Some(there) = facts.pieces {
        some_pieces(there)?;
        let asked = job.selling.gone().saturating_add(job.selling.promised());
        if there < asked {
            return Err(Refusal::NotThatMany { asked, there });
        }
    }
    for side in [facts.width, facts.depth, facts.height].into_iter().flatten().filter(|side| *side != Length::ZERO) {
        side.of_a_piece()?;
    }
    if facts.weight.is_some_and(|grams| grams < 0) {
        return Err(Refusal::BelowNothing { met: Decimal::from(facts.weight.unwrap_or(0)) });
    }
    act.add(without_nothings(job, facts.clone()));
    Ok(())
}

/// Where nothing was said there is nothing to take away.
fn without_nothings(job: &Job, mut facts: kind::JobDescribed) -> kind::JobDescribed {
    fn left<T: PartialEq>(new: &mut Option<T>, nothing: &T, was: &Option<T>) {
        if was.is_none() && new.as_ref() == Some(nothing) {
            *new = None;
        }
    }
    let was = &job.described;
    left(&mut facts.width, &Length::ZERO, &was.width);
    left(&mut facts.depth, &Length::ZERO, &was.depth);
    left(&mut facts.height, &Length::ZERO, &was.height);
    left(&mut facts.weight, &0, &was.grams);
    let nothing = String::new();
    left(&mut facts.wood, &nothing, &was.wood);
    left(&mut facts.finish, &nothing, &was.finish);
    left(&mut facts.care, &nothing, &was.care);
    left(&mut facts.delivery, &nothing, &was.delivery);
    facts
}

fn plan_part(job: &Job, facts: &kind::PartPlanned, act: &mut Act) -> Answer<()> {
    if PILE_MOST < facts.n {
        return Err(Refusal::TooManyAtOnce { would_be: facts.n, most: PILE_MOST });
    }
    let part = Part { name: facts.name.clone(), n: facts.n, size: [facts.thickness, facts.width, facts.length], wood: facts.wood.clone() };
    if facts.n == 0 {
        job.parts.iter().find(|known| known.name == part.name).ok_or(Refusal::NotThere)?;
    } else {
        part.checked()?;
        part.volume()?;
    }
    act.add(facts.clone());
    Ok(())
}

/// One piece is planned for no longer than a run may last.
fn plan_operation(job: &Job, facts: &kind::OperationPlanned, act: &mut Act) -> Answer<()> {
    if let Some(pieces) = facts.pieces {
        some_pieces(pieces)?;
    }
    let most = Span::RUN_MOST.times(i64::from(facts.pieces.unwrap_or(job.pieces).max(1))).min(PLAN_MOST);
    let least = Span::minutes(1);
    if let Some(met) = facts.span
        && (met < least || most < met)
    {
        return Err(Refusal::HoursOutOfRange { met, least, most });
    }
    act.add(facts.clone());
    Ok(())
}

/// All that was ever planned of it goes, so that nothing older takes its place; its runs stay.
fn strike_operation(book: &Book, (job, op): (Id, &str), act: &mut Act) -> Answer<()> {
    let is_of_it = |fact: &Fact| matches!(fact, Fact::OperationPlanned(f) if f.job == job && f.op == op);
    let entries = book.about(Subject::Job(job)).filter(|entry| is_of_it(&entry.fact)).map(|entry| entry.id).listed();
    if entries.is_empty() {
        return Err(Refusal::NotThere);
    }
    act.add(Struck { entries });
    Ok(())
}

fn end(job: &Job, hauls: &[HaulUsed], act: &mut Act) -> Answer<()> {
    if job.ended.is_some() {
        return Err(Refusal::JobHasEnded);
    }
    for haul in hauls {
        super::money::plain(fold::job::facts::same(job.currency, haul.cost)?)?;
        if haul.time < Span::ZERO {
            return Err(Refusal::SpanOutOfRange { met: haul.time, most: PLAN_MOST });
        }
        if haul.used.0 < Decimal::ZERO || haul.good.0 < haul.used.0 {
            return Err(Refusal::NothingToShareBy);
        }
    }
    act.add(kind::JobEnded { job: job.id, hauls: hauls.to_vec() });
    Ok(())
}
