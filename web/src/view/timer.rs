//! A call that comes after a while, unless it is dropped before.
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// Fails where the page has no clock, as it does elsewhere than in a page.
    #[wasm_bindgen(catch, js_name = setTimeout)]
    fn set_timeout(call: &JsValue, ms: u32) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_name = clearTimeout)]
    fn clear_timeout(id: &JsValue);
}

/// Its name is kept as the platform gave it: one that is cut to 32 bits stops another call, or none, and this one comes after it is gone.
pub(super) struct Timer {
    id: JsValue,
    _call: Closure<dyn FnMut()>,
}

impl Timer {
    pub(super) fn after(ms: u32, call: impl FnOnce() + 'static) -> Option<Self> {
        let call = Closure::once(call);
        let id = set_timeout(call.as_ref(), ms).ok()?;
        Some(Timer { id, _call: call })
    }
}

impl Drop for Timer {
    fn drop(&mut self) {
        clear_timeout(&self.id);
    }
}
