//! Other ways to a price, each as a card: bought wood, a shop that sells again, a gallery, like pieces; and why a multiple says nothing.

use super::gallery::{by_percent, shares, terms};
use super::list::undo;
use super::{Screen, Seen, bare, exact, fact, mark, mark_beside, per_hour, point, refused, typing};
use crate::app::price::Tap;
use crate::app::price::gallery::GalleryTap;
use crate::app::price::ways::{Field, LikeDraft, Ways, WaysTap, sheet};
use crate::app::{App, Msg, workshop};
use crate::parts::field::{Field as Line, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::notice::trouble;
use crate::parts::scale::{Kind, Mark, Scale, scale};
use crate::parts::seg::{Seg, even};
use crate::parts::{day_steps::day_steps, pad};
use crate::screens::jobs::called;
use crate::screens::{said, spent_on};
use crate::view::{El, el};
use crate::words::en::{common, deal, job, other_ways as words, price, refusal, woods};
use fivebar_core::money::price::{Mark as Least, Proposed};
use fivebar_core::money::replacement::BOUGHT_YIELD;
use fivebar_core::quantity::{Decimal, Listed, Money, Units};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::offer::Leaves;
use fivebar_core::sheet::ways::{AtTag, Bought, Lacks, Like, Materials, Must, WaysSheet};

fn say(tap: WaysTap) -> Msg {
    Msg::Price(Tap::Ways(tap))
}

fn gallery(tap: GalleryTap) -> Msg {
    say(WaysTap::Gallery(tap))
}

/// What a shop keeps of its price, in per cent: common practice.
const KEEPS: [i64; 2] = [40, 50];

/// The page; none where the piece is no longer there.
pub fn screen(ways: &Ways, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let sheet = match sheet(app, ways) {
        Ok(sheet) => sheet,
        Err(Refusal::NotThere) => return None,
        Err(refusal) => return Some(refused("price/ways", &refusal, seen)),
    };
    if let Some((asks, typed)) = &ways.pad {
        return Some(by_pad(&sheet, (*asks, typed), (app, seen)));
    }
    if let Some(draft) = &ways.like {
        return Some(noting(&sheet, draft, (app, seen)));
    }
    let main = el("main", "price")
        .kids(marks(&sheet, seen))
        .kid(bought(&sheet, app, seen))
        .kid(a_shop(&sheet, seen))
        .kid(a_gallery(&sheet, ways, seen))
        .kid(like(&sheet, seen))
        .kids(sheet.materials.map(|materials| multiple(materials, seen)))
        .kid(el("div", "push"))
        .kid(key("key h48", words::BACK, "", Msg::Price(Tap::Close)));
    let screen = Screen::new("price/ways", head(Head::new(called(sheet.job, &sheet.name, app, seen), words::OTHER_WAYS)), main);
    Some(match undo(app, seen) {
        Some(undo) => screen.foot(el("div", "foot").kid(undo)),
        None => screen,
    })
}

fn by_pad(sheet: &WaysSheet, (asks, typed): (Field, &crate::app::entry::Typed), (app, seen): (&App, Seen<'_>)) -> Screen {
    let ask = if asks == Field::Keeps { words::SHOP_KEEPS } else { deal::ITS_SHARE };
    let main = el("main", "price")
        .kids(typing(ask, typed, "%", seen))
        .kid(done_key("key solid h88", common::DONE, "", say(WaysTap::PadDone)))
        .kid(key("key h48", common::NOT_NOW, "", say(WaysTap::PadAway)));
    Screen::new("price/ways/pad", head(Head::new(called(sheet.job, &sheet.name, app, seen), words::OTHER_WAYS)), main)
}

fn card(title: String) -> El<Msg> {
    el("section", "card tap way").kid(el("h2", "t17 w8 ink1").text(title))
}

fn small(text: impl Into<String>) -> El<Msg> {
    el("p", "t14 i2").text(text.into())
}

fn facts(rows: Vec<El<Msg>>) -> Option<El<Msg>> {
    (!rows.is_empty()).then(|| el("table", "facts").kid(el("tbody", "").kids(rows)))
}

/// All marks on one scale, those of other ways among them.
fn marks(sheet: &WaysSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    if let Some(refusal) = &sheet.refused {
        return vec![trouble(said::refused(refusal, seen))];
    }
    let real = |sum: Money| f64::try_from(sum.amount()).unwrap_or_default();
    let least = |mark: Option<Least>| mark.map(|mark| mark.holds);
    let bought = sheet.bought.as_ref().ok().and_then(|bought| least(bought.marks.your_rate)).filter(|_| !sheet.at_least);
    let like = sheet.like.first().map(|like| like.seen.sum);
    let marks = [
        (least(sheet.marks.costs_covered), Kind::Ink, price::COSTS_COVERED),
        (least(sheet.marks.lowest_pay), Kind::Under, price::LOWEST_PAY),
        (least(sheet.marks.your_rate).filter(|_| !sheet.at_least), Kind::Ink, price::YOUR_RATE),
        (bought, Kind::Ink, words::BOUGHT_MARK),
        (like, Kind::Wait, words::LIKE_MARK),
        (sheet.charge, Kind::Good, price::ASK),
    ];
    let known = marks.into_iter().filter_map(|(sum, kind, word)| Some((sum?, kind, word))).listed();
    let open = (sheet.at_least && !known.is_empty()).then(|| el("p", "").text(words::HOURS_OPEN));
    if known.len() < 2 {
        return known.is_empty().then(|| el("p", "").text(words::NO_MARKS)).into_iter().chain(open).listed();
    }
    // A price elsewhere and the ask are said, the others promise a least.
    let figure = |sum: Money, kind| {
        if matches!(kind, Kind::Wait | Kind::Good) { bare(sum, seen.speech) } else { mark_beside(sum, [sheet.charge, like], seen.speech) }
    };
    let shown = known.iter().map(|(sum, kind, word)| Mark::new(real(*sum), *kind, *word, figure(*sum, *kind))).listed();
    let (low, high) = known.iter().fold((f64::MAX, 0.0_f64), |(low, high), (sum, ..)| (low.min(real(*sum)), high.max(real(*sum))));
    let air = (high - low).max(1.0) * 0.08;
    let told = known.iter().map(|(sum, kind, word)| format!("{word} {}", figure(*sum, *kind))).listed().join(", ");
    let drawn = Scale { width: seen.page.card(), from: (low - air).max(0.0), to: high + air, marks: shown, ..Scale::default() };
    let drawn = card(words::FOR_ONE_PAID.into()).kid(scale(&drawn, &told));
    [drawn].into_iter().chain(open).listed()
}

/// The tag that is proposed, and by how much its point is over what your rate needs.
fn take(proposed: Proposed, tag: Option<Money>, seen: Seen<'_>) -> Option<El<Msg>> {
    let beyond = Money::book(proposed.beyond, proposed.tag.currency()).ok().filter(|beyond| !beyond.is_zero());
    let under = beyond.map(|beyond| words::beyond(&exact(beyond, seen.speech))).unwrap_or_default();
    let word = words::tag(&bare(proposed.tag, seen.speech));
    (tag != Some(proposed.tag)).then(|| key("key", word, under, say(WaysTap::Tag(proposed.tag))))
}

fn bought(sheet: &WaysSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let drawn = card(words::BOUGHT.into());
    let bought = match &sheet.bought {
        Ok(bought) => bought,
        Err(Lacks::Parts) => return drawn.kid(el("p", "").text(words::NO_PARTS)),
        Err(Lacks::BoardPrice(wood)) => {
            let woods = &crate::app::price::shop(app).workshop.wood.woods.clone();
            let wood = wood.as_ref().map(|wood| woods::among(wood, woods));
            let yard = workshop::wood::WoodTap::Open(workshop::wood::Page::Yard);
            let to = key("key h56", words::BOARDS_COST, "", Msg::Workshop(workshop::Tap::Wood(yard)));
            return drawn.kid(el("p", "").text(words::no_board_price(wood.as_deref()))).kid(to);
        }
    };
    drawn
        .kids(facts(of_boards(bought, sheet.at_least, seen)))
        .kid(small(words::board_yield(&seen.speech.number(BOUGHT_YIELD.saturating_mul(Decimal::ONE_HUNDRED), 0, 0))))
        .kid(small(words::BOUGHT_UNDER))
        .kids(bought.is_booked_too.then(|| small(words::BOUGHT_TOO)))
        .kids(bought.proposed.and_then(|proposed| take(proposed, sheet.tag, seen)))
}

fn of_boards(bought: &Bought, at_least: bool, seen: Seen<'_>) -> Vec<El<Msg>> {
    let then = |word: &str, mark: Option<Least>| mark.filter(|_| !at_least).map(|least| fact(word, mark_of(least, seen)));
    let away = (!bought.haul.is_zero()).then(|| fact(words::OF_HAULS, format!("−{}", exact(bought.haul, seen.speech))));
    let time = (0 < bought.time.as_ms()).then(|| fact(words::FETCHING, format!("−{}", seen.speech.span(bought.time))));
    let rows = [Some(fact(words::BOARDS, exact(bought.boards, seen.speech))), away, time];
    let marks = [then(words::THEN_LOWEST, bought.marks.lowest_pay), then(words::THEN_RATE, bought.marks.your_rate)];
    rows.into_iter().chain(marks).flatten().listed()
}

fn mark_of(least: Least, seen: Seen<'_>) -> String {
    mark(least.holds, seen.speech)
}

fn a_shop(sheet: &WaysSheet, seen: Seen<'_>) -> El<Msg> {
    let shop = &sheet.shop;
    let other = move |share: Option<Decimal>| say(share.map_or(WaysTap::Pad(Field::Keeps), WaysTap::Keeps));
    let row = |word: &str, must: Option<Must>| {
        let must = must?;
        let cell = |figure: String| el("td", "n").text(figure);
        Some(
            el("tr", "")
                .kid(el("td", "").text(word.to_owned()))
                .kid(cell(bare(must.pays, seen.speech)))
                .kid(cell(bare(must.tag, seen.speech))),
        )
    };
    let rows = [row(price::COSTS_COVERED, shop.costs), row(price::LOWEST_PAY, shop.lowest), row(price::YOUR_RATE, shop.rate)];
    let rows = rows.into_iter().flatten().listed();
    let top = |word: &str| el("th", "n").attr("scope", "col").text(word.to_owned());
    let heads =
        el("tr", "").kid(el("th", "").attr("scope", "col").text(words::TO_COVER)).kid(top(words::MUST_PAY)).kid(top(words::ITS_TAG));
    let table = (!rows.is_empty()).then(|| el("table", "facts").kid(el("thead", "").kid(heads)).kid(el("tbody", "").kids(rows)));
    card(words::SHOP.into())
        .kid(el("p", "").text(words::SHOP_KEEPS))
        .kid(by_percent(&KEEPS, shop.keeps, seen, other))
        .kids(table)
        .kids(at_tag(shop.at_tag, sheet, words::pays_at, seen))
        .kid(small(words::SHOP_UNDER))
}

/// What comes of one at the maker's own tag, and what that leaves.
fn at_tag(at: Option<AtTag>, sheet: &WaysSheet, word: fn(&str, &str) -> String, seen: Seen<'_>) -> Option<El<Msg>> {
    let (at, tag) = at.zip(sheet.tag)?;
    let tag = bare(tag, seen.speech);
    let tag = if sheet.is_set { words::your_tag(&tag) } else { words::tag_by_rate(&tag) };
    let first = word(&tag, &exact(at.you_get, seen.speech));
    let rest = if at.under_costs { Some(words::UNDER_SPENT.to_owned()) } else { leaves(at.leaves, seen).map(|hour| words::leaves(&hour)) };
    Some(el("p", "").text([Some(first), rest].into_iter().flatten().listed().join(" ")))
}

fn leaves(leaves: Option<Leaves>, seen: Seen<'_>) -> Option<String> {
    leaves.map(|leaves| per_hour(leaves.per_hour.left, leaves.left, seen.speech))
}

fn a_gallery(sheet: &WaysSheet, ways: &Ways, seen: Seen<'_>) -> El<Msg> {
    let drawn = card(words::A_GALLERY.into())
        .kid(el("p", "").text(deal::ITS_SHARE))
        .kid(shares(ways.terms.share, seen, gallery))
        .kid(terms(ways.terms, gallery));
    let leave = key("key h56", deal::LEAVE_AT_GALLERY, "", gallery(GalleryTap::Leave(sheet.job)));
    let Some(found) = sheet.gallery else { return drawn.kid(el("p", "").text(words::NOTHING_KEPT)) };
    let row = |word: &str, tag: Option<Money>| tag.map(|tag| fact(word, bare(tag, seen.speech)));
    let rows = [row(words::TAG_FOR_LOWEST, found.lowest), row(words::TAG_FOR_RATE, found.rate)];
    drawn.kids(facts(rows.into_iter().flatten().listed())).kids(at_tag(found.at_tag, sheet, words::get_at, seen)).kid(leave)
}

fn like(sheet: &WaysSheet, seen: Seen<'_>) -> El<Msg> {
    let none = sheet.like.is_empty().then(|| el("p", "").text(words::LIKE_NONE));
    let under = (!sheet.like.is_empty()).then(|| small(words::LIKE_UNDER));
    card(words::LIKE.into()).kids(none).kids(sheet.like.iter().map(|like| one_like((like, sheet.is_on_top), seen))).kids(under).kid(key(
        "key h56",
        words::NOTE_LIKE,
        "",
        say(WaysTap::Like),
    ))
}

fn one_like((like, is_on_top): (&Like, bool), seen: Seen<'_>) -> El<Msg> {
    let seen_then = words::seen(like.seen.sold, &seen.speech.day(like.seen.at), is_on_top);
    let hour = leaves(like.leaves, seen).map(|hour| words::an_hour_here(&hour));
    let under = [like.seen.what.clone(), hour].into_iter().flatten().listed().join(", ");
    let top = el("div", "row").kid(el("span", "").text(seen_then)).kid(el("b", "t22").text(bare(like.seen.sum, seen.speech)));
    el("div", "deal").key(like.seen.entry.to_string()).kid(top).kids((!under.is_empty()).then(|| el("p", "t14").text(under))).kid(key(
        "key soft h48",
        words::STRIKE,
        "",
        say(WaysTap::Strike(like.seen.entry)),
    ))
}

fn multiple(materials: Materials, seen: Seen<'_>) -> El<Msg> {
    let times = seen.speech.number(materials.times, 0, 1);
    let hour = leaves(materials.leaves, seen);
    let price = exact(materials.price, seen.speech);
    let charge = exact(materials.charge, seen.speech);
    let price = if materials.charge == materials.price { price } else { words::and_with_tax(&price, &charge) };
    let figures = words::why_not(&times, &exact(materials.spent, seen.speech), &price, hour.as_deref());
    card(words::times_materials(&times))
        .kid(el("p", "").text(figures))
        .kid(small(words::WHY_NOT))
        .kids(materials.with_hauls.then(|| small(words::HAULS_IN_IT)))
}

/// A like piece being noted: its price by the pad, whether it was sold, what it was like and when it was seen.
fn noting(sheet: &WaysSheet, draft: &LikeDraft, (app, seen): (&App, Seen<'_>)) -> Screen {
    let top = head(Head::new(called(sheet.job, &sheet.name, app, seen), words::NOTE_LIKE));
    let which = vec![Seg::new(words::WAS_ASKED, !draft.sold), Seg::new(words::WAS_SOLD, draft.sold)];
    let what = Line { id: "like-what", label: words::LIKE_WHAT.into(), value: draft.what.clone(), ..Line::default() };
    let day = el("button", "key left wide")
        .attr("type", "button")
        .attr("aria-expanded", if draft.on.asks { "true" } else { "false" })
        .on_tap(say(WaysTap::On(crate::app::spent_on::SpentTap::Ask)))
        .kid(el("span", "s").text(words::LIKE_ON))
        .kid(el("span", "t17 w8").text(spent_on::said(draft.on, seen)));
    let days = draft.on.asks.then(|| day_steps([job::DAY, job::DAYS], |by| say(WaysTap::On(crate::app::spent_on::SpentTap::By(by)))));
    let why = draft.typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric)));
    let main = el("main", "price")
        .kid(el("h2", "ink1").text(if sheet.is_on_top { words::LIKE_SUM_WITH_TAX } else { words::LIKE_SUM }))
        .kid(pad::entry(&draft.typed.text, sheet.currency.code(), draft.typed.wrong.is_some()))
        .kids(why)
        .kid(pad::pad(Some(point(seen)), |press| Msg::Price(Tap::Press(press))))
        .kid(even(words::LIKE_WAS, which, |nth| say(WaysTap::Sold(nth == 1))))
        .kid(field(what, |text| say(WaysTap::What(text))))
        .kid(day)
        .kids(days);
    let done = done_key("key solid", common::DONE, "", say(WaysTap::SaveLike));
    let keys = el("div", "um").kid(done).kid(key("key", common::NOT_NOW, "", say(WaysTap::LikeAway)));
    Screen::new("price/ways/like", top, main).foot(el("footer", "foot").kid(keys))
}
