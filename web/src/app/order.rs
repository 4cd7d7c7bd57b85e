//! What the page asks of the phone after a message was heard. The app itself touches nothing.

use super::shelf::{Names, Posted};
use fivebar_core::ledger::line::document::Photos;
use fivebar_core::plan::Asked;
use fivebar_core::plan::outlook::Hoped;
use fivebar_core::plan::unlock::Locked;
use fivebar_core::quantity::Id;

/// Which of the two books.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Which {
    Own,
    /// The example: in no total and no copy.
    Example,
}

/// How a tap feels under the thumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feel {
    /// A count that brought the pile to so many.
    Count(u32),
    Start,
    Stop,
    TakeBack,
    Refused,
}

/// An order to the phone.
#[derive(Clone, Debug, PartialEq)]
pub enum Order {
    /// One transaction: all of it or nothing, the names beside the book too.
    Append {
        which: Which,
        lines: Vec<Posted>,
        names: Names,
    },
    /// Adds what a copy brought to the maker's own book: all of it or nothing. `aside` is damaged beyond its id.
    BringIn {
        lines: Vec<Posted>,
        names: Names,
        aside: Vec<String>,
        /// Pictures that are not here yet; they are kept before the lines are.
        photos: Photos,
    },
    /// Writes a whole book once more, into a store that was emptied under it: all of it or nothing.
    WriteAgain {
        which: Which,
        lines: Vec<Posted>,
        names: Names,
        aside: Vec<String>,
    },
    Feel(Feel),
    /// Whether the screen should stay awake.
    Awake(bool),
    /// Hands a text on by the share sheet, or as a download.
    Share {
        name: String,
        text: String,
    },
    /// Hands dates on to a calendar.
    Calendar {
        name: String,
        text: String,
    },
    /// Hands a written paper on, such as a quote.
    Note {
        name: String,
        text: String,
    },
    /// Makes the platform's sound ready: it wants a tap for that.
    ReadyToRing,
    /// Sounds and buzzes, once.
    Ring,
    PickCopy,
    /// Lets the maker take a photo or choose one, and keeps its picture beside the book.
    TakePhoto {
        camera: bool,
    },
    /// Shows these photos, and gives back what was shown before.
    ShowPhotos(Vec<Id>),
    /// Tells which pictures are on this phone.
    LookAtPhotos,
    /// Reads these pictures for a copy.
    ReadPhotos(Vec<Id>),
    /// Lets go of all pictures but these.
    SweepPhotos(Vec<Id>),
    /// Lays a text where it can be pasted from.
    CopyText {
        text: String,
    },
    /// Deletes both books and all that is beside them, then opens the app again.
    WipeAll,
    /// Opens the app again.
    Reload,
    /// Lets the platform ask whether to install the app.
    Install,
    /// Opens the example; where it is empty the app fills it.
    OpenExample,
    /// Opens the example if it is on this phone.
    LookForExample,
    /// Writes the example's entries and the names of its people, in one transaction.
    FillExample {
        lines: Vec<Posted>,
        names: Vec<(Id, String)>,
    },
    /// Deletes the example's database.
    RemoveExample,
    /// Keeps guesses that are half answered with what is half typed; nothing where none are.
    KeepGuesses(String),
    /// Keeps old jobs that are half typed; nothing where none are.
    KeepOldJobs(String),
    /// Remembers a choice of this phone, such as the theme.
    Choose {
        key: Choice,
        value: String,
    },
    ApplyUpdate,
    Print,
    /// The buyer's face shows this piece, or no longer: half-typed text is out of reach meanwhile, and going back once does not leave it.
    Face(Option<Turned>),
    /// Plans beside the page for so many ms; a planning under way is called off.
    Plan {
        asked: Box<Asked>,
        ms: u32,
    },
    /// Calls the planning off.
    StopPlan,
    /// Tells once the page is painted: what takes a while waits for that.
    Painted,
    /// Looks beside the page for what would give more than a plan; a look under way is called off.
    Unlock(Box<Locked>),
    /// Reckons beside the page how many sets each of these gives; a reckoning under way is called off.
    Reckon(Vec<(Id, Hoped)>),
    /// Puts the place in the address, so that a reload opens it again.
    Remember(&'static str),
}

/// What this phone remembers besides the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Theme,
    Text,
    SingleKeys,
    Buzzes,
    Rings,
    /// Plans beside the book.
    Plans,
    /// How one is paid.
    Paid,
}

/// What a page that is loaded anew in a buyer's hands is to find: the piece, and beside the book what was spoken of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turned {
    pub piece: Id,
    pub spoken: String,
}
