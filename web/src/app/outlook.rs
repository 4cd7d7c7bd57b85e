//! How many of a job or a design the wood gives: asked for where it shows, once the page is painted, and again when the book has changed.

use super::order::{Order, Which};
use super::plan::makes::makes;
use super::workshop::Over;
use super::{App, jobs::Room};
use crate::parts::Place;
use fivebar_core::ledger::stamp::Stamp;
use fivebar_core::plan::outlook::{Hoped, Outlook};
use fivebar_core::quantity::{Id, Listed, Sorted};
use fivebar_core::sheet::make::WhyNot;
use fivebar_core::sheet::outlook::{Made, Wood, of_designs, of_job};

/// How it stands with one of them.
#[derive(Clone, Debug, PartialEq)]
pub enum Stand {
    /// Nothing can be reckoned.
    None(WhyNot),
    UnderWay,
    Failed,
    /// `parts` by their places.
    Found {
        outlook: Outlook,
        sorted: bool,
        parts: Vec<String>,
    },
}

/// What is asked for: of which book as it stood, of which job or designs, and what is known of it.
type Asked = (Which, (usize, Option<Stamp>), Vec<Id>, Option<Made>);

#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outlooks {
    asked: Option<Asked>,
    stands: Sorted<Id, Stand>,
    /// The woods that are being reckoned, for the names of their parts.
    woods: Sorted<Id, Wood>,
    /// How it was reckoned is shown.
    pub told_how: bool,
}

impl Outlooks {
    /// How it stands with a job or a design.
    pub fn of(&self, id: Id) -> Option<&Stand> {
        self.stands.get(&id)
    }

    /// What came of one; nothing is taken in that was not asked for.
    pub fn take_in(&mut self, of: Id, found: Option<Outlook>) {
        let Some(wood) = self.woods.remove(&of) else { return };
        let (sorted, parts) = (wood.is_sorted(), wood.parts);
        self.stands.insert(of, found.map_or(Stand::Failed, |outlook| Stand::Found { outlook, sorted, parts }));
    }
}

/// The job or the designs whose outlook the page shows.
fn shown(app: &App) -> Vec<Id> {
    match (app.place, &app.workshop.over) {
        (Place::Jobs, _) if app.jobs.room == Some(Room::Wood) && app.jobs.draft.is_none() => app.jobs.open.into_iter().listed(),
        (Place::Workshop, Over::Designs) => app.shelf().workshop().designs.iter().map(|design| design.id).listed(),
        _ => vec![],
    }
}

/// After every tap: where the page shows what was not asked for, or the book is another, it is asked for once the page is painted.
pub fn follow(app: &mut App) {
    let ids = shown(app);
    if ids.is_empty() {
        return;
    }
    let known = ids.first().filter(|_| app.place == Place::Jobs).and_then(|job| makes(app, *job));
    let asked = (app.which, (app.shelf().book.len(), app.shelf().book.last_stamp()), ids, known);
    if app.outlooks.asked.as_ref() == Some(&asked) {
        return;
    }
    app.outlooks.asked = Some(asked);
    app.orders.push(Order::Painted);
}

/// The page is painted: the woods are looked at, and reckoned beside it.
pub fn begin(app: &mut App) {
    let Some((_, _, ids, known)) = app.outlooks.asked.clone().filter(|(which, ..)| *which == app.which) else { return };
    let shop = app.shelf().shop(app.now.at);
    let designs: Vec<_> = shop.workshop.designs.iter().filter(|design| ids.contains(&design.id)).cloned().listed();
    let woods: Vec<(Id, Result<Wood, WhyNot>)> = if designs.is_empty() {
        let going_on = |id: &Id| shop.job(*id).is_ok_and(|job| job.ended.is_none() && !job.parts.is_empty());
        ids.iter().filter(|id| going_on(id)).map(|id| (*id, of_job(&shop, *id))).listed()
    } else {
        designs.iter().map(|design| design.id).zip(of_designs(&shop, &designs, app.begins_with())).listed()
    };
    let outlooks = &mut app.outlooks;
    outlooks.woods.clear();
    outlooks.stands.retain(|id, _| ids.contains(id));
    let mut all: Vec<(Id, Hoped)> = vec![];
    for (id, wood) in woods {
        match wood {
            Ok(wood) => {
                let wood = known.iter().fold(wood, Wood::knows);
                all.push((id, wood.hoped.clone()));
                outlooks.woods.insert(id, wood);
                outlooks.stands.insert(id, Stand::UnderWay);
            }
            Err(why) => drop(outlooks.stands.insert(id, Stand::None(why))),
        }
    }
    app.orders.push(Order::Reckon(all));
}

#[cfg(test)]
mod tests;
