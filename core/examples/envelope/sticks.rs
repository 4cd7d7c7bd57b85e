//! Sticks in the shared format.

use super::record::{Record, Trouble};
use super::{listed, quoted};
use fivebar_core::plan::sticks::plan::Plan;
use fivebar_core::plan::sticks::problem::{Part, Pile, Problem};

pub fn read(head: &Record<'_>) -> Result<Problem, Trouble> {
    let pile = |pile: &Record<'_>| Ok(Pile { id: pile.text("id")?, count: pile.whole("count")?, length: pile.low()? });
    let piles: Vec<Pile> = head.records("piles")?.iter().map(pile).collect::<Result<_, Trouble>>()?;
    let names: Vec<(String, String)> = piles.iter().map(|pile| (pile.id.clone(), String::new())).collect();
    let part = |part: &Record<'_>| {
        let from = part.maybe("piles").map(|_| part.piles_left(&names)).transpose()?.flatten();
        Ok(Part { id: part.text("id")?, per_set: part.whole("per_set")?, length: part.whole("length")?, piles: from })
    };
    Ok(Problem {
        sets: head.wish("sets")?,
        kerf: head.whole("kerf")?,
        end_trim: head.whole("end_trim")?,
        machine_min: head.whole("machine_min")?,
        keep_min: head.whole("keep_min")?,
        parts: head.records("parts")?.iter().map(part).collect::<Result<_, Trouble>>()?,
        piles,
    })
}

/// The member `sticks`.
pub fn write(problem: &Problem, plan: &Plan) -> String {
    let stick = plan.sticks.iter().map(|stick| {
        let part = |part: usize| quoted(&problem.parts[part].id);
        let pieces = stick.pieces.iter().map(|piece| format!(r#"{{"part":{},"at":{}}}"#, part(piece.part), piece.at));
        let (pile, pieces) = (quoted(&problem.piles[stick.pile].id), pieces.collect::<Vec<_>>().join(","));
        format!(r#"{{"pile":{pile},"times":{},"pieces":[{pieces}],"remainder":{}}}"#, stick.times, stick.remainder)
    });
    format!(r#""sticks":{}"#, listed(stick))
}
