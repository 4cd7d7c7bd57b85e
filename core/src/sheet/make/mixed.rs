//! A glued part of which strips are cut, and what it lacks: of one wood, or of several.

use super::anew::woods_of;
use super::{AlreadyCut, Given};
use crate::ledger::kind::plan::DesignPart;
use crate::quantity::{Key, Length, Listed};
use crate::sheet::plan::PlanSheet;
use crate::sheet::plan::wish::{Wanted, Wish};

/// The woods of the strips that are cut of such a part, as far as they are known: of those that lack as much, else of all of it.
pub(super) fn woods_cut(cut: &AlreadyCut, rest: &Wanted, whole: Length) -> Vec<Option<Key>> {
    let [thickness, width, length] = rest.size;
    let of_it = |it: &DesignPart| it.name == rest.name && [it.thickness, it.width, it.length] == [thickness, whole, length];
    let begun = cut.begun.iter().filter(|it| it.lacks() == Some(width)).map(|it| &it.part).filter(|it| of_it(it));
    let begun = begun.map(|it| it.wood.clone()).listed();
    let parts = || cut.parts.iter().filter(|it| of_it(it)).map(|it| it.wood.clone()).listed();
    if begun.is_empty() { parts() } else { begun }
}

/// The woods of a part that is begun: of its strips that are cut, and of those that it lacks; none for one that is not known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Woods {
    pub cut: Vec<Option<Key>>,
    pub rest: Vec<Option<Key>>,
}

/// The woods of the strips that are cut of a part, and of those it lacks, where they are not the same and the maker said none for it; nothing
/// where the plan makes all of it, or the wood of what is cut is not known.
pub fn finished_of_other(given: &Given, sheet: &PlanSheet, part: usize) -> Option<Woods> {
    let Wish::Parts(list) = &given.ready.wish else { return None };
    let wanted = list.parts.get(part).filter(|it| it.wood.is_none())?;
    let mut cut = woods_cut(&given.cut, wanted, wanted.rest_of?).into_iter().filter(Option::is_some).listed();
    cut.sort();
    cut.dedup();
    let mut rest = woods_of(given, sheet, part);
    rest.sort();
    (!cut.is_empty() && !rest.is_empty() && cut != rest).then_some(Woods { cut, rest })
}
