//! Boards a plan wants bought: how many of each kind, what is bought of them, and what they cost.

use super::super::Seen;
use super::nearly;
use super::saw::number;
use crate::app::App;
use crate::app::plan::{Plan, still_to_buy};
use crate::words::en::plan as words;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::make::buy::{ToBuy, not_bought, together};
use fivebar_core::sheet::plan::PlanSheet;

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
        match it.left {
            0 => words::is_bought(&n, letter(given, it.source)),
            _ if had == 0 => words::buy(&n, letter(given, it.source), cost.as_deref()),
            _ => words::buy_more([&left, &seen.speech.count(had)], had == 1, letter(given, it.source), cost.as_deref()),
        }
    };
    let all = together(&wanted).filter(|_| 1 < wanted.len()).map(|cost| words::all_cost(&seen.speech.money(cost)));
    of_rack(given, sheet, (&app.plan, seen)).into_iter().chain(wanted.iter().map(one)).chain(all).collect()
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
