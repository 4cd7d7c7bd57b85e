//! A plan in use and the wood on the rack: boards put back in part, the tick that was made last, what is cut off only at the saw, and each
//! of the ways to make something from use to the last tick.

use super::later::{again, order, planned, strips_of, take_back};
use super::told::{at_rack, says, solved, typed, unlocked};
use super::*;
use crate::app::news::News;
use fivebar_core::ledger::decide::{HaulCommand, Lying, PileFacts};
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::unlock::{Locked, Tries};
use fivebar_core::quantity::Length;
use fivebar_core::sheet::plan::locked;

fn source(app: &App) -> Lying {
    app.plan.given.as_ref().unwrap().sources[0].which().0
}

fn room(app: &App, room: Room) -> App {
    let mut app = reloaded(app);
    app.heard(Msg::Jobs(Jobs::Room(room)), Now { wall: app.now, chance: [203; 10] });
    app
}

/// Two plans of four strips each are in use; all pages say together what is put back of them, with a key that takes it again.
#[test]
fn what_is_put_back_of_plans_is_said_and_taken_again() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    says(&room(&app, Room::Wood), &["Planned of taken"], &["boards its plans need"]);
    let (Lying { haul, pile }, job) = (source(&app), app.jobs.open.unwrap());
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 3 }));
    let said = "The job has 5 of the 8 boards its plans need; 3 of strips are back on the rack.";
    says(&app, &[said, "Take them again", "Its other plans"], &["The job has this wood"]);
    let mut reload = reloaded(&app);
    says(&reload, &[said, "Take them again"], &[]);
    heard(&mut reload, [Tap::Saw(job)]);
    says(&reload, &[said, "At the saw"], &["Use these", "The job has this wood"]);
    says(&room(&app, Room::Wood), &[said, "Planned<", "Planned of taken and missing", "the plan it was cut by"], &[]);
    says(&room(&app, Room::Wood), &["Fetched, without the good wood left over, with what is missing"], &[]);
    heard(&mut reload, [Tap::TakeAgain]);
    says(&reload, &["The job has this wood"], &["Take them again", "boards its plans need"]);
    assert_eq!(strips_of(&reload), (4, 8));
    // Planned again while boards are back, the first figures stay and the lines of all plans are counted.
    again(&mut app);
    says(&app, &[said, "takes 4 pieces, asks about 4 of the plan before"], &[]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    says(&app, &["The job has 9 of the 12 boards its plans need"], &[]);
    says(&room(&app, Room::Wood), &["Planned<", "Planned of taken and missing"], &[]);
}

/// By hand: the first plan has seven lines and two are ticked, the second has seven: twelve of fourteen.
#[test]
fn the_lines_left_are_those_of_all_plans() {
    let mut app = planned("");
    let (job, lines) = (app.jobs.open.unwrap(), app.plan.found.as_ref().unwrap().sheet.lines.len());
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    let left = format!("{} of {} lines left to cut", 2 * lines - 1, 2 * lines);
    let mut app = reloaded(&app);
    says(&app, &[&left], &[]);
    app.jobs.open = None;
    says(&app, &[&left], &[]);
    heard(&mut app, [Tap::Saw(job)]);
    says(&app, &["At the saw", "Its other plans"], &[]);
}

/// A tick that was made last is what goes back; the plan's own act is next.
#[test]
fn take_back_after_a_tick_takes_the_tick() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    says(&app, &["Take back", "tick of 2 whole, ends trimmed to 495", "tick done"], &["a plan, "]);
    take_back(&mut app);
    says(&app, &["Do it again", "taken back: tick of 2 whole", "The job has this wood"], &["tick done", "Put it back"]);
    app.heard(Msg::Common(Common::PutBack), Now { wall: app.now, chance: [202; 10] });
    says(&app, &["Take back", "tick of 2 whole", "tick done"], &[]);
    heard(&mut app, [Tap::Tick(0)]);
    says(&app, &["tick taken off 2 whole"], &["tick done"]);
    // What is written after it is what goes back then.
    let (Lying { haul, pile }, job) = (source(&app), app.jobs.open.unwrap());
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 1 }));
    let lacks = "The job has 3 of the 4 boards its plan needs; 1 of strips is back on the rack.";
    says(&app, &["Take back", lacks, "Take it again"], &["tick taken off"]);
    take_back(&mut app);
    says(&app, &["The job has this wood", "Do it again"], &[]);
    // Nor does a tick that is long made stand before the plan.
    let mut reload = reloaded(&app);
    heard(&mut reload, [Tap::Open]);
    says(&reload, &["The job has this wood"], &["tick of"]);
}

/// Each time boards would go back it is asked, also the second time; a tick takes no part in it.
#[test]
fn boards_go_back_only_where_that_was_asked() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    for stays in [false, false, true] {
        again(&mut app);
        says(&app, &["takes 4 pieces, asks about 4 of the plan before"], &[]);
        let before = strips_of(&app);
        heard(&mut app, [Tap::Use]);
        says(&app, &["The job has 4 pieces by the plan before. Do they stay?"], &[]);
        assert_eq!(strips_of(&app), before, "nothing is written yet");
        heard(&mut app, [Tap::UseAnd(stays)]);
        assert_eq!(strips_of(&app).1, if stays { 8 } else { 4 });
    }
}

/// While it looks for a better one the keys are those of after, in the same places, with the same words under them.
#[test]
fn no_key_moves_while_it_looks() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Go]);
    let foot = |app: &App| page(app).split("<footer").nth(1).unwrap_or_default().split("</footer").next().unwrap_or_default().to_owned();
    assert!(foot(&app).contains("Use these"), "nothing is found yet: {}", foot(&app));
    let Planning::Done(first) = answer(&app) else { panic!("done") };
    let open = Answered { bound: vec![2, first.worth[1] - 4], ..*first };
    let tell = |app: &mut App, open: &Answered| app.told(crate::app::news::News::Planning(Planning::Done(Box::new(open.clone()))));
    tell(&mut app, &open);
    let looking = foot(&app);
    tell(&mut app, &open);
    let after = foot(&app);
    assert_eq!(looking.replace("Stop here", "Plan again"), after);
    assert!(after.contains("asks about 4 of the plan before") && looking.contains("Stop here"), "{looking}");
}

/// The headline of a used plan that is opened again is the one it had.
#[test]
fn a_plan_says_the_same_when_it_is_opened_again() {
    for lines in ["", "pile beech beech-european 20 x 45 x 700 mm\ncount 27 beech\n"] {
        let mut app = at_rack(lines);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
        typed(&mut app, &["1200", "400"]);
        heard(&mut app, [Tap::Go]);
        solved(&mut app);
        heard(&mut app, [Tap::Stop, Tap::Use]);
        let lead = |app: &App| page(app).split("t22 w8\">").nth(1).unwrap().split('<').next().unwrap().to_owned();
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        assert!(lead(&app).contains(" rows of "), "{}", lead(&app));
        assert_eq!(lead(&again), lead(&app));
    }
}

/// Neither a plan that is found nor one that is opened is searched for what would give more before its page is painted; it is then looked for
/// beside the page, and is what it was. Where another plan is in hand by then, nothing of it is said.
#[test]
fn a_plan_is_painted_before_anything_is_searched_for() {
    let mut app = at_rack("part \"rail\" 3 of 24 x 58 x 450 mm for tray\npart \"seat\" 2 of 36 x 36 x 340 mm for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::AsMany, Tap::Go]);
    let is_search = |orders: &[Order]| orders.iter().any(|order| matches!(order, Order::Unlock(_)));
    let asked = app.plan.given.as_ref().unwrap().ready.asked.clone();
    let answered = asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let done = || News::Planning(Planning::Done(Box::new(answered.clone())));
    let orders = app.told(done());
    assert!(app.plan.found.as_ref().is_some_and(|found| found.sheet.short.is_empty()), "it is not searched before it is painted");
    assert!(orders.contains(&Order::Painted) && !is_search(&orders), "{orders:?}");
    assert!(is_search(&app.told(News::Painted)));
    let of_it = locked(&app.plan.given.as_ref().unwrap().ready, &app.plan.found.as_ref().unwrap().answered);
    let found = Tries::begin(&of_it).to_their_end();
    let other = Locked { answered: Answered::default(), ..of_it.clone() };
    app.told(News::Unlocks(Box::new(other), Some(found.clone())));
    assert!(app.plan.found.as_ref().is_some_and(|found| found.sheet.short.is_empty()), "that is of another plan");
    app.told(News::Unlocks(Box::new(of_it), Some(found)));
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let of = |app: &App| app.plan.found.as_ref().map(|found| (found.sheet.short.clone(), found.sheet.proof.clone())).unwrap();
    let before = of(&app);
    assert!(!before.0.is_empty(), "{before:?}");
    let mut again = reloaded(&app);
    let orders = heard(&mut again, [Tap::Open]);
    assert_eq!((of(&again).0, of(&again).1.why), (vec![], None), "nothing is searched for by the tap");
    assert_eq!(orders.iter().filter(|order| **order == Order::Painted).count(), 1, "{orders:?}");
    unlocked(&mut again);
    assert_eq!(of(&again), before);
    let orders = heard(&mut again, [Tap::Piece(0)]);
    assert!(!orders.contains(&Order::Painted), "{orders:?}");
    let mut left = reloaded(&app);
    heard(&mut left, [Tap::Open, Tap::Go]);
    assert!(!is_search(&left.told(News::Painted)), "it is planned again meanwhile");
    assert!(left.plan.found.is_none());
}

/// What a plan leaves of its boards is on the rack only after the saw, until its line is ticked; and is put right with its pile.
#[test]
fn what_is_not_cut_off_yet_is_said_on_the_rack() {
    let mut app = at_rack("part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let all = |app: &App| fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let left = |app: &App| all(app).into_iter().find(|it| it.pile.name.as_deref().is_some_and(|it| it.starts_with("left of "))).unwrap();
    let (there, lines) = (left(&app), app.plan.found.as_ref().unwrap().sheet.lines.len());
    assert_eq!(after_the_saw(&app), [(there.which().0, there.n)]);
    says(&room(&app, Room::Wood), &["only after the saw"], &[]);
    let rack = |app: &App| {
        let mut app = reloaded(app);
        heard(&mut app, [Tap::Pile(there.which().0)]);
        page(&app)
    };
    assert!(rack(&app).contains("only after the saw"), "{}", rack(&app));
    // What is on boards that are not cut lies on the rack as little as it does.
    let counted = |app: &App| {
        let mut app = reloaded(app);
        app.place = Place::Workshop;
        let short = page(&app);
        app.heard(
            Msg::Workshop(crate::app::workshop::Tap::ShowPage(crate::app::workshop::Over::Rack)),
            Now { wall: app.now, chance: [208; 10] },
        );
        (short, page(&app))
    };
    let there_in_all = all(&app).iter().filter(|it| !it.in_job).map(|it| it.n).sum::<u32>();
    let (before, list) = counted(&app);
    let pieces = |n: u32| format!("{n} pieces");
    assert!(before.contains(&pieces(there_in_all - there.n)) && list.contains(&pieces(there_in_all - there.n)), "{before}{list}");
    assert!(list.contains(&format!("{} only after the saw", there.n)), "{list}");
    let mut piles = reloaded(&app);
    heard(&mut piles, [Tap::Open, Tap::Piles]);
    says(&piles, &["on the rack, only after the saw"], &[]);
    heard(&mut app, (0..lines).map(Tap::Tick));
    assert_eq!((after_the_saw(&app), rack(&app).contains("only after the saw")), (vec![], false));
    let (after, list) = counted(&app);
    assert!(after.contains(&pieces(there_in_all)) && list.contains(&pieces(there_in_all)), "{after}{list}");
    // Its thickness is corrected, and what is left of it says so before.
    let (Lying { haul, pile }, thin) = (source(&app), Length::MM.times(24).unwrap());
    let mut form = reloaded(&app);
    heard(&mut form, [Tap::Pile(source(&app))]);
    let ask = crate::app::workshop::rack::Page::Ask(source(&app), crate::app::workshop::rack::Ask::Size);
    let show = crate::app::workshop::Tap::Rack(crate::app::workshop::rack::RackTap::Show(ask));
    form.heard(Msg::Workshop(show), Now { wall: form.now, chance: [207; 10] });
    says(&form, &["The same wood, thickness and width go for left of strips, "], &[]);
    order(
        &mut app,
        Command::Haul(HaulCommand::DescribePile { haul, pile, facts: PileFacts { thickness: Some(thin), ..Default::default() } }),
    );
    assert_eq!(left(&app).pile.thickness, Some(thin));
    take_back(&mut app);
    assert_eq!(left(&app).pile.thickness, there.pile.thickness);
}

/// From the answer to the last tick, over a reload, and back: the wood on the rack is what it was.
#[track_caller]
fn walked(parts: &str, taps: &[Tap], figures: &[&str]) {
    let mut app = at_rack(parts);
    let wood = |app: &App| {
        let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
        all.iter().map(|it| (it.which(), it.n)).collect::<Vec<_>>()
    };
    let (before, job) = (wood(&app), app.jobs.open.unwrap());
    heard(&mut app, [Tap::Open]);
    heard(&mut app, taps.iter().cloned());
    typed(&mut app, figures);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop]);
    says(&app, &["Use these", "takes "], &[]);
    let lines = app.plan.found.as_ref().unwrap().sheet.lines.clone();
    heard(&mut app, [Tap::Use]);
    says(&app, &["The job has this wood", "At the saw", "Take back"], &["Use these", "plan again."]);
    assert_eq!(cuts_left(&app), [(job, lines.len(), lines.len())]);
    heard(&mut app, [Tap::Tick(0)]);
    let mut app = reloaded(&app);
    heard(&mut app, [Tap::Saw(job)]);
    says(&app, &["The job has this wood", "tick done"], &["Use these", "plan again."]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.lines, lines, "its cuts are what they were");
    heard(&mut app, (1..lines.len()).map(Tap::Tick));
    assert!(cuts_left(&app).is_empty() && after_the_saw(&app).is_empty());
    let used = app.plan.used.unwrap();
    let struck = fivebar_core::ledger::decide::BookCommand::TakeBack { act: app.shelf().book.entry(used).unwrap().0.act.unwrap_or(used) };
    order(&mut app, Command::Book(struck));
    assert_eq!(wood(&app), before);
    says(&app, &["Use these"], &["The job has this wood"]);
}

#[test]
fn the_parts_of_a_job_are_walked_through() {
    walked(
        "part \"seat\" 1 of 25 x 160 x 600 mm for tray\npart \"leg\" 4 of 36 x 36 x 340 mm for tray\n",
        &[Tap::Shape(Shape::Parts), Tap::At(0), Tap::Press(Press::Digit(1))],
        &[],
    );
}

#[test]
fn lengths_from_sticks_are_walked_through() {
    walked("part \"rail\" 3 of 24 x 58 x 450 mm for tray\n", &[Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(2))], &[]);
}

#[test]
fn a_field_of_tiles_is_walked_through() {
    walked("", &[Tap::Shape(Shape::Field), Tap::Pattern(1)], &["600", "300"]);
}

/// Boards that are not bought are in no pile: a plan of them takes no wood before they are bought and counted, and then it is another one.
#[test]
fn a_plan_of_boards_to_buy_is_used_once_they_are_there() {
    let mut app = opened("take 12 strips for tray\ntake 5 thin for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Piles, Tap::Buy]);
    typed(&mut app, &["30", "65", "500", "9", "4"]);
    heard(&mut app, [Tap::AddBoards, Tap::Change, Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    says(&app, &["Buy 4 of C", "Buy them first and write them down as boards you bought; then plan again."], &["Use these"]);
    let entries = app.own.book.len();
    heard(&mut app, [Tap::Use, Tap::UseAnd(true), Tap::UseAnd(false)]);
    assert_eq!((app.own.book.len(), app.plan.used), (entries, None), "nothing is taken");
    // They are bought and written down: what lies there comes before what could be bought.
    let mm = |n: i64| Length::MM.times(n);
    let facts = PileFacts {
        wood: fivebar_core::quantity::Key::read("oak-european"),
        thickness: mm(30).ok(),
        width: mm(65).ok(),
        length: mm(500).ok(),
        ..PileFacts::default()
    };
    let paid = fivebar_core::quantity::Money::whole(16.into(), fivebar_core::quantity::Currency::USD).unwrap();
    let units = fivebar_core::quantity::Units::Metric;
    order(&mut app, Command::Wood(fivebar_core::ledger::decide::WoodCommand::Buy { units, pile: facts, n: 4, paid, supplier: None }));
    heard(&mut app, [Tap::Piles, Tap::Change, Tap::Go]);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    says(&app, &["Use these 4", "takes 4 pieces"], &["Buy 4 of C"]);
    heard(&mut app, [Tap::Use]);
    says(&app, &["The job has this wood"], &[]);
}

/// Pegs for another job are planned of what the legs leave: at its saw they are marked as not cut off yet, also once they are taken; until
/// the legs are cut.
#[test]
fn what_is_cut_of_boards_that_are_not_cut_yet_is_marked_at_the_saw() {
    let legs = "part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n";
    let mut app = at_rack(&format!("{legs}job pegs \"Pegs\" 1 spec\npart \"peg\" 3 of 20 x 50 x 400 mm oak-european for pegs\n"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let (tray, lines) = (app.jobs.open, app.plan.found.as_ref().unwrap().sheet.lines.len());
    let pegs = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Pegs").map(|job| job.id);
    app.jobs.open = pegs;
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks)]);
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let whole =
        all.iter().filter(|it| !it.pile.name.as_deref().is_some_and(|it| it.starts_with("left of "))).map(|it| Tap::Turn(it.which()));
    heard(&mut app, whole.collect::<Vec<_>>());
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop]);
    says(&app, &["At the saw, mm", ", 3 only after the saw"], &[]);
    heard(&mut app, [Tap::Use]);
    says(&app, &["At the saw, mm", ", 3 only after the saw"], &[]);
    app.jobs.open = tray;
    heard(&mut app, [Tap::Open]);
    heard(&mut app, (0..lines).map(Tap::Tick));
    app.jobs.open = pegs;
    heard(&mut app, [Tap::Open]);
    says(&app, &["At the saw, mm"], &["only after the saw"]);
}
