//! English: what waiting is worth: the guesses, the asking price, who asked. In people and money, never in shares.

use super::common::sentence;

pub const ASKING_PRICE: &str = "Asking price";
pub const WHAT_IT_IS_WORTH: &str = "What waiting is worth";
pub const YOUR_GUESSES: &str = "Your guesses";
pub const CHANGE: &str = "Change guesses";
pub const SOMEONE_ASKED: &str = "Someone asked";
pub const NEVER_CAME: &str = "Did not turn up";
pub const NOTE_AN_OFFER: &str = "Note an offer";
pub const RECKON: &str = "Reckon with these";
pub const PRICE_FIRST: &str = "Set its price first: guesses are about a price.";
pub const NOTHING_LEFT: &str = "Nothing is left to wait with.";
pub const AN_OFFER_TODAY: &str = "An offer today";
pub const IN_THE_END: &str = "in the end";
pub const FROM_GUESSES: &str = "The band comes from your guesses.";
pub const BAND_COMES: &str = "The band of doubt is being reckoned.";
pub const NO_BAND: &str = "Too many pieces and people for a band of doubt.";
pub const NOT_COUNTED: &str = "Your time for those who ask, and keeping it, are not counted.";
pub const TIME_NOT_COUNTED: &str = "Your time for those who ask is not counted.";
pub const TIME_ONCE_PAID: &str = "Your time for those who ask counts once your lowest pay is said, under Workshop.";
pub const KEEPING_NOT_COUNTED: &str = "Keeping it is not counted.";
pub const LOOKING_BACK: &str = "Looking back:";
pub const USUAL_RATIO: &str = "Done with nothing typed means 2.";
pub const ALL_BUY: &str = "All who ask buy already: no more can. 2 stands for what would be at a higher price.";
pub const ALL_BUY_SHORT: &str = "all buy already";
pub const STEPS_SAID: &str = "What to ask, week by week";

// --- the questions

/// "How many ask in a week at 145?"
pub fn how_many_ask(price: &str) -> String {
    format!("How many ask in a week at {price}?")
}

/// "Of five who ask, how many would buy at 145?"
pub fn how_many_buy(price: &str) -> String {
    format!("Of five who ask, how many would buy at {price}?")
}

/// "At a fifth less, 116, how many times as many?"
pub fn how_many_times(price: &str) -> String {
    format!("At a fifth less, {price}, how many times as many would buy?")
}

pub const BY_WHEN: &str = "By when should it be sold?";
pub const WORTH_THEN: &str = "If not sold by then, what do you get for one?";
pub const WORTH_HINT: &str = "From a gallery, taken apart, or kept for yourself.";
pub const WHAT_IT_COSTS: &str = "What waiting costs you";
pub const WHAT_IT_COSTS_HINT: &str = "your time, keeping it, who never turns up";
pub const HOW_LONG_EACH: &str = "How long does each who asks take you?";
pub const COSTS_A_DAY: &str = "What does it cost a day to keep what is left?";
pub const COSTS_A_DAY_HINT: &str = "Room, a stall. Done with nothing typed means none.";
pub const HOW_MANY_NEVER: &str = "Of five who ask, how many never turn up?";
pub const NOTHING_TYPED: &str = "Done with nothing typed means none.";
pub const MINUTES: &str = "min";
pub const PEOPLE: &str = "people";
pub const OF_FIVE: &str = "of five";
pub const TIMES: &str = "times";

pub const ASK_A_WEEK: &str = "Ask in a week";
pub const AT_A_FIFTH_LESS: &str = "At a fifth less";
pub const EACH_ASK_TAKES: &str = "Each who asks takes";
pub const KEEPING_A_DAY: &str = "Keeping it, a day";
pub const OF_FIVE_NEVER: &str = "Of five, never turn up";
pub const SOLD_BY: &str = "Sold by";
pub const END_EACH: &str = "In the end, each";

/// "Of five, buy at 145".
pub fn of_five_at(price: &str) -> String {
    format!("Of five, buy at {price}")
}

/// "2 times as many".
pub fn times_as_many(times: &str) -> String {
    format!("{times} times")
}

// --- the page

/// "2 left".
pub fn name_left(name: &str, left: &str) -> String {
    format!("{name}, {left} left")
}

/// "28 days left".
pub fn days_left(n: u16, written: &str) -> String {
    if n == 1 { format!("{written} day left") } else { format!("{written} days left") }
}

/// "About 6 more will ask by Sat 16 May."
pub fn more_will_ask(n: u32, written: &str, day: &str) -> String {
    match n {
        0 => sentence(format!("Hardly anyone more will ask by {day}")),
        1 => sentence(format!("About one more will ask by {day}")),
        _ => sentence(format!("About {written} more will ask by {day}")),
    }
}

/// "At 145 one in four buys.", "At 50 two in five buy."
pub fn one_buys(price: &str, share: f64) -> String {
    format!("At {price} {}.", who_buy(share))
}

/// "one in four buys", "two in five buy".
fn who_buy(share: f64) -> String {
    match share {
        _ if 0.95 <= share => "everyone buys".to_owned(),
        _ if share < 0.01 => "hardly anyone buys".to_owned(),
        _ => of_people(share, ["buys", "buy"]),
    }
}

/// "one in five never turns up".
pub fn who_never_comes(share: f64) -> String {
    if share < 0.01 { "hardly anyone never turns up".to_owned() } else { of_people(share, ["never turns up", "never turn up"]) }
}

/// "15 min for each who asks at 16 an hour".
pub fn each_takes(time: &str, pay: &str) -> String {
    format!("{time} for each who asks at {pay} an hour")
}

/// "1.50 a day to keep it".
pub fn a_day_to_keep(sum: &str) -> String {
    format!("{sum} a day to keep it")
}

/// "Counted: 15 min for each who asks at 16 an hour, 1.50 a day to keep it."
pub fn counted(what: &str) -> String {
    format!("Counted: {what}.")
}

/// The nearest of few in up to five, and of one in more, and what one of them does, and what several do.
fn of_people(share: f64, [one, many]: [&str; 2]) -> String {
    const FEW: [(u8, u8); 14] =
        [(1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 5), (2, 5), (3, 5), (4, 5), (1, 6), (1, 7), (1, 8), (1, 9), (1, 10)];
    let words = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
    let word = |n: u8| words.get(usize::from(n).saturating_sub(1)).copied().unwrap_or_default();
    let off = |(n, of): (u8, u8)| (f64::from(n) / f64::from(of) - share).abs();
    let nearest = FEW.into_iter().fold((1, 2), |near, next| if off(next) < off(near) { next } else { near });
    match nearest {
        (1, 10) if share < 0.095 => format!("one in {:.0} {one}", 1.0 / share),
        (1, of) => format!("one in {} {one}", word(of)),
        (n, of) => format!("{} in {} {many}", word(n), word(of)),
    }
}

/// "28 days left, then 82.46 each".
pub fn then_each(left: &str, sum: &str) -> String {
    format!("{left}, then {sum} each")
}

/// "It stays at 120: less would pay under your lowest pay."
pub fn stays_at(sum: &str) -> String {
    format!("It stays at {sum}: less would pay under your lowest pay.")
}

/// "An offer today, by card".
pub fn offer_today(by: &str) -> String {
    format!("{AN_OFFER_TODAY}, {by}")
}

/// "Ask", "Ask, with tax".
pub fn ask(with_tax: bool) -> &'static str {
    if with_tax { "Ask, with tax" } else { "Ask" }
}

/// "Ask 145 until 2 May."
pub fn ask_until(price: &str, day: &str) -> String {
    sentence(format!("Ask {price} until {day}"))
}

/// "1 chance in 2": a chance said as one in so many, or so many in ten.
fn chance(chance: f64, first: bool) -> String {
    let of = (1.0 / chance.max(1e-9)).round();
    let (one, many) = if first { (" chance", " chances") } else { ("", "") };
    if 0.97 < chance {
        if first { "Nearly sure" } else { "nearly sure" }.to_owned()
    } else if 0.6 < chance {
        format!("{}{many} in 10", (chance * 10.0).round().min(9.0))
    } else if 20.0 < of {
        if first { "Hardly a chance" } else { "hardly a chance" }.to_owned()
    } else {
        format!("1{one} in {of}")
    }
}

/// "1 chance in 2 of selling both, 1 in 5 of selling none."
pub fn chances(pieces: u32, all: f64, none: f64) -> String {
    let what = match pieces {
        1 => return format!("{} of selling it.", chance(all, true)),
        2 => "both".to_owned(),
        _ => format!("all {pieces}"),
    };
    format!("{} of selling {what}, {} of selling none.", chance(all, true), chance(none, false))
}

/// "365 now, or about 380 later with 1 chance in 3 of not selling it.", "130 now, or about 141 later for the next, with …".
pub fn now_or_later(now: &str, later: &str, (pieces, none): (u32, f64)) -> String {
    let chance = chance(none, true);
    let chance = chance.replacen(['H', 'N'], if chance.starts_with('H') { "h" } else { "n" }, 1);
    match pieces {
        0 | 1 => format!("{now} now, or about {later} later with {chance} of not selling it."),
        _ => format!("{now} now, or about {later} later for the next, with {chance} of selling none."),
    }
}

/// "The next brings about 141."
pub fn next_brings(sum: &str) -> String {
    format!("The next brings about {sum}.")
}

/// "5 asked since you guessed. With that about 9 ask in a week, and at 50 one in three buys."
pub fn asked_since((n, written): (u32, &str), week: &str, (price, share): (&str, f64)) -> String {
    let who = if n == 1 { "One" } else { written };
    format!("{who} asked since you guessed. With that about {week} ask in a week, and at {price} {}.", who_buy(share))
}

/// "The day has passed, Sat 16 May: say by when anew."
pub fn is_over(day: &str) -> String {
    format!("{day} has come. Say by when anew.")
}

/// "The day it was to be sold by, Wed 1 July, has come: say it anew.": on the list, where what waiting is worth is gone.
pub fn sold_by_over(day: &str) -> String {
    format!("The day it was to be sold by, {day}, has come: say it anew.")
}

/// "You took 130, waiting was worth 98."
pub fn took(sum: &str, worth: &str) -> String {
    format!("You took {sum}, waiting was worth {worth}.")
}

/// "You waited at 130, sold at 145."
pub fn waited(offered: &str, sold: &str) -> String {
    format!("You waited at {offered}, sold at {sold}.")
}

/// "at 145, and left".
pub fn at_and_left(price: &str) -> String {
    format!("at {price}, and left")
}

pub const ASKED: &str = "someone asked";
pub const DID_NOT_TURN_UP: &str = "did not turn up";
pub const GUESSED: &str = "your guesses";

/// "From 115 on, where you settle, it is a yes."
pub fn a_yes_from(settle: &str) -> String {
    format!("From {settle} on, where you settle, it is a yes.")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chances_are_said_in_people() {
        for (share, said) in [
            (0.25, "one in four buys"),
            (0.5, "one in two buys"),
            (0.4, "two in five buy."),
            (0.7, "two in three buy"),
            (0.8, "four in five buy"),
            (0.09, "one in 11 buys"),
            (0.99, "everyone"),
            (0.05, "one in 20"),
            (0.0, "hardly"),
        ] {
            assert!(one_buys("145", share).contains(said), "{share}: {}", one_buys("145", share));
        }
        assert_eq!(chances(2, 0.491, 0.192), "1 chance in 2 of selling both, 1 in 5 of selling none.");
        assert_eq!(now_or_later("365", "380", (1, 0.33)), "365 now, or about 380 later with 1 chance in 3 of not selling it.");
        assert_eq!(
            now_or_later("130", "141", (3, 0.01)),
            "130 now, or about 141 later for the next, with hardly a chance of selling none."
        );
        assert!(now_or_later("9", "10", (1, 0.72)).contains("with 7 chances in 10 of not selling it."));
        assert_eq!(chances(1, 0.98, 0.02), "Nearly sure of selling it.");
        assert_eq!(chances(3, 0.01, 0.72), "Hardly a chance of selling all 3, 7 in 10 of selling none.");
    }
}
