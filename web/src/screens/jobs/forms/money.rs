//! Forms about money and facts: spending, tag and settle, sizes and words for the buyer, the lesson.

use super::super::entry::Slot;
use super::super::say;
use super::super::wood::foreign;
use super::{Asked, cans, chosen, worded};
use crate::app::jobs::Tap;
use crate::app::jobs::cans::open;
use crate::app::jobs::draft::{Draft, Pick, Picks, Way, What};
use crate::app::jobs::homes;
use crate::app::taxes::tax;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::pad::ears;
use crate::parts::seg::{Seg, seg};
use crate::screens::Seen;
use crate::screens::price::more::{settle, tag_word};
use crate::screens::spent_on::{choice, spent_key};
use crate::screens::workshop::cans::asked_about;
use crate::view::{El, el};
use crate::words::en::{cans as cans_words, common, costs as cost_words, job as words, jobs, workshop as shop_words};
use fivebar_core::ledger::fold::Booked;
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Id, Key, Listed, Units};
use fivebar_core::sheet::carried::HAUL;
use fivebar_core::sheet::job::JobSheet;

/// The form of a draft about money or facts.
pub fn asked(draft: &Draft, sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Asked {
    let code = draft.picks.currency.code();
    let is_on_top = || tax(app, draft.picks.currency, sheet.sale.tax).is_on_top();
    match draft.what {
        What::Spend => spend(draft, sheet, (app, seen)),
        What::CameBack(spending) => came_back(draft, spending, (&sheet.account.costs.lines, app)),
        What::Tag => {
            let word = tag_word(1 < sheet.sale.left, is_on_top());
            let mut asked = Asked::new("jobs/tag", word);
            asked.slots = vec![Slot::new(word, code)];
            asked
        }
        What::Settle => {
            let (word, _) = settle([None, None], is_on_top());
            let mut asked = Asked::new("jobs/settle", word);
            asked.slots = vec![Slot::new(word, code)];
            asked.other = sheet.account.pricing.settle_set.map(|_| words::WORK_IT_OUT.to_owned());
            asked
        }
        What::Size => size(draft.picks.units),
        What::Facts => facts(draft),
        _ => {
            let mut asked = Asked::new("jobs/lesson", words::LESSON);
            asked.above = vec![worded("lesson", words::LESSON_FIELD, draft, 0)];
            let _ = seen;
            asked
        }
    }
}

/// Money; or of a can back into it, so much in its unit.
pub(super) fn came_back(draft: &Draft, spending: Id, (lines, app): (&[Booked], &App)) -> Asked {
    let mut asked = Asked::new("jobs/came-back", cost_words::CAME_BACK);
    let of = lines.iter().find(|line| line.entry == spending).and_then(|line| line.can);
    let can = of.and_then(|id| app.shelf().workshop().cans.iter().find(|can| can.id == id).cloned());
    let what = || worded("came-back", cost_words::WHAT_CAME_BACK, draft, 0);
    asked.above = can.as_ref().map(|_| cans::goes_back(&draft.picks)).into_iter().chain((!draft.picks.can.back).then(what)).listed();
    asked.slots = vec![match can.filter(|_| draft.picks.can.back) {
        Some(can) => Slot::new(cans_words::AMOUNT, &cans_words::unit(can.unit.as_str())),
        None => Slot::new(words::SUM, draft.picks.currency.code()),
    }];
    asked.slots.extend(draft.picks.back_at.map(|_| Slot::new(cost_words::OR_SO_MANY, "")));
    asked
}

pub(super) const WAYS: [(Way, &str); 4] =
    [(Way::Sum, words::WAY_SUM), (Way::Each, words::WAY_EACH), (Way::Share, words::WAY_SHARE), (Way::Drive, words::WAY_DRIVE)];

fn spend(draft: &Draft, sheet: &JobSheet, (app, seen): (&App, Seen<'_>)) -> Asked {
    let picks = &draft.picks;
    let open = open(app, picks.currency);
    let mut asked = Asked::new("jobs/spend", words::WRITE_SPENDING);
    asked.above = vec![ways(picks.way, WAYS.to_vec())];
    asked.slots = if picks.way == Way::Share && picks.can.picked.is_some() { cans::slots(picks, &open) } else { figures(picks) };
    let mut kind_of = vec![];
    if picks.way != Way::Drive {
        let what = draft.words.first().filter(|what| !what.is_empty()).map(|what| format!(", {what}")).unwrap_or_default();
        let kind = picks.spending.as_ref().map_or(words::CHOOSE.to_owned(), |key| jobs::upper_first(&words::spending(key.as_str())));
        kind_of.push(chosen(words::KIND, format!("{kind}{what}"), picks.more));
        asked.instead = picks.more.then(|| cans::some_of(picks, &open, seen).into_iter().chain(kinds(draft, sheet)).listed());
    }
    let on = |tap| say(Tap::Pick(Pick::SpentOn(tap)));
    asked.above.push(el("div", "g2").kids(kind_of).kid(spent_key(picks.spent_on, on, seen)));
    if picks.way == Way::Share && !picks.more {
        asked.above.extend(cans::which(picks, &open, seen));
    }
    asked.above.extend(asked_about(picks.can.asks, seen));
    asked.above.extend(rate_as_set(draft, app, seen).filter(|_| picks.way == Way::Drive));
    asked.above.extend(picks.brings.filter(|_| picks.way == Way::Drive).map(what_for));
    let home = (picks.way != Way::Drive && !picks.more).then(|| super::super::homes::asked(picks, app)).flatten();
    let is_open = homes::is_open(app, draft);
    asked.instead = asked.instead.or_else(|| picks.spent_on.asks.then(|| choice(picks.spent_on, on, seen)));
    match home {
        // It stands where the pad will: over it half of it would be out of sight on a small phone.
        Some(home) if is_open && !picks.home.is_passed => {
            asked.instead = asked.instead.or_else(|| Some(put(home, picks.home.is_put, seen)))
        }
        Some(home) if !is_open => asked.above.push(home),
        _ => {}
    }
    asked
}

/// How the sum comes about, of the ways there are.
pub(super) fn ways(way: Way, of: Vec<(Way, &'static str)>) -> El<Msg> {
    let segs = of.iter().map(|(each, word)| Seg::new(*word, *each == way)).listed();
    seg(words::WAY, segs, move |nth| say(Tap::Pick(Pick::Way(of.get(nth).map_or(Way::Sum, |(way, _)| *way)))))
}

/// The figures a way asks for.
pub(super) fn figures(picks: &Picks) -> Vec<Slot> {
    let (units, code) = (picks.units, picks.currency.code());
    match picks.way {
        Way::Sum => vec![Slot::new(words::SUM, code)],
        Way::Each => vec![Slot::new(words::HOW_MANY_USED, ""), Slot::new(words::EACH, code)],
        Way::Share => vec![Slot::new(words::USED_OF_PACK, ""), Slot::new(words::PACK_HOLDS, ""), Slot::new(words::PACK_COST, code)],
        Way::Drive => {
            let rate = Slot::new(words::RATE, &shop_words::per_distance(code, units));
            vec![Slot::new(words::DISTANCE, common::distance_unit(units)), rate]
        }
    }
}

/// The rate a drive has where none is typed.
pub(super) fn rate_as_set(draft: &Draft, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let till = app.shelf().workshop().tills.get(&draft.picks.currency).cloned().filter(|_| draft.form.is_empty(1))?;
    let unit = common::distance_unit(if till.per? == Per::Mile { Units::Inch } else { Units::Metric });
    Some(el("p", "t14 i2").text(cost_words::rate_as_set(&seen.speech.number(till.mileage?, 2, 4), unit)))
}

/// The question, and what Done said of it. A figure that is typed by a keyboard passes it over, and is the sum's.
pub(super) fn put(home: El<Msg>, by_done: bool, seen: Seen<'_>) -> Vec<El<Msg>> {
    let asked = if by_done { crate::screens::homes::put(home) } else { vec![home] };
    let point = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    asked.into_iter().chain([ears(Some(point), |press| say(Tap::Press(press)))]).listed()
}

/// Whether a drive brought pieces to their buyers: then it is of these alone.
fn what_for(brings: bool) -> El<Msg> {
    let segs = [(true, words::FOR_DELIVERY), (false, words::FOR_ELSE)].map(|(is, word)| Seg::new(word, brings == is));
    seg(words::WHAT_FOR, segs.into(), |nth| say(Tap::Pick(Pick::Brings(nth == 0))))
}

fn kinds(draft: &Draft, sheet: &JobSheet) -> Vec<El<Msg>> {
    let keys: Vec<&'static str> = foreign(sheet).then_some(HAUL).into_iter().chain(words::SPENDING).listed();
    let is = |key: &str| draft.picks.spending.as_ref().is_some_and(|spent| spent.as_str() == key);
    let shown = keys.iter().map(|key| Chip::choice(words::spending(key), is(key))).listed();
    let pick = move |nth: usize| {
        let key = keys.get(nth).and_then(|key| Key::read(key));
        say(Tap::Pick(key.map_or(Pick::More, Pick::Spending)))
    };
    let which = if draft.picks.way == Way::Share { cans_words::NAME } else { words::WHICH };
    vec![flowing("key h48", shown, pick), worded("spent-on", which, draft, 0)]
}

fn size(units: Units) -> Asked {
    let mut asked = Asked::new("jobs/size", words::SIZE);
    let sides = [words::WIDTH, words::DEPTH, words::HEIGHT].map(|side| Slot::side(side, units));
    asked.slots = sides.into_iter().chain([Slot::new(words::WEIGHT, common::mass_unit(units))]).listed();
    asked
}

fn facts(draft: &Draft) -> Asked {
    let mut asked = Asked::new("jobs/facts", words::FACTS);
    asked.above = vec![
        worded("fact-wood", words::WOOD, draft, 0),
        worded("fact-finish", words::FINISH_WORDS, draft, 1),
        worded("fact-care", words::CARE, draft, 2),
        worded("fact-delivery", words::DELIVERY, draft, 3),
    ];
    asked
}
