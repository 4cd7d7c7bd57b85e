//! Five ash plant stands with cherry pegs: every figure, through orders and folds, to the cent.

mod maker;

use fivebar_core::bench::{Kind, On as WorkOn, Stage};
use fivebar_core::ledger::decide::{
    BenchCommand, Command, HaulCommand, JobCommand, MoneyCommand, On, PaidOf, PayOrder, SaleCommand, SellOrder,
};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::money::{BoardPriceSet, Measure, RateSet, TillSet};
use fivebar_core::ledger::kind::sale::{Carried, ConsignmentPaid, Paid, PiecesConsigned};
use fivebar_core::money::charge::Terms;
use fivebar_core::money::offer::Verdict;
use fivebar_core::money::price::{Mark, marks};
use fivebar_core::quantity::{Count, Currency, Decimal, Id, Length, Side, Span, Units, Volume};
use fivebar_core::sheet::gallery::at_galleries;
use fivebar_core::sheet::offer::{Ask, Asking, offer};
use fivebar_core::sheet::{account, buyer, haul, jobs, look_back, price};
use maker::{Maker, d, shown, sixteenths};

const MAKE: (Kind, Stage) = (Kind::Make, Stage::Make);
const FINISH: (Kind, Stage) = (Kind::Make, Stage::Finish);
const SELL: (Kind, Stage) = (Kind::Sell, Stage::Sell);

struct Story {
    maker: Maker,
    haul: Id,
    job: Id,
    piles: [Id; 4],
}

fn workshop(maker: &mut Maker) {
    let exact = |text: &str| Some(Exact(d(text)));
    let costs = Some(maker.money("1050"));
    maker.order(Command::Money(MoneyCommand::SetRate(RateSet {
        currency: Currency::USD,
        pay: exact("16"),
        lowest: exact("12"),
        hours: exact("420"),
        logged: exact("350"),
        costs,
        wear: None,
        tax: None,
        profit: None,
    })));
    let fixed = Some(maker.money("0.10"));
    maker.order(Command::Money(MoneyCommand::SetTill(TillSet {
        tax: exact("0.055"),
        side: Some(Side::Inside),
        fee: exact("0.026"),
        fixed,
        mileage: exact("0.725"),
        per: Some(Per::Mile),
        ..TillSet::of(Currency::USD)
    })));
}

fn board_price(maker: &mut Maker) {
    let facts = BoardPriceSet { currency: Currency::USD, amount: Exact(d("4.75")), per: Measure::BoardFoot, wood: None };
    maker.order(Command::Money(MoneyCommand::SetBoardPrice(facts)));
}

fn fetch(maker: &mut Maker) -> (Id, [Id; 4]) {
    maker.at((2026, 3, 3), 9 * 60, -5);
    let haul = maker.trip(None, Length::MILE.times(23).unwrap(), ("0.725", Per::Mile), (46, 38));
    maker.whole(On::Haul(haul), "gift", "11.40");
    let inch = |a, b, c| [sixteenths(a), sixteenths(b), sixteenths(c)];
    let strips = maker.pile(haul, Some("ash-white"), inch(17, 36, 344), 64);
    let squares = maker.pile(haul, Some("ash-white"), inch(28, 28, 304), 38);
    let cherry = maker.pile(haul, Some("cherry-black"), inch(13, 48, 176), 22);
    let blocks = maker.pile(haul, None, inch(32, 64, 144), 9);
    maker.pass(180);
    maker.run(WorkOn::Haul(haul), "sort", (Kind::Fetch, Stage::Sort), 52);
    maker.reject(haul, strips, &[("end-check", 8), ("twist", 5), ("glue-or-paint", 2), ("short", 2)]);
    maker.reject(haul, squares, &[("end-check", 6), ("knot", 2), ("metal", 1)]);
    maker.reject(haul, cherry, &[("sapwood", 3), ("crack", 2)]);
    maker.reject(haul, blocks, &[("wet", 9)]);
    (haul, [strips, squares, cherry, blocks])
}

fn make(maker: &mut Maker, haul: Id, [strips, squares, cherry, _]: [Id; 4]) -> Id {
    maker.at((2026, 3, 10), 8 * 60, -4);
    let (name, currency) = ("plant stands".into(), Currency::USD);
    let job = maker.order(Command::Job(JobCommand::Begin { name, currency, units: Units::Inch, pieces: 5, made_for: For::Spec }))[0];
    let inch = |a, b, c| [sixteenths(a), sixteenths(b), sixteenths(c)];
    maker.part(job, ("top", 1), inch(14, 152, 152), "ash-white");
    maker.part(job, ("leg", 4), inch(24, 24, 288), "ash-white");
    maker.part(job, ("rail", 4), inch(12, 28, 128), "ash-white");
    maker.part(job, ("peg", 8), inch(8, 8, 12), "cherry-black");
    maker.take(haul, strips, job, 25);
    maker.take(haul, squares, job, 20);
    maker.take(haul, cherry, job, 5);
    let on = WorkOn::Job(job);
    for (op, minutes) in [("trim", 41), ("joint and rip", 63), ("thickness", 37)] {
        maker.run(on, op, MAKE, minutes);
    }
    let glue = maker.run(on, "glue tops", MAKE, 192); // over lunch
    let begun = maker.shop().bench.run(glue).unwrap().started.at;
    let stop = Some(begun.plus(Span::minutes(47)));
    maker.order(Command::Bench(BenchCommand::Mend { run: glue, start: None, stop, op: None }));
    maker.run(on, "glue tops", MAKE, 1); // wiping
    for (op, minutes) in [("flatten and square", 29), ("bore", 96), ("taper", 72), ("sand", 158), ("pegs", 34), ("dry fit", 25)] {
        maker.run(on, op, MAKE, minutes);
    }
    for (op, minutes) in [("assemble", 66), ("scrape", 21), ("pads", 28), ("rework a leg", 36)] {
        maker.run(on, op, MAKE, minutes);
    }
    for coat in [33, 24, 19] {
        maker.run(on, "coat", FINISH, coat);
    }
    maker.run(on, "photos and tags", SELL, 40);
    spend(maker, On::Job(job));
    job
}

fn spend(maker: &mut Maker, on: On) {
    maker.whole(on, "glue", "2.33");
    maker.each(on, "abrasives", ("14", "0.62"));
    maker.share(on, "finish", ("9.5", "32"), "34.90");
    maker.whole(on, "hardware", "2.20");
    maker.whole(on, "tags", "3.25");
    maker.each(on, "power", ("4.6", "0.17"));
    maker.whole(on, "edges", "6.00");
}

fn sell_one(maker: &mut Maker, job: Id, sum: &str, paid: Paid) {
    let order = SellOrder {
        job,
        n: 1,
        sum: maker.money(sum),
        tax: None,
        agreed: None,
        paid: Some(paid),
        carried: Some(Carried::Fetched),
        buyer: None,
        when: None,
        heard: false,
    };
    maker.order(Command::Sale(SaleCommand::Sell(order)));
}

fn to_market(maker: &mut Maker, job: Id) {
    maker.at((2026, 4, 18), 7 * 60, -4);
    let sum = maker.money("145");
    maker.order(Command::Money(MoneyCommand::SetTag { job, sum }));
    maker.whole(On::Job(job), "stall", "65.00");
    maker.drive(On::Job(job), Length::MILE.times(18).unwrap());
    maker.run(WorkOn::Job(job), "market", SELL, 570);
}

fn sell(maker: &mut Maker, job: Id) {
    sell_one(maker, job, "145", Paid::Card);
    sell_one(maker, job, "145", Paid::Card);
    sell_one(maker, job, "145", Paid::Notes);
    sell_one(maker, job, "130", Paid::Notes);
    let tag = maker.money("145");
    maker.order(Command::Sale(SaleCommand::Consign(PiecesConsigned {
        job,
        n: 1,
        tag,
        share: Exact(d("0.4")),
        with_tax: None,
        maker_pays: None,
        gallery: None,
        when: None,
    })));
}

fn gallery_pays(maker: &mut Maker, job: Id) {
    let there = at_galleries(&maker.shop(), &maker.shop().job(job).unwrap()).unwrap()[0];
    let sum = there.of_one.handed_over;
    assert_eq!((there.n, sum), (1, maker.money("82.46")));
    maker.order(Command::Sale(SaleCommand::NoteConsignmentPaid(ConsignmentPaid {
        job,
        n: 1,
        sum,
        tax: None,
        gallery: None,
        when: None,
        lot: None,
        sold_for: None,
        rate: None,
        side: None,
        due: None,
    })));
}

fn before_selling() -> Story {
    let mut maker = Maker::new(Currency::USD);
    maker.at((2026, 3, 1), 600, -5);
    workshop(&mut maker);
    board_price(&mut maker);
    let (haul, piles) = fetch(&mut maker);
    let job = make(&mut maker, haul, piles);
    Story { maker, haul, job, piles }
}

fn at_market() -> Story {
    let mut story = before_selling();
    to_market(&mut story.maker, story.job);
    story
}

fn whole() -> Story {
    let mut story = at_market();
    sell(&mut story.maker, story.job);
    gallery_pays(&mut story.maker, story.job);
    story
}

fn bf(volume: Option<Volume>, digits: u32) -> String {
    shown(volume.unwrap().board_feet(), digits)
}

fn percent(part: Option<Decimal>) -> String {
    shown(part.unwrap() * d("100"), 1)
}

#[test]
fn the_haul() {
    let Story { maker, haul, piles, .. } = before_selling();
    let haul = haul::haul(&maker.shop(), haul).unwrap();
    let pieces = &haul.pieces;
    assert_eq!((pieces.taken, pieces.rejected, pieces.good), (133, 40, 93));
    assert_eq!((pieces.used, pieces.on_rack), (50, 43));
    let per_pile: Vec<(Count, Count, Count, String)> =
        haul.piles.iter().map(|pile| (pile.pieces.taken, pile.pieces.rejected, pile.pieces.good, bf(pile.volumes.good, 2))).collect();
    let row = |taken, rejected, good, volume: &str| (taken, rejected, good, volume.to_owned());
    assert_eq!(per_pile, [row(64, 17, 47, "16.78"), row(38, 9, 29, "11.72"), row(22, 5, 17, "3.17"), row(9, 9, 0, "0.00")]);
    assert_eq!(piles.map(|id| haul.piles.iter().find(|pile| pile.pile == id).unwrap().pieces.on_rack), [22, 9, 12, 0]);
    assert_eq!(
        (bf(haul.volumes.gross, 2), bf(haul.volumes.good, 2), bf(haul.volumes.used, 2)),
        ("46.80".into(), "31.66".into(), "17.94".into())
    );
    assert_eq!(format!("{:.1}", haul.weight.unwrap().as_lb()), "163.5");
    let load = fivebar_core::ledger::fold::haul(&maker.book, haul.haul).unwrap().load();
    assert_eq!((format!("{:.1}", load.mass.as_lb()), load.warns()), ("163.5".into(), false));
    assert!(haul.weight_guessed);
    assert_eq!(haul.costs, Some(maker.money("28.08")));
    assert_eq!(shown(haul.cost_per_good.unwrap(), 2), "0.89");
    assert_eq!((haul.wheel.as_minutes(), haul.bin.as_minutes(), haul.sorting.as_minutes()), (46, 38, 52));
    assert_eq!(percent(haul.volumes.used.unwrap().share_of(haul.volumes.good.unwrap()).ok()), "56.7");
}

#[test]
fn what_was_made() {
    let Story { maker, job, .. } = before_selling();
    let account = account::account(&maker.shop(), job).unwrap();
    let wood = &account.wood;
    assert_eq!((bf(wood.finished, 2), bf(wood.finished_piece, 3)), ("9.88".into(), "1.975".into()));
    assert_eq!((percent(wood.finished_of_used), percent(wood.finished_of_gross)), ("55.1".into(), "21.1".into()));
    assert_eq!(percent(wood.finished_of_gross_less_leftovers), "29.9");
    let logged = &account.hours.logged;
    assert_eq!((logged.kind(Kind::Make).as_minutes(), logged.kind(Kind::Sell).as_minutes()), (830, 40));
    assert_eq!((logged.own.total().as_minutes(), logged.own.corrected.as_minutes()), (870, 47));
    assert_eq!(logged.rework.as_minutes(), 36);
    assert_eq!(account.hours.haul, Some(Span::minutes(77)));
    assert_eq!(account.costs.total, Some(maker.money("49.51")));
    let kinds = [("haul", "15.91"), ("abrasives", "8.68"), ("finish", "10.36"), ("power", "0.78"), ("edges", "6.00")];
    for (kind, sum) in kinds {
        assert_eq!(account.cost(kind), Some(maker.money(sum)), "{kind}");
    }
    let threefold = fivebar_core::money::price::multiple(maker.money("49.51"), d("0.6")).unwrap(); // three times, for each of five
    assert_eq!(threefold, maker.money("29.71"));
    assert_eq!(wood.replacement, Some(maker.money("67.03")));
    assert_eq!(shown(wood.finished.unwrap().board_feet() / d("0.7"), 2), "14.11");
}

#[test]
fn what_was_left() {
    let Story { maker, job, .. } = whole();
    let account = account::account(&maker.shop(), job).unwrap();
    let sold = &account.sold;
    let money = |text| maker.money(text);
    assert_eq!((sold.taken, sold.tax, sold.fees), (money("565"), money("29.46"), money("7.74")));
    assert_eq!((sold.handed_over, sold.net), (money("82.46"), money("610.26")));
    assert_eq!((account.costs.total, sold.kept), (Some(money("127.56")), Some(money("482.70"))));
    assert_eq!(account.driven(), Some(money("13.05")));
    assert_eq!((sold.pieces, sold.by_galleries, sold.left, sold.due), (4, 1, 0, money("0")));
    assert_eq!(account.hours.total, Some(Span::minutes(1_517)));
    assert_eq!(shown(account.hours.total.unwrap().hours(), 2), "25.28");
    let kinds = [Kind::Fetch, Kind::Make, Kind::Sell].map(|kind| account.hours.by_kind.get(&kind).unwrap().as_minutes());
    assert_eq!(kinds, [77, 830, 610]);
    let stages: Vec<(Stage, i64)> = jobs::so_far(&account.hours).into_iter().map(|(stage, span)| (stage, span.as_minutes())).collect();
    let bar = [(Stage::Fetch, 48), (Stage::Sort, 29), (Stage::Make, 754), (Stage::Finish, 76), (Stage::Sell, 610)];
    assert_eq!(stages, bar);
    let per_hour = sold.per_hour.unwrap();
    assert_eq!(shown(per_hour.left, 2), "19.09");
    assert_eq!(shown(per_hour.after_workshop.unwrap(), 2), "16.09");
    assert_eq!(shown(per_hour.every_hour.unwrap(), 2), "13.41");
    assert_eq!(shown(account.pricing.hourly.your_rate.unwrap(), 2), "22.20");
}

#[test]
fn marks_on_the_scale_of_one_stand() {
    let Story { maker, job, .. } = at_market();
    let shop = maker.shop();
    let account = account::account(&shop, job).unwrap();
    let pricing = &account.pricing;
    let both = |mark: Option<Mark>| mark.map(|mark| [mark.half_up, mark.holds]).unwrap();
    assert_eq!(both(pricing.marks.costs_covered), ["27.78", "27.79"].map(|sum| maker.money(sum)));
    assert_eq!(both(pricing.marks.your_rate), [maker.money("149.56"); 2]);
    assert_eq!(pricing.proposed.unwrap().charge, maker.money("150"));
    assert_eq!((pricing.tag, pricing.ask), (Some(maker.money("145")), Some(maker.money("145"))));
    assert_eq!(pricing.settle, None);
    let card: Terms = shop.terms(Currency::USD, Paid::Card);
    // At nothing 27.78, and at 25 an hour 164.91, would leave less than they promise: what is shown keeps it.
    let alike = [("15", "110.06"), ("20", "137.49"), ("22.20", "149.56")].map(|(pay, mark)| (pay, mark, mark));
    for (pay, half_up, holds) in alike.into_iter().chain([("0", "27.78", "27.79"), ("25", "164.91", "164.92")]) {
        let hourly = fivebar_core::money::price::Hourly { lowest_pay: Some(d(pay)), your_rate: None };
        let marks = marks(&pricing.work, hourly, card, 1).unwrap();
        assert_eq!(both(marks.lowest_pay), [half_up, holds].map(|sum| maker.money(sum)), "{pay}");
    }
}

fn ask(paid: Paid, n: Count) -> Asking {
    Asking { n, paid, carried: Carried::Fetched, tax: None }
}

#[test]
fn offers_at_the_market() {
    let Story { maker, job, .. } = at_market();
    let shop = maker.shop();
    for (sum, paid, left) in [("145", Paid::Card, "21.37"), ("145", Paid::Notes, "22.13"), ("130", Paid::Notes, "19.32")] {
        let sheet = offer(&shop, job, ask(paid, 1), Some(maker.money(sum))).unwrap();
        assert_eq!(shown(sheet.left.unwrap().per_hour.left, 2), left, "{sum} {paid:?}");
    }
    let word = |sum: &str, n| offer(&shop, job, ask(Paid::Card, n), Some(maker.money(sum))).unwrap().verdict.unwrap();
    assert_eq!(word("145", 1), Verdict::Yes);
    assert_eq!(word("130", 1), Verdict::BelowYourRate { your_rate: maker.money("149.56") });
    assert_eq!(word("20", 1), Verdict::UnderWhatYouSpent { costs_covered: maker.money("27.79") });
    assert_eq!(word("300", 2), Verdict::Yes);
    let sheet = offer(&shop, job, ask(Paid::Card, 1), Some(maker.money("130"))).unwrap();
    let notes = sheet.concessions[0];
    assert_eq!((notes.ask, notes.more), (Ask::Notes, maker.money("3.48")));
    assert!(offer(&shop, job, ask(Paid::Card, 6), None).is_err());
}

#[test]
fn lists_and_the_side_turned_to_the_buyer() {
    let Story { mut maker, job, .. } = at_market();
    let rows = jobs::jobs(&maker.shop(), "plant").unwrap();
    assert_eq!((rows.len(), rows[0].section, rows[0].left), (1, jobs::Section::ForSale, 5));
    assert_eq!(jobs::jobs(&maker.shop(), "table").unwrap(), []);
    let sheet = price::price(&maker.shop(), Paid::Card).unwrap();
    assert_eq!((sheet.for_sale[0].left, sheet.for_sale[0].gaps.len()), (5, 0));
    let turned = buyer::buyer(&maker.shop(), job, (None, Paid::Card)).unwrap();
    assert_eq!(turned.price, Some(maker.money("145")));
    for private in ["127.56", "27.78", "149.56", "22.2", "49.51"] {
        assert!(!format!("{turned:?}").contains(private), "inv15: {private}");
    }
    sell(&mut maker, job);
    assert_eq!(price::price(&maker.shop(), Paid::Card).unwrap().for_sale, []);
}

#[test]
fn a_sale_taken_back_reverses_its_line() {
    let Story { mut maker, job, .. } = at_market();
    sell_one(&mut maker, job, "145", Paid::Card);
    let sale = maker.shop().job(job).unwrap().selling.sales[0].id;
    let reverse = fivebar_core::ledger::kind::sale::SaleReversed { job, sale, kept: None, when: None, back: None };
    maker.order(Command::Sale(SaleCommand::Reverse(reverse.clone())));
    let sold = account::account(&maker.shop(), job).unwrap().sold;
    let none = maker.money("0");
    assert_eq!((sold.left, sold.taken, sold.tax, sold.due, sold.received), (5, none, none, none, none));
    assert_eq!(sold.fees, maker.money("3.87"), "the card keeps its fee");
    assert!(maker.try_order(Command::Sale(SaleCommand::Reverse(reverse))).is_err());
    let pay = PayOrder { job, sum: maker.money("1"), paid: Paid::Notes, fee: None, of: PaidOf::Sale(sale), when: None };
    assert!(maker.try_order(Command::Sale(SaleCommand::Pay(pay))).is_err());
}

#[test]
fn a_job_that_ended_keeps_its_figures() {
    let Story { mut maker, haul, job, piles } = whole();
    maker.end(job);
    let before = account::account(&maker.shop(), job).unwrap();
    assert_eq!(before.costs.total, Some(maker.money("127.56")));
    maker.reject(haul, piles[0], &[("worm", 10)]);
    maker.whole(On::Haul(haul), "gift", "5.00");
    let after = account::account(&maker.shop(), job).unwrap();
    assert_eq!((after.costs.total, after.hours.total), (before.costs.total, before.hours.total));
    assert_eq!(after.wood.used, before.wood.used);
    let reckoned = haul::haul(&maker.shop(), haul).unwrap();
    assert_eq!(reckoned.jobs[0].1.cost, maker.money("15.91"));
    let (rack, borne) = (reckoned.rack.unwrap().cost, reckoned.workshop.unwrap().cost);
    assert!(Decimal::ZERO < borne.amount());
    assert_eq!(maker.money("15.91").plus(rack).unwrap().plus(borne), Ok(maker.money("33.08")), "nothing is lost");
    maker.order(Command::Job(JobCommand::Reopen { job }));
    assert_ne!(account::account(&maker.shop(), job).unwrap().cost("haul"), Some(maker.money("15.91")));
    assert!(maker.try_order(Command::Haul(HaulCommand::Take { haul, pile: piles[0], job, n: 99 })).is_err());
}

#[test]
fn inv03_any_order_of_lines_gives_the_same_account() {
    let Story { maker, job, .. } = whole();
    let shuffled = maker.shuffled();
    let shop = fivebar_core::sheet::Shop::of(&shuffled, maker.shop().now);
    assert_eq!(account::account(&shop, job), account::account(&maker.shop(), job));
}

#[test]
fn looking_back() {
    let Story { maker, job, .. } = whole();
    let back = look_back::look_back(&maker.shop(), job).unwrap();
    assert_eq!((back.ratios.hours, back.estimate), (None, None));
    assert_eq!(shown(back.ratios.wood.unwrap(), 3), "1.224"); // 55.1 % of used, 45 % assumed
    assert_eq!(shown(back.ratios.price.unwrap(), 3), "0.974"); // 565 of 580
    assert_eq!(back.furthest.unwrap().which, look_back::Which::Wood);
}
