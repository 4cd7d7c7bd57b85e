//! Planning on a page where no worker can start: in slices, and called off.
#![cfg(target_arch = "wasm32")]
use fivebar_core::plan::outlook::{Hoped, Outlook, Pieces, outlook};
use fivebar_core::plan::parts::problem as parts;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::sticks::problem::{Part, Pile, Problem};
use fivebar_core::plan::unlock::{Had, Locked, Tries, Unlock, Unlocks};
use fivebar_core::plan::{Asked, Made, post};
use fivebar_web::phone::planner::{Planner, Told, While, plan};
use fivebar_web::phone::reckoner::{Reckoner, unlocks};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

const HOW: While = While { ms: 120, seed: 1 };

/// Two sticks of 1000 and a kerf of 3 give four rails of 490.
fn rails() -> Asked {
    let piles = vec![Pile { id: "0".into(), count: 2, length: 1000 }];
    let parts = vec![Part { id: "0".into(), per_set: 2, length: 490, piles: None }];
    Asked::Sticks(Problem { kerf: 3, piles, parts, ..Default::default() })
}

async fn a_moment(ms: i32) {
    let wait = js_sys::Promise::new(&mut |yes, _| {
        web_sys::window().unwrap().set_timeout_with_callback_and_timeout_and_arguments_0(&yes, ms).unwrap();
    });
    JsFuture::from(wait).await.unwrap();
}

fn begun() -> (Planner, Rc<RefCell<Vec<Told>>>) {
    let heard = Rc::<RefCell<Vec<Told>>>::default();
    let hear = heard.clone();
    (Planner::begin(rails(), HOW, move |told| hear.borrow_mut().push(told)), heard)
}

fn is_done(told: &Told) -> bool {
    matches!(told, Told::Done(answered, None) if matches!(answered.plan, Made::Sticks(_)))
}

/// This page's folder has no `worker.js`.
#[wasm_bindgen_test]
async fn without_a_worker_the_page_plans_in_slices() {
    let (_planner, heard) = begun();
    for _ in 0..100 {
        if heard.borrow().iter().any(is_done) {
            break;
        }
        a_moment(50).await;
    }
    let heard = heard.borrow();
    assert!(matches!(heard.first(), Some(Told::Better { .. })), "{heard:?}");
    assert!(heard.last().is_some_and(is_done), "{heard:?}");
}

#[wasm_bindgen_test]
async fn a_planning_that_was_called_off_tells_nothing_more() {
    let (planner, heard) = begun();
    drop(planner);
    a_moment(400).await;
    assert_eq!(*heard.borrow(), []);
}

/// What `worker.js` calls.
#[wasm_bindgen_test]
fn a_row_gives_a_row_and_nonsense_gives_none() {
    let told = Rc::<RefCell<Vec<JsValue>>>::default();
    let tell = told.clone();
    let tell = Closure::<dyn Fn(JsValue)>::new(move |row| tell.borrow_mut().push(row));
    let answer = plan(post::put(&rails()), HOW.ms, HOW.seed, tell.as_ref().unchecked_ref()).expect("a plan");
    assert!(post::take_answer(answer).is_some());
    assert!(!told.borrow().is_empty(), "it told how far it had come");
    assert_eq!(plan(vec![1, 2, 3], HOW.ms, HOW.seed, tell.as_ref().unchecked_ref()), None);
}

/// So many unsorted pieces of which each gives one leg; a set is four.
fn legs(unsorted: u32) -> Hoped {
    let piles = vec![parts::Pile { id: "0".into(), count: 1, length: 500, width: 50, thickness: 25 }];
    let part = parts::Part { id: "0".into(), per_set: 4, length: 500, width: 50, thickness: 25, glue: false, piles: None };
    let pieces = Pieces { certain: 0, unsorted, share: [9.0, 3.0], lots: 7, kin: 3 };
    Hoped { problem: parts::Problem { piles, parts: vec![part], ..Default::default() }, piles: vec![pieces], known: vec![] }
}

type Reckoned = Rc<RefCell<Vec<(usize, Option<Outlook>)>>>;

fn reckoned() -> (Reckoner, Reckoned) {
    let heard = Reckoned::default();
    let hear = heard.clone();
    (Reckoner::begin(vec![legs(12), legs(40)], 1, move |nth, found| hear.borrow_mut().push((nth, found))), heard)
}

/// In turns, each in its order, and as a worker would.
#[wasm_bindgen_test]
async fn without_a_worker_the_page_reckons_in_turns() {
    let (_reckoner, heard) = reckoned();
    for _ in 0..100 {
        if heard.borrow().len() == 2 {
            break;
        }
        a_moment(50).await;
    }
    assert_eq!(*heard.borrow(), [(0, Some(outlook(&legs(12), 1))), (1, Some(outlook(&legs(40), 1)))]);
}

#[wasm_bindgen_test]
async fn a_reckoning_that_was_called_off_tells_nothing() {
    let (reckoner, heard) = reckoned();
    drop(reckoner);
    a_moment(400).await;
    assert_eq!(*heard.borrow(), []);
}

/// Two rails of 490 are one set of each stick, and there are two sticks: a third makes a third set.
#[wasm_bindgen_test]
async fn without_a_worker_the_page_looks_for_more_in_turns() {
    let answered = rails().solve(&mut Patience::new(Some(500), &mut |_: Progress<'_>| true), 1);
    let locked = Locked { asked: rails(), answered, piles: vec![Had { each: 1, more: true }], joints_least: 0 };
    let heard = Rc::<RefCell<Vec<Option<Unlocks>>>>::default();
    let hear = heard.clone();
    let _reckoner = Reckoner::begin(vec![locked.clone()], 1, move |_, found| hear.borrow_mut().push(found));
    for _ in 0..100 {
        if !heard.borrow().is_empty() {
            break;
        }
        a_moment(50).await;
    }
    let found = Tries::begin(&locked).to_their_end();
    assert_eq!(found.all, [Unlock::Part { part: 0, n: 2, from: Some((0, 1)), own: None, all: false }]);
    assert_eq!(*heard.borrow(), [Some(found.clone())]);
    assert_eq!(unlocks(post::put_locked(&locked)).and_then(post::take_unlocks), Some(found));
    assert_eq!(unlocks(vec![1, 2]), None);
}
