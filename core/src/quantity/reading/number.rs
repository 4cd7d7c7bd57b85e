//! One numeral: digits, a decimal sign, grouped thousands. Knows no unit and no kind.

use super::super::Decimal;
use super::Sign;
use crate::quantity::Listed;

/// The most digits before the decimal sign, and after it. Together they fit a decimal with room to multiply.
const WHOLE_MOST: usize = 15;
const PART_MOST: usize = 12;

/// A numeral read: with decimals, and with grouped thousands too where both are possible.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Numeral {
    pub decimal: Decimal,
    pub grouped: Option<Decimal>,
    /// Digits beyond the twelfth decimal were met and left out.
    pub cut: bool,
}

/// Why a text is no numeral.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoNumeral {
    Malformed,
    TooBig,
}

/// A space or an apostrophe that some languages group thousands with.
pub fn is_gap(c: char) -> bool {
    matches!(c, ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}' | '\'' | '\u{2019}')
}

/// Reads a whole text as one numeral.
pub fn numeral(text: &str, sign: Sign) -> Result<Numeral, NoNumeral> {
    let marks: Vec<char> = text.chars().filter(|c| !c.is_ascii_digit()).listed();
    let pieces: Vec<&str> = text.split(|c: char| !c.is_ascii_digit()).listed();
    match (marks.as_slice(), pieces.as_slice()) {
        ([], [whole]) => value(whole, ""),
        ([mark @ ('.' | ',')], [whole, part]) => lone(*mark, whole, part, sign),
        (marks, pieces) => grouped(marks, pieces),
    }
}

/// One mark that may be a decimal sign.
fn lone(mark: char, whole: &str, part: &str, sign: Sign) -> Result<Numeral, NoNumeral> {
    let two = (mark == ',' || sign == Sign::Comma) && are_groups(&[whole, part]);
    let decimal = value(whole, part)?;
    let grouped = if two { Some(value(&[whole, part].concat(), "")?.decimal) } else { None };
    Ok(Numeral { grouped, ..decimal })
}

/// Several marks, or one that can only group: all alike, with at most one other after them as decimal sign.
fn grouped(marks: &[char], pieces: &[&str]) -> Result<Numeral, NoNumeral> {
    let (Some((first, _)), Some((last, before))) = (marks.split_first(), marks.split_last()) else { return Err(NoNumeral::Malformed) };
    let (groups, part) =
        if last == first { (pieces, "") } else { pieces.split_last().map_or((pieces, ""), |(part, groups)| (groups, *part)) };
    let may_group = *first == '.' || *first == ',' || is_gap(*first);
    let may_part = last == first || *last == '.' || *last == ',';
    if may_group && may_part && before.iter().all(|mark| mark == first) && are_groups(groups) {
        value(&groups.concat(), part)
    } else {
        Err(NoNumeral::Malformed)
    }
}

/// One to three digits, none a leading nought, then threes.
fn are_groups(pieces: &[&str]) -> bool {
    pieces
        .split_first()
        .is_some_and(|(first, rest)| (1..=3).contains(&first.len()) && !first.starts_with('0') && rest.iter().all(|piece| piece.len() == 3))
}

fn value(whole: &str, part: &str) -> Result<Numeral, NoNumeral> {
    if whole.is_empty() && part.is_empty() {
        return Err(NoNumeral::Malformed);
    }
    let (whole, part) = (whole.trim_start_matches('0'), part.trim_end_matches('0'));
    if WHOLE_MOST < whole.len() {
        return Err(NoNumeral::TooBig);
    }
    let kept = part.get(..PART_MOST).unwrap_or(part);
    let decimal = Decimal::from_str_exact(&format!("0{whole}.{kept}0")).map_err(|_| NoNumeral::Malformed)?.normalize();
    Ok(Numeral { decimal, grouped: None, cut: kept.len() < part.len() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, sign: Sign, decimal: &str, grouped: Option<&str>) {
        let read = |t: &str| Decimal::from_str_exact(t).unwrap();
        let expected = Numeral { decimal: read(decimal), grouped: grouped.map(read), cut: false };
        assert_eq!(numeral(text, sign), Ok(expected), "{text}");
    }

    #[test]
    fn one_numeral_by_either_sign() {
        for sign in [Sign::Point, Sign::Comma] {
            for (text, decimal) in [
                ("0", "0"),
                ("47", "47"),
                ("007", "7"),
                ("3.5", "3.5"),
                ("3,5", "3.5"),
                (".5", "0.5"),
                (",5", "0.5"),
                ("3.", "3"),
                ("3,", "3"),
                ("1,25", "1.25"),
                ("1,2500", "1.25"),
                ("0,125", "0.125"),
                ("0.125", "0.125"),
                ("1250,125", "1250.125"),
                ("1,250.50", "1250.5"),
                ("1.250,50", "1250.5"),
                ("1,234,567", "1234567"),
                ("1.234.567", "1234567"),
                ("1 250", "1250"),
                ("1\u{202f}250,5", "1250.5"),
                ("1'250.50", "1250.5"),
                ("12\u{2019}345\u{2019}678", "12345678"),
                ("1.50000000000000000000", "1.5"),
            ] {
                check(text, sign, decimal, None);
            }
        }
    }

    #[test]
    fn what_could_be_two_numbers_is_both() {
        check("1,250", Sign::Point, "1.25", Some("1250"));
        check("1,250", Sign::Comma, "1.25", Some("1250"));
        check("1.250", Sign::Comma, "1.25", Some("1250"));
        check("1.250", Sign::Point, "1.25", None);
        check("999,999", Sign::Point, "999.999", Some("999999"));
    }

    #[test]
    fn the_rest_is_no_numeral() {
        for text in [
            "",
            ".",
            ",",
            "1..2",
            "1,2,3",
            "1.2.3",
            "12,34,567",
            "1,2345,678",
            "1 2",
            "1 25",
            "0,250,000",
            "1.2,3.4",
            "1e3",
            "1-2",
            "½",
            "١",
        ] {
            assert_eq!(numeral(text, Sign::Point), Err(NoNumeral::Malformed), "{text}");
        }
        assert_eq!(numeral("1234567890123456", Sign::Point), Err(NoNumeral::TooBig));
        assert_eq!(numeral("0.1234567890123", Sign::Point).map(|n| n.cut), Ok(true));
    }
}
