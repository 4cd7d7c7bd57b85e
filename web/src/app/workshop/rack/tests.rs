//! The rack as tables of taps.

use super::*;
use crate::app::shelf::Shelf;
use crate::app::told::after;
use crate::app::workshop::{Over, Tap};
use crate::app::{Common, Msg};
use crate::parts::Place;
use fivebar_core::ledger::fold;
use fivebar_core::ledger::{Device, line};
use fivebar_core::quantity::{Length, Units};
use fivebar_core::sheet::stock::find::Order;
use fivebar_core::story::{Story, tell};

const RACK: &str = "2025-11-20 09:00 -05:00 workshop USD inch\nperson works supplier \"Stair works\"\n\
    leave for old\nsupplier works\npile strips ash-white 1 x 2 x 20 in\ncount 22 strips\npile band cherry-black 1 x 2 x 14..24 in\ncount 8 band\n\
    job bench \"Bench\" 1 spec\njob desk \"Desk\" 1 spec\n\
    2026-02-16 09:00 leave for young\npile bare\ncount 5 bare\npile squares ash-white 1.75 x 1.75 x 18 in\ncount 9 squares\n\
    reserve 4 squares for bench\nplace squares \"under the stairs\"\n";

/// The app on the rack of a story, on 3 March 2026.
fn rack(lines: &str) -> (App, Story) {
    let story = tell(&format!("{RACK}{lines}"));
    assert_eq!(story.refused, []);
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let mut app = App::for_tests(Place::Workshop);
    app.own = Shelf::open(Device::new([7; 8]), lines.iter().map(String::as_str));
    app.own.names.insert(story.names.person("works").unwrap(), fivebar_core::ledger::people::Person::named("Stair works"));
    after(&mut app, [Msg::Workshop(Tap::Open(Over::Rack))]);
    (app, story)
}

fn say(taps: impl IntoIterator<Item = RackTap>) -> Vec<Msg> {
    taps.into_iter().map(|tap| Msg::Workshop(Tap::Rack(tap))).collect()
}

fn press(text: &str) -> Vec<RackTap> {
    let one = |sign: char| sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8));
    text.chars().map(|sign| RackTap::Press(one(sign))).collect()
}

/// These taps give a page with these words in this order, and without those.
#[track_caller]
fn check(app: &mut App, taps: Vec<RackTap>, shown: &[&str], not: &[&str]) {
    let html = after(app, say(taps));
    let mut from = 0;
    for words in shown {
        let at = html[from..].find(words);
        assert!(at.is_some(), "{words}, after what stands before it, in {html}");
        from += at.unwrap();
    }
    for words in not {
        assert!(!html.contains(words), "{words} in {html}");
    }
}

fn lying(story: &Story, haul: &str, pile: &str) -> Lying {
    Lying { haul: story.names.haul(haul).unwrap(), pile: story.names.pile(pile).unwrap() }
}

fn ask(story: &Story, (haul, pile): (&str, &str), ask: Ask, text: &str) -> Vec<RackTap> {
    [vec![RackTap::Show(Page::Ask(lying(story, haul, pile), ask))], press(text)].concat()
}

#[test]
fn wood_is_found_by_length_wood_thickness_and_origin() {
    let (mut app, story) = rack("");
    check(
        &mut app,
        vec![],
        &["any size", "44 pieces in 4 piles", "14 weeks", "Ash strips", "Cherry band", "Bare", "4 set apart, under the stairs"],
        &[],
    );
    let find = |long: &str, thick: &str| {
        let slot = |nth| vec![RackTap::At(nth)];
        [vec![RackTap::Clear, RackTap::Show(Page::Find)], press(long), slot(1), press(thick), vec![RackTap::Done]].concat()
    };
    check(
        &mut app,
        find("18", ""),
        &["18 in or longer", "2 of 4 piles, 31 pieces", "the line across the boards: 18 in", "Some of these may do", "Cherry band", "Bare"],
        &["Too short", "shorter"],
    );
    check(&mut app, find("30", ""), &["0 of 4 piles", "Bare", "3 piles are shorter: show all 4"], &["Cherry band"]);
    check(&mut app, vec![RackTap::Shorter(true)], &["Too short", "Cherry band", "Leave the shorter ones out"], &[]);
    check(&mut app, find("", "1.5"), &["and 1 half", " in thick or more", "1 of 4 piles, 9 pieces"], &["Ash strips"]);
    check(&mut app, vec![RackTap::Just(true), RackTap::Show(Page::Find)], &["just so"], &[]);
    check(&mut app, vec![RackTap::Clear], &["44 pieces in 4 piles"], &["Clear"]);
    let wanted = |change: fn(&mut Wanted)| {
        let mut wanted = Wanted::default();
        change(&mut wanted);
        vec![RackTap::Want(wanted)]
    };
    check(
        &mut app,
        wanted(|it| it.wood = Key::read("cherry-black")),
        &["Cherry", "1 of 4 piles, 8 pieces", "Cherry band"],
        &["Ash strips"],
    );
    check(
        &mut app,
        wanted(|it| it.order = Order::Most),
        &["most pieces", "Ash strips", "14 weeks", "Ash squares", "Cherry band", "Bare"],
        &["from Thu 20"],
    );
    let from = From::Supplier(story.names.person("works").unwrap());
    check(
        &mut app,
        vec![RackTap::Want(Wanted { from, ..Wanted::default() })],
        &["Stair works", "2 of 4 piles", "Ash strips"],
        &["Ash squares"],
    );
    check(&mut app, vec![RackTap::Show(Page::Choose(Choice::From))], &["anywhere", "Stair works"], &["bought"]);
}

#[test]
fn a_length_that_can_not_be_is_refused_beside_the_pad_and_stays() {
    let (mut app, _) = rack("");
    let long = [vec![RackTap::Show(Page::Find)], press("1125"), vec![RackTap::Done]].concat();
    check(&mut app, long, &["1125", "class=\"why\"", "1125 in"], &[]);
    assert_eq!(app.workshop.rack.wanted, Wanted::default());
}

/// The words of the design: 22 by the counts, 19 found.
#[test]
fn a_count_of_the_rack_says_what_it_means_before_it_is_written() {
    let (mut app, story) = rack("");
    let there = ("old", "strips");
    let said = "22 by the counts, 19 found, 3 missing: their share goes to workshop costs.";
    check(&mut app, ask(&story, there, Ask::Count, "19"), &["How many lie there?", said, "Why, where it differs"], &[]);
    check(
        &mut app,
        vec![RackTap::Say("dark corner".into()), RackTap::Done],
        &["Ash strips", ">19<", "by the rack’s counts", "−3", "walked round: 19, dark corner", "22 counted", "begun"],
        &[],
    );
    check(&mut app, ask(&story, there, Ask::Count, "20"), &["19 by the counts, 20 found, 1 more"], &[]);
    check(&mut app, ask(&story, there, Ask::Count, "19"), &["19 by the counts, 19 found."], &["missing", "more:"]);
    let too_many = [ask(&story, there, Ask::Count, "10000"), vec![RackTap::Done]].concat();
    check(&mut app, too_many, &["10000", "class=\"why\"", "9999"], &[]);
    // The bar takes it back, and the pile is as it was.
    after(&mut app, [Msg::Workshop(Tap::Close), Msg::Common(Common::TakeBack)]);
    check(&mut app, vec![], &["Ash strips", ">22<"], &["walked round: 19"]);
}

#[test]
fn pieces_are_set_apart_freed_taken_and_gone() {
    let (mut app, story) = rack("");
    let there = ("young", "squares");
    let (bench, desk) = (story.names.job("bench").unwrap(), story.names.job("desk").unwrap());
    let apart = |n: &str, job: Id, tap: RackTap| [ask(&story, there, Ask::Apart, n), vec![RackTap::Job(job), tap]].concat();
    check(&mut app, apart("6", desk, RackTap::Done), &["you asked for 6 pieces. 9 lie there, 4 of them set apart", "6"], &[]);
    check(&mut app, apart("2", desk, RackTap::Done), &["free", ">3<", "set apart for Bench", ">4<", "set apart for Desk", ">2<"], &[]);
    check(&mut app, apart("2", bench, RackTap::Other), &["free", ">5<", "set apart for Bench", ">2<", "2 free again, were for Bench"], &[]);
    check(&mut app, ask(&story, there, Ask::Take, "1"), &["Choose the job.", "disabled", "Take 1"], &[]);
    let take = |n: &str, job: Id| [ask(&story, there, Ask::Take, n), vec![RackTap::Job(job), RackTap::Done]].concat();
    check(&mut app, take("8", desk), &["9 lie there, 2 of them set apart"], &[]);
    check(&mut app, take("3", desk), &["free", ">4<", "set apart for Bench", ">2<", "in Desk", ">3<", "3 to Desk"], &[]);
    assert!(fold::hauls(&app.own.book).all(|haul| haul.piles.iter().all(|pile| pile.reserved_for(desk) == 0)), "its own are taken first");
    let gone = [ask(&story, there, Ask::Gone, ""), vec![RackTap::To(1), RackTap::Number(4), RackTap::Done]].concat();
    check(&mut app, gone, &[">2<", "given away", ">4<", "4 gone: given away"], &[]);
    let more = [ask(&story, there, Ask::Gone, "7"), vec![RackTap::Done]].concat();
    check(&mut app, more, &["you asked for 7 pieces, and there are 2 pieces"], &[]);
    // The two that lie there are Bench's.
    let of = |job: Id| [ask(&story, there, Ask::Take, "1"), vec![RackTap::Job(job)]].concat();
    check(&mut app, of(desk), &["None there is free.", "disabled", "Take 1"], &[]);
    check(&mut app, of(bench), &["Take 1"], &["None there is free.", "disabled"]);
}

#[test]
fn a_place_and_a_moisture_are_written_down() {
    let (mut app, story) = rack("");
    let there = ("old", "strips");
    check(&mut app, ask(&story, there, Ask::Place, ""), &["Where it lies", "As before", "under the stairs"], &[]);
    check(&mut app, vec![RackTap::Place("under the stairs".into())], &["lies", "under the stairs"], &[]);
    check(&mut app, [ask(&story, there, Ask::Moisture, "11.5"), vec![RackTap::Done]].concat(), &["moisture", "11.5 %"], &[]);
    check(&mut app, [ask(&story, there, Ask::Moisture, ""), vec![RackTap::Other]].concat(), &["moisture", "wet", "plainly wet"], &[]);
    check(&mut app, [ask(&story, there, Ask::Moisture, "251"), vec![RackTap::Done]].concat(), &["251", "class=\"why\"", "250"], &[]);
}

#[test]
fn a_line_of_the_history_is_struck() {
    let (mut app, story) = rack("gone 3 strips burnt\n");
    check(&mut app, vec![RackTap::Show(Page::Pile(lying(&story, "old", "strips")))], &[">19<", "3 gone: burnt"], &[">Strike<"]);
    let gone = fivebar_core::sheet::stock::history::history(&app.own.book, lying(&story, "old", "strips")).remove(0).entry;
    check(&mut app, vec![RackTap::Line(gone)], &["3 gone: burnt", ">Strike<"], &[]);
    check(&mut app, vec![RackTap::Strike(gone)], &[">22<", "Do it again"], &["3 gone: burnt"]);
}

/// Three bundles of a day stand in one line, which opens into them; one of them is struck, and the others stay.
#[test]
fn a_line_of_several_acts_opens_into_them() {
    let (mut app, story) = rack("count 2 strips\ncount 3 strips\ncount 4 strips\n");
    let at = lying(&story, "old", "strips");
    check(&mut app, vec![RackTap::Show(Page::Pile(at))], &["9 counted, in 3 counts"], &[">Strike<", "3 counted<"]);
    let line = fivebar_core::sheet::stock::history::history(&app.own.book, at).remove(0);
    let (entry, second) = (line.entry, line.acts[1].entry);
    check(&mut app, vec![RackTap::Line(entry)], &["4 counted<", "3 counted<", "2 counted<", ">Strike<"], &[]);
    check(&mut app, vec![RackTap::Strike(second)], &["6 counted, in 2 counts", "4 counted<"], &["3 counted<"]);
}

#[test]
fn a_walk_goes_from_pile_to_pile_and_changes_nothing_unasked() {
    let (mut app, _) = rack("");
    check(&mut app, vec![], &["2 piles not looked at for 12 weeks", "Walk round"], &[]);
    check(
        &mut app,
        vec![RackTap::WalkRound],
        &["Ash strips", "1 of 4", "22 should lie here, last in a hand Thu 20 November", "Fewer", "More", "As it is: 22", "Skip"],
        &[],
    );
    let before = app.own.book.len();
    check(&mut app, vec![RackTap::Skip], &["Cherry band", "2 of 4", "8 should lie here"], &[]);
    let fewer = "8 by the counts, 7 found, 1 missing: its share goes to workshop costs.";
    // The keys stay under the thumb: what a difference means comes below them.
    let below = &["Fewer", "More", fewer, "Why, where it differs", "Found 7"];
    check(&mut app, vec![RackTap::Fewer, RackTap::Fewer, RackTap::More], below, &[]);
    assert_eq!(app.own.book.len(), before);
    check(&mut app, vec![RackTap::Say("dark corner".into()), RackTap::Same], &["Bare", "3 of 4", "Take back"], &["dark corner"]);
    check(&mut app, vec![RackTap::Same], &["under the stairs", "Ash squares", "4 of 4", "9 should lie here"], &[]);
    let typed = [vec![RackTap::TypeIt], press("11"), vec![RackTap::Done]].concat();
    check(&mut app, typed, &["9 by the counts, 11 found, 2 more", "Found 11"], &[]);
    check(&mut app, vec![RackTap::Same], &["3 of 4 piles counted", "Cherry band", fewer, ">Strike<", "Ash squares", "2 more"], &["Bare"]);
    let drift = |app: &App| fold::hauls(&app.own.book).flat_map(|haul| haul.piles).map(|pile| pile.stock.drift).collect::<Vec<_>>();
    assert_eq!(drift(&app), [0, 2, 0, -1]);
    // Each is taken back by itself, and the reason is in the book.
    let Page::Walk(walk) = app.workshop.rack.page.clone() else { panic!("the walk") };
    check(&mut app, vec![RackTap::Strike(walk.counts[0].entry)], &["2 of 4 piles counted", "Ash squares"], &["Cherry band"]);
    assert_eq!(drift(&app), [0, 2, 0, 0]);
    after(&mut app, [Msg::Common(Common::PutBack)]);
    assert!(app.own.book.lines().any(|line| line.contains("dark corner")));
    after(&mut app, [Msg::Workshop(Tap::Close)]);
    check(&mut app, vec![], &["45 pieces in 4 piles", "1 pile not looked at"], &[]);
}

/// The bar takes the last count of a walk back, and the pile stands in front of the maker again.
#[test]
fn a_count_of_a_walk_that_was_taken_back_is_counted_again() {
    let (mut app, _) = rack("");
    check(&mut app, vec![RackTap::WalkRound, RackTap::More, RackTap::Same], &["Cherry band", "2 of 4"], &[]);
    let shown = after(&mut app, [Msg::Common(Common::TakeBack)]);
    assert!(shown.contains("1 of 4") && shown.contains("As it is: 22") && shown.contains("Do it again"), "{shown}");
    assert!(after(&mut app, [Msg::Common(Common::PutBack)]).contains("2 of 4"));
    // Left on the way, it says what drifted so far; from there back to the rack.
    check(&mut app, vec![RackTap::TypeIt], &["How many lie there?"], &[]);
    assert!(after(&mut app, [Msg::Key("Escape".into())]).contains("8 should lie here"));
    assert!(after(&mut app, [Msg::Key("Escape".into())]).contains("1 of 4 piles counted"));
    assert!(after(&mut app, [Msg::Key("Escape".into())]).contains("45 pieces in 4 piles"));
}

/// Nothing of it waits to be looked at: the walk is offered all the same, under the boards.
#[test]
fn a_walk_can_be_begun_at_any_time() {
    let (mut app, _) = rack("2026-03-01 09:00 rack 22 strips\nrack 8 band\n");
    check(&mut app, vec![], &["Ash strips", "Walk round", "Boards you bought"], &["not looked at"]);
    check(&mut app, vec![RackTap::WalkRound, RackTap::Skip, RackTap::Skip, RackTap::Skip, RackTap::Skip], &["Nothing was counted."], &[]);
}

#[test]
fn bought_boards_are_a_pile_with_its_price() {
    let (mut app, story) = rack("");
    let figures = |figures: [&str; 5]| {
        figures.iter().enumerate().flat_map(|(nth, figure)| [vec![RackTap::At(nth)], press(figure)].concat()).collect::<Vec<_>>()
    };
    let opened = vec![RackTap::Show(Page::Buy)];
    check(&mut app, opened, &["Boards you bought", "Wood", "not said", "Thick, in", "Boards", "Paid, all, USD"], &[]);
    check(&mut app, vec![RackTap::Show(Page::Choose(Choice::BoughtWood))], &["Which wood?", "White oak"], &[]);
    let works = story.names.person("works").unwrap();
    let answers = vec![RackTap::Wood(Key::read("oak-white").unwrap()), RackTap::From(Some(works))];
    check(&mut app, [answers, figures(["1", "6", "96", "0", "88"]), vec![RackTap::Done]].concat(), &[">96<", "Nothing was asked for"], &[]);
    let right = [vec![RackTap::At(3)], press("4"), vec![RackTap::Done]].concat();
    check(&mut app, right, &["White oak, C", ">4<", "Stair works", "bought boards", "$5.50 a board foot", "4 counted"], &[]);
    let haul = fold::hauls(&app.own.book).next().unwrap();
    assert_eq!((haul.bought, haul.units, haul.spent().unwrap().to_string()), (true, Units::Inch, "88.00 USD".into()));
    assert_eq!(haul.piles[0].length, Length::INCH.times(96).ok());
}

/// A wood of the maker's own is said by its name wherever a wood is named, and boards of it can be bought.
#[test]
fn an_own_wood_is_called_by_its_name() {
    let (mut app, story) = rack(
        "2026-03-01 09:00 species own-1 \"wild plum\" 700\nleave for third\nsupplier works\npile sticks own-1 1 x 1 x 20 in\n\
         count 6 sticks\npile rest own-1 1 x 1 x 15 in\ncount 4 rest\ngood 2 rest\n",
    );
    let not = ["1 own", "Own 1", "own-1"];
    check(&mut app, vec![], &["Wild plum sticks"], &not);
    let wanted = Wanted { wood: Key::read("own-1"), ..Wanted::default() };
    check(&mut app, vec![RackTap::Want(wanted)], &["Wood", "Wild plum", "2 of 6 piles", "Wild plum sticks"], &not);
    check(&mut app, vec![RackTap::Show(Page::Choose(Choice::Wood))], &["any", "Wild plum"], &not);
    check(&mut app, vec![RackTap::Show(Page::Pile(lying(&story, "third", "sticks")))], &["Wild plum sticks"], &not);
    check(&mut app, vec![RackTap::Show(Page::Buy), RackTap::Show(Page::Choose(Choice::BoughtWood))], &["Wild plum", "White oak"], &not);
    check(&mut app, vec![RackTap::Wood(Key::read("own-1").unwrap())], &["Wild plum"], &not);
}

#[test]
fn back_leaves_one_page_of_the_rack_after_the_other() {
    let (mut app, story) = rack("");
    let at = lying(&story, "old", "strips");
    let places = [Page::Ask(at, Ask::Gone), Page::Pile(at), Page::List];
    check(&mut app, vec![RackTap::Show(Page::Pile(at)), RackTap::Show(places[0].clone())], &["Where did they go?"], &[]);
    for (nth, page) in places.iter().enumerate() {
        assert_eq!(app.workshop.rack.page, *page, "{nth}");
        after(&mut app, [Msg::Key("Escape".into())]);
    }
    assert_eq!(app.workshop.over, Over::Nothing);
}

/// What still lies at the bin is no wood in hand; a trip that nobody ended is not waited for.
#[test]
fn a_haul_on_its_way_is_not_home_yet() {
    let today = "2026-03-03 08:00 leave for today\n08:30 at the bin\npile fresh ash-white 1 x 2 x 20 in\ncount 7 fresh\n";
    let (mut app, _) = rack(today);
    let shown = ["Ash fresh", "not home yet"];
    check(&mut app, vec![], &shown, &[]);
    assert_eq!(after(&mut app, []).matches("not home yet").count(), 1);
    let (mut app, _) = rack(&format!("{today}08:50 home\n"));
    check(&mut app, vec![], &["Ash fresh"], &["not home yet"]);
}

/// The wood of a pile is said at home too, where its name and its size are; what was typed there stays meanwhile.
#[test]
fn the_wood_of_a_pile_is_said_on_the_rack() {
    let (mut app, story) = rack("");
    let at = lying(&story, "young", "bare");
    check(&mut app, vec![RackTap::Show(Page::Ask(at, Ask::Size))], &["Thick", "Wood", "not said"], &[]);
    let choose = vec![RackTap::Show(Page::Choose(Choice::PileWood(at)))];
    check(&mut app, [press("2"), choose].concat(), &["Which wood?", "White oak"], &[]);
    assert!(after(&mut app, [Msg::Key("Escape".into())]).contains(">2<"), "back to the form");
    let oak = RackTap::Wood(Key::read("oak-white").unwrap());
    check(&mut app, vec![RackTap::Show(Page::Choose(Choice::PileWood(at))), oak], &[">2<", "Wood", "White oak"], &[]);
    check(&mut app, vec![RackTap::Done], &["White oak bare", "What happened to it"], &[]);
    let bare = fold::haul(&app.own.book, at.haul).unwrap().pile(at.pile).unwrap().clone();
    assert_eq!((bare.wood, bare.thickness), (Key::read("oak-white"), Length::INCH.times(2).ok()));
    // What bought boards are is another question.
    check(&mut app, vec![RackTap::Show(Page::Buy)], &["Wood", "not said"], &[]);
}
