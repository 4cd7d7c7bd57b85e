//! The book as a page holds it: read and written in its store as docs/STORAGE.md describes it, past the app.
use crate::{Browser, Page};
use fivebar_core::ledger::line::{self, Line};
use fivebar_core::quantity::Span;
use fivebar_core::story::{BENCH, STANDS, tell};
use serde_json::{Value, json};
use std::rc::Rc;

/// Where the tops of the first demo wait in clamps, all at once,
const CLAMPS: &str = "12:07 wait \"glue tops\" glue of pva n 5 for stands 90 min as clamps\n14:32 off clamps\n14:32 stop\n";
/// and one by one.
const CLAMPED: &str = "11:29 clamped 1 glue 90 min
11:38 clamped 1 glue 90 min
11:48 clamped 1 glue 90 min
11:57 clamped 1 glue 90 min
12:07 clamped 1 glue 90 min
14:31 off
14:32 stop
";

/// So many lines of a maker's years: the two demos, the first with tops that wait in clamps, told again and again under other ids, a
/// hundred days later each time.
pub fn years(entries: usize) -> Vec<String> {
    let stands = STANDS.replace(CLAMPS, CLAMPED);
    let demo: Vec<String> =
        [&*stands, BENCH].iter().flat_map(|text| tell(text).book.lines().map(str::to_owned).collect::<Vec<_>>()).collect();
    let rounds = entries.div_ceil(demo.len());
    let all = (0..rounds * demo.len()).skip(rounds * demo.len() - entries);
    all.map(|n| again(&demo[n % demo.len()], n / demo.len(), rounds)).collect()
}

/// The same line in an earlier round; the last round stands at the demo's own times.
fn again(line: &str, round: usize, rounds: usize) -> String {
    let Line::Known(entry) = line::read(&line.replace("-7000-8000-", &format!("-7{round:03x}-8000-"))) else { return line.to_owned() };
    let mut entry = Rc::unwrap_or_clone(entry);
    let earlier = Span::minutes(144_000).times(-i64::try_from(rounds - round - 1).unwrap_or(0));
    entry.stamp.0 = entry.stamp.0.plus(earlier);
    entry.wall.at = entry.wall.at.plus(earlier);
    line::write(&entry)
}

impl Browser {
    /// Writes lines into the book of a page whose app has made its store.
    pub fn write_book(&mut self, page: &Page, lines: &[String]) {
        for some in lines.chunks(5_000) {
            let rows: Vec<Value> =
                some.iter().map(|text| json!({ "id": line::id_of(text).map(|id| id.to_string()), "line": text })).collect();
            let add = format!("for (const row of {}) entries.add(row)", Value::from(rows));
            self.in_book(page, "readwrite", &add, "true");
        }
    }

    /// Writes the names of people beside the book.
    pub fn write_people(&mut self, page: &Page, people: &[(String, String)]) {
        let rows: Vec<Value> = people.iter().map(|(id, name)| json!({ "id": id, "line": name })).collect();
        let put = format!("const people = work.objectStore('people'); for (const row of {}) people.put(row)", Value::from(rows));
        self.in_book(page, "readwrite", &put, "true");
    }

    /// The lines of the book, in order of arrival.
    pub fn book_lines(&mut self, page: &Page) -> Vec<String> {
        let found = self.in_book(page, "readonly", "const all = entries.getAll()", "all.result.map(row => row.line)");
        found.as_array().into_iter().flatten().filter_map(|line| line.as_str().map(String::from)).collect()
    }

    /// Acts on the stores of the maker's book, in one transaction; what they answer then.
    pub fn in_book(&mut self, page: &Page, mode: &str, act: &str, answer: &str) -> Value {
        self.eval(
            page,
            &format!(
                "new Promise((done, failed) => {{ const open = indexedDB.open('fivebar'); open.onerror = () => failed(open.error);
                   open.onsuccess = () => {{ const work = open.result.transaction(['entries', 'people'], '{mode}'), entries = work.objectStore('entries');
                     {act};
                     work.oncomplete = () => {{ open.result.close(); done({answer}) }}; work.onabort = () => failed(work.error) }} }})"
            ),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use fivebar_core::ledger::{Book, fold};

    /// Five tops of each round wait, and all are taken off: nothing of earlier rounds is on in the evening of the last.
    #[test]
    fn the_years_of_the_budgets_hold_waits() {
        let lines = years(5_000);
        let book = Book::of_lines(lines.iter().map(String::as_str));
        let waits = fold::waits(&book);
        let whole = 5_000 / years_of_one();
        assert!(5 * whole <= waits.all().count() && 0 < whole, "{} waits in {whole} rounds", waits.all().count());
        assert_eq!(waits.on().count(), 0);
        assert_eq!(book.len(), lines.len());
    }

    fn years_of_one() -> usize {
        let stands = STANDS.replace(CLAMPS, CLAMPED);
        [&*stands, BENCH].iter().map(|text| tell(text).book.lines().count()).sum()
    }
}
