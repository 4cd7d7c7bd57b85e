//! A trip that was never ended: when it likely was, from the last thing done at the bin and the way there.

use crate::haul::{Haul, Trip, Where};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Moment, Span, Wall};

/// What is proposed for a trip whose end was forgotten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ForgottenEnd {
    pub trip: Id,
    /// The last count at the bin, or the tap on the way home.
    pub last: Wall,
    pub bin: Span,
    pub wheel: Span,
    /// How long the trip seems to have lasted since.
    pub since: Span,
}

/// Nothing happened for so long, and the van is not known to be home: ours.
const IDLE: Span = Span::minutes(180);

/// Whether the end of the haul's newest trip was forgotten; the way home is taken to last as long as the way there.
pub fn forgotten(book: &Book, haul: &Haul, now: Moment) -> Option<ForgottenEnd> {
    let trip = haul.trips.iter().max_by_key(|trip| trip.left)?;
    let stands = trip.now(now).stands;
    if matches!(stands, Where::Home | Where::NotLeft) || (trip.wheel_said.is_some() && trip.bin_said.is_some()) {
        return None;
    }
    let last = last_there(book, haul, trip)?;
    let since = last.at.until(now);
    if since < IDLE {
        return None;
    }
    let (left, there) = (trip.left?, trip.at_bin.unwrap_or(last));
    let way = left.at.until(there.at);
    let gone = trip.homeward.unwrap_or(last);
    Some(ForgottenEnd { trip: trip.id, last, bin: there.at.until(gone.at), wheel: way.times(2), since })
}

/// The last thing done at the yard: a step, a count, a pile. What is said at home of the haul is none.
fn last_there(book: &Book, haul: &Haul, trip: &Trip) -> Option<Wall> {
    let there = |entry: &&Entry| {
        matches!(entry.fact, Fact::TripBegan(_) | Fact::TripStepped(_) | Fact::PileAdded(_) | Fact::PiecesCounted(_) | Fact::PiecesMoved(_))
    };
    let walls = book.about(Subject::Haul(haul.id)).filter(there).map(|entry| entry.wall);
    walls.filter(|wall| trip.left.is_some_and(|left| left.at <= wall.at)).max_by_key(|wall| wall.at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;
    use crate::story::tell;

    /// Minutes at the bin and at the wheel that are proposed.
    #[track_caller]
    fn check(lines: &str, wanted: Option<(i64, i64)>) {
        let story = tell(&format!("2026-03-03 08:41 -05:00 workshop USD inch\nleave for yard\n{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let end = forgotten(&story.book, &haul, story.now.at);
        assert_eq!(end.map(|end| (end.bin.as_minutes(), end.wheel.as_minutes())), wanted, "{lines}");
    }

    #[test]
    fn the_end_is_proposed_from_the_last_count_and_the_way_there() {
        let counted = "09:04 at the bin\n09:06 pile ash\n09:42 count 20 ash\n";
        check(counted, None);
        check(&format!("{counted}12:30 carries 670 lb"), None);
        check(&format!("{counted}12:43 carries 670 lb"), Some((38, 46)));
        check(&format!("{counted}09:50 homeward\n2026-03-04 08:00 carries 670 lb"), Some((46, 46)));
        check(&format!("{counted}09:50 homeward\n10:13 home\n2026-03-04 08:00 carries 670 lb"), None);
        check(&format!("{counted}12:43 trip wheel 46 min bin 38 min"), None);
        // The arrival was forgotten too: all of it was the way there.
        check("09:42 pile ash\n14:00 carries 670 lb", Some((0, 122)));
    }
}
