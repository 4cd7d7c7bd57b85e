//! The amber strip above the bar: what runs, on every place but the bench.
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::parts as words;

/// What the strip says.
#[derive(Clone, Debug, Default)]
pub struct Strip {
    pub operation: String,
    pub minutes: String,
    /// The word on its key.
    pub stop: String,
}

/// The strip; its key stops the clock.
pub fn strip<M>(strip: Strip, stop: M) -> El<M> {
    el("aside", "strip")
        .attr("aria-label", words::RUNNING)
        .kid(el("span", "op").text(strip.operation))
        .kid(el("span", "mins").text(strip.minutes))
        .kid(key("key", strip.stop, "", stop))
}
