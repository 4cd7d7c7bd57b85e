//! What was taken back stands again only where it would not be refused today: others may have taken its place since.

use super::haul::{can_be_moved, can_be_rejected, enough, free, of_pile};
use super::rests::{Claim, counted, mends_hold, own, resting};
use crate::bench::On;
use crate::haul::{Haul, Pile};
use crate::ledger::book::subjects;
use crate::ledger::fold::{self, Job, Lot};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Count, Decimal, Id, Listed, Money, PILE_MOST, Set};
use crate::refusal::{Answer, Refusal};

/// Refuses entries that would break a limit were they to stand again.
pub(super) fn allowed(book: &Book, entries: &[Id]) -> Answer<()> {
    let struck = entries.iter().filter_map(|id| book.entry(*id)).filter(|(_, struck)| *struck).map(|(entry, _)| entry).listed();
    let taken = |(pile, job): (Id, Id)| {
        let n = struck
            .iter()
            .map(|entry| if let Fact::PiecesTaken(f) = &entry.fact { Some(f).filter(|f| (f.pile, f.job) == (pile, job)) } else { None });
        n.flatten().fold(0, |sum: Count, f| sum.saturating_add(f.n))
    };
    let freed = |pile: Id| {
        let of = |entry: &&Entry| if let Fact::PiecesFreed(f) = &entry.fact { (f.pile == pile).then_some(f.n) } else { None };
        struck.iter().filter_map(of).fold(0, Count::saturating_add)
    };
    let (mut about, mut facts, mut mended) = (Set::new(), vec![], vec![]);
    for entry in &struck {
        still_there(book, entry, (&taken, &freed))?;
        facts.push(&entry.fact);
        mended.extend(Some(counted(book, &entry.fact)).filter(|_| matches!(entry.fact, Fact::CountMended(_))));
        about.extend(subjects(entry).into_iter().flatten());
    }
    let then = book.standing_again(entries);
    mends_hold(book, entries, || book.standing_again(entries))?;
    for subject in about.iter() {
        match *subject {
            Subject::Haul(id) => {
                let (was, is) = (fold::haul(book, id), fold::haul(&then, id));
                piles(was.as_ref(), is.as_ref())?;
                others(was.as_ref().zip(is.as_ref()), (&facts, &mended))?;
            }
            Subject::Job(id) => sold(fold::job(book, id).as_ref(), fold::job(&then, id).as_ref())?,
            Subject::Bench | Subject::Workshop => {}
        }
    }
    Ok(())
}

/// How many pieces come back of a pile.
type ByPile<'a, P> = &'a dyn Fn(P) -> Count;

/// What would be done again still has to be possible, with the pieces that come back by `taken` and by `freed`. A pile that comes back with it
/// has nothing yet to look at.
fn still_there(book: &Book, entry: &Entry, (taken, freed): (ByPile<'_, (Id, Id)>, ByPile<'_, Id>)) -> Answer<()> {
    let on = |haul, pile, may: &dyn Fn(&Pile) -> Answer<()>| {
        let there = fold::haul(book, haul).and_then(|haul| haul.pile(pile).cloned());
        there.map_or(Ok(()), |pile| may(&pile).map_err(of_pile(&pile)))
    };
    match &entry.fact {
        Fact::PiecesSorted(f) => on(f.haul, f.pile, &|pile| enough(f.n, pile.unsorted())),
        Fact::PiecesRejected(f) => on(f.haul, f.pile, &|pile| match f.n.saturating_sub(freed(f.pile)) {
            0 => Ok(()),
            n => can_be_rejected(n, pile),
        }),
        Fact::RejectsReturned(f) => on(f.haul, f.pile, &|pile| enough(f.n, pile.rejects_lying(&f.why))),
        Fact::PiecesMoved(f) => on(f.haul, f.from, &|pile| can_be_moved(f.n, pile)),
        Fact::LeftoversGone(f) => on(f.haul, f.pile, &|pile| free(f.n, pile, None)),
        Fact::PiecesTaken(f) => {
            on(f.haul, f.pile, &|pile| free(f.n, pile, Some(f.job)))?;
            not_done_with(book, f.job)
        }
        Fact::PiecesReserved(f) => {
            on(f.haul, f.pile, &|pile| free(f.n, pile, None))?;
            not_done_with(book, f.job)
        }
        Fact::MoneySpent(f) => super::cans::can_be_spent(book, entry.id, f),
        Fact::MoneyHandedBack(f) => super::sale::can_go_back(book, f),
        Fact::EstimateMade(f) => not_done_with(book, f.job),
        Fact::WholePlanned(f) => not_done_with(book, f.job),
        Fact::FactorSet(f) => not_done_with(book, f.job),
        Fact::DeadlineSet(f) => not_done_with(book, f.job),
        Fact::QuoteGiven(f) => not_done_with(book, f.job),
        Fact::PiecesFreed(f) => on(f.haul, f.pile, &|pile| enough(f.n, pile.in_job(f.job).saturating_add(taken((f.pile, f.job))))),
        Fact::ReservationFreed(f) => on(f.haul, f.pile, &|pile| enough(f.n, pile.reserved_for(f.job))),
        _ => Ok(()),
    }
}

/// A job that comes back with its wood goes on.
fn not_done_with(book: &Book, job: Id) -> Answer<()> {
    if fold::is_ended(book, On::Job(job)) { Err(Refusal::JobHasEnded) } else { Ok(()) }
}

fn piles(was: Option<&Haul>, is: Option<&Haul>) -> Answer<()> {
    let Some(haul) = is else { return Ok(()) };
    for pile in &haul.piles {
        let before = was.and_then(|haul| haul.pile(pile.id));
        if before.map_or(0, |pile| pile.taken).max(PILE_MOST) < pile.taken {
            return Err(of_pile(pile)(Refusal::TooManyPieces { would_be: pile.taken, most: PILE_MOST }));
        }
    }
    Ok(())
}

/// What others took, rejected or burnt since stays theirs, but for what comes back by the facts themselves.
fn others(hauls: Option<(&Haul, &Haul)>, (facts, mended): (&[&Fact], &[&Fact])) -> Answer<()> {
    let Some((was, is)) = hauls else { return Ok(()) };
    let back = |pile: Id, claim: Claim| {
        let back = facts.iter().filter_map(|fact| match fact {
            Fact::PiecesFreed(f) => Some((f.pile, Claim::InJob(f.job), f.n)),
            Fact::RejectsReturned(f) => Some((f.pile, Claim::Rejected, f.n)),
            _ => None,
        });
        let back = back.filter(|(of, what, _)| (*of, *what) == (pile, claim)).fold(0, |sum: Count, (_, _, n)| sum.saturating_add(n));
        back.saturating_add(own(mended, pile, claim))
    };
    let all = resting(was, Some(is), back);
    was.piles.iter().zip(all).try_for_each(|(pile, resting)| no_more((0, 0), resting).map_err(of_pile(pile)))
}

/// No more sold than there is, and no more received than is due.
fn sold(was: Option<&Job>, is: Option<&Job>) -> Answer<()> {
    let Some((was, is)) = was.zip(is) else { return Ok(()) };
    pieces_sold(was, is)?;
    gallery_owes(was, is)?;
    // What lacks of one is not made up by what is over of another.
    let over = |job: &Job| Money::sum(job.currency, job.selling.over(job.currency)?.into_iter().map(|over| over.sum));
    let (due, met) = (is.due()?, is.selling.received(is.currency)?.minus(was.selling.received(was.currency)?)?);
    let beyond = over(is)?.minus(over(was)?)?;
    let is_more = [met, beyond].iter().all(|sum| Decimal::ZERO < sum.amount());
    if due.amount() < Decimal::ZERO && is_more && due.amount() < was.due()?.amount() {
        return Err(Refusal::MoreThanDue { met, due: met.minus(beyond)? });
    }
    Ok(())
}

/// No more from galleries than they owe.
fn gallery_owes(was: &Job, is: &Job) -> Answer<()> {
    let beyond = |job: &Job| job.selling.beyond_dues(job.currency);
    let (before, after) = (beyond(was)?, beyond(is)?);
    if after.amount() <= before.amount() {
        return Ok(());
    }
    let met = is.selling.handed_over(is.currency)?.minus(was.selling.handed_over(was.currency)?)?;
    Err(Refusal::MoreThanDue { met, due: met.minus(after.minus(before)?)? })
}

/// No more sold or promised than there is or was agreed, no more back from a gallery than it had.
pub(super) fn pieces_sold(was: &Job, is: &Job) -> Answer<()> {
    let gone = |job: &Job| (job.selling.gone().saturating_add(job.selling.promised()), job.pieces);
    no_more(gone(was), gone(is))?;
    let from_gallery = |job: &Job| {
        let [given, paid, back] = [&job.selling.consigned, &job.selling.consignments_paid, &job.selling.consignments_returned]
            .map(|list| list.iter().fold(0, |sum: Count, one| sum.saturating_add(one.n)));
        (paid.saturating_add(back), given)
    };
    no_more(from_gallery(was), from_gallery(is))?;
    for lot in is.selling.lots() {
        let gone = |lot: &Lot| (lot.sold.saturating_add(lot.back), lot.n);
        no_more(was.selling.lot(lot.id).map(|lot| gone(&lot)).unwrap_or_default(), gone(&lot))?;
    }
    for agreement in &is.selling.agreements {
        let before = was.selling.agreement(agreement.id).map(|agreement| (agreement.sold, agreement.n));
        no_more(before.unwrap_or_default(), (agreement.sold, agreement.n))?;
    }
    Ok(())
}

/// What is beyond its limit already may stay there, but goes no further.
fn no_more(was: (Count, Count), (asked, there): (Count, Count)) -> Answer<()> {
    let is_worse = was.0.saturating_sub(was.1) < asked.saturating_sub(there);
    if is_worse { Err(Refusal::NotThatMany { asked, there }) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Currency, Money};
    use crate::story::{Why, tell};

    /// What putting `it` back is refused for; none where it stands again.
    #[track_caller]
    fn check(lines: &str, refused: Option<Refusal>) {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\npile oak 1 x 2 x 20 in\n\
            job stools \"Stools\" 2 spec\njob desk \"Desk\" 1 spec\n";
        let story = tell(&format!("{start}{lines}\nrestore it"));
        let bare = |why| match why {
            Why::Refused(Refusal::OfPile { pile, why }) if ["ash, A", "oak, B"].contains(&pile.as_str()) => Why::Refused(*why),
            why => why,
        };
        let why: Vec<Why> = story.refused.into_iter().map(|(_, why)| bare(why)).collect();
        assert_eq!(why, refused.map(Why::Refused).into_iter().collect::<Vec<_>>(), "{lines}");
    }

    /// Of an act about several piles it is said which of them refuses, by its name and its letter.
    #[test]
    fn the_pile_that_refuses_is_named() {
        let story = tell(
            "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\npile oak 1 x 2 x 20 in\n\
            count 9 ash\ncount 9 oak\njob stools \"Stools\" 2 spec\ntake 9 oak for stools as it\nundo it\ngone 2 oak burnt\nrestore it",
        );
        let why = Box::new(Refusal::NotThatMany { asked: 9, there: 7 });
        assert_eq!(
            story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(),
            [Why::Refused(Refusal::OfPile { pile: "oak, B".into(), why })]
        );
        let unnamed = Pile { label: "C".into(), ..Pile::new(crate::quantity::Id::new(crate::quantity::Moment::at(0), [0; 10])) };
        assert!(matches!(of_pile(&unnamed)(Refusal::NotThere), Refusal::OfPile { pile, .. } if pile == "C"));
    }

    #[test]
    fn what_would_be_refused_today_is_not_put_back() {
        let many = |asked, there| Some(Refusal::NotThatMany { asked, there });
        let most = |would_be| Some(Refusal::TooManyPieces { would_be, most: PILE_MOST });
        let dollars = |sum: i64| Money::whole(Decimal::from(sum), Currency::USD).unwrap();
        check("count 9000 ash as it\nundo it", None);
        check("count 9000 ash as it\nundo it\ncount 9000 ash", most(18_000));
        check("count 9000 ash as it\nundo it\nrecount 9000 ash", None);
        check("count 9000 ash\nmove 9000 ash to oak as it\nundo it\ncount 9000 oak", most(18_000));
        check("count 9 ash\nmove 9 ash to oak as it\nundo it\ngood 4 ash", many(9, 5));
        check("count 9 ash\ngood 9 ash as it\nundo it\ngood 9 ash", many(9, 0));
        check("count 9 ash\nreject 4 ash twist as it\nundo it\ntake 9 ash for stools", many(4, 0));
        check("count 9 ash\ntake 5 ash for stools as it\nundo it\ntake 4 ash for stools", None);
        check("count 9 ash\ntake 5 ash for stools as it\nundo it\ntake 9 ash for stools", many(5, 0));
        let (apart, ended) = (Refusal::SetApart { asked: 9, there: 9, apart: 9 }, Refusal::JobHasEnded);
        for (line, job) in [("take 9 ash for stools", "desk"), ("gone 9 ash burnt", "desk"), ("move 9 ash to oak", "desk")] {
            check(&format!("count 9 ash\n{line} as it\nundo it\nreserve 9 ash for {job}"), Some(apart.clone()));
        }
        check("count 9 ash\ntake 9 ash for stools as it\nundo it\nreserve 9 ash for stools", None);
        check("count 9 ash\ntake 9 ash for stools as it\nundo it\nend stools", Some(ended.clone()));
        check("count 9 ash\nreserve 9 ash for stools as it\nundo it\nend stools", Some(ended));
        // Two found beyond the counts were never counted as good: they are no rejects.
        check("count 9 ash\nreject 9 ash knot as it\nundo it\nrecount 4 ash\nrack 9 ash", many(9, 4));
        check("count 9 ash\nreject 4 ash knot\nreturn 4 ash knot to good as it\nundo it\nreturn 4 ash knot to jigs", many(4, 0));
        check("count 5 ash\ntake 5 ash for stools as it\nundo it\ntake 5 ash for desk\ncount 5 ash", many(5, 0));
        check("sell 2 stools for 80 notes as it\nundo it", None);
        check("sell 2 stools for 80 notes as it\nundo it\nsell 1 stools for 40 notes", many(3, 2));
        check("agree 80 for 2 stools fetched as it\nundo it\nsell 1 stools for 40 notes", many(3, 2));
        check(
            "agree 80 for 1 stools fetched as deal\nsell 1 stools for 80 agreed deal as it\nundo it\nsell 1 stools for 80 agreed deal",
            many(2, 1),
        );
        let consigned = "consign 1 stools tag 80 share 0.4\ngallery pays 48 for 1 stools as it\nundo it\n";
        check(consigned, None);
        check(&format!("{consigned}gallery returns 1 stools"), many(2, 1));
        let lots = "consign 1 stools tag 80 share 0.4 as one\nconsign 1 stools tag 90 share 0.5 as two\n";
        check(&format!("{lots}gallery returns 1 stools lot one as it\nundo it\ngallery pays 45 for 1 stools lot two"), None);
        check(&format!("{lots}gallery returns 1 stools lot one as it\nundo it\ngallery pays 48 for 1 stools lot one"), many(2, 1));
        let paid = "sell 1 stools for 80 as sale\npay 50 for stools bank sale sale as it\nundo it\n";
        check(&format!("{paid}pay 30 for stools bank sale sale"), None);
        let refused = Refusal::MoreThanDue { met: dollars(50), due: dollars(20) };
        check(&format!("{paid}pay 60 for stools bank sale sale"), Some(refused));
    }

    /// What went back, goes back once.
    #[test]
    fn what_is_no_longer_over_does_not_go_back_again() {
        let over = "agree 80 for 1 stools fetched deposit 50 as deal\npay 50 for stools bank agreed deal\nsell 1 stools for 30 notes agreed deal\n";
        let back = |sum: i64| format!("hand-back {sum} for stools bank agreed deal");
        let dollars = |sum: i64| Money::whole(Decimal::from(sum), Currency::USD).unwrap();
        check(&format!("{over}{} as it\nundo it", back(20)), None);
        check(&format!("{over}{} as it\nundo it\n{}", back(15), back(5)), None);
        let refused = |over| Some(Refusal::MoreThanOver { met: dollars(15), over: dollars(over) });
        check(&format!("{over}{} as it\nundo it\n{}", back(15), back(8)), refused(12));
        check(&format!("{over}{} as it\nundo it\n{}", back(15), back(20)), refused(0));
    }

    /// What has gone too far already does not keep anything else from coming back.
    #[test]
    fn what_stands_already_is_put_back_as_before() {
        check("sell 1 stools for 80 notes as it", None);
        check("count 9 ash as it\ncount 3 ash\nundo it\nrecount 2 ash\nundo", None);
    }
}
