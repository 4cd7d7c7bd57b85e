//! What lies beside the book on this phone: of each job the plan that was made and not used, and what was ticked at the saw. It outlives
//! a reload and a killed page. It is no fact: nothing was taken, and a plan that is made again is made in a second.
//! The browser writes it some seconds late: where all of it is killed, not only the page, the last ticks may be lost.

use super::cut::lay_in_hand;
use super::{Found, Plan};
use crate::app::App;
use crate::app::order::{Choice, Order};
use fivebar_core::ledger::decide::{Act, LeftBy, Lying, Now, left_by};
use fivebar_core::ledger::fold::KeptPlan;
use fivebar_core::ledger::kind::plan::{PlanKept, Shape};
use fivebar_core::ledger::{Clock, Fact, line};
use fivebar_core::plan::Figures;
use fivebar_core::plan::rows::ends;
use fivebar_core::quantity::{Count, Currency, Decimal, Id, Key, Length, Listed, Money, Wall};
use fivebar_core::sheet::make::buy::{Counted, Kinds, OfRack};
use fivebar_core::sheet::make::cut::{Ticks, lines_left, still_on};
use fivebar_core::sheet::make::keep::{in_use, kept};
use fivebar_core::sheet::make::{Boards, Given, Top, What, Which};
use fivebar_core::sheet::plan::ShortEnd;

/// In front of a plan that was dropped: it comes again where that is taken back.
const DROPPED: char = '!';
/// Of so many jobs, the last ones.
const JOBS: usize = 8;
const PART: char = '|';
/// Between what is ticked, how many lines there are, the plan they are of, what of a top was left open, what is not cut off yet, and
/// what a short end would give, the plan in use it was planned again from, the piles that were left out, how far what lies there goes
/// without boards to buy, how far those were looked through, what was bought in another size and counts, the lines left at the saw, and the
/// boards that were cut when it was made.
const OF: char = '/';

/// A plan that lies there.
pub struct Beside {
    pub plan: KeptPlan,
    pub ticked: Ticks,
    /// Of the plan in the book that is used, by its entry; another name where it is not used; none where that was not written yet.
    pub of: Option<Id>,
    /// Rows, thickness and wood of a top that were left to the pieces; whether what is over in width is of this plan alone; and whether a
    /// field may be in any pattern.
    pub open: [bool; 5],
    /// Lines at the saw; none where that was not written yet.
    pub lines: usize,
    /// Of each of what is left of its boards, pieces that are not cut off yet; nothing where that was not written yet.
    pub uncut: Vec<Count>,
    /// What a short end would give; none where that was not written yet.
    pub short: Option<ShortEnd>,
    /// The plan in use that it was planned again from.
    pub again: Option<Id>,
    /// Piles that were left out, or taken in of those the job has; none where that was not written yet.
    pub turned: Option<Vec<Which>>,
    pub bought: Vec<Boards>,
    /// How far what lies there alone went; none where that was not written yet, or was enough.
    pub of_rack: Option<OfRack>,
    pub kinds: Kinds,
    /// Boards that were bought in another size than it wants, and count all the same.
    pub counted: Vec<Counted>,
    /// Lines at the saw that are not cut to their end; none where that was not written yet.
    pub left: Option<usize>,
    /// Boards that were cut when it was made; none where that was not written yet.
    pub cut: Option<Vec<(Lying, Count)>>,
}

/// The plan in hand with its ticks is the one that lies there for its job.
pub fn keep(app: &mut App) {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()) else { return };
    let line = written(app, given, found, &app.plan);
    let job = given.ask.job.to_string();
    // What is ticked of the plans the wood is cut by stays beside a newer one: it says what is cut. So does what is ticked of one that
    // was put back, which can be taken back.
    let plans = plans(app, given.ask.job);
    let book = &app.shelf().book;
    let Some(in_hand) = read(&line) else { return };
    let is_same = |it: &Beside| it.of.is_some() && it.of == in_hand.of;
    let is_cut_by = |it: &Beside| plans.iter().any(|plan| plan.used && it.is_of(plan) && !in_hand.is_of(plan));
    let was_cut = |it: &Beside| !it.ticked.is_empty() && it.of.is_some_and(|of| book.entry(of).is_some());
    let mut drops = false;
    // Of plans that were dropped the last one stays, and what says that boards are cut; one that is in use again is dropped no more.
    let mut own = |text: &str| {
        let it = read(text).filter(|it| !is_same(it))?;
        let is_out = text.starts_with(DROPPED);
        if is_cut_by(&it) {
            return Some(marked(text, false));
        }
        let is_last = is_out && !std::mem::replace(&mut drops, true);
        let stays = is_last || was_cut(&it);
        stays.then(|| text.to_owned())
    };
    let others = app.here.plans.lines().filter_map(|line| if is_of_job(line, &job) { own(line) } else { Some(line.to_owned()) }).listed();
    let lines = std::iter::once(line).chain(others).listed();
    // What says that boards are cut goes with no other job's plans, as long as its own job goes on.
    let shop = app.shelf().shop(app.now.at);
    let stays = |text: &str| read(text).is_some_and(|it| was_cut(&it) && shop.job(it.plan.plan.job).is_ok_and(|job| job.ended.is_none()));
    let value = of_last_jobs(lines, stays).join("\n");
    write(app, value);
}

fn is_of_job(line: &str, job: &str) -> bool {
    line.trim_start_matches(DROPPED).starts_with(job)
}

/// Lines of the jobs that come first, and those that stay: however many plans of one lie there, they take no other's place.
fn of_last_jobs(mut lines: Vec<String>, stays: impl Fn(&str) -> bool) -> Vec<String> {
    let mut jobs: Vec<String> = vec![];
    lines.retain(|line| {
        let job = line.trim_start_matches(DROPPED).split(PART).next().unwrap_or_default();
        let is_there = jobs.iter().any(|known| known == job);
        if !is_there && jobs.len() < JOBS {
            jobs.push(job.to_owned());
            return true;
        }
        is_there || stays(line)
    });
    lines
}

/// Takes in what a short end would give the plan in hand, unless it was found of another.
pub fn short_end(app: &mut App, worth: &Figures, short: ends::ShortEnd) {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_mut()) else { return };
    if found.answered.worth == *worth {
        found.sheet = found.sheet.clone().with_short_end(&given.ready, Some(short));
        keep(app);
    }
}

fn written(app: &App, given: &Given, found: &Found, plan: &Plan) -> String {
    // It is as old as the plan: what was bought since is bought for it, whenever it was ticked.
    let wall = plan.made.map_or(app.now, |made| Wall::new(made, app.now.offset));
    let mut act = Act::new(Now { wall, chance: [0; 10] });
    act.add(kept(given, &found.answered, &found.sheet));
    let entries = act.stamped(&app.shelf().book, &mut Clock::new(app.shelf().device(), None));
    let (entry, own) = entries.first().map(|entry| (line::write(entry), entry.id)).unzip();
    let of = plan.used.or(own).map(|id| id.to_string()).unwrap_or_default();
    let bought: Vec<String> = given.ask.bought.iter().map(spelled).collect();
    let uncut = still_on(given, &found.sheet, &plan.ticked).iter().map(ToString::to_string).listed().join(",");
    let short = found.sheet.ends.short.map(|it| format!("{},{},{}", it.end.as_nm(), it.rows, it.strips)).unwrap_or_default();
    let again = plan.again.map(|id| id.to_string()).unwrap_or_default();
    let (ticks, lines, open) = (plan.ticked.written(), found.sheet.lines.len(), left_open(given));
    let turned = given.ask.turned.iter().map(|(at, in_job)| format!("{}.{}.{}", at.haul, at.pile, u8::from(*in_job))).listed().join(",");
    let of_rack = plan.of_rack.map(|it| format!("{},{}", it.made, u8::from(it.proven))).unwrap_or_default();
    let kinds = KINDS.into_iter().find(|(kinds, _)| *kinds == plan.kinds).map_or("", |(_, letter)| letter);
    let counted = plan.counted.iter().map(spelled_counted).listed().join(",");
    let left = lines_left(&found.sheet, &plan.ticked).to_string();
    let cut = given.cut.boards.iter().map(|(at, n)| format!("{}.{}.{n}", at.haul, at.pile)).listed().join(",");
    let [ticks, lines] = [ticks, lines.to_string()];
    let ticks = [ticks, lines, of, open, uncut, short, again, turned, of_rack, kinds.into(), counted, left, cut].join(&OF.to_string());
    [given.ask.job.to_string(), ticks, bought.join(";"), entry.unwrap_or_default()].join(&PART.to_string())
}

/// How far boards to buy were looked through, where that is more than with all kinds of them.
const KINDS: [(Kinds, &str); 3] = [(Kinds::EachAlone, "e"), (Kinds::InPairs, "p"), (Kinds::All, "a")];

/// The letters of what was left open, of what is over in width for one plan, and of any pattern.
const OPEN: [char; 5] = ['r', 't', 'w', 'o', 'p'];

fn left_open(given: &Given) -> String {
    let of_top = |open: fn(&Top) -> bool| if let What::Top(top) = &given.ask.what { open(top) } else { false };
    let over = given.ask.over.is_some();
    let any = matches!(&given.ask.what, What::Field(field) if 1 < field.patterns.len());
    let open = [of_top(|top| top.rows.is_none()), of_top(|top| top.thickness.is_none()), of_top(|top| top.pick.is_none()), over, any];
    OPEN.into_iter().zip(open).filter(|(_, open)| *open).map(|(letter, _)| letter).collect()
}

/// What lies there of a job.
pub fn of(app: &App, job: Id) -> Option<Beside> {
    read(app.here.plans.lines().nth(place_of(app, job)?)?)
}

/// Where it lies. A plan of the book that is in use no more was dropped, or another took its place: it is over.
fn place_of(app: &App, job: Id) -> Option<usize> {
    let plans = plans(app, job);
    let is_over = |line: &str| read(line).and_then(|it| it.of).is_some_and(|of| plans.iter().any(|plan| plan.id == of && !plan.used));
    let job = job.to_string();
    app.here.plans.lines().position(|line| line.starts_with(&job) && !is_over(line))
}

fn plans(app: &App, job: Id) -> Vec<KeptPlan> {
    app.shelf().shop(app.now.at).job(job).map(|job| job.plans).unwrap_or_default()
}

/// What lies there of a plan of the book.
pub fn of_plan(app: &App, plan: &KeptPlan) -> Option<Beside> {
    of_job(app, plan.plan.job).find(|it| it.is_of(plan))
}

/// What is ticked of a plan of the book on this phone.
pub fn ticks(app: &App, plan: &KeptPlan) -> Ticks {
    of_plan(app, plan).map(|it| it.ticked).unwrap_or_default()
}

/// Those that were dropped too: a plan of the book may be in use again.
fn of_job(app: &App, job: Id) -> impl Iterator<Item = Beside> + use<'_> {
    let job = job.to_string();
    app.here.plans.lines().filter(move |line| is_of_job(line, &job)).filter_map(read)
}

/// The plan of a job that lies there unused is dropped, or comes again; false where there is none.
pub fn dropped(app: &mut App, job: Id, drops: bool) -> bool {
    let name = job.to_string();
    let back = || app.here.plans.lines().position(|line| line.starts_with(DROPPED) && is_of_job(line, &name));
    let nth = if drops { place_of(app, job) } else { back() };
    nth.map(|nth| mark(app, nth, drops)).is_some()
}

/// What lies there of a plan of the book is of one that was dropped, or that is in use again.
pub fn dropped_of(app: &mut App, plan: Id, drops: bool) {
    if let Some(nth) = app.here.plans.lines().position(|line| read(line).is_some_and(|it| it.of == Some(plan))) {
        mark(app, nth, drops);
    }
}

/// What was dropped last lies first.
fn mark(app: &mut App, nth: usize, drops: bool) {
    let lines = app.here.plans.lines().enumerate();
    let first = lines.clone().filter(|(at, _)| *at == nth).map(|(_, line)| marked(line, drops));
    let value = first.chain(lines.clone().filter(|(at, _)| *at != nth).map(|(_, line)| line.to_owned())).listed().join("\n");
    write(app, value);
}

fn marked(line: &str, drops: bool) -> String {
    let line = line.trim_start_matches(DROPPED);
    if drops { format!("{DROPPED}{line}") } else { line.to_owned() }
}

fn write(app: &mut App, value: String) {
    app.here.plans.clone_from(&value);
    app.orders.push(Order::Choose { key: Choice::Plans, value });
}

/// A plan that was not used and is found again keeps what was ticked of it. What is ticked of any plan of the book is of that one alone, in
/// use or not: that is other wood. So is what was ticked of one that was dropped.
pub fn same_ticks(app: &mut App) {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()).filter(|_| app.plan.ticked.is_empty()) else { return };
    let plan = kept(given, &found.answered, &found.sheet);
    let (plans, job) = (plans(app, plan.job), plan.job.to_string());
    let is_other = |it: &Beside| plans.iter().any(|plan| it.is_of(plan));
    let mut lying = app.here.plans.lines().filter(|line| line.starts_with(&job)).filter_map(read);
    let same = lying.find(|it| it.is_alike(&plan) && !is_other(it));
    app.plan.ticked = same.map(|it| it.ticked).unwrap_or_default();
    lay_in_hand(app);
}

/// Of each job that goes on and has wood to cut by a plan, the lines at the saw that are left, and how many there are, of all plans with
/// lines left together.
pub fn cuts_left(app: &App) -> Vec<(Id, usize, usize)> {
    let mut all: Vec<(Id, usize, usize)> = vec![];
    for ToCut { job, left, lines, .. } in lists_left(app) {
        match all.iter_mut().find(|(of, ..)| *of == job) {
            Some((_, all_left, all_lines)) => {
                (*all_left, *all_lines) = (all_left.saturating_add(left), all_lines.saturating_add(lines));
            }
            None => all.push((job, left, lines)),
        }
    }
    all
}

/// The plan of a job that is cut next.
pub fn to_cut(app: &App, job: Id) -> Option<Id> {
    lists_left(app).into_iter().find(|it| it.job == job).map(|it| it.plan)
}

/// Whether a job has lines left at the saw.
pub fn is_to_cut(app: &App, job: Id) -> bool {
    to_cut(app, job).is_some()
}

/// A plan in use with lines left at the saw, of those there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ToCut {
    pub job: Id,
    pub plan: Id,
    pub shape: Shape,
    pub at: Wall,
    pub left: usize,
    pub lines: usize,
}

/// The lists at the saw that are not cut to their end, the newest plan first.
pub fn lists_left(app: &App) -> Vec<ToCut> {
    let shop = app.own.shop(app.now.at);
    let left = |it: Beside| {
        let left = it.left.unwrap_or_else(|| it.lines.saturating_sub(it.ticked.lines_done()));
        let job = Some(it.plan.plan.job).filter(|_| 0 < left).and_then(|job| shop.job(job).ok())?;
        let plan =
            in_use(&shop, &job.plans).into_iter().rev().map(|one| one.plan).find(|plan| it.is_of(plan)).filter(|_| job.ended.is_none())?;
        Some(ToCut { job: job.id, plan: plan.id, shape: plan.plan.shape, at: plan.at, left, lines: it.lines })
    };
    let mut all: Vec<_> = app.here.plans.lines().filter_map(read).filter_map(left).collect();
    all.sort_by_key(|it| std::cmp::Reverse(it.at.at));
    all
}

/// What plans in use leave of their boards lies on the rack, and is cut off at the saw: of each pile the pieces that are not cut off yet, as
/// far as this phone knows what is cut.
pub fn after_the_saw(app: &App) -> Vec<(Lying, Count)> {
    let shop = app.own.shop(app.now.at);
    let book = &app.own.book;
    let of = |it: Beside| {
        let job = Some(it.plan.plan.job).filter(|_| it.uncut.iter().any(|n| 0 < *n)).and_then(|job| shop.job(job).ok())?;
        let plan =
            in_use(&shop, &job.plans).into_iter().map(|one| one.plan.id).find(|id| it.of == Some(*id)).filter(|_| job.ended.is_none())?;
        let one = |(left, n): (LeftBy, Count)| Some((left.at, n.min(left.n()))).filter(|(_, n)| 0 < *n);
        Some(left_by(book, plan).into_iter().zip(it.uncut).filter_map(one).listed())
    };
    app.here.plans.lines().filter_map(read).filter_map(of).flatten().collect()
}

impl Beside {
    /// Whether it is of this plan of the book. An older line does not say so, and goes by its cuts.
    pub fn is_of(&self, plan: &KeptPlan) -> bool {
        self.of.map_or_else(|| self.is_alike(&plan.plan), |of| of == plan.id)
    }

    /// Of the same cuts.
    fn is_alike(&self, plan: &PlanKept) -> bool {
        (self.plan.plan.job, &self.plan.plan.answer) == (plan.job, &plan.answer)
    }
}

fn read(line: &str) -> Option<Beside> {
    let mut parts = line.splitn(4, PART).skip(1);
    let mut ticks = parts.next()?.split(OF);
    let ticked = Ticks::read(ticks.next()?);
    let lines = ticks.next().and_then(|lines| lines.parse().ok()).unwrap_or(0);
    let of = ticks.next().and_then(Id::read);
    let letters = ticks.next().unwrap_or_default();
    let uncut = ticks.next().unwrap_or_default().split(',').filter_map(|n| n.parse().ok()).collect();
    let short = ticks.next().and_then(end_of);
    let again = ticks.next().and_then(Id::read);
    let turned = ticks.next().map(|all| all.split(',').filter_map(which).collect());
    let of_rack = ticks.next().and_then(rack_of);
    let letter = ticks.next().unwrap_or_default();
    let kinds = KINDS.into_iter().find(|(_, own)| *own == letter).map(|(kinds, _)| kinds).unwrap_or_default();
    let counted = ticks.next().unwrap_or_default().split(',').filter_map(counted).collect();
    let left = ticks.next().and_then(|left| left.parse().ok());
    let cut = ticks.next().map(|all| all.split(',').filter_map(cut_of).collect());
    let bought = parts.next()?.split(';').filter_map(boards).collect();
    let line::Line::Known(entry) = line::read(parts.next()?) else { return None };
    let Fact::PlanKept(plan) = &entry.fact else { return None };
    let plan = KeptPlan { id: entry.id, at: entry.wall, by: entry.stamp.2, plan: plan.clone(), used: false };
    Some(Beside {
        plan,
        ticked,
        of,
        open: OPEN.map(|letter| letters.contains(letter)),
        lines,
        uncut,
        short,
        again,
        turned,
        bought,
        of_rack,
        kinds,
        counted,
        left,
        cut,
    })
}

fn which(text: &str) -> Option<Which> {
    let mut parts = text.split('.');
    let (haul, pile) = (Id::read(parts.next()?)?, Id::read(parts.next()?)?);
    Some((Lying { haul, pile }, parts.next()? == "1"))
}

fn cut_of(text: &str) -> Option<(Lying, Count)> {
    let mut parts = text.split('.');
    let (haul, pile) = (Id::read(parts.next()?)?, Id::read(parts.next()?)?);
    Some((Lying { haul, pile }, parts.next()?.parse().ok()?))
}

fn spelled_counted(it: &Counted) -> String {
    let [thick, wide, long] = it.size.map(Length::as_nm);
    format!("{}.{thick}.{wide}.{long}.{}", it.source, it.n)
}

fn counted(text: &str) -> Option<Counted> {
    let mut parts = text.split('.');
    let source = parts.next()?.parse().ok()?;
    let mut side = || Length::nm(parts.next()?.parse().ok()?).ok();
    let size = [side()?, side()?, side()?];
    Some(Counted { source, size, n: parts.next()?.parse().ok()? })
}

fn rack_of(text: &str) -> Option<OfRack> {
    let (made, proven) = text.split_once(',')?;
    Some(OfRack { made: made.parse().ok()?, proven: proven == "1" })
}

fn end_of(text: &str) -> Option<ShortEnd> {
    let mut parts = text.split(',').map_while(|n| n.parse().ok());
    let (end, rows, strips) = (parts.next()?, parts.next()?, parts.next()?);
    Some(ShortEnd { end: Length::nm(end).ok()?, rows, strips })
}

fn spelled(boards: &Boards) -> String {
    let wood = boards.wood.as_ref().map_or(String::new(), Key::to_string);
    let [thick, wide, long] = boards.size.map(|side| side.as_nm().to_string());
    let price = boards.price.map(|price| (price.amount().to_string(), price.currency().to_string())).unwrap_or_default();
    [wood, thick, wide, long, boards.n.to_string(), price.0, price.1].join(",")
}

fn boards(text: &str) -> Option<Boards> {
    let mut parts = text.split(',');
    let wood = Key::read(parts.next()?);
    let mut side = || Length::nm(parts.next()?.parse().ok()?).ok();
    let size = [side()?, side()?, side()?];
    let n = parts.next()?.parse().ok()?;
    let amount: Option<Decimal> = parts.next()?.parse().ok();
    let currency = Currency::read(parts.next()?).ok();
    let price = amount.zip(currency).and_then(|(amount, currency)| Money::whole(amount, currency));
    Some(Boards { wood, size, n, price })
}
