//! The plain pages: theme and hand, cautions, help, about.

use super::super::Screen;
use super::{plain, say};
use crate::app::here::{Chosen, TextSize, Theme};
use crate::app::workshop::Tap;
use crate::app::{App, Common, Msg};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{copies, help as help_words, waits, workshop as words};

fn theme_name(theme: Theme) -> &'static str {
    match theme {
        Theme::Phone => words::AS_THE_PHONE,
        Theme::Light => words::LIGHT,
        Theme::Dark => words::DARK,
    }
}

fn text_name(text: TextSize) -> &'static str {
    match text {
        TextSize::Phone => words::AS_THE_PHONE,
        TextSize::Large => words::LARGE,
        TextSize::Larger => words::LARGER,
    }
}

/// How it stands, on one line.
pub fn hand_short(app: &App) -> String {
    theme_name(app.here.theme).to_owned()
}

/// Light or dark, the size of text, single keys, vibration.
pub fn hand(app: &App) -> Screen {
    let here = &app.here;
    let themes = Theme::ALL.map(|theme| Seg::new(theme_name(theme), theme == here.theme)).to_vec();
    let texts = TextSize::ALL.map(|text| Seg::new(text_name(text), text == here.text)).to_vec();
    let theme = even(words::THEME, themes, |nth| chosen(Chosen::Theme(Theme::ALL.get(nth).copied().unwrap_or_default())));
    let text = even(words::TEXT, texts, |nth| chosen(Chosen::Text(TextSize::ALL.get(nth).copied().unwrap_or_default())));
    let main = el("main", "scr")
        .kid(set(words::THEME, theme))
        .kid(set(words::TEXT, text))
        .kid(set(words::BUZZES, on_off(words::BUZZES, here.buzzes, Chosen::Buzzes)))
        .kid(set(words::RINGS, on_off(words::RINGS, here.rings, Chosen::Rings)).kid(el("p", "t14 i2").text(waits::RINGS_HERE)))
        .kid(
            set(words::SINGLE_KEYS, on_off(words::SINGLE_KEYS, here.single_keys, Chosen::SingleKeys))
                .kid(el("p", "t14 i2").text(words::SINGLE_KEYS_UNDER)),
        );
    plain("workshop/hand", words::HAND, main)
}

fn chosen(chosen: Chosen) -> Msg {
    say(Tap::Choose(chosen))
}

fn set(name: &'static str, choice: El<Msg>) -> El<Msg> {
    el("section", "set").kid(el("h2", "").text(name)).kid(choice)
}

fn on_off(name: &'static str, on: bool, choose: fn(bool) -> Chosen) -> El<Msg> {
    even(name, vec![Seg::new(words::ON, on), Seg::new(words::OFF, !on)], |nth| chosen(choose(nth == 0)))
}

/// Headings and their lines.
fn texts(lines: &'static [(&'static str, &'static str)]) -> impl Iterator<Item = El<Msg>> {
    lines.iter().map(|(name, text)| el("section", "said").kid(el("h2", "strong").text(*name)).kid(el("p", "").text(*text)))
}

/// All cautions, as they stand where they are needed.
pub fn cautions() -> Screen {
    let main = el("main", "scr reads").kid(el("p", "t14 i2").text(help_words::CAUTIONS_UNDER)).kids(texts(&help_words::ALL_CAUTIONS));
    plain("workshop/cautions", help_words::CAUTIONS, main)
}

/// One page in plain words.
pub fn help(app: &App) -> Screen {
    let install =
        app.here.can_install.then(|| key("key h56", copies::INSTALL, copies::INSTALL_UNDER, Msg::Common(Common::Install)).key("install"));
    let main =
        el("main", "scr reads").kids(texts(&help_words::HELP_PAGES)).kid(el("p", "").text(copies::kept(app.here.kept))).kids(install);
    plain("workshop/help", help_words::HELP, main)
}

/// What this is.
pub fn about() -> Screen {
    let lines: [El<Msg>; 3] = [help_words::WHAT_IT_IS, help_words::NO_NETWORK, help_words::NOT_ADVICE].map(|line| el("p", "").text(line));
    let main = el("main", "scr reads").kid(el("p", "t30 w8").text(help_words::VERSION)).kids(lines).kids(texts(&help_words::LICENCES));
    plain("workshop/about", help_words::ABOUT, main)
}
