//! What each screen shows, from the book: plain data, one file per screen. It introduces the trades to each other and computes
//! nothing that a trade could.

pub mod account;
pub mod after;
pub mod alike;
pub mod bench;
pub mod buyer;
pub mod carried;
pub mod copy;
pub mod count;
pub mod counts;
pub mod day;
pub mod enough;
pub mod estimate;
mod fetched;
pub mod gallery;
pub mod haul;
pub mod job;
pub mod jobs;
pub mod look_back;
pub mod make;
pub mod marks;
pub mod meanwhile;
pub mod moving;
pub mod offer;
pub mod outlook;
pub mod past;
pub mod pile;
pub mod plan;
pub mod price;
pub mod rack;
pub mod rate;
pub mod rejects;
pub mod shop;
pub mod short;
pub mod sort;
pub mod stock;
pub mod strip;
pub mod supplier;
pub mod trip_end;
pub mod verdict;
pub mod waits;
pub mod workshop;
pub mod worth;
pub mod yields;

pub use shop::Shop;
