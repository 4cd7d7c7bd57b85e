//! Lots drawn from a seed: the same seed draws the same, on every machine.

/// A box of lots. SplitMix64: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (recalled).
#[derive(Clone, Debug)]
pub struct Draw(u64);

impl Draw {
    pub fn seeded(seed: u64) -> Draw {
        Draw(seed)
    }

    /// Any number of 64 bits.
    pub fn any(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number from 0 up to and without `ends`; 0 where there is none.
    ///
    /// ```
    /// use fivebar_core::quantity::draw::Draw;
    /// let mut draw = Draw::seeded(7);
    /// assert!((0..100).all(|_| draw.below(6) < 6));
    /// ```
    pub fn below(&mut self, ends: usize) -> usize {
        let wide = u128::from(self.any()).saturating_mul(ends as u128) >> 64;
        usize::try_from(wide).unwrap_or(0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_lots_are_those_of_others() {
        let mut draw = Draw::seeded(1_234_567); // the figures that implementations of SplitMix64 print for this seed (recalled)
        let drawn = [draw.any(), draw.any(), draw.any()];
        assert_eq!(drawn, [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423]);
        assert_eq!(draw.below(0), 0);
    }
}
