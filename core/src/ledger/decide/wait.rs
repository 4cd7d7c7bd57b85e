//! Orders about waits: clamped, begun, taken off, put right; what is usual; quiet hours.

use super::Act;
use super::bench::{at_most, found, named, on_known};
use crate::bench::On;
use crate::bench::wait::of_a_wait;
use crate::ledger::kind::bench::PiecesDone;
use crate::ledger::kind::wait as kind;
use crate::ledger::{Book, fold};
use crate::quantity::{Clock, Count, Id, Key, Span};
use crate::refusal::{Answer, Refusal};

/// How long pieces wait, and for what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Laid {
    pub what: Key,
    /// The glue or the finish.
    pub stuff: Option<Key>,
    pub span: Span,
}

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum WaitCommand {
    /// Pieces of a run are done and wait; the run goes on.
    Clamp {
        run: Id,
        n: Count,
        laid: Laid,
    },
    /// Something waits that no run is counted for.
    Begin {
        op: String,
        job: Option<Id>,
        n: Count,
        laid: Laid,
    },
    /// Taken off, before their time or after it.
    End {
        waits: Vec<Id>,
    },
    /// A wait lasts otherwise, from its beginning.
    Mend {
        wait: Id,
        span: Span,
    },
    SetOperation(kind::OperationWaitSet),
    SetUsual(kind::UsualWaitSet),
    SetWarmth(kind::WarmthSet),
    /// When no noise is made; none lifts it.
    SetQuiet {
        hours: Option<(Clock, Clock)>,
    },
    SetLoud(kind::OperationLoudSet),
}

pub(super) fn decide(book: &Book, command: &WaitCommand, act: &mut Act) -> Answer<()> {
    match command {
        WaitCommand::Clamp { run, n, laid } => clamp(book, *run, (*n, laid), act)?,
        WaitCommand::Begin { op, job, n, laid } => {
            named(op)?;
            on_known(book, job.map_or(On::Nothing, On::Job))?;
            some(*n)?;
            began(op.clone(), (*job, None), (*n, laid), act)?;
        }
        WaitCommand::End { waits } => end(book, waits, act)?,
        WaitCommand::Mend { wait, span } => {
            let span = of_a_wait(*span)?;
            let wait = fold::waits(book).wait(*wait).ok_or(Refusal::NotThere)?.id;
            act.add(kind::WaitMended { wait, span });
        }
        WaitCommand::SetOperation(f) => {
            named(&f.op)?;
            f.span.map_or(Ok(Span::ZERO), of_a_wait)?;
            act.add(f.clone());
        }
        WaitCommand::SetUsual(f) => {
            f.span.map_or(Ok(Span::ZERO), of_a_wait)?;
            act.add(f.clone());
        }
        WaitCommand::SetWarmth(f) => {
            act.add(f.clone());
        }
        WaitCommand::SetQuiet { hours } => {
            if let Some((from, until)) = hours
                && from == until
            {
                return Err(Refusal::QuietHoursEmpty);
            }
            act.add(kind::QuietHoursSet { from: hours.map(|hours| hours.0), until: hours.map(|hours| hours.1) });
        }
        WaitCommand::SetLoud(f) => {
            named(&f.op)?;
            act.add(f.clone());
        }
    }
    Ok(())
}

/// Counts the pieces and stamps their off time, in one act.
fn clamp(book: &Book, run: Id, (n, laid): (Count, &Laid), act: &mut Act) -> Answer<()> {
    let bench = fold::bench(book);
    let run = found(&bench, run)?;
    some(n)?;
    at_most(run.done().saturating_add(n))?;
    let job = if let On::Job(job) = run.work.on { Some(job) } else { None };
    act.add(PiecesDone { run: run.id, n });
    began(run.work.op.clone(), (job, Some(run.id)), (n, laid), act)
}

fn began(op: String, (job, run): (Option<Id>, Option<Id>), (n, laid): (Count, &Laid), act: &mut Act) -> Answer<()> {
    let Laid { what, stuff, span } = laid.clone();
    act.add(kind::WaitBegan { op, n, span: of_a_wait(span)?, what, job, run, stuff });
    Ok(())
}

fn end(book: &Book, ended: &[Id], act: &mut Act) -> Answer<()> {
    let (waits, now) = (fold::waits(book), act.now().wall.at);
    if ended.is_empty() {
        return Err(Refusal::NothingAsked);
    }
    for id in ended {
        let wait = waits.wait(*id).ok_or(Refusal::NotThere)?;
        if !wait.is_on() {
            return Err(Refusal::WaitHasEnded { wait: wait.id });
        }
        act.add(kind::WaitEnded { wait: wait.id, early: (!wait.is_over(now)).then_some(true) });
    }
    Ok(())
}

fn some(n: Count) -> Answer<()> {
    if n == 0 { Err(Refusal::NothingAsked) } else { at_most(n) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::wait::{SPAN_LEAST, SPAN_MOST, Wait};
    use crate::ledger::decide::{BookCommand, Command};
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Moment, PILE_MOST};

    fn key(text: &str) -> Key {
        Key::read(text).unwrap()
    }

    fn glue(minutes: i64) -> Laid {
        Laid { what: key("glue"), stuff: None, span: Span::minutes(minutes) }
    }

    fn order(phone: &mut Phone, minute: i64, command: WaitCommand) -> Result<Id, Refusal> {
        phone.order(minute, Command::Wait(command))
    }

    fn waits(phone: &Phone) -> Vec<Wait> {
        fold::waits(&phone.book).all().cloned().collect()
    }

    fn off(phone: &Phone) -> Vec<(Moment, bool)> {
        waits(phone).iter().map(|wait| (wait.off(), wait.is_on())).collect()
    }

    /// A phone at which five tops are being glued since minute 680.
    fn gluing() -> (Phone, Id) {
        let mut phone = Phone::new("a");
        let stands = phone.job(600, "stands");
        let run = phone.start(680, "glue tops", stands);
        (phone, run)
    }

    #[test]
    fn clamped_counts_a_piece_and_stamps_its_off_time_and_the_run_goes_on() {
        let (mut phone, run) = gluing();
        let wait = order(&mut phone, 689, WaitCommand::Clamp { run, n: 1, laid: glue(90) }).unwrap();
        order(&mut phone, 698, WaitCommand::Clamp { run, n: 1, laid: glue(90) }).unwrap();
        assert_eq!(off(&phone), [(at(779), true), (at(788), true)]);
        let bench = phone.runs();
        assert_eq!((bench.run(run).unwrap().done(), bench.run(run).unwrap().is_running()), (2, true));
        assert_eq!(waits(&phone)[0].run, Some(run));
        // Taken back whole: the piece and its wait; and put back whole.
        let act = phone.book.entry(wait).and_then(|(entry, _)| entry.act).unwrap();
        phone.take_back(699, act);
        assert_eq!((off(&phone), phone.runs().run(run).unwrap().done()), (vec![(at(788), true)], 1));
        phone.order(700, Command::Book(BookCommand::Restore { act })).unwrap();
        assert_eq!((off(&phone).len(), phone.runs().run(run).unwrap().done()), (2, 2));
    }

    /// Two tops clamped, then five by a slip; the count of the run is put right, in steps: what waits, each with its off time, and taken back.
    #[test]
    fn what_waits_follows_a_count_that_is_put_right() {
        use crate::ledger::decide::BenchCommand::DoneInAll;
        let check = |counts: &[Count], then: &[(i64, Count)]| {
            let (mut phone, run) = gluing();
            order(&mut phone, 689, WaitCommand::Clamp { run, n: 2, laid: glue(90) }).unwrap();
            order(&mut phone, 698, WaitCommand::Clamp { run, n: 5, laid: glue(90) }).unwrap();
            let shown = |phone: &Phone| waits(phone).iter().map(|wait| (wait.off(), wait.n)).collect::<Vec<_>>();
            let before = shown(&phone);
            assert_eq!(before, [(at(779), 2), (at(788), 5)]);
            let acts = counts.iter().map(|n| phone.bench(700, DoneInAll { run, n: *n }).unwrap()).collect::<Vec<_>>();
            assert_eq!(shown(&phone), then.iter().map(|(off, n)| (at(*off), *n)).collect::<Vec<_>>(), "{counts:?}");
            assert_eq!(phone.runs().run(run).unwrap().done(), *counts.last().unwrap());
            for act in acts.into_iter().rev() {
                let act = phone.book.entry(act).and_then(|(entry, _)| entry.act).unwrap_or(act);
                phone.take_back(701, act);
            }
            assert_eq!(shown(&phone), before, "{counts:?}");
        };
        check(&[4], &[(779, 2), (788, 2)]);
        check(&[2], &[(779, 2)]);
        check(&[1], &[(779, 1)]);
        check(&[4, 3], &[(779, 2), (788, 1)]);
        check(&[4, 2], &[(779, 2)]);
        check(&[8], &[(779, 2), (788, 5)]);
    }

    #[test]
    fn a_wait_is_never_work() {
        let (mut phone, run) = gluing();
        order(&mut phone, 689, WaitCommand::Clamp { run, n: 1, laid: glue(90) }).unwrap();
        phone.stop(690, run);
        let id = waits(&phone)[0].id;
        order(&mut phone, 800, WaitCommand::End { waits: vec![id] }).unwrap();
        assert_eq!(phone.minutes(900), [("glue tops".into(), 10)]);
        assert_eq!(phone.runs().of_all(at(900)).own.total(), Span::minutes(10));
    }

    #[test]
    fn a_wait_stays_until_it_is_taken_off_and_the_first_time_stands() {
        let (mut phone, _) = gluing();
        let begin = |n| WaitCommand::Begin { op: "oil".into(), job: None, n, laid: glue(100) };
        let (one, two) = (order(&mut phone, 700, begin(1)).unwrap(), order(&mut phone, 700, begin(3)).unwrap());
        let on = |phone: &Phone| fold::waits(&phone.book).on().map(|wait| wait.id).collect::<Vec<_>>();
        assert_eq!((on(&phone), fold::waits(&phone.book).wait(one).unwrap().is_over(at(9_000))), (vec![one, two], true));
        order(&mut phone, 790, WaitCommand::End { waits: vec![one] }).unwrap();
        let early = order(&mut phone, 801, WaitCommand::End { waits: vec![two] }).unwrap();
        let ended = |id| fold::waits(&phone.book).wait(id).unwrap().ended.map(|off| (off.at.at, off.early));
        assert_eq!((on(&phone), ended(one), ended(two)), (vec![], Some((at(790), true)), Some((at(801), false))));
        assert_eq!(order(&mut phone, 802, WaitCommand::End { waits: vec![one] }), Err(Refusal::WaitHasEnded { wait: one }));
        phone.take_back(803, early);
        assert_eq!(on(&phone), [two]);
        phone.order(804, Command::Book(BookCommand::Restore { act: early })).unwrap();
        assert_eq!(on(&phone), []);
    }

    #[test]
    fn a_span_is_put_right_from_the_beginning_and_the_last_word_stands() {
        let (mut phone, run) = gluing();
        let wait = order(&mut phone, 689, WaitCommand::Clamp { run, n: 1, laid: glue(90) }).unwrap();
        let last = order(&mut phone, 700, WaitCommand::Mend { wait, span: Span::minutes(60) });
        let last = last.and_then(|_| order(&mut phone, 701, WaitCommand::Mend { wait, span: Span::minutes(120) })).unwrap();
        assert_eq!((off(&phone), waits(&phone)[0].mended), (vec![(at(809), true)], 2));
        phone.take_back(702, last);
        // A calendar that holds revision 2 takes a later one only (RFC 5545, 3.8.7.4): taken back and put back are revisions too.
        assert_eq!((off(&phone), waits(&phone)[0].mended), (vec![(at(749), true)], 3));
        phone.order(703, Command::Book(BookCommand::Restore { act: last })).unwrap();
        assert_eq!((off(&phone), waits(&phone)[0].mended), (vec![(at(809), true)], 4));
        let backwards: Vec<String> = phone.book.lines().map(str::to_owned).collect();
        assert_eq!(fold::waits(&Book::of_lines(backwards.iter().rev().map(String::as_str))), fold::waits(&phone.book));
    }

    /// Whatever order the lines of two phones come in, the waits are the same.
    #[test]
    fn inv03_waits_are_the_same_in_any_order_of_arrival() {
        let (mut one, run) = gluing();
        let wait = order(&mut one, 689, WaitCommand::Clamp { run, n: 1, laid: glue(90) }).unwrap();
        let mut two = Phone::new("b");
        two.merge(&one);
        order(&mut two, 700, WaitCommand::Mend { wait, span: Span::minutes(60) }).unwrap();
        order(&mut two, 800, WaitCommand::End { waits: vec![wait] }).unwrap();
        order(&mut one, 801, WaitCommand::End { waits: vec![wait] }).unwrap();
        order(&mut one, 802, WaitCommand::SetWarmth(kind::WarmthSet { warmth: kind::Warmth::Cold })).unwrap();
        one.merge(&two);
        two.merge(&one);
        let lines: Vec<String> = one.book.lines().map(str::to_owned).collect();
        let backwards = Book::of_lines(lines.iter().rev().map(String::as_str));
        let told = fold::waits(&one.book);
        assert_eq!((fold::waits(&backwards), fold::waits(&two.book)), (told.clone(), told.clone()));
        assert_eq!(told.wait(wait).unwrap().ended.map(|off| off.at.at), Some(at(800)));
    }

    #[track_caller]
    fn check(command: impl Fn(Id) -> WaitCommand, refused: Option<Refusal>) {
        let (mut phone, run) = gluing();
        let before = phone.book.len();
        assert_eq!(order(&mut phone, 700, command(run)).err(), refused);
        assert_eq!(phone.book.len() == before, refused.is_some());
    }

    #[test]
    fn what_cannot_wait_is_refused_by_name_and_limit() {
        let nobody = Id::new(at(0), [0; 10]);
        let out = |met| Some(Refusal::WaitOutOfRange { met, least: SPAN_LEAST, most: SPAN_MOST });
        let year = 366 * 24 * 60;
        let clamp = |n, minutes| move |run| WaitCommand::Clamp { run, n, laid: glue(minutes) };
        check(clamp(1, 0), out(Span::ZERO));
        check(clamp(1, -5), out(Span::minutes(-5)));
        check(clamp(1, year), None);
        check(clamp(1, year + 1), out(Span::minutes(year + 1)));
        check(clamp(0, 90), Some(Refusal::NothingAsked));
        check(clamp(10_000, 90), Some(Refusal::TooManyAtOnce { would_be: 10_000, most: PILE_MOST }));
        check(|_| WaitCommand::Clamp { run: nobody, n: 1, laid: glue(90) }, Some(Refusal::NotThere));
        let begin = |op: &str, job| WaitCommand::Begin { op: op.into(), job, n: 1, laid: glue(90) };
        check(|_| begin("oil", None), None);
        check(|_| begin(" ", None), Some(Refusal::NameMissing));
        check(|_| begin("oil", Some(nobody)), Some(Refusal::NotThere));
        check(|_| WaitCommand::End { waits: vec![] }, Some(Refusal::NothingAsked));
        check(|run| WaitCommand::End { waits: vec![run] }, Some(Refusal::NotThere));
        check(|_| WaitCommand::Mend { wait: nobody, span: Span::minutes(5) }, Some(Refusal::NotThere));
        check(|_| WaitCommand::Mend { wait: nobody, span: Span::ZERO }, out(Span::ZERO));
        let (eight, nine) = (Clock::at(8, 0).unwrap(), Clock::at(9, 0).unwrap());
        check(|_| WaitCommand::SetQuiet { hours: Some((eight, eight)) }, Some(Refusal::QuietHoursEmpty));
        check(|_| WaitCommand::SetQuiet { hours: Some((nine, eight)) }, None);
        check(|_| WaitCommand::SetQuiet { hours: None }, None);
        let usual = |span| kind::UsualWaitSet { what: key("glue"), warmth: kind::Warmth::Warm, stuff: None, span };
        check(|_| WaitCommand::SetUsual(usual(Some(Span::minutes(year + 1)))), out(Span::minutes(year + 1)));
        check(|_| WaitCommand::SetUsual(usual(None)), None);
        let set = |op: &str, span| kind::OperationWaitSet { op: op.into(), what: Some(key("glue")), stuff: None, span };
        check(|_| WaitCommand::SetOperation(set("", None)), Some(Refusal::NameMissing));
        check(|_| WaitCommand::SetOperation(set("glue", Some(Span::ZERO))), out(Span::ZERO));
        check(|_| WaitCommand::SetLoud(kind::OperationLoudSet { op: " ".into(), loud: true }), Some(Refusal::NameMissing));
    }
}
