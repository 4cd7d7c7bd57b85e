//! The four plans, number by number.

use super::Row;
use super::problems::MIXES;
use crate::plan::field::plan::{Field, Lie, Taken};
use crate::plan::field::problem::Pattern;
use crate::plan::parts::plan::{Band, Board, First, Panel, Piece, Short, Strip};
use crate::plan::{Answered, Made, field, parts, rows, sticks};

pub(super) fn any(row: &mut Row, answered: &mut Answered) {
    for figures in [&mut answered.worth, &mut answered.bound] {
        row.list(figures, Row::figure);
    }
    let mut kind = match answered.plan {
        Made::Rows(_) => 0,
        Made::Parts(_) => 1,
        Made::Sticks(_) => 2,
        Made::Field(_) => 3,
    };
    row.number(&mut kind);
    if row.reads {
        answered.plan = match kind {
            0 => Made::Rows(Default::default()),
            1 => Made::Parts(Default::default()),
            2 => Made::Sticks(Default::default()),
            _ => Made::Field(Default::default()),
        };
        row.broken |= !(0..=3).contains(&kind);
    }
    match &mut answered.plan {
        Made::Rows(plan) => of_rows(row, plan),
        Made::Parts(plan) => of_parts(row, plan),
        Made::Sticks(plan) => of_sticks(row, plan),
        Made::Field(plan) => of_field(row, plan),
    }
}

fn of_rows(row: &mut Row, plan: &mut rows::plan::Plan) {
    row.list(&mut plan.rows, |row, pieces| {
        row.list(pieces, |row, piece| {
            row.place(&mut piece.pile);
            row.numbers([&mut piece.n, &mut piece.at, &mut piece.length]);
        });
    });
    row.list(&mut plan.remainders, |row, left| {
        row.place(&mut left.pile);
        row.numbers([&mut left.n, &mut left.length]);
    });
}

fn of_sticks(row: &mut Row, plan: &mut sticks::plan::Plan) {
    row.list(&mut plan.sticks, |row, stick| {
        row.place(&mut stick.pile);
        row.numbers([&mut stick.times, &mut stick.remainder]);
        row.list(&mut stick.pieces, |row, piece| {
            row.place(&mut piece.part);
            row.number(&mut piece.at);
        });
    });
}

fn of_parts(row: &mut Row, plan: &mut parts::plan::Plan) {
    row.list(&mut plan.boards, board);
    row.list(&mut plan.panels, panel);
    row.wish(&mut plan.short, |row, short: &mut Short| {
        row.list(&mut short.missing, |row, (part, n)| {
            row.place(part);
            row.number(n);
        });
        row.list(&mut short.boards, board);
        row.list(&mut short.panels, panel);
    });
}

fn board(row: &mut Row, board: &mut Board) {
    row.place(&mut board.pile);
    row.numbers([&mut board.times, &mut board.stretch, &mut board.remainder]);
    row.one_of(&mut board.first, &[First::Rip, First::Cross]);
    row.list(&mut board.bands, |row, band: &mut Band| {
        row.numbers([&mut band.size, &mut band.at]);
        row.list(&mut band.pieces, |row, piece: &mut Piece| {
            row.place(&mut piece.part);
            row.numbers([&mut piece.at, &mut piece.length, &mut piece.width]);
        });
    });
}

fn panel(row: &mut Row, panel: &mut Panel) {
    row.place(&mut panel.part);
    row.number(&mut panel.times);
    row.list(&mut panel.strips, |row, strip: &mut Strip| {
        row.place(&mut strip.pile);
        row.number(&mut strip.width);
    });
}

fn of_field(row: &mut Row, plan: &mut field::plan::Plan) {
    row.wish(&mut plan.field, |row, field: &mut Field| {
        row.one_of(&mut field.mix, &MIXES);
        row.list(&mut field.piles, Row::place);
        lie(row, &mut field.lie);
        row.number(&mut field.layers);
        field.tile.iter_mut().chain(&mut field.outer).for_each(|number| row.number(number));
        row.list(&mut field.pieces, |row, taken: &mut Taken| {
            row.place(&mut taken.pile);
            row.numbers([&mut taken.whole, &mut taken.cut, &mut taken.taken]);
        });
        row.figure(&mut field.glue_area);
        row.figure(&mut field.weight);
    });
}

const LAID: [Pattern; 4] = [Pattern::Stack, Pattern::Running, Pattern::Basket, Pattern::Herringbone];

fn lie(row: &mut Row, lie: &mut Lie) {
    let mut crossed = matches!(lie, Lie::Crossed { .. });
    row.flag(&mut crossed);
    if row.reads && crossed {
        *lie = Lie::Crossed { lines: [0; 2], ends: [0; 2], open: [0; 2] };
    }
    match lie {
        Lie::Rows { pattern, columns, rows, turn } => {
            row.one_of(pattern, &LAID);
            row.numbers([columns, rows]);
            row.flag(turn);
        }
        Lie::Crossed { lines, ends, open } => {
            lines.iter_mut().chain(ends).chain(open).for_each(|number| row.number(number));
        }
    }
}
