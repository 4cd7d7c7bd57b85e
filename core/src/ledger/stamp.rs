//! Stamps of a hybrid logical clock: they never run backwards on one device, and order every entry there is.
//!
//! Carries invariant 5.

use crate::quantity::{Moment, Span};
use std::fmt;

/// The name of a device: 1 to 16 small letters and digits.
// As one number, which orders names as their bytes do; entries are put in order by it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Device(u128);

impl Device {
    /// `None` for anything but 1 to 16 small letters and digits.
    pub fn read(name: &str) -> Option<Device> {
        let fits = (1..=16).contains(&name.len()) && name.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        let mut room = [0; 16];
        room.iter_mut().zip(name.bytes()).for_each(|(place, b)| *place = b);
        fits.then_some(Device(u128::from_be_bytes(room)))
    }

    /// A name from eight bytes of chance.
    pub fn new(chance: [u8; 8]) -> Device {
        const LETTERS: &[u8; 32] = b"abcdefghijkmnpqrstuvwxyz23456789";
        let mut room = [0; 16];
        for (place, byte) in room.iter_mut().zip(chance) {
            *place = LETTERS.get(usize::from(byte & 31)).copied().unwrap_or(b'a');
        }
        Device(u128::from_be_bytes(room))
    }

    pub fn name(&self) -> String {
        self.0.to_be_bytes().into_iter().filter(|b| *b != 0).map(char::from).collect()
    }
}

impl fmt::Debug for Device {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.name())
    }
}

/// When an entry was written: milliseconds, a counter within them, and the device. In a line: `[ms, n, "device"]`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp(pub Moment, pub u32, pub Device);

/// What hands out the stamps of one device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clock {
    device: Device,
    last: (Moment, u32),
}

impl Clock {
    /// What merging may lift our clock above the wall: 5 minutes.
    pub const LIFT_MOST: Span = Span::minutes(5);

    /// Entries further above the wall than this are said before they are brought in: 24 hours.
    pub const SAID: Span = Span::minutes(24 * 60);

    /// The clock of a device whose last stamp is known (none yet: the epoch).
    pub fn new(device: Device, last: Option<Stamp>) -> Clock {
        let last = last.map_or((Moment::at(0), 0), |s| (s.0, s.1));
        Clock { device, last }
    }

    pub fn device(&self) -> Device {
        self.device
    }

    /// The next stamp: the wall clock, or just after the last stamp where the wall is behind it.
    pub fn next(&mut self, wall: Moment) -> Stamp {
        let (ms, n) = self.last;
        self.last = match n.checked_add(1) {
            _ if ms < wall => (wall, 0),
            Some(n) => (ms, n),
            None => (ms.plus(Span::ms(1)), 0),
        };
        Stamp(self.last.0, self.last.1, self.device)
    }

    /// Takes note of a stamp that came from elsewhere, but is never lifted more than 5 minutes above the wall by it.
    /// One of this device's own, as another window wrote it, lifts it all the way.
    pub fn heard(&mut self, stamp: Stamp, wall: Moment) {
        let most = if stamp.2 == self.device { stamp.0 } else { wall.plus(Self::LIFT_MOST) };
        let seen = if stamp.0 <= most { (stamp.0, stamp.1) } else { (most, 0) };
        self.last = self.last.max(seen);
    }

    /// What is written next rests on an entry with this stamp: it comes after it, however far that is above the wall.
    pub fn lift_over(&mut self, stamp: Stamp) {
        // After the last millisecond there is none that could be read again.
        if stamp.0 < Moment::LAST {
            self.last = self.last.max((stamp.0, stamp.1));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn clock(last: i64) -> Clock {
        let device = Device::read("a1").unwrap();
        Clock::new(device, Some(Stamp(Moment::at(last), 3, device)))
    }

    #[track_caller]
    fn check(last: i64, wall: i64, ms: i64, n: u32) {
        let stamp = clock(last).next(Moment::at(wall));
        assert_eq!((stamp.0.ms(), stamp.1), (ms, n));
    }

    #[test]
    fn inv05_a_stamp_never_runs_backwards() {
        check(1_000, 2_000, 2_000, 0);
        check(1_000, 1_000, 1_000, 4); // two taps in one millisecond
        check(9_000, 1_000, 9_000, 4); // the clock was set back
    }

    #[test]
    fn inv05_a_stamp_from_a_fast_phone_lifts_ours_five_minutes_at_most() {
        let mut ours = clock(0);
        let fast = Stamp(Moment::at(86_400_000), 7, Device::read("b2").unwrap());
        ours.heard(fast, Moment::at(1_000));
        assert_eq!(ours.next(Moment::at(1_000)).0, Moment::at(301_000));
        let near = Stamp(Moment::at(2_000), 7, Device::read("b2").unwrap());
        let mut ours = clock(0);
        ours.heard(near, Moment::at(1_000));
        assert_eq!(ours.next(Moment::at(1_000)), Stamp(Moment::at(2_000), 8, Device::read("a1").unwrap()));
    }

    /// Another window of this phone wrote an hour after this one last looked at the clock, which was then set back.
    #[test]
    fn inv05_a_stamp_of_another_window_is_never_passed_under() {
        let mut ours = clock(0);
        let theirs = Stamp(Moment::at(3_600_000), 2, ours.device());
        ours.heard(theirs, Moment::at(1_000));
        assert!(theirs < ours.next(Moment::at(1_800_000)));
    }

    /// What is written because of another entry comes after it, however fast the clock was that stamped it.
    #[test]
    fn inv05_a_stamp_that_is_rested_on_is_passed_over() {
        let mut ours = clock(0);
        let fast = Stamp(Moment::at(86_400_000), 7, Device::read("b2").unwrap());
        ours.lift_over(fast);
        assert_eq!(ours.next(Moment::at(1_000)), Stamp(Moment::at(86_400_000), 8, Device::read("a1").unwrap()));
        ours.lift_over(Stamp(Moment::LAST, u32::MAX, Device::read("b2").unwrap()));
        assert_eq!(ours.next(Moment::at(1_000)).0, Moment::at(86_400_000), "there is no stamp after the last");
    }

    #[test]
    fn a_device_has_a_plain_name() {
        for (name, fits) in [("a", true), ("abc123", true), ("", false), ("Ab", false), ("12345678901234567", false), ("é", false)] {
            assert_eq!(Device::read(name).map(|d| d.name()), fits.then(|| name.to_owned()), "{name}");
        }
        assert_eq!(Device::new([0, 1, 2, 3, 4, 5, 6, 255]).name(), "abcdefg9");
    }
}
