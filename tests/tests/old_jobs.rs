//! Three old jobs by taps from the page of a job: how many touches they take, that nothing has to be scrolled for, and that the estimate says
//! it is from them.
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Page, Phone, app, readable};

/// A minute at about one touch a second, each letter and each digit a touch of its own.
const MINUTE: usize = 60;

/// What the sheet of a form has more than is seen, and what of its foot is out of sight. On a small page the last figures and the sentence under
/// them are scrolled to: there it is the foot alone.
const HIDDEN: &str =
    "(() => { const main = document.querySelector('main'), over = innerWidth < 360 ? 0 : main.scrollHeight - main.clientHeight;
    const out = [...document.querySelectorAll('.foot .key')].filter(key => innerHeight + 1 < key.getBoundingClientRect().bottom);
    return [over < 2 ? 0 : over, ...out.map(key => key.innerText)].join() })()";

fn begun(browser: &mut Browser, phone: Phone) -> Page {
    let page = app::opened(browser, phone.quick());
    let told = tell("2026-03-02 09:00 -05:00 workshop USD inch\njob bench \"Hall bench\" 1 order\n");
    assert_eq!(told.refused, []);
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    browser.reload(&page);
    app::read(browser, &page);
    page
}

/// On the page of the job.
fn with_job(phone: Phone, told: impl FnOnce(&mut Maker<'_>)) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = begun(&mut browser, phone);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    maker.touch(".places > :nth-child(4)");
    maker.tap("Hall bench");
    maker.reads("Hours and money");
    told(&mut maker);
    assert_eq!(browser.errors(), [""; 0]);
}

#[track_caller]
fn nothing_is_hidden(maker: &mut Maker<'_>, what: &str, phone: Phone) {
    let name = format!("{what}-{}", phone.width);
    let hidden = maker.browser.eval(&maker.page, HIDDEN);
    maker.shot(&name);
    assert_eq!(hidden, "0", "{name}");
}

/// Its name letter by letter, hours in all, and what it sold for.
fn old_job(maker: &mut Maker<'_>, nth: usize, [name, hours, price]: [&str; 3]) {
    maker.types(&format!("old-job-{nth}"), name);
    maker.touches += name.chars().count();
    maker.pad(hours);
    maker.tap("sold for");
    maker.pad(price);
}

fn three(maker: &mut Maker<'_>, row: impl Fn(&mut Maker<'_>, usize)) {
    let jobs = [["Pine bench", "22", "650"], ["Oak bench", "31", "900"], ["Box bench", "9", "180"]];
    let before = maker.touches;
    maker.taps(&["Hours and money", "Three old jobs"]);
    for (nth, job) in (1..).zip(jobs) {
        if 1 < nth {
            row(maker, nth);
        }
        old_job(maker, nth, job);
    }
    maker.touch(".foot .key.solid");
    maker.reads("likely in all");
    let touches = maker.touches - before;
    println!("three old jobs: {touches} touches");
    assert!(touches <= MINUTE, "{touches} touches");
}

#[test]
fn three_old_jobs_are_typed_in_a_minute_and_are_what_the_estimate_says_it_is_from() {
    with_job(Phone::COMMON, |maker| {
        three(maker, |maker, nth| maker.tap(&format!("Old job {nth}")));
        for said in [
            "3 earlier jobs, as a whole",
            "All of it by earlier jobs as a whole.",
            "Pine bench: 22 h.",
            "Oak bench: 31 h.",
            "Box bench: 9 h.",
        ] {
            maker.reads(said);
        }
        maker.shot("old-jobs-told");
    });
    with_job(Phone::SMALL, |maker| three(maker, |maker, nth| maker.touch(&format!(".seg > :nth-child({nth})"))));
}

/// Figures, pad and Save are on the screen together, also for an old job that is put right and an operation that is planned; on a small page pad
/// and Save.
#[test]
fn no_form_of_an_estimate_is_scrolled_for_its_keys() {
    for phone in [Phone::COMMON, Phone::SMALL] {
        with_job(phone, |maker| {
            maker.taps(&["Hours and money", "Three old jobs"]);
            nothing_is_hidden(maker, "old-jobs", phone);
            readable(maker.browser, &maker.page, &format!("old-jobs-{}", phone.width), phone);
            old_job(maker, 1, ["Bench", "22", "650"]);
            maker.touch(".foot .key.solid");
            maker.tap("Mend");
            maker.reads("Old job");
            nothing_is_hidden(maker, "old-job-mended", phone);
            maker.tap("Not now");
            maker.tap("Plan an operation");
            maker.types("operation", "Chop");
            maker.pad("90");
            nothing_is_hidden(maker, "plan-operation", phone);
            readable(maker.browser, &maker.page, &format!("plan-operation-{}", phone.width), phone);
        });
    }
}
