//! Two phones whose clocks differ: what either does with what the other wrote comes to what was ordered, in any order of arrival.

mod maker;

use fivebar_core::haul::Pile;
use fivebar_core::ledger::decide::{BookCommand, Command, EstimateCommand, HaulCommand, JobCommand, On, PileFacts};
use fivebar_core::ledger::kind::book::Struck;
use fivebar_core::ledger::kind::estimate::OldJobTold;
use fivebar_core::ledger::kind::haul::{Fate, HaulDescribed, PileDescribed, Way};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::{Book, Clock, fold};
use fivebar_core::quantity::{Count, Currency, Id, Moment, Span, Units};
use fivebar_core::sheet::carried::{freeze_for, of_job};
use maker::{Maker, key, sixteenths};
use proptest::prelude::*;

/// The first phone's clock, so many minutes fast; it began the haul and counted 9. The second has its copy.
struct Two {
    phones: [Maker; 2],
    fast: i64,
    haul: Id,
    pile: Id,
    desk: Id,
}

const NOON: i64 = 720;

impl Two {
    fn begin(fast: i64) -> Two {
        let mut first = Maker::new(Currency::USD);
        first.at((2026, 3, 2), NOON + fast, 0);
        let pile = PileFacts { wood: Some(key("ash-white")), ..PileFacts::default() };
        let haul = HaulCommand::Begin { currency: Currency::USD, units: Units::Inch, pile, n: 0, way: Way::Tap };
        let haul = first.order(Command::Haul(haul))[0];
        let pile = first.pile(haul, Some("oak-white"), [16, 32, 320].map(sixteenths), 9);
        let (name, currency) = ("desk".into(), Currency::USD);
        let desk = JobCommand::Begin { name, currency, units: Units::Inch, pieces: 1, made_for: For::Spec };
        let desk = first.order(Command::Job(desk))[0];
        let second = first.far("second");
        let mut two = Two { phones: [first, second], fast, haul, pile, desk };
        two.pass(0);
        two
    }

    /// So many minutes after noon by a true clock.
    fn pass(&mut self, minutes: i64) {
        let fast = self.fast;
        self.phones[0].at((2026, 3, 2), NOON + fast + minutes, 0);
        self.phones[1].at((2026, 3, 2), NOON + minutes, 0);
    }

    fn meet(&mut self) {
        let book = self.phones[0].merged(&self.phones[1]);
        self.phones.iter_mut().for_each(|phone| phone.book = book.clone());
    }

    fn command(&self, (what, n): (u8, Count)) -> Command {
        let Two { haul, pile, desk: job, .. } = *self;
        let why = key("twist");
        match what {
            0 => Command::Haul(HaulCommand::Count { haul, pile, n, way: Way::Tap }),
            1 => Command::Haul(HaulCommand::Reject { haul, pile, n, why }),
            2 => Command::Haul(HaulCommand::Return { haul, pile, n, why, to: Fate::Good }),
            3 => Command::Haul(HaulCommand::Take { haul, pile, job, n }),
            4 => Command::Haul(HaulCommand::Free { haul, pile, job, n }),
            5 => Command::Haul(HaulCommand::Sort { haul, pile, n }),
            _ => Command::Haul(HaulCommand::Recount { haul, pile, n, why: None }),
        }
    }

    fn of(&self, phone: usize) -> Pile {
        fold::haul(&self.phones[phone].book, self.haul).unwrap().pile(self.pile).unwrap().clone()
    }
}

/// Taken, rejected, in the job, sorted: as an order of so many leaves them.
fn left(pile: &Pile, (what, n): (u8, Count)) -> (Count, Count, Count, Count) {
    let (taken, rejected, used, sorted) = figures(pile);
    match what {
        0 => (taken + n, rejected, used, sorted),
        // What lacks on the rack is put back from the job first; that two phones have spoken for more than there are is not this order's to mend.
        1 => {
            let lacks = n.saturating_sub(pile.on_rack().min(pile.good()));
            (taken, rejected + n, used - lacks, sorted.min(pile.good() - n))
        }
        2 => (taken, rejected - n, used, sorted + n),
        3 => (taken, rejected, used + n, sorted),
        4 => (taken, rejected, used - n, sorted),
        5 => (taken, rejected, used, sorted + n),
        _ => (n, rejected, used, sorted.min(n - rejected)),
    }
}

fn figures(pile: &Pile) -> (Count, Count, Count, Count) {
    (pile.taken, pile.rejected(), pile.used(), pile.sorted_good)
}

/// On the second phone, right after the copy of the first came in: nine go to the desk, and are shown there.
#[track_caller]
fn check(fast: i64) {
    let mut two = Two::begin(fast);
    let take = two.command((3, 9));
    two.phones[1].order(take);
    two.meet();
    assert_eq!([0, 1].map(|phone| figures(&two.of(phone))), [(9, 0, 9, 0); 2], "{fast} minutes fast");
}

#[test]
fn pieces_counted_by_a_fast_clock_can_be_taken() {
    [-90, 0, 3, 6, 20, 23 * 60, 3 * 24 * 60, 10 * 366 * 24 * 60].into_iter().for_each(check);
}

/// What a fast clock said of the haul is corrected; what it took back is put back.
#[test]
fn what_a_fast_clock_said_can_be_corrected() {
    let mut two = Two::begin(20);
    let (haul, pile) = (two.haul, two.pile);
    let facts = PileFacts { width: Some(sixteenths(40)), name: Some("Rails".into()), ..PileFacts::default() };
    two.phones[1].order(Command::Haul(HaulCommand::DescribePile { haul, pile, facts }));
    two.pass(1);
    let count = two.command((0, 4));
    let act = two.phones[0].order(count)[0];
    two.phones[0].order(Command::Book(BookCommand::TakeBack { act }));
    two.meet();
    assert_eq!((two.of(1).taken, two.of(1).width, two.of(1).name), (9, Some(sixteenths(40)), Some("Rails".into())));
    two.phones[1].order(Command::Book(BookCommand::Restore { act }));
    two.meet();
    assert_eq!(two.of(0).taken, 13);
}

/// What began is no news: what a slow clock said of it since stands, in books that were written so.
#[test]
fn what_was_said_before_it_began_stands() {
    let mut two = Two::begin(0);
    let (haul, pile) = (two.haul, two.pile);
    let slow = &mut two.phones[1];
    slow.book = Book::default();
    slow.note(HaulDescribed { name: Some("Stair works".into()), ..HaulDescribed::of(haul) });
    let (wood, length, length_to) = (Some(key("ash-white")), Some(sixteenths(400)), None);
    slow.at((2026, 3, 2), NOON - 20, 0);
    let (name, thickness, width) = (Some("Rails".into()), None, Some(sixteenths(40)));
    slow.note(PileDescribed { haul, pile, wood, name, thickness, width, length, length_to });
    two.meet();
    let found = fold::haul(&two.phones[1].book, haul).unwrap();
    assert_eq!(found.name.as_deref(), Some("Stair works"));
    let pile = found.pile(pile).unwrap();
    assert_eq!(
        (pile.name.as_deref(), pile.wood.as_ref(), pile.width, pile.length),
        (Some("Rails"), Some(&key("ash-white")), Some(sixteenths(40)), Some(sixteenths(400)))
    );
}

/// Both phones have the same nine; each says something of them, apart. Then the desk is done: whatever is left of it, it can be ended.
#[track_caller]
fn check_done(first: impl Fn(&mut Two), second: impl Fn(&mut Two), frozen: &[(Count, &str)]) {
    let mut two = Two::begin(0);
    two.meet();
    let haul = On::Haul(two.haul);
    two.phones[0].whole(haul, "gift", "9.00");
    two.meet();
    two.pass(10);
    first(&mut two);
    two.pass(20);
    second(&mut two);
    two.meet();
    let shop = two.phones[1].shop();
    let job = shop.job(two.desk).unwrap();
    let hauls = freeze_for(&shop, &job).unwrap();
    let shares: Vec<(Count, String)> =
        of_job(&shop, &job).unwrap().iter().map(|share| (share.pieces, share.share.unwrap().cost.to_string())).collect();
    assert_eq!(shares.iter().map(|(n, cost)| (*n, &**cost)).collect::<Vec<_>>(), frozen);
    assert_eq!(
        hauls.iter().map(|used| used.cost.to_string()).collect::<Vec<_>>(),
        frozen.iter().map(|(_, cost)| *cost).collect::<Vec<_>>()
    );
    two.phones[1].order(Command::Job(JobCommand::End { job: two.desk, hauls }));
}

#[test]
fn a_job_that_lost_its_pieces_to_the_other_phone_can_be_ended() {
    let order = |phone: usize, order: (u8, Count)| {
        move |two: &mut Two| {
            let command = two.command(order);
            two.phones[phone].order(command);
        }
    };
    check_done(order(0, (1, 9)), order(1, (3, 9)), &[]);
    check_done(order(1, (3, 9)), order(0, (1, 9)), &[(9, "9.00 USD")]);
    check_done(order(0, (1, 4)), order(1, (3, 9)), &[(5, "9.00 USD")]);
    // The other phone takes the beginning of the haul back.
    let gone = |two: &mut Two| {
        let act = two.haul;
        two.phones[0].note(Struck { entries: vec![act] });
    };
    check_done(gone, order(1, (3, 9)), &[]);
    check_done(order(1, (3, 9)), gone, &[]);
}

/// What is lifted more than five minutes above the wall is for review; that can be read off the line.
#[test]
fn a_lifted_stamp_is_for_review() {
    for (fast, review) in [(0, false), (4, false), (20, true)] {
        let mut two = Two::begin(fast);
        let take = two.command((3, 9));
        let id = two.phones[1].order(take)[0];
        assert_eq!(two.phones[1].book.entry(id).map(|(entry, _)| entry.is_for_review()), Some(review), "{fast}");
    }
}

/// Phone, minutes that pass, order, count, whether they meet then.
type Step = (usize, i64, (u8, Count), bool);

fn days() -> impl Strategy<Value = (i64, Vec<Step>)> {
    let step = (0..2_usize, 0..30_i64, (0..7_u8, 1..12_u32), any::<bool>());
    (-2_000..2_000_i64, prop::collection::vec(step, 1..24))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever the clocks: an order that was not refused is done as it was ordered, on the phone where it was given, and both come to
    /// the same book.
    #[test]
    fn inv03_an_order_comes_to_what_was_ordered((fast, steps) in days(), turn in any::<prop::sample::Index>()) {
        let mut two = Two::begin(fast);
        let mut minute = 0;
        let mut last = [None; 2];
        for (phone, pass, order, meet) in steps {
            minute += pass;
            two.pass(minute);
            let (before, command) = (two.of(phone), two.command(order));
            if let Ok(ids) = two.phones[phone].try_order(command) {
                prop_assert_eq!(figures(&two.of(phone)), left(&before, order));
                let stamp = two.phones[phone].book.entry(ids[0]).map(|(entry, _)| (entry.stamp.0, entry.stamp.1));
                prop_assert!(last[phone] < stamp, "a stamp ran backwards");
                last[phone] = stamp;
            }
            if meet {
                two.meet();
            }
        }
        two.meet();
        let mut lines: Vec<&str> = two.phones[0].book.lines().collect();
        let turn = turn.index(lines.len());
        lines.rotate_left(turn);
        lines.reverse();
        let other = Book::of_lines(lines);
        prop_assert_eq!(&other, &two.phones[1].book);
        prop_assert_eq!(fold::haul(&other, two.haul), fold::haul(&two.phones[0].book, two.haul));
    }
}

/// Bringing lines in lifts a clock by five minutes at most, as before; only what rests on them goes further.
#[test]
fn inv05_what_rests_on_nothing_stays_near_the_wall() {
    let mut two = Two::begin(3 * 60);
    let wall = Moment::at(1_772_452_800_000);
    let job = JobCommand::Begin { name: "stool".into(), currency: Currency::USD, units: Units::Inch, pieces: 1, made_for: For::Spec };
    let id = two.phones[1].order(Command::Job(job))[0];
    let stamp = two.phones[1].book.entry(id).map(|(entry, _)| entry.stamp.0).unwrap();
    assert!(wall <= stamp && wall.until(stamp) <= Clock::LIFT_MOST.plus(Span::minutes(1)), "{stamp:?}");
}

fn old(name: &str, minutes: i64) -> OldJobTold {
    OldJobTold {
        name: name.into(),
        span: Span::minutes(minutes),
        thought: None,
        sum: None,
        piece: None,
        pieces: None,
        first: None,
        told_for: None,
    }
}

fn old_jobs(book: &Book) -> Vec<(String, i64)> {
    fold::workshop(book).old_jobs.iter().map(|old| (old.name.clone(), old.span.as_minutes())).collect()
}

impl Two {
    /// Puts the first old job of a phone right; whether that was anything new.
    fn retell(&mut self, phone: usize, (name, minutes): (&str, i64)) -> bool {
        let line = fold::workshop(&self.phones[phone].book).old_jobs[0].entry;
        self.phones[phone].try_order(Command::Estimate(EstimateCommand::Retell { line, job: old(name, minutes) })).is_ok()
    }

    fn told() -> Two {
        let mut two = Two::begin(0);
        two.phones[0].order(Command::Estimate(EstimateCommand::Tell(vec![old("Stool", 60)])));
        two.meet();
        two
    }
}

/// Both put it right while they are apart, one of them twice: it is one old job, as the last word has it. That taken back, the word before stands.
#[test]
fn an_old_job_put_right_on_two_phones_is_one() {
    let mut two = Two::told();
    two.pass(1);
    assert!(two.retell(0, ("Bar stool", 70)));
    two.pass(2);
    assert!(two.retell(0, ("Bar stool in ash", 75)));
    two.pass(3);
    assert!(two.retell(1, ("Low stool", 80)));
    let act = two.phones[1].book.entries().last().unwrap().0.act.unwrap();
    two.meet();
    assert_eq!([0, 1].map(|phone| old_jobs(&two.phones[phone].book)), [0; 2].map(|_| vec![("Low stool".to_owned(), 80)]));
    two.phones[0].order(Command::Book(BookCommand::TakeBack { act }));
    assert_eq!(old_jobs(&two.phones[0].book), [("Bar stool in ash".to_owned(), 75)]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// However often either phone puts it right, and whenever they meet: one old job, as it was told last, in any order of arrival.
    #[test]
    fn inv03_an_old_job_put_right_stays_one(
        steps in prop::collection::vec((0..2_usize, 0..4_usize, 1..500_i64, any::<bool>()), 1..10),
        turn in any::<prop::sample::Index>(),
    ) {
        let mut two = Two::told();
        let mut last = ("Stool", 60);
        for (minute, (phone, name, minutes, meet)) in (1..).zip(steps) {
            two.pass(minute);
            let word = (["Stool", "Bar stool", "Low stool", "Step"][name], minutes);
            last = if two.retell(phone, word) { word } else { last };
            if meet {
                two.meet();
            }
        }
        two.meet();
        prop_assert_eq!(old_jobs(&two.phones[0].book), vec![(last.0.to_owned(), last.1)]);
        let mut lines: Vec<&str> = two.phones[0].book.lines().collect();
        let turn = turn.index(lines.len());
        lines.rotate_left(turn);
        lines.reverse();
        prop_assert_eq!(old_jobs(&Book::of_lines(lines)), old_jobs(&two.phones[1].book));
    }
}
