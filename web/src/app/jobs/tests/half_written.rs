//! A form that is half written is not lost by opening one of its kind elsewhere.

use super::*;

const TWO: &str = "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\njob bench \"Bench\" 1 order\n";

fn from_price(maker: &mut Maker, job: Id) {
    maker.say(Msg::Go(Place::Price));
    maker.say(Msg::Price(crate::app::price::Tap::Spend(job)));
}

/// 37.50 for finish of one job, asked where it belongs, and left by a tab: from Price it is taken up again; the form of another job is its own.
#[test]
fn a_spending_is_taken_up_where_it_was_left() {
    let mut maker = Maker::told(&[TWO]);
    let [more, bench] = ["more", "bench"].map(|name| maker.jobs[name]);
    let is_there = |maker: &Maker| maker.app.jobs.draft.as_ref().is_some_and(|draft| draft.form.text(0) == "37.50");
    maker.room("more", Room::Hours).tap(Tap::Write(What::Spend));
    maker.pick(Pick::Spending(Key::read("finish").unwrap())).figures(&["37.50"]).tap(Tap::Save);
    assert!(is_there(&maker), "it is asked where it belongs");
    from_price(&mut maker, more);
    assert!(is_there(&maker), "the same form again");
    from_price(&mut maker, bench);
    assert!(!is_there(&maker) && maker.app.jobs.draft.is_some(), "of the other job nothing is written");
    maker.figures(&["12"]);
    from_price(&mut maker, more);
    assert!(is_there(&maker), "it lay aside meanwhile");
    // Not now says so: it is gone, and an empty form begins.
    maker.tap(Tap::Close).tap(Tap::Write(What::Spend));
    assert!(!is_there(&maker));
    from_price(&mut maker, bench);
    maker.shows(&[">12<"]);
}

/// What was saved is not written twice, and what lay aside is saved as it was.
#[test]
fn what_lay_aside_is_saved_once() {
    let mut maker = Maker::told(&[TWO]);
    let [more, bench] = ["more", "bench"].map(|name| maker.jobs[name]);
    maker.room("more", Room::Hours).tap(Tap::Write(What::Spend)).spending(Key::read("finish").unwrap()).figures(&["37.50"]);
    from_price(&mut maker, bench);
    from_price(&mut maker, more);
    maker.tap(Tap::Save);
    assert_eq!(maker.sheet().money.costs.map(|sum| sum.amount().to_string()), Some("37.5".into()));
    from_price(&mut maker, more);
    assert_eq!(maker.app.jobs.draft.as_ref().map(|draft| draft.form.text(0).to_owned()), Some(String::new()));
}
