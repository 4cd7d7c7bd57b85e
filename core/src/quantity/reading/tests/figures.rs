//! Money, time, weight, counts and per cent.

use super::super::super::{Clock, Currency, Decimal, Mass, Money, PILE_MOST, Span};
use super::*;

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
        ("12.-", usd, 1_200),
        ("12,\u{2013} €", eur, 1_200),
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
        ("30 min 1 h", met("1 h")),
        ("1 h 75", met("75")),
        ("1.5h30", met("1.5h")),
        ("1 h 1/2", met("1/2")),
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
        check(clock(text), Err(Misread::NotAClock { met: text.into() }), text);
    }
}

#[test]
fn counts_weights_and_per_cent() {
    let most = PILE_MOST;
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
