//! What the app ordered, done on the phone.

use super::{Run, key_of, with};
use crate::app::news::News;
use crate::app::order::{Choice, Feel, Order};
use crate::phone::buzz::{Buzz, buzz};
use crate::phone::prefs::Pref;
use crate::phone::share::{Handed, Paper, hand_on};
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
            Order::Feel(feel) => feel_it(feel),
            Order::Awake(wanted) => self.awake.want(wanted),
            Order::Share { name, text } => self.share(name, text),
            Order::PickCopy => self.pick(),
            Order::OpenExample => self.books.open_one(crate::app::order::Which::Example),
            Order::LookForExample => self.books.look_for_example(),
            Order::FillExample { lines, names } => self.books.fill_example(lines, names),
            Order::RemoveExample => self.books.remove_example(),
            Order::Choose { key, value } => choose(key, &value),
            Order::ApplyUpdate => shell::take_new_version(),
            Order::Print => drop(print::print("Fivebar")),
            Order::Remember(at) => place::remember(key_of(at)),
        }
    }

    fn share(&self, name: String, text: String) {
        let me = self.me.clone();
        spawn_local(async move {
            let handed = hand_on(Paper::Copy, &name, &text).await;
            with(&me, |run| run.told(News::Handed(became(handed))));
        });
    }

    fn pick(&self) {
        let me = self.me.clone();
        spawn_local(async move {
            match files::pick(".json,.txt,application/json,text/plain", COPY_MOST).await {
                Ok(picked) => with(&me, |run| run.told(News::Picked { name: picked.name, text: picked.text })),
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
