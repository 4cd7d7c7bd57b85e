//! Sell and deliver: tag and settle, what a buyer may see, agreements, sales, payments, galleries.

use super::super::{Screen, Seen, taxes, undo};
use super::figures::{carried, day, line, paid, short, sum, to_be_carried};
use super::page::{all_back, can_tip};
use super::{say, to_job};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{PaidTo, What};
use crate::app::price::Tap as PriceTap;
use crate::app::price::agree::{AgreeTap, who};
use crate::app::price::gallery::lots;
use crate::app::price::parts::PartsTap;
use crate::app::taxes::{is_taxed, tax};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::fraction::worded;
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::{figure_key, key};
use crate::screens::price::gallery::at;
use crate::screens::price::more::tag_word;
use crate::view::{El, el};
use crate::words::en::{common, deal, job as words, jobs, taxes as tax_words, waiting};
use fivebar_core::ledger::fold::{
    Agreement, AgreementState, BroughtBack, HandedBack, NotForSale, PartOfPay, Payment, RestGivenUp, RestPaid, Reversed, Sale,
};
use fivebar_core::quantity::{Decimal, Id, Listed, Mass, Money, order_by_key};
use fivebar_core::sheet::job::{JobSheet, to_collect};

/// The room.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let sold = &sheet.account.sold;
    let due = to_collect(sold).map(|due| Fact::Strong(jobs::due(&seen.speech.money(due))));
    // As the list of Price has it: what is agreed is not left.
    let left = jobs::left(&seen.speech.count(sheet.sale.left.saturating_sub(sold.promised)));
    let agreed = (0 < sold.promised).then(|| words::so_many_agreed(&seen.speech.count(sold.promised)));
    let left = Fact::Plain(join([Some(left), agreed]));
    let top = due.into_iter().chain([left]).fold(Head::new(super::titled(sheet, seen), jobs::SELL_AND_DELIVER), Head::fact);
    let first = el("div", "col").kid(prices(sheet, app, seen)).kids(taxed(sheet, app, seen)).kids(cautions(sheet)).kids(buyer(sheet, seen));
    let second = el("div", "col")
        .kids(agreements(sheet, app, seen))
        .kids(sales(sheet, seen))
        .kids(payments(sheet, seen))
        .kids(gallery(sheet, app, seen))
        .kids(not_for_sale(sheet, seen));
    let free = sheet.sale.left.saturating_sub(sold.promised);
    let act = |words: &'static str, under: &'static str, message: Msg| key("key h56", words, under, message);
    let acts = [
        act(words::SELL, words::SELL_UNDER, say(Tap::Write(What::Sell(None)))),
        act(words::AGREE, words::AGREE_UNDER, Msg::Price(PriceTap::Agree(AgreeTap::OfJob(sheet.job)))),
        act(words::CONSIGN, words::CONSIGN_UNDER, say(Tap::Write(What::Consign))),
    ];
    let keys = el("div", if 0 < free { "g4" } else { "" }).kids(acts.into_iter().filter(|_| 0 < free)).kid(to_job());
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(keys);
    Screen::new("jobs/sell", head(top), el("main", "two scr").kid(first).kid(second)).foot(foot)
}

fn prices(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let tag = sheet.sale.tag.map_or(words::NOT_YET.to_owned(), |tag| seen.speech.short_money(tag));
    let settle = sheet.sale.settle.map_or(words::NOT_YET.to_owned(), |settle| seen.speech.short_money(settle));
    let worked_out = sheet.sale.settle.is_some() && sheet.account.pricing.settle_set.is_none();
    let is_on_top = tax(app, sheet.account.currency, sheet.sale.tax).is_on_top();
    let how = worked_out.then_some(words::WORKED_OUT).into_iter().chain(is_on_top.then_some(deal::WITH_TAX_SMALL));
    let title = std::iter::once(words::SETTLE).chain(how).listed().join(", ");
    el("div", "g2").kid(figure_key(tag_word(1 < sheet.sale.left, is_on_top), tag, say(Tap::Write(What::Tag)))).kid(figure_key(
        title,
        settle,
        say(Tap::Write(What::Settle)),
    ))
}

/// What its pieces are taxed with, where there is a choice.
fn taxed(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let chips = taxes::chips(app, (sheet.account.currency, sheet.sale.tax), seen, |by| say(Tap::Tax(by)));
    let titled = |chips: El<Msg>| vec![el("h2", "").text(tax_words::TAX_OF_JOB), chips.attr("aria-label", tax_words::TAX_OF_JOB)];
    chips.map(titled).unwrap_or_default()
}

fn cautions(sheet: &JobSheet) -> Vec<El<Msg>> {
    let delivers = sheet.selling.open().any(|agreement| agreement.carried == Some(fivebar_core::ledger::kind::sale::Carried::Delivered));
    let lines = [(delivers, jobs::CAUTION_DELIVERY), (can_tip(sheet), jobs::CAUTION_TIP)];
    lines.into_iter().filter(|(shown, _)| *shown).map(|(_, line)| caution(line)).listed()
}

/// What a buyer may see; a tap changes it, and what is missing is named.
fn buyer(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (said, units) = (&sheet.described, sheet.account.units);
    let side = |side: Option<_>| side.map_or(words::MISSING.to_owned(), |side| seen.speech.length(side, units));
    let sides = format!("{} × {} × {} {}", side(said.width), side(said.depth), side(said.height), common::length_unit(units));
    let sides = if said.width.or(said.depth).or(said.height).is_none() { words::MISSING.to_owned() } else { sides };
    let written = |mass: Mass| format!("{} {}", seen.speech.mass(mass, units), common::mass_unit(units));
    let weighed = said.grams.map(|grams| written(Mass::kg(grams as f64 / 1000.0)));
    let weight = weighed.or(sheet.account.wood.weight.map(|mass| words::by_parts(&written(mass))));
    let size = key("key left soft", words::SIZE, join([Some(sides), weight]), say(Tap::Write(What::Size)));
    let row = |word: &'static str, text: &Option<String>| {
        let text = text.clone().unwrap_or(words::MISSING.into());
        el("p", "row").kid(el("span", "t14 i2").text(word)).kid(worded("span", "t14", text))
    };
    let facts = el("button", "card tap facts")
        .attr("type", "button")
        .on_tap(say(Tap::Write(What::Facts)))
        .kid(el("span", "w7").text(words::FACTS))
        .kid(row(words::WOOD, &said.wood))
        .kid(row(words::FINISH_WORDS, &said.finish))
        .kid(row(words::CARE, &said.care))
        .kid(row(words::DELIVERY, &said.delivery));
    vec![size, facts]
}

fn join<const N: usize>(parts: [Option<String>; N]) -> String {
    parts.into_iter().flatten().filter(|part| !part.is_empty()).listed().join(", ")
}

fn titled(title: &'static str, rows: Vec<El<Msg>>) -> Vec<El<Msg>> {
    if rows.is_empty() { vec![] } else { vec![el("h2", "").text(title), el("section", "card list").kids(rows)] }
}

fn row(name: String, under: String, figure: String) -> El<Msg> {
    el("div", "dl mid")
        .kid(el("span", "op").kid(el("span", "w7").text(name)).kids((!under.is_empty()).then(|| el("span", "t14 i2").text(under))))
        .kid(el("span", "t17 w8").text(figure))
}

fn back(entry: Id) -> El<Msg> {
    key("key soft h48", words::STRIKE, "", say(Tap::Strike(entry)))
}

fn agreements(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let whom = |agreement: &Agreement| who(app, agreement.buyer).map(|who| deal::for_whom(&who));
    let row = |agreement: &Agreement| agreed((sheet, app), (agreement, whom(agreement)), seen);
    titled(words::AGREEMENTS, sheet.selling.agreements.iter().map(row).listed())
}

fn agreed((sheet, app): (&JobSheet, &App), (agreement, whom): (&Agreement, Option<String>), seen: Seen<'_>) -> El<Msg> {
    let state = match agreement.state {
        AgreementState::Open => agreement.due.map(|due| words::by_day(&seen.speech.day(due))),
        AgreementState::Done => Some(words::DONE.into()),
        AgreementState::Replaced => Some(words::REPLACED.into()),
        AgreementState::Cancelled { kept, no_show, .. } => {
            let (word, small) = match no_show {
                true => (waiting::NEVER_CAME, waiting::DID_NOT_TURN_UP),
                false => (words::CAME_TO_NOTHING, words::CAME_TO_NOTHING_SMALL),
            };
            let came = if kept.is_zero() { nothing_came(sheet, agreement) } else { Some(words::kept(&sum(kept, seen))) };
            Some(join([Some(handed_over_in_part(agreement, small, seen).unwrap_or_else(|| jobs::lower_first(word))), came]))
        }
    };
    // Payments that are planned took its place.
    let deposit = agreement.deposit.filter(|_| agreement.parts.is_empty()).map(|deposit| words::deposit_of(&sum(deposit, seen)));
    let word = if agreement.state == AgreementState::Done { carried } else { to_be_carried };
    let how = agreement.carried.map(|way| word(way).to_owned());
    let name = common::pieces(agreement.n, &seen.speech.count(agreement.n));
    let under = join([Some(day(agreement.at, seen)), whom, how, deposit, state]);
    let row = row(name, under, sum(agreement.sum, seen)).key(agreement.id.to_string());
    if let AgreementState::Cancelled { entry, kept, .. } = agreement.state {
        let is_kept = !kept.is_zero() && is_taxed(app, Some(agreement), (sheet.account.currency, sheet.sale.tax));
        return row.kids(is_kept.then(|| el("p", "t14 i2").text(words::NO_TAX_ON_KEPT))).kid(back(entry));
    }
    if agreement.state != AgreementState::Open {
        return row;
    }
    let act = |class: &'static str, words: &'static str, what: What| key(class, words, "", say(Tap::Write(what)));
    let parts = sheet.selling.parts_due(sheet.account.currency, agreement).unwrap_or_default();
    let parts = parts.iter().enumerate().map(|(nth, part)| part_of(nth, part, seen));
    let anew = sheet.selling.is_to_plan_anew(agreement).then(|| el("p", "t14 i2").text(deal::PLANNED_ANEW));
    el("div", "deal")
        .key(agreement.id.to_string())
        .kid(row)
        .kids(parts)
        .kids(anew)
        .kid(
            el("div", "g3")
                .kid(act("key h56", words::PAY, What::Pay(PaidTo::Agreed(agreement.id))))
                .kid(act("key solid h56", words::HAND_OVER, What::Sell(Some(agreement.id))))
                .kid(act("key soft h56", words::CAME_TO_NOTHING, What::Cancel(agreement.id))),
        )
        .kid(el("div", "g2").kid(change((sheet.job, agreement.id), "key soft h56")).kid(key(
            "key soft h56",
            deal::IN_PARTS,
            "",
            Msg::Price(PriceTap::Parts(PartsTap::OfJob(sheet.job, agreement.id))),
        )))
}

/// The form by which an order is changed, as Price has it.
pub(super) fn change((job, agreed): (Id, Id), class: &'static str) -> El<Msg> {
    key(class, deal::CHANGE, "", Msg::Price(PriceTap::Agree(AgreeTap::ChangeOfJob(job, agreed))))
}

/// Of an order that ended with pieces that came back, or before all were handed over: what became of them, and by a word what of those that never
/// went. None where none is still sold.
fn handed_over_in_part(agreement: &Agreement, word: &'static str, seen: Seen<'_>) -> Option<String> {
    let rest = agreement.n.saturating_sub(agreement.sold);
    let back = agreement.came_back.min(rest);
    let never = rest.saturating_sub(back);
    let count = |n: u32| seen.speech.count(n);
    let handed = agreement.sold.saturating_add(back);
    let of = (handed < agreement.n).then(|| words::of_them(&count(handed)));
    let said = [(back, words::BROUGHT_BACK_SMALL), (never, word)].into_iter().filter(|(n, _)| 0 < *n);
    let first = of.unwrap_or_default() + words::DONE;
    (0 < agreement.sold).then(|| std::iter::once(first).chain(said.map(|(n, word)| format!("{} {word}", count(n)))).listed().join(", "))
}

/// Of an agreement that came to nothing no money ever came in, a deposit that was agreed neither.
fn nothing_came(sheet: &JobSheet, agreement: &Agreement) -> Option<String> {
    let came = sheet.selling.payments.iter().any(|payment| payment.agreed == Some(agreement.id));
    (!came && agreement.sold == 0 && agreement.came_back == 0 && agreement.replaces.is_none()).then(|| words::NOTHING_CAME_IN.to_owned())
}

/// A part it is paid in: by when, and what is to come of it.
fn part_of(nth: usize, (part, lacks): &(PartOfPay, Money), seen: Seen<'_>) -> El<Msg> {
    let name = deal::part(&seen.speech.count(u32::try_from(nth.saturating_add(1)).unwrap_or(0)));
    let (by, figure) = match part.due {
        _ if lacks.is_zero() => (deal::PAID.to_owned(), part.sum),
        Some(due) => (deal::by_day(&seen.speech.day(due)), *lacks),
        None => (deal::AT_HAND_OVER.to_owned(), *lacks),
    };
    line(deal::part_by(&name, &by), sum(figure, seen))
}

fn sales(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let rows = sheet.selling.sales.iter().flat_map(|sale| {
        let reversed = sale.reversed.map(|reversed| went_with((sheet, sale), reversed, seen));
        let some = sale.back.iter().map(|back| some_back((sheet, sale), back, seen)).listed();
        std::iter::once(sold((sheet, sale), seen)).chain(some).chain(reversed)
    });
    titled(words::SALES, rows.listed())
}

/// What was handed over for it; where that was rounded to the coin, what it was agreed at stands under it.
fn sold((sheet, sale): (&JobSheet, &Sale), seen: Seen<'_>) -> El<Msg> {
    let whole = sale.whole;
    let coins = sheet.selling.rounded_of_sale(sale).ok().filter(|coins| !coins.is_zero() && sale.reversed.is_none());
    let handed = coins.and_then(|coins| whole.sum.plus(coins).ok());
    let exact = handed.map(|_| words::to_the_coin(&sum(whole.sum, seen)));
    let tax = (!whole.tax.is_zero()).then(|| words::tax_of_it(&sum(whole.tax, seen)));
    let how = sale.carried.map(|way| carried(way).to_owned());
    let under = join([Some(seen.speech.day(sale.at)), how, exact, tax]);
    let name = common::pieces(whole.n, &seen.speech.count(whole.n));
    let row = row(name, under, sum(handed.unwrap_or(whole.sum), seen));
    if sale.reversed.is_some() {
        return row.key(sale.id.to_string());
    }
    let mistake = key("key soft h56", words::STRIKE, words::MISTAKE, say(Tap::Strike(sale.id)));
    let refund = key("key soft h56", words::REFUND, words::REFUND_UNDER, say(Tap::Write(What::Refund(sale.id))));
    el("div", "deal").key(sale.id.to_string()).kid(row).kid(el("div", "g2").kid(mistake).kid(refund))
}

/// Some of its pieces, with their part of the price and of the tax line.
fn some_back((sheet, sale): (&JobSheet, &Sale), back: &BroughtBack, seen: Seen<'_>) -> El<Msg> {
    let none = Money::zero(back.of.sum.currency());
    let less = |it: Money| none.minus(it).map_or_else(|_| String::new(), |less| sum(less, seen));
    let kept = (!back.kept.is_zero()).then(|| words::kept(&sum(back.kept, seen)));
    let tax = (!back.of.tax.is_zero()).then(|| words::tax_back(&less(back.of.tax)));
    let day = seen.speech.day(back.at);
    let name = match back.of.n {
        0 if is_unpaid(sheet, sale, back) => words::not_paid(&day),
        0 => words::money_back(&day),
        n => words::some_back(n, &seen.speech.count(n), &day),
    };
    let never = back
        .never_paid()
        .ok()
        .flatten()
        .filter(|never| !never.is_zero() && *never != back.of.sum)
        .map(|never| words::never_paid(&sum(never, seen)));
    let row = row(name, join([kept, never, tax]), less(back.of.sum));
    let mistake = key("key soft h56", words::STRIKE, words::MISTAKE, say(Tap::Strike(back.entry)));
    el("div", "deal").key(back.entry.to_string()).kid(row).kid(mistake)
}

/// What its price went down by was never paid: so it was written, else nothing of what came in for it went back.
fn is_unpaid(sheet: &JobSheet, sale: &Sale, back: &BroughtBack) -> bool {
    back.never_paid().ok().flatten().map_or_else(|| stays_whole(sheet, sale), |never| never == back.of.sum)
}

fn stays_whole(sheet: &JobSheet, sale: &Sale) -> bool {
    let (currency, selling) = (sale.sum.currency(), &sheet.selling);
    let (all, own): (Vec<_>, Vec<_>) = selling.payments.iter().map(|it| (it.sum, (it.sale == Some(sale.id)).then_some(it.sum))).unzip();
    let covers = |came: Vec<Money>, stays: Money| Money::sum(currency, came).is_ok_and(|came| came.amount() <= stays.amount());
    let own_stays =
        sale.agreed.is_none() && selling.paid(currency, sale.id).is_ok_and(|paid| covers(own.into_iter().flatten().listed(), paid));
    own_stays || covers(all, sheet.account.sold.received)
}

/// The sale reversed, with its tax line: what went back, and what was kept.
fn went_with((sheet, sale): (&JobSheet, &Sale), reversed: Reversed, seen: Seen<'_>) -> El<Msg> {
    let none = Money::zero(sale.sum.currency());
    let less = |it: Money| none.minus(it).map_or_else(|_| String::new(), |less| sum(less, seen));
    let paid = sheet.selling.came_for_all(sale.sum.currency(), sale.id).unwrap_or(none);
    let kept = (!reversed.kept.is_zero()).then(|| sum(reversed.kept, seen));
    let went = paid.minus(reversed.kept).ok().filter(|went| !went.is_zero() || kept.is_some());
    let went = went.map(|went| words::went_back(&sum(went, seen), kept.as_deref()));
    let tax = (!sale.tax.is_zero()).then(|| words::tax_back(&less(sale.tax)));
    let row = row(words::reversed(&seen.speech.day(reversed.at)), join([went, tax]), less(sale.sum));
    let mistake = key("key soft h56", words::STRIKE, words::MISTAKE, say(Tap::Strike(reversed.entry)));
    el("div", "deal").key(format!("{} back", sale.id)).kid(row).kid(mistake)
}

fn payments(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let came = sheet.selling.payments.iter().map(|payment| (payment.at, came_in(payment, seen)));
    let mut rows = came.chain(sheet.selling.handed_back.iter().map(|back| (back.at, went_back(back, seen)))).listed();
    order_by_key(&mut rows, |(at, _)| *at);
    let mut shown = titled(words::PAYMENTS, rows.into_iter().map(|(_, row)| row).listed());
    let sold = &sheet.account.sold;
    let due = (Decimal::ZERO < sold.due.amount()).then(|| line(words::DUE, sum(sold.due, seen)));
    if !sheet.selling.payments.is_empty() || due.is_some() {
        let back = all_back(sheet, seen);
        let gallery = (!sold.handed_over.is_zero()).then(|| line(jobs::FROM_GALLERY, sum(sold.handed_over, seen)));
        let word = if gallery.is_some() { words::RECEIVED_FROM_BUYERS } else { words::RECEIVED };
        let rounded = rounded(sheet.selling.rounded(sheet.account.currency).ok(), seen);
        let came = line(word, sum(sold.received, seen));
        shown.push(el("section", "card").kids(back).kid(came).kids(rounded).kids(gallery).kids(due));
    }
    shown.extend(sheet.sale.unpaid.iter().flat_map(|(sale, due)| {
        let pay = key("key solid h56", words::PAY, jobs::due(&short(*due, seen)), say(Tap::Write(What::Pay(PaidTo::Sale(*sale)))));
        [pay, key("key soft h56", deal::WILL_NOT_BE_PAID, deal::SALE_STAYS, say(Tap::Unpaid(*sale)))]
    }));
    shown.extend(sheet.sale.over.iter().map(|over| {
        let under = jobs::to_hand_back(&sum(over.sum, seen));
        key("key solid h56", words::HAND_BACK, under, say(Tap::Write(What::HandBack(*over))))
    }));
    shown
}

/// What the coins made more of what was owed, or less: of what came in beyond that, in words and without a sign. None where they came out even.
pub fn by_coin(beyond: Money) -> Option<(&'static str, Money)> {
    let up = Decimal::ZERO < beyond.amount();
    let off = if up { beyond } else { Money::zero(beyond.currency()).minus(beyond).ok()? };
    (!off.is_zero()).then_some((deal::rounded_to_coin(up), off))
}

pub(super) fn rounded(beyond: Option<Money>, seen: Seen<'_>) -> Option<El<Msg>> {
    let (said, off) = by_coin(beyond?)?;
    Some(line(said, sum(off, seen)))
}

fn went_back(it: &HandedBack, seen: Seen<'_>) -> El<Msg> {
    let under = join([Some(words::HANDED_BACK.to_owned()), Some(seen.speech.day(it.at))]);
    let figure = Money::zero(it.sum.currency()).minus(it.sum).map_or_else(|_| String::new(), |less| sum(less, seen));
    row(paid(it.paid).to_owned(), under, figure).key(it.id.to_string()).kid(back(it.id))
}

fn came_in(payment: &Payment, seen: Seen<'_>) -> El<Msg> {
    let fee = (!payment.fee.is_zero()).then(|| words::fee_of_it(&sum(payment.fee, seen)));
    let under = join([Some(seen.speech.day(payment.at)), fee]);
    row(paid(payment.paid).to_owned(), under, sum(payment.sum, seen)).key(payment.id.to_string()).kid(back(payment.id))
}

/// Pieces that are not for sale any more, and the way to say so of one that is free.
fn not_for_sale(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let one = |it: &NotForSale| {
        let n = common::pieces(it.n, &seen.speech.count(it.n));
        let under = join([Some(words::instead(it.why).to_owned()), Some(seen.speech.day(it.at))]);
        row(n, under, String::new()).key(it.entry.to_string()).kid(back(it.entry))
    };
    let free = 0 < sheet.sale.left.saturating_sub(sheet.account.sold.promised);
    let say_so = free.then(|| key("key soft h56", words::NOT_FOR_SALE, "", say(Tap::Write(What::NotForSale))));
    titled(words::NOT_FOR_SALE, sheet.selling.not_for_sale.iter().map(one).listed()).into_iter().chain(say_so).listed()
}

fn gallery(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let selling = &sheet.selling;
    let one = |word: &'static str, it: &fivebar_core::ledger::fold::Consigned| {
        let n = common::pieces(it.n, &seen.speech.count(it.n));
        row(n, join([Some(word.to_owned()), Some(seen.speech.day(it.at))]), it.sum.map(|it| sum(it, seen)).unwrap_or_default())
            .key(it.entry.to_string())
            .kid(back(it.entry))
    };
    let given = selling.consigned.iter().map(|it| one(words::TAG_SMALL, it));
    let paid = selling.consignments_paid.iter().map(|it| one(words::HANDED_OVER, it));
    let rest = |it: &RestPaid| {
        let under = join([Some(words::REST_HANDED_OVER.to_owned()), Some(seen.speech.day(it.at))]);
        row(sum(it.sum, seen), under, String::new()).key(it.entry.to_string()).kid(back(it.entry))
    };
    let rests = selling.rests_paid.iter().map(rest);
    let given_up = |it: &RestGivenUp| {
        let under = join([Some(words::REST_GIVEN_UP.to_owned()), Some(seen.speech.day(it.at))]);
        row(sum(it.sum, seen), under, String::new()).key(it.entry.to_string()).kid(back(it.entry))
    };
    let rests = rests.chain(selling.rests_given_up.iter().map(given_up));
    let returned = selling.consignments_returned.iter().map(|it| one(words::GIVEN_BACK, it));
    let mut shown = titled(words::GALLERY, given.chain(paid).chain(rests).chain(returned).listed());
    shown.extend(selling.gallery_dues(sheet.account.currency).unwrap_or_default().into_iter().flat_map(|due| {
        let under = jobs::gallery_owes(&sum(due.lacks, seen));
        let pay = key("key solid h56", words::PAY, under, say(Tap::Write(What::Pay(PaidTo::Gallery(due.of)))));
        [pay, key("key soft h56", deal::WILL_NOT_BE_PAID, deal::SALE_STAYS, say(Tap::GiveUp(due.of)))]
    }));
    shown.extend(lots(app, sheet.job).iter().map(|lot| {
        let there = deal::there(&seen.speech.count(lot.n), &short(lot.tag, seen));
        let under = deal::lot(&at(lot, app), &there, &seen.speech.day(lot.since));
        key("key h56", deal::GALLERY_PAID_OR_BACK, under, say(Tap::Write(What::GalleryPaid(lot.lot))))
    }));
    shown
}
