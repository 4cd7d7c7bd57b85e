//! The plan: what it makes, the picture, the saw, what it uses and leaves; or the planning under way.

use super::super::count::saved_fact;
use super::super::slots::no;
use super::super::{Screen, Seen, undo};
use super::{
    anew, ends, joints, lacks, limits, mixed, nearly, over, picture, question, reckoned, saw, say, seek, side, since, sizes, told, uncut,
    wants, ways,
};
use crate::app::plan::{Found, Since, Stands, Tap, refused, since as since_then, still_to_buy, was_used};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::fraction::worded;
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::screens::jobs::titled;
use crate::view::{El, el};
use crate::words::en::{changed, common, plan as words, told as told_words, ways as way_words, yard};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::make::buy::not_bought;
use fivebar_core::sheet::make::{Field, Given, Top, What};
use fivebar_core::sheet::plan::PlanSheet;

pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let Some(given) = &app.plan.given else { return super::choose(sheet, app, seen) };
    let found = app.plan.found.as_ref();
    let since = found.map(|found| since_then(app, given, found)).unwrap_or_default();
    if let Some(question) = question::screen(sheet, &since, app, seen) {
        return question;
    }
    let top = top(given, sheet, (app, &since), seen);
    let paper = el("p", "print-only").text(seen.speech.day(seen.now));
    let first = el("div", "col")
        .kid(paper)
        .kids(if found.is_some_and(|found| 0 < found.sheet.made) { early(app) } else { under_way(given, app, seen) })
        .kids(found.map(|found| plan(sheet, (given, found), (app, &since), seen)).unwrap_or_default());
    let second = el("div", "col").kids(found.map(|found| below(given, found, (app, &since), seen)).unwrap_or_default());
    let drop_key = found.map(|_| since::drop_key(&since));
    let second = second.kids(since.taken.then(|| ways_on(given, sheet))).kids(drop_key).kid(el("div", "no-print").kid(super::to_job()));
    let main = el("main", "two scr plan").kid(first).kid(second);
    let screen = Screen::new("jobs/plan-answer", head(top), main).says_it();
    Screen { foot: foot(given, sheet, (app, &since), seen), of: app.plan.turned_to.to_string(), ..screen }
}

/// Of a plan that is used: the list at the saw has the page, what is seldom wanted stands at its end.
fn ways_on(given: &Given, job: &JobSheet) -> El<Msg> {
    let has_all = if job.lacking.is_none() { words::IS_USED } else { "" };
    let again = key("key soft h56", words::PLAN_AGAIN, has_all, say(Tap::Go));
    el("div", "g2 no-print").kid(change(given, "key soft h56")).kid(again)
}

fn change(given: &Given, class: &'static str) -> El<Msg> {
    let rows = given.ask.what.shape() == Shape::Rows;
    key(class, if rows { words::CHANGE_ROWS } else { words::CHANGE }, "", say(Tap::Change))
}

/// What was asked, whether it is the best, and the joints.
fn top(given: &Given, sheet: &JobSheet, (app, since): (&App, &Since), seen: Seen<'_>) -> Head<Msg> {
    let units = given.units;
    let asked = match &given.ask.what {
        What::Top(top) => match anew::other_rows_of(given, (app, seen)) {
            Some([wide, rows]) => {
                let unit = common::length_unit(units);
                format!(", {} × {wide} {unit}, {rows}", seen.speech.length(top.length, units))
            }
            None => format!(", {} × {}", seen.speech.length(top.length, units), side(top.width, units, seen)),
        },
        What::Field(Field { sides: [Some(wide), Some(deep), _], .. }) => {
            format!(", {} × {}", seen.speech.length(*wide, units), side(*deep, units, seen))
        }
        _ => String::new(),
    };
    let top = Head::new(titled(sheet, seen) + &asked, words::WHAT_CAN_I_MAKE);
    let top = match &app.plan.found {
        Some(_) if since.taken => top.fact(saved_fact(app, seen)),
        Some(_) if !since.changed.is_empty() => top,
        Some(found) => top.fact(Fact::Strong(told::standing(given, found, (app, seen)))),
        None => top,
    };
    match &given.ask.what {
        // On a narrow page it stands under the picture: the head leaves the title its room.
        What::Top(_) if seen.page.is_narrow() => top,
        What::Top(asked) => top.fact(Fact::Plain(words::joints_apart(&seen.speech.length(asked.apart, units)))),
        _ => top,
    }
}

/// Progress in words; or that it failed.
fn under_way(given: &Given, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    match &app.plan.stands {
        Stands::Failed => vec![el("p", "why").attr("role", "alert").text(words::FAILED)],
        Stands::Still => vec![],
        Stands::UnderWay { .. } => {
            let said = told::progress(&app.plan, given, seen).unwrap_or_else(|| format!("{} …", words::PLANNING));
            std::iter::once(el("p", "t17 no-print").attr("role", "status").text(said)).chain(early(app)).collect()
        }
    }
}

/// Paper stays as it is: it says that it was early.
fn early(app: &App) -> Vec<El<Msg>> {
    let is_early = app.plan.found.is_some() && matches!(app.plan.stands, Stands::UnderWay { .. });
    if is_early { vec![el("p", "print-only").text(told_words::PRINTED_EARLY)] } else { vec![] }
}

/// What it makes, and the picture.
fn plan(job: &JobSheet, (given, found): (&Given, &Found), (app, since): (&App, &Since), seen: Seen<'_>) -> Vec<El<Msg>> {
    let sheet = &found.sheet;
    let lead = told::lead(given, found, (app, seen));
    let mut shown = if since.taken { vec![] } else { anew::to_before(given, sheet, (app, seen)) };
    shown.push(match shown.is_empty() {
        true => el("p", "t22 w8").text(lead),
        false => el("p", "w7").text(changed::other_way(&lead)),
    });
    shown.extend(nearly::kept_small(given, sheet).map(|least| ends::to_saw(told_words::LEAST_PIECE, least, (given.units, seen))));
    shown.extend(anew::cut_before(given, since.taken, (app, seen)));
    shown.extend(since::lacking(job, seen));
    shown.extend(told::of_one(given, seen).map(|line| el("p", "w7").text(line)));
    shown.extend(if since.taken { None } else { wants::beyond_the_job(given, seen) }.map(|line| el("p", "w7").text(line)));
    shown.extend(since::notes(given, since));
    shown.extend(since::missing(given));
    shown.extend(if job.ended.is_some() { vec![] } else { reckoned::unsorted((given, sheet), since.taken, app, seen) });
    shown.extend(wants::buy(given, sheet, (app, seen)).into_iter().map(|line| worded("p", "w7", line)));
    shown.extend(wants::nearly(given, app, seen));
    shown.extend(if since.taken { None } else { joints::nearer(given, sheet, seen) });
    // What keeps rows from being laid stands over the picture, what would save strips under it.
    let ends = if since.taken { vec![] } else { ends::told(given, sheet, seen) };
    let (over, under) = if sheet.made == 0 || sheet.ends.short.is_some() { (ends, vec![]) } else { (vec![], ends) };
    shown.extend(over);
    if is_made(given, sheet) {
        shown.push(el("section", "card lays").kids(picture::picture(given, sheet, app.plan.piece, seen)));
        let kept = sheet.picture.boards.iter().any(|board| board.left.is_some());
        let key_to = if kept { words::KEPT_AS_HATCHED } else { words::GREY_IS_WASTE };
        shown.extend((!sheet.picture.boards.is_empty()).then(|| el("p", "t14 i2").text(key_to)));
        shown.push(el("p", "t14 no-print").attr("role", "status").text(tapped(given, found, app, seen)));
        shown.extend(picture::rows(given, sheet, seen));
    }
    shown.extend(under);
    // Once the wood is cut the list at the saw comes first.
    shown.extend(if since.taken { vec![] } else { details(given, found, (app, since), seen) });
    let lacks = if is_made_before(given, sheet, app) { vec![] } else { seek::keys(given.units, job.ended.is_some(), (app, seen)) };
    shown.extend((!lacks.is_empty()).then(|| el("section", "col").kids(lacks)));
    shown
}

/// Something is made; one tile of a whole field is nothing.
fn is_made(given: &Given, sheet: &PlanSheet) -> bool {
    0 < sheet.made && nearly::one_tile(given, sheet).is_none()
}

/// A plan in use goes on with what is cut, or makes all, or cut pieces may make more: nothing is bought for this one.
fn is_made_before(given: &Given, sheet: &PlanSheet, app: &App) -> bool {
    anew::keeps_strips(given, sheet, app) || anew::made_before(given, sheet, app).is_some() || uncut::is_more_there(given, sheet, app)
}

/// Of what, how wide and how thick; what is proven, and what else it could be.
fn details(given: &Given, found: &Found, (app, since): (&App, &Since), seen: Seen<'_>) -> Vec<El<Msg>> {
    let (sheet, taken) = (&found.sheet, since.taken);
    let apart = match &given.ask.what {
        What::Top(top) if seen.page.is_narrow() => Some(joints_of(top, given, seen)),
        _ => None,
    };
    let mixed = !taken && ways::is_more_mixed(given);
    let more = [
        ways::chosen(given, (app, seen)),
        sizes::rows(given, sheet, (app, seen)).filter(|_| 0 < sheet.made),
        nearly::asked(given, sheet, seen),
    ];
    let more = more
        .into_iter()
        .chain([
            ways::thick_taken(given),
            mixed.then(|| way_words::MAY_BE_MORE_MIXED.to_owned()),
            lacks::short(given, sheet, (app, seen)),
            apart,
        ])
        .flatten()
        .chain(limits::two_tiles(given, sheet))
        .map(|line| worded("p", "", line));
    // What else it could have been is of no use once the wood is cut.
    let nearly = if taken {
        vec![]
    } else {
        nearly::a_row_less(given, sheet, seen).into_iter().chain(nearly::left_out(given, &since.left_out, (app, seen))).collect()
    };
    let over = if taken {
        vec![]
    } else {
        [nearly::trimmed(given, sheet, seen), limits::wide_sticks(given, sheet), over::choices(given, sheet, seen)].concat()
    };
    // What lies there may do more in another way before anything is bought.
    let others = if taken { vec![] } else { ways::others(given, (app, seen)) };
    let (first, others) = if mixed { (others, vec![]) } else { (vec![], others) };
    let buys = !taken && !sheet.short.is_empty() && !is_made_before(given, sheet, app);
    let buys = buys.then(|| key("key soft h56 wide no-print", words::ADD_BOARDS, words::ADD_BOARDS_UNDER, say(Tap::Buy)));
    let only = uncut::is_more_there(given, sheet, app);
    let proven = [
        told::why(given, sheet, seen).filter(|_| !only),
        told::open(given, sheet, (app.plan.kinds, seen)).filter(|_| !only),
        told::only_near(given, sheet, (&app.plan, seen)),
    ]
    .into_iter()
    .flatten();
    let nearly: Vec<El<Msg>> = proven.chain(nearly).map(|line| worded("p", "", line)).collect();
    let nearly = (!nearly.is_empty()).then(|| el("section", "t14 sums").kids(nearly));
    let glued = over::glued(given, sheet, seen).into_iter().chain(mixed::told(given, sheet, taken, (app, seen)));
    more.chain(first).chain(buys).chain(glued).chain(over).chain(nearly).chain(others).collect()
}

fn joints_of(top: &Top, given: &Given, seen: Seen<'_>) -> String {
    format!("{}.", fivebar_core::quantity::begin_large(&words::joints_apart(&seen.speech.length(top.apart, given.units))))
}

/// Where the tapped piece comes from; or how the looking goes.
fn tapped(given: &Given, found: &Found, app: &App, seen: Seen<'_>) -> String {
    let Some(piece) = app.plan.piece.and_then(|nth| found.sheet.picture.pieces.get(nth)) else {
        // One line for both: nothing moves when the looking ends.
        return told::progress(&app.plan, given, seen).unwrap_or_else(|| words::TAP_A_PIECE.into());
    };
    let mine = |line: &&fivebar_core::sheet::plan::CutLine| match piece.mark {
        fivebar_core::sheet::plan::Mark::Number(n) => line.numbers.contains(&n),
        fivebar_core::sheet::plan::Mark::Letter => line.source == piece.source && line.numbers.is_empty(),
    };
    let line = found.sheet.lines.iter().find(mine).map(|line| saw::Line::of(line, given, seen));
    let (cut, left) = line.map(|line| (line.text, line.rest)).unwrap_or_default();
    let name = given.sources.get(piece.source).map(|source| super::source_name(source, app)).unwrap_or_default();
    let (mark, name) = (picture::mark(given, piece), fivebar_core::quantity::begin_small(&name));
    let at = saw::in_row((given, &found.sheet), piece, seen).map_or_else(String::new, |at| format!("{at}: "));
    at + &match piece.part {
        Some(part) => {
            let length = seen.speech.length(piece.at[2], given.units);
            words::part_piece([&told::part(given, part), &length], [&mark, &name], &cut, left.as_deref())
        }
        None => words::piece(&mark, &seen.speech.length(long(given, piece), given.units), &name, &cut),
    }
}

/// Along the grain: the longer side of a tile, which may lie either way.
pub fn long(given: &Given, piece: &fivebar_core::sheet::plan::Drawn) -> fivebar_core::quantity::Length {
    if given.ask.what.shape() == Shape::Field { piece.at[2].max(piece.at[3]) } else { piece.at[2] }
}

fn below(given: &Given, found: &Found, (app, since): (&App, &Since), seen: Seen<'_>) -> Vec<El<Msg>> {
    let sheet = &found.sheet;
    if !is_made(given, sheet) {
        let left_out = if since.taken { vec![] } else { since::left_out(given, found, (app, seen)) };
        return reckoned::figures(given, seen).into_iter().chain(left_out).collect();
    }
    let mut shown: Vec<El<Msg>> = since::of_before(since).into_iter().chain(saw::list((given, sheet), since.taken, app, seen)).collect();
    shown.extend(sizes::finish(given, sheet, (app, seen)));
    shown.extend(if since.taken { details(given, found, (app, since), seen) } else { vec![] });
    let lines = [told::used(given, sheet, since.taken, seen)]
        .into_iter()
        .chain(told::shortest(given, sheet, seen))
        .chain(told::waste(given, sheet, seen))
        .chain(told::figures(given, sheet, (app, seen)));
    shown.push(el("section", "t14 i2 sums").kids(lines.map(|line| worded("p", "", line))));
    shown.extend(reckoned::figures(given, seen));
    if !since.taken {
        shown.extend(since::left_out(given, found, (app, seen)));
    }
    shown.extend(since::piles(given, found, app));
    shown.extend(since::others(since, seen));
    if sheet.moves.is_some_and(|it| it.glued) || told::is_top(given) {
        shown.push(caution(words::NEEDS_ROOM));
    }
    if !sheet.too_short.is_empty() {
        shown.push(caution(yard::SHORT_CAUTION));
    }
    shown.push(key("key soft h56 wide", words::PRINT, "", say(Tap::Print)));
    shown
}

/// The ways on: stop, change, plan again, use.
fn foot(given: &Given, sheet: &JobSheet, (app, since): (&App, &Since), seen: Seen<'_>) -> Option<El<Msg>> {
    let foot = el("footer", "foot brief").kids(refused(app).map(|why| no(why, seen)));
    let foot = foot.kids(seek::undo_bar(app, seen).filter(|_| !since.taken && !was_used(app)));
    let change = || change(given, "key");
    let under_way = matches!(app.plan.stands, Stands::UnderWay { .. });
    // Each key keeps its place and its size while it looks and after.
    let middle = || match under_way {
        true => key("key", words::STOP_HERE, "", say(Tap::Stop)),
        false => key("key", words::PLAN_AGAIN, "", say(Tap::Go)),
    };
    let Some(found) = app.plan.found.as_ref().filter(|found| is_made(given, &found.sheet)) else {
        let use_it = under_way.then(|| key("key wide", words::USE_IT, "", say(Tap::Use)).flag("disabled", true));
        return Some(foot.kid(el("div", "g2").kid(change()).kid(middle())).kids(use_it));
    };
    if since.taken {
        let back = undo::bar(app, seen);
        return (back.is_some() || refused(app).is_some()).then(|| foot.kids(back));
    }
    if !not_bought(given, &found.sheet).is_empty() {
        return Some(foot.kids(buy_first(given, change(), (app, seen))));
    }
    let possible = since.changed.is_empty();
    let again = || key("key solid", words::PLAN_AGAIN, "", say(Tap::Go));
    let keys = el("div", "g2").kid(change()).kid(if possible || under_way { middle() } else { again() });
    let last = possible.then(|| use_key(given, found, sheet, ((app, since), seen)));
    Some(foot.kids(was_used(app).then(|| undo::bar(app, seen)).flatten()).kid(keys).kids(last))
}

/// Boards are bought and written down kind by kind; then it is planned again with them.
fn buy_first(given: &Given, change: El<Msg>, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let wanted = still_to_buy(app);
    let again = |class| key(class, words::PLAN_AGAIN, "", say(Tap::Go));
    let Some(next) = wanted.iter().find(|it| 0 < it.left) else {
        return vec![el("p", "t14").text(words::ALL_BOUGHT), el("div", "g2").kid(change).kid(again("key solid"))];
    };
    let under = match wanted.len() {
        1 => words::ARE_BOUGHT_UNDER.to_owned(),
        _ => words::write_down(&seen.speech.count(next.left), wants::letter(given, next.source)),
    };
    let bought = key("key solid wide", words::ARE_BOUGHT, under, say(Tap::Bought));
    vec![el("p", "t14").text(words::BUY_FIRST), el("div", "g2").kid(change).kid(again("key")), bought]
}

/// "Use these 24", and what that takes from the rack.
fn use_key(given: &Given, found: &Found, sheet: &JobSheet, ((app, since), seen): ((&App, &Since), Seen<'_>)) -> El<Msg> {
    let of = |in_job: bool| {
        let mine = found.sheet.used.iter().filter(|used| given.sources.get(used.source).is_some_and(|source| source.in_job == in_job));
        mine.fold(0_u32, |sum, used| sum.saturating_add(used.pieces))
    };
    let all = found.sheet.used.iter().fold(0_u32, |sum, used| sum.saturating_add(used.pieces));
    let under = match (sheet.ended.is_some(), of(false)) {
        (true, _) => words::JOB_ENDED.to_owned(),
        (false, 0) => since::takes(words::IN_JOB_ALREADY.to_owned(), since, seen),
        (false, n) => since::takes(words::takes(&common::pieces(n, &seen.speech.count(n))), since, seen),
    };
    let under = wants::more_than_the_job(given, &found.sheet, seen).map_or(under.clone(), |more| changed::and_under(&more, &under));
    // What comes so far from what was asked, or makes fewer rows than going on, is not the first thing to do.
    let goes_on = anew::made_before(given, &found.sheet, app).is_some();
    let is_first = sheet.ended.is_none() && !goes_on && nearly::kept_small(given, &found.sheet).is_none();
    let class = if is_first { "key solid wide" } else { "key wide" };
    key(class, words::use_these(&seen.speech.count(all)), under, say(Tap::Use)).flag("disabled", sheet.ended.is_some())
}
