//! English: photos of a job, on its page, to a buyer, and in a copy.

use super::refusal::{Said, cause};
use crate::app::photos::NoPhoto;

pub const PHOTOS: &str = "Photos";
pub const NONE_YET: &str = "none yet";
pub const NO_PHOTO_YET: &str = "No photo yet. The latest one is what a buyer sees.";
pub const LATEST_IS_SHOWN: &str =
    "The latest one is what a buyer sees. They are made smaller, and nothing the camera wrote into them is kept.";
pub const TAKE: &str = "Take a photo";
pub const CHOOSE: &str = "Choose one";
pub const REMOVE: &str = "Remove it";
pub const REMOVED_UNDER: &str = "it stays on this phone until the next copy";
pub const NOT_HERE: &str = "Not on this phone: the copy that was brought in was without it, or it was damaged on the way.";
pub const BEING_READ: &str = "Being read.";
pub const WITH: &str = "With photos";
pub const WITHOUT: &str = "Without";

/// "Photo 2 of Shoe bench", for a reader.
pub fn nth(n: &str, of: &str) -> String {
    format!("Photo {n} of {of}")
}

/// "Photo 2, 240 kB".
pub fn nth_and_size(n: &str, size: Option<&str>) -> String {
    size.map_or_else(|| format!("Photo {n}"), |size| format!("Photo {n}, {size}"))
}

/// "3 photos, 1.2 MB".
pub fn many(n: usize, written: &str, size: &str) -> String {
    format!("{}, {size}", photos(n, written))
}

/// "1 photo", "3 photos".
pub fn photos(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} photo") } else { format!("{written} photos") }
}

/// "240 kB".
pub fn kilobytes(written: &str) -> String {
    format!("{written}\u{a0}kB")
}

/// "1.2 MB".
pub fn megabytes(written: &str) -> String {
    format!("{written}\u{a0}MB")
}

/// Photos the book knows that are in no copy kept on this phone.
pub fn missing(n: usize, written: &str) -> String {
    let are = if n == 1 { "is" } else { "are" };
    format!("{} {are} not on this phone, and will be in no copy kept here.", photos(n, written))
}

/// What a copy that is brought in holds of photos.
pub fn brings(n: usize, written: &str) -> String {
    format!("It brings {}.", photos(n, written))
}

/// Photos that are neither here nor in the copy.
pub fn lacks(n: usize, written: &str) -> String {
    let are = if n == 1 { "is" } else { "are" };
    format!("{} {are} missing: neither in this copy nor on this phone.", photos(n, written))
}

/// Why a photo was not kept.
pub fn not_kept(why: NoPhoto) -> Said {
    let (why, to_do) = match why {
        NoPhoto::Unread => ("This phone can’t read it as a picture.", "Take the photo again, or choose another file."),
        NoPhoto::NotKept(trouble) => cause(trouble),
    };
    Said {
        what: "No photo was added.".into(),
        why: why.into(),
        safe: "The job and its other photos are as they were.".into(),
        to_do: to_do.into(),
    }
}
