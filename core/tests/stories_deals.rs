//! What comes after yes: a commission called off after its deposit, a consigned piece returned. Every sum is reckoned by hand beside it.

use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::{Account, account};
use fivebar_core::sheet::gallery::at_galleries;
use fivebar_core::sheet::price::price;
use fivebar_core::story::{Story, Why, tell};

const COMMISSION: &str = include_str!("../../tests/stories/commission.txt");
const GALLERY: &str = include_str!("../../tests/stories/gallery.txt");

/// A story up to a heading of it; all of it where there is none.
#[track_caller]
fn until(text: &str, heading: &str) -> Story {
    let story = tell(text.split(heading).next().unwrap());
    assert_eq!(story.refused, []);
    story
}

fn reckoned(story: &Story, job: &str) -> Account {
    account(&Shop::of(&story.book, story.now.at), story.names.job(job).unwrap()).unwrap()
}

fn cents(currency: Currency, cents: i64) -> Money {
    Money::whole(Decimal::new(cents, 2).normalize(), currency).unwrap()
}

/// In cents: taken, tax, received, due, and what is owed as work; then pieces promised and pieces free.
#[track_caller]
fn check(heading: &str, sums: [i64; 4], pieces: [u32; 2]) {
    let story = until(COMMISSION, heading);
    let sold = reckoned(&story, "table").sold;
    assert_eq!([sold.taken, sold.tax, sold.received, sold.due], sums.map(|sum| cents(Currency::EUR, sum)), "{heading}");
    assert_eq!([sold.promised, sold.left - sold.promised], pieces, "{heading}");
}

#[test]
fn a_commission_is_called_off_after_its_deposit() {
    // 900 agreed, 270 in: 630 due, one piece promised.
    check("# --- The buyer", [0, 0, 27_000, 63_000], [1, 0]);
    // Of 270, 150 stays and 120 goes back; nothing is due, the piece is free.
    check("# --- Finished", [15_000, 0, 15_000, 0], [0, 1]);
    // 640 more in notes: 790 taken. Tax inside 640 at 20 %: 640 - 640 / 1.2 = 106.67.
    check("# --- Brought", [79_000, 10_667, 79_000, 0], [0, 0]);
    // 600 of the 640 goes back, 40 is kept; the tax line of 106.67 is reversed: 150 + 40 = 190. The piece is free again.
    check("# no such line", [19_000, 0, 19_000, 0], [0, 1]);
}

/// Net 790 - 106.67 = 683.33; less 85 of boards 598.33; over 6 + 4 hours 59.833.
#[test]
fn what_the_commission_left() {
    let story = until(COMMISSION, "# --- Brought");
    let sold = reckoned(&story, "table").sold;
    assert_eq!((sold.net, sold.kept), (cents(Currency::EUR, 68_333), Some(cents(Currency::EUR, 59_833))));
    assert_eq!(sold.per_hour.unwrap().left, Decimal::new(59_833, 3));
}

/// What galleries have, as pieces, tag and what one brings, in cents.
#[track_caller]
fn there(heading: &str, wanted: &[(u32, i64, i64)]) {
    let story = until(GALLERY, heading);
    let shop = Shop::of(&story.book, story.now.at);
    let job = shop.job(story.names.job("stools").unwrap()).unwrap();
    let found: Vec<_> = at_galleries(&shop, &job).unwrap().into_iter().map(|lot| (lot.n, lot.tag, lot.of_one.you_get)).collect();
    let usd = |sum| cents(Currency::USD, sum);
    assert_eq!(found, wanted.iter().map(|(n, tag, get)| (*n, usd(*tag), usd(*get))).collect::<Vec<_>>(), "{heading}");
    let rows = price(&shop, Paid::Notes).unwrap().at_galleries;
    assert_eq!(rows.len(), wanted.len(), "{heading}");
}

/// 145 / 1.055 x 0.6 = 82.46; 200 / 1.055 x 0.5 = 94.79: each gallery by its own terms.
#[test]
fn each_consignment_has_its_own_terms() {
    there("# --- Two to Fern", &[]);
    there("# --- Fern sells", &[(2, 14_500, 8_246), (1, 20_000, 9_479)]);
    there("# --- Moss sells", &[(1, 14_500, 8_246), (1, 20_000, 9_479)]);
    there("# --- Fern gives", &[(1, 14_500, 8_246)]);
    there("# no such line", &[]);
}

/// Sold for 120: 120 / 1.055 = 113.74, tax 6.26; 113.744 x 0.6 = 68.25, with the tax 74.51 handed over. At Fern the tax is the maker's, at
/// Moss the gallery's.
#[test]
fn a_sale_below_the_tag_has_the_tax_of_what_was_paid() {
    let story = until(GALLERY, "# --- Fern sells");
    let shop = Shop::of(&story.book, story.now.at);
    let job = shop.job(story.names.job("stools").unwrap()).unwrap();
    let [fern, moss] = <[_; 2]>::try_from(at_galleries(&shop, &job).unwrap()).unwrap();
    let usd = |sum| cents(Currency::USD, sum);
    assert_eq!(fern.expected(1, Some(usd(12_000))), Ok(usd(7_451)));
    // At the tags: two bring 2 x 90.02 with 2 x 7.56 of tax.
    assert_eq!((fern.expected(2, None), fern.tax_of(2, usd(18_004), None)), (Ok(usd(18_004)), Some(usd(1_512))));
    for (handed_over, sold_for) in [(7_451, Some(12_000)), (7_451, None)] {
        assert_eq!(fern.tax_of(1, usd(handed_over), sold_for.map(usd)), Some(usd(626)));
    }
    assert_eq!(moss.tax_of(1, usd(9_479), None), None);
}

/// Galleries 74.51 + 94.79 = 169.30; at the bench 130 with 6.78 of tax (130 - 130 / 1.055). Tax in all 6.26 + 6.78 = 13.04.
/// Net 130 + 169.30 - 13.04 = 286.26; less 80 of boards 206.26, over ten hours 20.626. The fourth stool is still there.
#[test]
fn a_consigned_piece_is_returned_and_sold_at_the_bench() {
    let story = until(GALLERY, "# no such line");
    let sold = reckoned(&story, "stools").sold;
    let sums = [sold.taken, sold.handed_over, sold.tax, sold.net].map(|sum| sum.amount().to_string());
    assert_eq!(sums, ["130", "169.3", "13.04", "286.26"]);
    assert_eq!((sold.kept.unwrap(), sold.per_hour.unwrap().left), (cents(Currency::USD, 20_626), Decimal::new(20_626, 3)));
    assert_eq!((sold.pieces, sold.by_galleries, sold.at_galleries, sold.left), (1, 2, 0, 1));
}

/// A book from before consignments were named: what is sold is of the gallery's oldest, and no more than it has.
#[test]
fn what_names_no_consignment_is_of_the_oldest() {
    let given = until(GALLERY, "# --- Fern sells");
    assert_eq!(reckoned(&given, "stools").sold.at_galleries, 3);
    for (lines, left) in [
        ("gallery pays 90.02 for 1 stools", vec![1, 1]),
        ("gallery pays 180.04 for 2 stools", vec![1]),
        ("gallery pays 94.79 for 1 stools gallery moss", vec![2]),
        ("gallery returns 3 stools", vec![]),
        ("gallery returns 2 stools gallery moss", vec![1]),
    ] {
        let text = format!("{}\n2026-04-01 10:00 {lines}", GALLERY.split("# --- Fern sells").next().unwrap());
        let story = until(&text, "# no such line");
        let shop = Shop::of(&story.book, story.now.at);
        let job = shop.job(story.names.job("stools").unwrap()).unwrap();
        let found: Vec<u32> = at_galleries(&shop, &job).unwrap().into_iter().map(|lot| lot.n).collect();
        assert_eq!(found, left, "{lines}");
    }
}

#[test]
fn no_more_is_paid_or_given_back_than_a_consignment_has() {
    let given = GALLERY.split("# --- Fern sells").next().unwrap();
    let usd = |sum| cents(Currency::USD, sum);
    for (line, refused) in [
        ("gallery pays 180 for 2 stools lot at-moss", Refusal::NotThatMany { asked: 2, there: 1 }),
        ("gallery returns 3 stools lot at-fern", Refusal::NotThatMany { asked: 3, there: 2 }),
        ("gallery pays 121 for 1 stools lot at-fern sold-for 120", Refusal::MoreThanPrice { met: usd(12_100), price: usd(12_000) }),
    ] {
        let story = tell(&format!("{given}\n2026-04-01 10:00 {line}"));
        assert_eq!(story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), [Why::Refused(refused)], "{line}");
    }
}
