//! The phone turned to a buyer, searched for every figure the maker alone knows: each is taken from the sheets, none by hand.
use fivebar_core::ledger::fold::job;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::line;
use fivebar_core::ledger::line::document::person_beside;
use fivebar_core::quantity::{Decimal, half_up};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::buyer::buyer;
use fivebar_core::sheet::gallery::at_galleries;
use fivebar_core::sheet::haul::haul;
use fivebar_core::sheet::offer::{Asking, offer};
use fivebar_core::sheet::rate::rate;
use fivebar_core::sheet::supplier::supplier;
use fivebar_core::sheet::waiting::{kept, known, later, waiting};
use fivebar_core::story::{STANDS, Story, tell};
use fivebar_tests::{Browser, Page, Phone, app};
use std::collections::BTreeSet;
use std::fmt::Debug;

/// A settle of the maker's own and two offers that were heard; another job, of which one is agreed with a buyer and one is with the gallery.
const BESIDES: &str = r#"
13:02 settle 131.50 stands
13:03 offer 118.75 for 1 stands notes fetched
13:04 offer 262 for 2 stands card fetched
about stands note "the third leg was turned twice"
lesson stands "Bore before the taper."
person mira buyer "Mira Quillfeather" phone "555-0147" place "Heron Quay 7"
job chair "Reading chair" 3 order
about chair note "wants it darker than the sample"
spend 37.45 glue on chair "hide glue"
tag 388.50 chair
agree 642.30 for 2 chair delivered deposit 211.40 due 2026-05-29 buyer mira
consign 1 chair tag 391.75 share 0.35 gallery fern
lesson chair "Ask for the deposit first."
"#;

/// Names of people and things of theirs, and words for the maker alone: none of them is a buyer's.
const WORDS: [&str; 12] = [
    "Quillfeather",
    "555-0147",
    "Heron Quay",
    "The stair works",
    "The plant shop",
    "Reading chair",
    "third leg",
    "Bore before",
    "darker than",
    "hide glue",
    "Ask for the deposit",
    "coffee for the saw shop",
];

/// The market with three stands left, guessed at, and what lies beside it in the book.
fn market() -> Story {
    let story = tell(&format!("{}{BESIDES}", STANDS.split("13:10 sell").next().unwrap_or_default()));
    assert_eq!(story.refused, []);
    story
}

/// Numbers as they stand in a text.
fn numbers(text: &str) -> Vec<Decimal> {
    let parts = text.split(|sign: char| !sign.is_ascii_digit() && sign != '.');
    parts.filter_map(|part| part.trim_matches('.').parse().ok()).collect()
}

/// A figure as a page may write it: whole, to the cent, with a comma between thousands; a span as hours and minutes.
fn written(figure: Decimal) -> Vec<String> {
    let mut all = vec![figure.normalize().to_string(), format!("{:.2}", half_up(figure, 2)), format!("{:.1}", half_up(figure, 1))];
    for text in all.clone() {
        let whole = text.split('.').next().unwrap_or_default().len();
        if 3 < whole {
            all.push(format!("{},{}", &text[..whole - 3], &text[whole - 3..]));
        }
    }
    let ms = i64::try_from(figure).unwrap_or(0);
    if figure.is_integer() && 60_000 <= ms {
        all.extend([format!("{} h {:02}", ms / 3_600_000, ms / 60_000 % 60), format!("{} min", ms / 60_000)]);
    }
    // One or two signs are in every page; those figures are looked for as the sums they are.
    all.into_iter().map(|text| if text.len() < 3 { format!("${text}") } else { text }).collect()
}

/// Every figure of a sheet, without its ids and its moments of writing, which no page shows.
fn figures(sheet: &impl Debug) -> BTreeSet<String> {
    let text = format!("{sheet:?}");
    numbers(&text).into_iter().filter(|figure| !figure.is_zero()).flat_map(written).collect()
}

/// Whether a figure stands in a text by itself, not as a part of a longer one.
fn holds(text: &str, figure: &str) -> bool {
    let is_part = |sign: Option<char>| sign.is_some_and(|sign| sign.is_ascii_alphanumeric() || sign == '.' || sign == '-');
    text.match_indices(figure).any(|(at, _)| {
        let after = text[at + figure.len()..].chars().next();
        let after = after.filter(|sign| *sign != '.' || text[at + figure.len() + 1..].starts_with(|sign: char| sign.is_ascii_digit()));
        !is_part(text[..at].chars().next_back()) && !is_part(after)
    })
}

/// The six places: page, title, address, history, what is stored, and the reader's tree.
fn given_away(browser: &mut Browser, page: &Page) -> Vec<(&'static str, String)> {
    let told = browser.told_to_a_reader(page);
    let mut read = |what: &str| browser.eval(page, what).to_string();
    vec![
        ("page", read("document.documentElement.outerHTML.replace(/<head>.*<\\/head>/s, '')")),
        ("title", read("document.title")),
        ("address", read("location.href.replace(location.origin, '')")),
        ("history", read("JSON.stringify(history.state) + history.length")),
        ("local storage", read("JSON.stringify({...localStorage})")),
        ("session storage", read("JSON.stringify({...sessionStorage})")),
        ("reader", told),
    ]
}

/// Figures of waiting, of the haul and who gave it, and of the other job with its agreement and what lies at the gallery.
fn beside(shop: &Shop, story: &Story) -> BTreeSet<String> {
    let [stands, chair] = ["stands", "chair"].map(|name| story.names.job(name).expect("a job"));
    let stand = shop.job(stands).expect("the stands");
    let prospects = known(shop, &stand).expect("reckoned").expect("guessed");
    while !prospects.has_band() {
        prospects.doubt();
    }
    let mut all = figures(&waiting(shop, stands, Paid::Card).expect("the asking price"));
    all.extend(figures(&waiting(shop, stands, Paid::Notes).expect("the asking price")));
    all.extend(figures(&later(shop, &stand).expect("reckoned").expect("a later one")));
    all.extend(figures(&kept(shop, &stand, 1).expect("reckoned")));
    all.extend(figures(&haul(shop, story.names.haul("stairworks").expect("the haul")).expect("reckoned")));
    all.extend(figures(&supplier(shop, story.names.person("stairs").expect("who gave it"), None).expect("their page")));
    let other = shop.job(chair).expect("the chair");
    all.extend(figures(&account(shop, chair).expect("an account")));
    all.extend(figures(&at_galleries(shop, &other).expect("the gallery")));
    all.extend(figures(&(&other.tag, &other.selling)));
    all
}

/// All that the maker knows and a buyer may not.
fn private(story: &Story) -> BTreeSet<String> {
    let (book, stands) = (&story.book, story.names.job("stands").expect("the stands"));
    let shop = Shop::of(book, story.now.at);
    let currency = job(book, stands).expect("the stands").currency;
    let asked = |n, paid, sum: i64| {
        let sum = fivebar_core::quantity::Money::whole(Decimal::new(sum, 2), currency);
        offer(&shop, stands, Asking { n, paid, carried: Carried::Fetched, tax: None }, sum).expect("an offer")
    };
    let job = job(book, stands).expect("the stands");
    let mut all = figures(&account(&shop, stands).expect("an account"));
    all.extend(figures(&rate(&shop, currency)));
    all.extend([asked(1, Paid::Notes, 11_875), asked(2, Paid::Card, 26_200), asked(1, Paid::Card, 13_000)].iter().flat_map(figures));
    all.extend(figures(&(&job.settle, job.selling.offers.iter().map(|offer| offer.sum).collect::<Vec<_>>())));
    all.extend(beside(&shop, story));
    let seen = buyer(&shop, stands, (None, fivebar_core::ledger::kind::sale::Paid::Card)).expect("what a buyer sees");
    let pounds = seen.mass.map(|mass| Decimal::from(mass.as_grams()) / Decimal::new(45_359_237, 5));
    // On another day than the story's the price may stand at the tag again, which lies on the piece.
    let may_be_seen = figures(&seen).into_iter().chain(pounds.into_iter().flat_map(written)).chain(figures(&job.tag));
    let may_be_seen: BTreeSet<String> = may_be_seen.collect();
    all.into_iter().filter(|figure| !may_be_seen.contains(figure)).collect()
}

#[test]
fn inv15_a_buyer_finds_no_figure_name_or_note_of_the_maker() {
    let story = market();
    let private = private(&story);
    // The list is none by hand, but it holds what is known to matter: a mark, a rate, what was offered, what would be gladly taken.
    // Of waiting: its band and the end by card; of the other job what was agreed, came ahead, was spent.
    for known in ["27.78", "127.56", "118.75", "131.50", "$12", "82.46", "28.08", "642.30", "211.40", "37.45", "391.75", "388.50"] {
        assert!(private.contains(known), "{known} in {private:?}");
    }
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    browser.clock_stands(&page, "2026-04-18T12:40:00-04:00");
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let people: Vec<(String, String)> = story.people.iter().map(|(id, person)| (id.to_string(), person_beside(person))).collect();
    browser.write_book(&page, &lines);
    browser.write_people(&page, &people);
    browser.eval(&page, "location.hash = 'price'");
    browser.reload(&page);
    app::ready(&mut browser, &page);
    // The list names the buyer, the gallery and the other job: the search for words finds them there.
    browser.wait_text(&page, "Mira Quillfeather");
    let listed = given_away(&mut browser, &page);
    let named = |text: &str| WORDS.into_iter().filter(|word| text.to_lowercase().contains(&word.to_lowercase())).collect::<Vec<_>>();
    for word in ["Quillfeather", "The plant shop", "Reading chair"] {
        assert!(named(&listed[0].1).contains(&word), "{word}");
    }
    // a word was just said, and a sum is half typed elsewhere
    browser.tap_text(&page, "They offer…");
    browser.tap_text(&page, "130");
    browser.wait_text(&page, "Sold at 130");
    let open = given_away(&mut browser, &page);
    assert!(open.iter().any(|(_, text)| private.iter().any(|figure| holds(text, figure))), "the search finds what is there");
    browser.eval(&page, "sessionStorage.setItem('draft:sum', '118.75')");
    browser.key(&page, "Escape");
    browser.wait_text(&page, "For sale");
    browser.tap_text(&page, "Show the buyer");
    browser.wait_text(&page, "Hold to close");
    for (place, text) in given_away(&mut browser, &page) {
        let found: Vec<&String> = private.iter().filter(|figure| holds(&text, figure)).collect();
        assert_eq!(found, [""; 0], "{place}: {text}");
        assert_eq!(named(&text), [""; 0], "{place}: {text}");
    }
    assert_eq!(browser.errors(), [""; 0]);
}
