//! The plan in words: what it makes, how good it is, what is short, what it uses and leaves.

use super::super::Seen;
use super::saw::number;
use super::wants::letter;
use super::{anew, limits, nearly, percent, side, uncut, wants, ways, weighs};
use crate::app::App;
use crate::app::plan::{Found, Plan, Stands, fields_tried};
use crate::words::en::{bound as bounds, common, plan as words, tiles, told};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::plan::field::problem::Pattern;
use fivebar_core::plan::{Asked, Sense};
use fivebar_core::quantity::{Decimal, Length, Listed, Units, Volume, half_up};
use fivebar_core::sheet::make::buy::Kinds;
use fivebar_core::sheet::make::{Given, Source, What};
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::sheet::plan::{Moving, PlanSheet, Used, Why};

fn whole(n: i128, seen: Seen<'_>) -> String {
    seen.speech.number(Decimal::try_from_i128_with_scale(n, 0).unwrap_or_default(), 0, 0)
}

pub fn tenth(n: f64, seen: Seen<'_>) -> String {
    seen.speech.number(half_up(Decimal::try_from(n).unwrap_or_default(), 2), 0, 2)
}

/// How many rows, or pieces of the job, were wished for.
pub fn wanted(given: &Given) -> Option<i64> {
    match &given.ready.wish {
        Wish::Panel(panel) => panel.rows(),
        Wish::Parts(parts) | Wish::Sticks(parts) => parts.sets,
        Wish::Tiles(_) => None,
    }
}

/// "8 rows. No plan needs fewer than 24 strips."
pub fn lead(given: &Given, found: &Found, (app, seen): (&App, Seen<'_>)) -> String {
    let (shape, sheet) = (given.ask.what.shape(), &found.sheet);
    if let Some(said) = anew::not_made(given, found, seen).or_else(|| nearly::border(given, sheet, seen)) {
        return said;
    }
    if sheet.made == 0 {
        let none = if is_impossible(given, found) { bounds::nothing(shape) } else { bounds::none_found(shape) };
        return format!("{none} {}", uncut::held(given, found, (app, seen))).trim_end().to_owned();
    }
    let made = match shape {
        Shape::Field => {
            let small = nearly::kept_small(given, sheet).map(|least| tiles::kept_small(&side(least, given.units, seen)) + " ");
            small.unwrap_or_default() + &sheet.laid.as_ref().map_or_else(String::new, |laid| nearly::field(given, (laid, sheet.made), seen))
        }
        _ => anew::made(given, seen).unwrap_or_else(|| {
            let wanted = wanted(given).filter(|wanted| sheet.made < *wanted).map(|n| number(n, seen));
            words::made(shape, &number(sheet.made, seen), sheet.made == 1, wanted.as_deref())
        }),
    };
    let open = ways::bound_of(given, number(sheet.made, seen), app);
    let open = if sheet.ends.together.is_some() { Some(told::end_cut_each(open.as_deref())) } else { open };
    let fewest = match sheet.proof.why {
        Some(Why::Fewest { pieces, .. }) => {
            let more = (pieces < taken(sheet)).then(|| format!(" {}", told::takes_more(&number(taken(sheet), seen))));
            let said = words::no_fewer((&number(pieces, seen), pieces == 1), is_ripped(given), open.as_deref());
            Some(limits::at_shortest(&said, given, seen) + &more.unwrap_or_default())
        }
        _ => None,
    };
    let more = fewest.unwrap_or_else(|| uncut::held(given, found, (app, seen)));
    if more.is_empty() { made } else { format!("{made} {more}") }
}

/// Nothing is made, and the bound proves that nothing can be: no row or piece, or no field that is near enough.
pub fn is_impossible(given: &Given, found: &Found) -> bool {
    let more = given.ready.asked.senses().first() == Some(&Sense::More);
    found.sheet.made == 0 && found.answered.bound.first().is_some_and(|first| if more { *first == 0 } else { 0 < *first })
}

/// Strips are spoken of where pieces are ripped first.
fn is_ripped(given: &Given) -> bool {
    given.ready.sources.iter().any(|source| 1 < source.ripped)
}

/// How many pieces or strips the plan uses.
fn taken(sheet: &PlanSheet) -> i64 {
    sheet.used.iter().fold(0, |sum, used| sum.saturating_add(used.used))
}

/// More than are long enough together.
fn takes_more(sheet: &PlanSheet) -> bool {
    matches!(sheet.proof.why, Some(Why::Fewest { pieces, .. }) if pieces < taken(sheet))
}

/// What the plan is best at, as far as it is proven; with boards to buy it is the best with these, and with others perhaps not.
pub fn standing(given: &Given, found: &Found, (app, seen): (&App, Seen<'_>)) -> String {
    let said = uncut::standing(given, found, app).unwrap_or_else(|| best_at(given, found));
    let all = [words::BEST_POSSIBLE, told::LEAST_TAKEN].contains(&said);
    let boards = wants::boards(given, &found.sheet, seen).filter(|_| all);
    match boards {
        Some(_) if app.plan.kinds == Kinds::All => told::BEST_OF_BOARDS.to_owned(),
        Some(boards) => told::best_with_boards(&boards),
        None => said.to_owned(),
    }
}

fn best_at(given: &Given, found: &Found) -> &'static str {
    let (shape, sheet) = (given.ask.what.shape(), &found.sheet);
    // A bound that is not known to the end leaves its last figures open; one that is not known at all, every figure.
    let known = found.answered.bound.len();
    let open = if sheet.proof.best { None } else { Some(sheet.proof.gap.map_or(known, |(place, ..)| place)) };
    match (shape, open) {
        _ if is_impossible(given, found) => told::NOT_POSSIBLE,
        _ if sheet.made == 0 => told::NONE_FOUND,
        (Shape::Rows, None) if takes_more(sheet) && given.ready.counts_whole() => told::LEAST_TAKEN,
        (Shape::Rows, None) if takes_more(sheet) => told::LEAST_IN_LENGTH,
        (Shape::Field, None | Some(2..)) if nearly::is_just_so(given, sheet) => told::NEAREST_POSSIBLE,
        (Shape::Field, None | Some(2..)) => told::NEAREST_AT_FULL_SIZE,
        (Shape::Field, _) => told::NEAREST_SO_FAR,
        // Fewer would do of what was not asked.
        (Shape::Rows, None) if sheet.ends.together.is_some() => told::BEST_OF_END_CUT,
        (Shape::Rows, None) if ways::was_open(given) => told::BEST_OF_THESE_ROWS,
        (Shape::Sticks, None) => told::LEAST_TAKEN,
        (_, None) => words::BEST_POSSIBLE,
        (_, Some(0)) => words::BEST_SO_FAR,
        _ if matches!(sheet.proof.why, Some(Why::Fewest { pieces, .. }) if pieces == taken(sheet)) => {
            if is_ripped(given) {
                told::FEWEST_STRIPS
            } else {
                told::FEWEST_PIECES
            }
        }
        (Shape::Rows, _) => told::MOST_ROWS,
        _ => told::MOST_PIECES,
    }
}

/// Any pattern was asked for, and the plan is of one that was planned alone.
fn in_one_pattern(given: &Given) -> bool {
    let asked = if let What::Field(field) = &given.ask.what { field.patterns.len() } else { 0 };
    matches!(&given.ready.asked, Asked::Field(problem) if problem.patterns.len() < asked)
}

/// What a plan that is proven is best at.
fn best(given: &Given, sheet: &PlanSheet) -> &'static str {
    match (given.ask.what.shape(), given.ready.counts_whole()) {
        (Shape::Field, _) if nearly::is_just_so(given, sheet) => words::NO_NEARER,
        (Shape::Field, _) if given.ready.sources.iter().any(|source| 1 < source.tiles) => told::NO_NEARER_OF_WHOLE_TILES,
        (Shape::Field, _) if in_one_pattern(given) => told::NO_NEARER_IN_PATTERN,
        (Shape::Field, _) => words::NO_NEARER_AT_FULL_SIZE,
        (Shape::Rows, true) if takes_more(sheet) => told::MORE_BUT_LESS_LENGTH,
        (Shape::Rows, false) if takes_more(sheet) => told::MORE_BUT_LESS,
        (Shape::Rows, true) => told::NONE_TAKES_LESS_LENGTH,
        (Shape::Rows, false) => told::NONE_LOSES_LESS,
        (Shape::Parts, true) => told::NONE_TAKES_LESS_WHOLE,
        (Shape::Parts, false) => told::NONE_TAKES_LESS,
        (Shape::Sticks, true) => told::NONE_LONGER_BY_CROSSCUTS_WHOLE,
        (Shape::Sticks, false) => told::NONE_LONGER_BY_CROSSCUTS,
    }
}

/// What the plan is best at; or what may still get better where its first figure is proven.
pub fn open(given: &Given, sheet: &PlanSheet, (kinds, seen): (Kinds, Seen<'_>)) -> Option<String> {
    let shape = given.ask.what.shape();
    if sheet.proof.best && 0 < sheet.made {
        let best = best(given, sheet);
        let with = wants::boards(given, sheet, seen).map(|boards| told::proven_with_boards(best, &boards, kinds));
        return Some(with.unwrap_or_else(|| limits::best(best, given, seen)));
    }
    match (shape, sheet.proof.gap?) {
        (Shape::Rows, (1, worth, bound)) => {
            let units = i64::try_from(worth.saturating_sub(bound)).ok()?;
            let by = Length::nm(units.checked_mul(given.ready.unit)?).ok()?;
            let fewest = matches!(sheet.proof.why, Some(Why::Fewest { .. })) && !takes_more(sheet);
            let said = if given.ready.counts_whole() { told::taken_may_be_less } else { told::waste_may_be_less };
            Some(said(told::rows_and(fewest, is_ripped(given)), &side(by, given.units, seen)))
        }
        (Shape::Rows, (2, ..)) if given.ready.counts_whole() => Some(told::LENGTH_AND_REST_MAY_BE_BETTER.into()),
        (Shape::Rows, (2, ..)) => Some(told::REST_MAY_BE_BETTER.into()),
        (Shape::Parts, (1, worth, bound)) if given.ready.counts_whole() => {
            let share = thousandths_less((worth, bound), 0);
            let [least, takes] = least_and_whole(given.ready.volume(bound).ok()?, (sheet, given.units, share), seen);
            Some(told::wood_may_be_less([&least, &takes], common::volume_unit(given.units)))
        }
        (Shape::Sticks, (2, ..)) => Some(told::CUTS_MAY_BE_FEWER.into()),
        _ => None,
    }
}

/// In litres or board feet, to as many places as the waste is told: what is needed never more than it is, and what is taken as it is told
/// of the waste.
/// Up to two places more of what is needed, where their difference would not be the share that is told beside them.
fn least_and_whole(least: Volume, (sheet, units, share): (&PlanSheet, Units, i128), seen: Seen<'_>) -> [String; 2] {
    let places = read_as(of_units(sheet.waste.wasted, units), of_units(sheet.waste.cutting, units)).0;
    let takes = half_up(of_units(sheet.waste.whole, units), places.into());
    let at = |places: u8| of_units(least, units).trunc_with_scale(places.into());
    let agrees = |places: &u8| {
        let told = takes.checked_sub(at(*places)).and_then(|less| less.checked_mul(Decimal::from(1_000))?.checked_div(takes));
        told.is_some_and(|told| told.ceil() == Decimal::from(i64::try_from(share).unwrap_or(i64::MAX)))
    };
    let more = (places..=places.saturating_add(2)).find(agrees).unwrap_or(places.saturating_add(1));
    [seen.speech.number(at(more), more, more), seen.speech.number(takes, places, places)]
}

fn of_units(volume: Volume, units: Units) -> Decimal {
    if units == Units::Inch { volume.board_feet() } else { volume.litres() }
}

/// Of a field, that how near it comes is looked at first; and what its waste is measured by.
pub fn only_near(given: &Given, sheet: &PlanSheet, (plan, seen): (&Plan, Seen<'_>)) -> Option<String> {
    let share = sheet.waste.share.filter(|_| given.ask.what.shape() == Shape::Field && 0 < sheet.made)?;
    let share = percent(share, seen);
    let tried = fields_tried(plan).map(|n| told::least_of_as_near(&n.to_string(), &share));
    Some(tried.unwrap_or_else(|| told::only_near(&share, 1 < given.sources.len())))
}

/// Of a job of several alike, that this is of one of them.
pub fn of_one(given: &Given, seen: Seen<'_>) -> Option<String> {
    let top = match given.ask.what {
        What::Top(_) => true,
        What::Field(_) => false,
        _ => return None,
    };
    (1 < given.alike).then(|| told::of_one(top, &seen.speech.count(given.alike)))
}

/// What no plan can do, as far as it is known.
pub fn bound(given: &Given, found: &Found, seen: Seen<'_>) -> String {
    let (shape, sheet) = (given.ask.what.shape(), &found.sheet);
    if found.answered.bound.is_empty() {
        return String::new(); // another phone's word, which is not proven here
    }
    let short = wanted(given).is_none_or(|wanted| sheet.made < wanted);
    let more = given.ready.asked.senses().first() == Some(&Sense::More);
    match sheet.proof.gap {
        None if more && short && sheet.made == 0 => bounds::never(shape, "1", true),
        None if more && short => words::NO_PLAN_MORE.into(),
        None => String::new(),
        Some((0, _, bound)) if more && wanted(given).is_some_and(|wanted| i128::from(wanted) <= bound) => String::new(),
        Some((0, _, bound)) if more => bounds::never(shape, &whole(bound.saturating_add(1), seen), bound == 0),
        Some((1, worth, bound)) if more => less(given, found, ((worth, bound), short), seen),
        Some(_) if more && short => words::NO_PLAN_MORE.into(),
        Some(_) => String::new(),
    }
}

/// At most such a share less wood, up: a bound is never said to be nearer than it is.
fn less(given: &Given, found: &Found, (figures, short): ((i128, i128), bool), seen: Seen<'_>) -> String {
    let finished = match &given.ready.asked {
        fivebar_core::plan::Asked::Rows(problem) => {
            found.answered.worth.first().map_or(0, |rows| rows.saturating_mul(problem.length.into()))
        }
        _ => 0,
    };
    let share = Decimal::try_from_i128_with_scale(thousandths_less(figures, finished), 3).unwrap_or_default();
    let said = if short { bounds::no_more_nor_less } else { bounds::takes_less };
    said(given.ask.what.shape(), &percent(share, seen), given.ready.counts_whole())
}

/// By so many thousandths a bound is under what a plan takes, with what is finished of it, up.
fn thousandths_less((worth, bound): (i128, i128), finished: i128) -> i128 {
    let of = worth.saturating_add(finished).max(1);
    worth.saturating_sub(bound).saturating_mul(1_000).saturating_add(of).saturating_sub(1) / of
}

/// "So far 8 rows, at most 9."
pub fn progress(plan: &Plan, given: &Given, seen: Seen<'_>) -> Option<String> {
    let Stands::UnderWay { worth, bound, .. } = &plan.stands else { return None };
    let shape = given.ask.what.shape();
    if plan.found.is_some() {
        return Some(words::LOOKING_ON.into());
    }
    let made = worth.first().filter(|_| shape != Shape::Field)?;
    let most = bound.first().filter(|most| *most != made).map(|most| whole(*most, seen));
    Some(words::so_far(shape, &whole(*made, seen), *made == 1, most.as_deref()))
}

/// A part of the list by its name.
pub fn part(given: &Given, nth: usize) -> String {
    match &given.ready.wish {
        Wish::Parts(parts) | Wish::Sticks(parts) => match parts.parts.get(nth) {
            Some(part) if part.name.is_empty() => crate::words::en::changed::nth_part(&(nth + 1).to_string()),
            Some(part) if part.rest_of.is_some() => told::rest_of(&part.name),
            part => part.map_or_else(String::new, |part| part.name.clone()),
        },
        _ => String::new(),
    }
}

/// What decides that there is no more, or that it takes so many.
pub fn why(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Option<String> {
    let side = |length: Length| side(length, given.units, seen);
    Some(match sheet.proof.why.as_ref()? {
        // That joints decide stands over the picture.
        Why::AllMade | Why::Exact | Why::Joints { .. } => return None,
        Why::Fewest { pieces, gives, asked } => {
            let (fewer, gives) = (pieces.saturating_sub(1), seen.speech.length((*gives)?, given.units));
            words::one_fewer(&number(fewer, seen), fewer == 1, is_ripped(given), [&gives, &side(*asked)])
        }
        Why::NoStrips => words::NO_STRIPS.into(),
        Why::DoesNotComeOut => words::NOT_OUT.into(),
        Why::Wood => words::STICKS_SHORT.into(),
        Why::Length { tenths } => {
            let rows = seen.speech.number(Decimal::new(*tenths, 1), 0, 1);
            words::strips_give(section(given, seen).as_deref(), &rows)
        }
        Why::Part { part: nth } => limits::held(&words::part_decides(&part(given, *nth)), given, seen),
        Why::Together { parts } => {
            limits::held(&words::parts_decide(&parts.iter().map(|nth| part(given, *nth)).collect::<Vec<_>>()), given, seen)
        }
        Why::LeastPiece { cut } => tiles::least_piece(&side(*cut), &side(given.ready.figures.min_piece)),
        Why::Step { side: nth, other, more } => words::one_step(in_blocks(sheet), [*nth == 0, *more], &side(*other)),
    })
}

fn in_blocks(sheet: &PlanSheet) -> bool {
    sheet.laid.as_ref().is_some_and(|laid| laid.pattern == Pattern::Basket)
}

/// The section that all strips have.
fn section(given: &Given, seen: Seen<'_>) -> Option<String> {
    let mut all = given.ready.sources.iter().map(|source| [source.size[0], source.size[1]]);
    let first = all.next()?;
    let [thick, wide] = first.map(|side| seen.speech.length(side, given.units));
    all.all(|other| other == first).then(|| format!("{thick} × {wide}"))
}

/// "Used 24 of 33. Left 9 whole and one of 293."; in pieces as they lie on the rack, with the strips that are ripped from them, and of several piles
/// how many of each.
pub fn used(given: &Given, sheet: &PlanSheet, is_used: bool, seen: Seen<'_>) -> String {
    let all = || sheet.used.iter().filter_map(|used| Some((used, given.sources.get(used.source)?)));
    let sum = |of: &dyn Fn((&Used, &Source)) -> u32| all().map(of).fold(0_u32, u32::saturating_add);
    // Boards to buy are none that lie there: those that are not needed are not left.
    let there = |(used, source): (&Used, &Source)| if source.bought.is_some() { used.pieces } else { source.n };
    let (used, there) = (sum(&|(used, _)| used.pieces), sum(&there));
    let own = sum(&|(used, source)| given.own.get(used.source).copied().unwrap_or(0).min(source.n));
    let [used_n, there_n, own_n] = [used, there, own].map(|n| seen.speech.count(n));
    let strips = taken(sheet);
    let first = if is_ripped(given) {
        words::used_for_strips([&used_n, &there_n, &number(strips, seen)], strips == 1)
    } else {
        words::used_of(&used_n, &there_n)
    };
    let by_pile = all().filter(|(used, _)| 0 < used.pieces).map(|(used, source)| {
        let of = (source.bought.is_none() && used.pieces < source.n).then(|| seen.speech.count(source.n));
        told::of_one_pile(letter(given, used.source), &seen.speech.count(used.pieces), of.as_deref())
    });
    let first = told::by_pile(first, &by_pile.listed());
    let own = if 0 < own { words::own(&own_n, &there_n) } else { String::new() };
    let whole = there.saturating_sub(used);
    let whole = (0 < whole).then(|| seen.speech.count(whole));
    let left = strips_left(given, sheet, seen).into_iter().chain(remainders(given, sheet, seen)).collect();
    let said = format!("{first}{own}{}", words::left(whole.as_deref(), left));
    if is_used { told::when_taken(&said) } else { said }
}

/// Strips that were ripped and are not used.
fn strips_left(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<String> {
    let one = |used: &Used| {
        let (n, source) = (used.left_strips, given.ready.sources.get(used.source)?);
        (0 < n).then(|| words::strips_of(&number(n, seen), n == 1, &seen.speech.length(source.size[2], given.units)))
    };
    sheet.used.iter().filter_map(one).collect()
}

fn remainders(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<String> {
    let mut all: Vec<((Length, Option<Length>), i64)> = vec![];
    for (used, length) in sheet.used.iter().flat_map(|used| used.remainders.iter().map(move |length| (used, length))) {
        let rough = given.sources.get(used.source).and_then(|source| source.pile.thickness);
        let rest = (*length, Some(used.section[0]).filter(|thick| rough.is_some_and(|rough| *thick < rough)));
        match all.iter_mut().find(|(other, _)| *other == rest) {
            Some((_, n)) => *n += 1,
            None => all.push((rest, 1)),
        }
    }
    let written = |length: Length| seen.speech.length(length, given.units);
    let one = |((length, planed), n): &((Length, Option<Length>), i64)| {
        let rest = words::left_of(&number(*n, seen), *n == 1, &written(*length));
        planed.map_or_else(|| rest.clone(), |thick| words::planed_to(&rest, &written(thick)))
    };
    all.iter().map(one).collect()
}

/// Piles whose length is a band: that all is reckoned with its low end.
pub fn shortest(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<String> {
    let one = |used: &Used| {
        let (source, ready) = (given.sources.get(used.source)?, given.ready.sources.get(used.source)?);
        let (from, to) = source.pile.length.zip(source.pile.length_to)?;
        Some(told::at_its_shortest(&ready.letter, [&seen.speech.length(from, given.units), &side(to, given.units, seen)]))
    };
    sheet.used.iter().filter_map(one).collect()
}

/// Waste by volume with what it is of and made of, and in length.
pub fn waste(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<String> {
    let (units, waste) = (given.units, &sheet.waste);
    let volume = waste.share.map(|share| {
        let of = |volume: Volume| of_units(volume, units);
        let (places, parts) = read_as(of(waste.wasted), of(waste.cutting));
        let shown = |volume: Decimal| seen.speech.number(volume, places, places);
        let parts = parts.map(|part| (Decimal::ZERO < part).then(|| shown(part)));
        let [wasted, taken] = [waste.wasted, waste.taken].map(|volume| shown(half_up(of(volume), places.into())));
        let all = told::waste([&wasted, &taken], (common::volume_unit(units), waste.taken < waste.whole), &percent(share, seen));
        let both = Volume::ZERO < waste.cutting && Volume::ZERO < waste.sizing;
        all + &told::waste_parts(given.ask.what.shape(), [parts[0].as_deref(), parts[1].as_deref()], both)
    });
    let length = waste.length.map(|[lost, of]| {
        let ratio = |length: Length| Decimal::from(length.as_nm());
        let share = ratio(lost).checked_div(ratio(of)).unwrap_or_default();
        let [lost, of] = [lost, of].map(|length| seen.speech.length(length, units));
        told::waste_in_length(&lost, &of, common::length_unit(units), &percent(share, seen))
    });
    volume.into_iter().chain(length).collect()
}

/// To so many places what is cut and what is planed are read, and add up as they are read: more than one where a share of a tenth or
/// more would be rounded away.
fn read_as(wasted: Decimal, cutting: Decimal) -> (u8, [Decimal; 2]) {
    let parts = |wasted: Decimal, cutting: Decimal| [cutting, wasted.saturating_sub(cutting).max(Decimal::ZERO)];
    let read = |places: u8| parts(half_up(wasted, places.into()), half_up(cutting, places.into()));
    let counts = |part: &Decimal| Decimal::ZERO < *part && wasted <= part.saturating_mul(Decimal::TEN);
    let all = parts(wasted, cutting);
    let tells = |places: &u8| all.iter().zip(read(*places)).all(|(part, read)| !counts(part) || Decimal::ZERO < read);
    let places = (1..=3).find(tells).unwrap_or(1);
    (places, read(places))
}

/// Ends, or edges, are cut off before anything is.
fn is_trimmed(given: &Given) -> bool {
    let figures = &given.ready.figures;
    let all = match given.ask.what.shape() {
        Shape::Rows => vec![figures.square],
        Shape::Sticks => vec![figures.end_trim],
        Shape::Parts | Shape::Field => vec![figures.end_trim, figures.edge_trim],
    };
    all.into_iter().any(|trim| Length::ZERO < trim)
}

/// Cuts, glue, weight, movement; glue and weight with what is cut of it before, as far as they are known.
pub fn figures(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Vec<String> {
    let all = weighs::all(given, sheet, app);
    let sheet = &all.sheet;
    let moves = sheet.moves.map(|it| {
        let [width, most] = [it.width, it.moves.most].map(|length| crate::screens::workshop::movement_written(length, given.units, seen));
        match (it.part, sheet.laid.map(|laid| laid.pattern)) {
            (Some(nth), _) => told::part_moves(&part(given, nth), &width, &most),
            (None, Some(_)) if !sheet.moves_by_side.is_empty() => moves_by_side(given, sheet, seen),
            (None, Some(Pattern::Basket)) => told::moves_both_ways(true, &width, &most),
            (None, Some(Pattern::Herringbone | Pattern::Crossed)) => told::moves_both_ways(false, &width, &most),
            (None, _) => words::moves(&width, &most),
        }
    });
    [
        Some(words::saw_cuts(&number(sheet.cuts, seen), sheet.cuts == 1, is_trimmed(given))),
        weighs::glue(given, &all, seen),
        weighs::weight(given, &all, seen),
        moves,
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// How far a field that is glued both ways moves in its width and in its depth.
fn moves_by_side(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> String {
    let one = |(side, it): &(usize, Moving)| {
        let [width, most] = [it.width, it.moves.most].map(|length| crate::screens::workshop::movement_written(length, given.units, seen));
        told::side_moves(*side == 0, &most, &width)
    };
    told::moves_in_all(&sheet.moves_by_side.iter().map(one).listed())
}

pub fn is_top(given: &Given) -> bool {
    matches!(given.ask.what, What::Top(_))
}
