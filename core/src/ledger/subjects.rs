//! What an entry is about: its haul, its job, the bench, the workshop.

use super::entry::{Entry, Fact};
use crate::quantity::Id;

/// What entries are about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    Haul(Id),
    Job(Id),
    /// Every run there is: a person can be at one bench only.
    Bench,
    /// Rate, till, people, workshop costs.
    Workshop,
}

/// What an entry is about: at most three subjects. A strike is about nothing of its own.
pub fn subjects(entry: &Entry) -> [Option<Subject>; 3] {
    subjects_of(entry.id, &entry.fact)
}

/// What a fact is about, in an entry of this name.
pub(super) fn subjects_of(id: Id, fact: &Fact) -> [Option<Subject>; 3] {
    use Subject::{Bench, Haul, Job, Workshop};
    match fact {
        Fact::HaulBegan(_) => [Some(Haul(id)), None, None],
        Fact::PiecesTaken(f) => [Some(Haul(f.haul)), Some(Job(f.job)), None],
        Fact::PiecesFreed(f) => [Some(Haul(f.haul)), Some(Job(f.job)), None],
        Fact::PiecesLeft(f) => [Some(Haul(f.haul)), Some(Job(f.job)), None],
        Fact::RunStarted(f) => [Some(Bench), f.job.map(Job), f.haul.map(Haul)],
        Fact::RunRecalled(f) => [Some(Bench), f.job.map(Job), f.haul.map(Haul)],
        Fact::RunMoved(f) => [Some(Bench), f.job.map(Job), f.haul.map(Haul)],
        Fact::RunStopped(_)
        | Fact::RunMended(_)
        | Fact::RunRenamed(_)
        | Fact::PiecesDone(_)
        | Fact::HelperJoined(_)
        | Fact::HelperLeft(_)
        | Fact::HelperRecalled(_)
        | Fact::HelperMended(_) => [Some(Bench), None, None],
        Fact::WaitEnded(_)
        | Fact::WaitMended(_)
        | Fact::OperationWaitSet(_)
        | Fact::UsualWaitSet(_)
        | Fact::WarmthSet(_)
        | Fact::QuietHoursSet(_)
        | Fact::OperationLoudSet(_) => [Some(Bench), None, None],
        Fact::WaitBegan(f) => [Some(Bench), f.job.map(Job), None],
        Fact::BatchPlanned(f) => [Some(Bench), Some(Job(f.job)), None],
        // For how many pieces it is.
        Fact::OperationPlanned(f) => [Some(Bench), Some(Job(f.job)), None],
        // Whether its runs are history.
        Fact::JobMarked(f) => [Some(Bench), Some(Job(f.job)), None],
        Fact::JobBegan(_) => [Some(Job(id)), None, None],
        Fact::MoneySpent(f) => {
            let [first, second, _] = spent_on(f.job, f.haul);
            // A can is the workshop's, whoever uses of it.
            [first, second, f.can.filter(|_| first != Some(Workshop)).map(|_| Workshop)]
        }
        Fact::DistanceDriven(f) => spent_on(f.job, f.haul),
        Fact::PhotoTaken(f) => [Some(Workshop), f.job.map(Job), f.haul.map(Haul)],
        Fact::DesignKept(f) => [Some(Workshop), f.job.map(Job), None],
        Fact::PiecesSought(f) => [Some(Workshop), Some(Job(f.job)), None],
        Fact::RoomRangeSet(f) => [Some(f.job.map_or(Workshop, Job)), None, None],
        Fact::Struck(_) | Fact::Restored(_) => [None, None, None],
        fact => [of_haul(fact).map(Haul).or_else(|| of_job(fact).map(Job)).or(Some(Workshop)), None, None],
    }
}

/// The haul of a fact that is about that haul alone.
fn of_haul(fact: &Fact) -> Option<Id> {
    Some(match fact {
        Fact::HaulDescribed(f) => f.haul,
        Fact::TripBegan(f) => f.haul,
        Fact::TripStepped(f) => f.haul,
        Fact::TripDescribed(f) => f.haul,
        Fact::PileAdded(f) => f.haul,
        Fact::PileDescribed(f) => f.haul,
        Fact::PiecesCounted(f) => f.haul,
        Fact::PiecesMoved(f) => f.haul,
        Fact::PiecesRecounted(f) => f.haul,
        Fact::PiecesSorted(f) => f.haul,
        Fact::PiecesRejected(f) => f.haul,
        Fact::RejectsReturned(f) => f.haul,
        Fact::PilePiecesWeighed(f) => f.haul,
        Fact::PileLayersCounted(f) => f.haul,
        Fact::PieceMeasured(f) => f.haul,
        Fact::EnoughSet(f) => f.haul,
        Fact::MoistureRead(f) => f.haul,
        Fact::PileCounted(f) => f.haul,
        Fact::PilePlaced(f) => f.haul,
        Fact::PiecesReserved(f) => f.haul,
        Fact::ReservationFreed(f) => f.haul,
        Fact::LeftoversGone(f) => f.haul,
        Fact::CountMended(f) => f.haul,
        Fact::PileSuits(f) => f.haul,
        _ => return None,
    })
}

/// The job of a fact that is about that job alone.
fn of_job(fact: &Fact) -> Option<Id> {
    Some(match fact {
        Fact::JobDescribed(f) => f.job,
        Fact::PartPlanned(f) => f.job,
        Fact::CostPlanned(f) => f.job,
        Fact::JobEnded(f) => f.job,
        Fact::JobReopened(f) => f.job,
        Fact::JobMarked(f) => f.job,
        Fact::LessonWritten(f) => f.job,
        Fact::JobTaxSet(f) => f.job,
        Fact::TagSet(f) => f.job,
        Fact::SettleSet(f) => f.job,
        Fact::OfferHeard(f) => f.job,
        Fact::PriceAgreed(f) => f.job,
        Fact::PaymentPlanned(f) => f.job,
        Fact::AgreementCancelled(f) => f.job,
        Fact::PieceSold(f) => f.job,
        Fact::PaymentReceived(f) => f.job,
        Fact::PiecesConsigned(f) => f.job,
        Fact::ConsignmentPaid(f) => f.job,
        Fact::ConsignmentRestPaid(f) => f.job,
        Fact::ConsignmentRestGivenUp(f) => f.job,
        Fact::PiecesNotForSale(f) => f.job,
        Fact::ConsignmentReturned(f) => f.job,
        Fact::SaleReversed(f) => f.job,
        Fact::PiecesBroughtBack(f) => f.job,
        Fact::MoneyHandedBack(f) => f.job,
        Fact::PieceAskedFor(f) => f.job,
        Fact::SellingGuessed(f) => f.job,
        Fact::LikePieceSeen(f) => f.job,
        Fact::PlanKept(f) => f.job,
        Fact::PlanUsed(f) => f.job,
        Fact::DesignUsed(f) => f.job,
        Fact::EstimateMade(f) => f.job,
        Fact::WholePlanned(f) => f.job,
        Fact::FactorSet(f) => f.job,
        Fact::DeadlineSet(f) => f.job,
        Fact::QuoteGiven(f) => f.job,
        _ => return None,
    })
}

/// What is spent on no job and no haul is the workshop's.
fn spent_on(job: Option<Id>, haul: Option<Id>) -> [Option<Subject>; 3] {
    match (job, haul) {
        (None, None) => [Some(Subject::Workshop), None, None],
        (job, haul) => [job.map(Subject::Job), haul.map(Subject::Haul), None],
    }
}
