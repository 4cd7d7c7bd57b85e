//! Base 64 as RFC 4648 spells it in section 4, with its padding: how a picture stands in a text.

const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// Bytes as text.
pub fn write(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3).saturating_mul(4));
    for three in bytes.chunks(3) {
        let at = |nth: usize| u32::from(three.get(nth).copied().unwrap_or(0));
        let bits = at(0) << 16 | at(1) << 8 | at(2);
        for (nth, shift) in [18, 12, 6, 0].into_iter().enumerate() {
            let sign = SIGNS.get((bits >> shift & 63) as usize).copied().unwrap_or(b'=');
            text.push(if nth <= three.len() { char::from(sign) } else { '=' });
        }
    }
    text
}

/// The bytes of a text; none where it is spelled otherwise.
pub fn read(text: &str) -> Option<Vec<u8>> {
    let signs = text.as_bytes();
    let ends = signs.iter().rev().take_while(|sign| **sign == b'=').count();
    if !signs.len().is_multiple_of(4) || 2 < ends {
        return None;
    }
    let mut bytes = Vec::with_capacity(signs.len());
    for four in signs.chunks(4) {
        let kept = four.iter().filter(|sign| **sign != b'=').count();
        let mut bits = 0u32;
        for sign in four {
            let value = if *sign == b'=' { 0 } else { value(*sign)? };
            bits = bits << 6 | value;
        }
        bytes.extend(bits.to_be_bytes().iter().skip(1).take(kept.saturating_sub(1)));
    }
    Some(bytes).filter(|bytes| write(bytes) == text)
}

fn value(sign: u8) -> Option<u32> {
    let value = match sign {
        b'A'..=b'Z' => sign.wrapping_sub(b'A'),
        b'a'..=b'z' => sign.wrapping_sub(b'a').wrapping_add(26),
        b'0'..=b'9' => sign.wrapping_sub(b'0').wrapping_add(52),
        b'+' => 62,
        b'/' => 63,
        _ => return None,
    };
    Some(u32::from(value))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The test vectors of RFC 4648, section 10.
    #[test]
    fn is_that_of_the_standard() {
        let rows =
            [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foob", "Zm9vYg=="), ("fooba", "Zm9vYmE="), ("foobar", "Zm9vYmFy")];
        for (bytes, text) in rows {
            assert_eq!(write(bytes.as_bytes()), text);
            assert_eq!(read(text).as_deref(), Some(bytes.as_bytes()));
        }
    }

    #[test]
    fn every_byte_comes_back_and_another_spelling_is_none() {
        let all: Vec<u8> = (0..=255).collect();
        assert_eq!(read(&write(&all)), Some(all));
        for text in ["Zg", "Zg=", "Z===", "Zh==", "Zm9v\n", "Zm 9", "Z=9v", "Zg==Zg=="] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
