//! A top in rows: of which wood, how thick and in how many rows it could be made of the pieces there are, and what wastes least. Ours.

use super::{Source, Top, Unfit, WhyNot, back, less, nm};
use crate::quantity::{Count, Decimal, Key, Length};
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::ready::ripped;
use crate::sheet::plan::trim::step;
use crate::sheet::plan::wish::Panel;

/// A way to make a top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    pub pick: Pick,
    /// Of several woods.
    pub mixed: bool,
    /// Boards that could be bought may be taken for it.
    pub buys: bool,
    pub rows: Count,
    /// Thousandths of the length that is asked, as far as it can be laid; a thousand where all of it can.
    pub there: i64,
    /// How much of the wood taken is waste, about.
    pub waste: Decimal,
}

/// A wood, and how thick it is in the end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pick {
    /// None where it is not said, or where woods are mixed.
    pub wood: Option<Key>,
    pub thickness: Length,
}

/// More rows than these are proposed to nobody.
const ROWS_MOST: Count = 200;
const ALL: i64 = 1_000;

/// How wide one of so many rows is: to a tenth of a millimetre or a thirty-second of an inch, up, so that they make the width.
pub(super) fn strip(top: &Top, rows: Count, figures: &Figures) -> Length {
    let step = step(figures);
    // Rows that come out are as wide as they come out; of inches only where a tape reads it.
    rowed(top, rows, [step, if step == nm(Length::TENTH_MM) { 1 } else { step }])
}

/// The same as a plan has it that an older book keeps without: to a sixty-fourth of an inch, or just as it comes out.
pub(super) fn strip_before(top: &Top, rows: Count, figures: &Figures) -> Length {
    let tenth = nm(Length::TENTH_MM);
    let step = if step(figures) == tenth { tenth } else { nm(Length::INCH_64TH) };
    rowed(top, rows, [step, 1])
}

/// The width by the rows, up to a step; where it comes out, to a finer one.
fn rowed(top: &Top, rows: Count, [step, fine]: [i64; 2]) -> Length {
    let up = |n: i64, by: i64| n.saturating_add(by).saturating_sub(1).checked_div(by).unwrap_or(0);
    let row = up(nm(top.width), i64::from(rows));
    let exact = nm(top.width).checked_rem(i64::from(rows)) == Some(0) && row.checked_rem(fine) == Some(0);
    Length::nm(if exact { row } else { up(row, step).saturating_mul(step) }).unwrap_or_default()
}

/// Rows that are narrower than the least strip that is glued; one alone is glued to nothing.
pub(super) fn narrow(top: &Top, rows: Count, figures: &Figures) -> Option<WhyNot> {
    let wide = strip(top, rows, figures);
    is_narrow(top, rows, figures).then_some(WhyNot::Narrow { rows, wide, least: figures.strip_min })
}

fn is_narrow(top: &Top, rows: Count, figures: &Figures) -> bool {
    1 < rows && strip(top, rows, figures) < figures.strip_min
}

/// How many strips for so many rows so wide a piece gives, with what is jointed off; one row alone is glued to nothing.
pub(super) fn rips((rows, row): (Count, Length), width: Length, figures: &Figures) -> Count {
    let jointed = nm(row).saturating_add(nm(figures.joint).saturating_mul(2));
    let alone = (rows == 1).then_some(row);
    let strips = Length::nm(jointed).ok().and_then(|strip| ripped((alone, strip), figures, width));
    strips.and_then(|strips| Count::try_from(strips).ok()).unwrap_or(0)
}

/// The panel that is made this way.
pub(super) fn panel(top: &Top, way: &Way, figures: &Figures) -> Panel {
    let strip = strip(top, way.rows, figures);
    Panel { length: top.length, width: Some(top.width), thickness: way.pick.thickness, strip, split: top.split }
}

/// The pieces a way is made of; the others of its wood, and why they are not.
pub(super) fn parted(way: Option<&Way>, top: &Top, (figures, all): (&Figures, Vec<Source>)) -> (Vec<Source>, Vec<(Source, Unfit)>) {
    let Some(way) = way else { return (vec![], vec![]) };
    let row = strip(top, way.rows, figures);
    let (mut fit, mut unfit) = (vec![], vec![]);
    let of_it = |source: &Source| (way.mixed || source.pile.wood == way.pick.wood) && (way.buys || source.bought.is_none());
    for source in all.into_iter().filter(of_it) {
        match () {
            () if !thick_enough(&source, way.pick.thickness, figures) => unfit.push((source, Unfit::TooThin)),
            () if source.pile.width.is_none_or(|width| rips((way.rows, row), width, figures) == 0) => {
                unfit.push((source, Unfit::TooNarrow))
            }
            () => fit.push(source),
        }
    }
    (fit, unfit)
}

fn thick_enough(source: &Source, thickness: Length, figures: &Figures) -> bool {
    let rough = nm(thickness).saturating_add(nm(back(figures.allow)[0]));
    source.pile.thickness.is_some_and(|there| rough <= nm(there))
}

/// The ways of what lies there before those for which boards are bought: these where one of what lies there does not make all of it.
fn ways_rack_first(top: &Top, figures: &Figures, sources: &[Source]) -> Vec<Way> {
    let lying: Vec<Source> = sources.iter().filter(|source| source.bought.is_none()).cloned().collect();
    if lying.len() == sources.len() {
        return ways(top, figures, sources);
    }
    let mut all: Vec<Way> = ways(top, figures, &lying).into_iter().filter(|way| way.there == ALL).collect();
    let made = |way: &Way, all: &[Way]| all.iter().any(|it| it.pick == way.pick);
    let with = ways(top, figures, sources).into_iter().filter(|way| !made(way, &all)).collect::<Vec<_>>();
    all.extend(with);
    order(&mut all);
    all
}

/// The ways a top could be made: first the one that was chosen, else the best.
pub(super) fn all_ways(top: &Top, figures: &Figures, sources: &[Source]) -> Vec<Way> {
    let mut all = ways_rack_first(top, figures, sources);
    // Woods are mixed unasked by nobody; where one alone does not do, that several would is said.
    let best = all.first().map_or(0, |way| way.there);
    if !top.mixed && best < ALL {
        let mixed = ways_rack_first(&Top { mixed: true, ..top.clone() }, figures, sources);
        all.extend(mixed.into_iter().filter(|way| best < way.there).take(1));
    }
    let same = |way: &Way, pick: &Pick| (way.mixed || way.pick.wood == pick.wood, way.pick.thickness == pick.thickness);
    let picked =
        |thick: bool| top.pick.as_ref().and_then(|pick| all.iter().position(|way| matches!(same(way, pick), (true, it) if it || !thick)));
    if let Some(first) = picked(true).or_else(|| picked(false)) {
        let way = all.remove(first);
        all.insert(0, way);
    }
    all
}

/// The wood that was chosen, where no way is of it and others are: it is not given up for them.
pub(super) fn given_up(top: &Top, ways: &[Way], (figures, used): (&Figures, &[(Source, Option<Unfit>)])) -> Option<WhyNot> {
    let wood = top.pick.as_ref().filter(|_| !top.mixed && !ways.is_empty())?.wood.clone()?;
    if ways.iter().any(|way| !way.mixed && way.pick.wood.as_ref() == Some(&wood)) {
        return None;
    }
    let of_it = used.iter().filter(|(source, _)| source.pile.wood.as_ref() == Some(&wood));
    let widest = of_it.filter_map(|(source, _)| source.pile.width).max();
    let narrow = top.rows.zip(widest).and_then(|(rows, width)| too_narrow((rows, strip(top, rows, figures)), width, figures));
    Some(WhyNot::NotOfWood { wood, narrow })
}

/// Rows, how much of a width can be used and how much is needed, where it is too narrow for them.
fn too_narrow((rows, row): (Count, Length), width: Length, figures: &Figures) -> Option<(Count, [Length; 2])> {
    let [edge, joint] = if rows == 1 { [Length::ZERO; 2] } else { [figures.edge_trim, figures.joint] };
    let needed = row.plus(joint).and_then(|it| it.plus(joint)).ok()?;
    let usable = Length::nm(less(width, edge).max(0)).ok()?;
    (rips((rows, row), width, figures) == 0).then_some((rows, [usable, needed]))
}

/// Every wood and thickness, each in the rows that waste least by the lengths; the best first.
fn ways(top: &Top, figures: &Figures, sources: &[Source]) -> Vec<Way> {
    let mut woods: Vec<Option<Key>> = vec![];
    for source in sources.iter().filter(|_| !top.mixed) {
        if !woods.contains(&source.pile.wood) {
            woods.push(source.pile.wood.clone());
        }
    }
    let mut all = vec![];
    let groups: Vec<Option<&Option<Key>>> = if top.mixed { vec![None] } else { woods.iter().map(Some).collect() };
    for group in groups {
        let of: Vec<&Source> = sources.iter().filter(|source| group.is_none_or(|wood| source.pile.wood == *wood)).collect();
        for thickness in thicknesses(top, figures, &of) {
            let of: Vec<&Source> = of.iter().copied().filter(|source| thick_enough(source, thickness, figures)).collect();
            let pick = Pick { wood: group.cloned().flatten(), thickness };
            let buys = of.iter().any(|source| source.bought.is_some());
            let way = |rows| Some(Way { mixed: top.mixed, buys, ..way(top, (&pick, rows), (figures, &of))? });
            let mut alike: Vec<Way> = rows(top, figures, &of).into_iter().filter_map(way).collect();
            order(&mut alike);
            all.extend(alike.into_iter().next());
        }
    }
    order(&mut all);
    all
}

/// What does all of it comes first, then what lies there, then what wastes least, then the fewest rows.
fn order(all: &mut [Way]) {
    crate::quantity::order_by_key(all, |way| (std::cmp::Reverse(way.there), way.buys, way.waste, way.rows));
}

/// As thick as it is asked, else as thick as the pieces of each pile give.
fn thicknesses(top: &Top, figures: &Figures, of: &[&Source]) -> Vec<Length> {
    let planed = |source: &&Source| Length::nm(nm(source.pile.thickness?).saturating_sub(nm(back(figures.allow)[0]))).ok();
    let all = of.iter().filter_map(planed).filter(|it| Length::ZERO < *it).collect();
    top.thickness.map_or_else(|| once_each(all), |thickness| vec![thickness])
}

/// As many rows as are asked, else as many as each pile would make as wide as it is.
fn rows(top: &Top, figures: &Figures, of: &[&Source]) -> Vec<Count> {
    let of_pile = |source: &&Source| {
        let width = source.pile.width?;
        let net = less(width, figures.edge_trim).saturating_sub(nm(figures.joint).saturating_mul(2));
        let net = if top.width <= width { nm(width) } else { net };
        let rows = nm(top.width).saturating_add(net).saturating_sub(1).checked_div(net)?;
        Count::try_from(rows).ok().filter(|rows| (1..=ROWS_MOST).contains(rows))
    };
    let of_piles = || {
        let all = once_each(of.iter().filter_map(of_pile).collect());
        let wide: Vec<Count> = all.iter().copied().filter(|rows| !is_narrow(top, *rows, figures)).collect();
        if wide.is_empty() { all } else { wide }
    };
    top.rows.map_or_else(of_piles, |rows| vec![rows])
}

fn once_each<T: Ord>(mut all: Vec<T>) -> Vec<T> {
    all.sort_unstable();
    all.dedup();
    all
}

/// Strips of a pile: how long one is squared and as it lies, how many there are, how many a piece gives; one strip, the same finished, and
/// one piece in cubic nanometres.
struct Strips {
    long: i64,
    low: i64,
    n: i64,
    ripped: i64,
    strip: i128,
    planed: i128,
    piece: i128,
}

impl Strips {
    /// What goes back of one, where it is long enough to keep: it is cut off a strip that is planed.
    fn back(&self, rest: i64, keep: i64) -> i128 {
        let of = || self.planed.saturating_mul(rest.into()).checked_div(self.low.into()).unwrap_or(0);
        if keep <= rest { of() } else { 0 }
    }
}

fn strips(source: &Source, (rows, row, planed): (Count, Length, Length), figures: &Figures) -> Option<Strips> {
    let (thickness, width, length) = (source.pile.thickness?, source.pile.width?, source.pile.length?);
    let ripped = i64::from(rips((rows, row), width, figures));
    let long = less(length, figures.square);
    let jointed = nm(row).saturating_add(nm(figures.joint).saturating_mul(2)).min(nm(width));
    let cube = |[thick, wide]: [i64; 2]| [thick, wide, nm(length)].into_iter().fold(1_i128, |sum, side| sum.saturating_mul(side.into()));
    let [strip, piece] = [jointed, nm(width)].map(|wide| cube([nm(thickness), wide]));
    let planed = cube([nm(planed).min(nm(thickness)), nm(row).min(nm(width))]);
    let n = i64::from(source.n).saturating_mul(ripped);
    (0 < long && 0 < n).then(|| Strips { long, low: nm(length), n, ripped, strip, planed, piece })
}

/// The waste by the lengths alone: the longest strips first until there is length enough, with a cut for each row where they do not come
/// out. What is left of them and worth keeping goes back.
fn way(top: &Top, (pick, rows): (&Pick, Count), (figures, of): (&Figures, &[&Source])) -> Option<Way> {
    let row = strip(top, rows, figures);
    let mut all: Vec<Strips> = of.iter().filter_map(|source| strips(source, (rows, row, pick.thickness), figures)).collect();
    all.sort_unstable_by_key(|strips| std::cmp::Reverse(strips.long));
    let n = i64::from(rows);
    let asked = nm(top.length).checked_mul(n)?;
    let laid = laid(top, n, (figures, &all))?;
    let (mut taken, sum) = (0_i128.saturating_sub(laid.kept), laid.sum);
    for (strips, n) in all.iter().zip(&laid.used) {
        let pieces = n.saturating_add(strips.ripped).saturating_sub(1).checked_div(strips.ripped)?;
        let left = pieces.saturating_mul(strips.ripped).saturating_sub(*n);
        let kept = if nm(figures.keep_min) <= strips.low { i128::from(left) } else { 0 };
        taken = taken.saturating_add(strips.piece.saturating_mul(pieces.into())).saturating_sub(strips.strip.saturating_mul(kept));
    }
    let there = i128::from(sum).saturating_mul(ALL.into()).checked_div(asked.into())?;
    let sides = [nm(top.length), nm(row).saturating_mul(n), nm(pick.thickness)];
    let whole = sides.into_iter().fold(1_i128, |sum, side| sum.saturating_mul(side.into()));
    let finished = whole.checked_div(ALL.into())?.saturating_mul(there);
    let wasted = taken.saturating_sub(finished).max(0);
    let waste = wasted.saturating_mul(ALL.into()).checked_div(taken).unwrap_or(0);
    let (there, waste) = (i64::try_from(there).ok()?, Decimal::try_from_i128_with_scale(waste, 3).ok()?);
    (!all.is_empty()).then(|| Way { pick: pick.clone(), mixed: false, buys: false, rows, there, waste })
}

/// Cut in pieces, the rows come out of the strips one after the other, but where as many whole strips do it; else each begins with strips of
/// its own.
fn laid(top: &Top, rows: i64, (figures, all): (&Figures, &[Strips])) -> Option<Laid> {
    let mut laid = Laid { used: vec![0; all.len()], sum: 0, kept: 0 };
    let (length, kerf, keep) = (nm(top.length), nm(figures.kerf), nm(figures.keep_min));
    if top.split {
        let whole = self::laid(&Top { split: false, ..top.clone() }, rows, (figures, all))?;
        let comes_out = all.iter().all(|strips| length.checked_rem(strips.long) == Some(0));
        let kerf = if comes_out { 0 } else { kerf };
        laid.run(all, (length.checked_add(kerf)?.checked_mul(rows)?, kerf), keep);
        // Of what is laid, each row's kerf is none of its length.
        laid.sum = laid.sum.saturating_sub(kerf.checked_mul(rows)?).max(0);
        if whole.used == laid.used && whole.sum == length.checked_mul(rows)? {
            return Some(whole);
        }
    } else {
        for _ in 0..rows {
            if laid.row(all, (length, kerf), keep).is_none() {
                break;
            }
        }
    }
    Some(laid)
}

/// Strips laid end to end: how many of each pile, how long they are together, and what goes back of the last ones, in cubic nanometres.
struct Laid {
    used: Vec<i64>,
    sum: i64,
    kept: i128,
}

impl Laid {
    /// So much of length from the longest strips that are left.
    fn run(&mut self, all: &[Strips], (asked, kerf): (i64, i64), keep: i64) {
        let mut lacks = asked;
        for (strips, used) in all.iter().zip(&mut self.used) {
            let n = lacks.saturating_add(strips.long).saturating_sub(1).checked_div(strips.long).unwrap_or(0);
            let n = n.min(strips.n.saturating_sub(*used));
            *used = used.saturating_add(n);
            lacks = lacks.saturating_sub(strips.long.saturating_mul(n));
            // The kerf behind the last cut of a row is in what is asked.
            let rest = if 0 < kerf { 0_i64.saturating_sub(lacks) } else { 0 };
            if 0 < n {
                self.kept = self.kept.saturating_add(strips.back(rest, keep));
            }
            if lacks <= 0 {
                break;
            }
        }
        self.sum = self.sum.saturating_add(asked.saturating_sub(lacks.max(0)));
    }

    /// A row of whole strips, the longest first, and a piece of the shortest that ends it; nothing is taken where it can't be whole.
    fn row(&mut self, all: &[Strips], (length, kerf): (i64, i64), keep: i64) -> Option<()> {
        let (mut used, mut lacks) = (self.used.clone(), length);
        for (strips, used) in all.iter().zip(&mut used) {
            let there = strips.n.saturating_sub(*used);
            let n = lacks.checked_div(strips.long)?.min(there);
            *used = used.saturating_add(n);
            lacks = lacks.saturating_sub(strips.long.saturating_mul(n));
            if n < there {
                break; // One of these is long enough for what lacks.
            }
        }
        if 0 < lacks {
            let mut left = all.iter().zip(&mut used).rev();
            let (strips, used) = left.find(|(strips, used)| lacks <= strips.long && **used < strips.n)?;
            *used = used.saturating_add(1);
            self.kept = self.kept.saturating_add(strips.back(strips.long.saturating_sub(lacks).saturating_sub(kerf), keep));
        }
        (self.used, self.sum) = (used, self.sum.saturating_add(length));
        Some(())
    }
}
