//! The jobs, one job, looking back.
use crate::*;

fn life(long: [f64; 5], done: usize) -> Vec<Stretch> {
    ["fetch", "sort", "make", "finish", "sell"]
        .into_iter()
        .zip(long)
        .enumerate()
        .map(|(i, (word, long))| Stretch { word: word.into(), figure: String::new(), long, done: i < done })
        .collect()
}

pub fn jobs(page: Page) -> E {
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

pub fn job(page: Page) -> E {
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
                            "Lifting guides are for close, level lifts. Stairs and long loads: less weight, more people.",
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

pub fn look_back(page: Page) -> E {
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
