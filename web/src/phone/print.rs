//! Prints the page, under a title of its own: the phone proposes it as the name of the paper.
use super::{document, has, window};
use wasm_bindgen::prelude::*;

/// Opens the phone's print sheet; says whether there is one. The title is put back after printing.
pub fn print(title: &str) -> bool {
    let (Some(window), Some(document)) = (window(), document()) else { return false };
    if !has(&window, "print") {
        return false;
    }
    let before = document.title();
    document.set_title(title);
    let put_back = Closure::once_into_js(move || document.set_title(&before));
    let _ = window.add_event_listener_with_callback_and_add_event_listener_options("afterprint", put_back.unchecked_ref(), &once());
    window.print().is_ok()
}

fn once() -> web_sys::AddEventListenerOptions {
    let options = web_sys::AddEventListenerOptions::new();
    options.set_once(true);
    options
}
