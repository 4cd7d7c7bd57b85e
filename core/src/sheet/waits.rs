//! Waits as they are shown: by off time, with the piece that waits; those of a job, of a day, and those that end today.

use crate::bench::wait::{Wait, Waits, What};
use crate::bench::{Bench, Notch, On, Run};
use crate::ledger::{Book, Fact, fold};
use crate::quantity::{Count, Day, Id, Listed, Local, Moment, Span, Wall, order_by_key};

/// One wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WaitLine {
    pub wait: Wait,
    /// The operation by its name now.
    pub op: String,
    /// The job's name.
    pub name: Option<String>,
    /// The number of its last piece among those of the operation.
    pub piece: Option<Count>,
    /// From the second coat on, which one it is: its pieces have the numbers of the first.
    pub coat: Option<Count>,
    /// The maker is done with what it is of: no further coat is to come.
    pub last: bool,
    /// When it may come off, by the clock of the place where it waits.
    pub off: Wall,
    /// Nothing once it is over.
    pub left: Span,
    /// Its time is over; it stays until it is taken off.
    pub over: bool,
    /// A coat that went on before the one below was to be dry: when that was to be.
    pub onto_wet: Option<Wall>,
}

impl WaitLine {
    /// What it is for: a coat behind which none is to come only dries.
    pub fn ends(&self) -> What {
        let what = self.wait.what();
        if what == What::Coat && self.last { What::Dry } else { what }
    }
}

/// All that waits, and what was taken off today.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WaitsSheet {
    /// The first off time first.
    pub on: Vec<WaitLine>,
    /// The latest first.
    pub ended: Vec<WaitLine>,
}

/// What lines are made from: all waits, and the bench they came from.
#[derive(Clone, Copy, Debug)]
pub struct Kept<'a> {
    pub waits: &'a Waits,
    pub bench: &'a Bench,
    pub book: &'a Book,
    pub local: Local,
}

impl<'a> Kept<'a> {
    /// What waits now.
    pub fn sheet(self, now: Wall) -> WaitsSheet {
        let on = self.waits.on().map(|wait| self.line(wait, now.at)).listed();
        let today = |wait: &&Wait| wait.ended.is_some_and(|off| off.taken && off.at.day() == now.day());
        let mut ended = self.waits.all().filter(today).map(|wait| self.line(wait, now.at)).listed();
        order_by_key(&mut ended, |line| std::cmp::Reverse(line.wait.ended.map(|off| off.at.at)));
        WaitsSheet { on, ended }
    }

    /// What waits of a job.
    pub fn of_job(self, job: Id, now: Moment) -> Vec<WaitLine> {
        self.waits.on().filter(|wait| wait.job == Some(job)).map(|wait| self.line(wait, now)).listed()
    }

    /// What comes off today or is over already, the first off time first: a promise that comes first on Jobs.
    pub fn ending(self, now: Wall) -> Vec<WaitLine> {
        let today = |wait: &&Wait| self.local.wall(wait.off()).day() <= now.day();
        self.waits.on().filter(today).map(|wait| self.line(wait, now.at)).listed()
    }

    /// Waits that began, were to come off, or were taken off on a day, the first to begin first; of today all that is still on.
    pub fn of_day(self, day: Day, now: Wall) -> Vec<WaitLine> {
        let is_on = |wait: &Wait| day == now.day() && wait.is_on();
        let of_it = |wait: &&Wait| is_on(wait) || self.days(wait).into_iter().flatten().any(|on| on == day);
        let mut found = self.waits.all().filter(of_it).map(|wait| self.line(wait, now.at)).listed();
        order_by_key(&mut found, |line| line.wait.began.at);
        found
    }

    /// What a run clamped last, while that waits.
    pub fn last_of(self, run: Id, now: Moment) -> Option<WaitLine> {
        let of_run = self.waits.on().filter(|wait| wait.run == Some(run));
        of_run.map(|wait| self.line(wait, now)).max_by_key(|line| (line.wait.began.at, line.piece))
    }

    /// One wait as it is shown.
    pub fn line(self, wait: &Wait, now: Moment) -> WaitLine {
        let run = wait.run.and_then(|run| self.bench.run(run));
        let piece = run.map(|run| self.pieces(run, wait)).filter(|piece| 0 < *piece);
        let coat = run.zip(piece).and_then(|(run, piece)| self.coat((run.work.on, &run.work.op), piece));
        // More than are left of a coat begin the next at the first piece again.
        let coat = coat.filter(|(_, each, _)| wait.n <= *each).map(|(coat, _, piece)| (coat, piece.max(wait.n)));
        let (coat, piece) = coat.map_or((None, piece), |(coat, piece)| (Some(coat), Some(piece)));
        WaitLine {
            op: run.map_or_else(|| wait.op.clone(), |run| run.work.op.clone()),
            name: wait.job.and_then(|job| fold::name_of(self.book, On::Job(job))),
            piece,
            coat,
            last: run.is_some_and(|run| self.bench.is_done_with(run.work.on, &run.work.op)),
            off: wait.wall(wait.off(), self.local),
            left: wait.left(now),
            over: wait.is_over(now),
            onto_wet: wait.onto_wet.map(|dry| wait.wall(dry, self.local)),
            wait: wait.clone(),
        }
    }

    /// From the second coat of an operation on: which coat its nth piece is, on how many pieces each is, and of which of them. Each is on as
    /// many as was said, else on as many as the job has, where the first of them was dry before one more was coated: else there are more of
    /// them.
    pub fn coat(self, (on, op): (On, &str), nth: Count) -> Option<(Count, Count, Count)> {
        let pieces = || if let On::Job(job) = on { Some(fold::job(self.book, job)?.pieces) } else { None };
        self.coat_of((on, op), nth, pieces)
    }

    /// The same of a job that is known to have so many pieces.
    pub fn coat_of(self, (on, op): (On, &str), nth: Count, pieces: impl FnOnce() -> Option<Count>) -> Option<(Count, Count, Count)> {
        let On::Job(job) = on else { return None };
        if !self.bench.is_coated(on, op) {
            return None;
        }
        let usual = || {
            let pieces = pieces()?;
            (pieces < nth && self.dried_before((job, op), pieces)).then_some(pieces)
        };
        let each = self.bench.coated_each(on, op).or_else(usual)?;
        let before = nth.checked_sub(1)?;
        let coat = before.checked_div(each).filter(|coats| 0 < *coats)?.saturating_add(1);
        Some((coat, each, before.checked_rem(each)?.saturating_add(1)))
    }

    /// Whether the first piece of an operation was dry before one more than so many was coated.
    fn dried_before(self, (job, op): (Id, &str), pieces: Count) -> bool {
        let mut of_it = self.waits.all().filter(|wait| wait.job == Some(job) && self.bench.op_of(wait) == op).listed();
        order_by_key(&mut of_it, |wait| wait.began.at);
        let dry = of_it.first().map(|wait| wait.ended.map_or(wait.off(), |off| off.at.at.min(wait.off())));
        let mut sum: Count = 0;
        let beyond = of_it.iter().find(|wait| {
            sum = sum.saturating_add(wait.n);
            pieces < sum
        });
        beyond.is_none_or(|wait| dry.is_some_and(|dry| dry <= wait.began.at))
    }

    /// When it began, was to come off, and was taken off. Asked of every wait there ever was: what a line shows is found after it.
    fn days(self, wait: &Wait) -> [Option<Day>; 3] {
        let by = |at| Some(wait.wall(at, self.local).day());
        [by(wait.began.at), by(wait.off()), wait.ended.filter(|off| off.taken).and_then(|off| by(off.at.at))]
    }

    /// Pieces of the operation that were done when it began, those it came with included.
    fn pieces(self, of: &Run, wait: &Wait) -> Count {
        let same = |run: &&Run| (&run.work.op, run.work.rework) == (&of.work.op, of.work.rework);
        let all = self.bench.on(of.work.on).filter(|run| run.work.on != On::Nothing || run.id == of.id).filter(same);
        let own = of.notches.iter().position(|notch| Some(notch.id) == wait.notch);
        let before = |run: &Run, nth: usize, notch: &Notch| match own {
            Some(own) if run.id == of.id => nth <= own,
            _ => notch.at <= wait.began.at,
        };
        let done = all.flat_map(|run| run.notches.iter().enumerate().map(move |(nth, notch)| (run, nth, notch)));
        done.filter(|(run, nth, notch)| before(run, *nth, notch)).fold(0, |sum: Count, (.., notch)| sum.saturating_add(notch.n))
    }
}

impl WaitLine {
    /// The number of its first piece that waits.
    pub fn first_piece(&self) -> Option<Count> {
        self.piece.map(|piece| piece.saturating_sub(self.wait.still()).saturating_add(1))
    }
}

/// A wait of a day that was struck; it can be put back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StruckWait {
    pub id: Id,
    pub op: String,
    pub began: Wall,
}

/// Waits that were struck by themselves or with their act, on each day on which they would have waited.
pub fn struck(book: &Book, day: Day) -> Vec<StruckWait> {
    let wait = |entry: &crate::ledger::Entry| match &entry.fact {
        Fact::WaitBegan(f) => {
            let off = Wall::new(entry.wall.at.plus(f.span), entry.wall.offset);
            let waits = entry.wall.day() <= day && day <= off.day();
            waits.then(|| StruckWait { id: entry.id, op: f.op.clone(), began: entry.wall })
        }
        _ => None,
    };
    book.struck().into_iter().filter_map(wait).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::decide::{Command, Laid, WaitCommand};
    use crate::ledger::told::Phone;
    use crate::quantity::Key;

    fn glue(minutes: i64) -> Laid {
        Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(minutes) }
    }

    fn clamp(phone: &mut Phone, minute: i64, (run, n, minutes): (Id, Count, i64)) -> Id {
        phone.order(minute, Command::Wait(WaitCommand::Clamp { run, n, laid: glue(minutes) })).unwrap()
    }

    fn seen<T>(phone: &Phone, look: impl Fn(Kept) -> T) -> T {
        look(Kept { waits: &fold::waits(&phone.book), bench: &phone.runs(), book: &phone.book, local: Local::new(phone.offset, None) })
    }

    /// Clocks as minutes of the day, pieces from and to, and whether it is over.
    fn shown(lines: &[WaitLine]) -> Vec<(u16, Option<Count>, Option<Count>, bool)> {
        lines.iter().map(|line| (line.off.minute_of_day(), line.first_piece(), line.piece, line.over)).collect()
    }

    #[test]
    fn each_wait_has_the_number_of_its_piece_and_its_off_time() {
        let mut phone = Phone::new("a");
        let stands = phone.job(600, "stands");
        let run = phone.start(680, "glue tops", stands);
        clamp(&mut phone, 689, (run, 1, 90));
        let two = clamp(&mut phone, 698, (run, 2, 60));
        clamp(&mut phone, 727, (run, 1, 90));
        let twin = clamp(&mut phone, 727, (run, 1, 90)); // in the same instant
        assert_eq!(seen(&phone, |kept| kept.last_of(run, phone.wall(727).at)).and_then(|line| line.piece), Some(5));
        let act = phone.book.entry(twin).and_then(|(entry, _)| entry.act).unwrap();
        phone.take_back(728, act);
        phone.stop(728, run);
        let sheet = seen(&phone, |kept| kept.sheet(phone.wall(760)));
        assert_eq!(shown(&sheet.on), [(758, Some(2), Some(3), true), (779, Some(1), Some(1), false), (817, Some(4), Some(4), false)]);
        assert_eq!((sheet.on[0].name.as_deref(), sheet.on[1].left), (Some("stands"), Span::minutes(19)));
        let On::Job(job) = stands else { unreachable!() };
        assert_eq!(seen(&phone, |kept| kept.of_job(job, phone.wall(760).at)).len(), 3);
        assert_eq!(seen(&phone, |kept| kept.last_of(run, phone.wall(760).at)).and_then(|line| line.piece), Some(4));
        // Taken off, it stays in the day; struck, it is listed to be put back.
        phone.order(761, Command::Wait(WaitCommand::End { waits: vec![two] })).unwrap();
        let (sheet, today) = (seen(&phone, |kept| kept.sheet(phone.wall(762))), phone.wall(0).day());
        assert_eq!((shown(&sheet.on).len(), sheet.ended.len()), (2, 1));
        assert_eq!(seen(&phone, |kept| kept.of_day(today, phone.wall(762))).len(), 3);
        phone.take_back(763, two);
        assert_eq!(
            (seen(&phone, |kept| kept.of_day(today, phone.wall(763))).len(), struck(&phone.book, today).len()),
            (2, 2),
            "this one and the twin"
        );
    }

    /// Lamps oiled one by one, dry in six hours, of so many a job and of so many that were said; then again the next day, or at once: the
    /// coat and the piece of each.
    #[test]
    fn a_second_coat_is_on_the_pieces_of_the_first() {
        use crate::ledger::decide::{BenchCommand, JobCommand};
        let check = |(of_job, said): (Count, Option<Count>), coated: &[i64], shown: &[(Option<Count>, Count)]| {
            let mut phone = Phone::new("a");
            let (currency, units) = (crate::quantity::Currency::USD, crate::quantity::Units::Inch);
            let made_for = crate::ledger::kind::job::For::Order;
            let begin = JobCommand::Begin { name: "lamps".into(), currency, units, pieces: of_job, made_for };
            let job = phone.order(0, Command::Job(begin)).unwrap();
            if let Some(n) = said {
                phone.bench(1, BenchCommand::PlanBatch { job, op: "oil".into(), n }).unwrap();
            }
            let run = phone.start(600, "oil", On::Job(job));
            for minute in coated {
                let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(360) };
                phone.order(*minute, Command::Wait(WaitCommand::Clamp { run, n: 1, laid })).unwrap();
            }
            let found = seen(&phone, |kept| kept.sheet(phone.wall(9_000))).on.iter().map(|line| (line.coat, line.piece.unwrap())).listed();
            assert_eq!(found, shown, "{of_job} {said:?} {coated:?}");
        };
        let again = [606, 612, 2_046, 2_052];
        check((2, None), &again, &[(None, 1), (None, 2), (Some(2), 1), (Some(2), 2)]);
        check((1, Some(2)), &again, &[(None, 1), (None, 2), (Some(2), 1), (Some(2), 2)]);
        check((2, Some(3)), &again, &[(None, 1), (None, 2), (None, 3), (Some(2), 1)]);
        // One thing is coated again once it is dry; two notes of it on one day are two parts of it.
        check((1, None), &[606, 2_046, 3_486], &[(None, 1), (Some(2), 1), (Some(3), 1)]);
        check((1, None), &again, &[(None, 1), (None, 2), (None, 3), (None, 4)]);
        // The first is wet still: there are more of them than the job has pieces.
        check((2, None), &[606, 612, 618, 624], &[(None, 1), (None, 2), (None, 3), (None, 4)]);
    }

    /// Of a job of six one was coated, and the next day so many at once: a coat has no more pieces than the job.
    #[test]
    fn more_than_are_left_of_a_coat_begin_at_the_first_piece_again() {
        use crate::ledger::decide::JobCommand;
        let check = |n: Count, shown: (Option<Count>, Count, Count)| {
            let mut phone = Phone::new("a");
            let (currency, units) = (crate::quantity::Currency::USD, crate::quantity::Units::Inch);
            let made_for = crate::ledger::kind::job::For::Order;
            let begin = JobCommand::Begin { name: "lamps".into(), currency, units, pieces: 6, made_for };
            let job = phone.order(0, Command::Job(begin)).unwrap();
            for (start, n) in [(600, 1), (2_040, n)] {
                let run = phone.start(start, "oil", On::Job(job));
                let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(360) };
                phone.order(start + 6, Command::Wait(WaitCommand::Clamp { run, n, laid })).unwrap();
                phone.stop(start + 7, run);
            }
            let shown_of = |line: &WaitLine| (line.coat, line.first_piece().unwrap(), line.piece.unwrap());
            let found = seen(&phone, |kept| kept.sheet(phone.wall(2_050)).on.iter().map(shown_of).listed());
            assert_eq!(found, [(None, 1, 1), shown], "{n}");
        };
        check(5, (None, 2, 6));
        check(6, (Some(2), 1, 6));
        check(4, (None, 2, 5));
    }

    #[test]
    fn what_ends_today_is_told_and_what_is_over_stays() {
        let mut phone = Phone::new("a");
        let begin = |phone: &mut Phone, minute: i64, minutes: i64| {
            let command = WaitCommand::Begin { op: "oil".into(), job: None, n: 1, laid: glue(minutes) };
            phone.order(minute, Command::Wait(command)).unwrap()
        };
        for (minute, minutes) in [(600, 1_440), (610, 60), (620, 819), (630, 810)] {
            begin(&mut phone, minute, minutes);
        }
        let ending = |phone: &Phone, minute: i64| {
            seen(phone, |kept| shown(&kept.ending(phone.wall(minute)))).into_iter().map(|line| (line.0, line.3)).collect::<Vec<_>>()
        };
        assert_eq!(ending(&phone, 700), [(670, true), (1_439, false)]); // 1 440 is midnight: tomorrow
        assert_eq!(ending(&phone, 1_440), [(670, true), (1_439, true), (0, true), (600, false)]);
    }

    /// Glued at 16:10 for 90 minutes and not taken off, and a cure of a week: what is on is in the list of every day that is today.
    #[test]
    fn what_was_not_taken_off_is_in_the_list_of_today() {
        let mut phone = Phone::new("a");
        for (minute, minutes) in [(970, 90), (980, 10_080)] {
            phone.order(minute, Command::Wait(WaitCommand::Begin { op: "glue".into(), job: None, n: 1, laid: glue(minutes) })).unwrap();
        }
        let check = |days: i64, now: i64, listed: usize| {
            let day = phone.wall(days * 1_440).day();
            assert_eq!(seen(&phone, |kept| kept.of_day(day, phone.wall(now)).len()), listed, "{days} {now}");
        };
        check(0, 1_000, 2);
        check(0, 2_000, 2);
        check(1, 2_000, 2);
        check(2, 3_000, 2);
        check(1, 3_000, 0);
    }

    /// 8:01, 10:30 and 11:00, of which the last comes off before the second.
    #[test]
    fn waits_of_a_day_stand_as_they_began() {
        let mut phone = Phone::new("a");
        for (minute, minutes) in [(481, 60), (630, 600), (660, 30)] {
            phone.order(minute, Command::Wait(WaitCommand::Begin { op: "glue".into(), job: None, n: 1, laid: glue(minutes) })).unwrap();
        }
        let day = phone.wall(481).day();
        let began = seen(&phone, |kept| kept.of_day(day, phone.wall(700)).iter().map(|line| line.wait.began.at).collect::<Vec<_>>());
        assert_eq!(began, [481, 630, 660].map(crate::ledger::told::at));
    }

    #[test]
    fn an_off_time_is_shown_by_the_clock_of_its_place() {
        let mut phone = Phone::new("a");
        phone.offset = crate::quantity::Offset::minutes(120).unwrap();
        let command = WaitCommand::Begin { op: "oil".into(), job: None, n: 1, laid: glue(90) };
        phone.order(600, Command::Wait(command)).unwrap();
        phone.offset = crate::quantity::Offset::minutes(60).unwrap();
        let line = seen(&phone, |kept| kept.sheet(phone.wall(610)).on.remove(0));
        assert_eq!((line.off.minute_of_day(), line.left.as_minutes()), (600 + 120 + 90, 80));
    }
}
