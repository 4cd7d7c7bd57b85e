//! How many of a job or a design the wood gives, in one line, and how that was reckoned.

use super::Seen;
use crate::app::outlook::Stand;
use crate::view::{El, el};
use crate::words::en::design as words;
use fivebar_core::plan::outlook::Outlook;
use fivebar_core::quantity::{Decimal, Listed};
use fivebar_core::sheet::make::WhyNot;
use fivebar_core::sheet::outlook::Rejects;

fn number(n: i64, seen: Seen<'_>) -> String {
    seen.speech.number(Decimal::from(n), 0, 0)
}

/// "4 sure, 5 likely"; "4, all sorted"; why there is none. Nothing where nothing can be said.
pub fn gives(stand: &Stand, seen: Seen<'_>) -> Option<String> {
    Some(match stand {
        Stand::UnderWay => words::WORKING.to_owned(),
        Stand::Failed => words::FAILED.to_owned(),
        Stand::None(WhyNot::NoPiles) => words::RACK_EMPTY.to_owned(),
        Stand::None(WhyNot::NoneFits) => words::NONE_FITS.to_owned(),
        Stand::None(WhyNot::NoneForPart(part)) => words::nothing_fits(part),
        Stand::None(
            WhyNot::NoParts
            | WhyNot::OneWood
            | WhyNot::AllCut { .. }
            | WhyNot::Narrow { .. }
            | WhyNot::NotOfWood { .. }
            | WhyNot::TileLong { .. }
            | WhyNot::TileShort { .. }
            | WhyNot::TileToSay { .. }
            | WhyNot::Refused(_),
        ) => {
            return None;
        }
        Stand::Found { outlook, sorted: true, .. } => words::all_sorted(&all_good(outlook, seen)),
        Stand::Found { outlook, .. } => {
            let [sure, likely] = [outlook.sure, outlook.likely].map(|n| number(n, seen));
            words::sure_and_likely((outlook.sure, outlook.likely), [&sure, &likely])
        }
    })
}

/// What comes out where every piece is good: found, and proven to be all.
fn all_good(outlook: &Outlook, seen: Seen<'_>) -> String {
    words::found((outlook.all, outlook.most), [&number(outlook.all, seen), &number(outlook.most, seen)])
}

/// Whether it says how many.
pub fn is_figure(stand: Option<&Stand>) -> bool {
    matches!(stand, Some(Stand::Found { .. }))
}

/// "short of leg and rail stock", where every good piece would give more.
pub fn short(stand: &Stand) -> Option<String> {
    let Stand::Found { outlook, sorted: false, parts, .. } = stand else { return None };
    let of = outlook.short.iter().filter_map(|part| parts.get(*part)).cloned().listed();
    let short = !of.is_empty() && (outlook.sure < outlook.all || outlook.all == 0);
    short.then(|| words::short_of(&of, 0 < outlook.likely))
}

/// The confidence of it, in its own lines.
pub fn how(stand: &Stand, seen: Seen<'_>) -> Vec<El<crate::app::Msg>> {
    let Stand::Found { outlook, sorted, rejects, .. } = stand else { return vec![] };
    let lines = if *sorted { vec![words::HOW_SORTED.to_owned()] } else { drawn(outlook, *rejects, seen) };
    lines.into_iter().map(|line| el("p", "t14 i2").text(line)).collect()
}

fn drawn(outlook: &Outlook, rejects: Rejects, seen: Seen<'_>) -> Vec<String> {
    let off = outlook.off().and_then(|off| Decimal::from_f64_retain(off * 100.0)).unwrap_or_default();
    let off = seen.speech.number(off, 0, 1);
    let [how, all] = words::how(&seen.speech.count(outlook.draws), rejects, &off, &all_good(outlook, seen));
    let open = (0 < outlook.open).then(|| words::open(&seen.speech.count(outlook.open)));
    [how].into_iter().chain(open).chain([all]).collect()
}
