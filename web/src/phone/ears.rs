//! Ears: listeners that stop when they are dropped, and waiting for the first of several events.
use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, EventTarget};

/// A listener; it hears until it is dropped.
pub struct Ear {
    target: EventTarget,
    kind: &'static str,
    hear: Option<Closure<dyn Fn(Event)>>,
}

impl Ear {
    /// Calls `hear` for each event of `kind` at `target`.
    pub(crate) fn new(target: &EventTarget, kind: &'static str, hear: impl Fn(Event) + 'static) -> Self {
        let hear = Closure::<dyn Fn(Event)>::new(hear);
        let _ = target.add_event_listener_with_callback(kind, hear.as_ref().unchecked_ref());
        Ear { target: target.clone(), kind, hear: Some(hear) }
    }

    /// Keeps hearing as long as the page lives.
    pub fn for_good(mut self) {
        if let Some(hear) = self.hear.take() {
            hear.forget();
        }
    }
}

impl Drop for Ear {
    fn drop(&mut self) {
        if let Some(hear) = &self.hear {
            let _ = self.target.remove_event_listener_with_callback(self.kind, hear.as_ref().unchecked_ref());
        }
    }
}

/// The first event of one of `kinds`. It listens from the call on, before it is first awaited.
pub(crate) fn first_of(target: &EventTarget, kinds: &[&'static str]) -> impl Future<Output = Event> + use<> {
    let heard = first(target, kinds, None);
    async move { heard.await.unwrap_throw() }
}

/// The same, or nothing where none came within so many milliseconds.
pub(crate) fn first_within(target: &EventTarget, kinds: &[&'static str], ms: i32) -> impl Future<Output = Option<Event>> + use<> {
    first(target, kinds, Some(ms))
}

fn first(target: &EventTarget, kinds: &[&'static str], ms: Option<i32>) -> impl Future<Output = Option<Event>> + use<> {
    let mut ears = vec![];
    let heard = Promise::new(&mut |resolve, _| {
        if let (Some(ms), Some(window)) = (ms, super::window()) {
            let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, ms); // it resolves to nothing
        }
        for kind in kinds {
            let resolve = resolve.clone();
            ears.push(Ear::new(target, kind, move |event| {
                let _ = resolve.call1(&JsValue::NULL, &event);
            }));
        }
    });
    async move {
        let event = JsFuture::from(heard).await.unwrap_throw().dyn_into().ok();
        drop(ears);
        event
    }
}
