//! Why the answer was no: a closed list of facts, no prose. The sentences live with the words of the face.

use crate::quantity::{Count, Currency, Decimal, Grams, Id, Key, Length, Moment, Money, Span};

/// Why a command or a sum was refused. Each carries what it met and the limit it met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// A sum of money beyond 10^9 minor units.
    MoneyOutOfRange { currency: Currency },
    /// Two currencies in one sum.
    CurrenciesMixed { one: Currency, other: Currency },
    /// Letters that are no ISO 4217 code we know.
    CurrencyUnknown { code: String },
    /// A length below the least or above the most a piece may have.
    LengthOutOfRange { met: Length, least: Length, most: Length },
    /// More pieces than one pile may hold.
    TooManyPieces { would_be: u32, most: u32 },
    /// More pieces at once than a job, an offer or a run may hold.
    TooManyAtOnce { would_be: u32, most: u32 },
    /// More pieces left than waiting is reckoned for.
    TooManyWait { left: Count, most: Count },
    /// Fewer pieces there than were asked for.
    NotThatMany { asked: u32, there: u32 },
    /// So many lie there, and of them so many are set apart for jobs.
    SetApart { asked: Count, there: Count, apart: Count },
    /// What was asked for lies in so many jobs, and none says which.
    InJobs { asked: Count, jobs: usize },
    /// So many pieces were rejected, taken or gone since, and so many of them would be left without what is to be taken back.
    PiecesRestOnIt { pieces: Count, left: Count },
    /// The job gave back so many pieces since, and would have had so many.
    GivenBackSince { pieces: Count, left: Count },
    /// A plan in use needs so many of the pieces, and the job would have had so many.
    PlanRestsOnIt { pieces: Count, left: Count },
    /// So many pieces that came free by it were sold, promised or left with a gallery since.
    SoldSince { pieces: Count },
    /// Why the pile of this name refuses, where an act is about several.
    OfPile { pile: String, why: Box<Refusal> },
    /// Taking a job back would leave its wood with nobody: so many pieces it has, or has set apart.
    JobHasWood { pieces: Count },
    /// A stretch of time below nothing or above the most a run may last.
    SpanOutOfRange { met: Span, most: Span },
    /// A job or an operation that takes no time, or more than it may.
    HoursOutOfRange { met: Span, least: Span, most: Span },
    /// A price of nothing or less.
    NoPrice { met: Money },
    /// No smallest coin: it is none, or larger than any.
    CoinOutOfRange { met: Money, least: Money, most: Money },
    /// More old jobs told at once than one act holds.
    TooManyOldJobs { met: usize, most: usize },
    /// A factor between what was thought and what it took that nobody means.
    FactorOutOfRange { met: Decimal, least: Decimal, most: Decimal },
    /// What the command names is not there, or was taken back.
    NotThere,
    /// None were asked for.
    NothingAsked,
    /// The maker was done with this job already.
    JobHasEnded,
    /// A job that goes on can't be reopened.
    JobNotEnded,
    /// A pile that counts has no size yet.
    SizeMissing,
    /// More money than is due.
    MoreThanDue { met: Money, due: Money },
    /// A part of a price above the price.
    MoreThanPrice { met: Money, price: Money },
    /// More kept than was received.
    MoreThanReceived { met: Money, received: Money },
    /// More handed back than had come in beyond what is owed.
    MoreThanOver { met: Money, over: Money },
    /// More came back than was spent.
    MoreThanSpent { met: Money, spent: Money },
    /// More came back, or went back into a can, than was used.
    MoreBackThanUsed { back: Decimal, used: Decimal },
    /// More used of a pack than it holds.
    MoreThanPack { used: Decimal, holds: Decimal },
    /// A guess that more would buy at a fifth less, too flat to say anything.
    GuessTooFlat { met: Decimal, above: Decimal },
    /// At a fifth less so many times as many are more than all who ask.
    MoreThanAllBuy { met: Decimal, most: Decimal },
    /// More people who ask in a week than any piece has.
    TooManyAsk { met: Decimal, most: Decimal },
    /// A distance without a rate: none was set for this currency.
    MileageUnknown { currency: Currency },
    /// Pieces can't be moved from a pile to itself.
    SamePile,
    /// A length band whose high end lies under its low end.
    BandUpsideDown { from: Length, to: Length },
    /// More piles than one haul may have.
    TooManyPiles { most: usize },
    /// A sum that left the range of its type.
    OutOfRange,
    /// Nothing may be divided by nothing: no hours, no volume.
    NothingToShareBy,
    /// Money below nothing where only a plain sum makes sense.
    MoneyBelowNothing { met: Money },
    /// A figure below nothing where none makes sense.
    BelowNothing { met: Decimal },
    /// A share below nothing, or of the whole and more.
    ShareOutOfRange { met: Decimal },
    /// No time to spread a sum over.
    NoHours,
    /// More hours logged to jobs than were worked at all.
    LoggedBeyondAll { logged: Span, all: Span },
    /// Tax on own work and profit together leave no rate that could pay them: s(1 + p) reaches 1.
    RateOutOfReach { tax: Decimal, profit: Decimal },
    /// Of each unit charged nothing is left after tax and fees.
    FeesEatThePrice { tax: Decimal, fee: Decimal },
    /// Stages that do not make up the price.
    StagesDoNotMeet { sum: Decimal },
    /// Parts of a payment that are not what was agreed.
    PartsDoNotMeet { sum: Money, price: Money },
    /// A piece that leaves nothing never covers what was spent ahead.
    NeverCovered { left: Decimal },
    /// No wood goes by that key.
    WoodUnknown { key: String },
    /// A moisture no wood holds.
    MoistureOutOfRange { most: Decimal },
    /// Air colder or hotter than the table of moistures, in degrees Celsius.
    TemperatureOutOfRange { least: Decimal, most: Decimal },
    /// A relative humidity no air has, in per cent.
    HumidityOutOfRange { most: Decimal },
    /// A moisture from or to which nobody published how wood moves, in per cent.
    MovementUnknown { least: Decimal, most: Decimal },
    /// A room whose dampest wood would be drier than its driest.
    RoomUpsideDown { low: Decimal, high: Decimal },
    /// A weight no wood has, in kilograms a cubic metre.
    DensityOutOfRange { least: Decimal, most: Decimal },
    /// A movement for each point that no wood has: none, or above this fraction of the width.
    CoefficientOutOfRange { most: Decimal },
    /// A wood of the maker's own by a key the tables have.
    WoodInTable { key: String },
    /// A new wood by the name of one of the maker's own.
    WoodThere { name: String },
    /// A design by the name of another.
    DesignThere { name: String },
    /// An own wood can't be taken off while so many piles and parts are of it.
    WoodInUse { uses: Count },
    /// A new machine that is in the list already: one of the usual ones by its key, or one the maker named.
    MachineThere { machine: Key, name: Option<String> },
    /// The run has ended already.
    RunHasEnded { run: Id },
    /// The time is in another run of the same person already: no minute is paid twice.
    RunsOverlap { run: Id },
    /// An end that is not after its start.
    EndNotAfterStart { start: Moment, end: Moment },
    /// A helper can't be at a run before it began or after it ended.
    NotInRun { met: Moment, start: Moment, end: Moment },
    /// A break that would begin before its run, or be over after it.
    BreakNotInRun { met: Moment, start: Moment, end: Moment },
    /// A break of a run of which it is not settled yet when it ended.
    EndToSettle { run: Id },
    /// A moment that has not come yet.
    NotYet { met: Moment, now: Moment },
    /// A wait shorter than the least or longer than the most one may last.
    WaitOutOfRange { met: Span, least: Span, most: Span },
    /// The wait was taken off already.
    WaitHasEnded { wait: Id },
    /// Quiet hours that end when they begin.
    QuietHoursEmpty,
    /// Fewer or more days than can be taken, or a date too far off or over.
    DaysOutOfRange { met: i32, least: i32, most: i32 },
    /// More photos than a job may have.
    TooManyPhotos { most: usize },
    /// More rates of sales tax under a name than are kept in one currency.
    TooManyTaxes { most: usize },
    /// A rate of sales tax by the name of another.
    TaxThere { name: String },
    /// A tool that serves for no year, or for more than any does.
    YearsOutOfRange { met: u32, least: u32, most: u32 },
    /// No day of the week is worked.
    NoWorkingDay,
    /// An operation without a name.
    NameMissing,
    /// A name longer than a line holds, in letters.
    NameTooLong { met: usize, most: usize },
    /// A weight that no van, person or scale has.
    WeightOutOfRange { least: Grams, most: Grams },
    /// More people than a van holds.
    TooManyPeople { would_be: Count, most: Count },
    /// More heads at one run than it may have.
    TooManyHeads { would_be: u32, most: u32 },
    /// Who joins a run is at it already.
    HelperThere,
    /// Fewer pieces counted than say anything of a pile's weight.
    SampleTooSmall { met: Count, least: Count },
    /// A counted sample that weighs more than the pile.
    SampleTooHeavy { sample: Grams, pile: Grams },
    /// More pieces measured than the pile holds.
    SampleMoreThanPile { measured: Count, there: Count },
    /// A scale that shows no more than the tare: no wood is on it.
    UnderTare { met: Grams, tare: Grams },
    /// A figure of what is to be planned, below the least or above the most a plan is made for; lengths in the plan's own unit. `of` names a pile or a part.
    PlanOutOfRange { figure: PlanFigure, of: Option<String>, met: i128, least: i128, most: i128 },
    /// Two piles or two parts of one plan by the same name.
    PlanNameTwice { name: String },
    /// A plan that breaks a rule of its own problem: it is not shown.
    PlanBroken,
    /// A pile has another size than a plan was made for.
    PlanOfOtherSizes,
    /// What a plan is made of is left of the one that would go back; the pile by its letter.
    PlanOfLeftOvers { pile: String },
}

/// A figure that says what is to be planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanFigure {
    Unit,
    Piles,
    Parts,
    Pieces,
    Each,
    Sets,
    Length,
    Width,
    Thickness,
    Kerf,
    Trim,
    Allowance,
    Joint,
    Least,
    Keep,
    Rows,
    Stagger,
    Layers,
    Gap,
    Overhang,
    Target,
    Tolerance,
    Density,
}

/// What a command or a sum gives.
pub type Answer<T> = Result<T, Refusal>;
