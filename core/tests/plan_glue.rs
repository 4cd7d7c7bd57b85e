//! Which parts are glued up of strips: those that no board is thick, wide and long enough for. Reckoned by hand.

use fivebar_core::plan::Asked;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::Length;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::{Ask, Given, What, given};
use fivebar_core::sheet::plan::{PlanSheet, sheet};
use fivebar_core::story::tell;

/// Long strips 62 wide, and wide ends that are short.
const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 27 x 62 x 1010 mm\n\
    count 40 strips\npile ends oak-european 40 x 150 x 365 mm\ncount 31 ends\njob bench \"Shoe bench\" 1 spec\n";
const LEG: &str = "part \"leg\" 4 of 38 x 60 x 350 mm oak-european for bench\n";

fn asked(parts: &str) -> Given {
    let story = tell(&format!("{RACK}{parts}"));
    assert_eq!(story.refused, []);
    let job = story.names.job("bench").unwrap();
    let ask = Ask { job, what: What::Parts(None), turned: vec![], bought: vec![], without: vec![], over: None };
    given(&Shop::of(&story.book, story.now.at), &ask).unwrap()
}

/// Which parts are glued up, and how many pieces there are, at least.
#[track_caller]
fn check(parts: &str, glued: &[(&str, bool)], least: i64) {
    let given = asked(parts);
    let Asked::Parts(problem) = &given.ready.asked else { panic!("parts") };
    let ours: Vec<(&str, bool)> = problem.parts.iter().map(|part| (part.id.as_str(), part.glue)).collect();
    assert_eq!(ours, glued);
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let made = sheet(&given.ready, &answered, given.room).unwrap().made;
    assert!(least <= made, "{parts}: {made}");
}

/// A rail of 64 is wider than the strips, and longer than the ends, which are wide enough: it is glued. With 2 over and
/// a joint it is of 47 and 20: three strips, 58 wide when straight, give 47, 47, and 20 twice: a piece's two rails, so 40 are 13 pieces. 31
/// ends give 2 legs each, 15 pieces; strips 56 wide give a rail each.
#[test]
fn a_wide_board_that_is_too_short_makes_no_part_whole() {
    let rail = |wide: i64| format!("part \"rail\" 2 of 24 x {wide} x 800 mm oak-european for bench\n");
    check(&rail(64), &[("rail", true)], 13);
    check(&format!("{LEG}{}", rail(64)), &[("leg", false), ("rail", true)], 13);
    check(&format!("{LEG}{}", rail(56)), &[("leg", false), ("rail", false)], 15);
}

/// What is cut for one piece of a job from a rack: how many of which width, in millimetres. What is glued up of it is as many.
#[track_caller]
fn cut(rack: &str, parts: &str, cut: &[(i64, i64)]) -> PlanSheet {
    let shop = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\n";
    let story = tell(&format!("{shop}{rack}job bench \"Bench\" 1 spec\n{parts}"));
    assert_eq!(story.refused, []);
    let job = story.names.job("bench").unwrap();
    let ask = Ask { job, what: What::Parts(Some(1)), turned: vec![], bought: vec![], without: vec![], over: None };
    let given = given(&Shop::of(&story.book, story.now.at), &ask).unwrap();
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    assert!(given.ready.asked.holds(&answered));
    let told = sheet(&given.ready, &answered, given.room).unwrap();
    let by_width = |all: &mut dyn Iterator<Item = (i64, Length)>| {
        let mut widths: Vec<(i64, i64)> = vec![];
        for (n, width) in all.map(|(n, width)| (n, width.as_nm() / 1_000_000)) {
            match widths.iter_mut().find(|own| own.1 == width) {
                Some(own) => own.0 += n,
                None => widths.push((n, width)),
            }
        }
        widths.sort_unstable_by_key(|own| own.1);
        widths
    };
    let sawn = by_width(&mut told.lines.iter().flat_map(|line| line.pieces.iter().map(|piece| (line.n * piece.n, piece.size[1]))));
    assert_eq!(sawn, cut, "{:?}", told.lines);
    for it in &told.glue_ups {
        // Each joint takes half a millimetre off both edges.
        let sawn = it.strips.iter().fold(0, |sum, (n, width)| sum + n * width.as_nm());
        let joints = it.strips.iter().fold(-1, |sum, (n, _)| sum + n);
        assert_eq!(it.wide.as_nm(), sawn - joints * 1_000_000);
        assert!(it.cut <= it.wide, "{it:?}");
    }
    let glued = by_width(&mut told.glue_ups.iter().flat_map(|it| it.strips.iter().map(|(n, width)| (it.n * n, *width))));
    assert!(glued.iter().all(|own| sawn.contains(own)), "{glued:?} of {sawn:?}");
    told
}

/// A strip that no part uses is never cut: it stays part of its board. A cleat of 122 is 124 with what is over, and 125 with the edges that
/// are glued: 87 and 38 of two ends that are 116 straight, or 96 and 29 of ends that are 96. One of 89 is 92 with its edges: 46 and 46,
/// behind each other on a board that is 86 straight, and the 37 beside them is no strip of it.
#[test]
fn no_strip_is_cut_that_nothing_uses() {
    let ends = |wide: i64| format!("pile ends walnut-black 38 x {wide} x 320 mm\ncount 26 ends\n");
    let cleat = "part \"cleat\" 1 of 34 x 122 x 300 mm for bench\n";
    let two = cut(&ends(120), cleat, &[(1, 38), (1, 87)]);
    // The rest of two ends is waste by cutting: 24.32 cm3 x 120, less 302 x 125 x 38.
    assert_eq!(two.used.iter().map(|used| used.pieces).sum::<u32>(), 2);
    cut(&ends(100), cleat, &[(1, 29), (1, 96)]);
    let boards = "pile boards cherry-black 20 x 90 x 600 mm\ncount 15 boards\n";
    cut(boards, "part \"short\" 1 of 18 x 89 x 280 mm for bench\n", &[(2, 46)]);
    // A part that is not glued, neither: two would come out of the board, and one is wanted.
    cut(boards, "part \"slat\" 1 of 18 x 40 x 280 mm for bench\n", &[(1, 42)]);
}
