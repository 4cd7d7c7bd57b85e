//! Sale: who asks, who buys at which price, and what it is worth to wait for them.
//!
//! Floats: no money is booked and no time is kept here. What comes out is an estimate, rounded once to the minor unit.
//! Logarithms and powers come from `libm`, so a phone and a terminal say the same figures.

pub mod chances;
pub mod demand;
pub mod learning;
pub mod waiting;
