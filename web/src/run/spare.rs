//! Keeps the spare beside the maker's book, and brings the book back from it where the browser threw the book away.
use super::books::posting;
use crate::app::shelf::{Names, parted};
use crate::phone::spare::{PLACES, Spare};
use crate::phone::store::{Posted, Row, Store, Trouble, Whole};

/// So many lines at once are bound rather than kept sheet by sheet.
const SHEETS_AT_ONCE: u64 = 10;

/// Keeps once more what was just written. Nothing is said to be saved before; whether it worked is said in the list of copies.
pub async fn follow(store: &Store, posted: Posted, named: bool) -> bool {
    let done = async {
        let spare = Spare::open().await?;
        let new = posted.added as u64;
        if new > PLACES.saturating_mul(SHEETS_AT_ONCE) {
            return tend_open(&spare, store, &store.whole().await.ok()?).await;
        }
        if named {
            spare.put_names(&store.people().await.ok()?).await.ok()?;
        }
        let from = posted.last.saturating_sub(new) / PLACES;
        if 0 < new {
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

/// Binds the spare anew where it does not go as far as the book, or lies in too many sheets.
pub async fn tend(store: &Store, whole: &Whole) -> bool {
    let Some(spare) = Spare::open().await else { return false };
    tend_open(&spare, store, whole).await.is_some()
}

async fn tend_open(spare: &Spare, store: &Store, whole: &Whole) -> Option<()> {
    let extent = spare.extent().await.ok()?;
    if !extent.wants_binding(whole.last()) {
        return Some(());
    }
    spare.put_names(&whole.people).await.ok()?;
    if extent.last <= whole.last() {
        return spare.bind(whole.last(), lines(whole)).await.ok();
    }
    // The book ends before the spare does: what it lost comes back, then the places are counted anew.
    let (_, more) = bring_back(spare, store).await.ok()?;
    Spare::remove().await.ok()?;
    let spare = Spare::open().await?;
    spare.put_names(&more.people).await.ok()?;
    spare.bind(more.last(), lines(&more)).await.ok()
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
    match Spare::open().await {
        Some(spare) => bring_back(&spare, store).await,
        None => Ok((0, whole)),
    }
}

async fn bring_back(spare: &Spare, store: &Store) -> Result<(usize, Whole), Trouble> {
    let held = spare.held().await.unwrap_or_default(); // a spare that can't be read is no spare
    let mut added = 0;
    if !held.lines.is_empty() || !held.names.is_empty() {
        let (entries, aside) = parted(held.lines.iter().map(String::as_str));
        added = store.append_merge(&posting(&entries, Names { kept: held.names, forgotten: vec![] }, aside)).await?.added;
    }
    Ok((added, store.whole().await?))
}
