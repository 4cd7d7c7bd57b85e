//! Where no piece fits: what a part needs, how large the largest pieces are that there are, and what helps.

use super::super::Seen;
use super::{say, seek};
use crate::app::plan::{Tap, fitting_to, none_for};
use crate::app::sought::of_plan;
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::El;
use crate::words::en::{common, fits as words, told, woods};
use fivebar_core::ledger::fold::Part;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Length, Listed, Units, begin_small};
use fivebar_core::sheet::make::{Ask, Source, Unfit, What, is_wide};

/// Of a part that nothing fits what it needs; of all pieces, or those of its wood, the largest sides there are.
pub fn told((part, fit): (Option<&Part>, &[(Source, Option<Unfit>)]), app: &App, (units, seen): (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let needs = part.and_then(|part| needs(part, app, (units, seen)));
    let largest = largest((part, fit), app, (units, seen));
    needs.into_iter().chain(largest).map(|line| worded("p", "", line)).collect()
}

fn size(sides: [Length; 3], units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", sides.map(|side| seen.speech.length(side, units)).join(" × "), common::length_unit(units))
}

fn needs(part: &Part, app: &App, (units, seen): (Units, Seen<'_>)) -> Option<String> {
    let (lacks, _) = of_plan(app)?;
    let of = lacks.pieces.first()?;
    if of.at_least == Some(true) {
        let [thick, long] =
            [of.thickness, of.length].map(|side| format!("{} {}", seen.speech.length(side, units), common::length_unit(units)));
        return Some(words::needs_glued(&part.name, &size(part.size, units, seen), &thick, &long));
    }
    let of = size([of.thickness, of.width, of.length], units, seen);
    Some(words::needs(&part.name, &size(part.size, units, seen), &of, lacks.shape == Shape::Sticks))
}

/// Thickness, width and length of the pieces there are and of boards to buy, of those that are of the part's wood, each the most of any.
fn largest((part, fit): (Option<&Part>, &[(Source, Option<Unfit>)]), app: &App, (units, seen): (Units, Seen<'_>)) -> Option<String> {
    let wood = part.and_then(|part| part.wood.as_ref());
    let named = wood.map(|wood| begin_small(&woods::among(wood, &app.shelf().workshop().wood.woods)));
    let of_it = fit.iter().map(|(source, _)| source).filter(|source| wood.is_none() || source.pile.wood.as_ref() == wood).listed();
    let most = |side: fn(&Source) -> Option<Length>| of_it.iter().filter_map(|source| side(source)).max();
    let sides = [most(|it| it.pile.length), most(|it| it.pile.width), most(|it| it.pile.thickness)];
    match (sides, named) {
        ([Some(long), Some(wide), Some(thick)], named) => {
            let [long, wide, thick] = [long, wide, thick].map(|side| seen.speech.length(side, units));
            Some(words::largest(named.as_deref(), [&long, &wide, &thick], common::length_unit(units)))
        }
        (_, Some(wood)) if of_it.is_empty() => Some(words::none_of(&wood)),
        _ => None,
    }
}

/// What helps where nothing fits a part: to look for it at the next yard; of a wide one that no piece is long enough for, a top in rows; of one
/// that is wider than the sticks, the job's parts, which glue it up.
pub fn helps(part: &Part, fit: &[(Source, Option<Unfit>)], (app, units, seen): (&App, Units, Seen<'_>)) -> Vec<El<Msg>> {
    let short = fit.iter().any(|(_, why)| matches!(why, Some(Unfit::TooShort)));
    let top = (is_wide(part) && short)
        .then(|| key("key h56 wide", words::as_top(&part.name), words::AS_TOP_UNDER, say(Tap::TopOf(part.name.clone()))));
    let glued = is_glued_there(part, app)
        .then(|| key("key h56 wide", told::PLAN_THE_PARTS, words::glued_there(&part.name), say(Tap::Shape(Shape::Parts))));
    seek::keys(units, false, (app, seen)).into_iter().chain(seek::undo_bar(app, seen)).chain(glued).chain(top).collect()
}

/// Of sticks no part is glued up; the job's parts may be, where some pile gives strips that are long and thick enough.
fn is_glued_there(part: &Part, app: &App) -> bool {
    let of_parts = |(ask, _): (Ask, String)| {
        let parts = app.shelf().shop(app.now.at).job(ask.job).map(|job| job.parts).unwrap_or_default();
        let without = parts.into_iter().map(|it| it.name).filter(|name| *name != part.name).listed();
        fitting_to(app, &Ask { what: What::Parts(None), without, ..ask })
    };
    let is_asked = app.plan.draft.shape == Some(Shape::Sticks) && is_wide(part);
    is_asked && none_for(app).map(of_parts).is_some_and(|fit| fit.iter().any(|(_, why)| why.is_none()))
}
