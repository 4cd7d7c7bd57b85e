//! The app on the phone: it hears the page, asks the app, and does what the app ordered.
//!
//! Carries invariants 9 and 14. The app decides, this only carries out; each thing the platform tells comes back as news.

mod books;
mod doing;
mod photos;
mod planning;
mod spare;
mod speaking;

use crate::app::here::{self, Here};
use crate::app::news::News;
use crate::app::price::face;
use crate::app::{App, Msg};
use crate::parts::{Page, Place};
use crate::phone::store::{BOOK, Store};
use crate::phone::{self, now, panic, shell, theme, visible};
use crate::screens;
use crate::view::Stage;
use crate::words::en::common as words;
use books::Books;
use fivebar_core::ledger::Book;
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Moment, Offset, Wall};
use std::cell::RefCell;
use std::rc::{Rc, Weak};

/// The app and the phone together; lives as long as the page.
pub struct Run {
    me: Weak<Run>,
    app: RefCell<App>,
    stage: RefCell<Option<Rc<Stage<Msg>>>>,
    books: Books,
    /// The first that is known of the book: the first screen is drawn with it.
    first_news: phone::Signal,
    awake: phone::awake::Watch,
    bell: phone::ring::Bell,
    face: phone::face::Face,
    fields: phone::draft::Fields,
    shown: phone::photo::Shown,
    back: phone::back::Back,
    installing: Rc<phone::installed::Installing>,
    planner: RefCell<Option<phone::planner::Planner>>,
    reckoner: RefCell<Option<phone::reckoner::Reckoner>>,
    unlocker: RefCell<Option<phone::reckoner::Reckoner>>,
}

/// How long the first screen waits for what the book holds, in ms; until then the page's own first frame stands.
const FIRST_NEWS: i32 = 300;

/// Opens the app in the page. The book is asked for first: the platform opens it while the app gets ready.
pub async fn start() {
    let own = Store::new(BOOK, |_| ());
    own.ask();
    panic::install(panic::LastWords { said: words::STOPPED, reload: words::OPEN_AGAIN });
    if let Some(ear) = theme::follow() {
        ear.for_good();
    }
    phone::text_size::apply();
    let mut app = App::new(Page::new(phone::place::width()), Place::Count, speaking::language());
    phone::place::named().into_iter().for_each(|name| app.begin_at(&name));
    if let Some(piece) = phone::face::was_turned() {
        face::again(&mut app, &piece);
    }
    phone::draft::kept(doing::GUESSES).into_iter().for_each(|text| app.price.take_up(&text));
    phone::draft::kept(doing::OLD_JOBS).into_iter().for_each(|text| app.jobs.half = text);
    app.offset_at = Some(offset_at);
    // The book may be read before the page is listened to.
    app.now = wall_clock();
    let run = Rc::new_cyclic(|me: &Weak<Run>| Run {
        me: me.clone(),
        app: RefCell::new(app),
        stage: RefCell::new(None),
        books: Books::new(me.clone(), own),
        first_news: phone::Signal::within(FIRST_NEWS),
        awake: phone::awake::Watch::default(),
        bell: phone::ring::Bell::default(),
        face: phone::face::Face::default(),
        fields: phone::draft::Fields::default(),
        shown: phone::photo::Shown::default(),
        back: phone::back::Back::default(),
        installing: listen_for_offer(me.clone()),
        planner: RefCell::default(),
        reckoner: RefCell::default(),
        unlocker: RefCell::default(),
    });
    run.books.open();
    run.first_news.wait().await;
    run.open();
}

/// What this phone is, and what was chosen on it.
fn here() -> Here {
    let text = phone::prefs::Pref::TextSize.get();
    let chosen = theme::Theme::chosen();
    let paid = phone::prefs::Pref::Paid.get();
    Here {
        install_first: phone::installed::install_before_first_entry(),
        theme: here::Theme::ALL.into_iter().find(|theme| theme.key() == chosen.name()).unwrap_or_default(),
        text: here::TextSize::ALL.into_iter().find(|size| Some(size.key()) == text.as_deref()).unwrap_or_default(),
        single_keys: phone::hand::single_keys(),
        buzzes: phone::hand::buzzes(),
        rings: phone::hand::rings(),
        plans: phone::prefs::Pref::Plans.get().unwrap_or_default(),
        paid: [Paid::Notes, Paid::Card].into_iter().find(|way| Some(here::paid_key(*way)) == paid.as_deref()),
        ..Here::default()
    }
}

/// Keeps the platform's offer to install, and tells the app of it.
fn listen_for_offer(me: Weak<Run>) -> Rc<phone::installed::Installing> {
    Rc::new(phone::installed::Installing::listen(move || with(&me, |run| run.told(News::CanInstall(run.installing.can_offer())))))
}

/// The moment, taken once, and the chance for the names of entries.
pub fn this_moment() -> Now {
    let [a, b, c, d, e, f, g, h, i, j, ..] = now::chance();
    Now { wall: wall_clock(), chance: [a, b, c, d, e, f, g, h, i, j] }
}

/// The clock on the wall.
pub fn wall_clock() -> Wall {
    let at = Moment::at(now::moment());
    Wall::new(at, offset_at(at))
}

/// The offset of the place at a moment, as the phone knows it.
fn offset_at(at: Moment) -> Offset {
    Offset::minutes(i64::from(now::offset_minutes(at.ms()))).unwrap_or_default()
}

impl Run {
    fn open(self: Rc<Self>) {
        let Some((document, root)) = phone::place::root() else { return };
        let me = self.clone();
        phone::draft::follow(&root).for_good();
        let stage = Stage::new(document, root, move |message| me.heard(message));
        *self.stage.borrow_mut() = Some(stage);
        let turned = Some(&self.app.borrow().price).filter(|price| price.turned).map(|price| price.face);
        if let Some(piece) = turned {
            self.face.show(&piece.map(|piece| piece.to_string()).unwrap_or_default());
            // The face does not wait for it: it stands behind.
            self.books.ask_spoken(|run, spoken| {
                face::spoken(&mut run.app.borrow_mut(), &spoken);
                run.show();
            });
        }
        self.listen();
        self.app.borrow_mut().now = wall_clock();
        self.told(News::Here(here()));
        self.books.look_at_keeping();
    }

    /// What the platform tells of its own accord.
    fn listen(&self) {
        let me = self.me.clone();
        for ear in visible::watch(move |sight| with(&me, |run| run.seen(sight))) {
            ear.for_good();
        }
        let me = self.me.clone();
        if let Some(ear) = shell::on_new_version(move || with(&me, |run| run.told(News::UpdateWaits))) {
            ear.for_good();
        }
        if shell::new_version_waits() {
            self.told(News::UpdateWaits);
        }
        let me = self.me.clone();
        if let Some(ear) = phone::place::on_resize(move |width| with(&me, |run| run.told(News::Resized(width)))) {
            ear.for_good();
        }
        let me = self.me.clone();
        let went = move |name: String| {
            with(&me, |run| Place::of(&name).into_iter().for_each(|place| run.went(place)));
        };
        if let Some(ear) = phone::place::on_hash(went) {
            ear.for_good();
        }
        if let Some(ear) = self.face.watch() {
            ear.for_good();
        }
        let (me, other) = (self.me.clone(), self.me.clone());
        let here = move || me.upgrade().map_or("", |run| run.app.borrow().address());
        if let Some(ear) = self.back.watch(here, move || with(&other, |run| run.heard(Msg::Key("Escape".into())))) {
            ear.for_good();
        }
        let me = self.me.clone();
        phone::place::every(1000, move || with(&me, Run::tick));
    }

    /// The address names a place; that it names this one is no step.
    fn went(&self, place: Place) {
        let is_here = self.app.borrow().place == place;
        if !is_here {
            self.heard(Msg::Go(place));
        }
    }

    fn tick(&self) {
        let now = wall_clock();
        if self.app.borrow().shows_time(now) {
            self.told(News::Tick(now));
        }
        // A browser says nothing when its size of text changes.
        let width = phone::place::width();
        let is_other = self.app.borrow().page.width != width;
        if is_other {
            self.told(News::Resized(width));
        }
    }

    fn seen(&self, sight: visible::Sight) {
        self.told(News::InSight(sight == visible::Sight::Back));
        if sight == visible::Sight::Back {
            self.awake.retake();
            self.books.look_again();
            // The size of text is chosen in the phone's own settings.
            self.told(News::Resized(phone::place::width()));
            self.told(News::Tick(wall_clock()));
        }
    }

    /// A person said something.
    pub fn heard(&self, message: Msg) {
        let orders = self.app.borrow_mut().heard(message, this_moment());
        self.show();
        self.carry_out(orders);
    }

    /// The phone told something.
    pub fn told(&self, news: News) {
        let orders = self.app.borrow_mut().told(news);
        self.show();
        self.first_news.come();
        self.carry_out(orders);
    }

    /// Shows the haul in hand before the whole book is read; says whether it does.
    fn glimpsed(&self, book: Book) -> bool {
        let shown = self.app.borrow_mut().glimpsed(book);
        if shown {
            self.show();
            self.first_news.come();
        }
        shown
    }

    fn show(&self) {
        let Some(stage) = self.stage.borrow().clone() else { return };
        let tree = screens::page(&self.app.borrow());
        stage.show(tree);
        if let Some((_, root)) = phone::place::root() {
            self.fields.look(&root);
        }
        self.back.look(self.app.borrow().is_deep());
    }
}

/// Does something with the run while the page lives.
pub fn with(me: &Weak<Run>, act: impl FnOnce(&Run)) {
    if let Some(run) = me.upgrade() {
        act(&run);
    }
}
