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
    lacks(&told.at(21, []), &[dust]);
    begin(&mut told, 30, "Second coat");
    lacks(&told.at(31, []), &[rags]);
    holds(&told.at(40, [tap(Tap::Stop)]), &[rags]);
    begin(&mut told, 1440, "Rip");
    holds(&told.at(1441, []), &[dust]);
}
