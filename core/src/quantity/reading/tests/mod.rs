//! Tables of what people type, kind by kind.

use super::*;

mod figures;
mod lengths;

const INCH: Typing = Typing { units: Units::Inch, sign: Sign::Point };
const METRIC: Typing = Typing { units: Units::Metric, sign: Sign::Comma };

fn met(text: &str) -> Misread {
    Misread::NotANumber { met: text.into() }
}

fn unit(text: &str) -> Misread {
    Misread::UnknownUnit { met: text.into() }
}

#[track_caller]
fn check<Q: PartialEq + std::fmt::Debug>(read: Read<Q>, expected: Result<Q, Misread>, text: &str) {
    assert_eq!(read, expected, "{text:?}");
}
