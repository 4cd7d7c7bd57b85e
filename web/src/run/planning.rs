//! Plans beside the page: one planning at a time, and a new one calls the old one off.

use super::{Run, with};
use crate::app::news::{News, Planning};
use crate::phone::measure::Measure;
use crate::phone::planner::{Planner, Told, While};
use crate::phone::reckoner::Reckoner;
use crate::phone::{later, painted};
use fivebar_core::plan::Asked;
use fivebar_core::plan::outlook::{self, Hoped};
use fivebar_core::plan::unlock::Locked;
use fivebar_core::quantity::Id;

/// One seed for all: the same question gets the same lots.
const SEED: u32 = 1;

impl Run {
    pub fn plan(&self, asked: Asked, ms: u32) {
        let me = self.me.clone();
        let tell = move |told| with(&me, |run| heard(told).into_iter().for_each(|told| run.told(News::Planning(told))));
        self.planner.replace(Some(Planner::begin(asked, While { ms, seed: SEED }, tell)));
    }

    pub fn stop_plan(&self) {
        self.planner.take();
    }

    pub fn when_painted(&self) {
        let me = self.me.clone();
        later(Box::pin(async move {
            painted().await;
            let took = Measure::begin();
            with(&me, |run| run.told(News::Painted));
            took.end("painted");
        }));
    }

    pub fn unlock(&self, of: Locked) {
        let me = self.me.clone();
        let locked = of.clone();
        let tell = move |_, found| with(&me, |run| run.told(News::Unlocks(Box::new(locked.clone()), found)));
        self.unlocker.replace(Some(Reckoner::begin(vec![of], SEED, tell)));
    }

    /// One after the other; none calls off what is under way.
    pub fn reckon(&self, all: Vec<(Id, Hoped)>) {
        let (ids, all): (Vec<Id>, Vec<Hoped>) = all.into_iter().unzip();
        let me = self.me.clone();
        let tell = move |nth: usize, found| {
            let Some(of) = ids.get(nth).copied() else { return };
            with(&me, |run| run.told(News::Outlook(of, found)));
        };
        self.reckoner.replace((!all.is_empty()).then(|| Reckoner::begin(all, outlook::SEED, tell)));
    }
}

fn heard(told: Told) -> Vec<Planning> {
    match told {
        Told::Better { worth, bound } => vec![Planning::Better { worth, bound }],
        Told::Done(answered, short) => {
            let short = short.map(|short| Planning::ShortEnd { worth: answered.worth.clone(), short });
            std::iter::once(Planning::Done(answered)).chain(short).collect()
        }
        Told::Failed => vec![Planning::Failed],
    }
}
