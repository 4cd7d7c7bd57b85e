//! A day as a list: every run with its times, where its minutes come from, and its raw stamps; and the day's totals.

use super::bench::{Look, Seen, Stayed};
use super::helped::along;
use crate::bench::repair::Proposed;
use crate::bench::{Batch, Bench, DayTotal, Doubt, Run, Shares, day as of_day};
use crate::ledger::{Book, Entry, Fact, fold};
use crate::quantity::order_by_key;
use crate::quantity::{Count, Day, Id, Listed, Moment, Money, Set, Span, Wall};
use std::borrow::Cow;

/// One run of the day.
#[derive(Clone, Debug, PartialEq)]
pub struct DayLine {
    /// With its raw stamps `tapped` and `tapped_stop`, its menders, notches and heads.
    pub run: Run,
    pub name: Option<String>,
    /// When it ended; `None` while it runs.
    pub ended: Option<Wall>,
    pub worked: Span,
    pub shares: Shares,
    pub labour: Span,
    /// Of the worked time, what falls on this day.
    pub on_this_day: Span,
    /// What falls on later days, in whole minutes as the lists of those days have them.
    pub after: Span,
    pub doubts: Vec<Doubt>,
    /// What of the worked time is to settle.
    pub to_settle: Span,
    /// It looks like a forgotten stop: the end to propose.
    pub wrong: Option<Proposed>,
    pub batch: Batch,
    /// Somebody was at the run before the switch to it, and nobody said whether they are at it too.
    pub stayed: Option<Stayed>,
}

/// A run of the day that was struck; it can be put back.
#[derive(Clone, Debug, PartialEq)]
pub struct Struck {
    /// Of the run.
    pub id: Id,
    pub op: String,
    pub started: Wall,
}

/// A day at the bench.
#[derive(Clone, Debug, PartialEq)]
pub struct DaySheet {
    pub day: Day,
    /// Runs that began on the day, the earliest first.
    pub lines: Vec<DayLine>,
    pub struck: Vec<Struck>,
    /// What was worked on the day, runs from the day before included, but for what is to settle.
    pub total: DayTotal,
    /// So many runs of the day look wrong.
    pub unsettled: Count,
    /// Of each run that lies on the day and looks wrong, those from the day before included: the end to propose.
    in_question: Vec<(Id, Proposed)>,
    open: Set<Id>,
    /// What stands of each run that lies on the day.
    standing: Vec<Run>,
    /// Whole minutes on the day of each run that counts in its total: they add up to it.
    minutes: Vec<(Id, Span)>,
}

impl DaySheet {
    /// Whole minutes of a run on the day, which add up to the total of the day as it is shown; none of one that is not in it.
    pub fn minutes(&self, run: Id) -> Option<Span> {
        self.minutes.iter().find(|one| one.0 == run).map(|one| one.1)
    }

    /// The time of those who worked along on the day, and what it costs in each currency; of what stands alone.
    pub fn along(&self, now: Wall) -> (Span, Vec<Money>) {
        along(&self.standing, (self.day, self.day), now).unwrap_or_default()
    }

    /// Up to when a run stands that lies on the day and looks wrong; none where nothing of it does.
    pub fn stands_to(&self, run: Id) -> Option<Moment> {
        self.standing.iter().find(|one| one.id == run && self.is_open(run)).and_then(|run| run.stopped).map(|stop| stop.at)
    }

    /// A run that lies on the day looks wrong: some of it or all counts in no total.
    pub fn any_open(&self) -> bool {
        !self.open.is_empty()
    }

    /// This one does.
    pub fn is_open(&self, run: Id) -> bool {
        self.open.contains(&run)
    }

    /// The end to propose for a run that lies on the day and looks wrong.
    pub fn wrong(&self, run: Id) -> Option<Proposed> {
        self.in_question.iter().find(|one| one.0 == run).map(|one| one.1)
    }
}

/// The day of a person.
pub fn day(book: &Book, day: Day, seen: Seen) -> DaySheet {
    day_from((&fold::bench(book), book), day, seen)
}

/// The same from a bench that was folded already.
pub fn day_from((bench, book): (&Bench, &Book), day: Day, seen: Seen) -> DaySheet {
    let Seen { now, person, .. } = seen;
    let look = Look::new(bench, book, seen);
    let on_it = lying_on(&look, day).listed();
    let in_question: Vec<(Id, Proposed)> = on_it.iter().filter_map(|run| Some((run.id, look.forgotten(run)?))).listed();
    let wrong = |run: &Run| in_question.iter().find(|one| one.0 == run.id).map(|one| one.1);
    let to_settle: Set<Id> = look.with_heads_to_settle().into_iter().map(|run| run.id).collect();
    let later = later(&look, on_it.iter().copied().filter(|run| of_day::day_of(run) == day).listed());
    let line = |run: &Run| DayLine {
        after: later.iter().find(|one| one.0 == run.id).map_or_else(|| run.worked(now.at).minus(on_day(run, (day, now))), |one| one.1),
        name: fold::name_of(book, run.work.on),
        ended: (!run.is_running()).then(|| run.end_wall(now)),
        worked: run.worked(now.at),
        shares: run.shares(now.at),
        labour: run.labour(now.at),
        on_this_day: on_day(run, (day, now)),
        doubts: run.doubts(now.at),
        to_settle: bench.to_settle(run, now.at).map_or(Span::ZERO, |rest| rest.worked(now.at)),
        wrong: wrong(run),
        batch: Batch::of(std::iter::once(run), None, now.at),
        stayed: to_settle.contains(&run.id).then(|| look.stayed(run)).flatten(),
        run: run.clone(),
    };
    let lines: Vec<DayLine> = on_it.iter().filter(|run| of_day::day_of(run) == day).map(|run| line(run)).listed();
    let unsettled = u32::try_from(lines.iter().filter(|line| line.wrong.is_some()).count()).unwrap_or(u32::MAX);
    let open = on_it.iter().filter(|run| look.is_in_question(run)).map(|run| run.id).collect();
    let minutes = minutes(&look, &on_it, day);
    let standing = bench.sure(on_it.into_iter(), now.at).map(Cow::into_owned).listed();
    DaySheet { day, lines, struck: struck(book, (day, person)), total: look.day(day), unsettled, in_question, open, standing, minutes }
}

/// The runs of the person that lie on a day, as far as they went.
fn lying_on<'a>(look: &Look<'a>, day: Day) -> impl Iterator<Item = &'a Run> {
    let Seen { now, person, .. } = look.seen;
    let own = look.bench.runs().filter(move |run| run.work.person == person);
    own.filter(move |run| of_day::day_of(run) <= day && day <= run.end_wall(now).day().max(of_day::day_of(run)))
}

/// The whole minutes of each run that counts on a day: they add up to the day's. None of one that counts on another day alone.
fn minutes(look: &Look<'_>, on_it: &[&Run], day: Day) -> Vec<(Id, Span)> {
    let counted = look.bench.sure(on_it.iter().copied(), look.seen.now.at).map(|run| (run.id, on_day(&run, (day, look.seen.now))));
    let is_open = |id: Id| on_it.iter().any(|run| run.id == id && look.is_in_question(run));
    let counted = counted.filter(|(id, span)| Span::ZERO < *span || !is_open(*id)).listed();
    let spans = Span::in_minutes(&counted.iter().map(|(_, span)| *span).listed());
    counted.into_iter().map(|(id, _)| id).zip(spans).listed()
}

/// How long a run was, in whole minutes as the list of its day has them: those of a day add up to its total. One over midnight, or that is in
/// no total, as it stands.
pub(super) fn as_listed(look: &Look<'_>, run: &Run) -> Span {
    let (day, now) = (of_day::day_of(run), look.seen.now);
    let listed = || minutes(look, &lying_on(look, day).listed(), day).into_iter().find(|one| one.0 == run.id);
    let is_of_one_day = run.end_wall(now).day() <= day && !look.is_in_question(run);
    is_of_one_day.then(listed).flatten().map_or_else(|| run.worked(now.at), |one| one.1)
}

/// Of runs of a day those that went over midnight, each with its minutes on the days after; none of one that does not count.
fn later(look: &Look<'_>, runs: Vec<&Run>) -> Vec<(Id, Span)> {
    let last = |run: &Run| run.end_wall(look.seen.now).day();
    let over = runs.into_iter().filter(|run| of_day::day_of(run) < last(run)).listed();
    let Some((first, to)) = over.first().map(|run| of_day::day_of(run)).zip(over.iter().map(|run| last(run)).max()) else { return vec![] };
    let days = std::iter::successors(Some(first.next()), |day| Some(day.next())).take_while(|day| *day <= to);
    let all = days.flat_map(|day| minutes(look, &lying_on(look, day).listed(), day)).listed();
    let of = |run: &Run| Span::sum(all.iter().filter(|one| one.0 == run.id).map(|one| one.1));
    over.into_iter().filter(|run| !look.is_in_question(run)).map(|run| (run.id, of(run))).listed()
}

/// What of a run falls on a day.
fn on_day(run: &Run, (day, now): (Day, Wall)) -> Span {
    Span::sum(of_day::parts(run, now).into_iter().filter(|part| part.0 == day).map(|part| part.2))
}

fn struck(book: &Book, (day, person): (Day, Option<Id>)) -> Vec<Struck> {
    let run = |entry: &Entry| {
        let (whose, op, from) = match &entry.fact {
            Fact::RunStarted(f) => (f.person, &f.op, f.from),
            Fact::RunRecalled(f) => (f.person, &f.op, Some(f.start)),
            _ => return None,
        };
        let started = Wall::new(from.unwrap_or(entry.wall.at), entry.wall.offset);
        let listed = whose == person && started.day() == day;
        listed.then(|| Struck { id: entry.id, op: op.clone(), started })
    };
    book.struck().into_iter().filter_map(run).listed()
}

/// The days on which a person worked, the latest first.
pub fn days(book: &Book, person: Option<Id>, now: Wall) -> Vec<Day> {
    let bench = fold::bench(book);
    let own = bench.runs().filter(|run| run.work.person == person);
    let mut days: Vec<Day> =
        own.flat_map(|run| of_day::parts(run, now).into_iter().map(|part| part.0).chain([of_day::day_of(run)])).listed();
    order_by_key(&mut days, |day| std::cmp::Reverse(*day));
    days.dedup();
    days
}

/// The gaps of a person's day between the first start and the last end: time that may have been missed.
pub fn gaps(sheet: &DaySheet) -> Vec<(Moment, Moment)> {
    let ends: Vec<(Moment, Moment)> = sheet.lines.iter().filter_map(|line| Some((line.run.started.at, line.ended?.at))).listed();
    let pairs = ends.iter().zip(ends.iter().skip(1));
    pairs.filter(|(one, next)| one.1 < next.0).map(|(one, next)| (one.1, next.0)).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::{Kind, On};
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::decide::{BookCommand, Command};
    use crate::ledger::told::{Phone, at, work};

    fn seen(now: Wall) -> Seen {
        Seen { now, person: None, closing: None }
    }

    #[test]
    fn a_run_over_midnight_is_listed_on_its_start_day_and_its_minutes_fall_on_both() {
        let mut phone = Phone::new("a");
        let late = phone.start(1_400, "oil", On::Nothing);
        phone.stop(1_460, late);
        let early = phone.start(1_900, "sand", On::Nothing);
        phone.stop(1_930, early);
        phone.bench(2_000, BenchCommand::Recall { work: work("saw", On::Nothing), start: at(1_950), stop: at(1_960), heads: 1 }).unwrap();
        let now = phone.wall(2_000);
        let (first, second) = (phone.wall(0).day(), phone.wall(1_440).day());
        let (one, two) = (day(&phone.book, first, seen(now)), day(&phone.book, second, seen(now)));
        let listed = |sheet: &DaySheet| sheet.lines.iter().map(|l| (l.run.work.op.clone(), l.on_this_day.as_minutes())).collect::<Vec<_>>();
        assert_eq!(listed(&one), [("oil".into(), 40)]);
        assert_eq!(listed(&two), [("sand".into(), 30), ("saw".into(), 10)]);
        let total = |sheet: &DaySheet| (sheet.total.own.measured.as_minutes(), sheet.total.own.recalled.as_minutes());
        assert_eq!((total(&one), total(&two)), ((40, 0), (50, 10)));
        assert_eq!(two.total.by_kind.get(&Kind::Make).unwrap().total().as_minutes(), 60);
        assert_eq!(days(&phone.book, None, now), [second, first]);
        assert_eq!(gaps(&two), [(at(1_930), at(1_950))]);
    }

    /// Three runs of 10 min 30 s are 31 min 30 s, shown as 32: 11, 11 and 10, never 33.
    #[test]
    fn the_minutes_of_the_runs_add_up_to_the_day() {
        let mut phone = Phone::new("a");
        let runs = [600, 700, 800].map(|minute| {
            let (start, stop) = (at(minute), at(minute).plus(Span::ms(630_000)));
            phone.bench(900, BenchCommand::Recall { work: work("saw", On::Nothing), start, stop, heads: 1 }).unwrap()
        });
        let sheet = day(&phone.book, phone.wall(600).day(), seen(phone.wall(900)));
        let each = sheet.lines.iter().filter_map(|line| sheet.minutes(line.run.id)).map(Span::as_minutes).collect::<Vec<_>>();
        assert_eq!((each, sheet.total.own.total().as_minutes(), runs.len()), (vec![11, 11, 10], 32, 3));
    }

    /// From 23:50 to 0:10:24, and 10 min 24 s more after it: 21 min on the second day, of which 11 are the first run's in its rows, and so they are
    /// in the row of the first day.
    #[test]
    fn the_minutes_after_midnight_are_those_of_the_day_after() {
        let mut phone = Phone::new("a");
        let over = Span::ms(24_000);
        for (start, stop) in [(1_430, 1_450), (1_460, 1_470)] {
            let (start, stop) = (at(start), at(stop).plus(over));
            phone.bench(1_900, BenchCommand::Recall { work: work("saw", On::Nothing), start, stop, heads: 1 }).unwrap();
        }
        let of = |minute| day(&phone.book, phone.wall(minute).day(), seen(phone.wall(1_900)));
        let (first, second) = (of(0), of(1_450));
        let run = first.lines[0].run.id;
        assert_eq!((first.minutes(run), second.minutes(run)), (Some(Span::minutes(10)), Some(Span::minutes(11))));
        assert_eq!((first.lines[0].after, second.total.own.total().as_minutes()), (Span::minutes(11), 21));
    }

    #[test]
    fn a_struck_run_of_a_switch_is_put_back_alone() {
        let mut phone = Phone::new("a");
        phone.start(10, "saw", On::Nothing);
        let sand = phone.start(20, "sand", On::Nothing);
        phone.stop(40, sand);
        phone.take_back(41, sand);
        let today = |phone: &Phone| day(&phone.book, phone.wall(0).day(), seen(phone.wall(60)));
        let sheet = today(&phone);
        assert_eq!(sheet.lines.iter().map(|l| (l.run.work.op.as_str(), l.worked.as_minutes())).collect::<Vec<_>>(), [("saw", 10)]);
        assert_eq!(sheet.struck, [Struck { id: sand, op: "sand".into(), started: phone.wall(20) }]);
        phone.order(42, Command::Book(BookCommand::Restore { act: sand })).unwrap();
        assert_eq!((today(&phone).lines.len(), today(&phone).struck.len(), today(&phone).total.own.total().as_minutes()), (2, 0, 30));
    }
}
