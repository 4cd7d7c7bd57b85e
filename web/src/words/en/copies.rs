//! English: keep a copy, bring one in, this phone.

use super::refusal::Said;
use crate::app::here::Kept;
use crate::app::news::{NotRead, Trouble};
use fivebar_core::ledger::line::document::DocumentTrouble;

pub const ON_THIS_PHONE_ONLY: &str = "On this phone only.";
pub const NOTHING_YET: &str = "Nothing is written yet.";
pub const KEEP_A_COPY: &str = "Keep a copy";
pub const KEEP_UNDER: &str = "one file: send it, or put it where you like";
pub const EXAMPLE_STAYS_OUT: &str = "The example stays out of it.";
pub const COPY_AS_TEXT: &str = "Copy as text";
pub const COPY_AS_TEXT_UNDER: &str = "paste it into a note or a message to yourself";
pub const BRING_ONE_IN: &str = "Bring one in";
pub const BRING_UNDER: &str = "from another phone, or an older copy";
pub const CHOOSE_ANOTHER: &str = "Choose another file";
pub const NOTHING_CHANGED: &str = "Nothing is changed yet.";
pub const ONLY_ADDS: &str = "What is here stays. It is added whole or not at all, and can’t be taken out again in one piece.";
pub const NOTHING_NEW: &str = "All of it is here already. There is nothing to add.";
pub const ADD_THESE: &str = "Add these";
pub const ONLY_ADDS_KEY: &str = "it only adds";
pub const KEEP_FIRST: &str = "Keep a copy of what is here first";
pub const KEEP_FIRST_UNDER: &str = "then there is a way back to today";
pub const HERE: &str = "here";
pub const ADDS: &str = "it adds";
pub const THEN: &str = "then";
pub const JOBS: &str = "jobs";
pub const PILES: &str = "piles";
pub const PIECES: &str = "pieces counted";
pub const HOURS: &str = "hours logged";
pub const LAST_COPY: &str = "last copy";
pub const NOW: &str = "now";
pub const PUT_AWAY: &str = "No copy was kept: the sheet was put away.";
pub const NO_PHOTOS: &str = "No copy was kept: its photos could not be read, or it would be larger with them than a copy that is read again. Keep one without photos.";
pub const NO_WAY: &str = "No copy was kept: this browser can’t hand a file on.";
pub const NO_TEXT: &str =
    "No copy was kept: this browser can’t hold the text either. Open the app in another browser of this phone and look for the file there.";
pub const TEXT_KEPT: &str = "The copy is ready to be pasted. Paste it now: the next thing you copy takes its place.";
pub const ADDING: &str = "Being added.";
pub const ADDED: &str = "Added. Each thing can be struck where it is listed; a copy kept before is the way back to how it was.";

pub const WIPE: &str = "Delete everything";
pub const WIPE_UNDER: &str = "from this phone, for good";
pub const WIPE_GOES: &str = "This goes, with the names, the photos and the example:";
pub const WIPE_STAYS: &str = "Copies outside this phone stay. Without one nothing comes back.";
/// What is typed before everything is deleted, in small letters.
pub const WIPE_WORD: &str = "delete";
pub const WIPE_TYPE: &str = "Type the word delete";

pub const INSTALL: &str = "Put it on the home screen";
pub const INSTALL_UNDER: &str = "it opens without a network";
pub const INSTALL_FIRST: &str = "Put the app on the home screen before your first entry: there it begins with a book of its own.";
pub const INSTALL_HOW: &str = "How";

/// The lines can't be kept a second time.
pub const NO_SPARE: &str = "This browser keeps it in one place only: if its store breaks, only a copy brings it back.";

/// What the phone says of keeping the book, both ways.
pub fn kept(kept: Kept) -> &'static str {
    match kept {
        Kept::ForGood => "This phone keeps it until you delete it.",
        Kept::WhileThereIsRoom => "This phone may clear it when it runs out of room. Copies are safe from that.",
        Kept::NotSaid => "This phone does not say how long it keeps it. Copies are safe from that.",
    }
}

/// "133 pieces and 14 h 30", "2 pieces", "7 h 30, 1 sale and 1 payment", "12 entries" where none of these is among them.
pub fn written(of: &[String], entries: &str) -> String {
    match of {
        [] => entries.to_owned(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// "1 sale", "12 sales".
pub fn sales(n: u32, written: &str) -> String {
    if n == 1 { format!("{written} sale") } else { format!("{written} sales") }
}

/// "1 payment", "2 payments": what came in for orders, ahead or for a piece that was handed over.
pub fn payments(n: u32, written: &str) -> String {
    if n == 1 { format!("{written} payment") } else { format!("{written} payments") }
}

/// "1 entry", "12 entries".
pub fn entries(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} entry") } else { format!("{written} entries") }
}

/// "Last copy Tue 19 May, 2 pieces since."
pub fn last_copy(when: &str, since: Option<&str>) -> String {
    format!("Last copy {when}, {} since.", since.unwrap_or("nothing"))
}

/// "3 days ago".
pub fn days_ago(days: i64, written: &str) -> String {
    match days {
        ..=0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        _ => format!("{written} days ago"),
    }
}

/// "No copy was ever kept: 133 pieces would be lost with this phone."
pub fn never_kept(lost: &str) -> String {
    format!("No copy was ever kept: {lost} would be lost with this phone.")
}

/// "In no copy yet: 133 pieces and 14 h 30. Workshop keeps one."
pub fn nudge(lost: &str) -> String {
    format!("In no copy yet: {lost}. Workshop keeps one.")
}

/// What became of a file another app took.
pub fn shared(name: &str) -> String {
    format!("Handed on as {name}. It is safe once it lies somewhere else than on this phone.")
}

/// What became of a file the browser was given.
pub fn downloaded(name: &str) -> String {
    format!("The browser took {name}. Look that it is among the downloads, then move it off this phone.")
}

/// "kept 11 May".
pub fn made_on(day: &str) -> String {
    format!("kept {day}")
}

/// "spent, USD".
pub fn spent(currency: &str) -> String {
    format!("spent, {currency}")
}

/// "taken, USD".
pub fn taken(currency: &str) -> String {
    format!("taken, {currency}")
}

/// What of a copy is damaged.
pub fn damaged(n: usize, written: &str) -> String {
    let lines = if n == 1 { "line is damaged: it is" } else { "lines are damaged: they are" };
    format!("{written} {lines} kept, set aside, and in no total.")
}

/// The newest of what a copy leads to is that far ahead of this phone's clock.
pub fn ahead(days: i64, written: &str) -> String {
    let days = if days == 1 { "day" } else { "days" };
    format!("The newest entry is {written} {days} ahead of this phone’s clock. Look at the date and time of both phones first.")
}

/// What of a copy is from a newer version.
pub fn newer(n: usize, written: &str) -> String {
    let lines = if n == 1 {
        "line is from a newer version: it is kept, and counts"
    } else {
        "lines are from a newer version: they are kept, and count"
    };
    format!("{written} {lines} once this app is as new.")
}

const UNCHANGED: &str = "What is here is unchanged.";

fn not_brought_in(why: String, to_do: &str) -> Said {
    Said { what: "Nothing was brought in.".into(), why, safe: UNCHANGED.into(), to_do: to_do.into() }
}

/// Why a file could not be read.
pub fn not_read(why: NotRead, n: impl Fn(u64) -> String) -> Said {
    match why {
        NotRead::TooLarge { bytes, most } => not_brought_in(
            format!("It holds {} bytes; at most {} are read.", n(bytes), n(most)),
            "Keep a copy without photos on the other phone.",
        ),
        NotRead::NotText => not_brought_in("It is no text, and a copy is text.".into(), "Choose the file whose name begins with fivebar."),
        NotRead::Unread => {
            not_brought_in("The phone could not read the file.".into(), "Move it onto this phone first, then choose it again.")
        }
    }
}

/// Why a file is no copy that can be brought in.
pub fn no_copy(why: &DocumentTrouble, n: impl Fn(usize) -> String) -> Said {
    match why {
        DocumentTrouble::NotJson => not_brought_in("It is no copy of Fivebar.".into(), "Choose the file whose name begins with fivebar."),
        DocumentTrouble::NotACopy => {
            not_brought_in("It is a file of another kind.".into(), "Choose the file whose name begins with fivebar.")
        }
        DocumentTrouble::CutShort => {
            not_brought_in("It ends before its end: not all of it arrived.".into(), "Send it again, or choose another copy.")
        }
        DocumentTrouble::Newer { version, ours } => not_brought_in(
            format!("A newer version kept it: it is of form {version}, and this app reads up to {ours}."),
            "Open the app with a network to get the new version, then choose it again.",
        ),
        DocumentTrouble::TooLarge { bytes, most } => not_brought_in(
            format!("It holds {} bytes; at most {} are read.", n(*bytes), n(*most)),
            "Keep a copy without photos on the other phone.",
        ),
        DocumentTrouble::TooMany { entries, most } => not_brought_in(
            format!("Together that would be {} entries; a book holds at most {}.", n(*entries), n(*most)),
            "Bring it in on another phone, to a book of its own.",
        ),
        DocumentTrouble::Altered => {
            not_brought_in("Something in it was changed on the way.".into(), "Send it again, or choose another copy.")
        }
    }
}

/// What was to be deleted is still there.
pub fn not_wiped(why: Trouble) -> Said {
    let safe = match why {
        Trouble::Blocked => "It goes as soon as that window lets go of it.",
        _ => "What is still here opens as before.",
    };
    Said { what: "Not deleted, or not all of it.".into(), safe: safe.into(), ..super::refusal::not_opened(why) }
}
