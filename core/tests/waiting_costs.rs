//! What waiting costs, said in the book: minutes for those who ask, keeping it a day, and those who never turn up.

use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Decimal, Money, Span};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::waiting::{Costs, Known, Prospect, Stands, known, waiting};
use fivebar_core::story::{Story, Why, tell};
use std::rc::Rc;

/// One cabinet at a workshop that takes 16 an hour at the least, guessed on the first of June.
const CABINET: &str = "2026-06-01 09:00 -04:00 workshop USD inch
rate lowest 16
job cabinet \"Cabinet\" 1 spec
tag 1200 cabinet
guess cabinet asks 2 buys 0.2 at 420 k 2 by 2026-06-23 end 300";

fn told(text: &str) -> Story {
    let story = tell(text);
    assert_eq!(story.refused, [], "{text}");
    story
}

fn reckoned(story: &Story, job: &str) -> Rc<Known> {
    let shop = Shop::of(&story.book, story.now.at);
    known(&shop, &shop.job(story.names.job(job).unwrap()).unwrap()).unwrap().unwrap()
}

fn under(story: &Story, job: &str) -> f64 {
    reckoned(story, job).worth.as_ref().unwrap().waits.under(1).unwrap()
}

fn page(story: &Story, job: &str) -> Prospect {
    let shop = Shop::of(&story.book, story.now.at);
    match waiting(&shop, story.names.job(job).unwrap(), Paid::Notes).unwrap().stands {
        Stands::Found(prospect) => *prospect,
        stands => panic!("{stands:?}"),
    }
}

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

/// By hand, for one piece without tax and fee: the best price is s + V, so with y = e^(V / s) the value follows
/// dy/dτ = K - (C / s) y, K = λ b e^((p_ref - s) / s), and y(τ) = K s / C + (y(0) - K s / C) e^(-C τ / s).
/// s = 0.2 x 420 / ln 2; 2 a week ask, one in five of them never turns up; 15 min at 16 an hour are 4.00 for each who asks, and
/// keeping it is 1.50 a day: C = 2 / 7 x 4 + 1.50.
#[test]
fn what_is_said_of_waiting_lowers_not_under_as_reckoned_by_hand() {
    let (s, days) = (0.2 * 420.0 / 2.0_f64.ln(), 22.0);
    let by_hand = |no_show: f64, costs: f64| {
        let k = 2.0 / 7.0 * (1.0 - no_show) * 0.2 * ((420.0 - s) / s).exp();
        let (start, rest) = ((300.0 / s).exp(), k * s / costs);
        s * (rest + (start - rest) * (-costs * days / s).exp()).ln()
    };
    for (more, no_show, costs) in [
        ("each-ask 15", 0.0, 2.0 / 7.0 * 4.0),
        ("each-day 1.50", 0.0, 1.5),
        ("each-ask 15 each-day 1.50 no-show 0.2", 0.2, 2.0 / 7.0 * 4.0 + 1.5),
    ] {
        let (ours, theirs) = (under(&told(&format!("{CABINET} {more}")), "cabinet"), by_hand(no_show, costs));
        assert!((ours - theirs).abs() < 1e-4, "{more}: {ours}, not {theirs}");
    }
}

/// The longer each who asks takes, the less waiting is worth; never less than the end.
#[test]
fn not_under_falls_as_the_minutes_rise() {
    let mut before = under(&told(CABINET), "cabinet");
    for minutes in ["5", "15", "45", "120", "480"] {
        let now = under(&told(&format!("{CABINET}\nguess cabinet each-ask {minutes}")), "cabinet");
        assert!((now < before || before <= 300.0 + 1e-9) && 300.0 - 1e-9 <= now, "{minutes} min: {now} after {before}");
        before = now;
    }
    assert!((before - 300.0).abs() < 1e-9, "eight hours for each who asks leave the end alone: {before}");
}

/// The fourth row of `patience.csv`: 8 ask a week, 35 in 100 would buy at 775, k 3, 56 days, 8 pieces worth 581.25 in the end, tax 20 %
/// inside, card 2.6 %, four in ten never turn up, 4.00 for each who asks (20 min at 12), 1.50 a day. Its value, one more, not under, ask.
#[test]
fn a_published_row_through_the_book() {
    let story = told(
        "2026-06-01 09:00 -04:00 workshop USD inch
rate lowest 12
till tax 0.2 inside fee 0.026
job chests \"Chests\" 8 spec
guess chests asks 8 buys 0.35 at 775 k 3 by 2026-07-27 end 581.25 each-ask 20 each-day 1.50 no-show 0.4",
    );
    let known = reckoned(&story, "chests");
    let waits = &known.worth.as_ref().unwrap().waits;
    let ours = [waits.value(), waits.one_more(), waits.under(1).unwrap(), waits.best_ask()];
    for (ours, theirs) in ours.into_iter().zip([5109.3814, 600.5497, 743.8683, 884.9554]) {
        assert!((ours / theirs - 1.0_f64).abs() < 1e-4, "{ours}, not {theirs}");
    }
    assert_eq!(page(&story, "chests").costs, Costs { each_ask: Some(Span::minutes(20)), pay: Some(Decimal::from(12)), ..said() });
}

fn said() -> Costs {
    Costs { each_ask: None, pay: None, each_day: Some(usd("1.50")), no_show: Some("0.4".parse().unwrap()) }
}

/// Minutes without a lowest pay cost nothing that is known; what was said earlier stays while another is said.
#[test]
fn minutes_cost_what_the_lowest_pay_says() {
    let without = CABINET.replace("rate lowest 16\n", "");
    let unpaid = told(&format!("{without} each-ask 15"));
    assert_eq!(under(&unpaid, "cabinet"), under(&told(CABINET), "cabinet"));
    assert_eq!(page(&unpaid, "cabinet").costs, Costs { each_ask: Some(Span::minutes(15)), ..Costs::default() });
    let later = told(&format!("{CABINET} each-ask 15\nguess cabinet each-day 1.50\nguess cabinet no-show 0.2"));
    let at_once = told(&format!("{CABINET} each-ask 15 each-day 1.50 no-show 0.2"));
    assert_eq!(under(&later, "cabinet"), under(&at_once, "cabinet"));
}

#[test]
fn costs_beyond_the_limits_are_refused_by_name() {
    let refused = |line: &str| match tell(&format!("{CABINET}\nguess cabinet {line}")).refused.pop() {
        Some((_, Why::Refused(refusal))) => refusal,
        other => panic!("{line}: {other:?}"),
    };
    let n = |text: &str| text.parse::<Decimal>().unwrap();
    assert_eq!(refused("no-show 1"), Refusal::ShareOutOfRange { met: n("1") });
    let most = Span::minutes(8 * 60);
    assert_eq!(refused("each-ask 481"), Refusal::HoursOutOfRange { met: Span::minutes(481), least: Span::ZERO, most });
}
