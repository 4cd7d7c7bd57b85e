//! Rows that the distance from joint to joint keeps from being laid: that it does, and the key that plans with less.

use super::super::Seen;
use super::saw::number;
use super::{say, side, told};
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::told as words;
use fivebar_core::quantity::{Length, Units};
use fivebar_core::sheet::make::{Given, What};
use fivebar_core::sheet::plan::{PlanSheet, Why};

/// In inches to the eighth, in millimetres whole ones. Ours.
const EIGHTH: i64 = 3_175_000;
const MILLIMETRE: i64 = 1_000_000;

/// So far apart as a tape shows it, no farther than was found, and how many rows that gives.
fn found(given: &Given, sheet: &PlanSheet) -> Option<(Length, i64)> {
    let Some(Why::Joints { apart, rows }) = sheet.proof.why else { return None };
    let step = if given.units == Units::Inch { EIGHTH } else { MILLIMETRE };
    Some((Length::nm(apart.as_nm() / step * step).ok()?, rows))
}

/// "How far apart the joints are decides: at 9 in all 9 rows can be laid of these pieces."
pub fn decide(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let (apart, rows) = found(given, sheet)?;
    let all = told::wanted(given) == Some(rows);
    Some(words::joints_decide(&side(apart, given.units, seen), &number(rows, seen), [rows == 1, all]))
}

/// The key that plans with so much.
pub fn nearer(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let What::Top(top) = &given.ask.what else { return None };
    let (apart, _) = found(given, sheet)?;
    let [said, now] = words::joints_nearer(&side(apart, given.units, seen), &side(top.apart, given.units, seen));
    Some(el("div", "no-print").kid(key("key solid h56 wide", said, now, say(Tap::JointsApart(apart)))))
}
