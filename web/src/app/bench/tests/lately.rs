//! What was done lately: the latest four, each by its job where they are of several.

use super::*;
use fivebar_core::quantity::Listed;
use fivebar_core::story;

/// A bench as it was told, seen at nine.
fn told(text: &str) -> Told {
    let story = story::tell(&format!("2026-03-03 07:00 -05:00 workshop USD inch\n{text}"));
    assert_eq!(story.refused, []);
    let mut told = Told::empty();
    let lines = story.book.lines().map(str::to_owned).listed();
    told.app.shelf_mut().heard(lines.iter().map(String::as_str), nth(0).wall.at);
    told
}

/// What each board under "Lately" says: its operation, and the line under it.
fn lately(shown: &str) -> Vec<(String, String)> {
    let Some(from) = shown.split(">Lately<").nth(1) else { return vec![] };
    let boards = from.split("<h2").next().unwrap().split("class=\"board\"").skip(1);
    let between = |board: &str, class: &str| {
        let text = board.split(&format!("class=\"{class}\">")).nth(1).and_then(|rest| rest.split("</span>").next());
        text.unwrap_or_default().replace('\u{a0}', " ")
    };
    boards.map(|board| (between(board, "nm"), between(board, "s"))).collect()
}

#[track_caller]
fn check(text: &str, boards: &[(&str, &str)]) {
    let shown = told(text).at(0, []);
    let found = lately(&shown);
    assert_eq!(found.iter().map(|(op, under)| (op.as_str(), under.as_str())).collect::<Vec<_>>(), boards, "{shown}");
}

const JOBS: &str = "job lamp \"Lamp\" 1 spec\njob stool \"Stool\" 1 spec\n";

/// Of six operations the four that were latest are offered: what runs is one of them, the two before them are not on the page.
#[test]
fn the_latest_four_are_on_the_page() {
    let day = "07:01 start \"trim\" make on stool\n07:10 start \"joint\" make on stool\n07:20 start \"bore\" make on stool\n\
        07:30 start \"sand\" make on stool\n07:40 start \"taper\" make on stool\n07:50 start \"wax\" make on stool\n";
    check(&format!("{JOBS}{day}"), &[("taper", "10 min"), ("sand", "10 min"), ("bore", "10 min")]);
}

/// Of two jobs and of none: each says whose it is, that of the job in hand too.
#[test]
fn what_was_done_lately_says_its_job_where_there_are_several() {
    let day = "07:10 start \"trim\" make on lamp\n07:20 start \"bore\" make on stool\n07:30 start \"sharpen\" make\n\
        07:40 start \"glue\" make on lamp\n07:50 start \"wax\" make on stool\n";
    check(&format!("{JOBS}{day}"), &[("glue", "Lamp, 10 min"), ("sharpen", "No job, 10 min"), ("bore", "Stool, 10 min")]);
    // All of the job in hand: its name is above them.
    let day = "07:20 start \"bore\" make on stool\n07:40 start \"glue\" make on stool\n07:50 start \"wax\" make on stool\n";
    check(&format!("{JOBS}{day}"), &[("glue", "10 min"), ("bore", "20 min")]);
}
