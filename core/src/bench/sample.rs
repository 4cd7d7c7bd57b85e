//! Runs for the tables of this room: minutes from the epoch, UTC.

use super::{Kind, On, Run, Work};
use crate::quantity::{Id, Moment, Offset, Span, Wall};

pub fn at(minute: i64) -> Moment {
    Moment::at(0).plus(Span::minutes(minute))
}

pub fn wall(minute: i64) -> Wall {
    Wall::new(at(minute), Offset::UTC)
}

pub fn id(n: u8) -> Id {
    Id::new(Moment::at(0), [n; 10])
}

pub fn run(n: u8, started: i64) -> Run {
    let kind = Kind::Make;
    let work = Work { op: "sand".into(), kind, stage: kind.stage(), on: On::Job(id(200)), person: None, rework: false };
    Run::start(id(n), work, (wall(started), wall(started)))
}

pub fn recalled(n: u8, from: i64, to: i64) -> Run {
    Run { recalled: true, stopped: Some(wall(to)), ..run(n, from) }
}
