//! Does this trip pay: what the haul in hand is worth with what is counted so far, and what it would take to even it.

use super::past::Past;
use super::shop::Shop;
use super::trip_end::as_proposed;
use crate::bench::Stage;
use crate::haul::rejects::Seen;
use crate::haul::worth::{Boards, Counted, Counting, Evens, Fetching, Milling, Terms, Worth, YardTrip, Yields, good_share};
use crate::haul::{Haul, Pile, Trip};
use crate::ledger::fold::Workshop;
use crate::ledger::kind::haul::Per;
use crate::money::cost::{DistanceRate, distance};
use crate::quantity::{Decimal, Id, Key, Length, Money, Span, half_up};
use crate::refusal::Answer;
use crate::wood::species::is_known;

/// What has to be said before it can be reckoned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// What you want for an hour.
    Pay,
    /// How far it is, where a trip was begun.
    Distance,
    /// What a mile or km costs.
    Mileage,
    /// What equal boards cost, of any wood of the haul.
    BoardPrice,
    /// Its size or its wood, of a pile where no pile that was counted has both: nothing is known of what any replaces.
    Pile(Id),
}

/// The reckoning of the haul in hand.
#[derive(Clone, Debug, PartialEq)]
pub struct WorthSheet {
    /// None while something is missing, and before the first piece.
    pub worth: Option<Worth>,
    pub missing: Vec<Missing>,
    /// The pile that evens the trip, and with how many more: the one counted last where it can, else the one with the fewest.
    pub evens: Option<(Id, Evens)>,
    /// The trip to the timber yard, where the maker said how far it is; counted or not by the maker's choice.
    pub yard: Option<YardTrip>,
    pub counts_yard: bool,
    /// Time at the wheel with the way home still to come, and at the bins so far.
    pub wheel: Span,
    pub bins: Span,
    /// Sorting as it was clocked, once all of it is sorted; nothing before.
    pub sorting: Span,
    /// What was clocked on it and may be a forgotten stop: in no figure before the maker has answered for it.
    pub in_question: Span,
    /// Sorting and milling still ahead as they are planned; of milling alone once the sorting was clocked.
    pub ahead: Span,
    pub distance: Option<Money>,
    pub gift: Money,
    /// The drive is taken to be as far as the last one to this supplier.
    pub as_last_time: bool,
    /// No trip was begun: the figure is true where the maker walked, and too good where the drive was forgotten.
    pub without_drive: bool,
    /// Nothing of this supplier was ever sorted: what counts as good of a pile is a guess.
    pub by_guess: bool,
}

/// What the haul is worth at this moment; `last` is the pile that was counted last.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn worth(shop: &Shop, haul: &Haul, (past, last): (&Past, Option<Id>)) -> Answer<WorthSheet> {
    let pay = shop.workshop.pay(haul.currency);
    let drive = drive(shop, haul, past)?;
    let gift = Money::sum(haul.currency, haul.costs.iter().copied())?;
    let yard = yard(shop, haul)?;
    let trips = as_proposed(shop.book, haul, shop.now);
    let (wheel, bins) = (wheel(&trips, shop), bins(&trips, shop));
    let sorting = sorting(shop, haul);
    let piles = haul.piles.iter().map(|pile| counted(&shop.workshop, (haul, pile), past.seen)).collect::<Answer<Vec<_>>>()?;
    let mut missing = vec![];
    missing.extend(pay.is_none().then_some(Missing::Pay));
    missing.extend(drive.missing.iter().copied());
    let priced = piles.iter().any(|pile| matches!(pile.boards, Boards::At { .. }));
    missing.extend((!priced && piles.iter().any(|pile| pile.boards == Boards::PriceUnknown)).then_some(Missing::BoardPrice));
    missing.extend(of_no_pile(haul, &piles).map(Missing::Pile));
    let mut sheet = WorthSheet {
        worth: None,
        missing,
        evens: None,
        yard,
        counts_yard: haul.saves_trip,
        wheel,
        bins,
        sorting,
        in_question: shop.bench.doubtful_of_haul(haul.id, shop.now),
        ahead: Span::ZERO,
        distance: drive.cost,
        gift,
        as_last_time: drive.as_last_time,
        without_drive: haul.trips.is_empty(),
        by_guess: haul.seen().sorted() == 0 && past.seen.sorted() == 0,
    };
    // With nothing counted there is nothing to pay or not to pay.
    let reckoned = sheet.missing.is_empty() && 0 < haul.taken();
    let (Some(pay), Some(distance), true) = (pay, drive.cost, reckoned) else { return Ok(sheet) };
    let counting = Counting {
        piles,
        fetching: Fetching { distance, gift, wheel, bins: Span::sum([bins, sorting]) },
        saved: yard.filter(|_| haul.saves_trip),
        terms: Terms { pay, yields: Yields::USUAL, milling: if sorting == Span::ZERO { Milling::USUAL } else { Milling::AHEAD } },
    };
    sheet.evens = evens(haul, &counting, last)?;
    let worth = counting.worth()?;
    sheet.ahead = ahead(&counting.terms.milling, &worth);
    sheet.worth = Some(worth);
    Ok(sheet)
}

/// The first pile that was counted, where none of those has a size and a known wood.
fn of_no_pile(haul: &Haul, piles: &[Counted]) -> Option<Id> {
    let known = |one: &Counted| one.piece.is_some() && one.boards != Boards::WoodUnknown;
    let counted = || haul.piles.iter().zip(piles).filter(|(_, one)| 0 < one.pieces);
    if counted().any(|(_, one)| known(one)) { None } else { counted().next().map(|(pile, _)| pile.id) }
}

/// What a pile counts for. A piece that was burnt or that a job has was worth as much when it was loaded.
pub(super) fn counted(workshop: &Workshop, (haul, pile): (&Haul, &Pile), past: Seen) -> Answer<Counted> {
    let mean = haul.reject_share(pile.id, past)?.mean_good();
    let good = good_share(pile.good().saturating_sub(pile.unsorted()), pile.rejected(), pile.unsorted(), mean)?;
    Ok(Counted { pieces: pile.brought(), piece: pile.piece()?, good, boards: boards(workshop, haul, pile.wood.as_ref()) })
}

/// What equal boards of a pile's wood cost, by the maker's own prices.
pub fn boards(workshop: &Workshop, haul: &Haul, wood: Option<&Key>) -> Boards {
    let Some(wood) = wood.filter(|wood| is_known(wood)) else { return Boards::WoodUnknown };
    let price = workshop.board_price(haul.currency, Some(wood));
    price.map_or(Boards::PriceUnknown, |price| Boards::At { amount: price.amount, per: price.per })
}

/// The pile that was counted last where more of it even the trip, else the one that needs the fewest.
fn evens(haul: &Haul, counting: &Counting, last: Option<Id>) -> Answer<Option<(Id, Evens)>> {
    let mut found: Option<(Id, Evens)> = None;
    for (pile, evens) in haul.piles.iter().zip(counting.evens_each()?) {
        let evens = evens?;
        match (evens, found) {
            (Evens::AtOnce, _) => return Ok(Some((pile.id, evens))),
            (Evens::More(_), _) if last == Some(pile.id) => return Ok(Some((pile.id, evens))),
            (Evens::More(n), Some((_, Evens::More(least)))) if least <= n => {}
            (Evens::More(_), _) => found = Some((pile.id, evens)),
            (Evens::Never, _) => {}
        }
    }
    Ok(found.or_else(|| haul.piles.first().map(|pile| (pile.id, Evens::Never))))
}

/// What the drives cost, as far as it is known.
struct Drive {
    cost: Option<Money>,
    missing: Vec<Missing>,
    as_last_time: bool,
}

impl Drive {
    fn lacks(&mut self, what: Missing) {
        if !self.missing.contains(&what) {
            self.missing.push(what);
        }
    }
}

fn drive(shop: &Shop, haul: &Haul, past: &Past) -> Answer<Drive> {
    let mut drive = Drive { cost: None, missing: vec![], as_last_time: false };
    let mut sum = Money::zero(haul.currency);
    for trip in &haul.trips {
        let trip = match (trip.distance, past.distance) {
            (Some(_), _) => trip.clone(),
            (None, Some(far)) => {
                drive.as_last_time = true;
                priced(shop, haul, Trip { distance: Some(far), ..trip.clone() })
            }
            (None, None) => {
                drive.lacks(Missing::Distance);
                if trip.rate.is_none() && mileage(shop, haul).is_none() {
                    drive.lacks(Missing::Mileage);
                }
                continue;
            }
        };
        if trip.is_unpriced() {
            drive.lacks(Missing::Mileage);
        }
        sum = sum.plus(trip.cost(haul.currency)?)?;
    }
    drive.cost = Some(sum).filter(|_| drive.missing.is_empty());
    Ok(drive)
}

fn mileage(shop: &Shop, haul: &Haul) -> Option<(Decimal, bool)> {
    let till = shop.till(haul.currency);
    till.mileage.zip(till.per).map(|(rate, per)| (rate, per == Per::Mile))
}

fn priced(shop: &Shop, haul: &Haul, trip: Trip) -> Trip {
    match (trip.rate, mileage(shop, haul)) {
        (None, Some((rate, per_mile))) => Trip { rate: Some(rate), per_mile, ..trip },
        _ => trip,
    }
}

/// The trip to the timber yard, as far as it can be priced.
pub(super) fn yard(shop: &Shop, haul: &Haul) -> Answer<Option<YardTrip>> {
    let wood = &shop.workshop.wood;
    let (far, time) = (wood.yard_distance, wood.yard_span.unwrap_or(Span::ZERO));
    let Some((far, (rate, per_mile))) = far.zip(mileage(shop, haul)) else { return Ok(None) };
    let per = if per_mile { Length::MILE } else { Length::KM };
    let cost = distance(far, DistanceRate { amount: rate, per }, haul.currency)?;
    Ok(Some(YardTrip { distance: cost, time }))
}

/// Time at the wheel: the way home is taken to last as long as the way there until it was driven. While nobody said when the bin was
/// reached, all of it is the wheel's.
fn wheel(trips: &[Trip], shop: &Shop) -> Span {
    Span::sum(trips.iter().map(|trip| match trip.left.filter(|_| trip.wheel_said.is_none() && trip.home.is_none()) {
        Some(left) => trip.shared(trip.at_bin.map_or(left.at.until(shop.now), |there| left.at.until(there.at).times(2))),
        None => trip.wheel(),
    }))
}

/// Time at the bins, to this moment.
fn bins(trips: &[Trip], shop: &Shop) -> Span {
    Span::sum(trips.iter().map(|trip| match trip.at_bin {
        Some(there) if trip.bin_said.is_none() && trip.homeward.is_none() && trip.home.is_none() => there.at.until(shop.now),
        _ => trip.bin(),
    }))
}

/// Sorting as it was clocked on the haul, once nothing of it is left to sort.
fn sorting(shop: &Shop, haul: &Haul) -> Span {
    let is_done = 0 < haul.seen().sorted() && haul.piles.iter().all(|pile| pile.unsorted() == 0);
    if is_done { shop.bench.of_haul(haul.id, shop.now).stage(Stage::Sort) } else { Span::ZERO }
}

/// The minutes that are planned for what replaces boards, half up.
fn ahead(milling: &Milling, worth: &Worth) -> Span {
    let feet = worth.taken.less(worth.replaces_nothing).board_feet();
    let each = Decimal::from(milling.time.as_minutes());
    let minutes = feet.checked_mul(each).map_or(Decimal::ZERO, |minutes| half_up(minutes, 0));
    Span::minutes(i64::try_from(minutes).unwrap_or_default())
}

/// Whether there are piles that it could be reckoned for.
pub fn is_asked(haul: &Haul) -> bool {
    !haul.bought && !haul.piles.is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::{Book, fold};
    use crate::sheet::past::past;
    use crate::story::{STANDS, Story, tell};

    fn told(lines: &str) -> Story {
        let story = tell(lines);
        assert_eq!(story.refused, [], "{lines}");
        story
    }

    fn of(book: &Book, story: &Story, last: &str) -> WorthSheet {
        let haul = fold::haul(book, story.names.haul("yard").unwrap()).unwrap();
        worth(&Shop::of(book, story.now.at), &haul, (&past(book, &haul), story.names.pile(last))).unwrap()
    }

    /// The demo trip as it stood at the bin at 09:42, with what was said of it on the way home: figures.md, entry 1.
    fn at_the_bin() -> String {
        let whole = STANDS.replace("stairworks", "yard");
        let (day, _) = whole.split_once("09:42 homeward").expect("the way home");
        format!("{day}09:42 trip 23 miles at 0.725\nspend 11.40 gift on yard\nname blocks 2 x 4 x 9 in\n")
    }

    #[test]
    fn the_demo_trip_pays() {
        let story = told(&at_the_bin());
        let sheet = of(&story.book, &story, "squares");
        assert_eq!((sheet.wheel.as_minutes(), sheet.bins.as_minutes(), sheet.sorting), (46, 38, Span::ZERO));
        let worth = sheet.worth.unwrap();
        let shown = [worth.replaced, worth.cost, worth.gain].map(|sum| sum.to_string());
        assert_eq!(shown, ["96.86 USD", "84.32 USD", "12.55 USD"]);
        assert_eq!(sheet.evens.map(|(_, evens)| evens), Some(Evens::AtOnce));
    }

    /// What is missing is named, and nothing is reckoned without it.
    #[test]
    fn what_is_missing_is_named() {
        let check = |lines: &str, missing: &[Missing]| {
            let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\n09:30 at the bin\n\
                pile ash ash-white 1 x 4 x 30 in\ncount 60 ash\n";
            let story = told(&format!("{start}{lines}"));
            let sheet = of(&story.book, &story, "ash");
            assert_eq!((sheet.worth.is_some(), &*sheet.missing), (missing.is_empty(), missing), "{lines}");
        };
        let (pay, price, drive) = ("rate pay 20\n", "boards 4.75 a board-foot ash-white\n", "trip 10 miles\n");
        check("", &[Missing::Pay, Missing::Distance, Missing::Mileage, Missing::BoardPrice]);
        check("till mileage 0.70 mile", &[Missing::Pay, Missing::Distance, Missing::BoardPrice]);
        check(&format!("{pay}{price}{drive}"), &[Missing::Mileage]);
        check(&format!("{pay}{price}{drive}till mileage 0.70 mile"), &[]);
        check(&format!("{pay}{drive}boards 9 a board-foot cherry-black\ntill mileage 0.70 mile"), &[Missing::BoardPrice]);
    }

    /// One tap on a pile of which neither size nor wood is said is no trip that pays: what it replaces is not known. Once one pile has both it is.
    #[test]
    fn what_nobody_sized_or_named_is_not_known() {
        let check = |lines: &str, is_known: bool| {
            let story = told(&format!(
                "2026-03-02 09:00 -05:00 workshop USD inch\nrate pay 20\nboards 4.75 a board-foot\nleave for yard\n09:30 at the bin\ntrip 10 miles at 0\n{lines}"
            ));
            let sheet = of(&story.book, &story, "ash");
            let missing = if is_known { vec![] } else { vec![Missing::Pile(story.names.pile("ash").unwrap())] };
            assert_eq!((sheet.worth.is_some(), sheet.missing), (is_known, missing), "{lines}");
        };
        check("pile ash\ncount 1 ash\n", false);
        check("pile ash 1 x 4 x 30 in\ncount 1 ash\n", false);
        check("pile ash ash-white\ncount 1 ash\n", false);
        check("pile ash ash-white 1 x 4 x 30 in\ncount 1 ash\n", true);
        check("pile ash\ncount 1 ash\npile more ash-white 1 x 4 x 30 in\ncount 1 more\n", true);
    }

    /// A trip that nobody said was at the bin is all wheel; one that was forgotten ended as is proposed, however late it is.
    #[test]
    fn what_was_forgotten_of_a_trip_still_costs_its_minutes() {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\nrate pay 20\nboards 4.75 a board-foot\ntill mileage 0 mile\n";
        let check = |lines: &str, minutes: (i64, i64)| {
            let story = told(&format!("{start}{lines}"));
            let sheet = of(&story.book, &story, "ash");
            assert_eq!((sheet.wheel.as_minutes(), sheet.bins.as_minutes(), sheet.without_drive), (minutes.0, minutes.1, false), "{lines}");
            sheet.worth.map(|worth| worth.gain.to_string())
        };
        let (leave, ash) = ("leave for yard\n", "pile ash ash-white 1 x 12 x 12 in\ncount 60 ash\n");
        check(&format!("{leave}09:40 {ash}10:10 carries 670 lb"), (70, 0));
        check(&format!("{leave}09:40 {ash}10:10 home"), (70, 0));
        let forgotten = format!("{leave}09:20 at the bin\n09:40 {ash}trip 10 miles at 0\n");
        let at_once = check(&forgotten, (40, 20));
        assert_eq!(check(&format!("{forgotten}2026-03-03 08:00 carries 670 lb"), (40, 20)), at_once);
    }

    /// The maker who walked over the road is right, who forgot the drive is told.
    #[test]
    fn a_haul_without_a_trip_says_so() {
        let story = told(&at_the_bin());
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let sheet = worth(&Shop::of(&story.book, story.now.at), &Haul { trips: vec![], ..haul }, (&Past::default(), None)).unwrap();
        assert_eq!((sheet.without_drive, sheet.wheel, sheet.bins), (true, Span::ZERO, Span::ZERO));
        assert!(sheet.worth.unwrap().pays());
    }

    /// 60 board feet: 180 minutes are planned; once sorted in 50 minutes, the 120 of milling are, and the 50 count as they were.
    #[test]
    fn the_real_minutes_of_sorting_take_the_place_of_planned_ones() {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\nrate pay 20\nboards 4.75 a board-foot\ntill mileage 0 mile\n\
            leave for yard\ntrip wheel 90 min bin 60 min 38 miles\npile ash ash-white 1 x 12 x 12 in\ncount 60 ash\n";
        let sheet = |lines: &str| {
            let story = told(&format!("{start}{lines}"));
            let sheet = of(&story.book, &story, "ash");
            let minutes = sheet.worth.unwrap().against.minutes.to_string();
            (sheet.sorting.as_minutes(), sheet.ahead.as_minutes(), minutes)
        };
        assert_eq!(sheet(""), (0, 180, "110.00 USD".into()));
        let clock = "14:00 start \"sort\" fetch on yard stage sort\n14:50 stop\n";
        assert_eq!(sheet(&format!("{clock}good 30 ash")), (0, 180, "110.00 USD".into()));
        assert_eq!(sheet(&format!("{clock}good 60 ash")), (50, 120, "106.67 USD".into()));
        // A clock that may have been forgotten over night counts once it is answered for: till then it is as planned.
        let night = "17:00 start \"sort\" fetch on yard stage sort as night\ngood 60 ash\n2026-03-03 08:00 stop\n";
        assert_eq!(sheet(night), (0, 180, "110.00 USD".into()));
        assert_eq!(sheet(&format!("{night}stopped at 2026-03-02 17:50 run night")), (50, 120, "106.67 USD".into()));
    }

    /// 60 board feet at a quarter rejects, as in domain.md, section 6; a saved trip of 20 miles and an hour turns the sign.
    #[test]
    fn a_saved_trip_counts_where_the_maker_says_so() {
        let lines = "2026-03-02 09:00 -05:00 workshop USD inch\nrate pay 20\nboards 4.75 a board-foot\ntill mileage 0.725 mile\n\
            timber-yard 20 miles 60 min\nleave for yard\ntrip wheel 90 min bin 60 min 38 miles\npile ash ash-white 1 x 12 x 12 in\n\
            count 60 ash\n";
        let gain = |more: &str| {
            let story = told(&format!("{lines}{more}"));
            let sheet = of(&story.book, &story, "ash");
            (sheet.worth.unwrap().gain.to_string(), sheet.evens.unwrap().1)
        };
        assert_eq!(gain(""), ("-0.14 USD".into(), Evens::More(1)));
        assert_eq!(gain("saves a trip"), ("34.36 USD".into(), Evens::AtOnce));
        assert_eq!(gain("saves a trip\nsaves a trip not").0, "-0.14 USD");
    }
}
