//! A typed text as amounts with units, in order: `2' 6 1/2"` is 2 feet and 6 1/2 inches. Knows no kind; the kinds know their units.

use super::super::Decimal;
use super::number::{self, NoNumeral, Numeral};
use super::{Misread, Read, Sign};

/// A fraction as typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fraction {
    pub top: u64,
    pub bottom: u64,
}

/// An amount and its unit in lower case; the unit may be missing. `numeral` is missing where it is more than we can hold.
/// `text` is the part that was typed for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Term {
    pub numeral: Option<Numeral>,
    pub fraction: Option<Fraction>,
    pub unit: Option<String>,
    pub text: String,
}

const NOTHING: Numeral = Numeral { decimal: Decimal::ZERO, grouped: None, cut: false };

/// All terms of a text that is not empty.
pub fn terms(text: &str, sign: Sign) -> Read<Vec<Term>> {
    let mut rest = text;
    let mut found = Vec::new();
    while !rest.is_empty() {
        let (numeral, fraction, after) = amount(rest, sign)?;
        let (unit, after) = unit(after.trim_start());
        let typed = rest.len().saturating_sub(after.len());
        let text_of = rest.get(..typed).unwrap_or(rest).trim().into();
        found.push(Term { numeral, fraction, unit, text: text_of });
        rest = between(after, text)?;
    }
    Ok(found)
}

/// What may stand between two terms: room, a comma, a dash.
fn between<'t>(after: &'t str, text: &str) -> Read<&'t str> {
    let rest = after.trim_start();
    let rest = rest.strip_prefix([',', '-', '\u{2013}']).unwrap_or(rest).trim_start();
    if rest.is_empty() && !after.trim_start().is_empty() { Err(Misread::NotANumber { met: text.into() }) } else { Ok(rest) }
}

type Amount<'t> = (Option<Numeral>, Option<Fraction>, &'t str);

fn amount(text: &str, sign: Sign) -> Read<Amount<'_>> {
    if let Some((fraction, rest)) = fraction(text) {
        return Ok((Some(NOTHING), Some(fraction), rest));
    }
    let (digits, rest) = digits(text);
    let read = match number::numeral(digits, sign) {
        Ok(numeral) => Some(numeral),
        Err(NoNumeral::TooBig) => None,
        Err(NoNumeral::Malformed) => return Err(Misread::NotANumber { met: text.into() }),
    };
    let near = rest.trim_start();
    match fraction(near.strip_prefix(['-', '\u{2013}']).unwrap_or(near).trim_start()) {
        Some((fraction, after)) if is_proper(read, fraction) => Ok((read, Some(fraction), after)),
        Some(_) => Err(Misread::NotANumber { met: text.into() }),
        None => Ok((read, None, rest)),
    }
}

/// Only a whole number is followed by a fraction, and only by one below 1. A fraction of nothing is refused by its own name.
fn is_proper(numeral: Option<Numeral>, fraction: Fraction) -> bool {
    numeral.is_some_and(|n| n.decimal.is_integer() && n.grouped.is_none() && !n.cut)
        && (fraction.top < fraction.bottom || fraction.bottom == 0)
}

/// The digits at the start, with signs, and with gaps where exactly three digits follow.
fn digits(text: &str) -> (&str, &str) {
    let mut end = 0;
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let after = rest.get(c.len_utf8()..).unwrap_or_default();
        if !(c.is_ascii_digit() || c == '.' || c == ',' || 0 < end && c.is_whitespace() && number::is_gap(c) && is_group(after)) {
            break;
        }
        rest = after;
        end = text.len().saturating_sub(rest.len());
    }
    // A comma with room after it parts two terms; it belongs to no number.
    let cut = text.split_at_checked(end).unwrap_or((text, ""));
    match cut.0.strip_suffix(',') {
        Some(number) if cut.1.starts_with(char::is_whitespace) => text.split_at_checked(number.len()).unwrap_or(cut),
        _ => cut,
    }
}

fn is_group(text: &str) -> bool {
    let n = text.chars().take_while(char::is_ascii_digit).count();
    n == 3 && !text.get(n..).unwrap_or_default().trim_start().starts_with(SLASHES)
}

const SLASHES: [char; 3] = ['/', '\u{2044}', '\u{2215}'];

/// A fraction at the start: `5/8`, or one character of its own.
fn fraction(text: &str) -> Option<(Fraction, &str)> {
    let first = text.chars().next()?;
    if let Some(fraction) = vulgar(first) {
        return Some((fraction, text.get(first.len_utf8()..)?));
    }
    let (top, rest) = whole(text)?;
    let (bottom, rest) = whole(rest.trim_start().strip_prefix(SLASHES)?.trim_start())?;
    Some((Fraction { top, bottom }, rest))
}

fn whole(text: &str) -> Option<(u64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (digits, rest) = text.split_at_checked(end)?;
    Some((digits.parse().ok()?, rest))
}

fn vulgar(c: char) -> Option<Fraction> {
    let (top, bottom) = match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅒' => (1, 10),
        _ => return None,
    };
    Some(Fraction { top, bottom })
}

/// The unit at the start: a mark, or a word with or without its point.
fn unit(text: &str) -> (Option<String>, &str) {
    for (mark, name) in MARKS {
        if let Some(rest) = text.strip_prefix(mark) {
            return (Some(name.into()), rest);
        }
    }
    let end = text.find(|c: char| !c.is_alphabetic()).unwrap_or(text.len());
    let (word, rest) = text.split_at_checked(end).unwrap_or((text, ""));
    if word.is_empty() { (None, rest) } else { (Some(crate::quantity::in_small(word)), rest.strip_prefix('.').unwrap_or(rest)) }
}

/// Longest first: two single marks are one double.
const MARKS: [(&str, &str); 15] = [
    ("''", "in"),
    ("\u{2032}\u{2032}", "in"),
    ("\u{2019}\u{2019}", "in"),
    ("\u{2018}\u{2018}", "in"),
    ("\"", "in"),
    ("\u{2033}", "in"),
    ("\u{201d}", "in"),
    ("\u{201c}", "in"),
    ("\u{201e}", "in"),
    ("'", "ft"),
    ("\u{2032}", "ft"),
    ("\u{2019}", "ft"),
    ("\u{2018}", "ft"),
    ("%", "%"),
    ("#", "lb"),
];
