//! Writes `target/gallery/jobs-*.html`: Jobs as it stands before the delivery of the demo's bench, to look at in a browser.
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::ledger::{Device, line};
use fivebar_core::quantity::{Currency, Id, Key, Sorted, Units, Wall};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::rack::rack;
use fivebar_core::story::{BENCH, STANDS, Story, tell};
use fivebar_web::app::jobs::draft::{Pick, Way, What};
use fivebar_web::app::jobs::{Room, Tap, sheet};
use fivebar_web::app::news::News;
use fivebar_web::app::order::Which;
use fivebar_web::app::shelf::Shelf;
use fivebar_web::app::{App, Common, Msg};
use fivebar_web::parts::pad::Press;
use fivebar_web::parts::{Page, Place};
use fivebar_web::screens;
use std::{fs, path::Path};

/// What the maker has begun since.
const SINCE: &str = "2026-05-22 13:00 +02:00 workshop USD inch
job more \"Plant stands, two more\" 2 spec
13:01 plan \"trim strips\" make 30 min for more
plan \"first coat\" make stage finish 20 min for more
13:02 job stool \"Milking stool\" 1 order
";

/// Several stories as one book.
struct Told {
    stories: Vec<Story>,
    lines: Vec<String>,
}

impl Told {
    fn of(texts: &[&str]) -> Told {
        let stories: Vec<Story> = texts.iter().map(|text| tell(text)).collect();
        let lines = stories.iter().flat_map(|story| story.book.entries().map(|(entry, _)| line::write(entry)).collect::<Vec<_>>());
        Told { lines: lines.collect(), stories }
    }

    /// Both demos, the bench before its delivery; and two jobs that begin.
    fn whole() -> Told {
        Told::of(&[STANDS, BENCH.split("# --- Saturday").next().unwrap_or_default(), SINCE])
    }

    fn job(&self, name: &str) -> Id {
        self.stories.iter().find_map(|story| story.names.job(name)).expect("a job of the story")
    }

    fn now(&self) -> Wall {
        self.stories.last().map(|story| story.now).unwrap_or_default()
    }
}

struct Look {
    app: App,
    now: Now,
}

impl Look {
    fn new(width: f64, told: &Told) -> Look {
        let mut app = App::for_tests(Place::Jobs);
        app.own = Shelf::open(Device::new([1; 8]), told.lines.iter().map(String::as_str));
        app.page = Page::new(width);
        app.now = told.now();
        Look { app, now: Now { wall: told.now(), chance: [7; 10] } }
    }

    fn example(mut self) -> Look {
        let opened = News::Opened { which: Which::Example, device: Device::new([2; 8]), book: Box::default(), names: Sorted::new() };
        self.app.told(opened);
        self
    }

    fn say(&mut self, messages: impl IntoIterator<Item = Msg>) -> &mut Look {
        for message in messages {
            self.now.chance[0] = self.now.chance[0].wrapping_add(1);
            self.app.heard(message, self.now);
        }
        self
    }

    fn tap(&mut self, taps: impl IntoIterator<Item = Tap>) -> &mut Look {
        self.say(taps.into_iter().map(Msg::Jobs))
    }

    fn html(&self) -> String {
        screens::page(&self.app).html()
    }
}

fn press(digits: &str) -> Vec<Tap> {
    digits.bytes().map(|digit| Tap::Press(if digit == b'.' { Press::Point } else { Press::Digit(digit - b'0') })).collect()
}

fn glue() -> Tap {
    Tap::Pick(Pick::Spending(Key::read("glue").expect("a key")))
}

fn write(job: Id, what: What, then: Vec<Tap>) -> Vec<Tap> {
    [Tap::Open(Which::Own, job), Tap::Write(what)].into_iter().chain(then).collect()
}

fn taps(told: &Told) -> Vec<(&'static str, Vec<Tap>)> {
    let job = |name: &str| told.job(name);
    let (stands, bench, more, stool) = (job("stands"), job("bench"), job("more"), job("stool"));
    let open = |job| Tap::Open(Which::Own, job);
    let room = |job, room| vec![open(job), Tap::Room(room)];
    let mut probe = Look::new(390.0, told);
    let pile =
        rack(&Shop::of(&probe.app.own.book, told.now().at), bench).ok().and_then(|piles| piles.into_iter().find(|pile| 0 < pile.in_job));
    let take = pile.map_or(What::New, |pile| What::Take { haul: pile.haul, pile: pile.pile });
    let agreed = sheet(&probe.tap([open(bench)]).app).and_then(Result::ok).and_then(|sheet| Some(sheet.selling.open().next()?.id));
    vec![
        ("list", vec![]),
        ("list-found", vec![Tap::Search("bench".into())]),
        ("list-none", vec![Tap::Search("table".into())]),
        ("job", vec![open(bench)]),
        ("job-ended", vec![open(stands)]),
        ("job-planned", vec![open(more)]),
        ("job-new", vec![open(stool)]),
        ("wood", room(bench, Room::Wood)),
        ("wood-stands", room(stands, Room::Wood)),
        ("wood-new", room(stool, Room::Wood)),
        ("hours", room(bench, Room::Hours)),
        ("hours-stands", room(stands, Room::Hours)),
        ("hours-new", room(stool, Room::Hours)),
        ("sell", room(bench, Room::Sell)),
        ("sell-stands", room(stands, Room::Sell)),
        ("sell-new", room(stool, Room::Sell)),
        ("back", room(bench, Room::Back)),
        ("back-stands", room(stands, Room::Back)),
        ("new", vec![Tap::Write(What::New), Tap::Say(0, "Wall shelf".into())]),
        ("new-other", vec![Tap::Write(What::New), Tap::Pick(Pick::Count(12))]),
        (
            "new-currency",
            vec![
                Tap::Write(What::New),
                Tap::Pick(Pick::Currency(Currency::EUR)),
                Tap::Pick(Pick::Units(Units::Metric)),
                Tap::Pick(Pick::More),
            ],
        ),
        ("take", write(bench, take, press("3"))),
        (
            "part",
            write(
                more,
                What::Part(None),
                vec![
                    Tap::Say(0, "leg".into()),
                    Tap::Press(Press::Digit(4)),
                    Tap::At(1),
                    Tap::Press(Press::Digit(1)),
                    Tap::Press(Press::Fraction(1, 2)),
                ],
            ),
        ),
        ("part-wood", write(more, What::Part(None), vec![Tap::Pick(Pick::More)])),
        ("plan", write(more, What::Plan(None), vec![])),
        ("plan-named", write(more, What::Plan(None), vec![Tap::Pick(Pick::Operation("delivery".into(), Kind::Deliver, false))])),
        ("plan-old", write(more, What::Plan(Some("first coat".into())), vec![])),
        ("spend", write(bench, What::Spend, [vec![glue()], press("4.10")].concat())),
        ("spend-pack", write(bench, What::Spend, vec![glue(), Tap::Pick(Pick::Way(Way::Share))])),
        ("spend-kind", write(bench, What::Spend, vec![])),
        ("spend-drive", write(bench, What::Spend, vec![Tap::Pick(Pick::Way(Way::Drive))])),
        ("spend-wrong", write(bench, What::Spend, vec![glue(), Tap::Press(Press::Point), Tap::Save])),
        ("tag", write(more, What::Tag, press("145"))),
        ("settle", write(more, What::Settle, press("130"))),
        ("size", write(stands, What::Size, vec![])),
        ("facts", write(stands, What::Facts, vec![])),
        ("sale", write(bench, What::Sell(agreed), vec![])),
        ("lesson", write(stands, What::Lesson, vec![])),
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
    let (told, nothing) = (Told::whole(), Told::of(&["2026-05-22 08:14 +02:00 workshop USD inch"]));
    for (kind, width, size) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
        let room = width * 100.0 / f64::from(size);
        let mut pages: Vec<(&str, String)> = vec![("day-one", Look::new(room, &nothing).html())];
        pages.push(("example", Look::new(room, &nothing).example().html()));
        let mut undone = Look::new(room, &told);
        undone.tap(write(told.job("more"), What::Spend, press("4.10"))).tap([glue(), Tap::Save, Tap::Room(Room::Hours)]);
        pages.push(("undo", undone.html()));
        pages.push(("put-back", undone.say([Msg::Common(Common::TakeBack)]).html()));
        for (name, taps) in taps(&told) {
            pages.push((name, Look::new(room, &told).tap(taps).html()));
        }
        for (name, body) in pages {
            for (theme, dark) in [("light", ""), ("dark", "-dark")] {
                let page = format!(
                    "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>Fivebar</title><style>{css} html{{font-size:{size}%}}</style><body><div id=app>{body}</div>"
                );
                fs::write(out.join(format!("jobs-{name}{kind}{dark}.html")), page)?;
            }
        }
    }
    Ok(())
}
