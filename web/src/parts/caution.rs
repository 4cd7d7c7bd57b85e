//! A caution: one plain line where it is needed, no sign and no colour.
use crate::view::{El, el};

/// The line.
pub fn caution<M>(line: impl Into<String>) -> El<M> {
    el("p", "caution").text(line.into())
}
