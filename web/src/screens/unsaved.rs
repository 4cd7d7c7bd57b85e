//! Counts the phone would not keep: the piles with their marks hollow, why, what is safe, and what to do.

use super::count::{last_saved, name};
use super::{Screen, Seen};
use crate::app::news::Trouble as Why;
use crate::app::workshop::Tap;
use crate::app::{App, Common, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::notice::{Trouble, trouble};
use crate::parts::tile::{Look, Tile, tile};
use crate::view::{El, el};
use crate::words::en::{common, count as words, refusal};
use fivebar_core::quantity::Sorted;
use fivebar_core::quantity::{Count, Id, Listed};
use fivebar_core::sheet::count::{CountSheet, Tile as Pile};

/// The screen in place of the tiles while counts are not saved; none where what failed is no count of these piles.
pub fn screen(why: Why, sheet: &CountSheet, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let failed = app.shelf().failed_counts();
    let piles: Vec<&Pile> = sheet.tiles.iter().filter(|pile| failed.contains_key(&pile.pile)).listed();
    if piles.is_empty() {
        return None;
    }
    let saved = last_saved(app, seen);
    let top = Head::new(words::haul_of(&seen.speech.day(sheet.began)), common::pieces(sheet.pieces, &seen.speech.count(sheet.pieces)))
        .fact(Fact::Strong(saved.clone()))
        .fact(Fact::Plain(words::LAST_SAFE.into()));
    let lost = failed.values().fold(0, |sum: Count, n| sum.saturating_add(*n));
    let tiles = el("div", if piles.len() == 1 { "tiles one" } else { "tiles" }).kids(piles.iter().map(|pile| one(pile, &failed, seen)));
    let main =
        el("main", "scr").kid(tiles).kid(said(why, (&piles, lost), (sheet, &saved), seen)).kid(el("div", "push")).kid(keys(lost, seen));
    Some(Screen::new("count/unsaved", head(top), main).says_it())
}

fn one(pile: &Pile, failed: &Sorted<Id, Count>, seen: Seen<'_>) -> El<Msg> {
    let shown = Tile {
        name: name(pile),
        figure: seen.speech.count(pile.taken),
        counted: pile.taken,
        hollow: failed.get(&pile.pile).copied().unwrap_or_default(),
        look: Look::Failed,
        wide: failed.len() == 1,
        ..Tile::default()
    };
    tile(shown, seen.page, Msg::Common(Common::TryAgain)).key(pile.pile.to_string())
}

fn said(why: Why, (piles, lost): (&[&Pile], Count), (sheet, saved): (&CountSheet, &str), seen: Seen<'_>) -> El<Msg> {
    let n = seen.speech.count(lost);
    let what = match piles {
        [one] => words::not_counted_onto(&n, &name(one)),
        _ => words::not_counted(&common::pieces(lost, &n)),
    };
    let safe = words::your_pieces_saved(&common::pieces(sheet.pieces, &seen.speech.count(sheet.pieces)), saved);
    let said = refusal::not_saved(why, 1);
    trouble(Trouble { what, why: said.why, safe, to_do: said.to_do })
}

fn keys(lost: Count, seen: Seen<'_>) -> El<Msg> {
    let again = words::count_the(&seen.speech.count(lost));
    el("div", "g2").kid(key("key h88", common::KEEP_A_COPY, "", Msg::Workshop(Tap::KeepCopyNow))).kid(key(
        "key solid h88",
        common::TRY_AGAIN,
        again,
        Msg::Common(Common::TryAgain),
    ))
}
