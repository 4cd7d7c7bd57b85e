//! The number pad for amounts and lengths, and the entry above it.
use crate::parts::fraction::{built, worded};
use crate::parts::glyph;
use crate::view::{El, el};
use crate::words::en::parts as words;
use fivebar_core::quantity::Listed;

/// A key of the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    Digit(u8),
    /// The decimal sign of the chosen locale.
    Point,
    /// Below nothing, or above again.
    Minus,
    /// Before noon, or after it.
    Half(Half),
    /// A fraction of an inch.
    Fraction(u32, u32),
    /// A sign of a keyboard that the pad has no key for: it is seen, and what no figure has is refused when it is read.
    Typed(char),
    RubOut,
}

/// Signs of a keyboard that are part of figures, or that somebody reckons with: none of them is left out unseen. A blank stands between an inch
/// and its fraction: left out, 1 1/4 would be read as 11/4.
const SIGNS: [char; 9] = [' ', '.', ',', '+', '-', '*', '/', ':', '%'];

/// A half of the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    Am,
    Pm,
}

/// Keys for the halves of the day, where clocks have twelve hours; the one that stands is pressed.
pub fn half_keys<M>(typed: &str, press: impl Fn(Press) -> M) -> El<M> {
    let one = |half: Half, words: &'static str| {
        bare("key h56", press(Press::Half(half))).attr("aria-pressed", if typed.ends_with(words) { "true" } else { "false" }).text(words)
    };
    el("div", "g2").attr("role", "group").attr("aria-label", words::HALF_OF_DAY).kid(one(Half::Am, words::AM)).kid(one(Half::Pm, words::PM))
}

/// The fractions to offer: halves to the finest that is measured, each in lowest terms.
pub fn fractions(finest: u32) -> Vec<(u32, u32)> {
    let lowest = |over: u32| {
        let by = 1 << over.trailing_zeros().min(finest.trailing_zeros());
        (over / by, finest / by)
    };
    (1..finest).map(lowest).listed()
}

/// The decimal sign of a pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    None,
    Shown(char),
    /// It stands in its place and does nothing: the figure under the thumb is a whole one, others of the form are not.
    Idle(char),
}

impl From<Option<char>> for Sign {
    fn from(sign: Option<char>) -> Sign {
        sign.map_or(Sign::None, Sign::Shown)
    }
}

/// The class of the pad.
pub const PAD: &str = "pad";

/// The pad: 1 to 9, then the decimal sign (left out with `None`), 0 and rubbing out. It hears the keys of a keyboard as its own.
pub fn pad<M: Clone + 'static>(point: impl Into<Sign>, press: impl Fn(Press) -> M) -> El<M> {
    let point = point.into();
    let digit = |n: u8| bare("key", press(Press::Digit(n))).text(n.to_string());
    let key = |sign: char| {
        let named = if sign == ',' { words::COMMA } else { words::POINT };
        bare("key", press(Press::Point)).attr("aria-label", named).text(sign.to_string())
    };
    let sign = match point {
        Sign::Shown(sign) => key(sign),
        Sign::Idle(sign) => key(sign).flag("disabled", true),
        Sign::None => el("span", ""),
    };
    ears(point, &press)
        .attr("role", "group")
        .attr("aria-label", words::PAD)
        .kids((1..=9).map(digit))
        .kid(sign)
        .kid(digit(0))
        .kid(bare("key", press(Press::RubOut)).attr("aria-label", words::RUB_OUT).kid(glyph::rub_out()))
}

/// Where the decimal sign is a point, a comma may group: it stays what it is, and 1,200 is asked about when it is read.
fn comma_groups(sign: Sign) -> bool {
    matches!(sign, Sign::Shown('.') | Sign::Idle('.'))
}

/// Where a question stands in place of the pad: nothing is seen of it, and the keys of a keyboard are heard as at the pad.
pub fn ears<M: Clone + 'static>(point: impl Into<Sign>, press: impl Fn(Press) -> M) -> El<M> {
    let hears = heard(comma_groups(point.into()), &press);
    el("div", PAD).on_key(move |key| hears.iter().find(|(of, _)| of == key).map(|(_, says)| says.clone()))
}

/// What each key of a keyboard says at the pad: either decimal sign is the pad's, but for a comma that may group; of a whole figure too, where it is
/// refused when it is read.
fn heard<M>(comma_groups: bool, press: impl Fn(Press) -> M) -> Vec<(String, M)> {
    let digits = (0..=9).map(|n: u8| (n.to_string(), press(Press::Digit(n))));
    let sign = |sign: char| match sign {
        '.' => Press::Point,
        ',' if !comma_groups => Press::Point,
        sign => Press::Typed(sign),
    };
    let signs = SIGNS.iter().map(|of| (of.to_string(), press(sign(*of))));
    digits.chain(signs).chain([("Backspace".to_owned(), press(Press::RubOut))]).listed()
}

/// The pad where a figure may be below nothing: the sign stands on a row of its own.
pub fn minus_key<M>(press: impl Fn(Press) -> M) -> El<M> {
    bare("key h48", press(Press::Minus)).text(words::BELOW_NOTHING)
}

/// A row of fraction keys below the pad, for inches.
pub fn fraction_keys<M>(finest: u32, press: impl Fn(Press) -> M) -> El<M> {
    el("div", "fractions").attr("role", "group").attr("aria-label", words::FRACTIONS).kids(
        fractions(finest).into_iter().map(|(over, under)| bare("key", press(Press::Fraction(over, under))).kid(built(over, under, false))),
    )
}

/// What has been typed so far, with its unit; `wrong` draws it in iron red.
pub fn entry<M>(typed: &str, unit: &str, wrong: bool) -> El<M> {
    el("div", if wrong { "entry wrong" } else { "entry" })
        .kid(worded("span", "fg", typed.to_owned()))
        .kids((!unit.is_empty()).then(|| el("span", "t17").text(unit.to_owned())))
}

fn bare<M>(class: &'static str, tap: M) -> El<M> {
    el("button", class).attr("type", "button").on_tap(tap)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_come_in_lowest_terms() {
        assert_eq!(fractions(4), [(1, 4), (1, 2), (3, 4)]);
        assert_eq!(fractions(16).len(), 15);
        assert_eq!(fractions(16)[7], (1, 2));
        assert_eq!(fractions(16)[12], (13, 16));
    }

    #[test]
    fn a_keyboard_types_on_the_pad() {
        let says = |sign: Sign, key: &str| el("main", "").kid(pad(sign, |press| press)).keys_at(PAD).unwrap()(key);
        let check = |key: &str, wanted: Option<Press>| assert_eq!(says(Sign::Shown(','), key), wanted, "{key}");
        check("0", Some(Press::Digit(0)));
        check("7", Some(Press::Digit(7)));
        check(".", Some(Press::Point));
        check(",", Some(Press::Point));
        check("Backspace", Some(Press::RubOut));
        check("u", None);
        check("Enter", None);
        check("+", Some(Press::Typed('+')));
        check("/", Some(Press::Typed('/')));
        check(" ", Some(Press::Typed(' ')));
        assert_eq!([says(Sign::Idle('.'), "."), says(Sign::None, ",")], [Some(Press::Point); 2], "of a whole figure");
        // Where a point is the decimal sign 1,200 is no 1.2.
        assert_eq!([".", ","].map(|key| says(Sign::Shown('.'), key)), [Some(Press::Point), Some(Press::Typed(','))]);
    }

    #[test]
    fn the_decimal_sign_is_the_locales() {
        for (point, shown) in [(Some(','), ">,</button>"), (Some('.'), ">.</button>")] {
            assert!(pad(point, |p| p).html().contains(shown));
        }
        assert_eq!(pad(None, |p| p).html().matches("<button").count(), 11);
        assert!(pad(Sign::Idle('.'), |p| p).html().contains("disabled"));
    }
}
