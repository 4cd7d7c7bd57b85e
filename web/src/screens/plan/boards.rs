//! Boards and sticks to scale, each with its cuts in place: what is left to keep is hatched, waste is grey. Of those cut alike one is drawn.

use super::super::Seen;
use super::label::Place;
use super::picture::{choose, nm};
use super::{signs, told};
use crate::app::Msg;
use crate::parts::ink::{Pair, choice, chosen_of, drawing, letters, num, path, rect};
use crate::parts::letters::{bold, plain};
use crate::view::El;
use crate::words::en::{plan as words, signs as words_of};
use fivebar_core::quantity::Length;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, Lain, Mark, PlanSheet};

/// Above each board its mark. A stick is drawn no thinner than an eye reads, and the narrowest piece of a board as high as its name needs, as
/// far as the board is no higher than this.
const HEAD: f64 = 18.0;
const THIN: f64 = 24.0;
const PIECE: f64 = 12.0;
const HIGH: f64 = 120.0;
/// So much larger it is on paper, where boards stand in two columns.
const COLUMNS: f64 = 0.95;
/// How large the letters over a board are.
const LETTERS: f64 = 13.0;
/// From hatch to hatch.
const HATCH: f64 = 7.0;

/// The cutting diagram, as wide as a card: a drawing for each board, so that none is cut across a page.
pub fn boards(given: &Given, sheet: &PlanSheet, chosen: Option<usize>, seen: Seen<'_>) -> Vec<El<Msg>> {
    let width = seen.page.card() - 2.0;
    let longest = nm(sheet.picture.outer[0]).max(1.0);
    let (mut small, mut on_paper): (Vec<usize>, bool) = (vec![], false);
    let mut board = |board: &Lain| {
        let wide = nm(board.at[3]);
        let all = || sheet.picture.pieces.iter().enumerate().filter(|(_, piece)| piece.mark == Mark::Number(board.number));
        let least = all().map(|(_, piece)| nm(piece.at[3])).fold(f64::MAX, f64::min);
        let across = (PIECE / least.max(1.0)).min(HIGH / wide.max(1.0));
        let scale = (width / longest, (THIN / wide.max(1.0)).max(across).max(width / longest));
        let one = One { given, board, scale, seen };
        let pieces = all().flat_map(|(nth, piece)| one.piece(piece, (nth, chosen == Some(nth))));
        for (_, piece) in all().filter(|(_, piece)| !one.place(piece).is_read(&one.texts(piece))) {
            small.extend(piece.part.filter(|part| !small.contains(part)));
            on_paper |= !one.place(piece).is_read_on_paper(&one.texts(piece));
        }
        let size = (width + 2.0, HEAD + wide * scale.1 + 1.0);
        let label = words::board(&mark(given, board.source, board.number));
        let own = all().map(|(nth, _)| nth).collect();
        chosen_of(drawing("lay cuts", size), (label, own, chosen), choose).kids(one.outline()).kids(pieces)
    };
    let drawn: Vec<El<Msg>> = sheet.picture.boards.iter().map(&mut board).collect();
    small.sort_unstable();
    let signs: Vec<_> = small.into_iter().map(|part| (part, told::part(given, part))).collect();
    drawn.into_iter().chain(signs::legend(words_of::TOO_SMALL_NAMES, &signs, (false, on_paper))).collect()
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
        let text = [self.length(left[2])];
        let place = Place { at, size, bold: false, on_paper: COLUMNS };
        let label = place.labels(&text, &text).into_iter().map(|label| label.attr("data-on", "hatch"));
        [rect("rest", at, size), path("hatch", hatch(at, size))].into_iter().chain(label).collect()
    }

    fn piece(&self, piece: &Drawn, (nth, chosen): (usize, bool)) -> Vec<El<Msg>> {
        let (at, size) = self.at(piece.at);
        let class = match (chosen, piece.part.is_some_and(|part| part % 2 == 1)) {
            (true, _) => "chosen",
            (false, true) => "w2",
            (false, false) => "w1",
        };
        let (place, texts) = (self.place(piece), self.texts(piece));
        let only = if place.is_read_on_paper(&texts) { "sign no-print" } else { "sign" };
        let sign = if place.is_read(&texts) { None } else { piece.part.and_then(|part| signs::strokes(part, (only, at), size)) };
        let board = choice(rect(class, at, size).on_tap(choose(nth)), (nth, chosen), texts[0].clone());
        std::iter::once(board).chain(sign).chain(place.labels(&texts, &texts)).collect()
    }

    fn place(&self, piece: &Drawn) -> Place {
        let (at, size) = self.at(piece.at);
        Place { at, size, bold: false, on_paper: COLUMNS }
    }

    /// Its name and its length, else its length alone.
    fn texts(&self, piece: &Drawn) -> [String; 2] {
        let length = self.length(piece.at[2]);
        let name = piece.part.map_or(String::new(), |part| told::part(self.given, part));
        [format!("{name} {length}"), length]
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
