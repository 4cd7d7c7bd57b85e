//! A call that comes after a while, unless it is dropped before.
use wasm_bindgen::prelude::*;

pub(super) struct Timer {
    id: i32,
    _call: Closure<dyn FnMut()>,
}

impl Timer {
    pub(super) fn after(ms: u32, call: impl FnOnce() + 'static) -> Option<Self> {
        let call = Closure::once(call);
        let window = web_sys::window()?;
        let ms = i32::try_from(ms).unwrap_or(i32::MAX);
        let id = window.set_timeout_with_callback_and_timeout_and_arguments_0(call.as_ref().unchecked_ref(), ms).ok()?;
        Some(Timer { id, _call: call })
    }
}

impl Drop for Timer {
    fn drop(&mut self) {
        if let Some(window) = web_sys::window() {
            window.clear_timeout_with_handle(self.id);
        }
    }
}
