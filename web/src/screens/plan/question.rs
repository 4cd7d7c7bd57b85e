//! What becomes of wood that a plan took, asked on a page of its own before another is used instead, or it is dropped.

use super::super::slots::no;
use super::super::{Screen, Seen};
use super::say;
use super::since::named;
use crate::app::App;
use crate::app::plan::{
    Before, Dropping, Since, Tap, dropping, in_both_of, in_use_again, refused, short_if_they_stay, who_has_its_leftovers,
};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::screens::jobs::titled;
use crate::view::el;
use crate::words::en::{changed as words, common};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Count, Id, Listed};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// What is asked, and the ways there are: each with what becomes of the wood.
struct Asked {
    /// What is asked; where there is no choice, what there is.
    said: String,
    /// What else is to be known for it, each a line.
    more: Vec<String>,
    /// None where a plan of the rest has the wood that is not cut.
    stays: Option<(&'static str, &'static str)>,
    /// None where all is cut.
    goes: Option<(String, String)>,
    ways: [Tap; 2],
    /// The plan whose ticks they are, where boards are ticked as cut.
    ticked: Option<Id>,
}

/// The page, while something is asked.
pub fn screen(sheet: &JobSheet, since: &Since, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let asked = match (since.before.filter(|_| app.plan.asks && since.changed.is_empty()), app.plan.drops.then(|| dropping(app)).flatten())
    {
        (Some(before), _) => instead(before, app, seen),
        (None, Some(dropped)) => drop_it(&dropped, app, seen),
        (None, None) => return None,
    };
    let [stays, goes] = asked.ways;
    let stay = asked.stays.map(|(name, under)| key("key h56 wide", name, under, say(stays)));
    let keys = stay.into_iter().chain(asked.goes.map(|(name, under)| key("key h56 wide", name, under, say(goes))));
    let to_saw = app.jobs.open.zip(asked.ticked).map(|(job, plan)| Tap::SawOf(job, plan));
    let to_saw = to_saw.map(|tap| key("key soft h56 wide", words::TO_THE_SAW, words::TAKE_TICK_OFF, say(tap)));
    let more = asked.more.into_iter().map(|line| el("p", "").text(line));
    let main = el("main", "scr").kid(el("p", "w8").attr("role", "alert").text(asked.said)).kids(more).kids(keys).kids(to_saw);
    // Where it can't go back for what others have of it, these are named.
    let has = |(job, n): (String, Count)| el("p", "w7").text(words::has_of_its_leftovers(&job, &pieces(n, seen)));
    let rests = refused(app).filter(|why| matches!(why, Refusal::OfPile { why, .. } if matches!(**why, Refusal::PiecesRestOnIt { .. })));
    let has = rests.map(|_| who_has_its_leftovers(app).into_iter().map(has).listed()).unwrap_or_default();
    let foot = el("footer", "foot").kids(refused(app).map(|why| no(why, seen))).kids(has);
    let foot = foot.kid(key("key soft h56 wide", common::NOT_NOW, "", say(Tap::NotNow)));
    Some(Screen::new("jobs/plan-question", head(Head::new(titled(sheet, seen), words::WHAT_OF_ITS_WOOD)), main).foot(foot).says_it())
}

fn pieces(n: Count, seen: Seen<'_>) -> String {
    common::pieces(n, &seen.speech.count(n))
}

/// Whether the wood of the plan before stays in the job.
fn instead(before: Before, app: &App, seen: Seen<'_>) -> Asked {
    let of_own = before.pieces == 0;
    let stays = if of_own { (words::IT_STAYS, words::IT_STAYS_UNDER) } else { (words::THEY_STAY, words::THEY_STAY_UNDER) };
    let goes = if of_own { (words::GOES, words::GOES_UNDER) } else { (words::PUT_BACK, words::PUT_BACK_UNDER) };
    let back = uncut((before.cut, before.back), goes, seen);
    // What the job had already stays in it: the plan goes, with what it left of boards that are not cut.
    let goes = if of_own { Some((goes.0.to_owned(), cut_stay(before.cut, goes.1, seen))) } else { back };
    // What is planned anew is all that is not cut: of its wood nothing is left to stay.
    let is_rest = goes.is_some() && app.plan.given.as_ref().is_some_and(|given| !given.cut.parts.is_empty());
    let short = short_if_they_stay(app).filter(|_| !is_rest).map(|short| too_few(short, app, seen));
    let stays = (!is_rest && short.is_none()).then_some(stays);
    let has = if of_own { words::plan_of_own(&pieces(before.own, seen)) } else { words::has_by_plan_before(&pieces(before.pieces, seen)) };
    let asks = stays.map(|_| if of_own { words::DOES_IT_STAY } else { words::DO_THEY_STAY });
    let others = before.others.then_some(words::OTHERS_STAY);
    let said = std::iter::once(has.as_str()).chain(asks).chain(others).listed().join(" ");
    let (said, wrong) = cut(before.cut, (said, words::THEN_PLAN), seen);
    let more = short.into_iter().chain(shared(app, stays.is_some(), !of_own)).chain(wrong).listed();
    Asked { said, more, stays, goes, ways: [Tap::UseAnd(true), Tap::UseAnd(false)], ticked: before.ticked }
}

/// Why they can't stay: the pile, what the plan takes of it, and what lies there.
fn too_few((place, takes, there): (usize, Count, Count), app: &App, seen: Seen<'_>) -> String {
    let letter = app.plan.given.as_ref().and_then(|given| given.ready.sources.get(place)).map_or("", |source| source.letter.as_str());
    words::too_few_if_they_stay(letter, &seen.speech.count(takes), (&seen.speech.count(there), there == 1))
}

/// The same of one that is dropped.
fn drop_it(dropped: &Dropping, app: &App, seen: Seen<'_>) -> Asked {
    let again = in_use_again(app, dropped).map(|n| words::in_use_again(&pieces(n, seen)));
    let asked = std::iter::once(words::drops(&pieces(dropped.pieces, seen))).chain(again).listed().join(" ");
    let (said, wrong) = cut(dropped.cut, (asked, words::THEN_DROP), seen);
    let more = wrong.into_iter().listed();
    let ticked = (0 < dropped.cut).then_some(dropped.plan);
    let back = dropped.uncut.as_ref().map_or(dropped.pieces, |it| it.back.iter().map(|(_, n)| *n).fold(0, Count::saturating_add));
    let goes = uncut((dropped.cut, back), (words::PUT_BACK, words::DROP_BACK_UNDER), seen);
    Asked {
        said,
        more,
        stays: Some((words::THEY_STAY, words::DROP_STAYS_UNDER)),
        goes,
        ways: [Tap::DropAnd(true), Tap::DropAnd(false)],
        ticked,
    }
}

/// That boards are ticked as cut goes first; and what to do where a tick is wrong.
fn cut(n: Count, (asked, then): (String, &str), seen: Seen<'_>) -> (String, Option<String>) {
    if n == 0 { (asked, None) } else { (words::is_cut(&seen.speech.count(n), n == 1, &asked), Some(words::wrong_tick(then))) }
}

/// All of it goes back, or where boards are cut the others; nothing where all are.
fn uncut((cut, back): (Count, Count), (all, under): (&str, &str), seen: Seen<'_>) -> Option<(String, String)> {
    match (cut, back) {
        (0, _) => Some((all.to_owned(), under.to_owned())),
        (_, 0) => None,
        _ => Some((words::put_back_uncut(&seen.speech.count(back)), cut_stay(cut, under, seen))),
    }
}

fn cut_stay(cut: Count, under: &str, seen: Seen<'_>) -> String {
    if cut == 0 { under.to_owned() } else { words::cut_stay(&seen.speech.count(cut), cut == 1) }
}

/// What both plans make, where they may both stand; and what only the one before does.
fn shared(app: &App, may_stay: bool, goes_back: bool) -> Option<String> {
    let told = in_both_of(app);
    let whole = if app.plan.draft.shape == Some(Shape::Field) { words::THE_FIELD } else { words::THE_TOP };
    let names = |all: Vec<String>| all.iter().map(|name| if name.is_empty() { whole.to_owned() } else { named(name) }).listed();
    let both = names(told.both.into_iter().filter(|name| may_stay && is_planned(app, name)).collect());
    let alone = names(told.alone);
    let both = (!both.is_empty()).then(|| words::both_make(&both));
    let alone = (!alone.is_empty()).then(|| words::made_alone(&alone, goes_back));
    let all = both.into_iter().chain(alone).listed();
    (!all.is_empty()).then(|| all.join(" "))
}

/// Whether the plan in hand makes a part: not one of which all are cut already.
fn is_planned(app: &App, name: &str) -> bool {
    match app.plan.given.as_ref().map(|given| &given.ready.wish) {
        Some(Wish::Parts(list) | Wish::Sticks(list)) => list.parts.iter().any(|part| part.name == name),
        _ => true,
    }
}
