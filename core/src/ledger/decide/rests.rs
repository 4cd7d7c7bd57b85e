//! What rests on an act: pieces that were rejected, taken, gone or sold since, which would have none to be.

use super::haul::of_pile;
use super::restore::pieces_sold;
use crate::haul::{Haul, Pile};
use crate::ledger::book::subjects;
use crate::ledger::fold;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Count, Id, Listed, Set};
use crate::refusal::{Answer, Refusal};

/// Refuses to take entries back that pieces rest on.
pub(super) fn allowed(book: &Book, entries: &[Id]) -> Answer<()> {
    let standing = entries.iter().filter_map(|id| book.entry(*id)).filter(|(_, struck)| !struck).map(|(entry, _)| entry);
    let (mut hauls, mut jobs) = (Set::new(), Set::new());
    let mut facts = vec![];
    for entry in standing {
        if let Fact::JobBegan(_) = entry.fact {
            job_is_bare(book, entry.id, entries)?;
        }
        jobs.extend(came_free(&entry.fact));
        facts.push(counted(book, &entry.fact));
        let about = subjects(entry).into_iter().flatten();
        hauls.extend(about.filter_map(|subject| if let Subject::Haul(id) = subject { Some(id) } else { None }));
    }
    if !jobs.is_empty() {
        not_sold_since(&jobs, (book, &book.without(entries)))?;
    }
    mends_hold(book, entries, || book.without(entries))?;
    // At the yard nothing rests on a count yet: the book is not made again to find that out.
    let rests = |id: &Id| fold::haul(book, *id).is_some_and(|haul| haul.piles.iter().any(|pile| 0 < pile.spoken_for()));
    if !hauls.iter().any(rests) {
        return Ok(());
    }
    let then = book.without(entries);
    for id in hauls.iter() {
        let Some(was) = fold::haul(book, *id) else { continue };
        hold(&was, resting(&was, fold::haul(&then, *id).as_ref(), |pile, claim| own(&facts, pile, claim)))?;
    }
    Ok(())
}

/// What was put right of a job's pieces is as it was written again, or as it was put right, and has to hold as well.
pub(super) fn mends_hold(book: &Book, entries: &[Id], then: impl Fn() -> Book) -> Answer<()> {
    let mends = entries.iter().filter_map(|id| book.entry(*id)).filter(|(entry, _)| matches!(entry.fact, Fact::CountMended(_)));
    let of_job = |fact: &Fact| matches!(fact, Fact::PiecesTaken(_) | Fact::PiecesFreed(_));
    let of = |entry: &Entry| {
        if let Fact::CountMended(f) = &entry.fact { Some(f.entry).filter(|_| of_job(counted(book, &entry.fact))) } else { None }
    };
    let of = mends.filter_map(|(entry, _)| of(entry)).listed();
    if of.is_empty() {
        return Ok(());
    }
    let then = then();
    of.into_iter().try_for_each(|entry| super::mend::job_holds((book, &then), entry))
}

/// Pieces that went back and are taken again with that: no more than lie there, as the rack was counted since.
pub(super) fn lie_there(book: &Book, entries: &[Id]) -> Answer<()> {
    let standing = entries.iter().filter_map(|id| book.entry(*id)).filter(|(_, struck)| !struck);
    let freed = standing.filter_map(|(entry, _)| if let Fact::PiecesFreed(f) = &entry.fact { Some(f) } else { None }).listed();
    if freed.is_empty() {
        return Ok(());
    }
    let then = book.without(entries);
    for f in freed {
        let pile = |book: &Book| fold::haul(book, f.haul).and_then(|haul| haul.pile(f.pile).cloned());
        let Some((was, is)) = pile(book).zip(pile(&then)) else { continue };
        if is.told_on_rack() < was.told_on_rack().min(0) {
            let under = Count::try_from(is.told_on_rack().saturating_neg()).unwrap_or(Count::MAX);
            return Err(of_pile(&was)(Refusal::NotThatMany { asked: f.n, there: f.n.saturating_sub(under) }));
        }
    }
    Ok(())
}

/// The job whose pieces are for sale again by a fact: others may have bought them since.
fn came_free(fact: &Fact) -> Option<Id> {
    match fact {
        Fact::SaleReversed(f) => Some(f.job),
        Fact::PiecesBroughtBack(f) => Some(f.job),
        Fact::AgreementCancelled(f) => Some(f.job),
        Fact::PriceAgreed(f) => f.replaces.and(Some(f.job)),
        Fact::ConsignmentReturned(f) => Some(f.job),
        _ => None,
    }
}

fn not_sold_since(jobs: &Set<Id>, (book, then): (&Book, &Book)) -> Answer<()> {
    let both = |job: &Id| fold::job(book, *job).zip(fold::job(then, *job));
    let since = |why| match why {
        Refusal::NotThatMany { asked, there } => Refusal::SoldSince { pieces: asked.saturating_sub(there) },
        why => why,
    };
    jobs.iter().filter_map(both).try_for_each(|(was, is)| pieces_sold(&was, &is).map_err(since))
}

/// A job that has wood, or wood set apart, is not taken back from under it.
fn job_is_bare(book: &Book, job: Id, entries: &[Id]) -> Answer<()> {
    let has = |pile: &Pile| pile.in_job(job).saturating_add(pile.reserved_for(job));
    let of_job = |entry: &crate::ledger::Entry| match &entry.fact {
        Fact::PiecesTaken(f) if f.job == job => Some(f.haul),
        Fact::PiecesReserved(f) if f.job == job => Some(f.haul),
        _ => None,
    };
    let standing = book.entries().filter(|(entry, struck)| !struck && !entries.contains(&entry.id));
    let hauls: Set<Id> = standing.filter_map(|(entry, _)| of_job(entry)).collect();
    let piles = hauls.iter().filter_map(|haul| fold::haul(book, *haul)).flat_map(|haul| haul.piles);
    match piles.fold(0, |sum: Count, pile| sum.saturating_add(has(&pile))) {
        0 => Ok(()),
        pieces => Err(Refusal::JobHasWood { pieces }),
    }
}

/// What a mend is about is the count it mends; any other fact is about itself.
pub(super) fn counted<'a>(book: &'a Book, fact: &'a Fact) -> &'a Fact {
    let mended = if let Fact::CountMended(f) = fact { book.entry(f.entry) } else { None };
    mended.map_or(fact, |(entry, _)| &entry.fact)
}

/// What a piece of a pile is, once it lies there no more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Claim {
    Rejected,
    InJob(Id),
    Gone,
}

/// Refuses where pieces of a pile that should be there still would not be.
pub(super) fn hold(was: &Haul, resting: Vec<(Count, Count)>) -> Answer<()> {
    let gone = was.piles.iter().zip(resting).find(|(_, (pieces, left))| left < pieces);
    gone.map_or(Ok(()), |(pile, (pieces, left))| Err(of_pile(pile)(Refusal::PiecesRestOnIt { pieces, left })))
}

/// Of each pile, the pieces claimed that should be there still, and how many of them would be. `less` says what is meant to go.
pub(super) fn resting(was: &Haul, then: Option<&Haul>, less: impl Fn(Id, Claim) -> Count) -> Vec<(Count, Count)> {
    let of_pile = |pile: &Pile| {
        let after = then.and_then(|haul| haul.pile(pile.id));
        claims(pile).into_iter().fold((0, 0), |(pieces, left): (Count, Count), (claim, n)| {
            let n = n.saturating_sub(less(pile.id, claim));
            (pieces.saturating_add(n), left.saturating_add(after.map_or(0, |pile| claimed(pile, claim)).min(n)))
        })
    };
    was.piles.iter().map(of_pile).listed()
}

fn claims(pile: &Pile) -> Vec<(Claim, Count)> {
    let all = pile.in_jobs.keys().map(|job| Claim::InJob(*job)).chain([Claim::Rejected, Claim::Gone]);
    all.map(|claim| (claim, claimed(pile, claim))).listed()
}

fn claimed(pile: &Pile, claim: Claim) -> Count {
    match claim {
        Claim::Rejected => pile.rejected(),
        Claim::InJob(job) => pile.in_job(job),
        Claim::Gone => pile.gone_for_good(),
    }
}

/// What the facts that are taken back claimed themselves.
pub(super) fn own(facts: &[&Fact], pile: Id, claim: Claim) -> Count {
    let claimed = facts.iter().filter_map(|fact| match fact {
        Fact::PiecesRejected(f) => Some((f.pile, Claim::Rejected, f.n)),
        Fact::PiecesTaken(f) => Some((f.pile, Claim::InJob(f.job), f.n)),
        Fact::LeftoversGone(f) => Some((f.pile, Claim::Gone, f.n)),
        _ => None,
    });
    claimed.filter(|(of, what, _)| (*of, *what) == (pile, claim)).fold(0, |sum: Count, (_, _, n)| sum.saturating_add(n))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::{Why, tell};

    /// What taking `it` back is refused for: the pieces that rest on it, and those that would be left.
    #[track_caller]
    fn check(lines: &str, rests: Option<(Count, Count)>) {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\npile oak 1 x 2 x 20 in\n\
            job stools \"Stools\" 2 spec\njob desk \"Desk\" 1 spec\n";
        let story = tell(&format!("{start}{lines}\nundo it"));
        let why: Vec<Why> = story.refused.into_iter().map(|(_, why)| why).collect();
        let named = [("elm", "elm, A"), ("6 oak", "oak, B")].into_iter().find(|(said, _)| lines.contains(said));
        let pile = named.map_or("ash, A", |(_, pile)| pile);
        let refused = rests.map(|(pieces, left)| {
            Why::Refused(Refusal::OfPile { pile: pile.into(), why: Box::new(Refusal::PiecesRestOnIt { pieces, left }) })
        });
        assert_eq!(why, refused.into_iter().collect::<Vec<_>>(), "{lines}");
    }

    #[test]
    fn what_pieces_rest_on_is_not_taken_back() {
        check("count 9 ash as it", None);
        check("count 9 ash as it\ntake 9 ash for stools", Some((9, 0)));
        check("count 9 ash as it\ncount 5 ash\ntake 9 ash for stools", Some((9, 5)));
        check("count 9 ash as it\ncount 9 ash\ntake 9 ash for stools", None);
        check("count 9 ash as it\nreject 4 ash twist\ngone 2 ash burnt", Some((6, 0)));
        check("count 9 ash as it\ngood 9 ash\nreserve 9 ash for desk", None);
        check("count 9 ash\nmove 9 ash to oak as it\ntake 6 oak for stools", Some((6, 0)));
        check("count 9 ash as it\nmove 9 ash to oak\ntake 6 oak for stools", Some((6, 0)));
        check("count 9 ash\nrecount 12 ash as it\ntake 12 ash for stools", Some((12, 9)));
        check("count 9 ash\nrack 12 ash as it\ntake 12 ash for stools", Some((12, 9)));
        check("count 9 ash\nreject 9 ash twist\nreturn 4 ash twist to good as it\ntake 4 ash for stools", Some((9, 5)));
        check("count 9 ash\ntake 9 ash for desk\nfree 9 ash from desk as it\ntake 9 ash for stools", Some((9, 0)));
        check("leave for next\npile elm 1 x 2 x 20 in as it\ncount 9 elm\ntake 3 elm for stools", Some((3, 0)));
    }

    /// A job is not taken back from under its wood.
    #[test]
    fn a_job_with_wood_is_not_taken_back() {
        let refused = |lines: &str| {
            let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\ncount 9 ash\n\
                job desk \"Desk\" 1 spec as it\n";
            let story = tell(&format!("{start}{lines}\nundo it"));
            story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>()
        };
        let has = |pieces| [Why::Refused(Refusal::JobHasWood { pieces })];
        assert_eq!(refused(""), []);
        assert_eq!(refused("take 5 ash for desk"), has(5));
        assert_eq!(refused("reserve 3 ash for desk\ntake 2 ash for desk\nreserve 1 ash for desk"), has(4));
        assert_eq!(refused("take 5 ash for desk\nfree 5 ash from desk\nreserve 3 ash for desk\nunreserve 3 ash from desk"), []);
    }

    /// What came free by it may be sold or promised to others since.
    #[test]
    fn pieces_that_were_sold_to_others_rest_on_it() {
        let check = |lines: &str, many: Option<Count>| {
            let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 1 spec\n{lines}\nundo it"));
            let why: Vec<Why> = story.refused.into_iter().map(|(_, why)| why).collect();
            let refused = many.map(|pieces| Why::Refused(Refusal::SoldSince { pieces }));
            assert_eq!(why, refused.into_iter().collect::<Vec<_>>(), "{lines}");
        };
        let back = "sell 1 stools for 80 notes as one\nreverse sale one on stools as it\n";
        check(back, None);
        check(&format!("{back}sell 1 stools for 90 notes"), Some(1));
        check(&format!("{back}agree 90 for 1 stools fetched"), Some(1));
        check(&format!("{back}consign 1 stools tag 90 share 0.4"), Some(1));
        check(&format!("{back}sell 1 stools for 90 notes as two\nundo two"), None);
        let deal = "agree 100 for 1 stools fetched deposit 30 as deal\npay 30 for stools bank agreed deal\ncancel deal on stools as it\n";
        check(deal, None);
        check(&format!("{deal}sell 1 stools for 90 notes"), Some(1));
        let there = "consign 1 stools tag 80 share 0.4\ngallery returns 1 stools as it\n";
        check(there, None);
        check(&format!("{there}sell 1 stools for 90 notes"), Some(1));
        let changed = "agree 100 for 1 stools fetched as deal\nagree 90 for 1 stools fetched replaces deal as it\n";
        check(changed, None);
        check(&format!("{changed}sell 1 stools for 90 notes agreed it"), Some(1));
    }

    /// What claims pieces itself, and the last thing that was done, can always be taken back.
    #[test]
    fn a_claim_itself_is_taken_back() {
        check("count 9 ash\ntake 9 ash for stools as it", None);
        check("count 9 ash\ntake 4 ash for stools as it\ntake 5 ash for stools", None);
        check("count 9 ash\nreject 4 ash twist as it\nreject 5 ash knot", None);
        check("count 9 ash\ngone 4 ash burnt as it\ntake 5 ash for stools", None);
        check("count 9 ash\ntake 9 ash for desk\nfree 9 ash from desk as it", None);
        check("count 9 ash\ntake 5 ash for stools\ncount 3 ash as it", None);
        check("layers 3 of 3 ash as it", None);
    }
}
