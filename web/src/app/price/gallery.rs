//! Pieces at a gallery, heard: left there by its terms, paid for, or given back.

use super::{Done, Over, done, shop};
use crate::app::App;
use crate::app::entry::Typed;
use fivebar_core::ledger::decide::{Command, Now, SaleCommand};
use fivebar_core::ledger::fold::GalleryTerms;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::sale::{ConsignmentPaid, ConsignmentReturned, PiecesConsigned};
use fivebar_core::quantity::{Count, Decimal, Id, Money, reading};
use fivebar_core::sheet::gallery::{AtGallery, at_gallery};

/// What is typed by the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    Tag,
    Share,
}

/// Pieces on their way to a gallery.
#[derive(Clone, Debug, PartialEq)]
pub struct Consign {
    pub job: Id,
    pub free: Count,
    pub n: Count,
    pub tag: Option<Money>,
    pub terms: GalleryTerms,
    pub pad: Option<(Field, Typed)>,
}

/// What a gallery sold, or gives back.
#[derive(Clone, Debug, PartialEq)]
pub struct Back {
    pub job: Id,
    pub n: Count,
    /// What it handed over, where it is not what its terms say.
    pub sum: Option<Money>,
    pub pad: Option<Typed>,
}

/// What can be said of a gallery.
#[derive(Clone, Debug, PartialEq)]
pub enum GalleryTap {
    /// Leave pieces there.
    Leave(Id),
    /// It pays, or gives back.
    Back(Id),
    Pieces(Count),
    Share(Decimal),
    WithTax(bool),
    MakerPays(bool),
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
        GalleryTap::Back(job) => app.price.open(Over::Gallery(Box::new(Back { job, n: 1, sum: None, pad: None }))),
        GalleryTap::Pieces(n) => pieces(app, n),
        GalleryTap::Share(share) => with(app, |consign| consign.terms.share = share),
        GalleryTap::WithTax(with_tax) => with(app, |consign| consign.terms.with_tax = with_tax),
        GalleryTap::MakerPays(maker) => with(app, |consign| consign.terms.maker_pays = maker),
        GalleryTap::Pad(field) => pad(app, field),
        GalleryTap::PadAway => pad_away(app),
        GalleryTap::PadDone => pad_done(app),
        GalleryTap::Consigned => consigned(app, now),
        GalleryTap::Paid => paid(app, now),
        GalleryTap::Returned => returned(app, now),
    }
}

/// What a gallery has of a job.
pub fn there(app: &App, job: Id) -> Option<AtGallery> {
    let shop = shop(app);
    at_gallery(&shop, &shop.job(job).ok()?).ok().flatten()
}

/// What the gallery hands over: as typed, else by its terms.
pub fn expected(app: &App, back: &Back) -> Option<Money> {
    let of_one = there(app, back.job)?.of_one.handed_over;
    let all = of_one.amount().checked_mul(Decimal::from(back.n))?;
    back.sum.or_else(|| Money::book(all, of_one.currency()).ok())
}

/// The terms of last time, else the usual ones of a gallery that keeps 40 % before tax and pays the tax.
fn usual() -> GalleryTerms {
    GalleryTerms { share: Decimal::new(4, 1), with_tax: false, maker_pays: false }
}

fn leave(app: &mut App, id: Id) {
    let shop = shop(app);
    let Ok(job) = shop.job(id) else { return };
    let last = fivebar_core::ledger::fold::jobs(shop.book).find_map(|job| job.selling.consigned.last()?.terms);
    let (free, tag) = (job.free(), job.tag);
    let consign = Consign { job: id, free, n: 1, tag, terms: last.unwrap_or_else(usual), pad: None };
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
        Over::Gallery(back) => (back.n, back.sum) = (n, None),
        _ => {}
    }
}

fn pad(app: &mut App, field: Field) {
    match &mut app.price.over {
        Over::Consign(consign) => consign.pad = Some((field, Typed::default())),
        Over::Gallery(back) => back.pad = Some(Typed::default()),
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
                None => None,
            };
            if taken.is_some() {
                consign.pad = None;
            }
        }
        Over::Gallery(back) => {
            if let Some(sum) = back.pad.as_mut().and_then(|typed| typed.take(money)) {
                (back.sum, back.pad) = (Some(sum), None);
            }
        }
        _ => {}
    }
}

fn consigned(app: &mut App, now: Now) {
    let Over::Consign(consign) = &app.price.over else { return };
    let Some(tag) = consign.tag else { return };
    let (job, n, terms) = (consign.job, consign.n, consign.terms);
    let fact = PiecesConsigned {
        job,
        n,
        tag,
        share: Exact(terms.share),
        with_tax: terms.with_tax.then_some(true),
        maker_pays: terms.maker_pays.then_some(true),
        gallery: None,
        when: None,
    };
    if done(app, &Command::Sale(SaleCommand::Consign(fact)), (job, Done::Consigned(n)), now) {
        app.price.to_list();
    }
}

fn paid(app: &mut App, now: Now) {
    let Over::Gallery(back) = &app.price.over else { return };
    let (job, n) = (back.job, back.n);
    let (Some(sum), Some(there)) = (expected(app, back), there(app, job)) else { return };
    let fact = ConsignmentPaid { job, n, sum, tax: there.tax_of(n, sum), gallery: None, when: None };
    if done(app, &Command::Sale(SaleCommand::NoteConsignmentPaid(fact)), (job, Done::GalleryPaid(sum)), now) {
        app.price.to_list();
    }
}

fn returned(app: &mut App, now: Now) {
    let Over::Gallery(back) = &app.price.over else { return };
    let (job, n) = (back.job, back.n);
    let fact = ConsignmentReturned { job, n, gallery: None, when: None };
    if done(app, &Command::Sale(SaleCommand::NoteConsignmentReturned(fact)), (job, Done::Returned(n)), now) {
        app.price.to_list();
    }
}
