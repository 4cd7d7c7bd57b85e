//! The plan's pages in small: the pad, the figure it types and the key that takes it are on the screen together; what was refused and
//! what is at the saw too; in both themes, on a small phone, with large text.
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app, readable};

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

/// A phone, its size of text, the units of the book.
#[derive(Clone, Copy)]
struct Held(Phone, u32, bool);

impl Held {
    fn name(self) -> String {
        format!("{}-{}-{}", self.0.width, self.1, if self.2 { "in" } else { "mm" })
    }

    /// Colours and sizes are the same in either unit, and on a phone in between.
    fn is_looked_at(self) -> bool {
        !self.2 && (self.0.width < 390) == (self.1 == 100)
    }
}

#[track_caller]
fn check(maker: &mut Maker<'_>, held: Held, what: &str) {
    let name = format!("plan-{what}-{}", held.name());
    let together = maker.browser.eval(&maker.page, TOGETHER);
    maker.shot(&name);
    assert_eq!(together, "seen", "{name}");
    if held.is_looked_at() {
        readable(maker.browser, &maker.page, &name, held.0);
    }
}

/// Each form with its pad, one with a figure that was refused, and boards to buy.
fn every_form(maker: &mut Maker<'_>, held: Held) {
    for (name, shape) in
        [("rows", "A top in rows"), ("parts", "The job’s parts"), ("sticks", "Lengths from sticks"), ("field", "A field of tiles")]
    {
        maker.tap(shape);
        maker.pad("43");
        check(maker, held, name);
        maker.tap("Something else");
    }
    maker.tap("A top in rows");
    maker.pad("43");
    maker.touch(".foot .key.solid");
    maker.reads("Wide: nothing is typed yet.");
    check(maker, held, "refused");
    maker.tap("Pieces to use");
    maker.tap("Add boards to buy");
    check(maker, held, "buy");
}

/// Without its name, with none of it, and its last side.
fn a_part(maker: &mut Maker<'_>, held: Held) {
    maker.touch(".foot .key.solid");
    maker.reads("What it is called: nothing is typed yet.");
    check(maker, held, "part-nameless");
    maker.types("part-name", "rail");
    maker.touch(".slots > :nth-child(1)");
    maker.pad("0");
    maker.touch(".foot .key.solid");
    maker.reads("How many: 0 is too few");
    check(maker, held, "part-none");
    maker.pad("2");
    maker.touch(".slots > :nth-child(4)");
    maker.pad("9");
    check(maker, held, "part");
}

fn walked(held: Held) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, held.0);
    let told = tell(&story(held.2));
    assert_eq!(told.refused, []);
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    browser.text_size(&page, held.1);
    browser.reload(&page);
    app::read(&mut browser, &page);
    let mut maker = Maker { browser: &mut browser, page, touches: 0 };
    maker.touch(".places > :nth-child(4)");
    maker.taps(&["Shoe bench", "Wood and plan", "Add a part"]);
    a_part(&mut maker, held);
    maker.taps(&["Not now", "What can I make?"]);
    every_form(&mut maker, held);
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn pad_figure_and_key_are_seen_together() {
    for (phone, text) in [(Phone::COMMON, 100), (Phone::SMALL, 100), (Phone::COMMON, 200), (Phone::SMALL, 200)] {
        [false, true].into_iter().for_each(|inches| walked(Held(phone.quick(), text, inches)));
    }
}
