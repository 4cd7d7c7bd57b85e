//! What is written of costs that belong to no job, by the forms of a job's costs.

use super::super::cans::OfCan;
use super::{Draft, Picks, What, priced};
use crate::app::App;
use crate::app::form::Form;

/// The form of a spending, or of what came back of one; none of anything else.
pub(super) fn begin(app: &App, blank: Draft) -> Option<Draft> {
    let (picks, words) = (Picks { can: OfCan::of(blank.picks.units), ..blank.picks.clone() }, vec![String::new()]);
    match blank.what {
        What::Spend => Some(Draft { form: Form::of(3), words, picks, ..blank }),
        What::CameBack(of) => {
            let known = app.shelf().workshop();
            let currency = known.costs.iter().find(|line| line.entry == of)?.sum.currency();
            Some(Draft { form: Form::of(2), words, picks: priced(Picks { currency, ..picks }, &known.costs, of), ..blank })
        }
        _ => None,
    }
}
