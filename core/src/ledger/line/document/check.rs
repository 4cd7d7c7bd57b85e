//! The check of a copy: CRC-32 as in ISO 3309 and zip files, over each text and a line feed. It finds accidents, not forgers.

/// The sum so far, inverted.
pub struct Check(u32);

impl Default for Check {
    fn default() -> Check {
        Check(u32::MAX)
    }
}

impl Check {
    pub fn add(&mut self, text: &str) {
        text.bytes().for_each(|byte| self.byte(byte));
        self.byte(b'\n');
    }

    fn byte(&mut self, byte: u8) {
        let mut sum = self.0 ^ u32::from(byte);
        for _ in 0..8 {
            sum = (sum >> 1) ^ if sum & 1 == 1 { 0xedb8_8320 } else { 0 };
        }
        self.0 = sum;
    }

    /// Eight small hexadecimal digits.
    pub fn spelled(&self) -> String {
        format!("{:08x}", !self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value every catalogue of CRCs gives for `123456789` is cbf43926.
    #[test]
    fn is_the_crc_of_the_standard() {
        let mut check = Check::default();
        "123456789".bytes().for_each(|byte| check.byte(byte));
        assert_eq!(check.spelled(), "cbf43926");
    }
}
