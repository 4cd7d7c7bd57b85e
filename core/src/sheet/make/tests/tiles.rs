//! Tiles of a length that was asked: several out of each board, and boards are what is taken. Reckoned by hand.

use super::later::Bench;
use super::*;
use crate::ledger::kind::plan::SawSet;
use crate::plan::patience::{Patience, Progress};
use crate::sheet::make::keep::again;
use crate::sheet::plan::{CutLine, Unlock};

const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile boards maple-sugar 25 x 80 x 680 mm\n\
    count 20 boards\njob bench \"Bench\" 1 spec\n";

fn field(pattern: Pattern, [wide, deep]: [i64; 2], tile: Option<i64>) -> What {
    let sides = [Some(mm(wide)), Some(mm(deep)), None];
    What::Field(Field { sides, tolerance: mm(3), patterns: vec![pattern], two: false, tile: tile.map(mm) })
}

fn of(bench: &Bench, what: What) -> Result<(Given, Answered, PlanSheet), WhyNot> {
    let job = bench.story.names.job("bench").unwrap();
    let given = given(&bench.shop(), &Ask { job, what, turned: vec![], bought: vec![], without: vec![], over: None })?;
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    Ok((given, answered, shown))
}

/// Boards cut alike: how many, the lengths of their pieces, and what goes back of each.
fn cut(line: &CutLine) -> (i64, Vec<i64>, i64) {
    let whole = |length: Length| length.as_nm() / 1_000_000;
    let pieces = line.pieces.iter().flat_map(|cut| (0..cut.n).map(|_| whole(cut.size[0]))).collect();
    (line.n, pieces, line.remainder.map_or(0, whole))
}

/// A field of tiles so long: how it comes out, the boards it takes, how they are cut, and the cuts.
#[track_caller]
fn check((pattern, sides, tile): (Pattern, [i64; 2], i64), boards: Count, lines: &[(i64, &[i64], i64)], cuts: i64) -> PlanSheet {
    let (_, _, shown) = of(&Bench::of(RACK), field(pattern, sides, Some(tile))).unwrap();
    let laid = shown.laid.unwrap();
    assert_eq!([laid.sides[0], laid.sides[1], laid.tile[0]], [sides[0], sides[1], tile].map(mm), "{laid:?}");
    assert_eq!(shown.used.iter().map(|used| (used.pieces, used.used, used.there)).collect::<Vec<_>>(), [(boards, i64::from(boards), 20)]);
    let lines: Vec<_> = lines.iter().map(|(n, pieces, rest)| (*n, pieces.to_vec(), *rest)).collect();
    assert_eq!(shown.lines.iter().map(cut).collect::<Vec<_>>(), lines);
    assert_eq!(shown.cuts, cuts);
    shown
}

/// 80 wide gives 75: 2 off each edge, half a millimetre off each glued one. Twelve of 160 x 75 are 480 x 300: four come out of 680 with 2.5
/// off each end, so three boards do, each cut five times. 4.08 litres are taken, and 480 x 300 x 23 finished.
#[test]
fn a_trivet_of_twelve_tiles_is_three_boards() {
    let shown = check((Pattern::Stack, [480, 300], 160), 3, &[(3, &[160; 4], 0)], 15);
    assert_eq!(shown.picture.pieces.len(), 12);
    let volumes = [shown.waste.whole, shown.waste.taken, shown.waste.finished].map(|volume| volume.litres());
    assert_eq!(volumes, [4_080, 4_080, 3_312].map(|thousandths| Decimal::new(thousandths, 3)));
    // One of each board makes it of four, cut to 480.
    let (_, _, shown) = of(&Bench::of(RACK), field(Pattern::Stack, [480, 300], None)).unwrap();
    assert_eq!(shown.used.iter().map(|used| used.pieces).collect::<Vec<_>>(), [4]);
}

/// Six of 100 come out of a board; the second gives three, and behind them 366 go back.
#[test]
fn the_last_board_gives_as_many_as_lack() {
    check((Pattern::Stack, [300, 225], 100), 2, &[(1, &[100; 6], 0), (1, &[100; 3], 366)], 11);
}

/// Two rows of brick: three whole tiles and two halves. Of one tile the halves do not come, with a kerf between; of one board all five do: 652 of 675.
#[test]
fn halves_of_brick_come_of_tiles() {
    check((Pattern::Running, [320, 150], 160), 1, &[(1, &[160, 160, 160, 80, 80], 0)], 6);
}

/// Two of 75 side by side are 150, three of 40 are 120.
#[test]
fn tiles_side_by_side_are_as_long_as_one() {
    check((Pattern::Basket, [300, 300], 150), 2, &[(2, &[150; 4], 0)], 10);
    let (_, _, shown) = of(&Bench::of(RACK), field(Pattern::Herringbone, [360, 240], Some(120))).unwrap();
    let laid = shown.laid.unwrap();
    assert_eq!((laid.sides[0], laid.sides[1], laid.tile), (mm(360), mm(240), [120, 60].map(mm)));
}

#[test]
fn a_length_out_of_range_is_refused_with_its_limit() {
    let refused = |tile: i64| of(&Bench::of(RACK), field(Pattern::Stack, [480, 300], Some(tile))).map(|_| ());
    assert_eq!(refused(59), Err(WhyNot::TileShort { tile: mm(59), least: mm(60) }));
    assert_eq!(refused(676), Err(WhyNot::TileLong { tile: mm(676), longest: mm(675) }));
    assert_eq!([refused(60), refused(675)], [Ok(()), Ok(())]);
    // A pile that gives none is left out where another does.
    let two = Bench::of(&format!("{RACK}pile short maple-sugar 25 x 80 x 150 mm\ncount 9 short\n"));
    let (given, ..) = of(&two, field(Pattern::Stack, [480, 300], Some(160))).unwrap();
    assert_eq!(given.left_out.iter().map(|(_, why)| *why).collect::<Vec<_>>(), [Unfit::TooShort]);
}

/// Boards are taken, and tiles of them are said when it is shown again; taken back, all lie there.
#[test]
fn boards_are_taken_and_given_back() {
    let mut bench = Bench::of(RACK);
    let plan = of(&bench, field(Pattern::Stack, [480, 300], Some(160))).unwrap();
    let job = plan.0.ask.job;
    let lying = |bench: &Bench| sources(&bench.shop(), job).unwrap().iter().map(|source| (source.in_job, source.n)).collect::<Vec<_>>();
    let used = bench.uses(&plan, false).unwrap();
    assert_eq!(lying(&bench), [(false, 17), (true, 3)]);
    let kept = bench.shop().job(job).unwrap().plans[0].clone();
    let (given, answered) = again(&bench.shop(), &kept, &[]).unwrap();
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!((&shown.lines, &shown.waste, &shown.used, shown.cuts), (&plan.2.lines, &plan.2.waste, &plan.2.used, plan.2.cuts));
    assert_eq!((given.ask.what, given.ready.sources), (plan.0.ask.what, plan.0.ready.sources));
    let act = used.iter().find_map(|entry| entry.act).unwrap();
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!(lying(&bench), [(false, 20)]);
}

/// A row that says more tiles of a board than come out of it, or takes more boards than there were, is no plan.
#[test]
fn tiles_that_do_not_come_out_of_their_boards_are_no_plan() {
    let bench = Bench::of(RACK);
    let (given, answered, _) = of(&bench, field(Pattern::Stack, [480, 300], Some(160))).unwrap();
    let refused = |spoil: &dyn Fn(&mut crate::sheet::plan::ready::Source)| {
        let mut ready = given.ready.clone();
        ready.sources.iter_mut().for_each(spoil);
        sheet(&ready, &answered, given.room).map(|_| ()).err()
    };
    assert_eq!(refused(&|_| {}), None);
    assert_eq!(refused(&|source| source.tiles = 5), Some(Refusal::PlanBroken));
    assert_eq!(refused(&|source| source.tiles = 0), Some(Refusal::PlanBroken));
    assert_eq!(refused(&|source| source.count = 2), Some(Refusal::PlanBroken));
    assert_eq!(refused(&|source| source.size[2] = mm(653)), Some(Refusal::PlanBroken));
}

/// What a larger field lacks is said in boards: of two there are eight tiles, and twelve are wanted.
#[test]
fn what_is_short_is_boards() {
    let two = Bench::of(&RACK.replace("count 20", "count 2"));
    let (_, _, shown) = of(&two, field(Pattern::Stack, [480, 300], Some(160))).unwrap();
    assert_eq!(shown.short, [Unlock::Source { source: 0, n: 1 }]);
}

/// Of whole boards a herringbone is laid where it is no smaller than its tiles; else a tile length is to be said. 675 holds nine of 75.
#[test]
fn a_herringbone_of_whole_boards_is_as_large_as_its_tiles() {
    let bench = Bench::of(RACK);
    let of_boards = |sides| of(&bench, field(Pattern::Herringbone, sides, None)).map(|(.., shown)| shown.laid.map(|laid| laid.tile[0]));
    assert_eq!(of_boards([750, 675]), Ok(Some(mm(675))));
    assert_eq!(of_boards([750, 600]), Err(WhyNot::TileToSay { tile: mm(675), side: mm(600) }));
    assert!(of(&bench, field(Pattern::Herringbone, [750, 600], Some(150))).is_ok());
    // Among others it is left out, and of two piles the one that is too long.
    let any = What::Field(Field {
        patterns: vec![Pattern::Stack, Pattern::Herringbone],
        ..if let What::Field(field) = field(Pattern::Stack, [480, 300], None) { field } else { Field::default() }
    });
    let (given, ..) = of(&bench, any).unwrap();
    let Asked::Field(problem) = &given.ready.asked else { panic!("a field") };
    assert_eq!(problem.patterns, [Pattern::Stack]);
    let two = Bench::of(&format!("{RACK}pile short maple-sugar 25 x 80 x 305 mm\ncount 40 short\n"));
    let (given, _, shown) = of(&two, field(Pattern::Herringbone, [450, 300], None)).unwrap();
    assert_eq!((given.left_out.len(), given.left_out[0].1, shown.laid.unwrap().tile[0]), (1, Unfit::TooLong, mm(300)));
}

/// Two boards give eight of twelve tiles. The field of eight is used: it lacks a board still, and that is looked for on; the one of twelve
/// ends it.
#[test]
fn a_field_that_lacks_pieces_is_looked_for_on() {
    let looked_for = |boards: u32| {
        let mut bench = Bench::of(&RACK.replace("count 20", &format!("count {boards}")));
        let two = of(&Bench::of(&RACK.replace("count 20", "count 2")), field(Pattern::Stack, [480, 300], Some(160))).unwrap();
        let sought = super::super::seek::seek(&bench.book, &two.0, &two.2).unwrap();
        assert_eq!((sought.shape, sought.pieces.len(), sought.makes), (Shape::Field, 1, None));
        bench.order(Command::Plan(PlanCommand::LookFor(Box::new(sought)))).unwrap();
        let plan = of(&bench, field(Pattern::Stack, [480, 300], Some(160))).unwrap();
        bench.uses(&plan, false).unwrap();
        fold::workshop(&bench.book).sought.len()
    };
    assert_eq!([looked_for(2), looked_for(3)], [1, 0]);
}

/// Twenty white oak of 24 in give forty tiles of 8, and behind each two 7 7/8 are over. A herringbone of 36 x 18 takes 36 whole tiles at the most,
/// and its shorter pieces of 2, 4 and 6 come of what is over: by hand it is no more than 16 boards.
const OAK: &str = "2026-03-02 09:00 +01:00 workshop USD inch\nleave for yard\npile oak oak-white 1 x 2 1/2 x 24 in\ncount 20 oak\njob bench \"Bench\" 1 spec\n";

fn inches(n: i64) -> Length {
    Length::INCH_64TH.times(64 * n).unwrap()
}

fn herringbone([wide, deep]: [i64; 2]) -> What {
    let (sides, tolerance) = ([Some(inches(wide)), Some(inches(deep)), None], Length::INCH_64TH.times(8).unwrap());
    What::Field(Field { sides, tolerance, patterns: vec![Pattern::Herringbone], two: false, tile: Some(inches(8)) })
}

/// So many of the boards, a kerf of 1/16 in, and pieces of 2 in may be cut.
fn of_oak(n: Count) -> Bench {
    let mut bench = Bench::of(&OAK.replace("count 20", &format!("count {n}")));
    let mut all = [None; 13];
    (all[0], all[11]) = (Some(Length::INCH_64TH.times(4).unwrap()), Some(inches(2)));
    bench.order(Command::Plan(PlanCommand::SetSaw(SawSet::of(all, None)))).unwrap();
    bench
}

/// How large a herringbone of so many boards comes out, the boards it takes, and how many more bring it nearer.
#[track_caller]
fn laid(n: Count, sides: [i64; 2]) -> ([Length; 2], Count, Vec<Unlock>) {
    let (.., shown) = of(&of_oak(n), herringbone(sides)).unwrap();
    let laid = shown.laid.unwrap();
    assert_eq!(laid.tile, [8, 2].map(inches));
    ([laid.sides[0], laid.sides[1]], shown.used.iter().map(|used| used.pieces).sum(), shown.short)
}

#[test]
fn shorter_tiles_come_of_the_ends_of_boards_before_a_field_is_made_smaller() {
    let (sides, boards, short) = laid(20, [36, 18]);
    assert_eq!((sides, short), ([36, 18].map(inches), vec![]));
    assert!(boards <= 16, "{boards}");
    assert_eq!(laid(16, [36, 18]).0, [36, 18].map(inches));
}

/// How many more bring it nearer is what a plan of so many more says.
#[test]
fn more_boards_are_said_to_bring_a_field_nearer_only_where_they_do() {
    for n in 8..16 {
        let (sides, _, short) = laid(n, [36, 18]);
        let off = |[wide, deep]: [Length; 2]| {
            [(wide, 36), (deep, 18)].map(|(side, wanted)| (nm(side) - nm(inches(wanted))).abs()).iter().sum::<i64>()
        };
        match short.as_slice() {
            [] => (),
            [Unlock::Source { source: 0, n: more }] => {
                let with = laid(n + Count::try_from(*more).unwrap(), [36, 18]).0;
                assert!(off(with) < off(sides), "{n} and {more}: {sides:?}, {with:?}");
            }
            _ => panic!("{n}: {short:?}"),
        }
    }
}

/// A field of so many boards that lie there, and so many that could be bought.
fn with_boards(bench: &Bench, n: Count) -> (Given, Answered, PlanSheet) {
    let job = bench.story.names.job("bench").unwrap();
    let size = [4, 10, 96].map(|quarters| Length::INCH_64TH.times(16 * quarters).unwrap());
    let bought = vec![Boards { wood: Key::read("oak-white"), size, n, price: None }];
    let ask = Ask { job, what: herringbone([36, 18]), turned: vec![], bought, without: vec![], over: None };
    let given = given(&bench.shop(), &ask).unwrap();
    let answered = given.ready.asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    (given, answered, shown)
}

/// Sixteen boards do: fourteen lie there, and two are bought and are a pile of their own, in one field with those alike.
#[test]
fn boards_alike_are_one_pile_to_a_field() {
    let (given, _, shown) = with_boards(&of_oak(14), 2);
    let laid = shown.laid.unwrap();
    assert_eq!((laid.sides[0], laid.sides[1]), (inches(36), inches(18)));
    let used = |shown: &PlanSheet| shown.used.iter().map(|used| (used.source, used.pieces, used.there)).collect::<Vec<_>>();
    assert_eq!((used(&shown), given.sources.len()), (vec![(0, 14, 14), (1, 2, 2)], 2));
    assert_eq!((buy::not_bought(&given, &shown), shown.short.len()), (vec![(1, 2, None)], 0));
    // Each tile of the picture comes from a board of its pile.
    let lines = |source| shown.lines.iter().filter(move |line| line.source == source);
    for source in [0, 1] {
        let cut: i64 = lines(source).map(|line| line.n * line.pieces.iter().map(|cut| cut.n).sum::<i64>()).sum();
        let drawn = shown.picture.pieces.iter().filter(|piece| piece.source == source).count();
        assert_eq!((cut, lines(source).map(|line| line.n).sum()), (i64::try_from(drawn).unwrap(), [14, 2][source]), "{source}");
    }
    // What lies there comes first; of more no more are bought.
    let (.., shown) = with_boards(&of_oak(14), 9);
    assert_eq!(used(&shown)[0], (0, 14, 14));
}

/// Two piles alike on the rack: both are taken of, in one act, and the plan is read again as it was.
#[test]
fn a_field_of_two_piles_alike_is_taken_from_both() {
    let two = OAK.replace("count 20 oak", "count 14 oak\npile more oak-white 1 x 2 1/2 x 24 in\ncount 3 more");
    let mut bench = Bench::of(&two);
    let mut all = [None; 13];
    (all[0], all[11]) = (Some(Length::INCH_64TH.times(4).unwrap()), Some(inches(2)));
    bench.order(Command::Plan(PlanCommand::SetSaw(SawSet::of(all, None)))).unwrap();
    let plan = of(&bench, herringbone([36, 18])).unwrap();
    assert_eq!(plan.2.laid.map(|laid| [laid.sides[0], laid.sides[1]]), Some([36, 18].map(inches)));
    let used: Count = plan.2.used.iter().map(|used| used.pieces).sum();
    assert_eq!((plan.2.used.len(), used), (2, 16));
    bench.uses(&plan, false).unwrap();
    let job = plan.0.ask.job;
    let in_job: Vec<Count> = sources(&bench.shop(), job).unwrap().iter().filter(|it| it.in_job).map(|it| it.n).collect();
    assert_eq!(in_job, plan.2.used.iter().map(|used| used.pieces).collect::<Vec<_>>());
    let kept = bench.shop().job(job).unwrap().plans[0].clone();
    let (given, answered) = again(&bench.shop(), &kept, &[]).unwrap();
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!((&shown.lines, &shown.waste, &shown.used, &shown.picture), (&plan.2.lines, &plan.2.waste, &plan.2.used, &plan.2.picture));
}

/// Sixteen boards of oak make the field with shorter tiles of their ends; of two of walnut, of which it takes none, no more tiles are counted on
/// than come whole.
#[test]
fn boards_that_a_field_takes_none_of_give_no_more_than_whole_tiles() {
    let two = OAK.replace("count 20 oak", "count 16 oak\npile walnut walnut-black 1 x 2 1/2 x 24 in\ncount 2 walnut");
    let mut bench = Bench::of(&two);
    let mut all = [None; 13];
    (all[0], all[11]) = (Some(Length::INCH_64TH.times(4).unwrap()), Some(inches(2)));
    bench.order(Command::Plan(PlanCommand::SetSaw(SawSet::of(all, None)))).unwrap();
    let (given, _, shown) = of(&bench, herringbone([36, 18])).unwrap();
    assert_eq!(shown.laid.map(|laid| [laid.sides[0], laid.sides[1]]), Some([36, 18].map(inches)));
    let crate::plan::Asked::Field(problem) = &given.ready.asked else { unreachable!() };
    let whole = given.ready.sources.iter().map(|source| source.count * source.tiles).collect::<Vec<_>>();
    let counted = problem.piles.iter().map(|pile| pile.count).collect::<Vec<_>>();
    assert!(whole[0] < counted[0], "{whole:?} {counted:?}");
    assert_eq!(counted[1], whole[1]);
}
