//! Writes `target/gallery/bench-*.html`: the bench through the days of a story, to look at in a browser.
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::{Device, Fact, line};
use fivebar_core::quantity::Span;
use fivebar_core::story::tell;
use fivebar_web::app::bench::day::{DayTap, Mend};
use fivebar_web::app::bench::starting::StartingTap;
use fivebar_web::app::bench::{Tap, sheet};
use fivebar_web::app::entry::Typed;
use fivebar_web::app::shelf::Shelf;
use fivebar_web::app::{App, Common, Msg};
use fivebar_web::parts::pad::Press;
use fivebar_web::parts::{Page, Place};
use fivebar_web::screens;
use std::{fs, path::Path};

const STORY: &str = include_str!("story.txt");

/// The story up to a remark, seen so many minutes later.
struct Look {
    app: App,
    now: Now,
}

impl Look {
    fn new(width: f64, until: &str, minutes: i64) -> Look {
        let story = tell(STORY.split(&format!("# --- {until}")).next().unwrap_or_default());
        assert_eq!(story.refused, [], "a story that is refused");
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
        let mut app = App::for_tests(Place::Bench);
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.page = Page::new(width);
        let mut wall = story.now;
        wall.at = wall.at.plus(Span::minutes(minutes));
        app.now = wall;
        Look { app, now: Now { wall, chance: [7; 10] } }
    }

    fn empty(width: f64) -> Look {
        let mut look = Look::new(width, "big", 0);
        look.app.own = Shelf::open(Device::new([1; 8]), []);
        look
    }

    fn say(mut self, messages: impl IntoIterator<Item = Msg>) -> Look {
        for message in messages {
            self.now.chance[0] = self.now.chance[0].wrapping_add(1);
            self.app.heard(message, self.now);
        }
        self
    }

    fn tap(self, taps: impl IntoIterator<Item = Tap>) -> Look {
        self.say(taps.into_iter().map(Msg::Bench))
    }

    fn html(&self) -> String {
        screens::page(&self.app).html()
    }
}

fn press(digits: &str) -> impl Iterator<Item = Tap> {
    digits.bytes().map(|digit| Tap::Press(Press::Digit(digit - b'0')))
}

fn pages(width: f64) -> Vec<(&'static str, Look)> {
    let at = |until: &str, minutes| Look::new(width, until, minutes);
    let running = || at("running", 6);
    let thursday = at("question", 0).app.now.day();
    let stopped = || at("question", 0);
    let settled = || at("day", 0);
    let gluing = sheet(&stopped().app).to_mend.first().map(|mend| mend.run.id).expect("a run to settle");
    let book = &settled().app.own.book;
    let of = |is: fn(&Fact) -> bool| {
        book.entries().map(|(entry, _)| entry).find(|entry| is(&entry.fact)).map(|entry| entry.id).expect("an entry")
    };
    let (trim, taken) = (of(|fact| matches!(fact, Fact::RunStarted(_))), of(|fact| matches!(fact, Fact::PiecesTaken(_))));
    let taper = || sheet(&running().app).rack.below.into_iter().find(|choice| choice.op == "Pegs").expect("a board");
    let day = |taps: Vec<DayTap>| settled().tap([DayTap::Show(thursday)].into_iter().chain(taps).map(Tap::Day));
    vec![
        ("empty", Look::empty(width)),
        ("empty-start", Look::empty(width).tap([Tap::Other])),
        ("empty-typed", Look::empty(width).tap([Tap::Other, Tap::Starting(StartingTap::Typed("Sharpen".into()))])),
        ("running", running()),
        ("counted", running().tap([Tap::Done])),
        ("switched", running().tap([Tap::Board(taper()), Tap::HelperJoins])),
        ("refused", running().tap([Tap::HelperJoins, Tap::Stop, Tap::StoppedAt(gluing)]).tap(press("0900")).tap([Tap::PadDone])),
        ("other", running().tap([Tap::Other])),
        ("other-typed", running().tap([Tap::Other, Tap::Starting(StartingTap::Typed("Plug".into()))])),
        ("more", running().tap([Tap::MoreDone]).tap(press("2"))),
        ("batch", running().tap([Tap::AskBatch])),
        ("stopped", running().tap([Tap::Stop])),
        ("question", stopped()),
        ("question-running", at("big", 200)),
        ("stopped-at", stopped().tap([Tap::StoppedAt(gluing)]).tap(press("1210"))),
        ("stopped-at-wrong", stopped().tap([Tap::StoppedAt(gluing)]).tap(press("99")).tap([Tap::PadDone])),
        ("day", day(vec![DayTap::Open(gluing)])),
        ("day-closed", day(vec![])),
        ("day-struck", day(vec![DayTap::Strike(gluing)])),
        ("day-none", settled().tap([Tap::Day(DayTap::Show(thursday.before()))])),
        ("day-which", day(vec![DayTap::Open(gluing), DayTap::Mend(Box::new(Mend::Which))])),
        ("day-renamed", day(vec![DayTap::Open(gluing), DayTap::Mend(Box::new(Mend::Op("Glue tops".into())))])),
        ("day-mend", day(vec![DayTap::Open(gluing), DayTap::Mend(Box::new(Mend::Stop(Typed::default())))])),
        ("day-open", day(vec![DayTap::Open(trim)])),
        ("day-count", day(vec![DayTap::Open(taken)])),
        ("day-question", stopped().tap([Tap::Day(DayTap::Show(thursday)), Tap::Day(DayTap::Open(gluing))])),
        ("missed", day(vec![DayTap::Missed])),
        ("big", at("big", 0).tap([Tap::Big])),
        ("big-undo", at("big", 0).tap([Tap::Big, Tap::Done])),
        ("big-stopped", at("big", 0).tap([Tap::Big, Tap::Stop])),
        ("put-back", running().tap([Tap::Done]).say([Msg::Common(Common::TakeBack)])),
    ]
}

fn main() -> std::io::Result<()> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut sheets: Vec<_> = fs::read_dir(root.join("www/css"))?.filter_map(|f| f.ok().map(|f| f.path())).collect();
    sheets.sort();
    let css: String = sheets.iter().map(fs::read_to_string).collect::<Result<_, _>>()?;
    let css = css.replace("./font/", "../../www/font/");
    let out = root.join("target/gallery");
    fs::create_dir_all(&out)?;
    for (kind, width, size) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
        for (name, look) in pages(width * 100.0 / f64::from(size)) {
            let body = look.html();
            for (theme, dark) in [("light", ""), ("dark", "-dark")] {
                let page = format!(
                    "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>Fivebar</title><style>{css} html{{font-size:{size}%}}</style><body><div id=app>{body}</div>"
                );
                fs::write(out.join(format!("bench-{name}{kind}{dark}.html")), page)?;
            }
        }
    }
    Ok(())
}
