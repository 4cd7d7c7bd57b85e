use super::*;
use crate::plan::draw::Draw;

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-6 * a.abs().max(b.abs()).max(1.0)
}

type Case = (&'static str, &'static [f64], &'static [(f64, &'static [(usize, f64)])], f64);

#[test]
fn known_programmes_come_out_as_known() {
    let cases: [Case; 3] = [
        // Beale's programme, on which the plain rule goes round for ever: best 1/20 (recalled).
        (
            "goes in circles",
            &[0.0, 0.0, 1.0],
            &[
                (0.75, &[(0, 0.25), (1, 0.5)]),
                (-150.0, &[(0, -60.0), (1, -90.0)]),
                (0.02, &[(0, -0.04), (1, -0.02), (2, 1.0)]),
                (-6.0, &[(0, 9.0), (1, 3.0)]),
            ],
            0.05,
        ),
        ("at least", &[-10.0, 8.0], &[(-2.0, &[(0, -1.0), (1, 1.0)]), (-3.0, &[(0, -2.0)])], -15.0),
        // Two foods, two needs: both needs are met exactly by 1.5 and 5.
        ("a diet", &[-8.0, -9.0], &[(-3.0, &[(0, -2.0), (1, -1.0)]), (-2.0, &[(0, -1.0), (1, -1.5)])], -14.5),
    ];
    for (name, right, columns, worth) in cases {
        let mut lp = Lp::new(right, &[1e6; 3]);
        for (own, cells) in columns {
            lp.add(*own, cells);
        }
        assert_eq!(lp.solve(1000), End::Best, "{name}");
        assert!(near(lp.worth(), worth), "{name}: {}", lp.worth());
        assert!(near(lp.lacking(), 0.0), "{name}");
        let dual: f64 = lp.prices().iter().zip(right).map(|(price, right)| price * right).sum();
        assert!(near(dual, worth), "{name}: prices are worth as much: {dual}");
    }
}

#[test]
fn what_can_not_be_met_is_lacking_and_what_nothing_holds_is_endless() {
    let mut lp = Lp::new(&[-5.0, 3.0], &[1e6; 2]);
    lp.add(-1.0, &[(0, -1.0), (1, 1.0)]);
    assert_eq!(lp.solve(100), End::Best);
    assert!(near(lp.lacking(), 2.0));
    lp.add(1.0, &[]);
    assert_eq!(lp.solve(100), End::Endless);
    assert_eq!(Lp::new(&[1.0], &[1.0]).solve(0), End::Stopped);
}

/// Columns come one after another; in the end the prices prove the worth and nothing is below nothing.
#[test]
fn random_programmes_end_with_prices_that_prove_them() {
    let mut draw = Draw::seeded(5);
    for round in 0..300 {
        let rows = 1 + draw.below(30);
        let right: Vec<f64> = (0..rows).map(|_| draw.below(40) as f64).collect();
        let mut lp = Lp::new(&right, &vec![1e6; rows]);
        let mut columns = vec![];
        for _ in 0..4 {
            for _ in 0..1 + draw.below(40) {
                let mut cells: Vec<(usize, f64)> = (0..1 + draw.below(5)).map(|_| (draw.below(rows), 1.0 + draw.below(6) as f64)).collect();
                cells.sort_by_key(|cell| cell.0);
                cells.dedup_by_key(|cell| cell.0);
                let worth = draw.below(90) as f64;
                lp.add(worth, &cells);
                columns.push((worth, cells));
            }
            assert_eq!(lp.solve(20_000), End::Best, "round {round}");
        }
        let prices = lp.prices();
        let dual: f64 = prices.iter().zip(&right).map(|(price, right)| price * right).sum();
        assert!(near(dual, lp.worth()), "round {round}: {dual} {}", lp.worth());
        assert!(prices.iter().all(|price| -1e-6 < *price), "round {round}");
        let dear = |(worth, cells): &(f64, Vec<(usize, f64)>)| cells.iter().map(|(row, cell)| prices[*row] * cell).sum::<f64>() - worth;
        assert!(columns.iter().all(|column| -1e-5 < dear(column)), "round {round}");
        let mut used = vec![0.0; rows];
        for (column, level) in lp.taken() {
            columns[column].1.iter().for_each(|(row, cell)| used[*row] += level * cell);
        }
        assert!(used.iter().zip(&right).all(|(used, right)| used <= &(right + 1e-6)), "round {round}");
    }
}
