//! Percentiles never cross, on whatever is shown of a job: what is likely is no more than what is safe, no price to be safe is lower than the
//! likely one, no day to be safe is earlier to be ready and none later to begin.

use fivebar_core::bench::On;
use fivebar_core::bench::estimate::Range;
use fivebar_core::bench::wait::What;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::dates::{Given, dates};
use fivebar_core::sheet::estimate::estimate;
use fivebar_core::sheet::quote::quote;
use fivebar_core::story::{Story, tell};
use proptest::prelude::*;
use std::fmt::Write;

const OPS: [&str; 6] = ["saw", "glue up", "sand", "oil", "turn", "drive"];

/// One stretch at the bench: of which operation, how long, and after how many minutes each piece was noted.
#[derive(Clone, Debug)]
struct Stint {
    op: usize,
    notes: Vec<(i64, u32)>,
    clamps: bool,
    then: i64,
}

/// A job as it may stand: planned or not, with old jobs or none, half of it done.
#[derive(Clone, Debug)]
struct Told {
    pieces: u32,
    kind: Option<&'static str>,
    plan: Vec<Option<i64>>,
    all_planned: bool,
    said: Vec<u32>,
    old: Vec<(i64, i64)>,
    stints: Vec<Stint>,
    due: Option<i64>,
    kept: bool,
}

fn told() -> impl Strategy<Value = Told> {
    let stint = (0_usize..5, proptest::collection::vec((1_i64..70, 1_u32..3), 0..5), any::<bool>(), 0_i64..40);
    let stint = stint.prop_map(|(op, notes, clamps, then)| Stint { op, notes, clamps, then });
    let plan = proptest::collection::vec(prop_oneof![3 => (1_i64..900).prop_map(Some), 1 => Just(None)], 0..6);
    let kind = prop_oneof![Just(None), Just(Some("stool")), Just(Some("table")), Just(Some("lamp"))];
    let some = (1_u32..7, kind, plan, any::<bool>(), proptest::collection::vec(0_u32..9, 0..5));
    let more = (
        proptest::collection::vec((20_i64..3_000, 0_i64..2_000), 0..4),
        proptest::collection::vec(stint, 0..6),
        proptest::option::of(-3_i64..60),
        any::<bool>(),
    );
    (some, more).prop_map(|((pieces, kind, plan, all_planned, said), (old, stints, due, kept))| Told {
        pieces,
        kind,
        plan,
        all_planned,
        said,
        old,
        stints,
        due,
        kept,
    })
}

/// The same as a story.
fn written(told: &Told) -> String {
    let mut text = String::from("2026-05-04 07:00 +02:00 workshop EUR metric\nrate pay 17 hours 600 logged 480 costs 1440\n");
    for (nth, (took, thought)) in told.old.iter().enumerate() {
        let thought = if 0 < *thought { format!(" thought {} min", (*thought).max(took / 4).min(took * 4)) } else { String::new() };
        writeln!(text, "old-job \"Old {nth}\" {took} min{thought} piece stool").unwrap();
    }
    writeln!(text, "job it \"It\" {} spec", told.pieces).unwrap();
    told.kind.iter().for_each(|kind| writeln!(text, "about it piece {kind}").unwrap());
    for (op, minutes) in OPS.iter().zip(&told.plan) {
        let minutes = minutes.map(|minutes| format!("{minutes} min ")).unwrap_or_default();
        let kind = if *op == "drive" { "deliver" } else { "make" };
        writeln!(text, "plan \"{op}\" {kind} {minutes}for it").unwrap();
    }
    if told.all_planned && !told.plan.is_empty() {
        text.push_str("all-planned it\n");
    }
    if told.kept && (!told.plan.is_empty() || told.kind == Some("stool")) {
        text.push_str("estimate it\n");
    }
    for (op, n) in OPS.iter().zip(&told.said).filter(|(_, n)| 0 < **n) {
        writeln!(text, "batch {n} \"{op}\" for it").unwrap();
    }
    let mut minute = 7 * 60 + 30;
    let clock = |minute: i64| format!("2026-05-{:02} {:02}:{:02}", 4 + minute / 1_440, minute % 1_440 / 60, minute % 60);
    for stint in &told.stints {
        writeln!(text, "{} start \"{}\" make on it", clock(minute), OPS[stint.op]).unwrap();
        for (after, n) in &stint.notes {
            minute += after;
            let done = if stint.clamps { format!("clamped {n} glue of pva 90 min") } else { format!("done {n}") };
            writeln!(text, "{} {done}", clock(minute)).unwrap();
        }
        minute += 1 + stint.then;
        writeln!(text, "{} stop", clock(minute)).unwrap();
        minute += 1;
    }
    text
}

fn guess(op: &str) -> Option<What> {
    match op {
        "glue up" => Some(What::Glue),
        "oil" => Some(What::Coat),
        _ => None,
    }
}

fn in_order(range: Range, what: &str) -> Result<(), TestCaseError> {
    prop_assert!(Span::ZERO <= range.low && range.low <= range.likely && range.likely <= range.safe, "{}: {:?}", what, range);
    Ok(())
}

fn holds(story: &Story, told: &Told, with_factor: bool) -> Result<(), TestCaseError> {
    let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("it").unwrap());
    let sheet = estimate(&shop, id, with_factor).unwrap();
    for row in &sheet.rows {
        let name = row.op.as_deref().unwrap_or("all of it");
        prop_assert!(row.time.at(0.1) <= row.time.median && row.time.median <= row.time.at(0.9), "{}: {:?}", name, row.time);
        prop_assert!(Span::ZERO <= row.to_come(), "{}", name);
    }
    for one in &sheet.counted {
        prop_assert!(one.time.median <= one.time.at(0.9), "{}: {:?}", one.op, one.time);
    }
    let ranges = [("found", sheet.found.as_ref().map(|found| found.range)), ("to come", sheet.to_come), ("in all", sheet.in_all())];
    for (what, range) in ranges {
        range.map_or(Ok(()), |range| in_order(range, what))?;
    }
    let (in_all, to_come) = (sheet.in_all(), sheet.to_come.unwrap_or_default());
    prop_assert!(in_all.is_none_or(|all| to_come.likely <= all.likely && to_come.safe <= all.safe), "{:?} {:?}", in_all, to_come);
    prop_assert!(sheet.progress.safe.is_none_or(|safe| sheet.progress.ends.is_none_or(|ends| ends <= safe)), "{:?}", sheet.progress);
    for made in sheet.given().into_iter() {
        in_order(Range { low: made.low, likely: made.likely, safe: made.high }, "kept")?;
    }
    let waits = fold::waits(&story.book);
    let given = Given { waits: &waits, guess, with_factor, now: story.now };
    let asked = quote(&shop, id, given).unwrap();
    prop_assert!(asked.likely <= asked.safe, "{:?}", asked);
    prop_assert!(asked.range.as_ref().is_ok_and(|(low, high)| low.amount() <= high.amount()) || asked.range.is_err(), "{:?}", asked.range);
    let dated = dates(&shop, id, given).unwrap();
    if let Some((likely, safe)) = dated.likely.zip(dated.safe) {
        prop_assert!(likely.day <= safe.day && likely.hands <= safe.hands && likely.hands <= likely.day, "{:?} {:?}", likely, safe);
        prop_assert!(asked.ready.is_none_or(|ready| likely.day < ready), "{:?} {:?}", asked.ready, likely);
    }
    for row in &dated.rows {
        prop_assert!(row.last.zip(row.safe).is_none_or(|(last, safe)| safe <= last), "{:?}: {:?}", told.due, row);
    }
    batches(&shop, (story, id))
}

/// What is left of a batch: from nothing on, and no less to be safe.
fn batches(shop: &Shop, (story, job): (&Story, fivebar_core::quantity::Id)) -> Result<(), TestCaseError> {
    for op in OPS {
        let batch = shop.bench.batch(On::Job(job), op, story.now.at);
        let (left, off) = (batch.remaining(), batch.spread);
        prop_assert!(left.is_none_or(|left| Span::ZERO <= left), "{}: {:?}", op, batch);
        prop_assert!(off.is_none_or(|off| Span::ZERO <= off), "{}: {:?}", op, batch);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn percentiles_never_cross_on_anything_that_is_shown(told in told()) {
        let text = written(&told);
        let due = told.due.map(|days| {
            let day = 20 + days;
            let (month, day) = (5 + (day - 1) / 30, (day - 1) % 30 + 1);
            format!("agree 900 for 1 it fetched due 2026-{month:02}-{day:02}\n")
        });
        let story = tell(&format!("{text}{}", due.unwrap_or_default()));
        prop_assert_eq!(&story.refused, &vec![], "{}", text);
        for with_factor in [true, false] {
            holds(&story, &told, with_factor).map_err(|failed| TestCaseError::fail(format!("{failed}\n{text}")))?;
        }
    }
}
