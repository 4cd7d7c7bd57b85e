//! A haul from its entries.

use super::booked::{booked, without_lost};
use super::stock;
use super::wood::WoodFacts;
use super::workshop::{Till, tills};
use crate::haul::{Haul, Pile, Trip};
use crate::ledger::kind::haul::{Per, PiecesLeft, PileAdded, Step};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::Sorted;
use crate::quantity::order_by_key;
use crate::quantity::{Count, Currency, Id, Length, Listed, Volume};
use crate::wood::species::Species;
use std::cell::OnceCell;

/// Every haul, the newest first.
pub fn hauls(book: &Book) -> impl Iterator<Item = Haul> + '_ {
    hauls_that(book, |_| true)
}

/// The hauls of which pieces were ever set apart for a job, the newest first: no other is folded.
pub fn hauls_set_apart_for(book: &Book, job: Id) -> impl Iterator<Item = Haul> + '_ {
    let is_for_it = |entry: &Entry| matches!(&entry.fact, Fact::PiecesReserved(f) if f.job == job);
    hauls_that(book, |haul| book.about(Subject::Haul(haul)).any(is_for_it))
}

fn hauls_that(book: &Book, are_meant: impl Fn(Id) -> bool) -> std::vec::IntoIter<Haul> {
    let ids = book.subjects().filter_map(|subject| if let Subject::Haul(id) = subject { Some(id) } else { None });
    let known = Known::default();
    let mut found: Vec<Haul> = ids.filter(|id| are_meant(*id)).filter_map(|id| folded(book, id, &known)).listed();
    order_by_key(&mut found, |haul| std::cmp::Reverse((haul.began.at, haul.id)));
    found.into_iter()
}

/// The haul of an id, if it was begun and that stands.
pub fn haul(book: &Book, id: Id) -> Option<Haul> {
    folded(book, id, &Known::default())
}

/// What the workshop knows, read once for all hauls, and only where it is asked: its own woods where a pile is of none of the tables, how
/// it is paid where a drive has no rate.
#[derive(Default)]
struct Known {
    wood: OnceCell<WoodFacts>,
    tills: OnceCell<Sorted<Currency, Till>>,
}

fn folded(book: &Book, id: Id, known: &Known) -> Option<Haul> {
    let mut piles = Piles::default();
    let mut found: Option<Haul> = None;
    let mut trips = Sorted::new();
    // What began comes before all that is said of it, whatever the clocks of two phones showed.
    for entry in book.about(Subject::Haul(id)) {
        match &entry.fact {
            Fact::HaulBegan(f) => {
                found =
                    Some(Haul { name: f.name.clone().filter(|name| !name.is_empty()), ..Haul::new(id, (f.currency, f.units), entry.wall) })
            }
            Fact::TripBegan(_) => trip_of(&mut trips, entry.id).left = Some(entry.wall),
            Fact::PileAdded(f) => piles.begin(entry, f),
            _ => {}
        }
    }
    let mut haul = found?;
    for entry in book.about(Subject::Haul(id)) {
        match &entry.fact {
            Fact::TripStepped(_) | Fact::TripDescribed(_) => trip(&mut trips, entry),
            Fact::PileCounted(f) => stock::counted(book, &mut piles, (entry, f)),
            _ => piles.apply(entry),
        }
        describe(&mut haul, &entry.fact);
    }
    // What came back of a spending goes with it.
    let lines = without_lost(book.about(Subject::Haul(id)).filter_map(booked).listed());
    haul.costs = lines.into_iter().map(|line| line.sum).listed();
    haul.trips = trips.into_values().filter(|trip| trip.left.is_some()).listed();
    if haul.is_unpriced() {
        priced_by_till(&mut haul, known.tills.get_or_init(|| tills(book)));
    }
    let left = std::mem::take(&mut piles.left);
    haul.piles = piles.shown();
    left.iter().for_each(|left| given_back(&mut haul, left));
    let known = || known.wood.get_or_init(|| WoodFacts::of(book));
    for pile in &mut haul.piles {
        let own = pile.wood.as_ref().filter(|wood| Species::of(wood.as_str()).is_err());
        pile.own = own.and_then(|wood| known().woods.own_of(wood)).cloned();
        for want in &mut pile.wants {
            want.length = want.job.and_then(|job| part_length(book, job, &want.part));
        }
    }
    Some(haul)
}

/// What was left of the pieces of one pile is measured by the pile it lies in.
fn given_back(haul: &mut Haul, left: &PiecesLeft) {
    let volume = haul.pile(left.pile).and_then(|pile| pile.piece().ok().flatten()).and_then(|piece| piece.times(left.n).ok());
    let of = haul.piles.iter_mut().find(|pile| pile.id == left.of);
    if let Some((of, volume)) = of.zip(volume) {
        let back = of.given_back.entry(left.job).or_insert(Volume::ZERO);
        *back = back.plus(volume).unwrap_or(*back);
    }
}

/// How long a part of a job is, as it was planned last.
fn part_length(book: &Book, job: Id, part: &str) -> Option<Length> {
    let planned = |entry: &Entry| match &entry.fact {
        Fact::PartPlanned(f) if f.name == part => Some((f.n, f.length)),
        _ => None,
    };
    book.about(Subject::Job(job)).rev().find_map(planned).filter(|(n, _)| 0 < *n).map(|(_, length)| length)
}

/// Whether a haul is bought boards, without folding it whole.
pub fn is_bought(book: &Book, id: Id) -> bool {
    let said = |entry: &Entry| if let Fact::HaulDescribed(f) = &entry.fact { f.bought } else { None };
    book.about(Subject::Haul(id)).rev().find_map(said).unwrap_or(false)
}

/// A drive without a rate of its own is priced as the till has it, where it has one.
fn priced_by_till(haul: &mut Haul, tills: &Sorted<Currency, Till>) {
    let Some((rate, per)) = tills.get(&haul.currency).and_then(|till| till.mileage.zip(till.per)) else { return };
    for trip in haul.trips.iter_mut().filter(|trip| trip.is_unpriced()) {
        (trip.rate, trip.per_mile) = (Some(rate), per == Per::Mile);
    }
}

fn describe(haul: &mut Haul, fact: &Fact) {
    let Fact::HaulDescribed(f) = fact else { return };
    named(&mut haul.name, &f.name);
    set(&mut haul.supplier, &f.supplier);
    set(&mut haul.carries, &f.carries);
    set(&mut haul.people, &f.people);
    haul.bought = f.bought.unwrap_or(haul.bought);
    haul.saves_trip = f.saves_trip.unwrap_or(haul.saves_trip);
}

fn set<T: Clone>(place: &mut Option<T>, value: &Option<T>) {
    if value.is_some() {
        place.clone_from(value);
    }
}

/// An empty name takes the name away.
fn named(place: &mut Option<String>, said: &Option<String>) {
    set(place, said);
    if place.as_ref().is_some_and(String::is_empty) {
        *place = None;
    }
}

fn trip(trips: &mut Sorted<Id, Trip>, entry: &Entry) {
    match &entry.fact {
        Fact::TripStepped(f) => {
            let trip = trip_of(trips, f.trip);
            match f.step {
                Step::Leaving => trip.left = Some(entry.wall),
                Step::AtBin => trip.at_bin = Some(entry.wall),
                Step::Homeward => trip.homeward = Some(entry.wall),
                Step::Home => trip.home = Some(entry.wall),
            }
        }
        Fact::TripDescribed(f) => {
            let trip = trip_of(trips, f.trip);
            set(&mut trip.distance, &f.distance);
            set(&mut trip.rate, &f.rate.map(|rate| rate.0));
            set(&mut trip.wheel_said, &f.wheel);
            set(&mut trip.bin_said, &f.bin);
            trip.share = f.share.map_or(trip.share, |share| share.0);
            if let Some(per) = f.per {
                trip.per_mile = per == Per::Mile;
            }
        }
        _ => {}
    }
}

fn trip_of(trips: &mut Sorted<Id, Trip>, id: Id) -> &mut Trip {
    trips.entry(id).or_insert_with(|| Trip::new(id))
}

/// Piles as their facts come; one that was never added is not shown.
#[derive(Default)]
pub(super) struct Piles {
    of: Sorted<Id, Pile>,
    added: Vec<Id>,
    left: Vec<PiecesLeft>,
}

impl Piles {
    pub(super) fn of(&mut self, id: Id) -> &mut Pile {
        self.of.entry(id).or_insert_with(|| Pile::new(id))
    }

    fn begin(&mut self, entry: &Entry, f: &PileAdded) {
        self.added.push(entry.id);
        let pile = self.of(entry.id);
        pile.since = Some(entry.wall);
        pile.label.clone_from(&f.label);
        set(&mut pile.wood, &f.wood);
        named(&mut pile.name, &f.name);
        size(pile, (f.thickness, f.width), (f.length, f.length_to));
    }

    fn apply(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::PileDescribed(f) => {
                let pile = self.of(f.pile);
                set(&mut pile.wood, &f.wood);
                named(&mut pile.name, &f.name);
                size(pile, (f.thickness, f.width), (f.length, f.length_to));
            }
            Fact::PiecesMoved(f) => self.moved(f.from, f.to, f.n),
            Fact::PiecesCounted(f) => self.change(f.pile, |pile| {
                pile.taken = pile.taken.saturating_add(f.n);
                pile.bundles.push((entry.id, f.n));
            }),
            Fact::PiecesRecounted(f) => self.change(f.pile, |pile| pile.recounted(f.n)),
            Fact::PiecesSorted(f) => self.change(f.pile, |pile| pile.sorted_good = pile.sorted_good.saturating_add(f.n)),
            Fact::PiecesRejected(f) => self.change(f.pile, |pile| {
                let n = f.n.min(pile.good());
                let for_it = pile.rejects.entry(f.why.clone()).or_default();
                *for_it = for_it.saturating_add(n);
                // Where nothing is left to sort it is one of those that were good.
                pile.sorted_good = pile.sorted_good.min(pile.good());
            }),
            Fact::RejectsReturned(f) => self.change(f.pile, |pile| pile.returned(&f.why, f.n, f.to.gone_to())),
            Fact::PiecesTaken(f) => self.change(f.pile, |pile| pile.given(f.job, f.n)),
            Fact::PiecesFreed(f) => self.change(f.pile, |pile| pile.freed(f.job, f.n)),
            Fact::PiecesLeft(f) => {
                self.change(f.pile, |pile| pile.left_over(f.n));
                self.left.push(f.clone());
            }
            _ => stock::apply(self, entry),
        }
    }

    /// Changes what is counted of a pile: what was said of more pieces than there are then falls away.
    pub(super) fn change(&mut self, id: Id, change: impl FnOnce(&mut Pile)) {
        let pile = self.of(id);
        change(pile);
        pile.settle();
    }

    fn moved(&mut self, from: Id, to: Id, n: Count) {
        let n = n.min(self.of(from).on_rack()).min(self.of(from).good());
        self.change(from, |source| source.taken = source.taken.saturating_sub(n));
        self.change(to, |target| target.taken = target.taken.saturating_add(n));
    }

    fn shown(mut self) -> Vec<Pile> {
        self.added.iter().filter_map(|id| self.of.remove(id)).listed()
    }
}

type Side = Option<crate::quantity::Length>;

/// A new length without a band ends an old band.
fn size(pile: &mut Pile, (thickness, width): (Side, Side), (length, length_to): (Side, Side)) {
    set(&mut pile.thickness, &thickness);
    set(&mut pile.width, &width);
    if length.is_some() {
        pile.length_to = None;
    }
    set(&mut pile.length, &length);
    set(&mut pile.length_to, &length_to);
}
