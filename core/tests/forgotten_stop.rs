//! The forgotten stop from the book to the question, clause by clause as the trade book has it (section 5):
//! the later of the last act on that job after the start, and the earliest of start + P80 of own history or batch pace x pieces
//! left, the next start, and closing time if after the start; without history the last act, or start + the default; never the
//! start itself; each minute measured, corrected or recalled; and it never blocks a start.

use fivebar_core::bench::Run;
use fivebar_core::bench::repair::{Because, Proposed};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::bench::{BenchSheet, Seen, bench};
use fivebar_core::sheet::day::{DaySheet, day};
use fivebar_core::story::{Story, tell};

/// Two jobs on a Wednesday; five runs of `sand` the day before on the first: 20, 30, 40, 50, 60 minutes, of which 80 in 100 last
/// no longer than 50.
const BOOK: &str = "
2026-03-01 19:00 -05:00 workshop USD inch
job stands \"Stands\" 5 spec
job shelf \"Shelf\" 1 order
2026-03-03 08:00 start \"sand\" make on stands
08:20 stop
09:00 start \"sand\" make on stands
09:30 stop
10:00 start \"sand\" make on stands
10:40 stop
11:00 start \"sand\" make on stands
11:50 stop
13:00 start \"sand\" make on stands
14:00 stop
";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{BOOK}{lines}\n"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn seen(story: &Story) -> Seen {
    Seen { now: story.now, person: None, closing: fold::workshop(&story.book).hours.closing }
}

fn bench_of(story: &Story) -> BenchSheet {
    bench(&story.book, seen(story))
}

fn today(story: &Story) -> DaySheet {
    day(&story.book, story.now.day(), seen(story))
}

/// What is proposed for the one run that is asked about: in Bench, and in the list of its day alike.
fn asked(story: &Story) -> Option<Proposed> {
    let sheet = bench_of(story);
    let all: Vec<Proposed> =
        sheet.running.and_then(|slab| slab.wrong).into_iter().chain(sheet.to_mend.iter().filter_map(|m| m.wrong)).collect();
    let days: Vec<Proposed> = today(story).lines.iter().filter_map(|line| line.wrong).collect();
    assert!(all.len() < 2, "{all:?}");
    assert_eq!(all, days, "Bench and the day ask alike");
    all.first().copied()
}

#[track_caller]
fn check(lines: &str, clock: &str, because: Because) {
    let story = told(lines);
    let found = asked(&story).map(|wrong| {
        let (hour, minute) = fivebar_core::quantity::Wall::new(wrong.at, story.now.offset).clock().as_hour_minute();
        (format!("{hour:02}:{minute:02}"), wrong.because)
    });
    assert_eq!(found, Some((clock.to_owned(), because)), "{lines}");
}

const SAND: &str = "2026-03-04 09:00 start \"sand\" make on shelf";
const SAW: &str = "2026-03-04 09:00 start \"saw\" make on shelf";

#[test]
fn own_history_says_when() {
    check(&format!("{SAND}\n12:00 copy kept"), "09:50", Because::Usual);
    check(&format!("{SAND}\n12:00 stop"), "09:50", Because::Usual);
    // Of another operation, or of a job that is not typical, it is no history.
    check(&format!("{SAW}\n12:30 copy kept"), "10:00", Because::Default);
    check(&format!("2026-03-04 08:00 not-typical stands\n{SAND}\n12:30 copy kept"), "10:00", Because::Default);
}

#[test]
fn the_pace_of_the_batch_says_when_it_is_sooner() {
    // Two of five took 12 minutes: three are left, 18 minutes at 6 each; 50 is usual, of it and of the five before: 12 20 30 40 50 60.
    let paced = |n| {
        format!(
            "2026-03-04 07:00 batch {n} \"sand\" for shelf
07:00 start \"sand\" make on shelf
07:06 done 1
07:12 done 1
stop
09:00 start \"sand\" make on shelf
12:00 copy kept"
        )
    };
    check(&paced(5), "09:18", Because::Batch);
    check(&paced(40), "09:50", Because::Usual); // 38 x 6 min are more than what is usual
    check(&paced(2), "09:50", Because::Usual); // nothing is left of it
}

#[test]
fn later_acts_on_that_job_say_that_it_went_on() {
    check(&format!("{SAND}\n10:05 about shelf note \"no finish\"\n12:00 copy kept"), "10:05", Because::LastAct);
    check(&format!("{SAND}\n10:05 spend 8.50 screws on shelf\n12:00 copy kept"), "10:05", Because::LastAct);
    check(&format!("{SAND}\n10:05 done 1\n12:00 copy kept"), "10:05", Because::LastAct);
    check(&format!("{SAND}\n09:20 about shelf note \"no finish\"\n12:00 copy kept"), "09:50", Because::Usual);
    // An act on another job says nothing of this one, nor does one before the start.
    check(&format!("{SAND}\n10:05 about stands note \"no finish\"\n12:00 copy kept"), "09:50", Because::Usual);
    check(&format!("2026-03-04 08:59 about shelf note \"oak\"\n{SAND}\n12:00 copy kept"), "09:50", Because::Usual);
    // Without history the last act alone.
    check(&format!("{SAW}\n09:20 about shelf note \"no finish\"\n12:30 copy kept"), "09:20", Because::LastAct);
}

#[test]
fn the_next_start_ends_it() {
    // A run that is asked about lasted twice what is usual, so what is usual comes before the next start, here at 12:00. Without a
    // history the pace of a long batch may reach beyond it: 40 at half an hour each.
    let paced = "2026-03-04 08:00 batch 40 \"plane\" for shelf\n09:00 start \"plane\" make on shelf\n09:30 done 1";
    check(&format!("{paced}\n13:00 start \"saw\" make on stands"), "13:00", Because::NextStart);
    check(&format!("{SAND}\n12:00 start \"saw\" make on stands"), "09:50", Because::Usual);
    let other = "person ada helper\n11:00 start \"saw\" make on stands by ada";
    check(&format!("{SAND}\n{other}\n12:00 copy kept"), "09:50", Because::Usual);
    // No act after it counts: no minute is paid twice.
    check(&format!("{SAND}\n11:30 start \"saw\" make on stands\n11:40 about shelf note \"oak\""), "09:50", Because::Usual);
}

#[test]
fn closing_time_ends_what_has_a_history() {
    let evening =
        |closing| format!("2026-03-02 08:00 workdays till {closing}\n2026-03-04 17:30 start \"sand\" make on shelf\n21:00 copy kept");
    check(&evening("18:00"), "18:00", Because::Closing);
    check(&evening("18:20"), "18:20", Because::Usual); // the same moment by both
    check(&evening("19:00"), "18:20", Because::Usual);
    check(&evening("17:00"), "18:20", Because::Usual); // it was closed before: an evening
    let acted = "2026-03-02 08:00 workdays till 18:00\n2026-03-04 17:30 start \"sand\" make on shelf\n18:40 done 1\n21:30 copy kept";
    check(acted, "18:40", Because::LastAct);
}

#[test]
fn without_history_and_acts_the_default_and_never_the_start() {
    check(&format!("{SAW}\n12:30 copy kept"), "10:00", Because::Default);
    check("2026-03-04 09:00 start \"mail\" office\n11:00 copy kept", "09:30", Because::Default);
    // An act in the minute of the start is none after it.
    check(&format!("{SAW}\nabout shelf note \"oak\"\n12:30 copy kept"), "10:00", Because::Default);
    check(&format!("{SAW}\n09:00:20 about shelf note \"oak\"\n12:30 copy kept"), "09:01", Because::LastAct);
}

#[test]
fn it_blocks_no_start_and_the_answer_is_said() {
    let story = told(&format!("{SAND}\n12:00 start \"saw\" make on stands\n12:05 copy kept"));
    assert_eq!(bench_of(&story).running.map(|slab| (slab.run.work.op, slab.worked)), Some(("saw".into(), Span::minutes(5))));
    let minutes = |story: &Story| {
        let own = today(story).total.own;
        [own.measured, own.corrected, own.recalled].map(Span::as_minutes)
    };
    assert_eq!(minutes(&story), [5, 0, 0], "what looks wrong is in no total");
    let answered = |answer: &str| told(&format!("{SAND} as sanding\n12:00 start \"saw\" make on stands\n12:05 {answer} run sanding"));
    for (answer, shares) in [("stopped at 09:50 proposed", [5, 50, 0]), ("stopped at 10:10", [5, 70, 0]), ("confirm", [185, 0, 0])] {
        let story = answered(answer);
        assert_eq!((minutes(&story), asked(&story)), (shares, None), "{answer}");
        let run = &today(&story).lines[0].run;
        assert_eq!(run.tapped_stop.map(|stop| stop.clock().as_hour_minute()), Some((12, 0)), "the raw stamp stays");
    }
}

/// "It was 3 h 12" said at 12:12, while the saw went on: that is an act at 12:12 and no word on the 20 hours after it.
#[test]
fn right_so_far_is_not_right_for_ever() {
    let said = format!("{SAW} as sawing\n12:12 confirm run sawing");
    let proposed = |lines: &str| {
        let sheet = bench_of(&told(&format!("{said}\n{lines}")));
        let ended = sheet.to_mend.iter().filter_map(|mend| mend.wrong);
        let wrong = sheet.running.and_then(|slab| slab.wrong).into_iter().chain(ended).next();
        wrong.map(|wrong| (fivebar_core::quantity::Wall::new(wrong.at, sheet_offset()).clock().as_hour_minute(), wrong.because))
    };
    assert_eq!(proposed("13:00 copy kept"), None, "it was answered for lately");
    check(&format!("{said}\n23:00 copy kept"), "12:12", Because::LastAct);
    let asked = Some(((12, 12), Because::LastAct));
    assert_eq!(proposed("2026-03-05 08:00 copy kept"), asked, "the next morning");
    assert_eq!(proposed("2026-03-05 08:00 stop"), asked, "and once it is stopped");
    assert_eq!(proposed("2026-03-05 08:00 stop\n08:01 confirm run sawing"), None, "right as it was stopped");
    assert_eq!(proposed("2026-03-05 08:00 stop\n08:01 stopped at 07:00 run sawing"), None, "or put right");
}

fn sheet_offset() -> fivebar_core::quantity::Offset {
    fivebar_core::quantity::Offset::minutes(-300).unwrap()
}

/// Forgotten at 09:20 after two of five at 10 minutes each; three more at 16:00 in the same pace.
#[test]
fn the_minutes_in_question_make_no_pace() {
    let batch = "2026-03-04 07:00 batch 5 \"plane\" for shelf
09:00 start \"plane\" make on shelf as first
09:10 done 1
09:20 done 1
16:00 start \"plane\" make on shelf
16:10 done 1
16:20 done 1";
    check(&format!("{batch}\n16:30 done 1\n16:40 copy kept"), "09:50", Because::Batch); // five were left at nine
    let slab = |more: &str| bench_of(&told(&format!("{batch}\n{more}"))).running.unwrap().batch;
    let minutes = |span: Option<Span>| span.map(Span::as_minutes);
    let asked = slab("16:24 copy kept");
    assert_eq!((asked.n, minutes(asked.pace()), minutes(asked.remaining())), (4, Some(10), Some(6)));
    assert_eq!(asked.range().map(|(from, to)| (from.as_minutes(), to.as_minutes())), Some((6, 6)));
    assert_eq!(asked.all(), Span::minutes(7 * 60 + 24), "no hour is lost of all it took");
    // Once it is answered its minutes count as they were said to be.
    let answered = slab("16:24 stopped at 09:50 proposed run first");
    assert_eq!((minutes(answered.pace()), answered.all()), (Some(18), Span::minutes(74))); // 50 + 20 minutes, four pieces: 17.5
}

/// Two of two in 16 minutes each by the pace of the batch, from 12:25; at 12:58 the maker puts right what is going on, and at 14:00 takes clamps of
/// another job off. That the run is put right says that it went on then; clamps of another job say only that somebody was there.
#[test]
fn who_puts_right_what_is_going_on_is_at_it() {
    let batch = "2026-03-04 07:00 batch 4 \"plane\" for shelf\nwait \"glue\" glue n 4 for stands 60 min as tops\n\
                 start \"plane\" make on shelf\n07:08 done 1\n07:16 done 1\nstop\n12:25 start \"plane\" make";
    let forgotten = |said: &str| format!("{batch}{said}\n14:00 off tops\n23:00 copy kept");
    check(&forgotten(" on shelf"), "12:41", Because::Batch);
    check(&forgotten("\n12:58 mend on shelf"), "12:58", Because::LastAct);
    check(&forgotten(" on shelf\n12:58 mend to \"plane\" make stage finish"), "12:58", Because::LastAct);
    check(&forgotten(" on shelf\n12:58 mend start 12:20"), "12:58", Because::LastAct);
    // By then it was asked about, and another question was answered; nor is it any word once it was stopped.
    check(&forgotten(" on shelf\n18:00 mend start 12:20"), "12:36", Because::Batch);
    check(&forgotten("\n18:00 mend on shelf\n18:30 done 1"), "18:30", Because::LastAct);
    check(&format!("{batch} on shelf\n22:00 stop\n22:01 mend to \"plane\" make stage finish"), "12:41", Because::Batch);
    // It is proof as a piece is.
    let story = told(&forgotten("\n12:58 mend on shelf"));
    let bench = fold::bench(&story.book);
    let stands = |run: &Run| run.started.at.until(bench.stands_to(run, story.now.at));
    assert_eq!(bench.all_running().map(stands).collect::<Vec<_>>(), [Span::minutes(33)]);
}

/// Four are planed, 40 minutes of the first before something else came, and 5 when it was gone on with: 45 each, of which 40 had gone by at the
/// start, so 5 + 3 x 45. Two are bored: 12 minutes of the first on one day and 10 on the next, so 10 + 22. A second piece that was broken off in
/// the afternoon comes off too, but a whole one at most; what was worked after a coat, its brushes cleaned, is no part of the next.
#[test]
fn what_the_piece_at_hand_had_taken_comes_off() {
    let (plane, before) = ("2026-03-03 15:00 batch 4 \"plane\" for shelf\n", "2026-03-04 07:00 start \"plane\" make on shelf\n");
    let on = "start \"saw\" make on shelf\n07:43 start \"plane\" make on shelf\n07:48 done 1\n";
    let night = "2026-03-04 23:00 copy kept";
    check(&format!("{plane}{before}07:40 {on}{night}"), "10:03", Because::Batch);
    let bore = "2026-03-03 15:00 batch 2 \"bore\" for shelf\n15:10 start \"bore\" make on shelf\n15:22 stop\n";
    check(&format!("{bore}{BORE}09:10 done 1\n{night}"), "09:32", Because::Batch);
    // One at 10 and 4 of the next before; then one at 10 by the clock of the run: three of them were left, less 4.
    let four = "2026-03-03 15:00 batch 4 \"bore\" for shelf\n15:10 start \"bore\" make on shelf\n15:20 done 1\n15:24 stop\n";
    check(&format!("{four}{BORE}09:06 done 1\n{night}"), "09:26", Because::Batch);
    // 40 of the next before, of which nobody noted one: one piece at most comes off. 10 and 46 are 28 each.
    check(&format!("{}{BORE}09:06 done 1\n{night}", four.replace("15:24", "16:00")), "09:56", Because::Batch);
    let [coat, again] = [four, BORE].map(|lines| lines.replace("bore", "coat").replace("done 1", "clamped 1 coat 60 min"));
    check(&format!("{coat}{again}09:10 clamped 1 coat 60 min\n{night}"), "09:36", Because::Batch); // 10 and 14 are 12 each, three left
}

const BORE: &str = "2026-03-04 09:00 start \"bore\" make on shelf\n";

/// Fitted once for 45 of 150 minutes; again from 13:00 on the next day, and forgotten.
#[test]
fn one_earlier_run_says_nothing_and_a_plan_is_not_cut() {
    let fit = |times: usize| {
        let earlier: String = (8..8 + times).map(|hour| format!("{hour:02}:00 start \"fit\" make on shelf\n{hour:02}:45 stop\n")).collect();
        format!(
            "plan \"fit\" make 150 min for shelf\n2026-03-03 16:00 copy kept\n2026-03-04 00:01 copy kept\n{earlier}13:00 start \"fit\" make on shelf as fitting"
        )
    };
    check(&format!("{}\n20:00 copy kept", fit(1)), "14:45", Because::Planned); // 150 - 45 are left
    check(&format!("{}\n20:00 copy kept", fit(2)), "14:00", Because::Planned); // 60 are left
    check(&format!("{}\n20:00 copy kept", fit(3)), "13:45", Because::Usual);
    let closes = "2026-03-02 08:00 workdays till 14:30\n";
    check(&format!("{closes}{}\n20:00 copy kept", fit(1)), "14:30", Because::Closing);
    // Who came, or went, and what was taken off is the last act as much as a piece.
    let came = format!("{}\nperson ada helper\n15:10 helper joins ada 20.00", fit(1));
    check(&format!("{came}\n20:00 copy kept"), "15:10", Because::LastAct);
    check(&format!("{came}\n15:50 helper leaves ada\n20:00 copy kept"), "15:50", Because::LastAct);
    let glued = format!("wait \"glue\" glue n 1 for shelf 60 min as top\n{}\n16:00 off top", fit(1));
    check(&format!("{glued}\n20:00 copy kept"), "16:00", Because::LastAct);
    let others = format!("wait \"glue\" glue n 1 for stands 60 min as top\n{}\n16:00 off top", fit(1));
    check(&format!("{others}\n20:00 copy kept"), "14:45", Because::Planned);
}

/// Twenty strips sorted in half an hour, of which a shelf has ten: 15 of these minutes are its. Fifteen hours of a night that nobody answered for
/// are in no share and no price, and how many they are stands beside.
#[test]
fn sorting_in_question_is_in_no_share_of_its_haul() {
    let shares = |lines: &str| {
        let story = tell(&format!(
            "2026-03-02 09:00 +00:00 workshop EUR metric\nrate pay 17 lowest 12 hours 600 logged 480 costs 1440\nleave for yard\nat the bin\n\
             pile strips oak-white 20 x 50 x 500 mm\ncount 20 strips\nhomeward\nhome\n10:00 start \"sort\" fetch on yard stage sort\n\
             good 20 strips\n10:30 stop\njob shelf \"Shelf\" 1 order\ntake 10 strips for shelf\nspend 20 glue on shelf\n{lines}"
        ));
        assert_eq!(story.refused, [], "{lines}");
        let found = account(&Shop::of(&story.book, story.now.at), story.names.job("shelf").unwrap()).unwrap();
        let hours = found.hours;
        [hours.haul.unwrap_or_default(), found.pricing.work.time.unwrap_or_default(), hours.hauls_unsettled].map(Span::as_minutes)
    };
    let night = "17:00 start \"sort\" fetch on yard stage sort as night\n2026-03-03 08:00 stop\n";
    assert_eq!(shares(""), [15, 15, 0]);
    assert_eq!(shares(night), [15, 15, 900]);
    assert_eq!(shares(&format!("{night}08:01 confirm run night\n")), [465, 465, 0]);
}
