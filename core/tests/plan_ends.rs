//! A top whose rows have one cut each: the least end piece and an end from a strip of its own are named where they cost rows or strips;
//! rows too narrow to glue are refused; and in inches the saw's lengths are what a tape has. Reckoned by hand.

use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::{Count, Length};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::{Ask, Given, Top, What, WhyNot, given};
use fivebar_core::sheet::plan::{Ends, PlanSheet, ShortEnd, sheet};
use fivebar_core::story::tell;

/// Oak that is 1005 squared.
const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 27 x 62 x 1010 mm\n\
    count 40 strips\njob bench \"Shoe bench\" 2 spec\n";

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

fn asked(story: &str, top: Top) -> Result<Given, WhyNot> {
    let story = tell(story);
    assert_eq!(story.refused, []);
    let ask =
        Ask { job: story.names.job("bench").unwrap(), what: What::Top(top), turned: vec![], bought: vec![], without: vec![], over: None };
    given(&Shop::of(&story.book, story.now.at), &ask)
}

fn made(given: &Given) -> PlanSheet {
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let told = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!(told.ends.short, None, "a page does not search");
    told.with_short_end(&given.ready, given.ready.asked.short_end(&answered))
}

#[track_caller]
fn check(long: i64, split: bool, (rows, strips): (i64, i64), ends: Ends) {
    let top = Top { length: mm(long), width: mm(340), apart: mm(100), split, ..Top::default() };
    let given = asked(RACK, top).unwrap();
    let told = made(&given);
    let used = told.used.iter().map(|used| used.used).sum::<i64>();
    assert_eq!((told.made, used, told.ends), (rows, strips, ends), "{long}");
}

/// 1005 and 95 are 1100, and 100 is the least end. At 1110 six of 105 could come out of one strip: 6 x 105 and five kerfs are 645.
#[test]
fn an_end_that_is_too_short_is_named_with_its_figure() {
    let short = ShortEnd { end: mm(95), rows: 6, strips: 12 };
    check(1100, false, (0, 0), Ends { short: Some(short), together: None });
    check(1110, false, (6, 12), Ends { short: None, together: Some(7) });
    check(1110, true, (6, 7), Ends::default());
}

/// 340 in 40 rows is 8.5, in 17 it is 20: the least strip is 20.
#[test]
fn rows_too_narrow_to_glue_are_refused_by_name() {
    let of = |rows: Option<Count>| {
        let top = Top { length: mm(1110), width: mm(340), rows, apart: mm(100), split: true, ..Top::default() };
        asked(RACK, top).map(|given| given.alike)
    };
    let wide = Length::TENTH_MM.times(85).unwrap();
    assert_eq!(of(Some(40)), Err(WhyNot::Narrow { rows: 40, wide, least: mm(20) }));
    assert_eq!([of(Some(17)), of(None)], [Ok(2), Ok(2)]);
}

/// Strips of 1010 mm are 39 and 49/64 in and a little: what is cut of them is what a tape has, and the rows are as long as they are asked.
#[test]
fn lengths_at_the_saw_are_what_a_tape_has() {
    let inch = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile strips oak-white 27 x 62 x 1010 mm\ncount 40 strips\n\
        job bench \"Bench\" 1 spec\n";
    let half = |n: i64| Length::INCH_64TH.times(n * 32).unwrap();
    let top = Top { length: half(87), width: half(27), apart: half(8), split: true, ..Top::default() };
    let told = made(&asked(inch, top).unwrap());
    assert_eq!(told.picture.outer[0], half(87));
    for length in told.lines.iter().flat_map(|line| &line.pieces).map(|cut| cut.size[0]) {
        assert_eq!(length.as_nm() % (2 * Length::INCH_64TH.as_nm()), 0, "{length:?}");
    }
}

/// Boards of 155 mm are 6 in and a little more than 3/32: glue strips and what is left over of parts and sticks are what a tape has.
#[test]
fn strips_and_leftovers_in_inches_are_what_a_tape_has() {
    let inch = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile boards oak-white 27 x 155 x 1010 mm\ncount 20 boards\n\
        job bench \"Bench\" 1 spec\npart \"top\" 1 of 3/4 x 13 3/8 x 21 1/2 in for bench\npart \"rail\" 2 of 3/4 x 2 x 13 3/4 in for bench\n";
    let story = tell(inch);
    assert_eq!(story.refused, []);
    for (what, without, glued) in [(What::Parts(None), vec![], true), (What::Sticks(None), vec!["top".to_owned()], false)] {
        let job = story.names.job("bench").unwrap();
        let ask = Ask { job, what, turned: vec![], bought: vec![], without, over: None };
        let told = made(&given(&Shop::of(&story.book, story.now.at), &ask).unwrap());
        let strips = told.glue_ups.iter().flat_map(|it| &it.strips).map(|(_, wide)| *wide);
        let left = told.lines.iter().filter_map(|line| line.remainder);
        assert!(0 < told.made && told.glue_ups.is_empty() != glued && 0 < left.clone().count(), "{told:?}");
        for length in strips.chain(left) {
            assert_eq!(length.as_nm() % (2 * Length::INCH_64TH.as_nm()), 0, "{length:?} {glued}");
        }
    }
}
