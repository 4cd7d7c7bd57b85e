//! The stories of tests/stories, told from first line to last: every figure the demo is known for, from the reckoning.

#[path = "../examples/reckoning/mod.rs"]
mod reckoning;

mod museum_piece;

use fivebar_core::haul::go::{Decides, Outlook, Verdict};
use fivebar_core::haul::rejects::{Prior, RejectShare};
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::line::document;
use fivebar_core::ledger::{Book, fold, merge};
use fivebar_core::quantity::{Currency, Decimal, Money, half_up};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::offer::{Ask, Asking, OfferSheet, offer};
use fivebar_core::sheet::past::past;
use fivebar_core::sheet::rejects::rejects;
use fivebar_core::sheet::supplier::{Prospect, supplier};
use fivebar_core::story::{BENCH, STANDS, Story, tell};
use serde_json::Value;

/// The figure at a path of the reckoning, as text: `jobs.0.costs.total`.
#[track_caller]
fn check(told: &Value, path: &str, figure: &str) {
    let at = path.split('.').fold(told, |value, step| match step.parse::<usize>() {
        Ok(place) => &value[place],
        Err(_) => &value[step],
    });
    let shown = at.as_str().map_or_else(|| at.to_string(), str::to_owned);
    assert_eq!(shown, figure, "{path}");
}

fn whole(text: &str) -> Story {
    let story = tell(text);
    assert_eq!(story.refused, [], "every line of a demo is understood and allowed");
    story
}

/// A share in per cent to one decimal; one that ends in nothing is whole.
fn per_cent(part: u32, of: u32) -> String {
    half_up(Decimal::from(part) * Decimal::from(100) / Decimal::from(of), 1).to_string()
}

/// The share of rejects of a haul, from its own counts.
fn rejected(told: &Value) -> String {
    let pieces = |key: &str| u32::try_from(told["hauls"][0]["pieces"][key].as_u64().unwrap()).unwrap();
    per_cent(pieces("rejected"), pieces("taken"))
}

fn check_stands(told: &Value) {
    assert_eq!(rejected(told), "30.1");
    for (path, figure) in [
        ("hauls.0.pieces.taken", "133"),
        ("hauls.0.pieces.rejected", "40"),
        ("hauls.0.pieces.good", "93"),
        ("hauls.0.volumes.gross", "46.80"),
        ("hauls.0.volumes.good", "31.66"),
        ("hauls.0.volumes.used", "17.94"),
        ("hauls.0.weight.lb", "163.5"),
        ("hauls.0.carries.lb", "670.0"),
        ("hauls.0.minutes.wheel", "46"),
        ("hauls.0.minutes.bin", "38"),
        ("hauls.0.minutes.sorting", "52"),
        ("hauls.0.costs", "28.08"),
        ("hauls.0.cost_per_good", "0.89"),
        ("jobs.0.wood.finished", "9.88"),
        ("jobs.0.wood.finished_piece", "1.975"),
        ("jobs.0.wood.finished_of_used", "0.5507"),
        ("jobs.0.wood.finished_of_gross", "0.2111"),
        ("jobs.0.wood.finished_of_gross_less_leftovers", "0.2987"),
        ("jobs.0.minutes.by_kind.make", "830"),
        ("jobs.0.minutes.by_operation.photos and tags", "40"),
        ("jobs.0.minutes.by_operation.market", "570"),
        ("jobs.0.minutes.haul", "77"),
        ("jobs.0.minutes.total", "1517"),
        ("jobs.0.minutes.logged.corrected", "47"),
        ("jobs.0.minutes.logged.recalled", "1"),
        ("jobs.0.minutes.rework", "36"),
        ("jobs.0.costs.by_kind.haul", "15.91"),
        ("jobs.0.costs.by_kind.discs", "8.68"),
        ("jobs.0.costs.by_kind.finish", "10.36"),
        ("jobs.0.costs.by_kind.power", "0.78"),
        ("jobs.0.costs.by_kind.distance", "13.05"),
        ("jobs.0.costs.total", "127.56"),
        ("jobs.0.sales.taken", "565.00"),
        ("jobs.0.sales.tax", "29.46"),
        ("jobs.0.sales.fees", "7.74"),
        ("jobs.0.sales.handed_over", "82.46"),
        ("jobs.0.sales.net", "610.26"),
        ("jobs.0.sales.left", "482.70"),
        ("jobs.0.left_per_hour.left", "19.09"),
        ("jobs.0.left_per_hour.after_workshop", "16.09"),
        ("jobs.0.left_per_hour.every_hour", "13.41"),
        ("jobs.0.rate", "22.20"),
        ("jobs.0.marks.costs_covered", "27.78"),
        ("jobs.0.marks.your_rate", "149.56"),
        ("jobs.0.marks.proposed", "150.00"),
        ("jobs.0.marks.ask", "145.00"),
    ] {
        check(told, path, figure);
    }
}

#[test]
fn the_stands_come_out_as_they_are_known() {
    let told = reckoning::reckoning(&whole(STANDS).book);
    check_stands(&told);
    // The clamps of 90 min and three nights are there, and nothing of them is in the hours above.
    let waits: Vec<_> = told["waits"].as_array().unwrap().iter().map(|wait| (&wait["operation"], wait["minutes"].as_i64())).collect();
    let nights = ["first coat", "second coat", "third coat"].map(|coat| (coat, 720));
    let wanted: Vec<_> = [("glue tops", 90)].into_iter().chain(nights).collect();
    assert_eq!(waits.iter().map(|(op, span)| (op.as_str().unwrap(), span.unwrap())).collect::<Vec<_>>(), wanted);
    let piles = [("16.78", 22), ("11.72", 9), ("3.17", 12), ("0.00", 0)];
    for (place, (good, left)) in piles.iter().enumerate() {
        check(&told, &format!("hauls.0.piles.{place}.volumes.good"), good);
        check(&told, &format!("hauls.0.piles.{place}.pieces.on_rack"), &left.to_string());
    }
    let operations = [
        ("trim", 41),
        ("joint and rip", 63),
        ("thickness", 37),
        ("glue tops", 48),
        ("flatten and square", 29),
        ("bore", 96),
        ("taper", 72),
        ("sand", 158),
        ("pegs", 34),
        ("dry fit", 25),
        ("assemble", 66),
        ("scrape", 21),
        ("first coat", 33),
        ("second coat", 24),
        ("third coat", 19),
        ("pads", 28),
        ("bore again", 36),
    ];
    for (op, minutes) in operations {
        check(&told, &format!("jobs.0.minutes.by_operation.{op}"), &minutes.to_string());
    }
}

/// The costs at the bench alone, before the market: the story up to that Saturday.
#[test]
fn the_stands_before_the_market() {
    let before = STANDS.split("# --- Saturday: the makers' market").next().unwrap();
    let told = reckoning::reckoning(&whole(before).book);
    check(&told, "jobs.0.costs.total", "49.51");
    check(&told, "jobs.0.minutes.logged.all", "870");
    let logged = u32::try_from(told["jobs"][0]["minutes"]["logged"]["all"].as_u64().unwrap()).unwrap();
    let made = u32::try_from(told["jobs"][0]["pieces"]["made"].as_u64().unwrap()).unwrap();
    assert_eq!((logged.div_euclid(made), logged.rem_euclid(made)), (174, 0), "minutes each");
    assert_eq!(Decimal::from(logged) / Decimal::from(60), Decimal::new(145, 1), "hours");
    check(&told, "jobs.0.left_per_hour.left", "null");
    check(&told, "jobs.0.sales.left", "null");
}

#[test]
fn the_bench_comes_out_as_it_is_known() {
    let told = reckoning::reckoning(&whole(BENCH).book);
    assert_eq!(rejected(&told), "28");
    for (path, figure) in [
        ("hauls.0.pieces.taken", "75"),
        ("hauls.0.pieces.rejected", "21"),
        ("hauls.0.pieces.good", "54"),
        ("hauls.0.volumes.gross", "123.19"),
        ("hauls.0.volumes.good", "90.05"),
        ("hauls.0.volumes.used", "43.72"),
        ("hauls.0.weight.kg", "86.9"),
        ("hauls.0.costs", "23.30"),
        ("hauls.0.minutes.sorting", "64"),
        ("jobs.0.wood.finished", "21.36"),
        ("jobs.0.wood.weight.kg", "15.1"),
        ("jobs.0.wood.finished_of_used", "0.4886"),
        ("jobs.0.wood.finished_of_gross", "0.1734"),
        ("jobs.0.wood.finished_of_gross_less_leftovers", "0.2780"),
        ("jobs.0.minutes.estimate", "1140"),
        ("jobs.0.minutes.logged.all", "1563"),
        ("jobs.0.minutes.rework", "66"),
        ("jobs.0.minutes.total", "1677"),
        ("jobs.0.ratios.hours", "1.3711"),
        ("jobs.0.costs.by_kind.haul", "11.31"),
        ("jobs.0.costs.by_kind.distance", "18.60"),
        ("jobs.0.costs.total", "103.93"),
        ("jobs.0.sales.left", "356.07"),
        ("jobs.0.sales.received", "460.00"),
        ("jobs.0.sales.due", "0.00"),
        ("jobs.0.left_per_hour.left", "12.74"),
        ("jobs.0.rate", "24.25"),
    ] {
        check(&told, path, figure);
    }
    let operations = [
        ("milling", 212),
        ("strip glue-ups", 171),
        ("flatten", 118),
        ("frames", 268),
        ("shelf", 97),
        ("sanding", 289),
        ("finish", 104),
        ("messages, sketch, invoice", 95),
        ("delivery", 143),
        ("cut a new post", 66),
    ];
    for (op, minutes) in operations {
        check(&told, &format!("jobs.0.minutes.by_operation.{op}"), &minutes.to_string());
    }
}

/// On 22 May, with the delivery still to come.
fn on_22_may(sum: &str, carried: Carried) -> OfferSheet {
    let before = BENCH.split("# --- Saturday: up the stairs with a helper").next().unwrap();
    let story = whole(before);
    let shop = Shop::of(&story.book, story.now.at);
    let job = story.names.job("bench").unwrap();
    let asking = Asking { n: 1, paid: Paid::Bank, carried, tax: None };
    let sum = fivebar_core::quantity::Money::whole(sum.parse().unwrap(), fivebar_core::quantity::Currency::EUR);
    offer(&shop, job, asking, sum).unwrap()
}

#[test]
fn on_22_may_the_bench_is_agreed_and_a_lower_offer_would_pay_less() {
    let sheet = on_22_may("400", Carried::Delivered);
    let agreed = sheet.standing.agreed.unwrap();
    assert_eq!((agreed.price.to_string(), agreed.due.to_string()), ("460.00 EUR".into(), "276.00 EUR".into()));
    let per = |leaves: &fivebar_core::sheet::offer::Leaves| half_up(leaves.per_hour.left, 2).to_string();
    assert_eq!(per(sheet.agreed.as_ref().unwrap()), "13.16");
    assert_eq!(per(sheet.left.as_ref().unwrap()), "10.94");
    let fetched = on_22_may("430", Carried::Fetched);
    assert_eq!(per(fetched.left.as_ref().unwrap()), "14.65");
    assert!(on_22_may("430", Carried::Delivered).concessions.iter().any(|concession| concession.ask == Ask::Fetch));
    // 430 fetched leaves 18.60 more than 460 delivered.
    let more = fetched.left.unwrap().left.minus(sheet.agreed.unwrap().left).unwrap();
    assert_eq!(more.to_string(), "18.60 EUR");
}

#[test]
fn inv10_the_first_copy_opens_for_ever() {
    let text = museum_piece::read("museum/copy-1.json");
    let copy = document::read(&text).unwrap();
    let book = Book::of_lines(copy.lines.iter().map(|line| &**line));
    assert_eq!((book.newer().count(), book.damaged().count()), (0, 0));
    check_stands(&reckoning::reckoning(&book));
    assert_eq!(copy.people.len(), 2);
    assert_eq!(document::write(&book, &copy.people, None, copy.made), text);
}

#[test]
fn a_copy_of_a_demo_shows_its_totals_before_it_is_brought_in() {
    let story = whole(STANDS);
    let totals = merge::totals(&story.book);
    let sums = |sums: &merge::Sums| sums.iter().map(|(currency, sum)| format!("{sum} {currency}")).collect::<Vec<_>>();
    assert_eq!((totals.jobs, totals.piles, totals.pieces), (1, 4, 133));
    assert_eq!(totals.logged.as_minutes(), 1440 + 52 + 46 + 38);
    assert_eq!((sums(&totals.spent), sums(&totals.taken)), (vec!["139.73 USD".into()], vec!["647.46 USD".into()]));
}

/// The Government of Canada's rule for sums in coins, as beside `round_to_cash`: 5.97 goes down to 5.95; a card pays to the cent.
#[test]
fn a_sum_in_notes_goes_to_the_smallest_coin() {
    let sold = |paid: &str| {
        let text = format!(
            "2026-03-01 19:00 +01:00 workshop CHF metric\ntill cash 0.05\njob box \"Box\" 2 spec\nsell 1 box for 5.97 {paid}\ntill cash 1000.01\n"
        );
        let story = tell(&text);
        let refused: Vec<u32> = story.refused.iter().map(|(line, _)| *line).collect();
        assert_eq!(refused, [5], "no smallest coin is that large: {:?}", story.refused);
        let job = fold::jobs(&story.book).next().expect("a job");
        [job.selling.sales[0].sum, job.selling.payments[0].sum, job.selling.taken(job.currency).unwrap()].map(|sum| sum.to_string())
    };
    assert_eq!(sold("notes"), ["5.97 CHF", "5.95 CHF", "5.95 CHF"]);
    assert_eq!(sold("card"), ["5.97 CHF"; 3]);
}

const FIRST_VISIT: &str = include_str!("../../tests/stories/first_visit.txt");
const TENTH_VISIT: &str = include_str!("../../tests/stories/tenth_visit.txt");
const TWO_SUPPLIERS: &str = include_str!("../../tests/stories/two_suppliers.txt");

/// Before going to somebody; the named haul is in hand.
fn before_going(story: &Story, who: &str, in_hand: &str) -> Prospect {
    let shop = Shop::of(&story.book, story.now.at);
    let who = story.names.person(who).unwrap();
    supplier(&shop, who, story.names.haul(in_hand)).unwrap().prospect
}

/// Trips, mean, low end, high end, what decides.
#[track_caller]
fn check_outlook(prospect: Prospect, verdict: Verdict, (trips, figures): (u32, [i64; 4])) {
    let Prospect::Known(Outlook { decides: Decides::Minutes(minutes), .. }) = prospect else { panic!("{prospect:?}") };
    let Prospect::Known(outlook) = prospect else { panic!() };
    let usd = |cents| Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap();
    assert_eq!((outlook.verdict, outlook.trips), (verdict, trips));
    assert_eq!([outlook.mean, outlook.low, outlook.high, minutes], figures.map(usd));
}

/// A piece of 1 x 3 x 48 in is a board foot and, when good, replaces 7 x 0.45 / 0.70 = 4.50 of boards. The trip: 6.00 of miles, 90 minutes
/// and 3 for each of 16 feet at 20 an hour, 46.00. 12 are good: 54.00 - 52.00 = 2.00.
#[test]
fn a_first_visit_has_no_history_and_the_second_has() {
    let before = FIRST_VISIT.split("# --- Tuesday").next().unwrap();
    assert_eq!(before_going(&whole(before), "doors", ""), Prospect::NoHistory);
    let at_the_bin = FIRST_VISIT.split("10:00 homeward").next().unwrap();
    assert_eq!(before_going(&whole(at_the_bin), "doors", ""), Prospect::NoHistory);
    let story = whole(FIRST_VISIT);
    assert_eq!(before_going(&story, "doors", "first"), Prospect::NoHistory);
    check_outlook(before_going(&story, "doors", ""), Verdict::Go, (1, [2_00, 2_00, 2_00, 46_00]));
}

/// Each trip costs 6.00 and 108 minutes, 36.00, and brings 16 feet less rejects 4, 5, 3, 8, 4, 0, 5, 3, 4 at 4.50:
/// in order -6.00, 7.50 twice, 12.00 three times, 16.50 twice, 30.00; the second and the eighth are the ends of the range, 108.00 the sum.
/// 36 of 144 were rejects: with the guess 39 and 117, one in four, which weigh no more than 20 pieces.
#[test]
fn the_tenth_visit_goes_by_the_nine_before() {
    let story = whole(TENTH_VISIT);
    check_outlook(before_going(&story, "stairs", "trip10"), Verdict::Go, (9, [12_00, 7_50, 16_50, 36_00]));
    let haul = fold::haul(&story.book, story.names.haul("trip10").unwrap()).unwrap();
    let seen = past(&story.book, &haul).seen;
    assert_eq!((seen.rejected, seen.sorted()), (36, 144));
    let share = RejectShare::of_supplier(seen);
    assert_eq!((share.prior(), share.mean(), share.weight()), (Prior::Supplier, Decimal::new(25, 2), Decimal::from(20)));
    let sheet = rejects(&story.book, story.names.person("stairs").unwrap()).unwrap();
    let reasons: Vec<_> = sheet.reasons.iter().map(|reason| (reason.why.as_str(), reason.rejected)).collect();
    // Odd trips were twisted, even ones checked: 4 + 3 + 4 + 5 + 4, and 5 + 8 + 0 + 3.
    assert_eq!((sheet.hauls.len(), reasons), (9, vec![("twist", 20), ("end-check", 16)]));
    assert_eq!(sheet.hauls.iter().map(|haul| haul.seen.rejected).collect::<Vec<_>>(), [4, 5, 3, 8, 4, 0, 5, 3, 4]);
}

/// Half of 30 miles at 0.60 is 9.00, half of 80 minutes is 40. The doors: 12 good of 16, 54.00 - 9.00 - (40 + 20 + 48 min) 36.00 = 9.00.
/// The stairs: 8 good, 36.00 - 9.00 - (40 + 10 + 24 min) 24.67 = 2.33.
#[test]
fn two_suppliers_share_the_drive() {
    let story = whole(TWO_SUPPLIERS);
    let haul = |name: &str| fold::haul(&story.book, story.names.haul(name).unwrap()).unwrap();
    let (doors, stairs) = (haul("atdoors"), haul("atstairs"));
    assert_eq!((doors.spent().unwrap().to_string(), stairs.spent().unwrap().to_string()), ("9.00 USD".into(), "9.00 USD".into()));
    assert_eq!((doors.trips[0].wheel().as_minutes(), stairs.trips[0].wheel().as_minutes()), (40, 40));
    check_outlook(before_going(&story, "doors", ""), Verdict::Go, (1, [9_00, 9_00, 9_00, 36_00]));
    check_outlook(before_going(&story, "stairs", ""), Verdict::Go, (1, [2_33, 2_33, 2_33, 24_67]));
}
