//! The plan to scale: joints, and on each piece the letter of its pile or the number of its cut.

use super::super::Seen;
use super::say;
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::ink::{Pair, drawing, letters, path, rect};
use crate::parts::letters::{bold, plain};
use crate::view::El;
use crate::words::en::plan as words;
use fivebar_core::quantity::Length;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, Mark, PlanSheet};

/// Letters are drawn at this size, and from this height of a piece on.
const SIZE: f64 = 14.0;
const LEAST_HIGH: f64 = 12.0;

/// The picture of a plan, as wide as a card.
pub fn picture(given: &Given, sheet: &PlanSheet, chosen: Option<usize>, seen: Seen<'_>) -> El<Msg> {
    let [wide, high] = sheet.picture.outer.map(nm);
    let width = seen.page.card() - 2.0;
    let scale = width / wide.max(1.0);
    let size = (wide * scale, high * scale);
    let pieces = sheet.picture.pieces.iter().enumerate().flat_map(|(nth, piece)| drawn(given, piece, (nth, chosen == Some(nth)), scale));
    drawing("lay", (size.0 + 2.0, size.1 + 2.0))
        .attr("role", "img")
        .attr("aria-label", words::PICTURE)
        .kids(pieces)
        .kids(has_outline(sheet).then(|| rect("rim", (1.0, 1.0), size)))
}

/// A top and a field are one board; boards and sticks lie apart.
fn has_outline(sheet: &PlanSheet) -> bool {
    sheet.picture.pieces.iter().all(|piece| piece.part.is_none())
}

fn nm(length: Length) -> f64 {
    length.as_nm() as f64
}

fn drawn(given: &Given, piece: &Drawn, (nth, chosen): (usize, bool), scale: f64) -> Vec<El<Msg>> {
    let [x, y, w, h] = piece.at.map(|side| nm(side) * scale);
    let (at, size): (Pair, Pair) = ((x + 1.0, y + 1.0), (w, h));
    let cut = matches!(piece.mark, Mark::Number(_));
    let class = match (chosen, cut) {
        (true, _) => "chosen",
        (false, true) => "w2",
        (false, false) => "w1",
    };
    let text = mark(given, piece);
    let fits = LEAST_HIGH <= h && width(&text, cut) + 4.0 <= w;
    let notch = (cut && fits && piece.part.is_none()).then(|| path("notch", format!("M{:.1} {:.1}v-6l6 6z", at.0, at.1 + size.1)));
    let middle = (at.0 + w / 2.0, at.1 + h / 2.0 + SIZE * 0.36);
    let label = fits.then(|| letters(if cut { "mk b" } else { "mk" }, middle, text));
    let board = rect(class, at, size).on_tap(say(Tap::Piece(nth)));
    std::iter::once(board).chain(notch).chain(label).collect()
}

fn width(text: &str, cut: bool) -> f64 {
    if cut { bold(text, SIZE) } else { plain(text, SIZE) }
}

/// Letter of the pile, or the number of the cut.
pub fn mark(given: &Given, piece: &Drawn) -> String {
    match piece.mark {
        Mark::Number(n) => n.to_string(),
        Mark::Letter => given.ready.sources.get(piece.source).map_or_else(String::new, |source| source.letter.clone()),
    }
}
