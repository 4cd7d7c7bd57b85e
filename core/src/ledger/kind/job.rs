//! Facts of jobs: what is made, its parts and operations, its end.

use super::bench::{Kind, Stage};
use super::{Exact, kinds};
use crate::quantity::{Count, Currency, Id, Key, Length, Moment, Money, Span, Units, spelled};

/// What a job is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum For {
    /// To be sold later.
    Spec,
    /// A buyer who ordered it.
    Order,
}

spelled!(For: Spec "spec", Order "order");

kinds! {
    /// Of one haul, what a job used: part of [`JobEnded`]. The share of the haul's costs and of its minutes, in whole minutes as
    /// milliseconds; used and good volume in cubic millimetres.
    HaulUsed { haul: Id, cost: Money, time: Span, used: Exact, good: Exact; }
    /// A job was begun; its id is the entry's. Currency and units are fixed here; `pieces` alike are made.
    JobBegan { name: String, currency: Currency, units: Units, pieces: Count, made_for: For; }
    /// What is said of a job and its piece. `piece` is a key (stool, stand, bench). Weight in grams, one piece. `due` is the date promised.
    /// A side or a weight of nothing, or an empty text, takes away what was said.
    JobDescribed { job: Id; name: String, pieces: Count, piece: Key, width: Length, depth: Length, height: Length, weight: i64,
        wood: String, finish: String, care: String, delivery: String, due: Moment, note: String }
    /// A part of one piece: finished size, and how many of it one piece has. A part of the same name replaces it; n = 0 takes it away.
    PartPlanned { job: Id, name: String, n: Count, thickness: Length, width: Length, length: Length; wood: Key }
    /// An operation of a job and what it was thought to take. The same name replaces it.
    OperationPlanned { job: Id, op: String, kind: Kind; stage: Stage, span: Span, pieces: Count }
    /// A cost still to come. Of its kind, as much as was booked since is no longer to come. `delivery`: falls away when the buyer fetches it.
    /// The same kind replaces it; nothing takes it away.
    CostPlanned { job: Id, kind: Key, sum: Money; what: String, delivery: bool }
    /// The maker was done with a job. What its hauls cost it is frozen here.
    JobEnded { job: Id, hauls: Vec<HaulUsed>; }
    /// A job that had ended goes on.
    JobReopened { job: Id; }
    /// Whether a job is typical: the others stay out of history.
    JobMarked { job: Id, typical: bool; }
    /// What was learnt, in a line. No names here.
    LessonWritten { job: Id, text: String; }
}

impl JobDescribed {
    /// Nothing is said of it yet.
    pub fn of(job: Id) -> JobDescribed {
        let (name, pieces, piece, weight, due, note) = (None, None, None, None, None, None);
        let [width, depth, height] = [None; 3];
        let (wood, finish, care, delivery) = (None, None, None, None);
        JobDescribed { job, name, pieces, piece, width, depth, height, weight, wood, finish, care, delivery, due, note }
    }
}
