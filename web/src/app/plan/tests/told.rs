//! What the page of a plan says: sizes at the saw, waste, near misses, how near a field comes, what is proven.

use super::*;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::unlock::Tries;

/// A rack of oak strips and tread ends and of short beech; three jobs.
pub(super) const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 27 x 62 x 1010 mm\n\
    count 37 strips\npile ends oak-european 40 x 150 x 365 mm\ncount 31 ends\npile bits beech-european 20 x 45 x 60 mm\ncount 5 bits\nhome\n\
    job tray \"Bench\" 1 spec\n";
/// The parts of a table.
const PARTS: &str = "part \"top\" 1 of 25 x 300 x 900 mm for tray\npart \"leg\" 4 of 38 x 38 x 350 mm for tray\n";

pub(super) fn at_rack(parts: &str) -> App {
    app_of(&format!("{RACK}{parts}"))
}

/// Types figures into the slots of a shape; none leaves a slot as it is.
pub(super) fn typed(app: &mut App, figures: &[&str]) {
    for (nth, figure) in figures.iter().enumerate().filter(|(_, figure)| !figure.is_empty()) {
        heard(app, [Tap::At(nth)]);
        heard(app, figure.chars().map(|digit| Tap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()))));
    }
}

/// What the page says of the plan of a shape with these figures, found in so many steps.
pub(super) fn said(parts: &str, taps: &[Tap], figures: &[&str]) -> (App, String) {
    let mut app = at_rack(parts);
    heard(&mut app, [Tap::Open]);
    heard(&mut app, taps.iter().cloned());
    typed(&mut app, figures);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    let shown = page(&app);
    (app, shown)
}

/// What was asked is planned in so many steps, and the other ways of a top in turn.
pub(super) fn solved(app: &mut App) {
    let mut asked = app.plan.given.as_ref().unwrap_or_else(|| panic!("{:?}", app.plan.why_not)).ready.asked.clone();
    loop {
        let answered = asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
        let short = asked.short_end(&answered).map(|short| Planning::ShortEnd { worth: answered.worth.clone(), short });
        let told = [Some(Planning::Done(Box::new(answered))), short];
        let orders: Vec<Order> = told.into_iter().flatten().flat_map(|told| app.told(crate::app::news::News::Planning(told))).collect();
        let next = orders.into_iter().find_map(|order| if let Order::Plan { asked, ms } = order { Some((asked, ms)) } else { None });
        match next {
            Some((next, ms)) if ms < LONGER => asked = *next,
            _ => return unlocked(app),
        }
    }
}

/// The page is painted, and what would give more is found beside it.
pub(super) fn unlocked(app: &mut App) {
    let orders = app.told(crate::app::news::News::Painted);
    for order in orders {
        if let Order::Unlock(of) = order {
            let found = Tries::begin(&of).to_their_end();
            app.told(crate::app::news::News::Unlocks(of, Some(found)));
        }
    }
}

/// What the page says, and what it does not.
#[track_caller]
pub(super) fn says(app: &App, wanted: &[&str], never: &[&str]) {
    let shown = page(app);
    for words in wanted {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    for words in never {
        assert!(!shown.contains(words), "never {words}: {shown}");
    }
}

#[track_caller]
fn check(parts: &str, taps: &[Tap], figures: &[&str], wanted: &[&str]) {
    let (_, shown) = said(parts, taps, figures);
    for words in wanted {
        assert!(shown.contains(words), "{words}: {shown}");
    }
}

/// The tread ends are left out, or the strips are.
pub(super) fn without(nth: usize, mut taps: Vec<Tap>) -> Vec<Tap> {
    let app = at_rack("");
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    taps.push(Tap::Turn(all[nth].which()));
    taps
}

/// By hand: 400 / 8 is 50, half a millimetre is jointed off each edge; 27 less 2 is 25. Seven rows of 57 are what 62 gives.
#[test]
fn rows_say_how_wide_and_how_thick() {
    let strips = without(1, vec![Tap::Shape(Shape::Rows)]);
    check(
        "",
        &strips,
        &["1200", "400"],
        &[
            "8 rows. No plan of 8 rows of oak needs fewer than 10 pieces.",
            "Rows 50 mm wide, planed to 25 thick.",
            "Rip 51 wide, joint to 50, plane to 25 thick.",
            "9 pieces give 9045 of the 9600 mm asked.",
            "1 mm narrower, 399 mm, needs 7 rows.",
            "litres taken for good, 26",
            ": cutting 0.1, ripping and planing",
            "of 9689 mm is waste",
            "Left out: bits, too short.",
        ],
    );
    check("", &strips, &["1200", "398"], &["7 rows.", "Rows 56.9 mm wide, together 398.3, 0.3 more than asked, planed to 25 thick."]);
    let ends = [
        "Strips: too narrow for 7 rows in 400 mm.",
        "Rip each in two 58.2 wide, joint to 57.2, plane to 38 thick.",
        "No plan of 7 rows of oak needs fewer than 24 strips.",
        "23 strips give 8280 of the 8400 mm asked.",
    ];
    check("", &[Tap::Shape(Shape::Rows)], &["1200", "400", "7"], &ends);
}

/// What is small, one, or of no ripping is said as it is.
#[test]
fn figures_are_said_as_they_are() {
    use crate::words::en::{plan, told};
    let sized = Some("1.2");
    let check = |said: String, wanted: &str| assert_eq!(said, wanted);
    check(told::narrower("1 mm", "40 mm", ("1", true)), "1 mm narrower, 40 mm, needs 1 row.");
    check(told::waste_parts(Shape::Sticks, [None, sized], true), ", nearly all of it by planing to size.");
    check(told::waste_parts(Shape::Rows, [None, sized], false), ", all of it by ripping and planing.");
    check(told::waste_parts(Shape::Rows, [sized, None], true), ", nearly all of it by cutting.");
    check(told::waste_parts(Shape::Rows, [sized, None], false), ", all of it by cutting.");
    check(plan::saw_cuts("12", false, true), "12 cuts, with trimming.");
    check(plan::saw_cuts("1", true, false), "1 cut.");
    check(plan::takes_less(Shape::Parts, "20.5", false), "No plan takes more than 20.5 % less wood than this one.");
    check(plan::takes_less(Shape::Parts, "20.5", true), "No plan takes more than 20.5 % less wood than this one, pieces counted whole.");
    check(plan::takes_less(Shape::Sticks, "20.5", false), "No plan takes more than 20.5 % less length than this one.");
    check(told::held_for(plan::NO_PLAN_MORE, &[told::BY_CROSSCUTS.into()]), "No plan can make more, by crosscuts alone.");
}

/// By hand: 2 over each way; strips of 62 less 2 off each edge are 58 wide.
#[test]
fn parts_are_cut_by_all_their_sides() {
    check(
        PARTS,
        &[Tap::Shape(Shape::Parts)],
        &[],
        &[
            "Long × wide × thick, with 2 over each way to finish.",
            "902 × 58 × 27, top",
            " of 352 × 40 × 40, leg",
            "A: strips; B: ends",
            "Glue up and finish, mm",
            "Glue top of 5 × 58 and 1 ×",
            "1 × top: 900 × 300 × 25",
            "4 × leg: 350 × 38 × 38",
            "litres taken",
            ": cutting",
            "planing and finishing",
            "The top, 300 mm wide, moves",
            "A wide glued top needs room to move",
        ],
    );
}

/// By hand: strips are 62 wide; 61 with 2 over is 63, and with 1 over the whole strip would do, its edges planed. A key plans it so; the plan
/// stands, is used and outlives the page, and the figure of the saw comes back with one tap.
#[test]
fn a_part_that_is_glued_for_its_over_alone_can_have_less() {
    let slat = "part \"slat\" 2 of 20 x 61 x 900 mm for tray\n";
    let why = "Slat is glued up: A is 1 mm too narrow for 2 mm over in width. With 1 mm over one strip does.";
    // 58 and 6 are 63 less 1 of joint, and no strip is narrower than 20: both slats take two strips.
    let glued = "Glue 2 × slat of 1 × 58 and 1 × 20 wide: together 77, sawn to 63.";
    check(slat, &[Tap::Shape(Shape::Parts)], &[], &[glued, why, "Plan with 1 over in width"]);
    let beech = "pile beech beech-european 20 x 45 x 700 mm\ncount 18 beech\npart \"slat\" 5 of 16 x 44 x 650 mm beech-european for tray\n";
    let instead = "is 1 mm too narrow for 2 mm over in width. With 1 mm over 5 boards do instead of 10.";
    check(beech, &[Tap::Shape(Shape::Parts)], &[], &[instead]);
    let (_, shown) = said(PARTS, &[Tap::Shape(Shape::Parts)], &[]);
    assert!(!shown.contains("too narrow for"), "{shown}");
    let (mut app, _) = said(slat, &[Tap::Shape(Shape::Parts)], &[]);
    heard(&mut app, [Tap::Over(Some(fivebar_core::quantity::Length::MM))]);
    solved(&mut app);
    let one = |app: &App| {
        let shown = page(app);
        let wanted = ["2 boards: 902 × 62 × 22, slat", "1 mm over in width in this plan", "with 2, 1 and 2 over to finish", "Use these"];
        for words in wanted {
            assert!(shown.contains(words), "{words}: {shown}");
        }
        assert!(!shown.contains("changed") && !shown.contains("Glue"), "{shown}");
    };
    one(&app);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    one(&again);
    heard(&mut again, [Tap::Change]);
    assert!(page(&again).contains("1 mm over in width in this plan"), "{}", page(&again));
    heard(&mut again, [Tap::Over(None)]);
    solved(&mut again);
    assert!(page(&again).contains(why), "{}", page(&again));
}

/// By hand: a strip of 1010 gives 600 and keeps 402, and 62 less 5 are 57, of which it takes six, 50 each; planed to the 20 that are asked.
/// A basket of two blocks, each three of 300 x 100 side by side, is ripped so; no blocks make 600 and 310.
#[test]
fn a_field_repeats_what_was_asked_and_how_far_off_it_is() {
    let brick = [Tap::Shape(Shape::Field), Tap::Pattern(1)];
    check(
        "",
        &brick,
        &["600", "300", "20"],
        &[
            "nearest possible",
            "Brick, 600 × 300 mm, 20 high.",
            "No field of these pieces comes nearer.",
            "Asked: brick, 600 × 300 mm, 20 high. It is just so.",
            "plane to 20 thick",
            "Waste",
        ],
    );
    let straight = [
        "Rip 51 wide, joint to 50, plane to 20 thick",
        "6 cut to 600",
        "402 left to keep",
        "Straight, 600 × 300 mm, 20 high.",
        "Left 31 whole and 6 of 402",
    ];
    check("", &without(1, vec![Tap::Shape(Shape::Field)]), &["600", "300", "20"], &straight);
    let basket = ["Rip 101 wide, joint to 100, plane to 20 thick.", "6 cut to 300", "It is just so."];
    check("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(2)]), &["600", "300", "20"], &basket);
    let whole = ["nearest of these tiles", "No field of tiles of these sizes comes nearer; others may."];
    check("", &[Tap::Shape(Shape::Field), Tap::Pattern(2)], &["600", "310", "20"], &whole);
    // By hand: a tread end 150 wide gives two of 60 side by side, with a kerf between and its edges trimmed; one is planned.
    let two =
        "One whole tile is planned of each piece, though B would give two. To plan with both, saw them in two and count them as such.";
    check("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(0)]), &["340", "60", "20"], &[two]);
    let (_, one) = said("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(2)]), &["600", "300", "20"]);
    assert!(!one.contains("One whole tile is planned"), "{one}");
    let (app, shown) = said("", &brick, &["580", "360", "38"]);
    assert!(shown.contains("Brick, 580 × 360 mm, 38 high.") && shown.contains("It is just so."), "{shown}");
    assert!(shown.contains("nearest possible") && shown.contains("No field of these pieces comes nearer."), "{shown}");
    assert!(app.plan.found.as_ref().is_some_and(|found| found.sheet.lines.iter().any(|line| !line.numbers.is_empty())), "brick is cut");
}

/// By hand: a board of 80 gives tiles 75 wide, of 680 four of 160 with 31 over; twelve of them are 480 x 300. 59 is under the least piece, and
/// 676 is longer than what is left of a board once its ends are square. The strips of the rack give 1005, so they are left out.
#[test]
fn tiles_of_a_length_come_several_out_of_each_board() {
    let boards = "pile boards maple-sugar 25 x 80 x 680 mm\ncount 20 boards\n";
    let taps = without(1, without(0, vec![Tap::Shape(Shape::Field)]));
    let of = |tile: &str| {
        let mut app = at_rack(boards);
        heard(&mut app, [Tap::Open]);
        heard(&mut app, taps.iter().cloned());
        typed(&mut app, &["480", "300", "", "", tile]);
        heard(&mut app, [Tap::Go]);
        app
    };
    let mut app = of("160");
    solved(&mut app);
    let shown = [
        "Straight, 480 × 300 mm",
        "It is just so.",
        "3 boards: 4 tiles of 160 from each, 31 mm of each left",
        "Used 3 of 20 pieces.",
        "Use these 3",
    ];
    says(&app, &shown, &["two whole tiles in length"]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &shown, &[]);
    heard(&mut again, [Tap::Change]);
    assert_eq!(again.plan.draft.form.text(4), "160");
    says(&of("59"), &["A tile of 59 mm is shorter than your least piece, 60 mm."], &[]);
    let long = "A tile of 676 mm does not come out of these pieces: the longest gives 675 mm between its trimmed ends.";
    says(&of("676"), &[long], &[]);
    let (_, whole) = said(boards, &taps, &["300", "300"]);
    assert!(whole.contains("D gives two whole tiles in length, and one is planned. With a tile length, all that come out are."), "{whole}");
    let mut herringbone = at_rack(boards);
    heard(&mut herringbone, [Tap::Open]);
    heard(&mut herringbone, taps.iter().cloned().chain([Tap::Pattern(3)]));
    typed(&mut herringbone, &["480", "300"]);
    heard(&mut herringbone, [Tap::Go]);
    let asks = "A herringbone of whole pieces has tiles of 660 mm here, longer than the 300 mm side. Say a tile length.";
    says(&herringbone, &[asks], &[]);
}

/// One pattern at a time, or any.
#[test]
fn a_pattern_is_chosen_and_not_added() {
    let on = |taps: &[Tap]| {
        let mut app = at_rack("");
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Field)]);
        heard(&mut app, taps.iter().cloned());
        app.plan.draft.patterns
    };
    assert_eq!(on(&[]), [true, false, false, false, false]);
    assert_eq!(on(&[Tap::Pattern(1)]), [false, true, false, false, false]);
    assert_eq!(on(&[Tap::Pattern(1), Tap::AnyPattern]), [true, true, true, true, false]);
    assert_eq!(on(&[Tap::AnyPattern, Tap::Pattern(4)]), [false, false, false, false, true]);
}

/// What is proven is said of pieces counted whole; a pile of several lengths is reckoned at its shortest.
#[test]
fn what_is_counted_is_said() {
    let slats = "pile band walnut-black 30 x 60 x 700..900 mm\ncount 9 band\npart \"slat\" 4 of 20 x 50 x 300 mm walnut-black for tray\n";
    let shortest = "is 700–900 mm long, and reckoned at 700, its shortest.";
    let whole = "Proven: no plan takes less wood, pieces counted whole.";
    check(slats, &[Tap::Shape(Shape::Parts)], &[], &[shortest, whole, "best possible", "Used 2 of"]);
    // What the job took of it counts by the middle, and says so.
    let (mut app, _) = said(slats, &[Tap::Shape(Shape::Parts)], &[]);
    let middle = |app: &mut App| {
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [51; 10] });
        page(app).contains("Pieces of a range of lengths count here by its middle, or as they were measured")
    };
    heard(&mut app, [Tap::Use]);
    assert!(middle(&mut app));
    let (mut app, _) = said(PARTS, &[Tap::Shape(Shape::Parts)], &[]);
    heard(&mut app, [Tap::Use]);
    assert!(!middle(&mut app));
}

/// On paper a piece has its length, and a search that still goes on is said.
#[test]
fn paper_says_lengths_and_that_it_was_early() {
    let strips = without(1, vec![Tap::Shape(Shape::Rows)]);
    let (mut app, _) = said("", &strips, &["1200", "400"]);
    let found = app.plan.found.as_ref().unwrap().answered.clone();
    let open = Answered { bound: vec![found.worth[0], found.worth[1] - 2], ..found };
    heard(&mut app, [Tap::Go]);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(open))));
    let shown = page(&app);
    assert!(
        shown.contains("A: 1005")
            && shown.contains("print-only\">A: 27 × 62 × 1010<")
            && shown.contains("print-only\">Printed before the search was done"),
        "{shown}"
    );
    heard(&mut app, [Tap::Stop]);
    assert!(!page(&app).contains("Printed before the search was done"));
}

/// The waste of the plan and what is planned of the wood taken make a hundred, of parts and of a top in rows; nothing is finished yet.
#[test]
fn the_waste_and_what_is_planned_make_a_hundred() {
    for (parts, taps, figures) in [(PARTS, vec![Tap::Shape(Shape::Parts)], &[][..]), ("", vec![Tap::Shape(Shape::Rows)], &["1200", "400"])]
    {
        let (mut app, shown) = said(parts, &taps, figures);
        let tenths = |text: &str, before: &str, after: &str| {
            let figure = text.split(before).nth(1).and_then(|rest| rest.split(after).next()).unwrap_or_else(|| panic!("{before}: {text}"));
            let (whole, tenth) = figure.split_once('.').unwrap_or((figure, "0"));
            whole.parse::<i64>().unwrap() * 10 + tenth.parse::<i64>().unwrap()
        };
        let waste = tenths(&shown, " litres taken, ", " %");
        heard(&mut app, [Tap::Use]);
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [50; 10] });
        let planned = tenths(&page(&app), "<span>Planned of taken</span><span class=\"w8\">", " %");
        assert!((planned + waste - 1_000).abs() < 2, "{planned} {waste}: {}", page(&app));
    }
}

/// What the plan says is taken is what the job says is taken; each share stands under what it is of.
#[test]
fn the_plan_and_the_wood_of_the_job_agree() {
    let (mut app, shown) = said(PARTS, &[Tap::Shape(Shape::Parts)], &[]);
    let taken = shown.split(" litres taken").next().and_then(|before| before.rsplit(' ').next()).unwrap_or_default().to_owned();
    let wood = |app: &mut App| {
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [50; 10] });
        page(app)
    };
    let before = wood(&mut app);
    assert!(!before.contains("a size is missing") && !before.contains("Taken for good"), "{before}");
    heard(&mut app, [Tap::Open, Tap::Use]);
    assert!(!page(&app).contains("Left out:"), "the wood is cut: {}", page(&app));
    let after = wood(&mut app);
    for words in [
        &*format!("<span>Taken for good</span><span class=\"w8\">{taken} litres</span>"),
        "Planned of taken",
        "All that was fetched with it",
    ] {
        assert!(after.contains(words), "{words}: {after}");
    }
    assert!(!after.contains("What the wood gives"), "its wood is taken: {after}");
}

/// By hand: 328 px hold 1200 mm, so 400 mm are 109 px: a row of 8 is 13.7 px high, one of 16 is 6.8.
#[test]
fn joints_are_drawn_no_thicker_than_the_rows_bear() {
    for (rows, class) in [("8", "class=\"lay\""), ("16", "class=\"lay fine\"")] {
        check("", &[Tap::Shape(Shape::Rows)], &["1200", "400", rows], &[class]);
    }
}

/// What is asked to be of two woods is, though one of them alone comes as near; of one wood there is none.
#[test]
fn two_woods_by_turns_are_two_woods() {
    let two = vec![Tap::Shape(Shape::Field), Tap::Pattern(0), Tap::Two];
    let (app, shown) = said("", &two, &["220", "40"]);
    let used = app.plan.found.as_ref().map(|found| found.sheet.used.iter().filter(|used| 0 < used.pieces).count());
    assert_eq!(used, Some(2), "{shown}");
    let mut app = at_rack("");
    heard(&mut app, [Tap::Open]);
    heard(&mut app, without(2, two));
    typed(&mut app, &["220", "40"]);
    heard(&mut app, [Tap::Go]);
    assert!(page(&app).contains("All pieces to use are of one wood: two by turns need two."), "{}", page(&app));
}

/// By hand: a top of 300 with 2 over is cut 302 wide; of strips of 62 and ends of 150 only the strips are 900 long.
#[test]
fn a_glued_part_says_why() {
    let why = "Top is glued up: with what is over it is cut 302 mm wide, and the widest board that is thick and long enough is A, 62 mm.";
    check(PARTS, &[Tap::Shape(Shape::Parts)], &[], &[why, "Parts for 1 piece."]);
    let (_, shown) = said("part \"leg\" 4 of 38 x 38 x 350 mm for tray\n", &[Tap::Shape(Shape::Parts)], &[]);
    assert!(!shown.contains("is glued up"), "{shown}");
}

/// A bound that is not met names its volume beside what the plan takes.
#[test]
fn what_bounds_the_wood_is_said() {
    let (mut app, _) = said(PARTS, &[Tap::Shape(Shape::Parts)], &[]);
    let (given, found) = (app.plan.given.clone().unwrap(), app.plan.found.clone().unwrap());
    let worth = found.answered.worth.clone();
    let litres = |units: i128| given.ready.volume(units).unwrap().litres();
    let open = Answered { bound: vec![worth[0], worth[1] * 9 / 10], ..found.answered.clone() };
    app.plan.found.as_mut().unwrap().sheet = fivebar_core::sheet::plan::sheet(&given.ready, &open, given.room).unwrap();
    app.plan.found.as_mut().unwrap().answered = open;
    let least = litres(worth[1] * 9 / 10);
    let shown = page(&app);
    let figure = |from: &str| {
        let rest = shown.split(from).nth(1).unwrap_or_else(|| panic!("{from}: {shown}"));
        rest.split(' ').next().and_then(|n| n.parse::<f64>().ok()).unwrap_or_else(|| panic!("{rest}"))
    };
    let (least, said) = (f64::try_from(least).unwrap(), figure("Not proven: the wood. No less than "));
    assert!(said <= least && least < said + 0.1, "{said} {least}");
    // The share beside them is theirs: ten in a hundred less, as near as they are written.
    let takes = figure("this plan takes ");
    let share = figure("No plan takes more than ");
    assert!((((takes - said) / takes * 1_000.0).ceil() - share * 10.0).abs() < 4.0, "{said} {takes} {share}");
    // Nothing of it goes back: one sum, read alike wherever it stands.
    assert!(found.sheet.used.iter().all(|used| used.remainders.is_empty() && used.left_strips == 0), "{:?}", found.sheet.used);
    let taken = shown.split(" litres taken").next().and_then(|before| before.rsplit(' ').next()).unwrap();
    assert_eq!(takes.to_string(), taken.trim_end_matches('0').trim_end_matches('.'), "{shown}");
}

/// From sticks to parts what is asked stays, and so do boards to buy whatever is asked; after a plan that is used all begins anew.
#[test]
fn another_shape_of_the_same_parts_keeps_what_was_typed() {
    let mut app = at_rack(PARTS);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::LeaveOut("top".into()), Tap::Press(Press::Digit(3))]);
    let boards = fivebar_core::sheet::make::Boards { wood: None, size: [Length::MM; 3], n: 2, price: None };
    app.plan.draft.bought.push(boards);
    let asked = |app: &App| {
        let draft = &app.plan.draft;
        (draft.form.slots[0].text.clone(), draft.without.clone(), draft.bought.len())
    };
    let typed = ("3".to_owned(), vec!["top".to_owned()], 1);
    heard(&mut app, [Tap::Shape(Shape::Parts)]);
    assert_eq!(asked(&app), typed);
    heard(&mut app, [Tap::Shape(Shape::Sticks)]);
    assert_eq!(asked(&app), typed);
    heard(&mut app, [Tap::Shape(Shape::Rows)]);
    assert_eq!(asked(&app).2, 1, "boards to buy");
    let (mut app, _) = said(PARTS, &[Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())], &[]);
    heard(&mut app, [Tap::Use, Tap::Shape(Shape::Sticks)]);
    assert_eq!(asked(&app).1, Vec::<String>::new());
}

/// Two layers are named; a count of lengths is no size, and what is used is of pieces.
#[test]
fn counts_say_of_what_they_are() {
    let bits = "pile tiles ash-european 12 x 65 x 125 mm\ncount 12 tiles\n";
    let parts = without(1, without(0, vec![Tap::Shape(Shape::Field)]));
    let (_, shown) = said(bits, &parts, &["240", "120", "20"]);
    assert!(shown.contains("20 high, in 2 layers."), "{shown}");
    use crate::words::en::plan as words;
    assert_eq!(
        [words::used_of("1", "1"), words::used_of("5", "5"), words::used_of("5", "12")],
        ["Used the one piece.", "Used all 5 pieces.", "Used 5 of 12 pieces."]
    );
    assert_eq!(words::times("2", "264"), "2 of 264");
}

/// Wood that is to be cut comes before an empty bench.
#[test]
fn the_next_act_of_a_job_that_is_cut_is_the_list_at_the_saw() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    heard(&mut app, [Tap::Use]);
    app.jobs.room = None;
    let shown = page(&app);
    assert!(shown.contains("To the list at the saw") && !shown.contains("Go to the bench"), "{shown}");
    app.heard(Msg::Jobs(Jobs::Next), Now { wall: app.now, chance: [90; 10] });
    assert!(page(&app).contains("At the saw, mm"), "{}", page(&app));
}
