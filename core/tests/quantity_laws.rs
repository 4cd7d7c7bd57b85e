//! Laws of quantities: what is written reads back the same, any text has an answer, sums do not depend on their order.

use fivebar_core::quantity::reading::{self, Misread, Sign, Typing};
use fivebar_core::quantity::{Cash, Clock, Currency, Decimal, Length, Mass, Money, Span, Units, exact, round_to_cash, writing};
use proptest::prelude::*;

fn typing() -> impl Strategy<Value = Typing> {
    (prop_oneof![Just(Units::Inch), Just(Units::Metric)], sign()).prop_map(|(units, sign)| Typing { units, sign })
}

fn sign() -> impl Strategy<Value = Sign> {
    prop_oneof![Just(Sign::Point), Just(Sign::Comma)]
}

fn currency() -> impl Strategy<Value = Currency> {
    proptest::sample::select(Currency::all().collect::<Vec<_>>())
}

/// A sum of whole minor units up to the limit, either way.
fn money(currency: Currency, minor: i64) -> Money {
    Money::whole(Decimal::new(minor, currency.digits()), currency).unwrap()
}

/// Nanometres on the grids people measure by, and between them.
fn length() -> impl Strategy<Value = Length> {
    let within = |nm: i64| Length::nm(nm.clamp(1_000_000, 20_000_000_000)).unwrap();
    prop_oneof![
        (3_i64..50_000).prop_map(move |n| within(n * 396_875)),
        (1_i64..20_000).prop_map(move |n| within(n * 1_000_000)),
        (1_i64..78_000_000).prop_map(move |n| within(n * 254)),
        (1_000_i64..20_000_000).prop_map(move |n| within(n * 1_000)),
        (1_000_000_i64..=20_000_000_000).prop_map(within),
    ]
}

proptest! {
    #[test]
    fn a_length_reads_back(length in length(), typing in typing()) {
        let text = writing::length(length, typing);
        prop_assert_eq!(reading::length(&text, typing), Ok(length), "{}", text);
    }

    #[test]
    fn a_length_rounded_to_a_64th_is_within_half_of_one(length in length()) {
        let parts = writing::inch_parts(length);
        let (num, den) = (i64::from(parts.num), i64::from(parts.den));
        let nm = (parts.whole * 64 + num * (64 / den)) * 396_875;
        prop_assert!((nm - length.as_nm()).abs() * 2 <= 396_875);
        prop_assert_eq!(parts.exact, nm == length.as_nm());
        prop_assert!(num < den && (num == 0 && den == 1 || num % 2 == 1), "lowest terms: {:?}", parts);
    }

    #[test]
    fn a_distance_reads_back(nm in 0_i64..=10_000_000_000_000_000, thousandths in 0_i64..6_000_000, typing in typing()) {
        for distance in [Length::nm(nm).unwrap(), Length::nm(thousandths * 1_609_344_000).unwrap()] {
            let text = writing::distance(distance, typing);
            prop_assert_eq!(reading::distance(&text, typing), Ok(distance), "{}", text);
        }
    }

    #[test]
    fn money_reads_back(currency in currency(), minor in 0_i64..=1_000_000_000, sign in sign()) {
        let sum = money(currency, minor);
        let text = writing::money(sum, sign);
        prop_assert_eq!(reading::money(&text, currency, sign), Ok(sum), "{}", text);
    }

    #[test]
    fn a_span_reads_back(ms in 0_i64..=172_800_000, minutes in 0_i64..=2_880, sign in sign()) {
        for span in [Span::ms(ms), Span::minutes(minutes)] {
            let text = writing::span(span, sign);
            prop_assert_eq!(reading::span(&text, sign, Span::RUN_MOST), Ok(span), "{}", text);
        }
    }

    #[test]
    fn a_clock_reads_back(minutes in 0_u16..1_440) {
        let clock = Clock::minutes(minutes).unwrap();
        prop_assert_eq!(reading::clock(&writing::clock(clock)), Ok(clock));
    }

    #[test]
    fn a_weight_reads_back(milligrams in 0_u32..=1_000_000_000, typing in typing()) {
        let mass = Mass::kg(f64::from(milligrams) / 1e6);
        let text = writing::mass(mass, typing);
        let read = reading::mass(&text, typing).unwrap();
        prop_assert!((read.as_kg() - mass.as_kg()).abs() <= mass.as_kg() * 1e-12 + 1e-12, "{}", text);
        prop_assert!(typing.units == Units::Inch || read == mass, "{}", text);
    }

    #[test]
    fn a_bare_number_reads_back(millionths in 0_i64..=999_999_999_999, places in 0_u32..=6, n in 0_u32..10_000, sign in sign()) {
        let figure = Decimal::new(millionths, places).normalize();
        let most = Decimal::from(1_000_000_000_000_i64);
        prop_assert_eq!(reading::number(&writing::decimal(figure, sign), sign, Decimal::ZERO..=most), Ok(figure));
        prop_assert_eq!(reading::count(&writing::decimal(n.into(), sign), sign, 9_999), Ok(n));
    }

    #[test]
    fn an_exact_decimal_has_one_spelling(mantissa in any::<i64>(), scale in 0_u32..=28) {
        let figure = Decimal::new(mantissa, scale);
        prop_assert_eq!(exact::read(&exact::write(figure)), Some(figure));
    }

    #[test]
    fn the_comma_before_three_digits_is_never_guessed(whole in 1_u32..=999, part in 0_u32..=999, typing in typing()) {
        let text = format!("{whole},{part:03}");
        let is_refused = |no: Result<Length, Misread>| matches!(no, Err(Misread::Ambiguous { .. } | Misread::OutOfRange { .. }));
        prop_assert!(is_refused(reading::length(&text, typing)), "{}", text);
        let money = reading::money(&text, Currency::USD, typing.sign);
        prop_assert!(matches!(money, Err(Misread::Ambiguous { .. })), "{}", text);
    }

    #[test]
    fn any_text_has_an_answer(text in any::<String>(), near in "[0-9 .,'\"/½⅛hminkgftc:%$€apPM-]{0,20}", typing in typing()) {
        for text in [text, near] {
            let _ = reading::length(&text, typing);
            let _ = reading::thickness(&text, typing);
            let _ = reading::distance(&text, typing);
            let _ = reading::mass(&text, typing);
            let _ = reading::span(&text, typing.sign, Span::RUN_MOST);
            let _ = reading::clock(&text);
            let _ = reading::money(&text, Currency::USD, typing.sign);
            let _ = reading::percent(&text, typing.sign);
            let _ = reading::count(&text, typing.sign, 9_999);
        }
    }

    #[test]
    fn inv07_a_sum_does_not_depend_on_its_order(mut minor in prop::collection::vec(-1_000_000_i64..=1_000_000, 0..40), currency in currency()) {
        let sum = |minor: &[i64]| Money::sum(currency, minor.iter().map(|m| money(currency, *m))).unwrap();
        let forward = sum(&minor);
        minor.reverse();
        prop_assert_eq!(sum(&minor), forward);
        minor.sort_unstable();
        prop_assert_eq!(sum(&minor), forward);
    }

    #[test]
    fn a_refund_reverses_a_sale(mantissa in -1_000_000_000_i64..=1_000_000_000, scale in 2_u32..=6, step in 1_u32..=100_000) {
        let exact = Decimal::new(mantissa, scale);
        let (there, back) = (Money::book(exact, Currency::USD).unwrap(), Money::book(-exact, Currency::USD).unwrap());
        prop_assert!(there.plus(back).unwrap().is_zero());
        let coin = Money::book(Decimal::new(step.into(), 2), Currency::USD).unwrap();
        let cash = |sum| round_to_cash(sum, Cash::of(coin).unwrap()).unwrap();
        prop_assert!(cash(there).plus(cash(back)).unwrap().is_zero());
        let off = (cash(there).amount() - there.amount()).abs();
        prop_assert!(off * Decimal::TWO <= Decimal::new(step.into(), 2));
    }
}
