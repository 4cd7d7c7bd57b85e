//! A new version of the app: the page's first script says when one waits, and takes it over when the person taps.
use super::ears::Ear;
use super::{document, window};
use web_sys::{CustomEvent, Event};

const WAITS: &str = "fivebar-update";
const TAKE: &str = "fivebar-apply-update";

/// Calls `heard` when a new version waits.
pub fn on_new_version(heard: impl Fn() + 'static) -> Option<Ear> {
    window().map(|window| Ear::new(&window, WAITS, move |_: Event| heard()))
}

/// Whether a new version waits already: it may have come before the app listened.
pub fn new_version_waits() -> bool {
    document().and_then(|d| d.document_element()).is_some_and(|page| page.get_attribute("data-update").as_deref() == Some("waits"))
}

/// Takes the new version over; the page is loaded again. Keep half-typed text first.
pub fn take_new_version() {
    if let (Some(window), Ok(event)) = (window(), CustomEvent::new(TAKE)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Loads the page again.
pub fn reload() {
    if let Some(window) = window() {
        let _ = window.location().reload();
    }
}
