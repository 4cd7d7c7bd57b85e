//! What is still to come of a job: what of a batch is unsold, on the shelf and at galleries, what an hour has if it goes, and the fees of what is due.

use super::super::Seen;
use super::figures::{line, short, sum};
use crate::app::price::paid;
use crate::app::{App, Msg};
use crate::view::El;
use crate::words::en::{jobs as words, price};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Count, Decimal, Listed, Money};
use fivebar_core::sheet::account::Sold;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::rest::Rest;

/// What an hour has with so many unsold, some of them at galleries.
pub fn unsold(free: Count, there: Count, seen: Seen<'_>) -> String {
    let all = seen.speech.count(free.saturating_add(there));
    match (free, there) {
        (_, 0) => words::rest_unsold(&all),
        (0, _) => words::rest_at_gallery(&all),
        _ => words::rest_some_at_gallery(&all, &seen.speech.count(there)),
    }
}

/// Of a job that is done with, what is left if nothing more is sold of it.
pub fn at_nothing(sold: &Sold, seen: Seen<'_>) -> Option<El<Msg>> {
    let (unsold, left) = sold.at_nothing()?;
    Some(line(words::at_nothing(&seen.speech.count(unsold)), sum(left, seen)))
}

/// How what is still to come of an open order is paid, where that bears a fee.
pub fn fee_by(sheet: &JobSheet, app: &App) -> Option<Paid> {
    let shop = app.shelf().shop(app.now.at);
    let paid = shop.paid_known(&shop.job(sheet.job).ok()?, Some(sheet.selling.open().next()?.id))?;
    let fee = shop.till(sheet.account.currency).fee_of(paid).of(sheet.account.sold.due).ok()?;
    (Decimal::ZERO < fee.amount()).then_some(paid)
}

/// What is due, in the order it comes in: what is owed now of pieces that were handed over, what a deposit lacks, then the rest. Together they are all of
/// it.
pub fn dues(sheet: &JobSheet) -> Vec<(&'static str, Money)> {
    let (owed, currency) = (sheet.sale.owed, sheet.account.currency);
    let at_hand_over = sheet.selling.open().next().is_some_and(|agreement| agreement.parts.is_empty());
    let is_due = |sum: &Money| Decimal::ZERO < sum.amount();
    let deposit = sheet.selling.deposits_due(currency).unwrap_or(Money::zero(currency));
    let first = [(words::OWED_NOW, owed.before), (words::DEPOSIT_DUE, deposit)].into_iter().filter(|(_, sum)| is_due(sum)).listed();
    let rest = first.iter().try_fold(owed.due, |rest, (_, sum)| rest.minus(*sum)).unwrap_or(owed.due);
    let word = match (first.is_empty(), at_hand_over) {
        (true, true) => words::DUE_AT_HAND_OVER,
        (true, false) => words::STILL_DUE,
        (false, true) => words::THEN_AT_HAND_OVER,
        (false, false) => words::THEN_STILL_DUE,
    };
    first.into_iter().chain(Some((word, rest)).filter(|(_, sum)| is_due(sum))).listed()
}

/// The fees of what is due: still to come off what is so far, and in what is at last.
pub fn fees_to_come(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (by, fees) = (fee_by(sheet, app).map(price::by), sheet.money.fees_to_come);
    (!fees.is_zero()).then(|| line(words::fees_to_come(by), format!("\u{2212}{}", sum(fees, seen))))
}

/// At what they would go: those on the shelf at what is asked, those at galleries for what is handed over by their share.
pub fn if_go(rest: &Rest, app: &App, seen: Seen<'_>) -> String {
    let free = words::if_rest_go((rest.n, &seen.speech.count(rest.n)), &short(rest.each, seen), price::by(paid(app)));
    let count = seen.speech.count(rest.at_galleries);
    let there = words::gallery_pays((rest.at_galleries, &count), &short(rest.from_galleries, seen), rest.at_several);
    match (rest.n, rest.at_galleries) {
        (_, 0) => free,
        (0, _) => words::if_gallery(&there),
        _ => words::and_gallery(&free, &there),
    }
}
