//! The app without the phone: what is shown, what a message changes, and what the phone is then asked to do.
//!
//! Carries invariant 9. Nothing here touches the platform: every message comes with its moment and its chance.

pub mod back;
pub mod bench;
pub mod count;
pub mod doubt;
pub mod draft;
pub mod entry;
pub mod example;
pub mod form;
pub mod here;
pub mod jobs;
pub mod mend;
pub mod news;
pub mod order;
pub mod outlook;
pub mod photos;
pub mod pile;
pub mod plan;
pub mod price;
pub mod shelf;
pub mod sorting;
pub mod sought;
pub mod spent_on;
pub mod taxes;
pub mod trip;
pub mod workshop;

use crate::parts::{Page, Place};
use crate::words::{Plain, Speech};
use fivebar_core::haul::Where;
use fivebar_core::ledger::Device;
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, Command, Now};
use fivebar_core::quantity::{Clock, Count, Currency, Day, Local, Moment, Offset, Units, Wall};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::strip::{Strip, strip_of};
use order::{Feel, Order, Which};
use shelf::{Names, Shelf, Written};
use std::rc::Rc;

/// What a person can say, on any place.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    Go(Place),
    Count(count::Tap),
    Bench(bench::Tap),
    Price(price::Tap),
    Jobs(jobs::Tap),
    Workshop(workshop::Tap),
    /// Of a count that is put right, over whatever place.
    Mend(mend::MendTap),
    Photo(photos::PhotoTap),
    Common(Common),
    /// A single key, such as `1` or `u`.
    Key(String),
}

/// What can be said on every place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Common {
    TakeBack,
    PutBack,
    TryAgain,
    /// Puts a notice away.
    Understood,
    ApplyUpdate,
    LeaveExample,
    /// Opens the app again.
    Reload,
    Install,
    /// Stops the maker's own running clock, by the strip.
    StopRun,
}

/// Something to be said that stays until the next action.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    Refused(Refusal),
    /// Lines that could not be saved, and why.
    NotSaved(news::Trouble),
    /// A book could not be opened.
    NotOpened(Which, news::Trouble),
    /// The store was emptied under the open book, which is written once more.
    Emptied,
    /// The browser had thrown the book away; so many entries are back from the spare.
    BroughtBack(usize),
}

/// What is heard before the book was read, or where it can't be: another place, and what minds the app itself.
fn needs_no_book(message: &Msg) -> bool {
    use Common::{ApplyUpdate, Install, Reload, Understood};
    matches!(message, Msg::Go(_) | Msg::Common(ApplyUpdate | Install | Reload | Understood) | Msg::Price(price::Tap::Hide))
}

/// All that the page shows.
pub struct App {
    pub page: Page,
    pub place: Place,
    pub speech: Rc<dyn Speech>,
    pub now: Wall,
    /// The phone's word for the offset of the place at a moment; in tests there may be none.
    pub offset_at: Option<fn(Moment) -> Offset>,
    /// The book was read: taps before that are kept with their moment.
    pub is_open: bool,
    early: Vec<(Msg, Now)>,
    /// The haul in hand is shown, from the last lines alone.
    has_glimpse: bool,
    pub own: Shelf,
    pub example: Option<Shelf>,
    pub which: Which,
    pub count: count::Count,
    pub bench: bench::Bench,
    pub price: price::Price,
    pub jobs: jobs::Jobs,
    pub plan: plan::Plan,
    pub outlooks: outlook::Outlooks,
    pub workshop: workshop::Workshop,
    pub photos: photos::Photos,
    pub mending: Option<Box<mend::Mending>>,
    pub notice: Option<Notice>,
    pub here: here::Here,
    pub update_waits: bool,
    /// What the polite region says.
    pub said: String,
    pub(crate) orders: Vec<Order>,
}

impl App {
    /// The app before its book was read.
    pub fn new(page: Page, place: Place, speech: Rc<dyn Speech>) -> App {
        let nobody = Device::new([0; 8]);
        App {
            page,
            place,
            speech,
            now: Wall::default(),
            offset_at: None,
            is_open: false,
            early: vec![],
            has_glimpse: false,
            own: Shelf::open(nobody, []),
            example: None,
            which: Which::Own,
            count: count::Count::default(),
            bench: bench::Bench::default(),
            price: price::Price::default(),
            jobs: jobs::Jobs::default(),
            plan: plan::Plan::default(),
            outlooks: outlook::Outlooks::default(),
            workshop: workshop::Workshop::default(),
            photos: photos::Photos::default(),
            mending: None,
            notice: None,
            here: here::Here::default(),
            update_waits: false,
            said: String::new(),
            orders: vec![],
        }
    }

    /// An app with an empty open book, for tests.
    pub fn for_tests(place: Place) -> App {
        let mut app = App::new(Page::default(), place, Rc::new(Plain::default()));
        app.own = Shelf::open(Device::new([1; 8]), []);
        app.is_open = true;
        app
    }

    /// Takes in what a person said at `now`; returns what the phone is asked to do.
    pub fn heard(&mut self, message: Msg, now: Now) -> Vec<Order> {
        bench::waits::looks(self, now.wall.at);
        self.now = now.wall;
        if price::face::is_locked(self, &message) {
            return vec![];
        }
        if !self.is_open && !needs_no_book(&message) {
            match self.notice {
                // There is no book to write it into, and the page says so: nothing is kept that would be lost.
                Some(Notice::NotOpened(Which::Own, _)) => return vec![Order::Feel(Feel::Refused)],
                _ => self.early.push((message, now)),
            }
            return vec![];
        }
        self.said.clear();
        let before = self.address();
        let began_with = jobs::draft::is_of_new(self).then(|| self.begins_with());
        self.take(message, now);
        began_with.into_iter().for_each(|was| jobs::draft::follows(self, was));
        if self.address() != before {
            self.orders.push(Order::Remember(self.address()));
        }
        outlook::follow(self);
        plan::follow(self);
        photos::follow(self);
        price::waiting::follow(self);
        std::mem::take(&mut self.orders)
    }

    /// Where a page that is loaded anew begins: the place, and whether at its big buttons.
    pub fn address(&self) -> &'static str {
        if bench::wants_awake(self) { bench::BIG_AT } else { self.place.key() }
    }

    /// Begins where an address says, before the book is read.
    pub fn begin_at(&mut self, address: &str) {
        if address == bench::BIG_AT {
            (self.place, self.bench.over) = (Place::Bench, bench::Over::Big);
        } else {
            Place::of(address).into_iter().for_each(|place| self.place = place);
        }
    }

    /// The book is being read: nothing is known of it yet.
    pub fn is_opening(&self) -> bool {
        !self.is_open && !matches!(self.notice, Some(Notice::NotOpened(Which::Own, _)))
    }

    /// Whether what is shown is only the haul in hand, the rest of the book being read.
    pub fn is_glimpse(&self) -> bool {
        self.is_opening() && self.has_glimpse && self.place == Place::Count
    }

    /// Pieces counted before the book was read.
    pub fn early_pieces(&self) -> Count {
        let taps = self.early.iter().filter(|(message, _)| matches!(message, Msg::Count(count::Tap::First))).count();
        Count::try_from(taps).unwrap_or(Count::MAX)
    }

    fn take(&mut self, message: Msg, now: Now) {
        match message {
            Msg::Go(place) => self.go(place),
            Msg::Count(tap) => count::heard(self, tap, now),
            Msg::Bench(tap) => bench::heard(self, tap, now),
            Msg::Price(tap) => price::heard(self, tap, now),
            Msg::Jobs(tap) if workshop::spending::is_of(self, &tap) => workshop::spending::heard(self, tap, now),
            Msg::Jobs(tap) => jobs::heard(self, tap, now),
            Msg::Workshop(tap) => workshop::heard(self, tap, now),
            Msg::Mend(tap) => mend::heard(self, tap, now),
            Msg::Photo(tap) => photos::heard(self, tap, now),
            Msg::Common(common) => self.common(common, now),
            Msg::Key(key) => self.key(&key, now),
        }
    }

    /// The taps that came before the book was read, in their order.
    pub(crate) fn take_early(&mut self) {
        for (message, now) in std::mem::take(&mut self.early) {
            self.take(message, now);
        }
    }

    /// The book in hand.
    pub fn shelf(&self) -> &Shelf {
        match (&self.example, self.which) {
            (Some(example), Which::Example) => example,
            _ => &self.own,
        }
    }

    pub(crate) fn shelf_mut(&mut self) -> &mut Shelf {
        match (&mut self.example, self.which) {
            (Some(example), Which::Example) => example,
            _ => &mut self.own,
        }
    }

    /// Carries out an order of the trade: shown at once, then saved. `None` when it was refused, which is said.
    pub(crate) fn order(&mut self, command: &Command, now: Now) -> Option<Written> {
        match self.shelf_mut().order(command, now) {
            Ok(written) => {
                self.notice = None;
                let written = written?;
                let (which, lines) = (self.which, written.lines.clone());
                self.orders.push(Order::Append { which, lines, names: Names::default() });
                let turns = matches!(command, Command::Book(BookCommand::TakeBack { .. } | BookCommand::Restore { .. }));
                if !turns {
                    self.workshop.lately = None;
                }
                self.shelf_mut().acted(written.act, turns);
                Some(written)
            }
            Err(refusal) => {
                self.refuse(refusal);
                None
            }
        }
    }

    pub(crate) fn refuse(&mut self, refusal: Refusal) {
        self.orders.push(Order::Feel(Feel::Refused));
        self.notice = Some(Notice::Refused(refusal));
    }

    pub(crate) fn go(&mut self, place: Place) {
        let before = std::mem::replace(&mut self.place, place);
        (self.workshop.asked_from, self.mending, self.price.late) = (None, None, None);
        if place != Place::Bench {
            self.bench.disarm();
        }
        match place {
            Place::Jobs if self.is_open => jobs::chosen(self, before),
            Place::Price if before == place => self.price.to_list(),
            Place::Count if before == place => self.count.over = count::Over::Nothing,
            Place::Workshop if before == place => self.workshop.over = workshop::Over::Nothing,
            Place::Bench if before == place && !bench::wants_awake(self) => self.bench.over = bench::Over::Nothing,
            Place::Bench if before != place => bench::come_back(self),
            _ => {}
        }
        // That there is no book to write into is said on every place, until it opens.
        if self.is_open {
            self.notice = None;
        }
        self.orders.push(Order::Awake(self.wants_awake()));
    }

    /// The screen stays awake while a haul is being counted, and in big buttons.
    fn wants_awake(&self) -> bool {
        self.place == Place::Count || bench::wants_awake(self)
    }

    /// Whether anything shown changes with the clock alone.
    pub fn shows_time(&self, now: Wall) -> bool {
        self.running().is_some()
            || self.bench.ago_tapped.is_some()
            || bench::waits::minds(self, now)
            || count::sheet(self).is_some_and(|sheet| !matches!(sheet.trip.stands, Where::NotLeft | Where::Home))
    }

    fn common(&mut self, common: Common, now: Now) {
        match common {
            Common::TakeBack => self.take_back(now),
            Common::PutBack => self.put_back(now),
            Common::TryAgain => {
                let (lines, names) = self.shelf_mut().try_again();
                self.notice = None;
                if !lines.is_empty() || names != Names::default() {
                    self.orders.push(Order::Append { which: self.which, lines, names });
                }
            }
            Common::Understood => self.notice = None,
            Common::ApplyUpdate => self.orders.push(Order::ApplyUpdate),
            Common::LeaveExample => (self.which, self.mending) = (Which::Own, None),
            Common::Reload => self.orders.push(Order::Reload),
            Common::Install => self.orders.push(Order::Install),
            Common::StopRun => self.stop_run(now),
        }
    }

    /// The moment the clock on the wall here showed on a day, by the offset of that moment: clocks may have changed since.
    pub(crate) fn moment_of(&self, day: Day, clock: Clock) -> Wall {
        let of = |offset| Wall::new(day.at(clock, offset), offset);
        let known = |wall: Wall| self.local().wall(wall.at).offset;
        let before = of(known(of(self.now.offset)));
        let found = of(known(before));
        let shown = self.local().wall(found.at);
        // One that never came, for clocks went forward, is as much later.
        if shown.clock() == clock { found } else { self.local().wall(found.at.max(before.at)) }
    }

    /// The clock on the wall here, at any moment.
    pub(crate) fn local(&self) -> Local {
        Local::new(self.now.offset, self.offset_at)
    }

    /// What runs on the maker's own bench.
    pub fn running(&self) -> Option<Strip> {
        strip_of(&self.shelf().bench(), &self.shelf().book, None, self.now)
    }

    fn stop_run(&mut self, now: Now) {
        let Some(run) = self.running().map(|strip| strip.run) else { return };
        if self.order(&Command::Bench(BenchCommand::Stop { run }), now).is_some() {
            self.orders.push(Order::Feel(Feel::Stop));
        }
    }

    /// Takes back the last act of this tab, whole; again, the one before it.
    pub(crate) fn take_back(&mut self, now: Now) {
        if let Some(tick) = self.shelf().last_tick.filter(|tick| !tick.back) {
            return plan::tick_back(self, tick, now);
        }
        let Some(act) = self.shelf().to_take_back() else { return };
        if plan::asked_of(self, act) {
            return;
        }
        if self.order(&Command::Book(BookCommand::TakeBack { act }), now).is_some() {
            self.shelf_mut().took_back(act);
            self.orders.push(Order::Feel(Feel::TakeBack));
            workshop::people::undone(self, act);
            workshop::wood::undone(self);
            workshop::rack::walk::undone(self, act, false);
            workshop::rack::undone(self);
        }
    }

    fn put_back(&mut self, now: Now) {
        if let Some(tick) = self.shelf().last_tick.filter(|tick| tick.back) {
            return plan::tick_back(self, tick, now);
        }
        let Some(act) = self.shelf().to_put_back() else { return };
        if self.order(&Command::Book(BookCommand::Restore { act }), now).is_some() {
            self.shelf_mut().stands_again(act);
            workshop::people::undone(self, act);
            workshop::wood::undone(self);
            workshop::rack::walk::undone(self, act, true);
            workshop::rack::undone(self);
        }
    }

    /// 1 to 5 for the places, U takes back what was done last; what was done before it wants the key on the page that names it.
    fn key(&mut self, key: &str, now: Now) {
        match key {
            "u" | "U" if !self.shelf().took_back_last() => self.take_back(now),
            "Escape" => self.back(now),
            "ArrowLeft" => bench::heard(self, bench::Tap::Day(bench::day::DayTap::Walk(-1)), now),
            "ArrowRight" => bench::heard(self, bench::Tap::Day(bench::day::DayTap::Walk(1)), now),
            _ => {
                let nth = key.parse::<usize>().ok().and_then(|n| n.checked_sub(1));
                if let Some(place) = nth.and_then(|n| Place::ALL.get(n)) {
                    self.go(*place);
                }
            }
        }
    }

    /// Currency and units for what begins now: each as the workshop is set, else as the phone's language suggests.
    pub fn begins_with(&self) -> (Currency, Units) {
        let workshop = self.shelf().workshop();
        (workshop.currency.unwrap_or(self.speech.currency()), workshop.units.unwrap_or(self.speech.units()))
    }
}

#[cfg(test)]
pub(crate) mod told {
    //! An app that is tapped in tests: each tap a second after the last.

    use super::*;

    /// The moment of the nth tap: Tuesday 3 March 2026, 09:00 at UTC-5, and n seconds.
    pub fn nth(n: u8) -> Now {
        let wall = Wall::new(Moment::at(1_772_546_400_000 + i64::from(n) * 1000), Offset::minutes(-300).unwrap());
        Now { wall, chance: [n, 1, 2, 3, 4, 5, 6, 7, 8, 0] }
    }

    /// What the page shows after these messages, one a second.
    pub fn after(app: &mut App, messages: impl IntoIterator<Item = Msg>) -> String {
        for message in messages {
            let n = u8::try_from(app.own.book.len()).unwrap();
            app.heard(message, nth(n));
        }
        crate::screens::page(app).html()
    }
}
