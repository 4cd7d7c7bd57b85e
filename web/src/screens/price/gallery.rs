//! Pieces at a gallery: left there by its terms, paid for, or given back.

use super::more::tag_word;
use super::{Screen, Seen, back as to_list, bare, choices, exact, fact, leave, pieces, typing};
use crate::app::price::gallery::{Back, Consign, Field, GalleryTap, expected, known, lacks, owes, there};
use crate::app::price::{Tap, shop};
use crate::app::taxes::tax;
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::seg::{Seg, even};
use crate::screens::jobs::called;
use crate::view::{El, el};
use crate::words::en::{common, deal as words, price};
use fivebar_core::ledger::fold::{GalleryTerms, Job};
use fivebar_core::quantity::{Decimal, Id, Listed, Money};
use fivebar_core::sheet::gallery::{AtGallery, of_one};

fn say(tap: GalleryTap) -> Msg {
    Msg::Price(Tap::Gallery(tap))
}

/// What a gallery keeps, in per cent: common practice.
const SHARES: [i64; 5] = [30, 35, 40, 45, 50];

/// Leaving pieces with a gallery; none where the job is no longer there.
pub fn to(consign: &Consign, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = shop(app).job(consign.job).ok()?;
    let top = head(Head::new(called(job.id, &job.name, app, seen), words::TO_GALLERY));
    if let Some((field, typed)) = &consign.pad {
        let (ask, unit) = if *field == Field::Share { (words::ITS_SHARE, "%") } else { (tag_of(&job, app), job.currency.code()) };
        return Some(Screen::new("price/gallery/pad", top, by_pad(ask, typed, unit, seen)));
    }
    let tag = consign.tag.map_or_else(|| price::NOT_SAID.to_owned(), |tag| bare(tag, seen.speech));
    let main = el("main", "price")
        .kids(pieces(consign.n, consign.free, seen, |n| say(GalleryTap::Pieces(n))))
        .kids(which(consign, app))
        .kid(figure_key(tag_of(&job, app), tag, say(GalleryTap::Pad(Field::Tag))))
        .kid(el("h2", "").text(words::ITS_SHARE))
        .kid(shares(consign.terms.share, seen, say))
        .kid(terms(consign.terms, say));
    let each = consign.tag.and_then(|tag| of_one(&shop(app), &job, (tag, consign.terms)).ok());
    let save = each.map(|handed| {
        let under = words::to_you_each(&exact(handed.you_get, seen.speech));
        key(
            "key solid h88",
            words::left_there(&common::pieces(consign.n, &seen.speech.count(consign.n))),
            under,
            say(GalleryTap::Consigned),
        )
    });
    Some(Screen::new("price/gallery", top, main).foot(el("footer", "foot").kids(save).kid(leave())))
}

/// A gallery has the tag of one, as the job has.
pub fn tag_of(job: &Job, app: &App) -> &'static str {
    let unsold = job.selling.lots().iter().fold(job.left(), |sum, lot| sum.saturating_add(lot.there()));
    tag_word(1 < unsold, tax(app, job.currency, job.tax).is_on_top())
}

/// Which gallery, of those that are known.
fn which(consign: &Consign, app: &App) -> Option<El<Msg>> {
    let known = known(app);
    let none = std::iter::once((words::NOT_NAMED.to_owned(), consign.gallery.is_none()));
    let words = none.chain(known.iter().map(|(id, name)| (name.clone(), consign.gallery == Some(*id)))).listed();
    let tap = |nth: usize| say(GalleryTap::At(nth.checked_sub(1).and_then(|nth| Some(known.get(nth)?.0))));
    (!known.is_empty()).then(|| choices(words, tap))
}

fn by_pad(ask: &str, typed: &crate::app::entry::Typed, unit: &str, seen: Seen<'_>) -> El<Msg> {
    el("main", "price")
        .kids(typing(ask, typed, unit, seen))
        .kid(done_key("key solid h88", common::DONE, "", say(GalleryTap::PadDone)))
        .kid(key("key h48", common::NOT_NOW, "", say(GalleryTap::PadAway)))
}

/// What a gallery keeps.
pub fn shares(chosen: Decimal, seen: Seen<'_>, say: fn(GalleryTap) -> Msg) -> El<Msg> {
    by_percent(&SHARES, chosen, seen, move |share| say(share.map_or(GalleryTap::Pad(Field::Share), GalleryTap::Share)))
}

/// Usual shares as chips, and another by the pad.
pub fn by_percent(usual: &[i64], chosen: Decimal, seen: Seen<'_>, tap: impl Fn(Option<Decimal>) -> Msg) -> El<Msg> {
    let usual = usual.iter().map(|percent| Decimal::new(*percent, 2)).listed();
    let written = |share: Decimal| words::percent(&seen.speech.number(share * Decimal::ONE_HUNDRED, 0, 2));
    let other = if usual.contains(&chosen) { words::OTHER.to_owned() } else { written(chosen) };
    let words = usual.iter().map(|share| (written(*share), chosen == *share)).chain([(other, !usual.contains(&chosen))]).listed();
    choices(words, |nth| tap(usual.get(nth).copied()))
}

/// Of what it takes its share, and who sends in the tax.
pub fn terms(terms: GalleryTerms, say: fn(GalleryTap) -> Msg) -> El<Msg> {
    let of = vec![Seg::new(words::BEFORE_TAX, !terms.with_tax), Seg::new(words::WITH_TAX, terms.with_tax)];
    let who = vec![Seg::new(words::GALLERY_PAYS, !terms.maker_pays), Seg::new(words::I_PAY, terms.maker_pays)];
    el("div", "asked")
        .kid(el("h2", "").text(words::SHARE_OF))
        .kid(even(words::SHARE_OF, of, |nth| say(GalleryTap::WithTax(nth == 1))))
        .kid(el("h2", "").text(words::WHO_PAYS_TAX))
        .kid(even(words::WHO_PAYS_TAX, who, |nth| say(GalleryTap::MakerPays(nth == 1))))
}

/// At the gallery, by its name where it is known.
pub fn at(there: &AtGallery, app: &App) -> String {
    named(there.gallery, app)
}

/// At which gallery.
pub fn named(gallery: Option<Id>, app: &App) -> String {
    let name = gallery.and_then(|id| app.shelf().name(id));
    name.map_or_else(|| words::GALLERY.to_owned(), |name| words::at(name))
}

/// A gallery pays, or gives back; none where it has nothing.
pub fn back(back: &Back, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = shop(app).job(back.job).ok()?;
    let there = there(app, (back.job, back.lot))?;
    let top = head(Head::new(called(job.id, &job.name, app, seen), at(&there, app)));
    if let Some((field, typed)) = &back.pad {
        let ask = if *field == Field::SoldFor { words::HOW_MUCH_PAID } else { words::HOW_MUCH_CAME };
        return Some(Screen::new("price/gallery/pad", top, by_pad(ask, typed, job.currency.code(), seen)));
    }
    let count = common::pieces(back.n, &seen.speech.count(back.n));
    let rows = [
        fact(price::HOW_MANY, seen.speech.count(there.n)),
        fact(tag_of(&job, app), bare(there.tag, seen.speech)),
        fact(words::LEFT_ON, seen.speech.day(there.since)),
        fact(price::YOU_GET, exact(there.of_one.you_get, seen.speech)),
    ];
    let lacks = lacks(app, back);
    let due = lacks.filter(|_| !back.is_all);
    let owed = expected(app, back).and_then(|sum| due.map_or(Some(sum), |due| sum.plus(due).ok()));
    let tax = owed.and_then(|sum| there.tax_of(back.n, sum, back.sold_for)).filter(|tax| !tax.is_zero());
    let tax = tax.map(|tax| fact(price::TAX, exact(tax, seen.speech)));
    let under = lacking((lacks, back.is_all), words::for_pieces(&count), seen);
    let owes = owes(app, back.job, there.gallery).map(|owes| fact(words::STILL_OWES, exact(owes, seen.speech)));
    let sold_for = back.sold_for.map(|sum| fact(words::SOLD_FOR, exact(sum, seen.speech)));
    let main = el("main", "price")
        .kid(el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows).kids(sold_for).kids(tax).kids(owes))))
        .kids(pieces(back.n, there.n, seen, |n| say(GalleryTap::Pieces(n))))
        .kids(lacks.map(|_| rest_or_all(back.is_all, |all| say(GalleryTap::ThatIsAll(all)))))
        .kid(el("div", "push"))
        .kids(
            expected(app, back)
                .map(|sum| key("key solid h88", words::gallery_paid(&exact(sum, seen.speech)), under, say(GalleryTap::Paid))),
        )
        .kid(el("div", "g2").kid(key("key", words::OTHER_PRICE, "", say(GalleryTap::Pad(Field::SoldFor)))).kid(key(
            "key",
            words::OTHER_SUM,
            "",
            say(GalleryTap::Pad(Field::Sum)),
        )))
        .kid(key("key", words::came_back(&count), "", say(GalleryTap::Returned)))
        .kid(to_list());
    Some(Screen::new("price/gallery", top, main))
}

/// What lacks of its terms: still due, or not to come.
fn lacking((lacks, is_all): (Option<Money>, bool), under: String, seen: Seen<'_>) -> String {
    let Some(lacks) = lacks.map(|lacks| exact(lacks, seen.speech)) else { return under };
    if is_all { words::less_than_terms(&under, &lacks) } else { words::rest_due(&under, &lacks) }
}

/// Whether what lacks of a gallery's terms is to come.
pub fn rest_or_all(is_all: bool, tap: impl Fn(bool) -> Msg) -> El<Msg> {
    let segs = vec![Seg::new(words::REST_TO_COME, !is_all), Seg::new(words::THAT_IS_ALL, is_all)];
    even(words::OF_THE_REST, segs, move |nth| tap(nth == 1))
}
