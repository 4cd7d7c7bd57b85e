//! The blue board: first and last off time on a line; what is over, with a key to take it off.

use super::super::super::Seen;
use super::wait;
use crate::app::bench::waits::{WaitTap, clock, clock_on, of_two, pieces, waiting, whose, work_of};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::waits as words;
use fivebar_core::bench::wait::What;
use fivebar_core::quantity::{Listed, Set, Span};
use fivebar_core::sheet::waits::WaitLine;

/// Off times that are further away than this stand in words alone.
const DRAWN_MOST: Span = Span::minutes(12 * 60);

/// So many are named at their marks; more of them stand below, one by one.
const BY_MARK: usize = 3;

/// So many off times stand in one line where there is little room.
const IN_A_LINE: usize = 3;

/// So many are named on the bench; the list has them all.
const NAMED_MOST: usize = 8;

/// What waits, on the bench; nothing where nothing does.
pub fn card(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let on = waiting(app).on;
    let (over, coming): (Vec<WaitLine>, Vec<WaitLine>) = on.into_iter().partition(|line| line.over);
    let mut shown = vec![];
    let kinds = by_work(&over, &coming);
    // What runs is what a narrow page is for: a line of each kind, and the keys are on the list.
    if !over.is_empty() && seen.page.is_narrow() && app.running().is_some() {
        let said = kinds.iter().map(|(over, all)| el("span", "w8 c-wait").text(told(over, *all, app, seen)));
        shown.push(el("button", "card wait waits").attr("type", "button").on_tap(wait(WaitTap::Show)).key("over").kids(said));
    } else {
        shown.extend(kinds.iter().map(|(over, all)| out(over, *all, app, seen)));
    }
    // While something runs a narrow page has a line of them, and the list has each.
    let is_short = seen.page.is_narrow() && app.running().is_some();
    let few = seen.page.is_narrow() && coming.len() <= if is_short { IN_A_LINE } else { 2 };
    if let Some(said) = if few { in_one_line(&coming, app) } else { said(&coming, app) } {
        let board = el("button", "card wait waits").attr("type", "button").on_tap(wait(WaitTap::Show)).key("waits");
        shown.push(
            board
                .kid(el("span", "w8 c-wait").text(said))
                .kids(drawn(&coming, app, seen))
                .kids(if is_short { None } else { named(&coming, app, seen) })
                .kids(wet(&coming, app)),
        );
    }
    shown
}

fn wet(lines: &[WaitLine], app: &App) -> Vec<El<Msg>> {
    let mut said = lines.iter().filter_map(|line| onto_wet(line, app)).listed();
    said.dedup();
    said.into_iter().map(|said| el("span", "t14 i2").text(said)).listed()
}

/// When the coat below was to be dry, where the one that waits went onto it wet. It may be meant.
pub fn onto_wet(line: &WaitLine, app: &App) -> Option<String> {
    line.onto_wet.map(|dry| words::onto_wet(&clock_on(app, dry, line.wait.began.day())))
}

/// What can come out, in a line that lies first on a narrow page, where the board of it lies below the fold; nothing where nothing can.
pub fn first_line(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let over = waiting(app).on.into_iter().filter(|line| line.over).listed();
    let one = |(kind, _): &(Vec<WaitLine>, bool)| words::so_many_out((count(kind), &seen.speech.count(count(kind))), same_kind(kind));
    let said = by_kind(&over, &[]).iter().map(one).listed().join(", ");
    (!over.is_empty() && seen.page.is_narrow()).then(|| {
        let line = el("button", "card wait waits first").attr("type", "button").on_tap(wait(WaitTap::Show)).key("out first");
        line.kid(el("span", "w8 c-wait").text(said))
    })
}

/// What is over, each kind by itself, and whether nothing of that kind is still to come: what is dry does not come out of clamps.
fn by_kind(over: &[WaitLine], coming: &[WaitLine]) -> Vec<(Vec<WaitLine>, bool)> {
    let mut kinds: Vec<Vec<WaitLine>> = vec![];
    for line in over {
        let same = |kind: &&mut Vec<WaitLine>| kind.first().is_some_and(|first| first.ends() == line.ends());
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.push(line.clone()),
            None => kinds.push(vec![line.clone()]),
        }
    }
    let all = |kind: &[WaitLine]| !coming.iter().any(|line| kind.first().is_some_and(|first| first.ends() == line.ends()));
    kinds.into_iter().map(|kind| (all(&kind), kind)).map(|(all, kind)| (kind, all)).listed()
}

/// The same, each work by itself.
fn by_work(over: &[WaitLine], coming: &[WaitLine]) -> Vec<(Vec<WaitLine>, bool)> {
    let of = |line: &WaitLine| (line.ends(), line.wait.job, line.op.clone());
    let works = by_kind(over, &[]).into_iter().flat_map(|(kind, _)| groups(&kind.iter().listed()));
    works.map(|work| (!coming.iter().any(|line| work.first().map(of) == Some(of(line))), work)).map(|(all, work)| (work, all)).listed()
}

/// A key for each kind of which several are over.
pub fn all_keys(lines: &[WaitLine], seen: Seen<'_>) -> Option<El<Msg>> {
    let over = lines.iter().filter(|line| line.over).cloned().listed();
    let many = by_kind(&over, &[]).into_iter().map(|(kind, _)| kind).filter(|kind| 1 < kind.len());
    let one = |kind: Vec<WaitLine>| {
        let ids = kind.iter().map(|line| line.wait.id).listed();
        key("key h88 wide", words::all_off(count(&kind), &seen.speech.count(count(&kind)), same_kind(&kind)), "", wait(WaitTap::Off(ids)))
    };
    let keys = many.map(one).listed();
    (!keys.is_empty()).then(|| el("div", if 1 < keys.len() { "g2" } else { "" }).kids(keys))
}

/// "Clamps off 14:58 and 15:14", where there is little room.
fn in_one_line(coming: &[WaitLine], app: &App) -> Option<String> {
    let first = coming.first()?;
    let same = coming.iter().all(|line| line.wait.what() == first.wait.what());
    let off = coming.iter().map(|line| clock(app, line.off)).listed();
    Some(words::off_at_both(same.then(|| first.wait.what()), &off))
}

/// "In clamps: first off 14:58, last 15:14".
fn said(coming: &[WaitLine], app: &App) -> Option<String> {
    let (first, last) = (coming.first()?, coming.last()?);
    let same = coming.iter().all(|line| line.wait.what() == first.wait.what());
    let [first_off, last_off] = [first, last].map(|line| clock(app, line.off));
    let last = Some(last_off).filter(|_| of_two(app, last.off) != of_two(app, first.off) || last.off.day() != first.off.day());
    Some(words::first_last(same.then(|| first.wait.what()), &first_off, last.as_deref()))
}

/// What can come out, with a key for all of it, or for each.
fn out(over: &[WaitLine], all: bool, app: &App, seen: Seen<'_>) -> El<Msg> {
    let (off, tap) = take_off(over, app, seen);
    let each = (1 < over.len()).then(|| key("key h88", words::ONE_BY_ONE, "", wait(WaitTap::Show)));
    el("section", "card wait")
        .key(format!("over{}", over.first().map(|line| line.wait.id.to_string()).unwrap_or_default()))
        .kid(el("p", "w8 c-wait").text(told(over, all, app, seen)))
        .kid(el("div", if each.is_none() { "" } else { "g2" }).kid(key("key h88 wide", off, "", tap)).kids(each))
}

/// The key that takes these off: "Top 1 off", "All 5 off".
pub fn take_off(over: &[WaitLine], app: &App, seen: Seen<'_>) -> (String, Msg) {
    let n = count(over);
    let off = match over {
        [one] => words::one_off(&pieces(app, one), one.wait.what()),
        _ => words::all_off(n, &seen.speech.count(n), same_kind(over)),
    };
    (off, wait(WaitTap::Off(over.iter().map(|line| line.wait.id).listed())))
}

/// The same beside something else: "3 tops off".
pub fn some_off(over: &[WaitLine], app: &App, seen: Seen<'_>) -> (String, Msg) {
    let (all, tap) = take_off(over, app, seen);
    let named = || words::some_off(&seen.speech.count(count(over)), &same_thing(over), same_kind(over));
    (if 1 < over.len() { named() } else { all }, tap)
}

/// What can come out of the work of the first that can, and whether nothing of that work is still to come.
pub fn of_first_work(lines: &[WaitLine]) -> Option<(Vec<WaitLine>, bool)> {
    let (over, coming): (Vec<WaitLine>, Vec<WaitLine>) = lines.iter().cloned().partition(|line| line.over);
    by_work(&over, &coming).into_iter().next()
}

/// "Shelf, glue legs. Both pieces can come out, since", above the clock.
pub fn can_since(over: &[WaitLine], all: bool, app: &App, seen: Seen<'_>) -> String {
    let (n, work) = (count(over), over.first().and_then(|first| work_of(app, first)));
    words::of_work(work.as_deref(), words::can_since((n, &seen.speech.count(n)), &same_thing(over), all, same_kind(over)))
}

/// So many pieces; under several coats each of them once.
fn count(over: &[WaitLine]) -> u32 {
    let sum = over.iter().fold(0, |sum: u32, line| sum.saturating_add(line.wait.still()));
    let numbers = |line: &WaitLine| line.first_piece().zip(line.piece).map(|(first, last)| first..=last);
    if over.iter().all(|line| line.coat.is_none() || numbers(line).is_none()) {
        return sum;
    }
    let each = |line: &'_ WaitLine| numbers(line).into_iter().flatten().map(|piece| (line.wait.job, line.op.clone(), piece)).listed();
    let pieces: Set<_> = over.iter().flat_map(each).collect();
    u32::try_from(pieces.len()).unwrap_or(sum).min(sum)
}

/// "Shelf, glue legs. Both pieces can come out, since 13:37": whose they are, where that is not seen.
fn told(over: &[WaitLine], all: bool, app: &App, seen: Seen<'_>) -> String {
    let work = over.first().filter(|_| 1 < over.len()).and_then(|first| work_of(app, first));
    words::of_work(work.as_deref(), come_out(over, all, app, seen))
}

/// "All 5 tops can come out, since 13:37".
fn come_out(over: &[WaitLine], all: bool, app: &App, seen: Seen<'_>) -> String {
    let since = over.last().map(|line| clock(app, line.off)).unwrap_or_default();
    let n = count(over);
    match over {
        [one] => words::these_can_come_out(one.wait.still(), &whose(app, one), &since, one.ends()),
        _ => words::can_come_out((n, &seen.speech.count(n)), &same_thing(over), (all, &since), same_kind(over)),
    }
}

/// The kind of wait, where they are all of one.
fn same_kind(over: &[WaitLine]) -> Option<What> {
    let first = over.first()?.ends();
    over.iter().all(|line| line.ends() == first).then_some(first)
}

fn same_thing(over: &[WaitLine]) -> String {
    let things = over.iter().map(|line| words::thing(&line.op)).listed();
    let first = things.first().cloned().unwrap_or_default();
    if things.iter().all(|thing| *thing == first) { first } else { words::thing("") }
}

/// Each by its name and its off time, where there are more than the line can name; the first of very many.
fn named(coming: &[WaitLine], app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let by_mark = if seen.page.is_narrow() { 2 } else { BY_MARK };
    let one = |line: &WaitLine| {
        let off = clock(app, line.off);
        el("span", "w7").kid(el("span", "").text(whose(app, line))).kid(el("b", "w8 c-wait").text(off))
    };
    let more = coming.len().checked_sub(NAMED_MOST).filter(|more| 0 < *more);
    let more = more.map(|more| el("span", "w7").text(words::and_more(&app.speech.count(u32::try_from(more).unwrap_or(u32::MAX)))));
    (by_mark < coming.len() || is_other(coming, app)).then(|| el("span", "offs").kids(coming.iter().take(NAMED_MOST).map(one)).kids(more))
}

/// Whether one of them is not of the job in hand, or needs its operation to be told: then each stands on a line of its own.
fn is_other(coming: &[WaitLine], app: &App) -> bool {
    coming.iter().any(|line| whose(app, line) != pieces(app, line))
}

/// From now to the last off time, a mark for each; hours long.
fn drawn(coming: &[WaitLine], app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    // The slab is what a narrow page is for.
    if seen.page.is_narrow() {
        return None;
    }
    let near = coming.iter().filter(|line| line.left <= DRAWN_MOST).listed();
    let last = near.last()?.left;
    let minutes = |span: Span| span.as_ms() as f64 / 60_000.0;
    let (from, to) = (0.0, minutes(last).max(1.0) * 1.18);
    let tick = [5.0, 10.0, 20.0, 30.0, 60.0].into_iter().find(|tick| to / tick < 16.0).unwrap_or(60.0);
    let many = BY_MARK < coming.len() || is_other(coming, app);
    let mark = |line: &&WaitLine| {
        let (word, off) = if many { Default::default() } else { (pieces(app, line), of_two(app, line.off)) };
        Mark::new(minutes(line.left), Kind::Wait, word, off)
    };
    let scale_of = Scale {
        width: seen.page.card(),
        from,
        to,
        rhythm: Some(Rhythm { tick, long: tick * 3.0 }),
        marks: near.iter().map(mark).listed(),
        fills: vec![Fill { from, to: minutes(last), look: Look::OpenWait }],
        ..Scale::default()
    };
    Some(scale(&scale_of, ""))
}

/// Waits in a few lines, for a job's page and the list of jobs: of each operation what can come out, and when the rest does. What was
/// over before today stands below what ends today.
pub fn lines(lines: &[WaitLine], named: bool, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let old = |line: &&WaitLine| named && line.over && line.off.day() < app.now.day();
    let (old, new): (Vec<&WaitLine>, Vec<&WaitLine>) = lines.iter().partition(old);
    let title = if named { words::WAITS_ENDING } else { words::WAITS };
    let parts = [(title, new), (words::OVER_BEFORE, old)].into_iter().filter(|(_, lines)| !lines.is_empty()).listed();
    let part = |(title, lines): (&'static str, Vec<&WaitLine>)| {
        let groups = groups(&lines);
        let rows = groups.iter().map(|group| in_a_line(group, named, app, seen)).listed();
        std::iter::once(el("span", "w8 c-wait").text(title)).chain(rows).listed()
    };
    (!parts.is_empty()).then(|| {
        let board = el("button", "card wait waits").attr("type", "button").on_tap(wait(WaitTap::Show)).key("waits");
        board.kids(parts.into_iter().flat_map(part))
    })
}

/// Those of one operation together.
fn groups(lines: &[&WaitLine]) -> Vec<Vec<WaitLine>> {
    let mut groups: Vec<Vec<WaitLine>> = vec![];
    for line in lines {
        let same = |group: &&mut Vec<WaitLine>| group.first().is_some_and(|first| (&first.op, first.wait.job) == (&line.op, line.wait.job));
        match groups.iter_mut().find(same) {
            Some(group) => group.push((*line).clone()),
            None => groups.push(vec![(*line).clone()]),
        }
    }
    groups
}

fn in_a_line(group: &[WaitLine], named: bool, app: &App, seen: Seen<'_>) -> El<Msg> {
    let name = group.first().and_then(|line| line.name.clone()).filter(|_| named);
    let op = group.first().map(|line| line.op.clone());
    let what = [name, op].into_iter().flatten().listed().join(", ");
    let (over, coming): (Vec<WaitLine>, Vec<WaitLine>) = group.iter().cloned().partition(|line| line.over);
    let out = over.last().map(|_| come_out(&over, coming.is_empty(), app, seen));
    let said = out.into_iter().chain(said(&coming, app)).map(|said| el("span", "c-wait").text(said));
    el("span", "dl").kid(el("span", "w7").text(what)).kids(said)
}

/// "off 13:18, in 42 min".
pub fn left(line: &WaitLine, app: &App, seen: Seen<'_>) -> String {
    // Up to a whole minute: what is left is never said too short.
    let minutes = line.left.as_ms().saturating_add(59_999).div_euclid(60_000);
    words::off_and_left(&clock(app, line.off), &words::how_long(Span::minutes(minutes), seen.speech), line.wait.what())
}
