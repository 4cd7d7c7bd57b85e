//! What can I make: the pieces there are for a job, which of them fit what the maker asks, and the problem that is made of both.

mod again;
pub mod anew;
pub mod begun;
pub mod buy;
mod changes;
pub mod cheaper;
pub mod cut;
pub mod fields;
mod fit;
mod glued;
pub mod goes_on;
pub mod just;
pub mod keep;
pub mod mixed;
pub mod near;
pub mod own;
pub mod planed;
pub mod planned;
pub mod seek;
pub mod shared;
mod tiled;
mod top;
pub mod weighs;

pub use anew::AlreadyCut;
pub use buy::Boards;
pub use changes::{Change, bears};
pub use fit::too_narrow;
pub use glued::{TooWide, is_wide, too_wide};
pub use top::{Pick, Way, is_of_some};

use super::plan::figures::Figures;
use super::plan::ready::{Ready, letters, ready};
use super::plan::stock::{Place, Stack};
use super::plan::wish::{Tiles, Wish};
use super::rack::{RackPile, rack};
use super::shop::Shop;
use crate::ledger::decide::{Lying, labels_lying};
use crate::ledger::fold::{Job, Part, Workshop};
use crate::ledger::kind::plan::Shape;
use crate::plan::field::problem::{Mix, Pattern};
use crate::quantity::{Count, Decimal, Id, Key, Length, Listed, Money, Units};
use crate::refusal::{Answer, Refusal};
use crate::wood::moisture::Moisture;
use crate::wood::movement::{Room, Sawn};
use fit::{back, less, nm, unfit_part, unfit_top};
use glued::listed;
use planed::is_planed;

/// A top in rows: finished sides, how many rows, and how its joints lie.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Top {
    pub length: Length,
    /// Across all its rows.
    pub width: Length,
    /// As thick as some of the pieces give with the least waste, where nothing is said.
    pub thickness: Option<Length>,
    /// As many as some of the pieces give with the least waste, where nothing is said.
    pub rows: Option<Count>,
    pub apart: Length,
    /// Strips may be cut into pieces on purpose.
    pub split: bool,
    /// Of several woods; else of one.
    pub mixed: bool,
    /// The wood and thickness that were chosen among the ways it could be made; else that with the least waste.
    pub pick: Option<Pick>,
}

/// A field of tiles: width, depth and height as far as they matter, and how near is near enough.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    pub sides: [Option<Length>; 3],
    pub tolerance: Length,
    pub patterns: Vec<Pattern>,
    /// Of two woods by turns.
    pub two: bool,
    /// How long a tile is; as long as the pieces give where nothing is said.
    pub tile: Option<Length>,
}

/// What is to be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    Top(Top),
    /// The job's parts list, for so many pieces of the job; as many as it gives where nothing is said.
    Parts(Option<Count>),
    Sticks(Option<Count>),
    Field(Field),
}

/// Pieces to plan with: of a pile on the rack, or of it in the job already, or to be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Source {
    /// Of boards to be bought, a pile that is nowhere yet.
    pub pile: RackPile,
    pub in_job: bool,
    pub n: Count,
    /// To be bought, each at this price where one is said.
    pub bought: Option<Option<Money>>,
    /// Nothing but what is left of boards that a plan had planed before they were cut.
    pub planed: bool,
}

/// A pile by where it lies, and whether its pieces are in the job.
pub type Which = (Lying, bool);

/// What the maker asks.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    pub job: Id,
    pub what: What,
    /// Piles on the rack that are left out, and piles of the job that are not.
    pub turned: Vec<Which>,
    /// Boards that could be bought for it.
    pub bought: Vec<Boards>,
    /// Parts that are left out, by their names.
    pub without: Vec<String>,
    /// So much over in width for this plan alone; else as the saw's figures say.
    pub over: Option<Length>,
}

/// Why pieces can't be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfit {
    SizeMissing,
    TooThin,
    TooNarrow,
    TooShort,
    /// Shorter than the least the maker set for a machine.
    UnderMachine(Length),
    /// A tile of a whole one is longer than a side of the herringbone.
    TooLong,
    /// Of no part's wood.
    OtherWood,
    /// More than twice as thick as is needed; thinner ones do.
    HeldBack,
    /// Without it rows come out of pieces of one width.
    OtherWidth,
    /// Without it rows of the other piles waste less.
    LeftForLess,
}

/// Why there is nothing to plan.
#[derive(Clone, Debug, PartialEq)]
pub enum WhyNot {
    NoParts,
    /// No pieces at all.
    NoPiles,
    /// None of those that are chosen fits.
    NoneFits,
    /// No chosen pile fits this part.
    NoneForPart(String),
    /// Two woods are to lie by turns, and the chosen piles are of one.
    OneWood,
    /// All parts of so many pieces of the job are cut.
    AllCut {
        sets: Count,
    },
    /// So many rows would each be so wide, narrower than the least strip.
    Narrow {
        rows: Count,
        wide: Length,
        least: Length,
    },
    /// Nothing of the wood that was chosen fits; where it is too narrow for the rows, so many of them, how wide the widest piece can be used
    /// and how wide a strip is needed.
    NotOfWood {
        wood: Key,
        narrow: Option<(Count, [Length; 2])>,
    },
    /// A tile so long does not come out of the longest board, of which so much is left once its ends are square.
    TileLong {
        tile: Length,
        longest: Length,
    },
    /// A tile is shorter than the least piece.
    TileShort {
        tile: Length,
        least: Length,
    },
    /// A herringbone of whole boards has tiles so long at least, longer than a side that is asked: a tile length is to be said.
    TileToSay {
        tile: Length,
        side: Length,
    },
    Refused(Refusal),
}

/// A problem that can be planned, with the pieces it is about, in its order.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    pub ask: Ask,
    pub ready: Ready,
    pub sources: Vec<Source>,
    /// Pieces on the rack that do not fit, and why.
    pub left_out: Vec<(Source, Unfit)>,
    pub room: Room,
    pub units: Units,
    pub lacks: Lacks,
    /// Of a top, the ways it could be made: the first is this one. Not known of a plan that is shown again.
    pub ways: Vec<Way>,
    /// How many alike the job is of.
    pub alike: Count,
    /// Of the pieces on the rack so many the job has by a plan before, by their place; nothing of those behind the last.
    pub own: Vec<Count>,
    /// Of a top: other pieces of its wood would do, and are left out for their thickness or width.
    pub some: bool,
    /// What was cut before it, and is not planned again.
    pub cut: AlreadyCut,
    /// Pieces the job has that fit, and are not among those to use.
    pub unasked: Count,
}

/// What an older book does not say of a plan it keeps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lacks {
    /// The names of some parts.
    pub names: bool,
    /// The section of some pieces.
    pub sizes: bool,
}

impl From<Refusal> for WhyNot {
    fn from(why: Refusal) -> WhyNot {
        WhyNot::Refused(why)
    }
}

impl What {
    pub fn shape(&self) -> Shape {
        match self {
            What::Top(_) => Shape::Rows,
            What::Parts(_) => Shape::Parts,
            What::Sticks(_) => Shape::Sticks,
            What::Field(_) => Shape::Field,
        }
    }
}

impl Source {
    pub fn which(&self) -> Which {
        (Lying { haul: self.pile.haul, pile: self.pile.pile }, self.in_job)
    }

    pub fn sides(&self) -> Option<[Length; 3]> {
        Some([self.pile.thickness?, self.pile.width?, self.pile.length?])
    }
}

/// The pieces there are to plan with: on the rack, then those the job has.
///
/// # Errors
/// [`Refusal::OutOfRange`].
pub fn sources(shop: &Shop, job: Id) -> Answer<Vec<Source>> {
    let piles = rack(shop, job)?;
    let one = |pile: &RackPile, in_job: bool, n: Count| {
        (0 < n).then(|| Source { pile: pile.clone(), in_job, n, bought: None, planed: is_planed(shop.book, pile) })
    };
    let on_rack = piles.iter().filter_map(|pile| one(pile, false, pile.free));
    Ok(on_rack.chain(piles.iter().filter_map(|pile| one(pile, true, pile.in_job))).collect())
}

/// The figures of the saw as the maker said them, else as usual; with the least of the machines.
///
/// # Errors
/// [`Refusal::OutOfRange`].
pub fn figures(shop: &Shop, units: Units) -> Answer<Figures> {
    figures_of(&shop.workshop, units)
}

/// The same with what is asked for one plan alone.
fn asked_figures(shop: &Shop, job: &Job, ask: &Ask) -> Answer<Figures> {
    let figures = figures(shop, job.units)?;
    let [long, wide, thick] = figures.allow;
    Ok(Figures { allow: [long, ask.over.unwrap_or(wide), thick], ..figures })
}

/// The same of a workshop.
///
/// # Errors
/// [`Refusal::OutOfRange`].
pub fn figures_of(workshop: &Workshop, units: Units) -> Answer<Figures> {
    let mut figures = Figures::usual(units)?.with_machines(&workshop.wood);
    let said = &workshop.saw;
    for (place, said) in places(&mut figures).into_iter().zip(said.lengths) {
        *place = said.unwrap_or(*place);
    }
    figures.spread = said.glue.map_or(figures.spread, i64::from);
    Ok(figures)
}

/// The lengths in the order in which the maker says them.
pub fn places(figures: &mut Figures) -> [&mut Length; 13] {
    let Figures { kerf, square, end_trim, edge_trim, allow, joint, keep_min, stagger, min_end, min_piece, strip_min, .. } = figures;
    let [long, wide, thick] = allow;
    [kerf, square, end_trim, edge_trim, long, wide, thick, joint, keep_min, stagger, min_end, min_piece, strip_min]
}

/// Each of the pieces with why it can't be used; nothing where it fits.
///
/// # Errors
/// As [`sources`].
pub fn fitting(shop: &Shop, ask: &Ask) -> Answer<Vec<(Source, Option<Unfit>)>> {
    fitting_of(shop, &asked_parts(shop.job(ask.job)?, ask), (ask, sources(shop, ask.job)?))
}

fn fitting_of(shop: &Shop, job: &Job, (ask, all): (&Ask, Vec<Source>)) -> Answer<Vec<(Source, Option<Unfit>)>> {
    let figures = asked_figures(shop, job, ask)?;
    let why = |source: &Source| unfit(&ask.what, &job.parts, &figures, source);
    let all = all.into_iter().chain(buy::to_buy(&ask.bought, job.units));
    Ok(all.map(|source| (why(&source), source)).map(|(why, source)| (source, why)).collect())
}

fn unfit(what: &What, parts: &[Part], figures: &Figures, source: &Source) -> Option<Unfit> {
    let Some(sides) = source.sides() else { return Some(Unfit::SizeMissing) };
    match what {
        What::Top(top) => unfit_top(top, figures, (sides, source.planed)),
        What::Field(field) => tiled::unfit_tile(field, figures, sides),
        What::Parts(_) | What::Sticks(_) => {
            let by_length = matches!(what, What::Sticks(_));
            let mut why = (!parts.is_empty()).then_some(Unfit::OtherWood);
            for part in parts.iter().filter(|part| part.wood.is_none() || part.wood == source.pile.wood) {
                match unfit_part(part, figures, (sides, by_length)) {
                    None => return None,
                    other if came_so_far(why) <= came_so_far(other) => why = other,
                    _ => (),
                }
            }
            why
        }
    }
}

/// Of several parts the one that comes nearest says why: too short for one tells more than too narrow for another.
fn came_so_far(why: Option<Unfit>) -> usize {
    let order = [Unfit::OtherWood, Unfit::TooThin, Unfit::TooNarrow];
    why.and_then(|why| order.iter().position(|it| *it == why)).unwrap_or(order.len())
}

/// Whether pieces that fit are to be used: those on the rack unless they are left out, those of the job where they are asked for.
pub fn is_used(ask: &Ask, source: &Source) -> bool {
    source.bought.is_some() || ask.turned.contains(&source.which()) == source.in_job
}

/// The problem the maker asks.
///
/// # Errors
/// [`WhyNot`].
pub fn given(shop: &Shop, ask: &Ask) -> Result<Given, WhyNot> {
    given_of(shop, &asked_parts(shop.job(ask.job)?, ask), (ask, sources(shop, ask.job)?))
}

/// The job without the parts that are left out.
fn asked_parts(mut job: Job, ask: &Ask) -> Job {
    job.parts.retain(|part| !ask.without.contains(&part.name));
    job
}

/// The same of a job that need not be in the book, and of all these pieces.
pub(super) fn given_of(shop: &Shop, job: &Job, (ask, all): (&Ask, Vec<Source>)) -> Result<Given, WhyNot> {
    given_of_rests(shop, (job, &[]), (ask, all))
}

/// The same where some of its parts are the rests of such as are begun: how wide these are, by the place of the part.
fn given_of_rests(shop: &Shop, (job, rests): (&Job, &[Option<Length>]), (ask, all): (&Ask, Vec<Source>)) -> Result<Given, WhyNot> {
    let mut figures = asked_figures(shop, job, ask)?;
    if job.parts.is_empty() && matches!(ask.what, What::Parts(_) | What::Sticks(_)) {
        return Err(WhyNot::NoParts);
    }
    let all = fitting_of(shop, job, (ask, all))?;
    if all.is_empty() {
        return Err(WhyNot::NoPiles);
    }
    // What lies on the rack has its letter, in the plan or not.
    let there = all.iter().map(|(source, _)| (source.pile.pile, source.pile.label.clone())).listed();
    let mut lying = there.iter().map(|(_, label)| label.clone()).listed();
    // What is to be bought gets the letter that it has once it is bought: none that any pile has.
    if all.iter().any(|(source, _)| source.bought.is_some()) {
        lying.extend(labels_lying(shop.book));
    }
    let mut left_out = unfitting(&all);
    let unasked = unasked(ask, &all);
    let used = all.into_iter().filter(|(source, _)| is_used(ask, source)).listed();
    let mut sources = used.iter().filter(|(_, why)| why.is_none()).map(|(source, _)| source.clone()).listed();
    let (mut ways, mut some) = (vec![], false);
    tiled::refused(&ask.what, &figures, &used).map_or(Ok(()), Err)?;
    if let What::Top(top) = &ask.what {
        figures.stagger = top.apart;
        ways = top::all_ways(top, &figures, &sources);
        if let Some(given_up) = top::given_up(top, &ways, (&figures, &used)) {
            return Err(given_up);
        }
        if let Some(narrow) = top.rows.or(ways.first().map(|way| way.rows)).and_then(|rows| top::narrow(top, rows, &figures)) {
            return Err(narrow);
        }
        let (fit, unfit) = top::parted(ways.first(), top, (&figures, sources));
        sources = fit;
        some = unfit.iter().any(|(_, why)| matches!(why, Unfit::HeldBack | Unfit::OtherWidth | Unfit::LeftForLess));
        left_out.extend(unfit);
    }
    sources = cheaper::in_order(shop, (&ask.what, job.currency), sources);
    if sources.is_empty() {
        return Err(WhyNot::NoneFits);
    }
    let wish = glued::with_rests(wish(ask, job, (&figures, ways.first()), &sources)?, rests);
    let stock = |sources: &[Source]| lettered(shop, sources, (&there, &lying));
    let mut ready = ready(wish, &stock(&sources), figures)?;
    left_out.extend(tiled::of_whole(&ask.what, &mut ready, &mut sources, stock)?);
    (ready.sources.len() == sources.len()).then_some(()).ok_or(WhyNot::NoneFits)?;
    let (room, units, lacks, alike) = (room(shop, job)?, job.units, Lacks::default(), job.pieces);
    Ok(Given {
        ask: ask.clone(),
        ready,
        sources,
        left_out,
        room,
        units,
        lacks,
        ways,
        alike,
        own: vec![],
        some,
        cut: AlreadyCut::default(),
        unasked,
    })
}

/// The pieces as a plan is made with them, each with a letter that nothing else that lies there has: two hauls may have a pile A each.
fn lettered(shop: &Shop, sources: &[Source], (there, lying): (&[(Id, String)], &[String])) -> Vec<Stack> {
    let is_asked = |pile: Id| sources.iter().any(|source| source.pile.pile == pile);
    let is_others = |label: &String| there.iter().any(|(pile, other)| other == label && !is_asked(*pile));
    let mut stock = sources.iter().map(|source| stack(shop, source)).listed();
    stock.iter_mut().filter(|stack| is_others(&stack.label)).for_each(|stack| stack.label.clear());
    let letters = letters(&stock, lying);
    stock.iter_mut().zip(letters).for_each(|(stack, letter)| stack.label = letter);
    stock
}

/// Pieces the job has that fit and are not to be used.
pub fn unasked(ask: &Ask, all: &[(Source, Option<Unfit>)]) -> Count {
    let own = all.iter().filter(|(source, why)| source.in_job && why.is_none() && !is_used(ask, source));
    own.fold(0, |sum: Count, (source, _)| sum.saturating_add(source.n))
}

/// Those on the rack that do not fit.
fn unfitting(all: &[(Source, Option<Unfit>)]) -> Vec<(Source, Unfit)> {
    let lying = all.iter().filter(|(source, _)| !source.in_job);
    lying.filter_map(|(source, why)| why.map(|why| (source.clone(), why))).collect()
}

fn wish(ask: &Ask, job: &Job, (figures, way): (&Figures, Option<&Way>), sources: &[Source]) -> Result<Wish, WhyNot> {
    let by_length = matches!(ask.what, What::Sticks(_));
    if matches!(ask.what, What::Parts(_) | What::Sticks(_)) {
        let wood = |part: &Part, source: &Source| part.wood.is_none() || part.wood == source.pile.wood;
        let fits = |part: &Part, source: &Source| {
            source.sides().is_some_and(|sides| wood(part, source) && unfit_part(part, figures, (sides, by_length)).is_none())
        };
        let none = |part: &&Part| !sources.iter().any(|source| fits(part, source));
        if let Some(part) = job.parts.iter().find(none) {
            return Err(WhyNot::NoneForPart(part.name.clone()));
        }
    }
    Ok(match &ask.what {
        What::Top(top) => Wish::Panel(top::panel(top, way.ok_or(WhyNot::NoneFits)?, figures)),
        What::Parts(sets) => Wish::Parts(listed(&job.parts, *sets, figures, sources)),
        What::Sticks(sets) => Wish::Sticks(listed(&job.parts, *sets, figures, sources)),
        What::Field(field)
            if field.two && sources.iter().all(|source| Some(&source.pile.wood) == sources.first().map(|it| &it.pile.wood)) =>
        {
            return Err(WhyNot::OneWood);
        }
        What::Field(field) => Wish::Tiles(tiles(field, figures)),
    })
}

/// No more layers than these are tried. Ours.
const LAYERS_MOST: i64 = 4;

fn tiles(field: &Field, figures: &Figures) -> Tiles {
    let crossed = field.patterns.contains(&Pattern::Crossed);
    let layered = crossed || field.sides[2].is_some();
    Tiles {
        patterns: field.patterns.clone(),
        mix: vec![if field.two { Mix::Alternate } else { Mix::Single }],
        size: field.sides.map(|side| side.map(|side| (side, field.tolerance))),
        layers: [1, if layered { LAYERS_MOST } else { 1 }],
        gap: Length::ZERO,
        open: [Length::ZERO, if crossed { figures.min_end } else { Length::ZERO }],
        overhang: if crossed { field.tolerance } else { Length::ZERO },
        cut_min: figures.min_piece,
        turn: true,
        long: field.tile,
    }
}

/// The pieces as a plan is made with them.
pub fn stack(shop: &Shop, source: &Source) -> Stack {
    let pile = &source.pile;
    let wood = shop.workshop.wood.woods.find_or_guess(pile.wood.as_ref().map(Key::as_str));
    let place = if source.bought.is_some() { Place::Bought } else { Place::Rack { haul: pile.haul, pile: pile.pile } };
    Stack {
        place,
        name: pile.name.clone(),
        label: if source.bought.is_some() { String::new() } else { pile.label.clone() },
        wood: pile.wood.as_ref().map(Key::to_string),
        sizes: [pile.thickness, pile.width, pile.length],
        // Where lengths are a band all is reckoned with the shortest: what is cut, and what is taken.
        piece: pile.piece.filter(|_| pile.length_to.is_none()),
        free: source.n,
        density: wood.density,
        guessed: wood.is_a_guess(),
        moves: wood.across(Sawn::Flat),
        price: source.bought.flatten(),
        rests: pile.rests,
        planed: source.planed,
    }
}

/// The room the pieces will live in: of the job, else of the workshop, else a heated home.
fn room(shop: &Shop, job: &Job) -> Answer<Room> {
    let per_cent = |n: Decimal| Moisture::per_cent(f64::try_from(n).unwrap_or(f64::NAN));
    match job.room.or(shop.workshop.wood.room) {
        Some((low, high)) => Room::of(per_cent(low)?, per_cent(high)?),
        None => Ok(Room::HEATED),
    }
}

#[cfg(test)]
mod tests;
