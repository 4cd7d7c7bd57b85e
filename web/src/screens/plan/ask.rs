//! The few figures of a shape, on the pad.

use super::super::slots::{Slot, docked, figures_told, no, no_words, why_words};
use super::super::{Screen, Seen};
use super::{Boards, ends, fits, over, say, since, sketch, ways};
use crate::app::plan::{Draft, FIELD, PATTERNS, Since, TOP, Tap, fitting_to, in_use, none_for, refused};
use crate::app::{App, Msg, jobs};
use crate::parts::chips::{Chip, flowing};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, even};
use crate::screens::jobs::{parts as parts_of, titled};

use crate::view::{El, el};
use crate::words::en::{
    changed, common, job as job_words, plan as words, sought, tiles as tile_words, told as told_words, ways as ways_words,
};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::plan::field::problem::Pattern;
use fivebar_core::quantity::{Length, Units};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::make::{Ask, Source, Unfit, WhyNot};

pub fn screen(shape: Shape, sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let (draft, units) = (&app.plan.draft, sheet.account.units);
    let slots = slots(shape, units);
    let stands = crate::app::plan::why_not(app);
    let why = stands.as_ref().map(|why| why_not(why, app, (units, seen)));
    let why = why.or_else(|| app.plan.changed.then(|| words::CHANGED.to_owned()));
    let least = if let Some(WhyNot::Narrow { least, .. }) = &stands { Some(*least) } else { None };
    let none_fits = if let Some(WhyNot::NoneForPart(part)) = &stands { Some(part.as_str()) } else { None };
    let nothing_fits = matches!(stands, Some(WhyNot::NoneFits | WhyNot::NoneForPart(_)));
    let drop_key = app.plan.changed.then(|| since::drop_key(&Since::default()));
    let refused = refused(app).map(|why| no(why, seen));
    let at = |nth| say(Tap::At(nth));
    let ask = draft.rough(sheet.job, seen.speech.typing(units));
    let fit = fit_to(ask.as_ref(), app);
    let named = if nothing_fits { none_for(app) } else { None };
    let part = named.as_ref().and_then(|(_, name)| sheet.parts.iter().find(|part| part.name == *name));
    let of_part = alone((none_fits.or(part.map(|part| part.name.as_str())), ask.as_ref()), sheet).map(|alone| fit_to(Some(&alone), app));
    let of_it = of_part.as_ref().unwrap_or(&fit);
    let fit_part = if none_fits.is_some() { of_it } else { &fit };
    // The figures come first, so that the one under the thumb and the pad are seen together on any page.
    let main = el("main", "scr form")
        .kid(figures_told(&draft.form, &slots, (units, seen), at))
        .kids((shape == Shape::Rows).then(|| ways::left_open(sheet.job, (app, seen))).flatten())
        .kids(why.clone().map(|why| el("p", "why").attr("role", "alert").text(why)))
        .kids(least.map(|least| ends::to_saw(told_words::LEAST_STRIP, least, (units, seen))))
        .kids(refused)
        .kids(drop_key)
        .kids(choices(shape, draft))
        .kids(parts(shape, sheet, (app, seen)))
        .kids((shape == Shape::Rows).then(|| ways::woods(&fit, (app, units, seen))).flatten())
        .kids(if nothing_fits { fits::told((part, of_it), app, (units, seen)) } else { vec![] })
        .kids(part.map(|part| fits::helps(part, of_it, (app, units, seen))).unwrap_or_default())
        .kids(since::parts(none_fits, &draft.without))
        .kids(nothing_fits.then(|| key("key h56 wide", words::ADD_BOARDS, words::ADD_BOARDS_UNDER, say(Tap::Buy))))
        .kids(over::asked(draft.over.filter(|_| shape == Shape::Parts), units, seen))
        .kids(piles_key((none_fits, &fit, fit_part), (app, units, seen)))
        .kids((shape == Shape::Rows).then(|| el("p", "t14 i2").text(words::ROWS_LEFT_OPEN)))
        .kids((shape == Shape::Field).then(|| el("p", "t14 i2").text(tile_words::LEFT_OPEN)))
        .kids(since::in_use(sheet.job, app, seen))
        .kid(key("key soft h56 wide", words::OTHER_SHAPE, "", say(Tap::Choose)));
    let plan = done_key("key solid t22", words::PLAN, "", say(Tap::Go));
    // Why there is nothing to plan stands over the pad, which else would cover it.
    let why = why_words(&draft.form, &slots, (units, seen)).or(why);
    let foot = docked(&draft.form, &slots, (plan, why, seen), |press| say(Tap::Press(press)));
    let top = Head::new(titled(sheet, seen), words::shape(shape).0);
    Screen::new("jobs/plan-ask", head(top), main).foot(foot).says_it()
}

/// The parts that are planned, each a tap from being changed, and the key that adds one; without a part there is nothing to plan.
fn parts(shape: Shape, sheet: &JobSheet, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    if !matches!(shape, Shape::Parts | Shape::Sticks) || sheet.ended.is_some() {
        return vec![];
    }
    let class = if sheet.parts.is_empty() { "key h56 wide" } else { "key soft h56 wide" };
    let add = key(class, job_words::ADD_PART, "", Msg::Jobs(jobs::Tap::Write(jobs::draft::What::Part(None))));
    let list = (!sheet.parts.is_empty()).then(|| parts_of(sheet, &app.shelf().workshop().wood.woods, seen));
    list.into_iter().chain([add]).collect()
}

fn slots(shape: Shape, units: Units) -> Vec<Slot> {
    let side = |label: &str| Slot::side(label, units);
    match shape {
        Shape::Rows => {
            let asked: [Slot; TOP] =
                [side(words::LONG), side(words::WIDE), Slot::whole(words::ROWS), side(words::JOINTS_APART), side(words::THICK)];
            asked.to_vec()
        }
        Shape::Parts | Shape::Sticks => vec![Slot::whole(words::HOW_MANY)],
        Shape::Field => {
            let asked: [Slot; FIELD] = [words::WIDE, words::DEEP, words::HIGH, words::NEAR_ENOUGH, tile_words::LENGTH].map(side);
            asked.to_vec()
        }
    }
}

fn choices(shape: Shape, draft: &Draft) -> Vec<El<Msg>> {
    match shape {
        Shape::Rows => {
            let segs = vec![Seg::new(words::MAY_BE_CUT, draft.split), Seg::new(words::END_SHORTENED, !draft.split)];
            vec![even(words::HOW_CUT, segs, |nth| say(Tap::Split(nth == 0)))]
        }
        Shape::Parts | Shape::Sticks => {
            vec![flowing("key h48", vec![Chip::choice(words::AS_MANY, draft.form.is_empty(0))], |_| say(Tap::AsMany))]
        }
        Shape::Field => {
            let one = |(nth, pattern): (usize, &Pattern)| {
                let on = !draft.any_pattern() && draft.patterns.get(nth) == Some(&true);
                el("button", "key h56")
                    .attr("type", "button")
                    .attr("aria-pressed", if on { "true" } else { "false" })
                    .on_tap(say(Tap::Pattern(nth)))
                    .kid(sketch((36.0, 24.0), drawn(*pattern)))
                    .kid(el("span", "s").text(words::pattern(*pattern)))
            };
            let patterns =
                el("div", "chips").attr("role", "group").attr("aria-label", words::PATTERN).kids(PATTERNS.iter().enumerate().map(one));
            let any = el("button", "key h56")
                .attr("type", "button")
                .attr("aria-pressed", if draft.any_pattern() { "true" } else { "false" })
                .on_tap(say(Tap::AnyPattern))
                .kid(el("span", "s").text(words::ANY_PATTERN));
            let two = flowing("key h48", vec![Chip::choice(words::TWO_WOODS, draft.two)], |_| say(Tap::Two));
            vec![patterns.kid(any), two]
        }
    }
}

const STACK: Boards = &[(0.0, 0.0, 18.0, 12.0), (18.0, 0.0, 18.0, 12.0), (0.0, 12.0, 18.0, 12.0), (18.0, 12.0, 18.0, 12.0)];
const RUNNING: Boards =
    &[(0.0, 0.0, 18.0, 12.0), (18.0, 0.0, 18.0, 12.0), (0.0, 12.0, 9.0, 12.0), (9.0, 12.0, 18.0, 12.0), (27.0, 12.0, 9.0, 12.0)];
const BASKET: Boards = &[
    (0.0, 0.0, 18.0, 8.0),
    (0.0, 8.0, 18.0, 8.0),
    (0.0, 16.0, 18.0, 8.0),
    (18.0, 0.0, 6.0, 24.0),
    (24.0, 0.0, 6.0, 24.0),
    (30.0, 0.0, 6.0, 24.0),
];
const HERRINGBONE: Boards = &[
    (0.0, 0.0, 16.0, 8.0),
    (16.0, 0.0, 8.0, 16.0),
    (0.0, 8.0, 8.0, 16.0),
    (8.0, 8.0, 8.0, 16.0),
    (24.0, 0.0, 12.0, 8.0),
    (24.0, 8.0, 12.0, 8.0),
    (16.0, 16.0, 20.0, 8.0),
];
const CROSSED: Boards = &[(0.0, 2.0, 36.0, 5.0), (0.0, 17.0, 36.0, 5.0), (4.0, 0.0, 5.0, 24.0), (27.0, 0.0, 5.0, 24.0)];

fn drawn(pattern: Pattern) -> Boards {
    match pattern {
        Pattern::Stack => STACK,
        Pattern::Running => RUNNING,
        Pattern::Basket => BASKET,
        Pattern::Herringbone => HERRINGBONE,
        Pattern::Crossed => CROSSED,
    }
}

/// Pieces with why they can't be used.
type Fit = Vec<(Source, Option<Unfit>)>;

fn fit_to(ask: Option<&Ask>, app: &App) -> Fit {
    ask.map(|ask| fitting_to(app, ask)).unwrap_or_default()
}

/// What is asked of one part alone, that nothing fits.
fn alone((part, ask): (Option<&str>, Option<&Ask>), sheet: &JobSheet) -> Option<Ask> {
    let (part, ask) = part.zip(ask)?;
    Some(Ask { without: sheet.parts.iter().map(|it| it.name.clone()).filter(|name| name != part).collect(), ..ask.clone() })
}

/// Opens the piles, and says how many are used; and of those that fit not, or not one part, why.
fn piles_key((part, fit, fit_part): (Option<&str>, &Fit, &Fit), (app, units, seen): (&App, Units, Seen<'_>)) -> Vec<El<Msg>> {
    let (piles, pieces) = in_use(fit, &app.plan.draft.turned);
    let n = seen.speech.number(fivebar_core::quantity::Decimal::from(piles), 0, 0);
    let under = words::in_use(&n, piles == 1, &common::pieces(pieces, &seen.speech.count(pieces)));
    let bought = fit.iter().any(|(source, why)| why.is_none() && source.bought.is_some());
    let under = if bought { sought::and_boards_to_buy(&under) } else { under };
    let trims = app.plan.draft.shape.map(|shape| ends::trims(shape, fit_part, app, (units, seen))).unwrap_or_default();
    let unfit = since::unfit(fit_part, part, app, (units, seen)).into_iter().chain(trims);
    std::iter::once(key("key h56 wide", words::PILES, under, say(Tap::Piles))).chain(unfit).collect()
}

fn why_not(why: &WhyNot, app: &App, (units, seen): (Units, Seen<'_>)) -> String {
    match why {
        WhyNot::NoParts => words::NO_PARTS.to_owned(),
        WhyNot::NoPiles => words::NO_PILES.to_owned(),
        WhyNot::NoneFits => words::NONE_FITS.to_owned(),
        WhyNot::NoneForPart(part) => words::none_for_part(part),
        WhyNot::OneWood => words::ONE_WOOD.to_owned(),
        WhyNot::AllCut { sets } => changed::all_cut(&seen.speech.count(*sets), *sets == 1),
        WhyNot::Narrow { rows, wide, least } => {
            let [wide, least] = [wide, least].map(|length| super::side(*length, units, seen));
            let several = (*rows != 1).then(|| seen.speech.count(*rows));
            words::narrow(several.as_deref(), [&wide, &least])
        }
        WhyNot::NotOfWood { wood, narrow } => {
            let wood = ways::wood(Some(wood), app);
            let sizes = |sizes: [Length; 2]| sizes.map(|length| super::side(length, units, seen));
            match narrow.map(|(rows, all)| (ways::rows(rows.into(), seen), sizes(all))) {
                Some((rows, [usable, needed])) => ways_words::too_narrow(&wood, &rows, [&usable, &needed]),
                None => ways_words::none_of(&wood),
            }
        }
        WhyNot::TileLong { tile, longest } => tile_words::too_long([*tile, *longest].map(|it| super::side(it, units, seen))),
        WhyNot::TileShort { tile, least } => tile_words::too_short([*tile, *least].map(|it| super::side(it, units, seen))),
        WhyNot::TileToSay { tile, side } => tile_words::to_say([*tile, *side].map(|it| super::side(it, units, seen))),
        WhyNot::Refused(why) => no_words(why, seen),
    }
}
