//! Lines about jobs: begin, describe, plan, end.

use super::bench::{kind, stage};
use super::size::{grams, size};
use super::time::day;
use super::words::{Read, Words};
use super::{Teller, Told, id_of};
use crate::ledger::Fact;
use crate::ledger::decide::{Command, JobCommand};
use crate::ledger::kind::job::{CostPlanned, For, JobDescribed, OperationPlanned, PartPlanned};
use crate::quantity::{Id, Key};
use crate::sheet::Shop;
use crate::sheet::carried::freeze_for;

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    match verb {
        "job" => return begin(teller, words),
        "about" => return about(teller, words),
        _ => {}
    }
    let command = match verb {
        "part" => JobCommand::PlanPart(part(teller, words)?),
        "plan" => JobCommand::PlanOperation(operation(teller, words)?),
        "plan-cost" => JobCommand::PlanCost(cost(teller, words)?),
        "end" => {
            let job = said(teller, words)?;
            let shop = Shop::of(&teller.story.book, teller.story.now.at);
            JobCommand::End { job, hauls: freeze_for(&shop, &shop.job(job)?)? }
        }
        "reopen" => JobCommand::Reopen { job: said(teller, words)? },
        "typical" => JobCommand::Mark { job: said(teller, words)?, typical: true },
        "not-typical" => JobCommand::Mark { job: said(teller, words)?, typical: false },
        _ => JobCommand::WriteLesson { job: said(teller, words)?, text: words.text()? },
    };
    teller.order(&Command::Job(command)).map(drop)
}

fn said(teller: &Teller, words: &mut Words) -> Read<Id> {
    teller.story.names.said_job(words)
}

/// `for NAME`.
fn for_job(teller: &Teller, words: &mut Words) -> Read<Id> {
    words.expect("for")?;
    said(teller, words)
}

/// `job stands "Five ash plant stands" 5 spec`.
fn begin(teller: &mut Teller, words: &mut Words) -> Told {
    let (short, name, pieces) = (words.word("a name for the job")?.to_owned(), words.text()?, words.count()?);
    let made_for = words.take("spec or order", |word| match word {
        "spec" => Some(For::Spec),
        "order" => Some(For::Order),
        _ => None,
    })?;
    let (currency, units) = teller.workshop;
    let facts = teller.order(&Command::Job(JobCommand::Begin { name, currency, units, pieces, made_for }))?;
    let job = id_of(&facts, |fact| matches!(fact, Fact::JobBegan(_)))?;
    teller.story.names.jobs.insert(short, job);
    Ok(())
}

/// `about stands size 9 1/2 x 9 1/2 x 18 in weight 12 lb wood "ash" due 2026-04-18`, any of them.
fn about(teller: &mut Teller, words: &mut Words) -> Told {
    let job = said(teller, words)?;
    let mut facts = JobDescribed::of(job);
    while !words.is_done() {
        match words.word("what is said of the job")? {
            "name" => facts.name = Some(words.text()?),
            "pieces" => facts.pieces = Some(words.count()?),
            "piece" => facts.piece = Some(words.key("a kind of piece")?),
            "size" => {
                let ([width, depth, height], _) = size(words)?;
                (facts.width, facts.depth, facts.height) = (Some(width), Some(depth), Some(height));
            }
            "weight" => facts.weight = Some(grams(words)?),
            "wood" => facts.wood = Some(words.text()?),
            "finish" => facts.finish = Some(words.text()?),
            "care" => facts.care = Some(words.text()?),
            "delivery" => facts.delivery = Some(words.text()?),
            "due" => facts.due = Some(day(words, teller.story.now)?),
            "note" => facts.note = Some(words.text()?),
            _ => return Ok(words.no("name, pieces, piece, size, weight, wood, finish, care, delivery, due or note")?),
        }
    }
    teller.order(&Command::Job(JobCommand::Describe(facts))).map(drop)
}

/// `part "leg" 4 of 1 1/2 x 1 1/2 x 18 in ash-white for stands`.
fn part(teller: &Teller, words: &mut Words) -> Read<PartPlanned> {
    let (name, n) = (words.text()?, words.count()?);
    words.expect("of")?;
    let ([thickness, width, length], _) = size(words)?;
    let wood = words.maybe(|word| Key::read(word).filter(|_| word != "for"));
    let job = for_job(teller, words)?;
    Ok(PartPlanned { job, name, n, thickness, width, length, wood })
}

/// `plan "milling" make 180 min for bench pieces 4`.
fn operation(teller: &Teller, words: &mut Words) -> Read<OperationPlanned> {
    let (op, kind, stage) = (words.text()?, kind(words)?, stage(words)?);
    let span = if words.peek() == Some("for") { None } else { Some(words.minutes()?) };
    let job = for_job(teller, words)?;
    let pieces = if words.has("pieces") { Some(words.count()?) } else { None };
    Ok(OperationPlanned { job, op, kind, stage, span, pieces })
}

/// `plan-cost drive 18.60 "62 km there and back" delivery for bench`.
fn cost(teller: &Teller, words: &mut Words) -> Read<CostPlanned> {
    let (kind, sum) = (words.key("a kind of cost")?, words.money(teller.workshop.0)?);
    let what = words.maybe_text();
    let delivery = words.has("delivery").then_some(true);
    Ok(CostPlanned { job: for_job(teller, words)?, kind, sum, what, delivery })
}
