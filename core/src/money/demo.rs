//! Both demo jobs from their lines to what is left, to the cent.

use super::charge::Terms;
use super::consign::{Consignment, Payer, ShareOf};
use super::cost::{self, DistanceRate, Line, Needs, Pack};
use super::fee::Fee;
use super::figures::{d, eur, shown, usd};
use super::left::Way;
use super::point::Points;
use super::price::{Hourly, Work, marks, multiple, proposed};
use super::rate::{Wanted, Year, rate};
use super::tax::{Tax, owed};
use crate::quantity::{Currency, Decimal, Length, Listed, Money, Side, Span};

const TAX: Tax = Tax { rate: Decimal::from_parts(55, 0, 0, false, 3), side: Side::Inside };
const CARD: Fee = Fee { share: Decimal::from_parts(26, 0, 0, false, 3), fixed: Decimal::from_parts(10, 0, 0, false, 2) };

#[track_caller]
fn check(sums: &[Money], wanted: Money) {
    let lines: Vec<_> = sums.iter().enumerate().map(|(kind, sum)| Line { kind, sum: *sum }).listed();
    assert_eq!(Needs::sum(wanted.currency(), &lines).map(|needs| needs.total), Ok(wanted));
}

fn dollars(quantity: &str, price: &str) -> Money {
    cost::used_up(d(quantity), d(price), Currency::USD).unwrap()
}

fn drive(miles: i64) -> Money {
    let rate = DistanceRate { amount: d("0.725"), per: Length::MILE };
    cost::distance(Length::MILE.times(miles).unwrap(), rate, Currency::USD).unwrap()
}

/// Costs at the bench 49.51, with the market 127.56.
#[test]
fn costs_of_the_stands() {
    check(&[drive(23), usd("11.40")], usd("28.08"));
    let can = Pack { paid: usd("34.90"), holds: d("32"), charged: usd("0") };
    let finish = cost::of_pack(&can, d("9.5")).unwrap();
    let discs = dollars("14", "0.62");
    let bench = [usd("15.91"), usd("2.33"), discs, finish, usd("2.20"), usd("3.25"), dollars("4.6", "0.17"), usd("6.00")];
    check(&bench, usd("49.51"));
    check(&[usd("49.51"), usd("65.00"), drive(18)], usd("127.56"));
    assert_eq!(multiple(usd("49.51"), d("3")).unwrap().amount() / d("5"), d("29.706"));
}

/// Two by card, two in notes, one by a plant shop: 610.26 comes in, 482.70 is left, 19.09 an hour.
#[test]
fn sales_of_the_stands() {
    let (card, notes) = (Terms { tax: TAX, fee: CARD }, Terms { tax: TAX, fee: Fee::NONE });
    let sales = [(card, "145"), (card, "145"), (notes, "145"), (notes, "130")];
    let lines = sales.map(|(terms, charge)| terms.tax.apart(usd(charge)).unwrap());
    assert_eq!(owed(&lines), Ok(Some(usd("29.46"))));
    check(&sales.map(|(terms, charge)| terms.fee.of(usd(charge)).unwrap()), usd("7.74"));
    let shop = Consignment { tax: TAX, keeps: d("0.4"), of: ShareOf::BeforeTax, payer: Payer::Gallery, tax_on_share: d("0") };
    let mut got = sales.map(|(terms, charge)| terms.you_get(usd(charge)).unwrap()).to_vec();
    got.push(shop.sold(usd("145")).unwrap().handed_over);
    check(&got, usd("610.26"));
    let way = Way { you_get: usd("610.26"), costs: usd("127.56"), time: Span::minutes(77 + 870 + 570) };
    assert_eq!(way.left(), Ok(usd("482.70")));
    let per = way.per_hour(Some(&year(420, 350, "1050"))).unwrap();
    assert_eq!([Some(per.left), per.after_workshop, per.every_hour].map(|r| shown(r.unwrap())), ["19.09", "16.09", "13.41"]);
}

/// One stand at the rate, from the year to the price point.
#[test]
fn price_of_a_stand() {
    let your_rate = rate(year(420, 350, "1050"), Wanted { pay: d("16"), own_tax: d("0"), profit: d("0") }).unwrap().per_hour;
    assert_eq!(your_rate, d("22.2"));
    let work = Work { costs: Some(usd("127.56")), driven: Decimal::ZERO, time: Some(Span::minutes(1517)), pieces: 5 };
    let terms = Terms { tax: TAX, fee: CARD };
    let marks = marks(&work, Hourly { lowest_pay: Some(d("12")), your_rate: Some(your_rate) }, terms, 1).unwrap();
    let all = [marks.costs_covered, marks.lowest_pay, marks.your_rate].map(Option::unwrap);
    assert_eq!(all.map(|mark| mark.half_up), [usd("27.78"), usd("93.61"), usd("149.56")]);
    assert_eq!(all.map(|mark| mark.holds), [usd("27.79"), usd("93.60"), usd("149.56")], "what screens show");
    let price = proposed(marks.your_rate.unwrap().need, terms, Points::Five, Currency::USD).unwrap();
    assert_eq!(price.tag, usd("150"));
}

/// Costs of the bench, 103.93.
#[test]
fn costs_of_the_bench() {
    let can = Pack { paid: eur("31.90"), holds: d("0.75"), charged: eur("0") };
    let finish = cost::of_pack(&can, d("0.24")).unwrap();
    let power = cost::used_up(d("7.9"), d("0.31"), Currency::EUR).unwrap();
    let km = DistanceRate { amount: d("0.30"), per: Length::KM };
    let drive = cost::distance(Length::KM.times(62).unwrap(), km, Currency::EUR).unwrap();
    let bench = [eur("11.31"), eur("4.10"), eur("9.86"), finish, eur("7.60"), eur("1.80"), power, eur("8.00"), drive, eur("30.00")];
    check(&bench, eur("103.93"));
}

fn year(all: i64, logged: i64, overhead: &str) -> Year {
    Year { all: Span::minutes(60 * all), logged: Span::minutes(60 * logged), overhead: d(overhead), wear: Decimal::ZERO }
}
