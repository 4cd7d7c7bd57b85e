//! Woods and air, machines, the van and the timber yard, heard: each page asks its few figures on the pad.

mod fill;
mod keyed;
mod read;
mod save;
mod saw;

pub use fill::{measure_of, weight_of};
pub use keyed::MACHINES;
pub use read::{Across, Wrong, across, readings};

use super::super::App;
use super::super::entry::Typed;
use super::super::form::Form;
use super::Over;
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, Now, WoodCommand};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::Measure;
use fivebar_core::ledger::kind::wood::{MachineMinimumSet, SpeciesAdded};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Decimal, Key, Length};
use fivebar_core::wood::movement::Sawn;
use std::rc::Rc;

/// Which page.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Page {
    #[default]
    Woods,
    Air,
    Movement,
    Gluing,
    Own,
    /// A wood of the maker's own: one that is corrected, or a new one.
    OneWood(Option<Key>),
    Machines,
    /// A machine that is corrected, or a new one.
    Machine(Option<Key>),
    /// The figures of the saw.
    Saw,
    Van,
    Yard,
    /// The way to the timber yard and back.
    Way,
    /// What boards of a wood cost; of any wood without one.
    Price(Option<Key>),
    /// The same of a wood that is yet to be chosen.
    PriceOf,
}

/// What is said on a page, none of it written yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Wood {
    pub page: Page,
    pub form: Form,
    /// The figures as they were when the page was opened.
    pub began: Vec<Typed>,
    /// A name, or where air was read, and where figures are from, as they are typed.
    pub name: String,
    pub from: String,
    /// The wood or the machine chosen.
    pub chosen: Option<Key>,
    /// The list of woods is open.
    pub choosing: bool,
    /// In it, woods the maker never had are shown too.
    pub others: bool,
    pub sawn: Sawn,
    pub per: Measure,
    /// Readings to be glued together, as typed.
    pub glued: Vec<String>,
    /// Nothing was changed since it was written.
    pub fresh: bool,
    /// A figure was typed since the page was opened.
    pub typed: bool,
}

/// What can be said on these pages.
#[derive(Clone, Debug, PartialEq)]
pub enum WoodTap {
    Open(Page),
    At(usize),
    Press(Press),
    /// Opens the list of woods, or closes it.
    List,
    /// Shows the woods the maker never had, too.
    Others,
    Choose(Option<Key>),
    Sawn(Sawn),
    Per(Measure),
    Name(String),
    From(String),
    /// Takes a reading out again.
    Drop(usize),
    /// The machine is in no use any more, or the wood is none of the maker's.
    Remove,
    /// The side that is asked about is as it was typed, or it was meant in millimetres.
    IsSo(Length),
    Save,
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: WoodTap, now: Now) {
    match tap {
        WoodTap::Open(page) => {
            let from = app.place;
            if from != Place::Workshop {
                app.go(Place::Workshop);
            }
            open(app, page);
            if from != Place::Workshop {
                app.workshop.asked_from = Some(from);
            }
        }
        WoodTap::Save => save::save(app, now),
        WoodTap::Remove => remove(app, now),
        WoodTap::IsSo(side) => {
            let sign = app.speech.sign();
            if let Over::Wood(wood) = &mut app.workshop.over {
                wood.form.is_so(side, sign);
            }
            save::save(app, now);
        }
        said => {
            let sign = app.speech.sign();
            app.notice = None;
            let (known, currency, typing) = (known(app), app.begins_with().0, app.speech.typing(app.begins_with().1));
            if let Over::Wood(wood) = &mut app.workshop.over {
                let chooses = matches!(said, WoodTap::Choose(_));
                wood.say(said, sign);
                if chooses {
                    fill::chosen_price(wood, &known, (currency, typing));
                }
            }
        }
    }
}

impl Wood {
    fn of(page: Page, form: Form) -> Wood {
        let (name, from, glued) = (String::new(), String::new(), vec![]);
        Wood {
            page,
            began: form.slots.clone(),
            form,
            name,
            from,
            chosen: None,
            choosing: false,
            others: false,
            sawn: Sawn::Flat,
            per: Measure::Litre,
            glued,
            fresh: false,
            typed: false,
        }
    }

    /// A figure is other than it was when the page was opened.
    fn is_corrected(&self, nth: usize) -> bool {
        self.began.get(nth).is_none_or(|began| began.text != self.form.text(nth))
    }

    /// What is known stands as it was: there is nothing to write.
    fn is_as_it_was(&self) -> bool {
        let known = self.began.iter().any(|began| !began.text.is_empty());
        known && !(0..self.began.len()).any(|nth| self.is_corrected(nth))
    }

    fn say(&mut self, tap: WoodTap, sign: Sign) {
        self.fresh = false;
        match tap {
            WoodTap::At(at) => self.form.go(at),
            WoodTap::Press(press) => {
                self.typed = true;
                self.form.press(press, sign);
            }
            WoodTap::List => (self.choosing, self.others) = (!self.choosing, false),
            WoodTap::Others => self.others = true,
            WoodTap::Choose(key) => (self.chosen, self.choosing) = (key, false),
            WoodTap::Sawn(sawn) => self.sawn = sawn,
            WoodTap::Per(per) => self.per = per,
            WoodTap::Name(name) => self.name = name,
            WoodTap::From(from) => self.from = from,
            WoodTap::Drop(nth) if nth < self.glued.len() => drop(self.glued.remove(nth)),
            _ => {}
        }
    }
}

/// What the workshop knows.
pub fn known(app: &App) -> Rc<Workshop> {
    app.shelf().workshop()
}

/// Opens a page, with the figures that are known typed in already.
pub fn open(app: &mut App, page: Page) {
    app.notice = None;
    app.workshop.over = Over::Wood(Box::new(fill::filled(app, page)));
}

/// Something was taken back, or put back: the van's page shows what stands now.
pub(crate) fn undone(app: &mut App) {
    if let Over::Wood(wood) = &app.workshop.over
        && wood.fresh
        && wood.page == Page::Van
    {
        app.workshop.over = Over::Wood(Box::new(Wood { fresh: true, ..fill::filled(app, Page::Van) }));
    }
}

/// Leaves a page.
pub(super) fn back(app: &mut App) {
    let Over::Wood(wood) = &app.workshop.over else { return };
    match wood.page {
        Page::Air | Page::Movement | Page::Gluing | Page::Own => open(app, Page::Woods),
        Page::OneWood(_) => open(app, Page::Own),
        // A plan asked for them, and is behind them.
        Page::Saw if app.workshop.asked_from.is_some() => (app.workshop.over, app.notice) = (Over::Nothing, None),
        Page::Machine(_) | Page::Saw => open(app, Page::Machines),
        Page::Way | Page::Price(_) | Page::PriceOf => open(app, Page::Yard),
        _ => (app.workshop.over, app.notice) = (Over::Nothing, None),
    }
}

/// A machine with nothing asked of it is in the list no more.
fn remove(app: &mut App, now: Now) {
    let Over::Wood(wood) = &app.workshop.over else { return };
    if let Page::OneWood(Some(key)) = &wood.page {
        let key = key.clone();
        return wood_gone(app, key, now);
    }
    let Page::Machine(Some(machine)) = &wood.page else { return };
    let gone = MachineMinimumSet { machine: machine.clone(), thickness: None, width: None, length: None, name: None };
    if app.order(&Command::Wood(WoodCommand::SetMachine(gone)), now).is_some() {
        open(app, Page::Machines);
    }
}

/// A wood of the maker's that nothing is of.
fn wood_gone(app: &mut App, key: Key, now: Now) {
    let Some(name) = known(app).wood.woods.own_of(&key).map(|own| own.name.clone()) else { return };
    let gone = SpeciesAdded { key, name, density: Exact(Decimal::ZERO), radial: None, tangential: None, from: None, gone: Some(true) };
    if app.order(&Command::Wood(WoodCommand::AddSpecies(gone)), now).is_some() {
        open(app, Page::Own);
    }
}

#[cfg(test)]
mod tests;
