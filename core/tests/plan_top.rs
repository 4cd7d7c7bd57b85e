//! A top whose wood, thickness or rows are left to the pieces: one wood, and what wastes least. Reckoned by hand.

use fivebar_core::ledger::Device;
use fivebar_core::ledger::fold::KeptPlan;
use fivebar_core::ledger::kind::plan::PlanKept;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::{Decimal, Length};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::keep::{again, kept};
use fivebar_core::sheet::make::{Ask, Given, Top, What, given};
use fivebar_core::sheet::plan::sheet;
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::story::tell;

/// Oak of two thicknesses and a few thin beech, all of it long enough.
const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 27 x 60 x 1010 mm\n\
    count 37 strips\npile beech beech-european 20 x 45 x 700 mm\ncount 12 beech\njob bench \"Shoe bench\" 1 spec\n";
const MORE: &str = "pile more beech-european 20 x 45 x 700 mm\ncount 9 more\n";
const SHORT: &str = "pile thin oak-european 20 x 60 x 1010 mm\ncount 2 thin\n";

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

fn asked(lines: &str, change: impl Fn(&mut Top)) -> Given {
    let story = tell(&format!("{RACK}{lines}"));
    assert_eq!(story.refused, []);
    let mut top = Top { length: mm(1200), width: mm(400), apart: mm(100), split: true, ..Top::default() };
    change(&mut top);
    let job = story.names.job("bench").unwrap();
    let ask = Ask { job, what: What::Top(top), turned: vec![], bought: vec![], without: vec![], over: None };
    given(&Shop::of(&story.book, story.now.at), &ask).unwrap()
}

/// The woods it is made of, how thick, in how many rows, and the waste in per cent.
#[track_caller]
fn check(lines: &str, change: impl Fn(&mut Top), (woods, thick, rows, waste): (&[&str], i64, i64, std::ops::Range<i64>)) {
    let given = asked(lines, change);
    let Wish::Panel(panel) = &given.ready.wish else { panic!("a top") };
    let mut of: Vec<String> = given.sources.iter().filter_map(|it| it.pile.wood.as_ref().map(ToString::to_string)).collect();
    of.sort();
    of.dedup();
    assert_eq!((of, panel.thickness, panel.rows()), (woods.iter().map(ToString::to_string).collect(), mm(thick), Some(rows)));
    let answered = given.ready.asked.solve(&mut Patience::new(Some(60_000), &mut |_: Progress<'_>| true), 1);
    let share = sheet(&given.ready, &answered, given.room).unwrap().waste.share.unwrap() * Decimal::ONE_HUNDRED;
    assert!(waste.contains(&i64::try_from(share.trunc()).unwrap()), "{share}");
}

const OAK: &str = "oak-european";
const BEECH: &str = "beech-european";

/// Oak: 27 less 2 is 25, and eight rows of 50 from 60: 12.0 litres of 10 x 1.636 less one of 426 (0.6) = 15.8, 24 per cent. Beech: 20
/// less 2 is 18, and ten rows of 40 from 45: that takes 18 of 0.63 less one of 480, 10.9 litres for 8.64, 21 per cent; but 12 there are.
#[test]
fn one_wood_is_taken_and_no_thin_pile_planes_the_others_down() {
    check("", |_| (), (&[OAK], 25, 8, 23..26));
    check(SHORT, |_| (), (&[OAK], 25, 8, 23..26));
    check("", |top| top.rows = Some(8), (&[OAK], 25, 8, 23..26));
    check("", |top| top.thickness = Some(mm(18)), (&[OAK], 18, 8, 44..47));
    check(MORE, |_| (), (&[BEECH], 18, 10, 20..24));
    check("", |top| top.mixed = true, (&[OAK], 25, 8, 23..26));
    check("", |top| (top.mixed, top.thickness, top.rows) = (true, Some(mm(18)), Some(10)), (&[BEECH, OAK], 18, 10, 40..60));
}

/// The other ways are named with what they waste, and can be chosen; what is chosen again is the same.
#[test]
fn other_ways_can_be_chosen() {
    let of = |given: &Given| {
        given.ways.iter().map(|way| (way.pick.wood.as_ref().map(ToString::to_string).unwrap(), way.rows)).collect::<Vec<_>>()
    };
    let given = asked(MORE, |_| ());
    assert_eq!(of(&given), [(BEECH.to_owned(), 10), (OAK.to_owned(), 8)]);
    let oak = given.ways[1].clone();
    // 12.0 of 10 x 1.636 litres less one of 426, 50 wide and 25 thick.
    assert_eq!(oak.waste, Decimal::new(241, 3));
    let chosen = asked(MORE, |top| top.pick = Some(oak.pick.clone()));
    assert_eq!((of(&chosen).len(), chosen.ways[0].pick.clone()), (2, oak.pick));
    assert!(chosen.sources.iter().all(|source| source.pile.wood.as_ref().is_some_and(|wood| wood.as_str() == OAK)));
    // One alone is not enough for a longer one: that both would be is said, and not done unasked.
    let long = asked("", |top| (top.length, top.rows, top.thickness) = (mm(3600), Some(12), Some(mm(18))));
    assert_eq!(
        long.ways.iter().map(|way| (way.mixed, way.there < 1_000)).collect::<Vec<_>>(),
        [(false, true), (false, true), (true, false)]
    );
}

/// By hand: 16 / 7 is 2 and 2 / 7 in, up to a thirty-second 2 5/16; with a sixty-fourth off each edge it is ripped 2 11/32 wide.
#[test]
fn rows_in_inches_are_what_a_tape_reads() {
    let story = tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile strips oak-white 1 x 2 1/2 x 40 in\ncount 40 strips\njob bench \"Bench\" 1 spec\n",
    );
    assert_eq!(story.refused, []);
    let inches = |n: i64| Length::INCH.times(n).unwrap();
    let top = Top { length: inches(48), width: inches(16), rows: Some(7), split: true, ..Top::default() };
    let ask =
        Ask { job: story.names.job("bench").unwrap(), what: What::Top(top), turned: vec![], bought: vec![], without: vec![], over: None };
    let given = given(&Shop::of(&story.book, story.now.at), &ask).unwrap();
    let Wish::Panel(panel) = &given.ready.wish else { panic!("a top") };
    let of_64 = |n: i64| Length::INCH_64TH.times(n).unwrap();
    assert_eq!((panel.strip, given.ready.sources[0].size[1]), (of_64(148), of_64(150)));
    // A plan of an older book was ripped to 2 19/64 and stays so.
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let told = sheet(&given.ready, &answered, given.room).unwrap();
    let plan = kept(&given, &answered, &told);
    for (strip, wide) in [(plan.strip, 148), (None, 147)] {
        let (at, by) = (story.now, Device::new([1; 8]));
        let kept = KeptPlan { id: given.ask.job, at, by, plan: PlanKept { strip, ..plan.clone() }, used: false };
        let (shown, _) = again(&Shop::of(&story.book, story.now.at), &kept, &[]).unwrap();
        let Wish::Panel(panel) = &shown.ready.wish else { panic!("a top") };
        assert_eq!(panel.strip, of_64(wide));
    }
}

/// What the card of a way says and what the plan of it says is one reckoning: what is kept is waste on neither.
#[test]
fn a_way_and_its_plan_waste_alike() {
    for (split, length) in [(true, 1200), (true, 1100), (true, 600), (true, 950), (false, 1200), (false, 1600)] {
        let given = asked(MORE, |top| (top.split, top.length, top.pick) = (split, mm(length), None));
        let pick = given.ways.iter().find(|way| way.pick.wood.as_ref().is_some_and(|wood| wood.as_str() == OAK)).unwrap().pick.clone();
        let given = asked(MORE, |top| (top.split, top.length, top.pick) = (split, mm(length), Some(pick.clone())));
        let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
        let share = sheet(&given.ready, &answered, given.room).unwrap().waste.share.unwrap();
        let off = (share - given.ways[0].waste).abs();
        assert!(off < Decimal::new(15, 3), "{split} {length}: {share} {}", given.ways[0].waste);
    }
}

/// A pile of walnut 12 to 18 in long is planned at 12, and waste is of what that is: on the card and on the page of its plan.
#[test]
fn a_band_of_lengths_is_reckoned_at_its_shortest() {
    let story = tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ends walnut-black 1 1/2 x 4 3/4 x 12..18 in\ncount 40 ends\njob bench \"Bench\" 1 spec\n",
    );
    assert_eq!(story.refused, []);
    let inches = |n: i64| Length::INCH.times(n).unwrap();
    let what = What::Top(Top { length: inches(24), width: inches(16), apart: inches(2), split: true, ..Top::default() });
    let ask = Ask { job: story.names.job("bench").unwrap(), what, turned: vec![], bought: vec![], without: vec![], over: None };
    let given = given(&Shop::of(&story.book, story.now.at), &ask).unwrap();
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let told = sheet(&given.ready, &answered, given.room).unwrap();
    let ends: u32 = told.used.iter().map(|used| used.pieces).sum();
    // 12 x 4 3/4 x 1 1/2 in each.
    let piece = fivebar_core::quantity::Volume::of(Length::INCH_64TH.times(96).unwrap(), Length::INCH_64TH.times(304).unwrap(), inches(12));
    assert_eq!(told.waste.taken, piece.unwrap().times(ends).unwrap());
    let off = (told.waste.share.unwrap() - given.ways[0].waste).abs();
    assert!(off < Decimal::new(15, 3), "{:?} {}", told.waste, given.ways[0].waste);
}

/// So many rows of 1000 x 50 of strips with one cut in each row; the thousandths of them that are there.
#[track_caller]
fn check_there(strips: &[(i64, i64)], split: bool, there: i64) {
    let piles =
        strips.iter().enumerate().map(|(nth, (long, n))| format!("pile p{nth} oak-european 27 x 60 x {long} mm\ncount {n} p{nth}\n"));
    let story = tell(&format!(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\n{}job bench \"Bench\" 1 spec\n",
        piles.collect::<String>()
    ));
    assert_eq!(story.refused, []);
    let what = What::Top(Top { length: mm(1000), width: mm(200), rows: Some(4), apart: mm(100), split, ..Top::default() });
    let ask = Ask { job: story.names.job("bench").unwrap(), what, turned: vec![], bought: vec![], without: vec![], over: None };
    let given = given(&Shop::of(&story.book, story.now.at), &ask).unwrap();
    assert_eq!(given.ways.iter().map(|way| way.there).collect::<Vec<_>>(), [there], "{strips:?} {split}");
}

/// By hand, 5 squared off: each row of one cut takes two strips of 900, so five are two rows of four; cut in pieces, 4500 are enough. A
/// short strip ends a row, and no long one is cut for it; two that make the length have no cut.
#[test]
fn rows_of_one_cut_are_there_where_each_has_its_own_strips() {
    check_there(&[(905, 5)], false, 500);
    check_there(&[(905, 5)], true, 1000);
    check_there(&[(905, 8)], false, 1000);
    check_there(&[(905, 4), (205, 4)], false, 1000);
    check_there(&[(605, 4), (405, 4)], false, 1000);
    check_there(&[(905, 1)], false, 0);
}

/// Oak of 55 x 900: its edges trimmed 2 each are 51, and half a millimetre off each glued edge is a row of 50 at the most. So 440 or 435 in
/// 8 rows, of 55 or 54.4, are too narrow alike; left open they are 9 rows of 48.9 and 48.4, sawn 1 wider, and 400 are 8 of 50. One row alone
/// is glued to nothing.
#[test]
fn a_row_as_wide_as_its_strip_is_jointed_like_the_others() {
    let of = |width: i64, rows: Option<u32>| {
        let story = tell(
            "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 25 x 55 x 900 mm\ncount 44 strips\n\
             job bench \"Bench\" 1 spec\n",
        );
        let top = Top { length: mm(850), width: mm(width), rows, split: true, ..Top::default() };
        let ask = Ask {
            job: story.names.job("bench").unwrap(),
            what: What::Top(top),
            turned: vec![],
            bought: vec![],
            without: vec![],
            over: None,
        };
        let given = given(&Shop::of(&story.book, story.now.at), &ask).ok()?;
        let Wish::Panel(panel) = &given.ready.wish else { panic!("a top") };
        let [row, sawn] = [panel.strip, given.ready.sources[0].size[1]].map(|it| it.as_nm() / 10_000);
        Some((panel.rows().unwrap(), row, sawn, given.ready.sources[0].ripped))
    };
    let check =
        |width: i64, rows: Option<u32>, wanted: Option<(i64, i64, i64, i64)>| assert_eq!(of(width, rows), wanted, "{width} {rows:?}");
    check(440, Some(8), None);
    check(435, Some(8), None);
    check(400, Some(8), Some((8, 5_000, 5_100, 1)));
    check(440, None, Some((9, 4_890, 4_990, 1)));
    check(435, None, Some((9, 4_840, 4_940, 1)));
    check(400, None, Some((8, 5_000, 5_100, 1)));
    check(55, None, Some((1, 5_500, 5_500, 1)));
}

/// Two tops of one job in twelve rows of 33.5: one of 1200 x 401, the other of 800 x 401.3. Three rows of one are cut, the other nine are
/// planned: all of it is as wide as that one was asked.
#[test]
fn all_of_a_top_is_as_wide_as_the_one_that_is_as_long() {
    use fivebar_core::sheet::make::begun::all_of_it;
    let top = |length: i64, tenths: i64, rows: u32| {
        let width = Length::TENTH_MM.times(tenths).unwrap();
        asked("", |top| (top.length, top.width, top.rows, top.thickness) = (mm(length), width, Some(rows), Some(mm(25))))
    };
    let used = |given: &Given| {
        let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
        let plan = kept(given, &answered, &sheet(&given.ready, &answered, given.room).unwrap());
        let (at, by) = (fivebar_core::story::tell(RACK).now, Device::new([1; 8]));
        KeptPlan { id: given.ask.job, at, by, plan, used: true }
    };
    let plans = [top(800, 4013, 12), top(1200, 4010, 12)].map(|given| used(&given));
    for (length, tenths) in [(1200, 4010), (800, 4013)] {
        let mut others = top(length, 3015, 9);
        others.cut.rows = 3;
        assert_eq!(all_of_it(&others, &plans), Some((Length::TENTH_MM.times(tenths).unwrap(), 12)), "{length}");
    }
    // Of another length none was cut: as wide as its rows.
    let mut others = top(1000, 3015, 9);
    others.cut.rows = 3;
    assert_eq!(all_of_it(&others, &plans), Some((mm(402), 12)));
}
