//! What the app ordered, done on the phone.

use super::books::posting;
use super::{Run, with};
use crate::app::Msg;
use crate::app::bench::{self, waits::WaitTap};
use crate::app::jobs::{self, dates::DatesTap};
use crate::app::news::{News, NotRead};
use crate::app::order::{Choice, Feel, Order, Which};
use crate::app::workshop::Tap;
use crate::phone::buzz::{Buzz, buzz};
use crate::phone::files::NoFile;
use crate::phone::later;
use crate::phone::prefs::Pref;
use crate::phone::share::{Handed, Paper, copy_as_text, hand_on};
use crate::phone::store::Posting;
use crate::phone::{draft, files, hand, place, print, shell, text_size, theme};
use fivebar_core::ledger::line::document::Photos;

/// The largest copy that is read, as `docs/STORAGE.md` has it.
const COPY_MOST: u64 = fivebar_core::ledger::line::document::BYTES_MOST as u64;

/// What guesses that are half answered are kept under.
pub(super) const GUESSES: &str = "price/guesses";

/// Where old jobs that are half typed lie.
pub(super) const OLD_JOBS: &str = "jobs/old-jobs";

/// Where the phone keeps nothing half typed, it is asked again.
fn keep(what: &str, text: &str) {
    if text.is_empty() {
        draft::throw_away(what);
    } else {
        draft::keep(what, text);
    }
}

impl Run {
    pub fn carry_out(&self, orders: Vec<Order>) {
        orders.into_iter().for_each(|order| self.carry(order));
    }

    fn carry(&self, order: Order) {
        match order {
            Order::Append { which, lines, names } => self.books.append(which, lines, names),
            Order::BringIn { lines, names, aside, photos } => self.bring_in(posting(&lines, names, aside), photos),
            Order::WriteAgain { which, lines, names, aside } => self.books.write_again(which, (lines, names), aside),
            Order::Feel(feel) => feel_it(feel),
            Order::Awake(wanted) => self.awake.want(wanted),
            Order::Share { name, text } => self.share(name, text),
            Order::Note { name, text } => self.note(name, text),
            Order::Calendar { name, text } => self.calendar(name, text),
            Order::ReadyToRing => self.bell.ready(),
            Order::Ring => {
                self.bell.ring();
                buzz(Buzz::Ready);
            }
            Order::CopyText { text } => self.copy_text(text),
            Order::PickCopy => self.pick(),
            Order::TakePhoto { camera } => self.take_photo(camera),
            Order::ShowPhotos(ids) => self.show_photos(ids),
            Order::LookAtPhotos => self.look_at_photos(),
            Order::ReadPhotos(ids) => self.read_photos(ids),
            Order::SweepPhotos(wanted) => self.sweep_photos(wanted),
            Order::OpenExample => self.books.open_one(Which::Example),
            Order::LookForExample => self.books.look_for_example(),
            Order::FillExample { lines, names } => self.books.fill_example(lines, names),
            Order::RemoveExample => self.books.remove_example(),
            Order::Choose { key, value } => self.choose(key, &value),
            Order::ApplyUpdate => shell::take_new_version(),
            Order::WipeAll => self.wipe(),
            Order::Reload => place::reload(),
            Order::Install => self.install(),
            Order::Print => drop(print::print("Fivebar")),
            Order::Face(Some(turned)) => {
                self.face.show(&turned.piece.to_string());
                self.books.set_spoken(turned.spoken);
            }
            Order::Face(None) => {
                self.books.set_spoken(String::new());
                if self.face.hide() {
                    self.back.expect();
                }
            }
            Order::KeepGuesses(text) => keep(GUESSES, &text),
            Order::KeepOldJobs(text) => keep(OLD_JOBS, &text),
            Order::Plan { asked, ms } => self.plan(*asked, ms),
            Order::StopPlan => self.stop_plan(),
            Order::Painted => self.when_painted(),
            Order::Unlock(of) => self.unlock(*of),
            Order::Reckon(all) => self.reckon(all),
            Order::Remember(at) => place::remember(at),
        }
    }

    /// One transaction; what came of it is said.
    fn bring_in(&self, posting: Posting, photos: Photos) {
        let before = super::photos::bring_in(photos);
        self.books.write((Which::Own, posting), before, |run, done| run.heard(Msg::Workshop(Tap::Added(done))));
    }

    fn share(&self, name: String, text: String) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let handed = hand_on(Paper::Copy, &name, &text).await;
            with(&me, |run| run.heard(Msg::Workshop(Tap::Handed(became(handed)))));
        }));
    }

    fn note(&self, name: String, text: String) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let handed = hand_on(Paper::Text, &name, &text).await;
            with(&me, |run| run.heard(Msg::Jobs(jobs::Tap::Dates(DatesTap::Handed(became(handed))))));
        }));
    }

    fn calendar(&self, name: String, text: String) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let handed = hand_on(Paper::Calendar, &name, &text).await;
            with(&me, |run| run.heard(Msg::Bench(bench::Tap::Waits(WaitTap::Handed(became(handed))))));
        }));
    }

    fn pick(&self) {
        let me = self.me.clone();
        later(Box::pin(async move {
            match files::pick(".json,.txt,application/json,text/plain", COPY_MOST).await {
                Ok(picked) => with(&me, |run| run.heard(Msg::Workshop(Tap::Picked(picked.text)))),
                Err(why) => {
                    let told = not_read(why);
                    with(&me, |run| told.into_iter().for_each(|why| run.heard(Msg::Workshop(Tap::NotPicked(why)))));
                }
            }
        }));
    }

    fn copy_text(&self, text: String) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let done = copy_as_text(&text).await;
            with(&me, |run| run.heard(Msg::Workshop(Tap::CopiedText(done))));
        }));
    }

    /// Both books go, and all that is beside them; then the app is opened again, as on its first day.
    fn wipe(&self) {
        self.books.wipe(|run, done| match done {
            Ok(()) => {
                draft::lift_all();
                Pref::forget_all();
                place::reload();
            }
            Err(why) => run.told(News::NotWiped(why)),
        });
    }

    fn install(&self) {
        let installing = self.installing.clone();
        let me = self.me.clone();
        later(Box::pin(async move {
            installing.ask().await; // what the person said is between them and the phone
            with(&me, |run| run.told(News::CanInstall(installing.can_offer())));
        }));
    }

    fn choose(&self, key: Choice, value: &str) {
        match key {
            Choice::Theme => theme::choose(theme::Theme::named(value)),
            Choice::Text => {
                text_size::choose(value);
                self.told(News::Resized(place::width()));
            }
            Choice::SingleKeys => drop(Pref::Keys.set(value)),
            Choice::Buzzes => drop(Pref::Buzz.set(value)),
            Choice::Rings => drop(Pref::Ring.set(value)),
            Choice::Plans => drop(Pref::Plans.set(value)),
            Choice::Paid => drop(Pref::Paid.set(value)),
        }
    }
}

fn feel_it(feel: Feel) {
    if !hand::buzzes() {
        return;
    }
    buzz(match feel {
        Feel::Count(n) => Buzz::Piece(n),
        Feel::Start | Feel::Stop => Buzz::Ready,
        Feel::TakeBack => Buzz::TakenBack,
        Feel::Refused => Buzz::Refused,
    });
}

/// Why no file was read; putting the list of files away needs no word.
fn not_read(why: NoFile) -> Option<NotRead> {
    match why {
        NoFile::PutAway => None,
        NoFile::TooLarge { bytes, limit } => Some(NotRead::TooLarge { bytes, most: limit }),
        NoFile::NotText { .. } => Some(NotRead::NotText),
        NoFile::Unread { .. } => Some(NotRead::Unread),
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
