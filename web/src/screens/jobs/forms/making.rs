//! Forms about making: a new job, pieces from the rack, a part, a planned operation.

use super::super::entry::Slot;
use super::super::say;
use super::super::wood::{apart, name, size};
use super::{Asked, chosen, worded};
use crate::app::bench::offered::{self, Offered};
use crate::app::bench::whole_of;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, Pick, What};
use crate::app::plan::PutBack;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips, flowing};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::screens::Seen;
use crate::view::{El, el};
use crate::words::en::bench::done_with;
use crate::words::en::{changed, design, job as words, jobs, plan as plan_words, rack as rack_words, woods};
use fivebar_core::bench::On;
use fivebar_core::ledger::kind::bench::{Kind, Stage};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Currency, Id, Key, Listed, Units};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::rack::rack;
use fivebar_core::wood::species;
use fivebar_core::wood::woods::Woods;

fn pick(pick: Pick) -> Msg {
    say(Tap::Pick(pick))
}

/// A new job: its name, how many, for whom; currency and units as the workshop has them.
pub fn new(draft: &Draft, app: &App, seen: Seen<'_>) -> Asked {
    let picks = &draft.picks;
    let counts = [1, 2, 3, 4, 5];
    let typed = draft.form.text(0).to_owned();
    let others = picks.other_count || !counts.iter().any(|n| typed == n.to_string());
    let mut shown: Vec<Chip> = counts.iter().map(|n| Chip::choice(seen.speech.count(*n), !others && typed == n.to_string())).listed();
    shown.push(Chip::choice(if others && !typed.is_empty() { typed.clone() } else { jobs::OTHER.into() }, others));
    let pieces = chips("key t22", shown, move |nth| counts.get(nth).map_or_else(|| pick(Pick::Count(0)), |n| pick(Pick::Count(*n))));
    let segs = vec![Seg::new(jobs::TO_SELL, picks.made_for == For::Spec), Seg::new(jobs::TO_ORDER, picks.made_for == For::Order)];
    let made_for = even(jobs::MADE_FOR, segs, |nth| pick(Pick::MadeFor(if nth == 0 { For::Spec } else { For::Order })));
    let units = if picks.units == Units::Inch { jobs::INCHES } else { jobs::MILLIMETRES };
    let as_set = chosen(jobs::KEPT_FOR_GOOD, jobs::in_currency(picks.currency.code(), units), picks.more);
    let title = |text: &'static str| el("h2", "ink1").text(text);
    let mut asked = Asked::new("jobs/new", jobs::NEW_JOB);
    asked.above = again(draft, app);
    asked.above.extend(vec![
        worded("job-name", jobs::NAME, draft, 0),
        el("p", "t14 i2").text(jobs::BUYERS_READ_IT),
        title(jobs::HOW_MANY_ALIKE),
        pieces,
        title(jobs::MADE_FOR),
        made_for,
        as_set,
    ]);
    asked.save = (jobs::START_JOB.into(), String::new());
    match (picks.more, others) {
        (true, _) => asked.instead = Some(money_and_units(draft, app)),
        (false, true) => asked.slots = vec![Slot::whole(jobs::HOW_MANY_ALIKE)],
        (false, false) => {}
    }
    asked
}

/// So many designs are offered, those kept last.
const DESIGNS_MOST: usize = 6;

/// The designs a new job may be made from.
fn again(draft: &Draft, app: &App) -> Vec<El<Msg>> {
    let known = app.own.workshop();
    let kept: Vec<(Id, String)> = known.designs.iter().rev().take(DESIGNS_MOST).map(|kept| (kept.id, kept.name.clone())).listed();
    if kept.is_empty() {
        return vec![];
    }
    let shown = kept.iter().map(|(id, name)| Chip::choice(name.clone(), draft.picks.design == Some(*id))).listed();
    let chips = flowing("key h56", shown, move |nth| kept.get(nth).map_or_else(|| pick(Pick::More), |(id, _)| pick(Pick::Design(*id))));
    vec![el("h2", "ink1").text(design::MAKE_AGAIN), chips]
}

fn money_and_units(draft: &Draft, app: &App) -> Vec<El<Msg>> {
    let mut all = vec![app.begins_with().0];
    all.extend(["USD", "EUR", "GBP", "CAD", "AUD", "CHF", "NZD", "SEK"].iter().filter_map(|code| Currency::read(code).ok()));
    let mut codes: Vec<Currency> = vec![];
    all.into_iter().for_each(|code| {
        if !codes.contains(&code) {
            codes.push(code)
        }
    });
    let shown = codes.iter().map(|code| Chip::choice(code.code().to_owned(), *code == draft.picks.currency)).listed();
    let currencies = crate::parts::chips::bundle_of("key h48", shown, move |nth| {
        codes.get(nth).map_or_else(|| pick(Pick::More), |code| pick(Pick::Currency(*code)))
    });
    let segs =
        vec![Seg::new(jobs::INCHES, draft.picks.units == Units::Inch), Seg::new(jobs::MILLIMETRES, draft.picks.units == Units::Metric)];
    let units = even(jobs::UNITS, segs, |nth| pick(Pick::Units(if nth == 0 { Units::Inch } else { Units::Metric })));
    vec![el("h2", "ink1").text(jobs::CURRENCY), currencies, el("h2", "ink1").text(jobs::UNITS), units]
}

/// Pieces, a part, or a planned operation.
pub fn asked(draft: &Draft, sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Asked {
    match &draft.what {
        What::Take { pile, .. } => take(draft, (*pile, sheet.job), app, seen),
        What::Part(was) => part(draft, was.is_some(), &app.shelf().workshop().wood.woods),
        What::Name => {
            let mut asked = Asked::new("jobs/name", jobs::NAME_AND_PIECES);
            asked.above = vec![worded("job-name", jobs::NAME, draft, 0), el("p", "t14 i2").text(jobs::BUYERS_READ_IT)];
            asked.slots = vec![Slot::whole(jobs::HOW_MANY_ALIKE)];
            asked
        }
        What::Plan(was) => plan(draft, was.as_deref(), (sheet.job, app)),
        _ => plan(draft, None, (sheet.job, app)),
    }
}

/// So many from a pile, or back to it.
fn take(draft: &Draft, (pile, job): (Id, Id), app: &App, seen: Seen<'_>) -> Asked {
    let piles = rack(&app.shelf().shop(seen.now.at), job).unwrap_or_default();
    let Some(pile) = piles.into_iter().find(|one| one.pile == pile) else { return Asked::new("jobs/take", words::TAKE) };
    let n = |n: u32| seen.speech.count(n);
    let mut asked = Asked::new("jobs/take", name(&pile));
    let there = words::here_and_rack(&n(pile.in_job), &n(pile.on_rack));
    let there = [there].into_iter().chain(apart(&pile, seen)).listed().join(", ");
    // No key asks for more than can be taken or put back.
    let most = pile.free.max(pile.in_job);
    let mut counts: Vec<u32> = [1, 5, 10].into_iter().filter(|n| *n <= most).listed();
    let mut shown: Vec<Chip> = counts.iter().map(|count| Chip::tap(n(*count))).listed();
    if 0 < pile.free {
        counts.push(pile.free);
        shown.push(Chip::tap(n(pile.free)).under(words::ALL_OF_THEM));
    }
    let quick = crate::parts::chips::bundle(shown, move |nth| pick(Pick::Count(counts.get(nth).copied().unwrap_or(1))));
    asked.above = vec![crate::parts::fraction::worded("p", "i2", size(&pile, seen)), el("p", "t22 w8").text(there), quick];
    asked.slots = vec![Slot::whole(words::HOW_MANY)];
    let typed = draft.form.text(0);
    // What all is set apart for others, or is in jobs, is none to take.
    asked.ready = 0 < pile.free;
    let none = if pile.on_rack == 0 { rack_words::NONE_LIES_THERE } else { rack_words::NONE_FREE };
    asked.save = (words::take_n(typed), if asked.ready { String::new() } else { none.to_owned() });
    // What was asked about goes for the figure it was asked of.
    let back = draft.put_back.as_ref().filter(|back| typed.trim().parse() == Ok(back.n));
    asked.above.extend(back.map(|back| el("div", "").attr("role", "alert").kids(asked_back(back, seen))));
    asked.other = (0 < pile.in_job).then(|| if back.is_some() { words::put_back_anyway(typed) } else { words::put_back_n(typed) });
    asked
}

/// That cut boards would lie on the rack as whole ones, and which plans would have none.
fn asked_back(back: &PutBack, seen: Seen<'_>) -> Vec<El<Msg>> {
    let n = |n: u32| seen.speech.count(n);
    let cut = back.cut.map(|(here, whole)| changed::not_cut(&n(whole), &n(here)));
    let lost = back.lost.iter().map(|(shape, at)| {
        changed::no_board_of(
            plan_words::shape(*shape).0,
            &changed::used_on(&format!("{} {}", seen.speech.day(*at), seen.speech.clock(*at))),
        )
    });
    cut.into_iter().chain(lost).map(|line| el("p", "why").text(line)).listed()
}

fn part(draft: &Draft, old: bool, own: &Woods) -> Asked {
    let units = draft.picks.units;
    let mut asked = Asked::new("jobs/part", if old { words::PART } else { words::ADD_PART });
    let wood = draft.picks.wood.as_ref().map_or(words::NO_WOOD.to_owned(), |wood| woods::among(wood, own));
    asked.above = vec![worded("part-name", words::PART_NAME, draft, 0), chosen(words::WOOD, wood, draft.picks.more)];
    let sides = [words::THICK, words::WIDE, words::LONG].map(|side| Slot::side(side, units));
    asked.slots = std::iter::once(Slot::whole(words::N_OF_ONE)).chain(sides).listed();
    asked.instead = draft.picks.more.then(|| vec![wood_chips(units, own)]);
    asked.other = old.then(|| words::TAKE_PART_AWAY.to_owned());
    asked
}

/// The usual woods, the maker's own, then all others.
fn wood_chips(units: Units, own: &Woods) -> El<Msg> {
    let usual = woods::usual(units).iter().filter_map(|key| Key::read(key));
    let others = species::listed(units).map(|species| species.key).filter(|key| !woods::usual(units).contains(key)).filter_map(Key::read);
    let keys: Vec<Key> = usual.chain(own.own().map(|(key, _)| key.clone())).chain(others).listed();
    let shown = keys.iter().map(|key| Chip::tap(woods::among(key, own))).listed();
    chips("key", shown, move |nth| pick(Pick::Wood(keys.get(nth).cloned())))
}

fn plan(draft: &Draft, was: Option<&str>, (job, app): (Id, &App)) -> Asked {
    let title = was.map_or(words::ADD_OPERATION.to_owned(), jobs::upper_first);
    let mut asked = Asked::new("jobs/plan", title);
    let kinds = [
        (Kind::Make, false, jobs::kind(Kind::Make)),
        (Kind::Make, true, words::FINISH),
        (Kind::Sell, false, jobs::kind(Kind::Sell)),
        (Kind::Deliver, false, jobs::kind(Kind::Deliver)),
        (Kind::Office, false, jobs::kind(Kind::Office)),
    ];
    let is = |(kind, finish, _): &(Kind, bool, &str)| draft.picks.kind == *kind && draft.picks.finish == *finish;
    let segs = kinds.iter().map(|one| Seg::new(jobs::upper_first(one.2), is(one))).listed();
    let kind = crate::parts::seg::seg(words::KIND, segs, move |nth| {
        let (kind, finish, _) = kinds.get(nth).copied().unwrap_or((Kind::Make, false, ""));
        pick(Pick::Kind(kind, finish))
    });
    let typed = draft.words.first().map_or("", String::as_str);
    let is_new = was.is_none();
    let other = is_new.then(|| offered::form_of(app, job, typed)).flatten().map(|one| {
        let said = words::same_as(&jobs::upper_first(&one.op));
        key("key h48 left", said, "", operation(one))
    });
    let name = is_new.then(|| worded("operation", words::OPERATION, draft, 0));
    let done = was.and_then(|op| Some((op, whole_of(app, On::Job(job), op)?)));
    asked.below = done.map(|(op, (run, of))| key("key soft h48", done_with(op), "", say(Tap::Whole(run, of))));
    let coats = draft.picks.finish.then(|| el("p", "t14").text(words::COATS_EACH));
    asked.above = name.into_iter().chain(other).chain([kind]).chain(coats).listed();
    asked.instead = typed.is_empty().then(|| vec![names(offered::to_plan(app, job))]);
    asked.slots = vec![Slot::whole(words::MIN), Slot::whole(words::PIECES)];
    asked.other = was.map(|_| words::STRIKE.to_owned());
    asked
}

/// The names of the clock, as chips.
fn names(offered: Vec<Offered>) -> El<Msg> {
    let shown = offered.iter().map(|one| Chip::tap(jobs::upper_first(&one.op))).listed();
    flowing("key h48", shown, move |nth| offered.get(nth).cloned().map_or_else(|| pick(Pick::More), operation))
}

fn operation(one: Offered) -> Msg {
    pick(Pick::Operation(one.op, one.kind, one.stage == Stage::Finish))
}
