//! The foot of the bench: what the thumb needs while something runs, and while nothing does.

use super::super::{Seen, undo};
use super::say;
use super::slab::figure;
use crate::app::bench::waits::{WaitTap, long, next, usual};
use crate::app::bench::{Tap, next_began};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as words, day, helper, waits};
use fivebar_core::bench::wait::What;
use fivebar_core::bench::{Head, Run};
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::bench::{BenchSheet, Slab};

pub const AGO: [i64; 3] = [5, 15, 30];

/// The foot. On a narrow page what is needed less lies behind what runs instead: [`folded`].
pub fn foot(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let less = (!seen.page.is_narrow()).then(|| less(sheet, seen));
    let foot = el("footer", "foot").kids(undo::bar(app, seen));
    if sheet.running.is_some() { foot.kids(less).kid(working(app, sheet, seen)) } else { foot.kids(less).kid(when(app)) }
}

/// What a narrow page folds away from the foot.
pub fn folded(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    seen.page.is_narrow().then(|| less(sheet, seen))
}

/// Helper, other work, big buttons.
fn less(sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let more = if sheet.rack.more == 0 {
        String::new()
    } else {
        words::more_of_it(&seen.speech.count(u32::try_from(sheet.rack.more).unwrap_or(u32::MAX)))
    };
    let words_of = if sheet.running.is_some() { words::SWITCH } else { words::OTHER };
    let other = key("key h56", words_of, more, say(Tap::Other));
    let big = key("key h56", words::BIG_BUTTONS, "", say(Tap::Big));
    let row = |helpers: Vec<El<Msg>>| el("div", "less").kids(helpers).kid(other).kid(big);
    match sheet.running.as_ref().map(|slab| helper(slab, seen)) {
        None => row(vec![]),
        Some((helpers, apart)) if apart.is_empty() => row(helpers),
        Some((helpers, apart)) => el("div", "col").kid(row(helpers)).kid(el("div", "g2").kids(apart)),
    }
}

/// One joins; while somebody is there, another joins or one leaves. Where their pay tells them apart each has a key of their own, with what
/// they are paid and since when they are there, who came last first.
fn helper(slab: &Slab, seen: Seen<'_>) -> (Vec<El<Msg>>, Vec<El<Msg>>) {
    let joins = key("key h56", words::HELPER_JOINS, "", say(Tap::HelperJoins));
    let there = slab.run.heads.iter().rev().filter(|head| head.to.is_none()).listed();
    if !there.iter().any(|head| there.iter().any(|other| other.pay != head.pay)) {
        let leaves = (1 < slab.heads).then(|| key("key h56", words::HELPER_LEAVES, "", say(Tap::HelperLeaves)));
        return ([joins].into_iter().chain(leaves).listed(), vec![]);
    }
    let pay = |head: &Head| paid_since(&slab.run, head, seen);
    let is_first = |nth: usize| there.iter().take(nth).all(|other| there.get(nth).is_some_and(|head| head.pay != other.pay));
    let each = there.iter().enumerate().filter(|(nth, _)| is_first(*nth)).map(|(_, head)| *head);
    (vec![joins], each.map(|head| key("key h56", words::HELPER_LEAVES, pay(head), say(Tap::Leaves(head.id)))).listed())
}

/// What one who works along is paid, and since when: "$18.00 an hour, since 09:40".
pub fn paid_since(run: &Run, head: &Head, seen: Seen<'_>) -> String {
    let pay = head.pay.map_or_else(|| day::NOT_PAID.to_owned(), |pay| day::per_hour(&seen.speech.money(pay)));
    helper::paid_since(&pay, &seen.when(run.wall(head.from, seen.local)))
}

/// Stop says what it stops: with much above the slab, that is what is always in sight.
fn working(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let runs = sheet.running.as_ref().map(|slab| {
        let (figure, unit) = figure(slab.worked, seen);
        words::stops(&slab.run.work.op, format!("{figure} {unit}").trim_end())
    });
    let stop = key("key solid h88", words::STOP, runs.unwrap_or_default(), say(Tap::Stop));
    if !sheet.running.as_ref().is_some_and(Slab::has_pieces) {
        return el("div", "working").kid(stop);
    }
    let several = key("key m several", words::SEVERAL, "", say(Tap::MoreDone)).attr("aria-label", words::SEVERAL_SAID);
    let slab = sheet.running.as_ref();
    let done = match slab.zip(slab.and_then(|slab| usual(app, &slab.run.work.op))) {
        Some((slab, usual)) => {
            let (long, what) = (long(app, usual.span), What::of(&usual.what));
            // Which piece it is stands on the slab; of a further coat the key names it.
            let under = match next(app, slab) {
                (piece, true) => waits::next_off(&piece, &long, what),
                (_, false) => waits::off_in(&long, what),
            };
            key("key h88", waits::clamped(What::of(&usual.what)), under, say(Tap::Waits(WaitTap::Clamp)))
        }
        None => key("key h88", words::ONE_MORE, "", say(Tap::Done)),
    };
    el("div", "working").kid(done).kid(several).kid(stop)
}

/// When the next start was: 5, 15 or 30 minutes ago.
pub fn when(app: &App) -> El<Msg> {
    let ago = app.bench.ago_at(app.now.at);
    let shown = AGO.iter().map(|minutes| Chip::choice(words::ago(*minutes), ago == Some(Span::minutes(*minutes)))).listed();
    let keys = chips("key h56", shown, |nth| say(Tap::Ago(AGO.get(nth).copied().unwrap_or(5)))).attr("aria-label", words::ALREADY_AT_IT);
    let said = next_began(app);
    let line = match &said {
        Some(said) => el("p", "t14 w7").attr("role", "status").text(said.clone()),
        None => el("p", "t14 w7 i2").text(words::ALREADY_AT_IT),
    };
    el("div", "ago").kid(line).kid(keys)
}
