//! A line of a story as words: plain ones, texts in quotes, numbers. What is after a `#` is a remark.

use crate::quantity::{Count, Currency, Decimal, Key, Money, Span};

/// Where a line left the grammar: the word met (none at the end), and what was expected.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    pub met: Option<String>,
    pub expected: &'static str,
}

/// What a reading gives.
pub type Read<T> = Result<T, Unread>;

/// The words of a line that are still to be read.
pub struct Words<'a> {
    words: Vec<&'a str>,
    at: usize,
}

impl<'a> Words<'a> {
    pub fn of(line: &'a str) -> Words<'a> {
        let mut words = vec![];
        let mut rest = line.trim_start();
        while !rest.is_empty() && !rest.starts_with('#') {
            let quoted = rest.strip_prefix('"').and_then(|text| text.find('"')).and_then(|end| end.checked_add(2));
            let end = quoted.or_else(|| rest.find(char::is_whitespace)).unwrap_or(rest.len());
            let (word, after) = rest.split_at_checked(end).unwrap_or((rest, ""));
            words.push(word);
            rest = after.trim_start();
        }
        Words { words, at: 0 }
    }

    pub fn peek(&self) -> Option<&'a str> {
        self.words.get(self.at).copied()
    }

    pub fn is_done(&self) -> bool {
        self.peek().is_none()
    }

    fn next(&mut self) -> Option<&'a str> {
        let word = self.peek();
        self.at = self.at.saturating_add(1);
        word
    }

    /// Whether the word after the next is this one; nothing is read.
    pub fn after(&self, word: &str) -> bool {
        self.at.checked_add(1).and_then(|at| self.words.get(at)) == Some(&word)
    }

    /// Whether the next word is this one; it is read then.
    pub fn has(&mut self, word: &str) -> bool {
        let there = self.peek() == Some(word);
        if there {
            self.next();
        }
        there
    }

    pub fn expect(&mut self, word: &'static str) -> Read<()> {
        if self.has(word) { Ok(()) } else { self.no(word) }
    }

    pub fn no<T>(&self, expected: &'static str) -> Read<T> {
        Err(Unread { met: self.peek().map(str::to_owned), expected })
    }

    /// The next word through `make`.
    pub fn take<T>(&mut self, expected: &'static str, make: impl Fn(&'a str) -> Option<T>) -> Read<T> {
        match self.peek().and_then(make) {
            Some(made) => {
                self.next();
                Ok(made)
            }
            None => self.no(expected),
        }
    }

    /// The next word through `make`, if it is such.
    pub fn maybe<T>(&mut self, make: impl Fn(&'a str) -> Option<T>) -> Option<T> {
        self.take("", make).ok()
    }

    pub fn word(&mut self, expected: &'static str) -> Read<&'a str> {
        self.take(expected, Some)
    }

    /// A text in quotes.
    pub fn text(&mut self) -> Read<String> {
        self.take("a text in quotes", quoted)
    }

    pub fn maybe_text(&mut self) -> Option<String> {
        self.maybe(quoted)
    }

    pub fn number(&mut self) -> Read<Decimal> {
        self.take("a number", number)
    }

    pub fn count(&mut self) -> Read<Count> {
        self.take("a whole number", |word| word.parse().ok())
    }

    pub fn key(&mut self, expected: &'static str) -> Read<Key> {
        self.take(expected, Key::read)
    }

    pub fn money(&mut self, currency: Currency) -> Read<Money> {
        self.take("a sum of money", |word| number(word).and_then(|amount| Money::whole(amount.normalize(), currency)))
    }

    /// Minutes, after which `min` may stand.
    pub fn minutes(&mut self) -> Read<Span> {
        let minutes = self.take("minutes", |word| word.parse().ok())?;
        self.has("min");
        Ok(Span::minutes(minutes))
    }

    /// All is read.
    pub fn done(&self) -> Read<()> {
        if self.is_done() { Ok(()) } else { self.no("the end of the line") }
    }
}

fn quoted(word: &str) -> Option<String> {
    word.strip_prefix('"').and_then(|text| text.strip_suffix('"')).map(str::to_owned)
}

/// Digits with at most one point.
pub fn number(word: &str) -> Option<Decimal> {
    let plain = word.bytes().all(|b| b.is_ascii_digit() || b == b'.') && word.bytes().next().is_some_and(|b| b.is_ascii_digit());
    plain.then(|| Decimal::from_str_exact(word).ok()).flatten()
}
