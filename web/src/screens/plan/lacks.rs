//! What more a plan lacks: parts, or pieces of a pile, for one more and for all.

use super::super::Seen;
use super::saw::number;
use super::wants::letter;
use super::{anew, source_name, told, uncut};
use crate::app::App;
use crate::words::en::{common, plan as words, sought, told as said};
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::sheet::plan::{Known, PlanSheet, Unlock};

/// What more would unlock; nothing where cut pieces may make it.
pub fn short(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    if uncut::is_more_there(given, sheet, app) {
        return None;
    }
    let more = |(source, n): (usize, i64)| more_of(given, (source, n), (app, seen));
    let (mut parts, mut pieces, mut from) = (vec![], vec![], None);
    for lacking in &sheet.short {
        match lacking {
            Unlock::Part { all: true, .. } => (),
            Unlock::Part { part: nth, n, from: known, .. } => {
                parts.push(words::so_many_of(&number(*n, seen), &told::part(given, *nth)));
                let known = known.filter(|_| !anew::keeps_strips(given, sheet, app));
                from = known.map(|known| (more(known), known.1 == 1));
            }
            Unlock::Source { source, n } => pieces.push(more((*source, *n))),
            Unlock::Rows { .. } => return rows_short(given, sheet, (app, seen)),
        }
    }
    match (parts.is_empty(), pieces.is_empty()) {
        (false, _) => {
            let one = from.map_or(String::new(), |(from, one)| words::makes_it(&from, one));
            Some(anew::lacks(given, sheet, &parts) + &one + &all_lack(given, sheet, (app, seen)))
        }
        (true, true) => None,
        (true, false) => Some(words::brings_nearer(&pieces)),
    }
}

/// What all pieces lack that were asked, where these are more than one more; that it is of one more only, where that was not found.
fn all_lack(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> String {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return String::new() };
    let Some(asked) = list.sets.filter(|asked| sheet.made.saturating_add(1) < *asked) else { return String::new() };
    let (mut parts, mut from, mut is_other) = (vec![], None, false);
    let more = |part: usize| list.parts.get(part).map_or(0, |it| it.n.saturating_mul(asked.saturating_sub(sheet.made)));
    for lacking in &sheet.short {
        if let Unlock::Part { part, n, from: known, all: true, .. } = lacking {
            // More than the plan that is drawn lacks: the wood goes into other parts then.
            is_other |= more(*part) < *n;
            parts.push(words::so_many_of(&number(*n, seen), &told::part(given, *part)));
            from = *known;
        }
    }
    if parts.is_empty() {
        return words::OF_ONE_MORE_ONLY.to_owned();
    }
    let pieces = from.map(|from| more_of(given, from, (app, seen)));
    words::all_lack(&number(asked, seen), (&parts, is_other), pieces.as_deref())
}

/// So many more of a pile, by its letter, name and size: that is what is bought.
fn more_of(given: &Given, (source, n): (usize, i64), (app, seen): (&App, Seen<'_>)) -> String {
    let n = number(n, seen);
    described(given, source, (app, seen))
        .map_or_else(|| words::so_many_of(&n, letter(given, source)), |it| words::more_of(&n, letter(given, source), &it))
}

/// The name of a pile and its size.
fn described(given: &Given, source: usize, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let of = given.sources.get(source)?;
    let sides = [of.pile.thickness, of.pile.width, of.pile.length].into_iter().flatten();
    let size = sides.map(|side| seen.speech.length(side, given.units)).listed().join(" × ");
    Some(format!("{}, {size} {}", source_name(of, app), common::length_unit(given.units)))
}

/// "D (Beech boards, 50 × 50 × 2,000 mm)".
pub fn named(given: &Given, source: usize, (app, seen): (&App, Seen<'_>)) -> String {
    let letter = letter(given, source);
    described(given, source, (app, seen)).map_or_else(|| letter.to_owned(), |it| sought::letter_and_name(letter, &it))
}

/// Of a top what gives one row more, and all that were asked.
fn rows_short(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let of = |wanted: (bool, Known)| {
        let one = |it: &Unlock| match it {
            Unlock::Rows { source, n, all, known } if (*all, *known) == wanted => Some((*n, more_of(given, (*source, *n), (app, seen)))),
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
