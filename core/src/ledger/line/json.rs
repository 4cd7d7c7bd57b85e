//! JSON as others may spell it: any white space, any order of members. Values are handed on as they are written.
//!
//! Our own lines are read by `canonical`, which knows one spelling only. Nesting costs no stack, however deep it is.

use std::borrow::Cow;

/// Why a text could not be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    /// It ends before its value does.
    CutShort,
    NotJson,
    /// JSON, but of another shape.
    Other,
}

type Read<T> = Result<T, Broken>;

/// A member as it is written: its name, and the bytes of its value.
pub type Member<'a> = (Cow<'a, str>, &'a str);

/// The members of an object, each name once.
///
/// # Errors
/// No JSON, no object, or a name that comes twice.
pub fn members(text: &str) -> Read<Vec<Member<'_>>> {
    let mut names = crate::quantity::Set::new();
    let mut found = vec![];
    each(text, [b'{', b'}'], |rest| {
        let name = meant(rest.name()?).ok_or(Broken::NotJson)?;
        let value = rest.one()?;
        found.push((name.clone(), value));
        if names.insert(name) { Ok(()) } else { Err(Broken::Other) }
    })?;
    Ok(found)
}

/// The values of a list.
///
/// # Errors
/// No JSON, or no list.
pub fn items(text: &str) -> Read<Vec<&str>> {
    let mut found = vec![];
    each(text, [b'[', b']'], |rest| {
        found.push(rest.one()?);
        Ok(())
    })?;
    Ok(found)
}

/// What a text between quotes says.
///
/// # Errors
/// No JSON, or no text.
pub fn text(written: &str) -> Read<Cow<'_, str>> {
    let mut rest = Rest(written);
    if rest.first()? != b'"' {
        return Err(Broken::Other);
    }
    let inside = rest.text()?;
    rest.end()?;
    meant(inside).ok_or(Broken::NotJson)
}

/// The bytes of a member's value.
pub fn member<'a>(members: &[Member<'a>], name: &str) -> Option<&'a str> {
    members.iter().find(|(own, _)| own == name).map(|(_, written)| *written)
}

/// A member that is a whole number of 32 bits.
pub fn whole(members: &[Member<'_>], name: &str) -> Option<u32> {
    member(members, name).and_then(|written| written.parse().ok())
}

/// Goes through the parts between two brackets; nothing may follow them.
fn each<'a>(text: &'a str, [open, close]: [u8; 2], mut part: impl FnMut(&mut Rest<'a>) -> Read<()>) -> Read<()> {
    let mut rest = Rest(text);
    rest.space();
    if rest.first()? != open {
        rest.one()?;
        return rest.end().and(Err(Broken::Other));
    }
    rest.step();
    rest.space();
    if rest.first()? == close {
        rest.step();
        return rest.end();
    }
    loop {
        part(&mut rest)?;
        match rest.mark()? {
            b',' => {}
            mark if mark == close => return rest.end(),
            _ => return Err(Broken::NotJson),
        }
    }
}

/// What is still to be read.
struct Rest<'a>(&'a str);

impl<'a> Rest<'a> {
    fn peek(&self) -> Option<u8> {
        self.0.as_bytes().first().copied()
    }

    fn first(&self) -> Read<u8> {
        self.peek().ok_or(Broken::CutShort)
    }

    fn step(&mut self) {
        self.0 = self.0.get(1..).unwrap_or_default();
    }

    fn space(&mut self) {
        self.0 = self.0.trim_start_matches([' ', '\n', '\r', '\t']);
    }

    fn end(&mut self) -> Read<()> {
        self.space();
        if self.0.is_empty() { Ok(()) } else { Err(Broken::NotJson) }
    }

    /// The next sign after white space: a comma, a colon or a bracket.
    fn mark(&mut self) -> Read<u8> {
        self.space();
        let mark = self.first()?;
        if !mark.is_ascii() {
            return Err(Broken::NotJson);
        }
        self.step();
        Ok(mark)
    }

    /// What was read since `before`.
    fn since(&self, before: &'a str) -> &'a str {
        before.len().checked_sub(self.0.len()).and_then(|n| before.get(..n)).unwrap_or_default()
    }

    /// The bytes of one value.
    fn one(&mut self) -> Read<&'a str> {
        self.space();
        let before = self.0;
        self.value()?;
        Ok(self.since(before))
    }

    fn value(&mut self) -> Read<()> {
        let mut open = vec![]; // the brackets that are still to be closed
        loop {
            self.space();
            if !self.opens(&mut open)? && self.closes(&mut open)? {
                return Ok(());
            }
        }
    }

    /// Reads a plain value, or the opening of a list or object; whether a value inside is due.
    fn opens(&mut self, open: &mut Vec<u8>) -> Read<bool> {
        let close = match self.first()? {
            b'{' => b'}',
            b'[' => b']',
            _ => return self.plain().map(|()| false),
        };
        self.step();
        self.space();
        if self.first()? == close {
            self.step();
            return Ok(false);
        }
        open.push(close);
        if close == b'}' {
            self.name()?;
        }
        Ok(true)
    }

    /// After a value: closes what ends here; whether all is closed.
    fn closes(&mut self, open: &mut Vec<u8>) -> Read<bool> {
        while let Some(close) = open.last().copied() {
            match self.mark()? {
                b',' if close == b'}' => return self.name().map(|_| false),
                b',' => return Ok(false),
                mark if mark == close => drop(open.pop()),
                _ => return Err(Broken::NotJson),
            }
        }
        Ok(true)
    }

    fn plain(&mut self) -> Read<()> {
        match self.first()? {
            b'"' => self.text().map(drop),
            b't' => self.word("true"),
            b'f' => self.word("false"),
            b'n' => self.word("null"),
            _ => self.number(),
        }
    }

    fn word(&mut self, word: &str) -> Read<()> {
        match self.0.strip_prefix(word) {
            Some(rest) => self.0 = rest,
            None if word.starts_with(self.0) => return Err(Broken::CutShort),
            None => return Err(Broken::NotJson),
        }
        Ok(())
    }

    fn number(&mut self) -> Read<()> {
        if self.peek() == Some(b'-') {
            self.step();
        }
        if self.first()? == b'0' {
            self.step()
        } else {
            self.digits()?
        }
        if self.peek() == Some(b'.') {
            self.step();
            self.digits()?;
        }
        if matches!(self.peek(), Some(b'e' | b'E')) {
            self.step();
            if matches!(self.peek(), Some(b'+' | b'-')) {
                self.step();
            }
            self.digits()?;
        }
        Ok(())
    }

    fn digits(&mut self) -> Read<()> {
        if !self.first()?.is_ascii_digit() {
            return Err(Broken::NotJson);
        }
        self.0 = self.0.trim_start_matches(|letter: char| letter.is_ascii_digit());
        Ok(())
    }

    /// The name of a member, with its colon.
    fn name(&mut self) -> Read<&'a str> {
        self.space();
        if self.first()? != b'"' {
            return Err(Broken::NotJson);
        }
        let name = self.text()?;
        if self.mark()? == b':' { Ok(name) } else { Err(Broken::NotJson) }
    }

    /// Text between quotes, as it is written.
    fn text(&mut self) -> Read<&'a str> {
        self.step();
        let before = self.0;
        loop {
            let plain = self.0.bytes().position(|b| b == b'"' || b == b'\\' || b < b' ').ok_or(Broken::CutShort)?;
            self.0 = self.0.get(plain..).unwrap_or_default();
            match self.first()? {
                b'"' => break,
                b'\\' => self.escape()?,
                _ => return Err(Broken::NotJson),
            }
        }
        let inside = self.since(before);
        self.step();
        Ok(inside)
    }

    fn escape(&mut self) -> Read<()> {
        self.step();
        let letter = self.first()?;
        if !matches!(letter, b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't' | b'u') {
            return Err(Broken::NotJson);
        }
        self.step();
        let digits = if letter == b'u' { 4 } else { 0 };
        for _ in 0..digits {
            if !self.first()?.is_ascii_hexdigit() {
                return Err(Broken::NotJson);
            }
            self.step();
        }
        Ok(())
    }
}

/// What a text between quotes means; `None` where half a pair of code units stands alone.
pub(super) fn meant(written: &str) -> Option<Cow<'_, str>> {
    if !written.contains('\\') {
        return Some(Cow::Borrowed(written));
    }
    let (mut text, mut rest) = (String::new(), written);
    while let Some((plain, escape)) = rest.split_once('\\') {
        text.push_str(plain);
        let (letter, after) = letter(escape)?;
        text.push(letter);
        rest = after;
    }
    text.push_str(rest);
    Some(Cow::Owned(text))
}

/// The letter an escape stands for, and what comes after it.
fn letter(escape: &str) -> Option<(char, &str)> {
    let plain = match escape.bytes().next()? {
        b'b' => '\u{8}',
        b'f' => '\u{c}',
        b'n' => '\n',
        b'r' => '\r',
        b't' => '\t',
        b'u' => return unit(escape).and_then(pair),
        other => char::from(other),
    };
    Some((plain, escape.get(1..)?))
}

/// A code unit after `u`.
fn unit(escape: &str) -> Option<(u32, &str)> {
    let (code, after) = escape.strip_prefix('u')?.split_at_checked(4)?;
    Some((u32::from_str_radix(code, 16).ok()?, after))
}

/// A code unit alone, or the first of two (RFC 8259, section 7).
fn pair((high, after): (u32, &str)) -> Option<(char, &str)> {
    if let Some(alone) = char::from_u32(high) {
        return Some((alone, after));
    }
    let (low, after) = unit(after.strip_prefix('\\')?)?;
    let both = char::decode_utf16([u16::try_from(high).ok()?, u16::try_from(low).ok()?]).next()?;
    Some((both.ok()?, after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Value;
    use serde_json::error::Category;

    /// The measure is a reader that many use.
    fn theirs(text: &str) -> Result<Value, Broken> {
        serde_json::from_str(text).map_err(|error| if error.classify() == Category::Eof { Broken::CutShort } else { Broken::NotJson })
    }

    #[track_caller]
    fn check(text: &str) {
        let members = members(text).map(|members| members.len());
        let said = match theirs(text) {
            Ok(Value::Object(members)) => Ok(members.len()),
            Ok(_) => Err(Broken::Other),
            Err(broken) => Err(broken),
        };
        assert_eq!(members, said, "{text}");
    }

    #[test]
    fn json_is_told_from_what_is_none() {
        for value in [
            r#"{}"#,
            r#"[]"#,
            r#"[ ]"#,
            r#"{ }"#,
            r#"[[],{},[{"x":[1 , 2]}]]"#,
            r#""a\/b\u0041\ud83d\ude42""#,
            "0",
            "-0",
            "10.5e-3",
            "1E+2",
            "true",
            "false",
            "null",
            "nul",
            "nulls",
            "01",
            "1.",
            "1.x",
            "-x",
            "+1",
            "1e",
            ".5",
            "{,}",
            "[,]",
            "[1,]",
            r#"{"a":1,}"#,
            r#"{"a"}"#,
            r#"{a:1}"#,
            r#"{"a":1 "b":2}"#,
            "[1 2]",
            "[1}",
            r#"{"a":1]"#,
            r#""\x""#,
            r#""\u00g0""#,
            "\"\n\"",
            "\u{a0}1",
            "é",
            "[1]]",
            "tru",
            "\"",
            "[",
            "{",
        ] {
            check(&format!("{{ \"m\" :\t{value} }}\r\n"));
            check(value);
        }
    }

    #[test]
    fn what_is_cut_short_is_told() {
        let whole = r#"{"a":[1,{"b":"c\u0041\n"},null,true],"d":{}}"#;
        for end in 0..whole.len() {
            check(whole.get(..end).unwrap());
        }
    }

    #[test]
    fn text_means_what_it_means_to_others() {
        for written in
            [r#""ash""#, r#""\"\\\/\b\f\n\r\t\u00e9\ud83d\ude42é""#, r#""\ud83d""#, r#""\ud83dx""#, r#""\ud83d\u0041""#, r#""\ude42""#]
        {
            assert_eq!(text(written).map(Cow::into_owned), serde_json::from_str(written).map_err(|_| Broken::NotJson), "{written}");
        }
        assert_eq!(text("1"), Err(Broken::Other));
    }

    #[test]
    fn values_keep_their_bytes() {
        assert_eq!(items("[ 1 , {\"a\" : [ ] } ]"), Ok(vec!["1", "{\"a\" : [ ] }"]));
        assert_eq!(members(r#"{"a":1,"\u0061":2}"#), Err(Broken::Other), "a name comes once");
        let deep = "[".repeat(100_000) + &"]".repeat(100_000);
        assert_eq!(items(&format!("[{deep}]")), Ok(vec![&*deep]));
    }
}
