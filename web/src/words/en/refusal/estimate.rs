//! English: why an old job or an estimate was not taken, with the limit.

use crate::words::Speech;
use fivebar_core::quantity::{Decimal, Money, Span};

/// What did not happen, and what to do.
pub type Told = (String, &'static str);

pub fn hours((met, least, most): (Span, Span, Span), speech: &dyn Speech) -> Told {
    let [met, least, most] = [met, least, most].map(|span| speech.span(span));
    (format!("Not taken: {met} is not between {least} and {most}."), "Check the hours.")
}

pub fn no_price(met: Money, speech: &dyn Speech) -> Told {
    (format!("Not taken: {} is no price.", speech.money(met)), "Leave it empty where you do not know it.")
}

pub fn too_many(met: usize, most: usize) -> Told {
    (format!("Not taken: {met} old jobs at once, and one act holds at most {most}."), "Write the others down apart.")
}

pub fn factor((met, least, most): (Decimal, Decimal, Decimal), speech: &dyn Speech) -> Told {
    let [met, least, most] = [met, least, most].map(|times| speech.number(times, 0, 3));
    (format!("Not taken: it took {met} of what you thought, and that is not between {least} and {most}."), "Check both times.")
}
