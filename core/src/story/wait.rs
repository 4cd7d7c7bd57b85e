//! Lines about waits: clamped, begun, taken off, put right; what is usual; quiet hours.

use super::time::moment;
use super::words::{Read, Words};
use super::{Teller, Told, id_of};
use crate::bench::wait::{Usual, Warmth, What};
use crate::ledger::decide::{Command, Laid, WaitCommand};
use crate::ledger::kind::wait as kind;
use crate::ledger::{Fact, fold};
use crate::quantity::{Clock, Id, Key, Listed, Span, Wall};
use crate::refusal::Refusal;

pub(super) const VERBS: [&str; 9] = ["clamped", "wait", "off", "lasts", "ends-in", "usual", "shop", "quiet", "loud"];

pub(super) fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "clamped" => return clamped(teller, words),
        "wait" => return wait(teller, words),
        "off" => WaitCommand::End { waits: off(teller, words)? },
        "lasts" => WaitCommand::Mend { wait: teller.story.names.said_mark(words)?, span: words.minutes()? },
        "ends-in" => {
            let op = words.text()?;
            let (what, stuff, span) = if words.has("none") { (None, None, None) } else { some(laid(words)?) };
            WaitCommand::SetOperation(kind::OperationWaitSet { op, what, stuff, span })
        }
        "usual" => {
            let (what, stuff) = (words.key("glue, coat, dry or cure")?, stuff(words)?);
            let (warmth, span) = (warmth(words)?, span(words)?);
            WaitCommand::SetUsual(kind::UsualWaitSet { what, warmth, stuff, span })
        }
        "shop" => WaitCommand::SetWarmth(kind::WarmthSet { warmth: warmth(words)? }),
        "quiet" => WaitCommand::SetQuiet { hours: if words.has("never") { None } else { Some(hours(teller, words)?) } },
        _ => WaitCommand::SetLoud(kind::OperationLoudSet { op: words.text()?, loud: !words.has("not") }),
    };
    teller.order(&Command::Wait(command)).map(drop)
}

fn some((what, stuff, span): (Key, Option<Key>, Option<Span>)) -> (Option<Key>, Option<Key>, Option<Span>) {
    (Some(what), stuff, span)
}

/// `clamped 1 glue of epoxy 90 min run NAME`: what is not said is as usual for the operation, else glue.
fn clamped(teller: &mut Teller, words: &mut Words) -> Told {
    let n = words.maybe(|word| word.parse().ok()).filter(|_| words.peek() != Some("min"));
    let what = words.maybe(|word| What::ALL.into_iter().find(|what| what.name() == word));
    let (stuff, span) = (stuff(words)?, span(words)?);
    let run = if words.has("run") { Some(teller.story.names.said_mark(words)?) } else { teller.story.names.last_run };
    let run = run.ok_or(Refusal::NotThere)?;
    let op = fold::bench(&teller.story.book).run(run).map(|run| run.work.op.clone()).ok_or(Refusal::NotThere)?;
    let usuals = fold::waits(&teller.story.book).usuals;
    let usual = usuals.of(&op, Some(what.unwrap_or(What::Glue))).ok_or(Refusal::NotThere)?;
    let laid = said(usual, (what, stuff, span), &usuals);
    began(teller, WaitCommand::Clamp { run, n: n.unwrap_or(1), laid })
}

/// What was said before what is usual.
fn said(usual: Usual, (what, stuff, span): (Option<What>, Option<Key>, Option<Span>), usuals: &crate::bench::wait::Usuals) -> Laid {
    let key = what.and_then(|what| Key::read(what.name())).unwrap_or(usual.what);
    let other = stuff.as_ref().and_then(|stuff| usuals.span((&key, Some(stuff)), usuals.warmth)).map(|found| found.0);
    Laid { what: key, stuff: stuff.or(usual.stuff), span: span.or(other).unwrap_or(usual.span) }
}

/// `wait "OPERATION" coat of oil n 2 for JOB 1440 min`.
fn wait(teller: &mut Teller, words: &mut Words) -> Told {
    let op = words.text()?;
    let (what, stuff) = (words.key("glue, coat, dry or cure")?, stuff(words)?);
    let n = if words.has("n") { words.count()? } else { 1 };
    let job = if words.has("for") { Some(teller.story.names.said_job(words)?) } else { None };
    let usuals = fold::waits(&teller.story.book).usuals;
    let usual = usuals.span((&what, stuff.as_ref()), usuals.warmth).map(|found| found.0);
    let span = span(words)?.or(usual).ok_or(Refusal::NothingAsked)?;
    began(teller, WaitCommand::Begin { op, job, n, laid: Laid { what, stuff, span } })
}

fn began(teller: &mut Teller, command: WaitCommand) -> Told {
    let facts = teller.order(&Command::Wait(command))?;
    teller.story.names.to_mark = Some(id_of(&facts, |fact| matches!(fact, Fact::WaitBegan(_)))?);
    Ok(())
}

/// The waits that are named; all that are over where none is.
fn off(teller: &Teller, words: &mut Words) -> Read<Vec<Id>> {
    let names = &teller.story.names;
    let mut named = vec![];
    while words.peek().is_some_and(|word| word != "as") {
        named.push(names.said_mark(words)?);
    }
    let now = teller.story.now.at;
    let over = || fold::waits(&teller.story.book).on().filter(|wait| wait.is_over(now)).map(|wait| wait.id).listed();
    Ok(if named.is_empty() { over() } else { named })
}

/// `glue of epoxy 90 min`.
fn laid(words: &mut Words) -> Read<(Key, Option<Key>, Option<Span>)> {
    Ok((words.key("glue, coat, dry or cure")?, stuff(words)?, span(words)?))
}

fn stuff(words: &mut Words) -> Read<Option<Key>> {
    if words.has("of") { words.key("a glue or a finish").map(Some) } else { Ok(None) }
}

fn span(words: &mut Words) -> Read<Option<Span>> {
    let minutes = words.peek().is_some_and(|word| word.parse::<i64>().is_ok());
    if minutes { words.minutes().map(Some) } else { Ok(None) }
}

fn warmth(words: &mut Words) -> Read<Warmth> {
    words.take("cold, normal or warm", |word| match word {
        "cold" => Some(Warmth::Cold),
        "normal" => Some(Warmth::Normal),
        "warm" => Some(Warmth::Warm),
        _ => None,
    })
}

fn hours(teller: &Teller, words: &mut Words) -> Read<(Clock, Clock)> {
    let now = teller.story.now;
    let clock = |at| Wall::new(at, now.offset).clock();
    let from = clock(moment(words, now)?);
    words.expect("to")?;
    Ok((from, clock(moment(words, now)?)))
}
