//! What the page of a plan says is taken, wasted and left, and what bounds it.

use super::told::{PARTS, check, said, without};
use super::*;

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
