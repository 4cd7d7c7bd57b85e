//! A day to scale: its runs as stretches from local midnight, what is not counted of them, what waited, and the gaps between. Each is drawn
//! as long as it was; on a day on which the clocks change 23 or 25 hours have room.

mod clocks;

use clocks::Clocks;

use super::day::DaySheet;
use super::helped::stays;
use super::waits::WaitLine;
use crate::bench::{Bench, Run, Source};
use crate::ledger::{Book, Fact};
use crate::quantity::{Day, Id, Listed, Local, Moment, Span, Wall};

/// What does not count stretches a day by no more than that: a stop that was forgotten over night is no reason to draw the night [J].
const OPEN_MOST: Span = Span::minutes(30);

/// A stretch of a day: what went by from its midnight to each end.
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
    /// What does not count: what the clock ran on.
    pub spare: Vec<Stretch>,
    /// What does not count and lies where another run counts.
    pub twice: Vec<Stretch>,
    /// It began on an earlier day.
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
    /// The earliest start first; a run from an earlier day is the first.
    pub boards: Vec<Board>,
    pub waits: Vec<Waited>,
    /// Who worked along, each stay as far as it lies on the day.
    pub helpers: Vec<Stretch>,
    /// Between the end of one run and the start of the next.
    pub gaps: Vec<Stretch>,
    /// How long the day was.
    pub whole: Span,
    clocks: Clocks,
}

/// A day of a person to scale, from its sheet, the bench, and what waited; `local` is the clock on the wall there and then, as far as it
/// is known.
pub fn timeline(book: &Book, bench: &Bench, sheet: &DaySheet, (waits, now, local): (Vec<WaitLine>, Wall, Local)) -> Timeline {
    let day = sheet.day;
    let person = sheet.lines.first().and_then(|line| line.run.work.person);
    let own = bench.runs().filter(|run| run.work.person == person);
    let on_it = own.filter(|run| lies_on(day, run.started, told_to(run, now)));
    let clocks = Clocks::of(day, on_it.clone().flat_map(|run| [run.started, shown_to(run, (now, local))]).listed(), (now, local));
    let stays = on_it.clone().flat_map(|run| stays(run, now.at).unwrap_or_default().into_iter().map(move |stay| (run, stay)));
    let helpers = stays.filter_map(|(run, stay)| clocks.on(place(run, stay.from, now), place(run, stay.to.unwrap_or(now.at), now)));
    let helpers = helpers.filter(|on| on.from < on.to).listed();
    let lying = on_it.map(|run| Lying::of(book, sheet, run, now)).listed();
    let boards = lying.iter().map(|one| board(&clocks, (one, &lying), now)).listed();
    let pairs = lying.iter().zip(&boards).zip(lying.iter().zip(&boards).skip(1));
    let gaps = pairs.filter_map(|(one, next)| gap(day, one, next)).listed();
    let waits = waits.into_iter().filter_map(|line| waited(&clocks, line)).listed();
    Timeline { boards, waits, helpers, gaps, whole: clocks.whole, clocks }
}

impl Timeline {
    /// The clock of the place, so long after the day's midnight.
    pub fn wall(&self, since: Span) -> Wall {
        self.clocks.wall(since)
    }

    /// Where the clock of another place begins: how long after midnight, what the one before shows then, and what that one does.
    pub fn others(&self) -> Vec<(Span, Wall, Wall)> {
        self.clocks.others()
    }

    /// Work counts from the midnight at which the day begins.
    pub fn from_midnight(&self) -> bool {
        self.boards.iter().any(|board| board.before && board.parts.first().is_some_and(|(_, on)| on.from == Span::ZERO))
    }

    /// Work counts to the midnight at which the day ends.
    pub fn to_midnight(&self) -> bool {
        self.boards.iter().any(|board| board.after && board.parts.last().is_some_and(|(_, on)| on.to == self.whole))
    }

    /// From the first start to the last end, and what waited in between. A wait that came over midnight, or goes on over it, stretches
    /// nothing: it is cut off at the edge. So is what does not count of a run, after half an hour.
    pub fn ends(&self) -> Option<Stretch> {
        let whole = |board: &Board| (!board.parts.is_empty()).then_some(board.whole);
        let boards = self.boards.iter().flat_map(|board| whole(board).into_iter().chain(board.open()));
        let within = self.waits.iter().filter(|wait| !wait.before && !wait.after).map(|wait| wait.on);
        let began = self.waits.iter().filter(|wait| !wait.before && wait.after).map(|wait| Stretch { to: wait.on.from, ..wait.on });
        let all = boards.chain(within).chain(began).listed();
        let from = all.iter().map(|one| one.from).min()?;
        Some(Stretch { from, to: all.iter().map(|one| one.to).max()? })
    }
}

impl Board {
    /// What does not count, as far as it stretches the day.
    fn open(&self) -> impl Iterator<Item = Stretch> {
        let (all, end) = (self.parts.is_empty(), self.whole.to);
        self.spare.iter().map(move |on| match !all && end <= on.from {
            true => Stretch { to: on.to.min(on.from.plus(OPEN_MOST)), ..*on },
            false => Stretch { from: on.from.max(on.to.minus(OPEN_MOST)), ..*on },
        })
    }
}

/// Whether any of a stretch of time lies on a day. Midnights are those of the place where it began, as in [`crate::bench::day::split`].
fn lies_on(day: Day, start: Wall, end: Wall) -> bool {
    let (first, last) = (start.day(), end.day().max(start.day()));
    first <= day && day <= last && (first == day || day.start(start.offset) < end.at)
}

/// A moment of a run by the clock of where that was: the end by its own.
fn place(run: &Run, at: Moment, now: Wall) -> Wall {
    let end = run.end_wall(now);
    if at < end.at { Wall::new(at, run.started.offset) } else { Wall::new(at, end.offset) }
}

/// A run of the day, and the moments that its board is drawn from.
struct Lying<'a> {
    run: &'a Run,
    /// Up to here it counts, or where nothing of it does would by what is proposed.
    sure: Wall,
    spare: Vec<(Wall, Wall)>,
}

impl<'a> Lying<'a> {
    fn of(book: &Book, sheet: &DaySheet, run: &'a Run, now: Wall) -> Lying<'a> {
        let end = run.end(now.at);
        let wrong = sheet.wrong(run.id).filter(|_| sheet.is_open(run.id)).map(|wrong| wrong.at);
        let sure = place(run, sheet.stands_to(run.id).or(wrong).map_or(end, |at| at.min(end)), now);
        Lying { run, sure, spare: spare(book, run, (sure, now)) }
    }
}

fn board(clocks: &Clocks, (lying, all): (&Lying, &[Lying]), now: Wall) -> Board {
    let (run, end) = (lying.run, lying.run.end_wall(now));
    let part = |(source, from, to): (Source, Moment, Moment)| {
        let to = to.min(lying.sure.at);
        let on = clocks.on(place(run, from, now), place(run, to, now)).filter(|on| from < to && on.from < on.to)?;
        Some((source, on))
    };
    let none = Stretch { from: Span::ZERO, to: Span::ZERO };
    let (twice, spare): (Vec<_>, Vec<_>) = lying.spare.iter().flat_map(|spare| apart(spare, lying, all)).partition(|one| one.1);
    let drawn = |all: Vec<((Wall, Wall), bool)>| {
        all.into_iter().filter_map(|((from, to), _)| clocks.on(from, to)).filter(|on| on.from < on.to).listed()
    };
    Board {
        run: run.id,
        op: run.work.op.clone(),
        parts: run.stretches(now.at).into_iter().filter_map(part).listed(),
        whole: clocks.on(run.started, lying.sure).unwrap_or(none),
        spare: drawn(spare),
        twice: drawn(twice),
        before: run.started.day() < clocks.day,
        after: lies_on(clocks.day.next(), run.started, end),
        runs: run.is_running(),
    }
}

/// What does not count of a run, cut where another counts: each part, and whether it lies over one.
fn apart(spare: &(Wall, Wall), lying: &Lying, all: &[Lying]) -> Vec<((Wall, Wall), bool)> {
    let (start, end) = *spare;
    let at = |moment: Moment| if moment < end.at { Wall::new(moment, start.offset) } else { end };
    let (mut from, mut parts) = (start, vec![]);
    for other in all.iter().filter(|other| other.run.id != lying.run.id) {
        let (begins, ends) = (at(other.run.started.at.max(from.at)), at(other.sure.at));
        if begins.at < ends.at {
            parts.extend([((from, begins), false), ((begins, ends), true)]);
            from = ends;
        }
    }
    parts.push(((from, end), false));
    parts.into_iter().filter(|((from, to), _)| from.at < to.at).listed()
}

/// Nothing was at work between two runs. One that ended on an earlier day left no end on this day to begin from.
fn gap(day: Day, (one, board): (&Lying, &Board), (next, after): (&Lying, &Board)) -> Option<Stretch> {
    let open = one.sure.day() < day;
    let gap = Stretch { from: board.whole.to, to: after.whole.from };
    (!open && one.sure.at < next.run.started.at).then_some(gap)
}

/// What is told of a run and does not count: before its start and after its end.
fn spare(book: &Book, run: &Run, (sure, now): (Wall, Wall)) -> Vec<(Wall, Wall)> {
    let recalled = match book.entry(run.id).map(|(entry, _)| &entry.fact) {
        Some(Fact::RunRecalled(f)) => Some((f.start, f.stop)),
        _ => None,
    };
    let (first, last) = match recalled {
        Some((start, stop)) if run.overlaps.is_some() => (start, Wall::new(stop, run.started.offset)),
        _ => (run.started.at, told_to(run, now)),
    };
    // A clock that was wrong by days is no stretch of a day.
    let last = Wall::new(last.at.min(run.started.at.plus(Span::RUN_MOST)), last.offset);
    let first = Wall::new(first, run.started.offset);
    [(first, run.started), (sure, last)].into_iter().filter(|(from, to)| from.at < to.at).listed()
}

/// To where the clock ran, whatever of it counts.
fn told_to(run: &Run, now: Wall) -> Wall {
    let end = run.end_wall(now);
    // What a switch that was said to be earlier takes off one run counts in the next.
    if run.cut.is_some_and(|cut| cut.switched && cut.at == end.at) {
        return end;
    }
    let most = run.started.at.plus(Span::RUN_MOST);
    run.tapped_stop.filter(|stop| end.at < stop.at).map_or(end, |stop| Wall::new(stop.at.min(most), stop.offset))
}

/// The same by the clock that is shown.
fn shown_to(run: &Run, (now, local): (Wall, Local)) -> Wall {
    run.wall(told_to(run, now).at, local)
}

fn waited(clocks: &Clocks, line: WaitLine) -> Option<Waited> {
    let began = line.wait.began;
    let until = line.wait.ended.map_or(line.off, |ended| ended.at);
    let (on, after) = (clocks.on(began, until)?, lies_on(clocks.day.next(), began, until));
    Some(Waited { on, before: began.day() < clocks.day, after, line })
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
    use crate::quantity::{Key, Offset};

    fn told(phone: &Phone, days: i64, now: i64) -> Timeline {
        let seen = Seen { now: phone.wall(now), ..Seen::default() };
        let bench = fold::bench(&phone.book);
        let day = phone.wall(days * 1_440).day();
        let waits = fold::waits(&phone.book);
        let kept = Kept { waits: &waits, bench: &bench, book: &phone.book, local: Local::new(phone.offset, None) };
        timeline(
            &phone.book,
            &bench,
            &sheet_of(&phone.book, day, seen),
            (kept.of_day(day, seen.now), seen.now, Local::new(phone.offset, None)),
        )
    }

    /// Each board as "op from-to", its source, what does not count, whether it goes over midnight.
    fn shown(line: &Timeline) -> Vec<String> {
        let ends = |one: &Stretch| format!("{}-{}", one.from.as_minutes(), one.to.as_minutes());
        let one = |board: &Board| {
            let parts = board.parts.iter().map(|(source, on)| format!("{} {source:?}", ends(on))).listed().join("+");
            let twice = board.twice.iter().map(|on| format!("{}x", ends(on)));
            let spare = board.spare.iter().map(ends).chain(twice).listed().join("+");
            let marks = [(board.before, "<"), (board.after, ">"), (board.runs, "runs")];
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
            [
                "saw 480-540 Measured ||",
                "glue 600-647 Corrected |647-650+660-792+650-660x|",
                "wipe 650-660 Recalled ||",
                "sand 810-830 Measured ||runs"
            ]
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
        assert_eq!(shown(&told(&phone, 0, 800)), ["saw 500-560 Recalled ||", "rip 560-600 Recalled |530-560x|"]);
    }

    #[test]
    fn a_forgotten_stop_counts_to_the_end_that_is_proposed() {
        let mut phone = Phone::new("a");
        let sand = phone.start(480, "sand", On::Nothing);
        phone.stop(900, sand);
        assert_eq!(shown(&told(&phone, 0, 901)), ["sand 480-540 Measured |540-900|"]);
    }

    /// Sawn from 17:00, stopped at 08:00 the day after, and nobody was asked yet: no hour of it counts on the day after.
    #[test]
    fn the_day_after_a_forgotten_stop_is_open_too() {
        let mut phone = Phone::new("a");
        let saw = phone.start(1_020, "saw", On::Nothing);
        let running = told(&phone, 1, 1_920);
        assert_eq!(shown(&running), ["saw  |0-480|<runs"], "nobody said that the night was worked");
        phone.stop(1_920, saw);
        phone.start(1_930, "oil", On::Nothing);
        let ends = |line: &Timeline| line.ends().map(|ends| (ends.from.as_minutes(), ends.to.as_minutes()));
        let eve = told(&phone, 0, 1_940);
        assert_eq!(shown(&eve), ["saw 1020-1080 Measured |1080-1440|>"]);
        assert_eq!((ends(&eve), eve.to_midnight()), (Some((1_020, 1_110)), false), "the night is not drawn");
        let after = told(&phone, 1, 1_940);
        assert_eq!((ends(&after), after.from_midnight()), (Some((450, 500)), false));
        assert_eq!(shown(&after), ["saw  |0-480|<", "oil 490-500 Measured ||runs"]);
        assert_eq!(after.gaps.len(), 0, "where it ended is not known");
    }

    /// Glued from noon, left running from 17:00 to 07:50, and put right; boring from 17:10 to 17:40 was written down: of the 14 h 50
    /// too much 6 h 30 lie open on the first day and 7 h 50 on the second.
    #[test]
    fn what_was_put_right_over_night_is_open_on_both_days() {
        let mut phone = Phone::new("a");
        let glue = phone.start(720, "glue", On::Nothing);
        phone.stop(1_440 + 470, glue);
        phone.bench(1_920, BenchCommand::StopAt { run: glue, at: at(1_020), by: Mender::Typed }).unwrap();
        phone.bench(1_921, BenchCommand::Recall { work: work("bore", On::Nothing), start: at(1_030), stop: at(1_060), heads: 1 }).unwrap();
        phone.start(1_930, "oil", On::Nothing);
        let eve = shown(&told(&phone, 0, 1_940));
        assert_eq!(eve, ["glue 720-1020 Corrected |1020-1030+1060-1440+1030-1060x|", "bore 1030-1060 Recalled ||"]);
        let after = told(&phone, 1, 1_940);
        assert_eq!(shown(&after), ["glue  |0-470|<", "oil 490-500 Measured ||runs"]);
        assert_eq!(after.gaps.len(), 0, "it ended the day before");
    }

    /// Runs as minutes of UTC and offsets of start and stop; boards as drawn on the first day, and gaps.
    #[track_caller]
    fn moved(runs: &[[(i64, i64); 2]], boards: &[&str], gaps: &[(i64, i64)]) {
        let mut phone = Phone::new("a");
        for [start, stop] in runs {
            phone.offset = Offset::minutes(start.1).unwrap();
            let run = phone.start(start.0, "saw", On::Nothing);
            phone.offset = Offset::minutes(stop.1).unwrap();
            phone.stop(stop.0, run);
        }
        phone.offset = Offset::UTC;
        let line = told(&phone, 0, 1_430);
        assert_eq!(shown(&line), boards);
        let shown: Vec<_> = line.gaps.iter().map(|gap| (gap.from.as_minutes(), gap.to.as_minutes())).collect();
        assert_eq!(shown, gaps);
        for (board, [start, stop]) in line.boards.iter().zip(runs) {
            assert_eq!(board.whole.to.minus(board.whole.from), Span::minutes(stop.0 - start.0), "as long as it was");
            assert_eq!(line.wall(board.whole.from).offset.as_minutes(), i16::try_from(start.1).unwrap(), "by the clock of its place");
        }
    }

    #[test]
    fn all_is_drawn_as_long_as_it_was_whatever_the_clocks_did() {
        // 01:00 EST to 04:00 EDT is two hours; the next begins at once, by the new clock.
        let spring = [[(360, -300), (480, -240)], [(480, -240), (540, -240)]];
        moved(&spring, &["saw 60-180 Measured ||", "saw 180-240 Measured ||"], &[]);
        // Stopped at 01:30 EST, begun again at 04:30 EDT: two hours went by.
        moved(
            &[[(360, -300), (390, -300)], [(510, -240), (570, -240)]],
            &["saw 60-90 Measured ||", "saw 210-270 Measured ||"],
            &[(90, 210)],
        );
        // A drive from 08:00 to 09:30 by the clock of the fair, one zone to the west.
        moved(&[[(480, 0), (630, -60)]], &["saw 480-630 Measured ||"], &[]);
        // 01:30 EDT to 01:10 EST is forty minutes; 02:10 EST is an hour later, and so is what comes next.
        let autumn = [[(330, -240), (370, -300)], [(430, -300), (490, -300)]];
        moved(&autumn, &["saw 90-130 Measured ||", "saw 190-250 Measured ||"], &[(130, 190)]);
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
