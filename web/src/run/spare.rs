//! Keeps the spare beside the maker's book, and brings the book back from it where the browser threw the book away.
use super::books::posting;
use crate::app::shelf::{Names, parted};
use crate::phone::spare::{PLACES, Spare};
use crate::phone::store::{Posted, Row, Store, Trouble, Whole};
use fivebar_core::ledger::Book;
use fivebar_core::ledger::people::forgotten;
use fivebar_core::quantity::{Id, Listed};

/// So many lines at once are bound rather than kept sheet by sheet.
const AT_ONCE: u64 = 500;

/// What became of tending it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tended {
    /// It holds what the book holds.
    pub works: bool,
    /// So many lines the book had lost are back.
    pub back: usize,
}

/// Keeps once more what was just written, before it is said to be saved; whether it worked. Where it did not, it is to be tended.
pub async fn follow(store: &Store, posted: Posted, named: bool) -> bool {
    let done = async {
        let (spare, new) = (Spare::open().await?, posted.added as u64);
        if AT_ONCE < new {
            return None;
        }
        if named {
            spare.put_names(&store.people().await.ok()?).await.ok()?;
        }
        if 0 < new {
            // The sheet of the line before, too: another window may have kept it without its last line.
            let from = posted.last.saturating_sub(new).saturating_sub(1) / PLACES;
            put_sheets(&spare, &store.after(from.saturating_mul(PLACES)).await.ok()?).await?;
        }
        Some(())
    };
    done.await.is_some()
}

/// Rows from the beginning of a sheet on, each onto its sheet.
async fn put_sheets(spare: &Spare, rows: &[Row]) -> Option<()> {
    for sheet in rows.chunk_by(|one, next| sheet_of(one) == sheet_of(next)) {
        let (first, last) = (sheet.first()?, sheet.last()?);
        spare.put_sheet(sheet_of(first), last.seq, sheet.iter().map(|row| row.line.as_str())).await.ok()?;
    }
    Some(())
}

fn sheet_of(row: &Row) -> u64 {
    row.seq.saturating_sub(1) / PLACES
}

/// Brings the spare as far as the book goes; `again` binds it anew whatever it says of itself. What the book has lost comes back first.
pub async fn tend(store: &Store, whole: &Whole, again: bool) -> Tended {
    let mut back = 0;
    let done = async {
        let spare = Spare::open().await?;
        let extent = spare.extent().await.ok()?;
        if extent.last <= whole.last() {
            return brought_up(&spare, whole, again || extent.wants_binding(whole.last())).await;
        }
        let now = store.whole().await.ok()?; // another window may have written meanwhile
        if extent.last <= now.last() {
            return brought_up(&spare, &now, again || extent.wants_binding(now.last())).await;
        }
        if !bring_back(&spare, store, &mut back).await.ok()? {
            return None; // what is left of it stays
        }
        Spare::remove().await.ok()?; // its places are those of a book that is gone
        brought_up(&Spare::open().await?, &store.whole().await.ok()?, true).await
    };
    let works = done.await.is_some();
    Tended { works, back }
}

async fn brought_up(spare: &Spare, whole: &Whole, bind: bool) -> Option<()> {
    spare.put_names(&whole.people).await.ok()?;
    spare.put_aside(&whole.aside).await.ok()?;
    if bind { spare.bind(whole.last(), lines(whole)).await.ok() } else { Some(()) }
}

fn lines(whole: &Whole) -> impl Iterator<Item = &str> {
    whole.binding.lines().chain(whole.loose.iter().map(|row| row.line.as_str()))
}

/// The book as it was read; where the browser threw it away, as the spare has it, with how many lines came back.
///
/// # Errors
/// Why it could not be written again; the spare stays as it is.
pub async fn or_brought_back(store: &Store, whole: Whole) -> Result<(usize, Whole), Trouble> {
    if 0 < whole.last() || !whole.aside.is_empty() {
        return Ok((0, whole));
    }
    let Some(spare) = Spare::open().await else { return Ok((0, whole)) };
    let mut back = 0;
    bring_back(&spare, store, &mut back).await?;
    Ok((back, if 0 < back { store.whole().await? } else { whole }))
}

/// Joins what can be read of the spare to the book; whether all of it could be read.
async fn bring_back(spare: &Spare, store: &Store, back: &mut usize) -> Result<bool, Trouble> {
    let Ok(held) = spare.held().await else { return Ok(false) };
    let (entries, torn) = parted(held.lines.iter().map(String::as_str));
    // Who was forgotten stays forgotten.
    let gone = forgotten(&Book::of_lines(held.lines.iter().map(String::as_str)));
    let names = held.names.into_iter().filter(|(id, _)| Id::read(id).is_none_or(|id| !gone.contains(&id))).listed();
    let mut all = posting(&entries, Names { kept: names, forgotten: vec![] }, torn);
    all.aside.extend(held.aside);
    if all != Default::default() {
        *back = store.append_merge(&all).await?.added;
    }
    Ok(!held.broken)
}
