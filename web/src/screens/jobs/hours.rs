//! Hours and money: minutes by operation and where they come from, what is planned, what was spent.

use super::super::price::list::haul_in_question;
use super::super::sources::{of_job, sources};
use super::super::{Screen, Seen, receipts, undo};
use super::figures::{apart, hours_of, hours_so_far, is_scrolled, lacking, left_out, line, small, spent_so_far, sum, to_settle};
use super::{say, to_job};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::What;
use crate::app::jobs::estimate::sheet as estimated;
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::estimate::REST;
use crate::words::en::how as how_words;
use crate::words::en::{cans as can_words, common, costs as cost_words, job as words, jobs};
use fivebar_core::bench::estimate::{Basis, Left, OnTop};
use fivebar_core::bench::{Division, On, Shares};
use fivebar_core::ledger::fold::{Booked, How, Operation};
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::quantity::order_by_key;
use fivebar_core::quantity::{Id, Listed, Span, Units, writing};
use fivebar_core::sheet::account::Hours;
use fivebar_core::sheet::carried::HAUL;
use fivebar_core::sheet::estimate::EstimateSheet;
use fivebar_core::sheet::helped::pay_of;
use fivebar_core::sheet::job::JobSheet;

/// The room.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let total = hours_of(sheet, seen).map(Fact::Strong);
    let costs = match sheet.money.costs {
        Some(costs) if sheet.account.costs.unsettled.is_zero() => Some(seen.speech.money(costs)),
        _ => spent_so_far(sheet, seen),
    };
    let costs = costs.map(Fact::Plain);
    let top = Head::new(super::titled(sheet, seen), jobs::HOURS_AND_MONEY);
    let top = [total, costs].into_iter().flatten().fold(top, Head::fact);
    let none = |words: &'static str| el("p", "t14 i2").text(words);
    let estimate = estimated(app, sheet.job);
    let all = if sheet.operations.is_empty() { none(words::NONE_PLANNED) } else { planned((sheet, app), estimate.as_ref(), seen) };
    let add = key("key soft h56", words::ADD_OPERATION, "", say(Tap::Write(What::Plan(None))));
    let title = el("h2", "").text(words::PLANNED);
    let block = super::estimate::block(sheet, estimate.as_ref(), app, seen);
    let is_long = is_scrolled(sheet.operations.len());
    let (before, after) = if is_long { (block, vec![title, add, all]) } else { (vec![title, all, add], block) };
    let nothing_logged = sheet.account.hours.by_division.is_empty() && sheet.account.hours.unsettled <= Span::ZERO;
    let first = el("div", "col")
        .kid(el("h2", "").text(words::MINUTES))
        .kid(if nothing_logged { none(words::NONE_LOGGED) } else { minutes(sheet, seen) })
        .kids(sheet.account.costs.lacking().as_ref().map(lacking))
        .kids(before)
        .kids(after);
    let nothing_spent = sheet.account.costs.lines.is_empty() && sheet.account.costs.by_kind.is_empty();
    let nothing_spent = nothing_spent && sheet.helped.is_empty() && sheet.helped_to_settle.is_empty();
    let second = el("div", "col").kid(el("h2", "").text(words::SPENT)).kid(if nothing_spent {
        none(words::NONE_SPENT)
    } else {
        spent(sheet, app, seen)
    });
    let second = second.kids(super::homes::both(sheet, app, seen));
    let spend = key("key solid h56", words::WRITE_SPENDING, "", say(Tap::Write(What::Spend)));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(el("div", "um").kid(spend).kid(to_job()));
    Screen::new("jobs/hours", head(top), el("main", "two scr").kid(first).kid(second)).foot(foot)
}

/// Every operation with its minutes and where they come from; kinds and the share of the hauls below.
fn minutes(sheet: &JobSheet, seen: Seen<'_>) -> El<Msg> {
    let hours = &sheet.account.hours;
    let (by_op, haul) = each_op(hours);
    let divisions = Span::in_minutes(&hours.by_division.values().copied().listed());
    let kinds = hours.by_division.keys().zip(divisions).map(|(of, span)| format!("{} {}", jobs::division(*of), seen.speech.span(span)));
    let kinds = kinds.listed().join(", ");
    el("section", "card list")
        .kids(by_op.into_iter().map(|(op, shares, span)| operation(op, (*shares, span), seen)))
        .kids(haul.map(|haul| part(words::FETCH_SHARE, (hours.haul_sources, haul), seen)))
        .kids((!kinds.is_empty()).then(|| el("p", "t14 i2 sums").text(kinds)))
        .kids(of_job(sheet, seen).map(|said| el("p", "t14 i2 sums").text(said)))
        .kids(if sheet.ended.is_some() { to_settle(hours.unsettled, "t14 sums", seen) } else { left_out(sheet, "t14 sums", seen) })
        .kids(haul_in_question(hours.hauls_unsettled, seen))
}

/// Each operation that was worked, what took the most first, and the share of the hauls, in whole minutes that add up to the total at the top,
/// wherever they stand on the page.
fn each_op(hours: &Hours) -> (Vec<(&String, &Shares, Span)>, Option<Span>) {
    let mut by_op: Vec<(&String, &Shares)> = hours.stands.by_op.iter().filter(|(_, shares)| Span::ZERO < shares.total()).listed();
    order_by_key(&mut by_op, |(_, shares)| std::cmp::Reverse(shares.total()));
    let haul = hours.haul.filter(|haul| Span::ZERO < *haul);
    let mut each = Span::in_minutes(&by_op.iter().map(|(_, shares)| shares.total()).chain(haul).listed());
    let haul = haul.and_then(|_| each.pop());
    (by_op.into_iter().zip(each).map(|((op, shares), span)| (op, shares, span)).listed(), haul)
}

fn operation(op: &str, of: (Shares, Span), seen: Seen<'_>) -> El<Msg> {
    part(&jobs::upper_first(op), of, seen)
}

/// What it rests on is said where not all of it was measured.
fn part(name: &str, (shares, span): (Shares, Span), seen: Seen<'_>) -> El<Msg> {
    let mixed = shares.corrected.plus(shares.recalled);
    let under = if Span::ZERO < mixed { sources(shares, &[], seen).unwrap_or_default() } else { String::new() };
    row(name, &under, &seen.speech.span(span))
}

fn row(name: &str, under: &str, figure: &str) -> El<Msg> {
    let under = (!under.is_empty()).then(|| el("span", "t14 i2").text(under.to_owned()));
    el("div", "dl mid")
        .kid(el("span", "op").kid(el("span", "w7").text(name.to_owned())).kids(under))
        .kid(el("span", "t17 w8").text(figure.to_owned()))
}

/// The plan: each operation a key that changes it, with what it took so far and what it likely takes.
fn planned((sheet, app): (&JobSheet, &App), likely: Option<&EstimateSheet>, seen: Seen<'_>) -> El<Msg> {
    let hours = &sheet.account.hours;
    let still = likely.and_then(|sheet| sheet.progress.to_come).or(hours.still);
    let still = still.filter(|still| Span::ZERO < *still).map(|still| small(words::STILL_TO_COME, seen.speech.span(still)));
    let estimate = hours.estimate.map(|estimate| small(words::PLANNED_IN_ALL, seen.speech.span(estimate)));
    let likely_of =
        likely.filter(|sheet| sheet.found.is_some() && sheet.to_come.is_some()).and_then(|likely| of_these(sheet, likely, seen));
    el("section", "card list").kids(sheet.operations.iter().map(|operation| planned_row(operation, (sheet, app, likely), seen))).kids(
        (estimate.is_some() || still.is_some())
            .then(|| el("div", "sums").kids(estimate).kids(likely_of).kids(beyond(likely, seen)).kids(still)),
    )
}

/// What the rows come to, where that is not what was planned of them; once something is worked, what of that is to come.
fn of_these(sheet: &JobSheet, likely: &EstimateSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let rows = || likely.rows.iter().filter(|row| row.op.is_some());
    let (all, left) = (Span::sum(rows().map(|row| row.likely)), Span::sum(rows().map(|row| row.to_come())));
    let is_begun = Span::ZERO < sheet.account.hours.logged.own.total();
    let left = is_begun.then(|| jobs::still(&seen.speech.span(left), false));
    let said = [Some(seen.speech.span(all)), left].into_iter().flatten().listed().join(", ");
    (Some(all) != sheet.account.hours.estimate || is_begun).then(|| small(words::LIKELY_OF_THESE, said))
}

/// What is to come beyond the operations that are listed: what is not planned yet, and counted pieces of what nobody planned.
fn beyond(likely: Option<&EstimateSheet>, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(sheet) = likely else { return vec![] };
    let rest = sheet.rows.iter().filter(|row| row.op.is_none() && row.is_rest).map(|row| (REST.to_owned(), row.to_come()));
    let counted = sheet.counted.iter().map(|one| (jobs::upper_first(&one.op), one.to_come()));
    let left = rest.chain(counted).filter(|(_, left)| Span::ZERO < *left);
    left.map(|(name, left)| small(name, jobs::still(&seen.speech.span(left), false))).listed()
}

/// Of how many pieces it is: coats as so many on each, and what the job has fewer of says so.
fn of_pieces(operation: &Operation, (sheet, app): (&JobSheet, &App), seen: Seen<'_>) -> Option<String> {
    let (n, of) = (operation.pieces?, sheet.account.pieces);
    let (bench, on) = (app.shelf().bench(), On::Job(sheet.job));
    let each = bench.coated_each(on, &operation.op).unwrap_or(of).max(1);
    let written = |n| common::pieces(n, &seen.speech.count(n));
    let is_coats = bench.is_coated(on, &operation.op) && each < n && n.checked_rem(each) == Some(0);
    Some(match n.checked_div(each) {
        Some(coats) if is_coats => words::coats_on(&seen.speech.count(coats), &written(each)),
        _ if of < n => words::pieces_beyond(&written(n), &seen.speech.count(of)),
        _ => written(n),
    })
}

fn planned_row(operation: &Operation, (sheet, app, likely): (&JobSheet, &App, Option<&EstimateSheet>), seen: Seen<'_>) -> El<Msg> {
    let sheet_factor = likely.and_then(|sheet| match sheet.found.as_ref()?.on_top {
        OnTop::Factor(factor) => Some(seen.speech.number(factor.shown(), 2, 3)),
        OnTop::Allowance(_) => None,
    });
    let worked = each_op(&sheet.account.hours).0.into_iter().find(|(op, ..)| **op == operation.op);
    let took = worked.map(|(.., span)| seen.speech.span(span));
    let planned = operation.span.map(|span| seen.speech.span(span));
    // Without a likely end nothing was reckoned: the plan alone stands.
    let likely =
        likely.filter(|sheet| sheet.found.is_some()).and_then(|sheet| sheet.rows.iter().find(|row| row.op.as_ref() == Some(&operation.op)));
    let span = likely.map(|row| seen.speech.span(row.likely)).or_else(|| planned.clone()).unwrap_or(words::NOT_YET.to_owned());
    let factor = sheet_factor.filter(|_| likely.is_some_and(|row| row.from == Basis::Thought));
    let thought = planned.filter(|_| likely.is_some()).map(|span| words::planned_times(&span, factor.as_deref()));
    // What was thought stands there already.
    let basis = likely.filter(|row| row.from != Basis::Thought).map(|row| super::estimate::basis(row, seen));
    let pieces = of_pieces(operation, (sheet, app), seen);
    let kind = jobs::division(Division::of(operation.kind, operation.stage));
    // Once something is worked the rows say what of them is to come, and that is what their sum below is of.
    let is_begun = Span::ZERO < sheet.account.hours.logged.own.total();
    let left = likely.filter(|_| is_begun).map(|row| match row.left {
        Left::Nothing(over) => how_words::nothing_to_come(over),
        _ => jobs::still(&seen.speech.span(row.to_come()), false),
    });
    let took = took.map(|took| words::took_so_far(&took));
    let under: Vec<String> = [Some(kind.to_owned()), pieces, took, left, thought, basis].into_iter().flatten().listed();
    el("button", "dl mid")
        .attr("type", "button")
        .key(operation.op.clone())
        .on_tap(say(Tap::Write(What::Plan(Some(operation.op.clone())))))
        .kid(el("span", "op").kid(el("span", "w7").text(jobs::upper_first(&operation.op))).kid(el("span", "t14 i2").text(under.join(", "))))
        .kid(el("span", "t17 w8").text(span))
}

/// Booked lines, the latest first, each of which opens; then what comes from elsewhere.
fn spent(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let costs = &sheet.account.costs;
    let kind = |key: &str| costs.by_kind.iter().find(|(kind, _)| kind.as_str() == key).map(|(_, sum)| *sum);
    let hauls = costs.shares.iter().any(|share| share.share.is_some()).then(|| kind(HAUL)).flatten();
    let still = (!costs.still.is_zero()).then(|| line(words::STILL_TO_COME, sum(costs.still, seen)));
    el("section", "card list")
        .kids(costs.lines.iter().rev().map(|booked| booked_row(booked, app, seen)))
        .kids(helped(sheet, seen))
        .kids(hauls.map(|share| row(&jobs::upper_first(words::HAUL_SHARE), "", &sum(share, seen))))
        .kid(el("div", "sums").kids(spent_so_far(sheet, seen).map(|spent| line(words::IN_ALL, spent))).kids(still))
}

/// Who worked along, all without a name together: their hours and their pay.
fn helped(sheet: &JobSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let [time, open] = [&sheet.helped, &sheet.helped_to_settle].map(|all| Span::sum(all.iter().map(|one| one.time)));
    let (pay, to_settle) = (pay_of(&sheet.helped, sheet.account.currency).ok()?, sheet.account.costs.unsettled);
    let figure = apart(((!pay.is_zero()).then_some(pay), to_settle), seen);
    let figure = figure.unwrap_or(words::NOT_PAID.to_owned());
    let unpaid = Span::sum(sheet.helped.iter().map(|one| one.unpaid));
    let is_mixed = Span::ZERO < unpaid && unpaid < time;
    let mixed = is_mixed.then(|| words::paid_and_not(&seen.speech.span(time.minus(unpaid)), &seen.speech.span(unpaid)));
    let hours = (mixed.is_none() || Span::ZERO < open).then(|| hours_so_far(time, open, seen));
    (Span::ZERO < time.plus(open)).then(|| row(words::HELPER, &hours.into_iter().chain(mixed).listed().join(", "), &figure))
}

/// A line; opened, what can be done with it: some of it came back, its receipt, it was written by mistake.
fn booked_row(booked: &Booked, app: &App, seen: Seen<'_>) -> El<Msg> {
    let kind = booked.kind.as_ref().map_or(String::new(), |kind| words::spending(kind.as_str()));
    let receipts = receipts::of(booked.entry, app);
    let receipt = receipts::there(&receipts);
    let in_can = booked.can.is_some();
    let back = booked.back.filter(|_| !in_can).map(|_| cost_words::CAME_BACK.to_owned());
    let delivery = booked.delivery.filter(|is| *is).map(|_| words::TO_DELIVER.to_owned());
    let under: Vec<String> = [back, delivery, booked.what.clone(), how(booked, seen), receipt].into_iter().flatten().listed();
    let under = (!under.is_empty()).then(|| el("span", "t14 i2").text(under.join(", ")));
    let open = app.jobs.opened == Some(booked.entry);
    let top = el("button", "dl mid")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(Tap::Line(booked.entry)))
        .kid(el("span", "op").kid(el("span", "w7").text(jobs::upper_first(&kind))).kids(under))
        .kid(el("span", "t17 w8").text(sum(booked.sum, seen)));
    el("div", "").key(booked.entry.to_string()).kid(top).kids(open.then(|| opened(booked, &receipts, app)))
}

fn opened(booked: &Booked, receipts: &[Id], app: &App) -> El<Msg> {
    let came = came_back(booked, say(Tap::Write(What::CameBack(booked.entry))));
    let take = receipts::take(booked.entry, receipts, app);
    let strike = key("key soft h56", words::STRIKE, "", say(Tap::Strike(booked.entry)));
    el("div", "opened").kids(receipts::pictures(receipts, app)).kid(el("div", "g2").kids(came).kids(take).kid(strike))
}

/// The key by which some of a spending comes back; a drive does not, nor does what came back.
pub fn came_back(booked: &Booked, says: Msg) -> Option<El<Msg>> {
    let may = matches!(booked.how, How::Whole | How::Each { .. } | How::Share { .. }) && booked.back.is_none();
    may.then(|| key("key soft h56", cost_words::CAME_BACK, "", says))
}

/// How a sum came about, where it was more than a sum.
pub fn how(booked: &Booked, seen: Seen<'_>) -> Option<String> {
    let number = |n| seen.speech.number(n, 0, 4);
    match booked.how {
        How::Whole => None,
        How::Each { n, .. } if booked.back.is_some() => Some(cost_words::so_many_back(&number(n.abs()))),
        How::Each { n, each } => Some(words::each_of(&number(n), &seen.speech.number(each, 2, 4))),
        How::Share { used, .. } if booked.back.is_some() => Some(can_words::back(&number(used.abs()))),
        How::Share { used, of, pack } => Some(words::share_of(&number(used), &number(of), &sum(pack, seen))),
        How::Driven { distance, rate, per } => {
            let (units, unit) = match per {
                Per::Mile => (Units::Inch, common::distance_unit(Units::Inch)),
                Per::Km => (Units::Metric, common::distance_unit(Units::Metric)),
            };
            Some(words::driven(&writing::distance(distance, seen.speech.typing(units)), unit, &seen.speech.number(rate, 2, 4)))
        }
    }
}
