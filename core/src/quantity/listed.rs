//! Puts what comes one after another into a list.

/// What comes one after another, put into a list. The standard way reckons the length beforehand and has a way of its own for each
/// kind of step, which weighs 8 kB in the download; ours asks for the next one until there is none. Lists as long as the book are
/// collected in the standard way: they would grow many times.
pub trait Listed: Iterator {
    /// All of it, in a list.
    ///
    /// ```
    /// use fivebar_core::quantity::Listed;
    /// assert_eq!((1..4).map(|n| n * n).listed(), [1, 4, 9]);
    /// ```
    fn listed(self) -> Vec<Self::Item>
    where
        Self: Sized,
    {
        let mut list = Vec::new();
        for row in self {
            list.push(row);
        }
        list
    }
}

impl<I: Iterator> Listed for I {}
