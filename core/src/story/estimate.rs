//! Lines about estimates: old jobs told, estimates given.

use super::words::{Read, Words};
use super::{Teller, Told};
use crate::ledger::decide::{Command, EstimateCommand};
use crate::ledger::kind::estimate::{OldJobTold, WholePlanned};
use crate::refusal::Refusal;
use crate::sheet::Shop;
use crate::sheet::estimate::estimate;

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "old-job" => EstimateCommand::Tell(vec![old(teller, words)?]),
        "all-planned" => EstimateCommand::SayWhole(WholePlanned { job: teller.story.names.said_job(words)?, whole: true }),
        _ => {
            let job = teller.story.names.said_job(words)?;
            let with_factor = if words.has("without") { words.expect("factor").map(|()| false)? } else { true };
            let shop = Shop::of(&teller.story.book, teller.story.now.at);
            EstimateCommand::Keep(estimate(&shop, job, with_factor)?.given().ok_or(Refusal::NothingAsked)?)
        }
    };
    teller.order(&Command::Estimate(command)).map(drop)
}

/// `old-job "Coffee table" 1704 min thought 1200 min for 390 piece table pieces 2`.
fn old(teller: &Teller, words: &mut Words) -> Read<OldJobTold> {
    let (name, span) = (words.text()?, words.minutes()?);
    let mut old = OldJobTold { name, span, thought: None, sum: None, piece: None, pieces: None, first: None, told_for: None };
    if words.has("thought") {
        old.thought = Some(words.minutes()?);
    }
    if words.has("for") {
        old.sum = Some(words.money(teller.workshop.0)?);
    }
    if words.has("piece") {
        old.piece = Some(words.key("a kind of piece")?);
    }
    if words.has("pieces") {
        old.pieces = Some(words.count()?);
    }
    Ok(old)
}
