//! A kept plan as it is shown again: by what it was made for, as the book keeps it. What an older book does not say is taken from the row
//! itself, else from today, and what is in neither is said to be missing.

use super::buy::to_buy;
use super::planed::is_planed;
use super::top::{Pick, is_held_back, strip_before};
use super::{
    AlreadyCut, Ask, Boards, Field, Given, Lacks, Source, Top, Unfit, What, figures, fitting, places, room, stack, tiles, unfitting,
};
use crate::haul::Pile;
use crate::ledger::Fact;
use crate::ledger::decide::Lying;
use crate::ledger::fold::{self, Job, KeptPlan, Part};
use crate::ledger::kind::plan::{DesignPart, PlanKept, PlanPile};
use crate::plan::field::problem::Mix;
use crate::plan::{Answered, Asked};
use crate::quantity::{Count, Currency, Id, Key, Length, Listed, Moment, Wall};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::plan::figures::{Figures, Machines};
use crate::sheet::plan::off::sawn;
use crate::sheet::plan::ready::{Ready, Source as Planned, letter};
use crate::sheet::plan::wish::{Panel, Parts, Wanted, Wish};
use crate::sheet::rack::{RackPile, rack_pile};

/// What was asked of a plan: of the pieces that fit, those it was not made from are left out.
pub fn asked_again(shop: &Shop, kept: &KeptPlan, bought: &[Boards]) -> Option<Ask> {
    let (asked, _) = kept.told()?;
    let without = kept.plan.parts.iter().flatten().filter(|part| part.n == 0).map(|part| part.name.clone()).listed();
    let mut ask = Ask { job: kept.plan.job, what: what(&asked, &kept.plan)?, turned: vec![], bought: bought.to_vec(), without, over: None };
    let is_in = |source: &Source| {
        let (Lying { haul, pile }, in_job) = source.which();
        kept.plan.piles.iter().any(|it| (it.haul, it.pile, it.in_job == Some(true)) == (haul, pile, in_job))
    };
    let all = fitting(shop, &ask).ok()?;
    // Nor does one leave out what is held back: thinner pieces did.
    let saw = figures(shop, shop.job(kept.plan.job).ok()?.units).ok()?;
    let held =
        |source: &Source| matches!((&ask.what, kept.plan.thickness), (What::Top(_), Some(thick)) if is_held_back(source, thick, &saw));
    // A top of one wood leaves no pile of another out, and a field of one pile none: it was not looked at.
    let woods = woods_of(&kept.plan);
    let of_it = |source: &Source| match &ask.what {
        What::Top(top) => top.mixed || woods.is_empty() || woods.contains(&source.pile.wood),
        What::Field(_) => 1 < kept.plan.piles.len(),
        What::Parts(_) | What::Sticks(_) => true,
    };
    let was = |source: &Source| was_there(shop, kept, source);
    let fits = |source: &Source, why: Option<Unfit>| why.is_none() && source.bought.is_none() && of_it(source) && was(source);
    let out = |source: &Source| is_in(source) == source.in_job && (source.in_job || !held(source));
    let turned = all.iter().filter(|(source, why)| fits(source, *why) && out(source));
    ask.turned = turned.map(|(source, _)| source.which()).listed();
    Some(ask)
}

/// Nobody left out what came after a plan, such as what is left of its own boards.
fn was_there(shop: &Shop, kept: &KeptPlan, source: &Source) -> bool {
    let plan = shop.book.entry(kept.id).map(|(entry, _)| entry.stamp);
    let pile = shop.book.entry(source.pile.pile).map(|(entry, _)| entry);
    pile.is_none_or(|pile| plan.map_or(pile.wall.at <= kept.at.at, |plan| pile.stamp < plan))
}

/// A plan with what it was made for, as it is shown; nothing where its row is no plan, or boards it counts on are not known.
pub fn again(shop: &Shop, kept: &KeptPlan, bought: &[Boards]) -> Option<(Given, Answered)> {
    let (asked, answered) = kept.told()?;
    let job = shop.job(kept.plan.job).ok()?;
    let ask = asked_again(shop, kept, bought)?;
    let made = Made { shop, job: &job, plan: &kept.plan, asked: &asked, left: left_by(shop, kept) };
    let figures = made.figures(figures(shop, job.units).ok()?);
    let boards = to_buy(bought, job.units);
    let sources: Vec<Source> = (0..kept.plan.piles.len()).map(|nth| made.source(nth, &boards)).collect::<Option<_>>()?;
    let (wish, names) = made.wish(&ask, &figures)?;
    let planned = sources.iter().enumerate().map(|(nth, source)| made.planned(nth, source, (&wish, &figures))).listed();
    let lacks = Lacks { names, sizes: sources.iter().any(|source| source.sides().is_none()) };
    let ready = Ready { wish, figures, sources: planned, left_out: vec![], unit: kept.plan.unit.as_nm(), asked: asked.clone() };
    let left_out = still_out((shop, kept), &ask, &sources);
    let (room, units, alike) = (room(shop, &job).ok()?, job.units, job.pieces);
    let (rows, stayed) = (kept.plan.rows_cut.unwrap_or(0), kept.plan.boards_cut.unwrap_or(0));
    let parts = kept.plan.cut.clone().unwrap_or_default();
    let cut = AlreadyCut { boards: vec![], parts, sets: kept.plan.sets.unwrap_or(0), rows, stayed, ..AlreadyCut::default() };
    let given = Given { ask, ready, sources, left_out, room, units, lacks, ways: vec![], alike, own: vec![], some: false, cut, unasked: 0 };
    Some((given, answered))
}

/// What does not fit now, but for the piles it was made from and those that came after it.
fn still_out((shop, kept): (&Shop, &KeptPlan), ask: &Ask, sources: &[Source]) -> Vec<(Source, Unfit)> {
    let all = fitting(shop, ask).unwrap_or_default();
    let is_in = |source: &Source| sources.iter().any(|it| it.which().0 == source.which().0);
    unfitting(&all).into_iter().filter(|(source, _)| !is_in(source) && was_there(shop, kept, source)).listed()
}

/// A part as a row has it: how many and whether it is glued up, and the sides that are known.
type InRow = ((i64, bool), [Option<Length>; 3]);

/// A plan with its job and its problem.
struct Made<'a> {
    shop: &'a Shop<'a>,
    job: &'a Job,
    plan: &'a PlanKept,
    asked: &'a Asked,
    left: Vec<Left>,
}

/// What the act of a used plan left of pieces of a pile: thickness, width and length.
struct Left {
    of: Id,
    size: [Length; 3],
}

/// As it was left then; plans of before rows were planed before they are cut left them as thick and wide as the board.
fn left_by(shop: &Shop, kept: &KeptPlan) -> Vec<Left> {
    let act = shop.book.entry(kept.id).and_then(|(entry, _)| entry.act);
    let facts = act.map(|act| shop.book.act(act)).unwrap_or_default();
    let one = |id: Id| {
        let Fact::PiecesLeft(f) = &shop.book.entry(id)?.0.fact else { return None };
        let Fact::PileAdded(pile) = &shop.book.entry(f.pile)?.0.fact else { return None };
        Some(Left { of: f.of, size: [pile.thickness?, pile.width?, pile.length?] })
    };
    facts.into_iter().filter_map(one).listed()
}

impl Made<'_> {
    fn length(&self, units: i64) -> Option<Length> {
        self.plan.unit.times(units).ok()
    }

    /// The figures it was made with: as they were kept, else those in the row, else today's. The machines' are in the row.
    fn figures(&self, today: Figures) -> Figures {
        let mut figures = self.of_row(today.clone()).unwrap_or(today);
        if let Some(saw) = &self.plan.saw {
            for (place, said) in places(&mut figures).into_iter().zip(saw.lengths()) {
                *place = said.unwrap_or(*place);
            }
            figures.spread = saw.glue.map_or(figures.spread, i64::from);
        }
        figures
    }

    /// What the row alone says: a book that says no saw kept the least to keep as it is, also where it is longer than all boards.
    fn of_row(&self, today: Figures) -> Option<Figures> {
        let of = |units: i64| self.length(units);
        let machines = |plane: i64| Some(Machines { plane: of(plane)?, ..today.machines });
        Some(match self.asked {
            Asked::Rows(it) => Figures {
                kerf: of(it.kerf)?,
                square: of(it.square)?,
                min_end: of(it.min_end)?,
                min_piece: of(it.min_piece)?,
                stagger: of(it.stagger)?,
                keep_min: of(it.keep_min)?,
                machines: machines(it.machine_min)?,
                ..today
            },
            Asked::Parts(it) => Figures {
                kerf: of(it.kerf)?,
                end_trim: of(it.end_trim)?,
                edge_trim: of(it.edge_trim)?,
                allow: [of(it.allow.length)?, of(it.allow.width)?, of(it.allow.thickness)?],
                joint: of(it.joint)?,
                strip_min: of(it.strip_min)?,
                keep_min: of(it.keep_min)?,
                machines: Machines { plane: of(it.plane_min)?, rip: of(it.rip_min)? },
                ..today
            },
            Asked::Sticks(it) => Figures {
                kerf: of(it.kerf)?,
                end_trim: of(it.end_trim)?,
                keep_min: of(it.keep_min)?,
                machines: machines(it.machine_min)?,
                ..today
            },
            Asked::Field(it) => Figures {
                kerf: of(it.kerf)?,
                allow: [of(it.allow.length)?, of(it.allow.width)?, of(it.allow.thickness)?],
                min_piece: of(it.cut_min)?,
                // Tiles of a length are of boards that the machines took.
                machines: if self.plan.tile.is_some() { today.machines } else { machines(it.machine_min)? },
                ..today
            },
        })
    }

    /// Thickness, width and length of a pile as far as the row has them.
    fn row_sides(&self, nth: usize) -> [Option<Length>; 3] {
        let of = |units: i64| self.length(units);
        let sides = match self.asked {
            Asked::Rows(it) => it.piles.get(nth).map(|pile| [None, None, of(pile.length)]),
            Asked::Sticks(it) => it.piles.get(nth).map(|pile| [None, None, of(pile.length)]),
            Asked::Parts(it) => it.piles.get(nth).map(|pile| [of(pile.thickness), of(pile.width), of(pile.length)]),
            Asked::Field(it) => it.piles.get(nth).map(|pile| [of(pile.thickness), of(pile.width), of(pile.length)]),
        };
        sides.unwrap_or_default()
    }

    /// The pile it was made from, of the size it had then; a pile that is no more goes by its letter.
    fn source(&self, nth: usize, boards: &[Source]) -> Option<Source> {
        let kept = self.plan.piles.get(nth)?;
        if let Some(board) = boards.iter().find(|it| it.pile.pile == kept.pile) {
            return Some(board.clone());
        }
        if kept.haul == Id::new(Moment::default(), [0; 10]) {
            return None;
        }
        let haul = fold::haul(self.shop.book, kept.haul);
        let there = haul.as_ref().and_then(|haul| rack_pile(haul, haul.pile(kept.pile)?, self.job.id).ok());
        let mut pile = match there {
            Some(there) => there,
            None => self.gone(kept, letter_of(kept, nth)).ok()?,
        };
        let [thickness, width, length] = self.row_sides(nth);
        let today = pile.size();
        let now = &mut pile.alike;
        now.length_to = now.length_to.filter(|_| kept.length.or(length).is_none_or(|then| now.length == Some(then)));
        now.thickness = kept.thickness.or(thickness).or(now.thickness);
        now.width = kept.width.or(width).or(now.width);
        now.length = kept.length.or(length).or(now.length);
        now.wood = kept.wood.clone().or(now.wood.take());
        // A piece as it is measured today is none of another size.
        pile.piece = pile.piece.filter(|_| pile.size() == today);
        let planed = is_planed(self.shop.book, &pile);
        Some(Source { pile, in_job: kept.in_job == Some(true), n: kept.n, bought: None, planed })
    }

    fn gone(&self, kept: &PlanPile, label: String) -> Answer<RackPile> {
        let haul = crate::haul::Haul::new(kept.haul, (Currency::USD, self.job.units), Wall::default());
        rack_pile(&haul, &Pile { label, ..Pile::new(kept.pile) }, self.job.id)
    }

    /// The pile as the problem has it.
    fn planned(&self, nth: usize, source: &Source, (wish, figures): (&Wish, &Figures)) -> Planned {
        let kept = self.plan.piles.get(nth);
        let mut size = [source.pile.thickness, source.pile.width, source.pile.length].map(Option::unwrap_or_default);
        if let Wish::Panel(panel) = wish {
            let wide = sawn(panel.strip, figures).unwrap_or(panel.strip);
            size[1] = if source.pile.width.is_some() { size[1].min(wide) } else { wide };
        }
        let each = i64::from(kept.and_then(|kept| kept.rips).unwrap_or(1));
        Planned {
            letter: kept.map_or_else(|| letter(nth), |kept| letter_of(kept, nth)),
            stack: stack(self.shop, source),
            size,
            ripped: if self.plan.tile.is_some() { 1 } else { each },
            tiles: if self.plan.tile.is_some() { each } else { 1 },
            count: if matches!(self.asked, Asked::Field(_)) { i64::from(source.n) } else { self.counts().get(nth).copied().unwrap_or(0) },
            left: self.section_left(source, size[2]),
        }
    }

    /// Of what is left of cut pieces, which are no more as long as the pile is.
    fn section_left(&self, source: &Source, long: Length) -> Option<[Length; 2]> {
        let left = self.left.iter().find(|left| left.of == source.pile.pile && left.size[2] < long);
        left.map(|Left { size: [thickness, width, _], .. }| [*thickness, *width])
    }

    fn counts(&self) -> Vec<i64> {
        match self.asked {
            Asked::Rows(problem) => problem.piles.iter().map(|pile| pile.count).listed(),
            Asked::Parts(problem) => problem.piles.iter().map(|pile| pile.count).listed(),
            Asked::Sticks(problem) => problem.piles.iter().map(|pile| pile.count).listed(),
            Asked::Field(problem) => problem.piles.iter().map(|pile| pile.count).listed(),
        }
    }

    /// What was wished for, and whether names of parts are missing.
    fn wish(&self, ask: &Ask, figures: &Figures) -> Option<(Wish, bool)> {
        Some(match (&ask.what, self.asked) {
            (What::Top(top), Asked::Rows(_)) => {
                let (thickness, strip) = (
                    top.thickness.unwrap_or_default(),
                    self.plan.strip.unwrap_or_else(|| strip_before(top, top.rows.unwrap_or(1), figures)),
                );
                (Wish::Panel(Panel { length: top.length, width: Some(top.width), thickness, strip, split: top.split }), false)
            }
            (What::Field(field), _) => (Wish::Tiles(tiles(field, figures)), false),
            (_, Asked::Parts(problem)) => {
                let side = |n: i64| self.length(n);
                let sides = problem.parts.iter().map(|part| [side(part.thickness), side(part.width), side(part.length)]);
                let ns = problem.parts.iter().map(|part| (part.per_set, part.glue));
                let (parts, names) = self.parts(&ns.zip(sides).listed());
                (Wish::Parts(Parts { sets: problem.sets, parts }), names)
            }
            (_, Asked::Sticks(problem)) => {
                let sides = problem.parts.iter().map(|part| ((part.per_set, false), [None, None, self.length(part.length)]));
                let (parts, names) = self.parts(&sides.listed());
                (Wish::Sticks(Parts { sets: problem.sets, parts }), names)
            }
            _ => return None,
        })
    }

    /// A part of the row that is narrower than the one of its name that was cut before it is the rest of that.
    fn rest_of(&self, part: &Part) -> Option<Length> {
        let [thickness, width, length] = part.size;
        let is_of = |cut: &&DesignPart| cut.name == part.name && (cut.thickness, cut.length) == (thickness, length) && width < cut.width;
        self.plan.cut.iter().flatten().find(is_of).map(|cut| cut.width)
    }

    /// The parts of the row by the names they had; of an older book by those of today that are so many of that size.
    fn parts(&self, row: &[InRow]) -> (Vec<Wanted>, bool) {
        let of_design = |it: &DesignPart| {
            let size = [it.thickness, it.width, it.length];
            Part { name: it.name.clone(), n: it.n, size, wood: it.wood.clone() }
        };
        let kept = self.plan.parts.as_ref().map(|parts| parts.iter().map(of_design).listed());
        let mut known = kept.unwrap_or_else(|| self.job.parts.clone());
        let (mut wanted, mut missing) = (vec![], false);
        for ((n, glue), sides) in row {
            let fits = |part: &Part| {
                let same = sides.iter().zip(part.size).all(|(side, of)| side.is_none_or(|side| side == of));
                i64::from(part.n) == *n && same
            };
            let found = known.iter().position(fits).map(|nth| known.remove(nth));
            missing |= found.is_none();
            let part = found.unwrap_or_else(|| Part { name: String::new(), n: 0, size: sides.map(Option::unwrap_or_default), wood: None });
            let wood = part.wood.as_ref().map(ToString::to_string);
            let rest_of = self.rest_of(&part);
            wanted.push(Wanted { name: part.name, n: *n, size: part.size, glue: *glue, wood, rest_of });
        }
        (wanted, missing)
    }
}

fn letter_of(kept: &PlanPile, nth: usize) -> String {
    kept.letter.clone().unwrap_or_else(|| letter(nth))
}

/// The woods of the piles a plan was made from; none where an older book does not say them.
fn woods_of(kept: &PlanKept) -> Vec<Option<Key>> {
    let mut all: Vec<Option<Key>> = vec![];
    for pile in kept.piles.iter().filter(|_| kept.piles.iter().any(|pile| pile.wood.is_some())) {
        if !all.contains(&pile.wood) {
            all.push(pile.wood.clone());
        }
    }
    all
}

/// What was asked, back on the rule.
fn what(asked: &Asked, kept: &PlanKept) -> Option<What> {
    let length = |n: i64| kept.unit.times(n).ok();
    let count = |n: Option<i64>| n.and_then(|n| Count::try_from(n).ok());
    Some(match asked {
        Asked::Rows(problem) => What::Top(Top {
            length: length(problem.length)?,
            width: kept.width?,
            thickness: kept.thickness,
            rows: count(problem.rows),
            apart: length(problem.stagger)?,
            split: problem.split,
            mixed: 1 < woods_of(kept).len(),
            pick: woods_of(kept).first().zip(kept.thickness).map(|(wood, thickness)| Pick {
                wood: wood.clone(),
                thickness,
                thick: false,
                wide: None,
                without: None,
            }),
        }),
        Asked::Parts(problem) => What::Parts(kept.sets.or(count(problem.sets))),
        Asked::Sticks(problem) => What::Sticks(kept.sets.or(count(problem.sets))),
        Asked::Field(problem) => What::Field(Field {
            sides: problem.targets.map(|target| target.and_then(|target| length(target.size))),
            tolerance: problem.targets.iter().flatten().next().and_then(|target| length(target.tolerance)).unwrap_or_default(),
            patterns: problem.patterns.clone(),
            two: problem.mix.contains(&Mix::Alternate),
            tile: kept.tile,
        }),
    })
}
