//! What a kept or a used plan means later, when sizes, parts and the saw have changed.

use super::sticks::{STICKS, of_sticks};
use super::*;
use crate::ledger::decide::{HaulCommand, Lying, PileFacts};
use crate::ledger::fold::KeptPlan;
use crate::ledger::kind::plan::{PlanKept, SawSet};
use crate::ledger::{Device, Entry};
use crate::plan::post;
use crate::plan::rows::{check as check_of_rows, plan::Remainder};
use crate::plan::sticks::check as check_of_sticks;
use crate::sheet::make::changes::changes;
use crate::sheet::make::keep::{again, has_wood};

pub(super) struct Bench {
    pub(super) story: Story,
    pub(super) book: Book,
    clock: Clock,
    nth: u8,
}

impl Bench {
    pub(super) fn of(lines: &str) -> Bench {
        let story = tell(lines);
        assert_eq!(story.refused, []);
        let book = story.book.clone();
        let clock = Clock::new(Device::new([1; 8]), book.last_stamp());
        Bench { story, book, clock, nth: 0 }
    }

    pub(super) fn shop(&self) -> Shop<'_> {
        Shop::of(&self.book, self.story.now.at)
    }

    /// The story with what was ordered since.
    fn story_now(&self) -> Story {
        Story { book: self.book.clone(), ..self.story.clone() }
    }

    pub(super) fn order(&mut self, command: Command) -> crate::refusal::Answer<Vec<Entry>> {
        self.nth += 1;
        let entries =
            decide(&self.book, &command, Now { wall: self.story.now, chance: [self.nth; 10] })?.stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        Ok(entries)
    }

    pub(super) fn uses(
        &mut self,
        (given, answered, shown): &(Given, Answered, PlanSheet),
        instead: bool,
    ) -> crate::refusal::Answer<Vec<Entry>> {
        let left = left_over(given, shown, &|_, _| "left over".into());
        let plans = self.shop().job(given.ask.job).unwrap().plans;
        let all = crate::ledger::fold::in_use(&self.book, &plans).into_iter().map(|it| it.plan.id);
        let instead = all.filter(|_| instead).collect();
        self.order(Command::Plan(PlanCommand::Use { plan: Box::new(kept(given, answered, shown)), left, instead, partly: vec![] }))
    }

    pub(super) fn ends(&self, job: Id) -> (Count, Count, usize) {
        let all = sources(&self.shop(), job).unwrap();
        let n = |in_job| all.iter().find(|it| it.pile.length == Some(mm(365)) && it.in_job == in_job).map_or(0, |it| it.n);
        (n(false), n(true), all.iter().filter(|it| it.pile.length == Some(mm(293))).count())
    }

    pub(super) fn sized(&mut self, lying: Lying, facts: PileFacts) {
        self.order(Command::Haul(HaulCommand::DescribePile { haul: lying.haul, pile: lying.pile, facts })).unwrap();
    }
}

pub(super) fn oak_top() -> (Bench, (Given, Answered, PlanSheet)) {
    let bench = Bench::of(&format!("{BENCH}\nreopen bench"));
    let plan = planned(&bench.story, false);
    (bench, plan)
}

pub(super) fn as_kept(bench: &Bench, plan: PlanKept) -> KeptPlan {
    KeptPlan { id: plan.job, at: bench.story.now, by: Device::new([1; 8]), plan, used: true }
}

/// A plan with what goes back of it, as its problem has it: the checker says what lacks.
fn counting_rests(asked: &Asked, mut plan: Made) -> Answered {
    loop {
        match (asked, &mut plan) {
            (Asked::Rows(problem), Made::Rows(rows)) => match check_of_rows::check(problem, rows) {
                Err(check_of_rows::Broken::Remainder { pile, n, expected }) => {
                    rows.remainders.push(Remainder { pile, n, length: expected })
                }
                _ => break,
            },
            (Asked::Sticks(problem), Made::Sticks(sticks)) => match check_of_sticks::check(problem, sticks) {
                Err(check_of_sticks::Broken::Remainder { stick, expected }) => sticks.sticks[stick].remainder = expected,
                _ => break,
            },
            _ => break,
        }
    }
    let worth = asked.worth(&plan).unwrap();
    Answered { plan, bound: worth.clone(), worth }
}

/// A plan of an older book: without what newer ones say, and with the least to keep as it is.
pub(super) fn older(mut plan: PlanKept) -> PlanKept {
    let mut asked = post::read(&plan.problem).and_then(post::take).unwrap();
    let keep = plan.saw.as_ref().and_then(|saw| saw.lengths()[8]).unwrap().as_nm() / plan.unit.as_nm();
    match &mut asked {
        Asked::Rows(it) => it.keep_min = keep,
        Asked::Parts(it) => it.keep_min = keep,
        Asked::Sticks(it) => it.keep_min = keep,
        Asked::Field(_) => {}
    }
    plan.problem = post::write(&post::put(&asked));
    let answered = post::read(&plan.answer).and_then(post::take_answer).unwrap();
    plan.answer = post::write(&post::put_answer(&counting_rests(&asked, answered.plan)));
    (plan.saw, plan.parts) = (None, None);
    plan.piles.iter_mut().for_each(|pile| {
        (pile.thickness, pile.width, pile.length, pile.letter, pile.wood) = (None, None, None, None, None);
    });
    plan
}

pub(super) fn ends_of(given: &Given) -> Lying {
    given.sources.iter().find(|it| it.pile.length == Some(mm(365))).map(|it| it.which().0).unwrap()
}

/// The size of its pile is corrected after it was used: cuts, letters and waste are what they were, and the change is told. An older
/// book keeps the length in its row.
#[test]
fn a_used_plan_is_read_by_the_sizes_it_was_made_for() {
    let (mut bench, plan) = oak_top();
    let facts = kept(&plan.0, &plan.1, &plan.2);
    bench.uses(&plan, false).unwrap();
    bench.sized(ends_of(&plan.0), PileFacts { length: Some(mm(350)), ..Default::default() });
    for facts in [facts.clone(), older(facts)] {
        let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts), &[]).unwrap();
        let shown = sheet(&given.ready, &answered, given.room).unwrap();
        assert_eq!((&shown.lines, &shown.waste, &shown.used), (&plan.2.lines, &plan.2.waste, &plan.2.used));
        assert_eq!((given.sources[0].pile.length, given.ready.sources[0].letter.as_str()), (Some(mm(365)), "A"));
        assert_eq!(changes(&bench.shop(), (&given, &shown), true).unwrap(), [Change::Size(0)]);
    }
    // Thicker than its pile is now: before, it vanished.
    bench.sized(ends_of(&plan.0), PileFacts { thickness: Some(mm(20)), length: Some(mm(365)), ..Default::default() });
    let facts = kept(&plan.0, &plan.1, &plan.2);
    let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts), &[]).unwrap();
    assert_eq!(sheet(&given.ready, &answered, given.room).unwrap().waste, plan.2.waste);
}

/// Each thing it was made for, changed before it is used: it is told, and the plan is not possible any more.
#[test]
fn what_a_plan_was_made_for_is_compared_by_value() {
    let (mut bench, plan) = oak_top();
    let facts = kept(&plan.0, &plan.1, &plan.2);
    let told = |bench: &Bench, facts: &PlanKept| {
        let (given, _) = again(&bench.shop(), &as_kept(bench, facts.clone()), &[]).unwrap();
        changes(&bench.shop(), (&given, &plan.2), false).unwrap()
    };
    assert_eq!(told(&bench, &facts), []);
    let saw = |lengths: &[(usize, Length)]| {
        let mut all = [None; 13];
        lengths.iter().for_each(|(place, length)| all[*place] = Some(*length));
        Command::Plan(PlanCommand::SetSaw(SawSet::of(all, None)))
    };
    // What bears on parts alone, or is asked for each top, changes no rows.
    bench.order(saw(&[(2, mm(9)), (9, mm(55)), (12, mm(44))])).unwrap();
    assert_eq!(told(&bench, &facts), []);
    bench.order(saw(&[(0, mm(4)), (6, mm(3))])).unwrap();
    assert_eq!(told(&bench, &facts), [Change::Saw(vec![0, 6])]);
    assert!(!is_possible(&bench.shop(), &plan.0, &plan.2));
    bench.order(saw(&[(0, mm(3)), (6, mm(2))])).unwrap();
    assert_eq!(told(&bench, &facts), []);
    bench.sized(ends_of(&plan.0), PileFacts { width: Some(mm(140)), ..Default::default() });
    assert_eq!(told(&bench, &facts), [Change::Size(0)]);
    let why = Box::new(crate::refusal::Refusal::PlanOfOtherSizes);
    assert_eq!(bench.uses(&plan, false).err(), Some(crate::refusal::Refusal::OfPile { pile: "ends, A".into(), why }));
}

/// The oak ends are 365, and the least to keep was 500: an older book says so in its row. The 293 that are left of one stay out of it, and
/// the saw is as it was.
#[test]
fn an_older_plan_of_short_pieces_keeps_what_it_said() {
    let (mut bench, _) = oak_top();
    let mut all = [None; 13];
    all[8] = Some(mm(500));
    bench.order(Command::Plan(PlanCommand::SetSaw(SawSet::of(all, None)))).unwrap();
    let plan = planned(&bench.story_now(), false);
    let facts = kept(&plan.0, &plan.1, &plan.2);
    for facts in [facts.clone(), older(facts)] {
        let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts), &[]).unwrap();
        let shown = sheet(&given.ready, &answered, given.room).unwrap();
        assert_eq!((given.ready.figures.keep_min, shown.used[0].remainders.as_slice()), (mm(500), &[][..]));
        assert_eq!((&shown.lines, &shown.waste), (&plan.2.lines, &plan.2.waste));
        assert_eq!(changes(&bench.shop(), (&given, &shown), true).unwrap(), []);
    }
}

/// A pile that is no more leaves the cut list as it was.
#[test]
fn a_plan_outlives_its_pile() {
    let (bench, plan) = oak_top();
    let mut facts = kept(&plan.0, &plan.1, &plan.2);
    facts.piles[0].pile = facts.job;
    let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts.clone()), &[]).unwrap();
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!((shown.lines, shown.waste.share.is_some(), given.lacks.sizes), (plan.2.lines.clone(), true, false));
    let (given, answered) = again(&bench.shop(), &as_kept(&bench, older(facts)), &[]).unwrap();
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!((shown.lines, shown.waste.share, given.lacks.sizes), (plan.2.lines.clone(), None, true), "no waste by a size nobody knows");
}

/// A plan used instead of the one before gives that one's pieces and leftovers back in the same act; undone it is as it was, put back too,
/// and in any order of arrival.
#[test]
fn a_plan_used_instead_gives_the_pieces_before_back() {
    let (mut bench, plan) = oak_top();
    let job = plan.0.ask.job;
    let mut lines = vec![];
    let mut keep = |entries: Vec<Entry>| {
        let act = entries[0].id;
        lines.extend(entries.iter().map(crate::ledger::line::write));
        act
    };
    assert_eq!(bench.ends(job), (12, 11, 0));
    keep(bench.uses(&plan, true).unwrap());
    assert_eq!(bench.ends(job), (4, 19, 1));
    let second = keep(bench.uses(&plan, true).unwrap());
    assert_eq!(bench.ends(job), (4, 19, 1), "no wood is taken twice");
    let plans =
        |bench: &Bench| fold::job(&bench.book, job).unwrap().plans.iter().filter(|plan| plan.used).map(|plan| plan.id).collect::<Vec<_>>();
    assert_eq!(plans(&bench), [second]);
    keep(bench.order(Command::Book(BookCommand::TakeBack { act: second })).unwrap());
    assert_eq!((bench.ends(job), plans(&bench).len(), plans(&bench).contains(&second)), ((4, 19, 1), 1, false));
    keep(bench.order(Command::Book(BookCommand::Restore { act: second })).unwrap());
    assert_eq!((bench.ends(job), plans(&bench)), ((4, 19, 1), vec![second]));
    let third = keep(bench.uses(&plan, true).unwrap());
    assert_eq!((bench.ends(job), plans(&bench)), ((4, 19, 1), vec![third]));
    // The second is taken back where the third stands already: the first does not come back by it.
    keep(bench.order(Command::Book(BookCommand::TakeBack { act: second })).unwrap());
    assert_eq!((bench.ends(job), plans(&bench)), ((4, 19, 1), vec![third]));
    keep(bench.order(Command::Book(BookCommand::TakeBack { act: third })).unwrap());
    let shop = bench.shop();
    let before = sources(&shop, job).unwrap();
    for turned in 0..lines.len() {
        let mut other = bench.story.book.clone();
        let (late, early) = lines.split_at(turned);
        early.iter().rev().chain(late.iter().rev()).for_each(|line| {
            other.add_line(line);
        });
        assert_eq!(sources(&Shop::of(&other, bench.story.now.at), job).unwrap(), before, "{turned}");
    }
}

/// Where the wood of the plan before is cut, it stays in the job: what was left of it is used already.
#[test]
fn wood_that_was_cut_does_not_go_back() {
    let (mut bench, plan) = oak_top();
    let job = plan.0.ask.job;
    let small =
        |bench: &Bench| sources(&bench.shop(), job).unwrap().into_iter().find(|it| it.pile.length == Some(mm(293))).unwrap().which().0;
    bench.uses(&plan, false).unwrap();
    let Lying { haul, pile } = small(&bench);
    bench.order(Command::Haul(HaulCommand::Take { haul, pile, job, n: 1 })).unwrap();
    let refused = bench.uses(&plan, true).map(drop);
    assert!(matches!(&refused, Err(crate::refusal::Refusal::OfPile { pile, .. }) if !pile.is_empty()), "{refused:?}");
}

#[test]
fn a_plan_whose_wood_went_back_is_not_what_the_job_has() {
    let (mut bench, plan) = oak_top();
    let facts = kept(&plan.0, &plan.1, &plan.2);
    let (job, Lying { haul, pile }) = (plan.0.ask.job, ends_of(&plan.0));
    bench.uses(&plan, false).unwrap();
    assert!(has_wood(&bench.shop(), &facts));
    bench.order(Command::Haul(HaulCommand::Free { haul, pile, job, n: 12 })).unwrap();
    assert!(!has_wood(&bench.shop(), &facts));
}

/// What was left of boards that are put back whole by hand lies on the rack no more, in the same act: as soon as all that the plan took
/// is back, and where nobody has used it.
#[test]
fn boards_put_back_by_hand_take_what_was_left_of_them_off_the_rack() {
    let (mut bench, plan) = oak_top();
    let (job, Lying { haul, pile }) = (plan.0.ask.job, ends_of(&plan.0));
    let free = |bench: &mut Bench, n| bench.order(Command::Haul(HaulCommand::Free { haul, pile, job, n })).unwrap()[0].id;
    bench.uses(&plan, false).unwrap();
    free(&mut bench, 5);
    assert_eq!(bench.ends(job), (9, 14, 1), "three of the eight may be cut");
    let act = free(&mut bench, 3);
    assert_eq!(bench.ends(job), (12, 11, 0));
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!(bench.ends(job), (9, 14, 1));
    bench.order(Command::Book(BookCommand::Restore { act })).unwrap();
    assert_eq!(bench.ends(job), (12, 11, 0));
    // Used again it leaves as much again; once that is used, it stays what it is.
    bench.uses(&plan, false).unwrap();
    let left = sources(&bench.shop(), job).unwrap().into_iter().find(|it| it.pile.length == Some(mm(293))).unwrap().which().0;
    bench.order(Command::Haul(HaulCommand::Take { haul: left.haul, pile: left.pile, job, n: 1 })).unwrap();
    free(&mut bench, 8);
    assert_eq!(bench.ends(job), (12, 11, 1));
}

/// Two phones used another plan instead of the same one: with one of the two taken back the other has its place still.
#[test]
fn a_take_back_brings_no_second_plans_wood_in() {
    let (mut one, plan) = oak_top();
    let job = plan.0.ask.job;
    one.uses(&plan, true).unwrap();
    let mut two = oak_top().0;
    (two.book, two.clock, two.nth) = (one.book.clone(), Clock::new(Device::new([2; 8]), one.book.last_stamp()), 100);
    let here = one.uses(&plan, true).unwrap()[0].id;
    let there = two.uses(&plan, true).unwrap();
    let other = there[0].id;
    there.iter().for_each(|entry| drop(one.book.add(entry)));
    let plans =
        |bench: &Bench| fold::job(&bench.book, job).unwrap().plans.iter().filter(|plan| plan.used).map(|plan| plan.id).collect::<Vec<_>>();
    assert_eq!(plans(&one).len(), 2);
    one.order(Command::Book(BookCommand::TakeBack { act: here })).unwrap();
    assert_eq!((plans(&one), one.ends(job)), (vec![other], (4, 19, 1)), "what the other took the place of stays back");
    one.order(Command::Book(BookCommand::Restore { act: here })).unwrap_err();
    one.order(Command::Book(BookCommand::TakeBack { act: other })).unwrap();
    assert_eq!((plans(&one).len(), one.ends(job)), (1, (4, 19, 1)), "the first has its place again");
}

/// What the plan before left is what this one is made of: that it can't go back is said, and of which pile.
#[test]
fn a_plan_of_the_left_overs_of_the_one_before_keeps_it() {
    let mut bench = Bench::of(STICKS);
    let rails = of_sticks(&bench, "peg", 0);
    bench.uses(&rails, true).unwrap();
    bench.sized(rails.0.sources[0].which().0, PileFacts { length: Some(mm(300)), ..PileFacts::default() });
    let peg = of_sticks(&bench, "rail", 301);
    let label = peg.0.sources[0].pile.label.clone();
    assert_eq!(bench.uses(&peg, true).map(drop), Err(crate::refusal::Refusal::PlanOfLeftOvers { pile: label }));
    bench.uses(&peg, false).unwrap();
}

/// An older plan left its remainders as thick and wide as the strip was sawn, and its page counts so much as going back; one of today left
/// them planed.
#[test]
fn what_went_back_is_as_it_was_left() {
    let check = |older: bool| {
        let (mut bench, (given, answered, mut shown)) = oak_top();
        let rough = given.ready.sources[0].size;
        let planed = shown.used[0].section;
        assert!(planed[0] < rough[0] && !shown.used[0].remainders.is_empty(), "{planed:?} of {rough:?}");
        let wanted = if older { [rough[0], rough[1]] } else { planed };
        shown.used[0].section = wanted;
        bench.uses(&(given.clone(), answered.clone(), shown), false).unwrap();
        let shop = bench.shop();
        let plans = shop.job(given.ask.job).unwrap().plans;
        let (then, answered) = again(&shop, &plans[0], &[]).unwrap();
        let sheet = sheet_of(&then, &answered);
        assert_eq!(sheet.used[0].section, wanted, "older: {older}");
        sheet.waste.taken
    };
    assert!(check(true) < check(false), "more went back");
}

fn sheet_of(given: &Given, answered: &Answered) -> PlanSheet {
    crate::sheet::plan::sheet(&given.ready, answered, given.room).unwrap()
}
