//! What comes next, as the page of the job in hand says it: one rule, wherever it stands.

use super::order::BELOW;
use super::{BenchSheet, Choice, Rack};
use crate::bench::On;
use crate::ledger::fold::{self, Operation};
use crate::quantity::Id;
use crate::sheet::Shop;
use crate::sheet::job::next_planned;

/// The bench with the operation that comes next where it is looked for: by what is still to come of each operation, which the bench alone does
/// not know.
pub fn as_its_job_says(shop: &Shop, sheet: BenchSheet) -> BenchSheet {
    let jobs = sheet.rack.jobs.into_iter().map(|choice| unless_done(shop, choice)).collect();
    let sheet = BenchSheet { rack: Rack { jobs, ..sheet.rack }, ..sheet };
    let Some(next) = next_of(shop, &sheet) else { return without_unplanned(shop, sheet) };
    let carry = sheet.carry_on.clone();
    BenchSheet { rack: put_first(sheet.rack, next, carry.as_ref()), ..sheet }
}

/// Where another job stands: what was done on it last, or once all its pieces have that, what comes next there.
fn unless_done(shop: &Shop, choice: Choice) -> Choice {
    let next = |id: Id| Some(choice_of(shop, On::Job(id), next_planned(shop, &shop.job(id).ok()?)?));
    match choice.on {
        On::Job(id) if choice.batch.is_done() => next(id).unwrap_or(choice),
        _ => choice,
    }
}

fn choice_of(shop: &Shop, on: On, Operation { op, kind, stage, .. }: &Operation) -> Choice {
    let (batch, name) = (shop.bench.batch(on, op, shop.now), fold::name_of(shop.book, on));
    Choice { op: op.clone(), kind: *kind, stage: *stage, on, rework: false, name, batch }
}

/// What usually follows is not next on a job whose plan has no such operation.
fn without_unplanned(shop: &Shop, sheet: BenchSheet) -> BenchSheet {
    let job = sheet.hand.as_ref().and_then(|hand| if let On::Job(id) = hand.on { shop.job(id).ok() } else { None });
    let is_foreign = |choice: &Choice| {
        job.as_ref().is_some_and(|job| !job.operations.is_empty() && job.operations.iter().all(|planned| planned.op != choice.op))
    };
    let next = sheet.rack.next.filter(|place| !sheet.rack.below.get(*place).is_some_and(is_foreign));
    BenchSheet { rack: Rack { next, ..sheet.rack }, ..sheet }
}

/// The next operation of the job in hand, where that is not what runs.
fn next_of(shop: &Shop, sheet: &BenchSheet) -> Option<Choice> {
    let hand = sheet.hand.as_ref()?;
    let On::Job(id) = hand.on else { return None };
    let job = shop.job(id).ok()?;
    let next = choice_of(shop, hand.on, next_planned(shop, &job)?);
    let runs = sheet.running.as_ref().is_some_and(|slab| slab.run.work.op == next.op && slab.run.work.on == hand.on);
    (!runs).then_some(next)
}

/// It lies first, or behind what to carry on with; what leaves its place for it lies in the list of all.
fn put_first(mut rack: Rack, next: Choice, carry: Option<&Choice>) -> Rack {
    let is_carried = |choice: &Choice| carry.is_some_and(|carry| carry.is_same(choice));
    if rack.below.first().is_some_and(|first| first.is_same(&next)) {
        return Rack { next: Some(0), ..rack };
    }
    let before = rack.below.len();
    for boards in [&mut rack.below, &mut rack.earlier, &mut rack.lately] {
        boards.retain(|choice| !choice.is_same(&next));
    }
    rack.above = rack.above.filter(|above| !above.is_same(&next));
    let is_new = rack.below.len() == before;
    let place = usize::from(rack.below.first().is_some_and(is_carried));
    rack.below.insert(place, next);
    if is_new && BELOW < rack.below.len() {
        rack.below.truncate(BELOW);
        rack.more = rack.more.saturating_add(1);
    }
    Rack { next: Some(place), ..rack }
}

#[cfg(test)]
mod tests {
    use super::super::{Seen, bench};
    use super::*;
    use crate::sheet::job::{NextAct, job};
    use crate::story::tell;

    /// What was told of four stools whose coats and delivery are planned: the board that is next, as the job's page names it too.
    #[track_caller]
    fn check(told: &str, next: &str) {
        let story = tell(&format!(
            "2026-03-02 08:00 +00:00 workshop EUR metric\njob stools \"Stools\" 4 order\nplan \"carve\" make 60 min for stools\nplan \"coat\" make 120 min for stools\nplan \"deliver\" deliver 60 min for stools\n{told}"
        ));
        assert_eq!(story.refused, [], "{told}");
        let shop = Shop::of(&story.book, story.now.at);
        let said = job(&shop, story.names.job("stools").unwrap()).unwrap().next;
        let sheet = as_its_job_says(&shop, bench(&story.book, Seen { now: story.now, ..Seen::default() }));
        let board = sheet.rack.next.and_then(|place| sheet.rack.below.get(place)).map(|choice| choice.op.as_str());
        assert_eq!(board, Some(next), "{told}");
        if let NextAct::WorkOn { op } = said {
            assert_eq!(op.as_deref(), Some(next), "{told}");
        }
    }

    /// Bored first, then trimmed, on a job before: on a shelf of which boring alone is planned trimming is not next, on one without a plan it is.
    #[test]
    fn what_usually_follows_is_not_next_where_it_is_not_planned() {
        let next = |plan: &str| {
            let before =
                "job stools \"Stools\" 1 order\n08:10 start \"bore\" make on stools\n08:20 start \"trim\" make on stools\n08:30 stop\n";
            let story = tell(&format!(
                "2026-03-02 08:00 +00:00 workshop EUR metric\n{before}job shelf \"Shelf\" 1 order\n{plan}09:00 start \"bore\" make on shelf\n"
            ));
            assert_eq!(story.refused, [], "{plan}");
            let shop = Shop::of(&story.book, story.now.at);
            let rack = as_its_job_says(&shop, bench(&story.book, Seen { now: story.now, ..Seen::default() })).rack;
            rack.next.and_then(|place| rack.below.get(place)).map(|choice| choice.op.clone())
        };
        assert_eq!(next("").as_deref(), Some("trim"));
        assert_eq!(next("plan \"bore\" make 30 min for shelf\n"), None);
        assert_eq!(next("plan \"bore\" make 30 min for shelf\nplan \"trim\" make 30 min for shelf\n").as_deref(), Some("trim"));
    }

    /// Its first coat is on all four and dry; another job is in hand: the board of the first names its second coat.
    #[test]
    fn another_job_stands_at_what_comes_next() {
        let coats = "job stools \"Stools\" 4 order\nplan \"coat 1\" make 60 min for stools pieces 4\nplan \"coat 2\" make 40 min for stools pieces 4\n";
        let stands = |done: &str| {
            let story = tell(&format!(
                "2026-03-02 08:00 +00:00 workshop EUR metric\njob shelf \"Shelf\" 1 order\n{coats}09:00 start \"coat 1\" make on stools stage finish\n\
                 09:30 {done}\n09:40 stop\n10:00 start \"saw\" make on shelf\n"
            ));
            assert_eq!(story.refused, [], "{done}");
            let shop = Shop::of(&story.book, story.now.at);
            let rack = as_its_job_says(&shop, bench(&story.book, Seen { now: story.now, ..Seen::default() })).rack;
            let all = rack.lately.iter().chain(&rack.jobs).filter(|choice| choice.name.as_deref() == Some("Stools"));
            all.map(|choice| choice.op.clone()).collect::<Vec<_>>()
        };
        assert_eq!(stands("done 4"), ["coat 2"]);
        assert_eq!(stands("done 3"), ["coat 1"]);
    }

    #[test]
    fn the_bench_names_what_the_job_names() {
        let carved = "09:00 start \"carve\" make on stools\n10:30 done 4\nstop\n";
        check("09:00 start \"carve\" make on stools\n09:10 stop", "carve");
        check(carved, "coat");
        // Two coats on all four, and minutes of them are left: another is to come, and no delivery yet.
        let coats = "11:00 start \"coat\" make on stools stage finish\n11:30 clamped 4 coat 60 min as first\n11:31 stop\n13:00 off first
13:10 start \"coat\" make on stools stage finish\n13:40 clamped 4 coat 60 min as second\n13:41 stop\n15:00 off second\n";
        check(&format!("{carved}{coats}"), "coat");
        check(&format!("{carved}{coats}15:10 start \"carve\" make on stools\n15:20 stop"), "coat");
    }
}
