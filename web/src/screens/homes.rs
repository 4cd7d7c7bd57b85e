//! Where a kind of cost belongs: asked once, wherever something of it is first written down.

use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{costs as words, job as job_words, jobs};
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::quantity::{Currency, Key};
use fivebar_core::sheet::costs::{home_of, is_asked};

/// A kind, as it begins a sentence.
pub fn name(kind: &Key) -> String {
    jobs::upper_first(&job_words::spending(kind.as_str()))
}

/// Where the kind belongs, until that was said; and that it counts twice where it is written down and belongs in the other home.
pub fn asked(kind: &Key, (here, currency): (Home, Currency), app: &App, says: fn(Key, Home) -> Msg) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let home = home_of(&known, currency, kind);
    let away = home.filter(|home| *home != here);
    if away.is_none() && !is_asked(&known, currency, kind) {
        return None;
    }
    let said = match away {
        Some(Home::Rate) => el("div", "").kid(caution(words::in_rate(&name(kind)))),
        Some(Home::Job) => el("div", "").kid(caution(words::on_jobs(&name(kind)))),
        None => el("p", "t14").text(words::where_home(&name(kind))),
    };
    Some(el("div", "").kid(said).kid(both(kind, away, says)))
}

/// The question as Done puts it.
pub fn put(home: El<Msg>) -> Vec<El<Msg>> {
    vec![el("p", "why").attr("role", "alert").text(words::SAY_HOME), home]
}

/// Both homes, the one that was said in ink.
fn both(kind: &Key, home: Option<Home>, says: fn(Key, Home) -> Msg) -> El<Msg> {
    let segs = vec![Seg::new(words::ON_JOBS, home == Some(Home::Job)), Seg::new(words::IN_RATE, home == Some(Home::Rate))];
    let kind = kind.clone();
    even(words::HOME, segs, move |nth| says(kind.clone(), if nth == 0 { Home::Job } else { Home::Rate }))
}
