//! Lines about hauls: trips, piles, counting, sorting, the rack.

use super::size::{distance, grams, size};
use super::words::{Read, Words};
use super::{Teller, Told, Why, id_of};
use crate::ledger::Fact;
use crate::ledger::decide::{Command, HaulCommand, PileFacts};
use crate::ledger::kind::Exact;
use crate::ledger::kind::haul::{Fate, HaulDescribed, Per, Step, TripDescribed, Way};
use crate::quantity::{Id, Key};
use crate::refusal::Refusal;

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    match verb {
        "leave" => leave(teller, words),
        "at" => {
            words.expect("the")?;
            words.expect("bin")?;
            step(teller, words, Step::AtBin)
        }
        "homeward" => step(teller, words, Step::Homeward),
        "home" => step(teller, words, Step::Home),
        "trip" => trip(teller, words),
        "carries" => {
            let carries = Some(grams(words)?);
            describe(teller, words, |haul| HaulDescribed { carries, ..HaulDescribed::of(haul) })
        }
        "people" => {
            let people = Some(words.count()?);
            describe(teller, words, |haul| HaulDescribed { people, ..HaulDescribed::of(haul) })
        }
        "saves" => {
            words.expect("a")?;
            words.expect("trip")?;
            let saves_trip = Some(!words.has("not"));
            describe(teller, words, |haul| HaulDescribed { saves_trip, ..HaulDescribed::of(haul) })
        }
        "supplier" => {
            let supplier = Some(teller.story.names.said_person(words)?);
            describe(teller, words, |haul| HaulDescribed { supplier, ..HaulDescribed::of(haul) })
        }
        "pile" => pile(teller, words),
        "name" => {
            let (haul, pile) = teller.story.names.said_pile(words)?;
            let facts = pile_facts(words)?;
            order(teller, HaulCommand::DescribePile { haul, pile, facts })
        }
        _ => pieces(teller, verb, words),
    }
}

/// Lines that begin with a number of pieces: `count 24 strips`.
fn pieces(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    if !matches!(verb, "count" | "move" | "recount" | "good" | "reject" | "return" | "take" | "free") {
        return Err(super::Unread { met: Some(verb.to_owned()), expected: "a command" }.into());
    }
    let n = words.count()?;
    let names = &teller.story.names;
    let (haul, pile) = names.said_pile(words)?;
    let command = match verb {
        "count" => HaulCommand::Count { haul, pile, n, way: way(words, n) },
        "move" => {
            words.expect("to")?;
            HaulCommand::Move { haul, from: pile, to: names.said_pile(words)?.1, n }
        }
        "recount" => HaulCommand::Recount { haul, pile, n, why: words.maybe_text() },
        "good" => HaulCommand::Sort { haul, pile, n },
        "reject" => HaulCommand::Reject { haul, pile, n, why: words.key("a reason")? },
        "return" => HaulCommand::Return { haul, pile, n, why: words.key("a reason")?, to: fate(words)? },
        "take" => {
            words.expect("for")?;
            HaulCommand::Take { haul, pile, job: names.said_job(words)?, n }
        }
        _ => {
            words.expect("from")?;
            HaulCommand::Free { haul, pile, job: names.said_job(words)?, n }
        }
    };
    order(teller, command)
}

fn way(words: &mut Words, n: u32) -> Way {
    match () {
        () if words.has("layers") => Way::Layers,
        () if words.has("weighed") => Way::Weight,
        () if n == 1 => Way::Tap,
        () => Way::Bundle,
    }
}

fn fate(words: &mut Words) -> Read<Fate> {
    words.expect("to")?;
    words.take("good, jigs or burnt", |word| match word {
        "good" => Some(Fate::Good),
        "jigs" => Some(Fate::Jigs),
        "burnt" => Some(Fate::Burnt),
        _ => None,
    })
}

fn order(teller: &mut Teller, command: HaulCommand) -> Told {
    teller.order(&Command::Haul(command)).map(drop)
}

/// `leave for NAME`: a new haul of that name, or another trip of it.
fn leave(teller: &mut Teller, words: &mut Words) -> Told {
    words.expect("for")?;
    let name = words.word("a name for the haul")?.to_owned();
    let ((currency, units), known) = (teller.workshop, teller.story.names.haul(&name));
    let facts = teller.order(&Command::Haul(HaulCommand::Leave { haul: known, currency, units }))?;
    teller.story.names.last_trip = Some(id_of(&facts, |fact| matches!(fact, Fact::TripBegan(_)))?);
    if known.is_some() {
        teller.story.names.last_haul = known;
        return Ok(());
    }
    begun(teller, name, id_of(&facts, |fact| matches!(fact, Fact::HaulBegan(_)))?)
}

fn begun(teller: &mut Teller, name: String, haul: Id) -> Told {
    teller.story.names.hauls.insert(name.clone(), haul);
    teller.story.names.last_haul = Some(haul);
    order(teller, HaulCommand::Describe(HaulDescribed { name: Some(name), ..HaulDescribed::of(haul) }))
}

fn step(teller: &mut Teller, words: &mut Words, step: Step) -> Told {
    let (haul, trip) = this_trip(teller, words)?;
    order(teller, HaulCommand::Step { haul, trip, step })
}

fn this_trip(teller: &Teller, words: &mut Words) -> Result<(Id, Id), Why> {
    let haul = teller.story.names.this_haul(words)?;
    Ok((haul, teller.story.names.last_trip.ok_or(Refusal::NotThere)?))
}

/// `trip 23 miles at 0.725`, `trip wheel 46 min bin 38 min`.
fn trip(teller: &mut Teller, words: &mut Words) -> Told {
    let wheel = if words.has("wheel") { Some(words.minutes()?) } else { None };
    let bin = if words.has("bin") { Some(words.minutes()?) } else { None };
    let driven = if words.peek().is_some_and(|word| word != "of" && word != "share") { Some(distance(words)?) } else { None };
    let rate = if words.has("at") { Some(Exact(words.number()?.normalize())) } else { None };
    let share = if words.has("share") { Some(Exact(words.number()?.normalize())) } else { None };
    let per = driven.map(|(_, miles)| if miles { Per::Mile } else { Per::Km });
    let (haul, trip) = this_trip(teller, words)?;
    let distance = driven.map(|(d, _)| d);
    order(teller, HaulCommand::DescribeTrip(TripDescribed { distance, rate, per, wheel, bin, share, ..TripDescribed::of(haul, trip) }))
}

fn describe(teller: &mut Teller, words: &mut Words, facts: impl Fn(Id) -> HaulDescribed) -> Told {
    let haul = teller.story.names.this_haul(words)?;
    order(teller, HaulCommand::Describe(facts(haul)))
}

/// `pile NAME [WOOD] [SIZE]`: a new pile of the haul spoken of last, or of a new haul where there is none.
fn pile(teller: &mut Teller, words: &mut Words) -> Told {
    let name = words.word("a name for the pile")?.to_owned();
    let facts = PileFacts { name: Some(name.clone()), ..pile_facts(words)? };
    let (currency, units) = teller.workshop;
    let known = teller.story.names.this_haul(words).ok();
    let command = match known {
        Some(haul) => HaulCommand::AddPile { haul, pile: facts, n: 0, way: Way::Tap },
        None => HaulCommand::Begin { currency, units, pile: facts, n: 0, way: Way::Tap },
    };
    let facts = teller.order(&Command::Haul(command))?;
    let pile = id_of(&facts, |fact| matches!(fact, Fact::PileAdded(_)))?;
    let haul = match known {
        Some(haul) => haul,
        None => id_of(&facts, |fact| matches!(fact, Fact::HaulBegan(_)))?,
    };
    teller.story.names.last_haul = Some(haul);
    teller.story.names.piles.insert(name, (haul, pile));
    Ok(())
}

/// `[WOOD] [SIZE]`: a wood is a species key; a size begins with a digit.
pub(super) fn pile_facts(words: &mut Words) -> Read<PileFacts> {
    let letter = |word: &str| word.bytes().next().is_some_and(|b| b.is_ascii_lowercase());
    let wood = words.maybe(|word| Key::read(word).filter(|_| letter(word) && word != "of"));
    if words.peek().is_none_or(|word| word == "of") {
        return Ok(PileFacts { wood, ..PileFacts::default() });
    }
    let ([thickness, width, length], length_to) = size(words)?;
    let (thickness, width, length) = (Some(thickness), Some(width), Some(length));
    Ok(PileFacts { wood, name: None, thickness, width, length, length_to })
}
