//! Keeps the screen awake while a haul is counted. What is wanted and what is held are two facts:
//! the platform drops the lock with the page, so it is taken again when the page is back in sight.
use super::later;
use super::{document, has, window};
use js_sys::{Promise, Reflect};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

#[wasm_bindgen]
extern "C" {
    // web-sys has the wake lock only behind `web_sys_unstable_apis`; these are the same calls, typed here.
    type Locks;
    #[wasm_bindgen(method, catch)]
    fn request(this: &Locks, kind: &str) -> Result<Promise, JsValue>;
    #[derive(Clone)]
    type Lock;
    #[wasm_bindgen(method, catch)]
    fn release(this: &Lock) -> Result<Promise, JsValue>;
    #[wasm_bindgen(method, getter)]
    fn released(this: &Lock) -> Option<bool>;
}

/// Whether the screen is kept awake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Awake {
    /// It is.
    Held,
    /// It is not, and nobody wants it.
    NotWanted,
    /// It is wanted and will be taken when the page is in sight.
    Wanted,
    /// This phone can't.
    CanNot,
}

/// The wish to keep the screen awake. Cheap to clone.
#[derive(Clone, Default)]
pub struct Watch {
    wanted: Rc<Cell<bool>>,
    asking: Rc<Cell<bool>>,
    lock: Rc<RefCell<Option<Lock>>>,
}

impl Watch {
    /// Wants the screen awake, or no longer.
    pub fn want(&self, wanted: bool) {
        self.wanted.set(wanted);
        if wanted {
            self.retake();
        } else if let Some(lock) = self.lock.take() {
            let _ = lock.release();
        }
    }

    /// Takes the lock again if it is wanted and was dropped. Call it when the page is back in sight.
    pub fn retake(&self) {
        if !should_ask(self.wanted.get(), self.held() || self.asking.get(), in_sight()) {
            return;
        }
        let Some(asked) = locks().and_then(|locks| locks.request("screen").ok()) else { return };
        self.asking.set(true);
        let watch = self.clone();
        later(Box::pin(async move {
            let given = JsFuture::from(asked).await;
            watch.asking.set(false);
            if let Ok(lock) = given {
                watch.given(lock.unchecked_into());
            }
        }));
    }

    fn given(&self, lock: Lock) {
        if self.wanted.get() {
            *self.lock.borrow_mut() = Some(lock);
        } else {
            let _ = lock.release(); // the wish ended while the phone was asked
        }
    }

    fn held(&self) -> bool {
        self.lock.borrow().as_ref().is_some_and(|lock| lock.released() == Some(false))
    }

    /// Whether the screen is kept awake now.
    pub fn state(&self) -> Awake {
        match (locks(), self.wanted.get(), self.held()) {
            (None, ..) => Awake::CanNot,
            (_, _, true) => Awake::Held,
            (_, true, false) => Awake::Wanted,
            (_, false, false) => Awake::NotWanted,
        }
    }
}

fn should_ask(wanted: bool, held: bool, in_sight: bool) -> bool {
    wanted && !held && in_sight
}

fn in_sight() -> bool {
    document().is_some_and(|d| !d.hidden())
}

fn locks() -> Option<Locks> {
    let navigator = window()?.navigator();
    has(&navigator, "wakeLock").then(|| Reflect::get(&navigator, &"wakeLock".into()).ok())?.map(JsCast::unchecked_into)
}

#[cfg(test)]
mod tests {
    use super::should_ask;

    #[test]
    fn the_lock_is_asked_for_only_when_wanted_missing_and_in_sight() {
        assert!(should_ask(true, false, true));
        assert!(!should_ask(true, true, true));
        assert!(!should_ask(true, false, false));
        assert!(!should_ask(false, false, true));
    }
}
