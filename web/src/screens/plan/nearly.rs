//! How near a plan comes to what was asked: a field side by side, a top that would need a row less, and the piles that do not fit.

use super::super::Seen;
use super::saw::number;
use super::wants::letter;
use super::{ends, piles, side, source_name, told, told_apart};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::view::{El, el};
use crate::words::en::{changed as changed_words, plan, tiles, told as words};
use fivebar_core::quantity::{Length, begin_large, begin_small};
use fivebar_core::sheet::make::near::{narrower, trimmed as trimmed_near};
use fivebar_core::sheet::make::{Field, Given, Source, Unfit, What};
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::sheet::plan::{Laid, PlanSheet, Why};

/// More piles than these are counted, not named.
const NAMED: usize = 4;

/// What a field is, or that it is not near enough and what the nearest is.
pub fn field(given: &Given, (laid, layers): (&Laid, i64), seen: Seen<'_>) -> String {
    let What::Field(asked) = &given.ask.what else { return String::new() };
    let [wide, deep, high] = laid.sides;
    let sides = sides([Some(wide), Some(deep), Some(high)], given, seen);
    if is_within(asked, laid) {
        let layers = (1 < layers).then(|| number(layers, seen));
        return words::field(plan::pattern(laid.pattern), &sides, layers.as_deref());
    }
    let [long, across] = laid.tile.map(|side| seen.speech.length(side, given.units));
    words::not_within(&side(asked.tolerance, given.units, seen), [&long, &across], &sides)
}

/// The least piece, where that keeps a field to less than half of the area that was asked [J].
pub fn kept_small(given: &Given, sheet: &PlanSheet) -> Option<Length> {
    let What::Field(Field { sides: [Some(wide), Some(deep), _], .. }) = &given.ask.what else { return None };
    let laid = sheet.laid.as_ref().filter(|_| matches!(sheet.proof.why, Some(Why::LeastPiece { .. })))?;
    let area = |one: Length, other: Length| i128::from(one.as_nm()).saturating_mul(other.as_nm().into());
    let [laid_wide, laid_deep, _] = laid.sides;
    (area(laid_wide, laid_deep).saturating_mul(2) < area(*wide, *deep)).then_some(given.ready.figures.min_piece)
}

/// How long pieces at the border would be, where the least piece leaves one tile of a whole field: nothing to make.
pub fn one_tile(given: &Given, sheet: &PlanSheet) -> Option<Length> {
    let Some(Why::LeastPiece { cut }) = sheet.proof.why else { return None };
    kept_small(given, sheet).filter(|_| sheet.picture.pieces.len() == 1).map(|_| cut)
}

/// That, instead of a plan.
pub fn border(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let [cut, least] = [one_tile(given, sheet)?, given.ready.figures.min_piece].map(|length| side(length, given.units, seen));
    Some(tiles::border_needs(&cut, &least))
}

/// All that was asked is made; a field is near enough.
pub fn is_all(given: &Given, sheet: &PlanSheet) -> bool {
    match (&given.ask.what, &given.ready.wish) {
        (What::Field(asked), _) => sheet.laid.as_ref().is_some_and(|laid| is_within(asked, laid)),
        (_, Wish::Parts(parts) | Wish::Sticks(parts)) => parts.sets.is_some_and(|sets| sets <= sheet.made),
        _ => true,
    }
}

/// Every side that was asked is as near as was asked.
fn is_within(asked: &Field, laid: &Laid) -> bool {
    let near = |(side, asked_for): (&Length, &Option<Length>)| {
        asked_for.is_none_or(|it| side.as_nm().saturating_sub(it.as_nm()).abs() <= asked.tolerance.as_nm())
    };
    laid.sides.iter().zip(&asked.sides).all(near)
}

/// Every side that was asked is just as it was asked.
pub fn is_just_so(given: &Given, sheet: &PlanSheet) -> bool {
    let What::Field(asked) = &given.ask.what else { return false };
    let same = |(side, asked): (&Length, &Option<Length>)| asked.is_none_or(|asked| asked == *side);
    sheet.laid.as_ref().is_some_and(|laid| laid.sides.iter().zip(&asked.sides).all(same))
}

/// What was asked again, and how far each side is off.
pub fn asked(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let What::Field(asked) = &given.ask.what else { return None };
    let Some(laid) = sheet.laid.as_ref().filter(|_| one_tile(given, sheet).is_none()) else {
        return Some(words::asked(&figures(given, asked, seen), None));
    };
    let off = laid.sides.iter().zip(asked.sides).enumerate().filter_map(|(nth, (side, asked))| {
        let by = side.as_nm().saturating_sub(asked?.as_nm());
        let length = Length::nm(by.abs()).ok().filter(|_| by != 0)?;
        Some(words::off(nth, 0 < by, &seen.speech.length(length, given.units)))
    });
    Some(words::asked(&figures(given, asked, seen), Some(&off.collect::<Vec<_>>())))
}

/// "Brick, 600 × 300 mm, 20 mm high"; several patterns by turns.
fn figures(given: &Given, asked: &Field, seen: Seen<'_>) -> String {
    let patterns: Vec<String> = asked.patterns.iter().map(|it| begin_small(plan::pattern(*it))).collect();
    format!("{}, {}", plan::listed(&patterns, "or"), sides(asked.sides, given, seen))
}

fn sides([wide, deep, high]: [Option<Length>; 3], given: &Given, seen: Seen<'_>) -> String {
    let (length, with_unit) = (|it| seen.speech.length(it, given.units), |it| side(it, given.units, seen));
    // The unit stands once.
    let wide = wide.map(|wide| if deep.is_some() { length(wide) } else { with_unit(wide) });
    let deep = deep.map(with_unit);
    words::sides([wide.as_deref(), deep.as_deref()], high.map(length).as_deref())
}

/// "1 mm narrower, 399 mm, needs 7 rows."
pub fn a_row_less(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let near = narrower(given).filter(|near| near.rows < sheet.made)?;
    let length = |length: Length| side(length, given.units, seen);
    Some(words::narrower(&length(near.by), &length(near.width), (&number(near.rows, seen), near.rows == 1)))
}

/// The part of which a stick gives one fewer for its trims alone, with the way to what comes off its ends.
pub fn trimmed(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(near) = trimmed_near(given, sheet).filter(|near| 1 < near.pieces) else { return vec![] };
    let length = |length: Length| side(length, given.units, seen);
    let [n, gives] = [near.pieces, near.pieces.saturating_sub(1)].map(|n| number(n, seen));
    let part = begin_small(&told::part(given, near.part));
    let sizes = [near.each, near.needs, near.long].map(length);
    let said = words::trims_decide([&n, &gives], &part, [&sizes[0], &sizes[1], &sizes[2]], letter(given, near.source));
    let way = plan::SAW_FIGURES.get(2).map(|name| ends::to_saw(name, given.ready.figures.end_trim, (given.units, seen)));
    std::iter::once(worded("p", "w7", said)).chain(way.map(|way| el("div", "no-print").kid(way))).collect()
}

/// The piles on the rack that do not fit, and why.
pub fn left_out(given: &Given, changed: &[usize], (app, seen): (&App, Seen<'_>)) -> Vec<String> {
    let (other, same): (Vec<_>, Vec<_>) = given.left_out.iter().enumerate().partition(|(nth, _)| changed.contains(nth));
    let other = other.into_iter().map(|(_, (source, _))| changed_words::left_out_changed(&begin_large(&source_name(source, app))));
    let (narrow, others): (Vec<_>, Vec<_>) =
        same.into_iter().map(|(_, one)| one).partition(|(_, why)| *why == Unfit::TooNarrow && is_top(given));
    let apart = |source: &Source| told_apart(source, given.left_out.iter().map(|(it, _)| it), app);
    let named = |source: &Source| begin_large(&apart(source));
    let narrow = narrow.into_iter().take(NAMED).filter_map(|(source, _)| {
        let Wish::Panel(panel) = &given.ready.wish else { return None };
        let (rows, width) = (panel.rows()?, side(panel.width?, given.units, seen));
        Some(words::too_narrow_for(&named(source), (&number(rows, seen), rows == 1), &width))
    });
    let told: Vec<String> = others
        .iter()
        .take(NAMED)
        .map(|(source, why)| format!("{}, {}", begin_small(&apart(source)), piles::unfit_of(source, *why, app, (given.units, seen))))
        .collect();
    let more = others.len().checked_sub(NAMED).filter(|more| 0 < *more).and_then(|more| i64::try_from(more).ok());
    let others = (!told.is_empty()).then(|| words::left_out(&told, more.map(|more| number(more, seen)).as_deref()));
    narrow.chain(others).chain(other).collect()
}

fn is_top(given: &Given) -> bool {
    matches!(given.ask.what, What::Top(_))
}
