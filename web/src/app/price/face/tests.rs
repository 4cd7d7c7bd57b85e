//! The buyer's face, told as a table: what is said on Jobs, and what a buyer reads then.

use super::super::bargain::BargainTap;
use super::*;
use crate::app::form::Form;
use crate::app::jobs::{Tap as JobTap, draft::What};
use crate::app::shelf::Shelf;
use crate::app::{App, order::Which};
use crate::parts::Place;
use crate::screens::page;
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::{Device, line};
use fivebar_core::story::tell;

/// A bench whose facts are all said, and the moment after.
fn maker() -> (App, Id, Now) {
    let story = tell(
        "2026-03-02 09:00 +01:00 workshop EUR metric\njob bench \"Shoe bench\" 1 order\n\
         about bench size 900 x 350 x 480 mm weight 14 kg wood \"oak\" finish \"oil\" care \"wipe dry\" delivery \"upstairs, 30 EUR\"",
    );
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
    (app, story.names.job("bench").unwrap(), Now { wall: story.now, chance: [9; 10] })
}

/// What a buyer reads once the nth fact of a form was emptied; the others stay.
#[track_caller]
fn check(what: What, nth: usize, gone: &str) {
    let (mut app, job, now) = maker();
    let say = |app: &mut App, message: Msg, n: u8| drop(app.heard(message, Now { chance: [n; 10], ..now }));
    let facts = ["Size", "900", "350", "480", "Weight", "14.0 kg", "oak", "oil", "wipe dry", "upstairs, 30 EUR"];
    say(&mut app, Msg::Jobs(JobTap::Open(Which::Own, job)), 1);
    say(&mut app, Msg::Jobs(JobTap::Write(what.clone())), 2);
    let draft = app.jobs.draft.as_mut().unwrap();
    if what == What::Size {
        let mut typed = ["900", "350", "480", "14"].map(String::from);
        typed[nth].clear();
        draft.form = Form::filled(typed);
    } else {
        draft.words[nth].clear();
    }
    say(&mut app, Msg::Jobs(JobTap::Save), 3);
    assert!(app.jobs.draft.is_none(), "saved: {:?}", app.notice);
    say(&mut app, Msg::Price(Tap::Show(job)), 4);
    let face = page(&app).html();
    for fact in facts {
        assert_eq!(face.contains(fact), fact != gone && !gone.contains(fact), "{fact} once {gone} is gone: {face}");
    }
}

#[test]
fn inv15_a_fact_that_was_emptied_is_gone_from_the_face() {
    check(What::Facts, 0, "oak");
    check(What::Facts, 1, "oil");
    check(What::Facts, 2, "wipe dry");
    check(What::Facts, 3, "upstairs, 30 EUR");
    check(What::Size, 0, "900");
    check(What::Size, 2, "480");
    check(What::Size, 3, "Weight, 14.0 kg");
}

/// What was never said stays unsaid: nothing is written of it.
#[test]
fn what_was_empty_before_is_not_taken_away() {
    let (mut app, job, now) = maker();
    let before = app.own.book.lines().count();
    for (n, tap) in
        [JobTap::Open(Which::Own, job), JobTap::Write(What::Facts), JobTap::Say(3, String::new()), JobTap::Save].into_iter().enumerate()
    {
        app.heard(Msg::Jobs(tap), Now { chance: [n as u8; 10], ..now });
    }
    for (n, tap) in [JobTap::Write(What::Facts), JobTap::Save].into_iter().enumerate() {
        app.heard(Msg::Jobs(tap), Now { chance: [n as u8 + 20; 10], ..now });
    }
    let lines: Vec<&str> = app.own.book.lines().skip(before).collect();
    let says: Vec<bool> = lines.iter().map(|line| line.contains("\"delivery\"")).collect();
    assert_eq!(says, [true, false], "{lines:?}");
}

/// A buyer's finger pulled the page down: the piece comes again once the book is read, and behind it the sum spoken of, for so many.
#[test]
fn inv15_a_page_loaded_anew_shows_the_piece_again() {
    let (mut app, job, now) = maker();
    let say = |app: &mut App, message| app.heard(message, now);
    let money = |text: &str| Money::whole(text.parse().unwrap(), Currency::EUR).unwrap();
    app.place = Place::Price;
    say(&mut app, Msg::Price(Tap::Offer(job)));
    say(&mut app, Msg::Price(Tap::Bargain(crate::app::price::bargain::BargainTap::Say(money("95")))));
    let orders = say(&mut app, Msg::Price(Tap::Show(job)));
    let turned = orders.into_iter().find_map(|order| if let Order::Face(turned) = order { turned } else { None }).unwrap();
    assert_eq!(turned, Turned { piece: job, spoken: format!("{job} 1 own own own 95.00 EUR") });
    let mut anew = App::for_tests(Place::Price);
    anew.is_open = false;
    again(&mut anew, &turned.piece.to_string());
    spoken(&mut anew, &turned.spoken);
    let html = page(&anew).html();
    assert!(html.contains("Hold to close") && !html.contains("Shoe bench") && !html.contains("95"), "{html}");
    (anew.own, anew.is_open) = (app.own, true);
    let html = page(&anew).html();
    assert!(html.contains("Hold to close") && html.contains("Shoe bench") && !html.contains("95"), "{html}");
    say(&mut anew, Msg::Price(Tap::Hide));
    let html = page(&anew).html();
    assert!(html.contains("They offer") && html.contains("€95"), "{html}");
}

/// A page loaded anew in a buyer's hands keeps the price they read: 0, 7, 10 or 20 % on top of 100.
#[test]
fn inv15_a_page_loaded_anew_keeps_the_tax_that_was_chosen() {
    use crate::app::price::bargain::BargainTap;
    use fivebar_core::ledger::fold::TaxBy;
    use fivebar_core::money::tax::Tax;
    use fivebar_core::quantity::Side;
    let story = tell(
        "2026-03-02 09:00 +01:00 workshop EUR metric\ntill tax 0.2 top\ntax-rate \"Reduced\" 0.07 top as low\n\
        job bench \"Shoe bench\" 1 spec\ntag 100 bench\n",
    );
    assert_eq!(story.refused, []);
    let (job, now) = (story.names.job("bench").unwrap(), Now { wall: story.now, chance: [9; 10] });
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let open = || {
        let mut app = App::for_tests(Place::Price);
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app
    };
    let low = TaxBy::Named(open().own.workshop().taxes[0].id);
    let agreed = TaxBy::Agreed(Tax { rate: Decimal::new(1, 1), side: Side::Top });
    for (tax, shown) in
        [(None, "€120"), (Some(TaxBy::Untaxed), "€100"), (Some(low), "€107"), (Some(TaxBy::Usual), "€120"), (Some(agreed), "€110")]
    {
        let mut app = open();
        let taps = [Tap::Offer(job)].into_iter().chain(tax.map(|tax| Tap::Bargain(BargainTap::Tax(tax)))).chain([Tap::Show(job)]);
        let orders: Vec<Order> = taps.flat_map(|tap| app.heard(Msg::Price(tap), now)).collect();
        assert!(page(&app).html().contains(shown), "{tax:?}");
        let turned = orders.into_iter().find_map(|order| if let Order::Face(turned) = order { turned } else { None }).unwrap();
        let mut anew = open();
        again(&mut anew, &turned.piece.to_string());
        spoken(&mut anew, &turned.spoken);
        let html = page(&anew).html();
        assert!(html.contains(shown), "{tax:?}: {} in {html}", turned.spoken);
    }
}

/// The hold ended before the store told what was spoken of: the list stays as it is under the hand, and the offer of that piece has it.
#[test]
fn what_the_store_tells_late_changes_no_page() {
    let (own, job, now) = maker();
    let said = format!("{job} 1 own card fetched 95.00 EUR");
    let late = || {
        let mut app = App::for_tests(Place::Price);
        app.own = Shelf::open(Device::new([1; 8]), own.own.book.lines());
        again(&mut app, &job.to_string());
        hide(&mut app);
        app
    };
    let mut app = late();
    let before = page(&app).html();
    spoken(&mut app, &said);
    assert_eq!((page(&app).html(), &app.price.over), (before, &Over::Nothing));
    app.heard(Msg::Price(Tap::Offer(job)), now);
    let html = page(&app).html();
    assert!(html.contains("They offer") && html.contains("€95"), "{html}");
    let Over::Offer(bargain) = &app.price.over else { panic!("{html}") };
    assert_eq!((bargain.paid, bargain.carried), (Some(Paid::Card), Some(Carried::Fetched)));
    // Once it was opened, or another was, the next buyer begins anew.
    app.heard(Msg::Price(Tap::Close), now);
    app.heard(Msg::Price(Tap::Offer(job)), now);
    assert!(!page(&app).html().contains("€95"));
    let mut app = late();
    spoken(&mut app, &said);
    app.heard(Msg::Price(Tap::Offer(Id::new(now.wall.at, [3; 10]))), now);
    assert_eq!(app.price.late, None);
}

/// Who said that they fetch, and how they pay, has it so again: where a drive is planned the offer would open delivered.
#[test]
fn how_it_is_paid_and_carried_comes_back_too() {
    let (mut app, job, now) = maker();
    let taps =
        [Tap::Offer(job), Tap::Bargain(BargainTap::Carried(Carried::Fetched)), Tap::Bargain(BargainTap::Paid(Paid::Card)), Tap::Show(job)];
    let orders: Vec<Order> = taps.into_iter().flat_map(|tap| app.heard(Msg::Price(tap), now)).collect();
    let turned = orders.into_iter().find_map(|order| if let Order::Face(turned) = order { turned } else { None }).unwrap();
    let mut anew = App::for_tests(Place::Price);
    again(&mut anew, &turned.piece.to_string());
    spoken(&mut anew, &turned.spoken);
    let Over::Offer(bargain) = &anew.price.over else { panic!("{}", turned.spoken) };
    assert_eq!((bargain.paid, bargain.carried), (Some(Paid::Card), Some(Carried::Fetched)));
}

/// What stands there is not always what was written: then the piece, or the key alone.
#[test]
fn what_cannot_be_read_leaves_the_key() {
    for (piece, said) in [("", ""), ("x", "95.00 EUR 1"), ("x", "x 1 own own own 95.00 EUR")] {
        let mut app = App::for_tests(Place::Price);
        again(&mut app, piece);
        spoken(&mut app, said);
        assert_eq!((app.price.face, app.price.turned, &app.price.over), (None, true, &Over::Nothing));
    }
}

/// What was spoken of for one piece never stands behind another, nor on a page the maker went to meanwhile.
#[test]
fn inv15_a_sum_is_of_the_piece_it_was_spoken_of() {
    let (_, job, now) = maker();
    let other = Id::new(now.wall.at, [3; 10]);
    let behind = |said: String, left: bool| {
        let mut app = App::for_tests(Place::Price);
        again(&mut app, &job.to_string());
        if left {
            hide(&mut app);
            app.place = Place::Bench;
        }
        spoken(&mut app, &said);
        app.price.over != Over::Nothing
    };
    assert!(behind(format!("{job} 1 own own own 95.00 EUR"), false));
    assert!(!behind(format!("{job} 1 own own own 95.00 EUR"), true));
    for said in [
        format!("{other} 1 own own own 95.00 EUR"),
        "95.00 EUR 1".into(),
        format!("{job} 95.00"),
        format!("{job} 1 half 95.00 EUR"),
        format!("{job} 1 own own own 95.00"),
        String::new(),
    ] {
        assert!(!behind(said.clone(), false), "{said}");
    }
}

/// The store answers when it can: what was spoken of comes back behind the face, and never over what the maker looks at by then.
#[test]
fn what_was_spoken_of_comes_back_while_the_face_shows() {
    fn check(late: &str, stands: bool) {
        let (mut app, job, now) = maker();
        app.place = Place::Price;
        let spoken_of = format!("{job} 1 own own own 95.00 EUR");
        again(&mut app, &job.to_string());
        if late != "in time" {
            app.heard(Msg::Price(Tap::Hide), now);
        }
        if late == "after another step" {
            app.heard(Msg::Price(Tap::More(job)), now);
        }
        spoken(&mut app, &spoken_of);
        assert_eq!(matches!(&app.price.over, Over::Offer(bargain) if bargain.job == job), stands, "{late}: {:?}", app.price.over);
    }
    check("in time", true);
    check("after the hold", false);
    check("after another step", false);
}
