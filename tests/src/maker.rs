//! A maker's days by taps alone: the phone's clock is set, keys are found by what stands on them, fields by their label's name.
use crate::{Browser, Page};
use std::time::{Duration, Instant};

/// A screen that has not come after this long does not come.
const PATIENCE: Duration = Duration::from_secs(20);
/// A touch elsewhere sooner would be a jump across the screen.
const HONEST: Duration = Duration::from_millis(110);
/// The phone's clock stands where it was set, so that a run is as long as the story says.
const CLOCK: &str = "{ const real = Date; let at = null;
  globalThis.Date = class extends real { constructor(...given) { given.length || at === null ? super(...given) : super(at) }
    static now() { return at ?? real.now() } };
  globalThis.setClock = text => { at = real.parse(text) } }";

/// One person with a phone.
pub struct Maker<'a> {
    pub browser: &'a mut Browser,
    pub page: Page,
    /// How many touches it took, keys of the keyboard not counted.
    pub touches: usize,
}

impl<'a> Maker<'a> {
    /// On a tab that opens nothing yet: its clock can be set in every page it will show.
    pub fn on(browser: &'a mut Browser, page: Page) -> Maker<'a> {
        browser.before_each_page(&page, CLOCK);
        Maker { browser, page, touches: 0 }
    }

    /// Sets the phone's clock, in the time of its place: "2026-03-03T08:41".
    pub fn at(&mut self, clock: &str) {
        self.browser.eval(&self.page, &format!("setClock({clock:?})"));
    }

    /// Taps the key that reads so, whole or as a part, once it is there.
    #[track_caller]
    pub fn tap(&mut self, words: &str) {
        self.reads(words);
        std::thread::sleep(HONEST);
        self.browser.tap_text(&self.page, words);
        self.touches += 1;
    }

    /// Taps one key after the other.
    #[track_caller]
    pub fn taps(&mut self, words: &[&str]) {
        for words in words {
            self.tap(words);
        }
    }

    /// Taps what the selector finds.
    #[track_caller]
    pub fn touch(&mut self, selector: &str) {
        self.finds(&format!("!!document.querySelector({selector:?})"), selector);
        std::thread::sleep(HONEST);
        self.browser.tap(&self.page, selector);
        self.touches += 1;
    }

    /// A sum or a length on the number pad: "9 1/2", "8.68". A fraction is of an inch, on the keys for sixteenths.
    #[track_caller]
    pub fn pad(&mut self, figure: &str) {
        for part in figure.split(' ') {
            match part.split_once('/') {
                Some((over, under)) => {
                    let nth = over.parse::<u32>().expect("figures") * 16 / under.parse::<u32>().expect("figures");
                    self.touch(&format!(".fractions > :nth-child({nth})"));
                }
                None => part.chars().for_each(|key| self.touch(&format!(".pad > :nth-child({})", place_on_pad(key)))),
            }
        }
    }

    /// Types into the field of that id, in place of what stood there.
    #[track_caller]
    pub fn types(&mut self, field: &str, text: &str) {
        self.touch(&format!("#{field}"));
        self.browser.eval(&self.page, "document.activeElement.select?.()");
        self.browser.type_text(&self.page, text);
        std::thread::sleep(HONEST);
    }

    /// A picture for people to look at, once all of it is painted.
    pub fn shot(&mut self, name: &str) {
        std::thread::sleep(HONEST);
        self.browser.shot(&self.page, name);
    }

    /// Waits until the page reads so somewhere.
    #[track_caller]
    pub fn reads(&mut self, words: &str) {
        let script = format!("document.getElementById('app').innerText.replace(/\\s+/g, ' ').includes({words:?})");
        self.finds(&script, words);
    }

    /// Waits until a script finds what it looks for.
    #[track_caller]
    pub fn finds(&mut self, script: &str, what: &str) {
        let began = Instant::now();
        while self.browser.eval(&self.page, script) != true {
            if PATIENCE < began.elapsed() {
                let page = self.browser.eval(&self.page, "document.getElementById('app').innerText");
                let shot = self.browser.shot(&self.page, "maker-in-vain");
                panic!("waited in vain for {what:?} on {}\n{}", shot.display(), page.as_str().unwrap_or_default());
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}

fn place_on_pad(key: char) -> u32 {
    match key {
        '.' => 10,
        '0' => 11,
        digit => digit.to_digit(10).expect("a key of the pad"),
    }
}
