//! The devices a tab can pretend to be.

/// A device: its screen in CSS pixels, its density, how much slower than this machine it is, and whether it has a finger.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Phone {
    pub width: u32,
    pub height: u32,
    pub density: f64,
    pub slower: f64,
    pub touch: bool,
}

impl Phone {
    /// A common phone on a processor four times slower than this one.
    pub const COMMON: Phone = Phone { width: 390, height: 844, density: 3.0, slower: 4.0, touch: true };
    /// The smallest phone the app is made for, as slow.
    pub const SMALL: Phone = Phone { width: 320, height: 640, density: 2.0, slower: 4.0, touch: true };
    /// A laptop with a mouse.
    pub const LAPTOP: Phone = Phone { width: 1280, height: 800, density: 1.0, slower: 1.0, touch: false };

    /// The same device at this machine's own speed, for tests that measure nothing.
    pub const fn quick(mut self) -> Phone {
        self.slower = 1.0;
        self
    }
}
