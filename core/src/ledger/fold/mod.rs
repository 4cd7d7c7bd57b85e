//! What the standing entries about a subject add up to. Total and pure: a fact that no longer makes sense changes nothing.

mod bench;
mod booked;
mod cans;
mod dates;
mod estimate;
mod haul;
mod history;
pub(in crate::ledger) mod job;
mod name;
mod numbers;
mod photos;
mod plan;
mod sought;
mod stock;
mod taxes;
mod wait;
pub(in crate::ledger) mod wood;
mod workshop;

pub use bench::{bench, noted_at};
pub use booked::{Booked, DISTANCE, How, booked};
pub use cans::{Can, CanShare};
pub use dates::{HoursFacts, Quote};
pub use estimate::{Kept, OldJob, struck_old_jobs};
pub use haul::{haul, hauls, hauls_set_apart_for, is_bought};
pub use history::{last_touched, of_pile, piles_of};
pub use job::{
    Agreement, AgreementState, Asked, BroughtBack, ComesBack, Consigned, Described, Ended, GalleryDue, GalleryTerms, Guesses, HandedBack,
    Job, LikePiece, Lines, Lot, NotForSale, Offer, Operation, Over, Part, PartOfPay, Payment, PlannedCost, RestGivenUp, RestPaid, Reversed,
    Sale, Selling, any_job, exact_part, job, jobs, part, planned_before,
};
pub use name::{design_of, is_ended, name_of, planned_operations};
pub use photos::{Photo, Photos};
pub use plan::{Design, InUse, KeptPlan, SawFacts, Share, has_wood, in_use, not_left, pieces_taken, shared};
pub use sought::{PlanSought, Sought, made_of};
pub use taxes::{NamedTax, TaxBy, tax_when};
pub use wait::waits;
pub use wood::{WoodFacts, van};
pub use workshop::{Copy, OwnTool, Person, RateFacts, Till, Workshop, workshop};

use crate::quantity::{Decimal, Span};
use crate::refusal::{Answer, Refusal};

/// Hours as the maker types them, as a span to the millisecond.
///
/// # Errors
/// [`Refusal::OutOfRange`].
pub fn hours(hours: Decimal) -> Answer<Span> {
    let ms = hours.checked_mul(Decimal::from(3_600_000)).ok_or(Refusal::OutOfRange)?;
    i64::try_from(crate::quantity::half_up(ms, 0)).map(Span::ms).map_err(|_| Refusal::OutOfRange)
}
