//! What a plan lacks, and the key that has it looked for at the next yard.

use super::super::sought::piece;
use super::super::{Seen, undo};
use super::say;
use crate::app::plan::Tap;
use crate::app::sought::{is_same, of_plan};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::El;
use crate::words::en::sought as words;
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::kind::stock::SoughtPiece;
use fivebar_core::quantity::{Listed, Units};

/// Nothing where nothing is short. What is looked for already is said, with the way to have it looked for no more.
pub fn keys(units: Units, ended: bool, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let Some((lacks, there)) = of_plan(app).filter(|_| !ended) else { return vec![] };
    let told = |pieces: &[SoughtPiece], any| listed(pieces, any, units, (app, seen));
    let look = |said| key("key soft h56 wide no-print", said, told(&lacks.pieces, lacks.any == Some(true)), say(Tap::LookFor));
    let Some(there) = there else { return vec![look(words::LOOK_FOR_IT)] };
    let stands = format!("{} {}.", words::LOOKED_FOR, told(&there.pieces, there.any));
    let instead = (!is_same(&lacks, &there)).then(|| look(words::LOOK_FOR_THIS));
    let off = key("key h56 wide no-print", words::LOOK_NO_MORE, "", say(Tap::LookNoMore(there.id)));
    vec![worded("p", "w7", stands)].into_iter().chain(instead).chain([off]).collect()
}

/// The way back from having it looked for, or no more, as long as that was the last thing done.
pub fn undo_bar(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shelf = app.shelf();
    let act = shelf.to_put_back().or(shelf.last_act).and_then(|act| shelf.book.entry(act))?;
    matches!(act.0.fact, Fact::PiecesSought(_)).then(|| undo::bar(app, seen)).flatten()
}

fn listed(pieces: &[SoughtPiece], any: bool, units: Units, seen: (&App, Seen<'_>)) -> String {
    words::listed(&pieces.iter().map(|it| piece((it, it.n), units, seen)).listed(), any)
}
