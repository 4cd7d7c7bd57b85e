//! What the app ordered, done on the phone.

use super::{Run, key_of, with};
use crate::app::Msg;
use crate::app::order::{Choice, Feel, Order, Which};
use crate::app::shelf::Posted;
use crate::app::workshop::Tap;
use crate::phone::buzz::{Buzz, buzz};
use crate::phone::prefs::Pref;
use crate::phone::share::{Handed, Paper, hand_on};
use crate::phone::store::{Aside, Posting};
use crate::phone::{files, place, print, shell, theme};
use wasm_bindgen_futures::spawn_local;

/// The largest copy that is read: a hundred thousand entries take about a third of it.
const COPY_MOST: u64 = 100 * 1024 * 1024;

impl Run {
    pub fn carry_out(&self, orders: Vec<Order>) {
        orders.into_iter().for_each(|order| self.carry(order));
    }

    fn carry(&self, order: Order) {
        match order {
            Order::Append { which, lines } => self.books.append(which, lines),
            Order::KeepNames { which, names, forgotten } => {
                self.books.write(which, Posting { people: names, forgotten, ..Posting::default() }, |_, _| ());
            }
            Order::BringIn { lines, names, aside } => self.bring_in(&lines, names, aside),
            Order::Feel(feel) => feel_it(feel),
            Order::Awake(wanted) => self.awake.want(wanted),
            Order::Share { name, text } => self.share(name, text),
            Order::PickCopy => self.pick(),
            Order::OpenExample => self.books.open_one(Which::Example),
            Order::RemoveExample => self.books.remove_example(),
            Order::Choose { key, value } => choose(key, &value),
            Order::ApplyUpdate => shell::take_new_version(),
            Order::Print => drop(print::print("Fivebar")),
            Order::Remember(at) => place::remember(key_of(at)),
        }
    }

    /// One transaction; what came of it is said.
    fn bring_in(&self, lines: &[Posted], names: Vec<(String, String)>, aside: Vec<String>) {
        let entries = lines.iter().map(|posted| (posted.id.to_string(), posted.line.clone())).collect();
        let damaged = |(nth, line): (usize, String)| Aside { id: format!("damaged-{nth}"), line, why: "damaged".into() };
        let aside = aside.into_iter().enumerate().map(damaged).collect();
        let posting = Posting { entries, people: names, aside, ..Posting::default() };
        self.books.write(Which::Own, posting, |run, done| run.heard(Msg::Workshop(Tap::Added(done))));
    }

    fn share(&self, name: String, text: String) {
        let me = self.me.clone();
        spawn_local(async move {
            let handed = hand_on(Paper::Copy, &name, &text).await;
            with(&me, |run| run.heard(Msg::Workshop(Tap::Handed(became(handed)))));
        });
    }

    fn pick(&self) {
        let me = self.me.clone();
        spawn_local(async move {
            match files::pick(".json,.txt,application/json,text/plain", COPY_MOST).await {
                Ok(picked) => with(&me, |run| run.heard(Msg::Workshop(Tap::Picked(picked.text)))),
                Err(why) => place::note(&format!("no file: {why:?}")),
            }
        });
    }
}

fn feel_it(feel: Feel) {
    buzz(match feel {
        Feel::Count(n) => Buzz::Piece(n),
        Feel::Start | Feel::Stop => Buzz::Ready,
        Feel::TakeBack => Buzz::TakenBack,
        Feel::Refused => Buzz::Refused,
    });
}

fn choose(key: Choice, value: &str) {
    match key {
        Choice::Theme => theme::choose(theme::Theme::named(value)),
        Choice::SingleKeys => drop(Pref::Keys.set(value)),
        Choice::Clicks => drop(Pref::Click.set(value)),
    }
}

fn became(handed: Handed) -> crate::app::news::Handed {
    use crate::app::news::Handed as Told;
    match handed {
        Handed::Shared(name) => Told::Shared(name),
        Handed::PutAway => Told::PutAway,
        Handed::Downloaded(name) => Told::Downloaded(name),
        Handed::NoWay => Told::NoWay,
    }
}
