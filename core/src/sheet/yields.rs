//! What became of the wood of a job: volumes from bin to piece, and the yields between them. A yield names its two volumes.

use super::carried::JobShare;
use super::make::planned::planned;
use super::shop::Shop;
use crate::haul::worth::Yields;
use crate::ledger::fold::Job;
use crate::money::replacement::{BOUGHT_YIELD, BoardPrice, replaced};
use crate::quantity::{Count, Decimal, Mass, Money, Volume};
use crate::refusal::{Answer, Refusal};
use crate::wood::woods::Woods;

/// Good offcuts to finished pieces, before the maker has history. Our judgement, no source.
pub const OFFCUT_YIELD: Decimal = Yields::USUAL.offcut;

/// Volumes and yields; none where a size is missing or no part is planned.
#[derive(Clone, Debug, PartialEq)]
pub struct Wood {
    /// Of one piece by its parts, and of all: by the plans its wood is cut by, else by its parts.
    pub finished_piece: Option<Volume>,
    pub finished: Option<Volume>,
    /// What the job took of its hauls, as measured rough.
    pub used: Option<Volume>,
    /// The same with what its plans lack of it.
    pub needed: Option<Volume>,
    /// All that was taken at the yard of those hauls.
    pub gross: Option<Volume>,
    /// Good wood of those hauls that this job did not use.
    pub leftovers: Option<Volume>,
    pub finished_of_used: Option<Decimal>,
    pub finished_of_gross: Option<Decimal>,
    /// Leftovers are stock, not loss. What plans lack of them is none of them.
    pub gross_less_leftovers: Option<Volume>,
    pub finished_of_gross_less_leftovers: Option<Decimal>,
    /// What the quote assumed of used wood.
    pub assumed: Decimal,
    /// Equal bought boards for all pieces: for asking prices, never for a tax return. None while a price is missing.
    pub replacement: Option<Money>,
    /// One piece by its parts, at 12 %.
    pub weight: Option<Mass>,
    pub weight_guessed: bool,
    /// Pieces the job has beyond those its plans use, and pieces of these that it has no more: the figures are the plans' all the same.
    pub beside_plans: [Count; 2],
}

/// The wood of a job.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`].
pub fn wood(shop: &Shop, job: &Job, shares: &[JobShare]) -> Answer<Wood> {
    let finished_piece = job.finished_piece()?;
    // What plans make of all its wood is what the parts are, and a top in rows with them.
    let pieces = shares.iter().fold(0, |sum: Count, share| sum.saturating_add(share.pieces));
    let by_parts = finished_piece.map(|piece| piece.times(job.pieces)).transpose()?;
    // Of wood beside that of the plans more is made than they say, as far as parts are planned.
    let is_less = |finished: Volume| by_parts.is_some_and(|parts| finished < parts);
    let of_plans = planned(shop, job, pieces).filter(|it| (it.more, it.fewer) == (0, 0) || !is_less(it.finished));
    let finished = of_plans.map(|it| it.finished).or(by_parts);
    let used = sum(shares, |share| share.used)?;
    let gross = sum(shares, |share| share.gross)?;
    let leftovers = sum(shares, |share| share.good.zip(share.used).map(|(good, used)| good.less(used)))?;
    // A plan is a share of all the wood it needs, with what was put back of it.
    let lacks = of_plans.map_or(Some(Volume::ZERO), |it| it.lacks);
    let needed = used.zip(lacks).map(|(used, lacks)| used.plus(lacks)).transpose()?;
    let beside = leftovers.zip(lacks).map(|(left, lacks)| left.less(lacks));
    let gross_less_leftovers = gross.zip(beside).map(|(gross, left)| gross.less(left));
    // More than the wood there is was never made of it: it is planned, and no share.
    let part = |of: Option<Volume>| finished.zip(of).filter(|(finished, of)| finished <= of).and_then(|(it, of)| it.share_of(of).ok());
    let (weight, weight_guessed) = weight(job, &shop.workshop.wood.woods)?;
    Ok(Wood {
        finished_piece,
        finished,
        used,
        gross,
        leftovers,
        needed,
        finished_of_used: part(needed),
        finished_of_gross: part(gross),
        gross_less_leftovers,
        finished_of_gross_less_leftovers: part(gross_less_leftovers),
        assumed: assumed(shares)?,
        replacement: replacement(shop, job)?,
        weight,
        weight_guessed,
        beside_plans: of_plans.map_or([0, 0], |it| [it.more, it.fewer]),
    })
}

/// The yield of used wood the quote went by: that of offcuts, that of bought boards, or between them by the volumes used of each.
fn assumed(shares: &[JobShare]) -> Answer<Decimal> {
    let of = |bought: bool| shares.iter().filter(move |share| share.bought == bought).filter_map(|share| share.used);
    let all = |bought: bool| of(bought).try_fold(Volume::ZERO, Volume::plus);
    let (offcuts, boards) = (all(false)?, all(true)?);
    let Ok(part) = boards.share_of(offcuts.plus(boards)?) else { return Ok(OFFCUT_YIELD) };
    let more = BOUGHT_YIELD.checked_sub(OFFCUT_YIELD).and_then(|more| more.checked_mul(part));
    more.and_then(|more| OFFCUT_YIELD.checked_add(more)).ok_or(Refusal::OutOfRange)
}

/// What equal boards would cost; parts of one price are booked as one line.
fn replacement(shop: &Shop, job: &Job) -> Answer<Option<Money>> {
    let mut lines: Vec<(BoardPrice, Volume)> = vec![];
    for part in &job.parts {
        let Some(price) = shop.workshop.board_price(job.currency, part.wood.as_ref()) else { return Ok(None) };
        let volume = part.volume()?.times(job.pieces)?;
        match lines.iter_mut().find(|(known, _)| *known == price) {
            Some((_, sum)) => *sum = sum.plus(volume)?,
            None => lines.push((price, volume)),
        }
    }
    let booked = lines.iter().map(|(price, volume)| replaced(*volume, BOUGHT_YIELD, *price)).collect::<Answer<Vec<_>>>()?;
    Ok(if booked.is_empty() { None } else { Some(Money::sum(job.currency, booked)?) })
}

/// None where one is none, or there are none.
fn sum(shares: &[JobShare], of: impl Fn(&JobShare) -> Option<Volume>) -> Answer<Option<Volume>> {
    let mut sum = None;
    for share in shares {
        let Some(volume) = of(share) else { return Ok(None) };
        sum = Some(sum.unwrap_or(Volume::ZERO).plus(volume)?);
    }
    Ok(sum)
}

/// One piece by its parts; a part whose wood is not named weighs as the heaviest plausible, and that is said.
pub(super) fn weight(job: &Job, woods: &Woods) -> Answer<(Option<Mass>, bool)> {
    let (mut sum, mut guessed) = (Mass::default(), false);
    for part in &job.parts {
        let wood = woods.find_or_guess(part.wood.as_ref().map(|key| key.as_str()));
        guessed |= wood.is_a_guess();
        sum = sum.plus(wood.density.mass(part.volume()?));
    }
    Ok(((!job.parts.is_empty()).then_some(sum), guessed))
}

#[cfg(test)]
mod tests {
    use crate::quantity::Decimal;
    use crate::sheet::Shop;
    use crate::sheet::account::account;
    use crate::story::tell;

    /// Four parts are planned: of eight strips they are a share, of two they are none, since two hold no more than two.
    #[test]
    fn parts_beyond_the_wood_are_no_share_of_it() {
        for (taken, is_share) in [(8, true), (2, false)] {
            let story = tell(&format!(
                "2026-03-02 09:00 -05:00 workshop USD metric\nleave for yard\npile strips oak-european 30 x 60 x 500 mm\n\
                 count 12 strips\njob tray \"Tray\" 1 spec\npart \"rail\" 4 of 28 x 58 x 490 mm oak-european for tray\n\
                 take {taken} strips for tray\n"
            ));
            assert_eq!(story.refused, []);
            let shop = Shop::of(&story.book, story.now.at);
            let wood = account(&shop, story.names.job("tray").unwrap()).unwrap().wood;
            let share = wood.finished_of_used;
            assert_eq!((share.is_some(), share.is_some_and(|share| Decimal::ONE < share)), (is_share, false), "{taken}: {share:?}");
        }
    }
}
