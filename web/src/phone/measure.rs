//! How long something took, laid on the platform's own timeline. It leaves the phone with nobody: whoever looks at the page reads it.
use super::window;
use web_sys::Performance;

/// Something that has begun and not ended.
pub struct Measure {
    clock: Option<Performance>,
    /// The microsecond it began.
    mark: String,
}

impl Measure {
    /// From now.
    pub fn begin() -> Measure {
        let clock = window().and_then(|window| window.performance());
        let mark = clock.as_ref().map(|clock| ((clock.now() * 1000.0) as i64).to_string()).unwrap_or_default();
        clock.iter().for_each(|clock| drop(clock.mark(&mark)));
        Measure { clock, mark }
    }

    /// Until now, under a name.
    pub fn end(self, name: &str) {
        if let Some(clock) = self.clock {
            let _ = clock.measure_with_start_mark(name, &self.mark);
            clock.clear_marks_with_mark_name(&self.mark);
        }
    }
}
