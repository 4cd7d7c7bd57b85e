//! A day to scale: its runs as stretches from local midnight, what is not counted of them, what waited, and the gaps between.

use super::day::DaySheet;
use super::helped::stays;
use super::waits::WaitLine;
use crate::bench::{Bench, Run, Source};
use crate::ledger::{Book, Fact};
use crate::quantity::{Day, Id, Listed, Moment, Span, Wall, order_by_key};

/// A stretch of a day, from its midnight by the clock of the place where it began.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch {
    pub from: Span,
    pub to: Span,
}

/// One run as far as it lies on the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Board {
    pub run: Id,
    pub op: String,
    /// What counts, by where its minutes come from; a start that was said before the tap makes two.
    pub parts: Vec<(Source, Stretch)>,
    pub whole: Stretch,
    /// What does not count: what the clock ran on, or what was told twice.
    pub spare: Vec<Stretch>,
    /// What does not count lies over another run.
    pub overlaps: bool,
    /// It began the day before.
    pub before: bool,
    /// It goes on over midnight.
    pub after: bool,
    pub runs: bool,
}

/// Something that waited on the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waited {
    pub line: WaitLine,
    pub on: Stretch,
    pub before: bool,
    pub after: bool,
}

/// A day to scale.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Timeline {
    /// The earliest start first; a run from the day before is the first.
    pub boards: Vec<Board>,
    pub waits: Vec<Waited>,
    /// Who worked along, each stay as far as it lies on the day.
    pub helpers: Vec<Stretch>,
    /// Between the end of one run and the start of the next.
    pub gaps: Vec<Stretch>,
}

/// A day of a person to scale, from its sheet, the bench, and what waited.
pub fn timeline(book: &Book, bench: &Bench, sheet: &DaySheet, (waits, now): (Vec<WaitLine>, Wall)) -> Timeline {
    let day = sheet.day;
    let person = sheet.lines.first().and_then(|line| line.run.work.person);
    let own = bench.runs().filter(|run| run.work.person == person);
    let on_it = own.filter(|run| run.started.day() <= day && day.start(run.started.offset) < run.end(now.at) || run.started.day() == day);
    let stays = on_it.clone().flat_map(|run| stays(run, now.at).unwrap_or_default());
    let helpers = stays.filter_map(|stay| on(day, (stay.from.at, stay.to.map_or(now.at, |to| to.at)), stay.from));
    let helpers = helpers.filter(|on| on.from < on.to).listed();
    let mut boards: Vec<Board> = on_it.map(|run| board(book, sheet, run, now)).listed();
    order_by_key(&mut boards, |board| board.whole.from);
    let counted = boards.iter().map(|board| (board.run, board.whole)).listed();
    for board in &mut boards {
        let meets =
            |spare: &Stretch| counted.iter().any(|(run, whole)| *run != board.run && spare.from < whole.to && whole.from < spare.to);
        board.overlaps = board.spare.iter().any(meets);
    }
    let gaps = boards.iter().zip(boards.iter().skip(1)).filter(|(one, next)| one.whole.to < next.whole.from);
    let gaps = gaps.map(|(one, next)| Stretch { from: one.whole.to, to: next.whole.from }).listed();
    let waits = waits.into_iter().filter_map(|line| waited(day, line, now.at)).listed();
    Timeline { boards, waits, helpers, gaps }
}

impl Timeline {
    /// From the first start to the last end, and what waited in between. A wait that came over midnight, or goes on over it, stretches
    /// nothing: it is cut off at the edge.
    pub fn ends(&self) -> Option<Stretch> {
        let boards = self.boards.iter().flat_map(|board| std::iter::once(&board.whole).chain(&board.spare)).copied();
        let within = self.waits.iter().filter(|wait| !wait.before && !wait.after).map(|wait| wait.on);
        let began = self.waits.iter().filter(|wait| !wait.before && wait.after).map(|wait| Stretch { to: wait.on.from, ..wait.on });
        let all = boards.chain(within).chain(began).listed();
        let from = all.iter().map(|one| one.from).min()?;
        Some(Stretch { from, to: all.iter().map(|one| one.to).max()? })
    }
}

/// A stretch of time as far as it lies on a day; `None` where none of it does.
fn on(day: Day, (from, to): (Moment, Moment), place: Wall) -> Option<Stretch> {
    let (begins, ends) = (day.start(place.offset), day.next().start(place.offset));
    let (from, to) = (from.max(begins), to.min(ends));
    (from <= to).then(|| Stretch { from: begins.until(from), to: begins.until(to) })
}

fn board(book: &Book, sheet: &DaySheet, run: &Run, now: Wall) -> Board {
    let (day, place) = (sheet.day, run.started);
    let wrong = sheet.lines.iter().find(|line| line.run.id == run.id).and_then(|line| line.wrong);
    let (start, end) = (run.started.at, run.end(now.at));
    // What looks wrong counts in no total: what is proposed lies there, the rest is open.
    let sure = wrong.map_or(end, |wrong| wrong.at.min(end));
    let part = |(source, from, to): (Source, Moment, Moment)| {
        let on = on(day, (from, to.min(sure)), place).filter(|on| on.from < on.to)?;
        Some((source, on))
    };
    let spare = spare(book, run, sure, end);
    let whole = on(day, (start, sure), place).unwrap_or(Stretch { from: Span::ZERO, to: Span::ZERO });
    Board {
        run: run.id,
        op: run.work.op.clone(),
        parts: run.stretches(now.at).into_iter().filter_map(part).listed(),
        whole,
        spare: spare.into_iter().filter_map(|ends| on(day, ends, place)).filter(|on| on.from < on.to).listed(),
        overlaps: false,
        before: run.started.day() < day,
        after: day.next().start(place.offset) < end,
        runs: run.is_running(),
    }
}

/// What is told of a run and does not count: before its start and after its end.
fn spare(book: &Book, run: &Run, sure: Moment, end: Moment) -> Vec<(Moment, Moment)> {
    let recalled = match book.entry(run.id).map(|(entry, _)| &entry.fact) {
        Some(Fact::RunRecalled(f)) => Some((f.start, f.stop)),
        _ => None,
    };
    let (first, last) = match recalled {
        Some((start, stop)) if run.overlaps.is_some() => (start, stop),
        _ => (run.started.at, run.tapped_stop.map_or(end, |stop| stop.at).max(end)),
    };
    // A clock that was wrong by days is no stretch of a day.
    let last = last.min(run.started.at.plus(Span::RUN_MOST));
    [(first, run.started.at), (sure, last)].into_iter().filter(|(from, to)| from < to).listed()
}

fn waited(day: Day, line: WaitLine, now: Moment) -> Option<Waited> {
    let began = line.wait.began;
    let until = line.wait.ended.map_or(line.off.at.max(now.min(line.off.at)), |ended| ended.at.at);
    let on = on(day, (began.at, until), began)?;
    let after = day.next().start(began.offset) < until;
    Some(Waited { on, before: began.day() < day, after, line })
}

#[cfg(test)]
mod tests {
    use super::super::bench::Seen;
    use super::super::day::day as sheet_of;
    use super::super::waits::Kept;
    use super::*;
    use crate::bench::{Mender, On};
    use crate::ledger::decide::{BenchCommand, Command, Laid, WaitCommand};
    use crate::ledger::fold;
    use crate::ledger::told::{Phone, at, work};
    use crate::quantity::Key;

    fn told(phone: &Phone, days: i64, now: i64) -> Timeline {
        let seen = Seen { now: phone.wall(now), ..Seen::default() };
        let bench = fold::bench(&phone.book);
        let day = phone.wall(days * 1_440).day();
        let waits = fold::waits(&phone.book);
        let kept = Kept { waits: &waits, bench: &bench, book: &phone.book };
        timeline(&phone.book, &bench, &sheet_of(&phone.book, day, seen), (kept.of_day(day, seen.now), seen.now))
    }

    /// Each board as "op from-to", its source, what does not count, whether it goes over midnight.
    fn shown(line: &Timeline) -> Vec<String> {
        let ends = |one: &Stretch| format!("{}-{}", one.from.as_minutes(), one.to.as_minutes());
        let one = |board: &Board| {
            let parts = board.parts.iter().map(|(source, on)| format!("{} {source:?}", ends(on))).listed().join("+");
            let spare = board.spare.iter().map(ends).listed().join("+");
            let marks = [(board.before, "<"), (board.after, ">"), (board.overlaps, "x"), (board.runs, "runs")];
            let marks: String = marks.iter().filter(|(is, _)| *is).map(|(_, mark)| *mark).collect();
            format!("{} {parts} |{spare}|{marks}", board.op)
        };
        line.boards.iter().map(one).listed()
    }

    #[test]
    fn runs_lie_to_scale_with_their_gaps() {
        let mut phone = Phone::new("a");
        let saw = phone.start(480, "saw", On::Nothing);
        phone.stop(540, saw);
        let glue = phone.start(600, "glue", On::Nothing);
        phone.stop(792, glue);
        phone.bench(800, BenchCommand::StopAt { run: glue, at: at(647), by: Mender::Typed }).unwrap();
        phone.bench(801, BenchCommand::Recall { work: work("wipe", On::Nothing), start: at(650), stop: at(660), heads: 1 }).unwrap();
        phone.start(810, "sand", On::Nothing);
        let line = told(&phone, 0, 830);
        assert_eq!(
            shown(&line),
            ["saw 480-540 Measured ||", "glue 600-647 Corrected |647-792|x", "wipe 650-660 Recalled ||", "sand 810-830 Measured ||runs"]
        );
        let gaps: Vec<_> = line.gaps.iter().map(|gap| (gap.from.as_minutes(), gap.to.as_minutes())).collect();
        assert_eq!(gaps, [(540, 600), (647, 650), (660, 810)]);
        assert_eq!(line.ends().map(|ends| (ends.from.as_minutes(), ends.to.as_minutes())), Some((480, 830)));
    }

    #[test]
    fn a_run_over_midnight_is_cut_on_both_days() {
        let mut phone = Phone::new("a");
        let late = phone.start(1_400, "oil", On::Nothing);
        phone.stop(1_460, late);
        assert_eq!(shown(&told(&phone, 0, 1_500)), ["oil 1400-1440 Measured ||>"]);
        assert_eq!(shown(&told(&phone, 1, 1_500)), ["oil 0-20 Measured ||<"]);
        assert_eq!(shown(&told(&phone, 2, 4_000)), [""; 0]);
    }

    #[test]
    fn what_was_told_twice_is_open_over_what_counts() {
        let mut phone = Phone::new("a");
        phone.bench(700, BenchCommand::Recall { work: work("saw", On::Nothing), start: at(500), stop: at(560), heads: 1 }).unwrap();
        let mut other = Phone::new("b");
        other.bench(701, BenchCommand::Recall { work: work("rip", On::Nothing), start: at(530), stop: at(600), heads: 1 }).unwrap();
        phone.merge(&other);
        assert_eq!(shown(&told(&phone, 0, 800)), ["saw 500-560 Recalled ||", "rip 560-600 Recalled |530-560|x"]);
    }

    #[test]
    fn a_forgotten_stop_counts_to_the_end_that_is_proposed() {
        let mut phone = Phone::new("a");
        let sand = phone.start(480, "sand", On::Nothing);
        phone.stop(900, sand);
        assert_eq!(shown(&told(&phone, 0, 901)), ["sand 480-540 Measured |540-900|"]);
    }

    /// Oiled at 13:50 for a day, beside an hour's work each day: neither day is drawn longer for it.
    #[test]
    fn what_waits_over_midnight_stretches_neither_day() {
        let mut phone = Phone::new("a");
        for day in [0, 1_440] {
            let run = phone.start(day + 800, "oil", On::Nothing);
            if day == 0 {
                let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_440) };
                phone.order(830, Command::Wait(WaitCommand::Clamp { run, n: 1, laid })).unwrap();
            }
            phone.stop(day + 825, run);
        }
        let ends = |day| {
            let line = told(&phone, day, 2_400);
            (line.ends().map(|ends| (ends.from.as_minutes(), ends.to.as_minutes())), line.waits[0].before, line.waits[0].after)
        };
        assert_eq!(ends(0), (Some((800, 830)), false, true));
        assert_eq!(ends(1), (Some((800, 825)), true, false));
    }

    #[test]
    fn helpers_lie_on_the_day_as_long_as_they_were_there() {
        let mut phone = Phone::new("a");
        let run = phone.start(480, "carry", On::Nothing);
        phone.stop(600, run);
        let recall = |from, to| BenchCommand::RecallHelper { run, from: at(from), to, pay: None };
        phone.bench(610, recall(490, Some(at(520)))).unwrap();
        phone.bench(610, recall(550, None)).unwrap();
        let on: Vec<_> = told(&phone, 0, 620).helpers.iter().map(|on| (on.from.as_minutes(), on.to.as_minutes())).collect();
        assert_eq!(on, [(490, 520), (550, 600)]);
    }
}
