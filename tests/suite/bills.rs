//! Houses known beforehand, found again from their fuel bills.

mod found_again;
mod year;

use crate::climate::{csv, table};
use finrun_engine::bills::{Bill, BillsError, Fit, Fitted, Fuel, Verdict, compare, fit};
use finrun_engine::climate::{Day, Season, Station};
use finrun_engine::named::{Named, find};
use finrun_engine::quantity::{LossCoefficient, Temperature, Unit};
use proptest::prelude::*;
use year::MONTHS;

/// A house kept at 70 °F.
#[derive(Debug, Clone, Copy)]
struct House {
    coefficient_w_k: f64,
    balance_f: f64,
    other_w: f64,
    efficiency: f64,
}

const HOUSE: House =
    House { coefficient_w_k: 250.0, balance_f: 60.0, other_w: 600.0, efficiency: 0.82 };

const FUEL: Fuel = Fuel::NaturalGasTherm;

/// From the definition of the Btu.
const THERM_J: f64 = 1.05505585262e8;

const DAY_S: f64 = 86_400.0;

fn station(state: &str, name: &str) -> &'static Station {
    let mut listed = table().stations().iter();
    let found = listed.find(|s| s.station.state == state && s.station.name == name);
    &found.unwrap_or_else(|| panic!("{name}, {state}")).station
}

fn burlington() -> Season {
    Season::of(station("VT", "Burlington International AP"))
}

fn indoor() -> Temperature {
    Temperature::of(70.0, Unit::Fahrenheit)
}

fn day(text: &str) -> Day {
    Day::parse(text).expect("a day")
}

/// Therms of a house over days in which the outdoors was so far below its balance.
fn therms(house: House, days: f64, kelvin_days: f64) -> f64 {
    let watt_days = house.coefficient_w_k * kelvin_days / house.efficiency + house.other_w * days;
    watt_days * DAY_S / THERM_J
}

fn fit_house(bills: &[Bill], season: &Season, house: House) -> Fit {
    fit(bills, season, FUEL, house.efficiency, indoor()).expect("a fit")
}

/// How far the coefficient is off as a share, the balance temperature in K.
fn errors(found: &Fit, house: House) -> (f64, f64) {
    let balance_k = found.balance - Temperature::of(house.balance_f, Unit::Fahrenheit);
    (found.coefficient.si() / house.coefficient_w_k - 1.0, balance_k.si())
}

/// Bills of the house by the season itself, so that what can be told is told exactly.
fn ideal(house: House, season: &Season, periods: &[(&str, &str)]) -> Vec<Bill> {
    let balance = Temperature::of(house.balance_f, Unit::Fahrenheit);
    let one = |&(from, to): &(&str, &str)| {
        let [from, to] = [from, to].map(day);
        let days = f64::from(to.days_after(from));
        let amount = therms(house, days, season.degree_days_k(from, to, balance));
        Bill { from, to, amount, degree_days_65_k: None }
    };
    periods.iter().map(one).collect()
}

const WINTER: [(&str, &str); 3] =
    [("2025-12-05", "2026-01-06"), ("2026-01-06", "2026-02-04"), ("2026-02-04", "2026-03-06")];
const SPRING: (&str, &str) = ("2026-04-05", "2026-05-06");
const SUMMER: (&str, &str) = ("2026-07-03", "2026-08-04");

#[test]
fn few_bills_tell_what_they_can() {
    let season = burlington();
    let assumed = House { balance_f: 61.0, ..HOUSE };
    let exact = |found: &Fit, house: House| {
        let (coefficient, balance_k) = errors(found, house);
        assert!(coefficient.abs() < 2e-3 && balance_k.abs() < 0.02, "{found:?}");
        assert!((found.other_use.si() - house.other_w).abs() < 3.0, "{found:?}");
    };
    // Winter bills alone: neither balance nor other use can be told.
    let heating_only = House { other_w: 0.0, ..assumed };
    for count in 1..=3 {
        let bills = ideal(heating_only, &season, &WINTER[..count]);
        let found = fit_house(&bills, &season, heating_only);
        exact(&found, heating_only);
        assert_eq!(found.fitted, Fitted::Coefficient);
        assert_eq!(found.coefficient_error.is_some(), count > 1);
    }
    // A mild one beside them shows the other use, the balance being assumed.
    let found = fit_house(&ideal(assumed, &season, &[WINTER[0], SUMMER]), &season, assumed);
    exact(&found, assumed);
    assert_eq!((found.fitted, found.coefficient_error), (Fitted::CoefficientAndOtherUse, None));
    let found = fit_house(&ideal(assumed, &season, &[WINTER[0], SPRING, SUMMER]), &season, assumed);
    exact(&found, assumed);
    assert_eq!(found.fitted, Fitted::CoefficientAndOtherUse);
    assert!(found.coefficient_error.is_some());
    // Use that falls faster than the assumed balance has it shows the balance, without other use.
    let low = House { other_w: 0.0, balance_f: 52.0, ..HOUSE };
    let found = fit_house(&ideal(low, &season, &[WINTER[0], SPRING, SUMMER]), &season, low);
    exact(&found, low);
    assert_eq!(found.fitted, Fitted::CoefficientAndBalance);
    // Three unlike cold periods and a mild one show all.
    let four = ideal(low, &season, &[WINTER[0], WINTER[1], SPRING, SUMMER]);
    let found = fit_house(&four, &season, low);
    exact(&found, low);
    assert_eq!((found.fitted, found.balance_at_limit), (Fitted::All, false));
    // Three alike do not.
    let alike = [WINTER[0], WINTER[1], WINTER[2], SUMMER];
    let found = fit_house(&ideal(assumed, &season, &alike), &season, assumed);
    exact(&found, assumed);
    assert_eq!(found.fitted, Fitted::CoefficientAndOtherUse);
    // A balance temperature beyond the range is said.
    let odd = House { balance_f: 40.0, ..HOUSE };
    let all = [WINTER[0], WINTER[1], WINTER[2], SPRING, SUMMER];
    assert!(fit_house(&ideal(odd, &season, &all), &season, odd).balance_at_limit);
}

/// Each bill counts by its days, so the house that is fitted burns as much as all bills together.
#[test]
fn the_fitted_house_burns_as_much_as_the_bills() {
    let season = burlington();
    let periods = [("2025-12-01", "2026-02-28"), ("2026-03-10", "2026-03-17"), SUMMER];
    let mut bills = ideal(HOUSE, &season, &periods);
    bills[1].amount *= 1.3;
    let found = fit_house(&bills, &season, HOUSE);
    assert_eq!(found.fitted, Fitted::CoefficientAndOtherUse);
    let as_fitted = House {
        coefficient_w_k: found.coefficient.si(),
        balance_f: found.balance.to(Unit::Fahrenheit),
        other_w: found.other_use.si(),
        ..HOUSE
    };
    let total = |bills: &[Bill]| bills.iter().map(|bill| bill.amount).sum::<f64>();
    let ratio = total(&ideal(as_fitted, &season, &periods)) / total(&bills);
    assert!((ratio - 1.0).abs() < 1e-9, "{ratio}");
    assert!(found.residual > 0.01, "{found:?}");
}

/// Of many sets of bills with chance in them, the coefficients scatter by their standard error.
#[test]
fn the_standard_error_is_that_of_the_scatter() {
    let season = burlington();
    let year: Vec<(String, String)> = MONTHS
        .windows(2)
        .map(|m| {
            let of = |day_of_year: usize| day("2025-01-01").plus(day_of_year as i32).to_string();
            (of(m[0]), of(m[1]))
        })
        .collect();
    let year: Vec<(&str, &str)> = year.iter().map(|(a, b)| (a.as_str(), b.as_str())).collect();
    let few = [WINTER[0], SPRING, SUMMER];
    for (periods, fitted) in [(&year[..], Fitted::All), (&few, Fitted::CoefficientAndOtherUse)] {
        let bills = ideal(House { balance_f: 61.0, ..HOUSE }, &season, periods);
        let chance = year::normals(400 * bills.len());
        let (mut squares, mut errors) = (0.0, 0.0);
        for chance in chance.chunks(bills.len()) {
            let mut bills = bills.clone();
            for (bill, chance) in bills.iter_mut().zip(chance) {
                bill.amount += 2.0 * chance;
            }
            let found = fit_house(&bills, &season, HOUSE);
            assert_eq!(found.fitted, fitted);
            let error = found.coefficient_error.expect("bills to spare").si();
            let off = found.coefficient.si() - HOUSE.coefficient_w_k;
            squares += off * off;
            errors += error * error;
        }
        let ratio: f64 = (errors / squares).sqrt();
        println!("{fitted:?}: errors {ratio:.3} of the scatter");
        assert!((0.9..1.1).contains(&ratio), "{fitted:?}: {ratio}");
    }
}

/// The order of the bills does not matter, nor on which side of a new year they lie.
#[test]
fn the_order_of_bills_does_not_matter() {
    let season = burlington();
    let mut bills = ideal(HOUSE, &season, &[SUMMER, WINTER[2], SPRING, WINTER[0], WINTER[1]]);
    let found = fit_house(&bills, &season, HOUSE);
    bills.reverse();
    let (a, b) = (found.coefficient, fit_house(&bills, &season, HOUSE).coefficient);
    assert!((a / b - 1.0).abs() < 1e-9);
    assert!(errors(&found, HOUSE).0.abs() < 2e-3);
}

/// A month 4 K colder than typical everywhere: its typed degree-days give the same house.
#[test]
fn typed_degree_days_move_the_month() {
    let season = burlington();
    let colder = Season { mean: Temperature::from_si(season.mean.si() - 4.0), ..season };
    let base = Temperature::of(65.0, Unit::Fahrenheit);
    let mut bills = ideal(HOUSE, &colder, &[WINTER[0], WINTER[1], WINTER[2], SPRING, SUMMER]);
    let as_typical = fit_house(&bills, &season, HOUSE);
    for bill in &mut bills {
        bill.degree_days_65_k = Some(colder.degree_days_k(bill.from, bill.to, base));
    }
    let found = fit_house(&bills, &season, HOUSE);
    let (coefficient, balance_k) = errors(&found, HOUSE);
    assert!(coefficient.abs() < 2e-3 && balance_k.abs() < 0.02, "{found:?}");
    assert!(errors(&as_typical, HOUSE).1.abs() > 3.0, "{as_typical:?}");
    // A summer without any is sound.
    bills[4].degree_days_65_k = Some(0.0);
    assert!(fit(&bills, &season, FUEL, 0.82, indoor()).is_ok());
}

#[test]
fn what_is_wrong_with_bills_is_named() {
    let season = burlington();
    let good = ideal(HOUSE, &season, &WINTER);
    let error = |bills: &[Bill]| fit(bills, &season, FUEL, 0.8, indoor()).expect_err("no fit");
    let second = |change: fn(&mut Bill)| {
        let mut bills = good.clone();
        change(&mut bills[1]);
        error(&bills)
    };
    assert_eq!(error(&[]), BillsError::NoBills);
    assert_eq!(second(|b| b.to = b.from), BillsError::Reversed { index: 1 });
    assert_eq!(second(|b| b.to = b.from.plus(-9)), BillsError::Reversed { index: 1 });
    assert_eq!(second(|b| b.to = b.from.plus(6)), BillsError::TooShort { index: 1 });
    assert_eq!(second(|b| b.from = b.to.plus(-401)), BillsError::TooLong { index: 1 });
    assert_eq!(second(|b| b.from = b.from.plus(-1)), BillsError::Overlap { first: 0, second: 1 });
    assert_eq!(second(|b| b.to = b.to.plus(1)), BillsError::Overlap { first: 1, second: 2 });
    assert_eq!(second(|b| b.amount = -1.0), BillsError::Amount { index: 1 });
    assert_eq!(second(|b| b.amount = f64::NAN), BillsError::Amount { index: 1 });
    assert_eq!(second(|b| b.amount = 1e300), BillsError::Amount { index: 1 });
    let degree_days = |typed: f64| {
        let mut bills = good.clone();
        bills[1].degree_days_65_k = Some(typed);
        fit(&bills, &season, FUEL, 0.8, indoor()).err()
    };
    assert_eq!(degree_days(-1.0), Some(BillsError::DegreeDays { index: 1 }));
    assert_eq!(degree_days(f64::INFINITY), Some(BillsError::DegreeDays { index: 1 }));
    assert_eq!(degree_days(0.0), Some(BillsError::UnlikelyDegreeDays { index: 1 }));
    // °F·days of a January in Vermont, typed as K·days.
    assert_eq!(degree_days(1400.0), Some(BillsError::UnlikelyDegreeDays { index: 1 }));
    assert_eq!(degree_days(1400.0 / 1.8), None);
    assert_eq!(error(&ideal(HOUSE, &season, &[SUMMER])), BillsError::NoHeating);
    let none: Vec<Bill> = good.iter().map(|bill| Bill { amount: 0.0, ..*bill }).collect();
    assert_eq!(error(&none), BillsError::NotWithTheCold);
    let mut swapped = ideal(HOUSE, &season, &[WINTER[0], WINTER[1], SPRING, SUMMER]);
    let amounts: Vec<f64> = swapped.iter().rev().map(|bill| bill.amount).collect();
    swapped.iter_mut().zip(amounts).for_each(|(bill, amount)| bill.amount = amount);
    assert_eq!(error(&swapped), BillsError::NotWithTheCold);
    for efficiency in [0.0, 0.008, -0.8, 80.0, f64::NAN] {
        let found = fit(&good, &season, FUEL, efficiency, indoor());
        assert_eq!(found, Err(BillsError::Efficiency));
    }
    for kelvins in [20.0, 340.0, f64::NAN] {
        let found = fit(&good, &season, FUEL, 0.8, Temperature::from_si(kelvins));
        assert_eq!(found, Err(BillsError::Indoor));
    }
}

/// Heat contents against the collected figures of the Energy Information Administration.
#[test]
fn fuels_have_their_heat() {
    let rows = csv("fuels_eia.csv");
    let btu = |fuel: &str, unit: &str| {
        let row = rows.iter().find(|row| row["fuel"] == fuel && row["unit"] == unit);
        row.expect("a row")["Btu_per_unit"].parse::<f64>().expect("a number")
    };
    for (fuel, expected) in [
        (Fuel::NaturalGasTherm, btu("natural gas", "therm")),
        (Fuel::NaturalGasCcf, 100.0 * btu("natural gas", "ft3")),
        (Fuel::HeatingOilGallon, btu("heating oil No. 2", "US gallon")),
        (Fuel::PropaneGallon, btu("propane", "US gallon")),
        (Fuel::ElectricityKwh, btu("electricity", "kWh")),
    ] {
        let found = fuel.heat_content_j() / (THERM_J / 1e5);
        // 3412 is rounded.
        assert!((found / expected - 1.0).abs() < 1e-4, "{fuel:?}");
        assert_eq!(find::<Fuel>(fuel.name()), Some(fuel));
    }
    assert_eq!(Fuel::ALL.len(), 5);
}

#[test]
fn the_calculated_house_is_set_against_the_bills() {
    let season = burlington();
    let all = [WINTER[0], WINTER[1], WINTER[2], SPRING, SUMMER];
    let known = fit_house(&ideal(HOUSE, &season, &all), &season, HOUSE);
    let verdict = |calculated: f64| {
        let compared = compare(LossCoefficient::from_si(calculated), &known).expect("a house");
        assert!((compared.ratio - 250.0 / calculated).abs() < 0.01);
        compared.verdict
    };
    assert_eq!(verdict(250.0), Verdict::Agrees);
    assert_eq!(verdict(290.0), Verdict::Agrees);
    assert_eq!(verdict(215.0), Verdict::Agrees);
    assert_eq!(verdict(310.0), Verdict::BillsLower);
    assert_eq!(verdict(200.0), Verdict::BillsHigher);
    // One winter bill leaves more open.
    let one = fit_house(&ideal(HOUSE, &season, &WINTER[..1]), &season, HOUSE);
    let compared = |fit: &Fit| compare(fit.coefficient * 1.25, fit).expect("a house");
    assert_eq!(compared(&one).verdict, Verdict::Agrees);
    assert_eq!(compared(&known).verdict, Verdict::BillsLower);
    for nothing in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(compare(LossCoefficient::from_si(nothing), &known), None);
    }
}

proptest! {
    #[test]
    fn no_bills_make_the_fit_panic(
        rows in proptest::collection::vec(
            (any::<i16>(), -20..420_i32, prop_oneof![0.0..500.0, any::<f64>()],
                proptest::option::of(prop_oneof![0.0..1500.0, any::<f64>()])),
            0..8,
        ),
        place in 0..1020_usize,
        efficiency in prop_oneof![0.3..1.0, any::<f64>()],
    ) {
        let bills: Vec<Bill> = rows
            .into_iter()
            .map(|(from, days, amount, degree_days_65_k)| {
                let from = Day::since_1970(i32::from(from));
                Bill { from, to: from.plus(days), amount, degree_days_65_k }
            })
            .collect();
        let season = Season::of(&table().stations()[place].station);
        if let Ok(found) = fit(&bills, &season, FUEL, efficiency, indoor()) {
            prop_assert!(found.coefficient.si() > 0.0 && found.coefficient.is_finite());
            prop_assert!(found.other_use.si() >= 0.0 && found.other_use.is_finite());
            prop_assert!(found.residual.is_finite() && found.balance <= indoor());
        }
    }

    /// A station of any numbers, as a job file may hold it, gives a season.
    #[test]
    fn no_station_makes_the_season_panic(numbers in any::<[i32; 7]>()) {
        let [elevation_m, t99_f, t996_f, mean_f, coldest_month_f, degree_days_65_f, wind_mph] = numbers;
        let station = Station {
            state: String::new(),
            name: String::new(),
            elevation_m, t99_f, t996_f, mean_f, coldest_month_f, degree_days_65_f, wind_mph,
        };
        let season = Season::of(&station);
        let base = Temperature::of(65.0, Unit::Fahrenheit);
        let found = season.degree_days_k(day("2025-01-01"), day("2025-02-01"), base);
        prop_assert!(found.is_finite() && found >= -1e-6);
    }
}
