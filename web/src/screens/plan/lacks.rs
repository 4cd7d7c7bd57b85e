//! What more a plan lacks: parts, or pieces of a pile, for one more and for all.

use super::super::Seen;
use super::saw::number;
use super::{anew, told};
use crate::words::en::{plan as words, told as said};
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Known, PlanSheet, Unlock};

/// What more would unlock.
pub fn short(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let letter = |source: usize| given.ready.sources.get(source).map_or_else(String::new, |source| source.letter.clone());
    let more = |(source, n): (usize, i64)| words::more_of(&number(n, seen), &letter(source));
    let (mut parts, mut pieces, mut from) = (vec![], vec![], None);
    for lacking in &sheet.short {
        match lacking {
            Unlock::Part { part: nth, n, from: known } => {
                parts.push(words::so_many_of(&number(*n, seen), &told::part(given, *nth)));
                from = known.map(more);
            }
            Unlock::Source { source, n } => pieces.push(more((*source, *n))),
            Unlock::Rows { .. } => return rows_short(given, sheet, seen),
        }
    }
    match (parts.is_empty(), pieces.is_empty()) {
        (false, _) => Some(anew::lacks(given, sheet, &parts) + &from.map_or(String::new(), |from| words::makes_it(&from))),
        (true, true) => None,
        (true, false) => Some(words::brings_nearer(&pieces)),
    }
}

/// Of a top what gives one row more, and all that were asked.
fn rows_short(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let letter = |source: usize| given.ready.sources.get(source).map_or_else(String::new, |source| source.letter.clone());
    let of = |wanted: (bool, Known)| {
        let one = |it: &Unlock| match it {
            Unlock::Rows { source, n, all, known } if (*all, *known) == wanted => {
                Some((*n, words::more_of(&number(*n, seen), &letter(*source))))
            }
            _ => None,
        };
        sheet.short.iter().filter_map(one).listed()
    };
    let asked = told::wanted(given).map(|rows| number(rows, seen));
    let line = |all: bool, known: Known| {
        let (n, pieces): (Vec<i64>, Vec<String>) = of((all, known)).into_iter().unzip();
        let rows = if all { asked.as_deref() } else { None };
        (!pieces.is_empty()).then(|| said::makes_rows(&words::listed(&pieces, "or"), n == [1], rows, known))
    };
    let each = [false, true].into_iter().flat_map(|all| [Known::Least, Known::Found, Known::AtLeast].map(|known| (all, known)));
    let lines = each.filter_map(|(all, known)| line(all, known)).listed();
    (!lines.is_empty()).then(|| lines.join(" "))
}
