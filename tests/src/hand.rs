//! What a hand does: taps, holds, types.
use crate::{Browser, Page};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Eight taps a second, as fast as a hand goes.
const HONEST: Duration = Duration::from_millis(125);

impl Browser {
    /// A finger on the middle of the first element the selector finds, which is brought into view first.
    pub fn tap(&mut self, page: &Page, selector: &str) {
        let at = self.middle(page, &format!("document.querySelector({selector:?})"));
        self.finger(page, &at, Duration::ZERO);
    }

    /// A finger on the smallest element that reads `text`, whole or as a part.
    pub fn tap_text(&mut self, page: &Page, text: &str) {
        let at = self.middle(page, &reads(text));
        self.finger(page, &at, Duration::ZERO);
    }

    /// A finger at a place, in CSS pixels from the top left corner.
    pub fn tap_at(&mut self, page: &Page, x: f64, y: f64) {
        self.finger(page, &json!({ "x": x, "y": y }), Duration::ZERO);
    }

    /// A finger that rests on the element.
    pub fn hold(&mut self, page: &Page, selector: &str, span: Duration) {
        let at = self.middle(page, &format!("document.querySelector({selector:?})"));
        self.finger(page, &at, span);
    }

    /// A finger that goes from the middle of the element by so many pixels to the right and down.
    pub fn drag(&mut self, page: &Page, selector: &str, right: f64, down: f64) {
        const STEPS: i32 = 8;
        let at = self.middle(page, &format!("document.querySelector({selector:?})"));
        let (x, y) = (at["x"].as_f64().unwrap_or_default(), at["y"].as_f64().unwrap_or_default());
        self.touch(page, "touchStart", json!([at]));
        for step in 1..=STEPS {
            let part = f64::from(step) / f64::from(STEPS);
            self.touch(page, "touchMove", json!([{ "x": x + right * part, "y": y + down * part }]));
        }
        self.touch(page, "touchEnd", json!([]));
    }

    /// Any touch event, with the points now down.
    pub fn touch(&mut self, page: &Page, kind: &str, points: Value) {
        self.on(page, "Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }));
    }

    /// Text into what has the focus, as a phone's keyboard gives it.
    pub fn type_text(&mut self, page: &Page, text: &str) {
        self.on(page, "Input.insertText", json!({ "text": text }));
    }

    /// A key by its name: `Enter`, `Tab`, `ArrowLeft`, `5`, `u`, ` `.
    pub fn key(&mut self, page: &Page, key: &str) {
        self.hold_key(page, key, Duration::ZERO);
    }

    /// A key that stays down for a while.
    pub fn hold_key(&mut self, page: &Page, key: &str, span: Duration) {
        let code = virtual_code(key);
        let mut press = json!({ "type": "keyDown", "key": key, "code": physical(key), "windowsVirtualKeyCode": code });
        match key {
            "Enter" => press["text"] = "\r".into(),
            one if one.chars().count() == 1 => press["text"] = one.into(),
            _ => {}
        }
        self.on(page, "Input.dispatchKeyEvent", press);
        std::thread::sleep(span);
        self.on(
            page,
            "Input.dispatchKeyEvent",
            json!({ "type": "keyUp", "key": key, "code": physical(key), "windowsVirtualKeyCode": code }),
        );
    }

    /// Waits until some element reads `text`, whole or as a part.
    pub fn wait_text(&mut self, page: &Page, text: &str) {
        self.wait(page, &format!("!!{}", reads(text)));
    }

    /// Comes down no sooner after the last than an honest hand does: the app takes a far touch within 80 ms for a phantom.
    fn finger(&mut self, page: &Page, at: &Value, span: Duration) {
        let since = self.touched.map_or(HONEST, |last| last.elapsed());
        std::thread::sleep(HONEST.saturating_sub(since));
        self.touched = Some(Instant::now());
        self.touch(page, "touchStart", json!([at]));
        std::thread::sleep(span);
        self.touch(page, "touchEnd", json!([]));
    }

    /// The middle of an element that stands still: a page that is still being laid out moves it from under the finger.
    fn middle(&mut self, page: &Page, element: &str) -> Value {
        let script = format!(
            "(async e => {{ if (!e) return null; let r = e.getBoundingClientRect();
               const under = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
               if (r.top < 0 || r.bottom > innerHeight || !e.contains(under)) {{
                 e.scrollIntoView({{ block: 'center', behavior: 'instant' }}); r = e.getBoundingClientRect(); }}
               const frame = () => new Promise(go => {{ requestAnimationFrame(go); setTimeout(go, 50); }});
               await frame(); await frame();
               const now = e.getBoundingClientRect();
               return e.isConnected && now.x === r.x && now.y === r.y ? {{ x: r.x + r.width / 2, y: r.y + r.height / 2 }} : null }})({element})"
        );
        self.until(element, |b| Some(b.eval(page, &script)).filter(|at| !at.is_null()))
    }
}

/// A script for the smallest visible element that reads the text; whole matches before parts.
fn reads(text: &str) -> String {
    format!(
        "(t => {{ const all = [...document.querySelectorAll('body *')].filter(e => e.checkVisibility() && e.innerText?.includes(t));
          const small = all.filter(e => !all.some(o => o !== e && e.contains(o)));
          return small.find(e => e.innerText.trim() === t) ?? small[0] ?? null }})({text:?})"
    )
}

fn virtual_code(key: &str) -> u32 {
    match key {
        "Tab" => 9,
        "Enter" => 13,
        "Escape" => 27,
        "PageUp" => 33,
        "PageDown" => 34,
        "End" => 35,
        "Home" => 36,
        "ArrowLeft" => 37,
        "ArrowUp" => 38,
        "ArrowRight" => 39,
        "ArrowDown" => 40,
        "Backspace" => 8,
        "Delete" => 46,
        one => one.chars().next().map_or(0, |c| u32::from(c.to_ascii_uppercase())),
    }
}

fn physical(key: &str) -> String {
    match key.chars().next() {
        Some(' ') => "Space".into(),
        Some(c) if key.len() == 1 && c.is_ascii_alphabetic() => format!("Key{}", c.to_ascii_uppercase()),
        Some(c) if key.len() == 1 && c.is_ascii_digit() => format!("Digit{c}"),
        _ => key.into(),
    }
}
