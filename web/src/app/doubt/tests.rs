//! A side beyond its kind, asked about wherever a side is typed; a moisture of nothing, refused wherever one is typed.

use super::*;
use crate::app::count::{self, Tap as Counted};
use crate::app::pile::{Doing, PileTap};
use crate::app::told::{after, nth};
use crate::app::workshop::rack::{Ask, Page as RackPage, RackTap};
use crate::app::workshop::wood::{Page, WoodTap};
use crate::app::{App, Msg, draft, jobs, workshop};
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, JobCommand, Lying, PileFacts};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Currency, Id};

fn inches(n: i64) -> Length {
    Length::INCH.times(n).unwrap()
}

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

fn wood(tap: WoodTap) -> Msg {
    Msg::Workshop(workshop::Tap::Wood(tap))
}

fn rack(tap: RackTap) -> Msg {
    Msg::Workshop(workshop::Tap::Rack(tap))
}

/// A place where figures are typed: it is opened, a figure comes under the thumb, a key is pressed, it is saved, a doubt is answered.
struct Form {
    app: App,
    at: fn(usize) -> Msg,
    press: fn(Press) -> Msg,
    save: Msg,
    is_so: fn(Length) -> Msg,
}

impl Form {
    fn types(&mut self, figures: &[&str]) -> String {
        for (slot, figure) in figures.iter().enumerate().filter(|(_, figure)| !figure.is_empty()) {
            let digits: Vec<Msg> = figure.bytes().map(|digit| (self.press)(Press::Digit(digit - b'0'))).collect();
            after(&mut self.app, std::iter::once((self.at)(slot)).chain(digits));
        }
        after(&mut self.app, [self.save.clone()])
    }
}

/// The app with a pile of 9 pieces of 1 x 2 x 20 in.
fn with_pile() -> (App, Lying) {
    let mut app = App::for_tests(Place::Count);
    let facts = PileFacts {
        thickness: Some(inches(1)),
        width: Some(inches(2)),
        length: Some(inches(20)),
        name: Some("ends".into()),
        ..PileFacts::default()
    };
    draft::add(&mut app, facts, nth(91));
    let there = count::sheet(&app).map(|sheet| Lying { haul: sheet.haul, pile: sheet.tiles[0].pile }).unwrap();
    after(&mut app, [Counted::Arm(9), Counted::Pile(there.pile)].map(Msg::Count));
    (app, there)
}

fn measure() -> Form {
    let (mut app, there) = with_pile();
    after(&mut app, [PileTap::Open(there.pile), PileTap::Do(Doing::Measure)].map(|tap| Msg::Count(Counted::Page(tap))));
    let at = |nth| Msg::Count(Counted::Page(PileTap::At(nth)));
    let is_so = |side| Msg::Count(Counted::Page(PileTap::IsSo(side)));
    Form { app, at, press: |press| Msg::Count(Counted::Press(press)), save: Msg::Count(Counted::Page(PileTap::Save)), is_so }
}

fn on_the_rack(page: impl FnOnce(Lying) -> RackPage) -> Form {
    let (mut app, there) = with_pile();
    after(&mut app, [Msg::Workshop(workshop::Tap::ShowPage(workshop::Over::Rack)), rack(RackTap::Show(page(there)))]);
    let at = |nth| rack(RackTap::At(nth));
    let press = |press| rack(RackTap::Press(press));
    Form { app, at, press, save: rack(RackTap::Done), is_so: |side| rack(RackTap::IsSo(side)) }
}

fn parts_list() -> Form {
    let mut app = App::for_tests(Place::Jobs);
    let (currency, units) = (Currency::USD, Units::Inch);
    let job = JobCommand::Begin { name: "Stands".into(), currency, units, pieces: 1, made_for: For::Spec };
    let id: Id = app.order(&Command::Job(job), nth(90)).unwrap().entries[0].id;
    let say = |tap| Msg::Jobs(tap);
    let taps = [jobs::Tap::Open(crate::app::order::Which::Own, id), jobs::Tap::Write(jobs::draft::What::Part(None))];
    after(&mut app, taps.map(say));
    after(&mut app, [say(jobs::Tap::Say(0, "leg".into()))]);
    let press = |press| Msg::Jobs(jobs::Tap::Press(press));
    Form { app, at: |nth| Msg::Jobs(jobs::Tap::At(nth)), press, save: say(jobs::Tap::Save), is_so: |side| Msg::Jobs(jobs::Tap::IsSo(side)) }
}

fn of_wood(page: Page) -> Form {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [wood(WoodTap::Open(page)), wood(WoodTap::Name("shaper".into()))]);
    let press = |press| wood(WoodTap::Press(press));
    Form { app, at: |nth| wood(WoodTap::At(nth)), press, save: wood(WoodTap::Save), is_so: |side| wood(WoodTap::IsSo(side)) }
}

/// What is typed is asked about and nothing is written; answered, all of it is written.
#[track_caller]
fn check(mut form: Form, figures: &[&str], asked: &[(&str, Length)]) -> App {
    let before = form.app.own.book.len();
    let mut shown = form.types(figures);
    for (said, answer) in asked {
        assert!(shown.contains(said), "{said}: {shown}");
        assert_eq!(form.app.own.book.len(), before, "nothing is written before it is answered");
        shown = after(&mut form.app, [(form.is_so)(*answer)]);
    }
    assert!(!shown.contains("That is"), "{shown}");
    assert!(before < form.app.own.book.len(), "{shown}");
    form.app
}

#[test]
fn a_side_beyond_its_kind_is_asked_about_wherever_it_is_typed() {
    let asked = [("That is 27 in thick. Millimetres?", mm(27)), ("That is 57 in wide. Millimetres?", mm(57))];
    let app = check(measure(), &["27", "57", ""], &asked);
    let measured = app.own.haul().unwrap().piles[0].measured.clone();
    assert_eq!(measured.iter().map(|it| (it.thickness, it.width)).collect::<Vec<_>>(), [(Some(mm(27)), Some(mm(57)))]);
    check(measure(), &["", "", "24"], &[]);

    let app = check(
        parts_list(),
        &["4", "38", "38", "456"],
        &[("That is 38 in thick. Millimetres?", mm(38)), ("That is 456 in long. Millimetres?", mm(456))],
    );
    assert_eq!(fold::jobs(&app.own.book).next().unwrap().parts[0].size, [mm(38), inches(38), mm(456)], "38 in may be a width");

    let app = check(on_the_rack(|_| RackPage::Buy), &["25", "6", "96", "4", "88"], &[("That is 25 in thick. Millimetres?", mm(25))]);
    assert_eq!(fold::hauls(&app.own.book).find(|haul| haul.bought).unwrap().piles[0].thickness, Some(mm(25)));

    let app = check(on_the_rack(|at| RackPage::Ask(at, Ask::Size)), &["", "", "560"], &[("That is 560 in long. Millimetres?", mm(560))]);
    let pile = &app.own.haul().unwrap().piles[0];
    assert_eq!((pile.thickness, pile.length, pile.name.as_deref()), (Some(inches(1)), Some(mm(560)), Some("ends")));

    let app = check(of_wood(Page::Machine(None)), &["300", "20", ""], &[("That is 300 in at the least. Millimetres?", mm(300))]);
    assert_eq!(fold::workshop(&app.own.book).wood.machines.values().next().unwrap().length, Some(mm(300)));

    let kept = ["3", "", "", "", "", "", "", "", "30"];
    let app = check(
        of_wood(Page::Saw),
        &kept,
        &[("That is 3 in of kerf, and a blade takes no more than ", mm(3)), ("That is 30 in at the least. Millimetres?", inches(30))],
    );
    let saw = fivebar_core::sheet::make::figures_of(&fold::workshop(&app.own.book), Units::Inch).unwrap();
    assert_eq!((saw.kerf, saw.keep_min), (mm(3), inches(30)));
}

/// A blade takes 3/8 in or 10 mm at the most: what is more is asked about, and taken where it is so.
#[test]
fn a_kerf_that_is_none_is_asked_about() {
    let kerf = |app: &App| fivebar_core::sheet::make::figures_of(&fold::workshop(&app.own.book), Units::Inch).unwrap().kerf;
    let app = check(of_wood(Page::Saw), &["12"], &[("That is 12 in of kerf, and a blade takes no more than ", inches(12))]);
    assert_eq!(kerf(&app), inches(12));
    for (text, units, asked) in [
        ("30", Units::Metric, true),
        ("10,1", Units::Metric, true),
        ("10", Units::Metric, false),
        ("1 1/4", Units::Inch, true),
        ("3/8", Units::Inch, false),
    ] {
        let typing = Typing { units, sign: reading::Sign::Comma };
        let side = Side::Kerf.read(text, typing).unwrap();
        assert_eq!(Side::Kerf.doubt((side, text), typing).is_some(), asked, "{text}");
    }
}

/// No meter shows nothing: 0 % is refused with its limits, in every form that asks a moisture.
#[test]
fn a_moisture_of_nothing_is_refused_wherever_it_is_typed() {
    let refused = |mut form: Form, figures: &[&str]| {
        let before = form.app.own.book.len();
        let shown = form.types(figures);
        assert!(shown.contains("It must be from 1 to 250"), "{shown}");
        assert_eq!(form.app.own.book.len(), before);
    };
    refused(of_wood(Page::Movement), &["10", "0", "9"]);
    assert!(of_wood(Page::Movement).types(&["10", "7", "9", "0"]).contains("It must be from 1 to 250"), "the room itself is taken");
    refused(of_wood(Page::Gluing), &["0"]);
    refused(on_the_rack(|at| RackPage::Ask(at, Ask::Moisture)), &["0"]);
    let mut pile = measure();
    after(&mut pile.app, [Msg::Count(Counted::Page(PileTap::Leave)), Msg::Count(Counted::Page(PileTap::Do(Doing::Moisture)))]);
    refused(pile, &["0"]);
    let mut room = parts_list();
    after(&mut room.app, [Msg::Jobs(jobs::Tap::Write(jobs::draft::What::Room))]);
    refused(room, &["0", "9"]);
}
