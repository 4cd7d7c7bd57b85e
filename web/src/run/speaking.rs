//! The maker's language on this phone: the platform's own figures, sums and dates.

use crate::phone::format::{self, Figures, Moment as How};
use crate::words::{Speech, minus};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Decimal, Money, Units, Wall, exact};
use std::rc::Rc;

/// The language the phone is set to.
pub fn language() -> Rc<dyn Speech> {
    let locale = format::locale();
    Rc::new(OnPhone { figures: Figures::new(&locale), region: locale.rsplit('-').next().unwrap_or_default().to_ascii_uppercase() })
}

struct OnPhone {
    figures: Figures,
    region: String,
}

impl Speech for OnPhone {
    fn number(&self, number: Decimal, least: u8, most: u8) -> String {
        minus(&self.figures.number(&exact::write(number), least, most))
    }

    fn money(&self, sum: Money) -> String {
        minus(&self.figures.money(&exact::write(sum.amount()), sum.currency().code()))
    }

    fn short_money(&self, sum: Money) -> String {
        let whole = sum.amount().fract().is_zero();
        if whole { minus(&self.figures.whole_money(&exact::write(sum.amount()), sum.currency().code())) } else { self.money(sum) }
    }

    fn day(&self, wall: Wall) -> String {
        self.figures.moment(How::Weekday, wall.at.ms(), i32::from(wall.offset.as_minutes()))
    }

    fn clock(&self, wall: Wall) -> String {
        // The narrow space of some languages is none of the font's.
        self.figures.moment(How::Clock, wall.at.ms(), i32::from(wall.offset.as_minutes())).replace('\u{202f}', "\u{a0}")
    }

    fn has_halves(&self) -> bool {
        self.figures.has_halves()
    }

    fn sign(&self) -> Sign {
        if self.figures.decimal_sign() == ',' { Sign::Comma } else { Sign::Point }
    }

    /// Dollars and inches where they are usual; the maker chooses otherwise in the workshop.
    fn currency(&self) -> Currency {
        let code = match self.region.as_str() {
            "US" | "EN" => "USD",
            "CA" => "CAD",
            "GB" => "GBP",
            "AU" => "AUD",
            "NZ" => "NZD",
            "CH" | "LI" => "CHF",
            "SE" => "SEK",
            "NO" => "NOK",
            "DK" => "DKK",
            _ => "EUR",
        };
        Currency::read(code).unwrap_or(Currency::EUR)
    }

    fn units(&self) -> Units {
        match self.region.as_str() {
            "US" | "EN" | "CA" => Units::Inch,
            _ => Units::Metric,
        }
    }
}
