//! Forms that are half written: where another is opened they lie aside, and each is taken up again where it was left.

use super::super::App;
use super::draft::{Draft, What, begin};
use fivebar_core::quantity::Id;

/// A form that lies aside, and the job it is of; none of a form of no job.
#[derive(Clone, Debug, PartialEq)]
pub struct Aside {
    job: Option<Id>,
    draft: Box<Draft>,
}

/// Opens a form of a job, as it was left where it was half written. What is half written of the form in hand lies aside.
pub fn open(app: &mut App, job: Option<Id>, what: What) {
    let was = app.jobs.open;
    if let Some(draft) = app.jobs.draft.take()
        && begin(app, draft.what.clone()).as_ref() != Some(&*draft)
    {
        app.jobs.aside.retain(|it| !it.is_of(was, &draft.what));
        app.jobs.aside.push(Aside { job: was, draft });
    }
    app.jobs.open = job;
    let there = app.jobs.aside.iter().position(|it| it.is_of(job, &what));
    app.jobs.draft = match there {
        Some(at) => Some(app.jobs.aside.remove(at).draft),
        None => begin(app, what).map(Box::new),
    };
}

impl Aside {
    fn is_of(&self, job: Option<Id>, what: &What) -> bool {
        (self.job, &self.draft.what) == (job, what)
    }
}
