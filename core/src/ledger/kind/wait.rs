//! Facts of waits: clamps, drying, cure; what is usual; quiet hours.

pub use crate::bench::wait::Warmth;

use super::kinds;
use crate::quantity::{Clock, Count, Id, Key, Span};

kinds! {
    /// Pieces wait; the wait's id is the entry's. `what` is `glue`, `coat`, `dry` or `cure`, `stuff` the glue or the finish. It is off at
    /// the wall clock of the entry + `span`. Of a job or of none; `run` is the run it came from.
    WaitBegan { op: String, n: Count, span: Span, what: Key; job: Id, run: Id, stuff: Key }
    /// Taken off; `early` before its time was over (no, where it is missing).
    WaitEnded { wait: Id; early: bool }
    /// A wait lasts otherwise, from its beginning.
    WaitMended { wait: Id, span: Span; }
    /// An operation ends in such a wait; without `span` as long as is usual. With no `what` it has no wait.
    OperationWaitSet { op: String; what: Key, stuff: Key, span: Span }
    /// How long is usual in a shop so warm; without `span` as the app has it.
    UsualWaitSet { what: Key, warmth: Warmth; stuff: Key, span: Span }
    /// How warm the shop is.
    WarmthSet { warmth: Warmth; }
    /// When no noise is made, by the clock; with neither, never.
    QuietHoursSet { ; from: Clock, until: Clock }
    /// Whether an operation is loud.
    OperationLoudSet { op: String, loud: bool; }
}
