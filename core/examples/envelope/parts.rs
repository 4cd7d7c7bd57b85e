//! Parts in the shared format.

use super::record::{Record, Trouble};
use super::{listed, quoted};
use fivebar_core::plan::parts::plan::{Band, Board, First, Panel, Plan};
use fivebar_core::plan::parts::problem::{Allow, Part, Pile, Problem};

pub fn read(head: &Record<'_>) -> Result<Problem, Trouble> {
    let records = head.records("piles")?;
    let piles: Vec<Pile> = records.iter().map(pile).collect::<Result<_, Trouble>>()?;
    let name = |pile: &Record<'_>| Ok((pile.text("id")?, pile.text("species")?));
    let names: Vec<(String, String)> = records.iter().map(name).collect::<Result<_, Trouble>>()?;
    let allow = head.record("allow")?;
    Ok(Problem {
        sets: head.wish("sets")?,
        kerf: head.whole("kerf")?,
        end_trim: head.whole("end_trim")?,
        edge_trim: head.whole("edge_trim")?,
        planed: false,
        allow: Allow { length: allow.whole("length")?, width: allow.whole("width")?, thickness: allow.whole("thickness")? },
        joint: head.whole("joint")?,
        strip_min: head.whole("strip_min")?,
        plane_min: head.whole("plane_min")?,
        rip_min: head.whole("rip_min")?,
        keep_min: head.whole("keep_min")?,
        piles,
        parts: head.records("parts")?.iter().map(|record| part(record, &names)).collect::<Result<_, Trouble>>()?,
    })
}

fn pile(pile: &Record<'_>) -> Result<Pile, Trouble> {
    Ok(Pile {
        id: pile.text("id")?,
        count: pile.whole("count")?,
        length: pile.low()?,
        width: pile.whole("width")?,
        thickness: pile.whole("thickness")?,
    })
}

fn part(part: &Record<'_>, names: &[(String, String)]) -> Result<Part, Trouble> {
    Ok(Part {
        id: part.text("id")?,
        per_set: part.whole("per_set")?,
        length: part.whole("length")?,
        width: part.whole("width")?,
        thickness: part.whole("thickness")?,
        glue: part.truth("glue")?,
        piles: part.piles_left(names)?,
    })
}

/// The members `boards`, `panels` and, where there is one, `short`.
pub fn write(problem: &Problem, plan: &Plan) -> String {
    let cut = cutting(problem, &plan.boards, &plan.panels);
    let Some(short) = &plan.short else { return cut };
    let missing = short.missing.iter().map(|(part, n)| format!("{}:{n}", quoted(&problem.parts[*part].id)));
    let missing = missing.collect::<Vec<_>>().join(",");
    format!(r#"{cut},"short":{{"missing":{{{missing}}},{}}}"#, cutting(problem, &short.boards, &short.panels))
}

fn cutting(problem: &Problem, boards: &[Board], panels: &[Panel]) -> String {
    let boards = listed(boards.iter().map(|one| board(problem, one)));
    let panel = |panel: &Panel| {
        let strip = panel.strips.iter().map(|s| format!(r#"{{"pile":{},"width":{}}}"#, quoted(&problem.piles[s.pile].id), s.width));
        let (part, strips) = (quoted(&problem.parts[panel.part].id), strip.collect::<Vec<_>>().join(","));
        format!(r#"{{"part":{part},"times":{},"strips":[{strips}]}}"#, panel.times)
    };
    format!(r#""boards":{boards},"panels":{}"#, listed(panels.iter().map(panel)))
}

fn board(problem: &Problem, board: &Board) -> String {
    let first = if board.first == First::Rip { "rip" } else { "cross" };
    let (pile, bands) = (quoted(&problem.piles[board.pile].id), board.bands.iter().map(|one| band(problem, one)).collect::<Vec<_>>());
    let (times, stretch, remainder) = (board.times, board.stretch, board.remainder);
    let bands = bands.join(",");
    format!(r#"{{"pile":{pile},"times":{times},"stretch":{stretch},"first":"{first}","bands":[{bands}],"remainder":{remainder}}}"#)
}

fn band(problem: &Problem, band: &Band) -> String {
    let piece = band.pieces.iter().map(|p| {
        let part = quoted(&problem.parts[p.part].id);
        format!(r#"{{"part":{part},"at":{},"length":{},"width":{}}}"#, p.at, p.length, p.width)
    });
    format!(r#"{{"size":{},"at":{},"pieces":[{}]}}"#, band.size, band.at, piece.collect::<Vec<_>>().join(","))
}
