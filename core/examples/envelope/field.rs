//! Fields in the shared format.

use super::quoted;
use super::record::{Record, Trouble};
use fivebar_core::plan::field::plan::{Field, Lie, Plan};
use fivebar_core::plan::field::problem::{Allow, Mix, Pattern, Pile, Problem, Target};

const PATTERNS: [(&str, Pattern); 5] = [
    ("stack", Pattern::Stack),
    ("running", Pattern::Running),
    ("basket", Pattern::Basket),
    ("herringbone", Pattern::Herringbone),
    ("crossed", Pattern::Crossed),
];
const MIXES: [(&str, Mix); 2] = [("single", Mix::Single), ("alternate", Mix::Alternate)];

fn known<T: Copy>(table: &[(&str, T)], names: &[String]) -> Result<Vec<T>, Trouble> {
    let one = |name: &String| table.iter().find(|(own, _)| own == name).map(|(_, meant)| *meant);
    names.iter().map(|name| one(name).ok_or_else(|| format!("nothing is called {name:?}"))).collect()
}

fn called<T: PartialEq>(table: &[(&'static str, T)], meant: T) -> &'static str {
    table.iter().find(|(_, own)| *own == meant).map_or("", |(name, _)| name)
}

pub fn read(head: &Record<'_>) -> Result<Problem, Trouble> {
    let allow = head.record("allow")?;
    Ok(Problem {
        unit: head.whole("unit_nm")?,
        patterns: known(&PATTERNS, &head.texts("patterns")?)?,
        mix: known(&MIXES, &head.texts("mix")?)?,
        targets: targets(&head.record("target")?, &head.record("tolerance")?)?,
        layers: head.ends("layers")?,
        gap: head.whole("gap")?,
        open: head.ends("open")?,
        overhang: head.whole("overhang")?,
        kerf: head.whole("kerf")?,
        allow: Allow { length: allow.whole("length")?, width: allow.whole("width")?, thickness: allow.whole("thickness")? },
        machine_min: head.whole("machine_min")?,
        cut_min: head.whole("cut_min")?,
        turn: head.truth("turn")?,
        piles: head.records("piles")?.iter().map(pile).collect::<Result<_, Trouble>>()?,
    })
}

fn targets(target: &Record<'_>, tolerance: &Record<'_>) -> Result<[Option<Target>; 3], Trouble> {
    let one = |name| match target.wish(name)? {
        Some(size) => Ok(Some(Target { size, tolerance: tolerance.whole(name)? })),
        None => Ok::<_, Trouble>(None),
    };
    Ok([one("width")?, one("depth")?, one("height")?])
}

fn pile(pile: &Record<'_>) -> Result<Pile, Trouble> {
    Ok(Pile {
        id: pile.text("id")?,
        species: pile.text("species")?,
        count: pile.whole("count")?,
        length: pile.low()?,
        width: pile.whole("width")?,
        thickness: pile.whole("thickness")?,
        density: pile.whole("density")?,
        whole: 0,
    })
}

/// The members of the field, or `"pattern": null`.
pub fn write(problem: &Problem, plan: &Plan) -> String {
    let Some(field) = &plan.field else { return r#""pattern":null"#.into() };
    let id = |pile: usize| quoted(&problem.piles[pile].id);
    let piles = field.piles.iter().map(|pile| id(*pile)).collect::<Vec<_>>().join(",");
    let piece =
        field.pieces.iter().map(|p| format!(r#"{{"pile":{},"whole":{},"cut":{},"taken":{}}}"#, id(p.pile), p.whole, p.cut, p.taken));
    let pieces = piece.collect::<Vec<_>>().join(",");
    let Field { layers, tile, outer, glue_area, weight, .. } = field;
    let (lie, mix) = (lie(&field.lie), called(&MIXES, field.mix));
    format!(
        r#"{lie},"mix":"{mix}","piles":[{piles}],"layers":{layers},"tile":{tile:?},"outer":{outer:?},"pieces":[{pieces}],"glue_area":{glue_area},"weight_g":{weight}"#
    )
}

fn lie(lie: &Lie) -> String {
    match lie {
        Lie::Rows { pattern, columns, rows, turn } => {
            format!(r#""pattern":"{}","columns":{columns},"rows":{rows},"turn":{turn}"#, called(&PATTERNS, *pattern))
        }
        Lie::Crossed { lines: [lx, ly], ends: [ex, ey], open: [ox, oy] } => {
            format!(r#""pattern":"crossed","lines_x":{lx},"lines_y":{ly},"ends_x":{ex},"ends_y":{ey},"open_x":{ox},"open_y":{oy}"#)
        }
    }
}
