//! What waiting is worth for the pieces of a job: the asking price ahead, not under with its band, and the chances, in people and money.

mod asking;
mod back;
mod costs;
mod known;
mod later;
mod seen;

pub use asking::Step;
pub use back::{Back, looked_back};
pub use costs::Costs;
pub use known::{IN_ONE_GO, Kept, Known, Worth, day_has_come, known};
pub use later::{Later, kept, later};

use super::marks::ask_today;
use super::shop::Shop;
use crate::ledger::fold::{Guesses, Job};
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::offer::Band;
use crate::quantity::{Count, Currency, Day, Id, Money, Take, Wall};
use crate::refusal::{Answer, Refusal};
use crate::sale::chances::Chances;
use std::rc::Rc;

/// A question a maker can answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// How many ask in a week at this price?
    Asks,
    /// How many of five who ask would buy?
    Buys,
    /// At a fifth less, how many times as many?
    Ratio,
    /// By when is it to be sold?
    By,
    /// What is one worth then?
    End,
    /// How long does each who asks take you? Nobody has to say,
    EachAsk,
    /// nor what keeping them costs a day,
    EachDay,
    /// nor how many of five who ask never turn up.
    NoShow,
}

impl Question {
    /// Those that are asked, in their order.
    pub const ALL: [Question; 5] = [Question::Asks, Question::Buys, Question::Ratio, Question::By, Question::End];
    /// Those behind a key: what was not said of them counts as nothing.
    pub const BESIDES: [Question; 3] = [Question::EachAsk, Question::EachDay, Question::NoShow];

    /// The first that nobody answered; the ratio has a usual answer.
    pub fn first_open(guesses: &Guesses) -> Option<Question> {
        let open = [
            (Question::Asks, guesses.asks.is_none()),
            (Question::Buys, guesses.buys.is_none() || guesses.at.is_none()),
            (Question::By, guesses.by.is_none()),
            (Question::End, guesses.end.is_none()),
        ];
        open.into_iter().find(|(_, is_open)| *is_open).map(|(question, _)| question)
    }
}

/// The page of a job's asking price.
#[derive(Clone, Debug, PartialEq)]
pub struct WaitingSheet {
    pub job: Id,
    pub name: String,
    pub currency: Currency,
    /// As it is written.
    pub tag: Option<Money>,
    /// Pieces no agreement speaks for.
    pub free: Count,
    /// What one hears who asks: what to ask now, else what is handed over for the tag, else what the guess was made at.
    pub price: Option<Money>,
    pub guesses: Guesses,
    pub stands: Stands,
    pub back: Option<Back>,
}

/// How it stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Stands {
    /// This was not guessed yet.
    Open(Question),
    /// Nothing is left to wait with.
    NothingLeft,
    /// The day by which it was to be sold has passed.
    Over(Day),
    Refused(Refusal),
    Found(Box<Prospect>),
}

/// What waiting is worth and how it is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Prospect {
    pub now: Day,
    /// The last day looked at, so many days from now.
    pub until: Day,
    pub days: u16,
    /// So many people more are expected to ask until then.
    pub to_ask: f64,
    /// The share of those who turn up that buys at what is asked now.
    pub buys: f64,
    /// What to ask now, and each week from then on.
    pub steps: Vec<Step>,
    /// A step stays at this, which pays the lowest pay, though less would be best to ask.
    pub held: Option<Money>,
    /// Not under for one, by this way of paying, with its band once that is reckoned.
    pub under: Money,
    pub band: Option<Band>,
    /// The band can't be reckoned, or is.
    pub has_band: bool,
    /// What a buyer would hand over that is as good as the end; not under is that where it lies above what is asked.
    pub end: Money,
    /// What waiting costs, as far as it was said.
    pub costs: Costs,
    pub chances: Chances,
    /// What the next buyer hands over in the mean, to the nearest whole unit.
    pub next: Option<Money>,
    /// So many asked since it was guessed.
    pub asked: Count,
    /// What they made of the guess: so many ask in a week now, and this share of those who turn up buys at the price that was guessed at.
    pub learnt: Learnt,
}

/// A guess after what was seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learnt {
    pub asks: f64,
    pub share: f64,
}

/// The page of a job's asking price, for what is paid in one way.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
pub fn waiting(shop: &Shop, id: Id, paid: Paid) -> Answer<WaitingSheet> {
    let job = shop.job(id)?;
    let known = known(shop, &job)?;
    Ok(WaitingSheet {
        job: id,
        currency: job.currency,
        tag: job.tag,
        free: job.free(),
        price: ask_today(shop, &job, (1, paid))?.or(job.selling.guesses.at),
        stands: stands(shop, (&job, paid), known),
        back: looked_back(shop, &job)?,
        guesses: job.selling.guesses,
        name: job.name,
    })
}

fn stands(shop: &Shop, (job, paid): (&Job, Paid), known: Option<Rc<Known>>) -> Stands {
    let guesses = &job.selling.guesses;
    if let Some(question) = Question::first_open(guesses) {
        return Stands::Open(question);
    }
    if let Some(by) = guesses.by.filter(|by| by.day() <= Wall::new(shop.now, by.offset).day()) {
        return Stands::Over(by.day());
    }
    let take = shop.terms_of(job, paid).take();
    let take = |known: &Known| known.rests.carried(take?, Carried::Delivered);
    let coins = |prospect| in_coins(prospect, |sum| shop.till(job.currency).in_coins(Some(paid), sum));
    match known.map(|known| take(&known).and_then(|take| prospect(&known, take)).and_then(coins)) {
        None => Stands::NothingLeft,
        Some(Ok(prospect)) => Stands::Found(Box::new(Prospect { costs: costs::costs(shop, job), ..prospect })),
        Some(Err(refusal)) => Stands::Refused(refusal),
    }
}

/// What is asked, as it can be paid: in notes to the coin.
fn in_coins(prospect: Prospect, coins: impl Fn(Money) -> Answer<Money>) -> Answer<Prospect> {
    let steps = prospect.steps.iter().map(|step| Ok(Step { ask: coins(step.ask)?, ..*step })).collect::<Answer<Vec<_>>>()?;
    // Said to the nearest whole unit, the next sale brings no more than is asked.
    let ask = steps.first().map(|step: &Step| step.ask);
    let next = prospect.next.map(|next| ask.filter(|ask| ask.amount() < next.amount()).unwrap_or(next));
    Ok(Prospect { steps, held: prospect.held.map(coins).transpose()?, next, ..prospect })
}

fn prospect(known: &Known, take: Take) -> Answer<Prospect> {
    let (rests, worth) = (&known.rests, known.worth.as_ref().map_err(Clone::clone)?);
    let steps = asking::ahead(known)?;
    let (currency, chances) = (rests.end.currency(), asking::sold(known, &worth.demand, &steps));
    Ok(Prospect {
        now: rests.now,
        until: asking::until(rests),
        days: rests.days(rests.now),
        to_ask: worth.waits.to_ask(),
        buys: worth.waits.buys_at(worth.ask)?,
        next: later::whole(&chances, currency)?,
        chances,
        held: asking::held(known, &steps)?,
        steps,
        under: known.under((1, worth.ask), take)?,
        band: known.band((1, worth.ask), take),
        has_band: known.has_band(),
        end: rests.end_for((1, worth.ask), take)?,
        costs: Costs::default(),
        asked: Count::try_from(rests.came.len()).unwrap_or(Count::MAX),
        learnt: Learnt { asks: worth.demand.ask * 7.0, share: worth.demand.share },
    })
}
