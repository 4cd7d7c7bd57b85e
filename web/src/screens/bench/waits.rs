//! What waits: the blue board among the others, and the list with a key to take each off.

mod ask;
mod card;
mod day;
mod list;

pub use ask::{span, usual};
pub use card::{can_since, card, first_line, lines, of_first_work, some_off, take_off};
pub use day::{of_day, struck_rows};
pub use list::list;

use super::super::Seen;
use super::say;
use crate::app::bench::Tap;
use crate::app::bench::waits::{self, WaitTap, fits, held_of};
use crate::app::{App, Msg};
use crate::parts::board::{Board, board};
use crate::parts::key::key;
use crate::parts::rack::rack;
use crate::view::{El, el};
use crate::words::en::{bench as bench_words, waits as words};
use fivebar_core::bench::Run;
use fivebar_core::bench::meanwhile::{From, Offer};
use fivebar_core::bench::wait::What;
use fivebar_core::quantity::{Id, Span};
use fivebar_core::sheet::bench::Choice;
use fivebar_core::sheet::held::Held;

/// Says something of waits.
fn wait(tap: WaitTap) -> Msg {
    say(Tap::Waits(tap))
}

/// "3 of them are drying until Wed 09:05."
pub fn held(held: &Held, seen: Seen<'_>) -> String {
    let until = seen.when(held.last.wall(held.last.off(), seen.local));
    words::held((held.n, &seen.speech.count(held.n)), held.left, held.last.what(), &until)
}

/// What of a job still waits, where it is sold: it is said, and refuses nothing.
pub fn sold_wet(app: &App, job: Id, seen: Seen<'_>) -> Option<El<Msg>> {
    held_of(app, job).map(|it| el("p", "w7").key("held").attr("role", "status").text(held(&it, seen)))
}

/// A coat that runs goes onto one that is wet.
pub fn wet_below(run: &Run, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let held = waits::wet_below(app, run)?;
    let until = seen.when(held.last.wall(held.last.off(), seen.local));
    Some(el("p", "w7").key("wet below").attr("role", "status").text(words::wet_below(&until)))
}

/// The way to what waits, and to what is usual.
pub fn door() -> El<Msg> {
    key("key soft h48", words::WAITS_AND_QUIET, "", wait(WaitTap::Show)).key("door")
}

/// What fits until the next off time: three boards at most, one tap starts; or why nothing is offered.
pub fn meanwhile(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(found) = fits(app).filter(|found| Span::ZERO < found.gap) else { return vec![] };
    let (clock, gap) = (seen.clock(found.wait.wall(found.wait.off(), seen.local)), seen.speech.span(found.gap));
    let said = |said: String| vec![el("p", "t14").key("fits").text(said)];
    if found.gap.as_minutes() < 1 {
        return said(words::due_now(&clock));
    }
    if found.fits.is_empty() {
        return said(words::nothing_fits(&clock, &gap, found.why));
    }
    let title = words::fits_until(&clock, &gap);
    let wet = app.shelf().waits().on().any(|wait| wait.what() == What::Coat);
    let one = |offer: &Offer<Choice>| {
        let dust = (wet && bench_words::holds(&offer.what.op, &bench_words::DUSTY)).then(|| words::DUST_ON_A_COAT.to_owned());
        let span = seen.speech.span(offer.span);
        let planned = offer.thought.map(|thought| seen.speech.span(thought));
        let about = match offer.from {
            From::Unknown if offer.what.batch.all() <= Span::ZERO => words::NOT_BEGUN.to_owned(),
            from => words::about(&span, from, planned.as_deref()),
        };
        let about = match offer.part.zip(offer.left) {
            Some((part, left)) => words::part_of(&seen.speech.count(part), &seen.speech.count(left), &about),
            None => about,
        };
        // The job in hand too: what is begun by a tap is begun on that.
        let under = [offer.what.name.clone(), Some(about), dust].into_iter().flatten().collect::<Vec<_>>().join(", ");
        let key = format!("fit{}{}", offer.what.op, offer.what.name.as_deref().unwrap_or_default());
        board(Board { operation: offer.what.op.clone(), under, ..Board::default() }, say(Tap::Board(offer.what.clone()))).key(key)
    };
    let (unknown, known): (Vec<_>, Vec<_>) = found.fits.iter().partition(|offer| offer.from == From::Unknown);
    let list = |(title, key, offers): (String, &'static str, Vec<&Offer<Choice>>)| {
        let boards = rack(offers.into_iter().map(one)).key(if key == "fits" { "fitting" } else { "lasting" });
        [el("h2", "").key(key).text(title), boards]
    };
    let lists = [(title, "fits", known), (words::NOT_KNOWN_HOW_LONG.to_owned(), "lasts", unknown)].into_iter();
    lists.filter(|(.., offers)| !offers.is_empty()).flat_map(list).collect()
}
