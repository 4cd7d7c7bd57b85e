//! Preferences of this phone: theme, size of text and what suits the hand; and plans that are no fact yet. Nothing of the book lies here.
use super::window;
use gloo_storage::{LocalStorage, Storage};

/// What can be preferred.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pref {
    Theme,
    TextSize,
    Language,
    /// The hand that holds the phone.
    Hand,
    Buzz,
    /// Sound and buzz when a wait is over.
    Ring,
    Click,
    /// Single keys of a keyboard.
    Keys,
    BigButtons,
    /// Whether the screen stays awake while counting.
    Awake,
    /// Plans that were made and not used, and what was ticked at the saw.
    Plans,
    /// With notes or a card, as it was chosen last for a buyer.
    Paid,
}

impl Pref {
    fn name(self) -> &'static str {
        match self {
            Pref::Theme => "theme",
            Pref::TextSize => "text-size",
            Pref::Language => "language",
            Pref::Hand => "hand",
            Pref::Buzz => "buzz",
            Pref::Ring => "ring",
            Pref::Click => "click",
            Pref::Keys => "keys",
            Pref::BigButtons => "big-buttons",
            Pref::Awake => "awake",
            Pref::Plans => "plans",
            Pref::Paid => "paid",
        }
    }

    /// What was preferred, if anything was.
    pub fn get(self) -> Option<String> {
        shelf()?.get_item(self.name()).ok().flatten()
    }

    /// Prefers `value` from now on; says whether the phone could keep it.
    pub fn set(self, value: &str) -> bool {
        shelf().is_some_and(|kept| kept.set_item(self.name(), value).is_ok())
    }

    const ALL: [Pref; 12] = [
        Pref::Theme,
        Pref::TextSize,
        Pref::Language,
        Pref::Hand,
        Pref::Buzz,
        Pref::Ring,
        Pref::Click,
        Pref::Keys,
        Pref::BigButtons,
        Pref::Awake,
        Pref::Plans,
        Pref::Paid,
    ];

    /// Forgets all that was preferred.
    pub fn forget_all() {
        Pref::ALL.into_iter().for_each(Pref::forget);
    }

    /// Goes back to what the app does by itself.
    pub fn forget(self) {
        if let Some(kept) = shelf() {
            let _ = kept.remove_item(self.name());
        }
    }
}

/// The phone's shelf for preferences; some private windows refuse it, and gloo's `raw` would end the app there.
/// Raw text, as gloo's typed get and set would bring a whole JSON reader along.
fn shelf() -> Option<web_sys::Storage> {
    window()?.local_storage().ok().flatten()?;
    Some(LocalStorage::raw())
}
