//! Tables of what people type, kind by kind.

use super::super::{Clock, Currency, Decimal, Length, Mass, Money, Span};
use super::*;

const INCH: Typing = Typing { units: Units::Inch, sign: Sign::Point };
const METRIC: Typing = Typing { units: Units::Metric, sign: Sign::Comma };

fn nm(nm: i64) -> Length {
    Length::nm(nm).unwrap()
}

fn sixty_fourths(n: i64) -> Length {
    Length::INCH_64TH.times(n).unwrap()
}

fn met(text: &str) -> Misread {
    Misread::NotANumber { met: text.into() }
}

fn unit(text: &str) -> Misread {
    Misread::UnknownUnit { met: text.into() }
}

fn piece(met: Option<Length>, might_be: Option<Length>) -> Misread {
    let [met, might_be] = [met, might_be].map(|l| l.map(Quantity::Length));
    let [least, most] = [Length::PIECE_LEAST, Length::PIECE_MOST].map(Quantity::Length);
    Misread::OutOfRange { met, least, most, might_be }
}

#[track_caller]
fn check<Q: PartialEq + std::fmt::Debug>(read: Read<Q>, expected: Result<Q, Misread>, text: &str) {
    assert_eq!(read, expected, "{text:?}");
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
        ("6\" 2'", met("2 ft")),
        ("2.5' 6\"", met("2.5 ft")),
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
fn money_as_people_type_it() {
    let (usd, eur) = (Currency::USD, Currency::EUR);
    let sum = |minor, currency: Currency| Money::whole(Decimal::new(minor, currency.digits()), currency).unwrap();
    for (text, currency, minor) in [
        ("11.40", usd, 1_140),
        ("$11.40", usd, 1_140),
        ("$ 11.4", usd, 1_140),
        ("11,40 €", eur, 1_140),
        ("11,40", usd, 1_140),
        ("12", usd, 1_200),
        ("0", usd, 0),
        ("USD 12", usd, 1_200),
        ("12 eur", eur, 1_200),
        ("1,250.50", usd, 125_050),
        ("1.250,50 €", eur, 125_050),
        ("1'250.50", usd, 125_050),
        ("1 250,50 €", eur, 125_050),
        (".50", usd, 50),
        ("$.50", usd, 50),
        ("12.", usd, 1_200),
        ("12.000", usd, 1_200),
        ("10000000", usd, 1_000_000_000),
    ] {
        check(money(text, currency, Sign::Point), Ok(sum(minor, currency)), text);
    }
    let fine = |minor| Misread::TooFine { nearest: Quantity::Money(sum(minor, usd)) };
    let either =
        |grouped, decimal| Misread::Ambiguous { grouped: Quantity::Money(sum(grouped, usd)), decimal: Quantity::Money(sum(decimal, usd)) };
    let out = Misread::OutOfRange {
        met: None,
        least: Quantity::Money(sum(0, usd)),
        most: Quantity::Money(sum(1_000_000_000, usd)),
        might_be: None,
    };
    for (text, no) in [
        ("11.405", fine(1_141)),
        ("0.001", fine(0)),
        ("1,250", either(125_000, 125)),
        ("1,255", either(125_500, 126)),
        ("-5", Misread::Negative { met: "-5".into() }),
        ("$-5", Misread::Negative { met: "$-5".into() }),
        ("11,40 €", unit("€")),
        ("5 lb", unit("lb")),
        ("10000000.01", out.clone()),
        ("99999999999999999999", out),
        ("five", met("five")),
        ("$", met("$")),
        ("$5 USD", met("$5 USD")),
        ("5 5", met("5 5")),
        ("1e3", met("1e3")),
    ] {
        check(money(text, usd, Sign::Point), Err(no), text);
    }
    let yen = Currency::read("JPY").unwrap();
    check(money("¥1200", yen, Sign::Point), Ok(sum(1_200, yen)), "yen have no parts");
    check(money("12.5", yen, Sign::Point), Err(Misread::TooFine { nearest: Quantity::Money(sum(13, yen)) }), "yen have no parts");
}

#[test]
fn spans_as_people_type_them() {
    for (text, minutes) in [
        ("1h30", 90),
        ("1 h 30", 90),
        ("1 h 30 min", 90),
        ("1hr 30m", 90),
        ("1:30", 90),
        ("90 min", 90),
        ("90m", 90),
        ("1.5 h", 90),
        ("1,5 h", 90),
        ("1½ h", 90),
        ("47", 47),
        ("0", 0),
        ("1 h", 60),
        ("1 h 04", 64),
        ("0:05", 5),
        ("1/3 h", 20),
        ("48 h", 2_880),
        ("3 HOURS", 180),
        ("90 Min.", 90),
    ] {
        check(span(text, Sign::Point, Span::RUN_MOST), Ok(Span::minutes(minutes)), text);
    }
    check(span("47 min 12.5 s", Sign::Point, Span::RUN_MOST), Ok(Span::ms(2_832_500)), "seconds");
    let out = |met| Misread::OutOfRange { met, least: Quantity::Span(Span::ZERO), most: Quantity::Span(Span::RUN_MOST), might_be: None };
    for (text, no) in [
        ("49 h", out(Some(Quantity::Span(Span::minutes(2_940))))),
        ("99999999999999999", out(None)),
        ("1:5", met("1:5")),
        ("1:75", met("1:75")),
        (":30", met(":30")),
        ("1:30:00", met("1:30:00")),
        ("30 h h", met("h")),
        ("30 min 1 h", met("1")),
        ("2 days", unit("days")),
        ("-5", Misread::Negative { met: "-5".into() }),
        ("1.3333333 h", Misread::TooFine { nearest: Quantity::Span(Span::minutes(80)) }),
        ("1/7 h", Misread::Denominator { met: 7, nearest: Some(Quantity::Span(Span::minutes(9))) }),
    ] {
        check(span(text, Sign::Point, Span::RUN_MOST), Err(no), text);
    }
}

#[test]
fn clocks_as_people_type_them() {
    for (text, hour, minute) in [
        ("14:32", 14, 32),
        ("2:32 pm", 14, 32),
        ("1432", 14, 32),
        ("2.32pm", 14, 32),
        ("2:32 P.M.", 14, 32),
        ("14.32", 14, 32),
        ("14h32", 14, 32),
        ("14 h 32", 14, 32),
        ("232p", 14, 32),
        ("9", 9, 0),
        ("9 am", 9, 0),
        ("14h", 14, 0),
        ("932", 9, 32),
        ("0932", 9, 32),
        ("12 am", 0, 0),
        ("12:05 pm", 12, 5),
        ("0:00", 0, 0),
        ("23:59", 23, 59),
    ] {
        check(clock(text), Ok(Clock::at(hour, minute).unwrap()), text);
    }
    let [least, most] = [Clock::FIRST, Clock::LAST].map(Quantity::Clock);
    for text in ["24:00", "25", "14:60", "9999"] {
        check(clock(text), Err(Misread::OutOfRange { met: None, least, most, might_be: None }), text);
    }
    for text in ["13 pm", "0 am", "9:5", "14:32:10", "14:", ":30", "12345", "noon", "am", "9 ☀", "１４:３２"] {
        check(clock(text), Err(met(text)), text);
    }
}

#[test]
fn counts_weights_and_per_cent() {
    let most = super::super::PILE_MOST;
    let one = |n: i64, scale| Decimal::new(n, scale);
    for (text, n) in [("31", 31), ("0", 0), ("9999", 9_999), ("1 250", 1_250), ("12.0", 12)] {
        check(count(text, Sign::Point, most), Ok(n), text);
    }
    let out = |met| Misread::OutOfRange { met, least: Quantity::Count(0), most: Quantity::Count(most), might_be: None };
    for (text, no) in [
        ("2.5", Misread::NotWhole { met: one(25, 1), might_be: None }),
        ("1,250", Misread::NotWhole { met: one(125, 2), might_be: Some(Quantity::Count(1_250)) }),
        ("10000", out(Some(Quantity::Count(10_000)))),
        ("99999999999", out(None)),
        ("3 pcs", met("3 pcs")),
        ("-1", Misread::Negative { met: "-1".into() }),
    ] {
        check(count(text, Sign::Point, most), Err(no), text);
    }
    for (text, typing, kg) in [
        ("163.5 lb", METRIC, 74.162_352_495),
        ("100", INCH, 45.359_237),
        ("100 lbs", INCH, 45.359_237),
        ("74 kg", INCH, 74.0),
        ("86,9", METRIC, 86.9),
        ("850 g", METRIC, 0.85),
        ("1 kg 500 g", METRIC, 1.5),
        ("16 oz", INCH, 0.453_592_37),
        ("1 lb 8", INCH, 0.680_388_555),
        ("2#", INCH, 0.907_184_74),
    ] {
        check(mass(text, typing), Ok(Mass::kg(kg)), text);
    }
    let [least, top] = [Mass::ZERO, Mass::MOST].map(Quantity::Mass);
    check(
        mass("10001 kg", INCH),
        Err(Misread::OutOfRange { met: Some(Quantity::Mass(Mass::kg(10_001.0))), least, most: top, might_be: None }),
        "ten tonnes",
    );
    check(mass("5 in", INCH), Err(unit("in")), "a length is no weight");
    for (text, expected) in
        [("5.5 %", one(55, 1)), ("5,5", one(55, 1)), ("8.875%", one(8_875, 3)), ("0", one(0, 0)), ("100 %", one(100, 0))]
    {
        check(percent(text, Sign::Point), Ok(expected), text);
    }
    let [least, most] = [one(0, 0), one(100, 0)].map(Quantity::Percent);
    let over = |met, might_be: Option<Decimal>| Misread::OutOfRange {
        met: Some(Quantity::Percent(met)),
        least,
        most,
        might_be: might_be.map(Quantity::Percent),
    };
    check(percent("101", Sign::Point), Err(over(one(101, 0), None)), "over the whole");
    check(percent("8,875", Sign::Comma), Err(over(one(8_875, 0), Some(one(8_875, 3)))), "grouped is over the whole");
    check(percent("1.2345678", Sign::Point), Err(Misread::TooFine { nearest: Quantity::Percent(one(1_234_568, 6)) }), "six decimals");
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
