//! Forms about selling: sell, take a payment, a gallery, an agreement that came to nothing.

use super::super::entry::Slot;
use super::super::figures::{line, sum};
use super::super::page::can_tip;
use super::super::say;
use super::super::sell::rounded;
use super::Asked;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, PaidTo, Pick, What, agreement_done, agreement_open, came_ahead, comes_back, of_several};
use crate::app::price::gallery::{known, there};
use crate::app::price::in_coins;
use crate::app::taxes::{is_taxed, tax};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::chips::{Chip, flowing};
use crate::parts::seg::{Seg, even};
use crate::screens::bench::waits::sold_wet;
use crate::screens::price::gallery::{at, rest_or_all};
use crate::screens::price::more::tag_word;
use crate::screens::{Seen, taxes};
use crate::view::{El, el};
use crate::words::en::{common, deal, job as words, jobs, price, taxes as tax_words, waiting};
use fivebar_core::ledger::fold::{Agreement, GalleryTerms, Sale, TaxBy};
use fivebar_core::ledger::kind::sale::{Carried, Instead, Paid};
use fivebar_core::quantity::{Count, Currency, Decimal, Id, Listed, Money, PILE_MOST, reading};
use fivebar_core::sheet::gallery::{AtGallery, of_one};
use fivebar_core::sheet::job::JobSheet;

/// The form of a draft about selling.
pub fn asked(draft: &Draft, sheet: &JobSheet, (app, seen): (&App, Seen<'_>)) -> Asked {
    let mut asked = form(draft, sheet, (app, seen));
    if matches!(draft.what, What::Sell(_) | What::Pay(_) | What::HandBack(_)) {
        asked.save.1 = draft.picks.paid.map_or("", price::by).to_owned();
    }
    asked
}

fn form(draft: &Draft, sheet: &JobSheet, (app, seen): (&App, Seen<'_>)) -> Asked {
    let code = draft.picks.currency.code();
    match draft.what {
        What::Sell(agreed) => sell(draft, (sheet, agreed), (app, seen)),
        What::Pay(to) => {
            let mut asked = Asked::new("jobs/pay", words::PAY);
            asked.above = vec![how_paid(draft, false)].into_iter().filter(|_| !matches!(to, PaidTo::Gallery(_))).listed();
            asked.slots = vec![Slot::new(words::SUM, code)];
            asked
        }
        What::Refund(sale) => refund(draft, (sheet, sale), (app, seen)),
        What::HandBack(_) => {
            let mut asked = Asked::new("jobs/hand-back", words::HAND_BACK);
            asked.above = vec![how_paid(draft, false)];
            asked.slots = vec![Slot::new(words::SUM, code)];
            asked
        }
        What::Cancel(agreed) => cancel(draft, (sheet, agreed), (app, seen)),
        What::GalleryPaid(lot) => {
            let mut asked = Asked::new("jobs/gallery", words::GALLERY_PAID);
            let there = there(app, (sheet.job, lot));
            asked.above = there.map(|there| at_gallery(&there, sheet, (app, seen))).into_iter().listed();
            asked.above.extend(there.and_then(|there| gallery_lacks(draft, &there, seen)).into_iter().flatten());
            asked.slots = vec![Slot::whole(words::PIECES), Slot::new(words::SUM, code)];
            asked.other = Some(words::CAME_BACK.to_owned());
            asked
        }
        What::NotForSale => {
            let mut asked = Asked::new("jobs/not-for-sale", words::NOT_FOR_SALE);
            asked.above = vec![instead(draft), el("p", "t14 i2").text(words::NOT_FOR_SALE_UNDER)];
            asked.slots = vec![Slot::whole(words::PIECES)];
            asked
        }
        _ => {
            let mut asked = Asked::new("jobs/consign", words::CONSIGN_TITLE);
            asked.above = which_gallery(draft, app).into_iter().chain(terms(draft)).listed();
            asked.above.extend(to_you(draft, (sheet, app), seen).map(|said| el("p", "t14 i2").text(said)));
            asked.slots = vec![Slot::whole(words::PIECES), Slot::new(tag_of(sheet, app), code), Slot::new(words::GALLERY_SHARE, "")];
            asked
        }
    }
}

/// What the maker gets of each that is sold, by the tag and the share that are typed.
fn to_you(draft: &Draft, (sheet, app): (&JobSheet, &App), seen: Seen<'_>) -> Option<String> {
    let (sign, shop) = (seen.speech.sign(), app.shelf().shop(seen.now.at));
    let tag = reading::money(draft.form.text(1), draft.picks.currency, sign).ok().filter(|tag| !tag.is_zero())?;
    let percent = reading::percent(draft.form.text(2), sign).ok()?;
    let terms = GalleryTerms { share: percent.checked_div(Decimal::ONE_HUNDRED)?, ..draft.picks.terms };
    let each = of_one(&shop, &shop.job(sheet.job).ok()?, (tag, terms)).ok()?;
    Some(deal::to_you_each(&sum(each.you_get, seen)))
}

/// The tag as its job has it: of each of several that are not sold, before the tax that comes on top.
fn tag_of(sheet: &JobSheet, app: &App) -> &'static str {
    let unsold = sheet.sale.left.saturating_add(sheet.account.sold.at_galleries);
    tag_word(1 < unsold, tax(app, sheet.account.currency, sheet.sale.tax).is_on_top())
}

/// What the gallery has of it: where, since when, at which tag, and what comes of each.
fn at_gallery(there: &AtGallery, sheet: &JobSheet, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    let left = common::pieces(there.n, &seen.speech.count(there.n));
    let each = if there.of_one.handed_over == there.of_one.you_get { deal::YOU_GET_EACH } else { deal::HANDED_OVER_EACH };
    el("section", "card")
        .kid(line(words::STILL_THERE, left))
        .kid(line(deal::AT_WHOM, at(there, app)))
        .kid(line(deal::LEFT_ON, seen.speech.day(there.since)))
        .kid(line(tag_of(sheet, app), sum(there.tag, seen)))
        .kid(line(each, sum(there.of_one.handed_over, seen)))
}

/// What the sum that is typed lacks of its terms, and whether that is to come.
fn gallery_lacks(draft: &Draft, there: &AtGallery, seen: Seen<'_>) -> Option<[El<Msg>; 2]> {
    let n = reading::count(draft.form.text(0), seen.speech.sign(), PILE_MOST).ok()?;
    let came = reading::money(draft.form.text(1), there.tag.currency(), seen.speech.sign()).ok()?;
    let lacks = there.lacks(n, came, None)?;
    let all = draft.picks.is_all;
    let word = if all { deal::LESS_THAN_TERMS } else { words::STILL_DUE_FROM_GALLERY };
    Some([el("section", "card").kid(line(word, sum(lacks, seen))), rest_or_all(all, |all| say(Tap::Pick(Pick::ThatIsAll(all))))])
}

/// What is asked about once before a sale is written: less than was agreed, or far from its tags.
pub fn doubt(draft: &Draft, seen: Seen<'_>) -> Option<String> {
    let short = draft.picks.short.map(|(typed, agreed)| words::less_than_agreed(&sum(typed, seen), &sum(agreed, seen)));
    let far = || draft.picks.far.map(|(far, typed, tags)| words::far_from_tag((far, &sum(typed, seen)), &sum(tags, seen)));
    short.or_else(far)
}

fn sell(draft: &Draft, (sheet, agreed): (&JobSheet, Option<Id>), (app, seen): (&App, Seen<'_>)) -> Asked {
    let currency = draft.picks.currency;
    let spoken = agreed.and_then(|id| sheet.selling.agreement(id)?.tax).map(TaxBy::Agreed);
    let mut asked = Asked::new("jobs/sale", if agreed.is_some() { words::HAND_OVER } else { words::SELL });
    let short = doubt(draft, seen).map(|said| el("p", "why").attr("role", "alert").text(said));
    asked.above = short.into_iter().chain([how_paid(draft, true), how_carried(draft)]).listed();
    let by = draft.picks.tax.or(spoken).unwrap_or(sheet.sale.tax);
    let chips = taxes::chips(app, (currency, by), seen, |by| say(Tap::Pick(Pick::Tax(by))));
    asked.above.extend(chips.map(|chips| chips.attr("aria-label", tax_words::TAX_OF_SALE)));
    if can_tip(sheet) {
        asked.above.push(caution(jobs::CAUTION_TIP));
    }
    asked.above.extend(agreed.and_then(|id| under_agreement(draft, (sheet, sheet.selling.agreement(id)?), (app, seen))));
    asked.above.extend(in_notes(draft, app, seen).filter(|_| agreed.is_none()));
    let sum = if agreed.is_some() { words::WHOLE_PRICE } else { handed_over((app, currency), by) };
    asked.slots = vec![Slot::new(sum, currency.code()), Slot::whole(words::PIECES)];
    asked.below = sold_wet(app, sheet.job, seen);
    asked
}

/// What the coins come to of the sum that is typed, where that is another.
fn in_notes(draft: &Draft, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let typed = reading::money(draft.form.text(0), draft.picks.currency, seen.speech.sign()).ok()?;
    let handed = in_coins(app, draft.picks.paid?, typed);
    (handed != typed).then(|| el("section", "card").kid(line(words::HANDED_TO_COIN, sum(handed, seen))))
}

/// What was agreed, and what of it is of the pieces handed over now where others stay, what came in ahead, what is owed of pieces handed over before, and what the price that is typed leaves
/// due with it, to the coin it is paid in, or to hand back; where others are still to be handed over it stays for them.
fn under_agreement(draft: &Draft, (sheet, agreement): (&JobSheet, &Agreement), (app, seen): (&App, Seen<'_>)) -> Option<El<Msg>> {
    let rest = agreement.sum.minus(agreement.sold_for).ok()?;
    let came = sheet.selling.received_ahead(rest.currency(), agreement.id).ok()?;
    let price = reading::money(draft.form.text(0), rest.currency(), seen.speech.sign()).unwrap_or(rest);
    let before = sheet.selling.owed_before(rest.currency(), agreement).ok()?;
    let due = price.minus(came).ok()?.plus(before).ok()?;
    let back = Money::zero(due.currency()).minus(due).ok()?;
    let handed = || draft.picks.paid.map_or(due, |paid| in_coins(app, paid, due));
    let pieces = agreement.n.saturating_sub(agreement.sold);
    let now = as_typed(draft, pieces, seen);
    let others = pieces.saturating_sub(now);
    let part = (0 < others).then(|| line(words::part_of_it((now, &seen.speech.count(now))), sum(price, seen)));
    let left = match (due.amount() < Decimal::ZERO, others) {
        (true, 0) => [Some(line(words::BACK_NOW, sum(back, seen))), None],
        // It came for all of them, and pays the next that are handed over.
        (true, others) => {
            let stays = line(words::stays_for((others, &seen.speech.count(others))), sum(back, seen));
            [Some(line(words::DUE_NOW, sum(Money::zero(due.currency()), seen))), Some(stays)]
        }
        (false, _) => [Some(line(words::DUE_NOW, sum(handed(), seen))), None],
    };
    // What is in the till, as Sell has it, and beside it what the coins made of it.
    let is_all_ahead = || sheet.selling.received_of_order(rest.currency(), agreement) == Ok(came);
    let beyond = sheet.selling.rounded_of_order(rest.currency(), agreement).ok().filter(|_| is_all_ahead());
    let paid = beyond.and_then(|beyond| came.plus(beyond).ok()).unwrap_or(came);
    let ahead = (!came.is_zero()).then(|| line(words::CAME_AHEAD, sum(paid, seen))).into_iter().chain(rounded(beyond, seen));
    let before = (!before.is_zero()).then(|| line(deal::OWED_BEFORE, sum(before, seen)));
    Some(
        el("section", "card").kid(line(words::AGREE, sum(rest, seen))).kids(part).kids(ahead).kids(before).kids(left.into_iter().flatten()),
    )
}

/// A sum is what the buyer hands over: with the tax that comes on top.
fn handed_over((app, currency): (&App, Currency), by: TaxBy) -> &'static str {
    if tax(app, currency, by).is_on_top() { words::SUM_WITH_TAX } else { words::SUM }
}

/// So many pieces as stand in the form; all of them until then.
fn as_typed(draft: &Draft, all: Count, seen: Seen<'_>) -> Count {
    let typed = if 1 < draft.form.slots.len() { reading::count(draft.form.text(1), seen.speech.sign(), PILE_MOST).ok() } else { None };
    typed.filter(|n| (1..=all).contains(n)).unwrap_or(all)
}

/// What came in for the sale, its tax, and whether the order ends with it.
fn refund(draft: &Draft, (sheet, id): (&JobSheet, Id), (app, seen): (&App, Seen<'_>)) -> Asked {
    let mut asked = Asked::new("jobs/refund", words::REFUND);
    let Some(sale) = sheet.selling.sale(id) else { return asked };
    let currency = sale.sum.currency();
    let segs = vec![Seg::new(words::COMES_BACK, !draft.picks.they_keep), Seg::new(words::THEY_KEEP, draft.picks.they_keep)];
    let keeps = even(words::WHAT_BECAME, segs, |nth| say(Tap::Pick(Pick::TheyKeep(nth == 1))));
    if draft.picks.they_keep {
        asked.above = vec![keeps];
        return they_keep(asked, draft, (sheet, sale), seen);
    }
    let Some(back) = comes_back(app, &sheet.selling, (id, as_typed(draft, sale.n, seen))) else { return asked };
    let came = sheet.selling.came_for(currency, (id, back)).unwrap_or(Money::zero(currency));
    let part = sale.part(back).map(|part| part.tax).unwrap_or(sale.tax);
    let tax = (!part.is_zero()).then(|| line(words::TAX_REVERSED, sum(part, seen)));
    let fee = sheet.selling.fee_for(currency, (id, back)).ok().filter(|fee| !fee.is_zero());
    let fee = fee.map(|fee| line(words::FEE_STAYS_PAID, sum(fee, seen)));
    let paid = sheet.selling.paid(currency, id).ok().filter(|paid| *paid != came);
    let word = if paid.is_some() { words::CAME_BEYOND } else { words::CAME_FOR_IT };
    let paid = paid.map(|paid| line(words::CAME_FOR_IT, sum(paid, seen)));
    let typed = reading::money(draft.form.text(0), currency, seen.speech.sign()).ok();
    let coins = typed.filter(|_| back.coin.is_some()).map(|typed| (typed, in_coins(app, Paid::Notes, typed)));
    // Its own coin goes with it, also where the order was paid by card before.
    let own = sheet.selling.coins_of_sale(currency, id).ok().filter(|own| !own.is_zero() && back.n == sale.n && back.coin.is_none());
    let own = own.filter(|_| typed == Some(came)).and_then(|own| Some((came, came.plus(own).ok()?)));
    let coins = coins.or(own).filter(|(typed, coins)| typed != coins).map(|(_, coins)| line(words::BACK_TO_COIN, sum(coins, seen)));
    asked.above = vec![keeps, el("section", "card").kids(paid).kid(line(word, sum(came, seen))).kids(coins).kids(tax).kids(fee)];
    if !agreement_open(&sheet.selling, id) {
        let is_order = agreement_done(&sheet.selling, id);
        let (label, ends) = if is_order { (words::THE_ORDER, words::ORDER_ENDS) } else { (words::THE_SALE, words::MONEY_GOES_BACK) };
        let segs = vec![Seg::new(ends, draft.picks.ends), Seg::new(words::ORDER_STANDS, !draft.picks.ends)];
        asked.above.push(even(label, segs, |nth| say(Tap::Pick(Pick::Ends(nth == 0)))));
    }
    let stays = typed.and_then(|typed| came.minus(typed).ok()).filter(|stays| Decimal::ZERO < stays.amount() && draft.picks.ends);
    asked.above.extend(stays.map(|stays| el("p", "t14 i2").text(words::stays_with_you(&sum(stays, seen)))));
    asked.above.extend(of_order(draft, (sheet, sale), (back.n, came), seen).map(|said| el("p", "t14 i2").text(said)));
    asked.slots = vec![Slot::new(words::TO_HAND_BACK_OF_IT, draft.picks.currency.code())];
    asked.slots.extend(of_several(sheet, id).then(|| Slot::whole(words::PIECES_BACK)));
    asked.save.1 = if draft.picks.ends { words::REFUND_UNDER } else { words::GOOD_UNDER }.into();
    asked
}

/// Money alone goes back: what came in, and of what is typed its tax and the fee that stays paid.
fn they_keep(mut asked: Asked, draft: &Draft, (sheet, sale): (&JobSheet, &Sale), seen: Seen<'_>) -> Asked {
    let currency = sale.sum.currency();
    let paid = sheet.selling.paid(currency, sale.id).unwrap_or(Money::zero(currency));
    let typed = reading::money(draft.form.text(0), currency, seen.speech.sign()).ok().filter(|typed| !typed.is_zero());
    let tax = typed.and_then(|typed| sale.less(typed).ok()).map(|less| less.tax).filter(|tax| !tax.is_zero());
    let tax = tax.map(|tax| line(words::TAX_REVERSED, sum(tax, seen)));
    let beyond = typed.and_then(|typed| sheet.selling.came_beyond(currency, (sale.id, typed)).ok());
    let fee = beyond.and_then(|beyond| sheet.selling.fee_of(currency, (sale.id, beyond)).ok()).filter(|fee| !fee.is_zero());
    let fee = fee.map(|fee| line(words::FEE_STAYS_PAID, sum(fee, seen)));
    let is_due = paid.amount() < sale.sum.amount();
    let sold = is_due.then(|| line(words::WHOLE_PRICE, sum(sale.sum, seen)));
    asked.above.push(el("section", "card").kids(sold).kid(line(words::CAME_FOR_IT, sum(paid, seen))).kids(tax).kids(fee));
    asked.above.push(el("p", "t14 i2").text(if is_due { words::KEPT_AND_DUE } else { words::KEPT_FOR_LESS }));
    asked.slots = vec![Slot::new(if is_due { words::OFF_THE_PRICE } else { words::TO_HAND_BACK_OF_IT }, currency.code())];
    asked.save.1 = words::STAYS_SOLD.into();
    asked
}

/// What becomes of it: of what came in nothing goes back by itself where it is made good, and some of its order may stay sold where that ends.
fn of_order(draft: &Draft, (sheet, sale): (&JobSheet, &Sale), (n, came): (Count, Money), seen: Seen<'_>) -> Option<String> {
    let ends = draft.picks.ends;
    if !ends {
        let typed = reading::money(draft.form.text(0), came.currency(), seen.speech.sign()).ok();
        let what = match typed {
            _ if came.is_zero() => words::NOTHING_WAS_PAID,
            Some(typed) if !typed.is_zero() => words::REST_STAYS_PAID,
            _ => words::NOTHING_GOES_BACK,
        };
        let stands = agreement_open(&sheet.selling, sale.id).then_some(words::STANDS_FOR_THE_REST);
        return Some(stands.into_iter().chain([what]).listed().join(" "));
    }
    let agreement = sheet.selling.agreement(sale.agreed?)?;
    let stays = agreement.sold.saturating_sub(n);
    (0 < stays).then(|| words::stay_sold(&common::pieces(stays, &seen.speech.count(stays)), stays))
}

/// What became of it.
fn instead(draft: &Draft) -> El<Msg> {
    let ways = [(Instead::Yours, words::YOURS_NOW), (Instead::Given, words::GIVEN_AWAY), (Instead::Broken, words::BROKEN)];
    let segs = ways.map(|(way, word)| Seg::new(word, draft.picks.instead == way));
    even(words::WHAT_BECAME, segs.into(), move |nth| say(Tap::Pick(Pick::Instead(ways.get(nth).map_or(Instead::Yours, |(way, _)| *way)))))
}

/// What came in ahead, and what of it stays with the maker when so much is handed back; nothing is asked where nothing came in.
fn cancel(draft: &Draft, (sheet, agreed): (&JobSheet, Id), (app, seen): (&App, Seen<'_>)) -> Asked {
    let mut asked = Asked::new("jobs/cancel", words::CAME_TO_NOTHING);
    asked.above = vec![never_came(draft)];
    let Some(ahead) = came_ahead(sheet, agreed) else { return asked };
    let fee = sheet.selling.fees_ahead(ahead.currency(), agreed).ok().filter(|fee| !fee.is_zero());
    let fee = fee.map(|fee| line(words::ITS_FEE_STAYS_PAID, sum(fee, seen)));
    asked.above.push(el("section", "card").kid(line(words::CAME_AHEAD, sum(ahead, seen))).kids(fee));
    let back = reading::money(draft.form.text(0), ahead.currency(), seen.speech.sign()).ok();
    let stays = back.and_then(|back| ahead.minus(back).ok()).filter(|stays| Decimal::ZERO <= stays.amount());
    asked.above.extend(stays.map(|stays| el("p", "t14 i2").text(words::stays_with_you(&sum(stays, seen)))));
    let is_kept = stays
        .is_some_and(|stays| !stays.is_zero() && is_taxed(app, sheet.selling.agreement(agreed), (sheet.account.currency, sheet.sale.tax)));
    asked.above.extend(is_kept.then(|| el("p", "t14 i2").text(words::NO_TAX_ON_KEPT)));
    asked.slots = vec![Slot::new(words::TO_HAND_BACK_OF_IT, draft.picks.currency.code())];
    asked
}

/// The order was called off, or nobody came.
fn never_came(draft: &Draft) -> El<Msg> {
    let never = draft.picks.never_came;
    let segs = vec![Seg::new(words::CALLED_OFF, !never), Seg::new(waiting::NEVER_CAME, never)];
    even(words::WHY_NOTHING, segs, |nth| say(Tap::Pick(Pick::NeverCame(nth == 1))))
}

/// Which gallery, of those that are known.
fn which_gallery(draft: &Draft, app: &App) -> Option<El<Msg>> {
    let known = known(app);
    let chosen = draft.picks.gallery;
    let none = std::iter::once(Chip::choice(deal::NOT_NAMED.to_owned(), chosen.is_none()));
    let chips = none.chain(known.iter().map(|(id, name)| Chip::choice(name.clone(), chosen == Some(*id)))).listed();
    let is_any = !known.is_empty();
    let pick = move |nth: usize| say(Tap::Pick(Pick::Gallery(nth.checked_sub(1).and_then(|nth| Some(known.get(nth)?.0)))));
    is_any.then(|| flowing("key h48", chips, pick).attr("aria-label", deal::AT_WHOM))
}

/// Of what the gallery takes its share, and who sends in the tax.
fn terms(draft: &Draft) -> Vec<El<Msg>> {
    let terms = draft.picks.terms;
    let of = vec![Seg::new(words::SHARE_BEFORE_TAX, !terms.with_tax), Seg::new(deal::WITH_TAX, terms.with_tax)];
    let who = vec![Seg::new(words::GALLERY_TAX, !terms.maker_pays), Seg::new(words::MY_TAX, terms.maker_pays)];
    vec![
        even(deal::SHARE_OF, of, |nth| say(Tap::Pick(Pick::WithTax(nth == 1)))),
        even(deal::WHO_PAYS_TAX, who, |nth| say(Tap::Pick(Pick::MakerPays(nth == 1)))),
    ]
}

fn how_paid(draft: &Draft, later: bool) -> El<Msg> {
    let mut ways = vec![(Some(Paid::Notes), words::NOTES), (Some(Paid::Card), words::CARD), (Some(Paid::Bank), words::BANK)];
    ways.extend(later.then_some((None, words::LATER)));
    let segs = ways.iter().map(|(paid, word)| Seg::new(*word, draft.picks.paid == *paid)).listed();
    even(words::HOW_PAID, segs, move |nth| say(Tap::Pick(Pick::Paid(ways.get(nth).and_then(|(paid, _)| *paid)))))
}

fn how_carried(draft: &Draft) -> El<Msg> {
    let ways = [(Carried::Fetched, words::FETCHED), (Carried::Delivered, words::DELIVERED)];
    let segs = ways.iter().map(|(way, word)| Seg::new(*word, draft.picks.carried == *way)).listed();
    even(words::HOW_CARRIED, segs, move |nth| say(Tap::Pick(Pick::Carried(ways.get(nth).map_or(Carried::Fetched, |(way, _)| *way)))))
}
