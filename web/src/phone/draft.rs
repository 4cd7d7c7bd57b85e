//! Half-typed text, by the field it was typed into. It outlives a reload and an app switch, and never enters the book.
use super::window;

const MARK: &str = "draft:";

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
    let names: Vec<String> = (0..shelf.length().unwrap_or(0)).filter_map(|n| shelf.key(n).ok().flatten()).collect();
    let drafts = names.iter().filter_map(|name| Some((name.strip_prefix(MARK)?.to_owned(), shelf.get_item(name).ok()??)));
    let drafts: Vec<_> = drafts.collect();
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
