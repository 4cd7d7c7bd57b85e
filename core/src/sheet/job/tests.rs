//! What a job says it is, and what there is to do next.

use super::*;

/// What is told of five stools; the next act as a word.
#[track_caller]
fn check(told: &str, next: &str) {
    let begins = "2026-03-03 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 5 spec\n";
    let story = crate::story::tell(&format!("{begins}{told}"));
    assert_eq!(story.refused, [], "{told}");
    let found = job(&Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap()).unwrap().next;
    let found = match found {
        NextAct::WorkOn { op } => format!("work on {}", op.unwrap_or_default()),
        NextAct::SetTag => "tag".to_owned(),
        other => format!("{other:?}"),
    };
    assert_eq!(found.trim_end(), next, "{told}");
}

const SAND: &str = "plan \"sand\" make 200 min for stools pieces 5\n";

/// Made is said of what is made: not of glued tops, nor of pieces that are left, nor of hours that are to come.
#[test]
fn made_is_said_only_when_it_is_made() {
    check("08:10 start \"glue up\" make on stools\n09:40 stop", "work on");
    check("08:10 start \"sand\" make on stools\n09:40 stop\n10:00 start \"oil\" make on stools stage finish\n11:00 stop", "tag");
    check("08:10 start \"oil\" make on stools stage finish\n09:00 stop\nbatch 5 \"oil\" for stools", "work on");
    check(&format!("{SAND}08:10 start \"trim\" make on stools\n09:00 stop"), "work on sand");
    check(&format!("{SAND}08:10 start \"sand\" make on stools\n09:00 done 2\n13:05 stop"), "work on sand");
    check(&format!("{SAND}08:10 start \"sand\" make on stools\n09:00 done 2\n13:05 done 3\n13:05 stop"), "tag");
    let batch = "batch 4 \"bore\" for stools\n08:10 start \"bore\" make on stools\n08:20 done 1\n08:30 start \"sand\" make on stools\n";
    check(&format!("{SAND}{batch}09:00 done 5\n13:05 stop"), "work on");
}
