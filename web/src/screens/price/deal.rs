//! What was agreed answers first: how much, what is due, and how it comes in. Also what was sold and not paid.

use super::gallery::named;
use super::{Screen, Seen, back, bare, exact, fact, typing};
use crate::app::price::agree::{AgreeTap, who};
use crate::app::price::deal::{Deal, DealTap, agreed, gallery_owes, owed};
use crate::app::price::parts::PartsTap;
use crate::app::price::{Tap, in_coins, shop};
use crate::app::{App, Msg, taxes};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, even};
use crate::parts::verdict::{Sign, verdict};
use crate::screens::jobs::{by_coin, called};
use crate::view::{El, el};
use crate::words::en::{common, deal as words, job, jobs, price, waiting};
use fivebar_core::ledger::decide::PaidOf;
use fivebar_core::ledger::fold::PartOfPay;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::price::{AgreedRow, GalleryOwes, OwedRow};
use fivebar_core::sheet::promised::{Parts, at_hand_over};

fn say(tap: DealTap) -> Msg {
    Msg::Price(Tap::Deal(tap))
}

/// The deal as it stands; none where it is done or no longer there.
pub fn screen(deal: &Deal, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = shop(app).job(deal.job).ok()?;
    if let Some(typed) = &deal.pad {
        let main = el("main", "price")
            .kids((!matches!(deal.of, PaidOf::Gallery(_))).then(|| how(deal)))
            .kids(typing(words::HOW_MUCH_CAME, typed, job.currency.code(), seen))
            .kid(done_key("key solid h88", common::DONE, "", say(DealTap::PadDone)))
            .kid(key("key h48", common::NOT_NOW, "", say(DealTap::PadAway)));
        return Some(Screen::new("price/deal/pad", head(Head::new("", called(deal.job, &job.name, app, seen))), main));
    }
    match agreed(app, deal) {
        Some(row) => {
            let parts = job.selling.agreement(row.agreed).and_then(|agreed| at_hand_over(&shop(app), (&job, agreed), deal.paid).ok());
            Some(of_agreed((deal, &row), (app, parts), seen))
        }
        None if let Some(row) = gallery_owes(app, deal) => Some(of_gallery(&row, app, seen)),
        None => owed(app, deal).map(|row| of_owed(deal, (&row, in_coins(app, deal.paid, row.due)), seen)),
    }
}

fn of_agreed((deal, row): (&Deal, &AgreedRow), (app, parts): (&App, Option<Parts>), seen: Seen<'_>) -> Screen {
    // Of a job that has more to sell that page is about what is free.
    let pay = || key("key h48", price::PAY_AND_HOURS, "", Msg::Price(Tap::Offer(row.job)));
    let top = Head::new(price::agreed_carried(row.carried), called(row.job, &row.name, app, seen));
    let top = if row.is_all { top.with_key(pay()) } else { top };
    let due = if row.still.is_zero() { price::NOTHING_DUE.to_owned() } else { price::is_due(&bare(row.still, seen.speech)) };
    let main = el("main", "price")
        .kid(verdict(Sign::Yes, price::agreed(&bare(row.price, seen.speech)), due))
        .kid(facts(row, (who(app, row.buyer), parts), seen))
        .kids(row.to_plan_anew.then(|| el("p", "t14 i2").text(words::PLANNED_ANEW)))
        .kid(el("div", "push"))
        .kid(how(deal))
        .kids(pay_keys(row, (price::by(deal.paid), |sum| in_coins(app, deal.paid, sum)), seen))
        .kid(
            el("div", "g2")
                .kid(key("key", words::CHANGE, "", Msg::Price(Tap::Agree(AgreeTap::Change(row.job, row.agreed, None)))))
                .kid(key("key", words::OTHER_SUM, "", say(DealTap::Pad))),
        )
        .kid(key("key", words::IN_PARTS, "", Msg::Price(Tap::Parts(PartsTap::Open(row.job, row.agreed)))))
        .kids(nothing(row, is_taxed(row, app), seen))
        .kid(back());
    Screen::new("price/deal", head(top), main)
}

fn facts(row: &AgreedRow, (who, parts): (Option<String>, Option<Parts>), seen: Seen<'_>) -> El<Msg> {
    let who = who.map(|who| fact(words::FOR_WHOM, who));
    let by = row.date.map(|date| fact(words::BY_WHEN, seen.speech.day(date)));
    // Where parts are planned they say what comes ahead.
    let asked = row.deposit.filter(|_| !row.deposit_due.is_zero());
    let asked = asked.map(|deposit| fact(words::DEPOSIT, exact(deposit, seen.speech)));
    let is_begun = row.n < row.of;
    let many = match is_begun {
        true => Some(fact(words::HANDED_OVER, words::of_all(&seen.speech.count(row.of.saturating_sub(row.n)), &seen.speech.count(row.of)))),
        false => (1 < row.n).then(|| fact(price::HOW_MANY, seen.speech.count(row.n))),
    };
    let is_deposit = row.deposit.is_some() && row.parts.is_empty() && row.is_all_under() && !is_begun;
    // What is in the till, and beside it what the coins made of it.
    let came = fact(price::came_in(is_deposit), exact(row.received, seen.speech));
    let of_before = (!row.before_change.is_zero()).then(|| fact(jobs::BEFORE_CHANGE, exact(row.before_change, seen.speech)));
    let off = (!row.given_off.is_zero()).then(|| fact(jobs::OFF_THE_PRICE, exact(row.given_off, seen.speech)));
    let rounded = by_coin(row.rounded).map(|(said, off)| fact(said, exact(off, seen.speech)));
    let before = (!row.before.is_zero()).then(|| fact(words::OWED_BEFORE, exact(row.before, seen.speech)));
    let due = fact(price::DUE_ROW, exact(row.still, seen.speech));
    el("section", "card tap").kid(
        el("table", "facts").kid(
            el("tbody", "")
                .kids(who)
                .kids(many)
                .kids(by)
                .kids(asked)
                .kids(parts_of(row, seen))
                .kids(of_before)
                .kids(off)
                .kid(came)
                .kids(rounded)
                .kids(before)
                .kid(due)
                .kids(parts.map(|parts| goes_out(parts, seen)).into_iter().flatten()),
        ),
    )
}

/// Tax and fee of what is still to be handed over, and what you get of it; nothing where neither is.
fn goes_out(parts: Parts, seen: Seen<'_>) -> Vec<El<Msg>> {
    let out = |word: &str, sum: Money| (!sum.is_zero()).then(|| fact(word, format!("−{}", exact(sum, seen.speech))));
    let rows = [out(price::TAX, parts.tax), out(price::FEE, parts.fee)].into_iter().flatten().listed();
    let get = (!rows.is_empty()).then(|| fact(price::YOU_GET, exact(parts.you_get, seen.speech)));
    rows.into_iter().chain(get).listed()
}

/// The parts it is paid in: by when, and what is to come of each.
fn parts_of(row: &AgreedRow, seen: Seen<'_>) -> Vec<El<Msg>> {
    let one = |(nth, (part, lacks)): (usize, &(PartOfPay, Money))| {
        let name = words::part(&seen.speech.count(u32::try_from(nth.saturating_add(1)).unwrap_or(0)));
        let by = match part.due {
            _ if lacks.is_zero() => words::PAID.to_owned(),
            Some(due) => words::by_day(&seen.speech.day(due)),
            None => words::AT_HAND_OVER.to_owned(),
        };
        let partly = !lacks.is_zero() && *lacks != part.sum;
        let figure = if partly { words::lacking(&exact(*lacks, seen.speech)) } else { exact(part.sum, seen.speech) };
        fact(&words::part_by(&name, &by), figure)
    };
    row.parts.iter().enumerate().map(one).listed()
}

/// Notes, card or bank.
fn how(deal: &Deal) -> El<Msg> {
    let ways = [(Paid::Notes, price::NOTES), (Paid::Card, price::CARD), (Paid::Bank, price::BANK)];
    let segs = ways.map(|(paid, word)| Seg::new(word, deal.paid == paid));
    even(price::HOW_PAID, segs.into(), move |nth| say(DealTap::Paid(ways.get(nth).map_or(Paid::Bank, |(paid, _)| *paid))))
}

/// First what is asked ahead, then the hand-over with all that is due, each to the coin it is paid in.
fn pay_keys(row: &AgreedRow, (by, coins): (&str, impl Fn(Money) -> Money), seen: Seen<'_>) -> Vec<El<Msg>> {
    let lacks = |deposit: Money| coins(deposit).minus(row.under).ok().filter(|rest| Decimal::ZERO < rest.amount());
    let deposit = row.deposit.filter(|_| !row.deposit_due.is_zero()).and_then(lacks).map(&coins).filter(|rest| !rest.is_zero());
    let part = row.part_asked.map(&coins).filter(|asked| !asked.is_zero());
    let word = |rest: Money| {
        if part.is_some() { words::came_in(&exact(rest, seen.speech), by) } else { words::deposit_in(&exact(rest, seen.speech), by) }
    };
    let ahead = if row.parts.is_empty() { deposit } else { part };
    let ahead = ahead.map(|rest| key("key solid h88 m", word(rest), "", say(DealTap::Received(rest))));
    let class = if ahead.is_some() { "key h88 m" } else { "key solid h88" };
    let due = coins(row.at_hand_over);
    let over = match due.is_zero() {
        true => key(class, words::HANDED_OVER, "", say(DealTap::HandedOver)),
        false => key(class, words::handed_over_paid(&exact(due, seen.speech), by), "", say(DealTap::HandedOver)),
    };
    ahead.into_iter().chain([over]).listed()
}

/// Whether what was agreed is sold with tax.
fn is_taxed(row: &AgreedRow, app: &App) -> bool {
    let Ok(job) = shop(app).job(row.job) else { return false };
    taxes::is_taxed(app, job.selling.agreement(row.agreed), (job.currency, job.tax))
}

/// It came to nothing: what came in and was not used by a sale is handed back, or kept.
fn nothing(row: &AgreedRow, is_taxed: bool, seen: Seen<'_>) -> Vec<El<Msg>> {
    let none = Money::zero(row.price.currency());
    let never = |under: String, kept| key("key soft", waiting::NEVER_CAME, under, say(DealTap::NeverCame(kept)));
    let end = |under: String, kept| key("key soft", words::CAME_TO_NOTHING, under, say(DealTap::Nothing(kept)));
    if row.ahead.is_zero() {
        let under = if row.received.is_zero() { words::NOTHING_CAME_IN } else { words::NOTHING_TO_HAND_BACK };
        return vec![el("div", "g2").kid(end(under.into(), none)).kid(never(String::new(), none))];
    }
    let under = words::deposit_kept(&exact(row.ahead, seen.speech));
    let kept = end(words::deposit_kept(&exact(row.ahead, seen.speech)), row.ahead);
    let fee = (!row.fees_ahead.is_zero()).then(|| el("p", "t14 i2").text(words::back_without_fee(&exact(row.fees_ahead, seen.speech))));
    let ends = el("div", "g2").kid(end(words::DEPOSIT_BACK.into(), none)).kid(kept);
    let no_tax = is_taxed.then(|| el("p", "t14 i2").text(job::NO_TAX_ON_KEPT));
    [ends].into_iter().chain(fee).chain([never(under, row.ahead)]).chain(no_tax).listed()
}

/// What a gallery still owes of what it sold.
fn of_gallery(row: &GalleryOwes, app: &App, seen: Seen<'_>) -> Screen {
    let (whole, lacks) = (exact(row.due.whole, seen.speech), exact(row.due.lacks, seen.speech));
    let rows = [
        fact(words::AT_WHOM, named(row.due.gallery, app)),
        fact(price::HOW_MANY, seen.speech.count(row.due.n)),
        fact(words::PAID_IN_PART, seen.speech.day(row.due.at)),
    ];
    let main = el("main", "price")
        .kid(verdict(Sign::Yes, words::gallery_owed(&whole), price::is_due(&lacks)))
        .kid(el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows))))
        .kid(el("div", "push"))
        .kid(key("key solid h88", words::came_in(&lacks, price::by(Paid::Bank)), "", say(DealTap::Received(row.due.lacks))))
        .kid(key("key", words::OTHER_SUM, "", say(DealTap::Pad)))
        .kid(key("key soft h56", words::WILL_NOT_BE_PAID, words::SALE_STAYS, say(DealTap::GivenUp)))
        .kid(back());
    Screen::new("price/deal", head(Head::new(words::GALLERY_OWES, called(row.job, &row.name, app, seen))), main)
}

/// What is due, and what is handed over of it in coins.
fn of_owed(deal: &Deal, (row, coins): (&OwedRow, Money), seen: Seen<'_>) -> Screen {
    let top = Head::new(words::SOLD_NOT_PAID, row.name.clone());
    let main = el("main", "price")
        .kid(verdict(Sign::Yes, price::sold_at(&bare(row.price, seen.speech)), price::is_due(&bare(row.due, seen.speech))))
        .kid(el("div", "push"))
        .kid(how(deal))
        .kid(key("key solid h88", words::came_in(&exact(coins, seen.speech), price::by(deal.paid)), "", say(DealTap::Received(coins))))
        .kid(key("key", words::OTHER_SUM, "", say(DealTap::Pad)))
        .kid(key("key soft h56", words::WILL_NOT_BE_PAID, words::SALE_STAYS, say(DealTap::GivenUp)))
        .kid(back());
    Screen::new("price/deal", head(top), main)
}
