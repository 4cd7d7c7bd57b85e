//! Orders about the book itself: take back, restore, keep a copy, people.

use super::Act;
use super::{restore, rests};
use crate::ledger::book::subjects;
use crate::ledger::fold;
use crate::ledger::kind::book::{CopyKept, Forgotten, PersonAdded, PhotoRemoved, PhotoTaken, Restored, Role, Struck, WorkshopSet};
use crate::ledger::kind::haul::PiecesFreed;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Currency, Id, Listed, Moment, Set, Units};
use crate::refusal::{Answer, Refusal};

/// What can be ordered of the book.
#[derive(Clone, Debug, PartialEq)]
pub enum BookCommand {
    /// Takes an act back whole: its id, or that of an entry; of the bench and the yard that entry alone.
    TakeBack {
        act: Id,
    },
    /// Takes one line of an act back, whatever else it wrote: its entry.
    Strike {
        line: Id,
    },
    /// Takes a payment back that came to nothing; what was handed over for it stays sold, and its money is due.
    StrikePayment {
        payment: Id,
    },
    /// Makes what was taken back stand again.
    Restore {
        act: Id,
    },
    SetWorkshop {
        currency: Option<Currency>,
        units: Option<Units>,
    },
    AddPerson {
        role: Role,
    },
    Forget {
        person: Id,
    },
    NoteCopy {
        upto: Moment,
    },
    /// A photo of a job, whose picture lies beside the book already.
    TakePhoto {
        photo: Id,
        job: Id,
    },
    /// The receipt of a spending, in the same way.
    TakeReceipt {
        photo: Id,
        spending: Id,
    },
    RemovePhoto {
        photo: Id,
    },
}

/// The most photos a job may have (ours): a few say what a piece is, and a copy with them can still be sent.
pub const PHOTOS_MOST: usize = 6;

pub(super) fn decide(book: &Book, command: &BookCommand, act: &mut Act) -> Answer<()> {
    match command {
        BookCommand::TakeBack { act: id } => take_back(book, standing(book, whole(book, *id)?), act)?,
        BookCommand::Strike { line } => {
            book.entry(*line).ok_or(Refusal::NotThere)?;
            strike(book, vec![*line], act)?;
        }
        BookCommand::StrikePayment { payment } => {
            let together = whole(book, *payment)?;
            book.entry(*payment).filter(|(_, struck)| !struck).ok_or(Refusal::NotThere)?;
            let (sales, payments) = (of_act(book, &together, is_sale), of_act(book, &together, is_payment));
            if sales.is_empty() { take_back(book, standing(book, together), act)? } else { strike(book, payments, act)? }
        }
        BookCommand::Restore { act: id } => again(book, *id, act)?,
        BookCommand::SetWorkshop { currency, units } => {
            act.add(WorkshopSet { currency: *currency, units: *units });
        }
        BookCommand::AddPerson { role } => {
            act.add(PersonAdded { role: *role });
        }
        BookCommand::Forget { person } => {
            act.add(Forgotten { person: *person });
        }
        BookCommand::NoteCopy { upto } => {
            act.add(CopyKept { upto: *upto });
        }
        BookCommand::TakePhoto { photo, job } => {
            let there = fold::job(book, *job).ok_or(Refusal::NotThere)?;
            if PHOTOS_MOST <= fold::workshop(book).photos.of_job(there.id).count() {
                return Err(Refusal::TooManyPhotos { most: PHOTOS_MOST });
            }
            act.add(PhotoTaken { photo: *photo, job: Some(*job), haul: None, pile: None, spending: None });
        }
        BookCommand::TakeReceipt { photo, spending } => receipt(book, (*photo, *spending), act)?,
        BookCommand::RemovePhoto { photo } => {
            fold::workshop(book).photos.wanted().find(|there| there.id == *photo).ok_or(Refusal::NotThere)?;
            act.add(PhotoRemoved { photo: *photo });
        }
    }
    Ok(())
}

/// These lines alone, whatever else their act wrote.
fn strike(book: &Book, entries: Vec<Id>, act: &mut Act) -> Answer<()> {
    rests::allowed(book, &entries)?;
    rests::lie_there(book, &entries)?;
    act.add(Struck { entries });
    Ok(())
}

fn take_back(book: &Book, entries: Vec<Id>, act: &mut Act) -> Answer<()> {
    rests::allowed(book, &entries)?;
    rests::lie_there(book, &entries)?;
    let again = took_back(book, &entries, false);
    if !again.is_empty() {
        restore::allowed(&book.without(&entries), &again)?;
    }
    let (entries, frees) = with_plan(book, entries);
    act.add(Struck { entries });
    if !again.is_empty() {
        act.add(Restored { entries: again });
    }
    for freed in frees {
        act.add(freed);
    }
    Ok(())
}

/// A payment that was struck by itself stays so when the rest of its act goes and comes again; all of them where none stands.
fn standing(book: &Book, act: Vec<Id>) -> Vec<Id> {
    let is_gone = |id: &Id| book.entry(*id).is_some_and(|(entry, struck)| struck && is_payment(&entry.fact));
    let rest = act.iter().copied().filter(|id| !is_gone(id)).listed();
    if rest.is_empty() { act } else { rest }
}

fn is_sale(fact: &Fact) -> bool {
    matches!(fact, Fact::PieceSold(_))
}

fn is_payment(fact: &Fact) -> bool {
    matches!(fact, Fact::PaymentReceived(_))
}

/// Those of its entries that stand and are of a kind.
fn of_act(book: &Book, act: &[Id], kind: impl Fn(&Fact) -> bool) -> Vec<Id> {
    let stands = |id: &&Id| book.entry(**id).is_some_and(|(entry, struck)| !struck && kind(&entry.fact));
    act.iter().filter(stands).copied().listed()
}

/// What was taken back stands again, and what it had struck does not.
fn again(book: &Book, id: Id, act: &mut Act) -> Answer<()> {
    let together = match (whole(book, id)?, struck_with(book, id)) {
        (act, some) if some.len() < act.len() && some.iter().all(|entry| act.contains(entry)) => some,
        (act, _) => act,
    };
    let entries = with_piles(book, together);
    let once_more = not_of_others(book, took_back(book, &entries, true));
    if once_more.is_empty() {
        restore::allowed(book, &entries)?;
    } else {
        rests::allowed(book, &once_more)?;
        restore::allowed(&book.without(&once_more), &entries)?;
    }
    act.add(Restored { entries });
    if !once_more.is_empty() {
        act.add(Struck { entries: once_more });
    }
    Ok(())
}

/// The receipt of a spending that stands; without the job, so that no app takes it for a photo of the piece.
fn receipt(book: &Book, (photo, spending): (Id, Id), act: &mut Act) -> Answer<()> {
    let spent = book.entry(spending).filter(|(_, struck)| !struck).map(|(entry, _)| &entry.fact);
    let is_bought = |fact: &&Fact| matches!(fact, Fact::MoneySpent(_) | Fact::DistanceDriven(_) | Fact::PackOpened(_));
    spent.filter(is_bought).ok_or(Refusal::NotThere)?;
    if PHOTOS_MOST <= fold::workshop(book).photos.of_spending(spending).count() {
        return Err(Refusal::TooManyPhotos { most: PHOTOS_MOST });
    }
    act.add(PhotoTaken { photo, job: None, haul: None, pile: None, spending: Some(spending) });
    Ok(())
}

/// A plan that is taken back goes with what was put back and taken again for it: what stays in the job is what it did not take.
fn with_plan(book: &Book, mut entries: Vec<Id>) -> (Vec<Id>, Vec<PiecesFreed>) {
    let mut frees = vec![];
    let used = |(entry, struck): (&Entry, bool)| if let Fact::PlanUsed(f) = &entry.fact { Some((f.job, f.plan, struck)) } else { None };
    let used = entries.iter().filter_map(|id| book.entry(*id)).filter_map(used).listed();
    if used.is_empty() {
        return (entries, frees);
    }
    for (job, plan, _) in used.into_iter().filter(|(.., struck)| !struck) {
        let goes = super::plan::going(book, job, (&[plan], false));
        let more = goes.entries.into_iter().filter(|id| !entries.contains(id)).listed();
        entries.extend(more);
        frees.extend(goes.frees);
    }
    (not_of_others(book, entries), frees)
}

/// What an entry was struck with last: an act is named by its first entry, and of one told in several lines some may go alone.
fn struck_with(book: &Book, id: Id) -> Vec<Id> {
    let struck = book.entries().rev().filter_map(|(entry, _)| if let Fact::Struck(f) = &entry.fact { Some(&f.entries) } else { None });
    struck.into_iter().find(|entries| entries.contains(&id)).cloned().unwrap_or_default()
}

/// What a plan left lies in a pile that another may have begun, which was taken back since: it comes again with it.
fn with_piles(book: &Book, mut entries: Vec<Id>) -> Vec<Id> {
    let left = entries.iter().filter_map(|id| book.entry(*id)).filter_map(|(entry, _)| match &entry.fact {
        Fact::PiecesLeft(f) => Some(f.pile),
        _ => None,
    });
    let gone = |pile: &Id| book.entry(*pile).is_some_and(|(_, struck)| struck);
    let mut piles = left.filter(gone).listed();
    piles.dedup();
    piles.retain(|pile| !entries.contains(pile));
    entries.extend(piles);
    entries
}

/// Without the piles that others need.
pub(super) fn not_of_others(book: &Book, mut entries: Vec<Id>) -> Vec<Id> {
    let stays = entries.iter().copied().filter(|id| holds_others(book, *id, &entries)).listed();
    entries.retain(|id| !stays.contains(id));
    entries
}

/// A pile in which another plan's pieces lie too, or will once its boards are taken again, stays.
fn holds_others(book: &Book, pile: Id, entries: &[Id]) -> bool {
    let Some((Entry { fact: Fact::PileAdded(f), .. }, _)) = book.entry(pile) else { return false };
    let stands = |id: Id| book.entry(id).is_some_and(|(entry, struck)| !struck && matches!(entry.fact, Fact::PlanUsed(_)));
    let others = book.ever(Subject::Haul(f.haul)).filter(|(entry, _)| !entries.contains(&entry.id));
    let left = others.filter(|(entry, _)| matches!(&entry.fact, Fact::PiecesLeft(f) if f.pile == pile)).listed();
    left.into_iter().filter_map(|(entry, _)| entry.act).any(|act| book.act(act).into_iter().any(stands))
}

/// What an act itself took back, as a plan that is used instead of another does: it goes the other way with the act. Nothing where the act
/// stands not as `struck` says, or what it took back goes its own way since; nor what another plan that stands took the place of too. An
/// act that does nothing but take back stands as what it took back says.
fn took_back(book: &Book, entries: &[Id], struck: bool) -> Vec<Id> {
    let known = |id: &Id| book.entry(*id);
    let takes_back = |(entry, _): &(&Entry, bool)| matches!(entry.fact, Fact::Struck(_));
    let is_so = entries.iter().filter_map(known).all(|it| takes_back(&it))
        || entries.iter().filter_map(known).any(|it| !takes_back(&it) && it.1 == struck);
    let taken =
        entries.iter().filter_map(known).filter_map(|(entry, _)| if let Fact::Struck(f) = &entry.fact { Some(&f.entries) } else { None });
    let own = taken.flatten().filter(|id| is_so && known(id).is_some_and(|(_, is)| is != struck)).copied().listed();
    if own.is_empty() || struck {
        return own;
    }
    let others = taken_by_others(book, entries);
    own.into_iter().filter(|id| !others.contains(id)).listed()
}

/// What the other plans that stand took the place of.
fn taken_by_others(book: &Book, entries: &[Id]) -> Set<Id> {
    let is_plan = |id: &Id| book.entry(*id).is_some_and(|(entry, struck)| !struck && matches!(entry.fact, Fact::PlanUsed(_)));
    let of_plan = |entry: &Entry| !entries.contains(&entry.id) && entry.act.is_some_and(|act| book.act(act).iter().any(is_plan));
    let standing = book.entries().filter(|(_, struck)| !struck).map(|(entry, _)| entry);
    let taken = standing.filter_map(|entry| if let Fact::Struck(f) = &entry.fact { Some((entry, f)) } else { None });
    taken.filter(|(entry, _)| of_plan(entry)).flat_map(|(_, f)| f.entries.iter().copied()).collect()
}

/// The entries of an act, also by one of them. Of the bench and the yard each is struck for itself: a run that came by a switch leaves the
/// run before it ended, a count that began a pile leaves the pile.
pub(super) fn whole(book: &Book, id: Id) -> Answer<Vec<Id>> {
    let goes_with = |entry: &Entry| {
        let about = subjects(entry);
        let of_job = about.iter().flatten().any(|subject| matches!(subject, Subject::Job(_)));
        entry.act.filter(|_| of_job && !about.contains(&Some(Subject::Bench)))
    };
    let act = book.entry(id).and_then(|(entry, _)| goes_with(entry)).unwrap_or(id);
    let entries = book.act(act);
    if entries.is_empty() { Err(Refusal::NotThere) } else { Ok(entries) }
}
