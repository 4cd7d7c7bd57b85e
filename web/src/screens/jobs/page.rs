//! One job's page: how it stands and its next act on top, then its bars, then its four rooms.

use super::super::bench::waits;
use super::super::count::saved_fact;
use super::super::plan::since;
use super::super::sources::of_job;
use super::super::{Screen, Seen, undo};
use super::figures::{apart, bar_said, carried, day, hourly, hours_of, lacking, line, short, stretches, sum, to_be_carried};
use super::holds::{Holds, holds};
use super::rest::{at_nothing, dues, fee_by, fees_to_come, if_go, unsold};
use super::say;
use crate::app::bench::waits::kept;
use crate::app::jobs::dates::promise_by;
use crate::app::jobs::doing::delivery;
use crate::app::jobs::draft::What;
use crate::app::jobs::estimate::sheet as estimated;
use crate::app::jobs::{Room, Tap};
use crate::app::plan::{cuts_left, lists_left};
use crate::app::price::paid;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::paid_bar::paid_bar;
use crate::parts::so_far::so_far;
use crate::screens::price::list::{guessed, haul_in_question};
use crate::view::{El, el};
use crate::words::en::price::by;
use crate::words::en::{changed, common, dates, jobs as words, rack as rack_words};
use fivebar_core::bench::Stage;
use fivebar_core::bench::wait::Wait;
use fivebar_core::quantity::{Decimal, Listed, Money, Span};
use fivebar_core::sheet::estimate::EstimateSheet;
use fivebar_core::sheet::job::{JobSheet, NextAct, Owed};
use fivebar_core::sheet::rest::{Rest, rest};

/// The page.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let title = super::titled(sheet, seen);
    let small = match &sheet.described.wood {
        Some(wood) => format!("{wood}, {}", words::made_for(sheet.made_for)),
        None => words::upper_first(words::made_for(sheet.made_for)),
    };
    let top = Head::new(small, title).fact(saved_fact(app, seen)).fact(Fact::Plain(words::since(&seen.speech.day(sheet.began))));
    let left = cuts_left(app);
    let at_saw = since::saw_words(&left, sheet.job, seen);
    // The key of the next step leads to the only list there is.
    let lists = lists_left(app).into_iter().filter(|it| it.job == sheet.job).listed();
    let lists = if cuts_next(sheet) && lists.len() == 1 { vec![] } else { lists };
    let estimate = estimated(app, sheet.job);
    let waits = kept(app, |kept| kept.of_job(sheet.job, app.now.at));
    let first = el("div", "col")
        .kids(next_act((sheet, estimate.as_ref()), (at_saw.as_deref(), holds(sheet, app, seen)), seen))
        .kids(since::lacking(sheet, seen))
        .kids(since::other_now(sheet, seen))
        .kids(since::ways_to_saw(&lists, |_| Some(changed::AT_THE_SAW.to_owned()), seen))
        .kids(estimate.as_ref().and_then(|estimate| promise(sheet, estimate, app, seen)))
        .kids(waits::lines(&waits, false, app, seen))
        .kid(so_far_card(sheet, estimate.as_ref(), seen))
        .kids(estimate.as_ref().and_then(|estimate| super::estimate::so_far(estimate, seen)))
        .kids(money_card(sheet, app, seen));
    let second = el("div", "col").kid(el("div", "push")).kids(undo::bar(app, seen)).kid(rooms(sheet, seen));
    let second = second.kids(super::photos::strip(sheet, app)).kid(below(sheet, app, seen));
    Screen::new("jobs/job", head(top), el("main", "two job").kid(first).kid(second))
}

/// What must begin by when, of a job that is to be done by a day.
fn promise(sheet: &JobSheet, estimate: &EstimateSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    sheet.date?;
    let promise = promise_by(app, estimate)?;
    super::dates::promise_line(&promise, &sheet.next, seen).map(|line| el("p", "").kid(line))
}

/// Dates and quote, the way back to the list, and to the job's own name.
fn below(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let photos = super::photos::way(sheet, app, seen);
    let dates = key("key left wide", dates::DATES, super::dates::under(sheet, seen), say(Tap::Room(Room::Dates)));
    let named = key("key soft h48", words::NAME_AND_PIECES, "", say(Tap::Write(What::Name)));
    let keys = el("div", "g2").kid(key("key soft h48", words::ALL_JOBS, "", say(Tap::List))).kid(named);
    let first = match photos {
        Some(photos) => el("div", "g2").kid(photos).kid(dates),
        None => dates,
    };
    el("div", "col").kid(first).kid(keys)
}

/// How it stands, the key of the next act, and the caution that goes with it; where every piece waits for that, until when.
fn next_act(
    (sheet, estimate): (&JobSheet, Option<&EstimateSheet>),
    (at_saw, holds): (Option<&str>, Option<Holds>),
    seen: Seen<'_>,
) -> Vec<El<Msg>> {
    let (state, words, under) = match (holds, next((sheet, estimate), seen)) {
        (Some(Holds::Next(said)), _) => (said, words::GO_TO_BENCH.to_owned(), String::new()),
        (Some(Holds::Use(said)), (_, words, under)) => (said, words, under),
        (None, next) => next,
    };
    let at_saw = at_saw.filter(|_| cuts_next(sheet));
    let words = if at_saw.is_some() { changed::TO_THE_SAW.to_owned() } else { words };
    let state = at_saw.map_or(state, |left| format!("{left}."));
    let about = about(sheet, seen);
    let state = el("section", "").kid(el("p", "t22 w8").text(state)).kids((!about.is_empty()).then(|| el("p", "").text(about)));
    let mut shown = vec![state, key("key solid h88", words, under, say(Tap::Next))];
    if matches!(sheet.next, NextAct::Collect { .. }) && 0 < sheet.sale.left {
        shown.push(key("key h56", words::SELL_ONE, tagged(sheet, seen), say(Tap::Write(What::Sell(None)))));
    }
    // All that was planned is done, and more is thought to come: whether it is, only the maker knows.
    let is_open = matches!(sheet.next, NextAct::WorkOn { op: None } | NextAct::Sell { .. });
    let is_over = is_open && sheet.account.hours.is_begun() && !sheet.operations.is_empty();
    shown.extend(estimate.filter(|_| is_over).and_then(super::estimate::is_whole));
    if delivers(sheet) {
        shown.push(caution(words::CAUTION_DELIVERY));
    }
    if matches!(sheet.next, NextAct::HandOver { .. }) && can_tip(sheet) {
        shown.push(caution(words::CAUTION_TIP));
    }
    shown
}

/// Nothing is planned to be done next: where wood is to be cut, that is.
fn cuts_next(sheet: &JobSheet) -> bool {
    matches!(sheet.next, NextAct::WorkOn { op: None })
}

fn delivers(sheet: &JobSheet) -> bool {
    matches!(sheet.next, NextAct::HandOver { .. }) && delivery(sheet).is_some()
}

/// Tall for its base: at least twice as high as its narrower side.
pub fn can_tip(sheet: &JobSheet) -> bool {
    let said = &sheet.described;
    let narrow = said.width.zip(said.depth).map(|(width, depth)| width.min(depth)).or(said.width).or(said.depth);
    said.height.zip(narrow).is_some_and(|(height, narrow)| narrow.times(2).is_ok_and(|twice| twice <= height))
}

/// When, how and how long, of what was promised.
fn about(sheet: &JobSheet, seen: Seen<'_>) -> String {
    if !matches!(sheet.next, NextAct::HandOver { .. } | NextAct::WorkOn { .. } | NextAct::Running { .. }) {
        return String::new();
    }
    let date = sheet.date.filter(|_| sheet.selling.open().next().is_some()).map(|date| seen.speech.day(date));
    let how = sheet.selling.open().find_map(|agreement| agreement.carried);
    let is_ready = matches!(sheet.next, NextAct::HandOver { .. });
    let how = how.map(|way| if is_ready { carried(way) } else { to_be_carried(way) }.to_owned());
    let long =
        delivery(sheet).and_then(|planned| planned.span).filter(|_| delivers(sheet)).map(|span| words::about(&seen.speech.span(span)));
    let said: Vec<String> = [date, how, long].into_iter().flatten().listed();
    if said.is_empty() { String::new() } else { format!("{}.", words::upper_first(&said.join(", "))) }
}

/// The state in a sentence, and the next act with its second line.
fn next((sheet, estimate): (&JobSheet, Option<&EstimateSheet>), seen: Seen<'_>) -> (String, String, String) {
    let n = |n: u32| seen.speech.count(n);
    let told = |state: &str, act: &str, under: String| (state.to_owned(), act.to_owned(), under);
    let owed = |due: Money| if Decimal::ZERO < due.amount() { words::then_due(&sum(due, seen)) } else { String::new() };
    match &sheet.next {
        NextAct::Running { op, .. } => told(&words::running(op), words::GO_TO_BENCH, String::new()),
        NextAct::HandOver { due, .. } => match delivery(sheet) {
            Some(planned) => told(words::STATE_DELIVERY, &words::start(&planned.op), owed(*due)),
            None => told(words::STATE_HAND_OVER, words::HAND_OVER, owed(*due)),
        },
        NextAct::Collect { due } => told(&collects(sheet, seen), words::TAKE_PAYMENT, words::due(&sum(*due, seen))),
        NextAct::HandBack { sum: back } => told(words::STATE_HAND_BACK, words::HAND_BACK, words::to_hand_back(&sum(*back, seen))),
        NextAct::PartDue { lacks, due, .. } => {
            told(&words::state_part(&seen.speech.day(*due)), words::TAKE_PAYMENT, words::due(&sum(*lacks, seen)))
        }
        NextAct::TakeWood if 0 < sheet.wood.apart => {
            told(&words::state_apart(&n(sheet.wood.apart)), words::TAKE_WOOD, words::TAKE_WOOD_UNDER.into())
        }
        NextAct::TakeWood => told(words::STATE_WOOD, words::TAKE_WOOD, words::TAKE_WOOD_UNDER.into()),
        NextAct::WorkOn { op: Some(op) } => told(&words::state_work(op), &words::start(op), planned((sheet, estimate), op, seen)),
        NextAct::WorkOn { op: None } => told(words::state_open(sheet.account.hours.is_begun()), words::GO_TO_BENCH, String::new()),
        NextAct::Waits { last } => told(&waits(last, seen), words::GO_TO_BENCH, String::new()),
        NextAct::SetTag => told(words::STATE_TAG, words::WRITE_TAG, String::new()),
        NextAct::Agree { left } => told(&words::state_agree((*left, &n(*left))), words::AGREE, tagged(sheet, seen)),
        NextAct::Sell { left } => told(&words::state_sell(&n(*left)), words::SELL_ONE, tagged(sheet, seen)),
        NextAct::AtGallery { n: there } => told(&words::state_gallery(&n(*there)), words::GALLERY_PAID, String::new()),
        NextAct::End | NextAct::LookBack => {
            let state = if sheet.ended.is_some() { words::STATE_ENDED } else { words::STATE_ALL_GONE };
            told(state, words::LOOK_BACK, String::new())
        }
    }
}

fn tagged(sheet: &JobSheet, seen: Seen<'_>) -> String {
    sheet.sale.tag.map(|tag| words::tag(&short(tag, seen))).unwrap_or_default()
}

/// Money is due; and what is left to sell beside it.
fn collects(sheet: &JobSheet, seen: Seen<'_>) -> String {
    match sheet.sale.left {
        0 => words::STATE_COLLECT.to_owned(),
        left => words::state_due_and_sell(&seen.speech.count(left)),
    }
}

/// Until when the job waits, or that it need not.
pub fn waits(last: &Wait, seen: Seen<'_>) -> String {
    if last.is_over(seen.now.at) {
        return words::STATE_OFF.to_owned();
    }
    words::state_waits(&seen.when(last.wall(last.off(), seen.local)))
}

/// What was planned of the next operation, and what of it is still to come, as on every other page.
fn planned((sheet, estimate): (&JobSheet, Option<&EstimateSheet>), op: &str, seen: Seen<'_>) -> String {
    let row = estimate.and_then(|sheet| sheet.rows.iter().find(|row| row.op.as_deref() == Some(op)));
    let left = row.map(|row| row.to_come()).filter(|left| Span::ZERO < *left).map(|left| words::still(&seen.speech.span(left), false));
    let span = sheet.operations.iter().find(|planned| planned.op == op).and_then(|planned| planned.span);
    let planned = span.map(|span| words::planned(&seen.speech.span(span)));
    [planned, left].into_iter().flatten().listed().join(", ")
}

/// What is likely to come of the operations and of counted pieces, by stage.
fn by_stage(sheet: &JobSheet, estimate: &EstimateSheet) -> Vec<(Stage, Span)> {
    let mut stages: Vec<(Stage, Span)> = vec![];
    let stage = |op: &Option<String>| sheet.operations.iter().find(|planned| Some(&planned.op) == op.as_ref()).map(|planned| planned.stage);
    // What is not planned of a piece is made.
    let planned = estimate.rows.iter().map(|row| (stage(&row.op).unwrap_or(Stage::Make), row.to_come()));
    for (of, left) in planned.chain(estimate.counted.iter().map(|one| (one.stage, one.to_come()))) {
        match stages.iter_mut().find(|(stage, _)| *stage == of) {
            Some((_, span)) => *span = span.plus(left),
            None => stages.push((of, left)),
        }
    }
    stages.retain(|(_, span)| Span::ZERO < *span);
    stages
}

fn so_far_card(sheet: &JobSheet, estimate: Option<&EstimateSheet>, seen: Seen<'_>) -> El<Msg> {
    let to_come = estimate.map(|estimate| by_stage(sheet, estimate));
    let bar = stretches(&sheet.so_far, to_come.as_ref().unwrap_or(&sheet.to_come), seen);
    // What is likely, as on every other page; the plan speaks where nothing else is known.
    let likely = estimate.and_then(|estimate| estimate.progress.to_come).map(|still| (still, false));
    let still = likely.or(sheet.bench.still.map(|still| (still, true)));
    let still = still.filter(|(still, _)| Span::ZERO < *still);
    let still = still.map(|(still, planned)| words::still(&seen.speech.span(still), planned));
    let total = hours_of(sheet, seen).unwrap_or(words::NOTHING_LOGGED.to_owned());
    let settle = (Span::ZERO < sheet.account.not_counted()).then(|| el("p", "t14").text(words::SETTLE_ON_BENCH));
    let right = words::so_far_and(&total, still.as_deref());
    el("section", "card sofar")
        .attr("aria-label", bar_said(&bar))
        .kid(el("p", "row").kid(el("span", "w8").text(words::SO_FAR)).kid(el("span", "t14").text(right)))
        .kids((!bar.is_empty()).then(|| so_far(&bar, seen.page.card())))
        .kids(estimate.and_then(|estimate| super::estimate::by_name(estimate.by_name())))
        .kids(of_job(sheet, seen).map(|said| el("p", "t14 i2").text(said)))
        .kids(guessed(sheet.account.hours.by_any, seen))
        .kids(super::estimate::unnoted(&sheet.account.hours.unnoted))
        .kids(settle)
        .kids(haul_in_question(sheet.account.hours.hauls_unsettled, seen))
        .kids(sheet.account.costs.lacking().as_ref().map(lacking))
}

/// What was agreed or sold with what is paid of it; costs and left per hour.
fn money_card(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (costs, per_hour) = (sheet.money.costs_in_all, sheet.money.as_it_stands);
    let agreed = agreed(sheet, app, seen);
    if costs.is_none() && agreed.is_empty() && sheet.account.costs.unsettled.is_zero() {
        return None;
    }
    let still = sheet.account.costs.still;
    let costs_word = if still.is_zero() { words::COSTS.to_owned() } else { words::costs_to_come(&sum(still, seen)) };
    let costs = apart((costs, sheet.account.costs.unsettled), seen).unwrap_or(words::COSTS_UNKNOWN.to_owned());
    let rest = rest(&app.shelf().shop(app.now.at), sheet.job, paid(app)).ok().flatten().filter(Rest::is_any);
    let (free, there) = (sheet.sale.left.saturating_sub(sheet.account.sold.promised), sheet.account.sold.at_galleries);
    let (word, if_sold) = match &rest {
        Some(rest) => (unsold(free, there, seen), Some(line(if_go(rest, app, seen), hourly(rest.sold.left, sheet.account.currency, seen)))),
        None if 0 < free.saturating_add(there) => (unsold(free, there, seen), None),
        None => (fee_by(sheet, app).map_or(words::AS_IT_STANDS.to_owned(), |paid| words::as_it_stands_by(by(paid))), None),
    };
    // Where no hour was logged what is left in all is known, once nothing is left to sell.
    let (word, stands) = match (per_hour, sheet.account.sold.in_the_end()) {
        (Some(per_hour), _) => (word, hourly(per_hour.left, sheet.account.currency, seen)),
        (None, Some(kept)) => (words::LEFT_IN_ALL.to_owned(), sum(kept, seen)),
        (None, None) => (word, words::NOT_KNOWN.to_owned()),
    };
    let after = per_hour.and_then(|per_hour| per_hour.after_workshop);
    let rule = (!agreed.is_empty()).then(|| el("div", "rule"));
    let after = after.map(|rate| line(words::AFTER_WORKSHOP, hourly(rate, sheet.account.currency, seen)));
    let card = el("section", "card money").kids(agreed).kids(rule).kid(line(costs_word, costs)).kid(line(word, stands));
    Some(card.kids(after).kids(if_sold).kids(at_nothing(&sheet.account.sold, seen)))
}

fn agreed(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let sold = &sheet.account.sold;
    let open = sheet.selling.open().next();
    let Owed { received, rounded, due, others, before_change, given_off, .. } = sheet.sale.owed;
    let all = match received.plus(due) {
        Ok(all) if Decimal::ZERO < all.amount() => all,
        // A gallery's money, and the fees of what went back, are in what is left.
        _ => return between(sheet, app, seen),
    };
    let title = match sold.agreed {
        Some(agreed) => words::agreed(&seen.speech.money(agreed)),
        None if sold.pieces == 0 => words::kept(&seen.speech.money(all)),
        // What is set aside of what came in, as no coin pays it back, was not sold.
        None => sold_and_kept(sheet, sold.taken, seen),
    };
    let when = open.map(|agreement| {
        let how = agreement.carried.map_or("", to_be_carried);
        words::when_how(&day(agreement.at, seen), how)
    });
    let share = received.amount().checked_div(all.amount()).and_then(|share| f64::try_from(share).ok()).unwrap_or(0.0);
    let [handed, of] = sheet.selling.open().fold([0; 2], |[handed, of]: [fivebar_core::quantity::Count; 2], agreement| {
        [handed.saturating_add(agreement.sold), of.saturating_add(agreement.n)]
    });
    let gone = (0 < handed).then(|| el("p", "t14").text(words::of_them_handed_over(&seen.speech.count(handed), &seen.speech.count(of))));
    let came = match (received.is_zero(), open) {
        (true, _) => el("span", "t14 nw").text(words::NOTHING_PAID),
        (_, Some(_)) => {
            let word = if handed == 0 && before_change.is_zero() { words::DEPOSIT_IN } else { words::IN_SO_FAR };
            part("t14 c-good nw", word, &sum(received, seen))
        }
        (_, None) if sold.handed_over.is_zero() => part("t14 c-good nw", words::PAID, &sum(received, seen)),
        (_, None) => part("t14 c-good nw", words::PAID_BY_BUYERS, &sum(received, seen)),
    };
    let mut dues = dues(sheet).into_iter();
    let due = dues.next().map(|(word, due)| part("t14 nw", word, &sum(due, seen)));
    let then = dues.map(|(word, due)| line(word, sum(due, seen)));
    // What was kept of an order that came to nothing was paid for nothing sold.
    let currency = sheet.account.currency;
    let kept = open.and_then(|_| sheet.selling.kept(currency).ok()).unwrap_or(Money::zero(currency));
    let others = others.minus(kept).unwrap_or(others);
    let beside = [
        (words::BEFORE_CHANGE, before_change),
        (words::OFF_THE_PRICE, given_off),
        (words::PAID_FOR_OTHERS, others),
        (words::KEPT_OF_OTHERS, kept),
    ];
    let beside = beside.into_iter().filter(|(_, of)| Decimal::ZERO < of.amount()).map(|(word, of)| line(word, sum(of, seen)));
    vec![
        el("p", "row").kid(el("span", "w8").text(title)).kids(when.map(|when| el("span", "t14").text(when))),
        paid_bar(share, seen.page.card()),
        el("p", "row").kid(came).kids(due),
    ]
    .into_iter()
    .chain(super::sell::rounded(Some(rounded), seen))
    .chain(gone)
    .chain(then)
    .chain(beside)
    .chain(between(sheet, app, seen))
    .listed()
}

/// What pieces were sold for, and beside it what was kept of orders that came to nothing and of pieces that came back.
fn sold_and_kept(sheet: &JobSheet, all: Money, seen: Seen<'_>) -> String {
    let kept = sheet.selling.kept(all.currency()).ok().filter(|kept| !kept.is_zero());
    match kept.and_then(|kept| Some((all.minus(kept).ok()?, kept))) {
        Some((sold, kept)) => words::sold_and_kept(&seen.speech.money(sold), &sum(kept, seen)),
        None => words::sold(&seen.speech.money(all)),
    }
}

/// What stands between the sums paid and what is left: a gallery's money, tax and fees.
fn between(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let sold = &sheet.account.sold;
    let back = all_back(sheet, seen);
    let gallery = (!sold.handed_over.is_zero()).then(|| line(words::FROM_GALLERY, sum(sold.handed_over, seen)));
    let owes = (!sold.due_from_galleries.is_zero()).then(|| line(words::DUE_FROM_GALLERY, sum(sold.due_from_galleries, seen)));
    let beyond = sheet.selling.beyond_dues(sheet.account.currency).ok().filter(|beyond| !beyond.is_zero());
    let beyond = beyond.map(|beyond| line(words::BEYOND_GALLERY, sum(beyond, seen)));
    let given_up = (!sold.given_up.is_zero()).then(|| line(words::GIVEN_UP, sum(sold.given_up, seen)));
    let gallery = gallery.into_iter().chain(beyond).chain(owes).chain(given_up);
    let lost = sheet.account.costs.fees_lost;
    let (off, to_come) = (sheet.money.off, sheet.money.fees_to_come);
    let known = off.minus(lost).and_then(|off| off.minus(to_come)).unwrap_or(off);
    let taken = |word, off: Money| (!off.is_zero()).then(|| line(word, format!("\u{2212}{}", sum(off, seen))));
    let taken = [taken(words::TAX_AND_FEES, known), fees_to_come(sheet, app, seen), taken(words::FEES_LOST, lost)];
    back.into_iter().chain(gallery).chain(taken.into_iter().flatten()).listed()
}

/// Where something went back: all that came in, and what went back of it. What is paid above is the one less the other.
pub fn all_back(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let came = Money::sum(sheet.account.currency, sheet.selling.payments.iter().map(|payment| payment.sum));
    let back = came.clone().and_then(|came| came.minus(sheet.account.sold.received));
    match (came, back) {
        (Ok(came), Ok(back)) if !back.is_zero() => {
            vec![line(words::CAME_IN, sum(came, seen)), line(words::WENT_BACK, format!("\u{2212}{}", sum(back, seen)))]
        }
        _ => vec![],
    }
}

fn part(class: &'static str, word: &str, figure: &str) -> El<Msg> {
    el("span", class).kid(el("span", "").text(format!("{word} "))).kid(el("b", "t17 w8").text(figure.to_owned()))
}

fn rooms(sheet: &JobSheet, seen: Seen<'_>) -> El<Msg> {
    let room = |name: &'static str, under: String, room: Room| key("key left", name, under, say(Tap::Room(room)));
    el("div", "g2")
        .kid(room(words::WOOD_AND_PLAN, wood_under(sheet, seen), Room::Wood))
        .kid(room(words::HOURS_AND_MONEY, hours_under(sheet, seen), Room::Hours))
        .kid(room(words::SELL_AND_DELIVER, sell_under(sheet, seen), Room::Sell))
        .kid(room(words::LOOK_BACK, back_under(sheet, seen), Room::Back))
}

fn wood_under(sheet: &JobSheet, seen: Seen<'_>) -> String {
    if sheet.wood.pieces == 0 {
        let apart = (0 < sheet.wood.apart).then(|| rack_words::apart(&seen.speech.count(sheet.wood.apart)));
        return apart.unwrap_or_else(|| words::NO_WOOD_YET.into());
    }
    let used = sheet
        .account
        .wood
        .used
        .map(|used| format!("{} {}", seen.speech.volume(used, sheet.account.units), words::volume_short(sheet.account.units)));
    words::wood_under(&common::pieces(sheet.wood.pieces, &seen.speech.count(sheet.wood.pieces)), used.as_deref())
}

fn hours_under(sheet: &JobSheet, seen: Seen<'_>) -> String {
    let (spent, to_settle) = (sheet.money.costs.map(|costs| sum(costs, seen)), sheet.account.costs.unsettled);
    let said = words::hours_under(hours_of(sheet, seen).as_deref(), spent.as_deref());
    if to_settle.is_zero() { said } else { words::of_it_to_settle(&said, &sum(to_settle, seen)) }
}

fn sell_under(sheet: &JobSheet, seen: Seen<'_>) -> String {
    let sold = &sheet.account.sold;
    match (sold.agreed, sheet.sale.tag) {
        (Some(agreed), _) if Decimal::ZERO < sold.due.amount() => words::agreed_due(&short(agreed, seen), &short(sold.due, seen)),
        (_, _) if 0 < sold.pieces.saturating_add(sold.by_galleries).saturating_add(sold.not_for_sale) => {
            let all = sold.pieces.saturating_add(sold.by_galleries);
            let gone = words::gone(all, sold.at_galleries, (&seen.speech.count(all), &seen.speech.count(sold.at_galleries)));
            let is_none = all == 0 && !sold.is_any_to_sell();
            let gone = if is_none { words::NONE_SOLD.to_owned() } else { gone };
            words::gone_and(gone, sold.not_for_sale, &seen.speech.count(sold.not_for_sale))
        }
        (Some(agreed), _) => {
            let over = Money::zero(agreed.currency()).minus(sold.due).ok().filter(|over| !over.is_zero());
            words::agreed_paid(&short(agreed, seen), over.map(|over| short(over, seen)).as_deref())
        }
        (_, Some(tag)) => words::tag(&short(tag, seen)),
        _ => words::NO_PRICE_YET.into(),
    }
}

fn back_under(sheet: &JobSheet, seen: Seen<'_>) -> String {
    // As its page leads.
    let leads = super::back::leads(sheet).map(|(left, _)| left);
    let is_to_hand_over = sheet.ended.is_none() && sheet.account.sold.is_any_to_sell();
    match leads.or(sheet.money.per_hour) {
        _ if is_to_hand_over => words::AFTER_HAND_OVER.into(),
        Some(rate) => words::back_under(&hourly(rate, sheet.account.currency, seen)),
        None if sheet.ended.is_some() => words::DONE_WITH_IT.into(),
        None => words::HOW_IT_WENT.into(),
    }
}
