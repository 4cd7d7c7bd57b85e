//! A small map in the order of its keys: one list, found by halving. What comes in order is added at the end.
//!
//! The standard map costs the download five times as much for each pair of types; ours are small, or filled in order.

use std::borrow::Borrow;
use std::fmt;

/// Keys with their values, in order.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Sorted<K, V>(Vec<(K, V)>);

/// The place of a key, filled or not.
pub struct Place<'a, K, V> {
    map: &'a mut Sorted<K, V>,
    key: K,
}

impl<K, V> Default for Sorted<K, V> {
    fn default() -> Self {
        Sorted(Vec::new())
    }
}

impl<K: Ord, V> Sorted<K, V> {
    pub fn new() -> Self {
        Sorted::default()
    }

    /// Where a key stands, or where it would stand.
    fn find<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        match self.0.last() {
            Some((last, _)) if last.borrow() < key => Err(self.0.len()),
            _ => self.0.binary_search_by(|(own, _)| own.borrow().cmp(key)),
        }
    }

    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.find(key).ok().and_then(|at| self.0.get(at)).map(|(_, value)| value)
    }

    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        self.0.get_mut(at).map(|(_, value)| value)
    }

    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.find(key).is_ok()
    }

    /// Puts a value; gives back the one that was there.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.find(&key) {
            Ok(at) => self.0.get_mut(at).map(|(_, own)| std::mem::replace(own, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        self.find(key).ok().map(|at| self.0.remove(at).1)
    }

    /// The place of a key, to be filled where it is empty.
    pub fn entry(&mut self, key: K) -> Place<'_, K, V> {
        Place { map: self, key }
    }

    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        self.0.retain_mut(|(key, value)| keep(key, value));
    }

    pub fn clear(&mut self) {
        self.0.clear();
    }

    pub fn len(&self) -> usize {
        self.0.len()
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, value)| (key, value))
    }

    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, _)| key)
    }

    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + ExactSizeIterator + Clone {
        self.0.iter().map(|(_, value)| value)
    }

    pub fn values_mut(&mut self) -> impl DoubleEndedIterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    pub fn into_values(self) -> impl DoubleEndedIterator<Item = V> {
        self.0.into_iter().map(|(_, value)| value)
    }
}

impl<'a, K: Ord, V> Place<'a, K, V> {
    pub fn or_insert_with(self, make: impl FnOnce() -> V) -> &'a mut V {
        let at = match self.map.find(&self.key) {
            Ok(at) => at,
            Err(at) => {
                self.map.0.insert(at, (self.key, make()));
                at
            }
        };
        // The place is there: it was found or filled just now.
        #[allow(clippy::indexing_slicing)]
        &mut self.map.0[at].1
    }

    pub fn or_insert(self, value: V) -> &'a mut V {
        self.or_insert_with(|| value)
    }

    pub fn or_default(self) -> &'a mut V
    where
        V: Default,
    {
        self.or_insert_with(V::default)
    }
}

/// Of equal keys the last stands.
impl<K: Ord, V> FromIterator<(K, V)> for Sorted<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(pairs: I) -> Self {
        let mut map = Sorted::new();
        map.extend(pairs);
        map
    }
}

impl<K: Ord, V> Extend<(K, V)> for Sorted<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, pairs: I) {
        for (key, value) in pairs {
            self.insert(key, value);
        }
    }
}

impl<K, V> IntoIterator for Sorted<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a Sorted<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = std::iter::Map<std::slice::Iter<'a, (K, V)>, fn(&'a (K, V)) -> (&'a K, &'a V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter().map(|(key, value)| (key, value))
    }
}

impl<K, V, const N: usize> From<[(K, V); N]> for Sorted<K, V>
where
    K: Ord,
{
    fn from(pairs: [(K, V); N]) -> Self {
        pairs.into_iter().collect()
    }
}

impl<K: fmt::Debug, V: fmt::Debug> fmt::Debug for Sorted<K, V> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(&self.0).finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeMap;

    proptest! {
        /// The standard map is the measure.
        #[test]
        fn does_what_the_standard_map_does(steps in proptest::collection::vec((any::<u8>(), any::<u16>(), 0..4u8), 0..200)) {
            let (mut ours, mut theirs) = (Sorted::new(), BTreeMap::new());
            for (key, value, what) in steps {
                match what {
                    0 => prop_assert_eq!(ours.insert(key, value), theirs.insert(key, value)),
                    1 => prop_assert_eq!(ours.remove(&key), theirs.remove(&key)),
                    2 => {
                        *ours.entry(key).or_default() ^= value;
                        *theirs.entry(key).or_default() ^= value;
                    }
                    _ => prop_assert_eq!(ours.get(&key), theirs.get(&key)),
                }
            }
            prop_assert!(ours.iter().eq(theirs.iter()));
            prop_assert_eq!(ours.len(), theirs.len());
        }
    }
}
