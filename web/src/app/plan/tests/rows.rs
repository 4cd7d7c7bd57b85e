//! A top row by row: at the saw, where a piece of the picture lies, and what of it is cut when it is planned again.

use super::rack_first::planned_out;
use super::told::typed;
use super::top_first::rack;
use super::*;

/// Eight rows of 2400: two flats of 905 and 590 of a third each.
fn planned(n: u32) -> App {
    let mut app = rack(n);
    typed(&mut app, &["2400", "650", "8"]);
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 8, "{}", page(&app));
    app
}

#[track_caller]
fn check(app: &App, all: &[&str], none: &[&str]) {
    let shown = page(app);
    for words in all {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    for words in none {
        assert!(!shown.contains(words), "{words}: {shown}");
    }
}

const FIRST: &str = "Row 1: A 905 + A 905 + A 590, no. 1";

#[test]
fn the_list_at_the_saw_goes_by_rows_too() {
    let mut app = planned(30);
    check(&app, &["By pile", "By row", "16 whole, ends trimmed to 905"], &[FIRST]);
    heard(&mut app, [Tap::ByRow(true)]);
    check(&app, &[FIRST, "Row 8: ", "their boards count as cut"], &["tick done"]);
    assert!(!page(&app).split_once("ticks print-only").unwrap().0.contains("16 whole"), "by pile on paper alone");
    heard(&mut app, [Tap::Use, Tap::TickRow(0)]);
    check(&app, &[FIRST, "tick done all", "tick of row 1"], &[]);
    assert_eq!(app.plan.ticked.lines_done(), 0, "a row is no line");
    let now = Now { wall: app.now, chance: [99; 10] };
    app.heard(Msg::Common(Common::TakeBack), now);
    check(&app, &[FIRST], &["tick done"]);
    // It is of rows alone.
    let mut app = opened("");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Go]);
    check(&app, &[], &["By row"]);
}

/// A tap on a piece says which row it lies in, where in it, of what, and how long, in the words of the list by rows.
#[test]
fn a_tapped_piece_says_where_it_lies() {
    let mut app = planned(30);
    for (nth, words) in
        [(0, "Row 1, piece 1: A, 905 long: flats"), (2, "Row 1, piece 3: 1, 590 long: flats"), (4, "Row 2, piece 2: A, 905 long")]
    {
        heard(&mut app, [Tap::Piece(nth)]);
        check(&app, &[words], &["Tap a piece"]);
    }
    // The same once more takes it back.
    heard(&mut app, [Tap::Piece(4)]);
    check(&app, &["Tap a piece"], &["Row 2, piece 2"]);
}

/// Of sixteen whole and eight cut boards seven and three are cut: three rows. Planned again it is the other five, in rows as wide; a key plans
/// all of it anew, and one the other five again.
#[test]
fn rows_that_are_cut_count_when_it_is_planned_again() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use]);
    heard(&mut app, (0..7).map(|_| Tap::OneMore(0)).chain((0..3).map(|_| Tap::OneMore(1))));
    for again in [Tap::Go, Tap::OtherRows] {
        planned_out(&mut app, vec![again]);
        check(
            &app,
            &["2400 × 650 mm, 5 of 8 rows", "5 rows.", "3 of the 8 rows are cut already; these are the others."],
            &["Plan the other"],
        );
        assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 5);
        planned_out(&mut app, vec![Tap::AllAnew]);
        check(&app, &["3 of these 8 rows are cut already", "Plan the other 5 alone"], &["all of this is planned anew"]);
    }
}

/// All eight rows are ticked, so both lines are done. A tap on one of them has nothing to show: it is said, and no tick is kept or taken back.
/// Whole boards that are ticked as well stand done without it, too.
#[test]
fn a_line_that_its_rows_make_done_is_not_ticked() {
    let says = "The rows that are ticked make this line done. Take their ticks off under By row.";
    let mut app = planned(30);
    heard(&mut app, [Tap::Use, Tap::Tick(1)]);
    heard(&mut app, (0..8).map(Tap::TickRow));
    for line in [0, 1] {
        let (ticked, last) = (app.plan.ticked.clone(), app.shelf().last_tick);
        let orders = heard(&mut app, [Tap::Tick(line)]);
        assert_eq!((&app.plan.ticked, app.shelf().last_tick), (&ticked, last), "{line}");
        assert!(orders.contains(&Order::Feel(Feel::Refused)), "{orders:?}");
        check(&app, &[says], &[]);
    }
    heard(&mut app, [Tap::TickRow(0)]);
    check(&app, &["14 of 16<"], &[says]);
    // What shows is ticked.
    heard(&mut app, [Tap::Tick(0)]);
    check(&app, &["16 of 16<"], &[says]);
}

/// A ticked row is of boards that are cut: they count as cut by pile, and stay where the rest of the plan goes.
#[test]
fn the_boards_of_ticked_rows_are_cut() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use, Tap::TickRow(0), Tap::TickRow(1)]);
    check(&app, &["4 of 16<", "2 of 8<"], &[]);
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::AllAnew]);
    check(&app, &["2 of these 8 rows are cut already", "Plan the other 6 alone"], &[]);
    let plan = app.own.shop(app.now.at).job(app.jobs.open.unwrap()).unwrap().plans.last().unwrap().id;
    crate::app::plan::show(&mut app, plan);
    let dropped = crate::app::plan::dropping(&app).unwrap();
    assert_eq!((dropped.cut, dropped.uncut.unwrap().back[0].1), (6, 18));
}

/// Rows that are ticked and rows that come out of other boards add up; a row of boards that are ticked is counted once.
#[test]
fn rows_that_are_ticked_add_to_those_of_ticked_boards() {
    let two_of_boards = (0..4).map(|_| Tap::OneMore(0)).chain([Tap::OneMore(1), Tap::OneMore(1)]);
    let mut app = planned(30);
    heard(&mut app, std::iter::once(Tap::Use).chain(two_of_boards.clone()));
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::AllAnew]);
    check(&app, &["2 of these 8 rows are cut already"], &[]);
    let mut app = planned(30);
    heard(&mut app, [Tap::Use, Tap::TickRow(6), Tap::TickRow(7)]);
    heard(&mut app, two_of_boards);
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::AllAnew]);
    check(&app, &["4 of these 8 rows are cut already", "Plan the other 4 alone"], &[]);
}

/// Two rows come out of the boards that are ticked by pile: by row they are ticked, too, and their ticks come off by pile alone.
#[test]
fn rows_whose_boards_are_ticked_are_ticked() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use, Tap::ByRow(true)]);
    let done = |app: &App| page(app).matches("tick done all").count();
    assert_eq!(done(&app), 0);
    heard(&mut app, (0..4).map(|_| Tap::OneMore(0)).chain([Tap::OneMore(1), Tap::OneMore(1)]));
    assert_eq!(done(&app), 2, "{}", page(&app));
    let before = app.plan.ticked.clone();
    heard(&mut app, [Tap::TickRow(0)]);
    check(&app, &["The boards that are ticked make this row done."], &[]);
    assert_eq!(app.plan.ticked, before);
}

/// What was used stands as it was when it was taken: the rack may hold others since.
#[test]
fn what_a_used_plan_took_is_of_when_it_was_taken() {
    let mut app = planned(30);
    check(&app, &["Used 24 of 30 pieces."], &["When it was taken"]);
    heard(&mut app, [Tap::Use]);
    check(&app, &["When it was taken: used 24 of 30 pieces."], &["Used 24 of 30"]);
}

/// A top whose rows are all ticked has no line left at the saw.
#[test]
fn a_top_cut_by_rows_is_cut() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use]);
    assert_eq!(crate::app::plan::cuts_left(&app).len(), 1);
    heard(&mut app, (0..8).map(Tap::TickRow));
    assert_eq!(crate::app::plan::cuts_left(&app), []);
}

/// The per cent that stand behind the words, tenths of them as written.
fn planned_of_taken(app: &App) -> f64 {
    let shown = page(app);
    let (_, behind) = shown.split_once("Planned of taken").unwrap();
    let (before, _) = behind.split_once(" %").or_else(|| behind.split_once("\u{a0}%")).unwrap();
    before.rsplit(|c: char| !c.is_ascii_digit() && c != '.').next().unwrap().parse().unwrap()
}

/// Three of the eight rows are cut, and one flat more of 905. The plan of the other five takes 16 pieces: 14 boards, and two of the ends of 312
/// instead of a 15th; the plan before goes on with 14. Both is said. Used, the page goes on to say which rows these are, and the job has no piece more than its plans use.
#[test]
fn rows_cut_before_stay_of_the_top() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use]);
    heard(&mut app, (0..7).map(|_| Tap::OneMore(0)).chain((0..3).map(|_| Tap::OneMore(1))));
    planned_out(&mut app, vec![Tap::Go]);
    let before = ["with the 14 boards that are not cut, and makes all its rows; this one takes 16."];
    let loose = "Cut already, in no row: 1 of A, 905. The rows they were for are planned anew.";
    let spot = "It may lie in place of pieces of this plan, which need not be cut then. A 905: row 1, piece 1.";
    check(&app, &[before[0], loose, spot], &[]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    let rows = "3 of the 8 rows are cut already; these are the others.";
    check(&app, &["The job has this wood", rows, loose, spot, "2400 × 650 mm, 5 of 8 rows"], &before);
    let mut again = super::reloaded(&app);
    let job = app.jobs.open.unwrap();
    heard(&mut again, [Tap::Saw(job)]);
    let plan = again.plan.used.unwrap();
    crate::app::plan::show(&mut again, plan);
    check(&again, &[rows, loose, spot, "2400 × 650 mm, 5 of 8 rows"], &before);
    app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [98; 10] });
    check(&app, &["Planned of taken"], &["more than its plans use", "fewer than its plans use"]);
    // The same eight rows of 24 flats, 910 long, of which some 312 go back to the rack, planed and ripped: of eight, or of seven, and two of these
    // are taken again.
    let mut whole = planned(30);
    heard(&mut whole, [Tap::Use]);
    whole.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: whole.now, chance: [99; 10] });
    let (of_5, of_8) = (planned_of_taken(&app), planned_of_taken(&whole));
    let length = |ends: f64| 24.0 * 910.0 - ends * 312.0 * (24.5 * 81.3) / (26.5 * 90.0);
    let ratio = of_5 * length(5.0) / (of_8 * length(8.0));
    assert!((ratio - 1.0).abs() < 0.002, "{of_5} % and {of_8} %");
}

/// A used plan that is taken back can be used again: nothing changed, and what it would leave of its boards is left out of nothing.
#[test]
fn a_used_plan_of_the_other_rows_is_taken_back() {
    let mut app = planned(30);
    heard(&mut app, [Tap::Use]);
    heard(&mut app, (0..7).map(|_| Tap::OneMore(0)).chain((0..3).map(|_| Tap::OneMore(1))));
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    let plan = app.plan.used.unwrap();
    // Its page is opened from another.
    crate::app::plan::show(&mut app, plan);
    super::later::take_back(&mut app);
    check(&app, &["Use these 16"], &["has changed since"]);
    let lies = |haul, pile| fivebar_core::ledger::fold::haul(&app.own.book, haul).and_then(|haul| haul.pile(pile).map(|it| it.on_rack()));
    for (source, _) in &app.plan.given.as_ref().unwrap().left_out {
        assert!(lies(source.pile.haul, source.pile.pile).is_some_and(|n| 0 < n), "{}", source.pile.label);
    }
}

/// One whole flat is cut and one to 590, and no row: it is planned again, and says of each where it may lie; two of 590 have two spots. Once the
/// row is ticked it lies there, and is offered nowhere else.
#[test]
fn pieces_of_rows_that_are_begun_are_listed_with_their_places() {
    let loose = "Cut already, in no row";
    for (cut, says, then) in [
        (vec![Tap::OneMore(0)], vec!["Cut already, in no row: 1 of A, 905.", "A 905: row 1, piece 1"], None),
        (vec![Tap::OneMore(1)], vec!["Cut already, in no row: 1 of A, 590.", "A 590: row 1, piece 3"], None),
        (
            vec![Tap::OneMore(1), Tap::OneMore(1)],
            vec!["2 of A, 590 and 590.", "They may lie in place", "A 590: row 1, piece 3; A 590: row 2, piece "],
            Some(["Cut already, in no row: 1 of A, 590.", "A 590: row 2, piece "]),
        ),
        (vec![Tap::OneMore(0), Tap::OneMore(1)], vec!["2 of A, 905 and 590.", "A 905: row 1, piece 1", "A 590: row 1, piece 3"], None),
    ] {
        let mut app = planned(30);
        heard(&mut app, std::iter::once(Tap::Use).chain(cut));
        planned_out(&mut app, vec![Tap::Go]);
        check(&app, &says, &["of these 8 rows are cut"]);
        heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        check(&app, &says, &[]);
        heard(&mut app, [Tap::TickRow(0)]);
        let not = [": row 1, piece 1", ": row 1, piece 3"];
        match &then {
            Some(then) => check(&app, then, &not),
            None => check(&app, &[], &[loose, not[0], not[1]]),
        }
        // Taken off again it is as before; of boards that are ticked the row is made of these, and the piece lies there still.
        heard(&mut app, [Tap::TickRow(0)]);
        check(&app, &says, &[]);
        heard(&mut app, [Tap::OneMore(0), Tap::OneMore(0), Tap::OneMore(1), Tap::TickRow(0)]);
        check(&app, &[loose, ": row 2, piece "], &not);
        // Nor does a third plan offer what the second laid.
    }
    let mut app = planned(30);
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false), Tap::TickRow(0)]);
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::AllAnew]);
    check(&app, &["1 of these 8 rows is cut already"], &[loose]);
}

/// A row that is ticked takes the flat of 905 that lies there from the plan before: one new whole flat is cut for it and not two, by pile as by
/// what would go back.
#[test]
fn a_ticked_row_takes_what_is_cut_before_it_takes_new_boards() {
    for cut_before in [false, true] {
        let mut app = planned(30);
        heard(&mut app, std::iter::once(Tap::Use).chain(cut_before.then_some(Tap::OneMore(0))));
        planned_out(&mut app, vec![Tap::Go]);
        heard(&mut app, if cut_before { vec![Tap::Use, Tap::UseAnd(false)] } else { vec![] });
        heard(&mut app, [Tap::TickRow(0)]);
        let whole = if cut_before { 1 } else { 2 };
        let boards = |app: &App| fivebar_core::sheet::make::cut::boards(&app.plan.found.as_ref().unwrap().sheet, &app.plan.ticked);
        assert_eq!(boards(&app), [whole, 1], "{}", page(&app));
        if cut_before {
            let job = app.jobs.open.unwrap();
            let plans = app.shelf().shop(app.now.at).job(job).unwrap().plans;
            let all = fivebar_core::ledger::fold::in_use(&app.own.book, &plans);
            let it = all.iter().find(|it| Some(it.plan.id) == app.plan.used).unwrap();
            assert_eq!(crate::app::plan::uncut(&app, it).map(|(cut, _)| cut), Some(2));
            let mut again = super::reloaded(&app);
            heard(&mut again, [Tap::Saw(job)]);
            crate::app::plan::show(&mut again, app.plan.used.unwrap());
            assert_eq!(boards(&again), [1, 1]);
            // One board more of the first line, and the row is of new boards: the old flat is in no row again.
            heard(&mut again, [Tap::OneMore(0)]);
            assert_eq!(boards(&again), [2, 1]);
            check(&again, &["Cut already, in no row: 1 of A, 905."], &[]);
        }
    }
}

/// A sentence of the page that begins so.
fn sentence(app: &App, begins: &str) -> String {
    let shown = page(app);
    let (_, behind) = shown.split_once(begins).unwrap_or_else(|| panic!("{begins}: {shown}"));
    format!("{begins}{}", behind.split('<').next().unwrap())
}

/// By hand, in inches: 13 3/8 in six rows of 2 1/4 is 13 1/2, and an eighth is sawn off the last. Two rows are cut; the plan of the other four
/// says the same of all six, and their weight and movement, once; of weight and glue that they are of all six, as what stands beside is of four.
#[test]
fn the_other_rows_say_what_becomes_of_the_whole_top() {
    let mut app = super::told::at_rack("");
    let story = tell(&format!("{}job top \"Top\" 1 spec\n", super::told::RACK.replace("EUR metric", "USD inch")));
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.jobs.open = story.names.job("top");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    typed(&mut app, &["44", "", "6"]);
    app.plan.draft.form.put(1, "13 3/8".into());
    planned_out(&mut app, vec![Tap::Go]);
    let all = ["Finished it weighs", "Across its 13"].map(|begins| sentence(&app, begins).replace("it weighs", "all 6 rows weigh"));
    let glue = sentence(&app, "Glue on ").replace("Glue on ", "Glue for all 6 rows on ");
    let sawn = sentence(&app, ": saw the last to 2");
    heard(&mut app, [Tap::Use, Tap::TickRow(0), Tap::TickRow(1)]);
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::OtherRows]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 4);
    let once = |app: &App| {
        for words in all.iter().chain([&sawn, &glue]) {
            assert_eq!(page(app).matches(words).count(), 1, "{words}: {}", page(app));
        }
        check(app, &["All 6 rows glued up are 13"], &["Glued up they are"]);
        for begins in ["Finished all 6 rows weigh", "it moves"] {
            assert_eq!(page(app).matches(begins).count(), 1, "{begins}");
        }
    };
    once(&app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    once(&app);
    let mut again = super::reloaded(&app);
    heard(&mut again, [Tap::Open]);
    once(&again);
}

/// As above, of just the 24 flats that the eight rows take: the plan before goes on with the 14 that are not cut, and planned again without
/// the ends they make fewer rows. Nobody is sent to buy for that.
#[test]
fn a_plan_again_of_fewer_rows_leads_back_to_the_plan_that_makes_all() {
    let mut app = planned(24);
    heard(&mut app, [Tap::Use]);
    let plan = app.plan.used.unwrap();
    heard(&mut app, (0..7).map(|_| Tap::OneMore(0)).chain((0..3).map(|_| Tap::OneMore(1))));
    // What is left of the boards is not to be used.
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let ends = all.iter().filter(|it| it.pile.rests).map(|it| Tap::Turn(it.which()));
    planned_out(&mut app, ends.chain([Tap::Go]).collect());
    assert!(app.plan.found.as_ref().unwrap().sheet.made < 5, "{}", page(&app));
    let all = "The plan before makes all 8 rows with the 14 boards that are not cut: nothing is to be bought for it.";
    let glue = "Glue for these rows, without those that are cut, on ";
    check(&app, &[all, glue, "This other way: ", "Back to the plan before"], &["Look for", "Add boards to buy"]);
    heard(&mut app, [Tap::Kept(plan)]);
    check(&app, &["The job has this wood"], &[all]);
}

/// Four of the eight flats of 590 are cut, and eight of the others crack: of the twelve that are left alone four rows come, and by hand five with
/// the pieces that are cut. It is said of the boards alone, and nobody is sent to buy for what the cut pieces may make.
#[test]
fn of_boards_that_are_not_cut_no_plan_is_the_last_word() {
    let mut app = planned(24);
    heard(&mut app, std::iter::once(Tap::Use).chain((0..4).map(|_| Tap::OneMore(1))));
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let why = fivebar_core::quantity::Key::read("twist").unwrap();
    super::later::order(&mut app, Command::Haul(fivebar_core::ledger::decide::HaulCommand::Reject { haul, pile, n: 8, why }));
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let ends = all.iter().filter(|it| it.pile.rests).map(|it| Tap::Turn(it.which()));
    planned_out(&mut app, ends.chain([Tap::Go]).collect());
    let of = "4 of 8 rows. No plan of oak can make more, of the boards that are not cut. The pieces that are cut may make more.";
    let never = [
        "No plan can make more.",
        "best possible",
        "Look for",
        "Add boards to buy",
        "makes one row more",
        " need at least",
        "make all 8 rows",
    ];
    check(&app, &[of, "Cut already, in no row: 4 of A", "most rows of the boards not cut"], &never);
}
