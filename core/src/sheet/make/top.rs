//! A top in rows: of which wood, how thick and in how many rows it could be made of the pieces there are, and what wastes least. Ours.

mod estimate;

use super::{Ask, Given, Source, Top, Unfit, What, Which, WhyNot, back, fitting, is_used, less, nm};
use crate::quantity::{Count, Decimal, Key, Length};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::off::sawn;
use crate::sheet::plan::ready::ripped;
use crate::sheet::plan::trim::step;
use crate::sheet::plan::wish::{Panel, Wish};
use estimate::way;

/// A way to make a top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    pub pick: Pick,
    /// Of several woods.
    pub mixed: bool,
    /// Boards that could be bought may be taken for it.
    pub buys: bool,
    /// How much of such boards it takes, about, in cubic nanometres: what lies there goes first.
    pub bought: i128,
    pub rows: Count,
    /// Thousandths of the length that is asked, as far as it can be laid; a thousand where all of it can.
    pub there: i64,
    /// How much of the wood taken is waste, about; of one that was planned, as it is in that plan.
    pub waste: Decimal,
    /// It was planned: its waste is no estimate.
    pub planned: bool,
}

/// A wood, and how thick it is in the end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pick {
    /// None where it is not said, or where woods are mixed.
    pub wood: Option<Key>,
    pub thickness: Length,
    /// Pieces more than twice as thick as is needed are taken for it, too.
    pub thick: bool,
    /// Pieces of this width alone; of any where nothing is said.
    pub wide: Option<Length>,
    /// Without this pile.
    pub without: Option<Which>,
}

impl Way {
    /// Of one wood and as thick as another, in as many rows or not.
    pub fn is_like(&self, other: &Way) -> bool {
        (self.mixed, &self.pick.wood, self.pick.thickness) == (other.mixed, &other.pick.wood, other.pick.thickness)
    }
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

/// How many strips for so many rows so wide a piece gives, with what is jointed off; one row alone is glued to nothing, and what a plan had
/// ripped and planed is a strip as it is for rows just as wide.
pub(super) fn rips((rows, row): (Count, Length), (width, planed): (Length, bool), figures: &Figures) -> Count {
    if planed && width == row {
        return 1;
    }
    let alone = (rows == 1).then_some(row);
    let strips = sawn(row, figures).ok().and_then(|strip| ripped((alone, strip), figures, width));
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
            () if !way.pick.thick && is_held_back(&source, way.pick.thickness, figures) => unfit.push((source, Unfit::HeldBack)),
            () if !is_so_wide(&source, &way.pick) => unfit.push((source, Unfit::OtherWidth)),
            () if is_without(&source, &way.pick) => unfit.push((source, Unfit::LeftForLess)),
            () if source.pile.width.is_none_or(|width| rips((way.rows, row), (width, source.planed), figures) == 0) => {
                unfit.push((source, Unfit::TooNarrow))
            }
            () => fit.push(source),
        }
    }
    (fit, unfit)
}

fn thick_enough(source: &Source, thickness: Length, figures: &Figures) -> bool {
    let rough = nm(thickness).saturating_add(nm(back(figures.allow)[0]));
    source.pile.thickness.is_some_and(|there| rough <= nm(there) || source.planed && there == thickness)
}

/// More than twice as thick as is needed: more of it would be planed away than stays. Ours.
pub(super) fn is_held_back(source: &Source, thickness: Length, figures: &Figures) -> bool {
    let rough = nm(thickness).saturating_add(nm(back(figures.allow)[0]));
    source.pile.thickness.is_some_and(|there| rough.saturating_mul(2) < nm(there))
}

/// The ways of what lies there before those for which boards are bought: these where one of what lies there does not make all of it.
fn ways_rack_first(top: &Top, figures: &Figures, sources: &[Source]) -> Vec<Way> {
    let lying: Vec<Source> = sources.iter().filter(|source| source.bought.is_none()).cloned().collect();
    if lying.len() == sources.len() {
        return ways(top, figures, sources);
    }
    let mut all: Vec<Way> = ways(top, figures, &lying).into_iter().filter(|way| way.there == ALL).collect();
    let made = |way: &Way, all: &[Way]| all.iter().any(|it| it.is_like(way));
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
    let same = |way: &Way, pick: &Pick| way.mixed || way.pick.wood == pick.wood;
    let pieces = |pick: &Pick| (pick.thick, pick.wide, pick.without);
    let near = |way: &Way, pick: &Pick| (way.pick.thickness == pick.thickness, pieces(&way.pick) == pieces(pick));
    let picked = |so: [bool; 2]| {
        let pick = top.pick.as_ref()?;
        let fits = |way: &Way| matches!(near(way, pick), (thick, of) if (thick || !so[0]) && (of || !so[1]));
        all.iter().position(|way| same(way, pick) && fits(way))
    };
    if let Some(first) = [[true, true], [true, false], [false, false]].into_iter().find_map(picked) {
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
    (rips((rows, row), (width, false), figures) == 0).then_some((rows, [usable, needed]))
}

/// Every wood and thickness, each in the rows that waste least by the lengths, the best first; then the same in other rows, and of pieces
/// that are held back as long as others do.
fn ways(top: &Top, figures: &Figures, sources: &[Source]) -> Vec<Way> {
    let mut woods: Vec<Option<Key>> = vec![];
    for source in sources.iter().filter(|_| !top.mixed) {
        if !woods.contains(&source.pile.wood) {
            woods.push(source.pile.wood.clone());
        }
    }
    let (mut all, mut more) = (vec![], vec![]);
    let groups: Vec<Option<&Option<Key>>> = if top.mixed { vec![None] } else { woods.iter().map(Some).collect() };
    for group in groups {
        let of: Vec<&Source> = sources.iter().filter(|source| group.is_none_or(|wood| source.pile.wood == *wood)).collect();
        for thickness in thicknesses(top, figures, &of) {
            let of: Vec<&Source> = of.iter().copied().filter(|source| thick_enough(source, thickness, figures)).collect();
            let picks = picks(&of, (group.cloned().flatten(), thickness));
            let mut alike: Vec<Way> = picks.iter().flat_map(|pick| ways_of(top, pick, (figures, &of))).collect();
            order(&mut alike);
            let mut alike = each_once(alike, top, (figures, &of)).into_iter();
            all.extend(alike.next());
            more.extend(alike);
        }
    }
    order(&mut all);
    order(&mut more);
    all.into_iter().chain(more).collect()
}

/// Of ways that are made of the very same pieces the first. Those that the estimate puts level may be made of others: a plan takes of all
/// widths what is shortest together, and may waste more than of one width alone.
fn each_once(mut alike: Vec<Way>, top: &Top, (figures, of): (&Figures, &[&Source])) -> Vec<Way> {
    let mut seen: Vec<(Count, Vec<bool>)> = vec![];
    alike.retain(|way| {
        let row = strip(top, way.rows, figures);
        let held = |source: &Source| !way.pick.thick && is_held_back(source, way.pick.thickness, figures);
        let gives = |source: &Source| source.pile.width.is_some_and(|width| 0 < rips((way.rows, row), (width, source.planed), figures));
        let own = of.iter().map(|source| !held(source) && is_of_pick(source, &way.pick) && gives(source));
        let own = (way.rows, own.collect());
        let is_new = !seen.contains(&own);
        seen.push(own);
        is_new
    });
    alike
}

/// All pieces of a wood, those that are held back too, those of each width alone, and all but those of one pile.
fn picks(of: &[&Source], (wood, thickness): (Option<Key>, Length)) -> Vec<Pick> {
    let pick = |thick, wide| Pick { wood: wood.clone(), thickness, thick, wide, without: None };
    let widths = once_each(of.iter().filter_map(|source| source.pile.width).collect());
    let each = widths.iter().filter(|_| 1 < widths.len()).map(|wide| pick(false, Some(*wide)));
    // Of one section a plan takes what is shortest together, and no pile of it is worth leaving out.
    let section = |source: &Source| (source.pile.thickness, source.pile.width);
    let differs = |source: &&&Source| source.bought.is_none() && of.iter().any(|other| section(other) != section(source));
    let but = of.iter().filter(differs).map(|source| Pick { without: Some(source.which()), ..pick(false, None) });
    [pick(false, None), pick(true, None)].into_iter().chain(each).chain(but).collect()
}

fn is_so_wide(source: &Source, pick: &Pick) -> bool {
    pick.wide.is_none_or(|wide| source.pile.width == Some(wide))
}

fn is_without(source: &Source, pick: &Pick) -> bool {
    pick.without == Some(source.which())
}

fn is_of_pick(source: &Source, pick: &Pick) -> bool {
    is_so_wide(source, pick) && !is_without(source, pick)
}

/// One wood and thickness in every number of rows; with pieces that are held back only where there are any.
fn ways_of(top: &Top, pick: &Pick, (figures, of): (&Figures, &[&Source])) -> Vec<Way> {
    let held = |source: &Source| is_held_back(source, pick.thickness, figures);
    let of: Vec<&Source> = of.iter().copied().filter(|source| (pick.thick || !held(source)) && is_of_pick(source, pick)).collect();
    if pick.thick && !of.iter().any(|source| held(source)) {
        return vec![];
    }
    let buys = of.iter().any(|source| source.bought.is_some());
    let way = |rows| Some(Way { mixed: top.mixed, buys, ..way(top, (pick, rows), (figures, &of))? });
    rows(top, figures, &of).into_iter().filter_map(way).collect()
}

/// What does all of it comes first, then what lies there, then what buys least, then what is held back last, then what wastes least, then all
/// widths, then all piles, then the fewest rows.
fn order(all: &mut [Way]) {
    crate::quantity::order_by_key(all, |way| {
        (
            std::cmp::Reverse(way.there),
            way.buys,
            way.bought,
            way.pick.thick,
            way.waste,
            way.pick.without.is_some(),
            way.pick.wide.is_some(),
            way.rows,
        )
    });
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

/// Whether a top of what was asked is of some pieces of its wood alone, though others would do.
///
/// # Errors
/// As [`sources`].
pub fn is_of_some(shop: &Shop, given: &Given) -> Answer<bool> {
    let (What::Top(top), Wish::Panel(panel)) = (&given.ask.what, &given.ready.wish) else { return Ok(false) };
    let rows = panel.rows().and_then(|rows| Count::try_from(rows).ok());
    let so = Top { thickness: Some(panel.thickness), rows, ..top.clone() };
    let of_it = |source: &Source| top.mixed || given.sources.iter().any(|it| it.pile.wood == source.pile.wood);
    let is_in = |source: &Source| given.sources.iter().any(|it| it.which() == source.which());
    let all = fitting(shop, &Ask { what: What::Top(so), ..given.ask.clone() })?;
    // What was left of its own boards since, planed as its rows are, was not there to be taken.
    Ok(all.iter().any(|(it, why)| why.is_none() && it.bought.is_none() && !it.planed && is_used(&given.ask, it) && of_it(it) && !is_in(it)))
}
