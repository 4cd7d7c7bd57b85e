//! Count at the bin, day one, trouble.
use crate::*;

pub fn count(page: Page) -> E {
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
                        .kid(scale(&enough(page), "")),
                )
                .kids((!page.is_narrow()).then(pays))
                .kid(
                    el("div", "tiles")
                        .kid(pile(page, "Ash strips", ("1 1⁄16 × 2¼ × 21½ in", 64), ""))
                        .kid(pile(page, "Ash leg squares", ("1¾ × 1¾ × 19 in", 38), "+5"))
                        .kid(pile(page, "Cherry trims", ("13⁄16 × 3 × 11 in", 22), ""))
                        .kid(pile(page, "Blocks, unknown", ("2 × 4 × 9 in", 9), "")),
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

fn enough(page: Page) -> Scale {
    Scale {
        width: page.column(),
        from: 29.0,
        to: 43.0,
        rhythm: Some(Rhythm { tick: 1.0, long: 5.0 }),
        marks: vec![Mark::new(31.0, Kind::Ink, "likely", "31"), Mark::new(40.0, Kind::Ink, "sure", "40")],
        fills: vec![Fill { from: 29.0, to: 38.0, look: Look::Good }],
        needle: Some(38.0),
        ..Scale::default()
    }
}

fn pile(page: Page, name: &str, (size, n): (&str, u32), plus: &str) -> E {
    let look = if plus.is_empty() { tile::Look::Plain } else { tile::Look::Last };
    let said = format!("{name}, {n} pieces");
    tile(
        Tile {
            name: name.into(),
            size: size.into(),
            by_size: false,
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
}

fn pays() -> E {
    el("div", "g2 fold320")
        .kid(el("div", "").kid(p("w8", "Trip pays, $13 ahead")).kid(p("t14 i2", "saves $97, costs $84")))
        .kid(el("div", "").kid(p("w8", "163.5 of 670 lb")).kid(load_bar(163.5 / 670.0, 0.8, "warns at 536")))
}

pub fn day_one(page: Page) -> E {
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

pub fn troubled(page: Page) -> E {
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
