//! Two phones that write apart: of money, of what is looked for and of an estimate, both come to the same book in any order of arrival.

mod maker;

use fivebar_core::ledger::decide::{
    BookCommand, Command, EstimateCommand, GiveUpOrder, Lying, MoneyCommand, Much, On, PlanCommand, SaleCommand, StockCommand,
};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::estimate::FactorSet;
use fivebar_core::ledger::kind::money::PackOpened;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::ledger::kind::stock::{PiecesSought, SoughtPiece};
use fivebar_core::ledger::{Book, fold};
use fivebar_core::quantity::{Count, Currency, Id};
use fivebar_core::refusal::Refusal;
use fivebar_core::story::{Story, tell};
use maker::{Maker, d, key, sixteenths};

struct Two {
    phones: [Maker; 2],
    story: Story,
    desk: Id,
}

const DAY: (i32, u32, u32) = (2026, 3, 2);
const NOON: i64 = 720;

impl Two {
    fn begin(lines: &str) -> Two {
        let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\njob desk \"Desk\" 2 spec\n{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let mut first = Maker::new(Currency::USD);
        first.book = story.book.clone();
        let second = first.far("second");
        let desk = story.names.job("desk").unwrap();
        let mut two = Two { phones: [first, second], story, desk };
        two.pass(0);
        two
    }

    /// So many minutes after noon; the first phone's clock is 20 minutes fast.
    fn pass(&mut self, minutes: i64) {
        self.phones[0].at(DAY, NOON + 20 + minutes, -5);
        self.phones[1].at(DAY, NOON + minutes, -5);
    }

    fn meet(&mut self) {
        let book = self.phones[0].merged(&self.phones[1]);
        self.phones.iter_mut().for_each(|phone| phone.book = book.clone());
    }

    /// What is seen on both once they met, whatever line came first.
    #[track_caller]
    fn both<T: PartialEq + std::fmt::Debug>(&self, seen: impl Fn(&Book) -> T) -> T {
        let lines: Vec<&str> = self.phones[0].book.lines().collect();
        let other = |turn: usize| Book::of_lines(lines.iter().rev().cycle().skip(turn).take(lines.len()).copied());
        let found = seen(&self.phones[1].book);
        for turn in 0..lines.len() {
            assert_eq!(seen(&other(turn)), found, "from {turn}");
        }
        found
    }
}

/// Of two words for one thing the later stands on both phones; who had the copy says the last word, however fast the other clock is.
#[test]
fn of_two_words_about_the_factor_the_later_stands() {
    let mut two = Two::begin("");
    let job = two.desk;
    for (nth, phone, with) in [(0, 0, false), (1, 1, true), (2, 0, false)] {
        two.pass(nth);
        two.phones[phone].order(Command::Estimate(EstimateCommand::SetFactor(FactorSet { job, with })));
        two.meet();
        assert_eq!(two.both(|book| fold::job(book, job).unwrap().without_factor), !with, "{nth}");
    }
}

fn looked_for(job: Id, n: Count) -> Command {
    let [thickness, width, length] = [16, 32, 320].map(sixteenths);
    let piece = SoughtPiece {
        n,
        thickness,
        width,
        length,
        wood: Some(key("ash-white")),
        there: None,
        at_least: None,
        just_thick: None,
        just_wide: None,
    };
    let (shape, pieces) = (Shape::Parts, vec![piece]);
    Command::Plan(PlanCommand::LookFor(Box::new(PiecesSought { job, shape, pieces, any: None, length: None, width: None, makes: None })))
}

/// Both look for pieces of the same plan while they are apart: it is looked for once, as said last. A pile that does for it by the one and not by
/// the other is as said last, too.
#[test]
fn what_both_look_for_is_looked_for_once() {
    let mut two = Two::begin("pile ash ash-white 1 x 2 x 20 in\ncount 9 ash\n");
    let desk = two.desk;
    let [_, second] = [(0, 3), (1, 5)].map(|(phone, n)| {
        two.pass(30 * phone as i64);
        two.phones[phone].order(looked_for(desk, n))[0]
    });
    two.meet();
    let seen = |book: &Book| fold::workshop(book).sought.iter().map(|one| (one.id, one.pieces[0].n)).collect::<Vec<_>>();
    assert_eq!(two.both(seen), [(second, 5)]);
    let pile = two.story.names.pile("ash").unwrap();
    let haul = fold::hauls(&two.phones[0].book).next().unwrap().id;
    for (phone, suits) in [(0, true), (1, false)] {
        two.pass(90 + 30 * phone as i64);
        let does = StockCommand::Suits { sought: second, nth: 0, suits };
        two.phones[phone].order(Command::Stock(Lying { haul, pile }, does));
    }
    two.meet();
    let does = |book: &Book| fold::haul(book, haul).unwrap().pile(pile).unwrap().suits.get(&(second, 0)).copied();
    assert_eq!(two.both(does), Some(false));
}

/// A gallery owes 22.46 of what it sold. Both give it up: it is given up once, nothing is due, and the sale is as it was.
#[test]
fn a_rest_that_both_give_up_is_given_up_once() {
    let sold = "till tax 0.055 inside\nconsign 2 desk tag 145 share 0.4 as lot\ngallery pays 60 for 1 desk lot lot due 22.46 as part\n";
    let mut two = Two::begin(sold);
    let job = two.desk;
    let of = fold::job(&two.phones[0].book, job).unwrap().selling.gallery_dues(Currency::USD).unwrap()[0].of;
    for phone in [0, 1] {
        two.pass(phone as i64);
        two.phones[phone].order(Command::Sale(SaleCommand::GiveUpRest(GiveUpOrder { job, of, when: None })));
    }
    two.meet();
    let seen = two.both(|book| {
        let selling = fold::job(book, job).unwrap().selling;
        let sums = [selling.given_up(Currency::USD), selling.due_from_galleries(Currency::USD)].map(|sum| sum.unwrap().to_string());
        (selling.rests_given_up.len(), sums)
    });
    assert_eq!(seen, (2, ["22.46 USD", "0.00 USD"].map(str::to_owned)));
}

/// A can of 32 fl oz at 34.90: 9.5 of it on the desk for 10.36, and 16 more for 17.45.
fn with_a_can() -> (Two, [Id; 3]) {
    let mut two = Two::begin("");
    let (what, kind, unit) = ("Oil".to_owned(), key("finish"), key("fl-oz"));
    let pack = PackOpened { what, kind, sum: two.phones[0].money("34.90"), of: Exact(d("32")), unit, when: None };
    let on = On::Job(two.desk);
    let ids = two.phones[0].order(Command::Money(MoneyCommand::OpenCan { pack, takes: Some((on, d("9.5"))) }));
    let much = Much::OfCan { can: ids[0], used: d("16") };
    let more = MoneyCommand::Spend { on, much, kind: key("finish"), what: None, when: None };
    let more = two.phones[0].order(Command::Money(more))[0];
    two.meet();
    (two, [ids[0], ids[1], more])
}

fn back_in_can(spending: Id, used: &str) -> Command {
    Command::Money(MoneyCommand::BackInCan { spending, used: d(used) })
}

/// Both put the same 9.5 back: once is all that was used, so it holds 16 as if one of them had. Both sums stay in the job, and the can says
/// what is too much of it. Struck on one phone, nothing is.
#[test]
fn what_two_phones_put_back_into_a_can_goes_back_once() {
    let (mut two, [can, first, _]) = with_a_can();
    let seen = |two: &Two, phone: usize| {
        let cans = fold::workshop(&two.phones[phone].book).cans;
        let found = cans.iter().find(|one| one.id == can).unwrap();
        (found.left().normalize().to_string(), found.beyond().normalize().to_string(), found.rest().unwrap().to_string())
    };
    assert_eq!(seen(&two, 0), ("6.5".to_owned(), "0".to_owned(), "7.09 USD".to_owned()));
    two.pass(1);
    let ids = [0, 1].map(|phone| two.phones[phone].order(back_in_can(first, "9.5"))[0]);
    two.meet();
    for phone in [0, 1] {
        assert_eq!(seen(&two, phone), ("16".to_owned(), "9.5".to_owned(), "27.81 USD".to_owned()));
    }
    let none = two.phones[0].try_order(back_in_can(first, "1"));
    assert_eq!(none, Err(Refusal::MoreBackThanUsed { back: d("1"), used: d("0") }));
    two.pass(2);
    two.phones[1].order(Command::Book(BookCommand::Strike { line: ids[1] }));
    two.meet();
    assert_eq!(seen(&two, 0), ("16".to_owned(), "0".to_owned(), "17.45 USD".to_owned()));
}

/// What went back is taken back; then all of it goes back on the other phone: what was taken back does not stand again. Of money it is the same.
#[test]
fn what_came_back_since_does_not_come_back_again() {
    let (mut two, [_, first, more]) = with_a_can();
    let money = |two: &Two, spending, sum: &str| {
        let sum = Some(two.phones[0].money(sum));
        Command::Money(MoneyCommand::ComeBack { spending, sum, n: None, what: None })
    };
    let cases = [
        (back_in_can(first, "4"), back_in_can(first, "9.5"), Refusal::MoreBackThanUsed { back: d("4"), used: d("0") }),
        (
            money(&two, more, "10"),
            money(&two, more, "9"),
            Refusal::MoreThanSpent { met: two.phones[0].money("10"), spent: two.phones[0].money("8.45") },
        ),
    ];
    for (once, since, refused) in cases {
        let act = two.phones[0].order(once)[0];
        two.phones[0].order(Command::Book(BookCommand::TakeBack { act }));
        two.meet();
        two.pass(1);
        two.phones[1].order(since);
        two.meet();
        assert_eq!(two.phones[0].try_order(Command::Book(BookCommand::Restore { act })), Err(refused));
    }
}

/// Both write down that all of a spending came back: that it is below nothing is no answer to who writes a third.
#[test]
fn what_is_spent_is_never_below_nothing_where_it_is_said() {
    let (mut two, [_, first, _]) = with_a_can();
    let back = |two: &Two, sum: &str| {
        Command::Money(MoneyCommand::ComeBack { spending: first, sum: Some(two.phones[0].money(sum)), n: None, what: None })
    };
    for phone in [0, 1] {
        let all = back(&two, "10.36");
        two.phones[phone].order(all);
    }
    two.meet();
    let (met, spent) = (two.phones[0].money("1"), two.phones[0].money("0"));
    let third = back(&two, "1");
    assert_eq!(two.phones[0].try_order(third), Err(Refusal::MoreThanSpent { met, spent }));
}

/// Two for 800 by card, one of them handed over for 400: both phones change the order to 350 for the other. What came in, what was sold before and what is
/// owed of it stand once, as does the fee of that, 3 % of the 100; what lies ahead is of both changes, and is taken off what is to come once: 33.90 are
/// kept of 1,100 in all, in three payments. Price asks for as much as the page of the job.
#[test]
fn an_order_that_both_change_counts_what_was_before_once() {
    use fivebar_core::ledger::kind::sale::{Carried, PriceAgreed};
    use fivebar_core::sheet::{job::job, marks::agreed, price::price, shop::Shop};
    for (came, found, ahead, off) in [
        ("300", ["300.00", "800.00", "0.00", "400.00", "100.00"], "0.00 USD", "33.90 USD"),
        ("500", ["500.00", "600.00", "0.00", "400.00", "0.00"], "100.00 USD", "33.90 USD"),
        // 400 lie ahead of 700 that are to come: nothing is to hand back.
        ("800", ["800.00", "300.00", "0.00", "400.00", "0.00"], "400.00 USD", "33.60 USD"),
    ] {
        let mut two = Two::begin(&format!(
            "till fee 0.03 fixed 0.30\nagree 800 for 2 desk fetched as deal\npay {came} for desk card agreed deal\nsell 1 desk for 400 agreed deal\n"
        ));
        let desk = two.desk;
        let old = fold::job(&two.phones[0].book, desk).unwrap().selling.agreements[0].id;
        for phone in [0, 1] {
            two.pass(phone as i64);
            let sum = two.phones[phone].money("350");
            let (deposit, due, buyer, rate, side) = Default::default();
            let carried = Carried::Fetched;
            let changed = PriceAgreed { job: desk, n: 1, sum, carried, deposit, due, buyer, replaces: Some(old), rate, side };
            two.phones[phone].order(Command::Sale(SaleCommand::Agree(changed)));
        }
        two.meet();
        let now = two.phones[0].shop().now;
        let seen = two.both(|book| {
            let shop = Shop::of(book, now);
            let sheet = job(&shop, desk).unwrap();
            let owed = sheet.sale.owed;
            let sums = [owed.received, owed.due, owed.others, owed.before_change, owed.before].map(|sum| format!("{:.2}", sum.amount()));
            let ahead = price(&shop, fivebar_core::ledger::kind::sale::Paid::Card).unwrap().ahead.get(&Currency::USD).copied();
            let due = agreed(&shop.job(desk).unwrap()).unwrap().unwrap().due;
            let over: Vec<String> = sheet.sale.over.iter().map(|over| over.sum.to_string()).collect();
            (sums, sheet.money.off.to_string(), ahead.unwrap().to_string(), format!("{:.2}", due.amount()), over)
        });
        let [_, due, ..] = found;
        assert_eq!(seen, (found.map(str::to_owned), off.to_owned(), ahead.to_owned(), due.to_owned(), vec![]), "{came}");
    }
}

/// Two at a gallery in two consignments, and both phones note the sale of the first: two were sold, so none is there, nor brings anything if it goes.
#[test]
fn what_is_at_galleries_is_no_more_than_is_left_of_all() {
    use fivebar_core::ledger::kind::sale::{ConsignmentPaid, Paid};
    use fivebar_core::sheet::{rest::rest, shop::Shop};
    let mut two = Two::begin(
        "spend 10 glue on desk\n09:10 start \"build\" make on desk\n10:10 stop\ntag 120 desk\n\
         consign 1 desk tag 120 share 0.4 as one\nconsign 1 desk tag 120 share 0.4 as other\n",
    );
    let job = two.desk;
    let lot = Some(fold::job(&two.phones[0].book, job).unwrap().selling.lots()[0].id);
    for phone in [0, 1] {
        two.pass(phone as i64);
        let sum = two.phones[phone].money("72");
        let (tax, gallery, when, sold_for, rate, side, due) = Default::default();
        let paid = ConsignmentPaid { job, n: 1, sum, tax, gallery, when, lot, sold_for, rate, side, due };
        two.phones[phone].order(Command::Sale(SaleCommand::NoteConsignmentPaid(paid)));
    }
    two.meet();
    let now = two.phones[0].shop().now;
    let (there, from_galleries, is_alike) = two.both(|book| {
        let rest = rest(&Shop::of(book, now), job, Paid::Card).unwrap().unwrap();
        (rest.at_galleries, rest.from_galleries.to_string(), rest.sold == rest.unsold)
    });
    assert_eq!((there, from_galleries.as_str(), is_alike), (0, "0.00 USD", true));
}
