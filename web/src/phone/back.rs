//! The phone's own Back: one entry in the history stands for what lies over a place, so that Back leaves that and not the app.
use super::ears::Ear;
use super::{place, window};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsValue;

/// What the entry has, so that it is known from the one below.
const OVER: &str = "over";

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
            self.stands.set(history.is_some_and(|history| history.push_state_with_url(&JsValue::from_str(OVER), "", None).is_ok()));
        }
    }

    /// The next step back is the app's own.
    pub fn expect(&self) {
        self.awaited.set(true);
    }

    /// Calls `asked` when a person went back from what the entry stands for. The entry below may have been laid at another place: it is named
    /// anew, so that Back changes no place.
    pub fn watch(&self, here: impl Fn() -> &'static str + 'static, asked: impl Fn() + 'static) -> Option<Ear> {
        let back = self.clone();
        place::lay_ground();
        let heard = move |_| {
            let own = back.awaited.replace(false);
            // An address that was typed has no ground laid yet; Back leads to one, whatever place it was laid for.
            let steps_back = place::is_ground();
            place::lay_ground();
            if !own && steps_back && back.stands.replace(false) {
                place::remember(here());
                asked();
            }
        };
        window().map(|window| Ear::new(&window, "popstate", heard))
    }
}
