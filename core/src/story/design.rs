//! Lines about designs: kept from a job, named anew, dropped, made again.

use super::words::{Read, Words};
use super::{Teller, Told, id_of};
use crate::ledger::decide::{Command, PlanCommand};
use crate::ledger::kind::job::{For, JobBegan};
use crate::ledger::{Fact, fold};
use crate::quantity::Id;

pub(super) fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "make-again" => return again(teller, words),
        "keep-design" => {
            let name = words.text()?;
            words.expect("from")?;
            PlanCommand::KeepDesign { job: teller.story.names.said_job(words)?, name }
        }
        "rename-design" => PlanCommand::RenameDesign { design: design(teller, words)?, name: words.text()? },
        "drop-design" => PlanCommand::DropDesign { name: words.text()? },
        _ => {
            let design = design(teller, words)?;
            words.expect("for")?;
            PlanCommand::UseDesign { job: teller.story.names.said_job(words)?, design }
        }
    };
    teller.order(&Command::Plan(command)).map(drop)
}

/// A design by its name.
fn design(teller: &Teller, words: &mut Words) -> Read<Id> {
    let known = fold::workshop(&teller.story.book).designs;
    let name = words.text()?;
    match known.iter().find(|design| design.is_named(&name)) {
        Some(design) => Ok(design.id),
        None => words.no("the name of a design"),
    }
}

/// `make-again "Plant stand" job second "Two stands" 2 spec`.
fn again(teller: &mut Teller, words: &mut Words) -> Told {
    let design = design(teller, words)?;
    words.expect("job")?;
    let (short, name, pieces) = (words.word("a name for the job")?.to_owned(), words.text()?, words.count()?);
    let made_for = words.take("spec or order", |word| match word {
        "spec" => Some(For::Spec),
        "order" => Some(For::Order),
        _ => None,
    })?;
    let (currency, units) = teller.workshop;
    let job = JobBegan { name, currency, units, pieces, made_for };
    let facts = teller.order(&Command::Plan(PlanCommand::MakeAgain { job, design }))?;
    let job = id_of(&facts, |fact| matches!(fact, Fact::JobBegan(_)))?;
    teller.story.names.jobs.insert(short, job);
    Ok(())
}
