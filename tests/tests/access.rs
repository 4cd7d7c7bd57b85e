//! Every place, empty and with the example: what axe finds, what sticks out, in both themes, on a small phone, with large text.
use fivebar_core::story::tell;
use fivebar_tests::{Browser, Page, Phone, app, readable as check};
use std::time::Duration;

const TENTH_VISIT: &str = include_str!("../stories/tenth_visit.txt");

const MANY_JOBS: &str = include_str!("../stories/many-jobs.txt");

/// The phone's clock stands at 14:21 of the last day of the many jobs.
const THAT_DAY: &str = "2026-03-10T14:21:00-04:00";

const PLACES: [&str; 5] = ["count", "bench", "price", "jobs", "workshop"];

fn go(browser: &mut Browser, page: &Page, nth: usize) {
    browser.tap(page, &format!(".places > :nth-child({})", nth + 1));
    std::thread::sleep(Duration::from_millis(90));
    browser.wait(page, &format!("document.querySelector('.places > :nth-child({})').ariaCurrent === 'page'", nth + 1));
}

fn every_place(browser: &mut Browser, page: &Page, what: &str, phone: Phone) {
    for (nth, place) in PLACES.iter().enumerate() {
        go(browser, page, nth);
        check(browser, page, &format!("{place}-{what}"), phone);
    }
}

#[test]
fn every_place_is_readable_before_anything_was_written() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    for (what, phone) in [("empty", Phone::COMMON.quick()), ("empty-320", Phone::SMALL.quick())] {
        let page = app::opened(&mut browser, phone);
        every_place(&mut browser, &page, what, phone);
        browser.close(page);
    }
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn every_place_is_readable_with_the_example_and_by_large_text() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::COMMON.quick();
    let page = app::opened(&mut browser, phone);
    go(&mut browser, &page, 3);
    browser.tap_text(&page, "Try the example");
    browser.wait_text(&page, "Plant stands, ash with cherry pegs");
    browser.shot(&page, "jobs-example-list");
    assert_eq!(browser.axe(&page), [""; 0]);
    browser.tap_text(&page, "Plant stands, ash with cherry pegs");
    std::thread::sleep(Duration::from_millis(120));
    browser.shot(&page, "job-example");
    every_place(&mut browser, &page, "example", phone);
    browser.text_size(&page, 200);
    browser.reload(&page);
    app::read(&mut browser, &page);
    every_place(&mut browser, &page, "large", phone);
    assert_eq!(browser.errors(), [""; 0]);
}

/// The job of the shoe bench, opened in the example.
fn the_bench_of_the_example(browser: &mut Browser, page: &Page) {
    go(browser, page, 3);
    browser.tap_text(page, "Try the example");
    browser.wait_text(page, "Hall shoe bench");
    std::thread::sleep(Duration::from_millis(150));
    browser.tap_text(page, "Hall shoe bench");
    browser.wait_text(page, "Sell and deliver");
}

/// Goes to each screen a key of this one opens, checks it, and comes back by its own key.
fn each_screen(browser: &mut Browser, page: &Page, keys: &[&str], (what, back): (&str, &str), phone: Phone) {
    for key in keys {
        browser.wait_text(page, key);
        std::thread::sleep(Duration::from_millis(150));
        browser.tap_text(page, key);
        browser.wait(page, "document.querySelector('[data-place]').dataset.place.includes('/')");
        std::thread::sleep(Duration::from_millis(150));
        check(browser, page, &format!("{what}-{}", key.to_lowercase().replace(' ', "-")), phone);
        browser.tap_text(page, back);
    }
}

/// Tap after tap, each once the last one has shown its page.
fn slowly(browser: &mut Browser, page: &Page, keys: &[&str]) {
    for key in keys {
        std::thread::sleep(Duration::from_millis(200));
        browser.wait_text(page, key);
        browser.tap_text(page, key);
    }
    std::thread::sleep(Duration::from_millis(200));
}

/// Taps a key once the page has come to rest, and waits for what it opens.
fn opens(browser: &mut Browser, page: &Page, key: &str, words: &str) {
    browser.wait_text(page, key);
    std::thread::sleep(Duration::from_millis(150));
    browser.tap_text(page, key);
    browser.wait_text(page, words);
}

/// A pile as it is, one with fewer, one whose number is typed, and what drifted.
fn walk_round(browser: &mut Browser, page: &Page, phone: Phone) {
    opens(browser, page, "Walk round", "1 of ");
    check(browser, page, "walk-320", phone);
    slowly(browser, page, &["As it is", "Fewer"]);
    browser.wait_text(page, "1 missing");
    check(browser, page, "walk-320-fewer", phone);
    slowly(browser, page, &["Found", "Type it"]);
    browser.wait_text(page, "How many lie there?");
    check(browser, page, "walk-320-typed", phone);
    slowly(browser, page, &["Not now", "End the walk"]);
    browser.wait_text(page, "piles counted");
    check(browser, page, "walk-320-end", phone);
    slowly(browser, page, &["Done"]);
}

fn every_page_of_the_rack(browser: &mut Browser, page: &Page, phone: Phone) {
    opens(browser, page, "Rack", "Boards you bought");
    each_screen(browser, page, &["Wood", "Order"], ("rack-320", "Done"), phone);
    each_screen(browser, page, &["Find", "Boards you bought"], ("rack-320", "Not now"), phone);
    walk_round(browser, page, phone);
    opens(browser, page, "Ash strips", "What happened to it");
    check(browser, page, "pile-320", phone);
    let forms = ["Name or size", "Count it", "Set apart", "Gone", "Where it lies", "Moisture"];
    each_screen(browser, page, &forms, ("pile-320", "Not now"), phone);
    std::thread::sleep(Duration::from_millis(200));
    browser.tap(page, "button.dl");
    browser.wait_text(page, "Put it right");
    check(browser, page, "pile-320-line", phone);
    each_screen(browser, page, &["Put it right"], ("pile-320", "Not now"), phone);
}

/// From what it looks like to the plan, and back to the job.
fn what_can_i_make(browser: &mut Browser, page: &Page, phone: Phone) {
    for (key, name) in [("Wood and plan", "plan-room-320"), ("What can I make?", "plan-320"), ("A field of tiles", "plan-field-320")] {
        slowly(browser, page, &[key]);
        check(browser, page, name, phone);
    }
    slowly(browser, page, &["Something else", "A top in rows"]);
    check(browser, page, "plan-rows-320", phone);
    slowly(browser, page, &["Pieces to use"]);
    check(browser, page, "plan-pieces-320", phone);
    slowly(browser, page, &["Add boards to buy"]);
    check(browser, page, "plan-buy-320", phone);
    slowly(browser, page, &["Pieces to use", "Back to the figures"]);
    browser.tap(page, ".foot .key.solid");
    browser.wait_text(page, "At the saw");
    std::thread::sleep(Duration::from_secs(7));
    check(browser, page, "plan-answer-320", phone);
    slowly(browser, page, &["Change rows", "Something else", "The job"]);
}

/// The list, one of them opened, and the form of a new job with what can be made again.
fn designs(browser: &mut Browser, page: &Page, phone: Phone) {
    slowly(browser, page, &["Designs"]);
    browser.wait_text(page, "No design yet.");
    check(browser, page, "designs-none-320", phone);
    go(browser, page, 3);
    slowly(browser, page, &["Wood and plan", "Keep as a design", "The job", "Look back", "Take it up again", "The job", "Wood and plan"]);
    browser.wait_text(page, "What the wood gives");
    slowly(browser, page, &["What the wood gives"]);
    check(browser, page, "outlook-320", phone);
    go(browser, page, 4);
    slowly(browser, page, &["Hall shoe bench"]);
    browser.wait_text(page, "None: no pieces fit the part top");
    check(browser, page, "designs-320", phone);
    slowly(browser, page, &["Done"]);
    go(browser, page, 3);
    slowly(browser, page, &["The job", "Look back", "Done with this job"]);
    go(browser, page, 4);
}

#[test]
fn every_page_of_a_job_and_of_the_workshop_fits_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::SMALL.quick();
    let page = app::opened(&mut browser, phone);
    the_bench_of_the_example(&mut browser, &page);
    check(&mut browser, &page, "job-320", phone);
    let rooms = ["Wood and plan", "Hours and money", "Sell and deliver", "Look back", "Dates and quote"];
    each_screen(&mut browser, &page, &rooms, ("room-320", "The job"), phone);
    slowly(&mut browser, &page, &["Hours and money"]);
    each_screen(&mut browser, &page, &["More old jobs"], ("estimate-320", "Not now"), phone);
    slowly(&mut browser, &page, &["The job"]);
    what_can_i_make(&mut browser, &page, phone);
    go(&mut browser, &page, 4);
    let pages = ["Your rate", "How you are paid", "Working hours", "Currency and units", "Suppliers and people", "Rack", "Theme and hand"];
    each_screen(&mut browser, &page, &pages, ("workshop-320", "Done"), phone);
    each_screen(&mut browser, &page, &["Woods and air", "Machines", "Timber yard"], ("workshop-320", "Done"), phone);
    each_screen(&mut browser, &page, &["Van"], ("workshop-320", "Not now"), phone);
    designs(&mut browser, &page, phone);
    slowly(&mut browser, &page, &["Woods and air"]);
    each_screen(&mut browser, &page, &["Air", "Before gluing"], ("woods-320", "Not now"), phone);
    each_screen(&mut browser, &page, &["Movement"], ("woods-320", "Done"), phone);
    slowly(&mut browser, &page, &["Your own woods"]);
    check(&mut browser, &page, "woods-320-your-own-woods", phone);
    each_screen(&mut browser, &page, &["Add a wood"], ("woods-320", "Not now"), phone);
    slowly(&mut browser, &page, &["Done", "Done", "Machines"]);
    each_screen(&mut browser, &page, &["Add a machine", "The saw’s figures"], ("workshop-320", "Not now"), phone);
    slowly(&mut browser, &page, &["Done", "Timber yard"]);
    each_screen(&mut browser, &page, &["There and back"], ("yard-320", "Not now"), phone);
    each_screen(&mut browser, &page, &["Price of one wood"], ("yard-320", "Done"), phone);
    slowly(&mut browser, &page, &["Done"]);
    every_page_of_the_rack(&mut browser, &page, phone);
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn sorting_and_a_supplier_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::SMALL.quick();
    let page = app::opened(&mut browser, phone);
    the_bench_of_the_example(&mut browser, &page);
    std::thread::sleep(Duration::from_millis(150));
    go(&mut browser, &page, 0);
    for (key, name) in [("Sort", "sort-which"), ("ends", "sort"), ("Rejects", "sort-rejects")] {
        browser.tap_text(&page, key);
        std::thread::sleep(Duration::from_millis(200));
        check(&mut browser, &page, name, phone);
    }
    go(&mut browser, &page, 0);
    each_screen(&mut browser, &page, &["Going there?"], ("count-320", "Not now"), phone);
    browser.tap_text(&page, "Going there?");
    for name in ["going", "supplier"] {
        std::thread::sleep(Duration::from_millis(200));
        check(&mut browser, &page, name, phone);
        browser.tap(&page, "main > .key, .foot > .key");
    }
    assert_eq!(browser.errors(), [""; 0]);
}

/// At the bin for the tenth time: the list of piles, whether the trip pays with all figures said, the haul, and what is known of the
/// supplier, pile by pile; then the room of a job.
#[test]
fn the_tenth_visit_and_a_room_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::SMALL.quick();
    let page = app::opened(&mut browser, phone);
    let story = tell(&format!(
        "{TENTH_VISIT}\ntrip wheel 30 min bin 30 min 10 miles at 0.60\njob stool \"Stool\" 1 spec\ntake 2 strips1 for stool\n"
    ));
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    let people: Vec<(String, String)> = story.people.iter().map(|(id, person)| (id.to_string(), person.name.clone())).collect();
    browser.write_book(&page, &lines);
    browser.write_people(&page, &people);
    browser.reload(&page);
    app::read(&mut browser, &page);
    browser.wait_text(&page, "30 pieces");
    check(&mut browser, &page, "tenth-count-320", phone);
    each_screen(&mut browser, &page, &["Sort"], ("tenth-320", "Not now"), phone);
    each_screen(&mut browser, &page, &["This haul"], ("tenth-320", "Done"), phone);
    std::thread::sleep(Duration::from_millis(200));
    browser.tap(&page, ".loadrow");
    browser.wait(&page, "document.querySelector('[data-place]').dataset.place === 'count/worth'");
    check(&mut browser, &page, "tenth-worth-320", phone);
    slowly(&mut browser, &page, &["Done"]);
    go(&mut browser, &page, 4);
    opens(&mut browser, &page, "Suppliers and people", "The stair works");
    opens(&mut browser, &page, "The stair works", "The same pile, haul by haul");
    check(&mut browser, &page, "tenth-supplier-320", phone);
    go(&mut browser, &page, 3);
    slowly(&mut browser, &page, &["Stool", "Wood and plan"]);
    each_screen(&mut browser, &page, &["Where it will stand"], ("job-320", "Not now"), phone);
    assert_eq!(browser.errors(), [""; 0]);
}

/// The page of a pile, and each form that opens from it.
#[test]
fn the_page_of_a_pile_and_its_forms_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::SMALL.quick();
    let page = app::opened(&mut browser, phone);
    browser.tap(&page, ".tile");
    browser.wait_text(&page, "1 piece");
    std::thread::sleep(Duration::from_millis(150));
    browser.tap_text(&page, "Sort");
    browser.wait_text(&page, "need, weight");
    std::thread::sleep(Duration::from_millis(150));
    browser.tap_text(&page, "More");
    browser.wait_text(&page, "I need some of this pile");
    check(&mut browser, &page, "pile-page-320", phone);
    let forms = ["I need some of this pile", "By layers", "By weight", "Count again", "Measure a piece", "Moisture"];
    each_screen(&mut browser, &page, &forms, ("pile-320", "Not now"), phone);
    assert_eq!(browser.errors(), [""; 0]);
}

/// What lies a step further: enough of each part, the other hauls, a haul partly sorted, a bundle to be typed, a count that is put
/// right by its figures, from the page of its pile and from the list of the day, and what is refused there.
#[test]
fn what_lies_a_step_further_fits_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let phone = Phone::SMALL.quick();
    let page = app::opened(&mut browser, phone);
    let story = tell(&format!(
        "{TENTH_VISIT}\nwant 40 of \"legs\" from strips10\nlayers 2 of 5 strips10 rest 1\n\
         weighed strips10 sample 5 20 lb all 84 lb tare 4 lb\nreject 4 strips10 twist\n"
    ));
    let refused: Vec<String> = story.refused.iter().map(|(line, why)| format!("{line} {why:?}")).collect();
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    browser.reload(&page);
    app::read(&mut browser, &page);
    browser.wait_text(&page, "61 pieces");
    browser.tap(&page, ".enough");
    browser.wait_text(&page, "What you need of this haul");
    check(&mut browser, &page, "step-enough-320", phone);
    slowly(&mut browser, &page, &["Done", "This haul"]);
    check(&mut browser, &page, "step-haul-320", phone);
    slowly(&mut browser, &page, &["Other hauls"]);
    check(&mut browser, &page, "step-hauls-320", phone);
    slowly(&mut browser, &page, &["Not now"]);
    browser.tap(&page, ".foot .g4 > :last-child");
    browser.wait_text(&page, "How many with each tap?");
    check(&mut browser, &page, "step-bundle-320", phone);
    slowly(&mut browser, &page, &["Not now", "Sort", "need, weight"]);
    browser.wait_text(&page, "Put right: 11 counted by layers");
    check(&mut browser, &page, "step-pile-320", phone);
    each_screen(&mut browser, &page, &["Put right: 20 counted by weight", "Put right: 11"], ("step-320", "Not now"), phone);
    slowly(&mut browser, &page, &["Put right: 20", "All weighs", "9", "Write it down"]);
    browser.wait_text(&page, "Not counted");
    check(&mut browser, &page, "step-320-refused", phone);
    slowly(&mut browser, &page, &["Not now", "All piles"]);
    browser.tap(&page, ".tile");
    browser.wait_text(&page, "62 pieces");
    std::thread::sleep(Duration::from_millis(400));
    go(&mut browser, &page, 1);
    slowly(&mut browser, &page, &["Start", "Tidy", "today", "onto a pile"]);
    check(&mut browser, &page, "step-day-320", phone);
    each_screen(&mut browser, &page, &["Put it right"], ("step-day-320", "Not now"), phone);
    assert_eq!((browser.errors(), refused), (vec![], vec![]));
}

/// Something in clamps, the list of waits, how an operation ends, and big buttons with an off time to be chalked.
#[test]
fn waits_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    for (what, phone, text) in
        [("320", Phone::SMALL.quick(), 100), ("390", Phone::COMMON.quick(), 100), ("large", Phone::COMMON.quick(), 200)]
    {
        let page = app::opened(&mut browser, phone);
        if text != 100 {
            browser.text_size(&page, text);
            browser.reload(&page);
            app::read(&mut browser, &page);
        }
        go(&mut browser, &page, 1);
        if what == "320" {
            slowly(&mut browser, &page, &["Start", "Glue up", "Clamped", "Clamped"]);
        }
        check(&mut browser, &page, &format!("bench-clamped-{what}"), phone);
        let keys = ["Waits and quiet hours"];
        each_screen(&mut browser, &page, &keys, (&format!("waits-{what}"), "Done"), phone);
        slowly(&mut browser, &page, &["Waits and quiet hours"]);
        each_screen(&mut browser, &page, &["How does it end?"], (&format!("waits-{what}"), "Done"), phone);
        each_screen(&mut browser, &page, &["Add a wait", "Quiet hours"], (&format!("waits-{what}"), "Not now"), phone);
        slowly(&mut browser, &page, &["Done", "Big buttons"]);
        check(&mut browser, &page, &format!("big-clamped-{what}"), phone);
        browser.close(page);
    }
    assert_eq!(browser.errors(), [""; 0]);
}

/// Six jobs, one of them in forty operations: the rack, all operations, one found; the day to scale, its week, a night over midnight.
fn a_full_bench(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    let check = |browser: &mut Browser, name: &str| {
        std::thread::sleep(Duration::from_millis(150));
        check(browser, page, &format!("{name}{what}"), phone);
    };
    go(browser, page, 1);
    browser.wait_text(page, "3 of 5 done");
    check(browser, "bench-full");
    slowly(browser, page, &["+n", "fewer were done"]);
    browser.wait_text(page, "How many were done in it?");
    check(browser, "bench-in-all");
    slowly(browser, page, &["Not now", "Switch"]);
    browser.tap(page, "#operation");
    // Messages are planned for this job, and would begin at once.
    browser.type_text(page, "Ring the mill");
    slowly(browser, page, &["Office"]);
    browser.wait_text(page, "For which job?");
    check(browser, "bench-which-job");
    slowly(browser, page, &["Not now", "Not now", "Switch", "Ash plant stands"]);
    check(browser, "bench-jobs");
    slowly(browser, page, &["Dining table for the Lindqvists", "All 49"]);
    check(browser, "bench-forty");
    browser.tap(page, "#operation");
    browser.type_text(page, "oil");
    browser.wait_text(page, "Found");
    check(browser, "bench-found");
    slowly(browser, page, &["Not now"]);
    browser.tap(page, ".head .key");
    browser.wait_text(page, "Story stick");
    check(browser, "bench-day");
    slowly(browser, page, &["Week"]);
    browser.key(page, "ArrowLeft");
    browser.wait_text(page, "Last week");
    check(browser, "bench-week");
    slowly(browser, page, &["Sat, Mar 7"]);
    browser.wait_text(page, "the day before: 40 min");
    check(browser, "bench-midnight");
    browser.key(page, "ArrowLeft");
    browser.key(page, "ArrowLeft");
    browser.wait_text(page, "47 min corrected");
    slowly(browser, page, &["Glue tops"]);
    browser.wait_text(page, "Put right");
    check(browser, "bench-put-right");
}

#[test]
fn a_full_bench_and_its_days_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let lines: Vec<String> = tell(MANY_JOBS).book.lines().map(str::to_owned).collect();
    for (what, phone, text) in [("", Phone::COMMON.quick(), 100), ("-320", Phone::SMALL.quick(), 100), ("-200", Phone::COMMON.quick(), 200)]
    {
        let page = app::opened(&mut browser, phone);
        browser.locale(&page, "en-US");
        browser.timezone(&page, "America/New_York");
        browser.clock_stands(&page, THAT_DAY);
        browser.text_size(&page, text);
        // The same book for all of them.
        if what.is_empty() {
            browser.write_book(&page, &lines);
        }
        browser.reload(&page);
        app::read(&mut browser, &page);
        a_full_bench(&mut browser, &page, (what, phone));
        browser.close(page);
    }
    assert_eq!(browser.errors(), [""; 0]);
}
