//! The shelves of the book and the shape of what lies on them.
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::*;

pub(super) const ENTRIES: &str = "entries";
pub(super) const META: &str = "meta";
pub(super) const PEOPLE: &str = "people";
pub(super) const ASIDE: &str = "aside";
pub(super) const BY_ID: &str = "id";

/// Every shelf: each transaction covers them all, so that one write is one transaction whatever it holds.
pub(super) fn all() -> Array {
    [ENTRIES, META, PEOPLE, ASIDE].into_iter().map(JsValue::from).collect()
}

#[wasm_bindgen]
extern "C" {
    /// A record on any shelf; each shelf uses some of the members.
    pub(super) type Kept;
    #[wasm_bindgen(method, getter)]
    fn seq(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    fn id(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    fn line(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    fn key(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    fn value(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    fn why(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    pub(super) fn to(this: &Kept) -> JsValue;
    #[wasm_bindgen(method, getter)]
    pub(super) fn bytes(this: &Kept) -> JsValue;
}

/// A member of a record as text; what is missing or no text reads as empty, and the core calls it damaged.
pub(super) fn text(member: JsValue) -> String {
    member.as_string().unwrap_or_default()
}

impl Kept {
    pub(super) fn place(&self) -> u64 {
        self.seq().as_f64().unwrap_or_default() as u64
    }
    pub(super) fn id_and_line(&self) -> (String, String) {
        (text(self.id()), text(self.line()))
    }
    pub(super) fn key_and_value(&self) -> (String, String) {
        (text(self.key()), text(self.value()))
    }
    pub(super) fn reason(&self) -> String {
        text(self.why())
    }
}

/// A record of text members.
pub(super) fn record(members: &[(&str, &str)]) -> Result<JsValue, JsValue> {
    let made = Object::new();
    for (name, value) in members {
        Reflect::set(&made, &(*name).into(), &(*value).into())?;
    }
    Ok(made.into())
}
