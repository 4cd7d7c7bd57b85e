//! Facts of hauls and piles, order by order: what is named is there, and no piece is had twice.

mod maker;

use fivebar_core::ledger::decide::{BookCommand, Command, HaulCommand};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::haul::{HaulDescribed, Per, PiecesMoved, PiecesRecounted, Step, TripDescribed};
use fivebar_core::ledger::{Fact, fold};
use fivebar_core::quantity::{Currency, Id, Length, Span, Units};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::haul as haul_sheet;
use maker::{Maker, begun, d, refused, sixteenths};

fn exact(text: &str) -> Option<Exact> {
    Some(Exact(d(text)))
}

/// What a command names must be there, and a supplier met on a trip is one act with the haul.
#[test]
fn facts_of_a_haul_name_what_is_there() {
    let (mut maker, job) = begun(1);
    let nobody = job; // no haul, no trip
    let described = |haul| HaulCommand::Describe(HaulDescribed { carries: Some(1), ..HaulDescribed::of(haul) });
    let haul = maker.order(Command::Haul(HaulCommand::Leave { haul: None, currency: Currency::USD, units: Units::Inch }));
    let (haul, trip) = (haul[0], haul[1]);
    let pile = maker.pile(haul, None, [sixteenths(16); 3], 5);
    for command in [
        described(nobody),
        HaulCommand::FromNew { haul: nobody },
        HaulCommand::Leave { haul: Some(nobody), currency: Currency::USD, units: Units::Inch },
        HaulCommand::Step { haul, trip: nobody, step: Step::AtBin },
        HaulCommand::Step { haul: nobody, trip, step: Step::AtBin },
        HaulCommand::Take { haul, pile, job: haul, n: 1 },
    ] {
        refused(&mut maker, Command::Haul(command), Refusal::NotThere);
    }
    let act = maker.order(Command::Haul(HaulCommand::FromNew { haul }))[0];
    assert_eq!(fold::haul(&maker.book, haul).unwrap().supplier, Some(act));
    maker.order(Command::Book(BookCommand::TakeBack { act }));
    assert_eq!(fold::haul(&maker.book, haul).unwrap().supplier, None);
    assert!(fold::workshop(&maker.book).people.is_empty());
}

/// What a drive can't be is refused before it is written: it would be in every sum of the haul.
#[test]
fn a_drive_lies_within_what_a_drive_can_be() {
    let (mut maker, _) = begun(1);
    let haul = maker.order(Command::Haul(HaulCommand::Leave { haul: None, currency: Currency::USD, units: Units::Inch }));
    let (haul, trip) = (haul[0], haul[1]);
    let said = || TripDescribed::of(haul, trip);
    let far = |distance: Length, rate: &str| TripDescribed { distance: Some(distance), rate: exact(rate), per: Some(Per::Km), ..said() };
    let longest = Length::DISTANCE_MOST;
    let (day, over) = (Span::RUN_MOST, Span::RUN_MOST.plus(Span::ms(1)));
    let money = || Refusal::MoneyOutOfRange { currency: Currency::USD };
    let time = |met| Refusal::SpanOutOfRange { met, most: day };
    for (facts, refusal) in [
        (far(Length::KM, "-0.5"), Refusal::BelowNothing { met: d("-0.5") }),
        (far(longest.plus(Length::MM).unwrap(), "0.5"), Refusal::OutOfRange),
        (far(longest, "1000.01"), money()),
        (TripDescribed { wheel: Some(over), ..said() }, time(over)),
        (TripDescribed { bin: Some(Span::ms(-1)), ..said() }, time(Span::ms(-1))),
    ] {
        refused(&mut maker, Command::Haul(HaulCommand::DescribeTrip(facts)), refusal);
    }
    for facts in [TripDescribed { wheel: Some(day), ..said() }, far(longest, "1000"), far(Length::KM, "0.725")] {
        maker.order(Command::Haul(HaulCommand::DescribeTrip(facts)));
    }
    let beyond = TripDescribed { rate: exact("10000001"), ..said() };
    refused(&mut maker, Command::Haul(HaulCommand::DescribeTrip(beyond)), money());
    assert!(haul_sheet::haul(&maker.shop(), haul).is_ok());
}

/// Ten pieces on A and none on B, of which a job has `used`.
fn two_piles(used: u32) -> (Maker, Id, [Id; 2]) {
    let (mut maker, job) = begun(1);
    let haul = maker.order(Command::Haul(HaulCommand::Leave { haul: None, currency: Currency::USD, units: Units::Inch }))[0];
    let piles = [10, 0].map(|n| maker.pile(haul, None, [sixteenths(16); 3], n));
    if 0 < used {
        maker.take(haul, piles[0], job, used);
    }
    (maker, haul, piles)
}

/// Jobs never have more of a pile than was good of it: no share is beyond the whole haul.
#[test]
fn pieces_in_jobs_are_neither_moved_nor_counted_away() {
    for (used, sorted, movable) in [(0, 0, 10), (4, 0, 6), (10, 0, 0), (4, 5, 5), (2, 9, 1)] {
        let (mut maker, haul, [from, to]) = two_piles(used);
        if 0 < sorted {
            maker.order(Command::Haul(HaulCommand::Sort { haul, pile: from, n: sorted }));
        }
        let order = |n| Command::Haul(HaulCommand::Move { haul, from, to, n });
        refused(&mut maker, order(movable + 1), Refusal::NotThatMany { asked: movable + 1, there: movable });
        if 0 < movable {
            maker.order(order(movable));
        }
        let there = fold::haul(&maker.book, haul).unwrap();
        assert!(there.piles.iter().all(|pile| pile.used() <= pile.good() && pile.sorted_good <= pile.good()), "{there:?}");
    }
    for (used, rejected) in [(0, 0), (4, 0), (0, 3), (4, 3)] {
        let (mut maker, haul, [pile, _]) = two_piles(used);
        if 0 < rejected {
            maker.reject(haul, pile, &[("twist", rejected)]);
        }
        let least = used + rejected;
        let order = |n| Command::Haul(HaulCommand::Recount { haul, pile, n, why: None });
        if 0 < least {
            refused(&mut maker, order(least - 1), Refusal::NotThatMany { asked: least, there: least - 1 });
        }
        maker.order(order(least));
        assert_eq!(fold::haul(&maker.book, haul).unwrap().pile(pile).unwrap().on_rack(), 0);
    }
}

/// One phone gives a job ten pieces, the other moves or counts away the same ten: together they are ten still.
#[test]
fn two_phones_never_make_more_of_a_pile_than_there_was() {
    for moves in [true, false] {
        let (mut one, haul, [from, to]) = two_piles(10);
        let told = match moves {
            true => Fact::from(PiecesMoved { haul, from, to, n: 10 }),
            false => Fact::from(PiecesRecounted { haul, pile: from, n: 3, why: None }),
        };
        one.note(told);
        let there = fold::haul(&one.book, haul).unwrap();
        assert_eq!((there.good(), there.piles.iter().map(|pile| pile.used()).sum::<u32>()), (10, 10));
    }
}
