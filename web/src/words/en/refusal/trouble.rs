//! English: what the phone did not do.

use super::Said;
use crate::app::news::Trouble;

/// What could not be saved: how many entries, why, what is safe, what to do.
pub fn not_saved(why: Trouble, lines: usize) -> Said {
    let what = match lines {
        0 => "Not saved: a name, phone or place.".to_owned(),
        1 => "Not saved: 1 entry.".to_owned(),
        _ => format!("Not saved: {lines} entries."),
    };
    let safe = "All that was shown as saved is safe.".to_owned();
    let (why, to_do) = cause(why);
    Said { what, why: why.into(), safe, to_do: to_do.into() }
}

/// A copy that could not be written to the phone.
pub fn not_added(why: Trouble) -> Said {
    let (why, to_do) = cause(why);
    Said { what: "Nothing was brought in.".into(), why: why.into(), safe: "What is here is unchanged.".into(), to_do: to_do.into() }
}

/// A book that could not be opened.
pub fn not_opened(why: Trouble) -> Said {
    let (why, to_do) = cause(why);
    Said {
        what: "The book could not be opened.".into(),
        why: why.into(),
        safe: "Nothing was written or removed.".into(),
        to_do: to_do.into(),
    }
}

/// The example could not be opened; the maker's own book is untouched by that.
pub fn no_example(why: Trouble) -> Said {
    let (why, to_do) = cause(why);
    Said {
        what: "The example could not be opened.".into(),
        why: why.into(),
        safe: "Your own book is as it was.".into(),
        to_do: to_do.into(),
    }
}

/// The store was emptied under the open book.
pub fn emptied() -> Said {
    Said {
        what: "This phone's store was emptied while the book was open.".into(),
        why: "The browser, or someone in its settings, removed what sites keep.".into(),
        safe: "All that is shown is being saved again.".into(),
        to_do: "Keep a copy now.".into(),
    }
}

/// The browser had thrown the book away between two openings.
pub fn brought_back(entries: &str) -> Said {
    Said {
        what: "The browser had thrown the book away.".into(),
        why: "It does so when its store breaks, as after a crash in the middle of a write.".into(),
        safe: format!("Entries back from the second place on this phone: {entries}. Photos are kept in one place only."),
        to_do: "Look at what you wrote last, and keep a copy now.".into(),
    }
}

/// Why the phone would not keep something, and what to do.
pub fn cause(why: Trouble) -> (&'static str, &'static str) {
    match why {
        Trouble::Full => ("The phone is full.", "Free some space, or keep a copy now."),
        Trouble::Known => ("The book holds an entry of the same name already.", "Keep a copy now, then open the app again."),
        Trouble::Newer => ("A newer version of the app wrote this book.", "Close all its windows and open it again with a network."),
        Trouble::NoStore => ("This window has no store: a private window, or storage is switched off.", "Open it in a usual window."),
        Trouble::Blocked => ("Another window of the app holds the book.", "Close the other windows, then try again."),
        Trouble::Lost => ("The phone closed the book.", "Try again. If it stays so, open the app again."),
        Trouble::Aborted => ("The phone gave up writing.", "Try again, or keep a copy now."),
        Trouble::Stopped => ("The app stopped after an error of its own.", "Open it again: nothing saved is lost."),
    }
}
