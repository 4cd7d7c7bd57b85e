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

/// Nobody who was named is at a run twice: an earlier stay ends where a later one of the same person begins, whatever was said of its end; one that
/// lies within another is a part of it. Of those without a name there may be several.
pub fn one_stay_each(heads: &mut [Head]) {
    let mut named: Vec<usize> = (0..heads.len()).filter(|nth| heads.get(*nth).is_some_and(|head| head.person.is_some())).listed();
    order_by_key(&mut named, |nth| heads.get(*nth).map(|head| (head.person, head.from, head.id)));
    let mut last: Option<usize> = None;
    for next in named {
        let pair = last.and_then(|last| Some((*heads.get(last)?, *heads.get(next)?)));
        let Some((one, other)) = pair.filter(|(one, other)| one.person == other.person && one.to.is_none_or(|to| other.from < to)) else {
            last = Some(next);
            continue;
        };
        let is_within = one.to.zip(other.to).is_some_and(|(to, other)| other <= to);
        let (cut, at) = if is_within { (next, other.from) } else { (last.unwrap_or(next), other.from) };
        heads.get_mut(cut).into_iter().for_each(|head| head.to = Some(at));
        last = if is_within { last } else { Some(next) };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stay_within_another_takes_nothing_off_it() {
        let at = |minute: i64| Moment::at(minute * 60_000);
        let ada = Some(Id::new(at(0), [1; 10]));
        let stood = |stays: &[(i64, Option<i64>)]| {
            let one = |(nth, (from, to)): (u8, &(i64, Option<i64>))| Head {
                id: Id::new(at(*from), [nth; 10]),
                n: 1,
                person: ada,
                pay: None,
                from: at(*from),
                to: to.map(at),
            };
            let mut heads: Vec<Head> = (0..).zip(stays).map(one).collect();
            one_stay_each(&mut heads);
            heads.iter().map(|head| head.within(at(0), at(300)).as_minutes()).collect::<Vec<_>>()
        };
        for (stays, wanted) in [
            (vec![(0, Some(120)), (30, Some(60))], vec![120, 0]),
            (vec![(0, Some(120)), (30, Some(60)), (100, Some(150))], vec![100, 0, 50]),
            (vec![(0, Some(60)), (30, Some(90))], vec![30, 60]),
            (vec![(0, None), (30, Some(60))], vec![30, 30]),
            (vec![(0, None), (30, None)], vec![30, 270]),
        ] {
            assert_eq!(stood(&stays), wanted, "{stays:?}");
        }
    }
}
