//! What a plan is later: sizes put right, the saw set, wood taken once and put back, another phone's book.

use super::*;
use fivebar_core::ledger::decide::{HaulCommand, JobCommand, Lying, PileFacts};
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::ledger::kind::plan::SawSet;
use fivebar_core::quantity::Length;

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

pub(super) fn planned(lines: &str) -> App {
    let mut app = opened(lines);
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    app
}

pub(super) fn order(app: &mut App, command: Command) {
    let nth = u8::try_from(app.own.book.len()).unwrap();
    app.order(&command, Now { wall: app.now, chance: [nth.wrapping_add(100); 10] }).unwrap();
}

fn strips(app: &App) -> Lying {
    app.plan.given.as_ref().unwrap().sources[0].which().0
}

fn put_right(app: &mut App, facts: PileFacts) {
    let Lying { haul, pile } = strips(app);
    order(app, Command::Haul(HaulCommand::DescribePile { haul, pile, facts }));
}

/// On the rack and in the job.
pub(super) fn strips_of(app: &App) -> (u32, u32) {
    let shop = app.shelf().shop(app.now.at);
    let pile = fivebar_core::sheet::rack::rack(&shop, app.jobs.open.unwrap()).unwrap().remove(0);
    (pile.on_rack, pile.in_job)
}

pub(super) fn take_back(app: &mut App) {
    app.heard(Msg::Common(Common::TakeBack), Now { wall: app.now, chance: [201; 10] });
}

pub(super) fn put_back(app: &mut App) {
    let now = Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
    app.heard(Msg::Common(Common::PutBack), now);
}

pub(super) fn again(app: &mut App) {
    heard(app, [Tap::Go]);
    let told = answer(app);
    app.told(crate::app::news::News::Planning(told));
}

/// Used or not, here or after a reload: the page says what has changed, and its cuts are those it was made for.
#[test]
fn what_has_changed_since_is_said_by_name() {
    let shorter = PileFacts { length: Some(mm(496)), ..Default::default() };
    for used in [false, true] {
        let mut app = planned("");
        heard(&mut app, if used { vec![Tap::Use, Tap::Tick(0)] } else { vec![Tap::Tick(0)] });
        let waste = |page: &str| page.split("Waste").nth(1).map(|rest| rest.split('<').next().unwrap_or_default().to_owned());
        let before = waste(&page(&app));
        put_right(&mut app, shorter.clone());
        let mut reload = reloaded(&app);
        heard(&mut reload, [Tap::Open]);
        for shown in [page(&app), page(&reload)] {
            assert!(shown.contains("The size of A has changed since: plan again."), "{used} {shown}");
            assert!(shown.contains("2 whole, ends trimmed to 495") && shown.contains("tick done"), "{used} {shown}");
            assert!(before.is_some() && waste(&shown) == before, "{used}");
            assert!(!shown.contains("Use these") && shown.contains("Plan again"), "{used}");
        }
    }
}

/// The pages of the job say so too, with the way to the saw, and the list there that it is of before; until the size is right again.
#[test]
fn a_pile_of_a_plan_in_use_that_changed_is_said_where_the_saw_is() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let said = "A has another size or wood now than the plan was made for: plan again.";
    let jobs = |app: &App| {
        let mut app = reloaded(app);
        let job = page(&app);
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [205; 10] });
        [job, page(&app)]
    };
    for (length, says) in [(500, false), (440, true), (500, false)] {
        put_right(&mut app, PileFacts { length: Some(mm(length)), ..Default::default() });
        let list = page(&app);
        assert_eq!(list.contains("This list is of before that changed."), says, "{length} {list}");
        assert!(jobs(&app).iter().all(|shown| shown.contains(said) == says), "{length}");
    }
    put_right(&mut app, PileFacts { wood: fivebar_core::quantity::Key::read("beech-european"), ..Default::default() });
    assert!(page(&app).contains("The wood of A has changed since: plan again."), "{}", page(&app));
    assert!(jobs(&app).iter().all(|shown| shown.contains(said)));
}

/// Planned again and both kept: it is said of the older plan alone, which is a tap away.
#[test]
fn the_plan_that_a_pile_changed_under_is_named() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let first = app.plan.used.unwrap();
    put_right(&mut app, PileFacts { length: Some(mm(504)), ..Default::default() });
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(7)), app.now.offset);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    for room in [None, Some(Room::Wood)] {
        app.jobs.room = room;
        let shown = page(&app);
        assert_eq!(shown.matches("than the plan was made for").count(), 1, "{shown}");
        let named = |at: &str| shown.contains(&format!("<span>A top in rows</span><span class=\"s\">used Mon 2 March {at}"));
        assert_eq!([named("09:00"), named("09:07")], [true, false], "{shown}");
        heard(&mut app, [Tap::Kept(first)]);
        assert!(page(&app).contains("The size of A has changed since: plan again."), "{}", page(&app));
        assert_eq!(app.plan.used, Some(first));
    }
}

/// A pile that was left out, and is put right, is not said to be left out for what it was.
#[test]
fn what_was_left_out_and_changed_since_is_not_said_to_be_as_it_was() {
    let mut app = planned("");
    assert!(page(&app).contains("Left out: thin, too thin"), "{}", page(&app));
    let thin = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let Lying { haul, pile } = thin.iter().find(|it| it.pile.name.as_deref() == Some("thin")).unwrap().which().0;
    let facts = PileFacts { thickness: Some(mm(30)), ..Default::default() };
    order(&mut app, Command::Haul(HaulCommand::DescribePile { haul, pile, facts }));
    let shown = page(&app);
    assert!(shown.contains("Thin was left out as it was then, and has changed since: plan again."), "{shown}");
    assert!(!shown.contains("too thin") && shown.contains("Use these 4"), "{shown}");
}

/// More or fewer of a pile, and still enough: the plan can be used, and its figures are of then. What it took itself is no such change.
#[test]
fn a_count_that_changed_is_said_of_a_plan_that_is_not_used() {
    let said = "The count of A has changed since: the figures are of then. Plan again to count with it.";
    let says = |app: &App, changed: bool| {
        let shown = page(app);
        assert_eq!(shown.contains(said), changed, "{shown}");
    };
    for more in [false, true] {
        let mut app = planned("job other \"Other\" 1 spec\n");
        says(&app, false);
        let (Lying { haul, pile }, other) = (strips(&app), app.shelf().book.entries().last().unwrap().0.id);
        let changes = if more {
            HaulCommand::Count { haul, pile, n: 3, way: Way::Bundle }
        } else {
            HaulCommand::Take { haul, pile, job: other, n: 2 }
        };
        order(&mut app, Command::Haul(changes));
        let mut again_here = reloaded(&app);
        heard(&mut again_here, [Tap::Open]);
        for app in [&mut again_here, &mut app] {
            says(app, true);
            assert!(page(app).contains("Use these 4"), "{}", page(app));
        }
        again(&mut app);
        says(&app, false);
        heard(&mut app, [Tap::Use]);
        says(&app, false);
        take_back(&mut app);
        says(&app, false);
    }
}

#[test]
fn a_plan_of_other_saw_figures_is_not_offered() {
    let mut app = planned("");
    let saw = |kerf: i64| {
        let mut lengths = [None; 13];
        lengths[0] = Some(mm(kerf));
        Command::Plan(PlanCommand::SetSaw(SawSet::of(lengths, None)))
    };
    order(&mut app, saw(5));
    let shown = page(&app);
    assert!(shown.contains("Kerf has changed at the saw since: plan again."), "{shown}");
    assert!(!shown.contains("Use these") && !shown.contains("best possible"), "{shown}");
    order(&mut app, saw(3));
    assert!(page(&app).contains("Use these 4") && !page(&app).contains("changed"), "{}", page(&app));
}

/// Planned again and used: the wood is taken once, and taking that back leaves the plan before.
#[test]
fn a_plan_used_again_takes_its_wood_once() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    assert_eq!(strips_of(&app), (8, 4));
    again(&mut app);
    assert!(page(&app).contains("takes 4 pieces, asks about 4 of the plan before"), "{}", page(&app));
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(strips_of(&app), (8, 4));
    assert!(page(&app).contains("The job has this wood"));
    take_back(&mut app);
    assert_eq!(strips_of(&app), (8, 4));
    app.plan = Plan::default();
    heard(&mut app, [Tap::Open]);
    assert!(page(&app).contains("The job has this wood"), "{}", page(&app));
    app.heard(Msg::Common(Common::PutBack), Now { wall: app.now, chance: [202; 10] });
    assert_eq!(strips_of(&app), (8, 4));
}

/// Most of the pile is in the job by the plan before: what goes back is there to plan with.
#[test]
fn the_wood_of_the_plan_before_is_planned_with_again() {
    let mut app = planned("job other \"Other\" 1 spec\nreserve 8 strips for other\n");
    heard(&mut app, [Tap::Use]);
    assert_eq!(strips_of(&app), (8, 4));
    again(&mut app);
    assert_eq!(app.plan.given.as_ref().map(|given| given.sources[0].n), Some(4));
    assert!(page(&app).contains("Use these 4") && !page(&app).contains("changed"), "{}", page(&app));
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(strips_of(&app), (8, 4));
}

/// Where lines are ticked it is asked once whether that wood is cut; the two boards that are stay in the job.
#[test]
fn wood_that_may_be_cut_is_asked_about_once() {
    for (cut, then) in [(true, (4, 8)), (false, (6, 6))] {
        let mut app = planned("");
        heard(&mut app, [Tap::Use, Tap::Tick(0)]);
        again(&mut app);
        heard(&mut app, [Tap::Use]);
        assert_eq!(strips_of(&app), (8, 4), "nothing is written yet");
        assert!(page(&app).contains("The job has 4 pieces by the plan before. Do they stay?"), "{}", page(&app));
        heard(&mut app, [Tap::UseAnd(cut)]);
        assert_eq!(strips_of(&app), then);
        assert!(page(&app).contains("The job has this wood"), "{}", page(&app));
        take_back(&mut app);
        assert_eq!(strips_of(&app), (8, 4));
    }
}

#[test]
fn wood_that_went_back_is_not_the_jobs() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let (Lying { haul, pile }, job) = (strips(&app), app.jobs.open.unwrap());
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 4 }));
    for gone in [false, true] {
        let mut app = reloaded(&app);
        if gone {
            app.here.plans = String::new();
        }
        heard(&mut app, [Tap::Open]);
        let shown = page(&app);
        assert!(!shown.contains("The job has this wood") && shown.contains("Use these 4"), "{shown}");
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [203; 10] });
        assert!(!page(&app).contains("the plan it was cut by"), "{}", page(&app));
        assert!(crate::app::plan::cuts_left(&app).is_empty());
    }
}

#[test]
fn the_act_of_another_job_is_named() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    assert!(page(&app).contains("a plan, "), "{}", page(&app));
    let (currency, units) = app.begins_with();
    let (name, made_for) = ("Board".to_owned(), fivebar_core::ledger::kind::job::For::Spec);
    order(&mut app, Command::Job(JobCommand::Begin { name, currency, units, pieces: 1, made_for }));
    assert!(page(&app).contains("new job, Board, "), "{}", page(&app));
}

/// After a reload the list of jobs leads straight to the saw; it says how much is left there.
#[test]
fn the_saw_is_one_tap_from_the_list() {
    let mut app = planned("");
    let (job, lines) = (app.jobs.open.unwrap(), app.plan.found.as_ref().unwrap().sheet.lines.len());
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    let left = format!("{} of {lines} lines left to cut", lines - 1);
    let mut app = reloaded(&app);
    app.jobs.open = None;
    let shown = page(&app);
    assert!(shown.contains(&format!("Tray: {left}")) && !shown.contains("Nothing planned is left"), "{shown}");
    app.jobs.open = Some(job);
    assert!(page(&app).contains(&left) && !page(&app).contains("Nothing planned is left"), "{}", page(&app));
    app.jobs.open = None;
    heard(&mut app, [Tap::Saw(job)]);
    assert!(page(&app).contains("At the saw") && page(&app).contains("tick done"), "{}", page(&app));
    heard(&mut app, (1..lines).map(Tap::Tick));
    app.jobs.open = None;
    assert!(!page(&app).contains("left to cut"));
}

/// Piles that give nothing say why; a part that nothing fits is left out by a tap, and taken in again.
#[test]
fn what_is_left_out_says_why() {
    let app = planned("");
    assert!(page(&app).contains("Left out: thin, too thin."), "{}", page(&app));
    let mut app = opened("part \"leg\" 4 of 25 x 50 x 300 mm oak-european for tray\n");
    let orders = heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Go]);
    let shown = page(&app);
    assert!(shown.contains("fit this part: top") && shown.contains("Leave out top"), "{shown}");
    for why in ["Top from thin: too thin.", "Top from strips: too narrow."] {
        assert!(shown.contains(why), "{why}: {shown}");
    }
    assert!(!orders.iter().any(|order| matches!(order, Order::Plan { .. })));
    let orders = heard(&mut app, [Tap::LeaveOut("top".into())]);
    assert!(orders.iter().any(|order| matches!(order, Order::Plan { .. })), "{}", page(&app));
    heard(&mut app, [Tap::Change]);
    assert!(page(&app).contains("Take in top again"));
    heard(&mut app, [Tap::LeaveOut("top".into()), Tap::Go]);
    assert!(page(&app).contains("fit this part: top"));
}

/// What stood in the way is not said when it is so no longer.
#[test]
fn a_reason_that_is_gone_is_not_said() {
    let mut app = opened("take 12 strips for tray\ntake 5 thin for tray\n");
    let Lying { haul, pile } = {
        let shop = app.shelf().shop(app.now.at);
        fivebar_core::sheet::make::sources(&shop, app.jobs.open.unwrap()).unwrap()[0].which().0
    };
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Go]);
    assert!(page(&app).contains("None of the pieces fits"), "{}", page(&app));
    let job = app.jobs.open.unwrap();
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 12 }));
    app.notice = None;
    assert!(!page(&app).contains("None of the pieces fits"), "{}", page(&app));
}

/// On the rack is all that lies there, also of a pile that gave wood; and no size is missing where no wood was taken.
#[test]
fn the_rack_of_a_job_lists_what_is_left_there() {
    let mut app = opened("");
    let room = |app: &mut App| {
        app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [204; 10] });
        page(app)
    };
    assert!(!room(&mut app).contains("a size is missing"), "{}", page(&app));
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let shown = room(&mut app);
    let rack = shown.split("On the rack").nth(1).unwrap();
    assert_eq!(rack.matches("class=\"pile\"").count(), 2, "{rack}");
}

#[test]
fn a_pile_is_one_tap_from_the_plan() {
    let mut app = planned("");
    let lying = strips(&app);
    assert!(page(&app).contains("its size and its count"));
    heard(&mut app, [Tap::Pile(lying)]);
    assert!(page(&app).contains("workshop/rack-pile"), "{}", page(&app));
    app.heard(Msg::Go(Place::Jobs), Now { wall: app.now, chance: [205; 10] });
    assert!(page(&app).contains("jobs/plan-answer"), "{}", page(&app));
}

/// What another phone says no plan can pass is its word alone: the plan is shown, and no proof of it.
#[test]
fn a_proof_of_another_phone_is_not_repeated() {
    let mut app = planned("");
    assert!(page(&app).contains("best of these rows"));
    heard(&mut app, [Tap::Use]);
    let mut other = reloaded(&app);
    other.own = Shelf::of(Device::new([2; 8]), app.own.book.clone(), Sorted::new());
    other.here.plans = String::new();
    heard(&mut other, [Tap::Open]);
    let found = other.plan.found.as_ref().unwrap();
    assert!(!found.sheet.proof.best && found.answered.bound.is_empty());
    assert!(page(&other).contains("2 rows.") && !page(&other).contains("best of these rows"), "{}", page(&other));
}

/// Nor is a first figure of it that nothing here bounds, once the wood lies on the rack again.
#[test]
fn a_plan_of_another_phone_that_is_not_used_has_no_proof_at_all() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let (Lying { haul, pile }, job) = (strips(&app), app.jobs.open.unwrap());
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 4 }));
    let mut other = reloaded(&app);
    other.own = Shelf::of(Device::new([2; 8]), app.own.book.clone(), Sorted::new());
    other.here.plans = String::new();
    heard(&mut other, [Tap::Open]);
    let shown = page(&other);
    assert!(shown.contains("Use these 4") && shown.contains("best so far"), "{shown}");
    assert!(!shown.contains("most rows") && !shown.contains("fewest"), "{shown}");
}
