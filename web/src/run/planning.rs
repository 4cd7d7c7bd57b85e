//! Plans beside the page: one planning at a time, and a new one calls the old one off.

use super::{Run, with};
use crate::app::news::{News, Planning};
use crate::phone::planner::{Planner, Told, While};
use fivebar_core::plan::Asked;

/// One seed for all: the same question gets the same lots.
const SEED: u32 = 1;

impl Run {
    pub fn plan(&self, asked: Asked, ms: u32) {
        let me = self.me.clone();
        let tell = move |told| with(&me, |run| run.told(News::Planning(heard(told))));
        self.planner.replace(Some(Planner::begin(asked, While { ms, seed: SEED }, tell)));
    }

    pub fn stop_plan(&self) {
        self.planner.take();
    }
}

fn heard(told: Told) -> Planning {
    match told {
        Told::Better { worth, bound } => Planning::Better { worth, bound },
        Told::Done(answered) => Planning::Done(answered),
        Told::Failed => Planning::Failed,
    }
}
