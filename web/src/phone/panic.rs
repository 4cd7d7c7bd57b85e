//! A fault in the app: stop writing first, then say so, with one key that loads the page again.
//!
//! What is shown needs nothing of ours any more: after a fault no code of the app is trusted.
use super::{document, store, window};
use js_sys::{Function, Reflect};
use wasm_bindgen::prelude::*;

/// What is said after a fault.
#[derive(Clone, Copy, Debug)]
pub struct LastWords {
    /// What happened and that all that was saved is safe.
    pub said: &'static str,
    /// The name of the key that loads the page again.
    pub reload: &'static str,
}

/// From now on a fault stops all writing and then shows `words`.
pub fn install(words: LastWords) {
    std::panic::set_hook(Box::new(move |fault| {
        store::close_for_good();
        web_sys::console::error_1(&fault.to_string().into());
        let _ = show(words);
    }));
}

/// Stops writing and shows the words, as a fault does.
pub fn stop(words: LastWords) {
    store::close_for_good();
    let _ = show(words);
}

fn show(words: LastWords) -> Result<(), JsValue> {
    let Some(document) = document() else { return Ok(()) };
    if document.get_element_by_id("stopped").is_some() {
        return Ok(());
    }
    let (notice, said, key) = (document.create_element("div")?, document.create_element("p")?, document.create_element("button")?);
    notice.set_id("stopped");
    notice.set_class_name("stopped");
    notice.set_attribute("role", "alert")?;
    said.set_text_content(Some(words.said));
    key.set_text_content(Some(words.reload));
    key.add_event_listener_with_callback("click", &reload()?)?;
    notice.append_child(&said)?;
    notice.append_child(&key)?;
    document.body().ok_or(JsValue::NULL)?.append_child(&notice)?;
    Ok(())
}

/// The platform's own reload, bound to the page: no code of the app runs when it is tapped.
fn reload() -> Result<Function, JsValue> {
    let place = window().ok_or(JsValue::NULL)?.location();
    let reload: Function = Reflect::get(&place, &"reload".into())?.unchecked_into();
    Ok(reload.bind0(&place))
}
