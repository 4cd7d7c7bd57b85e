//! Rates of sales tax under a name: written down, changed, dropped; and what was recorded at each.

use super::super::sides::Stays;
use super::super::taxes::TaxTap;
use super::*;
use fivebar_core::quantity::Side;

fn tax(said: TaxTap) -> Msg {
    tap(Tap::Tax(said))
}

/// A rate typed into the form that is open, and saved.
fn saved(app: &mut App, name: &str, percent: &str) -> String {
    let presses = percent.chars().map(|sign| sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8)));
    let presses = presses.map(|press| tax(TaxTap::Press(press)));
    after(app, [tax(TaxTap::Name(name.into()))].into_iter().chain(presses).chain([tax(TaxTap::Save)]))
}

#[test]
fn a_rate_is_named_changed_and_dropped() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = after(&mut app, [tap(Tap::Open(Over::Till))]);
    assert!(shown.contains("Other tax rates") && !shown.contains("recorded in"), "{shown}");
    after(&mut app, [tax(TaxTap::New)]);
    assert!(saved(&mut app, " ", "7").contains("Its name, such as reduced"), "a rate has a name");
    let shown = after(&mut app, [tax(TaxTap::Name("Reduced".into())), tax(TaxTap::Side(Side::Top)), tax(TaxTap::Save)]);
    assert!(shown.contains("Reduced") && shown.contains("7 %, on top"), "{shown}");
    after(&mut app, [tax(TaxTap::New)]);
    let refused = saved(&mut app, "reduced", "5");
    assert!(refused.contains("you have a tax rate called reduced already"), "{refused}");
    assert_eq!(app.workshop.tax.as_ref().map(|draft| draft.name.as_str()), Some("reduced"), "nothing typed is lost");
    let refused = saved(&mut app, "Four", "400");
    assert!(refused.contains("400") && app.workshop.tax.is_some(), "{refused}");
    assert!(after(&mut app, [tap(Tap::Close)]).contains("Another tax rate"), "back on the page it came from");
    let id = app.own.workshop().taxes[0].id;
    after(&mut app, [tax(TaxTap::Open(id))]);
    let shown = saved(&mut app, "Reduced", "6.5");
    assert!(shown.contains("6.5 %, on top") && !shown.contains("7 %"), "{shown}");
    let gone = after(&mut app, [tax(TaxTap::Open(id)), tax(TaxTap::Drop)]);
    assert!(!gone.contains("Reduced, ") && !gone.contains("6.5 %"), "{gone}");
}

/// Two sales at the usual rate, one without tax: each line as it was written.
#[test]
fn what_was_recorded_this_year_stands_by_rate() {
    let app = told(
        "till tax 0.055 inside\njob stools \"Stools\" 3 spec\n\
         sell 1 stools for 145 notes\nsell 1 stools for 130 notes\nsell 1 stools for 100 notes tax none\n",
    );
    let shown = crate::screens::page(&app).html();
    for part in ["Sales tax recorded in 2026", "$14.34", "at 5.5 %", "2 sales, $275.00", "without tax", "1 sale, $100.00"] {
        assert!(shown.contains(part), "{part} in {shown}");
    }
}

/// In January the year before is what is sent in: it stands below.
#[test]
fn what_was_recorded_in_years_before_stays() {
    let app = told(
        "till tax 0.055 inside\njob stools \"Stools\" 3 spec\nsell 1 stools for 145 notes\n2027-01-10 09:00 sell 1 stools for 130 notes\n",
    );
    let shown = crate::screens::page(&app).html();
    let at = |part: &str| shown.find(part).unwrap_or_else(|| panic!("{part} in {shown}"));
    let places = ["recorded in 2027", "$6.78", "recorded in 2026", "$7.56"].map(at);
    assert!(places.is_sorted(), "{places:?}");
}

/// What was recorded in another currency than the one that is set now has its own sum and lines.
#[test]
fn what_was_recorded_in_another_currency_stands_too() {
    let app = told(
        "till tax 0.055 inside\njob stools \"Stools\" 3 spec\nsell 1 stools for 145 notes\n\
         workshop JPY metric\ntill tax 0.1 inside\njob desk \"Desk\" 1 spec\nsell 1 desk for 10000 notes\n",
    );
    let shown = crate::screens::page(&app).html();
    for part in ["Sales tax recorded in 2026", "€909", "at 10 %", "1 sale, €10000", "$7.56", "at 5.5 %", "1 sale, $145.00"] {
        assert!(shown.contains(part), "{part} in {shown}");
    }
}

fn till(app: &App) -> fivebar_core::ledger::fold::Till {
    app.own.workshop().tills.get(&Currency::USD).cloned().unwrap_or_default()
}

/// The workshop of these lines.
fn told(lines: &str) -> App {
    let story = fivebar_core::story::tell(&format!("2026-05-04 08:00 -05:00 workshop USD inch\n{lines}"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Workshop);
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| fivebar_core::ledger::line::write(entry)).collect();
    app.own = crate::app::shelf::Shelf::open(fivebar_core::ledger::Device::new([1; 8]), lines.iter().map(String::as_str));
    (app.now, app.workshop.over) = (story.now, Over::Till);
    app
}

/// 680 with 19 % inside: on top a buyer would pay 809.20, and pays 680 for a tag of 571.43. Each way is one act, and comes back whole.
#[test]
fn what_tags_come_to_mean_is_said_before_the_side_turns() {
    let tags = "till tax 0.19 inside\njob bench \"Bench\" 1 spec\ntag 680 bench\n";
    for (stays, tag) in [(Stays::Pay, "571.43"), (Stays::Tags, "680")] {
        let mut app = told(tags);
        let entries = app.own.book.len();
        let asked = after(&mut app, [tap(Tap::Side(Side::Top))]);
        let said = "a buyer pays $680.00, and would pay $809.20. To pay the same, its tag is $571.43.";
        assert!(asked.contains("With tax on top of the tag 1 tag means another sum.") && asked.contains(said), "{asked}");
        assert_eq!(app.own.book.len(), entries, "nothing is written before it is answered");
        assert!(!after(&mut app, [tap(Tap::NoTurn)]).contains("another sum"));
        after(&mut app, [tap(Tap::Side(Side::Top)), tap(Tap::Turn(stays))]);
        let stands = |app: &App| {
            let tag = fivebar_core::ledger::fold::jobs(&app.own.book).next().and_then(|job| job.tag).map(|tag| tag.amount().normalize());
            (till(app).side, tag.map(|tag| tag.to_string()))
        };
        assert_eq!(stands(&app), (Some(Side::Top), Some(tag.to_owned())));
        after(&mut app, [Msg::Common(Common::TakeBack)]);
        assert_eq!(stands(&app), (Some(Side::Inside), Some("680".to_owned())));
    }
    // Left without an answer: said first, let go then.
    let mut app = told(tags);
    assert!(!after(&mut app, [tap(Tap::Side(Side::Top))]).contains("Not taken yet"));
    assert!(after(&mut app, [tap(Tap::Close)]).contains("Not taken yet: say what stays, or Not now."));
    assert!(!after(&mut app, [tap(Tap::Close)]).contains("another sum"));
    assert_eq!(till(&app).side, Some(Side::Inside));
    // Without a tag it is written at once.
    let mut app = told("till tax 0.19 inside\njob bench \"Bench\" 1 spec\n");
    assert!(!after(&mut app, [tap(Tap::Side(Side::Top))]).contains("another sum"));
    assert_eq!(till(&app).side, Some(Side::Top));
}

/// Nobody is asked about a job that is over: its tag goes along, so that a piece that comes back costs what it did. With one that is not over, only that
/// one is named.
#[test]
fn a_job_that_is_over_is_not_asked_about() {
    let over = "job pair \"Pair\" 1 spec\ntag 185 pair\nsell 1 pair for 185 notes\nend pair\n";
    let mut app = told(&format!("till tax 0.08 inside\n{over}"));
    assert!(!after(&mut app, [tap(Tap::Side(Side::Top))]).contains("another sum"));
    let stands = |app: &App| {
        let tags = fivebar_core::ledger::fold::jobs(&app.own.book).filter_map(|job| job.tag);
        (till(app).side, tags.map(|tag| tag.amount().normalize().to_string()).collect::<Vec<_>>().join(" "))
    };
    assert_eq!(stands(&app), (Some(Side::Top), "171.3".to_owned()));
    after(&mut app, [Msg::Common(Common::TakeBack)]);
    assert_eq!(stands(&app), (Some(Side::Inside), "185".to_owned()));
    let mut app = told(&format!("till tax 0.08 inside\njob bench \"Bench\" 1 spec\ntag 680 bench\n{over}"));
    let asked = after(&mut app, [tap(Tap::Side(Side::Top))]);
    assert!(asked.contains("1 tag means another sum") && !asked.contains("Pair: "), "{asked}");
    after(&mut app, [tap(Tap::Turn(Stays::Pay))]);
    assert!(stands(&app).1.contains("171.3"), "{:?}", stands(&app));
}

/// What is all sold may come back, and is asked about after what is for sale: 185 / 1.08 = 171.30, and back again.
#[test]
fn tags_of_what_is_sold_turn_too() {
    let sold = "job pair \"Pair\" 1 spec\ntag 185 pair\nsell 1 pair for 185 notes\n";
    let mut app = told(&format!("till tax 0.08 inside\n{sold}"));
    let asked = after(&mut app, [tap(Tap::Side(Side::Top))]);
    assert!(asked.contains("Pair: ") && asked.contains("To pay the same, its tag is $171.30."), "{asked}");
    let shown = after(&mut app, [tap(Tap::Turn(Stays::Pay)), tap(Tap::Side(Side::Inside))]);
    assert!(shown.contains("To pay the same, its tag is $185.00."), "{shown}");
    let mut app = told(&format!("till tax 0.08 inside\njob bench \"Bench\" 1 spec\ntag 680 bench\n{sold}"));
    let asked = after(&mut app, [tap(Tap::Side(Side::Top))]);
    assert!(asked.find("Bench: ").zip(asked.find("Pair: ")).is_some_and(|(first, then)| first < then), "{asked}");
}

#[test]
fn cash_goes_up_or_to_the_nearest_once_there_is_a_smallest_coin() {
    let mut app = told("till cash 0\n");
    assert!(!crate::screens::page(&app).html().contains("Up to the coin"));
    typed(&mut app, Figure::Cash, "0.05");
    let up = after(&mut app, [tap(Tap::CashUp(true))]);
    assert!(up.contains("Nearest coin") && till(&app).cash_up, "{up}");
    after(&mut app, [tap(Tap::CashUp(false))]);
    assert!(!till(&app).cash_up);
}

/// No tag brings 10.00 with 8.875 % on top: the nearest is said, and what a buyer pays of it.
#[test]
fn a_tag_that_pays_a_cent_less_says_so() {
    let mut app = told("till tax 0.08875 inside\njob lamp \"Lamp\" 1 spec\ntag 10 lamp\n");
    let asked = after(&mut app, [tap(Tap::Side(Side::Top))]);
    let said = "a buyer pays $10.00, and would pay $10.89. To pay nearly the same, its tag is $9.18: a buyer pays $9.99.";
    assert!(asked.contains(said), "{asked}");
}

/// 145 by card at 5.5 % inside and 3 %, 12 of glue on the job and 30 of power on none: 91.09 are left, beside the hours, and each currency by itself.
#[test]
fn the_sums_of_a_year_stand_under_its_tax() {
    let app = told(
        "till tax 0.055 inside fee 0.03\njob stools \"Stools\" 3 spec\nspend 12 glue on stools\nspend 30 power\nstart \"sand\" make on stools\n\
         09:00 stop\nsell 1 stools for 145 card\nworkshop EUR metric\njob desk \"Desk\" 1 spec\nsell 1 desk for 500 notes\n",
    );
    let shown = crate::screens::page(&app).html();
    let mut from = shown.find("Sums of 2026").unwrap_or_else(|| panic!("{shown}"));
    for part in [
        "Came in",
        "€500.00",
        "Left",
        "€500.00",
        "Came in",
        "$145.00",
        "Sales tax recorded",
        "−$7.56",
        "Fees of payments",
        "−$4.35",
        "Spent on jobs",
        "glue $12.00",
        "−$12.00",
        "Workshop costs",
        "−$30.00",
        "Left",
        "$91.09",
        "Worked 1 h, of it 1 h logged to jobs and hauls.",
    ] {
        let at = shown[from..].find(part).unwrap_or_else(|| panic!("{part} in {}", &shown[from..]));
        from += at;
    }
    assert!(!crate::screens::page(&told("till tax 0.055 inside\n")).html().contains("Sums of"));
}
