//! Looking back: hours, wood and price against what was planned, on one line of ratios.
use crate::parts::ink::{drawing, held, label, letters as text, line, num, path, rect};
use crate::parts::letters;
use crate::view::El;
use fivebar_core::quantity::Listed;

/// One row: what, how it went, and the ratio to plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ratio {
    pub name: String,
    pub note: String,
    pub ratio: f64,
    pub figure: String,
    /// Past what is good: iron red.
    pub under: bool,
}

const FROM: f64 = 0.85;
const TO: f64 = 1.45;
const ROW: f64 = 74.0;
const LINE: f64 = 18.0;
const TICKS: u32 = 12;

/// The rows over one mark "as planned". Ratios off the line stand at its edge; the line grows for a large one.
pub fn ratios<M>(rows: &[Ratio], planned: (&str, &str), width: f64, said: &str) -> El<M> {
    let most = rows.iter().map(|r| r.ratio).fold(TO, f64::max);
    let least = rows.iter().map(|r| r.ratio).fold(FROM, f64::min);
    let x = |ratio: f64| (ratio - least) / (most - least) * width;
    let beside = |r: &Ratio| letters::bold(&r.name, 17.0) + letters::plain(&r.note, 14.0) + 12.0 <= width;
    let lines =
        if rows.iter().all(beside) { 0 } else { rows.iter().map(|r| letters::wrapped(&r.note, 14.0, width).len()).max().unwrap_or(0) };
    let pitch = ROW + LINE * lines as f64;
    let last = pitch * rows.len() as f64;
    let wide = letters::label(planned.0, planned.1);
    let at = held(x(1.0) - wide / 2.0, 0.0, width - wide);
    drawing("sc", (width, last + 10.0))
        .attr("role", "img")
        .attr("aria-label", said.to_owned())
        .kid(line("ld", (x(1.0), pitch - 46.0), (x(1.0), last - 9.0)))
        .kids(rows.iter().enumerate().flat_map(|(i, r)| row(r, pitch * (i + 1) as f64 - 26.0, (width, lines), x)))
        .kid(label("", (at, last + 6.0), planned.0, planned.1))
}

fn row<M>(ratio: &Ratio, base: f64, (width, lines): (f64, usize), x: impl Fn(f64) -> f64) -> Vec<El<M>> {
    let (one, at) = (x(1.0), x(ratio.ratio));
    let wide = letters::bold(&ratio.figure, 17.0);
    let leftwards = at + 7.0 + wide > width || (ratio.ratio < 1.0 && 7.0 + wide < at);
    let figure = if leftwards { at - 7.0 - wide } else { at + 7.0 };
    // over its own bar the figure stands above it, never on it; and where the name is above it, behind the bar
    let (from, to) = (one.min(at), one.max(at));
    let over = figure < to && from < figure + wide;
    let behind = over && figure < letters::bold(&ratio.name, 17.0) + 7.0 && to + 7.0 + wide <= width;
    let figure = if behind { to + 7.0 } else { figure };
    let lift = if over && !behind { 12.0 } else { 0.0 };
    let name = base - 30.0 - LINE * lines as f64;
    let drawn = vec![
        text("lb b x17", (0.0, name), ratio.name.clone()),
        rect(if ratio.under { "funder" } else { "fgood" }, (one.min(at), base - 11.0), ((at - one).abs(), 10.0)),
        path("tk", ticks(base, width, |n| n % 2 == 0, 5)),
        path("tk5", ticks(base, width, |n| n % 2 == 1, 9)),
        line("base", (0.0, base), (width, base)),
        line("mk", (at, base - 18.0), (at, base + 9.0)),
        text("b x17", (figure, base - 4.0 - lift), ratio.figure.clone()),
    ];
    drawn.into_iter().chain(note(ratio, name, width, lines)).listed()
}

/// What was and what was planned: at the right of the name, or in lines below it.
fn note<M>(ratio: &Ratio, name: f64, width: f64, lines: usize) -> Vec<El<M>> {
    if lines == 0 {
        return vec![text("lb", (width, name), ratio.note.clone()).attr("text-anchor", "end")];
    }
    let wrapped = letters::wrapped(&ratio.note, 14.0, width).into_iter().enumerate();
    wrapped.map(|(i, line)| text("lb", (0.0, name + LINE * (i + 1) as f64), line)).listed()
}

fn ticks(base: f64, width: f64, which: impl Fn(u32) -> bool, tall: u32) -> String {
    (0..=TICKS).filter(|n| which(*n)).map(|n| format!("M{} {}v{tall}", num(f64::from(n) * width / f64::from(TICKS)), num(base))).collect()
}
