//! Published figures for quantities. Each row of `check_values.json` names its source; what stands there as recalled or computed
//! guards against change, it does not prove. Origins of the tables: `tests/checks/sources.md`.

use fivebar_core::quantity::{Cash, Currency, Day, Decimal, Id, Moment, Money, Offset, Wall, round_to_cash};
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::PathBuf;

fn file(name: &str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/checks").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("failed to read {}: {e}", path.display()))
}

/// The row of an id; it must name a source.
#[track_caller]
fn row(id: &str) -> Value {
    let all: Value = serde_json::from_str(&file("check_values.json")).unwrap();
    let rows = all["topics"].as_object().unwrap().values().flat_map(|topic| topic.as_array().unwrap());
    let row = rows.into_iter().find(|row| row["id"] == id).unwrap_or_else(|| panic!("no row {id}")).clone();
    assert!(row["source"].as_str().is_some_and(|source| !source.is_empty()), "{id} names no source");
    row
}

fn input(row: &Value, name: &str) -> f64 {
    row["inputs"][name].as_f64().unwrap()
}

/// The published figure within its own tolerance.
#[track_caller]
fn check(id: &str, ours: impl Fn(&Value) -> f64) {
    let row = row(id);
    let (expected, tolerance) = (row["expected"].as_f64().unwrap(), row["tolerance"].as_f64().unwrap());
    let ours = ours(&row);
    assert!((ours - expected).abs() <= tolerance, "{id}: {ours} for {expected} by {}", row["source"]);
}

/// Topic 8: VAT fractions by tax advisers, half up to the cent; `fee-grossup` is an identity.
#[test]
fn tax_inside_a_price_rounds_as_published() {
    let ids = ["120-20", "117.5-17.5", "115-15", "60-20", "80-5", "24-20", "24-17.5", "235-17.5", "210-5"];
    for id in ids.map(|id| format!("vat-{id}")) {
        check(&id, |row| {
            let read = |name: &str| Decimal::from_str_exact(&input(row, name).to_string()).unwrap();
            let rate = read("rate_pct");
            let tax = Money::book(read("gross") * rate / (Decimal::ONE_HUNDRED + rate), Currency::EUR).unwrap();
            tax.amount().to_string().parse().unwrap()
        });
    }
}

/// Topic 8: Government of Canada, phasing out the penny; Quebec consumer office.
#[test]
fn cash_in_canada() {
    let cad = Currency::read("CAD").unwrap();
    let five = Money::whole(Decimal::new(5, 2), cad).unwrap();
    for id in ["597", "101", "102", "103", "106", "108", "109", "105"].map(|cents| format!("cash5-{cents}")) {
        check(&id, |row| {
            let sum = Money::whole(Decimal::new(row["inputs"]["cents"].as_i64().unwrap(), 2), cad).unwrap();
            let rounded = round_to_cash(sum, Cash::of(five).unwrap()).unwrap();
            (rounded.amount() * Decimal::ONE_HUNDRED).to_string().parse().unwrap()
        });
    }
}

/// Topic 8: steps of Unicode CLDR currencyData for CHF, CAD, DKK.
#[test]
fn cash_steps_of_cldr() {
    let row = row("cash-chf");
    for (code, step) in ["CHF", "CAD", "DKK"].into_iter().zip(row["expected"].as_str().unwrap().split(',')) {
        assert_eq!(Cash::usual(Currency::read(code).unwrap()).as_minor_units().to_string(), step, "{code} by {}", row["source"]);
    }
}

/// Minor units: ISO 4217 list of 2024-06-25; cash steps: Unicode CLDR through Babel 2.18.0. Every row was read there.
#[test]
fn minor_units_of_currencies() {
    let table = file("currency_minor_units.csv");
    let mut n_rows = 0;
    for line in table.lines().skip(1) {
        let cells: Vec<&str> = line.split(',').collect();
        let [code, _, digits, _, _, cash, "read"] = cells.as_slice() else { panic!("{line}") };
        let currency = Currency::read(code).unwrap();
        assert_eq!(currency.digits().to_string(), *digits, "{code}");
        assert_eq!(Cash::usual(currency).as_minor_units(), cash.parse::<u32>().unwrap().max(1), "{code}");
        n_rows += 1;
    }
    assert_eq!(n_rows, 22);
}

/// Topic 8: the same in words, "JPY 0, KRW 0, ..., VND 0; KWD, ..., JOD 3; the rest of the table 2".
#[test]
fn minor_units_as_the_row_says_them() {
    let row = row("iso4217");
    let said = row["quantity"].as_str().unwrap().strip_prefix("minor digits: ").unwrap();
    let (some, rest) = said.rsplit_once("; the rest of the table ").unwrap();
    // A digit holds for the codes before it that have none yet.
    let mut digits: BTreeMap<&str, &str> = BTreeMap::new();
    let mut without = vec![];
    for word in some.split([' ', ',', ';']).filter(|word| !word.is_empty()) {
        match word.len() {
            3 => without.push(word),
            _ => digits.extend(without.drain(..).map(|code| (code, word))),
        }
    }
    assert_eq!((digits.len(), without.len(), rest), (10, 0, "2"));
    let table = file("currency_minor_units.csv");
    let codes: Vec<&str> = table.lines().skip(1).map(|line| &line[..3]).collect();
    assert!(digits.keys().all(|code| codes.contains(code)));
    for code in codes {
        let currency = Currency::read(code).unwrap();
        assert_eq!(currency.digits().to_string(), *digits.get(code).unwrap_or(&rest), "{code} by {}", row["source"]);
    }
}

/// Topic 11: RFC 9562, appendix A.6, read in the working group draft.
#[test]
fn the_name_of_rfc_9562() {
    let row = row("uuidv7");
    let text = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
    assert!(row["quantity"].as_str().unwrap().starts_with(&text.to_uppercase()));
    let ms = row["expected"].as_str().unwrap().split(',').next().unwrap().parse().unwrap();
    let chance = [0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
    assert_eq!(Id::new(Moment::at(ms), chance).to_string(), text);
    let there = Wall::new(Moment::at(ms), Offset::UTC);
    assert_eq!(date_and_minute(there), "2022-02-22T19:22");
    assert!(self::row("uuidv7-time")["expected"].as_str().unwrap().starts_with(&date_and_minute(there)));
}

fn date_and_minute(wall: Wall) -> String {
    let (year, month, day) = wall.day().as_ymd();
    let (hour, minute) = wall.clock().as_hour_minute();
    format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}")
}

/// Topic 11: RFC 3339, section 5.8. From memory, as the rows say; recomputed there.
#[test]
fn moments_of_rfc_3339() {
    for (id, ms, offset) in [("rfc3339-1996", 851_042_397_000, -480), ("rfc3339-1937", -1_041_337_172_130, 20)] {
        let row = row(id);
        assert_eq!(row["status"], "recalled");
        let (at, offset) = (Moment::at(ms), Offset::minutes(offset).unwrap());
        assert!(row["expected"].as_str().unwrap().starts_with(&date_and_minute(Wall::new(at, Offset::UTC))), "{id}");
        let local = Wall::new(at, offset);
        assert!(row["inputs"]["text"].as_str().unwrap().starts_with(&date_and_minute(local)), "{id}");
        let minute = local.day().at(local.clock(), offset);
        assert!((0..60_000).contains(&minute.until(at).as_ms()) && minute <= at, "{id}");
    }
}

/// Topic 11: ISO 8601 week dates, computed. Only the day of the week is ours.
#[test]
fn days_of_the_week() {
    for date in ["2020-12-31", "2021-01-03", "2021-01-04", "2024-12-30"] {
        let row = row(&format!("isoweek-{date}"));
        let [year, month, day] = date.split('-').map(|part| part.parse::<u32>().unwrap()).collect::<Vec<_>>()[..] else { panic!("{date}") };
        let weekday = Day::ymd(year.try_into().unwrap(), month, day).unwrap().weekday() + 1;
        assert!(row["expected"].as_str().unwrap().ends_with(&format!("-{weekday}")), "{date}");
    }
}
