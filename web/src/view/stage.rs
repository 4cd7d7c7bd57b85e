//! The stage: the part of the page that shows the newest tree and hands on what is said there.
//!
//! It listens once, on the document; who was meant is found by the way from the root to the node that was used.
use super::patch::{Spot, patch_kids, typed};
use super::press::Presses;
use super::{El, el};
use std::cell::RefCell;
use std::rc::{Rc, Weak};
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, Event, HtmlElement, Node};

const HEARD: [&str; 10] =
    ["click", "input", "keydown", "keyup", "pointerdown", "pointermove", "pointerup", "pointercancel", "touchend", "contextmenu"];

type Mark = Box<dyn Fn(f64, f64)>;

/// The part of the page that shows the newest tree and hands on what is said there.
pub struct Stage<M> {
    pub(super) me: Weak<Self>,
    document: Document,
    root: Element,
    shown: RefCell<El<M>>,
    heard: Box<dyn Fn(M)>,
    pub(super) ignored: RefCell<Option<Mark>>,
    pub(super) presses: RefCell<Presses<M>>,
}

/// An element that was used, with what was found there, its node, and the way to it as a name.
pub(super) struct Met<T> {
    pub said: T,
    pub node: Element,
    pub way: String,
}

impl<M: Clone + 'static> Stage<M> {
    /// Takes over `root`, whatever was in it; `heard` is called with each message.
    pub fn new(document: Document, root: Element, heard: impl Fn(M) + 'static) -> Rc<Self> {
        root.set_text_content(None);
        let stage = Rc::new_cyclic(|me| Stage {
            me: me.clone(),
            document,
            root,
            shown: RefCell::new(el("div", "")),
            heard: Box::new(heard),
            ignored: RefCell::default(),
            presses: RefCell::default(),
        });
        let ears = stage.clone();
        let listen = Closure::<dyn Fn(Event)>::new(move |event| ears.hear(&event));
        for kind in HEARD {
            let _ = stage.document.add_event_listener_with_callback(kind, listen.as_ref().unchecked_ref());
        }
        listen.forget(); // lives as long as the page
        stage
    }

    /// `mark` is called with the place, in CSS px, of each touch that was ignored.
    pub fn on_ignored(&self, mark: impl Fn(f64, f64) + 'static) {
        *self.ignored.borrow_mut() = Some(Box::new(mark));
    }

    /// Makes the page equal to `tree`, touching only what differs. At a change of place, focus goes to its heading.
    pub fn show(&self, tree: El<M>) {
        let moved = self.moved(&tree);
        {
            let mut shown = self.shown.borrow_mut();
            patch_kids(&self.document, &Spot::of(self.root.clone()), &shown.kids, std::slice::from_ref(&tree));
            shown.kids = vec![tree];
        }
        if moved {
            self.focus_heading();
        }
    }

    /// Whether `tree` is another place than the one shown; the first is where the page opens, and takes no focus.
    fn moved(&self, tree: &El<M>) -> bool {
        let shown = self.shown.borrow();
        let before = shown.first(&is_place).and_then(|(e, _)| e.attribute("data-place"));
        before.is_some() && tree.first(&is_place).is_some_and(|(e, _)| e.attribute("data-place") != before)
    }

    fn focus_heading(&self) {
        let way = {
            let shown = self.shown.borrow();
            let key = shown.first(&is_place).and_then(|(place, _)| place.focus_key.clone());
            let named = key.and_then(|key| shown.first(&|e| e.key.as_ref() == Some(&key)));
            named.or_else(|| shown.first(&|e| matches!(e.tag, "h1" | "h2"))).map(|(_, way)| way)
        };
        if let Some(node) = way.and_then(|way| self.node(&way)) {
            if !node.has_attribute("tabindex") && !matches!(&*node.tag_name(), "BUTTON" | "INPUT" | "SELECT" | "TEXTAREA" | "A") {
                let _ = node.set_attribute("tabindex", "-1");
            }
            let _ = node.focus();
        }
    }

    fn node(&self, way: &[usize]) -> Option<HtmlElement> {
        let mut node = self.root.clone();
        for &at in way {
            node = node.children().item(u32::try_from(at).ok()?)?;
        }
        node.dyn_into().ok()
    }

    fn hear(&self, event: &Event) {
        let Some(target) = event.target().and_then(|t| t.dyn_into::<Node>().ok()) else { return };
        match event.type_().as_str() {
            "input" => self.typed(&target),
            "click" => self.click(event, &target),
            "keydown" => self.key_down(event, &target),
            "keyup" => self.key_up(),
            "pointerdown" => self.pointer_down(event.unchecked_ref(), &target),
            "pointermove" => self.pointer_moved(event.unchecked_ref()),
            "pointerup" => self.pointer_up(event.unchecked_ref(), &target),
            "pointercancel" => self.pointer_gone(event.unchecked_ref()),
            "touchend" => self.touch_ended(event),
            _ => self.menu_asked(event, &target),
        }
    }

    /// Hands a message on. Nothing of the stage is held meanwhile: it is usually answered by `show`.
    pub(super) fn say(&self, message: M) {
        (self.heard)(message)
    }

    fn typed(&self, target: &Node) {
        let met = self.innermost(target, |e| e.says.typed.clone());
        if let Some((met, text)) = met.zip(typed(target)) {
            self.say((met.said)(text))
        }
    }

    /// The innermost element on the way from the root to `target` where `pick` finds something.
    pub(super) fn innermost<T>(&self, target: &Node, pick: impl Fn(&El<M>) -> Option<T>) -> Option<Met<T>> {
        let way = self.way(target)?;
        let shown = self.shown.borrow();
        let (mut here, mut found, mut name) = (&*shown, None, String::new());
        for (at, node) in way {
            let Some(kid) = here.kids.get(at) else { break };
            here = kid;
            name.push('/');
            name.push_str(&here.key.as_ref().map_or_else(|| at.to_string(), ToString::to_string));
            if let (Some(said), Ok(node)) = (pick(here), node.dyn_into()) {
                found = Some(Met { said, node, way: name.clone() });
            }
        }
        found
    }

    /// What `pick` finds on the outermost element: it hears what is said to the page as a whole.
    pub(super) fn outermost<T>(&self, pick: impl Fn(&El<M>) -> Option<T>) -> Option<T> {
        self.shown.borrow().kids.first().and_then(pick)
    }

    /// Which child of which child, from the root down to `node`; nothing if the node is not on this stage.
    fn way(&self, node: &Node) -> Option<Vec<(usize, Node)>> {
        let (mut way, mut node) = (vec![], node.clone());
        while !self.root.is_same_node(Some(&node)) {
            way.push((std::iter::successors(node.previous_sibling(), Node::previous_sibling).count(), node.clone()));
            node = node.parent_node()?;
        }
        way.reverse();
        Some(way)
    }
}

fn is_place<M>(e: &El<M>) -> bool {
    e.attribute("data-place").is_some()
}
