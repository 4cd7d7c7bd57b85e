//! Writes `target/gallery/s-workshop-*.html`: Workshop with the book of the demo, to look at in a browser.

use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::{Clock, Device};
use fivebar_core::quantity::{Moment, Wall};
use fivebar_core::story::{STANDS, tell};
use fivebar_web::app::here::Kept;
use fivebar_web::app::news::{Handed, News, NotRead, Trouble};
use fivebar_web::app::order::{Order, Which};
use fivebar_web::app::shelf::Shelf;
use fivebar_web::app::workshop::figures::Figure;
use fivebar_web::app::workshop::{NoCopy, Over, Tap};
use fivebar_web::app::{App, Msg, count, jobs};
use fivebar_web::parts::pad::Press;
use fivebar_web::parts::{Page, Place};
use fivebar_web::screens;
use std::{fs, path::Path};

/// An app in hand, a tap each minute.
struct Hand {
    app: App,
    n: u8,
    orders: Vec<Order>,
}

impl Hand {
    /// The book of the stands, on Workshop.
    fn told() -> Hand {
        let story = tell(STANDS);
        let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
        let mut app = App::for_tests(Place::Workshop);
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.own.names = story.people.clone();
        app.now = story.now;
        app.here.kept = Kept::WhileThereIsRoom;
        Hand { app, n: 0, orders: vec![] }.saved()
    }

    fn empty() -> Hand {
        Hand { app: App::for_tests(Place::Workshop), n: 0, orders: vec![] }
    }

    fn saved(mut self) -> Hand {
        let ids: Vec<_> = self.app.own.book.entries().map(|(entry, _)| entry.id).collect();
        let at = self.app.now;
        self.app.told(News::Saved { which: Which::Own, ids, at });
        self
    }

    fn say(mut self, messages: impl IntoIterator<Item = Msg>) -> Hand {
        for message in messages {
            self.n += 1;
            let wall = Wall::new(Moment::at(self.app.now.at.ms().max(1_779_430_000_000) + 60_000), self.app.now.offset);
            self.orders = self.app.heard(message, Now { wall, chance: [self.n, 3, 3, 3, 3, 3, 3, 3, 3, 0] });
        }
        self.saved()
    }

    fn tap(self, taps: impl IntoIterator<Item = Tap>) -> Hand {
        self.say(taps.into_iter().map(Msg::Workshop))
    }

    /// A sum of the form of a spending.
    fn sum(self, text: &str) -> Hand {
        let press = |sign: char| sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8));
        let presses: Vec<Msg> = text.chars().map(|sign| Msg::Jobs(jobs::Tap::Press(press(sign)))).collect();
        self.say(presses).say([Msg::Jobs(jobs::Tap::Save)])
    }

    fn figure(self, figure: Figure, text: &str) -> Hand {
        self.tap([Tap::Figure(figure)]).typed(text).tap([Tap::PadDone])
    }

    fn typed(self, text: &str) -> Hand {
        self.tap(text.chars().map(|sign| Tap::Press(sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8)))))
    }

    fn rate(self) -> Hand {
        let said = [
            (Figure::Pay, "20"),
            (Figure::Hours, "480"),
            (Figure::Logged, "300"),
            (Figure::Lowest, "12"),
            (Figure::Costs, "3615"),
            (Figure::Wear, "2250"),
            (Figure::OwnTax, "14.13"),
            (Figure::Profit, "8.5"),
        ];
        said.into_iter().fold(self.tap([Tap::Open(Over::Rate)]), |hand, (figure, text)| hand.figure(figure, text))
    }

    fn later(mut self, days: i64) -> Hand {
        self.app.now = Wall::new(Moment::at(self.app.now.at.ms() + days * 86_400_000), self.app.now.offset);
        self
    }

    fn kept(self) -> Hand {
        self.tap([Tap::KeepCopy, Tap::Handed(Handed::Shared("fivebar-2026-05-22.json".into()))])
    }
}

/// A copy of another phone.
fn copy() -> String {
    let orders = Hand::told().tap([Tap::KeepCopy]).orders;
    orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap_or_default()
}

fn failed() -> Hand {
    let mut hand = Hand::told();
    hand.app.place = Place::Count;
    let pile = count::sheet(&hand.app).map(|sheet| sheet.tiles[2].pile).expect("a pile");
    let stored: Vec<String> = hand.app.own.book.lines().map(str::to_owned).collect();
    let mut clock = Clock::new(Device::new([1; 8]), None);
    let _ = clock.next(hand.app.now.at);
    hand.app.heard(Msg::Count(count::Tap::Arm(5)), Now { wall: hand.app.now, chance: [7; 10] });
    let orders = hand.app.heard(Msg::Count(count::Tap::Pile(pile)), Now { wall: hand.app.now, chance: [8; 10] });
    let lines = orders.into_iter().find_map(|order| if let Order::Append { lines, .. } = order { Some(lines) } else { None });
    let lines = lines.unwrap_or_default();
    hand.app.told(News::NotSaved { which: Which::Own, lines, names: Default::default(), trouble: Trouble::Full, stored });
    hand
}

fn page(name: &str, hand: Hand, css: &str, out: &Path) -> std::io::Result<()> {
    let mut app = hand.app;
    for (kind, width, root) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
        app.page = Page::new(width * 100.0 / f64::from(root));
        let body = screens::page(&app).html();
        for (theme, dark) in [("light", ""), ("dark", "-dark")] {
            let text = format!(
                "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>{name}</title><style>{css} html{{font-size:{root}%}}</style><body><div id=app>{body}</div>"
            );
            fs::write(out.join(format!("s-workshop-{name}{kind}{dark}.html")), text)?;
        }
    }
    Ok(())
}

fn main() -> std::io::Result<()> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut sheets: Vec<_> = fs::read_dir(root.join("www/css"))?.filter_map(|f| f.ok().map(|f| f.path())).collect();
    sheets.sort();
    let css: String = sheets.iter().map(fs::read_to_string).collect::<Result<_, _>>()?;
    let css = css.replace("./font/", "../../www/font/");
    let out = root.join("target/gallery");
    fs::create_dir_all(&out)?;
    let supplier = || Hand::told().app.own.names.keys().next().copied().expect("a person");
    let spent = || {
        let named = [Msg::Jobs(jobs::Tap::Say(0, "planer knives".into()))];
        let spent = Hand::told().tap([Tap::Open(Over::Costs), Tap::Spend("edges")]).say(named).sum("64.50");
        // Where edges belong is left open.
        spent.say([Msg::Jobs(jobs::Tap::Save)]).tap([Tap::Spend("rent")]).sum("180").tap([Tap::Spend("insurance")]).sum("96.20")
    };
    let ambiguous = || Hand::told().tap([Tap::Open(Over::Till), Tap::Figure(Figure::Mileage)]).typed("1.2345678");
    let pages = [
        ("first-empty", Hand::empty()),
        ("first", Hand::told().kept().say([Msg::Count(count::Tap::Arm(1))]).later(3)),
        ("rate-empty", Hand::empty().tap([Tap::Open(Over::Rate)])),
        ("rate", Hand::told().rate()),
        ("rate-some", Hand::told().tap([Tap::Open(Over::Rate)])),
        ("costs-and-tax", Hand::told().rate().tap([Tap::Open(Over::CostsAndTax)])),
        ("year", Hand::told().rate().tap([Tap::Open(Over::RealYear)])),
        ("pad", Hand::told().tap([Tap::Open(Over::Rate), Tap::Figure(Figure::Pay)]).typed("22.5")),
        ("pad-refused", Hand::told().rate().tap([Tap::Figure(Figure::Logged)]).typed("500").tap([Tap::PadDone])),
        ("pad-misread", ambiguous().tap([Tap::PadDone])),
        ("pad-spent", Hand::told().tap([Tap::Open(Over::Costs), Tap::Spend("edges")])),
        ("pad-driven", Hand::told().tap([Tap::Open(Over::Costs), Tap::Drive])),
        ("till", Hand::told().tap([Tap::Open(Over::Till)]).figure(Figure::Cash, "0.05")),
        ("units", Hand::told().tap([Tap::Open(Over::Units)])),
        ("rack", Hand::told().tap([Tap::Open(Over::Rack)])),
        ("people", Hand::told().tap([Tap::Open(Over::People), Tap::Line(supplier())])),
        ("people-adding", Hand::told().tap([Tap::Open(Over::People), Tap::Typed("Harbour mill".into())])),
        ("costs", spent()),
        ("costs-empty", Hand::empty().tap([Tap::Open(Over::Costs)])),
        ("copies", Hand::told().kept().later(3).tap([Tap::Open(Over::Copies)])),
        ("copies-kept", Hand::told().tap([Tap::Open(Over::Copies)]).kept()),
        ("copies-no-way", Hand::told().tap([Tap::Open(Over::Copies), Tap::KeepCopy, Tap::Handed(Handed::NoWay)])),
        ("coming", Hand::empty().say([Msg::Count(count::Tap::First)]).tap([Tap::Picked(copy())])),
        ("no-copy", Hand::told().tap([Tap::Picked(copy()[..5000].to_owned())])),
        ("no-copy-large", Hand::told().tap([Tap::Open(Over::NoCopy(NoCopy::NotRead(NotRead::NotText)))])),
        ("wipe", Hand::told().tap([Tap::Open(Over::Wipe), Tap::Typed("delete".into())])),
        ("hand", Hand::told().tap([Tap::Open(Over::Hand)])),
        ("help", Hand::told().tap([Tap::Open(Over::Help)])),
        ("cautions", Hand::told().tap([Tap::Open(Over::Cautions)])),
        ("about", Hand::told().tap([Tap::Open(Over::About)])),
        ("unsaved", failed()),
    ];
    for (name, hand) in pages {
        page(name, hand, &css, &out)?;
    }
    Ok(())
}
