//! Lengths, distances and thickness.

use super::super::super::{Currency, Length};
use super::*;

fn nm(nm: i64) -> Length {
    Length::nm(nm).unwrap()
}

fn sixty_fourths(n: i64) -> Length {
    Length::INCH_64TH.times(n).unwrap()
}

fn piece(met: Option<Length>, might_be: Option<Length>) -> Misread {
    let [met, might_be] = [met, might_be].map(|l| l.map(Quantity::Length));
    let [least, most] = [Length::PIECE_LEAST, Length::PIECE_MOST].map(Quantity::Length);
    Misread::OutOfRange { met, least, most, might_be }
}

#[test]
fn inches_as_people_type_them() {
    let three_five_eighths = [
        "3 5/8",
        "3-5/8",
        "3 - 5/8",
        "3\u{2013}5/8",
        "3.625",
        "3,6250",
        "3 5/8\"",
        "3 5/8 in",
        "3 5/8in.",
        "3⅝",
        "3 ⅝ inches",
        "29/8",
        "3 10/16",
        "3\u{a0}5/8\u{2033}",
        "3 5\u{2044}8",
        "3 5 / 8 ″",
        "  3 5/8 ",
        "0' 3 5/8\"",
        "3 5/8''",
        "3 5/8”",
        "92.075 mm",
        "9.2075cm",
    ];
    for text in three_five_eighths {
        check(length(text, INCH), Ok(sixty_fourths(232)), text);
    }
    for text in [
        "2' 6 1/2\"",
        "2 ft 6 1/2 in",
        "2'6-1/2\"",
        "2'-6 1/2\"",
        "2′ 6½″",
        "2’ 6 1/2”",
        "2 feet, 6.5 inches",
        "2ft 6 1/2",
        "30 1/2",
        "30.5",
    ] {
        check(length(text, INCH), Ok(sixty_fourths(1_952)), text);
    }
    for (text, n) in [
        ("2'", 1_536),
        ("2.5 ft", 1_920),
        ("1/2'", 384),
        ("5/8", 40),
        ("½", 32),
        ("⅛", 8),
        ("1/16", 4),
        ("3/32", 6),
        ("5/4", 80),
        ("6", 384),
    ] {
        check(length(text, INCH), Ok(sixty_fourths(n)), text);
    }
    for (text, exact) in
        [("0.1", 2_540_000), ("1.23456", 31_357_824), ("3/10", 7_620_000), ("0.015625 ft", 4_762_500), ("2.515625", 63_896_875)]
    {
        check(length(text, INCH), Ok(nm(exact)), text);
    }
}

#[test]
fn metric_as_people_type_it() {
    let ninety_two = ["92", "92 mm", "92mm.", "9.2cm", "9,2 cm", "0,092 m", "0.092m", "92,0"];
    for text in ninety_two {
        check(length(text, METRIC), Ok(nm(92_000_000)), text);
    }
    for (text, mm) in
        [("1.2 m", 1_200), ("1 m 20 cm", 1_200), ("1 250 mm", 1_250), ("1250", 1_250), ("6 in", 0), ("1/2 m", 500), ("20 m", 20_000)]
    {
        let expected = if mm == 0 { nm(152_400_000) } else { Length::MM.times(mm).unwrap() };
        check(length(text, METRIC), Ok(expected), text);
    }
    check(length("92,123456", METRIC), Ok(nm(92_123_456)), "to the nanometre");
}

#[test]
fn lengths_that_are_none() {
    for (text, no) in [
        ("", Misread::Empty),
        (" \u{a0} ", Misread::Empty),
        ("-3", Misread::Negative { met: "-3".into() }),
        ("\u{2212}3 5/8", Misread::Negative { met: "\u{2212}3 5/8".into() }),
        ("abc", met("abc")),
        ("NaN", met("NaN")),
        ("inf", met("inf")),
        ("🪵", met("🪵")),
        ("3 🪵", met("🪵")),
        ("3 /", met("/")),
        ("1e3", unit("e")),
        ("3 5/8 furlongs", unit("furlongs")),
        ("3 kg", unit("kg")),
        ("+3", met("+3")),
        ("3--5/8", met("-5/8")),
        ("3 5/4", met("3 5/4")),
        ("3.5 5/8", met("3.5 5/8")),
        ("3 4 5", met("4")),
        ("3 in 4", met("4")),
        ("6\" 2'", met("2'")),
        ("2.5' 6\"", met("2.5'")),
        ("2' 12", met("12")),
        ("1'250", met("250")),
        ("5/8 5/8", met("5/8")),
        ("3, 5/8", met("5/8")),
        ("2' 6 mm", met("6 mm")),
        ("0x10", unit("x")),
    ] {
        check(length(text, INCH), Err(no), text);
    }
}

#[test]
fn what_is_too_fine_is_refused_with_the_nearest() {
    let fine = |n| Misread::TooFine { nearest: Quantity::Length(sixty_fourths(n)) };
    let fraction = |met, n| Misread::Denominator { met, nearest: Some(Quantity::Length(sixty_fourths(n))) };
    for (text, no) in [
        ("3.123456", fine(200)),
        ("3.6250001", fine(232)),
        ("0.33333333333333333333", fine(21)),
        ("1/3", fraction(3, 21)),
        ("3 ⅔", fraction(3, 235)),
        ("3 5/128", fraction(128, 195)),
        ("3/1", fraction(1, 192)),
        ("5/100", fraction(100, 3)),
        ("3 5/0", Misread::Denominator { met: 0, nearest: None }),
    ] {
        check(length(text, INCH), Err(no), text);
    }
    let nearest = Quantity::Length(nm(92_123_000));
    check(length("92,1234567", METRIC), Err(Misread::TooFine { nearest }), "below a nanometre");
}

#[test]
fn a_length_past_the_limit_names_it_and_the_reading_within() {
    let inch = |thousandths: i64| nm(25_400 * thousandths);
    for (text, no) in [
        ("1,125", piece(Some(inch(1_125_000)), Some(inch(1_125)))),
        ("1,125 in", piece(Some(inch(1_125_000)), Some(inch(1_125)))),
        ("1125", piece(Some(inch(1_125_000)), None)),
        ("66 ft", piece(Some(inch(792_000)), None)),
        ("0", piece(Some(nm(0)), None)),
        ("0.5 mm", piece(Some(nm(500_000)), None)),
        ("0.00000001", piece(Some(nm(0)), None)),
        ("99999999999999999999999999", piece(None, None)),
        ("999999999999999", piece(None, None)),
    ] {
        check(length(text, INCH), Err(no), text);
    }
    let [grouped, decimal] = [1_250_000_000, 1_250_000].map(|n| Quantity::Length(nm(n)));
    for sign in [Sign::Point, Sign::Comma] {
        check(length("1,250", Typing { sign, ..METRIC }), Err(Misread::Ambiguous { grouped, decimal }), "both in reach");
    }
    check(length("1.250 mm", METRIC), Err(Misread::Ambiguous { grouped, decimal }), "the point may group");
    check(length("1.250 mm", INCH), Ok(nm(1_250_000)), "the point does not group");
}

#[test]
fn distances() {
    for (text, typing, expected) in [
        ("23", INCH, Length::MILE.times(23).unwrap()),
        ("23 mi", METRIC, Length::MILE.times(23).unwrap()),
        ("37 km", INCH, Length::KM.times(37).unwrap()),
        ("46", METRIC, Length::KM.times(46).unwrap()),
        ("2 1/2 miles", INCH, nm(4_023_360_000_000)),
        ("0", INCH, Length::ZERO),
    ] {
        check(distance(text, typing), Ok(expected), text);
    }
    let [least, most] = [Length::ZERO, Length::DISTANCE_MOST].map(Quantity::Distance);
    let far = Some(Quantity::Distance(Length::KM.times(10_001).unwrap()));
    check(distance("10001 km", INCH), Err(Misread::OutOfRange { met: far, least, most, might_be: None }), "too far");
    check(distance("23 ft", INCH), Err(unit("ft")), "a length is no distance");
    check(distance("2 mi 3", INCH), Err(met("2 mi 3")), "one figure");
}

#[test]
fn thickness_by_quarter_names() {
    for (text, n) in [("4/4", 64), ("5/4", 80), ("6/4", 96), ("8/4", 128), ("16/4", 256), ("13/16 in", 52)] {
        check(thickness(text, METRIC), Ok(sixty_fourths(n)), text);
        check(thickness(text, INCH), Ok(sixty_fourths(n)), text);
    }
    check(thickness("27", METRIC), Ok(nm(27_000_000)), "27");
}

/// Whatever is typed, there is an answer, and it carries no more than a line.
#[test]
fn ten_kilobytes_are_too_long() {
    for text in ["9".repeat(10_000), "x".repeat(10_000), "1/".repeat(5_000), "🪵".repeat(65)] {
        check(length(&text, INCH), Err(Misread::TooLong { most: TEXT_MOST }), "long");
        check(money(&text, Currency::USD, Sign::Point), Err(Misread::TooLong { most: TEXT_MOST }), "long");
        check(clock(&text), Err(Misread::TooLong { most: TEXT_MOST }), "long");
    }
    check(length(&format!("{}3{}", " ".repeat(500), " ".repeat(500)), INCH), Ok(sixty_fourths(192)), "room around is no text");
}
