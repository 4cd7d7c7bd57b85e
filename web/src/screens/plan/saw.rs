//! At the saw: what is cut of which pile, in the order of cutting, with big keys to tick.

use super::super::Seen;
use super::{say, sizes, source_name, told};
use crate::app::plan::{Tap, not_cut_off};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::ink::{path, rect, sized};
use crate::parts::key::key;
use crate::parts::seg::{Seg, seg};
use crate::view::{El, el};
use crate::words::en::{changed, common, plan as words, rack, signs as rowed, tiles as tile_words, told as sized_words};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Decimal, Length, Listed, Units, begin_small};
use fivebar_core::sheet::make::cut::{boards, rows, rows_done};
use fivebar_core::sheet::make::{Given, Source};
use fivebar_core::sheet::plan::tiles::over;
use fivebar_core::sheet::plan::{Cut, CutLine, Drawn, Mark, PlanSheet};
use fivebar_core::sheet::trip_end::on_its_way;

/// The lines, with the piles they come from over them.
pub fn list((given, sheet): (&Given, &PlanSheet), taken: bool, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let unit = common::length_unit(given.units);
    let title = el("h2", "ink1 t17").text(words::at_the_saw(unit));
    let used =
        given.ready.sources.iter().enumerate().filter(|(place, _)| sheet.used.iter().any(|used| used.source == *place && 0 < used.used));
    let uncut = not_cut_off(app, (given, sheet), taken);
    let named = |place: usize| {
        let name = source(given, place, (app, seen));
        let n = uncut.iter().find(|(of, _)| *of == place).map(|(_, n)| changed::after_the_saw(Some(&seen.speech.count(*n))));
        let away = given.sources.get(place).filter(|source| is_away(source, app)).map(|_| rack::NOT_HOME_YET.to_owned());
        [name].into_iter().chain(away).chain(n).listed().join(", ")
    };
    let mut piles: Vec<(String, Option<String>)> = used.map(|(place, _)| (named(place), sizes::steps(given, sheet, place, seen))).collect();
    // One pile stands beside the title.
    let beside = if piles.len() == 1 { piles.first_mut().map(|(name, _)| std::mem::take(name)) } else { None };
    // Where nothing is done to them first, one line names them all.
    if 1 < piles.len() && piles.iter().all(|(_, steps)| steps.is_none()) {
        let names: Vec<String> = std::mem::take(&mut piles).into_iter().map(|(name, _)| name).collect();
        piles.push((names.join("; "), None));
    }
    let before = piles.into_iter().filter_map(|(name, steps)| prepared(name, steps)).chain(sizes::meant(given, seen).map(meant));
    let lines: Vec<Line> = sheet.lines.iter().map(|line| Line::of(line, given, seen)).collect();
    let small = |line: &Line| !line.whole && line.text.chars().count() + line.marks.chars().count() <= 13 && line.rest.is_none();
    let keys = lines
        .iter()
        .zip(boards(sheet, &app.plan.ticked))
        .enumerate()
        .map(|(nth, (line, cut))| if 1 < line.n { many(line, (nth, cut), seen) } else { tick(line, (nth, cut), small(line)) });
    let by_row = told::is_top(given) && app.plan.by_row;
    let how = told::is_top(given).then(|| {
        let one = |words: &str, row: bool| Seg::new(words, by_row == row);
        let both = vec![one(rowed::BY_PILE, false), one(rowed::BY_ROW, true)];
        el("div", "no-print").kid(seg(rowed::LIST, both, |nth| say(Tap::ByRow(nth == 1))))
    });
    let note = by_row.then(|| meant(rowed::ROW_TICKED.into()));
    let done_by = if by_row { rowed::DONE_BY_ITS_BOARDS } else { rowed::DONE_BY_ITS_ROWS };
    let by_rows = app.plan.by_its_rows.then(|| el("p", "why").attr("role", "alert").text(done_by));
    // On paper the list by pile stands below the rows too: it is sawn by it.
    let (keys, printed): (Vec<El<Msg>>, _) =
        if by_row { (row_keys((given, sheet), app, seen), Some(el("div", "ticks print-only").kids(keys))) } else { (keys.collect(), None) };
    let head = el("div", "row").kid(title).kids(beside.map(|name| worded("p", "t14", name)));
    let sizes = printed_sizes(given, sheet, seen);
    vec![head]
        .into_iter()
        .chain([el("p", "t14 print-only").text(sizes)])
        .chain(before)
        .chain(how)
        .chain(note)
        .chain(by_rows)
        .chain([el("div", "ticks").kids(keys)])
        .chain(printed)
        .collect()
}

/// Its haul is not home yet, by now: the plan may be older.
fn is_away(source: &Source, app: &App) -> bool {
    let book = &app.shelf().book;
    fold::haul(book, source.pile.haul).is_some_and(|haul| source.bought.is_none() && on_its_way(book, &haul, app.now.at))
}

/// The rows of a top, each with its pieces in turn, to be ticked whole.
fn row_keys((given, sheet): (&Given, &PlanSheet), app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let cut = rows_done(sheet, &app.plan.ticked);
    let one = |(nth, row): (usize, &[Drawn])| {
        let done = cut.get(nth) == Some(&true);
        let of = place(nth, seen);
        let text = rowed::row(&of, &row.iter().map(|piece| row_piece(given, piece, seen)).collect::<Vec<_>>());
        let line = Line { text, n: 1, marks: of, whole: true, rest: None };
        tick_as(&line, (i64::from(done), false), Tap::TickRow(nth)).key(format!("row {nth}"))
    };
    rows(sheet).enumerate().map(one).collect()
}

/// "A 905"; of a cut one its number in the picture too.
fn row_piece(given: &Given, piece: &Drawn, seen: Seen<'_>) -> String {
    let cut = if let Mark::Number(n) = piece.mark { Some(number(n, seen)) } else { None };
    rowed::in_row(&letter(given, piece.source), &seen.speech.length(piece.at[2], given.units), cut.as_deref())
}

fn place(nth: usize, seen: Seen<'_>) -> String {
    number(i64::try_from(nth).unwrap_or(i64::MAX).saturating_add(1), seen)
}

/// "Row 2, piece 3"; of what is no top nothing.
pub fn in_row((given, sheet): (&Given, &PlanSheet), piece: &Drawn, seen: Seen<'_>) -> Option<String> {
    let (nth, row) = rows(sheet).enumerate().filter(|_| told::is_top(given)).find(|(_, row)| row.contains(piece))?;
    let at = row.iter().position(|own| own == piece)?;
    Some(rowed::piece_in_row(&place(nth, seen), &place(at, seen)))
}

/// On paper the pieces have their size: "A: 27 × 62 × 1010; B: 40 × 150 × 365".
fn printed_sizes(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> String {
    let cut = |place: usize| sheet.used.iter().any(|used| used.source == place && 0 < used.used);
    let all = given.ready.sources.iter().enumerate().filter(|(place, _)| cut(*place));
    let size = |source: &fivebar_core::sheet::plan::ready::Source| {
        let [thick, wide, long] =
            source.stack.sizes.map(|side| side.map_or_else(|| "?".to_owned(), |side| seen.speech.length(side, given.units)));
        format!("{}: {thick} × {wide} × {long}", source.letter)
    };
    all.map(|(_, source)| size(source)).collect::<Vec<_>>().join("; ")
}

/// A pile and what is done to its pieces first.
fn prepared(name: String, steps: Option<String>) -> Option<El<Msg>> {
    match (name.is_empty(), steps) {
        (true, steps) => steps.map(|steps| worded("p", "t17 w7", steps)),
        (false, None) => Some(worded("p", "t14", name)),
        (false, Some(steps)) => Some(worded("p", "", sized_words::of_pile(&name, &steps))),
    }
}

fn meant(line: String) -> El<Msg> {
    worded("p", "t14 i2", line)
}

/// "A: oak tread ends, ripped in three".
fn source(given: &Given, place: usize, (app, seen): (&App, Seen<'_>)) -> String {
    let Some((from, ready)) = given.sources.get(place).zip(given.ready.sources.get(place)) else { return String::new() };
    let ripped = (1 < ready.ripped).then(|| words::ripped_in(ready.ripped, number(ready.ripped, seen)));
    words::pile_of(&ready.letter, &begin_small(&source_name(from, app)), ripped.as_deref())
}

/// A line at the saw in words.
pub struct Line {
    pub text: String,
    /// Boards or strips that are cut so.
    pub n: i64,
    /// The letter of its pile, or its numbers.
    pub marks: String,
    pub whole: bool,
    /// What is left of each, to keep.
    pub rest: Option<String>,
}

impl Line {
    pub fn of(line: &CutLine, given: &Given, seen: Seen<'_>) -> Line {
        let marks = if line.numbers.is_empty() { letter(given, line.source) } else { numbers(line, given, seen) };
        let rest = line.remainder.map(|rest| words::goes_back(&seen.speech.length(rest, given.units)));
        Line { text: cut(line, given, seen), n: line.n, marks, whole: line.numbers.is_empty(), rest }
    }
}

fn letter(given: &Given, place: usize) -> String {
    given.ready.sources.get(place).map_or_else(String::new, |source| source.letter.clone())
}

/// The numbers in the picture; with several piles, the letter too.
fn numbers(line: &CutLine, given: &Given, seen: Seen<'_>) -> String {
    let numbers = line.numbers.iter().map(|n| number(*n, seen)).collect::<Vec<_>>().join(", ");
    if given.ready.sources.len() < 2 { numbers } else { format!("{} {numbers}", letter(given, line.source)) }
}

pub fn number(n: i64, seen: Seen<'_>) -> String {
    seen.speech.number(Decimal::from(n), 0, 0)
}

/// Tiles of a length come of boards, as parts do.
fn cut_as(given: &Given) -> Shape {
    if given.ready.is_of_tiles() { Shape::Parts } else { given.ask.what.shape() }
}

/// "16 whole, ends trimmed to 360", "212 + 2 × 71", "902 × 100 × 27, top".
fn cut(line: &CutLine, given: &Given, seen: Seen<'_>) -> String {
    let units: Units = given.units;
    let piece = |cut: &Cut| {
        let n = (cut.n != 1).then(|| number(cut.n, seen));
        if let Some(part) = cut.part {
            return sized_words::cut(n.as_deref(), &sizes::written(cut.size, given, seen), &told::part(given, part));
        }
        let length = seen.speech.length(cut.size[0], units);
        n.map_or_else(|| length.clone(), |n| words::times(&n, &length))
    };
    if let (true, [one]) = (line.numbers.is_empty(), line.pieces.as_slice()) {
        if let Some(tiles) = tiles(line, one, given, seen) {
            return tiles;
        }
        let (n, length) = (number(line.n, seen), seen.speech.length(one.size[0], units));
        return if is_trimmed(line, one, given) { words::whole(&n, &length) } else { words::cut_to(&n, &length) };
    }
    let pieces = line.pieces.iter().map(piece).collect::<Vec<_>>().join(" + ");
    if line.n == 1 { pieces } else { words::alike(cut_as(given), &number(line.n, seen), &pieces) }
}

/// "3 boards: 4 tiles of 160 from each, 31 mm of each left", where a tile length was asked.
fn tiles(line: &CutLine, one: &Cut, given: &Given, seen: Seen<'_>) -> Option<String> {
    let source = given.ready.sources.get(line.source).filter(|_| given.ready.is_of_tiles())?;
    let over = over(source.size[2], (one.size[0], one.n), &given.ready.figures)?;
    let length = seen.speech.length(one.size[0], given.units);
    // What goes back is said under it, less the cut in front of it.
    let left = (Length::ZERO < over && line.remainder.is_none()).then(|| super::side(over, given.units, seen));
    let boards = (line.n != 1).then(|| number(line.n, seen));
    Some(tile_words::from_each(boards.as_deref(), (&number(one.n, seen), one.n == 1), &length, left.as_deref()))
}

/// No more is off than what is trimmed of ends.
fn is_trimmed(line: &CutLine, cut: &Cut, given: &Given) -> bool {
    let Some(source) = given.ready.sources.get(line.source).filter(|_| !told::is_top(given)) else { return true };
    let figures = &given.ready.figures;
    let ends = figures.end_trim.max(figures.square).as_nm().saturating_mul(2).saturating_add(figures.allow[0].as_nm());
    source.size[2].as_nm().saturating_sub(cut.size[0].as_nm()) <= ends
}

/// A line of several boards: all of them in one tap, or board by board.
fn many(line: &Line, (nth, cut): (usize, i64), seen: Seen<'_>) -> El<Msg> {
    let (n, of) = (number(cut, seen), number(line.n, seen));
    let one = key("key more no-print", words::ONE_MORE, words::so_many_cut(&n, &of), say(Tap::OneMore(nth)));
    let one = one.attr("aria-label", words::one_more_cut(&line.text, &n, &of)).flag("disabled", cut == line.n);
    el("div", "many").kid(tick(line, (nth, cut), false)).kid(one)
}

fn tick(line: &Line, (nth, cut): (usize, i64), small: bool) -> El<Msg> {
    tick_as(line, (cut, small), Tap::Tick(nth))
}

fn tick_as(line: &Line, (cut, small): (i64, bool), tap: Tap) -> El<Msg> {
    let (done, begun) = (cut == line.n, 0 < cut);
    let class = match (done, small) {
        (true, true) => "tick done",
        (false, true) => "tick",
        (true, false) => "tick done all",
        (false, false) => "tick all",
    };
    let mark = if done { "M7 14.5l5 6L22 6" } else { "M7 14h14" };
    let mark = sized("box", (28.0, 28.0)).kid(rect("", (2.0, 2.0), (24.0, 24.0))).kids(begun.then(|| path("", mark)));
    el("button", class)
        .attr("type", "button")
        .attr(
            "aria-pressed",
            if done {
                "true"
            } else if begun {
                "mixed"
            } else {
                "false"
            },
        )
        .on_tap(say(tap))
        .kid(mark)
        .kid(el("span", "ct").kid(worded("span", "", line.text.clone())).kids(line.rest.clone().map(|rest| worded("small", "", rest))))
        .kid(el("span", "no").text(line.marks.clone()))
}
