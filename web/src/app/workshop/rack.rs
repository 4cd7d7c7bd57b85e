//! The rack, heard: what is looked for, and what is done with a pile that lies there.

mod deed;
pub mod walk;

use super::super::App;
use super::super::form::Form;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Lying, Now};
use fivebar_core::quantity::{Count, Id, Key, Length, reading};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::stock::StockPile;
use fivebar_core::sheet::stock::find::{From, Thick, Wanted};
use walk::Walk;

/// What is shown of the rack.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Page {
    #[default]
    List,
    /// A length, a thickness and a width are typed.
    Find,
    Choose(Choice),
    Pile(Lying),
    /// Something is asked of a pile.
    Ask(Lying, Ask),
    /// From pile to pile, counting what lies there.
    Walk(Walk),
    /// Boards that were bought are written down.
    Buy,
}

/// What a list of keys chooses: what is looked for, or, of bought boards, what they are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Wood,
    From,
    Order,
    BoughtWood,
    BoughtFrom,
    /// Of a pile that lies there.
    PileWood(Lying),
}

/// What can be asked of a pile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    Count,
    /// Its name and its size.
    Size,
    Apart,
    Gone,
    Place,
    Moisture,
    Take,
}

/// Where good pieces go that no job has, by their keys in the book.
pub const GONE_TO: [&str; 3] = ["burnt", "given", "jigs"];

/// The state of the rack that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rack {
    pub page: Page,
    pub wanted: Wanted,
    /// What was typed for it: a length, a thickness, a width.
    sought: [String; 3],
    /// Just so thick, not thicker.
    pub just: bool,
    /// Piles that are too short are shown too.
    pub with_shorter: bool,
    pub form: Form,
    /// A reason or a place being typed.
    pub words: String,
    pub job: Option<Id>,
    /// Where pieces go, by its place in [`GONE_TO`].
    pub to: usize,
    /// The line of the history that is opened.
    pub opened: Option<Id>,
    /// What the last count found, where that is fewer than were set apart: the pile as it was before.
    pub given_up: Option<(StockPile, Count)>,
    /// Of bought boards, or of the pile whose name and size are put right.
    pub wood: Option<Key>,
    pub from: Option<Id>,
    /// A plan asked for its page: what is done there leads back to it.
    pub for_plan: bool,
}

/// What can be said on the rack.
#[derive(Clone, Debug, PartialEq)]
pub enum RackTap {
    Show(Page),
    At(usize),
    Press(Press),
    Say(String),
    Job(Id),
    To(usize),
    /// So many, by a chip.
    Number(u32),
    Just(bool),
    Want(Wanted),
    Clear,
    Shorter(bool),
    Line(Id),
    Strike(Id),
    /// A place a pile lay at before.
    Place(String),
    Wood(Key),
    From(Option<Id>),
    Done,
    /// The side that is asked about is as it was typed, or it was meant in millimetres.
    IsSo(Length),
    /// The other way: free again, plainly wet.
    Other,
    WalkRound,
    /// As many as the page shows.
    Same,
    Fewer,
    More,
    TypeIt,
    Skip,
}

/// Takes in a tap on the rack.
pub fn heard(app: &mut App, tap: RackTap, now: Now) {
    let sign = app.speech.sign();
    if !matches!(tap, RackTap::Done | RackTap::Other | RackTap::Same) {
        app.notice = None;
    }
    let rack = &mut app.workshop.rack;
    rack.given_up = None;
    match tap {
        RackTap::Show(page) => {
            rack.show(page);
            deed::fill(app);
        }
        RackTap::At(nth) => rack.form.go(nth),
        RackTap::Press(press) => rack.form.press(press, sign),
        RackTap::Say(words) => rack.words = words,
        RackTap::Job(job) => rack.job = Some(job),
        RackTap::To(nth) => rack.to = nth,
        RackTap::Number(n) => rack.form.put(0, n.to_string()),
        RackTap::Just(just) => rack.just = just,
        RackTap::Want(wanted) => (rack.wanted, rack.page) = (wanted, Page::List),
        RackTap::Clear => {
            let order = rack.wanted.order;
            *rack = Rack { wanted: Wanted { order, ..Wanted::default() }, ..Rack::default() };
        }
        RackTap::Shorter(shown) => rack.with_shorter = shown,
        RackTap::Line(line) => rack.opened = (rack.opened != Some(line)).then_some(line),
        RackTap::Strike(line) => {
            super::strike(app, line, now);
            // one of several leaves the others open
            app.workshop.rack.opened = app.workshop.rack.opened.filter(|open| *open != line);
        }
        RackTap::Place(place) => {
            rack.words = place;
            done(app, now);
        }
        RackTap::Wood(wood) => (rack.wood, rack.page) = (Some(wood), chosen_for(&rack.page)),
        RackTap::From(from) => (rack.from, rack.page) = (from, Page::Buy),
        RackTap::Done => done(app, now),
        RackTap::IsSo(side) => {
            rack.form.is_so(side, sign);
            done(app, now);
        }
        RackTap::Other => deed::other(app, now),
        RackTap::WalkRound => walk::begin(app),
        RackTap::Same => walk::counted(app, now),
        RackTap::Fewer => walk::step(app, false, now),
        RackTap::More => walk::step(app, true, now),
        RackTap::TypeIt => walk::type_it(app),
        RackTap::Skip => walk::next(app),
    }
}

fn done(app: &mut App, now: Now) {
    match &app.workshop.rack.page {
        Page::Find => sought(app),
        Page::Ask(at, ask) => deed::done(app, (*at, *ask), now),
        Page::Walk(_) => walk::typed(app, now),
        Page::Buy => deed::bought(app, now),
        _ => {}
    }
}

/// The form that a wood is chosen for.
fn chosen_for(page: &Page) -> Page {
    if let Page::Choose(Choice::PileWood(at)) = page { Page::Ask(*at, Ask::Size) } else { Page::Buy }
}

/// What was typed is looked for; nothing typed is any.
fn sought(app: &mut App) {
    let typing = app.speech.typing(app.begins_with().1);
    let rack = &mut app.workshop.rack;
    let read = |text: &str| reading::length(text, typing);
    let mut sides = [None; 3];
    for (nth, side) in sides.iter_mut().enumerate() {
        let Some(read) = rack.form.maybe(nth, read) else { return };
        *side = read;
    }
    let [length, thickness, width] = sides;
    rack.sought = [0, 1, 2].map(|nth| rack.form.text(nth).to_owned());
    (rack.wanted.length, rack.wanted.width) = (length, width);
    rack.wanted.thickness = thickness.map(if rack.just { Thick::Just } else { Thick::AtLeast });
    (rack.page, rack.with_shorter) = (Page::List, false);
}

/// After something was taken back or put back: of a pile that is no more there is no page.
pub fn undone(app: &mut App) {
    let (Page::Pile(at) | Page::Ask(at, _)) = app.workshop.rack.page else { return };
    if fivebar_core::sheet::stock::pile(&app.shelf().shop(app.now.at), at) == Err(Refusal::NotThere) {
        app.workshop.rack.show(Page::List);
    }
}

/// Whether the page that is shown was asked for by a plan, which is behind it.
pub fn ends_at_plan(workshop: &super::Workshop) -> bool {
    workshop.asked_from.is_some() && workshop.rack.for_plan && matches!(workshop.rack.page, Page::Pile(_) | Page::Buy)
}

impl Rack {
    /// The list again; what is looked for stays.
    pub fn opened_anew(self) -> Rack {
        let Rack { wanted, sought, just, with_shorter, .. } = self;
        Rack { wanted, sought, just, with_shorter, ..Rack::default() }
    }

    /// Leaves the uppermost page of the rack; whether there was one.
    pub fn close(&mut self) -> bool {
        let back = match &self.page {
            Page::List => return false,
            Page::Ask(at, _) => Page::Pile(*at),
            Page::Choose(Choice::BoughtWood | Choice::BoughtFrom | Choice::PileWood(_)) => chosen_for(&self.page),
            Page::Walk(walk) => walk::leave(walk).map_or(Page::List, Page::Walk),
            _ => Page::List,
        };
        self.page = back;
        true
    }

    fn show(&mut self, page: Page) {
        let kept = matches!(page, Page::Choose(_));
        if !kept {
            self.form = match &page {
                Page::Find => Form::filled(self.sought.clone()),
                Page::Buy => Form::of(5),
                _ => Form::of(1),
            };
            (self.words, self.job, self.to, self.opened) = (String::new(), None, 0, None);
        }
        if page == Page::Buy {
            (self.wood, self.from) = (None, None);
        }
        self.page = page;
    }
}

/// Whether anything but the order is looked for.
pub fn is_looking(wanted: &Wanted) -> bool {
    wanted.length.is_some()
        || wanted.wood.is_some()
        || wanted.thickness.is_some()
        || wanted.width.is_some()
        || wanted.from != From::Anywhere
}

#[cfg(test)]
mod tests;
