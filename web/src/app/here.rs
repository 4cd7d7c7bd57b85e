//! What is known of this phone, and what the maker chose on it. Nothing of it is in the book.

use super::App;
use super::order::{Choice, Order};
use fivebar_core::ledger::kind::sale::Paid;

/// What the platform says of the wish that the book is kept for good.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Kept {
    /// Only the maker removes it.
    ForGood,
    /// The platform may remove it when room is short.
    WhileThereIsRoom,
    #[default]
    NotSaid,
}

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    #[default]
    Phone,
    Light,
    Dark,
}

/// The size of text, beside what the phone itself does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TextSize {
    #[default]
    Phone,
    Large,
    Larger,
}

/// This phone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Here {
    pub kept: Kept,
    /// The book's lines can't be kept a second time on this phone.
    pub no_spare: bool,
    /// The app installed later would begin with a book of its own.
    pub install_first: bool,
    /// The platform would install the app now.
    pub can_install: bool,
    pub theme: Theme,
    pub text: TextSize,
    /// 1 to 5 and U do something by themselves.
    pub single_keys: bool,
    pub buzzes: bool,
    /// It rings when a wait is over.
    pub rings: bool,
    /// Plans that were made here, beside the book.
    pub plans: String,
    /// With notes or a card, as it was chosen last for a buyer who stood there.
    pub paid: Option<Paid>,
}

impl Default for Here {
    fn default() -> Here {
        Here {
            kept: Kept::NotSaid,
            no_spare: false,
            install_first: false,
            can_install: false,
            theme: Theme::Phone,
            text: TextSize::Phone,
            single_keys: true,
            buzzes: true,
            rings: true,
            plans: String::new(),
            paid: None,
        }
    }
}

impl Theme {
    pub const ALL: [Theme; 3] = [Theme::Phone, Theme::Light, Theme::Dark];

    /// How it is kept on the phone.
    pub fn key(self) -> &'static str {
        match self {
            Theme::Phone => "phone",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }
}

impl TextSize {
    pub const ALL: [TextSize; 3] = [TextSize::Phone, TextSize::Large, TextSize::Larger];

    /// How it is kept on the phone.
    pub fn key(self) -> &'static str {
        match self {
            TextSize::Phone => "phone",
            TextSize::Large => "large",
            TextSize::Larger => "larger",
        }
    }
}

/// What is chosen for this phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chosen {
    Theme(Theme),
    Text(TextSize),
    SingleKeys(bool),
    Buzzes(bool),
    Rings(bool),
    Paid(Paid),
}

/// How a way of being paid is kept on the phone.
pub fn paid_key(paid: Paid) -> &'static str {
    match paid {
        Paid::Notes => "notes",
        Paid::Card => "card",
        Paid::Bank => "bank",
    }
}

/// Takes a choice: it holds at once, and the phone remembers it.
pub fn choose(app: &mut App, chosen: Chosen) {
    let on_off = |on| if on { "on" } else { "off" };
    let (key, value) = match chosen {
        Chosen::Theme(theme) => (Choice::Theme, theme.key()),
        Chosen::Text(text) => (Choice::Text, text.key()),
        Chosen::SingleKeys(on) => (Choice::SingleKeys, on_off(on)),
        Chosen::Buzzes(on) => (Choice::Buzzes, on_off(on)),
        Chosen::Rings(on) => (Choice::Rings, on_off(on)),
        Chosen::Paid(paid) => (Choice::Paid, paid_key(paid)),
    };
    match chosen {
        Chosen::Theme(theme) => app.here.theme = theme,
        Chosen::Text(text) => app.here.text = text,
        Chosen::SingleKeys(on) => app.here.single_keys = on,
        Chosen::Buzzes(on) => app.here.buzzes = on,
        Chosen::Rings(on) => app.here.rings = on,
        Chosen::Paid(paid) => app.here.paid = Some(paid),
    }
    app.orders.push(Order::Choose { key, value: value.into() });
}
