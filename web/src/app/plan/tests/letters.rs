//! What stands on the pieces of a picture: on a screen nothing smaller than is read, and what is too small for its letter told otherwise.

use super::told::solved;
use super::*;

const THIN: &str = "gone 37 strips burnt\npile thin oak-european 27 x 28 x 1010 mm\ncount 60 thin\n";
/// Letters that are smaller than is read on a screen.
const SMALL: [&str; 3] = ["s9", "s7", "s5"];

/// Every label of a drawing: its class and its text.
fn labels(shown: &str) -> Vec<(&str, &str)> {
    let one = |text| {
        let (class, rest): (&str, &str) = str::split_once(text, '"')?;
        Some((class, rest.split_once('>')?.1.split_once('<')?.0))
    };
    shown.split("<text class=\"").skip(1).filter_map(one).filter(|(class, _)| class.starts_with("mk")).collect()
}

fn planned(lines: &str, taps: &[Tap], figures: &[&str]) -> App {
    let mut app = super::ends::planned(lines, taps, figures);
    solved(&mut app);
    app
}

/// What the page says under the picture, and that no label on a screen is too small, on pages of each width.
#[track_caller]
fn check(app: &mut App, wanted: &[&str]) {
    for width in [390.0, 320.0] {
        app.page = crate::parts::page::Page { width };
        let shown = page(app);
        let all = labels(&shown);
        let small = all.iter().filter(|(class, _)| SMALL.iter().any(|size| class.contains(size)));
        let on_screen: Vec<_> = small.filter(|(class, _)| !class.contains("print-only")).collect();
        assert_eq!(on_screen, [] as [&(&str, &str); 0], "{width}");
        for words in wanted {
            assert!(shown.contains(words), "{width} {words}: {shown}");
        }
    }
}

#[test]
fn no_letter_on_a_screen_is_smaller_than_is_read() {
    // By hand: 28 less 5 gives rows of 23 at most, 6 px of a page 330 px wide for 1200; pieces of 40 of a board of 1010 are 13 px long.
    let parts = "part \"stick\" 40 of 20 x 20 x 40 mm oak-european for tray\n";
    let rows = super::told::without(1, vec![Tap::Shape(Shape::Rows)]);
    check(&mut planned("", &rows, &["1200", "398"]), &[]);
    check(&mut planned(THIN, &rows, &["1200", "600"]), &["Too small for their letters", "Row 1: "]);
    check(&mut planned(parts, &[Tap::Shape(Shape::Parts)], &["1"]), &["Too small for their names"]);
}

/// A number that has no room in the picture stands in the list of its row, in the order in which it lies.
#[test]
fn rows_without_letters_are_told_row_by_row() {
    let rows = super::told::without(1, vec![Tap::Shape(Shape::Rows)]);
    let app = planned(THIN, &rows, &["1200", "600"]);
    let sheet = &app.plan.found.as_ref().unwrap().sheet;
    let (shown, rows) = (page(&app), usize::try_from(sheet.made).unwrap());
    let told = (1..=rows).filter(|nth| shown.contains(&format!(">Row {nth}: "))).count();
    assert_eq!((told, shown.contains(&format!(">Row {}: ", rows + 1))), (rows, false), "{shown}");
}
