//! The figures of a form on Jobs, and the pad under them.

use super::super::{Seen, slots};
use super::say;
use crate::app::Msg;
use crate::app::form::Form;
use crate::app::jobs::Tap;
use crate::view::El;
use fivebar_core::quantity::Units;

pub use slots::Slot;

/// The figures, each a key, one alone large over the pad, and why one was not taken behind that one; and the pad.
pub fn told(form: &Form, slots: &[Slot], units: Units, seen: Seen<'_>) -> (El<Msg>, Vec<El<Msg>>) {
    let figures = slots::figures_told(form, slots, (units, seen), |nth| say(Tap::At(nth)));
    (figures, slots::pad(form, slots, seen, |press| say(Tap::Press(press))))
}
