//! What the phone tells the app: a book was read, an entry is saved or not, another tab wrote, a copy was picked.

use super::here::{Here, Kept};
use super::order::{Order, Which};
use super::shelf::{Names, Posted, Shelf, parted};
use super::workshop::copies::Became;
use super::{App, Notice};
use fivebar_core::ledger::line::document::person_beside;
use fivebar_core::ledger::people::People;
use fivebar_core::ledger::{Book, Device};
use fivebar_core::plan::outlook::Outlook;
use fivebar_core::plan::rows::ends::ShortEnd;
use fivebar_core::plan::unlock::{Locked, Unlocks};
use fivebar_core::plan::{Answered, Figures};
use fivebar_core::quantity::Sorted;
use fivebar_core::quantity::{Id, Listed, Wall};

/// Why the phone would not keep it. A closed list: each has its sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trouble {
    /// No room left on the phone.
    Full,
    /// An id is there already with other bytes.
    Known,
    /// A newer version of the app holds the book.
    Newer,
    /// No store at all, as in some private windows.
    NoStore,
    /// Another tab holds the book and does not let go.
    Blocked,
    /// The platform closed the book and it would not open again.
    Lost,
    /// The platform gave the transaction up.
    Aborted,
    /// The app stopped itself after an error of its own.
    Stopped,
}

/// What became of a file that was handed on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Handed {
    Shared(String),
    PutAway,
    Downloaded(String),
    NoWay,
}

/// Why a picked file was not read. A closed list: each has its sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotRead {
    TooLarge {
        bytes: u64,
        most: u64,
    },
    /// Its bytes are no text.
    NotText,
    /// The phone could not read it.
    Unread,
}

/// What is heard of a planning.
#[derive(Clone, Debug, PartialEq)]
pub enum Planning {
    /// The worth of the best plan so far, and what no plan can pass.
    Better {
        worth: Figures,
        bound: Figures,
    },
    Done(Box<Answered>),
    /// What a short end would give the plan of rows that is worth so much.
    ShortEnd {
        worth: Figures,
        short: ShortEnd,
    },
    Failed,
}

/// News from the phone.
#[derive(Clone, Debug, PartialEq)]
pub enum News {
    Opened {
        which: Which,
        device: Device,
        book: Box<Book>,
        names: People,
    },
    NotOpened {
        which: Which,
        trouble: Trouble,
    },
    Saved {
        which: Which,
        ids: Vec<Id>,
        at: Wall,
    },
    /// `stored` is all that the store holds, read again after the failure.
    NotSaved {
        which: Which,
        lines: Vec<Posted>,
        names: Names,
        trouble: Trouble,
        stored: Vec<String>,
    },
    /// The store was found emptied at a write: what it holds now is that write alone.
    Emptied(Which),
    /// The browser had thrown the maker's book away; so many lines are back from the spare.
    BroughtBack(usize),
    /// Whether the spare can be written.
    Spare(bool),
    /// Another tab wrote these.
    Grew {
        which: Which,
        lines: Vec<String>,
    },
    /// The names another tab wrote beside the book.
    Named {
        which: Which,
        names: People,
    },
    ExampleRemoved,
    /// What this phone is, and what was chosen on it.
    Here(Here),
    /// The platform's answer to the wish that the book is kept for good.
    Kept(Kept),
    CanInstall(bool),
    /// What was to be deleted was not.
    NotWiped(Trouble),
    UpdateWaits,
    /// The photos that show, each with its address where its picture is on this phone.
    PhotosShown(Vec<(Id, Option<String>)>),
    /// The pictures that are on this phone, with their bytes.
    PhotosHere(Vec<(Id, u64)>),
    /// A planning goes on, or has ended.
    Planning(Planning),
    /// The page was painted, as it was asked for.
    Painted,
    /// What came of a reckoning of a job's or a design's wood; nothing where it failed.
    Outlook(Id, Option<Outlook>),
    /// What would give more than this plan; nothing where the look for it failed.
    Unlocks(Box<Locked>, Option<Unlocks>),
    Tick(Wall),
    Resized(f64),
    /// The page came back into sight, or went out of it.
    InSight(bool),
}

impl App {
    /// Takes in news from the phone.
    pub fn told(&mut self, news: News) -> Vec<Order> {
        match news {
            News::Opened { which, device, book, names } => self.opened(which, Shelf::of(device, *book, names)),
            News::NotOpened { which, trouble } => (self.notice, self.jobs.awaited) = (Some(Notice::NotOpened(which, trouble)), false),
            News::Saved { which, ids, at } => self.of(which).into_iter().for_each(|shelf| shelf.saved(&ids, at)),
            News::NotSaved { which, lines, names, trouble, stored } => {
                self.of(which).into_iter().for_each(|shelf| shelf.not_saved((lines.clone(), names.clone()), &stored));
                self.notice = Some(Notice::NotSaved(trouble));
            }
            News::Emptied(which) => self.emptied(which),
            News::BroughtBack(lines) => self.notice = Some(Notice::BroughtBack(lines)),
            News::Spare(works) => self.here.no_spare = !works,
            News::Grew { which, lines } => {
                let now = self.now.at;
                self.of(which).into_iter().for_each(|shelf| shelf.heard(lines.iter().map(String::as_str), now));
            }
            News::ExampleRemoved => self.no_example(),
            News::Named { which, names } => self.of(which).into_iter().for_each(|shelf| shelf.names = names.clone()),
            News::Here(here) => self.here = here,
            News::Kept(kept) => self.here.kept = kept,
            News::CanInstall(can) => self.here.can_install = can,
            News::NotWiped(why) => self.workshop.said = Some(Became::NotWiped(why)),
            News::UpdateWaits => self.update_waits = true,
            News::PhotosShown(shown) => self.photos.show(shown),
            News::PhotosHere(here) => self.photos.are_here(here),
            News::Planning(told) => super::plan::told(self, told),
            News::Painted if super::plan::painted(self) => {}
            News::Painted if super::price::waiting::painted(self) => {}
            News::Painted => super::outlook::begin(self),
            News::Unlocks(of, found) => super::plan::unlocked(self, &of, found),
            News::Outlook(of, found) => self.outlooks.take_in(of, found),
            News::Tick(now) => {
                super::bench::waits::looks(self, now.at);
                self.now = now;
                self.bench.look_again(now.at);
                super::bench::waits::ring(self);
            }
            News::InSight(seen) => self.price.covered = !seen,
            News::Resized(width) => self.page = crate::parts::Page::new(width),
        }
        super::outlook::follow(self);
        super::plan::follow(self);
        super::photos::follow(self);
        super::price::waiting::follow(self);
        std::mem::take(&mut self.orders)
    }

    /// The last lines of the book, read before all others. They are shown where the haul in hand began among them; nothing is
    /// written before the whole book is there.
    pub fn glimpsed(&mut self, book: Book) -> bool {
        let seen = Shelf::of(self.own.device(), book, Sorted::new());
        let fits = !self.is_open && self.early.is_empty() && self.place == crate::parts::Place::Count && seen.haul().is_some();
        if fits {
            (self.own, self.has_glimpse) = (seen, true);
        }
        fits
    }

    fn opened(&mut self, which: Which, mut shelf: Shelf) {
        match which {
            Which::Own => {
                if !self.is_open {
                    shelf.book.merge(self.own.book.lines()); // another window wrote while this one was still reading
                }
                shelf.set_clock(self.now.at);
                if !self.is_open {
                    shelf.resume(self.now.at);
                }
                self.own = shelf;
                (self.is_open, self.has_glimpse) = (true, false);
                super::bench::opened(self);
                self.take_early();
                if self.place == crate::parts::Place::Jobs {
                    super::jobs::look_for_example(self);
                }
            }
            Which::Example => {
                shelf.set_clock(self.now.at);
                self.fill_example(shelf);
            }
        }
    }

    /// What the page holds is all there is: it is written once more, and said.
    fn emptied(&mut self, which: Which) {
        let Some(shelf) = self.of(which) else { return };
        let (lines, aside) = parted(shelf.book.lines());
        let kept = shelf.names.iter().map(|(id, person)| (id.to_string(), person_beside(person))).listed();
        shelf.emptied();
        self.notice = Some(Notice::Emptied);
        self.orders.push(Order::WriteAgain { which, lines, names: Names { kept, forgotten: vec![] }, aside });
    }

    /// The example is there; an empty one is told into its book.
    fn fill_example(&mut self, mut shelf: Shelf) {
        self.jobs.awaited = false;
        if shelf.book.is_empty() {
            let (lines, names) = super::example::told();
            shelf.fill(&lines, &names);
            self.orders.push(Order::FillExample { lines, names });
        }
        self.example = Some(shelf);
    }

    fn no_example(&mut self) {
        if self.which == Which::Example {
            super::jobs::home(self);
        }
        (self.example, self.which) = (None, Which::Own);
    }

    fn of(&mut self, which: Which) -> Option<&mut Shelf> {
        match which {
            Which::Own => Some(&mut self.own),
            Which::Example => self.example.as_mut(),
        }
    }
}
