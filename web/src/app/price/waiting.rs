//! What waiting is worth, heard: the guesses one at a time, someone who asked, and the band of doubt once the page is painted.

use super::{Done, Over, done, half, paid, shop};
use crate::app::App;
use crate::app::entry::Typed;
use crate::app::order::Order;
use crate::parts::Place;
use fivebar_core::ledger::decide::{Command, Now, SaleCommand};
use fivebar_core::ledger::fold::Guesses;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::sale::{PieceAskedFor, SellingGuessed};
use fivebar_core::quantity::reading::{self, Misread};
use fivebar_core::quantity::{Clock, Decimal, Id, Money, Span, Wall};
use fivebar_core::refusal::{Answer, Refusal};
use fivebar_core::sale::demand::{EACH_ASK_MOST, Guess, USUAL_RATIO, most_times};
use fivebar_core::sheet::offer::asked_about;
use fivebar_core::sheet::waiting::{Question, WaitingSheet, known, waiting};
use std::rc::Rc;

/// The asking price of a job, or the guesses it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Waits {
    pub job: Id,
    pub asked: Option<Asked>,
}

/// Guesses being made: nothing of them is written before all are said.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The price they are about.
    pub at: Money,
    /// What was said before, and now.
    pub said: Guesses,
    /// What is asked just now; none where all is said.
    pub now: Option<Question>,
    pub typed: Typed,
    /// Why it was not taken.
    pub why: Option<Refusal>,
}

/// What can be said of waiting.
#[derive(Clone, Debug, PartialEq)]
pub enum WaitTap {
    Open(Id),
    /// Change the guesses.
    Change,
    Ask(Question),
    /// All answers, with what is asked just now left as it was.
    Answers,
    Done,
    /// So many weeks from today.
    Weeks(i32),
    Save,
    /// Leave the guesses as they were.
    Away,
    /// Someone asked at this price and left; or said they would come and did not.
    Came(Id, Money, bool),
}

/// Takes in what is said of waiting.
pub fn heard(app: &mut App, tap: WaitTap, now: Now) {
    match tap {
        WaitTap::Open(job) => open(app, job),
        WaitTap::Change => change(app),
        WaitTap::Ask(question) => with(app, |asked| asked.ask(Some(question))),
        WaitTap::Answers => with(app, |asked| asked.ask(None)),
        WaitTap::Done => typed(app),
        WaitTap::Weeks(weeks) => {
            let (day, offset) = (now.wall.day().plus(weeks.saturating_mul(7)), now.wall.offset);
            with(app, |asked| {
                asked.said.by = Some(Wall::new(day.at(Clock::NOON, offset), offset));
                asked.go_on();
            });
        }
        WaitTap::Save => save(app, now),
        WaitTap::Away => {
            left(app);
            away(app);
        }
        WaitTap::Came(job, price, no_show) => {
            let fact = PieceAskedFor { job, price, no_show: no_show.then_some(true) };
            done(app, &Command::Sale(SaleCommand::NoteAsked(fact)), (job, Done::Asked(no_show)), now);
        }
    }
}

/// The page of a job.
///
/// # Errors
/// As the sheet.
pub fn sheet(app: &App, job: Id) -> Answer<WaitingSheet> {
    waiting(&shop(app), job, paid(app))
}

fn with(app: &mut App, act: impl FnOnce(&mut Asked)) {
    if let Over::Waiting(waits) = &mut app.price.over
        && let Some(asked) = &mut waits.asked
    {
        act(asked);
    }
}

fn open(app: &mut App, job: Id) {
    let Ok(sheet) = sheet(app, job) else { return };
    app.price.last_job = Some(job);
    app.price.open(Over::Waiting(Box::new(Waits { job, asked: None })));
    if Question::first_open(&sheet.guesses).is_some() {
        change(app);
    }
}

fn change(app: &mut App) {
    let Over::Waiting(waits) = &app.price.over else { return };
    let Ok(sheet) = sheet(app, waits.job) else { return };
    // Without a price there is nothing to guess at.
    let Some(at) = sheet.price else { return };
    let half = app.price.half.filter(|(job, _)| *job == sheet.job).map(|(_, said)| said);
    let said = half.unwrap_or(sheet.guesses);
    let mut asked = Asked { at: said.at.unwrap_or(at), said, now: None, typed: Typed::default(), why: None };
    if said.asks.is_none() && said.buys.is_none() {
        (asked.at, asked.now) = (at, Some(Question::Asks));
    } else if half.is_some() {
        asked.go_on();
    } else {
        asked.ask(Question::first_open(&said));
    }
    if let Over::Waiting(waits) = &mut app.price.over {
        waits.asked = Some(asked);
    }
}

impl Asked {
    fn ask(&mut self, question: Option<Question>) {
        (self.now, self.typed, self.why) = (question, Typed::default(), None);
    }

    /// The next question nobody answered; the ratio is asked in its turn, and has a usual answer: where all buy already no more can, and it is not asked. Of those that nobody has to say the
    /// next comes after one of them.
    fn go_on(&mut self) {
        let said = &self.said;
        let is_open = |question: &Question| match question {
            Question::EachAsk => said.each_ask.is_none(),
            Question::EachDay => said.each_day.is_none(),
            Question::NoShow => said.no_show.is_none(),
            Question::Asks => said.asks.is_none(),
            Question::Buys => said.buys.is_none(),
            Question::Ratio => said.k.is_none() && !all_buy(said),
            Question::By => said.by.is_none(),
            Question::End => said.end.is_none(),
        };
        let beside = Question::BESIDES.into_iter().skip_while(|beside| Some(*beside) != self.now);
        let next = Question::ALL.into_iter().chain(beside).find(is_open);
        self.ask(next);
    }

    /// What the guesses so far say that nobody can guess.
    fn refused(said: &Guesses, at: Money) -> Option<Refusal> {
        let buys = said.buys.unwrap_or(Decimal::ONE);
        let (asks, ratio) = (said.asks.unwrap_or_default(), said.k.unwrap_or(USUAL_RATIO));
        if let Some((met, most)) = said.k.zip(said.buys.map(most_times)).filter(|(met, most)| most < met) {
            return Some(Refusal::MoreThanAllBuy { met, most });
        }
        Guess { asks, buys, at, ratio, no_show: said.no_show.unwrap_or_default() }.demand().err()
    }
}

/// The most that is read before it is judged.
const READ_MOST: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);
/// People of whom some would buy.
pub const OF_FIVE: Decimal = Decimal::from_parts(5, 0, 0, false, 0);

fn typed(app: &mut App) {
    let sign = app.speech.sign();
    with(app, |asked| {
        let (Some(question), currency) = (asked.now, asked.at.currency()) else { return };
        let number = |text: &str| reading::number(text, sign, Decimal::ZERO..=READ_MOST);
        let five = |text: &str| of_five(reading::number(text, sign, Decimal::ZERO..=OF_FIVE)?);
        let money = |text: &str| reading::money(text, currency, sign);
        let nothing = Money::zero(currency);
        let mut said = asked.said;
        let taken: Option<()> = match question {
            Question::Asks => asked.typed.take(number).map(|n| said.asks = Some(n)),
            Question::Buys => asked.typed.take(five).map(|share| {
                said.buys = Some(share);
                // What was said of more who buy goes with that.
                said.k = said.k.filter(|_| !all_buy(&said));
            }),
            Question::Ratio => asked.typed.take(or(USUAL_RATIO, number)).map(|n| said.k = Some(n)),
            Question::End => asked.typed.take(money).map(|sum| said.end = Some(sum)),
            Question::EachAsk => {
                let span = |text: &str| reading::span(text, sign, EACH_ASK_MOST);
                asked.typed.take(or(Span::ZERO, span)).map(|time| said.each_ask = Some(time))
            }
            Question::EachDay => asked.typed.take(or(nothing, money)).map(|sum| said.each_day = Some(sum)),
            Question::NoShow => asked.typed.take(or(Decimal::ZERO, five)).map(|share| said.no_show = Some(share)),
            Question::By => None,
        };
        asked.why = Asked::refused(&said, asked.at);
        if taken.is_some() && asked.why.is_none() {
            asked.said = said;
            asked.go_on();
        } else if asked.why.is_some() {
            // What was typed stands, and the next figure takes its place.
            asked.typed = Typed::left(std::mem::take(&mut asked.typed.text));
        }
    });
}

/// What stands there where nothing is typed.
fn or<T: Clone>(empty: T, read: impl Fn(&str) -> Result<T, Misread>) -> impl Fn(&str) -> Result<T, Misread> {
    move |text| if text.is_empty() { Ok(empty.clone()) } else { read(text) }
}

/// All who ask buy at that price.
pub fn all_buy(said: &Guesses) -> bool {
    said.buys.is_some_and(|buys| Decimal::ONE <= buys)
}

/// So many of five, as a share.
fn of_five(n: Decimal) -> Result<Decimal, Misread> {
    Ok(n.checked_div(OF_FIVE).unwrap_or_default().normalize())
}

fn save(app: &mut App, now: Now) {
    let Over::Waiting(waits) = &app.price.over else { return };
    let (job, Some(asked)) = (waits.job, waits.asked.clone()) else { return };
    let Ok(before) = sheet(app, job).map(|sheet| sheet.guesses) else { return };
    let said = asked.said;
    let new = |now: Option<Decimal>, before: Option<Decimal>| now.filter(|_| now != before).map(Exact);
    let asks = new(said.asks, before.asks);
    let buys = new(said.buys, before.buys);
    let k = new(said.k.or(Some(USUAL_RATIO)), before.k);
    // What buys is said at a price.
    let at = (buys.is_some() || before.at.is_none()).then_some(asked.at);
    let by = said.by.filter(|by| Some(*by) != before.by).map(|by| by.at);
    let end = said.end.filter(|_| said.end != before.end);
    let (each_ask, each_day) = (said.each_ask.filter(|_| said.each_ask != before.each_ask), said.each_day);
    let each_day = each_day.filter(|_| each_day != before.each_day);
    // That all turn up is what stood there before anything was said of it: it is no new guess of buyers.
    let no_show = new(said.no_show, Some(before.no_show.unwrap_or_default()));
    let fact = SellingGuessed { job, asks, buys, at, k, by, end, each_ask, each_day, no_show };
    if fact == SellingGuessed::nothing(job) || done(app, &Command::Sale(SaleCommand::Guess(fact)), (job, Done::Guessed), now) {
        app.price.half = None;
        away(app);
    }
}

/// Guesses that were never all said are kept as far as they were answered, for the next time they are asked.
pub fn left(app: &mut App) {
    app.price.half = half::asked(app).or(app.price.half);
}

/// Back to the asking price; to what lies below where nothing is guessed yet.
fn away(app: &mut App) {
    let Over::Waiting(waits) = &mut app.price.over else { return };
    waits.asked = None;
    let job = waits.job;
    let has_page = sheet(app, job).is_ok_and(|sheet| Question::first_open(&sheet.guesses).is_none());
    if !has_page {
        app.price.close();
    }
}

/// What is known of the job whose band is shown and not reckoned yet, by the tax it is asked with.
fn wanted(app: &App) -> Option<Rc<fivebar_core::sheet::waiting::Known>> {
    let (job, tax) = match &app.price.over {
        Over::Offer(bargain) if app.place == Place::Price => (bargain.job, bargain.tax),
        Over::Waiting(waits) if app.place == Place::Price && waits.asked.is_none() => (waits.job, None),
        _ => return None,
    };
    let shop = shop(app);
    known(&shop, &asked_about(shop.job(job).ok()?, tax)).ok()?.filter(|known| !known.has_band())
}

/// After every tap: a band that is shown and not known is reckoned once the page is painted, for it is a sum of many.
pub fn follow(app: &mut App) {
    half::keep(app);
    if !app.price.doubting && wanted(app).is_some() {
        app.price.doubting = true;
        app.orders.push(Order::Painted);
    }
}

/// The page is painted; true where that was waited for here.
pub fn painted(app: &mut App) -> bool {
    let waited = std::mem::take(&mut app.price.doubting);
    if let Some(known) = waited.then(|| wanted(app)).flatten() {
        known.doubt();
    }
    waited
}
