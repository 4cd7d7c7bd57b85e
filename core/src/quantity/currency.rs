//! Currencies by their ISO 4217 letters, with the minor unit each is booked in.

use super::{Scalar, Spelled};
use crate::refusal::{Answer, Refusal};
use std::fmt;

/// An ISO 4217 currency.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Currency([u8; 3]);

impl Currency {
    pub const USD: Currency = Currency(*b"USD");
    pub const EUR: Currency = Currency(*b"EUR");

    /// The currency of three capital letters.
    ///
    /// # Errors
    /// [`Refusal::CurrencyUnknown`] for anything else.
    ///
    /// ```
    /// use fivebar_core::quantity::Currency;
    /// assert_eq!(Currency::read("USD"), Ok(Currency::USD));
    /// assert!(Currency::read("usd").is_err() && Currency::read("XYZ").is_err());
    /// ```
    pub fn read(code: &str) -> Answer<Currency> {
        let letters = <[u8; 3]>::try_from(code.as_bytes()).ok();
        letters
            .filter(|letters| KNOWN.binary_search(letters).is_ok())
            .map(Currency)
            .ok_or_else(|| Refusal::CurrencyUnknown { code: code.into() })
    }

    /// Every currency we know, by its letters.
    pub fn all() -> impl Iterator<Item = Currency> {
        KNOWN.into_iter().map(Currency)
    }

    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.0).unwrap_or_default()
    }

    /// Digits of the minor unit (ISO 4217): 2 for most, 0 for yen, 3 for some dinars.
    ///
    /// ```
    /// use fivebar_core::quantity::Currency;
    /// let digits = |code| Currency::read(code).map(Currency::digits);
    /// assert_eq!((digits("EUR"), digits("JPY"), digits("KWD")), (Ok(2), Ok(0), Ok(3)));
    /// ```
    pub fn digits(self) -> u32 {
        match &self.0 {
            b"BIF" | b"CLP" | b"DJF" | b"GNF" | b"ISK" | b"JPY" | b"KMF" | b"KRW" | b"PYG" | b"RWF" | b"UGX" | b"VND" | b"VUV" | b"XAF"
            | b"XOF" | b"XPF" => 0,
            b"BHD" | b"IQD" | b"JOD" | b"KWD" | b"LYD" | b"OMR" | b"TND" => 3,
            _ => 2,
        }
    }
}

/// The national currencies of ISO 4217 in order: no funds, metals or test codes. From memory, with those a book of some years ago
/// may still hold; 22 of them and their digits are checked against a published list (`tests/checks/currency_minor_units.csv`).
#[rustfmt::skip]
const KNOWN: [[u8; 3]; 157] = [
    *b"AED", *b"AFN", *b"ALL", *b"AMD", *b"ANG", *b"AOA", *b"ARS", *b"AUD", *b"AWG", *b"AZN", *b"BAM", *b"BBD",
    *b"BDT", *b"BGN", *b"BHD", *b"BIF", *b"BMD", *b"BND", *b"BOB", *b"BRL", *b"BSD", *b"BTN", *b"BWP", *b"BYN",
    *b"BZD", *b"CAD", *b"CDF", *b"CHF", *b"CLP", *b"CNY", *b"COP", *b"CRC", *b"CUP", *b"CVE", *b"CZK", *b"DJF",
    *b"DKK", *b"DOP", *b"DZD", *b"EGP", *b"ERN", *b"ETB", *b"EUR", *b"FJD", *b"FKP", *b"GBP", *b"GEL", *b"GHS",
    *b"GIP", *b"GMD", *b"GNF", *b"GTQ", *b"GYD", *b"HKD", *b"HNL", *b"HTG", *b"HUF", *b"IDR", *b"ILS", *b"INR",
    *b"IQD", *b"IRR", *b"ISK", *b"JMD", *b"JOD", *b"JPY", *b"KES", *b"KGS", *b"KHR", *b"KMF", *b"KPW", *b"KRW",
    *b"KWD", *b"KYD", *b"KZT", *b"LAK", *b"LBP", *b"LKR", *b"LRD", *b"LSL", *b"LYD", *b"MAD", *b"MDL", *b"MGA",
    *b"MKD", *b"MMK", *b"MNT", *b"MOP", *b"MRU", *b"MUR", *b"MVR", *b"MWK", *b"MXN", *b"MYR", *b"MZN", *b"NAD",
    *b"NGN", *b"NIO", *b"NOK", *b"NPR", *b"NZD", *b"OMR", *b"PAB", *b"PEN", *b"PGK", *b"PHP", *b"PKR", *b"PLN",
    *b"PYG", *b"QAR", *b"RON", *b"RSD", *b"RUB", *b"RWF", *b"SAR", *b"SBD", *b"SCR", *b"SDG", *b"SEK", *b"SGD",
    *b"SHP", *b"SLE", *b"SOS", *b"SRD", *b"SSP", *b"STN", *b"SVC", *b"SYP", *b"SZL", *b"THB", *b"TJS", *b"TMT",
    *b"TND", *b"TOP", *b"TRY", *b"TTD", *b"TWD", *b"TZS", *b"UAH", *b"UGX", *b"USD", *b"UYU", *b"UZS", *b"VED",
    *b"VES", *b"VND", *b"VUV", *b"WST", *b"XAF", *b"XCD", *b"XCG", *b"XOF", *b"XPF", *b"YER", *b"ZAR", *b"ZMW",
    *b"ZWG",
];

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl Spelled for Currency {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(self.code())
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        Currency::read(scalar.text()?).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_that_are_no_code_are_refused() {
        assert!(KNOWN.is_sorted(), "or a code could not be found");
        assert!(Currency::all().all(|one| Currency::read(one.code()) == Ok(one)));
        for code in ["", "US", "USDX", "usd", "US$", "XYZ", "AAA", "€", "XAU", "XTS", "\u{0}\u{0}\u{0}"] {
            assert_eq!(Currency::read(code), Err(Refusal::CurrencyUnknown { code: code.into() }), "{code}");
        }
    }
}
