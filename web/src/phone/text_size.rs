//! The size of text: what the phone has, and larger where the person chose so.
use super::document;
use super::prefs::Pref;

/// Draws the page in the size that was chosen.
pub fn apply() {
    let Some(page) = document().and_then(|d| d.document_element()) else { return };
    let _ = match Pref::TextSize.get() {
        Some(size) => page.set_attribute("data-text", &size),
        None => page.remove_attribute("data-text"),
    };
}

/// Chooses a size by its name: keeps it and draws the page in it.
pub fn choose(size: &str) {
    Pref::TextSize.set(size);
    apply();
}
