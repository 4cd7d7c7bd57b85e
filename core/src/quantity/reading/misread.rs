//! Why a typed figure was not taken: a closed list of facts, no prose. The sentences live with the words of the face.

use super::super::{Clock, Count, Decimal, Length, Mass, Money, Span};

/// A reading of any kind, for a refusal that names one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quantity {
    Length(Length),
    Distance(Length),
    Money(Money),
    Span(Span),
    Clock(Clock),
    Mass(Mass),
    Count(Count),
    /// Per cent, as said: 5.5 is 5.5 %.
    Percent(Decimal),
    /// A bare number.
    Number(Decimal),
}

/// Why a typed figure was not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Misread {
    /// Nothing was typed.
    Empty,
    /// More text than any figure needs.
    TooLong { most: usize },
    /// Figures or words that are no time of day: what was met.
    NotAClock { met: String },
    /// Letters, signs or an order of digits that is no number: the part that was met.
    NotANumber { met: String },
    /// A unit that does not belong to this kind, or that we do not know.
    UnknownUnit { met: String },
    /// Below nothing.
    Negative { met: String },
    /// Two numbers in one spelling: with grouped thousands, or with decimals.
    Ambiguous { grouped: Quantity, decimal: Quantity },
    /// Finer than the kind is kept in.
    TooFine { nearest: Quantity },
    /// A fraction that no rule is marked in, 2 to 64. No nearest for a fraction of nothing.
    Denominator { met: u64, nearest: Option<Quantity> },
    /// Past a limit. `met` is missing where it is more than the kind can hold; `might_be` is the other reading, within the limits.
    OutOfRange { met: Option<Quantity>, least: Quantity, most: Quantity, might_be: Option<Quantity> },
    /// Part of a piece; `might_be` is the other reading.
    NotWhole { met: Decimal, might_be: Option<Quantity> },
}
