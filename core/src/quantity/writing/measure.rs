//! Money, weights and volumes as text.

use super::super::reading::{Sign, Typing};
use super::super::{Decimal, Grams, Mass, Money, Units, Volume, exact, half_up};
use super::number::{decimal, fixed};

/// A sum with the digits of its minor unit and no mark: `11.40`. The face sets currency and groups by the language.
///
/// ```
/// use fivebar_core::quantity::{Currency, Decimal, Money, reading::Sign, writing::money};
/// let gift = Money::book(Decimal::new(114, 1), Currency::EUR).unwrap();
/// assert_eq!(money(gift, Sign::Comma), "11,40");
/// ```
pub fn money(sum: Money, sign: Sign) -> String {
    fixed(sum.amount(), sum.currency().digits(), sign)
}

/// A weight to be read back alike in kilograms, to a part in 10^12 in pounds.
///
/// ```
/// use fivebar_core::quantity::{Mass, Units, reading::{Sign, Typing}, writing::mass};
/// assert_eq!(mass(Mass::kg(86.9), Typing { units: Units::Metric, sign: Sign::Comma }), "86,9");
/// assert_eq!(mass(Mass::lb(163.5), Typing { units: Units::Inch, sign: Sign::Point }), "163.5");
/// ```
pub fn mass(mass: Mass, typing: Typing) -> String {
    // Twelve decimals of a kilogram are the nanogram the reading takes.
    decimal(half_up(figure(mass, typing.units), 12), typing.sign)
}

/// What a scale showed, to be read back to the same gram, without needless digits.
///
/// ```
/// use fivebar_core::quantity::{Grams, Units, reading::{Sign, Typing}, writing::grams};
/// let pounds = Typing { units: Units::Inch, sign: Sign::Point };
/// assert_eq!(grams(Grams::new(3_992).unwrap(), pounds), "8.8");
/// assert_eq!(grams(Grams::new(1).unwrap(), pounds), "0.002");
/// ```
pub fn grams(grams: Grams, typing: Typing) -> String {
    let whole = figure(grams.mass(), typing.units);
    let read = |figure: Decimal| {
        let figure = f64::try_from(figure).unwrap_or_default();
        Grams::of(if typing.units == Units::Inch { Mass::lb(figure) } else { Mass::kg(figure) })
    };
    // A thousandth of a pound is less than half a gram.
    let short = (0..=3).map(|digits| half_up(whole, digits)).find(|figure| read(*figure) == Ok(grams));
    decimal(short.unwrap_or(whole), typing.sign)
}

fn figure(mass: Mass, units: Units) -> Decimal {
    let figure = match units {
        Units::Inch => mass.as_lb(),
        Units::Metric => mass.as_kg(),
    };
    exact::of_float(figure).unwrap_or_default()
}

/// A weight to a tenth of a pound or kilogram.
///
/// ```
/// use fivebar_core::quantity::{Decimal, Mass, Units, writing::shown_mass};
/// assert_eq!(shown_mass(Mass::kg(86.94), Units::Metric), Decimal::new(869, 1));
/// ```
pub fn shown_mass(mass: Mass, units: Units) -> Decimal {
    half_up(figure(mass, units), 1)
}

/// Board feet to a hundredth: a pile of strips is counted that finely.
///
/// ```
/// use fivebar_core::quantity::{Decimal, Length, Volume, writing::shown_board_feet};
/// let side = |sixty_fourths| Length::INCH_64TH.times(sixty_fourths).unwrap();
/// // 47 ash strips of 1 1/16 x 2 1/4 x 21 1/2 in.
/// let strips = Volume::of(side(68), side(144), side(1_376)).unwrap().times(47).unwrap();
/// assert_eq!(shown_board_feet(strips), Decimal::new(1_678, 2));
/// ```
pub fn shown_board_feet(volume: Volume) -> Decimal {
    half_up(volume.board_feet(), 2)
}

/// Litres to a tenth.
///
/// ```
/// use fivebar_core::quantity::{Decimal, Length, Volume, writing::shown_litres};
/// let side = |mm| Length::MM.times(mm).unwrap();
/// // 23 oak tread ends of 40 x 150 x 365 mm.
/// let treads = Volume::of(side(40), side(150), side(365)).unwrap().times(23).unwrap();
/// assert_eq!(shown_litres(treads), Decimal::new(504, 1));
/// ```
pub fn shown_litres(volume: Volume) -> Decimal {
    half_up(volume.litres(), 1)
}
