//! The bench from its entries: every run with its stop, its mending, its pieces and its heads.
//!
//! A stamp of the wall clock that lies before the last one of the same device is lifted to that, and the run is marked for review.

use super::numbers::{Meant, Numbers};
use crate::bench::wait::What;
use crate::bench::{Bench, Head, Notch, On, Run, UNNOTICED, Work, one_stay_each, repair};
use crate::ledger::kind::bench as kind;
use crate::ledger::kind::job::OperationPlanned;
use crate::ledger::kind::wait::{WaitBegan, WaitEnded};
use crate::ledger::places::Places;
use crate::ledger::{Book, Device, Entry, Fact, Subject};
use crate::quantity::{Id, Listed, Moment, Set, Sorted, Span, Wall, order_by_key};

/// Every run and batch there is.
pub fn bench(book: &Book) -> Bench {
    let mut gathered = Gathered::default();
    let (mut last, mut taken_off) = (Sorted::new(), Sorted::<On, Vec<Moment>>::new());
    for entry in book.about(Subject::Bench) {
        if let Fact::JobMarked(f) = &entry.fact {
            gathered.marked(f.job, f.typical);
            continue;
        }
        if let Fact::OperationPlanned(f) = &entry.fact {
            gathered.numbers.take(entry, entry.wall.at);
            gathered.think(f);
            continue;
        }
        let tap = lift(&mut last, entry);
        gathered.numbers.take(entry, tap.wall.at);
        gathered.answered(&entry.fact, tap);
        gathered.take(entry, tap);
        if let Fact::WaitEnded(ended) = &entry.fact {
            ended_on(book, ended).into_iter().for_each(|on| taken_off.entry(on).or_default().push(entry.at()));
        }
    }
    let bench = gathered.bench();
    let acts = acts_on(book, bench.runs(), taken_off);
    bench.with_acts(acts)
}

/// The acts on what runs are on, for those whose end may be asked about. Starts, recalled time and what is put right are no acts on
/// others; who takes off what waits of a job is at that job, and at no other.
fn acts_on<'a>(book: &Book, runs: impl Iterator<Item = &'a Run>, mut taken_off: Sorted<On, Vec<Moment>>) -> Sorted<On, Vec<Moment>> {
    let mut all = Sorted::new();
    for on in runs.filter(|run| repair::may_look_wrong(run, Moment::at(i64::MAX))).map(|run| run.work.on) {
        let subject = match on {
            On::Job(id) => Subject::Job(id),
            On::Haul(id) => Subject::Haul(id),
            On::Nothing => continue,
        };
        let no_act = |entry: &&Entry| matches!(entry.fact, Fact::RunStarted(_) | Fact::RunRecalled(_) | Fact::RunMoved(_));
        let about = || book.about(subject).filter(|entry| !no_act(entry)).map(Entry::at);
        all.entry(on).or_insert_with(|| {
            let mut acts = about().chain(taken_off.remove(&on).unwrap_or_default()).listed();
            order_by_key(&mut acts, |at| *at);
            acts
        });
    }
    all
}

/// The job of a wait that was ended.
fn ended_on(book: &Book, ended: &WaitEnded) -> Option<On> {
    let Some(Fact::WaitBegan(wait)) = book.entry(ended.wait).map(|(entry, _)| &entry.fact) else { return None };
    wait.job.map(On::Job)
}

/// A tap: as the clock showed it, as it counts, and whether the clock had been set back.
#[derive(Clone, Copy)]
struct Tap {
    raw: Wall,
    wall: Wall,
    lifted: bool,
}

/// A clock that was wrong by more than a run may last lifts nothing.
fn lift(last: &mut Sorted<Device, Moment>, entry: &Entry) -> Tap {
    let Wall { at, offset } = entry.wall;
    let last = last.entry(entry.stamp.2).or_insert(at);
    let behind = at.until(*last);
    *last = if behind <= Span::RUN_MOST { at.max(*last) } else { at };
    Tap { raw: entry.wall, wall: Wall::new(*last, offset), lifted: UNNOTICED < behind }
}

/// What is said of one run, in whatever order.
#[derive(Default)]
struct Said {
    /// When it was said to be right as it stands.
    right: Option<Moment>,
    run: Option<Run>,
    stop: Option<(Tap, bool)>,
    mended: Vec<Mended>,
    notches: Vec<Notch>,
    clamped: Vec<Moment>,
    put_right: Vec<Moment>,
    heads: Vec<Head>,
    // A word on a helper may arrive before the helper.
    heads_mended: Vec<kind::HelperMended>,
    // A coat of it dries, or dried: the operation and its job as they were then.
    coated: Option<(Option<Id>, String)>,
}

/// One word on a run.
enum Mended {
    Ends(kind::RunMended),
    On(On),
    Op(kind::RunRenamed),
}

#[derive(Default)]
struct Gathered {
    order: Vec<Id>,
    of: Places,
    said: Vec<Said>,
    numbers: Numbers,
    // What dries, or dried, and came from no run.
    coated: Set<Meant>,
    not_typical: Set<Id>,
    // The last word on what an operation takes; none where it was none.
    thought: Sorted<Meant, Option<Span>>,
}

impl Gathered {
    fn think(&mut self, f: &OperationPlanned) {
        self.thought.insert((f.job, f.op.clone()), f.span.filter(|span| Span::ZERO < *span));
    }

    /// A mend that mends nothing says that the run is right as it stands.
    fn answered(&mut self, fact: &Fact, tap: Tap) {
        if let Fact::RunMended(kind::RunMended { run, start: None, stop: None, op: None, .. }) = fact {
            let said = self.of(*run);
            said.right = said.right.max(Some(said.knowing(tap)));
        }
    }

    fn take(&mut self, entry: &Entry, tap: Tap) {
        put_right(&entry.fact).into_iter().for_each(|run| self.of(run).put_right.push(tap.wall.at));
        match &entry.fact {
            Fact::RunStarted(f) => self.begin(started(entry.id, f, tap)),
            Fact::RunRecalled(f) => self.begin(recalled(entry, f)),
            // The first stop stands.
            Fact::RunStopped(f) => {
                self.of(f.run).stop.get_or_insert((tap, f.switched.unwrap_or(false)));
            }
            Fact::RunMended(f) => self.of(f.run).mended.push(Mended::Ends(f.clone())),
            Fact::RunMoved(f) => self.of(f.run).mended.push(Mended::On(on(f.job, f.haul))),
            Fact::RunRenamed(f) => self.of(f.run).mended.push(Mended::Op(f.clone())),
            Fact::PiecesDone(f) => self.of(f.run).notches.push(Notch { id: entry.id, at: tap.wall.at, n: f.n }),
            Fact::HelperJoined(f) => {
                self.of(f.run).joined(Head { id: entry.id, n: 1, person: f.person, pay: f.pay, from: tap.wall.at, to: None });
            }
            Fact::HelperRecalled(f) => {
                self.of(f.run).joined(Head { id: entry.id, n: 1, person: f.person, pay: f.pay, from: f.from, to: f.to });
            }
            Fact::HelperMended(f) => self.of(f.run).heads_mended.push(f.clone()),
            Fact::HelperLeft(f) => self.of(f.run).left(f.person, tap.wall.at),
            Fact::WaitBegan(f) => self.wait(f, tap),
            _ => {}
        }
    }

    fn of(&mut self, run: Id) -> &mut Said {
        let next = self.said.len();
        let at = self.of.get_or(run, next);
        if at == next {
            self.said.push(Said::default());
        }
        // The place is there: it was filled just now, or before.
        #[allow(clippy::indexing_slicing)]
        &mut self.said[at]
    }

    fn marked(&mut self, job: Id, typical: bool) {
        if typical {
            self.not_typical.remove(&job);
        } else {
            self.not_typical.insert(job);
        }
    }

    fn wait(&mut self, f: &WaitBegan, tap: Tap) {
        f.run.into_iter().for_each(|run| self.of(run).clamped.push(tap.wall.at));
        if What::of(&f.what) == What::Coat {
            self.coat(f);
        }
    }

    fn coat(&mut self, f: &WaitBegan) {
        match f.run {
            Some(run) => self.of(run).coated = Some((f.job, f.op.clone())),
            None => self.coated.extend(f.job.map(|job| (job, f.op.clone()))),
        }
    }

    fn begin(&mut self, run: Run) {
        let id = run.id;
        self.order.push(id);
        self.of(id).run = Some(run);
    }

    fn bench(mut self) -> Bench {
        let mut runs = vec![];
        for at in self.order.iter().filter_map(|id| self.of.get(id)) {
            let Some(said) = self.said.get_mut(at).map(std::mem::take) else { continue };
            let is_coated = said.coated.is_some();
            let run = said.run();
            // Under the name and on the job that were put right.
            self.coated.extend(run.as_ref().filter(|_| is_coated).and_then(meant));
            runs.extend(run);
        }
        // Runs that are gone leave what they coated.
        let gone = self.said.into_iter().filter_map(|said| said.coated);
        self.coated.extend(gone.filter_map(|(job, op)| Some((job?, op))));
        let pieces = self.numbers.with_coats(&self.coated);
        let mut thought = Sorted::new();
        for (of, span) in self.thought.iter() {
            span.and_then(|span| thought.insert(of.clone(), span));
        }
        let bench = Bench::new(runs, pieces.all).but_for(self.not_typical).thought(thought);
        bench.with_pieces(pieces.only_planned, pieces.coated).with_done(pieces.done)
    }
}

impl Said {
    /// Nobody is at a run twice: who was named and has not left is there already.
    fn joined(&mut self, head: Head) {
        if head.person.is_none() || !self.heads.iter().any(|other| other.person == head.person && other.to.is_none()) {
            self.heads.push(head);
        }
    }

    fn left(&mut self, person: Option<Id>, at: Moment) {
        if let Some(head) = self.heads.iter_mut().rev().find(|head| head.person == person && head.to.is_none()) {
            head.to = Some(at);
        }
    }

    /// The moment of a word on the run: who knew of its stop spoke after it, whatever the clock of another phone said.
    fn knowing(&self, tap: Tap) -> Moment {
        self.stop.map_or(tap.wall.at, |(stop, _)| stop.wall.at.max(tap.wall.at))
    }

    fn run(self) -> Option<Run> {
        let mut run = self.run?;
        run.right = self.right;
        if let Some((tap, switched)) = self.stop.filter(|_| !run.recalled) {
            (run.tapped_stop, run.stopped, run.switched) = (Some(tap.raw), Some(tap.wall), switched);
            run.lifted |= tap.lifted || tap.wall.at < run.tapped.at;
        }
        for mended in self.mended {
            match mended {
                Mended::Ends(said) => mend(&mut run, said),
                Mended::On(on) => run.work.on = on,
                Mended::Op(said) => rename(&mut run, said),
            }
        }
        (run.notches, run.clamped, run.put_right) = (self.notches, self.clamped, self.put_right);
        run.heads.extend(self.heads);
        for said in &self.heads_mended {
            run.heads.iter_mut().filter(|head| head.id == said.helper).for_each(|head| mend_head(head, said));
        }
        one_stay_each(&mut run.heads);
        Some(run)
    }
}

/// The run of which a fact puts something right, and not its stop.
fn put_right(fact: &Fact) -> Option<Id> {
    match fact {
        Fact::RunMended(f) if f.stop.is_none() && (f.start.is_some() || f.op.is_some()) => Some(f.run),
        Fact::RunMoved(f) => Some(f.run),
        Fact::RunRenamed(f) => Some(f.run),
        _ => None,
    }
}

/// The last word on each end stands. A mended end keeps the place of the end it mends, unless another was said.
fn mend(run: &mut Run, said: kind::RunMended) {
    if let Some(start) = said.start {
        run.started = Wall::new(start, said.place.unwrap_or(run.started.offset));
        run.mended_start = Some(said.by);
    }
    if let Some(stop) = said.stop {
        let place = run.stopped.unwrap_or(run.started);
        run.stopped = Some(Wall::new(stop, place.offset));
        run.mended_stop = Some(said.by);
    }
    if let Some(op) = said.op {
        run.work.op = op;
    }
    as_stamped(run);
}

fn rename(run: &mut Run, said: kind::RunRenamed) {
    (run.work.stage, run.work.kind, run.work.op) = (said.stage.unwrap_or(said.kind.stage()), said.kind, said.op);
}

/// The last word on each stands. Pay of nothing is no pay.
fn mend_head(head: &mut Head, said: &kind::HelperMended) {
    head.from = said.from.unwrap_or(head.from);
    head.to = said.to.or(head.to);
    head.pay = said.pay.or(head.pay).filter(|pay| !pay.is_zero());
}

/// An end that was put back to what the clock had stamped is measured again, and it was answered for.
fn as_stamped(run: &mut Run) {
    if run.mended_start.is_some() && run.started.at == run.tapped.at {
        run.mended_start = None;
    }
    if run.mended_stop.is_some() && run.stopped.map(|stop| stop.at) == run.tapped_stop.map(|stop| stop.at) {
        (run.mended_stop, run.right) = (None, run.right.max(run.stopped.map(|stop| stop.at)));
    }
}

fn meant(run: &Run) -> Option<Meant> {
    if let On::Job(job) = run.work.on { Some((job, run.work.op.clone())) } else { None }
}

fn on(job: Option<Id>, haul: Option<Id>) -> On {
    job.map(On::Job).or(haul.map(On::Haul)).unwrap_or(On::Nothing)
}

fn started(id: Id, f: &kind::RunStarted, tap: Tap) -> Run {
    let (kind, on, rework) = (f.kind, on(f.job, f.haul), f.rework.unwrap_or(false));
    let work = Work { op: f.op.clone(), kind, stage: f.stage.unwrap_or(kind.stage()), on, person: f.person, rework };
    // What was said counts from the clock; where that had been set back, only the lifted stamp is left.
    let from = f.from.filter(|from| *from < tap.raw.at && tap.wall == tap.raw).unwrap_or(tap.wall.at);
    let mut run = Run::start(id, work, (tap.raw, Wall::new(from, tap.wall.offset)));
    run.lifted = tap.lifted;
    run
}

fn recalled(entry: &Entry, f: &kind::RunRecalled) -> Run {
    let (kind, on, rework) = (f.kind, on(f.job, f.haul), f.rework.unwrap_or(false));
    let work = Work { op: f.op.clone(), kind, stage: f.stage.unwrap_or(kind.stage()), on, person: f.person, rework };
    let place = |at| Wall::new(at, f.place.unwrap_or(entry.wall.offset));
    let mut run = Run::start(entry.id, work, (entry.wall, place(f.start)));
    run.stopped = Some(place(f.stop.max(f.start)));
    run.recalled = true;
    if let Some(n) = f.heads.map(|heads| heads.saturating_sub(1)).filter(|n| 0 < *n) {
        run.heads.push(Head { id: entry.id, n, person: None, pay: None, from: Moment::at(i64::MIN), to: None });
    }
    run
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Doubt;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::told::{Phone, at, work};
    use crate::quantity::Offset;

    #[track_caller]
    fn check(phone: &Phone, now: i64, minutes: &[(&str, i64)]) {
        let found = phone.minutes(now);
        assert_eq!(found.iter().map(|(op, m)| (op.as_str(), *m)).collect::<Vec<_>>(), minutes);
    }

    fn doubts(phone: &Phone, run: Id, now: i64) -> Vec<Doubt> {
        phone.runs().run(run).unwrap().doubts(at(now))
    }

    #[test]
    fn inv06_a_running_clock_is_a_start_without_a_stop() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "sand", On::Nothing);
        check(&phone, 90, &[("sand", 90)]);
        phone.stop(100, run);
        check(&phone, 500, &[("sand", 100)]);
    }

    #[test]
    fn a_switch_is_taken_back_whole() {
        let mut phone = Phone::new("a");
        phone.start(0, "sand", On::Nothing);
        let glue = phone.start(30, "glue", On::Nothing);
        check(&phone, 50, &[("sand", 30), ("glue", 20)]);
        let act = phone.book.entry(glue).and_then(|(entry, _)| entry.act).unwrap();
        phone.take_back(50, act);
        check(&phone, 60, &[("sand", 60)]);
    }

    #[test]
    fn striking_a_start_hides_its_stop_and_counts() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "sand", On::Nothing);
        phone.bench(5, BenchCommand::Done { run, n: 3 }).unwrap();
        phone.stop(10, run);
        phone.take_back(11, run);
        check(&phone, 20, &[]);
    }

    #[test]
    fn inv05_a_clock_set_back_gives_no_negative_time_and_is_listed() {
        let mut phone = Phone::new("a");
        let run = phone.start(600, "sand", On::Nothing);
        phone.stop(570, run);
        check(&phone, 900, &[("sand", 0)]);
        assert_eq!(doubts(&phone, run, 900), [Doubt::ClockSetBack]);
        let next = phone.start(580, "glue", On::Nothing);
        phone.stop(640, next);
        check(&phone, 900, &[("sand", 0), ("glue", 40)]); // lifted to the last stamp, 10:00
        let run = phone.runs().run(next).cloned().unwrap();
        assert_eq!((run.tapped.at, run.started.at, run.shares(at(900)).corrected), (at(580), at(600), Span::ZERO));
        assert_eq!(doubts(&phone, next, 900), [Doubt::ClockSetBack]);
    }

    #[test]
    fn inv05_a_clock_that_was_days_ahead_costs_no_later_minutes() {
        let mut phone = Phone::new("a");
        let wrong = phone.start(100_000, "sand", On::Nothing);
        phone.take_back(100_001, wrong);
        let run = phone.start(600, "glue", On::Nothing);
        phone.stop(660, run);
        check(&phone, 700, &[("glue", 60)]);
    }

    #[test]
    fn daylight_saving_and_travel_change_no_minute() {
        let mut phone = Phone::new("a");
        phone.offset = Offset::minutes(-300).unwrap();
        let run = phone.start(600, "sand", On::Nothing);
        phone.offset = Offset::minutes(-240).unwrap();
        phone.stop(660, run);
        check(&phone, 700, &[("sand", 60)]);
        let run = phone.runs().run(run).cloned().unwrap();
        assert_eq!((run.started.offset.as_minutes(), run.stopped.unwrap().offset.as_minutes()), (-300, -240));
        assert!(run.doubts(at(700)).is_empty());
    }

    #[test]
    fn a_later_start_on_the_other_phone_ends_the_run_and_lists_it() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        let sand = one.start(0, "sand", On::Nothing);
        two.start(20, "glue", On::Nothing);
        one.stop(40, sand);
        one.merge(&two);
        two.merge(&one);
        check(&one, 60, &[("sand", 20), ("glue", 40)]);
        assert_eq!(one.minutes(60), two.minutes(60), "both phones say the same");
        assert!(matches!(doubts(&one, sand, 60)[..], [Doubt::EndedElsewhere { .. }]));
        one.bench(61, BenchCommand::StopAt { run: sand, at: at(15), by: crate::bench::Mender::Typed }).unwrap();
        assert_eq!(doubts(&one, sand, 62), []);
        check(&one, 60, &[("sand", 15), ("glue", 40)]);
    }

    #[test]
    fn two_people_and_skewed_phones() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        let ours = one.start(100, "sand", On::Nothing);
        let helping = crate::bench::Work { person: Some(ours), ..work("glue", On::Nothing) };
        let theirs = two.bench(95, BenchCommand::Start { work: helping, ago: Span::ZERO }).unwrap();
        one.stop(130, ours);
        two.stop(125, theirs);
        one.merge(&two);
        check(&one, 500, &[("glue", 30), ("sand", 30)]);
        // The other phone's clock is behind: a stop that reads earlier than the start ends it at its start.
        let again = one.start(200, "sand", On::Nothing);
        two.merge(&one);
        two.stop(190, again);
        check(&two, 500, &[("glue", 30), ("sand", 30), ("sand", 0)]);
        assert_eq!(doubts(&two, again, 500), [Doubt::ClockSetBack]);
    }

    #[test]
    fn inv03_a_stop_may_stand_before_its_start() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        let run = one.start(100, "sand", On::Nothing);
        two.merge(&one);
        two.stop(160, run);
        let lines: Vec<String> = two.book.lines().map(str::to_owned).collect();
        let backwards = Book::of_lines(lines.iter().rev().map(String::as_str));
        assert_eq!(bench(&backwards), two.runs());
        check(&two, 500, &[("sand", 60)]);
    }

    #[test]
    fn the_last_word_on_each_end_stands() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "sand", On::Nothing);
        phone.stop(100, run);
        let mend = |start: Option<i64>, stop: Option<i64>| BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: None };
        phone.bench(110, mend(Some(10), None)).unwrap();
        phone.bench(111, mend(None, Some(50))).unwrap();
        phone.bench(112, mend(Some(20), None)).unwrap();
        check(&phone, 500, &[("sand", 30)]);
        let run = phone.runs().run(run).cloned().unwrap();
        assert_eq!((run.tapped.at, run.tapped_stop.unwrap().at), (at(0), at(100)), "the raw stamps stay");
    }

    #[test]
    fn a_helper_noted_on_both_phones_is_there_once() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        let run = one.start(0, "carry", On::Nothing);
        two.merge(&one);
        let joins = BenchCommand::HelperJoins { run, person: Some(run), pay: None };
        one.bench(10, joins.clone()).unwrap();
        two.bench(15, joins).unwrap();
        one.merge(&two);
        one.stop(60, run);
        assert_eq!(one.runs().of_none(at(60)).labour.as_minutes(), 60 + 50);
    }

    #[test]
    fn what_was_confirmed_stays_so_in_any_order() {
        use BenchCommand::{Confirm, Mend};
        for order in [[0, 1, 2], [1, 0, 2], [2, 1, 0], [0, 2, 1]] {
            let mut phone = Phone::new("a");
            let run = phone.start(0, "sand", On::Nothing);
            phone.stop(400, run);
            for n in order {
                let said = [
                    Confirm { run },
                    Mend { run, start: None, stop: None, op: Some("plane".into()) },
                    Mend { run, start: Some(at(5)), stop: None, op: None },
                ];
                phone.bench(410, said[n].clone()).unwrap();
            }
            assert!(phone.runs().run(run).unwrap().is_confirmed(), "{order:?}");
            check(&phone, 500, &[("plane", 395)]);
        }
    }

    /// So the marks are found without a walk through the whole book, and what is kept of the bench is folded anew.
    #[test]
    fn a_mark_that_a_job_is_not_typical_is_about_the_bench() {
        let mut phone = Phone::new("a");
        let On::Job(job) = phone.job(0, "shelf") else { unreachable!() };
        for (minute, typical) in [(1, false), (2, true)] {
            let mark = phone.note(minute, crate::ledger::kind::job::JobMarked { job, typical });
            assert!(phone.book.about(Subject::Bench).any(|entry| entry.id == mark));
        }
    }

    #[test]
    fn heads_come_and_go() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "carry", On::Nothing);
        phone.bench(10, BenchCommand::HelperJoins { run, person: None, pay: None }).unwrap();
        phone.bench(40, BenchCommand::HelperLeaves { run, person: None }).unwrap();
        phone.stop(60, run);
        let recalled = BenchCommand::Recall { work: work("carry", On::Nothing), start: at(70), stop: at(90), heads: 3 };
        phone.bench(100, recalled).unwrap();
        let time = phone.runs().of_none(at(100));
        assert_eq!((time.own.total().as_minutes(), time.labour.as_minutes()), (80, 60 + 30 + 60));
        assert_eq!((time.own.measured.as_minutes(), time.own.recalled.as_minutes()), (60, 20));
    }
}
