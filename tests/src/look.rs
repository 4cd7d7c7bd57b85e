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

/// Least width and height by what it is: a hand with a glove or dust, at arm's length.
const SMALL: &str = r#"
  (() => {
    const least = [['.tiles > *', 126, 88], ['.day1', 126, 126], ['.foot .g4 > .fig', 48, 64], ['.working > *', 48, 88],
      ['.board', 126, 88], ['.strip .key', 48, 52], ['button, a[href], input, select, textarea, [role=slider]', 48, 48]];
    const all = [...document.querySelectorAll('#app *')].filter(e => e.checkVisibility() && e.getClientRects().length);
    return all.flatMap(e => {
      const rule = least.find(([of]) => e.matches(of));
      const box = e.getBoundingClientRect();
      // a field is as large as the box around it, a label's tick as its label
      const seen = e.matches('input') ? e.closest('.box, label')?.getBoundingClientRect() ?? box : box;
      if (!rule || (seen.width >= rule[1] - .5 && seen.height >= rule[2] - .5)) return [];
      return [`${e.localName}.${e.className} "${(e.innerText ?? '').trim().slice(0, 30)}" ${seen.width.toFixed(0)} x ${seen.height.toFixed(0)}, least ${rule[1]} x ${rule[2]}`];
    });
  })()"#;

/// WCAG 2.2's relative luminance and contrast ratio, from the colours the page computed.
const FAINT: &str = r#"
  (() => {
    const part = c => (c /= 255) <= .04045 ? c / 12.92 : ((c + .055) / 1.055) ** 2.4;
    const read = text => { const [r, g, b, a = 1] = text.match(/[\d.]+/g)?.map(Number) ?? [0, 0, 0, 0]; return { r, g, b, a } };
    const light = ({ r, g, b }) => .2126 * part(r) + .7152 * part(g) + .0722 * part(b);
    const ratio = (a, b) => { const [hi, lo] = [light(a), light(b)].sort((x, y) => y - x); return (hi + .05) / (lo + .05) };
    const behind = e => { for (; e; e = e.parentElement) { const c = read(getComputedStyle(e).backgroundColor); if (c.a) return c }
      return { r: 255, g: 255, b: 255 } };
    const all = [...document.querySelectorAll('#app *:not(svg *)')].filter(e => e.checkVisibility() && e.getClientRects().length);
    const own = e => [...e.childNodes].filter(n => n.nodeType === 3).map(n => n.textContent.trim()).join(' ').trim();
    return all.filter(e => own(e) && !e.closest(':disabled, .vh')).flatMap(e => {
      const [text, ground] = [read(getComputedStyle(e).color), behind(e)];
      const found = ratio(text, ground);
      return found < 7 ? [`"${own(e).slice(0, 30)}" ${found.toFixed(2)} : 1`] : [];
    });
  })()"#;

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

    /// The phone's clock stands at that time, such as "2026-03-10T14:21:00-04:00", from the next time the page is loaded on.
    pub fn clock_stands(&mut self, page: &Page, at: &str) {
        let script = format!(
            "{{ const real = Date, at = real.parse('{at}');
              globalThis.Date = class extends real {{ constructor(...given) {{ given.length ? super(...given) : super(at) }}
                static now() {{ return at }} }} }}"
        );
        self.before_each_page(page, &script);
    }

    /// A picture of what the screen shows, as PNG into a file.
    pub fn screenshot(&mut self, page: &Page, file: &Path) {
        let taken = self.on(page, "Page.captureScreenshot", json!({ "format": "png", "optimizeForSpeed": true }));
        write(file, taken["data"].as_str());
    }

    /// A print of the page, as PDF into a file.
    pub fn pdf(&mut self, page: &Page, file: &Path) {
        let printed = self.on(page, "Page.printToPDF", json!({ "printBackground": true, "preferCSSPageSize": true }));
        write(file, printed["data"].as_str());
    }

    /// How many sheets of paper the page takes.
    pub fn sheets(&mut self, page: &Page, paper: [f64; 2]) -> usize {
        let [width, height] = paper;
        let printed = self.on(page, "Page.printToPDF", json!({ "paperWidth": width, "paperHeight": height }));
        let pdf = STANDARD.decode(printed["data"].as_str().unwrap_or_default()).unwrap_or_default();
        let text = String::from_utf8_lossy(&pdf);
        text.matches("/Type /Page").count() - text.matches("/Type /Pages").count()
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

    /// Keys and fields lower or narrower than 48 px, and those whose size the place they stand in asks for: tiles, bundles, acts.
    pub fn small_targets(&mut self, page: &Page) -> Vec<String> {
        let found = self.eval(page, SMALL);
        strings(&found)
    }

    /// Text that stands out from what is behind it by less than 7 : 1, as the page has drawn it. What is switched off is left out.
    pub fn faint_text(&mut self, page: &Page) -> Vec<String> {
        let found = self.eval(page, FAINT);
        strings(&found)
    }

    /// The faults axe finds on the page as it is: rule, number of places, the first of them.
    pub fn axe(&mut self, page: &Page) -> Vec<String> {
        self.found_by_axe(page, "{}")
    }

    /// The one fault that the other theme of a page can have alone.
    pub fn axe_of_colours(&mut self, page: &Page) -> Vec<String> {
        self.found_by_axe(page, "{ runOnly: ['color-contrast'] }")
    }

    fn found_by_axe(&mut self, page: &Page, rules: &str) -> Vec<String> {
        if self.eval(page, "typeof axe === 'undefined'") == true {
            self.on(page, "Runtime.evaluate", json!({ "expression": AXE }));
        }
        let found = self.eval(
            page,
            &format!(
                "axe.run({rules}).then(r => r.violations.map(v =>
                   `${{v.id}}: ${{v.nodes.length}}, first ${{v.nodes[0].target}} (${{v.nodes[0].failureSummary}})`))"
            ),
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

/// A maker with one job, and what was told beyond it, on a common phone, a small one and by large text: each page is visited with the name
/// and the phone it is checked by.
///
/// # Panics
/// At what was found, and at any error of the page.
pub fn on_every_phone(told: &str, visit: impl Fn(&mut Browser, &Page, (&str, Phone))) {
    for (what, phone, text) in
        [("", Phone::COMMON.quick(), 100), ("-320", Phone::SMALL.quick(), 100), ("-large", Phone::COMMON.quick(), 200)]
    {
        let profile = tempfile::tempdir().expect("a folder");
        let mut browser = Browser::start(profile.path());
        let page = browser.with_told(phone, told);
        browser.text_size(&page, text);
        visit(&mut browser, &page, (what, phone));
        assert_eq!(browser.errors(), [""; 0]);
    }
}

/// A screen in both themes: no finding of axe (its rules about structure are asked once), nothing too faint, too small for a finger or outside the page. A picture of each for
/// people to look at.
///
/// # Panics
/// At what was found.
#[track_caller]
pub fn readable(browser: &mut Browser, page: &Page, name: &str, phone: Phone) {
    for (theme, dark) in [("light", false), ("dark", true)] {
        browser.look(page, Look { dark, ..Look::default() });
        browser.shot(page, &format!("{name}-{theme}"));
        let found = if dark { browser.axe_of_colours(page) } else { browser.axe(page) };
        assert_eq!(found, [""; 0], "{name} {theme}");
        assert_eq!(browser.faint_text(page), [""; 0], "{name} {theme}");
    }
    assert_eq!(browser.small_targets(page), [""; 0], "{name}");
    assert_eq!(browser.sticks_out(page, phone), [""; 0], "{name}");
}
