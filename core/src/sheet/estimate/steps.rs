//! How each figure of an estimate comes about, in figures that a maker can work back by hand.

use super::history::{Done, Of};
use super::{EstimateSheet, Row};
use crate::bench::estimate::gain::of_pieces;
use crate::bench::estimate::learn::{Past, Says, own_gain};
use crate::bench::estimate::spread::Likely;
use crate::bench::estimate::{Basis, whole};
use crate::quantity::{Count, Decimal, Listed, Span};

/// What the figure of one operation is worked out from, before factor and allowance.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// What was planned.
    Thought,
    /// What it took on other jobs: the middle of what each says, all multiplied and the root taken.
    Learnt(Learnt),
    /// Its part of the whole piece: the share of its stage, evenly among so many operations.
    Share { of: Span, share: Decimal, among: Count },
    /// A first guess for one, and what so many take of it.
    Guess { one: Span, times: Decimal },
}

/// What was learnt of an operation.
#[derive(Clone, Debug, PartialEq)]
pub struct Learnt {
    pub jobs: Vec<Took>,
    /// By the maker's own batches twice the pieces take so many times as long; none before they say so.
    pub doubling: Option<Decimal>,
}

/// What an operation took on one job, and what that says of this one.
#[derive(Clone, Debug, PartialEq)]
pub struct Took {
    pub job: String,
    pub n: Count,
    /// What it took, of all heads; in how many coats where it were several, and of how many it says something.
    pub took: Span,
    pub coats: Option<[Count; 2]>,
    /// Minutes of so many coats.
    pub time: Span,
    pub helped: bool,
    /// Minutes that are in no piece, and those of the first piece; none where the time alone speaks.
    pub apart: Option<[Decimal; 2]>,
    /// What the pieces of this job, and of that one, take of the first.
    pub times: Decimal,
    pub had: Decimal,
    pub says: Span,
}

/// How the figure of an operation comes about; none for the whole piece and its rest.
pub fn step(sheet: &EstimateSheet, row: &Row) -> Option<Step> {
    let op = row.op.as_deref()?;
    let learnt = |of: Of| Some(Step::Learnt(learnt(&sheet.history.done(op, sheet.job, of), row.n)));
    match row.from {
        Basis::Thought => Some(Step::Thought),
        Basis::Design => learnt(Of::Design(sheet.design?)),
        Basis::Kind => learnt(Of::Kind(sheet.piece.as_ref().or(sheet.named.as_ref())?)),
        Basis::Own => learnt(Of::NotApart(sheet.piece.as_ref())),
        Basis::Pieces | Basis::Piece => {
            let among = sheet.rows.iter().filter(|other| other.op.is_some() && other.stage == row.stage).count();
            let share = hundredths(whole::share(row.stage));
            Some(Step::Share { of: sheet.whole.as_ref()?.likely, share, among: Count::try_from(among).ok()? })
        }
        Basis::Operation => Some(Step::Guess { one: Likely::by_kind(row.kind).span(), times: hundredths(of_pieces(row.n.max(1))) }),
    }
}

fn learnt(done: &[Done], n: Count) -> Learnt {
    let past: Vec<Past> = done.iter().map(|done| done.past.clone()).listed();
    let own = own_gain(&past);
    let took = |done: &Done| {
        let (past, says) = (&done.past, Says::of(&done.past, n, own));
        let is_apart = own.is_none() && 0.0 < says.setup;
        Took {
            job: done.job.clone(),
            n: past.n,
            took: done.took,
            coats: (1 < done.coats).then_some([done.coats, done.says]),
            time: past.time,
            helped: done.helped,
            apart: is_apart.then(|| [says.setup, says.first].map(hundredths)),
            times: hundredths(says.times),
            had: hundredths(says.had),
            says: crate::bench::estimate::spread::whole(says.minutes()),
        }
    };
    Learnt { jobs: done.iter().map(took).listed(), doubling: own.map(|law| hundredths(2.0 * law.of_doubling())) }
}

/// By how many times one figure is exceeded one time in ten: of an operation by its name, or of all that was planned together.
#[derive(Clone, Debug, PartialEq)]
pub struct Tenth {
    pub of: Option<String>,
    /// The whole piece, or its rest.
    pub is_whole: bool,
    pub times: Decimal,
}

/// What the safe figure is drawn from, in the order of the rows: what was planned counts as one, because people are off on a job as a whole.
pub fn tenths(sheet: &EstimateSheet) -> Vec<Tenth> {
    let planned = sheet.rows.iter().find(|row| row.from == Basis::Thought);
    let planned = planned.map(|row| Tenth { of: None, is_whole: false, times: beyond(row.time) });
    let others = sheet.rows.iter().filter(|row| row.from != Basis::Thought);
    let others = others.map(|row| Tenth { of: row.op.clone(), is_whole: row.op.is_none(), times: beyond(row.time) });
    planned.into_iter().chain(others).listed()
}

/// What it does not pass nine times in ten, over what is likely.
fn beyond(time: Likely) -> Decimal {
    if 0.0 < time.median { Decimal::new((time.at(0.9) / time.median * 1000.0 + 0.5).floor() as i64, 3) } else { Decimal::ONE }
}

fn hundredths(figure: f64) -> Decimal {
    Decimal::new((figure * 100.0 + 0.5).floor() as i64, 2)
}
