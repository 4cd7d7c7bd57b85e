//! Makes nodes of the page equal to a tree, touching only what differs: a field keeps its cursor, a node its focus.
use super::El;
use fivebar_core::quantity::Listed;
use std::cell::OnceCell;
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, HtmlInputElement, HtmlSelectElement, HtmlTextAreaElement, Node};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A node of the page. It is looked up when something there differs, and most of the page never does.
pub(super) struct Spot<'a> {
    parent: Option<(&'a Spot<'a>, usize)>,
    node: OnceCell<Option<Element>>,
}

impl<'a> Spot<'a> {
    pub(super) fn of(node: Element) -> Self {
        Spot { parent: None, node: OnceCell::from(Some(node)) }
    }

    fn kid(&'a self, nth: usize) -> Self {
        Spot { parent: Some((self, nth)), node: OnceCell::new() }
    }

    fn node(&self) -> Option<&Element> {
        let look = || {
            let (parent, nth) = self.parent?;
            parent.node()?.children().item(u32::try_from(nth).ok()?)
        };
        self.node.get_or_init(look).as_ref()
    }
}

/// A new node; what stands in a drawing is part of it.
fn build<M>(document: &Document, in_drawing: bool, new: &El<M>) -> Element {
    let drawn = in_drawing || new.tag == "svg";
    let made = if drawn { document.create_element_ns(Some(SVG), new.tag) } else { document.create_element(new.tag) }.unwrap_throw();
    if new.text.is_some() {
        made.set_text_content(new.text.as_deref());
    }
    for kid in &new.kids {
        let _ = made.append_child(&build(document, drawn, kid)); // a node that was just made fits anywhere
    }
    // After the kids: a menu can only hold a choice that is there.
    new.attrs.iter().for_each(|(name, value)| set(&made, name, value));
    made
}

fn patch<M>(document: &Document, at: &Spot, old: &El<M>, new: &El<M>) {
    if old.text != new.text {
        at.node().iter().for_each(|node| node.set_text_content(new.text.as_deref()));
    }
    if new.text.is_none() {
        patch_kids(document, at, &old.kids, &new.kids);
    }
    for (name, _) in old.attrs.iter().filter(|(name, _)| new.attribute(name).is_none()) {
        at.node().iter().for_each(|node| take_away(node, name));
    }
    for (name, value) in &new.attrs {
        if is_held(name) || old.attribute(name) != Some(value) {
            at.node().iter().for_each(|node| set(node, name, value));
        }
    }
}

/// Keeps the node of the same tag and key, in order; the rest is made or removed.
pub(super) fn patch_kids<M>(document: &Document, at: &Spot, old: &[El<M>], new: &[El<M>]) {
    if old.len() == new.len() && old.iter().zip(new).all(|(old, new)| old.same_node(new)) {
        old.iter().zip(new).enumerate().for_each(|(nth, (old, new))| patch(document, &at.kid(nth), old, new));
    } else if let Some(node) = at.node() {
        move_kids(document, node, old, new);
    }
}

/// What goes is removed first: moving a node takes its focus, and most changes then move none.
fn move_kids<M>(document: &Document, at: &Element, old: &[El<M>], new: &[El<M>]) {
    let nodes = std::iter::successors(at.first_element_child(), Element::next_element_sibling);
    let mut left: Vec<_> = old.iter().zip(nodes).map(Some).listed();
    let mut pair = |kid: &El<M>| {
        let same = left.iter_mut().find(|l| l.as_ref().is_some_and(|(was, _)| was.same_node(kid)));
        same.and_then(Option::take)
    };
    let pairs: Vec<_> = new.iter().map(|kid| (kid, pair(kid))).listed();
    for (_, node) in left.into_iter().flatten() {
        node.remove();
    }
    let in_drawing = at.namespace_uri().as_deref() == Some(SVG);
    let mut next = at.first_element_child();
    for (kid, kept) in pairs {
        let is_new = kept.is_none();
        let node = match kept {
            Some((was, node)) => {
                patch(document, &Spot::of(node.clone()), was, kid);
                node
            }
            None => build(document, in_drawing, kid),
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
    if !held {
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
