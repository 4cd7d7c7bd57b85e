//! Laws of counting by chance: of enough, of the share of rejects, of weighing and of samples.

mod pinned;

use fivebar_core::haul::enough::{Enough, Held, LIKELY, Least, MOST, SURE, scarcest};
use fivebar_core::haul::rejects::{RejectShare, Seen};
use fivebar_core::haul::sample::{Sides, sizes};
use fivebar_core::haul::weighing::{OnScale, Spread, Weighing};
use fivebar_core::quantity::chance::student;
use fivebar_core::quantity::{Decimal, Grams, Length};
use proptest::prelude::*;

/// Figures that differ by less differ by the rounding of floats alone.
const DUST: f64 = 1e-11;

fn seen(most: u32) -> impl Strategy<Value = Seen> {
    (0..=most, 0..=most).prop_map(|(rejected, good)| Seen { rejected, good, ..Seen::default() })
}

/// After a supplier's past and some sorting, of which there may be none.
fn share() -> impl Strategy<Value = RejectShare> {
    (seen(2_000), seen(60)).prop_map(|(past, now)| RejectShare::of_supplier(past).after(now))
}

fn held() -> impl Strategy<Value = Held> {
    (0_u32..60, 0_u32..60, 0_u32..600, 0_u32..30).prop_map(|(good, rejected, unsorted, used)| Held { good, rejected, unsorted, used })
}

fn grams(grams: u32) -> Grams {
    Grams::new(grams.into()).unwrap()
}

proptest! {
    #[test]
    fn more_pieces_never_lower_the_chance_and_a_larger_target_never_raises_it(held in held(), pieces in 0_u32..500, share in share()) {
        let chance = |pieces, held| Enough::of(pieces, held, &share).unwrap().chance;
        let now = chance(pieces, held);
        prop_assert!((0.0..=1.0).contains(&now));
        let (one_more, one_good) = (Held { unsorted: held.unsorted + 1, ..held }, Held { good: held.good + 1, ..held });
        prop_assert!(now <= chance(pieces, one_more) + DUST);
        prop_assert!(now <= chance(pieces, one_good) + DUST);
        prop_assert!(chance(pieces + 1, held) <= now + DUST);
    }

    /// The least count is enough, one piece fewer is not, and more certainty never takes fewer.
    #[test]
    fn the_least_count_is_the_least(held in held(), pieces in 1_u32..500, share in share()) {
        let enough = Enough::of(pieces, held, &share).unwrap();
        let known = held.taken() - held.unsorted;
        let chance = |taken: u32| Enough::of(pieces, Held { unsorted: taken - known, ..held }, &share).unwrap().chance;
        for (least, sure) in [(enough.likely, LIKELY), (enough.sure, SURE)] {
            match least {
                Least::Taken(n) => {
                    prop_assert!(sure <= chance(n));
                    prop_assert!(n == known || chance(n - 1) < sure);
                }
                Least::NotFromThisSupplier => prop_assert!(chance(known + MOST - held.good) < sure),
            }
        }
        if let (Least::Taken(likely), Least::Taken(sure)) = (enough.likely, enough.sure) {
            prop_assert!(likely <= sure);
        }
        prop_assert_eq!(enough.can_stop(), enough.more_until_sure() == Some(0));
    }

    #[test]
    fn the_scarce_one_has_the_least_chance(piles in proptest::collection::vec((held(), 1_u32..200), 1..6), share in share()) {
        let all: Vec<_> = piles.iter().map(|(held, pieces)| Enough::of(*pieces, *held, &share).unwrap()).collect();
        let scarce = all[scarcest(&all).unwrap()];
        prop_assert!(all.iter().all(|other| scarce.chance < other.chance || scarce.chance == other.chance && other.short() <= scarce.short()));
    }

    /// What is seen moves the share towards itself and never past itself, and a past never weighs more than 20 pieces.
    #[test]
    fn the_share_moves_towards_what_is_seen(past in seen(100_000), now in seen(9_999)) {
        let before = RejectShare::of_supplier(past);
        prop_assert!(before.weight() <= Decimal::from(20) && Decimal::from(12) <= before.weight());
        let after = before.after(now);
        // both are cut after 28 digits
        let dust = Decimal::new(1, 20);
        prop_assert!((after.weight() - before.weight() - Decimal::from(now.sorted())).abs() < dust);
        let Some(showed) = Decimal::from(now.rejected).checked_div(Decimal::from(now.sorted())) else {
            prop_assert_eq!(after, before);
            return Ok(());
        };
        prop_assert!((after.mean() - showed).abs() <= (before.mean() - showed).abs() + dust);
        prop_assert!((before.mean().min(showed) - dust..=before.mean().max(showed) + dust).contains(&after.mean()));
    }

    /// Sorting in two goes says the same as in one, in either order.
    #[test]
    fn sorting_adds_up(one in seen(5_000), other in seen(5_000)) {
        let before = RejectShare::guess();
        prop_assert_eq!(before.after(one).after(other), before.after(Seen::pooled([other, one])));
    }

    #[test]
    fn a_count_of_pieces_alike_is_exact(
        piece in 1_u32..1_000, counted in 5_u32..60, others in 0_u32..9_000, tare in 0_u32..9_000,
    ) {
        let n = counted + others;
        let on_scale = |n: u32| OnScale { shows: grams(piece * n + tare), tare: grams(tare) };
        let spread = Spread::measured(&[grams(piece); 3]).unwrap().unwrap();
        let weighed = Weighing { counted, sample: on_scale(counted), pile: on_scale(n) }.count(spread).unwrap();
        prop_assert_eq!((weighed.n, weighed.least, weighed.most), (n, n, n));
    }

    /// A larger sample of the same pieces is never less certain.
    #[test]
    fn a_larger_sample_is_never_worse(piece in 1_u32..1_000, counted in 5_u32..60, others in 1_u32..5_000) {
        let of = |counted: u32| {
            let on_scale = |n: u32| OnScale::bare(grams(piece * n));
            Weighing { counted, sample: on_scale(counted), pile: on_scale(61 + others) }.count(Spread::BAND).unwrap()
        };
        let (small, large) = (of(counted), of(counted + 1));
        prop_assert!(large.spread <= small.spread);
        prop_assert!(small.least <= small.n && small.n <= small.most);
        prop_assert!(counted <= small.least);
    }

    /// The mean lies among what was measured, the interval around the mean, and pieces alike leave no doubt.
    #[test]
    fn a_mean_lies_among_what_was_measured(lengths in proptest::collection::vec(1_000_000_i64..20_000_000_000, 1..30), more in 0_u32..900) {
        let side = |nm| Length::nm(nm).unwrap();
        let pieces: Vec<_> = lengths.iter().map(|nm| Sides { thickness: Length::INCH, width: Length::FOOT, length: side(*nm) }).collect();
        let found = sizes(&pieces, u32::try_from(lengths.len()).unwrap() + more).unwrap();
        let (low, high) = found.length.ends();
        prop_assert!(low <= found.length.mean && found.length.mean <= high);
        let (least, most) = (lengths.iter().min().unwrap(), lengths.iter().max().unwrap());
        prop_assert!((side(*least)..=side(*most)).contains(&found.length.mean));
        prop_assert_eq!(found.length.off.is_none(), lengths.len() == 1 && more > 0);
        prop_assert!(found.thickness.off.is_none_or(|off| off < DUST));
        // The other sides being alike, the volume may be off by as much as the length.
        let (length, volume) = (found.length.off.unwrap_or(0.0), found.volume.off.unwrap_or(0.0));
        prop_assert!((length - volume).abs() <= DUST * (1.0 + length));
    }

    /// Student's t falls with the pieces measured and rises with the chance asked for.
    #[test]
    fn students_t_falls_with_every_piece(free in 1_u32..300, chance in 0.05_f64..0.98) {
        let t = |chance, free| student(chance, free).unwrap();
        prop_assert!(t(chance, free + 1) < t(chance, free));
        prop_assert!(t(chance, free) < t(chance + 0.01, free));
    }
}

/// The figures to the last bit. A test in the browser holds the same ones: a phone and a terminal say the same.
#[test]
fn floats_are_the_same_everywhere() {
    pinned::chances_are_as_pinned();
}

#[test]
fn waiting_is_worth_the_same_everywhere() {
    pinned::waiting_is_as_pinned();
}
