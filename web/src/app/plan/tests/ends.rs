//! What the page says of a top whose rows have one cut each, of rows too narrow, of a job of two, and of boards that are ripped.

use super::told::{at_rack, solved, typed};
use super::*;
use crate::app::workshop;
use crate::app::workshop::wood::{Page as WoodPage, WoodTap};
use fivebar_core::sheet::plan::wish::Wish;

pub(super) fn planned(lines: &str, taps: &[Tap], figures: &[&str]) -> App {
    let mut app = at_rack(lines);
    heard(&mut app, [Tap::Open]);
    heard(&mut app, taps.iter().cloned());
    typed(&mut app, figures);
    heard(&mut app, [Tap::Go]);
    app
}

#[track_caller]
fn says(app: &App, wanted: &[&str], not: &[&str]) {
    let shown = page(app);
    wanted.iter().for_each(|words| assert!(shown.contains(words), "{words}: {shown}"));
    not.iter().for_each(|words| assert!(!shown.contains(words), "{words}: {shown}"));
}

/// By hand: 1005 and 95 are 1100, and an end is 100 at least; cut in pieces six rows take seven strips. The key to the figure and the key
/// that cuts in pieces stand beside it.
#[test]
fn an_end_too_short_is_named_and_two_keys_lead_on() {
    let one_cut = super::told::without(1, vec![Tap::Shape(Shape::Rows), Tap::Split(false)]);
    let mut app = planned("", &one_cut, &["1100", "340"]);
    solved(&mut app);
    let short = "An end piece would be 95 mm, your least is 100 mm. With it 6 rows can be laid.";
    says(&app, &["Not one row can be laid.", short, "Least end piece, 100 mm", "not possible"], &["best possible", "strip of its own"]);
    // What was found is there again when the plan is opened, and nothing is searched for.
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &["Not one row can be laid.", short, "Least end piece, 100 mm"], &[]);
    let mut saw = reloaded(&app);
    let now = Now { wall: saw.now, chance: [9; 10] };
    saw.heard(Msg::Workshop(workshop::Tap::Wood(WoodTap::Open(WoodPage::Saw))), now);
    says(&saw, &["Least end piece"], &[]);
    // Left as it was, it leads back to the plan, as it does when it is saved.
    saw.heard(Msg::Workshop(workshop::Tap::Close), now);
    assert_eq!(saw.place, Place::Jobs);
    heard(&mut app, [Tap::CutInPieces]);
    solved(&mut app);
    says(&app, &["6 rows."], &["Not one row", "An end piece would be", "Plan with strips cut in pieces"]);
    assert!(app.plan.draft.split);
}

/// By hand: both figures are 100 and keep the end of 95 from being cut, so each has its key.
#[test]
fn each_figure_in_the_way_has_its_key() {
    let one_cut = super::told::without(1, vec![Tap::Shape(Shape::Rows), Tap::Split(false)]);
    let mut app = planned("", &one_cut, &["1100", "340"]);
    solved(&mut app);
    says(&app, &["Least end piece, 100 mm"], &["Least piece, "]);
    let figures = &mut app.plan.given.as_mut().unwrap().ready.figures;
    figures.min_piece = figures.min_end;
    says(&app, &["Least end piece, 100 mm", "Least piece, 100 mm"], &[]);
}

/// Badge, headline and paragraphs are of one mind: with one cut in each row it takes two strips, and more would come out of one.
#[test]
fn a_plan_of_more_strips_than_need_be_is_not_called_the_best() {
    let one_cut = super::told::without(1, vec![Tap::Shape(Shape::Rows), Tap::Split(false)]);
    let mut app = planned("", &one_cut, &["1110", "340"]);
    solved(&mut app);
    let own = "Each end is cut from a strip of its own. Cut in pieces, 7 strips do.";
    let fewest = "No plan of 6 rows of oak with only an end piece cut needs fewer than 12 pieces.";
    says(&app, &[fewest, own, "Used 12 of 37 pieces.", "best with only an end cut"], &["best possible", "This one takes"]);
}

/// By hand: 400 in 99 rows is 4.04, up to a tenth 4.1; the least strip is 20.
#[test]
fn rows_too_narrow_are_refused_at_the_form() {
    let app = planned("", &[Tap::Shape(Shape::Rows)], &["1200", "400", "99"]);
    says(&app, &["99 rows would each be 4.1 mm wide, your least strip is 20 mm.", "Least strip, 20 mm"], &["Planning"]);
}

/// Tread ends of 150 ripped in two for rows of 57.2: 24 strips are 12 pieces of 31.
#[test]
fn what_is_used_is_told_in_pieces_as_they_lie_on_the_rack() {
    let mut app = planned("", &super::told::without(0, vec![Tap::Shape(Shape::Rows)]), &["1200", "400", "7"]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop]);
    says(&app, &["Used 12 of 31 pieces, for 24 strips. Left 19 whole", "Use these 12", "takes 12 pieces"], &["of 62"]);
}

/// What the plan before took is counted in where it goes back, and said.
#[test]
fn the_jobs_own_wood_is_told_apart() {
    let mut app = planned("", &super::told::without(1, vec![Tap::Shape(Shape::Rows)]), &["1200", "400"]);
    solved(&mut app);
    heard(&mut app, [Tap::Use, Tap::Go]);
    solved(&mut app);
    says(&app, &["of 37 pieces. Of the 37, 10 are this job’s by the plan before."], &[]);
}

#[test]
fn a_job_of_two_says_that_the_top_is_of_one() {
    let two = "job pair \"Pair\" 2 spec\npart \"top\" 1 of 25 x 400 x 1200 mm for pair\n";
    let mut app = at_rack(two);
    app.jobs.open = tell(&format!("{}{two}", super::told::RACK)).names.job("pair");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Go]);
    solved(&mut app);
    says(&app, &["This is the top of one of 2."], &[]);
    let mut one = planned("", &[Tap::Shape(Shape::Rows)], &["1200", "400"]);
    solved(&mut one);
    says(&one, &["8 rows"], &["This is the top"]);
    heard(&mut one, [Tap::Use]);
    one.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: one.now, chance: [50; 10] });
    says(&one, &["No part is listed; what is planned is under What can I make."], &["No part is planned yet"]);
}

/// A field is planned for how near it comes first: so it says, with the waste, of each pile alone; opened again it knows of no others.
#[test]
fn a_field_says_what_its_waste_was_measured_by() {
    let mut app = planned("", &[Tap::Shape(Shape::Field)], &["600", "300", "20"]);
    solved(&mut app);
    says(&app, &["How near it comes is looked at first: of 4 fields that were planned none as near wastes less than this, "], &[]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &["How near it comes is looked at first; the waste is "], &["none as near"]);
}

/// By hand, in inches: 13 3/8 in six rows is 2 15/64, up to a thirty-second 2 1/4: together 13 1/2, and an eighth is sawn off the last.
/// Whole strips have no ends off. The picture and the finished wood are of 13 3/8, on the page and in the wood of the job.
/// inch less what is planed are 588.5 cubic inches for each inch.
#[test]
fn inches_say_what_the_last_row_is_sawn_to() {
    let mut app = at_rack("");
    let story = tell(&format!("{}job top \"Top\" 1 spec\n", super::told::RACK.replace("EUR metric", "USD inch")));
    assert_eq!(story.refused, []);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.jobs.open = story.names.job("top");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    typed(&mut app, &["44", "", "6"]);
    app.plan.draft.form.put(1, "13 3/8".into());
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    says(&app, &["Glued up they are 13", ": saw the last to 2", ", and the top is 13", "6 rows"], &["cutting 0.0", "more than asked"]);
    let (given, found) = (app.plan.given.clone().unwrap(), app.plan.found.clone().unwrap());
    let sheet = &found.sheet;
    let of_64 = |n: i64| Length::INCH_64TH.times(n).unwrap();
    assert_eq!(sheet.picture.outer, [of_64(44 * 64), of_64(13 * 64 + 24)]);
    let What::Top(top) = &given.ask.what else { panic!("a top") };
    let Wish::Panel(panel) = &given.ready.wish else { panic!("a top") };
    let whole = fivebar_core::quantity::Volume::of(top.length, top.width, panel.thickness).unwrap();
    assert_eq!(sheet.waste.finished, whole);
    heard(&mut app, [Tap::Use]);
    let shop = app.shelf().shop(app.now.at);
    let job = shop.job(app.jobs.open.unwrap()).unwrap();
    let pieces = sheet.used.iter().map(|used| used.pieces).sum();
    assert_eq!(fivebar_core::sheet::make::planned::planned(&shop, &job, pieces).map(|it| it.finished), Some(whole));
}

/// Two jobs of one design have one name: of how many pieces each is stands on every page of it, as in the list.
#[test]
fn a_job_of_several_is_called_so_on_each_page() {
    let story = tell(&STORY.replace("\"Tray\" 1 spec", "\"Tray\" 2 spec"));
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    for taps in [
        vec![],
        vec![Tap::Open, Tap::Choose],
        vec![Tap::Shape(Shape::Sticks)],
        vec![Tap::Piles],
        vec![Tap::Buy],
        vec![Tap::Change, Tap::Go],
    ] {
        heard(&mut app, taps.clone());
        assert!(page(&app).contains("Tray, 2"), "{taps:?}: {}", page(&app));
    }
}
