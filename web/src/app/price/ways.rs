//! Other ways to a price, heard: what a shop keeps, a gallery's terms, a like piece seen elsewhere, a tag taken as proposed.

use super::gallery::{self, GalleryTap, usual};
use super::{Done, Over, done, shop};
use crate::app::App;
use crate::app::entry::Typed;
use crate::app::jobs::strike;
use crate::app::spent_on::{SpentOn, SpentTap};
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now, SaleCommand};
use fivebar_core::ledger::fold::GalleryTerms;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::sale::{LikePieceSeen, ResaleSet};
use fivebar_core::quantity::{Currency, Decimal, Id, Money, reading};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::ways::{WaysSheet, ways};

/// The other ways of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Ways {
    pub job: Id,
    /// A gallery's terms: those of last time, or as tried here. Nothing of them is written.
    pub terms: GalleryTerms,
    pub pad: Option<(Field, Typed)>,
    /// A like piece being noted.
    pub like: Option<LikeDraft>,
}

/// What is typed by the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// What a shop keeps of its price.
    Keeps,
    /// What a gallery keeps.
    Share,
}

/// A like piece, as far as it was said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LikeDraft {
    pub typed: Typed,
    pub sold: bool,
    pub what: String,
    pub on: SpentOn,
}

/// What can be said of other ways.
#[derive(Clone, Debug, PartialEq)]
pub enum WaysTap {
    Open(Id),
    /// What a shop keeps of its price.
    Keeps(Decimal),
    /// The share, whose tax, and the way to leave pieces there.
    Gallery(GalleryTap),
    Pad(Field),
    PadDone,
    PadAway,
    /// This tag, as proposed.
    Tag(Money),
    Like,
    Sold(bool),
    What(String),
    On(SpentTap),
    SaveLike,
    LikeAway,
    /// A like piece counts no more.
    Strike(Id),
}

/// Takes in what is said of other ways.
pub fn heard(app: &mut App, tap: WaysTap, now: Now) {
    match tap {
        WaysTap::Open(job) => {
            let terms = usual(app, None);
            app.price.open(Over::Ways(Box::new(Ways { job, terms, pad: None, like: None })));
        }
        WaysTap::Keeps(keeps) => {
            keep(app, keeps, now);
        }
        WaysTap::Gallery(tap) => of_gallery(app, tap, now),
        WaysTap::Pad(field) => with(app, |ways| ways.pad = Some((field, Typed::default()))),
        WaysTap::PadAway => with(app, |ways| ways.pad = None),
        WaysTap::PadDone => pad_done(app, now),
        WaysTap::Tag(sum) => {
            if let Some(job) = here(app) {
                done(app, &Command::Money(MoneyCommand::SetTag { job, sum }), (job, Done::Tagged(sum)), now);
            }
        }
        WaysTap::Strike(entry) => strike(app, entry, now),
        like => of_like(app, like, now),
    }
}

/// The page of a job.
///
/// # Errors
/// As the sheet.
pub fn sheet(app: &App, of: &Ways) -> Answer<WaysSheet> {
    ways(&shop(app), of.job, of.terms)
}

fn with(app: &mut App, act: impl FnOnce(&mut Ways)) {
    if let Over::Ways(ways) = &mut app.price.over {
        act(ways);
    }
}

fn here(app: &App) -> Option<Id> {
    if let Over::Ways(ways) = &app.price.over { Some(ways.job) } else { None }
}

fn currency(app: &App) -> Option<Currency> {
    shop(app).job(here(app)?).map(|job| job.currency).ok()
}

/// What shops keep is one figure for all pieces of a currency.
fn keep(app: &mut App, keeps: Decimal, now: Now) -> Option<()> {
    let (job, currency) = (here(app)?, currency(app)?);
    if shop(app).workshop.resale.get(&currency) == Some(&keeps) {
        return Some(());
    }
    let fact = ResaleSet { currency, keeps: Exact(keeps) };
    done(app, &Command::Sale(SaleCommand::SetResale(fact)), (job, Done::Resale), now).then_some(())
}

/// Terms that are tried here; with them one goes on to leave pieces there.
fn of_gallery(app: &mut App, tap: GalleryTap, now: Now) {
    let Over::Ways(ways) = &mut app.price.over else { return };
    match tap {
        GalleryTap::Share(share) => ways.terms.share = share,
        GalleryTap::WithTax(with_tax) => ways.terms.with_tax = with_tax,
        GalleryTap::MakerPays(maker) => ways.terms.maker_pays = maker,
        GalleryTap::Pad(_) => ways.pad = Some((Field::Share, Typed::default())),
        GalleryTap::Leave(job) => {
            let terms = ways.terms;
            gallery::heard(app, GalleryTap::Leave(job), now);
            if let Over::Consign(consign) = &mut app.price.over {
                consign.terms = terms;
            }
        }
        _ => {}
    }
}

fn pad_done(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let Over::Ways(ways) = &mut app.price.over else { return };
    let Some((field, typed)) = &mut ways.pad else { return };
    let Some(share) = typed.take(|text| reading::percent(text, sign)) else { return };
    let share = share.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default();
    let taken = match field {
        Field::Keeps => keep(app, share, now).is_some(),
        Field::Share => {
            ways.terms.share = share;
            true
        }
    };
    // A share that is refused can be typed over.
    if taken {
        with(app, |ways| ways.pad = None);
    }
}

fn of_like(app: &mut App, tap: WaysTap, now: Now) {
    let Over::Ways(ways) = &mut app.price.over else { return };
    if tap == WaysTap::Like {
        ways.like = Some(LikeDraft::default());
    }
    let Some(draft) = &mut ways.like else { return };
    match tap {
        WaysTap::Sold(sold) => draft.sold = sold,
        WaysTap::What(what) => draft.what = what,
        WaysTap::On(tap) => draft.on.heard(tap, now),
        WaysTap::SaveLike => save(app, now),
        WaysTap::LikeAway => ways.like = None,
        _ => {}
    }
}

fn save(app: &mut App, now: Now) {
    let (sign, currency) = (app.speech.sign(), currency(app));
    let (Over::Ways(ways), Some(currency)) = (&mut app.price.over, currency) else { return };
    let job = ways.job;
    let Some(draft) = &mut ways.like else { return };
    let Some(sum) = draft.typed.take(|text| reading::money(text, currency, sign)) else { return };
    let what = Some(draft.what.trim().to_owned()).filter(|what| !what.is_empty());
    let fact = LikePieceSeen { job, sum, sold: draft.sold.then_some(true), what, when: draft.on.when(now) };
    if done(app, &Command::Sale(SaleCommand::NoteLike(fact)), (job, Done::LikeSeen(sum)), now) {
        with(app, |ways| ways.like = None);
    }
}
