//! Lines of older versions, read as this one: one pure step per version, each from the members of a kind to those of the next.
//!
//! A step never fails and never looks at another entry. A released kind is never edited, so a step exists only for a new meaning.

use super::Tree;
use std::borrow::Cow;

/// From the kind and members of one version to those of the next.
pub type Step = for<'a> fn(kind: Cow<'a, str>, members: Tree<'a>) -> (Cow<'a, str>, Tree<'a>);

/// The steps there are: the first leads from version 1 to version 2. None yet.
pub const STEPS: &[Step] = &[];

/// The kind and members of version `from` as the last step leaves them.
pub fn lift<'a>(steps: &[Step], from: u32, (kind, members): (Cow<'a, str>, Tree<'a>)) -> (Cow<'a, str>, Tree<'a>) {
    let done = usize::try_from(from).unwrap_or(usize::MAX).saturating_sub(1);
    steps.iter().skip(done).fold((kind, members), |(kind, members), step| step(kind, members))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Scalar;

    /// Invented: version 1 counted dozens, version 2 counts pieces, version 3 says what of.
    const INVENTED: &[Step] = &[dozens_to_pieces, say_what_of];

    fn dozens_to_pieces<'a>(kind: Cow<'a, str>, members: Tree<'a>) -> (Cow<'a, str>, Tree<'a>) {
        if kind != "DozensCounted" {
            return (kind, members);
        }
        let n: i64 = members.must("dozens").unwrap_or_default();
        ("PiecesCounted".into(), Tree::members(vec![("n", Some(Tree::Scalar(Scalar::Whole(n * 12))))]))
    }

    fn say_what_of<'a>(kind: Cow<'a, str>, members: Tree<'a>) -> (Cow<'a, str>, Tree<'a>) {
        let Tree::Members(mut there) = members else { return (kind, members) };
        if kind == "PiecesCounted" && !there.iter().any(|(name, _)| *name == "of") {
            there.push(("of", Tree::Scalar(Scalar::of("wood"))));
        }
        (kind, Tree::Members(there))
    }

    #[track_caller]
    fn check(from: u32, before: (&str, &str), after: (&str, &str)) {
        let (kind, members) = lift(INVENTED, from, (before.0.into(), Tree::read(before.1).unwrap()));
        assert_eq!((&*kind, members.spelled().as_str()), after);
    }

    #[test]
    fn inv01_an_old_line_is_read_step_by_step() {
        check(1, ("DozensCounted", r#"{"dozens":2}"#), ("PiecesCounted", r#"{"n":24,"of":"wood"}"#));
        check(2, ("PiecesCounted", r#"{"n":5}"#), ("PiecesCounted", r#"{"n":5,"of":"wood"}"#));
        check(3, ("PiecesCounted", r#"{"n":5,"of":"stone"}"#), ("PiecesCounted", r#"{"n":5,"of":"stone"}"#));
        check(1, ("TripBegan", r#"{"haul":"x"}"#), ("TripBegan", r#"{"haul":"x"}"#));
    }
}
