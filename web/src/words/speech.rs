//! How figures, sums and dates are written in the maker's language. On a phone the platform's `Intl` writes them.

use fivebar_core::quantity::reading::{Sign, Typing};
use fivebar_core::quantity::writing::{InchParts, inch_parts, shown_millimetres};
use fivebar_core::quantity::{Currency, Decimal, Length, Mass, Money, Span, Units, Volume, Wall};

/// The sign of what is below nothing, in all that is shown: a hyphen is none.
pub fn minus(written: &str) -> String {
    written.replace('-', "−")
}

/// The maker's language for figures. Decimals come exact and are written half up.
pub trait Speech {
    /// A number with at least and at most so many decimals.
    fn number(&self, number: Decimal, least: u8, most: u8) -> String;
    /// A sum with its currency, to the minor unit.
    fn money(&self, sum: Money) -> String;
    /// A sum without needless decimals: `$13`, `$12.50`.
    fn short_money(&self, sum: Money) -> String;
    /// Tue 3 March.
    fn day(&self, wall: Wall) -> String;
    /// 09:42, or 9:42 am where clocks have twelve hours.
    fn clock(&self, wall: Wall) -> String;
    /// Clocks have twelve hours, and say am and pm.
    fn has_halves(&self) -> bool {
        false
    }
    fn sign(&self) -> Sign;
    /// What the phone's language suggests until the maker chose.
    fn currency(&self) -> Currency;
    fn units(&self) -> Units;

    /// A count.
    fn count(&self, n: u32) -> String {
        self.number(Decimal::from(n), 0, 0)
    }

    fn typing(&self, units: Units) -> Typing {
        Typing { units, sign: self.sign() }
    }

    /// A length without its unit: `1 13⁄16` with the fraction slash, or millimetres to a tenth.
    fn length(&self, length: Length, units: Units) -> String {
        match units {
            Units::Inch => inches(inch_parts(length)),
            Units::Metric => self.number(shown_millimetres(length), 0, 1),
        }
    }

    /// A volume with no more digits than it deserves, without its unit.
    fn volume(&self, volume: Volume, units: Units) -> String {
        match units {
            Units::Inch => self.number(volume.board_feet(), 1, 1),
            Units::Metric => self.number(volume.litres(), 1, 1),
        }
    }

    /// A weight to a tenth, without its unit.
    fn mass(&self, mass: Mass, units: Units) -> String {
        let amount = if units == Units::Inch { mass.as_lb() } else { mass.as_kg() };
        self.number(Decimal::try_from(amount).unwrap_or_default(), 1, 1)
    }

    /// A weight to the unit, as limits are said.
    fn whole_mass(&self, mass: Mass, units: Units) -> String {
        let amount = if units == Units::Inch { mass.as_lb() } else { mass.as_kg() };
        self.number(Decimal::try_from(amount).unwrap_or_default(), 0, 0)
    }

    /// 47 min, 3 h 12, 2 h.
    fn span(&self, span: Span) -> String {
        let minutes = span.as_minutes().max(0);
        match (minutes / 60, minutes % 60) {
            (0, m) => format!("{m} min"),
            (h, 0) => format!("{h} h"),
            (h, m) => format!("{h} h {m:02}"),
        }
    }
}

fn inches(parts: InchParts) -> String {
    match parts {
        InchParts { whole, num: 0, .. } => whole.to_string(),
        InchParts { whole: 0, num, den, .. } => format!("{num}⁄{den}"),
        InchParts { whole, num, den, .. } => format!("{whole} {num}⁄{den}"),
    }
}

/// Plain English figures, for native tests.
#[derive(Clone, Copy, Debug)]
pub struct Plain {
    pub sign: Sign,
    pub currency: Currency,
    pub units: Units,
    /// Clocks of twelve hours.
    pub halves: bool,
}

impl Default for Plain {
    fn default() -> Self {
        Plain { sign: Sign::Point, currency: Currency::USD, units: Units::Inch, halves: false }
    }
}

const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS: [&str; 12] =
    ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

impl Speech for Plain {
    fn number(&self, number: Decimal, least: u8, most: u8) -> String {
        let rounded = fivebar_core::quantity::half_up(number, u32::from(most));
        let digits = rounded.scale().max(u32::from(least)) as usize;
        minus(&format!("{rounded:.digits$}"))
    }

    fn money(&self, sum: Money) -> String {
        let digits = sum.currency().digits() as usize;
        let mark = if sum.currency() == Currency::USD { "$" } else { "€" };
        minus(&format!("{mark}{:.digits$}", sum.amount()))
    }

    fn short_money(&self, sum: Money) -> String {
        let written = self.money(sum);
        written.strip_suffix(".00").map(str::to_owned).unwrap_or(written)
    }

    fn day(&self, wall: Wall) -> String {
        let (day, (_, month, date)) = (wall.day(), wall.day().as_ymd());
        format!("{} {date} {}", DAYS[day.weekday() as usize % 7], MONTHS[(month as usize + 11) % 12])
    }

    fn clock(&self, wall: Wall) -> String {
        let (hour, minute) = (wall.minute_of_day() / 60, wall.minute_of_day() % 60);
        if !self.halves {
            return format!("{hour:02}:{minute:02}");
        }
        format!("{}:{minute:02}\u{a0}{}", if hour % 12 == 0 { 12 } else { hour % 12 }, if hour < 12 { "AM" } else { "PM" })
    }

    fn has_halves(&self) -> bool {
        self.halves
    }

    fn sign(&self) -> Sign {
        self.sign
    }
    fn currency(&self) -> Currency {
        self.currency
    }
    fn units(&self) -> Units {
        self.units
    }
}
