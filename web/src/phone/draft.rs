//! Half-typed text, by the field it was typed into. It outlives a reload and an app switch, and never enters the book.
use super::ears::Ear;
use super::window;
use fivebar_core::quantity::Listed;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, EventInit, HtmlInputElement};

const MARK: &str = "draft:";
/// A field that is to begin empty each time says so.
const KEPT_FIELDS: &str = "input[type=text][id]:not([data-fleeting])";

/// The fields on the page. A reload, and a look at another place, leave their drafts; a field that goes while its place stays
/// was used or given up, and its draft goes with it.
#[derive(Default)]
pub struct Fields {
    shown: RefCell<Vec<String>>,
}

impl Fields {
    /// Looks at the page as it is now drawn. A field that came empty gets its draft, as if it were typed again.
    pub fn look(&self, root: &Element) {
        let now = fields(root);
        let before = self.shown.replace(now.iter().map(|(name, _)| name.clone()).listed());
        let here = root.query_selector("[data-place]").ok().flatten().map(|screen| screen_of(&screen)).unwrap_or_default();
        let gone = before.iter().filter(|name| !now.iter().any(|(field, _)| field == *name));
        gone.filter(|name| place_of(name) == place_of(&here)).for_each(|name| throw_away(name));
        for (_, field) in now.iter().filter(|(name, field)| !before.contains(name) && field.value().is_empty()) {
            type_again(field);
        }
    }
}

/// Keeps what is typed into the page's fields.
pub fn follow(root: &Element) -> Ear {
    Ear::new(root, "input", |event| {
        let typed = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        if let Some(field) = typed.filter(|field| field.matches(KEPT_FIELDS).unwrap_or(false)) {
            keep(&name(&field), &field.value());
        }
    })
}

/// The same question on another screen is another field.
fn name(field: &HtmlInputElement) -> String {
    let screen = field.closest("[data-place]").ok().flatten().map(|screen| screen_of(&screen));
    format!("{}/{}", screen.unwrap_or_default(), field.id())
}

fn screen_of(screen: &Element) -> String {
    screen.get_attribute("data-place").unwrap_or_default()
}

/// "jobs" of "jobs/new".
fn place_of(screen: &str) -> &str {
    screen.split('/').next().unwrap_or_default()
}

fn fields(root: &Element) -> Vec<(String, HtmlInputElement)> {
    let Ok(found) = root.query_selector_all(KEPT_FIELDS) else { return vec![] };
    let fields = (0..found.length()).filter_map(|nth| found.item(nth)?.dyn_into::<HtmlInputElement>().ok());
    fields.map(|field| (name(&field), field)).listed()
}

fn type_again(field: &HtmlInputElement) {
    let Some(text) = kept(&name(field)).filter(|text| !text.is_empty()) else { return };
    field.set_value(&text);
    let bubbles = EventInit::new();
    bubbles.set_bubbles(true);
    if let Ok(event) = Event::new_with_event_init_dict("input", &bubbles) {
        let _ = field.dispatch_event(&event); // false only says that somebody prevented the default, and there is none
    }
}

/// Keeps what is typed so far; says whether the phone could.
pub fn keep(field: &str, text: &str) -> bool {
    shelf().is_some_and(|kept| kept.set_item(&format!("{MARK}{field}"), text).is_ok())
}

/// What was typed so far.
pub fn kept(field: &str) -> Option<String> {
    shelf()?.get_item(&format!("{MARK}{field}")).ok().flatten()
}

/// Throws a draft away, as it was used or given up.
pub fn throw_away(field: &str) {
    if let Some(kept) = shelf() {
        let _ = kept.remove_item(&format!("{MARK}{field}"));
    }
}

/// Takes all drafts out of the page's reach, as the buyer's face must find none; `lay_back` returns them.
pub fn lift_all() -> Vec<(String, String)> {
    let Some(shelf) = shelf() else { return vec![] };
    let names: Vec<String> = (0..shelf.length().unwrap_or(0)).filter_map(|n| shelf.key(n).ok().flatten()).listed();
    let drafts = names.iter().filter_map(|name| Some((name.strip_prefix(MARK)?.to_owned(), shelf.get_item(name).ok()??)));
    let drafts: Vec<_> = drafts.listed();
    drafts.iter().for_each(|(field, _)| throw_away(field));
    drafts
}

/// Lays drafts back that were lifted.
pub fn lay_back(drafts: &[(String, String)]) {
    for (field, text) in drafts {
        keep(field, text);
    }
}

fn shelf() -> Option<web_sys::Storage> {
    window()?.session_storage().ok().flatten()
}
