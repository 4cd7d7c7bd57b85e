//! Parts that are glued up of strips of several woods, or cut of several, where the maker said none for them.

use super::super::Seen;
use super::saw::number;
use super::{told, ways};
use crate::app::jobs;
use crate::app::jobs::draft::What;
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::told as words;
use fivebar_core::quantity::{Key, Listed, begin_small};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::make::mixed::finished_of_other;
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::sheet::plan::{GlueUp, PlanSheet};

/// "5 oak" and "1 maple" of a glue-up.
pub fn strips(one: &GlueUp, (app, seen): (&App, Seen<'_>)) -> Vec<String> {
    one.woods.iter().map(|(n, wood)| words::so_many_in(&number(*n, seen), &named(wood.as_deref(), app))).listed()
}

fn named(wood: Option<&str>, app: &App) -> String {
    begin_small(&ways::wood(wood.and_then(Key::read).as_ref(), app))
}

/// Of each part that is glued up of several woods, which, of those of which the same is to be said once and how many; and while the plan is not used
/// the key that says its wood.
pub fn told(given: &Given, sheet: &PlanSheet, is_used: bool, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let (Wish::Parts(parts) | Wish::Sticks(parts)) = &given.ready.wish else { return vec![] };
    let mut all: Vec<(usize, Said, i64)> = vec![];
    for (nth, part) in parts.parts.iter().enumerate() {
        let Some(said) = woods(given, sheet, nth, app) else { continue };
        let n = part.n.saturating_mul(sheet.made);
        match all.iter_mut().find(|(_, other, _)| *other == said) {
            Some((_, _, of)) => *of = of.saturating_add(n),
            None => all.push((nth, said, n)),
        }
    }
    let one = |(nth, (part, said), n): &(usize, Said, i64)| {
        let name = parts.parts.get(*nth).map(|part| part.name.clone()).unwrap_or_default();
        let several = parts.parts.get(*nth).is_some_and(|of| of.n.saturating_mul(sheet.made) < *n);
        let part = if several { words::so_many_alike(part, &number(*n, seen)) } else { part.clone() };
        let line = match said {
            Woods::Begun(cut, rest) => words::begun_of_another(&part, cut, rest),
            Woods::Mixed(woods) => words::of_several_woods(&part, woods),
            Woods::Cut(woods) => words::cut_of_several_woods(&part, woods),
        };
        let say = Msg::Jobs(jobs::Tap::Write(What::Part(Some(name.clone()))));
        let way = (!is_used && !name.is_empty()).then(|| key("key h56 wide", words::set_wood(&name), words::SET_WOOD_UNDER, say));
        std::iter::once(worded("p", "w7", line)).chain(way.map(|way| el("div", "no-print").kid(way)))
    };
    all.iter().flat_map(one).listed()
}

/// A part by its name, and its woods.
type Said = (String, Woods);

#[derive(PartialEq)]
enum Woods {
    /// Of its strips that are cut, and of the others.
    Begun(Vec<String>, Vec<String>),
    Mixed(Vec<String>),
    /// Not glued: some pieces are of one wood, some of another.
    Cut(Vec<String>),
}

/// Of which woods a part is glued up or cut, where they are several.
fn woods(given: &Given, sheet: &PlanSheet, nth: usize, app: &App) -> Option<Said> {
    let (Wish::Parts(parts) | Wish::Sticks(parts)) = &given.ready.wish else { return None };
    let name = parts.parts.get(nth)?.name.clone();
    if let Some(woods) = finished_of_other(given, sheet, nth) {
        let [cut, rest] = [woods.cut, woods.rest].map(|woods| woods.iter().map(|wood| named(wood.as_ref().map(Key::as_str), app)).listed());
        return Some((if name.is_empty() { told::part(given, nth) } else { name }, Woods::Begun(cut, rest)));
    }
    let glued = sheet.glue_ups.iter().filter(|it| it.part == nth);
    let woods = each_once(glued.flat_map(|it| &it.woods).map(|(_, wood)| named(wood.as_deref(), app)));
    if !woods.is_empty() {
        return Some((told::part(given, nth), Woods::Mixed(woods)));
    }
    let cut = cut_of(given, sheet, nth, app);
    (1 < cut.len()).then(|| (told::part(given, nth), Woods::Cut(cut)))
}

/// The woods that a part which is not glued up is cut of.
fn cut_of(given: &Given, sheet: &PlanSheet, nth: usize, app: &App) -> Vec<String> {
    if sheet.glue_ups.iter().any(|it| it.part == nth) {
        return vec![];
    }
    let lines = sheet.lines.iter().filter(|line| line.pieces.iter().any(|cut| cut.part == Some(nth)));
    let sources = lines.filter_map(|line| given.ready.sources.get(line.source));
    each_once(sources.map(|source| named(source.stack.wood.as_deref(), app)))
}

fn each_once(names: impl Iterator<Item = String>) -> Vec<String> {
    let mut all: Vec<String> = vec![];
    for name in names {
        if !all.contains(&name) {
            all.push(name);
        }
    }
    all
}
