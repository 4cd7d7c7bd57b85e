//! How a page looks, prints and reads: themes, text size, pictures, and the faults axe finds.
use crate::{Browser, Page, Phone, app};
use base64::{Engine, engine::general_purpose::STANDARD};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// What a person set in the phone's settings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Look {
    /// The dark theme.
    pub dark: bool,
    /// Nothing should move.
    pub still: bool,
    /// As on paper.
    pub print: bool,
}

const AXE: &str = include_str!("../vendor/axe.min.js");

impl Browser {
    /// Sets theme, motion and medium of a tab.
    pub fn look(&mut self, page: &Page, look: Look) {
        let features = json!([
            { "name": "prefers-color-scheme", "value": if look.dark { "dark" } else { "light" } },
            { "name": "prefers-reduced-motion", "value": if look.still { "reduce" } else { "no-preference" } },
        ]);
        let media = if look.print { "print" } else { "" };
        self.on(page, "Emulation.setEmulatedMedia", json!({ "media": media, "features": features }));
    }

    /// The browser's own text size in percent, as set in its settings: sizes in rem follow, sizes in px don't.
    pub fn text_size(&mut self, page: &Page, percent: u32) {
        let (standard, fixed) = (16 * percent / 100, 13 * percent / 100);
        self.on(page, "Page.setFontSizes", json!({ "fontSizes": { "standard": standard, "fixed": fixed } }));
    }

    /// The zone of the phone's clock, by its IANA name.
    pub fn timezone(&mut self, page: &Page, zone: &str) {
        self.on(page, "Emulation.setTimezoneOverride", json!({ "timezoneId": zone }));
    }

    /// The phone's language, by its tag.
    pub fn locale(&mut self, page: &Page, tag: &str) {
        self.on(page, "Emulation.setLocaleOverride", json!({ "locale": tag }));
    }

    /// A picture of what the screen shows, as PNG into a file.
    pub fn screenshot(&mut self, page: &Page, file: &Path) {
        let taken = self.on(page, "Page.captureScreenshot", json!({ "format": "png" }));
        write(file, taken["data"].as_str());
    }

    /// A print of the page, as PDF into a file.
    pub fn pdf(&mut self, page: &Page, file: &Path) {
        let printed = self.on(page, "Page.printToPDF", json!({ "printBackground": true, "preferCSSPageSize": true }));
        write(file, printed["data"].as_str());
    }

    /// A picture under `target/pictures`, for people to look at; returns its path.
    pub fn shot(&mut self, page: &Page, name: &str) -> PathBuf {
        let file = app::root().join("target/pictures").join(format!("{name}.png"));
        self.screenshot(page, &file);
        file
    }

    /// What sticks out sideways: of the screen, or of the key or link it is the label of. Empty when all fits.
    pub fn sticks_out(&mut self, page: &Page, phone: Phone) -> Vec<String> {
        let found = self.eval(
            page,
            &format!(
                "[...document.querySelectorAll('body *')].filter(e => e.checkVisibility() && e.getClientRects().length).filter(e => {{
                   const box = e.getBoundingClientRect(), key = e.parentElement.closest('a, button')?.getBoundingClientRect();
                   return box.right > {0} + .5 || box.left < -.5 || (key && (box.right > key.right + .5 || box.left < key.left - .5)) }})
                 .map(e => `${{e.localName}} ${{e.textContent.trim().slice(0, 40)}}`)",
                phone.width
            ),
        );
        strings(&found)
    }

    /// The faults axe finds on the page as it is: rule, number of places, the first of them.
    pub fn axe(&mut self, page: &Page) -> Vec<String> {
        if self.eval(page, "typeof axe === 'undefined'") == true {
            self.on(page, "Runtime.evaluate", json!({ "expression": AXE }));
        }
        let found = self.eval(
            page,
            "axe.run().then(r => r.violations.map(v => `${v.id}: ${v.nodes.length}, first ${v.nodes[0].target} (${v.nodes[0].failureSummary})`))",
        );
        strings(&found)
    }
}

fn strings(found: &Value) -> Vec<String> {
    found.as_array().into_iter().flatten().filter_map(|v| v.as_str().map(String::from)).collect()
}

fn write(file: &Path, base64: Option<&str>) {
    let bytes = STANDARD.decode(base64.expect("a picture")).expect("base64");
    std::fs::create_dir_all(file.parent().expect("a folder")).expect("a folder");
    std::fs::write(file, bytes).expect("written");
}
