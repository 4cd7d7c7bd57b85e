//! The sheet for the shop wall, of each shape: the picture with a letter or a number on its pieces, the list by pile in the order of cutting, and
//! nothing that is told by a colour alone. That it fits one sheet of A4 and of Letter the browser's test of the plan looks at.

use super::told::{said, without};
use super::*;
use fivebar_core::sheet::plan::Mark;

const STYLES: &str = include_str!("../../../../../www/css/90-print.css");

/// What a text says, without its tags.
fn bare(html: &str) -> String {
    html.split('<').map(|text| text.split_once('>').map_or(text, |(_, text)| text)).collect()
}

/// The texts that stand in the pictures.
fn in_pictures(shown: &str) -> Vec<String> {
    let drawn = shown.split("<svg class=\"lay").skip(1).map(|svg| svg.split("</svg>").next().unwrap());
    drawn.flat_map(|svg| svg.split("<text").skip(1).map(|text| bare(&format!("<text{}", text.split("</text>").next().unwrap())))).collect()
}

#[track_caller]
fn check(name: &str, lines: &str, taps: &[Tap], figures: &[&str]) {
    let (app, shown) = said(lines, taps, figures);
    let (given, sheet) = (app.plan.given.as_ref().unwrap(), &app.plan.found.as_ref().unwrap().sheet);
    assert!(0 < sheet.made, "{name}: {shown}");
    let letter = |source: usize| given.ready.sources[source].letter.clone();
    // Each piece carries its pile's letter or its number, where it has room on a screen; else strokes stand for it, and what they mean.
    let texts = in_pictures(&shown);
    for piece in &sheet.picture.pieces {
        let mark = match piece.mark {
            Mark::Letter => letter(piece.source),
            Mark::Number(n) if piece.part.is_some() => format!("{} {n}", letter(piece.source)),
            Mark::Number(n) => n.to_string(),
        };
        let is_told = texts.iter().any(|text| text.split("  ×").next() == Some(mark.as_str()));
        assert!(is_told || shown.contains("Too small for their"), "{name}: {mark} {texts:?}");
    }
    // The piles with their sizes, and the list, one pile behind the other, each line with its pile or the numbers in the picture.
    let used: Vec<usize> = sheet.used.iter().filter(|used| 0 < used.used).map(|used| used.source).collect();
    let sizes = shown.split("<p class=\"t14 print-only\">").nth(1).map(|text| bare(text.split("</p>").next().unwrap())).unwrap();
    assert!(used.iter().all(|source| sizes.contains(&format!("{}: ", letter(*source)))), "{name}: {sizes}");
    let mut in_turn: Vec<usize> = sheet.lines.iter().map(|line| line.source).collect();
    in_turn.dedup();
    assert_eq!(in_turn, used, "{name}: a pile is cut to its end");
    let ticks: Vec<&str> = shown.split("<button class=\"tick").skip(1).map(|tick| tick.split("</button>").next().unwrap()).collect();
    assert_eq!(ticks.len(), sheet.lines.len(), "{name}");
    for (tick, line) in ticks.into_iter().zip(&sheet.lines) {
        let marks = tick.rsplit("class=\"no\">").next().map(|text| bare(text.split("</span>").next().unwrap())).unwrap();
        let is_marked = marks.contains(&letter(line.source)) || line.numbers.iter().any(|n| marks.contains(&n.to_string()));
        assert!(is_marked && !tick.contains("no-print"), "{name}: {marks} {tick}");
    }
    assert!(shown.contains("<p class=\"print-only\">Mon 2 March</p>"), "{name}: its day");
    assert!(bare(&shown).contains("Reckoned with "), "{name}");
}

#[test]
fn each_shape_has_its_sheet_for_the_wall() {
    let parts = "part \"top\" 1 of 25 x 300 x 900 mm for tray\npart \"leg\" 4 of 38 x 38 x 350 mm for tray\n";
    let sticks = "part \"leg\" 4 of 20 x 50 x 550 mm for tray\npart \"rail\" 2 of 20 x 50 x 250 mm for tray\n";
    check("top", "", &without(1, vec![Tap::Shape(Shape::Rows)]), &["1200", "400"]);
    check("top of ends", "", &[Tap::Shape(Shape::Rows)], &["1200", "400", "7"]);
    check("parts", parts, &[Tap::Shape(Shape::Parts)], &["1"]);
    check("sticks", sticks, &[Tap::Shape(Shape::Sticks)], &["2"]);
    check("field", "", &[Tap::Shape(Shape::Field), Tap::Pattern(1)], &["600", "400"]);
    check("field of two woods", "", &[Tap::Shape(Shape::Field), Tap::Pattern(0), Tap::Two], &["220", "40"]);
}

/// Woods are white on paper, so letters and strokes alone tell them; what is printed is no wider than A4 (210) and Letter (216) leave of their
/// margins, and no size of sheet is forced.
#[test]
fn paper_is_of_either_size_and_without_colours() {
    for rule in [
        "--wood1:#FFFFFF;--wood2:#FFFFFF",
        "--ink:#000000",
        "@page{margin:15mm 15mm 18mm}",
        ".app{display:block;height:auto;padding:0;max-width:180mm}",
    ] {
        assert!(STYLES.contains(rule), "{rule}");
    }
    // 210 less twice 15 are 180.
    let page = STYLES.split("@page{").nth(1).unwrap().split('}').next().unwrap();
    assert!(!page.contains("size"), "{page}");
}
