//! Facts of selling: offers, agreements, sales, payments.

use super::{Exact, kinds};
use crate::quantity::{Count, Id, Moment, Money, Side};
use serde::{Deserialize, Serialize};

/// How money is handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paid {
    Notes,
    Card,
    Bank,
}

/// Who carries it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Carried {
    /// The buyer fetches it.
    Fetched,
    /// The maker delivers it.
    Delivered,
}

kinds! {
    /// A buyer named a sum for `n` pieces.
    OfferHeard { job: Id, n: Count, sum: Money; paid: Paid, carried: Carried }
    /// A price was agreed for `n` pieces, before they are handed over.
    PriceAgreed { job: Id, n: Count, sum: Money, carried: Carried; deposit: Money, due: Moment, buyer: Id }
    /// `n` pieces were sold; `sum` is all that the buyer hands over. The tax line, its rate and side are facts of this sale. Its id is the entry's.
    PieceSold { job: Id, n: Count, sum: Money, tax: Money, rate: Exact, side: Side; carried: Carried, buyer: Id, when: Moment }
    /// Money came in for a job: a deposit, or for a sale. The fee is this payment's own.
    PaymentReceived { job: Id, sum: Money, paid: Paid, fee: Money; sale: Id, deposit: bool, when: Moment }
    /// Pieces went to a gallery, which keeps `share` of the tag.
    PiecesConsigned { job: Id, n: Count, tag: Money, share: Exact; gallery: Id, when: Moment }
    /// The gallery sold `n` and handed over `sum`; it collected and paid the tax.
    ConsignmentPaid { job: Id, n: Count, sum: Money; gallery: Id, when: Moment }
    /// A sale was taken back: its tax line is reversed, the money handed back. `kept` is what was not handed back.
    SaleReversed { job: Id, sale: Id; kept: Money, when: Moment }
}
