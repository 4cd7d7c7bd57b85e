//! Sizes as a maker says them: `1 1/16 x 2 1/4 x 21.5 in`, `20 x 45 x 500..700 mm`, `23 miles`.

use super::words::{Read, Words};
use crate::quantity::reading::{Sign, Typing, length};
use crate::quantity::{Decimal, Length, Units};

/// Three sides and where the last ends, if it is a band.
pub type Size = ([Length; 3], Option<Length>);

/// A size, up to its unit.
pub fn size(words: &mut Words) -> Read<Size> {
    let mut sides = vec![];
    let mut side = String::new();
    let units = loop {
        match words.word("a size that ends with in or mm")? {
            "in" => break Units::Inch,
            "mm" => break Units::Metric,
            "x" => sides.push(std::mem::take(&mut side)),
            part => side = format!("{side} {part}"),
        }
    };
    let (last, to) = side.split_once("..").map_or((side.as_str(), None), |(last, to)| (last, Some(to)));
    let band = to.map(|to| one(words, to, units)).transpose()?;
    sides.push(last.to_owned());
    let sides = sides.iter().map(|side| one(words, side, units)).collect::<Read<Vec<Length>>>()?;
    <[Length; 3]>::try_from(sides).map_or_else(|_| words.no("three sides with x between"), |sides| Ok((sides, band)))
}

/// One side, up to its unit: `12 in`, `3 / 16 in`.
pub fn one_side(words: &mut Words) -> Read<Length> {
    let mut side = String::new();
    let units = loop {
        match words.word("a length that ends with in or mm")? {
            "in" => break Units::Inch,
            "mm" => break Units::Metric,
            part => side = format!("{side} {part}"),
        }
    };
    one(words, &side, units)
}

fn one(words: &Words, text: &str, units: Units) -> Read<Length> {
    length(text, Typing { units, sign: Sign::Point }).or_else(|_| words.no("a length"))
}

/// `23 miles` or `46 km`, and whether it is miles.
pub fn distance(words: &mut Words) -> Read<(Length, bool)> {
    let n = words.number()?;
    let miles = words.take("miles or km", |word| match word {
        "mile" | "miles" => Some(true),
        "km" => Some(false),
        _ => None,
    })?;
    let unit = if miles { Length::MILE } else { Length::KM };
    let nm = n.checked_mul(Decimal::from(unit.as_nm())).and_then(|nm| i64::try_from(nm.round()).ok());
    let length = nm.and_then(|nm| Length::nm(nm).ok());
    length.map_or_else(|| words.no("a distance"), |length| Ok((length, miles)))
}

/// `670 lb` or `300 kg` as whole grams.
pub fn grams(words: &mut Words) -> Read<i64> {
    let n = words.number()?;
    let per = words.take("lb or kg", |word| match word {
        "lb" => Some(Decimal::new(45_359_237, 5)),
        "kg" => Some(Decimal::ONE_THOUSAND),
        _ => None,
    })?;
    let grams = n.checked_mul(per).and_then(|grams| i64::try_from(grams.round()).ok());
    grams.map_or_else(|| words.no("a mass"), Ok)
}
