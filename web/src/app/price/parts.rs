//! What was agreed is paid in parts, heard: how many, how much each, and by which day.

use super::{Done, Over, agree, done, shop};
use crate::app::App;
use crate::app::entry::Typed;
use crate::app::jobs::draft::later;
use fivebar_core::ledger::decide::{Command, Now, SaleCommand};
use fivebar_core::ledger::kind::sale::{PaymentPart, PaymentPlanned};
use fivebar_core::money::staged::stages;
use fivebar_core::quantity::{Day, Decimal, Id, Listed, Money, Wall, reading};

/// Parts being planned: each with its sum and its day; at the hand-over where there is none.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    pub job: Id,
    pub agreed: Id,
    pub price: Money,
    /// What came in for it already: it is the first of its payments.
    pub came: Money,
    /// The deposit that was agreed, where one was; else the first payment as it was typed.
    pub deposit: Money,
    pub parts: Vec<(Money, Option<Day>)>,
    /// The last was typed, and stays as it is.
    pub is_last_typed: bool,
    /// The part in hand, for its day.
    pub at: usize,
    pub pad: Option<Typed>,
    /// It was opened on the page of the job, and leads back there.
    pub of_job: bool,
}

/// What can be said of parts.
#[derive(Clone, Debug, PartialEq)]
pub enum PartsTap {
    /// Of a job and its agreement.
    Open(Id, Id),
    /// The same from the page of the job.
    OfJob(Id, Id),
    /// Shares in per cent that make one hundred.
    Split(&'static [i64]),
    At(usize),
    Pad,
    PadDone,
    PadAway,
    /// Its day moves by so many.
    Move(i32),
    /// At the hand-over.
    NoDay,
    Save,
    /// In one sum after all.
    Whole,
}

/// Takes in what is said of parts.
pub fn heard(app: &mut App, tap: PartsTap, now: Now) {
    match tap {
        PartsTap::Open(job, agreed) => open(app, (job, agreed), now),
        PartsTap::OfJob(job, agreed) => {
            agree::from_job(app, |app| open(app, (job, agreed), now));
            with(app, |parts| parts.of_job = true);
        }
        PartsTap::Split(shares) => with(app, |parts| parts.split(shares, now.wall.day())),
        PartsTap::At(nth) => with(app, |parts| parts.at = nth),
        PartsTap::Pad => with(app, |parts| parts.pad = Some(Typed::default())),
        PartsTap::PadAway => with(app, |parts| parts.pad = None),
        PartsTap::PadDone => pad_done(app),
        PartsTap::Move(by) => with(app, |parts| parts.on(|day| Some(later(day.unwrap_or(now.wall.day()), by)))),
        PartsTap::NoDay => with(app, |parts| parts.on(|_| None)),
        PartsTap::Save => save(app, false, now),
        PartsTap::Whole => save(app, true, now),
    }
}

impl Parts {
    /// First what came in, then what lacks of the deposit that was agreed, due at once, and the rest at the hand-over; halves where neither is, or both are more
    /// than the price.
    fn propose(&mut self, today: Day) {
        let lacks = self.deposit.minus(self.came).ok().filter(|lacks| Decimal::ZERO < lacks.amount());
        let ahead = [Some(self.came).filter(|came| !came.is_zero()), lacks].into_iter().flatten().listed();
        let rest = ahead.iter().try_fold(self.price, |rest, sum| rest.minus(*sum)).ok();
        match rest.filter(|rest| !ahead.is_empty() && Decimal::ZERO <= rest.amount()) {
            // The deposit is all of it.
            Some(rest) if rest.is_zero() => self.parts = ahead.into_iter().map(|sum| (sum, Some(today))).listed(),
            Some(rest) => self.parts = ahead.into_iter().map(|sum| (sum, Some(today))).chain([(rest, None)]).listed(),
            None => self.split(&[50, 50], today),
        }
        self.at = self.first_open();
    }

    /// The price by these shares: the first today, the last at the hand-over, those between when the maker says. What is asked ahead, or came in
    /// already, is the first whatever its share, and the others part the rest as their shares are.
    fn split(&mut self, shares: &[i64], today: Day) {
        let Some(sums) = self.sums(shares) else { return };
        let last = sums.len().saturating_sub(1);
        let day = |nth: usize| (nth < last).then(|| later(today, i32::try_from(nth).unwrap_or(0).saturating_mul(14)));
        self.is_last_typed = false;
        self.parts = sums.into_iter().enumerate().map(|(nth, sum)| (sum, day(nth))).listed();
        self.at = self.first_open();
    }

    /// What came in already is no more to be moved.
    fn first_open(&self) -> usize {
        self.paid().min(self.parts.len().saturating_sub(1))
    }

    /// What the first payment is whatever its share: the deposit, or what came in where that is more.
    fn ahead(&self) -> Money {
        if self.deposit.amount() < self.came.amount() { self.came } else { self.deposit }
    }

    fn sums(&self, shares: &[i64]) -> Option<Vec<Money>> {
        let ahead = self.ahead();
        let rest = self.price.minus(ahead).ok().filter(|rest| !ahead.is_zero() && Decimal::ZERO < rest.amount());
        let Some(rest) = rest else {
            return stages(self.price, &shares.iter().map(|percent| Decimal::new(*percent, 2)).listed()).ok();
        };
        let others = shares.get(1..)?;
        let all = Decimal::from(others.iter().sum::<i64>());
        let mut left = rest;
        let (_, others) = others.split_last()?;
        let part = |percent: &i64| {
            let share = Decimal::from(*percent).checked_div(all)?;
            let sum = Money::book(rest.amount().checked_mul(share)?, rest.currency()).ok()?;
            left = left.minus(sum).ok()?;
            Some(sum)
        };
        let sums = others.iter().map(part).collect::<Option<Vec<Money>>>()?;
        Some(std::iter::once(ahead).chain(sums).chain([left]).listed())
    }

    /// So many of its first payments are paid by what came in.
    pub fn paid(&self) -> usize {
        let mut all = Money::zero(self.price.currency());
        let is_paid = |(sum, _): &&(Money, Option<Day>)| {
            all = all.plus(*sum).unwrap_or(self.price);
            all.amount() <= self.came.amount()
        };
        self.parts.iter().take_while(is_paid).count()
    }

    /// Once another part is typed the last takes the rest, unless it was typed itself; where nothing is left for it all stay as they are.
    fn last_takes_the_rest(&mut self) {
        let last = self.parts.len().saturating_sub(1);
        self.is_last_typed |= self.at == last;
        let others = Money::sum(self.price.currency(), self.parts.iter().take(last).map(|(sum, _)| *sum).listed());
        let rest = others.and_then(|others| self.price.minus(others)).ok().filter(|rest| Decimal::ZERO < rest.amount());
        if let Some((rest, (of_it, _))) = rest.filter(|_| !self.is_last_typed).zip(self.parts.last_mut()) {
            *of_it = rest;
        }
    }

    /// The day of the part in hand.
    fn on(&mut self, day: impl FnOnce(Option<Day>) -> Option<Day>) {
        if let Some((_, of_it)) = self.parts.get_mut(self.at) {
            *of_it = day(*of_it);
        }
    }
}

fn with(app: &mut App, act: impl FnOnce(&mut Parts)) {
    if let Over::Parts(parts) = &mut app.price.over {
        act(parts);
    }
}

fn open(app: &mut App, (id, agreed): (Id, Id), now: Now) {
    let Some(job) = shop(app).job(id).ok() else { return };
    let Some(agreement) = job.selling.agreement(agreed) else { return };
    let none = Money::zero(job.currency);
    let came = job.selling.received_under(job.currency, agreed).unwrap_or(none);
    let deposit = agreement.deposit.unwrap_or(none);
    let of = |part: &fivebar_core::ledger::fold::PartOfPay| (part.sum, part.due.map(Wall::day));
    let parts = agreement.parts.iter().map(of).listed();
    let mut opened =
        Parts { job: id, agreed, price: agreement.sum, came, deposit, parts, is_last_typed: false, at: 0, pad: None, of_job: false };
    if opened.parts.is_empty() {
        opened.propose(now.wall.day());
    }
    app.price.open(Over::Parts(Box::new(opened)));
}

fn pad_done(app: &mut App) {
    let sign = app.speech.sign();
    with(app, |parts| {
        let currency = parts.price.currency();
        let Some(sum) = parts.pad.as_mut().and_then(|typed| typed.take(|text| reading::money(text, currency, sign))) else { return };
        if let Some((of_it, _)) = parts.parts.get_mut(parts.at) {
            *of_it = sum;
        }
        if parts.at == 0 {
            parts.deposit = sum;
        }
        parts.pad = None;
        parts.last_takes_the_rest();
    });
}

fn save(app: &mut App, whole: bool, now: Now) {
    let Over::Parts(parts) = &app.price.over else { return };
    let part = |(sum, day): &(Money, Option<Day>)| PaymentPart { sum: *sum, due: day.map(|day| day.start(now.wall.offset)) };
    let planned = if whole { vec![] } else { parts.parts.iter().map(part).listed() };
    let (job, agreed, price) = (parts.job, parts.agreed, parts.price);
    let fact = PaymentPlanned { job, agreed, parts: planned };
    if done(app, &Command::Sale(SaleCommand::PlanPayment(fact)), (job, Done::InParts(price)), now) {
        agree::left(app);
    }
}
