//! A tap on a piece says its pile, and what is cut of its board, as the list at the saw has it.

use super::told::said;
use super::*;

const PARTS: &str = "part \"leg\" 4 of 20 x 50 x 450 mm oak-european for tray\npart \"rail\" 3 of 20 x 50 x 320 mm oak-european for tray\n";

/// What a text says, without its tags.
fn bare(html: &str) -> String {
    html.split('<').map(|text| text.split_once('>').map_or(text, |(_, text)| text)).collect()
}

#[test]
fn a_tapped_part_says_what_is_cut_of_its_board() {
    for shape in [Shape::Parts, Shape::Sticks] {
        let (mut app, shown) = said(PARTS, &[Tap::Shape(shape), Tap::At(0), Tap::Press(Press::Digit(2))], &[]);
        let (_, list) = shown.split_once("class=\"ticks\"").unwrap();
        let list = bare(list.split("</section>").next().unwrap());
        let sheet = &app.plan.found.as_ref().unwrap().sheet;
        let pieces: Vec<_> = sheet.picture.pieces.iter().map(|piece| (piece.source, piece.part)).collect();
        assert!(1 < sheet.lines.len() && pieces.iter().any(|(_, part)| *part == Some(1)), "{shape:?} {shown}");
        for nth in 0..pieces.len() {
            heard(&mut app, [Tap::Piece(nth)]);
            let shown = page(&app);
            let (before, behind) = shown.split_once(". At the saw: ").unwrap_or_else(|| panic!("{shape:?} {nth}: {shown}"));
            let own = before.rsplit('>').next().unwrap();
            assert!(
                own.starts_with(["leg, 45", "rail, 32"][pieces[nth].1.unwrap()]) && own.contains(": A ") && own.ends_with("strips"),
                "{own}"
            );
            let cut = bare(behind.split('<').next().unwrap());
            let (cut, left) = cut.split_once("; ").unwrap_or((&cut, ""));
            assert!(!cut.is_empty() && list.contains(cut) && list.contains(left), "{cut} {left}: {list}");
            heard(&mut app, [Tap::Piece(nth)]);
        }
    }
}
