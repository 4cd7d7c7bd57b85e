//! An offer, and the rate.
use crate::*;

pub fn offer(page: Page) -> E {
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

pub fn rate(page: Page) -> E {
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
    app(
        Place::Workshop,
        [
            head(Head::new("Workshop", "What an hour must earn").fact(Fact::Strong("saved 20:12".into()))),
            el("main", "two")
                .kid(
                    el("div", "col")
                        .kid(el("div", "row low").kid(span("t60 w8", "$62.52")).kid(span("t14", "your rate, for each hour")))
                        .kid(stack(&parts, (bracket("goes out", "25.62"), bracket("yours", "36.90")), page.column(), "Your rate in parts"))
                        .kid(el("section", "card").kid(p("w8", "Of 62.52, 36.90 is yours")).kid(scale(&yours(page), "")))
                        .kid(el("section", "card").kid(p("w8", "An offer today, by card")).kid(scale(&band(page), ""))),
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

fn yours(page: Page) -> Scale {
    Scale {
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
    }
}

fn band(page: Page) -> Scale {
    Scale {
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
    }
}
