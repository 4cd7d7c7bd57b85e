//! Go or skip: what a supplier's past says, in one line or in a block.

use super::Seen;
use crate::app::{App, Msg};
use crate::parts::verdict::{Sign, verdict};
use crate::view::{El, el};
use crate::words::en::{common, count, supplier as words};
use fivebar_core::haul::go::{Decides, Outlook, TRIPS_FOR_RANKS, Verdict};
use fivebar_core::quantity::{Count, Decimal, Id, Listed, Money, half_up};
use fivebar_core::sheet::supplier::{Prospect, SupplierSheet, supplier};

/// What the past of a supplier says; the named haul is no part of it.
pub fn sheet(app: &App, id: Id, in_hand: Option<Id>) -> Option<SupplierSheet> {
    let shop = app.shelf().shop(app.now.at);
    supplier(&shop, id, in_hand).ok()
}

/// Whether to go, in a word, and why, as a clause without a stop.
struct Said {
    sign: Option<Sign>,
    word: &'static str,
    why: String,
}

/// One line: "Go: 3 trips left between $4 and $31".
pub fn line(app: &App, id: Id, (in_hand, seen): (Option<Id>, Seen<'_>)) -> String {
    let Some(sheet) = sheet(app, id, in_hand) else { return words::NOT_KNOWN.to_owned() };
    let said = said(&sheet.prospect, seen);
    if said.sign.is_some() { words::short(said.word, &said.why) } else { said.why }
}

/// The verdict, and all that is behind it.
pub fn block(sheet: &SupplierSheet, seen: Seen<'_>) -> El<Msg> {
    let said = said(&sheet.prospect, seen);
    let block = el("section", "card hot prospect");
    let Prospect::Known(outlook) = &sheet.prospect else {
        return block.kid(el("p", "w8").text(said.why)).kids(caveats(sheet, 0, seen));
    };
    let Some(sign) = said.sign else {
        return block.kid(el("p", "t22 w8").text(said.word)).kid(el("p", "").text(said.why)).kids(caveats(sheet, 0, seen));
    };
    let mean = (1 < outlook.trips).then(|| words::mean(&whole(outlook.mean, seen)));
    let other = if outlook.verdict == Verdict::Skip { range(outlook, seen) } else { decides(outlook, seen) };
    let rest = mean.into_iter().chain([words::sentence(&other)]).map(|line| el("p", "t14").text(line));
    let caveats = caveats(sheet, outlook.left_out, seen);
    block.kid(verdict(sign, said.word, words::sentence(&said.why))).kids(rest).kids(caveats)
}

fn said(prospect: &Prospect, seen: Seen<'_>) -> Said {
    let plain = |why: &str| Said { sign: None, word: words::NOT_KNOWN, why: why.to_owned() };
    match prospect {
        Prospect::NoHistory => plain(words::NO_HISTORY),
        Prospect::PayMissing => plain(words::PAY_MISSING),
        Prospect::MileageMissing => plain(words::MILEAGE_MISSING),
        Prospect::Known(outlook) => known(outlook, seen),
    }
}

/// Where most of the wood has no price, only a trip that pays all the same is told apart.
fn known(outlook: &Outlook, seen: Seen<'_>) -> Said {
    let (sign, word, why) = match (outlook.verdict, outlook.decides) {
        (Verdict::Go, _) => (Some(Sign::Yes), words::GO, range(outlook, seen)),
        (_, Decides::NoPrice(_)) => (None, words::NOT_KNOWN, decides(outlook, seen)),
        (Verdict::Skip, _) => (Some(Sign::No), words::SKIP, decides(outlook, seen)),
        (Verdict::YourCall, _) => (Some(Sign::Close), words::YOUR_CALL, range(outlook, seen)),
    };
    Said { sign, word, why }
}

fn range(outlook: &Outlook, seen: Seen<'_>) -> String {
    let (low, high) = (whole(outlook.low, seen), whole(outlook.high, seen));
    let trips = seen.speech.count(outlook.trips);
    match (outlook.trips, low == high) {
        (1, _) => words::one_trip(&low),
        (..TRIPS_FOR_RANKS, true) => words::alike(&trips, &low),
        (..TRIPS_FOR_RANKS, false) => words::between(&trips, &low, &high),
        (_, true) => words::most_alike(&trips, &low),
        (_, false) => words::most_between(&trips, &low, &high),
    }
}

fn decides(outlook: &Outlook, seen: Seen<'_>) -> String {
    match outlook.decides {
        Decides::Minutes(sum) => words::minutes(&whole(sum, seen)),
        Decides::Distance(sum) => words::distance(&whole(sum, seen)),
        Decides::Gift(sum) => words::gift(&whole(sum, seen)),
        Decides::Rejects(sum) => words::rejects(&whole(sum, seen)),
        Decides::NoPrice(share) => words::no_price(&percent(share, seen)),
    }
}

/// A sum in whole units; one below a unit as it is, so that a loss is never shown as nothing.
fn whole(sum: Money, seen: Seen<'_>) -> String {
    let rounded = half_up(sum.amount(), 0);
    let shown = if rounded.is_zero() { Ok(sum) } else { Money::book(rounded, sum.currency()) };
    seen.speech.short_money(shown.unwrap_or(sum))
}

/// "25 %".
pub fn percent(share: Decimal, seen: Seen<'_>) -> String {
    count::percent(&seen.speech.number(share.saturating_mul(Decimal::ONE_HUNDRED), 0, 0))
}

/// What is in no figure, or only in part.
fn caveats(sheet: &SupplierSheet, left_out: Count, seen: Seen<'_>) -> Vec<El<Msg>> {
    let written = |n: Count| seen.speech.count(n);
    let lines = [
        (0 < left_out).then(|| words::left_out(left_out, &common::pieces(left_out, &written(left_out)))),
        (0 < sheet.unpriced).then(|| words::unpriced(sheet.unpriced, &written(sheet.unpriced))),
        (0 < sheet.half_said).then(|| words::half_said(sheet.half_said, &written(sheet.half_said))),
    ];
    lines.into_iter().flatten().map(|line| el("p", "t14 i2").text(line)).listed()
}
