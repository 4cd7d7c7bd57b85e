//! What each screen shows, from the book: plain data, one file per screen. It introduces the trades to each other and computes
//! nothing that a trade could.

pub mod bench;
pub mod day;
pub mod strip;
