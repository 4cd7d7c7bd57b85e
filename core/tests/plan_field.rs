//! Fields: against figures in closed form, against every field there is on tiny random cases, and against the reference's plans.

#[path = "../examples/envelope/mod.rs"]
mod envelope;

use fivebar_core::plan::draw::Draw;
use fivebar_core::plan::field::check::{Broken, check};
use fivebar_core::plan::field::plan::{Field, Lie, Plan, Taken};
use fivebar_core::plan::field::problem::{Allow, Mix, Pattern, Pile, Problem, Target};
use fivebar_core::plan::field::{short, solve};
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::{Asked, Planned, field};

const PATTERNS: [Pattern; 5] = [Pattern::Stack, Pattern::Running, Pattern::Basket, Pattern::Herringbone, Pattern::Crossed];

fn solved(problem: &Problem, steps: Option<u64>) -> Planned<Plan> {
    let mut goes_on = |_: Progress<'_>| true;
    let planned = solve(problem, &mut Patience::new(steps, &mut goes_on), 1);
    let looked = check(problem, &planned.plan).map(|worth| worth.to_vec());
    assert_eq!(looked, Ok(planned.worth.clone()), "{problem:?} {planned:?}");
    planned
}

/// Tiles of 300 x 100 x 20 mm, so many of them, for one pattern; sizes in whole millimetres.
fn tiles(pattern: Pattern, count: i64, targets: [i64; 3]) -> Problem {
    let pile = Pile { id: "A".into(), species: "oak".into(), count, length: 300, width: 100, thickness: 20, density: 700, whole: 0 };
    Problem {
        unit: 1_000_000,
        patterns: vec![pattern],
        mix: vec![Mix::Single],
        targets: targets.map(|size| Some(Target { size, tolerance: 0 })),
        layers: [1, 9],
        gap: 0,
        open: [0, 0],
        overhang: 0,
        kerf: 0,
        allow: Allow::default(),
        machine_min: 0,
        cut_min: 0,
        turn: false,
        piles: vec![pile],
    }
}

/// A field that comes out exactly, in so many pieces, some of them cut; its glue area in square millimetres.
#[track_caller]
fn closed((pattern, size): (Pattern, [i64; 3]), [pieces, cut]: [i64; 2], glue: i128) {
    let planned = solved(&tiles(pattern, pieces, size), None);
    assert_eq!(planned.worth, [0, 0, i128::from(pieces), i128::from(cut)], "{pattern:?} {size:?}");
    assert!(planned.is_proven());
    let field = planned.plan.field.expect("laid");
    let cubic_mm: i64 = size.iter().product();
    assert_eq!((field.outer, field.glue_area), (size, glue), "{pattern:?}");
    assert_eq!(field.weight, i128::from((cubic_mm * 700 + 500_000) / 1_000_000), "volume by density, half up");
    let fewer = solved(&tiles(pattern, pieces - 1, size), None);
    assert!(fewer.worth > planned.worth, "one piece fewer can't fill it");
}

/// A closed field of W x D x kc has wood in all of it: pieces = W D k / (a b) where cut pieces come out of whole tiles. Its glue is k - 1
/// faces W D, and for each layer, c high, the joints: of a stack (columns - 1) D + (rows - 1) W; of running bond (rows - 1) W and in every
/// other row one joint more; of a basket the joints of blocks and within them; of herringbone half of all outlines less the border.
#[test]
fn fields_that_come_out_exactly_have_their_figures_in_closed_form() {
    closed((Pattern::Stack, [1_200, 500, 20]), [20, 0], 20 * (3 * 500 + 4 * 1_200));
    closed((Pattern::Stack, [1_200, 500, 60]), [60, 0], 60 * (3 * 500 + 4 * 1_200) + 2 * 1_200 * 500);
    closed((Pattern::Running, [1_200, 400, 20]), [16, 4], 20 * (3 * 1_200 + (2 * 3 + 2 * 4) * 100));
    closed((Pattern::Basket, [1_200, 900, 20]), [36, 0], 20 * (3 * 900 + 2 * 1_200 + 12 * 2 * 300));
    // Six by six cells: 8 tiles whole; the border leaves 4 pieces of two cells and 4 of one, a tile for each pair. Of the 60 faces
    // between cells 20 lie within a piece.
    closed((Pattern::Herringbone, [600, 600, 20]), [12, 8], 20 * (60 - 20) * 100);
    // Two by two blocks laid across each other: the faces that meet.
    closed((Pattern::Crossed, [300, 300, 40]), [6, 0], 300 * 300);
    closed((Pattern::Crossed, [600, 300, 80]), [24, 0], 3 * 600 * 300);
}

/// A bare board of W x D less its openings: p lines on q lines touch in p q squares of b x b.
#[test]
fn open_courses_touch_where_lines_cross() {
    let problem = Problem { open: [10, 100], ..tiles(Pattern::Crossed, 99, [300, 300, 40]) };
    let planned = solved(&problem, None);
    assert_eq!(planned.worth, [0, 0, 4, 0], "two lines with 100 between them do where three fill it");
    assert_eq!(planned.plan.field.map(|field| field.glue_area), Some(4 * 100 * 100));
}

/// Halves of 300: without a kerf a tile gives two, with one it gives one.
#[test]
fn the_kerf_decides_how_many_halves_a_tile_gives() {
    let taken = |kerf, gap| {
        let size = if gap == 0 { [1_200, 400, 20] } else { [4 * 303 - 3, 4 * 103 - 3, 20] };
        solved(&Problem { kerf, gap, ..tiles(Pattern::Running, 99, size) }, None).worth[2]
    };
    assert_eq!([taken(0, 0), taken(3, 0), taken(3, 3)], [16, 18, 16], "an open joint as wide as the kerf gives both halves again");
}

#[test]
fn every_reference_plan_is_met_and_proven() {
    let known: serde_json::Value = serde_json::from_str(include_str!("../../tests/yield/reference.json")).unwrap();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/yield/instances");
    let mut seen = 0;
    for file in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        let instance = envelope::read(&std::fs::read_to_string(&file).unwrap()).unwrap();
        let Asked::Field(problem) = &instance.problem else { continue };
        let best = known["results"][&instance.name]["value"].as_array().unwrap();
        let best: Vec<i128> = best.iter().map(|figure| figure.to_string().parse().unwrap()).collect();
        let planned = solved(problem, None);
        assert_eq!((&planned.worth, &planned.bound), (&best, &best), "{}", instance.name);
        seen += 1;
    }
    assert_eq!(seen, 11);
}

/// Draws a tiny case: every figure within a few units.
fn tiny(draw: &mut Draw) -> Problem {
    let mut to = |most: usize| i64::try_from(draw.below(most + 1)).unwrap();
    let target = |size: i64, tolerance: i64| (size < 30).then_some(Target { size, tolerance });
    let (least, narrow) = (1 + to(2), to(3));
    let mixes = [vec![Mix::Single], vec![Mix::Alternate], vec![Mix::Single, Mix::Alternate]];
    let pile = |id: &str, to: &mut dyn FnMut(usize) -> i64| Pile {
        id: id.into(),
        species: if to(1) == 0 { "oak" } else { "ash" }.into(),
        count: to(6),
        length: 1 + to(12),
        width: 1 + to(4),
        thickness: 1 + to(3),
        density: 250 * to(3),
        whole: 2 * to(8) * to(1),
    };
    Problem {
        unit: [1, 1_000, 1_000_000][to(2) as usize],
        patterns: PATTERNS.into_iter().filter(|_| to(1) == 0).collect(),
        mix: mixes[to(2) as usize].clone(),
        targets: [0; 3].map(|_| target(to(36), to(4))),
        layers: [least, least + to(2)],
        gap: [0, 0, 1, 2, 7][to(4) as usize],
        open: [narrow, narrow + to(4)],
        overhang: [0, 1, 3, 8][to(3) as usize],
        kerf: to(2),
        allow: Allow { length: to(1), width: 0, thickness: to(1) },
        machine_min: 3 * to(1),
        cut_min: [0, 0, 1, 2, 4][to(4) as usize],
        turn: to(1) == 0,
        piles: vec![pile("A", &mut to), pile("B", &mut to)],
    }
}

/// What a field is worth, its figures filled in as the checker expects them.
fn worth(problem: &Problem, mut field: Field) -> Option<[i128; 4]> {
    loop {
        match check(problem, &Plan { field: Some(field.clone()) }) {
            Ok(worth) => return Some(worth),
            Err(Broken::Tile { expected }) => field.tile = expected,
            Err(Broken::Outer { expected }) => field.outer = expected,
            Err(Broken::Pieces { expected }) => {
                let place = field.piles.iter().position(|pile| *pile == expected.pile)?;
                field.pieces[place] = expected;
            }
            Err(Broken::GlueArea { expected }) => field.glue_area = expected,
            Err(Broken::Weight { expected }) => field.weight = expected,
            Err(_) => return None,
        }
    }
}

/// The best of all fields there are.
fn brute(problem: &Problem) -> [i128; 4] {
    let mut best = check(problem, &Plan::default()).unwrap();
    let mut choices = vec![(Mix::Single, vec![0]), (Mix::Single, vec![1]), (Mix::Alternate, vec![0, 1]), (Mix::Alternate, vec![1, 0])];
    choices.retain(|(mix, _)| problem.mix.contains(mix));
    for (mix, piles) in choices {
        let stock: i64 = piles.iter().map(|pile| problem.piles[*pile].count).sum();
        for layers in problem.layers[0]..=problem.layers[1] {
            let pieces = piles.iter().map(|pile| Taken { pile: *pile, whole: 0, cut: 0, taken: 0 }).collect();
            let bare = Field {
                mix,
                piles: piles.clone(),
                lie: Lie::Crossed { lines: [0; 2], ends: [0; 2], open: [0; 2] },
                layers,
                tile: [0; 3],
                outer: [0; 3],
                pieces,
                glue_area: 0,
                weight: 0,
            };
            for lie in lies(problem, (stock, layers)) {
                best = worth(problem, Field { lie, ..bare.clone() }).map_or(best, |worth| best.min(worth));
            }
        }
    }
    best
}

fn lies(problem: &Problem, (stock, layers): (i64, i64)) -> Vec<Lie> {
    let mut all = vec![];
    for pattern in problem.patterns.iter().copied() {
        if pattern == Pattern::Crossed {
            crossed(problem, (stock, layers), &mut all);
            continue;
        }
        let most = if pattern == Pattern::Herringbone { stock * 6 } else { stock * 2 } + 1;
        for columns in 1..=most {
            for rows in (1..=most).take_while(|rows| columns * rows <= most * 2) {
                all.extend([false, true].map(|turn| Lie::Rows { pattern, columns, rows, turn }));
            }
        }
    }
    all
}

fn crossed(problem: &Problem, (stock, layers): (i64, i64), all: &mut Vec<Lie>) {
    let (odd, even) = ((layers + 1) / 2, layers / 2);
    let opens = |lines: i64| if lines == 1 { vec![0] } else { (problem.open[0]..=problem.open[1]).collect() };
    for ends in (0..stock * stock).map(|n| [n / stock + 1, n % stock + 1]) {
        for lines in (0..stock * stock).map(|n| [n / stock + 1, n % stock + 1]) {
            if odd * lines[0] * ends[0] + even * lines[1] * ends[1] <= stock {
                let pairs = opens(lines[0]).into_iter().flat_map(|one| opens(lines[1]).into_iter().map(move |other| [one, other]));
                all.extend(pairs.map(|open| Lie::Crossed { lines, ends, open }));
            }
        }
    }
}

/// The seeds are ours; nothing but the checker decides.
#[test]
fn inv16_no_field_beats_the_best_of_tiny_random_cases() {
    let mut draw = Draw::seeded(20_260_522);
    for nth in 0..150 {
        let problem = tiny(&mut draw);
        problem.check().unwrap();
        let best = brute(&problem).to_vec();
        let planned = solved(&problem, None);
        assert_eq!((&planned.worth, &planned.bound), (&best, &best), "case {nth}: {problem:?}");
        for steps in [0, 1, 5] {
            let hurried = solved(&problem, Some(steps));
            let ahead = fivebar_core::plan::better(&field::SENSES, &best, &hurried.bound);
            assert!(!ahead, "case {nth}: stopped after {steps}, {:?} is claimed", hurried.bound);
            assert_eq!(solved(&problem, Some(steps)), hurried, "the same steps, the same plan");
        }
    }
}

#[test]
fn what_is_lacking_is_named_by_pile() {
    let problem = tiles(Pattern::Stack, 17, [1_200, 500, 20]);
    let lacking = |problem: &Problem| {
        let mut goes_on = |_: Progress<'_>| true;
        short::lacking(problem, &solved(problem, None), &mut Patience::new(None, &mut goes_on))
    };
    let found = lacking(&problem).expect("three more fill it");
    assert_eq!((found.near, found.pieces), ([0, 0], vec![(0, 3)]));
    assert_eq!(lacking(&tiles(Pattern::Stack, 20, [1_200, 500, 20])), None);
}
