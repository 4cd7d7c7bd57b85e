//! What the platform could give away while a buyer holds the phone: half-typed text, and the way back.
//!
//! One guard entry in the history, with a state of its own and the same address: going back once shows the face again instead of leaving it.
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
    /// The face shows a piece: drafts out of reach, the guard in place. Of the piece only its id stays in reach.
    pub fn show(&self, piece: &str) {
        self.lifted.borrow_mut().extend(draft::lift_all());
        let pushed = history().is_some_and(|history| history.push_state_with_url(&JsValue::from_str("face"), "", None).is_ok());
        self.guarded.set(pushed);
        if let Some(kept) = tab() {
            let _ = kept.set_item(TURNED, piece); // without it a reload shows the place the address names, as on any other day
        }
    }

    /// The maker has the phone back: drafts as they were, the guard away if nobody went back meanwhile. Says whether it goes back.
    pub fn hide(&self) -> bool {
        if let Some(kept) = tab() {
            let _ = kept.remove_item(TURNED); // what can't be taken away could not be set either
        }
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

/// The piece a buyer was looking at as the page was loaded again: then nothing private may be its first screen.
/// It stays until the maker has the phone back: a start that is cut short by a second reload shows the same.
pub fn was_turned() -> Option<String> {
    tab()?.get_item(TURNED).ok().flatten()
}

fn tab() -> Option<web_sys::Storage> {
    window()?.session_storage().ok().flatten()
}

fn history() -> Option<web_sys::History> {
    window()?.history().ok()
}
