//! Pieces too small for their letters: each pile or part has strokes of its own, said under the picture, and rows are told one by one.

use super::super::Seen;
use super::picture::mark;
use crate::app::Msg;
use crate::parts::ink::{Pair, num, path, rect, sized};
use crate::view::{El, el};
use crate::words::en::signs as words;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, PlanSheet};

/// Strokes are drawn on pieces that are so many px each way at least.
const LEAST: f64 = 5.0;
const SWATCH: Pair = (28.0, 14.0);

/// Strokes by which a piece is told without its letter, by the place of its pile or part; the first has none.
pub fn strokes(nth: usize, (class, (x, y)): (&'static str, Pair), (w, h): Pair) -> Option<El<Msg>> {
    let (mid, in_by) = ((x + w / 2.0, y + h / 2.0), (w.min(h) * 0.2).max(1.5));
    let along = || format!("M{} {}H{}", num(x + in_by), num(mid.1), num(x + w - in_by));
    let across = || format!("M{} {}V{}", num(mid.0), num(y + in_by), num(y + h - in_by));
    let [left, right, top, foot] = [mid.0 - h / 2.0 + in_by, mid.0 + h / 2.0 - in_by, y + in_by, y + h - in_by].map(num);
    let falls = || format!("M{left} {top}L{right} {foot}");
    let rises = || format!("M{left} {foot}L{right} {top}");
    let drawn = match nth % 7 {
        0 => return None,
        1 => along(),
        2 => across(),
        3 => along() + &across(),
        4 => falls(),
        5 => rises(),
        _ => falls() + &rises(),
    };
    (LEAST <= w.min(h)).then(|| path(class, drawn))
}

/// The corner that says that a piece is cut.
pub fn notch((x, y): Pair, (w, h): Pair) -> El<Msg> {
    let leg = num((h * 0.4).min(w * 0.5).min(6.0));
    path("notch", format!("M{} {}v-{leg}l{leg} {leg}z", num(x), num(y + h)))
}

/// What the strokes mean: each with its name, and the corner of what is cut. On paper, which has room for more letters, only where some have
/// none there either.
pub fn legend(title: &'static str, signs: &[(usize, String)], (cut, on_paper): (bool, bool)) -> Option<El<Msg>> {
    let swatch = |kids: Vec<El<Msg>>| sized("lay", (SWATCH.0 + 2.0, SWATCH.1 + 2.0)).kid(rect("w1", (1.0, 1.0), SWATCH)).kids(kids);
    let one = |sign: Vec<El<Msg>>, name: String| el("span", "sg").kid(swatch(sign)).kid(el("span", "").text(name));
    let signs_of = signs.iter().map(|(nth, name)| one(strokes(*nth, ("sign", (1.0, 1.0)), SWATCH).into_iter().collect(), name.clone()));
    let cut = cut.then(|| one(vec![notch((1.0, 1.0), SWATCH)], words::CUT.to_owned()));
    let all: Vec<El<Msg>> = signs_of.chain(cut).collect();
    (!all.is_empty()).then(|| el("p", if on_paper { "t14 signs" } else { "t14 signs no-print" }).kid(el("span", "").text(title)).kids(all))
}

/// The rows of a top as they lie, from the top and from the left: "Row 1: 1 + 8 + 2 × A".
pub fn rows(given: &Given, sheet: &PlanSheet, (class, seen): (&'static str, Seen<'_>)) -> El<Msg> {
    let row = |row: &[Drawn], nth: usize| {
        let nth = super::saw::number(i64::try_from(nth).unwrap_or(i64::MAX).saturating_add(1), seen);
        el("p", "").text(words::row(&nth, &in_turn(given, row, seen)))
    };
    let all = fivebar_core::sheet::make::cut::rows(sheet).enumerate().map(|(nth, own)| row(own, nth));
    el("section", class).kid(el("p", "").text(words::ROW_BY_ROW)).kids(all)
}

/// Pieces of one mark beside each other are counted.
fn in_turn(given: &Given, row: &[Drawn], seen: Seen<'_>) -> Vec<String> {
    let mut marks: Vec<(String, i64)> = vec![];
    for piece in row {
        let mark = mark(given, piece);
        match marks.last_mut() {
            Some((last, n)) if *last == mark => *n += 1,
            _ => marks.push((mark, 1)),
        }
    }
    let written = |(mark, n): (String, i64)| if n == 1 { mark } else { words::so_many_of(&super::saw::number(n, seen), &mark) };
    marks.into_iter().map(written).collect()
}
