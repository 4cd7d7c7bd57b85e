//! Five-bar marks: four strokes and one across, cut as pieces are counted. Hollow marks are not saved yet.
use crate::parts::ink::{Pair, path, put, rect, sized};
use crate::view::El;
use fivebar_core::quantity::Listed;

/// How large the marks are cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cut {
    /// On a tally tile.
    Tile,
    /// On a tally tile of a narrow page.
    Narrow,
    /// Beside a figure in a list.
    List,
    /// On a large tile.
    Large,
    /// Where one pile stands alone.
    Tall,
}

impl Cut {
    /// Between strokes; height of a stroke; from gate to gate; from row to row.
    fn measures(self) -> (f64, f64, f64, f64) {
        match self {
            Cut::Tile => (3.1, 9.0, 17.3, 13.0),
            Cut::Narrow => (2.7, 8.0, 15.1, 10.5),
            Cut::List => (3.5, 10.0, 19.5, 14.0),
            Cut::Large => (4.0, 12.0, 23.0, 22.0),
            Cut::Tall => (6.5, 20.0, 31.5, 30.0),
        }
    }
}

/// Marks to draw: so many cut, so many hollow, so many gates to a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bars {
    pub cut: u32,
    pub hollow: u32,
    pub per_row: usize,
    pub size: Cut,
}

const BOARD_OF: u32 = 100;

/// The marks, in rows. From a hundred on, each full hundred is one solid board. Hollow gates stand wider, after the rest.
pub fn bars<M>(bars: Bars) -> El<M> {
    let (step, tall, ..) = bars.size.measures();
    let (boards, cut) = ((bars.cut / BOARD_OF) as usize, bars.cut % BOARD_OF);
    let solid: Vec<Pair> = (0..boards).map(|i| bars.spot(i)).listed();
    let strokes: Vec<Gate> = groups(cut).enumerate().map(|(i, n)| Gate { strokes: n, at: bars.spot(boards + i), step, tall }).listed();
    let hollow = bars.hollow_gates(boards + strokes.len());
    let right = |gates: &[Gate]| gates.iter().map(Gate::right).fold(1.0, f64::max);
    let width = solid.iter().map(|at| at.0 + 3.0 * step + 4.0).fold(right(&strokes).max(right(&hollow)), f64::max);
    let low = solid.last().into_iter().copied().chain(strokes.iter().chain(&hollow).map(|g| g.at)).map(|at| at.1).fold(0.0, f64::max);
    let drawn = |class: &'static str, gates: &[Gate]| (!gates.is_empty()).then(|| path(class, lines(gates)));
    sized("tally", (width + 1.0, low + tall + 2.0))
        .kids(solid.iter().map(|at| rect("", (at.0 + 0.5, at.1 + 1.0), (step * 3.0 + 3.0, tall))))
        .kids(drawn("cut", &strokes))
        .kids(drawn("ho", &hollow))
        .kids(drawn("hi", &hollow))
}

impl Bars {
    /// The corner of the group of this number.
    fn spot(self, i: usize) -> Pair {
        let (_, _, pitch, row) = self.size.measures();
        let per_row = self.per_row.max(1);
        ((i % per_row) as f64 * pitch, (i / per_row) as f64 * row)
    }

    /// Hollow gates after `taken` groups: in the same row if there is room, else below.
    fn hollow_gates(self, taken: usize) -> Vec<Gate> {
        let (step, tall, pitch, row) = self.size.measures();
        let (wide, room) = (2.0 * step, self.per_row.max(1) as f64 * pitch);
        let own = 3.0 * wide + 4.0;
        let (mut x, mut y) = self.spot(taken);
        let mut gates = vec![];
        for strokes in groups(self.hollow) {
            if x > 0.0 && x + own > room {
                (x, y) = (0.0, y + row);
            }
            gates.push(Gate { strokes, at: (x + 1.0, y), step: wide, tall });
            x += own + step * 1.3;
        }
        gates
    }
}

/// One group of strokes and where it stands.
struct Gate {
    strokes: u32,
    at: Pair,
    step: f64,
    tall: f64,
}

impl Gate {
    fn right(&self) -> f64 {
        let uprights = if self.strokes == 5 { 3 } else { self.strokes.saturating_sub(1) };
        self.at.0 + f64::from(uprights) * self.step + 4.0
    }

    /// Its strokes, after those drawn so far; the fifth goes across.
    fn draw(&self, d: &mut String) {
        let (x, y) = self.at;
        let mut signed = |parts: &[(char, f64)]| {
            for (sign, value) in parts {
                d.push(*sign);
                put(d, *value);
            }
        };
        for i in 0..self.strokes.min(4) {
            signed(&[('M', x + 2.0 + f64::from(i) * self.step), (' ', y + 1.0), ('v', self.tall)]);
        }
        if self.strokes == 5 {
            signed(&[('M', x), (' ', y + self.tall - 1.0), ('L', self.right()), (' ', y + 3.0)]);
        }
    }
}

/// All their strokes as one line.
fn lines(gates: &[Gate]) -> String {
    let mut d = String::new();
    gates.iter().for_each(|gate| gate.draw(&mut d));
    d
}

/// A count as fives and the open rest.
fn groups(n: u32) -> impl Iterator<Item = u32> {
    std::iter::repeat_n(5, (n / 5) as usize).chain((!n.is_multiple_of(5)).then_some(n % 5))
}

/// One large gate with its marks missing; `filled` strokes of it are cut. `bigg` stands alone on day one.
pub fn gate<M>(filled: u32, bigg: bool) -> El<M> {
    let (size, class) = if bigg { ((182.0, 188.0), "gate bigg") } else { ((53.0, 50.0), "gate") };
    let stroke = |i: u32| match (bigg, i) {
        (true, 4) => "M10 136L170 52".to_owned(),
        (false, 4) => "M4 35L47 15".to_owned(),
        (true, _) => format!("M{} 10v168", 16 + 50 * i),
        (false, _) => format!("M{} 5v40", 10 + 11 * i),
    };
    let all: String = (0..5).map(stroke).collect();
    let cut: String = (0..filled.min(5)).map(stroke).collect();
    sized(class, size).kid(path("o", all.clone())).kid(path("i", all)).kids((!cut.is_empty()).then(|| path("f", cut)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Count, hollow: boards of a hundred, strokes cut, gates crossed, strokes hollow.
    #[test]
    fn every_piece_has_its_mark() {
        for ((cut, hollow), (boards, uprights, crossed)) in [
            ((0, 0), (0, 0, 0)),
            ((4, 0), (0, 4, 0)),
            ((38, 0), (0, 31, 7)),
            ((64, 0), (0, 52, 12)),
            ((17, 5), (0, 14 + 4 * 2, 3 + 2)),
            ((213, 0), (2, 11, 2)),
        ] {
            let shown = bars::<()>(Bars { cut, hollow, per_row: 4, size: Cut::Tile }).html();
            assert_eq!(shown.matches("<rect").count(), boards, "{cut}");
            assert_eq!(shown.matches("v9").count(), uprights, "{cut} {hollow}");
            assert_eq!(shown.matches('L').count(), crossed, "{cut} {hollow}");
        }
    }

    #[test]
    fn marks_are_as_wide_as_in_the_drawings() {
        for (cut, per_row, size) in [(64, 4, "66.2 50"), (9, 4, "31.6 11"), (38, 3, "48.9 37")] {
            let shown = bars::<()>(Bars { cut, hollow: 0, per_row, size: Cut::Tile }).html();
            assert!(shown.contains(&format!("viewBox=\"0 0 {size}\"")), "{shown}");
        }
    }

    #[test]
    fn a_blank_gate_fills_stroke_by_stroke() {
        assert!(!gate::<()>(0, true).html().contains(r#"class="f""#));
        assert_eq!(gate::<()>(3, true).html().split(r#"class="f""#).nth(1).map(|f| f.matches("v168").count()), Some(3));
    }
}
