use super::super::plan::{self, Short, Strip};
use super::super::problem::{Allow, Pile};
use super::*;

/// A rail of 300 by 60, and a panel 100 wide that is glued up, from a board of 700 by 130.
fn problem() -> Problem {
    let pile = Pile { id: "A".into(), count: 2, length: 700, width: 130, thickness: 24 };
    let part = |id: &str, width, glue| Part { id: id.into(), per_set: 1, length: 300, width, thickness: 20, glue, piles: None };
    Problem {
        kerf: 3,
        end_trim: 5,
        allow: Allow { length: 4, width: 1, thickness: 2 },
        joint: 1,
        strip_min: 20,
        plane_min: 200,
        rip_min: 200,
        keep_min: 250,
        piles: vec![pile],
        parts: vec![part("rail", 60, false), part("panel", 100, true)],
        ..Problem::default()
    }
}

/// One board: a band with a rail and a strip of 61, one with two strips of 66. The panel takes 61 + 66 less 2.
fn good() -> Plan {
    let piece = |part, at, width| Piece { part, at, length: 304, width };
    let bands = vec![
        Band { size: 61, at: 0, pieces: vec![piece(0, 0, 61), piece(1, 307, 61)] },
        Band { size: 66, at: 64, pieces: vec![piece(1, 0, 66), piece(1, 307, 66)] },
    ];
    let board = Board { pile: 0, times: 1, stretch: 690, first: First::Rip, bands, remainder: 0 };
    let strip = |width| Strip { pile: 0, width };
    Plan { boards: vec![board], panels: vec![Panel { part: 1, times: 1, strips: vec![strip(61), strip(66)] }], short: None }
}

#[test]
fn the_checker_names_the_first_rule_broken() {
    assert_eq!(check(&problem(), &good()), Ok([1, 700 * 130 * 24]));
    let check_one = |spoil: &dyn Fn(&mut Plan), broken: Broken| {
        let mut plan = good();
        spoil(&mut plan);
        assert_eq!(check(&problem(), &plan), Err(broken));
    };
    check_one(&|plan| plan.boards[0].pile = 7, Broken::NoSuchPile { board: 0 });
    check_one(&|plan| plan.boards[0].times = 0, Broken::Times { board: 0 });
    check_one(&|plan| plan.boards[0].times = 3, Broken::TooMany { board: 0, used: 3, there: 2 });
    check_one(&|plan| plan.boards[0].stretch = 691, Broken::Stretch { board: 0, most: 690 });
    check_one(&|plan| plan.boards[0].stretch = 199, Broken::TooShortToPlane { board: 0 });
    check_one(&|plan| plan.boards[0].bands[1].at = 63, Broken::BandMisplaced { board: 0, band: 1, least: 64 });
    check_one(&|plan| plan.boards[0].bands[1].size = 67, Broken::BandTooFar { board: 0, band: 1, most: 130 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[0].part = 2, Broken::NoSuchPart { board: 0, band: 0, piece: 0 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[0].length = 300, Broken::Length { board: 0, band: 0, piece: 0, expected: 304 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[0].width = 60, Broken::Width { board: 0, band: 0, piece: 0, expected: 61 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[1].width = 62, Broken::PieceTooLarge { board: 0, band: 0, piece: 1 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[1].at = 306, Broken::PieceMisplaced { board: 0, band: 0, piece: 1, least: 307 });
    check_one(&|plan| plan.boards[0].bands[0].pieces[1].at = 400, Broken::PieceTooFar { board: 0, band: 0, piece: 1, most: 690 });
    check_one(&|plan| plan.boards[0].remainder = 1, Broken::Remainder { board: 0, expected: 0 });
    check_one(&|plan| plan.boards[0].first = First::Cross, Broken::TooShortToRip { board: 0 });
    check_one(&|plan| plan.panels[0].part = 0, Broken::Panel { panel: 0 });
    check_one(&|plan| plan.panels[0].times = 2, Broken::NoSuchStrip { panel: 0, strip: 0 });
    check_one(&|plan| plan.panels[0].strips.truncate(1), Broken::TooNarrow { panel: 0, met: 61, least: 101 });
    check_one(&|plan| plan.short = Some(Short::default()), Broken::Missing);
    let nearly = |plan: &mut Plan| plan.short = Some(plan::Short { missing: vec![(0, 2), (1, 2)], boards: vec![], panels: vec![] });
    let mut plan = good();
    nearly(&mut plan);
    assert_eq!(check(&problem(), &plan), Ok([1, 700 * 130 * 24]));
}

/// From a board of 45 a leg of 44 is cut alone, along or across first; what lies beside another has its edges trimmed to 41, a strip to be
/// glued too.
#[test]
fn only_a_part_that_takes_the_whole_width_goes_beyond_the_trim() {
    let pile = |count| Pile { id: "A".into(), count, length: 1000, width: 45, thickness: 24 };
    let part = |id: &str, width, glue| Part { id: id.into(), per_set: 1, length: 400, width, thickness: 20, glue, piles: None };
    let parts = vec![part("leg", 44, false), part("slat", 20, false), part("panel", 60, true)];
    let problem = Problem { kerf: 3, edge_trim: 2, planed: true, strip_min: 20, piles: vec![pile(1)], parts, ..Problem::default() };
    assert_eq!([problem.trimmed(0), problem.wide(0)], [41, 44]);
    let piece = |part, at, width| Piece { part, at, length: 400, width };
    let check_one = |first, bands: Vec<Band>, broken: Option<Broken>| {
        let board = Board { pile: 0, times: 1, stretch: 1000, first, bands, remainder: 0 };
        let plan = Plan { boards: vec![board], panels: vec![], short: None };
        assert_eq!(check(&problem, &plan).err(), broken);
    };
    let band = |size, at, pieces| Band { size, at, pieces };
    let too_far = |band, most| Some(Broken::BandTooFar { board: 0, band, most });
    let piece_too_far = |band, piece| Some(Broken::PieceTooFar { board: 0, band, piece, most: 41 });
    check_one(First::Rip, vec![band(44, 0, vec![piece(0, 0, 44), piece(1, 403, 20)])], None);
    check_one(First::Rip, vec![band(20, 0, vec![piece(1, 0, 20)]), band(20, 23, vec![piece(1, 0, 20)])], too_far(1, 41));
    check_one(First::Rip, vec![band(44, 0, vec![piece(1, 0, 20)])], too_far(0, 41));
    check_one(First::Rip, vec![band(44, 0, vec![piece(0, 0, 44), piece(2, 403, 44)])], too_far(0, 41));
    let section = |at, pieces| Band { size: 400, at, pieces };
    check_one(First::Cross, vec![section(0, vec![piece(0, 0, 44)]), section(403, vec![piece(1, 0, 20)])], None);
    check_one(First::Cross, vec![section(0, vec![piece(1, 0, 20), piece(1, 23, 20)])], piece_too_far(0, 1));
    check_one(First::Cross, vec![section(0, vec![piece(2, 0, 44)])], piece_too_far(0, 0));
}
