//! A run: one stretch of one operation by one person, started, stopped, or still running.
//!
//! Knows no clock: every moment arrives as an argument. What was worked is read from two facts, never counted.
//! Carries invariant 6.

use super::heads::Head;
use super::{Kind, Mender, Shares, Source, Stage};
use crate::quantity::{Count, Id, Listed, Moment, Money, Offset, Span, Wall};

/// A clock set back by no more than this is a clock that was put right.
pub const UNNOTICED: Span = Span::minutes(1);

/// What time is spent on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum On {
    Job(Id),
    Haul(Id),
    /// Sharpening, tidying, learning.
    Nothing,
}

/// What is done, on what, by whom.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Work {
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    pub on: On,
    /// `None` for the maker whose book it is.
    pub person: Option<Id>,
    pub rework: bool,
}

/// Pieces done at one moment; the id is the entry's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Notch {
    pub id: Id,
    pub at: Moment,
    pub n: Count,
}

/// Where another run of the same person ends this one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    pub by: Id,
    pub at: Moment,
    /// Of the place where the other began.
    pub offset: Offset,
    /// The other's start was said, not stamped.
    pub said: bool,
    /// Both belong to one switch: nothing to mend.
    pub switched: bool,
}

/// Why a run is listed for mending.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doubt {
    /// A later start of the same person ended it, on another phone.
    EndedElsewhere { by: Id },
    /// What was written down afterwards overlaps a run; the overlap is not counted.
    Overlaps { run: Id },
    /// The clock was set back: a stamp was lifted to the last one.
    ClockSetBack,
    /// It lasted longer than a run may: what is beyond is not counted.
    TooLong,
}

/// One stretch of work.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    pub id: Id,
    pub work: Work,
    /// The raw stamp of the tap that began it, or of the writing down.
    pub tapped: Wall,
    /// The raw stamp of the stop.
    pub tapped_stop: Option<Wall>,
    /// When work began: stamped, said or mended.
    pub started: Wall,
    /// When work ended, stamped or mended; `None` while it runs.
    pub stopped: Option<Wall>,
    pub recalled: bool,
    pub mended_start: Option<Mender>,
    pub mended_stop: Option<Mender>,
    /// When the maker last said that it is right as it stands. While it runs that is a word on the time up to then.
    pub right: Option<Moment>,
    /// The stop belongs to a switch.
    pub switched: bool,
    /// A stamp was lifted because the clock was set back.
    pub lifted: bool,
    pub cut: Option<Cut>,
    /// Recalled time that overlapped this run was not counted.
    pub overlaps: Option<Id>,
    pub heads: Vec<Head>,
    pub notches: Vec<Notch>,
    /// When pieces of it were put to wait.
    pub clamped: Vec<Moment>,
    /// When what it is, or when it began, was put right.
    pub put_right: Vec<Moment>,
}

impl Run {
    /// Work begins; `started` is earlier than the tap where the start was forgotten.
    pub fn start(id: Id, work: Work, (tapped, started): (Wall, Wall)) -> Run {
        Run {
            id,
            work,
            tapped,
            tapped_stop: None,
            started,
            stopped: None,
            recalled: false,
            mended_start: None,
            mended_stop: None,
            right: None,
            switched: false,
            lifted: false,
            cut: None,
            overlaps: None,
            heads: vec![],
            notches: vec![],
            clamped: vec![],
            put_right: vec![],
        }
    }

    /// What of it lies before a moment within it, as if it had been stopped then, and that were right.
    pub fn up_to(&self, at: Moment) -> Run {
        let stop = Some(Wall::new(at, self.started.offset));
        let notches = self.notches.iter().filter(|notch| notch.at <= at).copied().listed();
        let heads = self.heads.iter().filter(|head| head.from < at).copied().listed();
        Run { stopped: stop, tapped_stop: stop, right: Some(at), cut: None, notches, heads, ..self.clone() }
    }

    /// The rest of it.
    pub fn from(&self, at: Moment) -> Run {
        let notches = self.notches.iter().filter(|notch| at < notch.at).copied().listed();
        let heads = self.heads.iter().filter(|head| head.to.is_none_or(|to| at < to)).copied().listed();
        Run { started: Wall::new(at, self.started.offset), notches, heads, ..self.clone() }
    }

    pub fn is_running(&self) -> bool {
        self.stopped.is_none() && self.cut.is_none()
    }

    /// It is over, and the maker said after its end that it is right as it stands.
    pub fn is_confirmed(&self) -> bool {
        let ends = self.stopped.map(|stop| stop.at).into_iter().chain(self.cut.map(|cut| cut.at));
        self.right.zip(ends.min()).is_some_and(|(right, end)| end <= right)
    }

    /// The last that was done in it, else its start.
    pub fn last_done(&self) -> Moment {
        let done = self.notches.iter().map(|notch| notch.at).chain(self.clamped.iter().copied());
        done.fold(self.started.at, Moment::max)
    }

    /// While it goes on, the last that was done in it, where the clock is before that: it was set back.
    pub fn ahead_of(&self, now: Moment) -> Option<Moment> {
        Some(self.last_done()).filter(|done| self.is_running() && UNNOTICED < now.until(*done))
    }

    /// The end as it counts: the stop, or now, or what was done by a clock that was set back since; never after the next start of the same person, nor 48 h after the start.
    pub fn end(&self, now: Moment) -> Moment {
        let start = self.started.at;
        let own = self.stopped.map_or_else(|| now.max(self.last_done()), |stop| stop.at);
        let cut = self.cut.map_or(own, |cut| cut.at.min(own));
        cut.min(start.plus(Span::RUN_MOST)).max(start)
    }

    /// The end with the offset of the place where it was.
    pub fn end_wall(&self, now: Wall) -> Wall {
        let offset = match self.stopped {
            Some(stop) => stop.offset,
            None => self.cut.map_or(now.offset, |cut| cut.offset),
        };
        Wall::new(self.end(now.at), offset)
    }

    /// Time worked so far, seen from `now`. Never less than nothing.
    pub fn worked(&self, now: Moment) -> Span {
        self.started.at.until(self.end(now))
    }

    /// Time worked within a stretch.
    pub fn worked_within(&self, from: Moment, to: Moment, now: Moment) -> Span {
        self.started.at.max(from).until(self.end(now).min(to))
    }

    /// Own time and that of the heads that worked along.
    pub fn labour(&self, now: Moment) -> Span {
        self.labour_by(Moment::at(i64::MAX), now)
    }

    /// The same up to a moment.
    pub fn labour_by(&self, at: Moment, now: Moment) -> Span {
        let (start, end) = (self.started.at, self.end(now).min(at));
        let heads = self.heads.iter().map(|head| head.within(start, end));
        start.until(end).plus(Span::sum(heads))
    }

    /// Somebody worked along.
    pub fn is_helped(&self, now: Moment) -> bool {
        self.worked(now) < self.labour(now)
    }

    /// The labour of each head that worked along for pay, with what it is paid per hour.
    pub fn paid(&self, now: Moment) -> Vec<(Option<Id>, Money, Span)> {
        let (start, end) = (self.started.at, self.end(now));
        self.heads.iter().filter_map(|head| Some((head.person, head.pay?, head.within(start, end)))).listed()
    }

    /// Heads at work at a moment, the person's own too.
    pub fn heads_at(&self, at: Moment) -> Count {
        let along = self.heads.iter().filter(|head| head.is_there(at)).fold(0, |sum: Count, head| sum.saturating_add(head.n));
        along.saturating_add(1)
    }

    /// The most heads at work at one moment of a stretch, the person's own too; leaving one out.
    pub fn heads_most(&self, (from, to): (Moment, Moment), but: Option<Id>) -> Count {
        let others = || self.heads.iter().filter(|head| Some(head.id) != but);
        let at = |at: Moment| others().filter(|head| head.is_there(at)).fold(1, |sum: Count, head| sum.saturating_add(head.n));
        let came = others().map(|head| head.from).filter(|came| from < *came && *came < to);
        std::iter::once(from).chain(came).map(at).max().unwrap_or(1)
    }

    /// The stretches of the run by where their minutes come from. What lies beyond the stamps is corrected, whether it was said with the
    /// tap or put right later; a run of which an end was put between its stamps is corrected as a whole, for nobody clocked that end.
    pub fn stretches(&self, now: Moment) -> [(Source, Moment, Moment); 3] {
        let (start, end) = (self.started.at, self.end(now));
        let from = self.tapped.at.max(start).min(end);
        let stamp = self.tapped_stop.filter(|_| self.mended_stop.is_some()).map_or(end, |stop| stop.at);
        let to = stamp.max(from).min(end);
        match self.whole_source() {
            Some(source) => [(source, start, end), (source, end, end), (source, end, end)],
            None => [(Source::Corrected, start, from), (Source::Measured, from, to), (Source::Corrected, to, end)],
        }
    }

    fn whole_source(&self) -> Option<Source> {
        let said_end = self.cut.is_some_and(|cut| cut.said) && self.stopped.is_none_or(|stop| self.cut.is_some_and(|cut| cut.at < stop.at));
        let began_later = self.mended_start.is_some() && self.tapped.at < self.started.at;
        let is_within = |stop: Wall| self.tapped_stop.is_none_or(|stamp| stop.at < stamp.at);
        let ended_sooner = self.mended_stop.is_some() && self.stopped.is_some_and(is_within);
        match self {
            Run { recalled: true, .. } => Some(Source::Recalled),
            _ if said_end || began_later || ended_sooner => Some(Source::Corrected),
            _ => None,
        }
    }

    /// The minutes by where they come from.
    pub fn shares(&self, now: Moment) -> Shares {
        self.stretches(now).into_iter().fold(Shares::default(), |sum, (source, from, to)| sum.with(source, from.until(to)))
    }

    /// Pieces done in it.
    pub fn done(&self) -> Count {
        self.notches.iter().fold(0, |sum, notch| sum.saturating_add(notch.n))
    }

    /// Pieces that were tapped while the clock ran on after the end it has now; not those that were noted with that end.
    pub fn done_after_its_end(&self) -> Count {
        let (Some(stop), Some(tapped)) = (self.stopped, self.tapped_stop) else { return 0 };
        let after = self.notches.iter().filter(|notch| stop.at < notch.at && notch.at < tapped.at);
        after.fold(0, |sum: Count, notch| sum.saturating_add(notch.n))
    }

    /// Why it is listed for mending; nothing once the maker mended or confirmed it.
    pub fn doubts(&self, now: Moment) -> Vec<Doubt> {
        let confirmed = self.is_confirmed();
        // What was right of a run that goes on is so until it ends.
        let right = confirmed || (self.is_running() && self.right.is_some());
        let settled = right || self.mended_stop.is_some();
        let ended = self.cut.filter(|cut| !cut.switched).map(|cut| Doubt::EndedElsewhere { by: cut.by });
        let too_long = Span::RUN_MOST < self.started.at.until(self.stopped.map_or(now, |stop| stop.at));
        let all = [
            ended.filter(|_| !confirmed),
            self.overlaps.filter(|_| !right).map(|run| Doubt::Overlaps { run }),
            (self.lifted && !settled).then_some(Doubt::ClockSetBack),
            (too_long && self.cut.is_none() && !confirmed).then_some(Doubt::TooLong),
        ];
        all.into_iter().flatten().listed()
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, run, wall};
    use super::*;

    #[track_caller]
    fn check(started: i64, stopped: Option<i64>, now: i64, worked: i64) {
        let mut run = run(1, started);
        run.stopped = stopped.map(wall);
        assert_eq!(run.worked(at(now)), Span::minutes(worked));
        assert_eq!(run.shares(at(now)).total(), run.worked(at(now)), "shares sum to the whole");
    }

    #[test]
    fn inv06_running_is_read_from_the_clock() {
        check(0, None, 0, 0);
        check(0, None, 60, 60); // phone asleep for an hour
        check(0, Some(5), 90, 5);
    }

    #[test]
    fn inv06_time_is_never_negative_and_never_over_48_hours() {
        check(90, None, 10, 0);
        check(90, Some(10), 200, 0);
        check(0, None, 3_000, 2_880);
        check(0, Some(2_880), 9_000, 2_880);
        check(0, Some(2_881), 9_000, 2_880);
    }

    #[test]
    fn a_run_over_48_hours_is_listed_for_mending() {
        let mut long = run(1, 0);
        assert_eq!(long.doubts(at(2_880)), []);
        assert_eq!(long.doubts(at(2_881)), [Doubt::TooLong]);
        long.stopped = Some(wall(2_900));
        assert_eq!(long.doubts(at(0)), [Doubt::TooLong]);
        long.right = Some(at(2_899));
        assert_eq!(long.doubts(at(0)), [Doubt::TooLong], "said while it went on");
        long.right = Some(at(2_900));
        assert_eq!(long.doubts(at(0)), []);
    }

    #[test]
    fn each_minute_says_where_it_comes_from() {
        let shares = |run: &Run| {
            let s = run.shares(at(60));
            (s.measured.as_minutes(), s.corrected.as_minutes(), s.recalled.as_minutes())
        };
        let mut said = run(1, 0);
        said.tapped = wall(15);
        assert_eq!(shares(&said), (45, 15, 0), "begun 15 minutes before the tap");
        let mut mended = run(1, 0);
        (mended.stopped, mended.mended_stop) = (Some(wall(47)), Some(Mender::Proposed));
        assert_eq!(shares(&mended), (0, 47, 0));
        // Clocked from 30 to 120: what either end was put beyond its stamp is corrected, the rest was clocked all the same.
        let mut clocked = run(1, 30);
        (clocked.stopped, clocked.tapped_stop) = (Some(wall(120)), Some(wall(120)));
        let put = |start: Option<i64>, stop: Option<i64>| {
            let mut run = clocked.clone();
            if let Some(start) = start {
                (run.started, run.mended_start) = (wall(start), Some(Mender::Typed));
            }
            if let Some(stop) = stop {
                (run.stopped, run.mended_stop) = (Some(wall(stop)), Some(Mender::Typed));
            }
            shares(&run)
        };
        assert_eq!(put(None, None), (90, 0, 0));
        assert_eq!(put(Some(0), None), (90, 30, 0), "as if it had been said with the tap");
        assert_eq!(put(None, Some(150)), (90, 30, 0));
        assert_eq!(put(Some(0), Some(150)), (90, 60, 0));
        // An end within the stamps is one that nobody clocked: nothing of the run lies between two stamps that hold.
        assert_eq!(put(Some(40), None), (0, 80, 0));
        assert_eq!(put(None, Some(100)), (0, 70, 0));
        assert_eq!(put(Some(0), Some(100)), (0, 100, 0));
        let mut recalled = run(1, 0);
        (recalled.stopped, recalled.recalled) = (Some(wall(30)), true);
        assert_eq!(shares(&recalled), (0, 0, 30));
        let mut cut = run(1, 0);
        cut.cut = Some(Cut { by: recalled.id, at: at(20), offset: Offset::UTC, said: true, switched: true });
        assert_eq!(shares(&cut), (0, 20, 0), "ended by a start that was said");
    }

    /// Clocked from 0 to 60, put right to have stopped at 20; pieces at 15, 30 and 59, with the stop, and one added the day after.
    #[test]
    fn pieces_that_a_mended_stop_left_behind_are_known() {
        let mut run = run(1, 0);
        (run.stopped, run.tapped_stop) = (Some(wall(60)), Some(wall(60)));
        run.notches = [15, 30, 59, 60, 1_500].map(|minute| Notch { id: run.id, at: at(minute), n: 1 }).to_vec();
        assert_eq!(run.done_after_its_end(), 0);
        run.stopped = Some(wall(20));
        assert_eq!(run.done_after_its_end(), 2);
    }

    #[test]
    fn helping_heads_multiply_labour_only_while_they_are_there() {
        let mut run = run(1, 0);
        run.stopped = Some(wall(60));
        run.heads = vec![
            Head { id: run.id, n: 1, person: None, pay: None, from: at(10), to: Some(at(40)) },
            Head { id: run.id, n: 1, person: None, pay: None, from: at(50), to: None },
        ];
        assert_eq!((run.worked(at(99)), run.labour(at(99))), (Span::minutes(60), Span::minutes(100)));
        assert_eq!([5, 10, 39, 40, 55].map(|m| run.heads_at(at(m))), [1, 2, 2, 1, 2]);
    }
}
