//! Whether the page is in sight. Hidden is the last moment to count on: a phone may end the page without another word.
use super::ears::Ear;
use super::{document, window};
use std::rc::Rc;

/// What the page's sight is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// The page went out of sight, or is drawn for the task switcher.
    Hidden,
    /// The page is back in sight: take up again what the phone may have dropped.
    Back,
}

/// Calls `heard` at each change; `Back` may come more than once for one return.
pub fn watch(heard: impl Fn(Sight) + 'static) -> Vec<Ear> {
    let (Some(window), Some(document)) = (window(), document()) else { return vec![] };
    let heard = Rc::new(heard);
    let (seen, hidden, back) = (heard.clone(), heard.clone(), heard);
    let page = document.clone();
    let tell_back = Rc::new(move || back(Sight::Back));
    let again = tell_back.clone();
    vec![
        Ear::new(&document, "visibilitychange", move |_| seen(if page.hidden() { Sight::Hidden } else { Sight::Back })),
        Ear::new(&window, "pagehide", move |_| hidden(Sight::Hidden)),
        Ear::new(&window, "focus", move |_| tell_back()),
        Ear::new(&window, "pageshow", move |_| again()),
    ]
}
