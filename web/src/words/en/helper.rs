//! English: who works along, since when, and who went.

use super::common::sentence;
use fivebar_core::quantity::begin_small;

/// "not paid, since 10:05", of one who works along.
pub fn paid_since(pay: &str, clock: &str) -> String {
    format!("{pay}, since {clock}")
}

/// "helper gone (not paid, since 10:05)", of what was done last.
pub fn gone(who: &str) -> String {
    format!("helper gone ({who})")
}

/// "Helper since 09:40", "2 helpers since 09:40".
pub fn since((n, written): (u32, &str), since: &str) -> String {
    if n == 1 { format!("Helper since {since}") } else { format!("{written} helpers since {since}") }
}

/// "A helper was at sand until 13:40."
pub fn was((n, written): (u32, &str), (op, clock): (&str, &str)) -> String {
    let who = if n == 1 { "A helper was".to_owned() } else { format!("{written} helpers were") };
    sentence(format!("{who} at {} until {clock}", begin_small(op)))
}

/// "A helper came at 13:40."
pub fn came((n, written): (u32, &str), clock: &str) -> String {
    if n == 1 { sentence(format!("A helper came at {clock}")) } else { format!("{written} helpers came, from {clock} on.") }
}
