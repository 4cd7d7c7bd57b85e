//! What a plan is reckoned with, and what of its wood nobody has looked at yet.

use super::super::Seen;
use super::ends::saw_page;
use super::percent;
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, plan, reckoned as words};
use fivebar_core::quantity::{Count, Length, Listed};
use fivebar_core::sheet::make::cut::lines_left;
use fivebar_core::sheet::make::{Given, bears, places};
use fivebar_core::sheet::outlook::{Unsorted, not_sorted};
use fivebar_core::sheet::plan::PlanSheet;

/// The saw's figures it goes by, with the way to them; on paper the figures alone.
pub fn figures(given: &Given, seen: Seen<'_>) -> [El<Msg>; 2] {
    let mut all = given.ready.figures.clone();
    let machine = Some(all.machines.plane).filter(|least| Length::ZERO < *least).map(|least| seen.speech.length(least, given.units));
    let lengths = places(&mut all).map(|length| seen.speech.length(*length, given.units));
    let named = bears(given.ask.what.shape()).iter().filter_map(|nth| plan::SAW_FIGURES.get(*nth).zip(lengths.get(*nth)));
    let named = named.map(|(name, length)| words::figure_of(name, length)).chain(machine.map(|least| words::machines_from(&least)));
    let said = words::reckoned_with(&named.listed(), common::length_unit(given.units));
    let way = el("div", "no-print").kid(key("key soft h56 wide left", plan::SAW, said.clone(), saw_page()));
    [worded("p", "t14 print-only", said), way]
}

/// That pieces it takes are not sorted yet, and how many of them are likely good; of a plan that is used, of its boards that are not cut.
/// Before that, where it takes more than are likely good.
pub fn unsorted((given, sheet): (&Given, &PlanSheet), is_used: bool, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if is_used && lines_left(sheet, &app.plan.ticked) == 0 {
        return vec![];
    }
    let ticks = is_used.then_some(&app.plan.ticked);
    let all = not_sorted(&app.shelf().shop(seen.now.at), (given, sheet), ticks).unwrap_or_default();
    if all.is_empty() {
        return vec![];
    }
    let letters = |of: &[usize]| of.iter().filter_map(|nth| given.ready.sources.get(*nth)).map(|it| it.letter.clone()).listed();
    let n = |n: Count| seen.speech.count(n);
    // Of one or two four times in five is none, though more are good than not: their share of rejects is told instead.
    let few = |it: &&Unsorted| it.likely == 0;
    let share = |it: &Unsorted| words::few_not_sorted(&letters(&it.sources), (&n(it.n), it.n == 1), &percent(it.rejects.round_dp(2), seen));
    let shares = all.iter().filter(few).map(share).listed();
    let all = all.iter().filter(|it| !few(it)).listed();
    let one = |it: &Unsorted| words::likely_good(&letters(&it.sources), &n(it.likely), &n(it.n));
    let more = |it: &Unsorted| {
        let lacks = it.lacks.as_ref().filter(|_| !is_used)?;
        Some(words::takes_more_than_likely(&letters(&lacks.sources), &n(lacks.takes), [&n(lacks.good), &n(lacks.n())]))
    };
    let counted = if is_used || sheet.short.is_empty() { "" } else { words::ALL_AS_GOOD };
    let likely = (!all.is_empty()).then(|| words::not_sorted(&all.iter().map(|it| one(it)).listed()));
    let mut said = shares.into_iter().chain(likely).listed();
    said.extend((!counted.is_empty()).then(|| counted.to_owned()));
    let more = all.iter().filter_map(|it| more(it)).map(|line| worded("p", "w7", line)).listed();
    std::iter::once(worded("p", "notice", said.join(" "))).chain(more).listed()
}
