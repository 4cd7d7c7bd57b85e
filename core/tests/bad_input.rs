//! What can't be is refused by its name and its limit, and the book stays as it was: sizes, samples, weights, woods, corrections.

mod maker;

use fivebar_core::ledger::decide::{Command, HaulCommand, Lying, OnTheScale, PileFacts, StockCommand, WoodCommand};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::ledger::kind::wood::SpeciesAdded;
use fivebar_core::quantity::reading::{self, Misread, Sign, Typing};
use fivebar_core::quantity::{Count, Currency, Grams, Id, Length, PILE_MOST, Units};
use fivebar_core::refusal::Refusal;
use maker::{Maker, d, key, mm};

/// A haul with a pile of 9 pieces of which 4 are rejected.
struct Yard {
    maker: Maker,
    haul: Id,
    pile: Id,
}

impl Yard {
    fn begin() -> Yard {
        let mut maker = Maker::new(Currency::EUR);
        maker.at((2026, 3, 2), 540, 1);
        let (currency, units, way) = (Currency::EUR, Units::Metric, Way::Bundle);
        let began = maker.order(Command::Haul(HaulCommand::Begin { currency, units, pile: PileFacts::default(), n: 9, way }));
        let (haul, pile) = (began[0], began[1]);
        maker.order(Command::Haul(HaulCommand::Reject { haul, pile, n: 4, why: key("knot") }));
        Yard { maker, haul, pile }
    }

    fn of_pile(&self, command: StockCommand) -> Command {
        Command::Stock(Lying { haul: self.haul, pile: self.pile }, command)
    }
}

/// The order is refused so, and nothing is lost.
#[track_caller]
fn check(order: impl Fn(&Yard) -> Command, why: Refusal) {
    let mut yard = Yard::begin();
    let before: Vec<String> = yard.maker.book.lines().map(str::to_owned).collect();
    let order = order(&yard);
    assert_eq!(yard.maker.try_order(order), Err(why));
    assert_eq!(yard.maker.book.lines().map(str::to_owned).collect::<Vec<_>>(), before);
}

fn grams(n: i64) -> Grams {
    Grams::new(n).unwrap()
}

#[test]
fn sizes_of_nothing_and_beyond_all_are_refused() {
    let (least, most) = (Length::PIECE_LEAST, Length::PIECE_MOST);
    for met in [Length::ZERO, mm(1_000_000)] {
        let out = Refusal::LengthOutOfRange { met, least, most };
        let add = |facts: PileFacts| {
            move |yard: &Yard| Command::Haul(HaulCommand::AddPile { haul: yard.haul, pile: facts.clone(), n: 0, way: Way::Tap })
        };
        check(add(PileFacts { thickness: Some(met), ..PileFacts::default() }), out.clone());
        check(add(PileFacts { width: Some(met), ..PileFacts::default() }), out.clone());
        check(add(PileFacts { length: Some(met), ..PileFacts::default() }), out.clone());
        check(|yard| yard.of_pile(StockCommand::Measure { thickness: Some(met), width: None, length: None }), out.clone());
        let facts = PileFacts { length: Some(met), ..PileFacts::default() };
        check(|yard| Command::Haul(HaulCommand::DescribePile { haul: yard.haul, pile: yard.pile, facts: facts.clone() }), out);
    }
}

#[test]
fn samples_and_weights_that_can_not_be_are_refused() {
    let scale = |sample: Count, sample_weight, shows, tare| {
        let (sample_weight, shows, tare) = (grams(sample_weight), grams(shows), grams(tare));
        StockCommand::Weigh(OnTheScale { sample, sample_weight, shows, tare, spread: None, singles: None })
    };
    check(|yard| yard.of_pile(scale(4, 1_600, 40_000, 0)), Refusal::SampleTooSmall { met: 4, least: 5 });
    check(|yard| yard.of_pile(scale(5, 2_001, 2_000, 0)), Refusal::SampleTooHeavy { sample: grams(2_001), pile: grams(2_000) });
    check(|yard| yard.of_pile(scale(5, 2_000, 1_400, 1_500)), Refusal::UnderTare { met: grams(1_400), tare: grams(1_500) });
    // Nine pieces measured of nine; the tenth is one more than there are.
    let mut yard = Yard::begin();
    let measure = || StockCommand::Measure { thickness: Some(mm(27)), width: None, length: None };
    (0..9).for_each(|_| drop(yard.maker.order(yard.of_pile(measure()))));
    let before = yard.maker.book.len();
    assert_eq!(yard.maker.try_order(yard.of_pile(measure())), Err(Refusal::SampleMoreThanPile { measured: 10, there: 9 }));
    assert_eq!((yard.maker.book.len(), fold::haul(&yard.maker.book, yard.haul).unwrap().piles[0].measured.len()), (before, 9));
}

#[test]
fn woods_nobody_knows_are_refused() {
    let wood = || PileFacts { wood: Some(key("moon-wood")), ..PileFacts::default() };
    let unknown = || Refusal::WoodUnknown { key: "moon-wood".into() };
    check(|yard| Command::Haul(HaulCommand::AddPile { haul: yard.haul, pile: wood(), n: 1, way: Way::Tap }), unknown());
    check(|yard| Command::Haul(HaulCommand::DescribePile { haul: yard.haul, pile: yard.pile, facts: wood() }), unknown());
    // It can be added as the maker's own, and then is known.
    let mut yard = Yard::begin();
    let (name, density) = ("moon wood".into(), Exact(d("640")));
    let own = SpeciesAdded { key: key("moon-wood"), name, density, radial: None, tangential: None, from: None, gone: None };
    yard.maker.order(Command::Wood(WoodCommand::AddSpecies(own)));
    yard.maker.order(Command::Haul(HaulCommand::AddPile { haul: yard.haul, pile: wood(), n: 1, way: Way::Tap }));
}

/// A correction is no less than what is spoken for, never below nothing, and no more than a pile holds.
#[test]
fn corrections_that_can_not_be_are_refused() {
    let recount = |n| move |yard: &Yard| Command::Haul(HaulCommand::Recount { haul: yard.haul, pile: yard.pile, n, why: None });
    check(recount(3), Refusal::NotThatMany { asked: 4, there: 3 });
    check(recount(PILE_MOST + 1), Refusal::TooManyPieces { would_be: PILE_MOST + 1, most: PILE_MOST });
    let back = |n| {
        move |yard: &Yard| {
            let (haul, pile, to) = (yard.haul, yard.pile, fivebar_core::ledger::kind::haul::Fate::Good);
            Command::Haul(HaulCommand::Return { haul, pile, n, why: key("knot"), to })
        }
    };
    check(back(5), Refusal::NotThatMany { asked: 5, there: 4 });
    check(back(0), Refusal::NothingAsked);
    check(|yard| yard.of_pile(StockCommand::Gone { n: 6, to: key("burnt") }), Refusal::NotThatMany { asked: 6, there: 5 });
    check(
        |yard| yard.of_pile(StockCommand::CountRack { n: PILE_MOST + 1, why: None }),
        Refusal::TooManyPieces { would_be: PILE_MOST + 1, most: PILE_MOST },
    );
    // Typed, a count below nothing is no count, whatever it is for.
    for text in ["-3", "\u{2212}3"] {
        assert_eq!(reading::count(text, Sign::Point, PILE_MOST), Err(Misread::Negative { met: text.into() }));
    }
    let typing = Typing { units: Units::Metric, sign: Sign::Comma };
    assert!(reading::length("-27", typing).is_err() && reading::mass("-2", typing).is_err());
}
