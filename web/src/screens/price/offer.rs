//! They offer: the verdict, the scale as input, how it is paid and carried, one concession, sold.

use super::list::{bargain, guessed, haul_in_question, not_counted, undo};
use super::scale::{Input, in_doubt, input};
use super::verdict::{shown, worded};
use super::waiting::say;
use super::{Screen, Seen, back, bare, exact, pay, pieces, refused, typing};
use crate::app::price::agree::AgreeTap;
use crate::app::price::bargain::{Bargain, BargainTap, is_far, sheet};
use crate::app::price::far::Far;
use crate::app::price::waiting::WaitTap;
use crate::app::price::{Done, Over, Tap, in_coins, on_top, sheet as list, shop};
use crate::app::taxes::has_named;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, seg};
use crate::parts::verdict::Sign;
use crate::screens::bench::waits::sold_wet;
use crate::screens::jobs::called;
use crate::screens::jobs::estimate::unnoted;
use crate::screens::taxes;
use crate::view::{El, el};
use crate::words::en::{common, deal as deals, price as words, waiting};
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::money::offer::Verdict;
use fivebar_core::quantity::{Id, Listed, Money, Span};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::marks::Bearers;
use fivebar_core::sheet::offer::{Ask, Concession, Driven, Leaves, OfferSheet, asked_about};
use fivebar_core::sheet::waiting::{Later, kept, later};

/// The offer screen; none where the piece is no longer there.
pub fn screen(of: &Bargain, app: &App, seen: Seen<'_>) -> Option<Screen> {
    Some(match sheet(app, of) {
        Err(Refusal::NotThere | Refusal::NotThatMany { .. }) => return None,
        Err(refusal) => refused("price/offer", &refusal, seen),
        Ok(sheet) if of.pay => pay::screen(&sheet, app, seen),
        Ok(sheet) => match &of.pad {
            Some(typed) => by_pad(&sheet, typed, (app, seen)).quiet(),
            None => by_scale(&sheet, app, seen).quiet(),
        },
    })
}

fn top(sheet: &OfferSheet, seen: Seen<'_>) -> Head<Msg> {
    let there = if sheet.free == 0 { sheet.name.clone() } else { words::name_left(&sheet.name, &seen.speech.count(sheet.free)) };
    let word = if sheet.is_on_top { words::THEY_OFFER_WITH_TAX } else { words::THEY_OFFER };
    Head::new(there, word).with_key(key("key h48", words::PAY_AND_HOURS, "", bargain(BargainTap::PayAndHours)))
}

fn by_pad(sheet: &OfferSheet, typed: &crate::app::entry::Typed, (app, seen): (&App, Seen<'_>)) -> Screen {
    let is_on_top = on_top(app, (sheet.currency, sheet.tax)).is_some();
    let tag = sheet.tag.and_then(|tag| tag.times(sheet.asking.n).ok()).zip(sheet.tagged.map(|sum| in_coins(app, sheet.asking.paid, sum)));
    let tag = tag.map(|(tag, charge)| (bare(tag, seen.speech), bare(charge, seen.speech)));
    let with_tax = words::with_tax(tag.as_ref().map(|(tag, charge)| (tag.as_str(), charge.as_str())));
    let main = el("main", "")
        .kids(is_on_top.then(|| el("p", "t14 i2").text(with_tax)))
        .kids(typing(&words::what_they_say(sheet.asking.n, &seen.speech.count(sheet.asking.n)), typed, sheet.currency.code(), seen))
        .kid(done_key("key solid h88", common::DONE, "", bargain(BargainTap::PadDone)))
        .kids(is_on_top.then(|| key("key h48", words::ADD_TAX, "", bargain(BargainTap::PadBeforeTax))))
        .kid(key("key h48", common::NOT_NOW, "", bargain(BargainTap::PadAway)));
    Screen::new("price/pad", head(Head::new(called(sheet.job, &sheet.name, app, seen), words::THEY_OFFER)), main)
}

fn by_scale(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Screen {
    let input = input(sheet, seen);
    let narrow = seen.page.is_narrow();
    let [say, chips] = input.as_ref().map_or_else(|| [vec![pad_key(sheet, app, seen)], vec![]], |input| said(sheet, input, (app, seen)));
    let (conc, ways, many) = (concession(sheet, app, seen), ways((sheet, app), narrow, seen), many(sheet, seen));
    let low = foot(sheet, app, seen);
    let (drawn, reckoned) = (in_doubt(sheet).is_some(), sheet.standing.band.is_some());
    let slow = sheet.slow_band.filter(|_| drawn || !reckoned);
    let doubt = slow.map(|is_done| el("p", "t14 i2").text(super::doubt(drawn, is_done)));
    let first = el("div", "col")
        .kid(shown(sheet, seen))
        .kids(like_a_slip(sheet, app, seen))
        .kids(doubt)
        .kids(guessed(sheet.by_any, seen))
        .kids(unnoted(&sheet.unnoted));
    let first = first.kids(not_counted((sheet.unsettled, sheet.ended), seen)).kids(haul_in_question(sheet.hauls_unsettled, seen)).kids(say);
    // How many is seen without a scroll: it stands first. On a narrow page the words stay above the keys that are folded away below the edge.
    let rest: Vec<El<Msg>> = match narrow {
        true => conc.into_iter().chain(many).chain(ways).chain(chips).listed(),
        false => many.into_iter().chain(chips).chain(ways).chain(conc).listed(),
    };
    let second = el("div", "col").kids(rest).kids(tag_it(sheet, app, seen));
    let main = el("main", "two price offer").kid(first);
    // In the hand the last keys stay in sight, whatever is said above them.
    match seen.page.is_wide() {
        false => Screen::new("price/offer", head(top(sheet, seen)), main.kid(second)).foot(el("footer", "foot").kids(low)),
        true => Screen::new("price/offer", head(top(sheet, seen)), main.kid(second.kid(el("div", "push")).kids(low))),
    }
}

/// A buyer who is shown the piece reads its tag: where less is asked, one tap makes it say so; then it can be taken back there.
fn tag_it(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let under = |tag: Money| words::buyer_reads(&bare(tag, seen.speech));
    let lower = sheet
        .lower_tag
        .zip(sheet.tag)
        .map(|(lower, tag)| key("key h56", words::tag_it(&exact(lower, seen.speech)), under(tag), bargain(BargainTap::Tag(lower))));
    let is_done = || matches!(app.price.last, Some((_, job, Done::Tagged(_))) if job == sheet.job);
    lower.or_else(|| undo(app, seen).filter(|_| is_done()))
}

/// The scale with its keys, and the figures people say.
fn said(sheet: &OfferSheet, input: &Input, (app, seen): (&App, Seen<'_>)) -> [Vec<El<Msg>>; 2] {
    let at = bare(input.at, seen.speech);
    let heard = worded(sheet, seen).map_or_else(|| at.clone(), |verdict| words::block_said(&at, &verdict.said()));
    let say = |sum: Money| bargain(BargainTap::Say(sum));
    let step = seen.speech.number(input.step.by, 0, 3);
    let keys = el("div", "g3")
        .kid(key("key fig", words::step(&step, false), "", say(input.next(false))))
        .kid(pad_key(sheet, app, seen))
        .kid(key("key fig", words::step(&step, true), "", say(input.next(true))));
    let figures = input.figures(sheet);
    let chip = |sum: &Money| Chip::tap(bare(*sum, seen.speech));
    let row = chips("key t22", figures.iter().map(chip).listed(), move |nth| {
        figures.get(nth).map_or_else(|| bargain(BargainTap::Pad), |sum| say(*sum))
    });
    [vec![el("section", "card hot").kid(input.slider(heard)), keys], vec![row]]
}

/// The figure as it stands; a tap brings the pad.
fn pad_key(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let figure = crate::app::price::bargain::named(sheet).map_or_else(|| words::OFFERED.to_owned(), |sum| seen.speech.short_money(sum));
    let pad = if on_top(app, (sheet.currency, sheet.tax)).is_some() { words::NUMBER_PAD_WITH_TAX } else { words::NUMBER_PAD };
    key("key t22", figure, pad, bargain(BargainTap::Pad))
}

fn ways((sheet, app): (&OfferSheet, &App), narrow: bool, seen: Seen<'_>) -> Vec<El<Msg>> {
    let asking = sheet.asking;
    let paid = [(Paid::Card, words::CARD), (Paid::Notes, words::NOTES), (Paid::Bank, words::BANK)];
    let carried = [(Carried::Fetched, words::THEY_FETCH), (Carried::Delivered, words::I_DELIVER)];
    let how = seg(words::HOW_PAID, paid.iter().map(|(paid, word)| Seg::new(*word, asking.paid == *paid)).listed(), move |nth| {
        bargain(BargainTap::Paid(paid.get(nth).map_or(Paid::Card, |(paid, _)| *paid)))
    });
    let goes = seg(words::HOW_CARRIED, carried.iter().map(|(way, word)| Seg::new(*word, asking.carried == *way)).listed(), move |nth| {
        bargain(BargainTap::Carried(carried.get(nth).map_or(Carried::Fetched, |(way, _)| *way)))
    });
    let to_come = delivery(sheet, seen).filter(|_| asking.carried == Carried::Delivered);
    let said = to_come.into_iter().chain(driven(sheet, seen)).map(|said| el("p", "t14").text(said));
    let keys = if narrow { vec![how, goes] } else { vec![el("div", "segs").kid(how).kid(goes)] };
    let tax = has_named(app, sheet.currency).then(|| tax(sheet, app, seen)).into_iter().flatten();
    keys.into_iter().chain(said).chain(tax).listed()
}

/// What this sale is taxed with, where there is a choice.
pub fn tax(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    taxes::of_sale(app, (sheet.currency, sheet.tax), seen, |by| bargain(BargainTap::Tax(by)))
}

/// What a delivery takes of what the marks hold; that nothing of one is planned.
pub fn delivery(sheet: &OfferSheet, seen: Seen<'_>) -> Option<String> {
    if sheet.standing.agreed.is_none() && sheet.free == 0 {
        return None;
    }
    Some(match sheet.delivery {
        Some((costs, time)) => words::delivery_is_in(&seen.speech.span(time), &exact(costs, seen.speech)),
        None if sheet.driven.is_some() => words::NO_MORE_DELIVERY_PLANNED.to_owned(),
        None => words::NO_DELIVERY_PLANNED.to_owned(),
    })
}

/// What was driven to deliver so far, and which pieces bear it: so costs covered moves as pieces go.
pub fn driven(sheet: &OfferSheet, seen: Seen<'_>) -> Option<String> {
    let Driven { costs, time, of_all, by } = sheet.driven?;
    let of = |one: String, all: String| if one == all { one } else { words::of_all(&one, &all) };
    let costs = (!of_all.0.is_zero()).then(|| of(exact(costs, seen.speech), exact(of_all.0, seen.speech)));
    let time = (Span::ZERO < of_all.1).then(|| of(seen.speech.span(time), seen.speech.span(of_all.1)));
    let of = match by {
        Bearers::Left(left) => words::of_those_left(left, &seen.speech.count(left)),
        Bearers::Promised => words::OF_THOSE_AGREED.to_owned(),
        Bearers::Gone => words::OF_THOSE_GONE.to_owned(),
    };
    Some(words::driven(&costs.into_iter().chain(time).listed(), &of))
}

fn many(sheet: &OfferSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    pieces(sheet.asking.n, sheet.free, seen, |n| bargain(BargainTap::Pieces(n)))
}

/// The best to ask for before a better price, of what leaves more than the offer.
fn concession(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let of_it = |one: &&Concession| !matches!(one.ask, Ask::OneMore | Ask::Later);
    let best = sheet.concessions.iter().find(of_it).filter(|_| sheet.standing.agreed.is_none())?;
    let word = match best.ask {
        Ask::Together(n) => words::offer_together((n, &seen.speech.count(n)), &bare(best.sum, seen.speech)),
        Ask::Fetch => words::ASK_FETCH.to_owned(),
        _ => words::ASK_NOTES.to_owned(),
    };
    let kept = matches!(best.ask, Ask::Together(_)).then(|| kept_one(sheet, app)).flatten();
    let more = now_or_kept(best, sheet.left, kept, seen).unwrap_or_else(|| words::more_left(&exact(best.more, seen.speech)));
    Some(el("p", "conc").kid(el("b", "w8").text(word)).kid(el("span", "").text(format!(" {more}"))))
}

/// What one more given along brings now, and what it is worth if it is kept for later: both as you get it, without what it has cost already.
fn now_or_kept(best: &Concession, as_is: Option<Leaves>, kept: Option<Money>, seen: Seen<'_>) -> Option<String> {
    let more = best.leaves.way.you_get.minus(as_is?.way.you_get).ok()?;
    Some(words::more_now_or_kept(&exact(more, seen.speech), &exact(kept?, seen.speech)))
}

/// What one of those that stay is worth, once those that are asked about are gone; none where waiting was not guessed.
fn kept_one(sheet: &OfferSheet, app: &App) -> Option<Money> {
    let shop = shop(app);
    kept(&shop, &asked_about(shop.job(sheet.job).ok()?, Some(sheet.tax)), sheet.asking.n).ok().flatten()
}

/// What one brings later, if it is not sold now; none where waiting was not guessed.
pub fn next_sale(sheet: &OfferSheet, app: &App) -> Option<Later> {
    let shop = shop(app);
    later(&shop, &asked_about(shop.job(sheet.job).ok()?, Some(sheet.tax))).ok().flatten()
}

/// Sold at what was said; an agreed job goes back to what was agreed.
fn foot(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if sheet.standing.agreed.is_some() {
        return vec![back_key()].into_iter().chain(change(sheet, app, seen)).listed();
    }
    let sum = sheet.offer.or(sheet.standing.ask);
    let Some(sum) = sum else { return vec![el("p", "notice").text(words::NO_ASK), back()] };
    let asking = sheet.asking;
    let how = words::sold_how(&seen.speech.count(asking.n), &seen.speech.count(sheet.free), asking.paid, asking.carried);
    let coins = in_coins(app, asking.paid, sum);
    let how = if coins == sum { how } else { words::to_the_coin(&how, &exact(sum, seen.speech)) };
    // Under a no it is there, and not the first thing a thumb finds.
    let is_no = worded(sheet, seen).is_some_and(|worded| worded.sign == Sign::No);
    let sold = key(
        if is_no { "key h88" } else { "key solid h88" },
        words::sold_so_many(asking.n, &seen.speech.count(asking.n), &bare(coins, seen.speech)),
        how,
        bargain(BargainTap::Sold),
    );
    let show = key("key", words::SHOW, "", Msg::Price(Tap::Show(sheet.job)));
    let low = match sheet.offer {
        Some(offer) => {
            let noted = key("key h56", words::no_sale(&bare(offer, seen.speech)), "", bargain(BargainTap::NoSale));
            el("div", "um").kid(show).kid(noted)
        }
        None if waits(sheet, app) => el("div", "g2").kid(show).kid(waiting_key(sheet.job)),
        None => show,
    };
    let wet = sold_wet(app, sheet.job, seen);
    wet.into_iter().chain(asked_if_meant(sheet, app, sum, seen)).chain([sold, low]).listed()
}

/// A sum far from the tags is asked about once, over the key that sells.
fn asked_if_meant(sheet: &OfferSheet, app: &App, sum: Money, seen: Seen<'_>) -> Option<El<Msg>> {
    let Over::Offer(bargain) = &app.price.over else { return None };
    let tagged = sheet.tagged.filter(|_| bargain.is_meant == Some(sum))?;
    let far = is_far(sheet, sum)?;
    Some(el("p", "why").attr("role", "alert").text(words::is_it_meant((far, &bare(sum, seen.speech)), &bare(tagged, seen.speech))))
}

/// An offer far over the tags looks like a slip as soon as it stands there; once the key that sells asks about it, that is enough.
fn like_a_slip(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (offer, tagged) = sheet.offer.zip(sheet.tagged).filter(|_| sheet.standing.agreed.is_none())?;
    is_far(sheet, offer).filter(|far| *far == Far::Over && asked_if_meant(sheet, app, offer, seen).is_none())?;
    let times = offer.amount().checked_div(tagged.amount())?.trunc();
    let said = words::times_your_tag(&seen.speech.number(times, 0, 0), &bare(tagged, seen.speech));
    Some(el("p", "w7").attr("role", "status").text(said))
}

/// What became of the sum that was said back, where the offer alone is not taken.
pub fn said_back(sheet: &OfferSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let say = sheet.say.filter(|_| sheet.verdict != Some(Verdict::Yes) && sheet.standing.agreed.is_none())?;
    let sum = bare(say, seen.speech);
    let became = |under: &'static str, tap| key("key h56", words::i_said(&sum), under, bargain(tap));
    let keys = [became(words::THEY_LEFT, BargainTap::Left(say)), became(words::THEY_TOOK, BargainTap::Took(say))];
    Some(el("div", "g2").kids(keys))
}

/// Waiting was guessed, or can be.
pub fn waits(sheet: &OfferSheet, app: &App) -> bool {
    sheet.standing.not_under.is_some() || shop(app).job(sheet.job).is_ok_and(|job| job.selling.guesses.told.is_some())
}

/// The key to what waiting is worth.
pub fn waiting_key(job: Id) -> El<Msg> {
    key("key", waiting::WHAT_IT_IS_WORTH, "", say(WaitTap::Open(job)))
}

fn back_key() -> El<Msg> {
    key("key solid h88", words::BACK_TO_AGREED, "", Msg::Price(Tap::Close))
}

/// Where one agreement speaks for all, its order can be changed to what is said now.
fn change(sheet: &OfferSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let rows = list(app).ok()?.agreed.into_iter().filter(|row| row.job == sheet.job).listed();
    let ([only], Some(offer)) = (rows.as_slice(), sheet.offer) else { return None };
    let tap = Msg::Price(Tap::Agree(AgreeTap::Change(sheet.job, only.agreed, Some(offer))));
    Some(key("key", deals::change_to(&bare(offer, seen.speech)), "", tap))
}
