//! The shared format of the four problems, `"fivebar_yield": 1`: instances are read, solutions written. One file for each problem.
//!
//! It is read with the core's own strict reader, which hands on figures as they are written: up to 39 digits, never through a float.
//! It stands here and not in the core, since the app's worker gets its problem as plain data.
#![allow(dead_code)] // two examples and a test share it, and each uses its part

pub mod field;
pub mod parts;
pub mod record;
pub mod rows;
pub mod sticks;
pub mod why;

pub use fivebar_core::plan::Asked as Problem;
use fivebar_core::plan::patience::Patience;
use fivebar_core::plan::{self, Figures, Planned, Sense};
use record::{Record, Trouble};

/// A problem, and the head that its solution repeats.
#[derive(Clone, Debug)]
pub struct Instance {
    pub name: String,
    pub class: String,
    pub unit: i64,
    pub problem: Problem,
}

/// The text of a solution, and its figures.
pub struct Solution {
    pub text: String,
    pub worth: Figures,
    pub bound: Figures,
}

/// The largest text that is read, in bytes.
const TEXT_MOST: usize = 4_000_000;

/// Reads an instance; what is no instance, or out of range, is refused by name.
pub fn read(text: &str) -> Result<Instance, Trouble> {
    if TEXT_MOST < text.len() {
        return Err(format!("the instance has {} bytes, more than {TEXT_MOST}", text.len()));
    }
    let head = Record::read("the instance", text)?;
    if head.whole("fivebar_yield")? != 1 {
        return Err("fivebar_yield is not 1: another format".into());
    }
    let unit = head.whole("unit_nm")?;
    if !(1..=plan::limits::UNIT_MOST).contains(&unit) {
        return Err(format!("unit_nm is {unit}, and may be 1 to {}", plan::limits::UNIT_MOST));
    }
    let problem = match &*head.text("problem")? {
        "rows" => Problem::Rows(rows::read(&head)?),
        "parts" => Problem::Parts(parts::read(&head)?),
        "sticks" => Problem::Sticks(sticks::read(&head)?),
        "field" => Problem::Field(field::read(&head)?),
        other => return Err(format!("no problem is called {other:?}")),
    };
    problem.check().map_err(|refusal| format!("{refusal:?}"))?;
    let class = head.maybe("class").map_or(Ok(String::new()), |_| head.text("class"))?;
    Ok(Instance { name: head.text("name")?, class, unit, problem })
}

impl Instance {
    /// What the problem is called in the format.
    pub fn kind(&self) -> &'static str {
        match self.problem {
            Problem::Rows(_) => "rows",
            Problem::Parts(_) => "parts",
            Problem::Sticks(_) => "sticks",
            Problem::Field(_) => "field",
        }
    }

    pub fn senses(&self) -> &'static [Sense] {
        self.problem.senses()
    }

    /// Solves it and writes the solution.
    pub fn solve(&self, patience: &mut Patience<'_>, seed: u64) -> Solution {
        match &self.problem {
            Problem::Rows(problem) => self.solution(plan::rows::solve(problem, patience, seed), |p| rows::write(problem, &p.plan)),
            Problem::Parts(problem) => self.solution(plan::parts::solve(problem, patience, seed), |p| parts::write(problem, &p.plan)),
            Problem::Sticks(problem) => self.solution(plan::sticks::solve(problem, patience, seed), |p| sticks::write(problem, &p.plan)),
            Problem::Field(problem) => self.solution(plan::field::solve(problem, patience, seed), |p| {
                let why = why::no_nearer(problem, p).map_or_else(String::new, |why| why.written());
                field::write(problem, &p.plan) + &why
            }),
        }
    }

    /// What decides that there are no more rows or sets than the bound says, where that is fewer than were asked.
    fn why(&self, bound: &[i128]) -> Option<why::Why> {
        why::no_more(&self.problem, i64::try_from(*bound.first()?).ok()?)
    }

    /// The solution's text around the members that `written` gives for the plan.
    fn solution<P>(&self, planned: Planned<P>, written: impl Fn(&Planned<P>) -> String) -> Solution {
        let (members, why) = (written(&planned), self.why(&planned.bound).map_or_else(String::new, |why| why.written()));
        let Planned { worth, bound, .. } = planned;
        let head = format!(r#""fivebar_yield":1,"problem":"{}","name":{},"unit_nm":{}"#, self.kind(), quoted(&self.name), self.unit);
        let claims = format!(r#""claims":{{"objective":{worth:?},"bound":{bound:?}}}"#);
        Solution { text: format!("{{{head},\n{members},\n{claims}{why}}}"), worth, bound }
    }
}

/// A text between quotes.
pub fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// A list of what is written already, one a line.
pub fn listed(items: impl Iterator<Item = String>) -> String {
    format!("[{}]", items.collect::<Vec<_>>().join(",\n "))
}
