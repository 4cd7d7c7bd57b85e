//! One after the other: who waits for a turn goes on when the one before is done.
use js_sys::{Function, Promise};
use std::cell::RefCell;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// The turns at one thing.
pub struct Turns(RefCell<Promise>);

/// A turn; the next begins when it is dropped.
pub struct Turn(Option<Function>);

impl Default for Turns {
    fn default() -> Turns {
        Turns(RefCell::new(Promise::resolve(&JsValue::UNDEFINED)))
    }
}

impl Turns {
    /// A turn, once those asked for before are over.
    pub async fn next(&self) -> Turn {
        let mut over = None;
        let mine = Promise::new(&mut |resolve, _| over = Some(resolve));
        let before = self.0.replace(mine);
        let _ = JsFuture::from(before).await; // it is never rejected
        Turn(over)
    }
}

impl Drop for Turn {
    fn drop(&mut self) {
        if let Some(over) = &self.0 {
            let _ = over.call0(&JsValue::UNDEFINED);
        }
    }
}
