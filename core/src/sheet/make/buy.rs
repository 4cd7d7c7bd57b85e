//! Boards still to be bought, in a plan: how many it takes, and what they cost. Nothing is written before they are bought.

use super::{Given, Source};
use crate::ledger::{Book, fold};
use crate::plan::Asked;
use crate::quantity::{Count, Currency, Id, Key, Length, Moment, Money, Units, Wall};
use crate::sheet::alike::Alike;
use crate::sheet::plan::PlanSheet;
use crate::sheet::rack::RackPile;

/// Boards that could be bought, not bought yet: so many at most, each at this price.
#[derive(Clone, Debug, PartialEq)]
pub struct Boards {
    pub wood: Option<Key>,
    /// Thickness, width, length.
    pub size: [Length; 3],
    pub n: Count,
    pub price: Option<Money>,
}

/// The boards that could be bought, as pieces to plan with; those of which there are none are none.
pub fn to_buy(bought: &[Boards], units: Units) -> Vec<Source> {
    (0..).zip(bought).filter(|(_, boards)| 0 < boards.n).map(|(nth, boards)| source(nth, boards, units)).collect()
}

/// The boards that are the `nth` that could be bought.
fn source(nth: u8, boards: &Boards, units: Units) -> Source {
    let (nowhere, at) = (Id::new(Moment::default(), [0; 10]), Id::new(Moment::default(), [nth.saturating_add(1); 10]));
    let [thickness, width, length] = boards.size.map(Some);
    let pile = RackPile {
        haul: nowhere,
        pile: at,
        alike: Alike { wood: boards.wood.clone(), thickness, width, length, ..Alike::default() },
        units,
        currency: boards.price.map_or(Currency::USD, |price| price.currency()),
        began: Wall::default(),
        on_its_way: false,
        rests: false,
        on_rack: 0,
        free: 0,
        for_it: 0,
        apart: vec![],
        in_job: 0,
        piece: None,
        volume: None,
    };
    Source { pile, in_job: false, n: boards.n, bought: Some(boards.price), planed: false }
}

/// So many boards of this wood and size are bought: the first of them that could be bought are so many fewer.
pub fn fewer(bought: &mut Vec<Boards>, (wood, size): (Option<&Key>, [Length; 3]), n: Count) {
    if let Some(boards) = bought.iter_mut().find(|it| it.wood.as_ref() == wood && it.size == size) {
        boards.n = boards.n.saturating_sub(n);
    }
    bought.retain(|boards| 0 < boards.n);
}

/// The same by the boards that were bought since a moment.
pub fn bought_since(book: &Book, since: Moment, bought: &mut Vec<Boards>) {
    if bought.is_empty() {
        return;
    }
    for (wood, size, n) in written_down(book, since) {
        fewer(bought, (wood.as_ref(), size), n);
    }
}

/// Wood, size and how many, of all boards that were bought since a moment.
fn written_down(book: &Book, since: Moment) -> Vec<Bought> {
    let hauls = fold::hauls(book).filter(|haul| haul.bought && since <= haul.began.at);
    let sized = hauls.flat_map(|haul| haul.piles).filter_map(|pile| {
        let size = [pile.thickness?, pile.width?, pile.length?];
        Some((pile.wood, size, pile.taken))
    });
    sized.collect()
}

/// Boards a plan uses that are not bought yet: which source, how many, and what they cost where a price is said.
pub fn not_bought(given: &Given, sheet: &PlanSheet) -> Vec<(usize, Count, Option<Money>)> {
    let bought = |place: usize| given.sources.get(place).is_some_and(|source| source.bought.is_some());
    let used = sheet.used.iter().filter(|used| 0 < used.pieces && bought(used.source));
    used.map(|used| (used.source, used.pieces, used.price)).collect()
}

/// Boards a plan wants: of a source so many, and how many of these are not bought yet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToBuy {
    pub source: usize,
    pub n: Count,
    pub left: Count,
    pub each: Option<Money>,
}

/// Boards that were bought in another size and count as those of a source: the maker says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    pub source: usize,
    pub size: [Length; 3],
    pub n: Count,
}

/// Boards that were bought since a plan was made, in no size it wants: those of a source are the nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Nearly {
    pub counted: Counted,
    pub wanted: [Length; 3],
    /// No side is off by more than a tenth: they may count. Ours.
    pub may_count: bool,
}

/// The boards a plan wants, by what was bought since it was made and what was `counted` besides.
pub fn still_to_buy(given: &Given, sheet: &PlanSheet, since: (&Book, Moment), counted: &[Counted]) -> Vec<ToBuy> {
    matched(given, sheet, since, counted).0
}

/// What was bought since and is of no size that is wanted, beside what it comes nearest to and is still wanted.
pub fn nearly(given: &Given, sheet: &PlanSheet, since: (&Book, Moment), counted: &[Counted]) -> Vec<Nearly> {
    let (wanted, over) = matched(given, sheet, since, counted);
    let off = |one: &[Length; 3], other: &[Length; 3]| {
        // Thousandths of a side.
        let share = |(one, other): (&Length, &Length)| {
            let by = one.as_nm().saturating_sub(other.as_nm()).saturating_abs();
            by.saturating_mul(1_000).checked_div(other.as_nm()).unwrap_or(i64::MAX)
        };
        one.iter().zip(other).map(share).fold(0, i64::max)
    };
    let one = |(wood, size, n): &Bought| {
        let open = wanted.iter().filter(|it| 0 < it.left).filter_map(|it| Some((it, given.sources.get(it.source)?)));
        let alike = open.filter(|(_, source)| source.pile.wood == *wood).filter_map(|(it, source)| Some((it, source.sides()?)));
        let (it, wanted) = alike.min_by_key(|(_, wanted)| off(size, wanted))?;
        let counted = Counted { source: it.source, size: *size, n: it.left.min(*n) };
        Some(Nearly { counted, wanted, may_count: off(size, &wanted) <= 100 })
    };
    over.iter().filter(|(.., n)| 0 < *n).filter_map(one).collect()
}

/// Wood, size and how many.
type Bought = (Option<Key>, [Length; 3], Count);

/// What is wanted still, and what was bought for none of it.
fn matched(given: &Given, sheet: &PlanSheet, (book, since): (&Book, Moment), counted: &[Counted]) -> (Vec<ToBuy>, Vec<Bought>) {
    let all = not_bought(given, sheet);
    let mut bought = if all.is_empty() { vec![] } else { written_down(book, since) };
    let one = |(source, n, _): (usize, Count, Option<Money>)| {
        let of = given.sources.get(source)?;
        let size = of.sides()?;
        let mut left = n;
        for other in counted.iter().filter(|it| it.source == source) {
            left = left.saturating_sub(other.n);
            let of_it = bought.iter_mut().find(|(wood, size, n)| *wood == of.pile.wood && *size == other.size && other.n <= *n);
            of_it.into_iter().for_each(|(.., n)| *n = n.saturating_sub(other.n));
        }
        for (.., there) in bought.iter_mut().filter(|(wood, other, _)| *wood == of.pile.wood && *other == size) {
            let taken = left.min(*there);
            (left, *there) = (left.saturating_sub(taken), there.saturating_sub(taken));
        }
        Some(ToBuy { source, n, left, each: of.bought.flatten() })
    };
    let wanted = all.into_iter().filter_map(one).collect();
    (wanted, bought)
}

/// What all that are not bought yet cost together, where each has a price in one currency.
pub fn together(all: &[ToBuy]) -> Option<Money> {
    let left = all.iter().filter(|it| 0 < it.left);
    let prices: Option<Vec<Money>> = left.map(|it| it.each?.times(it.left).ok()).collect();
    let prices = prices?;
    Money::sum(prices.first()?.currency(), prices).ok()
}

/// The same without the boards that could have been bought, where the plan uses none of them: they come last.
pub fn without_boards(given: &Given) -> Given {
    let mut given = given.clone();
    given.sources.retain(|source| source.bought.is_none());
    given.ask.bought.clear();
    let n = given.sources.len();
    given.ready.sources.truncate(n);
    let without = |piles: &mut Option<Vec<usize>>| piles.iter_mut().for_each(|piles| piles.retain(|pile| *pile < n));
    match &mut given.ready.asked {
        Asked::Rows(problem) => problem.piles.truncate(n),
        Asked::Field(problem) => problem.piles.truncate(n),
        Asked::Parts(problem) => {
            problem.piles.truncate(n);
            problem.parts.iter_mut().for_each(|part| without(&mut part.piles));
        }
        Asked::Sticks(problem) => {
            problem.piles.truncate(n);
            problem.parts.iter_mut().for_each(|part| without(&mut part.piles));
        }
    }
    given
}

/// The same with no more than `n` of the boards at this place.
pub fn with_at_most(given: &Given, place: usize, n: Count) -> Given {
    let mut given = given.clone();
    given.sources.iter_mut().skip(place).take(1).for_each(|source| source.n = n);
    let n = i64::from(n);
    given.ready.sources.iter_mut().skip(place).take(1).for_each(|source| source.count = n.saturating_mul(source.ripped));
    let count = given.ready.sources.get(place).map_or(n, |source| source.count.saturating_mul(source.tiles));
    match &mut given.ready.asked {
        Asked::Rows(problem) => problem.piles.iter_mut().skip(place).take(1).for_each(|pile| pile.count = count),
        Asked::Parts(problem) => problem.piles.iter_mut().skip(place).take(1).for_each(|pile| pile.count = count),
        Asked::Sticks(problem) => problem.piles.iter_mut().skip(place).take(1).for_each(|pile| pile.count = count),
        Asked::Field(_) => given.ready = given.ready.clone().recounted(),
    }
    given
}

/// How far what lies there alone goes, where boards could be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OfRack {
    /// Pieces of the job; of a field whether it came near enough.
    pub made: i64,
    /// No plan of what lies there does more.
    pub proven: bool,
}

/// How far boards to buy were looked through for a plan that buys some.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kinds {
    /// As far as was found: with all kinds of them.
    #[default]
    Together,
    /// All together, and each kind alone.
    EachAlone,
    /// These, and every two kinds.
    InPairs,
    /// No plan with any of them takes less in all.
    All,
}
