//! Hours at each outdoor temperature, and the heat that they take.

use super::{airless, bins, fahrenheit, plain, run, station};
use crate::climate::season::bin_degree_days_f;
use crate::climate::{Row, csv, table};
use crate::support::{add_room, add_wall, cold_day, house, job_of};
use finrun_engine::climate::{Bin, Day, Season, YEAR_H};
use finrun_engine::design::design;
use finrun_engine::job::{Draft, HouseField};
use finrun_engine::quantity::{Temperature, TemperatureDifference, Unit};

/// Degree-hours a year, in K·h, by the days of the calendar: four years, one of them a leap year.
fn degree_hours_k(season: &Season, base: Temperature) -> f64 {
    let [from, to] = ["2025-01-01", "2029-01-01"].map(|text| Day::parse(text).expect("a day"));
    season.degree_days_k(from, to, base) * 24.0 * 365.2425 / 1461.0
}

fn bin_degree_hours_k(bins: &[Bin], base: Temperature) -> f64 {
    let below = |bin: &Bin| (base - bin.outdoors).max(TemperatureDifference::ZERO).si();
    bins.iter().map(|bin| below(bin) * bin.hours).sum()
}

/// A year has 8765.82 hours (365.2425 days, the Gregorian calendar's mean), and at any edge the degree
/// days of the days themselves.
#[test]
fn bins_hold_the_year_and_its_degree_hours() {
    for listed in table().stations().iter().step_by(17) {
        let season = Season::of(&listed.station);
        let bins = season.bins();
        let hours: f64 = bins.iter().map(|bin| bin.hours).sum();
        assert!((hours - YEAR_H).abs() < 1e-3, "{}: {hours}", listed.station.name);
        assert!((YEAR_H - 8765.82).abs() < 1e-9);
        for (bin, next) in bins.iter().zip(&bins[1..]) {
            assert!(bin.from < bin.outdoors || bin.from == bins[0].from);
            assert!(bin.outdoors < next.from, "{bin:?} {next:?}");
        }
        for base_f in [50.0, 60.0, 65.0, 70.0] {
            let expected = degree_hours_k(&season, fahrenheit(base_f));
            let found = bin_degree_hours_k(&bins, fahrenheit(base_f));
            let close = 1e-4 * expected + 1.0;
            assert!(
                (found - expected).abs() < close,
                "{}: {found} {expected}",
                listed.station.name
            );
        }
    }
}

/// Hours below an edge by the rows of NREL's TMY3.
fn hours_below(bins: &Row, edge_f: i32) -> f64 {
    let hours = |name: &str| bins[name].parse::<f64>().expect("hours");
    hours("lt_-60") + (-60..edge_f).step_by(5).map(|edge| hours(&edge.to_string())).sum::<f64>()
}

/// Against the hours of NREL's TMY3 (tests/reference/climate/us_tmy3_bins5f.csv), which has the bins that
/// are not shipped: at the stations where houses are heated through the winter, half of the shares of the
/// year below an edge are within 2 % of the year, and 19 of 20 within 7 %. The days of the season are
/// fewer at both ends than the hours, since a day's mean hides its night.
#[test]
fn bins_come_near_to_the_hours_of_a_typical_year() {
    let rows = csv("us_tmy3_bins5f.csv");
    let mut off = Vec::new();
    for (listed, row) in table().stations().iter().zip(&rows) {
        if listed.station.degree_days_65_f < 4000 {
            continue;
        }
        let bins = Season::of(&listed.station).bins();
        for edge_f in [0, 10, 20, 30, 40, 50, 60] {
            let edge = fahrenheit(f64::from(edge_f));
            let below = bins.iter().filter(|bin| bin.outdoors < edge).map(|bin| bin.hours);
            off.push((below.sum::<f64>() / YEAR_H - hours_below(row, edge_f) / 8760.0).abs());
        }
    }
    off.sort_by(f64::total_cmp);
    let within = |share: f64| off[(share * (off.len() - 1) as f64).round() as usize];
    println!(
        "{} shares: half within {}, {}, {}",
        off.len(),
        within(0.5),
        within(0.95),
        within(1.0)
    );
    assert!(off.len() > 4000);
    assert!(within(0.5) < 0.02 && within(0.95) < 0.07);
}

/// A room of 10 by 10 ft with 40 ft of wall 8 ft high at 0.1 Btu/(h ft2 F), with element enough for any
/// day.
fn room_of_32() -> Draft {
    let mut draft = cold_day();
    house(&mut draft, HouseField::Outdoors, "-40");
    let room = add_room(&mut draft, "Room", "10", "10");
    add_wall(&mut draft, room, "40", "0.1");
    draft
}

/// Without gains, and the room as warm as it is meant to be all year, heat is UA times degree-hours. UA by
/// hand: 40 ft of wall 8 ft high at 0.1 Btu/(h ft2 F) are 32 Btu/(h F) (a Btu of 1055.05585262 J).
#[test]
fn a_years_heat_is_the_coefficient_times_the_degree_hours() {
    let draft = room_of_32();
    let (job, design) = airless(&draft);
    let ua_w_k = 32.0 * 1_055.055_852_62 / 3600.0 * 1.8;
    let season = Season::of(&station());
    let found = run(&job, &design, &bins(), &plain(&job));
    assert!(found.bins.iter().all(|bin| (bin.rooms[0] - fahrenheit(70.0)).si().abs() < 1e-8));
    let to_room = found.rooms[0].heat_j;
    let expected = ua_w_k * degree_hours_k(&season, fahrenheit(70.0)) * 3600.0;
    assert!((to_room / expected - 1.0).abs() < 2e-4, "{to_room} {expected}");
    assert!((found.heat_j - to_room - found.pipe_loss_j).abs() < 1e-6 * to_room);
    // The same with the hours of TMY3 themselves, each bin at its middle: station 726170, Burlington.
    let rows = csv("us_tmy3_bins5f.csv");
    let row = rows.iter().find(|row| row["usaf"] == "726170").expect("the station");
    let hourly: Vec<Bin> = (-60..70)
        .step_by(5)
        .map(|edge| Bin {
            from: fahrenheit(f64::from(edge)),
            outdoors: fahrenheit(f64::from(edge) + 2.5),
            hours: row[&edge.to_string()].parse().expect("hours"),
        })
        .filter(|bin| bin.hours > 0.0)
        .collect();
    let found = run(&job, &design, &hourly, &plain(&job));
    // In Btu: 32 Btu/(h F) times 24 h a day times degree-days.
    let expected_btu = 32.0 * 24.0 * bin_degree_days_f(row, 70.0);
    let found_btu = found.rooms[0].heat_j / 1_055.055_852_62;
    assert!((found_btu / expected_btu - 1.0).abs() < 1e-9, "{found_btu} {expected_btu}");
}

/// By hand: gains that carry the house from 60 °F on leave UA times the degree-hours below 60 °F, as the
/// fit of fuel bills has it.
#[test]
fn gains_lower_the_base_of_the_degree_hours() {
    let draft = room_of_32();
    let (job, design) = airless(&draft);
    let mut controls = plain(&job);
    controls.gains = finrun_engine::season::Gains::From(fahrenheit(60.0));
    let found = run(&job, &design, &bins(), &controls).rooms[0].heat_j;
    let ua_w_k = 32.0 * 1_055.055_852_62 / 3600.0 * 1.8;
    let hours = degree_hours_k(&Season::of(&station()), fahrenheit(60.0));
    assert!((found / (ua_w_k * hours * 3600.0) - 1.0).abs() < 5e-4, "{found}");
}

/// Air that leaks in takes its share: 100 ft2 by 8 ft and one air change an hour are 800 ft3/h, and 0.018
/// Btu/(ft3 F) (the trade's 1.08 Btu/h per cfm and °F over 60) make 14.4 Btu/(h F).
#[test]
fn outdoor_air_counts_in_every_bin() {
    let mut draft = room_of_32();
    house(&mut draft, HouseField::AirChanges, "1");
    let job = job_of(&draft);
    let design = design(&job);
    let found = run(&job, &design, &bins(), &plain(&job)).rooms[0].heat_j;
    let ua_w_k = (32.0 + 14.4) * 1_055.055_852_62 / 3600.0 * 1.8;
    let hours = degree_hours_k(&Season::of(&station()), fahrenheit(70.0));
    assert!((found / (ua_w_k * hours * 3600.0) - 1.0).abs() < 2e-3, "{found}");
    let load = design.load.to(Unit::BtuPerHour);
    assert!((load / (110.0 * 46.4) - 1.0).abs() < 1e-3, "{load}");
}
