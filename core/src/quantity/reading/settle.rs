//! From terms to one whole figure in the smallest unit of a kind, and from two readings to one refusal.

use super::super::Decimal;
use super::terms::Term;
use super::{Misread, Quantity, Read};
use std::iter::zip;

/// Which of two readings a numeral is taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pick {
    Grouped,
    Decimal,
}

/// What a text is worth in the smallest unit of its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Worth {
    pub exact: Decimal,
    /// The exact figure has digits we left out.
    pub cut: bool,
    /// A denominator outside 2 to 64, or none the smallest unit can be shared by.
    pub odd_denominator: Option<u64>,
}

/// The most and least denominators a rule is marked in.
pub const DENOMINATORS: std::ops::RangeInclusive<u64> = 2..=64;

/// One term in units of `unit`; `None` where it is more than we can hold.
pub fn worth(term: &Term, unit: Decimal, pick: Pick) -> Option<Worth> {
    let numeral = term.numeral?;
    let whole = numeral.grouped.filter(|_| pick == Pick::Grouped).unwrap_or(numeral.decimal).checked_mul(unit)?;
    let Some(fraction) = term.fraction else { return Some(Worth { exact: whole, cut: numeral.cut, odd_denominator: None }) };
    let bottom = Decimal::from(fraction.bottom.max(1));
    let part = Decimal::from(fraction.top).checked_mul(unit)?.checked_div(bottom)?;
    let odd = !DENOMINATORS.contains(&fraction.bottom) || !part.is_integer();
    Some(Worth { exact: whole.checked_add(part)?, cut: numeral.cut, odd_denominator: odd.then_some(fraction.bottom) })
}

/// Whether each term follows the one before as on a rule or a clock: whole feet, then less than 12 inches.
///
/// # Errors
/// [`Misread::NotANumber`] with the first term that does not.
pub fn in_order(terms: &[Term], units: &[i64]) -> Read<()> {
    let each = || zip(terms, units);
    for ((above, larger), (below, smaller)) in zip(each(), each().skip(1)) {
        let is_whole = above.fraction.is_none() && above.numeral.is_none_or(|n| n.decimal.is_integer() || n.grouped.is_some());
        if !is_whole {
            return Err(Misread::NotANumber { met: above.text.clone() });
        }
        // One reading of a number that has two is enough: the larger is refused later by the limits.
        let rest = worth(below, Decimal::from(*smaller), Pick::Decimal);
        if larger <= smaller || rest.is_none_or(|rest| Decimal::from(*larger) <= rest.exact) {
            return Err(Misread::NotANumber { met: below.text.clone() });
        }
    }
    Ok(())
}

impl Worth {
    pub const NOTHING: Worth = Worth { exact: Decimal::ZERO, cut: false, odd_denominator: None };

    pub fn plus(self, other: Worth) -> Option<Worth> {
        Some(Worth {
            exact: self.exact.checked_add(other.exact)?,
            cut: self.cut || other.cut,
            odd_denominator: self.odd_denominator.or(other.odd_denominator),
        })
    }

    /// The whole figure, or the refusal that names the nearest one.
    pub fn whole(self, is_kept: bool, nearest: Quantity) -> Read<Decimal> {
        match self.odd_denominator {
            Some(0) => Err(Misread::Denominator { met: 0, nearest: None }),
            Some(met) => Err(Misread::Denominator { met, nearest: Some(nearest) }),
            None if self.cut || !is_kept => Err(Misread::TooFine { nearest }),
            None => Ok(self.exact),
        }
    }
}

/// The reading of terms that may have two: both are made, and where both could be meant neither is taken.
pub fn settle<Q>(terms: &[Term], kind: impl Fn(Q) -> Quantity, make: impl Fn(Pick) -> Read<Q>) -> Read<Q> {
    let is_double = terms.iter().any(|term| term.numeral.is_some_and(|n| n.grouped.is_some()));
    if is_double { Err(both(make(Pick::Grouped).map(&kind), make(Pick::Decimal).map(&kind))) } else { make(Pick::Decimal) }
}

/// The one refusal of two readings.
pub fn both(grouped: Read<Quantity>, decimal: Read<Quantity>) -> Misread {
    match (grouped, decimal) {
        (Ok(grouped), Ok(decimal) | Err(Misread::TooFine { nearest: decimal })) => Misread::Ambiguous { grouped, decimal },
        (Ok(other), Err(no)) | (Err(no), Ok(other)) => with_other(no, other),
        (Err(no), Err(_)) => no,
    }
}

fn with_other(no: Misread, other: Quantity) -> Misread {
    match no {
        Misread::OutOfRange { met, least, most, .. } => Misread::OutOfRange { met, least, most, might_be: Some(other) },
        Misread::NotWhole { met, .. } => Misread::NotWhole { met, might_be: Some(other) },
        no => no,
    }
}
