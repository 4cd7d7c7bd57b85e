//! Mass in kilograms. Never money, so a float: good to a part in 10^12, shown to a tenth.

/// A mass in kilograms.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Mass(f64);

/// The pound of 1959, exact.
const KG_PER_LB: f64 = 0.453_592_37;

impl Mass {
    pub const ZERO: Mass = Mass(0.0);
    /// The most one weighing may come to: ten tonnes.
    pub const MOST: Mass = Mass(10_000.0);

    pub const fn kg(kg: f64) -> Mass {
        Mass(kg)
    }
    /// A mass of so many pounds.
    ///
    /// ```
    /// use fivebar_core::quantity::Mass;
    /// assert!((Mass::lb(163.5).as_kg() - 74.162_352_495).abs() < 1e-9);
    /// ```
    pub fn lb(lb: f64) -> Mass {
        Mass(lb * KG_PER_LB)
    }
    pub fn as_kg(self) -> f64 {
        self.0
    }
    pub fn as_lb(self) -> f64 {
        self.0 / KG_PER_LB
    }
    /// To the nearest gram.
    ///
    /// ```
    /// use fivebar_core::quantity::Mass;
    /// assert_eq!(Mass::lb(1.0).as_grams(), 454);
    /// ```
    pub fn as_grams(self) -> i64 {
        (self.0 * 1000.0).round() as i64
    }
    pub fn plus(self, other: Mass) -> Mass {
        Mass(self.0 + other.0)
    }
}
