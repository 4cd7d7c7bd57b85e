//! Piles shorter than a machine's minimum, said where work is planned and done: a comparison, never a permission.

use super::Seen;
use super::count::name;
use crate::app::App;
use crate::words::en::{common, yard as words};
use fivebar_core::ledger::fold::WoodFacts;
use fivebar_core::quantity::{Length, Listed, Units, begin_large};
use fivebar_core::sheet::count::Size;
use fivebar_core::sheet::rack::RackPile;
use fivebar_core::sheet::short::{Short, at_bench, short};
use fivebar_core::wood::minimum::Lack;

/// One line for each short pile of what runs, with the first run of the day that has it.
pub fn lines(app: &App, seen: Seen<'_>) -> Vec<String> {
    let known = app.shelf().workshop();
    let piles = at_bench(&app.shelf().shop(seen.now.at), seen.now);
    piles
        .iter()
        .map(|pile| {
            let met = pile.short.first().map_or(String::new(), |first| side(first.met, pile.units, seen));
            words::too_short(&begin_large(&name(&pile.tile)), &met, &lacks(&pile.short, &known.wood, (pile.units, seen)))
        })
        .listed()
}

/// What a pile of the rack lacks: "shorter than the 12 in you set for the jointer".
pub fn of(pile: &RackPile, known: &WoodFacts, seen: Seen<'_>) -> Vec<String> {
    let size = Size { thickness: pile.thickness, width: pile.width, length: pile.length, length_to: pile.length_to };
    lacks(&short(&size, &known.machines), known, (pile.units, seen))
}

fn lacks(short: &[Short], known: &WoodFacts, (units, seen): (Units, Seen<'_>)) -> Vec<String> {
    let said = |short: &Short| {
        let own = known.machine_names.get(&short.machine).map(String::as_str);
        words::lacks(side_of(short.lack), &side(short.least, units, seen), &words::machine(short.machine.as_str(), own))
    };
    short.iter().map(said).listed()
}

fn side_of(lack: Lack) -> words::Lacks {
    match lack {
        Lack::Shorter { .. } => words::Lacks::Length,
        Lack::Narrower { .. } => words::Lacks::Width,
        Lack::Thinner { .. } => words::Lacks::Thickness,
    }
}

fn side(length: Length, units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.length(length, units), common::length_unit(units))
}

#[cfg(test)]
mod tests {
    use crate::app::order::Which;
    use crate::app::shelf::Shelf;
    use crate::app::{App, Msg, jobs};
    use crate::parts::Place;
    use fivebar_core::ledger::Device;
    use fivebar_core::ledger::decide::Now;
    use fivebar_core::quantity::{Sorted, Wall};
    use fivebar_core::story::tell;

    const STORY: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile trims cherry-black 13/16 x 3 x 11 in\n\
        count 20 trims\njob stools \"Stools\" 2 spec\ntake 5 trims for stools\n\
        machine jointer length 12 in\nstart \"joint\" make on stools\n";

    /// A place as it stands after a story.
    fn shown(lines: &str, place: Place, messages: Vec<Msg>) -> String {
        let story = tell(&format!("{STORY}{lines}"));
        assert_eq!(story.refused, []);
        let mut app = App::for_tests(place);
        app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
        app.now = Wall::new(story.now.at, story.now.offset);
        let now = Now { wall: app.now, chance: [1; 10] };
        messages.into_iter().for_each(|message| drop(app.heard(message, now)));
        crate::screens::page(&app).html()
    }

    #[test]
    fn a_short_pile_is_named_at_the_bench_once_a_day_and_where_its_wood_is_planned() {
        let line = "Trims, 11 in, are shorter than the 12 in you set for the jointer. Your machine’s manual decides.";
        let first = shown("", Place::Bench, vec![]);
        assert_eq!(first.matches(line).count(), 1, "{first}");
        assert!(!shown("09:20 stop\n09:30 start \"joint\" make on stools\n", Place::Bench, vec![]).contains(line));
        let story = tell(STORY);
        let job = story.names.job("stools").expect("the job");
        let room = vec![Msg::Jobs(jobs::Tap::Open(Which::Own, job)), Msg::Jobs(jobs::Tap::Room(jobs::Room::Wood))];
        let planned = shown("", Place::Jobs, room);
        for words in ["Shorter than the 12 in you set for the jointer", "Shorter than the minimum you set. Your machine’s manual decides."]
        {
            assert_eq!(planned.matches(words).count(), 1, "{words} in {planned}");
        }
    }
}
