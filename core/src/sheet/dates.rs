//! When a job can be ready, and on which day each of its steps must begin to be ready when it was promised.

use super::estimate::coats::Coats;
use super::estimate::counted::beside;
use super::estimate::left::batch;
use super::estimate::{Covers, EstimateSheet, Row, estimate, rows_of};
use super::jobs::date;
use super::shop::Shop;
use super::waits::{Kept, WaitLine};
use crate::bench::dates::{Hour, Ready, Step, Workdays};
use crate::bench::estimate::{Basis, OnTop};
use crate::bench::wait::{Waits, What};
use crate::bench::{On, Run};
use crate::ledger::fold::Job;
use crate::ledger::kind::bench::Kind;
use crate::quantity::{Count, Day, Id, Key, Listed, Span, Wall};
use crate::refusal::Answer;
pub use behind::Missed;
use behind::Others;
use std::cell::OnceCell;

mod behind;

/// A job's dates.
#[derive(Clone, Debug, PartialEq)]
pub struct DatesSheet {
    pub job: Id,
    /// The day of use: when it was promised.
    pub due: Option<Day>,
    /// What is still to do, in its order. Delivering, selling and office are no step: they are on the day itself, after it, or in between.
    pub rows: Vec<DateRow>,
    /// The place of the first row that can't be begun in time any more.
    pub late: Option<usize>,
    /// Likely none is late, and nine times in ten one is.
    pub is_unsafe: bool,
    /// When it can be ready, likely, which is the middles of its operations added up, and nine times in ten; none of a job that has ended.
    pub likely: Option<Ready>,
    pub safe: Option<Ready>,
    /// Hands that are still on it, in both.
    pub hands: [Span; 2],
    /// Hands that are likely on other jobs that go on: they want the same days, and no date here has them in it.
    pub others: Span,
    /// When it is ready where those come first, all of them and without what they wait: likely, and with as many hours as all of it takes nine
    /// times in ten.
    pub after_others: Option<Ready>,
    pub after_others_safe: Option<Ready>,
    /// From what the safe day is reckoned, behind the other jobs; none where that is not known.
    pub safely: Option<Safely>,
    /// Nobody knows what of it is glued or dries: a piece as a whole, or what its plan leaves out, is in its days, and no wait.
    pub is_undried: bool,
    /// The job of which the waits are that stand in its days.
    pub waits_as: Option<(String, Span)>,
    /// Operations that count as done by their hours, though none of their pieces is noted.
    pub unnoted: Vec<String>,
    /// What of the job is in it.
    pub covers: Covers,
    /// The kind of piece that its hours go by, where nothing but its name tells it.
    pub by_name: Option<Key>,
    /// That day is over, and it is not done with.
    pub is_over: bool,
    /// What is put on hours that were thought.
    pub on_top: Option<OnTop>,
    pub workdays: Workdays,
    /// The maker said when they work.
    pub said: bool,
}

/// As many hours as nine times in ten: of other jobs that come first, and of each step.
#[derive(Clone, Debug, PartialEq)]
pub struct Safely {
    others: Span,
    steps: Vec<Step>,
}

/// A step that is still to do, or that waits.
#[derive(Clone, Debug, PartialEq)]
pub struct DateRow {
    /// None for the whole piece.
    pub op: Option<String>,
    /// What such a piece takes beyond the operations that are planned.
    pub is_rest: bool,
    /// Something of it was worked, or runs: rework makes nothing of it.
    pub is_begun: bool,
    /// Hands on it, still.
    pub hands: Span,
    /// What was thought of all of it, where its hours are that with more on top and none of it was worked.
    pub thought: Option<Span>,
    /// Pieces that are not done, of an operation of which some are noted.
    pub pieces: Option<Count>,
    /// What it waits then, and how long; of a wait that is on, what is left of it.
    pub wait: Option<(Key, Span)>,
    /// How long the coat is wet yet that is on all its pieces, and hands are not on them for the next.
    pub wet: Span,
    /// Of what it waits, what is over before the last of several coats goes on: only from then on it hardens.
    pub between: Span,
    /// The earlier job that waited so, where nothing nearer says it.
    pub waits_as: Option<String>,
    /// How long it hardens then before use, whatever is done meanwhile.
    pub cure: Option<Span>,
    /// The last day on which it may begin; none where nothing was promised, where nothing but its wait is left, or beyond ten years.
    pub last: Option<Day>,
    /// The same where the hours are as many as nine times in ten; none where that is not known.
    pub safe: Option<Day>,
}

impl DateRow {
    fn step(&self) -> Step {
        let wait = self.wait.as_ref().map_or(Span::ZERO, |(_, span)| *span);
        Step { hands: self.hands, wait, cure: self.hard(), wet: self.wet }
    }

    /// How long after its hands it is hard, with the coats that are yet to dry before the last one; nothing where it does not harden.
    fn hard(&self) -> Span {
        self.cure.map_or(Span::ZERO, |cure| cure.plus(self.between))
    }

    /// Hands are off it.
    pub fn only_waits(&self) -> bool {
        self.hands <= Span::ZERO
    }

    /// It is done and dry: nothing is left of it but to harden.
    pub fn only_hardens(&self) -> bool {
        self.only_waits() && self.wait.as_ref().is_none_or(|(what, _)| what.as_str() == "cure") && Span::ZERO < self.through()
    }

    /// What it waits or hardens, the longer of both.
    pub fn through(&self) -> Span {
        self.wait.as_ref().map_or(Span::ZERO, |(_, span)| *span).max(self.hard())
    }
}

/// What dates are reckoned from beside the book: what waits, what a name tells of its wait, and whether the factor is on.
#[derive(Clone, Copy)]
pub struct Given<'a> {
    pub waits: &'a Waits,
    pub guess: fn(&str) -> Option<What>,
    pub with_factor: bool,
    pub now: Wall,
}

/// What was promised of a job and what its steps must keep to.
#[derive(Clone, Debug, PartialEq)]
pub struct Promise {
    pub due: Day,
    /// The day is over, and it is not.
    pub is_over: bool,
    /// The first step that can't be begun in time any more.
    pub late: Option<DateRow>,
    /// Likely all of it can be, and nine times in ten it can't.
    pub is_unsafe: bool,
    /// It will be missed behind the other jobs that go on, where none of its steps is too late by itself.
    pub missed: Option<Missed>,
    /// The next step, with its last day.
    pub next: Option<DateRow>,
    /// The first day it can be promised for; of several jobs only of those on which no hand is left.
    pub first: Option<Day>,
}

impl DatesSheet {
    /// What was promised of it, with safe days; none where no day was.
    pub fn promise(&self) -> Option<Promise> {
        let late = self.late.and_then(|nth| self.rows.get(nth)).cloned();
        let (next, first) = (self.rows.first().cloned(), self.first().map(|(day, _)| day));
        let missed = self.missed().filter(|_| late.is_none());
        Some(Promise { due: self.due?, is_over: self.is_over, late, is_unsafe: self.is_unsafe, missed, next, first })
    }

    /// Whether it is not ready for the day it is to be done by, which need be no working day.
    pub fn missed(&self) -> Option<Missed> {
        let alone = [self.likely, self.safe];
        let behind = if Span::ZERO < self.others { [self.after_others, self.after_others_safe] } else { alone };
        Missed::of((self.due?, !self.rows.is_empty()), [behind, alone], &self.workdays)
    }

    /// The day a quote promises, behind the other jobs where there are any, and when it is ready for it.
    pub fn first(&self) -> Option<(Day, Ready)> {
        let safe = if Span::ZERO < self.others { self.after_others_safe } else { self.safe };
        safe.map(|safe| (self.workdays.promised(safe), safe))
    }

    /// When it is ready to be safe where hands are on it from the morning after a day on (ours), behind the other jobs as they are now: what waits
    /// already waits meanwhile.
    pub fn ready_after(&self, day: Day, now: Wall) -> Option<Ready> {
        let Safely { others, steps } = self.safely.as_ref()?;
        let days = i64::from(now.day().until(day.next()));
        let meanwhile = Span::minutes(days.saturating_mul(1_440).saturating_sub(now.minute_of_day().into()));
        let rest = |span: Span| span.minus(meanwhile).max(Span::ZERO);
        let waited = |step: &Step| match Span::ZERO < step.hands {
            true => Step { wet: rest(step.wet), ..*step },
            false => Step { wait: rest(step.wait), cure: rest(step.cure), ..*step },
        };
        let from = Wall::new(now.at.plus(meanwhile), now.offset);
        self.workdays.ready_behind((*others, Span::ZERO), from, &steps.iter().map(waited).listed())
    }
}

/// A job's dates.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`].
pub fn dates(shop: &Shop, id: Id, given: Given) -> Answer<DatesSheet> {
    let job = shop.job(id)?;
    Ok(dates_of(shop, (&job, &estimate(shop, id, given.with_factor)?), given))
}

/// The same, where its estimate was made before.
pub fn dates_of(shop: &Shop, (job, sheet): (&Job, &EstimateSheet), given: Given) -> DatesSheet {
    let hours = &shop.workshop.hours;
    let (workdays, due) = (hours.workdays(), due(job));
    let worked = worked_today(shop, given.now);
    let (mut rows, late) = back(shop, (job, &sheet.rows), (due, worked), given);
    let steps = rows.iter().map(DateRow::step).listed();
    let wider = wider(&steps, sheet);
    let is_unsafe = late.is_none() && due.zip(wider.as_ref()).is_some_and(|(due, wider)| is_late(shop, (due, worked, wider), given));
    let hands = [Some(&steps), wider.as_ref()].map(|steps| Span::sum(steps.into_iter().flatten().map(|step| step.hands)));
    if let Some((due, wider)) = due.zip(wider.as_ref()) {
        // More hours never begin later than fewer, which keep to what is left of today.
        let safe = |row: &DateRow, safe: Option<Day>| safe.map(|safe| row.last.map_or(safe, |last| last.min(safe)));
        rows.iter_mut().zip(workdays.back(due, wider)).for_each(|(row, day)| row.safe = safe(row, day).filter(|_| !row.only_waits()));
    }
    let after = Others::of(shop, Some(job.id), given).first(shop, (job.id, worked), (&steps, wider.as_deref()), given);
    let [likely, safe] = if job.ended.is_some() { [None; 2] } else { ready((&workdays, worked, given.now), &steps, sheet) };
    let [after_others, after_others_safe] = after.ready.map(|ready| likely.and(ready));
    let safely = wider.filter(|_| job.ended.is_none()).map(|steps| Safely { others: after.first, steps });
    let waits_as = rows.iter().find_map(|row| Some((row.waits_as.clone()?, row.wait.as_ref()?.1)));
    let is_undried = is_undried(&rows);
    let (unnoted, is_over) = (sheet.unnoted(shop), due.is_some_and(|due| due < given.now.day()));
    DatesSheet {
        job: job.id,
        due,
        rows,
        late,
        is_unsafe,
        likely,
        safe,
        hands,
        others: after.others,
        after_others,
        after_others_safe,
        safely,
        is_undried,
        waits_as,
        unnoted,
        covers: sheet.covers,
        by_name: sheet.by_name().cloned(),
        is_over,
        on_top: sheet.found.as_ref().map(|found| found.on_top),
        workdays,
        said: hours.is_said(),
    }
}

/// What was promised of jobs, where a day was, by one history of all jobs and one reckoning of the hands that are on them: how far the hours of one
/// may spread is reckoned where it is likely in time, and safe days are not.
pub fn promises(shop: &Shop, jobs: &[Id], given: Given) -> Vec<(Id, Promise)> {
    let (history, worked) = (shop.history(), worked_today(shop, given.now));
    let others = OnceCell::new();
    let others = || others.get_or_init(|| Others::of(shop, None, given));
    let of = |id: &Id| {
        let job = shop.job(*id).ok()?;
        let due = due(&job)?;
        let (rows, late) = back(shop, (&job, &rows_of(shop, (&job, history), given.with_factor)), (Some(due), worked), given);
        let late = late.and_then(|nth| rows.get(nth)).cloned();
        let steps = rows.iter().map(DateRow::step).listed();
        let workdays = shop.workshop.hours.workdays();
        // What is late by itself is so behind others too; of that nothing is drawn.
        let wider = || wider(&steps, &estimate(shop, *id, given.with_factor).ok()?);
        let wider = if late.is_none() && !rows.is_empty() { wider() } else { None };
        let is_unsafe = wider.as_ref().is_some_and(|steps| is_late(shop, (due, worked, steps), given));
        let missed = wider.and_then(|wider| {
            let after = others().first(shop, (*id, worked), (&steps, Some(&wider)), given);
            let alone = [&steps, &wider].map(|steps| workdays.ready_after(worked, given.now, steps));
            Missed::of((due, true), [after.ready, alone], &workdays)
        });
        // Without hands on it no other job moves it, and nothing of it is drawn.
        let ready = (!rows.is_empty() && rows.iter().all(DateRow::only_waits)).then(|| workdays.ready_after(worked, given.now, &steps));
        let first = ready.flatten().map(|ready| workdays.promised(ready));
        Some((*id, Promise { due, is_over: due < given.now.day(), late, is_unsafe, missed, next: rows.into_iter().next(), first }))
    };
    jobs.iter().filter_map(of).listed()
}

/// It comes before the day on which a job is used.
fn is_before(kind: Kind) -> bool {
    matches!(kind, Kind::Fetch | Kind::Make)
}

/// The day of use, of a job that goes on and of which pieces are left: what is handed over can't be late any more.
fn due(job: &Job) -> Option<Day> {
    date(job).filter(|_| job.ended.is_none() && 0 < job.left()).map(Wall::day)
}

/// What is still to do, each with its last day, and the place of the first whose last hour has gone by: with as much less of today as was
/// worked.
fn back(shop: &Shop, (job, known): (&Job, &[Row]), (due, worked): (Option<Day>, Span), given: Given) -> (Vec<DateRow>, Option<usize>) {
    let mut rows = rows(shop, job, known, given);
    let steps = rows.iter().map(DateRow::step).listed();
    let workdays = shop.workshop.hours.workdays();
    let begins = due.map(|due| workdays.begins(due, &steps)).unwrap_or_default();
    let now = (given.now.day(), i64::from(given.now.minute_of_day()));
    let still = due.map(|due| workdays.begins_after((now.0, worked), due, &steps)).unwrap_or_default();
    let late = still.iter().zip(&steps).position(|(begin, step)| begin.is_none_or(|begin| begin < step.begins_from(now)));
    // What can still be begun today is not said to have been for yesterday; what can't is said as it would have had to be.
    let is_late = |still: &Option<Hour>| still.is_none_or(|still| still < now);
    let last = |(begin, still): (Option<Hour>, Option<Hour>)| if is_late(&still) { still } else { begin.max(still) };
    let last = begins.into_iter().zip(still).map(last).map(|last| last.map(|(day, _)| day)).listed();
    rows.iter_mut().zip(last).for_each(|(row, last)| row.last = last.filter(|_| !row.only_waits()));
    (rows, late)
}

/// Whether some of these steps can't be begun in time any more.
fn is_late(shop: &Shop, (due, worked, steps): (Day, Span, &[Step]), given: Given) -> bool {
    let now = (given.now.day(), i64::from(given.now.minute_of_day()));
    let still = shop.workshop.hours.workdays().begins_after((now.0, worked), due, steps);
    still.into_iter().zip(steps).any(|(begin, step)| begin.is_none_or(|begin| begin < step.begins_from(now)))
}

/// With the hours as they are likely, and as they are nine times in ten; none where nothing is known of them.
fn ready((workdays, worked, now): (&Workdays, Span, Wall), steps: &[Step], sheet: &EstimateSheet) -> [Option<Ready>; 2] {
    let Some(safely) = wider(steps, sheet) else { return [None; 2] };
    [workdays.ready_after(worked, now, steps), workdays.ready_after(worked, now, &safely)]
}

/// How long the maker's own hands were on wood today, on any job. A clock that may have been forgotten takes nothing of today until somebody
/// says that it is right.
fn worked_today(shop: &Shop, now: Wall) -> Span {
    let today = now.day();
    let own = shop.bench.runs().filter(|run| run.work.person.is_none() && run.work.kind == Kind::Make);
    // A run that is over by the day before can't be of today.
    let lately = own.filter(|run| today.before().before() <= crate::bench::day::day_of(run) || run.is_running());
    let parts = shop.bench.sure(lately, now.at).flat_map(|run| crate::bench::day::parts(&run, now));
    Span::sum(parts.filter(|(day, ..)| *day == today).map(|(.., span)| span))
}

/// Steps with as many hours as nine times in ten.
fn wider(steps: &[Step], sheet: &EstimateSheet) -> Option<Vec<Step>> {
    let to_come = sheet.to_come.or(sheet.found.as_ref().map(|found| found.range))?;
    let wider = |step: &Step| Step { hands: step.hands.in_ratio(to_come.safe, to_come.likely).unwrap_or(step.hands), ..*step };
    Some(steps.iter().map(wider).listed())
}

/// What hands are still on, or what still waits.
fn rows(shop: &Shop, job: &Job, rows: &[Row], given: Given) -> Vec<DateRow> {
    // What was counted and nobody planned is under way: the pieces that are left come first.
    let beside = beside(shop, job, rows)
        .into_iter()
        .filter(|one| is_before(one.kind))
        .map(|one| (one.stage, (one.to_come(), Some(one.op), (false, None), None)))
        .listed();
    let of_row = |row: &Row| (row.stage, (row.to_come(), row.op.clone(), (row.is_rest, row.coats), raised(row)));
    let of_rows = rows.iter().filter(|row| is_before(row.kind)).map(of_row);
    let mut in_order = beside.into_iter().chain(of_rows).listed();
    crate::quantity::order_by_key(&mut in_order, |(stage, _)| *stage);
    let steps = in_order.into_iter().map(|(_, (hands, op, (is_rest, coats), thought))| {
        let waits = op.as_deref().and_then(|op| wait_of(shop, job, (op, hands, coats), given));
        let (wait, [between, wet]) = waits.map_or((None, [Span::ZERO; 2]), |(wait, of_coats)| (Some(wait), of_coats));
        let pieces = op.as_deref().map(|op| batch(shop, job, op)).filter(|batch| 0 < batch.n).and_then(|batch| batch.left());
        let is_begun = is_begun(shop, job, (op.as_deref(), is_rest));
        let thought = thought.filter(|_| !is_begun);
        DateRow { op, is_rest, is_begun, hands, thought, pieces, wait, wet, between, waits_as: None, cure: None, last: None, safe: None }
    });
    let mut all = steps.listed();
    // Nobody said when the rest of it is done: before the last coat hardens, so that no date is too early.
    crate::quantity::order_by_key(&mut all, |row| !row.is_rest);
    if is_undried(&all) {
        wait_as_before(shop, job, &mut all);
    }
    cure(shop, job, &mut all, given);
    all.retain(|row| Span::ZERO < row.hands || row.wait.is_some() || row.cure.is_some());
    all
}

/// What was thought of an operation that takes more by the factor or the allowance, while all of it is to come.
fn raised(row: &Row) -> Option<Span> {
    row.thought.filter(|thought| row.from == Basis::Thought && *thought != row.likely && row.to_come() == row.likely)
}

/// Whether something of it is no operation, and nothing waits.
fn is_undried(rows: &[DateRow]) -> bool {
    rows.iter().any(|row| row.op.is_none()) && !rows.iter().any(|row| row.wait.is_some() || row.cure.is_some())
}

/// A piece as a whole, and what its plan leaves out, waits as long as the last of the earlier pieces did that its hours go by (ours).
fn wait_as_before(shop: &Shop, job: &Job, rows: &mut [DateRow]) {
    let Some(row) = rows.iter_mut().find(|row| row.op.is_none() && Span::ZERO < row.hands) else { return };
    let (_, earlier) = shop.history().of_piece(job);
    if let Some((name, waited)) = earlier.into_iter().rev().find_map(|piece| Some((piece.name, piece.waited?))) {
        // Of several coats the last dries while it hardens.
        row.between = waited.span.minus(waited.last).max(Span::ZERO);
        (row.wait, row.waits_as) = (Some((waited.what, waited.span)), Some(name));
    }
}

/// Whether hands were on an operation, on the whole piece, or on what its plan does not name, as what is to be done next tells it: not by a run
/// that is doubtful.
fn is_begun(shop: &Shop, job: &Job, (op, is_rest): (Option<&str>, bool)) -> bool {
    let is_planned = |run: &Run| job.operations.iter().any(|planned| planned.op == run.work.op);
    let is_of_it = |run: &Run| match op {
        Some(op) => run.work.op == op,
        None => is_before(run.work.kind) && !(is_rest && is_planned(run)),
    };
    let of_it = shop.bench.on(On::Job(job.id)).filter(|run| !run.work.rework && is_of_it(run));
    shop.bench.sure(of_it, shop.now).next().is_some()
}

/// What a step waits: what is left of what waits now where hands are off it, else as is usual. Each of several coats dries: those that are to
/// come, of as many as earlier jobs had. And of that, what is over before the last goes on, and how long the one is wet yet that is on.
fn wait_of(shop: &Shop, job: &Job, (op, hands, coats): (&str, Span, Option<Count>), given: Given) -> Option<((Key, Span), [Span; 2])> {
    let now = || waits_now(shop, job, op, given);
    if hands <= Span::ZERO {
        return now().map(|wait| (wait, [Span::ZERO; 2]));
    }
    let usual = given.waits.usuals.of(op, (given.guess)(op))?;
    let noted = shop.bench.sure_batch(On::Job(job.id), op, shop.now).n;
    let on = Coats::of(shop, job, (op, noted)).filter(|_| 0 < noted);
    let done = on.and_then(|on| noted.checked_div(on.each)).unwrap_or_default();
    let to_come = i64::from(coats.unwrap_or(1).saturating_sub(done).max(1));
    let all = usual.span.in_ratio(Span::minutes(to_come), Span::minutes(1)).unwrap_or(usual.span);
    // The first coat of the others goes on them now; each further one when the one below is dry.
    let wet = on.map_or(Span::ZERO, |on| wet_below(shop, job, (op, on.each, done), given));
    Some(((usual.what, all), [all.minus(usual.span), wet]))
}

/// How long the longest of the pieces is wet that have so many coats on: a later coat of theirs is not waited for.
fn wet_below(shop: &Shop, job: &Job, (op, each, done): (&str, Count, Count), given: Given) -> Span {
    let local = crate::quantity::Local::new(given.now.offset, None);
    let kept = Kept { waits: given.waits, bench: &shop.bench, book: shop.book, local };
    let of_it = kept.of_job(job.id, shop.now).into_iter().filter(|line| line.op == op);
    let coat = |line: &WaitLine| line.coat.or_else(|| line.piece?.div_ceil(each.max(1)).into()).unwrap_or(1);
    of_it.filter(|line| coat(line) <= done).map(|line| line.left).max().unwrap_or(Span::ZERO)
}

/// What is left of what waits now of an operation.
fn waits_now(shop: &Shop, job: &Job, op: &str, given: Given) -> Option<(Key, Span)> {
    let on = given.waits.on().filter(|wait| wait.job == Some(job.id) && shop.bench.op_of(wait) == op);
    let longest = on.map(|wait| (wait.what.clone(), wait.left(shop.now))).max_by_key(|(_, left)| *left)?;
    (Span::ZERO < longest.1).then_some(longest)
}

/// After the last coat a finish hardens until the day of use: the last that is to come, else the one that was put on last.
fn cure(shop: &Shop, job: &Job, rows: &mut [DateRow], given: Given) {
    let coats = |row: &DateRow| match row.op.as_deref() {
        Some(op) => given.waits.usuals.of(op, (given.guess)(op)).is_some_and(|usual| What::of(&usual.what) == What::Coat),
        None => row.wait.as_ref().is_some_and(|(what, _)| What::of(what) == What::Coat),
    };
    let Some(key) = Key::read(What::Cure.name()) else { return };
    let Some((span, _)) = given.waits.usuals.span((&key, None), given.waits.usuals.warmth) else { return };
    let put_on = |row: &DateRow| {
        let of_it = shop.bench.on(On::Job(job.id)).filter(|run| row.op.as_deref() == Some(&*run.work.op));
        shop.bench.sure(of_it, shop.now).map(|run| run.end(shop.now)).max()
    };
    let coats = rows.iter_mut().filter(|row| coats(row));
    let Some(row) = coats.max_by_key(|row| (!row.only_waits(), if row.only_waits() { put_on(row) } else { None })) else { return };
    let left = match put_on(row) {
        Some(last) if row.only_waits() => shop.now.until(last.plus(span)).max(Span::ZERO),
        _ => span,
    };
    row.cure = Some(left).filter(|left| Span::ZERO < *left);
}
