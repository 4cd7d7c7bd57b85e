use super::figures::{Figures, Machines};
use super::ready::{Ready, ready};
use super::stock::{Joins, LeftOut, Place, Stack};
use super::wish::{Panel, Parts, Tiles, Wanted, Wish};
use super::{Unlock, sheet};
use crate::plan::Asked;
use crate::plan::field::problem::{Mix, Pattern};
use crate::plan::patience::{Patience, Progress};
use crate::quantity::{Currency, Decimal, Key, Length, Money, Units};
use crate::refusal::{PlanFigure, Refusal};
use crate::sheet::Shop;
use crate::sheet::make::{sources, stack};
use crate::story::{STANDS, tell};
use crate::wood::movement::Room;
use crate::wood::woods::Woods;

fn sixteenths(n: i64) -> Length {
    Length::INCH_64TH.times(4 * n).unwrap()
}

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

/// The rack after the stands, for another job; the planer takes nothing under 12 in.
fn rack(lines: &str) -> (Vec<Stack>, Figures) {
    let story = tell(&format!("{STANDS}\njob stools \"Stools\" 1 spec\n{lines}"));
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let figures = Figures::usual(Units::Inch).unwrap().with_machines(&shop.workshop.wood);
    let sources = sources(&shop, story.names.job("stools").unwrap()).unwrap();
    (sources.iter().map(|source| stack(&shop, source)).collect(), figures)
}

#[test]
fn the_rack_gives_what_is_free_with_its_sizes_and_woods() {
    let (stacks, figures) = rack("machine planer length 12 in\nmachine jointer length 10 in\nmachine table-saw length 9 in\n");
    let shown: Vec<(u32, Option<&str>, Option<Length>)> =
        stacks.iter().map(|stack| (stack.free, stack.wood.as_deref(), stack.sizes[2])).collect();
    let wanted = [(22, Some("ash-white"), 344), (9, Some("ash-white"), 304), (12, Some("cherry-black"), 176)];
    assert_eq!(shown, wanted.map(|(n, wood, length)| (n, wood, Some(sixteenths(length)))));
    assert!(stacks.iter().all(|stack| matches!(stack.place, Place::Rack { .. }) && !stack.guessed && stack.moves.is_some()));
    assert_eq!(figures.machines, Machines { plane: sixteenths(192), rip: sixteenths(144) });
    let (fewer, _) = rack("job desk \"Desk\" 1 spec\nreserve 4 squares for desk\nreserve 3 strips for stools\n");
    assert_eq!(fewer.iter().map(|stack| stack.free).collect::<Vec<_>>(), [22, 5, 12], "set apart for others is not free");
}

/// Whether a board 30 thick of oak joins.
#[track_caller]
fn joins(least: i64, woods: &[&str], n: u32, wanted: Result<(), LeftOut>) {
    let all = Woods::default();
    let oak = all.find("oak-european").unwrap();
    let price = Money::book(Decimal::from(4), Currency::read("EUR").unwrap()).ok();
    let board = Stack::bought((Key::read("oak-european").unwrap(), &oak), [30, 100, 900].map(mm), n, price);
    let wish = Joins { finished: None, thickness: mm(least), woods: woods.iter().map(|wood| (*wood).to_owned()).collect() };
    assert_eq!(board.joins(&wish).map(|_| ()), wanted, "{least} {woods:?} {n}");
}

#[test]
fn a_pile_that_does_not_join_says_why() {
    joins(30, &[], 5, Ok(()));
    joins(30, &["ash-white", "oak-european"], 5, Ok(()));
    joins(30, &["ash-white"], 5, Err(LeftOut::OtherWood));
    joins(32, &[], 5, Err(LeftOut::Thinner { by: mm(2) }));
    joins(32, &[], 0, Err(LeftOut::NoneFree));
}

fn board(n: u32, sides: [i64; 3]) -> Stack {
    let all = Woods::default();
    let oak = all.find("oak-european").unwrap();
    Stack::bought((Key::read("oak-european").unwrap(), &oak), sides.map(mm), n, None)
}

/// Strips of 43.5 mm (42.5 and half a millimetre of joint either side) out of pieces so wide, 2 mm trimmed off each edge.
#[track_caller]
fn ripped(width: Length, strips: Option<i64>) {
    let mut piece = board(7, [40, 1, 365]);
    piece.sizes[1] = Some(width);
    let strip = Length::TENTH_MM.times(425).unwrap();
    let panel = Panel { length: mm(1040), width: Some(mm(340)), thickness: mm(32), strip, split: true };
    assert_eq!(panel.rows(), Some(8));
    let ready = ready(Wish::Panel(panel), &[piece], Figures::usual(Units::Metric).unwrap()).unwrap();
    assert_eq!(ready.sources.first().map(|source| source.ripped), strips, "{width:?}");
    assert_eq!(ready.sources.first().map(|source| source.count), strips.map(|n| 7 * n));
}

#[test]
fn pieces_are_ripped_into_strips_first() {
    ripped(mm(150), Some(3));
    ripped(mm(140), Some(2)); // 136 and a kerf: 46.5 goes twice
    ripped(Length::TENTH_MM.times(1405).unwrap(), Some(3)); // 136.5 and a kerf are just three
    ripped(Length::TENTH_MM.times(475).unwrap(), Some(1)); // 43.5 and both edges
    // Trimmed they are too narrow, one as wide as the row or its strip no less than one in between.
    ripped(mm(47), None);
    ripped(mm(44), None);
    ripped(Length::TENTH_MM.times(435).unwrap(), None);
    ripped(Length::TENTH_MM.times(425).unwrap(), None);
    ripped(mm(40), None);
}

#[test]
fn rows_that_do_not_come_out_are_rounded_up() {
    let strip =
        |width: i64, strip: i64| Panel { length: mm(1), width: Some(mm(width)), thickness: mm(1), strip: mm(strip), split: false }.rows();
    assert_eq!([strip(340, 40), strip(341, 10), strip(40, 41)], [Some(9), Some(35), Some(1)]);
}

fn wanted(name: &str, n: i64, size: [i64; 3], wood: Option<&str>) -> Wanted {
    Wanted { name: name.into(), n, size: size.map(mm), glue: false, wood: wood.map(str::to_owned), rest_of: None }
}

fn asked(wish: Wish) -> Result<Ready, Refusal> {
    ready(wish, &[board(9, [40, 150, 900]), board(4, [20, 60, 1200])], Figures::usual(Units::Metric).unwrap())
}

/// Half a millimetre is what all lengths are multiples of, since a joint takes so much; without one it is a whole millimetre.
#[test]
fn the_unit_is_what_all_lengths_are_multiples_of() {
    let parts = |wood| Parts { sets: Some(3), parts: vec![wanted("leg", 4, [30, 40, 700], wood), wanted("rail", 2, [15, 40, 500], None)] };
    let ready = asked(Wish::Parts(parts(Some("oak-european")))).unwrap();
    let Asked::Parts(problem) = &ready.asked else { panic!("{ready:?}") };
    assert_eq!((ready.unit, problem.kerf, problem.parts[0].length, problem.piles[1].length), (500_000, 6, 1_400, 2_400));
    assert_eq!((&problem.parts[0].piles, &problem.parts[1].piles), (&Some(vec![0, 1]), &None));
    let Ok(Ready { asked: Asked::Sticks(problem), unit, .. }) = asked(Wish::Sticks(parts(Some("ash-white")))) else { panic!() };
    assert_eq!((unit, problem.end_trim, problem.parts[0].piles.as_deref()), (1_000_000, 6, Some(&[][..])));
}

/// Boards 40 x 150 and 20 x 60, 2 over: what a part of this section may be cut from.
#[track_caller]
fn sticks_for(size: [i64; 2], wood: Option<&str>, piles: Option<&[usize]>) {
    let part = wanted("leg", 4, [size[0], size[1], 350], wood);
    let Ok(Ready { asked: Asked::Sticks(problem), .. }) = asked(Wish::Sticks(Parts { sets: None, parts: vec![part] })) else { panic!() };
    assert_eq!(problem.parts[0].piles.as_deref(), piles, "{size:?}");
}

#[test]
fn a_stick_is_as_thick_and_as_wide_as_its_part() {
    sticks_for([36, 60], None, Some(&[0]));
    sticks_for([60, 36], None, Some(&[0])); // whichever way it lies
    sticks_for([18, 58], None, None);
    sticks_for([19, 58], None, Some(&[0]));
    sticks_for([18, 59], None, Some(&[0]));
    sticks_for([39, 60], None, Some(&[]));
    sticks_for([18, 58], Some("oak-european"), Some(&[0, 1]));
    sticks_for([18, 58], Some("ash-white"), Some(&[]));
}

#[test]
fn a_field_knows_its_unit_for_its_weight() {
    let size = [Some((mm(600), mm(5))), Some((mm(400), mm(5))), None];
    let tiles = Tiles {
        patterns: vec![Pattern::Stack],
        mix: vec![Mix::Single],
        size,
        layers: [1, 1],
        gap: mm(3),
        open: [mm(0); 2],
        overhang: mm(0),
        cut_min: mm(30),
        turn: true,
        long: None,
    };
    let Ok(Ready { asked: Asked::Field(problem), unit, .. }) = asked(Wish::Tiles(tiles)) else { panic!() };
    assert_eq!(
        (unit, problem.unit, problem.piles[0].density, problem.piles[0].species.as_str()),
        (1_000_000, 1_000_000, 702, "oak-european")
    );
}

/// Tiles of 40 and of 20, 2 over, for a field so high: as thick as they are planned.
#[track_caller]
fn tiled(high: Option<i64>, patterns: &[Pattern], wanted: [i64; 2]) {
    let size = [Some((mm(600), mm(5))), None, high.map(|high| (mm(high), mm(3)))];
    let (open, mix, overhang, cut_min) = ([mm(0); 2], vec![Mix::Single], mm(0), mm(30));
    let patterns = patterns.to_vec();
    let tiles =
        Tiles { patterns: patterns.clone(), mix, size, layers: [1, 4], gap: mm(0), open, overhang, cut_min, turn: true, long: None };
    let Ok(Ready { asked: Asked::Field(problem), unit, .. }) = asked(Wish::Tiles(tiles)) else { panic!() };
    assert_eq!(problem.piles.iter().map(|pile| pile.thickness * unit / 1_000_000).collect::<Vec<_>>(), wanted, "{high:?} {patterns:?}");
}

#[test]
fn tiles_are_planed_to_the_height_that_is_asked() {
    tiled(Some(20), &[Pattern::Running], [22, 20]);
    // Two of 30, four of 15; and of crossed courses two of 10.
    tiled(Some(60), &[Pattern::Running], [32, 17]);
    tiled(None, &[Pattern::Running], [40, 20]);
    tiled(Some(20), &[Pattern::Crossed], [12, 12]);
}

#[test]
fn a_wish_out_of_range_is_refused_by_name() {
    let parts = Parts { sets: None, parts: vec![wanted("leg", 0, [30, 40, 700], None)] };
    let refused = Refusal::PlanOutOfRange { figure: PlanFigure::Each, of: Some("leg".into()), met: 0, least: 1, most: 9_999 };
    assert_eq!(asked(Wish::Parts(parts)), Err(refused));
    let twice = Parts { sets: None, parts: vec![wanted("leg", 1, [30, 40, 700], None), wanted("leg", 1, [30, 40, 700], None)] };
    assert_eq!(asked(Wish::Parts(twice)).map(|_| ()), Err(Refusal::PlanNameTwice { name: "leg".into() }));
}

#[test]
fn a_pile_keeps_its_own_letter() {
    let letters = |labels: &[&str]| {
        let stock: Vec<Stack> = labels.iter().map(|label| Stack { label: label.to_string(), ..board(1, [20, 60, 500]) }).collect();
        super::ready::letters(&stock, &["E".to_owned()])
    };
    assert_eq!(letters(&["A", "C"]), ["A", "C"]);
    assert_eq!(letters(&["B", "", "A"]), ["B", "C", "A"], "a board to be bought has none of its own");
    assert_eq!(letters(&["A", "A", "B"]), ["A", "C", "B"], "of another haul, or in the job");
    assert_eq!(letters(&["a long name", "B"]), ["A", "B"]);
}

#[test]
fn letters_go_on_after_z() {
    let stacks: Vec<Stack> = (0..30).map(|_| board(1, [40, 150, 900])).collect();
    let parts = Parts { sets: None, parts: vec![wanted("leg", 1, [30, 40, 700], None)] };
    let ready = ready(Wish::Parts(parts), &stacks, Figures::usual(Units::Metric).unwrap()).unwrap();
    let letters: Vec<&str> = [0, 25, 26, 29].map(|place: usize| &*ready.sources[place].letter).to_vec();
    assert_eq!(letters, ["A", "Z", "AA", "AD"]);
}

/// Of what plans left of other piles no more can be had: where that alone would give one more, no pile is named.
#[test]
fn only_what_can_be_had_gives_one_more() {
    let named = |rests: bool| {
        let stock = [Stack { rests, ..board(2, [20, 40, 900]) }];
        let size = [20, 40, 400].map(mm);
        let leg = Wanted { name: "leg".into(), n: 4, size, glue: false, wood: None, rest_of: None };
        let ready = ready(Wish::Sticks(Parts { sets: Some(2), parts: vec![leg] }), &stock, Figures::usual(Units::Metric).unwrap()).unwrap();
        let answered = ready.asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
        let shown = sheet(&ready, &answered, Room::HEATED).unwrap();
        let of_part = |it: &Unlock| if let Unlock::Part { from, .. } = it { Some(from.map(|(source, _)| source)) } else { None };
        (shown.made, shown.short.iter().filter_map(of_part).collect::<Vec<_>>())
    };
    assert_eq!(named(false), (1, vec![Some(0)]));
    assert_eq!(named(true), (1, vec![None]));
}
