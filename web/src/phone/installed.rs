//! Whether the app is installed, can be, and whether installing it later would leave the book behind.
use super::ears::Ear;
use super::{name_of, window};
use js_sys::{Promise, Reflect};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

#[wasm_bindgen]
extern "C" {
    /// The platform's offer to install, as `beforeinstallprompt` brings it.
    #[derive(Clone)]
    type Offer;
    #[wasm_bindgen(method, catch)]
    fn prompt(this: &Offer) -> Result<Promise, JsValue>;
    #[wasm_bindgen(method, getter, js_name = userChoice)]
    fn user_choice(this: &Offer) -> JsValue;
}

/// What the person said to the offer to install.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    Yes,
    No,
    /// The platform made no offer, or it was used already.
    NoOffer,
    /// The platform refused to ask, by its own name for the reason.
    Refused {
        name: String,
    },
}

/// Keeps the platform's offer to install until the person wants it.
pub struct Installing {
    offer: Rc<RefCell<Option<Offer>>>,
    _ears: Option<[Ear; 2]>,
}

impl Installing {
    /// Listens for the offer from now on; `tell` hears whenever what `can_offer` says may have changed.
    pub fn listen(tell: impl Fn() + 'static) -> Self {
        let (offer, tell): (Rc<RefCell<Option<Offer>>>, _) = (Rc::default(), Rc::new(tell));
        let (kept, told) = (offer.clone(), tell.clone());
        let gone = offer.clone();
        let ears = window().map(|window| {
            let made = Ear::new(&window, "beforeinstallprompt", move |event| {
                event.prevent_default(); // not now: the app asks in its own place
                *kept.borrow_mut() = Some(JsValue::from(event).unchecked_into());
                told();
            });
            let done = Ear::new(&window, "appinstalled", move |_| {
                gone.take();
                tell();
            });
            [made, done]
        });
        Installing { offer, _ears: ears }
    }

    /// Whether the platform would install the app now.
    pub fn can_offer(&self) -> bool {
        self.offer.borrow().is_some()
    }

    /// Asks the person. Call it from a tap.
    pub async fn ask(&self) -> Answer {
        let Some(offer) = self.offer.take() else { return Answer::NoOffer };
        let refused = |thrown: JsValue| Answer::Refused { name: name_of(&thrown) };
        match offer.prompt() {
            Err(thrown) => return refused(thrown),
            Ok(shown) => {
                if let Err(thrown) = JsFuture::from(shown).await {
                    return refused(thrown);
                }
            }
        }
        let Ok(chosen) = JsFuture::from(Promise::resolve(&offer.user_choice())).await else { return Answer::No };
        let outcome = Reflect::get(&chosen, &"outcome".into()).ok().and_then(|o| o.as_string());
        if outcome.as_deref() == Some("accepted") { Answer::Yes } else { Answer::No }
    }
}

/// Whether the app runs as an installed one, in a window of its own.
pub fn standalone() -> bool {
    let Some(window) = window() else { return false };
    let shown = window.match_media("(display-mode: standalone)").ok().flatten().is_some_and(|m| m.matches());
    let on_home_screen = Reflect::get(&window.navigator(), &"standalone".into()).is_ok_and(|s| s == JsValue::TRUE);
    shown || on_home_screen
}

/// Whether the app installed later would start with an empty book, as the platform keeps two: say so before the first entry.
pub fn install_before_first_entry() -> bool {
    let Some(navigator) = window().map(|w| w.navigator()) else { return false };
    !standalone() && keeps_two_books(&navigator.user_agent().unwrap_or_default(), navigator.max_touch_points())
}

/// Phones and tablets of Apple's, the ones that say they are a desktop too: those have no touch screen.
fn keeps_two_books(agent: &str, touches: i32) -> bool {
    ["iPhone", "iPad", "iPod"].iter().any(|name| agent.contains(name)) || (agent.contains("Macintosh") && touches > 1)
}

#[cfg(test)]
mod tests {
    use super::keeps_two_books;

    #[test]
    fn the_phones_that_keep_two_books_are_known() {
        assert!(keeps_two_books("Mozilla/5.0 (iPhone; CPU iPhone OS 18_4 like Mac OS X)", 5));
        assert!(keeps_two_books("Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)", 5), "a tablet that says it is a desktop");
        assert!(!keeps_two_books("Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)", 0));
        assert!(!keeps_two_books("Mozilla/5.0 (Linux; Android 14)", 5));
    }
}
