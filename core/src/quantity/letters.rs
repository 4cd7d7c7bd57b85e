//! Small and large letters of the alphabets our words and names are written in: ASCII, Latin-1 and Latin Extended-A.
//!
//! The standard tables of every script cost the download more than all our woods.

/// The small letter of a large one; any other letter as it is.
pub fn small(letter: char) -> char {
    pair(letter, true)
}

/// The large letter of a small one; any other letter as it is.
pub fn large(letter: char) -> char {
    pair(letter, false)
}

/// A text in small letters, to compare what people type.
///
/// ```
/// use fivebar_core::quantity::in_small;
/// assert_eq!(in_small("Über Šárka ÉTÉ 9"), "über šárka été 9");
/// ```
pub fn in_small(text: &str) -> String {
    text.chars().map(small).collect()
}

/// A text that begins with a large letter.
pub fn begin_large(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(large).into_iter().chain(letters).collect()
}

/// A text that begins with a small letter.
pub fn begin_small(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(small).into_iter().chain(letters).collect()
}

/// Pairs stand 32 apart in ASCII and Latin-1, side by side in Latin Extended-A (Unicode code charts).
fn pair(letter: char, to_small: bool) -> char {
    let code = u32::from(letter);
    let other = match letter {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' if to_small => code.saturating_add(32),
        'a'..='z' | 'à'..='ö' | 'ø'..='þ' if !to_small => code.saturating_sub(32),
        'Ÿ' if to_small => 0xff,
        'ÿ' if !to_small => 0x178,
        // The large one is even.
        'Ā'..='į' | 'Ĳ'..='ķ' | 'Ŋ'..='ŷ' => (code & !1) | u32::from(to_small),
        // The large one is odd.
        'Ĺ'..='ň' | 'Ź'..='ž' if code % 2 == u32::from(to_small) => {
            if to_small {
                code.saturating_add(1)
            } else {
                code.saturating_sub(1)
            }
        }
        _ => code,
    };
    char::from_u32(other).unwrap_or(letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_pair_as_the_standard_tables_say() {
        let one = |mut letters: Vec<char>, own: char| if letters.len() == 1 { letters.remove(0) } else { own };
        for letter in ('\0'..='\u{17f}').filter(|letter| !matches!(letter, 'İ' | 'ı' | 'ſ' | 'µ')) {
            assert_eq!(small(letter), one(letter.to_lowercase().collect(), letter), "small {letter}");
            assert_eq!(large(letter), one(letter.to_uppercase().collect(), letter), "large {letter}");
        }
        assert_eq!((large('ß'), large('木')), ('ß', '木'));
    }
}
