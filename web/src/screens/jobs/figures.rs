//! How the figures of a job are said: sums without their mark, so-far bars, ways of paying.

use super::super::Seen;
use crate::app::Msg;
use crate::parts::fraction::worded;
use crate::parts::ink::Text;
use crate::parts::so_far::Stretch;
use crate::view::{El, el};
use crate::words::en::{common, count, job as room, jobs as words, woods};
use fivebar_core::ledger::kind::bench::Stage;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::quantity::{Currency, Decimal, Listed, Moment, Money, Span, Units, Volume, Wall};
use fivebar_core::sheet::carried::Lacking;
use fivebar_core::sheet::job::JobSheet;

/// So many steps are a list that is scrolled: what all of it comes to stands before it, not below (ours).
const SCROLLED: usize = 6;

/// Whether what all steps come to stands before them.
pub fn is_scrolled(steps: usize) -> bool {
    SCROLLED < steps
}

/// What of some hours the maker has not answered for.
pub fn to_settle(open: Span, class: &'static str, seen: Seen<'_>) -> Option<El<Msg>> {
    (Span::ZERO < open).then(|| el("p", class).text(room::to_settle(&seen.speech.span(open))))
}

/// What of a job that goes on the maker has not answered for, beside figures that leave it out: what it will likely take, and its quote.
pub fn left_out(sheet: &JobSheet, class: &'static str, seen: Seen<'_>) -> Option<El<Msg>> {
    let open = sheet.account.not_counted();
    (Span::ZERO < open).then(|| el("p", class).text(room::beside_these(&seen.speech.span(open))))
}

/// Hours so far that stand, and apart from them those the maker has not answered for.
pub fn hours_so_far(stands: Span, open: Span, seen: Seen<'_>) -> String {
    let both = Span::in_minutes(&[stands, open]).into_iter().map(|span| seen.speech.span(span)).listed();
    match both.as_slice() {
        [stands, open_of] if Span::ZERO < open => words::of_it_to_settle(stands, open_of),
        _ => seen.speech.span(stands),
    }
}

/// The same of a job; none where nothing was worked.
pub fn hours_of(sheet: &JobSheet, seen: Seen<'_>) -> Option<String> {
    let (hours, open) = (&sheet.account.hours, sheet.account.not_counted());
    hours.so_far().map(|stands| hours_so_far(stands, open, seen))
}

/// What was spent so far, and apart from it the pay of who worked along in hours the maker has not answered for.
pub fn spent_so_far(sheet: &JobSheet, seen: Seen<'_>) -> Option<String> {
    apart((sheet.money.costs, sheet.account.costs.unsettled), seen)
}

/// A sum, and apart from it what is to settle of the pay.
pub fn apart((sums, open): (Option<Money>, Money), seen: Seen<'_>) -> Option<String> {
    if open.is_zero() {
        return sums.map(|sums| sum(sums, seen));
    }
    let open = sum(open, seen);
    // What is not known is never nothing.
    Some(sums.map_or_else(|| words::all_to_settle(&open), |sums| words::of_it_to_settle(&sum(sums, seen), &open)))
}

/// A sum without its mark, to the minor unit: 276.00.
pub fn sum(sum: Money, seen: Seen<'_>) -> String {
    let digits = u8::try_from(sum.currency().digits()).unwrap_or(2);
    seen.speech.number(sum.amount(), digits, digits)
}

/// A sum without its mark and without needless decimals: 276, 12.50.
pub fn short(money: Money, seen: Seen<'_>) -> String {
    if money.amount().fract().is_zero() { seen.speech.number(money.amount(), 0, 0) } else { sum(money, seen) }
}

/// Money for an hour: 12.74.
pub fn hourly(rate: Decimal, currency: Currency, seen: Seen<'_>) -> String {
    let digits = u8::try_from(currency.digits()).unwrap_or(2);
    seen.speech.number(rate, digits, digits)
}

/// A share in percent with at most one decimal.
pub fn percent(share: Decimal, seen: Seen<'_>) -> String {
    seen.speech.number(share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default(), 0, 1)
}

/// A volume with its unit.
pub fn volume(volume: Volume, units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.volume(volume, units), common::volume_unit(units))
}

/// The day of a moment, where the maker is now.
pub fn day(at: Moment, seen: Seen<'_>) -> String {
    seen.speech.day(Wall::new(at, seen.now.offset))
}

pub fn paid(paid: Paid) -> &'static str {
    match paid {
        Paid::Notes => room::NOTES,
        Paid::Card => room::CARD,
        Paid::Bank => room::BANK,
    }
}

/// Before the hand-over.
pub fn to_be_carried(carried: Carried) -> &'static str {
    match carried {
        Carried::Delivered => words::TO_BE_DELIVERED,
        Carried::Fetched => words::TO_BE_FETCHED,
    }
}

pub fn carried(carried: Carried) -> &'static str {
    match carried {
        Carried::Delivered => words::DELIVERED,
        Carried::Fetched => words::FETCHED,
    }
}

/// A job's life on one bar: what is done, then what is still to come, stage by stage.
pub fn stretches(so_far: &[(Stage, Span)], to_come: &[(Stage, Span)], seen: Seen<'_>) -> Vec<Stretch> {
    let minutes = Span::in_minutes(&so_far.iter().map(|(_, span)| *span).listed());
    let so_far = so_far.iter().zip(minutes).map(|((stage, _), span)| (*stage, span)).listed();
    let stages = [Stage::Fetch, Stage::Sort, Stage::Make, Stage::Finish, Stage::Sell, Stage::Deliver];
    let of = |spans: &[(Stage, Span)], stage| spans.iter().find(|(at, span)| *at == stage && Span::ZERO < *span).map(|(_, span)| *span);
    let mut all = vec![];
    for stage in stages {
        let done = of(&so_far, stage);
        all.extend(done.map(|span| stretch(words::stage(stage).to_owned(), span, true, seen)));
        let word = if done.is_some() { words::stage_on(stage) } else { words::stage(stage).to_owned() };
        all.extend(of(to_come, stage).map(|span| stretch(word, span, false, seen)));
    }
    all
}

fn stretch(word: String, span: Span, done: bool, seen: Seen<'_>) -> Stretch {
    Stretch { word, figure: seen.speech.span(span), long: span.as_ms() as f64 / 60_000.0, done }
}

/// The bar in words, for who hears it: "fetch 48 min, make 12 h 34".
pub fn bar_said(stretches: &[Stretch]) -> String {
    let said = |stretch: &Stretch| {
        let come = if stretch.done { String::new() } else { format!(" {}", words::TO_COME) };
        format!("{} {}{come}", stretch.word, stretch.figure)
    };
    stretches.iter().map(said).listed().join(", ")
}

/// What keeps the share of a haul unknown: a pile without a size, by its name, or a drive without a rate.
pub fn lacking(what: &Lacking) -> El<Msg> {
    let Lacking::Size(pile) = what else { return el("p", "t14").text(room::DRIVE_UNPRICED) };
    let name = match (&pile.name, &pile.wood) {
        (Some(name), _) => format!("{name} ({})", pile.label),
        (None, Some(wood)) => format!("{} ({})", woods::called(wood, pile.own.as_deref()), pile.label),
        (None, None) => count::pile(&pile.label),
    };
    el("p", "t14").text(words::no_size(&name))
}

/// A word on the left and its figure on the right.
pub fn line(left: impl Into<Text>, right: impl Into<Text>) -> El<Msg> {
    el("p", "row mr").kid(worded("span", "", left)).kid(worded("span", "w8", right))
}

/// The same, quieter.
pub fn small(left: impl Into<Text>, right: impl Into<Text>) -> El<Msg> {
    el("p", "row").kid(worded("span", "t14 i2", left)).kid(worded("span", "t14", right))
}
