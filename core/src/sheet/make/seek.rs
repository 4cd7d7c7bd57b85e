//! What a plan lacks, as it is looked for at the next yard: so many more of a pile, or the parts that are missing.

use super::buy::not_bought;
use super::{AlreadyCut, Ask, Given, What, asked_figures, is_wide, nm};
use crate::ledger::kind::stock::{PiecesSought, SoughtPiece};
use crate::ledger::{Book, fold};
use crate::plan::Asked;
use crate::quantity::{Count, Key, Length, Listed};
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::wish::{Wanted, Wish};
use crate::sheet::plan::{Known, PlanSheet, Unlock};
use crate::sheet::sought::there;

/// What is looked for where a plan is short: of a top any one of the piles that gives all rows, else of those that give one more; of parts
/// the pile that gives all that is missing of all pieces that were asked, else of one more, or each missing part by itself; of a field all that
/// bring it nearer. With boards like them that the plan would buy. Nothing where nothing is short.
pub fn seek(book: &Book, given: &Given, sheet: &PlanSheet) -> Option<PiecesSought> {
    let (pieces, any, makes) = match sheet.short.first()? {
        Unlock::Rows { .. } => rows(given, sheet)?,
        Unlock::Part { .. } => {
            let (pieces, makes) = parts(given, sheet);
            (not_bought_too(pieces, given, sheet), false, Some(makes))
        }
        Unlock::Source { .. } => (fields(given, sheet), false, None),
    };
    let job = given.ask.job;
    let hauls = fold::hauls(book).listed();
    let lying = |piece: SoughtPiece| SoughtPiece { there: Some(there(&hauls, job, &piece)).filter(|n| 0 < *n), ..piece };
    let pieces = pieces.into_iter().map(lying).listed();
    let [length, width] = sides(given);
    let any = Some(true).filter(|_| any && 1 < pieces.len());
    (!pieces.is_empty()).then(|| PiecesSought { job, shape: given.ask.what.shape(), pieces, any, length, width, makes })
}

/// What is looked for where nothing fits a part: pieces that it can be cut of, as many as are not cut yet for what is asked.
pub fn seek_part(shop: &Shop, ask: &Ask, (name, cut): (&str, &AlreadyCut)) -> Option<PiecesSought> {
    let (What::Parts(sets) | What::Sticks(sets)) = ask.what else { return None };
    let job = shop.job(ask.job).ok()?;
    let part = job.parts.iter().find(|part| part.name == name)?;
    let sets = sets.unwrap_or(1);
    let n = part.n.saturating_mul(sets).saturating_sub(cut.of(part));
    let wood = part.wood.as_ref().map(ToString::to_string);
    let by_length = matches!(ask.what, What::Sticks(_));
    let wanted = Wanted { name: part.name.clone(), n: n.into(), size: part.size, glue: !by_length && is_wide(part), wood, rest_of: None };
    let figures = asked_figures(shop, &job, ask).ok()?;
    let piece = blank(&wanted, (&figures, by_length), n.into())?;
    let piece = if wanted.glue { strip_of(piece, &figures)? } else { piece };
    let there = Some(there(&fold::hauls(shop.book).listed(), job.id, &piece)).filter(|n| 0 < *n);
    let pieces = vec![SoughtPiece { there, ..piece }];
    Some(PiecesSought { job: job.id, shape: ask.what.shape(), pieces, any: None, length: None, width: None, makes: Some(sets) })
}

/// Of a top how long and wide it is, as a plan that is kept says it.
fn sides(given: &Given) -> [Option<Length>; 2] {
    let Wish::Panel(panel) = &given.ready.wish else { return [None; 2] };
    let units = if let Asked::Rows(problem) = &given.ready.asked { problem.length } else { 0 };
    [units.checked_mul(given.ready.unit).and_then(|nm| Length::nm(nm).ok()), panel.width]
}

/// One set more; where some parts are cut already, all of those that were planned with them.
fn next_of(given: &Given, sheet: &PlanSheet) -> Count {
    match given.cut.sets {
        0 => count(sheet.made).saturating_add(1),
        sets => sets,
    }
}

/// Any one pile: such as give all rows that were asked, or one row more; where neither was found, at least so many.
fn rows(given: &Given, sheet: &PlanSheet) -> Option<(Vec<SoughtPiece>, bool, Option<Count>)> {
    let of = |whole: bool, found: bool| {
        let one = |it: &Unlock| match it {
            Unlock::Rows { source, n, all, known } if *all == whole && found == (*known != Known::AtLeast) => {
                let piece = like(given, *source, *n)?;
                Some(SoughtPiece { at_least: Some(true).filter(|_| !found), ..piece })
            }
            _ => None,
        };
        fewest_alike(sheet.short.iter().filter_map(one).listed())
    };
    let asked = if let Asked::Rows(problem) = &given.ready.asked { problem.rows } else { None };
    let next = sheet.made.saturating_add(1);
    // Where one row is missing, that is all of them.
    for (whole, found, makes) in [(true, true, asked?), (false, true, next), (true, false, asked?)] {
        let pieces = of(whole, found);
        if !pieces.is_empty() {
            return Some((pieces, true, Some(count(makes))));
        }
    }
    None
}

/// Piles alike, of the rack and to buy, are one: the fewest that do.
fn fewest_alike(pieces: Vec<SoughtPiece>) -> Vec<SoughtPiece> {
    let mut all: Vec<SoughtPiece> = vec![];
    for piece in pieces {
        match all.iter_mut().find(|it| **it == SoughtPiece { n: it.n, ..piece.clone() }) {
            Some(it) => it.n = it.n.min(piece.n),
            None => all.push(piece),
        }
    }
    all
}

/// What all pieces lack that were asked, where that was found; else what one more does. And how many it makes.
fn parts(given: &Given, sheet: &PlanSheet) -> (Vec<SoughtPiece>, Count) {
    let all: Vec<&Unlock> = sheet.short.iter().filter(|it| matches!(it, Unlock::Part { all: true, .. })).collect();
    let asked = if let Wish::Parts(list) | Wish::Sticks(list) = &given.ready.wish { list.sets } else { None };
    match asked.filter(|_| !all.is_empty()) {
        Some(sets) => (lacking(given, &all), count(sets)),
        None => (lacking(given, &sheet.short.iter().collect::<Vec<_>>()), next_of(given, sheet)),
    }
}

/// The same with the boards like them that the plan would buy: they are not there yet either.
fn not_bought_too(mut pieces: Vec<SoughtPiece>, given: &Given, sheet: &PlanSheet) -> Vec<SoughtPiece> {
    for (source, n, _) in not_bought(given, sheet) {
        let Some(own) = like(given, source, n.into()) else { continue };
        let alike = |it: &&mut SoughtPiece| **it == SoughtPiece { n: it.n, ..own.clone() };
        pieces.iter_mut().find(alike).into_iter().for_each(|it| it.n = it.n.saturating_add(n));
    }
    pieces
}

/// The pile that gives all that is missing; else a piece for each part that is, of one that is glued up boards such as its strips are cut of.
fn lacking(given: &Given, short: &[&Unlock]) -> Vec<SoughtPiece> {
    let all_of = |it: &&Unlock| if let Unlock::Part { from: Some((source, n)), .. } = it { like(given, *source, *n) } else { None };
    if let Some(one) = short.iter().find_map(all_of) {
        return vec![one];
    }
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return vec![] };
    let by_length = matches!(given.ready.wish, Wish::Sticks(_));
    let each = |it: &&Unlock| {
        let Unlock::Part { part, n, own, .. } = it else { return None };
        let wanted = list.parts.get(*part)?;
        let strips = own.filter(|_| wanted.glue && !by_length).and_then(|(source, n)| like(given, source, n));
        strips.or_else(|| blank(wanted, (&given.ready.figures, by_length), *n))
    };
    short.iter().filter_map(each).listed()
}

fn fields(given: &Given, sheet: &PlanSheet) -> Vec<SoughtPiece> {
    let one = |it: &Unlock| if let Unlock::Source { source, n } = it { like(given, *source, *n) } else { None };
    sheet.short.iter().filter_map(one).listed()
}

/// Pieces like those of a source.
fn like(given: &Given, source: usize, n: i64) -> Option<SoughtPiece> {
    let pile = &given.sources.get(source)?.pile;
    let [thickness, width, length] = [pile.thickness?, pile.width?, pile.length?];
    let wood = pile.wood.clone();
    let (n, there, at_least) = (count(n), None, None);
    Some(SoughtPiece { n, thickness, width, length, wood, there, at_least, just_thick: None, just_wide: None })
}

/// A piece that one part can be cut of: with what is over for final sizing, trimmed at its ends, of boards at its edges too, and no shorter
/// than a machine takes.
fn blank(part: &Wanted, (figures, by_length): (&Figures, bool), n: i64) -> Option<SoughtPiece> {
    let [long, wide, thick] = figures.allow;
    let with = |side: Length, over: Length, trim: Length| {
        Length::nm(nm(side).saturating_add(nm(over)).saturating_add(nm(trim).saturating_mul(2))).ok()
    };
    let [thickness, width, length] = part.size;
    let edges = if by_length { Length::ZERO } else { figures.edge_trim };
    let least = if by_length { figures.machines.plane } else { figures.machines.plane.max(figures.machines.rip) };
    let (thickness, width) = (with(thickness, thick, Length::ZERO)?, with(width, wide, edges)?);
    // Sticks are cut to length as parts are finished.
    let long = if by_length { Length::ZERO } else { long };
    let (length, wood) = (with(length, long, figures.end_trim)?.max(least), part.wood.as_deref().and_then(Key::read));
    // A stick of the very section is not planed, as in the plan itself.
    let just = |side: Length| Some(side).filter(|side| by_length && *side != Length::ZERO);
    let (just_thick, just_wide) = (just(part.size[0]), just(part.size[1]));
    Some(SoughtPiece { n: count(n), thickness, width, length, wood, there: None, at_least: None, just_thick, just_wide })
}

/// Of a part that is glued up any board does that gives a strip; how many is not known.
fn strip_of(piece: SoughtPiece, figures: &Figures) -> Option<SoughtPiece> {
    let least = nm(figures.strip_min).saturating_add(nm(figures.edge_trim).saturating_mul(2));
    let width = Length::nm(least).ok()?.min(piece.width);
    Some(SoughtPiece { n: piece.n.min(1), width, at_least: Some(true), ..piece })
}

fn count(n: i64) -> Count {
    Count::try_from(n).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Of maple on the rack 29 do, of such to buy 30: it is one pile to look for. Longer ones are another.
    #[test]
    fn piles_alike_are_looked_for_once() {
        let piece =
            |n: Count, long: i64| SoughtPiece { n, length: Length::MM.times(long).unwrap(), wood: Key::read("maple-sugar"), ..NONE };
        const NONE: SoughtPiece = SoughtPiece {
            n: 0,
            thickness: Length::ZERO,
            width: Length::ZERO,
            length: Length::ZERO,
            wood: None,
            there: None,
            at_least: None,
            just_thick: None,
            just_wide: None,
        };
        assert_eq!(fewest_alike(vec![piece(30, 700), piece(29, 700), piece(9, 900)]), [piece(29, 700), piece(9, 900)]);
    }
}
