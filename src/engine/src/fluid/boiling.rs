//! When water boils: the saturation line of IAPWS-IF97 (region 4), whose one quadratic form gives
//! pressure from temperature and temperature from pressure. Coefficients from memory of the release,
//! checked against its own check values.
//!
//! Glycol raises the boiling point, by some 6 K at half by mass (from memory), so water is on the safe
//! side.

use crate::quantity::{Pressure, Temperature};

const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// From 0 °C to the critical point; outside, the pressure is that at the nearer end.
pub fn vapour_pressure(water: Temperature) -> Pressure {
    let t = limited(water.si(), 273.15, 647.096);
    let [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
    let theta = t + n9 / (t - n10);
    let a = (theta + n1) * theta + n2;
    let b = (n3 * theta + n4) * theta + n5;
    let c = (n6 * theta + n7) * theta + n8;
    let root = 2.0 * c / ((b * b - 4.0 * a * c).sqrt() - b);
    Pressure::from_si(root * root * root * root * MEGAPASCAL)
}

/// The boiling point at an absolute pressure, between the pressures of 0 °C and of the critical
/// point; outside, it is that at the nearer end.
pub fn boiling_point(absolute: Pressure) -> Temperature {
    let p = limited(absolute.si(), 611.213, 22.064 * MEGAPASCAL) / MEGAPASCAL;
    let [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
    let beta = p.sqrt().sqrt();
    let e = (beta + n3) * beta + n6;
    let f = (n1 * beta + n4) * beta + n7;
    let g = (n2 * beta + n5) * beta + n8;
    let d = -2.0 * g / (f + (f * f - 4.0 * e * g).sqrt());
    let sum = n10 + d;
    Temperature::from_si(0.5 * (sum - (sum * sum - 4.0 * (n9 + n10 * d)).sqrt()))
}

const MEGAPASCAL: f64 = 1e6;

/// NaN stays NaN.
fn limited(value: f64, least: f64, most: f64) -> f64 {
    value.clamp(least, most)
}
