//! Heads that work along in a run. They add labour; whether they cost money is a rate that is only carried here.

use crate::quantity::{Count, Id, Moment, Money, Span};

/// Somebody who works along from a moment on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Head {
    /// Of the entry by which they came.
    pub id: Id,
    pub n: Count,
    pub person: Option<Id>,
    /// Per hour, when paid.
    pub pay: Option<Money>,
    pub from: Moment,
    pub to: Option<Moment>,
}

impl Head {
    pub fn is_there(&self, at: Moment) -> bool {
        self.from <= at && self.to.is_none_or(|to| at < to)
    }

    /// Labour within a stretch.
    pub fn within(&self, from: Moment, to: Moment) -> Span {
        let end = self.to.map_or(to, |left| left.min(to));
        self.from.max(from).until(end).times(i64::from(self.n))
    }
}
