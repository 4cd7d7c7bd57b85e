//! Boards a plan wants bought: how many of each kind, what is bought of them, and what they cost.

use super::super::Seen;
use super::saw::number;
use super::{lacks, nearly, say, told};
use crate::app::plan::{Plan, Tap, nearly_bought, still_to_buy};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed, common, plan as words};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Count, Length};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::make::buy::{Nearly, ToBuy, not_bought, together};
use fivebar_core::sheet::plan::PlanSheet;

/// Parts for more pieces than the job is of are questioned; as many as the wood gives were asked for on purpose.
pub fn beyond_the_job(given: &Given, seen: Seen<'_>) -> Option<String> {
    let is_parts = matches!(given.ask.what.shape(), Shape::Parts | Shape::Sticks) && given.cut.sets == 0;
    let asked = told::wanted(given).and_then(|sets| Count::try_from(sets).ok()).filter(|sets| is_parts && given.alike < *sets)?;
    let [job, asked] = [given.alike, asked].map(|n| common::pieces(n, &seen.speech.count(n)));
    Some(words::beyond_the_job(&job, &asked))
}

/// Beside the key that takes the wood: for how many pieces it is, where that is more than the job has.
pub fn more_than_the_job(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let is_parts = matches!(given.ask.what.shape(), Shape::Parts | Shape::Sticks) && given.cut.sets == 0;
    let made = Count::try_from(sheet.made).ok().filter(|made| is_parts && given.alike < *made)?;
    Some(changed::more_than_the_job(&common::pieces(made, &seen.speech.count(made)), &seen.speech.count(given.alike)))
}

/// How far what lies there goes, where boards could be bought; of a top its ways say it.
fn of_rack(given: &Given, sheet: &PlanSheet, (plan, seen): (&Plan, Seen<'_>)) -> Option<String> {
    let shape = given.ask.what.shape();
    if given.ask.bought.is_empty() || shape == Shape::Rows {
        return None;
    }
    let buys = !not_bought(given, sheet).is_empty();
    Some(match plan.of_rack {
        None if buys || !nearly::is_all(given, sheet) => return None,
        None => words::NOTHING_TO_BUY.to_owned(),
        Some(_) if !buys => words::BOARDS_BRING_NOTHING.to_owned(),
        Some(of) if of.made == 0 && !given.cut.parts.is_empty() => changed::rack_gives_no_rest(of.proven),
        Some(of) if of.made == 0 => words::rack_gives_none(shape, of.proven),
        Some(of) => {
            let pieces = format!("{} {}", number(of.made, seen), words::things(shape, of.made == 1));
            words::rack_gives(&pieces, of.made == 1, of.proven)
        }
    })
}

/// Boards to buy first, and what they cost; after how far what lies there goes.
pub fn buy(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Vec<String> {
    let wanted = still_to_buy(app);
    let one = |it: &ToBuy| {
        let (n, left, had) = (seen.speech.count(it.n), seen.speech.count(it.left), it.n.saturating_sub(it.left));
        let cost = it.each.and_then(|each| each.times(it.left).ok()).map(|cost| seen.speech.money(cost));
        let named = lacks::named(given, it.source, (app, seen));
        match it.left {
            0 => words::is_bought(&n, letter(given, it.source)),
            _ if had == 0 => words::buy(&n, &named, cost.as_deref()),
            _ => words::buy_more([&left, &seen.speech.count(had)], had == 1, &named, cost.as_deref()),
        }
    };
    let (kinds, begun) = (wanted.iter().filter(|it| 0 < it.left).count(), wanted.iter().any(|it| it.left < it.n));
    let all = together(&wanted).filter(|_| 1 < kinds).map(|cost| words::all_cost(&seen.speech.money(cost), begun));
    of_rack(given, sheet, (&app.plan, seen)).into_iter().chain(wanted.iter().map(one)).chain(all).collect()
}

/// Boards that were bought in another size: both sizes, and the key that counts them; or that they are too far off.
pub fn nearly(given: &Given, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let size = |size: [Length; 3]| size.map(|side| seen.speech.length(side, given.units)).join(" × ");
    let one = |it: &Nearly| {
        let (n, one, letter) = (seen.speech.count(it.counted.n), it.counted.n == 1, letter(given, it.counted.source));
        let sizes = [size(it.counted.size), format!("{} {}", size(it.wanted), common::length_unit(given.units))];
        let said = words::bought_otherwise((&n, one), letter, [&sizes[0], &sizes[1]], it.may_count);
        let count = it.may_count.then(|| key("key h56 wide", words::count_as(&n, letter), "", say(Tap::CountAs(it.counted))));
        std::iter::once(worded("p", "", said)).chain(count.map(|key| el("div", "no-print").kid(key)))
    };
    nearly_bought(app).iter().flat_map(one).collect()
}

pub fn letter(given: &Given, source: usize) -> &str {
    given.ready.sources.get(source).map_or("", |source| source.letter.as_str())
}

/// "2 of G, 1 of H", where boards are to be bought.
pub fn boards(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let one = |(source, n, _): (usize, u32, _)| words::so_many_of(&seen.speech.count(n), letter(given, source));
    let all: Vec<String> = not_bought(given, sheet).into_iter().map(one).collect();
    (!all.is_empty()).then(|| all.join(", "))
}
