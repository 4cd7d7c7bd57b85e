//! How a job sells: offers, agreements, sales, payments, galleries. Counts and sums of facts, no price.

use super::brought::{BroughtBack, Lines};
use super::paid_for::{Found, Step};
use crate::ledger::kind::sale::{Carried, Instead, Paid, PaymentPart};
use crate::ledger::{Entry, Fact};
use crate::money::tax::Tax;
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Id, Listed, Moment, Money, Side, Span, Wall};
use crate::refusal::Answer;

/// All that was said and done with buyers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Selling {
    pub offers: Vec<Offer>,
    pub asked: Vec<Asked>,
    /// Pieces like it that were seen elsewhere.
    pub like: Vec<LikePiece>,
    pub agreements: Vec<Agreement>,
    pub sales: Vec<Sale>,
    pub payments: Vec<Payment>,
    pub handed_back: Vec<HandedBack>,
    /// Pieces that went to galleries, in order.
    pub consigned: Vec<Consigned>,
    /// What galleries sold and handed over.
    pub consignments_paid: Vec<Consigned>,
    pub consignments_returned: Vec<Consigned>,
    /// What galleries handed over later of what they still owed.
    pub rests_paid: Vec<RestPaid>,
    /// What they still owed and will not pay.
    pub rests_given_up: Vec<RestGivenUp>,
    /// Pieces that are not for sale any more.
    pub not_for_sale: Vec<NotForSale>,
    pub guesses: Guesses,
    pub(super) brought: Vec<BroughtBack>,
    pub(super) reversals: Sorted<Id, Reversed>,
    pub(super) cancelled: Sorted<Id, AgreementState>,
    /// The same by their entries: two phones may have written one each.
    pub(super) all_reversals: Sorted<Id, Reversed>,
    pub(super) all_cancelled: Sorted<Id, Ended>,
    /// Of a cancelled agreement: the acts before it, and not its own, by which pieces had come back.
    pub(super) came_back_before: Sorted<Id, Vec<Id>>,
    /// The same of an agreement whose place another took.
    pub(super) came_back_before_change: Sorted<Id, Vec<Id>>,
    pub(super) planned: Sorted<Id, Vec<PartOfPay>>,
    /// What all pieces of an agreement came to, when the last of them was handed over.
    pub(super) came_to: Sorted<Id, Money>,
    /// What was written of money, in its order.
    pub(super) steps: Vec<Step>,
    pub(super) found: Found,
}

/// A buyer named a sum.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    pub entry: Id,
    pub at: Moment,
    pub n: Count,
    pub sum: Money,
    pub paid: Option<Paid>,
    pub carried: Option<Carried>,
    /// What was said back, and what was asked then, where that was written down.
    pub said: Option<Money>,
    pub asked: Option<Money>,
}

/// Somebody asked for a piece at its price.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    pub at: Moment,
    pub price: Money,
    pub no_show: bool,
}

/// A piece like it, seen elsewhere: what was asked for it, or what it was sold for.
#[derive(Clone, Debug, PartialEq)]
pub struct LikePiece {
    pub entry: Id,
    pub at: Wall,
    pub sum: Money,
    pub sold: bool,
    /// Its size, or a note.
    pub what: Option<String>,
}

/// A price agreed before the hand-over.
#[derive(Clone, Debug, PartialEq)]
pub struct Agreement {
    pub id: Id,
    /// The act it was written in.
    pub act: Id,
    pub at: Moment,
    pub n: Count,
    pub sum: Money,
    pub carried: Option<Carried>,
    pub deposit: Option<Money>,
    /// The day it was promised for, by the clock of the place where that was written.
    pub due: Option<Wall>,
    pub buyer: Option<Id>,
    pub replaces: Option<Id>,
    /// The tax that was spoken of, where it is not that of the job.
    pub tax: Option<Tax>,
    /// The tag that stood when it was agreed.
    pub tag: Option<Money>,
    pub state: AgreementState,
    /// The parts it is paid in, where it is.
    pub parts: Vec<PartOfPay>,
    /// Pieces sold under it, and what they were sold for, but for what all of it came to beyond its sum when the last was handed over: to a coin,
    /// or as the maker had it then.
    pub sold: Count,
    pub sold_for: Money,
    /// By so much all of its pieces came to more than its sum, below nothing where it was less; nothing before all were handed over.
    pub beyond: Money,
    /// Pieces that were handed over under it and came back.
    pub came_back: Count,
}

/// One part of what was agreed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PartOfPay {
    pub sum: Money,
    /// The day it is to come in; at the hand-over where none is said.
    pub due: Option<Wall>,
}

/// Where an agreement stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgreementState {
    Open,
    /// All its pieces are handed over.
    Done,
    /// A change of order took its place.
    Replaced,
    Cancelled {
        entry: Id,
        at: Wall,
        kept: Money,
        no_show: bool,
    },
}

/// Pieces sold, with the tax line of the sale.
#[derive(Clone, Debug, PartialEq)]
pub struct Sale {
    pub id: Id,
    /// By the clock of the place where it was written, as the year of its tax goes.
    pub at: Wall,
    pub n: Count,
    /// All that the buyer hands over.
    pub sum: Money,
    pub tax: Money,
    pub rate: Decimal,
    pub side: Side,
    /// The tag that stood when it was sold.
    pub tag: Option<Money>,
    pub agreed: Option<Id>,
    pub carried: Option<Carried>,
    pub buyer: Option<Id>,
    /// As it was sold: pieces, sum and tax above are those that stand.
    pub whole: Lines,
    /// Pieces of it that came back.
    pub back: Vec<BroughtBack>,
    /// It was taken back.
    pub reversed: Option<Reversed>,
}

/// A sale was taken back: its tax line is reversed, and what was paid went back but for what was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reversed {
    pub entry: Id,
    pub act: Id,
    pub at: Wall,
    pub kept: Money,
    /// What went back; none where nobody wrote it down.
    pub back: Option<Money>,
}

/// What became of the money of an agreement that came to nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Ended {
    pub at: Wall,
    pub kept: Money,
    pub back: Option<Money>,
}

/// Money that came in.
#[derive(Clone, Debug, PartialEq)]
pub struct Payment {
    pub id: Id,
    pub at: Wall,
    pub sum: Money,
    pub paid: Paid,
    pub fee: Money,
    pub sale: Option<Id>,
    pub agreed: Option<Id>,
    /// By so much more than was owed it paid off the rest, in coins; below nothing where it was less.
    pub rounding: Option<Money>,
}

/// Money that went back, because more had come in than was owed.
#[derive(Clone, Debug, PartialEq)]
pub struct HandedBack {
    pub id: Id,
    pub at: Wall,
    pub sum: Money,
    pub paid: Paid,
    pub sale: Option<Id>,
    pub agreed: Option<Id>,
    /// By so much more than was over it settled the rest, in coins; below nothing where it was less.
    pub rounding: Option<Money>,
}

/// Money that came in beyond what is owed, and what it had come in for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Over {
    pub agreed: Option<Id>,
    pub sale: Option<Id>,
    pub sum: Money,
}

/// Pieces at a gallery: given, paid for, or given back.
#[derive(Clone, Debug, PartialEq)]
pub struct Consigned {
    pub entry: Id,
    pub at: Wall,
    pub n: Count,
    /// The tag when given, what was handed over when paid.
    pub sum: Option<Money>,
    pub terms: Option<GalleryTerms>,
    /// The tax the maker sends in of what was paid.
    pub tax: Option<Money>,
    /// What it was sold with, where that was written down.
    pub taxed: Option<Tax>,
    pub gallery: Option<Id>,
    /// The consignment they were of, where that was said.
    pub lot: Option<Id>,
    /// What its buyers handed over, where that was not the tags.
    pub sold_for: Option<Money>,
    /// What the gallery still owed of it when it paid.
    pub due: Option<Money>,
}

/// Pieces that are not for sale any more, and what became of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotForSale {
    pub entry: Id,
    pub at: Wall,
    pub n: Count,
    pub why: Instead,
}

/// A gallery handed over something of what it still owed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestPaid {
    pub entry: Id,
    pub at: Wall,
    /// The sale by the gallery that it is of.
    pub of: Id,
    pub sum: Money,
}

/// What a gallery still owed will not be paid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestGivenUp {
    pub entry: Id,
    pub at: Wall,
    /// The sale by the gallery that it is of.
    pub of: Id,
    pub sum: Money,
}

/// What a gallery keeps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GalleryTerms {
    pub share: Decimal,
    /// Its share is taken of the tag with tax.
    pub with_tax: bool,
    /// The maker sends in the tax.
    pub maker_pays: bool,
}

/// What the maker guesses of selling; each may be missing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Guesses {
    /// People who ask in a week.
    pub asks: Option<Decimal>,
    /// The share of them who buy at the price `at`.
    pub buys: Option<Decimal>,
    pub at: Option<Money>,
    /// At a fifth less, how many times as many would buy.
    pub k: Option<Decimal>,
    /// The day, by the clock of the place where that was written.
    pub by: Option<Wall>,
    /// What one is worth if it was not sold by then.
    pub end: Option<Money>,
    /// The time that one who asks takes.
    pub each_ask: Option<Span>,
    /// What keeping all that is left costs a day.
    pub each_day: Option<Money>,
    /// The share of those who ask that never turns up.
    pub no_show: Option<Decimal>,
    /// When the maker last said who asks and who buys: what happens after that says more.
    pub told: Option<Moment>,
}

pub(super) fn act_of(entry: &Entry) -> Id {
    entry.act.unwrap_or(entry.id)
}

impl Payment {
    /// What it pays of what was owed.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub(super) fn pays(&self) -> Answer<Money> {
        self.rounding.map_or(Ok(self.sum), |rounding| self.sum.minus(rounding))
    }
}

impl HandedBack {
    /// What it settles of what was over.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub(super) fn settles(&self) -> Answer<Money> {
        self.rounding.map_or(Ok(self.sum), |rounding| self.sum.minus(rounding))
    }
}

impl Selling {
    pub(super) fn apply(&mut self, entry: &Entry, (currency, tag): (Currency, Option<Money>)) {
        let ours = |sum: Money| sum.currency() == currency;
        self.found = Found::default();
        match &entry.fact {
            Fact::OfferHeard(f) if ours(f.sum) => {
                let (said, asked) = (f.said.filter(|sum| ours(*sum)), f.asked.filter(|sum| ours(*sum)));
                self.offers.push(Offer {
                    entry: entry.id,
                    at: entry.at(),
                    n: f.n,
                    sum: f.sum,
                    paid: f.paid,
                    carried: f.carried,
                    said,
                    asked,
                });
            }
            Fact::PieceAskedFor(f) if ours(f.price) => {
                self.asked.push(Asked { at: entry.at(), price: f.price, no_show: f.no_show.unwrap_or(false) });
            }
            Fact::LikePieceSeen(f) if ours(f.sum) => self.like.push(LikePiece {
                entry: entry.id,
                at: entry.when(f.when),
                sum: f.sum,
                sold: f.sold.unwrap_or(false),
                what: f.what.clone(),
            }),
            Fact::PriceAgreed(f) if ours(f.sum) => {
                let acts = self.acts_back().filter(|act| *act != act_of(entry)).listed();
                self.came_back_before_change.extend(f.replaces.map(|old| (old, acts)));
                self.agreed(entry, f, tag);
            }
            Fact::PaymentPlanned(f) => {
                let part = |part: &PaymentPart| PartOfPay { sum: part.sum, due: part.due.map(|due| Wall::new(due, entry.offset())) };
                self.planned.insert(f.agreed, f.parts.iter().filter(|part| ours(part.sum)).map(part).listed());
            }
            Fact::PieceSold(f) if ours(f.sum) && ours(f.tax) => self.sold(entry, f, tag),
            Fact::AgreementCancelled(_) | Fact::SaleReversed(_) | Fact::PiecesBroughtBack(_) => self.returned(entry, currency),
            _ => self.money(entry, currency),
        }
    }

    /// Acts by which pieces came back.
    pub(super) fn acts_back(&self) -> impl Iterator<Item = Id> {
        self.reversals.values().map(|reversed| reversed.act).chain(self.brought.iter().map(|back| back.act))
    }

    fn money(&mut self, entry: &Entry, currency: Currency) {
        let ours = |sum: Money| sum.currency() == currency;
        match &entry.fact {
            Fact::PaymentReceived(f) if ours(f.sum) && ours(f.fee) => {
                self.steps.push(Step::Came(self.payments.len()));
                self.payments.push(Payment {
                    id: entry.id,
                    at: entry.when(f.when),
                    sum: f.sum,
                    paid: f.paid,
                    fee: f.fee,
                    sale: f.sale,
                    agreed: f.agreed,
                    rounding: f.rounding.filter(|sum| ours(*sum)),
                });
            }
            Fact::MoneyHandedBack(f) if ours(f.sum) => {
                self.steps.push(Step::HandedBack(self.handed_back.len()));
                self.handed_back.push(HandedBack {
                    id: entry.id,
                    at: entry.when(f.when),
                    sum: f.sum,
                    paid: f.paid,
                    sale: f.sale,
                    agreed: f.agreed,
                    rounding: f.rounding.filter(|sum| ours(*sum)),
                });
            }
            _ => self.at_galleries(entry, currency),
        }
    }

    fn at_galleries(&mut self, entry: &Entry, currency: Currency) {
        let ours = |sum: Money| sum.currency() == currency;
        let of = |n, sum, (gallery, when): (Option<Id>, Option<Moment>)| {
            let at = entry.when(when);
            Consigned { entry: entry.id, at, n, sum, terms: None, tax: None, taxed: None, gallery, lot: None, sold_for: None, due: None }
        };
        match &entry.fact {
            Fact::PiecesConsigned(f) if ours(f.tag) => {
                let (with_tax, maker_pays) = (f.with_tax.unwrap_or(false), f.maker_pays.unwrap_or(false));
                let terms = Some(GalleryTerms { share: f.share.0, with_tax, maker_pays });
                self.consigned.push(Consigned { terms, ..of(f.n, Some(f.tag), (f.gallery, f.when)) });
            }
            Fact::ConsignmentPaid(f) if ours(f.sum) => {
                let tax = f.tax.filter(|tax| ours(*tax));
                let (lot, sold_for, due) = (f.lot, f.sold_for.filter(|sum| ours(*sum)), f.due.filter(|sum| ours(*sum)));
                let taxed = f.rate.map(|rate| Tax { rate: rate.0, side: f.side.unwrap_or(Side::Inside) });
                self.consignments_paid.push(Consigned { tax, taxed, lot, sold_for, due, ..of(f.n, Some(f.sum), (f.gallery, f.when)) });
            }
            Fact::ConsignmentRestPaid(f) if ours(f.sum) => {
                self.rests_paid.push(RestPaid { entry: entry.id, at: entry.when(f.when), of: f.of, sum: f.sum });
            }
            Fact::ConsignmentRestGivenUp(f) if ours(f.sum) => {
                self.rests_given_up.push(RestGivenUp { entry: entry.id, at: entry.when(f.when), of: f.of, sum: f.sum });
            }
            Fact::ConsignmentReturned(f) => {
                self.consignments_returned.push(Consigned { lot: f.lot, ..of(f.n, None, (f.gallery, f.when)) });
            }
            Fact::PiecesNotForSale(f) => self.not_for_sale.push(NotForSale { entry: entry.id, at: entry.when(f.when), n: f.n, why: f.why }),
            Fact::SellingGuessed(f) => {
                let guesses = &mut self.guesses;
                guesses.asks = f.asks.map(|n| n.0).or(guesses.asks);
                guesses.buys = f.buys.map(|n| n.0).or(guesses.buys);
                guesses.k = f.k.map(|n| n.0).or(guesses.k);
                guesses.by = f.by.map(|by| Wall::new(by, entry.offset())).or(guesses.by);
                guesses.at = f.at.filter(|sum| ours(*sum)).or(guesses.at);
                guesses.end = f.end.filter(|sum| ours(*sum)).or(guesses.end);
                guesses.each_ask = f.each_ask.or(guesses.each_ask);
                guesses.each_day = f.each_day.filter(|sum| ours(*sum)).or(guesses.each_day);
                guesses.no_show = f.no_show.map(|n| n.0).or(guesses.no_show);
                let of_buyers = [f.asks, f.buys, f.k, f.no_show].iter().any(Option::is_some) || f.at.is_some();
                guesses.told = of_buyers.then_some(entry.at()).or(guesses.told);
            }
            _ => {}
        }
    }

    fn agreed(&mut self, entry: &Entry, f: &crate::ledger::kind::sale::PriceAgreed, tag: Option<Money>) {
        self.agreements.push(Agreement {
            id: entry.id,
            act: act_of(entry),
            at: entry.at(),
            n: f.n,
            sum: f.sum,
            carried: Some(f.carried),
            deposit: f.deposit,
            due: f.due.map(|due| Wall::new(due, entry.offset())),
            buyer: f.buyer,
            replaces: f.replaces,
            tax: f.rate.map(|rate| Tax { rate: rate.0, side: f.side.unwrap_or(Side::Inside) }),
            tag,
            state: AgreementState::Open,
            parts: vec![],
            sold: 0,
            sold_for: Money::zero(f.sum.currency()),
            beyond: Money::zero(f.sum.currency()),
            came_back: 0,
        });
    }
}
