//! Plans that make the same parts: the wood is not taken twice unasked, and plans that share nothing are no question to each other.

use super::later::planned;
use super::*;

const LEGS: &str = "part \"leg\" 4 of 25 x 40 x 300 mm oak-european for tray\npart \"rail\" 2 of 20 x 50 x 150 mm oak-european for tray\n";

fn solved(app: &mut App, shape: Shape, without: &[&str]) {
    let out = without.iter().map(|name| Tap::LeaveOut((*name).to_owned()));
    heard(app, [Tap::Choose, Tap::Shape(shape)].into_iter().chain(out).chain([Tap::Go]));
    let asked = app.plan.given.as_ref().unwrap_or_else(|| panic!("{:?}", app.plan.why_not)).ready.asked.clone();
    let mut goes_on = |_: fivebar_core::plan::patience::Progress<'_>| true;
    let answered = asked.solve(&mut fivebar_core::plan::patience::Patience::new(Some(2_000), &mut goes_on), 1);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))));
    heard(app, [Tap::Stop]);
}

fn shapes(app: &App) -> Vec<Shape> {
    in_use_by(app, app.jobs.open.unwrap()).into_iter().map(|(_, shape, _)| shape).collect()
}

/// A top and the legs share nothing. The legs again, from sticks, ask about the legs alone, whatever else is in use; the top stays.
#[test]
fn the_question_comes_where_two_plans_make_the_same_parts() {
    for (without, asks) in [(&["top", "rail"][..], true), (&["top", "leg"][..], false)] {
        let mut app = planned(LEGS);
        heard(&mut app, [Tap::Use]);
        solved(&mut app, Shape::Parts, &["top", "rail"]);
        assert!(page(&app).contains("Without top, rail: no whole piece is planned."), "{}", page(&app));
        assert!(!page(&app).contains("asks about"), "{}", page(&app));
        heard(&mut app, [Tap::Use]);
        assert_eq!((app.plan.asks, shapes(&app)), (false, vec![Shape::Rows, Shape::Parts]), "{}", page(&app));
        solved(&mut app, Shape::Sticks, without);
        assert_eq!(page(&app).contains("asks about"), asks, "{}", page(&app));
        heard(&mut app, [Tap::Use]);
        assert_eq!((app.plan.asks, page(&app).contains("Do they stay? What it has by other plans stays.")), (asks, asks), "{}", page(&app));
        if asks {
            heard(&mut app, [Tap::UseAnd(false)]);
            assert_eq!(shapes(&app), [Shape::Rows, Shape::Sticks]);
        } else {
            assert_eq!(shapes(&app), [Shape::Rows, Shape::Parts, Shape::Sticks]);
        }
    }
}

/// Legs by one plan, rails by another: both together ask about both.
#[test]
fn parts_of_several_plans_ask_about_them_all() {
    let mut app = planned(LEGS);
    solved(&mut app, Shape::Parts, &["top", "rail"]);
    heard(&mut app, [Tap::Use]);
    solved(&mut app, Shape::Sticks, &["top", "leg"]);
    heard(&mut app, [Tap::Use]);
    assert_eq!(shapes(&app), [Shape::Parts, Shape::Sticks], "{}", page(&app));
    solved(&mut app, Shape::Parts, &["top"]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(shapes(&app), [Shape::Parts], "{}", page(&app));
}

/// The top in rows is a part of the job by its size; and a part that got another name is the same one.
#[test]
fn what_two_plans_share_goes_by_what_they_make() {
    use fivebar_core::ledger::decide::JobCommand;
    use fivebar_core::ledger::kind::job::PartPlanned;
    use fivebar_core::sheet::make::keep::in_use;
    use fivebar_core::sheet::make::shared::in_place_of;
    use fivebar_core::sheet::make::{Top, What};
    let asks = |app: &App, what: What, without: &[&str]| {
        let shop = app.shelf().shop(app.now.at);
        let job = shop.job(app.jobs.open.unwrap()).unwrap();
        let without = without.iter().map(|name| (*name).to_owned()).collect();
        let ask = Ask { job: job.id, what, turned: vec![], bought: vec![], without, over: None };
        in_place_of(&job, &ask, &in_use(&shop, &job.plans), |_| false).len()
    };
    let mut app = planned(LEGS);
    heard(&mut app, [Tap::Use]);
    let top = Top { length: Length::MM.times(700).unwrap(), ..Top::default() };
    let kinds = [(What::Parts(None), &[][..], 1), (What::Parts(None), &["top"], 0), (What::Top(top), &[], 1)];
    for (what, without, n) in kinds.into_iter().chain([(What::Field(Default::default()), &[][..], 0)]) {
        assert_eq!(asks(&app, what.clone(), without), n, "{what:?} {without:?}");
    }
    app = opened(LEGS);
    heard(&mut app, [Tap::Open]);
    solved(&mut app, Shape::Parts, &["top", "rail"]);
    heard(&mut app, [Tap::Use]);
    let renamed = |name: &str, n: u32| {
        let mm = |n: i64| Length::MM.times(n).unwrap();
        let wood = fivebar_core::quantity::Key::read("oak-european");
        PartPlanned { job: app.jobs.open.unwrap(), name: name.into(), n, length: mm(300), width: mm(40), thickness: mm(25), wood }
    };
    let [gone, new] = [renamed("leg", 0), renamed("post", 4)];
    for part in [gone, new] {
        super::later::order(&mut app, Command::Job(JobCommand::PlanPart(part)));
    }
    assert_eq!([asks(&app, What::Sticks(None), &["top", "rail"]), asks(&app, What::Sticks(None), &["top", "post"])], [1, 0]);
}

/// Legs and rails by one plan, the legs again by another: the question names what both make, and what has no wood once all boards of the
/// first are back. Where they stay, the legs are planned once: four of 300 x 40 x 25 are 1.2 litres, two rails of 150 x 50 x 20 0.3.
#[test]
fn the_question_names_what_both_make_and_it_is_planned_once() {
    let finished = |app: &App, others: &str| {
        let shop = app.shelf().shop(app.now.at);
        let job = shop.job(app.jobs.open.unwrap()).unwrap();
        let pieces = fivebar_core::sheet::make::sources(&shop, job.id).unwrap().iter().filter(|it| it.in_job).map(|it| it.n).sum();
        let planned = fivebar_core::sheet::make::planned::planned(&shop, &job, pieces).unwrap_or_else(|| panic!("{others}"));
        planned.finished.litres().normalize().to_string()
    };
    let check = |first: &[&str], second: &[&str], words: &[&str], litres: [&str; 2]| {
        let mut app = planned(LEGS);
        solved(&mut app, Shape::Parts, first);
        heard(&mut app, [Tap::Use]);
        assert_eq!(finished(&app, "the first"), litres[0]);
        solved(&mut app, Shape::Sticks, second);
        heard(&mut app, [Tap::Use]);
        words.iter().for_each(|words| assert!(page(&app).contains(words), "{words}: {}", page(&app)));
        heard(&mut app, [Tap::UseAnd(true)]);
        assert_eq!(finished(&app, "both"), litres[1], "{first:?} {second:?}");
    };
    check(&["top"], &["top", "rail"], &["Both make leg. Put back, all of them go: rail has no wood then."], ["1.5", "1.5"]);
    check(&["top"], &["top"], &["Both make leg and rail.</p>"], ["1.5", "1.5"]);
    check(&["top", "rail"], &["top"], &["Both make leg.</p>"], ["1.2", "1.5"]);
}

/// A top that is planned twice is one; of a job of two it is two.
#[test]
fn the_question_names_the_top() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    super::later::again(&mut app);
    heard(&mut app, [Tap::Use]);
    assert!(page(&app).contains("Both make the top."), "{}", page(&app));
}
