//! Facts of jobs, money and the workshop: what arrives early, late or in another currency, and what the till and the copy know.

mod maker;

use fivebar_core::bench::{Kind, On as WorkOn, Stage};
use fivebar_core::ledger::decide::{
    BenchCommand, BookCommand, Command, HaulCommand, JobCommand, MoneyCommand, PileFacts, PlanCommand, WoodCommand,
};
use fivebar_core::ledger::decide::{Much, On, SaleCommand, SellOrder};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::haul::{Per, TripDescribed, Way};
use fivebar_core::ledger::kind::job::PartPlanned;
use fivebar_core::ledger::kind::money::{RateSet, TillSet};
use fivebar_core::ledger::kind::sale::{OfferHeard, Paid, SellingGuessed};
use fivebar_core::ledger::kind::wood::SpeciesAdded;
use fivebar_core::quantity::{Currency, Decimal, Length, Money, Offset, Span, Units};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::haul as haul_sheet;
use fivebar_core::sheet::rate::{RatePart, rate};
use fivebar_core::sheet::{account, carried, job, price, workshop};
use maker::{Maker, begun, d, key, refused, shown, sixteenths};

fn rate_of(currency: Currency) -> RateSet {
    RateSet { currency, pay: None, lowest: None, hours: None, logged: None, costs: None, wear: None, tax: None, profit: None }
}

fn till_of(currency: Currency) -> TillSet {
    TillSet::of(currency)
}

fn exact(text: &str) -> Option<Exact> {
    Some(Exact(d(text)))
}

#[test]
fn unknown_is_none_and_never_nothing() {
    let (maker, job) = begun(2);
    let account = account::account(&maker.shop(), job).unwrap();
    assert_eq!((account.costs.total, account.hours.total, account.hours.still), (None, None, None));
    assert_eq!((account.sold.kept, account.sold.agreed, account.ratios), (None, None, account::Ratios::default()));
    let pricing = account.pricing;
    assert_eq!((pricing.marks.costs_covered, pricing.ask, pricing.settle, pricing.hourly.your_rate), (None, None, None, None));
    let gaps = price::price(&maker.shop(), Paid::Card).unwrap().for_sale[0].gaps.clone();
    assert_eq!(gaps, [price::Gap::Tag, price::Gap::Costs, price::Gap::Hours, price::Gap::Rate]);
    assert_eq!(job::job(&maker.shop(), job).unwrap().next, job::NextAct::TakeWood);
}

#[test]
fn the_rate_is_said_a_part_at_a_time() {
    let (mut maker, _) = begun(1);
    let set = |maker: &mut Maker, facts| maker.order(Command::Money(MoneyCommand::SetRate(facts)));
    set(&mut maker, RateSet { pay: exact("22"), ..rate_of(Currency::USD) });
    set(&mut maker, RateSet { hours: exact("480"), ..rate_of(Currency::USD) });
    assert_eq!(rate(&maker.shop(), Currency::USD).stack, None);
    set(&mut maker, RateSet { logged: exact("300"), ..rate_of(Currency::USD) });
    let costs = Some(maker.money("2640"));
    set(&mut maker, RateSet { costs, ..rate_of(Currency::USD) });
    let sheet = rate(&maker.shop(), Currency::USD);
    assert_eq!(shown(sheet.stack.unwrap().per_hour, 2), "44.00");
    assert_eq!(sheet.missing, [RatePart::Wear, RatePart::Tax, RatePart::Profit, RatePart::Lowest]);
    set(&mut maker, RateSet { profit: exact("0.1"), ..rate_of(Currency::USD) });
    assert_eq!(shown(rate(&maker.shop(), Currency::USD).stack.unwrap().per_hour, 2), "48.40");
    assert_eq!(rate(&maker.shop(), Currency::EUR).stack, None, "each currency has its own");
}

#[test]
fn rates_and_tills_that_cannot_be_are_refused() {
    let (mut maker, _) = begun(1);
    let usd = Currency::USD;
    let mut no = |facts, refusal| refused(&mut maker, Command::Money(MoneyCommand::SetRate(facts)), refusal);
    no(RateSet { logged: exact("0"), ..rate_of(usd) }, Refusal::NoHours);
    no(RateSet { pay: exact("-1"), ..rate_of(usd) }, Refusal::BelowNothing { met: d("-1") });
    no(RateSet { tax: exact("1"), ..rate_of(usd) }, Refusal::ShareOutOfRange { met: Decimal::ONE });
    let hours = |n: i64| Span::minutes(60 * n);
    let beyond = Refusal::LoggedBeyondAll { logged: hours(50), all: hours(40) };
    no(RateSet { hours: exact("40"), logged: exact("50"), ..rate_of(usd) }, beyond);
    let out_of_reach = Refusal::RateOutOfReach { tax: d("0.5"), profit: Decimal::ONE };
    no(RateSet { tax: exact("0.5"), profit: exact("1"), ..rate_of(usd) }, out_of_reach);
    let euro = Money::whole(Decimal::ONE, Currency::EUR).unwrap();
    let mixed = Refusal::CurrenciesMixed { one: usd, other: Currency::EUR };
    no(RateSet { costs: Some(euro), ..rate_of(usd) }, mixed.clone());
    let mut no = |facts, refusal| refused(&mut maker, Command::Money(MoneyCommand::SetTill(facts)), refusal);
    no(TillSet { fee: exact("1.2"), ..till_of(usd) }, Refusal::ShareOutOfRange { met: d("1.2") });
    no(TillSet { tax: exact("-0.1"), ..till_of(usd) }, Refusal::BelowNothing { met: d("-0.1") });
    no(TillSet { fixed: Some(euro), ..till_of(usd) }, mixed);
}

#[test]
fn inv07_spending_has_one_home_and_one_currency() {
    let (mut maker, job) = begun(1);
    let spend = |on, much| Command::Money(MoneyCommand::Spend { on, much, kind: key("glue"), what: None, when: None });
    let drive = |on, currency| {
        let distance = Length::MILE.times(10).unwrap();
        Command::Money(MoneyCommand::Drive { on, distance, rate: None, currency, what: None, when: None, delivery: None })
    };
    let euro = Money::whole(Decimal::ONE, Currency::EUR).unwrap();
    let mixed = Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR };
    refused(&mut maker, spend(On::Job(job), Much::Whole(euro)), mixed);
    let minus = maker.money("-1");
    refused(&mut maker, spend(On::Job(job), Much::Whole(minus)), Refusal::MoneyBelowNothing { met: minus });
    let much = Much::Share { used: d("33"), of: d("32"), pack: maker.money("34.90") };
    refused(&mut maker, spend(On::Job(job), much), Refusal::MoreThanPack { used: d("33"), holds: d("32") });
    refused(&mut maker, drive(On::Workshop, Currency::USD), Refusal::MileageUnknown { currency: Currency::USD });
    refused(&mut maker, spend(On::Haul(job), Much::Whole(euro)), Refusal::NotThere);
    maker.order(Command::Money(MoneyCommand::SetTill(TillSet { mileage: exact("0.5"), per: Some(Per::Mile), ..till_of(Currency::USD) })));
    maker.order(drive(On::Workshop, Currency::USD));
    maker.order(spend(On::Workshop, Much::Whole(euro)));
    let (five, two) = (maker.money("5"), maker.money("2"));
    maker.order(spend(On::Job(job), Much::Whole(five)));
    maker.order(spend(On::Job(job), Much::Credit(two)));
    assert_eq!(account::account(&maker.shop(), job).unwrap().costs.total, Some(maker.money("3")));
    let sheet = workshop::workshop(&maker.shop(), Offset::UTC).unwrap();
    let total = |currency| sheet.costs.get(&currency).unwrap().total;
    assert_eq!((total(Currency::USD), total(Currency::EUR)), (five, euro));
    maker.at((2027, 1, 2), 600, -5);
    assert!(workshop::workshop(&maker.shop(), Offset::UTC).unwrap().costs.is_empty(), "another year");
}

#[test]
fn a_batch_sells_no_more_than_it_has() {
    let (mut maker, job) = begun(3);
    let sell = |maker: &Maker, n| {
        let sum = maker.money("50");
        Command::Sale(SaleCommand::Sell(SellOrder {
            job,
            n,
            sum,
            tax: None,
            agreed: None,
            paid: None,
            carried: None,
            buyer: None,
            when: None,
            heard: false,
        }))
    };
    let two = sell(&maker, 2);
    maker.order(two.clone());
    refused(&mut maker, two, Refusal::NotThatMany { asked: 2, there: 1 });
    assert_eq!(maker.shop().job(job).unwrap().due(), Ok(maker.money("50")), "sold and not paid");
    let sale = maker.shop().job(job).unwrap().selling.sales[0].id;
    maker.order(Command::Book(BookCommand::TakeBack { act: sale }));
    assert_eq!(maker.shop().job(job).unwrap().left(), 3);
    let three = sell(&maker, 3);
    maker.order(three);
    assert_eq!(job::job(&maker.shop(), job).unwrap().next, job::NextAct::Collect { due: maker.money("50") });
}

#[test]
fn guesses_that_say_nothing_are_refused() {
    let (mut maker, job) = begun(1);
    let guess = SellingGuessed { asks: exact("1.5"), buys: exact("0.25"), k: exact("2"), ..SellingGuessed::nothing(job) };
    let flat = SellingGuessed { k: exact("1.05"), ..guess.clone() };
    refused(&mut maker, Command::Sale(SaleCommand::Guess(flat)), Refusal::GuessTooFlat { met: d("1.05"), above: d("1.05") });
    let all = SellingGuessed { buys: exact("1.1"), ..guess.clone() };
    refused(&mut maker, Command::Sale(SaleCommand::Guess(all)), Refusal::ShareOutOfRange { met: d("1.1") });
    let met = maker.money("-1");
    let paid = SellingGuessed { each_day: Some(met), ..guess.clone() };
    refused(&mut maker, Command::Sale(SaleCommand::Guess(paid)), Refusal::MoneyBelowNothing { met });
    let late = SellingGuessed { no_show: exact("-0.1"), ..guess.clone() };
    refused(&mut maker, Command::Sale(SaleCommand::Guess(late)), Refusal::ShareOutOfRange { met: d("-0.1") });
    maker.order(Command::Sale(SaleCommand::Guess(guess)));
    let more = SellingGuessed { k: exact("3"), ..SellingGuessed::nothing(job) };
    maker.order(Command::Sale(SaleCommand::Guess(more)));
    let guesses = maker.shop().job(job).unwrap().selling.guesses;
    assert_eq!((guesses.asks, guesses.k), (Some(d("1.5")), Some(d("3"))));
    let sum = maker.money("40");
    maker.order(Command::Sale(SaleCommand::Hear(OfferHeard {
        job,
        n: 1,
        sum,
        paid: Some(Paid::Notes),
        carried: None,
        said: None,
        asked: None,
    })));
    assert_eq!(maker.shop().job(job).unwrap().selling.offers[0].sum, sum);
}

#[test]
fn a_paid_helper_is_a_cost_of_the_job() {
    let (mut maker, job) = begun(1);
    let run = maker.start(WorkOn::Job(job), "assemble", (Kind::Make, Stage::Make));
    let pay = Some(maker.money("15"));
    maker.order(Command::Bench(BenchCommand::HelperJoins { run, person: None, pay }));
    maker.pass(40);
    maker.order(Command::Bench(BenchCommand::Stop { run }));
    let account = account::account(&maker.shop(), job).unwrap();
    assert_eq!((account.cost("helper"), account.hours.total), (Some(maker.money("10")), Some(Span::minutes(40))));
    assert_eq!(account.hours.logged.labour, Span::minutes(80));
}

#[test]
fn people_are_forgotten_and_copies_grow_old() {
    let (mut maker, _) = begun(1);
    let supplier = maker.order(Command::Book(BookCommand::AddPerson { role: Role::Supplier }))[0];
    let other = maker.order(Command::Book(BookCommand::AddPerson { role: Role::Supplier }))[0];
    maker.order(Command::Book(BookCommand::Forget { person: supplier }));
    maker.pass(1);
    let upto = maker.shop().now;
    maker.order(Command::Book(BookCommand::NoteCopy { upto }));
    maker.pass(60);
    maker.order(Command::Book(BookCommand::SetWorkshop { currency: Some(Currency::USD), units: Some(Units::Inch) }));
    let sheet = workshop::workshop(&maker.shop(), Offset::UTC).unwrap();
    assert_eq!(sheet.suppliers, [other]);
    let copy = sheet.copy.unwrap();
    assert_eq!((copy.since, sheet.copy_age), (1, Some(Span::minutes(60))));
    assert_eq!((sheet.currency, sheet.units), (Some(Currency::USD), Some(Units::Inch)));
}

/// A job in dollars from a haul in euro asks for one agreed figure; the minutes are shared all the same.
#[test]
fn a_haul_of_another_currency_asks_for_one_figure() {
    let (mut maker, job) = begun(1);
    maker.currency = Currency::EUR;
    let haul = maker.trip(None, Length::KM.times(10).unwrap(), ("0.30", Per::Km), (20, 10));
    let pile = maker.pile(haul, None, [maker::mm(20), maker::mm(50), maker::mm(500)], 10);
    maker.take(haul, pile, job, 5);
    maker.currency = Currency::USD;
    let reckoned = account::account(&maker.shop(), job).unwrap();
    assert_eq!((reckoned.costs.total, reckoned.hours.total), (None, None));
    let mixed = Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR };
    assert_eq!(carried::freeze_for(&maker.shop(), &maker.shop().job(job).unwrap()), Err(mixed));
    maker.whole(On::Job(job), carried::HAUL, "2.00");
    let reckoned = account::account(&maker.shop(), job).unwrap();
    assert_eq!((reckoned.costs.total, reckoned.hours.total), (Some(maker.money("2")), Some(Span::minutes(15))));
    maker.end(job);
    assert_eq!(account::account(&maker.shop(), job).unwrap().costs.total, Some(maker.money("2")));
    assert!(haul_sheet::haul(&maker.shop(), haul).unwrap().rack.is_some());
}

/// A drive is priced by its own rate, else as the till has it; until there is one, what it cost is not known, and never nothing.
#[test]
fn a_drive_without_a_rate_is_not_known() {
    let (mut maker, job) = begun(1);
    let haul = maker.order(Command::Haul(HaulCommand::Leave { haul: None, currency: Currency::USD, units: Units::Inch }));
    let (haul, trip) = (haul[0], haul[1]);
    let pile = maker.pile(haul, None, [sixteenths(16); 3], 10);
    maker.take(haul, pile, job, 5);
    maker.whole(On::Haul(haul), "gift", "4.00");
    maker.whole(On::Job(job), "glue", "1.00");
    maker.run(WorkOn::Haul(haul), "sorting", (Kind::Fetch, Stage::Sort), 30);
    let figures = |maker: &Maker| {
        let (shop, money) = (maker.shop(), |sum: Option<Money>| sum.map(|sum| sum.amount().to_string()));
        let (of_haul, of_job) = (haul_sheet::haul(&shop, haul).unwrap(), account::account(&shop, job).unwrap());
        assert_eq!((of_job.hours.total, of_haul.rack.is_some()), (Some(Span::minutes(15)), true), "the minutes are known");
        assert_eq!(of_haul.cost_per_good.is_some(), of_haul.costs.is_some());
        (money(of_haul.costs), money(of_job.cost(carried::HAUL)), money(of_job.costs.total))
    };
    let some = |sum: &str| Some(sum.to_owned());
    assert_eq!(figures(&maker), (some("4"), some("2"), some("3")));
    let distance = Some(Length::MILE.times(10).unwrap());
    let said = TripDescribed { distance, ..TripDescribed::of(haul, trip) };
    maker.order(Command::Haul(HaulCommand::DescribeTrip(said.clone())));
    assert_eq!(figures(&maker), (None, None, None));
    let unknown = Err(Refusal::MileageUnknown { currency: Currency::USD });
    assert_eq!(carried::freeze_for(&maker.shop(), &maker.shop().job(job).unwrap()), unknown);
    maker.order(Command::Money(MoneyCommand::SetTill(TillSet { mileage: exact("0.5"), per: Some(Per::Mile), ..till_of(Currency::USD) })));
    assert_eq!(figures(&maker), (some("9"), some("4.5"), some("5.5")));
    maker.order(Command::Haul(HaulCommand::DescribeTrip(TripDescribed { rate: exact("0"), per: Some(Per::Mile), ..said })));
    assert_eq!(figures(&maker), (some("4"), some("2"), some("3")), "its own rate comes first");
    maker.end(job);
}

/// A design makes jobs for years: the wood of its parts stays known.
#[test]
fn the_wood_of_a_design_is_in_use() {
    let (mut maker, job) = begun(1);
    let plum = SpeciesAdded {
        key: key("plum"),
        name: "Plum".into(),
        density: Exact(d("700")),
        tangential: None,
        radial: None,
        from: None,
        gone: None,
    };
    maker.order(Command::Wood(WoodCommand::AddSpecies(plum.clone())));
    let gone = Command::Wood(WoodCommand::AddSpecies(SpeciesAdded { gone: Some(true), ..plum }));
    maker.part(job, ("leg", 4), [32, 32, 320].map(sixteenths), "plum");
    maker.order(Command::Plan(PlanCommand::KeepDesign { job, name: "Stool".into() }));
    refused(&mut maker, gone.clone(), Refusal::WoodInUse { uses: 2 });
    let [thickness, width, length] = [16, 16, 160].map(sixteenths);
    let none = PartPlanned { job, name: "leg".into(), n: 0, thickness, width, length, wood: None };
    maker.order(Command::Job(JobCommand::PlanPart(none)));
    refused(&mut maker, gone.clone(), Refusal::WoodInUse { uses: 1 });
    maker.order(Command::Plan(PlanCommand::DropDesign { name: "Stool".into() }));
    maker.order(gone);
}

/// A sale that was paid is one act: taken back by its payment, it is taken back whole, and put back whole.
#[test]
fn an_act_of_a_job_is_taken_back_whole() {
    let (mut maker, job) = begun(3);
    let sum = maker.money("50");
    let paid = Some(Paid::Notes);
    let order = SellOrder { job, n: 1, sum, tax: None, agreed: None, paid, carried: None, buyer: None, when: None, heard: false };
    let act = *maker.order(Command::Sale(SaleCommand::Sell(order))).last().unwrap();
    let sold = |maker: &Maker| {
        let selling = maker.shop().job(job).unwrap().selling;
        (selling.gone(), selling.received(Currency::USD).unwrap())
    };
    assert_eq!(sold(&maker), (1, sum));
    maker.order(Command::Book(BookCommand::TakeBack { act }));
    assert_eq!(sold(&maker), (0, maker.money("0")));
    maker.order(Command::Book(BookCommand::Restore { act }));
    assert_eq!(sold(&maker), (1, sum));
    // Of the yard each tap is struck for itself: the pile that a count began stays.
    let pile = PileFacts::default();
    let begin = HaulCommand::Begin { currency: Currency::USD, units: Units::Inch, pile, n: 5, way: Way::Tap };
    let ids = maker.order(Command::Haul(begin));
    maker.order(Command::Book(BookCommand::TakeBack { act: ids[2] }));
    let haul = fold::haul(&maker.book, ids[0]).unwrap();
    assert_eq!((haul.piles.len(), haul.taken()), (1, 0));
}

/// Spent on the last evening of the year, it is a cost of that year, also where the next one had begun by another clock.
#[test]
fn a_cost_is_of_the_year_it_was_in_where_it_was_spent() {
    for (east, this, next) in [(-5, 1, 0), (0, 1, 0), (9, 1, 0)] {
        let mut maker = Maker::new(Currency::USD);
        maker.at((2026, 12, 31), 23 * 60 + 30, east).whole(On::Workshop, "glue", "5");
        let lines = |maker: &Maker| {
            let sheet = workshop::workshop(&maker.shop(), Offset::UTC).unwrap();
            sheet.costs.get(&Currency::USD).map_or(0, |year| year.lines.len())
        };
        assert_eq!(lines(maker.at((2026, 7, 1), 600, 0)), this, "{east}");
        assert_eq!(lines(maker.at((2027, 7, 1), 600, 0)), next, "{east}");
    }
}
