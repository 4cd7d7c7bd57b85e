//! Where the page is and how much room it has: the address after `#`, the width in the maker's text size, a steady tick.
use super::ears::Ear;
use super::{document, window};
use wasm_bindgen::prelude::*;

/// The name after `#` in the address, if there is one.
pub fn named() -> Option<String> {
    let hash = window()?.location().hash().ok()?;
    hash.strip_prefix('#').filter(|name| !name.is_empty()).map(str::to_owned)
}

/// What an entry of the history has that lies under what can be left: the phone's Back leads to it.
const GROUND: &str = "ground";

/// Puts a name after `#` without a new page in the history.
pub fn remember(name: &str) {
    put(Some(&format!("#{name}")), &state());
}

/// Marks the entry that the page is at, unless it is one that was laid over another.
pub fn lay_ground() {
    if state().is_null() {
        put(None, &JsValue::from_str(GROUND));
    }
}

/// Whether the page is at an entry that was marked so.
pub fn is_ground() -> bool {
    state().as_string().as_deref() == Some(GROUND)
}

fn state() -> JsValue {
    window().and_then(|w| w.history().ok()?.state().ok()).unwrap_or(JsValue::NULL)
}

fn put(address: Option<&str>, state: &JsValue) {
    if let Some(history) = window().and_then(|w| w.history().ok()) {
        let _ = history.replace_state_with_url(state, "", address);
    }
}

/// Calls `heard` with the name when the address's name changes.
pub fn on_hash(heard: impl Fn(String) + 'static) -> Option<Ear> {
    window().map(|window| Ear::new(&window, "hashchange", move |_| named().into_iter().for_each(&heard)))
}

/// The page's width in px at the maker's size of text: half of it at 200 %.
pub fn width() -> f64 {
    let inner = window().and_then(|w| w.inner_width().ok()).and_then(|w| w.as_f64()).unwrap_or(390.0);
    inner * 16.0 / root_px()
}

fn root_px() -> f64 {
    let size = || {
        let root = document()?.document_element()?;
        let style = window()?.get_computed_style(&root).ok()??;
        Some(js_sys::parse_float(&style.get_property_value("font-size").ok()?))
    };
    size().filter(|px| 0.0 < *px).unwrap_or(16.0)
}

/// Calls `heard` with the new width after a change of window or orientation.
pub fn on_resize(heard: impl Fn(f64) + 'static) -> Option<Ear> {
    window().map(|window| Ear::new(&window, "resize", move |_| heard(width())))
}

/// Calls `act` every `ms` while the page lives. What is shown then is read from the clock, never counted.
pub fn every(ms: i32, act: impl Fn() + 'static) {
    let act = Closure::<dyn Fn()>::new(act);
    if let Some(window) = window() {
        let _ = window.set_interval_with_callback_and_timeout_and_arguments_0(act.as_ref().unchecked_ref(), ms);
    }
    act.forget(); // lives as long as the page
}

/// The page's own element the app is drawn in.
pub fn root() -> Option<(web_sys::Document, web_sys::Element)> {
    document().and_then(|d| Some((d.clone(), d.get_element_by_id("app")?)))
}

/// Opens the page again.
pub fn reload() {
    if let Some(window) = window() {
        let _ = window.location().reload();
    }
}

/// A sentence for the console, for whoever looks there. The person is told elsewhere.
pub fn note(text: &str) {
    web_sys::console::warn_1(&JsValue::from_str(text));
}
