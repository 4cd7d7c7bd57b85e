//! Tools that wear out, with what they wear this year; and where kinds of cost belong.

use super::super::slots::{self, Slot};
use super::super::{Screen, Seen};
use super::opening::{Told, opening};
use super::{open, page, say};
use crate::app::workshop::tools::{Draft, ToolTap};
use crate::app::workshop::{Over, Tap};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{common, costs as words, job as job_words, jobs, refusal};
use fivebar_core::ledger::fold::OwnTool;
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::quantity::{Decimal, Id, Listed, Money};
use fivebar_core::sheet::costs::{tools_twice, wear};

fn tap(tap: ToolTap) -> Msg {
    say(Tap::Tool(tap))
}

fn year(seen: Seen<'_>) -> i32 {
    seen.now.day().as_ymd().0
}

/// What all tools wear this year; none without a tool.
fn all(app: &App, seen: Seen<'_>) -> Option<String> {
    let worn = wear(&app.shelf().workshop(), app.begins_with().0, year(seen)).ok().flatten()?;
    Some(seen.speech.money(worn))
}

/// The way to the tools.
pub fn way(app: &App, seen: Seen<'_>) -> El<Msg> {
    let shown =
        all(app, seen).map_or_else(|| words::NO_TOOLS.to_owned(), |worn| format!("{worn} {}", words::wear_in(&year(seen).to_string())));
    figure_key(words::TOOLS, shown, open(Over::Tools)).key("tools")
}

/// Where kinds of cost belong, as far as it was said: a tap says the other.
pub fn homes(app: &App) -> Option<El<Msg>> {
    let (known, currency) = (app.shelf().workshop(), app.begins_with().0);
    let said = known.homes.iter().filter(|((of, _), _)| *of == currency);
    let rows = said.map(|((_, kind), home)| {
        let name = jobs::upper_first(&job_words::spending(kind.as_str()));
        let kind = kind.clone();
        let segs = vec![Seg::new(words::ON_JOBS, *home == Home::Job), Seg::new(words::IN_RATE, *home == Home::Rate)];
        let choose = even(name.clone(), segs, move |nth| say(Tap::Home(kind.clone(), if nth == 0 { Home::Job } else { Home::Rate })));
        el("section", "set").kid(el("h2", "").text(name)).kid(choose)
    });
    let rows = rows.listed();
    (!rows.is_empty()).then(|| el("div", "").kids(rows))
}

/// The page: the tools, or the form of a new one.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    if let Some(draft) = &app.workshop.tool {
        return form(draft, app, seen);
    }
    let known = app.shelf().workshop();
    let rows = known.tools.iter().rev().map(|tool| row(tool, app, seen)).listed();
    let sum = all(app, seen).map(|worn| {
        let of = words::wear_in(&year(seen).to_string());
        el("p", "row").kid(el("b", "t30 w8").text(worn)).kid(el("span", "t14").text(of))
    });
    let none = rows.is_empty().then(|| el("p", "t22 w8").text(words::NO_TOOLS));
    let list = (!rows.is_empty()).then(|| el("div", "card list").kids(rows));
    let twice = tools_twice(&known, (app.begins_with().0, year(seen))).then(|| caution(words::TOOL_TWICE));
    let main =
        el("main", "scr").kids(sum).kids(twice).kids(none).kids(list).kid(el("p", "").text(words::TOOLS_UNDER)).kid(el("div", "push"));
    let main = main.kid(key("key solid h56", words::NEW_TOOL, "", tap(ToolTap::New)));
    page(app, ("workshop/tools", words::TOOLS), main, seen)
}

fn row(tool: &OwnTool, app: &App, seen: Seen<'_>) -> El<Msg> {
    let cost = seen.speech.money(tool.tool.cost);
    let under = words::tool(&cost, &tool.bought.day().as_ymd().0.to_string(), tool.tool.years);
    let worn = tool.wear_of(year(seen)).and_then(|worn| Money::book(worn, tool.tool.cost.currency()));
    let figure = worn.map(|worn| seen.speech.money(worn)).unwrap_or_default();
    let Some(sold) = tool.sold else {
        let keys = vec![key("key h56", words::SOLD_IT, "", tap(ToolTap::Sold(tool.entry)))];
        return opening(tool.entry, Told { name: tool.name.clone(), under, figure }, app, keys);
    };
    let none = Money::zero(sold.sum.currency());
    let gain = tool.gain().ok().flatten().and_then(|gain| match Decimal::ZERO <= gain.amount() {
        true => Some((true, seen.speech.money(gain))),
        false => Some((false, seen.speech.money(none.minus(gain).ok()?))),
    });
    let gone = words::sold(
        &sold.at.day().as_ymd().0.to_string(),
        &seen.speech.money(sold.sum),
        gain.as_ref().map(|(more, sum)| (*more, sum.as_str())),
    );
    let keys = vec![key("key h56", words::NOT_SOLD, "", say(Tap::Strike(sold.entry)))];
    opening(tool.entry, Told { name: tool.name.clone(), under: format!("{under}. {gone}"), figure }, app, keys)
}

/// It was sold: for how much, and in which year.
fn sold_form(draft: &Draft, tool: Id, app: &App, seen: Seen<'_>) -> Screen {
    let known = app.shelf().workshop();
    let tool = known.tools.iter().find(|known| known.entry == tool);
    let currency = tool.map_or(app.begins_with().0, |tool| tool.tool.cost.currency());
    let asked = vec![Slot::new(words::SOLD_FOR, currency.code()), Slot::whole(words::SOLD_IN)];
    let main = el("main", "scr form")
        .kid(slots::figures_told(&draft.form, &asked, (app.begins_with().1, seen), |nth| tap(ToolTap::At(nth))))
        .kid(el("p", "t14 i2").text(words::SOLD_UNDER))
        .kids(slots::refused(app, seen))
        .kid(el("div", "push"))
        .kids(slots::pad(&draft.form, &asked, seen, |press| tap(ToolTap::Press(press))));
    let name = tool.map(|tool| tool.name.clone()).unwrap_or_default();
    Screen::new("workshop/tool-sold", head(Head::new(name, words::SOLD_IT)), main).foot(el("footer", "foot").kid(keys())).says_it()
}

fn keys() -> El<Msg> {
    let done = done_key("key solid t22", common::DONE, "", tap(ToolTap::Save));
    el("div", "um").kid(done).kid(key("key", common::NOT_NOW, "", say(Tap::Close)))
}

fn form(draft: &Draft, app: &App, seen: Seen<'_>) -> Screen {
    if let Some(tool) = draft.sold {
        return sold_form(draft, tool, app, seen);
    }
    let (currency, units) = app.begins_with();
    let money = |label: &str| Slot::new(label, currency.code());
    let mut asked = vec![money(words::PRICE), Slot::whole(words::YEARS), Slot::whole(words::BOUGHT), money(words::FETCHES)];
    asked.extend(draft.declines.then(|| Slot::new(words::SHARE, "%")));
    let wrong = if draft.nameless { refusal::unnamed(words::TOOL_NAME) } else { String::new() };
    let name = Field { id: "tool", label: words::TOOL_NAME.to_owned(), value: draft.name.clone(), wrong, ..Field::default() };
    let segs = vec![Seg::new(words::STRAIGHT, !draft.declines), Seg::new(words::DECLINING, draft.declines)];
    let figures = slots::figures_told(&draft.form, &asked, (units, seen), |nth| tap(ToolTap::At(nth)));
    let main = el("main", "scr form")
        .kid(field(name, |text| tap(ToolTap::Name(text))))
        .kid(even(words::WEARS, segs, |nth| tap(ToolTap::Declines(nth == 1))))
        .kid(figures)
        .kids(slots::refused(app, seen))
        .kid(el("div", "push"))
        .kids(slots::pad(&draft.form, &asked, seen, |press| tap(ToolTap::Press(press))));
    Screen::new("workshop/tool", head(Head::new(words::TOOLS, words::NEW_TOOL)), main).foot(el("footer", "foot").kid(keys())).says_it()
}
