//! What waiting is worth: the asking price by weeks, an offer today on its scale, the chances, who asked; and the way to the guesses.

use super::guesses;
use super::list::undo;
use super::scale::is_settled_under;
use super::verdict::known;
use super::{Screen, Seen, back, bare, end_said, mark, mark_beside, refused};
use crate::app::price::tag::{TagTap, What};
use crate::app::price::waiting::{WaitTap, Waits, sheet};
use crate::app::price::{Tap, paid, sheet as price_list};
use crate::app::{App, Msg};
use crate::parts::bars::{Bars, Cut, bars};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::letters::label;
use crate::parts::notice::trouble;
use crate::parts::scale::{Band, Kind, Mark, Rhythm, Scale, scale};
use crate::parts::steps::{Held, steps};
use crate::screens::said;
use crate::view::{El, el};
use crate::words::en::{price, waiting as words};
use fivebar_core::quantity::{Clock, Count, Day, Decimal, Listed, Money, Span, Wall, exact, half_up};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::waiting::{Back, Costs, Prospect, Stands, Step, WaitingSheet};

/// A message on what waiting is worth.
pub fn say(tap: WaitTap) -> Msg {
    Msg::Price(Tap::Waiting(tap))
}

/// The page, or the guesses it comes from; none where the piece is no longer there.
pub fn screen(waits: &Waits, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let sheet = match sheet(app, waits.job) {
        Ok(sheet) => sheet,
        Err(Refusal::NotThere) => return None,
        Err(refusal) => return Some(refused("price/waiting", &refusal, seen)),
    };
    if let Some(asked) = &waits.asked {
        return Some(guesses::screen(&sheet, asked, (app, seen)));
    }
    let top = Head::new(words::name_left(&sheet.name, &seen.speech.count(sheet.free)), words::ASKING_PRICE);
    let main = match &sheet.stands {
        Stands::Found(prospect) => found(&sheet, prospect, app, seen),
        _ => vec![instead(&sheet, seen)],
    };
    let main = el("main", "price").kids(main).kids(looked_back(&sheet, seen)).kid(el("div", "push")).kids(keys(&sheet, seen)).kid(back());
    let screen = Screen::new("price/waiting", head(top), main);
    Some(match undo(app, seen) {
        Some(undo) => screen.foot(el("div", "foot").kid(undo)),
        None => screen,
    })
}

/// What is said where nothing can be reckoned.
fn instead(sheet: &WaitingSheet, seen: Seen<'_>) -> El<Msg> {
    let plain = |text: String| el("p", "").text(text);
    match &sheet.stands {
        Stands::Over(by) => plain(words::is_over(&day(*by, seen))),
        Stands::NothingLeft => plain(words::NOTHING_LEFT.into()),
        Stands::Refused(refusal) => trouble(said::refused(refusal, seen)),
        Stands::Open(_) | Stands::Found(_) => plain(words::PRICE_FIRST.into()),
    }
}

fn found(sheet: &WaitingSheet, prospect: &Prospect, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let ask = prospect.steps.first().map(|step| bare(step.ask, seen.speech)).unwrap_or_default();
    let people = prospect.to_ask.round().clamp(0.0, 9_999.0) as Count;
    let more = words::more_will_ask(people, &seen.speech.count(people), &day(prospect.until, seen));
    let tally =
        (0 < people).then(|| bars(Bars { cut: people, hollow: 0, per_row: 4, size: if people <= 20 { Cut::Tall } else { Cut::List } }));
    let asked = sheet.guesses.at.filter(|_| 0 < prospect.asked).map(|at| {
        let week = seen.speech.number(half_up(Decimal::try_from(prospect.learnt.asks).unwrap_or_default(), 1), 0, 1);
        let written = seen.speech.count(prospect.asked);
        let said = words::asked_since((prospect.asked, &written), &week, (&bare(at, seen.speech), prospect.learnt.share));
        el("p", "t14").text(said)
    });
    let top = el("div", "side").kid(el("h2", "t22 w8 ink1").text(more)).kids(tally);
    vec![
        el("section", "").kid(top).kid(el("p", "").text(words::one_buys(&ask, prospect.buys))).kids(asked),
        ahead(sheet, prospect, (app, seen)),
        offer_today((sheet, prospect), app, seen),
        chances(sheet, prospect, &ask, seen),
    ]
}

/// Steps at which the price changes.
fn changes(steps: &[Step]) -> Vec<Step> {
    let mut kept: Vec<Step> = vec![];
    for step in steps {
        if kept.last().is_none_or(|last| last.ask != step.ask) {
            kept.push(*step);
        }
    }
    kept
}

fn ahead(sheet: &WaitingSheet, prospect: &Prospect, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    // The tag alone is before tax; what is asked is what a buyer hands over.
    let is_on_top = price_list(app).is_ok_and(|list| list.for_sale.iter().any(|row| row.job == sheet.job && row.is_on_top));
    let days = f64::from(prospect.now.until(prospect.until).max(1));
    let at = |day: Day| f64::from(prospect.now.until(day));
    let kept = changes(&prospect.steps);
    let figure = |nth: usize, ask: Money| if nth == 0 { seen.speech.short_money(ask) } else { bare(ask, seen.speech) };
    let held = kept.iter().enumerate().map(|(nth, step)| Held { from: at(step.from) / days, figure: figure(nth, step.ask) }).listed();
    let told = kept.iter().map(|step| format!("{} {}", day(step.from, seen), bare(step.ask, seen.speech))).listed().join(", ");
    let dates = kept.iter().map(|step| step.from).chain([prospect.until]);
    let axis = Scale {
        width: seen.page.card(),
        from: 0.0,
        to: days,
        rhythm: Some(Rhythm { tick: 1.0, long: 7.0 }),
        marks: dates.map(|date| Mark::bare(at(date), day(date, seen))).listed(),
        ..Scale::default()
    };
    let left = words::days_left(prospect.days, &seen.speech.count(prospect.days.into()));
    let end = sheet.guesses.end.map(|end| el("span", "t14").text(words::then_each(&left, &bare(end, seen.speech))));
    let title = el("div", "row").kid(el("h2", "t17 w8 ink1").text(words::ask(is_on_top))).kids(end);
    let drawn = steps(&held, seen.page.card(), &format!("{}: {told}", words::STEPS_SAID));
    let stays = prospect.held.map(|lowest| el("p", "t14").text(words::stays_at(&bare(lowest, seen.speech))));
    el("section", "card tap").kid(title).kid(drawn).kid(scale(&axis, "")).kids(stays)
}

fn offer_today((sheet, prospect): (&WaitingSheet, &Prospect), app: &App, seen: Seen<'_>) -> El<Msg> {
    let real = |sum: Money| f64::try_from(sum.amount()).unwrap_or_default();
    let marked = |sum: Money, kind, word: &str| Mark::new(real(sum), kind, word, mark(sum, seen.speech));
    let row = price_list(app).ok().and_then(|list| list.for_sale.into_iter().find(|row| row.job == sheet.job));
    let ask = prospect.steps.first().map(|step| step.ask);
    let set = row.as_ref().and_then(|row| row.settle_set).filter(|set| is_settled_under(Some(*set), [Some(prospect.under), ask]));
    let settle = row.as_ref().and_then(|row| row.settle);
    let lowest = row.as_ref().and_then(|row| row.lowest_pay);
    let band = prospect.band.and_then(|band| band.between(lowest, settle));
    // Under the lowest pay it is a no, whatever waiting is worth, but from where it is settled, or from the ask on.
    let lowest = lowest.filter(|lowest| prospect.under.amount() < lowest.amount());
    let is_yes_under = |lowest: Money| [settle, ask].into_iter().flatten().any(|yes| yes.amount() < lowest.amount());
    let holds = set.is_none() && lowest.is_none();
    let (kind, under) = if holds { (Kind::Under, price::NOT_UNDER) } else { (Kind::Ink, price::WAITING_WORTH) };
    let asked = ask.map(|ask| Mark::new(real(ask), Kind::Ink, price::ASK, bare(ask, seen.speech)));
    let figure = |lowest: Money| mark_beside(lowest, [ask, settle], seen.speech);
    let kind_of = |lowest| if is_yes_under(lowest) { Kind::Ink } else { Kind::Under };
    let least = lowest.map(|lowest| Mark::new(real(lowest), kind_of(lowest), price::LOWEST_PAY, figure(lowest)));
    let marks = [Some(marked(prospect.end, Kind::Ink, words::IN_THE_END)), Some(marked(prospect.under, kind, under)), least, asked];
    let marks = marks.into_iter().flatten().listed();
    let ends = marks.iter().map(|mark| mark.at).chain(band.iter().flat_map(|band| [real(band.low), real(band.high)]));
    let (low, high) = ends.fold((f64::MAX, 0.0_f64), |(low, high), at| (low.min(at), high.max(at)));
    let air = (high - low).max(1.0) * 0.08;
    let close = |band: fivebar_core::money::offer::Band| {
        let [low, high] = [band.low, band.high].map(|sum| mark(sum, seen.speech));
        let said = price::your_call([&low, &high]).trim_end_matches('.').to_owned();
        if label("", &said) <= seen.page.card() { said } else { price::from_to(&low, &high) }
    };
    let hatched = band.map(|band| Band { from: real(band.low), to: real(band.high), word: price::TOO_CLOSE.into(), figure: close(band) });
    let drawn = Scale { width: seen.page.card(), from: (low - air).max(0.0), to: high + air, marks, band: hatched, ..Scale::default() };
    let over = ask.filter(|ask| ask.amount() < prospect.end.amount()).map(|ask| end_said(1, [prospect.end, ask], sheet.tag, seen));
    let doubt = over.map(|over| el("p", "w7").text(over)).or_else(|| {
        (band.is_some() || prospect.band.is_none()).then(|| el("p", "t14").text(super::doubt(band.is_some(), prospect.has_band)))
    });
    let reached = prospect.band.zip(settle).filter(|(band, settle)| {
        let at = settle.amount();
        band.low.amount() < at && at <= band.high.amount()
    });
    let called = band.map(|band| el("p", "t14").text(known(under, prospect.under, (prospect.band, band), seen)));
    let settled = set.or(reached.map(|(_, settle)| settle)).map(|sum| el("p", "t14").text(words::a_yes_from(&bare(sum, seen.speech))));
    let is_over_ask = |lowest: Money| ask.is_some_and(|ask| ask.amount() < lowest.amount());
    let needs_said = |lowest| if is_over_ask(lowest) { price::lowest_needs_over_ask } else { price::lowest_needs };
    let needs = lowest.map(|lowest| el("p", "w7").text(needs_said(lowest)(&figure(lowest))));
    let heard = format!("{under} {}", mark(prospect.under, seen.speech));
    let heard = band.map_or(heard.clone(), |band| format!("{heard}. {} {}", price::TOO_CLOSE, close(band)));
    el("section", "card tap")
        .kid(el("h2", "t17 w8 ink1").text(words::offer_today(price::by(paid(app)))))
        .kid(scale(&drawn, &heard))
        .kids(needs)
        .kids(called)
        .kids(settled)
        .kids(doubt)
}

fn chances(sheet: &WaitingSheet, prospect: &Prospect, ask: &str, seen: Seen<'_>) -> El<Msg> {
    let until = changes(&prospect.steps).get(1).map_or(prospect.until, |step| step.from);
    let sold = words::chances(sheet.free, prospect.chances.all, prospect.chances.none);
    let next = prospect.next.map(|next| words::next_brings(&bare(next, seen.speech)));
    let sold = std::iter::once(sold).chain(next).listed().join(" ");
    el("section", "")
        .kid(el("p", "").kid(el("b", "w8").text(words::ask_until(ask, &day(until, seen)))).kid(el("span", "").text(format!(" {sold}"))))
        .kids(costs(&prospect.costs, seen))
}

/// What of waiting is counted, and what is not.
fn costs(costs: &Costs, seen: Seen<'_>) -> Vec<El<Msg>> {
    let time = costs.each_ask.filter(|time| Span::ZERO < *time);
    let pay = |pay: Decimal| seen.speech.number(pay, 0, 2);
    let time_said = time.zip(costs.pay).map(|(time, paid)| words::each_takes(&seen.speech.span(time), &pay(paid)));
    let keep_said = costs.each_day.filter(|sum| !sum.is_zero()).map(|sum| words::a_day_to_keep(&bare(sum, seen.speech)));
    let never = costs.no_show.and_then(exact::to_float).filter(|share| 0.0 < *share).map(words::who_never_comes);
    let counted = time_said.iter().chain(&keep_said).chain(&never).map(String::as_str).listed();
    let counted = (!counted.is_empty()).then(|| words::counted(&counted.join(", ")));
    let missing = match (costs.each_ask, costs.each_day) {
        (None, None) => Some(words::NOT_COUNTED),
        (None, Some(_)) => Some(words::TIME_NOT_COUNTED),
        (Some(_), _) if time.is_some() && time_said.is_none() => Some(words::TIME_ONCE_PAID),
        (Some(_), None) => Some(words::KEEPING_NOT_COUNTED),
        (Some(_), Some(_)) => None,
    };
    let line = |text: String| el("p", "t14 i2").text(text);
    counted.into_iter().chain(missing.map(str::to_owned)).map(line).listed()
}

/// What came of waiting, in one sentence.
pub fn back_said(back: Back, seen: Seen<'_>) -> String {
    match back {
        Back::Waited { offered, sold } => words::waited(&bare(offered, seen.speech), &bare(sold, seen.speech)),
        Back::Took { sum, worth } => words::took(&bare(sum, seen.speech), &bare(worth, seen.speech)),
    }
}

fn looked_back(sheet: &WaitingSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let said = back_said(sheet.back?, seen);
    Some(el("p", "t14 rule").kid(el("b", "w8").text(words::LOOKING_BACK)).kid(el("span", "").text(format!(" {said}"))))
}

fn keys(sheet: &WaitingSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(price) = sheet.price else {
        return vec![key("key solid", price::SET_PRICE, "", Msg::Price(Tap::Tag(TagTap::Open(sheet.job, What::Tag))))];
    };
    let change = key("key", words::CHANGE, "", say(WaitTap::Change));
    let other = super::more::ways(sheet.job);
    if sheet.free == 0 {
        return vec![change, other];
    }
    let offer = key("key solid", words::NOTE_AN_OFFER, "", Msg::Price(Tap::Offer(sheet.job)));
    let came = |no_show| say(WaitTap::Came(sheet.job, price, no_show));
    let asked = key("key", words::SOMEONE_ASKED, words::at_and_left(&bare(price, seen.speech)), came(false));
    vec![el("div", "g2").kid(asked).kid(key("key", words::NEVER_CAME, "", came(true))), el("div", "g2").kid(change).kid(offer), other]
}

/// A date, by the clock of the place.
pub fn day(day: Day, seen: Seen<'_>) -> String {
    seen.speech.day(Wall::new(day.at(Clock::NOON, seen.now.offset), seen.now.offset))
}
