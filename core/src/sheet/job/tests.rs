//! What a job says it is, and what there is to do next.

use super::*;

/// What is told of five stools; the next act as a word.
#[track_caller]
fn check(told: &str, next: &str) {
    let begins = "2026-03-03 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 5 spec\n";
    let story = crate::story::tell(&format!("{begins}{told}"));
    assert_eq!(story.refused, [], "{told}");
    let found = job(&Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap()).unwrap().next;
    let found = match found {
        NextAct::WorkOn { op } => format!("work on {}", op.unwrap_or_default()),
        NextAct::SetTag => "tag".to_owned(),
        NextAct::Waits { .. } => "waits".to_owned(),
        other => format!("{other:?}"),
    };
    assert_eq!(found.trim_end(), next, "{told}");
}

const SAND: &str = "plan \"sand\" make 200 min for stools pieces 5\n";

/// Made is said of what is made: not of glued tops, nor of pieces that are left, nor of hours that are to come.
#[test]
fn made_is_said_only_when_it_is_made() {
    check("08:10 start \"glue up\" make on stools\n09:40 stop", "work on");
    check("08:10 start \"sand\" make on stools\n09:40 stop\n10:00 start \"oil\" make on stools stage finish\n11:00 stop", "work on");
    check("08:10 start \"oil\" make on stools stage finish\n09:00 stop\nbatch 5 \"oil\" for stools", "work on");
    check(&format!("{SAND}08:10 start \"trim\" make on stools\n09:00 stop"), "work on sand");
    check(&format!("{SAND}08:10 start \"sand\" make on stools\n09:00 done 2\n13:05 stop"), "work on sand");
    check(&format!("{SAND}08:10 start \"sand\" make on stools\n09:00 done 2\n13:05 done 3\n13:05 stop"), "tag");
    let batch = "batch 4 \"bore\" for stools\n08:10 start \"bore\" make on stools\n08:20 done 1\n08:30 start \"sand\" make on stools\n";
    check(&format!("{SAND}{batch}09:00 done 5\n13:05 stop"), "work on");
    // One of several coats is on: it dries, it is dry, and it was the last, as was said, as another step shows, or as a day tells.
    let coat = "08:10 start \"oil\" make on stools stage finish as oiling\n08:40 clamped 1 coat of oil 120 min as coat\n08:41 stop\n";
    check(coat, "waits");
    check(&format!("{coat}10:40 off coat"), "work on");
    check(&format!("{coat}10:40 off coat\nbatch 1 \"oil\" for stools"), "tag");
    check(&format!("{coat}10:40 off coat\n10:50 start \"wax\" make on stools stage finish\n11:20 stop"), "work on");
    check(&format!("{coat}10:40 off coat\n2026-03-09 10:40 about stools note \"oiled\""), "tag");
    check(&format!("{SAND}08:00 start \"sand\" make on stools\n08:05 done 5\n08:06 stop\n{coat}"), "waits");
}

/// Nobody planned a stool: after its first coat, stopped without a wait, another may follow, and sanding between coats is no last step. A day
/// later, or where one coat was said and is noted, or by the maker's word, it is made.
#[test]
fn made_is_not_said_after_the_first_coat() {
    let coat = "08:10 start \"oil\" make on stools stage finish\n08:40 stop\n";
    check(coat, "work on");
    check(&format!("{coat}2026-03-04 08:30 about stools note \"oiled\""), "work on");
    check(&format!("{coat}2026-03-04 08:40 about stools note \"oiled\""), "tag");
    check(&format!("{coat}09:00 start \"sand\" make on stools\n09:20 stop\n2026-03-09 08:40 about stools note \"sanded\""), "work on");
    check("08:10 start \"oil\" make on stools stage finish\n08:30 done 5\n08:40 stop\nbatch 5 \"oil\" for stools", "tag");
    check(&format!("{coat}all-planned stools"), "tag");
}

/// What is begun is not done: 15 of 45 minutes of trimming, and something else begun since; then until the glue is dry, which is said.
#[test]
fn what_is_begun_and_not_done_comes_before_what_follows_it() {
    let plan = "plan \"trim\" make 45 min for stools\nplan \"glue up\" make 30 min for stools\n";
    check(&format!("{plan}08:10 start \"trim\" make on stools\n08:25 start \"sharpen\" make\n08:40 stop"), "work on trim");
}

/// All that is planned is done, and a coat dries until 15:00; then it can come off.
#[test]
fn while_a_coat_dries_there_is_nothing_to_do_before_it_is_dry() {
    use crate::ledger::decide::{Command, Laid, WaitCommand};
    use crate::ledger::told::{Phone, at};
    let mut phone = Phone::new("a");
    let On::Job(stools) = phone.job(0, "stools") else { unreachable!() };
    let op = crate::ledger::kind::job::OperationPlanned {
        job: stools,
        op: "coat".into(),
        kind: crate::bench::Kind::Make,
        stage: Some(Stage::Finish),
        span: Some(Span::minutes(20)),
        pieces: Some(1),
    };
    phone.note(1, op);
    let run = phone.start(600, "coat", On::Job(stools));
    let laid = Laid { what: crate::quantity::Key::read("coat").unwrap(), stuff: None, span: Span::minutes(280) };
    let wait = phone.order(620, Command::Wait(WaitCommand::Clamp { run, n: 1, laid })).unwrap();
    phone.stop(630, run);
    let next = |phone: &Phone, minute| job(&Shop::of(&phone.book, at(minute)), stools).unwrap().next;
    for minute in [640, 910] {
        assert!(matches!(next(&phone, minute), NextAct::Waits { last } if last.off() == at(900)), "{minute}");
    }
    phone.order(911, Command::Wait(WaitCommand::End { waits: vec![wait] })).unwrap();
    // Another coat may follow; where that was the one coat there is, it is made.
    assert_eq!(next(&phone, 912), NextAct::WorkOn { op: None });
    phone.bench(913, crate::ledger::decide::BenchCommand::PlanBatch { job: stools, op: "coat".into(), n: 1 }).unwrap();
    assert_eq!(next(&phone, 914), NextAct::SetTag);
}

/// Two for 800, the first handed over and not paid: what it leaves as it stands is what is left once both are paid by card in one payment, 24.30 of
/// it kept; the fee of what was owed before is not of the piece that is still to come.
#[test]
fn the_fee_of_what_is_owed_before_is_known_as_it_stands() {
    let told = "2026-03-03 08:00 -05:00 workshop USD inch\ntill fee 0.03 fixed 0.30\njob stools \"Stools\" 2 spec\n\
        08:10 start \"sand\" make on stools\n09:10 stop\nspend 20.00 finish on stools\nall-planned stools\n\
        agree 800 for 2 stools fetched as deal\npay 1 for stools card agreed deal fee 0\nsell 1 stools for 401 agreed deal\n";
    for lines in ["", "sell 1 stools for 399 card agreed deal\n"] {
        let story = crate::story::tell(&format!("{told}{lines}"));
        assert_eq!(story.refused, []);
        let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap());
        let found = shop.job(id).unwrap();
        let account = reckon(&shop, &found).unwrap();
        let way = as_it_stands(&shop, &found, &account).unwrap().unwrap();
        let off = off(&shop, &found, &account).unwrap();
        assert_eq!([way.you_get, off].map(|sum| sum.amount().to_string()), ["775.73", "24.27"], "{lines}");
    }
}

/// Two for 800 by card, nothing in: whether none or one is handed over before anything is paid, 24.30 of it is kept by one payment at the hand-over; where
/// both are, twice 12.30, as once each is paid. Sold with no order nobody knows how they will be paid: each bears its fee once it is.
#[test]
fn the_fee_of_what_is_owed_stays_as_pieces_are_handed_over() {
    let begun = "2026-03-03 08:00 -05:00 workshop USD inch\ntill fee 0.03 fixed 0.30\njob stools \"Stools\" 2 spec\n\
        08:10 start \"sand\" make on stools\n09:10 stop\nspend 20.00 finish on stools\nall-planned stools\n";
    let deal = "agree 800 for 2 stools fetched as deal\n";
    let (ahead, one) = ("pay 100 for stools card agreed deal\n", "sell 1 stools for 400 agreed deal\n");
    let by_bank = "pay 100 for stools bank agreed deal\n";
    let same = "agree 400 for 1 stools fetched replaces deal\n";
    let named = |sale: &str, name: &str| format!("{} as {name}\n", sale.trim_end());
    let paid = "pay 400 for stools card sale first\npay 400 for stools card sale second\n";
    let [first, second] = ["first", "second"].map(|name| format!("sell 1 stools for 400 as {name}\n"));
    for (lines, you_get) in [
        (deal.to_owned(), "800.00"),
        (format!("{deal}{one}"), "800.00"),
        (format!("{deal}{one}{one}"), "800.00"),
        (format!("{deal}{ahead}"), "775.40"),
        (format!("{deal}sell 1 stools for 400 card agreed deal\n"), "775.40"),
        // What came last decides of the rest, however the deposit came: 9.30 of the 300 that lacked of the first, 12.30 of the second.
        (format!("{deal}{by_bank}sell 1 stools for 400 card agreed deal\n"), "778.40"),
        (format!("{deal}{by_bank}sell 1 stools for 400 card agreed deal\n{same}"), "778.40"),
        (format!("{deal}sell 1 stools for 400 card agreed deal\n{same}"), "775.40"),
        (format!("{deal}sell 1 stools for 400 card agreed deal\npay 100 for stools bank agreed deal\n"), "787.70"),
        (format!("{deal}{by_bank}sell 1 stools for 400 agreed deal as first\npay 300 for stools card sale first\n"), "778.40"),
        // Both are handed over, the second not paid: as the last for its order.
        (format!("{deal}{by_bank}sell 1 stools for 400 card agreed deal\n{one}"), "778.40"),
        (format!("{deal}{ahead}{one}"), "775.40"),
        (format!("{deal}{ahead}{one}{one}"), "775.10"),
        (format!("{deal}{}{}{paid}", named(one, "first"), named(one, "second")), "775.40"),
        (format!("{first}{second}"), "800.00"),
        (format!("{first}{second}pay 400 for stools card sale first\n"), "787.70"),
        (format!("{first}{second}{paid}"), "775.40"),
    ] {
        let story = crate::story::tell(&format!("{begun}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap());
        let found = shop.job(id).unwrap();
        let account = reckon(&shop, &found).unwrap();
        let way = as_it_stands(&shop, &found, &account).unwrap().unwrap();
        let off = off(&shop, &found, &account).unwrap();
        let all = way.you_get.plus(off).unwrap();
        assert_eq!([way.you_get, all].map(|sum| format!("{:.2}", sum.amount())), [you_get, "800.00"], "{lines}");
    }
}

/// Two promised, each by its own tax: 100 without, and 100 with 5.5 % inside, of which 94.79 are kept. Price and the page of the job say one sum.
#[test]
fn what_was_agreed_is_taxed_as_each_was_agreed() {
    use crate::sheet::offer::{Asking, offer};
    let told = "2026-03-03 08:00 -05:00 workshop USD inch\ntill tax 0.055 inside\njob stools \"Stools\" 2 spec\n\
        08:10 start \"sand\" make on stools\n09:10 stop\nspend 20.00 finish on stools\nall-planned stools\n\
        agree 100 for 1 stools fetched tax none\nagree 100 for 1 stools fetched\n";
    let story = crate::story::tell(told);
    assert_eq!(story.refused, []);
    let (shop, id) = (Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap());
    let asking = Asking { n: 2, paid: Paid::Bank, carried: crate::ledger::kind::sale::Carried::Fetched, tax: None };
    let priced = offer(&shop, id, asking, None).unwrap().agreed.unwrap().way.you_get;
    let found = shop.job(id).unwrap();
    let way = as_it_stands(&shop, &found, &reckon(&shop, &found).unwrap()).unwrap().unwrap();
    assert_eq!([priced, way.you_get].map(|sum| sum.amount().to_string()), ["194.79"; 2]);
}
