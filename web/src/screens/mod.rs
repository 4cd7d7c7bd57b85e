//! The screens: pure functions from a sheet and what is under the thumb to a tree. They know sheets, parts and words.

mod after;
mod bench;
mod count;
mod frame;
mod haul;
mod homes;
mod jobs;
mod left;
mod mend;
mod opening;
mod outlook;
mod pile;
mod pile_page;
mod plan;
mod price;
mod prospect;
mod receipts;
mod rejects;
mod said;
mod short;
mod slots;
mod sort;
mod sought;
mod sources;
mod spent_on;
mod supplier;
mod taxes;
mod undo;
mod unsaved;
mod workshop;

pub use frame::{page, quote_text};

use crate::app::Msg;
use crate::parts::Page;
use crate::view::El;
use crate::words::Speech;
use crate::words::en::bench as words;
use fivebar_core::quantity::{Local, Wall};
use std::ops::Deref;

/// What every screen may use, handed on as one pointer.
#[derive(Clone, Copy)]
pub struct Seen<'a>(&'a Sight<'a>);

impl<'a> Deref for Seen<'a> {
    type Target = Sight<'a>;
    fn deref(&self) -> &Sight<'a> {
        self.0
    }
}

/// How much room there is, the maker's language, the moment, and what the clock here shows at others.
pub struct Sight<'a> {
    pub page: Page,
    pub speech: &'a dyn Speech,
    pub now: Wall,
    pub local: Local,
}

impl Sight<'_> {
    /// A clock time; that it is one of another place, where it is.
    pub fn clock(&self, wall: Wall) -> String {
        words::clock(wall, (self.speech, self.local))
    }

    /// The same, with its day where that is not today.
    pub fn when(&self, wall: Wall) -> String {
        self.dated(self.clock(wall), wall)
    }

    /// What a clock showed, with its day where that is not today.
    pub fn dated(&self, clock: String, wall: Wall) -> String {
        if wall.day() == self.now.day() { clock } else { format!("{} {clock}", self.speech.day(wall)) }
    }
}

/// A screen before it is framed.
pub struct Screen {
    /// Names the screen: focus goes to its heading when it changes.
    pub place: &'static str,
    /// Of what it is, where it may be of several: another one begins at its top too.
    pub of: String,
    pub head: El<Msg>,
    pub main: El<Msg>,
    pub foot: Option<El<Msg>>,
    /// Without strip and bar, as the buyer's face and big buttons are.
    pub bare: bool,
    /// It says itself what the notice would say.
    pub says_it: bool,
    /// A buyer stands there: no running strip, nothing that can wait.
    pub quiet: bool,
    /// The arrow keys go back and on from it.
    pub walks: bool,
}

impl Screen {
    pub fn new(place: &'static str, head: El<Msg>, main: El<Msg>) -> Screen {
        Screen { place, of: String::new(), head, main, foot: None, bare: false, says_it: false, quiet: false, walks: false }
    }

    /// Nothing beside the buyer that can wait.
    pub fn quiet(mut self) -> Screen {
        self.quiet = true;
        self
    }

    /// The screen says refusals and troubles in its own place.
    pub fn says_it(mut self) -> Screen {
        self.says_it = true;
        self
    }

    /// The arrow keys go back and on from it.
    pub fn walks(mut self) -> Screen {
        self.walks = true;
        self
    }

    pub fn foot(mut self, foot: El<Msg>) -> Screen {
        self.foot = Some(foot);
        self
    }
}
