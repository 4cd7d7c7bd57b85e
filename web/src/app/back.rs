//! One step back, as the phone's own Back or Escape asks for it: what lies over a place is left, never the place.

use super::{App, bench, count, jobs, mend, price, workshop};
use crate::parts::Place;
use fivebar_core::ledger::decide::Now;

impl App {
    /// Whether something lies over the place that can be left. The buyer's face and big buttons are locks: they are held to leave.
    pub fn is_deep(&self) -> bool {
        if self.is_mending() {
            return true;
        }
        match self.place {
            Place::Count => !matches!(self.count.over, count::Over::Nothing),
            Place::Bench => !matches!(self.bench.over, bench::Over::Nothing | bench::Over::Big),
            Place::Price => self.price.face.is_none() && !matches!(self.price.over, price::Over::Nothing),
            Place::Jobs => self.jobs.open.is_some() || self.jobs.draft.is_some(),
            Place::Workshop => !matches!(self.workshop.over, workshop::Over::Nothing),
        }
    }

    /// Leaves the uppermost thing.
    pub fn back(&mut self, now: Now) {
        if !self.is_deep() {
            return;
        }
        if self.is_mending() {
            mend::heard(self, mend::MendTap::Leave, now);
            return;
        }
        match self.place {
            Place::Count => {
                let leave = match &self.count.over {
                    count::Over::Pile(draft) => draft.leave(),
                    count::Over::Page(page) => page.leave(),
                    _ => count::Tap::Close,
                };
                count::heard(self, leave, now);
            }
            Place::Bench => bench::heard(self, bench::Tap::Close, now),
            Place::Price => price::heard(self, price::Tap::Close, now),
            Place::Jobs if self.jobs.draft.is_none() && self.jobs.room == Some(jobs::Room::Plan) => {
                if !self.plan.back() {
                    self.jobs.room = Some(jobs::Room::Wood);
                }
            }
            Place::Jobs if self.jobs.draft.is_none() && self.jobs.room == Some(jobs::Room::Quote) => {
                self.jobs.room = Some(jobs::Room::Dates)
            }
            Place::Jobs => self.jobs.back(),
            Place::Workshop => workshop::heard(self, workshop::Tap::Close, now),
        }
    }
}

impl jobs::Jobs {
    fn back(&mut self) {
        if self.draft.take().is_none() && self.room.take().is_none() {
            self.open = None;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Msg;
    use crate::app::draft::{Asks, DraftTap};
    use crate::app::told::{after, nth};

    #[test]
    fn back_leaves_one_thing_after_the_other_and_never_the_place() {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [Msg::Count(count::Tap::First), Msg::Count(count::Tap::Choose)]);
        let pile = count::sheet(&app).unwrap().tiles[0].pile;
        after(&mut app, [Msg::Count(count::Tap::Edit(pile)), Msg::Count(count::Tap::Draft(DraftTap::Again(Asks::Width)))]);
        let shown = |app: &mut App| after(app, [Msg::Key("Escape".into())]);
        assert!(shown(&mut app).contains("Answered"), "the other answers stay");
        assert!(shown(&mut app).contains("count/pile-page"), "the page of the pile");
        assert!(shown(&mut app).contains("1 piece<"));
        assert!(!app.is_deep());
        assert!(shown(&mut app).contains("1 piece<"));
        after(&mut app, [Msg::Go(Place::Workshop)]);
        app.workshop.over = workshop::Over::Rate;
        app.back(nth(9));
        assert_eq!((app.place, app.is_deep()), (Place::Workshop, false));
    }
}
