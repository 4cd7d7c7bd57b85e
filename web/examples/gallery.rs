//! Writes `target/gallery/*.html`: the parts put together as in the drawings, to look at in a browser.
use fivebar_web::parts::bars::{Bars, Cut, bars};
use fivebar_web::parts::board::Board;
use fivebar_web::parts::chips::{Chip, bundle, chips};
use fivebar_web::parts::field::{Field, Keyboard, field};
use fivebar_web::parts::head::{Fact, Head, head};
use fivebar_web::parts::key::{figure_key, key};
use fivebar_web::parts::load_bar::load_bar;
use fivebar_web::parts::notches::Notches;
use fivebar_web::parts::notice::{Trouble, trouble};
use fivebar_web::parts::pad::{entry, fraction_keys, pad};
use fivebar_web::parts::ratio::{Ratio, ratios};
use fivebar_web::parts::scale::{Band, Block, Fill, Kind, Look, Mark, Rhythm, Scale, Spoken, scale, slider};
use fivebar_web::parts::seg::{Seg, even, seg};
use fivebar_web::parts::slab::{Slab, slab};
use fivebar_web::parts::so_far::{Stretch, so_far, thin};
use fivebar_web::parts::stack::{Bracket, Part, stack};
use fivebar_web::parts::strip::{Strip, strip};
use fivebar_web::parts::tile::{self, First, Tile, blank, first, tile};
use fivebar_web::parts::undo::{Undo, undo};
use fivebar_web::parts::verdict::{Sign, verdict};
use fivebar_web::parts::{Page, Place, board, caution, glyph, place_bar, rack};
use fivebar_web::view::{El, el};
use std::{fs, path::Path};

type E = El<()>;
type Screen = (&'static str, fn(Page) -> E);

fn main() -> std::io::Result<()> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut sheets: Vec<_> = fs::read_dir(root.join("www/css"))?.filter_map(|f| f.ok().map(|f| f.path())).collect();
    sheets.sort();
    let css: String = sheets.iter().map(fs::read_to_string).collect::<Result<_, _>>()?;
    let css = css.replace("./font/", "../../www/font/");
    let out = root.join("target/gallery");
    fs::create_dir_all(&out)?;
    let screens: [Screen; 9] = [
        ("count", count),
        ("bench", bench),
        ("offer", offer),
        ("jobs", jobs),
        ("day-one", day_one),
        ("job", job),
        ("rate", rate),
        ("look-back", look_back),
        ("trouble", troubled),
    ];
    for (name, screen) in screens {
        for (kind, width, root_size) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
            let body = screen(Page::new(width * 100.0 / f64::from(root_size))).html();
            for (theme, dark) in [("light", ""), ("dark", "-dark")] {
                let page = format!(
                    "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>{name}</title><style>{css} html{{font-size:{root_size}%}}</style><body><div id=app>{body}</div>"
                );
                fs::write(out.join(format!("{name}{kind}{dark}.html")), page)?;
            }
        }
    }
    Ok(())
}

fn app(place: Place, parts: impl IntoIterator<Item = E>) -> E {
    el("div", "app").kids(parts).kid(place_bar::place_bar(place, |_| ()))
}
fn p(class: &'static str, text: &str) -> E {
    el("p", class).text(text.to_owned())
}
fn span(class: &'static str, text: &str) -> E {
    fivebar_web::parts::fraction::worded("span", class, text.to_owned())
}
fn row(left: E, right: E) -> E {
    el("p", "row").kid(left).kid(right)
}
fn bundles(at: usize) -> E {
    let chip = |(i, n): (usize, &str)| if i == at { Chip::choice(n, true).under("each tap") } else { Chip::choice(n, false) };
    bundle(["1", "5", "10", "n"].into_iter().enumerate().map(chip).collect(), |_| ())
}

fn count(page: Page) -> E {
    let enough = Scale {
        width: page.column(),
        from: 29.0,
        to: 43.0,
        rhythm: Some(Rhythm { tick: 1.0, long: 5.0 }),
        marks: vec![Mark::new(31.0, Kind::Ink, "likely", "31"), Mark::new(40.0, Kind::Ink, "sure", "40")],
        fills: vec![Fill { from: 29.0, to: 38.0, look: Look::Good }],
        needle: Some(38.0),
        ..Scale::default()
    };
    let pile = |name: &str, size: &str, n: u32, plus: &str| {
        let look = if plus.is_empty() { tile::Look::Plain } else { tile::Look::Last };
        let said = format!("{name}, {n} pieces");
        tile(
            Tile {
                name: name.into(),
                size: size.into(),
                figure: n.to_string(),
                counted: n,
                hollow: 0,
                look,
                plus: plus.into(),
                wide: false,
                said,
            },
            page,
            (),
        )
    };
    let pays = el("div", "g2 fold320")
        .kid(el("div", "").kid(p("w8", "Trip pays, $13 ahead")).kid(p("t14 i2", "saves $97, costs $84")))
        .kid(el("div", "").kid(p("w8", "163.5 of 670 lb")).kid(load_bar(163.5 / 670.0, 0.8, "warns at 536")));
    app(
        Place::Count,
        [
            head(
                Head::new("Haul, Tue 3 March", "133 pieces")
                    .fact(Fact::Strong("saved 09:42".into()))
                    .fact(Fact::Plain("46.8 board feet".into())),
            ),
            el("main", "")
                .kid(
                    el("section", "on-board")
                        .kid(row(span("w8", "2 more and you are sure"), span("t14", "38, for 20 legs")))
                        .kid(scale(&enough, "")),
                )
                .kids((!page.is_narrow()).then_some(pays))
                .kid(
                    el("div", "tiles")
                        .kid(pile("Ash strips", "1 1⁄16 × 2¼ × 21½ in", 64, ""))
                        .kid(pile("Ash leg squares", "1¾ × 1¾ × 19 in", 38, "+5"))
                        .kid(pile("Cherry trims", "13⁄16 × 3 × 11 in", 22, ""))
                        .kid(pile("Blocks, unknown", "2 × 4 × 9 in", 9, "")),
                )
                .kid(blank("New pile".into(), "wood, thickness, width, length".into(), ())),
            el("footer", "foot")
                .kid(bundles(1))
                .kid(undo(
                    Undo { words: "Take back 5".into(), under: "ash leg squares, 09:42".into() },
                    (),
                    ("Move last 12 to…".into(), ()),
                ))
                .kid(
                    el("div", "side")
                        .kid(seg(
                            "Trip",
                            vec![
                                Seg::new("Leaving", false).under("08:41"),
                                Seg::new("At the bin", true).under("38 min").running(),
                                Seg::new("Home", false).under("not yet"),
                            ],
                            |_| (),
                        ))
                        .kid(key("key h56", "Sort", "", ())),
                ),
        ],
    )
}

fn bench(page: Page) -> E {
    let clamps = Scale {
        width: page.card(),
        from: 0.0,
        to: 120.0,
        rhythm: Some(Rhythm { tick: 10.0, long: 30.0 }),
        marks: vec![Mark::new(74.0, Kind::Wait, "top 2", "14:58"), Mark::new(106.0, Kind::Wait, "top 4", "15:14")],
        fills: vec![Fill { from: 0.0, to: 106.0, look: Look::OpenWait }],
        ..Scale::default()
    };
    let op = |name: &str, under: &str, done: u32, of: u32| {
        board::board(
            Board { operation: name.into(), under: under.into(), done: format!("{done} of {of}"), notches: Notches { done, of } },
            (),
        )
    };
    let running = slab(Slab {
        operation: "Sand".into(),
        figure: "31".into(),
        unit: "min".into(),
        done: "3 of 5 done".into(),
        notches: Notches { done: 3, of: 5 },
        lines: vec![("About 57 min left".into(), "32 min each".into()), ("from 50 min to 1 h 04".into(), "1 h 41 in all".into())],
    });
    app(
        Place::Bench,
        [
            head(
                Head::new("Bench, Tue 10 March", "Ash plant stands")
                    .fact(Fact::Strong("today 2 h 17".into()))
                    .fact(Fact::Unsaved("saved 14:21".into())),
            ),
            el("main", "")
                .kid(el("section", "card wait").kid(p("w8 c-wait", "In clamps: first off 14:58, last 15:14")).kid(scale(&clamps, "")))
                .kid(rack::rack([
                    op("Taper", "last 14 min each", 5, 5),
                    running,
                    op("Pegs", "next, a notch for each 5", 0, 40),
                    op("Dry fit", "not begun", 0, 5),
                ])),
            el("footer", "foot")
                .kid(el("div", "g2").kid(key("key h56", "Helper joins", "", ())).kid(key("key h56", "Other", "", ())))
                .kid(el("div", "g2").kid(key("key h88", "1 more done", "", ())).kid(key("key solid h88", "Stop", "", ()))),
        ],
    )
}

fn offer(page: Page) -> E {
    let marks = vec![
        Mark::new(101.0, Kind::Under, "not under", "101"),
        Mark::new(130.0, Kind::Good, "settle", "130"),
        Mark::new(140.0, Kind::Ink, "ask", "140"),
        Mark::new(149.56, Kind::Ink, "your rate", "150"),
    ];
    let asked = Scale {
        width: page.card(),
        from: 95.0,
        to: 156.0,
        rhythm: Some(Rhythm { tick: 1.0, long: 5.0 }),
        marks,
        below: Some(("costs covered".into(), "28".into())),
        block: Some(Block { at: 130.0, figure: "130".into() }),
        ..Scale::default()
    };
    let spoken = Spoken { name: "Offer".into(), now: 130.0, words: "130, yes, at settle".into() };
    app(
        Place::Price,
        [
            head(Head::new("Ash plant stand, 3 left", "They offer").with_key(key("key h48", "Pay and hours", "", ()))),
            el("main", "two")
                .kid(
                    el("div", "col")
                        .kid(verdict(Sign::Yes, "Yes", "It is your settle, and 29 more than waiting is worth."))
                        .kid(el("section", "card hot").kid(slider(&asked, &spoken)))
                        .kid(el("div", "g3").kid(key("key fig", "−5", "", ())).kid(key("key t22", "$130", "number pad", ())).kid(key(
                            "key fig",
                            "+5",
                            "",
                            (),
                        )))
                        .kid(chips("key t22", vec![Chip::tap("120"), Chip::tap("135"), Chip::tap("140")], |_| ())),
                )
                .kid(
                    el("div", "col")
                        .kid(
                            el("div", "segs")
                                .kid(seg("How paid", vec![Seg::new("Card", true), Seg::new("Notes", false)], |_| ()))
                                .kid(seg("How it goes", vec![Seg::new("They fetch", true), Seg::new("I deliver", false)], |_| ())),
                        )
                        .kid(even("How many", vec![Seg::new("One", true), Seg::new("Two", false), Seg::new("Three", false)], |_| ()))
                        .kid(el("p", "").kid(el("b", "w8").text("Ask for notes first: ")).kid(el("span", "").text("3.48 more to you.")))
                        .kid(el("div", "push"))
                        .kid(key("key solid h88", "Sold at 130", "1 of 3, by card, they fetch", ()))
                        .kid(key("key", "Show the buyer", "", ())),
                ),
        ],
    )
}

fn life(long: [f64; 5], done: usize) -> Vec<Stretch> {
    ["fetch", "sort", "make", "finish", "sell"]
        .into_iter()
        .zip(long)
        .enumerate()
        .map(|(i, (word, long))| Stretch { word: word.into(), figure: String::new(), long, done: i < done })
        .collect()
}

fn jobs(page: Page) -> E {
    let job = |class: &'static str, lines: [&str; 4], life: &[Stretch]| {
        el("button", class)
            .kid(el("span", "row").kid(span("t22 w8", lines[0])).kid(span("t22 w8", lines[1])))
            .kid(el("span", "row").kid(span("", lines[2])).kid(span("t14", lines[3])))
            .kid(thin(life, page.card(), "so far"))
    };
    app(
        Place::Jobs,
        [
            head(Head::new("Fri 22 May", "Jobs").fact(Fact::Strong("saved 08:14".into())).fact(Fact::Plain("copy 3 days old".into()))),
            el("main", "")
                .kid(p("t22 w8", "Yours: none yet"))
                .kid(key("key", "Type in old jobs", "name, hours, price: your first history", ()))
                .kid(
                    el("div", "exh")
                        .kid(el("div", "").kid(p("t22 w8", "Example")).kid(p("t14", "two jobs, in no total and in no copy")))
                        .kid(key("key h56", "Remove", "", ())),
                )
                .kid(el("h2", "").text("Due and owed"))
                .kid(job(
                    "card hot",
                    ["Hall shoe bench", "€276.00", "Deliver Sat 23 May", "due at hand-over"],
                    &life([83.0, 31.0, 1221.0, 104.0, 95.0], 4),
                ))
                .kid(el("h2", "").text("For sale, and two more to make"))
                .kid(job(
                    "card tap",
                    ["Ash plant stands, 5", "tag $145", "4 sold, 1 at the gallery", "you get $82.46"],
                    &life([48.0, 29.0, 754.0, 76.0, 610.0], 5),
                ))
                .kid(job(
                    "card tap",
                    ["Ash plant stands, 2 more", "", "Next: trim strips", "wood for 2 on the rack"],
                    &life([19.0, 12.0, 302.0, 30.0, 16.0], 2),
                ))
                .kid(
                    el("p", "t14 keyline")
                        .kid(el("span", "").kid(el("i", "swi")).kid(el("span", "").text("so far: fetch, sort, make, finish, sell")))
                        .kid(el("span", "").kid(el("i", "swo")).kid(el("span", "").text("to come"))),
                )
                .kid(el("div", "push"))
                .kid(key("key solid h88", "New job", "", ())),
        ],
    )
}

fn day_one(page: Page) -> E {
    let _ = page;
    let pile = First {
        name: "Pile A".into(),
        say: "Tap this board, once for each piece.".into(),
        figure: "0".into(),
        aside: "name it now, or at home".into(),
        counted: 0,
    };
    app(
        Place::Count,
        [
            head(
                Head::new("Haul, Tue 3 March", "No pieces yet")
                    .fact(Fact::Strong("first start".into()))
                    .fact(Fact::Plain("on this phone only".into())),
            ),
            el("main", "").kid(first(pile, ())).kid(blank("New pile".into(), "wood, thickness, width, length".into(), ())),
            el("footer", "foot").kid(bundles(0)).kid(key("key h88", "Leaving", "starts the trip’s clock, as you drive off", ())),
        ],
    )
}

fn job(page: Page) -> E {
    let stretch = |word: &str, figure: &str, long: f64, done: bool| Stretch { word: word.into(), figure: figure.into(), long, done };
    let life = [
        stretch("fetch", "1 h 23", 83.0, true),
        stretch("sort", "31 min", 31.0, true),
        stretch("make", "20 h 21", 1221.0, true),
        stretch("finish", "1 h 44", 104.0, true),
        stretch("sell", "1 h 35", 95.0, true),
        stretch("deliver", "1 h 30", 90.0, false),
    ];
    let room = |name: &str, under: &str| key("key left", name.to_owned(), under.to_owned(), ());
    app(
        Place::Jobs,
        [
            head(
                Head::new("Oak and beech, made to order", "Hall shoe bench")
                    .fact(Fact::Strong("saved 08:15".into()))
                    .fact(Fact::Plain("since 14 April".into())),
            ),
            el("main", "two")
                .kid(
                    el("div", "col")
                        .kid(
                            el("div", "")
                                .kid(p("t22 w8", "Ready. Delivery to come."))
                                .kid(p("", "Sat 23 May, upstairs, about 1 h 30 and 62 km.")),
                        )
                        .kid(key("key solid h88", "Start delivery", "then 276.00 due", ()))
                        .kid(caution::caution(
                            "Lifting guides are for close, level lifts. Stairs and long loads: fewer kilos, more people.",
                        ))
                        .kid(
                            el("section", "card")
                                .kid(row(span("w8", "So far"), span("t14", "25 h 34, delivery to come")))
                                .kid(so_far(&life, page.card())),
                        ),
                )
                .kid(
                    el("div", "col").kid(
                        el("div", "g2").kids(
                            [
                                ("Wood and plan", "27 pieces, 43.7 L"),
                                ("Hours and money", "25 h 34, 55.33 spent"),
                                ("Sell and deliver", "460 agreed, 276 due"),
                                ("Look back", "after hand-over"),
                            ]
                            .map(|(n, u)| room(n, u)),
                        ),
                    ),
                ),
            strip(Strip { operation: "Sort".into(), minutes: "51 min".into(), stop: "Stop".into() }, ()),
        ],
    )
}

fn rate(page: Page) -> E {
    let part = |name: &str, note: &str, figure: &str, share: f64, yours: bool| Part {
        name: name.into(),
        note: note.into(),
        figure: figure.into(),
        share,
        yours,
    };
    let parts = [
        part("Tools wear", "2,250", "7.50", 7.5, false),
        part("Workshop costs", "3,615", "12.05", 12.05, false),
        part("Tax on own work", "14.13 %", "6.07", 6.07, false),
        part("Profit", "8.5 %", "4.90", 4.9, true),
        part("Pay", "20.00 × 480 h over 300", "32.00", 32.0, true),
    ];
    let bracket = |word: &str, figure: &str| Bracket { word: word.into(), figure: figure.into() };
    let yours = Scale {
        width: page.card(),
        from: 14.0,
        to: 64.0,
        rhythm: Some(Rhythm { tick: 2.0, long: 10.0 }),
        marks: vec![
            Mark::new(23.06, Kind::Good, "over all 480 h", "23.06"),
            Mark::new(36.9, Kind::Good, "per logged hour", "36.90"),
            Mark::new(62.52, Kind::Ink, "your rate", "62.52"),
        ],
        ..Scale::default()
    };
    let band = Scale {
        width: page.card(),
        from: 86.0,
        to: 150.0,
        marks: vec![
            Mark::new(90.0, Kind::Ink, "the gallery", "90"),
            Mark::new(112.0, Kind::Under, "not under", "112"),
            Mark::new(145.0, Kind::Ink, "ask", "145"),
        ],
        band: Some(Band { from: 96.0, to: 128.0, word: "too close, your call:".into(), figure: "96 to 128".into() }),
        ..Scale::default()
    };
    app(
        Place::Workshop,
        [
            head(Head::new("Workshop", "What an hour must earn").fact(Fact::Strong("saved 20:12".into()))),
            el("main", "two")
                .kid(
                    el("div", "col")
                        .kid(el("div", "row low").kid(span("t60 w8", "$62.52")).kid(span("t14", "your rate, for each hour")))
                        .kid(stack(&parts, (bracket("goes out", "25.62"), bracket("yours", "36.90")), page.column(), "Your rate in parts"))
                        .kid(el("section", "card").kid(p("w8", "Of 62.52, 36.90 is yours")).kid(scale(&yours, "")))
                        .kid(el("section", "card").kid(p("w8", "An offer today, by card")).kid(scale(&band, ""))),
                )
                .kid(
                    el("div", "col").kid(el("h2", "").text("Change a figure")).kid(
                        el("div", "g3")
                            .kid(figure_key("pay you want", "$20.00", ()))
                            .kid(figure_key("hours a year", "480", ()))
                            .kid(figure_key("logged to jobs", "300", ())),
                    ),
                ),
        ],
    )
}

fn look_back(page: Page) -> E {
    let ratio = |name: &str, note: &str, ratio: f64, figure: &str, under: bool| Ratio {
        name: name.into(),
        note: note.into(),
        ratio,
        figure: figure.into(),
        under,
    };
    let rows = [
        ratio("Hours", "26 h 03, planned 19 h 00", 1.371, "1.37", true),
        ratio("Wood", "48.9 % of used, planned 45 %", 1.09, "1.09", false),
        ratio("Price", "460, planned 460", 1.0, "1.00", false),
    ];
    app(
        Place::Jobs,
        [
            head(
                Head::new("Hall shoe bench", "Look back")
                    .fact(Fact::Strong("handed over 23 May".into()))
                    .fact(Fact::Plain("saved 17:40".into())),
            ),
            el("main", "")
                .kid(p("t60 w8", "€12.74"))
                .kid(el("section", "card").kid(p("t22 w8", "Seven hours over; wood and price as planned.")).kid(ratios(
                    &rows,
                    ("as planned", "1.00"),
                    page.card(),
                    "Ratios",
                )))
                .kid(field(
                    Field {
                        id: "lesson",
                        label: "The lesson".into(),
                        value: "Rip first".into(),
                        keyboard: Keyboard::Words,
                        ..Field::default()
                    },
                    |_| (),
                )),
        ],
    )
}

fn troubled(page: Page) -> E {
    let _ = page;
    let failed = Tile {
        name: "Cherry trims".into(),
        figure: "17".into(),
        counted: 17,
        hollow: 5,
        look: tile::Look::Failed,
        wide: true,
        said: "Cherry trims".into(),
        ..Tile::default()
    };
    app(
        Place::Count,
        [
            head(
                Head::new("At home, naming pile C", "How wide?")
                    .fact(Fact::Strong("saved 18:02".into()))
                    .fact(Fact::Plain("cherry, 22 pieces".into())),
            ),
            el("main", "")
                .kid(entry("1,125", "in", true))
                .kid(span("t17", "It may mean 1 1⁄8. Pile C stays as it was."))
                .kid(pad(Some(','), |_| ()))
                .kid(fraction_keys(8, |_| ()))
                .kid(glyph::break_line())
                .kid(tile(failed, Page::default(), ()))
                .kid(bars(Bars { cut: 17, hollow: 5, per_row: 8, size: Cut::Tall }))
                .kid(trouble(Trouble {
                    what: "Not counted: 5 cherry trims".into(),
                    why: "The phone is full.".into(),
                    safe: "Your 119 pieces, saved 09:31.".into(),
                    to_do: "Free some space, or keep a copy now.".into(),
                })),
        ],
    )
}
