//! The air of a room, and the moisture that wood comes to rest at in it.
//!
//! Source: Wood Handbook (FPL-GTR-190), equation 4-5; Simpson 1998, FPL-RN-0268, for its constants in degrees Celsius.

use super::moisture::Moisture;
use crate::quantity::Decimal;
use crate::refusal::{Answer, Refusal};

/// How warm the air is.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Temperature(f64);

/// Relative humidity: how much of the water it could hold the air holds.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Humidity(f64);

/// The air wood stands in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    pub temperature: Temperature,
    pub humidity: Humidity,
}

impl Temperature {
    /// The ends of the printed table, 30 and 130 °F. Colder, a hygrometer and the equation no longer mean the same
    /// (humidity over ice); hotter is a kiln.
    const LEAST: f64 = fahrenheit(30.0);
    const MOST: f64 = fahrenheit(130.0);

    /// So many degrees Celsius.
    ///
    /// # Errors
    /// [`Refusal::TemperatureOutOfRange`] below -1.1 or above 54.4.
    ///
    /// ```
    /// use fivebar_core::wood::air::Temperature;
    /// assert!(Temperature::celsius(-1.1).is_ok());
    /// assert!(Temperature::celsius(-5.0).is_err());
    /// ```
    pub fn celsius(met: f64) -> Answer<Temperature> {
        if (Self::LEAST..=Self::MOST).contains(&met) {
            Ok(Temperature(met))
        } else {
            Err(Refusal::TemperatureOutOfRange { least: Decimal::new(-11, 1), most: Decimal::new(544, 1) })
        }
    }

    /// So many degrees Fahrenheit.
    ///
    /// # Errors
    /// [`Refusal::TemperatureOutOfRange`] below 30 or above 130.
    ///
    /// ```
    /// use fivebar_core::wood::air::Temperature;
    /// assert_eq!(Temperature::fahrenheit(68.0), Temperature::celsius(20.0));
    /// assert!(Temperature::fahrenheit(29.0).is_err());
    /// ```
    pub fn fahrenheit(met: f64) -> Answer<Temperature> {
        Temperature::celsius(fahrenheit(met))
    }

    pub fn as_celsius(self) -> f64 {
        self.0
    }

    pub fn as_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}

const fn fahrenheit(degrees: f64) -> f64 {
    (degrees - 32.0) / 1.8
}

impl Humidity {
    /// So many per cent.
    ///
    /// # Errors
    /// [`Refusal::HumidityOutOfRange`] below nothing or above 100: no air holds more.
    ///
    /// ```
    /// use fivebar_core::wood::air::Humidity;
    /// assert!(Humidity::per_cent(50.0).is_ok());
    /// assert!(Humidity::per_cent(101.0).is_err());
    /// ```
    pub fn per_cent(met: f64) -> Answer<Humidity> {
        if (0.0..=100.0).contains(&met) { Ok(Humidity(met)) } else { Err(Refusal::HumidityOutOfRange { most: Decimal::ONE_HUNDRED }) }
    }

    pub fn as_per_cent(self) -> f64 {
        self.0
    }
}

impl Air {
    /// The moisture wood comes to rest at in this air, in weeks: EMC = 1800 / W x (KH / (1 - KH) + (K1 KH + 2 K1 K2 K²H²) / (1 + K1 KH + K1 K2 K²H²)).
    ///
    /// Checked against the printed table from 5 to 85 % humidity. Beyond, the equation runs on: to nothing in dry air, to 24 to 29 %
    /// in air that holds no more. European tables of rooms at 20 °C lie 0.2 to 0.3 points lower.
    ///
    /// ```
    /// use fivebar_core::wood::air::{Air, Humidity, Temperature};
    /// let room = Air { temperature: Temperature::fahrenheit(70.0).unwrap(), humidity: Humidity::per_cent(50.0).unwrap() };
    /// assert!((room.equilibrium().as_per_cent() - 9.2).abs() < 0.05);
    /// ```
    pub fn equilibrium(self) -> Moisture {
        let at = |constant: f64, linear: f64, square: f64| constant + linear * self.temperature.0 + square * self.temperature.0.powi(2);
        let kh = at(0.805, 0.000_736, -0.000_002_73) * self.humidity.0 / 100.0;
        let one = at(6.27, -0.009_38, -0.000_303) * kh;
        let both = one * at(1.91, 0.0407, -0.000_293) * kh;
        let held = kh / (1.0 - kh) + (one + 2.0 * both) / (1.0 + one + both);
        Moisture::known(1800.0 / at(349.0, 1.29, 0.0135) * held)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(celsius: f64, per_cent: f64) -> f64 {
        let (temperature, humidity) = (Temperature::celsius(celsius).unwrap(), Humidity::per_cent(per_cent).unwrap());
        Air { temperature, humidity }.equilibrium().as_per_cent()
    }

    #[test]
    fn damper_air_gives_wetter_wood_from_end_to_end() {
        for celsius in [-1.1, 0.0, 20.0, 35.0, 54.4] {
            assert_eq!(at(celsius, 0.0), 0.0);
            let steps: Vec<f64> = (0..=100).map(|h| at(celsius, f64::from(h))).collect();
            assert!(steps.windows(2).all(|pair| pair[0] < pair[1]), "{celsius}");
            assert!((24.0..29.0).contains(&steps[100]), "{celsius}: {}", steps[100]);
        }
    }

    #[test]
    fn outside_the_table_is_refused() {
        let cold = Refusal::TemperatureOutOfRange { least: Decimal::new(-11, 1), most: Decimal::new(544, 1) };
        for met in [-1.2, 54.5, f64::NAN, f64::INFINITY] {
            assert_eq!(Temperature::celsius(met), Err(cold.clone()));
        }
        for met in [29.9, 130.1] {
            assert_eq!(Temperature::fahrenheit(met), Err(cold.clone()));
        }
        assert!(Temperature::fahrenheit(30.0).is_ok() && Temperature::fahrenheit(130.0).is_ok() && Temperature::celsius(54.4).is_ok());
        for met in [-0.1, 100.1, f64::NAN] {
            assert_eq!(Humidity::per_cent(met), Err(Refusal::HumidityOutOfRange { most: Decimal::ONE_HUNDRED }));
        }
    }

    #[test]
    fn degrees_come_back() {
        for met in [30.0, 68.0, 130.0] {
            assert!((Temperature::fahrenheit(met).unwrap().as_fahrenheit() - met).abs() < 1e-9);
        }
    }
}
