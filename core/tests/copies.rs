//! Copies: written and read to the byte, brought in all or nothing, and never believed when damaged.

mod museum_piece;

use fivebar_core::ledger::kind::book::Forgotten;
use fivebar_core::ledger::line::document::{self, DocumentTrouble, Photo, Photos};
use fivebar_core::ledger::merge::{Coming, bring_in};
use fivebar_core::ledger::people::{People, Person};
use fivebar_core::ledger::{Book, Entry, line};
use fivebar_core::quantity::{Id, Moment, Offset, Wall};
use museum_piece::{entries, kinds};
use std::time::{Duration, Instant};

fn made() -> Wall {
    Wall::new(Moment::at(1_779_430_440_000), Offset::minutes(120).unwrap())
}

fn book() -> Book {
    let mut book = Book::of_lines(kinds().lines());
    book.add_line(r#"{"d":{"from":2},"id":"x","k":"Dreamt","v":2}"#); // from a newer version
    book.add_line("half a li"); // damaged
    book
}

fn somebody(n: u8) -> (Id, Person) {
    (Id::new(made().at, [n; 10]), Person { name: format!("Ada \"{n}\""), phone: Some("+1 555 0100".into()), place: None })
}

fn photos() -> Photos {
    Photos::from([(somebody(9).0, Photo { kind: "image/jpeg".into(), sha256: "00".repeat(32), base64: "AAAA".into() })])
}

fn bring(book: &Book, text: &str) -> Result<Coming, DocumentTrouble> {
    bring_in(book, &People::new(), &document::read(text)?)
}

#[test]
fn inv10_a_copy_brought_in_is_the_same_book() {
    let (book, people) = (book(), People::from([somebody(1), somebody(2)]));
    let text = document::write(&book, &people, Some(&photos()), made());
    let coming = bring(&Book::default(), &text).unwrap();
    assert_eq!(coming.book, book);
    assert!(coming.book.lines().eq(book.lines()));
    assert_eq!((&coming.people, &coming.photos, coming.made), (&people, &photos(), made()));
    assert_eq!(document::write(&coming.book, &coming.people, Some(&coming.photos), made()), text);
    assert_eq!(Book::of_lines(coming.fresh.iter().map(String::as_str)), book);
}

#[test]
fn a_copy_is_this_to_the_byte() {
    let few = Book::of_lines(kinds().lines().take(2));
    let (id, person) = somebody(1);
    let text = document::write(&few, &People::from([(id, person)]), None, made());
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[0], r#"{"fivebar":1,"made":"2026-05-22T08:14:00.000+02:00","entries":["#);
    assert_eq!(lines[1], format!("{},", kinds().lines().next().unwrap()));
    assert_eq!(lines[2], kinds().lines().nth(1).unwrap());
    assert_eq!(lines[3], r#"],"people":{"#);
    assert_eq!(lines[4], format!(r#""{id}":{{"name":"Ada \"1\"","phone":"+1 555 0100"}}"#));
    assert!(lines[5].starts_with(r#"},"check":""#) && lines[5].ends_with("\"}"));
    assert!(text.ends_with("}\n"));
}

#[test]
fn a_copy_without_a_check_and_with_other_line_ends_is_read() {
    let text = document::write(&book(), &People::new(), None, made());
    let windows = text.replace('\n', "\r\n");
    assert_eq!(bring(&Book::default(), &format!("\u{feff}{windows}")).unwrap().book, book());
    let end = text.rfind(",\"check\"").unwrap();
    assert_eq!(bring(&Book::default(), &format!("{}}}", &text[..end])).unwrap().book, book());
}

#[test]
fn inv11_what_a_copy_adds_is_shown_first() {
    let lines = kinds();
    let here = Book::of_lines(lines.lines().filter(|line| !line.contains("MoneySpent")));
    let text = document::write(&book(), &People::new(), None, made());
    let coming = bring(&here, &text).unwrap();
    let lines = coming.lines;
    assert_eq!((lines.known, lines.new, lines.newer, lines.damaged), (here.len(), 5, 1, 1));
    assert_eq!(coming.fresh.len(), 7);
    assert!(coming.here.spent != coming.then.spent && coming.here.taken == coming.then.taken);
    let again = bring(&coming.book, &text).unwrap();
    assert_eq!((again.lines.known, again.fresh.len(), &again.here), (book().lines().count(), 0, &again.then));
}

#[test]
fn an_old_copy_brings_no_forgotten_name_back() {
    let ((gone, person), (stays, other)) = (somebody(1), somebody(2));
    let old = document::write(&Book::default(), &People::from([(gone, person), (stays, other.clone())]), None, made());
    let forgotten = Entry { fact: Forgotten { person: gone }.into(), ..entries().remove(0) };
    let mut book = Book::default();
    book.add(&forgotten);
    assert_eq!(bring(&book, &old).unwrap().people, People::from([(stays, other.clone())]));
    assert!(!document::write(&book, &People::from([somebody(1), (stays, other)]), None, made()).contains("Ada \\\"1"));
}

#[track_caller]
fn check(text: &str, trouble: DocumentTrouble) {
    assert_eq!(document::read(text).unwrap_err(), trouble, "{text}");
}

#[test]
fn a_text_that_is_no_copy_says_why() {
    use DocumentTrouble::{Altered, CutShort, Newer, NotACopy, NotJson};
    check("", NotJson);
    check(" \n", NotJson);
    check("hello", NotJson);
    check("{\"fivebar\":1,\"made\":\"2026", CutShort);
    check("[]", NotACopy);
    check("{}", NotACopy);
    check("{\"fivebar\":\"1\"}", NotACopy);
    check("{\"fivebar\":1}", NotACopy);
    check("{\"fivebar\":1,\"made\":\"today\",\"entries\":[]}", NotACopy);
    check("{\"fivebar\":1,\"made\":\"2026-05-22T08:14:00Z\",\"entries\":[],\"more\":1}", NotACopy);
    check("{\"fivebar\":2,\"made\":\"2026-05-22T08:14:00Z\",\"entries\":[],\"more\":1}", Newer { version: 2, ours: 1 });
    check("{\"fivebar\":0,\"made\":\"2026-05-22T08:14:00Z\",\"entries\":[]}", Altered);
    check("{\"fivebar\":1,\"made\":\"2026-05-22T08:14:00Z\",\"entries\":[],\"check\":\"00000001\"}", Altered);
    assert!(document::read("{\"fivebar\":1,\"made\":\"2026-05-22T08:14:00Z\",\"entries\":[]}").is_ok());
}

/// A small seeded generator (SplitMix64): the same damage at every run.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, most: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(most.max(1)).unwrap()).unwrap()
    }

    /// The text with one accident: a byte changed, a stretch lost, doubled or moved, the end cut off.
    fn damage(&mut self, text: &str) -> String {
        let mut bytes = text.as_bytes().to_vec();
        let (at, long) = (self.below(bytes.len()), self.below(40) + 1);
        let to = (at + long).min(bytes.len());
        match self.below(6) {
            0 => bytes.truncate(at),
            1 => drop(bytes.drain(at..to)),
            2 => {
                let twice = bytes[at..to].to_vec();
                bytes.splice(at..at, twice);
            }
            3 => bytes.rotate_left(at),
            4 if !bytes.is_empty() => bytes[at] = bytes[at].wrapping_add(1),
            _ if !bytes.is_empty() => bytes[at] ^= 1 << self.below(7),
            _ => {}
        }
        String::from_utf8_lossy(&bytes).into_owned()
    }
}

/// Whether a damaged text still holds just what was written: an accident may hit a line end between two lines.
fn harmless(text: &str, damaged: &str) -> bool {
    document::read(damaged).ok() == document::read(text).ok()
}

#[test]
fn inv11_two_hundred_damaged_copies_change_nothing() {
    let here = Book::of_lines(kinds().lines().step_by(2));
    let text = document::write(&book(), &People::from([somebody(1)]), Some(&photos()), made());
    let mut chance = Chance(200);
    let mut tried = 0;
    while tried < 200 {
        let damaged = chance.damage(&text);
        if harmless(&text, &damaged) {
            continue;
        }
        tried += 1;
        if let Ok(coming) = bring(&here, &damaged) {
            panic!("believed: {:?}\n{damaged}", coming.lines);
        }
    }
}

/// Seconds of chance: 2, or as FIVEBAR_FUZZ_SECONDS says.
fn seconds() -> Duration {
    let said = std::env::var("FIVEBAR_FUZZ_SECONDS").ok().and_then(|said| said.parse().ok());
    Duration::from_secs(said.unwrap_or(2))
}

#[test]
fn inv10_damage_is_never_lost_and_never_a_panic() {
    let lines: Vec<String> = kinds().lines().map(str::to_owned).collect();
    let text = document::write(&book(), &People::from([somebody(1)]), None, made());
    let unchecked = format!("{}}}", &text[..text.rfind(",\"check\"").unwrap()]);
    let (mut chance, end) = (Chance(1), Instant::now() + seconds());
    while Instant::now() < end {
        let picked = &lines[chance.below(lines.len())];
        let damaged = (0..chance.below(4)).fold(picked.clone(), |line, _| chance.damage(&line));
        let mut book = Book::of_lines([picked.as_str()]);
        book.add_line(&damaged);
        assert!(book.lines().any(|line| line == damaged), "lost: {damaged}");
        if let line::Line::Known(entry) = line::read(&damaged) {
            assert_eq!(line::read(&line::write(&entry)), line::Line::Known(entry));
        }
        let damaged = chance.damage(&unchecked);
        if let Ok(copy) = document::read(&damaged) {
            let coming = bring_in(&book, &People::new(), &copy).unwrap();
            assert!(copy.lines.iter().all(|line| coming.book.lines().any(|kept| kept == line)));
        }
    }
}
