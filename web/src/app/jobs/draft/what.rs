//! What a form is for.

use super::Picks;
use fivebar_core::ledger::decide::PaidOf;
use fivebar_core::ledger::fold::{Booked, How, Over};
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::ledger::kind::sale::Carried;
use fivebar_core::quantity::{Id, Money};
use fivebar_core::sheet::job::JobSheet;

/// What a form is for.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    New,
    /// The job's name, and how many alike are made.
    Name,
    /// Pieces from a pile of the rack, or back to it.
    Take {
        haul: Id,
        pile: Id,
    },
    /// A part of one piece; an old one by its name.
    Part(Option<String>),
    /// A planned operation; an old one by its name.
    Plan(Option<String>),
    /// Jobs from before the book, as history.
    OldJobs,
    /// One of them put right, by the line that told it.
    OldJob(Id),
    Spend,
    /// Part of a spending came back.
    CameBack(Id),
    Tag,
    Settle,
    /// Width, depth, height and weight, for the buyer's face.
    Size,
    /// Wood, finish, care and delivery in words, for the buyer's face.
    Facts,
    /// A sale; what was agreed by its id.
    Sell(Option<Id>),
    Pay(PaidTo),
    /// Of what had come in beyond what is owed.
    HandBack(Over),
    /// A sale is taken back and its money handed back.
    Refund(Id),
    /// An agreement came to nothing.
    Cancel(Id),
    Consign,
    /// A gallery paid, or gave back, of a consignment.
    GalleryPaid(Id),
    /// Pieces are not for sale any more.
    NotForSale,
    Lesson,
    /// The moistures of the room it will live in.
    Room,
}

/// What a payment is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaidTo {
    Sale(Id),
    Agreed(Id),
    /// A part of what was agreed, with what it lacks.
    Part(Id, Money),
    /// What a gallery still owes of what it sold.
    Gallery(Id),
}

impl From<PaidTo> for PaidOf {
    fn from(to: PaidTo) -> PaidOf {
        match to {
            PaidTo::Sale(id) => PaidOf::Sale(id),
            PaidTo::Gallery(id) => PaidOf::Gallery(id),
            PaidTo::Agreed(id) | PaidTo::Part(id, _) => PaidOf::Agreed(id),
        }
    }
}

/// Whether a drive begins as one to deliver: some of its pieces are brought to their buyers, or a delivery is planned. Of one piece it isn't asked.
pub(super) fn brings(sheet: &JobSheet) -> Option<bool> {
    let (delivered, selling) = (Some(Carried::Delivered), &sheet.selling);
    let sold = selling.sales.iter().any(|sale| sale.reversed.is_none() && sale.carried == delivered);
    let agreed = selling.open().any(|agreement| agreement.carried == delivered);
    let planned = sheet.operations.iter().any(|planned| planned.kind == Kind::Deliver);
    (1 < sheet.account.pieces).then_some(sold || agreed || planned)
}

/// The sale is of more pieces than one: some of them may come back.
pub fn of_several(sheet: &JobSheet, sale: Id) -> bool {
    sheet.selling.sale(sale).is_some_and(|sale| 1 < sale.n)
}

/// With what one cost of what some comes back of, where it had a price each.
pub(super) fn priced(picks: Picks, lines: &[Booked], of: Id) -> Picks {
    let line = lines.iter().find(|line| line.entry == of);
    let back_at = line.and_then(|line| if let How::Each { each, .. } = line.how { Some(each) } else { None });
    Picks { back_at, ..picks }
}
