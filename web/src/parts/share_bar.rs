//! A share of a whole as a bar: how much of it, on one scale with the bars above and below.
use crate::parts::ink::{drawing, line, rect};
use crate::view::El;

/// The bar, `width` wide, of a whole that ends at `most`; a mark stands where `mark` says. The text beside it says it all.
pub fn share_bar<M>((share, most): (f64, f64), mark: Option<f64>, width: f64) -> El<M> {
    let x = |share: f64| (share / most.max(1e-9)).clamp(0.0, 1.0) * (width - 2.0);
    let long = if share <= 0.0 { 0.0 } else { x(share).max(2.0) };
    drawing("sc bar", (width, 16.0))
        .attr("aria-hidden", "true")
        .kid(rect("open", (1.0, 3.0), (width - 2.0, 10.0)))
        .kids((0.0 < long).then(|| rect("funder", (1.0, 3.0), (long, 10.0))))
        .kids(mark.map(|mark| line("mk", (1.0 + x(mark), 0.0), (1.0 + x(mark), 16.0))))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Share of a whole that ends at one half: boards drawn, and how long the filled one is.
    #[test]
    fn a_bar_is_as_long_as_its_share() {
        for (share, boards, long) in
            [(0.0, 1, None), (0.25, 2, Some("49")), (0.5, 2, Some("98")), (0.9, 2, Some("98")), (0.001, 2, Some("2"))]
        {
            let shown = share_bar::<()>((share, 0.5), None, 100.0).html();
            assert_eq!(shown.matches("<rect").count(), boards, "{share}");
            assert!(long.is_none_or(|long| shown.contains(&format!("width=\"{long}\""))), "{share}: {shown}");
        }
    }
}
