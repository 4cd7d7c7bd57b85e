//! Pieces at a gallery, heard: left there by its terms, paid for, or given back.

use super::{Done, Over, done, shop};
use crate::app::App;
use crate::app::entry::Typed;
use fivebar_core::ledger::decide::{Command, Now, SaleCommand};
use fivebar_core::ledger::fold::{GalleryTerms, Job};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::sale::{ConsignmentPaid, ConsignmentReturned, PiecesConsigned};
use fivebar_core::quantity::{Count, Decimal, Id, Money, reading};
use fivebar_core::sheet::gallery::{AtGallery, at_galleries};

/// What is typed by the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    Tag,
    Share,
    /// What the buyers handed over, where it was not the tags.
    SoldFor,
    /// What the gallery handed over.
    Sum,
}

/// Pieces on their way to a gallery.
#[derive(Clone, Debug, PartialEq)]
pub struct Consign {
    pub job: Id,
    pub free: Count,
    pub n: Count,
    pub tag: Option<Money>,
    pub terms: GalleryTerms,
    /// Which gallery, where it is said.
    pub gallery: Option<Id>,
    pub pad: Option<(Field, Typed)>,
}

/// What a gallery sold, or gives back.
#[derive(Clone, Debug, PartialEq)]
pub struct Back {
    pub job: Id,
    /// The consignment they are of.
    pub lot: Id,
    pub n: Count,
    /// What the buyers handed over, where it was not the tags.
    pub sold_for: Option<Money>,
    /// What it handed over, where it is not what its terms say.
    pub sum: Option<Money>,
    /// What lacks of its terms is not to come: that was all.
    pub is_all: bool,
    pub pad: Option<(Field, Typed)>,
}

/// What can be said of a gallery.
#[derive(Clone, Debug, PartialEq)]
pub enum GalleryTap {
    /// Leave pieces there.
    Leave(Id),
    /// It pays, or gives back, of a consignment.
    Back(Id, Id),
    /// Which gallery.
    At(Option<Id>),
    Pieces(Count),
    Share(Decimal),
    WithTax(bool),
    MakerPays(bool),
    /// What lacks of its terms is not to come, or is.
    ThatIsAll(bool),
    Pad(Field),
    PadDone,
    PadAway,
    Consigned,
    Paid,
    Returned,
}

/// Takes in what is said of a gallery.
pub fn heard(app: &mut App, tap: GalleryTap, now: Now) {
    match tap {
        GalleryTap::Leave(job) => leave(app, job),
        GalleryTap::Back(job, lot) => {
            app.price.open(Over::Gallery(Box::new(Back { job, lot, n: 1, sold_for: None, sum: None, is_all: false, pad: None })));
        }
        GalleryTap::At(gallery) => at(app, gallery),
        GalleryTap::Pieces(n) => pieces(app, n),
        GalleryTap::Share(share) => with(app, |consign| consign.terms.share = share),
        GalleryTap::WithTax(with_tax) => with(app, |consign| consign.terms.with_tax = with_tax),
        GalleryTap::MakerPays(maker) => with(app, |consign| consign.terms.maker_pays = maker),
        GalleryTap::ThatIsAll(all) => {
            if let Over::Gallery(back) = &mut app.price.over {
                back.is_all = all;
            }
        }
        GalleryTap::Pad(field) => pad(app, field),
        GalleryTap::PadAway => pad_away(app),
        GalleryTap::PadDone => pad_done(app),
        GalleryTap::Consigned => consigned(app, now),
        GalleryTap::Paid => paid(app, now),
        GalleryTap::Returned => returned(app, now),
    }
}

/// What galleries have of a job, by consignment.
pub fn lots(app: &App, job: Id) -> Vec<AtGallery> {
    let shop = shop(app);
    shop.job(job).and_then(|job| at_galleries(&shop, &job)).unwrap_or_default()
}

/// What a gallery has of a consignment.
pub fn there(app: &App, (job, lot): (Id, Id)) -> Option<AtGallery> {
    lots(app, job).into_iter().find(|there| there.lot == lot)
}

/// Galleries with their names.
pub fn known(app: &App) -> Vec<(Id, String)> {
    let shelf = app.shelf();
    let people = shelf.workshop().people.clone().into_iter().filter(|person| person.role == Role::Gallery);
    people.filter_map(|person| Some((person.id, shelf.name(person.id)?.clone()))).collect()
}

/// What the gallery hands over: as typed, else by its terms.
pub fn expected(app: &App, back: &Back) -> Option<Money> {
    back.sum.or_else(|| there(app, (back.job, back.lot))?.expected(back.n, back.sold_for).ok())
}

/// What its sum lacks of its terms.
pub fn lacks(app: &App, back: &Back) -> Option<Money> {
    there(app, (back.job, back.lot))?.lacks(back.n, expected(app, back)?, back.sold_for)
}

/// What a gallery that has a consignment still owes of the job.
pub fn owes(app: &App, job: Id, gallery: Option<Id>) -> Option<Money> {
    let job = shop(app).job(job).ok()?;
    let dues = job.selling.gallery_dues(job.currency).ok()?.into_iter().filter(|due| due.gallery == gallery);
    Money::sum(job.currency, dues.map(|due| due.lacks)).ok().filter(|due| !due.is_zero())
}

/// The usual terms: common practice.
pub const FIRST_TERMS: GalleryTerms = GalleryTerms { share: Decimal::from_parts(4, 0, 0, false, 1), with_tax: false, maker_pays: false };

/// The terms of last time, at a gallery where one is said; else the usual ones of a gallery that keeps 40 % before tax and pays the tax.
pub fn usual(app: &App, gallery: Option<Id>) -> GalleryTerms {
    let of = |job: Job| job.selling.consigned.into_iter().rev().find(|given| gallery.is_none() || given.gallery == gallery)?.terms;
    let last = fivebar_core::ledger::fold::jobs(shop(app).book).find_map(of);
    last.unwrap_or(FIRST_TERMS)
}

/// Terms once a gallery is said: where they stand as they were proposed, those of its last time, else as the maker said them.
pub fn terms_at(app: &App, (was, terms): (Option<Id>, GalleryTerms), gallery: Option<Id>) -> GalleryTerms {
    if terms == usual(app, was) { usual(app, gallery) } else { terms }
}

/// A gallery is said, and with it its terms of last time; said again, it is none.
fn at(app: &mut App, gallery: Option<Id>) {
    let Over::Consign(consign) = &app.price.over else { return };
    let terms = terms_at(app, (consign.gallery, consign.terms), gallery);
    with(app, |consign| (consign.gallery, consign.terms) = (gallery, terms));
}

fn leave(app: &mut App, id: Id) {
    let shop = shop(app);
    let Ok(job) = shop.job(id) else { return };
    let (free, tag) = (job.free(), job.tag);
    let consign = Consign { job: id, free, n: 1, tag, terms: usual(app, None), gallery: None, pad: None };
    app.price.open(Over::Consign(Box::new(consign)));
}

fn with(app: &mut App, act: impl FnOnce(&mut Consign)) {
    if let Over::Consign(consign) = &mut app.price.over {
        act(consign);
    }
}

fn pieces(app: &mut App, n: Count) {
    match &mut app.price.over {
        Over::Consign(consign) => consign.n = n,
        Over::Gallery(back) => (back.n, back.sum, back.sold_for) = (n, None, None),
        _ => {}
    }
}

fn pad(app: &mut App, field: Field) {
    match &mut app.price.over {
        Over::Consign(consign) => consign.pad = Some((field, Typed::default())),
        Over::Gallery(back) => back.pad = Some((field, Typed::default())),
        _ => {}
    }
}

fn pad_away(app: &mut App) {
    match &mut app.price.over {
        Over::Consign(consign) => consign.pad = None,
        Over::Gallery(back) => back.pad = None,
        _ => {}
    }
}

fn pad_done(app: &mut App) {
    let sign = app.speech.sign();
    let job = match &app.price.over {
        Over::Consign(consign) => consign.job,
        Over::Gallery(back) => back.job,
        _ => return,
    };
    let Ok(currency) = shop(app).job(job).map(|job| job.currency) else { return };
    let money = |text: &str| reading::money(text, currency, sign);
    match &mut app.price.over {
        Over::Consign(consign) => {
            let taken = match &mut consign.pad {
                Some((Field::Tag, typed)) => typed.take(money).map(|sum| consign.tag = Some(sum)),
                Some((Field::Share, typed)) => typed.take(|text| reading::percent(text, sign)).map(|share| {
                    consign.terms.share = share.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default();
                }),
                _ => None,
            };
            if taken.is_some() {
                consign.pad = None;
            }
        }
        Over::Gallery(back) => {
            let Some((field, typed)) = &mut back.pad else { return };
            let Some(sum) = typed.take(money) else { return };
            // What the buyers paid says anew what the gallery hands over.
            (back.sum, back.sold_for) = if *field == Field::SoldFor { (None, Some(sum)) } else { (Some(sum), back.sold_for) };
            back.pad = None;
        }
        _ => {}
    }
}

fn consigned(app: &mut App, now: Now) {
    let Over::Consign(consign) = &app.price.over else { return };
    let Some(tag) = consign.tag else { return };
    let (job, n, terms, gallery) = (consign.job, consign.n, consign.terms, consign.gallery);
    let fact = PiecesConsigned {
        job,
        n,
        tag,
        share: Exact(terms.share),
        with_tax: terms.with_tax.then_some(true),
        maker_pays: terms.maker_pays.then_some(true),
        gallery,
        when: None,
    };
    if done(app, &Command::Sale(SaleCommand::Consign(fact)), (job, Done::Consigned(n)), now) {
        app.price.to_list();
    }
}

fn paid(app: &mut App, now: Now) {
    let Over::Gallery(back) = &app.price.over else { return };
    let (job, n, sold_for) = (back.job, back.n, back.sold_for);
    let (Some(sum), Some(there)) = (expected(app, back), there(app, (job, back.lot))) else { return };
    let due = lacks(app, back).filter(|_| !back.is_all);
    let Some(owed) = due.map_or(Some(sum), |due| sum.plus(due).ok()) else { return };
    let (tax, gallery, lot) = (there.tax_of(n, owed, sold_for), there.gallery, Some(there.lot));
    let fact = ConsignmentPaid { job, n, sum, tax, gallery, when: None, lot, sold_for, rate: None, side: None, due };
    if done(app, &Command::Sale(SaleCommand::NoteConsignmentPaid(fact)), (job, Done::GalleryPaid(sum)), now) {
        app.price.to_list();
    }
}

fn returned(app: &mut App, now: Now) {
    let Over::Gallery(back) = &app.price.over else { return };
    let (job, n, lot) = (back.job, back.n, back.lot);
    let gallery = there(app, (job, lot)).and_then(|there| there.gallery);
    let fact = ConsignmentReturned { job, n, gallery, when: None, lot: Some(lot) };
    if done(app, &Command::Sale(SaleCommand::NoteConsignmentReturned(fact)), (job, Done::Returned(n)), now) {
        app.price.to_list();
    }
}
