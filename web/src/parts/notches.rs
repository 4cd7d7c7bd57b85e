//! Notches on the edge of a board: one cut for each piece done, two pencil lines for each to come.
use crate::parts::ink::{drawing, line, num, path, rect};
use crate::view::El;

/// How far an operation is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Notches {
    pub done: u32,
    pub of: u32,
}

/// How wide and deep a notch is, and from one to the next.
struct Saw {
    wide: f64,
    deep: f64,
    step: f64,
    pencil: f64,
}

const MOST: u32 = 10;

impl Notches {
    /// How many pieces one notch stands for, so that there are ten at most: 1, 2, 5, 10, 20 and so on.
    pub fn per(self) -> u32 {
        let steps = (0..9).flat_map(|tens| [1, 2, 5].map(|of| of * 10_u32.pow(tens)));
        steps.into_iter().find(|per| self.of.div_ceil(*per) <= MOST).unwrap_or(1)
    }
    fn cut(self) -> u32 {
        if self.done >= self.of { self.of.div_ceil(self.per()) } else { self.done / self.per() }
    }
}

/// Notches on a board of the rack.
pub fn on_board<M>(notches: Notches) -> El<M> {
    cut(notches, &Saw { wide: 12.0, deep: 11.0, step: 24.0, pencil: 10.0 })
}

/// Notches on the running slab; more than five are cut as small as on a board.
pub fn on_slab<M>(notches: Notches) -> El<M> {
    let many = notches.of.div_ceil(notches.per()) > 5;
    let (wide, step) = if many { (12.0, 24.0) } else { (18.0, 34.0) };
    cut(notches, &Saw { wide, deep: 16.0, step, pencil: 14.0 })
}

fn cut<M>(notches: Notches, saw: &Saw) -> El<M> {
    let (all, done) = (notches.of.div_ceil(notches.per()), notches.cut());
    let width = (f64::from(all.max(1)) - 1.0) * saw.step + saw.wide + 2.0;
    let x = |i: u32| 1.0 + f64::from(i) * saw.step;
    let holes = (0..done).map(|i| rect("out", (x(i) + 1.0, 0.0), (saw.wide - 2.0, saw.deep)));
    let edge: String = (0..done).map(|i| format!("M{} 0V{}h{}V0", num(x(i)), num(saw.deep + 1.0), num(saw.wide))).collect();
    let pencil = (done..all).flat_map(|i| [x(i) + 1.0, x(i) + saw.wide - 1.0]);
    drawing("notches", (width, saw.deep + 2.0))
        .attr("width", num(width))
        .attr("height", num(saw.deep + 2.0))
        .attr("aria-hidden", "true")
        .kids(holes)
        .kids((!edge.is_empty()).then(|| path("", edge)))
        .kids(pencil.map(|x| line("", (x, 2.0), (x, 2.0 + saw.pencil))))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Done, of: pieces for one notch, notches cut, pencil lines.
    #[test]
    fn a_notch_for_each_piece_or_each_few() {
        for ((done, of), (per, cut, lines)) in [
            ((3, 5), (1, 3, 4)),
            ((5, 5), (1, 5, 0)),
            ((0, 40), (5, 0, 16)),
            ((39, 40), (5, 7, 2)),
            ((7, 12), (2, 3, 6)),
            ((0, 0), (1, 0, 0)),
        ] {
            let notches = Notches { done, of };
            let shown = on_board::<()>(notches).html();
            assert_eq!(notches.per(), per, "{done} of {of}");
            assert_eq!((shown.matches("<rect").count(), shown.matches("<line").count()), (cut, lines), "{done} of {of}");
        }
    }
}
