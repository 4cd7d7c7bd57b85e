//! The spare of the maker's book: who tends it, in turn.

use super::Books;
use crate::app::news::News;
use crate::app::order::Which;
use crate::app::shelf::Names;
use crate::phone::later;
use crate::phone::spare::Spare;
use crate::phone::store::{self, Store};
use crate::phone::turns::{Turn, Turns};
use crate::run::{Run, spare, with};
use std::cell::Cell;
use std::rc::Weak;

/// What this page knows of the spare.
#[derive(Default)]
pub(super) struct Beside {
    /// It holds what the book holds.
    works: Cell<bool>,
    /// It was tried, and is not tried again before the page comes back into sight.
    pub(super) failed: Cell<bool>,
    /// Somebody waits to tend it already.
    waits: Cell<bool>,
    turns: Turns,
}

impl Books {
    /// Tells whether the spare works, and what it brought back.
    pub(super) fn tended(&self, spare::Tended { works, brought }: spare::Tended) {
        self.spare.works.set(works);
        self.spare.failed.set(!works);
        with(&self.me, |run| {
            let said = !run.app.borrow().here.no_spare;
            if said != works {
                run.told(News::Spare(works));
            }
        });
        if brought.any {
            self.own.last.set(0);
            self.catch_up_all(Which::Own);
            self.catch_up_names(Which::Own);
        }
        if 0 < brought.lines {
            with(&self.me, |run| run.told(News::BroughtBack(brought.lines)));
        }
    }

    /// Brings the spare as far as the maker's book goes; `again` binds it anew.
    pub(super) fn tend(&self, which: Which, again: bool) {
        if which == Which::Example || self.spare.waits.replace(true) {
            return;
        }
        let (book, me) = (self.own.clone(), self.me.clone());
        later(Box::pin(async move {
            let turn = turn(&me).await;
            with(&me, |run| run.books.spare.waits.set(false));
            if Spare::open().await.is_none() {
                return with(&me, |run| run.books.tended(spare::Tended::default()));
            }
            let Ok(whole) = book.store.whole().await else { return }; // the next opening tends it
            let tended = spare::tend(&book.store, &whole, again).await;
            drop(turn);
            with(&me, |run| run.books.tended(tended));
        }));
    }
}

/// A turn at the spare.
pub(super) async fn turn(me: &Weak<Run>) -> Option<Turn> {
    let run = me.upgrade()?;
    Some(run.books.spare.turns.next().await)
}

/// Keeps once more what was just written. A spare that does not work, or was not looked at yet, is not waited for.
pub(super) async fn follow(me: &Weak<Run>, store: &Store, posted: store::Posted, names: &Names) {
    let Some(run) = me.upgrade() else { return };
    let (beside, named) = (&run.books.spare, *names != Names::default());
    if beside.works.get() {
        let _turn = beside.turns.next().await;
        if spare::follow(store, posted, named).await {
            return;
        }
        run.books.tend(Which::Own, true);
    } else if named {
        spare::follow_names(store, &names.forgotten).await;
    }
    if !beside.failed.get() {
        run.books.tend(Which::Own, false);
    }
}
