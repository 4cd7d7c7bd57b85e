//! What the platform could give away while a buyer holds the phone: half-typed text, and the way back.
//!
//! One guard entry in the history, with no state and the same address: going back once shows the face again instead of leaving it.
use super::ears::Ear;
use super::{draft, window};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsValue;

const TURNED: &str = "turned";

/// The guard, and the drafts that were lifted while the face shows.
#[derive(Clone, Default)]
pub struct Face {
    lifted: Rc<RefCell<Vec<(String, String)>>>,
    guarded: Rc<Cell<bool>>,
}

impl Face {
    /// The face shows: drafts out of reach, the guard in place.
    pub fn show(&self) {
        self.lifted.borrow_mut().extend(draft::lift_all());
        let pushed = history().is_some_and(|history| history.push_state_with_url(&JsValue::NULL, "", None).is_ok());
        self.guarded.set(pushed);
        if let Some(kept) = tab() {
            let _ = kept.set_item(TURNED, ""); // without it a reload shows the place the address names, as on any other day
        }
    }

    /// The maker has the phone back: drafts as they were, the guard away if nobody went back meanwhile. Says whether it goes back.
    pub fn hide(&self) -> bool {
        was_turned();
        draft::lay_back(&self.lifted.take());
        if self.guarded.replace(false)
            && let Some(history) = history()
        {
            return history.back().is_ok();
        }
        false
    }

    /// Hears when the guard is used up. What is shown stays: the page itself never left.
    pub fn watch(&self) -> Option<Ear> {
        let guarded = self.guarded.clone();
        window().map(|window| Ear::new(&window, "popstate", move |_| guarded.set(false)))
    }
}

/// Whether the page was loaded again while the phone was turned to a buyer: then nothing private may be its first screen.
/// It is asked once, and forgotten with that.
pub fn was_turned() -> bool {
    let Some(kept) = tab() else { return false };
    let turned = kept.get_item(TURNED).ok().flatten().is_some();
    let _ = kept.remove_item(TURNED);
    turned
}

fn tab() -> Option<web_sys::Storage> {
    window()?.session_storage().ok().flatten()
}

fn history() -> Option<web_sys::History> {
    window()?.history().ok()
}
