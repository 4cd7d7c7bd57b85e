//! For sale: each piece with ask and settle, what is agreed and due, what galleries have; and three fields for any other piece.

use super::asks::{least_word, table};
use super::gallery::{at, named};
use super::more::tag_under;
use super::quick;
use super::waiting::{day, say};
use super::{Screen, Seen, bare, end_said, exact, mark, per_hour, refused};
use crate::app::price::agree::who;
use crate::app::price::bargain::BargainTap;
use crate::app::price::deal::DealTap;
use crate::app::price::fair::FairTap;
use crate::app::price::gallery::GalleryTap;
use crate::app::price::tag::{TagTap, What};
use crate::app::price::waiting::WaitTap;
use crate::app::price::{Done, Tap, in_coins, paid, sheet, shop, sold_by};
use crate::app::taxes::tax;
use crate::app::{App, Common, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::undo::{Undo, alone};
use crate::screens::count::saved_fact;
use crate::screens::jobs::estimate::unnoted;
use crate::screens::jobs::rest::{if_go, unsold};
use crate::screens::jobs::{by_coin, lacking};
use crate::screens::taxes;
use crate::screens::undo::{bar, offered, to_take_back};
use crate::view::{El, el};
use crate::words::en::{common, deal as deals, fair, jobs, price as words, taxes as tax_words, waiting};
use fivebar_core::ledger::decide::PaidOf;
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Count, Id, Listed, Money, Side, Span};
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::price::{AgreedRow, ForSale, GalleryOwes, GalleryRow, Gap, OwedRow, PriceSheet};
use fivebar_core::sheet::rest::{Rest, rest};

/// The list, or on day one its three fields alone.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    match sheet(app) {
        Ok(sheet) if is_empty(&sheet) => quick::day_one(app, seen),
        Ok(sheet) => list(&sheet, app, seen),
        Err(refusal) => refused("price", &refusal, seen),
    }
}

fn is_empty(sheet: &PriceSheet) -> bool {
    sheet.agreed.is_empty()
        && sheet.for_sale.is_empty()
        && sheet.at_galleries.is_empty()
        && sheet.owed.is_empty()
        && sheet.galleries_owe.is_empty()
}

fn list(sheet: &PriceSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(seen.speech.day(seen.now), words::FOR_SALE).fact(saved_fact(app, seen)).fact(Fact::Plain(by_with(sheet, app)));
    let main = el("main", "two price")
        .kids(just_sold(app, seen))
        .kids(sheet.for_sale.iter().enumerate().map(|(nth, row)| for_sale(row, nth == 0, (app, seen))))
        .kids(sheet.agreed.iter().map(|row| agreed(row, app, seen)))
        .kids(work_owed(sheet, seen))
        .kids(sheet.owed.iter().map(|row| owed(row, seen)))
        .kids(sheet.galleries_owe.iter().map(|row| gallery_owes(row, app, seen)))
        .kids(sheet.at_galleries.iter().map(|row| at_gallery(row, app, seen)))
        .kid(el("div", "push"))
        .kid(el("h2", "wide").text(words::NOT_IN_THE_LIST))
        .kid(quick::fields(app, seen))
        .kids((!sheet.for_sale.is_empty()).then(|| key("key h56 wide", words::ON_PAPER, "", Msg::Price(Tap::Paper))))
        .kid(key("key h56 wide", fair::A_FAIR, "", Msg::Price(Tap::Fair(FairTap::Open))));
    let screen = Screen::new("price", head(top), main);
    match foot(sheet, app, seen) {
        Some(foot) => screen.foot(foot),
        None => screen,
    }
}

/// What the last sale left for an hour, while it can still be taken back.
pub fn just_sold(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (act, job, done) = app.price.last.filter(|(act, ..)| to_take_back(app) == Some(*act))?;
    let Done::Sold(sum) = done else { return None };
    let account = account(&shop(app), job).ok()?;
    let rest = rest(&app.shelf().shop(app.now.at), job, paid(app)).ok().flatten().filter(Rest::is_any);
    let left = rest.as_ref().map(|rest| rest.unsold).or(account.sold.per_hour).map(|hours| per_hour(hours.left, sum, seen.speech));
    let word = match &rest {
        Some(rest) => unsold(rest.n, rest.at_galleries, seen),
        None if account.sold.left == 0 => words::PER_HOUR.to_owned(),
        None => words::PER_HOUR_SO_FAR.to_owned(),
    };
    let row = |word: String, figure: String| el("p", "row").kid(el("span", "").text(word)).kid(el("b", "t22").text(figure));
    let n = sold_by(app, act);
    let head = title(&account.name, words::so_many_sold_at((n, &seen.speech.count(n)), &bare(sum, seen.speech)));
    let left = left.map_or_else(|| el("p", "t14").text(words::PAY_UNKNOWN), |left| row(word, left));
    let open = in_question((account.hours.unsettled, account.costs.unsettled, account.ended), seen);
    let rest = rest.map(|rest| row(if_go(&rest, app, seen), per_hour(rest.sold.left, sum, seen.speech)));
    Some(
        el("section", "card hot")
            .key(act.to_string())
            .kid(head)
            .kid(left)
            .kids(rest)
            .kids(open)
            .kids(account.costs.lacking().as_ref().map(lacking)),
    )
}

/// How it would be paid, where the tax lies, and that a delivery is in the prices.
pub fn by_with(sheet: &PriceSheet, app: &App) -> String {
    let is_one = sheet.for_sale.windows(2).all(|two| matches!(two, [one, other] if one.tax == other.tax));
    let is_free = sheet.for_sale.first().is_some_and(|row| row.tax.rate.is_zero() && !tax(app, row.currency, TaxBy::Usual).rate.is_zero());
    let how = match is_one {
        true if is_free => format!("{}, {}", words::by(paid(app)), words::UNTAXED),
        true => words::by_with(paid(app), tax_side(sheet, app)),
        false => format!("{}, {}", words::by(paid(app)), tax_words::EACH_ITS_TAX),
    };
    if sheet.for_sale.iter().any(|row| row.is_brought) { format!("{how}, {}", words::DELIVERED) } else { how }
}

/// Whether tax lies inside the tags, of the first piece's currency; none where no tax is set.
fn tax_side(sheet: &PriceSheet, app: &App) -> Option<bool> {
    let currency =
        sheet.for_sale.iter().find_map(|row| row.ask).map_or_else(|| crate::app::price::quick::currency(app), |ask| ask.currency());
    let tax = sheet.for_sale.first().map_or_else(|| tax(app, currency, TaxBy::Usual), |row| row.tax);
    (!tax.rate.is_zero()).then_some(tax.side == Side::Inside)
}

/// What a piece is taxed with that is not taxed as usual.
pub fn not_usual(row: &ForSale, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    taxes::not_usual(app, (row.currency, row.taxed), seen).map(|said| el("p", "t14").text(said))
}

/// What the last act takes back, and the piece a buyer may see.
fn foot(sheet: &PriceSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let first = sheet.for_sale.first().map(|row| row.job);
    let shown = app.price.last_job.filter(|job| sheet.for_sale.iter().any(|row| row.job == *job)).or(first);
    let shown = sheet.for_sale.iter().find(|row| Some(row.job) == shown);
    let show = shown.map(|row| key("key", words::show_this(&row.name), "", Msg::Price(Tap::Show(row.job))).wary());
    let undo = undo(app, seen);
    (undo.is_some() || show.is_some()).then(|| el("div", "foot").kids(undo).kids(show))
}

/// Names what it takes back; after that, what it puts back. An act of another place is named as it is there.
pub fn undo(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let of_price = |(back, act)| app.price.last.filter(|(last, ..)| *last == act).map(|(_, job, done)| (back, job, done));
    let Some((back, job, done)) = offered(app).and_then(of_price) else { return bar(app, seen) };
    let name = shop(app).job(job).map(|job| job.name).unwrap_or_default();
    let (words, under, tap) = match back {
        true => (common::PUT_BACK.to_owned(), deals::taken_back(done, &figure(done, seen), &name), Common::PutBack),
        false => (deals::take_back(done, &figure(done, seen)), name, Common::TakeBack),
    };
    Some(alone(Undo { words, under }, Msg::Common(tap)))
}

fn figure(done: Done, seen: Seen<'_>) -> String {
    match done {
        Done::Sold(sum) | Done::LikeSeen(sum) | Done::Heard(sum) | Done::Agreed(sum) | Done::Tagged(sum) => bare(sum, seen.speech),
        Done::Received(sum) | Done::GalleryPaid(sum) | Done::GivenUp(sum) | Done::Cancelled(sum) | Done::InParts(sum) => {
            exact(sum, seen.speech)
        }
        Done::Consigned(n) | Done::Returned(n) => common::pieces(n, &seen.speech.count(n)),
        Done::NeverCame | Done::Settled | Done::Asked(_) | Done::Guessed | Done::Resale => String::new(),
    }
}

fn title(name: &str, aside: String) -> El<Msg> {
    el("div", "row").kid(el("h2", "strong").text(name.to_owned())).kid(el("span", "t14 aside").text(aside))
}

/// The tag; said where it is before tax.
pub fn tag(row: &ForSale, seen: Seen<'_>) -> Option<String> {
    let tag = bare(row.tag?, seen.speech);
    Some(if row.is_on_top { words::before_tax(&tag) } else { tag })
}

fn for_sale(row: &ForSale, is_first: bool, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    let tag = tag(row, seen);
    let aside = left_of(row, tag.as_deref(), seen);
    // Where what a haul cost lacks, what was spent and worked is known but for that.
    let of_haul = |missing: &&Gap| row.lacking.is_some() && matches!(missing, Gap::Costs | Gap::Hours);
    let haul = row.gaps.iter().any(|missing| of_haul(&missing)).then_some(words::WHAT_HAUL_COST);
    let names = row.gaps.iter().filter(|missing| !of_haul(missing)).map(|missing| words::gap(*missing)).chain(haul).listed();
    let gaps = (!names.is_empty()).then(|| match row.gaps.contains(&Gap::HoursToCome) {
        true => key("key soft h48 left", words::gaps(&names), "", Msg::Price(Tap::ToCome(row.job))),
        false => el("p", "t14").text(words::gaps(&names)),
    });
    el("section", if is_first { "card hot sale" } else { "card tap sale" })
        .key(row.job.to_string())
        .kid(title(&row.name, aside))
        .kids(not_usual(row, app, seen))
        .kids(table(row, seen))
        .kids(end_over_ask(row, seen))
        .kids(is_over(row, seen))
        .kids(buyer_sees(row, app, seen))
        .kids(tag_under(row.tag, row, (app, seen)))
        .kids(under_lowest(row, seen))
        .kids(row.settle_set.map(|set| el("p", "t14 i2").text(settle_set(set, row, seen))))
        .kids(gaps)
        .kids(row.gaps.contains(&Gap::HoursToCome).then(|| it_is_made(row.job)))
        .kids(guessed(row.by_any, seen))
        .kids(unnoted(&row.unnoted))
        .kids(in_question((row.unsettled, row.unsettled_pay, row.ended), seen))
        .kids(haul_in_question(row.hauls_unsettled, seen))
        .kids(row.lacking.as_ref().map(lacking))
        .kids((row.lacking.is_none() && row.gaps.contains(&Gap::Costs)).then(|| spend(row.job)))
        .kids((row.gaps == [Gap::Rate]).then(rate))
        .kids(keys(row))
        .kids(waits(row, seen))
}

/// The ask came down by waiting, and what a buyer is shown did not.
fn buyer_sees(row: &ForSale, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let tagged = in_coins(app, paid(app), row.tagged?);
    let is_lower = row.ask.is_some_and(|ask| ask.amount() < tagged.amount());
    is_lower.then(|| el("p", "t14").text(words::buyer_sees(&bare(tagged, seen.speech))))
}

/// How many are free of how many, and how many are agreed besides.
pub fn left_of(row: &ForSale, tag: Option<&str>, seen: Seen<'_>) -> String {
    if row.is_to_agree {
        return words::to_agree((row.left, &seen.speech.count(row.left)), tag);
    }
    let promised = (0 < row.promised).then(|| seen.speech.count(row.promised));
    words::left_of([&seen.speech.count(row.left), &seen.speech.count(row.of)], promised.as_deref(), tag)
}

fn settle_set(set: Money, row: &ForSale, seen: Seen<'_>) -> String {
    let midway = row.midway.map(|midway| bare(midway, seen.speech));
    let sum = bare(set, seen.speech);
    let sum = if row.is_on_top { words::held_with_tax(&sum) } else { sum };
    match row.settle == Some(set) {
        true => words::settle_set(&sum, midway.as_deref()),
        false => words::settle_over_ask(&sum),
    }
}

/// The day by which it was to be sold has come: settle and not under of it are gone until it is said anew.
pub fn is_over(row: &ForSale, seen: Seen<'_>) -> Option<El<Msg>> {
    Some(el("p", "t14 w7").text(waiting::sold_by_over(&day(row.over?, seen))))
}

/// Where nothing was planned the maker alone knows that it is made.
fn it_is_made(job: Id) -> El<Msg> {
    key("key h56", words::IT_IS_MADE, words::IT_IS_MADE_UNDER, Msg::Price(Tap::Made(job)))
}

/// In the end one brings more than is asked for it.
pub fn end_over_ask(row: &ForSale, seen: Seen<'_>) -> Option<El<Msg>> {
    let one = row.rows.first()?;
    Some(el("p", "t14 w7").text(end_said(one.n, [one.end_over_ask()?, one.ask?], row.tag, seen)))
}

/// Waiting is worth less than the lowest pay needs, or a settle was set under it: that is said where the prices do not say it, so that nothing is taken
/// under it unawares.
pub fn under_lowest(row: &ForSale, seen: Seen<'_>) -> Option<El<Msg>> {
    let lowest = row.rows.first()?.over_what_may_do(row.settle_set).filter(|_| least_word(row) != words::LOWEST_PAY)?;
    Some(el("p", "t14 i2").text(words::one_under_lowest(&mark(lowest, seen.speech))))
}

/// Hours of a stop that may have been forgotten are in no mark of a job that goes on.
pub fn in_question((open, pay, ended): (Span, Money, bool), seen: Seen<'_>) -> Option<El<Msg>> {
    let pay = (!pay.is_zero()).then(|| seen.speech.money(pay));
    let said = if ended { words::in_question_counted } else { words::in_question };
    (Span::ZERO < open).then(|| el("p", "t14").text(said(&seen.speech.span(open), pay.as_deref())))
}

/// The same of sorting its wood, and what else was clocked on its hauls.
pub fn haul_in_question(open: Span, seen: Seen<'_>) -> Option<El<Msg>> {
    (Span::ZERO < open).then(|| el("p", "t14").text(words::haul_in_question(&seen.speech.span(open))))
}

/// The same in a line, under a word or a price to propose.
pub fn not_counted((open, ended): (Span, bool), seen: Seen<'_>) -> Option<El<Msg>> {
    let said = if ended { words::counted_in_question } else { words::not_counted };
    (Span::ZERO < open).then(|| el("p", "t14 i2").text(said(&seen.speech.span(open))))
}

/// Hours to come that nobody planned are no more than a guess by other pieces: that is said wherever a price counts them.
pub fn guessed(by: Option<(Count, Span)>, seen: Seen<'_>) -> Option<El<Msg>> {
    let (jobs, span) = by?;
    let n = seen.speech.count(jobs);
    let said = words::guessed_hours(&seen.speech.span(span), (0 < jobs).then_some((jobs == 1, n.as_str())));
    Some(el("p", "t14 i2").text(said))
}

/// What is asked before all is known: its price first; where one by your rate stands in for it, beside the offer.
fn keys(row: &ForSale) -> Vec<El<Msg>> {
    let offer = key("key solid", words::THEY_OFFER_KEY, "", Msg::Price(Tap::Offer(row.job)));
    let more = key("key", words::MORE, "", Msg::Price(Tap::More(row.job)));
    let tag = |class: &'static str| key(class, words::SET_PRICE, "", Msg::Price(Tap::Tag(TagTap::Open(row.job, What::Tag))));
    match (row.gaps.contains(&Gap::Tag), row.ask) {
        (true, None) => vec![el("div", "um").kid(tag("key solid")).kid(more)],
        (true, Some(_)) => vec![el("div", "um").kid(offer).kid(more), tag("key h56")],
        (false, _) => vec![el("div", "um").kid(offer).kid(more)],
    }
}

/// Who asked, and what waiting is worth: of a piece with a price.
fn waits(row: &ForSale, seen: Seen<'_>) -> Option<El<Msg>> {
    let open = |word: &'static str| key("key h56", word, "", say(WaitTap::Open(row.job)));
    let price = row.ask.or(row.tagged)?;
    if !row.guessed {
        return row.tag.map(|_| open(waiting::WHAT_IT_IS_WORTH));
    }
    let came = |no_show| say(WaitTap::Came(row.job, price, no_show));
    let asked = key("key h56", waiting::SOMEONE_ASKED, words::at(&bare(price, seen.speech)), came(false));
    let never = key("key h56", waiting::NEVER_CAME, "", came(true));
    Some(el("div", "g3").kid(asked).kid(never).kid(open(waiting::ASKING_PRICE)))
}

fn agreed(row: &AgreedRow, app: &App, seen: Seen<'_>) -> El<Msg> {
    let order = if row.made_for == For::Order { words::MADE_TO_ORDER.to_owned() } else { common::pieces(row.n, &seen.speech.count(row.n)) };
    let whom = who(app, row.buyer).map(|who| deals::for_whom(&who));
    let is_late = row.date.is_some_and(|date| date.day() < seen.now.day());
    let when = row.date.map(|date| seen.speech.day(date)).map(|day| if is_late { words::late(&day) } else { words::by_day(&day) });
    let by = whom.into_iter().chain(when).listed().join(", ");
    let span = |class: &'static str, text: String| el("span", class).text(text);
    let deposit = row.deposit.filter(|_| row.parts.is_empty());
    let figure = |word: &str, sum: String| el("span", "nw").kid(span("", format!("{word} "))).kid(el("b", "w7").text(sum));
    let open = deposit.filter(|_| !row.deposit_due.is_zero());
    let is_deposit = deposit.is_some_and(|deposit| row.under.amount() <= deposit.amount()) && (open.is_some() || row.is_all_under());
    let [all, under] = [row.received, row.under].map(|sum| exact(sum, seen.speech));
    let in_so_far = open.map_or(all, |deposit| words::of(&under, &exact(deposit, seen.speech)));
    el("button", "card tap sale")
        .attr("type", "button")
        .key(row.agreed.to_string())
        .on_tap(Msg::Price(Tap::Deal(DealTap::Open(row.job, PaidOf::Agreed(row.agreed)))))
        .kid(el("span", "row").kid(span("t22 w8", row.name.clone())).kid(span("t14 nw", order)))
        .kid(
            el("span", "row price")
                .kid(span("", words::agreed_carried(row.carried).into()))
                .kid(span("t30 w8", seen.speech.short_money(row.price))),
        )
        .kids((!by.is_empty()).then(|| span(if is_late { "t14 w7 c-under" } else { "t14 i2" }, by)))
        .kid(
            el("span", "row rule")
                .kid(figure(words::came_in(is_deposit), in_so_far))
                .kid(figure(words::DUE, exact(row.still, seen.speech))),
        )
        .kids((!row.before_change.is_zero()).then(|| {
            el("span", "row").kid(span("", jobs::BEFORE_CHANGE.into())).kid(el("b", "w7 nw").text(exact(row.before_change, seen.speech)))
        }))
        .kids((!row.given_off.is_zero()).then(|| figure(jobs::OFF_THE_PRICE, exact(row.given_off, seen.speech))))
        .kids(by_coin(row.rounded).map(|(said, off)| figure(said, exact(off, seen.speech))))
}

/// What came in ahead of several agreements, in sum: it is owed as work until the hand-over.
fn work_owed(sheet: &PriceSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let ahead = sheet.ahead.values().filter(|ahead| !ahead.is_zero() && 1 < sheet.agreed.len());
    let row = |ahead: &Money| {
        let figure = el("b", "w7").text(seen.speech.money(*ahead));
        el("p", "row wide").key(ahead.currency().code().to_owned()).kid(el("span", "").text(deals::WORK_OWED)).kid(figure)
    };
    ahead.map(row).listed()
}

fn owed(row: &OwedRow, seen: Seen<'_>) -> El<Msg> {
    let sold = words::sold_at(&bare(row.price, seen.speech));
    not_paid((&row.name, deals::SOLD_NOT_PAID.into()), (sold, row.due), (row.job, PaidOf::Sale(row.sale)), seen)
}

fn gallery_owes(row: &GalleryOwes, app: &App, seen: Seen<'_>) -> El<Msg> {
    let due = &row.due;
    let sold = deals::gallery_owed(&exact(due.whole, seen.speech));
    not_paid((&row.name, named(due.gallery, app)), (sold, due.lacks), (row.job, PaidOf::Gallery(due.of)), seen)
}

/// What was sold and is not paid in full: a tap takes the payment.
fn not_paid((name, aside): (&str, String), (sold, due): (String, Money), (job, of): (Id, PaidOf), seen: Seen<'_>) -> El<Msg> {
    let span = |class: &'static str, text: String| el("span", class).text(text);
    let id = match of {
        PaidOf::Sale(id) | PaidOf::Agreed(id) | PaidOf::Gallery(id) => id,
    };
    el("button", "card tap sale")
        .attr("type", "button")
        .key(id.to_string())
        .on_tap(Msg::Price(Tap::Deal(DealTap::Open(job, of))))
        .kid(el("span", "row").kid(span("t22 w8", name.into())).kid(span("t14 nw", aside)))
        .kid(el("span", "row price").kid(span("", sold)).kid(span("", format!("{} {}", words::DUE, exact(due, seen.speech)))))
}

fn at_gallery(row: &GalleryRow, app: &App, seen: Seen<'_>) -> El<Msg> {
    let there = deals::there(&seen.speech.count(row.there.n), &bare(row.there.tag, seen.speech));
    el("section", "card tap sale")
        .key(row.there.lot.to_string())
        .kid(title(&row.name, at(&row.there, app)))
        .kid(
            el("div", "row price")
                .kid(el("span", "").text(there))
                .kid(el("span", "w7").text(deals::to_you_each(&exact(row.there.of_one.you_get, seen.speech)))),
        )
        .kid(key("key", deals::GALLERY_PAID_OR_BACK, "", Msg::Price(Tap::Gallery(GalleryTap::Back(row.job, row.there.lot)))))
}

/// The key to where one says how one is paid.
pub fn how_paid() -> El<Msg> {
    key("key h48", words::HOW_YOU_ARE_PAID, "", Msg::Price(Tap::HowPaid))
}

/// Where it is said what it took, nothing too.
fn spend(job: Id) -> El<Msg> {
    key("key soft h48 left", words::SPENT_KEY, "", Msg::Price(Tap::Spend(job)))
}

/// The key to where one says what an hour must earn.
pub fn rate() -> El<Msg> {
    key("key h48", words::SAY_YOUR_RATE, "", Msg::Price(Tap::Rate))
}

/// A message on the offer in hand.
pub fn bargain(tap: BargainTap) -> Msg {
    Msg::Price(Tap::Bargain(tap))
}
