//! What is asked while one waits comes down step by step, and never to a price that pays less than the lowest pay. Reckoned by hand.

use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Decimal, Money, Span};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::waiting::{Prospect, Stands, waiting};
use fivebar_core::story::tell;

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

/// Eight hours and 20 of glue; few ask, and one in ten buys at 300.
fn prospect(rate: &str, tag: &str) -> Prospect {
    let work = "job stand \"Stand\" 1 spec\nspend 20 glue on stand\nstart \"oil\" make on stand stage finish\n17:00 stop\n";
    let guess = format!("tag {tag} stand\nguess stand asks 1 buys 0.1 at 300 k 3 by 2026-06-15 end 0\n");
    let story = tell(&format!("2026-05-04 09:00 -04:00 workshop USD inch\ntill point 5\n{rate}\n{work}{guess}"));
    assert_eq!(story.refused, [], "{rate}");
    let shop = Shop::of(&story.book, story.now.at);
    match waiting(&shop, story.names.job("stand").unwrap(), Paid::Card).unwrap().stands {
        Stands::Found(prospect) => *prospect,
        other => panic!("{other:?}"),
    }
}

/// At the lowest pay of 25 it must bring 20 + 8 x 25 = 220. Without one the price comes down below that.
#[test]
fn no_step_goes_below_the_lowest_pay() {
    let free = prospect("rate pay 30 hours 100 logged 100", "300");
    let least = |prospect: &Prospect| prospect.steps.iter().map(|step| step.ask.amount()).min().unwrap();
    assert!(least(&free) < Decimal::from(220), "{:?}", free.steps);
    assert_eq!(free.held, None);
    let held = prospect("rate pay 30 lowest 25 hours 100 logged 100", "300");
    assert_eq!((least(&held), held.held), (Decimal::from(220), Some(usd("220"))), "{:?}", held.steps);
    // Each step is that of the free one, or stays.
    let same = held.steps.iter().zip(&free.steps).all(|(held, free)| held.ask.amount() == free.ask.amount().max(Decimal::from(220)));
    assert!(same, "{:?} {:?}", held.steps, free.steps);
    // Fewer buy at what is held, so waiting is worth less.
    assert!(held.under.amount() < free.under.amount(), "{} {}", held.under, free.under);
    // At a lowest pay of 35 the tag of 300 is asked throughout: p - (p - end) e^-λsτ, one in ten of one a week over six weeks: 300 (1 - e^-0.6).
    let throughout = prospect("rate pay 30 lowest 35 hours 100 logged 100", "300");
    assert_eq!((throughout.under, least(&throughout)), (usd("136"), Decimal::from(300)));
}

/// A tag of the maker's own below it stands: nothing is asked above the tag, and it is no step that was held.
#[test]
fn a_tag_below_the_lowest_pay_is_the_makers_word() {
    let own = prospect("rate pay 30 lowest 25 hours 100 logged 100", "200");
    assert!(own.steps.iter().all(|step| step.ask == usd("200")), "{:?}", own.steps);
    assert_eq!(own.held, None);
}

/// A clock that runs since the day before is a stop that was forgotten: its hours hold up no price. The eight that the maker told do: 220.
#[test]
fn hours_in_question_hold_up_no_price() {
    let forgotten = "rate pay 30 lowest 25 hours 100 logged 100\njob stand \"Stand\" 1 spec\nspend 20 glue on stand\n\
        recall \"oil\" make on stand stage finish 01:00 to 09:00\n09:10 start \"oil\" make on stand stage finish\ntag 400 stand\n\
        guess stand asks 1 buys 0.1 at 300 k 3 by 2026-06-15 end 0\n2026-05-08 09:00 lesson stand \"none\"\n";
    let story = tell(&format!("2026-05-04 09:00 -04:00 workshop USD inch\ntill point 5\n{forgotten}"));
    assert_eq!(story.refused, []);
    let Stands::Found(found) = waiting(&Shop::of(&story.book, story.now.at), story.names.job("stand").unwrap(), Paid::Card).unwrap().stands
    else {
        panic!("nothing found")
    };
    assert_eq!((found.steps.last().map(|step| step.ask), found.held), (Some(usd("220")), Some(usd("220"))), "{:?}", found.steps);
}

/// Eight hours of eight that were planned, which is likely 8 x 1.40 = 11.2: 11.2 x 25 + 20 is 300 and 11.2 x 30 + 20 is 356. A clock that runs, or
/// ran, over night changes none of it before it is answered for. Answered as worked, 24 hours 20 min count.
#[test]
fn hours_in_question_are_in_no_figure_of_a_job_that_goes_on() {
    let eight = "rate pay 30 lowest 25 hours 100 logged 100\njob stand \"Stand\" 1 spec\nspend 20 glue on stand\n\
        recall \"oil\" make on stand stage finish 00:30 to 08:30 as long\n08:35 confirm run long\nplan \"oil\" make 480 min for stand\n";
    let night = "16:40 start \"oil\" make on stand stage finish as night\n";
    let stopped = "2026-05-05 09:00 stop\n";
    let found = |more: &str| {
        let story = tell(&format!("2026-05-04 09:00 -04:00 workshop USD inch\n{eight}{more}"));
        assert_eq!(story.refused, [], "{more}");
        let found = account(&Shop::of(&story.book, story.now.at), story.names.job("stand").unwrap()).unwrap();
        let [lowest, rate] = [found.pricing.marks.lowest_pay, found.pricing.marks.your_rate].map(|mark| mark.unwrap().need.to_string());
        (lowest, rate, found.hours.total.map(Span::as_minutes), found.not_counted().as_minutes())
    };
    let sure = found("");
    assert_eq!(sure, ("300".into(), "356".into(), Some(480), 0));
    let goes_on = found(&format!("{night}2026-05-05 09:00 lesson stand \"none\"\n"));
    let ended = found(&format!("{night}{stopped}"));
    for open in [goes_on, ended] {
        assert_eq!((&open.0, &open.1, open.2, open.3), (&sure.0, &sure.1, sure.2, 980));
    }
    let answered = found(&format!("{night}{stopped}09:01 confirm run night\n"));
    assert_eq!((answered.2, answered.3), (Some(1460), 0));
}
