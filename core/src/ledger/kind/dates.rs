//! Facts of dates: when the maker works, days off, quotes.

use super::kinds;
use crate::quantity::{Clock, Count, Day, Id, Money, Span};

kinds! {
    /// When the maker works: hands on wood in a day, when a day at the bench ends, and which days of the week. What is missing stays as it was.
    WorkdaysSet { ; bench: Span, closing: Clock, mon: bool, tue: bool, wed: bool, thu: bool, fri: bool, sat: bool, sun: bool }
    /// A day off, whatever day of the week; or one after all.
    DayOffSet { day: Day, off: bool; }
    /// The day a job is to be done by; without `day` there is none. It stands in place of the date said with the job.
    DeadlineSet { job: Id; day: Day }
    /// A quote was given for a job: between two prices, for all of `n` pieces together, ready by a day if it is agreed at once, good until a day,
    /// and ready by `ready_last` if it is agreed on that last one. `likely` and `safe` are the hours it was reckoned from. The latest stands.
    QuoteGiven { job: Id, low: Money, high: Money; n: Count, ready: Day, until: Day, buyer: Id, likely: Span, safe: Span, ready_last: Day }
}

impl WorkdaysSet {
    /// Nothing is said of them.
    pub fn nothing() -> WorkdaysSet {
        WorkdaysSet::of(None, None, [None; 7])
    }

    /// Hours, closing, and whether Monday to Sunday are worked, as far as they are said.
    pub fn of(bench: Option<Span>, closing: Option<Clock>, days: [Option<bool>; 7]) -> WorkdaysSet {
        let [mon, tue, wed, thu, fri, sat, sun] = days;
        WorkdaysSet { bench, closing, mon, tue, wed, thu, fri, sat, sun }
    }
}
