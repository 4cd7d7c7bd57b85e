//! The one spelling of a line: keys sorted and single, no spaces, whole numbers, no null, escapes only where JSON must have them.
//!
//! One pass over the bytes, because every line is read through it at every start.

use super::Tree;
use super::json::meant;
use crate::quantity::Scalar;
use std::borrow::Cow;

/// Deeper than any entry nests.
const DEEPEST: u8 = 32;
/// Room for as many members as most entries have.
const MEMBERS: usize = 8;

/// Whether the text is JSON in the one spelling we keep.
///
/// ```
/// use fivebar_core::ledger::line::is_canonical;
/// assert!(is_canonical(r#"{"a":1,"b":["x",true]}"#));
/// assert!(!is_canonical(r#"{"b":1,"a":2}"#)); // not sorted
/// assert!(!is_canonical(r#"{"a": 1}"#)); // a space
/// assert!(!is_canonical(r#"{"a":1.5}"#)); // not whole
/// ```
pub fn is_canonical(text: &str) -> bool {
    tree(text).is_some()
}

/// The tree of a text in the one spelling; `None` for any other.
pub(super) fn tree(text: &str) -> Option<Tree<'_>> {
    let mut rest = Rest { text, at: 0 };
    rest.value(DEEPEST).filter(|_| rest.at == text.len())
}

/// What is read, and how far. Each step goes on, or says `None`.
struct Rest<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Rest<'a> {
    #[inline(always)]
    fn next(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    #[inline(always)]
    fn skip(&mut self, n: usize) {
        self.at = self.at.saturating_add(n);
    }

    #[inline(always)]
    fn take(&mut self, byte: u8) -> Option<()> {
        (self.next()? == byte).then(|| self.skip(1))
    }

    fn word(&mut self, word: &str) -> Option<()> {
        self.text.get(self.at..)?.starts_with(word).then(|| self.skip(word.len()))
    }

    fn value(&mut self, deep: u8) -> Option<Tree<'a>> {
        match self.next()? {
            b'{' => self.object(deep.checked_sub(1)?),
            b'[' => self.array(deep.checked_sub(1)?),
            b'"' => self.text().and_then(said).map(|text| Tree::Scalar(Scalar::Text(text))),
            b't' => self.word("true").map(|()| Tree::Scalar(Scalar::Yes(true))),
            b'f' => self.word("false").map(|()| Tree::Scalar(Scalar::Yes(false))),
            _ => self.number(),
        }
    }

    fn object(&mut self, deep: u8) -> Option<Tree<'a>> {
        self.take(b'{')?;
        let (mut last, mut members) = (None, Vec::with_capacity(MEMBERS));
        while self.next()? != b'}' {
            if last.is_some() {
                self.take(b',')?;
            }
            // A name that needs an escape is none of ours; so names in order of bytes are in order as written.
            let (name, _) = self.text().filter(|(name, escaped)| !escaped && last < Some(*name))?;
            last = Some(name);
            self.take(b':')?;
            members.push((name, self.value(deep)?));
        }
        self.take(b'}').map(|()| Tree::Members(members))
    }

    fn array(&mut self, deep: u8) -> Option<Tree<'a>> {
        self.take(b'[')?;
        let mut items = vec![];
        if self.next()? != b']' {
            items.push(self.value(deep)?);
            while self.next()? == b',' {
                self.skip(1);
                items.push(self.value(deep)?);
            }
        }
        self.take(b']').map(|()| Tree::List(items))
    }

    /// Text between quotes, as it is written, and whether anything in it is escaped.
    fn text(&mut self) -> Option<(&'a str, bool)> {
        self.take(b'"')?;
        let (from, mut escaped) = (self.at, false);
        loop {
            let rest = self.text.as_bytes().get(self.at..)?;
            let plain = rest.iter().position(|byte| matches!(byte, b'"' | b'\\' | ..b' '))?;
            self.skip(plain);
            match self.next()? {
                b'"' => break,
                b'\\' => {
                    escaped = true;
                    self.escape()?;
                }
                _ => return None,
            }
        }
        let text = self.text.get(from..self.at)?;
        self.skip(1);
        Some((text, escaped))
    }

    /// `\" \\ \b \f \n \r \t`, and `\u00xx` in small letters for the other control characters.
    fn escape(&mut self) -> Option<()> {
        let rest = self.text.get(self.at..)?;
        let short = rest.get(..2)?;
        if matches!(short, "\\\"" | "\\\\" | "\\b" | "\\f" | "\\n" | "\\r" | "\\t") {
            self.skip(2);
            return Some(());
        }
        let code = rest.get(..6)?.strip_prefix("\\u00")?;
        self.skip(6);
        let control = u8::from_str_radix(code, 16).ok()?;
        let named = matches!(control, 8 | 9 | 10 | 12 | 13);
        (control < b' ' && !named && format!("{control:02x}") == code).then_some(())
    }

    /// A whole number as 64 bits hold it, never `-0`.
    fn number(&mut self) -> Option<Tree<'a>> {
        let negative = self.take(b'-').is_some();
        let (from, mut whole) = (self.at, 0_u64);
        while let Some(digit) = self.next().filter(u8::is_ascii_digit) {
            whole = whole.checked_mul(10)?.checked_add(u64::from(digit & 15))?;
            self.skip(1);
        }
        let digits = self.text.get(from..self.at).filter(|digits| !digits.is_empty())?;
        let plain = !digits.starts_with('0') || (digits.len() == 1 && !negative);
        let signed = if negative { 0_i64.checked_sub_unsigned(whole) } else { i64::try_from(whole).ok() };
        match signed {
            _ if !plain => None,
            Some(whole) => Some(Tree::Scalar(Scalar::Whole(whole))),
            None => (!negative).then_some(Tree::Beyond(whole)),
        }
    }
}

/// What a text between quotes means.
fn said((written, escaped): (&str, bool)) -> Option<Cow<'_, str>> {
    if escaped { meant(written) } else { Some(Cow::Borrowed(written)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Value;

    /// The slow way: read, spell again, compare.
    fn respelled(text: &str) -> bool {
        fn plain(value: &Value) -> bool {
            match value {
                Value::Null => false,
                Value::Bool(_) | Value::String(_) => true,
                Value::Number(n) => n.is_i64() || n.is_u64(),
                Value::Array(items) => items.iter().all(plain),
                Value::Object(members) => members.values().all(plain),
            }
        }
        let Ok(value) = serde_json::from_str::<Value>(text) else { return false };
        let again = value.to_string();
        plain(&value) && again == text
    }

    #[track_caller]
    fn check(text: &str, good: bool) {
        assert_eq!(is_canonical(text), good, "{text}");
        assert_eq!(respelled(text), good, "{text}");
    }

    #[test]
    fn a_line_has_one_spelling() {
        for good in [
            "{}",
            "[]",
            "0",
            "-1",
            "true",
            r#""""#,
            r#""ash""#,
            r#"{"a":[],"b":{}}"#,
            r#"[1,2,[3]]"#,
            r#"{"":1}"#,
            r#""Füße 3\" \\ \n\t\b\f\r/""#,
            r#""\u0000\u001f""#,
            "18446744073709551615",
            "-9223372036854775808",
            "\"\u{7f}\u{2028}🙂\"",
        ] {
            check(good, true);
        }
        for bad in [
            "",
            " ",
            "{",
            "null",
            "[1,]",
            "[,1]",
            "{,}",
            "{\"a\":1,}",
            "01",
            "-0",
            "-",
            "--1",
            "1-",
            "+1",
            "1.0",
            "1e3",
            "18446744073709551616",
            "{} ",
            "[1, 2]",
            r#"{"b":1,"a":1}"#,
            r#"{"a":1,"a":1}"#,
            r#"{"a":null}"#,
            r#""\/""#,
            r#""\u0041""#,
            r#""\u001F""#,
            r#""\u000a""#,
            r#""\ud800""#,
            r#""é"#,
            "\"\n\"",
            "tru",
            "truefalse",
        ] {
            check(bad, false);
        }
    }
}
