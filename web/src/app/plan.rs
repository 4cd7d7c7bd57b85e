//! What can be made: the planning under way.

use super::news::Planning;
use fivebar_core::plan::{Answered, Figures};

/// How the planning stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Stands {
    #[default]
    NotAsked,
    /// The worth of the best plan so far, and what no plan can pass; empty until something is found.
    UnderWay {
        worth: Figures,
        bound: Figures,
    },
    Planned(Box<Answered>),
    Failed,
}

impl Stands {
    /// Takes in what is heard; nothing is, where none is under way.
    pub fn hear(&mut self, told: Planning) {
        if let Stands::UnderWay { .. } = self {
            *self = match told {
                Planning::Better { worth, bound } => Stands::UnderWay { worth, bound },
                Planning::Done(answered) => Stands::Planned(answered),
                Planning::Failed => Stands::Failed,
            };
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_heard_after_it_was_called_off_changes_nothing() {
        let better = || Planning::Better { worth: vec![8], bound: vec![9] };
        let mut stands = Stands::NotAsked;
        stands.hear(better());
        assert_eq!(stands, Stands::NotAsked);
        stands = Stands::UnderWay { worth: vec![], bound: vec![] };
        stands.hear(better());
        assert_eq!(stands, Stands::UnderWay { worth: vec![8], bound: vec![9] });
        stands.hear(Planning::Failed);
        stands.hear(better());
        assert_eq!(stands, Stands::Failed);
    }
}
