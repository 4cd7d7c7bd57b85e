//! A wait: clamps, a coat that dries, cure. It is never work: it has an off time, and nothing of it is paid.
//!
//! Off time = begin + span. Usual spans are the maker's own, else ours; the tin decides [J].

use crate::quantity::{Count, Id, Key, Listed, Moment, Sorted, Span, Wall, order_by_key, spelled};
use crate::refusal::{Answer, Refusal};

/// The least a wait may be said to last.
pub const SPAN_LEAST: Span = Span::minutes(1);

/// The most: a year of 366 days.
pub const SPAN_MOST: Span = Span::minutes(366 * 24 * 60);

/// How warm the shop is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Warmth {
    Cold,
    #[default]
    Normal,
    Warm,
}

spelled!(Warmth: Cold "cold", Normal "normal", Warm "warm");

impl Warmth {
    pub const ALL: [Warmth; 3] = [Warmth::Cold, Warmth::Normal, Warmth::Warm];
}

/// What is waited for. The list is open: a newer version may know more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum What {
    /// Glue in clamps.
    Glue,
    /// A coat before the next.
    Coat,
    /// Wood, or what was wetted.
    Dry,
    /// Until it may be used.
    Cure,
    Other,
}

impl What {
    /// Those a maker chooses from.
    pub const ALL: [What; 4] = [What::Glue, What::Coat, What::Dry, What::Cure];

    /// What a key says.
    ///
    /// ```
    /// use fivebar_core::bench::wait::What;
    /// use fivebar_core::quantity::Key;
    /// assert_eq!(What::of(&Key::read("glue").unwrap()), What::Glue);
    /// assert_eq!(What::of(&Key::read("steam").unwrap()), What::Other);
    /// ```
    pub fn of(key: &Key) -> What {
        What::ALL.into_iter().find(|what| what.name() == key.as_str()).unwrap_or(What::Other)
    }

    pub fn name(self) -> &'static str {
        match self {
            What::Glue => "glue",
            What::Coat => "coat",
            What::Dry => "dry",
            What::Cure => "cure",
            What::Other => "other",
        }
    }

    /// Glues or finishes that have a usual span of ours.
    pub fn stuffs(self) -> impl Iterator<Item = &'static str> {
        USUAL.iter().filter(move |row| row.0 == self).map(|row| row.1)
    }
}

/// Usual spans of ours in minutes, in a cold shop (about 10 °C), a normal one (20) and a warm one (27) [J]: the tin decides.
/// The first of each is what stands where no glue or finish was said.
const USUAL: [(What, &str, [i64; 3]); 14] = [
    (What::Glue, "pva", [180, 90, 60]),
    (What::Glue, "polyurethane", [360, 180, 120]),
    (What::Glue, "epoxy", [1_440, 720, 480]),
    (What::Glue, "hide", [960, 720, 480]),
    (What::Glue, "contact", [40, 20, 15]),
    (What::Coat, "oil", [2_160, 1_440, 960]),
    (What::Coat, "varnish", [2_880, 1_440, 960]),
    (What::Coat, "water-based", [360, 180, 120]),
    (What::Coat, "shellac", [120, 60, 45]),
    (What::Coat, "lacquer", [120, 60, 45]),
    (What::Coat, "paint", [480, 240, 180]),
    (What::Coat, "wax", [60, 30, 20]),
    (What::Dry, "wetted", [2_880, 1_440, 960]),
    (What::Cure, "finish", [20_160, 10_080, 7_200]),
];

/// A usual span of ours: of this glue or finish, else of the first of its kind.
///
/// ```
/// use fivebar_core::bench::wait::{Warmth, What, default_span};
/// use fivebar_core::quantity::Span;
/// assert_eq!(default_span(What::Glue, None, Warmth::Normal), Some(Span::minutes(90)));
/// assert_eq!(default_span(What::Glue, Some("epoxy"), Warmth::Cold), Some(Span::minutes(1_440)));
/// assert_eq!(default_span(What::Other, None, Warmth::Normal), None);
/// ```
pub fn default_span(what: What, stuff: Option<&str>, warmth: Warmth) -> Option<Span> {
    let of = |row: &&(What, &str, [i64; 3])| row.0 == what && stuff.is_none_or(|stuff| stuff == row.1);
    let (.., spans) = USUAL.iter().find(of).or_else(|| USUAL.iter().find(|row| row.0 == what))?;
    let [cold, normal, warm] = spans.map(Span::minutes);
    Some(match warmth {
        Warmth::Cold => cold,
        Warmth::Normal => normal,
        Warmth::Warm => warm,
    })
}

/// A span that a wait may have.
///
/// # Errors
/// [`Refusal::WaitOutOfRange`] for less than a minute or more than 366 days.
pub fn of_a_wait(met: Span) -> Answer<Span> {
    let (least, most) = (SPAN_LEAST, SPAN_MOST);
    if least <= met && met <= most { Ok(met) } else { Err(Refusal::WaitOutOfRange { met, least, most }) }
}

/// When a wait was ended, and whether before its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Off {
    pub at: Wall,
    pub early: bool,
    /// Somebody took it off. Else it is over by what was noted since: a later coat, or its pieces are gone.
    pub taken: bool,
}

/// One wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wait {
    pub id: Id,
    pub op: String,
    pub job: Option<Id>,
    /// The run it came from.
    pub run: Option<Id>,
    /// The count it came with, in the same act.
    pub notch: Option<Id>,
    /// Pieces that wait.
    pub n: Count,
    pub what: Key,
    /// The glue or the finish.
    pub stuff: Option<Key>,
    pub began: Wall,
    /// As said last.
    pub span: Span,
    /// How often the span was put right, and that taken back or put back: a number that never falls.
    pub mended: Count,
    pub ended: Option<Off>,
    /// The first so many of its pieces have their next coat: they wait for it no more.
    pub coated: Count,
    /// A coat that went on before the one below was to be dry: when that was to be.
    pub onto_wet: Option<Moment>,
}

impl Wait {
    /// When it may come off: begin + span.
    pub fn off(&self) -> Moment {
        self.began.at.plus(self.span)
    }

    /// Pieces that wait still, or waited to its end.
    pub fn still(&self) -> Count {
        self.n.saturating_sub(self.coated)
    }

    pub fn is_on(&self) -> bool {
        self.ended.is_none()
    }

    /// Its time is over; it stays until it is taken off.
    pub fn is_over(&self, now: Moment) -> bool {
        self.off() <= now
    }

    /// What is left of it; nothing once it is over.
    pub fn left(&self, now: Moment) -> Span {
        now.until(self.off())
    }

    pub fn what(&self) -> What {
        What::of(&self.what)
    }

    /// Whole pieces wait: a coat or what was wetted dries, and dust would lie on it.
    pub fn is_whole(&self) -> bool {
        self.what() != What::Glue
    }
}

/// How an operation ends in a wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Usual {
    pub what: Key,
    pub stuff: Option<Key>,
    pub span: Span,
    /// The span is the maker's own.
    pub own: bool,
}

/// What was said of an operation's wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    pub what: Key,
    pub stuff: Option<Key>,
    pub span: Option<Span>,
}

/// Every wait there is, and what is usual.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Waits {
    // In order of their off times, those alike in order of their beginning.
    waits: Vec<Wait>,
    pub usuals: Usuals,
}

/// What is usual in this shop.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Usuals {
    /// By operation; `None` where the maker said that it has no wait.
    pub ops: Sorted<String, Option<Said>>,
    /// The maker's own spans.
    pub spans: Sorted<(Key, Option<Key>, Warmth), Span>,
    pub warmth: Warmth,
    /// When that was said.
    pub warmth_said: Option<Wall>,
    pub quiet: Option<super::meanwhile::Quiet>,
    /// Operations said to be loud, or not.
    pub loud: Sorted<String, bool>,
}

impl Waits {
    pub fn new(mut waits: Vec<Wait>, usuals: Usuals) -> Waits {
        order_by_key(&mut waits, |wait| (wait.off(), wait.began.at)); // those alike stay in the order of the book
        Waits { waits, usuals }
    }

    /// The same waits, with what is read of each.
    pub fn read(self, of: impl FnMut(Wait) -> Wait) -> Waits {
        Waits { waits: self.waits.into_iter().map(of).listed(), ..self }
    }

    /// Every wait, the first off time first.
    pub fn all(&self) -> impl DoubleEndedIterator<Item = &Wait> + Clone {
        self.waits.iter()
    }

    /// Those that were not taken off, the first off time first.
    pub fn on(&self) -> impl DoubleEndedIterator<Item = &Wait> + Clone {
        self.waits.iter().filter(|wait| wait.is_on())
    }

    pub fn wait(&self, id: Id) -> Option<&Wait> {
        self.waits.iter().find(|wait| wait.id == id)
    }

    /// The next off time that is still to come.
    pub fn next_off(&self, now: Moment) -> Option<&Wait> {
        self.on().find(|wait| !wait.is_over(now))
    }

    /// Those that came to their end after one moment and by another: what is to ring.
    pub fn due(&self, (after, by): (Moment, Moment)) -> impl Iterator<Item = &Wait> {
        self.on().filter(move |wait| after < wait.off() && wait.off() <= by)
    }
}

impl Usuals {
    /// How an operation ends in a wait in this shop: as the maker said, else by `guess`, a kind that its name tells.
    pub fn of(&self, op: &str, guess: Option<What>) -> Option<Usual> {
        let said = match self.ops.get(op) {
            Some(said) => said.clone()?,
            None => Said { what: Key::read(guess?.name())?, stuff: None, span: None },
        };
        let Said { what, stuff, span } = said;
        let (found, own) = match span {
            Some(span) => (span, true),
            None => self.span((&what, stuff.as_ref()), self.warmth)?,
        };
        Some(Usual { what, stuff, span: found, own })
    }

    /// The usual span in a shop so warm, and whether it is the maker's own.
    pub fn span(&self, (what, stuff): (&Key, Option<&Key>), warmth: Warmth) -> Option<(Span, bool)> {
        let own = self.spans.get(&(what.clone(), stuff.cloned(), warmth)).copied();
        let ours = || default_span(What::of(what), stuff.map(Key::as_str), warmth);
        own.map(|span| (span, true)).or_else(|| ours().map(|span| (span, false)))
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, id, wall};
    use super::*;

    fn key(text: &str) -> Key {
        Key::read(text).unwrap()
    }

    fn wait(n: u8, began: i64, minutes: i64) -> Wait {
        let (op, what, span) = ("glue tops".into(), key("glue"), Span::minutes(minutes));
        Wait {
            id: id(n),
            op,
            job: None,
            run: None,
            notch: None,
            n: 1,
            what,
            stuff: None,
            began: wall(began),
            span,
            mended: 0,
            ended: None,
            coated: 0,
            onto_wet: None,
        }
    }

    /// Drawing 7: clamped at 11:29, 11:38, 11:48, 11:57 and 12:07, 90 minutes each.
    #[test]
    fn off_is_begin_and_span_and_the_first_comes_first() {
        let clamped = [717, 689, 727, 698, 708];
        let waits = Waits::new((1..).zip(clamped).map(|(n, began)| wait(n, began, 90)).collect(), Usuals::default());
        let off: Vec<u16> = waits.on().map(|wait| Wall::new(wait.off(), wait.began.offset).minute_of_day()).collect();
        assert_eq!(off, [779, 788, 798, 807, 817]); // 12:59, 13:08, 13:18, 13:27, 13:37
        assert_eq!(waits.next_off(at(788)).map(|wait| wait.off()), Some(at(798)));
        assert_eq!(waits.due((at(779), at(807))).count(), 3);
        assert_eq!((waits.all().next().unwrap().left(at(700)), waits.all().next().unwrap().left(at(800))), (Span::minutes(79), Span::ZERO));
    }

    #[test]
    fn every_span_of_ours_may_be_waited_and_none_grows_with_warmth() {
        for (what, stuff, _) in USUAL {
            let spans = Warmth::ALL.map(|warmth| default_span(what, Some(stuff), warmth).unwrap());
            assert!(spans.is_sorted_by(|colder, warmer| colder >= warmer), "{stuff}");
            assert!(spans.into_iter().all(|span| of_a_wait(span).is_ok()), "{stuff}");
            assert!(Key::read(stuff).is_some(), "{stuff}");
        }
        let met = Span::minutes(0);
        assert_eq!(of_a_wait(met), Err(Refusal::WaitOutOfRange { met, least: SPAN_LEAST, most: SPAN_MOST }));
        assert!(of_a_wait(SPAN_MOST).is_ok() && of_a_wait(SPAN_MOST.plus(Span::ms(1))).is_err() && of_a_wait(Span::ms(59_999)).is_err());
    }

    #[track_caller]
    fn check(usuals: &Usuals, op: &str, guess: Option<What>, found: Option<(&str, i64, bool)>) {
        let usual = usuals.of(op, guess);
        assert_eq!(
            usual.map(|usual| (usual.what.to_string(), usual.span.as_minutes(), usual.own)),
            found.map(|(w, m, o)| (w.into(), m, o))
        );
    }

    #[test]
    fn what_the_maker_said_comes_before_what_is_ours() {
        let mut usuals = Usuals::default();
        check(&usuals, "sand", None, None);
        check(&usuals, "glue tops", Some(What::Glue), Some(("glue", 90, false)));
        usuals.warmth = Warmth::Cold;
        check(&usuals, "glue tops", Some(What::Glue), Some(("glue", 180, false)));
        usuals.ops.insert("glue tops".into(), Some(Said { what: key("glue"), stuff: Some(key("epoxy")), span: None }));
        check(&usuals, "glue tops", Some(What::Glue), Some(("glue", 1_440, false)));
        usuals.spans.insert((key("glue"), Some(key("epoxy")), Warmth::Cold), Span::minutes(900));
        check(&usuals, "glue tops", None, Some(("glue", 900, true)));
        usuals.ops.insert("glue tops".into(), Some(Said { what: key("glue"), stuff: None, span: Some(Span::minutes(45)) }));
        check(&usuals, "glue tops", None, Some(("glue", 45, true)));
        usuals.ops.insert("glue tops".into(), None);
        check(&usuals, "glue tops", Some(What::Glue), None);
        usuals.ops.insert("steam".into(), Some(Said { what: key("steam"), stuff: None, span: None }));
        check(&usuals, "steam", None, None);
    }
}
