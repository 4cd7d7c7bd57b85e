//! Other ways to an asking price: the wood as bought boards, a shop that buys to sell again, a gallery, like pieces seen elsewhere; and why a
//! multiple of materials says nothing. Every price is of one piece; the work is that of the marks.

use super::account::{Account, of as reckon};
use super::carried::HAUL;
use super::gallery::of_one;
use super::marks::{by_dearest, costs_as_left, dearest, for_need, one_paid};
use super::offer::{Leaves, leaves, left_of};
use super::shop::Shop;
use crate::ledger::fold::{GalleryTerms, Job, LikePiece, part};
use crate::ledger::kind::sale::Carried;
use crate::money::charge::Terms;
use crate::money::cost::CostKind;
use crate::money::price::{Mark, Marks, Proposed, Work, multiple, proposed};
use crate::money::resale::{Resale, USUAL_KEEPS};
use crate::quantity::{Count, Currency, Decimal, Id, Key, Listed, Money, Span};
use crate::refusal::{Answer, Refusal};

/// The page of other ways.
#[derive(Clone, Debug, PartialEq)]
pub struct WaysSheet {
    pub job: Id,
    pub name: String,
    pub currency: Currency,
    pub pieces: Count,
    /// Tax comes on top of a tag: what a buyer hands over is with it.
    pub is_on_top: bool,
    /// What is asked: the tag as set, else as proposed.
    pub tag: Option<Money>,
    /// The maker set it.
    pub is_set: bool,
    /// What a buyer hands over for it.
    pub charge: Option<Money>,
    /// Hours are still to come and nobody knows how many: no way proposes a price.
    pub at_least: bool,
    /// Tax and fees leave nothing of a charge: there are no marks.
    pub refused: Option<Refusal>,
    pub marks: Marks,
    /// What the price leaves at which it is asked for.
    pub as_asked: Option<Leaves>,
    /// By your rate, with its share of the hauls.
    pub own: Option<Proposed>,
    pub bought: Result<Bought, Lacks>,
    pub shop: Shops,
    pub gallery: Option<Gallery>,
    pub like: Vec<Like>,
    pub materials: Option<Materials>,
}

/// What the wood as bought boards can't be reckoned without.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lacks {
    /// No part is planned.
    Parts,
    /// What boards of this wood cost; of a part whose wood is not named, what any cost.
    BoardPrice(Option<Key>),
}

/// The wood at what equal boards cost, in place of its share of the hauls with the minutes of that share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bought {
    /// For all pieces: what boards cost, and what falls away.
    pub boards: Money,
    pub haul: Money,
    pub time: Span,
    /// Bought wood is booked on the job, and stays in its costs.
    pub is_booked_too: bool,
    /// One piece, by lowest pay and by your rate.
    pub marks: Marks,
    pub proposed: Option<Proposed>,
}

/// What a shop that buys to sell again pays, without tax.
#[derive(Clone, Debug, PartialEq)]
pub struct Shops {
    pub keeps: Decimal,
    /// The maker said it; else it is the usual one.
    pub said: bool,
    /// What it must pay to cover the costs, the lowest pay, your rate, with the tag that follows.
    pub costs: Option<Must>,
    pub lowest: Option<Must>,
    pub rate: Option<Must>,
    /// What it pays where its tag is that of the maker.
    pub at_tag: Option<AtTag>,
}

/// What a shop must pay, and its tag then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Must {
    pub pays: Money,
    pub tag: Money,
}

/// What comes of one sold at the maker's own tag.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AtTag {
    pub you_get: Money,
    /// It doesn't cover what was spent.
    pub under_costs: bool,
    pub leaves: Option<Leaves>,
}

/// What a gallery's tag must be to pay the lowest pay and your rate, by these terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gallery {
    pub lowest: Option<Money>,
    pub rate: Option<Money>,
    pub at_tag: Option<AtTag>,
}

/// A like piece, and what its price would leave here.
#[derive(Clone, Debug, PartialEq)]
pub struct Like {
    pub seen: LikePiece,
    pub leaves: Option<Leaves>,
}

/// Three times what one piece took of materials, and what that would leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Materials {
    pub spent: Money,
    pub times: Decimal,
    pub price: Money,
    /// What a buyer hands over for that.
    pub charge: Money,
    pub leaves: Option<Leaves>,
    /// A share of the hauls is in it, with what was driven for them.
    pub with_hauls: bool,
}

/// The kind that bought wood is booked under, among costs.
const BOUGHT_WOOD: &str = "boards";

/// As the rule goes: common practice, no source.
pub const TIMES: Decimal = Decimal::from_parts(3, 0, 0, false, 0);

/// Other ways to the price of a job; a gallery by these terms. Marks are by the way of being paid that costs most.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
pub fn ways(shop: &Shop, id: Id, terms: GalleryTerms) -> Answer<WaysSheet> {
    let job = shop.job(id)?;
    let account = reckon(shop, &job)?;
    let of = (&job, &account);
    let pricing = &account.pricing;
    let tag = pricing.tag.or(pricing.proposed.map(|proposed| proposed.tag));
    let charge = tag.map(|tag| shop.tax_of(&job).charge(tag)).transpose()?;
    Ok(WaysSheet {
        job: id,
        name: job.name.clone(),
        currency: job.currency,
        pieces: job.pieces,
        as_asked: charge.map(|charge| at_least(shop, of, charge)).transpose()?.flatten(),
        at_least: pricing.at_least,
        refused: pricing.refused.clone(),
        marks: pricing.marks,
        is_set: pricing.tag.is_some(),
        is_on_top: shop.tax_of(&job).is_on_top(),
        own: pricing.proposed,
        bought: bought(shop, of)?,
        shop: shops(shop, of, tag)?,
        gallery: gallery(shop, of, (tag, terms))?,
        like: like(shop, of)?,
        materials: materials(shop, of)?,
        tag,
        charge,
    })
}

/// What so much for one leaves, paid in the way that costs most of it.
fn at_least(shop: &Shop, of: (&Job, &Account), sum: Money) -> Answer<Option<Leaves>> {
    leaves(shop, of, sum, one_paid(dearest(shop, sum)?))
}

/// The wood as boards: costs and minutes of the hauls fall away, what boards cost comes in.
fn bought(shop: &Shop, (job, account): (&Job, &Account)) -> Answer<Result<Bought, Lacks>> {
    if job.parts.is_empty() {
        return Ok(Err(Lacks::Parts));
    }
    let unpriced = job.parts.iter().find(|part| shop.workshop.board_price(job.currency, part.wood.as_ref()).is_none());
    let boards = match (unpriced, account.wood.replacement) {
        (None, Some(boards)) => boards,
        (part, _) => return Ok(Err(Lacks::BoardPrice(part.and_then(|part| part.wood.clone())))),
    };
    let haul = Key::read(HAUL).and_then(|haul| account.costs.by_kind.get(&haul).copied()).unwrap_or(Money::zero(job.currency));
    let haul = haul.plus(account.costs.still_wood)?;
    let all = Money::sum(job.currency, account.costs.by_kind.values().copied())?.plus(account.costs.still)?;
    let all = costs_as_left(job, &account.costs, all)?;
    let time = account.hours.haul.unwrap_or(Span::ZERO);
    let costs = Some(all.minus(haul)?.plus(boards)?);
    let work = Work { costs, time: account.pricing.work.time.map(|all| all.minus(time)), ..account.pricing.work };
    let marks = by_dearest(shop, job, (&work, account.pricing.hourly)).unwrap_or_default();
    let rate = marks.your_rate.filter(|_| !account.pricing.at_least);
    let proposed = rate.and_then(|mark| for_need(shop, job, mark.need).ok());
    let is_booked_too = account.costs.by_kind.iter().any(|(kind, sum)| kind.as_str() == BOUGHT_WOOD && !sum.is_zero());
    Ok(Ok(Bought { boards, haul, time, is_booked_too, marks, proposed }))
}

fn shops(shop: &Shop, of: (&Job, &Account), tag: Option<Money>) -> Answer<Shops> {
    let (job, account) = of;
    let said = shop.workshop.resale.get(&job.currency).copied();
    let resale = Resale { keeps: said.unwrap_or(USUAL_KEEPS), tax: shop.tax_of(job) };
    let points = shop.points(job.currency);
    // It pays an invoice without tax, by bank.
    let must = |mark: Option<Mark>| {
        let pays = proposed(mark?.need, Terms::PLAIN, points, job.currency).ok()?.charge;
        Some(Must { pays, tag: resale.tag(pays, points).ok()? })
    };
    let known = |mark: Option<Mark>| must(mark.filter(|_| !account.pricing.at_least));
    let marks = &account.pricing.marks;
    let at_tag = tag.map(|tag| at_tag(shop, of, resale.pays(tag)?)).transpose()?;
    let (costs, lowest, rate) = (must(marks.costs_covered), known(marks.lowest_pay), known(marks.your_rate));
    Ok(Shops { keeps: resale.keeps, said: said.is_some(), costs, lowest, rate, at_tag })
}

/// What so much for one leaves, and whether it returns what was spent.
fn at_tag(shop: &Shop, of: (&Job, &Account), you_get: Money) -> Answer<AtTag> {
    let costs = of.1.pricing.work.need(Decimal::ZERO, 1)?;
    let under_costs = costs.is_some_and(|costs| you_get.amount() < costs);
    Ok(AtTag { you_get, under_costs, leaves: left_of(shop, of, you_get, (1, Carried::Delivered))? })
}

/// None where the share and the tax leave nothing.
fn gallery(shop: &Shop, of: (&Job, &Account), (tag, terms): (Option<Money>, GalleryTerms)) -> Answer<Option<Gallery>> {
    let (job, account) = of;
    let (consignment, points) = (super::gallery::consignment(shop, job, terms), shop.points(job.currency));
    let marks = &account.pricing.marks;
    let must = |mark: Option<Mark>| {
        let need = mark.filter(|_| !account.pricing.at_least)?.need;
        consignment.tag_for(need, points, job.currency).ok()
    };
    let at_tag = match tag.map(|tag| of_one(shop, job, (tag, terms))) {
        Some(Err(_)) => return Ok(None),
        Some(Ok(handed)) => Some(at_tag(shop, of, handed.you_get)?),
        None => None,
    };
    Ok(Some(Gallery { lowest: must(marks.lowest_pay), rate: must(marks.your_rate), at_tag }))
}

/// Like pieces, the one seen last first; of those of one moment the one noted last.
fn like(shop: &Shop, of: (&Job, &Account)) -> Answer<Vec<Like>> {
    let mut seen = of.0.selling.like.iter().rev().listed();
    seen.sort_by_key(|seen| std::cmp::Reverse(seen.at.at));
    let one = |seen: &LikePiece| Ok(Like { leaves: at_least(shop, of, seen.sum)?, seen: seen.clone() });
    seen.into_iter().map(one).collect()
}

/// What was spent on no drive, no helper and no stall, but for those in the share of the hauls, times three. None before any of it was spent.
fn materials(shop: &Shop, of: (&Job, &Account)) -> Answer<Option<Materials>> {
    let (job, account) = of;
    let is_material = |kind: &Key| ![CostKind::Distance, CostKind::Helper, CostKind::Stall].map(CostKind::key).contains(&kind.as_str());
    let spent = account.costs.by_kind.iter().filter(|(kind, _)| is_material(kind)).map(|(_, sum)| *sum).listed();
    if account.costs.total.is_none() || spent.is_empty() {
        return Ok(None);
    }
    let all = Money::sum(job.currency, spent)?;
    // Shared last: a third of a cent is not tripled.
    let price = part(multiple(all, TIMES)?, 1, job.pieces)?;
    let charge = shop.tax_of(job).charge(price)?;
    let with_hauls = account.costs.by_kind.iter().any(|(kind, sum)| kind.as_str() == HAUL && !sum.is_zero());
    let leaves = at_least(shop, of, charge)?;
    Ok(Some(Materials { spent: part(all, 1, job.pieces)?, times: TIMES, price, charge, leaves, with_hauls }))
}
