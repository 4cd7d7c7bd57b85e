//! The buyer's face, heard. While it shows, nothing else is heard: it is a lock, opened by a hold.

use super::bargain::Bargain;
use super::{Over, Tap};
use crate::app::order::{Order, Turned};
use crate::app::{App, Msg};
use fivebar_core::quantity::{Count, Currency, Decimal, Id, Money};

/// Turns the phone to the buyer.
pub fn show(app: &mut App, job: Id) {
    app.price.last_job = Some(job);
    app.price.face = Some(job);
    app.notice = None;
    let spoken = spoken_of(app, job).unwrap_or_default();
    app.orders.push(Order::Face(Some(Turned { piece: job, spoken })));
}

/// "<piece> 95.00 USD 2": the sum that was spoken of, for so many of a piece.
fn spoken_of(app: &App, job: Id) -> Option<String> {
    let Over::Offer(bargain) = &app.price.over else { return None };
    let sum = bargain.offer.filter(|_| bargain.job == job)?;
    Some(format!("{job} {sum} {}", app.price.way.n.unwrap_or(1)))
}

/// The page was loaded anew in a buyer's hands: it shows the piece again once the book is read.
pub fn again(app: &mut App, piece: &str) {
    app.price.turned = true;
    let Some(job) = Id::read(piece) else { return };
    (app.price.face, app.price.last_job) = (Some(job), Some(job));
}

/// What was spoken of stands behind the face again, if it was of the piece that shows.
pub fn spoken(app: &mut App, spoken: &str) {
    let of_it = read(spoken).filter(|(of, ..)| app.price.face == Some(*of));
    if let Some((job, sum, n)) = of_it {
        app.price.way.n = Some(n);
        app.price.over = Over::Offer(Box::new(Bargain { job, offer: Some(sum), pad: None, pay: false }));
    }
}

fn read(spoken: &str) -> Option<(Id, Money, Count)> {
    let mut words = spoken.split(' ');
    let (piece, sum, currency, n) = (words.next()?, words.next()?, words.next()?, words.next()?);
    Some((Id::read(piece)?, Money::whole(sum.parse::<Decimal>().ok()?, Currency::read(currency).ok()?)?, n.parse().ok()?))
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
