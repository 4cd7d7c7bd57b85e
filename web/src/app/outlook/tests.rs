use super::*;
use crate::app::jobs::{self, draft};
use crate::app::news::{News, Planning};
use crate::app::shelf::Shelf;
use crate::app::workshop::designs::DesignTap;
use crate::app::workshop::{self, Tap as Shop};
use crate::app::{Common, Msg, plan};
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::ledger::{Device, fold};
use fivebar_core::plan::outlook::outlook;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::{Sorted, Wall};
use fivebar_core::story::tell;

const STORY: &str = include_str!("../../../../tests/stories/designs.txt");

/// The story up to a heading, on a page.
fn app_of(heading: &str, place: Place) -> App {
    app_of_story(STORY.split(heading).next().unwrap(), place)
}

fn app_of_story(lines: &str, place: Place) -> App {
    let story = tell(lines);
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(place);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("first");
    app
}

fn heard(app: &mut App, messages: impl IntoIterator<Item = Msg>) -> Vec<Order> {
    let now = |app: &App| Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
    messages.into_iter().flat_map(|message| app.heard(message, now(app))).collect()
}

/// What a phone does with these orders: it paints, reckons, and tells.
fn reckoned(app: &mut App, orders: Vec<Order>) -> usize {
    assert!(orders.contains(&Order::Painted), "{orders:?}");
    let orders = app.told(News::Painted);
    let all = orders.into_iter().find_map(|order| if let Order::Reckon(all) = order { Some(all) } else { None }).unwrap();
    for (id, hoped) in &all {
        app.told(News::Outlook(*id, Some(outlook(hoped, 1))));
    }
    all.len()
}

fn page(app: &App) -> String {
    crate::screens::page(app).html()
}

fn shop(tap: Shop) -> Msg {
    Msg::Workshop(tap)
}

fn design(tap: impl Fn(Id) -> DesignTap, app: &App, nth: usize) -> Msg {
    shop(Shop::Design(tap(app.shelf().workshop().designs[nth].id)))
}

#[track_caller]
fn shows(app: &App, all: &[&str]) {
    let page = page(app);
    for words in all {
        assert!(page.contains(words), "{words}: {page}");
    }
}

/// Three stands are sure before sorting, as core/tests/stories_designs.rs has it.
#[test]
fn the_room_of_a_job_says_how_many_the_wood_gives() {
    let mut app = app_of("# --- ten squares", Place::Jobs);
    let orders = heard(&mut app, [Msg::Jobs(jobs::Tap::Room(Room::Wood))]);
    assert_eq!(reckoned(&mut app, orders), 1);
    shows(&app, &["3 sure, 4 likely", "Short of leg stock"]);
    assert!(!page(&app).contains("played through"));
    let how = || Msg::Jobs(jobs::Tap::Plan(plan::Tap::Outlook));
    assert_eq!(heard(&mut app, [how()]), [], "the book is the same: nothing is reckoned again");
    shows(
        &app,
        &[
            "played through 1000 times with a guess, as nothing like these piles was sorted yet: one in four rejected.",
            "in 95 of 100 times, give or take 0.7",
            "If every piece is good: 7.",
        ],
    );
    // Strips of the same wood and haul as sorted squares; then a pile of which nothing is known beside them.
    let cherry = "pile other cherry-black 1 x 2 x 21 1/2 in\ncount 9 other\n";
    let both = format!("{cherry}# --- all of it is sorted");
    for (lines, by) in [
        ("# --- all of it is sorted", "with the rejects met so far. Sure"),
        (&both, "met so far, and a guess for piles of which nothing like them was sorted yet"),
    ] {
        let story = STORY.replace("# --- all of it is sorted", lines);
        let mut app = app_of_story(story.split("# --- all of it is sorted").next().unwrap(), Place::Jobs);
        let orders = heard(&mut app, [Msg::Jobs(jobs::Tap::Room(Room::Wood)), how()]);
        reckoned(&mut app, orders);
        shows(&app, &[by]);
    }
    let mut sorted = app_of("# --- two more", Place::Jobs);
    let orders = heard(&mut sorted, [Msg::Jobs(jobs::Tap::Room(Room::Wood)), how()]);
    reckoned(&mut sorted, orders);
    shows(&sorted, &["5, all sorted", "nothing is left to chance"]);
}

#[test]
fn designs_are_listed_renamed_dropped_and_put_back() {
    let mut app = app_of("# --- ten squares", Place::Workshop);
    let orders = heard(&mut app, [shop(Shop::Open(workshop::Over::Designs))]);
    assert_eq!(reckoned(&mut app, orders), 1);
    shows(&app, &["Plant stand", "4 × leg, 2 × rail", "sanding 40 min", "3 sure, 4 likely from the rack; short of leg stock for one more"]);
    let taps = [design(DesignTap::Open, &app, 0), shop(Shop::Typed("Ash stand".into())), design(DesignTap::Rename, &app, 0)];
    let orders = heard(&mut app, taps);
    reckoned(&mut app, orders);
    shows(&app, &["Ash stand", "3 sure", "4 × leg, 1", "× 18 in"]);
    let drop = design(DesignTap::Drop, &app, 0);
    heard(&mut app, [drop]);
    shows(&app, &["No design yet."]);
    heard(&mut app, [Msg::Common(Common::TakeBack)]);
    shows(&app, &["Ash stand"]);
    heard(&mut app, [Msg::Common(Common::PutBack)]);
    shows(&app, &["No design yet.", "kept as a design under its Wood and plan"]);
}

/// One act, and undo takes all of it back.
#[test]
fn a_new_job_is_made_from_a_design_in_one_act() {
    let mut app = app_of("# --- ten squares", Place::Jobs);
    heard(&mut app, [Msg::Jobs(jobs::Tap::List), Msg::Jobs(jobs::Tap::Write(draft::What::New))]);
    shows(&app, &["Make again", "Plant stand"]);
    let kept = app.shelf().workshop().designs[0].id;
    let pick = || Msg::Jobs(jobs::Tap::Pick(draft::Pick::Design(kept)));
    heard(&mut app, [pick()]);
    assert_eq!(app.jobs.draft.as_ref().unwrap().words, ["Plant stand"]);
    heard(&mut app, [pick()]);
    assert_eq!(app.jobs.draft.as_ref().unwrap().words, [""], "chosen no longer, nor its name");
    heard(&mut app, [pick(), Msg::Jobs(jobs::Tap::Say(0, "Two stands".into())), Msg::Jobs(jobs::Tap::Save)]);
    let job = |app: &App| app.jobs.open.and_then(|id| fold::job(&app.shelf().book, id));
    let made = job(&app).unwrap();
    assert_eq!((made.name.as_str(), made.parts.len(), made.operations.len(), made.design), ("Two stands", 2, 1, Some(kept)));
    heard(&mut app, [Msg::Jobs(jobs::Tap::Room(Room::Wood))]);
    shows(&app, &["Keep again as Plant stand"]);
    let again = Msg::Jobs(jobs::Tap::Plan(plan::Tap::KeepDesignAs("Plant stand".into())));
    heard(&mut app, [again, Msg::Common(Common::TakeBack)]);
    assert_eq!(app.shelf().workshop().designs.len(), 1);
    let began = app.shelf().book.entry(made.id).and_then(|(entry, _)| entry.act).unwrap();
    app.own.last_act = Some(began);
    heard(&mut app, [Msg::Common(Common::TakeBack)]);
    assert_eq!(job(&app), None);
}

#[test]
fn a_design_opens_the_form_of_a_new_job() {
    let mut app = app_of("# --- ten squares", Place::Workshop);
    let again = design(DesignTap::MakeAgain, &app, 0);
    heard(&mut app, [shop(Shop::Open(workshop::Over::Designs)), again]);
    assert_eq!(app.place, Place::Jobs);
    assert_eq!(app.jobs.draft.as_ref().map(|draft| (draft.words[0].as_str(), draft.picks.design.is_some())), Some(("Plant stand", true)));
}

/// Why there is nothing to hope for is said in words.
#[test]
fn wood_that_fits_nothing_says_so() {
    let check = |lines: &str, words: &str| {
        let story = tell(&format!("2026-03-01 19:00 -05:00 workshop USD inch\njob first \"Stand\" 1 spec\n{lines}"));
        let mut app = App::for_tests(Place::Jobs);
        app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
        app.now = Wall::new(story.now.at, story.now.offset);
        app.jobs.open = story.names.job("first");
        let orders = heard(&mut app, [Msg::Jobs(jobs::Tap::Room(Room::Wood))]);
        assert_eq!(reckoned(&mut app, orders), 0);
        shows(&app, &[words]);
    };
    let leg = "part \"Leg\" 4 of 1 1/2 x 1 1/2 x 18 in for first\n";
    check(leg, "None: the rack is empty");
    check(
        &format!("{leg}pile short ash-white 2 x 2 x 9 in\ncount 9 short\n"),
        "None: nothing on the rack fits with what is over for planing; lengths from sticks may do without",
    );
    let both = format!("{leg}part \"Top\" 1 of 4 x 10 x 40 in for first\npile legs ash-white 2 x 2 x 19 in\ncount 9 legs\n");
    // The maker’s spelling stays.
    check(&both, "None: no pieces fit the part Top");
}

/// Of two piles of oak from one haul each board gives one slat, and none is sorted. The piles are good or bad together, so of all boards as many are
/// likely good as slats are likely: the plan's page says the same number as the job's.
#[test]
fn the_plan_and_the_job_say_one_likely() {
    let mut app = app_of_story(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile long oak-european 27 x 60 x 1000 mm\ncount 30 long\n\
         pile short oak-european 27 x 60 x 700 mm\ncount 30 short\nhome\njob first \"Rack\" 1 spec\n\
         part \"slat\" 1 of 20 x 50 x 650 mm oak-european for first\n",
        Place::Jobs,
    );
    let orders = heard(&mut app, [Msg::Jobs(jobs::Tap::Room(Room::Wood))]);
    reckoned(&mut app, orders);
    let job = app.jobs.open.unwrap();
    let Some(Stand::Found { outlook, .. }) = app.outlooks.of(job).cloned() else { panic!("{:?}", app.outlooks) };
    shows(&app, &[&format!("{} likely", outlook.likely)]);
    let plan = |tap| Msg::Jobs(jobs::Tap::Plan(tap));
    heard(&mut app, [plan(plan::Tap::Open), plan(plan::Tap::Shape(Shape::Sticks)), plan(plan::Tap::AsMany), plan(plan::Tap::Go)]);
    let asked = app.plan.given.as_ref().unwrap().ready.asked.clone();
    let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
    app.told(News::Planning(Planning::Done(Box::new(answered))));
    let [likely, lacking] = [outlook.likely, 60 - outlook.likely];
    shows(&app, &[&format!("A and B together, likely {likely} of 60 good.")]);
    shows(&app, &[&format!("It takes 60 of A and B, and likely {likely} are good: {lacking} may be lacking.")]);
}

/// Where one of two piles has many more than the plan takes, these are no help to the other: what may be lacking is told of that one alone.
#[test]
fn boards_that_are_over_in_one_pile_hide_no_lack_of_another() {
    let mut app = app_of_story(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile long oak-european 27 x 60 x 1000 mm\ncount 10 long\n\
         pile short oak-european 27 x 60 x 500 mm\ncount 40 short\nhome\njob first \"Rack\" 1 spec\n\
         part \"slat\" 10 of 20 x 50 x 850 mm oak-european for first\npart \"peg\" 2 of 20 x 50 x 450 mm oak-european for first\n",
        Place::Jobs,
    );
    let plan = |tap| Msg::Jobs(jobs::Tap::Plan(tap));
    heard(&mut app, [plan(plan::Tap::Open), plan(plan::Tap::Shape(Shape::Sticks)), plan(plan::Tap::Go)]);
    let asked = app.plan.given.as_ref().unwrap().ready.asked.clone();
    let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
    app.told(News::Planning(Planning::Done(Box::new(answered))));
    shows(&app, &["It takes 10 of A, and likely 6 are good: 4 may be lacking."]);
    assert!(!page(&app).contains("of A and B, and"), "{}", page(&app));
}
