//! Looking back: what came of waiting, in one sentence.

use super::known::{Worth, rests};
use super::seen::{each, sold_at, untaken};
use crate::ledger::fold::{Job, Sale};
use crate::ledger::kind::sale::{Carried, Paid};
use crate::quantity::{Count, Moment, Money, Span, Wall};
use crate::refusal::Answer;
use crate::sheet::Shop;

/// What came of it. Each sum is for one piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Back {
    /// An offer was let go, and the next was sold for this, more than an hour later.
    Waited { offered: Money, sold: Money },
    /// A sum was taken; so much waiting was worth then.
    Took { sum: Money, worth: Money },
}

/// Who sold within so long of an offer did not wait. Ours [J].
const NO_WAIT: Span = Span::minutes(60);

/// What came of waiting: of the last offer that was let go, what the next was sold for; else, where the last buyer
/// haggled, what waiting was worth then.
///
/// # Errors
/// [`crate::refusal::Refusal::FeesEatThePrice`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn looked_back(shop: &Shop, job: &Job) -> Answer<Option<Back>> {
    let last = job.selling.standing().max_by_key(|sale| sale.at.at);
    let Some(sale) = last.filter(|sale| 0 < sale.n && sale.agreed.is_none()) else { return Ok(None) };
    let sold = sold_at(sale)?;
    let let_go = untaken(job).into_iter().filter(|offer| 0 < offer.n);
    let waited = let_go.filter_map(|offer| Some((offer, next_sold(job, offer.at)?))).max_by_key(|(offer, _)| offer.at);
    if let Some((offer, next)) = waited {
        return Ok(Some(Back::Waited { offered: each(offer.sum, offer.n)?, sold: sold_at(next)? }));
    }
    let charge = job.tag.map(|tag| shop.tax_of(job).charge(tag)).transpose()?;
    let haggled = charge.is_some_and(|charge| sold.amount() < charge.amount());
    let worth = if haggled { worth_then(shop, job, sale)? } else { None };
    Ok(worth.map(|worth| Back::Took { sum: sold, worth }))
}

/// The next sale after an offer that was let go; none where nobody waited for it, or it was agreed before.
fn next_sold(job: &Job, offered: Moment) -> Option<&Sale> {
    let next = job.selling.standing().filter(|sale| offered < sale.at.at).min_by_key(|sale| sale.at.at)?;
    Some(next).filter(|sale| 0 < sale.n && sale.agreed.is_none() && NO_WAIT < offered.until(sale.at.at))
}

/// Not under for one of so many as were sold together, just before a sale, by how it was paid; none where nothing was guessed before it.
fn worth_then(shop: &Shop, job: &Job, sale: &Sale) -> Answer<Option<Money>> {
    let paid = job.selling.payments.iter().find(|payment| payment.sale == Some(sale.id)).map_or(Paid::Card, |payment| payment.paid);
    let Some(mut then) = rests(shop, job)?.filter(|rests| rests.told.at < sale.at.at) else { return Ok(None) };
    then.came.retain(|came| came.at < sale.at.at);
    // What the lowest pay needed then is not told by what it needs now.
    then.lowest = None;
    then.pieces = free_before(job, sale.at.at);
    then.now = Wall::new(sale.at.at, then.told.offset).day();
    if then.pieces == 0 {
        return Ok(None);
    }
    let take = then.carried(shop.terms_of(job, paid).take()?, Carried::Delivered)?;
    // An answer that the guesses don't give is none to look back on.
    let of = |worth: Worth| each(then.under(&worth, (sale.n, worth.ask.times(sale.n)?), take)?, sale.n);
    Ok(then.worth().and_then(of).ok())
}

/// Pieces that were free just before a moment.
fn free_before(job: &Job, at: Moment) -> Count {
    let selling = &job.selling;
    let sum = |counts: &mut dyn Iterator<Item = Count>| counts.fold(0, Count::saturating_add);
    let sold = sum(&mut selling.standing().filter(|sale| sale.at.at < at).map(|sale| sale.n));
    let lent = sum(&mut selling.consigned.iter().filter(|there| there.at.at < at).map(|there| there.n));
    let back = sum(&mut selling.consignments_returned.iter().filter(|there| there.at.at < at).map(|there| there.n));
    let gone = sum(&mut selling.not_for_sale.iter().filter(|gone| gone.at.at < at).map(|gone| gone.n));
    let promised = sum(&mut selling.open().filter(|open| open.at < at).map(|open| open.n.saturating_sub(open.sold)));
    job.pieces.saturating_add(back).saturating_sub(sold).saturating_sub(lent).saturating_sub(gone).saturating_sub(promised)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;
    use crate::story::tell;

    #[test]
    fn what_was_free_is_neither_sold_lent_promised_nor_gone() {
        #[track_caller]
        fn check(lines: &str, free: Count) {
            let story = tell(&format!(
                "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 6 spec\n{lines}\n2026-03-05 09:00 tag 90 stools"
            ));
            assert_eq!(story.refused, [], "{lines}");
            let job = fold::job(&story.book, story.names.job("stools").unwrap()).unwrap();
            assert_eq!(free_before(&job, story.now.at), free, "{lines}");
        }
        check("", 6);
        check("sell 2 stools for 160 notes", 4);
        check("consign 2 stools tag 145 share 0.4", 4);
        check("agree 80 for 2 stools fetched", 4);
        check("not-for-sale 1 stools broken", 5);
        check("sell 2 stools for 160 notes\nnot-for-sale 1 stools yours\nagree 80 for 2 stools fetched", 1);
    }
}
