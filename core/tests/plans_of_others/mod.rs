//! Plans in the shared format, as others write them: read into plans of ours. What the format does not know is refused in words.
#![allow(dead_code)] // each of the tests that share it uses its part

use fivebar_core::plan::field::plan::{Field, Lie, Taken};
use fivebar_core::plan::field::problem::{Mix, Pattern};
use fivebar_core::plan::parts::plan::{Band, Board, First, Panel, Short, Strip};
use fivebar_core::plan::{Answered, Asked, Figures, Made, Planned, field, parts, rows, sticks};
use serde_json::Value;

type Read<T> = Result<T, String>;

/// What stands in one of the folders of `tests/yield`.
pub fn text(path: &str) -> String {
    let path = format!("{}/../tests/yield/{path}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|trouble| panic!("{path}: {trouble}"))
}

pub fn value(path: &str) -> Value {
    serde_json::from_str(&text(path)).unwrap()
}

/// Reads a plan; its lengths are in so many units of the problem.
struct Reader<'a> {
    ids: Vec<&'a str>,
    parts: Vec<&'a str>,
    per: i64,
}

/// The plan of a solution, its worth and its bound as claimed.
pub fn answered(asked: &Asked, solution: &Value, per: i64) -> Read<Answered> {
    let (ids, parts): (Vec<&str>, Vec<&str>) = match asked {
        Asked::Rows(it) => (it.piles.iter().map(|pile| &*pile.id).collect(), vec![]),
        Asked::Sticks(it) => (it.piles.iter().map(|pile| &*pile.id).collect(), it.parts.iter().map(|part| &*part.id).collect()),
        Asked::Parts(it) => (it.piles.iter().map(|pile| &*pile.id).collect(), it.parts.iter().map(|part| &*part.id).collect()),
        Asked::Field(it) => (it.piles.iter().map(|pile| &*pile.id).collect(), vec![]),
    };
    let reader = Reader { ids, parts, per };
    let plan = match asked {
        Asked::Rows(_) => reader.rows(solution)?,
        Asked::Sticks(_) => reader.sticks(solution)?,
        Asked::Parts(_) => reader.cut(solution)?,
        Asked::Field(_) => reader.field(solution)?,
    };
    let claims = member(solution, "claims")?;
    Ok(Planned { plan, worth: figures(member(claims, "objective")?)?, bound: figures(member(claims, "bound")?)? })
}

/// Figures as a list of whole numbers, however long.
pub fn figures(list: &Value) -> Read<Figures> {
    all(list, |figure| figure.to_string().parse::<i128>().map_err(|_| format!("{figure} is no whole number")))
}

fn member<'v>(value: &'v Value, name: &str) -> Read<&'v Value> {
    value.get(name).ok_or_else(|| format!("{name} is missing"))
}

fn all<T>(list: &Value, one: impl Fn(&Value) -> Read<T>) -> Read<Vec<T>> {
    list.as_array().ok_or_else(|| format!("{list} is no list"))?.iter().map(one).collect()
}

fn int(value: &Value, name: &str) -> Read<i64> {
    let met = member(value, name)?;
    met.as_i64().ok_or_else(|| format!("{name} {met} is no whole number"))
}

fn three(value: &Value, name: &str) -> Read<[i64; 3]> {
    let list = all(member(value, name)?, |one| one.as_i64().ok_or_else(|| format!("{one} is no whole number")))?;
    list.try_into().map_err(|_| format!("{name} is not three numbers"))
}

/// The place of a name; one that is not there is the place behind the last.
fn place(names: &[&str], name: &Value) -> usize {
    names.iter().position(|own| own == name).unwrap_or(names.len())
}

/// What a word of the format means, of a closed list.
fn meant<T: Copy>(value: &Value, name: &str, table: &[(&str, T)]) -> Read<T> {
    let met = member(value, name)?;
    let known = table.iter().find(|(word, _)| word == met).map(|(_, meant)| *meant);
    known.ok_or_else(|| format!("{name} {met} is not known"))
}

impl Reader<'_> {
    fn length(&self, value: &Value, name: &str) -> Read<i64> {
        Ok(int(value, name)? / self.per)
    }

    fn pile(&self, value: &Value) -> Read<usize> {
        Ok(place(&self.ids, member(value, "pile")?))
    }

    fn part(&self, value: &Value) -> Read<usize> {
        Ok(place(&self.parts, member(value, "part")?))
    }

    fn rows(&self, plan: &Value) -> Read<Made> {
        let piece = |it: &Value| {
            let [at, length] = [self.length(it, "at")?, self.length(it, "length")?];
            Ok(rows::plan::Piece { pile: self.pile(it)?, n: int(it, "n")?, at, length })
        };
        let rest = |it: &Value| Ok(rows::plan::Remainder { pile: self.pile(it)?, n: int(it, "n")?, length: self.length(it, "length")? });
        let laid = all(member(plan, "rows")?, |row| all(row, piece))?;
        Ok(Made::Rows(rows::plan::Plan { rows: laid, remainders: all(member(plan, "remainders")?, rest)? }))
    }

    fn sticks(&self, plan: &Value) -> Read<Made> {
        let piece = |it: &Value| Ok(sticks::plan::Piece { part: self.part(it)?, at: self.length(it, "at")? });
        let stick = |it: &Value| {
            let (times, pieces) = (int(it, "times")?, all(member(it, "pieces")?, piece)?);
            Ok(sticks::plan::Stick { pile: self.pile(it)?, times, pieces, remainder: self.length(it, "remainder")? })
        };
        Ok(Made::Sticks(sticks::plan::Plan { sticks: all(member(plan, "sticks")?, stick)? }))
    }

    fn board(&self, it: &Value) -> Read<Board> {
        let piece = |it: &Value| {
            let [at, length, width] = [self.length(it, "at")?, self.length(it, "length")?, self.length(it, "width")?];
            Ok(parts::plan::Piece { part: self.part(it)?, at, length, width })
        };
        let band = |it: &Value| {
            Ok(Band { size: self.length(it, "size")?, at: self.length(it, "at")?, pieces: all(member(it, "pieces")?, piece)? })
        };
        Ok(Board {
            pile: self.pile(it)?,
            times: int(it, "times")?,
            stretch: self.length(it, "stretch")?,
            first: meant(it, "first", &[("rip", First::Rip), ("cross", First::Cross)])?,
            bands: all(member(it, "bands")?, band)?,
            remainder: self.length(it, "remainder")?,
        })
    }

    fn cutting(&self, plan: &Value) -> Read<(Vec<Board>, Vec<Panel>)> {
        let strip = |it: &Value| Ok(Strip { pile: self.pile(it)?, width: self.length(it, "width")? });
        let panel = |it: &Value| Ok(Panel { part: self.part(it)?, times: int(it, "times")?, strips: all(member(it, "strips")?, strip)? });
        Ok((all(member(plan, "boards")?, |it| self.board(it))?, all(member(plan, "panels")?, panel)?))
    }

    fn cut(&self, plan: &Value) -> Read<Made> {
        let (boards, panels) = self.cutting(plan)?;
        let short = plan.get("short").map(|short| {
            let missing = member(short, "missing")?.as_object().ok_or("missing is no record")?;
            let lacks =
                |(part, n): (&String, &Value)| Ok((place(&self.parts, &Value::from(part.as_str())), n.as_i64().ok_or("no number")?));
            let missing = missing.iter().map(lacks).collect::<Read<_>>()?;
            let (boards, panels) = self.cutting(short)?;
            Ok::<_, String>(Short { missing, boards, panels })
        });
        Ok(Made::Parts(parts::plan::Plan { boards, panels, short: short.transpose()? }))
    }

    fn field(&self, plan: &Value) -> Read<Made> {
        if member(plan, "pattern")?.is_null() {
            return Ok(Made::Field(field::plan::Plan { field: None }));
        }
        let taken =
            |it: &Value| Ok(Taken { pile: self.pile(it)?, whole: int(it, "whole")?, cut: int(it, "cut")?, taken: int(it, "taken")? });
        let whole = |name: &str| figures(&Value::Array(vec![member(plan, name)?.clone()])).map(|all| all[0]);
        let field = Field {
            mix: meant(plan, "mix", &[("single", Mix::Single), ("alternate", Mix::Alternate)])?,
            piles: all(member(plan, "piles")?, |id| Ok(place(&self.ids, id)))?,
            lie: lie(plan)?,
            layers: int(plan, "layers")?,
            tile: three(plan, "tile")?,
            outer: three(plan, "outer")?,
            pieces: all(member(plan, "pieces")?, taken)?,
            glue_area: whole("glue_area")?,
            weight: whole("weight_g")?,
        };
        Ok(Made::Field(field::plan::Plan { field: Some(field) }))
    }
}

fn lie(plan: &Value) -> Read<Lie> {
    if plan["pattern"] == "crossed" {
        let both = |x: &str, y: &str| Ok::<_, String>([int(plan, x)?, int(plan, y)?]);
        return Ok(Lie::Crossed { lines: both("lines_x", "lines_y")?, ends: both("ends_x", "ends_y")?, open: both("open_x", "open_y")? });
    }
    let known =
        [("stack", Pattern::Stack), ("running", Pattern::Running), ("basket", Pattern::Basket), ("herringbone", Pattern::Herringbone)];
    let turn = member(plan, "turn")?.as_bool().ok_or("turn is neither true nor false")?;
    Ok(Lie::Rows { pattern: meant(plan, "pattern", &known)?, columns: int(plan, "columns")?, rows: int(plan, "rows")?, turn })
}
