//! What plans lack, at the next yard: what is looked for, for which job, and how many of what is counted here would do.

use super::past::Past;
use super::plan::off::is_enough;
use crate::bench::On;
use crate::haul::enough::{Enough, Held};
use crate::haul::rejects::{Prior, RejectShare};
use crate::haul::{Haul, Pile};
use crate::ledger::fold::{PlanSought, Sought, Workshop};
use crate::ledger::kind::stock::SoughtPiece;
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Length, Listed, Set, Sorted};
use crate::refusal::{Answer, Refusal};

/// A pile of another haul that would do for something: what lies free of it, and what jobs have of it or have set apart.
#[derive(Clone, Debug, PartialEq)]
struct Lies {
    pile: Pile,
    free: Count,
    in_jobs: Sorted<Id, Count>,
}

/// What is looked for, of jobs that go on, and what would do of it beside the haul in hand. Gathered once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Looking {
    all: Vec<(Sought, String)>,
    rack: Vec<Lies>,
}

/// What one plan lacks.
#[derive(Clone, Debug, PartialEq)]
pub struct LookedFor {
    pub id: Id,
    pub job: Id,
    /// The name of its job.
    pub of: String,
    pub plan: PlanSought,
    /// Any one of the pieces does.
    pub any: bool,
    pub makes: Option<Count>,
    /// None where they can't be reckoned.
    pub pieces: Vec<LookedPiece>,
    /// Why they can't be.
    pub unknown: Option<Refusal>,
}

/// Pieces that are looked for, beside what lies on the rack.
#[derive(Clone, Debug, PartialEq)]
pub struct LookedPiece {
    pub piece: SoughtPiece,
    /// Other jobs whose wishes the same pieces would do for: theirs are in the figure.
    pub with: Vec<String>,
    /// Good pieces that are still wanted, and what is counted here of such as would do.
    pub enough: Enough,
    pub prior: Prior,
    /// Piles of the haul in hand that do, and whether by the maker's word.
    pub piles: Vec<(Id, bool)>,
}

impl LookedPiece {
    /// Enough is there. Of what is known only to be no fewer, nothing ever is.
    pub fn is_there(&self) -> bool {
        self.piece.at_least != Some(true) && self.enough.can_stop()
    }
}

impl LookedFor {
    /// All of it is there, or one where any does.
    pub fn is_there(&self) -> bool {
        let mut pieces = self.pieces.iter();
        if self.unknown.is_some() {
            return false;
        }
        if self.any { pieces.any(LookedPiece::is_there) } else { pieces.all(LookedPiece::is_there) }
    }

    /// Of what is not there yet, the one that is nearest where any does, else the scarce one.
    pub fn open(&self) -> Option<&LookedPiece> {
        let open = self.pieces.iter().filter(|piece| !piece.is_there());
        let by =
            |a: &&LookedPiece, b: &&LookedPiece| a.enough.chance.total_cmp(&b.enough.chance).then(b.enough.pieces.cmp(&a.enough.pieces));
        if self.any { open.max_by(by) } else { open.min_by(by) }
    }
}

impl SoughtPiece {
    /// A pile does by its size: of that wood, and no side smaller, whichever way it is turned.
    pub fn fits(&self, pile: &Pile) -> bool {
        pile.length.is_some_and(|length| self.length <= length) && self.fits_section(pile)
    }

    fn fits_section(&self, pile: &Pile) -> bool {
        let Some((thickness, width)) = pile.thickness.zip(pile.width) else { return false };
        let [low, high] = self.section();
        let of_it = self.wood.is_none() || self.wood == pile.wood;
        of_it && is_enough(thickness.min(width), low) && is_enough(thickness.max(width), high)
    }

    /// The smaller side and the larger: just as it is finished where that does too, and what else it is at least.
    fn section(&self) -> [[i64; 2]; 2] {
        let side = |just: Option<Length>, least: Length| [just.unwrap_or(least).as_nm(), least.as_nm()];
        let [one, other] = [side(self.just_thick, self.thickness), side(self.just_wide, self.width)];
        if one[1] <= other[1] { [one, other] } else { [other, one] }
    }

    /// Whatever does for the other does for this.
    fn is_met_by(&self, other: &SoughtPiece) -> bool {
        let does = |(own, [just, least]): ([i64; 2], [i64; 2])| own[1] <= least && Length::nm(just).is_ok_and(|just| is_enough(just, own));
        let sides = self.section().into_iter().zip(other.section()).all(does);
        sides && self.length <= other.length && (self.wood.is_none() || self.wood == other.wood)
    }
}

/// How many pieces would do for one that is looked for: free on the rack or in a haul, set apart for the job, or in it.
pub fn there(hauls: &[Haul], job: Id, piece: &SoughtPiece) -> Count {
    let of = |pile: &Pile| pile.free_for(Some(job)).saturating_add(pile.in_job(job));
    let all = hauls.iter().flat_map(|haul| &haul.piles).filter(|pile| piece.fits(pile)).map(of);
    all.fold(0, Count::saturating_add)
}

impl Looking {
    /// What is looked for; `haul` is the one in hand, where there is one.
    pub fn of(book: &Book, workshop: &Workshop, haul: Option<Id>) -> Looking {
        let goes_on = |one: &&Sought| !fold::is_ended(book, On::Job(one.job));
        let named = |one: &Sought| Some((one.clone(), fold::name_of(book, On::Job(one.job))?));
        let all: Vec<(Sought, String)> = workshop.sought.iter().filter(goes_on).filter_map(named).listed();
        let mut looking = Looking { all, rack: vec![] };
        if !looking.all.is_empty() {
            let others = fold::hauls(book).filter(|other| Some(other.id) != haul).flat_map(|other| other.piles);
            looking.rack = others.filter(|pile| looking.does_for_any(pile)).map(Lies::of).listed();
        }
        looking
    }

    pub fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    fn does_for_any(&self, pile: &Pile) -> bool {
        let any = |one: &Sought| (0..).zip(&one.pieces).any(|(nth, piece)| suits(pile, (one, nth), piece).is_some());
        self.all.iter().any(|(one, _)| any(one))
    }

    /// Lengths that are looked for of a pile's wood and section.
    pub(super) fn lengths_for<'a>(&'a self, pile: &'a Pile) -> impl Iterator<Item = Length> + 'a {
        self.all.iter().flat_map(|(one, _)| &one.pieces).filter(|piece| piece.fits_section(pile)).map(|piece| piece.length)
    }

    /// Pieces that jobs want of what such a pile does for, what was there among them.
    pub(super) fn wanted_of(&self, pile: &Pile) -> Vec<(Id, Count)> {
        let does = |one: &Sought| {
            let all = (0..).zip(&one.pieces).filter(|(nth, piece)| suits(pile, (one, *nth), piece).is_some());
            all.map(|(_, piece)| total(one, piece)).max().map(|n| (one.job, n))
        };
        self.all.iter().filter_map(|(one, _)| does(one)).listed()
    }

    /// Every wish with how much of it is there; what is still open first, the oldest before others. What can't be reckoned says why.
    pub fn sheet(&self, haul: Option<&Haul>, past: &Past) -> Vec<LookedFor> {
        let one = |(sought, of): &(Sought, String)| {
            let pieces = (0..).zip(&sought.pieces).map(|(nth, piece)| self.piece((sought, nth), piece, (haul, past)));
            let (pieces, unknown) = match pieces.collect::<Answer<Vec<_>>>() {
                Ok(pieces) => (pieces, None),
                Err(why) => (vec![], Some(why)),
            };
            let Sought { id, job, plan, any, makes, .. } = sought;
            LookedFor { id: *id, job: *job, of: of.clone(), plan: *plan, any: *any, makes: *makes, pieces, unknown }
        };
        let (there, open): (Vec<LookedFor>, Vec<LookedFor>) = self.all.iter().map(one).partition(LookedFor::is_there);
        open.into_iter().chain(there).listed()
    }

    fn piece(&self, (own, nth): (&Sought, Count), piece: &SoughtPiece, (haul, past): (Option<&Haul>, &Past)) -> Answer<LookedPiece> {
        let sharing = self.all.iter().filter_map(|(one, of)| Some((one, of, asked(one, piece, one.id == own.id)?))).listed();
        let jobs: Set<Id> = sharing.iter().map(|(one, ..)| one.job).collect();
        let does = |pile: &Pile| suits(pile, (own, nth), piece);
        let rack = self.rack.iter().filter(|lies| does(&lies.pile).is_some()).map(|lies| lies.for_jobs(&jobs));
        let here = haul.iter().flat_map(|haul| &haul.piles).filter_map(|pile| Some((pile, does(pile)?))).listed();
        let taken = here.iter().flat_map(|(pile, _)| jobs.iter().map(|job| pile.in_job(*job)));
        let lies = rack.chain(taken).fold(0, Count::saturating_add);
        let wanted = sharing.iter().fold(0, |sum: Count, (.., n)| sum.saturating_add(*n)).saturating_sub(lies);
        let share = match (haul, here.iter().max_by_key(|(pile, _)| pile.taken)) {
            (Some(haul), Some((most, _))) => haul.reject_share(most.id, past.seen)?,
            _ => RejectShare::of_supplier(past.seen),
        };
        let held = here.iter().map(|(pile, _)| pile.held_for(|job| jobs.contains(job))).fold(Held::default(), Held::with);
        let mut with: Vec<String> = sharing.iter().filter(|(one, ..)| one.job != own.job).map(|(_, of, _)| (*of).clone()).listed();
        with.dedup();
        let piles = here.iter().map(|(pile, by_hand)| (pile.id, *by_hand)).listed();
        Ok(LookedPiece { piece: piece.clone(), with, enough: Enough::of(wanted, held, &share)?, prior: share.prior(), piles })
    }
}

/// Whether a pile does for a piece, and if so whether by the maker's word.
fn suits(pile: &Pile, (wish, nth): (&Sought, Count), piece: &SoughtPiece) -> Option<bool> {
    match wish.places(nth).find_map(|at| pile.suits.get(&at)) {
        Some(does) => does.then_some(true),
        None => piece.fits(pile).then_some(false),
    }
}

/// Pieces that a wish wants of such as do for one of its own: those of its others that are met by nothing smaller are among them. What was
/// there is counted once.
fn total(wish: &Sought, piece: &SoughtPiece) -> Count {
    let harder = wish.pieces.iter().filter(|other| *other != piece && !wish.any && piece.is_met_by(other));
    let n = harder.fold(piece.n, |sum: Count, other| sum.saturating_add(other.n));
    n.saturating_add(piece.there.unwrap_or(0))
}

/// The same of what does for the piece of any wish; nothing where none of its own is met by nothing less.
fn asked(wish: &Sought, piece: &SoughtPiece, own: bool) -> Option<Count> {
    if own {
        return Some(total(wish, piece));
    }
    let met = wish.pieces.iter().filter(|other| piece.is_met_by(other));
    if wish.any {
        return met.map(|other| other.n.saturating_add(other.there.unwrap_or(0))).min();
    }
    let (n, there) = met.fold((0, 0), |(n, there): (Count, Count), other| (n.saturating_add(other.n), there.max(other.there.unwrap_or(0))));
    (0 < n).then(|| n.saturating_add(there))
}

impl Lies {
    fn of(pile: Pile) -> Lies {
        let jobs: Set<Id> = pile.in_jobs.keys().copied().chain(pile.stock.reserved.iter().map(|(job, _)| *job)).collect();
        let has = |job: Id| pile.in_job(job).saturating_add(pile.reserved_for(job));
        Lies { free: pile.free_for(None), in_jobs: jobs.iter().map(|job| (*job, has(*job))).collect(), pile }
    }

    fn for_jobs(&self, jobs: &Set<Id>) -> Count {
        let own = self.in_jobs.iter().filter(|(job, _)| jobs.contains(job));
        own.fold(self.free, |sum, (_, n)| sum.saturating_add(*n))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::past::past;
    use crate::story::{Story, tell};

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\njob bench \"Bench\" 1 spec\njob table \"Table\" 1 spec\n\
        pile strips oak-european 1 1/2 x 6 x 14 in\ncount 10 strips\ngood 10 strips\n";
    const LEAVE: &str = "2026-03-09 09:00 leave for yard\n";
    const SEEK: &str = "seek rows for bench 3 beside 10 of 1 1/2 x 6 x 14 in oak-european makes 8\n";

    fn looked(story: &Story, haul: Option<&str>) -> Vec<LookedFor> {
        let haul = haul.map(|haul| fold::haul(&story.book, story.names.haul(haul).unwrap()).unwrap());
        let past = haul.as_ref().map(|haul| past(&story.book, haul)).unwrap_or_default();
        Looking::of(&story.book, &fold::workshop(&story.book), haul.as_ref().map(|haul| haul.id)).sheet(haul.as_ref(), &past)
    }

    /// Of each wish and piece: the job, good pieces still wanted, so many counted here that may do, whose others are in it, and whether
    /// it is there.
    #[track_caller]
    fn check(lines: &str, wanted: &[(&str, Count, Count, &str, bool)]) {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let haul = lines.contains("for yard").then_some("yard");
        let of = |looked: &LookedFor| {
            let (name, there) = (looked.of.clone(), looked.is_there());
            let one = |it: &LookedPiece| {
                (name.clone(), it.enough.pieces, it.enough.held.good + it.enough.held.unsorted, it.with.join(" "), there)
            };
            looked.pieces.iter().map(one).collect::<Vec<_>>()
        };
        let shown: Vec<_> = looked(&story, haul).iter().flat_map(of).collect();
        let wanted: Vec<_> = wanted.iter().map(|(of, n, here, with, there)| ((*of).into(), *n, *here, (*with).into(), *there)).collect();
        assert_eq!(shown, wanted, "{lines}");
    }

    /// Three good ask for 5 of those that are not sorted, likely, and 6, sure (enough.rs): counted by size, of that wood, no side smaller.
    #[test]
    fn what_a_plan_lacks_is_counted_at_the_next_yard() {
        check(SEEK, &[("Bench", 3, 0, "", false)]);
        let here = |size: &str, n: u32| format!("{SEEK}{LEAVE}pile more {size} in\ncount {n} more\n");
        check(&here("oak-european 1 1/2 x 6 x 14", 2), &[("Bench", 3, 2, "", false)]);
        check(&here("oak-european 1 1/2 x 6 x 14", 9), &[("Bench", 3, 9, "", true)]);
        check(&here("oak-european 6 x 2 x 20", 9), &[("Bench", 3, 9, "", true)]);
        for other in
            ["oak-european 1 1/2 x 6 x 13 7/8", "oak-european 1 1/4 x 6 x 14", "oak-european 1 1/2 x 5 x 14", "ash-white 2 x 8 x 20"]
        {
            check(&here(other, 9), &[("Bench", 3, 0, "", false)]);
        }
        check(&here("oak-european 1 1/2 x 6 x 12..20", 9), &[("Bench", 3, 0, "", false)]);
        check(&format!("{}good 3 more\nreject 6 more knot", here("oak-european 1 1/2 x 6 x 14", 9)), &[("Bench", 3, 3, "", true)]);
    }

    #[test]
    fn a_pile_does_by_the_makers_word_too() {
        let bare = format!("{SEEK}{LEAVE}pile bare\ncount 9 bare\n");
        check(&bare, &[("Bench", 3, 0, "", false)]);
        check(&format!("{bare}suits bare 0 for bench"), &[("Bench", 3, 9, "", true)]);
        let like = format!("{SEEK}{LEAVE}pile more oak-european 1 1/2 x 6 x 14 in\ncount 9 more\nsuits more 0 for bench no\n");
        check(&like, &[("Bench", 3, 0, "", false)]);
        check(&format!("{like}undo"), &[("Bench", 3, 9, "", true)]);
    }

    /// 13 for the one and 15 for the other, and the 10 on the rack are no 20.
    #[test]
    fn wishes_add_up_and_the_rack_counts_once() {
        let both = format!("{SEEK}seek parts for table 5 beside 10 of 1 1/2 x 6 x 14 in oak-european\n");
        check(&both, &[("Bench", 18, 0, "Table", false), ("Table", 18, 0, "Bench", false)]);
        let longer = format!("{SEEK}seek parts for table 5 of 1 1/2 x 6 x 20 in oak-european\n");
        check(&longer, &[("Bench", 8, 0, "Table", false), ("Table", 5, 0, "", false)]);
        let same = format!("{SEEK}seek sticks for bench 2 of 1 1/2 x 6 x 14 in oak-european\n");
        check(&same, &[("Bench", 5, 0, "", false), ("Bench", 5, 0, "", false)]);
        check(&format!("{SEEK}{SEEK}"), &[("Bench", 3, 0, "", false)]);
        // What lies there since is there, what another took of it is not.
        check(&format!("{SEEK}pile late oak-european 2 x 6 x 14 in\ncount 2 late\ngood 2 late"), &[("Bench", 1, 0, "", false)]);
        check(&format!("{SEEK}take 4 strips for table"), &[("Bench", 7, 0, "", false)]);
        check(&format!("{SEEK}take 4 strips for bench"), &[("Bench", 3, 0, "", false)]);
        check(&format!("{SEEK}reserve 4 strips for bench"), &[("Bench", 3, 0, "", false)]);
    }

    /// The rule of the plan: as wide and thick with what is over, or just so on a side, which is not planed then.
    #[test]
    fn a_stick_that_is_just_so_does() {
        let mm = |n: i64| Length::MM.times(n).unwrap();
        let story =
            tell("2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile more oak-european 20 x 40 x 700 mm\ncount 2 more\n");
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let check = |[thick, wide]: [i64; 2], just: [Option<i64>; 2], does: bool| {
            let (thickness, width, length) = (mm(thick), mm(wide), mm(612));
            let [just_thick, just_wide] = just.map(|side| side.map(mm));
            let piece = SoughtPiece { n: 1, thickness, width, length, wood: None, there: None, at_least: None, just_thick, just_wide };
            assert_eq!(piece.fits(&haul.piles[0]), does, "{thick} {wide} {just:?}");
            assert!(piece.is_met_by(&piece));
        };
        check([22, 42], [None; 2], false);
        check([22, 42], [Some(20), Some(40)], true);
        check([22, 40], [Some(20), Some(38)], true);
        check([22, 42], [Some(20), None], false);
        check([23, 42], [Some(21), Some(40)], false);
        check([42, 22], [Some(40), Some(20)], true);
    }

    #[test]
    fn what_can_t_be_reckoned_says_why() {
        let pile = |name: &str| format!("pile {name} oak-european 2 x 6 x 14 in\ncount 6000 {name}\n");
        let story = tell(&format!("{START}{SEEK}{LEAVE}{}{}", pile("one"), pile("other")));
        assert_eq!(story.refused, []);
        let all = looked(&story, Some("yard"));
        let shown: Vec<_> = all.iter().map(|one| (one.of.as_str(), one.is_there(), one.unknown.clone())).collect();
        assert_eq!(shown, [("Bench", false, Some(Refusal::TooManyPieces { would_be: 12_000, most: 9_999 }))]);
    }

    /// The same wish again, of one piece more and with another beside it: what was answered for the piece holds, not for another.
    #[test]
    fn an_answer_goes_along_with_its_piece() {
        let bare = format!("{SEEK}{LEAVE}pile bare\ncount 9 bare\nsuits bare 0 for bench\n");
        let other = "2 of 1 x 1 x 9 in ash-white and ";
        let again =
            |more: &str, length: u32| format!("{bare}seek rows for bench {more}4 beside 10 of 1 1/2 x 6 x {length} in oak-european\n");
        check(&again("", 14), &[("Bench", 4, 9, "", true)]);
        check(&again("", 15), &[("Bench", 14, 0, "", false)]);
        check(&again(other, 14), &[("Bench", 2, 0, "", false), ("Bench", 4, 9, "", false)]);
        check(&format!("{}{}", again("", 14), SEEK), &[("Bench", 3, 9, "", true)]);
        check(&format!("{}suits bare 0 for bench no\n", again("", 14)), &[("Bench", 4, 0, "", false)]);
    }

    #[test]
    fn all_of_it_or_any_one() {
        let here = "pile more oak-european 1 1/2 x 6 x 14 in\ncount 9 more\n";
        let of = |word: &str| {
            format!("seek rows for bench 3 beside 10 of 1 1/2 x 6 x 14 in oak-european {word} 2 of 1 x 1 x 9 in ash-white\n{LEAVE}{here}")
        };
        check(&of("or"), &[("Bench", 3, 9, "", true), ("Bench", 2, 0, "", true)]);
        check(&of("and"), &[("Bench", 3, 9, "", false), ("Bench", 2, 0, "", false)]);
    }

    #[test]
    fn it_goes_with_its_job_and_by_a_word() {
        check(&format!("{SEEK}end bench"), &[]);
        check(&format!("{SEEK}seek rows for bench none"), &[]);
        check(&format!("{SEEK}seek rows for bench none\nundo"), &[("Bench", 3, 0, "", false)]);
        check(&format!("{SEEK}undo"), &[]);
        let story = tell(&format!(
            "{START}seek rows for bench none\nseek rows for bench 0 of 1 x 1 x 1 in\nseek rows for bench 9999 beside 1 of 1 x 1 x 1 in"
        ));
        assert_eq!(story.refused.len(), 3, "{:?}", story.refused);
    }

    /// At the bin a pile is not left for being short, or for lying on the rack already, where it is looked for.
    #[test]
    fn the_verdict_knows_what_is_looked_for() {
        use crate::haul::take::Decides;
        use crate::sheet::verdict::Known;
        let told = |seek: &str| {
            let job = "part \"leg\" 4 of 1 x 1 x 16 in for bench\n";
            let lines = format!("{START}{job}{seek}{LEAVE}pile more oak-european 1 1/2 x 6 x 14 in\ncount 2 more");
            let story = tell(&lines);
            assert_eq!(story.refused, [], "{lines}");
            let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
            let known = Known::of(&story.book, (fold::workshop(&story.book).into(), past(&story.book, &haul)), &haul);
            known.at_bin(&haul, &haul.piles[0], story.now.at).unwrap().unwrap().decides
        };
        assert!(matches!(told(""), Decides::TooShort(_)), "{:?}", told(""));
        assert_eq!(told(SEEK), Decides::NothingAgainst);
    }
}
