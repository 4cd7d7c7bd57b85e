//! Keys and clicks without a pointer: what a keyboard or screen reader says counts at once.
use super::patch::is_typed_into;
use super::press::Judged;
use super::timer::Timer;
use super::{El, Stage};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement, KeyboardEvent, MouseEvent, Node};

/// How long Enter or Space is held to do what a hold does.
const KEY_HELD_MS: u32 = 1000;

/// A key held on an element that wants to be held.
pub(super) struct KeyHeld {
    _timer: Option<Timer>,
    done: bool,
}

impl<M: Clone + 'static> Stage<M> {
    pub(super) fn click(&self, event: &Event, target: &Node) {
        if event.unchecked_ref::<MouseEvent>().detail() == 0 {
            return self.click_by_key(target);
        }
        let judged = self.presses.borrow_mut().judged.take();
        match judged {
            Some(Judged::Done | Judged::Now) => {}
            Some(Judged::Ignored) => event.prevent_default(),
            Some(Judged::Counted) | None => self.tap(target),
        }
    }

    /// Says what a tap on `target` says.
    pub(super) fn tap(&self, target: &Node) {
        let met = self.innermost(target, tap_or_hold);
        if let Some(met) = met.filter(|met| !met.node.has_attribute("disabled"))
            && let Some(message) = met.said.0
        {
            self.say(message)
        }
    }

    fn click_by_key(&self, target: &Node) {
        let held = self.presses.borrow_mut().key_held.take();
        if held.is_some_and(|held| held.done) {
            return; // the end of a key that was held long enough
        }
        let met = self.innermost(target, tap_or_hold);
        if let Some(message) = met.and_then(|met| met.said.0.or(met.said.1)) {
            self.say(message)
        }
    }

    pub(super) fn key_down(&self, event: &Event, target: &Node) {
        let event: &KeyboardEvent = event.unchecked_ref();
        if event.default_prevented() || event.ctrl_key() || event.meta_key() || event.alt_key() || event.is_composing() {
            return;
        }
        let key = event.key();
        if matches!(&*key, "Enter" | " ") && !event.repeat() {
            self.hold_key(target);
        }
        if event.repeat() && (key == "Enter" || key.chars().count() == 1) {
            return; // a letter held down says once what it says
        }
        let typed_at = self.presses.borrow_mut().typed_at.take();
        let typed_here = typed_at.is_some_and(|at| at == *target);
        // What is typed into a figure goes on with Enter and the blank; else these are for what has the focus.
        if !typed_here && (key == "Enter" && is_meant(target) || key == " " && !is_page(target)) {
            return;
        }
        if let Some(message) = self.key_says(target, &key) {
            event.prevent_default();
            self.presses.borrow_mut().typed_at = (key != "Enter").then(|| target.clone());
            self.say(message)
        }
    }

    /// What a key says: to a field only what the field itself wants, apart from Escape.
    fn key_says(&self, target: &Node, key: &str) -> Option<M> {
        let own = is_typed_into(target) && key != "Escape";
        let pick = |e: &El<M>| if own && !is_field(e) { None } else { e.says.key.as_ref().and_then(|says| says(key)) };
        match self.innermost(target, pick) {
            Some(met) => Some(met.said),
            None if is_page(target) => self.outermost(pick),
            None => None,
        }
    }

    fn hold_key(&self, target: &Node) {
        let Some(met) = self.innermost(target, |e| e.says.hold.clone()) else { return };
        let me = self.me.clone();
        let timer = Timer::after(KEY_HELD_MS, move || {
            let Some(stage) = me.upgrade() else { return };
            if let Some(held) = stage.presses.borrow_mut().key_held.as_mut() {
                held.done = true;
            }
            stage.say(met.said.0);
        });
        self.presses.borrow_mut().key_held = Some(KeyHeld { _timer: timer, done: false });
    }

    /// The key is up: its clock stops, but a click that ends a long hold still finds that it was done.
    pub(super) fn key_up(&self) {
        let mut presses = self.presses.borrow_mut();
        presses.key_held = presses.key_held.take().filter(|held| held.done);
    }
}

/// What a tap and what a hold on the element say: together, so that the innermost of either is meant.
fn tap_or_hold<M: Clone>(e: &El<M>) -> Option<(Option<M>, Option<M>)> {
    let (tap, hold) = (e.says.tap.clone(), e.says.hold.as_ref().map(|(message, _)| message.clone()));
    (tap.is_some() || hold.is_some()).then_some((tap, hold))
}

/// Whether Enter is for what has the focus: a key that was gone to by a keyboard, not one that a pointer left it on.
fn is_meant(target: &Node) -> bool {
    target.dyn_ref::<Element>().is_some_and(|e| e.matches("button:focus-visible,a,summary") == Ok(true))
}

fn is_field<M>(e: &El<M>) -> bool {
    matches!(e.tag, "input" | "textarea" | "select")
}

/// Whether nothing of the page has focus.
fn is_page(target: &Node) -> bool {
    target.dyn_ref::<HtmlElement>().is_some_and(|e| matches!(&*e.tag_name(), "BODY" | "HTML"))
}
