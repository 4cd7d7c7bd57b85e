//! Makes nodes of the page equal to a tree, touching only what differs: a field keeps its cursor, a node its focus.
use super::El;
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement, Node};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A new node in its parent's namespace; `svg` opens its own.
fn build<M>(document: &Document, parent: &Element, new: &El<M>) -> Element {
    let namespace = if new.tag == "svg" { Some(SVG.to_owned()) } else { parent.namespace_uri() };
    let made = document.create_element_ns(namespace.as_deref(), new.tag).unwrap_throw();
    patch(document, &made, &super::el(new.tag, ""), new);
    made
}

fn patch<M>(document: &Document, at: &Element, old: &El<M>, new: &El<M>) {
    if old.text != new.text {
        at.set_text_content(new.text.as_deref());
    }
    if new.text.is_none() {
        patch_kids(document, at, &old.kids, &new.kids);
    }
    for (name, _) in old.attrs.iter().filter(|(name, _)| new.attribute(name).is_none()) {
        take_away(at, name);
    }
    for (name, value) in &new.attrs {
        if is_held(name) || old.attribute(name) != Some(value) {
            set(at, name, value);
        }
    }
}

/// Keeps the node of the same tag and key, in order; the rest is made or removed. What goes is removed
/// first: moving a node takes its focus, and most changes then move none.
pub(super) fn patch_kids<M>(document: &Document, at: &Element, old: &[El<M>], new: &[El<M>]) {
    let nodes = std::iter::successors(at.first_element_child(), Element::next_element_sibling);
    let mut left: Vec<_> = old.iter().zip(nodes).map(Some).collect();
    let mut pair = |kid: &El<M>| {
        let same = left.iter_mut().find(|l| l.as_ref().is_some_and(|(was, _)| was.same_node(kid)));
        same.and_then(Option::take)
    };
    let pairs: Vec<_> = new.iter().map(|kid| (kid, pair(kid))).collect();
    for (_, node) in left.into_iter().flatten() {
        node.remove();
    }
    let mut next = at.first_element_child();
    for (kid, kept) in pairs {
        let is_new = kept.is_none();
        let node = match kept {
            Some((was, node)) => {
                patch(document, &node, was, kid);
                node
            }
            None => build(document, at, kid),
        };
        if !is_new && next.as_ref() == Some(&node) {
            next = node.next_element_sibling();
        } else {
            let _ = at.insert_before(&node, next.as_deref());
        }
    }
}

/// What a field holds can change without us: it is compared with the page each time, not with the tree before.
fn is_held(name: &str) -> bool {
    matches!(name, "value" | "checked")
}

/// `value` and `checked` are what a field holds now; the attributes of those names are only what it began with.
fn set(at: &Element, name: &str, value: &str) {
    let held = match name {
        "value" => hold(at, value),
        "checked" => tick(at, true),
        _ => false,
    };
    if !held && at.get_attribute(name).as_deref() != Some(value) {
        let _ = at.set_attribute(name, value);
    }
}

fn take_away(at: &Element, name: &str) {
    if !(name == "checked" && tick(at, false)) {
        let _ = at.remove_attribute(name);
    }
}

/// Puts `value` into a field if it holds another; says whether it is a field.
fn hold(at: &Element, value: &str) -> bool {
    match value_of(at) {
        Some(now) if now == value => return true,
        None => return false,
        _ => {}
    }
    if let Some(field) = at.dyn_ref::<HtmlInputElement>() {
        field.set_value(value);
    } else if let Some(field) = at.dyn_ref::<HtmlTextAreaElement>() {
        field.set_value(value);
    } else if let Some(menu) = at.dyn_ref::<HtmlSelectElement>() {
        menu.set_value(value);
    }
    true
}

fn tick(at: &Element, on: bool) -> bool {
    let Some(field) = at.dyn_ref::<HtmlInputElement>() else { return false };
    if field.checked() != on {
        field.set_checked(on);
    }
    true
}

/// What a field holds.
fn value_of(node: &Node) -> Option<String> {
    node.dyn_ref::<HtmlInputElement>()
        .map(HtmlInputElement::value)
        .or_else(|| node.dyn_ref::<HtmlTextAreaElement>().map(HtmlTextAreaElement::value))
        .or_else(|| node.dyn_ref::<HtmlSelectElement>().map(HtmlSelectElement::value))
}

/// What a change of a field says: what it holds, or for a box to tick `on` or nothing.
pub(super) fn typed(node: &Node) -> Option<String> {
    match node.dyn_ref::<HtmlInputElement>() {
        Some(ticked) if ticked.type_() == "checkbox" => Some(if ticked.checked() { "on".into() } else { String::new() }),
        _ => value_of(node),
    }
}

/// Whether text is typed into it: its keys are its own.
pub(super) fn is_typed_into(node: &Node) -> bool {
    match node.dyn_ref::<HtmlInputElement>() {
        Some(field) => !matches!(field.type_().as_str(), "checkbox" | "radio" | "range" | "button" | "submit" | "file"),
        None => node.is_instance_of::<HtmlTextAreaElement>() || node.is_instance_of::<HtmlSelectElement>(),
    }
}
