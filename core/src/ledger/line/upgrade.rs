//! Lines of older versions, read as this one: one pure step per version, each from the members of a kind to those of the next.
//!
//! A step never fails and never looks at another entry. A released kind is never edited, so a step exists only for a new meaning.

use serde_json::Value;

/// From the kind and members of one version to those of the next.
pub type Step = fn(kind: String, members: Value) -> (String, Value);

/// The steps there are: the first leads from version 1 to version 2. None yet.
pub const STEPS: &[Step] = &[];

/// The kind and members of version `from` as the last step leaves them.
pub fn lift(steps: &[Step], from: u32, (kind, members): (String, Value)) -> (String, Value) {
    let done = usize::try_from(from).unwrap_or(usize::MAX).saturating_sub(1);
    steps.iter().skip(done).fold((kind, members), |(kind, members), step| step(kind, members))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// Invented: version 1 counted dozens, version 2 counts pieces, version 3 says what of.
    const INVENTED: &[Step] = &[dozens_to_pieces, say_what_of];

    fn dozens_to_pieces(kind: String, mut members: Value) -> (String, Value) {
        if kind == "DozensCounted" {
            let n = members.get("dozens").and_then(Value::as_i64).unwrap_or_default() * 12;
            members = json!({ "n": n });
            return ("PiecesCounted".into(), members);
        }
        (kind, members)
    }

    fn say_what_of(kind: String, mut members: Value) -> (String, Value) {
        if kind == "PiecesCounted" {
            members["of"] = "wood".into();
        }
        (kind, members)
    }

    #[track_caller]
    fn check(from: u32, before: (&str, Value), after: (&str, Value)) {
        let lifted = lift(INVENTED, from, (before.0.into(), before.1));
        assert_eq!(lifted, (after.0.to_owned(), after.1));
    }

    #[test]
    fn inv01_an_old_line_is_read_step_by_step() {
        check(1, ("DozensCounted", json!({"dozens": 2})), ("PiecesCounted", json!({"n": 24, "of": "wood"})));
        check(2, ("PiecesCounted", json!({"n": 5})), ("PiecesCounted", json!({"n": 5, "of": "wood"})));
        check(3, ("PiecesCounted", json!({"n": 5, "of": "stone"})), ("PiecesCounted", json!({"n": 5, "of": "stone"})));
        check(1, ("TripBegan", json!({"haul": "x"})), ("TripBegan", json!({"haul": "x"})));
    }
}
