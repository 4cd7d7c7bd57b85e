//! Figures of the workshop: each is typed on the pad, written as one entry, and refused in place.

use super::super::entry::Typed;
use super::super::{App, Notice};
use super::{Over, till};
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::ledger::kind::money::{Home, RateSet, TillSet};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::reading::{self, Misread, Quantity, Sign};
use fivebar_core::quantity::{Currency, Decimal, Key, Listed, Units, exact};
use fivebar_core::sheet::costs::{EITHER_WAY, home_of};
use fivebar_core::sheet::rate::{RatePart, rate as rate_of};

/// A figure that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    Pay,
    Lowest,
    Hours,
    Logged,
    Costs,
    Wear,
    OwnTax,
    Profit,
    SalesTax,
    /// What a way of paying takes: its share, and for each payment.
    Fee(Paid),
    FeeFixed(Paid),
    Cash,
    Mileage,
}

/// What is spent on no job, by its key in the book.
pub const SPENDING: [&str; 6] = ["rent", "insurance", "power", "edges", "tools", "workshop"];

/// The kinds whose keys the page of costs has: the usual ones, and those that belong in the rate by the maker's word.
pub fn spending(app: &App) -> Vec<&'static str> {
    let (known, currency) = (app.shelf().workshop(), app.begins_with().0);
    let in_rate = |kind: &&&str| Key::read(kind).is_some_and(|kind| home_of(&known, currency, &kind) == Some(Home::Rate));
    let more = EITHER_WAY.iter().filter(|kind| !SPENDING.contains(kind)).filter(in_rate);
    SPENDING.iter().chain(more).copied().listed()
}

/// The most hours a year holds.
const YEAR: i64 = 8_784;
/// The most money for an hour, or for a mile or km.
const PER_HOUR: i64 = 1_000_000;

/// Writes the figure that was typed, or says in place why not.
pub fn done(app: &mut App, now: Now) {
    let Over::Figure(figure, typed, _) = &app.workshop.over else { return };
    let (figure, text) = (*figure, typed.text.clone());
    if is_asked(app, figure, &text) {
        app.workshop.sure = Some(text);
        return;
    }
    app.workshop.sure = None;
    let was_blank = blanks(app).contains(&figure);
    let written = match figure {
        Figure::SalesTax | Figure::Fee(_) | Figure::FeeFixed(_) | Figure::Cash | Figure::Mileage => paid(app, figure, &text, now),
        _ => rate(app, figure, &text, now),
    };
    let next = blanks(app).first().copied().filter(|_| was_blank);
    let Over::Figure(asked, typed, back) = &mut app.workshop.over else { return };
    match (written, next) {
        (Err(why), _) => (typed.wrong, app.notice) = (Some(why), None),
        (Ok(()), _) if matches!(app.notice, Some(Notice::Refused(_))) => {}
        // A blank that is filled leads to the next one; Not now leaves the rest.
        (Ok(()), Some(next)) => (*asked, *typed) = (next, Typed::default()),
        (Ok(()), None) => app.workshop.over = std::mem::take(back),
    }
}

/// More for an hour than this is asked about once; where no smaller coin is, a hundred times that. [J]
const HOUR_ASKED: i64 = 1_000;

/// Whether a pay is far from what an hour is worth anywhere, and was not asked about yet.
fn is_asked(app: &App, figure: Figure, text: &str) -> bool {
    let most = if app.begins_with().0.digits() == 0 { HOUR_ASKED.saturating_mul(100) } else { HOUR_ASKED };
    let paid = matches!(figure, Figure::Pay | Figure::Lowest) && app.workshop.sure.as_deref() != Some(text);
    paid && plain(text, app.speech.sign(), PER_HOUR).is_ok_and(|pay| Decimal::from(most) < pay.0)
}

/// Figures of the rate that were never said, in the order they are asked in.
pub fn blanks(app: &App) -> Vec<Figure> {
    let shop = app.shelf().shop(app.now.at);
    rate_of(&shop, app.begins_with().0).missing.into_iter().map(figure_of).listed()
}

/// The figure that says a part of the rate.
fn figure_of(part: RatePart) -> Figure {
    match part {
        RatePart::Pay => Figure::Pay,
        RatePart::Lowest => Figure::Lowest,
        RatePart::Hours => Figure::Hours,
        RatePart::Logged => Figure::Logged,
        RatePart::Costs => Figure::Costs,
        RatePart::Wear => Figure::Wear,
        RatePart::Tax => Figure::OwnTax,
        RatePart::Profit => Figure::Profit,
    }
}

/// Takes one of the readings the text may have: it is typed anew without a doubt.
pub fn take(app: &mut App, reading: &Quantity, now: Now) {
    let sign = app.speech.sign();
    let Over::Figure(_, typed, _) = &mut app.workshop.over else { return };
    let number = match reading {
        Quantity::Money(sum) => sum.amount(),
        Quantity::Percent(number) | Quantity::Number(number) => *number,
        _ => return,
    };
    let plain = exact::write(number);
    typed.text = if sign == Sign::Comma { plain.replace('.', ",") } else { plain };
    typed.wrong = None;
    done(app, now);
}

fn rate(app: &mut App, figure: Figure, text: &str, now: Now) -> Result<(), Misread> {
    let (currency, sign) = (app.begins_with().0, app.speech.sign());
    let mut facts = RateSet::of(currency);
    match figure {
        Figure::Pay => facts.pay = Some(plain(text, sign, PER_HOUR)?),
        Figure::Lowest => facts.lowest = Some(plain(text, sign, PER_HOUR)?),
        Figure::Hours => facts.hours = Some(plain(text, sign, YEAR)?),
        Figure::Logged => facts.logged = Some(plain(text, sign, YEAR)?),
        Figure::Costs => facts.costs = Some(reading::money(text, currency, sign)?),
        Figure::Wear => facts.wear = Some(reading::money(text, currency, sign)?),
        Figure::OwnTax => facts.tax = Some(share(text, sign)?),
        _ => facts.profit = Some(share(text, sign)?),
    }
    app.order(&Command::Money(MoneyCommand::SetRate(facts)), now);
    Ok(())
}

fn paid(app: &mut App, figure: Figure, text: &str, now: Now) -> Result<(), Misread> {
    let ((currency, units), sign) = (app.begins_with(), app.speech.sign());
    let per = if units == Units::Inch { Per::Mile } else { Per::Km };
    match figure {
        Figure::SalesTax => share(text, sign).map(|tax| till(app, |till| till.tax = Some(tax), now)),
        Figure::Fee(paid) => share(text, sign).map(|fee| {
            let place = |till: &mut TillSet| match paid {
                Paid::Card => till.fee = Some(fee),
                Paid::Bank => till.bank_fee = Some(fee),
                Paid::Notes => till.notes_fee = Some(fee),
            };
            till(app, place, now);
        }),
        Figure::FeeFixed(paid) => reading::money(text, currency, sign).map(|sum| {
            let place = |till: &mut TillSet| match paid {
                Paid::Card => till.fixed = Some(sum),
                Paid::Bank => till.bank_fixed = Some(sum),
                Paid::Notes => till.notes_fixed = Some(sum),
            };
            till(app, place, now);
        }),
        Figure::Cash => reading::money(text, currency, sign).map(|sum| till(app, |till| till.cash = Some(sum), now)),
        _ => plain(text, sign, PER_HOUR).map(|rate| till(app, |till| (till.mileage, till.per) = (Some(rate), Some(per)), now)),
    }
}

fn plain(text: &str, sign: Sign, most: i64) -> Result<Exact, Misread> {
    reading::number(text, sign, Decimal::ZERO..=Decimal::from(most)).map(Exact)
}

/// A share, typed in per cent.
fn share(text: &str, sign: Sign) -> Result<Exact, Misread> {
    let per_cent = reading::percent(text, sign)?;
    Ok(Exact(per_cent.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default()))
}

/// Whether a figure is per cent.
pub fn is_share(figure: Figure) -> bool {
    matches!(figure, Figure::OwnTax | Figure::Profit | Figure::SalesTax | Figure::Fee(_))
}

/// The unit a figure is typed in.
pub fn unit(figure: Figure, currency: Currency) -> String {
    match figure {
        Figure::Hours | Figure::Logged => "h".into(),
        _ if is_share(figure) => "%".into(),
        _ => currency.code().into(),
    }
}
