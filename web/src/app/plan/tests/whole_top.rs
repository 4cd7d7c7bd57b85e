//! The form of a top of which rows are cut: what was typed for all of it stands there, whatever is planned beside what is cut.

use super::rack_first::planned_out;
use super::told::{says, typed};
use super::top_first::rack;
use super::*;

/// What the form shows: long, wide, rows.
fn form(app: &App) -> [String; 3] {
    std::array::from_fn(|nth| app.plan.draft.form.text(nth).to_owned())
}

/// Eight rows of 2400 by 650, of which three are cut. "Change rows" shows these figures, and no others: of the plan of the other five, when that is
/// used, after a reload, and when the piles were looked at meanwhile. Planned with them it is the other five again.
#[test]
fn the_form_shows_the_whole_top_when_the_others_are_planned() {
    let whole = ["2400", "650", "8"];
    let mut app = rack(30);
    typed(&mut app, &whole);
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, std::iter::once(Tap::Use).chain((0..3).map(Tap::TickRow)));
    planned_out(&mut app, vec![Tap::Go]);
    for used in [false, true] {
        heard(&mut app, if used { vec![Tap::Use, Tap::UseAnd(false)] } else { vec![] });
        let mut again = super::reloaded(&app);
        heard(&mut again, [Tap::Open]);
        for app in [&mut again, &mut app] {
            heard(app, [Tap::Change]);
            assert_eq!(form(app), whole, "{used}");
            heard(app, [Tap::Piles, Tap::Change]);
            assert_eq!(form(app), whole, "{used}");
            planned_out(app, vec![Tap::Go]);
            says(app, &["2400 × 650 mm, 5 of 8 rows", "3 of the 8 rows are cut already"], &[]);
            assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 5);
        }
    }
    // What is typed over stands as it is typed.
    heard(&mut app, [Tap::Change]);
    typed(&mut app, &["", "400", "5"]);
    heard(&mut app, [Tap::Piles, Tap::Change]);
    assert_eq!(form(&app), ["2400", "400", "5"]);
}

/// What else is said of the other rows, such as joints nearer, stays with the figures of all of it.
#[test]
fn what_is_asked_of_the_other_rows_stays_with_the_whole_figures() {
    let mut app = rack(30);
    typed(&mut app, &["2400", "650", "8"]);
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, std::iter::once(Tap::Use).chain((0..3).map(Tap::TickRow)));
    planned_out(&mut app, vec![Tap::Go]);
    planned_out(&mut app, vec![Tap::JointsApart(Length::MM.times(20).unwrap())]);
    heard(&mut app, [Tap::Change]);
    assert_eq!(form(&app), ["2400", "650", "8"]);
    assert_eq!(app.plan.draft.form.text(3), "20");
}
