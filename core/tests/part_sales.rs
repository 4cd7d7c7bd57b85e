//! Sales under an agreement, a part at a time: what a deposit was used for, what is due, and what can be handed back or kept.

use fivebar_core::ledger::Entry;
use fivebar_core::ledger::fold::{self, Job};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Decimal, Id, Money, Wall};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::price::price;
use fivebar_core::story::{Story, Why, tell};

/// Two of four stools for 800, 300 of it ahead.
const AGREED: &str = "2026-03-02 09:00 -05:00 workshop USD inch
job stools \"Stools\" 4 order
agree 800 for 2 stools fetched deposit 300 as deal
pay 300 for stools bank agreed deal
";

fn told(lines: &str) -> Story {
    tell(&format!("{AGREED}{lines}"))
}

fn job(story: &Story) -> Job {
    fold::job(&story.book, story.names.job("stools").unwrap()).unwrap()
}

fn dollars(sum: i64) -> Money {
    Money::whole(Decimal::from(sum), Currency::USD).unwrap()
}

/// What was taken, received and is due after these lines.
#[track_caller]
fn check(lines: &str, figures: [i64; 3]) {
    let story = told(lines);
    assert_eq!(story.refused, [], "{lines}");
    let job = job(&story);
    let (taken, received) = (job.selling.taken(job.currency), job.selling.received(job.currency));
    assert_eq!([taken, received, job.due()], figures.map(|sum| Ok(dollars(sum))), "{lines}");
}

#[test]
fn a_deposit_is_used_by_the_first_sale() {
    check("sell 1 stools for 400 notes agreed deal", [400, 400, 400]);
    check("sell 1 stools for 400 agreed deal", [400, 300, 500]);
    check("sell 1 stools for 400 notes agreed deal\nsell 1 stools for 400 notes agreed deal", [800, 800, 0]);
    check("sell 1 stools for 400 notes agreed deal\ncancel deal on stools", [400, 400, 0]);
    check("sell 1 stools for 400 agreed deal\ncancel deal on stools", [400, 300, 100]);
    check("sell 1 stools for 100 notes agreed deal\ncancel deal on stools", [100, 100, 0]);
    check("sell 1 stools for 100 notes agreed deal\ncancel deal on stools kept 200", [300, 300, 0]);
}

#[test]
fn no_more_is_kept_than_is_still_ahead() {
    for (sale, ahead) in [(400, 0), (100, 200)] {
        let story = told(&format!("sell 1 stools for {sale} notes agreed deal\ncancel deal on stools kept 300"));
        let why = story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, [Why::Refused(Refusal::MoreThanReceived { met: dollars(300), received: dollars(ahead) })]);
    }
}

/// What was used under the old agreement is not ahead for the new one.
#[test]
fn a_changed_order_has_what_is_left_of_the_deposit() {
    let changed = "sell 1 stools for 400 notes agreed deal\nagree 350 for 1 stools fetched replaces deal as new\n";
    check(changed, [400, 400, 350]);
    check(&format!("{changed}sell 1 stools for 350 notes agreed new"), [750, 750, 0]);
    check(&format!("{changed}cancel new on stools"), [400, 400, 0]);
    let half = "sell 1 stools for 100 notes agreed deal\nagree 350 for 1 stools fetched replaces deal as new\n";
    check(&format!("{half}sell 1 stools for 350 notes agreed new"), [450, 450, 0]);
    check(&format!("{half}cancel new on stools kept 50"), [150, 150, 0]);
}

/// What is still to be paid of sales, each by its own row; an open agreement says it itself.
#[test]
fn a_sale_that_is_not_paid_is_found() {
    let owed = |lines: &str| {
        let story = told(lines);
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        price(&shop, Paid::Notes).unwrap().owed.into_iter().map(|row| row.due).collect::<Vec<_>>()
    };
    for (lines, due) in [
        ("sell 2 stools for 800 agreed deal", vec![500]),
        ("sell 2 stools for 800 agreed deal as two\npay 200 for stools bank sale two", vec![300]),
        ("sell 2 stools for 800 notes agreed deal", vec![]),
        ("sell 1 stools for 400 agreed deal", vec![]),
        ("sell 1 stools for 400 agreed deal\ncancel deal on stools", vec![100]),
        ("sell 1 stools for 300 agreed deal\nsell 1 stools for 500 agreed deal", vec![500]),
        ("sell 2 stools for 800 agreed deal\nsell 1 stools for 400", vec![500, 400]),
        ("sell 1 stools for 400 agreed deal\nagree 350 for 1 stools fetched replaces deal", vec![]),
        ("sell 1 stools for 400 agreed deal\nagree 350 for 1 stools fetched replaces deal as new\ncancel new on stools", vec![100]),
    ] {
        assert_eq!(owed(lines), due.into_iter().map(dollars).collect::<Vec<_>>(), "{lines}");
    }
}

/// What is still owed of pieces of the same order that were handed over before is due with the rest, also after a change of order, and is paid
/// first: the hand-over asks for it and brings it, in one payment with one fee.
#[test]
fn what_is_owed_of_the_pieces_before_is_due_with_the_rest() {
    for (lines, due, rest) in [
        ("sell 1 stools for 400 agreed deal as one\n", 500, "sell 1 stools for 400 card agreed deal as two"),
        (
            "sell 1 stools for 400 agreed deal as one\npay 40 for stools bank agreed deal\n",
            460,
            "sell 1 stools for 400 card agreed deal as two",
        ),
        (
            "sell 1 stools for 400 agreed deal as one\nagree 350 for 1 stools fetched replaces deal as new\n",
            450,
            "sell 1 stools for 350 card agreed new as two",
        ),
    ] {
        let story = told(&format!("till fee 0.03 fixed 0.30\n{lines}"));
        let row = price(&Shop::of(&story.book, story.now.at), Paid::Card).unwrap().agreed.remove(0);
        let left = row.price.minus(if row.n == 1 && row.price == dollars(800) { dollars(400) } else { dollars(0) }).unwrap();
        assert_eq!([row.due, row.still, row.at_hand_over], [dollars(due); 3], "{lines}");
        assert_eq!(row.before, dollars(due).minus(left).unwrap(), "{lines}");
        let story = told(&format!("till fee 0.03 fixed 0.30\n{lines}{rest}"));
        assert_eq!(story.refused, [], "{lines}");
        let job = job(&story);
        for sale in &job.selling.sales {
            assert_eq!(job.selling.paid(job.currency, sale.id), Ok(sale.sum), "{lines}");
        }
        assert_eq!(job.due(), Ok(dollars(0)), "{lines}");
        let last = job.selling.payments.last().unwrap();
        assert_eq!(last.sum, dollars(due), "{lines}");
        // The last ones come back: what goes back is what came in for them.
        let back = told(&format!("till fee 0.03 fixed 0.30\n{lines}{rest}\nreverse sale two on stools"));
        let was = self::job(&back);
        assert_eq!(
            was.selling.received(was.currency),
            job.selling.received(job.currency).unwrap().minus(job.selling.sales[1].sum),
            "{lines}"
        );
    }
}

/// In notes all of it together goes to the smallest coin: nothing is left owed or over.
#[test]
fn what_is_owed_before_goes_to_a_coin_with_the_rest() {
    let story = told("till cash 0.05\nsell 1 stools for 409.99 agreed deal\nsell 1 stools for 399.99 notes agreed deal");
    assert_eq!(story.refused, []);
    let job = job(&story);
    let last = job.selling.payments.last().unwrap();
    assert_eq!((last.sum, job.due(), job.selling.over(job.currency)), (dollars(510), Ok(dollars(0)), Ok(vec![])));
}

/// Of 300 that came in for 299.98 nobody can hand back 0.02 in notes where the smallest coin is 0.05; of 299.97 it is 0.05. By bank it is to the cent.
#[test]
fn what_no_coin_can_pay_is_not_asked_back() {
    for (paid, sum, asked) in [("notes", "299.98", None), ("notes", "299.97", Some("0.03")), ("bank", "299.98", Some("0.02"))] {
        let lines = format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\ntill cash 0.05\njob stools \"Stools\" 1 order\nagree 300 for 1 stools fetched as deal\n\
             pay 300 for stools {paid} agreed deal\nagree {sum} for 1 stools fetched replaces deal as less\nsell 1 stools for {sum} agreed less\n"
        );
        let story = tell(&lines);
        assert_eq!(story.refused, []);
        let sheet = fivebar_core::sheet::job::job(&Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap()).unwrap();
        let over: Vec<String> = sheet.sale.over.iter().map(|over| over.sum.amount().to_string()).collect();
        assert_eq!(over, asked.into_iter().collect::<Vec<_>>(), "{paid} {sum}");
        let is_asked = matches!(sheet.next, fivebar_core::sheet::job::NextAct::HandBack { .. });
        let is_due = sheet.section == fivebar_core::sheet::jobs::Section::Due;
        assert_eq!([is_asked, is_due], [asked.is_some(); 2], "{paid} {sum}");
    }
}

/// A small sum over is left aside only where all that came in for the same was notes, whatever others paid with; what is left aside makes up for
/// nothing that another owes.
#[test]
fn what_is_left_aside_is_of_one_buyer() {
    use fivebar_core::sheet::job::{NextAct, job};
    use fivebar_core::sheet::jobs::{Section, jobs};
    let over = |paid: &str, sum: &str| {
        format!(
            "agree 300 for 1 stools fetched as deal\npay 300 for stools {paid} agreed deal\nagree {sum} for 1 stools fetched replaces deal as less\n\
             sell 1 stools for {sum} agreed less\n"
        )
    };
    for (coin, lines, asked, due) in [
        ("1.00", format!("{}sell 1 stools for 10 notes\n", over("bank", "299.60")), Some("0.4"), "-0.4"),
        ("1.00", format!("{}sell 1 stools for 10 bank\n", over("notes", "299.60")), None, "0"),
        ("0.05", format!("{}sell 1 stools for 200\n", over("notes", "299.98")), None, "200"),
        ("0.05", format!("{}sell 1 stools for 0.02\n", over("notes", "299.98")), None, "0.02"),
    ] {
        let start = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 10 order\n";
        let story = tell(&format!("{start}till cash {coin}\n{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        let sheet = job(&shop, story.names.job("stools").unwrap()).unwrap();
        let found: Vec<_> = sheet.sale.over.iter().map(|over| over.sum.amount().normalize().to_string()).collect();
        assert_eq!(found, asked.into_iter().collect::<Vec<_>>(), "{lines}");
        let row = jobs(&shop, "").unwrap().remove(0);
        assert_eq!([row.due, sheet.sale.due, sheet.account.sold.due].map(|due| due.amount().normalize().to_string()), [due; 3], "{lines}");
        assert_eq!(row.section == Section::Due, due != "0", "{lines}");
        let collects = if let NextAct::Collect { due } = row.next { Some(due.amount().normalize().to_string()) } else { None };
        assert_eq!(collects, Some(due.to_owned()).filter(|due| !due.starts_with('-') && due != "0"), "{lines}");
        let in_all = price(&shop, Paid::Notes).unwrap().due.get(&Currency::USD).map(|due| due.amount().normalize().to_string());
        assert_eq!(in_all, Some(due.to_owned()).filter(|due| !due.starts_with('-') && due != "0"), "{lines}");
    }
}

/// The last payment in notes goes to the smallest coin, by bank it is to the cent. The coin is with the payment, and the sale is
/// what was agreed, or said where nothing was.
#[test]
fn the_last_payment_in_notes_goes_to_a_coin() {
    let cents = |cents: i64| Money::whole(Decimal::new(cents, 2).normalize(), Currency::USD).unwrap();
    for (sale, sum, last) in [
        ("sell 2 stools for 799.98 notes agreed deal", 79_998, 50_000),
        ("sell 2 stools for 799.97 notes agreed deal", 79_997, 49_995),
        ("sell 2 stools for 799.98 bank agreed deal", 79_998, 49_998),
        ("sell 2 stools for 799.98 agreed deal", 79_998, 30_000),
        ("sell 1 stools for 99.98 notes agreed deal", 9_998, 30_000),
        ("sell 1 stools for 99.98 notes", 9_998, 10_000),
    ] {
        let story = told(&format!("till cash 0.05\n{sale}"));
        assert_eq!(story.refused, [], "{sale}");
        let selling = job(&story).selling;
        let paid = selling.payments.last().map(|payment| payment.sum);
        assert_eq!((selling.sales[0].sum, paid), (cents(sum), Some(cents(last))), "{sale}");
    }
}

/// A payment in notes that is struck takes the coin it was rounded by along, and so does a sale that goes back whole: nothing of it is due, taken or in
/// the till.
#[test]
fn a_coin_goes_with_its_payment() {
    let cents = |cents: i64| Money::whole(Decimal::new(cents, 2).normalize(), Currency::USD).unwrap();
    for (agreed, of, ends) in [("", "", ""), ("agree 99.98 for 1 more fetched as deal\n", " agreed deal", " ends")] {
        let back = format!("bring-back 1 of sale it on more{ends}\n");
        let sold = format!("till cash 0.05\njob more \"More\" 1 order\n{agreed}sell 1 more for 99.98 notes{of} as it\n");
        for (then, taken, received, due) in [("", 10_000, 10_000, 0), (back.as_str(), 0, 0, 0)] {
            let story = tell(&format!("{}{sold}{then}", "2026-03-02 09:00 -05:00 workshop USD inch\n"));
            assert_eq!(story.refused, [], "{agreed}{then}");
            let job = fivebar_core::ledger::fold::job(&story.book, story.names.job("more").unwrap()).unwrap();
            let sums = [job.selling.taken(job.currency), job.selling.received(job.currency), job.due()].map(Result::unwrap);
            assert_eq!(sums, [taken, received, due].map(cents), "{agreed}{then}");
        }
    }
}

/// What came in beyond what is owed goes back once, by whom it is owed, and to the cent or the coin.
#[test]
fn what_is_over_is_handed_back() {
    // 300 ahead, both handed over for 200: 100 is over.
    let over = "sell 2 stools for 200 agreed deal\n";
    check(over, [200, 300, -100]);
    check(&format!("{over}hand-back 100 for stools bank agreed deal"), [200, 200, 0]);
    check(&format!("{over}hand-back 60 for stools notes agreed deal\nhand-back 40 for stools bank agreed deal"), [200, 200, 0]);
    check(&format!("{over}hand-back 100 for stools bank agreed deal as back\nundo back"), [200, 300, -100]);
    // The order is changed to 200 with 300 in; what went back is not there for the sale.
    let changed = "agree 200 for 2 stools fetched replaces deal as new\nhand-back 100 for stools bank agreed new\n";
    check(changed, [0, 200, 0]);
    check(&format!("{changed}sell 2 stools for 200 agreed new"), [200, 200, 0]);
    // The sale was a slip, its payment was not: 150 came in for nothing.
    let slip = "sell 1 stools for 150 as slip\npay 150 for stools bank sale slip\nundo slip\n";
    check(slip, [0, 450, 350]);
    check(&format!("{slip}hand-back 150 for stools bank sale slip"), [0, 300, 500]);
    // One buyer's money is not another's: 100 over for the deal, 400 lacks for another stool.
    let two = format!("{over}sell 1 stools for 400\n");
    check(&two, [600, 300, 300]);
    check(&format!("{two}hand-back 100 for stools bank agreed deal"), [600, 200, 400]);
}

/// One buyer's money does not keep another's out: each can pay what they lack, whatever is over of somebody else.
#[test]
fn who_lacks_can_pay_while_another_is_over() {
    let two = "sell 2 stools for 200 agreed deal\nsell 1 stools for 400 as sale\n";
    let pay = "pay 400 for stools bank sale sale";
    check(&format!("{two}{pay}"), [600, 700, -100]);
    check(&format!("{two}{pay} as it\nundo it\nrestore it"), [600, 700, -100]);
    check(&format!("{two}{pay}\nhand-back 100 for stools bank agreed deal"), [600, 600, 0]);
    let refused = |lines: &str| told(&format!("{two}{lines}")).refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
    let more = |met, due| vec![Why::Refused(Refusal::MoreThanDue { met: dollars(met), due: dollars(due) })];
    assert_eq!(refused("pay 401 for stools bank sale sale"), more(401, 400));
    assert_eq!(refused(&format!("{pay} as it\nundo it\npay 300 for stools bank sale sale\nrestore it")), more(400, 100));
}

/// Of what came in ahead, what is to be handed back is not owed as work.
#[test]
fn what_is_over_is_not_owed_as_work() {
    for (lines, owed) in [
        ("", 300),
        ("agree 200 for 2 stools fetched replaces deal\nagree 100 for 1 stools fetched", 200),
        ("agree 200 for 2 stools fetched replaces deal as new\nsell 1 stools for 50 agreed new", 150),
    ] {
        let story = told(lines);
        assert_eq!(story.refused, [], "{lines}");
        let ahead = price(&Shop::of(&story.book, story.now.at), Paid::Notes).unwrap().ahead;
        assert_eq!(ahead.get(&Currency::USD), Some(&dollars(owed)), "{lines}");
    }
}

/// Two phones note the one sale of a lot: what is there of another lot does not go with it, and no piece on the bench is lost.
#[test]
fn a_sale_that_two_phones_noted_takes_no_piece_of_the_bench() {
    let lots = "consign 1 stools tag 145 share 0.4 as one\nconsign 1 stools tag 145 share 0.4\n";
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 5 spec\n";
    let story = tell(&format!("{start}{lines}gallery pays 87 for 1 stools lot one", lines = lots));
    assert_eq!(story.refused, []);
    let (entry, _) = story.book.entries().last().unwrap();
    let other = Entry { id: Id::new(entry.at(), [7; 10]), ..entry.clone() };
    let left = |book| fold::job(book, story.names.job("stools").unwrap()).unwrap().left();
    assert_eq!((left(&story.book), left(&story.book.and(&other))), (3, 3));
}

#[test]
fn no_more_is_handed_back_than_is_over() {
    let refused = |lines: &str| told(lines).refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
    let more = |met, over| vec![Why::Refused(Refusal::MoreThanOver { met: dollars(met), over: dollars(over) })];
    let over = "sell 2 stools for 200 agreed deal\n";
    assert_eq!(refused(&format!("{over}hand-back 101 for stools bank agreed deal")), more(101, 100));
    assert_eq!(refused(&format!("{over}hand-back 0 for stools bank agreed deal")), [Why::Refused(Refusal::NothingAsked)]);
    for none in ["hand-back 1 for stools bank agreed deal", "sell 1 stools for 400 notes as one\nhand-back 1 for stools bank sale one"] {
        assert_eq!(refused(none), [Why::Refused(Refusal::NotThere)], "{none}");
    }
}

/// 300 in by bank, handed over for 200.02: 99.98 is over. In notes 100.00 goes back and nothing is left over.
#[test]
fn what_goes_back_in_notes_goes_to_a_coin() {
    let cents = |cents: i64| Money::whole(Decimal::new(cents, 2).normalize(), Currency::USD).unwrap();
    for (way, sum, back, due) in
        [("notes", "99.98", 10_000, 0), ("notes", "100", 10_000, 0), ("bank", "99.98", 9_998, 0), ("notes", "50", 5_000, -4_998)]
    {
        let story = told(&format!("till cash 0.05\nsell 2 stools for 200.02 agreed deal\nhand-back {sum} for stools {way} agreed deal"));
        assert_eq!(story.refused, [], "{way} {sum}");
        let job = job(&story);
        let went = job.selling.handed_back[0].sum;
        assert_eq!((went, job.due()), (cents(back), Ok(cents(due))), "{way} {sum}");
        // What was taken is what stayed.
        let stayed = job.selling.received(job.currency);
        assert!(due != 0 || stayed == job.selling.taken(job.currency), "{way} {sum}");
    }
}

/// What is due of a job is what its sales and agreements lack, less what is over: nothing is counted twice or lost.
#[test]
fn what_is_due_is_what_lacks_less_what_is_over() {
    let steps = [
        "sell 1 stools for 400 agreed deal as one",
        "sell 2 stools for 200 agreed deal as two",
        "sell 1 stools for 150 as slip\npay 150 for stools bank sale slip",
        "agree 200 for 1 stools fetched replaces deal as new",
        "hand-back 50 for stools bank agreed deal",
        "reverse sale one on stools kept 20",
        "undo slip",
        "hand-back 100 for stools notes sale slip",
        "cancel deal on stools kept 30",
        "sell 1 stools for 90 notes",
    ];
    for chosen in 0..1_u32 << steps.len() {
        let lines: Vec<&str> = steps.iter().enumerate().filter(|(nth, _)| chosen >> nth & 1 == 1).map(|(_, line)| *line).collect();
        // What is not possible is refused, and stands nowhere.
        let story = told(&lines.join("\n"));
        let job = job(&story);
        let (selling, currency) = (&job.selling, job.currency);
        let lacks = selling.unpaid(currency).unwrap().into_iter().map(|(_, lacks)| lacks);
        let still = selling.open().map(|agreement| selling.still_due(currency, agreement).unwrap());
        let over = Money::sum(currency, selling.over(currency).unwrap().into_iter().map(|over| over.sum)).unwrap();
        let due = Money::sum(currency, lacks.chain(still)).unwrap().minus(over);
        assert_eq!(job.due(), due, "{lines:?}");
    }
}

#[test]
fn a_deposit_is_given_back_once() {
    let sold = "sell 1 stools for 400 notes agreed deal as one\nsell 1 stools for 400 notes agreed deal as two\n";
    check(&format!("{sold}reverse sale one on stools"), [400, 400, 400]);
    check(&format!("{sold}reverse sale one on stools\nreverse sale two on stools"), [0, 0, 800]);
    // The order stands for its price: the 50 that stayed are paid ahead of it.
    check(&format!("{sold}reverse sale two on stools kept 50\nreverse sale one on stools"), [0, 50, 750]);
}

/// 800 in three parts: what came in pays the first first, and what each lacks adds up to what is still due.
#[test]
fn what_is_paid_in_parts_adds_up() {
    let parts = "parts deal on stools 300 due 2026-03-02 250 due 2026-04-01 250\n";
    for (lines, lacks) in [
        ("", vec![0, 250, 250]),
        ("pay 100 for stools bank agreed deal", vec![0, 150, 250]),
        ("sell 1 stools for 400 notes agreed deal", vec![0, 150, 250]),
        ("pay 500 for stools bank agreed deal", vec![0, 0, 0]),
        ("parts deal on stools 500 300", vec![200, 300]),
        ("parts deal on stools", vec![]),
    ] {
        let story = told(&format!("{parts}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let job = job(&story);
        let deal = &job.selling.agreements[0];
        let found: Vec<Money> = job.selling.parts_due(job.currency, deal).unwrap().into_iter().map(|(_, lacks)| lacks).collect();
        assert_eq!(found, lacks.into_iter().map(dollars).collect::<Vec<_>>(), "{lines}");
        let still = job.selling.still_due(job.currency, deal);
        assert!(found.is_empty() || Money::sum(job.currency, found) == still, "{lines}");
    }
}

/// 800 in three parts: another day or way leaves the parts as they were planned, another price has none yet.
#[test]
fn a_changed_order_keeps_its_parts() {
    let parts = "parts deal on stools 300 due 2026-03-02 250 due 2026-04-01 250\n";
    let one = "sell 1 stools for 400 notes agreed deal\n";
    for (lines, lacks) in [
        ("agree 800 for 2 stools delivered due 2026-05-22 replaces deal as new".to_owned(), vec![0, 250, 250]),
        ("agree 700 for 2 stools fetched replaces deal as new".to_owned(), vec![]),
        (format!("{one}agree 400 for 1 stools fetched replaces deal as new"), vec![]),
        (format!("{one}agree 800 for 1 stools fetched replaces deal as new"), vec![]),
    ] {
        let story = told(&format!("{parts}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let job = job(&story);
        let new = job.selling.open().next().unwrap();
        let found = job.selling.parts_due(job.currency, new).unwrap();
        let days: Vec<_> = found.iter().map(|(part, _)| part.due.map(Wall::day)).collect();
        let were: Vec<_> = job.selling.agreements[0].parts.iter().map(|part| part.due.map(Wall::day)).take(lacks.len()).collect();
        assert_eq!(days, were, "{lines}");
        assert_eq!(found.into_iter().map(|(_, lacks)| lacks).collect::<Vec<_>>(), lacks.into_iter().map(dollars).collect::<Vec<_>>());
    }
}

#[test]
fn parts_that_do_not_meet_are_refused() {
    for (parts, refused) in [
        ("300 499", Refusal::PartsDoNotMeet { sum: dollars(799), price: dollars(800) }),
        ("300 500 1", Refusal::PartsDoNotMeet { sum: dollars(801), price: dollars(800) }),
        ("800 0", Refusal::NothingAsked),
    ] {
        let why = told(&format!("parts deal on stools {parts}")).refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, [Why::Refused(refused)], "{parts}");
    }
    // What came to nothing, or was changed, is paid in no parts.
    for end in ["cancel deal on stools", "agree 700 for 2 stools fetched replaces deal"] {
        let why = told(&format!("{end}\nparts deal on stools 400 400")).refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, [Why::Refused(Refusal::NotThere)], "{end}");
    }
}
