//! Rings: two short tones by the platform's own sound. It wants a tap before it makes any, and a locked phone makes none.
use super::{has, window};
use js_sys::Promise;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    // The same calls as web-sys's, but a platform that lacks them or throws is heard.
    #[derive(Clone)]
    type AudioContext;
    #[wasm_bindgen(constructor, catch)]
    fn new() -> Result<AudioContext, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn resume(this: &AudioContext) -> Result<Promise, JsValue>;
    #[wasm_bindgen(method, getter, js_name = currentTime)]
    fn current_time(this: &AudioContext) -> f64;
    #[wasm_bindgen(method, getter)]
    fn destination(this: &AudioContext) -> JsValue;
    #[wasm_bindgen(method, catch, js_name = createOscillator)]
    fn create_oscillator(this: &AudioContext) -> Result<Oscillator, JsValue>;
    type Oscillator;
    #[wasm_bindgen(method, getter)]
    fn frequency(this: &Oscillator) -> Param;
    #[wasm_bindgen(method, catch)]
    fn connect(this: &Oscillator, to: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn start(this: &Oscillator, at: f64) -> Result<(), JsValue>;
    #[wasm_bindgen(method, catch)]
    fn stop(this: &Oscillator, at: f64) -> Result<(), JsValue>;
    type Param;
    #[wasm_bindgen(method, setter)]
    fn set_value(this: &Param, value: f64);
}

/// Each tone: after so many seconds, for so long, so high in hertz.
const TONES: [(f64, f64, f64); 2] = [(0.0, 0.18, 784.0), (0.28, 0.32, 1046.5)];

/// The platform's sound, made once.
#[derive(Default)]
pub struct Bell {
    sound: RefCell<Option<AudioContext>>,
}

impl Bell {
    /// Makes the sound ready. Call it from a tap, or it stays silent.
    pub fn ready(&self) {
        let there = window().is_some_and(|window| has(&window, "AudioContext"));
        let mut sound = self.sound.borrow_mut();
        if there && sound.is_none() {
            *sound = AudioContext::new().ok();
        }
        if let Some(sound) = &*sound {
            let _ = sound.resume(); // what it answers comes too late to matter
        }
    }

    /// Rings once; says whether the platform took it.
    pub fn ring(&self) -> bool {
        self.ready();
        let sound = self.sound.borrow();
        let Some(sound) = &*sound else { return false };
        TONES.iter().all(|tone| rung(sound, *tone).is_ok())
    }
}

fn rung(sound: &AudioContext, (after, long, high): (f64, f64, f64)) -> Result<(), JsValue> {
    let tone = sound.create_oscillator()?;
    tone.frequency().set_value(high);
    tone.connect(&sound.destination())?;
    let at = sound.current_time() + after;
    tone.start(at)?;
    tone.stop(at + long)
}
