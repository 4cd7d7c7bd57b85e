//! The buyer's face, heard. While it shows, nothing else is heard: it is a lock, opened by a hold.

use super::bargain::Bargain;
use super::{Over, Tap};
use crate::app::order::{Order, Turned};
use crate::app::{App, Msg, taxes};
use crate::parts::Place;
use fivebar_core::quantity::{Count, Currency, Decimal, Id, Money, Scalar, Spelled};

/// Turns the phone to the buyer.
pub fn show(app: &mut App, job: Id) {
    app.price.last_job = Some(job);
    app.price.face = Some(job);
    app.notice = None;
    let spoken = spoken_of(app, job).unwrap_or_default();
    app.orders.push(Order::Face(Some(Turned { piece: job, spoken })));
}

/// "<piece> 2 own card fetched 95.00 USD": what was spoken of for so many of a piece, how it is taxed, how it would be paid and carried ("own"
/// where nothing was chosen for this buyer), and the sum where one was named.
fn spoken_of(app: &App, job: Id) -> Option<String> {
    let Over::Offer(bargain) = &app.price.over else { return None };
    let sum = bargain.offer.map(|sum| format!(" {sum}")).unwrap_or_default();
    let n = app.price.n.unwrap_or(1);
    let (tax, paid, carried) = (taxes::written(bargain.tax), chosen(bargain.paid.as_ref()), chosen(bargain.carried.as_ref()));
    (bargain.job == job).then(|| format!("{job} {n} {tax} {paid} {carried}{sum}"))
}

const OWN: &str = "own";

fn chosen(one: Option<&impl Spelled>) -> String {
    one.and_then(|one| one.spell().text().map(str::to_owned)).unwrap_or_else(|| OWN.into())
}

/// None where it can't be read.
fn choice<T: Spelled>(word: &str) -> Option<Option<T>> {
    if word == OWN { Some(None) } else { T::unspell(&Scalar::of(word)).map(Some) }
}

/// The page was loaded anew in a buyer's hands: it shows the piece again once the book is read.
pub fn again(app: &mut App, piece: &str) {
    app.price.turned = true;
    let Some(job) = Id::read(piece) else { return };
    (app.price.face, app.price.last_job) = (Some(job), Some(job));
}

/// What was spoken of stands behind the face again, if it was of the piece that shows. Where the hold ended before the store answered, nothing
/// changes under the maker's hand: it is there once they open the offer of that piece.
pub fn spoken(app: &mut App, spoken: &str) {
    let Some((bargain, n)) = read(spoken).filter(|(of, _)| app.price.last_job == Some(of.job)) else { return };
    if app.place != Place::Price || !matches!(app.price.over, Over::Nothing) {
        return; // something else was begun
    }
    if app.price.face.is_some() || app.price.turned {
        app.price.n = Some(n);
        app.price.over = Over::Offer(Box::new(bargain));
    } else {
        app.price.late = Some((bargain, n));
    }
}

/// What came late of a piece, as its offer is opened; what is of another is gone.
pub fn spoken_late(app: &mut App, job: Id) -> Option<Bargain> {
    let (bargain, n) = app.price.late.take().filter(|(of, _)| of.job == job)?;
    app.price.n = Some(n);
    Some(bargain)
}

fn read(spoken: &str) -> Option<(Bargain, Count)> {
    let mut words = spoken.split(' ');
    let (piece, n, tax) = (words.next()?, words.next()?, words.next()?);
    let (paid, carried) = (choice(words.next()?)?, choice(words.next()?)?);
    let offer = match words.next() {
        Some(sum) => Some(Money::whole(sum.parse::<Decimal>().ok()?, Currency::read(words.next()?).ok()?)?),
        None => None,
    };
    let (job, tax) = (Id::read(piece)?, taxes::read(tax)?);
    Some((Bargain { job, offer, named: vec![], tax, paid, carried, pad: None, pay: false, is_meant: None }, n.parse().ok()?))
}

/// Back to the maker.
pub fn hide(app: &mut App) {
    let turned = std::mem::take(&mut app.price.turned);
    if app.price.face.take().is_some() || turned {
        app.orders.push(Order::Face(None));
    }
}

/// Whether a message has to wait: only the hold that closes the face is heard while it shows, and what the phone itself answers,
/// which shows nothing here.
pub fn is_locked(app: &App, message: &Msg) -> bool {
    use crate::app::workshop::Tap::{Added, CopiedText, Handed, NotPicked, Picked};
    let answers = matches!(message, Msg::Workshop(Added(_) | CopiedText(_) | Handed(_) | NotPicked(_) | Picked(_)));
    let answers = answers || crate::app::photos::answers(message);
    (app.price.face.is_some() || app.price.turned) && !answers && !matches!(message, Msg::Price(Tap::Hide))
}

#[cfg(test)]
mod tests;
