//! What is being typed on the number pad, and what it is for. Half-typed text is never in the book.

use crate::parts::pad::Press;
use fivebar_core::quantity::Units;
use fivebar_core::quantity::reading::{Misread, Sign, Typing};

/// Text under the thumb, and why it was not taken.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    pub text: String,
    pub wrong: Option<Misread>,
}

impl Typed {
    /// A press of the pad. Two fractions in a row replace each other; a figure that was not taken is typed over, and a second decimal
    /// sign is not typed.
    pub fn press(&mut self, press: Press, sign: Sign) {
        if self.wrong.take().is_some() && press != Press::RubOut {
            self.text.clear();
        }
        match press {
            Press::Digit(digit) => self.text.push(char::from(b'0'.saturating_add(digit.min(9)))),
            Press::Point if self.text.contains(['.', ',', '/']) => {}
            Press::Point => self.text.push(if sign == Sign::Comma { ',' } else { '.' }),
            Press::Minus => self.turn_sign(),
            Press::Fraction(over, under) => {
                let whole = self.text.split(' ').next().filter(|whole| !whole.contains('/')).unwrap_or_default().to_owned();
                let gap = if whole.is_empty() { "" } else { " " };
                self.text = format!("{whole}{gap}{over}/{under}");
            }
            Press::RubOut => self.rub_out(),
        }
    }

    /// Below nothing, or above again.
    fn turn_sign(&mut self) {
        self.text = self.text.strip_prefix('-').map_or_else(|| format!("-{}", self.text), str::to_owned);
    }

    fn rub_out(&mut self) {
        match self.text.rfind([' ', '/']) {
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
        check(&[Digit(9), Point, Point, Digit(2), Point], "9,2");
        check(&[Digit(4), Press::Minus], "-4");
        check(&[Press::Minus, Digit(4), Press::Minus], "4");
    }

    #[test]
    fn what_was_not_taken_is_typed_over() {
        for (press, text) in [(Press::Digit(7), "7"), (Press::RubOut, "10"), (Press::Point, ".")] {
            let mut typed = Typed { text: "101".into(), wrong: Some(Misread::Empty) };
            typed.press(press, Sign::Point);
            assert_eq!((typed.text.as_str(), typed.wrong), (text, None));
        }
    }
}
