//! The page of one pile, heard: what it is needed for, counting by layers and by weight, measuring, moisture, counting again.

use super::App;
use super::count::Over;
use super::doubt::Side;
use super::entry::moisture;
use super::form::Form;
use super::order::{Feel, Order};
use crate::parts::pad::Press;
use fivebar_core::haul::Want;
use fivebar_core::haul::enough::Each;
use fivebar_core::haul::weighing::Spread;
use fivebar_core::ledger::decide::{Command, HaulCommand, Lying, Now, OnTheScale, PileFacts, StockCommand};
use fivebar_core::quantity::reading::{self, Typing};
use fivebar_core::quantity::{Grams, Id, Length, PILE_MOST};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::pile::{PileSheet, pile};

/// What is being written down of the pile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    Want,
    Layers,
    Weigh,
    Measure,
    Moisture,
    /// Counting again.
    Again,
}

/// The page of a pile, and the form that lies over it.
#[derive(Clone, Debug, PartialEq)]
pub struct PilePage {
    pub pile: Id,
    pub doing: Option<Doing>,
    pub form: Form,
    pub picks: Picks,
    /// The form came straight from the tiles, and leads back there.
    pub from_tiles: bool,
}

/// The answers that are chosen, or are words.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Picks {
    /// The job whose part it is.
    pub job: Option<Id>,
    /// The part's name, or the reason for counting again.
    pub words: String,
    /// The words are typed, none of the chips.
    pub typed: bool,
    /// One part takes pieces; else one piece gives parts.
    pub takes: bool,
    /// It is wanted already, and is changed.
    pub changes: bool,
    /// The first pieces are weighed one by one, and these were, as typed.
    pub singly: bool,
    pub singles: Vec<String>,
}

impl PilePage {
    /// Whether it is asked how pieces and parts go together: pieces as they are are one for one.
    pub fn asks_each(&self) -> bool {
        self.picks.typed || !self.picks.words.is_empty() || (self.picks.changes && self.form.text(1) != "1")
    }
}

/// What can be said on it.
#[derive(Clone, Debug, PartialEq)]
pub enum PileTap {
    Open(Id),
    /// What is needed of a pile, straight from the tiles.
    Need(Id),
    /// Counts a pile again, straight from where it is sorted.
    Recount(Id),
    Do(Doing),
    /// A part that is wanted already, to be changed.
    Want(usize),
    At(usize),
    /// A part of a job, or a reason; nothing for pieces as they are.
    Pick(Option<Id>, String),
    /// What an earlier pile like it did not come to, by its place.
    Still(usize),
    /// By words of one's own.
    Other,
    Named(String),
    Takes(bool),
    Wet(bool),
    /// Pieces go on the scale one by one, or together.
    Singly(bool),
    /// The piece on the scale is written down, and the next one goes on it.
    NextOne,
    /// Takes one out again.
    DropOne(usize),
    /// The mean of what was measured becomes the size.
    UseMean,
    /// The side that is asked about is as it was typed, or it was meant in millimetres.
    IsSo(Length),
    Save,
    /// One step back.
    Leave,
}

impl PilePage {
    pub fn of(pile: Id) -> PilePage {
        PilePage { pile, doing: None, form: Form::default(), picks: Picks::default(), from_tiles: false }
    }

    /// Where leaving leads: from a form to the page, from the page to the piles.
    pub fn leave(&self) -> super::count::Tap {
        if self.doing.is_some() { super::count::Tap::Page(PileTap::Leave) } else { super::count::Tap::Close }
    }
}

/// How many figures a form has.
fn figures(doing: Doing) -> usize {
    match doing {
        Doing::Want => 2,
        Doing::Layers | Doing::Measure => 3,
        Doing::Weigh => 4,
        Doing::Moisture | Doing::Again => 1,
    }
}

/// Takes in what is said on the page.
pub fn heard(app: &mut App, tap: PileTap, now: Now) {
    if let PileTap::Open(pile) = tap {
        app.count.over = Over::Page(Box::new(PilePage::of(pile)));
        return;
    }
    let straight = match tap {
        PileTap::Need(pile) => Some((pile, Doing::Want)),
        PileTap::Recount(pile) => Some((pile, Doing::Again)),
        _ => None,
    };
    if let Some((pile, doing)) = straight {
        let mut page = PilePage::of(pile);
        page.begin(doing);
        page.from_tiles = true;
        app.count.over = Over::Page(Box::new(page));
        return;
    }
    let wants = sheet(app).map(|sheet| sheet.wants).unwrap_or_default();
    let missing = missing(app);
    let Over::Page(page) = &mut app.count.over else { return };
    match tap {
        PileTap::Open(_) | PileTap::Need(_) | PileTap::Recount(_) => {}
        PileTap::Do(doing) => page.begin(doing),
        PileTap::Want(nth) => wants.get(nth).into_iter().for_each(|wanted| page.change(&wanted.want)),
        PileTap::At(nth) => page.form.go(nth),
        PileTap::Pick(job, words) => page.pick(job, words),
        PileTap::Still(nth) => missing.get(nth).into_iter().for_each(|want| {
            page.change(want);
            page.picks.changes = false;
        }),
        PileTap::Other => (page.picks.job, page.picks.words, page.picks.typed) = (None, String::new(), true),
        PileTap::Named(words) => page.picks.words = words,
        PileTap::Takes(takes) if takes == page.picks.takes => {}
        PileTap::Takes(takes) => {
            page.picks.takes = takes;
            page.form.put(1, "1".into());
        }
        PileTap::Wet(wet) => order(app, StockCommand::Moisture { percent: None, wet: Some(wet) }, now),
        PileTap::Singly(singly) => page.weigh_singly(singly),
        PileTap::NextOne => next_one(app),
        PileTap::DropOne(nth) if nth < page.picks.singles.len() => drop(page.picks.singles.remove(nth)),
        PileTap::DropOne(_) => {}
        PileTap::UseMean => use_mean(app, now),
        PileTap::IsSo(side) => {
            page.form.is_so(side, app.speech.sign());
            save(app, now);
        }
        PileTap::Save => save(app, now),
        PileTap::Leave => leave(app),
    }
}

impl PilePage {
    /// A part, or a reason. Where all of it was left there, none is here.
    fn pick(&mut self, job: Option<Id>, words: String) {
        if words == super::super::words::en::pile::LEFT_THERE && self.form.is_empty(0) {
            self.form.put(0, "0".into());
            self.form.go(0);
        }
        (self.picks.job, self.picks.words, self.picks.typed) = (job, words, false);
    }

    fn begin(&mut self, doing: Doing) {
        (self.doing, self.form, self.picks) = (Some(doing), Form::of(figures(doing)), Picks::default());
        if doing == Doing::Want {
            self.form.put(1, "1".into());
        }
    }

    fn change(&mut self, want: &Want) {
        self.begin(Doing::Want);
        let (takes, each) = match want.target().each {
            Each::Takes(n) => (true, n),
            Each::Gives(n) => (false, n),
        };
        self.form = Form::filled([want.wanted.to_string(), each.to_string()]);
        self.picks = Picks {
            job: want.job,
            words: want.part.clone(),
            typed: want.job.is_none() && !want.part.is_empty(),
            takes,
            changes: true,
            ..Picks::default()
        };
    }

    /// The same form with other figures; what all of it weighs, and the tare, stay.
    fn weigh_singly(&mut self, singly: bool) {
        let [all, tare] = if self.picks.singly { [1, 2] } else { [2, 3] }.map(|nth| self.form.text(nth).to_owned());
        self.picks.singly = singly;
        let none = String::new;
        self.form = if singly { Form::filled([none(), all, tare]) } else { Form::filled([none(), none(), all, tare]) };
    }

    pub fn press(&mut self, press: Press, sign: reading::Sign) {
        self.form.press(press, sign);
    }
}

/// The page of the pile in hand.
pub fn sheet(app: &App) -> Option<PileSheet> {
    let Over::Page(page) = &app.count.over else { return None };
    let haul = app.shelf().haul()?;
    let known = app.shelf().known(&haul);
    pile(&haul, &known, (page.pile, app.now.at)).ok()
}

/// What earlier piles like the one in hand were wanted for and did not come to.
pub fn missing(app: &App) -> Vec<Want> {
    let (Over::Page(page), Some(haul)) = (&app.count.over, app.shelf().haul()) else { return vec![] };
    haul.pile(page.pile).map(|pile| app.shelf().known(&haul).missing_for(pile)).unwrap_or_default()
}

fn lying(app: &App) -> Option<Lying> {
    let Over::Page(page) = &app.count.over else { return None };
    app.shelf().haul().map(|haul| Lying { haul: haul.id, pile: page.pile })
}

/// Writes it; what was refused leaves the form as it is.
fn order(app: &mut App, command: StockCommand, now: Now) {
    let Some(at) = lying(app) else { return };
    written(app, &Command::Stock(at, command), now);
}

fn written(app: &mut App, command: &Command, now: Now) {
    if app.order(command, now).is_none() {
        return;
    }
    app.count.last_sorted = None;
    app.orders.push(Order::Feel(Feel::Start));
    leave(app);
}

/// One step back: to the page, or to the tiles where the form came straight from them.
fn leave(app: &mut App) {
    match &mut app.count.over {
        Over::Page(page) if page.from_tiles && page.doing == Some(Doing::Again) => {
            let pile = page.pile;
            super::sorting::open(app, pile);
        }
        Over::Page(page) if !page.from_tiles => page.doing = None,
        over => *over = Over::Nothing,
    }
}

fn save(app: &mut App, now: Now) {
    let (Some(at), speech, units) = (lying(app), app.speech.clone(), super::draft::units(app)) else { return };
    let Over::Page(page) = &mut app.count.over else { return };
    let Some(doing) = page.doing else { return };
    match ordered(page, doing, speech.typing(units)) {
        Some(Ok(command)) => written(app, &Command::Stock(at, command), now),
        Some(Err(refusal)) => app.refuse(refusal),
        None if doing == Doing::Again => again(app, now),
        None => {}
    }
}

/// The order a form makes: nothing while a figure of it is none, a refusal where a figure is past every scale.
fn ordered(page: &mut PilePage, doing: Doing, typing: Typing) -> Option<Answer<StockCommand>> {
    let asks_each = page.asks_each();
    let form = &mut page.form;
    let count = |text: &str| reading::count(text, typing.sign, PILE_MOST);
    Some(Ok(match doing {
        Doing::Want => {
            let wanted = form.take(0, count)?;
            let each = if asks_each { form.maybe(1, count)?.unwrap_or(1).max(1) } else { 1 };
            let (pieces, gives) = if page.picks.takes { (each, 1) } else { (1, each) };
            let part = Some(page.picks.words.trim().to_owned());
            StockCommand::Want { part, job: page.picks.job, wanted, pieces, gives }
        }
        Doing::Layers => {
            let (layers, per) = (form.take(0, count)?, form.take(1, count)?);
            StockCommand::Layers { layers, per, rest: form.maybe(2, count)?.unwrap_or(0) }
        }
        Doing::Weigh => return scale((&page.picks, form), typing).map(|scale| scale.map(StockCommand::Weigh)),
        Doing::Measure => {
            let mut side = |nth, of| form.maybe_side(nth, of, typing);
            let (thickness, width) = (side(0, Side::Thickness)?, side(1, Side::Width)?);
            StockCommand::Measure { thickness, width, length: side(2, Side::Length)? }
        }
        Doing::Moisture => {
            let percent = form.take(0, |text| moisture(text, typing.sign))?;
            StockCommand::Moisture { percent: Some(percent), wet: None }
        }
        Doing::Again => return None,
    }))
}

/// The figures of a weighing.
fn scale((picks, form): (&Picks, &mut Form), typing: Typing) -> Option<Answer<OnTheScale>> {
    if picks.singly {
        return singly((picks, form), typing);
    }
    let sample = form.take(0, |text| reading::count(text, typing.sign, PILE_MOST))?;
    let mut mass = |nth: usize| form.take(nth, |text| reading::mass(text, typing));
    let (sample_weight, shows) = (mass(1)?, mass(2)?);
    let tare = form.maybe(3, |text| reading::mass(text, typing))?.unwrap_or_default();
    let grams = || {
        let (sample_weight, shows, tare) = (Grams::of(sample_weight)?, Grams::of(shows)?, Grams::of(tare)?);
        Ok(OnTheScale { sample, sample_weight, shows, tare, spread: None, singles: None })
    };
    Some(grams())
}

/// The same where the first pieces were weighed one by one; what stands in the first place is the last of them.
fn singly((picks, form): (&Picks, &mut Form), typing: Typing) -> Option<Answer<OnTheScale>> {
    let last = form.maybe(0, |text| reading::mass(text, typing))?;
    let shows = form.take(1, |text| reading::mass(text, typing))?;
    let tare = form.maybe(2, |text| reading::mass(text, typing))?.unwrap_or_default();
    let before = picks.singles.iter().filter_map(|text| reading::mass(text, typing).ok());
    let grams = || {
        let pieces = before.chain(last).map(Grams::of).collect::<Answer<Vec<_>>>()?;
        let n = u32::try_from(pieces.len()).unwrap_or(PILE_MOST);
        let sample_weight = Grams::new(pieces.iter().map(|grams| i64::from(grams.as_grams())).sum())?;
        let spread = Spread::measured(&pieces)?.map(Spread::as_decimal);
        Ok(OnTheScale { sample: n, sample_weight, shows: Grams::of(shows)?, tare: Grams::of(tare)?, spread, singles: Some(n) })
    };
    Some(grams())
}

/// A weight that can't be read stays on the scale, with the reason.
fn next_one(app: &mut App) {
    let typing = app.speech.typing(super::draft::units(app));
    let Over::Page(page) = &mut app.count.over else { return };
    if page.form.take(0, |text| reading::mass(text, typing)).is_some() {
        let text = page.form.text(0).to_owned();
        page.picks.singles.push(text);
        page.form.put(0, String::new());
        page.form.go(0);
    }
}

/// What is typed of a weighing so far, once all of it can be read.
pub fn on_the_scale(page: &PilePage, typing: Typing) -> Option<OnTheScale> {
    scale((&page.picks, &mut page.form.clone()), typing)?.ok()
}

fn again(app: &mut App, now: Now) {
    let (Some(Lying { haul, pile }), sign) = (lying(app), app.speech.sign()) else { return };
    let Over::Page(page) = &mut app.count.over else { return };
    let Some(n) = page.form.take(0, |text| reading::count(text, sign, PILE_MOST)) else { return };
    let why = Some(page.picks.words.trim().to_owned()).filter(|why| !why.is_empty());
    written(app, &Command::Haul(HaulCommand::Recount { haul, pile, n, why }), now);
}

fn use_mean(app: &mut App, now: Now) {
    let (Some(sheet), Some(Lying { haul, pile })) = (sheet(app), lying(app)) else { return };
    let [thickness, width, length] = sheet.sizes.means();
    let facts = PileFacts { thickness, width, length, ..PileFacts::default() };
    written(app, &Command::Haul(HaulCommand::DescribePile { haul, pile, facts }), now);
}

#[cfg(test)]
mod tests;
