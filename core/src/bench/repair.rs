//! The forgotten stop: when a run looks wrong, and which end to propose. It is asked, never imposed, and blocks no start.
//!
//! The choice of the end is that of the trade book, section 5; the spans named [J] are our judgement.

use super::Kind;
use super::run::Run;
use crate::quantity::{Listed, order_by_key};
use crate::quantity::{Moment, Span, Wall};

/// What may speak for an end. Each is missing when it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Known {
    /// 80 in 100 earlier runs of this operation were no longer than this; none of fewer than three.
    pub usual: Option<Span>,
    /// Batch pace x pieces left at the start.
    pub batch: Option<Span>,
    /// What was left at the start of what the operation was planned to take.
    pub planned: Option<Span>,
    /// The last act on the job after the start.
    pub last_act: Option<Moment>,
    /// The next start of the same person.
    pub next_start: Option<Moment>,
    /// When the workshop closes on that day.
    pub closing: Option<Moment>,
}

/// A run longer than this is no working day without a doubt: a clock time that makes one is asked about [J].
pub const DAY_MOST: Span = Span::minutes(12 * 60);

/// A quiet time as long as that is a night that was slept [J].
const NIGHT_LEAST: Span = Span::minutes(5 * 60);

/// Why this end is proposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Because {
    LastAct,
    /// As long as 80 in 100 earlier runs.
    Usual,
    Batch,
    NextStart,
    Closing,
    /// As long as was left of what was planned.
    Planned,
    /// Nothing was known but the kind of work.
    Default,
}

/// An end to offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Proposed {
    pub at: Moment,
    pub because: Because,
}

/// How long a run lasts while nothing is known: an hour, half an hour at the desk [J].
pub fn default_span(kind: Kind) -> Span {
    match kind {
        Kind::Office => Span::minutes(30),
        Kind::Fetch | Kind::Make | Kind::Sell | Kind::Deliver => Span::minutes(60),
    }
}

/// 80 in 100 of past runs were no longer than this, by nearest rank: the value at place ceil(0.8 n).
pub fn usual(mut past: Vec<Span>) -> Option<Span> {
    order_by_key(&mut past, |span| *span);
    usual_in_order(&past)
}

fn usual_in_order(past: &[Span]) -> Option<Span> {
    let rank = past.len().checked_mul(4)?.div_ceil(5);
    past.get(rank.checked_sub(1)?).copied()
}

/// Fewer earlier runs say nothing of what is usual [J].
const HISTORY_LEAST: usize = 3;

/// What is usual by the history of an operation; none before its third run.
pub fn by_history(mut past: Vec<Span>) -> Option<Span> {
    order_by_key(&mut past, |span| *span);
    by_history_in_order(&past)
}

/// The same of runs in order of how long they lasted.
pub fn by_history_in_order(past: &[Span]) -> Option<Span> {
    if past.len() < HISTORY_LEAST { None } else { usual_in_order(past) }
}

/// The nearest whole minute, half of one up.
fn to_the_minute(span: Span) -> Span {
    Span::minutes(span.as_ms().saturating_add(30_000).div_euclid(60_000))
}

/// The end to propose: the later of the last act and the earliest of what history, batch, next start and closing time say.
/// Without history the last act, else what was left of the plan, of a longer one than the default up to closing time; without a plan the default.
/// Never the start itself, nor after the next start, nor after now.
pub fn proposed((start, kind): (Moment, Kind), known: &Known, now: Moment) -> Proposed {
    let end = |at, because| Proposed { at, because };
    let after = |at: &Moment| start < *at;
    let last_act = known.last_act.filter(after).map(|at| end(at, Because::LastAct));
    let limit = known.next_start.filter(after).map(|at| end(at, Because::NextStart));
    // To the minute, as it is said: the clock of the end is that of the start and so much.
    let lasted = |span: Option<Span>, because| span.map(|span| end(start.plus(to_the_minute(span)), because)).filter(|end| after(&end.at));
    let history = [lasted(known.usual, Because::Usual), lasted(known.batch, Because::Batch)].into_iter().flatten().min_by_key(|e| e.at);
    let expected = history.map(|history| {
        let closing = known.closing.filter(after).map(|at| end(at, Because::Closing));
        [Some(history), limit, closing].into_iter().flatten().min_by_key(|e| e.at).unwrap_or(history)
    });
    let found = match (last_act, expected) {
        (Some(act), Some(expected)) if act.at < expected.at => expected,
        (Some(act), _) => act,
        (None, Some(expected)) => expected,
        (None, None) => {
            let guess = end(start.plus(default_span(kind)), Because::Default);
            // Where the workshop closes within the guess, the guess is the least of a longer plan.
            let closing = known.closing.filter(after).map(|at| if guess.at < at { end(at, Because::Closing) } else { guess });
            let planned = lasted(known.planned.filter(|span| PLANNED_LEAST <= *span), Because::Planned);
            planned.map_or(guess, |planned| closing.filter(|closing| closing.at < planned.at).unwrap_or(planned))
        }
    };
    let found = limit.filter(|limit| limit.at < found.at).unwrap_or(found);
    end(found.at.min(now).max(start.plus(Span::minutes(1))), found.because)
}

/// Less than so much left of a plan says nothing of when a run ended [J].
const PLANNED_LEAST: Span = Span::minutes(15);

/// Whether a run looks like a forgotten stop. With a history: it lasted longer than twice what is usual, and the default longer
/// than usual; without: longer than three times the default, and than what was left of its plan and half as much again, as plans are mostly
/// too short. And nothing was done on its job for as long as a usual run lasts,
/// a quarter of an hour at least [J].
pub fn looks_wrong(run: &Run, known: &Known, now: Moment) -> bool {
    may_look_wrong(run, now) && is_in_doubt(run, known, run.end(now))
}

/// The last act that speaks for an end: the first of the day on which the run began and within a working day of its start does, and its first piece,
/// at a stall each of them, and so does any that was made before the run looked wrong, or within a working day and no night after the one before
/// it, or after the start: who works past midnight notes pieces then. Who noted one, was away for as long as a night and is asked by then has not
/// answered by noting the next. A tap of the next morning after a quiet night says no more than none. What the maker said is right does. Who puts
/// right what is going on is at it; once the run looks wrong that answers another question, and speaks for no end [J].
pub fn last_act(run: &Run, known: &Known, acts: impl Iterator<Item = Moment>) -> Option<Moment> {
    let mut acts = acts.listed();
    order_by_key(&mut acts, |at| *at);
    let (mut known, right) = (Known { last_act: None, ..*known }, run.right);
    for at in acts {
        let in_doubt = || is_in_doubt(run, &noted(run, &known), at);
        if run.put_right.contains(&at) && in_doubt() {
            continue;
        }
        let goes_on = run.started.at.until(at) <= DAY_MOST && known.last_act.unwrap_or(run.started.at).until(at) < NIGHT_LEAST;
        if right.is_none_or(|right| right < at) && !goes_on && !speaks_for_its_day(run, &known, at) && in_doubt() {
            break;
        }
        known.last_act = Some(at);
    }
    known.last_act
}

/// As known, the start standing for an act where there is none: a later act proves no more than three quiet hours at a stall.
fn noted(run: &Run, known: &Known) -> Known {
    Known { last_act: known.last_act.or(Some(run.started.at)), ..*known }
}

/// What is noted on the date on which a run began speaks for the hours before it where nothing was noted yet, and so does its first piece, whatever
/// else was: who makes one thing all day notes it at the end. At a stall hours pass between sales [J].
fn speaks_for_its_day(run: &Run, known: &Known, at: Moment) -> bool {
    is_of_its_day(run, at) && (known.last_act.is_none() || run.work.kind == Kind::Sell || is_first_piece(run, at))
}

/// The first piece that was noted of a run; what is put to wait is noted as done.
fn is_first_piece(run: &Run, at: Moment) -> bool {
    run.notches.iter().map(|notch| notch.at).min() == Some(at)
}

/// On the date on which a run began, by the clock of that place, and no more than a working day after its start.
fn is_of_its_day(run: &Run, at: Moment) -> bool {
    run.started.at.until(at) <= DAY_MOST && Wall::new(at, run.started.offset).day() == run.started.day()
}

/// Whether it looked wrong at a moment, by the acts up to then.
fn is_in_doubt(run: &Run, known: &Known, end: Moment) -> bool {
    let default = default_span(run.work.kind);
    let (most, quiet) = match known.usual {
        Some(usual) => (usual.times(2).max(usual.plus(default)), usual.max(Span::minutes(15))),
        None => (
            default.times(3).max(half_again(known.planned.unwrap_or_default())),
            quiet_most(run.work.kind, is_of_its_day(run, end) && known.last_act.is_none()),
        ),
    };
    let last = known.last_act.map_or(run.started.at, |act| act.max(run.started.at));
    most < run.started.at.until(end) && quiet < last.until(end)
}

/// How long nothing is noted while nothing is known of how long a run lasts: the default, and at a stall, where nobody may buy for long, three
/// hours; before anything was noted there no less than a working day of that date, as a market without a sale is no stop that was forgotten [J].
fn quiet_most(kind: Kind, nothing_yet: bool) -> Span {
    match (kind, nothing_yet) {
        (Kind::Sell, true) => DAY_MOST,
        (Kind::Sell, false) => default_span(kind).times(3),
        _ => default_span(kind),
    }
}

fn half_again(span: Span) -> Span {
    span.plus(Span::ms(span.as_ms() / 2))
}

/// Whether it is worth asking history at all: nobody has answered for the run, and it lasted longer than the default.
pub fn may_look_wrong(run: &Run, now: Moment) -> bool {
    let answered = run.is_confirmed() || run.recalled || run.mended_stop.is_some();
    !answered && default_span(run.work.kind) < run.worked(now)
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, run, wall};
    use super::*;

    #[test]
    fn usual_is_the_nearest_rank_of_80_in_100() {
        for (past, rank) in [(vec![], None), (vec![7], Some(7)), (vec![9, 1], Some(9)), (vec![5, 1, 4, 2, 3], Some(4))] {
            assert_eq!(usual(past.iter().map(|m| Span::minutes(*m)).collect()), rank.map(Span::minutes), "{past:?}");
        }
        assert_eq!(usual((1..=10).map(Span::minutes).collect()), Some(Span::minutes(8)));
    }

    const NONE: [Option<i64>; 5] = [None; 5];

    /// Usual and batch in minutes from the start at 680; the moments as minutes of the day. Now is 872.
    #[track_caller]
    fn check([usual, batch, last_act, next_start, closing]: [Option<i64>; 5], end: i64, because: Because) {
        let (usual, batch) = (usual.map(Span::minutes), batch.map(Span::minutes));
        let (last_act, next_start, closing) = (last_act.map(at), next_start.map(at), closing.map(at));
        let known = Known { usual, batch, last_act, next_start, closing, planned: None };
        assert_eq!(proposed((at(680), Kind::Make), &known, at(872)), Proposed { at: at(end), because });
    }

    #[test]
    fn the_glue_up_over_lunch_ends_with_its_last_act() {
        check([None, None, Some(727), None, None], 727, Because::LastAct); // 11:20 to 12:07: 47 of 192 minutes
    }

    #[test]
    fn the_later_of_the_last_act_and_what_was_to_be_expected() {
        check([Some(50), None, Some(727), None, None], 730, Because::Usual);
        check([Some(40), None, Some(727), None, None], 727, Because::LastAct);
        check([Some(50), Some(45), None, None, None], 725, Because::Batch);
        check([None, Some(45), None, None, None], 725, Because::Batch);
        check([Some(90), None, None, Some(750), None], 750, Because::NextStart);
        check([Some(90), None, None, None, Some(740)], 740, Because::Closing);
        check([Some(90), None, None, None, Some(600)], 770, Because::Usual); // closed before the start: an evening
        check([Some(20), None, Some(760), Some(750), None], 750, Because::NextStart); // no minute is paid twice
    }

    /// Seven pieces at 21 min 25.71 s each are 2 h 30, and no second less by the clock.
    #[test]
    fn an_end_is_so_many_whole_minutes_after_the_start() {
        let batch = Some(Span::ms(8_999_970));
        let known = Known { usual: None, batch, last_act: None, next_start: None, closing: None, planned: None };
        assert_eq!(proposed((at(680), Kind::Make), &known, at(872)).at, at(830));
    }

    #[test]
    fn without_history_the_last_act_else_the_default() {
        check(NONE, 740, Because::Default);
        check([None, None, None, Some(700), None], 700, Because::NextStart);
        check([None, None, Some(600), None, None], 740, Because::Default); // an act before the start says nothing
        check([None, None, Some(700), None, Some(690)], 700, Because::LastAct);
    }

    /// Planned in minutes, closing as a minute of the day.
    #[test]
    fn what_was_left_of_the_plan_is_not_cut_by_a_guess() {
        let end = |planned: i64, closing: Option<i64>| {
            let known = Known { planned: Some(Span::minutes(planned)), closing: closing.map(at), ..Known::default() };
            let found = proposed((at(680), Kind::Make), &known, at(2_000));
            (found.at, found.because)
        };
        assert_eq!(end(150, None), (at(830), Because::Planned));
        assert_eq!(end(30, None), (at(710), Because::Planned), "a short plan says more than an hour of ours");
        assert_eq!(end(0, None), (at(740), Because::Default), "nothing was left of it");
        assert_eq!(end(30, Some(700)), (at(710), Because::Planned));
        assert_eq!(end(150, Some(800)), (at(800), Because::Closing));
        assert_eq!(end(150, Some(720)), (at(740), Because::Default));
        assert_eq!(end(150, Some(600)), (at(830), Because::Planned), "closed before the start: an evening");
    }

    #[test]
    fn never_the_start_itself_and_never_after_now() {
        check([None, None, Some(680), None, None], 740, Because::Default);
        check([Some(0), None, None, None, None], 740, Because::Default);
        check([None, None, None, Some(680), None], 740, Because::Default);
        check([Some(500), None, None, None, None], 872, Because::Usual);
        let soon = proposed((at(680), Kind::Make), &Known::default(), at(680));
        assert_eq!(soon.at, at(681));
    }

    /// From 21:28, by minutes after midnight of that day; what speaks for its end. Trimming was planned for 90 minutes.
    #[test]
    fn pieces_noted_past_midnight_speak_for_an_end_and_those_of_the_morning_do_not() {
        let check = |acts: &[i64], last: Option<i64>| {
            let known = Known { planned: Some(Span::minutes(90)), ..Known::default() };
            let found = last_act(&run(1, 1_288), &known, acts.iter().map(|minute| at(*minute)));
            assert_eq!(found, last.map(at), "{acts:?}");
        };
        check(&[1_440 + 48, 1_440 + 68], Some(1_440 + 68));
        check(&[1_440 + 48, 1_440 + 68, 1_440 + 480], Some(1_440 + 68));
        check(&[1_440 + 480], None);
        check(&[1_400, 1_440 + 480], Some(1_400));
    }

    #[track_caller]
    fn wrong(lasted: i64, usual: Option<i64>, last_act: Option<i64>, wrong: bool) {
        let known = Known { usual: usual.map(Span::minutes), last_act: last_act.map(at), ..Known::default() };
        assert_eq!(looks_wrong(&run(1, 0), &known, at(lasted)), wrong, "{lasted} {usual:?} {last_act:?}");
    }

    #[test]
    fn a_run_looks_wrong_when_it_is_long_and_quiet() {
        wrong(192, None, Some(47), true);
        wrong(180, None, None, false);
        wrong(181, None, None, true);
        wrong(300, None, Some(290), false); // notches all the time
        wrong(200, Some(100), None, false);
        wrong(201, Some(100), None, true);
        wrong(65, Some(5), None, false);
        wrong(66, Some(5), None, true);
        wrong(201, Some(100), Some(101), false);
        wrong(90, Some(5), Some(75), false);
        wrong(91, Some(5), Some(75), true);
    }

    /// A day at a market of nine hours, and not one sale: nobody forgot anything. After twelve it may be; who sold once, and nothing for three hours,
    /// may have packed up. Work at the bench is asked about as ever.
    #[test]
    fn a_stall_without_a_sale_is_asked_about_in_the_evening() {
        let asked = |kind: Kind, sold: Option<i64>, lasted: i64| {
            let mut run = run(1, 0);
            run.work.kind = kind;
            looks_wrong(&run, &Known { last_act: sold.map(at), ..Known::default() }, at(lasted))
        };
        assert_eq!([240, 540, 720, 721].map(|lasted| asked(Kind::Sell, None, lasted)), [false, false, false, true]);
        assert_eq!([240, 241].map(|lasted| asked(Kind::Sell, Some(60), lasted)), [false, true]);
        assert!(asked(Kind::Make, None, 240));
    }

    /// A day at a market with a sale now and then, the last 94 minutes before it was packed up: not forgotten. Five hours without one may be.
    #[test]
    fn a_stall_may_be_quiet_for_long() {
        let sells = |quiet: i64| {
            let mut stall = run(1, 0);
            stall.work.kind = Kind::Sell;
            looks_wrong(&stall, &Known { last_act: Some(at(570 - quiet)), ..Known::default() }, at(570))
        };
        assert_eq!([94, 180, 181, 300].map(sells), [false, false, true, true]);
    }

    #[test]
    fn a_run_within_its_plan_does_not_look_wrong() {
        let known = Known { planned: Some(Span::minutes(240)), ..Known::default() };
        assert_eq!([181, 240, 360, 361].map(|lasted| looks_wrong(&run(1, 0), &known, at(lasted))), [false, false, false, true]);
    }

    #[test]
    fn two_runs_are_no_history() {
        let past = |n: i64| (0..n).map(|_| Span::minutes(45)).collect();
        assert_eq!([0, 1, 2, 3].map(|n| by_history(past(n))), [None, None, None, Some(Span::minutes(45))]);
    }

    #[test]
    fn what_was_answered_is_not_asked_again() {
        let answered = Run { right: Some(at(500)), stopped: Some(wall(500)), ..run(1, 0) };
        assert!(!looks_wrong(&answered, &Known::default(), at(500)));
    }
}
