//! The plan to scale: joints, and on each piece the letter of its pile or the number of its cut.

use super::super::Seen;
use super::label::Place;
use super::{say, signs};
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::ink::{Pair, choice, chosen_of, drawing, rect};
use crate::view::El;
use crate::words::en::{plan as words, signs as words_of};
use fivebar_core::quantity::Length;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::{Drawn, Mark, PlanSheet};

/// Below so many px of a piece its joints are half as thick, and a quarter.
const FINE: f64 = 8.0;
const FINEST: f64 = 4.0;

/// On paper letters grow with the picture: no taller than for a row so high.
const PAPER: f64 = 10.0;

/// On paper a picture is so wide and so high at most, in px.
const SHEET: Pair = (680.0, 333.0);

/// The picture of a plan, as wide as a card; under it what its pieces have no room to say.
pub fn picture(given: &Given, sheet: &PlanSheet, chosen: Option<usize>, seen: Seen<'_>) -> Vec<El<Msg>> {
    if !sheet.picture.boards.is_empty() {
        return super::boards::boards(given, sheet, chosen, seen);
    }
    let lay = Lay::of(given, sheet, seen);
    let pieces = sheet.picture.pieces.iter().enumerate().flat_map(|(nth, piece)| lay.drawn(piece, (nth, chosen == Some(nth))));
    let size = lay.size;
    let drawn = drawing(fine(sheet, lay.scale), (size.0 + 2.0, size.1 + 2.0));
    let drawn = chosen_of(drawn, (words::PICTURE.to_owned(), (0..sheet.picture.pieces.len()).collect(), chosen), choose);
    let drawn = drawn.kids(pieces).kid(rect("rim", (1.0, 1.0), size));
    std::iter::once(drawn).chain(lay.legend(sheet)).collect()
}

/// Under what a tap tells: the rows of a top in words, where the picture has no room for their numbers.
pub fn rows(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    Lay::of(given, sheet, seen).rows(sheet)
}

/// A top or a field as it is drawn.
struct Lay<'a> {
    given: &'a Given,
    seen: Seen<'a>,
    scale: f64,
    size: Pair,
    /// Piles it is of, in their order.
    piles: Vec<usize>,
}

impl<'a> Lay<'a> {
    fn of(given: &'a Given, sheet: &PlanSheet, seen: Seen<'a>) -> Lay<'a> {
        let [wide, high] = sheet.picture.outer.map(nm);
        let scale = (seen.page.card() - 2.0) / wide.max(1.0);
        let is_of = |place: &usize| sheet.picture.pieces.iter().any(|piece| piece.source == *place);
        let piles = (0..given.ready.sources.len()).filter(is_of).collect();
        Lay { given, seen, scale, size: (wide * scale, high * scale), piles }
    }

    fn place(&self, piece: &Drawn) -> Place {
        let [x, y, w, h] = piece.at.map(|side| nm(side) * self.scale);
        let on_paper = (SHEET.0 / self.size.0).min(SHEET.1 / self.size.1.max(1.0));
        Place { at: (x + 1.0, y + 1.0), size: (w, h), bold: is_cut(piece), on_paper }
    }

    /// Which strokes stand for the letter of a piece that has no room for it.
    fn strokes(&self, piece: &Drawn) -> usize {
        self.piles.iter().position(|pile| *pile == piece.source).unwrap_or(0)
    }

    fn is_read(&self, piece: &Drawn) -> bool {
        self.place(piece).is_read(&[mark(self.given, piece)])
    }

    fn drawn(&self, piece: &Drawn, (nth, chosen): (usize, bool)) -> Vec<El<Msg>> {
        let place = self.place(piece);
        let (at, size) = (place.at, place.size);
        let class = match (chosen, is_cut(piece)) {
            (true, _) => "chosen",
            (false, true) => "w2",
            (false, false) => "w1",
        };
        let text = mark(self.given, piece);
        // On paper nothing can be tapped: there its length stands on a piece.
        let told = format!("{text}: {}", self.seen.speech.length(super::answer::long(self.given, piece), self.given.units));
        let low = Place { size: (size.0, size.1.min(PAPER)), ..place };
        let paper = if low.is_read_on_paper(std::slice::from_ref(&told)) { told.clone() } else { text.clone() };
        let notch = is_cut(piece).then(|| signs::notch(at, size));
        let only = if place.is_read_on_paper(std::slice::from_ref(&text)) { "sign no-print" } else { "sign" };
        let sign = if self.is_read(piece) { None } else { signs::strokes(self.strokes(piece), (only, at), size) };
        let board = choice(rect(class, at, size).on_tap(choose(nth)), (nth, chosen), told.clone());
        std::iter::once(board).chain(notch).chain(sign).chain(place.labels(&[text], &[paper])).collect()
    }

    /// What the strokes on pieces without letters mean.
    fn legend(&self, sheet: &PlanSheet) -> Option<El<Msg>> {
        let small = || sheet.picture.pieces.iter().filter(|piece| !self.is_read(piece));
        let letter = |pile: usize| self.given.ready.sources.get(pile).map_or_else(String::new, |source| source.letter.clone());
        let of = |pile: &usize| small().any(|piece| piece.source == *pile);
        let signs: Vec<_> = self.piles.iter().enumerate().filter(|(_, pile)| of(pile)).map(|(nth, pile)| (nth, letter(*pile))).collect();
        let on_paper = small().any(|piece| !self.place(piece).is_read_on_paper(&[mark(self.given, piece)]));
        signs::legend(words_of::TOO_SMALL, &signs, (small().any(is_cut), on_paper))
    }

    /// The rows in words, where a number of a cut piece has no room: on a screen, and on paper where it has none there either.
    fn rows(&self, sheet: &PlanSheet) -> Option<El<Msg>> {
        let lacks = |read: &dyn Fn(&Place, &[String]) -> bool| {
            let small = |piece: &&Drawn| is_cut(piece) && !read(&self.place(piece), &[mark(self.given, piece)]);
            super::told::is_top(self.given) && sheet.picture.pieces.iter().any(|piece| small(&piece))
        };
        let class = if lacks(&|place, mark| place.is_read_on_paper(mark)) { "t14 rowwise" } else { "t14 rowwise no-print" };
        lacks(&|place, mark| place.is_read(mark)).then(|| signs::rows(self.given, sheet, (class, self.seen)))
    }
}

/// A piece is tapped.
pub fn choose(nth: usize) -> Msg {
    say(Tap::Piece(nth))
}

fn is_cut(piece: &Drawn) -> bool {
    matches!(piece.mark, Mark::Number(_))
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

pub fn nm(length: Length) -> f64 {
    length.as_nm() as f64
}

/// Letter of the pile, or the number of the cut.
pub fn mark(given: &Given, piece: &Drawn) -> String {
    match piece.mark {
        Mark::Number(n) if piece.part.is_some() => super::boards::mark(given, piece.source, n),
        Mark::Number(n) => n.to_string(),
        Mark::Letter => given.ready.sources.get(piece.source).map_or_else(String::new, |source| source.letter.clone()),
    }
}
