//! Learning: what those who asked, offered, refused and bought say of a guess.
//!
//! Gamma on how many ask; a small grid over the share that buys and the scale, weighed by what happened (domain.md 9). How much a
//! guess is worth and how wide the grid is, is ours.

use super::demand::{Demand, Guess, float};
use super::waiting::{Lot, UnderWay, Waiting, waiting};
use crate::quantity::{Count, Currency, Decimal, Money, Take, exact};
use crate::refusal::{Answer, Refusal};

/// A guess of how many ask is worth so many people seen (ours).
const GUESS_WORTH: f64 = 4.0;
/// The grid: so many of these off the guess (ours),
const OFF: [f64; 5] = [-2.0, -1.0, 0.0, 1.0, 2.0];
/// with these weights, those of a bell,
const BELL: [f64; 5] = [0.054, 0.242, 0.399, 0.242, 0.054];
/// of these steps in the logarithm: the share's, the scale's.
const SHARE_STEP: f64 = 0.4;
const SCALE_STEP: f64 = 0.25;
/// How many ask: few, as many as thought, many: the tenth, the middle and the ninetieth of a hundred stand for all, by these weights (ours).
const FEW_OR_MANY: [(f64, f64); 3] = [(-1.2816, 0.3), (0.0, 0.4), (1.2816, 0.3)];
/// No share that buys is larger than this: with all of them the model says nothing.
const SHARE_MOST: f64 = 0.99;
/// A thing that happened was possible: so much chance it has at least.
const CHANCE_LEAST: f64 = 1e-6;
/// The band leaves out one in ten at either end.
const BAND: [f64; 2] = [0.1, 0.9];

/// What one did who turned up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heard {
    /// Handed this over.
    Bought { price: Money },
    /// Left at this price and named none.
    Refused { price: Money },
    /// Would hand over this, at this price.
    Offered { sum: Money, price: Money },
}

/// What happened in so many weeks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    pub weeks: Decimal,
    /// All who asked, those among them who never turned up too.
    pub asked: Count,
    /// Those who said they would come and did not.
    pub never_came: Count,
    pub heard: Vec<Heard>,
}

/// Demands that may be, and how likely each is.
#[derive(Clone, Debug, PartialEq)]
pub struct Belief {
    all: Vec<(Demand, f64)>,
    /// As it is likely in the mean.
    likely: Demand,
    currency: Currency,
}

/// What is believed after what was seen. With nothing seen it is the guess and what may be off in it.
///
/// # Errors
/// Those of [`Guess::demand`]; [`Refusal::CurrenciesMixed`], [`Refusal::BelowNothing`] for weeks.
pub fn belief(guess: &Guess, seen: &Seen) -> Answer<Belief> {
    let demand = turning_up(guess.demand()?, seen);
    if seen.weeks < Decimal::ZERO {
        return Err(Refusal::BelowNothing { met: seen.weeks });
    }
    let heard = heard(guess.at.currency(), &seen.heard)?;
    let (times, many) = asks(&demand, float(seen.weeks)?, f64::from(seen.asked));
    let (mut all, mut before) = (vec![], vec![]);
    for (share, share_weight) in OFF.iter().zip(BELL) {
        for (scale, scale_weight) in OFF.iter().zip(BELL) {
            let likely = Demand {
                share: (demand.share * libm::exp(SHARE_STEP * share)).min(SHARE_MOST),
                scale: demand.scale * libm::exp(SCALE_STEP * scale),
                ..demand
            };
            before.push((likely, share_weight * scale_weight));
            let weight = share_weight * scale_weight * heard.iter().map(|one| one.chance(&likely)).product::<f64>();
            all.extend(many.map(|(times, part)| (Demand { come: likely.come * times, ask: likely.ask * times, ..likely }, weight * part)));
        }
    }
    even(&mut all);
    even(&mut before);
    // What was heard moves the guess by as much as it moves the mean of all that may be; with nothing heard the guess stands.
    let moved = |of: &dyn Fn(&Demand) -> f64| of(&demand) * geometric(&all, of) / geometric(&before, of);
    let share = moved(&|demand| demand.share).min(SHARE_MOST.max(demand.share));
    let (come, ask) = (demand.come * times, demand.ask * times);
    let likely = Demand { come, ask, share, at: demand.at, scale: moved(&|demand| demand.scale), ..demand };
    Ok(Belief { all, likely, currency: guess.at.currency() })
}

/// Weights that sum to the whole.
fn even(all: &mut [(Demand, f64)]) {
    let sum: f64 = all.iter().map(|(_, weight)| weight).sum();
    all.iter_mut().for_each(|(_, weight)| *weight /= sum);
}

fn geometric(all: &[(Demand, f64)], of: &dyn Fn(&Demand) -> f64) -> f64 {
    libm::exp(all.iter().map(|(demand, weight)| libm::log(of(demand)) * weight).sum())
}

/// Of those who ask so many turn up: the guess of it is worth as much as the guess of how many ask.
fn turning_up(demand: Demand, seen: &Seen) -> Demand {
    let guessed = if demand.ask == 0.0 { 0.0 } else { GUESS_WORTH * (1.0 - demand.come / demand.ask) };
    let never = (guessed + f64::from(seen.never_came.min(seen.asked))) / (GUESS_WORTH + f64::from(seen.asked));
    Demand { come: demand.ask * (1.0 - never), ..demand }
}

/// So many weeks what was seen counts as. Those who asked in a short time came in as many weeks as the guess has them in, up to those that the
/// guess itself is worth and a whole one at the least: a busy hour says no more than that (ours).
fn seen_weeks(week: f64, weeks: f64, asked: f64) -> f64 {
    let most = (GUESS_WORTH / week).max(1.0);
    weeks.max((asked / week).min(most))
}

/// So many times as many ask as were guessed: in the mean; and few, as many as are likely, many, with how likely each is.
fn asks(demand: &Demand, weeks: f64, asked: f64) -> (f64, [(f64, f64); 3]) {
    let week = demand.ask * 7.0;
    let shape = GUESS_WORTH + asked;
    let likely = if week == 0.0 { 0.0 } else { shape / (GUESS_WORTH + week * seen_weeks(week, weeks, asked)) };
    // The quantile of a gamma by its cube root, which is nearly a bell: Wilson and Hilferty, Proc. Nat. Acad. Sciences 17, 1931 (recalled).
    let off = 1.0 / (9.0 * shape);
    let spread = FEW_OR_MANY.map(|(sigmas, part)| {
        let root = (1.0 - off + sigmas * libm::sqrt(off)).max(0.0);
        (likely * root * root * root, part)
    });
    (likely, spread)
}

/// A sum heard, in figures.
#[derive(Clone, Copy)]
struct Said {
    /// Would hand over at least this,
    least: Option<f64>,
    /// and would not hand over this.
    under: Option<f64>,
}

impl Said {
    fn chance(self, demand: &Demand) -> f64 {
        let buys = |price: f64| demand.buys_at(price);
        (self.least.map_or(1.0, buys) - self.under.map_or(0.0, buys)).max(CHANCE_LEAST)
    }
}

fn heard(currency: Currency, all: &[Heard]) -> Answer<Vec<Said>> {
    let sum = |money: Money| {
        if money.currency() == currency {
            float(money.amount())
        } else {
            Err(Refusal::CurrenciesMixed { one: currency, other: money.currency() })
        }
    };
    let said = |one: &Heard| {
        Ok(match *one {
            Heard::Bought { price } => Said { least: Some(sum(price)?), under: None },
            Heard::Refused { price } => Said { least: None, under: Some(sum(price)?) },
            Heard::Offered { sum: offered, price } => {
                let (least, under) = (sum(offered)?, sum(price)?);
                Said { least: Some(least), under: (least < under).then_some(under) }
            }
        })
    };
    all.iter().map(said).collect()
}

/// The value of waiting as it is likely, and how far it may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Prospects {
    /// By the demand that is likely in the mean.
    pub likely: Waiting,
    /// What waiting is worth under each demand that may be, and how likely that is.
    all: Vec<(Waiting, f64)>,
    currency: Currency,
}

impl Belief {
    /// The demand that is likely in the mean.
    pub fn likely(&self) -> Demand {
        self.likely
    }

    /// So many demands may be.
    pub fn demands(&self) -> usize {
        self.all.len()
    }

    /// What waiting is worth for these pieces.
    ///
    /// # Errors
    /// Those of [`waiting`].
    pub fn prospects(&self, lot: &Lot, take: Take) -> Answer<Prospects> {
        let mut so_far = SoFar::default();
        so_far.go(self, (lot, take), u64::MAX)?;
        Ok(Prospects { likely: waiting(&self.likely, lot, take)?, all: so_far.done, currency: self.currency })
    }

    /// Whether nothing of it is to come.
    pub fn is_all(&self, so_far: &SoFar) -> bool {
        self.all.len() <= so_far.done.len()
    }

    /// The same where the sum of many was made bit by bit, and what is likely is known; none while some of it is to come.
    pub fn gathered(&self, likely: &Waiting, so_far: SoFar) -> Option<Prospects> {
        self.is_all(&so_far).then(|| Prospects { likely: likely.clone(), all: so_far.done, currency: self.currency })
    }
}

/// What waiting is worth under the demands that may be, as far as it is reckoned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SoFar {
    done: Vec<(Waiting, f64)>,
    /// The one that is reckoned now.
    under_way: Option<UnderWay>,
}

impl SoFar {
    /// Goes on for so many steps of a piece, or one of all pieces; says how many it took. It is all reckoned where that is none.
    ///
    /// # Errors
    /// Those of [`waiting`].
    pub fn go(&mut self, belief: &Belief, (lot, take): (&Lot, Take), most: u64) -> Answer<u64> {
        let pieces = u64::from(lot.pieces);
        let mut taken = 0_u64;
        while let Some((demand, weight)) = belief.all.get(self.done.len()).filter(|_| taken == 0 || taken.saturating_add(pieces) <= most) {
            let mut under_way = self.under_way.take().map_or_else(|| UnderWay::about(demand, lot, take), Ok)?;
            taken = taken.saturating_add(under_way.go(most.saturating_sub(taken)));
            match under_way.found().cloned() {
                Some(waiting) => self.done.push((waiting, *weight)),
                None => self.under_way = Some(under_way),
            }
        }
        Ok(taken)
    }
}

impl Prospects {
    /// Not under for so many pieces at once, paid in this way, lies between these with four chances in five; both ends are in.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`], [`Refusal::MoneyOutOfRange`].
    pub fn band(&self, pieces: Count, take: Take) -> Answer<[Money; 2]> {
        let mut sums = self.all.iter().map(|(one, weight)| Ok((one.under_by(pieces, take)?, *weight))).collect::<Answer<Vec<_>>>()?;
        sums.sort_by(|a, b| a.0.total_cmp(&b.0));
        let at = |part: f64| {
            let mut so_far = 0.0;
            let reached = |(_, weight): &&(f64, f64)| {
                so_far += weight;
                part <= so_far
            };
            sums.iter().find(reached).or(sums.last()).map_or(0.0, |(sum, _)| *sum)
        };
        let [low, high] = BAND.map(at);
        let likely = self.likely.under_by(pieces, take)?;
        Ok([self.booked(low.min(likely))?, self.booked(high.max(likely))?])
    }

    fn booked(&self, sum: f64) -> Answer<Money> {
        Money::book(exact::of_float(sum).ok_or(Refusal::MoneyOutOfRange { currency: self.currency })?, self.currency)
    }
}

#[cfg(test)]
mod tests {
    use super::super::demand::USUAL_RATIO;
    use super::*;

    fn n(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn usd(whole: i64) -> Money {
        Money::book(Decimal::from(whole), Currency::USD).unwrap()
    }

    const ALL: Take = Take { keep: Decimal::ONE, fixed: Decimal::ZERO };

    fn guess() -> Guess {
        Guess { asks: n("2"), buys: n("0.2"), at: usd(420), ratio: USUAL_RATIO, no_show: n("0") }
    }

    fn likely(seen: &Seen) -> Demand {
        belief(&guess(), seen).unwrap().likely()
    }

    fn prospects(seen: &Seen) -> Prospects {
        let lot = Lot { pieces: 1, end: usd(300), each_ask: usd(0), each_day: usd(0), days: 22, least: None, most: None };
        belief(&guess(), seen).unwrap().prospects(&lot, ALL).unwrap()
    }

    fn width(seen: &Seen) -> Decimal {
        let [low, high] = prospects(seen).band(1, ALL).unwrap();
        high.amount() - low.amount()
    }

    /// With nothing seen the guess stands, and the band lies around it.
    #[test]
    fn a_guess_alone_is_the_guess() {
        let (demand, guessed) = (likely(&Seen::default()), guess().demand().unwrap());
        assert!((demand.share / guessed.share - 1.0).abs() < 1e-9 && (demand.scale / guessed.scale - 1.0).abs() < 1e-9);
        assert_eq!((demand.ask, demand.come), (guessed.ask, guessed.come));
        let [low, high] = prospects(&Seen::default()).band(1, ALL).unwrap();
        assert!(low.amount() < n("398") && n("398") < high.amount(), "{low} to {high}");
    }

    /// A gamma: 4 people of the guess at 2 a week are 2 weeks; 12 in 4 weeks more make 16 in 6.
    #[test]
    fn who_asks_is_counted_against_the_guess() {
        let seen = |weeks, asked| Seen { weeks: n(weeks), asked, ..Seen::default() };
        let week = |seen: &Seen| likely(seen).ask * 7.0;
        assert!((week(&seen("4", 12)) / (16.0 / 6.0) - 1.0).abs() < 0.01);
        assert!((week(&seen("8", 0)) / (4.0 / 10.0) - 1.0).abs() < 0.03);
    }

    /// A guess of 2 a week is worth 4 people in 2 weeks. As many as it is worth, in an hour, say no more than it did; 8 in an hour are 12 in 4
    /// weeks. Once the weeks are over they count as they are. None who stays away makes more come.
    #[test]
    fn a_busy_hour_does_not_outweigh_the_guess() {
        let week = |weeks, asked, never_came| likely(&Seen { weeks: n(weeks), asked, never_came, heard: vec![] }).come * 7.0;
        for (weeks, asked, never, wanted) in
            [("0", 0, 0, 2.0), ("0", 1, 0, 2.0), ("0", 4, 0, 2.0), ("0", 8, 0, 3.0), ("1", 8, 0, 3.0), ("2", 8, 0, 3.0), ("4", 8, 0, 2.0)]
        {
            assert!((week(weeks, asked, never) - wanted).abs() < 0.01, "{weeks} {asked}");
        }
        assert!((week("1", 1, 0) - 5.0 / 3.0).abs() < 0.01);
        assert!(week("0", 1, 1) < week("0", 0, 0) && week("0", 3, 2) < week("0", 3, 1));
    }

    /// Of 4 people that the guess is worth none stays away; of 12 seen 4 do: 4 in 16.
    #[test]
    fn who_never_came_is_counted_against_the_guess() {
        let seen = Seen { weeks: n("6"), asked: 12, never_came: 4, heard: vec![] };
        let demand = likely(&seen);
        assert!((demand.come / demand.ask - 0.75).abs() < 1e-12 && (demand.ask * 7.0 - 2.0).abs() < 0.01);
        assert_eq!(likely(&Seen { never_came: 3, ..Seen::default() }).come, likely(&Seen::default()).come);
    }

    #[test]
    fn what_was_heard_moves_the_share_and_narrows_the_band() {
        let heard = |one: Heard, times: usize| Seen { heard: vec![one; times], ..Seen::default() };
        let before = likely(&Seen::default()).share;
        assert!(before < likely(&heard(Heard::Bought { price: usd(420) }, 3)).share);
        assert!(likely(&heard(Heard::Refused { price: usd(420) }, 5)).share < before);
        let offers = heard(Heard::Offered { sum: usd(360), price: usd(450) }, 6);
        assert!(width(&offers) < width(&Seen::default()));
        let bought = Heard::Bought { price: usd(420) };
        let all = Seen {
            weeks: n("8"),
            asked: 16,
            never_came: 0,
            heard: [vec![bought; 3], vec![Heard::Refused { price: usd(420) }; 13]].concat(),
        };
        assert!(width(&all) < width(&Seen::default()));
    }

    /// One who bought at 450 and one who offered 360 at 450, against the grid summed here once more, term by term: both move the share, the one who
    /// would hand over 360 and not 450 pulls the scale in. A fifth less of 420 doubles who buys: a scale of 0.2 x 420 / ln 2 = 121.186.
    #[test]
    fn share_and_scale_are_those_of_the_grid_summed_by_itself() {
        let (bought, offered) = (Heard::Bought { price: usd(450) }, Heard::Offered { sum: usd(360), price: usd(450) });
        for (heard, share, scale) in [
            (vec![bought], 0.231_551_750_357, 122.954_929_193_381),
            (vec![offered], 0.231_535_823_072, 113.183_069_026_597),
            (vec![bought, offered], 0.265_859_876_498, 114.927_896_796_477),
        ] {
            let [mut weights, mut shares, mut scales] = [[0.0_f64; 2]; 3];
            let guessed = (0.2_f64, 0.2 * 420.0 / 2.0_f64.ln());
            for (i, one) in [0.054, 0.242, 0.399, 0.242, 0.054].into_iter().enumerate() {
                for (j, other) in [0.054, 0.242, 0.399, 0.242, 0.054].into_iter().enumerate() {
                    let s = guessed.0 * (0.4 * (i as f64 - 2.0)).exp();
                    let scale = guessed.1 * (0.25 * (j as f64 - 2.0)).exp();
                    let buys = |price: f64| (s * ((420.0 - price) / scale).exp()).min(1.0);
                    let chance = |one: &Heard| if *one == bought { buys(450.0) } else { buys(360.0) - buys(450.0) };
                    let before: f64 = one * other;
                    for (nth, weight) in [before, before * heard.iter().map(chance).product::<f64>()].into_iter().enumerate() {
                        weights[nth] += weight;
                        shares[nth] += weight * s.ln();
                        scales[nth] += weight * scale.ln();
                    }
                }
            }
            let moved = |of: [f64; 2]| (of[1] / weights[1] - of[0] / weights[0]).exp();
            let demand = likely(&Seen { heard: heard.clone(), ..Seen::default() });
            assert!(
                (demand.share - guessed.0 * moved(shares)).abs() < 1e-9 && (demand.share - share).abs() < 1e-9,
                "{heard:?}: {demand:?}"
            );
            assert!(
                (demand.scale - guessed.1 * moved(scales)).abs() < 1e-9 && (demand.scale - scale).abs() < 1e-9,
                "{heard:?}: {demand:?}"
            );
        }
    }

    /// However it is cut into goes, no go is longer than was said, and every figure is the same to the last digit.
    #[test]
    fn the_band_in_many_goes_is_the_band_in_one() {
        for (pieces, days) in [(1, 22), (5, 56), (200, 56)] {
            let lot = Lot { pieces, end: usd(300), each_ask: usd(0), each_day: usd(0), days, least: None, most: None };
            let belief = belief(&guess(), &Seen::default()).unwrap();
            let whole = belief.prospects(&lot, ALL).unwrap();
            for most in [200, 777, 6_000] {
                let (mut so_far, mut goes) = (SoFar::default(), vec![]);
                while !belief.is_all(&so_far) {
                    goes.push(so_far.go(&belief, (&lot, ALL), most).unwrap());
                }
                assert!(goes.iter().all(|taken| 0 < *taken && *taken <= most), "{pieces} {most}: {goes:?}");
                let steps: u64 = goes.iter().sum();
                assert!(steps / most <= goes.len() as u64, "{pieces} {most}");
                assert_eq!(belief.gathered(&whole.likely, so_far).as_ref(), Some(&whole), "{pieces} {most}");
            }
        }
    }

    #[test]
    fn a_foreign_sum_and_weeks_below_nothing_are_refused() {
        let euro = Money::book(n("400"), Currency::EUR).unwrap();
        let seen = Seen { heard: vec![Heard::Refused { price: euro }], ..Seen::default() };
        assert_eq!(belief(&guess(), &seen), Err(Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR }));
        assert_eq!(belief(&guess(), &Seen { weeks: n("-1"), ..Seen::default() }), Err(Refusal::BelowNothing { met: n("-1") }));
    }
}
