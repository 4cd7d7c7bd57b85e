//! What was written down on Jobs is saved: the figures are read, and the trade decides.

use super::super::App;
use super::super::doubt::Side;
use super::super::entry::moisture;
use super::super::order::{Feel, Order};
use super::super::plan::asked_back;
use super::super::price::gallery::there;
use super::super::taxes::tax;
use super::draft::{Draft, Way, What, agreement_done, comes_back};
use fivebar_core::ledger::decide::{
    BringBackOrder, Command, HandBackOrder, HaulCommand, JobCommand, LetKeepOrder, Lying, MoneyCommand, Much, Now, On, PayOrder,
    PlanCommand, SaleCommand, SellOrder, WoodCommand,
};
use fivebar_core::ledger::fold::Selling;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::bench::Stage;
use fivebar_core::ledger::kind::job::{JobBegan, JobDescribed, OperationPlanned, PartPlanned};
use fivebar_core::ledger::kind::money::PackOpened;
use fivebar_core::ledger::kind::sale::{AgreementCancelled, ConsignmentPaid, ConsignmentReturned, PiecesConsigned, PiecesNotForSale};
use fivebar_core::ledger::kind::wood::RoomRangeSet;
use fivebar_core::ledger::{Entry, Fact};
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::reading::{self, Sign, Typing};
use fivebar_core::quantity::{Count, Decimal, Id, Key, Length, Mass, Moment, Money, PILE_MOST};
use fivebar_core::sheet::gallery::AtGallery;

/// The form in hand is read and saved; it closes when it was.
pub fn save(app: &mut App, now: Now) {
    let Some(mut draft) = app.jobs.draft.take() else { return };
    draft.nameless = nameless(&draft);
    if draft.nameless {
        app.jobs.draft = Some(draft);
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    if super::homes::asks(app, &mut draft) {
        app.jobs.draft = Some(draft);
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let gallery = gallery(app, &draft);
    let piece = super::estimate::kind_for(app, &draft);
    let (back, tax) = (back(app, &draft), chosen_tax(app, &draft));
    let can_holds = super::cans::holds(app, &draft.picks.can);
    let reader = Reader { sign: app.speech.sign(), job: app.jobs.open, gallery, can_holds, piece, back, tax, now };
    let command = emptied(app, &draft).or_else(|| reader.command(&mut draft));
    let command = command.filter(|command| super::meant::is_meant(app, &mut draft, command));
    let what = draft.what.clone();
    let written = command.as_ref().and_then(|command| app.order(command, now));
    if draft.what == What::Spend && draft.form.here().is_some_and(|typed| typed.wrong.is_some()) {
        // The figure in hand has the pad, whatever choice lay there.
        (draft.picks.more, draft.picks.spent_on.asks, draft.picks.home.is_passed) = (false, false, true);
    }
    if written.is_none() {
        command.into_iter().for_each(|command| super::estimate::go_to_the_fault(app, &mut draft, (&command, now)));
    }
    app.jobs.draft = Some(draft);
    let Some(written) = written else { return };
    app.jobs.draft = None;
    app.orders.push(Order::Feel(Feel::Start));
    done_again(app, &written.entries);
    if what == What::New {
        let began = written.entries.iter().find(|entry| matches!(entry.fact, Fact::JobBegan(_)));
        (app.jobs.open, app.jobs.room, app.jobs.search) = (began.map(|entry| entry.id), None, String::new());
    }
}

/// A planned operation whose minutes are emptied, and that says no pieces, is planned no more.
fn emptied(app: &App, draft: &Draft) -> Option<Command> {
    let What::Plan(Some(op)) = &draft.what else { return None };
    let job = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?;
    let had = job.operations.iter().any(|planned| planned.op == *op && planned.span.is_some());
    let is_empty = draft.form.is_empty(0) && draft.form.is_empty(1);
    (had && is_empty).then(|| struck(job.id, op))
}

/// What was struck is done again as it stood last.
fn done_again(app: &mut App, written: &[Entry]) {
    if let [Entry { fact: Fact::Struck(struck), .. }] = written {
        struck.entries.last().into_iter().for_each(|last| app.shelf_mut().took_back(*last));
    }
}

fn struck(job: Id, op: &str) -> Command {
    Command::Job(JobCommand::StrikeOperation { job, op: op.to_owned() })
}

/// What the gallery has of the consignment that is written about.
fn gallery(app: &App, draft: &Draft) -> Option<AtGallery> {
    let What::GalleryPaid(lot) = draft.what else { return None };
    there(app, (app.jobs.open?, lot))
}

fn nameless(draft: &Draft) -> bool {
    let named = matches!(draft.what, What::New | What::Name | What::Part(_) | What::Plan(_) | What::OldJob(_));
    named && draft.words.first().is_none_or(|name| name.trim().is_empty())
}

/// The other way out of a form: pieces go back to their pile, a part is taken away, a gallery gives back.
pub fn undo(app: &mut App, now: Now) {
    let (sign, Some(job)) = (app.speech.sign(), app.jobs.open) else { return };
    if asks_back(app, job) {
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let gallery = app.jobs.draft.as_ref().and_then(|draft| gallery(app, draft)?.gallery);
    let Some(draft) = &mut app.jobs.draft else { return };
    let command = match &draft.what {
        What::Take { haul, pile } => {
            let (haul, pile) = (*haul, *pile);
            let n = draft.form.take(0, |text| reading::count(text, sign, PILE_MOST));
            n.map(|n| Command::Haul(HaulCommand::Free { haul, pile, job, n }))
        }
        What::Part(Some(name)) => {
            let none = fivebar_core::quantity::Length::PIECE_LEAST;
            let gone = PartPlanned { job, name: name.clone(), n: 0, thickness: none, width: none, length: none, wood: None };
            Some(Command::Job(JobCommand::PlanPart(gone)))
        }
        What::Plan(Some(op)) => Some(struck(job, op)),
        What::Settle => Some(Command::Money(MoneyCommand::SetSettle { job, sum: None })),
        What::GalleryPaid(lot) => {
            let lot = Some(*lot);
            let n = draft.form.take(0, |text| reading::count(text, sign, PILE_MOST));
            n.map(|n| Command::Sale(SaleCommand::NoteConsignmentReturned(ConsignmentReturned { job, n, gallery, when: None, lot })))
        }
        _ => None,
    };
    if let Some(written) = command.and_then(|command| app.order(&command, now)) {
        done_again(app, &written.entries);
        app.jobs.draft = None;
        app.orders.push(Order::Feel(Feel::TakeBack));
    }
}

/// Whether it is asked now about boards that are cut, or all that a plan has: the same figure is not asked about twice.
fn asks_back(app: &mut App, job: Id) -> bool {
    let sign = app.speech.sign();
    let Some(draft) = &app.jobs.draft else { return false };
    let What::Take { haul, pile } = draft.what else { return false };
    let Ok(n) = reading::count(draft.form.text(0), sign, PILE_MOST) else { return false };
    if draft.put_back.as_ref().is_some_and(|asked| asked.n == n) {
        return false;
    }
    let asked = asked_back(app, job, (Lying { haul, pile }, n));
    let asks = asked.is_some();
    app.jobs.draft.iter_mut().for_each(|draft| draft.put_back.clone_from(&asked));
    asks
}

/// What came in for the sale that is brought back, and whether it was all of an order; or ahead of the agreement that comes to nothing.
fn back(app: &App, draft: &Draft) -> Option<(Money, bool)> {
    let job = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?;
    if let What::Cancel(agreed) = draft.what {
        return Some((job.selling.received_ahead(job.currency, agreed).ok()?, false));
    }
    let What::Refund(sale) = draft.what else { return None };
    let n = draft.brings_back(app.speech.sign(), &job.selling)?;
    let came = job.selling.came_for(job.currency, (sale, comes_back(app, &job.selling, (sale, n))?)).ok()?;
    Some((came, agreement_done(&job.selling, sale)))
}

impl Draft {
    /// So many pieces of the sale come back; all of one of a single piece.
    fn brings_back(&self, sign: Sign, selling: &Selling) -> Option<Count> {
        let What::Refund(sale) = self.what else { return None };
        let all = selling.sale(sale)?.n;
        if self.form.slots.len() < 2 { Some(all) } else { reading::count(self.form.text(1), sign, PILE_MOST).ok() }
    }
}

/// The tax that was chosen for a sale.
fn chosen_tax(app: &App, draft: &Draft) -> Option<Tax> {
    let by = draft.picks.tax?;
    let currency = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?.currency;
    Some(tax(app, currency, by))
}

/// Reads a form by the maker's decimal sign.
struct Reader {
    sign: Sign,
    job: Option<Id>,
    /// What the gallery has of the consignment.
    gallery: Option<AtGallery>,
    /// What the can that is used of holds when it is full.
    can_holds: Option<Decimal>,
    /// What kind of piece the job is.
    piece: Option<Key>,
    /// What came in for the sale that is brought back, and whether its order is done; or ahead of the agreement that comes to nothing.
    back: Option<(Money, bool)>,
    /// What a sale is taxed with, where it is not as its job is.
    tax: Option<Tax>,
    now: Now,
}

impl Reader {
    fn command(&self, draft: &mut Draft) -> Option<Command> {
        match draft.what.clone() {
            What::New => return self.begin(draft),
            What::Spend => return self.spend(draft).map(Command::Money),
            What::CameBack(spending) => return self.back_of(draft, spending).map(Command::Money),
            _ => {}
        }
        let job = self.job?;
        match draft.what.clone() {
            What::Take { haul, pile } => {
                let n = self.count(draft, 0)?;
                Some(Command::Haul(HaulCommand::Take { haul, pile, job, n }))
            }
            What::Part(was) => self.part(draft, (job, was)).map(Command::Job),
            What::Plan(was) => self.plan(draft, (job, was)).map(Command::Job),
            What::OldJobs => super::estimate::told(draft, (self.piece.as_ref(), self.job), self.sign).map(Command::Estimate),
            What::OldJob(line) => super::estimate::retold(draft, (line, (self.piece.as_ref(), self.job)), self.sign).map(Command::Estimate),
            What::Tag => self.money(draft, 0).map(|sum| Command::Money(MoneyCommand::SetTag { job, sum })),
            What::Settle => self.money(draft, 0).map(|sum| Command::Money(MoneyCommand::SetSettle { job, sum: Some(sum) })),
            What::Name | What::Size | What::Facts => self.describe(draft, job).map(|facts| Command::Job(JobCommand::Describe(facts))),
            What::Room => self.room(draft, job),
            What::Lesson => {
                let text = draft.words.first().map(|text| text.trim().to_owned()).unwrap_or_default();
                Some(Command::Job(JobCommand::WriteLesson { job, text }))
            }
            _ => self.sale(draft, job).map(Command::Sale),
        }
    }

    /// What came back of a spending, of a job or of none: into its can, or as money.
    fn back_of(&self, draft: &mut Draft, spending: Id) -> Option<MoneyCommand> {
        if draft.picks.can.back {
            return self.number(draft, 0).map(|used| MoneyCommand::BackInCan { spending, used });
        }
        let what = draft.words.first().map(|what| what.trim().to_owned()).filter(|what| !what.is_empty());
        let (sum, n) = self.came_back(draft)?;
        Some(MoneyCommand::ComeBack { spending, sum, n, what })
    }

    /// A sum, or where one had a price so many of them; both where both are typed.
    fn came_back(&self, draft: &mut Draft) -> Option<(Option<Money>, Option<Decimal>)> {
        if draft.form.is_empty(1) {
            return self.money(draft, 0).map(|sum| (Some(sum), None));
        }
        let sum = self.maybe_money(draft, 0)?;
        self.number(draft, 1).map(|n| (sum, Some(n)))
    }

    fn room(&self, draft: &mut Draft, job: Id) -> Option<Command> {
        let mut end = |nth| {
            let read = |text: &str| moisture(text, self.sign);
            draft.form.take(nth, read).map(Exact)
        };
        let (low, high) = (end(0)?, end(1)?);
        Some(Command::Wood(WoodCommand::SetRoom(RoomRangeSet { low, high, job: Some(job) })))
    }

    fn count(&self, draft: &mut Draft, nth: usize) -> Option<u32> {
        draft.form.take(nth, |text| reading::count(text, self.sign, PILE_MOST))
    }

    /// At least one of them.
    fn some(&self, draft: &mut Draft, nth: usize) -> Option<u32> {
        draft.form.take(nth, |text| reading::count_within(text, self.sign, 1..=PILE_MOST))
    }

    fn money(&self, draft: &mut Draft, nth: usize) -> Option<Money> {
        let (currency, sign) = (draft.picks.currency, self.sign);
        draft.form.take(nth, |text| reading::money(text, currency, sign))
    }

    fn maybe_money(&self, draft: &mut Draft, nth: usize) -> Option<Option<Money>> {
        let (currency, sign) = (draft.picks.currency, self.sign);
        draft.form.maybe(nth, |text| reading::money(text, currency, sign))
    }

    fn number(&self, draft: &mut Draft, nth: usize) -> Option<Decimal> {
        draft.form.take(nth, |text| reading::number(text, self.sign, Decimal::ZERO..=Decimal::from(1_000_000)))
    }

    fn typing(&self, draft: &Draft) -> Typing {
        Typing { units: draft.picks.units, sign: self.sign }
    }

    fn begin(&self, draft: &mut Draft) -> Option<Command> {
        let pieces = self.some(draft, 0)?;
        let name = draft.words.first().map(|name| name.trim().to_owned()).unwrap_or_default();
        let picks = &draft.picks;
        let (currency, units, made_for) = (picks.currency, picks.units, picks.made_for);
        Some(match picks.design {
            Some(design) => {
                let job = JobBegan { name, currency, units, pieces, made_for };
                Command::Plan(PlanCommand::MakeAgain { job, design })
            }
            None => Command::Job(JobCommand::Begin { name, currency, units, pieces, made_for }),
        })
    }

    fn part(&self, draft: &mut Draft, (job, was): (Id, Option<String>)) -> Option<JobCommand> {
        let typing = self.typing(draft);
        let n = self.some(draft, 0)?;
        let thickness = draft.form.side(1, Side::Thickness, typing)?;
        let width = draft.form.side(2, Side::Width, typing)?;
        let length = draft.form.side(3, Side::Length, typing)?;
        let name = draft.words.first().map(|name| name.trim().to_owned()).unwrap_or_default();
        let part = PartPlanned { job, name, n, thickness, width, length, wood: draft.picks.wood.clone() };
        Some(match was.filter(|was| *was != part.name) {
            Some(was) => JobCommand::RenamePart { was, part },
            None => JobCommand::PlanPart(part),
        })
    }

    /// An operation that was planned keeps its name: its runs bear it.
    fn plan(&self, draft: &mut Draft, (job, was): (Id, Option<String>)) -> Option<JobCommand> {
        let most = fivebar_core::quantity::Span::minutes(9_999 * 60);
        let span = draft.form.maybe(0, |text| reading::span(text, self.sign, most))?;
        let pieces = draft.form.maybe(1, |text| reading::count(text, self.sign, PILE_MOST))?;
        let op = was.or(draft.words.first().map(|name| name.trim().to_owned())).unwrap_or_default();
        let stage = draft.picks.finish.then_some(Stage::Finish);
        Some(JobCommand::PlanOperation(OperationPlanned { job, op, kind: draft.picks.kind, stage, span, pieces }))
    }

    /// A spending of the open job; with none open, of the workshop.
    fn spend(&self, draft: &mut Draft) -> Option<MoneyCommand> {
        let what = draft.words.first().map(|what| what.trim().to_owned()).filter(|what| !what.is_empty());
        let on = self.job.map_or(On::Workshop, On::Job);
        let (currency, when) = (draft.picks.currency, draft.picks.spent_on.when(self.now));
        if draft.picks.way == Way::Share && draft.picks.can.is_counted() {
            return self.of_can(draft, (on, when));
        }
        let much = match draft.picks.way {
            Way::Sum => Much::Whole(self.money(draft, 0)?),
            Way::Each => Much::Each { n: self.number(draft, 0)?, each: self.number(draft, 1)?, currency },
            Way::Share => Much::Share { used: self.number(draft, 0)?, of: self.number(draft, 1)?, pack: self.money(draft, 2)? },
            Way::Drive => {
                let typing = self.typing(draft);
                let distance = draft.form.take(0, |text| reading::distance(text, typing))?;
                let rate = self.rate(draft)?;
                let delivery = draft.picks.brings;
                return Some(MoneyCommand::Drive { on, distance, rate, currency, what, when, delivery });
            }
        };
        let kind = draft.picks.spending.clone();
        draft.picks.more = kind.is_none();
        Some(MoneyCommand::Spend { on, much, kind: kind?, what, when })
    }

    /// Some of a can that is there, or a can that is opened now: of that nothing need be used yet.
    fn of_can(&self, draft: &mut Draft, (on, when): (On, Option<Moment>)) -> Option<MoneyCommand> {
        let what = draft.words.first().map(|what| what.trim().to_owned()).filter(|what| !what.is_empty());
        let kind = draft.picks.spending.clone();
        if let Some(can) = draft.picks.can.picked {
            let used = if draft.picks.can.by_part { self.part_of_can(draft)? } else { self.number(draft, 0)? };
            let much = Much::OfCan { can, used };
            return Some(MoneyCommand::Spend { on, much, kind: kind?, what, when });
        }
        let used = if draft.form.is_empty(0) { None } else { Some(self.number(draft, 0)?) };
        let (of, sum) = (Exact(self.number(draft, 1)?), self.money(draft, 2)?);
        draft.picks.more = kind.is_none();
        let (kind, unit) = (kind?, draft.picks.can.unit.clone()?);
        let what = what.unwrap_or_else(|| crate::words::en::jobs::upper_first(&crate::words::en::job::spending(kind.as_str())));
        let takes = used.filter(|used| !used.is_zero()).map(|used| (on, used));
        Some(MoneyCommand::OpenCan { pack: PackOpened { what, kind, sum, of, unit, when }, takes })
    }

    /// A part of a full can, typed in per cent, in the can's unit.
    fn part_of_can(&self, draft: &mut Draft) -> Option<Decimal> {
        let percent = draft.form.take(0, |text| reading::percent(text, self.sign))?;
        Some(percent.checked_mul(self.can_holds?)?.checked_div(Decimal::ONE_HUNDRED)?.normalize())
    }

    /// The rate as typed; nothing typed is as the till has it.
    fn rate(&self, draft: &mut Draft) -> Option<Option<(Decimal, fivebar_core::ledger::kind::haul::Per)>> {
        use fivebar_core::ledger::kind::haul::Per;
        use fivebar_core::quantity::Units;
        let per = if draft.picks.units == Units::Inch { Per::Mile } else { Per::Km };
        if draft.form.is_empty(1) {
            return Some(None);
        }
        self.number(draft, 1).map(|rate| Some((rate, per)))
    }

    fn describe(&self, draft: &mut Draft, job: Id) -> Option<JobDescribed> {
        let typing = self.typing(draft);
        let mut facts = JobDescribed::of(job);
        if draft.what == What::Name {
            facts.name = draft.words.first().map(|name| name.trim().to_owned());
            facts.pieces = Some(self.some(draft, 0)?);
            return Some(facts);
        }
        if draft.what == What::Size {
            // An emptied field takes away what was said.
            let mut side = |nth| Some(draft.form.maybe(nth, |text| reading::length(text, typing))?.or(Some(Length::ZERO)));
            (facts.width, facts.depth, facts.height) = (side(0)?, side(1)?, side(2)?);
            let mass = draft.form.maybe(3, |text| reading::mass(text, typing))?;
            facts.weight = Some(mass.map_or(0, Mass::as_grams));
            return Some(facts);
        }
        let word = |nth: usize| draft.words.get(nth).map(|word| word.trim().to_owned());
        (facts.wood, facts.finish, facts.care, facts.delivery) = (word(0), word(1), word(2), word(3));
        Some(facts)
    }

    fn sale(&self, draft: &mut Draft, job: Id) -> Option<SaleCommand> {
        match draft.what.clone() {
            What::Sell(agreed) => {
                let (sum, n) = (self.money(draft, 0)?, self.count(draft, 1)?);
                let (paid, carried) = (draft.picks.paid, Some(draft.picks.carried));
                let tax = self.tax.map(|tax| (tax.rate, tax.side));
                Some(SaleCommand::Sell(SellOrder { job, n, sum, tax, agreed, paid, carried, buyer: None, when: None, heard: false }))
            }
            What::Pay(to) => {
                let paid = draft.picks.paid.unwrap_or(fivebar_core::ledger::kind::sale::Paid::Notes);
                let sum = self.money(draft, 0)?;
                Some(SaleCommand::Pay(PayOrder { job, sum, paid, fee: None, of: to.into(), when: None }))
            }
            What::HandBack(over) => {
                let (sum, paid) = (self.money(draft, 0)?, draft.picks.paid.unwrap_or(fivebar_core::ledger::kind::sale::Paid::Notes));
                Some(SaleCommand::HandBack(HandBackOrder { job, sum, paid, agreed: over.agreed, sale: over.sale, when: None }))
            }
            What::Refund(sale) if draft.picks.they_keep => {
                Some(SaleCommand::LetKeep(LetKeepOrder { job, sale, sum: self.money(draft, 0)?, when: None }))
            }
            What::Refund(sale) => {
                let (back, several) = (self.money(draft, 0)?, 1 < draft.form.slots.len());
                let n = if several { self.count(draft, 1)? } else { 1 };
                let kept = self.back.and_then(|(came, _)| came.minus(back).ok()).filter(|kept| !kept.is_zero());
                let (ends, again) = (draft.picks.ends && self.back.is_some_and(|(_, is_done)| is_done), !draft.picks.ends);
                Some(SaleCommand::BringBack(BringBackOrder { job, sale, n, kept, ends, again, when: None }))
            }
            What::Cancel(agreed) => {
                let back = if draft.form.slots.is_empty() { None } else { Some(self.money(draft, 0)?) };
                let kept = self.back.zip(back).and_then(|((came, _), back)| came.minus(back).ok()).filter(|kept| !kept.is_zero());
                let no_show = draft.picks.never_came.then_some(true);
                Some(SaleCommand::Cancel(AgreementCancelled { job, agreed, kept, no_show, back: None }))
            }
            What::Consign => {
                let (n, tag) = (self.count(draft, 0)?, self.money(draft, 1)?);
                let percent = draft.form.take(2, |text| reading::percent(text, self.sign))?;
                let share = Exact(percent.checked_div(Decimal::ONE_HUNDRED)?.normalize());
                let (terms, gallery) = (draft.picks.terms, draft.picks.gallery);
                let (with_tax, maker_pays) = (terms.with_tax.then_some(true), terms.maker_pays.then_some(true));
                Some(SaleCommand::Consign(PiecesConsigned { job, n, tag, share, with_tax, maker_pays, gallery, when: None }))
            }
            What::NotForSale => {
                let n = self.count(draft, 0)?;
                Some(SaleCommand::NoteNotForSale(PiecesNotForSale { job, n, why: draft.picks.instead, when: None }))
            }
            What::GalleryPaid(_) => self.gallery_paid(draft, job),
            _ => None,
        }
    }

    /// What a gallery handed over, with what it still owes by its terms, unless that was all.
    fn gallery_paid(&self, draft: &mut Draft, job: Id) -> Option<SaleCommand> {
        let (n, sum) = (self.count(draft, 0)?, self.money(draft, 1)?);
        let there = self.gallery?;
        let due = there.lacks(n, sum, None).filter(|_| !draft.picks.is_all);
        let owed = due.map_or(Some(sum), |due| sum.plus(due).ok())?;
        let (tax, gallery, lot) = (there.tax_of(n, owed, None), there.gallery, Some(there.lot));
        let (when, sold_for, rate, side) = (None, None, None, None);
        Some(SaleCommand::NoteConsignmentPaid(ConsignmentPaid { job, n, sum, tax, gallery, when, lot, sold_for, rate, side, due }))
    }
}
