//! The app in a browser of its own: opened with a script of the test, again after a kill, and with a store that answers late.

use crate::count::{FIGURE, SAVED};
use crate::{Browser, Page, Phone, app};
use serde_json::Value;
use std::path::Path;

/// Says on the console each figure that is shown as saved, at the moment it is.
pub fn saved_aloud() -> String {
    format!(
        "new MutationObserver(() => {{ if ({SAVED}) console.debug('shown as saved', {FIGURE}) }}).observe(document, {{ subtree: true, childList: true, characterData: true }})"
    )
}

/// The largest figure that was shown as saved, of these events.
pub fn shown_as_saved(events: &[Value]) -> u64 {
    let said = events.iter().filter(|event| event["params"]["args"][0]["value"] == "shown as saved");
    said.filter_map(|event| event["params"]["args"][1]["value"].as_u64()).max().unwrap_or_default()
}

/// The app in a new page that runs a script before each document.
pub fn with_script(browser: &mut Browser, script: &str) -> Page {
    let page = browser.page(Phone::COMMON.quick());
    browser.before_each_page(&page, script);
    browser.open(&page, app::address());
    app::ready(browser, &page);
    page
}

/// An empty book in a browser of its own.
pub fn fresh(script: &str) -> (tempfile::TempDir, Browser, Page) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = with_script(&mut browser, script);
    app::read(&mut browser, &page);
    (profile, browser, page)
}

/// What a start without a network shows.
pub fn after_a_restart(profile: &Path) -> (Browser, Page, u64) {
    let mut browser = Browser::start(profile);
    browser.offline(true);
    let page = with_script(&mut browser, &saved_aloud());
    browser.wait(&page, &format!("document.querySelector('main')?.ariaBusy !== 'true' && {SAVED}"));
    let figure = browser.figure(&page);
    (browser, page, figure)
}

/// The store's answer to the app's first `open` is held back until `letOpen()`.
pub const SLOW: &str = "const open = IDBFactory.prototype.open; window.slow = true;
  IDBFactory.prototype.open = function (name, version) { const request = open.call(this, name, version);
    if (name === 'fivebar' && version && slow) request.addEventListener('success', event => { if (slow) { event.stopImmediatePropagation();
      window.letOpen = () => { slow = false; request.dispatchEvent(new Event('success')) } } });
    return request }";
