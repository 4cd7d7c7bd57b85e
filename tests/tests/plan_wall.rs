//! Every shape of a plan on paper, of the wood of both demos: one sheet for the wall on A4 and on Letter, before the wood is taken and after.
//! The planner's worker plans them, and its answer is what is shown and used; a tile is tapped, and Print pressed.
use fivebar_core::plan::post;
use fivebar_core::story::{BENCH, STANDS, tell};
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};

/// In inches.
const A4: [f64; 2] = [8.27, 11.69];
const LETTER: [f64; 2] = [8.5, 11.0];

/// The days of a demo before its job takes wood, and a job of lengths from sticks.
fn before(demo: &str, takes: &str, rails: &str) -> Vec<String> {
    let (days, _) = demo.split_once(takes).expect("wood is taken");
    let told = tell(&format!("{days}\n{rails}"));
    assert_eq!(told.refused, []);
    told.book.lines().map(str::to_owned).collect()
}

/// What was asked of a worker and what it answered to that, the last time; and whether the paper was asked for.
const NOTES: &str = "globalThis.notes = { printed: 0 }; window.print = () => { notes.printed += 1 };
    { const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (message) {
        if (message.asked) {
          const asked = [...message.asked].map(String);
          this.addEventListener('message', ({ data }) => {
            if (data.kind === 'done') Object.assign(notes, { asked, answer: [...data.row].map(String) });
          });
        }
        return postMessage.call(this, message);
      } }";

fn noted(maker: &mut Maker<'_>, what: &str) -> Vec<i64> {
    let row = maker.browser.eval(&maker.page, &format!("notes.{what}"));
    row.as_array().unwrap_or_else(|| panic!("{what}: {row}")).iter().map(|n| n.as_str().unwrap().parse().unwrap()).collect()
}

/// The worker's answer is a plan of what it was asked, and keeps every rule.
fn is_of_the_worker(maker: &mut Maker<'_>) {
    let asked = post::take(noted(maker, "asked")).expect("what is asked");
    let answered = post::take_answer(noted(maker, "answer")).expect("a plan");
    assert!(asked.holds(&answered) && !answered.bound.is_empty(), "{answered:?}");
}

/// A job, what to make of it, its figures by their slots; and the parts that are left out once it says that nothing fits them.
type Case<'a> = (&'a str, &'a str, &'a [(u32, &'a str)], &'a [&'a str]);

/// So many sheets on A4 and on Letter.
fn sheets(maker: &mut Maker<'_>) -> [usize; 2] {
    [A4, LETTER].map(|paper| maker.browser.sheets(&maker.page, paper))
}

/// So many sheets before the wood is taken and after.
fn on_paper(lines: &[String], (job, shape, figures, without): Case<'_>) -> [[usize; 2]; 2] {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    browser.write_book(&page, lines);
    browser.reload(&page);
    app::read(&mut browser, &page);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    maker.browser.eval(&maker.page, NOTES);
    maker.touch(".places > :nth-child(4)");
    maker.taps(&[job, "Wood and plan", "What can I make?", shape]);
    for (nth, figure) in figures {
        maker.touch(&format!(".slots > :nth-child({nth})"));
        maker.pad(figure);
    }
    maker.touch(".foot .key.solid");
    maker.taps(without);
    maker.reads("Use these");
    maker.browser.wait(&maker.page, "!document.getElementById('app').innerText.includes('Looking')");
    maker.finds("!!notes.answer", "the worker's answer");
    is_of_the_worker(&mut maker);
    if shape == "A field of tiles" {
        maker.touch("#piece-1");
        maker.reads(" long: ");
    }
    maker.tap("Print for the wall");
    assert_eq!(maker.browser.eval(&maker.page, "notes.printed"), 1);
    let before = sheets(&mut maker);
    maker.shot(&format!("wall-{}-{}", &job[..3], &shape[2..7]));
    maker.tap("Use these");
    maker.reads("The job has this wood.");
    let after = sheets(&mut maker);
    assert_eq!(browser.errors(), [""; 0]);
    [before, after]
}

fn every_shape(lines: &[String], cases: &[Case<'_>]) {
    let found: Vec<_> = cases.iter().map(|case| (case.1, on_paper(lines, *case))).collect();
    let wanted: Vec<_> = cases.iter().map(|case| (case.1, [[1, 1], [1, 1]])).collect();
    assert_eq!(found, wanted, "before and after, on A4 and Letter");
}

const STAND: &str = "Plant stands";
const FIELD: &str = "A field of tiles";

#[test]
fn the_stands_of_the_demo_have_one_sheet_each() {
    let rails = "job rails \"Rails\" 5 spec\npart \"leg\" 4 of 1 1/2 x 1 1/2 x 8 in ash-white for rails\n\
        part \"rail\" 4 of 3/4 x 1 3/4 x 8 in ash-white for rails\npart \"peg\" 4 of 1/2 x 1/2 x 3/4 in cherry-black for rails\n";
    let lines = before(STANDS, "20:10 take 25 strips", rails);
    let cases: [Case<'_>; 4] = [
        (STAND, "A top in rows", &[(1, "30"), (2, "14")], &[]),
        (STAND, "The job’s parts", &[], &[]),
        ("Rails", "Lengths from sticks", &[], &[]),
        (STAND, FIELD, &[(1, "20"), (2, "12")], &[]),
    ];
    every_shape(&lines, &cases);
}

#[test]
fn the_bench_of_the_demo_has_one_sheet_each() {
    let rails = "job rails \"Rails\" 2 spec\npart \"rail\" 3 of 24 x 57 x 300 mm beech-european for rails\n\
        part \"post\" 4 of 24 x 40 x 423 mm beech-european for rails\n";
    let lines = before(BENCH, "19:10 take 11 ends", rails);
    let cases: [Case<'_>; 4] = [
        ("Hall shoe bench", "A top in rows", &[(1, "1040"), (2, "340")], &[]),
        ("Hall shoe bench", "The job’s parts", &[], &["Leave out top", "Leave out post"]),
        ("Rails", "Lengths from sticks", &[], &[]),
        ("Hall shoe bench", FIELD, &[(1, "600"), (2, "300")], &[]),
    ];
    every_shape(&lines, &cases);
}
