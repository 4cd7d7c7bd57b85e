//! A count put right, over whatever place it was opened on: how many it was, and why. The old line is kept.

use super::App;
use super::form::Form;
use super::order::{Feel, Order};
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, Figures, Lying, Now, OnTheScale, StockCommand};
use fivebar_core::ledger::mended::{figures, of_pile, pieces};
use fivebar_core::ledger::{Entry, Fact, fold};
use fivebar_core::quantity::reading::{self, Typing};
use fivebar_core::quantity::{Count, Grams, Id, Key, PILE_MOST, writing};
use fivebar_core::refusal::Answer;

/// The count that is put right, and what is typed of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mending {
    pub entry: Id,
    pub form: Form,
    /// The reason: its words, or its key.
    pub words: String,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum MendTap {
    Open(Id),
    At(usize),
    Press(Press),
    Say(String),
    /// Another reason, by its key.
    Why(Key),
    Done,
    Leave,
}

/// What a reason is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    None,
    /// In the maker's words.
    Words,
    /// Why it was rejected, or where it went.
    Rejected,
    Gone,
}

impl App {
    /// A count is being put right, and still stands.
    pub fn is_mending(&self) -> bool {
        self.mending.as_ref().is_some_and(|mending| count(self, mending.entry).is_some())
    }
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: MendTap, now: Now) {
    let sign = app.speech.sign();
    app.notice = None;
    if let MendTap::Open(entry) = tap {
        app.mending = opened(app, entry).map(Box::new);
        return;
    }
    let Some(mending) = &mut app.mending else { return };
    match tap {
        MendTap::Open(_) => {}
        MendTap::At(nth) => mending.form.go(nth),
        MendTap::Press(press) => mending.form.press(press, sign),
        MendTap::Say(words) => mending.words = words,
        MendTap::Why(why) => mending.words = why.to_string(),
        MendTap::Done => done(app, now),
        MendTap::Leave => app.mending = None,
    }
}

/// The count as it stands, and the pile it is of; none once it is struck.
pub fn count(app: &App, entry: Id) -> Option<(&Entry, Lying)> {
    let (entry, _) = app.shelf().book.entry(entry).filter(|(_, struck)| !struck)?;
    let (haul, pile) = of_pile(&entry.fact)?;
    Some((entry, Lying { haul, pile }))
}

/// What the reason of a count is.
pub fn reason(fact: &Fact) -> Reason {
    match fact {
        Fact::PiecesRecounted(_) | Fact::PileCounted(_) => Reason::Words,
        Fact::PiecesRejected(_) => Reason::Rejected,
        Fact::LeftoversGone(_) => Reason::Gone,
        _ => Reason::None,
    }
}

/// How its figures are typed.
pub fn typing(app: &App, at: Lying) -> Typing {
    app.speech.typing(fold::haul(&app.shelf().book, at.haul).map_or(app.begins_with().1, |haul| haul.units))
}

/// What stands is in the form already, and is typed over.
fn opened(app: &App, id: Id) -> Option<Mending> {
    let (entry, at) = count(app, id)?;
    let why = match &entry.fact {
        Fact::PiecesRecounted(f) => f.why.clone(),
        Fact::PileCounted(f) => f.why.clone(),
        Fact::PiecesRejected(f) => Some(f.why.to_string()),
        Fact::LeftoversGone(f) => f.to.as_ref().map(ToString::to_string),
        _ => None,
    };
    let n = |n: Count| n.to_string();
    let some = |zero: bool, text: String| if zero { String::new() } else { text };
    let form = match figures(&app.shelf().book, id) {
        Some(Figures::Layers { layers, per, rest }) => Form::filled([n(layers), n(per), some(rest == 0, n(rest))]),
        Some(Figures::Weight(scale)) => {
            let typing = typing(app, at);
            let grams = |grams| writing::grams(grams, typing);
            let tare = some(scale.tare == Grams::ZERO, grams(scale.tare));
            Form::filled([n(scale.sample), grams(scale.sample_weight), grams(scale.shows), tare])
        }
        None => Form::filled([n(pieces(&entry.fact)?)]),
    };
    Some(Mending { entry: id, form, words: why.unwrap_or_default() })
}

/// What is typed: by its figures, where it has such; none while one of them is none.
pub fn typed(mending: &mut Mending, old: Figures, typing: Typing) -> Option<Answer<Figures>> {
    let form = &mut mending.form;
    let count = |text: &str| reading::count(text, typing.sign, PILE_MOST);
    let first = form.take(0, count)?;
    match old {
        Figures::Layers { .. } => {
            let per = form.take(1, count)?;
            Some(Ok(Figures::Layers { layers: first, per, rest: form.maybe(2, count)?.unwrap_or(0) }))
        }
        Figures::Weight(old) => {
            let mass = |text: &str| reading::mass(text, typing);
            let (sample_weight, shows) = (form.take(1, mass)?, form.take(2, mass)?);
            let tare = form.maybe(3, mass)?.unwrap_or_default();
            let grams = || {
                let (sample_weight, shows, tare) = (Grams::of(sample_weight)?, Grams::of(shows)?, Grams::of(tare)?);
                let scale = OnTheScale { sample: first, sample_weight, shows, tare, spread: None, singles: None };
                Ok(Figures::Weight(scale.in_place_of(old)))
            };
            Some(grams())
        }
    }
}

/// Writes it, and leads back to where it was opened; or says in place why not.
fn done(app: &mut App, now: Now) {
    let Some((id, (entry, at))) = app.mending.as_ref().and_then(|mending| Some((mending.entry, count(app, mending.entry)?))) else {
        return;
    };
    let (asked, typing, old) = (reason(&entry.fact), typing(app, at), figures(&app.shelf().book, id));
    let Some(mending) = &mut app.mending else { return };
    let command = match old {
        Some(old) => typed(mending, old, typing).map(|by| by.map(|by| StockCommand::MendBy { entry: id, by })),
        None => mending.form.take(0, |text| reading::count(text, typing.sign, PILE_MOST)).map(|n| {
            let why = Some(mending.words.trim().to_owned()).filter(|_| asked != Reason::None);
            Ok(StockCommand::Mend { entry: id, n, why })
        }),
    };
    match command {
        Some(Ok(command)) => written(app, &Command::Stock(at, command), now),
        Some(Err(refusal)) => app.refuse(refusal),
        None => {}
    }
}

fn written(app: &mut App, command: &Command, now: Now) {
    if app.order(command, now).is_some() {
        app.mending = None;
        app.orders.push(Order::Feel(Feel::Start));
    }
}

#[cfg(test)]
mod tests;
