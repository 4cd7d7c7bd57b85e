//! After: what a good piece of a haul cost, in money and in minutes, and whether the haul beat the timber yard.

use super::fetched::saved;
use super::shop::Shop;
use super::trip_end::as_proposed;
use super::worth::boards;
use crate::bench::{On, Run};
use crate::haul::after::{Brought, Good, Yard};
use crate::haul::worth::{Boards, Milling, Worth, Yields};
use crate::haul::{Haul, Pile, Trip};
use crate::ledger::kind::bench::Stage;
use crate::quantity::{Count, Decimal, Listed, Money, Span, Units, Volume};
use crate::refusal::Answer;

/// What can't be known before something is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lacking {
    /// How far it was.
    Distance,
    /// What a mile or km costs.
    Mileage,
    /// Minutes at the wheel.
    Wheel,
    /// What was clocked on it may be a forgotten stop.
    InQuestion,
    /// Minutes of sorting.
    Sorting,
    /// The size of a pile with good pieces.
    Size,
    /// What an hour should pay.
    Pay,
    /// What equal boards cost.
    BoardPrice,
}

/// What one piece or one measure cost; each none while it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cost {
    /// Unrounded.
    pub money: Option<Decimal>,
    pub time: Option<Span>,
}

/// A haul that is sorted, at least in part.
#[derive(Clone, Debug, PartialEq)]
pub struct AfterSheet {
    /// Good pieces; those not sorted yet count as good.
    pub good: Count,
    pub unsorted: Count,
    pub piece: Cost,
    /// Of a board foot or a litre.
    pub measure: Cost,
    pub units: Units,
    /// Against the timber yard; none while something lacks.
    pub yard: Option<Worth>,
    pub lacking: Vec<Lacking>,
    /// No trip was begun: see [`super::worth::WorthSheet`].
    pub without_drive: bool,
}

/// What the good pieces of a haul cost, once something of it was sorted; bought boards are not asked.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn after(shop: &Shop, haul: &Haul) -> Answer<Option<AfterSheet>> {
    if haul.bought || haul.seen().sorted() == 0 {
        return Ok(None);
    }
    let haul = &Haul { trips: as_proposed(shop.book, haul, shop.now), ..haul.clone() };
    let lacking = lacking(shop, haul)?;
    let has = |asked: &[Lacking]| !asked.iter().any(|one| lacking.contains(one));
    let spent = Some(super::haul::spent(shop, haul)?).filter(|_| has(&[Lacking::Distance, Lacking::Mileage]));
    let time = Some(super::haul::time(shop, haul)).filter(|_| has(&[Lacking::Wheel, Lacking::Sorting]));
    let brought = Brought {
        good: good(shop, haul)?,
        currency: haul.currency,
        spent,
        time,
        pay: shop.workshop.pay(haul.currency).unwrap_or_default(),
    };
    let yard = Yard { yields: Yields::USUAL, ahead: Milling::AHEAD, saved: saved(shop, haul)? };
    Ok(Some(AfterSheet {
        good: brought.pieces(),
        unsorted: haul.piles.iter().fold(0, |sum: Count, pile| sum.saturating_add(pile.unsorted())),
        piece: cost(&brought, Brought::per_piece)?,
        measure: cost(&brought, |brought| brought.per_measure(one(haul.units)))?,
        units: haul.units,
        yard: if lacking.is_empty() && 0 < brought.pieces() { brought.against(&yard)? } else { None },
        lacking,
        without_drive: haul.trips.is_empty(),
    }))
}

/// A board foot or a litre.
fn one(units: Units) -> Volume {
    if units == Units::Inch { Volume::BOARD_FOOT } else { Volume::LITRE }
}

/// Money and minutes each by itself: where only one of them is known, that one is said.
fn cost(brought: &Brought, each: impl Fn(&Brought) -> Answer<Option<crate::haul::after::Each>>) -> Answer<Cost> {
    let whole = Brought {
        spent: brought.spent.or(Some(Money::zero(brought.currency))),
        time: brought.time.or(Some(Span::ZERO)),
        ..brought.clone()
    };
    let each = each(&whole)?;
    Ok(Cost {
        money: each.filter(|_| brought.spent.is_some()).map(|each| each.money),
        time: each.filter(|_| brought.time.is_some()).map(|each| each.time),
    })
}

fn good(shop: &Shop, haul: &Haul) -> Answer<Vec<Good>> {
    let of = |pile: &Pile| {
        Ok(Good {
            pieces: pile.good().saturating_sub(pile.left),
            piece: pile.piece()?,
            boards: boards(&shop.workshop, haul, pile.wood.as_ref()),
        })
    };
    haul.piles.iter().map(of).collect()
}

fn lacking(shop: &Shop, haul: &Haul) -> Answer<Vec<Lacking>> {
    let good = good(shop, haul)?;
    let good = || good.iter().filter(|good| 0 < good.pieces);
    // What may be a forgotten stop was clocked: Bench asks about it.
    let clocked = |run: &Run| run.work.stage == Stage::Sort;
    let asked = [
        (Lacking::Distance, haul.trips.iter().any(|trip| trip.distance.is_none())),
        (Lacking::Mileage, haul.trips.iter().any(Trip::is_unpriced)),
        (Lacking::Wheel, haul.trips.iter().any(|trip| trip.whole_wheel() <= Span::ZERO)),
        (Lacking::InQuestion, Span::ZERO < shop.bench.doubtful_of_haul(haul.id, shop.now)),
        (Lacking::Sorting, !shop.bench.on(On::Haul(haul.id)).any(clocked)),
        (Lacking::Size, good().any(|good| good.piece.is_none())),
        (Lacking::Pay, shop.workshop.pay(haul.currency).is_none()),
        (Lacking::BoardPrice, good().any(|good| good.boards == Boards::PriceUnknown)),
    ];
    Ok(asked.into_iter().filter(|(_, lacks)| *lacks).map(|(lacking, _)| lacking).listed())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;
    use crate::quantity::half_up;
    use crate::story::{STANDS, tell};

    /// The story up to the evening of sorting, with some lines more, and without those that hold a text.
    fn sheet(more: &str, without: &str) -> AfterSheet {
        let before = STANDS.split("# --- Thursday").next().unwrap();
        let kept: Vec<&str> = before.lines().filter(|line| without.is_empty() || !line.contains(without)).collect();
        let story = tell(&format!("{}\n{more}", kept.join("\n")));
        let haul = fold::haul(&story.book, story.names.haul("stairworks").unwrap()).unwrap();
        after(&Shop::of(&story.book, story.now.at), &haul).unwrap().unwrap()
    }

    const BOARDS: &str = "boards 4.75 a board-foot";

    #[track_caller]
    fn lacks(more: &str, without: &str, lacking: &[Lacking]) {
        assert_eq!(sheet(more, without).lacking, lacking, "{more}, without {without}");
    }

    /// 28.08 and 136 minutes over 93 good pieces and 31.66 board feet; boards at 4.75 with two minutes a foot of milling ahead:
    /// the same figures as the pin of `published_worth`.
    #[test]
    fn the_demo_haul_beats_the_timber_yard() {
        let sheet = sheet(BOARDS, "boards ");
        assert_eq!((sheet.good, sheet.unsorted, sheet.lacking.as_slice()), (93, 0, [].as_slice()));
        let shown = |cost: Cost| (half_up(cost.money.unwrap(), 2).to_string(), cost.time.unwrap().as_ms() / 1000);
        assert_eq!((shown(sheet.piece), shown(sheet.measure)), (("0.3".into(), 87), ("0.89".into(), 257)));
        assert_eq!(sheet.yard.unwrap().gain.to_string(), "15.44 USD");
    }

    #[test]
    fn what_lacks_is_named_and_the_rest_is_said() {
        lacks("", "boards ", &[Lacking::BoardPrice]);
        lacks(BOARDS, "rate pay", &[Lacking::Pay]);
        lacks(BOARDS, "trip 23 miles", &[Lacking::Distance]);
        let unclocked = sheet(BOARDS, "start \"sort\"");
        assert_eq!(unclocked.lacking, [Lacking::Sorting]);
        let night = format!("{BOARDS}\n2026-03-05 17:00 start \"sort\" fetch on stairworks stage sort as night\n2026-03-06 08:00 stop\n");
        lacks(&night, "boards ", &[Lacking::InQuestion]);
        lacks(&format!("{night}stopped at 2026-03-05 17:20 run night"), "boards ", &[]);
        assert_eq!((unclocked.piece.money.is_some(), unclocked.piece.time, unclocked.yard), (true, None, None));
    }

    #[test]
    fn nothing_sorted_is_not_asked() {
        let story = tell("2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile strips\ncount 5 strips");
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        assert_eq!(after(&Shop::of(&story.book, story.now.at), &haul), Ok(None));
    }
}
