//! The scale of an offer: its marks, the block, and what finger, keys and chips say.

use super::Seen;
use super::figures::Around;
use super::verdict::least;
use crate::app::Msg;
use crate::app::price::bargain::{BargainTap, named};
use crate::parts::scale::{Band, Block, Kind, Mark, Scale, Spoken, slider};
use crate::view::El;
use crate::words::en::price as words;
use fivebar_core::money::offer::Standing;
use fivebar_core::money::point::{Points, Rounding, Step};
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::offer::OfferSheet;

/// The least steps the scale should have; coarser points give way to finer ones.
const STEPS: f64 = 6.0;
/// Air beside the outermost marks, as a share of what lies between them.
const AIR: f64 = 0.1;
/// The scale begins at this share of what is asked or agreed, where no mark lies lower.
const LOW: f64 = 0.75;
/// It begins no higher than this share of not under: the band of doubt lies around that.
const UNDER_BAND: f64 = 0.88;

/// The scale with its figures, ready to be dragged.
pub struct Input {
    pub scale: Scale,
    points: Points,
    pub step: Step,
    pub at: Money,
}

fn real(sum: Money) -> f64 {
    f64::try_from(sum.amount()).unwrap_or_default()
}

/// The scale of the offer in hand; none where no figure is known at all.
pub fn input(sheet: &OfferSheet, seen: Seen<'_>) -> Option<Input> {
    let at = named(sheet)?;
    let standing = &sheet.standing;
    let lowest = sheet.marks.lowest_pay.map(|mark| mark.holds);
    let agreed = standing.agreed.map(|agreed| agreed.price);
    let (kind, under) = waits_for(standing);
    let marks = [
        (standing.not_under, kind, under),
        (lowest.filter(|lowest| is_over(*lowest, standing.not_under)), Kind::Under, words::LOWEST_PAY),
        (sheet.settle, Kind::Good, words::SETTLE),
        (standing.ask.filter(|_| agreed.is_none()), Kind::Ink, words::ASK),
        (agreed, Kind::Good, words::AGREED_MARK),
        (standing.your_rate, Kind::Ink, words::YOUR_RATE),
    ];
    let known: Vec<(Money, Kind, &str)> = marks.into_iter().filter_map(|(sum, kind, word)| Some((sum?, kind, word))).listed();
    // Room for the band, which comes later and moves no end.
    let low = standing.not_under.map_or(f64::MAX, |under| real(under) * UNDER_BAND);
    let (from, to) = ends(low, &known, agreed.or(sheet.tagged).or(standing.ask).unwrap_or(at));
    // Ask, settle and what was agreed are said, not under is whole or the ask; the others are worked out and promise a least.
    let is_said = |word: &str| [words::SETTLE, words::ASK, words::AGREED_MARK, words::NOT_UNDER, words::WAITING_WORTH].contains(&word);
    let figure = |sum: Money, word: &str| if is_said(word) { super::bare(sum, seen.speech) } else { least(sum, sheet, seen) };
    let mut shown: Vec<Mark> = known.iter().map(|(sum, kind, word)| Mark::new(real(*sum), *kind, *word, figure(*sum, word))).listed();
    let costs = standing.costs_covered.map(|sum| (real(sum), least(sum, sheet, seen)));
    let below = costs.clone().filter(|(value, _)| *value < from).map(|(_, figure)| (words::COSTS_COVERED.to_owned(), figure));
    shown
        .extend(costs.filter(|(value, _)| from <= *value).map(|(value, figure)| Mark::new(value, Kind::Ink, words::COSTS_COVERED, figure)));
    let scale = Scale {
        width: seen.page.card(),
        from,
        to,
        marks: shown,
        band: band(sheet),
        below,
        block: Some(Block { at: real(at), figure: super::bare(at, seen.speech) }),
        ..Scale::default()
    };
    let step = step(sheet.points, to - from, agreed.or(sheet.tagged).or(standing.ask).unwrap_or(at));
    Some(Input { points: sheet.points, step, scale, at })
}

/// What waiting is worth is the least to take, unless the maker set a settle under it, from which on the word is a yes, or the lowest pay needs more.
pub fn waits_for(standing: &Standing) -> (Kind, &'static str) {
    let needs_more = standing.not_under.is_some() && standing.lowest_pay.is_some_and(|lowest| is_over(lowest, standing.not_under));
    if needs_more || is_settled_under(standing.set, [standing.not_under, standing.ask]) {
        (Kind::Ink, words::WAITING_WORTH)
    } else {
        (Kind::Under, words::NOT_UNDER)
    }
}

/// Whether the maker set a settle under what waiting is worth, which is no more than is asked.
pub fn is_settled_under(set: Option<Money>, [not_under, ask]: [Option<Money>; 2]) -> bool {
    let is_less = |one: Option<Money>, other: Option<Money>| one.zip(other).is_some_and(|(one, other)| one.amount() < other.amount());
    is_less(set, not_under) && !is_less(ask, not_under)
}

/// What waiting is worth hides the lowest pay only where it is no less.
fn is_over(lowest: Money, not_under: Option<Money>) -> bool {
    not_under.is_none_or(|under| under.amount() < lowest.amount())
}

/// The band of doubt. It comes once the page is painted and may move no key, so the word above says what it is.
fn band(sheet: &OfferSheet) -> Option<Band> {
    let band = in_doubt(sheet)?;
    Some(Band { from: real(band.low), to: real(band.high), word: String::new(), figure: String::new() })
}

/// What of the band of doubt is the maker's own call.
pub fn in_doubt(sheet: &OfferSheet) -> Option<fivebar_core::money::offer::Band> {
    sheet.standing.band?.between(sheet.standing.lowest_pay, sheet.settle)
}

/// It begins just under the lowest mark that matters. The offer itself moves no end: the scale holds still under the finger.
fn ends(least: f64, known: &[(Money, Kind, &str)], asked: Money) -> (f64, f64) {
    let values = known.iter().map(|(sum, ..)| real(*sum));
    let (low, high) = values.fold((least.min(real(asked) * LOW), real(asked)), |(low, high), value| (low.min(value), high.max(value)));
    let air = (high - low).max(1.0) * AIR;
    ((low - air).max(0.0), high + air)
}

/// What a drag and a key go by: the maker's own price points; where they are less than a hundredth of the price, or the whole scale has but a few of
/// them, by the size of the price.
fn step(own: Points, span: f64, price: Money) -> Step {
    let step = own.from_one_to_next(price.currency());
    let by = f64::try_from(step.by).unwrap_or(1.0).max(1e-9);
    if STEPS <= span / by && real(price) <= by * 100.0 { step } else { Step::by_size(price, own) }
}

impl Input {
    /// The point nearest to a place on the scale.
    fn at_share(&self, share: f64) -> Option<Money> {
        let value = Decimal::try_from(self.scale.value_at(share)).ok()?;
        self.step.round(value, Rounding::Nearest).ok()
    }

    /// The next point up or down.
    pub fn next(&self, up: bool) -> Money {
        let below = || self.step.round(self.at.amount().checked_sub(self.step.by)?, Rounding::Up).ok();
        let next = if up { self.step.above(self.at).ok() } else { below() };
        next.unwrap_or(self.at)
    }

    fn key(&self, key: &str) -> Option<Money> {
        match key {
            "ArrowRight" | "ArrowUp" => Some(self.next(true)),
            "ArrowLeft" | "ArrowDown" => Some(self.next(false)),
            "Home" => self.at_share(0.0),
            "End" => self.at_share(1.0),
            _ => None,
        }
    }

    /// The slider, with what a reader hears of it.
    pub fn slider(&self, said: String) -> El<Msg> {
        let say = |sum: Money| Msg::Price(crate::app::price::Tap::Bargain(BargainTap::Say(sum)));
        let spoken = Spoken { name: words::OFFER.into(), now: real(self.at), words: said };
        let (keys, slide, at) = (self.clone_small(), self.clone_small(), self.at);
        slider(&self.scale, &spoken)
            .on_slide(move |share| say(slide.at_share(share).unwrap_or(at)))
            .on_key(move |key| keys.key(key).map(say))
    }

    /// What finger and keys need of it.
    fn clone_small(&self) -> Input {
        let scale = Scale { width: self.scale.width, from: self.scale.from, to: self.scale.to, ..Scale::default() };
        Input { scale, points: self.points, step: self.step, at: self.at }
    }

    /// Figures people say next.
    pub fn figures(&self, sheet: &OfferSheet) -> Vec<Money> {
        let agreed = sheet.standing.agreed.map(|agreed| agreed.price);
        let open = |sum: Option<Money>| sum.filter(|_| agreed.is_none());
        let ask = agreed.or(sheet.standing.ask).unwrap_or(self.at);
        let (settle, offer, say) = (open(sheet.settle), open(sheet.offer), open(sheet.say));
        let least = open(sheet.marks.lowest_pay.map(|mark| mark.holds));
        Around { ask, settle, offer, say, at: self.at, points: self.points, least }.figures()
    }
}
