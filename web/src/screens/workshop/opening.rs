//! A row of a list that a tap opens: what, how much, and what can be done with it.

use super::say;
use crate::app::workshop::Tap;
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::workshop as words;
use fivebar_core::quantity::Id;

/// What stands in the row: its name, what is said under it, and its figure.
pub struct Told {
    pub name: String,
    pub under: String,
    pub figure: String,
}

/// What a row has when it is open: what stands there, and keys beside the one that strikes it.
#[derive(Default)]
pub struct Keys {
    pub above: Vec<El<Msg>>,
    pub keys: Vec<El<Msg>>,
}

impl From<Vec<El<Msg>>> for Keys {
    fn from(keys: Vec<El<Msg>>) -> Keys {
        Keys { above: vec![], keys }
    }
}

/// The row of an entry; open, it has the keys, and the one that strikes it last.
pub fn opening(entry: Id, told: Told, app: &App, keys: impl Into<Keys>) -> El<Msg> {
    let open = app.workshop.opened == Some(entry);
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(Tap::Line(entry)))
        .kid(el("span", "op").kid(el("b", "").text(told.name)).kid(el("span", "t14 i2").text(told.under)))
        .kid(el("span", "n").text(told.figure));
    let Keys { above, keys } = keys.into();
    let keys = open.then(|| {
        let strike = key("key h56", words::STRIKE, "", say(Tap::Strike(entry)));
        el("div", "opened").kids(above).kid(if keys.is_empty() { strike } else { el("div", "g2").kids(keys).kid(strike) })
    });
    el("div", "").key(entry.to_string()).kid(top).kids(keys)
}
