//! How long a plan may be improved: so many steps, or until the caller says stop. The core has no clock; the caller may.

/// How far the planning has come. Figures are empty until something is found.
#[derive(Clone, Copy, Debug)]
pub struct Progress<'a> {
    pub steps: u64,
    /// The figures of the best plan so far.
    pub worth: &'a [i128],
    /// What no plan can pass, as far as it is proven.
    pub bound: &'a [i128],
    /// What was found is looked at again: nothing new is told.
    pub again: bool,
}

/// After so many steps the caller is asked whether to go on.
const ASKED_AFTER: u64 = 64;

/// What the planner spends. A step is about a thousand sums, some microseconds in a terminal; the same steps give the same plan.
pub struct Patience<'a> {
    steps: u64,
    most: u64,
    asked: u64,
    over: bool,
    worth: super::Figures,
    bound: super::Figures,
    goes_on: &'a mut dyn FnMut(Progress<'_>) -> bool,
}

impl<'a> Patience<'a> {
    /// At most so many steps, or without end; `goes_on` is told of the progress now and then and at each better plan, and says whether to go on.
    ///
    /// ```
    /// use fivebar_core::plan::patience::Patience;
    /// let mut never_stop = |_: fivebar_core::plan::patience::Progress| true;
    /// let mut patience = Patience::new(Some(2), &mut never_stop);
    /// assert_eq!([patience.spend(1), patience.spend(1), patience.spend(1)], [true, false, false]);
    /// ```
    pub fn new(most: Option<u64>, goes_on: &'a mut dyn FnMut(Progress<'_>) -> bool) -> Patience<'a> {
        let most = most.unwrap_or(u64::MAX);
        Patience { steps: 0, most, asked: 0, over: most == 0, worth: vec![], bound: vec![], goes_on }
    }

    /// Spends steps; whether there are more.
    pub fn spend(&mut self, steps: u64) -> bool {
        self.steps = self.steps.saturating_add(steps);
        if self.most <= self.steps {
            self.over = true;
        } else if self.asked.saturating_add(ASKED_AFTER) <= self.steps {
            self.ask();
        }
        !self.over
    }

    /// Whether the planner must hand over what it has.
    pub fn is_over(&self) -> bool {
        self.over
    }

    pub fn steps(&self) -> u64 {
        self.steps
    }

    /// A better plan was found.
    pub fn found(&mut self, worth: &[i128]) {
        self.worth = worth.to_vec();
        self.ask();
    }

    /// A sharper bound was proven.
    pub fn proved(&mut self, bound: &[i128]) {
        self.bound = bound.to_vec();
        self.ask();
    }

    fn ask(&mut self) {
        self.asked = self.steps;
        let on = (self.goes_on)(Progress { steps: self.steps, worth: &self.worth, bound: &self.bound, again: false });
        self.over |= !on;
    }

    /// So many steps of its own for another look at what was found. Who plans is told nothing new of it, but is asked whether to go on.
    pub(super) fn again<T>(&mut self, steps: u64, look: impl FnOnce(&mut Patience<'_>) -> T) -> T {
        let Patience { worth, bound, goes_on, .. } = self;
        let mut asks = |now: Progress<'_>| goes_on(Progress { steps: now.steps, worth, bound, again: true });
        look(&mut Patience::new(Some(steps), &mut asks))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_caller_is_told_of_progress_and_can_stop_it() {
        let mut told = vec![];
        let mut goes_on = |progress: Progress<'_>| {
            told.push((progress.steps, progress.worth.to_vec(), progress.bound.to_vec()));
            told.len() < 3
        };
        let mut patience = Patience::new(None, &mut goes_on);
        patience.proved(&[9]);
        patience.found(&[5, 70]);
        assert!(!patience.is_over());
        assert!(!patience.spend(ASKED_AFTER), "the third time it was asked it said stop");
        assert!(!patience.spend(1), "and stays over");
        assert_eq!(told, [(0, vec![], vec![9]), (0, vec![5, 70], vec![9]), (64, vec![5, 70], vec![9])]);
    }
}
