//! What suits the hand, as it was preferred: vibration and single keys are on until they are turned off.
use super::prefs::Pref;

const OFF: &str = "off";

/// Whether taps are felt.
pub fn buzzes() -> bool {
    Pref::Buzz.get().as_deref() != Some(OFF)
}

/// Whether it rings when a wait is over.
pub fn rings() -> bool {
    Pref::Ring.get().as_deref() != Some(OFF)
}

/// Whether 1 to 5 and U do something by themselves.
pub fn single_keys() -> bool {
    Pref::Keys.get().as_deref() != Some(OFF)
}
