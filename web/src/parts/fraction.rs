//! Inch fractions built by hand. Words write `13⁄16` with the fraction slash; here it is set and said.
use crate::parts::ink::Text;
use crate::view::{El, el};
use crate::words::en::parts as words;

const SLASH: char = '⁄';

/// An element with the text in it; every `a⁄b` is built as a fraction, close to the whole number before it.
pub fn worded<M>(tag: &'static str, class: &'static str, text: impl Into<Text>) -> El<M> {
    let text = text.into();
    if !text.contains(SLASH) {
        return el(tag, class).text(text);
    }
    el(tag, class).kids(pieces(&text).into_iter().map(|piece| match piece {
        Piece::Said(words) => el("span", "").text(words),
        Piece::Fraction { over, under, after_whole } => built(over, under, after_whole),
    }))
}

/// One fraction. `after_whole`: it follows a whole number and is said with "and".
pub fn built<M>(over: u32, under: u32, after_whole: bool) -> El<M> {
    let said = if after_whole { words::and_fraction(over, under) } else { words::fraction(over, under) };
    el("i", "fr")
        .attr("role", "img")
        .attr("aria-label", said)
        .kid(el("b", "").text(over.to_string()))
        .kid(el("span", "").text("⁄"))
        .kid(el("u", "").text(under.to_string()))
}

#[derive(Debug, PartialEq)]
enum Piece {
    Said(String),
    Fraction { over: u32, under: u32, after_whole: bool },
}

/// Splits at each fraction; a space, or the invisible plus, between a whole number and its fraction is closed up.
fn pieces(text: &str) -> Vec<Piece> {
    let (mut out, mut rest) = (vec![], text);
    while let Some((before, after)) = rest.split_once(SLASH) {
        let head = before.trim_end_matches(|c: char| c.is_ascii_digit());
        let tail = after.trim_start_matches(|c: char| c.is_ascii_digit());
        let (over, under) = (before[head.len()..].parse(), after[..after.len() - tail.len()].parse());
        let (Ok(over), Ok(under)) = (over, under) else { break };
        let closed = head.trim_end_matches([' ', '\u{a0}', '\u{2064}']);
        let after_whole = closed.len() < head.len() && closed.ends_with(|c: char| c.is_ascii_digit());
        let said = if after_whole { closed } else { head };
        if !said.is_empty() {
            out.push(Piece::Said(said.to_owned()));
        }
        out.push(Piece::Fraction { over, under, after_whole });
        rest = tail;
    }
    if !rest.is_empty() {
        out.push(Piece::Said(rest.to_owned()));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_are_found_in_what_is_said() {
        let said = |t: &str| Piece::Said(t.to_owned());
        let part = |over, under, after_whole| Piece::Fraction { over, under, after_whole };
        let table = [
            ("1 1⁄16 × 2¼ in", vec![said("1"), part(1, 16, true), said(" × 2¼ in")]),
            ("13⁄16 × 3 × 11 in", vec![part(13, 16, false), said(" × 3 × 11 in")]),
            ("may mean 1\u{2064}1⁄8.", vec![said("may mean 1"), part(1, 8, true), said(".")]),
            ("about 5⁄8", vec![said("about "), part(5, 8, false)]),
            ("and⁄or", vec![said("and⁄or")]),
        ];
        for (text, want) in table {
            assert_eq!(pieces(text), want, "{text}");
        }
    }

    #[test]
    fn a_fraction_is_heard_as_it_is_said() {
        let shown = worded::<()>("span", "sz", "1 13⁄16 in").html();
        assert!(shown.contains(r#"aria-label="and 13 sixteenths""#), "{shown}");
    }
}
