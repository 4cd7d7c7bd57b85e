//! What can be made of these pieces: rows, parts, sticks and fields, each with a bound that no plan can pass.
//!
//! A problem and its plan are plain data in whole numbers; a length counts in the problem's own unit.
//! Floats may choose what is tried; what is shown and what is proven is reckoned in whole numbers.

mod branch;
pub use crate::quantity::draw;
pub mod field;
pub mod leaves;
pub mod limits;
pub mod lp;
pub mod outlook;
pub mod parts;
pub mod patience;
pub mod post;
pub mod price;
pub mod rows;
pub mod sticks;
pub mod unlock;

use crate::refusal::Answer;
use patience::Patience;

/// What a plan is worth: its figures, the weightiest first. Volumes and squares need all 128 bits.
pub type Figures = Vec<i128>;

/// Whether more or less of a figure is better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    More,
    Less,
}

/// Whether `one` is better than `other`, compared from the left over the figures both have.
///
/// ```
/// use fivebar_core::plan::{better, Sense::{Less, More}};
/// assert!(better(&[More, Less], &[5, 90], &[5, 100])); // five sets from less wood
/// assert!(!better(&[More, Less], &[4, 10], &[5, 100]));
/// assert!(!better(&[More, Less], &[5], &[5, 100])); // a bound of one figure says nothing of the wood
/// ```
pub fn better(senses: &[Sense], one: &[i128], other: &[i128]) -> bool {
    let differ = senses.iter().zip(one.iter().zip(other)).find(|(_, (a, b))| a != b);
    differ.is_some_and(|(sense, (a, b))| if *sense == Sense::More { b < a } else { a < b })
}

/// The largest that both are whole multiples of.
fn common(a: i64, b: i64) -> i64 {
    match a.checked_rem(b) {
        None => a,
        Some(rest) => common(b, rest),
    }
}

/// The fewest from 1 to `most` that do, where more always do if fewer did; `None` where not even `most` do.
fn fewest(mut most: i64, does: &mut dyn FnMut(i64) -> bool) -> Option<i64> {
    if most < 1 || !does(most) {
        return None;
    }
    let mut least = 1_i64;
    while least < most {
        let middle = least.midpoint(most);
        if does(middle) { most = middle } else { least = middle.saturating_add(1) }
    }
    Some(most)
}

/// A plan, what it is worth, and the bound: no plan at all is better than that over the figures it has.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Planned<P> {
    pub plan: P,
    pub worth: Figures,
    pub bound: Figures,
}

impl<P> Planned<P> {
    fn map<Q>(self, into: impl FnOnce(P) -> Q) -> Planned<Q> {
        Planned { plan: into(self.plan), worth: self.worth, bound: self.bound }
    }

    /// The better plan of two of one problem, with the sharper of their bounds: both hold, whichever plan they were proven beside.
    ///
    /// ```
    /// use fivebar_core::plan::{Planned, Sense::{Less, More}};
    /// let planned = |worth: [i128; 2], bound: &[i128]| Planned { plan: worth, worth: worth.to_vec(), bound: bound.to_vec() };
    /// let both = planned([5, 120], &[5, 100]).or_better(planned([5, 100], &[6, 90]), &[More, Less]);
    /// assert!(both.is_proven()); // the second is as good as the first proved
    /// ```
    #[must_use]
    pub fn or_better(self, other: Planned<P>, senses: &[Sense]) -> Planned<P> {
        let is_same = self.bound.iter().zip(&other.bound).all(|(one, other)| one == other);
        let is_sharper = if is_same { self.bound.len() < other.bound.len() } else { better(senses, &self.bound, &other.bound) };
        let bound = if is_sharper { other.bound } else { self.bound };
        let (plan, worth) = if better(senses, &other.worth, &self.worth) { (other.plan, other.worth) } else { (self.plan, self.worth) };
        Planned { plan, worth, bound }
    }

    /// Whether no plan can do better in any figure.
    pub fn is_proven(&self) -> bool {
        self.worth == self.bound
    }
}

/// One of the four problems.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Asked {
    Rows(rows::problem::Problem),
    Parts(parts::problem::Problem),
    Sticks(sticks::problem::Problem),
    Field(field::problem::Problem),
}

/// One of the four plans.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Made {
    Rows(rows::plan::Plan),
    Parts(parts::plan::Plan),
    Sticks(sticks::plan::Plan),
    Field(field::plan::Plan),
}

/// A plan of any of the four, what it is worth, and what no plan can pass.
pub type Answered = Planned<Made>;

impl Default for Asked {
    fn default() -> Self {
        Asked::Rows(Default::default())
    }
}

impl Default for Made {
    fn default() -> Self {
        Made::Rows(Default::default())
    }
}

impl Asked {
    /// Every figure is one that can be planned with.
    ///
    /// # Errors
    /// As the `check` of each problem.
    pub fn check(&self) -> Answer<()> {
        match self {
            Asked::Rows(problem) => problem.check(),
            Asked::Parts(problem) => problem.check(),
            Asked::Sticks(problem) => problem.check(),
            Asked::Field(problem) => problem.check(),
        }
    }

    /// Whether a plan is one of this problem, breaks no rule, is worth what it says, and is not better than its own bound. A
    /// bound may say nothing, as that of another phone's plan does here, or as many figures as there are, and no more.
    pub fn holds(&self, answered: &Answered) -> bool {
        let worth = self.worth(&answered.plan);
        answered.bound.len() <= answered.worth.len()
            && worth.is_some_and(|worth| worth == answered.worth)
            && !better(self.senses(), &answered.worth, &answered.bound)
    }

    /// What a plan is worth; nothing where it is not one of this problem, or breaks a rule.
    pub fn worth(&self, plan: &Made) -> Option<Figures> {
        match (self, plan) {
            (Asked::Rows(problem), Made::Rows(plan)) => rows::check::check(problem, plan).ok().map(|worth| worth.to_vec()),
            (Asked::Parts(problem), Made::Parts(plan)) => parts::check::check(problem, plan).ok().map(|worth| worth.to_vec()),
            (Asked::Sticks(problem), Made::Sticks(plan)) => sticks::check::check(problem, plan).ok().map(|worth| worth.to_vec()),
            (Asked::Field(problem), Made::Field(plan)) => field::check::check(problem, plan).ok().map(|worth| worth.to_vec()),
            _ => None,
        }
    }

    /// What a short end would give a plan of rows, where that is worth saying. It is searched for: nothing for the page.
    pub fn short_end(&self, answered: &Answered) -> Option<rows::ends::ShortEnd> {
        match (self, &answered.plan) {
            (Asked::Rows(problem), Made::Rows(plan)) => rows::ends::worth_saying(problem, plan),
            _ => None,
        }
    }

    /// What each figure of the plan's worth is better for.
    pub fn senses(&self) -> &'static [Sense] {
        match self {
            Asked::Rows(_) => &rows::SENSES,
            Asked::Parts(_) => &parts::SENSES,
            Asked::Sticks(_) => &sticks::SENSES,
            Asked::Field(_) => &field::SENSES,
        }
    }

    /// The best plan found while patience lasts. The same seed and steps give the same plan.
    pub fn solve(&self, patience: &mut Patience<'_>, seed: u64) -> Answered {
        let found = match self {
            Asked::Rows(problem) => rows::solve(problem, patience, seed).map(Made::Rows),
            Asked::Parts(problem) => parts::solve(problem, patience, seed).map(Made::Parts),
            Asked::Sticks(problem) => sticks::solve(problem, patience, seed).map(Made::Sticks),
            Asked::Field(problem) => field::solve(problem, patience, seed).map(Made::Field),
        };
        leaves::most_left(self, found, patience, seed)
    }
}

#[cfg(test)]
mod tests {
    use super::Sense::{Less, More};
    use super::*;

    /// Which plan stays, and which bound.
    #[test]
    fn the_better_plan_stays_with_the_sharper_bound() {
        let planned = |(worth, bound): (&[i128], &[i128])| Planned { plan: (), worth: worth.to_vec(), bound: bound.to_vec() };
        for (one, other, worth, bound) in [
            // A worse plan that proved more.
            ((&[5, 100][..], &[7, 90][..]), (&[4, 90][..], &[5, 95][..]), [5, 100], &[5, 95][..]),
            ((&[4, 90], &[5, 95]), (&[5, 100], &[7, 90]), [5, 100], &[5, 95]),
            // A bound of fewer figures is sharper where its last is; of the same, that of more.
            ((&[5, 100], &[5]), (&[5, 99], &[6, 10]), [5, 99], &[5]),
            ((&[5, 100], &[5]), (&[5, 100], &[5, 98]), [5, 100], &[5, 98]),
            ((&[5, 100], &[5, 98]), (&[5, 100], &[5]), [5, 100], &[5, 98]),
            ((&[5, 100], &[]), (&[4, 100], &[6]), [5, 100], &[6]),
        ] {
            let both = planned(one).or_better(planned(other), &[More, Less]);
            assert_eq!((both.worth, both.bound), (worth.to_vec(), bound.to_vec()), "{one:?} {other:?}");
        }
    }

    /// Slices of a shop's sticks with other lots each, too short to prove anything to its end: together they come as near as any of them, in each
    /// figure, and what they are together holds.
    #[test]
    fn slices_of_one_problem_add_up() {
        let pile = |id: &str, count, length| sticks::problem::Pile { id: id.into(), count, length };
        let part = |id: &str, per_set, length| sticks::problem::Part { id: id.into(), per_set, length, piles: None };
        let problem = sticks::problem::Problem {
            sets: None,
            kerf: 3,
            end_trim: 5,
            machine_min: 0,
            keep_min: 250,
            piles: vec![pile("a", 19, 1_010), pile("b", 23, 730), pile("c", 17, 1_330)],
            parts: vec![part("leg", 4, 431), part("rail", 3, 317), part("slat", 5, 209)],
        };
        let asked = Asked::Sticks(problem);
        let slice = |seed| asked.solve(&mut Patience::new(Some(40), &mut |_: patience::Progress<'_>| true), seed);
        let all: Vec<Answered> = (1..=12).map(slice).collect();
        let both = all.iter().cloned().reduce(|one, other| one.or_better(other, asked.senses())).expect("slices");
        assert!(asked.holds(&both));
        for one in &all {
            assert!(!better(asked.senses(), &one.worth, &both.worth) && !better(asked.senses(), &both.bound, &one.bound), "{one:?}");
        }
    }
}
