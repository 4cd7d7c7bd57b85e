//! Writes `target/gallery/price-*.html`: Price as it stands in the middle of both demos, to look at in a browser.
use fivebar_core::ledger::decide::{Now, PaidOf};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::ledger::{Device, line};
use fivebar_core::quantity::{Currency, Decimal, Id, Money};
use fivebar_core::story::{BENCH, STANDS, Story, tell};
use fivebar_web::app::price::agree::{AgreeTap, By};
use fivebar_web::app::price::bargain::BargainTap;
use fivebar_web::app::price::deal::DealTap;
use fivebar_web::app::price::gallery::GalleryTap;
use fivebar_web::app::price::parts::PartsTap;
use fivebar_web::app::price::quick::{Field, QuickTap};
use fivebar_web::app::price::tag::{TagTap, What};
use fivebar_web::app::price::{Tap, sheet};
use fivebar_web::app::shelf::Shelf;
use fivebar_web::app::{App, Msg};
use fivebar_web::parts::pad::Press;
use fivebar_web::parts::{Page, Place};
use fivebar_web::screens;
use std::{fs, path::Path};

/// The market with three stands left, and the bench before its delivery.
fn story() -> Story {
    let market = STANDS.split("13:10 sell").next().unwrap_or_default();
    let bench = BENCH.split("# --- Saturday").next().unwrap_or_default();
    tell(&format!("{market}\n{bench}"))
}

struct Look {
    app: App,
    now: Now,
}

impl Look {
    fn new(width: f64, story: &Story) -> Look {
        let mut app = App::for_tests(Place::Price);
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.page = Page::new(width);
        app.now = story.now;
        Look { app, now: Now { wall: story.now, chance: [7; 10] } }
    }

    fn tap(&mut self, taps: impl IntoIterator<Item = Tap>) -> &mut Look {
        for tap in taps {
            self.now.chance[0] = self.now.chance[0].wrapping_add(1);
            self.app.heard(Msg::Price(tap), self.now);
        }
        self
    }
}

fn money(amount: i64, currency: Currency) -> Money {
    Money::whole(Decimal::from(amount), currency).expect("a whole sum")
}

fn say(amount: i64) -> Tap {
    Tap::Bargain(BargainTap::Say(money(amount, Currency::USD)))
}

fn typed(digits: &str) -> Vec<Tap> {
    digits.bytes().map(|digit| Tap::Press(Press::Digit(digit - b'0'))).collect()
}

fn quick() -> Vec<Tap> {
    let mut taps = vec![Tap::Quick(QuickTap::Choose(Field::Hours))];
    for figure in ["19", "104", "460"] {
        taps.extend(typed(figure));
        taps.push(Tap::Quick(QuickTap::Done));
    }
    taps
}

fn taps(stands: Id, bench: Id, agreed: Id) -> Vec<(&'static str, Vec<Tap>)> {
    let deal = Tap::Deal(DealTap::Open(bench, PaidOf::Agreed(agreed)));
    vec![
        ("list", vec![]),
        ("offer", vec![Tap::Offer(stands)]),
        ("offer-130", vec![Tap::Offer(stands), say(130)]),
        ("offer-yes", vec![Tap::Offer(stands), say(145)]),
        ("offer-spent", vec![Tap::Offer(stands), say(20)]),
        ("offer-two", vec![Tap::Offer(stands), Tap::Bargain(BargainTap::Pieces(2)), say(260)]),
        ("offer-agreed", vec![Tap::Offer(bench), Tap::Bargain(BargainTap::Say(money(430, Currency::EUR)))]),
        ("pad", vec![Tap::Offer(stands), Tap::Bargain(BargainTap::Pad), Tap::Press(Press::Digit(1))]),
        ("pay", vec![Tap::Offer(stands), say(130), Tap::Bargain(BargainTap::PayAndHours)]),
        ("sold", vec![Tap::Offer(stands), say(130), Tap::Bargain(BargainTap::Paid(Paid::Notes)), Tap::Bargain(BargainTap::Sold)]),
        ("more", vec![Tap::More(stands)]),
        ("tag", vec![Tap::Tag(TagTap::Open(stands, What::Tag))]),
        ("deal", vec![deal]),
        ("agree", vec![Tap::Agree(AgreeTap::Open(stands, None)), Tap::Agree(AgreeTap::Share(30)), Tap::Agree(AgreeTap::By(By::Weeks(4)))]),
        ("consign", vec![Tap::Gallery(GalleryTap::Leave(stands))]),
        ("payments", vec![Tap::Parts(PartsTap::Open(bench, agreed))]),
        ("gallery-list", vec![Tap::Gallery(GalleryTap::Leave(stands)), Tap::Gallery(GalleryTap::Consigned)]),
        ("quick", quick()),
        ("quick-typing", quick().into_iter().take(5).collect()),
        ("buyer", vec![Tap::Show(stands)]),
        ("buyer-bench", vec![Tap::Show(bench)]),
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
    let story = story();
    let (Some(stands), Some(bench)) = (story.names.job("stands"), story.names.job("bench")) else { return Ok(()) };
    let agreed = sheet(&Look::new(390.0, &story).app).ok().and_then(|sheet| Some(sheet.agreed.first()?.agreed)).unwrap_or(bench);
    for (kind, width, size) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
        let room = width * 100.0 / f64::from(size);
        let mut pages: Vec<(&str, String)> = vec![("day-one", screens::page(&Look::new(room, &tell("")).app).html())];
        for (name, taps) in taps(stands, bench, agreed) {
            pages.push((name, screens::page(&Look::new(room, &story).tap(taps).app).html()));
        }
        for (name, body) in pages {
            for (theme, dark) in [("light", ""), ("dark", "-dark")] {
                let page = format!(
                    "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>Fivebar</title><style>{css} html{{font-size:{size}%}}</style><body><div id=app>{body}</div>"
                );
                fs::write(out.join(format!("price-{name}{kind}{dark}.html")), page)?;
            }
        }
    }
    Ok(())
}
