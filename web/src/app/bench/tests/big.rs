//! Big buttons, and the cautions that stand over them and over the bench.

use super::*;

#[test]
fn big_buttons_keep_the_screen_awake_and_are_left_by_a_hold() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    let now = told.now(28);
    assert_eq!(told.app.heard(tap(Tap::Big), now), [Order::Awake(true), Order::Remember(BIG_AT)]);
    let shown = told.at(28, []);
    holds(&shown, &["Assemble", ">28</span>", "+1 done", "Stop", "Hold to leave", "The screen stays on"]);
    lacks(&shown, &["<nav", "Workshop"]);
    assert_eq!(shown.matches("<button").count(), 4);
    holds(&told.at(29, [tap(Tap::Done)]), &["1 done", "pieces done"]);
    holds(&told.at(29, [Msg::Common(Common::TakeBack)]), &["0 done", "Do it again"]);
    holds(&told.at(30, [tap(Tap::Stop)]), &["Carry on", "Nothing runs"]);
    let carry = sheet(&told.app).carry_on.unwrap();
    holds(&told.at(31, [tap(Tap::Board(carry))]), &["+1 done"]);
    let now = told.now(32);
    assert!(told.app.heard(Msg::Go(Place::Count), now).contains(&Order::Awake(true)));
    assert!(told.app.heard(Msg::Go(Place::Price), now).contains(&Order::Awake(false)));
    assert!(told.app.heard(Msg::Go(Place::Bench), now).contains(&Order::Awake(true)));
    assert_eq!(told.app.heard(tap(Tap::LeaveBig), now), [Order::Awake(false), Order::Remember("bench")]);
    lacks(&told.at(33, []), &["Hold to leave"]);
}

/// Big buttons are there again after the page was loaded anew, where something runs; else the bench is.
#[test]
fn big_buttons_come_back_while_something_runs() {
    let check = |stopped: bool, comes_back: bool| {
        let mut told = Told::stands();
        told.at(0, [tap(Tap::Other), op("Trim"), tap(Tap::Big)]);
        assert_eq!(told.app.address(), BIG_AT);
        if stopped {
            told.at(5, [tap(Tap::Stop)]);
        }
        (told.app.bench.over, told.app.place) = (Over::Nothing, Place::Count);
        told.app.begin_at(BIG_AT);
        opened(&mut told.app);
        assert_eq!((told.app.place, matches!(told.app.bench.over, Over::Big)), (Place::Bench, comes_back), "{stopped}");
    };
    check(false, true);
    check(true, false);
}

#[test]
fn cautions_stand_where_they_are_needed_once_a_day() {
    let check = |big: &[Msg]| cautioned(Told::stands(), big);
    check(&[]);
    check(&[tap(Tap::Big)]);
}

/// On the bench; over it, where big buttons are gone to after each start.
fn cautioned(mut told: Told, big: &[Msg]) {
    let (dust, rags) = ("Hardwood dust harms lungs", "Oily rags can heat up");
    let begin = |told: &mut Told, minute: i64, name: &str| {
        told.start(minute, name);
        told.at(minute, big.iter().cloned());
    };
    begin(&mut told, 0, "Sand");
    holds(&told.at(1, []), &[dust]);
    begin(&mut told, 10, "Trim");
    lacks(&told.at(11, []), &[dust, rags]);
    begin(&mut told, 20, "Joint and rip");
    holds(&told.at(21, []), &[dust]);
    begin(&mut told, 25, "Thickness");
    lacks(&told.at(26, []), &[dust]);
    begin(&mut told, 30, "Second coat");
    lacks(&told.at(31, []), &[rags]);
    holds(&told.at(40, [tap(Tap::Stop)]), &[rags]);
    begin(&mut told, 1440, "Rip");
    holds(&told.at(1441, []), &[dust]);
}

/// Another job is glued first, for 90 and 100 minutes, then the stands: what comes off next stands large, whosever it is, with its day where that is
/// another.
#[test]
fn the_next_off_time_of_any_job_is_large() {
    use super::super::waits::WaitTap;
    let clamp = || Msg::Bench(Tap::Waits(WaitTap::Clamp));
    let mut told = Told::stands();
    told.start(0, "Glue legs");
    told.at(5, [clamp()]);
    told.at(20, [clamp()]);
    let (currency, units) = (Currency::USD, Units::Inch);
    let began = JobCommand::Begin { name: "shelf".into(), currency, units, pieces: 1, made_for: For::Spec };
    let now = told.now(25);
    told.app.order(&Command::Job(began), now).unwrap();
    let shelf = fivebar_core::ledger::fold::jobs(&told.app.shelf().book)
        .map(|job| (job.id, job.name.clone()))
        .find(|(_, name)| name == "shelf")
        .unwrap()
        .0;
    told.at(25, [tap(Tap::Other), starting(StartingTap::Found(On::Job(shelf), "Glue sides".into(), Kind::Make, Stage::Make))]);
    told.at(30, [clamp(), tap(Tap::Big)]);
    let large = |shown: &str| shown.split("class=\"off\"").nth(1).unwrap().split("</p>").next().unwrap().to_owned();
    // Just clamped, it is chalked.
    holds(&large(&told.at(31, [])), &[">11:00</span>"]);
    let shown = told.at(40, []);
    holds(&large(&shown), &["Stands, leg 1 off at", ">10:35</span>"]);
    holds(&shown, &[">10:50</b>", ">11:00</b>"]);
    // Off today, the next is a coat of the day after.
    let legs: Vec<Id> = told.app.shelf().waits().on().map(|wait| wait.id).collect();
    told.at(41, [Msg::Bench(Tap::Waits(WaitTap::Off(legs)))]);
    told.at(
        42,
        [
            tap(Tap::LeaveBig),
            tap(Tap::Stop),
            tap(Tap::Other),
            starting(StartingTap::Found(On::Job(shelf), "Oil".into(), Kind::Make, Stage::Finish)),
        ],
    );
    told.at(45, [clamp(), tap(Tap::Big)]);
    holds(&large(&told.at(50, [])), &["Wed 4 March", ">09:45</span>"]);
}
