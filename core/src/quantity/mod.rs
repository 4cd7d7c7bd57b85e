//! Quantities: length, money, moment, span, volume, mass, count. Each knows its own limits, none knows the trade.

mod count;
mod currency;
pub mod exact;
mod id;
mod key;
mod length;
mod mass;
mod moment;
mod money;
mod take;
mod text;
mod units;
mod volume;

pub use count::{Count, PILE_MOST};
pub use currency::Currency;
pub use id::Id;
pub use key::Key;
pub use length::Length;
pub use mass::Mass;
pub use moment::{Day, Moment, Offset, Span, Wall};
pub use money::{Money, half_up};
pub use rust_decimal::Decimal;
pub use take::{Side, Take};
pub use units::Units;
pub use volume::Volume;
