//! The reckoning as JSON: every haul and job of a book. Keys, units and nulls are settled in docs/RECKON.md.

mod bought;
mod designs;
mod given;
mod taxes;
mod waits;
mod ways;

use fivebar_core::bench::Shares;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::{Book, Subject, fold};
use fivebar_core::money::price::Mark;
use fivebar_core::money::share::Share;
use fivebar_core::quantity::{Currency, Decimal, Id, Mass, Moment, Money, Sorted, Span, Spelled, Units, Volume, half_up};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::account::{Account, account};
use fivebar_core::sheet::haul::{HaulReckoning, Pieces, PileReckoning, Volumes, haul, measure};
use fivebar_core::sheet::waiting::known;
use fivebar_core::sheet::{Shop, rate::rate};
use serde_json::{Map, Value, json};

/// The whole book, reckoned at the moment of its newest entry.
pub fn reckoning(book: &Book) -> Value {
    let now = book.entries().map(|(entry, _)| entry.at()).max().unwrap_or_default();
    reckoning_at(book, now)
}

/// The whole book, reckoned at a moment. A haul or job that can't be reckoned says why.
pub fn reckoning_at(book: &Book, now: Moment) -> Value {
    let shop = Shop::of(book, now);
    let ids = |is: fn(Subject) -> Option<Id>| book.subjects().filter_map(is).collect::<Vec<_>>();
    let hauls = ids(|subject| if let Subject::Haul(id) = subject { Some(id) } else { None });
    let jobs = ids(|subject| if let Subject::Job(id) = subject { Some(id) } else { None });
    let hauls: Vec<Value> = hauls
        .into_iter()
        .filter(|id| fold::haul(book, *id).is_some())
        .map(|id| told(id, haul(&shop, id).map(|haul| of_haul(&shop, haul))))
        .collect();
    let jobs: Vec<Value> = jobs
        .into_iter()
        .filter(|id| fold::job(book, *id).is_some())
        .map(|id| told(id, account(&shop, id).map(|a| of_job(&shop, a))))
        .collect();
    json!({
        "at": now.ms(),
        "entries": book.len(),
        "newer": book.newer().count(),
        "damaged": book.damaged().count(),
        "hauls": hauls,
        "designs": designs::told(&shop),
        "jobs": jobs,
        "taxes": taxes::told(&shop),
        "waits": waits::of(book),
    })
}

fn told(id: Id, reckoned: Answer<Value>) -> Value {
    reckoned.unwrap_or_else(|refusal| json!({ "id": id.to_string(), "refused": format!("{refusal:?}") }))
}

fn of_haul(shop: &Shop, haul: HaulReckoning) -> Value {
    let cost = |share: &Share| haul.costs.map(|_| money(share.cost));
    let jobs = haul.jobs.iter().map(|(job, share)| json!({ "job": job.to_string(), "cost": cost(share), "minutes": minutes(share.time) }));
    json!({
        "id": haul.haul.to_string(),
        "name": haul.name,
        "currency": haul.currency.code(),
        "units": units(haul.units),
        "pieces": pieces(&haul.pieces),
        "volumes": volumes(haul.units, &haul.volumes),
        "weight": weight(haul.weight, haul.weight_guessed),
        "carries": haul.carries.map(|mass| json!({ "kg": tenth(mass.as_kg()), "lb": tenth(mass.as_lb()) })),
        "minutes": { "wheel": minutes(haul.wheel), "bin": minutes(haul.bin), "sorting": minutes(haul.sorting) },
        "costs": haul.costs.map(money),
        "cost_per_good": haul.cost_per_good.map(|cost| rounded(cost, haul.currency.digits())),
        "shares": jobs.collect::<Vec<_>>(),
        "bought": bought::is(shop, haul.haul),
        "worth": bought::worth_of(shop, haul.haul),
        "wanted": bought::wanted(shop, haul.haul),
        "workshop": haul.workshop.map(|share| json!({ "cost": cost(&share), "minutes": minutes(share.time) })),
        "rack": haul.rack.map(|share| json!({ "cost": cost(&share), "minutes": minutes(share.time) })),
        "piles": haul.piles.iter().map(|pile| of_pile(haul.units, pile)).collect::<Vec<_>>(),
    })
}

fn of_pile(units: Units, pile: &PileReckoning) -> Value {
    json!({
        "id": pile.pile.to_string(),
        "label": pile.label,
        "name": pile.name,
        "wood": pile.wood.as_ref().map(|wood| wood.as_str()),
        "pieces": pieces(&pile.pieces),
        "volumes": volumes(units, &pile.volumes),
        "weight": weight(pile.weight, pile.weight_guessed),
    })
}

fn of_job(shop: &Shop, job: Account) -> Value {
    json!({
        "id": job.job.to_string(),
        "name": job.name,
        "currency": job.currency.code(),
        "units": units(job.units),
        "pieces": { "made": job.pieces, "sold": job.sold.pieces, "sold_by_galleries": job.sold.by_galleries,
            "at_galleries": job.sold.at_galleries, "not_for_sale": job.sold.not_for_sale, "promised": job.sold.promised, "left": job.sold.left },
        "ended": job.ended,
        "wood": wood(&job),
        "minutes": hours(shop, &job),
        "costs": costs(&job),
        "rate": rate(shop, job.currency).stack.map(|stack| rounded(stack.per_hour, job.currency.digits())),
        "marks": marks(shop, &job),
        "sales": sales(&job),
        "ways": ways::of_job(shop, job.job, job.currency),
        "left_per_hour": left_per_hour(&job),
        "ratios": { "hours": ratio(job.ratios.hours), "wood": ratio(job.ratios.wood), "price": ratio(job.ratios.price) },
    })
}

fn wood(job: &Account) -> Value {
    let wood = &job.wood;
    let volume = |volume: Option<Volume>| volume.map(|volume| rounded(measure(job.units, volume), 2));
    json!({
        "unit": unit(job.units),
        "finished_piece": wood.finished_piece.map(|volume| rounded(measure(job.units, volume), 3)),
        "finished": volume(wood.finished),
        "used": volume(wood.used),
        "gross": volume(wood.gross),
        "leftovers": volume(wood.leftovers),
        "finished_of_used": ratio(wood.finished_of_used),
        "finished_of_gross": ratio(wood.finished_of_gross),
        "finished_of_gross_less_leftovers": ratio(wood.finished_of_gross_less_leftovers),
        "weight": weight(wood.weight, wood.weight_guessed),
    })
}

fn hours(shop: &Shop, job: &Account) -> Value {
    let hours = &job.hours;
    let by_op: Map<String, Value> = hours.logged.by_op.iter().map(|(op, shares)| (op.clone(), minutes(shares.total()))).collect();
    json!({
        "total": hours.total.map(minutes),
        "haul": hours.haul.map(minutes),
        "to_settle": minutes(hours.unsettled),
        "hauls_to_settle": minutes(hours.hauls_unsettled),
        "logged": logged(hours.logged.own),
        "labour": minutes(hours.logged.labour),
        "rework": minutes(hours.logged.rework),
        "by_kind": named(&hours.by_kind),
        "by_stage": named(&hours.by_stage),
        "by_operation": by_op,
        "given": given::of_job(shop, job.job),
        "estimate": hours.estimate.map(minutes),
        "still": hours.still.map(minutes),
    })
}

fn logged(own: Shares) -> Value {
    json!({
        "all": minutes(own.total()),
        "measured": minutes(own.measured),
        "corrected": minutes(own.corrected),
        "recalled": minutes(own.recalled),
    })
}

fn costs(job: &Account) -> Value {
    let by_kind: Map<String, Value> = job.costs.by_kind.iter().map(|(kind, sum)| (kind.to_string(), money(*sum))).collect();
    json!({
        "total": job.costs.total.map(money),
        "haul": job.cost("haul").map(money),
        "by_kind": by_kind,
        "still": money(job.costs.still),
    })
}

/// Each for one piece, paid by card.
fn marks(shop: &Shop, job: &Account) -> Value {
    let shown = |mark: Option<Mark>| mark.map(|mark| money(mark.half_up));
    let pricing = &job.pricing;
    json!({
        "costs_covered": shown(pricing.marks.costs_covered),
        "lowest_pay": shown(pricing.marks.lowest_pay),
        "your_rate": shown(pricing.marks.your_rate),
        "not_under": not_under(shop, job).map(money),
        "ask": pricing.ask.map(money),
        "proposed": pricing.proposed.map(|proposed| money(proposed.tag)),
        "settle": pricing.settle.map(money),
    })
}

/// None before the maker guessed, and once nothing is left to wait with.
fn not_under(shop: &Shop, account: &Account) -> Option<Money> {
    let job = shop.job(account.job).ok()?;
    let known = known(shop, &job).ok()??;
    let worth = known.worth.as_ref().ok()?;
    known.under((1, worth.ask), known.rests.carried(shop.terms_of(&job, Paid::Card).take().ok()?, Carried::Delivered).ok()?).ok()
}

fn sales(job: &Account) -> Value {
    let sold = &job.sold;
    json!({
        "taken": money(sold.taken),
        "tax": money(sold.tax),
        "fees": money(sold.fees),
        "handed_over": money(sold.handed_over),
        "due_from_galleries": money(sold.due_from_galleries),
        "given_up": money(sold.given_up),
        "net": money(sold.net),
        "left": sold.kept.map(money),
        "agreed": sold.agreed.map(money),
        "received": money(sold.received),
        "due": money(sold.due),
    })
}

fn left_per_hour(job: &Account) -> Value {
    let shown = |rate: Decimal| rounded(rate, job.currency.digits());
    let per = job.sold.per_hour;
    json!({
        "left": per.map(|per| shown(per.left)),
        "after_workshop": per.and_then(|per| per.after_workshop).map(shown),
        "every_hour": per.and_then(|per| per.every_hour).map(shown),
    })
}

fn named<K: Spelled + Ord>(spans: &Sorted<K, Span>) -> Value {
    let name = |key: &K| key.spell().text().unwrap_or_default().to_owned();
    Value::Object(spans.iter().map(|(key, span)| (name(key), minutes(*span))).collect())
}

fn pieces(pieces: &Pieces) -> Value {
    let reasons: Map<String, Value> = pieces.reasons.iter().map(|(why, n)| (why.to_string(), json!(n))).collect();
    json!({
        "taken": pieces.taken,
        "rejected": pieces.rejected,
        "good": pieces.good,
        "used": pieces.used,
        "on_rack": pieces.on_rack,
        "reserved": pieces.reserved,
        "gone": pieces.gone,
        "drift": pieces.drift,
        "reasons": reasons,
    })
}

fn volumes(units: Units, volumes: &Volumes) -> Value {
    let shown = |volume: Option<Volume>| volume.map(|volume| rounded(measure(units, volume), 2));
    json!({ "unit": unit(units), "gross": shown(volumes.gross), "good": shown(volumes.good), "used": shown(volumes.used) })
}

fn weight(weight: Option<Mass>, guessed: bool) -> Value {
    weight.map_or(Value::Null, |mass| json!({ "kg": tenth(mass.as_kg()), "lb": tenth(mass.as_lb()), "guessed": guessed }))
}

/// Masses are floats to start with: a tenth is as much as they deserve.
fn tenth(mass: f64) -> String {
    format!("{mass:.1}")
}

fn unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "bf",
        Units::Metric => "L",
    }
}

fn units(units: Units) -> &'static str {
    match units {
        Units::Inch => "inch",
        Units::Metric => "metric",
    }
}

fn ratio(ratio: Option<Decimal>) -> Option<String> {
    ratio.map(|ratio| rounded(ratio, 4))
}

/// Half up, with all its digits: `28.10`.
fn rounded(number: Decimal, digits: u32) -> String {
    let places = usize::try_from(digits).unwrap_or_default();
    format!("{:.places$}", half_up(number, digits))
}

fn money(money: Money) -> Value {
    let currency: Currency = money.currency();
    rounded(money.amount(), currency.digits()).into()
}

/// Whole minutes, half up.
fn minutes(span: Span) -> Value {
    span.as_minutes().into()
}
