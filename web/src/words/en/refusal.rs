//! English: why the answer was no. What did not happen, what is safe, what to do, with the limit.

mod estimate;
mod misreads;
mod trouble;

use super::common::{mass_unit, pieces};
use super::{woods, yard};
use crate::words::Speech;
use fivebar_core::quantity::{Decimal, Grams, Length, Money, Units, Volume, begin_small, half_up};
use fivebar_core::refusal::{PlanFigure, Refusal};
use fivebar_core::wood::weight::Density;

pub use misreads::{misread, misread_of, quantity_said, unnamed};
pub use trouble::{brought_back, cause, emptied, no_example, not_added, not_opened, not_saved};

/// A trouble or refusal, worded.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Said {
    pub what: String,
    pub why: String,
    pub safe: String,
    pub to_do: String,
}

const SAFE: &str = "Nothing was changed.";

/// One sentence each way for a refusal.
pub fn refused(refusal: &Refusal, speech: &dyn Speech) -> Said {
    let said = |what: String, to_do: &str| Said { what, why: String::new(), safe: SAFE.into(), to_do: to_do.into() };
    let count = |n: u32| pieces(n, &speech.count(n));
    let of_estimate = |(what, to_do)| said(what, to_do);
    match refusal {
        Refusal::MoneyOutOfRange { currency } => {
            said(format!("Not taken: that sum is too large. The most is {}.", speech.money(Money::most(*currency))), "Check the figure.")
        }
        Refusal::CurrenciesMixed { one, other } => {
            said(format!("Not added: {one} and {other} do not go into one sum."), "Say the figure in the job’s own currency.")
        }
        Refusal::CurrencyUnknown { code } => said(format!("No currency is called “{code}”."), "Use its three letters, such as USD or EUR."),
        Refusal::LengthOutOfRange { met, least, most } => {
            let shown = |l: &Length| in_own_unit(*l, speech);
            said(
                format!("Not taken: {} is not between {} and {}.", shown(met), shown(least), shown(most)),
                "Type the size again, in its own unit.",
            )
        }
        Refusal::TooManyPieces { would_be, most } => said(
            format!("Not counted: the pile would hold {}, and one pile holds at most {}.", count(*would_be), count(*most)),
            "Begin a new pile.",
        ),
        Refusal::TooManyAtOnce { would_be, most } => {
            said(format!("Not taken: that would be {}, and the most is {}.", count(*would_be), count(*most)), "Say fewer.")
        }
        Refusal::NotThatMany { asked, there: 0 } => said(
            format!("Not done: you asked for {}, and none is left.", count(*asked)),
            "If you hold one more than was counted, count it first.",
        ),
        Refusal::NotThatMany { asked, there } => {
            said(format!("Not done: you asked for {}, and there are {}.", count(*asked), count(*there)), "Take fewer, or count again.")
        }
        Refusal::SetApart { asked, there, apart } => said(
            format!(
                "Not done: you asked for {}. {} lie there, {} of them set apart.",
                count(*asked),
                speech.count(*there),
                speech.count(*apart)
            ),
            "Take fewer, or free what is set apart.",
        ),
        Refusal::InJobs { asked, jobs } => said(
            format!("Not done: you asked for {}. What is left of this pile lies in {jobs} jobs.", count(*asked)),
            "Put the bad one back on the page of its job, Wood and plan; then reject it here.",
        ),
        Refusal::JobHasWood { pieces } => {
            said(format!("Not taken back: the job has {} of wood, taken or set apart.", count(*pieces)), "Put them back on the rack first.")
        }
        Refusal::OfPile { pile, why } => {
            let said = refused(why, speech);
            Said { what: format!("{pile}: {}", begin_small(&said.what)), ..said }
        }
        Refusal::PiecesRestOnIt { pieces: 1, .. } => said(
            "Not taken back: 1 piece was rejected, taken or gone since, and would not have been there.".into(),
            "Take that back first, or count again.",
        ),
        Refusal::PiecesRestOnIt { pieces, left } => said(
            format!(
                "Not taken back: {} were rejected, taken or gone since, and {} of them would be left.",
                count(*pieces),
                speech.count(*left)
            ),
            "Take that back first, or count again.",
        ),
        Refusal::GivenBackSince { pieces, left } => said(
            format!("Not done: the job gave back {} since, and would have had {}.", count(*pieces), speech.count(*left)),
            "Put right what it gave back first.",
        ),
        Refusal::PlanRestsOnIt { pieces, left } => said(
            format!("Not done: a plan in use needs {} of this pile, and the job would have had {}.", count(*pieces), speech.count(*left)),
            "Put the plan’s pieces back first, on the page of its job, Wood and plan.",
        ),
        Refusal::SoldSince { pieces } => said(
            format!(
                "Not taken back: {} that came free by it {} sold, promised or left with a gallery since.",
                count(*pieces),
                if *pieces == 1 { "was" } else { "were" }
            ),
            "Take that back first.",
        ),
        Refusal::SpanOutOfRange { met, most } => {
            let (met, most) = (speech.span(*met), speech.span(*most));
            said(format!("Not taken: {met} is no time of a run, which lasts from nothing to {most}."), "Check start and stop.")
        }
        Refusal::NotThere => said("Not done: what you meant is no longer there.".into(), "It may have been taken back. Look again."),
        Refusal::NothingAsked => said("Nothing was asked for.".into(), "Say how many or how much, more than nothing."),
        Refusal::SamePile => said("Not moved: it is the same pile.".into(), "Choose another pile."),
        Refusal::BandUpsideDown { from, to } => {
            let (from, to) = (in_own_unit(*from, speech), in_own_unit(*to, speech));
            said(format!("Not taken: a band from {from} to {to} ends before it begins."), "Say the shorter length first.")
        }
        Refusal::TooManyPiles { most } => said(format!("No new pile: a haul has at most {most}."), "Begin a new haul."),
        Refusal::OutOfRange => said("Not taken: the figure is larger than can be kept.".into(), "Check the figure."),
        Refusal::NothingToShareBy => said("Not worked out: there is nothing to share it over yet.".into(), "Count or log something first."),
        Refusal::BelowNothing { met } => {
            said(format!("Not taken: {} is below nothing.", speech.number(*met, 0, 4)), "Leave the minus sign away.")
        }
        Refusal::ShareOutOfRange { met } => {
            said(format!("Not taken: {} is not a share below 100 %.", per_cent(*met, speech)), "Check the figure.")
        }
        Refusal::NoHours => said("Not worked out: no hours are logged yet.".into(), "Log some work, or say the hours."),
        Refusal::LoggedBeyondAll { logged, all } => {
            let (logged, all) = (speech.span(*logged), speech.span(*all));
            said(
                format!("Not taken: {logged} logged to jobs is more than the {all} worked in all."),
                "Say fewer, or first all the hours you work in a year.",
            )
        }
        Refusal::RateOutOfReach { .. } => {
            said("No rate can bear that: tax and profit take all of it.".into(), "Say a smaller share of tax or profit.")
        }
        Refusal::FeesEatThePrice { tax, fee } => {
            // Of all that is handed over.
            let taxed = tax.checked_div(Decimal::ONE.saturating_add(*tax)).unwrap_or_default();
            let [of_tax, of_fee, both] = [taxed, *fee, taxed.saturating_add(*fee)].map(|share| per_cent(half_up(share, 4), speech));
            let sum =
                format!("No price covers that: of what is handed over {of_tax} is tax and {of_fee} the fee or share, together {both}.");
            said(sum, "Check both: they must stay under 100 %.")
        }
        Refusal::StagesDoNotMeet { sum } => {
            said(format!("Not taken: the parts add up to {} of the price.", per_cent(*sum, speech)), "Make them add up to 100 %.")
        }
        Refusal::PartsDoNotMeet { sum, price } => said(
            format!("Not taken: the payments add up to {}, and {} was agreed.", speech.money(*sum), speech.money(*price)),
            "Make them add up to what was agreed.",
        ),
        Refusal::NeverCovered { .. } => said("Never: a piece leaves nothing towards it.".into(), "Raise the price, or leave the stall."),
        Refusal::WoodUnknown { key } => said(format!("No wood is called “{key}”."), "Choose one of the list."),
        Refusal::MoistureOutOfRange { most } => {
            said(format!("Not taken: no wood holds that much water. The most is {} %.", speech.number(*most, 0, 1)), "Check the reading.")
        }
        Refusal::TemperatureOutOfRange { least, most } => {
            said(format!("Not taken: the table goes from {} to {}.", degrees(*least, speech), degrees(*most, speech)), "Check the reading.")
        }
        Refusal::HumidityOutOfRange { most } => {
            said(format!("Not taken: no air has that humidity. The most is {} %.", speech.number(*most, 0, 1)), "Check the reading.")
        }
        Refusal::MovementUnknown { least, most } => {
            let (least, most) = (speech.number(*least, 0, 1), speech.number(*most, 0, 1));
            said(format!("Not worked out: how wood moves is known from {least} to {most} % moisture."), "Say a moisture between them.")
        }
        Refusal::RoomUpsideDown { low, high } => {
            let (low, high) = (speech.number(*low, 0, 1), speech.number(*high, 0, 1));
            said(format!("Not taken: a room from {low} to {high} % moisture ends before it begins."), "Say the dry season first.")
        }
        Refusal::DensityOutOfRange { least, most } => {
            let ((least, unit), (most, _)) = (density(*least, speech), density(*most, speech));
            said(
                format!("Not taken: no wood weighs that. It weighs from {least} to {most} {unit}."),
                "Check the figure, or scale and size.",
            )
        }
        Refusal::CoefficientOutOfRange { most } => said(
            format!(
                "Not taken: for each point of moisture a wood moves more than nothing and at most {} of its width.",
                per_cent(*most, speech)
            ),
            "Check the figure, or leave it empty.",
        ),
        Refusal::WoodInTable { key } => said(
            format!("Not added: {} is in the list already, with figures of its own.", woods::full_name(key)),
            "Give yours another name.",
        ),
        Refusal::WoodThere { name } => {
            said(format!("Not added: you have a wood called {name} already."), "Give it another name, or open that one and change it.")
        }
        Refusal::DesignThere { name } => {
            said(format!("Not renamed: you have a design called {name} already."), "Give it another name, or drop that one first.")
        }
        Refusal::TaxThere { name } => {
            said(format!("Not added: you have a tax rate called {name} already."), "Give it another name, or open that one and change it.")
        }
        Refusal::TooManyTaxes { most } => {
            said(format!("Not added: besides the usual tax rate there are at most {most}."), "Offer one no more first.")
        }
        Refusal::WoodInUse { uses: 1 } => {
            said("Not taken off: a pile or a part is of this wood.".to_owned(), "Give it another wood first.")
        }
        Refusal::WoodInUse { uses } => {
            said(format!("Not taken off: {} piles and parts are of this wood.", speech.count(*uses)), "Give them another wood first.")
        }
        Refusal::MachineThere { machine, name } => said(
            format!("Not added: you have a machine called {} already.", yard::machine(machine.as_str(), name.as_deref())),
            "Give it another name, or open that one and change it.",
        ),
        Refusal::TooManyPhotos { most } => said(format!("No photo added: a job has at most {most}."), "Remove one first."),
        Refusal::JobHasEnded => said("Not done: you are done with this job.".into(), "Take the job up again first."),
        Refusal::JobNotEnded => said("Not done: the job goes on.".into(), "There is nothing to take up again."),
        Refusal::SizeMissing => {
            said("Not worked out: a pile of this job has no size yet.".into(), "Name its size on Count, under Sort, More.")
        }
        Refusal::MoreThanDue { met, due } => {
            said(format!("Not taken: {} is more than the {} that is due.", speech.money(*met), speech.money(*due)), "Check the sum.")
        }
        Refusal::MoreThanPrice { met, price } => {
            said(format!("Not taken: {} is more than the price, {}.", speech.money(*met), speech.money(*price)), "Check the sum.")
        }
        Refusal::CoinOutOfRange { met, least, most } => said(
            format!("Not taken: {} is no smallest coin, between {} and {}.", speech.money(*met), speech.money(*least), speech.money(*most)),
            "Say the coin your buyers’ sums end on.",
        ),
        Refusal::MoreThanReceived { met, received } => {
            said(format!("Not taken: {} is more than came in, {}.", speech.money(*met), speech.money(*received)), "Check the sum.")
        }
        Refusal::MoreThanOver { met, over } => said(
            format!("Not taken: {} is more than the {} that is to be handed back.", speech.money(*met), speech.money(*over)),
            "Check the sum.",
        ),
        Refusal::MoreThanSpent { met, spent } => {
            said(format!("Not taken: {} came back of {} that was spent.", speech.money(*met), speech.money(*spent)), "Check the sum.")
        }
        Refusal::MoreBackThanUsed { back, used } => {
            let [back, used] = [*back, *used].map(|n| speech.number(n, 0, 3));
            said(format!("Not taken: {back} came back of {used} that were used."), "Check the figure.")
        }
        Refusal::MoreThanPack { used, holds } => said(
            format!("Not taken: {} used, and {} are left in the pack.", speech.number(*used, 0, 3), speech.number(*holds, 0, 3)),
            "Check both figures.",
        ),
        Refusal::GuessTooFlat { above, .. } => {
            let least = speech.number(*above, 0, 2);
            said(format!("At {least} or less the price makes nearly no difference, and waiting can’t be reckoned."), "Guess more.")
        }
        Refusal::MoreThanAllBuy { met, most } => {
            // Down, so that what is named is taken.
            let most = most.trunc_with_scale(1);
            let [met, most] = [*met, most].map(|times| speech.number(times, 0, 1));
            said(format!("Not taken: {met} times as many are more than all who ask. At most {most} times are taken."), "Say fewer times.")
        }
        Refusal::YearsOutOfRange { least, most, .. } => {
            said(format!("Not taken: a tool serves for {least} to {most} years."), "Say how many years it lasts.")
        }
        Refusal::TooManyWait { left, most } => {
            let (left, most) = (speech.count(*left), speech.count(*most));
            let what = format!("Not worked out: {left} are left, and what waiting is worth is reckoned for at most {most}.");
            said(what, "The tag holds; it is reckoned once fewer are left.")
        }
        Refusal::TooManyAsk { most, .. } => said(format!("Not taken: at most {} people a week.", speech.number(*most, 0, 0)), "Say fewer."),
        Refusal::MileageUnknown { currency } => {
            said(format!("Not taken: no rate for a distance is set in {currency}."), "Set it in Workshop, under how you are paid.")
        }
        Refusal::RunHasEnded { .. } => said("Not done: that run has ended already.".into(), "Mend it in the day’s list."),
        Refusal::RunsOverlap { .. } => {
            said("Not taken: that time is in another run already, and no minute is paid twice.".into(), "Mend the other run first.")
        }
        Refusal::WaitOutOfRange { met, least, most } => {
            let days = u32::try_from(most.as_minutes() / 1_440).unwrap_or_default();
            let (met, least, most) = (speech.span(*met), speech.span(*least), speech.count(days));
            said(format!("Not taken: {met} is no wait, which lasts from {least} to {most} days."), "Check the minutes, hours or days.")
        }
        Refusal::WaitHasEnded { .. } => said("Not done: that was taken off already.".into(), "It stands in the day’s list."),
        Refusal::DaysOutOfRange { met, least, most } => {
            said(format!("Not taken: that is {met} days, where {least} to {most} can be."), "Check the dates.")
        }
        Refusal::NoWorkingDay => said("Not taken: no day of the week is left to work on.".into(), "Leave one day at least."),
        Refusal::QuietHoursEmpty => {
            said("Not taken: quiet hours that end when they begin are none.".into(), "Say when they end, or take them away.")
        }
        Refusal::EndNotAfterStart { .. } => said("Not taken: it ends before it begins.".into(), "Check start and stop."),
        Refusal::NotInRun { .. } => {
            said("Not taken: a helper can’t be there before a run begins or after it ends.".into(), "Say a time within the run.")
        }
        Refusal::BreakNotInRun { .. } => {
            said("Not taken: a break lies within its run, with work before or after it.".into(), "Say a time within the run.")
        }
        Refusal::EndToSettle { .. } => {
            said("Not taken: when this run ended is not settled.".into(), "Say first that it is right, or when it stopped.")
        }
        Refusal::NotYet { .. } => said("Not taken: that moment has not come yet.".into(), "Say an earlier one."),
        Refusal::NameMissing => said("Nothing was named.".into(), "Type a name first."),
        Refusal::NameTooLong { met, most } => said(format!("Not taken: {met} letters, and a name has at most {most}."), "Make it shorter."),
        Refusal::WeightOutOfRange { least, most } => {
            let (least, most) = (weighed(*least, speech), weighed(*most, speech));
            said(format!("Not taken: that weight is not between {least} and {most}."), "Check the figure.")
        }
        Refusal::TooManyPeople { would_be, most } => {
            said(format!("Not taken: {would_be} people, and a van holds at most {most}."), "Check the figure.")
        }
        Refusal::TooManyHeads { would_be, most } => {
            said(format!("Not taken: {would_be} heads, and one run has at most {most}."), "Write the others down apart.")
        }
        Refusal::HelperThere => said("Not taken: this helper is at the run already, and no minute is paid twice.".into(), "Nothing to do."),
        Refusal::PlanOutOfRange { figure, of, met, least, most } => {
            let of = of.as_ref().map_or_else(String::new, |name| format!(" of {name}"));
            let figure = figure_of_a_plan(*figure);
            said(format!("Not planned: {figure}{of} is {met}, and may be {least} to {most}."), "Check the figure.")
        }
        Refusal::PlanBroken => said("Not shown: this plan breaks a rule, and that is a fault of ours.".into(), "Plan it again."),
        Refusal::PlanOfOtherSizes => said("Not used: a pile has another size than this plan was made for.".into(), "Plan it again."),
        Refusal::PlanOfLeftOvers { pile } => {
            said(format!("Not put back: this plan is made of pile {pile}, which the plan before left."), "Let that plan stay.")
        }
        Refusal::PlanNameTwice { name } => said(format!("Not planned: two go by the name {name}."), "Give one of them another name."),
        Refusal::SampleTooSmall { met, least } => said(
            format!("Not counted: a sample of {} says too little; it takes at least {}.", count(*met), count(*least)),
            "Count out more of the pile.",
        ),
        Refusal::SampleTooHeavy { sample, pile } => {
            let (sample, pile) = (weighed(*sample, speech), weighed(*pile, speech));
            said(format!("Not counted: the sample weighs {sample}, and the whole pile {pile}."), "Weigh both again.")
        }
        Refusal::SampleMoreThanPile { measured, there } => {
            said(format!("Not taken: you measured {} of a pile of {}.", count(*measured), count(*there)), "Check both counts.")
        }
        Refusal::UnderTare { met, tare } => {
            let (met, tare) = (weighed(*met, speech), weighed(*tare, speech));
            said(format!("Not counted: the scale shows {met}, and the tare is {tare}: no wood is on it."), "Weigh again.")
        }
        Refusal::HoursOutOfRange { met, least, most } => of_estimate(estimate::hours((*met, *least, *most), speech)),
        Refusal::NoPrice { met } => of_estimate(estimate::no_price(*met, speech)),
        Refusal::TooManyOldJobs { met, most } => of_estimate(estimate::too_many(*met, *most)),
        Refusal::FactorOutOfRange { met, least, most } => of_estimate(estimate::factor((*met, *least, *most), speech)),
        Refusal::MoneyBelowNothing { met } => {
            said(format!("Not taken: {} is below nothing.", speech.money(*met)), "Leave the minus sign away.")
        }
    }
}

/// A length in the maker's own unit, as a limit is said: to a tenth.
fn in_own_unit(length: Length, speech: &dyn Speech) -> String {
    match speech.units() {
        Units::Inch => {
            let inches = Decimal::from(length.as_nm()).checked_div(Decimal::from(Length::INCH.as_nm())).unwrap_or_default();
            format!("{} in", speech.number(inches, 0, 2))
        }
        Units::Metric => format!("{} mm", speech.length(length, Units::Metric)),
    }
}

/// A reading of a scale in the maker's own unit, so fine that two readings a gram apart differ in kilograms.
fn weighed(grams: Grams, speech: &dyn Speech) -> String {
    let (mass, unit) = (grams.mass(), mass_unit(speech.units()));
    // two readings a gram apart differ in kilograms; a pound is read to a hundredth
    let (amount, most) = if speech.units() == Units::Inch { (mass.as_lb(), 2) } else { (mass.as_kg(), 3) };
    format!("{} {unit}", speech.number(Decimal::try_from(amount).unwrap_or_default(), 0, most))
}

/// Degrees Celsius in the maker's own, to a whole one.
pub fn degrees(celsius: Decimal, speech: &dyn Speech) -> String {
    match speech.units() {
        Units::Inch => {
            let fahrenheit = celsius.checked_mul(Decimal::new(18, 1)).and_then(|nine_fifths| nine_fifths.checked_add(Decimal::from(32)));
            format!("{} °F", speech.number(fahrenheit.unwrap_or_default(), 0, 0))
        }
        Units::Metric => format!("{} °C", speech.number(celsius, 0, 1)),
    }
}

/// Kilograms a cubic metre in the maker's own, and what that is.
pub fn density(kg: Decimal, speech: &dyn Speech) -> (String, &'static str) {
    match speech.units() {
        Units::Inch => {
            let foot = Density::kg_per_cubic_metre(f64::try_from(kg).unwrap_or_default()).mass(Volume::BOARD_FOOT);
            (speech.number(Decimal::try_from(foot.as_lb()).unwrap_or_default(), 0, 1), "lb a board foot")
        }
        Units::Metric => (speech.number(kg, 0, 0), "kg a cubic metre"),
    }
}

fn per_cent(share: Decimal, speech: &dyn Speech) -> String {
    format!("{} %", speech.number(share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default(), 0, 2))
}

/// What a figure of a plan is called.
fn figure_of_a_plan(figure: PlanFigure) -> &'static str {
    match figure {
        PlanFigure::Unit => "the unit",
        PlanFigure::Piles => "the number of piles",
        PlanFigure::Parts => "the number of parts",
        PlanFigure::Pieces => "the number of pieces",
        PlanFigure::Each => "the number in each set",
        PlanFigure::Sets => "the number of sets",
        PlanFigure::Length => "the length",
        PlanFigure::Width => "the width",
        PlanFigure::Thickness => "the thickness",
        PlanFigure::Kerf => "the kerf",
        PlanFigure::Trim => "what is trimmed off",
        PlanFigure::Allowance => "the allowance",
        PlanFigure::Joint => "what jointing takes",
        PlanFigure::Least => "the least size",
        PlanFigure::Keep => "the least worth keeping",
        PlanFigure::Rows => "the number of rows",
        PlanFigure::Stagger => "the stagger",
        PlanFigure::Layers => "the number of layers",
        PlanFigure::Gap => "the gap",
        PlanFigure::Overhang => "the overhang",
        PlanFigure::Target => "the wanted size",
        PlanFigure::Tolerance => "the tolerance",
        PlanFigure::Density => "the density",
    }
}

#[cfg(test)]
mod tests;
