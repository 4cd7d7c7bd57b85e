//! The figures of a form on Jobs, and the pad under them.

use super::super::{Seen, slots};
use super::say;
use crate::app::Msg;
use crate::app::form::Form;
use crate::app::jobs::Tap;
use crate::view::El;
use fivebar_core::quantity::Units;

pub use slots::Slot;

/// The figures, each a key; one alone stands large over the pad.
pub fn figures(form: &Form, shown: &[Slot]) -> El<Msg> {
    let class = match shown.len() {
        2 => "g2 slots",
        4 => "g4 slots",
        _ => "g3 slots",
    };
    slots::figures(class, form, shown, |nth| say(Tap::At(nth)))
}

/// Why the figure under the thumb was not taken, and the pad.
pub fn under_thumb(form: &Form, shown: &[Slot], units: Units, seen: Seen<'_>) -> Vec<El<Msg>> {
    let pad = slots::pad(form, shown, seen, |press| say(Tap::Press(press)));
    slots::why(form, units, seen).into_iter().chain(pad).collect()
}
