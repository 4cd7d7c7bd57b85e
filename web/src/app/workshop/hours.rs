//! Working hours, heard: hands on wood in a day, closing, days of the week, days off.

use super::super::App;
use fivebar_core::ledger::decide::{Command, DatesCommand, Now};
use fivebar_core::ledger::kind::dates::WorkdaysSet;
use fivebar_core::quantity::{Clock, Day, Span};

/// Hours a day that are offered.
pub const BENCH: [i64; 9] = [1, 2, 3, 4, 5, 6, 7, 8, 10];
/// Hours of closing that are offered; quarters of an hour by steps.
pub const CLOSING: [u16; 9] = [12, 15, 16, 17, 18, 19, 20, 21, 22];
/// Days off in a row that are offered.
pub const IN_A_ROW: [i32; 6] = [1, 2, 3, 7, 14, 21];

/// The days off that are chosen and not set yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Off {
    pub from: Day,
    pub days: i32,
}

/// What can be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HoursTap {
    Bench(i64),
    Closing(Clock),
    /// Monday is 0; works or not.
    Weekday(usize, bool),
    /// Moves the first day off by so many days.
    OffBy(i32),
    OffDays(i32),
    Off,
    /// Worked after all: these days.
    On(Day, Day),
}

pub fn heard(app: &mut App, tap: HoursTap, now: Now) {
    let chosen = chosen(app);
    let mut facts = WorkdaysSet::nothing();
    match tap {
        HoursTap::Bench(hours) => facts.bench = Some(Span::minutes(hours.saturating_mul(60))),
        HoursTap::Closing(clock) => facts.closing = Some(clock),
        HoursTap::Weekday(nth, works) => {
            let WorkdaysSet { mon, tue, wed, thu, fri, sat, sun, .. } = &mut facts;
            [mon, tue, wed, thu, fri, sat, sun].into_iter().skip(nth).take(1).for_each(|day| *day = Some(works));
        }
        HoursTap::OffBy(by) => return app.workshop.off = Some(Off { from: chosen.from.plus(by), ..chosen }),
        HoursTap::OffDays(days) => return app.workshop.off = Some(Off { days, ..chosen }),
        HoursTap::Off => {
            let to = chosen.from.plus(chosen.days.saturating_sub(1));
            if set(app, (chosen.from, to), true, now) {
                app.workshop.off = None;
            }
            return;
        }
        HoursTap::On(from, to) => {
            set(app, (from, to), false, now);
            return;
        }
    }
    app.order(&Command::Dates(DatesCommand::SetWorkdays(facts)), now);
}

/// The days off as they stand on the page: tomorrow, until others are chosen.
pub fn chosen(app: &App) -> Off {
    app.workshop.off.unwrap_or(Off { from: app.now.day().next(), days: 1 })
}

fn set(app: &mut App, (from, to): (Day, Day), off: bool, now: Now) -> bool {
    app.order(&Command::Dates(DatesCommand::SetOff { from, to, off }), now).is_some()
}
