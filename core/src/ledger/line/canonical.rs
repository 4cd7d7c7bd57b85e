//! The one spelling of a line: keys sorted and single, no spaces, whole numbers, no null, escapes only where JSON must have them.
//!
//! One pass over the bytes, because every line is read through it at every start.

use super::Tree;
use super::json::meant;
use crate::quantity::Scalar;
use std::borrow::Cow;

/// Deeper than any entry nests.
const DEEPEST: u8 = 32;

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
    let mut rest = Rest(text);
    rest.value(DEEPEST).filter(|_| rest.0.is_empty())
}

/// What is still to be read. Each step takes something off, or says `None`.
struct Rest<'a>(&'a str);

impl<'a> Rest<'a> {
    fn next(&self) -> Option<u8> {
        self.0.as_bytes().first().copied()
    }

    fn take(&mut self, start: &str) -> Option<()> {
        self.0 = self.0.strip_prefix(start)?;
        Some(())
    }

    fn skip(&mut self, n: usize) -> Option<&'a str> {
        let (taken, rest) = self.0.split_at_checked(n)?;
        self.0 = rest;
        Some(taken)
    }

    fn value(&mut self, deep: u8) -> Option<Tree<'a>> {
        match self.next()? {
            b'{' => self.object(deep.checked_sub(1)?),
            b'[' => self.array(deep.checked_sub(1)?),
            b'"' => self.text().and_then(meant).map(|text| Tree::Scalar(Scalar::Text(text))),
            b't' => self.take("true").map(|()| Tree::Scalar(Scalar::Yes(true))),
            b'f' => self.take("false").map(|()| Tree::Scalar(Scalar::Yes(false))),
            _ => self.number(),
        }
    }

    fn object(&mut self, deep: u8) -> Option<Tree<'a>> {
        self.take("{")?;
        let (mut last, mut members) = (None, vec![]);
        while self.next()? != b'}' {
            if last.is_some() {
                self.take(",")?;
            }
            // A name that needs an escape is none of ours; so names in order of bytes are in order as written.
            let name = self.text().filter(|name| !name.contains('\\') && last < Some(*name))?;
            last = Some(name);
            self.take(":")?;
            members.push((Cow::Borrowed(name), self.value(deep)?));
        }
        self.take("}").map(|()| Tree::Members(members))
    }

    fn array(&mut self, deep: u8) -> Option<Tree<'a>> {
        self.take("[")?;
        let mut items = vec![];
        if self.next()? != b']' {
            items.push(self.value(deep)?);
            while self.next()? == b',' {
                self.take(",")?;
                items.push(self.value(deep)?);
            }
        }
        self.take("]").map(|()| Tree::List(items))
    }

    /// Text between quotes, as it is written.
    fn text(&mut self) -> Option<&'a str> {
        self.take("\"")?;
        let all = self.0;
        loop {
            let plain = self.0.bytes().position(|b| b == b'"' || b == b'\\' || b < b' ')?;
            self.skip(plain)?;
            if self.next()? == b'"' {
                break;
            }
            self.escape()?;
        }
        let text = all.get(..all.len().checked_sub(self.0.len())?)?;
        self.take("\"")?;
        Some(text)
    }

    /// `\" \\ \b \f \n \r \t`, and `\u00xx` in small letters for the other control characters.
    fn escape(&mut self) -> Option<()> {
        let short = self.0.get(..2)?;
        if matches!(short, "\\\"" | "\\\\" | "\\b" | "\\f" | "\\n" | "\\r" | "\\t") {
            return self.skip(2).map(drop);
        }
        let code = self.skip(6)?.strip_prefix("\\u00")?;
        let control = u8::from_str_radix(code, 16).ok()?;
        let named = matches!(control, 8 | 9 | 10 | 12 | 13);
        (control < b' ' && !named && format!("{control:02x}") == code).then_some(())
    }

    /// A whole number as 64 bits hold it, never `-0`.
    fn number(&mut self) -> Option<Tree<'a>> {
        let end = self.0.bytes().position(|b| !b.is_ascii_digit() && b != b'-').unwrap_or(self.0.len());
        let text = self.skip(end)?;
        let digits = text.strip_prefix('-').unwrap_or(text);
        let whole = || text.parse().map(|whole| Tree::Scalar(Scalar::Whole(whole))).or_else(|_| text.parse().map(Tree::Beyond)).ok();
        let plain = (digits == "0" || !digits.starts_with('0')) && text != "-0";
        plain.then(whole).flatten()
    }
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
