//! The bench with a clock running.
use crate::*;

pub fn bench(page: Page) -> E {
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
