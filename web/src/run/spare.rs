//! Keeps the spare beside the maker's book, and brings the book back from it where the browser threw the book away.
use super::books::posting;
use crate::app::shelf::{Names, parted};
use crate::phone::spare::{AT_ONCE, Held, PLACES, Spare};
use crate::phone::store::{Posted, Posting, Row, Store, Trouble, Whole};
use fivebar_core::ledger::Book;
use fivebar_core::ledger::people::forgotten;
use fivebar_core::quantity::{Id, Listed};
use std::collections::HashSet;

/// What became of tending it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tended {
    /// It holds what the book holds.
    pub works: bool,
    pub brought: Brought,
}

/// What came back into the book.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Brought {
    pub lines: usize,
    /// Lines, names or what was set aside: the book is to be read again.
    pub any: bool,
    /// Something of the spare could not be read; it may be another day.
    is_broken: bool,
    is_late: bool,
}

/// Keeps once more what was just written, before it is said to be saved; whether it worked. Where it did not, it is to be tended.
pub async fn follow(store: &Store, posted: Posted, named: bool) -> bool {
    let done = async {
        let (spare, new) = (Spare::open().await?, posted.added as u64);
        if AT_ONCE < new {
            return None;
        }
        if named {
            put_names(&spare, store).await?;
        }
        if 0 < new {
            // The sheet of the line before, too: another window may have kept it without its last line.
            put_sheets(&spare, store, posted.last.saturating_sub(new)).await?;
        }
        Some(())
    };
    done.await.is_some()
}

/// The sheet on which the place `from` stands, and all that come after.
async fn put_sheets(spare: &Spare, store: &Store, from: u64) -> Option<()> {
    let rows = store.after(from.saturating_sub(1) / PLACES * PLACES).await.ok()?;
    for sheet in rows.chunk_by(|one, next| sheet_of(one) == sheet_of(next)) {
        let (first, last) = (sheet.first()?, sheet.last()?);
        spare.put_sheet(sheet_of(first), last.seq, sheet.iter().map(|row| row.line.as_str())).await.ok()?;
    }
    Some(())
}

fn sheet_of(row: &Row) -> u64 {
    row.seq.saturating_sub(1) / PLACES
}

/// Brings the spare as far as the book goes; `again` binds it anew whatever it says of itself. What only the spare has comes back first, and
/// nothing of it is let go of before that.
pub async fn tend(store: &Store, whole: &Whole, again: bool) -> Tended {
    let mut brought = Brought::default();
    let done = async {
        let spare = Spare::open().await?;
        let extent = spare.extent().await.ok()?;
        let beside = spare.beside().await.ok()?;
        let has_all = holds(whole, &extent.tail) && lacking(whole, beside) == Posting::default();
        if !again && !extent.wants_binding(whole.last()) && has_all {
            put_beside(&spare, store, whole).await?;
            return if extent.last < whole.last() { put_sheets(&spare, store, extent.last).await } else { Some(()) };
        }
        brought = bring_back(&spare, store, whole).await.ok()?;
        let now = store.whole().await.ok()?;
        match (now.last() < extent.last, brought.is_broken) {
            _ if brought.is_late => None, // nothing of it is written over before it was read
            (true, true) => {
                put_names(&spare, store).await?;
                None // what is left of its lines stays
            }
            (true, false) => {
                Spare::remove().await.ok()?; // its places are those of a book that is gone
                bind(&Spare::open().await?, store, &now).await
            }
            (false, _) => bind(&spare, store, &now).await,
        }
    };
    let works = done.await.is_some();
    Tended { works, brought }
}

/// Whether the last lines of a book are these, among others.
fn holds(whole: &Whole, tail: &[String]) -> bool {
    let all = lines(whole).listed();
    let recent: HashSet<&str> = all.into_iter().rev().take(tail.len().saturating_mul(4)).collect();
    tail.iter().all(|line| recent.contains(line.as_str()))
}

async fn bind(spare: &Spare, store: &Store, whole: &Whole) -> Option<()> {
    put_beside(spare, store, whole).await?;
    spare.bind(whole.last(), lines(whole)).await.ok()?;
    put_sheets(spare, store, whole.last()).await
}

async fn put_beside(spare: &Spare, store: &Store, whole: &Whole) -> Option<()> {
    put_names(spare, store).await?;
    spare.put_aside(&whole.aside).await.ok()
}

/// The names as they are at this moment: somebody may have been forgotten since the book was read.
async fn put_names(spare: &Spare, store: &Store) -> Option<()> {
    spare.put_names(&store.people().await.ok()?).await.ok()
}

/// The names alone, where the rest of it does not work or was not read yet: who is forgotten is in no spare, and nobody else goes.
pub async fn follow_names(store: &Store, forgotten: &[String]) {
    let joined = async {
        let spare = Spare::open().await?;
        let mut names = spare.beside().await.ok()?.names;
        let here = store.people().await.ok()?;
        names.retain(|(id, _)| !forgotten.contains(id) && here.iter().all(|(known, _)| known != id));
        names.extend(here);
        spare.put_names(&names).await.ok()
    };
    let _ = joined.await; // it is tended when the page comes back into sight
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
    let Brought { lines, any, .. } = bring_back(&spare, store, &whole).await?;
    Ok((lines, if any { store.whole().await? } else { whole }))
}

/// Joins to the book what it lacks of what can be read of the spare.
async fn bring_back(spare: &Spare, store: &Store, whole: &Whole) -> Result<Brought, Trouble> {
    let held = spare.held().await.unwrap_or(Held { broken: true, late: true, ..Held::default() });
    let unread = Brought { is_broken: held.broken, is_late: held.late, ..Brought::default() };
    let lacking = lacking(whole, held);
    if lacking == Posting::default() {
        return Ok(unread);
    }
    let lines = store.append_merge(&lacking).await?.added;
    Ok(Brought { lines, any: true, ..unread })
}

/// What a book lacks of the spare. Of one person what is in the book stays, and who was forgotten, as either has it, is forgotten in both.
fn lacking(whole: &Whole, held: Held) -> Posting {
    // Most often nothing but what lies beside the lines is asked about.
    let here: HashSet<&str> = if held.lines.is_empty() { HashSet::new() } else { lines(whole).collect() };
    let aside: HashSet<&str> = whole.aside.iter().map(|aside| aside.line.as_str()).collect();
    let new = held.lines.iter().map(String::as_str).filter(|line| !here.contains(line) && !aside.contains(line)).listed();
    let mut names = held.names;
    names.retain(|(id, _)| whole.people.iter().all(|(known, _)| known != id));
    let mut gone = vec![];
    if !names.is_empty() || !new.is_empty() {
        let forgotten = forgotten(&Book::of_lines(lines(whole).chain(new.iter().copied())));
        let is_gone = |id: &String| Id::read(id).is_some_and(|id| forgotten.contains(&id));
        names.retain(|(id, _)| !is_gone(id));
        gone.extend(whole.people.iter().map(|(id, _)| id.clone()).filter(is_gone));
    }
    let (entries, torn) = parted(new.into_iter());
    let mut all = posting(&entries, Names { kept: names, forgotten: gone }, torn);
    all.aside.extend(held.aside.into_iter().filter(|it| !aside.contains(it.line.as_str())));
    all
}
