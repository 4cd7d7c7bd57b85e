//! The running slab: amber, pulled out of the rack, a notch on its edge for each piece done.
use crate::parts::fraction::worded;
use crate::parts::notches::{Notches, on_slab};
use crate::view::{El, el};
use crate::words::en::parts as words;

/// What the slab says.
#[derive(Clone, Debug, Default)]
pub struct Slab {
    pub operation: String,
    /// The large figure, such as "31"; with hours, "1 h 31".
    pub figure: String,
    /// Its unit; empty if the figure carries it.
    pub unit: String,
    /// "3 of 5 done".
    pub done: String,
    pub notches: Notches,
    /// Two-sided lines below, the first one strong: what is left, the pace.
    pub lines: Vec<(String, String)>,
}

/// The slab. Its minutes are not announced as they run.
pub fn slab<M>(drawn: Slab) -> El<M> {
    slab_with(drawn, None)
}

/// The slab with a key beside its figure.
pub fn slab_with<M>(slab: Slab, key: Option<El<M>>) -> El<M> {
    let run = el("p", "run")
        .kid(el("span", "fig80").text(slab.figure))
        .kids((!slab.unit.is_empty()).then(|| el("span", "unit").text(slab.unit)))
        .kids((!slab.done.is_empty()).then(|| el("span", "of").text(slab.done)))
        .kids(key);
    let lines = slab.lines.into_iter().enumerate().map(|(i, (left, right))| {
        let class = if i == 0 { "row strong" } else { "row" };
        el("p", class).kid(worded("span", "", left)).kids((!right.is_empty()).then(|| worded("span", "", right)))
    });
    el("section", "slab")
        .attr("aria-label", words::RUNNING)
        .kids((slab.notches.of > 0).then(|| on_slab(slab.notches)))
        .kid(el("p", "op").text(slab.operation))
        .kid(run)
        .kids(lines)
}
