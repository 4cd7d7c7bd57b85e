//! What is being written down on Jobs: figures by the pad, words, and answers by chips. Nothing is written before it is saved.

mod back;
mod fresh;
mod none;
mod paid;
mod what;

pub use back::{agreement_done, agreement_open, came_ahead, comes_back};
pub use fresh::{follows, is_of_new};
pub use what::{PaidTo, What, of_several};
use what::{brings, priced};

use super::super::App;
use super::super::entry::moisture;
use super::super::form::Form;
use super::super::plan::PutBack;
use super::super::price::far::Far;
use super::super::price::gallery::{FIRST_TERMS, terms_at, usual};
use super::super::price::{ask_today, paid_for};
use super::super::spent_on::{SpentOn, SpentTap};
use super::sheet;
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::fold::{GalleryTerms, OldJob, TaxBy};
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::sale::{Carried, Instead, Paid};
use fivebar_core::quantity::reading::{self, Sign};
use fivebar_core::quantity::{Count, Currency, Day, Decimal, Id, Key, Length, Mass, Money, PILE_MOST, Span, Units, half_up, writing};
use fivebar_core::sheet::job::JobSheet;

/// The key of spending that is of no kind with a name.
const OTHER: &str = "other";

/// Rooms by the moistures of wood in them, in per cent: a dry flat, a heated home, a room heated now and then, one without heating.
/// Our choice, from the standards and trades of the sources.
pub const ROOMS: [(i64, i64); 4] = [(6, 8), (6, 10), (10, 14), (15, 19)];

/// The moistures of a room as typed, dry and damp.
pub fn typed_room(form: &Form, sign: Sign) -> Option<(Decimal, Decimal)> {
    let figure = |nth| moisture(form.text(nth), sign).ok();
    Some((figure(0)?, figure(1)?))
}

/// How a sum of spending comes about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Way {
    #[default]
    Sum,
    /// So many at a price for each.
    Each,
    /// What was used of a pack.
    Share,
    /// A distance driven.
    Drive,
}

/// The answers that are chosen, not typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Picks {
    pub made_for: For,
    pub currency: Currency,
    pub units: Units,
    pub kind: Kind,
    /// The operation belongs to finishing.
    pub finish: bool,
    /// What was spent on; asked first.
    pub spending: Option<Key>,
    pub home: super::homes::AskedHome,
    /// Less than what was agreed, asked about once: what was typed, and what was agreed.
    pub short: Option<(Money, Money)>,
    /// Far from its tags, asked about once: what was typed, and what the tags come to.
    pub far: Option<(Far, Money, Money)>,
    pub way: Way,
    /// A drive was to bring pieces to their buyers, or not; not asked of one piece, since all is of that one.
    pub brings: Option<bool>,
    pub can: super::cans::OfCan,
    /// How many alike is typed, not one of the keys.
    pub other_count: bool,
    pub paid: Option<Paid>,
    pub carried: Carried,
    /// What a sale is taxed with, where it is not as its job is.
    pub tax: Option<TaxBy>,
    pub wood: Option<Key>,
    pub spent_on: SpentOn,
    /// A new job is made from this design.
    pub design: Option<Id>,
    /// What comes back is not made good: its money goes back, and an order that was done came to nothing.
    pub ends: bool,
    /// Money goes back, and the buyer keeps every piece.
    pub they_keep: bool,
    /// The buyer never came.
    pub never_came: bool,
    /// What a gallery keeps.
    pub terms: GalleryTerms,
    /// Which gallery, where it is said.
    pub gallery: Option<Id>,
    /// What lacks of them is not to come: that was all.
    pub is_all: bool,
    /// What became of a piece that is not for sale any more.
    pub instead: Instead,
    /// What one of them cost, where some come back of what was bought at a price for each.
    pub back_at: Option<Decimal>,
    /// More is shown: other counts, other woods, currency and units.
    pub more: bool,
}

/// An answer chosen by a chip.
#[derive(Clone, Debug, PartialEq)]
pub enum Pick {
    MadeFor(For),
    /// The new job is made from this design, or no longer.
    Design(Id),
    Currency(Currency),
    Units(Units),
    Kind(Kind, bool),
    Spending(Key),
    Way(Way),
    /// The drive was to bring pieces to their buyers, or not.
    Brings(bool),
    Can(super::cans::CanTap),
    Paid(Option<Paid>),
    Carried(Carried),
    /// What this sale is taxed with.
    Tax(TaxBy),
    /// With the refund the order came to nothing.
    Ends(bool),
    /// No piece comes back: the buyer keeps it, at less.
    TheyKeep(bool),
    /// The buyer of an agreement never came: nothing of what came in ahead goes back, unless a sum is typed.
    NeverCame(bool),
    /// Which gallery it goes to.
    Gallery(Option<Id>),
    /// The gallery takes its share of the tag with tax.
    WithTax(bool),
    /// The maker sends in the tax of what a gallery sells.
    MakerPays(bool),
    /// What lacks of a gallery's terms is not to come, or is.
    ThatIsAll(bool),
    /// What became of a piece that is not for sale any more.
    Instead(Instead),
    Wood(Option<Key>),
    /// The day something was spent on.
    SpentOn(SpentTap),
    More,
    /// A count by a chip, into the first figure.
    Count(Count),
    /// One of the usual rooms.
    Room(usize),
    /// An operation by its usual name, with its kind; true where it belongs to finishing.
    Operation(String, Kind, bool),
}

/// What is being written down.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub what: What,
    pub form: Form,
    pub words: Vec<String>,
    pub picks: Picks,
    /// It was to be saved without its name.
    pub nameless: bool,
    /// What was asked about before boards of plans go back.
    pub put_back: Option<PutBack>,
}

/// A form begins, with what is known already; none where it is about a job that is not open.
pub fn begin(app: &App, what: What) -> Option<Draft> {
    let (currency, units) = app.begins_with();
    let picks = Picks {
        made_for: For::Spec,
        currency,
        units,
        kind: Kind::Make,
        finish: false,
        spending: None,
        home: super::homes::AskedHome::default(),
        short: None,
        far: None,
        way: Way::default(),
        brings: None,
        can: super::cans::OfCan::of(units),
        other_count: false,
        paid: Some(Paid::Notes),
        carried: Carried::Fetched,
        tax: None,
        wood: None,
        spent_on: SpentOn::default(),
        design: None,
        ends: false,
        they_keep: false,
        never_came: false,
        gallery: None,
        terms: if what == What::Consign { usual(app, None) } else { FIRST_TERMS },
        is_all: false,
        instead: Instead::Yours,
        back_at: None,
        more: false,
    };
    let blank = Draft { what, form: Form::of(0), words: vec![], picks, nameless: false, put_back: None };
    if blank.what == What::New {
        return Some(Draft { form: Form::filled(["1".to_owned()]), words: vec![String::new()], ..blank });
    }
    if app.jobs.open.is_none() {
        return none::begin(app, blank);
    }
    let sheet = sheet(app)?.ok()?;
    let (currency, units) = (sheet.account.currency, sheet.account.units);
    let paid = Some(paid_for(app, sheet.job, paid::of(&blank.what)));
    let picks = Picks { currency, units, paid, can: super::cans::OfCan::of(units), ..blank.picks };
    let sign = app.speech.sign();
    if blank.what == What::Room {
        let [dry, damp] = room_of(app, &sheet).map(|n| writing::decimal(n, sign));
        return Some(Draft { form: Form::filled([dry, damp]), picks, ..blank });
    }
    if let What::OldJob(line) = blank.what {
        let old = app.shelf().workshop().old_jobs.iter().find(|old| old.entry == line).cloned()?;
        return Some(old_job(Draft { picks, ..blank }, &old, Typed { sign, units }));
    }
    let draft = Draft { picks, ..blank };
    match paid::proposed(app, &sheet, &draft) {
        Some(sum) => Some(Draft { form: Form::filled([Typed { sign, units }.sum(Some(sum))]), ..draft }),
        None => Some(filled(draft, &sheet, sign)),
    }
}

/// An old job as it was told; its sum in the currency it was told in.
fn old_job(draft: Draft, old: &OldJob, typed: Typed) -> Draft {
    let hours = |span: Span| writing::decimal(half_up(Decimal::from(span.as_minutes()) / Decimal::from(60), 2), typed.sign);
    let thought = old.thought.map(hours).unwrap_or_default();
    let form = Form::filled([hours(old.span), old.pieces.to_string(), thought, typed.sum(old.sum)]);
    let currency = old.sum.map_or(draft.picks.currency, Money::currency);
    Draft { form, words: vec![old.name.clone()], picks: Picks { currency, ..draft.picks }, ..draft }
}

/// The room of a job, else the workshop's, else a heated home.
pub fn room_of(app: &App, sheet: &JobSheet) -> [Decimal; 2] {
    let (low, high) = sheet.room.or(app.shelf().workshop().wood.room).unwrap_or((Decimal::from(6), Decimal::TEN));
    [low, high]
}

fn filled(draft: Draft, sheet: &JobSheet, sign: Sign) -> Draft {
    let typed = Typed { sign, units: draft.picks.units };
    let words = |n: usize| vec![String::new(); n];
    match &draft.what {
        What::New | What::Room | What::Take { .. } | What::OldJob(_) | What::Pay(_) | What::HandBack(_) => {
            Draft { form: Form::of(1), ..draft }
        }
        What::Name => Draft { form: Form::filled([sheet.sale.of.to_string()]), words: vec![sheet.name.clone()], ..draft },
        What::Part(name) => part(draft.clone(), sheet.parts.iter().find(|part| Some(&part.name) == name.as_ref()), typed),
        What::Plan(name) => plan(draft.clone(), sheet.operations.iter().find(|planned| Some(&planned.op) == name.as_ref())),
        What::OldJobs => super::estimate::blank(draft),
        What::Spend => {
            let picks = Picks { more: true, brings: brings(sheet), ..draft.picks };
            Draft { form: Form::of(3), words: words(1), picks, ..draft }
        }
        What::CameBack(of) => {
            Draft { form: Form::of(2), words: words(1), picks: priced(draft.picks, &sheet.account.costs.lines, *of), ..draft }
        }
        What::Tag => Draft { form: Form::filled([typed.sum(sheet.sale.tag)]), ..draft },
        What::Settle => Draft { form: Form::filled([typed.sum(sheet.account.pricing.settle_set)]), ..draft },
        What::Size => Draft { form: size(sheet, typed), ..draft },
        What::Facts => {
            let said = &sheet.described;
            let words = [&said.wood, &said.finish, &said.care, &said.delivery].map(|word| word.clone().unwrap_or_default());
            Draft { words: words.to_vec(), ..draft }
        }
        What::Sell(id) => sell(draft.clone(), (sheet, *id), typed),
        What::Refund(id) => back::begin(draft.clone(), (sheet, *id), typed),
        What::Cancel(agreed) => {
            let ahead = back::came_ahead(sheet, *agreed);
            Draft { form: ahead.map_or_else(|| Form::of(0), |ahead| Form::filled([typed.sum(Some(ahead))])), ..draft }
        }
        What::Consign => {
            let figures = ["1".into(), typed.sum(sheet.sale.tag), share_of(draft.picks.terms, sign)];
            Draft { form: Form::filled(figures), ..draft }
        }
        What::GalleryPaid(lot) => {
            let there = sheet.selling.lot(*lot).map_or(0, |lot| lot.there());
            Draft { form: Form::filled([there.to_string(), String::new()]), ..draft }
        }
        What::NotForSale => Draft { form: Form::filled(["1".to_owned()]), ..draft },
        What::Lesson => Draft { words: vec![sheet.lesson.clone().unwrap_or_default()], ..draft },
    }
}

/// How figures are written so that they are read back alike.
#[derive(Clone, Copy)]
struct Typed {
    sign: Sign,
    units: Units,
}

impl Typed {
    fn sum(self, sum: Option<Money>) -> String {
        let whole = |sum: Money| {
            if sum.amount().fract().is_zero() { sum.amount().trunc().normalize().to_string() } else { writing::money(sum, self.sign) }
        };
        sum.map(whole).unwrap_or_default()
    }

    fn length(self, length: Option<Length>) -> String {
        let typing = fivebar_core::quantity::reading::Typing { units: self.units, sign: self.sign };
        length.map(|length| writing::length(length, typing)).unwrap_or_default()
    }

    fn grams(self, grams: Option<i64>) -> String {
        let typing = fivebar_core::quantity::reading::Typing { units: self.units, sign: self.sign };
        let shown = |mass: Mass| writing::decimal(writing::shown_mass(mass, self.units), typing.sign);
        grams.map(|grams| shown(Mass::kg(grams as f64 / 1000.0))).unwrap_or_default()
    }
}

fn part(draft: Draft, part: Option<&fivebar_core::ledger::fold::Part>, typed: Typed) -> Draft {
    let Some(part) = part else { return Draft { form: Form::of(4), words: vec![String::new()], ..draft } };
    let [thickness, width, length] = part.size.map(|side| typed.length(Some(side)));
    let picks = Picks { wood: part.wood.clone(), ..draft.picks };
    Draft { form: Form::filled([part.n.to_string(), thickness, width, length]), words: vec![part.name.clone()], picks, ..draft }
}

fn plan(draft: Draft, planned: Option<&fivebar_core::ledger::fold::Operation>) -> Draft {
    let Some(planned) = planned else { return Draft { form: Form::of(2), words: vec![String::new()], ..draft } };
    let minutes = planned.span.map(|span| span.as_minutes().to_string()).unwrap_or_default();
    let pieces = planned.pieces.map(|n| n.to_string()).unwrap_or_default();
    let finish = planned.stage == fivebar_core::ledger::kind::bench::Stage::Finish;
    let picks = Picks { kind: planned.kind, finish, ..draft.picks };
    Draft { form: Form::filled([minutes, pieces]), words: vec![planned.op.clone()], picks, ..draft }
}

fn size(sheet: &JobSheet, typed: Typed) -> Form {
    let said = &sheet.described;
    let [width, depth, height] = [said.width, said.depth, said.height].map(|side| typed.length(side));
    Form::filled([width, depth, height, typed.grams(said.grams)])
}

fn sell(draft: Draft, (sheet, agreed): (&JobSheet, Option<Id>), typed: Typed) -> Draft {
    let agreement = agreed.and_then(|id| sheet.selling.agreement(id));
    let (sum, n) = match agreement {
        Some(agreement) => (agreement.sum.minus(agreement.sold_for).ok(), agreement.n.saturating_sub(agreement.sold)),
        None => (sheet.sale.asked, 1),
    };
    let carried = agreement.and_then(|agreement| agreement.carried).unwrap_or(Carried::Fetched);
    let picks = Picks { carried, ..draft.picks };
    Draft { form: Form::filled([typed.sum(sum), n.to_string()]), picks, ..draft }
}

/// Takes in an answer by a chip.
pub fn pick(app: &mut App, pick: Pick, now: Now) {
    let ahead = back::ahead(app);
    let Some(draft) = &mut app.jobs.draft else { return };
    let picks = &mut draft.picks;
    match pick {
        Pick::MadeFor(made_for) => picks.made_for = made_for,
        Pick::Design(design) => fresh::pick_design(app, design),
        Pick::Currency(currency) => picks.currency = currency,
        Pick::Units(units) => picks.units = units,
        Pick::Kind(kind, finish) => (picks.kind, picks.finish) = (kind, finish),
        // What is of no kind that is named needs its words: the field stays.
        Pick::Spending(key) => {
            (picks.more, picks.spending, picks.home) = (key.as_str() == OTHER, Some(key), super::homes::AskedHome::default());
        }
        Pick::Way(way) => {
            (picks.way, picks.more) = (way, picks.spending.is_none() && way != Way::Drive);
            (picks.can, draft.form) = (super::cans::OfCan::of(picks.units), Form::of(3));
        }
        Pick::Brings(brings) => picks.brings = Some(brings),
        Pick::Can(tap) => super::cans::heard(app, tap),
        Pick::Paid(paid) => paid::pick(app, paid),
        Pick::Carried(carried) => picks.carried = carried,
        Pick::Tax(by) => taxed(app, by),
        Pick::Ends(ends) => goes_along_with(app, |picks| picks.ends = ends),
        Pick::TheyKeep(keep) => back::they_keep(app, keep),
        Pick::Gallery(gallery) => at_gallery(app, gallery),
        Pick::WithTax(with_tax) => picks.terms.with_tax = with_tax,
        Pick::MakerPays(pays) => picks.terms.maker_pays = pays,
        Pick::ThatIsAll(all) => picks.is_all = all,
        Pick::Instead(instead) => picks.instead = instead,
        Pick::NeverCame(never) => {
            picks.never_came = never;
            ahead.into_iter().for_each(|ahead| draft.form.put(0, if never { "0".into() } else { ahead }));
        }
        Pick::Wood(wood) => (picks.wood, picks.more) = (wood, false),
        Pick::SpentOn(tap) => {
            picks.more = false;
            picks.spent_on.heard(tap, now);
        }
        Pick::More => (picks.more, picks.spent_on.asks) = (!picks.more, false),
        Pick::Count(0) => {
            picks.other_count = true;
            draft.form.put(0, String::new());
        }
        Pick::Count(n) => {
            picks.other_count = false;
            draft.form.put(0, n.to_string());
        }
        Pick::Room(nth) => {
            if let Some((low, high)) = ROOMS.get(nth) {
                draft.form.put(0, low.to_string());
                draft.form.put(1, high.to_string());
            }
        }
        Pick::Operation(name, kind, finish) => {
            (picks.kind, picks.finish) = (kind, finish);
            draft.words.iter_mut().take(1).for_each(|first| first.clone_from(&name));
        }
    }
}

/// A gallery is named, and with it its terms of last time; a share that was typed stays, with what else was said.
fn at_gallery(app: &mut App, gallery: Option<Id>) {
    let sign = app.speech.sign();
    let Some(Picks { gallery: was, terms, .. }) = app.jobs.draft.as_ref().map(|draft| draft.picks.clone()) else { return };
    let now = terms_at(app, (was, terms), gallery);
    let Some(draft) = &mut app.jobs.draft else { return };
    draft.picks.gallery = gallery;
    if draft.form.text(2) == share_of(terms, sign) {
        draft.picks.terms = now;
        draft.form.put(2, share_of(now, sign));
    }
}

/// What a gallery keeps, in percent as it is typed.
fn share_of(terms: GalleryTerms, sign: Sign) -> String {
    writing::decimal(terms.share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default().normalize(), sign)
}

/// Another tax for this sale: a sum that stands there as its tag goes along.
fn taxed(app: &mut App, by: TaxBy) {
    let Some(Ok(sheet)) = sheet(app) else { return };
    goes_along_with(app, |picks| picks.tax = Some(by).filter(|by| *by != sheet.sale.tax));
}

/// Another answer: a sum that stands there as it was proposed is the one that is proposed then.
fn goes_along_with(app: &mut App, answer: impl FnOnce(&mut Picks)) {
    let was = as_asked(app);
    if let Some(draft) = &mut app.jobs.draft {
        answer(&mut draft.picks);
    }
    goes_along(app, was);
}

/// The sum of a form as it is for so many pieces, at the ask of today with their tax or by what was agreed; none where it is no such form.
pub fn as_asked(app: &App) -> Option<String> {
    let sheet = sheet(app)?.ok()?;
    let draft = app.jobs.draft.as_ref()?;
    let (sign, units) = (app.speech.sign(), sheet.account.units);
    let typed = Typed { sign, units };
    let several = match draft.what {
        What::Sell(_) => true,
        What::Pay(_) | What::HandBack(_) => return Some(typed.sum(paid::proposed(app, &sheet, draft))),
        What::Refund(id) if !draft.picks.they_keep => of_several(&sheet, id),
        _ => return None,
    };
    let n = if several { reading::count(draft.form.text(1), sign, PILE_MOST).ok()? } else { 1 };
    match draft.what {
        What::Refund(sale) => return Some(typed.sum(back::proposed(app, &sheet, (sale, n.max(1), draft.picks.ends)))),
        What::Sell(Some(agreed)) => {
            let agreement = sheet.selling.agreement(agreed)?;
            return Some(typed.sum(Some(sheet.selling.price_of(agreement, n.max(1)).ok()?)));
        }
        _ => {}
    }
    let by = draft.picks.tax.unwrap_or(sheet.sale.tax);
    let asked = ask_today(app, (sheet.job, n), (Some(by), Paid::Card));
    Some(typed.sum(asked))
}

/// A sum that stood there as it is asked goes along with pieces and tax.
pub fn goes_along(app: &mut App, was: Option<String>) {
    let new = as_asked(app);
    let Some((draft, (was, new))) = app.jobs.draft.as_mut().zip(was.zip(new)) else { return };
    if draft.form.text(0) == was {
        draft.form.put(0, new);
    }
}

/// So many days later, or earlier.
pub fn later(day: Day, by: i32) -> Day {
    let step = if by < 0 { Day::before } else { Day::next };
    (0..by.abs()).fold(day, |day, _| step(day))
}
