//! Costs, rates, break-even, tax, fees and consignment against figures that others published, misprints among them.

mod published;

use fivebar_core::money::charge::Terms;
use fivebar_core::money::consign::{Consignment, Handed, Payer, ShareOf};
use fivebar_core::money::cost::{self, CostKind, DistanceRate, Line, Needs};
use fivebar_core::money::cover::pieces_to_cover;
use fivebar_core::money::fee::Fee;
use fivebar_core::money::left::Way;
use fivebar_core::money::mileage;
use fivebar_core::money::point::Points;
use fivebar_core::money::price::{multiple, proposed};
use fivebar_core::money::rate::{Rate, Wanted, Year, rate};
use fivebar_core::money::resale::Resale;
use fivebar_core::money::tax::Tax;
use fivebar_core::money::wear::{FirstYear, Spread, Tool};
use fivebar_core::quantity::{Count, Currency, Day, Decimal, Length, Money, Side, Span, half_up};
use published::{Ours, Row, check_all, table, topic, worked_examples};

use Ours::{Elsewhere, Figures};

const CASH: Ours = Elsewhere("coins and minor units belong to quantity");

fn n(whole: i64) -> Decimal {
    Decimal::from(whole)
}

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn usd(amount: Decimal) -> Money {
    Money::book(amount, Currency::USD).unwrap()
}

fn count(pieces: Count) -> Decimal {
    Decimal::from(pieces)
}

fn hours(hours: Decimal) -> Span {
    Span::ms(i64::try_from(hours * n(3_600_000)).unwrap())
}

fn sum(parts: &[Decimal]) -> Decimal {
    let lines: Vec<_> = parts.iter().map(|part| Line { kind: CostKind::Bought, sum: usd(*part) }).collect();
    Needs::sum(Currency::USD, &lines).unwrap().total.amount()
}

fn used_up(quantity: Decimal, price: Decimal) -> Decimal {
    cost::used_up(quantity, price, Currency::USD).unwrap().amount()
}

fn covers(ahead: Decimal, price: Decimal, variable: Decimal) -> Decimal {
    count(pieces_to_cover(ahead, price, variable).unwrap())
}

fn left(you_get: Decimal, costs: Decimal) -> Decimal {
    Way { you_get: usd(you_get), costs: usd(costs), time: Span::ZERO }.left().unwrap().amount()
}

/// Workshop costs by the hour.
fn by_hour(costs: Decimal, logged: Decimal) -> Decimal {
    let time = hours(logged);
    Year { all: time, logged: time, overhead: costs, wear: Decimal::ZERO }.workshop_per_hour().unwrap()
}

/// A rate over hours that are all charged, for so much pay in all.
fn plain_rate(pay_in_all: Decimal, overhead: Decimal, logged: Decimal, own_tax: Decimal, profit: Decimal) -> Rate {
    let time = hours(logged);
    let year = Year { all: time, logged: time, overhead, wear: Decimal::ZERO };
    rate(year, Wanted { pay: pay_in_all / logged, own_tax, profit }).unwrap()
}

fn inside(per_cent: Decimal) -> Tax {
    Tax { rate: per_cent / n(100), side: Side::Inside }
}

fn on_top(per_cent: Decimal) -> Tax {
    Tax { rate: per_cent / n(100), side: Side::Top }
}

#[test]
fn costs() {
    check_all(
        &topic("7-cost"),
        &[
            ("pohr-1", Figures(|_| vec![by_hour(n(250_000), n(100_000))])),
            ("job-1", Figures(|_| vec![sum(&[n(700), n(66), used_up(n(66), d("2.50"))])])),
            ("job-cogm", Figures(|_| vec![sum(&[n(1000), n(2681), n(-1025)]), sum(&[n(1531), n(2656), n(-1725)])])),
            ("job-*", Figures(|row| vec![sum(&row.inputs("parts"))])),
            ("pohr-4", Figures(overhead_by_hour)),
            ("be-1-sales", Figures(|_| vec![covers(n(18_000), n(100), n(20)) * n(100)])),
            ("be-1-profit", Figures(|_| [300, 225, 175].map(|sold| left(n(100 * sold), n(20 * sold + 18_000))).to_vec())),
            ("be-1", Figures(|_| vec![covers(n(18_000), n(100), n(20))])),
            ("be-2", Figures(|_| vec![covers(n(20_000), n(400), n(250))])),
            ("be-3", Figures(break_even_with_safety)),
            ("be-4", Figures(break_even_with_profit)),
            ("markup-*", Figures(|row| vec![multiple(usd(row.input("cost")), row.input("markup") + n(1)).unwrap().amount()])),
            ("margin-*", Elsewhere("an identity: `a_shop_puts_its_markup_on_what_it_pays`")),
            ("dep-sl", Figures(|_| vec![wear(tool(58_000, 10_000, 5), Spread::Straight)[0]])),
            ("dep-up", Figures(|_| vec![by_use(tool(58_000, 10_000, 5), 1, 960_000), by_use(tool(58_000, 10_000, 5), 180_000, 960_000)])),
            ("dep-ddb", Figures(|row| wear(whole_tool(row), Spread::Declining { share: d("0.4") }))),
            ("dep-2", Figures(|_| three_ways(tool(10_000, 1_000, 5)))),
            ("macrs-*", Elsewhere("the table below")),
            ("se-3", Elsewhere("above the wage base a part of the tax stops: no one share of the profit, and the maker enters one")),
            ("se-*", Figures(own_work_tax)),
            ("mileage-trip", Figures(|_| vec![drive(84, mileage::us(Day::ymd(2025, 5, 1).unwrap()).unwrap())])),
            ("mileage", Elsewhere("the table below")),
            ("homeoffice-*", Elsewhere("what a tax return allows for a room; workshop costs are what the maker says they are")),
            ("cca-4y", Figures(|_| half_first(tool(150_000, 0, 4), Spread::Declining { share: d("0.2") })[..4].to_vec())),
            ("cca", Figures(pool_of_a_class)),
            ("shoprate", Figures(|row| vec![shop_rate(row)])),
        ],
    );
}

fn tool(cost: i64, salvage: i64, years: u32) -> Tool {
    Tool { cost: usd(n(cost)), salvage: usd(n(salvage)), years }
}

fn whole_tool(row: &Row) -> Tool {
    let years = u32::try_from(row.input("years")).unwrap();
    Tool { cost: usd(row.input("cost")), salvage: usd(row.input("salvage")), years }
}

fn wear(tool: Tool, spread: Spread) -> Vec<Decimal> {
    tool.wear(spread, FirstYear::Whole).unwrap()
}

fn half_first(tool: Tool, spread: Spread) -> Vec<Decimal> {
    tool.wear(spread, FirstYear::Half).unwrap()
}

fn by_use(tool: Tool, used: i64, of: i64) -> Decimal {
    tool.wear_by_use(n(used), n(of)).unwrap()
}

fn three_ways(tool: Tool) -> Vec<Decimal> {
    let declining = wear(tool, Spread::Declining { share: d("0.4") });
    let used = [20_000, 30_000].map(|used| by_use(tool, used, 100_000));
    [vec![wear(tool, Spread::Straight)[0]], used.to_vec(), declining[..2].to_vec()].concat()
}

/// What was there carries a whole year, what was bought in it a half.
fn pool_of_a_class(_: &Row) -> Vec<Decimal> {
    let spread = Spread::Declining { share: d("0.2") };
    vec![wear(tool(49_000, 0, 10), spread)[0] + half_first(tool(20_000, 0, 10), spread)[0]]
}

/// `macrs_half_year.csv`: percentages by years of a class, as printed (IRS Pub. 946, table A-1, read in a copy), to the hundredth.
#[test]
fn halves_of_a_year_are_the_printed_table() {
    for line in table("macrs_half_year.csv") {
        let (class, year): (u32, usize) = (line["class_years"].parse().unwrap(), line["year"].parse().unwrap());
        let share = n(2) / Decimal::from(class);
        let wear = half_first(tool(100, 0, class), Spread::DecliningThenStraight { share });
        assert_eq!(wear.len(), class as usize + 1);
        assert!((wear.iter().sum::<Decimal>() - n(100)).abs() < d("0.000001"), "{class}: all of it");
        let (printed, again): (Decimal, Decimal) = (d(&line["percent_printed_read"]), d(&line["percent_recomputed"]));
        let ours = wear[year - 1];
        assert!((ours - printed).abs() <= d("0.01") && (ours - again).abs() <= d("0.0001"), "{class} years, year {year}: {ours}");
    }
}

fn overhead_by_hour(_: &Row) -> Vec<Decimal> {
    let by_hour = by_hour(n(500_000), n(25_000));
    let overhead = used_up(n(100), by_hour);
    vec![by_hour, overhead, sum(&[n(800), n(1200), overhead])]
}

fn break_even_with_safety(_: &Row) -> Vec<Decimal> {
    let (even, safe) = (covers(n(85_000), n(90), n(40)), covers(n(95_000), n(90), n(40)));
    vec![even, even * n(90), safe, safe * n(90)]
}

fn break_even_with_profit(_: &Row) -> Vec<Decimal> {
    let (price, variable, fixed) = (n(30), d("14.50"), n(13_268));
    let income = left(n(1210) * price, n(1210) * variable + fixed);
    vec![covers(fixed, price, variable), income, covers(fixed + n(21_000), price, variable)]
}

/// The rate that pays the tax out of itself: of a net profit, what is left after tax is the pay, and the rate must be that profit.
fn own_work_tax(row: &Row) -> Vec<Decimal> {
    let (net, s) = (row.input("net_profit"), d("0.9235") * d("0.153"));
    let rate = plain_rate(net * (Decimal::ONE - s), Decimal::ZERO, n(1), s, Decimal::ZERO);
    assert_eq!(rate.per_hour.round_dp(6), net);
    vec![rate.tax]
}

fn shop_rate(row: &Row) -> Decimal {
    plain_rate(row.input("pay"), row.input("overhead"), row.input("billable_h"), Decimal::ZERO, Decimal::ZERO).per_hour
}

fn drive(miles: i64, per_mile: Decimal) -> Decimal {
    let rate = DistanceRate { amount: per_mile, per: Length::MILE };
    cost::distance(Length::MILE.times(miles).unwrap(), rate, Currency::USD).unwrap().amount()
}

/// `us_mileage_rates.csv`: every period of the printed table, on its first and last day. Its source stands in row `mileage`: notices of the
/// Internal Revenue Service (IRS), as accountants tabulate them (read there; the notices themselves were not seen). One glossary prints 70 cents
/// for 2026; the announcement says 72.5.
#[test]
fn mileage_rates() {
    let rows = table("us_mileage_rates.csv");
    assert_eq!(rows.len(), mileage::US.len());
    let named = topic("7-cost").into_iter().find(|row| row.id == "mileage").unwrap();
    assert_eq!((named.source.as_str(), named.status.as_str()), ("IRS annual notices as tabulated by accountants", "read"));
    assert!(rows.iter().all(|row| row["status"] == "read"));
    for row in &rows {
        let (year, months) = row["period"].split_once(' ').unwrap_or((row["period"].as_str(), "Jan-Dec"));
        let (first, last) = match months {
            "Jan-Jun" => ((1, 1), (6, 30)),
            "Jul-Dec" => ((7, 1), (12, 31)),
            _ => ((1, 1), (12, 31)),
        };
        for (month, day) in [first, last] {
            let at = Day::ymd(year.parse().unwrap(), month, day).unwrap();
            assert_eq!(mileage::us(at).unwrap() * n(100), d(&row["business_cents_per_mile"]), "{row:?}");
        }
    }
}

/// The cost-plus prices again, of a shop that keeps the margin of its markup, m / (1 + m), of its price before tax.
#[test]
fn a_shop_puts_its_markup_on_what_it_pays() {
    let of = |start: &str| topic("7-cost").into_iter().filter(|row| row.id.starts_with(start)).collect::<Vec<Row>>();
    let margin = |row: &Row| row.input("markup") / (n(1) + row.input("markup"));
    assert_eq!((of("markup-").len(), of("margin-").len()), (4, 3));
    of("margin-").iter().for_each(|row| row.check(&[margin(row)]));
    for row in of("markup-") {
        let (cost, shop) = (usd(row.input("cost")), Resale { keeps: margin(&row), tax: Tax::NONE });
        let price = shop.tag(cost, Points::Minor).unwrap();
        row.check(&[price.amount()]);
        assert_eq!(shop.pays(price), Ok(cost), "{}", row.id);
    }
}

#[test]
fn prices() {
    check_all(
        &topic("8-price"),
        &[
            ("vat-*", Figures(|row| vec![inside(row.input("rate_pct")).apart(usd(row.input("gross"))).unwrap().tax.amount()])),
            ("fee-grossup", Figures(grossed_up)),
            ("cash*", CASH),
            ("iso4217", CASH),
        ],
    );
}

/// Fee on top falls short, the least charge whose booked takings cover the need does not.
fn grossed_up(row: &Row) -> Vec<Decimal> {
    let fee = Fee { share: row.input("rate"), fixed: row.input("fixed") };
    let terms = Terms { tax: Tax::NONE, fee };
    let added = usd(n(100) + fee.of(usd(n(100))).unwrap().amount());
    assert_eq!(terms.you_get(added).unwrap(), usd(d("99.91")));
    vec![proposed(row.input("net"), terms, Points::Minor, Currency::USD).unwrap().charge.amount()]
}

#[test]
fn worked() {
    check_all(
        &worked_examples(),
        &[
            ("eu-wood-*", Elsewhere("wood")),
            ("rate-accountant", Figures(accountant)),
            ("rate-hours-year", Figures(hours_year)),
            ("rate-days", Figures(days)),
            ("rate-idle-hour", Figures(idle_hour)),
            ("rate-craft-hour-vat", Figures(craft_hour)),
            ("rate-craft-hour-44", Figures(|row| vec![sum(&row.inputs("parts"))])),
            ("consign-gallery-vat-total", Figures(|row| vec![gallery(row).tax.amount() + gallery(row).gallery_tax.amount()])),
            ("consign-gallery-vat", Figures(gallery_vat)),
            ("consign-sales-tax", Figures(|row| vec![on_top(row.input("tax_pct")).charge(usd(row.input("price"))).unwrap().amount()])),
            ("consign-part-sold", Figures(part_sold)),
            ("vat-card-fee", Figures(card_fee)),
            ("be-extension-prices", Figures(four_prices)),
            ("be-bulletin", Figures(bulletin)),
            ("be-university", Figures(university)),
            (
                "stall-growth",
                Elsewhere(
                    "sales that grow from year to year: a stall is reckoned for its one day, and nothing is foretold of the next ones",
                ),
            ),
            ("craft-third-overhead", Figures(third_overhead)),
        ],
    );
}

fn accountant(row: &Row) -> Vec<Decimal> {
    let overhead = sum(&row.inputs("overheads"));
    let logged = row.input("hours_per_week") * row.input("weeks");
    let pay = row.input("net_wanted") + row.input("tax_and_insurance");
    let rate = plain_rate(pay, overhead, logged, Decimal::ZERO, Decimal::ZERO).per_hour;
    vec![overhead, rate * logged, rate]
}

/// Of all hours of a year less those off a share is not logged; the rate for the guide's 80,000 is by the hours that are.
fn hours_year(row: &Row) -> Vec<Decimal> {
    let all = row.input("gross_hours") - row.inputs("off_hours").iter().sum::<Decimal>();
    let idle = all * row.input("not_chargeable_share");
    let year = Year { all: hours(all), logged: hours(all - idle), overhead: Decimal::ZERO, wear: Decimal::ZERO };
    let wanted = Wanted { pay: n(80_000) / all, own_tax: Decimal::ZERO, profit: Decimal::ZERO };
    assert_eq!(half_up(rate(year, wanted).unwrap().per_hour, 2), d("59.26"));
    vec![idle, all - idle]
}

fn days(row: &Row) -> Vec<Decimal> {
    let days = row.input("weekdays") - row.inputs("days_off").iter().sum::<Decimal>();
    let long = row.input("hours_per_day");
    let rate = plain_rate(row.input("pay"), row.input("overheads"), days * long, Decimal::ZERO, row.input("profit_share"));
    vec![days, rate.workshop * long, rate.pay * long, rate.profit * long, rate.per_hour * long, rate.per_hour]
}

fn idle_hour(row: &Row) -> Vec<Decimal> {
    let [costs, full, short, price, filler] = ["monthly_cost", "hours", "short_hours", "rate", "filler_rate"].map(|i| row.input(i));
    let paid = |time: Decimal, price| cost::helper(price, hours(time), 1, Currency::USD).unwrap().amount();
    let filled = paid(short, price) + paid(full - short, filler);
    vec![by_hour(costs, full), left(paid(full, price), costs), left(paid(short, price), costs), left(filled, costs)]
}

fn craft_hour(row: &Row) -> Vec<Decimal> {
    let (tag, tax) = (sum(&row.inputs("parts")), on_top(row.input("vat_pct")));
    let charge = tax.charge(usd(tag)).unwrap();
    vec![tag, tax.apart(charge).unwrap().tax.amount(), charge.amount()]
}

fn gallery(row: &Row) -> Handed {
    let vat = on_top(row.input("vat_pct"));
    let keeps = row.input("commission_share");
    let agreed = Consignment { tax: vat, keeps, of: ShareOf::BeforeTax, payer: Payer::Maker, tax_on_share: vat.rate };
    agreed.sold(usd(row.input("price_net"))).unwrap()
}

fn gallery_vat(row: &Row) -> Vec<Decimal> {
    let sold = gallery(row);
    let takes = sold.gallery.plus(sold.gallery_tax).unwrap();
    [sold.tax, sold.gallery_tax, takes, sold.handed_over, sold.you_get].map(Money::amount).to_vec()
}

fn part_sold(row: &Row) -> Vec<Decimal> {
    let (pieces, sold) = (row.input("pieces"), row.input("sold"));
    let each = row.input("unit_cost") + row.input("freight") / pieces;
    let keeps = row.input("commission_share");
    let agreed = Consignment { tax: Tax::NONE, keeps, of: ShareOf::WithTax, payer: Payer::Maker, tax_on_share: Decimal::ZERO };
    let handed = agreed.sold(usd(sold * row.input("price"))).unwrap().handed_over.amount();
    vec![handed, left(handed, used_up(sold, each)), used_up(pieces - sold, each)]
}

fn card_fee(row: &Row) -> Vec<Decimal> {
    let fee = Fee { share: row.input("fee_share"), fixed: row.input("fee_fixed") };
    let (terms, gross) = (Terms { tax: inside(row.input("vat_pct")), fee }, usd(row.input("gross")));
    let tax = terms.tax.apart(gross).unwrap().tax;
    [tax, fee.of(gross).unwrap(), terms.you_get(gross).unwrap()].map(Money::amount).to_vec()
}

fn four_prices(row: &Row) -> Vec<Decimal> {
    row.inputs("prices").into_iter().map(|price| covers(row.input("fixed"), price, row.input("variable"))).collect()
}

fn bulletin(row: &Row) -> Vec<Decimal> {
    let even = covers(row.input("fixed"), row.input("price"), row.input("variable"));
    vec![even, even * row.input("price")]
}

/// A factory's sums are beyond what a maker's book may hold, so only the pieces are ours.
fn university(row: &Row) -> Vec<Decimal> {
    let [revenue, variable, fixed, margin] = ["revenue", "variable", "fixed", "margin_per_unit"].map(|i| row.input(i));
    vec![revenue - variable, revenue - variable - fixed, covers(fixed, margin, Decimal::ZERO)]
}

fn third_overhead(row: &Row) -> Vec<Decimal> {
    let [materials, labour, third] = ["materials", "labour", "overhead_share_of_larger"].map(|i| row.input(i));
    let overhead = materials.max(labour) * third;
    let all = materials + labour + overhead;
    vec![usd(overhead).amount(), usd(all).amount(), usd(all * n(2)).amount()]
}

/// Misprints that stand in notes beside a right figure: a book's rate of 1.50 that can't give 165 on 66, its 170,000 for 171,000,
/// and an answer page's 2,210 pieces.
#[test]
fn misprints_in_notes() {
    assert_ne!(used_up(n(66), d("1.50")), n(165));
    assert_eq!(used_up(n(66), d("2.50")), n(165));
    assert_ne!(covers(n(95_000), n(90), n(40)) * n(90), n(170_000));
    assert_ne!(covers(n(13_268 + 21_000), n(30), d("14.50")), n(2_210));
}
