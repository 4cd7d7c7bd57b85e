//! The undo bar of Jobs: it names what the last act was.

use crate::app::{App, Common, Msg};
use crate::parts::undo::{Undo, alone};
use crate::view::El;
use crate::words::en::{common, job as words};
use fivebar_core::ledger::Fact;

/// The bar, after an act of this tab that was about a job.
pub fn bar(app: &App) -> Option<El<Msg>> {
    let shelf = app.shelf();
    if let Some(act) = shelf.taken_back {
        let about = named(app, act)?;
        let bar = Undo { words: common::PUT_BACK.into(), under: about.into() };
        return Some(alone(bar, Msg::Common(Common::PutBack)));
    }
    let about = named(app, shelf.last_act?)?;
    Some(alone(Undo { words: words::undone(about), under: String::new() }, Msg::Common(Common::TakeBack)))
}

/// What an act was, by its first entry; none where it was not about a job.
fn named(app: &App, act: fivebar_core::quantity::Id) -> Option<&'static str> {
    let book = &app.shelf().book;
    let (entry, _) = book.entry(*book.act(act).first()?)?;
    Some(match &entry.fact {
        Fact::JobBegan(_) => words::U_JOB,
        Fact::PiecesTaken(_) => words::U_PIECES,
        Fact::PiecesFreed(_) => words::U_FREED,
        Fact::PartPlanned(_) => words::U_PART,
        Fact::OperationPlanned(_) | Fact::CostPlanned(_) => words::U_PLAN,
        Fact::MoneySpent(f) if f.job.is_some() => words::U_SPENDING,
        Fact::DistanceDriven(f) if f.job.is_some() => words::U_DRIVE,
        Fact::TagSet(_) => words::U_TAG,
        Fact::SettleSet(_) => words::U_SETTLE,
        Fact::JobDescribed(_) => words::U_FACTS,
        Fact::PriceAgreed(_) => words::U_AGREED,
        Fact::AgreementCancelled(_) => words::U_CANCELLED,
        Fact::PieceSold(_) => words::U_SALE,
        Fact::PaymentReceived(_) => words::U_PAYMENT,
        Fact::PiecesConsigned(_) | Fact::ConsignmentPaid(_) => words::U_GALLERY,
        Fact::JobEnded(_) => words::U_ENDED,
        Fact::JobReopened(_) => words::U_REOPENED,
        Fact::JobMarked(_) => words::U_TYPICAL,
        Fact::LessonWritten(_) => words::U_LESSON,
        _ => return None,
    })
}
