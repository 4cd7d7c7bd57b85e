//! A plan anew while boards of plans before are cut: those stay cut, what was cut of them counts as made, and no plan takes them again.

use super::cut::{Ticks, boards_cut, lines};
use super::{Ask, Given, Source, Unfit, What, WhyNot, asked_parts, fitting_of, given_of, sources};
use crate::ledger::decide::Lying;
use crate::ledger::fold::{Job, Part};
use crate::ledger::kind::plan::DesignPart;
use crate::quantity::{Count, Length, Listed};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::plan::wish::{Wanted, Wish};
use crate::sheet::plan::{GlueUp, PlanSheet};

/// What is cut for a job already.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AlreadyCut {
    /// Boards, by the piles they were of.
    pub boards: Vec<(Lying, Count)>,
    /// Parts; one that is glued up counts once all its strips are cut.
    pub parts: Vec<DesignPart>,
    /// Strips of glued parts that lack others: they are none of the parts.
    pub strips: Count,
    /// The plans they are of make parts for so many pieces of the job.
    pub sets: Count,
    /// Rows of the same top that plans before cut, where these are the others.
    pub rows: Count,
    /// Boards of plans whose place this one took, which stayed in the job; none before it is used.
    pub stayed: Count,
}

impl AlreadyCut {
    /// With what is ticked of one plan more.
    pub fn add(&mut self, (given, sheet): (&Given, &PlanSheet), ticks: &Ticks) {
        let mut piles: Vec<Lying> = vec![];
        for source in given.sources.iter().filter(|source| source.bought.is_none()) {
            let at = source.which().0;
            if !piles.contains(&at) {
                piles.push(at);
            }
        }
        let cut = piles.into_iter().map(|at| (at, boards_cut((given, sheet), ticks, at))).filter(|(_, n)| 0 < *n);
        for (at, n) in cut {
            match self.boards.iter_mut().find(|(of, _)| *of == at) {
                Some((_, all)) => *all = all.saturating_add(n),
                None => self.boards.push((at, n)),
            }
        }
        let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return };
        for (nth, part) in list.parts.iter().enumerate() {
            let (whole, strips) = parts_cut(sheet, ticks, nth);
            self.add_part(part, whole);
            self.strips = self.strips.saturating_add(Count::try_from(strips).unwrap_or(0));
        }
        let sets = if given.cut.sets == 0 { Count::try_from(sheet.made).unwrap_or(0) } else { given.cut.sets };
        self.sets = self.sets.max(sets);
    }

    fn add_part(&mut self, part: &Wanted, n: i64) {
        let n = Count::try_from(n).unwrap_or(0);
        let [thickness, width, length] = part.size;
        match self.parts.iter_mut().find(|it| it.name == part.name && [it.thickness, it.width, it.length] == part.size) {
            Some(it) => it.n = it.n.saturating_add(n),
            None if 0 < n => {
                let wood = part.wood.as_deref().and_then(crate::quantity::Key::read);
                self.parts.push(DesignPart { name: part.name.clone(), n, thickness, width, length, wood });
            }
            None => {}
        }
    }

    /// So many of a part as it is now.
    pub fn of(&self, part: &Part) -> Count {
        let is_it = |it: &&DesignPart| it.name == part.name && [it.thickness, it.width, it.length] == part.size;
        self.parts.iter().filter(is_it).fold(0, |sum, it| sum.saturating_add(it.n))
    }

    /// All parts together.
    pub fn pieces(&self) -> Count {
        self.parts.iter().fold(0, |sum: Count, part| sum.saturating_add(part.n))
    }

    pub fn boards(&self) -> Count {
        self.boards.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(*n))
    }

    /// Whether a plan that is not used yet was made with this.
    pub fn is_of(&self, given: &Given) -> bool {
        let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return self.boards == given.cut.boards };
        let known = |part: &&DesignPart| {
            let asked = list.parts.iter().any(|it| it.name == part.name && it.size == [part.thickness, part.width, part.length]);
            asked || given.cut.parts.iter().any(|it| it.name == part.name)
        };
        let now = self.parts.iter().filter(known).listed();
        self.boards == given.cut.boards && now.len() == given.cut.parts.len() && now.iter().all(|part| given.cut.parts.contains(part))
    }

    /// Of what the job has, boards that are cut are none to plan with.
    fn without(&self, mut all: Vec<Source>) -> Vec<Source> {
        for source in all.iter_mut().filter(|source| source.in_job) {
            let at = source.which().0;
            let cut = self.boards.iter().filter(|(of, _)| *of == at).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
            source.n = source.n.saturating_sub(cut);
        }
        all.retain(|source| 0 < source.n);
        all
    }
}

/// Parts of one place in the list that the ticked boards of a plan give, and strips of it that are no part yet.
fn parts_cut(sheet: &PlanSheet, ticks: &Ticks, part: usize) -> (i64, i64) {
    let mut strips: Vec<(Length, i64)> = vec![];
    for (line, n) in lines(sheet, ticks) {
        for cut in line.pieces.iter().filter(|cut| cut.part == Some(part)) {
            strips.push((cut.size[1], n.saturating_mul(cut.n)));
        }
    }
    let glued = sheet.glue_ups.iter().filter(|it| it.part == part).listed();
    let whole = glued.iter().map(|it| glued_of(it, &mut strips)).fold(0_i64, i64::saturating_add);
    // A strip of a part that lacks others is no part yet; what is of no glue-up is one by itself.
    let of_glue = |width: Length| glued.iter().any(|it| it.strips.iter().any(|(_, wide)| *wide == width));
    let left = |of: bool| strips.iter().filter(|(width, _)| of_glue(*width) == of).fold(0_i64, |sum, (_, n)| sum.saturating_add(*n));
    (whole.saturating_add(left(false)), left(true))
}

/// How many glued up alike have all their strips; these are used then.
fn glued_of(up: &GlueUp, strips: &mut [(Length, i64)]) -> i64 {
    let there =
        |strips: &[(Length, i64)], width| strips.iter().filter(|(of, _)| *of == width).fold(0_i64, |sum, (_, n)| sum.saturating_add(*n));
    let each = |(n, width): &(i64, Length)| there(strips, *width).checked_div(*n).unwrap_or(0);
    let whole = up.strips.iter().map(each).min().unwrap_or(0).min(up.n);
    for (n, width) in &up.strips {
        let mut used = n.saturating_mul(whole);
        for (_, there) in strips.iter_mut().filter(|(of, _)| of == width) {
            let taken = used.min(*there);
            (*there, used) = (there.saturating_sub(taken), used.saturating_sub(taken));
        }
    }
    whole
}

/// The problem the maker asks, without what is cut already: of parts the others.
///
/// # Errors
/// [`WhyNot`].
pub fn given_anew(shop: &Shop, ask: &Ask, cut: &AlreadyCut) -> Result<Given, WhyNot> {
    let job = asked_parts(shop.job(ask.job)?, ask);
    let all = cut.without(sources(shop, ask.job)?);
    let Some((rest, sets)) = rest(&job, ask, cut) else {
        let given = given_of(shop, &job, (ask, all))?;
        return Ok(Given { cut: AlreadyCut { boards: cut.boards.clone(), strips: cut.strips, ..AlreadyCut::default() }, ..given });
    };
    if rest.parts.is_empty() {
        return Err(WhyNot::AllCut { sets });
    }
    let what = if matches!(ask.what, What::Sticks(_)) { What::Sticks(Some(1)) } else { What::Parts(Some(1)) };
    let given = given_of(shop, &rest, (&Ask { what, ..ask.clone() }, all))?;
    let parts = cut.parts.iter().filter(|it| job.parts.iter().any(|part| part.name == it.name && 0 < cut.of(part))).cloned().listed();
    let cut = AlreadyCut { boards: cut.boards.clone(), strips: cut.strips, parts, sets, ..AlreadyCut::default() };
    Ok(Given { ask: ask.clone(), cut, ..given })
}

/// Each of the pieces with why it can't be used, without boards that are cut; what goes `back` with a plan before lies on the rack.
///
/// # Errors
/// As [`sources`].
pub fn fitting_anew(shop: &Shop, ask: &Ask, (cut, back): (&AlreadyCut, &[(Lying, Count)])) -> Answer<Vec<(Source, Option<Unfit>)>> {
    let all = back.iter().fold(sources(shop, ask.job)?, |all, gone| on_rack(all, *gone));
    fitting_of(shop, &asked_parts(shop.job(ask.job)?, ask), (ask, cut.without(all)))
}

/// With so many pieces of a pile on the rack that the job has.
fn on_rack(mut all: Vec<Source>, (at, n): (Lying, Count)) -> Vec<Source> {
    let Some(own) = all.iter().position(|source| source.which() == (at, true)) else { return all };
    let n = all.get(own).map_or(0, |source| source.n.min(n));
    let lying = all.iter().position(|source| source.which() == (at, false));
    if let Some(source) = all.get_mut(own) {
        source.n = source.n.saturating_sub(n);
    }
    match lying.and_then(|place| all.get_mut(place)) {
        Some(source) => source.n = source.n.saturating_add(n),
        None => {
            let first = all.iter().position(|source| source.in_job).unwrap_or(0);
            let one = all.get(own).map(|source| Source { in_job: false, n, ..source.clone() });
            one.into_iter().for_each(|one| all.insert(first, one));
        }
    }
    all
}

/// The job as one piece of all parts that are still to be cut, and for how many of it they are; nothing where no part is cut.
fn rest(job: &Job, ask: &Ask, cut: &AlreadyCut) -> Option<(Job, Count)> {
    let (What::Parts(sets) | What::Sticks(sets)) = ask.what else { return None };
    if job.parts.iter().all(|part| cut.of(part) == 0) {
        return None;
    }
    let sets = sets.unwrap_or(cut.sets);
    let mut rest = job.clone();
    for part in &mut rest.parts {
        part.n = part.n.saturating_mul(sets).saturating_sub(cut.of(part));
    }
    rest.parts.retain(|part| 0 < part.n);
    Some((rest, sets))
}
