//! The phone turned to a buyer, searched for every figure the maker alone knows: each is taken from the sheets, none by hand.
use fivebar_core::ledger::fold::job;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::{Book, line};
use fivebar_core::quantity::{Decimal, Id, Moment, half_up};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::buyer::buyer;
use fivebar_core::sheet::offer::{Asking, offer};
use fivebar_core::sheet::rate::rate;
use fivebar_core::story::{STANDS, tell};
use fivebar_tests::{Browser, Page, Phone, app};
use std::collections::BTreeSet;
use std::fmt::Debug;

/// The market with three stands left, a settle of the maker's own and two offers that were heard.
fn market() -> (Book, Id, Moment) {
    let told = STANDS.split("13:10 sell").next().unwrap_or_default();
    let told = format!(
        "{told}\n13:02 settle 131.50 stands\n13:03 offer 118.75 for 1 stands notes fetched\n13:04 offer 262 for 2 stands card fetched"
    );
    let story = tell(&told);
    assert_eq!(story.refused, []);
    let stands = story.names.job("stands").expect("the stands");
    (story.book, stands, story.now.at)
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

/// All that the maker knows and a buyer may not.
fn private(book: &Book, stands: Id, at: Moment) -> BTreeSet<String> {
    let shop = Shop::of(book, at);
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
    let seen = buyer(&shop, stands, (None, fivebar_core::ledger::kind::sale::Paid::Card)).expect("what a buyer sees");
    let pounds = seen.mass.map(|mass| Decimal::from(mass.as_grams()) / Decimal::new(45_359_237, 5));
    // On another day than the story's the price may stand at the tag again, which lies on the piece.
    let may_be_seen = figures(&seen).into_iter().chain(pounds.into_iter().flat_map(written)).chain(figures(&job.tag));
    let may_be_seen: BTreeSet<String> = may_be_seen.collect();
    all.into_iter().filter(|figure| !may_be_seen.contains(figure)).collect()
}

#[test]
fn inv15_a_buyer_finds_no_figure_of_the_account_the_offer_or_the_rate() {
    let (book, stands, at) = market();
    let private = private(&book, stands, at);
    // The list is none by hand, but it holds what is known to matter: a mark, a rate, what was offered, what would be gladly taken.
    for known in ["27.78", "127.56", "118.75", "131.50", "$12"] {
        assert!(private.contains(known), "{known} in {private:?}");
    }
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let lines: Vec<String> = book.entries().map(|(entry, _)| line::write(entry)).collect();
    browser.write_book(&page, &lines);
    browser.eval(&page, "location.hash = 'price'");
    browser.reload(&page);
    app::ready(&mut browser, &page);
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
    }
    assert_eq!(browser.errors(), [""; 0]);
}
