//! Waits that are over though nobody took them off: pieces that were coated again, and those of a job that has ended or whose pieces are gone. It
//! is read from what was noted, and nothing is written.

use super::waits::Kept;
use crate::bench::Bench;
use crate::bench::wait::{Off, Wait, Waits, What};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Listed, Local, Moment, Offset, Set, Sorted, Wall, in_small, order_by_key};

/// Every wait there is, those that are over without a word with when that was.
pub fn waits(book: &Book, bench: &Bench) -> Waits {
    let told = fold::waits(book);
    let jobs: Set<Id> = told.on().filter_map(|wait| wait.job).collect();
    let gone: Sorted<Id, Wall> = jobs.iter().filter_map(|job| Some((*job, gone(book, *job)?))).collect();
    let coats: Sorted<Id, Vec<Coat>> = jobs.iter().map(|job| (*job, coats(book, (&told, bench), *job))).collect();
    told.clone().read(|wait| {
        let of_job = wait.job.and_then(|job| coats.get(&job)).map_or(&[][..], Vec::as_slice);
        let wait = coated(wait, of_job);
        let gone = wait.job.and_then(|job| gone.get(&job)).filter(|gone| wait.is_on() && wait.began.at <= gone.at);
        let ended = gone.map(|gone| Off { at: *gone, early: gone.at < wait.off(), taken: false }).or(wait.ended);
        Wait { ended, ..wait }
    })
}

/// When a job ended, or its last piece went.
fn gone(book: &Book, job: Id) -> Option<Wall> {
    let job = fold::job(book, job)?;
    let ended = job.ended.as_ref().map(|ended| ended.wall);
    let went = || job.selling.last_went().filter(|_| job.left() == 0).map(|at| Wall::new(at, job.began.offset));
    ended.or_else(went)
}

/// A coat on some pieces of a job: which it is of its operation, and on which of them.
#[derive(Clone, Debug)]
struct Coat {
    wait: Id,
    op: String,
    nth: Count,
    first: Count,
    last: Count,
    began: Wall,
    off: Moment,
    /// The maker said that it was dry.
    said: Option<Moment>,
}

/// The coats of a job, the first to begin first.
fn coats(book: &Book, (waits, bench): (&Waits, &Bench), job: Id) -> Vec<Coat> {
    let kept = Kept { waits, bench, book, local: Local::new(Offset::UTC, None) };
    let coat = |wait: &Wait| {
        let line = kept.line(wait, wait.began.at);
        let (first, last) = line.first_piece().zip(line.piece)?;
        let (nth, said) = (line.coat.unwrap_or(1), wait.ended.map(|off| off.at.at));
        Some(Coat { wait: wait.id, op: in_small(line.op.trim()), nth, first, last, began: wait.began, off: wait.off(), said })
    };
    let of_it = waits.all().filter(|wait| wait.job == Some(job) && wait.what() == What::Coat);
    let mut found = of_it.filter_map(coat).listed();
    order_by_key(&mut found, |coat| coat.began.at);
    found
}

/// A wait with what later coats of its pieces end of it, and with the coat below that was wet still.
fn coated(wait: Wait, coats: &[Coat]) -> Wait {
    let Some(own) = coats.iter().find(|coat| coat.wait == wait.id) else { return wait };
    let is_wet = |below: &&Coat| {
        let meets = below.first <= own.last && own.first <= below.last;
        own.follows(below) && meets && own.began.at < below.off && below.said.is_none_or(|said| own.began.at < said)
    };
    let onto_wet = coats.iter().filter(is_wet).map(|below| below.off).max();
    let wait = Wait { onto_wet, ..wait };
    if !wait.is_on() {
        return wait;
    }
    let later = coats.iter().filter(|coat| coat.follows(own)).listed();
    let mut next = own.first;
    // Each takes its pieces once: those behind the first that lies bare wait on.
    while let Some(over) = later.iter().find(|coat| coat.first <= next && next <= coat.last) {
        next = over.last.saturating_add(1);
        if own.last < next {
            return Wait { ended: Some(Off { at: over.began, early: over.began.at < own.off, taken: false }), ..wait };
        }
    }
    Wait { coated: next.saturating_sub(own.first), ..wait }
}

impl Coat {
    /// Whether it goes onto what another is on: a later coat of the same operation; or of another one of the same name but for its number; or
    /// of another that names no part, once the first was to be dry (ours).
    fn follows(&self, below: &Coat) -> bool {
        if self.began.at <= below.began.at {
            return false;
        }
        if self.op == below.op {
            return below.nth < self.nth;
        }
        let names = [&self.op, &below.op].map(|op| name(op));
        names[0] == names[1] || (names.iter().all(|words| words.len() < 2) && below.off <= self.began.at)
    }
}

/// Words that say which coat it is, and not of what.
const WHICH: [&str; 16] =
    ["coat", "coats", "of", "the", "first", "second", "third", "fourth", "fifth", "last", "final", "1st", "2nd", "3rd", "4th", "5th"];

/// What a name says of a coat beside which one it is.
fn name(op: &str) -> Vec<&str> {
    let says = |word: &&str| !word.is_empty() && !WHICH.contains(word) && !word.chars().all(|c| c.is_ascii_digit());
    op.split(|c: char| !c.is_alphanumeric()).filter(says).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::decide::{Command, Laid, WaitCommand};
    use crate::ledger::kind::Exact;
    use crate::ledger::kind::job::{JobDescribed, JobEnded};
    use crate::ledger::kind::sale::PieceSold;
    use crate::ledger::told::Phone;
    use crate::quantity::Side;
    use crate::quantity::{Currency, Decimal, Key, Money, Span};
    use crate::sheet::Shop;
    use crate::sheet::waits::WaitLine;

    /// Stands, five of a kind, coated as is told: at a minute, by an operation, so many; dry after a day.
    fn coated(told: &[(i64, &str, Count)]) -> (Phone, Id) {
        let mut phone = Phone::new("a");
        let on = phone.job(0, "stands");
        let On::Job(job) = on else { unreachable!() };
        phone.note(1, JobDescribed { pieces: Some(5), ..JobDescribed::of(job) });
        for (minute, op, n) in told {
            let run = phone.start(*minute, op, on);
            let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_440) };
            phone.order(minute + 5, Command::Wait(WaitCommand::Clamp { run, n: *n, laid })).unwrap();
            phone.stop(minute + 6, run);
        }
        (phone, job)
    }

    fn on(phone: &Phone, minute: i64) -> Vec<WaitLine> {
        let shop = Shop::of(&phone.book, phone.wall(minute).at);
        let kept = Kept { waits: shop.waits(), bench: &shop.bench, book: &phone.book, local: Local::new(phone.offset, None) };
        kept.sheet(phone.wall(minute)).on
    }

    /// What waits: its operation, which coat, from which piece to which.
    fn shown(phone: &Phone) -> Vec<(String, Count, Count, Count)> {
        let one = |line: WaitLine| {
            let first = line.first_piece().unwrap();
            (line.op, line.coat.unwrap_or(1), first, line.piece.unwrap())
        };
        on(phone, 3_500).into_iter().map(one).collect()
    }

    /// Five stands, coated again the next day, by one operation or by two, all of them or three; what has no second coat waits on.
    #[test]
    fn a_later_coat_ends_the_wait_of_the_one_below() {
        let check = |told: &[(i64, &str, Count)], waits: &[(&str, Count, Count, Count)]| {
            let expected: Vec<_> = waits.iter().map(|(op, coat, first, last)| ((*op).to_owned(), *coat, *first, *last)).collect();
            assert_eq!(shown(&coated(told).0), expected, "{told:?}");
        };
        check(&[(600, "coat", 5), (2_060, "coat", 5)], &[("coat", 2, 1, 5)]);
        check(&[(600, "Coat 1", 5), (2_060, "Coat 2", 5)], &[("Coat 2", 1, 1, 5)]);
        check(&[(600, "coat", 5), (2_060, "coat", 3)], &[("coat", 1, 4, 5), ("coat", 2, 1, 3)]);
        check(&[(600, "Coat 1", 2), (620, "Coat 1", 3), (2_080, "Coat 2", 3)], &[("Coat 1", 1, 4, 5), ("Coat 2", 1, 1, 3)]);
        // Wet on wet it is taken as well.
        check(&[(600, "Coat 1", 5), (900, "Coat 2", 5)], &[("Coat 2", 1, 1, 5)]);
        check(&[(600, "varnish", 5), (2_060, "wax", 5)], &[("wax", 1, 1, 5)]);
        // Other parts of the piece, and other pieces.
        check(&[(600, "oil tops", 5), (2_060, "oil legs", 5)], &[("oil tops", 1, 1, 5), ("oil legs", 1, 1, 5)]);
        check(&[(600, "Coat 1", 2), (2_060, "Coat 1", 3)], &[("Coat 1", 1, 1, 2), ("Coat 1", 1, 3, 5)]);
        check(&[(600, "Coat 1", 3), (2_060, "Coat 2", 3), (2_090, "Coat 1", 2)], &[("Coat 2", 1, 1, 3), ("Coat 1", 1, 4, 5)]);
    }

    /// The coat below was to be dry at minute 2,045.
    #[test]
    fn a_coat_that_went_on_while_the_one_below_was_wet_says_when_that_was_to_be_dry() {
        let check = |minute: i64, wet: Option<i64>| {
            let (phone, _) = coated(&[(600, "Coat 1", 5), (minute, "Coat 2", 5)]);
            assert_eq!(on(&phone, 2_100)[0].onto_wet, wet.map(|minute| phone.wall(minute)), "{minute}");
        };
        check(900, Some(2_045));
        check(2_040, None);
    }

    #[test]
    fn nothing_waits_of_a_job_that_has_ended_or_is_sold() {
        let (mut phone, job) = coated(&[(600, "coat", 5)]);
        assert_eq!(on(&phone, 900).len(), 1);
        let end = JobEnded { job, hauls: vec![] };
        let ended = phone.note(1_000, end);
        assert_eq!(on(&phone, 3_000).len(), 0);
        phone.take_back(3_001, ended);
        assert_eq!(on(&phone, 3_002).len(), 1);
        let mut sell = |minute: i64, n: Count| {
            let sum = Money::whole(Decimal::from(100), Currency::USD).unwrap();
            let (tax, rate, side) = (Money::zero(Currency::USD), Exact(Decimal::ZERO), Side::Top);
            phone.note(minute, PieceSold { job, n, sum, tax, rate, side, agreed: None, carried: None, buyer: None, when: None });
            on(&phone, minute.saturating_add(1)).len()
        };
        assert_eq!([sell(3_010, 4), sell(3_020, 1)], [1, 0]);
    }
}
