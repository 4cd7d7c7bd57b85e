//! What is paid of a price: moss is in, open is still due.
use crate::parts::ink::{drawing, rect};
use crate::view::El;

/// The bar, `width` wide; `share` of it is paid. The text beside it says it all.
pub fn paid_bar<M>(share: f64, width: f64) -> El<M> {
    let share = share.clamp(0.0, 1.0);
    let paid = if share <= 0.0 { 0.0 } else { (share * (width - 3.0)).max(6.0) };
    let due = width - paid - if 0.0 < paid { 3.0 } else { 0.0 };
    drawing("sc", (width, 22.0))
        .attr("aria-hidden", "true")
        .kids((0.0 < paid).then(|| rect("fgood", (0.0, 0.0), (if share < 1.0 { paid } else { width }, 22.0))))
        .kids((share < 1.0).then(|| rect("open", (width - due + 1.0, 1.0), (due - 2.0, 20.0))))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Share paid: boards drawn.
    #[test]
    fn what_is_paid_and_what_is_due_are_two_boards() {
        for (share, boards) in [(0.0, 1), (0.4, 2), (1.0, 1), (1.3, 1)] {
            assert_eq!(paid_bar::<()>(share, 330.0).html().matches("<rect").count(), boards, "{share}");
        }
    }
}
