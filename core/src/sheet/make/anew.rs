//! A plan anew while boards of plans before are cut: those stay cut, what was cut of them counts as made, and no plan takes them again.

use super::cut::{Ticks, boards_cut, lines};
use super::glued::{Begun, is_same};
use super::{Ask, Given, Source, Unfit, What, WhyNot, asked_parts, fitting_of, given_of, given_of_rests, sources};
use crate::ledger::decide::Lying;
use crate::ledger::fold::{Job, Part};
use crate::ledger::kind::plan::DesignPart;
use crate::quantity::{Count, Key, Length, Listed};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::wish::{Wanted, Wish};
use crate::sheet::plan::{GlueUp, PlanSheet};

/// What is cut for a job already.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AlreadyCut {
    /// Boards, by the piles they were of.
    pub boards: Vec<(Lying, Count)>,
    /// Parts; one that is glued up counts once all its strips are cut.
    pub parts: Vec<DesignPart>,
    /// Strips of glued parts that lack others.
    pub strips: Count,
    /// The parts of which these are; such a part stands among the parts, too, though none of it may be whole.
    pub begun: Vec<Begun>,
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
            let woods = woods_cut((given, sheet), ticks, nth);
            self.add_of(&given.ready.figures, (part, &woods), parts_cut(sheet, ticks, nth));
        }
        self.strips = self.begun.iter().fold(0, |sum: Count, it| sum.saturating_add(it.strips));
        let sets = if given.cut.sets == 0 { Count::try_from(sheet.made).unwrap_or(0) } else { given.cut.sets };
        self.sets = self.sets.max(sets);
    }

    /// So many of a part that a plan cut, and those of which it cut some strips. The rest of a part makes it whole, or lacks less of it.
    /// Each is of the wood that was cut of it; one of strips only where these are all of one.
    fn add_of(&mut self, figures: &Figures, (part, woods): (&Wanted, &[(Option<Key>, i64)]), (whole, begun): (i64, Vec<Vec<Length>>)) {
        let [thickness, width, length] = part.size;
        let wood = if let [(wood, _)] = woods { wood.clone() } else { None };
        let one = DesignPart { name: part.name.clone(), n: 1, thickness, width: part.rest_of.unwrap_or(width), length, wood };
        if part.rest_of.is_some() {
            let rest = [width.plus(figures.allow[1]).unwrap_or(width)];
            (0..whole).for_each(|_| self.add_strips(&one, &rest, (width, figures)));
        } else if woods.iter().fold(0_i64, |sum, (_, n)| sum.saturating_add(*n)) == whole {
            for (wood, n) in woods {
                self.add_part(&DesignPart { wood: wood.clone(), ..one.clone() }, Count::try_from(*n).unwrap_or(0));
            }
        } else if 0 < whole {
            self.add_part(&one, Count::try_from(whole).unwrap_or(0));
        }
        begun.iter().for_each(|strips| self.add_strips(&one, strips, (width, figures)));
    }

    /// Strips of one part more; of one that is begun they are the rest, where it lacks so much.
    fn add_strips(&mut self, one: &DesignPart, strips: &[Length], (lacks, figures): (Length, &Figures)) {
        let is_it = |it: &Begun| is_same(&it.part, one) && it.lacks() == Some(lacks);
        let place = self.begun.iter().position(is_it);
        let it = place.map_or_else(|| Begun::none(one, figures), |place| self.begun.remove(place));
        let mut it = strips.iter().fold(it, |it, width| it.with(*width, figures));
        it.part.wood = it.part.wood.filter(|wood| one.wood.as_ref() == Some(wood));
        self.add_part(&it.part, it.lacks().is_none().into());
        self.begun.extend(Some(it).filter(|it| it.lacks().is_some()));
    }

    fn add_part(&mut self, one: &DesignPart, n: Count) {
        match self.parts.iter_mut().find(|it| is_same(it, one) && it.wood == one.wood) {
            Some(it) => it.n = it.n.saturating_add(n),
            None => self.parts.push(DesignPart { n, ..one.clone() }),
        }
    }

    /// So many of a part as it is now.
    pub fn of(&self, part: &Part) -> Count {
        self.parts.iter().filter(|it| is_of(it, part)).fold(0, |sum, it| sum.saturating_add(it.n))
    }

    /// What is lacking of those of a part that are begun, so many at most: those that lack least first, and alike ones together.
    fn lacking(&self, part: &Part, most: Count) -> Vec<Part> {
        let mut all = self.begun.iter().filter(|it| is_of(&it.part, part)).filter_map(Begun::lacks).listed();
        all.sort_unstable();
        all.truncate(usize::try_from(most).unwrap_or(usize::MAX));
        let [thickness, _, length] = part.size;
        let one = |alike: &[Length]| {
            let (n, width) = (Count::try_from(alike.len()).ok()?, *alike.first()?);
            Some(Part { n, size: [thickness, width, length], ..part.clone() })
        };
        all.chunk_by(|one, next| one == next).filter_map(one).listed()
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
        let now = whatever_wood(self.parts.iter().filter(known));
        let then = whatever_wood(given.cut.parts.iter());
        self.boards == given.cut.boards && now.len() == then.len() && now.iter().all(|part| then.contains(part))
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

/// So many of each part, of whatever wood.
fn whatever_wood<'a>(parts: impl Iterator<Item = &'a DesignPart>) -> Vec<DesignPart> {
    let mut all = AlreadyCut::default();
    parts.for_each(|part| all.add_part(&DesignPart { wood: None, ..part.clone() }, part.n));
    all.parts
}

/// Pieces of one part that the ticked boards of a plan give, by their wood.
fn woods_cut((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, part: usize) -> Vec<(Option<Key>, i64)> {
    let mut all: Vec<(Option<Key>, i64)> = vec![];
    for (line, boards) in lines(sheet, ticks) {
        let of_it = line.pieces.iter().filter(|cut| cut.part == Some(part));
        let n = of_it.fold(0_i64, |sum, cut| sum.saturating_add(boards.saturating_mul(cut.n)));
        let wood = given.sources.get(line.source).and_then(|source| source.pile.wood.clone());
        match all.iter_mut().find(|(of, _)| *of == wood) {
            Some((_, there)) => *there = there.saturating_add(n),
            None if 0 < n => all.push((wood, n)),
            None => (),
        }
    }
    all
}

/// The woods that a plan cuts a part of.
pub(super) fn woods_of(given: &Given, sheet: &PlanSheet, part: usize) -> Vec<Option<Key>> {
    let mut all = vec![];
    for line in sheet.lines.iter().filter(|line| line.pieces.iter().any(|cut| cut.part == Some(part))) {
        let wood = given.sources.get(line.source).and_then(|source| source.pile.wood.clone());
        if !all.contains(&wood) {
            all.push(wood);
        }
    }
    all
}

/// Parts of one place in the list that the ticked boards of a plan give, and the strips of those that lack others, part by part.
fn parts_cut(sheet: &PlanSheet, ticks: &Ticks, part: usize) -> (i64, Vec<Vec<Length>>) {
    let mut strips: Vec<(Length, i64)> = vec![];
    for (line, n) in lines(sheet, ticks) {
        for cut in line.pieces.iter().filter(|cut| cut.part == Some(part)) {
            strips.push((cut.size[1], n.saturating_mul(cut.n)));
        }
    }
    let glued = sheet.glue_ups.iter().filter(|it| it.part == part).listed();
    let each = glued.iter().map(|it| glued_of(it, &mut strips)).listed();
    let whole = each.iter().fold(0_i64, |sum, n| sum.saturating_add(*n));
    let begun = glued.iter().zip(each).flat_map(|(it, whole)| begun_of(it, whole, &mut strips)).listed();
    // What is of no glue-up is one by itself.
    let of_glue = |width: Length| glued.iter().any(|it| it.strips.iter().any(|(_, wide)| *wide == width));
    let alone = strips.iter().filter(|(width, _)| !of_glue(*width)).fold(0_i64, |sum, (_, n)| sum.saturating_add(*n));
    (whole.saturating_add(alone), begun)
}

/// Of those glued up alike that lack strips, the strips of each that are there; these are used then.
fn begun_of(up: &GlueUp, whole: i64, strips: &mut [(Length, i64)]) -> Vec<Vec<Length>> {
    let one = |_| {
        let has = up.strips.iter().flat_map(|(n, width)| (0..take(strips, *width, *n)).map(|_| *width)).listed();
        Some(has).filter(|has| !has.is_empty())
    };
    (whole..up.n).map_while(one).listed()
}

/// So many strips of a width are used, as far as they are there.
fn take(strips: &mut [(Length, i64)], width: Length, n: i64) -> i64 {
    let mut left = n;
    for (_, there) in strips.iter_mut().filter(|(of, _)| *of == width) {
        let taken = left.min(*there);
        (*there, left) = (there.saturating_sub(taken), left.saturating_sub(taken));
    }
    n.saturating_sub(left)
}

/// How many glued up alike have all their strips; these are used then.
fn glued_of(up: &GlueUp, strips: &mut [(Length, i64)]) -> i64 {
    let there =
        |strips: &[(Length, i64)], width| strips.iter().filter(|(of, _)| *of == width).fold(0_i64, |sum, (_, n)| sum.saturating_add(*n));
    let each = |(n, width): &(i64, Length)| there(strips, *width).checked_div(*n).unwrap_or(0);
    let whole = up.strips.iter().map(each).min().unwrap_or(0).min(up.n);
    for (n, width) in &up.strips {
        take(strips, *width, n.saturating_mul(whole));
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
    let stays = AlreadyCut { boards: cut.boards.clone(), strips: cut.strips, ..AlreadyCut::default() };
    let Some((rest, rests, sets)) = rest(&job, ask, cut) else {
        let given = given_of(shop, &job, (ask, all))?;
        return Ok(Given { cut: stays, ..given });
    };
    if rest.parts.is_empty() {
        return Err(WhyNot::AllCut { sets });
    }
    let what = if matches!(ask.what, What::Sticks(_)) { What::Sticks(Some(1)) } else { What::Parts(Some(1)) };
    let given = given_of_rests(shop, (&rest, &rests), (&Ask { what, ..ask.clone() }, all))?;
    let parts = cut.parts.iter().filter(|it| job.parts.iter().any(|part| is_of(it, part))).cloned().listed();
    Ok(Given { ask: ask.clone(), cut: AlreadyCut { parts, sets, begun: cut.begun.clone(), ..stays }, ..given })
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

/// The job as one piece of all parts that are still to be cut, how wide those are of which some are the rest, and for how many of it they are;
/// nothing where no part is cut, nor a strip of one.
fn rest(job: &Job, ask: &Ask, cut: &AlreadyCut) -> Option<(Job, Vec<Option<Length>>, Count)> {
    let (What::Parts(sets) | What::Sticks(sets)) = ask.what else { return None };
    if !job.parts.iter().any(|part| cut.parts.iter().any(|it| is_of(it, part))) {
        return None;
    }
    let sets = sets.unwrap_or(cut.sets);
    let by_strips = matches!(ask.what, What::Parts(_));
    let (mut rest, mut rests) = (Job { parts: vec![], ..job.clone() }, vec![]);
    for part in &job.parts {
        let n = part.n.saturating_mul(sets).saturating_sub(cut.of(part));
        let lacking = if by_strips { cut.lacking(part, n) } else { vec![] };
        let begun = lacking.iter().fold(0, |sum: Count, it| sum.saturating_add(it.n));
        rest.parts.extend(Some(Part { n: n.saturating_sub(begun), ..part.clone() }).filter(|part| 0 < part.n));
        rests.resize(rest.parts.len(), None);
        rest.parts.extend(lacking);
        rests.resize(rest.parts.len(), Some(part.size[1]));
    }
    Some((rest, rests, sets))
}

/// Whether what is cut is of a part as it is now.
fn is_of(cut: &DesignPart, part: &Part) -> bool {
    cut.name == part.name && [cut.thickness, cut.width, cut.length] == part.size
}
