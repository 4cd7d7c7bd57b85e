//! Planning beside the page: the worker starts without a network, answers, and never holds a tap; a plan by taps, from pile to paper.
use fivebar_core::plan::outlook::{Hoped, Pieces, outlook};
use fivebar_core::plan::parts::problem as parts;
use fivebar_core::plan::sticks::problem::{Part, Pile, Problem};
use fivebar_core::plan::{Asked, Made, post};
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Look, Page, Phone, app, readable};

/// Two sticks of 1000 and a kerf of 3 give four rails of 490: two sets, and nothing is proven better.
fn rails() -> Asked {
    let piles = vec![Pile { id: "0".into(), count: 2, length: 1000 }];
    let parts = vec![Part { id: "0".into(), per_set: 2, length: 490, piles: None }];
    Asked::Sticks(Problem { kerf: 3, piles, parts, ..Default::default() })
}

/// What the worker tells of a row, until it is done or has failed.
fn told(browser: &mut Browser, page: &Page, row: &[i64]) -> (String, Vec<i64>) {
    asked(browser, page, "asked", row)
}

fn asked(browser: &mut Browser, page: &Page, what: &str, row: &[i64]) -> (String, Vec<i64>) {
    let numbers: Vec<String> = row.iter().map(|n| format!("{n}n")).collect();
    let ask = format!(
        "new Promise((done, wrong) => {{ const worker = new Worker('./worker.js', {{ type: 'module' }}); worker.onerror = wrong;
          worker.onmessage = ({{ data }}) => {{ if (data.kind === 'done' || data.kind === 'failed') done([data.kind, [...(data.row ?? [])].map(String)]) }};
          worker.postMessage({{ {what}: BigInt64Array.of({}), ms: 200, seed: 1 }}) }})",
        numbers.join(", ")
    );
    let said = browser.eval(page, &ask);
    let row = said[1].as_array().into_iter().flatten().filter_map(|n| n.as_str()?.parse().ok()).collect();
    (said[0].as_str().unwrap_or_default().to_owned(), row)
}

/// Twelve unsorted pieces of which each gives one leg; a set is four.
fn legs() -> Hoped {
    let piles = vec![parts::Pile { id: "0".into(), count: 1, length: 500, width: 50, thickness: 25 }];
    let part = parts::Part { id: "0".into(), per_set: 4, length: 500, width: 50, thickness: 25, glue: false, piles: None };
    let pieces = Pieces { certain: 0, unsorted: 12, share: [9.0, 3.0], lots: u64::MAX, kin: 3 };
    Hoped { problem: parts::Problem { piles, parts: vec![part], ..Default::default() }, piles: vec![pieces], known: vec![] }
}

#[test]
fn a_worker_reckons_as_a_terminal_does() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let (kind, row) = asked(&mut browser, &page, "hoped", &post::put_hoped(&legs()));
    assert_eq!((&*kind, post::take_outlook(row)), ("done", Some(outlook(&legs(), 1))));
    assert_eq!(asked(&mut browser, &page, "hoped", &[1, 2, 3]), ("failed".to_owned(), vec![]));
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn a_worker_plans_without_a_network_and_says_no_to_nonsense() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.offline(true);
    let (kind, row) = told(&mut browser, &page, &post::put(&rails()));
    let answered = post::take_answer(row).expect("a plan");
    assert_eq!((&*kind, matches!(answered.plan, Made::Sticks(_))), ("done", true), "{answered:?}");
    assert_eq!(told(&mut browser, &page, &[1, 2, 3]), ("failed".to_owned(), vec![]));
    assert_eq!(browser.errors(), [""; 0]);
}

/// A new pile by chips: the wood's place among its chips, then thickness, width and length, each on the pad.
fn pile(maker: &mut Maker<'_>, wood: u32, sides: [&str; 3], (nth, n): (u32, usize)) {
    maker.touch(".blank");
    maker.touch(&format!("main .chips > :nth-child({wood})"));
    for side in sides {
        maker.touch("main .chips > :last-child");
        maker.pad(side);
        maker.tap("Done");
    }
    (0..n).for_each(|_| maker.touch(&format!(".tiles > :nth-child({nth})")));
}

fn sorted(maker: &mut Maker<'_>, pile: &str, rejects: &[&str], good: usize) {
    maker.tap("Sort");
    maker.tap(pile);
    rejects.iter().for_each(|why| maker.tap(why));
    (0..good).for_each(|_| maker.touch(".goodt"));
    maker.reads("0 to go");
    maker.tap("Done");
}

fn part(maker: &mut Maker<'_>, name: &str, n: &str, sides: [&str; 3]) {
    maker.tap("Add a part");
    maker.types("part-name", name);
    for (nth, figure) in (1..).zip([n].into_iter().chain(sides)) {
        maker.touch(&format!(".slots > :nth-child({nth})"));
        maker.pad(figure);
    }
    maker.tap("Done");
}

/// What of a kind takes room on the page.
fn seen(maker: &mut Maker<'_>, selector: &str) -> u64 {
    let script = format!("[...document.querySelectorAll({selector:?})].filter(it => it.getClientRects().length).length");
    maker.browser.eval(&maker.page, &script).as_u64().expect("a count")
}

/// In inches.
const A4: [f64; 2] = [8.27, 11.69];
const LETTER: [f64; 2] = [8.5, 11.0];

/// What is fixed under the saw list takes at most a quarter of a small phone, with what can be taken back.
fn leaves_room(maker: &mut Maker<'_>) {
    maker.browser.held(&maker.page, Phone::SMALL);
    maker.reads("Take back");
    let fixed = maker.browser.eval(&maker.page, "innerHeight - document.querySelector('.foot').getBoundingClientRect().top");
    assert!(fixed.as_f64().expect("a height") <= 0.25 * f64::from(Phone::SMALL.height) + 1.0, "{fixed}");
    maker.shot("plan-used-small");
    maker.browser.held(&maker.page, Phone::COMMON);
}

/// What becomes of the wood of a plan with a line that is cut is asked on a page that is whole on a small phone, also with large text, and is
/// left again.
fn asks_what_becomes_of_it(maker: &mut Maker<'_>) {
    maker.tap("Drop this plan");
    maker.reads("If a tick is wrong, take it off at the saw");
    for (name, phone, text) in [("plan-question-320", Phone::SMALL, 100), ("plan-question-large", Phone::COMMON, 200)] {
        maker.browser.held(&maker.page, phone);
        maker.browser.text_size(&maker.page, text);
        readable(maker.browser, &maker.page, name, phone);
    }
    maker.browser.text_size(&maker.page, 100);
    maker.browser.look(&maker.page, Look::default());
    maker.browser.held(&maker.page, Phone::COMMON);
    maker.tap("Not now");
    maker.reads("Drop this plan");
}

/// On paper: the picture, the cut list, the figures; nothing that is tapped.
fn the_paper(maker: &mut Maker<'_>) {
    maker.browser.look(&maker.page, Look { print: true, ..Look::default() });
    assert_eq!(["svg.cuts", ".tick", ".key", ".foot", ".places"].map(|what| 0 < seen(maker, what)), [true, true, false, false, false]);
    maker.shot("plan-paper");
    for paper in [A4, LETTER] {
        assert_eq!(maker.browser.sheets(&maker.page, paper), 1, "one sheet for the wall");
    }
    maker.browser.look(&maker.page, Look::default());
}

/// The sizes left over lie on the rack, or none does.
fn left_over(maker: &mut Maker<'_>, there: bool) {
    maker.touch(".places > :nth-child(5)");
    maker.tap("Rack");
    maker.reads("Cherry, C");
    let shown = maker.browser.eval(&maker.page, "document.getElementById('app').innerText.includes('left of B')");
    assert_eq!(shown, there);
    maker.touch(".places > :nth-child(4)");
}

/// The job's plan in a new page, its wood taken; how many lines are ticked.
fn opened_again(browser: &mut Browser, shot: &str) -> u64 {
    let page = app::opened(browser, Phone::SMALL.quick());
    let mut maker = Maker { browser, page, touches: 0 };
    maker.touch(".places > :nth-child(4)");
    // The list leads to the saw too; here the longer way is gone.
    maker.touch("button.card.job");
    for words in ["Wood and plan", "What can I make?"] {
        maker.tap(words);
    }
    maker.reads("The job has this wood.");
    maker.shot(shot);
    seen(&mut maker, ".tick.done")
}

/// From the first start, without a network: three piles counted and sorted, a job with its parts, planned, ticked, used, taken back, used
/// again; and all of it is there after the phone killed the page.
#[test]
fn parts_are_planned_used_taken_back_and_used_again_by_taps() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.offline(true);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    pile(&mut maker, 1, ["1 1/16", "2 1/4", "21 1/2"], (1, 6));
    pile(&mut maker, 1, ["1 3/4", "1 3/4", "19"], (2, 5));
    pile(&mut maker, 2, ["13/16", "3", "11"], (3, 4));
    sorted(&mut maker, "Ash, A", &["Twist"], 5);
    sorted(&mut maker, "Ash, B", &[], 5);
    sorted(&mut maker, "Cherry, C", &[], 4);
    maker.touch(".places > :nth-child(4)");
    maker.tap("New job");
    maker.types("job-name", "Small stools");
    maker.tap("5");
    maker.tap("Begin this job");
    maker.tap("Wood and plan");
    part(&mut maker, "leg", "2", ["1 1/2", "1 1/2", "6"]);
    part(&mut maker, "rail", "1", ["3/4", "1 3/4", "8"]);
    maker.tap("What can I make?");
    maker.tap("The job’s parts");
    maker.touch(".foot .key.solid");
    maker.reads("5 pieces.");
    maker.browser.wait(&maker.page, "!document.getElementById('app').innerText.includes('Looking')");
    maker.reads("left to keep");
    maker.touch(".ticks .tick");
    maker.shot("plan-parts");
    the_paper(&mut maker);
    // Killed before it was used: the plan and its tick are there.
    maker.browser.reload(&maker.page);
    app::read(maker.browser, &maker.page);
    for words in ["Small stools", "Wood and plan", "What can I make?"] {
        maker.tap(words);
    }
    maker.reads("Use these");
    assert_eq!(seen(&mut maker, ".tick.done"), 1);
    maker.tap("Use these");
    maker.reads("The job has this wood.");
    leaves_room(&mut maker);
    asks_what_becomes_of_it(&mut maker);
    left_over(&mut maker, true);
    maker.tap("Take back");
    maker.reads("Use these");
    left_over(&mut maker, false);
    maker.tap("Use these");
    maker.reads("The job has this wood.");
    app::saved(maker.browser, &maker.page);
    // The page is gone: what was ticked is there. The browser is killed too: the plan is a fact, ticks may be a few seconds behind.
    let page = maker.page;
    browser.close(page);
    assert_eq!(opened_again(&mut browser, "plan-used"), 1);
    assert_eq!(browser.errors(), [""; 0]);
    browser.kill();
    let mut browser = Browser::start(profile.path());
    browser.offline(true);
    opened_again(&mut browser, "plan-used-killed");
    assert_eq!(browser.errors(), [""; 0]);
}

/// Wood of four piles and a tray of four parts, more of them than there is wood for: no plan of it is proven soon.
const TRAYS: &str = "2026-03-02 09:00 +01:00 workshop EUR metric
leave for yard
pile rest oak-european 26 x 130 x 900 mm
count 9 rest
pile trim oak-european 24 x 150 x 375 mm
count 10 trim
pile edge oak-european 22 x 59 x 1205 mm
count 18 edge
pile odd oak-european 23 x 85 x 610 mm
count 9 odd
good 9 rest
good 10 trim
good 18 edge
good 9 odd
home
job tray \"Tray\" 90 spec
part \"long\" 2 of 12 x 48 x 390 mm for tray
part \"short\" 2 of 12 x 48 x 240 mm for tray
part \"bottom\" 7 of 10 x 34 x 400 mm for tray
part \"foot\" 4 of 14 x 30 x 65 mm for tray
";

/// More kinds of parts and boards: a plan of it is found at once, and is not proven while the first is looked for.
const CHESTS: &str = "2026-03-02 09:00 +01:00 workshop EUR metric
leave for yard
pile rest oak-european 26 x 133 x 917 mm
count 19 rest
pile trim oak-european 24 x 151 x 379 mm
count 23 trim
pile edge oak-european 22 x 59 x 1213 mm
count 31 edge
pile odd oak-european 23 x 87 x 613 mm
count 17 odd
pile wide oak-european 27 x 181 x 1409 mm
count 11 wide
good 19 rest
good 23 trim
good 31 edge
good 17 odd
good 11 wide
home
job tray \"Tray\" 90 spec
part \"long\" 2 of 12 x 48 x 391 mm for tray
part \"short\" 2 of 12 x 48 x 243 mm for tray
part \"bottom\" 3 of 10 x 34 x 409 mm for tray
part \"foot\" 4 of 14 x 30 x 67 mm for tray
part \"lid\" 1 of 16 x 71 x 337 mm for tray
part \"rail\" 2 of 15 x 41 x 521 mm for tray
part \"slat\" 3 of 12 x 53 x 289 mm for tray
";

/// Notes in their order: what is asked of a worker, that it has answered, and that the bench shows. A plan is no sooner asked for, the first one or
/// the one that is looked for longer, than the bench is turned to.
const NOTES: &str = "globalThis.notes = [];
    { const note = what => notes.includes(what) || notes.push(what), { postMessage } = Worker.prototype, page = document.getElementById('app');
      Worker.prototype.postMessage = function (message) {
        if (message.asked) {
          const longer = 1000 < message.ms, nth = longer ? 'longer' : notes.filter(it => it.startsWith('asked')).length + 1;
          note(`asked ${nth}`);
          this.addEventListener('message', ({ data }) => data.kind === 'done' && note(`answer ${nth}`));
          if (nth === TURNS) setTimeout(() => document.querySelector('.places > :nth-child(2)').click());
        }
        return postMessage.call(this, message);
      };
      new MutationObserver(() => {
        if (page.querySelector('[data-place^=bench]')) note('the bench');
      }).observe(page, { subtree: true, childList: true, attributes: true, characterData: true }) }";

/// The parts of a book's tray are planned; when the plan of a name is asked for the bench is turned to, and the plan comes all the same.
fn turned_to_the_bench(book: &str, turns: &str, until: &str) -> String {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let told = tell(book);
    assert_eq!(told.refused, []);
    browser.write_book(&page, &told.book.lines().map(str::to_owned).collect::<Vec<String>>());
    browser.reload(&page);
    app::read(&mut browser, &page);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    maker.touch(".places > :nth-child(4)");
    maker.taps(&["Tray", "Wood and plan", "What can I make?", "The job’s parts"]);
    maker.browser.eval(&maker.page, &NOTES.replace("TURNS", turns));
    maker.touch(".foot .key.solid");
    maker.finds("notes.includes('the bench')", "the bench");
    maker.touch(".places > :nth-child(4)");
    maker.finds(&format!("notes.includes('{until}')"), until);
    maker.reads("Use these");
    let notes = maker.browser.eval(&maker.page, "notes.join(', ')");
    assert_eq!(browser.errors(), [""; 0]);
    notes.as_str().unwrap_or_default().to_owned()
}

/// While a plan is under way another place is looked at, which is there before the plan is; so it is in the first search and in the longer one.
#[test]
fn taps_are_answered_while_it_is_planned_and_the_plan_ends() {
    assert_eq!(turned_to_the_bench(TRAYS, "1", "answer 1"), "asked 1, the bench, answer 1");
    // The longer search is asked for where the first answer is heard, before that is noted.
    let notes = turned_to_the_bench(CHESTS, "'longer'", "answer longer");
    assert_eq!(notes, "asked 1, asked longer, answer 1, the bench, answer longer");
}
