//! Count, heard: what a tap at the yard or at the sorting bench changes.

use super::draft::{Draft, DraftTap};
use super::entry::Typed;
use super::order::{Feel, Order};
use super::pile::{self, PilePage, PileTap};
use super::trip::TripTap;
use super::{App, draft, sorting, sought, trip};
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, HaulCommand, Now, PileFacts};
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::quantity::reading::{self, Misread, Quantity, Sign};
use fivebar_core::quantity::{Id, Key, PILE_MOST};
use fivebar_core::sheet::count::{CountSheet, count_of};
use fivebar_core::sheet::enough::{self, EnoughSheet};
use fivebar_core::sheet::worth::{self, WorthSheet};

/// What lies over the tiles.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    /// A new pile, or one that is named and sized later.
    Pile(Box<Draft>),
    /// How many each tap counts.
    Bundle(Typed),
    /// Which pile the last pieces go to.
    Move,
    /// Which pile is sorted, named or counted again.
    Choose,
    /// A pile being sorted.
    Sort(Id),
    /// The page of a pile.
    Page(Box<PilePage>),
    /// How many each tap sorts of it.
    SortBundle(Id, Typed),
    /// Its rejected pieces.
    Rejects(Id),
    /// Before going: who there is, and what their past says.
    Going,
    /// One of them.
    Supplier(Id),
    /// What is said of the haul and its trip.
    Haul(Box<trip::Details>),
    /// Every haul, to take one in hand.
    Hauls,
    /// Every part that is wanted of the haul.
    Enough,
    /// What plans lack.
    Sought,
    /// Whether the trip pays, and how that comes about.
    Worth,
}

/// The state of Count that is not in the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Count {
    /// How many each tap on a tile counts.
    pub armed: u32,
    /// The number behind the key n.
    pub other: Option<u32>,
    pub over: Over,
    /// How many each tap sorts: never what is armed for counting.
    pub sorting: sorting::Sorting,
    /// The last act was a sort or a reject, said on the undo bar.
    pub last_sorted: Option<(Option<Key>, u32)>,
}

impl Default for Count {
    fn default() -> Self {
        Count { armed: 1, other: None, over: Over::Nothing, sorting: sorting::Sorting::default(), last_sorted: None }
    }
}

/// What can be said on Count.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    /// The board of day one.
    First,
    Pile(Id),
    Arm(u32),
    OtherBundle,
    Press(Press),
    PadDone,
    NewPile,
    Draft(DraftTap),
    Move,
    MoveTo(Id),
    Trip(TripTap),
    Choose,
    SortPile(Id),
    Edit(Id),
    /// The same, straight from the list of piles.
    Size(Id),
    Page(PileTap),
    Good,
    Reject(Key),
    Sorting(sorting::SortTap),
    Going,
    Supplier(Id),
    Enough,
    Sought(sought::Tap),
    Worth,
    Close,
}

/// Takes in a tap on Count.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::First => first(app, now),
        Tap::Pile(pile) => count_onto(app, pile, now),
        Tap::Arm(n) => arm(app, n),
        Tap::OtherBundle => app.count.over = Over::Bundle(Typed::default()),
        Tap::Press(press) => pressed(app, press),
        Tap::PadDone => pad_done(app),
        Tap::NewPile => app.count.over = Over::Pile(Box::default()),
        Tap::Draft(tap) => draft::heard(app, tap, now),
        Tap::Move => app.count.over = Over::Move,
        Tap::MoveTo(pile) => move_last(app, pile, now),
        Tap::Trip(tap) => trip::heard(app, tap, now),
        Tap::Choose => app.count.over = Over::Choose,
        Tap::SortPile(pile) => sorting::open(app, pile),
        Tap::Edit(pile) => draft::edit(app, pile, false),
        Tap::Size(pile) => draft::edit(app, pile, true),
        Tap::Page(tap) => pile::heard(app, tap, now),
        Tap::Good => sorting::good(app, now),
        Tap::Reject(why) => sorting::reject(app, why, now),
        Tap::Sorting(tap) => sorting::heard(app, tap, now),
        Tap::Going => app.count.over = Over::Going,
        Tap::Supplier(supplier) => app.count.over = Over::Supplier(supplier),
        Tap::Enough => app.count.over = Over::Enough,
        Tap::Sought(tap) => sought::heard(app, tap, now),
        Tap::Worth => app.count.over = Over::Worth,
        Tap::Close => close(app),
    }
}

/// Back to what lay under it.
fn close(app: &mut App) {
    app.count.over = match &app.count.over {
        Over::SortBundle(pile, _) | Over::Rejects(pile) => Over::Sort(*pile),
        Over::Supplier(_) => Over::Going,
        Over::Haul(details) if details.field.is_some() => Over::Haul(Box::default()),
        _ => Over::Nothing,
    };
}

/// The sheet of the haul in hand.
pub fn sheet(app: &App) -> Option<CountSheet> {
    app.shelf().haul().map(|haul| count_of(&app.shelf().book, &haul, app.now.at))
}

/// What is wanted of the haul in hand, and whether its trip pays; neither where nothing was counted.
pub fn paying(app: &App) -> (EnoughSheet, Option<WorthSheet>) {
    let shelf = app.shelf();
    let Some(haul) = shelf.haul().filter(|haul| worth::is_asked(haul)) else { return Default::default() };
    let past = shelf.past(&haul);
    let last = sheet(app).and_then(|sheet| sheet.last).map(|last| last.pile);
    let enough = enough::enough(&haul, past.seen);
    (enough, worth::worth(&shelf.shop(app.now.at), &haul, (&past, last)).ok())
}

fn way(n: u32) -> Way {
    if n == 1 { Way::Tap } else { Way::Bundle }
}

/// The board of day one. Tapped before the book was read, it may find piles: then it counts onto the one counted last.
fn first(app: &mut App, now: Now) {
    let (currency, units) = app.begins_with();
    let n = app.count.armed;
    let there = sheet(app).map(|sheet| (sheet.haul, sheet.last.map(|last| last.pile).or(sheet.tiles.first().map(|tile| tile.pile))));
    let command = match there {
        Some((_, Some(pile))) => return count_onto(app, pile, now),
        Some((haul, None)) => HaulCommand::AddPile { haul, pile: PileFacts::default(), n, way: way(n) },
        None => HaulCommand::Begin { currency, units, pile: PileFacts::default(), n, way: way(n) },
    };
    counted(app, &command, n, now);
}

fn count_onto(app: &mut App, pile: Id, now: Now) {
    let Some(sheet) = sheet(app) else { return };
    let n = app.count.armed;
    let there = sheet.tiles.iter().find(|tile| tile.pile == pile).map_or(0, |tile| tile.taken);
    counted(app, &HaulCommand::Count { haul: sheet.haul, pile, n, way: way(n) }, there.saturating_add(n), now);
}

/// Counts, and lets the thumb feel each ten.
fn counted(app: &mut App, command: &HaulCommand, brings_to: u32, now: Now) {
    if app.order(&Command::Haul(command.clone()), now).is_some() {
        app.count.last_sorted = None;
        app.orders.push(Order::Feel(Feel::Count(brings_to)));
    }
}

fn arm(app: &mut App, n: u32) {
    app.count.armed = n;
    app.count.over = Over::Nothing;
}

fn pressed(app: &mut App, press: Press) {
    let sign = app.speech.sign();
    match &mut app.count.over {
        Over::Bundle(typed) | Over::SortBundle(_, typed) => typed.press(press, sign),
        Over::Pile(draft) => draft.typed.press(press, sign),
        Over::Haul(details) => details.press(press, sign),
        Over::Page(page) => {
            page.press(press, sign);
            app.notice = None;
        }
        _ => {}
    }
}

fn pad_done(app: &mut App) {
    let sign = app.speech.sign();
    let Over::Bundle(typed) = &mut app.count.over else { return };
    if let Some(n) = bundle(typed, sign) {
        app.count.other = Some(n);
        arm(app, n);
    }
}

/// A bundle as typed: at least one, and no more than a pile holds.
pub fn bundle(typed: &mut Typed, sign: Sign) -> Option<u32> {
    let at_least_one = |n| match n {
        0 => Err(Misread::OutOfRange { met: None, least: Quantity::Count(1), most: Quantity::Count(PILE_MOST), might_be: None }),
        n => Ok(n),
    };
    typed.take(|text| reading::count(text, sign, PILE_MOST).and_then(at_least_one))
}

fn move_last(app: &mut App, to: Id, now: Now) {
    app.count.over = Over::Nothing;
    let Some((haul, last)) = sheet(app).and_then(|sheet| Some((sheet.haul, sheet.last?))) else { return };
    app.order(&Command::Haul(HaulCommand::Move { haul, from: last.pile, to, n: last.run }), now);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::news::{News, Trouble};
    use crate::app::order::Which;
    use crate::app::shelf::{Names, Posted};
    use crate::app::told::{after, nth};
    use crate::app::{Common, Msg, workshop};
    use crate::parts::Place;
    use fivebar_core::ledger::decide::{Lying, MoneyCommand, Much, On, StockCommand};
    use fivebar_core::ledger::kind::Exact;
    use fivebar_core::ledger::kind::book::Role;
    use fivebar_core::ledger::kind::haul::{Per, Step, TripDescribed};
    use fivebar_core::ledger::kind::money::{BoardPriceSet, Measure, RateSet, TillSet};
    use fivebar_core::ledger::{Book, Device, fold};
    use fivebar_core::quantity::{Decimal, Length, Money, Sorted, Span, Wall};
    use fivebar_core::quantity::{Key, Units};

    fn tap(tap: Tap) -> Msg {
        Msg::Count(tap)
    }

    fn pile(app: &App, nth: usize) -> Id {
        sheet(app).unwrap().tiles[nth].pile
    }

    fn taken(app: &App) -> Vec<u32> {
        sheet(app).map(|sheet| sheet.tiles.iter().map(|tile| tile.taken).collect()).unwrap_or_default()
    }

    fn appended(orders: &[Order]) -> Vec<Posted> {
        let lines = orders.iter().filter_map(|order| if let Order::Append { lines, .. } = order { Some(lines.clone()) } else { None });
        lines.flatten().collect()
    }

    /// 35 to a tap was for one pile: the next begins with single taps; five or ten have keys of their own and stay.
    #[test]
    fn a_bundle_of_one_piles_own_is_not_carried_to_a_new_pile() {
        for (n, then) in [(35, 1), (10, 10), (5, 5), (1, 1)] {
            let mut app = App::for_tests(Place::Count);
            after(&mut app, [tap(Tap::First), tap(Tap::Arm(n))]);
            super::super::draft::add(&mut app, fivebar_core::ledger::decide::PileFacts::default(), crate::app::told::nth(50));
            assert_eq!(app.count.armed, then, "{n}");
        }
    }

    #[test]
    fn wood_for_nothing_is_said_and_the_drive_home_says_what_a_tap_does() {
        let mut app = App::for_tests(Place::Count);
        let trip = |tap| Msg::Count(Tap::Trip(tap));
        let shown = after(&mut app, [Msg::Count(Tap::First), trip(TripTap::Leave), trip(TripTap::Step(Step::AtBin))]);
        assert!(shown.contains("Homeward"), "{shown}");
        assert!(after(&mut app, [trip(TripTap::Step(Step::Homeward))]).contains("Home?"));
        let gift = [trip(TripTap::Open), trip(TripTap::Choose(crate::app::trip::Field::Gift)), Msg::Count(Tap::Press(Press::Digit(0)))];
        assert!(!after(&mut app, gift).contains("for nothing"));
        assert!(after(&mut app, [trip(TripTap::Save)]).contains("for nothing"));
    }

    /// Count, of a story.
    fn told(story: &str) -> App {
        let story = fivebar_core::story::tell(story);
        assert_eq!(story.refused, []);
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| fivebar_core::ledger::line::write(entry)).collect();
        let mut app = App::for_tests(Place::Count);
        app.own = crate::app::shelf::Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.now = story.now;
        app
    }

    /// A cubic foot of ash weighs 672 kg/m3 x 0.0283168 m3 = 19.03 kg = 41.95 lb; ten are 419.5 lb, 319.5 over 100. What a pile without
    /// sizes adds is not known, and is never less. On a narrow page it stands in the head, as the bar lies below the piles.
    #[test]
    fn a_load_that_is_too_much_is_said_whatever_is_not_known_of_it() {
        let told = |lines: &str| {
            told(&format!(
                "{}{lines}",
                "2026-03-03 08:41 -05:00 workshop USD inch\npile boards ash-white 12 x 12 x 12 in\ncarries 100 lb\n"
            ))
        };
        for (lines, holds, lacks) in [
            ("count 1 boards", "42.0 of 100 lb", "over, leave some"),
            ("count 10 boards", "320 lb over, leave some", "without sizes"),
            ("count 10 boards\npile more\ncount 5 more", "at least 320 lb over, leave some", "warns at"),
            ("count 10 boards\npile more\ncount 5 more", "5 pieces without sizes", "warns at"),
            ("count 1 boards\npile more\ncount 5 more", "5 pieces without sizes", "over, leave some"),
        ] {
            let shown = after(&mut told(lines), []);
            assert!(shown.contains(holds) && !shown.contains(lacks), "{lines}: {shown}");
        }
    }

    /// One tap on a pile nobody sized pays nothing: what is to be said leads to the pile. What counts as good before anything was sorted is called a
    /// guess where the sum is.
    #[test]
    fn a_trip_of_which_nothing_is_known_does_not_pay() {
        let told =
            |lines: &str| told(&format!("{}{lines}", "2026-03-03 08:41 -05:00 workshop USD inch\nrate pay 20\nboards 4.75 a board-foot\n"));
        let mut bare = told("pile a\ncount 1 a\n");
        let shown = after(&mut bare, []);
        assert!(shown.contains("1 figure to say first") && !shown.contains("pays,") && !shown.contains("Pays,"), "{shown}");
        let shown = after(&mut bare, [tap(Tap::Worth)]);
        assert!(shown.contains("What is counted") && shown.contains("size and wood of a pile, under Name or size"), "{shown}");
        let pile = pile(&bare, 0);
        assert!(after(&mut bare, [tap(Tap::Page(PileTap::Open(pile)))]).contains("Name or size"));
        let guess = "Boards it replaces, a guess: three pieces in four are good";
        let sized = "pile a ash-white 1 x 4 x 30 in\ncount 40 a\n";
        assert!(after(&mut told(sized), [tap(Tap::Worth)]).contains(guess));
        assert!(!after(&mut told(&format!("{sized}good 40 a\n")), [tap(Tap::Worth)]).contains(guess));
    }

    #[test]
    fn a_bundle_of_none_is_refused_in_words() {
        let mut app = App::for_tests(Place::Count);
        let shown = after(&mut app, [Tap::OtherBundle, Tap::Press(Press::Digit(0)), Tap::PadDone].map(Msg::Count));
        assert!(shown.contains("It must be from 1 to 9"), "{shown}");
        after(&mut app, [Tap::Press(Press::RubOut), Tap::Press(Press::Digit(7)), Tap::PadDone].map(Msg::Count));
        assert_eq!(app.count.armed, 7);
    }

    #[test]
    fn the_first_tap_counts_without_a_question() {
        let mut app = App::for_tests(Place::Count);
        assert!(after(&mut app, []).contains("No pieces yet"));
        let shown = after(&mut app, [tap(Tap::First)]);
        assert!(shown.contains("1 piece<"), "{shown}");
        let own = pile(&app, 0);
        after(&mut app, [tap(Tap::Pile(own)), tap(Tap::Arm(5)), tap(Tap::Pile(own))]);
        assert_eq!(taken(&app), [7]);
    }

    /// Before the first haul has begun; then it is the haul's.
    #[test]
    fn the_measure_is_chosen_where_the_first_size_is_asked() {
        let mut app = App::for_tests(Place::Count);
        let say = |tap| Msg::Count(Tap::Draft(tap));
        let asked = || [tap(Tap::NewPile), say(DraftTap::Again(crate::app::draft::Asks::Thickness)), say(DraftTap::Other)];
        let shown = after(&mut app, asked());
        assert!(shown.contains("How thick, in inches?") && shown.contains("millimetres"), "{shown}");
        let shown = after(&mut app, [Msg::Workshop(workshop::Tap::Units(fivebar_core::quantity::Units::Metric))]);
        assert!(shown.contains("How thick, in millimetres?") && shown.contains("inches"), "{shown}");
        let mut begun = App::for_tests(Place::Count);
        after(&mut begun, [tap(Tap::First)]);
        let shown = after(&mut begun, asked());
        assert!(shown.contains("How thick, in inches?") && !shown.contains("millimetres"), "{shown}");
    }

    /// "Maple" that was chosen before the millimetres is the maple of a later pile.
    #[test]
    fn one_name_is_one_wood_whatever_the_measure() {
        let mut app = App::for_tests(Place::Count);
        let maple = |key: &str| Msg::Count(Tap::Draft(DraftTap::Wood(Key::read(key))));
        let asked = |units| Msg::Workshop(workshop::Tap::Units(units));
        let wood = |app: &App| match &app.count.over {
            Over::Pile(draft) => draft.facts.wood.as_ref().map(ToString::to_string),
            _ => None,
        };
        after(&mut app, [tap(Tap::NewPile), maple("maple-sugar"), asked(Units::Metric)]);
        assert_eq!(wood(&app).as_deref(), Some("maple-sycamore"));
        after(&mut app, [asked(Units::Inch)]);
        assert_eq!(wood(&app).as_deref(), Some("maple-sugar"));
        after(&mut app, [maple("oak-white"), asked(Units::Metric)]);
        assert_eq!(wood(&app).as_deref(), Some("oak-white"), "no other goes by its name");
    }

    /// The van leaves before anything is counted: its clock is seen, and the next step is one tap.
    #[test]
    fn a_trip_goes_on_before_the_first_piece() {
        let mut app = App::for_tests(Place::Count);
        let shown = after(&mut app, [tap(Tap::Trip(TripTap::Leave))]);
        assert!(shown.contains("No pieces yet") && shown.contains("At the bin") && !shown.contains("Sort"), "{shown}");
        after(&mut app, [tap(Tap::Trip(TripTap::Step(Step::AtBin))), tap(Tap::First)]);
        assert_eq!((taken(&app), fold::hauls(&app.own.book).count()), (vec![1], 1));
    }

    /// A figure that guards the van's limit never leaves a pile out without saying so.
    #[test]
    fn pieces_without_sizes_are_said_beside_the_weight() {
        let mut app = App::for_tests(Place::Count);
        let shown = after(&mut app, [tap(Tap::Arm(10)), tap(Tap::First)]);
        for said in ["weight not known", "10 pieces without sizes", "sizes missing"] {
            assert!(shown.contains(said), "{said}: {shown}");
        }
        let sized = PileFacts {
            wood: Key::read("ash-white"),
            thickness: Length::MM.times(25).ok(),
            width: Length::MM.times(50).ok(),
            length: Length::MM.times(500).ok(),
            ..PileFacts::default()
        };
        app.count.armed = 5;
        draft::add(&mut app, sized, nth(20));
        let second = pile(&app, 1);
        let shown = after(&mut app, [tap(Tap::Pile(second))]);
        assert!(shown.contains("at least ") && shown.contains("10 pieces without sizes"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Page(PileTap::Open(second)))]);
        assert!(shown.contains("Name or size"), "{shown}");
    }

    /// 20 good ones ask for 40 by the guess; what is missing before the trip can be reckoned is named, each with the way there.
    #[test]
    fn enough_and_the_trip_are_said_over_the_tiles() {
        let mut app = App::for_tests(Place::Count);
        let shown = after(&mut app, [tap(Tap::Arm(10)), tap(Tap::First)]);
        assert!(shown.contains("Does it pay?") && !shown.contains("likely"), "{shown}");
        let (haul, pile) = (sheet(&app).unwrap().haul, pile(&app, 0));
        let want = StockCommand::Want { part: Some("legs".into()), job: None, wanted: 20, pieces: 1, gives: 1 };
        app.order(&Command::Stock(Lying { haul, pile }, want), nth(30)).unwrap();
        let shown = after(&mut app, []);
        assert!(shown.contains("21 more and it is likely") && shown.contains("10, for 20 legs"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Pile(pile)), tap(Tap::Pile(pile)), tap(Tap::Enough)]);
        assert!(shown.contains("Legs: 1 more and it is likely") && shown.contains("one reject in four"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Close), tap(Tap::Pile(pile))]);
        assert!(shown.contains("You can stop"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Worth)]);
        assert!(shown.contains("What you want for an hour") && !shown.contains("How far the drive is"), "{shown}");
    }

    /// 27 x 57 x 546 is millimetres: each side is asked about, and taken as it is answered.
    #[test]
    fn a_side_beyond_its_kind_is_asked_about() {
        use crate::app::doubt::Doubt;
        use draft::Asks;
        let mm = |n| Length::MM.times(n).unwrap();
        let inches = |n| Length::INCH.times(n).unwrap();
        for (asks, text, asked, other) in [
            (Asks::Thickness, "27", Some("That is 27 in thick. Millimetres?"), Some(mm(27))),
            (Asks::Thickness, "12", None, None),
            (Asks::Width, "57", Some("That is 57 in wide. Millimetres?"), Some(mm(57))),
            (Asks::Length, "546", Some("That is 546 in long. Millimetres?"), Some(mm(546))),
            (Asks::Thickness, "600", Some("That is 600 in thick. Is it so?"), None),
        ] {
            let mut app = App::for_tests(Place::Count);
            let say = |tap| Msg::Count(Tap::Draft(tap));
            after(&mut app, [Msg::Count(Tap::NewPile), say(DraftTap::Again(asks)), say(DraftTap::Other)]);
            let presses = text.bytes().map(|digit| Msg::Count(Tap::Press(Press::Digit(digit - b'0'))));
            let shown = after(&mut app, presses.chain([say(DraftTap::PadDone)]));
            let Some(asked) = asked else {
                assert!(!shown.contains("That is"), "{text}: {shown}");
                continue;
            };
            assert!(shown.contains(asked), "{asked}: {shown}");
            let Over::Pile(draft) = &app.count.over else { panic!("the draft") };
            let of = asks.side().unwrap();
            assert_eq!(draft.typed.doubt.unwrap(), Doubt { of, side: inches(text.parse().unwrap()), in_mm: other });
            after(&mut app, [say(DraftTap::Take(other.unwrap_or(inches(600))))]);
            assert!(!matches!(&app.count.over, Over::Pile(draft) if draft.typed.doubt.is_some()), "answered");
        }
    }

    /// The truth of a sorted pile is no guess: 36 are good, 10 are needed for 20 parts.
    #[test]
    fn what_is_sorted_is_said_as_it_is() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::Arm(43)), tap(Tap::First)]);
        let (haul, pile) = (sheet(&app).unwrap().haul, pile(&app, 0));
        let want = StockCommand::Want { part: Some("legs".into()), job: None, wanted: 20, pieces: 1, gives: 2 };
        app.order(&Command::Stock(Lying { haul, pile }, want), nth(30)).unwrap();
        assert!(after(&mut app, []).contains("a guess"));
        app.order(&Command::Haul(HaulCommand::Reject { haul, pile, n: 7, why: Key::read("knot").unwrap() }), nth(31)).unwrap();
        app.order(&Command::Haul(HaulCommand::Sort { haul, pile, n: 36 }), nth(32)).unwrap();
        let shown = after(&mut app, []);
        assert!(shown.contains("36 good, 10 needed") && !shown.contains("guess") && !shown.contains("likely"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Page(PileTap::Open(pile)))]);
        assert!(shown.contains("36 good, 10 needed") && !shown.contains("guess") && !shown.contains("Take<"), "{shown}");
    }

    /// What the last tap added stands on its tile; taken back, or at home, no tile says so.
    #[test]
    fn a_tile_says_what_was_added_last_while_that_is_so() {
        let mut app = App::for_tests(Place::Count);
        let shown = after(&mut app, [tap(Tap::First), tap(Tap::Arm(5)), Msg::Count(Tap::Trip(TripTap::Leave))]);
        assert!(shown.contains(">+1<"), "{shown}");
        let first = pile(&app, 0);
        assert!(after(&mut app, [tap(Tap::Pile(first))]).contains(">+5<"));
        assert!(!after(&mut app, [Msg::Common(Common::TakeBack)]).contains(">+"));
        assert!(after(&mut app, [tap(Tap::Pile(first))]).contains(">+5<"));
        let shown = after(&mut app, [Msg::Count(Tap::Trip(TripTap::Step(Step::Home)))]);
        assert!(!shown.contains(">+") && shown.contains(">6<"), "{shown}");
    }

    /// Before the first piece nothing pays yet, whatever a figure of nothing would say.
    #[test]
    fn a_trip_with_nothing_counted_does_not_pay_yet() {
        let mut app = App::for_tests(Place::Count);
        let currency = app.begins_with().0;
        let rate = RateSet { pay: Some(Exact(Decimal::from(20))), ..RateSet::of(currency) };
        app.order(&Command::Money(MoneyCommand::SetRate(rate)), nth(41)).unwrap();
        draft::add(&mut app, PileFacts::default(), nth(20));
        let shown = after(&mut app, []);
        assert!(shown.contains("Does it pay?") && shown.contains("nothing is counted yet") && !shown.contains("ahead"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Worth)]);
        assert!(!shown.contains("ahead") && !shown.contains("Your minutes"), "{shown}");
    }

    /// Volumes go by the middle of a length band, weights by its high end, to be on the safe side; and it says so.
    #[test]
    fn the_load_says_that_a_band_weighs_at_its_longest() {
        let mut app = App::for_tests(Place::Count);
        let sides = |to| PileFacts {
            wood: Key::read("ash-white"),
            thickness: Some(Length::INCH),
            width: Some(Length::INCH),
            length: Length::INCH.times(18).ok(),
            length_to: to,
            ..PileFacts::default()
        };
        draft::add(&mut app, sides(None), nth(20));
        let first = pile(&app, 0);
        assert!(!after(&mut app, [tap(Tap::Pile(first))]).contains("at its longest"));
        draft::add(&mut app, sides(Length::INCH.times(24).ok()), nth(21));
        let second = pile(&app, 1);
        assert!(after(&mut app, [tap(Tap::Pile(second))]).contains("A pile of several lengths weighs as at its longest."));
    }

    /// Wet squares of the same wood say nothing of these.
    #[test]
    fn what_says_nothing_of_a_pile_is_said() {
        let mut app = App::for_tests(Place::Count);
        let ash = || PileFacts { wood: Key::read("ash-white"), ..PileFacts::default() };
        after(&mut app, [tap(Tap::Arm(10))]);
        draft::add(&mut app, ash(), nth(20));
        draft::add(&mut app, ash(), nth(21));
        let (first, second) = (pile(&app, 0), pile(&app, 1));
        after(&mut app, [tap(Tap::Pile(first)), tap(Tap::Pile(second))]);
        let haul = sheet(&app).unwrap().haul;
        let want = StockCommand::Want { part: None, job: None, wanted: 20, pieces: 1, gives: 1 };
        app.order(&Command::Stock(Lying { haul, pile: second }, want), nth(30)).unwrap();
        assert!(!after(&mut app, [tap(Tap::Enough)]).contains("Left out"));
        app.order(&Command::Haul(HaulCommand::Reject { haul, pile: first, n: 4, why: Key::read("wet").unwrap() }), nth(31)).unwrap();
        let shown = after(&mut app, []);
        assert!(shown.contains("Left out of the rejects: 4 that were wet, as wood dries."), "{shown}");
    }

    /// Ash of 10 board feet replaces 33.75 x 0.45 / 0.70 of a dollar a foot here; fetching it took nothing yet.
    #[test]
    fn a_trip_that_pays_says_so_and_one_that_does_not_says_what_evens_it() {
        let mut app = App::for_tests(Place::Count);
        let inches = |n| Length::INCH.times(n).ok();
        let sized =
            PileFacts { wood: Key::read("ash-white"), thickness: inches(1), width: inches(12), length: inches(12), ..PileFacts::default() };
        after(&mut app, [tap(Tap::Arm(10))]);
        draft::add(&mut app, sized, nth(20));
        let own = pile(&app, 0);
        after(&mut app, [tap(Tap::Pile(own))]);
        let currency = app.begins_with().0;
        let (amount, per) = (Exact(Decimal::from(7)), Measure::BoardFoot);
        let price = MoneyCommand::SetBoardPrice(BoardPriceSet { currency, amount, per, wood: None });
        let rate = RateSet { pay: Some(Exact(Decimal::from(20))), ..RateSet::of(currency) };
        app.order(&Command::Money(price), nth(40)).unwrap();
        app.order(&Command::Money(MoneyCommand::SetRate(rate)), nth(41)).unwrap();
        // 10 bf x 0.75 x 7 x 0.45 / 0.70 = 33.75, less half an hour at 20
        assert!(after(&mut app, []).contains("Trip pays, $24 ahead"));
        let haul = sheet(&app).unwrap().haul;
        let gift = MoneyCommand::Spend {
            on: On::Haul(haul),
            much: Much::Whole(Money::whole(Decimal::from(30), currency).unwrap()),
            kind: Key::read("gift").unwrap(),
            what: None,
            when: None,
        };
        app.order(&Command::Money(gift), nth(42)).unwrap();
        // 6.25 short, 2.375 more with each: 3 more
        let shown = after(&mut app, []);
        assert!(shown.contains("$6 short") && shown.contains("3 more of Ash, A evens it, without a drive"), "{shown}");
        let shown = after(&mut app, [tap(Tap::Worth), tap(Tap::Trip(TripTap::SavesTrip(true)))]);
        // What it saves has its sum, and so has what it costs: neither can be taken for the other.
        let at = |what: &str| shown.find(what).unwrap_or_default();
        assert!(0 < at(">Saves<") && at(">Saves<") < at(">The drive<") && at(">Costs<") < at(">Short<"), "{shown}");
        assert!(
            shown.contains("no trip was begun") && shown.contains("$33.75") && shown.contains("Say how far the timber yard is"),
            "{shown}"
        );
    }

    /// The van was never said to be home: what is proposed is written with one tap, and the stamps stay.
    #[test]
    fn a_trip_that_was_never_ended_is_repaired() {
        let mut app = App::for_tests(Place::Count);
        let trip = |tap| Msg::Count(Tap::Trip(tap));
        let shown = after(&mut app, [trip(TripTap::Leave), trip(TripTap::Step(Step::AtBin)), tap(Tap::First)]);
        assert!(!shown.contains("never ended"), "{shown}");
        let late = Now { wall: Wall::new(nth(0).wall.at.plus(Span::minutes(240)), nth(0).wall.offset), ..nth(60) };
        app.now = late.wall;
        assert!(crate::screens::page(&app).html().contains("This trip was never ended."));
        app.heard(trip(TripTap::Ended), late);
        let haul = app.own.haul().unwrap();
        assert!(haul.trips[0].home.is_some() && haul.trips[0].at_bin.is_some(), "{:?}", haul.trips);
        // two seconds there and as long back, one at the bin until the last count
        assert_eq!((haul.trips[0].wheel(), haul.trips[0].bin()), (Span::ms(4000), Span::ms(1000)));
        app.heard(trip(TripTap::Share(50)), Now { chance: nth(61).chance, ..late });
        assert_eq!(app.own.haul().unwrap().trips[0].wheel(), Span::ms(2000));
        // The key says what the pad writes: the whole drive.
        let said = TripDescribed { wheel: Some(Span::minutes(40)), ..TripDescribed::of(haul.id, haul.trips[0].id) };
        app.order(&Command::Haul(HaulCommand::DescribeTrip(said)), Now { chance: nth(62).chance, ..late });
        let shown = after(&mut app, [trip(TripTap::Open)]);
        assert!(shown.contains("40 min") && !shown.contains("20 min"), "{shown}");
    }

    /// Two suppliers on one trip are two hauls: the first is found again, sorted and brought home.
    #[test]
    fn an_earlier_haul_is_taken_in_hand_again() {
        let mut app = App::for_tests(Place::Count);
        let trip = |tap| Msg::Count(Tap::Trip(tap));
        after(&mut app, [tap(Tap::Arm(5)), tap(Tap::First), trip(TripTap::Leave), trip(TripTap::NewHaul)]);
        let (second, first) = (sheet(&app).unwrap().haul, fold::hauls(&app.own.book).nth(1).unwrap().id);
        let shown = after(&mut app, [trip(TripTap::Open)]);
        assert!(shown.contains("Other hauls"), "{shown}");
        let shown = after(&mut app, [trip(TripTap::Hauls)]);
        assert!(shown.contains("5 pieces, not home yet") && shown.contains("0 pieces"), "{shown}");
        let shown = after(&mut app, [trip(TripTap::InHand(Some(first)))]);
        assert!(shown.contains("An earlier haul") && sheet(&app).unwrap().haul == first, "{shown}");
        let pile = pile(&app, 0);
        after(&mut app, [tap(Tap::Pile(pile)), trip(TripTap::Step(Step::Home))]);
        assert_eq!((taken(&app), app.own.haul().unwrap().trips[0].home.is_some()), (vec![10], true));
        let shown = after(&mut app, [trip(TripTap::InHand(None))]);
        assert!(!shown.contains("An earlier haul") && sheet(&app).unwrap().haul == second, "{shown}");
    }

    /// Before anything is counted, a haul can have its supplier, and the van leaves for it.
    #[test]
    fn whose_bin_it_is_can_be_said_before_the_first_piece() {
        let mut app = App::for_tests(Place::Count);
        assert!(after(&mut app, []).contains("This haul"));
        let trip = |tap| Msg::Count(Tap::Trip(tap));
        let shown = after(&mut app, [trip(TripTap::Open)]);
        assert!(shown.contains("Supplier") && shown.contains("Set out") && !shown.contains("Another trip"), "{shown}");
        after(
            &mut app,
            [trip(TripTap::Choose(trip::Field::Supplier)), trip(TripTap::Named("Stair works".into())), trip(TripTap::AddSupplier)],
        );
        let shown = after(&mut app, [trip(TripTap::Leave), tap(Tap::Close)]);
        assert!(shown.contains("No pieces yet") && shown.contains("At the bin"), "{shown}");
        after(&mut app, [trip(TripTap::Step(Step::AtBin)), tap(Tap::First)]);
        let haul = app.own.haul().unwrap();
        assert_eq!((taken(&app), fold::hauls(&app.own.book).count(), haul.trips.len(), haul.supplier.is_some()), (vec![1], 1, 1, true));
    }

    /// Piles of one wood without a name are told apart by their sizes, on a narrow page with many piles too; named ones by their names.
    #[test]
    fn piles_of_one_wood_keep_their_sizes_on_a_narrow_page() {
        let mut app = App::for_tests(Place::Count);
        let of = |wood: &str, name: Option<&str>| PileFacts {
            wood: Key::read(wood),
            name: name.map(str::to_owned),
            thickness: Some(Length::INCH),
            ..PileFacts::default()
        };
        let piles =
            [("ash-white", None), ("ash-white", None), ("oak-white", None), ("ash-white", Some("ends")), ("cherry-black", Some("legs"))];
        for (nth, (wood, name)) in (20..).zip(piles) {
            draft::add(&mut app, of(wood, name), crate::app::told::nth(nth));
        }
        let shown = after(&mut app, []);
        assert_eq!((shown.matches("class=\"szr\"").count(), shown.matches("class=\"szr fold\"").count()), (2, 3), "{shown}");
    }

    /// Two taps from the tiles to what a pile is called and how large it is, and back to the tiles.
    #[test]
    fn a_size_is_two_taps_away() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First)]);
        let first = pile(&app, 0);
        assert!(after(&mut app, [tap(Tap::Choose)]).contains("or name"));
        let shown = after(&mut app, [tap(Tap::Size(first))]);
        assert!(shown.contains("Thickness") && shown.contains("not yet"), "{shown}");
        let inch = DraftTap::Side(Length::INCH);
        after(&mut app, [DraftTap::Again(draft::Asks::Thickness), inch, DraftTap::Save].map(|tap| Msg::Count(Tap::Draft(tap))));
        assert_eq!((app.count.over.clone(), sheet(&app).unwrap().tiles[0].size.thickness), (Over::Nothing, Some(Length::INCH)));
        let shown = after(&mut app, [tap(Tap::Size(first)), Msg::Key("Escape".into())]);
        assert!(shown.contains("class=\"tile"), "{shown}");
    }

    /// One pile alone is named as any other.
    #[test]
    fn the_first_pile_can_be_named() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First)]);
        let first = pile(&app, 0);
        assert!(after(&mut app, [tap(Tap::Page(PileTap::Open(first)))]).contains("Name or size"));
    }

    #[test]
    fn undo_takes_back_the_last_act_and_puts_it_back() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First)]);
        let own = pile(&app, 0);
        after(&mut app, [tap(Tap::Arm(10)), tap(Tap::Pile(own)), Msg::Common(Common::TakeBack)]);
        assert_eq!(taken(&app), [1]);
        assert!(after(&mut app, []).contains("Do it again"));
        after(&mut app, [Msg::Common(Common::PutBack)]);
        assert_eq!(taken(&app), [11]);
        assert!(after(&mut app, [Msg::Key("u".into())]).contains("1 piece<"));
    }

    /// A slip that is seen two taps later: each tap takes one more back, the newest first, and what stands is done no more than once.
    #[test]
    fn what_was_done_before_is_taken_back_too() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First)]);
        let own = pile(&app, 0);
        after(&mut app, [tap(Tap::Arm(10)), tap(Tap::Pile(own)), tap(Tap::Arm(5)), tap(Tap::Pile(own))]);
        let mut takes = |msg: Option<Msg>, there: &[u32], keys: [bool; 2]| {
            let shown = after(&mut app, msg);
            assert_eq!(taken(&app), there, "{shown}");
            assert_eq!(["Do it again", ">Take back"].map(|key| shown.contains(key)), keys, "{there:?}: {shown}");
        };
        let (back, again) = (|| Some(Msg::Common(Common::TakeBack)), || Some(Msg::Common(Common::PutBack)));
        takes(None, &[16], [false, true]);
        takes(back(), &[11], [true, true]);
        takes(Some(Msg::Key("u".into())), &[11], [true, true]);
        takes(back(), &[1], [true, true]);
        takes(again(), &[11], [true, true]);
        takes(back(), &[1], [true, true]);
        takes(back(), &[], [true, false]);
        takes(back(), &[], [true, false]);
        takes(again(), &[1], [true, true]);
        takes(again(), &[11], [true, true]);
        takes(again(), &[16], [false, true]);
    }

    #[test]
    fn the_last_counts_in_a_row_move_to_another_pile_in_one_act() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First), tap(Tap::NewPile), tap(Tap::Draft(DraftTap::Later))]);
        let (a, b) = (pile(&app, 0), pile(&app, 1));
        after(&mut app, [tap(Tap::Pile(a)), tap(Tap::Pile(b)), tap(Tap::Pile(b)), tap(Tap::Move), tap(Tap::MoveTo(a))]);
        assert_eq!(taken(&app), [4, 0]);
    }

    #[test]
    fn more_than_a_pile_holds_is_refused_with_its_limit() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::Arm(9_999)), tap(Tap::First)]);
        let own = pile(&app, 0);
        let shown = after(&mut app, [tap(Tap::Pile(own))]);
        assert!(shown.contains("9999 pieces"), "{shown}");
        assert_eq!(taken(&app), [9_999]);
    }

    #[test]
    fn inv09_taps_before_the_first_load_wait_with_their_moment() {
        let mut app = App::for_tests(Place::Count);
        app.is_open = false;
        assert_eq!(app.heard(tap(Tap::First), nth(3)), []);
        assert!(app.own.book.is_empty());
        let shown = crate::screens::page(&app).html();
        assert!(shown.contains("Opening the book.") && shown.contains(">1<") && !shown.contains("No pieces yet"), "{shown}");
        let device = Device::read("a1").unwrap();
        let orders = app.told(News::Opened { which: Which::Own, device, book: Box::default(), names: Sorted::new() });
        assert_eq!(taken(&app), [1]);
        assert!(appended(&orders).iter().all(|posted| posted.line.contains(&format!("\"at\":{}", nth(3).wall.at.ms()))));
    }

    /// Every tap on the board of day one counts, also where the book turns out to hold a haul.
    #[test]
    fn inv09_early_taps_count_onto_the_pile_that_is_there() {
        let mut app = App::for_tests(Place::Count);
        let opened = |book: Book| {
            let (which, device) = (Which::Own, Device::read("a1").unwrap());
            News::Opened { which, device, book: Box::new(book), names: Sorted::new() }
        };
        let early = |app: &mut App, from: u8| {
            app.is_open = false;
            (from..from + 3).for_each(|n| drop(app.heard(tap(Tap::First), nth(n))));
        };
        early(&mut app, 0);
        app.told(opened(Book::default()));
        assert_eq!(taken(&app), [3], "one haul with one pile");
        let book = app.own.book.clone();
        early(&mut app, 10);
        app.told(opened(book));
        assert_eq!(taken(&app), [6]);
    }

    #[test]
    fn inv09_saved_is_said_only_after_its_transaction() {
        let mut app = App::for_tests(Place::Count);
        let orders = app.heard(tap(Tap::First), nth(0));
        let ids: Vec<Id> = appended(&orders).iter().map(|posted| posted.id).collect();
        assert_eq!(ids.len(), 3, "a haul, its pile, a count: one act");
        assert!(after(&mut app, []).contains("not saved yet"));
        app.told(News::Saved { which: Which::Own, ids, at: nth(9).wall });
        assert!(after(&mut app, []).contains("saved 09:00"));
    }

    /// Drawing 20: the pile stands alone with hollow marks; why, what is safe, what to do.
    #[test]
    fn a_count_that_was_not_saved_stands_hollow_on_its_pile() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First), tap(Tap::Arm(10))]);
        let own = pile(&app, 0);
        let stored: Vec<String> = app.own.book.lines().map(str::to_owned).collect();
        let ids = app.own.book.entries().map(|(entry, _)| entry.id).collect();
        app.told(News::Saved { which: Which::Own, ids, at: nth(9).wall });
        let lines = appended(&app.heard(tap(Tap::Pile(own)), nth(10)));
        assert!(after(&mut app, []).contains("class=\"ho\""), "hollow until it is saved");
        app.told(News::NotSaved { which: Which::Own, lines: lines.clone(), names: Names::default(), trouble: Trouble::Full, stored });
        let shown = after(&mut app, []);
        for said in
            ["tile fail", "class=\"ho\"", "Not counted: 10 onto Pile A", "Your 1 piece, saved 09:00.", "count the 10", "Keep a copy"]
        {
            assert!(shown.contains(said), "{said}: {shown}");
        }
        assert_eq!(taken(&app), [1]);
        let shown = after(&mut app, [Msg::Go(Place::Bench)]);
        assert!(shown.contains("1 entry is not saved.") && shown.contains("Try again"), "it is not forgotten: {shown}");
        let again = app.heard(Msg::Common(Common::TryAgain), nth(11));
        assert_eq!((appended(&again), taken(&app)), (lines, vec![11]));
    }

    /// The store fails and can't even be read: what was shown as saved stays, and so does what was saved meanwhile.
    #[test]
    fn inv09_a_store_that_answers_nothing_takes_nothing_away() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [tap(Tap::First)]);
        let own = pile(&app, 0);
        let ids = app.own.book.entries().map(|(entry, _)| entry.id).collect();
        app.told(News::Saved { which: Which::Own, ids, at: nth(9).wall });
        let first = appended(&app.heard(tap(Tap::Pile(own)), nth(10)));
        let second = appended(&app.heard(tap(Tap::Pile(own)), nth(11)));
        let ids = second.iter().map(|posted| posted.id).collect();
        app.told(News::Saved { which: Which::Own, ids, at: nth(12).wall });
        app.told(News::NotSaved { which: Which::Own, lines: first, names: Names::default(), trouble: Trouble::Lost, stored: vec![] });
        assert_eq!(taken(&app), [2]);
    }

    /// Where no book could be opened, "open it again" is no dead key, and no tap is kept that would be lost.
    #[test]
    fn a_book_that_did_not_open_can_be_opened_again() {
        let mut app = App::for_tests(Place::Count);
        app.is_open = false;
        app.told(News::NotOpened { which: Which::Own, trouble: Trouble::Blocked });
        app.heard(Msg::Go(Place::Bench), nth(0));
        app.heard(Msg::Go(Place::Count), nth(0));
        assert_eq!(app.heard(tap(Tap::First), nth(0)), [Order::Feel(Feel::Refused)]);
        assert_eq!(app.heard(Msg::Common(Common::Reload), nth(1)), [Order::Reload]);
    }

    #[test]
    fn a_haul_says_whose_bin_it_was() {
        let mut app = App::for_tests(Place::Count);
        let say = |trip| tap(Tap::Trip(trip));
        after(&mut app, [tap(Tap::First), say(TripTap::Open), say(TripTap::Choose(trip::Field::Supplier))]);
        let shown = after(&mut app, [say(TripTap::Named("Stair works".into())), say(TripTap::AddSupplier)]);
        assert!(shown.contains("Stair works"), "{shown}");
        assert!(app.own.book.lines().all(|line| !line.contains("Stair")), "no name is in the book");
        let supplier = app.own.haul().unwrap().supplier;
        assert_eq!(supplier, app.own.names.keys().next().copied());
        app.heard(Msg::Common(Common::TakeBack), nth(40));
        assert_eq!(app.own.haul().unwrap().supplier, None, "person and haul are one act");
        assert!(fold::workshop(&app.own.book).people.is_empty());
    }

    /// Only what was corrected is written, and a name that is rubbed out is no name.
    #[test]
    fn a_pile_is_corrected_in_what_was_corrected_alone() {
        let mut app = App::for_tests(Place::Count);
        let ash = PileFacts { wood: Key::read("ash-white"), thickness: Length::INCH.times(1).ok(), ..PileFacts::default() };
        draft::add(&mut app, ash, nth(20));
        let pile = pile(&app, 0);
        let last = |app: &App| app.own.book.lines().last().unwrap().split_once("\"pile\"").unwrap().0.to_owned();
        let name = |text: &str| [Tap::Edit(pile), Tap::Draft(DraftTap::Name(text.into())), Tap::Draft(DraftTap::Save)].map(tap);
        after(&mut app, name(" Rails "));
        assert!(last(&app).contains(r#""name":"Rails""#) && !last(&app).contains("thickness"), "{}", last(&app));
        let entries = app.own.book.len();
        after(&mut app, name("Rails"));
        assert_eq!(app.own.book.len(), entries, "nothing was corrected");
        after(&mut app, name(" "));
        assert!(after(&mut app, [tap(Tap::Close)]).contains(">Ash, A<"));
    }

    /// What a drive without a rate costs is not known, and it says so, until there is a rate.
    #[test]
    fn a_drive_without_a_rate_says_so() {
        let mut app = App::for_tests(Place::Count);
        let say = |trip| tap(Tap::Trip(trip));
        let shown = after(&mut app, [tap(Tap::First), say(TripTap::Leave), say(TripTap::Open)]);
        assert!(!shown.contains("No rate for driving"), "{shown}");
        let typed = [say(TripTap::Choose(trip::Field::Distance)), tap(Tap::Press(Press::Digit(9))), say(TripTap::Save)];
        let shown = after(&mut app, typed);
        assert!(shown.contains("No rate for driving") && shown.contains(">9 mi<"), "{shown}");
        let currency = app.begins_with().0;
        let (mileage, per) = (Some(Exact(Decimal::new(5, 1))), Some(Per::Mile));
        let till = TillSet { mileage, per, ..TillSet::of(currency) };
        app.order(&Command::Money(MoneyCommand::SetTill(till)), nth(41));
        let shown = after(&mut app, []);
        assert!(!shown.contains("No rate for driving") && shown.contains("4.50"), "{shown}");
    }

    /// On a full phone neither the person nor the name is saved: both are said, and both are tried again.
    #[test]
    fn a_name_that_was_not_saved_is_tried_again() {
        let mut app = App::for_tests(Place::Workshop);
        let say = |tap| Msg::Workshop(tap);
        after(&mut app, [say(workshop::Tap::Open(workshop::Over::People)), say(workshop::Tap::Typed("Stair works".into()))]);
        let orders = app.heard(say(workshop::Tap::AddPerson(Role::Supplier)), nth(3));
        let (lines, names) = orders
            .iter()
            .find_map(|order| if let Order::Append { lines, names, .. } = order { Some((lines.clone(), names.clone())) } else { None })
            .unwrap();
        assert_eq!(names.kept.iter().map(|(_, name)| &**name).collect::<Vec<_>>(), ["Stair works"], "in the transaction of the act");
        app.told(News::NotSaved { which: Which::Own, lines: lines.clone(), names: names.clone(), trouble: Trouble::Full, stored: vec![] });
        assert_eq!(app.own.failures(), 1);
        let again = app.heard(Msg::Common(Common::TryAgain), nth(4));
        assert_eq!(again, [Order::Append { which: Which::Own, lines, names }]);
    }

    #[test]
    fn what_could_not_be_saved_is_said_and_can_be_tried_again() {
        let mut app = App::for_tests(Place::Count);
        let lines = appended(&app.heard(tap(Tap::First), nth(0)));
        app.told(News::NotSaved {
            which: Which::Own,
            lines: lines.clone(),
            names: Names::default(),
            trouble: Trouble::Full,
            stored: vec![],
        });
        let shown = after(&mut app, []);
        assert!(shown.contains("The phone is full.") && shown.contains("No pieces yet"), "{shown}");
        let again = app.heard(Msg::Common(Common::TryAgain), nth(1));
        assert_eq!(appended(&again), lines);
        assert_eq!(taken(&app), [1]);
    }
}
