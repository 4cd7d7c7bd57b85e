//! A trip that was never ended: when it likely was, from the last thing done at the bin and the way there.

use crate::haul::{Haul, Trip, Where};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Listed, Moment, Span, Wall, order_by_key};

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

/// The first trip of a haul whose end was forgotten; the way home is taken to last as long as the way there. What the maker said of
/// its minutes holds.
pub fn forgotten(book: &Book, haul: &Haul, now: Moment) -> Option<ForgottenEnd> {
    let ends = haul.trips.iter().filter_map(|trip| end_of(book, (haul, trip), now));
    ends.min_by_key(|end| end.last.at)
}

/// Whether a haul is at the bin or on the road: its pieces lie on no rack yet. A trip whose end was forgotten is not waited for.
pub fn on_its_way(book: &Book, haul: &Haul, now: Moment) -> bool {
    !matches!(haul.trip_now(now).stands, Where::NotLeft | Where::Home) && forgotten(book, haul, now).is_none()
}

/// The trips of a haul to reckon with: one whose end was forgotten ended as is proposed, not now.
pub fn as_proposed(book: &Book, haul: &Haul, now: Moment) -> Vec<Trip> {
    let taken = |trip: &Trip| match end_of(book, (haul, trip), now) {
        Some(end) => Trip { wheel_said: Some(end.wheel), bin_said: Some(end.bin), ..trip.clone() },
        None => trip.clone(),
    };
    haul.trips.iter().map(taken).listed()
}

/// A trip that is not home was forgotten once another was begun, or once nothing happened for long.
fn end_of(book: &Book, (haul, trip): (&Haul, &Trip), now: Moment) -> Option<ForgottenEnd> {
    let left = trip.left.filter(|_| trip.now(now).stands != Where::Home)?;
    let next = haul.trips.iter().filter_map(|other| other.left).map(|next| next.at).filter(|next| left.at < *next).min();
    let may_be = next.is_some() || IDLE <= left.at.until(now);
    if !may_be || (trip.wheel_said.is_some() && trip.bin_said.is_some()) {
        return None;
    }
    let last = last_there(book, haul, (left, next))?;
    let since = last.at.until(now);
    if next.is_none() && since < IDLE {
        return None;
    }
    let there = trip.at_bin.unwrap_or(last);
    let gone = trip.homeward.unwrap_or(last);
    let wheel = trip.wheel_said.unwrap_or(left.at.until(there.at).times(2));
    Some(ForgottenEnd { trip: trip.id, last, bin: trip.bin_said.unwrap_or(there.at.until(gone.at)), wheel, since })
}

/// The last thing done at the yard before the next trip: a step, a count, a pile. What is said at home of the haul is none, and what
/// was counted after a long gap was counted there.
fn last_there(book: &Book, haul: &Haul, (left, next): (Wall, Option<Moment>)) -> Option<Wall> {
    let there = |entry: &&Entry| {
        matches!(entry.fact, Fact::TripBegan(_) | Fact::TripStepped(_) | Fact::PileAdded(_) | Fact::PiecesCounted(_) | Fact::PiecesMoved(_))
    };
    let walls = book.about(Subject::Haul(haul.id)).filter(there).map(|entry| entry.wall);
    let mut walls: Vec<Wall> = walls.filter(|wall| left.at < wall.at && next.is_none_or(|next| wall.at < next)).listed();
    order_by_key(&mut walls, |wall| wall.at);
    let mut last = *walls.first().unwrap_or(&left);
    for wall in walls {
        if IDLE <= last.at.until(wall.at) {
            break;
        }
        last = wall;
    }
    Some(last)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::decide::{Command, HaulCommand, Now, decide};
    use crate::ledger::{Clock, Device, fold};
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
        // counted on at home, seven hours later
        check(&format!("{counted}16:42 count 2 ash\n16:43 count 1 ash"), Some((38, 46)));
        check(&format!("{counted}09:50 homeward\n10:13 home\n2026-03-04 08:00 carries 670 lb"), None);
        check(&format!("{counted}12:43 trip wheel 46 min bin 38 min"), None);
        // The arrival was forgotten too: all of it was the way there.
        check("09:42 pile ash\n14:00 carries 670 lb", Some((0, 122)));
    }

    #[test]
    fn what_was_said_holds_and_an_earlier_trip_is_found() {
        let counted = "09:04 at the bin\n09:06 pile ash\n09:42 count 20 ash\n";
        check(&format!("{counted}12:43 trip wheel 20 min"), Some((38, 20)));
        check(&format!("{counted}12:43 trip bin 15 min"), Some((15, 46)));
        check(&format!("{counted}10:30 leave for yard"), Some((38, 46)));
        check(&format!("{counted}10:30 leave for yard\n10:50 at the bin\n11:00 homeward\n11:20 home"), Some((38, 46)));
    }

    /// Only what is missing is written, though both are proposed.
    #[test]
    fn ending_it_writes_what_was_not_said() {
        let told = "2026-03-03 08:41 -05:00 workshop USD inch\nleave for yard\n09:04 at the bin\n09:06 pile ash\n09:42 count 20 ash\n\
            trip wheel 20 min\n";
        let mut story = tell(told);
        let (haul, now) = (story.names.haul("yard").unwrap(), Now { wall: story.now, chance: [9; 10] });
        let trip = fold::haul(&story.book, haul).unwrap().trips[0].id;
        let end = HaulCommand::EndTrip { haul, trip, wheel: Span::minutes(46), bin: Span::minutes(38) };
        let mut clock = Clock::new(Device::new([9; 8]), story.book.last_stamp());
        for entry in decide(&story.book, &Command::Haul(end), now).unwrap().stamped(&story.book, &mut clock) {
            story.book.add(&entry);
        }
        let trip = &fold::haul(&story.book, haul).unwrap().trips[0];
        assert_eq!((trip.wheel_said, trip.bin_said), (Some(Span::minutes(20)), Some(Span::minutes(38))));
    }
}
