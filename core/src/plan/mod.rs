//! What can be made of these pieces: rows, parts, sticks and fields, each with a bound that no plan can pass.
//!
//! A problem and its plan are plain data in whole numbers; a length counts in the problem's own unit.
//! Floats may choose what is tried; what is shown and what is proven is reckoned in whole numbers.

pub mod draw;
pub mod field;
pub mod limits;
pub mod lp;
pub mod parts;
pub mod patience;
pub mod price;
pub mod rows;
pub mod sticks;

/// What a plan is worth: its figures, the weightiest first. Volumes and squares need all 128 bits.
pub type Figures = Vec<i128>;

/// Whether more or less of a figure is better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    More,
    Less,
}

/// Whether `one` is better than `other`, compared from the left over the figures both have.
///
/// ```
/// use fivebar_core::plan::{better, Sense::{Less, More}};
/// assert!(better(&[More, Less], &[5, 90], &[5, 100])); // five sets from less wood
/// assert!(!better(&[More, Less], &[4, 10], &[5, 100]));
/// assert!(!better(&[More, Less], &[5], &[5, 100])); // a bound of one figure says nothing of the wood
/// ```
pub fn better(senses: &[Sense], one: &[i128], other: &[i128]) -> bool {
    let differ = senses.iter().zip(one.iter().zip(other)).find(|(_, (a, b))| a != b);
    differ.is_some_and(|(sense, (a, b))| if *sense == Sense::More { b < a } else { a < b })
}

/// A plan, what it is worth, and the bound: no plan at all is better than that over the figures it has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planned<P> {
    pub plan: P,
    pub worth: Figures,
    pub bound: Figures,
}

impl<P> Planned<P> {
    /// Whether no plan can do better in any figure.
    pub fn is_proven(&self) -> bool {
        self.worth == self.bound
    }
}
