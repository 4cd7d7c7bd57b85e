//! Money: what a job cost, what an hour must earn, what to charge, what to answer to an offer, what is left.
//!
//! Knows spans, volumes and rates, never a run, a pile or an entry. A sum is a [`Money`](crate::quantity::Money) once it is
//! booked, half up to the minor unit, and a decimal until then (invariant 7). No floats.

pub mod charge;
pub mod consign;
pub mod cost;
pub mod cover;
#[cfg(test)]
mod demo;
pub mod fee;
pub mod left;
pub mod mileage;
pub mod offer;
pub mod pack;
pub mod point;
pub mod price;
pub mod rate;
pub mod replacement;
pub mod resale;
pub mod share;
pub mod staged;
pub mod tax;
pub mod wear;

use crate::quantity::sums;

/// Figures as text, for the tables of tests.
#[cfg(test)]
mod figures {
    use crate::quantity::{Currency, Decimal, Money};

    #[track_caller]
    pub fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }
    #[track_caller]
    pub fn usd(text: &str) -> Money {
        Money::whole(d(text).normalize(), Currency::USD).unwrap()
    }
    #[track_caller]
    pub fn eur(text: &str) -> Money {
        Money::whole(d(text).normalize(), Currency::EUR).unwrap()
    }
    #[track_caller]
    pub fn shown(exact: Decimal) -> String {
        format!("{:.2}", crate::quantity::half_up(exact, 2))
    }
}
