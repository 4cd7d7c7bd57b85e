//! Decimals by either sign, never in a spelling that could be read as another number.

use super::super::reading::Sign;
use super::super::{Decimal, half_up};

/// All digits of a decimal, none needless.
///
/// Under the comma three decimals get a nought more where `1,250` could be read as a thousand.
///
/// ```
/// use fivebar_core::quantity::{Decimal, reading::Sign, writing::decimal};
/// assert_eq!(decimal(Decimal::new(3_500, 3), Sign::Comma), "3,5");
/// assert_eq!(decimal(Decimal::new(1_125, 3), Sign::Point), "1.125");
/// assert_eq!(decimal(Decimal::new(1_125, 3), Sign::Comma), "1,1250");
/// ```
pub fn decimal(figure: Decimal, sign: Sign) -> String {
    spell(&super::super::exact::write(figure), sign)
}

/// So many decimals, half up, the noughts at the end too.
///
/// ```
/// use fivebar_core::quantity::{Decimal, reading::Sign, writing::fixed};
/// assert_eq!(fixed(Decimal::new(468, 1), 2, Sign::Point), "46.80");
/// ```
pub fn fixed(figure: Decimal, digits: u32, sign: Sign) -> String {
    let places = usize::try_from(digits).unwrap_or(0);
    let rounded = half_up(figure, digits);
    let rounded = if rounded.is_zero() { Decimal::ZERO } else { rounded };
    spell(&format!("{rounded:.places$}"), sign)
}

fn spell(text: &str, sign: Sign) -> String {
    if sign == Sign::Point {
        return text.into();
    }
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits = whole.trim_start_matches('-');
    let is_double = part.len() == 3 && digits.len() <= 3 && !digits.starts_with('0');
    text.replace('.', ",") + if is_double { "0" } else { "" }
}
