//! Parts that are glued up of strips of several woods, where the maker said none for them.

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

/// Of each part that is glued up of several woods, which; and while the plan is not used the key that says its wood.
pub fn told(given: &Given, sheet: &PlanSheet, is_used: bool, app: &App) -> Vec<El<Msg>> {
    let Wish::Parts(parts) = &given.ready.wish else { return vec![] };
    let one = |nth: usize| {
        let name = parts.parts.get(nth)?.name.clone();
        let begun = finished_of_other(given, sheet, nth).map(|woods| {
            let [cut, rest] =
                [woods.cut, woods.rest].map(|woods| woods.iter().map(|wood| named(wood.as_ref().map(Key::as_str), app)).listed());
            let part = if name.is_empty() { told::part(given, nth) } else { name.clone() };
            words::begun_of_another(&part, &cut, &rest)
        });
        let mut woods: Vec<String> = vec![];
        for (_, wood) in sheet.glue_ups.iter().filter(|it| it.part == nth).flat_map(|it| &it.woods) {
            let name = named(wood.as_deref(), app);
            if !woods.contains(&name) {
                woods.push(name);
            }
        }
        let mixed = || (!woods.is_empty()).then(|| words::of_several_woods(&told::part(given, nth), &woods));
        let said = worded("p", "w7", begun.or_else(mixed)?);
        let say = Msg::Jobs(jobs::Tap::Write(What::Part(Some(name.clone()))));
        let way = (!is_used && !name.is_empty()).then(|| key("key h56 wide", words::set_wood(&name), words::SET_WOOD_UNDER, say));
        Some(std::iter::once(said).chain(way.map(|way| el("div", "no-print").kid(way))))
    };
    (0..parts.parts.len()).filter_map(one).flatten().listed()
}
