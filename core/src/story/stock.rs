//! Lines about piles beyond the first count, and about woods, machines, air, the van and the timber yard.

use super::haul::pile_facts;
use super::size::{distance, grams, one_side, size};
use super::words::{Read, Words};
use super::{Teller, Told, id_of};
use crate::ledger::decide::{Command, Lying, OnTheScale, PileFacts, PlanCommand, StockCommand, WoodCommand};
use crate::ledger::kind::Exact;
use crate::ledger::kind::plan::Shape;
use crate::ledger::kind::stock::{PiecesSought, SoughtPiece};
use crate::ledger::kind::wood as kind;
use crate::ledger::{Fact, fold};
use crate::quantity::{Decimal, Grams, Id, Key, Scalar, Spelled};

pub(super) const VERBS: [&str; 19] = [
    "layers",
    "weighed",
    "measured",
    "want",
    "moisture",
    "rack",
    "place",
    "reserve",
    "unreserve",
    "gone",
    "seek",
    "suits",
    "buy",
    "species",
    "machine",
    "air",
    "room",
    "van",
    "timber-yard",
];

pub(super) fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    match verb {
        "buy" => return buy(teller, words),
        "seek" => {
            let command = seek(teller, words)?;
            return teller.order(&Command::Plan(command)).map(drop);
        }
        "species" | "machine" | "air" | "room" | "van" | "timber-yard" => {
            let command = wood(teller, verb, words)?;
            return teller.order(&Command::Wood(command)).map(drop);
        }
        _ => {}
    }
    let (at, command) = match verb {
        "layers" => layers(teller, words)?,
        "weighed" => weighed(teller, words)?,
        "measured" => {
            let at = pile(teller, words)?;
            let ([thickness, width, length], _) = size(words)?;
            (at, StockCommand::Measure { thickness: Some(thickness), width: Some(width), length: Some(length) })
        }
        "want" => want(teller, words)?,
        "moisture" => {
            let at = pile(teller, words)?;
            let wet = if words.has("wet") { Some(true) } else { None };
            let percent = if words.is_done() { None } else { Some(exact(words)?.0) };
            (at, StockCommand::Moisture { percent, wet })
        }
        "suits" => suits(teller, words)?,
        "place" => (pile(teller, words)?, StockCommand::Place { place: words.text()? }),
        _ => pieces(teller, verb, words)?,
    };
    teller.order(&Command::Stock(at, command)).map(drop)
}

fn pile(teller: &Teller, words: &mut Words) -> Read<Lying> {
    teller.story.names.said_pile(words).map(|(haul, pile)| Lying { haul, pile })
}

fn exact(words: &mut Words) -> Read<Exact> {
    words.number().map(|n| Exact(n.normalize()))
}

/// `layers 4 of 12 strips rest 3`.
fn layers(teller: &Teller, words: &mut Words) -> Read<(Lying, StockCommand)> {
    let layers = words.count()?;
    words.expect("of")?;
    let per = words.count()?;
    let at = pile(teller, words)?;
    let rest = if words.has("rest") { words.count()? } else { 0 };
    Ok((at, StockCommand::Layers { layers, per, rest }))
}

/// `weighed strips sample 10 8.8 lb all 104.5 lb tare 2 lb spread 0.1`.
fn weighed(teller: &Teller, words: &mut Words) -> Read<(Lying, StockCommand)> {
    let at = pile(teller, words)?;
    words.expect("sample")?;
    let (sample, sample_weight) = (words.count()?, on_scale(words)?);
    words.expect("all")?;
    let shows = on_scale(words)?;
    let tare = if words.has("tare") { on_scale(words)? } else { Grams::ZERO };
    let spread = if words.has("spread") { Some(words.number()?) } else { None };
    let singles = if words.has("singles") { Some(words.count()?) } else { None };
    Ok((at, StockCommand::Weigh(OnTheScale { sample, sample_weight, shows, tare, spread, singles })))
}

fn on_scale(words: &mut Words) -> Read<Grams> {
    let grams = grams(words)?;
    Grams::new(grams).or_else(|_| words.no("a mass up to ten tonnes"))
}

/// `want 20 of "legs" from squares for stands pieces 1 gives 2`.
fn want(teller: &Teller, words: &mut Words) -> Read<(Lying, StockCommand)> {
    let wanted = words.count()?;
    let part = if words.has("of") { Some(words.text()?) } else { None };
    words.expect("from")?;
    let at = pile(teller, words)?;
    let job = if words.has("for") { Some(teller.story.names.said_job(words)?) } else { None };
    let pieces = if words.has("pieces") { words.count()? } else { 1 };
    let gives = if words.has("gives") { words.count()? } else { 1 };
    Ok((at, StockCommand::Want { part, job, wanted, pieces, gives }))
}

/// `seek rows for bench 3 beside 10 of 40 x 150 x 365 mm oak-european or 5 of 27 x 62 x 1010 mm makes 8`; `seek rows for bench none`.
fn seek(teller: &Teller, words: &mut Words) -> Read<PlanCommand> {
    let shape = words.take("rows, parts, sticks or field", |word| Shape::unspell(&Scalar::Text(word.into())))?;
    words.expect("for")?;
    let job = teller.story.names.said_job(words)?;
    if words.has("none") {
        let all = fold::workshop(&teller.story.book).sought;
        let sought = all.iter().find(|one| (one.job, one.plan.shape) == (job, shape)).map_or(job, |one| one.id);
        return Ok(PlanCommand::LookNoMore { sought });
    }
    let (mut pieces, mut any) = (vec![sought(words)?], None);
    while let Some(word) = words.maybe(|word| ["or", "and"].into_iter().find(|it| *it == word)) {
        any = any.or((word == "or").then_some(true));
        pieces.push(sought(words)?);
    }
    let makes = if words.has("makes") { Some(words.count()?) } else { None };
    Ok(PlanCommand::LookFor(Box::new(PiecesSought { job, shape, pieces, any, length: None, width: None, makes })))
}

fn sought(words: &mut Words) -> Read<SoughtPiece> {
    let n = words.count()?;
    let there = if words.has("beside") { Some(words.count()?) } else { None };
    words.expect("of")?;
    let ([thickness, width, length], _) = size(words)?;
    let free = |word: &str| !["or", "and", "makes"].contains(&word);
    let wood = words.maybe(|word| Key::read(word).filter(|_| free(word)));
    Ok(SoughtPiece { n, thickness, width, length, wood, there, at_least: None, just_thick: None, just_wide: None })
}

/// `suits squares 0 for bench`, `suits squares 0 for bench no`: the first of what the job looks for.
fn suits(teller: &Teller, words: &mut Words) -> Read<(Lying, StockCommand)> {
    let (at, nth) = (pile(teller, words)?, words.count()?);
    words.expect("for")?;
    let job = teller.story.names.said_job(words)?;
    let sought = fold::workshop(&teller.story.book).sought.iter().find(|one| one.job == job).map_or(job, |one| one.id);
    Ok((at, StockCommand::Suits { sought, nth, suits: !words.has("no") }))
}

/// Lines that begin with a number of pieces: `rack 20 strips`, `gone 3 strips burnt`.
fn pieces(teller: &Teller, verb: &str, words: &mut Words) -> Read<(Lying, StockCommand)> {
    let n = words.count()?;
    let at = pile(teller, words)?;
    let command = match verb {
        "rack" => StockCommand::CountRack { n, why: words.maybe_text() },
        "gone" => StockCommand::Gone { n, to: words.key("burnt, given or jigs")? },
        "reserve" => {
            words.expect("for")?;
            StockCommand::Reserve { job: teller.story.names.said_job(words)?, n }
        }
        _ => {
            words.expect("from")?;
            StockCommand::FreeReserved { job: teller.story.names.said_job(words)?, n }
        }
    };
    Ok((at, command))
}

/// `buy 6 planks ash-white 1 x 6 x 96 in for 88`: a pile with a price, a haul of its own.
fn buy(teller: &mut Teller, words: &mut Words) -> Told {
    let n = words.count()?;
    let name = words.word("a name for the pile")?.to_owned();
    let facts = PileFacts { name: Some(name.clone()), ..pile_facts(words)? };
    words.expect("for")?;
    let (currency, units) = teller.workshop;
    let paid = words.money(currency)?;
    let supplier = if words.has("from") { Some(teller.story.names.said_person(words)?) } else { None };
    let facts = teller.order(&Command::Wood(WoodCommand::Buy { units, pile: facts, n, paid, supplier }))?;
    let haul = id_of(&facts, |fact| matches!(fact, Fact::HaulBegan(_)))?;
    let pile: Id = id_of(&facts, |fact| matches!(fact, Fact::PileAdded(_)))?;
    teller.story.names.hauls.insert(name.clone(), haul);
    teller.story.names.piles.insert(name, (haul, pile));
    Ok(())
}

fn wood(teller: &Teller, verb: &str, words: &mut Words) -> Read<WoodCommand> {
    Ok(match verb {
        "species" => WoodCommand::AddSpecies(species(words)?),
        "machine" => WoodCommand::SetMachine(machine(words)?),
        "air" => {
            let temperature = signed(words)?;
            WoodCommand::ReadAir(kind::AirRead { temperature, humidity: exact(words)?, place: words.maybe_text() })
        }
        "room" => {
            let (low, high) = (exact(words)?, exact(words)?);
            let job = if words.has("for") { Some(teller.story.names.said_job(words)?) } else { None };
            WoodCommand::SetRoom(kind::RoomRangeSet { low, high, job })
        }
        "van" => {
            let payload = if words.peek() == Some("person") { None } else { Some(grams(words)?) };
            let person = if words.has("person") { Some(grams(words)?) } else { None };
            WoodCommand::SetVan(kind::VanSet { payload, person })
        }
        _ => {
            let far = Some(distance(words)?.0);
            let span = if words.is_done() { None } else { Some(words.minutes()?) };
            WoodCommand::SetTimberYard(kind::TimberYardSet { distance: far, span })
        }
    })
}

/// Degrees may lie below nothing.
fn signed(words: &mut Words) -> Read<Exact> {
    words.take("a number", |word| match word.strip_prefix('-') {
        Some(below) => super::words::number(below).map(|n| Exact((Decimal::ZERO.saturating_sub(n)).normalize())),
        None => super::words::number(word).map(|n| Exact(n.normalize())),
    })
}

/// `species own-apple "apple" 760 radial 0.002 tangential 0.0035 from "weighed at home"`.
fn species(words: &mut Words) -> Read<kind::SpeciesAdded> {
    let key = words.key("a key")?;
    let (name, density) = (words.text()?, exact(words)?);
    let radial = if words.has("radial") { Some(exact(words)?) } else { None };
    let tangential = if words.has("tangential") { Some(exact(words)?) } else { None };
    let from = if words.has("from") { Some(words.text()?) } else { None };
    Ok(kind::SpeciesAdded { key, name, density, radial, tangential, from, gone: None })
}

/// `machine jointer length 12 in thickness 3/8 in`.
fn machine(words: &mut Words) -> Read<kind::MachineMinimumSet> {
    let machine = words.key("a machine")?;
    let [mut thickness, mut width, mut length] = [None, None, None];
    while !words.is_done() {
        let side = words.word("thickness, width or length")?;
        let said = Some(one_side(words)?);
        match side {
            "thickness" => thickness = said,
            "width" => width = said,
            "length" => length = said,
            _ => return words.no("thickness, width or length before it"),
        }
    }
    Ok(kind::MachineMinimumSet { machine, thickness, width, length, name: None })
}

#[cfg(test)]
mod tests {
    use crate::ledger::fold;
    use crate::quantity::{Decimal, Grams, Length};
    use crate::refusal::Refusal;
    use crate::story::{Story, Why, tell};

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash ash-white 1 x 2 x 20 in\ncount 30 ash\n\
        job stools \"Stools\" 2 spec\n";

    fn told(lines: &str) -> Story {
        tell(&format!("{START}{lines}"))
    }

    /// How the pile stands: taken, on the rack, reserved, lost.
    #[track_caller]
    fn check(lines: &str, wanted: [u32; 4]) {
        let story = told(lines);
        assert_eq!(story.refused, [], "{lines}");
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let pile = haul.pile(story.names.pile("ash").unwrap()).unwrap();
        assert_eq!([pile.taken, pile.on_rack(), pile.reserved(), pile.lost()], wanted, "{lines}");
    }

    #[test]
    fn a_pile_is_counted_measured_and_kept_on_the_rack() {
        check("layers 4 of 5 ash rest 3", [53, 53, 0, 0]);
        check("layers 4 of 5 ash\nundo", [30, 30, 0, 0]);
        check("weighed ash sample 10 8 lb all 82 lb tare 2 lb", [130, 130, 0, 0]);
        check("weighed ash sample 10 8 lb all 82 lb tare 2 lb spread 0.15\nundo", [30, 30, 0, 0]);
        check("rack 27 ash \"dark corner\"", [30, 27, 0, 3]);
        check("rack 33 ash", [30, 33, 0, 0]);
        check("take 10 ash for stools\ngone 3 ash burnt\nreserve 4 ash for stools", [30, 17, 4, 3]);
        check("reserve 4 ash for stools\ntake 3 ash for stools", [30, 27, 1, 0]);
        check("reserve 4 ash for stools\nunreserve 4 ash from stools", [30, 30, 0, 0]);
        check("recount 26 ash\nrack 20 ash\ngone 2 ash given\nundo", [26, 20, 0, 6]);
    }

    #[test]
    fn what_can_not_be_is_refused() {
        for line in [
            "layers 0 of 5 ash",
            "layers 9999 of 9999 ash",
            "weighed ash sample 4 4 lb all 80 lb",
            "weighed ash sample 0 0 lb all 80 lb",
            "weighed ash sample 10 8 lb all 7 lb",
            "weighed ash sample 10 8 lb all 9 lb tare 2 lb",
            "weighed ash sample 10 8 lb all 2 lb tare 2 lb",
            "weighed ash sample 10 1 lb all 2000 lb",
            "weighed ash sample 10 8 lb all 80 lb spread 1",
            "weighed ash sample 10 8 lb all 80000 lb",
            "weighed ash sample 10 -8 lb all 80 lb",
            "rack 10000 ash",
            "gone 31 ash burnt",
            "reserve 31 ash for stools",
            "unreserve 1 ash from stools",
            "moisture ash 251",
            "room 9 6",
            "machine jointer length 30 m",
            "buy 0 planks ash-white 1 x 6 x 96 in for 88",
            "species own-x \"\" 700",
            "species own-x \"lead\" 11340",
            "species ash-white \"ash\" 700",
            "air 80 50",
            "air 20 101",
        ] {
            assert_eq!(told(line).refused.len(), 1, "{line}");
        }
    }

    #[test]
    fn what_no_van_and_no_pile_holds_is_refused_with_its_limit() {
        let weight = |least| Refusal::WeightOutOfRange { least, most: Grams::MOST };
        let sample = Refusal::SampleMoreThanPile { measured: 2, there: 1 };
        for (line, refusal) in [
            ("van 0 lb", weight(Grams::KG)),
            ("van 1500 lb person 0 lb", weight(Grams::KG)),
            ("van 10001 kg", weight(Grams::KG)),
            ("carries 0 lb", weight(Grams::KG)),
            ("people 21", Refusal::TooManyPeople { would_be: 21, most: 20 }),
            ("pile one\ncount 1 one\nmeasured one 1 x 2 x 20 in\nmeasured one 1 x 2 x 20 in", sample),
        ] {
            let why: Vec<Why> = told(line).refused.into_iter().map(|(_, why)| why).collect();
            assert_eq!(why, [Why::Refused(refusal)], "{line}");
        }
        assert_eq!(told("van 10000 kg person 1 kg\ncarries 1 kg\npeople 20").refused, []);
    }

    /// What a job says of its room goes before what the workshop says of any.
    #[test]
    fn a_job_has_a_room_of_its_own() {
        for (lines, job, any) in [("room 6 10", None, Some((6, 10))), ("room 6 10\nroom 8 14 for stools", Some((8, 14)), Some((6, 10)))] {
            let story = told(lines);
            assert_eq!(story.refused, [], "{lines}");
            let said = |room: Option<(i64, i64)>| room.map(|(low, high)| (Decimal::from(low), Decimal::from(high)));
            let stools = fold::job(&story.book, story.names.job("stools").unwrap()).unwrap();
            assert_eq!((stools.room, fold::workshop(&story.book).wood.room), (said(job), said(any)), "{lines}");
        }
    }

    #[test]
    fn what_others_may_have_is_not_given_away() {
        let story = told("job desk \"Desk\" 1 spec\nreserve 25 ash for stools\ntake 6 ash for desk\ngone 6 ash burnt\ntake 5 ash for desk");
        assert_eq!(story.refused.iter().map(|(line, _)| *line).collect::<Vec<_>>(), [8, 9], "{:?}", story.refused);
    }

    #[test]
    fn woods_machines_air_and_the_van_are_known() {
        let story = told(
            "species own-apple \"apple\" 760 tangential 0.0035\nmachine jointer length 12 in\nmachine planer length 12 in thickness 3/16 in\n\
             machine jointer\nair -1 80\nroom 6 10\nvan 1500 lb person 180 lb\ntimber-yard 20 miles 60 min\n\
             buy 6 planks ash-white 1 x 6 x 96 in for 88\nmoisture ash wet\nmoisture ash 14.5",
        );
        assert_eq!(story.refused, [] as [(u32, Why); 0]);
        let wood = fold::workshop(&story.book).wood;
        assert_eq!(wood.woods.find("own-apple").unwrap().name, "apple");
        assert_eq!(wood.machines.values().map(|m| m.length).collect::<Vec<_>>(), [Length::INCH.times(12).ok()]);
        assert_eq!(wood.room, Some((Decimal::from(6), Decimal::from(10))));
        let air = wood.air.unwrap().0;
        assert_eq!((air.temperature.0, air.humidity.0), (Decimal::from(-1), Decimal::from(80)));
        assert_eq!((wood.payload, wood.yard_span.map(|span| span.as_minutes())), (Some(680_389), Some(60)));
        let bought = fold::haul(&story.book, story.names.haul("planks").unwrap()).unwrap();
        assert_eq!((bought.bought, bought.taken(), bought.spent().unwrap().to_string()), (true, 6, "88.00 USD".into()));
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let damp = haul.piles[0].dampness.unwrap();
        assert_eq!((damp.percent, damp.wet), (Some(Decimal::new(145, 1)), false));
    }

    /// 30 pieces of 40 cubic inches are 8 1/3 board feet; ash of 672 kg a cubic metre.
    #[test]
    fn a_load_knows_own_woods_water_and_the_van() {
        for (lines, pounds, guessed) in [
            ("", "29.1", false),
            ("moisture ash 12", "29.1", false),
            ("moisture ash 45", "34.4", false),
            ("moisture ash wet", "50.3", true),
            ("species own-apple \"apple\" 760\nname ash own-apple", "32.9", false),
            ("name ash unknown-hardwood", "33.4", true),
            ("species own-apple \"apple\" 760 as it\nname ash own-apple\nundo it", "33.4", true),
        ] {
            let story = told(&format!("van 1500 lb person 180 lb\npeople 2\n{lines}"));
            assert_eq!(story.refused, [], "{lines}");
            let id = story.names.haul("yard").unwrap();
            let load = crate::sheet::count::current(&story.book).unwrap().load();
            let shop = crate::sheet::Shop::of(&story.book, story.now.at);
            let reckoned = crate::sheet::haul::haul(&shop, id).unwrap();
            assert_eq!((format!("{:.1}", load.mass.as_lb()), load.guessed), (pounds.into(), guessed), "{lines}");
            assert_eq!((reckoned.weight, reckoned.weight_guessed, reckoned.carries), (Some(load.mass), guessed, load.carries), "{lines}");
            assert_eq!(load.carries.map(|most| most.as_lb().round()), Some(1140.0));
        }
    }

    #[test]
    fn a_drive_shared_with_errands_is_shared_in_miles_and_minutes() {
        let story = told("trip wheel 60 min 40 miles at 0.725 share 0.25\ntrip share 1.5\ntrip share 0");
        assert_eq!(story.refused.len(), 2, "{:?}", story.refused);
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        assert_eq!((haul.trips[0].wheel().as_minutes(), haul.spent().unwrap().to_string()), (15, "7.25 USD".into()));
    }
}
