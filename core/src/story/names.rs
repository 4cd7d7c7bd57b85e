//! The names a story gives to hauls, piles, jobs and people, and what it spoke of last.

use super::words::{Read, Unread, Words};
use crate::quantity::Id;
use crate::quantity::Sorted;

/// What each name names. A name given again names the new thing.
#[derive(Clone, Debug, Default)]
pub struct Names {
    pub(super) hauls: Sorted<String, Id>,
    /// Each pile with its haul.
    pub(super) piles: Sorted<String, (Id, Id)>,
    pub(super) jobs: Sorted<String, Id>,
    pub(super) people: Sorted<String, Id>,
    /// Acts and entries that a line named with `as`.
    pub(super) marks: Sorted<String, Id>,
    pub(super) last_haul: Option<Id>,
    pub(super) last_trip: Option<Id>,
    pub(super) last_run: Option<Id>,
    pub(super) last_act: Option<Id>,
    /// What `as` at the end of this line names, where that is not the act.
    pub(super) to_mark: Option<Id>,
}

impl Names {
    /// The haul of a name.
    pub fn haul(&self, name: &str) -> Option<Id> {
        self.hauls.get(name).copied()
    }

    /// The job of a name.
    pub fn job(&self, name: &str) -> Option<Id> {
        self.jobs.get(name).copied()
    }

    /// The pile of a name.
    pub fn pile(&self, name: &str) -> Option<Id> {
        self.piles.get(name).map(|(_, pile)| *pile)
    }

    /// The person of a name.
    pub fn person(&self, name: &str) -> Option<Id> {
        self.people.get(name).copied()
    }

    pub(super) fn said_pile(&self, words: &mut Words) -> Read<(Id, Id)> {
        said(&self.piles, words, "the name of a pile")
    }

    pub(super) fn said_haul(&self, words: &mut Words) -> Read<Id> {
        said(&self.hauls, words, "the name of a haul")
    }

    pub(super) fn said_job(&self, words: &mut Words) -> Read<Id> {
        said(&self.jobs, words, "the name of a job")
    }

    pub(super) fn said_person(&self, words: &mut Words) -> Read<Id> {
        said(&self.people, words, "the name of a person")
    }

    pub(super) fn said_mark(&self, words: &mut Words) -> Read<Id> {
        said(&self.marks, words, "a name that a line gave with `as`")
    }

    /// `of NAME`, or the haul spoken of last.
    pub(super) fn this_haul(&self, words: &mut Words) -> Read<Id> {
        if words.has("of") {
            return self.said_haul(words);
        }
        self.last_haul.ok_or(Unread { met: None, expected: "a haul before this line" })
    }
}

fn said<T: Copy>(names: &Sorted<String, T>, words: &mut Words, expected: &'static str) -> Read<T> {
    words.take(expected, |word| names.get(word).copied())
}
