//! Estimates against published rows: work study, learning curves, three-point estimates; and against the log-normal of another library.

mod published;

use fivebar_core::bench::estimate::factor::allowed;
use fivebar_core::bench::estimate::gain::Wright;
use fivebar_core::bench::estimate::spread::{Likely, bell, together};
use fivebar_core::bench::pace::pace;
use fivebar_core::quantity::{Decimal, Span};
use published::{Ours, Row, check_all, table, topic};
use statrs::distribution::{ContinuousCDF, LogNormal, Normal};

/// A figure with the digits the row shows.
fn shown(figure: f64, digits: u32) -> Decimal {
    Decimal::from_f64_retain(figure).unwrap().round_dp(digits)
}

fn law(share: f64) -> Wright {
    Wright::doubling(share)
}

/// Observed 27, 19, 20, 21 and 13 s; the rating 1.20 and the allowance 0.20 of the row. A rating is a factor known beforehand.
fn work_study(row: &Row) -> Vec<Decimal> {
    let observed = [27, 19, 20, 21, 13].map(|seconds| Span::ms(seconds * 1000));
    let mean = pace(Span::sum(observed), 5).unwrap();
    let normal = rated(mean.as_ms() as f64 / 1000.0, 1.2);
    assert_eq!(row.expected.len(), 3);
    let standard = allowed(normal, Decimal::new(20, 2));
    vec![shown(mean.as_ms() as f64 / 1000.0, 1), shown(normal.median, 1), shown(standard.median, 1)]
}

/// A time by the rating of who worked: a factor known beforehand.
fn rated(observed: f64, rating: f64) -> Likely {
    Likely { median: observed, spread: 0.0 }.times(rating)
}

/// Our allowance is a share of the work; one that is a share a of a shift is a / (1 - a) of the work in it.
fn by_work_and_by_shift(row: &Row) -> Vec<Decimal> {
    let figure = |name: &str| f64::try_from(row.input(name)).unwrap();
    let allow = row.input("allow");
    let normal = rated(figure("observed"), figure("rating"));
    let of_shift = allow / (Decimal::ONE - allow);
    vec![shown(allowed(normal, allow).median, 6), shown(allowed(normal, of_shift).median, 6)]
}

/// 80 %, the first 100 h: average and total of so many.
fn of_eighty(row: &Row) -> Vec<Decimal> {
    let n = row.input("units").try_into().unwrap();
    vec![shown(100.0 * law(0.80).average(n), 2), shown(100.0 * law(0.80).total(n), 2)]
}

/// From 8 to 16: the page prints 254.76.
fn misprint(_: &Row) -> Vec<Decimal> {
    vec![shown(100.0 * (law(0.80).total(16) - law(0.80).total(8)), 2)]
}

/// The second piece alone where averages fall to 80 %; where single pieces do, it is the average of the same law.
fn second(_: &Row) -> Vec<Decimal> {
    vec![shown(100.0 * law(0.80).last(2), 6), shown(100.0 * law(0.80).average(2), 6)]
}

#[test]
fn every_row_of_time() {
    use Ours::{Elsewhere, Figures};
    check_all(
        &topic("9-time"),
        &[
            ("std-1", Figures(work_study)),
            ("std-2", Figures(|_| vec![shown(rated(800.0, 1.1).median, 6)])),
            ("std-formula", Figures(by_work_and_by_shift)),
            ("nobs", Elsewhere("by 2 where ours is by 1.96: `readings_are_as_many_as_pieces_to_measure`")),
            ("lc80-misprint", Figures(misprint)),
            ("lc80-second", Figures(second)),
            ("lc80-*", Figures(of_eighty)),
            // The law of single pieces is that of averages: first x n^-b.
            ("lc75-250", Figures(|_| vec![shown(812.0 * law(0.75).average(250), 1)])),
            ("lc75-back", Figures(|_| vec![shown(120.0 / law(0.75).average(100), 1)])),
            ("pert", Elsewhere("a log-normal stands for a three-point estimate: `three_points_agree_with_a_log_normal`")),
        ],
    );
}

/// `learning_curve_80.csv`: averages and totals as printed, and as worked out again; the exponent is found back from the printed totals.
#[test]
fn every_row_of_the_learning_curve() {
    let rows = table("learning_curve_80.csv");
    let figure = |text: &str| text.parse::<f64>().ok();
    let mut printed = vec![];
    for row in &rows {
        let n: u32 = row["units"].parse().unwrap();
        let near = |name: &str, ours: f64, within: f64| {
            let theirs = figure(&row[name]).unwrap();
            assert!((theirs - ours).abs() <= within, "{n}: {name} {theirs}, ours {ours}");
        };
        near("cum_average_computed", 100.0 * law(0.80).average(n), 5e-5);
        near("total_computed", 100.0 * law(0.80).total(n), 5e-5);
        near("last_unit_hours_cum_avg_model", 100.0 * law(0.80).last(n), 5e-5);
        near("unit_hours_unit_model", 100.0 * law(0.80).average(n), 5e-5);
        let one_by_one: f64 = (1..=n).map(|n| 100.0 * law(0.80).average(n)).sum();
        near("total_unit_model", one_by_one, 5e-5);
        if let Some(total) = figure(&row["total_printed_read"]) {
            near("total_printed_read", 100.0 * law(0.80).total(n), 1e-9);
            near("cum_average_printed_read", 100.0 * law(0.80).average(n), 1e-9);
            printed.push((n, total));
        }
    }
    assert_eq!((rows.len(), printed.len()), (16, 5));
    let found = Wright::fitted(&[printed]).unwrap();
    assert!((found.of_doubling() - 0.80).abs() < 1e-9, "{found:?}");
}

/// Bell curve and log-normal by another hand.
#[test]
fn one_time_is_that_of_another_library() {
    let normal = Normal::new(0.0, 1.0).unwrap();
    for nth in 1..2_000 {
        let chance = f64::from(nth) / 2_000.0;
        assert!((bell(chance) - normal.inverse_cdf(chance)).abs() < 5e-9, "{chance}");
    }
    for chance in [1e-12, 1e-6, 0.999_999] {
        assert!((bell(chance) / normal.inverse_cdf(chance) - 1.0).abs() < 1e-8, "{chance}");
    }
    for (median, spread) in [(1_526.31, 0.19), (47.0, 0.6), (300.0, 0.05)] {
        let theirs = LogNormal::new(f64::ln(median), spread).unwrap();
        let range = together(&[Likely { median, spread }], 3).unwrap();
        let near = |ours: Span, chance: f64| (ours.as_ms() as f64 / 60_000.0 - theirs.inverse_cdf(chance)).abs() <= 0.5 + 1e-6;
        assert!(near(range.low, 0.1) && near(range.likely, 0.5) && near(range.safe, 0.9), "{median} {spread}: {range:?}");
    }
}

/// Drawn sums have the mean a sum of log-normals has, and two of them lie where the convolution of another library's densities puts them.
#[test]
fn drawn_sums_lie_where_the_densities_put_them() {
    let (one, two) = ((200.0_f64, 0.42_f64), (120.0_f64, 0.30_f64));
    let [a, b] = [one, two].map(|(median, spread)| LogNormal::new(median.ln(), spread).unwrap());
    let below = |sum: f64| {
        // All of the first by equal chances, and the second below what is left.
        let n = 20_000;
        (0..n).map(|nth| (sum - a.inverse_cdf((f64::from(nth) + 0.5) / f64::from(n))).max(0.0)).map(|rest| b.cdf(rest)).sum::<f64>()
            / f64::from(n)
    };
    let times = [one, two].map(|(median, spread)| Likely { median, spread });
    for seed in 0..5 {
        let range = together(&times, seed).unwrap();
        for (span, chance) in [(range.low, 0.1), (range.likely, 0.5), (range.safe, 0.9)] {
            let there = below(span.as_ms() as f64 / 60_000.0);
            assert!((there - chance).abs() < 0.012, "{seed}: {there} for {chance}");
        }
    }
}

/// PERT of 2, 4, 12 as the row has it: mean 5, variance 2.78 as it is taught and 3 as its curve has. The log-normal that is one time in ten
/// below and one above where that curve is has the same mean to one in twelve, and a variance of the same size.
#[test]
fn three_points_agree_with_a_log_normal() {
    let rows = topic("9-time");
    let row = rows.iter().find(|row| row.id == "pert").unwrap();
    let (low, likely, high) = (2.0, 4.0, 12.0);
    let mean = (low + 4.0 * likely + high) / 6.0;
    let (taught, curve) = (((high - low) / 6.0_f64).powi(2), (mean - low) * (high - mean) / 7.0);
    row.check(&[shown(mean, 4), shown(taught, 4), shown(curve, 4)]);
    let beta =
        statrs::distribution::Beta::new(1.0 + 4.0 * (likely - low) / (high - low), 1.0 + 4.0 * (high - likely) / (high - low)).unwrap();
    let at = |chance| low + (high - low) * beta.inverse_cdf(chance);
    let ours = Likely { median: f64::sqrt(at(0.1) * at(0.9)), spread: f64::ln(at(0.9) / at(0.1)) / 2.0 / bell(0.9) };
    let ours_mean = ours.median * f64::exp(ours.spread * ours.spread / 2.0);
    let ours_variance = ours_mean * ours_mean * (f64::exp(ours.spread * ours.spread) - 1.0);
    assert!((ours_mean / mean - 1.0).abs() < 1.0 / 12.0, "{ours_mean}");
    assert!((0.8..1.4).contains(&(ours_variance / curve)), "{ours_variance}");
    // What an estimate says of it, in whole minutes of these hours: it begins and ends where the curve does, its middle lies below the mean.
    let hours = |time: Likely| Likely { median: time.median * 60.0, ..time };
    let range = together(&[hours(ours)], 1).unwrap();
    let in_hours = |span: Span| span.as_minutes() as f64 / 60.0;
    let [low, middle, safe] = [range.low, range.likely, range.safe].map(in_hours);
    assert!((low - at(0.1)).abs() < 0.01 && (safe - at(0.9)).abs() < 0.01, "{range:?}");
    assert!(middle < at(0.5) && at(0.5) < mean && 0.97 < middle / at(0.5), "{range:?}");
}

/// Three jobs of 2, 4, 12 one after another: PERT adds the means, 15, and the variances, 9, and reads a bell curve: 15 - 1.28155 x 3 = 11.16 one time in
/// ten, 18.84 nine times. Ours adds log-normals, of which the long tail does not cancel out: within a part in twenty of each, lower in the middle and
/// higher where it is to be safe.
#[test]
fn three_points_of_several_jobs_agree_with_pert() {
    // One and nine times in ten of the curve of 2, 4, 12, as the test above finds them.
    let beta = statrs::distribution::Beta::new(1.8, 4.2).unwrap();
    let [low, high] = [0.1, 0.9].map(|chance| 2.0 + 10.0 * beta.inverse_cdf(chance));
    let one = Likely { median: 60.0 * f64::sqrt(low * high), spread: f64::ln(high / low) / 2.0 / bell(0.9) };
    let range = together(&[one; 3], 1).unwrap();
    let pert = [15.0 - 1.281_55 * 3.0, 15.0, 15.0 + 1.281_55 * 3.0];
    let ours = [range.low, range.likely, range.safe].map(|span| span.as_minutes() as f64 / 60.0);
    for (ours, pert) in ours.into_iter().zip(pert) {
        assert!((ours / pert - 1.0).abs() < 0.05, "{ours} for {pert}");
    }
    assert!(ours[1] < pert[1] && pert[2] < ours[2], "{ours:?}");
}

/// Readings 7, 6, 7, 7 and 6, for 95 % within 5 %: (2 x spread / 0.05)^2 is 8.82, so 9, where the spread is that of these five alone, sqrt 6 / 33. Ours
/// takes 1.96 for 2, 8.47, and comes to as many.
#[test]
fn readings_are_as_many_as_pieces_to_measure() {
    let rows = topic("9-time");
    let row = rows.iter().find(|row| row.id == "nobs").unwrap();
    let (sum, squares) =
        [7.0, 6.0, 7.0, 7.0, 6.0].into_iter().fold((0.0, 0.0), |(sum, squares), one: f64| (sum + one, squares + one * one));
    let spread = f64::sqrt(5.0 * squares - sum * sum) / sum;
    let ours = fivebar_core::haul::sample::pieces_to_measure(spread, 0.05, None).unwrap();
    row.check(&[shown((2.0 * spread / 0.05_f64).powi(2), 2), ours.into()]);
    assert_eq!((ours, shown((1.96 * spread / 0.05_f64).powi(2), 2)), (9, Decimal::new(847, 2)));
}
