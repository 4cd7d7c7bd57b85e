//! Costs as things: cans that several jobs use, tools that wear, what came back, where a kind belongs. Reckoned by hand beside each row.

use fivebar_core::ledger::decide::{Command, MoneyCommand, Now, On, decide};
use fivebar_core::ledger::fold::{self, Can, haul};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::PackOpened;
use fivebar_core::ledger::{Book, Fact};
use fivebar_core::quantity::{Currency, Decimal, Key, Moment, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::costs::{is_asked, on_jobs_too, twice, wear};
use fivebar_core::sheet::workshop::workshop;
use fivebar_core::story::{Story, Why, tell};

const BEGUN: &str = "
2026-03-02 09:00 -05:00 workshop USD inch
job stands \"Stands\" 2 spec
job bench \"Bench\" 1 spec
open-can 34.90 holds 32 fl-oz finish \"Danish oil\" as oil
";

fn cents(cents: i64) -> Money {
    Money::whole(Decimal::new(cents, 2).normalize(), Currency::USD).unwrap()
}

#[track_caller]
fn told(lines: &str) -> Story {
    let story = tell(&format!("{BEGUN}{lines}"));
    assert_eq!(story.refused, []);
    story
}

fn costs_of(story: &Story, job: &str) -> Money {
    account(&Shop::of(&story.book, story.now.at), story.names.job(job).unwrap()).unwrap().costs.total.unwrap_or(cents(0))
}

/// What no job carries of cans in a year: in all the years together, and in which.
fn rest(story: &Story) -> Vec<(i32, Money)> {
    let sheet = workshop(&Shop::of(&story.book, story.now.at), story.now.offset).unwrap();
    let this = (story.now.day().as_ymd().0, sheet.costs);
    let years = std::iter::once(this).chain(sheet.earlier);
    years.filter_map(|(year, costs)| Some((year, costs.get(&Currency::USD)?.of_cans))).filter(|(_, sum)| !sum.is_zero()).collect()
}

/// Cents of the stands, of the bench, and of the workshop by year.
#[track_caller]
fn check(lines: &str, jobs: [i64; 2], of_cans: &[(i32, i64)]) {
    let story = told(lines);
    assert_eq!([costs_of(&story, "stands"), costs_of(&story, "bench")], jobs.map(cents), "{lines}");
    assert_eq!(rest(&story), of_cans.iter().map(|(year, sum)| (*year, cents(*sum))).collect::<Vec<_>>(), "{lines}");
}

#[test]
fn a_can_is_shared_by_use_and_by_age_and_its_rest_is_the_workshops() {
    let both = "use-can oil 9.5 finish on stands\nuse-can oil 20 finish on bench\n";
    check("", [0, 0], &[]); // it is there, and costs nothing until it is used
    check(both, [1_036, 2_181], &[]); // 34.90 x 9.5 / 32, x 20 / 32
    check(&format!("{both}use-can oil 2.5 finish on stands\n"), [1_309, 2_181], &[]); // 2.73 more: 34.90 to the cent
    check(&format!("{both}empty-can oil\n"), [1_036, 2_181], &[(2026, 273)]);
    // Three months and a day later half of the can is 17.45 x 9 / 12; the rest of a can all used is its age.
    check("2026-06-03 09:00 use-can oil 16 finish on stands\n", [1_309, 0], &[]);
    check("2026-06-03 09:00 use-can oil 32 finish on stands\n", [2_618, 0], &[(2026, 872)]);
    // A year on it costs no job anything, and what was left is of the year of that day.
    check("use-can oil 16 finish on stands\n2027-03-01 09:00 rate pay 20\n", [1_745, 0], &[]);
    check("use-can oil 16 finish on stands\n2027-03-02 09:00 use-can oil 8 finish on bench\n", [1_745, 0], &[(2027, 1_745)]);
    // Struck, its oil is in the can again.
    check("use-can oil 32 finish on stands as all\nundo all\nuse-can oil 9.5 finish on stands\n", [1_036, 0], &[]);
}

/// Written down on 10 May with 10 January on its lid: half of 34.90 is 17.45, of which 8 of 12 months are left: 11.63, in May.
#[test]
fn what_is_used_of_a_can_as_it_is_opened_is_of_today() {
    let story = told("2026-05-10 12:00 rate pay 20\n");
    let january = Moment::at(1_768_064_400_000);
    let pack = PackOpened {
        what: "Oil".into(),
        kind: Key::read("finish").unwrap(),
        sum: cents(3_490),
        of: Exact(Decimal::from(32)),
        unit: Key::read("fl-oz").unwrap(),
        when: Some(january),
    };
    let on = On::Job(story.names.job("stands").unwrap());
    let open = Command::Money(MoneyCommand::OpenCan { pack, takes: Some((on, Decimal::from(16))) });
    let act = decide(&story.book, &open, Now { wall: story.now, chance: [1; 10] }).unwrap();
    let spent: Vec<_> =
        act.facts().iter().filter_map(|(_, it)| if let Fact::MoneySpent(f) = it { Some((f.sum, f.when)) } else { None }).collect();
    assert_eq!(spent, [(cents(1_163), None)]);
}

/// All of it is used on 10 May, and stays so where it is said to be empty in June.
#[test]
fn a_can_is_used_up_on_the_day_of_its_last_share() {
    let first = "2026-05-10 12:00 use-can oil 20 finish on stands\n";
    let earlier = "use-can oil 12 finish on bench\n";
    let one = told(&format!("2026-03-10 12:00 {earlier}{first}"));
    let can = &workshop_cans(&one)[0];
    assert_eq!(can.over(one.now.day()), Some(one.now.day()));
    let empty = told(&format!("2026-03-10 12:00 {earlier}{first}2026-06-10 12:00 empty-can oil\n"));
    assert_eq!(workshop_cans(&empty)[0].over(empty.now.day()), Some(one.now.day()));
}

fn workshop_cans(story: &Story) -> Vec<Can> {
    Shop::of(&story.book, story.now.at).workshop.cans.clone()
}

#[test]
fn no_more_is_used_of_a_can_than_is_left() {
    let d = |text: &str| text.parse::<Decimal>().unwrap();
    for (lines, why) in [
        ("use-can oil 33 finish on stands\n", Refusal::MoreThanPack { used: d("33"), holds: d("32") }),
        ("use-can oil 30 finish on stands\nuse-can oil 2.5 finish on bench\n", Refusal::MoreThanPack { used: d("2.5"), holds: d("2") }),
        ("empty-can oil\nuse-can oil 1 finish on bench\n", Refusal::MoreThanPack { used: d("1"), holds: d("0") }),
        ("open-can 3 holds 0 pieces felt \"Felt\"\n", Refusal::NothingToShareBy),
    ] {
        let story = tell(&format!("{BEGUN}{lines}"));
        assert_eq!(story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), [Why::Refused(why)], "{lines}");
    }
}

/// 30 of 32 used, 20 went back, and all of it taken back; 20 used elsewhere leave 12, and what comes again needs 10.
#[test]
fn what_went_back_of_a_spending_comes_again_with_it() {
    let lines = "use-can oil 30 finish on stands as first\nback-in-can 20 first\nundo first\n";
    for (since, refused) in
        [(20, None), (23, Some(Why::Refused(Refusal::MoreThanPack { used: Decimal::from(10), holds: Decimal::from(9) })))]
    {
        let story = tell(&format!("{BEGUN}{lines}use-can oil {since} finish on bench\nrestore first\n"));
        assert_eq!(story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), refused.into_iter().collect::<Vec<_>>(), "{since}");
    }
}

/// So many lots out of a seed: small, so that ages, ends and rounding all come up.
struct Lots(u64);

impl Lots {
    fn below(&mut self, most: u64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from((self.0 >> 33) % most).unwrap()
    }
}

/// What a share costs by domain.md 6, in whole cents: price x used / holds x (12 - months open) / 12, half up, and no more than is not
/// charged yet.
fn share_by_hand(paid: i64, (used, holds): (i64, i64), months: i64, charged: i64) -> i64 {
    let (over, under) = (paid * used * (12 - months).max(0), holds * 12);
    ((2 * over + under) / (2 * under)).min(paid - charged)
}

/// Law: whatever is used of a can and when, each share is what price, part and age make it, jobs never carry more than was paid, and with the
/// can gone jobs and workshop together carry just that.
#[test]
fn jobs_and_workshop_carry_what_a_can_cost_and_no_more() {
    let mut lots = Lots(20_260_302);
    for _ in 0..120 {
        let (paid, holds) = (1 + lots.below(9_000), 1 + lots.below(40));
        let (opened, mut month, mut day) = (lots.below(28) + 1, 0, 0);
        let date = |month: i64, day: i64| format!("{}-{:02}-{day:02}", 2026 + month / 12, month % 12 + 1);
        let mut lines =
            format!("{} 10:00 open-can {}.{:02} holds {holds} ml glue \"Glue\" as can\n", date(0, opened), paid / 100, paid % 100);
        let (mut by_job, mut left, mut charged) = ([0, 0], holds, 0);
        for _ in 0..=lots.below(6) {
            let used = lots.below(u64::try_from(holds).unwrap() + 1).min(left);
            month += lots.below(5);
            day = if month == 0 { opened } else { (lots.below(28) + 1).max(day) };
            let of = usize::try_from(lots.below(2)).unwrap();
            let sum = share_by_hand(paid, (used, holds), if day < opened { month - 1 } else { month }, charged);
            (left, charged, by_job[of]) = (left - used, charged + sum, by_job[of] + sum);
            lines += &format!("{} 11:00 use-can can {used} glue on {}\n", date(month, day), ["stands", "bench"][of]);
        }
        lines += &format!("{} 12:00 empty-can can\n", date(month, day));
        let story = tell(&format!("{}{lines}", BEGUN.replace("2026-03-02", "2026-01-01").split("open-can").next().unwrap()));
        assert_eq!(story.refused, [], "{lines}");
        assert_eq!([costs_of(&story, "stands"), costs_of(&story, "bench")], by_job.map(cents), "{lines}");
        let of_cans = rest(&story).iter().fold(cents(0), |sum, (_, rest)| sum.plus(*rest).unwrap());
        assert!(charged <= paid, "{lines}");
        assert_eq!(of_cans, cents(paid - charged), "{lines}");
    }
}

/// A saw of 1,200 that fetches 200 after four years: 250 a year, or half of what is left, until as much is more.
#[test]
fn the_wear_of_a_year_is_summed_over_the_tools() {
    let saw = "tool 1200 years 4 \"Saw\" salvage 200\n";
    let halves = "tool 1200 years 4 \"Jointer\" salvage 200 share 0.5\n"; // 600, 300, 100, nothing
    let before = "tool 90 years 3 \"Clamps\" when 2025-05-01\n"; // 30 a year, the second of three
    for (lines, years) in [
        ("", vec![(2026, None)]),
        (saw, vec![(2025, Some(0)), (2026, Some(25_000)), (2029, Some(25_000)), (2030, Some(0))]),
        (halves, vec![(2026, Some(60_000)), (2027, Some(30_000)), (2028, Some(10_000)), (2029, Some(0))]),
        (before, vec![(2025, Some(3_000)), (2026, Some(3_000)), (2028, Some(0))]),
        (&format!("{saw}{halves}{before}"), vec![(2026, Some(88_000))]),
    ] {
        let story = told(lines);
        let shop = Shop::of(&story.book, story.now.at);
        for (year, wanted) in years {
            assert_eq!(wear(&shop.workshop, Currency::USD, year), Ok(wanted.map(cents)), "{lines} in {year}");
        }
        assert_eq!(shop.workshop.rates.get(&Currency::USD), None, "never written by itself");
    }
}

#[test]
fn a_tool_that_none_is_is_refused() {
    for (line, why) in [
        ("tool 1200 years 0 \"Saw\"\n", Refusal::YearsOutOfRange { met: 0, least: 1, most: 60 }),
        ("tool 1200 years 4 \"Saw\" salvage 1201\n", Refusal::MoreThanPrice { met: cents(120_100), price: cents(120_000) }),
        ("tool 1200 years 4 \" \"\n", Refusal::NameMissing),
    ] {
        let story = tell(&format!("{BEGUN}{line}"));
        assert_eq!(story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), [Why::Refused(why)], "{line}");
    }
}

/// A kind that a job has, and the rate too.
#[test]
fn a_kind_is_twice_where_the_job_and_the_rate_have_it() {
    for (lines, asked, both) in [
        ("", true, false),
        ("spend 40 power\n", true, true),
        ("spend 40 power when 2025-06-01\n", true, false), // another year's
        ("spend 40 power\nbelongs power job\n", false, false),
        ("belongs power rate\n", false, true),
        ("belongs power rate\nbelongs power job\n", false, false),
    ] {
        let story = told(lines);
        let (shop, power) = (Shop::of(&story.book, story.now.at), Key::read("power").unwrap());
        assert_eq!(is_asked(&shop.workshop, Currency::USD, &power), asked, "{lines}");
        let kinds = twice(&shop.workshop, (Currency::USD, 2026), [power.clone()].into_iter());
        assert_eq!(kinds, if both { vec![power] } else { vec![] }, "{lines}");
    }
}

/// The same seen from the workshop's page: what was spent on no job this year, and jobs carry too.
#[test]
fn a_kind_of_the_workshops_is_twice_where_jobs_have_it() {
    for (lines, both) in [
        ("spend 40 power\n", false),
        ("spend 40 power\nspend 2 power on stands\n", true),
        ("spend 40 power\nspend 2 power on stands as two\nundo two\n", false),
        ("spend 40 power\nspend 2 power on stands when 2025-06-01\n", false), // another year's
        ("spend 40 power when 2025-06-01\nspend 2 power on stands\n", false),
        ("spend 40 power\nbelongs power job\n", true), // nothing on a job yet, and it will be
        ("spend 40 power\nspend 2 power on stands\nbelongs power rate\n", false), // the job says it
        ("spend 40 rent\nspend 2 other on stands\n", false),
    ] {
        let story = told(lines);
        let kinds = on_jobs_too(&story.book, &Shop::of(&story.book, story.now.at).workshop, (Currency::USD, 2026));
        assert_eq!(kinds, if both { vec![Key::read("power").unwrap()] } else { vec![] }, "{lines}");
    }
}

/// Bolts of 7.60: 2.00 come back, and no more than 5.60 after that.
#[test]
fn no_more_comes_back_than_was_spent() {
    let bolts = "spend 7.60 bolts on stands as bolts\n";
    check(bolts, [760, 0], &[]);
    check(&format!("{bolts}came-back 2 bolts\n"), [560, 0], &[]);
    check(&format!("{bolts}came-back 2 bolts\ncame-back 5.60 bolts \"salvage\"\n"), [0, 0], &[]);
    check(&format!("{bolts}came-back 2 bolts\nundo bolts\nspend 1 felt on stands\n"), [100, 0], &[]); // it goes with its spending
    let story = tell(&format!("{BEGUN}{bolts}came-back 2 bolts\ncame-back 5.61 bolts\n"));
    let refused = Why::Refused(Refusal::MoreThanSpent { met: cents(561), spent: cents(560) });
    assert_eq!(story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), [refused]);
}

/// Hinges of 18.00 were wrong and were swapped for others of 24.00: the old ones fetch 5.00, and 40 minutes went into it. The job bears what was spent
/// net, 37.00, the swap is rework, and what was fetched is no sale.
#[test]
fn a_swapped_part_is_spent_net_of_its_salvage() {
    let swapped = "spend 18 bolts on stands as old\nspend 24 bolts on stands as new\ncame-back 5 old \"salvage\"\n\
        start \"swap\" make on stands rework\n09:40 stop\n";
    check(swapped, [3_700, 0], &[]);
    let story = told(swapped);
    let shop = Shop::of(&story.book, story.now.at);
    let job = shop.job(story.names.job("stands").unwrap()).unwrap();
    assert!(job.selling.taken(job.currency).unwrap().is_zero());
    let swap = shop.bench.on(fivebar_core::bench::On::Job(job.id)).find(|run| run.work.op == "swap").unwrap();
    assert_eq!((swap.work.rework, swap.worked(shop.now).as_minutes()), (true, 40));
}

/// A blade of 64.50 for no job, 24.50 of it back, and 12 miles for glue at 0.70: 48.40. Struck, the blade takes along what came back of it.
#[test]
fn costs_of_no_job_come_back_and_are_driven_too() {
    let blade = "spend 64.50 edges \"blade\" as blade\n";
    let (back, drive) = ("came-back 24.50 blade\n", "drive 12 miles at 0.70 \"for glue\"\n");
    for (lines, year) in [
        (blade.to_owned(), 6_450),
        (format!("{blade}{back}"), 4_000),
        (format!("{blade}{back}{drive}"), 4_840),
        (format!("{blade}{back}{drive}undo blade\n"), 840),
        (format!("{blade}{back}{drive}undo blade\nrestore blade\n"), 4_840),
    ] {
        let story = told(&lines);
        let sheet = workshop(&Shop::of(&story.book, story.now.at), story.now.offset).unwrap();
        assert_eq!(sheet.costs.get(&Currency::USD).map(|costs| costs.total), Some(cents(year)), "{lines}");
    }
    let refused = tell(&format!("{BEGUN}{blade}{back}came-back 40.01 blade\n")).refused;
    let more = Refusal::MoreThanSpent { met: cents(4_001), spent: cents(4_000) };
    assert_eq!(refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>(), [Why::Refused(more)]);
}

/// A gift of 11.40 for the yard, of which 2.00 came back: struck, it takes that along, whatever comes first. Undone, both are there again.
#[test]
fn what_came_back_of_a_hauls_spending_goes_with_it() {
    let gift = "leave for yard\nspend 11.40 gift on yard as gift\nspend 3 gift on yard\ncame-back 2 gift\n";
    for (more, cents_left) in [("", 1_240), ("undo gift\n", 300), ("undo gift\nrestore gift\n", 1_240)] {
        let story = told(&format!("{gift}{more}"));
        let yard = story.names.haul("yard").unwrap();
        let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
        for turn in 0..lines.len() {
            let turned = lines.iter().rev().cycle().skip(turn).take(lines.len()).map(String::as_str);
            let haul = haul(&Book::of_lines(turned), yard).unwrap();
            assert_eq!(haul.spent(), Ok(cents(cents_left)), "{more} from {turn}");
        }
    }
}

/// 1200 down to 200 over four years: 250 a year. Sold in the third year 700 are left of its cost; in the fourth 450, in the sixth 200.
#[test]
fn a_tool_that_was_sold_wears_no_more() {
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\ntool 1200 years 4 \"Saw\" salvage 200 as saw\n";
    for (sold, wear, gain) in [
        ("", ["250", "250", "250", "250"], None),
        ("2028-05-01 09:00 tool-sold 750 saw", ["250", "250", "0", "0"], Some("50")),
        ("2029-05-01 09:00 tool-sold 400 saw", ["250", "250", "250", "0"], Some("-50")),
        ("2031-05-01 09:00 tool-sold 200 saw", ["250", "250", "250", "250"], Some("0")),
        ("2031-05-01 09:00 tool-sold 100 saw when 2026-12-31", ["0", "0", "0", "0"], Some("-1100")),
    ] {
        let story = tell(&format!("{start}{sold}"));
        assert_eq!(story.refused, [], "{sold}");
        let tool = fold::workshop(&story.book).tools[0].clone();
        let worn = [2026, 2027, 2028, 2029].map(|year| tool.wear_of(year).unwrap().normalize().to_string());
        assert_eq!(worn, wear.map(str::to_owned), "{sold}");
        assert_eq!(tool.gain().unwrap().map(|gain| gain.amount().to_string()), gain.map(str::to_owned), "{sold}");
    }
    for (line, why) in [
        ("tool-sold 10 saw when 2025-12-31", "EndNotAfterStart"),
        ("tool-sold 10 saw when 2027-12-31", "NotYet"),
        ("tool-sold 10 saw\ntool-sold 10 saw", "NotThere"),
    ] {
        let refused = tell(&format!("{start}{line}")).refused;
        assert!(format!("{refused:?}").contains(why), "{line}: {refused:?}");
    }
}
