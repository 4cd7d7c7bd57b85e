//! What was done last, taken back in one tap: at once, some hours later, and after the page was loaded anew.

use super::*;

/// Trim is on, and a key of another job was tapped by mistake: one tap takes the switch back, and trim goes on from nine as if nothing had been.
#[test]
fn a_switch_by_mistake_is_taken_back_in_one_tap() {
    let mut told = Told::stands();
    told.at(0, [tap(Tap::Other), op("Trim")]);
    let run = told.app.running().unwrap();
    told.at(20, [tap(Tap::Other), starting(StartingTap::On(On::Nothing)), op("Sharpen")]);
    assert_ne!(told.app.running().unwrap().run, run.run);
    told.at(21, [Msg::Common(Common::TakeBack)]);
    let again = told.app.running().unwrap();
    assert_eq!((again.run, again.op.as_str(), again.worked.as_minutes()), (run.run, "Trim", 21));
}

/// The page is loaded anew: the last act of this phone is taken back there while it is fresh, and what was taken back is put back.
#[test]
fn the_last_act_is_taken_back_after_the_page_was_loaded_anew() {
    let mut told = Told::stands();
    told.at(0, [tap(Tap::Other), op("Trim")]);
    told.at(30, [tap(Tap::Stop)]);
    let anew = |told: &mut Told, minute| {
        let lines = told.app.own.book.lines().map(str::to_owned).collect::<Vec<_>>();
        let book = fivebar_core::ledger::Book::of_lines(lines.iter().map(String::as_str));
        told.app = App::new(crate::parts::Page::default(), Place::Bench, std::rc::Rc::new(crate::words::Plain::default()));
        told.app.offset_at = Some(new_york);
        told.app.now = told.now(minute).wall;
        let device = fivebar_core::ledger::Device::new([1; 8]);
        let names = fivebar_core::quantity::Sorted::new();
        let opened = crate::app::news::News::Opened { which: crate::app::order::Which::Own, device, book: Box::new(book), names };
        told.app.told(opened);
        (told.app.own.last_act.is_some(), !told.app.own.taken_back.is_empty())
    };
    assert_eq!(anew(&mut told, 30 + 721), (false, false), "more than twelve hours later");
    lacks(&told.at(30 + 721, []), &["Take back"]);
    assert_eq!(anew(&mut told, 30 + 719), (true, false));
    holds(&told.at(30 + 719, []), &["Take back", "stop, 09:30"]);
    lacks(&told.at(30 + 721, []), &["Take back"]);
    assert_eq!(anew(&mut told, 70), (true, false));
    holds(&told.at(70, []), &["Take back", "stop, 09:30"]);
    assert_eq!(anew(&mut told, 35), (true, false));
    holds(&told.at(36, []), &["Take back", "stop, 09:30"]);
    told.at(36, [Msg::Common(Common::TakeBack)]);
    assert_eq!(told.app.running().map(|run| run.worked.as_minutes()), Some(36));
    assert_eq!(anew(&mut told, 37), (false, true));
    told.at(38, [Msg::Common(Common::PutBack)]);
    assert_eq!((told.app.running(), anew(&mut told, 39)), (None, (true, false)));
}

#[test]
fn a_board_switches_in_one_act_and_is_taken_back_whole() {
    let mut told = Told::stands();
    let first = told.start(0, "Trim");
    let sanding = told.start(10, "Sand");
    let board = sheet(&told.app).rack.lately.first().cloned().unwrap();
    told.at(20, [tap(Tap::Board(board))]);
    assert_eq!(told.minutes(), [("Trim".into(), 10), ("Sand".into(), 10), ("Trim".into(), 0)]);
    assert!(told.run() != first && told.run() != sanding);
    told.at(21, [Msg::Common(Common::TakeBack)]);
    assert_eq!(told.run(), sanding);
}
