//! Heads that work along in a run. They add labour; whether they cost money is a rate that is only carried here.

use crate::quantity::{Count, Id, Listed, Moment, Money, Span, order_by_key};

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

/// Nobody who was named is at a run twice: an earlier stay ends where a later one of the same person begins, whatever was said of its end. Of
/// those without a name there may be several.
pub fn one_stay_each(heads: &mut [Head]) {
    let mut named: Vec<usize> = (0..heads.len()).filter(|nth| heads.get(*nth).is_some_and(|head| head.person.is_some())).listed();
    order_by_key(&mut named, |nth| heads.get(*nth).map(|head| (head.person, head.from, head.id)));
    for pair in named.windows(2) {
        let [one, next] = pair else { continue };
        let Some((person, from)) = heads.get(*next).map(|next| (next.person, next.from)) else { continue };
        let same = heads.get_mut(*one).filter(|head| head.person == person && head.to.is_none_or(|to| from < to));
        same.into_iter().for_each(|head| head.to = Some(from));
    }
}
