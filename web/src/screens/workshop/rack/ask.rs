//! What is asked: a length to look for, and of a pile a number, a job, a reason, a place, a moisture.

use super::super::super::left::goes_along;
use super::super::super::slots::{Slot, doubted, figures, refused, under_thumb};
use super::super::super::{Screen, Seen};
use super::buy::{answer, wood};
use super::row::{kept_apart, name, size};
use super::{RackTap, piles, say};
use crate::app::workshop::Tap;
use crate::app::workshop::rack::{Ask, Choice, GONE_TO};
use crate::app::{App, Msg, Notice};
use crate::parts::Place;
use crate::parts::chips::{Chip, bundle_of, chips, flowing};
use crate::parts::field::{Field, field};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::jobs::upper_first;
use crate::words::en::{common, count, rack as words, workshop};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::reading;
use fivebar_core::quantity::{Id, Listed, PILE_MOST, Set, Units};
use fivebar_core::sheet::stock::{self, StockPile};

/// A page with figures on the pad: what stands above, the figures, and the keys below.
pub struct Asked {
    pub place: &'static str,
    pub small: String,
    pub title: String,
    pub above: Vec<El<Msg>>,
    pub slots: Vec<Slot>,
    pub units: Units,
    pub save: String,
    /// All that has to be chosen is chosen.
    pub ready: bool,
    pub other: Option<String>,
    /// Under the pad, so that no key moves while something is typed.
    pub below: Vec<El<Msg>>,
}

/// Lays it out: figures over the pad, the pad under the thumb, why it was not taken beside it.
pub fn laid_out(asked: Asked, app: &App, seen: Seen<'_>) -> Screen {
    let form = &app.workshop.rack.form;
    let pad = match asked.slots.is_empty() {
        true => vec![],
        false => under_thumb(form, &asked.slots, (asked.units, seen), |press| say(RackTap::Press(press))),
    };
    let main = el("main", "scr form")
        .kids(asked.above)
        .kids((!asked.slots.is_empty()).then(|| figures(form, &asked.slots, |nth| say(RackTap::At(nth)))))
        .kids(doubted(form, (asked.units, seen), |side| say(RackTap::IsSo(side))))
        .kids(refused(app, seen))
        .kid(el("div", "push"))
        .kids(pad)
        .kids(asked.below);
    let keys = el("div", if asked.other.is_some() { "g3" } else { "um" })
        .kid(done_key("key solid t22", asked.save, "", say(RackTap::Done)).flag("disabled", !asked.ready))
        .kids(asked.other.map(|words| key("key", words, "", say(RackTap::Other)).flag("disabled", !asked.ready)))
        .kid(key("key", common::NOT_NOW, "", Msg::Workshop(Tap::Close)));
    let top = Head::new(asked.small, asked.title);
    in_place(Screen::new(asked.place, head(top), main).foot(el("footer", "foot").kid(keys)), app)
}

/// A refusal is said in its own place; what could not be saved is said where every screen says it.
pub fn in_place(screen: Screen, app: &App) -> Screen {
    if matches!(app.notice, Some(Notice::Refused(_))) { screen.says_it() } else { screen }
}

/// What is looked for: a length, a thickness, a width.
pub fn find(app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let just = app.workshop.rack.just;
    let ways = vec![Seg::new(words::OR_THICKER, !just), Seg::new(words::JUST_SO, just)];
    let how = el("div", "one").kid(el("h2", "ink1").text(words::THICK)).kid(even(words::THICK, ways, |nth| say(RackTap::Just(nth == 1))));
    let asked = Asked {
        place: "workshop/rack-find",
        small: workshop::RACK.into(),
        title: words::FIND.into(),
        above: vec![el("p", "i2").text(words::EMPTY_IS_ANY), how],
        slots: vec![Slot::side(words::LONG, units), Slot::side(words::THICK, units), Slot::side(words::WIDE, units)],
        units,
        save: words::SHOW_THEM.into(),
        other: None,
        below: vec![],
        ready: true,
    };
    laid_out(asked, app, seen)
}

/// What is asked of a pile.
pub fn screen((at, ask): (Lying, Ask), app: &App, seen: Seen<'_>) -> Screen {
    let Ok(pile) = stock::pile(&app.shelf().shop(seen.now.at), at) else { return super::pile::screen(at, app, seen) };
    let typed = app.workshop.rack.form.text(0).to_owned();
    let asked = Asked {
        place: "workshop/rack-asked",
        small: name(&pile),
        title: words::HOW_MANY.into(),
        above: vec![worded("p", "i2", size(&pile, seen))],
        slots: vec![Slot::whole(words::HOW_MANY)],
        units: pile.haul.units,
        save: words::SAVE.into(),
        other: None,
        below: vec![],
        ready: true,
    };
    let asked = match ask {
        Ask::Count => counted(asked, &pile, app, seen),
        Ask::Size => sized(asked, at, app),
        Ask::Gone => gone(asked, &pile, app, seen),
        Ask::Place => placed(asked, app, seen),
        Ask::Moisture => damp(asked),
        Ask::Apart => Asked {
            title: words::FOR_WHICH.into(),
            save: words::set_apart_n(&typed),
            other: (!pile.apart.is_empty()).then(|| words::free_n(&typed)),
            ..for_job(asked, &pile, (ask, app), seen)
        },
        Ask::Take => Asked { title: words::FOR_WHICH.into(), save: words::take_n(&typed), ..for_job(asked, &pile, (ask, app), seen) },
    };
    laid_out(asked, app, seen)
}

/// The rack counted here: what the difference would mean stands there before it is written.
///
/// Its place is as high as the longest of it, or the pad would move under the thumb.
fn counted(mut asked: Asked, pile: &StockPile, app: &App, seen: Seen<'_>) -> Asked {
    let n = |n: u32| seen.speech.count(n);
    let typed = reading::count(app.workshop.rack.form.text(0), seen.speech.sign(), PILE_MOST).ok();
    let drift = pile.drift_of(typed.unwrap_or(pile.on_rack));
    let differs = drift.missing.max(drift.more);
    let told = match typed {
        Some(_) => words::drift(drift, [&n(drift.told), &n(drift.found), &n(differs)]),
        None => words::by_the_counts(&n(drift.told)),
    };
    let kept = typed.and_then(|found| kept_apart(pile, found, seen));
    let told = kept.map_or(told.clone(), |kept| format!("{told} {kept}."));
    asked.above = vec![el("p", "w7 drift").attr("role", "status").text(told)];
    asked.below = vec![in_words("why", words::WHY, app)];
    asked.title = words::HOW_MANY_LIE.into();
    asked.slots = vec![Slot::whole(words::FOUND)];
    asked
}

/// Its wood, its name and its sides; what is left empty stays as it was.
fn sized(asked: Asked, at: Lying, app: &App) -> Asked {
    let slots = [words::THICKNESS, words::WIDTH, words::LENGTH, words::LONGEST].map(|side| Slot::side(side, asked.units)).to_vec();
    let below = vec![in_words("name", count::PILE_NAME, app), answer(words::WOOD, wood(app), Choice::PileWood(at))];
    let along = goes_along(at, app).map(|said| worded("p", "i2", said));
    Asked { title: count::EDIT_PILE.into(), above: along.into_iter().listed(), slots, below, ..asked }
}

pub fn in_words(id: &'static str, label: &str, app: &App) -> El<Msg> {
    let value = app.workshop.rack.words.clone();
    field(Field { id, label: label.to_owned(), value, fleeting: true, ..Field::default() }, |text| say(RackTap::Say(text)))
}

fn gone(mut asked: Asked, pile: &StockPile, app: &App, seen: Seen<'_>) -> Asked {
    let to = GONE_TO.iter().enumerate().map(|(nth, to)| Chip::choice(words::gone_to(to), app.workshop.rack.to == nth)).listed();
    asked.above.push(chips("key h56", to, |nth| say(RackTap::To(nth))));
    asked.above.push(numbers(pile.free, pile.free == pile.on_rack, seen));
    asked.title = words::GONE_WHERE.into();
    asked
}

/// So many by one tap: a few, or all there are.
fn numbers(most: u32, all: bool, seen: Seen<'_>) -> El<Msg> {
    let mut counts: Vec<u32> = [1, 5, 10].into_iter().filter(|n| *n < most).listed();
    let mut shown: Vec<Chip> = counts.iter().map(|n| Chip::tap(seen.speech.count(*n))).listed();
    if 0 < most {
        counts.push(most);
        shown.push(Chip::tap(seen.speech.count(most)).under(if all { words::ALL_OF_THEM } else { words::ALL_FREE }));
    }
    bundle_of("key", shown, move |nth| say(RackTap::Number(counts.get(nth).copied().unwrap_or(1))))
}

fn placed(mut asked: Asked, app: &App, seen: Seen<'_>) -> Asked {
    let places: Set<String> = piles(app, seen).into_iter().filter_map(|pile| pile.place).collect();
    let places: Vec<String> = places.iter().cloned().listed();
    asked.above.push(in_words("place", words::PLACE, app));
    if !places.is_empty() {
        let shown = places.iter().map(Chip::tap).listed();
        asked.above.push(el("h2", "ink1").text(words::EARLIER_PLACES));
        asked.above.push(flowing("key h56", shown, move |nth| say(RackTap::Place(places.get(nth).cloned().unwrap_or_default()))));
    }
    Asked { title: words::WHERE_IT_LIES.into(), slots: vec![], ..asked }
}

fn damp(mut asked: Asked) -> Asked {
    asked.above.push(el("p", "i2").text(words::PER_CENT_OF_DRY));
    let slots = vec![Slot::new(words::MOISTURE_KEY, "%")];
    Asked { title: words::MOISTURE_KEY.into(), slots, other: Some(words::PLAINLY_WET.into()), ..asked }
}

/// For one of the jobs in hand; what is set apart for it already stands under its name.
fn for_job(mut asked: Asked, pile: &StockPile, (ask, app): (Ask, &App), seen: Seen<'_>) -> Asked {
    let apart = |job: Id| pile.apart.iter().find(|it| it.job == job).map_or(0, |it| it.n);
    let mut jobs: Vec<(Id, String)> =
        fold::jobs(&app.shelf().book).filter(|job| job.ended.is_none() || 0 < apart(job.id)).map(|job| (job.id, job.name)).listed();
    let known: Vec<Id> = jobs.iter().map(|(job, _)| *job).listed();
    let lost = pile.apart.iter().filter(|it| !known.contains(&it.job));
    jobs.extend(lost.map(|it| (it.job, words::A_GONE_JOB.to_owned())));
    if jobs.is_empty() {
        asked.above.push(el("p", "t22 w8").text(words::NO_JOBS));
        asked.above.push(key("key solid h88", words::TO_JOBS, "", Msg::Go(Place::Jobs)));
        return Asked { slots: vec![], ready: false, ..asked };
    }
    let chosen = app.workshop.rack.job;
    let shown = jobs.iter().map(|(job, name)| {
        let chip = Chip::choice(name.clone(), chosen == Some(*job));
        if 0 < apart(*job) { chip.under(words::has_apart(&seen.speech.count(apart(*job)))) } else { chip }
    });
    let keys = flowing("key h56", shown.listed(), {
        let jobs = jobs.clone();
        move |nth| say(jobs.get(nth).map_or(RackTap::At(0), |(job, _)| RackTap::Job(*job)))
    });
    asked.above.push(keys);
    let own = chosen.map_or(0, apart);
    let most = if ask == Ask::Take { pile.free.saturating_add(own) } else { pile.free };
    asked.above.push(numbers(most, most == pile.on_rack, seen));
    // What all is set apart for others is none to take.
    let none = ask == Ask::Take && chosen.is_some() && most == 0;
    asked.above.extend(none.then(|| el("p", "w7").text(upper_first(words::NONE_FREE) + ".")));
    asked.above.extend((chosen.is_none()).then(|| el("p", "i2").text(words::CHOOSE_A_JOB)));
    Asked { ready: chosen.is_some() && !none, ..asked }
}
