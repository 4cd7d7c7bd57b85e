//! The sums of a year by hand, and against those of all jobs.

use super::*;
use crate::sheet::account::of as account_of;
use crate::story::{BENCH, STANDS, Story, tell};

const START: &str =
    "2026-03-02 09:00 -05:00 workshop USD inch\ntill tax 0.055 inside fee 0.03\njob stools \"Stools\" 3 spec\njob desk \"Desk\" 1 order\n";

/// Came in, given back, tax, fees, on jobs, on wood, workshop, left.
fn found(story: &Story, year: i32) -> [String; 8] {
    let sums = sums(&Shop::of(&story.book, story.now.at), Currency::USD, year).unwrap();
    let all = [
        sums.came_in,
        sums.given_back,
        sums.tax,
        sums.fees,
        sums.spent_on_jobs().unwrap(),
        sums.on_wood,
        sums.workshop,
        sums.left().unwrap(),
    ];
    all.map(|sum| sum.to_string().trim_end_matches(" USD").to_owned())
}

fn told(lines: &str) -> Story {
    let story = tell(&format!("{START}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

/// 145 by card holds 7.56 of tax and costs 4.35; 12 of glue and 7.50 of pay are the job's, 30 of light the workshop's: 145 - 7.56 - 4.35 - 19.50 - 30.
#[test]
fn a_year_by_hand() {
    let story = told(
        "person ada helper\nspend 12 glue on stools\nspend 30 light\nstart \"sand\" make on stools\nhelper joins ada 15\n09:30 stop\n\
        sell 1 stools for 145 card\n",
    );
    assert_eq!(found(&story, 2026), ["145.00", "0.00", "7.56", "4.35", "19.50", "0.00", "30.00", "83.59"]);
    assert_eq!(found(&story, 2025), ["0.00"; 8]);
    let shop = Shop::of(&story.book, story.now.at);
    let sums = sums(&shop, Currency::USD, 2026).unwrap();
    let by_kind: Vec<_> = sums.on_jobs.iter().map(|(kind, sum)| format!("{kind} {sum}")).collect();
    assert_eq!(by_kind, ["glue 12.00 USD", "helper 7.50 USD"]);
    assert_eq!(hours(&shop, 2026, story.now.offset).map(Span::as_minutes), [30, 30]);
    assert_eq!(years(&shop, 2027), Ok(vec![2027, 2026]));
}

/// A deposit of 100 is of the year it came in; the order comes to nothing in the next, and 60 of it go back then. A sale of 145 comes back in the next year too.
#[test]
fn what_goes_back_is_of_the_year_it_went_in() {
    let lines = "till tax 0\nagree 400 for 1 desk fetched deposit 100 as deal\npay 100 for desk notes agreed deal\nsell 1 stools for 145 notes as one\n\
        2027-01-08 10:00 cancel deal on desk kept 40\nreverse sale one on stools\n";
    let story = told(lines);
    assert_eq!(found(&story, 2026), ["245.00", "0.00", "0.00", "0.00", "0.00", "0.00", "0.00", "245.00"]);
    assert_eq!(found(&story, 2027), ["0.00", "205.00", "0.00", "0.00", "0.00", "0.00", "0.00", "-205.00"]);
}

/// Law: of all years together what came in less what went back is what the jobs received, fees and spending are theirs and the workshop's, and so is tax.
#[test]
fn the_years_add_up_to_the_jobs_and_the_workshop() {
    let odd = told(
        "till tax 0.055 cash 0.05\nconsign 1 stools tag 145 share 0.4 maker-pays\ngallery pays 90.02 for 1 stools tax 7.56\nsell 2 stools for 280.03 notes as two\n\
        agree 400 for 1 desk fetched deposit 100 as deal\npay 100 for desk card agreed deal\n2027-02-01 09:00 reverse sale two on stools\n\
        cancel deal on desk kept 40\nspend 10 glue on desk\nspend 8 light\n",
    );
    for story in [tell(STANDS), tell(BENCH), odd] {
        let shop = Shop::of(&story.book, story.now.at);
        let currency = jobs(&story.book).next().unwrap().currency;
        let all = years(&shop, 2026).unwrap().into_iter().map(|year| sums(&shop, currency, year).unwrap()).listed();
        let sum = |of: &dyn Fn(&YearSums) -> Money| Money::sum(currency, all.iter().map(of)).unwrap();
        let accounts = jobs(&story.book).map(|job| account_of(&shop, &job).unwrap()).listed();
        let jobs = |of: &dyn Fn(&crate::sheet::account::Account) -> Money| Money::sum(currency, accounts.iter().map(of)).unwrap();
        assert_eq!(
            sum(&|year| year.came_in.minus(year.given_back).unwrap()),
            jobs(&|job| job.sold.received.plus(job.sold.handed_over).unwrap())
        );
        assert_eq!((sum(&|year| year.fees), sum(&|year| year.tax)), (jobs(&|job| job.sold.fees), jobs(&|job| job.sold.tax)));
        let on_rack = hauls(&story.book).filter_map(|of| haul::haul(&shop, of.id).unwrap().rack).map(|share| share.cost);
        let carried =
            jobs(&|job| Money::sum(currency, job.costs.by_kind.values().copied()).unwrap()).plus(Money::sum(currency, on_rack).unwrap());
        assert_eq!(sum(&|year| year.spent_on_jobs().unwrap().plus(year.on_wood).unwrap()), carried.unwrap());
    }
}
