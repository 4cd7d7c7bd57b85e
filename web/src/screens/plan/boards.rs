//! Boards and sticks to scale, each with its cuts in place: what is left to keep is hatched, waste is grey. Of those cut alike one is drawn.

use super::super::Seen;
use super::picture::{fitting, nm};
use super::{say, told};
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::ink::{Pair, drawing, letters, num, path, rect};
use crate::parts::letters::{bold, plain};
use crate::view::El;
use crate::words::en::plan as words;
use fivebar_core::quantity::Length;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, Lain, Mark, PlanSheet};

/// Above each board its mark. A stick is drawn no thinner than an eye reads.
const HEAD: f64 = 18.0;
const THIN: f64 = 24.0;
/// How large the letters over a board are.
const LETTERS: f64 = 13.0;
/// From hatch to hatch.
const HATCH: f64 = 7.0;

/// The cutting diagram, as wide as a card: a drawing for each board, so that none is cut across a page.
pub fn boards(given: &Given, sheet: &PlanSheet, chosen: Option<usize>, seen: Seen<'_>) -> Vec<El<Msg>> {
    let width = seen.page.card() - 2.0;
    let longest = nm(sheet.picture.outer[0]).max(1.0);
    let board = |board: &Lain| {
        let wide = nm(board.at[3]);
        let scale = (width / longest, (THIN / wide.max(1.0)).max(width / longest));
        let one = One { given, board, scale, seen };
        let pieces = sheet.picture.pieces.iter().enumerate().filter(|(_, piece)| piece.mark == Mark::Number(board.number));
        let pieces = pieces.flat_map(|(nth, piece)| one.piece(piece, (nth, chosen == Some(nth))));
        let size = (width + 2.0, HEAD + wide * scale.1 + 1.0);
        let label = words::board(&mark(given, board.source, board.number));
        drawing("lay cuts", size).attr("role", "img").attr("aria-label", label).kids(one.outline()).kids(pieces)
    };
    sheet.picture.boards.iter().map(board).collect()
}

/// The mark of a board: its pile's letter and its number.
pub fn mark(given: &Given, source: usize, number: i64) -> String {
    let letter = given.ready.sources.get(source).map_or("", |source| &source.letter);
    format!("{letter} {number}")
}

struct One<'a> {
    given: &'a Given,
    board: &'a Lain,
    /// Along and across.
    scale: Pair,
    seen: Seen<'a>,
}

impl One<'_> {
    /// A rectangle of the picture where it is drawn.
    fn at(&self, at: [Length; 4]) -> (Pair, Pair) {
        let ([x, y, w, h], down) = (at.map(nm), nm(self.board.at[1]));
        ((x * self.scale.0 + 1.0, HEAD + (y - down) * self.scale.1), (w * self.scale.0, h * self.scale.1))
    }

    fn length(&self, length: Length) -> String {
        self.seen.speech.length(length, self.given.units)
    }

    /// Its mark and how many are cut alike, the board itself, and what is left of it.
    fn outline(&self) -> Vec<El<Msg>> {
        let (at, size) = self.at(self.board.at);
        let mark = mark(self.given, self.board.source, self.board.number);
        let alike = (1 < self.board.times).then(|| format!("  × {}", super::saw::number(self.board.times, self.seen)));
        let (head, long) = (mark + &alike.unwrap_or_default(), self.length(self.board.at[2]));
        // How long it is stands over its end, where there is room.
        let room = bold(&head, LETTERS) + plain(&long, LETTERS) + LETTERS < size.0;
        let long = room.then(|| letters("hd e", (at.0 + size.0, HEAD - 5.0), long));
        [letters("hd", (1.0, HEAD - 5.0), head), rect("bd", at, size)].into_iter().chain(long).chain(self.rest()).collect()
    }

    fn rest(&self) -> Vec<El<Msg>> {
        let Some(left) = self.board.left else { return vec![] };
        let (at, size) = self.at(left);
        let text = self.length(left[2]);
        let label =
            fitting(&[text], size).map(|(text, class, down)| letters(class, (at.0 + size.0 / 2.0, at.1 + size.1 / 2.0 + down), text));
        let label = label.map(|label| label.attr("data-on", "hatch"));
        [rect("rest", at, size), path("hatch", hatch(at, size))].into_iter().chain(label).collect()
    }

    fn piece(&self, piece: &Drawn, (nth, chosen): (usize, bool)) -> Vec<El<Msg>> {
        let (at, size) = self.at(piece.at);
        let class = match (chosen, piece.part.is_some_and(|part| part % 2 == 1)) {
            (true, _) => "chosen",
            (false, true) => "w2",
            (false, false) => "w1",
        };
        let length = self.length(piece.at[2]);
        let name = piece.part.map_or(String::new(), |part| told::part(self.given, part));
        let label = fitting(&[format!("{name} {length}"), length], size);
        let label = label.map(|(text, class, down)| letters(class, (at.0 + size.0 / 2.0, at.1 + size.1 / 2.0 + down), text));
        std::iter::once(rect(class, at, size).on_tap(say(Tap::Piece(nth)))).chain(label).collect()
    }
}

/// Slanting lines over a rectangle.
fn hatch((x, y): Pair, (w, h): Pair) -> String {
    let (mut lines, mut k) = (String::new(), HATCH);
    while k < w + h {
        let (from, to) = ((k.min(w), (k - w).max(0.0)), ((k - h).max(0.0), k.min(h)));
        lines += &format!("M{} {}L{} {}", num(x + from.0), num(y + from.1), num(x + to.0), num(y + to.1));
        k += HATCH;
    }
    lines
}
