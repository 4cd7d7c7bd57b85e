//! What waits: the blue board among the others, and the list with a key to take each off.

mod ask;
mod card;
mod day;
mod list;

pub use ask::{span, usual};
pub use card::{card, first_line, lines};
pub use day::{of_day, struck_rows};
pub use list::list;

use super::super::Seen;
use super::say;
use crate::app::bench::Tap;
use crate::app::bench::waits::{WaitTap, fits};
use crate::app::{App, Msg};
use crate::parts::board::{Board, board};
use crate::parts::key::key;
use crate::parts::rack::rack;
use crate::view::{El, el};
use crate::words::en::{bench as bench_words, waits as words};
use fivebar_core::bench::meanwhile::Offer;
use fivebar_core::bench::wait::What;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::bench::Choice;

/// Says something of waits.
fn wait(tap: WaitTap) -> Msg {
    say(Tap::Waits(tap))
}

/// The way to what waits, and to what is usual.
pub fn door() -> El<Msg> {
    key("key soft h48", words::WAITS_AND_QUIET, "", wait(WaitTap::Show)).key("door")
}

/// What fits until the next off time: three boards at most, one tap starts; or why nothing is offered.
pub fn meanwhile(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(found) = fits(app).filter(|found| Span::ZERO < found.gap) else { return vec![] };
    if found.fits.is_empty() {
        let why = words::nothing_fits(&seen.clock(found.wait.wall(found.wait.off(), seen.local)), &seen.speech.span(found.gap), found.why);
        return vec![el("p", "t14").key("fits").text(why)];
    }
    let title = words::fits_until(&seen.clock(found.wait.wall(found.wait.off(), seen.local)), &seen.speech.span(found.gap));
    let wet = app.shelf().waits().on().any(|wait| wait.what() == What::Coat);
    let one = |offer: &Offer<Choice>| {
        let dust = (wet && bench_words::holds(&offer.what.op, &bench_words::DUSTY)).then(|| words::DUST_ON_A_COAT.to_owned());
        let span = seen.speech.span(offer.span);
        let planned = offer.thought.map(|thought| seen.speech.span(thought));
        let about = words::about(&span, offer.from, planned.as_deref());
        let under =
            [offer.what.name.clone().filter(|_| !offer.here), Some(about), dust].into_iter().flatten().collect::<Vec<_>>().join(", ");
        let key = format!("fit{}{}", offer.what.op, offer.what.name.as_deref().unwrap_or_default());
        board(Board { operation: offer.what.op.clone(), under, ..Board::default() }, say(Tap::Board(offer.what.clone()))).key(key)
    };
    vec![el("h2", "").key("fits").text(title), rack(found.fits.iter().map(one)).key("fitting")]
}
