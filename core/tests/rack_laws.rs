//! Laws of the rack, tried on invented days of a maker: whatever is ordered in whatever order, nothing is below nothing, moving keeps
//! every piece, and the haul is shared to the cent and the minute.

mod maker;

use fivebar_core::haul::{Haul, Pile};
use fivebar_core::ledger::decide::{BookCommand, Command, Figures, HaulCommand, JobCommand, Lying, On, OnTheScale, StockCommand};
use fivebar_core::ledger::kind::haul::{Fate, Per, Way};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::mended::of_pile;
use fivebar_core::ledger::{Fact, fold};
use fivebar_core::money::share::Share;
use fivebar_core::quantity::{Count, Currency, Decimal, Grams, Id, Length, Money, Span, Units, Volume};
use fivebar_core::sheet::haul as sheet;
use maker::{Maker, key, sixteenths};
use proptest::prelude::*;

/// One order: what, at which pile, for which job, how many.
#[derive(Clone, Copy, Debug)]
struct Step {
    what: u8,
    pile: usize,
    job: usize,
    n: Count,
}

/// The last orders of the list close jobs, take back and put counts right, which some laws leave out.
fn steps(most: u8) -> impl Strategy<Value = Vec<Step>> {
    let step = (0..most, 0..2_usize, 0..3_usize, 0..14_u32).prop_map(|(what, pile, job, n)| Step { what, pile, job, n });
    prop::collection::vec(step, 1..60)
}

const WITHOUT_JOBS_ENDING: u8 = 13;
const WITHOUT_TAKING_BACK: u8 = 15;
const ALL: u8 = 18;
const ENDING: u8 = 13;

/// Five pieces of two kilograms, and what weighs as much as so many of them, in what weighs so many grams.
fn scale(n: Count, tare: i64) -> OnTheScale {
    let [sample_weight, shows, tare] = [2_000, 2_000 + 400 * i64::from(n), tare].map(|grams| Grams::new(grams).unwrap());
    OnTheScale { sample: 5, sample_weight, shows, tare, spread: None, singles: None }
}

/// A haul of two piles of the same size, with an odd cost and odd minutes, and three jobs.
struct Days {
    maker: Maker,
    haul: Id,
    piles: [Id; 2],
    jobs: [Id; 3],
    acts: Vec<Id>,
}

impl Days {
    fn begin() -> Days {
        let mut maker = Maker::new(Currency::USD);
        maker.at((2026, 3, 2), 540, -5);
        let haul = maker.trip(None, Length::MILE.times(7).unwrap(), ("0.725", Per::Mile), (47, 36));
        maker.whole(On::Haul(haul), "gift", "11.41");
        let size = [16, 32, 288].map(sixteenths);
        let piles = [30, 12].map(|n| maker.pile(haul, Some("ash-white"), size, n));
        let jobs = ["stool", "desk", "shelf"].map(|name| {
            let (name, currency) = (name.into(), Currency::USD);
            maker.order(Command::Job(JobCommand::Begin { name, currency, units: Units::Inch, pieces: 1, made_for: For::Spec }))[0]
        });
        Days { maker, haul, piles, jobs, acts: vec![] }
    }

    fn command(&self, step: Step) -> Option<Command> {
        let Step { what, n, .. } = step;
        let (haul, pile, job) = (self.haul, self.piles[step.pile], self.jobs[step.job]);
        let stock = |command| Some(Command::Stock(Lying { haul, pile }, command));
        let of_haul = |command| Some(Command::Haul(command));
        match what {
            0 if n % 4 == 1 => stock(StockCommand::Layers { layers: 2, per: n, rest: 1 }),
            0 if n % 4 == 2 => stock(StockCommand::Weigh(scale(n, 0))),
            0 => of_haul(HaulCommand::Count { haul, pile, n, way: Way::Bundle }),
            1 => of_haul(HaulCommand::Recount { haul, pile, n: 2 * n, why: None }),
            2 => of_haul(HaulCommand::Reject { haul, pile, n, why: key("crack") }),
            3 => of_haul(HaulCommand::Return { haul, pile, n, why: key("crack"), to: if n % 2 == 0 { Fate::Good } else { Fate::Jigs } }),
            4 => of_haul(HaulCommand::Sort { haul, pile, n }),
            5 => of_haul(HaulCommand::Move { haul, from: pile, to: self.piles[1 - step.pile], n }),
            6 | 7 => of_haul(HaulCommand::Take { haul, pile, job, n }),
            8 => of_haul(HaulCommand::Free { haul, pile, job, n }),
            9 => stock(StockCommand::Reserve { job, n }),
            10 => stock(StockCommand::FreeReserved { job, n }),
            11 => stock(StockCommand::Gone { n, to: key("burnt") }),
            12 => stock(StockCommand::CountRack { n: 2 * n, why: None }),
            13 => {
                let shop = self.maker.shop();
                let hauls = fivebar_core::sheet::carried::freeze_for(&shop, &shop.job(job).unwrap()).ok()?;
                Some(Command::Job(JobCommand::End { job, hauls }))
            }
            14 => Some(Command::Job(JobCommand::Reopen { job })),
            15 => self.acts.get(step.n as usize * 3).map(|act| Command::Book(BookCommand::TakeBack { act: *act })),
            16 => stock(StockCommand::Mend { entry: *self.acts.get(n as usize * 2)?, n: n + 1, why: None }),
            _ => {
                let by = if step.job == 0 { Figures::Weight(scale(n, 300)) } else { Figures::Layers { layers: 3, per: n, rest: 2 } };
                stock(StockCommand::MendBy { entry: *self.acts.get(n as usize * 2)?, by })
            }
        }
    }

    /// Puts right what a job took or gave back, or takes that back, or puts it back: the nth of them.
    fn mends(&mut self, n: Count, which: usize) -> bool {
        let all: Vec<(Id, Fact)> = self.maker.book.entries().map(|(entry, _)| (entry.id, entry.fact.clone())).collect();
        let nth = |is_so: &dyn Fn(&Fact) -> bool| {
            let all: Vec<&(Id, Fact)> = all.iter().filter(|(_, fact)| is_so(fact)).collect();
            all.get(which % all.len().max(1)).map(|found| (**found).clone())
        };
        let is_mend = |fact: &Fact| matches!(fact, Fact::CountMended(_));
        let of_job = |fact: &Fact| matches!(fact, Fact::PiecesTaken(_) | Fact::PiecesFreed(_));
        let command = match n % 4 {
            0 => nth(&is_mend).map(|(act, _)| Command::Book(BookCommand::TakeBack { act })),
            1 => nth(&is_mend).map(|(act, _)| Command::Book(BookCommand::Restore { act })),
            _ => nth(&of_job).and_then(|(entry, fact)| {
                let (haul, pile) = of_pile(&fact)?;
                Some(Command::Stock(Lying { haul, pile }, StockCommand::Mend { entry, n: n / 2, why: None }))
            }),
        };
        self.maker.pass(3);
        command.is_some_and(|command| self.maker.try_order(command).is_ok())
    }

    /// Gives the order; whether it was taken. One that is refused writes nothing.
    fn step(&mut self, step: Step) -> bool {
        self.maker.pass(3);
        let Some(command) = self.command(step) else { return false };
        let before = self.maker.book.len();
        let written = self.maker.try_order(command);
        match &written {
            Ok(ids) => self.acts.extend(ids.first()),
            Err(_) => assert_eq!(self.maker.book.len(), before),
        }
        written.is_ok()
    }

    fn all(&mut self, steps: Vec<Step>) {
        for step in steps {
            self.step(step);
        }
    }

    fn haul(&self) -> Haul {
        fold::haul(&self.maker.book, self.haul).unwrap()
    }

    fn sheet(&self) -> sheet::HaulReckoning {
        sheet::haul(&self.maker.shop(), self.haul).unwrap()
    }
}

fn sum(haul: &Haul, n: impl Fn(&Pile) -> Count) -> Count {
    haul.piles.iter().map(n).sum()
}

/// What is on the rack, by the book: never clamped while every order was allowed.
fn told(pile: &Pile) -> i64 {
    i64::from(pile.good()) - i64::from(pile.used()) - i64::from(pile.gone_for_good()) + pile.stock.drift
}

fn cents(sum: Money) -> i64 {
    i64::try_from(sum.amount() * Decimal::from(100)).unwrap()
}

fn job_shares(sheet: &sheet::HaulReckoning) -> Vec<(Id, Share)> {
    sheet.jobs.clone()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 160, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_count_is_ever_below_nothing(steps in steps(WITHOUT_TAKING_BACK)) {
        let mut days = Days::begin();
        for step in steps {
            days.step(step);
            for pile in &days.haul().piles {
                prop_assert!(pile.rejected() <= pile.taken && pile.sorted_good <= pile.good(), "{:?}: {:?}", step, pile);
                prop_assert_eq!(i64::from(pile.on_rack()), told(pile), "{:?}: {:?}", step, pile);
                prop_assert!(pile.reserved() <= pile.on_rack() && pile.free_for(None) <= pile.on_rack());
                prop_assert!(pile.lost() <= pile.good() && pile.movable() <= pile.on_rack());
            }
        }
    }

    /// What jobs took and gave back is put right, that is taken back and put back: all that was done since holds, to the piece.
    #[test]
    fn pieces_of_jobs_put_right_leave_all_that_was_done_since(
        steps in steps(WITHOUT_TAKING_BACK), mends in prop::collection::vec((0..40_u32, 0..20_usize), 1..30)
    ) {
        let mut days = Days::begin();
        let mut mends = mends.into_iter();
        for (nth, step) in steps.into_iter().enumerate() {
            days.step(step);
            let was = days.haul();
            let mended = nth % 2 == 1 && mends.next().is_some_and(|(n, which)| days.mends(n, which));
            let is = days.haul();
            for (was, pile) in was.piles.iter().zip(&is.piles) {
                prop_assert!(pile.rejected() <= pile.taken && pile.sorted_good <= pile.good(), "{:?}: {:?}", step, pile);
                prop_assert_eq!(i64::from(pile.on_rack()), told(pile), "{:?}: {:?}", step, pile);
                prop_assert!(pile.reserved() <= pile.on_rack());
                for job in days.jobs {
                    let has = fold::job(&days.maker.book, job).unwrap().wood.get(&(days.haul, pile.id)).copied().unwrap_or(0);
                    prop_assert_eq!(has, pile.in_job(job), "{:?}: {:?}", step, pile);
                }
                if mended {
                    let kept = |pile: &Pile| (pile.taken, pile.rejected(), pile.gone_for_good());
                    prop_assert_eq!(kept(was), kept(pile), "{:?}", pile);
                }
            }
        }
    }

    /// Taking back what later orders stood on leaves a book that makes less sense, and still no count below nothing.
    #[test]
    fn no_count_is_below_nothing_whatever_is_taken_back(steps in steps(ALL)) {
        let mut days = Days::begin();
        for step in steps {
            days.step(step);
            let haul = days.haul();
            for pile in &haul.piles {
                prop_assert!(pile.rejected() <= pile.taken && pile.sorted_good <= pile.good(), "{:?}: {:?}", step, pile);
                prop_assert!(pile.reserved() <= pile.on_rack() && pile.lost() <= pile.good());
            }
            prop_assert!(sum(&haul, |pile| pile.taken) < 2_000, "no count went round to the largest: {:?}", haul.piles);
            prop_assert!(sheet::haul(&days.maker.shop(), days.haul).is_ok());
        }
    }

    /// Two phones part with the same book, go on for a while and are merged: every pile still makes sense, whichever is read first.
    #[test]
    fn two_phones_merged_leave_no_count_below_nothing(before in steps(ALL), one in steps(ALL), other in steps(ALL)) {
        let mut days = Days::begin();
        days.all(before);
        let mut there = Days { maker: days.maker.parted("other"), acts: days.acts.clone(), ..days };
        days.all(one);
        there.all(other);
        let both = days.maker.merged(&there.maker);
        prop_assert_eq!(&both, &there.maker.merged(&days.maker));
        for pile in &fold::haul(&both, days.haul).unwrap().piles {
            prop_assert!(pile.rejected() <= pile.taken && pile.sorted_good <= pile.good(), "{:?}", pile);
            prop_assert!(pile.reserved() <= pile.on_rack() && pile.lost() <= pile.good() && pile.free_for(None) <= pile.on_rack());
        }
    }

    #[test]
    fn moving_keeps_every_piece_and_its_volume(before in steps(WITHOUT_TAKING_BACK), moves in prop::collection::vec((0..2_usize, 1..30_u32), 1..12)) {
        let mut days = Days::begin();
        days.all(before);
        let counts = |haul: &Haul| [sum(haul, |p| p.taken), sum(haul, Pile::good), sum(haul, Pile::on_rack), sum(haul, Pile::used)];
        let volumes = |haul: &Haul| [haul.volume(|p| p.taken), haul.volume(Pile::good), haul.volume(Pile::on_rack)];
        let was = days.haul();
        for (pile, n) in moves {
            days.step(Step { what: 5, pile, job: 0, n });
            let now = days.haul();
            prop_assert_eq!(counts(&was), counts(&now));
            prop_assert_eq!(volumes(&was), volumes(&now), "both piles are of one size");
            // What lies on the rack is the sum over its piles, however they are split.
            let each = now.piles.iter().map(|pile| pile.piece().unwrap().unwrap().times(pile.on_rack()).unwrap());
            prop_assert_eq!(now.volume(Pile::on_rack), each.into_iter().try_fold(Volume::ZERO, Volume::plus));
        }
    }

    /// Jobs done before more rejects, leftovers burnt, racks counted up and down, acts taken back: the parts make up the whole.
    #[test]
    fn jobs_rack_and_workshop_make_up_the_haul(steps in steps(ALL)) {
        let mut days = Days::begin();
        let mut taken_back = false;
        for step in steps {
            taken_back |= days.step(step) && WITHOUT_TAKING_BACK <= step.what;
            let sheet = days.sheet();
            let (rack, workshop) = (sheet.rack.unwrap(), sheet.workshop.unwrap());
            let all: Vec<Share> = sheet.jobs.iter().map(|(_, share)| *share).chain([rack, workshop]).collect();
            let cost = Money::sum(sheet.currency, all.iter().map(|share| share.cost)).unwrap();
            let time = Span::sum(all.iter().map(|share| share.time));
            prop_assert_eq!((Some(cost), time), (sheet.costs, Span::minutes(83)), "{:?}", step);
            prop_assert!(!rack.cost.amount().is_sign_negative() && Span::ZERO <= rack.time, "a rack never owes");
            if !taken_back && sum(&days.haul(), Pile::on_rack) == 0 {
                prop_assert_eq!((rack.cost.is_zero(), rack.time), (true, Span::ZERO), "an empty rack holds nothing");
            }
        }
    }

    /// Whatever the rack was found to hold beyond the counts: jobs that go on carry at most the whole, but for what rounding adds.
    #[test]
    fn open_jobs_carry_at_most_the_whole(steps in steps(ALL)) {
        let mut days = Days::begin();
        for step in steps.into_iter().filter(|step| step.what != ENDING) {
            days.step(step);
            let sheet = days.sheet();
            let carried = |of: fn(&Share) -> i64| sheet.jobs.iter().map(|(_, share)| of(share)).sum::<i64>();
            let (whole, halves) = (cents(sheet.costs.unwrap()), i64::try_from(sheet.jobs.len()).unwrap());
            prop_assert!(2 * (carried(|share| cents(share.cost)) - whole) <= halves, "{:?}: {:?} of {}", step, sheet.jobs, whole);
            prop_assert!(2 * (carried(|share| share.time.as_minutes()) - 83) <= halves, "{:?}: {:?}", step, sheet.jobs);
            let workshop = sheet.workshop.unwrap();
            prop_assert!(-halves <= 2 * cents(workshop.cost) && -halves <= 2 * workshop.time.as_minutes(), "{:?}: {:?}", step, workshop);
        }
    }

    #[test]
    fn what_a_rack_is_counted_at_or_loses_moves_no_share_of_a_job(before in steps(WITHOUT_TAKING_BACK), after in steps(2)) {
        let mut days = Days::begin();
        days.all(before);
        let was = job_shares(&days.sheet());
        for step in after {
            days.step(Step { what: 11 + step.what, ..step });
            prop_assert_eq!(&job_shares(&days.sheet()), &was);
        }
    }

    #[test]
    fn a_job_that_is_done_keeps_its_share(before in steps(WITHOUT_JOBS_ENDING), after in steps(WITHOUT_JOBS_ENDING), which in 0..3_usize) {
        let mut days = Days::begin();
        days.all(before);
        let job = days.jobs[which];
        days.step(Step { what: 6, pile: 0, job: which, n: 1 });
        prop_assume!(days.step(Step { what: 13, pile: 0, job: which, n: 0 }));
        let share = |days: &Days| days.sheet().jobs.iter().find(|(id, _)| *id == job).map(|(_, share)| *share);
        let was = share(&days);
        for step in after {
            days.step(step);
            prop_assert_eq!(share(&days), was, "{:?}", step);
        }
    }
}
