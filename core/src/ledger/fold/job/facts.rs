//! What is known of a job: plain facts, no price is worked out here.

use super::selling::{Sale, Selling};
use crate::bench::estimate::whole::kind_in;
use crate::ledger::fold::{Booked, Kept, KeptPlan, Quote, TaxBy};
use crate::ledger::kind::bench::{Kind, Stage};
use crate::ledger::kind::job::{For, HaulUsed};
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Id, Key, Length, Listed, Moment, Money, Span, Units, Volume, Wall};
use crate::refusal::{Answer, Refusal};

/// One job: what is made, from what, what it cost, how it sells.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    pub id: Id,
    pub began: Wall,
    pub name: String,
    pub currency: Currency,
    pub units: Units,
    /// Pieces alike that are made.
    pub pieces: Count,
    pub made_for: For,
    pub described: Described,
    pub parts: Vec<Part>,
    pub operations: Vec<Operation>,
    pub planned_costs: Vec<PlannedCost>,
    /// Rough pieces the job has, by haul and pile.
    pub wood: Sorted<(Id, Id), Count>,
    /// Spending and driving, as booked.
    pub booked: Vec<Booked>,
    /// What its pieces are taxed with.
    pub tax: TaxBy,
    /// The tag of one piece.
    pub tag: Option<Money>,
    /// What the maker would gladly take for one piece, where it was set.
    pub settle: Option<Money>,
    pub selling: Selling,
    pub ended: Option<Ended>,
    pub typical: bool,
    pub lesson: Option<String>,
    /// Moistures in per cent that its pieces will live between; those of the workshop where nothing is said.
    pub room: Option<(Decimal, Decimal)>,
    /// Plans that were kept for it, in their order.
    pub plans: Vec<KeptPlan>,
    /// The design it was made from.
    pub design: Option<Id>,
    /// The estimate that was given last.
    pub kept: Option<Kept>,
    /// The operations that were planned when it was given.
    pub kept_for: Vec<String>,
    /// The maker said that its operations are all there is to do.
    pub whole_planned: bool,
    /// It was said while some of its making was planned: what was thought is of the whole. Said of a piece that was made without a plan, it only
    /// says that nothing more is to come.
    pub whole_thought: bool,
    /// Its estimate is reckoned without the factor.
    pub without_factor: bool,
    /// The quote that was given last.
    pub quote: Option<Quote>,
}

/// What is said of the piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Described {
    /// The kind of piece, a key: stool, stand, bench.
    pub piece: Option<Key>,
    pub width: Option<Length>,
    pub depth: Option<Length>,
    pub height: Option<Length>,
    /// One piece, in grams.
    pub grams: Option<i64>,
    pub wood: Option<String>,
    pub finish: Option<String>,
    pub care: Option<String>,
    pub delivery: Option<String>,
    /// The day it was promised for, by the clock of the place where that was written.
    pub due: Option<Wall>,
    pub note: Option<String>,
}

/// A part of one piece, finished.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    pub name: String,
    pub n: Count,
    /// Thickness, width, length.
    pub size: [Length; 3],
    pub wood: Option<Key>,
}

/// An operation and what it was thought to take.
#[derive(Clone, Debug, PartialEq)]
pub struct Operation {
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    pub span: Option<Span>,
    pub pieces: Option<Count>,
    /// When it was planned as it is.
    pub at: Moment,
}

/// A cost still to come.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedCost {
    pub kind: Key,
    pub sum: Money,
    pub what: Option<String>,
    /// Falls away when the buyer fetches it.
    pub delivery: bool,
    /// When it was planned, and how many lines were booked of the job by then.
    pub at: Moment,
    pub after: usize,
    /// The same of when a delivery was first planned of its kind.
    pub first: (Moment, usize),
}

/// The maker was done with it; what its hauls cost it is frozen.
#[derive(Clone, Debug, PartialEq)]
pub struct Ended {
    pub wall: Wall,
    pub hauls: Vec<HaulUsed>,
}

impl Job {
    /// The kind of piece: as the maker said, else as its name tells.
    pub fn kind_of_piece(&self) -> Option<Key> {
        self.described.piece.clone().or_else(|| self.kind_by_name())
    }

    /// The kind its name tells, while the maker said none.
    pub fn kind_by_name(&self) -> Option<Key> {
        kind_in(&self.name).filter(|_| self.described.piece.is_none()).and_then(Key::read)
    }

    /// The hauls it has wood of.
    pub fn hauls(&self) -> Vec<Id> {
        let mut hauls: Vec<Id> = self.wood.keys().map(|(haul, _)| *haul).listed();
        hauls.dedup();
        hauls
    }

    /// Finished volume of one piece by its parts; none while no part is planned.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn finished_piece(&self) -> Answer<Option<Volume>> {
        if self.parts.is_empty() {
            return Ok(None);
        }
        self.parts.iter().try_fold(Volume::ZERO, |sum, part| sum.plus(part.volume()?)).map(Some)
    }

    /// What all planned operations were thought to take; none while one of them is not estimated, or there are none.
    pub fn estimate(&self) -> Option<Span> {
        let spans: Option<Vec<Span>> = self.operations.iter().map(|operation| operation.span).collect();
        spans.filter(|spans| !spans.is_empty()).map(Span::sum)
    }

    /// What the maker thought it would take: as it was given, else as its operations are planned.
    pub fn thought(&self) -> Option<Span> {
        self.kept.and_then(|kept| kept.thought).or_else(|| self.estimate())
    }

    /// What it is judged by: what was thought, else what was given as likely.
    pub fn judged_by(&self) -> Option<Span> {
        self.thought().or(self.kept.map(|kept| kept.likely))
    }

    /// What of all that was logged is held against what it is judged by: all of it, unless some operations were planned and most of the work was on
    /// others (a quarter or more, ours). Of those nothing was thought.
    pub fn judged(&self, logged: Span, of_planned: Span) -> Span {
        let whole = self.whole_thought || self.kept.is_some_and(|kept| kept.thought.is_some()) || self.estimate().is_none();
        if whole || logged.times(3) <= of_planned.times(4) { logged } else { of_planned }
    }

    /// Pieces on hand: neither sold, nor with a gallery.
    pub fn left(&self) -> Count {
        self.pieces.saturating_sub(self.selling.gone())
    }

    /// Whether an operation can still be to come: the job goes on, and a piece is on hand, or it was planned since the last one went; or one was
    /// sold on the spot and is yet to be driven to its buyer: the last of all, or nothing was driven since.
    pub fn has_to_come(&self, operation: &Operation, is_driven_since: impl Fn(Moment) -> bool) -> bool {
        let waits = |sale: &Sale| self.selling.is_last(sale) || !is_driven_since(sale.at.at);
        let is_driven = || operation.kind == Kind::Deliver && self.selling.driven_after_sale().is_some_and(waits);
        let is_planned_since = || self.selling.last_went().is_none_or(|went| went < operation.at);
        self.ended.is_none() && (0 < self.left() || is_planned_since() || is_driven())
    }

    /// Of those, pieces no agreement speaks for.
    pub fn free(&self) -> Count {
        self.left().saturating_sub(self.selling.promised())
    }

    /// What buyers still owe: agreed and sold, less what was received. Below nothing when money is to be handed back.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn due(&self) -> Answer<Money> {
        self.selling.owed(self.currency)?.minus(self.selling.received(self.currency)?)
    }

    /// What was spent on it so far, without its share of hauls.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn spent(&self) -> Answer<Money> {
        Money::sum(self.currency, self.booked.iter().map(|line| line.sum))
    }
}

impl Part {
    /// The finished volume of all `n` of one piece.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn volume(&self) -> Answer<Volume> {
        let [thickness, width, length] = self.size;
        Volume::of(thickness, width, length)?.times(self.n)
    }

    /// Whether each side is one a piece may have.
    ///
    /// # Errors
    /// [`Refusal::LengthOutOfRange`].
    pub fn checked(&self) -> Answer<()> {
        self.size.iter().try_for_each(|side| side.of_a_piece().map(|_| ()))
    }
}

/// A job in another currency than `sum` refuses it.
pub(in crate::ledger) fn same(currency: Currency, sum: Money) -> Answer<Money> {
    if sum.currency() == currency { Ok(sum) } else { Err(Refusal::CurrenciesMixed { one: currency, other: sum.currency() }) }
}
