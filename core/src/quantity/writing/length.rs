//! Lengths in inches with their fractions, or in millimetres; distances in miles or kilometres.

use super::super::reading::Typing;
use super::super::{Decimal, Length, Units, half_up};
use super::number::decimal;

const SIXTY_FOURTH: i64 = Length::INCH_64TH.as_nm();
/// A hundred-thousandth of an inch.
const INCH_FINEST: i64 = 254;
/// A millionth of a mile.
const MILE_FINEST: i64 = 1_609_344;

/// Inches to the nearest 64th, for a fraction set by hand: `whole` and `num`/`den` in lowest terms, `num` 0 where there is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InchParts {
    pub whole: i64,
    pub num: u8,
    pub den: u8,
    /// Nothing was rounded.
    pub exact: bool,
}

/// The parts of a length in inches, half up to the 64th.
///
/// ```
/// use fivebar_core::quantity::{Length, writing::{InchParts, inch_parts}};
/// let rail = Length::INCH_64TH.times(112).unwrap();
/// assert_eq!(inch_parts(rail), InchParts { whole: 1, num: 3, den: 4, exact: true });
/// assert_eq!(inch_parts(Length::MM.times(25).unwrap()), InchParts { whole: 0, num: 63, den: 64, exact: false });
/// ```
pub fn inch_parts(length: Length) -> InchParts {
    let nm = length.as_nm();
    let all = nm.div_euclid(SIXTY_FOURTH).saturating_add(i64::from(SIXTY_FOURTH <= nm.rem_euclid(SIXTY_FOURTH).saturating_mul(2)));
    let (whole, rest) = (all.div_euclid(64), all.rem_euclid(64));
    let common = 1_i64.wrapping_shl(rest.trailing_zeros().min(6));
    let small = |v: i64| u8::try_from(v.div_euclid(common)).unwrap_or(1);
    InchParts { whole, num: small(rest), den: small(64), exact: nm.rem_euclid(SIXTY_FOURTH) == 0 }
}

/// A length without needless digits, to be read back alike: `1 3/4`, `92`, `92,5`.
///
/// Inches as a fraction where they lie on a 64th, else as decimals; what no five decimals of an inch hold is written in
/// millimetres with its unit. Millimetres to the nanometre.
///
/// ```
/// use fivebar_core::quantity::{Length, Units, reading::{Sign, Typing}, writing::length};
/// let inch = Typing { units: Units::Inch, sign: Sign::Point };
/// let metric = Typing { units: Units::Metric, sign: Sign::Comma };
/// let rail = Length::INCH_64TH.times(112).unwrap();
/// assert_eq!((length(rail, inch).as_str(), length(rail, metric).as_str()), ("1 3/4", "44,45"));
/// assert_eq!(length(Length::MM.times(92).unwrap(), inch), "92 mm");
/// ```
pub fn length(length: Length, typing: Typing) -> String {
    let nm = length.as_nm();
    let mm = decimal(Decimal::new(nm, 6), typing.sign);
    match typing.units {
        Units::Metric => mm,
        Units::Inch if nm % SIXTY_FOURTH == 0 => fraction(inch_parts(length)),
        Units::Inch if nm % INCH_FINEST == 0 => decimal(Decimal::new(nm.div_euclid(INCH_FINEST), 5), typing.sign),
        Units::Inch => mm + " mm",
    }
}

fn fraction(parts: InchParts) -> String {
    let InchParts { whole, num, den, .. } = parts;
    match (whole, num) {
        (whole, 0) => format!("{whole}"),
        (0, num) => format!("{num}/{den}"),
        (whole, num) => format!("{whole} {num}/{den}"),
    }
}

/// A distance to be read back alike: miles where six decimals hold it, else kilometres with their unit.
///
/// ```
/// use fivebar_core::quantity::{Length, Units, reading::{Sign, Typing}, writing::distance};
/// let typing = Typing { units: Units::Inch, sign: Sign::Point };
/// assert_eq!(distance(Length::MILE.times(23).unwrap(), typing), "23");
/// assert_eq!(distance(Length::KM.times(37).unwrap(), typing), "37 km");
/// ```
pub fn distance(distance: Length, typing: Typing) -> String {
    let nm = distance.as_nm();
    let km = decimal(Decimal::new(nm, 12), typing.sign);
    match typing.units {
        Units::Metric => km,
        Units::Inch if nm % MILE_FINEST == 0 => decimal(Decimal::new(nm.div_euclid(MILE_FINEST), 6), typing.sign),
        Units::Inch => km + " km",
    }
}

/// Millimetres to a tenth, as a rule shows them.
///
/// ```
/// use fivebar_core::quantity::{Decimal, Length, writing::shown_millimetres};
/// assert_eq!(shown_millimetres(Length::INCH_64TH), Decimal::new(4, 1));
/// ```
pub fn shown_millimetres(length: Length) -> Decimal {
    half_up(Decimal::new(length.as_nm(), 6), 1)
}

/// Whole feet that fit into a length: the limit of 20 m is named as 65 ft.
///
/// ```
/// use fivebar_core::quantity::{Length, writing::whole_feet};
/// assert_eq!(whole_feet(Length::PIECE_MOST), 65);
/// ```
pub fn whole_feet(length: Length) -> i64 {
    length.as_nm().div_euclid(Length::FOOT.as_nm())
}
