//! Estimates on a job's page: what is planned, the kind of piece, what is kept, how it is reckoned, and what looking back says of it.

use super::*;
use crate::app::jobs::estimate::EstimateTap;
use fivebar_core::bench::{On, Work};
use fivebar_core::ledger::decide::BenchCommand;
use fivebar_core::quantity::Span;

pub(super) fn planned(maker: &mut Maker, op: &str, minutes: &str) {
    maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, op.into())).figures(&[minutes]).tap(Tap::Save);
}

pub(super) fn begun() -> Maker {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Hall bench".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    maker
}

/// A name that tells its kind sets it: a message is office, a coat is finishing; a tap on another kind stands until the name is typed on.
#[test]
fn a_planned_name_tells_its_kind() {
    let mut maker = begun();
    let mut check = |name: &str, kind: Kind, finish: bool| {
        maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, name.into()));
        let picks = &maker.app.jobs.draft.as_ref().unwrap().picks;
        assert_eq!((picks.kind, picks.finish), (kind, finish), "{name}");
        maker.tap(Tap::Close);
    };
    check("message", Kind::Office, false);
    check("Coats", Kind::Make, true);
    check("Coat 2", Kind::Make, true);
    check("1st coat", Kind::Make, true);
    check("delivery", Kind::Deliver, false);
    check("Steam bending", Kind::Make, false);
}

#[test]
fn a_kind_of_piece_is_enough_to_begin_with() {
    let mut maker = begun();
    // Its name tells one, which is a tap; the others are behind a key.
    maker.shows(&["Kind of piece: bench", "by its name", "Another kind"]).hides(&["dining table"]);
    maker.tap(Tap::Estimate(EstimateTap::Kinds)).shows(&["What kind of piece", "dining table"]);
    maker.tap(Tap::Estimate(EstimateTap::Piece("bench"))).shows(&["20 h likely in all", "All of it", "usual for such a piece"]);
    // It can be another one at any time.
    maker.shows(&["Kind of piece: bench", "Usual for a bench: 20 h."]);
    assert!(!crate::screens::page(&maker.app).html().contains("dining table"));
    maker.tap(Tap::Estimate(EstimateTap::Kinds)).shows(&["dining table", "shelf", "other"]);
    maker.tap(Tap::Estimate(EstimateTap::Piece("shelf"))).shows(&["Kind of piece: shelf", "Nothing to go by yet"]);
    assert!(!crate::screens::page(&maker.app).html().contains("dining table"));
}

/// Demo B: what was warned of, and what the next estimate learns.
#[test]
fn looking_back_says_what_was_warned_of() {
    let mut maker = Maker::told(&[BENCH]);
    maker.room("bench", Room::Back).shows(&["Next estimate × 1.344", "was × 1.339", "It had warned: 25 h 26, not 19 h."]);
}

#[test]
fn a_job_shows_how_far_it_has_come() {
    let told = BENCH.split("2026-05-11").next().unwrap();
    let named = |told: &str, op: &str| {
        told.replacen(&format!("start \"{op}\" make on bench\n"), &format!("start \"{op}\" make on bench as {op}\n"), 1)
    };
    let told = named(&named(told, "milling"), "frames");
    // Two long stretches that nobody noted anything in were right.
    let mut maker = Maker::told(&[&format!("{told}09:38 confirm run milling\n09:38 confirm run frames\n")]);
    // 55 + 212 + 171 + 118 + 268 + 66 + 97 min so far.
    maker.open("bench").shows(&["Against the estimate", "19 h thought, 25 h 26 estimated, 16 h 27 so far", "likely in all, as it goes."]);
    // Drawn to scale: what was thought, estimated and safe, and as much ink as hours were worked.
    let page = page(&maker.app).html();
    let (_, drawn) = page.split_once("Against the estimate").unwrap();
    let (drawn, _) = drawn.split_once("</svg>").unwrap();
    assert_eq!(["thought", "estimated", "safe"].map(|mark| drawn.matches(&format!(">{mark}")).count()), [1, 1, 1], "{drawn}");
    assert_eq!((drawn.matches("class=\"fink\"").count(), drawn.matches("class=\"funder\"").count()), (1, 0), "{drawn}");
    // The same figure under the same word on every page.
    maker.shows(&["fetch 1 h 23, sort 31 min, make 15 h 32, ", " sell and office 55 min, "]);
    maker.tap(Tap::Room(Room::Hours)).shows(&["fetch 1 h 23, sort 31 min, make 15 h 32, office 55 min"]);
    maker.tap(Tap::Page).say(Msg::Jobs(Tap::Next));
    maker.app.go(Place::Bench);
    maker.shows(&["19 h thought, 25 h 26 estimated, 16 h 27 so far"]);
}

/// Nothing was kept: the bench says what it is estimated from, and how it ends once that is another figure; where nothing is known, nothing.
#[test]
fn the_bench_holds_what_runs_against_what_is_known() {
    let check = |told: &str, shown: &[&str], not: &[&str]| {
        let day = "2026-03-02 08:00 +00:00 workshop EUR metric\njob stool \"Stool\" 1 order\n";
        let mut maker = Maker::told(&[&format!("{day}{told}")]);
        maker.app.go(Place::Bench);
        maker.shows(shown).hides(not);
    };
    let saw = "start \"saw\" make on stool\n";
    check(&format!("{saw}08:30 copy kept\n"), &[">saw<"], &["estimated", "Estimated", "likely in all"]);
    // 60 x 1.4; then all of it was worked, and half an hour more, and it goes on: 15 min are to come.
    let plan = "plan \"saw\" make 60 min for stool\n";
    let by = ["1 h thought, 1 h 24 estimated, 30 min so far. Estimated by what you thought."];
    check(&format!("{plan}{saw}08:30 copy kept\n"), &by, &["likely in all"]);
    let over = ["1 h thought, 1 h 24 estimated, 1 h 54 so far. Estimated by what you thought."];
    let goes_on = ["2 h 09 likely in all, as it goes."];
    check(&format!("{plan}{saw}09:54 copy kept\n"), &[over, goes_on].concat(), &[]);
    let coat = "start \"coat\" make on stool\n";
    check(&format!("{plan}{saw}09:54 {coat}"), &["1 h 54 so far"], &["likely in all"]);
    // As much again is to come of sanding: 1 h 54, 15 min, and 1 h 24.
    let sand = "plan \"sand\" make 60 min for stool\n";
    let ends = ["2 h thought, 2 h 48 estimated, 1 h 54 so far. Estimated by what you thought. 3 h 33 likely in all, as it goes."];
    check(&format!("{plan}{sand}{saw}09:54 copy kept\n"), &ends, &[]);
    let usual = ["6 h estimated, 30 min so far. Estimated by what is usual for such a piece."];
    check(&format!("about stool piece stool\n{saw}08:30 copy kept\n"), &usual, &["thought"]);
}

/// Two hours were thought of sanding five stands, and three written down without a piece: it may not be over, until another step is written
/// down after it. Then nobody knows what is to come, and by how much it is over stands there still, with why.
#[test]
fn against_the_estimate_stays_where_no_piece_was_noted() {
    let mut maker = Maker::new();
    let (currency, units) = (Currency::EUR, Units::Metric);
    let begin = JobCommand::Begin { name: "Lamp".into(), currency, units, pieces: 5, made_for: For::Order };
    let job = maker.app.order(&Command::Job(begin), maker.now).unwrap().act;
    maker.say(Msg::Jobs(Tap::Open(Which::Own, job)));
    maker
        .tap(Tap::Room(Room::Hours))
        .tap(Tap::Write(What::Plan(None)))
        .tap(Tap::Say(0, "Sand".into()))
        .figures(&["120", "5"])
        .tap(Tap::Save);
    maker.tap(Tap::Estimate(EstimateTap::Whole(true))).tap(Tap::Page);
    let recall = |maker: &mut Maker, op: &str, (from, to): (i64, i64)| {
        let work = Work { op: op.into(), kind: Kind::Make, stage: Kind::Make.stage(), on: On::Job(job), person: None, rework: false };
        let [start, stop] = [from, to].map(|ago| maker.now.wall.at.minus(Span::minutes(ago)));
        maker.now.chance[5] = maker.now.chance[5].wrapping_add(1);
        maker.app.order(&Command::Bench(BenchCommand::Recall { work, start, stop, heads: 1 }), maker.now).unwrap();
    };
    const UNNOTED: &str = "No piece of Sand is noted as done; by its hours it counts as done.";
    recall(&mut maker, "Sand", (200, 20));
    // What is safe by now stands beside what was estimated before, and is labelled.
    maker
        .shows(&[
            "Next: sand",
            "3 h, 36 min to come",
            "Against the estimate",
            ">estimated",
            ">safe now",
            "3 h so far",
            "3 h 36 likely in all",
        ])
        .hides(&[UNNOTED]);
    recall(&mut maker, "Oil", (20, 0));
    maker.shows(&["So far", UNNOTED, "Against the estimate", "2 h thought", "3 h so far"]);
    assert_eq!(page(&maker.app).html().matches(UNNOTED).count(), 1);
}

/// The line of an operation in how it is reckoned.
fn line_of(maker: &Maker, op: &str) -> String {
    let html = crate::screens::page(&maker.app).html();
    let begins = format!(">{op}: ");
    let from = html.find(&begins).map(|at| at + 1).unwrap_or_else(|| panic!("{op} in {html}"));
    html[from..].split('<').next().unwrap().to_owned()
}

/// A span as it is written, in minutes: "1 h 18", "41 min".
fn read(span: &str) -> f64 {
    let n = |text: &str| text.trim().trim_end_matches('.').parse::<f64>().unwrap();
    match (span.split_once(" h"), span.split_once(" min")) {
        (Some((hours, rest)), _) => n(hours) * 60.0 + if rest.trim().is_empty() { 0.0 } else { n(rest) },
        (None, Some((minutes, _))) => n(minutes),
        (None, None) => panic!("{span}"),
    }
}

fn between<'a>(line: &'a str, from: &str, to: &str) -> &'a str {
    line.split_once(from).and_then(|(_, rest)| rest.split_once(to)).unwrap_or_else(|| panic!("{from} … {to} in {line}")).0
}

const CABINET: &str = r#"2026-12-07 06:00 +00:00 workshop USD inch
old-job "Hall chest" 1800 min thought 1440 min
old-job "Sideboard" 2400 min thought 1920 min
old-job "Four stands" 960 min thought 1200 min pieces 4
07:00 job bench "Lamps" 4 spec
about bench piece lamp
08:00 batch 4 "sand" for bench
start "sand" make on bench
09:18 stop
end bench
10:00 job more "Cabinets" 2 spec
about more piece lamp
plan "sand" make 180 min for more
plan "fit doors" make 150 min for more
plan "scrape" make for more
all-planned more
"#;

/// What a maker reads, reckoned with pencil and paper: the words of the page are all that goes in.
#[test]
fn two_operations_are_worked_out_from_the_words_of_the_page() {
    let mut maker = Maker::told(&[CABINET]);
    maker.room("more", Room::Hours);
    // By history: 1 h 18 for 4, brought to 2.
    let sand = line_of(&maker, "Sand");
    assert_eq!(sand, "Sand: instead of the 3 h planned, by 1 job of this kind of piece: Lamps 1 h 18 for 4, × 1.95 / 3.70 for 2 = 41 min.");
    let [times, had] = [between(&sand, "× ", " /"), between(&sand, "/ ", " for")].map(|text| text.parse::<f64>().unwrap());
    assert_eq!((read(between(&sand, "Lamps ", " for")) * times / had).round(), read(between(&sand, "= ", ".")));
    // As it was planned, by a factor that is worked out from its sentence.
    let doors = line_of(&maker, "Fit doors");
    assert_eq!(doors, "Fit doors: planned 2 h 30 × 1.196 = 2 h 59.");
    let html = crate::screens::page(&maker.app).html();
    let jobs = between(&html, "Your jobs took ", " of what you thought. With the usual 1.4, which counts as 2 jobs, all 5 multiplied and");
    let ratios = jobs.split([',', ' ']).filter_map(|text| text.parse::<f64>().ok());
    let factor = (ratios.product::<f64>() * 1.4 * 1.4).powf(1.0 / 5.0);
    assert_eq!(format!("{factor:.3}"), between(&doors, "× ", " ="));
    assert_eq!((read(between(&doors, "planned ", " ×")) * factor).round(), read(between(&doors, "= ", ".")));
    // A share of what such pieces took as a whole: 41 min x 0.72 / 3.
    maker.shows(&["Scrape: nobody thought of it; of 41 min for the whole 72 % go to make, shared by 3 operations: 10 min."]);
    let safe = "Together 3 h 50, which is likely. One time in ten what you planned takes more than 1.40 times, Sand more than 2.14 times and Scrape more than 2.14";
    let drawn = " jobs drawn by that, each operation by its own luck, nine in ten took no more, and half of them no more than 4 h.";
    let middles = "Likely adds up what each operation takes in the middle, and that half is the middle of all together: what runs long";
    maker.shows(&[safe, "Safe is 5 h 25: of ", drawn, middles]);
    assert!(!html.contains("Say what kind of piece it is"));
}

/// Two lamps were sanded for an hour by two people: two more are two hours for one, as an operation and as whole pieces.
#[test]
fn what_a_helper_did_counts_in_what_is_learnt() {
    let story = |plan: &str| {
        format!(
            "2026-12-07 06:00 +00:00 workshop EUR metric\njob lamps \"Lamps\" 2 order\nabout lamps piece lamp\n\
             08:00 start \"sand\" make on lamps\nhelper joins\n09:00 done 2\nstop\nend lamps\n\
             10:00 job more \"More\" 2 spec\nabout more piece lamp\n{plan}"
        )
    };
    let mut maker = Maker::told(&[&story("plan \"sand\" make 30 min for more\nall-planned more\n")]);
    maker.room("more", Room::Hours);
    let by = "Sand: instead of the 30 min planned, by 1 job of this kind of piece:";
    assert_eq!(line_of(&maker, "Sand"), format!("{by} Lamps 2 h for 2 with a helper, whose time counts too."));
    let mut maker = Maker::told(&[&story("")]);
    maker.room("more", Room::Hours);
    maker.shows(&["Lamps: 2 h for 2 with a helper, whose time counts too, so 1 h 02 for the first."]);
}

/// Own notes tell the setup apart; a job that is begun says at each operation what is to come; with the allowance that is said too.
#[test]
fn setup_and_what_is_worked_stand_in_the_line() {
    let story = CABINET.split("10:00 job").next().unwrap().replace("09:18 stop", "08:40 done 1\n08:50 done 1\n09:00 done 2\n09:18 stop");
    let begun = "10:00 job more \"Cabinets\" 2 spec\nabout more piece lamp\nplan \"sand\" make 180 min for more\nplan \"fit doors\" make 150 min for more\nall-planned more\n11:00 start \"fit doors\" make on more\n11:30 stop\n";
    let mut maker = Maker::told(&[&format!("{story}{begun}")]);
    maker.room("more", Room::Hours);
    let sand = line_of(&maker, "Sand");
    let figures = "Lamps 1 h 18 for 4, 50.59 min of it beside the pieces and 7.41 min for the first; 50.59 + 7.41 × 1.95 for 2 = 1 h 05";
    assert_eq!(sand, format!("Sand: instead of the 3 h planned, by 1 job of this kind of piece: {figures}."));
    assert_eq!((50.59_f64 + 7.41 * 1.95).round(), 65.0);
    assert_eq!(line_of(&maker, "Fit doors"), "Fit doors: planned 2 h 30 × 1.196 = 2 h 59. Less 30 min worked: 2 h 29 to come.");
    maker
        .tap(Tap::Estimate(EstimateTap::Whole(false)))
        .shows(&["Such pieces take 41 min as a whole. What is planned is all of it or takes as long"]);
    maker.hides(&["what is planned alone", "kind of piece it is"]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(false)));
    assert_eq!(line_of(&maker, "Fit doors"), "Fit doors: planned 2 h 30, and 5 % for rework = 2 h 38. Less 30 min worked: 2 h 08 to come.");
    assert!(line_of(&maker, "Sand").ends_with(" = 1 h 05. And 5 % for rework: 1 h 08."));
}

/// 19 h planned, the drive of 90 min among them, x 1.4: the rows make up what is likely in all, 26 h 36, and so much is to come. Once the frame is made the
/// drive says that its 90 min are to come.
#[test]
fn a_drive_is_worked_back_like_what_else_was_planned() {
    let story = "2026-12-07 06:00 +00:00 workshop EUR metric\njob bench \"Bench\" 1 order\nabout bench piece boat\n\
        plan \"delivery\" deliver 90 min for bench\nplan \"frame\" make 1050 min for bench\n";
    let mut maker = Maker::told(&[story]);
    maker.room("bench", Room::Hours);
    let drive = "Delivery: planned 1 h 30 × 1.40 = 2 h 06.";
    assert_eq!(line_of(&maker, "Delivery"), drive);
    maker.shows(&[
        "24 h 30",
        "planned 1 h 30 × 1.40",
        "2 h 06",
        "19 h",
        "Still to come",
        "26 h 36",
        "26 h 36 likely in all",
        "Thought 19 h × 1.40 = 26 h 36.",
    ]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(false)));
    let drive_without = "Delivery: planned 1 h 30, and 7.5 % for rework = 1 h 37.";
    assert!(line_of(&maker, "Delivery").starts_with(drive_without), "{}", line_of(&maker, "Delivery"));
    let mut maker = Maker::told(&[&format!(
        "{story}07:00 start \"frame\" make on bench\n22:00 done 1\nstop\n22:10 start \"delivery\" deliver on bench\n22:30 stop\n"
    )]);
    maker.room("bench", Room::Hours);
    let left = "Less 20 min worked: 1 h 10 to come, as planned: work that takes longer makes no drive longer.";
    assert_eq!(line_of(&maker, "Delivery"), format!("{drive} {left}"));
}

/// Sanding took four hours longer than was likely: logged and to come add up to all of it, likely and safe.
#[test]
fn what_is_logged_and_what_is_to_come_add_up() {
    let mut maker = Maker::told(&[&format!("{CABINET}11:00 start \"sand\" make on more as sanding\n16:00 stop\nconfirm run sanding\n")]);
    maker.room("more", Room::Hours);
    let html = crate::screens::page(&maker.app).html();
    let said = between(&html, ">Logged ", " safe.<");
    let logged = read(between(&format!("; {said}"), "; ", "; to come"));
    let [likely, safe] = [between(said, "to come ", ", and "), between(said, ", and ", " to be safe,")].map(read);
    let [likely_in_all, safe_in_all] =
        [between(said, "is left: ", " likely in all"), &said[said.find("in all, ").unwrap() + 8..]].map(read);
    assert_eq!([logged + likely, logged + safe], [likely_in_all, safe_in_all], "{said}");
}

/// Four stools, of which a stool usually takes 6 h; their work began, and three old jobs were told after it. Estimated is by what was known when it
/// began, and says so; likely is by what is known now.
#[test]
fn estimated_says_what_it_was_estimated_by() {
    let told = "
2026-03-02 08:00 +00:00 workshop EUR metric
job stool \"Stools\" 4 order
plan \"carve\" make 60 min for stool
09:00 start \"carve\" make on stool
09:30 stop
10:00 start \"carve\" make on stool
";
    let mut maker = Maker::told(&[told]);
    maker.room("stool", Room::Hours).tap(Tap::Estimate(EstimateTap::Piece("stool"))).hides(&["when its work began"]);
    maker.tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Shop stools", "Kitchen stool", "Two stools"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["20", "4", "", "", "6", "1", "", "", "11.5", "2"]).tap(Tap::Save);
    maker.shows(&["Shop stools: 20 h for 4", "4 pieces take 3.70 of the first: 21 h 19."]);
    maker.shows(&[
        "How it was estimated when its work began",
        "Usual for a stool: 6 h.",
        "4 pieces take 3.70 of the first: 22 h 12.",
        "Together 22 h 12, which was estimated.",
    ]);
    maker.app.place = Place::Bench;
    maker.shows(&["22 h 12 estimated", "Estimated by what you thought and what is usual for such a piece."]);
    maker.hides(&["earlier jobs as a whole"]);
}

/// Three old stands were told. Their kind counts by its name for this job and for another one, before and after something is planned, until the
/// maker says otherwise; what is planned is a part of the whole.
#[test]
fn a_kind_by_its_name_counts_until_another_is_said() {
    let mut maker = Maker::new();
    let begin = |maker: &mut Maker, name: &str| {
        maker.tap(Tap::List).tap(Tap::Write(What::New)).tap(Tap::Say(0, name.into())).figures(&["5"]).tap(Tap::Save);
    };
    begin(&mut maker, "Oak stand");
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Stand A", "Stand B", "Stand C"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    let guess = "That it is a stand is a guess by its name.";
    maker.figures(&["10", "", "", "", "8", "", "", "", "9"]).tap(Tap::Save).shows(&["40 h 20 likely in all", guess]);
    maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, "Sand".into())).figures(&["150", "5"]).tap(Tap::Save);
    let planned = ["40 h 20 likely in all", "Not planned yet", "36 h 50", guess];
    maker.shows(&planned);
    // The rows, the rest and what is still to come add up: 3 h 30 and 36 h 50.
    let html = crate::screens::page(&maker.app).html();
    let told = ["planned in all", "2 h 30", "likely of these", "3 h 30", "Not planned yet", "36 h 50 to come", "Still to come", "40 h 20"];
    let mut from = html.find("planned in all").unwrap();
    for word in told {
        from = html[from..].find(word).map(|at| from + at).unwrap_or_else(|| panic!("{word} in its place"));
    }
    maker.tap(Tap::Page).shows(&["40 h 20 to come", guess]);
    maker.tap(Tap::Room(Room::Dates)).shows(&["what is not planned yet", "36 h 50", guess]);
    begin(&mut maker, "Stand two");
    maker.tap(Tap::Room(Room::Hours)).shows(&["40 h 20 likely in all", guess]).hides(&["Nothing to go by yet"]);
    maker.tap(Tap::Room(Room::Dates)).shows(&["Begun now, it is ready", guess]).hides(&["Nothing says yet"]);
    // Of the whole nobody knows what dries, until a coat is planned.
    maker.shows(&["nor is drying"]).tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, "Oil".into())).figures(&["60"]).tap(Tap::Save);
    maker.tap(Tap::Page).tap(Tap::Room(Room::Dates)).shows(&["Delivering, selling and office are not in it."]).hides(&["nor is drying"]);
    // Said, it is no guess, and nothing moves; said otherwise, stands are no measure of it.
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Estimate(EstimateTap::Piece("stand"))).shows(&["40 h 20 likely in all"]).hides(&[guess]);
    maker.tap(Tap::Estimate(EstimateTap::Piece("lamp"))).shows(&["This is what is planned alone."]).hides(&[guess]);
}

/// Sanding overran with no piece noted, and another step was begun after it: it counts as done by its hours, and that stands wherever those hours
/// make a price, and on no paper.
#[test]
fn what_is_done_by_its_hours_alone_is_named_beside_each_price() {
    const UNNOTED: &str = "No piece of sand is noted as done; by its hours it counts as done.";
    let stand = "2026-04-17 08:00 +00:00 workshop USD inch\nrate pay 17 hours 600 logged 480 costs 1440\njob stool \"Stand\" 5 order\n\
        spend 60 glue on stool\nplan \"sand\" make 60 min for stool pieces 20\nplan \"coat\" make 60 min for stool pieces 5\n\
        all-planned stool\nstart \"sand\" make on stool\n09:30 stop\n";
    let coat = "10:00 start \"coat\" make on stool\n10:10 stop\n";
    let check = |told: String, is_said: bool| {
        let mut maker = Maker::told(&[&told]);
        let job = maker.jobs["stool"];
        let is = |maker: &Maker, place: &str| {
            assert_eq!(page(&maker.app).html().contains(UNNOTED), is_said, "{place}: {told}");
        };
        maker.open("stool");
        is(&maker, "job");
        maker.room("stool", Room::Quote);
        is(&maker, "quote");
        let html = page(&maker.app).html();
        let paper = html.split_once("sheet card quote").unwrap().1.split_once("</section>").unwrap().0;
        assert!(!paper.contains(UNNOTED));
        maker.room("stool", Room::Dates);
        is(&maker, "dates");
        maker.app.go(Place::Price);
        is(&maker, "price");
        maker.say(Msg::Price(crate::app::price::Tap::Offer(job)));
        is(&maker, "offer");
    };
    check(stand.to_owned(), false);
    check(format!("{stand}{coat}"), true);
}

/// 7:30 on what nobody planned and 13:30 on what was: 21 minutes on the job, and as many on the card beneath, of which 14 and 8 would be one too many.
#[test]
fn the_benchs_head_and_its_card_say_the_same_minutes() {
    let told = "2026-03-09 08:00 -04:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"sand\" make 60 min for stool\n\
        09:00 start \"trim\" make on stool\n09:07:30 stop\n09:10 start \"sand\" make on stool\n09:23:30 about stool note \"nearly\"\n";
    let mut maker = Maker::told(&[told]);
    maker.say(Msg::Go(Place::Bench));
    maker.shows(&["21 min on the job", "14 min so far on it; 7 min on others"]);
}
