//! Estimates from few jobs: what each operation will likely take, where that is from, and what all of them come to.
//!
//! No clock and no chance: pasts and a seed arrive as arguments, whole minutes leave.

pub mod factor;
pub mod gain;
pub mod learn;
pub mod spread;
pub mod whole;

pub use factor::Factor;
pub use learn::Past;
pub use spread::{Begun, Likely, Range};

use crate::quantity::{Count, Decimal, Listed, Span};

/// Where a figure is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Basis {
    /// The same operation on earlier jobs of this design.
    Design,
    /// The same operation on earlier jobs of this kind of piece.
    Kind,
    /// The same operation on earlier jobs that no kind of piece tells apart.
    Own,
    /// What the maker thought, put right by the factor where it is used.
    Thought,
    /// Earlier pieces of this kind, as a whole: own jobs or those told.
    Pieces,
    /// The default of the kind of piece.
    Piece,
    /// The default of an operation of which nothing is known.
    Operation,
}

/// One operation as it is estimated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    pub from: Basis,
    /// Jobs it is learnt from.
    pub jobs: Count,
    /// What is thought of it, or is known of it, before factor and allowance.
    pub time: Likely,
}

/// What is put on top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OnTop {
    /// The maker's factor, on what was thought.
    Factor(Factor),
    /// An allowance for rework, on what was thought and on own history of operations, which has none. Never both.
    Allowance(Decimal),
}

/// All of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimate {
    /// Each part's likely minutes, in the order they were given.
    pub each: Vec<Span>,
    pub range: Range,
    /// What was thought, before the factor.
    pub thought: Option<Span>,
    pub on_top: OnTop,
    /// Of the likely time in per cent, what is from where; they make up a hundred.
    pub shares: Vec<(Basis, u32)>,
}

/// What all parts come to; none without any. What is thought of several is off together, because people think of a job as a whole;
/// what is from history each has chances of its own.
pub fn estimate(parts: &[Part], on_top: OnTop, seed: u64) -> Option<Estimate> {
    let of = |part: &Part| topped(part, on_top);
    let thought = parts.iter().filter(|part| part.from == Basis::Thought).map(|part| part.time.median);
    let thought = parts.iter().any(|part| part.from == Basis::Thought).then(|| thought.sum::<f64>());
    // First, whatever else there is: the draws of what is there stay the same when something is added.
    let all_thought = thought.map(|minutes| topped(&Part { from: Basis::Thought, jobs: 0, time: Likely::guessed(minutes) }, on_top));
    let others = parts.iter().filter(|part| part.from != Basis::Thought).map(of);
    let times: Vec<Likely> = all_thought.into_iter().chain(others).listed();
    Some(Estimate {
        each: each(parts, on_top),
        range: spread::together(&times, seed)?,
        thought: thought.map(spread::whole),
        on_top,
        shares: shares(parts, of),
    })
}

/// Why nothing of a part is to come any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// The maker is done with the job.
    Ended,
    /// The last piece is sold or handed over.
    Gone,
    /// It is made, as far as the book tells.
    Made,
    /// All its pieces are noted as done.
    Noted,
    /// All its pieces were put to wait, and nobody is at it.
    Waits,
    /// It had taken what was thought of it when another step was begun.
    NextBegun,
    /// It had taken what was thought of it, and a coat of it dries.
    Dries,
    /// A drive took as long as was planned.
    Driven,
}

/// What is still to do of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Left {
    Nothing(Over),
    /// What it is estimated to take, less what was worked.
    Less(Span),
    /// As it goes, whatever was estimated.
    Goes(Likely),
    /// It has taken so long that little or nothing of the estimate is left, and no piece is noted: what such a time has left.
    Longer {
        gone: Span,
        rest: Likely,
    },
    /// As it was planned, without what is put on top, less what was worked.
    AsPlanned {
        thought: Span,
        gone: Span,
    },
}

impl Left {
    /// The likely minutes of it, of a part that likely takes so long.
    pub fn likely(self, takes: Span) -> Span {
        match self {
            Left::Nothing(_) => Span::ZERO,
            Left::Less(gone) => takes.minus(gone).max(Span::ZERO),
            Left::Goes(time) | Left::Longer { rest: time, .. } => time.span(),
            Left::AsPlanned { thought, gone } => thought.minus(gone).max(Span::ZERO),
        }
    }
}

/// What is left of all parts; nothing where nothing is. What was thought is off as a whole, as in [`estimate`].
pub fn left(parts: &[(Part, Left)], on_top: OnTop, seed: u64) -> Range {
    let mut times = vec![];
    let mut thought = Begun { time: Likely::guessed(0.0), gone: 0.0 };
    for (part, left) in parts {
        match left {
            Left::Nothing(_) => {}
            Left::Goes(time) | Left::Longer { rest: time, .. } => times.push(Begun { time: *time, gone: 0.0 }),
            Left::AsPlanned { thought, gone } => {
                times.push(Begun { time: Likely::guessed(spread::minutes(*thought)), gone: spread::minutes(*gone) });
            }
            Left::Less(gone) if part.from == Basis::Thought => {
                // One that took too long leaves the others as they are.
                let gone = spread::minutes(*gone).min(topped(part, on_top).median);
                thought = Begun { time: Likely::guessed(thought.time.median + part.time.median), gone: thought.gone + gone };
            }
            Left::Less(gone) => times.push(Begun { time: topped(part, on_top), gone: spread::minutes(*gone) }),
        }
    }
    if 0.0 < thought.time.median {
        let all = Part { from: Basis::Thought, jobs: 0, time: thought.time };
        times.insert(0, Begun { time: topped(&all, on_top), ..thought });
    }
    spread::left(&times, seed).unwrap_or_default()
}

/// Each part's likely minutes; nothing is drawn for them.
pub fn each(parts: &[Part], on_top: OnTop) -> Vec<Span> {
    parts.iter().map(|part| topped(part, on_top).span()).listed()
}

/// A part with what is put on top.
pub fn topped(part: &Part, on_top: OnTop) -> Likely {
    match (on_top, part.from) {
        (OnTop::Factor(factor), Basis::Thought) => factor.likely(part.time.median),
        (OnTop::Allowance(share), Basis::Thought | Basis::Own | Basis::Kind | Basis::Design) => factor::allowed(part.time, share),
        _ => part.time,
    }
}

/// Whole per cent that make up a hundred: what is lost in rounding goes to the largest.
fn shares(parts: &[Part], of: impl Fn(&Part) -> Likely) -> Vec<(Basis, u32)> {
    let all: f64 = parts.iter().map(|part| of(part).median).sum();
    let mut found: Vec<(Basis, f64)> = vec![];
    for part in parts {
        match found.iter_mut().find(|(from, _)| *from == part.from) {
            Some((_, minutes)) => *minutes += of(part).median,
            None => found.push((part.from, of(part).median)),
        }
    }
    let percent = |minutes: f64| if 0.0 < all { (minutes / all * 100.0) as u32 } else { 0 };
    let mut shares: Vec<(Basis, u32)> = found.into_iter().map(|(from, minutes)| (from, percent(minutes))).collect();
    crate::quantity::order_by_key(&mut shares, |(from, share)| (std::cmp::Reverse(*share), *from));
    let sum = shares.iter().fold(0_u32, |sum, (_, share)| sum.saturating_add(*share));
    if let Some((_, largest)) = shares.first_mut() {
        *largest = largest.saturating_add(100_u32.saturating_sub(sum));
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;

    fn part(from: Basis, minutes: f64) -> Part {
        Part { from, jobs: 1, time: Likely::guessed(minutes) }
    }

    fn demo() -> Vec<Part> {
        [180, 120, 90, 240, 90, 180, 90, 60, 90].map(|minutes| part(Basis::Thought, f64::from(minutes))).to_vec()
    }

    fn factor() -> OnTop {
        OnTop::Factor(Factor::of(&[142, 118, 131].map(|ratio| Decimal::new(ratio, 2))))
    }

    /// Demo B: 19 h were thought, 25 h 26 are warned of.
    #[test]
    fn nineteen_hours_are_likely_twenty_five() {
        let found = estimate(&demo(), factor(), 1).unwrap();
        assert_eq!((found.thought, found.range.likely), (Some(Span::minutes(1_140)), Span::minutes(1_526)));
        assert!(found.range.low < found.range.likely && Span::minutes(1_563) < found.range.safe, "{:?}", found.range);
        assert_eq!((found.each[0], found.shares), (Span::minutes(241), vec![(Basis::Thought, 100)]));
        assert_eq!(estimate(&[], factor(), 1), None);
    }

    #[test]
    fn never_a_factor_and_an_allowance() {
        let parts = [part(Basis::Own, 100.0), part(Basis::Thought, 100.0), part(Basis::Piece, 100.0)];
        let each = |on_top| estimate(&parts, on_top, 1).unwrap().each.iter().map(|span| span.as_minutes()).collect::<Vec<_>>();
        assert_eq!(each(factor()), [100, 134, 100]);
        assert_eq!(each(OnTop::Allowance(Decimal::new(10, 2))), [110, 110, 100]);
    }

    #[test]
    fn shares_make_up_a_hundred() {
        let parts = [part(Basis::Own, 1.0), part(Basis::Thought, 1.0), part(Basis::Piece, 1.0)];
        let found = estimate(&parts, OnTop::Allowance(Decimal::ZERO), 1).unwrap();
        assert_eq!(found.shares, [(Basis::Own, 34), (Basis::Thought, 33), (Basis::Piece, 33)]);
    }
}
