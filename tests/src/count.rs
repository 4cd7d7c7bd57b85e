//! Count and bench under a thumb: taps as close as honest fingers come, and what the page says of them.
use crate::{Browser, Page};
use std::time::Duration;

/// Two touches on one key closer than 80 ms count once: an honest thumb waits.
pub const HONEST: Duration = Duration::from_millis(90);

/// A script for the number in the heading; nothing where it has none.
pub const FIGURE: &str = "(Number(document.querySelector('h1')?.textContent.replace(/[^0-9]/g, '') || '0'))";
/// A script for whether all that is shown is said to be saved.
pub const SAVED: &str = "[...document.querySelectorAll('.head .r p')].some(p => p.textContent.startsWith('saved '))";

impl Browser {
    /// So many honest taps on the first that the selector finds.
    pub fn taps(&mut self, page: &Page, selector: &str, times: usize) {
        for _ in 0..times {
            self.tap(page, selector);
            std::thread::sleep(HONEST);
        }
    }

    /// Counts so many pieces onto the first pile; a first haul is begun by the board of day one.
    pub fn count(&mut self, page: &Page, times: usize) {
        self.taps(page, ".day1, .tiles > :nth-child(1)", times);
    }

    /// Starts the clock of a book without a job, for "Trim", from any place; stays at the bench.
    pub fn start_clock(&mut self, page: &Page) {
        self.tap(page, ".places > :nth-child(2)");
        for key in ["Start", "Trim"] {
            self.wait_text(page, key);
            std::thread::sleep(HONEST * 2); // a touch elsewhere at once would be a jump across the screen
            self.tap_text(page, key);
        }
        std::thread::sleep(HONEST);
    }

    /// The number in the heading.
    pub fn figure(&mut self, page: &Page) -> u64 {
        self.eval(page, FIGURE).as_u64().unwrap_or_default()
    }

    /// Waits until the heading shows so many.
    pub fn wait_figure(&mut self, page: &Page, figure: u64) {
        self.wait(page, &format!("{FIGURE} === {figure}"));
    }
}
