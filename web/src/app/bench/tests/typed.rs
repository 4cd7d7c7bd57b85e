//! A clock time that was typed for the end of a run: as it is read, asked about and refused.

use super::mending::{clock, missed};
use super::*;
use crate::words::Plain;
use fivebar_core::bench::repair::DAY_MOST;
use std::rc::Rc;

/// A run that began at `from` minutes after nine and goes on, seen at `now`; what is typed of its stop gives this reading, whether it
/// is asked about, and the minutes it has then.
#[track_caller]
fn stops(halves: bool, (from, now): (i64, i64), text: &str, read: &str, asked: Option<&[&str]>, minutes: i64) {
    let mut told = Told::stands();
    told.app.speech = Rc::new(Plain { halves, ..Plain::default() });
    let run = told.start(from, "Flatten");
    told.at(now, [tap(Tap::StoppedAt(run))]);
    let press = |sign: char| match sign {
        'a' => tap(Tap::Press(Press::Half(crate::parts::pad::Half::Am))),
        'p' => tap(Tap::Press(Press::Half(crate::parts::pad::Half::Pm))),
        digit => tap(Tap::Press(Press::Digit(digit as u8 - b'0'))),
    };
    holds(&told.at(now, text.chars().map(press)), &[read]);
    let shown = told.at(now, [tap(Tap::PadDone)]);
    if let Some(keys) = asked {
        holds(&shown, &["longer than a working day", "bench/stopped"]);
        holds(&shown, keys);
        // Done once more is no answer.
        holds(&told.at(now, [tap(Tap::PadDone)]), &["longer than a working day"]);
        let it = told.app.shelf().bench().run(run).cloned().unwrap();
        let typed: String = text
            .chars()
            .map(|sign| match sign {
                'a' => " am".to_owned(),
                'p' => " pm".to_owned(),
                digit => digit.to_string(),
            })
            .collect();
        let meant = ends::stop(&told.app, &it, &typed).unwrap();
        assert!(meant.span.is_some_and(|span| DAY_MOST < span));
        let at = meant.other.map_or(meant.at.at, |(other, _)| other.at);
        told.at(now, [tap(Tap::Meant(at))]);
    }
    assert_eq!(told.minutes(), [("Flatten".into(), minutes)], "{text}");
}

/// From 14:00 on Tuesday, seen on Wednesday at 8:00: 300 and 1 380 minutes after nine.
#[test]
fn a_stop_that_makes_a_run_longer_than_a_working_day_is_asked_about() {
    let keys: &[&str] = &[">07:15<", "Wed 4 March, 17 h 15", ">19:15<", "Tue 3 March, 5 h 15"];
    stops(false, (300, 1_380), "715", "Wed 4 March 07:15, 17 h 15", Some(keys), 315);
    stops(false, (300, 1_380), "1915", "Tue 3 March 19:15, 5 h 15", None, 315);
    stops(false, (300, 1_380), "0155", "Wed 4 March 01:55, 11 h 55", None, 715);
    // No other half makes a working day of it: it is the one key.
    stops(false, (0, 1_380), "0755", "Wed 4 March 07:55, 22 h 55", Some(&[">19:55<", "Tue 3 March, 10 h 55"]), 655);
}

#[test]
fn where_clocks_have_twelve_hours_am_and_pm_are_written_and_read() {
    stops(true, (300, 1_380), "715", "Tue 3 March 7:15\u{a0}PM, 5 h 15", None, 315);
    stops(true, (300, 1_380), "515p", "Tue 3 March 5:15\u{a0}PM, 3 h 15", None, 195);
    stops(
        true,
        (300, 1_380),
        "715a",
        "Wed 4 March 7:15\u{a0}AM, 17 h 15",
        Some(&[">7:15\u{a0}AM<", "Wed 4 March, 17 h 15", ">7:15\u{a0}PM<"]),
        315,
    );
    stops(true, (0, 60), "930", "Tue 3 March 9:30\u{a0}AM, 30 min", None, 30);
    let mut told = Told::stands();
    told.app.speech = Rc::new(Plain { halves: true, ..Plain::default() });
    let run = told.start(0, "Sand");
    let shown = told.at(200, [tap(Tap::StoppedAt(run))]);
    holds(&shown, &[">am<", ">pm<", "515 and pm for 5:15 PM", "9:00\u{a0}AM on"]);
    told.app.speech = Rc::new(Plain::default());
    lacks(&told.at(200, []), &[">am<", ">pm<"]);
}

/// From 14:10 on Tuesday, seen on Wednesday at 7:50: a time before the start that has not come on the day after ends before it begins,
/// and one that has not come is said to be so; neither is asked about.
#[test]
fn a_stop_that_cannot_be_is_refused_and_not_asked_about() {
    let check = |text: &str, half: crate::parts::pad::Half, said: &str| {
        let mut told = Told::stands();
        told.app.speech = Rc::new(Plain { halves: true, ..Plain::default() });
        let run = told.start(310, "Coat");
        told.at(1_370, [tap(Tap::StoppedAt(run))]);
        let half = [tap(Tap::Press(Press::Half(half))), tap(Tap::PadDone)];
        let shown = told.at(1_370, presses(text).into_iter().chain(half));
        holds(&shown, &["bench/stopped", said]);
        lacks(&shown, &["longer than a working day"]);
    };
    use crate::parts::pad::Half::{Am, Pm};
    check("200", Pm, "it would end at Tue 3 March 2:00\u{a0}PM, and it begins at Tue 3 March 2:10\u{a0}PM");
    check("1130", Am, "it would end at Tue 3 March 11:30\u{a0}AM, and it begins at Tue 3 March 2:10\u{a0}PM");
    // Time that was missed today from 7:00, until 23:00.
    let mut told = Told::stands();
    missed(&mut told, 30);
    told.at(30, clock("700"));
    let shown = told.at(30, clock("2300"));
    holds(&shown, &["bench/until", "23:00 has not come yet, it is 09:30"]);
    lacks(&shown, &["longer than a working day"]);
}

/// A figure that stands there is typed over; a half of the day or a rub is of it.
#[test]
fn the_other_end_is_typed_over() {
    let mut told = Told::stands();
    missed(&mut told, 30);
    told.at(30, clock("800"));
    holds(&told.at(30, [starting(StartingTap::From)]), &["bench/from", ">800<"]);
    holds(&told.at(30, presses("70")), &[">70<"]);
    told.at(30, presses("0"));
    holds(&told.at(30, [starting(StartingTap::Clock)]), &["bench/until", "From 07:00"]);
    told.at(30, [starting(StartingTap::From)]);
    holds(&told.at(30, [tap(Tap::Press(Press::RubOut))]), &[">70<"]);
    holds(&told.at(30, presses("5")), &[">705<"]);
}
