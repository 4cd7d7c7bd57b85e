//! A walk round the rack: one pile at a time, as many as the book says or another number.

use super::super::super::slots::refused;
use super::super::super::slots::{Slot, figures, under_thumb};
use super::super::super::{Screen, Seen, undo};
use super::ask::in_place;
use super::row::{given_up, kept_apart, lying, name};
use super::{RackTap, number, say};
use crate::app::workshop::Tap;
use crate::app::workshop::rack::walk::Walk;
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, rack as words};
use fivebar_core::quantity::{PILE_MOST, reading};
use fivebar_core::sheet::stock::{self, StockPile};

/// The pile in front of the maker.
pub fn screen(walk: &Walk, app: &App, seen: Seen<'_>) -> Screen {
    let pile = walk.here().and_then(|at| stock::pile(&app.shelf().shop(seen.now.at), at).ok());
    let nth = words::nth_of(&number(walk.at.saturating_add(1), seen), &number(walk.piles.len(), seen));
    let main = el("main", "scr form racked");
    let main = match &pile {
        Some(pile) => shown(main, pile, (walk, app), seen),
        None => main,
    };
    let title = pile.as_ref().map_or(String::new(), |pile| words::still(&name(pile), &seen.speech.count(pile.on_rack)));
    let top = Head::new(words::WALK_ROUND, title).fact(Fact::Strong(nth));
    let skip = key("key h56", words::SKIP, "", say(RackTap::Skip));
    let keys = match walk.other {
        true => el("div", "um").kid(key("key solid t22", words::SAVE, "", say(RackTap::Done))).kid(skip),
        false => el("div", "g2").kid(skip).kid(key("key h56", common::DONE, "", Msg::Workshop(Tap::Close))),
    };
    let bar = if walk.other { None } else { undo::bar(app, seen) };
    in_place(Screen::new("workshop/rack-walk", head(top), main).foot(el("footer", "foot").kids(bar).kid(keys)), app)
}

fn shown(main: El<Msg>, pile: &StockPile, (walk, app): (&Walk, &App), seen: Seen<'_>) -> El<Msg> {
    let last = format!("{} {}", words::LOOKED_LAST, seen.speech.day(pile.touched));
    let place = pile.place.clone().map(|place| el("p", "t22 w8").text(place));
    let main = main.kid(lying(pile, seen)).kids(refused(app, seen));
    let slots = [Slot::whole(words::HOW_MANY_LIE)];
    let form = &app.workshop.rack.form;
    if walk.other {
        let pad = under_thumb(form, &slots, (pile.haul.units, seen), |press| say(RackTap::Press(press)));
        let typed = reading::count(form.text(0), seen.speech.sign(), PILE_MOST).ok();
        let kept = typed.and_then(|found| kept_apart(pile, found, seen)).map(|said| el("p", "w7").attr("role", "status").text(said));
        return main.kid(figures(form, &slots, |nth| say(RackTap::At(nth)))).kids(kept).kid(el("div", "push")).kids(pad);
    }
    let main = main.kids(given_up(app, seen)).kids(place).kid(el("p", "i2").text(last));
    main.kid(el("div", "push")).kid(key("key solid h88", words::yes(&seen.speech.count(pile.on_rack)), "", say(RackTap::Same))).kid(key(
        "key h88 m",
        words::OTHER_NUMBER,
        "",
        say(RackTap::Done),
    ))
}
