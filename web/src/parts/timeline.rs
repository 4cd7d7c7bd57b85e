//! A day to scale: runs as boards on a line of hours, what waited as lines above them, gaps left bare. How a board is drawn says
//! where its minutes come from; colour only repeats it.

use super::ink::{Pair, drawing, held, letters, line, num, path, rect, sized};
use super::letters as widths;
use super::scale::ticks::{Rhythm, ticks};
use crate::view::El;
use fivebar_core::quantity::Listed;

/// How a board is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// Solid.
    Measured,
    /// Solid, sawn along its middle.
    Corrected,
    /// Hatched.
    Recalled,
    /// Hollow: it does not count.
    Open,
    /// Hollow and low, over a board that counts.
    Over,
    /// It goes on.
    Runs,
}

/// A board from one minute of the day to another; a torn edge goes on the day before, or after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    pub from: f64,
    pub to: f64,
    pub look: Look,
    pub torn: (bool, bool),
}

/// Something that waited; an end that is open goes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    pub from: f64,
    pub to: f64,
    pub open: (bool, bool),
}

/// A day, `width` wide, from one minute to another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Timeline {
    pub width: f64,
    pub from: f64,
    pub to: f64,
    pub boards: Vec<Stretch>,
    pub lines: Vec<Line>,
    /// From when to when somebody worked along.
    pub helpers: Vec<(f64, f64)>,
    /// Hours to write under the line.
    pub hours: Vec<(f64, String)>,
    /// Midnight, where work went over it, and where the clock of another place begins.
    pub midnights: Vec<f64>,
}

const TALL: f64 = 22.0;
const LANE: f64 = 8.0;
/// More lines than this share the last lane.
const LANES: usize = 5;
const TOOTH: f64 = 4.0;

/// The drawing; `said` is what a reader hears of it.
pub fn timeline<M>(day: &Timeline, said: String) -> El<M> {
    let lanes = lanes(&day.lines);
    let base = TALL + 10.0 + LANE * lanes.iter().max().map_or(0.0, |most| *most as f64 + 1.0);
    let hollow = |stretch: &&Stretch| matches!(stretch.look, Look::Open | Look::Over);
    let (open, solid): (Vec<&Stretch>, Vec<&Stretch>) = day.boards.iter().partition(hollow);
    let long = day.to - day.from;
    let tick = if long < 12.0 * 60.0 { 15.0 } else { 30.0 };
    drawing("sc tl", (day.width, base + 36.0))
        .attr("role", "img")
        .attr("aria-label", said)
        .kids(ticks((day.from, day.to), Rhythm { tick, long: 60.0 }, base, |minute| day.x(minute)))
        .kids(day.midnights.iter().map(|at| line("night", (day.x(*at), 0.0), (day.x(*at), base + 13.0))))
        .kids(day.helpers.iter().map(|(from, to)| {
            let (left, right) = (day.x(*from), day.x(*to));
            rect("fink", (left, base - TALL - 6.0), ((right - left).max(2.0), 4.0))
        }))
        .kids(day.lines.iter().zip(&lanes).flat_map(|(one, lane)| waited(day, one, 5.0 + LANE * *lane as f64)))
        .kids(open.into_iter().chain(solid).flat_map(|stretch| {
            let over = if stretch.look == Look::Over { (base - TALL - 8.0, base - TALL) } else { (base - TALL, base) };
            board(stretch, (day.x(stretch.from), day.x(stretch.to)), over)
        }))
        .kid(line("base", (0.0, base), (day.width, base)))
        .kids(day.hours.iter().map(|(at, word)| hour(day, (day.x(*at), base + 30.0), word)))
}

impl Timeline {
    fn x(&self, minute: f64) -> f64 {
        let share = (minute - self.from) / (self.to - self.from).max(1.0);
        held(share, 0.0, 1.0) * self.width
    }
}

/// In which lane each line lies: the first that is free.
fn lanes(lines: &[Line]) -> Vec<usize> {
    let mut ends: Vec<f64> = vec![];
    let free = |line: &Line| {
        let place = ends.iter().position(|end| *end + 2.0 <= line.from);
        let place = place.unwrap_or(ends.len()).min(LANES.saturating_sub(1));
        match ends.get_mut(place) {
            Some(end) => *end = end.max(line.to),
            None => ends.push(line.to),
        }
        place
    };
    lines.iter().map(free).listed()
}

fn hour<M>(day: &Timeline, at: Pair, word: &str) -> El<M> {
    let wide = widths::plain(word, 14.0);
    letters("", (held(at.0 - wide / 2.0, 0.0, day.width - wide), at.1), word.to_owned())
}

/// A line with an end on each side; where it goes on it has none.
fn waited<M>(day: &Timeline, one: &Line, y: f64) -> Vec<El<M>> {
    let (from, to) = (day.x(one.from), day.x(one.to));
    let end = |x: f64, open: bool| (!open).then(|| line("wait", (x, y - 3.5), (x, y + 3.5)));
    let ends = [end(from + 1.0, one.open.0), end(to - 1.0, one.open.1)];
    std::iter::once(line("wait", (from, y), (to.max(from + 2.0), y))).chain(ends.into_iter().flatten()).listed()
}

fn board<M>(stretch: &Stretch, (left, right): Pair, (top, bottom): Pair) -> Vec<El<M>> {
    let right = right.max(left + 2.0);
    let outline = outline((left, right), (top, bottom), stretch.torn);
    // A gap of a hair parts boards that touch.
    let edge = line("part", (left, top), (left, bottom));
    let own = match stretch.look {
        Look::Measured => vec![path("fink", outline)],
        Look::Corrected => vec![path("fink", outline), rect("kerf", (left + 2.0, (top + bottom) / 2.0 - 2.5), (right - left - 4.0, 5.0))],
        Look::Recalled => vec![path("open", outline), path("hatch", hatch((left, right), (top, bottom)))],
        Look::Open | Look::Over => vec![path("open", outline)],
        Look::Runs => vec![path("runs", outline)],
    };
    let solid = matches!(stretch.look, Look::Measured | Look::Corrected);
    own.into_iter().chain(solid.then_some(edge)).listed()
}

/// A board, its torn edges with teeth.
fn outline((left, right): Pair, (top, bottom): Pair, (before, after): (bool, bool)) -> String {
    let step = (bottom - top) / 4.0;
    let teeth = |x: f64, down: bool| -> String {
        let at = |n: f64| if down { top + step * n } else { bottom - step * n };
        let point = |n: f64| {
            let out = if n == 1.0 || n == 3.0 { TOOTH } else { 0.0 };
            format!("L{} {}", num(if down { x - out } else { x + out }), num(at(n)))
        };
        [1.0, 2.0, 3.0, 4.0].map(point).concat()
    };
    let right_side = if after { teeth(right, true) } else { format!("V{}", num(bottom)) };
    let left_side = if before { teeth(left, false) } else { String::new() };
    format!("M{} {}H{}{right_side}H{}{left_side}z", num(left), num(top), num(right), num(left))
}

/// Slanted strokes within a board.
fn hatch((left, right): Pair, (top, bottom): Pair) -> String {
    let tall = bottom - top;
    let mut strokes = String::new();
    let mut at = left - tall + 4.0;
    while at < right {
        let (from, to) = (at.max(left), (at + tall).min(right));
        strokes += &format!("M{} {}L{} {}", num(from), num(bottom - (from - at)), num(to), num(bottom - (to - at)));
        at += 5.0;
    }
    strokes
}

fn alone(look: Look) -> Stretch {
    Stretch { from: 0.0, to: 0.0, look, torn: (false, false) }
}

/// A small board of a look, to stand before its word.
pub fn sample<M>(look: Look) -> El<M> {
    sized("sc tl sample", (18.0, 14.0)).kids(board(&alone(look), (1.0, 17.0), (1.0, 13.0)))
}

/// Boards end to end, each so long: a sum, as long beside others as its share of `most`.
pub fn sum<M>(parts: &[(Look, f64)], most: f64, width: f64) -> El<M> {
    let scale = (width - 2.0) / most.max(1.0);
    let mut left = 1.0;
    let mut boards = vec![];
    for (look, long) in parts.iter().filter(|(_, long)| 0.0 < *long) {
        boards.extend(board(&alone(*look), (left, left + long * scale), (1.0, 13.0)));
        left += long * scale;
    }
    drawing("sc tl", (width, 14.0)).attr("aria-hidden", "true").kids(boards)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(boards: Vec<Stretch>, lines: Vec<Line>) -> String {
        let day = Timeline {
            width: 240.0,
            from: 480.0,
            to: 720.0,
            boards,
            lines,
            helpers: vec![],
            hours: vec![(480.0, "08:00".into())],
            midnights: vec![],
        };
        timeline::<()>(&day, "the day".into()).html()
    }

    /// How it looks: what is drawn of it.
    #[test]
    fn each_look_has_a_shape_of_its_own() {
        for (look, shape) in [
            (Look::Measured, r#"class="fink""#),
            (Look::Corrected, r#"class="kerf""#),
            (Look::Recalled, r#"class="hatch""#),
            (Look::Open, r#"class="open""#),
            (Look::Runs, r#"class="runs""#),
        ] {
            let shown = drawn(vec![Stretch { from: 500.0, to: 560.0, look, torn: (false, false) }], vec![]);
            assert!(shown.contains(shape), "{look:?} {shown}");
            assert!(sample::<()>(look).html().contains(shape), "{look:?}");
        }
        let over = drawn(vec![Stretch { from: 500.0, to: 560.0, look: Look::Over, torn: (false, false) }], vec![]);
        assert!(over.contains("M20 2H80V10H20z"), "above the boards: {over}");
    }

    #[test]
    fn a_board_over_midnight_has_a_torn_edge() {
        let edges = |torn| drawn(vec![Stretch { from: 500.0, to: 560.0, look: Look::Measured, torn }], vec![]).matches("L").count();
        assert_eq!([edges((false, false)), edges((true, false)), edges((true, true))], [0, 4, 8]);
    }

    #[test]
    fn lines_side_by_side_lie_in_lanes() {
        let line = |from, to| Line { from, to, open: (false, false) };
        let all =
            [line(0.0, 50.0), line(10.0, 60.0), line(20.0, 70.0), line(55.0, 90.0), line(56.0, 99.0), line(57.0, 99.0), line(58.0, 99.0)];
        assert_eq!(lanes(&all), [0, 1, 2, 0, 3, 4, 4]);
    }

    #[test]
    fn what_ends_outside_stays_inside() {
        let shown = drawn(vec![Stretch { from: 100.0, to: 900.0, look: Look::Measured, torn: (true, true) }], vec![]);
        assert!(shown.contains("M0 10H240"), "{shown}");
        assert!(!shown.contains("NaN"), "{shown}");
    }
}
