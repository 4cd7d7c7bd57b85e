//! The pen: lines, boards and letters of a drawing, in the units of its own box.
use crate::view::{El, el};
use std::borrow::Cow;

/// Text that is a literal or made.
pub type Text = Cow<'static, str>;
/// A point of a drawing, or a width and a height.
pub type Pair = (f64, f64);

/// A number as a drawing needs it: at most two places, no trailing noughts.
pub fn num(value: f64) -> String {
    let mut out = String::new();
    put(&mut out, value);
    out
}

/// The same, at the end of what is drawn so far. Written by hand: a page of tallies holds a thousand of them, which was half of what a tap took.
pub fn put(out: &mut String, value: f64) {
    let hundredths = (value * 100.0).round() as i64;
    if hundredths < 0 {
        out.push('-');
    }
    let (whole, part) = (hundredths.unsigned_abs() / 100, hundredths.unsigned_abs() % 100);
    put_whole(out, whole);
    if part != 0 {
        out.push('.');
        out.push(digit(part / 10));
    }
    if part % 10 != 0 {
        out.push(digit(part));
    }
}

fn put_whole(out: &mut String, whole: u64) {
    if 10 <= whole {
        put_whole(out, whole / 10);
    }
    out.push(digit(whole));
}

/// The last digit of a number.
fn digit(of: u64) -> char {
    char::from(b'0' + (of % 10) as u8)
}

/// A figure held between two ends; where they cross, the lower one. `clamp` would bring along how floats are written out, to say so
/// in a panic: 4 kB.
pub fn held(value: f64, least: f64, most: f64) -> f64 {
    value.min(most).max(least)
}

/// An element whose class is put together.
pub fn classed<M>(tag: &'static str, class: impl Into<Text>) -> El<M> {
    let class = class.into();
    if class.is_empty() { el(tag, "") } else { el(tag, "").attr("class", class) }
}

/// A drawing as wide as its place; it keeps the shape of its box.
pub fn drawing<M>(class: impl Into<Text>, (width, height): Pair) -> El<M> {
    classed("svg", class).attr("viewBox", format!("0 0 {} {}", num(width), num(height)))
}

/// What a drawing is made of is chosen by a finger, and one after the other by a keyboard: each of `all`, by the name of its own in the page.
pub fn chosen_of<M: 'static>(drawing: El<M>, (label, all, chosen): (String, Vec<usize>, Option<usize>), choose: fn(usize) -> M) -> El<M> {
    let at = chosen.and_then(|chosen| all.iter().position(|nth| *nth == chosen));
    let active = at.and(chosen).map(name_of_piece);
    let drawing = drawing.attr("role", "listbox").attr("tabindex", "0").attr("aria-label", label);
    let drawing = if let Some(active) = active { drawing.attr("aria-activedescendant", active) } else { drawing };
    drawing.on_key(move |key| {
        let last = all.len().checked_sub(1)?;
        let to = match (key, at) {
            ("ArrowRight" | "ArrowDown", None) | ("Home", _) => 0,
            ("ArrowRight" | "ArrowDown", Some(at)) => at.saturating_add(1).min(last),
            ("ArrowLeft" | "ArrowUp", Some(at)) => at.saturating_sub(1),
            ("ArrowLeft" | "ArrowUp", None) | ("End", _) => last,
            _ => return None,
        };
        // The same again would be chosen no more.
        all.get(to).filter(|_| Some(to) != at).map(|nth| choose(*nth))
    })
}

/// One of these: its own name in the page, and what a reader says of it.
pub fn choice<M>(piece: El<M>, (nth, chosen): (usize, bool), label: String) -> El<M> {
    let piece = piece.attr("role", "option").attr("id", name_of_piece(nth)).attr("aria-label", label);
    piece.attr("aria-selected", if chosen { "true" } else { "false" })
}

fn name_of_piece(nth: usize) -> String {
    format!("piece-{nth}")
}

/// A drawing of its own size, growing with the text around it.
pub fn sized<M>(class: impl Into<Text>, (width, height): Pair) -> El<M> {
    let em = |px: f64| format!("{}em", num(px / 16.0));
    drawing(class, (width, height)).attr("width", em(width)).attr("height", em(height)).attr("aria-hidden", "true")
}

/// A stroke from one point to another.
pub fn line<M>(class: impl Into<Text>, from: Pair, to: Pair) -> El<M> {
    classed("line", class).attr("x1", num(from.0)).attr("y1", num(from.1)).attr("x2", num(to.0)).attr("y2", num(to.1))
}

/// A board: its corner and its size.
pub fn rect<M>(class: impl Into<Text>, at: Pair, size: Pair) -> El<M> {
    classed("rect", class)
        .attr("x", num(at.0))
        .attr("y", num(at.1))
        .attr("width", num(size.0.max(0.0)))
        .attr("height", num(size.1.max(0.0)))
}

/// A line of any shape.
pub fn path<M>(class: impl Into<Text>, d: impl Into<Text>) -> El<M> {
    classed("path", class).attr("d", d)
}

/// Letters on their line.
pub fn letters<M>(class: impl Into<Text>, at: Pair, text: impl Into<Text>) -> El<M> {
    classed("text", class).attr("x", num(at.0)).attr("y", num(at.1)).text(text)
}

/// A word and its figure in bold, as one label.
pub fn label<M>(class: impl Into<Text>, at: Pair, word: &str, figure: &str) -> El<M> {
    let class = class.into();
    let class: Text = if class.is_empty() { "lb".into() } else { format!("lb {class}").into() };
    let parted = if word.is_empty() || figure.is_empty() { word.to_owned() } else { format!("{word}\u{a0}") };
    classed("text", class)
        .attr("x", num(at.0))
        .attr("y", num(at.1))
        .kid(el("tspan", "").text(parted))
        .kids((!figure.is_empty()).then(|| el("tspan", "b").text(figure.to_owned())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short() {
        for (value, shown) in
            [(2.0, "2"), (27.2857, "27.29"), (-0.001, "0"), (330.5, "330.5"), (0.05, "0.05"), (-12.5, "-12.5"), (1000.0, "1000")]
        {
            assert_eq!(num(value), shown);
        }
    }
}
