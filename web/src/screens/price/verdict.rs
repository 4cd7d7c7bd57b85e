//! The word for an offer, and what to say to it.

use super::more::least_unmet;
use super::scale::waits_for;
use super::{Seen, bare, end_said, mark, mark_beside};
use crate::app::Msg;
use crate::parts::verdict::{Sign, verdict};
use crate::view::{El, el};
use crate::words::en::price as words;
use fivebar_core::money::offer::{Band, Missing, Verdict};
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::offer::OfferSheet;

/// A verdict in words.
pub struct Worded {
    pub sign: Sign,
    pub word: String,
    pub say: String,
}

impl Worded {
    fn new(sign: Sign, word: impl Into<String>, say: impl Into<String>) -> Worded {
        Worded { sign, word: word.into(), say: say.into() }
    }

    /// In one breath, for a reader.
    pub fn said(&self) -> String {
        format!("{}. {}", self.word, self.say)
    }
}

/// The verdict; before the buyer has spoken, what to ask.
pub fn shown(sheet: &OfferSheet, seen: Seen<'_>) -> El<Msg> {
    if let Some(worded) = worded(sheet, seen) {
        return verdict(worded.sign, worded.word, worded.say);
    }
    let ask = sheet.standing.ask.map_or_else(|| words::NO_WORD_YET.to_owned(), |ask| words::ask_word(&bare(ask, seen.speech)));
    let needs = [sheet.marks.costs_covered, sheet.marks.lowest_pay, sheet.marks.your_rate].map(|mark| mark.map(|mark| mark.holds));
    let unmet = sheet.standing.ask.and_then(|ask| least_unmet(ask, needs));
    let under = unmet.map(|(sum, word)| word(words::THAT, &least(sum, sheet, seen)));
    let say = under.into_iter().chain([words::THEN_DRAG.to_owned()]).listed().join(" ");
    el("section", "verdict").kid(el("span", "vw").text(ask)).kid(el("span", "say").text(say))
}

/// The word for the offer; an agreed job has one before any offer.
pub fn worded(sheet: &OfferSheet, seen: Seen<'_>) -> Option<Worded> {
    if let Some(agreed) = sheet.standing.agreed {
        let due = if agreed.due.is_zero() { words::NOTHING_DUE.to_owned() } else { words::is_due(&bare(agreed.due, seen.speech)) };
        return Some(Worded::new(Sign::Yes, words::agreed(&bare(agreed.price, seen.speech)), due));
    }
    // That is to be known before a buyer speaks.
    if let Some(end) = sheet.standing.end_over_ask().ok().flatten().filter(|_| sheet.verdict.is_none()) {
        return end_brings_more(end, sheet, seen);
    }
    let say = sheet.say.map(|say| words::say_then(&bare(say, seen.speech)));
    let then = |figure: String| say.iter().cloned().chain([figure]).listed().join(" ");
    Some(match sheet.verdict? {
        Verdict::Agreed(_) => return None,
        Verdict::Yes => {
            let said = yes(sheet, seen);
            let lowest = under_lowest(sheet).map(|lowest| words::but_under_lowest(&said, &least(lowest, sheet, seen)));
            let but = lowest.or_else(|| under_rate(sheet).map(|rate| words::but_under_rate(&said, &least(rate, sheet, seen))));
            Worded::new(Sign::Yes, words::YES, but.unwrap_or(said))
        }
        Verdict::EndBringsMore { end } => return end_brings_more(end, sheet, seen),
        Verdict::TooClose(band) => {
            let known = sheet.standing.not_under.map(|under| known(waits_for(&sheet.standing).1, under, (sheet.standing.band, band), seen));
            let call = known.unwrap_or_else(|| words::your_call([&mark(band.low, seen.speech), &mark(band.high, seen.speech)]));
            let say = sheet.say.map(|say| words::or_say(&bare(say, seen.speech)));
            Worded::new(Sign::Close, words::TOO_CLOSE, [call].into_iter().chain(say).listed().join(" "))
        }
        Verdict::WaitingIsBetter { say, .. } => {
            let needs = under_lowest(sheet).map(|lowest| lowest_needs(sheet, lowest, seen));
            let said = [words::say_then(&bare(say, seen.speech))].into_iter().chain(needs).listed().join(" ");
            Worded::new(Sign::No, words::WAITING_IS_BETTER, said)
        }
        Verdict::BelowLowestPay { lowest_pay } => {
            Worded::new(Sign::No, words::BELOW_LOWEST_PAY, then(lowest_needs(sheet, lowest_pay, seen)))
        }
        Verdict::Say { say } => Worded::new(Sign::Say, words::say(&bare(say, seen.speech)), good_enough(sheet)),
        Verdict::BelowYourRate { your_rate } => {
            let (word, needs) = match under_lowest(sheet) {
                Some(lowest) => (words::BELOW_LOWEST_PAY, lowest_needs(sheet, lowest, seen)),
                None => (words::BELOW_YOUR_RATE, words::rate_needs(&least(your_rate, sheet, seen))),
            };
            Worded::new(Sign::No, word, then(needs))
        }
        Verdict::UnderWhatYouSpent { costs_covered } => {
            Worded::new(Sign::No, words::UNDER_SPENT, then(words::covers(&least(costs_covered, sheet, seen))))
        }
        Verdict::NotKnown(missing) if sheet.settle.is_some() => {
            Worded::new(Sign::No, words::below_settle(sheet.settle_set.is_some()), then(not_known(missing).into()))
        }
        Verdict::NotKnown(missing) => Worded::new(Sign::Close, words::NO_WORD_YET, not_known(missing)),
    })
}

/// A mark beside what is asked, where it is settled and what was offered.
pub fn least(mark: Money, sheet: &OfferSheet, seen: Seen<'_>) -> String {
    mark_beside(mark, [sheet.standing.ask, sheet.settle, sheet.offer, sheet.say, sheet.tagged], seen.speech)
}

/// What waiting is worth, how near that is known, and what of it is the maker's own call: on every page in the same words.
pub fn known(word: &str, under: Money, (band, call): (Option<Band>, Band), seen: Seen<'_>) -> String {
    let ends = |band: Band| [mark(band.low, seen.speech), mark(band.high, seen.speech)];
    let ([low, high], [from, to]) = (ends(band.unwrap_or(call)), ends(call));
    words::known_no_nearer(word, &bare(under, seen.speech), ([&low, &high], [&from, &to]))
}

/// No sum that can be said is enough: the tag is too low, or the guess of the end too high.
fn end_brings_more(end: Money, sheet: &OfferSheet, seen: Seen<'_>) -> Option<Worded> {
    Some(Worded::new(Sign::No, words::END_BRINGS_MORE, end_said(sheet.asking.n, [end, sheet.standing.ask?], sheet.tag, seen)))
}

/// What the lowest pay needs, where the offer is under it.
fn under_lowest(sheet: &OfferSheet) -> Option<Money> {
    let (offer, lowest) = sheet.offer.zip(sheet.marks.lowest_pay.map(|mark| mark.holds))?;
    Some(lowest).filter(|lowest| offer.amount() < lowest.amount())
}

/// What the lowest pay needs; where that is more than is asked, it says so.
fn lowest_needs(sheet: &OfferSheet, lowest: Money, seen: Seen<'_>) -> String {
    let is_over = sheet.standing.ask.is_some_and(|ask| ask.amount() < lowest.amount());
    let said = if is_over { words::lowest_needs_over_ask } else { words::lowest_needs };
    said(&least(lowest, sheet, seen))
}

/// What your rate needs, where the offer is under it.
fn under_rate(sheet: &OfferSheet) -> Option<Money> {
    let (offer, rate) = sheet.offer.zip(sheet.marks.your_rate.map(|mark| mark.holds))?;
    Some(rate).filter(|rate| offer.amount() < rate.amount())
}

/// Why to go on talking.
fn good_enough(sheet: &OfferSheet) -> &'static str {
    match &sheet.standing {
        standing if standing.not_under.is_some() => words::MORE_THAN_WAITING,
        standing if standing.at_least => words::PAYS_SO_FAR,
        _ => words::GOOD_ENOUGH,
    }
}

fn not_known(missing: Missing) -> &'static str {
    match missing {
        Missing::Ask => words::MISSING_ASK,
        Missing::YourRate => words::MISSING_RATE,
        Missing::Costs => words::MISSING_COSTS,
        Missing::HoursToCome => words::MISSING_HOURS,
    }
}

/// Why it is a yes: by the settle, else by the ask; and how much more it is than waiting is worth.
fn yes(sheet: &OfferSheet, seen: Seen<'_>) -> String {
    // In notes it is what the coins come to, as it was judged.
    let Some(offer) = sheet.offer.map(|offer| sheet.parts.map_or(offer, |parts| parts.handed)) else { return String::new() };
    let over = |mark: Option<Money>| mark.and_then(|mark| offer.minus(mark).ok()).filter(|more| Decimal::ZERO <= more.amount());
    let said = match (over(sheet.standing.ask), over(sheet.settle)) {
        (Some(more), _) if more.is_zero() => words::IT_IS_ASK.to_owned(),
        (Some(more), _) => words::over_ask(&bare(more, seen.speech)),
        (None, Some(more)) if more.is_zero() => words::it_is_settle(sheet.settle_set.is_some()),
        (None, Some(more)) => words::over_settle(&bare(more, seen.speech), sheet.settle_set.is_some()),
        (None, None) => String::new(),
    };
    let under = |mark: Option<Money>| mark.and_then(|mark| mark.minus(offer).ok()).filter(|less| Decimal::ZERO < less.amount());
    match (over(sheet.standing.not_under), under(sheet.standing.not_under)) {
        _ if said.is_empty() => said,
        (Some(more), _) if more.is_zero() => words::and_as_waiting(&said),
        (Some(more), _) => words::and_over_waiting(&said, &bare(more, seen.speech)),
        (None, Some(less)) => words::yet_under_waiting(&said, &bare(less, seen.speech)),
        (None, None) => said,
    }
}
