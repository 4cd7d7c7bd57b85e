//! Pay and hours: what of an offer goes out, what you get, and what is left for an hour.

use super::super::jobs::lacking;
use super::list::{bargain, guessed, haul_in_question, how_paid, in_question};
use super::more::{settle, tag_word};
use super::offer::{delivery, driven, next_sale, said_back, tax, waiting_key, waits};
use super::{Screen, Seen, back, bare, exact, fact, per_hour, strong};
use crate::app::price::agree::AgreeTap;
use crate::app::price::bargain::BargainTap;
use crate::app::price::tag::{TagTap, What};
use crate::app::price::{Tap, sheet as list, shop};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::{figure_key, key};
use crate::screens::jobs::called;
use crate::screens::jobs::estimate::unnoted;
use crate::view::{El, el};
use crate::words::en::{deal as deals, price as words, waiting};
use fivebar_core::ledger::kind::sale::Carried;
use fivebar_core::quantity::{Listed, Money, Wall};
use fivebar_core::sheet::offer::{Ask, Concession, Leaves, OfferSheet};

/// The room behind the offer. No figure in it is larger than a list's.
pub fn screen(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(called(sheet.job, &sheet.name, app, seen), words::PAY_AND_HOURS).with_key(key(
        "key h48",
        if sheet.standing.agreed.is_some() { words::ANOTHER_SUM } else { words::BACK_TO_OFFER },
        "",
        bargain(BargainTap::PayAndHours),
    ));
    let left = sheet.left.or(sheet.agreed);
    let main = el("main", "two price pay")
        .kid(
            el("div", "col")
                .kid(money(sheet, left, seen))
                .kids(hours(sheet, left, seen))
                .kids(left.and(sheet.fees_lost).map(|lost| el("p", "t14 i2").text(words::fees_lost(&exact(lost, seen.speech)))))
                .kids(left.and_then(|_| delivered(sheet, seen)).map(|said| el("p", "t14 i2").text(said)))
                .kids(left.and_then(|_| driven(sheet, seen)).map(|said| el("p", "t14 i2").text(said)))
                .kids(guessed(sheet.by_any, seen))
                .kids(unnoted(&sheet.unnoted))
                .kids(in_question((sheet.unsettled, sheet.unsettled_pay, sheet.ended), seen))
                .kids(haul_in_question(sheet.hauls_unsettled, seen))
                .kids(sheet.lacking.as_ref().map(lacking))
                .kids(now_or_later(sheet, app, seen))
                .kids(untaxed(sheet, app))
                .kids(sheet.standing.agreed.is_none().then(|| tax(sheet, app, seen)).into_iter().flatten()),
        )
        .kid(
            el("div", "col")
                .kids(instead(sheet, seen))
                .kids(said_back(sheet, seen))
                .kids(set(sheet, app, seen))
                .kids(waits(sheet, app).then(|| waiting_key(sheet.job)))
                .kids(heard(sheet, app, seen))
                .kids(agree(sheet))
                .kid(if sheet.standing.agreed.is_some() { to_agreed() } else { back() }),
        );
    Screen::new("price/pay", head(top), main)
}

/// What was agreed lies below, not the list.
fn to_agreed() -> El<Msg> {
    key("key h48", words::BACK_TO_AGREED, "", Msg::Price(Tap::Close))
}

fn money(sheet: &OfferSheet, left: Option<Leaves>, seen: Seen<'_>) -> El<Msg> {
    let handed = sheet.parts.map(|parts| parts.handed).or(sheet.named);
    let out = |sum: Money| format!("−{}", exact(sum, seen.speech));
    let row = |what: &str, sum: Option<Money>| sum.map(|sum| fact(what, exact(sum, seen.speech)));
    let taken = |what: &str, sum: Option<Money>| sum.filter(|sum| !sum.is_zero()).map(|sum| fact(what, out(sum)));
    let get = sheet.parts.map(|parts| parts.you_get).or(left.map(|left| left.way.you_get));
    let rows = [
        row(words::HANDED_OVER, handed),
        taken(words::TAX, sheet.parts.map(|parts| parts.tax)),
        taken(words::FEE, sheet.parts.map(|parts| parts.fee)),
        get.map(|get| strong(words::YOU_GET, exact(get, seen.speech))),
        taken(words::COSTS, left.map(|left| left.way.costs)),
        left.map(|left| strong(words::LEFT, exact(left.left, seen.speech))),
    ];
    el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows.into_iter().flatten())))
}

fn hours(sheet: &OfferSheet, left: Option<Leaves>, seen: Seen<'_>) -> Vec<El<Msg>> {
    // Where nothing was planned the maker alone knows that it is made.
    let made = || key("key h56", words::IT_IS_MADE, words::IT_IS_MADE_UNDER, bargain(BargainTap::Made));
    let Some(left) = left else {
        let unknown = el("p", "").text(words::PAY_UNKNOWN);
        return [unknown].into_iter().chain(sheet.standing.at_least.then(made)).listed();
    };
    let an_hour = |amount| per_hour(amount, left.left, seen.speech);
    let rows = [
        Some(fact(words::TIME, seen.speech.span(left.way.time))),
        Some(strong(words::PER_HOUR, an_hour(left.per_hour.left))),
        left.per_hour.after_workshop.map(|amount| fact(words::AFTER_WORKSHOP, an_hour(amount))),
        left.per_hour.every_hour.map(|amount| fact(words::EVERY_HOUR, an_hour(amount))),
    ];
    let said = match sheet.standing.at_least {
        true => words::HOURS_SO_FAR_ONLY,
        false if sheet.all_worked => words::ALL_WORKED,
        false => words::WITH_TO_COME,
    };
    let table = el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows.into_iter().flatten())));
    [table, el("p", "t14 i2").text(said)].into_iter().chain(sheet.standing.at_least.then(made)).listed()
}

/// The offer for one, beside what waiting may bring instead; none before an offer, and where waiting was not guessed.
fn now_or_later(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let offer = sheet.offer.filter(|_| sheet.asking.n == 1 && sheet.standing.agreed.is_none())?;
    let later = next_sale(sheet, app)?;
    let said = waiting::now_or_later(&bare(offer, seen.speech), &bare(later.sum, seen.speech), (sheet.free, later.none));
    Some(el("p", "").text(said))
}

/// What a delivery adds, where the maker brings it; that it falls away where it is fetched.
fn delivered(sheet: &OfferSheet, seen: Seen<'_>) -> Option<String> {
    match (sheet.asking.carried, sheet.delivery) {
        (Carried::Delivered, _) => delivery(sheet, seen),
        (Carried::Fetched, Some(_)) => Some(words::DELIVERY_LEFT_OUT.to_owned()),
        (Carried::Fetched, None) => None,
    }
}

/// Nobody said how one is paid: that counts as none, and it is said.
fn untaxed(sheet: &OfferSheet, app: &App) -> Vec<El<Msg>> {
    let is_set = shop(app).workshop.tills.contains_key(&sheet.currency);
    if is_set { vec![] } else { vec![el("p", "t14").text(words::NO_TAX_NO_FEE), how_paid()] }
}

/// What can be said in place of a better price, the best first; nothing once a price is agreed.
fn instead(sheet: &OfferSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    if sheet.concessions.is_empty() || sheet.standing.agreed.is_some() {
        return vec![];
    }
    let word = |one: &Concession| {
        let sum = bare(one.sum, seen.speech);
        if let Ask::Together(n) = one.ask { words::together((n, &seen.speech.count(n)), &sum) } else { words::instead(one.ask, &sum) }
    };
    let figure = |one: &Concession| {
        let an_hour = per_hour(one.leaves.per_hour.left, one.more, seen.speech);
        if one.ask == Ask::Later {
            words::SAME_AND_TIME.to_owned()
        } else {
            words::more_and_an_hour(&exact(one.more, seen.speech), &an_hour)
        }
    };
    let rows = sheet.concessions.iter().map(|one| fact(&word(one), figure(one)));
    let table = el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows)));
    let one_more = sheet.concessions.iter().any(|one| one.ask == Ask::OneMore);
    let under = one_more.then(|| el("p", "t14 i2").text(words::ONE_MORE_UNDER));
    let more = sheet.concessions.iter().any(|one| one.ask != Ask::Later);
    let against = more.then(|| el("p", "t14 i2").text(words::MORE_LEFT_UNDER));
    vec![el("h2", "").text(words::INSTEAD), table].into_iter().chain(against).chain(under).listed()
}

/// Tag and settle are of one piece, however many are asked about.
fn set(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let shown = |sum: Option<Money>| sum.map_or_else(|| words::NOT_SAID.to_owned(), |sum| bare(sum, seen.speech));
    let open = |what| Msg::Price(Tap::Tag(TagTap::Open(sheet.job, what)));
    let of_one = || list(app).ok()?.for_sale.into_iter().find(|row| row.job == sheet.job)?.settle;
    let worked_out = if sheet.asking.n == 1 { sheet.settle } else { of_one() };
    let (settle, sum) = settle([sheet.settle_set, worked_out], sheet.is_on_top);
    vec![
        el("div", "g2")
            .kid(figure_key(tag_word(1 < sheet.free.max(sheet.asking.n), sheet.is_on_top), shown(sheet.tag), open(What::Tag)))
            .kid(figure_key(settle, shown(sum), open(What::Settle))),
    ]
}

/// What was offered so far, the newest first.
fn heard(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let offers = shop(app).job(sheet.job).map(|job| job.selling.offers).unwrap_or_default();
    if offers.is_empty() {
        return vec![];
    }
    let rows = offers.iter().rev().take(SHOWN).map(|offer| {
        let day = seen.speech.day(Wall::new(offer.at, seen.now.offset));
        fact(&day, words::heard(&bare(offer.sum, seen.speech), offer.n, &seen.speech.count(offer.n)))
    });
    let table = el("table", "facts").kid(el("tbody", "").kids(rows));
    vec![el("h2", "").text(words::OFFERS_HEARD), el("section", "card tap").kid(table)]
}

/// As many offers as are shown.
const SHOWN: usize = 6;

fn agree(sheet: &OfferSheet) -> Option<El<Msg>> {
    let agree = Msg::Price(Tap::Agree(AgreeTap::Open(sheet.job, sheet.offer)));
    (0 < sheet.free).then(|| key("key h56", deals::AGREE, deals::AGREE_UNDER, agree))
}
