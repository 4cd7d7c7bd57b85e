//! Old jobs typed: what they warn of, put right and struck, and half-typed over a reload.

use super::estimate::{begun, planned};
use super::*;
use crate::app::jobs::estimate::EstimateTap;

/// Three rows, of which the last has no price; 1.42, 1.18 and 1.31 of what was thought warn of 25 h 26.
#[test]
fn three_old_jobs_warn_of_the_next_one() {
    let mut maker = begun();
    maker.shows(&["Nothing to go by yet", "Three old jobs"]);
    for (op, minutes) in [("make", "1080"), ("message", "60")] {
        planned(&mut maker, op, minutes);
    }
    // Each operation stands once, with what was planned and what is likely.
    maker.shows(&["Make", "planned 18 h × 1.40", "25 h 12", "planned in all", "26 h 36 likely in all"]);
    maker.shows(&[
        "This is what is planned alone. Nothing says yet what the whole job takes",
        "How it is reckoned",
        "People take 1.40 of what they think, until your own jobs say otherwise.",
        "Make: planned 18 h × 1.40 = 25 h 12.",
        "Message: planned 1 h × 1.40 = 1 h 24.",
        "Thought 19 h × 1.40 = 26 h 36.",
    ]);
    assert_eq!(crate::screens::page(&maker.app).html().matches(">Message<").count(), 1);
    maker.tap(Tap::Write(What::OldJobs)).shows(&["Old job 1", "hours in all", "pieces", "thought", "sold for", "Old job 3"]);
    for (nth, name) in ["Coffee table", "Stools", "Shelf"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["28.4", "", "20", "390", "17.7", "2", "15", "220", "13.1", "1", "10"]).tap(Tap::Save);
    maker.shows(&[
        "25 h 26 likely in all",
        "Safe is 25 h 26 likely and 6 h 52 that it may run over: 32 h 18.",
        "20 h 26, shorter: 7.5 % for rework instead<",
        "Your jobs took 1.42, 1.18 and 1.31 of what you thought. With the usual 1.4, which counts as 2 jobs, all 5 multiplied and the 5th root taken: 1.339.",
        "Thought 19 h × 1.339 = 25 h 26.",
        "Safe: 25 h 26 × 1.27 = 32 h 18.",
        "Old jobs",
        "Coffee table",
        "28 h 24, 20 h thought",
        "17 h 42 for 2, 15 h thought",
    ]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(false))).shows(&[
        "20 h 26 likely in all",
        "25 h 26, longer: × 1.339 on what you thought, nothing for rework",
        "19 h of operations, and 7.5 % for rework on top of that: 20 h 2",
    ]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(true))).tap(Tap::Estimate(EstimateTap::Keep));
    maker.shows(&["Kept ", "25 h 26, and 32 h 18 to be safe", "Keep this one instead"]);
    let kept = maker.sheet().account.hours.judged_by;
    assert_eq!(kept.map(|span| span.as_minutes()), Some(1_140));
}

#[test]
fn a_row_that_is_not_right_is_not_lost() {
    let mut maker = begun();
    maker.tap(Tap::Write(What::OldJobs)).tap(Tap::Save).shows(&["Nothing was asked for"]);
    maker.figures(&["28.4"]).tap(Tap::Save).shows(&["Nothing was named", "28.4"]);
    maker.tap(Tap::Say(0, "Coffee table".into())).figures(&["0"]).tap(Tap::Save).shows(&["Coffee table", "0 min is not between 1 min"]);
    maker.figures(&["28.4", "0"]).tap(Tap::Save).shows(&["Nothing was asked for"]);
    maker.figures(&["28.4", "1", "", "0"]).tap(Tap::Save).shows(&["is no price"]);
    maker.figures(&["28.4", "1", "1", "5"]).tap(Tap::Save).shows(&["it took 28.4 of what you thought"]);
    maker.figures(&["28.4", "1", "20", "5"]).tap(Tap::Save).shows(&["Old jobs", "Coffee table"]);
    assert_eq!(maker.app.shelf().workshop().old_jobs[0].piece, Key::read("table"));
}

/// Three are told, and the second took no time: its row is opened with its name, and nothing typed is lost.
#[test]
fn a_refused_old_job_is_opened() {
    let mut maker = begun();
    maker.tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Coffee table", "Stools", "Shelf"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["28", "", "", "", "0", "", "", "", "13"]).tap(Tap::Save).shows(&["0 min is not between 1 min"]);
    let draft = maker.app.jobs.draft.as_ref().unwrap();
    assert_eq!((draft.form.at, draft.form.text(8)), (4, "13"));
    maker.shows(&["value=\"Stools\""]);
}

/// Three old jobs are something to go by, whatever kind of piece is said or not, and their figures can be worked back.
#[test]
fn three_old_jobs_are_enough_and_are_worked_back() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Stools".into())).figures(&["5"]).tap(Tap::Save);
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Three stools", "Bar stool", "Kids stools"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["18", "3", "", "", "9", "", "", "", "22", "4"]).tap(Tap::Save);
    let worked = [
        "31 h 21 likely in all",
        "Three stools: 18 h for 3, so 6 h 19 for the first.",
        "Bar stool: 9 h.",
        "Kids stools: 22 h for 4, so 5 h 57 for the first.",
        "In the middle 6 h 58 (all 3 multiplied, and the root of it taken).",
        "5 pieces take 4.50 of the first: 31 h 21.",
        "Each further piece alike takes 5 % of the first less, down to 70 %.",
    ];
    maker.shows(&worked);
    let nothing = |maker: &Maker| crate::screens::page(&maker.app).html().contains("Nothing to go by yet");
    assert!(!nothing(&maker) && !crate::screens::page(&maker.app).html().contains("for rework"));
    for kind in ["shelf", "other", "stool"] {
        maker.tap(Tap::Estimate(EstimateTap::Piece(kind))).shows(&worked[..1]);
        assert!(!nothing(&maker));
    }
    // One planned operation does not stand for the whole: 200 min x 1.4 = 4 h 40, and the rest of 31 h 21.
    maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, "Sand".into())).figures(&["200", "5"]).tap(Tap::Save);
    maker.shows(&["Not planned yet", "26 h 41", "Nothing else is to be done", "Less what is planned, 4 h 40: 26 h 41 not planned yet."]);
    // No rework comes on top of what a whole piece took, so the other way is as long.
    maker.shows(&["31 h 21, as long: 7.5 % for rework instead; what a whole piece takes has its rework in it"]);
    maker.tap(Tap::Page).tap(Tap::Room(Room::Dates)).shows(&["what is not planned yet", "26 h 41", "Sand", "4 h 40"]);
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Estimate(EstimateTap::Whole(true)));
    maker.shows(&["4 h 40 likely in all", "More is to be done", "You said that what is planned is all of it."]);
}

/// Three told in one act: the first is struck, which names the act, and Take back turns that alone; the others stay, and so it goes on with
/// Do it again and by the letter.
#[test]
fn one_old_job_is_struck_and_the_others_stay() {
    let mut maker = begun();
    maker.tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Coffee table", "Stools", "Shelf"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["28", "", "", "", "17", "", "", "", "13"]).tap(Tap::Save).shows(&["Coffee table", "Stools", "Shelf"]);
    for (nth, names) in [["Coffee table", "Stools", "Shelf"], ["Stools", "Coffee table", "Shelf"]].into_iter().enumerate() {
        let line = maker.app.shelf().workshop().old_jobs[nth].entry;
        let [gone, stays @ ..] = names;
        let rows = |maker: &Maker, name: &str| crate::screens::page(&maker.app).html().contains(&format!("w7\">{name}<"));
        maker.tap(Tap::Estimate(EstimateTap::StrikeOld(line))).hides(&["Do it again"]);
        maker.shows(&["Old jobs that were struck", &format!("gone\">{gone}<"), "Undo strike", "Take back", &format!("struck: {gone}<")]);
        maker.hides(&["old jobs, "]);
        assert!(!rows(&maker, gone) && stays.iter().all(|name| rows(&maker, name)), "{gone}");
        maker.say(Msg::Common(Common::TakeBack));
        assert!(names.iter().all(|name| rows(&maker, name)), "{gone}");
        maker.hides(&["Old jobs that were struck"]).say(Msg::Common(Common::PutBack));
        assert!(!rows(&maker, gone) && stays.iter().all(|name| rows(&maker, name)), "{gone}");
        maker.say(Msg::Key("u".into()));
        assert!(names.iter().all(|name| rows(&maker, name)), "{gone}");
        // Whatever is done after it, it stands in its list.
        maker.tap(Tap::Estimate(EstimateTap::StrikeOld(line))).tap(Tap::Estimate(EstimateTap::Piece("stool")));
        maker.shows(&[&format!("gone\">{gone}<"), "Undo strike"]).tap(Tap::Estimate(EstimateTap::PutBackOld(line))).hides(&["struck"]);
        assert!(names.iter().all(|name| rows(&maker, name)), "{gone}");
    }
    // What was put right leaves nothing struck behind, and what stands by another telling is no struck one.
    let line = maker.app.shelf().workshop().old_jobs[0].entry;
    maker.tap(Tap::Write(What::OldJob(line))).figures(&["29"]).tap(Tap::Save).hides(&["struck"]);
}

/// Two rows are half typed and the page is loaded anew: they stand there again. Saved, or left with Not now, nothing is kept.
#[test]
fn half_typed_old_jobs_outlive_a_reload() {
    use crate::app::order::Order;
    let kept = |maker: &Maker| {
        maker.orders.iter().rev().find_map(|order| if let Order::KeepOldJobs(text) = order { Some(text.clone()) } else { None })
    };
    let typed = |maker: &mut Maker| {
        maker.tap(Tap::Write(What::OldJobs)).tap(Tap::Say(0, "Coffee table".into())).tap(Tap::Say(1, "Stools".into()));
        maker.figures(&["28.4", "", "20", "", "17.7"]);
        kept(maker).unwrap()
    };
    let text = typed(&mut begun());
    for (end, saved) in [(Tap::Save, true), (Tap::Close, false)] {
        let mut again = begun();
        again.app.jobs.half = text.clone();
        again.tap(Tap::Write(What::OldJobs)).shows(&["Coffee table", "28.4", "20", "Stools", "17.7"]).tap(end);
        assert_eq!((kept(&again), again.app.shelf().workshop().old_jobs.len() == 2), (Some(String::new()), saved));
        again.tap(Tap::Write(What::OldJobs)).hides(&["28.4"]);
    }
    // Another form leaves what is kept alone; what can't be read is no row.
    let mut other = begun();
    other.app.jobs.half = text.clone();
    other.tap(Tap::Write(What::Lesson)).tap(Tap::Close);
    assert_eq!((kept(&other), other.app.jobs.half == text), (None, true));
    let mut none = begun();
    none.app.jobs.half = "no row at all".into();
    none.tap(Tap::Write(What::OldJobs)).tap(Tap::Save).shows(&["no row at all"]);
    assert!(none.app.shelf().workshop().old_jobs.is_empty(), "a row without hours is refused");
}

/// A row is put right where it stands: filled as it was told, refused by its figure with nothing lost, taken back whole.
#[test]
fn an_old_job_is_put_right() {
    let mut maker = begun();
    maker.tap(Tap::Write(What::OldJobs)).tap(Tap::Say(0, "Coffee tables".into())).tap(Tap::Say(1, "Thing".into()));
    maker.figures(&["28.33", "2", "20", "390", "17"]).tap(Tap::Save);
    let line = |maker: &Maker, name: &str| {
        let old = maker.app.shelf().workshop().old_jobs.clone();
        old.iter().find(|old| old.name == name).map(|old| (old.entry, old.span.as_minutes(), old.piece.clone()))
    };
    let (tables, minutes, _) = line(&maker, "Coffee tables").unwrap();
    assert_eq!(minutes, 1_700);
    maker.shows(&["Mend"]).tap(Tap::Write(What::OldJob(tables))).shows(&["Old job", "Coffee tables", "28.33", ">2<", ">20<", ">390<"]);
    maker.tap(Tap::Save).shows(&["Nothing was asked for", "28.33"]);
    maker.tap(Tap::Say(0, " ".into())).tap(Tap::Save).shows(&["Name: nothing is typed yet."]);
    maker.tap(Tap::Say(0, "Coffee table".into())).figures(&["0"]).tap(Tap::Save).shows(&["0 min is not between 1 min", "Coffee table"]);
    maker.figures(&["14", "1"]).tap(Tap::Save).shows(&["Old jobs", "Coffee table", "14 h"]).hides(&["Coffee tables"]);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(line(&maker, "Coffee tables").map(|old| old.1), Some(1_700));
    maker.hides(&[">Coffee table<"]);
    // What its name does not tell stays as it was told, of whatever kind the job is by now.
    maker.tap(Tap::Estimate(EstimateTap::Piece("shelf")));
    let (thing, _, piece) = line(&maker, "Thing").unwrap();
    maker.tap(Tap::Write(What::OldJob(thing))).figures(&["18"]).tap(Tap::Save);
    assert_eq!((piece.clone(), line(&maker, "Thing").map(|old| (old.1, old.2))), (Key::read("bench"), Some((1_080, piece))));
}
