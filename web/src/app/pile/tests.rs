//! The page of a pile, tapped.

use super::*;
use crate::app::count::{self, Tap};
use crate::app::told::after;
use crate::app::{Common, Msg, draft};
use crate::parts::Place;
use fivebar_core::quantity::{Key, Length};

fn say(tap: PileTap) -> Msg {
    Msg::Count(Tap::Page(tap))
}

/// Presses of the pad: digits, `.` and rubbing out as `<`.
fn pads(text: &str) -> Vec<Msg> {
    let press = |c: char| match c {
        '.' => Press::Point,
        '<' => Press::RubOut,
        c => Press::Digit(c.to_digit(10).and_then(|n| u8::try_from(n).ok()).unwrap_or_default()),
    };
    text.chars().map(|c| Msg::Count(Tap::Press(press(c)))).collect()
}

/// One pile of ash, 1 x 2 x 18 in, so many counted, and its page open.
fn opened(counted: u32) -> App {
    let mut app = App::for_tests(Place::Count);
    let inches = |n: i64| Length::INCH.times(n).ok();
    let ash =
        PileFacts { wood: Key::read("ash-white"), thickness: inches(1), width: inches(2), length: inches(18), ..PileFacts::default() };
    draft::add(&mut app, ash, crate::app::told::nth(0));
    let pile = count::sheet(&app).unwrap().tiles[0].pile;
    if 0 < counted {
        after(&mut app, [Msg::Count(Tap::Arm(counted)), Msg::Count(Tap::Pile(pile)), Msg::Count(Tap::Arm(1))]);
    }
    after(&mut app, [say(PileTap::Open(pile))]);
    app
}

fn taken(app: &App) -> u32 {
    count::sheet(app).unwrap().tiles[0].taken
}

/// The figures of a form typed one after the other, then Done; what the page says.
fn filled(app: &mut App, doing: Doing, figures: &[&str]) -> String {
    after(app, [say(PileTap::Do(doing))]);
    for (nth, figure) in figures.iter().enumerate() {
        after(app, [say(PileTap::At(nth))]);
        after(app, pads(figure));
    }
    after(app, [say(PileTap::Save)])
}

#[track_caller]
fn says(shown: &str, words: &[&str]) {
    for word in words {
        assert!(shown.contains(word), "{word}: {shown}");
    }
}

#[test]
fn the_page_opens_from_the_list_and_leads_back() {
    let mut app = opened(38);
    says(
        &after(&mut app, []),
        &["count/pile-page", "nothing you wrote down speaks against it", "By layers", "By weight", "9.5 board feet, ± 5 %"],
    );
    let list = after(&mut app, [Msg::Count(Tap::Choose)]);
    says(&list, &["More", "need, weight"]);
    let pile = count::sheet(&app).unwrap().tiles[0].pile;
    after(&mut app, [say(PileTap::Open(pile)), say(PileTap::Do(Doing::Layers))]);
    says(&after(&mut app, [Msg::Key("Escape".into())]), &["count/pile-page"]);
    says(&after(&mut app, [Msg::Key("Escape".into())]), &["38 pieces<"]);
}

#[test]
fn layers_and_weight_count_onto_it() {
    let mut app = opened(0);
    after(&mut app, [say(PileTap::Do(Doing::Layers))]);
    after(&mut app, pads("4"));
    after(&mut app, [say(PileTap::At(1))]);
    says(&after(&mut app, pads("12")), &["48 pieces"]);
    says(&after(&mut app, [say(PileTap::At(2))]), &["The rest"]);
    says(&after(&mut app, pads("3")), &["51 pieces"]);
    after(&mut app, [say(PileTap::Save)]);
    assert_eq!(taken(&app), 51);
    // 10 pieces weigh 8 lb, 80 lb of wood are 100; 1.96 x 100 x 0.10 x sqrt(1/10 - 1/100) = 5.9 either way.
    let mut app = opened(0);
    after(&mut app, [say(PileTap::Do(Doing::Weigh))]);
    for (nth, figure) in ["10", "8", "82", "2"].into_iter().enumerate() {
        after(&mut app, [say(PileTap::At(nth))]);
        after(&mut app, pads(figure));
    }
    says(&after(&mut app, []), &["about 100 pieces, from 94 to 106", "differ by 10 %: cut to one size"]);
    says(&after(&mut app, [say(PileTap::Save)]), &["± 6", "counted by weight: from 94 to 106", "Ash, A: a count by weight"]);
    assert_eq!(taken(&app), 100);
    after(&mut app, [Msg::Common(Common::TakeBack)]);
    assert_eq!(taken(&app), 0);
}

/// Asked straight from the tiles, what is needed leads back to them, written or not.
#[test]
fn what_is_needed_leads_back_to_the_tiles() {
    let mut app = opened(5);
    let pile = count::sheet(&app).unwrap().tiles[0].pile;
    says(&after(&mut app, [say(PileTap::Need(pile)), say(PileTap::Leave)]), &["New pile"]);
    after(&mut app, [say(PileTap::Need(pile))]);
    after(&mut app, pads("3"));
    says(&after(&mut app, [say(PileTap::Save)]), &["New pile", "for 3 pieces"]);
}

/// Five weighed one by one, 2, 3, 2, 3 and 2 lb: 2.4 each, apart by 0.548, 22.8 %; 48 lb are 20. The last is still on the scale.
#[test]
fn pieces_weighed_one_by_one_say_how_much_they_differ() {
    let mut app = opened(0);
    after(&mut app, [say(PileTap::Do(Doing::Weigh)), say(PileTap::Singly(true))]);
    for weight in ["2", "3", "9", "2", "3"] {
        after(&mut app, pads(weight));
        after(&mut app, [say(PileTap::NextOne)]);
    }
    let shown = after(&mut app, [say(PileTap::DropOne(2))]);
    says(&shown, &["2 lb", "3 lb", "4 pieces so far"]);
    after(&mut app, pads("2"));
    after(&mut app, [say(PileTap::At(1))]);
    let shown = after(&mut app, pads("48"));
    says(&shown, &["about 20 pieces", "single pieces differ by 22.8 %, by 5 of them"]);
    // Together again the weight of all stays.
    let shown = after(&mut app, [say(PileTap::Singly(false)), say(PileTap::Singly(true))]);
    says(&shown, &["48"]);
    after(&mut app, [say(PileTap::At(0))]);
    after(&mut app, pads("2"));
    let shown = after(&mut app, [say(PileTap::Save)]);
    says(&shown, &["counted by weight", "48.0 lb, as weighed"]);
    assert_eq!(taken(&app), 20);
}

#[test]
fn a_bad_figure_is_refused_beside_it_and_nothing_typed_is_lost() {
    let check = |doing, figures: &[&str], said: &str, counted: u32| {
        let mut app = opened(counted);
        let shown = filled(&mut app, doing, figures);
        says(&shown, &[said, "role=\"alert\""]);
        assert_eq!(taken(&app), counted, "{said}");
        let last = figures.last().unwrap();
        assert!(shown.contains(&format!("{last}<")), "{last} is still there: {shown}");
    };
    check(Doing::Layers, &["0", "12"], "Nothing was asked for", 0);
    check(Doing::Layers, &["99", "999"], "one pile holds at most 9999 pieces", 0);
    check(Doing::Layers, &["4", "99999"], "It must be from 0 to 9999", 0);
    check(Doing::Weigh, &["4", "4", "80"], "5 pieces", 0);
    check(Doing::Weigh, &["10", "9", "8"], "the sample weighs", 0);
    check(Doing::Weigh, &["10", "8", "2", "3"], "3", 0);
    check(Doing::Weigh, &["10", "0", "20"], "0", 0);
    check(Doing::Weigh, &["9", "1", "2000"], "one pile holds at most 9999 pieces", 0);
    check(Doing::Measure, &["1", "2", "999"], "999", 3);
    check(Doing::Measure, &["0"], "0", 3);
    check(Doing::Moisture, &["251"], "250", 3);
    check(Doing::Again, &["10000"], "9999", 3);
    check(Doing::Want, &["10000"], "9999", 3);
    let mut app = opened(0);
    says(&filled(&mut app, Doing::Measure, &["1", "2", "18"]), &["of a pile of 0 pieces"]);
    says(&filled(&mut app, Doing::Measure, &["", "", ""]), &["Nothing was asked for"]);
}

#[test]
fn a_part_is_needed_changed_and_taken_away() {
    let mut app = opened(38);
    // 20 good ask for 31 likely and 40 sure, as in the drawing of the first screen.
    says(
        &filled(&mut app, Doing::Want, &["20"]),
        &["2 more and you are sure", "38, for 20 pieces", "likely", ">31<", "sure", ">40<", "one in four"],
    );
    after(&mut app, [say(PileTap::Do(Doing::Want)), say(PileTap::Other), say(PileTap::Named("pegs".into()))]);
    after(&mut app, pads("40"));
    after(&mut app, [say(PileTap::At(1))]);
    after(&mut app, pads("8"));
    says(&after(&mut app, [say(PileTap::Save)]), &["1 more and it is likely", "38, for 40 pegs", "with 20 pieces of the same pile"]);
    assert!(!after(&mut app, [say(PileTap::Do(Doing::Want))]).contains("0 takes it away"), "there is nothing to take away yet");
    let shown = after(&mut app, [say(PileTap::Want(0)), say(PileTap::At(0))]);
    says(&shown, &[">20<", "0 takes it away"]);
    after(&mut app, pads("0"));
    let shown = after(&mut app, [say(PileTap::Save)]);
    assert!(!shown.contains("20 pieces") && shown.contains("You can stop") && shown.contains("for 40 pegs"), "{shown}");
    says(&filled(&mut app, Doing::Want, &["999"]), &["Not from this supplier"]);
}

#[test]
fn a_part_of_a_job_is_chosen_and_makes_a_pile_too_short() {
    let mut app = opened(38);
    let now = crate::app::told::nth(200);
    let begin = fivebar_core::story::tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\njob stands \"Stands\" 5 spec\npart \"leg\" 4 of 1 x 1 x 20 in for stands",
    );
    let lines: Vec<String> = begin.book.lines().map(str::to_owned).collect();
    app.own.heard(lines.iter().map(String::as_str), now.wall.at);
    let shown = after(&mut app, [say(PileTap::Do(Doing::Want))]);
    says(&shown, &["leg", "Stands", "just pieces"]);
    let page = after(&mut app, [say(PileTap::Leave)]);
    says(&page, &["Leave", "under 20 in, your shortest part"]);
    let pile = count::sheet(&app).unwrap().tiles[0].pile;
    after(&mut app, [Msg::Count(Tap::Close)]);
    assert!(!after(&mut app, []).contains(">leave<"), "the last tap’s figure wins on its own tile");
    after(&mut app, [Msg::Count(Tap::NewPile), Msg::Count(Tap::Draft(draft::DraftTap::Later))]);
    let second = count::sheet(&app).unwrap().tiles[1].pile;
    says(&after(&mut app, [Msg::Count(Tap::Pile(second))]), &[">leave<", ">+1<"]);
    let job = begin.names.job("stands");
    after(&mut app, [say(PileTap::Open(pile)), say(PileTap::Do(Doing::Want)), say(PileTap::Pick(job, "leg".into()))]);
    after(&mut app, pads("20"));
    says(&after(&mut app, [say(PileTap::Save)]), &["38, for 20 × leg"]);
}

#[test]
fn measured_pieces_have_a_mean_that_becomes_the_size() {
    let mut app = opened(40);
    for length in ["18", "20", "22"] {
        filled(&mut app, Doing::Measure, &["1", "2", length]);
    }
    let shown = after(&mut app, []);
    says(&shown, &["3 measured", "Use the mean of each side as the size", "Length 20 in, from 15 to 25", "Width 2 in, all alike"]);
    let shown = after(&mut app, [say(PileTap::UseMean)]);
    says(&shown, &["11.1 board feet, ± 24 %"]);
}

#[test]
fn moisture_is_read_or_seen_and_has_its_day() {
    let mut app = opened(3);
    says(&filled(&mut app, Doing::Moisture, &["14.5"]), &["14.5 %, Tue 3 March"]);
    after(&mut app, [say(PileTap::Do(Doing::Moisture))]);
    says(&after(&mut app, [say(PileTap::Wet(true))]), &["14.5 %, wet, Tue 3 March", "Maybe", "it is wet"]);
    says(&after(&mut app, [say(PileTap::Wet(false))]), &["14.5 %, Tue 3 March"]);
}

#[test]
fn counted_again_with_a_reason() {
    let mut app = opened(38);
    after(&mut app, [say(PileTap::Do(Doing::Again)), say(PileTap::Pick(None, "some fell out".into()))]);
    after(&mut app, pads("36"));
    says(&after(&mut app, [say(PileTap::Save)]), &["counted again"]);
    assert_eq!(taken(&app), 36);
    assert!(app.own.book.lines().any(|line| line.contains("some fell out")));
    says(&filled(&mut app, Doing::Again, &["0"]), &["No piece of it is counted yet."]);
    assert_eq!(taken(&app), 0);
}

/// Two hauls of a supplier were sorted before; the third asks for 5 of its pile.
#[test]
fn the_past_of_a_supplier_is_named() {
    let told = fivebar_core::story::tell(
        "2026-03-01 09:00 -05:00 workshop USD inch\nperson works supplier\nleave for one\nsupplier works\npile a ash-white 1 x 2 x 18 in\n\
         count 20 a\nreject 14 a twist\ngood 6 a\n2026-03-02 09:00 leave for two\nsupplier works of two\npile b cherry-black 1 x 2 x 18 in\ncount 4 b\ngood 4 b\n\
         2026-03-03 09:00 leave for three\nsupplier works of three\npile c ash-white 1 x 2 x 18 in\ncount 9 c\nwant 5 from c",
    );
    assert_eq!(told.refused, []);
    let mut app = App::for_tests(Place::Count);
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    app.own.heard(lines.iter().map(String::as_str), told.now.at);
    app.own.names.insert(told.names.person("works").unwrap(), fivebar_core::ledger::people::Person::named("The stair works"));
    app.heard(say(PileTap::Open(told.names.pile("c").unwrap())), crate::app::told::nth(200));
    let shown = crate::screens::page(&app).html();
    says(&shown, &["from 2 hauls of The stair works", "Maybe", "14 of 20 of this wood from them were rejects"]);
}

/// A pile that stays behind is counted as none by one answer.
#[test]
fn what_was_left_there_is_none_here() {
    let mut app = opened(38);
    after(&mut app, [say(PileTap::Do(Doing::Again)), say(PileTap::Pick(None, "left there".into())), say(PileTap::Save)]);
    assert_eq!(taken(&app), 0);
    assert!(app.own.book.lines().any(|line| line.contains("left there")));
}

/// Parts are asked for as parts as soon as one is meant; the other way round is counted anew.
#[test]
fn parts_are_called_parts_and_each_begins_at_one() {
    let mut app = opened(38);
    says(&after(&mut app, [say(PileTap::Do(Doing::Want))]), &["pieces"]);
    let shown = after(&mut app, [say(PileTap::Other)]);
    says(&shown, &["I need, parts", "One piece gives, parts"]);
    // On a small phone no key of the pad is below the edge: what is chosen once stands under it.
    let at = |what: &str| shown.find(what).unwrap();
    assert!(at("One piece gives, parts") < at("class=\"pad") && at("class=\"pad") < at("The part’s name"), "{shown}");
    after(&mut app, [say(PileTap::At(1))]);
    after(&mut app, pads("4"));
    let Over::Page(page) = &app.count.over else { panic!("the page") };
    assert_eq!(page.form.text(1), "4");
    says(&after(&mut app, [say(PileTap::Takes(true))]), &["One part takes, pieces"]);
    let Over::Page(page) = &app.count.over else { panic!("the page") };
    assert_eq!(page.form.text(1), "1");
}
