//! The theme: the person's choice, or the phone's own.
use super::ears::Ear;
use super::prefs::Pref;
use super::{document, window};

/// Which theme the person chose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// As the phone has it.
    #[default]
    Phone,
    Light,
    Dark,
}

impl Theme {
    /// How it is kept among the preferences.
    pub fn name(self) -> &'static str {
        match self {
            Theme::Phone => "phone",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }

    /// The theme of that name, else the phone's.
    pub fn named(name: &str) -> Self {
        [Theme::Light, Theme::Dark].into_iter().find(|theme| theme.name() == name).unwrap_or_default()
    }

    /// The theme among the preferences.
    pub fn chosen() -> Self {
        Pref::Theme.get().map_or(Theme::Phone, |name| Theme::named(&name))
    }

    fn drawn(self, phone_is_dark: bool) -> &'static str {
        match self {
            Theme::Dark => "dark",
            Theme::Phone if phone_is_dark => "dark",
            _ => "light",
        }
    }
}

/// Chooses a theme: keeps it and draws the page in it.
pub fn choose(theme: Theme) {
    Pref::Theme.set(theme.name());
    apply(theme);
}

/// Draws the page in `theme`.
pub fn apply(theme: Theme) {
    let Some(page) = document().and_then(|d| d.document_element()) else { return };
    let _ = page.set_attribute("data-theme", theme.drawn(phone().is_some_and(|m| m.matches())));
}

/// Draws the page in the chosen theme now and whenever the phone changes its own.
pub fn follow() -> Option<Ear> {
    apply(Theme::chosen());
    phone().map(|phone| Ear::new(&phone, "change", |_| apply(Theme::chosen())))
}

fn phone() -> Option<web_sys::MediaQueryList> {
    window()?.match_media("(prefers-color-scheme: dark)").ok().flatten()
}

#[cfg(test)]
mod tests {
    use super::Theme;

    #[test]
    fn the_persons_choice_comes_before_the_phones() {
        assert_eq!(Theme::Light.drawn(true), "light");
        assert_eq!(Theme::Dark.drawn(false), "dark");
        assert_eq!(Theme::Phone.drawn(true), "dark");
        assert_eq!(Theme::Phone.drawn(false), "light");
        assert_eq!(Theme::named("violet"), Theme::Phone);
        assert_eq!(Theme::named(Theme::Dark.name()), Theme::Dark);
    }
}
