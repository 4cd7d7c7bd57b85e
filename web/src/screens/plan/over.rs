//! Parts that are glued up only because a board is a little too narrow for what is over in width: what would do with less over.

use super::super::Seen;
use super::saw::number;
use super::{say, side, told};
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::told as words;
use fivebar_core::quantity::{Length, Listed, Units};
use fivebar_core::sheet::make::{Given, too_wide};
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// A part that one strip would do for with less over.
struct Near {
    part: usize,
    source: usize,
    /// Too narrow by so much; with so much over it is not.
    by: Length,
    over: Length,
    /// Boards it takes then, and boards it takes now, where one board gives one strip.
    boards: Option<[i64; 2]>,
}

fn near(part: usize, given: &Given, sheet: &PlanSheet) -> Option<Near> {
    let Wish::Parts(parts) = &given.ready.wish else { return None };
    let glued = sheet.glue_ups.iter().filter(|one| one.part == part).listed();
    let wide = parts.parts.get(part).filter(|_| !glued.is_empty())?.size[1].as_nm();
    let lines = sheet.lines.iter().filter(|line| line.pieces.iter().any(|cut| cut.part == Some(part))).listed();
    let net = |source: usize| given.ready.sources.get(source).map(|it| it.size[1].as_nm());
    let fits = lines.iter().filter_map(|line| Some((net(line.source)?, line.source))).filter(|(net, _)| wide <= *net);
    let (net, source) = fits.max_by_key(|(net, _)| *net)?;
    let over = net.saturating_sub(wide);
    let by = given.ready.figures.allow[1].as_nm().saturating_sub(over);
    let strips =
        glued.iter().fold(0_i64, |sum, one| one.strips.iter().fold(sum, |sum, (n, _)| sum.saturating_add(n.saturating_mul(one.n))));
    let boards = lines.iter().fold(0_i64, |sum, line| sum.saturating_add(line.n));
    let parts = glued.iter().fold(0_i64, |sum, one| sum.saturating_add(one.n));
    let alone = lines.iter().all(|line| line.source == source && line.pieces.iter().all(|cut| cut.n == 1 && cut.part == Some(part)));
    let boards = (alone && strips == boards && parts < boards).then_some([parts, boards]);
    Some(Near { part, source, by: Length::nm(by).ok().filter(|by| Length::ZERO < *by)?, over: Length::nm(over).ok()?, boards })
}

/// That so much is over in this plan alone, and the way back.
pub fn asked(over: Option<Length>, units: Units, seen: Seen<'_>) -> Vec<El<Msg>> {
    let one =
        |over| key("key soft h56 wide no-print", words::over_in_width(&side(over, units, seen)), words::OVER_AS_SET, say(Tap::Over(None)));
    over.map(one).into_iter().listed()
}

/// Why parts are glued up: no board is wide enough. What is too narrow for what is over alone says so itself.
pub fn glued(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let parts = if let Wish::Parts(parts) = &given.ready.wish { parts.parts.len() } else { 0 };
    let is_near = |part: usize| given.ask.over.is_none() && near(part, given, sheet).is_some();
    let is_glued = |part: usize| sheet.glue_ups.iter().any(|one| one.part == part) && !is_near(part);
    let said = |part: usize| {
        let why = too_wide(given, part)?;
        let letter = given.ready.sources.get(why.source)?.letter.as_str();
        let [needs, widest] = [why.needs, why.widest].map(|length| side(length, given.units, seen));
        Some(words::glued_up(&told::part(given, part), [&needs, &widest], letter))
    };
    let lines = once_each((0..parts).filter(|part| is_glued(*part)).filter_map(said));
    lines.into_iter().map(|line| worded("p", "", line)).listed()
}

/// Of parts alike it is said once, wherever they stand in the list.
fn once_each(all: impl Iterator<Item = String>) -> Vec<String> {
    let mut lines: Vec<String> = vec![];
    all.for_each(|line| {
        if !lines.contains(&line) {
            lines.push(line)
        }
    });
    lines
}

/// What would do with less over, and the key that plans it; or that it is planned so, and the way back.
pub fn choices(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let length = |length: Length| seen.speech.length(length, given.units);
    if given.ask.over.is_some() {
        return asked(given.ask.over, given.units, seen);
    }
    let parts = if let Wish::Parts(parts) = &given.ready.wish { parts.parts.len() } else { 0 };
    let all = (0..parts).filter_map(|part| near(part, given, sheet)).listed();
    let said = |near: &Near| {
        let letter = given.ready.sources.get(near.source).map_or("", |source| source.letter.as_str());
        let sizes =
            [side(near.by, given.units, seen), side(given.ready.figures.allow[1], given.units, seen), side(near.over, given.units, seen)];
        let boards = near.boards.map(|boards| boards.map(|n| number(n, seen)));
        let boards = boards.as_ref().map(|[n, of]| [n.as_str(), of.as_str()]);
        words::too_narrow_for_over(&told::part(given, near.part), letter, [&sizes[0], &sizes[1], &sizes[2]], boards)
    };
    // The least of them does for all.
    let least = all.iter().map(|near| near.over).min();
    let way = least.map(|over| key("key h56 wide", words::with_over(&length(over)), words::IN_THIS_PLAN, say(Tap::Over(Some(over)))));
    let lines = all.iter().map(|near| worded("p", "w7", said(near))).listed();
    lines.into_iter().chain(way.map(|way| el("div", "no-print").kid(way))).listed()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_of_parts_alike_is_said_once() {
        let once = |all: &str| once_each(all.split(' ').map(String::from)).join(" ");
        assert_eq!(once("leg leg top leg top"), "leg top");
    }
}
