//! No instance panics the reader or a short try at it, and no plan breaks a rule, is worth other than it says or passes its own bound.
#![no_main]

#[path = "../../../core/examples/envelope/mod.rs"]
mod envelope;

use fivebar_core::plan::better;
use fivebar_core::plan::patience::{Patience, Progress};

libfuzzer_sys::fuzz_target!(|text: &str| {
    let Ok(instance) = envelope::read(text) else { return };
    let mut goes_on = |_: Progress<'_>| true;
    let solution = instance.solve(&mut Patience::new(Some(20), &mut goes_on), 1);
    assert!(!better(instance.senses(), &solution.worth, &solution.bound));
    let answered = instance.problem.solve(&mut Patience::new(Some(20), &mut goes_on), 1);
    assert!(instance.problem.holds(&answered));
});
