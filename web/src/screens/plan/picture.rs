//! The plan to scale: joints, and on each piece the letter of its pile or the number of its cut.

use super::super::Seen;
use super::say;
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::ink::{Pair, drawing, letters, num, path, rect};
use crate::parts::letters::{bold, plain};
use crate::view::El;
use crate::words::en::plan as words;
use fivebar_core::quantity::Length;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, Mark, PlanSheet};

/// Sizes of letters, the largest first, each with its class: the largest that fits into a piece is drawn.
const SIZES: [(f64, &str); 5] = [(14.0, "mk"), (11.0, "mk s11"), (9.0, "mk s9"), (7.0, "mk s7"), (5.0, "mk s5")];

/// Below so many px of a piece its joints are half as thick, and a quarter.
const FINE: f64 = 8.0;
const FINEST: f64 = 4.0;

/// On paper letters grow with the picture: no taller than for a row so high.
const PAPER: f64 = 10.0;

/// The picture of a plan, as wide as a card.
pub fn picture(given: &Given, sheet: &PlanSheet, chosen: Option<usize>, seen: Seen<'_>) -> Vec<El<Msg>> {
    if !sheet.picture.boards.is_empty() {
        return super::boards::boards(given, sheet, chosen, seen);
    }
    let [wide, high] = sheet.picture.outer.map(nm);
    let width = seen.page.card() - 2.0;
    let scale = width / wide.max(1.0);
    let size = (wide * scale, high * scale);
    let pieces =
        sheet.picture.pieces.iter().enumerate().flat_map(|(nth, piece)| drawn(given, piece, (nth, chosen == Some(nth)), (scale, seen)));
    let drawn = drawing(fine(sheet, scale), (size.0 + 2.0, size.1 + 2.0)).attr("role", "img").attr("aria-label", words::PICTURE);
    vec![drawn.kids(pieces).kid(rect("rim", (1.0, 1.0), size))]
}

/// Joints are drawn thinner where the pieces are: many narrow rows would be nothing but joints.
fn fine(sheet: &PlanSheet, scale: f64) -> &'static str {
    let least = sheet.picture.pieces.iter().map(|piece| nm(piece.at[2].min(piece.at[3])) * scale).fold(f64::MAX, f64::min);
    match least {
        least if least < FINEST => "lay finest",
        least if least < FINE => "lay fine",
        _ => "lay",
    }
}

/// The first of the texts that fits into a piece, at the largest size it fits in: with its class, and how far its line is below the middle.
pub fn fitting(texts: &[String], (w, h): Pair) -> Option<(String, String, f64)> {
    let sized = |text: &String| {
        let (size, class) = SIZES.iter().skip(1).find(|(size, _)| size * 0.86 <= h && plain(text, *size) + size * 0.4 <= w)?;
        Some((text.clone(), (*class).to_owned(), size * 0.36))
    };
    texts.iter().find_map(|text| sized(text).filter(|_| !text.is_empty()))
}

pub fn nm(length: Length) -> f64 {
    length.as_nm() as f64
}

/// The largest size a text fits in.
fn sized(text: &str, bold: bool, (w, h): Pair) -> Option<&'static (f64, &'static str)> {
    SIZES.iter().find(|(size, _)| size * 0.86 <= h && width(text, bold, *size) + size * 0.2 <= w)
}

fn drawn(given: &Given, piece: &Drawn, (nth, chosen): (usize, bool), (scale, seen): (f64, Seen<'_>)) -> Vec<El<Msg>> {
    let [x, y, w, h] = piece.at.map(|side| nm(side) * scale);
    let (at, size): (Pair, Pair) = ((x + 1.0, y + 1.0), (w, h));
    let cut = matches!(piece.mark, Mark::Number(_));
    let class = match (chosen, cut) {
        (true, _) => "chosen",
        (false, true) => "w2",
        (false, false) => "w1",
    };
    let (text, long) = (mark(given, piece), seen.speech.length(super::answer::long(given, piece), given.units));
    let size_of = sized(&text, cut, (w, h));
    let notch = (cut && size_of.is_some()).then(|| {
        let leg = num((h * 0.4).min(6.0));
        path("notch", format!("M{} {}v-{leg}l{leg} {leg}z", num(at.0), num(at.1 + size.1)))
    });
    let middle = |size: f64| (at.0 + w / 2.0, at.1 + h / 2.0 + size * 0.36);
    let b = if cut { " b" } else { "" };
    // On paper nothing can be tapped: there its length stands on a piece.
    let told = format!("{text}: {long}");
    let long =
        sized(&told, cut, (w, h.min(PAPER))).map(|(size, class)| letters(format!("{class}{b} print-only"), middle(*size), told.clone()));
    let screen_only = if long.is_some() { " no-print" } else { "" };
    let label = size_of.map(|(size, class)| letters(format!("{class}{b}{screen_only}"), middle(*size), text));
    let board = rect(class, at, size).on_tap(say(Tap::Piece(nth)));
    std::iter::once(board).chain(notch).chain(label).chain(long).collect()
}

fn width(text: &str, cut: bool, size: f64) -> f64 {
    if cut { bold(text, size) } else { plain(text, size) }
}

/// Letter of the pile, or the number of the cut.
pub fn mark(given: &Given, piece: &Drawn) -> String {
    match piece.mark {
        Mark::Number(n) if piece.part.is_some() => super::boards::mark(given, piece.source, n),
        Mark::Number(n) => n.to_string(),
        Mark::Letter => given.ready.sources.get(piece.source).map_or_else(String::new, |source| source.letter.clone()),
    }
}
