//! What takes a while is reckoned beside the page: in a worker with the same wasm, or in turns on the page where none can start.
use super::ears::Ear;
use super::planner::{message, worker};
use super::{later, painted};
use fivebar_core::plan::outlook::{Hoped, Outlook, Reckoning};
use fivebar_core::plan::post;
use fivebar_core::plan::unlock::{Locked, Tries, Unlocks};
use js_sys::BigInt64Array;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Event, MessageEvent, Worker};

/// What is reckoned a turn at a time, and how it travels.
pub trait Asks: 'static {
    type Found: 'static;
    type Turns: 'static;
    /// Under this `worker.js` hears of it.
    const NAME: &'static str;
    fn row(&self) -> Vec<i64>;
    fn found(row: Vec<i64>) -> Option<Self::Found>;
    fn begin(&self, seed: u32) -> Self::Turns;
    fn turn(turns: &mut Self::Turns) -> Option<Self::Found>;
}

/// How many sets unsorted wood gives.
impl Asks for Hoped {
    type Found = Outlook;
    type Turns = Reckoning;
    const NAME: &'static str = "hoped";
    fn row(&self) -> Vec<i64> {
        post::put_hoped(self)
    }
    fn found(row: Vec<i64>) -> Option<Outlook> {
        post::take_outlook(row)
    }
    fn begin(&self, seed: u32) -> Reckoning {
        Reckoning::begin(self, u64::from(seed))
    }
    fn turn(turns: &mut Reckoning) -> Option<Outlook> {
        turns.turn()
    }
}

/// What would give more than a plan.
impl Asks for Locked {
    type Found = Unlocks;
    type Turns = Tries;
    const NAME: &'static str = "locked";
    fn row(&self) -> Vec<i64> {
        post::put_locked(self)
    }
    fn found(row: Vec<i64>) -> Option<Unlocks> {
        post::take_unlocks(row)
    }
    fn begin(&self, _seed: u32) -> Tries {
        Tries::begin(self)
    }
    fn turn(turns: &mut Tries) -> Option<Unlocks> {
        turns.turn()
    }
}

/// What came of one of them, by its place; nothing where it failed.
type Tell<Found> = Rc<dyn Fn(usize, Option<Found>)>;

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
    pub fn begin<A: Asks>(all: Vec<A>, seed: u32, tell: impl Fn(usize, Option<A::Found>) + 'static) -> Reckoner {
        let (tell, wanted): (Tell<A::Found>, _) = (Rc::new(tell), Rc::new(Cell::new(true)));
        let Some(worker) = worker() else {
            in_turns((all, 0), seed, tell, wanted.clone());
            return Reckoner { worker: None, _ears: vec![], wanted };
        };
        for asks in &all {
            let _ = worker.post_message(&message(A::NAME, &asks.row(), &[("seed", seed)]));
        }
        let ears = listen(&worker, tell, (all, seed), wanted.clone());
        Reckoner { worker: Some(worker), _ears: ears, wanted }
    }
}

/// The worker answers in the order in which it was asked. Should it fail, the page goes on where it stopped.
fn listen<A: Asks>(worker: &Worker, tell: Tell<A::Found>, (all, seed): (Vec<A>, u32), wanted: Rc<Cell<bool>>) -> Vec<Ear> {
    let next = Rc::new(Cell::new(0));
    let (spare, told, at) = (Cell::new(Some(all)), tell.clone(), next.clone());
    let heard = Ear::new(worker, "message", move |event| {
        if let Some(found) = heard::<A>(&event) {
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
fn heard<A: Asks>(event: &Event) -> Option<Option<A::Found>> {
    let data = event.unchecked_ref::<MessageEvent>().data();
    let of = |name: &str| js_sys::Reflect::get(&data, &name.into()).unwrap_or_default();
    match of("kind").as_string()?.as_str() {
        "ready" => None,
        "done" => Some(of("row").dyn_into::<BigInt64Array>().ok().and_then(|row| A::found(row.to_vec()))),
        _ => Some(None),
    }
}

/// The answer to a row, as `worker.js` asks for it; nothing where the row is none that can be reckoned with.
#[wasm_bindgen]
pub fn outlook(hoped: Vec<i64>, seed: u32) -> Option<Vec<i64>> {
    let hoped = post::take_hoped(hoped)?;
    Some(post::put_outlook(&fivebar_core::plan::outlook::outlook(&hoped, u64::from(seed))))
}

/// What would give more than the plan of a row, as `worker.js` asks for it; nothing where the row is none that can be tried with.
#[wasm_bindgen]
pub fn unlocks(locked: Vec<i64>) -> Option<Vec<i64>> {
    let locked = post::take_locked(locked)?;
    Some(post::put_unlocks(&Tries::begin(&locked).to_their_end()))
}

/// Between two turns the page is free.
fn in_turns<A: Asks>((all, from): (Vec<A>, usize), seed: u32, tell: Tell<A::Found>, wanted: Rc<Cell<bool>>) {
    later(Box::pin(async move {
        for (nth, asks) in all.iter().enumerate().skip(from) {
            painted().await;
            let mut turns = asks.begin(seed);
            let found = loop {
                painted().await;
                if !wanted.get() {
                    return;
                }
                if let Some(found) = A::turn(&mut turns) {
                    break found;
                }
            };
            tell(nth, Some(found));
        }
    }));
}
