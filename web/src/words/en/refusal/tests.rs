//! Every code that can be said has its sentence, word for word. A code without a row does not pass.

mod trouble;

use super::*;
use crate::app::news::{NotRead, Trouble};
use crate::words::Plain;
use crate::words::en::copies;
use fivebar_core::ledger::line::document::DocumentTrouble;
use fivebar_core::quantity::reading::{Misread, Quantity};
use fivebar_core::quantity::{Currency, Grams, Id, Key, Moment, Span};
use fivebar_core::refusal::PlanFigure;

/// The codes of a closed list. A new one does not compile before it is listed here, and does not pass before it has a row.
macro_rules! codes {
    ($name:ident, $code:ident, $kind:ident: $($variant:ident)+) => {
        const $name: &[&str] = &[$(stringify!($variant)),+];
        fn $code(one: &$kind) -> &'static str {
            match one {
                $($kind::$variant { .. } => stringify!($variant)),+
            }
        }
    };
}

codes!(REFUSALS, refusal_code, Refusal: MoneyOutOfRange CurrenciesMixed CurrencyUnknown LengthOutOfRange TooManyPieces TooManyAtOnce NotThatMany SetApart InJobs PiecesRestOnIt GivenBackSince PlanRestsOnIt SoldSince OfPile JobHasWood SpanOutOfRange HoursOutOfRange NoPrice CoinOutOfRange TooManyOldJobs FactorOutOfRange NotThere NothingAsked JobHasEnded JobNotEnded SizeMissing MoreThanDue MoreThanPrice MoreThanReceived MoreThanOver MoreThanSpent MoreBackThanUsed MoreThanPack GuessTooFlat MoreThanAllBuy TooManyAsk TooManyWait YearsOutOfRange MileageUnknown SamePile BandUpsideDown TooManyPiles OutOfRange NothingToShareBy MoneyBelowNothing BelowNothing ShareOutOfRange NoHours LoggedBeyondAll RateOutOfReach FeesEatThePrice StagesDoNotMeet PartsDoNotMeet NeverCovered WoodUnknown MoistureOutOfRange RunHasEnded RunsOverlap WaitOutOfRange WaitHasEnded QuietHoursEmpty DaysOutOfRange NoWorkingDay EndNotAfterStart NotInRun BreakNotInRun EndToSettle NotYet NameMissing NameTooLong TooManyHeads HelperThere WeightOutOfRange TooManyPeople SampleTooSmall SampleTooHeavy SampleMoreThanPile UnderTare TemperatureOutOfRange HumidityOutOfRange MovementUnknown RoomUpsideDown DensityOutOfRange CoefficientOutOfRange WoodInTable WoodThere DesignThere TaxThere TooManyTaxes WoodInUse MachineThere PlanOutOfRange PlanNameTwice PlanBroken PlanOfOtherSizes PlanOfLeftOvers TooManyPhotos);
codes!(MISREADS, misread_code, Misread: Empty TooLong NotAClock NotANumber UnknownUnit Negative Ambiguous TooFine Denominator OutOfRange NotWhole);
codes!(TROUBLES, trouble_code, Trouble: Full Known Newer NoStore Blocked Lost Aborted Stopped);
codes!(DOCUMENTS, document_code, DocumentTrouble: NotJson NotACopy CutShort Newer TooLarge TooMany Altered);
codes!(FILES, file_code, NotRead: TooLarge NotText Unread);

/// Each code of the list has at least one row.
#[track_caller]
fn whole(codes: &[&str], rows: &[&str]) {
    let missing: Vec<&&str> = codes.iter().filter(|code| !rows.contains(code)).collect();
    assert!(missing.is_empty(), "no row for {missing:?}");
}

fn usd(cents: i64) -> Money {
    Money::book(Decimal::new(cents, 2), Currency::USD).unwrap()
}

fn inches(n: i64) -> Length {
    Length::INCH.times(n).unwrap()
}

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn grams(n: i64) -> Grams {
    Grams::new(n).unwrap()
}

fn hours(n: i64) -> Span {
    Span::minutes(60 * n)
}

const ID: &str = "0198f0a0-0000-7000-8000-000000000001";

/// A refusal, what did not happen, what to do.
type Row = (Refusal, &'static str, &'static str);

fn of_figures() -> Vec<Row> {
    use Refusal::*;
    let (usd_, eur) = (Currency::USD, Currency::EUR);
    vec![
        (MoneyOutOfRange { currency: usd_ }, "Not taken: that sum is too large. The most is $10000000.00.", "Check the figure."),
        (
            CurrenciesMixed { one: usd_, other: eur },
            "Not added: USD and EUR do not go into one sum.",
            "Say the figure in the job’s own currency.",
        ),
        (CurrencyUnknown { code: "XQX".into() }, "No currency is called “XQX”.", "Use its three letters, such as USD or EUR."),
        (
            LengthOutOfRange { met: inches(1_125), least: Length::nm(1_000_000).unwrap(), most: Length::nm(20_000_000_000).unwrap() },
            "Not taken: 1125 in is not between 0.04 in and 787.4 in.",
            "Type the size again, in its own unit.",
        ),
        (
            SpanOutOfRange { met: hours(50), most: hours(48) },
            "Not taken: 50 h is no time of a run, which lasts from nothing to 48 h.",
            "Check start and stop.",
        ),
        (
            HoursOutOfRange { met: hours(50), least: hours(0), most: hours(48) },
            "Not taken: 50 h is not between 0 min and 48 h.",
            "Check the hours.",
        ),
        (NoPrice { met: usd(0) }, "Not taken: $0.00 is no price.", "Leave it empty where you do not know it."),
        (
            CoinOutOfRange { met: usd(200_000), least: usd(1), most: usd(100_000) },
            "Not taken: $2000.00 is no smallest coin, between $0.01 and $1000.00.",
            "Say the coin your buyers’ sums end on.",
        ),
        (
            TooManyOldJobs { met: 51, most: 50 },
            "Not taken: 51 old jobs at once, and one act holds at most 50.",
            "Write the others down apart.",
        ),
        (
            FactorOutOfRange { met: d("12"), least: d("0.1"), most: d("10") },
            "Not taken: it took 12 of what you thought, and that is not between 0.1 and 10.",
            "Check both times.",
        ),
        (
            BandUpsideDown { from: inches(20), to: inches(10) },
            "Not taken: a band from 20 in to 10 in ends before it begins.",
            "Say the shorter length first.",
        ),
        (OutOfRange, "Not taken: the figure is larger than can be kept.", "Check the figure."),
        (NothingToShareBy, "Not worked out: there is nothing to share it over yet.", "Count or log something first."),
        (MoneyBelowNothing { met: usd(-500) }, "Not taken: $−5.00 is below nothing.", "Leave the minus sign away."),
        (BelowNothing { met: d("-2") }, "Not taken: −2 is below nothing.", "Leave the minus sign away."),
        (ShareOutOfRange { met: d("1.01") }, "Not taken: 101 % is not a share below 100 %.", "Check the figure."),
        (NoHours, "Not worked out: no hours are logged yet.", "Log some work, or say the hours."),
        (
            LoggedBeyondAll { logged: hours(500), all: hours(480) },
            "Not taken: 500 h logged to jobs is more than the 480 h worked in all.",
            "Say fewer, or first all the hours you work in a year.",
        ),
        (
            RateOutOfReach { tax: d("0.5"), profit: d("1") },
            "No rate can bear that: tax and profit take all of it.",
            "Say a smaller share of tax or profit.",
        ),
        (
            FeesEatThePrice { tax: d("0.5"), fee: d("0.7") },
            "No price covers that: of what is handed over 33.33 % is tax and 70 % the fee or share, together 103.33 %.",
            "Check both: they must stay under 100 %.",
        ),
        (StagesDoNotMeet { sum: d("0.9") }, "Not taken: the parts add up to 90 % of the price.", "Make them add up to 100 %."),
        (NeverCovered { left: d("-1") }, "Never: a piece leaves nothing towards it.", "Raise the price, or leave the stall."),
        (
            PartsDoNotMeet { sum: usd(45_000), price: usd(46_000) },
            "Not taken: the payments add up to $450.00, and $460.00 was agreed.",
            "Make them add up to what was agreed.",
        ),
        (MoreThanDue { met: usd(30_000), due: usd(27_600) }, "Not taken: $300.00 is more than the $276.00 that is due.", "Check the sum."),
        (MoreThanPrice { met: usd(50_000), price: usd(46_000) }, "Not taken: $500.00 is more than the price, $460.00.", "Check the sum."),
        (MoreThanReceived { met: usd(500), received: usd(400) }, "Not taken: $5.00 is more than came in, $4.00.", "Check the sum."),
        (
            MoreThanOver { met: usd(30_000), over: usd(10_000) },
            "Not taken: $300.00 is more than the $100.00 that is to be handed back.",
            "Check the sum.",
        ),
        (MoreThanSpent { met: usd(900), spent: usd(760) }, "Not taken: $9.00 came back of $7.60 that was spent.", "Check the sum."),
        (MoreBackThanUsed { back: d("5.5"), used: d("4") }, "Not taken: 5.5 came back of 4 that were used.", "Check the figure."),
        (MoreThanPack { used: d("40"), holds: d("32") }, "Not taken: 40 used, and 32 are left in the pack.", "Check both figures."),
        (
            GuessTooFlat { met: d("1"), above: d("1.05") },
            "At 1.05 or less the price makes nearly no difference, and waiting can’t be reckoned.",
            "Guess more.",
        ),
        (
            MoreThanAllBuy { met: d("10"), most: d("5") },
            "Not taken: 10 times as many are more than all who ask. At most 5 times are taken.",
            "Say fewer times.",
        ),
        (YearsOutOfRange { met: 0, least: 1, most: 60 }, "Not taken: a tool serves for 1 to 60 years.", "Say how many years it lasts."),
        (
            TooManyWait { left: 800, most: 200 },
            "Not worked out: 800 are left, and what waiting is worth is reckoned for at most 200.",
            "The tag holds; it is reckoned once fewer are left.",
        ),
        (TooManyAsk { met: d("2000"), most: d("1000") }, "Not taken: at most 1000 people a week.", "Say fewer."),
        (
            MileageUnknown { currency: usd_ },
            "Not taken: no rate for a distance is set in USD.",
            "Set it in Workshop, under how you are paid.",
        ),
    ]
}

fn of_wood() -> Vec<Row> {
    use Refusal::*;
    vec![
        (MoistureOutOfRange { most: d("200") }, "Not taken: no wood holds that much water. The most is 200 %.", "Check the reading."),
        (
            TemperatureOutOfRange { least: d("-1.1"), most: d("54.4") },
            "Not taken: the table goes from 30 °F to 130 °F.",
            "Check the reading.",
        ),
        (HumidityOutOfRange { most: d("100") }, "Not taken: no air has that humidity. The most is 100 %.", "Check the reading."),
        (
            MovementUnknown { least: d("6"), most: d("14") },
            "Not worked out: how wood moves is known from 6 to 14 % moisture.",
            "Say a moisture between them.",
        ),
        (
            RoomUpsideDown { low: d("10"), high: d("6.5") },
            "Not taken: a room from 10 to 6.5 % moisture ends before it begins.",
            "Say the dry season first.",
        ),
        (
            DensityOutOfRange { least: d("50"), most: d("1500") },
            "Not taken: no wood weighs that. It weighs from 0.3 to 7.8 lb a board foot.",
            "Check the figure, or scale and size.",
        ),
        (
            CoefficientOutOfRange { most: d("0.01") },
            "Not taken: for each point of moisture a wood moves more than nothing and at most 1 % of its width.",
            "Check the figure, or leave it empty.",
        ),
        (
            WoodInTable { key: "ash-white".into() },
            "Not added: White ash is in the list already, with figures of its own.",
            "Give yours another name.",
        ),
        (WoodUnknown { key: "plastic".into() }, "No wood is called “plastic”.", "Choose one of the list."),
    ]
}

fn of_things() -> Vec<Row> {
    use Refusal::*;
    let id = Id::read(ID).unwrap();
    let at = Moment::at;
    vec![
        (
            TooManyPieces { would_be: 10_000, most: 9_999 },
            "Not counted: the pile would hold 10000 pieces, and one pile holds at most 9999 pieces.",
            "Begin a new pile.",
        ),
        (
            TooManyAtOnce { would_be: 10_000, most: 9_999 },
            "Not taken: that would be 10000 pieces, and the most is 9999 pieces.",
            "Say fewer.",
        ),
        (
            NotThatMany { asked: 1, there: 0 },
            "Not done: you asked for 1 piece, and none is left.",
            "If you hold one more than was counted, count it first.",
        ),
        (NotThatMany { asked: 7, there: 5 }, "Not done: you asked for 7 pieces, and there are 5 pieces.", "Take fewer, or count again."),
        (
            SetApart { asked: 7, there: 9, apart: 4 },
            "Not done: you asked for 7 pieces. 9 lie there, 4 of them set apart.",
            "Take fewer, or free what is set apart.",
        ),
        (
            WeightOutOfRange { least: Grams::ZERO, most: Grams::MOST },
            "Not taken: that weight is not between 0 lb and 22046.23 lb.",
            "Check the figure.",
        ),
        (TooManyPeople { would_be: 21, most: 20 }, "Not taken: 21 people, and a van holds at most 20.", "Check the figure."),
        (
            InJobs { asked: 1, jobs: 2 },
            "Not done: you asked for 1 piece. What is left of this pile lies in 2 jobs.",
            "Put the bad one back on the page of its job, Wood and plan; then reject it here.",
        ),
        (
            SoldSince { pieces: 2 },
            "Not taken back: 2 pieces that came free by it were sold, promised or left with a gallery since.",
            "Take that back first.",
        ),
        (JobHasWood { pieces: 9 }, "Not taken back: the job has 9 pieces of wood, taken or set apart.", "Put them back on the rack first."),
        (
            PiecesRestOnIt { pieces: 9, left: 5 },
            "Not taken back: 9 pieces were rejected, taken or gone since, and 5 of them would be left.",
            "Take that back first, or count again.",
        ),
        (
            PiecesRestOnIt { pieces: 1, left: 0 },
            "Not taken back: 1 piece was rejected, taken or gone since, and would not have been there.",
            "Take that back first, or count again.",
        ),
        (
            GivenBackSince { pieces: 4, left: 3 },
            "Not done: the job gave back 4 pieces since, and would have had 3.",
            "Put right what it gave back first.",
        ),
        (
            PlanRestsOnIt { pieces: 8, left: 7 },
            "Not done: a plan in use needs 8 pieces of this pile, and the job would have had 7.",
            "Put the plan’s pieces back first, on the page of its job, Wood and plan.",
        ),
        (
            OfPile { pile: "Rails, B".into(), why: Box::new(NotThatMany { asked: 9, there: 7 }) },
            "Rails, B: not done: you asked for 9 pieces, and there are 7 pieces.",
            "Take fewer, or count again.",
        ),
        (NotThere, "Not done: what you meant is no longer there.", "It may have been taken back. Look again."),
        (NothingAsked, "Nothing was asked for.", "Say how many or how much, more than nothing."),
        (TooManyTaxes { most: 5 }, "Not added: besides the usual tax rate there are at most 5.", "Offer one no more first."),
        (
            TaxThere { name: "Reduced".into() },
            "Not added: you have a tax rate called Reduced already.",
            "Give it another name, or open that one and change it.",
        ),
        (TooManyPhotos { most: 6 }, "No photo added: a job has at most 6.", "Remove one first."),
        (JobHasEnded, "Not done: you are done with this job.", "Take the job up again first."),
        (JobNotEnded, "Not done: the job goes on.", "There is nothing to take up again."),
        (SizeMissing, "Not worked out: a pile of this job has no size yet.", "Name its size on Count, under Sort, More."),
        (SamePile, "Not moved: it is the same pile.", "Choose another pile."),
        (TooManyPiles { most: 200 }, "No new pile: a haul has at most 200.", "Begin a new haul."),
        (
            WaitOutOfRange { met: Span::ZERO, least: Span::minutes(1), most: Span::minutes(366 * 1_440) },
            "Not taken: 0 min is no wait, which lasts from 1 min to 366 days.",
            "Check the minutes, hours or days.",
        ),
        (WaitHasEnded { wait: id }, "Not done: that was taken off already.", "It stands in the day’s list."),
        (DaysOutOfRange { met: -1, least: 0, most: 3_660 }, "Not taken: that is -1 days, where 0 to 3660 can be.", "Check the dates."),
        (NoWorkingDay, "Not taken: no day of the week is left to work on.", "Leave one day at least."),
        (QuietHoursEmpty, "Not taken: quiet hours that end when they begin are none.", "Say when they end, or take them away."),
        (RunHasEnded { run: id }, "Not done: that run has ended already.", "Mend it in the day’s list."),
        (
            RunsOverlap { run: id },
            "Not taken: that time is in another run already, and no minute is paid twice.",
            "Mend the other run first.",
        ),
        (EndNotAfterStart { start: at(2), end: at(1) }, "Not taken: it ends before it begins.", "Check start and stop."),
        (
            NotInRun { met: at(3), start: at(1), end: at(2) },
            "Not taken: a helper can’t be there before a run begins or after it ends.",
            "Say a time within the run.",
        ),
        (
            BreakNotInRun { met: at(3), start: at(1), end: at(2) },
            "Not taken: a break lies within its run, with work before or after it.",
            "Say a time within the run.",
        ),
        (EndToSettle { run: id }, "Not taken: when this run ended is not settled.", "Say first that it is right, or when it stopped."),
        (NotYet { met: at(2), now: at(1) }, "Not taken: that moment has not come yet.", "Say an earlier one."),
        (
            WoodThere { name: "plum".into() },
            "Not added: you have a wood called plum already.",
            "Give it another name, or open that one and change it.",
        ),
        (
            DesignThere { name: "Coffee table".into() },
            "Not renamed: you have a design called Coffee table already.",
            "Give it another name, or drop that one first.",
        ),
        (WoodInUse { uses: 1 }, "Not taken off: a pile or a part is of this wood.", "Give it another wood first."),
        (WoodInUse { uses: 4 }, "Not taken off: 4 piles and parts are of this wood.", "Give them another wood first."),
        (
            MachineThere { machine: Key::read("table-saw").unwrap(), name: None },
            "Not added: you have a machine called table saw already.",
            "Give it another name, or open that one and change it.",
        ),
        (
            MachineThere { machine: Key::read("lathe").unwrap(), name: Some("lathe".into()) },
            "Not added: you have a machine called lathe already.",
            "Give it another name, or open that one and change it.",
        ),
        (NameMissing, "Nothing was named.", "Type a name first."),
        (NameTooLong { met: 300, most: 200 }, "Not taken: 300 letters, and a name has at most 200.", "Make it shorter."),
        (HelperThere, "Not taken: this helper is at the run already, and no minute is paid twice.", "Nothing to do."),
        (TooManyHeads { would_be: 30, most: 20 }, "Not taken: 30 heads, and one run has at most 20.", "Write the others down apart."),
        (
            SampleTooSmall { met: 4, least: 5 },
            "Not counted: a sample of 4 pieces says too little; it takes at least 5 pieces.",
            "Count out more of the pile.",
        ),
        (
            SampleTooHeavy { sample: grams(2_001), pile: grams(2_000) },
            "Not counted: the sample weighs 4.41 lb, and the whole pile 4.41 lb.",
            "Weigh both again.",
        ),
        (SampleMoreThanPile { measured: 2, there: 1 }, "Not taken: you measured 2 pieces of a pile of 1 piece.", "Check both counts."),
        (
            UnderTare { met: grams(1_500), tare: grams(1_500) },
            "Not counted: the scale shows 3.31 lb, and the tare is 3.31 lb: no wood is on it.",
            "Weigh again.",
        ),
    ]
}

fn of_plans() -> Vec<Row> {
    use Refusal::*;
    let figure = |figure: PlanFigure, what| (PlanOutOfRange { figure, of: None, met: 0, least: 1, most: 9 }, what, "Check the figure.");
    vec![
        (
            PlanOutOfRange { figure: PlanFigure::Length, of: Some("leg".into()), met: -4, least: 1, most: 100_000_000_000 },
            "Not planned: the length of leg is -4, and may be 1 to 100000000000.",
            "Check the figure.",
        ),
        (PlanBroken, "Not shown: this plan breaks a rule, and that is a fault of ours.", "Plan it again."),
        (PlanOfOtherSizes, "Not used: a pile has another size than this plan was made for.", "Plan it again."),
        (
            PlanOfLeftOvers { pile: "E".into() },
            "Not put back: this plan is made of pile E, which the plan before left.",
            "Let that plan stay.",
        ),
        (PlanNameTwice { name: "leg".into() }, "Not planned: two go by the name leg.", "Give one of them another name."),
        figure(PlanFigure::Unit, "Not planned: the unit is 0, and may be 1 to 9."),
        figure(PlanFigure::Piles, "Not planned: the number of piles is 0, and may be 1 to 9."),
        figure(PlanFigure::Parts, "Not planned: the number of parts is 0, and may be 1 to 9."),
        figure(PlanFigure::Pieces, "Not planned: the number of pieces is 0, and may be 1 to 9."),
        figure(PlanFigure::Each, "Not planned: the number in each set is 0, and may be 1 to 9."),
        figure(PlanFigure::Sets, "Not planned: the number of sets is 0, and may be 1 to 9."),
        figure(PlanFigure::Length, "Not planned: the length is 0, and may be 1 to 9."),
        figure(PlanFigure::Width, "Not planned: the width is 0, and may be 1 to 9."),
        figure(PlanFigure::Thickness, "Not planned: the thickness is 0, and may be 1 to 9."),
        figure(PlanFigure::Kerf, "Not planned: the kerf is 0, and may be 1 to 9."),
        figure(PlanFigure::Trim, "Not planned: what is trimmed off is 0, and may be 1 to 9."),
        figure(PlanFigure::Allowance, "Not planned: the allowance is 0, and may be 1 to 9."),
        figure(PlanFigure::Joint, "Not planned: what jointing takes is 0, and may be 1 to 9."),
        figure(PlanFigure::Least, "Not planned: the least size is 0, and may be 1 to 9."),
        figure(PlanFigure::Keep, "Not planned: the least worth keeping is 0, and may be 1 to 9."),
        figure(PlanFigure::Rows, "Not planned: the number of rows is 0, and may be 1 to 9."),
        figure(PlanFigure::Stagger, "Not planned: the stagger is 0, and may be 1 to 9."),
        figure(PlanFigure::Layers, "Not planned: the number of layers is 0, and may be 1 to 9."),
        figure(PlanFigure::Gap, "Not planned: the gap is 0, and may be 1 to 9."),
        figure(PlanFigure::Overhang, "Not planned: the overhang is 0, and may be 1 to 9."),
        figure(PlanFigure::Target, "Not planned: the wanted size is 0, and may be 1 to 9."),
        figure(PlanFigure::Tolerance, "Not planned: the tolerance is 0, and may be 1 to 9."),
        figure(PlanFigure::Density, "Not planned: the density is 0, and may be 1 to 9."),
    ]
}

#[test]
fn every_refusal_says_what_did_not_happen_what_is_safe_and_what_to_do() {
    let rows: Vec<Row> = of_figures().into_iter().chain(of_wood()).chain(of_things()).chain(of_plans()).collect();
    for (refusal, what, to_do) in &rows {
        let said = refused(refusal, &Plain::default());
        assert_eq!((&*said.what, &*said.safe, &*said.to_do), (*what, "Nothing was changed.", *to_do), "{refusal:?}");
    }
    whole(REFUSALS, &rows.iter().map(|(refusal, ..)| refusal_code(refusal)).collect::<Vec<_>>());
}

/// Limits are said in the maker's own units.
#[test]
fn limits_are_said_in_the_makers_own_units() {
    let metric = Plain { units: Units::Metric, ..Plain::default() };
    let refusal =
        Refusal::LengthOutOfRange { met: inches(1_125), least: Length::nm(1_000_000).unwrap(), most: Length::nm(20_000_000_000).unwrap() };
    assert_eq!(refused(&refusal, &metric).what, "Not taken: 28575 mm is not between 1 mm and 20000 mm.");
    let refusal = Refusal::SampleTooHeavy { sample: grams(2_001), pile: grams(2_000) };
    assert_eq!(refused(&refusal, &metric).what, "Not counted: the sample weighs 2.001 kg, and the whole pile 2 kg.");
    let refusal = Refusal::WeightOutOfRange { least: Grams::KG, most: Grams::MOST };
    assert_eq!(refused(&refusal, &metric).what, "Not taken: that weight is not between 1 kg and 10000 kg.");
    let (celsius, kg) = (
        Refusal::TemperatureOutOfRange { least: d("-1.1"), most: d("54.4") },
        Refusal::DensityOutOfRange { least: d("50"), most: d("1500") },
    );
    assert_eq!(refused(&celsius, &metric).what, "Not taken: the table goes from −1.1 °C to 54.4 °C.");
    assert_eq!(refused(&kg, &metric).what, "Not taken: no wood weighs that. It weighs from 50 to 1500 kg a cubic metre.");
}
