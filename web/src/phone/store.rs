//! The book on this device: an append-only list of entries in IndexedDB, with what lies beside it.
//!
//! A write is one transaction with strict durability; it is saved when `complete` was heard, never before.
//! Only this file and the folder of its name know IndexedDB.
mod binding;
mod open;
pub mod pictures;
mod posting;
mod read;
mod room;
mod rows;
mod shelf;
mod trouble;
mod write;

pub use binding::Binding;
pub use open::News;
pub use posting::{Aside, Line, Posted, Posting};
pub use read::Whole;
pub use room::{Kept, Room, estimate, persist, persisted};
pub use trouble::Trouble;

use open::{Open, VERSION, answer, factory};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use web_sys::IdbOpenDbRequest;
use write::Differing;

/// The maker's book.
pub const BOOK: &str = "fivebar";
/// The example's book, which is in no total and no copy.
pub const EXAMPLE: &str = "fivebar-example";

thread_local! {
    static CLOSED: Cell<bool> = const { Cell::new(false) };
}

/// Stops all writing until the page is loaded again. The panic hook calls it before anything else.
pub fn close_for_good() {
    CLOSED.set(true);
}

/// Whether all writing was stopped.
pub fn closed() -> bool {
    CLOSED.get()
}

/// An entry as the book holds it, with its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its place in the order of arrival on this device; the first is 1.
    pub seq: u64,
    pub id: String,
    /// The entry's text, byte for byte as it was written.
    pub line: String,
}

/// A handle to a book. Cheap to clone.
#[derive(Clone)]
pub struct Store {
    name: Rc<str>,
    open: Rc<RefCell<Option<Open>>>,
    /// Asked for already, and not answered yet.
    asked: Rc<RefCell<Option<IdbOpenDbRequest>>>,
    tell: Rc<dyn Fn(News)>,
    durability: Rc<RefCell<Option<String>>>,
}

/// How long another connection may take to close before it is said to hold the book.
const LETS_GO_WITHIN_MS: i32 = 500;

impl Store {
    /// A handle to the book `name`; it is opened at its first use. `tell` hears what the store tells of its own accord.
    pub fn new(name: &str, tell: impl Fn(News) + 'static) -> Self {
        Store { name: name.into(), open: Rc::default(), asked: Rc::default(), tell: Rc::new(tell), durability: Rc::default() }
    }

    /// Asks the platform for the book at once, for the first use soon after in the same task: it opens it meanwhile.
    pub fn ask(&self) {
        *self.asked.borrow_mut() = factory().ok().and_then(|factory| factory.open_with_u32(&self.name, VERSION).ok());
    }

    /// Adds all of `entries` and sets all of `meta`, or nothing. Returns after the platform said `complete`.
    ///
    /// An entry that is in the book already, byte for byte, is skipped.
    ///
    /// # Errors
    /// Why nothing was saved; `Known` if an id is in the book with other bytes.
    pub async fn append(&self, entries: &[Line], meta: &[(String, String)]) -> Result<Posted, Trouble> {
        self.write(&Posting { entries: entries.to_vec(), meta: meta.to_vec(), ..Posting::default() }).await
    }

    /// Writes the whole posting or nothing, as `append` does.
    ///
    /// # Errors
    /// Why nothing was saved; `Known` if an id is in the book with other bytes.
    pub async fn write(&self, posting: &Posting) -> Result<Posted, Trouble> {
        if closed() { Err(Trouble::Stopped) } else { self.post(posting, Differing::Refuse).await }
    }

    /// Brings in another phone's posting, all or nothing. An entry whose id is here with other bytes is set aside.
    ///
    /// # Errors
    /// Why nothing was saved.
    pub async fn append_merge(&self, posting: &Posting) -> Result<Posted, Trouble> {
        if closed() { Err(Trouble::Stopped) } else { self.post(posting, Differing::SetAside).await }
    }

    /// All there is, in one transaction.
    ///
    /// # Errors
    /// Why the book could not be read.
    pub async fn whole(&self) -> Result<Whole, Trouble> {
        self.read_whole().await
    }

    /// Every entry, in order of arrival.
    ///
    /// # Errors
    /// Why the book could not be read.
    pub async fn all(&self) -> Result<Vec<Row>, Trouble> {
        self.rows_after(0).await
    }

    /// The last entries, at most so many, all of them written here one after the other: none that a copy brought.
    ///
    /// # Errors
    /// Why the book could not be read.
    pub async fn tail(&self, most: u64) -> Result<Vec<Row>, Trouble> {
        self.rows_at_the_end(most).await
    }

    /// The entries that arrived after the place `seq`, merged and back-dated ones too.
    ///
    /// # Errors
    /// Why the book could not be read.
    pub async fn after(&self, seq: u64) -> Result<Vec<Row>, Trouble> {
        self.rows_after(seq).await
    }

    /// What the phone remembers beside the book under `key`.
    ///
    /// # Errors
    /// Why it could not be read.
    pub async fn meta(&self, key: &str) -> Result<Option<String>, Trouble> {
        self.value(key).await
    }

    /// Remembers `value` under `key` beside the book.
    ///
    /// # Errors
    /// Why it was not saved.
    pub async fn set_meta(&self, key: &str, value: &str) -> Result<(), Trouble> {
        self.append(&[], &[(key.into(), value.into())]).await.map(|_| ())
    }

    /// Names and what belongs to them, each a line of text by its id.
    ///
    /// # Errors
    /// Why they could not be read.
    pub async fn people(&self) -> Result<Vec<(String, String)>, Trouble> {
        self.names().await
    }

    /// What was set aside, with the reason.
    ///
    /// # Errors
    /// Why it could not be read.
    pub async fn aside(&self) -> Result<Vec<Aside>, Trouble> {
        self.damaged().await
    }

    /// Opens the book again if the platform closed it, as some phones do while the app sleeps.
    ///
    /// # Errors
    /// Why it could not be opened.
    pub async fn wake(&self) -> Result<(), Trouble> {
        self.begin("readonly").await.map(|_| ())
    }

    /// Whether the book is on this device. Looking does not make it.
    pub async fn is_there(&self) -> bool {
        self.look().await
    }

    /// Lets go of the book; the next use opens it again.
    pub fn let_go(&self) {
        if let Some(open) = self.open.take() {
            open.db.close();
        }
    }

    /// Removes the whole book from this device, for good.
    ///
    /// # Errors
    /// `Blocked` while another tab holds it: it is removed as soon as that one lets go.
    pub async fn delete(&self) -> Result<(), Trouble> {
        if closed() {
            return Err(Trouble::Stopped);
        }
        self.let_go();
        let request = factory()?.delete_database(&self.name)?;
        let blocked = crate::phone::ears::first_of(&request, &["blocked", "success", "error"]);
        let gone = answer(&request);
        if blocked.await.type_() == "blocked" {
            // a connection that is just being closed blocks for a moment
            let late = crate::phone::ears::first_within(&request, &["success", "error"], LETS_GO_WITHIN_MS);
            late.await.ok_or(Trouble::Blocked)?;
        }
        gone.await.map(|_| ())
    }

    /// The durability the platform gave to the last transaction, by its own word. For tests.
    pub fn durability(&self) -> Option<String> {
        self.durability.borrow().clone()
    }
}
