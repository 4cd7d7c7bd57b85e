//! Prices that step down: a line with a board's edge at each step, over the days it lasts.
use crate::parts::ink::{drawing, held, letters as text, num, path};
use crate::parts::letters;
use crate::view::El;
use fivebar_core::quantity::Listed;

/// From a share of the width on, this figure holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    pub from: f64,
    pub figure: String,
}

/// A figure stands so far above its line.
const OVER: f64 = 8.0;
const FIRST: f64 = 30.0;
const DROP: f64 = 40.0;
/// Air between a step and its figure.
const BESIDE: f64 = 5.0;
/// With many steps they lie closer, and no figure touches the next.
const LEAST_DROP: f64 = 24.0;
const FEW: usize = 3;

/// The steps, `width` wide; `said` is what a reader hears.
pub fn steps<M>(steps: &[Held], width: f64, said: &str) -> El<M> {
    let x = |share: f64| share * width;
    let wide = |step: &Held| letters::bold(&step.figure, 22.0);
    let is_at_edge = |step: &Held| width < x(step.from) + BESIDE + wide(step);
    // A figure that stands before its step needs room under the line that ends there.
    let drop = if steps.len() <= FEW || steps.iter().any(is_at_edge) { DROP } else { LEAST_DROP };
    let level = |nth: usize| FIRST + drop * nth as f64;
    let mut line = String::new();
    for nth in 0..steps.len() {
        let to = steps.get(nth + 1).map_or(width, |next| x(next.from));
        line += &if nth == 0 { format!("M0 {}", num(level(0))) } else { format!("V{}", num(level(nth))) };
        line += &format!("H{}", num(to));
    }
    let figures = steps.iter().enumerate().map(|(nth, step)| {
        let right = x(step.from) + if nth == 0 { 0.0 } else { BESIDE };
        // At the edge of the page it stands before the step, under the line that ends there.
        let at = if is_at_edge(step) { held(x(step.from) - BESIDE - wide(step), 0.0, width) } else { right };
        text("lb b x22", (at, level(nth) - OVER), step.figure.clone())
    });
    drawing("sc", (width, level(steps.len().saturating_sub(1)) + 6.0))
        .attr("role", "img")
        .attr("aria-label", said.to_owned())
        .kid(path("mk edge", line))
        .kids(figures.listed())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_step_has_its_figure_and_stays_on_the_page() {
        let at = |from, figure: &str| Held { from, figure: figure.into() };
        let shown = steps::<()>(&[at(0.0, "$145"), at(0.5, "140"), at(0.99, "1350")], 330.0, "145, then less").html();
        for part in ["$145", "140", "1350", "M0 30H165V70H326.7V110H330", r#"y="102""#, "145, then less"] {
            assert!(shown.contains(part), "{part}: {shown}");
        }
    }

    /// Five steps on a page for large text: the last figures stand before their steps, clear of the line above them.
    #[test]
    fn a_figure_before_its_step_lies_clear_of_the_line_above() {
        let all: Vec<Held> = (0..5).map(|n| Held { from: f64::from(n) * 0.2, figure: "100".into() }).collect();
        for (width, drop) in [(330.0, 24.0), (150.0, 40.0)] {
            let shown = steps::<()>(&all, width, "less").html();
            assert!(shown.contains(&format!("V{}", FIRST + 4.0 * drop)), "{width}: {shown}");
        }
    }
}
