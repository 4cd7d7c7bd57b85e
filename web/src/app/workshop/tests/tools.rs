//! Tools that wear, what is proposed for a figure, what is asked about, and where a kind belongs.

use super::super::tools::ToolTap;
use super::*;
use fivebar_core::ledger::kind::money::Home;

fn tool(said: ToolTap) -> Msg {
    tap(Tap::Tool(said))
}

fn figures(app: &mut App, figures: &[(usize, &str)]) -> String {
    let typed = figures.iter().flat_map(|(nth, text)| {
        let presses = text.chars().map(|sign| sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8)));
        std::iter::once(tool(ToolTap::At(*nth))).chain(presses.map(|press| tool(ToolTap::Press(press))))
    });
    let messages: Vec<Msg> = typed.chain([tool(ToolTap::Save)]).collect();
    after(app, messages)
}

fn wear_said(app: &App) -> bool {
    app.own.workshop().rates.values().any(|rate| rate.wear.is_some())
}

/// 1,200 down to 200 over four years is 250 a year: it is proposed to the rate, and written at a tap alone.
#[test]
fn what_tools_wear_is_proposed_to_the_rate_and_never_written_by_itself() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = after(&mut app, [tap(Tap::Open(Over::CostsAndTax)), tap(Tap::Open(Over::Tools))]);
    assert!(shown.contains("No tools yet.") && shown.contains("never written by itself"), "{shown}");
    after(&mut app, [tool(ToolTap::New)]);
    let nameless = figures(&mut app, &[(0, "1200"), (1, "4"), (3, "200")]);
    assert!(app.workshop.tool.is_some(), "{nameless}");
    let shown = after(&mut app, [tool(ToolTap::Name("Saw".into())), tool(ToolTap::Save)]);
    let year = app.now.day().as_ymd().0;
    for part in ["Saw", "$250.00", &format!("wear in {year}"), &format!("in {year}, 4 years")] {
        assert!(shown.contains(part), "{part} in {shown}");
    }
    assert!(!wear_said(&app));
    let asked = after(&mut app, [tap(Tap::Close), tap(Tap::Open(Over::CostsAndTax)), tap(Tap::Figure(Figure::Wear))]);
    assert!(asked.contains("$250.00") && asked.contains(&format!("by your tools in {year}")), "{asked}");
    let sum = fivebar_core::quantity::Money::book(Decimal::from(250), Currency::USD).unwrap();
    after(&mut app, [tap(Tap::Take(Quantity::Money(sum)))]);
    assert!(wear_said(&app));
    // Struck, nothing is proposed any more.
    let entry = app.own.workshop().tools[0].entry;
    let gone = after(&mut app, [tap(Tap::Open(Over::Tools)), tap(Tap::Line(entry)), tap(Tap::Strike(entry))]);
    assert!(gone.contains("No tools yet."), "{gone}");
}

#[test]
fn a_tool_may_wear_most_at_first() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Tools)), tool(ToolTap::New), tool(ToolTap::Name("Saw".into())), tool(ToolTap::Declines(true))]);
    let shown = figures(&mut app, &[(0, "1200"), (1, "4"), (3, "1300"), (4, "50")]);
    assert!(shown.contains("1300.00") && app.workshop.tool.is_some(), "it fetches more than it cost: {shown}");
    assert!(figures(&mut app, &[(3, "200")]).contains("$600.00"));
    assert!(after(&mut app, [tool(ToolTap::New), tap(Tap::Close)]).contains("Saw"), "back to the list");
}

/// The published rate is a proposal, for dollars and miles alone, with its year and source.
#[test]
fn the_published_mileage_is_proposed_for_dollars_and_miles() {
    for (currency, units, shown) in
        [(Currency::USD, Units::Inch, true), (Currency::USD, Units::Metric, false), (Currency::EUR, Units::Inch, false)]
    {
        let mut app = App::for_tests(Place::Workshop);
        let asked = [tap(Tap::Currency(currency)), tap(Tap::Units(units)), tap(Tap::Open(Over::Till)), tap(Tap::Figure(Figure::Mileage))];
        let page = after(&mut app, asked);
        let rate = fivebar_core::money::mileage::us(app.now.day()).is_some();
        let year = app.now.day().as_ymd().0;
        let said = page.contains(&format!("published for {year}: US standard rate for business miles, IRS"));
        assert_eq!(said, shown && rate, "{page}");
        assert_eq!(app.own.workshop().tills.values().filter(|till| till.mileage.is_some()).count(), 0, "never by itself");
    }
}

/// 24,000 for an hour is asked about before it is written; 24 is not.
#[test]
fn a_pay_that_no_hour_has_is_asked_about_first() {
    let mut app = App::for_tests(Place::Workshop);
    let figure = |app: &mut App, text: &str| {
        let presses = text.chars().map(|sign| tap(Tap::Press(Press::Digit(sign.to_digit(10).unwrap() as u8))));
        let all: Vec<Msg> = [tap(Tap::Open(Over::Rate)), tap(Tap::Figure(Figure::Pay))].into_iter().chain(presses).collect();
        after(app, all);
        after(app, [tap(Tap::PadDone)])
    };
    let asked = figure(&mut app, "24000");
    assert!(asked.contains("$24000.00 for one hour: is that so?") && asked.contains("It is so"), "{asked}");
    assert!(app.own.book.is_empty());
    let changed = after(&mut app, [tap(Tap::Press(Press::RubOut))]);
    assert!(!changed.contains("is that so?") && changed.contains("Done"), "{changed}");
    figure(&mut app, "24000");
    after(&mut app, [tap(Tap::PadDone)]);
    assert_eq!(app.own.workshop().pay(Currency::USD), Some(Decimal::from(24_000)));
    figure(&mut app, "24");
    assert_eq!(app.own.workshop().pay(Currency::USD), Some(Decimal::from(24)));
}

/// What belongs on jobs is said beside a workshop cost of its kind, and can be said otherwise.
#[test]
fn a_kind_that_belongs_on_jobs_is_told_at_a_workshop_cost() {
    let mut app = App::for_tests(Place::Workshop);
    let power = Key::read("power").unwrap();
    let asked = [tap(Tap::Open(Over::Costs)), tap(Tap::Spend("power"))];
    let said = "Power belongs on jobs: in workshop costs it counts twice.";
    assert!(!after(&mut app, asked.clone()).contains(said));
    after(&mut app, [tap(Tap::Home(power.clone(), Home::Job))]);
    assert!(after(&mut app, asked.clone()).contains(said));
    let homes = after(&mut app, [tap(Tap::Open(Over::CostsAndTax)), tap(Tap::Home(power, Home::Rate))]);
    assert!(homes.contains("Power") && homes.contains("In the rate"), "{homes}");
    assert!(!after(&mut app, asked).contains(said));
}

/// Pay of 20 over 10 h worked, 8 of them logged: 25.00; 160 of costs over 8 h: 20.00. Guessed are 400 h, 300 of them logged.
#[test]
fn the_real_year_has_its_stack_beside_the_guess() {
    let told = "
2025-11-03 08:00 +00:00 workshop USD inch
2026-03-10 08:00 workshop USD inch
job stands \"Stands\" 1 spec
rate pay 20 hours 400 logged 300 costs 0 wear 0 tax 0 profit 0
spend 160 rent
12:00 recall \"tidy\" make 08:00 to 10:00
20:00 recall \"saw\" make on stands 11:00 to 19:00
";
    let mut app = opened(told);
    let shown = after(&mut app, [tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))]);
    for said in [
        "At this year’s hours and costs an hour must earn",
        "$45.00",
        "Workshop costs",
        "20.00 × 10 h over 8 h",
        "Of 45.00, 25.00 is yours",
        "over all 10 h",
    ] {
        assert!(shown.contains(said), "{said}: {shown}");
    }
}

/// Wood on the rack carries 59 of the 136 minutes of its haul; where all is in jobs, or there is none, nothing is said.
#[test]
fn the_real_year_says_what_is_for_wood_on_the_rack() {
    let real = [tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))];
    let shown = after(&mut opened(fivebar_core::story::STANDS), real.clone());
    assert!(shown.contains("Logged to jobs: 59 min of it is for wood on the rack, which no job has yet."), "{shown}");
    let told = "2026-03-10 08:00 +00:00 workshop USD inch\n12:00 recall \"tidy\" make 08:00 to 10:00\n";
    assert!(!after(&mut opened(told), real).contains("wood on the rack"));
}

fn opened(told: &str) -> App {
    let story = fivebar_core::story::tell(told);
    assert_eq!(story.refused, []);
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    let mut app = App::for_tests(Place::Workshop);
    app.own = crate::app::shelf::Shelf::open(fivebar_core::ledger::Device::new([1; 8]), lines.iter().map(String::as_str));
    app.now = story.now;
    app
}

const YEAR: &str = "
2025-11-03 08:00 +00:00 workshop USD inch
2026-03-02 08:00 +00:00 workshop USD inch
job stands \"Stands\" 1 spec
rate pay 20 hours 400 logged 300 costs 0 wear 1500 tax 0 profit 0
16:00 recall \"saw\" make on stands 08:00 to 16:00
";
const PLANER: &str = "tool 2400 years 8 \"Planer\" salvage 400\n";
const BOTH: &str = "A tool that is in workshop costs and among your tools counts twice.";

/// 2,400 down to 400 over eight years is 250 a year, of the 62 days to 3 March 42.47; without a tool it is the guess of 1,500, 254.79.
#[test]
fn the_real_year_wears_by_the_tools_or_says_it_guesses() {
    for (more, wear, other) in [(PLANER, "42.47 by your tools", "by your guess"), ("", "254.79 by your guess", "by your tools")] {
        let mut app = opened(&format!("{YEAR}{more}"));
        let shown = after(&mut app, [tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))]);
        assert!(shown.contains(wear) && !shown.contains(other) && !shown.contains(BOTH), "{wear}: {shown}");
    }
}

/// To 3 March it is 59 days from 4 January, too few, and 60 from the day before: 246.58 of 1,500 a year.
#[test]
fn the_real_year_begins_with_the_book() {
    let real = [tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))];
    let check = |began: &str, told: &str, hidden: &str| {
        let shown = after(&mut opened(&YEAR.replace("2025-11-03", began)), real.clone());
        assert!(shown.contains(told) && !shown.contains(hidden), "{began}: {shown}");
    };
    check("2026-01-04", "Since Sun 4 January: 16", "by your guess");
    check("2026-01-04", "once two months of it are noted", "of the year has passed");
    check("2026-01-03", "246.58 by your guess", "once two months");
    check("2025-11-03", "of the year has passed", "Since");
    // What is told of earlier days is of the year too.
    let told = YEAR.replace("2025-11-03", "2026-02-27") + "recall \"tidy\" make 2026-01-12 08:00 to 2026-01-12 09:00\n";
    let shown = after(&mut opened(&told), real.clone());
    assert!(shown.contains("Since Mon 12 January: "), "{shown}");
}

/// A tool bought as a workshop cost that wears too has two homes: each page that has one of them says so.
#[test]
fn a_tool_in_two_homes_is_told() {
    let pages = || {
        let spent = vec![tap(Tap::Open(Over::Costs)), tap(Tap::Spend("tools"))];
        [vec![tap(Tap::Open(Over::Tools))], vec![tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))], spent]
    };
    for (more, told) in [
        ("", [false, false, false]),
        (PLANER, [false, false, true]),
        ("spend 2400 tools\n", [false, false, false]),
        (&format!("{PLANER}spend 2400 tools\n"), [true, true, true]),
        (&format!("{PLANER}spend 2400 rent\n"), [false, false, true]),
    ] {
        for (page, told) in pages().into_iter().zip(told) {
            let shown = after(&mut opened(&format!("{YEAR}{more}")), page);
            assert_eq!(shown.contains(BOTH), told, "{more}: {shown}");
        }
    }
}

/// Sold for 1000 in the year it was bought in: 200 less than was left of it, and nothing of it is worn; the sale can be struck.
#[test]
fn a_tool_is_sold() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Tools)), tool(ToolTap::New), tool(ToolTap::Name("Saw".into()))]);
    figures(&mut app, &[(0, "1200"), (1, "4"), (3, "200")]);
    let entry = app.own.workshop().tools[0].entry;
    let shown = after(&mut app, [tap(Tap::Line(entry)), tool(ToolTap::Sold(entry))]);
    assert!(shown.contains("Sold for") && shown.contains("not tax advice"), "{shown}");
    let shown = figures(&mut app, &[(0, "1000")]);
    assert!(shown.contains("for $1000.00, $200.00 less than was left of its cost") && !shown.contains("$250.00"), "{shown}");
    let sold = app.own.workshop().tools[0].sold.unwrap().entry;
    let shown = after(&mut app, [tap(Tap::Strike(sold))]);
    assert!(shown.contains("$250.00") && !shown.contains("less than was left"), "{shown}");
}
