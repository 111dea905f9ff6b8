//! The typical year against the hours that it was derived from.

use super::{Row, csv, table};
use finrun_engine::climate::{Day, Season, Station};
use finrun_engine::quantity::{Temperature, Unit};

/// °F·days below the base, by the hours in each 5 °F of a year's temperatures, each taken in the
/// middle of its bin. All bases are edges of bins.
pub(crate) fn bin_degree_days_f(bins: &Row, base_f: f64) -> f64 {
    let hours = |name: &str| bins[name].parse::<f64>().expect("hours");
    let mut sum = hours("lt_-60") * (base_f + 62.5);
    for edge in (-60..70).step_by(5) {
        sum += hours(&edge.to_string()) * (base_f - f64::from(edge) - 2.5).max(0.0);
    }
    sum / 24.0
}

/// Of the mean of four years, one of them a leap year.
fn season_degree_days_f(season: &Season, base_f: f64) -> f64 {
    let [from, to] = ["2025-01-01", "2029-01-01"].map(|text| Day::parse(text).expect("a day"));
    season.degree_days_k(from, to, Temperature::of(base_f, Unit::Fahrenheit)) * 1.8 / 4.0
}

/// How far the season's degree-days are from those of the hours, as a share of these.
#[derive(Debug)]
struct Errors {
    stations: usize,
    mean: f64,
    /// Of the size: half of the stations, 19 of 20 and all are within.
    half: f64,
    most: f64,
    all: f64,
}

/// The errors at a base, over the stations with at least 1000 °F·days there and `at_least_f` at
/// 65 °F, given the degree-days at 65 °F of each row of the design file.
fn errors(degree_days_65_f: impl Fn(&Row) -> i32, at_least_f: i32, base_f: f64) -> Errors {
    let bins = csv("us_tmy3_bins5f.csv");
    let design = csv("us_tmy3_design.csv");
    let mut off = Vec::new();
    for ((listed, row), bins) in table().stations().iter().zip(&design).zip(&bins) {
        assert_eq!((&listed.station.name, &row["usaf"]), (&row["name"], &bins["usaf"]));
        let expected = bin_degree_days_f(bins, base_f);
        if expected < 1000.0 || listed.station.degree_days_65_f < at_least_f {
            continue;
        }
        let station = Station { degree_days_65_f: degree_days_65_f(row), ..listed.station.clone() };
        off.push(season_degree_days_f(&Season::of(&station), base_f) / expected - 1.0);
    }
    let mean = off.iter().sum::<f64>() / off.len() as f64;
    off.iter_mut().for_each(|off| *off = off.abs());
    off.sort_by(f64::total_cmp);
    let within = |share: f64| off[(share * (off.len() - 1) as f64).round() as usize];
    let (half, most, all) = (within(0.5), within(0.95), within(1.0));
    let out = Errors { stations: off.len(), mean, half, most, all };
    println!("base {base_f}, from {at_least_f}: {out:.3?}");
    out
}

fn whole(row: &Row, name: &str) -> i32 {
    row[name].parse().expect("whole degree-days")
}

/// The shape alone: the degree-days of the hours at 65 °F given, those at other bases follow.
#[test]
fn the_season_has_the_shape_of_the_hours() {
    let hourly = |row: &Row| whole(row, "hdd65_hourly_f");
    for (base_f, half, most, all) in [
        (55.0, 0.025, 0.13, 0.34),
        (60.0, 0.011, 0.071, 0.16),
        (65.0, 0.003, 0.012, 0.032),
        (70.0, 0.006, 0.037, 0.125),
    ] {
        let found = errors(hourly, 0, base_f);
        assert!(found.stations > 850);
        assert!(found.half < half && found.most < most && found.all < all, "{base_f}: {found:?}");
    }
    // Where houses are heated through the winter.
    for (base_f, half, most, all) in [(55.0, 0.02, 0.065, 0.34), (60.0, 0.01, 0.03, 0.12)] {
        let found = errors(hourly, 4000, base_f);
        assert!(found.stations > 600);
        assert!(found.half < half && found.most < most && found.all < all, "{base_f}: {found:?}");
    }
}

/// As it is used: published degree-days are of days' means. A mild day has hours below the base
/// that its mean does not show, so the hours have more degree-days, the more so at low bases and
/// mild stations; a house, which carries warmth over hours, is nearer to the days.
#[test]
fn the_season_has_fewer_degree_days_than_the_hours() {
    let daily = |row: &Row| 10 * (whole(row, "hdd65_f") + 5).div_euclid(10);
    for (base_f, mean, half, most) in [
        (55.0, -0.06, 0.05, 0.165),
        (60.0, -0.04, 0.035, 0.115),
        (65.0, -0.03, 0.025, 0.08),
        (70.0, -0.025, 0.02, 0.06),
    ] {
        errors(daily, 0, base_f);
        let found = errors(daily, 4000, base_f);
        assert!(found.mean < 0.0 && found.mean > mean, "{base_f}: {found:?}");
        assert!(found.half < half && found.most < most, "{base_f}: {found:?}");
    }
}

/// The year gives what the station says, but where its rounded figures exclude each other.
#[test]
fn the_year_has_the_published_degree_days() {
    let mut apart = 0;
    for listed in table().stations() {
        let station = &listed.station;
        let season = Season::of(station);
        let off = season_degree_days_f(&season, 65.0) - f64::from(station.degree_days_65_f);
        assert!(off.abs() < 180.0, "{}: {off}", station.name);
        apart += usize::from(off.abs() > 10.0);
    }
    println!("{apart} stations are off by more than 10 °F·days");
    assert!(apart < 30, "{apart}");
}

/// Burlington's January has some 1400 °F·days and its July 20, February is colder than December and
/// January the coldest (from memory of the normals).
#[test]
fn the_months_have_their_share() {
    let station = table().stations().iter().find(|s| s.station.name.starts_with("Burlington Int"));
    let season = Season::of(&station.expect("a station").station);
    let base = Temperature::of(65.0, Unit::Fahrenheit);
    let month = |from: &str, to: &str| {
        let [from, to] = [from, to].map(|text| Day::parse(text).expect("a day"));
        season.degree_days_k(from, to, base) * 1.8
    };
    let (january, july) = (month("2026-01-01", "2026-02-01"), month("2026-07-01", "2026-08-01"));
    assert!((january - 1400.0).abs() < 120.0, "{january}");
    assert!(july > 0.0 && july < 60.0, "{july}");
    let december = month("2025-12-01", "2026-01-01") / 31.0;
    let february = month("2026-02-01", "2026-03-01") / 28.0;
    assert!(december < february && february < january / 31.0, "{december} {february} {january}");
    assert_eq!(month("2026-02-01", "2026-01-01"), 0.0);
    // Every year alike.
    assert!((month("2056-01-01", "2056-02-01") - january).abs() < 2.0);
}
