//! Drawn glyphs, each with a meaning: the five places, undo, tick, cross.
use crate::parts::ink::{path, sized};
use crate::parts::place_bar::Place;
use crate::view::{El, el};

/// The glyph of a place: five-bar marks, a clamp, a tag on a string, a board with lines, a roof truss.
pub fn place<M>(place: Place) -> El<M> {
    let line = match place {
        Place::Count => "M4 4v18M10 4v18M16 4v18M22 4v18M1 18.5L25 7.5",
        Place::Bench => "M18 8V4H6v15h12M18 12v13M14.5 12h7M15 25h6",
        Place::Price => "M2 9h12.5l5 5.5-5 5.5H2zM14 14.5C20 14.5 24 11 23.5 3",
        Place::Jobs => "M4 3h18v20H4zM8 9h10M8 14h10M8 19h5",
        Place::Workshop => "M1.5 21h23L13 5zM13 5v16M13 21L7.2 13M13 21l5.8-8",
    };
    let hole = (place == Place::Price).then(|| el("circle", "dot").attr("cx", "14").attr("cy", "14.5").attr("r", "1.5"));
    sized("glyph", (26.0, 26.0)).kid(path("", line)).kids(hole)
}

/// Taking back: an arrow that turns round.
pub fn undo<M>() -> El<M> {
    sized("glyph firm", (22.0, 18.0)).kid(path("", "M8 2L2 7l6 5M2 7h12a5 5 0 0 1 0 10h-4"))
}

/// Yes, enough, done.
pub fn tick<M>() -> El<M> {
    sized("glyph heavy", (34.0, 30.0)).kid(path("", "M3 16l9 10L31 4"))
}

/// No.
pub fn cross<M>() -> El<M> {
    sized("glyph heavy", (30.0, 30.0)).kid(path("", "M4 4l22 22M26 4L4 26"))
}

/// Too close to call: two level lines.
pub fn level<M>() -> El<M> {
    sized("glyph heavy", (34.0, 30.0)).kid(path("", "M4 10h26M4 21h26"))
}

/// More can be had: a step up.
pub fn raise<M>() -> El<M> {
    sized("glyph heavy", (34.0, 30.0)).kid(path("", "M4 26h11V15h11V4M19 10l7-6 6 6"))
}

/// A key that rubs out the last figure.
pub fn rub_out<M>() -> El<M> {
    sized("glyph firm", (30.0, 22.0)).kid(path("", "M10 2h18v18H10L2 11zM15 7.5l7 7M22 7.5l-7 7"))
}

/// A break line: what is above and below it are two moments.
pub fn break_line<M>() -> El<M> {
    crate::parts::ink::drawing("brk glyph", (390.0, 26.0))
        .attr("preserveAspectRatio", "xMidYMid slice")
        .attr("aria-hidden", "true")
        .kid(path("", "M-600 13H168l10-11 14 22 14-22 10 11H1000"))
}
