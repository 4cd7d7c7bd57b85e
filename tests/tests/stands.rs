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
    figures(maker, &[("pay you want", "16"), ("hours a year", "420"), ("logged to jobs", "350"), ("lowest pay", "12")]);
    maker.tap("costs and tax");
    figures(maker, &[("workshop costs a year", "1050")]);
    maker.tap("Done");
    maker.reads("$22.20");
    maker.tap("Done");
    maker.tap("How you are paid");
    figures(maker, &[("sales tax", "5.5"), ("card fee", "2.6"), ("and for each payment", "0.1"), ("rate per mile", "0.725")]);
    maker.tap("Done");
}

fn the_bin(maker: &mut Maker<'_>) {
    maker.at("2026-03-03T08:41");
    maker.touch(".places > :nth-child(1)");
    maker.tap("Leaving");
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
    maker.reads("46.8 board feet");
    maker.at("2026-03-03T09:42");
    maker.tap("Home");
    maker.at("2026-03-03T10:05");
    maker.tap("Home");
    maker.touch(".loadrow");
    figures(maker, &[("The van carries", "670"), ("There and back", "23"), ("Gift or price", "11.40")]);
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

fn the_job(maker: &mut Maker<'_>) {
    maker.at("2026-03-05T20:00");
    maker.touch(".places > :nth-child(4)");
    maker.tap("New job");
    maker.types("job-name", "Plant stands");
    maker.tap("5");
    maker.tap("Begin this job");
    maker.tap("Wood and plan");
    maker.tap("Take");
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
}
