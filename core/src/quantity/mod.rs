//! Quantities: length, money, moment, span, volume, mass, count. Each knows its own limits, none knows the trade.

mod cash;
mod clock;
mod count;
mod currency;
pub mod exact;
mod id;
mod key;
mod length;
mod mass;
mod moment;
mod money;
pub mod reading;
mod sorted;
mod spelled;
mod take;
mod units;
mod volume;
pub mod writing;

pub use cash::{Cash, round_to_cash};
pub use clock::Clock;
pub use count::{Count, PILE_MOST};
pub use currency::Currency;
pub use id::Id;
pub use key::Key;
pub use length::Length;
pub use mass::Mass;
pub use moment::{Day, Moment, Offset, Span, Wall};
pub use money::{Money, half_up};
pub use rust_decimal::Decimal;
pub use sorted::Sorted;
pub(crate) use spelled::spelled;
pub use spelled::{Scalar, Spelled};
pub use take::{Side, Take};
pub use units::Units;
pub use volume::Volume;
