//! Every pair of colours in use, computed from the tokens themselves: text 7 : 1, marks and borders that carry meaning 3 : 1.
use std::collections::HashMap;

const TOKENS: &str = include_str!("../../../www/css/00-tokens.css");

const TEXT: [(&str, &str); 16] = [
    ("ink", "board"),
    ("ink", "card"),
    ("ink2", "board"),
    ("ink2", "card"),
    ("card", "ink"),
    ("board", "ink"),
    ("card", "ink2"),
    ("on-run", "run"),
    ("wait", "board"),
    ("wait", "card"),
    ("good", "board"),
    ("good", "card"),
    ("under", "board"),
    ("under", "card"),
    ("on-wood", "wood1"),
    ("on-wood", "wood2"),
];

const MARKS: [(&str, &str); 9] = [
    ("line2", "board"),
    ("line2", "card"),
    ("run-edge", "board"),
    ("run-edge", "card"),
    ("on-run", "run"),
    ("wait", "board"),
    ("good", "card"),
    ("under", "card"),
    ("on-wood", "cherry"),
];

fn luminance(hex: &str) -> f64 {
    let channel = |at: usize| {
        let c = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).expect("two hex figures")) / 255.0;
        if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

fn contrast(a: &str, b: &str) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// The colours set in the block that starts after `opening`.
fn block(opening: &str) -> HashMap<&'static str, &'static str> {
    let from = TOKENS.find(opening).expect("the block is in the stylesheet") + opening.len();
    let body = TOKENS[from..].split('}').next().unwrap_or_default();
    let pairs = body.split(';').filter_map(|line| line.trim().trim_start_matches("--").split_once(":#"));
    pairs.map(|(name, hex)| (name, &TOKENS[offset(hex) - 1..offset(hex) + 6])).collect()
}

fn offset(part: &'static str) -> usize {
    part.as_ptr() as usize - TOKENS.as_ptr() as usize
}

fn themes() -> [(&'static str, HashMap<&'static str, &'static str>); 2] {
    let yard = block("/* yard */\n:root{");
    let mut shop = yard.clone();
    shop.extend(block("/* shop */\n[data-theme=dark]{"));
    [("yard", yard), ("shop", shop)]
}

fn check(pairs: &[(&str, &str)], least: f64) {
    for (theme, colours) in themes() {
        for (over, under) in pairs {
            let ratio = contrast(colours[over], colours[under]);
            assert!(ratio >= least, "{theme}: {over} on {under} is {ratio:.3}, wanted {least}");
        }
    }
}

#[test]
fn the_formula_gives_published_ratios() {
    for (a, b, ratio) in [
        ("#000000", "#ffffff", 21.0),
        ("#777777", "#ffffff", 4.48),
        ("#595959", "#ffffff", 7.0),
        ("#ff0000", "#ffffff", 4.0),
        ("#ffff00", "#ffffff", 1.07),
    ] {
        assert!((contrast(a, b) - ratio).abs() < 0.006, "{a} on {b}: {}", contrast(a, b));
    }
    assert!(contrast("#777777", "#ffffff") < 4.5);
}

#[test]
fn text_can_be_read_in_the_yard_and_in_the_shop() {
    check(&TEXT, 7.0);
}

#[test]
fn marks_that_mean_something_can_be_seen() {
    check(&MARKS, 3.0);
}

/// Amber alone is too faint on a light board: there its edge is ink.
#[test]
fn amber_has_an_ink_edge_in_the_yard() {
    let [(_, yard), (_, shop)] = themes();
    assert!(contrast(yard["run"], yard["board"]) < 3.0);
    assert_eq!(yard["run-edge"], yard["ink"]);
    assert!(contrast(shop["run"], shop["board"]) >= 3.0);
}

/// The phone's own dark setting and the maker's choice of the shop are one theme.
#[test]
fn both_ways_into_the_shop_are_one_theme() {
    assert_eq!(block("[data-theme=dark]{"), block(":root:not([data-theme]){"));
}
