//! The hours of a week and of a year: by division, by what they were for, day by day, and where their minutes come from.

use super::bench::{Look, Seen};
use super::helped::along;
use crate::bench::{Bench, Division, On, Run, Shares, add, day as of_day};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Day, Listed, Money, Sorted, Span, order_by_key};

/// What was worked for one job, for one haul, or for neither.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct For {
    pub on: On,
    pub name: Option<String>,
    pub own: Shares,
}

/// A person's own hours on some days.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HoursSheet {
    pub from: Day,
    /// The last day.
    pub to: Day,
    pub own: Shares,
    /// Of it, what mistakes took.
    pub rework: Span,
    /// What was for jobs and hauls.
    pub by_division: Sorted<Division, Shares>,
    /// What was for neither: no part of the above.
    pub of_none: Shares,
    /// What took the most first.
    pub by_work: Vec<For>,
    /// The time of those who worked along on these days, and what it costs in each currency.
    pub along: (Span, Vec<Money>),
    /// The days on which anything was worked.
    pub days: Sorted<Day, Shares>,
    /// So many runs that began on these days look wrong; what is to settle of them is in no total, as in the list of a day.
    pub unsettled: Count,
}

/// The week of a day, Monday to Sunday. (ISO 8601 begins a week on Monday.)
pub fn week(folded: (&Bench, &Book), day: Day, seen: Seen) -> HoursSheet {
    let monday = day.plus(i32::try_from(day.weekday()).map_or(0, i32::saturating_neg));
    between(folded, (monday, monday.plus(6)), seen)
}

/// A year, January to December.
pub fn year(folded: (&Bench, &Book), year: i32, seen: Seen) -> HoursSheet {
    let end = |month, day| Day::ymd(year, month, day).unwrap_or_default();
    between(folded, (end(1, 1), end(12, 31)), seen)
}

/// From the first to the last of some days. A run over midnight counts on both of its days.
pub fn between((bench, book): (&Bench, &Book), (from, to): (Day, Day), seen: Seen) -> HoursSheet {
    let look = Look::new(bench, book, seen);
    let is_in = |day: &Day| from <= *day && *day <= to;
    let (mut sums, mut helped) = (Sums::default(), vec![]);
    for run in bench.runs().filter(|run| run.work.person == seen.person) {
        let begins = is_in(&of_day::day_of(run));
        if !begins && !of_day::parts(run, seen.now).iter().any(|part| is_in(&part.0)) {
            continue;
        }
        sums.unsettled = sums.unsettled.saturating_add(u32::from(begins && look.is_in_question(run)));
        let Some(run) = bench.standing(run, seen.now.at) else { continue };
        let mut parts = of_day::parts(&run, seen.now);
        parts.retain(|part| is_in(&part.0));
        parts.into_iter().for_each(|(day, source, span)| sums.add(&run, day, Shares::default().with(source, span)));
        helped.push(run);
    }
    let Sums { own, rework, by_division, by_work, days, unsettled } = sums;
    let of_none = by_work.get(&On::Nothing).copied().unwrap_or_default();
    let mut by_work: Vec<For> = by_work.iter().map(|(on, own)| For { on: *on, name: fold::name_of(book, *on), own: *own }).listed();
    order_by_key(&mut by_work, |work| std::cmp::Reverse(work.own.total()));
    let along = along(helped.iter().map(|run| &**run), (from, to), seen.now).unwrap_or_default();
    HoursSheet { from, to, own, rework, by_division, of_none, by_work, along, days, unsettled }
}

#[derive(Default)]
struct Sums {
    own: Shares,
    rework: Span,
    by_division: Sorted<Division, Shares>,
    by_work: Sorted<On, Shares>,
    days: Sorted<Day, Shares>,
    unsettled: Count,
}

impl Sums {
    fn add(&mut self, run: &Run, day: Day, shares: Shares) {
        self.own = self.own.plus(shares);
        if run.work.rework {
            self.rework = self.rework.plus(shares.total());
        }
        if run.work.on != On::Nothing {
            add(&mut self.by_division, Division::of(run.work.kind, run.work.stage), shares);
        }
        add(&mut self.by_work, run.work.on, shares);
        add(&mut self.days, day, shares);
    }
}
