//! Scenario A by taps, from the first start to the look back, without a network: five ash plant stands with cherry pegs.
//! The figures read from the screen are those of section 12 of the scenario's reckoning, as `core/tests/demo_stands.rs` has them.
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};

/// A new pile by chips: the wood's place among its chips, then thickness, width and length, each on the pad.
fn pile(maker: &mut Maker<'_>, wood: u32, sides: [&str; 3]) {
    maker.touch(".blank");
    maker.touch(&format!("main .chips > :nth-child({wood})"));
    for side in sides {
        maker.touch("main .chips > :last-child");
        maker.pad(side);
        maker.tap("Done");
    }
}

fn bundles(maker: &mut Maker<'_>, pile: u32, armed: &[(u32, usize)]) {
    for (key, times) in armed {
        maker.touch(&format!(".foot .g4 > :nth-child({key})"));
        for _ in 0..*times {
            maker.touch(&format!(".tiles > :nth-child({pile})"));
        }
    }
}

fn figures(maker: &mut Maker<'_>, asked: &[(&str, &str)]) {
    for (key, figure) in asked {
        maker.tap(key);
        maker.pad(figure);
        maker.tap("Done");
    }
}

fn the_workshop(maker: &mut Maker<'_>) {
    maker.at("2026-03-01T19:00");
    maker.touch(".places > :nth-child(5)");
    maker.tap("Your rate");
    // One blank leads to the next; wear, tax and profit stay blank.
    maker.tap("pay you want");
    for figure in ["16", "420", "350", "1050"] {
        maker.pad(figure);
        maker.tap("Done");
    }
    maker.tap("Not now");
    figures(maker, &[("lowest pay", "12")]);
    maker.tap("Not now");
    maker.reads("$22.20");
    maker.tap("Done");
    maker.tap("How you are paid");
    figures(maker, &[("sales tax", "5.5"), ("card fee", "2.6"), ("card, each payment", "0.1"), ("rate per mile", "0.725")]);
    maker.tap("Done");
}

fn the_bin(maker: &mut Maker<'_>) {
    maker.at("2026-03-03T08:41");
    maker.touch(".places > :nth-child(1)");
    maker.tap("Set out");
    maker.at("2026-03-03T09:04");
    maker.tap("At the bin");
    pile(maker, 1, ["1 1/16", "2 1/4", "21 1/2"]);
    bundles(maker, 1, &[(3, 6), (1, 4)]);
    pile(maker, 1, ["1 3/4", "1 3/4", "19"]);
    bundles(maker, 2, &[(3, 3), (2, 2)]);
    maker.tap("Take back 5");
    bundles(maker, 2, &[(1, 3)]);
    pile(maker, 2, ["13/16", "3", "11"]);
    bundles(maker, 3, &[(3, 2), (1, 2)]);
    pile(maker, 7, ["2", "4", "9"]);
    bundles(maker, 4, &[(2, 1), (1, 4)]);
    maker.reads("133 pieces");
    maker.shot("stands-count");
    maker.reads("46.8 board feet");
    maker.at("2026-03-03T09:42");
    maker.tap("Homeward");
    maker.at("2026-03-03T10:05");
    maker.tap("Home?");
    maker.touch(".pay > .loadrow:last-child");
    // 846.4 lb empty, less a driver of 80 kg, leave 670
    figures(maker, &[("The van carries", "846.4")]);
    maker.reads("670 lb beside the driver");
    maker.tap("Done");
    figures(maker, &[("There and back", "23"), ("Gift or price", "11.40")]);
    maker.reads("46 min");
    maker.reads("38 min");
    maker.tap("Supplier");
    maker.types("supplier", "The stair works");
    maker.tap("It was theirs");
    maker.tap("Done");
    maker.reads("163.5 of 670 lb");
}

/// Rejects by reason, each key as often as it was tapped, then the rest is good.
fn sorted(maker: &mut Maker<'_>, pile: &str, rejects: &[(&str, usize)], good: usize) {
    maker.tap("Sort");
    maker.tap(pile);
    for (why, times) in rejects {
        for _ in 0..*times {
            maker.tap(why);
        }
    }
    for _ in 0..good {
        maker.touch(".goodt");
    }
    maker.reads("0 to go");
    maker.tap("Done");
}

fn the_sorting(maker: &mut Maker<'_>) {
    maker.at("2026-03-04T18:10");
    maker.touch(".places > :nth-child(2)");
    maker.tap("Start");
    maker.tap("Sort");
    maker.at("2026-03-04T18:14");
    maker.touch(".places > :nth-child(1)");
    sorted(maker, "Ash, A", &[("End check", 8), ("Twist", 5), ("Glue or paint", 2), ("Short", 2)], 47);
    sorted(maker, "Ash, B", &[("End check", 6), ("Knot", 2), ("Metal", 1)], 29);
    sorted(maker, "Cherry, C", &[("Sapwood", 3), ("Crack", 2)], 17);
    sorted(maker, "Not sure, D", &[("Wet", 5), ("Unknown", 4)], 0);
    maker.at("2026-03-04T19:02");
    maker.touch(".strip .key");
}

fn slot(maker: &mut Maker<'_>, nth: u32, figure: &str) {
    maker.touch(&format!(".slots > :nth-child({nth})"));
    maker.pad(figure);
}

fn part(maker: &mut Maker<'_>, name: &str, wood: &str, n: &str, sides: [&str; 3]) {
    maker.tap("Add a part");
    maker.types("part-name", name);
    maker.touch("[aria-expanded]");
    maker.tap(wood);
    slot(maker, 1, n);
    for (nth, side) in (2..).zip(sides) {
        slot(maker, nth, side);
    }
    maker.tap("Done");
}

fn the_job(maker: &mut Maker<'_>) {
    maker.at("2026-03-05T20:00");
    maker.touch(".places > :nth-child(4)");
    maker.tap("New job");
    maker.types("job-name", "Plant stands");
    maker.tap("5");
    maker.tap("Begin this job");
    maker.tap("Wood and plan");
    for (pile, n) in [("Ash, A", "25"), ("Ash, B", "20"), ("Cherry, C", "5")] {
        maker.tap(pile);
        maker.pad(n);
        maker.tap(&format!("Take {n}"));
    }
    part(maker, "top", "Ash", "1", ["7/8", "9 1/2", "9 1/2"]);
    part(maker, "leg", "Ash", "4", ["1 1/2", "1 1/2", "18"]);
    part(maker, "rail", "Ash", "4", ["3/4", "1 3/4", "8"]);
    part(maker, "peg", "Cherry", "8", ["1/2", "1/2", "3/4"]);
    for figure in ["17.9 board feet", "9.9 board feet", "55.1 %", "21.1 %", "29.9 %"] {
        maker.reads(figure);
    }
}

/// From a tap on the bench to the next: an operation typed once, of a kind.
fn start(maker: &mut Maker<'_>, at: &str, op: &str, kind: &str) {
    begin(maker, (at, "Other"), op, kind);
}

fn begin(maker: &mut Maker<'_>, (at, key): (&str, &str), op: &str, kind: &str) {
    maker.at(at);
    maker.touch(".places > :nth-child(2)");
    maker.tap(key);
    maker.types("operation", op);
    of_kind(maker, op, kind);
    maker.reads(op);
}

/// A name that tells its kind is not asked for it.
fn of_kind(maker: &mut Maker<'_>, op: &str, kind: &str) {
    let asked = format!("[...document.querySelectorAll('main button')].some(key => key.innerText.trim() === {kind:?})");
    let asked = maker.browser.eval(&maker.page, &asked) == true;
    maker.tap(if asked { kind } else { op });
}

fn stop(maker: &mut Maker<'_>, at: &str) {
    maker.at(at);
    maker.tap("Stop");
    maker.reads("Carry on:");
}

fn run(maker: &mut Maker<'_>, day: &str, op: &str, kind: &str, (from, to): (&str, &str)) {
    start(maker, &format!("{day}T{from}"), op, kind);
    stop(maker, &format!("{day}T{to}"));
}

fn the_bench(maker: &mut Maker<'_>) {
    start(maker, "2026-03-06T08:30", "Trim", "Make");
    maker.tap("of how many?");
    maker.pad("25");
    maker.tap("Done");
    for (at, n) in [("08:41", "7"), ("08:52", "7"), ("09:02", "6")] {
        maker.at(&format!("2026-03-06T{at}"));
        maker.tap("+n");
        maker.pad(n);
        maker.tap("Done");
    }
    maker.reads("20 of 25");
    maker.shot("stands-bench");
    begin(maker, ("2026-03-06T09:11", "Switch"), "Joint and rip", "Make");
    stop(maker, "2026-03-06T10:14");
    run(maker, "2026-03-06", "Thickness", "Make", ("10:30", "11:07"));
    run(maker, "2026-03-06", "Glue tops", "Make", ("11:20", "14:32"));
    // The clock ran on over lunch, and a minute of wiping was forgotten.
    maker.at("2026-03-06T14:33");
    maker.tap("today");
    maker.tap("Glue tops");
    maker.tap("Mend");
    maker.touch(".less > :nth-child(2)");
    maker.pad("1207");
    maker.tap("Done");
    maker.tap("Add time I missed");
    maker.types("operation", "Glue tops");
    of_kind(maker, "Glue tops", "Make");
    maker.pad("1220");
    maker.tap("Done");
    maker.pad("1221");
    maker.tap("Done");
    maker.reads("3 h 09");
}

fn the_making(maker: &mut Maker<'_>) {
    run(maker, "2026-03-07", "flatten and square", "Make", ("09:00", "09:29"));
    run(maker, "2026-03-14", "Bore", "Make", ("09:00", "10:36"));
    run(maker, "2026-03-14", "taper", "Make", ("10:50", "12:02"));
    run(maker, "2026-03-21", "Sand", "Make", ("09:00", "11:38"));
    start(maker, "2026-03-21T13:00", "pegs", "Make");
    begin(maker, ("2026-03-21T13:34", "Switch"), "dry fit", "Make");
    stop(maker, "2026-03-21T13:59");
    maker.at("2026-03-22T10:00");
    maker.tap("Other");
    maker.tap("Rework");
    maker.types("operation", "bore again");
    of_kind(maker, "bore again", "Make");
    stop(maker, "2026-03-22T10:36");
    run(maker, "2026-03-28", "Assemble", "Make", ("09:00", "10:06"));
    run(maker, "2026-03-29", "scrape", "Make", ("09:30", "09:51"));
    run(maker, "2026-03-29", "first coat", "Make", ("10:00", "10:33"));
    run(maker, "2026-03-30", "second coat", "Make", ("18:00", "18:24"));
    run(maker, "2026-03-31", "third coat", "Make", ("18:00", "18:19"));
    run(maker, "2026-04-02", "fit pads", "Make", ("18:30", "18:58"));
    maker.reads("13 h 50 on the job");
}

fn spend(maker: &mut Maker<'_>, kind: &str, way: &str, figures: &[&str]) {
    maker.tap("Write down spending");
    maker.tap(way);
    if way != "Driven" {
        maker.tap(kind); // the kinds stand open while none is chosen
        if ["glue", "sanding discs", "finish", "power", "edges, sharpening"].contains(&kind) {
            maker.tap("On each job"); // it is asked once
        }
    }
    match figures {
        [sum] if way == "Sum" => maker.pad(sum),
        _ => (1..).zip(figures).for_each(|(nth, figure)| slot(maker, nth, figure)),
    }
    maker.tap("Done");
}

fn the_spending(maker: &mut Maker<'_>) {
    maker.at("2026-04-03T19:00");
    maker.touch(".places > :nth-child(4)");
    maker.tap("The job");
    maker.tap("Hours and money");
    spend(maker, "glue", "Sum", &["2.33"]);
    spend(maker, "sanding discs", "n × each", &["14", "0.62"]);
    spend(maker, "finish", "Of a pack", &["9.5", "32", "34.9"]);
    spend(maker, "pads", "Sum", &["2.2"]);
    spend(maker, "tags", "Sum", &["3.25"]);
    spend(maker, "power", "n × each", &["4.6", "0.17"]);
    spend(maker, "edges, sharpening", "Sum", &["6"]);
    maker.reads("$49.51");
    run(maker, "2026-04-11", "photos and tags", "Sell", ("10:00", "10:40"));
}

/// One sold from the job's own page.
fn sell(maker: &mut Maker<'_>, at: &str, sum: &str, paid: &str) {
    maker.at(at);
    maker.tap("now");
    maker.tap(paid);
    maker.tap("Fetched");
    slot(maker, 1, sum);
    slot(maker, 2, "1");
    maker.tap("Done");
}

fn the_market(maker: &mut Maker<'_>) {
    maker.at("2026-04-11T10:45");
    maker.touch(".places > :nth-child(4)");
    maker.tap("The job");
    maker.tap("Sell and deliver");
    maker.tap("Tag of each");
    maker.pad("145");
    maker.tap("Done");
    maker.at("2026-04-18T06:30");
    maker.tap("The job");
    maker.tap("Hours and money");
    spend(maker, "stall", "Sum", &["65"]);
    spend(maker, "", "Driven", &["18", "0.725"]);
    start(maker, "2026-04-18T07:00", "Market", "Sell");
    maker.touch(".places > :nth-child(4)");
    maker.tap("The job");
    maker.tap("Sell and deliver");
    sell(maker, "2026-04-18T10:20", "145", "Card");
    sell(maker, "2026-04-18T11:45", "145", "Card");
    sell(maker, "2026-04-18T13:10", "145", "Notes");
    maker.at("2026-04-18T14:55");
    maker.touch(".places > :nth-child(3)");
    maker.tap("They offer");
    maker.tap("130");
    maker.reads("Say 145");
    maker.shot("stands-offer");
    maker.tap("Sold at");
    maker.reads("1 left of 5, tag 145");
    maker.at("2026-04-18T16:30");
    maker.touch(".strip .key");
}

fn the_gallery(maker: &mut Maker<'_>) {
    maker.at("2026-04-25T11:00");
    maker.touch(".places > :nth-child(4)");
    maker.tap("it sells");
    (1..).zip(["1", "145", "40"]).for_each(|(nth, figure)| slot(maker, nth, figure));
    maker.tap("Done");
    maker.at("2026-05-09T12:00");
    maker.tap("The gallery paid");
    (1..).zip(["1", "82.46"]).for_each(|(nth, figure)| slot(maker, nth, figure));
    maker.tap("Done");
    maker.at("2026-05-10T20:00");
    maker.tap("The job");
    maker.tap("Look back");
    maker.tap("Done with this job");
    for figure in ["$19.09", "482.70 in all over 25 h 17", "16.09 after workshop costs, 13.41 over every hour worked"] {
        maker.reads(figure);
    }
}

#[test]
fn the_stands_from_the_bin_to_the_look_back() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.locale(&page, "en-US");
    browser.timezone(&page, "America/New_York");
    let mut maker = Maker::on(&mut browser, page);
    let page = maker.page.clone();
    maker.browser.open(&page, app::address());
    app::read(maker.browser, &page);
    app::ready_offline(maker.browser, &page);
    maker.browser.offline(true);
    the_workshop(&mut maker);
    the_bin(&mut maker);
    the_sorting(&mut maker);
    the_job(&mut maker);
    the_bench(&mut maker);
    the_making(&mut maker);
    the_spending(&mut maker);
    the_market(&mut maker);
    the_gallery(&mut maker);
    maker.shot("stands-look-back");
    app::saved(maker.browser, &page);
    println!("{} touches", maker.touches);
    assert_eq!(maker.browser.errors(), [""; 0]);
}
