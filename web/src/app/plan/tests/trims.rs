//! Sticks that give one piece fewer because their ends are trimmed.

use super::rack_first::planned_out;
use super::told::says;
use super::*;

/// Five boards of 60 in, and strips of them.
fn strips(long: &str, n: u8) -> App {
    let story = tell(&format!(
        "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile long maple-sugar 1 x 5 1/4 x 60 in\ncount 5 long\n\
         good 5 long\njob tray \"Tray\" 1 spec\npart \"Strip\" {n} of 3/4 x 5 x {long} in for tray\n"
    ));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1))]);
    planned_out(&mut app, vec![Tap::Go]);
    app
}

/// The page without its marks: fractions as they are typed.
fn plain(app: &App) -> String {
    let shown = page(app).replace("</b><span>⁄</span><u>", "/").replace("<b>", " ");
    let mut text = String::new();
    let mut is_mark = false;
    for sign in shown.chars() {
        match sign {
            '<' => is_mark = true,
            '>' => is_mark = false,
            _ if !is_mark => text.push(sign),
            _ => (),
        }
    }
    text
}

/// By hand: 3 x 19 7/8 and two kerfs of 1/8 are 59 7/8; with 1/4 off each end 60 3/8.
#[test]
fn where_the_trims_alone_decide_they_are_named() {
    let words = "3 of strip, 19 7/8 in each, need 60 3/8 in with kerf and both ends trimmed, and A is 60 in: it gives 2.";
    let app = strips("19 7/8", 12);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 0);
    assert!(plain(&app).contains(words), "{}", plain(&app));
    says(&app, &["Off board ends, ", "The saw’s figures"], &[]);
    assert!(!plain(&strips("19 7/8", 10)).contains("both ends trimmed"), "all are made");
    let none = strips("19 15/16", 12); // with the kerfs alone they are 60 1/16
    assert!(!plain(&none).contains("both ends trimmed"), "{}", plain(&none));
}

#[test]
fn where_no_piece_can_be_made_the_saws_figures_are_a_tap_away() {
    let app = strips("19 7/8", 16);
    says(&app, &["Not one piece can be made.", "Reckoned with kerf ", "The saw’s figures"], &[]);
}
