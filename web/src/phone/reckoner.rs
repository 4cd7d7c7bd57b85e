//! Reckons beside the page how many sets unsorted wood gives: in a worker with the same wasm, or in turns on the page where none can
//! start.
use super::ears::Ear;
use super::planner::{message, worker};
use super::{later, painted};
use fivebar_core::plan::outlook::{Hoped, Outlook, Reckoning};
use fivebar_core::plan::post;
use js_sys::BigInt64Array;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Event, MessageEvent, Worker};

/// What came of one of them, by its place; nothing where it failed.
type Tell = Rc<dyn Fn(usize, Option<Outlook>)>;

/// A reckoning under way. Dropping it calls it off.
pub struct Reckoner {
    worker: Option<Worker>,
    _ears: Vec<Ear>,
    wanted: Rc<Cell<bool>>,
}

impl Drop for Reckoner {
    fn drop(&mut self) {
        self.wanted.set(false);
        self.worker.iter().for_each(Worker::terminate);
    }
}

impl Reckoner {
    /// Begins with the first of them; `tell` hears of each once.
    pub fn begin(all: Vec<Hoped>, seed: u32, tell: impl Fn(usize, Option<Outlook>) + 'static) -> Reckoner {
        let (tell, wanted): (Tell, _) = (Rc::new(tell), Rc::new(Cell::new(true)));
        let Some(worker) = worker() else {
            in_turns((all, 0), seed, tell, wanted.clone());
            return Reckoner { worker: None, _ears: vec![], wanted };
        };
        for hoped in &all {
            let _ = worker.post_message(&message("hoped", &post::put_hoped(hoped), &[("seed", seed)]));
        }
        let ears = listen(&worker, tell, (all, seed), wanted.clone());
        Reckoner { worker: Some(worker), _ears: ears, wanted }
    }
}

/// The worker answers in the order in which it was asked. Should it fail, the page goes on where it stopped.
fn listen(worker: &Worker, tell: Tell, (all, seed): (Vec<Hoped>, u32), wanted: Rc<Cell<bool>>) -> Vec<Ear> {
    let next = Rc::new(Cell::new(0));
    let (spare, told, at) = (Cell::new(Some(all)), tell.clone(), next.clone());
    let heard = Ear::new(worker, "message", move |event| {
        if let Some(found) = heard(&event) {
            told(at.replace(at.get() + 1), found);
        }
    });
    let error = Ear::new(worker, "error", move |event| {
        event.prevent_default();
        if let Some(all) = spare.take() {
            in_turns((all, next.get()), seed, tell.clone(), wanted.clone());
        }
    });
    vec![heard, error]
}

/// What the worker tells; nothing where it is only ready.
fn heard(event: &Event) -> Option<Option<Outlook>> {
    let data = event.unchecked_ref::<MessageEvent>().data();
    let of = |name: &str| js_sys::Reflect::get(&data, &name.into()).unwrap_or_default();
    match of("kind").as_string()?.as_str() {
        "ready" => None,
        "done" => Some(of("row").dyn_into::<BigInt64Array>().ok().and_then(|row| post::take_outlook(row.to_vec()))),
        _ => Some(None),
    }
}

/// The answer to a row, as `worker.js` asks for it; nothing where the row is none that can be reckoned with.
#[wasm_bindgen]
pub fn outlook(hoped: Vec<i64>, seed: u32) -> Option<Vec<i64>> {
    let hoped = post::take_hoped(hoped)?;
    Some(post::put_outlook(&fivebar_core::plan::outlook::outlook(&hoped, u64::from(seed))))
}

/// Between two turns the page is free.
fn in_turns((all, from): (Vec<Hoped>, usize), seed: u32, tell: Tell, wanted: Rc<Cell<bool>>) {
    later(Box::pin(async move {
        for (nth, hoped) in all.iter().enumerate().skip(from) {
            painted().await;
            let mut reckoning = Reckoning::begin(hoped, u64::from(seed));
            let found = loop {
                painted().await;
                if !wanted.get() {
                    return;
                }
                if let Some(found) = reckoning.turn() {
                    break found;
                }
            };
            tell(nth, Some(found));
        }
    }));
}
