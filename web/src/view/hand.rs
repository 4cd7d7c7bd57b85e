//! The hand: tells honest taps from phantom touches, such as dust, drops or a resting palm. Pure; times and places come in.
//!
//! A second touch while one is down is ignored, but one held over 700 ms no longer stops others. Two touches within 80 ms
//! on one key count once, and one far across the screen within 80 ms of the last is no finger: honest taps come 125 ms apart.
//! Who taps twice because the phone is slow does not mean what came under the finger meanwhile: a wary key is deaf to that.

/// A touch held longer than this rests: it stops no other and is no tap itself.
const RESTING_MS: f64 = 700.0;
/// Within this time of the last tap, a touch on the same key or far across the screen is a phantom.
const TOO_SOON_MS: f64 = 80.0;
/// Within this time of the last tap, at its very place, a wary key that has come there is not meant [J].
const ECHO_MS: f64 = 1500.0;
/// How far, in CSS px, a finger that taps again wanders.
const SAME_PLACE: f64 = 32.0;
/// How far, in CSS px, is across the screen.
const ACROSS: f64 = 160.0;

/// A touch as it comes down: when, where, on which key, and the platform's number for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Touch {
    pub at_ms: f64,
    pub x: f64,
    pub y: f64,
    pub key: String,
    /// The key takes back, or leads away from, what a key at its place may just have done.
    pub wary: bool,
    pub pointer: i32,
}

/// Whether a touch counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    Counted,
    Ignored(Why),
}

/// Why a touch was ignored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Another touch is down.
    Second,
    /// The same key was tapped a moment ago.
    Twice,
    /// It is far from the tap of a moment ago.
    Jump,
    /// It rested on the screen.
    Rested,
    /// A second tap of the finger that has just done something there.
    Echo,
}

/// What the hand did of late.
#[derive(Clone, Debug, Default)]
pub struct Hand {
    down: Vec<Touch>,
    last: Option<Touch>,
    /// The tap before the last one, until that is lifted: it may be none.
    before: Option<Touch>,
}

impl Hand {
    /// Judges a touch as it comes down.
    pub fn tap(&mut self, touch: Touch) -> Verdict {
        self.down.retain(|other| other.pointer != touch.pointer);
        let verdict = self.judge(&touch);
        self.down.push(touch.clone());
        if verdict == Verdict::Counted {
            self.before = self.last.replace(touch);
        }
        verdict
    }

    /// The platform took the touch, as for scrolling: it was no tap, and nothing is an echo of it.
    pub fn taken(&mut self, pointer: i32) {
        let is_last = |touch: &Touch| touch.pointer == pointer && self.last.as_ref() == Some(touch);
        if self.down.iter().any(is_last) {
            self.last = self.before.take();
        }
        self.down.retain(|touch| touch.pointer != pointer);
    }

    fn judge(&self, touch: &Touch) -> Verdict {
        if self.down.iter().any(|other| touch.at_ms - other.at_ms <= RESTING_MS) {
            return Verdict::Ignored(Why::Second);
        }
        match &self.last {
            Some(last) if is_echo(last, touch) => Verdict::Ignored(Why::Echo),
            Some(last) if touch.at_ms - last.at_ms >= TOO_SOON_MS => Verdict::Counted,
            Some(last) if last.key == touch.key => Verdict::Ignored(Why::Twice),
            Some(last) if apart(last, touch) > ACROSS => Verdict::Ignored(Why::Jump),
            _ => Verdict::Counted,
        }
    }

    /// The touch was lifted; a finger that rested is no tap after all.
    pub fn lifted(&mut self, at_ms: f64, pointer: i32) -> Verdict {
        let rested = self.down.iter().any(|touch| touch.pointer == pointer && at_ms - touch.at_ms > RESTING_MS);
        self.down.retain(|touch| touch.pointer != pointer);
        if rested { Verdict::Ignored(Why::Rested) } else { Verdict::Counted }
    }
}

fn is_echo(last: &Touch, touch: &Touch) -> bool {
    touch.wary && !last.wary && touch.at_ms - last.at_ms < ECHO_MS && apart(last, touch) <= SAME_PLACE
}

fn apart(one: &Touch, other: &Touch) -> f64 {
    (one.x - other.x).hypot(one.y - other.y)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn touch(at_ms: f64, x: f64, key: &str, pointer: i32) -> Touch {
        Touch { at_ms, x, y: 400.0, key: key.into(), wary: key == "take back", pointer }
    }
    /// A tap of 50 ms, judged.
    fn tap(hand: &mut Hand, at_ms: f64, x: f64, key: &str) -> Verdict {
        let verdict = hand.tap(touch(at_ms, x, key, 1));
        hand.lifted(at_ms + 50.0, 1);
        verdict
    }

    #[test]
    fn eight_honest_taps_a_second_over_the_whole_width_all_count() {
        let mut hand = Hand::default();
        for n in 0..80 {
            let (x, key) = if n % 2 == 0 { (20.0, "left") } else { (370.0, "right") };
            assert_eq!(tap(&mut hand, f64::from(n) * 125.0, x, key), Verdict::Counted, "tap {n}");
        }
    }

    #[test]
    fn two_within_80_ms_on_one_key_count_once() {
        let mut hand = Hand::default();
        assert_eq!(tap(&mut hand, 0.0, 100.0, "clear"), Verdict::Counted);
        assert_eq!(tap(&mut hand, 79.0, 101.0, "clear"), Verdict::Ignored(Why::Twice));
        assert_eq!(tap(&mut hand, 80.0, 101.0, "clear"), Verdict::Counted, "an ignored one delays nothing");
    }

    #[test]
    fn a_jump_counts_unless_it_comes_at_once() {
        let mut hand = Hand::default();
        tap(&mut hand, 0.0, 20.0, "a");
        assert_eq!(tap(&mut hand, 60.0, 370.0, "b"), Verdict::Ignored(Why::Jump));
        assert_eq!(tap(&mut hand, 70.0, 120.0, "c"), Verdict::Counted, "a neighbour's key is no jump");
    }

    #[test]
    fn a_second_touch_is_ignored_until_the_first_rests() {
        let mut hand = Hand::default();
        hand.tap(touch(0.0, 100.0, "a", 1));
        assert_eq!(hand.tap(touch(300.0, 110.0, "b", 2)), Verdict::Ignored(Why::Second));
        hand.lifted(350.0, 2);
        assert_eq!(hand.tap(touch(701.0, 350.0, "b", 3)), Verdict::Counted, "a resting palm stops nothing");
        assert_eq!(hand.lifted(760.0, 3), Verdict::Counted);
        assert_eq!(hand.lifted(2000.0, 1), Verdict::Ignored(Why::Rested), "and is no tap when it goes");
    }

    #[test]
    fn a_touch_the_platform_lost_does_not_block_its_own_number() {
        let mut hand = Hand::default();
        hand.tap(touch(0.0, 100.0, "a", 1));
        assert_eq!(hand.tap(touch(200.0, 100.0, "a", 1)), Verdict::Counted);
    }

    /// A finger that began to scroll on one key and then taps at its place means the key that is there; sold before that, it is an echo of it.
    #[test]
    fn a_scroll_that_began_on_a_key_is_no_tap_of_it() {
        let check = |sold: bool, key: &str, at: f64, heard: Verdict| {
            let mut hand = Hand::default();
            if sold {
                tap(&mut hand, 0.0, 200.0, "sold");
            }
            assert_eq!(hand.tap(touch(200.0, 202.0, "photo", 7)), Verdict::Counted);
            hand.taken(7);
            assert_eq!(tap(&mut hand, at, 204.0, key), heard, "{key}, {sold}");
        };
        check(false, "take back", 700.0, Verdict::Counted);
        check(false, "photo", 260.0, Verdict::Counted);
        check(true, "take back", 700.0, Verdict::Ignored(Why::Echo));
        check(true, "take back", 1_500.0, Verdict::Counted);
    }

    /// Sold, tapped again at once because nothing seemed to happen, then what was meant by itself.
    #[test]
    fn a_second_tap_takes_back_nothing_that_the_first_has_done() {
        let check = |then: (f64, f64, &str), heard: Verdict| {
            let mut hand = Hand::default();
            tap(&mut hand, 0.0, 200.0, "sold");
            assert_eq!(tap(&mut hand, then.0, then.1, then.2), heard, "{then:?}");
        };
        for at in [90.0, 350.0, 1_300.0] {
            check((at, 206.0, "take back"), Verdict::Ignored(Why::Echo));
        }
        check((1_500.0, 206.0, "take back"), Verdict::Counted);
        check((350.0, 240.0, "take back"), Verdict::Counted); // a finger that went there
        check((350.0, 206.0, "sold"), Verdict::Counted);
        let mut hand = Hand::default();
        for at in [0.0, 300.0, 600.0] {
            assert_eq!(tap(&mut hand, at, 200.0, "take back"), Verdict::Counted, "one act after the other");
        }
    }
}
