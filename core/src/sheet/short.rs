//! Piles that lack what the maker's machines take: at planning and at the bench. A comparison, never a permission.

use super::count::{Size, Tile, tile};
use super::shop::Shop;
use crate::bench::{Kind, On, Run};
use crate::ledger::fold;
use crate::quantity::{Id, Key, Length, Listed, Set, Sorted, Units, Wall};
use crate::wood::minimum::{Lack, Minimum, Sides};

/// What a piece lacks of a machine's minimum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Short {
    pub machine: Key,
    pub lack: Lack,
    /// The piece's side, and the least that was set for it.
    pub met: Length,
    pub least: Length,
}

/// A pile with pieces that lack something, as the bench says it.
#[derive(Clone, Debug, PartialEq)]
pub struct ShortPile {
    pub tile: Tile,
    pub units: Units,
    pub short: Vec<Short>,
}

/// What pieces of a size lack of each machine's minimum, by machine; the short end of a band counts. A side nobody measured lacks nothing.
pub fn short(size: &Size, machines: &Sorted<Key, Minimum>) -> Vec<Short> {
    machines.iter().flat_map(|(machine, minimum)| of_one(size, machine, minimum)).listed()
}

fn of_one(size: &Size, machine: &Key, minimum: &Minimum) -> Vec<Short> {
    let met = |side: Option<Length>, least: Option<Length>| side.or(least).unwrap_or(Length::ZERO);
    let piece = Sides {
        thickness: met(size.thickness, minimum.thickness),
        width: met(size.width, minimum.width),
        length: met(size.length, minimum.length),
    };
    let said = |lack: Lack| {
        let (met, least) = match lack {
            Lack::Shorter { .. } => (piece.length, minimum.length),
            Lack::Narrower { .. } => (piece.width, minimum.width),
            Lack::Thinner { .. } => (piece.thickness, minimum.thickness),
        };
        least.map(|least| Short { machine: machine.clone(), lack, met, least })
    };
    minimum.lacked_by(&piece).into_iter().filter_map(said).listed()
}

/// What is to be said at the bench: the short piles of the job the maker works on, each only with the first run of a day that has it.
pub fn at_bench(shop: &Shop, now: Wall) -> Vec<ShortPile> {
    let machines = &shop.workshop.wood.machines;
    let making = |run: &&Run| run.work.person.is_none() && run.work.kind == Kind::Make && run.started.day() == now.day();
    let runs: Vec<&Run> = shop.bench.runs().filter(making).listed();
    let Some(running) = runs.iter().rfind(|run| run.is_running()) else { return vec![] };
    let On::Job(job) = running.work.on else { return vec![] };
    if machines.is_empty() {
        return vec![];
    }
    let earlier = runs.iter().filter(|run| run.started.at < running.started.at);
    let said: Set<Id> = earlier.flat_map(|run| if let On::Job(job) = run.work.on { taken(shop, job) } else { vec![] }).collect();
    let piles = taken(shop, job).into_iter().filter(|pile| !said.contains(pile));
    piles.filter_map(|pile| pile_of(shop, job, pile)).listed()
}

/// The piles a job has wood of.
fn taken(shop: &Shop, job: Id) -> Vec<Id> {
    shop.job(job).map(|job| job.wood.keys().map(|(_, pile)| *pile).listed()).unwrap_or_default()
}

fn pile_of(shop: &Shop, job: Id, pile: Id) -> Option<ShortPile> {
    let job = shop.job(job).ok()?;
    let (haul, _) = job.wood.keys().find(|(_, other)| *other == pile)?;
    let haul = fold::haul(shop.book, *haul)?;
    let tile = tile(haul.pile(pile)?);
    let short = short(&tile.size, &shop.workshop.wood.machines);
    (!short.is_empty()).then_some(ShortPile { tile, units: haul.units, short })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::tell;

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash ash-white 1 x 2 x 20 in\ncount 30 ash\n\
        pile trims cherry-black 13/16 x 3 x 11 in\ncount 20 trims\npile bare cherry-black\ncount 20 bare\n\
        job stools \"Stools\" 2 spec\njob desk \"Desk\" 1 spec\n";

    /// The short piles the bench names after these lines, with the machines.
    #[track_caller]
    fn check(lines: &str, wanted: &[(&str, &[&str])]) {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let now = Wall::new(story.now.at, story.now.offset);
        let said = at_bench(&Shop::of(&story.book, now.at), now);
        let said: Vec<(String, Vec<String>)> = said
            .into_iter()
            .map(|pile| (pile.tile.name.unwrap_or_default(), pile.short.iter().map(|short| short.machine.to_string()).collect()))
            .collect();
        let wanted: Vec<(String, Vec<String>)> =
            wanted.iter().map(|(pile, machines)| ((*pile).to_owned(), machines.iter().map(|m| (*m).to_owned()).collect())).collect();
        assert_eq!(said, wanted, "{lines}");
    }

    #[test]
    fn the_bench_names_a_short_pile_once_a_day() {
        let took = "take 5 trims for stools\ntake 5 ash for stools\n";
        let minimum = "machine jointer length 12 in\n";
        let joint = "start \"joint\" make on stools\n";
        let [jointer, planer] = [&[("trims", &["jointer"] as &[&str])] as &[_], &[("trims", &["jointer", "planer"] as &[&str])]];
        check(&format!("{took}{joint}"), &[]);
        check(&format!("{took}{minimum}{joint}"), jointer);
        check(&format!("{took}{minimum}machine planer length 14 in\n{joint}"), planer);
        check(&format!("{took}{minimum}{joint}09:10 stop\n09:11 {joint}"), &[]);
        check(&format!("{took}{minimum}{joint}09:10 stop\n2026-03-03 09:11 {joint}"), jointer);
        check(&format!("{took}{minimum}{joint}09:10 stop\n"), &[]);
        check(&format!("{minimum}{joint}"), &[]);
        check(&format!("take 5 bare for stools\n{minimum}{joint}"), &[]);
        check(&format!("{took}{minimum}start \"messages\" office on stools\n"), &[]);
        check(&format!("{took}take 5 trims for desk\n{minimum}start \"joint\" make on desk\n09:10 {joint}"), &[]);
    }

    #[test]
    fn each_side_that_lacks_is_named_with_its_least() {
        let inches = |n: i64| Length::INCH.times(n).unwrap();
        let machines: Sorted<Key, Minimum> = Sorted::from_iter([(
            Key::read("drum-sander").unwrap(),
            Minimum { thickness: Some(inches(1)), width: Some(inches(2)), length: Some(inches(6)) },
        )]);
        let size = Size { thickness: None, width: Some(inches(1)), length: Some(inches(5)), length_to: Some(inches(9)) };
        let lacks: Vec<_> = short(&size, &machines).iter().map(|short| (short.met, short.least)).collect();
        assert_eq!(lacks, [(inches(5), inches(6)), (inches(1), inches(2))]);
        assert_eq!(short(&Size { length: Some(inches(6)), width: Some(inches(2)), ..Size::default() }, &machines), []);
    }
}
