//! Why the answer was no: a closed list of facts, no prose. The sentences live with the words of the face.

use crate::quantity::{Currency, Length, Money, Span};

/// Why a command or a sum was refused. Each carries what it met and the limit it met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// A sum of money beyond 10^9 minor units.
    MoneyOutOfRange { currency: Currency },
    /// Two currencies in one sum.
    CurrenciesMixed { one: Currency, other: Currency },
    /// Letters that are no ISO 4217 code we know.
    CurrencyUnknown { code: String },
    /// A length below the least or above the most a piece may have.
    LengthOutOfRange { met: Length, least: Length, most: Length },
    /// More pieces than one pile may hold.
    TooManyPieces { would_be: u32, most: u32 },
    /// Fewer pieces there than were asked for.
    NotThatMany { asked: u32, there: u32 },
    /// A stretch of time below nothing or above the most a run may last.
    SpanOutOfRange { met: Span, most: Span },
    /// What the command names is not there, or was taken back.
    NotThere,
    /// None were asked for.
    NothingAsked,
    /// Pieces can't be moved from a pile to itself.
    SamePile,
    /// A length band whose high end lies under its low end.
    BandUpsideDown { from: Length, to: Length },
    /// More piles than one haul may have.
    TooManyPiles { most: usize },
    /// A sum that left the range of its type.
    OutOfRange,
    /// Nothing may be divided by nothing: no hours, no volume.
    NothingToShareBy,
    /// Money below nothing where only a plain sum makes sense.
    MoneyBelowNothing { met: Money },
}

/// What a command or a sum gives.
pub type Answer<T> = Result<T, Refusal>;
