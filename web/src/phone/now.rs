//! The only place that asks the time, the place's offset from world time, and chance. The core is given all three.
use super::window;
use js_sys::Date;

/// Milliseconds since 1970 by the phone's clock.
pub fn moment() -> i64 {
    Date::now() as i64
}

/// Minutes the place's clock is ahead of world time at `moment`; east is positive.
pub fn offset_minutes(moment: i64) -> i32 {
    let at = Date::new(&(moment as f64).into());
    -(at.get_timezone_offset() as i32)
}

/// Sixteen bytes of chance from the platform. Without chance two entries could get one name: that is a fault, which stops all writing.
pub fn chance() -> [u8; 16] {
    let mut bytes = [0; 16];
    let given = window().and_then(|w| w.crypto().ok()).and_then(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).ok());
    assert!(given.is_some(), "every browser that runs this app has chance");
    bytes
}
