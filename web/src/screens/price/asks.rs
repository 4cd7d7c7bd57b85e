//! What is asked for one, two and three pieces of a job, where they are settled, and the least to take: in the list and on its paper.

use super::{Seen, bare, exact, in_minor_units, mark_beside};
use crate::app::Msg;
use crate::view::{El, el};
use crate::words::en::price as words;
use fivebar_core::quantity::{Listed, Money};
use fivebar_core::sheet::price::{ForPieces, ForSale, Least};

/// What stands for one, two and three of them; none before a price or its costs are known.
pub fn table(row: &ForSale, seen: Seen<'_>) -> Option<El<Msg>> {
    row.ask.or(row.costs_covered)?;
    let heads = [
        if row.tag.is_some() || row.not_under.is_some() { words::ASK.to_owned() } else { words::by_your_rate(row.dearer) },
        words::SETTLE.to_owned(),
        least_word(row).to_owned(),
    ];
    let has_settle = row.rows.iter().any(|row| row.settle.is_some());
    let shown = |nth: &usize| *nth != 1 || has_settle;
    let top = heads.iter().enumerate().filter(|(nth, _)| shown(nth)).map(|(_, word)| el("th", "n").attr("scope", "col").text(word.clone()));
    // One of them is so small that its cents count: then those of all are shown, and of all in one form.
    let in_cents = row.rows.iter().filter_map(|of| of.costs_covered).any(in_minor_units);
    let rows = row.rows.iter().filter_map(|of| {
        let figures = figures(of, (least_word(row), in_cents), seen).into_iter().zip(&heads).enumerate().filter(|(nth, _)| shown(nth));
        // With large text the heads stand beside each figure instead of above.
        let cells = figures.map(|(nth, (figure, word))| {
            el("td", if nth == 0 { "n" } else { "n p" }).kid(el("span", "of").text(word.clone())).kid(el("span", "").text(figure))
        });
        let first = el("th", "").attr("scope", "row").text(words::pieces_word(of.n)?);
        Some(el("tr", if of.n == 1 { "one" } else { "" }).kid(first).kids(cells))
    });
    let head = el("thead", "").kid(el("tr", "").kid(el("td", "")).kids(top));
    let with_tax = row.is_on_top.then(|| el("caption", "t14 i2").text(words::ALL_WITH_TAX));
    Some(el("table", "ask").kids(with_tax).kid(head).kid(el("tbody", "").kids(rows)))
}

/// The word for the least that is taken of it, as of one. Of some the lowest pay may need more than waiting is worth and of others not: then each is what
/// it is not sold under.
pub fn least_word(row: &ForSale) -> &'static str {
    let least = row.rows.iter().filter_map(ForPieces::least).listed();
    match &least[..] {
        [] => words::COSTS_COVERED,
        [Least::Settled(_), ..] => words::WAITING_WORTH,
        least if least.iter().all(|of| matches!(of, Least::LowestPay(_))) => words::LOWEST_PAY,
        _ => words::NOT_UNDER,
    }
}

fn figures(of: &ForPieces, (word, in_cents): (&str, bool), seen: Seen<'_>) -> [String; 3] {
    let none = || "–".to_owned();
    let shown = |sum: Option<Money>| sum.map_or_else(none, |sum| bare(sum, seen.speech));
    let ask = of.ask.map_or_else(none, |ask| if of.n == 1 { seen.speech.short_money(ask) } else { bare(ask, seen.speech) });
    let costs = || {
        of.costs_covered
            .map_or_else(none, |sum| if in_cents { exact(sum, seen.speech) } else { mark_beside(sum, [of.ask, of.settle], seen.speech) })
    };
    // What waiting is worth is in whole units already, or what is asked.
    let last = match of.least() {
        Some(Least::LowestPay(sum)) if word != words::WAITING_WORTH => mark_beside(sum, [of.ask, of.settle], seen.speech),
        Some(least) if word != words::WAITING_WORTH => bare(least.sum(), seen.speech),
        _ => of.not_under.map_or_else(costs, |sum| bare(sum, seen.speech)),
    };
    [ask, shown(of.settle), last]
}
