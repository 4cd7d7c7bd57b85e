//! Pointers: taps, holds and slides, each judged by the hand.
//!
//! A finger's tap acts as it is lifted, not at the `click`: the platform sends none while a palm rests on the screen.
//! A mouse, and a finger on a native field or link, act at the `click`.
use super::keys::KeyHeld;
use super::timer::Timer;
use super::{El, Hand, Makes, Stage, Touch, Verdict, WARY};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement, Node, PointerEvent};

/// A finger that moved farther than this, in CSS px, does not tap.
const SLOP: f64 = 16.0;
const NATIVE: &str = "a, input, label, select, summary, textarea";

/// What was decided about the pointer of a `click` that may follow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Judged {
    Counted,
    Ignored,
    /// It is acted on as it is lifted.
    Now,
    /// It was acted on already.
    Done,
}

/// A pointer that is down, and what it is doing.
struct Press<M> {
    pointer: i32,
    from: (f64, f64),
    way: Option<String>,
    verdict: Verdict,
    hold: Option<Timer>,
    held: bool,
    slide: Option<(Makes<f64, M>, Element)>,
}

/// The pointers that are down, and what is left to be heard of the last one.
pub(super) struct Presses<M> {
    hand: Hand,
    down: Vec<Press<M>>,
    pub judged: Option<Judged>,
    touch_done: bool,
    pub key_held: Option<KeyHeld>,
    /// What had the focus when a figure was typed last.
    pub typed_at: Option<Node>,
}

impl<M> Default for Presses<M> {
    fn default() -> Self {
        Presses { hand: Hand::default(), down: vec![], judged: None, touch_done: false, key_held: None, typed_at: None }
    }
}

impl<M> Presses<M> {
    fn take(&mut self, pointer: i32) -> Option<Press<M>> {
        let at = self.down.iter().position(|press| press.pointer == pointer)?;
        Some(self.down.swap_remove(at))
    }
}

impl<M: Clone + 'static> Stage<M> {
    pub(super) fn pointer_down(&self, event: &PointerEvent, target: &Node) {
        if event.pointer_type() == "mouse" && event.button() != 0 {
            return;
        }
        let met = self.innermost(target, wants_a_press);
        let way = met.as_ref().map(|met| met.way.clone());
        let wary = met.as_ref().is_some_and(|met| met.said.wary);
        let verdict = self.presses.borrow_mut().hand.tap(touch(event, (way.clone(), wary)));
        let mut press = Press { pointer: event.pointer_id(), from: place(event), way, verdict, hold: None, held: false, slide: None };
        if let (Some(met), Verdict::Counted) = (met, verdict) {
            press.hold = met.said.hold.and_then(|(_, ms)| self.hold_timer(event.pointer_id(), target, ms));
            press.slide = met.said.slide.map(|says| (says, met.node));
        } else if press.way.is_some() {
            self.mark_ignored(event);
        }
        self.begin(press, event);
    }

    fn begin(&self, press: Press<M>, event: &PointerEvent) {
        let slide = press.slide.clone();
        {
            let mut presses = self.presses.borrow_mut();
            (presses.judged, presses.touch_done) = (None, false);
            presses.take(press.pointer);
            presses.down.push(press);
        }
        if let Some((says, node)) = slide {
            let _ = node.set_pointer_capture(event.pointer_id());
            self.say(says(fraction(&node, event)));
        }
    }

    fn hold_timer(&self, pointer: i32, target: &Node, ms: u32) -> Option<Timer> {
        let (me, target) = (self.me.clone(), target.clone());
        Timer::after(ms, move || {
            let Some(stage) = me.upgrade() else { return };
            let Some(met) = stage.innermost(&target, |e| e.says.hold.clone()) else { return };
            if let Some(press) = stage.presses.borrow_mut().down.iter_mut().find(|press| press.pointer == pointer) {
                press.held = true;
            }
            stage.say(met.said.0);
        })
    }

    pub(super) fn pointer_moved(&self, event: &PointerEvent) {
        let slide = {
            let mut presses = self.presses.borrow_mut();
            let Some(press) = presses.down.iter_mut().find(|press| press.pointer == event.pointer_id()) else { return };
            if moved(press.from, event) {
                press.hold = None;
            }
            press.slide.clone()
        };
        if let Some((says, node)) = slide {
            self.say(says(fraction(&node, event)))
        }
    }

    pub(super) fn pointer_up(&self, event: &PointerEvent, target: &Node) {
        let Some(press) = self.lift(event) else { return };
        let judged = self.judge(&press, event, target);
        {
            let mut presses = self.presses.borrow_mut();
            presses.judged = Some(if judged == Judged::Now { Judged::Done } else { judged });
            presses.touch_done = is_finger(event) && press.way.is_some() && judged != Judged::Counted;
        }
        if judged == Judged::Now {
            focus(target);
            self.tap(target);
        }
    }

    /// What a pointer that was lifted did, or what its click will do.
    fn judge(&self, press: &Press<M>, event: &PointerEvent, target: &Node) -> Judged {
        let lifted = self.presses.borrow_mut().hand.lifted(event.time_stamp(), press.pointer);
        let rested = is_finger(event) && lifted != Verdict::Counted;
        match press.verdict {
            _ if press.held || press.slide.is_some() => Judged::Done,
            Verdict::Ignored(_) => Judged::Ignored,
            Verdict::Counted if rested => {
                if press.way.is_some() && press.hold.is_none() {
                    self.mark_ignored(event);
                }
                Judged::Ignored
            }
            Verdict::Counted if is_finger(event) && self.taps(press, event, target) => Judged::Now,
            Verdict::Counted => Judged::Counted,
        }
    }

    fn lift(&self, event: &PointerEvent) -> Option<Press<M>> {
        self.presses.borrow_mut().take(event.pointer_id())
    }

    /// Whether lifting the finger is a tap that we act on: on the same element, not moved, and nothing of the platform's own.
    fn taps(&self, press: &Press<M>, event: &PointerEvent, target: &Node) -> bool {
        let native = target.dyn_ref::<Element>().is_some_and(|e| e.closest(NATIVE).ok().flatten().is_some());
        let same = self.innermost(target, wants_a_press).map(|met| met.way);
        press.way.is_some() && same == press.way && !moved(press.from, event) && !native
    }

    /// The platform took the pointer, as for scrolling.
    pub(super) fn pointer_gone(&self, event: &PointerEvent) {
        drop(self.lift(event));
        self.presses.borrow_mut().hand.taken(event.pointer_id());
    }

    /// No click follows a touch that was acted on or ignored: it could fall on what is shown by then.
    pub(super) fn touch_ended(&self, event: &Event) {
        if std::mem::take(&mut self.presses.borrow_mut().touch_done) && event.cancelable() {
            event.prevent_default();
        }
    }

    /// A long press is a hold here, and opens no menu.
    pub(super) fn menu_asked(&self, event: &Event, target: &Node) {
        if self.innermost(target, |e| e.says.hold.as_ref().map(|_| ())).is_some() {
            event.prevent_default();
        }
    }

    fn mark_ignored(&self, event: &PointerEvent) {
        if let Some(mark) = &*self.ignored.borrow() {
            let (x, y) = place(event);
            mark(x, y)
        }
    }
}

/// What an element wants of a pointer.
struct Wants<M> {
    hold: Option<(M, u32)>,
    slide: Option<Makes<f64, M>>,
    wary: bool,
}

fn wants_a_press<M: Clone>(e: &El<M>) -> Option<Wants<M>> {
    let some = e.says.tap.is_some() || e.says.hold.is_some() || e.says.slide.is_some();
    some.then(|| Wants { hold: e.says.hold.clone(), slide: e.says.slide.clone(), wary: e.attribute(WARY).is_some() })
}

fn touch(event: &PointerEvent, (way, wary): (Option<String>, bool)) -> Touch {
    let (x, y) = place(event);
    Touch { at_ms: event.time_stamp(), x, y, key: way.unwrap_or_default(), wary, pointer: event.pointer_id() }
}

fn place(event: &PointerEvent) -> (f64, f64) {
    (f64::from(event.client_x()), f64::from(event.client_y()))
}

fn is_finger(event: &PointerEvent) -> bool {
    event.pointer_type() != "mouse"
}

fn moved(from: (f64, f64), event: &PointerEvent) -> bool {
    let (x, y) = place(event);
    (x - from.0).hypot(y - from.1) > SLOP
}

/// How far along the element the pointer is, from 0 to 1; upwards if it stands.
fn fraction(node: &Element, event: &PointerEvent) -> f64 {
    let (frame, (x, y)) = (node.get_bounding_client_rect(), place(event));
    let stands = node.get_attribute("aria-orientation").as_deref() == Some("vertical");
    let (way, whole) = if stands { (frame.bottom() - y, frame.height()) } else { (x - frame.left(), frame.width()) };
    if whole > 0.0 { (way / whole).clamp(0.0, 1.0) } else { 0.0 }
}

/// Moves focus to the key that was tapped, as the platform does at a click.
fn focus(target: &Node) {
    let key = target.dyn_ref::<Element>().and_then(|e| e.closest("button, [tabindex]").ok().flatten());
    if let Some(key) = key.and_then(|key| key.dyn_into::<HtmlElement>().ok()) {
        let calm = web_sys::FocusOptions::new();
        calm.set_prevent_scroll(true);
        let _ = key.focus_with_options(&calm);
    }
}
