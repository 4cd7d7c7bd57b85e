//! A phone says the same chances, and the same worth of waiting, as a terminal, to the last bit. `core/tests/chance_laws.rs` holds the same figures.
#![cfg(target_arch = "wasm32")]
#[path = "../../core/tests/pinned/mod.rs"]
mod pinned;

use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn floats_are_the_same_everywhere() {
    pinned::chances_are_as_pinned();
}

#[wasm_bindgen_test]
fn waiting_is_worth_the_same_everywhere() {
    pinned::waiting_is_as_pinned();
}
