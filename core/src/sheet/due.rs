//! What buyers owe, and what is handed back to them: no sum that no coin can pay is asked of anybody.

use super::shop::Shop;
use crate::ledger::fold::{Job, Over};
use crate::ledger::kind::sale::Paid;
use crate::quantity::{Listed, Money, round_to_cash};
use crate::refusal::Answer;

/// What came in beyond what is owed and is handed back: where all that came in for the same was notes, nothing below half of the smallest coin
/// (ours), which nobody can hand over.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CoinOutOfRange`].
pub fn to_hand_back(shop: &Shop, job: &Job) -> Answer<Vec<Over>> {
    Ok(over(shop, job)?.into_iter().filter(|(is_less, _)| !is_less).map(|(_, over)| over).listed())
}

/// What buyers owe of a job less what is handed back: what is too little to be handed back makes up for nothing that another owes.
///
/// # Errors
/// As [`to_hand_back`].
pub fn due(shop: &Shop, job: &Job) -> Answer<Money> {
    let aside = over(shop, job)?.into_iter().filter(|(is_less, _)| *is_less).map(|(_, over)| over.sum).listed();
    job.due()?.plus(Money::sum(job.currency, aside)?)
}

/// All that came in beyond what is owed, and whether it is too little to be handed back.
fn over(shop: &Shop, job: &Job) -> Answer<Vec<(bool, Over)>> {
    let coin_of = |over: &Over| shop.till(job.currency).coin(Some(Paid::Notes).filter(|_| job.selling.came_in_notes(over)));
    let is_less = |over: &Over| coin_of(over)?.map_or(Ok(false), |coin| Ok(round_to_cash(over.sum, coin)?.is_zero()));
    job.selling.over(job.currency)?.into_iter().map(|over| Ok((is_less(&over)?, over))).collect()
}
