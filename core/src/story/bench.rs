//! Lines at the bench: start, stop, pieces done, mend, recall, helpers.

use super::time::moment;
use super::words::{Read, Words};
use super::{Teller, Told, Why, id_of};
use crate::bench::{Kind, Mender, On, Stage, Work};
use crate::ledger::decide::{BenchCommand, Command};
use crate::ledger::{Fact, fold};
use crate::quantity::{Id, Span};
use crate::refusal::Refusal;

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    match verb {
        "start" => start(teller, words),
        "recall" => recall(teller, words),
        "stop" => {
            let person = by(teller, words)?;
            let run = fold::bench(&teller.story.book).running(person).map(|run| run.id).ok_or(Refusal::NotThere)?;
            order(teller, BenchCommand::Stop { run })
        }
        "stopped" => {
            words.expect("at")?;
            let at = moment(words, teller.story.now)?;
            let by = if words.has("proposed") { Mender::Proposed } else { Mender::Typed };
            let run = this_run(teller, words)?;
            order(teller, BenchCommand::StopAt { run, at, by })
        }
        "done" => {
            let n = words.count()?;
            let run = this_run(teller, words)?;
            order(teller, BenchCommand::Done { run, n })
        }
        "confirm" => {
            let run = this_run(teller, words)?;
            order(teller, BenchCommand::Confirm { run })
        }
        "mend" => mend(teller, words),
        "helper" => helper(teller, words),
        _ => {
            let (n, op) = (words.count()?, words.text()?);
            words.expect("for")?;
            let job = teller.story.names.said_job(words)?;
            order(teller, BenchCommand::PlanBatch { job, op, n })
        }
    }
}

fn order(teller: &mut Teller, command: BenchCommand) -> Told {
    teller.order(&Command::Bench(command)).map(drop)
}

/// `run NAME`, or the run that was started or recalled last.
fn this_run(teller: &Teller, words: &mut Words) -> Result<Id, Why> {
    if words.has("run") {
        return Ok(teller.story.names.said_mark(words)?);
    }
    teller.story.names.last_run.ok_or(Refusal::NotThere.into())
}

fn by(teller: &Teller, words: &mut Words) -> Read<Option<Id>> {
    if words.has("by") { teller.story.names.said_person(words).map(Some) } else { Ok(None) }
}

/// The kind of an operation.
pub fn kind(words: &mut Words) -> Read<Kind> {
    words.take("fetch, make, sell, deliver or office", |word| match word {
        "fetch" => Some(Kind::Fetch),
        "make" => Some(Kind::Make),
        "sell" => Some(Kind::Sell),
        "deliver" => Some(Kind::Deliver),
        "office" => Some(Kind::Office),
        _ => None,
    })
}

/// `stage finish`, where it is not that of the kind.
pub fn stage(words: &mut Words) -> Read<Option<Stage>> {
    if !words.has("stage") {
        return Ok(None);
    }
    let stage = words.take("fetch, sort, make, finish, sell or deliver", |word| match word {
        "fetch" => Some(Stage::Fetch),
        "sort" => Some(Stage::Sort),
        "make" => Some(Stage::Make),
        "finish" => Some(Stage::Finish),
        "sell" => Some(Stage::Sell),
        "deliver" => Some(Stage::Deliver),
        _ => None,
    })?;
    Ok(Some(stage))
}

/// `"glue tops" make on stands stage make rework by ada`.
fn work(teller: &Teller, words: &mut Words) -> Read<Work> {
    let (op, kind) = (words.text()?, kind(words)?);
    let names = &teller.story.names;
    let on = match words.has("on") {
        true => {
            words.take("the name of a job or a haul", |word| names.job(word).map(On::Job).or_else(|| names.haul(word).map(On::Haul)))?
        }
        false => On::Nothing,
    };
    let stage = stage(words)?.unwrap_or(kind.stage());
    let rework = words.has("rework");
    Ok(Work { op, kind, stage, on, person: by(teller, words)?, rework })
}

fn start(teller: &mut Teller, words: &mut Words) -> Told {
    let work = work(teller, words)?;
    let ago = if words.peek().is_some_and(|word| word != "as") { ago(words)? } else { Span::ZERO };
    let facts = teller.order(&Command::Bench(BenchCommand::Start { work, ago }))?;
    began(teller, id_of(&facts, |fact| matches!(fact, Fact::RunStarted(_)))?)
}

fn ago(words: &mut Words) -> Read<Span> {
    let span = words.minutes()?;
    words.expect("ago")?;
    Ok(span)
}

fn began(teller: &mut Teller, run: Id) -> Told {
    teller.story.names.last_run = Some(run);
    teller.story.names.to_mark = Some(run);
    Ok(())
}

fn recall(teller: &mut Teller, words: &mut Words) -> Told {
    let work = work(teller, words)?;
    let start = moment(words, teller.story.now)?;
    words.expect("to")?;
    let stop = moment(words, teller.story.now)?;
    let heads = if words.has("heads") { words.count()? } else { 1 };
    let facts = teller.order(&Command::Bench(BenchCommand::Recall { work, start, stop, heads }))?;
    began(teller, id_of(&facts, |fact| matches!(fact, Fact::RunRecalled(_)))?)
}

fn mend(teller: &mut Teller, words: &mut Words) -> Told {
    let run = this_run(teller, words)?;
    if words.has("on") {
        let names = &teller.story.names;
        let named = |word: &str| if word == "none" { Some(On::Nothing) } else { names.job(word).map(On::Job) };
        let on = words.take("the name of a job, or none", named)?;
        return order(teller, BenchCommand::Move { run, on });
    }
    if words.has("to") {
        let (op, kind) = (words.text()?, kind(words)?);
        let stage = stage(words)?.unwrap_or(kind.stage());
        return order(teller, BenchCommand::Rename { run, op, kind, stage });
    }
    let start = if words.has("start") { Some(moment(words, teller.story.now)?) } else { None };
    let stop = if words.has("stop") { Some(moment(words, teller.story.now)?) } else { None };
    let op = words.maybe_text();
    order(teller, BenchCommand::Mend { run, start, stop, op })
}

/// `helper was 10:00 to 11:00 15.00`: forgotten, and written down; `helper came 10:05`, `helper went 11:00`: the last one's times put right.
fn helper_mended(teller: &mut Teller, words: &mut Words) -> Told {
    if words.has("was") {
        let from = moment(words, teller.story.now)?;
        let to = if words.has("to") { Some(moment(words, teller.story.now)?) } else { None };
        let pay = if words.is_done() || words.peek() == Some("run") { None } else { Some(words.money(teller.workshop.0)?) };
        let run = this_run(teller, words)?;
        return order(teller, BenchCommand::RecallHelper { run, from, to, pay });
    }
    let from = if words.has("came") { Some(moment(words, teller.story.now)?) } else { None };
    let to = if words.has("went") { Some(moment(words, teller.story.now)?) } else { None };
    let run = this_run(teller, words)?;
    let heads = fold::bench(&teller.story.book).run(run).map(|run| run.heads.clone()).unwrap_or_default();
    let helper = heads.last().ok_or(Refusal::NotThere)?.id;
    order(teller, BenchCommand::MendHelper { run, helper, from, to, pay: None })
}

/// `helper joins ada 15.00`, `helper leaves ada`.
fn helper(teller: &mut Teller, words: &mut Words) -> Told {
    if words.peek().is_some_and(|word| ["was", "came", "went"].contains(&word)) {
        return helper_mended(teller, words);
    }
    let joins = words.take("joins or leaves", |word| match word {
        "joins" => Some(true),
        "leaves" => Some(false),
        _ => None,
    })?;
    let names = &teller.story.names;
    let person = words.maybe(|word| names.person(word));
    let pay = if words.is_done() || words.peek() == Some("run") { None } else { Some(words.money(teller.workshop.0)?) };
    let run = this_run(teller, words)?;
    order(teller, if joins { BenchCommand::HelperJoins { run, person, pay } } else { BenchCommand::HelperLeaves { run, person } })
}
