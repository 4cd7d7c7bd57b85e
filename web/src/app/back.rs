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
            Place::Price => price::heard(self, self.price.leave(), now),
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

    /// Whatever lies open over a place: its key in the bar leads to the place itself, from there at once and from elsewhere at the second tap.
    #[test]
    fn the_key_of_a_place_leads_to_it_at_the_second_tap() {
        use crate::app::jobs::draft::What;
        let job = |app: &mut App, room| {
            let began = fivebar_core::ledger::decide::JobCommand::Begin {
                name: "Stool".into(),
                currency: fivebar_core::quantity::Currency::EUR,
                units: fivebar_core::quantity::Units::Metric,
                pieces: 1,
                made_for: fivebar_core::ledger::kind::job::For::Spec,
            };
            let act = app.order(&fivebar_core::ledger::decide::Command::Job(began), nth(1)).unwrap().act;
            (app.jobs.open, app.jobs.room) = (Some(act), room);
        };
        let check = |place: Place, open: &dyn Fn(&mut App)| {
            for elsewhere in [None, Some(Place::Count), Some(Place::Workshop)] {
                let mut app = App::for_tests(place);
                open(&mut app);
                assert!(app.is_deep(), "{place:?}");
                after(&mut app, elsewhere.into_iter().chain([place, place]).map(Msg::Go));
                assert_eq!((app.place, app.is_deep()), (place, false), "{place:?} from {elsewhere:?}");
            }
        };
        check(Place::Jobs, &|app| job(app, None));
        check(Place::Jobs, &|app| job(app, Some(jobs::Room::Hours)));
        check(Place::Jobs, &|app| job(app, Some(jobs::Room::Quote)));
        check(Place::Jobs, &|app| drop(after(app, [Msg::Jobs(jobs::Tap::Write(What::New))])));
        check(Place::Bench, &|app| drop(after(app, [Msg::Bench(bench::Tap::Other)])));
        check(Place::Bench, &|app| drop(after(app, [Msg::Bench(bench::Tap::Day(bench::day::DayTap::Show(nth(1).wall.day())))])));
        check(Place::Price, &|app| drop(after(app, [Msg::Price(price::Tap::Paper)])));
        check(Place::Workshop, &|app| app.workshop.over = workshop::Over::Rate);
    }

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
