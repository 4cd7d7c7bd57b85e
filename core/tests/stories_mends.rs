//! The story of a day that is put right: what each job had before and after, by hand. 9 March 2026.

use fivebar_core::bench::{Kind, On, Stage};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::bench::Seen;
use fivebar_core::sheet::helped::{helped, stays};
use fivebar_core::sheet::hours::week;
use fivebar_core::sheet::{Shop, account, changes::changes};
use fivebar_core::story::{Story, tell};

const MENDS: &str = include_str!("../../tests/stories/mends.txt");

/// Own and labour minutes of a job, what helpers cost it, its waits, and its pieces.
#[track_caller]
fn check(story: &Story, job: &str, (own, labour, cost): (i64, i64, Option<&str>), (waits, pieces): (usize, u32)) {
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let of = shop.job(story.names.job(job).unwrap()).unwrap();
    let account = account::of(&shop, &of).unwrap();
    let logged = account.hours.logged.clone();
    assert_eq!((logged.own.total().as_minutes(), logged.labour.as_minutes()), (own, labour), "{job}");
    assert_eq!(account.cost("helper").map(|cost| cost.to_string()).as_deref(), cost, "{job}");
    let on = On::Job(of.id);
    assert_eq!(fold::waits(&story.book).all().filter(|wait| wait.job == Some(of.id)).count(), waits, "{job}");
    assert_eq!(shop.bench.on(on).map(fivebar_core::bench::Run::done).sum::<u32>(), pieces, "{job}");
}

/// 08:00 to 10:00 with a helper from 09:00 at 18, and 10:00 to 11:00: 120 + 60 of own time, 60 of the helper's.
#[test]
fn before_noon_all_of_it_is_the_stools() {
    let story = tell(MENDS.split("# --- At noon").next().unwrap());
    check(&story, "stools", (180, 240, Some("18.00 USD")), (1, 3));
    check(&story, "shelf", (0, 0, None), (0, 0));
}

/// One more helper at 12, 08:15 to 08:45 put right to 08:30 to 09:00: 30 minutes, 6. The shelf has 18 + 6, and 180 + 60 + 30.
#[test]
fn at_noon_the_shelf_has_the_minutes_the_pieces_the_waits_and_the_helpers() {
    let story = tell(MENDS);
    check(&story, "stools", (0, 0, None), (0, 0));
    check(&story, "shelf", (180, 270, Some("24.00 USD")), (1, 3));
    let shop = Shop::of(&story.book, story.now.at);
    let shelf = shop.job(story.names.job("shelf").unwrap()).unwrap();
    let who: Vec<_> = helped(&shop, On::Job(shelf.id), shelf.currency).unwrap();
    assert_eq!(
        who.iter().map(|one| (one.person, one.time.as_minutes(), one.pay.to_string())).collect::<Vec<_>>(),
        [(None, 90, "24.00 USD".to_owned())]
    );
    let run = shop.bench.on(On::Job(shelf.id)).next().unwrap();
    assert_eq!((run.work.op.as_str(), run.work.kind, run.work.stage), ("oil", Kind::Make, Stage::Finish));
    let clock = |at| fivebar_core::quantity::Wall::new(at, run.started.offset).clock().as_hour_minute();
    let shown: Vec<_> = stays(run, story.now.at).unwrap().iter().map(|stay| (clock(stay.from), stay.to.map(clock))).collect();
    assert_eq!(shown, [((8, 30), Some((9, 0))), ((9, 0), Some((10, 0)))]);
    // What was written stays, each word with its time: the job, the operation, a helper, their times.
    let said = changes((&fivebar_core::ledger::fold::bench(&story.book), &story.book), run.id);
    assert_eq!(
        said.iter()
            .map(|one| (one.on.is_some(), one.op.is_some(), one.helper.map(|of| of.how == fivebar_core::sheet::changes::How::Forgotten)))
            .collect::<Vec<_>>(),
        [(true, false, None), (false, true, None), (false, false, Some(true)), (false, false, Some(false))]
    );
    let seen = Seen { now: story.now, ..Seen::default() };
    let sheet = week((&shop.bench, &story.book), story.now.day(), seen);
    assert_eq!(
        (sheet.along.0, sheet.along.1.iter().map(ToString::to_string).collect::<Vec<_>>()),
        (Span::minutes(90), vec!["24.00 USD".to_owned()])
    );
}
