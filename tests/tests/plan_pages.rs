//! The plan's pages in small: the pad, the figure it types and the key that takes it are on the screen together; what was refused and
//! what is at the saw too; in both themes, on a small phone, with large text.
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};

const SIDES: &str = "pile strips oak-european 1.0625 x 2.4375 x 39.75 in\ncount 40 strips\n";

/// Piles and a job, in the units asked.
fn story(inches: bool) -> String {
    let (units, piles) = if inches {
        ("inch", SIDES.to_owned())
    } else {
        ("metric", "pile strips oak-european 27 x 62 x 1010 mm\ncount 40 strips\n".to_owned())
    };
    format!("2026-03-02 09:00 -05:00 workshop USD {units}\nleave for yard\n{piles}job bench \"Shoe bench\" 2 spec\n")
}

/// The pad whole, the key under it, and over it the figure that is typed: its own key, or on a low page the line over the pad.
const TOGETHER: &str = "(() => { const box = it => it.getBoundingClientRect(), all = what => [...document.querySelectorAll(what)];
    document.querySelector('.typing').scrollIntoView({ block: 'end' });
    const here = box(document.querySelector('.here')).height ? document.querySelector('.here') : document.querySelector('.slots > [aria-pressed=true], .one');
    const top = box(document.querySelector('.typing .pad')).top;
    const out = all('.typing .key').filter(it => box(it).top < 0 || innerHeight + 1 < box(it).bottom).map(it => it.textContent);
    return [here && 0 <= box(here).top && box(here).bottom <= top + 1 ? 'seen' : 'out of sight', ...out].join() })()";

#[track_caller]
fn check(maker: &mut Maker<'_>, (name, phone): (&str, Phone)) {
    let together = maker.browser.eval(&maker.page, TOGETHER);
    maker.shot(&format!("plan-{name}"));
    assert_eq!(together, "seen", "{name}");
    fivebar_tests::readable(maker.browser, &maker.page, &format!("plan-{name}"), phone);
}

/// Each form with its pad, one with a figure that was refused, and boards to buy.
fn every_form(maker: &mut Maker<'_>, (name, phone): (&str, Phone)) {
    for (nth, shape) in ["A top in rows", "The job’s parts", "Lengths from sticks", "A field of tiles"].into_iter().enumerate() {
        maker.tap(shape);
        maker.pad("43");
        check(maker, (&format!("form-{nth}-{name}"), phone));
        maker.tap("Something else");
    }
    maker.tap("A top in rows");
    maker.touch(".foot .key.solid");
    maker.reads("Wide: nothing is typed yet.");
    check(maker, (&format!("refused-{name}"), phone));
    maker.tap("Pieces to use");
    maker.tap("Add boards to buy");
    check(maker, (&format!("buy-{name}"), phone));
    maker.tap("Pieces to use");
    maker.tap("The figures");
}

fn walked(phone: Phone, text: u32, inches: bool) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, phone);
    let told = tell(&story(inches));
    assert_eq!(told.refused, []);
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    browser.text_size(&page, text);
    browser.reload(&page);
    app::read(&mut browser, &page);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    maker.touch(".places > :nth-child(4)");
    maker.taps(&["Shoe bench", "Wood and plan", "What can I make?"]);
    let name = format!("{}-{text}-{}", phone.width, if inches { "in" } else { "mm" });
    every_form(&mut maker, (&name, phone));
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn pad_figure_and_key_are_seen_together() {
    for (phone, text) in
        [(Phone::COMMON.quick(), 100), (Phone::SMALL.quick(), 100), (Phone::COMMON.quick(), 200), (Phone::SMALL.quick(), 200)]
    {
        [false, true].into_iter().for_each(|inches| walked(phone, text, inches));
    }
}
