//! How wide to rip and how thick to plane: of each pile before it is cut to length, and of parts when they are cut.

use super::super::Seen;
use super::saw::number;
use super::{anew, mixed, side, told};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::view::{El, el};
use crate::words::en::{common, plan, told as words};
use fivebar_core::quantity::{Length, begin_large};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::wish::{Wanted, Wish};
use fivebar_core::sheet::plan::{GlueUp, PlanSheet, Rip};

/// "Rows 56.9 mm wide, together 398.3, planed to 25 thick."; of the other rows of a top that is begun, of all of them.
pub fn rows(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let Wish::Panel(panel) = &given.ready.wish else { return None };
    let length = |length: Length| seen.speech.length(length, given.units);
    let whole = anew::whole(given, sheet, app);
    let made = whole.map_or(sheet.made, |all| all.rows);
    let all = panel.strip.times(made).unwrap_or_default();
    let n = whole.map(|all| number(all.rows, seen));
    let width = whole.map_or(panel.width, |all| Some(all.asked));
    if let Some((last, asked)) = whole.map_or_else(|| given.ready.last_row(sheet.made), |all| all.last).zip(width) {
        let rows = words::rows((&side(panel.strip, given.units, seen), None), None, &length(panel.thickness));
        return Some(words::rows_sawn(&rows, (n.as_deref(), &length(all)), [&length(last), &side(asked, given.units, seen)]));
    }
    let over = width.filter(|_| panel.rows() == Some(sheet.made)).and_then(|asked| Length::nm(all.as_nm() - asked.as_nm()).ok());
    let together = (Some(all) != width).then(|| (length(all), over.filter(|over| Length::ZERO < *over).map(length)));
    let together = together.as_ref().map(|(all, over)| (all.as_str(), over.as_deref()));
    Some(words::rows((&side(panel.strip, given.units, seen), n.as_deref()), together, &length(panel.thickness)))
}

/// What is done to the pieces of a pile before they are cut to length, with how wide and how thick; of sticks what is ripped off, and nothing of
/// parts, whose sizes stand on their cuts.
pub fn steps(given: &Given, sheet: &PlanSheet, place: usize, seen: Seen<'_>) -> Option<String> {
    if let Wish::Sticks(list) = &given.ready.wish {
        return rips(given, sheet, (place, 1 < list.parts.len()), seen);
    }
    let source = given.ready.sources.get(place)?;
    let [wide, thick] = finished(given, sheet, place)?;
    let length = |length: Length| seen.speech.length(length, given.units);
    let [rough_thick, rough_wide, _] = source.stack.sizes.map(Option::unwrap_or_default);
    // Strips of rows and tiles are sawn wider than they are jointed to.
    let sawn = given.ready.ripped_to(source, wide);
    let n = (1 < source.ripped).then(|| plan::ripped_in(source.ripped, number(source.ripped, seen)));
    let rip = (sawn < rough_wide).then(|| words::rip(n.as_deref(), &length(sawn)));
    let joint = (wide < sawn).then(|| words::joint(&length(wide)));
    let plane = (thick < rough_thick).then(|| words::plane(&length(thick)));
    let steps: Vec<String> = [rip, joint, plane].into_iter().flatten().collect();
    (!steps.is_empty()).then(|| words::steps(&steps))
}

/// Sticks that are wider than what is cut of them: how wide they are ripped, for which part where there are several, and what is left beside.
fn rips(given: &Given, sheet: &PlanSheet, (place, several): (usize, bool), seen: Seen<'_>) -> Option<String> {
    let length = |length: Length| seen.speech.length(length, given.units);
    let one = |rip: &Rip| {
        let part = several.then(|| told::part(given, rip.part));
        words::rip_first(&length(rip.wide), part.as_deref(), &length(rip.beside))
    };
    let all: Vec<String> = sheet.rips(&given.ready, place).iter().map(one).collect();
    (!all.is_empty()).then(|| words::steps(&all))
}

/// Width and thickness of what is cut from a pile, finished.
fn finished(given: &Given, sheet: &PlanSheet, place: usize) -> Option<[Length; 2]> {
    match &given.ready.wish {
        Wish::Panel(_) | Wish::Tiles(_) => {
            let [_, wide, thick] = sheet.lines.iter().find(|line| line.source == place)?.pieces.first()?.size;
            Some([wide, thick])
        }
        Wish::Parts(_) | Wish::Sticks(_) => None,
    }
}

/// How the sizes on the cuts of parts are meant.
pub fn meant(given: &Given, seen: Seen<'_>) -> Option<String> {
    match &given.ready.wish {
        Wish::Parts(_) => {
            let [long, wide, thick] = given.ready.figures.allow.map(|over| seen.speech.length(over, given.units));
            Some(words::sizes_over([&long, &wide, &thick]))
        }
        Wish::Sticks(_) => Some(words::SIZES_AS_FINISHED.into()),
        _ => None,
    }
}

/// Length, width and thickness: "902 × 100 × 27"; the length alone where no more is known.
pub fn written(size: [Length; 3], given: &Given, seen: Seen<'_>) -> String {
    let known = size.iter().filter(|side| **side != Length::ZERO);
    known.map(|side| seen.speech.length(*side, given.units)).collect::<Vec<_>>().join(" × ")
}

/// After the saw: which strips are glued side by side, and the sizes that parts are finished to.
pub fn finish(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let Wish::Parts(parts) = &given.ready.wish else { return vec![] };
    let title = words::finish_title(!sheet.glue_ups.is_empty(), common::length_unit(given.units));
    let glued = sheet.glue_ups.iter().map(|one| begin_large(&glue_up(one, given, (app, seen))) + ".");
    // What is alike is one line.
    let mut alike: Vec<((String, String), i64)> = vec![];
    for (nth, part) in (0..).zip(&parts.parts) {
        let to = finish_to((nth, part), given, seen);
        match alike.iter_mut().find(|(other, _)| *other == to) {
            Some((_, n)) => *n = n.saturating_add(part.n),
            None => alike.push((to, part.n)),
        }
    }
    let parts = alike.iter().map(|((name, size), n)| words::finish(&number(n.saturating_mul(sheet.made), seen), name, size));
    let lines = glued.chain(parts).map(|line| worded("p", "", line));
    vec![el("h2", "ink1 t17").text(title), el("section", "t14 sums sizes").kids(lines)]
}

fn glue_up(one: &GlueUp, given: &Given, (app, seen): (&App, Seen<'_>)) -> String {
    let strips = one.strips.iter().map(|(n, wide)| words::strips(&number(*n, seen), &seen.speech.length(*wide, given.units)));
    let n = (1 < one.n).then(|| number(one.n, seen));
    let glue = words::glue_up(n.as_deref(), &told::part(given, one.part), &strips.collect::<Vec<_>>());
    // What shows on no tape is not said.
    let [wide, cut] = [one.wide, one.cut].map(|width| seen.speech.length(width, given.units));
    let is_rest = rest_of(given, one.part).is_some();
    let glue = if !is_rest && one.cut < one.wide && wide != cut { words::then_saw(&glue, &wide, &cut) } else { glue };
    if one.woods.is_empty() { glue } else { words::of_woods(&glue, &mixed::strips(one, (app, seen))) }
}

/// The name of a part, and the size it is finished to.
fn finish_to((nth, part): (usize, &Wanted), given: &Given, seen: Seen<'_>) -> (String, String) {
    let [thick, wide, long] = part.size;
    let (name, wide) = match part.rest_of {
        Some(whole) => (words::with_its_strips(&told::part(given, nth)), whole),
        None => (told::part(given, nth), wide),
    };
    (name, written([long, wide, thick], given, seen))
}

/// How wide the part is that a part by its place is the rest of.
fn rest_of(given: &Given, nth: usize) -> Option<Length> {
    if let Wish::Parts(list) = &given.ready.wish { list.parts.get(nth)?.rest_of } else { None }
}
