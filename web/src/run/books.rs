//! The two books on this phone and the way of each write: one transaction, then news of what became of it.

mod beside;

use super::{Run, spare, wall_clock, with};
use crate::app::here::Kept;
use crate::app::news::{News, Trouble};
use crate::app::order::Which;
use crate::app::shelf::{Names, Posted};
use crate::phone::measure::Measure;
use crate::phone::now;
use crate::phone::spare::Spare;
use crate::phone::store::{self, Aside, BOOK, EXAMPLE, Posting, Row, Store, Whole};
use crate::phone::tabs::{Tabs, Word};
use crate::phone::{later, painted};
use beside::{Beside, follow, turn};
use fivebar_core::ledger::line::document::person_read;
use fivebar_core::ledger::people::People;
use fivebar_core::ledger::{Book, Device, line};
use fivebar_core::quantity::{Id, Listed};
use std::cell::Cell;
use std::rc::{Rc, Weak};

/// So many lines hold the haul in hand of most makers; a smaller book is read as soon as they are.
const GLIMPSE: u64 = 400;

/// What the phone remembers of its own: the name of this device.
const DEVICE: &str = "device";
/// What was spoken of while a buyer looks.
const SPOKEN: &str = "spoken";

/// One book and what this page knows of it.
struct OneBook {
    store: Store,
    tabs: Tabs,
    /// The place of the newest entry this page has read or written.
    last: Cell<u64>,
}

/// The maker's book and the example's.
pub struct Books {
    me: Weak<Run>,
    own: Rc<OneBook>,
    example: Rc<OneBook>,
    asked_to_persist: Cell<bool>,
    spare: Beside,
}

impl Books {
    /// `own` was asked for already.
    pub fn new(me: Weak<Run>, own: Store) -> Books {
        let one = |name: &'static str, store: Store, which: Which| {
            let heard = me.clone();
            Rc::new(OneBook {
                store,
                tabs: Tabs::join(name, move |word| with(&heard, |run| run.books.heard(which, word))),
                last: Cell::new(0),
            })
        };
        let own = one(BOOK, own, Which::Own);
        Books {
            own,
            example: one(EXAMPLE, Store::new(EXAMPLE, |_| ()), Which::Example),
            asked_to_persist: Cell::new(false),
            spare: Beside::default(),
            me,
        }
    }

    fn of(&self, which: Which) -> Rc<OneBook> {
        match which {
            Which::Own => self.own.clone(),
            Which::Example => self.example.clone(),
        }
    }

    /// Remembers beside the book, where a buyer's finger finds nothing, what was spoken of while a buyer looks.
    pub fn set_spoken(&self, spoken: String) {
        let own = self.own.clone();
        // Without it a reload gives the piece back, and no sum.
        later(Box::pin(async move { drop(own.store.set_meta(SPOKEN, &spoken).await) }));
    }

    /// Reads what was spoken of, where it can be read.
    pub fn ask_spoken(&self, then: impl FnOnce(&Run, String) + 'static) {
        let (own, me) = (self.own.clone(), self.me.clone());
        later(Box::pin(async move {
            if let Ok(Some(spoken)) = own.store.meta(SPOKEN).await {
                with(&me, |run| then(run, spoken));
            }
        }));
    }

    /// Reads the maker's book; the app takes no order before that.
    pub fn open(&self) {
        self.open_one(Which::Own);
    }

    /// Opens a book and tells what it holds.
    pub fn open_one(&self, which: Which) {
        let (book, me) = (self.of(which), self.me.clone());
        later(Box::pin(async move {
            // What is tapped meanwhile is kept once more when the spare was looked at.
            let turn = if which == Which::Own { turn(&me).await } else { None };
            if which == Which::Own {
                glimpse(&me, &book.store).await;
            }
            let reading = Measure::begin();
            let found = read(&book, which).await;
            reading.end("read");
            let whole = match found {
                Ok((device, back, whole)) => {
                    let lines = Measure::begin();
                    let read: Vec<_> = lines_of(&whole).map(|text| (line::read(text), text)).listed();
                    lines.end("lines");
                    let folding = Measure::begin();
                    let mut book = Box::new(Book::default());
                    book.merge_read(read);
                    with(&me, |run| run.told(News::Opened { which, book, device, names: named(&whole.people) }));
                    folding.end("fold");
                    if 0 < back {
                        with(&me, |run| run.told(News::BroughtBack(back)));
                    }
                    whole
                }
                Err(trouble) => return with(&me, |run| run.told(News::NotOpened { which, trouble: said(&trouble) })),
            };
            if let Some(binding) = whole.to_bind() {
                let _ = book.store.bind(&binding).await; // for speed alone: on a full phone the next opening is as slow as this one
            }
            if which == Which::Own {
                painted().await;
                let tended = spare::tend(&book.store, &whole, false).await;
                with(&me, |run| run.books.tended(tended));
            }
            drop(turn);
        }));
    }

    /// One transaction. Nothing is shown as saved before it completed.
    pub fn append(&self, which: Which, lines: Vec<Posted>, names: Names) {
        let (book, me) = (self.of(which), self.me.clone());
        self.ask_to_persist(which);
        // Read before the write, as other windows may raise it meanwhile; and after it, as a removal may lower it.
        let before = book.last.get();
        later(Box::pin(async move {
            let news = match book.store.write(&posting(&lines, names.clone(), vec![])).await {
                Ok(posted) if posted.last < before.min(book.last.get()).saturating_add(posted.added as u64) => {
                    book.last.set(posted.last);
                    News::Emptied(which)
                }
                Ok(posted) => {
                    if book.last.get().saturating_add(posted.added as u64) == posted.last {
                        book.last.set(posted.last);
                    }
                    if which == Which::Own {
                        follow(&me, &book.store, posted, &names).await;
                    }
                    book.tabs.tell(Word::Grew);
                    News::Saved { which, ids: ids(&lines), at: wall_clock() }
                }
                Err(trouble) => not_saved(&book, which, (lines, names), &trouble).await,
            };
            with(&me, |run| run.told(news));
            with(&me, |run| run.books.catch_up(which));
        }));
    }

    /// The whole book into a store that was emptied under it: what is there already is skipped.
    pub fn write_again(&self, which: Which, (lines, names): (Vec<Posted>, Names), aside: Vec<String>) {
        let (book, me) = (self.of(which), self.me.clone());
        later(Box::pin(async move {
            let news = match book.store.append_merge(&posting(&lines, names.clone(), aside)).await {
                Ok(posted) => {
                    book.last.set(posted.last);
                    News::Saved { which, ids: ids(&lines), at: wall_clock() }
                }
                Err(trouble) => not_saved(&book, which, (lines, names), &trouble).await,
            };
            with(&me, |run| run.books.tend(which, true));
            // The places other windows remember are those of the store that is gone.
            book.tabs.tell(if which == Which::Own { Word::Removed } else { Word::Grew });
            with(&me, |run| run.told(news));
        }));
    }

    /// Adds what a copy brought and names, all or nothing, then reads the whole book again. `before` comes first: where it fails
    /// nothing is added.
    pub fn write(
        &self,
        (which, posting): (Which, Posting),
        before: impl Future<Output = Result<(), Trouble>> + 'static,
        then: impl FnOnce(&Run, Result<(), Trouble>) + 'static,
    ) {
        let (book, me) = (self.of(which), self.me.clone());
        later(Box::pin(async move {
            let done = match before.await {
                Ok(()) => book.store.append_merge(&posting).await.map(|_| ()).map_err(|trouble| said(&trouble)),
                Err(trouble) => Err(trouble),
            };
            book.tabs.tell(Word::Merged);
            with(&me, |run| then(run, done));
            with(&me, |run| run.books.catch_up_all(which));
            with(&me, |run| run.books.tend(which, true));
        }));
    }

    /// Asked once, after the first entry of the maker's own.
    fn ask_to_persist(&self, which: Which) {
        if which == Which::Own && !self.asked_to_persist.replace(true) {
            self.told_of_keeping(store::persist());
        }
    }

    /// Tells whether the platform keeps the book for good already; asks for nothing.
    pub fn look_at_keeping(&self) {
        self.told_of_keeping(store::persisted());
    }

    fn told_of_keeping(&self, answer: impl Future<Output = store::Kept> + 'static) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let kept = match answer.await {
                store::Kept::ForGood => Kept::ForGood,
                store::Kept::AsLongAsThereIsRoom => Kept::WhileThereIsRoom,
                store::Kept::NotSaid => Kept::NotSaid,
            };
            with(&me, |run| run.told(News::Kept(kept)));
        }));
    }

    /// Deletes both books.
    pub fn wipe(&self, then: impl FnOnce(&Run, Result<(), Trouble>) + 'static) {
        let (own, example, me) = (self.own.clone(), self.example.clone(), self.me.clone());
        later(Box::pin(async move {
            let mut done = example.store.delete().await;
            if done.is_ok() {
                done = Spare::remove().await.map_err(|_| store::Trouble::Aborted);
            }
            if done.is_ok() {
                done = own.store.delete().await;
                let _ = Spare::remove().await; // once more: what was being kept meanwhile
            }
            if done.is_ok() {
                done = store::pictures::delete().await;
            }
            for book in [own, example] {
                book.tabs.tell(Word::Removed);
            }
            with(&me, |run| then(run, done.map_err(|trouble| said(&trouble))));
        }));
    }

    fn heard(&self, which: Which, word: Word) {
        match word {
            Word::Grew => {
                self.catch_up(which);
                self.catch_up_names(which);
            }
            Word::Merged => {
                self.catch_up_all(which);
                self.catch_up_names(which);
            }
            Word::Removed if which == Which::Example => {
                self.example.last.set(0);
                with(&self.me, |run| run.told(News::ExampleRemoved));
            }
            Word::Removed => {
                self.own.last.set(0); // the new book counts from the start
                self.open_one(which);
            }
        }
    }

    /// The page came back into sight: the platform may have closed the book, another tab may have written.
    pub fn look_again(&self) {
        let book = self.own.clone();
        later(Box::pin(async move {
            let _ = book.store.wake().await; // the next write tells the person if it stays closed
        }));
        self.catch_up(Which::Own);
        if self.spare.failed.replace(false) {
            self.tend(Which::Own, false);
        }
    }

    /// Reads what came after the last place this page knows, and what was set aside.
    fn catch_up_all(&self, which: Which) {
        let (book, me) = (self.of(which), self.me.clone());
        self.catch_up(which);
        later(Box::pin(async move {
            let lines = aside(&book).await.unwrap_or_default();
            if !lines.is_empty() {
                with(&me, |run| run.told(News::Grew { which, lines }));
            }
        }));
    }

    /// Reads what came after the last place this page knows.
    fn catch_up(&self, which: Which) {
        let (book, me) = (self.of(which), self.me.clone());
        later(Box::pin(async move {
            let Ok(rows) = book.store.after(book.last.get()).await else { return };
            note_last(&book, &rows);
            let lines: Vec<String> = rows.into_iter().map(|row| row.line).listed();
            if !lines.is_empty() {
                with(&me, |run| run.told(News::Grew { which, lines }));
            }
        }));
    }

    /// Opens the example if it is on this phone; looking leaves nothing behind.
    pub fn look_for_example(&self) {
        let me = self.me.clone();
        let book = self.example.clone();
        later(Box::pin(async move {
            if book.store.is_there().await {
                with(&me, |run| run.books.open_one(Which::Example));
            }
        }));
    }

    /// Reads the names anew.
    fn catch_up_names(&self, which: Which) {
        let (book, me) = (self.of(which), self.me.clone());
        later(Box::pin(async move {
            if let Ok(names) = names(&book).await {
                with(&me, |run| run.told(News::Named { which, names }));
            }
        }));
    }

    /// Writes the example, all or nothing.
    pub fn fill_example(&self, lines: Vec<Posted>, names: Vec<(Id, String)>) {
        let kept = names.into_iter().map(|(id, name)| (id.to_string(), name)).listed();
        let (book, me) = (self.example.clone(), self.me.clone());
        later(Box::pin(async move {
            let news = match book.store.write(&posting(&lines, Names { kept, forgotten: vec![] }, vec![])).await {
                Ok(posted) => {
                    book.last.set(posted.last);
                    book.tabs.tell(Word::Grew);
                    News::Saved { which: Which::Example, ids: ids(&lines), at: wall_clock() }
                }
                Err(trouble) => not_saved(&book, Which::Example, (lines, Names::default()), &trouble).await,
            };
            with(&me, |run| run.told(news));
        }));
    }

    /// Deletes the example's database.
    pub fn remove_example(&self) {
        let (book, me) = (self.example.clone(), self.me.clone());
        later(Box::pin(async move {
            if book.store.delete().await.is_ok() {
                book.last.set(0);
                book.tabs.tell(Word::Removed);
                with(&me, |run| run.told(News::ExampleRemoved));
            }
        }));
    }
}

/// Lines and names as the store takes them.
pub fn posting(lines: &[Posted], names: Names, aside: Vec<String>) -> Posting {
    let entries = lines.iter().map(|posted| (posted.id.to_string(), posted.line.clone())).listed();
    let aside = aside.into_iter().map(|line| Aside { id: String::new(), line, why: "damaged".into() }).listed();
    Posting { entries, people: names.kept, forgotten: names.forgotten, aside, ..Posting::default() }
}

fn ids(lines: &[Posted]) -> Vec<Id> {
    lines.iter().map(|posted| posted.id).listed()
}

fn note_last(book: &OneBook, rows: &[Row]) {
    if let Some(row) = rows.last() {
        book.last.set(book.last.get().max(row.seq));
    }
}

/// The book, and how many of its lines had to be brought back.
async fn read(book: &OneBook, which: Which) -> Result<(Device, usize, Whole), store::Trouble> {
    let whole = book.store.whole().await?;
    let (back, whole) = if which == Which::Own { spare::or_brought_back(&book.store, whole).await? } else { (0, whole) };
    book.last.set(book.last.get().max(whole.last()));
    let device = match whole.meta(DEVICE).and_then(Device::read) {
        Some(device) => device,
        None => new_device(book).await?,
    };
    Ok((device, back, whole))
}

/// The haul in hand comes first: the last lines are read and shown before the rest of a big book.
async fn glimpse(me: &Weak<Run>, store: &Store) {
    let tail = store.tail(GLIMPSE).await.unwrap_or_default(); // why it could not be read is said when the whole book is
    if (tail.len() as u64) < GLIMPSE {
        return;
    }
    let book = Book::of_lines(tail.iter().map(|row| row.line.as_str()));
    let mut shown = false;
    with(me, |run| shown = run.glimpsed(book));
    if shown {
        painted().await;
    }
}

/// What was set aside is part of the book, as damaged as it is: it is in every copy, and known when it comes again.
fn lines_of(whole: &Whole) -> impl Iterator<Item = &str> {
    let aside = whole.aside.iter().map(|aside| aside.line.as_str());
    whole.binding.lines().chain(whole.loose.iter().map(|row| row.line.as_str())).chain(aside)
}

async fn aside(book: &OneBook) -> Result<Vec<String>, store::Trouble> {
    Ok(book.store.aside().await?.into_iter().map(|aside| aside.line).listed())
}

async fn names(book: &OneBook) -> Result<People, store::Trouble> {
    Ok(named(&book.store.people().await?))
}

fn named(people: &[(String, String)]) -> People {
    people.iter().filter_map(|(id, beside)| Some((Id::read(id)?, person_read(beside)))).collect()
}

async fn new_device(book: &OneBook) -> Result<Device, store::Trouble> {
    let [a, b, c, d, e, f, g, h, ..] = now::chance();
    let device = Device::new([a, b, c, d, e, f, g, h]);
    book.store.set_meta(DEVICE, &device.name()).await?;
    Ok(device)
}

/// What the store holds after all, read again.
async fn not_saved(book: &OneBook, which: Which, (lines, names): (Vec<Posted>, Names), trouble: &store::Trouble) -> News {
    let rows = book.store.all().await.unwrap_or_default().into_iter().map(|row| row.line);
    let stored = rows.chain(aside(book).await.unwrap_or_default()).listed();
    News::NotSaved { which, lines, names, trouble: said(trouble), stored }
}

/// The store's trouble as the app knows it.
pub fn said(trouble: &store::Trouble) -> Trouble {
    match trouble {
        store::Trouble::Full => Trouble::Full,
        store::Trouble::Known => Trouble::Known,
        store::Trouble::Newer => Trouble::Newer,
        store::Trouble::NoStore => Trouble::NoStore,
        store::Trouble::Blocked => Trouble::Blocked,
        store::Trouble::Lost => Trouble::Lost,
        store::Trouble::Stopped => Trouble::Stopped,
        store::Trouble::Aborted | store::Trouble::Refused { .. } => Trouble::Aborted,
    }
}
