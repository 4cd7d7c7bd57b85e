//! A price agreed before the hand-over, heard: how much, a deposit, by when, fetched or delivered.

use super::{Done, Over, ask_today, asking, chosen, chosen_tax, done, on_top, paid_said, shop, tax_of};
use crate::app::App;
use crate::app::entry::Typed;
use crate::app::jobs::Room;
use crate::app::jobs::draft::later;
use crate::app::order::{Feel, Order};
use crate::app::price::far::{Far, far_from_tags};
use crate::app::taxes::charged;
use crate::app::workshop::people;
use crate::parts::Place;
use crate::words::en::deal as words;
use fivebar_core::ledger::decide::{Command, Now, SaleCommand};
use fivebar_core::ledger::fold::{Job, TaxBy};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::sale::{Carried, Paid, PriceAgreed};
use fivebar_core::quantity::{Count, Currency, Day, Decimal, Id, Money, Span, Wall, reading};

/// What is typed by the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    Price,
    Deposit,
    Pieces,
}

/// By when it is handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// The day the changed agreement has.
    AsAgreed(Wall),
    NoDate,
    /// So many weeks from today.
    Weeks(u32),
    /// A day that was stepped to.
    On(Day),
}

/// An agreement being made.
#[derive(Clone, Debug, PartialEq)]
pub struct Agree {
    pub job: Id,
    /// It was opened on the job's own page, which is there again when it is said or left.
    pub of_job: bool,
    /// The agreement this one changes.
    pub replaces: Option<Id>,
    pub currency: Currency,
    /// Pieces that can be promised.
    pub free: Count,
    pub n: Count,
    pub sum: Option<Money>,
    /// The sum that was named was for so many pieces, and is named anew.
    pub was_for: Option<Count>,
    /// What it is taxed with, where that was chosen for this buyer, or agreed before.
    pub tax: Option<TaxBy>,
    pub deposit: Option<Money>,
    /// The deposit that was asked of the order it changes, which goes down to a price under it.
    pub asked_before: Option<Money>,
    /// So many per cent of the price are asked ahead: until a deposit is typed it goes along with the price.
    pub percent: Option<u32>,
    pub carried: Carried,
    pub by: By,
    /// Who it is with, where that is said.
    pub buyer: Option<Id>,
    /// The name of somebody new, as it is typed.
    pub named: Option<String>,
    pub pad: Option<(Field, Typed)>,
    /// It was asked whether this sum is meant, far from the tags as it is, and what these come to.
    pub far: Option<(Far, Money, Money)>,
}

/// What can be said of an agreement.
#[derive(Clone, Debug, PartialEq)]
pub enum AgreeTap {
    /// On so many of a job, at a sum where one was named.
    Open(Id, Option<Money>),
    /// On a piece of the job whose page is shown.
    OfJob(Id),
    /// A change of order, to a sum where one was named.
    Change(Id, Id, Option<Money>),
    /// The same from the page of the job.
    ChangeOfJob(Id, Id),
    Pieces(Count),
    Pad(Field),
    PadDone,
    /// What is typed is without the tax that comes on top.
    PadBeforeTax,
    PadAway,
    /// So many per cent of the price ahead; nothing for no deposit.
    Share(u32),
    /// What this sale is taxed with.
    Tax(TaxBy),
    Carried(Carried),
    By(By),
    /// So many days later, or earlier.
    Day(i32),
    /// Somebody known; nobody in particular.
    Buyer(Option<Id>),
    /// The name of somebody new.
    Named(String),
    Save,
}

/// Takes in what is said of an agreement.
pub fn heard(app: &mut App, tap: AgreeTap, now: Now) {
    match tap {
        AgreeTap::Open(job, sum) => open(app, job, sum),
        AgreeTap::OfJob(job) => from_job(app, |app| open(app, job, None)),
        AgreeTap::Change(job, agreed, sum) => change(app, (job, agreed), sum),
        AgreeTap::ChangeOfJob(job, agreed) => from_job(app, |app| change(app, (job, agreed), None)),
        AgreeTap::Pieces(n) => pieces(app, n),
        AgreeTap::Pad(field) => with(app, |agree| agree.pad = Some((field, Typed::default()))),
        AgreeTap::PadAway => with(app, |agree| agree.pad = None),
        AgreeTap::PadDone => pad_done(app, false),
        AgreeTap::PadBeforeTax => pad_done(app, true),
        AgreeTap::Share(percent) => with(app, |agree| (agree.percent, agree.deposit) = (Some(percent), agree.share(percent))),
        AgreeTap::Tax(by) => along(app, |agree| agree.tax = Some(by)),
        AgreeTap::Carried(carried) => with(app, |agree| agree.carried = carried),
        AgreeTap::By(by) => with(app, |agree| agree.by = by),
        AgreeTap::Day(by) => with(app, |agree| agree.by = By::On(later(agree.by.day(now.wall).unwrap_or(now.wall).day(), by))),
        AgreeTap::Buyer(buyer) => with(app, |agree| (agree.buyer, agree.named) = (buyer, None)),
        AgreeTap::Named(name) => with(app, |agree| (agree.buyer, agree.named) = (None, Some(name))),
        AgreeTap::Save => save(app, now),
    }
}

impl Agree {
    /// A share of the price in per cent; none where there is no price or no share.
    pub fn share(&self, percent: u32) -> Option<Money> {
        let share = self.sum?.amount().checked_mul(Decimal::new(i64::from(percent), 2))?;
        Money::book(share, self.currency).ok().filter(|sum| !sum.is_zero())
    }

    /// What is asked ahead: a deposit of the order before is no more than the price.
    pub fn ahead(&self) -> Option<Money> {
        let above = |deposit: &Money| self.sum.filter(|sum| self.asked_before == Some(*deposit) && sum.amount() < deposit.amount());
        self.deposit.map(|deposit| above(&deposit).unwrap_or(deposit))
    }

    /// Whether so many per cent are asked ahead: as was chosen while there is no price yet, else as the deposit comes out.
    pub fn is_share(&self, percent: u32) -> bool {
        match (self.ahead(), self.share(percent)) {
            (None, None) => self.percent.unwrap_or(0) == percent,
            (deposit, share) => deposit == share,
        }
    }

    /// Another price, with its share ahead.
    fn priced(&mut self, sum: Option<Money>) {
        self.sum = sum;
        self.deposit = self.percent.map_or(self.deposit, |percent| self.share(percent));
    }

    /// What it is taxed with: as chosen or agreed, else as its job is.
    pub fn taxed(&self, job: &Job) -> TaxBy {
        self.tax.unwrap_or(job.tax)
    }

    /// Whether payments that were planned do not go on: they were of another sum.
    pub fn drops_parts(&self, job: &Job) -> bool {
        let old = self.replaces.and_then(|id| job.selling.agreement(id));
        old.is_some_and(|old| !old.parts.is_empty() && (Some(old.sum), 0) != (self.sum, old.sold))
    }
}

impl By {
    /// The day of the hand-over, seen from a moment. What was agreed stays the same day, by the clock of the place now.
    pub fn day(self, now: Wall) -> Option<Wall> {
        match self {
            By::AsAgreed(due) => Some(Wall::new(due.day().start(now.offset), now.offset)),
            By::NoDate => None,
            By::On(day) => Some(Wall::new(day.start(now.offset), now.offset)),
            By::Weeks(weeks) => Some(Wall::new(now.at.plus(Span::minutes(i64::from(weeks).saturating_mul(7 * 24 * 60))), now.offset)),
        }
    }
}

fn with(app: &mut App, act: impl FnOnce(&mut Agree)) {
    if let Over::Agree(agree) = &mut app.price.over {
        act(agree);
    }
}

fn open(app: &mut App, id: Id, sum: Option<Money>) {
    let Ok(job) = shop(app).job(id) else { return };
    let free = job.free();
    let asked = asking(app, id, free);
    // Who orders several takes them all, as a rule.
    let all = if job.made_for == For::Order { free.max(1) } else { 1 };
    let n = if sum.is_some() { asked.n } else { all };
    let agree = Agree {
        job: id,
        of_job: false,
        replaces: None,
        currency: job.currency,
        free,
        n,
        sum: sum.or_else(|| self::asked(app, (id, n))),
        was_for: None,
        tax: chosen_tax(app, id),
        deposit: None,
        asked_before: None,
        percent: None,
        carried: asked.carried,
        by: By::NoDate,
        buyer: None,
        named: None,
        pad: None,
        far: None,
    };
    app.price.open(Over::Agree(Box::new(agree)));
}

/// Over what lies open in Price; one that was begun on a job before and not said makes room.
pub(super) fn from_job(app: &mut App, open: impl FnOnce(&mut App)) {
    app.go(Place::Price);
    let is_of_job = match &app.price.over {
        Over::Agree(agree) => agree.of_job,
        Over::Parts(parts) => parts.of_job,
        _ => false,
    };
    if is_of_job {
        app.price.close();
    }
    open(app);
    with(app, |agree| agree.of_job = true);
}

/// It was left: the job it was opened on is there again, as it was.
pub fn left(app: &mut App) {
    let of_job = match &app.price.over {
        Over::Agree(agree) if agree.of_job => Some(agree.job),
        Over::Parts(parts) if parts.of_job => Some(parts.job),
        _ => None,
    };
    app.price.close();
    let Some(job) = of_job else { return };
    app.go(Place::Jobs);
    if app.jobs.open != Some(job) {
        (app.jobs.open, app.jobs.room, app.jobs.draft) = (Some(job), Some(Room::Sell), None);
    }
}

/// What is asked today of the buyer who stands there: to the coin only where notes were said for them, since what is agreed is paid later.
fn asked(app: &App, (id, n): (Id, Count)) -> Option<Money> {
    ask_today(app, (id, n), (chosen_tax(app, id), paid_said(app).unwrap_or(Paid::Bank)))
}

/// Another number of pieces, or another tax for this buyer: what is asked goes along, a sum that was named stays what is handed over.
fn along(app: &mut App, act: impl FnOnce(&mut Agree)) {
    let Over::Agree(agree) = &app.price.over else { return };
    let (job, follows) = (agree.job, agree.replaces.is_none() && agree.sum == asked(app, (agree.job, agree.n)));
    let mut n = agree.n;
    with(app, |agree| {
        act(agree);
        n = agree.n;
    });
    let sum = asked(app, (job, n));
    with(app, |agree| agree.priced(if follows { sum } else { agree.sum }));
}

/// Another number of pieces: a sum that was named was for the number before, and is to be named anew.
fn pieces(app: &mut App, n: Count) {
    let Over::Agree(agree) = &app.price.over else { return };
    let before = agree.n;
    if before == n {
        return;
    }
    let follows = agree.replaces.is_none() && agree.sum == asked(app, (agree.job, before));
    along(app, |agree| agree.n = n);
    with(app, |agree| {
        if !follows && agree.sum.is_some() {
            agree.was_for = Some(before);
            agree.priced(None);
        }
    });
}

fn change(app: &mut App, (id, agreed): (Id, Id), sum: Option<Money>) {
    let Ok(job) = shop(app).job(id) else { return };
    let Some(old) = job.selling.agreement(agreed) else { return };
    let n = old.n.saturating_sub(old.sold);
    // What was agreed for the pieces still to be handed over; a deposit was asked of the whole.
    let rest = old.sum.minus(old.sold_for).unwrap_or(old.sum);
    // A sum that was named on the offer screen was named for the way chosen there.
    let asked = sum.and(chosen(app, id)).and_then(|bargain| bargain.carried);
    // Payments that are planned took its place.
    let deposit = old.deposit.filter(|_| old.sold == 0 && old.parts.is_empty());
    let agree = Agree {
        job: id,
        of_job: false,
        replaces: Some(agreed),
        currency: job.currency,
        free: job.free().saturating_add(n),
        n,
        sum: sum.or(Some(rest)),
        was_for: None,
        tax: chosen_tax(app, id).or(old.tax.map(TaxBy::Agreed)),
        deposit,
        asked_before: deposit,
        percent: None,
        carried: asked.or(old.carried).unwrap_or(Carried::Fetched),
        by: old.due.map_or(By::NoDate, By::AsAgreed),
        buyer: old.buyer,
        named: None,
        pad: None,
        far: None,
    };
    app.price.open(Over::Agree(Box::new(agree)));
}

/// So many pieces as were typed, of those that can be promised, one at least.
fn pieces_typed(app: &mut App) {
    let (sign, mut n) = (app.speech.sign(), None);
    with(app, |agree| {
        let free = agree.free;
        let typed = agree.pad.as_mut().map(|(_, typed)| typed);
        n = typed.and_then(|typed| typed.take(|text| reading::count_within(text, sign, 1..=free)));
        agree.pad = if n.is_some() { None } else { agree.pad.take() };
    });
    n.into_iter().for_each(|n| pieces(app, n));
}

/// Takes in what was typed; the tax is added where it is without.
fn pad_done(app: &mut App, adds_tax: bool) {
    let sign = app.speech.sign();
    let Over::Agree(agree) = &app.price.over else { return };
    if matches!(agree.pad, Some((Field::Pieces, _))) {
        return pieces_typed(app);
    }
    let Ok(job) = shop(app).job(agree.job) else { return };
    let tax = on_top(app, (job.currency, agree.taxed(&job))).filter(|_| adds_tax);
    with(app, |agree| {
        let currency = agree.currency;
        let Some((field, typed)) = &mut agree.pad else { return };
        let tax = tax.filter(|_| *field == Field::Price);
        let Some(sum) = typed.take(|text| charged(text, (currency, sign), tax)) else { return };
        if *field == Field::Deposit {
            (agree.percent, agree.deposit) = (None, Some(sum).filter(|sum| !sum.is_zero()));
        } else {
            agree.was_for = None;
            agree.priced(Some(sum));
        }
        agree.pad = None;
    });
}

/// A sum far from the tags of what is promised; neither what is asked nor what was agreed before is typed.
fn far_of(app: &App, agree: &Agree, sum: Money) -> Option<(Far, Money, Money)> {
    if Some(sum) == asked(app, (agree.job, agree.n)) || agree.replaces.is_some() {
        return None;
    }
    let (far, tags) = far_from_tags(app, (agree.job, agree.n), sum, (tax_of(app, agree.job), None))?;
    Some((far, sum, tags))
}

fn save(app: &mut App, now: Now) {
    let Over::Agree(agree) = &app.price.over else { return };
    let Some(sum) = agree.sum else { return };
    let far = far_of(app, agree, sum);
    if far.is_some() && agree.far != far {
        with(app, |agree| agree.far = far);
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let due = agree.by.day(now.wall).map(|day| day.at);
    let tax = chosen_tax(app, agree.job).and_then(|_| tax_of(app, agree.job));
    let fact = PriceAgreed {
        job: agree.job,
        n: agree.n,
        sum,
        carried: agree.carried,
        deposit: agree.ahead(),
        due,
        buyer: agree.buyer,
        replaces: agree.replaces,
        rate: tax.map(|tax| Exact(tax.rate)),
        side: tax.map(|tax| tax.side),
    };
    let (job, of_job) = (agree.job, agree.of_job);
    let name = agree.named.as_deref().map(str::trim).filter(|name| !name.is_empty()).map(str::to_owned);
    let agreed = match name {
        None => done(app, &Command::Sale(SaleCommand::Agree(fact)), (job, Done::Agreed(sum)), now),
        Some(name) => with_new(app, fact, name, now),
    };
    match agreed {
        true if of_job => left(app),
        true => app.price.to_list(),
        false => {}
    }
}

/// With somebody new: one act, and the name beside the book.
fn with_new(app: &mut App, fact: PriceAgreed, name: String, now: Now) -> bool {
    let (job, sum) = (fact.job, fact.sum);
    if !people::named(app, &Command::Sale(SaleCommand::AgreeWithNew(fact)), name, now) {
        return false;
    }
    app.price.last = app.shelf().last_act.map(|act| (act, job, Done::Agreed(sum)));
    app.orders.push(Order::Feel(Feel::Stop));
    true
}

/// Buyers whose name is known, the latest first.
pub fn buyers(app: &App) -> Vec<(Id, String)> {
    let shelf = app.shelf();
    let people = shelf.workshop().people.clone().into_iter().rev().filter(|person| person.role == Role::Buyer);
    people.filter_map(|person| Some((person.id, shelf.name(person.id)?.clone()))).collect()
}

/// Who it is with: by name, and where that was forgotten as someone. None where it was never said.
pub fn who(app: &App, buyer: Option<Id>) -> Option<String> {
    buyer.map(|buyer| app.shelf().name(buyer).cloned().unwrap_or_else(|| words::SOMEONE.to_owned()))
}
