//! Lines about selling: asked, offered, agreed, sold, paid, consigned, taken back.

use super::money::when;
use super::taxes::spoken;
use super::time::day;
use super::words::{Read, Words};
use super::{Teller, Told, id_of};
use crate::ledger::Fact;
use crate::ledger::decide::{BringBackOrder, Command, GiveUpOrder, HandBackOrder, LetKeepOrder, PaidOf, PayOrder, SaleCommand, SellOrder};
use crate::ledger::kind::Exact;
use crate::ledger::kind::sale::*;
use crate::quantity::{Count, Id, Money};

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "offer" => offer(teller, words)?,
        "asked" => {
            let (price, job) = (money(teller, words)?, teller.story.names.said_job(words)?);
            SaleCommand::NoteAsked(PieceAskedFor { job, price, no_show: words.has("no-show").then_some(true) })
        }
        "guess" => SaleCommand::Guess(guess(teller, words)?),
        "like" => SaleCommand::NoteLike(like(teller, words)?),
        "resale" => SaleCommand::SetResale(ResaleSet { currency: teller.workshop.0, keeps: Exact(words.number()?) }),
        "agree" => SaleCommand::Agree(agree(teller, words)?),
        "parts" => SaleCommand::PlanPayment(parts(teller, words)?),
        "cancel" => cancel(teller, words)?,
        "sell" => {
            let order = sell(teller, words)?;
            let offer = if words.has("offered") { Some(money(teller, words)?) } else { None };
            offer.map_or_else(|| SaleCommand::Sell(order.clone()), |offer| SaleCommand::TookIt { offer, order: order.clone() })
        }
        "pay" => SaleCommand::Pay(pay(teller, words)?),
        "hand-back" => SaleCommand::HandBack(hand_back(teller, words)?),
        "consign" => SaleCommand::Consign(consign(teller, words)?),
        "gallery" => gallery(teller, words)?,
        "not-for-sale" => SaleCommand::NoteNotForSale(not_for_sale(teller, words)?),
        "bring-back" => SaleCommand::BringBack(bring_back(teller, words)?),
        "let-keep" => SaleCommand::LetKeep(let_keep(teller, words)?),
        _ => reverse(teller, words)?,
    };
    let facts = teller.order(&Command::Sale(command))?;
    let marked = id_of(&facts, |fact| {
        matches!(fact, Fact::PieceSold(_) | Fact::PriceAgreed(_) | Fact::PiecesConsigned(_) | Fact::ConsignmentPaid(_))
    });
    teller.story.names.to_mark = marked.ok();
    Ok(())
}

fn money(teller: &Teller, words: &mut Words) -> Read<Money> {
    words.money(teller.workshop.0)
}

/// `for 1 stands`.
fn for_pieces(teller: &Teller, words: &mut Words) -> Read<(Count, Id)> {
    words.expect("for")?;
    pieces(teller, words)
}

/// `1 stands`.
fn pieces(teller: &Teller, words: &mut Words) -> Read<(Count, Id)> {
    Ok((words.count()?, teller.story.names.said_job(words)?))
}

/// `on stands`.
fn on_job(teller: &Teller, words: &mut Words) -> Read<Id> {
    words.expect("on")?;
    teller.story.names.said_job(words)
}

fn paid(word: &str) -> Option<Paid> {
    match word {
        "notes" => Some(Paid::Notes),
        "card" => Some(Paid::Card),
        "bank" => Some(Paid::Bank),
        _ => None,
    }
}

fn carried(word: &str) -> Option<Carried> {
    match word {
        "fetched" => Some(Carried::Fetched),
        "delivered" => Some(Carried::Delivered),
        _ => None,
    }
}

/// `like 120 stands sold "higher, of oak"`.
fn like(teller: &Teller, words: &mut Words) -> Read<LikePieceSeen> {
    let (sum, job) = (money(teller, words)?, teller.story.names.said_job(words)?);
    let sold = words.has("sold").then_some(true);
    Ok(LikePieceSeen { job, sum, sold, what: words.maybe_text(), when: when(teller, words)? })
}

fn kept(teller: &Teller, words: &mut Words) -> Read<Option<Money>> {
    if words.has("kept") { money(teller, words).map(Some) } else { Ok(None) }
}

fn mark(teller: &Teller, words: &mut Words, before: &str) -> Read<Option<Id>> {
    if words.has(before) { teller.story.names.said_mark(words).map(Some) } else { Ok(None) }
}

fn person(teller: &Teller, words: &mut Words, before: &str) -> Read<Option<Id>> {
    if words.has(before) { teller.story.names.said_person(words).map(Some) } else { Ok(None) }
}

/// `offer 130 for 1 stands notes fetched said 140 asked 145`.
fn offer(teller: &Teller, words: &mut Words) -> Read<SaleCommand> {
    let sum = money(teller, words)?;
    let (n, job) = for_pieces(teller, words)?;
    let (paid, carried) = (words.maybe(paid), words.maybe(carried));
    let said = if words.has("said") { Some(money(teller, words)?) } else { None };
    let asked = if words.has("asked") { Some(money(teller, words)?) } else { None };
    Ok(SaleCommand::Hear(OfferHeard { job, n, sum, paid, carried, said, asked }))
}

/// `guess stands asks 1.5 buys 0.25 at 145 k 2 by 2026-05-16 end 82.46 each-ask 15 each-day 0.50 no-show 0.2`, any of them.
fn guess(teller: &Teller, words: &mut Words) -> Read<SellingGuessed> {
    let job = teller.story.names.said_job(words)?;
    let exact = |words: &mut Words| words.number().map(|number| Some(Exact(number.normalize())));
    let mut guessed = SellingGuessed::nothing(job);
    while !words.is_done() {
        match words.word("what is guessed")? {
            "asks" => guessed.asks = exact(words)?,
            "buys" => guessed.buys = exact(words)?,
            "at" => guessed.at = Some(money(teller, words)?),
            "k" => guessed.k = exact(words)?,
            "by" => guessed.by = Some(day(words, teller.story.now)?),
            "end" => guessed.end = Some(money(teller, words)?),
            "each-ask" => guessed.each_ask = Some(words.minutes()?),
            "each-day" => guessed.each_day = Some(money(teller, words)?),
            "no-show" => guessed.no_show = exact(words)?,
            _ => return words.no("asks, buys, at, k, by, end, each-ask, each-day or no-show"),
        }
    }
    Ok(guessed)
}

/// `agree 460 for 1 bench delivered deposit 184 due 2026-05-22 buyer bea tax none replaces deal`.
fn agree(teller: &Teller, words: &mut Words) -> Read<PriceAgreed> {
    let sum = money(teller, words)?;
    let (n, job) = for_pieces(teller, words)?;
    let carried = words.take("fetched or delivered", carried)?;
    let deposit = if words.has("deposit") { Some(money(teller, words)?) } else { None };
    let due = if words.has("due") { Some(day(words, teller.story.now)?) } else { None };
    let buyer = person(teller, words, "buyer")?;
    let tax = spoken(teller, (words, teller.workshop.0))?;
    let (rate, side) = (tax.map(|tax| Exact(tax.rate)), tax.map(|tax| tax.side));
    Ok(PriceAgreed { job, n, sum, carried, deposit, due, buyer, rate, side, replaces: mark(teller, words, "replaces")? })
}

/// `parts deal on bench 184 due 2026-04-17 138 due 2026-05-08 138`; the last at the hand-over. None at all take them away.
fn parts(teller: &Teller, words: &mut Words) -> Read<PaymentPlanned> {
    let (agreed, job) = (teller.story.names.said_mark(words)?, on_job(teller, words)?);
    let mut parts = vec![];
    while !words.is_done() {
        let sum = money(teller, words)?;
        let due = if words.has("due") { Some(day(words, teller.story.now)?) } else { None };
        parts.push(PaymentPart { sum, due });
    }
    Ok(PaymentPlanned { job, agreed, parts })
}

/// `cancel deal on bench kept 50 no-show`.
fn cancel(teller: &Teller, words: &mut Words) -> Read<SaleCommand> {
    let (agreed, job) = (teller.story.names.said_mark(words)?, on_job(teller, words)?);
    let kept = kept(teller, words)?;
    Ok(SaleCommand::Cancel(AgreementCancelled { job, agreed, kept, no_show: words.has("no-show").then_some(true), back: None }))
}

/// `sell 2 stands for 290 card fetched agreed deal buyer bea tax none offered 260`; the sums are for all of them.
fn sell(teller: &Teller, words: &mut Words) -> Read<SellOrder> {
    let (n, job) = pieces(teller, words)?;
    words.expect("for")?;
    let sum = money(teller, words)?;
    let (paid, carried) = (words.maybe(paid), words.maybe(carried));
    let agreed = mark(teller, words, "agreed")?;
    let buyer = person(teller, words, "buyer")?;
    let tax = spoken(teller, (words, teller.workshop.0))?.map(|tax| (tax.rate, tax.side));
    Ok(SellOrder { job, n, sum, tax, agreed, paid, carried, buyer, when: when(teller, words)?, heard: false })
}

/// `pay 184 for bench bank agreed deal`, `pay 145 for stands card sale first fee 3.87`.
fn pay(teller: &Teller, words: &mut Words) -> Read<PayOrder> {
    let sum = money(teller, words)?;
    words.expect("for")?;
    let job = teller.story.names.said_job(words)?;
    let paid = words.take("notes, card or bank", paid)?;
    let of = match mark(teller, words, "agreed")? {
        Some(agreed) => PaidOf::Agreed(agreed),
        None => {
            words.expect("sale")?;
            PaidOf::Sale(teller.story.names.said_mark(words)?)
        }
    };
    let fee = if words.has("fee") { Some(money(teller, words)?) } else { None };
    Ok(PayOrder { job, sum, paid, fee, of, when: when(teller, words)? })
}

/// `hand-back 100 for bench bank agreed deal`; of a sale, or of sales of no agreement where neither is named.
fn hand_back(teller: &Teller, words: &mut Words) -> Read<HandBackOrder> {
    let sum = money(teller, words)?;
    words.expect("for")?;
    let job = teller.story.names.said_job(words)?;
    let paid = words.take("notes, card or bank", paid)?;
    let agreed = mark(teller, words, "agreed")?;
    let sale = mark(teller, words, "sale")?;
    Ok(HandBackOrder { job, sum, paid, agreed, sale, when: when(teller, words)? })
}

/// `consign 1 stands tag 145 share 0.4 gallery leaf`.
fn consign(teller: &Teller, words: &mut Words) -> Read<PiecesConsigned> {
    let (n, job) = pieces(teller, words)?;
    words.expect("tag")?;
    let tag = money(teller, words)?;
    words.expect("share")?;
    let share = Exact(words.number()?.normalize());
    let with_tax = words.has("with-tax").then_some(true);
    let maker_pays = words.has("maker-pays").then_some(true);
    let gallery = person(teller, words, "gallery")?;
    Ok(PiecesConsigned { job, n, tag, share, with_tax, maker_pays, gallery, when: when(teller, words)? })
}

/// `gallery pays 82.46 for 1 stands lot fern sold-for 145`, `gallery pays 60 for 1 stands due 22.46`, `gallery rest 22.46 for stands of part`,
/// `gallery gives-up for stands of part` where the rest never comes, `gallery returns 1 stands lot fern`.
fn gallery(teller: &Teller, words: &mut Words) -> Read<SaleCommand> {
    if words.has("returns") {
        let (n, job) = pieces(teller, words)?;
        let gallery = person(teller, words, "gallery")?;
        let lot = mark(teller, words, "lot")?;
        return Ok(SaleCommand::NoteConsignmentReturned(ConsignmentReturned { job, n, gallery, when: when(teller, words)?, lot }));
    }
    if words.has("rest") {
        return rest(teller, words).map(SaleCommand::Pay);
    }
    if words.has("gives-up") {
        let (job, of) = rest_of(teller, words)?;
        return Ok(SaleCommand::GiveUpRest(GiveUpOrder { job, of, when: when(teller, words)? }));
    }
    words.expect("pays")?;
    let sum = money(teller, words)?;
    let (n, job) = for_pieces(teller, words)?;
    let tax = if words.has("tax") { Some(money(teller, words)?) } else { None };
    let gallery = person(teller, words, "gallery")?;
    let lot = mark(teller, words, "lot")?;
    let sold_for = if words.has("sold-for") { Some(money(teller, words)?) } else { None };
    let due = if words.has("due") { Some(money(teller, words)?) } else { None };
    Ok(SaleCommand::NoteConsignmentPaid(ConsignmentPaid {
        job,
        n,
        sum,
        tax,
        gallery,
        when: when(teller, words)?,
        lot,
        sold_for,
        rate: None,
        side: None,
        due,
    }))
}

fn rest(teller: &Teller, words: &mut Words) -> Read<PayOrder> {
    let (sum, (job, of)) = (money(teller, words)?, rest_of(teller, words)?);
    Ok(PayOrder { job, sum, paid: Paid::Bank, fee: None, of: PaidOf::Gallery(of), when: when(teller, words)? })
}

/// `for stands of part`.
fn rest_of(teller: &Teller, words: &mut Words) -> Read<(Id, Id)> {
    words.expect("for")?;
    let job = teller.story.names.said_job(words)?;
    words.expect("of")?;
    Ok((job, teller.story.names.said_mark(words)?))
}

/// `not-for-sale 1 stands broken`.
fn not_for_sale(teller: &Teller, words: &mut Words) -> Read<PiecesNotForSale> {
    let (n, job) = pieces(teller, words)?;
    let why = words.take("yours, given or broken", |word| match word {
        "yours" => Some(Instead::Yours),
        "given" => Some(Instead::Given),
        "broken" => Some(Instead::Broken),
        _ => None,
    })?;
    Ok(PiecesNotForSale { job, n, why, when: when(teller, words)? })
}

/// `bring-back 1 of sale first on stands kept 20 ends`.
fn bring_back(teller: &Teller, words: &mut Words) -> Read<BringBackOrder> {
    let n = words.count()?;
    words.expect("of")?;
    words.expect("sale")?;
    let (sale, job) = (teller.story.names.said_mark(words)?, on_job(teller, words)?);
    let kept = kept(teller, words)?;
    Ok(BringBackOrder { job, sale, n, kept, ends: words.has("ends"), again: words.has("again"), when: when(teller, words)? })
}

/// `let-keep 20 of sale first on stands`.
fn let_keep(teller: &Teller, words: &mut Words) -> Read<LetKeepOrder> {
    let sum = money(teller, words)?;
    words.expect("of")?;
    words.expect("sale")?;
    let (sale, job) = (teller.story.names.said_mark(words)?, on_job(teller, words)?);
    Ok(LetKeepOrder { job, sale, sum, when: when(teller, words)? })
}

/// `reverse first on stands kept 20`.
fn reverse(teller: &Teller, words: &mut Words) -> Read<SaleCommand> {
    words.expect("sale")?;
    let (sale, job) = (teller.story.names.said_mark(words)?, on_job(teller, words)?);
    Ok(SaleCommand::Reverse(SaleReversed { job, sale, kept: kept(teller, words)?, when: when(teller, words)?, back: None }))
}
