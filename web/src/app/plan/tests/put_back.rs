//! Boards of plans are put back by hand, on the page of the job's wood: what is cut goes only after it was asked, and so does a plan.

use super::last_act::two_plans;
use super::later::{planned, strips_of};
use super::*;
use crate::app::jobs::draft::What;

/// So many strips are put back, tap by tap.
fn back(app: &mut App, n: u8) -> String {
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    for tap in [Jobs::Room(Room::Wood), Jobs::Write(What::Take { haul, pile }), Jobs::Press(Press::Digit(n)), Jobs::Undo] {
        jobs(app, tap);
    }
    page(app)
}

fn jobs(app: &mut App, tap: Jobs) {
    let now = Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
    app.heard(Msg::Jobs(tap), now);
}

/// What is asked where so many of the job's strips are put back; none where they go at once.
#[track_caller]
fn check(mut app: App, n: u8, asked: &[&str]) {
    let (before, shown) = (strips_of(&app), back(&mut app, n));
    for words in asked {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    let n = u32::from(n);
    let after = (before.0 + n, before.1 - n);
    assert_eq!(strips_of(&app), if asked.is_empty() { after } else { before });
    if !asked.is_empty() {
        // Another figure is asked about anew; the same is taken as it was asked.
        jobs(&mut app, Jobs::Undo);
        assert_eq!(strips_of(&app), after);
    }
}

/// The first line of the plan of four is of two whole ones.
fn cut() -> App {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    app
}

#[test]
fn what_is_cut_and_a_plan_go_back_only_after_it_was_asked() {
    let all = "A top in rows, used Mon 2 March 09:00: the job keeps no board of this plan, and it is in use no more.";
    let ticked = "2 of the 4 here are not cut, by what is ticked at the saw; more would lie on the rack as whole ones.";
    check(cut(), 2, &[]);
    check(cut(), 3, &[ticked, "Put 3 back all the same"]);
    check(cut(), 4, &[ticked, all, "Put 4 back all the same"]);
    let one = || {
        let mut app = planned("");
        heard(&mut app, [Tap::Use]);
        app
    };
    check(one(), 3, &[]);
    check(one(), 4, &[all]);
    // Of two plans of four each the second has a line of two ticked, and the first loses its boards first.
    check(two_plans(), 3, &[]);
    check(two_plans(), 4, &[all]);
    check(two_plans(), 7, &["6 of the 8 here are not cut", all]);
}

/// What was asked about is another figure's no more.
#[test]
fn another_figure_is_asked_about_anew() {
    let mut app = cut();
    back(&mut app, 3);
    let before = strips_of(&app);
    for press in [Press::RubOut, Press::Digit(4)] {
        jobs(&mut app, Jobs::Press(press));
    }
    assert!(!page(&app).contains("all the same"), "{}", page(&app));
    jobs(&mut app, Jobs::Undo);
    assert_eq!(strips_of(&app), before);
    assert!(page(&app).contains("Put 4 back all the same"), "{}", page(&app));
}
