//! Guesses of a piece that are half answered: they lie with what is half typed, so that they outlive a reload, and are in no book.

use super::{Over, Price, shop};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::ledger::decide::{Act, Now};
use fivebar_core::ledger::fold::Guesses;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::sale::SellingGuessed;
use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Clock, Fact};
use fivebar_core::quantity::{Id, Wall};
use fivebar_core::sheet::waiting::Question;

/// After every tap: what was answered since is kept, wherever one goes from there, and what is answered whole is kept no longer.
pub fn keep(app: &mut App) {
    let now = asked(app).or(app.price.half);
    app.price.half = now;
    if now != app.price.kept_half {
        app.price.kept_half = now;
        let text = now.map(|half| written(app, half)).unwrap_or_default();
        app.orders.push(Order::KeepGuesses(text));
    }
}

/// The guesses that are being answered, while some are open and one was answered.
pub fn asked(app: &App) -> Option<(Id, Guesses)> {
    let Over::Waiting(waits) = &app.price.over else { return None };
    let asked = waits.asked.as_ref()?;
    let known = shop(app).job(waits.job).ok()?.selling.guesses;
    let is_half = Question::first_open(&known).is_some() && known != asked.said;
    is_half.then_some((waits.job, Guesses { at: Some(asked.at), ..asked.said }))
}

fn written(app: &App, (job, said): (Id, Guesses)) -> String {
    let Guesses { asks, buys, at, k, by, end, each_ask, each_day, no_show, told: _ } = said;
    let [asks, buys, k, no_show] = [asks, buys, k, no_show].map(|n| n.map(Exact));
    let mut act = Act::new(Now { wall: app.now, chance: [0; 10] });
    act.add(SellingGuessed { job, asks, buys, at, k, by: by.map(|by| by.at), end, each_ask, each_day, no_show });
    let entries = act.stamped(&app.shelf().book, &mut Clock::new(app.shelf().device(), None));
    entries.first().map(line::write).unwrap_or_default()
}

/// What was kept, as the page is opened again; none where it can't be read.
pub fn read(text: &str) -> Option<(Id, Guesses)> {
    let Line::Known(entry) = line::read(text) else { return None };
    let offset = entry.offset();
    let Fact::SellingGuessed(f) = &entry.fact else { return None };
    let [asks, buys, k, no_show] = [&f.asks, &f.buys, &f.k, &f.no_show].map(|n| n.as_ref().map(|n| n.0));
    let by = f.by.map(|by| Wall::new(by, offset));
    Some((f.job, Guesses { asks, buys, at: f.at, k, by, end: f.end, each_ask: f.each_ask, each_day: f.each_day, no_show, told: None }))
}

impl Price {
    /// Takes up what was kept before the page was opened again.
    pub fn take_up(&mut self, text: &str) {
        self.half = read(text);
        self.kept_half = self.half;
    }
}
