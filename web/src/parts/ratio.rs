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
/// A figure above its bar stands so much higher.
const LIFT: f64 = 12.0;
const TICKS: u32 = 12;

/// The rows over one mark "as planned". Ratios off the line stand at its edge; the line grows for a large one.
pub fn ratios<M>(rows: &[Ratio], planned: (&str, &str), width: f64, said: &str) -> El<M> {
    let most = rows.iter().map(|r| r.ratio).fold(TO, f64::max);
    let least = rows.iter().map(|r| r.ratio).fold(FROM, f64::min);
    let x = |ratio: f64| (ratio - least) / (most - least) * width;
    let beside = |r: &Ratio| letters::bold(&r.name, 17.0) + letters::plain(&r.note, 14.0) + 12.0 <= width;
    let lines =
        if rows.iter().all(beside) { 0 } else { rows.iter().map(|r| letters::wrapped(&r.note, 14.0, width).len()).max().unwrap_or(0) };
    let raised = if rows.iter().any(|row| place(row, width, x).1) { LIFT } else { 0.0 };
    let pitch = ROW + raised + LINE * lines as f64;
    let last = pitch * rows.len() as f64;
    let wide = letters::label(planned.0, planned.1);
    let at = held(x(1.0) - wide / 2.0, 0.0, width - wide);
    drawing("sc", (width, last + 10.0))
        .attr("role", "img")
        .attr("aria-label", said.to_owned())
        .kid(line("ld", (x(1.0), pitch - 46.0), (x(1.0), last - 9.0)))
        .kids(rows.iter().enumerate().flat_map(|(i, r)| row(r, (pitch * (i + 1) as f64 - 26.0, raised), (width, lines), x)))
        .kid(label("", (at, last + 6.0), planned.0, planned.1))
}

/// Where a figure begins, and whether it stands above its own bar: never on it, and where the name is above it, behind the bar.
fn place(ratio: &Ratio, width: f64, x: impl Fn(f64) -> f64) -> (f64, bool) {
    let (one, at) = (x(1.0), x(ratio.ratio));
    let wide = letters::bold(&ratio.figure, 17.0);
    let leftwards = at + 7.0 + wide > width || (ratio.ratio < 1.0 && 7.0 + wide < at);
    let figure = if leftwards { at - 7.0 - wide } else { at + 7.0 };
    let (from, to) = (one.min(at), one.max(at));
    let over = figure < to && from < figure + wide;
    let behind = over && figure < letters::bold(&ratio.name, 17.0) + 7.0 && to + 7.0 + wide <= width;
    if behind { (to + 7.0, false) } else { (figure, over) }
}

/// A row over its base; where a figure is raised above its bar, names and notes of all rows are raised as much.
fn row<M>(ratio: &Ratio, (base, raised): (f64, f64), (width, lines): (f64, usize), x: impl Fn(f64) -> f64) -> Vec<El<M>> {
    let (one, at) = (x(1.0), x(ratio.ratio));
    let (figure, is_above) = place(ratio, width, &x);
    let lift = if is_above { LIFT } else { 0.0 };
    let name = base - 30.0 - raised - LINE * lines as f64;
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Left, right, top and bottom of a text, with what it says.
    type Box = ([f64; 4], String);

    fn texts(html: &str) -> Vec<Box> {
        let of = |text: &str, name: &str| text.split_once(&format!("{name}=\""))?.1.split('"').next()?.parse::<f64>().ok();
        let boxed = |text: &str| {
            let (head, said) = text.split_once('>')?;
            let (said, _) = said.split_once("</text>")?;
            let said: String = said.split('<').map(|part| part.rsplit('>').next().unwrap_or_default()).collect();
            let is_bold = head.contains("x17");
            let wide = if is_bold { letters::bold(&said, 17.0) } else { letters::plain(&said, 14.0) };
            let (x, y, tall) = (of(head, " x")?, of(head, " y")?, if is_bold { 12.0 } else { 10.0 });
            let left = if head.contains("end") { x - wide } else { x };
            Some(([left, left + wide, y - tall, y + 4.0], said))
        };
        html.split("<text").skip(1).filter_map(boxed).listed()
    }

    /// No two texts of these rows touch, on pages from a small phone's on.
    #[track_caller]
    fn check(rows: &[(&str, &str, f64, &str)]) {
        let rows = rows.iter().map(|(name, note, ratio, figure)| Ratio {
            name: (*name).into(),
            note: (*note).into(),
            ratio: *ratio,
            figure: (*figure).into(),
            under: false,
        });
        let rows = rows.listed();
        for width in [130.0, 180.0, 250.0, 320.0, 700.0] {
            let all = texts(&ratios::<()>(&rows, ("as planned", "1.00"), width, "said").html());
            assert!(rows.len() * 3 <= all.len(), "{all:?}");
            for (nth, (one, said)) in all.iter().enumerate() {
                let touches = |other: &&Box| other.0[0] < one[1] && one[0] < other.0[1] && other.0[2] < one[3] && one[2] < other.0[3];
                assert_eq!(all.iter().skip(nth + 1).find(touches), None, "{width}: {said}");
            }
        }
    }

    #[test]
    fn a_figure_touches_neither_name_nor_note() {
        check(&[("Hours", "26 h 03, planned 19 h", 1.37, "1.37"), ("Wood", "48.9 % of used, planned 45 %", 1.09, "1.09")]);
        check(&[("Hours", "9 h, planned 1 h", 9.0, "9.00"), ("Price", "460, planned 460", 1.0, "1.00")]);
        check(&[("Hours", "9 h, planned 1 h", 9.0, "9.00"), ("Wood", "48.9 % of used, planned 45 %", 0.4, "0.40")]);
        check(&[("Hours", "20 min, planned 9 h", 0.04, "0.04"), ("Price", "1,240, planned 460", 2.7, "2.70")]);
        check(&[("Hours", "1,204 h 30, planned 100 h", 12.05, "12.05")]);
    }
}
