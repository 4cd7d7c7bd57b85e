//! The estimate of a job as it was given.

use super::{minutes, rounded};
use fivebar_core::quantity::{Decimal, Id};
use fivebar_core::sheet::Shop;
use serde_json::{Value, json};

pub fn of_job(shop: &Shop, job: Id) -> Value {
    let Some(kept) = shop.job(job).ok().and_then(|job| job.kept) else { return Value::Null };
    let share = |share: Option<Decimal>| share.map(|share| rounded(share, 3));
    json!({
        "at": kept.at.at.ms(),
        "low": minutes(kept.low),
        "likely": minutes(kept.likely),
        "safe": minutes(kept.high),
        "thought": kept.thought.map(minutes),
        "factor": share(kept.factor),
        "jobs": kept.jobs,
        "allowance": share(kept.allowance),
    })
}
