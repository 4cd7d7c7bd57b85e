//! At the bin: what the book knows that speaks for or against a pile, and what to do with it.
//!
//! It is gathered once and holds while only the haul in hand is counted; each pile then asks it.

use super::enough::wanted_of;
use super::past::Past;
use super::sought::Looking;
use super::worth::counted;
use crate::bench::On;
use crate::haul::enough::Each;
use crate::haul::rejects::Seen;
use crate::haul::take::{Decides, Limits, Offered, OnRack, Verdict, Wet, least_useful, take};
use crate::haul::worth::{Counted, Milling, Terms, Yields};
use crate::haul::{Dampness, Haul, Pile, Want};
use crate::ledger::fold::Workshop;
use crate::ledger::{Book, Fact, Subject, fold};
use crate::quantity::{Count, Decimal, Id, Key, Length, Listed, Moment, Set, Sorted, Span};
use crate::refusal::Answer;
use crate::wood::minimum::Sides;
use crate::wood::species::is_known;
use std::rc::Rc;

/// A part of a job in hand.
#[derive(Clone, Debug, PartialEq)]
pub struct PartWanted {
    pub job: Id,
    /// The name of its job.
    pub of: String,
    pub name: String,
    pub n: Count,
    pub section: [Length; 2],
    pub length: Length,
    pub wood: Option<Key>,
}

/// Wood and section: what lies together on the rack.
type Section = (Key, Length, Length);

/// All that is known beside the haul in hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// What the supplier's other hauls showed.
    pub past: Past,
    by_wood: Sorted<Key, Seen>,
    /// Pieces of other hauls on the rack that are set apart for nobody, and when the last of them was begun or taken.
    rack: Sorted<Section, (Count, Moment)>,
    /// Pieces of other hauls that a job has, or that are set apart for it.
    in_jobs: Sorted<(Section, Id), Count>,
    pub parts: Vec<PartWanted>,
    /// What sorted piles of earlier hauls were wanted for, the newest first, with the parts they did not come to.
    missing: Vec<(Section, Want)>,
    /// What plans lack and is looked for.
    pub looking: Looking,
    workshop: Rc<Workshop>,
}

/// What to do with a pile, and the one fact that decides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtBin {
    pub verdict: Verdict,
    pub decides: Decides,
}

impl Known {
    /// Gathers it beside the past of the haul's supplier: rejects by wood, the rack, the parts of jobs in hand.
    pub fn of(book: &Book, (workshop, past): (Rc<Workshop>, Past), haul: &Haul) -> Known {
        let (by_wood, rack, in_jobs) = (Sorted::new(), Sorted::new(), Sorted::new());
        let looking = Looking::of(book, &workshop, Some(haul.id));
        let mut known = Known { past, by_wood, rack, in_jobs, parts: parts(book), missing: vec![], looking, workshop };
        for other in fold::hauls(book).filter(|other| other.id != haul.id) {
            known.takes_in(book, &other);
        }
        known
    }

    /// Whether it was gathered for this haul.
    pub fn is_about(&self, haul: Id) -> bool {
        self.past.haul == Some(haul)
    }

    fn takes_in(&mut self, book: &Book, other: &Haul) {
        let last = last_taken(book, other.id);
        for pile in &other.piles {
            let Some(section) = section(pile) else { continue };
            self.misses(book, &section, pile);
            let jobs: Set<Id> = pile.in_jobs.keys().copied().chain(pile.stock.reserved.iter().map(|(job, _)| *job)).collect();
            for job in jobs.iter().copied() {
                let has = self.in_jobs.entry((section.clone(), job)).or_default();
                *has = has.saturating_add(pile.in_job(job)).saturating_add(pile.reserved_for(job));
            }
            let free = pile.free_for(None);
            if 0 < free {
                let begun = pile.since.map_or(other.began.at, |since| since.at);
                let used = last.get(&pile.id).copied().unwrap_or(begun);
                let (pieces, newest) = self.rack.entry(section).or_insert((0, used));
                (*pieces, *newest) = (pieces.saturating_add(free), used.max(*newest));
            }
        }
        if self.past.supplier.is_none() || other.supplier != self.past.supplier {
            return;
        }
        for pile in &other.piles {
            if let Some(wood) = &pile.wood {
                let seen = self.by_wood.entry(wood.clone()).or_default();
                *seen = Seen::pooled([*seen, pile.seen()]);
            }
        }
    }

    /// A newer pile of the same section speaks for the same part.
    fn misses(&mut self, book: &Book, section: &Section, pile: &Pile) {
        let [want] = pile.wants.as_slice() else { return };
        let told = self.missing.iter().any(|(of, other)| of == section && (&other.part, other.job) == (&want.part, want.job));
        let goes_on = |job: Id| !fold::is_ended(book, On::Job(job));
        if told || 0 < pile.unsorted() || !want.job.is_none_or(goes_on) {
            return;
        }
        let pieces = pile.still_wanted().saturating_sub(pile.held_for_wants().good);
        let wanted = match want.target().each {
            Each::Takes(n) => pieces.div_ceil(n.max(1)),
            Each::Gives(n) => pieces.saturating_mul(n),
        };
        self.missing.push((section.clone(), Want { wanted: wanted.min(want.wanted), ..want.clone() }));
    }

    /// What earlier piles of a pile's section were wanted for and did not come to: so many parts are still missing.
    pub fn missing_for(&self, pile: &Pile) -> Vec<Want> {
        let Some(section) = section(pile) else { return vec![] };
        let all = self.missing.iter().filter(|(of, want)| *of == section && 0 < want.wanted);
        all.map(|(_, want)| want.clone()).filter(|want| pile.wants.iter().all(|own| own.part != want.part)).listed()
    }

    /// Take, maybe or leave a pile of the haul in hand; none while it holds no piece, or neither its wood nor its length was said.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    pub fn at_bin(&self, haul: &Haul, pile: &Pile, now: Moment) -> Answer<Option<AtBin>> {
        if pile.taken == 0 || (pile.wood.is_none() && pile.length.is_none()) {
            return Ok(None);
        }
        let machines = self.workshop.wood.machines.values().filter_map(|minimum| minimum.length);
        let least = least_useful(self.lengths_for(pile), machines);
        let (verdict, decides) = take(&self.offered(haul, pile, now)?, least, &Limits::usual())?;
        Ok(Some(AtBin { verdict, decides }))
    }

    /// The parts a pile is wanted for where their sizes are known, else every part of a job in hand that its wood may become.
    fn lengths_for(&self, pile: &Pile) -> Vec<Length> {
        let wanted = |part: &&PartWanted| pile.wants.iter().any(|want| want.job == Some(part.job) && want.part == part.name);
        let own: Vec<Length> = self.parts.iter().filter(wanted).map(|part| part.length).listed();
        let fits = |part: &&PartWanted| part.wood.is_none() || pile.wood.is_none() || part.wood == pile.wood;
        let lengths = if own.is_empty() { self.parts.iter().filter(fits).map(|part| part.length).listed() } else { own };
        // What is looked for may be shorter than any part that is planned.
        lengths.into_iter().chain(self.looking.lengths_for(pile)).listed()
    }

    fn offered(&self, haul: &Haul, pile: &Pile, now: Moment) -> Answer<Offered> {
        let seen = pile.wood.as_ref().and_then(|wood| self.by_wood.get(wood)).copied().unwrap_or_default().of_others(pile.minds_short());
        let damp = pile.dampness;
        Ok(Offered {
            band: pile.length.map(|from| (from, pile.length_to.unwrap_or(from))),
            wood_known: pile.wood.as_ref().is_some_and(is_known),
            leaves: self.leaves(haul, pile)?,
            sorted: seen.sorted(),
            rejected: seen.rejected,
            rack: section(pile).and_then(|section| self.rack.get(&section)).map_or_else(OnRack::default, |(pieces, used)| OnRack {
                pieces: *pieces,
                unused: Span::ms(now.ms().saturating_sub(used.ms()).max(0)),
                needed: self.needed(haul, pile),
            }),
            wet: Wet { marked: damp.is_some_and(|damp| damp.wet), reading: damp.and_then(Dampness::moisture) },
        })
    }

    /// Pieces of its wood and section that are wanted: of the haul, and for parts of jobs in hand that may be cut of them; less what
    /// those jobs have or have set apart. None where nothing is wanted.
    fn needed(&self, haul: &Haul, pile: &Pile) -> Option<Count> {
        let of = section(pile)?;
        let alike = || haul.piles.iter().filter(|other| section(other).as_ref() == Some(&of));
        let wants = || alike().flat_map(|other| &other.wants);
        let said = |part: &PartWanted| wants().any(|want| want.job == Some(part.job) && want.part == part.name);
        let mut by_job: Sorted<Option<Id>, Count> = Sorted::new();
        let parts = self.parts.iter().filter(|part| part.fits(pile) && !said(part)).map(|part| (Some(part.job), part.n));
        for (job, n) in wants().map(|want| (want.job, want.good_pieces())).chain(parts) {
            let asked = by_job.entry(job).or_default();
            *asked = asked.saturating_add(n);
        }
        for (job, n) in self.looking.wanted_of(pile) {
            let asked = by_job.entry(Some(job)).or_default();
            *asked = (*asked).max(n);
        }
        let has = |job: Id| {
            let here = alike().map(|other| other.in_job(job).saturating_add(other.reserved_for(job)));
            here.fold(self.in_jobs.get(&(of.clone(), job)).copied().unwrap_or(0), Count::saturating_add)
        };
        let still = by_job.iter().map(|(job, asked)| asked.saturating_sub(job.map_or(0, has)));
        (!by_job.is_empty()).then(|| still.fold(0, Count::saturating_add))
    }

    /// What a piece leaves after its own minutes; none while size, price or pay is not known.
    fn leaves(&self, haul: &Haul, pile: &Pile) -> Answer<Option<Decimal>> {
        let Some(pay) = self.workshop.pay(haul.currency) else { return Ok(None) };
        let piece = Counted { pieces: 1, ..counted(&self.workshop, (haul, pile), self.past.seen)? };
        piece.leaves(&Terms { pay, yields: Yields::USUAL, milling: Milling::USUAL })
    }

    /// The machine whose own minimum a pile's shortest piece lacks most of, with that minimum.
    pub fn shorter_than(&self, pile: &Pile) -> Option<(Key, Length)> {
        let any = Length::PIECE_MOST;
        let piece = Sides { thickness: any, width: any, length: pile.length? };
        let lacked = |least: &Length| *least > piece.length;
        let machines = self.workshop.wood.machines.iter().filter(|(_, minimum)| !minimum.lacked_by(&piece).is_empty());
        let lacking = machines.filter_map(|(machine, minimum)| Some((machine.clone(), minimum.length.filter(lacked)?)));
        lacking.max_by_key(|(_, least)| *least)
    }

    /// Every part wanted of a pile of the haul in hand: how many more to take of it.
    pub fn wants_of(&self, haul: &Haul, pile: &Pile) -> Vec<super::enough::Wanted> {
        wanted_of(haul, pile, self.past.seen)
    }
}

impl PartWanted {
    /// It may be cut of a piece of the pile: of its wood or of any, no thicker and no wider, whichever way the piece is turned.
    fn fits(&self, pile: &Pile) -> bool {
        let ordered = |a: Length, b: Length| (a.min(b), a.max(b));
        let Some((thin, wide)) = pile.thickness.zip(pile.width).map(|(t, w)| ordered(t, w)) else { return false };
        let [thickness, width] = self.section;
        let (least, most) = ordered(thickness, width);
        let long = pile.length.is_none_or(|from| self.length <= pile.length_to.unwrap_or(from));
        (self.wood.is_none() || self.wood == pile.wood) && least <= thin && most <= wide && long
    }
}

fn section(pile: &Pile) -> Option<Section> {
    Some((pile.wood.clone().filter(is_known)?, pile.thickness?, pile.width?))
}

/// The parts of jobs the maker is not done with.
fn parts(book: &Book) -> Vec<PartWanted> {
    let going = fold::jobs(book).filter(|job| job.ended.is_none());
    let parts = going.flat_map(|job| {
        let (id, of) = (job.id, job.name);
        job.parts.into_iter().map(move |part| {
            let [thickness, width, length] = part.size;
            PartWanted { job: id, of: of.clone(), name: part.name, n: part.n, section: [thickness, width], length, wood: part.wood }
        })
    });
    parts.listed()
}

/// When pieces of each pile of a haul were last taken for a job.
fn last_taken(book: &Book, haul: Id) -> Sorted<Id, Moment> {
    let mut last = Sorted::<Id, Moment>::new();
    for entry in book.about(Subject::Haul(haul)) {
        if let Fact::PiecesTaken(f) = &entry.fact {
            let at = last.entry(f.pile).or_insert(entry.at());
            *at = entry.at().max(*at);
        }
    }
    last
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::haul::take::{Least, SetBy};
    use crate::ledger::fold;
    use crate::money::replacement::BoardPrice;
    use crate::quantity::Volume;
    use crate::sheet::past::past;
    use crate::story::{STANDS, Story, tell};

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nperson works supplier\nleave for yard\nsupplier works\n\
        pile ash ash-white 1 x 2 x 10..14 in\ncount 30 ash\n";

    fn known(story: &Story, haul: &Haul, workshop: Workshop) -> Known {
        Known::of(&story.book, (Rc::new(workshop), past(&story.book, haul)), haul)
    }

    fn at_bin(story: &Story, haul: &str, pile: &str) -> Option<AtBin> {
        let haul = fold::haul(&story.book, story.names.haul(haul).unwrap()).unwrap();
        let known = known(story, &haul, fold::workshop(&story.book));
        known.at_bin(&haul, haul.pile(story.names.pile(pile).unwrap()).unwrap(), story.now.at).unwrap()
    }

    /// The pile `ash` of the haul `yard`, after these lines.
    #[track_caller]
    fn check(lines: &str, verdict: Verdict, decides: Decides) {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        assert_eq!(at_bin(&story, "yard", "ash"), Some(AtBin { verdict, decides }), "{lines}");
    }

    fn inches(n: i64) -> Length {
        Length::INCH.times(n).unwrap()
    }

    #[test]
    fn the_shortest_part_of_its_wood_and_the_machines_say_what_is_too_short() {
        let job = "job stools \"Stools\" 2 spec\npart \"leg\" 4 of 1 x 2 x 18 in ash-white for stools\n";
        let least = |n, set_by| Least { length: inches(n), set_by };
        check(job, Verdict::Leave, Decides::TooShort(least(18, SetBy::Part)));
        let pegs = format!("{job}part \"peg\" 8 of 1/2 x 1/2 x 1 in cherry-black for stools\n");
        check(&pegs, Verdict::Leave, Decides::TooShort(least(18, SetBy::Part)));
        let rails = format!("{job}part \"rail\" 8 of 3/4 x 1 x 12 in for stools\n");
        check(&rails, Verdict::Maybe, Decides::PartlyShort(least(12, SetBy::Part)));
        check(&format!("{rails}want 8 of \"leg\" from ash for stools\n"), Verdict::Leave, Decides::TooShort(least(18, SetBy::Part)));
        check("machine jointer length 12 in", Verdict::Maybe, Decides::PartlyShort(least(12, SetBy::Machine)));
        check("", Verdict::Take, Decides::NothingAgainst);
    }

    /// 1 x 2 x 12 in, the middle of the band, is 1/6 board foot. At 7.00 it replaces 7 x 0.45 / 0.70 / 6 x 3/4 good = 0.5625;
    /// its half minute at 16 an hour is 0.1333. At 1.00 it replaces 0.0804 and costs 0.0530 more.
    #[test]
    fn a_piece_leaves_what_it_replaces_less_its_minutes() {
        let story = tell(&format!("{START}rate pay 16"));
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let leaves = |price: i64| {
            let mut workshop = fold::workshop(&story.book);
            let price = BoardPrice { amount: Decimal::from(price), per: Volume::BOARD_FOOT, currency: haul.currency };
            workshop.board_prices.insert((haul.currency, Key::read("ash-white")), price);
            match known(&story, &haul, workshop).at_bin(&haul, &haul.piles[0], story.now.at).unwrap().unwrap() {
                AtBin { decides: Decides::Leaves(n), .. } => n.round_dp(4).to_string(),
                AtBin { verdict: Verdict::Leave, decides: Decides::CostsMore(n) } => format!("-{}", n.round_dp(4)),
                other => format!("{other:?}"),
            }
        };
        assert_eq!((leaves(7).as_str(), leaves(1).as_str()), ("0.4292", "-0.0530"));
    }

    const NEXT: &str = "2026-03-09 09:00 leave for next\nsupplier works of next\npile more ash-white 1 x 2 x 10..14 in\ncount 3 more\n";

    #[test]
    fn what_the_supplier_brought_before_and_what_lies_on_the_rack_count() {
        let next = |lines: &str| at_bin(&tell(&format!("{START}{lines}{NEXT}")), "next", "more").unwrap();
        let rejects = |share: Decimal, sorted| Decides::Rejects { share, sorted };
        assert_eq!(next("reject 12 ash twist\ngood 8 ash\n").decides, rejects(Decimal::new(6, 1), 20));
        assert_eq!(next("reject 8 ash twist\ngood 11 ash\n").verdict, Verdict::Take);
        let later = at_bin(&tell(&format!("{START}2026-10-09 09:00 undo\n{}", NEXT.replace("03-09", "10-09"))), "next", "more");
        assert_eq!(later.map(|told| told.verdict), Some(Verdict::Take), "all of it was taken back");
        let old = at_bin(&tell(&format!("{START}{}", NEXT.replace("03-09", "10-09"))), "next", "more").unwrap();
        let Decides::LiesUnused { pieces: 30, unused } = old.decides else { panic!("{old:?}") };
        assert_eq!(unused.as_minutes(), 221 * 24 * 60, "from 2 March to 9 October");
    }

    /// 30 squares of another haul lie on the rack: enough for what is wanted, until more is wanted or they are set apart.
    #[test]
    fn what_lies_on_the_rack_is_enough_for_what_is_wanted() {
        let next = |before: &str, after: &str| at_bin(&tell(&format!("{START}{before}{NEXT}{after}")), "next", "more").unwrap().decides;
        let enough = |pieces, needed| Decides::EnoughOnRack { pieces, needed };
        let job = |n: u32, size: &str| format!("job stools \"Stools\" 2 spec\npart \"leg\" {n} of {size} ash-white for stools\n");
        let legs = job(20, "1 x 2 x 10 in");
        assert_eq!(next("", ""), Decides::NothingAgainst, "nothing is wanted");
        assert_eq!(next("", "want 12 from more"), enough(30, 12));
        assert_eq!(next("", "want 31 from more"), Decides::NothingAgainst);
        assert_eq!(next(&legs, ""), enough(30, 20));
        assert_eq!(next(&legs, "want 20 of \"leg\" from more for stools"), enough(30, 20), "said twice, wanted once");
        assert_eq!(next(&legs, "want 11 from more"), Decides::NothingAgainst, "31 are wanted");
        assert_eq!(next(&format!("{legs}take 15 ash for stools\n"), "want 11 from more"), Decides::NothingAgainst, "15 lie there for 16");
        assert_eq!(next(&format!("{legs}take 15 ash for stools\n"), "want 10 from more"), enough(15, 15));
        assert_eq!(next(&format!("{legs}reserve 15 ash for stools\n"), "want 10 from more"), enough(15, 15));
        assert_eq!(next(&job(20, "2 x 1 x 10 in"), ""), enough(30, 20), "turned, it fits");
        assert_eq!(next(&job(20, "1 1/4 x 2 x 10 in"), ""), Decides::NothingAgainst, "too thick to be cut of it");
    }

    #[test]
    fn a_pile_nobody_spoke_of_has_no_verdict() {
        let story = tell(&format!("{START}pile bare\ncount 2 bare\npile odd unknown-hardwood\ncount 2 odd\nmoisture ash 31"));
        assert_eq!(at_bin(&story, "yard", "bare"), None);
        assert_eq!(at_bin(&story, "yard", "odd").unwrap().decides, Decides::WoodUnknown);
        assert!(matches!(at_bin(&story, "yard", "ash").unwrap().decides, Decides::TooWet { .. }));
    }

    #[test]
    fn every_pile_of_the_stands_has_its_verdict() {
        let story = tell(STANDS);
        let told = ["strips", "squares", "trims", "blocks"].map(|pile| at_bin(&story, "stairworks", pile).unwrap().verdict);
        assert_eq!(told, [Verdict::Take, Verdict::Take, Verdict::Take, Verdict::Maybe]);
    }

    #[test]
    fn the_machine_with_the_longest_minimum_is_named() {
        let story = tell(&format!("{START}machine jointer length 12 in\nmachine planer length 14 in\nmachine saw thickness 2 in"));
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let known = known(&story, &haul, fold::workshop(&story.book));
        assert_eq!(known.shorter_than(&haul.piles[0]).map(|(key, least)| (key.to_string(), least)), Some(("planer".into(), inches(14))));
    }
}
