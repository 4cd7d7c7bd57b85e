//! Some pieces of a sale come back: their part goes, the rest stays sold, whole to the cent.

use fivebar_core::quantity::Currency;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::taxes::taxes;
use fivebar_core::sheet::waiting::{Back, looked_back};
use fivebar_core::story::tell;

/// Three stools for 100 by card: 5.5 % inside are 5.21, 2.6 % and 0.10 are 2.70.
const SOLD: &str = "2026-05-22 08:14 -05:00 workshop USD inch\ntill tax 0.055 inside fee 0.026 fixed 0.10\njob stools \"Stools\" 3 spec\n\
    tag 40 stools\nsell 3 stools for 100 card as all\n";

/// After these lines: pieces sold, taken, tax, fees, received, due; and the tax of the year.
#[track_caller]
fn check(lines: &str, sold: u32, sums: [&str; 5]) {
    let story = tell(&format!("{SOLD}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    let shop = Shop::of(&story.book, story.now.at);
    let found = account(&shop, story.names.job("stools").unwrap()).unwrap().sold;
    let sum = |money: fivebar_core::quantity::Money| money.amount().to_string();
    assert_eq!(
        (found.pieces, [found.taken, found.tax, found.fees, found.received, found.due].map(sum)),
        (sold, sums.map(str::to_owned)),
        "{lines}"
    );
    assert_eq!(taxes(&shop, Currency::USD, 2026).unwrap().tax, found.tax, "{lines}");
}

/// 100 / 3 is 33.33, and 33.33 or 33.34 each; 5.21 / 3 is 1.74, then 3.47 / 2 is 1.74: 1.73 stays. One after the other comes to nothing.
#[test]
fn parts_by_piece_come_to_the_whole() {
    check("", 3, ["100", "5.21", "2.7", "100", "0"]);
    check("bring-back 1 of sale all on stools", 2, ["66.67", "3.47", "2.7", "66.67", "0"]);
    check("bring-back 1 of sale all on stools\nbring-back 1 of sale all on stools", 1, ["33.33", "1.73", "2.7", "33.33", "0"]);
    let three = "bring-back 1 of sale all on stools\n".repeat(3);
    check(&three, 0, ["0", "0", "2.7", "0", "0"]);
    check("bring-back 3 of sale all on stools", 0, ["0", "0", "2.7", "0", "0"]);
    check("bring-back 2 of sale all on stools kept 10", 1, ["43.33", "1.74", "2.7", "43.33", "0"]);
}

/// With a smallest coin of 0.25: of three for 100 in notes a third is 33.33, and 33.50 can be paid; 5.21 x 33.50 / 100 is 1.75 of the tax. Of the
/// 66.50 that are left half is 33.25. By card it is to the cent, and so it is where the coin is not set.
#[test]
fn what_came_in_coins_goes_back_in_coins() {
    let coin = "till cash 0.25\nsell 3 stools for 100 notes as cash\n";
    let more = |lines: &str| format!("bring-back 3 of sale all on stools\n{coin}{lines}");
    check(&more(""), 3, ["100", "5.21", "2.7", "100", "0"]);
    check(&more("bring-back 1 of sale cash on stools"), 2, ["66.5", "3.46", "2.7", "66.5", "0"]);
    check(&more(&"bring-back 1 of sale cash on stools\n".repeat(2)), 1, ["33.25", "1.73", "2.7", "33.25", "0"]);
    check(&more(&"bring-back 1 of sale cash on stools\n".repeat(3)), 0, ["0", "0", "2.7", "0", "0"]);
    check(&more("bring-back 1 of sale cash on stools kept 3.50"), 2, ["70", "3.46", "2.7", "70", "0"]);
    check("till cash 0.25\nbring-back 1 of sale all on stools", 2, ["66.67", "3.47", "2.7", "66.67", "0"]);
}

/// Two for 409.98 handed over and not paid, the order changed, and all of it paid in notes with the third: one of the two comes back in coins, as
/// half of 409.98 is 204.99 and 205.00 can be paid. With a deposit by bank it is to the cent.
#[test]
fn what_a_changed_order_brought_in_coins_goes_back_in_coins() {
    for (deposit, back) in [("", "205"), ("pay 100 for more bank agreed deal\n", "204.99")] {
        let lines = format!(
            "till cash 0.05\njob more \"More\" 3 order\nagree 809.98 for 3 more fetched as deal\n{deposit}sell 2 more for 409.98 agreed deal as two\n\
             agree 350 for 1 more fetched replaces deal as new\nsell 1 more for 350 notes agreed new\nbring-back 1 of sale two on more"
        );
        let story = tell(&format!("{SOLD}{lines}"));
        assert_eq!(story.refused, [], "{deposit}");
        let job = fivebar_core::ledger::fold::job(&story.book, story.names.job("more").unwrap()).unwrap();
        assert_eq!(job.selling.sales[0].back[0].of.sum.amount().normalize().to_string(), back, "{deposit}");
        assert_eq!(job.due().map(|due| due.is_zero()), Ok(true), "{deposit}");
    }
}

/// Nothing goes back of what was never paid; the rest is due.
#[test]
fn what_was_not_paid_does_not_go_back() {
    let later =
        "job more \"More\" 3 spec\nsell 3 more for 90 as later\npay 70 for more bank sale later\nbring-back 1 of sale later on more";
    let story = tell(&format!("{SOLD}{later}"));
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let sold = account(&shop, story.names.job("more").unwrap()).unwrap().sold;
    assert_eq!([sold.taken, sold.received, sold.due].map(|sum| sum.amount().to_string()), ["60", "60", "0"]);
}

/// A dent found later, 20 of 100 given back and all three kept: 5.21 x 20 / 100 is 1.04 of the tax, 0.54 of the fee is lost. Then one comes back
/// after all: 80 / 3 and 4.17 / 3. Twice, and all of it: the pieces stay sold.
#[test]
fn money_goes_back_while_the_pieces_stay() {
    let less = "let-keep 20 of sale all on stools\n";
    check(less, 3, ["80", "4.17", "2.7", "80", "0"]);
    check(&format!("{less}bring-back 1 of sale all on stools"), 2, ["53.33", "2.78", "2.7", "53.33", "0"]);
    check(&less.repeat(2), 3, ["60", "3.13", "2.7", "60", "0"]);
    check("let-keep 100 of sale all on stools", 3, ["0", "0", "2.7", "0", "0"]);
    let story = tell(&format!("{SOLD}{less}"));
    let shop = Shop::of(&story.book, story.now.at);
    let found = account(&shop, story.names.job("stools").unwrap()).unwrap();
    assert_eq!((found.costs.fees_lost.amount().to_string(), found.sold.left), ("0.54".to_owned(), 0));
}

/// One of an order of three is handed over and has a dent: what is given back of it is not asked for with the other two. What is still due of a sale
/// is due no more.
#[test]
fn what_was_given_back_is_not_asked_for_again() {
    let order = "job pair \"Pair\" 3 order\nagree 300 for 3 pair fetched as deal\nsell 1 pair for 100 notes agreed deal as one\n\
        let-keep 20 of sale one on pair\n";
    let later = "job pair \"Pair\" 1 spec\nsell 1 pair for 90 as one\npay 70 for pair bank sale one\nlet-keep 30 of sale one on pair\n";
    for (lines, sums) in [(order, ["80", "80", "200"]), (later, ["60", "60", "0"])] {
        let story = tell(&format!("{SOLD}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        let sold = account(&shop, story.names.job("pair").unwrap()).unwrap().sold;
        assert_eq!([sold.taken, sold.received, sold.due].map(|sum| sum.amount().to_string()), sums.map(str::to_owned), "{lines}");
        let job = shop.job(story.names.job("pair").unwrap()).unwrap();
        for agreement in job.selling.open() {
            assert_eq!(job.selling.still_due(job.currency, agreement).unwrap().amount().to_string(), sums[2], "{lines}");
        }
    }
}

/// Of 90 for one 50 came in, and 60 go off the price at once: 40 that are due are never paid, 20 go back; or all of it. No more than the price does.
#[test]
fn what_is_due_and_what_came_go_off_the_price_at_once() {
    let later = "job pair \"Pair\" 1 spec\nsell 1 pair for 90 as one\npay 50 for pair bank sale one\n";
    for (off, sums) in [("40", ["50", "50", "0"]), ("60", ["30", "30", "0"]), ("90", ["0", "0", "0"])] {
        let story = tell(&format!("{SOLD}{later}let-keep {off} of sale one on pair\n"));
        assert_eq!(story.refused, [], "{off}");
        let shop = Shop::of(&story.book, story.now.at);
        let job = shop.job(story.names.job("pair").unwrap()).unwrap();
        let sold = account(&shop, job.id).unwrap().sold;
        assert_eq!([sold.taken, sold.received, sold.due].map(|sum| sum.amount().to_string()), sums.map(str::to_owned), "{off}");
        assert_eq!(job.selling.sales[0].back[0].never_paid().unwrap().map(|sum| sum.amount().to_string()), Some("40".to_owned()), "{off}");
    }
    let refused = tell(&format!("{SOLD}{later}let-keep 90.01 of sale one on pair\n")).refused;
    assert!(format!("{refused:?}").contains("MoreThanPrice"), "{refused:?}");
}

/// One of two for 200 is handed over and lacks all of its 100: 30 of them will not be paid. What comes in for the rest, 70 and 100, pays no more of it
/// than 70, and all of it came in; the same in two goes, and where the order is changed between.
#[test]
fn what_is_given_up_while_the_order_goes_on_stays_given_up() {
    let begun = "job pair \"Pair\" 2 order\nagree 200 for 2 pair fetched as deal\nsell 1 pair for 100 agreed deal as one\nlet-keep 30 of sale one on pair\n";
    for rest in [
        "sell 1 pair for 100 notes agreed deal\n",
        "pay 120 for pair bank agreed deal\nsell 1 pair for 100 notes agreed deal\n",
        "agree 100 for 1 pair fetched replaces deal as new\nsell 1 pair for 100 notes agreed new\n",
    ] {
        for (lines, sums) in [("", ["70", "0", "170"]), (rest, ["170", "170", "0"])] {
            let story = tell(&format!("{SOLD}{begun}{lines}"));
            assert_eq!(story.refused, [], "{lines}");
            let shop = Shop::of(&story.book, story.now.at);
            let sold = account(&shop, story.names.job("pair").unwrap()).unwrap().sold;
            assert_eq!([sold.taken, sold.received, sold.due].map(|sum| sum.amount().to_string()), sums.map(str::to_owned), "{lines}");
        }
    }
}

/// An order for 100, 20 given off it; the piece comes back and is made good: 80 is paid ahead for it, and nothing is due. And of three for 300 one is
/// handed over for 100, the rest is one for 110 then and not paid yet; the first comes back for 80: 20 is kept, and 110 is due.
#[test]
fn what_was_given_off_or_kept_pays_for_nothing_else() {
    let good = "job pair \"Pair\" 1 order\nagree 100 for 1 pair fetched as deal\nsell 1 pair for 100 notes agreed deal as one\n\
        let-keep 20 of sale one on pair\nbring-back 1 of sale one on pair kept 80\n";
    let changed = "job pair \"Pair\" 3 order\nagree 300 for 3 pair fetched as deal\nsell 1 pair for 100 notes agreed deal as one\n\
        agree 110 for 1 pair fetched replaces deal as less\nsell 1 pair for 110 agreed less as two\nbring-back 1 of sale one on pair kept 20\n";
    for (lines, kept, due) in [(good, "0", "0"), (changed, "20", "110")] {
        let story = tell(&format!("{SOLD}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        let job = shop.job(story.names.job("pair").unwrap()).unwrap();
        let sold = account(&shop, job.id).unwrap().sold;
        assert_eq!(
            [job.selling.kept(job.currency).unwrap(), sold.due].map(|sum| sum.amount().to_string()),
            [kept, due].map(str::to_owned),
            "{lines}"
        );
        for agreement in job.selling.open() {
            assert_eq!(job.selling.still_due(job.currency, agreement).unwrap().amount().to_string(), "0", "{lines}");
        }
    }
}

/// Two for 499.98, paid in notes with 500: what was rounded to the coin is neither owed nor over when one, both, or one after the other come back
/// and are made good, nor when they are handed over again, in one sale or two.
#[test]
fn what_was_rounded_to_the_coin_is_neither_owed_nor_over() {
    let order = "till cash 0.05\njob pair \"Pair\" 2 order\nagree 499.98 for 2 pair fetched as deal\n";
    let both = "sell 2 pair for 499.98 notes agreed deal as one\n";
    let each = "sell 1 pair for 249.99 bank agreed deal as one\nsell 1 pair for 249.99 notes agreed deal as two\n";
    for (lines, sales) in [
        (both, "bring-back 1 of sale one on pair kept 250 again\n"),
        (both, "bring-back 2 of sale one on pair kept 499.98 again\n"),
        (both, "bring-back 1 of sale one on pair kept 250 again\nbring-back 1 of sale one on pair kept 249.98 again\n"),
        (each, "bring-back 1 of sale one on pair kept 249.99 again\n"),
        (each, "bring-back 1 of sale two on pair kept 249.99 again\n"),
    ] {
        let back = tell(&format!("{SOLD}{order}{lines}{sales}"));
        assert_eq!(back.refused, [], "{sales}");
        let job = |story: &fivebar_core::story::Story| Shop::of(&story.book, story.now.at).job(story.names.job("pair").unwrap()).unwrap();
        let figures = |job: &fivebar_core::ledger::fold::Job| {
            (
                job.due().unwrap().amount().to_string(),
                job.selling.over(job.currency).unwrap().len(),
                job.selling.unpaid(job.currency).unwrap().len(),
            )
        };
        let settled = ("0".to_owned(), 0, 0);
        let it = job(&back);
        assert_eq!(figures(&it), settled, "{lines}{sales}");
        let deal = it.selling.open().next().unwrap();
        let again = format!("sell {} pair for {} notes agreed deal", deal.n - deal.sold, deal.sum.minus(deal.sold_for).unwrap().amount());
        let again = tell(&format!("{SOLD}{order}{lines}{sales}{again}"));
        assert_eq!((again.refused.as_slice(), figures(&job(&again))), ([].as_slice(), settled), "{lines}{sales}");
    }
}

/// Of an order, one of two comes back: made good it is promised again and its money is owed as work where it is kept; or the order ends.
#[test]
fn an_order_is_made_good_or_ends() {
    let order = "job pair \"Pair\" 2 order\nagree 200 for 2 pair fetched as deal\npay 80 for pair bank agreed deal\nsell 2 pair for 200 notes agreed deal as both\n";
    for (back, promised, received, due) in [
        ("", 0, "200", "0"),
        ("bring-back 1 of sale both on pair", 1, "100", "100"),
        ("bring-back 1 of sale both on pair ends", 0, "100", "0"),
    ] {
        let story = tell(&format!("{SOLD}{order}{back}"));
        assert_eq!(story.refused, [], "{back}");
        let shop = Shop::of(&story.book, story.now.at);
        let sold = account(&shop, story.names.job("pair").unwrap()).unwrap().sold;
        let sums = [sold.received, sold.due].map(|sum| sum.amount().to_string());
        assert_eq!((sold.promised, sums), (promised, [received, due].map(str::to_owned)), "{back}");
    }
}

#[test]
fn no_more_comes_back_than_was_sold_or_paid() {
    for (line, why) in [
        ("bring-back 4 of sale all on stools", "NotThatMany { asked: 4, there: 3 }"),
        ("bring-back 1 of sale all on stools kept 34", "MoreThanReceived"),
        ("bring-back 0 of sale all on stools", "NothingAsked"),
        ("let-keep 100.01 of sale all on stools", "MoreThanReceived"),
        ("let-keep 0 of sale all on stools", "NothingAsked"),
    ] {
        let refused = tell(&format!("{SOLD}{line}")).refused;
        assert!(format!("{refused:?}").contains(why), "{line}: {refused:?}");
    }
}

/// Looking back, what was asked is of the pieces that stayed sold: two tags of 40.
#[test]
fn what_was_asked_is_of_what_stayed_sold() {
    let story = tell(&format!("{SOLD}bring-back 1 of sale all on stools kept 5"));
    let shop = Shop::of(&story.book, story.now.at);
    let pair = account(&shop, story.names.job("stools").unwrap()).unwrap().ratios.got_of_asked.unwrap();
    assert_eq!([pair.0, pair.1].map(|sum| sum.to_string()), ["66.67 USD", "80.00 USD"]);
}

/// Agreed 800 for two, 300 ahead of it, handed over; refunded with 500 kept and made good: those 500 lie ahead, 300 are due. Nothing of it
/// counts twice, handed over again, or called off with all of it handed back, or with 200 of it kept; or called off with the refund.
#[test]
fn what_is_kept_of_an_order_that_is_made_good_counts_once_to_its_end() {
    let order = "job pair \"Pair\" 2 order\nagree 800 for 2 pair fetched as deal\npay 300 for pair bank agreed deal\nsell 2 pair for 800 notes agreed deal as both\n";
    for (after, [taken, received, due]) in [
        ("reverse sale both on pair kept 500\n", ["0", "500", "300"]),
        ("reverse sale both on pair kept 500\nsell 2 pair for 800 notes agreed deal\n", ["800", "800", "0"]),
        ("reverse sale both on pair kept 500\ncancel deal on pair\n", ["0", "0", "0"]),
        ("reverse sale both on pair kept 500\ncancel deal on pair kept 200\n", ["200", "200", "0"]),
        ("bring-back 2 of sale both on pair kept 500 ends\n", ["500", "500", "0"]),
        ("bring-back 1 of sale both on pair kept 100\nsell 1 pair for 400 notes agreed deal\n", ["800", "800", "0"]),
    ] {
        let story = tell(&format!("{SOLD}{order}{after}"));
        assert_eq!(story.refused, [], "{after}");
        let shop = Shop::of(&story.book, story.now.at);
        let sold = account(&shop, story.names.job("pair").unwrap()).unwrap().sold;
        let sums = [sold.taken, sold.received, sold.due].map(|sum| sum.amount().to_string());
        assert_eq!(sums, [taken, received, due].map(str::to_owned), "{after}");
    }
}

/// Sold to one who had offered 30 and heard 35, brought back, sold for 38 days later: nobody waited at 30. An offer that came to no sale is waited at.
#[test]
fn a_piece_that_was_brought_back_was_not_waited_with() {
    let begun = "2026-05-22 08:14 -05:00 workshop USD inch\njob stools \"Stools\" 3 spec\ntag 40 stools\n";
    let back = |first: &str| {
        let story = tell(&format!("{begun}{first}2026-05-26 10:00 sell 1 stools for 38 notes\n"));
        assert_eq!(story.refused, [], "{first}");
        let shop = Shop::of(&story.book, story.now.at);
        looked_back(&shop, &shop.job(story.names.job("stools").unwrap()).unwrap()).unwrap()
    };
    let usd = |whole: i64| fivebar_core::quantity::Money::whole(whole.into(), Currency::USD).unwrap();
    let sold = "sell 1 stools for 35 notes offered 30 as it\n2026-05-23 10:00 bring-back 1 of sale it on stools\n";
    assert_eq!(back(sold), None);
    assert_eq!(back("offer 30 for 1 stools notes\n"), Some(Back::Waited { offered: usd(30), sold: usd(38) }));
}

/// What is waited for is the next sale: 80 let go, 95 the day after, 100 later. Nobody waited within the hour.
#[test]
fn the_next_sale_is_what_was_waited_for() {
    let begun = "2026-05-22 08:14 -05:00 workshop USD inch\njob stools \"Stools\" 3 spec\ntag 100 stools\n";
    let back = |lines: &str| {
        let story = tell(&format!("{begun}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        looked_back(&shop, &shop.job(story.names.job("stools").unwrap()).unwrap()).unwrap()
    };
    let usd = |whole: i64| fivebar_core::quantity::Money::whole(whole.into(), Currency::USD).unwrap();
    let waited = |offered: i64, sold: i64| Some(Back::Waited { offered: usd(offered), sold: usd(sold) });
    let offer = "2026-05-22 10:00 offer 80 for 1 stools notes\n";
    let later = "2026-05-23 10:00 sell 1 stools for 95 notes\n2026-05-24 10:00 sell 1 stools for 100 notes\n";
    assert_eq!(back(&format!("{offer}{later}")), waited(80, 95));
    assert_eq!(back(&format!("{offer}2026-05-22 10:40 sell 1 stools for 95 notes\n")), None);
    assert_eq!(back(&format!("{offer}2026-05-22 10:40 sell 1 stools for 95 notes\n2026-05-24 10:00 sell 1 stools for 100 notes\n")), None);
    assert_eq!(back(&format!("{offer}2026-05-22 11:01 sell 1 stools for 95 notes\n")), waited(80, 95));
    // What of it was never paid is another matter.
    let late = "2026-05-23 10:00 sell 1 stools for 95 as late\npay 60 for stools bank sale late\nlet-keep 35 of sale late on stools\n";
    assert_eq!(back(&format!("{offer}{late}")), waited(80, 95));
}
