//! Drawing a scale: ticks, stretches, line, marks, labels in rows, block.
use super::labels::{Spot, Wish, place};
use super::ticks::{Rhythm, ticks};
use super::{Band, Block, Fill, Kind, Look, Mark, Scale};
use crate::parts::ink::{drawing, held, label, letters, line, num, path, rect};
use crate::parts::letters as widths;
use crate::view::El;
use fivebar_core::quantity::Listed;

const ROW: f64 = 20.0;
const FIRST_ROW: f64 = 31.0;
const ARROW: f64 = 1.5;

/// The whole drawing.
pub(super) fn drawn<M>(scale: &Scale) -> El<M> {
    let base = base(scale);
    let rhythm = scale.rhythm.unwrap_or_else(|| Rhythm::for_span(scale.to - scale.from, scale.width));
    let spots = place(&wishes(scale), scale.width);
    let rows = spots.iter().map(|s| s.row + 1).max().unwrap_or(0);
    let height = base + if rows == 0 { 13.0 } else { FIRST_ROW + 4.0 + ROW * (rows - 1) as f64 };
    let shown_from = if scale.below.is_some() { scale.from + (scale.to - scale.from) * 18.0 / scale.width } else { scale.from };
    drawing("sc", (scale.width, height))
        .kids(ticks((shown_from, scale.to), rhythm, base, |v| scale.x(v)))
        .kids(scale.fills.iter().map(|f| fill(scale, *f, base)))
        .kids(scale.band.iter().flat_map(|b| band(scale, b, base)))
        .kid(line("base", (0.0, base), (scale.width, base)))
        .kids(scale.marks.iter().filter(|m| !m.bare).flat_map(|m| mark(scale, m, base)))
        .kids(scale.below.iter().map(|_| path("ld", format!("M9 {}L1.5 {}L9 {}", num(base - 7.0), num(base), num(base + 7.0)))))
        .kids(named(scale).zip(&spots).filter_map(|((m, x), spot)| leader(&m, x, *spot, base)))
        .kids(named(scale).zip(&spots).map(|((m, _), spot)| fitting(scale, &m, (spot.x, baseline(base, *spot)))))
        .kids(scale.needle.map(|at| line("mk", (scale.x(at), base - 15.0), (scale.x(at), base + 9.0))))
        .kids(scale.block.iter().flat_map(|b| block(scale, b, base)))
}

/// Where the line lies: lower if a block or a band's label stands above it.
fn base(scale: &Scale) -> f64 {
    match (&scale.block, &scale.band) {
        (Some(_), Some(band)) if !is_bare(band) => 82.0,
        (Some(_), _) => 60.0,
        (None, Some(band)) => 37.0 + if over_two_lines(band, scale.width) { ROW } else { 0.0 },
        (None, None) => 16.0,
    }
}

/// Without words: what stands beside the scale says what it is.
fn is_bare(band: &Band) -> bool {
    band.word.is_empty() && band.figure.is_empty()
}

fn over_two_lines(band: &Band, width: f64) -> bool {
    widths::label(&band.word, &band.figure) > width
}

/// Every label with where its mark is; what lies far below comes last, at the edge.
fn named(scale: &Scale) -> impl Iterator<Item = (Mark, f64)> {
    let below = scale.below.iter().map(|(word, figure)| (Mark::new(scale.from, Kind::Ink, word, figure), ARROW));
    let marks = scale.marks.iter().filter(|m| !(m.word.is_empty() && m.figure.is_empty()));
    marks.map(|m| (m.clone(), scale.x(m.at))).chain(below)
}

fn wishes(scale: &Scale) -> Vec<Wish> {
    named(scale).map(|(m, at)| Wish { at, width: widths::label(&m.word, &m.figure).min(scale.width) }).listed()
}

fn baseline(base: f64, spot: Spot) -> f64 {
    base + FIRST_ROW + ROW * spot.row as f64
}

/// A label, smaller where it is wider than the scale: on a narrow page with large text it is still larger than it is elsewhere.
fn fitting<M>(scale: &Scale, mark: &Mark, (x, y): (f64, f64)) -> El<M> {
    let said = label(classes(mark.kind).1, (x, y), &mark.word, &mark.figure);
    let wide = widths::label(&mark.word, &mark.figure);
    if wide <= scale.width {
        return said;
    }
    let (smaller, y) = (scale.width / wide, num(y));
    said.attr("transform", format!("translate(0 {y}) scale({smaller:.3}) translate(0 -{y})"))
}

/// The line from a mark down to a label in a lower row.
fn leader<M>(mark: &Mark, at: f64, spot: Spot, base: f64) -> Option<El<M>> {
    let from = if mark.bare || at < 2.0 { base + 9.0 } else { base + 13.0 };
    (spot.row > 0).then(|| line(joined("ld", classes(mark.kind).0), (at, from), (at, baseline(base, spot) - 13.0)))
}

/// The stroke's class and the text's class.
fn classes(kind: Kind) -> (&'static str, &'static str) {
    match kind {
        Kind::Ink => ("", ""),
        Kind::Good => ("good", "c-good"),
        Kind::Under => ("under", "c-under"),
        Kind::Wait => ("wait", "c-wait"),
    }
}

fn joined(a: &'static str, b: &'static str) -> String {
    if b.is_empty() { a.to_owned() } else { format!("{a} {b}") }
}

/// A mark, with a halo where it crosses a stretch or a band.
fn mark<M>(scale: &Scale, mark: &Mark, base: f64) -> Vec<El<M>> {
    let x = scale.x(mark.at);
    let solid = |f: &Fill| matches!(f.look, Look::Ink | Look::Good | Look::Under) && f.from < mark.at && mark.at < f.to - 1e-9;
    let inside = scale.fills.iter().any(solid) || scale.band.as_ref().is_some_and(|b| b.from < mark.at && mark.at < b.to);
    let halo = inside.then(|| line("halo", (x, base - 14.0), (x, base - 1.0)));
    halo.into_iter().chain([line(joined("mk", classes(mark.kind).0), (x, base - 13.0), (x, base + 13.0))]).listed()
}

/// Solid stretches lie on the line, open ones are drawn round.
fn fill<M>(scale: &Scale, fill: Fill, base: f64) -> El<M> {
    let edge = |value: f64, outer: f64| {
        if (value - outer).abs() < 1e-9 { if outer == scale.from { 0.0 } else { scale.width } } else { scale.x(value) }
    };
    let (left, right) = (edge(fill.from, scale.from), edge(fill.to, scale.to));
    let (class, inset) = match fill.look {
        Look::Ink => ("fink", 0.0),
        Look::Good => ("fgood", 0.0),
        Look::Under => ("funder", 0.0),
        Look::Open => ("open", 1.0),
        Look::OpenWait => ("openw", 1.0),
    };
    rect(class, (left + inset, base - 11.0 + inset), (right - left - 2.0 * inset, 10.0 - inset))
}

fn band<M>(scale: &Scale, band: &Band, base: f64) -> Vec<El<M>> {
    let (left, right, top) = (scale.x(band.from), scale.x(band.to), base - 13.0);
    let tall = 12.0;
    let mut hatch = String::new();
    let mut at = left - tall + 3.0;
    while at < right {
        let (x1, x2) = (at.max(left), (at + tall).min(right));
        hatch += &format!("M{} {}L{} {}", num(x1), num(top + tall - (x1 - at)), num(x2), num(top + tall - (x2 - at)));
        at += 7.0;
    }
    let drawn =
        vec![path("hatch", hatch), path("hatch", format!("M{} {}H{}V{}H{}z", num(left), num(top), num(right), num(top + tall), num(left)))];
    let words = if is_bare(band) { vec![] } else { band_label(scale, band, (left + right) / 2.0, base) };
    drawn.into_iter().chain(words).listed()
}

/// The band's words above it, in two lines where one is too long.
fn band_label<M>(scale: &Scale, band: &Band, middle: f64, base: f64) -> Vec<El<M>> {
    let at = |wide: f64| held(middle - wide / 2.0, 0.0, scale.width - wide);
    let line = |word: &str, figure: &str, y: f64| label("", (at(widths::label(word, figure)), y), word, figure);
    if over_two_lines(band, scale.width) {
        vec![line(&band.word, "", base - 20.0 - ROW), line("", &band.figure, base - 20.0)]
    } else {
        vec![line(&band.word, &band.figure, base - 20.0)]
    }
}

/// The block with its figure between two grips, pointing at the value.
fn block<M>(scale: &Scale, block: &Block, base: f64) -> Vec<El<M>> {
    let at = scale.x(block.at);
    let wide = (widths::bold(&block.figure, 22.0) + 38.0).max(64.0).min(scale.width);
    let left = held(at - wide / 2.0, 0.0, scale.width - wide);
    let tip = held(at, left + 16.0, left + wide - 16.0);
    let flat = num(wide - 12.0);
    let shape = format!(
        "M{} 4h{flat}a6 6 0 0 1 6 6v32a6 6 0 0 1-6 6H{}L{} {}L{} 48H{}a6 6 0 0 1-6-6v-32a6 6 0 0 1 6-6z",
        num(left + 6.0),
        num(tip + 10.0),
        num(at),
        num(base.min(60.0) - 2.0),
        num(tip - 10.0),
        num(left + 6.0)
    );
    let grip = |x: f64| path("grip", format!("M{0} 18v16M{1} 18v16", num(x), num(x + 4.0)));
    let figure = letters("inv b x22", (left + wide / 2.0, 34.0), block.figure.clone()).attr("text-anchor", "middle");
    vec![path("fink", shape), figure, grip(left + 8.0), grip(left + wide - 12.0)]
}
