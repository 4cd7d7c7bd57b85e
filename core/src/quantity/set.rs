//! A small set in order: the keys of a small map.

use super::Sorted;
use std::borrow::Borrow;
use std::fmt;

/// Keys, each once, in order.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Set<K>(Sorted<K, ()>);

impl<K> Default for Set<K> {
    fn default() -> Self {
        Set(Sorted::default())
    }
}

impl<K: Ord> Set<K> {
    pub fn new() -> Self {
        Set::default()
    }

    /// Puts a key in; whether it is new.
    pub fn insert(&mut self, key: K) -> bool {
        self.0.insert(key, ()).is_none()
    }

    /// Takes a key out; whether it was there.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.0.remove(key).is_some()
    }

    pub fn contains<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.0.contains_key(key)
    }

    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.keys()
    }

    pub fn retain(&mut self, keep: impl Fn(&K) -> bool) {
        self.0.retain(|key, ()| keep(key));
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
}

impl<K: Ord> FromIterator<K> for Set<K> {
    fn from_iter<I: IntoIterator<Item = K>>(keys: I) -> Self {
        Set(keys.into_iter().map(|key| (key, ())).collect())
    }
}

impl<K: Ord> Extend<K> for Set<K> {
    fn extend<I: IntoIterator<Item = K>>(&mut self, keys: I) {
        self.0.extend(keys.into_iter().map(|key| (key, ())));
    }
}

impl<K: fmt::Debug> fmt::Debug for Set<K> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_in_once() {
        let mut woods: Set<&str> = ["oak", "ash", "oak"].into_iter().collect();
        assert_eq!(woods.iter().collect::<Vec<_>>(), [&"ash", &"oak"]);
        assert!(!woods.insert("ash") && woods.insert("elm"));
        assert!(woods.remove("ash") && !woods.remove("ash") && !woods.contains("ash"));
        assert_eq!(woods.len(), 2);
    }
}
