//! Which parts are glued up of strips: those that no board is thick, wide and long enough for. Reckoned by hand.

use fivebar_core::plan::Asked;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::{Ask, Given, What, given};
use fivebar_core::sheet::plan::sheet;
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
