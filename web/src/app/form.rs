//! A form whose figures are typed on the pad, one after the other.

use super::doubt::{Doubt, Side};
use super::entry::Typed;
use crate::parts::pad::Press;
use fivebar_core::quantity::reading::{Misread, Sign, Typing};
use fivebar_core::quantity::{Length, Listed};

/// The figures of a form as text, and which one is under the thumb.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Form {
    pub at: usize,
    pub slots: Vec<Typed>,
    /// The figure was there before: the first press replaces it.
    fresh: bool,
}

impl Form {
    /// A form of `n` figures, none of them typed.
    pub fn of(n: usize) -> Form {
        Form { at: 0, slots: vec![Typed::default(); n], fresh: true }
    }

    /// A form with figures that can be typed over.
    pub fn filled<const N: usize>(texts: [String; N]) -> Form {
        let slots = texts.into_iter().map(Typed::of).listed();
        Form { at: 0, slots, fresh: true }
    }

    pub fn go(&mut self, at: usize) {
        (self.at, self.fresh) = (at.min(self.slots.len().saturating_sub(1)), true);
    }

    pub fn press(&mut self, press: Press, sign: Sign) {
        if self.fresh && press == Press::Typed(' ') {
            return; // nothing is typed yet that a blank could stand behind
        }
        let fresh = std::mem::replace(&mut self.fresh, false);
        let Some(typed) = self.slots.get_mut(self.at) else { return };
        if fresh && press != Press::RubOut && !matches!(press, Press::Fraction(..) | Press::Minus) {
            typed.text.clear();
        }
        typed.press(press, sign);
    }

    /// Writes a figure into its place, as a chip does.
    pub fn put(&mut self, nth: usize, text: String) {
        if let Some(slot) = self.slots.get_mut(nth) {
            *slot = Typed::of(text);
        }
    }

    pub fn text(&self, nth: usize) -> &str {
        self.slots.get(nth).map_or("", |slot| slot.text.as_str())
    }

    pub fn is_empty(&self, nth: usize) -> bool {
        self.text(nth).trim().is_empty()
    }

    /// What `read` makes of a figure; if it makes nothing, the figure comes under the thumb with the reason.
    pub fn take<T>(&mut self, nth: usize, read: impl Fn(&str) -> Result<T, Misread>) -> Option<T> {
        let taken = self.slots.get_mut(nth)?.take(read);
        if taken.is_none() {
            self.go(nth);
        }
        taken
    }

    /// As [`Form::take`], where nothing typed is an answer too.
    pub fn maybe<T>(&mut self, nth: usize, read: impl Fn(&str) -> Result<T, Misread>) -> Option<Option<T>> {
        if self.is_empty(nth) { Some(None) } else { self.take(nth, read).map(Some) }
    }

    /// A side of wood; one that can't be read, or is asked about, comes under the thumb.
    pub fn side(&mut self, nth: usize, of: Side, typing: Typing) -> Option<Length> {
        self.side_by(nth, (of, typing), |text| of.read(text, typing))
    }

    /// As [`Form::side`], where nothing typed is an answer too.
    pub fn maybe_side(&mut self, nth: usize, of: Side, typing: Typing) -> Option<Option<Length>> {
        if self.is_empty(nth) { Some(None) } else { self.side(nth, of, typing).map(Some) }
    }

    /// As [`Form::side`], read in another way.
    pub fn side_by(&mut self, nth: usize, of: (Side, Typing), read: impl Fn(&str) -> Result<Length, Misread>) -> Option<Length> {
        let taken = self.slots.get_mut(nth)?.side_by(of.0, of.1, read);
        if taken.is_none() {
            self.go(nth);
        }
        taken
    }

    /// What is asked about the figure under the thumb.
    pub fn doubt(&self) -> Option<Doubt> {
        self.here()?.doubt
    }

    /// What was asked about is so, or it was meant in millimetres.
    pub fn is_so(&mut self, side: Length, sign: Sign) {
        if let Some(typed) = self.slots.get_mut(self.at) {
            typed.is_so(side, sign);
        }
    }

    /// The figure under the thumb, and why it was not taken.
    pub fn here(&self) -> Option<&Typed> {
        self.slots.get(self.at)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use fivebar_core::quantity::reading::count;

    #[test]
    fn a_figure_that_was_there_is_typed_over_and_a_wrong_one_comes_back_under_the_thumb() {
        let mut form = Form::filled(["1".to_owned(), String::new()]);
        form.press(Press::Digit(2), Sign::Point);
        form.press(Press::Digit(5), Sign::Point);
        assert_eq!(form.text(0), "25");
        form.go(0);
        form.press(Press::RubOut, Sign::Point);
        assert_eq!(form.text(0), "2");
        let read = |text: &str| count(text, Sign::Point, 99);
        assert_eq!(form.maybe(1, read), Some(None));
        form.go(0);
        assert_eq!(form.take(1, read), None);
        assert_eq!((form.at, form.here().and_then(|typed| typed.wrong.clone())), (1, Some(Misread::Empty)));
    }
}
