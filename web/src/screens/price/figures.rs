//! Figures people say, as keys: what matters for the answer, and steps of the price point around it.

use fivebar_core::money::point::{Points, Rounding};
use fivebar_core::quantity::{Decimal, Listed, Money, order_by_key};

/// What the keys go around.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Around {
    /// What is asked, or was agreed.
    pub ask: Money,
    pub settle: Option<Money>,
    /// What the buyer said, and what is answered to it.
    pub offer: Option<Money>,
    pub say: Option<Money>,
    /// What stands under the block: it needs no key.
    pub at: Money,
    pub points: Points,
    /// What pays the lowest pay: nothing under it is proposed.
    pub least: Option<Money>,
}

/// As many keys as stand in a row.
const KEYS: usize = 3;

impl Around {
    /// Up to three figures, the lowest first. Once something is answered, a buyer goes on between their offer and that, and never above: the
    /// answer first, then settle, then points between them, and the ask. Before that, the ask, settle and round figures under the ask. None but the
    /// ask, which is the maker's own, pays less than the lowest pay: points just under the top stand in for what falls away.
    pub fn figures(&self) -> Vec<Money> {
        let talk = self.offer.zip(self.say);
        let top = talk.map_or(self.ask, |(_, say)| say);
        let pays = |sum: &Money| self.least.is_none_or(|least| least.amount() <= sum.amount());
        let within = |sum: &Money| pays(sum) && sum.amount() < top.amount() && talk.is_none_or(|(offer, _)| offer.amount() < sum.amount());
        let finer = self.least.map(|_| self.steps(top, self.points.step(top.currency())));
        let steps = self.steps(top, self.step(top, talk.map(|(offer, _)| offer))).into_iter().chain(finer.into_iter().flatten());
        let steps = steps.filter(within);
        let mut found: Vec<Money> = vec![];
        for sum in [top].into_iter().chain(self.settle.filter(within)).chain(steps).chain(talk.map(|_| self.ask)) {
            if found.len() < KEYS && sum != self.at && Decimal::ZERO < sum.amount() && !found.contains(&sum) {
                found.push(sum);
            }
        }
        order_by_key(&mut found, |sum| sum.amount());
        found
    }

    /// Between points under a figure: round ones, and every one where they are few between it and the offer.
    fn step(&self, top: Money, offer: Option<Money>) -> Decimal {
        let own = self.points.step(top.currency());
        let round = round_step(top.amount()).max(own);
        let room = offer.and_then(|offer| top.amount().checked_sub(offer.amount()));
        let few = room.is_some_and(|room| room <= round.checked_mul(Decimal::TWO).unwrap_or(round));
        if few { own } else { round }
    }

    /// Points so far apart under a figure.
    fn steps(&self, top: Money, step: Decimal) -> Vec<Money> {
        let last = || top.amount().checked_sub(Decimal::new(1, 2))?.checked_div(step).map(|steps| steps.floor());
        let nth = |nth: i64| {
            let value = last()?.checked_sub(Decimal::from(nth))?.checked_mul(step)?;
            self.points.round(value, Rounding::Nearest, top.currency()).ok()
        };
        (0..=5).filter_map(nth).listed()
    }
}

/// The step between round figures below a price: about a fourteenth of it, as people round.
fn round_step(ask: Decimal) -> Decimal {
    let about = ask.checked_div(Decimal::from(13)).unwrap_or_default();
    let ladder = [1_000, 500, 250, 100, 50, 25, 10, 5, 2, 1].map(Decimal::from);
    let many = about.checked_div(Decimal::ONE_THOUSAND).unwrap_or_default().floor().max(Decimal::ONE);
    let big = many.checked_mul(Decimal::ONE_THOUSAND).filter(|big| *big <= about);
    big.or_else(|| ladder.into_iter().find(|step| *step <= about)).unwrap_or(Decimal::ONE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use fivebar_core::quantity::Currency;

    fn usd(text: &str) -> Money {
        Money::book(text.parse().unwrap(), Currency::USD).unwrap()
    }

    /// Ask, settle, offer, answer, where those are known; and what stands under the block.
    #[track_caller]
    fn check([ask, settle, offer, say, at]: [&str; 5], points: Points, wanted: &[&str]) {
        let maybe = |text: &str| (!text.is_empty()).then(|| usd(text));
        let around =
            Around { ask: usd(ask), settle: maybe(settle), offer: maybe(offer), say: maybe(say), at: usd(at), points, least: None };
        assert_eq!(around.figures(), wanted.iter().map(|text| usd(text)).listed(), "{around:?}");
    }

    #[test]
    fn before_the_buyer_speaks_keys_go_down_from_the_ask() {
        check(["145", "", "", "", "145"], Points::Five, &["120", "130", "140"]);
        check(["140", "120", "", "", "145"], Points::Five, &["120", "130", "140"]);
        check(["140", "124.50", "", "", "140"], Points::Five, &["120", "124.5", "130"]);
        check(["145", "", "", "", "145"], Points::TwentyFive, &["75", "100", "125"]);
        check(["149", "", "", "", "149"], Points::Nine, &["119", "129", "139"]);
        check(["152.98", "", "", "", "152.98"], Points::Five, &["130", "140", "150"]);
    }

    /// 105 is answered to 103, with 125 asked: nobody goes on to 110, 115 and 120.
    #[test]
    fn after_an_answer_keys_lie_between_the_offer_and_it() {
        check(["125", "104", "103", "105", "103"], Points::Five, &["104", "105", "125"]);
        check(["145", "125", "120", "130", "120"], Points::Five, &["125", "130", "145"]);
        check(["145", "130", "110", "145", "110"], Points::Five, &["130", "140", "145"]);
        check(["145", "", "60", "145", "60"], Points::Five, &["130", "140", "145"]);
        check(["1450", "1250", "1200", "1300", "1200"], Points::Ten, &["1250", "1290", "1300"]);
        check(["20", "17", "16", "18", "16"], Points::One, &["17", "18", "20"]);
    }

    /// Ask 145 with the lowest pay at 144 leaves the ask alone; at 116, and a settle of 111 set under it, points from 120 on.
    #[test]
    fn no_key_pays_less_than_the_lowest_pay() {
        let at = |ask, settle, at, least| Around {
            ask: usd(ask),
            settle: Some(usd(settle)),
            offer: None,
            say: None,
            at: usd(at),
            points: Points::Five,
            least: Some(usd(least)),
        };
        let figures = |around: Around| around.figures().iter().map(|sum| sum.amount().normalize().to_string()).listed().join(" ");
        assert_eq!(figures(at("145", "111", "145", "144")), "");
        assert_eq!(figures(at("145", "111", "112", "144")), "145");
        assert_eq!(figures(at("125", "111", "125", "116")), "120");
        assert_eq!(figures(at("145", "111", "145", "116")), "120 130 140");
        assert_eq!(figures(at("145", "130", "145", "126")), "130 135 140");
    }

    /// Law: every key is a figure that matters or lies on a point; none lies at the offer or under it, and none but the ask above the answer.
    #[test]
    fn no_key_lies_under_the_offer() {
        for (points, offer) in Points::ALL.into_iter().flat_map(|points| (1..140).map(move |offer| (points, offer))) {
            let (offer, ask) = (usd(&offer.to_string()), usd("145"));
            let say = points.round(Decimal::from(2 * 140) - offer.amount(), Rounding::Up, Currency::USD).unwrap();
            let say = if say.amount() < ask.amount() { say } else { ask };
            let around = Around { ask, settle: Some(usd("140")), offer: Some(offer), say: Some(say), at: offer, points, least: None };
            for sum in around.figures() {
                let matters = [say, ask, usd("140")].contains(&sum) || points.round(sum.amount(), Rounding::Up, Currency::USD) == Ok(sum);
                assert!(matters && offer.amount() < sum.amount(), "{around:?} {sum}");
                assert!(sum == ask || sum.amount() <= say.amount(), "{around:?} {sum}");
            }
        }
    }
}
