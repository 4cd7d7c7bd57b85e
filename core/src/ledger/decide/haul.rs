//! Orders at the yard and the rack: begin a haul, count, move, sort, reject, take.

use super::Act;
use crate::bench::On;
use crate::haul::{Haul, Pile, Trip};
use crate::ledger::Book;
use crate::ledger::fold;
use crate::ledger::kind::book::{PersonAdded, Role};
use crate::ledger::kind::haul as kind;
use crate::ledger::kind::haul::{Fate, Step, Way};
use crate::quantity::{Count, Currency, Decimal, Id, Key, Length, Listed, PILE_MOST, Span, Units};
use crate::refusal::{Answer, Refusal};

/// The most piles a haul may have.
pub const PILES_MOST: usize = 200;
/// The most people a van may hold: beyond any.
pub const PEOPLE_MOST: Count = 20;

/// What may be said of a pile; what is missing stays as it was.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PileFacts {
    pub wood: Option<Key>,
    pub name: Option<String>,
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
    /// The high end of a band that begins at `length`.
    pub length_to: Option<Length>,
}

impl PileFacts {
    /// Of what is said, what differs from what was said before. A length and the end of its band are said together, and an empty name
    /// takes the name away.
    pub fn corrects(self, before: &PileFacts) -> PileFacts {
        let told = self.trimmed();
        let band =
            if (told.length, told.length_to) == (before.length, before.length_to) { (None, None) } else { (told.length, told.length_to) };
        PileFacts {
            wood: told.wood.filter(|wood| before.wood.as_ref() != Some(wood)),
            name: told.name.filter(|name| before.name.as_deref().unwrap_or_default() != name),
            thickness: told.thickness.filter(|side| before.thickness != Some(*side)),
            width: told.width.filter(|side| before.width != Some(*side)),
            length: band.0,
            length_to: band.1,
        }
    }

    fn trimmed(mut self) -> PileFacts {
        self.name = self.name.map(|name| name.trim().to_owned());
        self
    }
}

/// What can be ordered of a haul.
#[derive(Clone, Debug, PartialEq)]
pub enum HaulCommand {
    /// Begins a haul of which nothing is counted yet: it has a supplier, or a trip, before its first pile.
    BeginBare {
        currency: Currency,
        units: Units,
    },
    /// Begins a haul with its first pile, and counts onto it.
    Begin {
        currency: Currency,
        units: Units,
        pile: PileFacts,
        n: Count,
        way: Way,
    },
    AddPile {
        haul: Id,
        pile: PileFacts,
        n: Count,
        way: Way,
    },
    DescribePile {
        haul: Id,
        pile: Id,
        facts: PileFacts,
    },
    Count {
        haul: Id,
        pile: Id,
        n: Count,
        way: Way,
    },
    Move {
        haul: Id,
        from: Id,
        to: Id,
        n: Count,
    },
    Recount {
        haul: Id,
        pile: Id,
        n: Count,
        why: Option<String>,
    },
    Sort {
        haul: Id,
        pile: Id,
        n: Count,
    },
    Reject {
        haul: Id,
        pile: Id,
        n: Count,
        why: Key,
    },
    Return {
        haul: Id,
        pile: Id,
        n: Count,
        why: Key,
        to: Fate,
    },
    Take {
        haul: Id,
        pile: Id,
        job: Id,
        n: Count,
    },
    Free {
        haul: Id,
        pile: Id,
        job: Id,
        n: Count,
    },
    Leave {
        haul: Option<Id>,
        currency: Currency,
        units: Units,
    },
    Step {
        haul: Id,
        trip: Id,
        step: Step,
    },
    Describe(kind::HaulDescribed),
    /// The haul is from a supplier who was not known before.
    FromNew {
        haul: Id,
    },
    DescribeTrip(kind::TripDescribed),
    /// The end of a trip was forgotten: it is home, and took so long.
    EndTrip {
        haul: Id,
        trip: Id,
        wheel: Span,
        bin: Span,
    },
}

pub(super) fn decide(book: &Book, command: &HaulCommand, act: &mut Act) -> Answer<()> {
    match command {
        HaulCommand::BeginBare { currency, units } => done(act.add(kind::HaulBegan { currency: *currency, units: *units, name: None })),
        HaulCommand::Begin { currency, units, pile, n, way } => {
            known(book, pile.wood.as_ref())?;
            let haul = act.add(kind::HaulBegan { currency: *currency, units: *units, name: None });
            first_pile(act, (haul, "A".into()), pile, (*n, *way))
        }
        HaulCommand::AddPile { haul, pile, n, way } => add_pile(book, (*haul, pile), (*n, *way), act),
        HaulCommand::DescribePile { haul, pile, facts } => describe_pile(book, (*haul, *pile), facts, act),
        HaulCommand::Count { haul, pile, n, way } => {
            let there = pile_of(book, *haul, *pile)?.taken;
            count(act, (*haul, *pile), (there, *n), *way)
        }
        HaulCommand::Move { haul, from, to, n } => move_pieces(book, (*haul, *from, *to), *n, act),
        HaulCommand::Recount { haul, pile, n, why } => {
            let there = pile_of(book, *haul, *pile)?;
            within(0, *n)?;
            // What was rejected, what jobs have and what is gone was there too.
            if *n < there.spoken_for() {
                return Err(Refusal::NotThatMany { asked: there.spoken_for(), there: *n });
            }
            done(act.add(kind::PiecesRecounted { haul: *haul, pile: *pile, n: *n, why: why.clone() }))
        }
        HaulCommand::Leave { haul, currency, units } => {
            let haul = match haul {
                Some(haul) => found(book, *haul)?.id,
                None => act.add(kind::HaulBegan { currency: *currency, units: *units, name: None }),
            };
            done(act.add(kind::TripBegan { haul }))
        }
        HaulCommand::Step { haul, trip, step } => {
            on_trip(book, *haul, *trip)?;
            done(act.add(kind::TripStepped { haul: *haul, trip: *trip, step: *step }))
        }
        HaulCommand::Describe(facts) => describe(book, facts, act),
        HaulCommand::FromNew { haul } => {
            let haul = found(book, *haul)?.id;
            let supplier = Some(act.add(PersonAdded { role: Role::Supplier }));
            done(act.add(kind::HaulDescribed { supplier, ..kind::HaulDescribed::of(haul) }))
        }
        HaulCommand::DescribeTrip(facts) => {
            drivable(book, facts)?;
            done(act.add(facts.clone()))
        }
        HaulCommand::EndTrip { haul, trip, wheel, bin } => end_trip(book, (*haul, *trip), (*wheel, *bin), act),
        sorting => sort(book, sorting, act),
    }
}

/// What is said of a trip lies within what a drive can be, and what it then costs can be kept.
fn drivable(book: &Book, facts: &kind::TripDescribed) -> Answer<()> {
    let haul = found(book, facts.haul)?;
    let there = haul.trips.iter().find(|there| there.id == facts.trip).ok_or(Refusal::NotThere)?;
    if let Some(met) = facts.share.map(|share| share.0).filter(|met| *met <= Decimal::ZERO || Decimal::ONE < *met) {
        return Err(Refusal::ShareOutOfRange { met });
    }
    if facts.distance.is_some_and(|far| Length::DISTANCE_MOST < far) {
        return Err(Refusal::OutOfRange);
    }
    facts.rate.map_or(Ok(()), |rate| super::money::not_below_nothing(rate.0))?;
    let most = Span::RUN_MOST;
    if let Some(met) = [facts.wheel, facts.bin].into_iter().flatten().find(|met| *met < Span::ZERO || most < *met) {
        return Err(Refusal::SpanOutOfRange { met, most });
    }
    let then = Trip {
        distance: facts.distance.or(there.distance),
        rate: facts.rate.map(|rate| rate.0).or(there.rate),
        per_mile: facts.per.map_or(there.per_mile, |per| per == kind::Per::Mile),
        share: facts.share.map_or(there.share, |share| share.0),
        ..there.clone()
    };
    then.cost(haul.currency).map(drop)
}

/// It is home, and took so long where the maker did not say otherwise.
fn end_trip(book: &Book, (haul, trip): (Id, Id), (wheel, bin): (Span, Span), act: &mut Act) -> Answer<()> {
    let there = on_trip(book, haul, trip)?;
    act.add(kind::TripStepped { haul, trip, step: Step::Home });
    let (wheel, bin) = (Some(wheel).filter(|_| there.wheel_said.is_none()), Some(bin).filter(|_| there.bin_said.is_none()));
    if wheel.or(bin).is_some() {
        act.add(kind::TripDescribed { wheel, bin, ..kind::TripDescribed::of(haul, trip) });
    }
    Ok(())
}

fn describe(book: &Book, facts: &kind::HaulDescribed, act: &mut Act) -> Answer<()> {
    found(book, facts.haul)?;
    facts.carries.map_or(Ok(()), super::wood::weighs)?;
    match facts.people {
        Some(would_be) if PEOPLE_MOST < would_be => Err(Refusal::TooManyPeople { would_be, most: PEOPLE_MOST }),
        _ => done(act.add(facts.clone())),
    }
}

/// What happens to pieces after they were counted: sorted, rejected, returned, taken, freed.
fn sort(book: &Book, command: &HaulCommand, act: &mut Act) -> Answer<()> {
    match command {
        HaulCommand::Sort { haul, pile, n } => {
            enough(*n, pile_of(book, *haul, *pile)?.unsorted())?;
            done(act.add(kind::PiecesSorted { haul: *haul, pile: *pile, n: *n }))
        }
        HaulCommand::Reject { haul, pile, n, why } => {
            let there = pile_of(book, *haul, *pile)?;
            if let Some((job, n)) = put_back_first(book, &there, *n)? {
                act.add(kind::PiecesFreed { haul: *haul, pile: *pile, job, n });
            }
            done(act.add(kind::PiecesRejected { haul: *haul, pile: *pile, n: *n, why: why.clone() }))
        }
        HaulCommand::Return { haul, pile, n, why, to } => {
            enough(*n, pile_of(book, *haul, *pile)?.rejects_lying(why))?;
            done(act.add(kind::RejectsReturned { haul: *haul, pile: *pile, n: *n, why: why.clone(), to: *to }))
        }
        HaulCommand::Take { haul, pile, job, n } => {
            free(*n, &pile_of(book, *haul, *pile)?, Some(*job))?;
            super::job::going_on(book, *job)?;
            done(act.add(kind::PiecesTaken { haul: *haul, pile: *pile, job: *job, n: *n }))
        }
        HaulCommand::Free { haul, pile, job, n } => {
            enough(*n, pile_of(book, *haul, *pile)?.in_job(*job))?;
            done(act.add(kind::PiecesFreed { haul: *haul, pile: *pile, job: *job, n: *n }))
        }
        _ => Ok(()),
    }
}

fn done(_: Id) -> Answer<()> {
    Ok(())
}

fn on_trip(book: &Book, haul: Id, trip: Id) -> Answer<Trip> {
    found(book, haul)?.trips.into_iter().find(|there| there.id == trip).ok_or(Refusal::NotThere)
}

fn found(book: &Book, haul: Id) -> Answer<Haul> {
    fold::haul(book, haul).ok_or(Refusal::NotThere)
}

pub(super) fn pile_of(book: &Book, haul: Id, pile: Id) -> Answer<Pile> {
    found(book, haul)?.pile(pile).cloned().ok_or(Refusal::NotThere)
}

/// What a refusal is about, where an act is about several piles: by its name and its letter, or by that alone.
pub(super) fn of_pile(pile: &Pile) -> impl Fn(Refusal) -> Refusal {
    let name = pile.name.as_ref().map_or_else(|| pile.label.clone(), |name| format!("{name}, {}", pile.label));
    move |why| Refusal::OfPile { pile: name.clone(), why: Box::new(why) }
}

pub(super) fn enough(asked: Count, there: Count) -> Answer<()> {
    if asked == 0 {
        return Err(Refusal::NothingAsked);
    }
    if asked <= there { Ok(()) } else { Err(Refusal::NotThatMany { asked, there }) }
}

/// So many pieces that nobody else has set apart; `job` may have those that are set apart for it.
pub(super) fn free(asked: Count, pile: &Pile, job: Option<Id>) -> Answer<()> {
    enough(asked, pile.on_rack())?;
    let free = pile.free_for(job);
    if asked <= free { Ok(()) } else { Err(Refusal::SetApart { asked, there: pile.on_rack(), apart: pile.on_rack().saturating_sub(free) }) }
}

/// A piece that was found beyond the counts was never counted as good: it is counted before it is rejected.
pub(super) fn can_be_rejected(n: Count, pile: &Pile) -> Answer<()> {
    enough(n, pile.on_rack().min(pile.good()))
}

/// What a job gives back of a pile before so many are rejected: what the rack has not, of the one job in hand that has pieces of it.
///
/// # Errors
/// As [`can_be_rejected`] where no job has so many; [`Refusal::InJobs`] where several have some, and which is bad is not known.
fn put_back_first(book: &Book, pile: &Pile, n: Count) -> Answer<Option<(Id, Count)>> {
    let Err(refusal) = can_be_rejected(n, pile) else { return Ok(None) };
    let lacks = n.saturating_sub(pile.on_rack().min(pile.good()));
    let in_hand = pile.in_jobs.iter().filter(|(job, n)| 0 < **n && !fold::is_ended(book, On::Job(**job))).listed();
    let have = in_hand.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(**n)).min(pile.good());
    match in_hand.as_slice() {
        [] => Err(refusal),
        _ if have < lacks => Err(Refusal::NotThatMany { asked: n, there: n.saturating_sub(lacks).saturating_add(have) }),
        [(job, _)] if 0 < lacks => Ok(Some((**job, lacks))),
        [_, _, ..] if 0 < lacks => Err(Refusal::InJobs { asked: n, jobs: in_hand.len() }),
        _ => Err(refusal),
    }
}

/// A piece that was sorted belongs where it was sorted, and one that is set apart to its job.
pub(super) fn can_be_moved(n: Count, pile: &Pile) -> Answer<()> {
    enough(n, pile.unsorted())?;
    free(n, pile, None)
}

pub(super) fn within(there: Count, n: Count) -> Answer<()> {
    let would_be = there.saturating_add(n);
    if would_be <= PILE_MOST { Ok(()) } else { Err(Refusal::TooManyPieces { would_be, most: PILE_MOST }) }
}

fn count(act: &mut Act, (haul, pile): (Id, Id), (there, n): (Count, Count), way: Way) -> Answer<()> {
    within(there, n)?;
    if 0 < n {
        act.add(kind::PiecesCounted { haul, pile, n, way });
    }
    Ok(())
}

fn checked(facts: &PileFacts) -> Answer<()> {
    for side in [facts.thickness, facts.width, facts.length, facts.length_to].into_iter().flatten() {
        side.of_a_piece()?;
    }
    match (facts.length, facts.length_to) {
        (Some(from), Some(to)) if to < from => Err(Refusal::BandUpsideDown { from, to }),
        _ => Ok(()),
    }
}

/// A wood by its key: of the tables, or the maker's own.
pub(super) fn known(book: &Book, wood: Option<&Key>) -> Answer<()> {
    wood.map_or(Ok(()), |wood| fold::workshop(book).wood.woods.find(wood.as_str()).map(drop))
}

pub(super) fn new_pile(act: &mut Act, haul: Id, label: String, facts: &PileFacts) -> Answer<Id> {
    checked(facts)?;
    let PileFacts { wood, name, thickness, width, length, length_to } = facts.clone().trimmed();
    let name = name.filter(|name| !name.is_empty());
    Ok(act.add(kind::PileAdded { haul, label, wood, name, thickness, width, length, length_to }))
}

/// The first pile of a new haul, and what is counted onto it.
pub(super) fn first_pile(act: &mut Act, (haul, label): (Id, String), pile: &PileFacts, (n, way): (Count, Way)) -> Answer<()> {
    new_pile(act, haul, label, pile).and_then(|pile| count(act, (haul, pile), (0, n), way))
}

fn add_pile(book: &Book, (haul, pile): (Id, &PileFacts), (n, way): (Count, Way), act: &mut Act) -> Answer<()> {
    known(book, pile.wood.as_ref())?;
    let label = next_label(&found(book, haul)?)?;
    new_pile(act, haul, label, pile).and_then(|pile| count(act, (haul, pile), (0, n), way))
}

fn describe_pile(book: &Book, (haul, pile): (Id, Id), facts: &PileFacts, act: &mut Act) -> Answer<()> {
    let of = found(book, haul)?;
    let there = of.pile(pile).ok_or(Refusal::NotThere)?;
    // What another version wrote may stay as it is.
    known(book, facts.wood.as_ref().filter(|wood| there.wood.as_ref() != Some(*wood)))?;
    // A band's high end alone goes with the low end that is there.
    let from = facts.length.or(there.length.filter(|_| facts.length_to.is_some()));
    checked(&PileFacts { length: from, ..facts.clone() })?;
    let PileFacts { wood, name, thickness, width, length, length_to } = facts.clone().trimmed();
    act.add(kind::PileDescribed { haul, pile, wood, name, thickness, width, length, length_to });
    super::left::corrected(book, &of, (there, facts), act);
    Ok(())
}

fn move_pieces(book: &Book, (haul, from, to): (Id, Id, Id), n: Count, act: &mut Act) -> Answer<()> {
    let there = found(book, haul)?;
    let (source, target) = (there.pile(from).ok_or(Refusal::NotThere)?, there.pile(to).ok_or(Refusal::NotThere)?);
    if from == to {
        return Err(Refusal::SamePile);
    }
    can_be_moved(n, source)?;
    within(target.taken, n)?;
    done(act.add(kind::PiecesMoved { haul, from, to, n }))
}

/// A, B … Z, AA, AB …: the first letters no pile of the haul has.
pub(super) fn next_label(haul: &Haul) -> Answer<String> {
    if PILES_MOST <= haul.piles.len() {
        return Err(Refusal::TooManyPiles { most: PILES_MOST });
    }
    first_free(|label| haul.piles.iter().any(|pile| pile.label == *label))
}

/// The first letters that no pile has that lies on the rack, or in a job that goes on: what is bought comes beside them.
pub(super) fn label_beside_all(book: &Book) -> Answer<String> {
    let lying = labels_lying(book);
    first_free(|label| lying.contains(label))
}

/// The letters of all piles that lie on the rack, or in a job that goes on.
pub fn labels_lying(book: &Book) -> Vec<String> {
    let jobs: Vec<Id> = fold::jobs(book).filter(|job| job.ended.is_none()).map(|job| job.id).collect();
    let lies = |pile: &Pile| 0 < pile.on_rack() || jobs.iter().any(|job| 0 < pile.in_job(*job));
    fold::hauls(book).flat_map(|haul| haul.piles).filter(lies).map(|pile| pile.label).collect()
}

fn first_free(is_taken: impl Fn(&String) -> bool) -> Answer<String> {
    let one = || ('A'..='Z').map(|c| c.to_string());
    let two = one().flat_map(|first| one().map(move |second| format!("{first}{second}")));
    let free = one().chain(two).find(|label| !is_taken(label));
    free.ok_or(Refusal::TooManyPiles { most: PILES_MOST })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(name: Option<&str>, [thickness, length, length_to]: [i64; 3]) -> PileFacts {
        let mm = |n: i64| (0 < n).then(|| Length::MM.times(n).unwrap());
        PileFacts {
            name: name.map(str::to_owned),
            thickness: mm(thickness),
            length: mm(length),
            length_to: mm(length_to),
            ..PileFacts::default()
        }
    }

    #[test]
    fn what_was_left_as_it_stood_is_not_said_again() {
        let check = |(name, sides), (new, others), (told, left)| {
            assert_eq!(said(new, others).corrects(&said(name, sides)), said(told, left), "{name:?} {sides:?} to {new:?} {others:?}");
        };
        let sides = [25, 500, 600];
        check((Some("Rails"), sides), (Some("Rails"), sides), (None, [0; 3]));
        check((None, sides), (Some("Rails "), [27, 500, 600]), (Some("Rails"), [27, 0, 0]));
        check((Some("Rails"), sides), (Some(" "), sides), (Some(""), [0; 3]));
        check((None, sides), (Some(" "), sides), (None, [0; 3]));
        // A band is said whole, and a length alone ends it.
        check((None, sides), (None, [25, 500, 650]), (None, [0, 500, 650]));
        check((None, sides), (None, [25, 500, 0]), (None, [0, 500, 0]));
    }
}
