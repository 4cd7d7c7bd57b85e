//! What the page asks of the phone after a message was heard. The app itself touches nothing.

use super::shelf::Posted;

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
    /// One transaction: all of it or nothing.
    Append { which: Which, lines: Vec<Posted> },
    /// Names beside the book, each a line of text by its id.
    KeepNames { which: Which, names: Vec<(String, String)> },
    /// Adds lines from a copy, in one transaction.
    BringIn { lines: Vec<Posted>, names: Vec<(String, String)> },
    Feel(Feel),
    /// Whether the screen should stay awake.
    Awake(bool),
    /// Hands a text on by the share sheet, or as a download.
    Share { name: String, text: String },
    PickCopy,
    /// Opens the example, and fills it where it is empty.
    OpenExample,
    /// Deletes the example's database.
    RemoveExample,
    /// Remembers a choice of this phone, such as the theme.
    Choose { key: Choice, value: String },
    ApplyUpdate,
    Install,
    Print,
    /// Puts the place in the address, so that a reload opens it again.
    Remember(&'static str),
    /// The buyer's face is up: a guard in the history shows it again on back. `false` takes the guard away.
    Guard(bool),
}

/// What this phone remembers besides the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Theme,
    SingleKeys,
    Clicks,
}
