//! The rate as a stack of boards, as thick as each part is large, with brackets for what goes out and what is yours.
use crate::parts::ink::{Text, drawing, letters as text, path, rect};
use crate::parts::{ink::num, letters};
use crate::view::{El, el};

/// One board of the stack.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Part {
    pub name: String,
    pub note: String,
    pub figure: String,
    /// How large it is, in money.
    pub share: f64,
    pub yours: bool,
}

/// A bracket: its word and figure.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bracket {
    pub word: String,
    pub figure: String,
}

const THIN: f64 = 28.0;
const TWO_LINES: f64 = 46.0;
const BRACKETS: f64 = 78.0;
const TALL: f64 = 128.0;
/// Narrower than this the boards are lines of text.
const NARROW: f64 = 260.0;

/// The stack `width` wide; what goes out first, then what is yours. `said` is what a reader hears.
pub fn stack<M>(parts: &[Part], brackets: (Bracket, Bracket), width: f64, said: &str) -> El<M> {
    if width < NARROW {
        return lines(parts, brackets);
    }
    let wide = width - BRACKETS;
    let most = parts.iter().map(|p| p.share).fold(1e-9, f64::max);
    let (mut y, mut edge, mut drawn) = (1.0, 1.0, vec![]);
    for part in parts {
        let two = !fits(part, wide);
        let tall = (TALL * part.share / most).max(if two { TWO_LINES } else { THIN });
        drawn.extend(board(part, (y, tall), wide, two));
        y += tall;
        edge = if part.yours { edge } else { y };
    }
    drawing("sc on-board", (width, y + 1.0))
        .attr("role", "img")
        .attr("aria-label", said.to_owned())
        .kids(drawn)
        .kids(bracket(&brackets.0, (1.0, edge), wide))
        .kids(bracket(&brackets.1, (edge, y), wide))
}

/// The stack as lines, the brackets as sums.
fn lines<M>(parts: &[Part], brackets: (Bracket, Bracket)) -> El<M> {
    let line = |class: &'static str, words: [&str; 3]| {
        let spans = ["name", "t14 i2", "fig"].into_iter().zip(words).filter(|(_, word)| !word.is_empty());
        el("div", class).kids(spans.map(|(class, word)| el("span", class).text(word.to_owned())))
    };
    let sum = |b: &Bracket| line("sum", [&b.word, "", &b.figure]);
    let boards = |yours: bool| parts.iter().filter(move |p| p.yours == yours);
    el("div", "stacked")
        .kids(boards(false).map(|p| line("", [&p.name, &p.note, &p.figure])))
        .kid(sum(&brackets.0))
        .kids(boards(true).map(|p| line("mine", [&p.name, &p.note, &p.figure])))
        .kid(sum(&brackets.1))
}

/// True if name, note and figure stand on one line.
fn fits(part: &Part, wide: f64) -> bool {
    let note = if part.note.is_empty() { 0.0 } else { letters::plain(&part.note, 14.0) + 8.0 };
    letters::bold(&part.name, 17.0) + note + letters::bold(&part.figure, 17.0) + 8.0 <= wide - 28.0
}

fn board<M>(part: &Part, (y, tall): (f64, f64), wide: f64, two: bool) -> Vec<El<M>> {
    let middle = y + tall / 2.0 + if two { -3.0 } else { 6.0 };
    let note = if two { (14.0, middle + 18.0) } else { (14.0 + letters::bold(&part.name, 17.0) + 8.0, middle) };
    vec![
        rect(if part.yours { "bdr mine" } else { "bdr" }, (1.0, y), (wide - 2.0, tall)),
        text("b x17", (14.0, middle), part.name.clone()),
        text("i2", note, part.note.clone()),
        text("b x17", (wide - 14.0, middle), part.figure.clone()).attr("text-anchor", "end"),
    ]
}

fn bracket<M>(bracket: &Bracket, (top, low): (f64, f64), wide: f64) -> Vec<El<M>> {
    let (x, middle) = (wide + 6.0, (top + low) / 2.0);
    if low - top < THIN {
        return vec![];
    }
    let line: Text = format!("M{} {}h7V{}h-7", num(x), num(top + 2.0), num(low - 2.0)).into();
    let words = text("", (x + 17.0, middle - 4.0), bracket.word.clone());
    vec![path("ld", line), words, text("b x17", (x + 17.0, middle + 15.0), bracket.figure.clone())]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_narrow_stack_puts_notes_on_their_own_line() {
        let part = Part { name: "Workshop costs".into(), note: "3,615".into(), figure: "12.05".into(), share: 12.05, yours: false };
        for (wide, one_line) in [(280.0, true), (190.0, false)] {
            assert_eq!(fits(&part, wide), one_line, "{wide}");
        }
    }

    /// The largest is 128 high and the others as their share of it, 32 : 16 : 8 : 4; none is lower than its words need, 28. One lies under the
    /// other, in the order they came; what goes out ends where what is yours begins.
    #[test]
    fn boards_are_as_thick_as_their_part_is_large() {
        let part = |share: f64, yours| Part { name: format!("Part {share}"), figure: share.to_string(), share, yours, ..Part::default() };
        let parts = [part(8.0, false), part(16.0, false), part(4.0, false), part(9.0, true), part(32.0, true)];
        let bracket = |word: &str| Bracket { word: word.into(), figure: String::new() };
        let html = stack::<()>(&parts, (bracket("goes out"), bracket("yours")), 300.0, "").html();
        let boards: Vec<&str> = html.split("<rect ").skip(1).collect();
        let drawn = [("bdr", 1, 32), ("bdr", 33, 64), ("bdr", 97, 28), ("bdr mine", 125, 36), ("bdr mine", 161, 128)];
        assert_eq!(boards.len(), drawn.len(), "{html}");
        for ((board, (class, y, tall)), part) in boards.iter().zip(drawn).zip(&parts) {
            for wanted in [format!("class=\"{class}\""), format!("y=\"{y}\""), format!("height=\"{tall}\""), format!(">{}<", part.name)] {
                assert!(board.contains(&wanted), "{wanted} in {board}");
            }
        }
        for said in ["V123h-7", ">goes out<", "M228 127h7V287h-7", ">yours<"] {
            assert!(html.contains(said), "{said} in {html}");
        }
    }
}
