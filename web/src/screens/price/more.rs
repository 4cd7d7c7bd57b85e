//! What else can be done with a piece: its tag and settle, an agreement, a gallery, the buyer's face.

use super::list::{guessed, not_counted};
use super::{Screen, Seen, back, bare, exact, leave, mark, typing};
use crate::app::price::agree::AgreeTap;
use crate::app::price::gallery::{GalleryTap, lots};
use crate::app::price::tag::{Setting, TagTap, What};
use crate::app::price::ways::WaysTap;
use crate::app::price::{Tap, in_coins, paid, sheet, shop};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::screens::jobs::called;
use crate::view::{El, el};
use crate::words::en::{common, deal as words, other_ways, price};
use fivebar_core::quantity::{Id, Money, reading};
use fivebar_core::sheet::price::ForSale;

/// The other acts with a piece; none where it is no longer there.
pub fn screen(id: Id, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let row = sheet(app).ok()?.for_sale.into_iter().find(|row| row.job == id)?;
    let shown = |sum: Option<Money>| sum.map_or_else(|| price::NOT_SAID.to_owned(), |sum| bare(sum, seen.speech));
    let set = |what| Msg::Price(Tap::Tag(TagTap::Open(id, what)));
    let (settle, sum) = settle([row.settle_set, row.settle], row.is_on_top);
    let lots = lots(app, id);
    let gallery = lots.iter().map(|lot| {
        let there = words::there(&seen.speech.count(lot.n), &bare(lot.tag, seen.speech));
        let day = seen.speech.day(lot.since);
        let under = words::lot(&super::gallery::at(lot, app), &there, &day);
        key("key h88 m", words::GALLERY_PAID_OR_BACK, under, Msg::Price(Tap::Gallery(GalleryTap::Back(id, lot.lot))))
    });
    let main = el("main", "price")
        .kid(el("div", "g2").kid(figure_key(tag_word(1 < row.left, row.is_on_top), shown(row.tag), set(What::Tag))).kid(figure_key(
            settle,
            shown(sum),
            set(What::Settle),
        )))
        .kid(ways(id))
        .kid(key("key h88 m", words::AGREE, words::AGREE_UNDER, Msg::Price(Tap::Agree(AgreeTap::Open(id, None)))))
        .kid(key("key h88 m", words::LEAVE_AT_GALLERY, "", Msg::Price(Tap::Gallery(GalleryTap::Leave(id)))))
        .kids(gallery)
        .kid(el("div", "push"))
        .kid(key("key h88 m", price::SHOW, "", Msg::Price(Tap::Show(id))))
        .kid(back());
    Some(Screen::new("price/more", head(Head::new(called(row.job, &row.name, app, seen), words::WHAT_ELSE)), main))
}

/// Where to settle, as every page has it: as the maker set it, else as it is worked out, and that is said.
pub fn settle([set, worked_out]: [Option<Money>; 2], is_on_top: bool) -> (&'static str, Option<Money>) {
    let word = match (set.is_none() && worked_out.is_some(), is_on_top) {
        (true, true) => price::SETTLE_WORKED_OUT_WITH_TAX,
        (true, false) => price::SETTLE_WORKED_OUT,
        (false, true) => price::SETTLE_WITH_TAX,
        (false, false) => price::SETTLE_KEY,
    };
    (word, set.or(worked_out))
}

/// The tag is of each where there are several, and before tax where that comes on top, while every settle is with it.
pub fn tag_word(several: bool, is_on_top: bool) -> &'static str {
    match (several, is_on_top) {
        (false, false) => price::TAG,
        (false, true) => price::TAG_BEFORE_TAX,
        (true, false) => price::TAG_OF_EACH,
        (true, true) => price::TAG_OF_EACH_BEFORE_TAX,
    }
}

/// What a tag does not pay in the way that is chosen, in notes to the coin, the worst first: what was spent, the lowest pay, your rate. None where it
/// pays all that is known.
pub fn tag_under(tag: Option<Money>, row: &ForSale, (app, seen): (&App, Seen<'_>)) -> Option<El<Msg>> {
    let charge = in_coins(app, paid(app), row.tax.charge(tag?).ok()?);
    let shown = |sum: Money| if row.is_on_top { price::sum_with_tax(&mark(sum, seen.speech)) } else { mark(sum, seen.speech) };
    let (needs, word) = least_unmet(charge, [row.costs_covered, row.lowest_pay, row.your_rate])?;
    Some(el("p", "t14 w7").text(word(price::THE_TAG, &shown(needs))))
}

/// Says what a sum is under, and what would pay.
type Under = fn(&str, &str) -> String;

/// The worst of what a sum does not pay, with its words.
pub fn least_unmet(charge: Money, needs: [Option<Money>; 3]) -> Option<(Money, Under)> {
    let worded: [Under; 3] = [price::under_costs, price::under_lowest, price::under_rate];
    needs.into_iter().zip(worded).find_map(|(needs, word)| Some((needs.filter(|needs| charge.amount() < needs.amount())?, word)))
}

/// The key to other ways to a price.
pub fn ways(id: Id) -> El<Msg> {
    key("key", other_ways::OTHER_WAYS, other_ways::OTHER_WAYS_UNDER, Msg::Price(Tap::Ways(WaysTap::Open(id))))
}

/// Tag or settle of one piece, by the pad or as proposed.
pub fn tag(setting: &Setting, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = shop(app).job(setting.job).ok()?;
    let row = sheet(app).ok()?.for_sale.into_iter().find(|row| row.job == setting.job);
    let say = |tap| Msg::Price(Tap::Tag(tap));
    let (ask, hint, title) = match setting.what {
        What::Tag => (words::ITS_TAG, words::TAG_SHOWN, price::TAG),
        What::Settle => (words::ITS_SETTLE, words::SETTLE_HIDDEN, price::SETTLE_KEY),
    };
    let on_top = row.as_ref().filter(|row| row.is_on_top).map(|row| match (setting.what, row.tag.zip(row.tagged)) {
        (What::Tag, _) => words::TAG_BEFORE_TAX.to_owned(),
        (What::Settle, Some((tag, charge))) => price::with_tax(Some((&bare(tag, seen.speech), &bare(charge, seen.speech)))),
        (What::Settle, None) => price::with_tax(None),
    });
    let lowest = row.as_ref().filter(|_| setting.what == What::Settle).and_then(|row| row.rows.first()?.lowest_pay);
    let lowest = lowest.map(|lowest| el("p", "t14 i2").text(price::one_under_lowest(&mark(lowest, seen.speech))));
    let row = row.filter(|_| setting.what == What::Tag);
    let typed = reading::money(&setting.typed.text, job.currency, seen.speech.sign()).ok();
    let under = row.as_ref().and_then(|row| tag_under(typed.or(row.tag), row, (app, seen)));
    // What a tag is under stands in place of what is known of every tag: on a low phone both ways out stay in sight.
    let hint = match (on_top, &under) {
        (Some(on_top), None) => Some(format!("{hint} {on_top}")),
        (Some(on_top), Some(_)) => Some(on_top),
        (None, None) => Some(hint.to_owned()),
        (None, Some(_)) => None,
    };
    let beyond = row.as_ref().and_then(|row| row.beyond).filter(|beyond| !beyond.is_zero());
    let beyond = beyond.map(|beyond| el("p", "t14 i2").text(words::point_adds(&exact(beyond, seen.speech))));
    let open = row.as_ref().and_then(|row| not_counted((row.unsettled, row.ended), seen));
    let by_any = row.as_ref().and_then(|row| guessed(row.by_any, seen));
    let proposed = row.and_then(|row| row.proposed);
    let proposed = proposed.map(|sum| key("key", words::propose(&bare(sum, seen.speech)), words::FOR_ONE, say(TagTap::Take(sum))));
    let unset = (setting.what == What::Settle && job.settle.is_some()).then(|| key("key h48", words::NO_SETTLE, "", say(TagTap::Unsettle)));
    let main = el("main", "price")
        .kids(hint.map(|hint| el("p", "t14 i2").text(hint)))
        .kids(lowest)
        .kids(proposed)
        .kids(beyond)
        .kids(by_any)
        .kids(open)
        .kids(under)
        .kids(typing(ask, &setting.typed, job.currency.code(), seen))
        .kid(done_key("key solid h88", common::DONE, "", say(TagTap::Done)))
        .kids((setting.what == What::Tag).then(|| ways(setting.job)))
        .kids(unset)
        .kid(leave());
    Some(Screen::new("price/tag", head(Head::new(called(job.id, &job.name, app, seen), title)), main))
}
