//! Look back: left per hour large, three ratios and one sentence; the lesson; done with this job.

use super::super::count::saved_fact;
use super::super::sources::of_job;
use super::super::{Screen, Seen, undo};
use super::figures::{hourly, left_out, line, percent, short, sum, to_settle};
use super::{rest, say};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::What;
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::ratio::{Ratio, ratios};
use crate::screens::price::waiting::back_said;
use crate::view::{El, el};
use crate::words::en::job::Strayed;
use crate::words::en::workshop::hours_from;
use crate::words::en::{job as words, jobs};
use fivebar_core::quantity::{Currency, Decimal, Listed, Money, Span};
use fivebar_core::sheet::gallery::are_several;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::look_back::{LookBack, look_back};

/// The room.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let back = look_back(&app.shelf().shop(seen.now.at), sheet.job).ok();
    let top = Head::new(super::titled(sheet, seen), jobs::LOOK_BACK);
    let ended = sheet.ended.map(|at| Fact::Strong(jobs::ended_on(&seen.speech.day(at))));
    let top = ended.into_iter().chain([saved_fact(app, seen)]).fold(top, Head::fact);
    let beside = kept(sheet, seen).into_iter().chain(rest::fees_to_come(sheet, app, seen)).listed();
    let first = el("div", "col").kid(large(sheet, back.as_ref(), beside, seen)).kids(rest::at_nothing(&sheet.account.sold, seen));
    let first = first.kids(back.as_ref().map(|back| against_plan(sheet, back, seen)));
    let is_priced = back.as_ref().is_some_and(|back| back.ratios.price.is_some());
    let first = first.kids(if is_priced { not_in_price(sheet, seen) } else { not_sold(sheet, seen) });
    let first = first.kids(of_job(sheet, seen).map(|said| el("p", "t14 i2").text(hours_from(&said))));
    let (ended, open) = (sheet.ended.is_some(), sheet.account.hours.unsettled);
    let first = first.kids(if ended { to_settle(open, "w7", seen) } else { left_out(sheet, "w7", seen) });
    let first = first.kids(haul_before_the_end(sheet.account.hours.hauls_unsettled, seen));
    let first = first.kids(back.as_ref().and_then(|back| super::estimate::next(back, seen)));
    let waited = back.as_ref().and_then(|back| back.waiting).map(|back| el("p", "t14").text(back_said(back, seen)));
    let first = first.kids(waited);
    let lesson = sheet
        .lesson
        .as_ref()
        .map(|lesson| el("section", "card").kid(el("p", "t14 i2").text(words::THE_LESSON)).kid(el("p", "w7").text(lesson.clone())));
    let second = el("div", "col")
        .kids(lesson)
        .kid(el("div", "push"))
        .kids(undo::bar(app, seen))
        .kid(judged(sheet))
        .kids(unsold(sheet, seen))
        .kid(end(sheet));
    let second = second.kid(key("key soft h48", words::THE_JOB, "", say(Tap::Page)));
    Screen::new("jobs/back", head(top), el("main", "two scr").kid(first).kid(second))
}

/// Left per hour, large, and over what; beside what is left in all, what was kept in it, and what is still to come off it.
fn large(sheet: &JobSheet, back: Option<&LookBack>, beside: Vec<El<Msg>>, seen: Seen<'_>) -> El<Msg> {
    let per_hour = sheet.account.sold.per_hour;
    let currency = sheet.account.currency;
    let Some((per_hour, money)) = per_hour.and_then(|all| Some((all, Money::book(all.left, currency).ok()?))) else {
        // Nothing is sold: what is agreed leads, as the key before it says.
        if let Some(top) = leads(sheet).filter(|_| to_come(sheet, currency).is_none()).and_then(|leads| lead(leads, currency, seen)) {
            return top.kid(el("p", "").text(none_left(sheet))).kids(beside);
        }
        let in_all = sheet.account.sold.in_the_end().map(|kept| words::in_all(&sum(kept, seen)));
        let said = el("p", "notice").text(in_all.into_iter().chain([none_left(sheet).to_owned()]).listed().join(" "));
        return if beside.is_empty() { said } else { el("div", "").kid(said).kids(beside) };
    };
    let sold = &sheet.account.sold;
    let (unsold, there) = (sold.left.saturating_sub(sold.promised), sold.at_galleries);
    let went = (0 < sold.left).then(|| [sold.pieces.saturating_add(sold.by_galleries), sheet.sale.of].map(|n| seen.speech.count(n)));
    let over = sold.kept.zip(sheet.bench.total);
    let over = over.map(|(kept, total)| {
        words::kept_over(went.as_ref().map(|[sold, of]| (sold.as_str(), of.as_str())), &sum(kept, seen), &seen.speech.span(total))
    });
    // As the job's own page has it: with all that is still to come, and nothing of what is unsold.
    let (to_come, leading) = (to_come(sheet, currency), leads(sheet).and_then(|leads| lead(leads, currency, seen)));
    let is_said = to_come.is_some() || leading.is_some();
    let all_unsold = unsold.saturating_add(there);
    let stands = sheet.money.as_it_stands.filter(|stands| 0 < all_unsold && stands.left != per_hour.left && !is_said);
    let stands = stands.map(|stands| line(rest::unsold(unsold, there, seen), hourly(stands.left, currency, seen)));
    let held = back.and_then(|back| held(back, currency, seen));
    let gone = back.is_some_and(|back| back.likely_is_gone) && held.is_some();
    let after = per_hour.after_workshop.zip(per_hour.every_hour);
    let after = after.map(|(after, every)| words::after_workshop(&hourly(after, currency, seen), &hourly(every, currency, seen)));
    let top = el("section", "lead");
    let top = match to_come {
        // What an hour has left so far flatters while hours are to come.
        Some((span, likely)) => top
            .kid(big(likely, seen))
            .kid(el("p", "w7").text(words::left_by_likely(&seen.speech.span(span))))
            .kids(over.map(|over| el("p", "").text(format!("{} {over}", seen.speech.money(money))))),
        // What came ahead of pieces that are agreed, its fee and their costs are of no piece that is sold yet.
        None => match leading {
            Some(leading) => leading.kids(over.map(|over| el("p", "").text(format!("{} {over}", seen.speech.money(money))))),
            None => top.kid(big(money, seen)).kids(over.map(|over| el("p", "w7").text(over))),
        },
    };
    let due = Some(sold.due_from_galleries).filter(|due| Decimal::ZERO < due.amount());
    top.kids(due.map(|due| el("p", "").text(words::due_of_it(&sum(due, seen)))))
        .kids(beside)
        .kids(stands)
        .kids(held.map(|held| el("p", "").text(held)))
        .kids(gone.then(|| el("p", "t14 i2").text(words::LIKELY_IS_GONE)))
        .kids(after.map(|after| el("p", "t14 i2").text(after)))
}

/// What an hour leaves as it stands, large, and with what.
fn lead((left, with): (Decimal, &'static str), currency: Currency, seen: Seen<'_>) -> Option<El<Msg>> {
    let left = Money::book(left, currency).ok()?;
    Some(el("section", "lead").kid(big(left, seen)).kid(el("p", "w7").text(with)))
}

fn big(money: Money, seen: Seen<'_>) -> El<Msg> {
    let class = if money.amount() < Decimal::ZERO { "t60 w8 c-under" } else { "t60 w8" };
    el("p", class).text(seen.speech.money(money))
}

/// While work is to come: all hours with it, and what one of them leaves as it stands.
fn to_come(sheet: &JobSheet, currency: Currency) -> Option<(Span, Money)> {
    let hours = &sheet.account.hours;
    let to_come = hours.to_come.filter(|to_come| Span::ZERO < *to_come)?;
    let rate = sheet.money.as_it_stands?.left;
    Some((hours.total?.plus(to_come), Money::book(rate, currency).ok()?))
}

/// What an hour leaves as it stands, where what is sold does not tell it: some of it is agreed and not handed over, or all is gone, to
/// no gallery either, and the fee of what is still owed is to come, or costs are.
pub fn leads(sheet: &JobSheet) -> Option<(Decimal, &'static str)> {
    let (sold, stands) = (&sheet.account.sold, sheet.money.as_it_stands?.left);
    let is_gone = sold.left == 0 && sold.at_galleries == 0;
    let is_to_bear = is_gone && Decimal::ZERO < sold.due.amount() && sheet.money.per_hour.is_some_and(|so_far| stands < so_far);
    let is_to_come = |sum: Money| Decimal::ZERO < sum.amount();
    let causes = (is_to_come(sheet.money.fees_to_come), is_to_come(sheet.account.costs.still));
    match causes {
        _ if 0 < sold.promised => Some((stands, words::LEFT_WITH_AGREED)),
        (true, true) if is_to_bear => Some((stands, words::LEFT_WITH_FEES_AND_COSTS)),
        (false, true) if is_to_bear => Some((stands, words::LEFT_WITH_COSTS)),
        _ if is_to_bear => Some((stands, words::LEFT_WITH_FEES)),
        _ => None,
    }
}

/// What is answered for later, once the job is done with, is the workshop's.
fn haul_before_the_end(open: Span, seen: Seen<'_>) -> Option<El<Msg>> {
    (Span::ZERO < open).then(|| el("p", "w7").text(words::haul_before_the_end(&seen.speech.span(open))))
}

/// Why nothing is known to be left of an hour.
fn none_left(sheet: &JobSheet) -> &'static str {
    let sold = &sheet.account.sold;
    match sold.pieces.saturating_add(sold.by_galleries) {
        0 if sold.is_any_to_sell() => words::NOTHING_LEFT_YET,
        _ if sheet.account.hours.logged.own.total() <= Span::ZERO => words::NO_HOURS_LOGGED,
        _ if sheet.account.hours.stands.own.total() <= Span::ZERO => words::ALL_HOURS_OPEN,
        _ => words::NO_COSTS_KNOWN,
    }
}

/// What an hour would have left by the plan, and by what was likely.
fn held(back: &LookBack, currency: Currency, seen: Seen<'_>) -> Option<String> {
    let (rate, planned) = (hourly(back.had_it_held?, currency, seen), seen.speech.span(back.estimate?));
    let likely = back.had_likely.map(|(span, rate)| (hourly(rate, currency, seen), seen.speech.span(span)));
    let likely = likely.as_ref().map(|(rate, span)| (rate.as_str(), span.as_str()));
    Some(words::had_it_held((&rate, &planned), likely, back.warned.is_some()))
}

fn against_plan(sheet: &JobSheet, back: &LookBack, seen: Seen<'_>) -> El<Msg> {
    let rows: Vec<Ratio> =
        [hours_row(back, seen), wood_row(sheet, back, seen), price_row(sheet, back, seen)].into_iter().flatten().listed();
    if rows.is_empty() {
        return el("p", "t14 i2").text(words::NO_RATIOS);
    }
    let said = sentence(back, seen);
    let one = seen.speech.number(Decimal::ONE, 2, 2);
    el("section", "card ratios").kids((!said.is_empty()).then(|| el("p", "t22 w8").text(said))).kid(ratios(
        &rows,
        (words::AS_PLANNED, &one),
        seen.page.card(),
        words::RATIOS_SAID,
    ))
}

fn ratio((name, note): (&str, String), of: Decimal, under: bool, seen: Seen<'_>) -> Ratio {
    let figure = seen.speech.number(of, 2, 2);
    Ratio { name: name.to_owned(), note, ratio: f64::try_from(of).unwrap_or(1.0), figure, under }
}

/// None while work is to come.
fn hours_row(back: &LookBack, seen: Seen<'_>) -> Option<Ratio> {
    let of = back.ratios.hours.filter(|_| back.to_come.is_none())?;
    let (actual, planned) = (seen.speech.span(back.actual?), seen.speech.span(back.estimate?));
    Some(ratio((words::HOURS, words::against(&actual, &planned)), of, Decimal::ONE < of, seen))
}

fn wood_row(sheet: &JobSheet, back: &LookBack, seen: Seen<'_>) -> Option<Ratio> {
    let (of, wood) = (back.ratios.wood?, &sheet.account.wood);
    let note = words::wood_against(&percent(wood.finished_of_used?, seen), &percent(wood.assumed, seen));
    Some(ratio((words::WOOD, note), of, of < Decimal::ONE, seen))
}

fn price_row(sheet: &JobSheet, back: &LookBack, seen: Seen<'_>) -> Option<Ratio> {
    let of = back.ratios.price?;
    let (got, asked) = back.ratios.got_of_asked?;
    let note = words::price_against(&short(got, seen), &short(asked, seen), 0 < sheet.account.sold.by_galleries);
    Some(ratio((words::PRICE, note), of, of < Decimal::ONE, seen))
}

/// What was kept of orders that came to nothing and of pieces that came back: it is in what is left.
fn kept(sheet: &JobSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let kept = sheet.selling.kept(sheet.account.currency).ok().filter(|kept| !kept.is_zero())?;
    Some(line(jobs::KEPT_OF_OTHERS, sum(kept, seen)))
}

/// What is not for sale any more: "1 broken".
fn not_for_sale(sheet: &JobSheet, seen: Seen<'_>) -> Vec<String> {
    sheet.selling.not_for_sale.iter().map(|it| format!("{} {}", seen.speech.count(it.n), words::instead(it.why))).listed()
}

/// The same where no price is held against what was asked.
fn not_sold(sheet: &JobSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let gone = not_for_sale(sheet, seen);
    (!gone.is_empty()).then(|| el("p", "t14").text(words::not_sold(&gone)))
}

/// What went another way than to a buyer: by a gallery, or not for sale any more.
fn not_in_price(sheet: &JobSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let sold = &sheet.account.sold;
    let are_several = are_several(sheet.selling.lots().iter().filter(|lot| 0 < lot.sold).map(|lot| lot.gallery));
    let by_gallery = (0 < sold.by_galleries)
        .then(|| words::by_gallery(&seen.speech.count(sold.by_galleries), &short(sold.from_galleries, seen), are_several));
    let gone = by_gallery.into_iter().chain(not_for_sale(sheet, seen)).listed();
    (!gone.is_empty()).then(|| el("p", "t14").text(words::not_in_price(&gone)))
}

/// One sentence: what strayed, then what went as planned; of hours, while work is to come, how much is.
fn sentence(back: &LookBack, seen: Seen<'_>) -> String {
    let to_come = back.to_come.map(|to_come| seen.speech.span(to_come));
    let (mut strayed, mut as_planned) = (vec![], vec![]);
    let mut note = |known: bool, way: Strayed, words: (String, &'static str)| match way {
        _ if !known => {}
        Strayed::AsPlanned => as_planned.push(words.1),
        _ => strayed.push(words.0),
    };
    let hours = back.ratios.hours.map(|ratio| within(ratio, 5));
    let written = hours_over(back, seen);
    let hours_way = hours.unwrap_or(Strayed::AsPlanned);
    // Hours that go on are held against no plan.
    let hours_said = match &to_come {
        Some(to_come) => (Strayed::Over, words::still_to_come(to_come)),
        None => (hours_way, words::hours_strayed(hours_way, &written)),
    };
    note(hours.is_some(), hours_said.0, (hours_said.1, words::HOURS_SMALL));
    let wood = back.ratios.wood.map(|ratio| within(ratio, 10)).unwrap_or(Strayed::AsPlanned);
    note(back.ratios.wood.is_some(), wood, (words::wood_strayed(wood).into(), words::WOOD_SMALL));
    let price = back.ratios.price.map(|ratio| within(ratio, 3)).unwrap_or(Strayed::AsPlanned);
    note(back.ratios.price.is_some(), price, (words::price_strayed(price).into(), words::PRICE_SMALL));
    words::sentence(&strayed, &as_planned)
}

/// The hours between plan and fact: in whole ones, small ones in words, where that is off by a tenth at most [J], else as they are.
fn hours_over(back: &LookBack, seen: Seen<'_>) -> String {
    let off = back.actual.zip(back.estimate).map_or(0, |(actual, estimate)| actual.minus(estimate).as_minutes().saturating_abs());
    let whole = off.saturating_add(30).div_euclid(60);
    let apart = off.saturating_sub(whole.saturating_mul(60)).saturating_abs();
    match words::number_word(whole).filter(|_| 0 < whole && apart.saturating_mul(10) <= off) {
        Some(word) => words::whole_hours(word, whole == 1),
        None => seen.speech.span(Span::minutes(off)),
    }
}

/// Whether a ratio is as planned, within so many percent.
fn within(ratio: Decimal, percent: i64) -> Strayed {
    let band = Decimal::new(percent, 2);
    match () {
        () if Decimal::ONE.saturating_add(band) < ratio => Strayed::Over,
        () if ratio < Decimal::ONE.saturating_sub(band) => Strayed::Under,
        () => Strayed::AsPlanned,
    }
}

fn judged(sheet: &JobSheet) -> El<Msg> {
    let typical = match sheet.typical {
        true => key("key", words::NOT_TYPICAL, words::NOT_TYPICAL_UNDER, say(Tap::Typical(false))),
        false => key("key", words::TYPICAL, words::TYPICAL_UNDER, say(Tap::Typical(true))),
    };
    let lesson = if sheet.lesson.is_some() { words::LESSON_AGAIN } else { words::LESSON };
    el("div", "g2").kid(typical).kid(key("key", lesson, words::LESSON_UNDER, say(Tap::Write(What::Lesson))))
}

/// What is not sold stays for sale when the maker is done with the job; or it is not for sale any more.
fn unsold(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let promised = sheet.account.sold.promised;
    let agreed = (0 < promised).then(|| el("p", "w7").text(words::still_agreed(promised, &seen.speech.count(promised))));
    let free = sheet.account.sold.left.saturating_sub(promised);
    if free == 0 {
        return agreed.into_iter().listed();
    }
    let said = words::unsold((free, &seen.speech.count(free)), (sheet.sale.tag.is_some(), sheet.ended.is_some()));
    let key = key("key soft h56", words::NOT_FOR_SALE, words::NOT_FOR_SALE_UNDER, say(Tap::Write(What::NotForSale)));
    agreed.into_iter().chain([el("p", "w7").text(said), key]).listed()
}

fn end(sheet: &JobSheet) -> El<Msg> {
    match sheet.ended {
        None => key("key solid", words::END, words::END_UNDER, say(Tap::End)),
        Some(_) => key("key", words::REOPEN, words::REOPEN_UNDER, say(Tap::Reopen)),
    }
}
