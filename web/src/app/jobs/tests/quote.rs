//! A quote of a job: a range and a day, with nothing private on its paper, and where none is given.

use super::super::dates::DatesTap;
use super::dates::{dates, stool};
use super::*;
use crate::app::news::Handed;

/// 13 March can't be met: a quote says so, and the first day that can, to the maker alone; 3 April can, and nothing is said.
#[test]
fn a_quote_says_that_a_day_is_missed() {
    let mut maker = stool();
    let missed = "To be done by Fri 13 March, and it will likely not be ready: the first day that can be promised is ";
    maker.room("stool", Room::Dates).shows(&[" of hands on it are likely; nine times in ten they take no more than "]);
    maker.tap(dates(DatesTap::By(-7))).tap(dates(DatesTap::By(-7))).tap(Tap::Room(Room::Quote)).shows(&["no-print", missed]);
    assert!(!page(&maker.app).html().split("no-print").next().unwrap().contains("To be done by"), "not on the paper");
    maker.tap(Tap::Room(Room::Dates));
    for _ in 0..3 {
        maker.tap(dates(DatesTap::By(7)));
    }
    maker.hides(&["late: ", "Say another day ("]);
    maker.shows(&["Fri 3 April"]).tap(Tap::Room(Room::Quote)).hides(&["To be done by"]);
}

/// 798 min likely (570 x 1.4) at 22.20 with 20 of costs: 320; what goes to the buyer has no hours, no costs, no rate.
#[test]
fn a_quote_is_given_and_handed_on_with_nothing_private() {
    let mut maker = stool();
    maker.room("stool", Room::Quote).shows(&[
        "Stool",
        "$320 to $",
        "Ready by",
        "Good until Thu 9 April: agreed by then, ready by",
        "13 h 18 to",
        "costs 20.00",
    ]);
    maker.tap(dates(DatesTap::Share));
    let [Order::Note { name, text }] = maker.orders.as_slice() else { panic!("{:?}", maker.orders) };
    assert_eq!(name, "quote");
    assert!(text.starts_with("Stool\n$320 to $") && text.contains("Good until Thu 9 April: agreed"), "{text}");
    for private in ["12 h", "20.00", "22.20", "rate", "cost"] {
        assert!(!text.contains(private), "{private}: {text}");
    }
    let page = page(&maker.app).html();
    let paper = page.split("class=\"sheet").nth(1).unwrap().split("</section>").next().unwrap();
    assert!(!paper.contains("13 h") && !paper.contains("costs"), "{paper}");
    maker.tap(dates(DatesTap::Handed(Handed::NoWay))).shows(&["can’t hand it on"]);
    // All but what is not printed: nothing private is left.
    let printed: String = page.split("<div class=\"col no-print\">").next().unwrap().to_owned();
    assert!(!printed.contains("13 h") && !printed.contains("costs") && printed.contains("$320 to $"), "{printed}");
    maker.tap(dates(DatesTap::Quote)).shows(&["You quoted $320 to $", "on Tue 10 March, good until Thu 9 April.", "Reckoned now"]);
    // While it stands, the paper is what was given, whatever was logged since.
    maker.now.wall = Wall::new(maker.now.wall.at.plus(fivebar_core::quantity::Span::minutes(5 * 1_440)), maker.now.wall.offset);
    maker
        .tap(Tap::Room(Room::Dates))
        .tap(Tap::Room(Room::Quote))
        .shows(&["Good until Thu 9 April: agreed by then, ready by", "Write it down anew"]);
    maker.tap(dates(DatesTap::Print));
    assert_eq!(maker.orders, [Order::Print]);
    maker.tap(Tap::Room(Room::Dates)).shows(&["Quote", "$320 to $"]);
    maker.tap(Tap::Page).shows(&["Dates and quote", "quoted $320 to $"]);
}

/// A quote that stands says of tax what held when it was given: of the till, of a named rate, of the job. One that is over, and none, say what holds
/// now; a named rate that is changed later changes nothing of what was quoted.
#[test]
fn a_quote_says_of_tax_what_held_when_it_was_given() {
    let check = |before: &str, after: &str, is_in: bool| {
        let mut maker = Maker::told(&[&format!(
            "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\ntax-rate \"Away\" 0.05 inside as away\n\
            job stool \"Stool\" 1 order\nspend 0 wood on stool\nplan \"saw\" make 60 min for stool\n{before}\n{after}\n"
        )]);
        maker.room("stool", Room::Quote);
        let said = if is_in { "$50 to $60, tax in it" } else { "$50 to $60<" };
        maker.shows(&[said]);
    };
    let (quote, tax, none) = ("quote stool 50 60 until 2026-04-09", "till tax 0.055 inside", "till tax 0 inside");
    check(quote, "", false);
    check(quote, tax, false);
    check(quote, "job-tax stool away", false);
    check(quote, "tax-rate \"Away\" 0.07 inside changes away\njob-tax stool away", false);
    for before in [tax.to_owned(), "till tax 0.055 top".to_owned(), "job-tax stool away".to_owned()] {
        let given = format!("{before}\n{quote}");
        check(&given, "", true);
        check(&given, &format!("{none}\njob-tax stool none"), true);
    }
    check(&format!("job-tax stool away\n{quote}"), "tax-rate \"Away\" 0 inside changes away", true);
    check(&format!("job-tax stool away as it\nundo it\n{quote}"), "", false);
    check(&format!("job-tax stool away as it\n{quote}"), "undo it", true);
    // Given anew it is with the tax of now.
    check(quote, &format!("{tax}\n{quote}"), true);
    let over = "quote stool 50 60 until 2026-03-11\ntill tax 0.055 inside\n2026-03-12 08:00 about stool note \"x\"\n";
    let mut maker = Maker::told(&[&format!(
        "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\n\
        plan \"saw\" make 60 min for stool\n{over}"
    )]);
    maker.room("stool", Room::Quote).shows(&[", tax in it", "The quote you gave is over."]);
}

#[test]
fn back_leads_from_the_quote_to_the_dates() {
    let mut maker = stool();
    maker.room("stool", Room::Quote).say(Msg::Key("Escape".into()));
    assert_eq!(maker.app.jobs.room, Some(Room::Dates));
    maker.say(Msg::Key("Escape".into()));
    assert_eq!(maker.app.jobs.room, None);
}

/// A day of 4 h until 18:00. Alone the stool is ready that Tuesday; behind the six hours of the other, 8 h 24 as hours go, to be safe on Friday
/// (as `the_hours_of_other_jobs_are_named_beside_the_dates` reckons): each is promised for the
/// day after: the paper has the later one, the maker both.
#[test]
fn a_quote_promises_the_day_behind_the_other_jobs() {
    let begun = "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\nplan \"saw\" make 60 min for stool\n";
    let other = "job other \"Other\" 1 spec\nplan \"sand\" make 360 min for other\n";
    let alone = "Ready by Wed 11 March if agreed on Tue 10 March.";
    Maker::told(&[begun]).room("stool", Room::Quote).shows(&[alone]).hides(&["of other jobs"]);
    let mut both = Maker::told(&[&format!("{begun}{other}")]);
    both.room("stool", Room::Quote).hides(&[alone]).shows(&[
        "Ready by Sat 14 March if agreed on Tue 10 March.",
        "The 8 h 24 of other jobs come first: Sat 14 March. Before them it could be Wed 11 March.",
    ]);
    both.tap(dates(DatesTap::Quote)).shows(&["Ready by Sat 14 March if agreed on Tue 10 March."]);
    both.tap(dates(DatesTap::Share));
    let both_days = "Ready by Sat 14 March if agreed on Tue 10 March.\nGood until Thu 9 April: agreed by then, ready by Wed 15 April.";
    assert!(both.orders.iter().any(|order| matches!(order, Order::Note { text, .. } if text.contains(both_days))), "{:?}", both.orders);
}

/// Quoted for the 11th, before the six hours of the other came: the paper says what was given, and the page above it that it is too early by now;
/// what is reckoned now has its day. Once nothing is left to do, nothing is said of it.
#[test]
fn a_day_that_was_given_and_holds_no_more_is_said_before_the_paper() {
    let begun = "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\nplan \"saw\" make 60 min for stool pieces 1\nquote stool 50 60 ready 2026-03-11 until 2026-04-09\n";
    let other = "job other \"Other\" 1 spec\nplan \"sand\" make 360 min for other\n";
    let broken =
        "Ready by Wed 11 March stands on the paper, as you gave it, and it holds no more: as it stands it is safe only for Sat 14 March.";
    let (paper, now) = ("Ready by Wed 11 March.", ", ready by Sat 14 March");
    let mut both = Maker::told(&[&format!("{begun}{other}")]);
    both.room("stool", Room::Quote).shows(&[broken, paper, now]);
    let html = page(&both.app).html();
    let before = html.split("class=\"sheet").next().unwrap();
    assert!(before.contains(broken) && before.contains("no-print"), "{before}");
    assert_eq!(html.matches("Sat 14 March").count(), 3, "above the paper, behind the others, and as it is reckoned now: {html}");
    both.tap(dates(DatesTap::Quote)).shows(&["Ready by Sat 14 March if", now]).hides(&["holds no more", paper]);
    Maker::told(&[begun]).room("stool", Room::Quote).shows(&[paper, ", ready by Wed 11 March"]).hides(&["holds no more"]);
    let made = "start \"saw\" make on stool\n08:50 done 1\nstop\n2026-03-13 08:00 about stool note \"made\"\n";
    let due = format!("{begun}{made}about stool due 2026-03-12\n");
    Maker::told(&[&due]).room("stool", Room::Quote).shows(&[paper]).hides(&["holds no more", "To be done by"]);
}

const TRIMMED: &str = "2026-05-04 08:00 -05:00 workshop USD inch\nrate pay 20 hours 1600 logged 1000 costs 0\njob more \"Pine crate\" 1 spec\n\
    start \"trim\" make on more\n09:00 stop\nsell 1 more for 60 notes fetched\nend more\njob stool \"Walnut chest\" 1 order\n";

/// A chest of which nothing is known but that a crate took an hour: no sum for a buyer before its costs are noted, nothing spent too; and whose hours
/// these are is said wherever they stand. No price is quoted by hours of a crate; by those of a crate for a crate it is.
#[test]
fn no_sum_for_a_buyer_before_it_is_known_what_it_costs() {
    let guess = "1 h of its hours are a guess, by 1 earlier job.";
    let nothing = "What you spent on it is not noted yet: no sum for a buyer before that. Write down what it took, or 0 if nothing.";
    let mut maker = Maker::told(&[TRIMMED]);
    maker.room("stool", Room::Quote).shows(&[nothing, "Write down spending", "Wood and plan"]).hides(&[
        "$",
        "Ready by",
        "costs 0.00",
        "Write this quote down",
    ]);
    maker.tap(dates(DatesTap::Quote)).tap(dates(DatesTap::Share));
    assert!(maker.orders.is_empty(), "{:?}", maker.orders);
    maker.tap(Tap::Room(Room::Dates)).shows(&["Safe to promise for", guess]);
    maker.tap(Tap::Page).shows(&["1 h to come", guess]);
    let noted = format!("{TRIMMED}spend 0 wood on stool\n");
    let by_any = "No price by a guess: its hours are those of other jobs, of which no kind of piece is known.";
    Maker::told(&[&noted]).room("stool", Room::Quote).shows(&[by_any]).hides(&["$", "Write this quote down"]);
    Maker::told(&[&noted]).room("stool", Room::Hours).shows(&["A guess, and no price is quoted by it"]);
    let mut maker = Maker::told(&[&noted.replace("Walnut chest", "Pine crates, small")]);
    maker.room("stool", Room::Hours).hides(&["A guess, and no price"]).tap(Tap::Page);
    maker.room("stool", Room::Quote).shows(&[guess, "$", "costs 0.00"]).hides(&[nothing]);
    let html = page(&maker.app).html();
    let before = html.split("class=\"sheet").next().unwrap();
    assert!(before.contains(guess) && before.contains("no-print"), "{before}");
    let mut planned = Maker::told(&[&format!("{TRIMMED}plan-cost wood 20 for stool\nplan \"saw\" make 120 min for stool\n")]);
    planned.room("stool", Room::Quote).shows(&["costs 20.00"]).hides(&["are a guess"]);
    planned.tap(Tap::Page).hides(&["are a guess"]);
}

/// What is agreed is said in place of another price, and once every piece is gone there is none.
#[test]
fn what_is_agreed_or_gone_is_not_quoted() {
    let known = format!(
        "{TRIMMED}spend 40 wood on stool\nplan \"saw\" make 120 min for stool\nquote stool 500 600 ready 2026-06-01 until 2026-06-20\n"
    );
    Maker::told(&[&known]).room("stool", Room::Quote).shows(&["$500 to $600", "Write it down anew"]);
    let agreed = format!("{known}agree 800 for 1 stool fetched as deal\npay 320 for stool notes agreed deal\n");
    let mut maker = Maker::told(&[&agreed]);
    maker.room("stool", Room::Quote).shows(&[
        "You quoted $500 to $600",
        "Agreed at 800, 320 paid: nothing else is quoted.",
        "Sell and deliver",
    ]);
    maker.hides(&["Write it down anew", "Write this quote down", "Share it as text", "sheet card quote", "Reckoned now"]);
    let mut gone = Maker::told(&[&format!("{known}sell 1 stool for 700 notes fetched\n")]);
    gone.room("stool", Room::Quote).shows(&["No piece of it is left to quote."]);
    gone.hides(&["Write it down anew", "Write this quote down", "Share it as text", "sheet card quote"]);
}

/// Four of two hours each, which are 2.8 as it is thought (x 1.4): 11 h 12 at 20 an hour are 224, with 40 of wood 264, 265 in fives. One is sold: the
/// other three are quoted at their share of it, 198.
#[test]
fn what_is_gone_of_a_batch_is_not_quoted() {
    let told = "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 400 costs 0\njob stool \"Stools\" 4 spec\n\
        spend 40 wood on stool\nplan \"saw\" make 480 min for stool\n";
    let mut all = Maker::told(&[told]);
    all.room("stool", Room::Quote).shows(&["$265 to $375", "11 h 12 to 16 h 35 at your rate; costs 40.00"]).hides(&["of 4:"]);
    let mut some = Maker::told(&[&format!("{told}sell 1 stool for 70 notes fetched\n")]);
    some.room("stool", Room::Quote).shows(&["$200 to $280", "3 of 4: 8 h 24 to 12 h 26 at your rate; costs 30.00."]);
    // What was given for four stands no more. A drive of 40 to come is borne whole by the three: 198 and 40 are 238, 240 in fives.
    let given = format!("{told}quote stool 265 375 ready 2026-06-01 until 2026-06-20\nsell 1 stool for 70 notes fetched\n");
    Maker::told(&[&given]).room("stool", Room::Quote).shows(&["$200 to $280", "You quoted $265 to $375"]);
    let driven = format!("{told}sell 1 stool for 70 notes fetched\nplan-cost trip 40 delivery for stool\n");
    Maker::told(&[&driven]).room("stool", Room::Quote).shows(&["$240 to $320", "3 of 4: 8 h 24 to 12 h 26 at your rate; costs 70.00."]);
}

/// Three of four are left, quoted at 200 to 280. Tags of 93 ask 279 of them: nothing is said. Tags of 95 ask 285,
/// more than the quote does. One that was written down is held against what it says.
#[test]
fn tags_that_ask_more_than_a_quote_are_said_above_it() {
    let sold = "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 400 costs 0\njob stool \"Stools\" 4 spec\n\
        spend 40 wood on stool\nplan \"saw\" make 480 min for stool\nsell 1 stool for 70 notes fetched\n";
    let check = |lines: &str, said: &[&str], hidden: &[&str]| {
        Maker::told(&[&format!("{sold}{lines}")]).room("stool", Room::Quote).shows(said).hides(hidden);
    };
    check("", &["$200 to $280"], &["Your tag"]);
    check("tag 93 stool\n", &["$200 to $280"], &["Your tag"]);
    check("tag 95 stool\n", &["Your tags ask 285 for these 3: this quote is under that.", "$200 to $280"], &[]);
    let two = "sell 2 stool for 190 notes fetched\n";
    check(&format!("tag 95 stool\n{two}"), &["$70 to $95"], &["Your tag"]);
    check(&format!("tag 96 stool\n{two}"), &["Your tag asks 96: this quote is under that.", "$70 to $95"], &[]);
    let one = "job more \"Table\" 1 spec\nspend 40 wood on more\nplan \"saw\" make 60 min for more\ntag 95 more\n";
    for (high, is_said) in [(90, true), (95, false), (120, false)] {
        let mut maker = Maker::told(&[&format!("{sold}{one}quote more 60 {high} until 2026-04-09\n")]);
        maker.room("more", Room::Quote).shows(&[&format!("$60 to ${high}"), "You quoted $60"]);
        assert_eq!(super::page(&maker.app).html().contains("Your tag asks 95: this quote is under that."), is_said, "{high}");
    }
    // With half of it on top as tax, 3 x 95 x 1.5 against 420.
    check("till tax 0.5 top\ntag 95 stool\n", &["Your tags ask 427.50 for these 3", "$300 to $420, tax in it"], &[]);
    check("tag 95 stool\nagree 200 for 3 stool fetched as deal\n", &["nothing else is quoted"], &["Your tag"]);
}

/// An hour of sawing, promised for the 11th if agreed on the 10th, and for Saturday the 11th of April if agreed on the last day, begun the morning after.
/// Five days later nobody can say yes on the 10th any more, and the last day holds. Behind six hours more it does not.
#[test]
fn a_paper_says_the_day_if_it_is_agreed_on_its_last() {
    let begun = "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\nplan \"saw\" make 60 min for stool\n";
    let [ready, last] =
        ["Ready by Wed 11 March if agreed on Tue 10 March.", "Good until Thu 9 April: agreed by then, ready by Sat 11 April."];
    Maker::told(&[begun]).room("stool", Room::Quote).shows(&[ready, last]).tap(dates(DatesTap::Quote)).shows(&[ready, last]);
    let given = format!("{begun}quote stool 50 60 ready 2026-03-11 until 2026-04-09 last 2026-04-11\n");
    let later = "2026-03-16 08:00 about stool note \"x\"\n";
    Maker::told(&[&format!("{given}{later}")]).room("stool", Room::Quote).shows(&[ready, last]).hides(&["holds no more"]);
    let other = "job other \"Other\" 1 spec\nplan \"sand\" make 360 min for other\n";
    let broken = "Agreed by Thu 9 April, ready by Sat 11 April stands on the paper, as you gave it, and it holds no more: agreed then it is safe only for Wed 15 April.";
    Maker::told(&[&format!("{given}{later}{other}")]).room("stool", Room::Quote).shows(&[broken, ready, last]);
    let today =
        "Ready by Wed 11 March stands on the paper, as you gave it, and it holds no more: as it stands it is safe only for Sat 14 March.";
    Maker::told(&[&format!("{given}{other}")]).room("stool", Room::Quote).shows(&[today, ready, last]);
}

/// Three old stands say how long the next takes, and nothing what of it is glued or dries: its day is not handed on, and that is said, until its
/// operations are planned.
#[test]
fn a_day_without_glue_and_drying_is_on_no_paper() {
    const UNDRIED: &str = "The day has no glue and no drying in it";
    let begun = "2026-04-18 09:00 +00:00 workshop USD inch\nrate pay 17 hours 600 logged 480 costs 1440\nold-job \"A\" 360 min piece stand\n\
        old-job \"B\" 420 min piece stand\nold-job \"C\" 480 min piece stand\njob stool \"Oak stand\" 3 order\nspend 60 wood on stool\n";
    let mut maker = Maker::told(&[begun]);
    maker.room("stool", Room::Quote).shows(&["$", UNDRIED, "Plan an operation"]).hides(&["Ready by"]);
    maker.tap(dates(DatesTap::Quote)).shows(&[UNDRIED]).hides(&["Ready by", "ready by"]);
    maker.tap(Tap::Room(Room::Dates)).shows(&["Safe to promise for ", "glue and drying are not in it"]);
    let planned = format!("{begun}plan \"build\" make 420 min for stool\nall-planned stool\n");
    Maker::told(&[&planned]).room("stool", Room::Quote).shows(&["Ready by"]).hides(&[UNDRIED]);
}
