//! Houses found again from bills of years that no formula made.

use super::year::{MONTHS, Year, below, year};
use super::{FUEL, HOUSE, House, day, errors, fit_house, station, therms};
use crate::climate::{csv, season::bin_degree_days_f, table};
use finrun_engine::bills::{Bill, Fitted, fit};
use finrun_engine::climate::{Season, Station};
use finrun_engine::quantity::{Temperature, Unit};

/// Kelvin-days below a base, of the days' means.
fn kelvin_days(days_f: &[f64], base_f: f64) -> f64 {
    below(days_f, base_f) / 1.8
}

/// The house's bill of the days from one to another of the year, with its weather typed or not.
fn bill(house: House, year: &Year, from: usize, to: usize, weather: bool) -> Bill {
    let days_f = &year.days_f[from..to];
    let new_year = day("2025-01-01");
    Bill {
        from: new_year.plus(from as i32),
        to: new_year.plus(to as i32),
        amount: therms(house, (to - from) as f64, kelvin_days(days_f, house.balance_f)),
        degree_days_65_k: weather.then(|| kelvin_days(days_f, 65.0)),
    }
}

fn months(house: House, year: &Year, weather: bool) -> Vec<Bill> {
    MONTHS.windows(2).map(|m| bill(house, year, m[0], m[1], weather)).collect()
}

const PLACES: [(&str, &str); 6] = [
    ("VT", "Burlington International AP"),
    ("MA", "Boston Logan Intl AP"),
    ("MN", "Minneapolis-St Paul Intl Arp"),
    ("OH", "Columbus Port Columbus Intl A"),
    ("WA", "Seattle Seattle-Tacoma Intl A"),
    ("AK", "Fairbanks Intl AP"),
];

/// Twelve months with their weather give coefficient, balance and other use back; without it the
/// chance of each month's weather remains.
#[test]
fn a_year_of_months_gives_the_house_back() {
    for (state, name) in PLACES {
        let year = year(state, name);
        let season = Season::of(station(state, name));
        for (balance_f, other_w) in [(60.0, 600.0), (60.0, 0.0), (64.0, 300.0), (56.0, 600.0)] {
            let house = House { balance_f, other_w, ..HOUSE };
            let found = fit_house(&months(house, &year, true), &season, house);
            let (coefficient, balance_k) = errors(&found, house);
            let error = found.coefficient_error.expect("bills to spare") / found.coefficient;
            println!("{name} {balance_f}: {coefficient:+.3} ±{error:.3}, {balance_k:+.2} K");
            // At 56 °F few bills tell where heating begins.
            let slack = if balance_f < 60.0 { 0.05 } else { 0.03 };
            assert!(coefficient.abs() < slack && balance_k.abs() < 1.0, "{name}: {found:?}");
            assert!((found.other_use.si() - other_w).abs() < 80.0, "{name}: {found:?}");
            assert_eq!((found.fitted, found.balance_at_limit), (Fitted::All, false));
            assert!(coefficient.abs() < 3.0 * error + 0.003 && found.residual < 0.03, "{found:?}");

            let found = fit_house(&months(house, &year, false), &season, house);
            let (coefficient, balance_k) = errors(&found, house);
            println!("    typical weather: {coefficient:+.3}, {balance_k:+.2} K");
            assert!(coefficient.abs() < 0.20 && found.residual > 0.03, "{name}: {found:?}");
        }
    }
}

/// Where the year is less like a cosine, the balance temperature takes up some of it.
#[test]
fn an_uneven_year_gives_the_house_back_less_well() {
    let year = year("CO", "Denver Intl AP");
    let season = Season::of(station("CO", "Denver Intl AP"));
    let (coefficient, balance_k) =
        errors(&fit_house(&months(HOUSE, &year, true), &season, HOUSE), HOUSE);
    println!("{coefficient:+.3}, {balance_k:+.2} K");
    assert!(coefficient.abs() < 0.07 && balance_k.abs() < 1.0, "{coefficient} {balance_k}");
}

/// One bill of a year from the hours alone, the balance temperature being as assumed: the error is
/// that of the season's degree-days, median and worst of the stations with a real winter.
#[test]
fn one_bill_of_a_year_gives_the_coefficient() {
    let [bins, design] = ["us_tmy3_bins5f.csv", "us_tmy3_design.csv"].map(csv);
    // 69 °F less 5 K is 60 °F, the edge of a bin.
    let house = House { other_w: 0.0, balance_f: 60.0, ..HOUSE };
    let (mut as_used, mut as_hours) = (Vec::new(), Vec::new());
    for ((listed, row), bins) in table().stations().iter().zip(&design).zip(&bins) {
        let station = &listed.station;
        if station.degree_days_65_f < 4000 {
            continue;
        }
        let one = Bill {
            from: day("2025-01-01"),
            to: day("2026-01-01"),
            amount: therms(house, 365.0, bin_degree_days_f(bins, house.balance_f) / 1.8),
            degree_days_65_k: None,
        };
        let hours: i32 = row["hdd65_hourly_f"].parse().expect("whole degree-days");
        let of_hours = Station { degree_days_65_f: hours, ..station.clone() };
        for (station, off) in [(station, &mut as_used), (&of_hours, &mut as_hours)] {
            let season = Season::of(station);
            let indoor = Temperature::of(69.0, Unit::Fahrenheit);
            let found = fit(&[one], &season, FUEL, house.efficiency, indoor).expect("a fit");
            assert_eq!(found.fitted, Fitted::Coefficient);
            assert_eq!((found.coefficient_error, found.other_use.si()), (None, 0.0));
            let (coefficient, balance_k) = errors(&found, house);
            assert!(balance_k.abs() < 1e-9);
            off.push(coefficient);
        }
    }
    for (off, median, worst) in [(&mut as_used, 0.035, 0.18), (&mut as_hours, 0.005, 0.11)] {
        off.sort_by(f64::total_cmp);
        let (middle, least, most) = (off[off.len() / 2], off[0], off[off.len() - 1]);
        println!("{} stations: {least:+.3} to {most:+.3}, median {middle:+.3}", off.len());
        assert!(off.len() > 600 && middle.abs() < median);
        assert!(least > -worst && most < worst);
    }
}
