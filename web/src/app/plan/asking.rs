//! What is asked, as it is typed: a shape, its few figures, the piles to use.

use super::buying::Buying;
use super::{Page, Tap};
use crate::app::App;
use crate::app::form::Form;
use fivebar_core::ledger::fold::{Job, Part};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::plan::field::problem::Pattern;
use fivebar_core::quantity::reading::{self, Misread, Sign, Typing};
use fivebar_core::quantity::{Count, Id, Length, PILE_MOST, writing};
use fivebar_core::sheet::make::{Ask, Boards, Field, Given, Pick, Source, Top, Unfit, What, Which};
use fivebar_core::sheet::plan::figures::Figures;

/// The figures of a top: long, wide, rows, joints apart, thick.
pub const TOP: usize = 5;
/// Those of a field: wide, deep, high, how near, how long a tile.
pub const FIELD: usize = 5;
/// The patterns of a field, in the order of their chips.
pub const PATTERNS: [Pattern; 5] = [Pattern::Stack, Pattern::Running, Pattern::Basket, Pattern::Herringbone, Pattern::Crossed];

/// All that lie in one layer.
const ANY: [bool; 5] = [true, true, true, true, false];

/// Whichever pattern comes nearest.
pub fn any() -> Vec<Pattern> {
    PATTERNS.into_iter().zip(ANY).filter(|(_, on)| *on).map(|(pattern, _)| pattern).collect()
}

/// What is being asked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Draft {
    /// None before it was chosen.
    pub shape: Option<Shape>,
    pub form: Form,
    /// Strips may be cut into pieces.
    pub split: bool,
    /// A top may be of several woods; and the wood and thickness that were chosen of those it could have.
    pub mixed: bool,
    pub pick: Option<Pick>,
    /// By their places in [`PATTERNS`].
    pub patterns: [bool; 5],
    pub two: bool,
    pub turned: Vec<Which>,
    /// Boards that could be bought, and those that are being typed.
    pub bought: Vec<Boards>,
    pub buying: Option<Buying>,
    /// Parts that are left out, by their names.
    pub without: Vec<String>,
    /// So much over in width in this plan alone.
    pub over: Option<Length>,
}

fn written(length: Length, typing: Typing) -> String {
    writing::length(length, typing)
}

/// The part that looks like a top: the one with the largest face.
fn largest(job: &Job) -> Option<&Part> {
    job.parts.iter().max_by_key(|part| i128::from(part.size[1].as_nm()).saturating_mul(i128::from(part.size[2].as_nm())))
}

impl Draft {
    /// A shape begins with what is known of the job.
    pub fn begun(shape: Shape, job: &Job, figures: Option<&Figures>, typing: Typing) -> Draft {
        let apart = figures.map_or(String::new(), |figures| written(figures.stagger, typing));
        let form = match shape {
            Shape::Rows => {
                let [thick, wide, long] = largest(job).map_or([const { String::new() }; 3], |part| part.size.map(|it| written(it, typing)));
                Form::filled([long, wide, String::new(), apart, thick])
            }
            Shape::Parts | Shape::Sticks => Form::filled([job.pieces.to_string()]),
            Shape::Field => {
                let said = &job.described;
                let side = |side: Option<Length>| side.map_or(String::new(), |side| written(side, typing));
                let near = figures.map_or(String::new(), |figures| written(figures.kerf, typing));
                Form::filled([side(said.width), side(said.depth), String::new(), near, String::new()])
            }
        };
        let patterns = std::array::from_fn(|nth| nth == 0);
        Draft { shape: Some(shape), form, split: true, patterns, ..Draft::default() }
    }

    /// Another shape of the same job: boards to buy are what they were, and of the job's parts all that is asked.
    pub fn of_other(&self, begun: Draft) -> Draft {
        let of_parts = |shape: Option<Shape>| matches!(shape, Some(Shape::Parts | Shape::Sticks));
        if of_parts(self.shape) && of_parts(begun.shape) {
            return Draft { shape: begun.shape, ..self.clone() };
        }
        Draft { bought: self.bought.clone(), ..begun }
    }

    /// What was asked, typed in again.
    pub fn of(ask: &Ask, typing: Typing) -> Draft {
        Draft {
            turned: ask.turned.clone(),
            bought: ask.bought.clone(),
            without: ask.without.clone(),
            over: ask.over,
            ..Draft::of_what(&ask.what, typing)
        }
    }

    fn of_what(what: &What, typing: Typing) -> Draft {
        let side = |side: Option<Length>| side.map_or(String::new(), |side| written(side, typing));
        let count = |n: Option<Count>| n.map_or(String::new(), |n| n.to_string());
        let draft = Draft { shape: Some(what.shape()), split: true, patterns: [true, true, false, false, false], ..Draft::default() };
        match what {
            What::Top(top) => {
                let form = [
                    written(top.length, typing),
                    written(top.width, typing),
                    count(top.rows),
                    written(top.apart, typing),
                    side(top.thickness),
                ];
                Draft { form: Form::filled(form), split: top.split, mixed: top.mixed, pick: top.pick.clone(), ..draft }
            }
            What::Parts(sets) | What::Sticks(sets) => Draft { form: Form::filled([count(*sets)]), ..draft },
            What::Field(field) => {
                let [wide, deep, high] = field.sides.map(side);
                let patterns = PATTERNS.map(|pattern| field.patterns.contains(&pattern));
                let form = Form::filled([wide, deep, high, written(field.tolerance, typing), side(field.tile)]);
                Draft { form, patterns, two: field.two, ..draft }
            }
        }
    }

    pub(super) fn say(&mut self, tap: Tap, sign: Sign) {
        match tap {
            Tap::At(at) => self.under_thumb().go(at),
            Tap::Press(press) => self.under_thumb().press(press, sign),
            Tap::BuyWood(nth) => self.buying.iter_mut().for_each(|buying| buying.wood = nth),
            Tap::DropBoards(nth) if nth < self.bought.len() => drop(self.bought.remove(nth)),
            Tap::Split(split) => self.split = split,
            Tap::Mixed(mixed) => (self.mixed, self.pick) = (mixed, None),
            Tap::AsMany => self.form.put(0, String::new()),
            Tap::Pattern(nth) => self.patterns = std::array::from_fn(|one| one == nth),
            Tap::AnyPattern => self.patterns = ANY,
            Tap::Two => self.two = !self.two,
            Tap::Turn(which) => {
                let before = self.turned.len();
                self.turned.retain(|it| *it != which);
                if before == self.turned.len() {
                    self.turned.push(which);
                }
            }
            _ => {}
        }
    }

    /// Any pattern will do.
    pub fn any_pattern(&self) -> bool {
        1 < self.patterns.iter().filter(|on| **on).count()
    }

    fn under_thumb(&mut self) -> &mut Form {
        self.buying.as_mut().map_or(&mut self.form, |buying| &mut buying.form)
    }

    /// What is asked, as far as it can be read, for a look at the piles.
    pub fn rough(&self, job: Id, typing: Typing) -> Option<Ask> {
        self.clone().ask(job, typing).or_else(|| {
            let what = match self.shape? {
                Shape::Rows => What::Top(Top::default()),
                Shape::Parts => What::Parts(None),
                Shape::Sticks => What::Sticks(None),
                Shape::Field => What::Field(Field::default()),
            };
            Some(Ask {
                job,
                what,
                turned: self.turned.clone(),
                bought: self.bought.clone(),
                without: self.without.clone(),
                over: self.over,
            })
        })
    }

    /// What is asked; a figure that can't be read comes under the thumb with the reason.
    pub fn ask(&mut self, job: Id, typing: Typing) -> Option<Ask> {
        let what = match self.shape? {
            Shape::Rows => What::Top(self.top(typing)?),
            Shape::Parts => What::Parts(self.count(0, typing)?),
            Shape::Sticks => What::Sticks(self.count(0, typing)?),
            Shape::Field => What::Field(self.field(typing)?),
        };
        Some(Ask { job, what, turned: self.turned.clone(), bought: self.bought.clone(), without: self.without.clone(), over: self.over })
    }

    fn count(&mut self, nth: usize, typing: Typing) -> Option<Option<Count>> {
        self.form.maybe(nth, |text| reading::count_within(text, typing.sign, 1..=PILE_MOST))
    }

    fn top(&mut self, typing: Typing) -> Option<Top> {
        let length = self.form.take(0, |text| side(text, typing))?;
        let width = self.form.take(1, |text| side(text, typing))?;
        let rows = self.count(2, typing)?;
        let apart = self.form.maybe(3, |text| side(text, typing))?.unwrap_or_default();
        let thickness = self.form.maybe(4, |text| side(text, typing))?;
        let (mixed, pick) = (self.mixed, self.pick.clone());
        Some(Top { length, width, thickness, rows, apart, split: self.split, mixed, pick })
    }

    fn field(&mut self, typing: Typing) -> Option<Field> {
        let wide = Some(self.form.take(0, |text| side(text, typing))?);
        let deep = self.form.maybe(1, |text| side(text, typing))?;
        let high = self.form.maybe(2, |text| side(text, typing))?;
        let tolerance = self.form.maybe(3, |text| side(text, typing))?.unwrap_or_default();
        let tile = self.form.maybe(4, |text| side(text, typing))?;
        let patterns = PATTERNS.into_iter().zip(self.patterns).filter(|(_, on)| *on).map(|(pattern, _)| pattern);
        Some(Field { sides: [wide, deep, high], tolerance, patterns: patterns.collect(), two: self.two, tile })
    }
}

fn side(text: &str, typing: Typing) -> Result<Length, Misread> {
    reading::length(text, typing)
}

/// The piles that are used, of those that fit, and how many pieces they have; what is yet to buy is none.
pub fn in_use(fit: &[(Source, Option<Unfit>)], turned: &[Which]) -> (usize, Count) {
    let on = |source: &Source| source.bought.is_none() && turned.contains(&source.which()) == source.in_job;
    let used = fit.iter().filter(|(source, why)| why.is_none() && on(source));
    used.fold((0, 0), |(piles, pieces): (usize, Count), (source, _)| (piles + 1, pieces.saturating_add(source.n)))
}

/// A shape is asked, of the open job.
pub fn choose(app: &mut App, shape: Shape) {
    let Some(job) = app.jobs.open else { return };
    let typing = app.shelf().shop(app.now.at).job(job).ok().map(|job| (app.speech.typing(job.units), job));
    let Some((typing, facts)) = typing else { return };
    let figures = fivebar_core::sheet::make::figures(&app.shelf().shop(app.now.at), facts.units).ok();
    if app.plan.draft.shape != Some(shape) {
        let begun = Draft::begun(shape, &facts, figures.as_ref(), typing);
        // After a plan that is used something else is asked; boards that were named since are still to buy.
        let of_used = |given: &Given| given.ask.bought == app.plan.draft.bought;
        app.plan.draft = match app.plan.used.and(app.plan.given.as_deref()) {
            Some(given) if of_used(given) => begun,
            Some(_) => Draft { bought: std::mem::take(&mut app.plan.draft.bought), ..begun },
            None => app.plan.draft.of_other(begun),
        };
    }
    app.plan.page = Page::Ask;
}

/// Where what was asked last is shown again. A job with parts may be another thing by now than the top or the field that was asked: the
/// figures of that stay, and what it looks like is asked.
pub(super) fn page_of(app: &App, job: Id, draft: &Draft) -> Page {
    let is_of_parts = matches!(draft.shape, Some(Shape::Parts | Shape::Sticks));
    let has_parts = app.shelf().shop(app.now.at).job(job).is_ok_and(|job| !job.parts.is_empty());
    if has_parts && !is_of_parts { Page::Choose } else { Page::Ask }
}

/// A part of the open job is asked as a top in rows.
pub fn top_of(app: &mut App, part: &str) {
    let shop = app.shelf().shop(app.now.at);
    let Some(Ok(mut job)) = app.jobs.open.map(|job| shop.job(job)) else { return };
    job.parts.retain(|it| it.name == part);
    let figures = fivebar_core::sheet::make::figures(&shop, job.units).ok();
    let begun = Draft::begun(Shape::Rows, &job, figures.as_ref(), app.speech.typing(job.units));
    app.plan.why_not = None;
    app.plan.draft = app.plan.draft.of_other(begun);
}

/// The rows are planned with strips cut in pieces.
pub fn cut_in_pieces(app: &mut App) {
    app.plan.draft.split = true;
    super::go(app);
}

/// The rows are planned with their joints so near.
pub fn joints_apart(app: &mut App, apart: Length) {
    let units = app.plan.given.as_ref().map(|given| given.units);
    let typing = units.map(|units| app.speech.typing(units));
    typing.into_iter().for_each(|typing| app.plan.draft.form.put(3, written(apart, typing)));
    super::go(app);
}

/// Leaves a part out, or takes it in again. A plan that was refused for it is made at once.
pub fn leave_out(app: &mut App, name: String) {
    let without = &mut app.plan.draft.without;
    let before = without.len();
    without.retain(|it| *it != name);
    if without.len() == before {
        without.push(name);
    }
    if app.plan.why_not.take().is_some() {
        super::go(app);
    }
}
