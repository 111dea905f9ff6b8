//! A made-up year of hours whose temperatures are those of a station's real hours, in an order that
//! keeps what is known of its days and months.

use crate::climate::{Row, csv};
use finrun_engine::numeric::{cos, ln};
use std::f64::consts::PI;

#[derive(Debug)]
pub(crate) struct Year {
    /// Means of the days in °F, from 1 January.
    pub(crate) days_f: Vec<f64>,
}

/// First days of the months, and of the next January.
pub(crate) const MONTHS: [usize; 13] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

/// The year of the station named.
///
/// The hours of the bins, each bin's spread evenly, are given out by rank of a season, a weather
/// that lasts for days and a time of day. Their shares are such that days below 65 °F and the
/// coldest month come out as the design file has them.
pub(crate) fn year(state: &str, name: &str) -> Year {
    let design = csv("us_tmy3_design.csv");
    let at = design.iter().position(|row| row["state"] == state && row["name"] == name);
    let row = &design[at.unwrap_or_else(|| panic!("{name}"))];
    let sorted = sorted_hours_f(&csv("us_tmy3_bins5f.csv")[at.expect("a row")]);
    let number = |column: &str| row[column].parse::<f64>().expect("a number");
    let weather = weather(365);
    let make = |shares: [f64; 2]| {
        let hours_f = ordered(&sorted, &weather, shares);
        Year { days_f: hours_f.chunks(24).map(|day| day.iter().sum::<f64>() / 24.0).collect() }
    };
    let mut shares = [0.4, 0.3];
    for _ in 0..6 {
        // More of the weather leaves the coldest month less cold, more of the time of day leaves the
        // days' means less spread.
        shares[0] =
            rising(|share| make([share, shares[1]]).coldest_month_f() - number("coldest_month_f"));
        shares[1] =
            rising(|share| number("hdd65_f") - make([shares[0], share]).degree_days_f(65.0));
    }
    let year = make(shares);
    // Seattle's months are more even than those of any such year.
    let colder_f = year.coldest_month_f() - number("coldest_month_f");
    assert!(colder_f.abs() < 0.7, "{name}: {colder_f}");
    let degree_days = year.degree_days_f(65.0) / number("hdd65_f");
    assert!((degree_days - 1.0).abs() < 0.006, "{name}: {degree_days}");
    year
}

impl Year {
    fn coldest_month_f(&self) -> f64 {
        let mean = |m: &[usize]| self.days_f[m[0]..m[1]].iter().sum::<f64>() / (m[1] - m[0]) as f64;
        MONTHS.windows(2).map(mean).fold(f64::INFINITY, f64::min)
    }

    /// °F·days of all days' means below a base.
    fn degree_days_f(&self, base_f: f64) -> f64 {
        below(&self.days_f, base_f)
    }
}

/// Sum of what each is below the base.
pub(crate) fn below(temperatures: &[f64], base: f64) -> f64 {
    temperatures.iter().map(|t| (base - t).max(0.0)).sum()
}

/// Where a rising function is nearest to zero, between 0 and 3.
fn rising(f: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0.0, 3.0);
    for _ in 0..14 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

/// The temperatures of the bins, ascending.
fn sorted_hours_f(bins: &Row) -> Vec<f64> {
    let mut out = Vec::new();
    let mut spread = |name: &str, from: f64, width: f64| {
        let hours: usize = bins[name].parse().expect("hours");
        out.extend((0..hours).map(|i| from + width * (i as f64 + 0.5) / hours as f64));
    };
    spread("lt_-60", -65.0, 5.0);
    for edge in (-60..70).step_by(5) {
        spread(&edge.to_string(), f64::from(edge), 5.0);
    }
    spread("ge_70", 70.0, 25.0);
    assert_eq!(out.len(), 8760);
    out
}

/// The sorted temperatures in the order of the season with these shares of weather and time of day.
fn ordered(sorted: &[f64], weather: &[f64], [of_weather, of_time]: [f64; 2]) -> Vec<f64> {
    let warmth = |hour: usize| {
        // The Northeast is coldest near 23 January, from memory of the monthly normals.
        let season = -cos(2.0 * PI * (hour as f64 / 24.0 - 22.0) / 365.0);
        let time = cos(2.0 * PI * (hour as f64 - 15.0) / 24.0);
        season + of_weather * weather[hour / 24] + of_time * time
    };
    let mut ranks: Vec<(f64, usize)> = (0..sorted.len()).map(|hour| (warmth(hour), hour)).collect();
    ranks.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut out = vec![0.0; sorted.len()];
    for ((_, hour), &temperature) in ranks.iter().zip(sorted) {
        out[*hour] = temperature;
    }
    out
}

/// A deviation for each day, of one standard deviation, 0.7 of it left from the day before (from
/// memory of such analyses).
fn weather(days: usize) -> Vec<f64> {
    let mut today = 0.0;
    let next = |normal: f64| {
        today = 0.7 * today + (1.0_f64 - 0.49).sqrt() * normal;
        today
    };
    normals(days).into_iter().map(next).collect()
}

/// Normal numbers of one standard deviation, always the same.
pub(crate) fn normals(count: usize) -> Vec<f64> {
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut uniform = || {
        // Knuth's multiplier for 64 bits, from memory.
        state =
            state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((state >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    };
    (0..count).map(|_| (-2.0 * ln(uniform())).sqrt() * cos(2.0 * PI * uniform())).collect()
}
