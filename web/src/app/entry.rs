//! What is being typed on the number pad, and what it is for. Half-typed text is never in the book.

use super::doubt::{Doubt, Side};
use crate::parts::pad::{Half, Press};
use fivebar_core::quantity::reading::{self, Misread, Sign, Typing};
use fivebar_core::quantity::{Decimal, Length, Units, writing};
use fivebar_core::wood::moisture::Moisture;

/// Text under the thumb, and why it was not taken.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    pub text: String,
    pub wrong: Option<Misread>,
    /// It is far beyond what such a side is, and is asked about.
    pub doubt: Option<Doubt>,
    /// It was asked about, and is so.
    sure: bool,
    /// It was put there: the first figure typed takes its place.
    stood: bool,
}

impl Typed {
    /// A figure that stands there already.
    pub fn of(text: String) -> Typed {
        Typed { text, ..Typed::default() }
    }

    /// A figure that was left there: what is typed takes its place.
    pub fn left(text: String) -> Typed {
        Typed { stood: true, ..Typed::of(text) }
    }

    /// A press of the pad. Two fractions in a row replace each other; a figure that was not taken is typed over. A second decimal
    /// sign is seen, and refused when it is read: left out, 12.5.1 would be read as 12.51.
    pub fn press(&mut self, press: Press, sign: Sign) {
        if press == Press::Typed(' ') && !self.takes_a_blank() {
            return;
        }
        (self.doubt, self.sure) = (None, false);
        if self.wrong.take().is_some() && press != Press::RubOut {
            self.text.clear();
        }
        if std::mem::take(&mut self.stood) && matches!(press, Press::Digit(_)) {
            self.text.clear();
        }
        // What is typed after a half of the day is of its figures.
        if let (Press::Digit(_), Some((figures, half))) = (press, self.text.split_once(' ').filter(|(_, half)| half.ends_with('m'))) {
            let (figures, half) = (figures.to_owned(), half.to_owned());
            self.text = figures;
            self.press(press, sign);
            self.text = format!("{} {half}", self.text);
            return;
        }
        match press {
            Press::Digit(digit) => self.text.push(char::from(b'0'.saturating_add(digit.min(9)))),
            Press::Point => self.text.push(if sign == Sign::Comma { ',' } else { '.' }),
            Press::Half(half) => {
                let figures = self.text.trim_end_matches([' ', 'a', 'p', 'm']).to_owned();
                self.text = format!("{figures} {}", if half == Half::Am { "am" } else { "pm" });
            }
            Press::Minus => self.turn_sign(),
            Press::Typed(sign) => self.text.push(sign),
            Press::Fraction(over, under) => {
                let whole = self.text.split(' ').next().filter(|whole| !whole.contains('/')).unwrap_or_default().to_owned();
                let gap = if whole.is_empty() { "" } else { " " };
                self.text = format!("{whole}{gap}{over}/{under}");
            }
            Press::RubOut => self.rub_out(),
        }
    }

    /// A blank stands behind a figure that is being typed, and nowhere else.
    fn takes_a_blank(&self) -> bool {
        self.wrong.is_none() && !self.stood && self.text.ends_with(|last: char| last.is_ascii_digit())
    }

    /// Below nothing, or above again.
    fn turn_sign(&mut self) {
        self.text = self.text.strip_prefix('-').map_or_else(|| format!("-{}", self.text), str::to_owned);
    }

    fn rub_out(&mut self) {
        match self.text.rfind([' ', '/']) {
            Some(at) if self.text.ends_with('m') => self.text.truncate(at),
            Some(_) if self.text.contains('/') => {
                let whole = self.text.split_once(' ').map(|(whole, _)| whole.to_owned());
                self.text = whole.unwrap_or_default();
            }
            _ => drop(self.text.pop()),
        }
    }

    /// What `read` makes of the text; the reason stays beside it when it makes nothing.
    pub fn take<T>(&mut self, read: impl Fn(&str) -> Result<T, Misread>) -> Option<T> {
        match read(&self.text) {
            Ok(quantity) => Some(quantity),
            Err(why) => {
                self.wrong = Some(why);
                None
            }
        }
    }
}

impl Typed {
    /// A side of wood; one that is larger than such a side is asked about first.
    pub fn side(&mut self, of: Side, typing: Typing) -> Option<Length> {
        self.side_by(of, typing, |text| of.read(text, typing))
    }

    /// The same, read in another way.
    pub fn side_by(&mut self, of: Side, typing: Typing, read: impl Fn(&str) -> Result<Length, Misread>) -> Option<Length> {
        let side = self.take(read)?;
        self.doubt = if self.sure { None } else { of.doubt((side, &self.text), typing) };
        if self.doubt.is_some() { None } else { Some(side) }
    }

    /// What was asked about is so, or it was meant in millimetres.
    pub fn is_so(&mut self, side: Length, sign: Sign) {
        let Some(doubt) = self.doubt.take() else { return };
        if doubt.in_mm == Some(side) {
            let typing = Typing { units: Units::Metric, sign };
            self.text = format!("{} mm", writing::length(side, typing));
        }
        self.sure = true;
    }
}

/// A moisture in per cent of the dry wood, as a meter shows it: no meter shows nothing.
///
/// # Errors
/// [`Misread`].
pub fn moisture(text: &str, sign: Sign) -> Result<Decimal, Misread> {
    reading::number(text, sign, Decimal::ONE..=Moisture::MOST)
}

/// How lengths are typed in these units and this language.
pub fn typing(units: Units, sign: Sign) -> Typing {
    Typing { units, sign }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(presses: &[Press], text: &str) {
        let mut typed = Typed::default();
        presses.iter().for_each(|press| typed.press(*press, Sign::Comma));
        assert_eq!(typed.text, text);
    }

    #[test]
    fn the_pad_writes_what_is_read() {
        use Press::{Digit, Fraction, Point, RubOut};
        check(&[Digit(1), Fraction(3, 4)], "1 3/4");
        check(&[Fraction(3, 4)], "3/4");
        check(&[Digit(1), Fraction(3, 4), Fraction(1, 16)], "1 1/16");
        check(&[Digit(1), Fraction(3, 4), RubOut], "1");
        check(&[Fraction(3, 4), RubOut], "");
        check(&[Digit(9), Point, Digit(2), RubOut], "9,");
        check(&[Digit(9), Point, Point, Digit(2)], "9,,2");
        check(&[Digit(4), Press::Minus], "-4");
        check(&[Press::Minus, Digit(4), Press::Minus], "4");
    }

    /// 1 1/4 typed on a keyboard is an inch and a quarter, and no 11/4.
    #[test]
    fn a_fraction_is_typed_behind_a_blank() {
        use Press::{Digit, Fraction, RubOut, Typed as Sign};
        check(&[Digit(1), Sign(' '), Digit(1), Sign('/'), Digit(4)], "1 1/4");
        check(&[Digit(1), Sign(' '), Fraction(1, 4)], "1 1/4");
        check(&[Digit(1), Sign(' '), Digit(1), Sign('/'), Digit(4), Fraction(1, 16)], "1 1/16");
        check(&[Digit(1), Sign(' '), RubOut], "1");
        check(&[Sign(' '), Digit(1), Sign(' '), Sign(' '), Digit(2)], "1 2");
        let mut stood = Typed::left("12".into());
        stood.press(Sign(' '), reading::Sign::Point);
        assert_eq!(stood.text, "12", "a figure that stood there is left as it is");
        stood.press(Digit(3), reading::Sign::Point);
        assert_eq!(stood.text, "3");
    }

    #[test]
    fn what_was_not_taken_is_typed_over() {
        for (press, text) in [(Press::Digit(7), "7"), (Press::RubOut, "10"), (Press::Point, ".")] {
            let mut typed = Typed { wrong: Some(Misread::Empty), ..Typed::of("101".into()) };
            typed.press(press, Sign::Point);
            assert_eq!((typed.text.as_str(), typed.wrong), (text, None));
        }
    }
}
