//! English: dates: working hours and days off, promised days, quotes.

use super::common::sentence;
use crate::app::news::Handed;
use fivebar_core::quantity::Listed;

pub const WORKING_HOURS: &str = "Working hours";
pub const HANDS_ON: &str = "Hands on wood, a day";
pub const HANDS_ON_UNDER: &str = "Not hours in the shop: what a day really leaves for the work.";
pub const CLOSING: &str = "A day at the bench ends at";
pub const CLOSING_UNDER: &str = "A forgotten clock is proposed to stop then at the latest, once earlier runs or the plan say how long the work takes; cautions of the evening come then.";
pub const WEEK: &str = "Days you work";
pub const WEEKDAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
pub const DAYS_OFF: &str = "Days off";
pub const NO_DAYS_OFF: &str = "None ahead.";
pub const IN_A_ROW: &str = "days in a row";
pub const WORK_AFTER_ALL: &str = "Work after all";
pub const EARLIER: &str = "15 min earlier";
pub const LATER: &str = "15 min later";

/// `4 h`.
pub fn hours(n: &str) -> String {
    format!("{n} h")
}

/// `Our guess until you say: 4 h a day till 6:00 PM, no Sundays.`
pub fn guess(span: &str, closing: &str) -> String {
    format!("Our guess until you say: {span} a day till {closing}, no Sundays.")
}

/// `4 h a day, till 18:00`.
pub fn short(span: &str, closing: &str) -> String {
    format!("{span} a day, till {closing}")
}

/// `Take Wed 4 Mar off`, `Take Wed 4 Mar to Fri 6 Mar off`.
pub fn take_off(from: &str, to: Option<&str>) -> String {
    match to {
        None => format!("Take {from} off"),
        Some(to) => format!("Take {from} to {to} off"),
    }
}

/// `Work Wed 4 Mar after all`.
pub fn work_after_all(from: &str, to: Option<&str>) -> String {
    format!("Work {} after all", stretch(from, to))
}

/// `Wed 4 Mar`, `Wed 4 Mar to Fri 6 Mar`.
pub fn stretch(from: &str, to: Option<&str>) -> String {
    to.map_or_else(|| from.to_owned(), |to| format!("{from} to {to}"))
}

pub const DATES: &str = "Dates and quote";
pub const WHEN_READY: &str = "when can it be ready?";
pub const DONE_BY: &str = "To be done by";
pub const NO_DAY: &str = "no day";
pub const NO_DAY_KEY: &str = "No day";
pub const BY_BUYER: &str = "Promised with the price: it is changed with the order.";
pub const READY: &str = "Begun now, it is ready in the course of";
pub const HARD: &str = "It is hard in the course of";
pub const NOT_THAT_DAY: &str = "Not that day";
pub const SAY_KIND: &str = "Say what kind of piece it is";
pub const PLANNED_ALONE: &str = "That is what is planned alone: what else is to do is not in it.";
pub const REST: &str = "what is not planned yet";

/// Beside when it can be ready: the hours of other jobs want the same days.
pub fn of_others(hours: &str, after: Option<&str>, safe: Option<&str>) -> String {
    let after = after.map(|day| match safe {
        Some(safe) if safe == day => format!(" With them first it is ready {day}."),
        Some(safe) => format!(" With them first it is likely ready {day}, {safe} to be safe."),
        None => format!(" With them first it is likely ready {day}."),
    });
    let after = after.unwrap_or_default();
    format!("As if you did nothing else: {hours} of other jobs are not in it.{after}")
}

/// "The 8 h 24 of other jobs come first: Fri 13 March. Before them it could be Tue 10 March."
pub fn behind_others(hours: &str, [behind, alone]: [&str; 2]) -> String {
    [format!("The {hours} of other jobs come first: {behind}"), format!("Before them it could be {alone}")].map(sentence).join(" ")
}

/// Of a day that can be promised as before, though it is likely ready later, or to be safe: "The 1 h 51 of other jobs come first: it is likely
/// ready Thu 3 December, before them Wed 2 December. The day that can be promised is the same."
pub fn ready_behind(hours: &str, is_likely: bool, [behind, alone]: [&str; 2]) -> String {
    let ready = if is_likely { "it is likely ready" } else { "to be safe it is ready" };
    let first = format!("The {hours} of other jobs come first: {ready} {behind}, before them {alone}");
    [first, "The day that can be promised is the same".to_owned()].map(sentence).join(" ")
}

pub fn moves_no_day(hours: &str) -> String {
    format!("The {hours} of other jobs come first, and move no day.")
}

pub const NOT_KNOWN: &str = "Nothing says yet how long it takes: plan operations, or say what kind of piece it is.";
pub const NOT_KNOWN_OF_KIND: &str = "Nothing says yet how long it takes: plan operations, or tell old jobs.";
pub const NOTHING_LEFT: &str = "Nothing is left to do before.";
pub const LAST_DAYS: &str = "Last day to begin";
pub const LAST_DAYS_BEGUN: &str = "Last day to begin, or to go on";
pub const WHOLE_PIECE: &str = "the whole piece";
pub const DATES_UNDER: &str = "Back from that day, with the hours that are likely. Waits run through nights and days off, hands only in working hours; the day itself is no working day.";
pub const NOT_ON: &str = "Delivering, selling and office are not in it.";
/// The same where nothing that is known waits: of a piece as a whole nobody knows what dries.
pub const NOT_ON_NOR_DRYING: &str =
    "Delivering, selling and office are not in it, nor is drying: plan the operations that wait for glue or a coat, and it is.";
pub const SAY_HOURS: &str = "Working hours";

/// `Ready Sat 21 Mar likely, Tue 24 Mar to be safe.`
pub fn ready(likely: &str, safe: Option<&str>) -> String {
    match safe {
        Some(safe) if safe != likely => format!("{likely} likely, {safe} to be safe"),
        _ => likely.to_owned(),
    }
}

/// "13 h 20 of hands on it are likely; nine times in ten they take no more than 16 h 40."
pub fn ready_under([likely, safe]: [&str; 2]) -> String {
    if likely == safe {
        return format!("{likely} of hands on it.");
    }
    format!("{likely} of hands on it are likely; nine times in ten they take no more than {safe}.")
}

/// "To be done by Fri 22 May, and it will likely not be ready: the first day that can be promised is Tue 26 May."
pub fn missed(due: &str, is_likely: bool, first: &str) -> String {
    let why = if is_likely { "it will likely not be ready" } else { "it will likely be ready by then, but not nine times in ten" };
    sentence(format!("To be done by {due}, and {why}: the first day that can be promised is {first}"))
}

/// `Hands off it Fri 6 March; then it waits, till Fri 13 March.`
pub fn waits_after(hands: &str, day: &str) -> String {
    sentence(format!("To be safe: hands off it {hands}, then it waits till {day}"))
}

/// `Safe to promise for Sat 14 March, the morning after.` Of a day that is none of work it is the next one that is. Where nobody knows what dries
/// that is said with it.
pub fn can_be_promised(day: &str, is_next: bool, is_undried: bool) -> String {
    let when = if is_next { "the morning after" } else { "the next working day" };
    let undried = if is_undried { ", if nothing of it waits: glue and drying are not in it" } else { "" };
    format!("Safe to promise for {day}, {when}{undried}.")
}

/// Where the days of a quote hold no wait: none goes out.
pub const UNDRIED: &str =
    "The day has no glue and no drying in it, so none is on the paper. Plan the operations, those that wait too, and it is.";
pub const UNDRIED_GIVEN: &str =
    "The day has no glue and no drying in it, and it stands on the paper as you gave it. Plan the operations, those that wait too.";

/// "It waits as long as Plant stand did: 2 days for glue and coats."
pub fn waits_as(job: &str, span: &str) -> String {
    format!("It waits as long as {job} did: {span} for glue and coats.")
}

/// `Ready by Sat 5 Dec stands on the paper, as you gave it, and it holds no more: as it stands it is safe only for Mon 7 Dec.`
pub fn holds_no_more(given: &str, first: &str) -> String {
    sentence(format!(
        "Ready by {given} stands on the paper, as you gave it, and it holds no more: as it stands it is safe only for {first}"
    ))
}

/// The same of the last day it is good: it is ready later than the paper says.
pub fn last_holds_no_more([until, given, first]: [&str; 3]) -> String {
    sentence(format!(
        "Agreed by {until}, ready by {given} stands on the paper, as you gave it, and it holds no more: agreed then it is safe only for {first}"
    ))
}

/// A price with its day, as it is reckoned now: "$320 to $400, ready by Mon 7 Dec".
pub fn with_day(price: &str, ready: Option<&str>) -> String {
    ready.map_or(price.to_owned(), |ready| format!("{price}, ready by {ready}"))
}

/// `As it stands it is safe only for Wed 17 June.` The day that was said comes before it.
pub fn ready_only_by(day: &str) -> String {
    sentence(format!("As it stands it is safe only for {day}"))
}

/// `No piece of sand is noted as done: by its hours it counts as done.`
pub fn unnoted(op: &str) -> String {
    format!("No piece of {op} is noted as done; by its hours it counts as done.")
}

/// `Thu 26 Feb is over. Not said.`
pub fn day_is_over(day: &str) -> String {
    format!("{day} is over, so it is not said yet. Is it meant?")
}

/// `for 3 pieces`: behind the time of what is left.
pub fn pieces_left(n: &str) -> String {
    if n == "1" { "for 1 piece".to_owned() } else { format!("for {n} pieces") }
}

/// `4 h a day till 18:00, no Sundays` in words of the page below the days.
/// With the days of the week that are none of work, and with days off where there are any ahead.
pub fn reckoned((span, closing): (&str, &str), (days, has_off): (&[bool; 7], bool), said: bool) -> String {
    let whose = if said { "Your working hours" } else { "A guess of ours" };
    let no = OFF.iter().zip(days).filter(|(_, works)| !**works).map(|(day, _)| format!(", no {day}")).listed().concat();
    let off = if has_off { ", and none of your days off" } else { "" };
    format!("{whose}: {span} a day at the bench, till {closing}{no}{off}.")
}

const OFF: [&str; 7] = ["Mondays", "Tuesdays", "Wednesdays", "Thursdays", "Fridays", "Saturdays", "Sundays"];

/// `glue seat should have begun by Wed 18 Mar`.
pub fn late(op: &str, last: Option<&str>) -> String {
    match last {
        Some(last) => sentence(format!("Too late as it stands: {op} should have begun by {last}")),
        None => format!("Too late as it stands: {op} takes longer than there is."),
    }
}

/// `saw is begun, and what is left of it (3 h) had to go on by Wed 18 Mar`.
pub fn late_begun((op, left): (&str, &str), last: Option<&str>) -> String {
    let late = last.map_or("takes longer than there is".to_owned(), |last| format!("had to go on by {last}"));
    sentence(format!("Too late as it stands: {op} is begun, and what is left of it ({left}) {late}"))
}

/// What can be done where hands can't begin a step in time any more; the day is safe to promise.
pub fn what_can_be_done(promised: Option<&str>) -> String {
    let day = promised.map_or("Say another day".to_owned(), |day| format!("Say another day (safe to promise is {day})"));
    format!("{day}, work longer days, or strike what can be left out.")
}

/// `late: Wed 18 Mar`, a last day that is over.
pub fn late_last(day: &str) -> String {
    format!("late: {day}")
}

/// "It will not be ready by Fri 22 May: finish waits till Sat 23 May, and the first day that can be promised is Mon 25 May."
pub fn waits_past(due: &str, (op, until): (&str, &str), first: Option<&str>) -> String {
    let first = first.map(|day| format!(", and the first day that can be promised is {day}")).unwrap_or_default();
    sentence(format!("It will not be ready by {due}: {op} waits till {until}{first}"))
}

/// Of what was promised, where likely hours keep to it and safe ones don't.
pub const NOT_SAFELY: &str = "Likely in time, but not nine times in ten.";

/// "Behind your other jobs it will likely not be ready: the first day that can be promised is Thu 14 May.", of a day that was said.
pub fn missed_behind((is_likely, is_behind): (bool, bool), first: &str) -> String {
    let why = match (is_likely, is_behind) {
        (true, true) => "Behind your other jobs it will likely not be ready",
        (true, false) => "It will likely not be ready",
        (false, true) => "Behind your other jobs it is likely in time, but not nine times in ten",
        (false, false) => "Likely in time, but not nine times in ten",
    };
    sentence(format!("{why}: the first day that can be promised is {first}"))
}

/// `Begin glue seat by Wed 18 Mar, to be safe by Mon 16 Mar.`
pub fn begin(op: &str, last: &str, safe: Option<&str>) -> String {
    match safe {
        Some(safe) => sentence(format!("Begin {op} by {last}, to be safe by {safe}")),
        None => sentence(format!("Begin {op} by {last}")),
    }
}

/// `Go on with glue seat by Wed 18 Mar, to be safe by Mon 16 Mar.`
pub fn go_on(op: &str, last: &str, safe: Option<&str>) -> String {
    let safe = safe.map(|day| format!(", to be safe by {day}")).unwrap_or_default();
    sentence(format!("Go on with {op} by {last}{safe}"))
}

/// `begun, 3 h left`: of a step.
pub fn begun(left: &str) -> String {
    format!("begun, {left} left")
}

/// `drying until Sun 19 Apr 10:35, then 1 h 36`: a coat is on, and the next is to come.
pub fn once_dry(until: &str, left: &str) -> String {
    format!("drying until {until}, then {left}")
}

/// `to be done by Fri 22 May`
pub fn done_by(day: &str) -> String {
    format!("to be done by {day}")
}

/// A promised day that is gone.
pub const IS_OVER: &str = "That day is over. Finish it, or say another day.";

/// `safe Fri 13 Mar`, under a last day.
pub fn safe_last(day: &str) -> String {
    format!("to be safe {day}")
}

/// `(4 h thought × 1.4)`: beside what is likely, by the factor that makes it so.
pub fn thought(span: &str, times: &str) -> String {
    format!("({span} thought × {times})")
}

/// `(4 h thought and 7.5 % for rework)`.
pub fn with_rework(span: &str, percent: &str) -> String {
    format!("({span} thought and {percent} % for rework)")
}

/// "× 1.339 on what you thought: as your 3 jobs went, the usual 1.4 counting as 2 more."
pub fn by_jobs(times: &str, jobs: usize, n: &str) -> String {
    let jobs = if jobs == 1 { "your job".to_owned() } else { format!("your {n} jobs") };
    format!("× {times} on what you thought: as {jobs} went, the usual 1.4 counting as 2 more.")
}

/// `5 h 36, then in clamps 1 h 30, hard after 7 days`.
pub fn step(hands: Option<&str>, wait: Option<(&str, &str)>, cure: Option<&str>) -> String {
    let wait = wait.map(|(what, span)| format!("{what} {span}"));
    let done = [hands.map(str::to_owned), wait].into_iter().flatten().listed().join(", then ");
    let hard = cure.map(|span| format!("hard after {span}"));
    [Some(done).filter(|done| !done.is_empty()), hard].into_iter().flatten().listed().join(", ")
}

/// `done, hard Wed 11 Mar`, `to dry 3 h, hard Wed 11 Mar`: nothing is left to do but to wait.
pub fn hard_on(wait: Option<(&str, &str)>, day: &str) -> String {
    let done = wait.map_or("done".to_owned(), |(what, span)| format!("{what} {span}"));
    format!("{done}, hard {day}")
}

/// `2 days`, `7 days`: a wait of whole days.
pub fn days(n: &str, one: bool) -> String {
    if one { format!("{n} day") } else { format!("{n} days") }
}

/// What a wait is for, as the second half of a line.
pub fn wait(what: &str) -> &'static str {
    match what {
        "glue" => "in clamps",
        "coat" => "to dry",
        "dry" => "to dry",
        "cure" => "to harden",
        _ => "to wait",
    }
}

/// `Done by Fri 22 May all the same`.
pub fn promise(day: &str) -> String {
    format!("By {day} all the same")
}

pub const QUOTE: &str = "Quote";
pub const QUOTE_NO_COSTS: &str = "A price needs what the wood costs this job: a pile has no size, or a drive no rate.";
pub const QUOTE_NOTHING_NOTED: &str =
    "What you spent on it is not noted yet: no sum for a buyer before that. Write down what it took, or 0 if nothing.";
pub const QUOTE_GONE: &str = "No piece of it is left to quote.";
pub const DATES_ENDED: &str = "You are done with this job: nothing of it is to come.";
pub const QUOTE_ENDED: &str = "You are done with this job: nothing is quoted any more.";
pub const QUOTE_NOW: &str = "Reckoned now";
pub const GIVE_ANEW: &str = "Write it down anew";
pub const QUOTE_NO_RATE: &str = "A price needs your rate: say in Workshop what an hour must earn.";
pub const QUOTE_NO_HOURS: &str = "A price needs hours: plan operations, or say what kind of piece it is.";
pub const QUOTE_NO_HOURS_OF_KIND: &str = "A price needs hours: plan operations, or tell old jobs.";
pub const QUOTE_GUESS: &str = "No price by a guess: its hours are those of other jobs, of which no kind of piece is known. Say what kind of piece it is, or plan its operations.";
pub const GIVE: &str = "Write this quote down";
pub const SHARE: &str = "Share it as text";
pub const PRINT: &str = "Print it";
pub const PAPER_UNDER: &str = "On paper and in the text stand the piece, the price, the day and until when: no hours, no costs, no rate.";
pub const QUOTE_TITLE: &str = "Quote";
pub const FROM_TO: &str = "from to";
pub const NOT_BINDING: &str = "An estimate of a hand-made piece; a fixed price is agreed on order.";
pub const STANDS_OVER: &str = "The quote you gave is over.";

/// `Your tags ask 192.60 for these 3: this quote is under that.`
pub fn tags_over(asked: &str, of: Option<&str>) -> String {
    let tags = of.map_or(format!("Your tag asks {asked}"), |n| format!("Your tags ask {asked} for these {n}"));
    format!("{tags}: this quote is under that.")
}

/// `320 to 395 USD`.
pub fn between(low: &str, high: &str) -> String {
    if low == high { low.to_owned() } else { format!("{low} to {high}") }
}

/// `$320 to $395, tax in it`: on paper.
pub fn with_tax(price: &str) -> String {
    format!("{price}, tax in it")
}

/// `13 h 18 to 16 h 40 at your rate, 42 min of it its part of the hauls; costs 20.00`; `7 h 01` where both are one. Where some are gone: `3 of 5:
/// 2 h 30 at your rate; costs 25.92.`
pub fn reckoning([likely, safe]: [&str; 2], hauls: Option<&str>, costs: &str, of: Option<[&str; 2]>) -> String {
    let hauls = hauls.map(|span| format!(", {span} of it its part of the hauls")).unwrap_or_default();
    let said = format!("{} at your rate{hauls}; costs {costs}", between(likely, safe));
    of.map_or(said.clone(), |[n, all]| format!("{n} of {all}: {said}."))
}

/// `Agreed at 800, 320 paid: nothing else is quoted.`
pub fn quote_agreed(sum: &str, paid: Option<&str>) -> String {
    let paid = paid.map(|paid| format!(", {paid} paid")).unwrap_or_default();
    format!("Agreed at {sum}{paid}: nothing else is quoted.")
}

/// `Ready by Fri 22 May.`
pub fn ready_by(day: &str) -> String {
    sentence(format!("Ready by {day}"))
}

/// `Ready by Fri 22 May if agreed on Tue 10 Mar.`
pub fn ready_by_if(day: &str, agreed: &str) -> String {
    sentence(format!("Ready by {day} if agreed on {agreed}"))
}

/// `Good until Thu 30 Apr.`, `Good until Thu 30 Apr: agreed by then, ready by Fri 12 Jun.`
pub fn good_until(day: &str, ready: Option<&str>) -> String {
    let ready = ready.map(|ready| format!(": agreed by then, ready by {ready}")).unwrap_or_default();
    sentence(format!("Good until {day}{ready}"))
}

/// `You quoted 320 to 395 USD on Tue 10 Mar, good until Thu 9 Apr.`
pub fn given(between: &str, on: &str, until: Option<&str>) -> String {
    match until {
        Some(until) => sentence(format!("You quoted {between} on {on}, good until {until}")),
        None => sentence(format!("You quoted {between} on {on}")),
    }
}

/// "quoted $320 to $395", beside the day of a job.
pub fn quoted(between: &str) -> String {
    format!("quoted {between}")
}

/// What became of a quote that was handed on.
pub fn handed(handed: &Handed) -> String {
    match handed {
        Handed::Shared(_) => "Handed on.".into(),
        Handed::Downloaded(name) => format!("The browser keeps it as {name}."),
        Handed::PutAway => "Not handed on.".into(),
        Handed::NoWay => "This browser can’t hand it on: print it.".into(),
    }
}

/// What the file of a quote is called.
pub const FILE: &str = "quote";

/// What is shared: lines with nothing private in them.
pub fn paper(lines: &[String]) -> String {
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_not_said_twice() {
        let check = |said: String, whole: &str| assert_eq!(said, whole);
        let days = ["Fri 13 March", "Tue 10 March"];
        check(moves_no_day("42 min"), "The 42 min of other jobs come first, and move no day.");
        check(behind_others("42 min", days), "The 42 min of other jobs come first: Fri 13 March. Before them it could be Tue 10 March.");
        let same = "The day that can be promised is the same.";
        let safe = format!("The 42 min of other jobs come first: to be safe it is ready Fri 13 March, before them Tue 10 March. {same}");
        check(ready_behind("42 min", false, days), &safe);
        check(
            holds_no_more("5 Feb.", "7 Feb."),
            "Ready by 5 Feb. stands on the paper, as you gave it, and it holds no more: as it stands it is safe only for 7 Feb.",
        );
    }
}
