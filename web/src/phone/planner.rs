//! Plans beside the page: in a worker with the same wasm, or in slices on the page where no worker can start.
use super::ears::Ear;
use super::{later, painted};
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::rows::ends::ShortEnd;
use fivebar_core::plan::{Answered, Asked, Figures, post};
use js_sys::{BigInt64Array, Object, Reflect};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Event, MessageEvent, Worker, WorkerOptions, WorkerType};

/// The page is never held longer than this at a time, in ms.
const SLICE: u32 = 25;

/// What is heard of a planning.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// The worth of the best plan so far, and what no plan can pass.
    Better {
        worth: Figures,
        bound: Figures,
    },
    /// The plan, and what a short end would give it.
    Done(Box<Answered>, Option<ShortEnd>),
    Failed,
}

/// The share of the time that is searched in: the second look at what is taken and handing over the plan take some too.
const SEARCHING: f64 = 0.84;

type Tell = Rc<dyn Fn(Told)>;

/// How long, and which lots are drawn.
#[derive(Clone, Copy, Debug)]
pub struct While {
    pub ms: u32,
    pub seed: u32,
}

/// A planning under way. Dropping it calls it off.
pub struct Planner {
    worker: Option<Worker>,
    _ears: Vec<Ear>,
    wanted: Rc<Cell<bool>>,
}

impl Drop for Planner {
    fn drop(&mut self) {
        self.wanted.set(false);
        self.worker.iter().for_each(Worker::terminate);
    }
}

impl Planner {
    /// Begins to plan; `tell` hears of each better plan, and of the end.
    pub fn begin(asked: Asked, how: While, tell: impl Fn(Told) + 'static) -> Planner {
        let (tell, wanted): (Tell, _) = (Rc::new(tell), Rc::new(Cell::new(true)));
        let Some(worker) = worker() else {
            in_slices(asked, how, tell, wanted.clone());
            return Planner { worker: None, _ears: vec![], wanted };
        };
        let row = post::put(&asked);
        let ears = listen(&worker, tell, Spare { asked, how, wanted: wanted.clone() });
        let _ = worker.post_message(&message("asked", &row, &[("ms", how.ms), ("seed", how.seed)]));
        Planner { worker: Some(worker), _ears: ears, wanted }
    }
}

/// What is needed to plan on the page, should the worker not start.
struct Spare {
    asked: Asked,
    how: While,
    wanted: Rc<Cell<bool>>,
}

pub(super) fn worker() -> Option<Worker> {
    let there = super::has(&js_sys::global(), "Worker");
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    there.then(|| Worker::new_with_options("./worker.js", &options).ok()).flatten()
}

pub(super) fn message(what: &str, row: &[i64], figures: &[(&str, u32)]) -> Object {
    let message = Object::new();
    let _ = Reflect::set(&message, &what.into(), &BigInt64Array::from(row));
    for (name, figure) in figures {
        let _ = Reflect::set(&message, &(*name).into(), &JsValue::from(*figure));
    }
    message
}

/// A worker that never said it is ready could not start, and the page plans in its place; one that was has failed.
fn listen(worker: &Worker, tell: Tell, spare: Spare) -> Vec<Ear> {
    let (ready, spare) = (Rc::new(Cell::new(false)), Rc::new(Cell::new(Some(spare))));
    let (began, told) = (ready.clone(), tell.clone());
    let failed = Rc::new(move || match (ready.get(), spare.take()) {
        (false, Some(Spare { asked, how, wanted })) => in_slices(asked, how, tell.clone(), wanted),
        _ => tell(Told::Failed),
    });
    let failing = failed.clone();
    let message = Ear::new(worker, "message", move |event| match heard(&event) {
        Some(Told::Failed) => failing(),
        Some(news) => told(news),
        None => began.set(true),
    });
    let error = Ear::new(worker, "error", move |event| {
        event.prevent_default();
        failed();
    });
    vec![message, error]
}

/// What the worker tells; nothing where it is only ready.
fn heard(event: &Event) -> Option<Told> {
    let data = event.unchecked_ref::<MessageEvent>().data();
    let of = |name: &str| Reflect::get(&data, &name.into()).unwrap_or_default();
    let row = |name| of(name).dyn_into::<BigInt64Array>().ok().map(|row| row.to_vec());
    let told = match of("kind").as_string()?.as_str() {
        "ready" => return None,
        "progress" => row("row").and_then(post::take_progress).map(|[worth, bound]| Told::Better { worth, bound }),
        "done" => row("row").and_then(post::take_answer).map(|answered| Told::Done(Box::new(answered), row("end").and_then(end))),
        _ => None,
    };
    Some(told.unwrap_or(Told::Failed))
}

/// The plan of a row, as `worker.js` asks for it; nothing where the row is no problem that can be planned with. `told` hears of each better plan.
#[wasm_bindgen]
pub fn plan(asked: Vec<i64>, ms: u32, seed: u32, told: &js_sys::Function) -> Option<Vec<i64>> {
    let asked = post::take(asked).filter(|asked| asked.check().is_ok())?;
    let answered = timed(&asked, While { ms, seed }, |progress| {
        let row = post::put_progress(progress.worth, progress.bound);
        let _ = told.call1(&JsValue::UNDEFINED, &BigInt64Array::from(&row[..]));
    });
    Some(post::put_answer(&answered))
}

/// What a short end would give such an answer, as `worker.js` asks for it behind each: end, rows, strips; nothing where there is none.
#[wasm_bindgen]
pub fn short_end(asked: Vec<i64>, answer: Vec<i64>) -> Option<Vec<i64>> {
    let found = post::take(asked)?.short_end(&post::take_answer(answer)?)?;
    Some(vec![found.end, found.rows, found.strips])
}

fn end(row: Vec<i64>) -> Option<ShortEnd> {
    let [end, rows, strips] = row.try_into().ok()?;
    Some(ShortEnd { end, rows, strips })
}

/// Plans for so long; `news` hears what differs from what was heard last.
fn timed(asked: &Asked, how: While, mut news: impl FnMut(Progress<'_>)) -> Answered {
    let began = clock();
    let mut last: [Figures; 2] = Default::default();
    let mut goes_on = |progress: Progress<'_>| {
        if last[0] != progress.worth || last[1] != progress.bound {
            last = [progress.worth.to_vec(), progress.bound.to_vec()];
            news(progress);
        }
        // What is left of the time is the second look's.
        clock() - began < f64::from(how.ms) * if progress.again { 1.0 } else { SEARCHING }
    };
    asked.solve(&mut Patience::new(None, &mut goes_on), u64::from(how.seed))
}

/// Milliseconds of a clock that nobody sets, on a page and in a worker.
fn clock() -> f64 {
    let performance = Reflect::get(&js_sys::global(), &"performance".into()).unwrap_or_default();
    performance.dyn_ref::<web_sys::Performance>().map_or_else(js_sys::Date::now, web_sys::Performance::now)
}

/// Each slice plans anew with other lots: the best plan stays, and the sharpest bound; between two the page is free.
fn in_slices(asked: Asked, how: While, tell: Tell, wanted: Rc<Cell<bool>>) {
    later(Box::pin(async move {
        let mut best: Option<Answered> = None;
        for nth in 0..how.ms.div_ceil(SLICE) {
            painted().await;
            if !wanted.get() {
                return;
            }
            let slice = timed(&asked, While { ms: SLICE, seed: how.seed.wrapping_add(nth) }, |_| ());
            let before = best.as_ref().map(|best| (best.worth.clone(), best.bound.clone()));
            let both = match best.take() {
                Some(best) => best.or_better(slice, asked.senses()),
                None => slice,
            };
            if before.is_none_or(|before| before != (both.worth.clone(), both.bound.clone())) {
                tell(Told::Better { worth: both.worth.clone(), bound: both.bound.clone() });
            }
            best = Some(both);
            if best.as_ref().is_some_and(Answered::is_proven) {
                break;
            }
        }
        painted().await;
        let done = |best: Answered| {
            let short = asked.short_end(&best);
            Told::Done(Box::new(best), short)
        };
        if wanted.get() {
            tell(best.map_or(Told::Failed, done));
        }
    }));
}
