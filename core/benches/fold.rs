//! Times the reading and folding of a big book: `cargo bench -p fivebar-core --bench fold -- [ENTRIES]`, default 100 000.
//!
//! The lines are the demo's, told again and again under other ids and at other times. The budget is measured in wasm; this is native.

use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Book, fold};
use fivebar_core::quantity::Span;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::estimate::progress_of;
use fivebar_core::story::{BENCH, STANDS, tell};
use std::rc::Rc;
use std::time::Instant;

fn main() {
    let wanted: usize = std::env::args().skip(1).find_map(|n| n.parse().ok()).unwrap_or(100_000);
    let demo: Vec<String> =
        [STANDS, BENCH].iter().flat_map(|text| tell(text).book.lines().map(str::to_owned).collect::<Vec<_>>()).collect();
    let lines: Vec<String> = (0..wanted).map(|n| again(&demo[n % demo.len()], n / demo.len())).collect();
    let bytes: usize = lines.iter().map(String::len).sum();
    println!("{} lines, {:.1} MB", lines.len(), bytes as f64 / 1e6);
    let book = timed("read all at once", || Book::of_lines(lines.iter().map(String::as_str)));
    assert_eq!((book.len(), book.damaged().count()), (wanted, 0));
    timed("read in reverse", || Book::of_lines(lines.iter().rev().map(String::as_str)));
    let mut grown = timed("all but the first again", || Book::of_lines(lines.iter().skip(1).map(String::as_str)));
    timed("one late line", || grown.add_line(&lines[0]));
    assert_eq!(grown, book);
    println!("{} hauls", timed("every haul", || fold::hauls(&book).count()));
    println!("{} runs", timed("the bench", || fold::bench(&book).runs().count()));
    after_an_entry(&book);
}

/// What Bench asks for after each entry while a job runs: the last job's progress, the bench folded anew or kept, the history gathered anew.
fn after_an_entry(book: &Book) {
    let now = book.last_stamp().map(|stamp| stamp.0).unwrap_or_default();
    let bench = Rc::new(fold::bench(book));
    let workshop = Rc::new(fold::workshop(book));
    let shop = || Shop::folded(book, (bench.clone(), workshop.clone()), now);
    let job = fold::jobs(book).find(|job| job.ended.is_none()).or(fold::jobs(book).next()).expect("a job");
    println!("{} jobs", timed("every job", || fold::jobs(book).count()));
    for _ in 0..3 {
        timed("the history, gathered anew", || drop(shop().history().clone()));
        timed("the progress of a job, with it", || drop(progress_of(&shop(), &job, true)));
    }
}

/// The same line under other ids, a hundred days later with every round.
fn again(line: &str, round: usize) -> String {
    let Line::Known(entry) = line::read(&line.replace("-7000-8000-", &format!("-7{round:03x}-8000-"))) else { return line.to_owned() };
    let mut entry = Rc::unwrap_or_clone(entry);
    let later = Span::minutes(144_000).times(i64::try_from(round).unwrap_or(0));
    entry.stamp.0 = entry.stamp.0.plus(later);
    entry.wall.at = entry.wall.at.plus(later);
    line::write(&entry)
}

fn timed<T>(what: &str, work: impl FnOnce() -> T) -> T {
    let began = Instant::now();
    let done = work();
    println!("{what}: {:.1} ms", began.elapsed().as_secs_f64() * 1e3);
    done
}
