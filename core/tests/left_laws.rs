//! Laws of what is left over, on invented plans: used + left + kerf + waste = taken, on the sheet and on the rack, and one tap gives
//! all of it back.

mod maker;

use fivebar_core::haul::Pile;
use fivebar_core::ledger::decide::{BookCommand, Command, HaulCommand, JobCommand, LeftOver, Lying, PlanCommand, StockCommand};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::plan::{PlanKept, PlanPile, Shape};
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::{Asked, post, sticks};
use fivebar_core::quantity::{Count, Currency, Id, Length, Units, Volume};
use fivebar_core::sheet::haul::volumes;
use fivebar_core::sheet::plan::figures::Figures;
use fivebar_core::sheet::plan::ready::ready;
use fivebar_core::sheet::plan::sheet;
use fivebar_core::sheet::plan::stock::Stack;
use fivebar_core::sheet::plan::wish::{Parts, Wanted, Wish};
use fivebar_core::wood::movement::Room;
use fivebar_core::wood::woods::Woods;
use maker::{Maker, key, mm};
use proptest::prelude::*;

const SIZES: [[i64; 3]; 2] = [[30, 140, 900], [27, 60, 1200]];

struct Rack {
    maker: Maker,
    haul: Id,
    piles: [Id; 2],
    job: Id,
    /// The act that was done last, or else the one that was taken back.
    done: Option<Id>,
    undone: Option<Id>,
    /// By which plans were used.
    plans: Vec<Id>,
    /// So many pieces of each pile there are, as the rack was counted last: no fewer than the first, and no more than the second. What a count
    /// found beyond what was told may be pieces that go back later.
    whole: [[Count; 2]; 2],
}

fn rack() -> Rack {
    let mut maker = Maker::new(Currency::USD);
    maker.at((2026, 3, 2), 540, -5);
    let haul = maker.trip(None, Length::MILE, ("0.725", Per::Km), (47, 36));
    let piles = [(9, SIZES[0]), (7, SIZES[1])].map(|(n, size)| maker.pile(haul, Some("oak-european"), size.map(mm), n));
    let (name, currency) = ("stool".into(), Currency::USD);
    let job = maker.order(Command::Job(JobCommand::Begin { name, currency, units: Units::Metric, pieces: 1, made_for: For::Spec }))[0];
    Rack { maker, haul, piles, job, done: None, undone: None, plans: vec![], whole: [[9, 9], [7, 7]] }
}

impl Rack {
    fn kept(&self, used: [Count; 2]) -> PlanKept {
        let asked = Asked::Sticks(sticks::problem::Problem {
            parts: vec![sticks::problem::Part { id: "leg".into(), per_set: 1, length: 400, piles: None }],
            piles: [0, 1].map(|n| sticks::problem::Pile { id: n.to_string(), count: 9, length: 900 }).to_vec(),
            ..Default::default()
        });
        let answered = asked.solve(&mut Patience::new(Some(100), &mut |_: Progress<'_>| true), 1);
        let pile = |(pile, n): (Id, Count)| PlanPile {
            haul: self.haul,
            pile,
            n: 9,
            rips: None,
            used: Some(n),
            in_job: None,
            thickness: None,
            width: None,
            length: None,
            letter: None,
            wood: None,
        };
        PlanKept {
            job: self.job,
            shape: Shape::Sticks,
            unit: mm(1),
            piles: self.piles.into_iter().zip(used).map(pile).collect(),
            problem: post::write(&post::put(&asked)),
            answer: post::write(&post::put_answer(&answered)),
            width: None,
            thickness: None,
            saw: None,
            parts: None,
            strip: None,
            cut: None,
            sets: None,
            tile: None,
            rows_cut: None,
            boards_cut: None,
        }
    }

    /// Gross, good and used volume of the haul, what lies on the rack, and in how many piles.
    fn volumes(&self) -> (Volume, Volume, Volume, Volume, usize) {
        let haul = fold::haul(&self.maker.book, self.haul).unwrap();
        let all = volumes(&haul).unwrap();
        let [gross, good, used] = [all.gross, all.good, all.used].map(Option::unwrap);
        (gross, good, used, haul.volume(|pile| pile.on_rack()).unwrap(), haul.piles.len())
    }

    fn in_use(&self) -> Vec<Id> {
        let plans = fold::job(&self.maker.book, self.job).unwrap().plans;
        fold::in_use(&self.maker.book, &plans).into_iter().map(|it| it.plan.id).collect()
    }

    fn chosen(&self, instead: u8) -> Vec<Id> {
        self.in_use().into_iter().enumerate().filter(|(nth, _)| *nth < 8 && instead >> nth & 1 == 1).map(|(_, id)| id).collect()
    }

    fn brought(&self) -> Count {
        fold::haul(&self.maker.book, self.haul).unwrap().taken()
    }
}

/// What a maker does with the wood of plans.
#[derive(Clone, Copy, Debug)]
enum Deed {
    /// Each board leaves one piece. Used instead of those plans in use whose bit is set, the first of them lowest.
    Use([Count; 2], u8),
    Free(usize, Count),
    /// No more than are missing.
    Again,
    /// The deed before, and that again, as the app offers it.
    TakeBack,
    Restore,
    /// The nth of the plans, past all that came after it: of the day's list, or by another phone.
    TakeBackOf(usize),
    RestoreOf(usize),
    /// The rack is counted: of a pile so many pieces more lie there than the book says, or fewer.
    Walk(usize, i8),
    /// The same of what is left of the pile's pieces: as many as the book says.
    WalkLeft(usize),
}

/// Beside all plans in use, and instead of all.
const NONE: u8 = 0;
const ALL: u8 = u8::MAX;

fn deeds() -> impl Strategy<Value = Vec<Deed>> {
    let deed = prop_oneof![
        3 => ([0_u32..4, 1_u32..4], prop_oneof![Just(NONE), Just(ALL), any::<u8>()]).prop_map(|(used, instead)| Deed::Use(used, instead)),
        3 => (0_usize..2, 1_u32..5).prop_map(|(pile, n)| Deed::Free(pile, n)),
        3 => Just(Deed::Again),
        2 => Just(Deed::TakeBack),
        1 => Just(Deed::Restore),
        2 => (0_usize..6).prop_map(Deed::TakeBackOf),
        2 => (0_usize..6).prop_map(Deed::RestoreOf),
        3 => (0_usize..2, -2_i8..6).prop_map(|(pile, more)| Deed::Walk(pile, more)),
        1 => (0_usize..2).prop_map(Deed::WalkLeft),
    ];
    proptest::collection::vec(deed, 1..12)
}

impl Rack {
    /// Whether it was not refused.
    fn does(&mut self, deed: Deed) -> bool {
        let job = self.job;
        let command = match deed {
            Deed::Use(used, instead) => {
                let left = |(place, n): (usize, Count)| LeftOver {
                    haul: self.haul,
                    of: self.piles[place],
                    n,
                    size: [SIZES[place][0], SIZES[place][1], 300].map(mm),
                    name: "left".into(),
                };
                let instead = self.chosen(instead);
                let left = used.into_iter().enumerate().map(left).collect();
                Command::Plan(PlanCommand::Use { plan: Box::new(self.kept(used)), left, instead, partly: vec![] })
            }
            Deed::Free(place, n) => Command::Haul(HaulCommand::Free { haul: self.haul, pile: self.piles[place], job, n }),
            Deed::Again => Command::Plan(PlanCommand::TakeAgain { job }),
            Deed::Walk(..) | Deed::WalkLeft(_) => return self.walks(deed),
            Deed::TakeBack => {
                let Some(act) = self.done else { return false };
                Command::Book(BookCommand::TakeBack { act })
            }
            Deed::Restore => {
                let Some(act) = self.undone else { return false };
                Command::Book(BookCommand::Restore { act })
            }
            Deed::TakeBackOf(nth) | Deed::RestoreOf(nth) => {
                let Some(act) = self.plans.get(nth).copied() else { return false };
                Command::Book(if let Deed::TakeBackOf(_) = deed { BookCommand::TakeBack { act } } else { BookCommand::Restore { act } })
            }
        };
        let done = self.maker.try_order(command);
        let act = done.as_ref().ok().and_then(|ids| ids.first().copied());
        self.plans.extend(act.filter(|_| matches!(deed, Deed::Use(..))));
        (self.done, self.undone) = match deed {
            Deed::TakeBack => (None, self.done.filter(|_| done.is_ok())),
            Deed::Restore => (self.undone.filter(|_| done.is_ok()), None),
            Deed::TakeBackOf(nth) => (None, self.plans.get(nth).copied().filter(|_| done.is_ok())),
            Deed::RestoreOf(nth) => (self.plans.get(nth).copied().filter(|_| done.is_ok()), None),
            _ => (act, None),
        };
        done.is_ok()
    }

    /// The rack is counted; the deed before is done still.
    fn walks(&mut self, deed: Deed) -> bool {
        let haul = fold::haul(&self.maker.book, self.haul).unwrap();
        let (pile, n) = match deed {
            Deed::Walk(place, more) => {
                let there = haul.pile(self.piles[place]).unwrap();
                let n = there.on_rack().saturating_add_signed(more.into());
                let all = there.in_job(self.job) + n;
                let least = if 0 < there.in_job(self.job) { self.whole[place][0].min(all) } else { all };
                self.whole[place] = [least, all];
                (there.id, n)
            }
            Deed::WalkLeft(place) => {
                let Some(left) = haul.piles.iter().find(|it| is_left(it, place)) else { return false };
                (left.id, left.on_rack())
            }
            _ => return false,
        };
        self.maker.try_order(Command::Stock(Lying { haul: self.haul, pile }, StockCommand::CountRack { n, why: None })).is_ok()
    }

    /// Of each pile: on the rack, in the job, and what is left of it on the rack.
    fn pieces(&self) -> [(Count, Count, Count); 2] {
        let haul = fold::haul(&self.maker.book, self.haul).unwrap();
        [0, 1].map(|place| {
            let pile = haul.pile(self.piles[place]).unwrap();
            let left = haul.piles.iter().filter(|it| is_left(it, place));
            (pile.on_rack(), pile.in_job(self.job), left.map(|it| it.on_rack()).sum())
        })
    }

    /// Of each pile the pieces its plans have and lack, but for some plans.
    fn of_plans(&self, but: &[Id]) -> [(Count, Count); 2] {
        let plans = fold::job(&self.maker.book, self.job).unwrap().plans;
        let all = fold::in_use(&self.maker.book, &plans);
        [0, 1].map(|place| {
            let shares = all
                .iter()
                .filter(|it| !but.contains(&it.plan.id))
                .flat_map(|it| &it.shares)
                .filter(|((_, pile), _)| *pile == self.piles[place]);
            shares.fold((0, 0), |(has, lacks), (_, share)| (has + share.needs - share.lacks, lacks + share.lacks))
        })
    }
}

fn is_left(pile: &Pile, place: usize) -> bool {
    (pile.thickness, pile.length) == (Some(mm(SIZES[place][0])), Some(mm(300)))
}

fn agrees(deeds: &[Deed]) -> Result<(), TestCaseError> {
    let mut rack = rack();
    for (nth, deed) in deeds.iter().enumerate() {
        let before = rack.pieces();
        let instead = if let Deed::Use(_, instead) = deed { rack.chosen(*instead) } else { vec![] };
        let stay = rack.of_plans(&instead);
        let done = rack.does(*deed);
        let (now, plans) = (rack.pieces(), rack.of_plans(&[]));
        let told = (&deeds[..=nth], before, now, plans);
        for place in 0..2 {
            let (on_rack, in_job, left) = now[place];
            let [least, most] = rack.whole[place];
            prop_assert!((least..=most).contains(&(on_rack + in_job)), "{:?} {:?}", rack.whole[place], told);
            prop_assert_eq!((left, plans[place].0), (in_job, in_job), "{:?}", told);
            prop_assert!(done || now[place] == before[place] || matches!(deed, Deed::Walk(..)), "{:?}", told);
        }
        match deed {
            // The plans that stay keep what they have.
            Deed::Use(used, _) if done => {
                prop_assert_eq!(now.map(|it| it.1), [0, 1].map(|place| used[place] + stay[place].0), "{:?}", told);
                prop_assert_eq!(plans.map(|it| it.1), stay.map(|it| it.1), "{:?}", told);
            }
            // A plan that had lost all its boards may be one by then, and lack others.
            Deed::Again if done => {
                let in_job = |of: [(Count, Count, Count); 2]| of.iter().map(|it| it.1).sum::<Count>();
                prop_assert!(in_job(before) < in_job(now), "{:?}", told);
            }
            _ => {}
        }
    }
    Ok(())
}

#[track_caller]
fn check(deeds: &[Deed]) {
    if let Err(why) = agrees(deeds) {
        panic!("{why}");
    }
}

/// What it leaves lies in a pile that a plan began which was replaced with it.
#[test]
fn a_plan_that_was_replaced_stands_again_beside_its_replacement() {
    use Deed::{RestoreOf, TakeBack, TakeBackOf, Use};
    check(&[Use([0, 1], NONE), Use([0, 1], NONE), Use([0, 1], ALL), RestoreOf(1)]);
    let late = [Use([0, 1], ALL), TakeBack, Use([0, 1], NONE), RestoreOf(2)];
    check(&[Use([0, 1], NONE), Use([0, 1], NONE), late[0], late[1], late[2], late[3]]);
    check(&[Use([1, 1], NONE), Use([2, 1], ALL), RestoreOf(0), TakeBackOf(1)]);
}

/// What was put back and taken again for it goes with it, and the other plan keeps its boards and what these leave.
#[test]
fn a_plan_is_taken_back_past_what_was_put_back_and_taken_again_since() {
    use Deed::{Again, Free, TakeBackOf, Use};
    check(&[Use([1, 1], NONE), Use([2, 1], NONE), Free(0, 1), Again, TakeBackOf(1)]);
    check(&[Use([1, 1], NONE), Use([2, 1], NONE), Free(0, 2), Again, TakeBackOf(0)]);
}

#[test]
fn a_plan_that_is_taken_back_twice_leaves_the_pile_of_another() {
    use Deed::{TakeBackOf, Use};
    check(&[Use([0, 1], NONE), Use([0, 1], NONE), TakeBackOf(0), TakeBackOf(0)]);
}

/// Boards that go back are added to what was counted, and taken again from it.
#[test]
fn what_was_counted_on_the_rack_keeps_no_board_of_a_plan() {
    use Deed::{Free, Restore, TakeBack, Use, Walk, WalkLeft};
    check(&[Use([3, 2], NONE), Walk(0, 0), WalkLeft(0), TakeBack, Restore]);
    check(&[Use([3, 2], NONE), TakeBack, Walk(0, -1), Restore]);
    check(&[Use([3, 2], NONE), Walk(0, 1), Use([4, 2], ALL), Walk(0, -2), TakeBack, Restore]);
    check(&[Use([3, 2], NONE), Free(0, 2), Walk(0, -2), TakeBack, Restore]);
}

/// Of nine, where three are taken and as many more are found than the book says.
#[test]
fn what_was_found_and_goes_back_lies_there_once() {
    let racks = [-2, 0, 1, 2, 3, 5].map(|more| {
        let mut rack = rack();
        for deed in [Deed::Use([3, 1], NONE), Deed::Walk(0, more), Deed::TakeBack] {
            rack.does(deed);
        }
        rack.pieces()[0].0
    });
    assert_eq!(racks, [7, 9, 9, 9, 9, 11]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever is put back, taken again, planned instead and taken back: no piece is lost or doubled, all that the job has is its plans',
    /// and what they leave lies on the rack for just the boards that the job has.
    #[test]
    fn a_plan_and_the_rack_agree(deeds in deeds()) {
        agrees(&deeds)?;
    }

    /// The haul is as large as it was, whatever of it is left over: what the job has and what lies on the rack are all of it.
    #[test]
    fn what_is_left_over_is_on_the_rack_and_no_more_in_the_job(
        used in [1_u32..6, 1_u32..6],
        left in proptest::collection::vec((0_usize..2, 250_i64..400, 1_u32..3), 0..4),
    ) {
        // No more is left over of a pile than was used of it.
        let long = |place: usize| left.iter().filter(|(of, _, _)| *of == place).map(|(_, length, n)| length * i64::from(*n)).sum::<i64>();
        prop_assume!((0..2).all(|place| long(place) <= i64::from(used[place]) * SIZES[place][2]));
        let mut rack = rack();
        let (plan, before) = (rack.kept(used), rack.volumes());
        let over = |(place, length, n): &(usize, i64, Count)| LeftOver {
            haul: rack.haul, of: rack.piles[*place], n: *n, size: [SIZES[*place][0], SIZES[*place][1], *length].map(mm), name: "left".into(),
        };
        let left: Vec<LeftOver> = left.iter().map(over).collect();
        let volume = |n: Count, [a, b, c]: [Length; 3]| Volume::of(a, b, c).unwrap().times(n).unwrap();
        let taken = used.iter().zip(SIZES).map(|(n, size)| volume(*n, size.map(mm))).fold(Volume::ZERO, |sum, it| sum.plus(it).unwrap());
        let back = left.iter().map(|one| volume(one.n, one.size)).fold(Volume::ZERO, |sum, it| sum.plus(it).unwrap());
        let act = rack.maker.order(Command::Plan(PlanCommand::Use { plan: Box::new(plan), left, instead: vec![], partly: vec![] }))[0];
        let (gross, good, in_job, on_rack, _) = rack.volumes();
        prop_assert_eq!((gross, good), (before.0, before.1));
        prop_assert_eq!(in_job, taken.less(back));
        prop_assert_eq!(on_rack.plus(in_job).unwrap(), good);
        prop_assert_eq!(rack.brought(), 16);
        rack.maker.order(Command::Book(BookCommand::TakeBack { act }));
        prop_assert_eq!(rack.volumes(), before);
    }

    /// On the sheet: what is taken is finished pieces, what goes back, and what trims, kerfs and ends too short to keep come to.
    #[test]
    fn taken_is_pieces_and_left_and_kerf_and_waste(
        piles in proptest::collection::vec((1_u32..5, 700_i64..1500), 1..3),
        parts in proptest::collection::vec((1_i64..4, 120_i64..600), 1..4),
    ) {
        let woods = Woods::default();
        let oak = woods.find("oak-european").unwrap();
        let stack = |(n, length): &(u32, i64)| Stack::bought((key("oak-european"), &oak), [30, 50, *length].map(mm), *n, None);
        let stock: Vec<Stack> = piles.iter().map(stack).collect();
        let part = |(nth, (n, length)): (usize, &(i64, i64))| Wanted {
            name: nth.to_string(), n: *n, size: [28, 48, *length].map(mm), glue: false, wood: None, rest_of: None,
        };
        let wish = Wish::Sticks(Parts { sets: None, parts: parts.iter().enumerate().map(part).collect() });
        let ready = ready(wish, &stock, Figures::usual(Units::Metric).unwrap()).unwrap();
        let answered = ready.asked.solve(&mut Patience::new(Some(2_000), &mut |_: Progress<'_>| true), 1);
        let sheet = sheet(&ready, &answered, Room::HEATED).unwrap();
        let (figures, mut lost, mut taken, mut kept, mut cut) = (&ready.figures, 0, 0, 0, 0);
        for line in &sheet.lines {
            let low = ready.sources[line.source].size[2].as_nm();
            let pieces: i64 = line.pieces.iter().map(|cut| cut.n * cut.size[0].as_nm()).sum();
            let (n, back) = (line.pieces.iter().map(|cut| cut.n).sum::<i64>(), line.remainder.map_or(0, Length::as_nm));
            let kerfs = figures.kerf.as_nm() * (n - 1 + i64::from(0 < back));
            let end = low - pieces - back - kerfs - 2 * figures.end_trim.as_nm();
            prop_assert!(0 <= end && (back == 0 || end == 0), "{:?}", line);
            prop_assert!(back == 0 || figures.keep_min.as_nm() <= back);
            prop_assert!(0 < back || end - figures.kerf.as_nm() < figures.keep_min.as_nm(), "long enough to keep: {:?}", line);
            lost += line.n * (kerfs + end + 2 * figures.end_trim.as_nm());
            taken += line.n * low;
            (kept, cut) = (kept + line.n * back, cut + line.n * pieces);
        }
        prop_assert_eq!(sheet.waste.length.map(|it| it.map(Length::as_nm)), Some([lost, taken - kept]));
        let of = |length: i64| Volume::of(mm(30), mm(50), Length::nm(length).unwrap()).unwrap();
        let finished = Volume::of(mm(28), mm(48), Length::nm(cut).unwrap()).unwrap();
        prop_assert_eq!((sheet.waste.taken, sheet.waste.finished), (of(taken - kept), finished));
        prop_assert_eq!((sheet.waste.cutting, sheet.waste.sizing), (of(lost), of(cut).less(finished)));
        prop_assert_eq!(sheet.waste.wasted, of(taken - kept).less(finished));
    }
}
