//! Boards to buy for a plan: the form, and those that were added.

use super::super::slots::{Slot, docked, figures_told, why_words};
use super::super::{Screen, Seen};
use super::say;
use crate::app::plan::{FIGURES, Tap, is_open, woods};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::screens::jobs::titled;
use crate::view::{El, el};
use crate::words::en::{common, plan as words, sought, woods as wood_words};
use fivebar_core::quantity::Units;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::make::{Boards, Source, Unfit};

pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let Some(buying) = &app.plan.draft.buying else { return super::choose(sheet, app, seen) };
    let units = sheet.account.units;
    let side = |label: &str| Slot::side(label, units);
    let price = Slot::new(words::PRICE_EACH, &sheet.account.currency.to_string());
    let slots: [Slot; FIGURES] = [side(words::THICK), side(words::WIDE), side(words::LONG), Slot::whole(words::AT_MOST), price];
    let chip = |(nth, wood)| Chip::choice(wood_words::among(wood, &app.shelf().workshop().wood.woods), buying.wood == nth);
    let chips: Vec<Chip> = woods(app).iter().enumerate().map(chip).collect();
    let chips = (1 < chips.len()).then(|| flowing("key h48", chips, |nth| say(Tap::BuyWood(nth))));
    let main = el("main", "scr form")
        .kid(figures_told(&buying.form, &slots, (units, seen), |nth| say(Tap::At(nth))))
        .kids(chips)
        .kid(el("p", "t14 i2").text(words::AT_MOST_OPEN))
        .kid(key("key soft h56 wide", words::PILES, "", say(Tap::Piles)));
    let add = done_key("key solid t22", words::ADD_THEM, "", say(Tap::AddBoards));
    let add = el("div", "um").kid(add).kid(key("key", common::NOT_NOW, "", say(Tap::LeaveBoards)));
    let foot = docked(&buying.form, &slots, (add, why_words(&buying.form, &slots, (units, seen)), seen), |press| say(Tap::Press(press)));
    let top = Head::new(titled(sheet, seen), words::BOARDS_TO_BUY);
    Screen::new("jobs/plan-buy", head(top), main).foot(foot).says_it()
}

/// Those that were added, each to be taken away again, and the way to more.
pub fn added(fit: &[(Source, Option<Unfit>)], app: &App, (units, seen): (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let one = |(nth, boards): (usize, &Boards)| {
        let size = boards.size.map(|side| seen.speech.length(side, units)).join(" × ");
        let price = boards.price.map(|price| words::each(&seen.speech.money(price)));
        let why = fit.get(nth).and_then(|(_, why)| *why).map(|why| super::piles::unfit(why, units, seen));
        let said = [why, price, Some(words::NOT_BOUGHT.to_owned())].into_iter().flatten().collect::<Vec<_>>().join(", ");
        let mid = el("span", "mid")
            .kid(el("span", "nm").text(name(boards.wood.as_ref(), app)))
            .kid(worded("span", "s", format!("{size} {}", common::length_unit(units))))
            .kid(worded("span", "s", said));
        el("button", "pile ours")
            .attr("type", "button")
            .attr("aria-pressed", "true")
            .key(format!("bought {nth}"))
            .on_tap(say(Tap::DropBoards(nth)))
            .kid(mid)
            .kid(if is_open(boards) {
                el("span", "").text(sought::ANY_NUMBER)
            } else {
                el("span", "t30 w8").text(seen.speech.count(boards.n))
            })
    };
    let rows = app.plan.draft.bought.iter().enumerate().map(one);
    rows.chain([key("key h56 wide", words::ADD_BOARDS, words::ADD_BOARDS_UNDER, say(Tap::Buy))]).collect()
}

/// "Ash boards".
pub fn name(wood: Option<&fivebar_core::quantity::Key>, app: &App) -> String {
    words::boards_of(wood.map(|wood| wood_words::among(wood, &app.shelf().workshop().wood.woods)).as_deref())
}
