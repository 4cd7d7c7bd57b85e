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

/// The evening the years end on, in the time of the story of what is open then: see [`OPEN`].
pub const EVENING: &str = "2026-05-29T20:00-05:00";

/// What is open that evening: six jobs, one of them agreed with a day, two tops in clamps that are not off yet, a clock that runs.
const OPEN: &str = "2026-05-25 08:00 -05:00 workshop USD inch
job table \"Dining table\" 1 order
job stools \"Milking stools\" 4 spec
job shelf \"Wall shelf\" 1 spec
job chest \"Blanket chest\" 1 order
job frames \"Picture frames\" 6 spec
job tray \"Serving tray\" 2 spec
08:10 plan \"Joint and rip\" make 120 min for table
plan \"Glue top\" make 90 min for table
plan \"Flatten top\" make 120 min for table
plan \"Mortises\" make 240 min for table
plan \"Assemble\" make 180 min for table
plan \"Oil\" make stage finish 60 min for table
plan \"Deliver\" deliver 90 min for table
batch 2 \"Glue top\" for table
ends-in \"Oil\" coat of oil
plan \"Turn legs\" make 240 min for stools
plan \"Seats\" make 120 min for stools
plan \"Mill\" make 60 min for shelf
plan \"Dovetails\" make 300 min for chest
plan \"Lid\" make 180 min for chest
plan \"Mitres\" make 150 min for frames
plan \"Bottoms\" make 60 min for tray
08:30 agree 1850 for 1 table delivered deposit 500 due 2026-06-26
2026-05-27 08:00 start \"Mill\" make on shelf
09:10 start \"Dovetails\" make on chest
11:40 stop
13:00 start \"Mitres\" make on frames
14:10 start \"Bottoms\" make on tray
15:00 stop
2026-05-28 08:30 start \"Joint and rip\" make on table
10:40 stop
2026-05-29 09:00 start \"Turn legs\" make on stools
11:20 stop
18:20 start \"Glue top\" make on table
18:45 clamped 1 glue 240 min
19:10 clamped 1 glue 240 min
19:15 start \"Seats\" make on stools
";

/// So many lines of a maker's years: the two demos, the first with tops that wait in clamps, told again and again under other ids, a
/// hundred days later each time, and what is open in the end.
pub fn years(entries: usize) -> Vec<String> {
    let lines = |text: &str| tell(text).book.lines().map(str::to_owned).collect::<Vec<_>>();
    let demo = [&*STANDS.replace(CLAMPS, CLAMPED), BENCH].map(lines).concat();
    // Under ids of their own, beside those of the rounds.
    let open: Vec<String> = lines(OPEN).iter().map(|line| line.replace("-7000-8000-", "-7ffe-8000-")).collect();
    let ended = entries - open.len();
    let rounds = ended.div_ceil(demo.len());
    let all = (0..rounds * demo.len()).skip(rounds * demo.len() - ended);
    all.map(|n| again(&demo[n % demo.len()], n / demo.len(), rounds)).chain(open).collect()
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
    use fivebar_core::quantity::Day;

    /// An evening with much in hand: the pages of a busy maker are what the budgets measure.
    #[test]
    fn the_years_of_the_budgets_end_with_open_jobs_waits_and_a_clock() {
        assert_eq!(tell(OPEN).refused, []);
        let book = Book::of_lines(years(5_000).iter().map(String::as_str));
        let jobs: Vec<_> = fold::jobs(&book).collect();
        let mut open: Vec<&str> = jobs.iter().filter(|job| job.ended.is_none()).map(|job| job.name.as_str()).collect();
        open.sort_unstable();
        assert_eq!(open, ["Blanket chest", "Dining table", "Milking stools", "Picture frames", "Serving tray", "Wall shelf"]);
        let agreed = jobs.iter().filter(|job| job.ended.is_none()).find_map(|job| job.selling.open().find_map(|agreed| agreed.due));
        assert_eq!(agreed.map(|due| due.day()), Day::ymd(2026, 6, 26));
        assert_eq!(fold::waits(&book).on().count(), 2);
        assert_eq!(fold::bench(&book).running(None).map(|run| run.work.op.as_str()), Some("Seats"));
    }

    /// Five tops of each round wait, and all are taken off: of earlier rounds nothing is on in the end.
    #[test]
    fn the_years_of_the_budgets_hold_waits() {
        let lines = years(5_000);
        let book = Book::of_lines(lines.iter().map(String::as_str));
        let waits = fold::waits(&book);
        let whole = (5_000 - tell(OPEN).book.len()) / years_of_one();
        assert!(5 * whole + 2 <= waits.all().count() && 0 < whole, "{} waits in {whole} rounds", waits.all().count());
        assert!(waits.on().all(|wait| wait.op == "Glue top"));
        assert_eq!(book.len(), lines.len());
    }

    fn years_of_one() -> usize {
        let stands = STANDS.replace(CLAMPS, CLAMPED);
        [&*stands, BENCH].iter().map(|text| tell(text).book.lines().count()).sum()
    }
}
