//! A phone says the same chances as a terminal, to the last bit. `core/tests/chance_laws.rs` holds the same figures.
#![cfg(target_arch = "wasm32")]
use fivebar_core::quantity::chance::{BetaBinomial, student};
use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn floats_are_the_same_everywhere() {
    let at_least = |(n, alpha, beta), k| BetaBinomial::new(n, alpha, beta).unwrap().at_least(k);
    let ours = [
        at_least((38, 9.0, 3.0), 20),
        at_least((999, 0.06, 19.94), 990),
        at_least((9_999, 2_010.0, 709.5), 7_500),
        student(0.95, 4).unwrap(),
        student(0.8, 1).unwrap(),
        student(0.95, 9_998).unwrap(),
    ];
    let pinned =
        [4606642186702074777_u64, 4053291669513073540, 4593645478342737264, 4613434417370609114, 4614112746015610798, 4611506780959957627];
    assert_eq!(ours.map(f64::to_bits), pinned);
}
