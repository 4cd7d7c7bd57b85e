//! Tools that wear out, heard: written down in a form of their own, struck in their list.

use super::super::App;
use super::super::form::Form;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::{ToolAdded, ToolSold};
use fivebar_core::quantity::reading;
use fivebar_core::quantity::{Clock, Day, Decimal, Id, Moment};

/// A tool that is being written down: cost, years, the year it was bought in, what it fetches, the share of what is left.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub form: Form,
    pub name: String,
    pub nameless: bool,
    /// Most at first, by a share of what is left.
    pub declines: bool,
    /// It is sold, and was this: for how much, in which year.
    pub sold: Option<Id>,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum ToolTap {
    New,
    /// This one was sold.
    Sold(Id),
    Name(String),
    Declines(bool),
    At(usize),
    Press(Press),
    Save,
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: ToolTap, now: Now) {
    if tap == ToolTap::New {
        let year = now.wall.day().as_ymd().0.to_string();
        let form = Form::filled([String::new(), String::new(), year, String::new(), String::new()]);
        app.notice = None;
        app.workshop.tool = Some(Box::new(Draft { form, name: String::new(), nameless: false, declines: false, sold: None }));
        return;
    }
    if let ToolTap::Sold(tool) = tap {
        let form = Form::filled([String::new(), now.wall.day().as_ymd().0.to_string()]);
        app.notice = None;
        app.workshop.tool = Some(Box::new(Draft { form, name: String::new(), nameless: false, declines: false, sold: Some(tool) }));
        return;
    }
    if tap == ToolTap::Save {
        return save(app, now);
    }
    let sign = app.speech.sign();
    app.notice = None;
    let Some(draft) = &mut app.workshop.tool else { return };
    match tap {
        ToolTap::Name(name) => (draft.name, draft.nameless) = (name, false),
        ToolTap::Declines(declines) => draft.declines = declines,
        ToolTap::At(nth) => draft.form.go(nth),
        ToolTap::Press(press) => draft.form.press(press, sign),
        ToolTap::New | ToolTap::Sold(_) | ToolTap::Save => {}
    }
}

fn save(app: &mut App, now: Now) {
    let Some(mut draft) = app.workshop.tool.take() else { return };
    if let Some(tool) = draft.sold {
        let said = read_sold(app, (&mut draft, tool), now);
        app.workshop.tool = Some(draft);
        if said.is_some_and(|said| app.order(&Command::Money(MoneyCommand::SellTool(said)), now).is_some()) {
            app.workshop.tool = None;
        }
        return;
    }
    draft.nameless = draft.name.trim().is_empty();
    let said = read(app, &mut draft, now).filter(|_| !draft.nameless);
    app.workshop.tool = Some(draft);
    if said.is_some_and(|said| app.order(&Command::Money(MoneyCommand::AddTool(said)), now).is_some()) {
        app.workshop.tool = None;
    }
}

fn read_sold(app: &App, (draft, tool): (&mut Draft, Id), now: Now) -> Option<ToolSold> {
    let known = app.own.workshop();
    let cost = known.tools.iter().find(|known| known.entry == tool)?.tool.cost;
    let (sign, form) = (app.speech.sign(), &mut draft.form);
    let sum = form.take(0, |text| reading::money(text, cost.currency(), sign))?;
    let year = form.take(1, |text| reading::count_within(text, sign, 1_900..=latest(now)))?;
    Some(ToolSold { tool, sum, when: last_of(year, now) })
}

fn latest(now: Now) -> u32 {
    u32::try_from(now.wall.day().as_ymd().0).unwrap_or(9_999)
}

/// Of a year that is over, its last day at noon: the year is what counts.
fn last_of(year: u32, now: Now) -> Option<Moment> {
    let over = i32::try_from(year).ok().filter(|year| *year < now.wall.day().as_ymd().0)?;
    Some(Day::ymd(over, 12, 31)?.at(Clock::at(12, 0)?, now.wall.offset))
}

/// The form as it was typed; a figure that can't be comes under the thumb.
fn read(app: &App, draft: &mut Draft, now: Now) -> Option<ToolAdded> {
    let (currency, sign) = (app.begins_with().0, app.speech.sign());
    let form = &mut draft.form;
    let sum = form.take(0, |text| reading::money(text, currency, sign))?;
    let years = form.take(1, |text| reading::count(text, sign, 9_999))?;
    let this = now.wall.day().as_ymd().0;
    let bought = form.take(2, |text| reading::count_within(text, sign, 1_900..=latest(now)))?;
    let salvage = form.maybe(3, |text| reading::money(text, currency, sign))?;
    let share = if draft.declines {
        let percent = form.take(4, |text| reading::percent(text, sign))?;
        Some(Exact(percent.checked_div(Decimal::ONE_HUNDRED)?.normalize()))
    } else {
        None
    };
    // Of a year that is over, its first day at noon: the year is what counts.
    let bought = i32::try_from(bought).ok().filter(|bought| *bought < this);
    let when = bought.and_then(|year| Some(Day::ymd(year, 1, 1)?.at(Clock::at(12, 0)?, now.wall.offset)));
    Some(ToolAdded { name: draft.name.trim().to_owned(), sum, years, salvage, share, when })
}
