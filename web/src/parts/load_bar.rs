//! The load: how full the van is, and the mark where it warns.
use crate::parts::ink::{line, rect, sized};
use crate::view::{El, el};

/// A load bar: what is on, and where it warns, as shares of the limit.
pub fn load_bar<M>(share: f64, warns_at: f64, words: impl Into<String>) -> El<M> {
    let over = share >= warns_at;
    let bar = sized("sc", (76.0, 14.0))
        .kid(rect("open", (1.0, 3.0), (74.0, 8.0)))
        .kid(rect(if over { "funder" } else { "fink" }, (1.0, 3.0), (74.0 * share.clamp(0.0, 1.0), 8.0)))
        .kid(line("mk under", (76.0 * warns_at, 0.0), (76.0 * warns_at, 14.0)));
    el("div", "load").kid(bar).kid(el("span", "t14 i2").text(words.into()))
}
