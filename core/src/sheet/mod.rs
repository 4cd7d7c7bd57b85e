//! What each screen shows, as plain data from the book. A sheet introduces rooms to each other and computes nothing a room could.

pub mod count;
pub mod sort;
