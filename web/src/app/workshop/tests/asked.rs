//! Figures asked one after the other, and the day a cost is of.

use super::*;
use crate::app::jobs::draft::Pick;

/// A blank that is filled leads to the next one; a figure that was said before leads back to its page.
#[test]
fn blanks_of_the_rate_are_asked_one_after_the_other() {
    let mut app = App::for_tests(Place::Workshop);
    let asked = after(&mut app, [tap(Tap::Open(Over::Rate)), tap(Tap::Figure(Figure::Pay))]);
    assert!(asked.contains("7 more blanks after it. Not now leaves them."), "{asked}");
    let two = [Press::Digit(2), Press::Digit(0)].map(|press| tap(Tap::Press(press)));
    let hours = after(&mut app, two.clone().into_iter().chain([tap(Tap::PadDone)]));
    assert!(matches!(app.workshop.over, Over::Figure(Figure::Hours, ..)) && hours.contains("6 more blanks"), "{hours}");
    after(&mut app, two.clone().into_iter().chain([tap(Tap::PadDone)]));
    assert!(matches!(app.workshop.over, Over::Figure(Figure::Logged, ..)));
    after(&mut app, [tap(Tap::Close), tap(Tap::Figure(Figure::Pay))]);
    let back = after(&mut app, two.into_iter().chain([tap(Tap::PadDone)]));
    assert!(matches!(app.workshop.over, Over::Rate), "{back}");
}

/// A receipt of last year is written down today: it is of last year, is seen there, and can be struck there.
#[test]
fn a_cost_is_of_the_day_that_is_said() {
    let mut app = App::for_tests(Place::Workshop);
    let day = |tap| Msg::Jobs(Jobs::Pick(Pick::SpentOn(tap)));
    let open = [tap(Tap::Open(Over::Costs)), tap(Tap::Spend("edges"))];
    let back = std::iter::once(day(SpentTap::Ask)).chain(std::iter::repeat_n(day(SpentTap::By(-7)), 53));
    let asked = after(&mut app, open.into_iter().chain(back));
    assert!(asked.contains("a cost is of the year it was spent in") && !asked.contains("aria-label=\"7\""), "{asked}");
    let shown = after(&mut app, std::iter::once(day(SpentTap::Ask)).chain(form(&["9"])).chain([Msg::Jobs(Jobs::Save)]));
    let year = app.now.day().as_ymd().0 - 1;
    assert!(shown.contains("Nothing this year yet.") && shown.contains(&year.to_string()) && shown.contains("$9.00"), "{shown}");
    let line = app.own.book.entries().next().unwrap().0.id;
    assert!(!after(&mut app, [tap(Tap::Line(line)), tap(Tap::Strike(line))]).contains("$9.00"));
    // Not after today, and the next cost is of today again.
    let later = [tap(Tap::Spend("rent")), day(SpentTap::Ask), day(SpentTap::By(7)), day(SpentTap::Ask)];
    assert!(after(&mut app, later).contains("today"));
}
