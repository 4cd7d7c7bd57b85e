use super::*;

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn usd(text: &str) -> Money {
    Money::whole(d(text).normalize(), Currency::USD).unwrap()
}

const FOOT: Volume = Volume::BOARD_FOOT;

fn at(price: &str) -> Boards {
    Boards::At { amount: d(price), per: FOOT }
}

/// So many pieces of a board foot, one in four of them bad.
fn feet(pieces: Count, boards: Boards) -> Counted {
    Counted { pieces, piece: Some(FOOT), good: d("0.75"), boards }
}

/// Nobody drove anywhere: only what is in the piles, at 20 an hour.
fn counting(piles: Vec<Counted>) -> Counting {
    let none = usd("0");
    Counting {
        piles,
        fetching: Fetching { distance: none, gift: none, wheel: Span::ZERO, bins: Span::ZERO },
        saved: None,
        terms: Terms { pay: d("20"), yields: Yields::USUAL, milling: Milling::USUAL },
    }
}

fn fetched(distance: &str, piles: Vec<Counted>) -> Counting {
    let plain = counting(piles);
    Counting { fetching: Fetching { distance: usd(distance), ..plain.fetching }, ..plain }
}

#[track_caller]
fn check(counting: &Counting, replaced: &str, cost: &str, gain: &str) {
    let worth = counting.worth().unwrap();
    assert_eq!((worth.replaced, worth.cost, worth.gain), (usd(replaced), usd(cost), usd(gain)));
}

#[test]
fn a_haul_replaces_the_boards_of_its_good_part_and_costs_the_minutes_of_all_of_it() {
    check(&counting(vec![]), "0", "0", "0");
    check(&counting(vec![feet(28, at("4"))]), "54.00", "28.00", "26.00");
    check(&counting(vec![feet(28, at("4")), feet(28, at("8"))]), "162.00", "56.00", "106.00");
    check(&fetched("30", vec![feet(28, at("4"))]), "54.00", "58.00", "-4.00");
    let given = fetched("30", vec![feet(28, at("4"))]);
    check(&Counting { fetching: Fetching { gift: usd("5"), ..given.fetching }, ..given }, "54.00", "63.00", "-9.00");
    let slow = fetched("30", vec![feet(28, at("4"))]);
    let long = Fetching { wheel: Span::minutes(20), bins: Span::minutes(10), ..slow.fetching };
    check(&Counting { fetching: long, ..slow }, "54.00", "68.00", "-14.00");
}

#[test]
fn what_is_not_known_replaces_nothing_and_is_said() {
    let bare = Counted { piece: None, ..feet(5, at("4")) };
    let piles = vec![feet(28, at("4")), feet(9, Boards::WoodUnknown), feet(3, Boards::PriceUnknown), bare];
    check(&counting(piles.clone()), "54.00", "28.00", "26.00");
    let worth = counting(piles).worth().unwrap();
    assert_eq!((worth.left_out, worth.taken, worth.replaces_nothing), (8, FOOT.times(40).unwrap(), FOOT.times(12).unwrap()));
    let leaves = |pile: Counted| pile.leaves(&counting(vec![]).terms).unwrap();
    assert_eq!((leaves(feet(1, Boards::WoodUnknown)), leaves(feet(1, Boards::PriceUnknown)), leaves(bare)), (Some(d("0")), None, None));
}

#[test]
fn a_trip_to_the_yard_counts_where_the_maker_counts_it() {
    let plain = fetched("30", vec![feet(28, at("4"))]);
    let saved = Counting { saved: Some(YardTrip { distance: usd("6"), time: Span::minutes(45) }), ..plain.clone() };
    assert_eq!((plain.worth().unwrap().saved, saved.worth().unwrap().saved), (usd("0"), usd("21.00")));
    check(&saved, "54.00", "58.00", "17.00");
    assert!(!plain.worth().unwrap().pays() && saved.worth().unwrap().pays());
}

#[test]
fn what_stands_against_it_makes_up_the_cost() {
    let plain = fetched("30", vec![feet(28, at("4"))]);
    let worth = Counting { fetching: Fetching { gift: usd("5"), wheel: Span::minutes(30), ..plain.fetching }, ..plain }.worth().unwrap();
    let Against { minutes, distance, gift, rejects } = worth.against;
    assert_eq!(worth.against, Against { minutes: usd("38"), distance: usd("30"), gift: usd("5"), rejects: usd("18") });
    assert_eq!(Money::sum(Currency::USD, [minutes, distance, gift]), Ok(worth.cost));
    assert_eq!(worth.replaced.plus(rejects), Ok(usd("72")));
}

#[track_caller]
fn check_evens(counting: &Counting, wanted: Evens) {
    assert_eq!(counting.evens(0), Ok(wanted), "{:?}", counting.worth());
}

/// A good foot at 7.00 leaves 7 x 0.45 / 0.7 - 1 = 3.50.
#[test]
fn more_pieces_even_a_trip() {
    let sure = |pieces, price: &str| Counted { good: Decimal::ONE, ..feet(pieces, at(price)) };
    for (distance, pieces, wanted) in [
        ("0", 0, Evens::AtOnce),
        ("0.01", 0, Evens::More(1)),
        ("3.50", 1, Evens::AtOnce),
        ("3.51", 1, Evens::More(1)),
        ("35", 1, Evens::More(9)),
        ("35.01", 1, Evens::More(10)),
        ("34996.50", 0, Evens::More(9_999)),
        ("34996.51", 0, Evens::Never),
        ("34996.50", 5_000, Evens::More(4_999)),
        ("34996.51", 9_999, Evens::Never),
    ] {
        check_evens(&fetched(distance, vec![sure(pieces, "7")]), wanted);
    }
    check_evens(&fetched("5", vec![sure(3, "1")]), Evens::Never);
    check_evens(&fetched("5", vec![feet(3, Boards::WoodUnknown), sure(9, "7")]), Evens::AtOnce);
    check_evens(&fetched("99", vec![feet(3, Boards::WoodUnknown), sure(9, "7")]), Evens::Never);
    assert_eq!(fetched("5", vec![]).evens(0), Err(Refusal::NotThere));
}

#[test]
fn sorted_pieces_are_what_they_were_found_to_be() {
    for (good, rejected, unsorted, wanted) in [(0, 0, 0, "0.75"), (0, 0, 9, "0.75"), (1, 0, 3, "0.8125"), (0, 5, 0, "0"), (7, 0, 0, "1")] {
        assert_eq!(good_share(good, rejected, unsorted, d("0.75")), Ok(d(wanted)), "{good} {rejected} {unsorted}");
    }
    assert_eq!(good_share(1, 1, 1, d("1.1")), Err(Refusal::ShareOutOfRange { met: d("1.1") }));
}

#[test]
fn inv08_what_cannot_be_is_refused() {
    let plain = || counting(vec![feet(1, at("4"))]);
    let no = |counting: Counting, wanted: Refusal| {
        assert_eq!((counting.worth().err(), counting.evens(0).err()), (Some(wanted.clone()), Some(wanted)));
    };
    no(counting(vec![Counted { good: d("-0.1"), ..feet(1, at("4")) }]), Refusal::ShareOutOfRange { met: d("-0.1") });
    no(counting(vec![feet(1, at("-4"))]), Refusal::BelowNothing { met: d("-4") });
    no(counting(vec![feet(1, Boards::At { amount: d("4"), per: Volume::ZERO })]), Refusal::NothingToShareBy);
    let terms = plain().terms;
    no(Counting { terms: Terms { pay: d("-1"), ..terms }, ..plain() }, Refusal::BelowNothing { met: d("-1") });
    let yields = Yields { bought: d("0"), ..Yields::USUAL };
    no(Counting { terms: Terms { yields, ..terms }, ..plain() }, Refusal::NothingToShareBy);
    let euro = YardTrip { distance: Money::zero(Currency::EUR), time: Span::ZERO };
    no(Counting { saved: Some(euro), ..plain() }, Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR });
    let far = counting(vec![feet(9_999, at("9999"))]).worth();
    assert_eq!(far, Err(Refusal::MoneyOutOfRange { currency: Currency::USD }));
}
