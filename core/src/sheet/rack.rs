//! The rack as a job sees it: every pile it has wood of, and every pile it could take from.

use super::alike::Alike;
use super::shop::Shop;
use super::stock::ForJob;
use super::trip_end::on_its_way;
use crate::haul::{Haul, Pile};
use crate::ledger::fold;
use crate::quantity::{Count, Currency, Id, Units, Volume, Wall};
use crate::refusal::Answer;
use std::ops::Deref;

/// A pile as one job sees it: what it has of it, and what it may take.
#[derive(Clone, Debug, PartialEq)]
pub struct RackPile {
    pub haul: Id,
    pub pile: Id,
    pub alike: Alike,
    /// The haul's own units and currency, and when it began.
    pub units: Units,
    pub currency: Currency,
    pub began: Wall,
    /// The haul is not home yet.
    pub on_its_way: bool,
    /// It holds nothing but what plans left of other piles: no more of it can be had.
    pub rests: bool,
    pub on_rack: Count,
    /// Of these, what the job may take: free ones, and those set apart for it.
    pub free: Count,
    /// Set apart for it: it takes these first.
    pub for_it: Count,
    /// Set apart for other jobs.
    pub apart: Vec<ForJob>,
    pub in_job: Count,
    /// One piece of it, as measured rough; none without a size.
    pub piece: Option<Volume>,
    /// What the job has of it, as measured rough; none without a size.
    pub volume: Option<Volume>,
}

impl Deref for RackPile {
    type Target = Alike;
    fn deref(&self) -> &Alike {
        &self.alike
    }
}

/// Every pile with pieces on the rack or in the job, the newest haul first.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`].
pub fn rack(shop: &Shop, job: Id) -> Answer<Vec<RackPile>> {
    let mut found = vec![];
    for haul in fold::hauls(shop.book) {
        let on_its_way = on_its_way(shop.book, &haul, shop.now);
        for pile in haul.piles.iter().filter(|pile| 0 < pile.on_rack() || 0 < pile.in_job(job)) {
            let apart = for_others(shop, pile, job);
            found.push(RackPile { apart, on_its_way, ..rack_pile(&haul, pile, job)? });
        }
    }
    Ok(found)
}

fn for_others(shop: &Shop, pile: &Pile, job: Id) -> Vec<ForJob> {
    super::stock::for_jobs(shop, pile.apart().into_iter().filter(|(it, _)| *it != job))
}

/// One pile of a haul, as a job sees it.
pub(super) fn rack_pile(haul: &Haul, pile: &Pile, job: Id) -> Answer<RackPile> {
    let in_job = pile.in_job(job);
    Ok(RackPile {
        haul: haul.id,
        pile: pile.id,
        alike: pile.into(),
        units: haul.units,
        currency: haul.currency,
        began: haul.began,
        on_its_way: false,
        rests: 0 < pile.left && pile.left == pile.taken,
        on_rack: pile.on_rack(),
        free: pile.free_for(Some(job)),
        for_it: pile.reserved_for(job),
        apart: vec![],
        in_job,
        piece: pile.piece()?,
        volume: pile.piece()?.map(|piece| piece.times(in_job)).transpose()?.map(|volume| match pile.given_back.get(&job) {
            Some(back) => volume.less(*back),
            None => volume,
        }),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::{STANDS, tell};

    #[test]
    fn the_rack_of_the_stands_is_what_the_demo_left() {
        let story = tell(STANDS);
        let job = story.names.job("stands").expect("the job");
        let shop = Shop::of(&story.book, story.now.at);
        let piles = rack(&shop, job).expect("in range");
        let shown: Vec<(u32, u32)> = piles.iter().map(|pile| (pile.in_job, pile.on_rack)).collect();
        assert_eq!(shown, [(25, 22), (20, 9), (5, 12)]);
        let used = piles.iter().filter_map(|pile| pile.volume).try_fold(Volume::ZERO, Volume::plus).expect("in range");
        assert_eq!(crate::quantity::half_up(used.board_feet(), 2).to_string(), "17.94");
    }

    /// 22 strips lie there; 4 are set apart for the desk, and the stools have 6 set apart.
    #[test]
    fn what_is_set_apart_for_others_is_not_free() {
        let story = tell(&format!(
            "{STANDS}\njob stools \"Stools\" 1 spec\njob desk \"Desk\" 1 spec\nreserve 4 strips for desk\nreserve 6 strips for stools\n\
             take 19 strips for stools\ntake 5 strips for stools\n"
        ));
        assert_eq!(story.refused.len(), 1, "18 are free to the stools: {:?}", story.refused);
        let strips =
            |job: &str| rack(&Shop::of(&story.book, story.now.at), story.names.job(job).expect("the job")).expect("in range").remove(0);
        let stools = strips("stools");
        assert_eq!((stools.on_rack, stools.free, stools.for_it, stools.in_job), (17, 13, 1, 5), "its own are taken first");
        assert_eq!(stools.apart.iter().map(|it| (it.name.as_str(), it.n)).collect::<Vec<_>>(), [("Desk", 4)]);
        let desk = strips("desk");
        assert_eq!((desk.free, desk.for_it, desk.apart.len()), (16, 4, 1));
    }
}
