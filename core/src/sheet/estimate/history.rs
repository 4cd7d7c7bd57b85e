//! What earlier jobs say: the times of their operations and of whole pieces, and what they took of what was thought.

mod taught;

use super::alike::is_alike;
use super::coats::without_number;
use crate::bench::estimate::whole::{first_of, kind_in};
use crate::bench::estimate::{Factor, Past};
use crate::bench::{Batch, Kind};
use crate::ledger::Book;
use crate::ledger::fold::{Job, OldJob, jobs};
use crate::quantity::{Count, Decimal, Id, Key, Listed, Moment, Sorted, Span, in_small};
use crate::sheet::Shop;
use std::cell::{OnceCell, RefCell};
use std::rc::Rc;
use taught::{Taught, taught};

/// What earlier jobs say, gathered when somebody asks: what each of them teaches, and of that what is of all jobs, of all but the one with an end
/// that was asked for last, and what was known when one was begun. It holds until the book changes.
#[derive(Debug, Default)]
pub struct Gathered {
    jobs: OnceCell<Vec<Job>>,
    taught: OnceCell<Vec<Taught>>,
    all: OnceCell<Rc<History>>,
    but: RefCell<Option<(Id, Rc<History>)>>,
    by_then: RefCell<Option<(Begun, Rc<History>)>>,
}

/// A job, and when it was begun.
type Begun = (Id, Moment);

/// Earlier jobs that count, and those told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// Own jobs that the maker is done with, and old jobs told.
    pub own: Count,
    pub told: Count,
    /// Actual over thought, those told first, then the oldest first.
    pub ratios: Vec<Decimal>,
    /// What operations took on one job each, by their names in small letters.
    operations: Sorted<String, Vec<Rc<Done>>>,
    /// All coats of one job, whether by one operation or by several with numbers, by the name without one.
    coats: Sorted<String, Vec<Rc<Done>>>,
    pieces: Vec<OldPiece>,
    /// The maker's own woods, by their names in small letters.
    woods: Vec<String>,
    /// Rework, and all time, of the own jobs.
    pub rework: Span,
    pub all: Span,
}

/// What an operation took on one job.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    of: Id,
    /// The name of the job.
    pub job: String,
    design: Option<Id>,
    piece: Option<Key>,
    named: Option<Key>,
    /// Of so many coats as it is to say something of.
    pub past: Past,
    /// What it took as it was, in how many coats, and of how many it says what they take: one of what is no coat.
    pub took: Span,
    pub coats: Count,
    pub says: Count,
    /// Somebody worked along.
    pub helped: bool,
}

impl Done {
    /// The same for so many coats, each of which takes what one of its own did.
    fn of_coats(self, n: Count) -> Done {
        let [n, had] = [n, self.coats].map(|coats| coats.max(1));
        if n == had {
            return Done { says: n, ..self };
        }
        let [of, to] = [n, had].map(|coats| Span::minutes(coats.into()));
        let time = self.took.in_ratio(of, to).unwrap_or(self.took);
        Done { past: Past { time, noted: vec![], ..self.past }, says: n, ..self }
    }

    /// All coats of a job together, of as many pieces as the first of them.
    fn and(self, other: &Done) -> Done {
        let took = self.took.plus(other.took);
        let past = Past { time: took, noted: vec![], ..self.past };
        Done { past, took, coats: self.coats.saturating_add(other.coats), helped: self.helped || other.helped, ..self }
    }
}

/// From which earlier jobs an operation is learnt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of<'a> {
    Design(Id),
    /// The same kind of piece, said of both or told by their names.
    Kind(&'a Key),
    /// Any that the kind of piece does not tell apart from this one, as it is said of both: a guess by a name leaves no work of the maker's own out.
    NotApart(Option<&'a Key>),
}

/// A kind that says what it is not, and not what it is.
const OTHER: &str = "other";

impl Of<'_> {
    fn holds(self, done: &Done) -> bool {
        match self {
            Of::Design(design) => done.design == Some(design),
            Of::Kind(kind) => kind.as_str() != OTHER && done.piece.as_ref().or(done.named.as_ref()) == Some(kind),
            Of::NotApart(kind) => kind.zip(done.piece.as_ref()).is_none_or(|(kind, other)| kind == other),
        }
    }
}

/// What whole pieces took, as one job or as they were told.
#[derive(Clone, Debug, PartialEq)]
pub struct OldPiece {
    pub name: String,
    /// So many alike, and what they took together, of all heads.
    pub n: Count,
    pub span: Span,
    pub helped: bool,
    /// Minutes of that for the first one.
    pub first_minutes: f64,
    kind: Option<Key>,
    design: Option<Id>,
    /// The job it was told for.
    told_for: Option<Id>,
    /// What it waited, where anything of it did.
    pub waited: Option<Waited>,
    /// What each of its operations took, by its name in small letters; none of one that was told.
    pub operations: Sorted<String, Span>,
}

/// What a job waited before it was hard: as long as any of it was clamped or dried, one after the other, whatever was done meanwhile (ours).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waited {
    /// A coat, where one dried; else what it waited for last.
    pub what: Key,
    pub span: Span,
    /// Of that the last: a coat hardens from when it was put on.
    pub last: Span,
}

/// Which earlier pieces a whole one goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    Design,
    /// Of its kind, as was said.
    Kind,
    /// Of the kind that its name tells, while none is said.
    Named,
    /// Those that were told for this very job.
    Told,
    /// Those of no known kind whose name calls the same thing, where the job is of none either.
    Alike,
    /// Any of no known kind, told for no job or measured, where the job is of none either: a guess, by which nothing is quoted.
    NoKind,
    /// None: the default of its kind.
    Usual,
}

impl OldPiece {
    fn new((name, n, span): (&str, Count, Span), (kind, design, told_for): (Option<Key>, Option<Id>, Option<Id>)) -> OldPiece {
        OldPiece {
            name: name.to_owned(),
            n: n.max(1),
            span,
            helped: false,
            first_minutes: first_of(n, span),
            kind,
            design,
            told_for,
            waited: None,
            operations: Sorted::new(),
        }
    }

    /// What the first one took of it.
    pub fn first(&self) -> Span {
        crate::bench::estimate::spread::whole(self.first_minutes)
    }
}

impl Gathered {
    /// Every job of the book, the newest first.
    pub fn jobs(&self, book: &Book) -> &[Job] {
        self.jobs.get_or_init(|| jobs(book).collect())
    }

    /// The history of every job but this one. Those marked as not typical are left out. One that goes on tells of its operations alone, which
    /// are left out where it asks itself.
    pub fn but(&self, shop: &Shop, job: &Job) -> Rc<History> {
        if job.ended.is_none() {
            return self.gathered(shop).clone();
        }
        if let Some((of, history)) = &*self.but.borrow()
            && *of == job.id
        {
            return history.clone();
        }
        let history = Rc::new(self.history_of(shop, Some(job.id), Moment::at(i64::MAX)));
        self.but.replace(Some((job.id, history.clone())));
        history
    }

    /// The same as far as it was known by a moment: old jobs that were told later, jobs that ended later, and operations that were worked on
    /// later are left out.
    pub fn known_by(&self, shop: &Shop, job: Id, by: Moment) -> Rc<History> {
        if let Some((of, history)) = &*self.by_then.borrow()
            && *of == (job, by)
        {
            return history.clone();
        }
        let history = Rc::new(self.history_of(shop, Some(job), by));
        self.by_then.replace(Some(((job, by), history.clone())));
        history
    }

    /// The history of all jobs, for estimates of jobs that go on.
    pub fn all(&self, shop: &Shop) -> &History {
        self.gathered(shop)
    }

    fn gathered(&self, shop: &Shop) -> &Rc<History> {
        self.all.get_or_init(|| Rc::new(self.history_of(shop, None, Moment::at(i64::MAX))))
    }

    fn history_of(&self, shop: &Shop, but: Option<Id>, by: Moment) -> History {
        let woods = shop.workshop.wood.woods.own().map(|(_, wood)| in_small(&wood.name)).listed();
        let mut history = History { woods, ..History::default() };
        told(shop, by, &mut history);
        let all = self.taught.get_or_init(|| taught(shop, self.jobs(shop.book)));
        all.iter().filter(|taught| Some(taught.of) != but).for_each(|taught| taught.known_by(by, &mut history));
        history
    }
}

impl History {
    /// Coats of one job are one, by whatever operations they were put on.
    fn coated(&mut self, name: &str, done: &Rc<Done>) {
        let all = self.coats.entry(name.to_owned()).or_default();
        match all.pop_if(|last| last.of == done.of) {
            Some(before) => all.push(Rc::new(Rc::unwrap_or_clone(before).and(done))),
            None => all.push(done.clone()),
        }
    }

    /// What the maker's jobs took of what was thought.
    pub fn factor(&self) -> Factor {
        Factor::of(&self.ratios)
    }

    /// What an operation took on other jobs, job by job, the last one last: what was just done teaches nothing of this very job, also where the
    /// history is of all of them. One coat with a number takes what one coat does where nothing is known by its own name, and coats without one what
    /// those with one did together; of coats as many as the last of these jobs had (ours).
    pub fn done(&self, op: &str, job: Id, of: Of) -> Vec<Done> {
        let name = in_small(op.trim());
        let of_it = |all: &Sorted<String, Vec<Rc<Done>>>, name: &str| {
            all.get(name).into_iter().flatten().filter(|done| done.of != job && of.holds(done)).map(|done| (**done).clone()).listed()
        };
        let number = without_number(op);
        let own = of_it(&self.operations, &name);
        let found = if own.is_empty() { of_it(&self.coats, number.as_deref().unwrap_or(&name)) } else { own };
        let coats = found.last().map_or(1, |last| if number.is_some() { 1 } else { last.coats });
        found.into_iter().map(|done| done.of_coats(coats)).listed()
    }

    /// Earlier pieces that all of a job goes by: of its design, else of its kind, by its name while none is said, else those told for it; of a job
    /// of no known kind else those of none, of an alike name where there are any. Any others say nothing: three shelves are no measure of a frame, nor
    /// is what was told for a mirror, nor are chairs of a dining table, whether that was said or its name tells it.
    pub fn of_piece(&self, job: &Job) -> (By, Vec<OldPiece>) {
        let (piece, named, design) = (job.described.piece.as_ref(), job.kind_by_name(), job.design);
        let no_kind = |whole: &OldPiece| piece.is_none() && named.is_none() && whole.kind.is_none() && whole.told_for.is_none();
        let meant = |by: By, whole: &OldPiece| match by {
            By::Design => design.is_some() && whole.design == design,
            By::Kind => piece.is_some() && whole.kind.as_ref() == piece,
            By::Named => named.is_some() && whole.kind == named,
            By::Told => whole.told_for == Some(job.id),
            By::Alike => no_kind(whole) && is_alike(&job.name, &whole.name, &self.woods),
            By::NoKind => no_kind(whole),
            By::Usual => false,
        };
        let ways = [By::Design, By::Kind, By::Named, By::Told, By::Alike, By::NoKind].into_iter();
        let found = ways.map(|by| (by, self.pieces.iter().filter(|whole| meant(by, whole)).cloned().listed()));
        found.into_iter().find(|(_, found): &(By, Vec<OldPiece>)| !found.is_empty()).unwrap_or((By::Usual, vec![]))
    }
}

/// One whose kind neither was told nor is told by its name is of that which the job it was told for is said to be.
fn told(shop: &Shop, by: Moment, history: &mut History) {
    let known = |old: &&OldJob| shop.book.entry(old.first).is_none_or(|(entry, _)| entry.at() <= by);
    for old in shop.workshop.old_jobs.iter().filter(known) {
        let named = || kind_in(&old.name).and_then(Key::read);
        let kind = old.piece.clone().or_else(named).or_else(|| shop.job(old.told_for?).ok()?.kind_of_piece());
        history.told = history.told.saturating_add(1);
        history.ratios.extend(old.ratio());
        history.pieces.push(OldPiece::new((&old.name, old.pieces, old.span), (kind, None, old.told_for)));
    }
}

/// For how many pieces an operation is: as was said at the bench, else planned; else what is made as often as the job has pieces, all else once.
pub fn pieces(job: &Job, kind: Kind, batch: &Batch) -> Count {
    batch.of.unwrap_or(if kind == Kind::Make { job.pieces } else { 1 })
}

/// What a job took of what was thought of it, see [`Job::judged`].
pub fn ratio(job: &Job, logged: Span, of_planned: Span) -> Option<Decimal> {
    let took = job.judged(logged, of_planned);
    Decimal::from(took.as_ms()).checked_div(Decimal::from(job.thought()?.as_ms())).filter(|ratio| Decimal::ZERO < *ratio)
}
