//! The phone's own Back: one entry in the history stands for what lies over a place, so that Back leaves that and not the app.
use super::ears::Ear;
use super::{place, window};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsValue;

/// The entry, if it is there.
#[derive(Clone, Default)]
pub struct Back {
    stands: Rc<Cell<bool>>,
    awaited: Rc<Cell<bool>>,
}

impl Back {
    /// Lays the entry while something can be left. It stays when that is left by a tap: the next Back then does nothing more
    /// than use it up, as taking it away here could leave the app where the platform counts otherwise.
    pub fn look(&self, deep: bool) {
        if deep && !self.stands.get() {
            let history = window().and_then(|w| w.history().ok());
            self.stands.set(history.is_some_and(|history| history.push_state_with_url(&JsValue::NULL, "", None).is_ok()));
        }
    }

    /// The next step back is the app's own.
    pub fn expect(&self) {
        self.awaited.set(true);
    }

    /// Calls `asked` when a person went back and the address still names the place `here`.
    pub fn watch(&self, here: impl Fn() -> &'static str + 'static, asked: impl Fn() + 'static) -> Option<Ear> {
        let back = self.clone();
        let heard = move |_| {
            let own = back.awaited.replace(false);
            if !own && place::named().is_none_or(|name| name == here()) && back.stands.replace(false) {
                asked();
            }
        };
        window().map(|window| Ear::new(&window, "popstate", heard))
    }
}
