//! The phone: the only code that touches the platform. Everything else is plain Rust.
//!
//! One file per thing the platform can do; each says what happened as a closed list of facts and keeps the words out.
pub mod awake;
pub mod back;
pub mod buzz;
pub mod draft;
mod ears;
pub mod face;
pub mod files;
pub mod format;
pub mod hand;
pub mod installed;
pub mod measure;
pub mod now;
pub mod panic;
pub mod photo;
pub mod place;
pub mod planner;
pub mod prefs;
pub mod print;
pub mod reckoner;
pub mod ring;
pub mod share;
pub mod shell;
pub mod spare;
pub mod store;
pub mod tabs;
pub mod text_size;
pub mod theme;
pub mod turns;
pub mod visible;

pub use ears::Ear;

fn window() -> Option<web_sys::Window> {
    web_sys::window()
}

fn document() -> Option<web_sys::Document> {
    window().and_then(|w| w.document())
}

/// Whether the platform has `name` on `thing`: asked first, as calling what is not there ends the app.
fn has(thing: &wasm_bindgen::JsValue, name: &str) -> bool {
    js_sys::Reflect::get(thing, &name.into()).is_ok_and(|found| !found.is_undefined() && !found.is_null())
}

/// The platform's own name for what it threw.
fn name_of(thrown: &wasm_bindgen::JsValue) -> String {
    let name = js_sys::Reflect::get(thrown, &"name".into()).ok().and_then(|n| n.as_string());
    name.unwrap_or_else(|| format!("{thrown:?}"))
}

/// What is waited for, but no longer than a while.
pub struct Signal {
    heard: js_sys::Promise,
    tell: Option<js_sys::Function>,
}

impl Signal {
    /// Waits for so many milliseconds at most.
    pub fn within(ms: i32) -> Signal {
        let mut tell = None;
        let heard = js_sys::Promise::new(&mut |resolve, _| {
            if let Some(window) = window() {
                let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, ms);
            }
            tell = Some(resolve);
        });
        Signal { heard, tell }
    }

    /// It has come. Saying so again does nothing.
    pub fn come(&self) {
        let _ = self.tell.as_ref().map(|tell| tell.call0(&wasm_bindgen::JsValue::UNDEFINED));
    }

    /// Once it has come, or the while is over.
    pub fn wait(&self) -> impl Future<Output = ()> + use<> {
        let heard = wasm_bindgen_futures::JsFuture::from(self.heard.clone());
        async move { drop(heard.await) }
    }
}

/// Once the page as it stands now was painted; a page that paints nothing, as one out of sight, is not waited for long.
pub async fn painted() {
    for _ in 0..2 {
        let frame = js_sys::Promise::new(&mut |resolve, _| {
            if let Some(window) = window() {
                let _ = window.request_animation_frame(&resolve);
                let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, 50);
            }
        });
        let _ = wasm_bindgen_futures::JsFuture::from(frame).await;
    }
}

/// Does what takes a while once the tap has been answered. One body for all that is awaited keeps the download small.
pub fn later(doing: std::pin::Pin<Box<dyn Future<Output = ()>>>) {
    wasm_bindgen_futures::spawn_local(doing);
}
