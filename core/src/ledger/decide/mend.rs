//! A count is put right where it stands: what was done with the pieces since has to hold.

mod of_job;

pub(super) use of_job::holds as job_holds;

use super::Act;
use super::haul::within;
use super::rests::{hold, own, resting};
use super::stock::{Figures, Lying};
use crate::haul::{Haul, Pile};
use crate::ledger::kind::stock::CountMended;
use crate::ledger::mended::{can_be_mended, figures, mended, pieces};
use crate::ledger::stamp::Clock;
use crate::ledger::{Book, Device, Entry, Fact, fold};
use crate::quantity::{Count, Id};
use crate::refusal::{Answer, Refusal};

pub(super) fn mend(book: &Book, at: Lying, (entry, n, why): (Id, Count, Option<String>), act: &mut Act) -> Answer<()> {
    // One by weight or by layers is put right by its figures.
    if figures(book, entry).is_some() { Err(Refusal::NotThere) } else { put_right(book, at, (entry, n, why), act) }
}

/// A count by weight or by layers: its figures are put right, and it is worked out anew.
pub(super) fn mend_by(book: &Book, (at, there): (Lying, &Pile), (entry, by): (Id, Figures), act: &mut Act) -> Answer<()> {
    let by = match (figures(book, entry).ok_or(Refusal::NotThere)?, by) {
        (Figures::Layers { .. }, Figures::Layers { .. }) => by,
        (Figures::Weight(old), Figures::Weight(new)) => Figures::Weight(new.in_place_of(old)),
        _ => return Err(Refusal::NotThere),
    };
    put_right(book, at, (entry, by.pieces(there)?, None), act)?;
    by.tell((at, there), entry, act);
    Ok(())
}

fn put_right(book: &Book, at: Lying, (entry, n, why): (Id, Count, Option<String>), act: &mut Act) -> Answer<()> {
    let stands = book.entry(entry).filter(|(_, struck)| !struck).map(|(entry, _)| entry);
    let old = stands.filter(|entry| can_be_mended(book, entry)).ok_or(Refusal::NotThere)?;
    let by = CountMended { haul: at.haul, pile: at.pile, entry, n, why };
    let new = mended(&old.fact, &by).ok_or(Refusal::NotThere)?;
    within(0, n)?;
    if n == 0 && !matches!(new, Fact::PiecesRecounted(_) | Fact::PileCounted(_)) {
        return Err(Refusal::NothingAsked);
    }
    let id = act.add(by.clone());
    let wall = act.now().wall;
    let stamp = Clock::new(Device::new([0; 8]), book.last_stamp()).next(wall.at);
    let then = book.and(&Entry { id, stamp, wall, act: None, fact: by.into() });
    if let Fact::PiecesTaken(_) | Fact::PiecesFreed(_) = new {
        return job_holds((book, &then), entry);
    }
    let (was, is) = (fold::haul(book, at.haul).ok_or(Refusal::NotThere)?, fold::haul(&then, at.haul).ok_or(Refusal::NotThere)?);
    holds((&was, &is), at.pile, (&old.fact, &new))
}

fn holds((was, is): (&Haul, &Haul), pile: Id, (old, new): (&Fact, &Fact)) -> Answer<()> {
    hold(was, resting(was, Some(is), |pile, claim| own(&[old], pile, claim)))?;
    let (before, after) = (was.pile(pile).ok_or(Refusal::NotThere)?, is.pile(pile).ok_or(Refusal::NotThere)?);
    within(after.taken, 0)?;
    let (n, gone) = (pieces(new).unwrap_or(0), pieces(old).unwrap_or(0));
    if let Fact::PiecesRecounted(_) = new {
        let told = before.taken.saturating_sub(gone).saturating_add(n);
        // What was rejected, what jobs had and what was gone was there too; a later count may stand over this one.
        return if after.taken == told || after.taken == before.taken {
            Ok(())
        } else {
            Err(Refusal::NotThatMany { asked: after.spoken_for(), there: n })
        };
    }
    let wanted = claimed(old, before).saturating_sub(gone).saturating_add(n);
    let short = if claims(new) { wanted.saturating_sub(claimed(new, after)) } else { 0 };
    if short == 0 { Ok(()) } else { Err(Refusal::NotThatMany { asked: n, there: n.saturating_sub(short) }) }
}

/// Whether it says something of pieces that are there already.
fn claims(fact: &Fact) -> bool {
    matches!(fact, Fact::PiecesSorted(_) | Fact::PiecesRejected(_) | Fact::LeftoversGone(_))
}

/// The pieces of the pile of which all such facts speak.
fn claimed(fact: &Fact, pile: &Pile) -> Count {
    match fact {
        Fact::PiecesSorted(_) => pile.sorted_good,
        Fact::PiecesRejected(_) => pile.rejected(),
        Fact::LeftoversGone(_) => pile.gone_for_good(),
        _ => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The pile of these stories.
    fn on_a(why: Refusal) -> Refusal {
        Refusal::OfPile { pile: "ash, A".into(), why: Box::new(why) }
    }
    use crate::ledger::decide::{BookCommand, Command, Now, OnTheScale, StockCommand, decide};
    use crate::quantity::{Grams, Key, Wall};
    use crate::story::{Story, tell};

    fn told(lines: &str) -> Story {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\n\
            job stools \"Stools\" 2 spec\n";
        let story = tell(&format!("{start}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        story
    }

    fn ordered(story: &mut Story, command: &Command) -> Answer<Id> {
        let wall = Wall::new(story.now.at.plus(crate::quantity::Span::minutes(1)), story.now.offset);
        story.now = wall;
        let act = decide(&story.book, command, Now { wall, chance: [story.book.len() as u8; 10] })?;
        let mut clock = Clock::new(Device::new([3; 8]), story.book.last_stamp());
        let entries = act.stamped(&story.book, &mut clock);
        entries.iter().for_each(|entry| drop(story.book.add(entry)));
        Ok(entries[0].id)
    }

    /// Mends the last entry of a kind.
    fn mend_last(story: &mut Story, kind: &str, n: Count, why: Option<&str>) -> Answer<Id> {
        let entry = story.book.entries().rfind(|(entry, struck)| !struck && entry.fact.kind() == kind).map(|(entry, _)| entry.id).unwrap();
        let at = Lying { haul: story.names.haul("yard").unwrap(), pile: story.names.pile("ash").unwrap() };
        ordered(story, &Command::Stock(at, StockCommand::Mend { entry, n, why: why.map(str::to_owned) }))
    }

    fn ash(story: &Story) -> Pile {
        fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap().piles[0].clone()
    }

    /// After these lines, the last entry of a kind is mended to so many: taken, rejected, on the rack and drift; or the refusal.
    #[track_caller]
    fn check(lines: &str, kind: &str, n: Count, then: Result<[i64; 4], Refusal>) {
        let mut story = told(lines);
        let before = ash(&story);
        let found = mend_last(&mut story, kind, n, None).map(|_| {
            let pile = ash(&story);
            [pile.taken.into(), pile.rejected().into(), pile.on_rack().into(), pile.stock.drift]
        });
        assert_eq!(found, then, "{lines}");
        if then.is_err() {
            assert_eq!(ash(&story), before, "nothing has changed");
        }
    }

    #[test]
    fn a_count_is_put_right_in_its_place() {
        check("count 9 ash", "PiecesCounted", 12, Ok([12, 0, 12, 0]));
        check("count 9 ash\nrecount 20 ash", "PiecesCounted", 12, Ok([20, 0, 20, 0]));
        check("count 9 ash\nrecount 20 ash\ncount 5 ash", "PiecesRecounted", 18, Ok([23, 0, 23, 0]));
        // 19 lay there in the morning, and 5 were taken since.
        check("count 22 ash\nrack 19 ash\ntake 5 ash for stools", "PileCounted", 18, Ok([22, 0, 13, -4]));
        check("count 9 ash\nreject 4 ash twist", "PiecesRejected", 6, Ok([9, 6, 3, 0]));
        check("count 9 ash\ngone 4 ash burnt", "LeftoversGone", 1, Ok([9, 0, 8, 0]));
        check("count 9 ash\ngood 4 ash", "PiecesSorted", 9, Ok([9, 0, 9, 0]));
    }

    #[test]
    fn what_was_done_since_has_to_hold() {
        let rests = |pieces, left| Err(on_a(Refusal::PiecesRestOnIt { pieces, left }));
        let there = |asked, there| Err(Refusal::NotThatMany { asked, there });
        check("count 9 ash\ntake 9 ash for stools", "PiecesCounted", 6, rests(9, 6));
        check("count 9 ash\nreject 4 ash twist\ntake 5 ash for stools", "PiecesRejected", 6, rests(5, 3));
        check("count 9 ash\nreject 4 ash twist", "PiecesRejected", 10, there(10, 9));
        check("count 9 ash\ngood 4 ash", "PiecesSorted", 10, there(10, 9));
        check("count 9 ash\ngone 4 ash burnt", "LeftoversGone", 10, there(10, 9));
        check("count 9 ash\nreject 4 ash twist\nrecount 9 ash", "PiecesRecounted", 3, there(4, 3));
        check("count 9 ash\nreject 4 ash twist", "PiecesRejected", 0, Err(Refusal::NothingAsked));
        check("count 9 ash", "PiecesCounted", 10_000, Err(Refusal::TooManyPieces { would_be: 10_000, most: 9_999 }));
        check("layers 3 of 3 ash", "PiecesCounted", 10, Err(Refusal::NotThere));
    }

    /// Of what a job took or gave back: what lies on the rack and what the job has go along, and a count of the rack stands.
    #[test]
    fn pieces_of_a_job_are_put_right_in_their_place() {
        check("count 9 ash\ntake 2 ash for stools", "PiecesTaken", 1, Ok([9, 0, 8, 0]));
        check("count 9 ash\ntake 2 ash for stools", "PiecesTaken", 9, Ok([9, 0, 0, 0]));
        check("count 22 ash\ntake 5 ash for stools\nrack 14 ash", "PiecesTaken", 8, Ok([22, 0, 14, 0]));
        check(
            "count 22 ash\ntake 5 ash for stools\nrack 14 ash\ntake 14 ash for stools\nfree 1 ash from stools",
            "PiecesFreed",
            2,
            Ok([22, 0, 2, -3]),
        );
        check("count 9 ash\ntake 5 ash for stools\nfree 3 ash from stools", "PiecesFreed", 5, Ok([9, 0, 9, 0]));
        check("count 9 ash\ntake 5 ash for stools\nfree 3 ash from stools\nfree 1 ash from stools", "PiecesTaken", 4, Ok([9, 0, 9, 0]));
        check("count 9 ash\nreserve 4 ash for stools\ntake 2 ash for stools\nend stools", "PiecesTaken", 1, Ok([9, 0, 8, 0]));
    }

    #[test]
    fn what_was_done_with_pieces_of_a_job_since_has_to_hold() {
        let rests = |pieces, left| Err(on_a(Refusal::PiecesRestOnIt { pieces, left }));
        let there = |asked, there| Err(Refusal::NotThatMany { asked, there });
        let took = |then: &str| format!("count 9 ash\njob desk \"Desk\" 1 spec\ntake 5 ash for stools\n{then}");
        let check_taken = |then: &str, n, refused| check(&took(then), "PiecesTaken", n, refused);
        check_taken("", 10, there(10, 9));
        check_taken("", 0, Err(Refusal::NothingAsked));
        check_taken("reject 4 ash twist", 6, there(6, 5));
        check_taken("free 4 ash from stools", 3, Err(Refusal::GivenBackSince { pieces: 4, left: 3 }));
        check_taken("gone 4 ash burnt", 6, rests(9, 8));
        check_taken("pile oak 1 x 2 x 20 in\nmove 4 ash to oak", 6, there(6, 5));
        check_taken("recount 5 ash", 6, there(6, 5));
        check_taken("reserve 4 ash for desk", 6, Err(Refusal::SetApart { asked: 1, there: 4, apart: 4 }));
        check_taken("end stools", 6, Err(Refusal::JobHasEnded));
        check(&took("free 2 ash from stools"), "PiecesFreed", 6, there(6, 5));
        check(&took("free 5 ash from stools\nreject 8 ash twist"), "PiecesFreed", 3, rests(4, 3));
        check(
            &took("free 5 ash from stools\ntake 9 ash for stools as it\nundo it\nend stools"),
            "PiecesFreed",
            4,
            Err(Refusal::JobHasEnded),
        );
    }

    /// Another job has what was put back, or what lay there.
    #[test]
    fn what_another_job_took_of_it_has_to_hold() {
        let since = |lines: &str, kind: &str, n| {
            let mut story = told(&format!("count 9 ash\njob desk \"Desk\" 1 spec\ntake 5 ash for stools\n{lines}"));
            let others = story.book.entries().filter(|(entry, _)| entry.fact.kind() == kind).map(|(entry, _)| entry.id).next().unwrap();
            let at = Lying { haul: story.names.haul("yard").unwrap(), pile: story.names.pile("ash").unwrap() };
            ordered(&mut story, &Command::Stock(at, StockCommand::Mend { entry: others, n, why: None })).map(drop)
        };
        assert_eq!(since("take 4 ash for desk", "PiecesTaken", 6), Err(on_a(Refusal::PiecesRestOnIt { pieces: 9, left: 8 })));
        assert_eq!(
            since("free 3 ash from stools\ntake 7 ash for desk", "PiecesFreed", 2),
            Err(on_a(Refusal::PiecesRestOnIt { pieces: 9, left: 8 }))
        );
        assert_eq!(since("free 3 ash from stools\ntake 6 ash for desk", "PiecesFreed", 2), Ok(()));
    }

    /// What was put right is as it was again, where that still holds.
    #[test]
    fn a_mend_of_a_jobs_pieces_is_taken_back_where_that_holds() {
        let mut story = told("count 9 ash\njob desk \"Desk\" 1 spec\ntake 5 ash for stools");
        let has = |story: &Story| (ash(story).in_job(story.names.job("stools").unwrap()), ash(story).on_rack());
        let fewer = mend_last(&mut story, "PiecesTaken", 3, None).unwrap();
        assert_eq!(has(&story), (3, 6));
        let take = |story: &mut Story, n| {
            let [haul, pile, job] = [story.names.haul("yard"), story.names.pile("ash"), story.names.job("desk")].map(Option::unwrap);
            ordered(story, &Command::Haul(crate::ledger::decide::HaulCommand::Take { haul, pile, job, n })).unwrap()
        };
        let others = take(&mut story, 6);
        let back = |act| Command::Book(BookCommand::TakeBack { act });
        let rests = Err(on_a(Refusal::PiecesRestOnIt { pieces: 9, left: 7 }));
        assert_eq!(ordered(&mut story, &back(fewer)).map(drop), rests);
        ordered(&mut story, &back(others)).unwrap();
        ordered(&mut story, &back(fewer)).unwrap();
        assert_eq!(has(&story), (5, 4));
        take(&mut story, 4);
        ordered(&mut story, &Command::Book(BookCommand::Restore { act: fewer })).unwrap();
        assert_eq!(has(&story), (3, 2));
        take(&mut story, 2);
        assert_eq!(ordered(&mut story, &back(fewer)).map(drop), rests);
    }

    /// Mends the last count of a pile that was not tapped.
    fn mend_by(story: &mut Story, by: Figures) -> Answer<Id> {
        let is_so = |entry: &&Entry| figures(&story.book, entry.id).is_some();
        let entry = story.book.entries().filter(|(_, struck)| !struck).map(|(entry, _)| entry).rfind(is_so).unwrap().id;
        let at = Lying { haul: story.names.haul("yard").unwrap(), pile: story.names.pile("ash").unwrap() };
        ordered(story, &Command::Stock(at, StockCommand::MendBy { entry, by }))
    }

    fn g(grams: i64) -> Grams {
        Grams::new(grams).unwrap()
    }

    fn scale((sample, sample_weight): (Count, i64), shows: i64, tare: i64) -> Figures {
        let (sample_weight, shows, tare) = (g(sample_weight), g(shows), g(tare));
        Figures::Weight(OnTheScale { sample, sample_weight, shows, tare, spread: None, singles: None })
    }

    const LAYERS: &str = "layers 4 of 12 ash rest 3";
    const WEIGHED: &str = "weighed ash sample 10 4 kg all 41 kg spread 0.05 singles 10";

    /// After these lines the figures of the last count that was not tapped are mended: the pieces then, and what they weigh in grams.
    #[track_caller]
    fn check_by(lines: &str, by: Figures, then: Result<(Count, Option<i64>), Refusal>) {
        let mut story = told(lines);
        let (before, written) = (ash(&story), story.book.lines().map(str::to_owned).collect::<Vec<_>>());
        let grams = |pile: &Pile| pile.weighs().map(|weighs| weighs.mass.as_grams());
        let found = mend_by(&mut story, by).map(|_| (ash(&story).taken, grams(&ash(&story))));
        assert_eq!(found, then, "{lines}");
        if then.is_err() {
            assert_eq!(ash(&story), before, "nothing has changed");
        }
        assert!(written.iter().all(|line| story.book.lines().any(|kept| kept == line)), "no line was changed");
    }

    #[test]
    fn a_count_by_layers_or_by_weight_is_put_right_by_its_figures() {
        let layers = |layers, per, rest| Figures::Layers { layers, per, rest };
        check_by(LAYERS, layers(5, 12, 0), Ok((60, None)));
        check_by(&format!("count 9 ash\n{LAYERS}\ncount 2 ash"), layers(4, 11, 3), Ok((58, None)));
        check_by(LAYERS, layers(0, 12, 0), Err(Refusal::NothingAsked));
        check_by(LAYERS, layers(900, 12, 0), Err(Refusal::TooManyPieces { would_be: 10_800, most: 9_999 }));
        check_by(
            &format!("{LAYERS}\ntake 51 ash for stools"),
            layers(4, 11, 3),
            Err(on_a(Refusal::PiecesRestOnIt { pieces: 51, left: 47 })),
        );
        check_by(LAYERS, scale((10, 4_000), 41_000, 0), Err(Refusal::NotThere));
        check_by(WEIGHED, layers(4, 11, 3), Err(Refusal::NotThere));
        // The cart that was forgotten.
        check_by(WEIGHED, scale((10, 4_000), 41_000, 5_000), Ok((90, Some(36_000))));
        check_by(&format!("{WEIGHED}\ncount 3 ash"), scale((10, 4_000), 41_000, 5_000), Ok((93, Some(37_200))));
        check_by(&format!("{WEIGHED}\nrecount 80 ash"), scale((10, 5_000), 41_000, 0), Ok((80, Some(40_000))));
        check_by(WEIGHED, scale((4, 4_000), 41_000, 0), Err(Refusal::SampleTooSmall { met: 4, least: 5 }));
        check_by(WEIGHED, scale((10, 4_000), 3_000, 0), Err(Refusal::SampleTooHeavy { sample: g(4_000), pile: g(3_000) }));
        check_by(WEIGHED, scale((10, 4_000), 3_000, 3_000), Err(Refusal::UnderTare { met: g(3_000), tare: g(3_000) }));
        check_by(
            &format!("{WEIGHED}\ntake 100 ash for stools"),
            scale((10, 4_000), 41_000, 5_000),
            Err(on_a(Refusal::PiecesRestOnIt { pieces: 100, left: 90 })),
        );
    }

    /// Single weights say how pieces of their sample differ; another sample was not weighed one by one. Taken back, the old figures stand;
    /// and once the count itself is struck, nothing is left of either.
    #[test]
    fn the_figures_put_right_stand_with_their_count() {
        let mut story = told(WEIGHED);
        let shown = |story: &Story| ash(story).weighed.iter().map(|it| (it.sample, it.weight, it.singles)).collect::<Vec<_>>();
        let first = mend_by(&mut story, scale((10, 4_000), 40_000, 0)).unwrap();
        assert_eq!(shown(&story), [(10, 40_000, Some(10))]);
        let second = mend_by(&mut story, scale((20, 8_000), 40_000, 0)).unwrap();
        assert_eq!(shown(&story), [(20, 40_000, None)]);
        ordered(&mut story, &Command::Book(BookCommand::TakeBack { act: second })).unwrap();
        assert_eq!(shown(&story), [(10, 40_000, Some(10))]);
        let count = story.book.entries().find(|(entry, _)| entry.fact.kind() == "PiecesCounted").map(|(entry, _)| entry.id).unwrap();
        ordered(&mut story, &Command::Book(BookCommand::TakeBack { act: count })).unwrap();
        assert_eq!((shown(&story), ash(&story).taken, ash(&story).weighs()), (vec![], 0, None));
        ordered(&mut story, &Command::Book(BookCommand::Restore { act: count })).unwrap();
        ordered(&mut story, &Command::Book(BookCommand::TakeBack { act: first })).unwrap();
        assert_eq!((shown(&story), ash(&story).taken), (vec![(10, 41_000, Some(10))], 103));
    }

    /// The reason is put right too; the line stays as it was written, the last word stands, and taken back, the one before it does.
    #[test]
    fn the_last_word_stands_and_the_old_line_is_kept() {
        let mut story = told("count 9 ash\nreject 4 ash twist");
        let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
        let rejected = |story: &Story| ["twist", "knot"].map(|why| ash(story).rejected_for(&Key::read(why).unwrap()));
        let first = mend_last(&mut story, "PiecesRejected", 3, Some("knot")).unwrap();
        assert_eq!(rejected(&story), [0, 3]);
        let second = mend_last(&mut story, "PiecesRejected", 2, None).unwrap();
        assert_eq!(rejected(&story), [2, 0], "each mend is of the line as it was written");
        let back = |act| Command::Book(BookCommand::TakeBack { act });
        ordered(&mut story, &back(second)).unwrap();
        assert_eq!(rejected(&story), [0, 3]);
        ordered(&mut story, &back(first)).unwrap();
        assert_eq!(rejected(&story), [4, 0]);
        assert!(lines.iter().all(|line| story.book.lines().any(|kept| kept == line)), "no line was changed");
        ordered(&mut story, &Command::Book(BookCommand::Restore { act: second })).unwrap();
        assert_eq!(rejected(&story), [2, 0]);
        // Whatever comes first, the book is the same.
        let all: Vec<&str> = story.book.lines().collect();
        let turned = Book::of_lines(all.iter().rev().copied());
        assert_eq!(turned, story.book);
        let mut one_by_one = Book::default();
        for line in all.iter().rev() {
            one_by_one.add_line(line);
        }
        assert_eq!(one_by_one, story.book);
    }
}
