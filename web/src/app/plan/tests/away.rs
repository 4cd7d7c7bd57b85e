//! Pieces of a haul that is on its way lie on no rack yet: the choice of piles says so, and the plan.

use super::told::{says, solved};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;

/// A haul that is at the bin, and the same at home.
fn hauled(end: &str) -> App {
    let today = "2026-03-03 08:00 -05:00 leave for today\n08:30 at the bin\npile fresh oak-european 30 x 65 x 500 mm\ncount 12 fresh\n";
    let job = "job tray \"Tray\" 1 spec\npart \"slat\" 2 of 20 x 50 x 450 mm oak-european for tray\n";
    app_of(&format!("2026-03-03 07:00 -05:00 workshop USD metric\n{today}{end}{job}"))
}

#[test]
fn pieces_of_a_haul_on_its_way_are_not_on_the_rack() {
    for (end, away) in [("", true), ("08:50 home\n", false)] {
        let mut app = hauled(end);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Piles]);
        let (place, other) = if away { ("not home yet, used", "on the rack") } else { ("on the rack, used", "not home yet") };
        says(&app, &[place], &[other]);
        heard(&mut app, [Tap::Change, Tap::Go]);
        solved(&mut app);
        let (said, not): (&[&str], &[&str]) = if away { (&["A: fresh, not home yet<"], &[]) } else { (&["A: fresh<"], &["not home yet"]) };
        says(&app, said, not);
        heard(&mut app, [Tap::Use]);
        let mut again = super::reloaded(&app);
        heard(&mut again, [Tap::Open]);
        says(&again, said, not);
        heard(&mut app, [Tap::Piles]);
        says(&app, &[if away { "10 not home yet, 2 of the plan before, used" } else { "10 on the rack, 2 of the plan before, used" }], &[]);
        // What the job has by no plan.
        let at = app.plan.given.as_ref().unwrap().sources[0].which().0;
        heard(&mut app, [Tap::NotNow, Tap::Drop, Tap::DropAnd(true), Tap::Open, Tap::Piles]);
        let (Lying { haul, pile }, job) = (at, app.jobs.open.unwrap());
        super::later::order(&mut app, Command::Haul(HaulCommand::Take { haul, pile, job, n: 1 }));
        says(&app, &[if away { "in this job, not home yet, " } else { "in this job, left out" }], &[]);
    }
}
