//! The rack: boards in working order, the running slab among them.
use crate::view::{El, el};

/// A rack of boards and, if something runs, the slab in its place.
pub fn rack<M>(boards: impl IntoIterator<Item = El<M>>) -> El<M> {
    el("div", "rack").kids(boards)
}
