//! How wide a line of Overpass is, so that labels can be placed before they are drawn.

/// Advance widths in thousandths of the size, space to tilde, at weight 500; figures tabular.
#[rustfmt::skip]
const PLAIN: [u16; 95] = [
    240, 282, 416, 690, 593, 864, 688, 224, 353, 353, 540, 642, 233, 404, 231, 501,
    616, 616, 616, 616, 616, 616, 616, 616, 616, 616, 231, 231, 642, 642, 642, 513,
    818, 692, 668, 644, 692, 608, 566, 686, 707, 287, 550, 676, 562, 806, 712, 728,
    633, 728, 673, 604, 590, 696, 662, 842, 628, 655, 646, 382, 501, 382, 642, 492,
    400, 536, 567, 514, 567, 544, 342, 568, 572, 264, 264, 540, 272, 856, 572, 561,
    570, 568, 398, 477, 383, 572, 527, 726, 537, 542, 518, 376, 282, 376, 642,
];
/// The same at weight 800.
#[rustfmt::skip]
const BOLD: [u16; 95] = [
    255, 309, 456, 708, 609, 845, 722, 256, 382, 382, 558, 633, 257, 420, 249, 533,
    616, 616, 616, 616, 616, 616, 616, 616, 616, 616, 249, 249, 633, 633, 633, 509,
    842, 730, 702, 636, 720, 632, 579, 679, 728, 300, 561, 724, 568, 811, 722, 720,
    641, 720, 698, 618, 608, 720, 692, 850, 703, 698, 636, 398, 533, 398, 633, 498,
    498, 568, 582, 555, 582, 564, 372, 582, 602, 292, 292, 568, 300, 886, 602, 569,
    582, 582, 426, 500, 397, 602, 573, 759, 597, 581, 556, 387, 310, 387, 633,
];

/// Letters beyond ASCII are taken as wide as most capitals; a few common ones are known.
const OTHER: u16 = 640;

/// The width of `text` in weight 500 at `size`.
pub fn plain(text: &str, size: f64) -> f64 {
    measured(text, size, &PLAIN)
}

/// The width of `text` in weight 800 at `size`.
pub fn bold(text: &str, size: f64) -> f64 {
    measured(text, size, &BOLD)
}

/// The width of a word and its bold figure with a space between, at 14.
pub fn label(word: &str, figure: &str) -> f64 {
    let gap = if word.is_empty() || figure.is_empty() { 0.0 } else { plain(" ", 14.0) };
    plain(word, 14.0) + gap + bold(figure, 14.0)
}

/// `text` in lines of at most `width` in weight 500 at `size`; a word longer than that keeps a line to itself.
pub fn wrapped(text: &str, size: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = vec![];
    for word in text.split(' ') {
        match lines.last_mut() {
            Some(line) if plain(line, size) + plain(" ", size) + plain(word, size) <= width => *line = format!("{line} {word}"),
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

fn measured(text: &str, size: f64, widths: &[u16; 95]) -> f64 {
    text.chars().map(|letter| f64::from(advance(letter, widths))).sum::<f64>() * size / 1000.0
}

fn advance(letter: char, widths: &[u16; 95]) -> u16 {
    match letter {
        '\u{a0}' | '\u{202f}' | '\u{2009}' => widths[0],
        '’' => 250,
        '…' => 1060,
        '½' | '¼' | '¾' => 830,
        '⁄' => 370,
        '\u{300}'..='\u{36f}' => 0,
        _ => (letter as usize).checked_sub(32).and_then(|at| widths.get(at)).copied().unwrap_or(OTHER),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_lines_break_between_words() {
        assert_eq!(wrapped("48.9 % of used, planned 45 %", 14.0, 143.0), ["48.9 % of used,", "planned 45 %"]);
        assert_eq!(wrapped("460, planned 460", 14.0, 330.0), ["460, planned 460"]);
    }

    #[test]
    fn widths_agree_with_the_drawings() {
        for (word, figure, width) in [("likely", "31", 55.6), ("sure", "40", 49.4), ("not under", "101", 92.0)] {
            assert!((label(word, figure) - width).abs() < 3.0, "{word}: {}", label(word, figure));
        }
    }
}
