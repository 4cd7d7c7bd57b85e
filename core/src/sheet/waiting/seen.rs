//! What those did who asked for a piece since the maker guessed, from the book's facts.

use crate::ledger::fold::{Agreement, AgreementState, Job, Offer, Sale};
use crate::quantity::{Count, Decimal, Id, Listed, Moment, Money, Span, Wall};
use crate::refusal::{Answer, Refusal};
use crate::sale::learning::{Heard, Seen};

/// One who asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Came {
    pub at: Moment,
    pub did: Did,
}

/// What one did who asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Did {
    /// Said they would come, and did not.
    NeverCame,
    /// Agreed, and it came to nothing, or bought and brought back: that says they ask, and nothing of a price.
    Asked,
    /// Each sum is for one piece.
    Heard(Heard),
}

/// An offer and a sale at the same sum, or at what was said back, no further apart are of the same buyer (ours).
const ONE_BUYER: Span = Span::minutes(24 * 60);

/// All who asked after `since`, the earliest first; who buys several is one buyer, at the price of one of them.
/// Offers were made where that was said back, where that was asked then, or where nobody wrote it down at `asked`.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`], [`Refusal::NothingAsked`] for a sale of no piece.
pub fn came(job: &Job, asked: Money, since: Moment) -> Answer<Vec<Came>> {
    let selling = &job.selling;
    let mut all: Vec<Came> = vec![];
    let mut add = |at: Moment, did: Did| all.push(Came { at, did });
    for asked in &selling.asked {
        let gone = Did::Heard(Heard::Refused { price: asked.price });
        add(asked.at, if asked.no_show { Did::NeverCame } else { gone });
    }
    for offer in untaken(job) {
        let price = offer.said.or(offer.asked).map_or(Ok(asked), |said| each(said, offer.n))?;
        add(offer.at, Did::Heard(Heard::Offered { sum: each(offer.sum, offer.n)?, price }));
    }
    let is_back = |sale: &Sale| sale.reversed.is_some_and(|reversed| selling.again(reversed.act).is_none());
    for sale in selling.sales.iter().filter(|sale| sale.agreed.is_none()) {
        let bought = Did::Heard(Heard::Bought { price: sold_at(sale)? });
        add(sale.at.at, if is_back(sale) { Did::Asked } else { bought });
    }
    let back = came_back(job);
    // What is made good is agreed with who had bought it.
    let is_new = |agreement: &&Agreement| !back.contains(&agreement.id) && selling.again(agreement.act).is_none();
    for agreement in selling.agreements.iter().filter(is_new) {
        if let Some(did) = agreed(agreement)? {
            add(agreement.at, did);
        }
    }
    all.retain(|came| since < came.at);
    crate::quantity::order_by_key(&mut all, |came| came.at);
    Ok(all)
}

/// Agreements that came to nothing, and then to a sale after all: that is one buyer, who is counted by the sale. Each sale is of one of them, and
/// none where both buyers are known and are others.
fn came_back(job: &Job) -> Vec<Id> {
    let mut sales = job.selling.sales.iter().filter(|sale| sale.agreed.is_none()).listed();
    let mut back = vec![];
    for agreement in &job.selling.agreements {
        let AgreementState::Cancelled { at: Wall { at, .. }, .. } = agreement.state else { continue };
        let is_other = |sale: &Sale| agreement.buyer.zip(sale.buyer).is_some_and(|(one, other)| one != other);
        let is_alike = |sale: &Sale| (sale.whole.n, sale.whole.sum) == (agreement.n, agreement.sum) && is_one_buyer(at, sale.at.at);
        if let Some(nth) = sales.iter().position(|sale| is_alike(sale) && !is_other(sale)) {
            sales.remove(nth);
            back.push(agreement.id);
        }
    }
    back
}

/// A change of order is no new buyer.
fn agreed(agreement: &Agreement) -> Answer<Option<Did>> {
    Ok(match agreement.state {
        _ if agreement.replaces.is_some() => None,
        AgreementState::Cancelled { no_show: true, .. } => Some(Did::NeverCame),
        AgreementState::Cancelled { .. } => Some(Did::Asked),
        AgreementState::Open | AgreementState::Done | AgreementState::Replaced => {
            Some(Did::Heard(Heard::Bought { price: each(agreement.sum, agreement.n)? }))
        }
    })
}

/// Offers that came to no sale and no agreement; whoever brought the piece back had bought it all the same.
pub fn untaken(job: &Job) -> Vec<&Offer> {
    // What was sold under an agreement is that one's.
    let sold = job.selling.sales.iter().filter(|sale| sale.agreed.is_none()).map(|sale| (sale.at.at, sale.whole.n, sale.whole.sum));
    let agreed = job.selling.agreements.iter().filter(|agreement| agreement.replaces.is_none());
    let mut taken = sold.chain(agreed.map(|agreement| (agreement.at, agreement.n, agreement.sum))).listed();
    let mut is_open = |offer: &&Offer| {
        let by_them =
            |(at, n, sum): &(Moment, Count, Money)| (*n, *sum) == (offer.n, offer.said.unwrap_or(offer.sum)) && is_one_buyer(offer.at, *at);
        taken.iter().position(by_them).map(|nth| taken.remove(nth)).is_none()
    };
    let mut open = vec![];
    for offer in &job.selling.offers {
        if is_open(&offer) {
            open.push(offer);
        }
    }
    open
}

fn is_one_buyer(first: Moment, then: Moment) -> bool {
    let apart = first.until(then);
    Span::ZERO <= apart && apart <= ONE_BUYER
}

/// What is handed over for one of `n`.
pub fn each(sum: Money, n: Count) -> Answer<Money> {
    Money::book(sum.amount().checked_div(Decimal::from(n)).ok_or(Refusal::NothingAsked)?, sum.currency())
}

/// What one of a sale was sold for: what was never paid of it, or given back later, they had said yes to.
///
/// # Errors
/// [`Refusal::NothingAsked`] for a sale of no piece.
pub fn sold_at(sale: &Sale) -> Answer<Money> {
    each(sale.whole.sum, sale.whole.n)
}

/// What was seen in so many days up to a moment; that moment is in.
pub fn seen(all: &[Came], days: i32, until: Moment) -> Seen {
    let all = all.iter().filter(|came| came.at <= until).listed();
    let never = all.iter().filter(|came| came.did == Did::NeverCame).count();
    let heard = all.iter().filter_map(|came| if let Did::Heard(heard) = came.did { Some(heard) } else { None });
    Seen {
        weeks: Decimal::from(days.max(0)).checked_div(Decimal::from(7)).unwrap_or_default(),
        asked: Count::try_from(all.len()).unwrap_or(Count::MAX),
        never_came: Count::try_from(never).unwrap_or(Count::MAX),
        heard: heard.listed(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Currency, Moment};
    use crate::story::tell;

    fn usd(whole: i64) -> Money {
        Money::book(Decimal::from(whole), Currency::USD).unwrap()
    }

    /// What those did who asked for a stool at 100, by these lines.
    #[track_caller]
    fn check(lines: &str, wanted: &[Did]) {
        let begun = "2026-06-01 09:00 -04:00 workshop USD inch\njob stools \"Stools\" 4 spec\ntag 100 stools\n";
        let story = tell(&format!("{begun}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let job = crate::ledger::fold::job(&story.book, story.names.job("stools").unwrap()).unwrap();
        let all = came(&job, usd(100), Moment::FIRST).unwrap();
        assert_eq!(all.into_iter().map(|came| came.did).listed(), wanted, "{lines}");
    }

    /// Who heard a sum and left would not hand over that; who took it bought at it, and is no other one who offered.
    #[test]
    fn what_was_said_back_is_what_they_left_or_took() {
        let offered = |sum, price| Did::Heard(Heard::Offered { sum: usd(sum), price: usd(price) });
        let bought = |price| Did::Heard(Heard::Bought { price: usd(price) });
        check("offer 60 for 1 stools", &[offered(60, 100)]);
        check("offer 60 for 1 stools said 80", &[offered(60, 80)]);
        check("offer 60 for 1 stools asked 90", &[offered(60, 90)]);
        check("offer 120 for 2 stools said 160 asked 180", &[offered(60, 80)]);
        check("offer 120 for 2 stools notes said 160", &[offered(60, 80)]);
        check("sell 1 stools for 80 notes offered 60", &[bought(80)]);
        check("offer 60 for 1 stools said 80\nsell 1 stools for 60 notes", &[offered(60, 80), bought(60)]);
    }

    /// What is made good for who bought it is no new one who asks, and what they bought at stays known.
    #[test]
    fn what_is_made_good_is_of_the_same_buyer() {
        let sold = "sell 1 stools for 80 notes as sold\n";
        check(&format!("{sold}bring-back 1 of sale sold on stools"), &[Did::Asked]);
        check(&format!("{sold}bring-back 1 of sale sold on stools kept 80 again"), &[Did::Heard(Heard::Bought { price: usd(80) })]);
    }

    /// They said yes at 80, whatever of it they paid, or had back.
    #[test]
    fn who_never_paid_bought_at_the_price_all_the_same() {
        let bought = |price| Did::Heard(Heard::Bought { price: usd(price) });
        let sold = "sell 2 stools for 160 as sold\n";
        for less in ["let-keep 160 of sale sold on stools", "pay 100 for stools bank sale sold\nlet-keep 60 of sale sold on stools"] {
            check(&format!("{sold}{less}"), &[bought(80)]);
        }
        check("sell 1 stools for 80 notes as sold\nlet-keep 20 of sale sold on stools", &[bought(80)]);
    }

    /// Who offered and agreed is one buyer, and who comes back for what was agreed no new one; an agreement that came to nothing is no sale.
    #[test]
    fn who_agreed_is_one_who_asked() {
        let bought = |price| Did::Heard(Heard::Bought { price: usd(price) });
        let agreed = "offer 60 for 1 stools said 80\nagree 80 for 1 stools fetched as deal\n";
        check(agreed, &[bought(80)]);
        check(&format!("{agreed}sell 1 stools for 80 notes agreed deal"), &[bought(80)]);
        check(&format!("{agreed}cancel deal on stools no-show"), &[Did::NeverCame]);
        check(&format!("{agreed}cancel deal on stools"), &[Did::Asked]);
        check(&format!("{agreed}cancel deal on stools no-show\nsell 1 stools for 80 notes"), &[bought(80)]);
        check(&format!("{agreed}cancel deal on stools no-show\nsell 2 stools for 160 notes"), &[bought(80), Did::NeverCame]);
        // Of two who did not come one may have come back, and who left while another agreed at what was said left.
        let two = "agree 80 for 1 stools fetched as one\nagree 80 for 1 stools fetched as two\n09:10 cancel one on stools no-show\n\
            09:11 cancel two on stools no-show\n09:20 sell 1 stools for 80 notes\n";
        check(two, &[Did::NeverCame, bought(80)]);
        let left = "offer 60 for 1 stools said 80\n09:10 offer 60 for 1 stools said 80\n09:30 agree 80 for 1 stools fetched as deal\n\
            17:00 sell 1 stools for 80 notes agreed deal\n";
        check(left, &[Did::Heard(Heard::Offered { sum: usd(60), price: usd(80) }), bought(80)]);
    }
}
