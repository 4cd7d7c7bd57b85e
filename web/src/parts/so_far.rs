//! So far: a job's life on one bar, fetch, sort, make, finish, sell; solid is done, open is to come.
use crate::parts::ink::{drawing, label, line, rect};
use crate::parts::letters;
use crate::parts::scale::labels::{Spot, Wish, place};
use crate::view::El;
use fivebar_core::quantity::Listed;

/// One stretch of a job's life.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stretch {
    pub word: String,
    pub figure: String,
    /// How long it took or will take, in any one unit.
    pub long: f64,
    pub done: bool,
}

const GAP: f64 = 3.0;
const LEAST: f64 = 6.0;
const ROW: f64 = 19.0;
/// Narrower than this the words stand in a list.
const LISTED: f64 = 220.0;

/// The bar without words, for a list. `said` is what a reader hears.
pub fn thin<M>(stretches: &[Stretch], width: f64, said: &str) -> El<M> {
    drawing("sc thin", (width, 12.0))
        .attr("role", "img")
        .attr("aria-label", said.to_owned())
        .kids(boards(stretches, width).zip(stretches).map(|(at, stretch)| drawn(stretch, at, 12.0)))
}

/// The bar with its words below, each on a leader; on a narrow page in order, one to a line.
pub fn so_far<M>(stretches: &[Stretch], width: f64) -> El<M> {
    let at: Vec<(f64, f64)> = boards(stretches, width).listed();
    let middle = |(x, wide): &(f64, f64)| x + wide / 2.0;
    let wishes: Vec<Wish> =
        stretches.iter().zip(&at).map(|(s, at)| Wish { at: middle(at), width: letters::label(&s.word, &s.figure) }).listed();
    let listed = width < LISTED;
    let spots = if listed { (0..at.len()).map(|row| Spot { x: 0.0, row }).listed() } else { place(&wishes, width) };
    let rows = spots.iter().map(|s| s.row).max().unwrap_or(0);
    let leaders = at.iter().zip(&spots).filter(|_| !listed).map(|(at, spot)| leader(middle(at), spot.row));
    drawing("sc", (width, 54.0 + ROW * rows as f64))
        .attr("role", "group")
        .kids(stretches.iter().zip(&at).map(|(s, at)| drawn(s, *at, 26.0)))
        .kids(leaders)
        .kids(stretches.iter().zip(&spots).map(|(s, spot)| label("", (spot.x, baseline(spot.row)), &s.word, &s.figure)))
}

fn baseline(row: usize) -> f64 {
    50.0 + ROW * row as f64
}

fn leader<M>(at: f64, row: usize) -> El<M> {
    line("ld", (at, 26.0), (at, baseline(row) - 13.0))
}

fn drawn<M>(stretch: &Stretch, (x, wide): (f64, f64), tall: f64) -> El<M> {
    if stretch.done { rect("fink", (x, 0.0), (wide, tall)) } else { rect("open", (x + 1.0, 1.0), (wide - 2.0, tall - 2.0)) }
}

/// Left edge and width of each stretch; even the shortest can be seen.
fn boards(stretches: &[Stretch], width: f64) -> impl Iterator<Item = (f64, f64)> {
    let room = width - GAP * stretches.len().saturating_sub(1) as f64;
    let all: f64 = stretches.iter().map(|s| s.long.max(0.0)).sum::<f64>().max(1e-9);
    let free = (room - LEAST * stretches.len() as f64).max(0.0);
    let wide = move |s: &Stretch| LEAST + free * s.long.max(0.0) / all;
    let mut x = 0.0;
    let boards: Vec<(f64, f64)> = stretches
        .iter()
        .map(|s| {
            let at = (x, wide(s));
            x += at.1 + GAP;
            at
        })
        .listed();
    boards.into_iter()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job() -> Vec<Stretch> {
        [
            ("fetch", 83.0, true),
            ("sort", 31.0, true),
            ("make", 1221.0, true),
            ("finish", 104.0, true),
            ("sell", 95.0, true),
            ("deliver", 90.0, false),
        ]
        .map(|(word, long, done)| Stretch { word: word.into(), figure: "1 h 23".into(), long, done })
        .into()
    }

    #[test]
    fn the_bar_fills_its_width_and_shows_the_shortest() {
        for width in [143.0, 330.0] {
            let boards: Vec<_> = boards(&job(), width).collect();
            let (x, wide) = boards[boards.len() - 1];
            assert!((x + wide - width).abs() < 1e-6);
            assert!(boards.iter().all(|(_, wide)| *wide >= LEAST));
        }
    }

    #[test]
    fn every_stretch_is_named() {
        for width in [143.0, 268.0, 330.0] {
            let shown = so_far::<()>(&job(), width).html();
            assert_eq!(shown.matches("<text").count(), 6);
        }
    }
}
