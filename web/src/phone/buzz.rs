//! Buzzes the phone: a short one for a piece, a different one for each ten, others for what needs a look.
use super::{has, window};

/// What the hand is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Buzz {
    /// A piece was counted; the count it made.
    Piece(u32),
    TakenBack,
    /// Nothing was done; look.
    Refused,
    /// A wait is over.
    Ready,
}

impl Buzz {
    /// Milliseconds of buzz and pause by turns.
    pub fn pattern(self) -> &'static [u32] {
        match self {
            Buzz::Piece(count) if count > 0 && count.is_multiple_of(10) => &TENS[(count / 10 - 1) as usize % TENS.len()],
            Buzz::Piece(_) => &[18],
            Buzz::TakenBack => &[10, 60, 10],
            Buzz::Refused => &[180],
            Buzz::Ready => &[120, 80, 120, 80, 240],
        }
    }
}

/// One for each ten up to a hundred: two buzzes whose lengths tell the ten by feel, then it starts over.
const TENS: [[u32; 3]; 10] = [
    [30, 50, 60],
    [60, 50, 30],
    [60, 50, 60],
    [30, 90, 60],
    [90, 50, 30],
    [60, 90, 30],
    [90, 50, 60],
    [30, 50, 90],
    [60, 90, 60],
    [90, 50, 90],
];

/// Buzzes; says whether the phone took it.
pub fn buzz(what: Buzz) -> bool {
    let Some(navigator) = window().map(|w| w.navigator()) else { return false };
    let pattern: js_sys::Array = what.pattern().iter().map(|&ms| wasm_bindgen::JsValue::from(ms)).collect();
    has(&navigator, "vibrate") && navigator.vibrate_with_pattern(&pattern)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_ten_up_to_a_hundred_feels_different() {
        let felt: std::collections::BTreeSet<_> = (1..=10).map(|ten| Buzz::Piece(ten * 10).pattern()).collect();
        assert_eq!(felt.len(), 10);
        assert!(!felt.contains(Buzz::Piece(9).pattern()));
        assert_eq!(Buzz::Piece(0).pattern(), Buzz::Piece(1).pattern());
    }
}
