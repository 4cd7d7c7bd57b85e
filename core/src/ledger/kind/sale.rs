//! Facts of selling: offers, agreements, sales, payments.

use super::{Exact, kinds};
use crate::quantity::{Count, Currency, Id, Moment, Money, Side, Span, spelled};

/// How money is handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Paid {
    Notes,
    Card,
    Bank,
}

spelled!(Paid: Notes "notes", Card "card", Bank "bank");

/// Who carries it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carried {
    /// The buyer fetches it.
    Fetched,
    /// The maker delivers it.
    Delivered,
}

spelled!(Carried: Fetched "fetched", Delivered "delivered");

impl Carried {
    /// Drives to a buyer.
    pub fn drives(self) -> Count {
        Count::from(self == Carried::Delivered)
    }
}

/// What became of a piece that is not for sale any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Instead {
    /// The maker has it.
    Yours,
    /// Given away.
    Given,
    /// Broken, or gone in another way.
    Broken,
}

spelled!(Instead: Yours "yours", Given "given", Broken "broken");

kinds! {
    /// A buyer named a sum for `n` pieces. `said` is what was said back for them, which they left or took. `asked` is what was asked for them
    /// then; missing, their tags.
    OfferHeard { job: Id, n: Count, sum: Money; paid: Paid, carried: Carried, said: Money, asked: Money }
    /// A price was agreed for `n` pieces, before they are handed over; its id is the entry's. A change of order `replaces` an earlier one.
    /// `rate` and `side` of the tax that was spoken of; missing, that of its job at the hand-over.
    PriceAgreed { job: Id, n: Count, sum: Money, carried: Carried; deposit: Money, due: Moment, buyer: Id, replaces: Id, rate: Exact, side: Side }
    /// One part of what was agreed: part of [`PaymentPlanned`]. `due` is the day it is to come in; missing, at the hand-over.
    PaymentPart { sum: Money; due: Moment }
    /// What was agreed is paid in parts, which add up to it; what comes in pays the first of them first. A later one of the same agreement
    /// replaces it, and no parts take it away.
    PaymentPlanned { job: Id, agreed: Id, parts: Vec<PaymentPart>; }
    /// An agreement came to nothing. `kept` of what was received is not handed back, `back` of it was; missing, all the rest that had come in. `no_show` when the buyer never came.
    AgreementCancelled { job: Id, agreed: Id; kept: Money, no_show: bool, back: Money }
    /// `n` pieces were sold; `sum` is all that the buyer hands over. The tax line, its rate and side are facts of this sale. Its id is the entry's.
    /// `agreed` is the agreement it carries out.
    PieceSold { job: Id, n: Count, sum: Money, tax: Money, rate: Exact, side: Side; agreed: Id, carried: Carried, buyer: Id, when: Moment }
    /// Money came in for a job: for a sale, or ahead of it for what was agreed. The fee is this payment's own.
    PaymentReceived { job: Id, sum: Money, paid: Paid, fee: Money; sale: Id, agreed: Id, when: Moment, rounding: Money }
    /// Pieces went to a gallery, which keeps `share` of the tag before tax; of the tag with tax where `with_tax`.
    /// `maker_pays`: the maker sends in the tax; else the gallery does.
    PiecesConsigned { job: Id, n: Count, tag: Money, share: Exact; with_tax: bool, maker_pays: bool, gallery: Id, when: Moment }
    /// The gallery sold `n` and handed over `sum`. `tax` is what the maker sends in of it; nothing when the gallery does. `lot` is the
    /// consignment they were of; missing, the oldest of that gallery that has some. `sold_for` is all that its buyers handed over; missing, the tags.
    /// `rate` and `side` of the tax it was sold with; missing, not written down. `due` is what it still owes of it; missing, nothing.
    ConsignmentPaid { job: Id, n: Count, sum: Money; tax: Money, gallery: Id, when: Moment, lot: Id, sold_for: Money, rate: Exact, side: Side, due: Money }
    /// The gallery handed over `sum` of what it still owed of what it sold: of the [`ConsignmentPaid`] `of`.
    ConsignmentRestPaid { job: Id, of: Id, sum: Money; when: Moment }
    /// What the gallery still owed of what it sold, of the [`ConsignmentPaid`] `of`, will not be paid: `sum` of it is given up. The sale stays.
    ConsignmentRestGivenUp { job: Id, of: Id, sum: Money; when: Moment }
    /// The gallery gave pieces back. `lot` is the consignment they were of; missing, the oldest of that gallery that has some.
    ConsignmentReturned { job: Id, n: Count; gallery: Id, when: Moment, lot: Id }
    /// `n` pieces that nobody bought are not for sale any more. What they cost stays with their job.
    PiecesNotForSale { job: Id, n: Count, why: Instead; when: Moment }
    /// A sale was taken back: its tax line is reversed, the money handed back. `kept` is what was not handed back, `back` what was;
    /// missing, all that had come in for it.
    SaleReversed { job: Id, sale: Id; kept: Money, when: Moment, back: Money }
    /// `n` of the pieces of a sale came back: `sum` is their part of its price and `tax` of its tax line, which are reversed. `kept` of what had come in
    /// for them is not handed back, `back` was; missing, all that had come in beyond the price of the rest. The rest stays sold. None of them: the
    /// buyer keeps all, and `sum` is less price; what of it did not go back was never paid.
    PiecesBroughtBack { job: Id, sale: Id, n: Count, sum: Money, tax: Money; kept: Money, when: Moment, back: Money }
    /// Money went back to a buyer, because more had come in than was owed: of a sale, or of what was agreed; of sales of no agreement where neither
    /// is named. `rounding`: it settled the rest in coins, and is so much more than was over, or less.
    MoneyHandedBack { job: Id, sum: Money, paid: Paid; agreed: Id, sale: Id, when: Moment, rounding: Money }
    /// Somebody asked for a piece that had a price; `no_show` when they said they would come and did not.
    PieceAskedFor { job: Id, price: Money; no_show: bool }
    /// What the maker guesses of selling: `asks` people a week, the share `buys` of them at the price `at`; at a fifth less `k` times as many
    /// would buy; to be sold `by`; each is worth `end` if not. Each who asks takes the time `each_ask`, keeping all of them costs `each_day` a
    /// day, and the share `no_show` of those who ask never turns up. Members that are missing stay as they were.
    SellingGuessed { job: Id; asks: Exact, buys: Exact, at: Money, k: Exact, by: Moment, end: Money, each_ask: Span, each_day: Money, no_show: Exact }
    /// What a piece like that of a job was asked for elsewhere; `sold`: it was sold for that. `what`: its size, or a note. `when` it was seen, where
    /// that was another day.
    LikePieceSeen { job: Id, sum: Money; sold: bool, what: String, when: Moment }
    /// What a shop that buys to sell again keeps of its price before tax, in one currency. The last one stands.
    ResaleSet { currency: Currency, keeps: Exact; }
}

impl SellingGuessed {
    /// Nothing is said of it yet.
    pub fn nothing(job: Id) -> SellingGuessed {
        let (asks, buys, k, no_show) = (None, None, None, None);
        SellingGuessed { job, asks, buys, at: None, k, by: None, end: None, each_ask: None, each_day: None, no_show }
    }
}
