//! Sums of money as typed: `11.40`, `$11.40`, `11,40 €`, `12`. The currency is the job's; the mark is only checked.

use super::super::{Currency, Decimal, Money};
use super::count::bare;
use super::{Misread, Quantity, Read, Sign, tidy};

/// A sum in the currency of the haul or job.
///
/// # Errors
/// [`Misread::UnknownUnit`] for the mark of another currency, [`Misread::Negative`] below nothing, [`Misread::TooFine`] for more
/// digits than the minor unit with the sum half up, [`Misread::OutOfRange`] past 10^9 minor units.
///
/// ```
/// use fivebar_core::quantity::{Currency, Decimal, Money, reading::{Misread, Quantity, Sign, money}};
/// let gift = Money::whole(Decimal::new(1_140, 2), Currency::USD);
/// assert_eq!(money("$11.40", Currency::USD, Sign::Point).ok(), gift);
/// let nearest = Quantity::Money(Money::whole(Decimal::new(1_141, 2), Currency::USD).unwrap());
/// assert_eq!(money("11.405", Currency::USD, Sign::Point), Err(Misread::TooFine { nearest }));
/// ```
pub fn money(text: &str, currency: Currency, sign: Sign) -> Read<Money> {
    let digits = without_mark(tidy(text)?, currency)?;
    bare(digits, sign, Quantity::Money, |figure, cut| {
        let most = Money::most(currency);
        let out = || Misread::OutOfRange {
            met: None,
            least: Quantity::Money(Money::zero(currency)),
            most: Quantity::Money(most),
            might_be: None,
        };
        let figure = figure.ok_or_else(out)?;
        let nearest = Money::book(figure, currency).map_err(|_| out())?;
        exact(figure, nearest, cut)
    })
}

fn exact(figure: Decimal, nearest: Money, cut: bool) -> Read<Money> {
    if cut || nearest.amount() != figure { Err(Misread::TooFine { nearest: Quantity::Money(nearest) }) } else { Ok(nearest) }
}

/// The digits alone. A mark before or after must be one of this currency.
fn without_mark(text: &str, currency: Currency) -> Read<&str> {
    let is_number = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    let no = || Misread::NotANumber { met: text.into() };
    let start = text.find(|c: char| c.is_ascii_digit()).ok_or_else(no)?;
    let end = text.rfind(is_number).ok_or_else(no)?.saturating_add(1);
    // The sign of `.50` belongs to the number, the point of `Fr.50` to the mark.
    let before = text.get(..start).unwrap_or_default();
    let (before, digits) = match before.strip_suffix(['.', ',']) {
        Some(mark) if !is_mark(before.trim(), currency) => (mark, text.get(mark.len()..end)),
        _ => (before, text.get(start..end)),
    };
    let after = text.get(end..).unwrap_or_default();
    // `12.-` and `12,–`, where a dash stands for no parts.
    let is_open = digits.is_some_and(|d| d.ends_with(['.', ',']));
    let after = if is_open { after.strip_prefix(['-', '\u{2013}', '\u{2014}']).unwrap_or(after) } else { after };
    match (before.trim(), after.trim()) {
        (met, _) if met.contains(['-', '\u{2212}', '\u{2013}']) => Err(Misread::Negative { met: text.into() }),
        ("", "") => digits.ok_or_else(no),
        ("", mark) | (mark, "") if is_mark(mark, currency) => digits.ok_or_else(no),
        ("", met) | (met, "") => Err(Misread::UnknownUnit { met: met.into() }),
        _ => Err(no()),
    }
}

/// The letters of ISO 4217, or a mark written where the currency is paid.
fn is_mark(mark: &str, currency: Currency) -> bool {
    mark.eq_ignore_ascii_case(currency.code()) || MARKS.iter().any(|(of, marks)| currency.code() == *of && marks.contains(&mark))
}

#[rustfmt::skip]
const MARKS: [(&str, &[&str]); 30] = [
    ("USD", &["$", "US$", "$US"]), ("CAD", &["$", "CA$", "C$", "$CA"]), ("AUD", &["$", "A$", "AU$"]), ("NZD", &["$", "NZ$"]),
    ("MXN", &["$", "MX$", "Mex$"]), ("CLP", &["$", "CLP$"]), ("COP", &["$", "COL$"]), ("ARS", &["$", "AR$"]),
    ("SGD", &["$", "S$"]), ("HKD", &["$", "HK$"]), ("TWD", &["$", "NT$"]), ("EUR", &["€"]), ("GBP", &["£"]),
    ("JPY", &["¥", "￥", "円"]), ("CNY", &["¥", "￥", "元"]), ("CHF", &["Fr", "Fr.", "SFr", "SFr."]), ("SEK", &["kr", "kr."]),
    ("NOK", &["kr", "kr."]), ("DKK", &["kr", "kr."]), ("ISK", &["kr", "kr."]), ("PLN", &["zł"]), ("CZK", &["Kč"]), ("HUF", &["Ft"]),
    ("RON", &["lei", "leu"]), ("TRY", &["₺"]), ("INR", &["₹", "Rs", "Rs."]), ("KRW", &["₩", "원"]), ("BRL", &["R$"]),
    ("ZAR", &["R"]), ("UAH", &["₴", "грн"]),
];
