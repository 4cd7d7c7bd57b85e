//! A price agreed before the hand-over: how much, a deposit, by when, fetched or delivered.

use super::{Screen, Seen, bare, choices, leave, pieces, typing};
use crate::app::price::agree::{Agree, AgreeTap, By, Field as Figure, buyers};
use crate::app::price::{Tap, on_top};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::day_steps::day_steps;
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::seg::{Seg, even};
use crate::screens::jobs::called;
use crate::screens::taxes;
use crate::view::{El, el};
use crate::words::en::{common, deal as words, job as job_words, jobs, price, workshop};
use fivebar_core::ledger::kind::sale::Carried;
use fivebar_core::quantity::{Count, Id, Listed, Money, Wall};

fn say(tap: AgreeTap) -> Msg {
    Msg::Price(Tap::Agree(tap))
}

/// Shares of the price that are asked ahead, in per cent: common practice.
const SHARES: [u32; 4] = [0, 30, 40, 50];
const WEEKS: [u32; 5] = [1, 2, 3, 4, 6];

/// The agreement as it stands; none where the job is no longer there.
pub fn screen(agree: &Agree, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = crate::app::price::shop(app).job(agree.job).ok()?;
    let title = if agree.replaces.is_some() { words::CHANGE_OF_ORDER } else { words::AGREE };
    let top = head(Head::new(called(agree.job, &job.name, app, seen), title));
    let is_on_top = on_top(app, (job.currency, agree.taxed(&job))).is_some();
    if let Some((field, typed)) = &agree.pad {
        let (ask, unit) = match field {
            Figure::Price => (words::AGREED_PRICE, agree.currency.code()),
            Figure::Deposit => (words::DEPOSIT, agree.currency.code()),
            Figure::Pieces => (price::HOW_MANY, ""),
        };
        let of_price = is_on_top && *field == Figure::Price;
        let with_tax = of_price.then(|| el("p", "t14 i2").text(price::with_tax(None)));
        let adds_tax = of_price.then(|| key("key h48", price::ADD_TAX, "", say(AgreeTap::PadBeforeTax)));
        let main = el("main", "price")
            .kids(with_tax)
            .kids(typing(ask, typed, unit, seen))
            .kid(done_key("key solid h88", common::DONE, "", say(AgreeTap::PadDone)))
            .kids(adds_tax)
            .kid(key("key h48", common::NOT_NOW, "", say(AgreeTap::PadAway)));
        return Some(Screen::new("price/agree/pad", top, main));
    }
    let main = el("main", "price")
        .kids(pieces(agree.n, agree.free, seen, |n| say(AgreeTap::Pieces(n))))
        .kids((4 < agree.free).then(|| key("key h48", words::TYPE_HOW_MANY, "", say(AgreeTap::Pad(Figure::Pieces)))))
        .kid(figures(agree, is_on_top, seen))
        .kids(agree.was_for.map(|n| was_for((n, agree.n), seen)))
        .kids(agree.drops_parts(&job).then(|| el("p", "t14 i2").text(words::PLANNED_ANEW)))
        .kid(shares(agree, seen))
        .kids(taxes::of_sale(app, (job.currency, agree.taxed(&job)), seen, |by| say(AgreeTap::Tax(by))))
        .kid(carried(agree))
        .kids((agree.carried == Carried::Delivered).then(|| caution(jobs::CAUTION_DELIVERY)))
        .kid(el("h2", "").text(words::BY_WHEN))
        .kid(weeks(agree, app, seen))
        .kid(day_steps([job_words::DAY, job_words::DAYS], |by| say(AgreeTap::Day(by))))
        .kid(el("h2", "").text(words::FOR_WHOM))
        .kids(for_whom(agree, app));
    // Beside each other, so that all that is asked stays above them on a phone in the hand.
    let not_now = || key("key", common::NOT_NOW, "", Msg::Price(Tap::Close));
    let keys = save(agree, seen).map_or_else(leave, |save| el("div", "um").kid(save).kid(not_now()));
    let foot = el("footer", "foot").kids(asked_if_meant(agree, seen)).kid(keys);
    Some(Screen::new("price/agree", top, main).foot(foot))
}

/// A sum far from the tags is asked about once, over the key that says it.
fn asked_if_meant(agree: &Agree, seen: Seen<'_>) -> Option<El<Msg>> {
    let (far, sum, tags) = agree.far.filter(|(_, sum, _)| agree.sum == Some(*sum))?;
    Some(el("p", "why").attr("role", "alert").text(price::is_it_meant((far, &bare(sum, seen.speech)), &bare(tags, seen.speech))))
}

/// The sum was for another number of pieces.
fn was_for((before, now): (Count, Count), seen: Seen<'_>) -> El<Msg> {
    let pieces = |n: Count| common::pieces(n, &seen.speech.count(n));
    el("p", "t14 w7").attr("role", "status").text(words::price_was_for(&pieces(before), &pieces(now)))
}

fn figures(agree: &Agree, is_on_top: bool, seen: Seen<'_>) -> El<Msg> {
    let agreed = if is_on_top { words::AGREED_WITH_TAX } else { words::AGREED_PRICE };
    let shown = |sum: Option<Money>, none: &str| sum.map_or_else(|| none.to_owned(), |sum| bare(sum, seen.speech));
    el("div", "g2").kid(figure_key(agreed, shown(agree.sum, price::NOT_SAID), say(AgreeTap::Pad(Figure::Price)))).kid(figure_key(
        words::DEPOSIT,
        shown(agree.ahead(), words::NO_DEPOSIT),
        say(AgreeTap::Pad(Figure::Deposit)),
    ))
}

fn shares(agree: &Agree, seen: Seen<'_>) -> El<Msg> {
    let word = |percent: u32| match percent {
        0 => words::NO_DEPOSIT.to_owned(),
        _ => words::percent(&seen.speech.count(percent)),
    };
    let segs = SHARES.map(|percent| Seg::new(word(percent), agree.is_share(percent)));
    even(words::DEPOSIT, segs.into(), |nth| say(AgreeTap::Share(SHARES.get(nth).copied().unwrap_or(0))))
}

fn carried(agree: &Agree) -> El<Msg> {
    let ways = [(Carried::Fetched, price::THEY_FETCH), (Carried::Delivered, price::I_DELIVER)];
    let segs = ways.map(|(way, word)| Seg::new(word, agree.carried == way));
    even(price::HOW_CARRIED, segs.into(), move |nth| say(AgreeTap::Carried(ways.get(nth).map_or(Carried::Fetched, |(way, _)| *way))))
}

/// The day that was agreed, where an order is changed; no date; some weeks; the day that was stepped to.
fn weeks(agree: &Agree, app: &App, seen: Seen<'_>) -> El<Msg> {
    let agreement = agree.replaces.and_then(|id| crate::app::price::shop(app).job(agree.job).ok()?.selling.agreement(id)?.due);
    let stepped = Some(agree.by).filter(|by| matches!(by, By::On(_)));
    let all: Vec<By> = agreement.map(By::AsAgreed).into_iter().chain([By::NoDate]).chain(WEEKS.map(By::Weeks)).chain(stepped).listed();
    let word = |by: &By| match by {
        By::AsAgreed(due) => words::as_agreed(&seen.speech.day(*due)),
        By::NoDate => words::NO_DATE.to_owned(),
        By::Weeks(n) => words::weeks(*n, &seen.speech.count(*n)),
        By::On(day) => seen.speech.day(Wall::new(day.start(seen.now.offset), seen.now.offset)),
    };
    let chips = all.iter().map(|by| (word(by), agree.by == *by)).listed();
    choices(chips, move |nth| say(AgreeTap::By(all.get(nth).copied().unwrap_or(By::NoDate))))
}

/// As many buyers as are offered: the latest, and the one that is said.
const SHOWN: usize = 4;

/// Buyers that are offered.
fn known(said: Option<Id>, app: &App) -> Vec<(Id, String)> {
    let all = buyers(app);
    let far = all.iter().position(|(id, _)| said == Some(*id)).filter(|place| SHOWN <= *place);
    all.iter().take(SHOWN).chain(far.and_then(|place| all.get(place))).cloned().listed()
}

/// Who it is with: somebody known, somebody new by name, or nobody in particular.
fn for_whom(agree: &Agree, app: &App) -> Vec<El<Msg>> {
    let known = known(agree.buyer, app);
    let is_none = agree.named.is_none() && !known.iter().any(|(id, _)| agree.buyer == Some(*id));
    let chips = std::iter::once((words::SOMEONE.to_owned(), is_none))
        .chain(known.iter().map(|(id, name)| (name.clone(), agree.buyer == Some(*id))))
        .chain([(words::SOMEBODY_NEW.to_owned(), agree.named.is_some())])
        .listed();
    let tap = move |nth: usize| match nth.checked_sub(1) {
        None => say(AgreeTap::Buyer(None)),
        Some(nth) => say(known.get(nth).map_or(AgreeTap::Named(String::new()), |(id, _)| AgreeTap::Buyer(Some(*id)))),
    };
    let asked =
        |value: &String| Field { id: "buyer", label: words::THEIR_NAME.into(), value: value.clone(), fleeting: true, ..Field::default() };
    let typed = agree.named.as_ref().map(|name| field(asked(name), |text| say(AgreeTap::Named(text))));
    let stays = agree.named.is_some().then(|| el("p", "t14 i2").text(workshop::NAMES_STAY));
    // Where the key was that asked for it, and so in sight: what lies below may be behind the foot.
    typed.into_iter().chain(stays).chain([choices(chips, tap)]).listed()
}

/// What will be written, in one line.
fn save(agree: &Agree, seen: Seen<'_>) -> Option<El<Msg>> {
    let sum = bare(agree.sum?, seen.speech);
    let deposit = agree.ahead().map(|sum| bare(sum, seen.speech));
    let day = agree.by.day(seen.now).map(|day| seen.speech.day(day));
    let under = words::agreement((agree.n, &seen.speech.count(agree.n)), &sum, deposit.as_deref(), day.as_deref());
    Some(key("key solid", words::SAVE_AGREEMENT, under, say(AgreeTap::Save)))
}
