//! A run that looks like a forgotten stop counts up to the last piece that was noted or put to wait in it, as if it had been stopped there; the
//! rest shortens nothing before it is answered for. Where nothing was noted, what a maker reads in estimate, dates, quote and price is as without it.

use fivebar_core::bench::On;
use fivebar_core::bench::dates::Ready;
use fivebar_core::bench::meanwhile::From;
use fivebar_core::bench::wait::What;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Count, Money, Span};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::bench::Seen;
use fivebar_core::sheet::dates::{Given, dates};
use fivebar_core::sheet::estimate::estimate;
use fivebar_core::sheet::job::{NextAct, job};
use fivebar_core::sheet::meanwhile::{Telling, meanwhile};
use fivebar_core::sheet::quote::quote;
use fivebar_core::story::{Story, tell};

/// A stool of two pieces, and what was planned and worked of it before; then a run, forgotten over night or answered for.
fn told(before: &str, run: &str) -> Story {
    let story = tell(&format!(
        "2026-03-01 19:00 -05:00 workshop USD inch\nrate pay 25 hours 1000 logged 400 costs 0\nends-in \"trim\" none\n\
        2026-03-03 08:00 job stool \"Stool\" 2 spec\nspend 5 wax on stool\n{before}\n2026-03-03 14:00 about stool note \"x\"\n{run}\n\
        2026-03-04 08:01 job other \"Other\" 1 spec\nwait \"glue\" glue n 1 for other 300 min\n"
    ));
    assert_eq!(story.refused, [], "{before}\n{run}");
    story
}

/// What is to come of each row and beside them, what all of it takes, its days, what is to be done next, its quote and its price, and what of it
/// fits meanwhile.
#[derive(Debug, PartialEq)]
struct Reads {
    to_come: Vec<i64>,
    still: Option<Span>,
    in_all: Option<[Span; 2]>,
    days: [Option<Ready>; 4],
    pieces: Vec<Option<Count>>,
    begun: Vec<bool>,
    next: NextAct,
    quote: Option<(Money, Money)>,
    price: Option<Money>,
    fits: Vec<(String, Span, From)>,
}

fn reads(story: &Story) -> Reads {
    let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap());
    let (waits, guess) = (fold::waits(&story.book), |op: &str| (op == "coat").then_some(What::Coat));
    let given = Given { waits: &waits, guess, with_factor: true, now: story.now };
    let (sheet, account) = (estimate(&shop, id, true).unwrap(), account(&shop, id).unwrap());
    let dates = dates(&shop, id, given).unwrap();
    let to_come = sheet.rows.iter().map(|row| row.to_come()).chain(sheet.counted.iter().map(|one| one.to_come()));
    Reads {
        to_come: to_come.map(Span::as_minutes).collect(),
        still: account.hours.to_come,
        in_all: sheet.in_all().map(|all| [all.likely, all.safe]),
        days: [dates.likely, dates.safe, dates.after_others, dates.after_others_safe],
        pieces: dates.rows.iter().map(|row| row.pieces).collect(),
        begun: dates.rows.iter().map(|row| row.is_begun).collect(),
        next: job(&shop, id).unwrap().next,
        quote: quote(&shop, id, given).unwrap().range.ok(),
        price: account.pricing.ask,
        fits: fits(&shop, story),
    }
}

/// What may be done until the glue of the other job is dry.
fn fits(shop: &Shop, story: &Story) -> Vec<(String, Span, From)> {
    let telling = Telling { loud: |_| false, of_part: |_| false };
    let found = meanwhile(shop, Seen { now: story.now, ..Seen::default() }, telling, true).unwrap();
    found.fits.into_iter().map(|offer| (offer.what.op, offer.span, offer.from)).collect()
}

/// Begun at 14:00 on a day and stopped at 8:00 on the next: it reads as one that was stopped when the last piece of it was noted or put to wait;
/// where there was none, as if nothing had been begun. And how long it was in all makes a difference once it is answered for.
#[track_caller]
fn check(before: &str, run: &str, last: Option<&str>) {
    let stopped = |at: &str| reads(&told(before, &format!("{run}\n2026-03-04 08:00 stop\nstopped at 2026-03-03 {at} run long")));
    let found = reads(&told(before, &format!("{run}\n2026-03-04 08:00 stop")));
    assert_eq!(found, last.map_or_else(|| reads(&told(before, "")), stopped), "{before}\n{run}");
    assert_ne!(stopped("23:00"), found, "{before}\n{run}");
}

const TRIM: &str = "plan \"trim\" make 60 min for stool pieces 8\nplan \"bore\" make 30 min for stool pieces 4\n";
const SIX: &str = "start \"trim\" make on stool as long\n14:20 done 4\n14:34 done 2\n";

/// Six of eight are trimmed by 14:34 in a run that was forgotten: 60 and 30 min were thought; two are left at 34 min / 6, and the bench says as
/// much. The 34 min count on every page, and 17 h 26 are to settle. A seventh that was noted in the morning is of those: the bench counts it, and
/// nothing becomes shorter by it.
#[test]
fn pieces_noted_in_it_count_with_the_minutes_up_to_the_last() {
    check(TRIM, SIX, Some("14:34"));
    let figures = |more: &str| {
        let forgotten = told(TRIM, &format!("{SIX}{more}\n2026-03-04 08:00 stop"));
        let found = reads(&forgotten);
        let (shop, id) = (Shop::of(&forgotten.book, forgotten.now.at), forgotten.names.job("stool").unwrap());
        let batch = shop.bench.batch(On::Job(id), "trim", shop.now);
        let hours = account(&shop, id).unwrap().hours;
        let minutes = [hours.stands.own.total(), hours.unsettled, hours.logged.own.total()].map(Span::as_minutes);
        (found.to_come, (batch.n, batch.remaining().map(Span::as_minutes)), minutes)
    };
    assert_eq!(figures(""), (vec![11, 42], (6, Some(11)), [34, 1046, 1080]));
    assert_eq!(figures("2026-03-04 07:59 done 1"), (vec![11, 42], (7, Some(6)), [34, 1046, 1080]));
    let answered = reads(&told(TRIM, &format!("{SIX}\n2026-03-04 08:00 stop\nstopped at 2026-03-03 14:40 run long")));
    assert_eq!(answered.to_come, [6, 42], "6 min more at the seventh");
}

/// Paid 20 an hour along with the first hour and with the night: what was worked along by the last piece is paid, the rest is to settle.
#[test]
fn who_worked_along_is_paid_up_to_the_last_piece() {
    let story = told(TRIM, "start \"trim\" make on stool as long\n14:00 helper joins 20\n15:30 done 4\n2026-03-04 08:00 stop");
    let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap());
    let account = account(&shop, id).unwrap();
    assert_eq!([account.cost("helper").unwrap(), account.costs.unsettled].map(|sum| sum.amount().normalize().to_string()), ["30", "330"]);
}

#[test]
fn so_does_all_else_of_it() {
    // Four were sanded before: two are noted, six are left.
    let sanded = "09:00 start \"trim\" make on stool\n09:10 done 1\n09:20 done 1\n09:21 stop\n";
    check(&format!("{TRIM}{sanded}"), SIX, Some("14:34"));
    // Nobody planned it: two of eight are noted, and the others in the run.
    let unplanned = "batch 8 \"trim\" for stool\n";
    check(&format!("plan \"bore\" make 30 min for stool\n{unplanned}{sanded}"), SIX, Some("14:34"));
    check(&format!("about stool piece stool\n{unplanned}{sanded}"), SIX, Some("14:34"));
    // All of it is in clamps.
    let glue = "plan \"glue\" make 60 min for stool pieces 2\n";
    check(glue, "start \"glue\" make on stool as long\n14:30 clamped 2 glue 90 min", Some("14:30"));
    // The plan had taken what was thought when another step was begun, or when a coat was put on.
    let over = "plan \"trim\" make 30 min for stool\nplan \"bore\" make 30 min for stool\n09:00 start \"trim\" make on stool\n09:35 stop\n";
    check(over, "start \"bore\" make on stool as long", None);
    let coat = "plan \"coat\" make 30 min for stool\n09:00 start \"coat\" make on stool stage finish\n09:35 stop\n";
    check(coat, "start \"coat\" make on stool stage finish as long\n14:10 clamped 2 coat 60 min", Some("14:10"));
    // Nobody thought anything of it, and it is what is to be done next.
    check("plan \"trim\" make for stool\n", "start \"trim\" make on stool as long", None);
    // A stool without a plan that took long enough was coated last, and all pieces are noted.
    let worked = "about stool piece stool\n2026-03-02 08:00 start \"all\" make on stool\n20:00 stop\n2026-03-02 20:01 confirm\n";
    check(&format!("{worked}batch 2 \"coat\" for stool"), "start \"coat\" make on stool stage finish as long\n14:10 done 2", Some("14:10"));
}

/// A job that has ended has all of it.
#[test]
fn a_job_that_has_ended_counts_all() {
    let ended = |run: &str| {
        let story = told(TRIM, run);
        let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap());
        estimate(&shop, id, true).unwrap().progress
    };
    let found = ended(&format!("{SIX}\n2026-03-04 08:00 stop\nend stool"));
    assert_eq!((found.so_far, found.to_come), (Span::minutes(18 * 60), None));
}
