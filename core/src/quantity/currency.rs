//! Currencies by their ISO 4217 letters, with the minor unit each is booked in.

use super::text;
use crate::refusal::{Answer, Refusal};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
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
    pub fn read(code: &str) -> Answer<Currency> {
        let unknown = || Refusal::CurrencyUnknown { code: code.into() };
        let letters: [u8; 3] = code.as_bytes().try_into().map_err(|_| unknown())?;
        if letters.iter().all(u8::is_ascii_uppercase) { Ok(Currency(letters)) } else { Err(unknown()) }
    }

    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.0).unwrap_or_default()
    }

    /// Digits of the minor unit (ISO 4217): 2 for most, 0 for yen, 3 for some dinars.
    pub fn digits(self) -> u32 {
        match &self.0 {
            b"BIF" | b"CLP" | b"DJF" | b"GNF" | b"ISK" | b"JPY" | b"KMF" | b"KRW" | b"PYG" | b"RWF" | b"UGX" | b"VND" | b"VUV" | b"XAF"
            | b"XOF" | b"XPF" => 0,
            b"BHD" | b"IQD" | b"JOD" | b"KWD" | b"LYD" | b"OMR" | b"TND" => 3,
            _ => 2,
        }
    }
}

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

impl Serialize for Currency {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_str(self.code())
    }
}

impl<'de> Deserialize<'de> for Currency {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Currency, D::Error> {
        text::read(from, "three letters of ISO 4217", |t| Currency::read(t).ok())
    }
}
