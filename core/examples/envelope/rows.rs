//! Rows in the shared format.

use super::record::{Record, Trouble};
use super::{listed, quoted};
use fivebar_core::plan::rows::plan::Plan;
use fivebar_core::plan::rows::problem::{Pile, Problem};

pub fn read(head: &Record<'_>) -> Result<Problem, Trouble> {
    let pile = |pile: &Record<'_>| Ok(Pile { id: pile.text("id")?, count: pile.whole("count")?, length: pile.low()? });
    let panel = head.record("panel")?;
    Ok(Problem {
        length: panel.whole("length")?,
        rows: panel.wish("rows")?,
        square: head.whole("square")?,
        kerf: head.whole("kerf")?,
        min_end: head.whole("min_end")?,
        min_piece: head.whole("min_piece")?,
        machine_min: head.whole("machine_min")?,
        stagger: head.whole("stagger")?,
        split: head.truth("split")?,
        keep_min: head.whole("keep_min")?,
        piles: head.records("piles")?.iter().map(pile).collect::<Result<_, Trouble>>()?,
    })
}

/// The members `rows` and `remainders`.
pub fn write(problem: &Problem, plan: &Plan) -> String {
    let id = |pile: usize| quoted(&problem.piles[pile].id);
    let rows = plan.rows.iter().map(|row| {
        let piece = row.iter().map(|p| format!(r#"{{"pile":{},"n":{},"at":{},"length":{}}}"#, id(p.pile), p.n, p.at, p.length));
        format!("[{}]", piece.collect::<Vec<_>>().join(","))
    });
    let rests = plan.remainders.iter().map(|r| format!(r#"{{"pile":{},"n":{},"length":{}}}"#, id(r.pile), r.n, r.length));
    format!(r#""rows":{},"remainders":{}"#, listed(rows), listed(rests))
}
