//! What is written down on the page of a pile: answers by chips above, figures, what they come to, and the pad under the thumb.

use super::super::slots::{Slot, doubted, figures_in, pad, refused, why};
use super::super::{Screen, Seen};
use super::{damp_on, mean_lines, say};
use crate::app::count::Tap;
use crate::app::pile::{Doing, PilePage, PileTap, missing, on_the_scale};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, even};
use crate::screens::count::name;
use crate::view::{El, el};
use crate::words::en::{common, count, pile as words};
use fivebar_core::haul::Want;
use fivebar_core::haul::weighing::{Spread, layers};
use fivebar_core::quantity::{Decimal, Listed, PILE_MOST, reading};
use fivebar_core::sheet::pile::PileSheet;

/// A form before it is laid out.
struct Asked {
    title: &'static str,
    above: Vec<El<Msg>>,
    slots: Vec<Slot>,
    /// Under the pad, so that all keys are seen on a small phone.
    below: Vec<El<Msg>>,
    /// What the figures come to so far.
    comes_to: Vec<String>,
}

/// The form in hand.
pub fn screen(page: &PilePage, doing: Doing, (sheet, app): (&PileSheet, &App), seen: Seen<'_>) -> Screen {
    let asked = asked(page, doing, (sheet, app), seen);
    let class = if asked.slots.len() == 3 { "g3 slots" } else { "g2 slots" };
    let at = |nth| say(PileTap::At(nth));
    let comes_to = asked.comes_to.into_iter().enumerate().map(|(nth, line)| el("p", if nth == 0 { "w7" } else { "t14 i2" }).text(line));
    let main = el("main", "scr form")
        .kids(asked.above)
        .kid(figures_in(class, &page.form, &asked.slots, at))
        .kids(why(&page.form, &asked.slots, (sheet.units, seen)))
        .kids(doubted(&page.form, (sheet.units, seen), |side| say(PileTap::IsSo(side))))
        .kids(refused(app, seen))
        .kids(comes_to)
        .kid(el("div", "push"))
        .kids(pad(&page.form, &asked.slots, seen, |press| Msg::Count(Tap::Press(press))))
        .kids(asked.below);
    let keys = el("div", "um").kid(done_key("key solid t22", common::DONE, "", say(PileTap::Save))).kid(key(
        "key",
        common::NOT_NOW,
        "",
        say(PileTap::Leave),
    ));
    let top = Head::new(name(&sheet.tile), asked.title);
    Screen::new(place(doing), head(top), main).foot(el("footer", "foot").kid(keys)).says_it()
}

fn place(doing: Doing) -> &'static str {
    match doing {
        Doing::Want => "count/pile-need",
        Doing::Layers => "count/pile-layers",
        Doing::Weigh => "count/pile-weight",
        Doing::Measure => "count/pile-measure",
        Doing::Moisture => "count/pile-moisture",
        Doing::Again => "count/pile-again",
    }
}

fn asked(page: &PilePage, doing: Doing, (sheet, app): (&PileSheet, &App), seen: Seen<'_>) -> Asked {
    let more = sheet.to_measure.filter(|n| 0 < *n).map(|n| el("p", "t14 i2").text(words::to_measure(&seen.speech.count(n))));
    match doing {
        Doing::Want => want(page, app, seen),
        Doing::Layers => Asked {
            title: words::BY_LAYERS,
            above: vec![],
            slots: [words::LAYERS, words::IN_EACH, words::REST].map(Slot::whole).into(),
            below: vec![],
            comes_to: in_layers(page, sheet, seen).into_iter().listed(),
        },
        Doing::Weigh => weigh(page, sheet, seen),
        Doing::Measure => Asked {
            title: words::MEASURE,
            above: std::iter::once(el("p", "t14 i2").text(words::MEASURED_FIRST)).chain(mean_lines(sheet, seen)).chain(more).listed(),
            slots: [count::THICKNESS, count::WIDTH, count::LENGTH].map(|side| Slot::side(side, sheet.units)).into(),
            below: vec![],
            comes_to: vec![],
        },
        Doing::Moisture => moisture(sheet, seen),
        Doing::Again => again(page),
    }
}

fn want(page: &PilePage, app: &App, seen: Seen<'_>) -> Asked {
    let each = if page.picks.takes { words::PIECES } else { words::PARTS };
    let segs = [(words::ONE_PIECE_GIVES, false), (words::ONE_PART_TAKES, true)];
    let segs = segs.map(|(word, takes)| Seg::new(word, page.picks.takes == takes)).into();
    let above = vec![el("h2", "ink1").text(words::FOR_WHAT), parts(page, app, seen)];
    let mut below: Vec<El<Msg>> = page.picks.typed.then(|| typed("part-name", words::PART_NAME, page)).into_iter().listed();
    let whole = |label: &str, unit: &str| Slot { whole: true, ..Slot::new(label, unit) };
    let mut slots =
        vec![whole(words::HOW_MANY_NEEDED, if !page.picks.typed && page.picks.words.is_empty() { words::PIECES } else { words::PARTS })];
    if page.asks_each() {
        below.push(even(words::ONE_PIECE_GIVES, segs, |nth| say(PileTap::Takes(nth == 1))));
        slots.push(whole(if page.picks.takes { words::ONE_PART_TAKES } else { words::ONE_PIECE_GIVES }, each));
    }
    let comes_to = page.picks.changes.then(|| words::NONE_TAKES_AWAY.to_owned()).into_iter().listed();
    Asked { title: words::NEED, above, slots, below, comes_to }
}

/// Pieces as they are, the parts of jobs in hand, or another by its name.
fn parts(page: &PilePage, app: &App, seen: Seen<'_>) -> El<Msg> {
    let known = app.shelf().haul().map(|haul| app.shelf().known(&haul));
    let parts = known.map(|known| known.parts.clone()).unwrap_or_default();
    let picks = &page.picks;
    let none = Chip::choice(words::PIECES_ALONE, !picks.typed && picks.words.is_empty());
    let own = parts.iter().map(|part| Chip::choice(&part.name, picks.job == Some(part.job) && picks.words == part.name).under(&part.of));
    let missing = missing(app);
    let still = |want: &Want| {
        let name = if want.part.is_empty() { words::PIECES_ALONE } else { &want.part };
        let chosen = picks.words == want.part && picks.job == want.job && page.form.text(0) == want.wanted.to_string();
        Chip::choice(name, chosen).under(words::still_missing(&seen.speech.count(want.wanted)))
    };
    let chips =
        std::iter::once(none).chain(missing.iter().map(still)).chain(own).chain([Chip::choice(words::OTHER_PART, picks.typed)]).listed();
    let own = parts.iter().map(|part| PileTap::Pick(Some(part.job), part.name.clone()));
    let taps: Vec<PileTap> = (0..missing.len()).map(PileTap::Still).chain(own).listed();
    flowing("key h56", chips, move |nth| match nth.checked_sub(1) {
        None => say(PileTap::Pick(None, String::new())),
        Some(nth) => say(taps.get(nth).cloned().unwrap_or(PileTap::Other)),
    })
}

fn typed(id: &'static str, label: &str, page: &PilePage) -> El<Msg> {
    let asked = Field { id, label: label.to_owned(), value: page.picks.words.clone(), ..Field::default() };
    field(asked, |text| say(PileTap::Named(text)))
}

/// What the layers come to, once they can be read.
fn in_layers(page: &PilePage, sheet: &PileSheet, seen: Seen<'_>) -> Option<String> {
    let sign = seen.speech.sign();
    let figure = |nth| reading::count(page.form.text(nth), sign, PILE_MOST).ok();
    let rest = if page.form.is_empty(2) { Some(0) } else { figure(2) };
    comes_to(layers(figure(1)?, figure(0)?, rest?).ok()?, sheet, seen)
}

/// "53 pieces; with the 30 counted before, 83".
fn comes_to(n: u32, sheet: &PileSheet, seen: Seen<'_>) -> Option<String> {
    let written = common::pieces(n, &seen.speech.count(n));
    Some(with_before(n, sheet, seen)?.map_or(written.clone(), |before| format!("{written}; {before}")))
}

/// What was counted before is added, and the line says so; nothing is said of a pile that is counted for the first time.
fn with_before(n: u32, sheet: &PileSheet, seen: Seen<'_>) -> Option<Option<String>> {
    let before = sheet.tile.taken;
    let all = seen.speech.count(before.checked_add(n)?);
    Some((0 < before).then(|| words::with_before(&seen.speech.count(before), &all)))
}

fn weigh(page: &PilePage, sheet: &PileSheet, seen: Seen<'_>) -> Asked {
    let unit = common::mass_unit(sheet.units);
    let mass = |label: &str| Slot::new(label, unit);
    let singly = page.picks.singly;
    let slots = match singly {
        true => vec![mass(words::THIS_ONE), mass(words::ALL_WEIGHS), mass(words::TARE)],
        false => vec![Slot::whole(words::SAMPLE), mass(words::SAMPLE_WEIGHS), mass(words::ALL_WEIGHS), mass(words::TARE)],
    };
    // What it comes to stands in place of how it is done.
    let comes_to = weighed(page, sheet, seen).unwrap_or_default();
    let how = if singly { words::HOW_SINGLY.to_owned() } else { words::how_to_weigh(0 < sheet.tile.taken) };
    let how = comes_to.is_empty().then(|| el("p", "t14 i2").text(how));
    let segs = vec![Seg::new(words::TOGETHER, !singly), Seg::new(words::ONE_BY_ONE, singly)];
    let above = std::iter::once(even(words::FIRST_PIECES, segs, |nth| say(PileTap::Singly(nth == 1))));
    let singles = if singly { one_by_one(page, unit) } else { vec![] };
    let n = u32::try_from(page.picks.singles.len()).unwrap_or(u32::MAX);
    let so_far = (singly && 0 < n).then(|| el("p", "t14 i2").text(words::singles(&common::pieces(n, &seen.speech.count(n)))));
    let below = so_far.into_iter().chain(how).listed();
    Asked { title: words::BY_WEIGHT, above: above.chain(singles).listed(), slots, below, comes_to }
}

/// The single weights so far, and the key that goes on to the next.
fn one_by_one(page: &PilePage, unit: &str) -> Vec<El<Msg>> {
    let singles = &page.picks.singles;
    let chips = singles.iter().map(|text| Chip::tap(format!("{text} {unit}"))).listed();
    let so_far = (!singles.is_empty()).then(|| flowing("key h48", chips, |nth| say(PileTap::DropOne(nth))));
    let next = key("key soft h48", words::NEXT_ONE, "", say(PileTap::NextOne));
    so_far.into_iter().chain([next]).listed()
}

/// "about 118 pieces, from 109 to 127", and by which spread.
fn weighed(page: &PilePage, sheet: &PileSheet, seen: Seen<'_>) -> Option<Vec<String>> {
    let band = sheet.tile.size.length_to.is_some();
    let spread = if band { Spread::BAND } else { Spread::ONE_SIZE };
    let scale = on_the_scale(page, seen.speech.typing(sheet.units))?;
    let spread = scale.spread(spread);
    let found = scale.weighing().count(spread).ok()?;
    let n = |n: u32| seen.speech.count(n);
    let about = words::about(&common::pieces(found.n, &n(found.n)), &n(found.least), &n(found.most));
    let percent = seen.speech.number(spread.as_decimal().saturating_mul(Decimal::ONE_HUNDRED), 0, 1);
    let before = with_before(found.n, sheet, seen).flatten().map(|before| format!("{before}; ")).unwrap_or_default();
    let spread = scale.singles.map_or_else(|| words::spread(&percent, band), |of| words::spread_found(&percent, &n(of)));
    Some(vec![about, format!("{before}{spread}")])
}

fn moisture(sheet: &PileSheet, seen: Seen<'_>) -> Asked {
    let wet = sheet.dampness.is_some_and(|damp| damp.wet);
    let chips = vec![Chip::choice(words::WET, wet).under(words::WET_UNDER), Chip::choice(words::NOT_WET, false)];
    let keys = flowing("key h56", chips, |nth| say(PileTap::Wet(nth == 0)));
    let last = sheet.dampness.map(|damp| el("p", "t14 i2").text(damp_on(damp, seen)));
    Asked {
        title: words::MOISTURE,
        above: last.into_iter().chain([keys]).listed(),
        slots: vec![Slot::new(words::METER, "%")],
        below: vec![],
        comes_to: vec![],
    }
}

fn again(page: &PilePage) -> Asked {
    let picks = &page.picks;
    let chosen = |reason: &str| !picks.typed && picks.words == reason;
    let chips = words::REASONS.iter().map(|reason| Chip::choice(*reason, chosen(reason)));
    let chips = chips.chain([Chip::choice(words::OTHER_REASON, picks.typed)]).listed();
    let keys = flowing("key h48", chips, |nth| {
        say(words::REASONS.get(nth).map_or(PileTap::Other, |reason| PileTap::Pick(None, (*reason).to_owned())))
    });
    let mut above = vec![keys];
    above.extend(picks.typed.then(|| typed("why-again", words::REASON, page)));
    Asked {
        title: words::AGAIN_BECAUSE,
        above,
        slots: vec![Slot { whole: true, ..Slot::new(words::THERE_ARE, words::PIECES) }],
        below: vec![],
        comes_to: vec![],
    }
}
