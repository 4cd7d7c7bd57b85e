//! What a quote says of a job: hours and price as a range, and a day.

use super::account::{Account, account};
use super::dates::{DatesSheet, Given, dates_of};
use super::estimate::{Covers, estimate};
use super::marks::for_need;
use super::offer::part_of_time;
use super::shop::Shop;
use crate::bench::estimate::Range;
use crate::ledger::fold::{Job, Quote, tax_when};
use crate::ledger::kind::dates::QuoteGiven;
use crate::ledger::kind::sale::Carried;
use crate::money::price::Work;
use crate::quantity::{Count, Day, Decimal, Id, Money, Span, Wall};
use crate::refusal::{Answer, Refusal};

/// A quote stands so many days where nothing else is said [J].
pub const STANDS: i32 = 30;

/// What can be quoted for all pieces of a job together that are not gone.
#[derive(Clone, Debug, PartialEq)]
pub struct QuoteSheet {
    pub job: Id,
    /// As many as are not gone; of a job that is all gone, all of them.
    pub n: Count,
    /// Of so many in all.
    pub of: Count,
    /// All hours of the job, its haul's too: likely, the middles added up, and nine times in ten.
    pub likely: Span,
    pub safe: Span,
    /// Of that, its part of its hauls' minutes.
    pub hauls: Span,
    /// Costs so far and those planned; none where what a haul costs it is not known.
    pub costs: Option<Money>,
    /// What the price is reckoned from where some are gone; none where all are on hand, or nothing is known.
    pub these: Option<These>,
    /// The least price points that pay your rate for these hours, by card as the dearest way, and why there are none.
    pub range: Result<(Money, Money), NoQuote>,
    /// What of the job is in these hours.
    pub covers: Covers,
    /// The first day it can be promised for, nine times in ten: where other jobs go on, behind them.
    pub ready: Option<Day>,
    /// Nobody knows what of it is glued or dries: no day of it is handed on.
    pub is_undried: bool,
    /// The job whose waits are in that day, and how long they are.
    pub waits_as: Option<(String, Span)>,
    /// Hands that are likely on other jobs that go on.
    pub others: Span,
    /// What these do to its days; none where none go on, or where its days are not known.
    pub moves: Option<Moves>,
    /// The day it is to be done by, where it is not ready for it; and whether it will likely be missed. None once nothing
    /// is left to do.
    pub missed: Option<(Day, bool)>,
    /// The day of the quote that stands which can be kept no more; none once nothing is left to do.
    pub broken: Option<Broken>,
    pub until: Day,
    /// Tax is in the prices on paper: by what held when the quote that stands was given, else by what holds now.
    pub with_tax: bool,
    /// The first day it can be promised for where it is agreed on the last day of the quote.
    pub ready_last: Option<Day>,
    /// The quote that was given last, and whether it stands: its day is not over, and a price can still be asked.
    pub given: Option<Quote>,
    pub stands: bool,
    pub is_over: bool,
}

/// What pieces that are left bear of hours and costs, a drive to come whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct These {
    pub likely: Span,
    pub safe: Span,
    /// Of that, their part of the hauls.
    pub hauls: Span,
    pub costs: Money,
}

/// The first of its days that moves where other jobs come first, behind them and before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moves {
    /// The day it can be promised for.
    Promised([Day; 2]),
    /// The day in the course of which it is likely ready.
    Likely([Day; 2]),
    /// The day in the course of which it is ready to be safe.
    Safe([Day; 2]),
    Nothing,
}

/// A day that was quoted, and a later one that can be promised by now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    /// If it is agreed now.
    Now { given: Day, first: Day },
    /// If it is agreed on the last day of the quote.
    Last { until: Day, given: Day, first: Day },
}

/// Why there is no price to quote.
#[derive(Clone, Debug, PartialEq)]
pub enum NoQuote {
    /// The job has ended.
    Ended,
    /// No piece of it is on hand any more.
    Gone,
    /// It has a price: what is agreed, and what came in of that.
    Agreed {
        sum: Money,
        paid: Money,
    },
    /// Nothing says how long it takes.
    Hours,
    /// Its hours are a guess, by jobs of no known kind.
    Guess,
    /// What an hour must earn is not said.
    Rate,
    /// What the wood costs it is not known.
    Costs,
    /// Neither wood nor spending of it was noted or planned, and nobody said that it took none.
    NothingNoted,
    Refused(Refusal),
}

/// What can be quoted for a job.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], and as an account.
pub fn quote(shop: &Shop, id: Id, given: Given) -> Answer<QuoteSheet> {
    let job = shop.job(id)?;
    let sheet = estimate(shop, id, given.with_factor)?;
    let account = account(shop, id)?;
    // What the job's own page says it takes in all, and its part of the hauls.
    let in_all = sheet.in_all().unwrap_or(Range { likely: sheet.progress.so_far, safe: sheet.progress.so_far, ..Range::default() });
    let hauls = account.hours.haul.unwrap_or_default();
    let [likely, safe] = [in_all.likely, in_all.safe].map(|span| span.plus(hauls));
    let costs = costs(&job, &account)?;
    let these = costs.map(|costs| these((&job, &account, costs), ([likely, safe], hauls))).transpose()?.flatten();
    let range = match (settled(&job, &account)?, &sheet.found, costs) {
        (Some(settled), ..) => Err(settled),
        // Of what is made the hours are known that it took, whatever says how long such a piece takes.
        (_, None, _) if !is_made(&account) => Err(NoQuote::Hours),
        (_, _, None) if account.costs.shares.is_empty() => Err(NoQuote::NothingNoted),
        (_, _, None) => Err(NoQuote::Costs),
        _ if sheet.is_guessed() => Err(NoQuote::Guess),
        (_, _, Some(costs)) => between(shop, (&job, &account, costs), [likely, safe]),
    };
    let dates = dates_of(shop, (&job, &sheet), given);
    let ready = dates.first().map(|(day, _)| day);
    let is_to_do = !dates.rows.is_empty();
    let missed = dates.due.zip(dates.missed()).map(|(due, missed)| (due, missed.is_likely));
    let today = given.now.day();
    let is_over = job.quote.is_some_and(|quote| quote.until.is_some_and(|until| until < today));
    let is_settled = matches!(range, Err(NoQuote::Ended | NoQuote::Gone | NoQuote::Agreed { .. }));
    // What it was given for is no longer all there.
    let is_less = job.quote.is_some_and(|quote| on_hand(&job) < quote.n.unwrap_or(job.pieces));
    let stands = job.quote.is_some() && !is_over && !is_settled && !is_less;
    let standing = job.quote.filter(|_| stands && is_to_do);
    let broken = standing.and_then(|quote| broken(&quote, &dates, given.now));
    let until = today.plus(STANDS);
    let ready_last = dates.ready_after(until, given.now).filter(|_| ready.is_some());
    let ready_last = ready_last.map(|ready| dates.workdays.promised(ready));
    let moves = moves(&dates);
    Ok(QuoteSheet {
        job: id,
        n: on_hand(&job),
        of: job.pieces,
        likely,
        safe,
        hauls,
        costs,
        these,
        range,
        covers: sheet.covers,
        ready,
        is_undried: dates.is_undried,
        waits_as: dates.waits_as,
        others: dates.others,
        moves,
        missed,
        broken,
        until,
        with_tax: is_taxed(shop, &job, stands),
        ready_last,
        given: job.quote,
        stands,
        is_over,
    })
}

/// Nothing is to come of its hours, and some are logged.
fn is_made(account: &Account) -> bool {
    account.hours.to_come == Some(Span::ZERO) && account.hours.stands.own.total() > Span::ZERO
}

fn is_taxed(shop: &Shop, job: &Job, stands: bool) -> bool {
    let given = job.quote.filter(|_| stands).map(|quote| tax_when(shop.book, job, quote.entry));
    !given.unwrap_or_else(|| shop.tax_of(job)).rate.is_zero()
}

/// The day for what is agreed at once is said of the day it was given; after that the one for the last day counts, where that was said. A day
/// that was given is held against when it is ready: by now it may be no working day.
fn broken(quote: &Quote, dates: &DatesSheet, now: Wall) -> Option<Broken> {
    let said_last = quote.until.zip(quote.ready_last);
    let at_once = quote.ready.zip(dates.first()).filter(|_| said_last.is_none() || quote.at.day() == now.day());
    let at_once = at_once.filter(|(given, (_, ready))| !ready.is_by(*given)).map(|(given, (first, _))| Broken::Now { given, first });
    at_once.or_else(|| {
        let (until, given) = said_last?;
        let ready = dates.ready_after(until, now).filter(|ready| !ready.is_by(given))?;
        Some(Broken::Last { until, given, first: dates.workdays.promised(ready) })
    })
}

fn moves(dates: &DatesSheet) -> Option<Moves> {
    let both = [[dates.after_others?, dates.likely?], [dates.after_others_safe?, dates.safe?]];
    let [likely, safe] = both.map(|both| both.map(|ready| ready.day));
    let [_, promised] = both.map(|both| both.map(|ready| dates.workdays.promised(ready)));
    let is_moved = |[behind, alone]: [Day; 2]| behind != alone;
    let found = match () {
        () if is_moved(promised) => Moves::Promised(promised),
        () if is_moved(likely) => Moves::Likely(likely),
        () if is_moved(safe) => Moves::Safe(safe),
        () => Moves::Nothing,
    };
    (Span::ZERO < dates.others).then_some(found)
}

/// What leaves nothing to quote, however well it is known what it takes.
fn settled(job: &Job, account: &Account) -> Answer<Option<NoQuote>> {
    if job.ended.is_some() {
        return Ok(Some(NoQuote::Ended));
    }
    let paid =
        job.selling.open().map(|agreement| job.selling.received_under(job.currency, agreement.id)).collect::<Answer<Vec<Money>>>()?;
    let paid = Money::sum(job.currency, paid)?;
    let agreed = account.sold.agreed.map(|sum| NoQuote::Agreed { sum, paid });
    Ok(agreed.or((job.left() == 0).then_some(NoQuote::Gone)))
}

fn on_hand(job: &Job) -> Count {
    Some(job.left()).filter(|left| 0 < *left).unwrap_or(job.pieces)
}

/// With the fees that were lost. Where nothing was noted they are what is planned; not known where nothing is, or a haul's share is not.
fn costs(job: &Job, account: &Account) -> Answer<Option<Money>> {
    let known = match account.costs.total {
        Some(total) => total,
        None if account.costs.shares.is_empty() && !job.planned_costs.is_empty() => Money::zero(job.currency),
        None => return Ok(None),
    };
    known.plus(account.costs.still)?.plus(account.costs.fees_lost).map(Some)
}

fn between(shop: &Shop, (job, account, costs): (&Job, &Account, Money), times: [Span; 2]) -> Result<(Money, Money), NoQuote> {
    let rate = account.pricing.hourly.your_rate.ok_or(NoQuote::Rate)?;
    let (n, works) = (on_hand(job), works((job, account, costs), times).map_err(NoQuote::Refused)?);
    let price = |work: Work| for_need(shop, job, work.need(rate, n)?.ok_or(Refusal::OutOfRange)?).map(|price| price.charge);
    let [low, high] = works.map(price);
    Ok((low.map_err(NoQuote::Refused)?, high.map_err(NoQuote::Refused)?))
}

/// Costs and hours it is quoted by, likely and to be safe. Where some are gone, those that are left bear their part, and a drive that is to come
/// whole: as Price has it.
fn works((job, account, costs): (&Job, &Account, Money), times: [Span; 2]) -> Answer<[Work; 2]> {
    let n = on_hand(job);
    let whole = Work { costs: Some(costs), driven: Decimal::ZERO, time: None, pieces: job.pieces };
    let rest = account.pricing.work_of(job, (n, Carried::Delivered))?;
    let rest = if n == job.pieces { None } else { rest.costs.and(rest.time).map(|time| (rest, time)) };
    let [likely, _] = times;
    Ok(times.map(|time| match rest {
        Some((rest, own)) => Work { time: Some(own.plus(time.minus(likely))), ..rest },
        None => Work { time: Some(time), ..whole },
    }))
}

fn these(of: (&Job, &Account, Money), (times, hauls): ([Span; 2], Span)) -> Answer<Option<These>> {
    let ((job, ..), n) = (of, on_hand(of.0));
    if n == job.pieces {
        return Ok(None);
    }
    let part = |time: Span| part_of_time(time, n, job.pieces);
    let [likely, safe] = works(of, times)?;
    let (Some(long), Some(longer), Some(costs)) = (likely.time, safe.time, likely.need(Decimal::ZERO, n)?) else { return Ok(None) };
    Ok(Some(These { likely: part(long)?, safe: part(longer)?, hauls: part(hauls)?, costs: Money::book(costs, job.currency)? }))
}

impl QuoteSheet {
    /// What the tags of the pieces on paper ask together, and of how many, where that is more than the paper says at most.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::NotThere`], [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn tags_over(&self, shop: &Shop) -> Answer<Option<(Count, Money)>> {
        let job = shop.job(self.job)?;
        let Some((paper, tag)) = self.paper().filter(|_| self.range.is_ok()).zip(job.tag) else { return Ok(None) };
        let n = paper.n.unwrap_or(self.of);
        let asked = shop.tax_of(&job).charge(tag.times(n)?)?;
        Ok(Some((n, asked)).filter(|(_, asked)| paper.high.amount() < asked.amount()))
    }

    /// The quote as a fact, as it is given now, with no day where nobody knows what dries; none without a price.
    pub fn fact(&self) -> Option<QuoteGiven> {
        let (low, high) = self.range.as_ref().ok().copied()?;
        let (n, until) = (Some(self.n), Some(self.until));
        let [ready, ready_last] = [self.ready, self.ready_last].map(|day| day.filter(|_| !self.is_undried));
        let (likely, safe) = (Some(self.likely), Some(self.safe));
        Some(QuoteGiven { job: self.job, low, high, n, ready, until, buyer: None, likely, safe, ready_last })
    }

    /// What is on paper: the quote that stands as it was given, else as it is now.
    pub fn paper(&self) -> Option<QuoteGiven> {
        let standing = self.given.filter(|_| self.stands);
        let Quote { low, high, n, ready, until, ready_last, buyer, likely, safe, .. } = match standing {
            Some(quote) => quote,
            None => return self.fact(),
        };
        Some(QuoteGiven { job: self.job, low, high, n, ready, until, buyer, likely, safe, ready_last })
    }
}
