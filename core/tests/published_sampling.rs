//! Chance, weighing and sampling against published rows, and against the log-gamma, Student's t and bell curve of another library.

mod published;

use fivebar_core::haul::enough::{Enough, Held, Least};
use fivebar_core::haul::rejects::{RejectShare, Seen};
use fivebar_core::haul::sample::{self, pieces_to_measure};
use fivebar_core::haul::weighing::{OnScale, Spread, Weighing};
use fivebar_core::plan::outlook::{Hoped, Pieces, outlook};
use fivebar_core::plan::parts::problem::{Part, Pile, Problem};
use fivebar_core::quantity::chance::{BELL_95, BetaBinomial, student};
use fivebar_core::quantity::{Count, Decimal, Grams, Length};
use published::{Ours, Row, check_all, table, topic};
use statrs::distribution::{ContinuousCDF, Normal, StudentsT};
use statrs::function::{beta::ln_beta, factorial::ln_binomial};

/// A figure with the digits the row shows.
fn shown(figure: f64, digits: u32) -> Decimal {
    Decimal::from_f64_retain(figure).unwrap().round_dp(digits)
}

fn float(row: &Row, name: &str) -> f64 {
    row.input(name).to_string().parse().unwrap()
}

fn whole(row: &Row, name: &str) -> Count {
    row.input(name).try_into().unwrap()
}

fn rejects(row: &Row) -> BetaBinomial {
    BetaBinomial::new(whole(row, "N"), float(row, "alpha"), float(row, "beta")).unwrap()
}

/// One standard deviation of a count of N pieces by `m` others: the same as of a pile of N + m that holds its sample, for what of it
/// is counted already is known, and N c sqrt(1/m + 1/N) = (N + m) c sqrt(1/m - 1/(N + m)).
fn count_by_weight(row: &Row) -> Vec<Decimal> {
    let (n, m) = (whole(row, "N"), whole(row, "m"));
    let pieces = |n: Count| OnScale::bare(Grams::new(i64::from(n) * 400).unwrap());
    let weighing = Weighing { counted: m, sample: pieces(m), pile: pieces(n + m) };
    vec![shown(weighing.count(Spread::guess(float(row, "cv"))).unwrap().spread, 4)]
}

/// A share of one half to within five in a hundred: as much spread as a share can have.
fn to_sort(row: &Row) -> Vec<Decimal> {
    let of = (!row.inputs("N").is_empty()).then(|| whole(row, "N"));
    vec![pieces_to_measure(0.5, 0.05, of).unwrap().into()]
}

#[test]
fn every_row_of_statistics() {
    use Ours::{Elsewhere, Figures};
    let none = "no interval of a proportion is shown: the share of rejects is a Beta";
    let asks = "belongs to people who ask and buy";
    check_all(
        &topic("5-statistics"),
        &[
            ("ci-*", Elsewhere(none)),
            ("hyper-2", Elsewhere("the share is never known, as it is of a pack of cards")),
            ("pois-*", Elsewhere(asks)),
            ("gamma-*", Elsewhere(asks)),
            ("binom-3", Elsewhere("the share is never known")),
            ("z14-*", Elsewhere("every piece is sorted; no lot is turned away by a sample")),
            (
                "betabinom-quantiles",
                Figures(|row| {
                    let (rejects, quantile) = (rejects(row), |q| Decimal::from(rejects(row).quantile(q)));
                    vec![quantile(0.05), quantile(0.5), quantile(0.95), shown(rejects.mean(), 4)]
                }),
            ),
            (
                "betabinom-vs-binom",
                Figures(|row| {
                    let (n, share) = (float(row, "N"), float(row, "alpha") / (float(row, "alpha") + float(row, "beta")));
                    vec![shown(rejects(row).spread(), 4), shown((n * share * (1.0 - share)).sqrt(), 4)]
                }),
            ),
            ("countweigh-samplesize", Figures(|row| vec![pieces_to_measure(float(row, "cv"), float(row, "rel"), None).unwrap().into()])),
            ("countweigh-*", Figures(count_by_weight)),
            ("fpc-*", Figures(to_sort)),
        ],
    );
}

/// Rejects left in an unsorted pile; its whole table, under both priors (computed by another library, summed a second way there).
#[test]
fn rejects_left_in_an_unsorted_pile() {
    let rows = table("betabinom_predictive.csv");
    assert_eq!(rows.len(), 12);
    for row in rows {
        let number = |column: &str| row[column].parse::<f64>().unwrap();
        let left = BetaBinomial::new(row["remaining_N"].parse().unwrap(), number("alpha"), number("beta")).unwrap();
        let near = |ours: f64, column: &str, within: f64| assert!((ours - number(column)).abs() <= within, "{row:?}: {column} {ours}");
        near(left.mean(), "mean", 5e-7);
        near(left.spread(), "sd", 5e-7);
        near(left.exactly(0), "p_zero", 5e-9);
        for (column, chance) in [("q05", 0.05), ("q10", 0.1), ("q25", 0.25), ("q50", 0.5), ("q75", 0.75), ("q90", 0.9), ("q95", 0.95)] {
            assert_eq!(f64::from(left.quantile(chance)), number(column), "{row:?}: {column}");
        }
    }
}

/// Where each piece gives one part and a set is one part, sure is what the table's 95 % leaves of the pile, and likely lies between what its
/// 90 and 75 % leave: by a thousand draws, so within four standard errors of the 95 %.
#[test]
fn sets_of_an_unsorted_pile() {
    let problem = Problem {
        piles: vec![Pile { id: "pile".into(), count: 1, length: 500, width: 50, thickness: 25 }],
        parts: vec![Part { id: "part".into(), per_set: 1, length: 500, width: 50, thickness: 25, glue: false, piles: None }],
        ..Problem::default()
    };
    for row in table("betabinom_predictive.csv") {
        let number = |column: &str| row[column].parse::<f64>().unwrap();
        let n: Count = row["remaining_N"].parse().unwrap();
        let share = [number("beta"), number("alpha")]; // good, rejected
        let found = outlook(
            &Hoped { problem: problem.clone(), piles: vec![Pieces { certain: 0, unsorted: n, share, lots: 7, kin: 7 }], known: vec![] },
            1,
        );
        let rejects = BetaBinomial::new(n, number("alpha"), number("beta")).unwrap();
        let four = 4.0 * found.off().unwrap();
        let near = i64::from(rejects.quantile(0.95 - four))..=i64::from(rejects.quantile(0.95 + four));
        let left = |sets: i64| i64::from(n) - sets;
        assert!(near.contains(&left(found.sure)) && near.contains(&(number("q95") as i64)), "{row:?}: {found:?}");
        assert!((number("q75") as i64..=number("q90") as i64).contains(&left(found.likely)), "{row:?}: {found:?}");
        assert_eq!((found.all, found.open), (i64::from(n), 0));
    }
}

/// The sum of every single chance, by another's log-gamma, up to a full pile.
#[test]
fn tails_by_another_hand() {
    for (n, a, b) in [(38_u32, 9.0, 3.0), (120, 0.5, 20.5), (200, 32.5, 8.5), (999, 9.0, 3.0), (999, 0.06, 19.94), (9_999, 2_010.0, 709.0)]
    {
        let ours = BetaBinomial::new(n, a, b).unwrap();
        let chance = |k: u32| {
            let (k, n) = (f64::from(k), f64::from(n));
            (ln_binomial(n as u64, k as u64) + ln_beta(k + a, n - k + b) - ln_beta(a, b)).exp()
        };
        for k in [1, n / 4, n / 2, n * 7 / 10, n * 3 / 4, n * 9 / 10, n] {
            let theirs: f64 = (k..=n).map(chance).sum();
            assert!((ours.at_least(k) - theirs).abs() < 1e-9, "{k} of {n}: {} and {theirs}", ours.at_least(k));
        }
    }
}

#[test]
fn students_t_and_the_bell_by_another_hand() {
    for free in (1..=40).chain([59, 60, 119, 120, 998, 9_998]) {
        let theirs = StudentsT::new(0.0, 1.0, f64::from(free)).unwrap();
        for chance in [0.5, 0.8, 0.9, 0.95, 0.99] {
            let ours = student(chance, free).unwrap();
            assert!((theirs.cdf(ours) - f64::midpoint(1.0, chance)).abs() < 1e-9, "{chance} {free}: {ours}");
        }
    }
    let bell = Normal::new(0.0, 1.0).unwrap();
    assert!((bell.cdf(BELL_95) - 0.975).abs() < 1e-10);
}

/// The least count by walking up one piece at a time, from sums by another's log-gamma.
#[test]
fn the_least_count_by_another_hand() {
    let chance = |wanted: u32, n: u32, (a, b): (f64, f64)| -> f64 {
        let one = |k: u32| (ln_binomial(n.into(), k.into()) + ln_beta(f64::from(k) + a, f64::from(n - k) + b) - ln_beta(a, b)).exp();
        (wanted..=n).map(one).sum()
    };
    for (wanted, seen) in [(1, (0, 0)), (20, (0, 0)), (25, (0, 0)), (20, (9, 29)), (60, (17, 47)), (40, (9, 0))] {
        let (rejected, good) = seen;
        let share = RejectShare::guess().after(Seen { rejected, good, ..Seen::default() });
        let walk = |sure: f64| (wanted..).find(|n| sure <= chance(wanted, *n, (f64::from(9 + good), f64::from(3 + rejected)))).unwrap();
        let enough = Enough::of(wanted, Held::default(), &share).unwrap();
        assert_eq!((enough.likely, enough.sure), (Least::Taken(walk(0.8)), Least::Taken(walk(0.95))), "{wanted} {seen:?}");
    }
}

/// OpenStax, Introductory Statistics, example 8.8 (recalled): fifteen readings of sensory rate, 8.2267 on the mean, 95 % from 7.30 to
/// 9.15 of a population without end; the fullest pile comes within a thousandth of that.
#[test]
fn an_interval_of_fifteen_readings() {
    let readings = [8.6, 9.4, 7.9, 6.8, 8.3, 7.3, 9.2, 9.6, 8.7, 11.4, 10.3, 5.4, 8.1, 5.5, 6.9];
    let sides = readings.map(|mm: f64| Length::nm((mm * 1e6).round() as i64).unwrap());
    let found = sample::length(&sides, 9_999).unwrap();
    let (low, high) = found.ends();
    let mm = |length: Length| length.as_nm() as f64 / 1e6;
    assert!((mm(found.mean) - 8.2267).abs() < 5e-5);
    assert!((mm(low) - 7.30).abs() < 0.006 && (mm(high) - 9.15).abs() < 0.006, "{low:?} {high:?}");
}

/// All samples of six of a pile of twelve: how far their means lie from the pile's is what the finite-population factor says, exactly;
/// and how far the weighed counts lie from twelve, nearly, for pieces that differ little.
#[test]
fn every_sample_of_a_small_pile() {
    let pile = [391.0, 397.0, 399.0, 400.0, 402.0, 403.0, 404.0, 405.0, 408.0, 410.0, 411.0, 412.0_f64];
    let (n, k) = (12_u32, 6_u32);
    let all: f64 = pile.iter().sum();
    let samples: Vec<f64> = (0_u32..1 << n)
        .filter(|set| set.count_ones() == k)
        .map(|set| (0..12).filter(|i| set >> i & 1 == 1).map(|i| pile[i]).sum::<f64>())
        .collect();
    assert_eq!(samples.len(), 924);
    let root_mean = |off: &dyn Fn(&f64) -> f64| (samples.iter().map(|s| off(s) * off(s)).sum::<f64>() / 924.0).sqrt();
    let mean = all / 12.0;
    let spread = (pile.iter().map(|w| (w - mean) * (w - mean)).sum::<f64>() / 11.0).sqrt() / mean;
    let factor = sample::off_within(k, n);
    assert!((root_mean(&|s| s / 6.0 / mean - 1.0) - spread * factor).abs() < 1e-12);
    let counted = root_mean(&|s| all / (s / 6.0) - 12.0);
    assert!((counted / (12.0 * spread * factor) - 1.0).abs() < 0.01, "{counted}");
}
