//! An entry: one fact, with its name, its stamp, and the wall clock and place it was written at.

use super::kind;
use super::line::{Member, Tree};
use super::stamp::{Clock, Stamp};
use crate::quantity::{Id, Moment, Offset, Span, Wall};

/// One entry of the ledger. It is never edited.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    pub id: Id,
    pub stamp: Stamp,
    /// The wall clock when it was written, and the offset of the place.
    pub wall: Wall,
    /// The act it belongs to, when that has several entries.
    pub act: Option<Id>,
    pub fact: Fact,
}

impl Entry {
    /// How far the stamp stands above the wall clock: a clock was set back, or the entry rests on one that a faster clock stamped.
    pub fn lifted(&self) -> Span {
        self.wall.at.until(self.stamp.0)
    }

    /// Its stamp stands further above the wall clock than bringing a copy in ever lifts it: the clocks are worth a look.
    pub fn is_for_review(&self) -> bool {
        Clock::LIFT_MOST < self.lifted()
    }

    pub fn at(&self) -> Moment {
        self.wall.at
    }

    pub fn offset(&self) -> Offset {
        self.wall.offset
    }

    /// When it was, as the clock of the place showed it where it was written: as it was said, else as it was written.
    pub fn when(&self, said: Option<Moment>) -> Wall {
        Wall::new(said.unwrap_or(self.at()), self.offset())
    }
}

/// Lists the kinds once: the enum of facts, their names, and the reading and writing of each.
macro_rules! facts {
    ($($room:ident: $($name:ident)+;)+) => {
        /// Everything that can have happened.
        #[derive(Clone, Debug, PartialEq)]
        pub enum Fact {
            $($($name(kind::$room::$name),)+)+
        }

        impl Fact {
            /// The kind as it stands in a line.
            pub fn kind(&self) -> &'static str {
                match self { $($(Fact::$name(_) => stringify!($name),)+)+ }
            }

            /// Every kind of this version.
            pub const KINDS: &'static [&'static str] = &[$($(stringify!($name),)+)+];

            /// Reads the members of a kind: `None` for a kind of a newer version, `Some(None)` for members that do not hold.
            pub(super) fn read(kind: &str, members: &Tree<'_>) -> Option<Option<Fact>> {
                match kind {
                    $($(stringify!($name) => Some(Member::read(members).map(Fact::$name)),)+)+
                    _ => None,
                }
            }

            pub(super) fn members(&self) -> Tree<'_> {
                match self { $($(Fact::$name(members) => members.write(),)+)+ }
            }
        }

        $($(impl From<kind::$room::$name> for Fact {
            fn from(members: kind::$room::$name) -> Fact {
                Fact::$name(members)
            }
        })+)+
    };
}

facts! {
    haul: HaulBegan HaulDescribed TripBegan TripStepped TripDescribed PileAdded PileDescribed PiecesCounted PiecesMoved PiecesRecounted
        PiecesSorted PiecesRejected RejectsReturned PiecesTaken PiecesFreed PiecesLeft;
    stock: PilePiecesWeighed PileLayersCounted PieceMeasured EnoughSet MoistureRead PileCounted PilePlaced PiecesReserved ReservationFreed
        LeftoversGone CountMended PiecesSought PileSuits;
    wood: SpeciesAdded MachineMinimumSet AirRead RoomRangeSet VanSet TimberYardSet;
    plan: PlanKept PlanUsed SawSet DesignKept DesignUsed;
    bench: RunStarted RunStopped RunMended RunRecalled PiecesDone BatchPlanned HelperJoined HelperLeft RunMoved RunRenamed
        HelperRecalled HelperMended;
    estimate: OldJobTold EstimateMade WholePlanned FactorSet;
    dates: WorkdaysSet DayOffSet DeadlineSet QuoteGiven;
    wait: WaitBegan WaitEnded WaitMended OperationWaitSet UsualWaitSet WarmthSet QuietHoursSet OperationLoudSet;
    job: JobBegan JobDescribed PartPlanned OperationPlanned CostPlanned JobEnded JobReopened JobMarked LessonWritten;
    money: MoneySpent PackOpened PackEmptied CostHomed ToolAdded ToolSold DistanceDriven RateSet TillSet TaxNamed TaxDropped JobTaxSet
        BoardPriceSet TagSet SettleSet;
    sale: OfferHeard PriceAgreed PaymentPlanned AgreementCancelled PieceSold PaymentReceived PiecesConsigned ConsignmentPaid ConsignmentReturned SaleReversed
        ConsignmentRestPaid ConsignmentRestGivenUp PiecesNotForSale PiecesBroughtBack MoneyHandedBack PieceAskedFor SellingGuessed LikePieceSeen ResaleSet;
    book: WorkshopSet PersonAdded Forgotten CopyKept PhotoTaken PhotoRemoved Struck Restored;
}
