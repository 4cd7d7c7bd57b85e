//! A kind of boards looked at with prices.

use super::super::cut::{Band, Cut, Pieces};
use super::super::plan::First;
use super::super::stock::Kind;
use super::super::sums::Filled;
use super::{Best, Board, Prices, Row, Saw};

/// A band of some size, filled as well as can be.
#[derive(Clone, Copy, Default)]
struct Choice {
    worth: i64,
    /// What it gains for each unit it is made wider.
    rate: i64,
    size: usize,
    row: usize,
}

pub(super) struct View<'a> {
    saw: &'a Saw<'a>,
    kind: (usize, &'a Kind),
    board: &'a Board,
    prices: &'a Prices<'a>,
    /// For each number of levels the parts within them, and how well a band can be filled with them.
    fronts: Vec<Filled>,
    /// By size, for each glued part: what a strip in such a band is worth, and its width.
    strips: Vec<Vec<(usize, i64, i64)>>,
    /// By section: what of each size is put across, and how well it fills.
    across: Vec<(Vec<usize>, Filled)>,
    /// What each section is worth, and its slack strip: part, and the place before it.
    sections: Vec<(i64, Option<(usize, usize)>)>,
    lengths: Filled,
}

impl<'a> View<'a> {
    pub(super) fn new(saw: &'a Saw<'a>, (nth, kind, board): (usize, &'a Kind, &'a Board), prices: &'a Prices<'a>) -> View<'a> {
        let mut view = View {
            saw,
            kind: (nth, kind),
            board,
            prices,
            fronts: vec![],
            strips: vec![],
            across: vec![],
            sections: vec![],
            lengths: Filled::default(),
        };
        view.fronts = (0..=board.levels.len()).map(|levels| view.front(levels)).collect();
        view.strips = view.strips();
        for section in &board.sections {
            let across = view.filled_across(*section);
            let worth = view.section(*section, &across);
            view.across.push(across);
            view.sections.push(worth);
        }
        view.lengths = Filled::of(&board.lengths, &view.sections.iter().map(|section| section.0).collect::<Vec<_>>());
        view
    }

    fn price(&self, part: usize) -> i64 {
        self.prices.parts.get(part).copied().unwrap_or(0)
    }

    fn rate(&self, part: usize) -> i64 {
        self.prices.rates.get(part).copied().unwrap_or(0)
    }

    fn own_parts(&self, glue: bool) -> impl Iterator<Item = usize> {
        let parts = self.saw.stock.parts.iter().zip(&self.kind.1.may).enumerate();
        parts.filter(move |(_, (part, may))| **may && part.glue == glue).map(|(nth, _)| nth)
    }

    fn long(&self, part: usize) -> i64 {
        self.saw.stock.parts.get(part).map_or(i64::MAX, |part| part.long)
    }

    fn wide(&self, part: usize) -> i64 {
        self.saw.stock.parts.get(part).map_or(i64::MAX, |part| part.wide)
    }

    fn front(&self, levels: usize) -> Filled {
        let widest = levels.checked_sub(1).and_then(|level| self.board.levels.get(level)).copied().unwrap_or(0);
        let worth = |(part, blank): (usize, &super::super::stock::Blank)| {
            if blank.glue || widest < self.kind.1.across(blank.wide) { 0 } else { self.price(part) }
        };
        let worth: Vec<i64> = self.saw.stock.parts.iter().enumerate().map(worth).collect();
        Filled::of(&self.board.along, &worth)
    }

    /// The best strip of each glued part in a band of each size.
    fn strips(&self) -> Vec<Vec<(usize, i64, i64)>> {
        let parts: Vec<usize> = self.own_parts(true).collect();
        let mut best: Vec<(usize, i64, i64)> = vec![];
        let mut all = vec![];
        for size in &self.board.sizes {
            if self.prices.rates.is_empty() {
                for strip in size.strips.iter().filter_map(|nth| Some((self.saw.strips.get(*nth)?, self.prices.strips.get(*nth)?))) {
                    let new = (strip.0.part, *strip.1, strip.0.wide);
                    match best.iter_mut().find(|own| own.0 == new.0) {
                        Some(own) if own.1 < new.1 => *own = new,
                        Some(_) => {}
                        None => best.push(new),
                    }
                }
            } else if self.saw.stock.strip_min <= size.wide {
                let of = |part: &usize| (*part, self.rate(*part).saturating_mul(self.saw.stock.units(size.wide)), size.wide);
                best = parts.iter().map(of).collect();
            }
            all.push(best.clone());
        }
        all
    }

    // along first: bands

    /// The best filling of a band of each size at this stretch, and all that gain by more width.
    fn choices(&self, stretch: i64) -> (Vec<Choice>, Vec<Choice>) {
        let room = stretch.saturating_add(self.saw.stock.kerf);
        let place = |row: &Row| self.board.along.within(room.saturating_sub(row.fills));
        let places: Vec<(usize, usize)> = self.board.rows.iter().enumerate().filter_map(|(nth, row)| Some((nth, place(row)?))).collect();
        let (mut best, mut wider) = (vec![], vec![]);
        for (nth, size) in self.board.sizes.iter().enumerate() {
            let mut top = Choice { size: nth, ..Choice::default() };
            for (row, place) in &places {
                let Some(choice) = self.choice((nth, size.fixed), (*row, *place)) else { continue };
                if 0 < choice.rate {
                    wider.push(choice);
                }
                if top.worth < choice.worth {
                    top = choice;
                }
            }
            best.push(top);
        }
        (best, wider)
    }

    fn choice(&self, (size, fixed): (usize, usize), (row, place): (usize, usize)) -> Option<Choice> {
        let mut choice = Choice { size, row, worth: self.fronts.get(fixed)?.at(place), rate: 0 };
        let strips = self.strips.get(size)?;
        for (part, many) in &self.board.rows.get(row)?.many {
            let (_, worth, _) = strips.iter().find(|(own, ..)| own == part)?;
            choice.worth = choice.worth.saturating_add(worth.saturating_mul(*many));
            choice.rate = choice.rate.saturating_add(self.rate(*part).saturating_mul(*many));
        }
        Some(choice)
    }

    /// The most that bands of this stretch are worth, and how: the bands side by side, and one that takes the width left.
    fn rip(&self, stretch: i64) -> (i64, Ripped) {
        let (best, wider) = self.choices(stretch);
        let filled = Filled::of(&self.board.across, &worths(&best));
        let last = self.board.across.fills.len().saturating_sub(1);
        let mut top = (filled.at(last), last, None);
        for choice in &wider {
            let room = self.kind.1.wide.saturating_sub(self.board.sizes.get(choice.size).map_or(i64::MAX, |size| size.wide));
            for (place, fill) in self.board.across.fills.iter().enumerate() {
                let slack = room.saturating_sub(*fill);
                if slack < 0 {
                    break;
                }
                let worth = filled.at(place).saturating_add(choice.worth).saturating_add(choice.rate.saturating_mul(slack));
                if top.0 < worth {
                    top = (worth, place, Some((*choice, slack)));
                }
            }
        }
        (top.0, Ripped { best, filled, place: top.1, wider: top.2 })
    }

    fn ripped(&self, stretch: i64) -> Vec<Band> {
        let ripped = self.rip(stretch).1;
        let put = ripped.filled.back(&self.board.across, ripped.place);
        let choices = put.iter().filter_map(|size| ripped.best.get(*size)).map(|choice| (*choice, 0));
        choices.chain(ripped.wider).filter_map(|(choice, slack)| self.band(&choice, slack, stretch)).collect()
    }

    fn band(&self, choice: &Choice, slack: i64, stretch: i64) -> Option<Band> {
        let (size, row) = (self.board.sizes.get(choice.size)?, self.board.rows.get(choice.row)?);
        let place = self.board.along.within(stretch.saturating_add(self.saw.stock.kerf).saturating_sub(row.fills))?;
        let mut pieces: Vec<Pieces> = vec![];
        for part in self.fronts.get(size.fixed)?.back(&self.board.along, place) {
            match pieces.iter_mut().find(|own| own.part == part) {
                Some(own) => own.many = own.many.saturating_add(1),
                None => pieces.push(Pieces { part, wide: self.wide(part), many: 1 }),
            }
        }
        for (part, many) in &row.many {
            let (_, _, wide) = self.strips.get(choice.size)?.iter().find(|(own, ..)| own == part)?;
            pieces.push(Pieces { part: *part, wide: wide.saturating_add(slack), many: *many });
        }
        let whole = pieces.iter().map(|piece| piece.wide).fold(0, i64::max);
        Some(Band { size: size.wide.saturating_add(slack).max(whole), pieces })
    }

    // across first: sections

    /// What is best put across a section in each size, and how well it fills.
    fn filled_across(&self, section: i64) -> (Vec<usize>, Filled) {
        let (mut parts, mut worths) = (vec![], vec![]);
        for size in &self.board.sizes {
            let fixed =
                self.own_parts(false).filter(|part| self.kind.1.across(self.wide(*part)) == size.wide).map(|part| (self.price(part), part));
            let strips = size.strips.iter().filter_map(|nth| {
                let part = self.saw.strips.get(*nth)?.part;
                let free = self.rate(part).saturating_mul(self.saw.stock.units(size.wide));
                Some((if self.prices.rates.is_empty() { *self.prices.strips.get(*nth)? } else { free }, part))
            });
            let best = fixed.chain(strips).filter(|(_, part)| self.long(*part) <= section).max();
            worths.push(best.map_or(0, |best| best.0));
            parts.push(best.map_or(0, |best| best.1));
        }
        rising(&mut worths);
        (parts, Filled::of(&self.board.across, &worths))
    }

    /// What a section is worth, and which glue strip takes the width left behind which place.
    fn section(&self, section: i64, (_, filled): &(Vec<usize>, Filled)) -> (i64, Option<(usize, usize)>) {
        let last = self.board.across.fills.len().saturating_sub(1);
        let mut top = (filled.at(last), None);
        for part in self.own_parts(true).filter(|part| 0 < self.rate(*part) && self.long(*part) <= section) {
            for (place, fill) in self.board.across.fills.iter().enumerate() {
                let wide = self.kind.1.wide.saturating_sub(*fill);
                if wide < self.saw.stock.strip_min {
                    break;
                }
                let worth = filled.at(place).saturating_add(self.rate(part).saturating_mul(self.saw.stock.units(wide)));
                if top.0 < worth {
                    top = (worth, Some((part, place)));
                }
            }
        }
        top
    }

    fn crossed(&self, stretch: i64) -> Vec<Band> {
        let place = self.board.lengths.within(stretch.saturating_add(self.saw.stock.kerf)).unwrap_or(0);
        self.lengths.back(&self.board.lengths, place).into_iter().filter_map(|section| self.section_band(section)).collect()
    }

    fn section_band(&self, nth: usize) -> Option<Band> {
        let (size, (_, slack), (parts, filled)) = (self.board.sections.get(nth)?, self.sections.get(nth)?, self.across.get(nth)?);
        let place = slack.map_or(self.board.across.fills.len().saturating_sub(1), |(_, place)| place);
        let mut pieces: Vec<Pieces> = vec![];
        for nth in filled.back(&self.board.across, place) {
            let (part, size) = (parts.get(nth)?, self.board.sizes.get(nth)?.wide);
            let wide = self.saw.stock.parts.get(*part).filter(|part| !part.glue).map_or(size, |part| part.wide);
            match pieces.iter_mut().find(|own| own.part == *part && own.wide == wide) {
                Some(own) => own.many = own.many.saturating_add(1),
                None => pieces.push(Pieces { part: *part, wide, many: 1 }),
            }
        }
        if let Some((part, place)) = slack {
            let wide = self.kind.1.wide.saturating_sub(*self.board.across.fills.get(*place)?);
            pieces.push(Pieces { part: *part, wide, many: 1 });
        }
        Some(Band { size: *size, pieces })
    }

    // both

    fn cost(&self, stretch: i64) -> i64 {
        self.saw.stock.cost(self.kind.1, stretch).saturating_mul(self.prices.scale)
    }

    /// What pieces from this stretch are worth at most, and which way it is cut first.
    fn worth(&self, stretch: i64) -> (i64, First) {
        let place = self.board.lengths.within(stretch.saturating_add(self.saw.stock.kerf)).unwrap_or(0);
        let cross = self.lengths.at(place);
        let rip = if stretch < self.saw.stock.rip_min { 0 } else { self.rip(stretch).0 };
        if rip < cross { (cross, First::Cross) } else { (rip, First::Rip) }
    }

    /// The best over all stretches: between two of them nothing is worth more than the longer gives, nor costs less than the shorter.
    pub(super) fn best(&self) -> Option<Best> {
        let whole = self.kind.1.long;
        let (worth, first) = self.worth(whole);
        let mut top = (worth.saturating_sub(self.cost(whole)), whole, first);
        if 0 < self.prices.scale && !self.board.stretches.is_empty() {
            let mut open = vec![(0, self.board.stretches.len(), worth)];
            while let Some((from, to, most)) = open.pop() {
                let Some(least) = self.board.stretches.get(from).filter(|_| from < to) else { continue };
                if most.saturating_sub(self.cost(*least)) <= top.0 {
                    continue;
                }
                let middle = from.midpoint(to.saturating_sub(1));
                let stretch = *self.board.stretches.get(middle)?;
                let (worth, first) = self.worth(stretch);
                let value = worth.saturating_sub(self.cost(stretch));
                if top.0 < value {
                    top = (value, stretch, first);
                }
                open.push((from, middle, worth));
                open.push((middle.saturating_add(1), to, most));
            }
        }
        let bands = if top.2 == First::Rip { self.ripped(top.1) } else { self.crossed(top.1) };
        Some(Best { most: top.0, cut: Cut { kind: self.kind.0, first: top.2, stretch: top.1, bands } })
    }
}

/// How a stretch is ripped.
struct Ripped {
    best: Vec<Choice>,
    filled: Filled,
    place: usize,
    wider: Option<(Choice, i64)>,
}

/// What each size is worth; nothing where a smaller one is worth as much.
fn worths(best: &[Choice]) -> Vec<i64> {
    let mut all = best.iter().map(|choice| choice.worth).collect();
    rising(&mut all);
    all
}

fn rising(worths: &mut Vec<i64>) {
    let mut most = 0;
    for worth in worths {
        if *worth <= most {
            *worth = 0;
        }
        most = most.max(*worth);
    }
}
