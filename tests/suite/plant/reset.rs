//! Outdoor reset against hand, the trade's conversion table and the loop's exact output.

use super::{btu_per_hour, fahrenheit};
use finrun_engine::emitter::{Element, HeatingEffect, Rating, cool};
use finrun_engine::fluid::{Fluid, Stream};
use finrun_engine::plant::reset::{
    Designed, Point, ResetError, Setting, points, setting, supply_at, supply_for,
};
use finrun_engine::quantity::{
    Length, LinearPower, MassFlow, Power, Temperature, TemperatureDifference, Unit,
};
use proptest::prelude::*;

fn celsius(value: f64) -> Temperature {
    Temperature::of(value, Unit::Celsius)
}

fn kelvin(value: f64) -> TemperatureDifference {
    TemperatureDifference::from_si(value)
}

/// 75 to 65 °C at -10 °C.
fn designed() -> Designed {
    Designed {
        room: celsius(20.0),
        outdoors: celsius(-10.0),
        balance: celsius(20.0),
        supply: celsius(75.0),
        drop: kelvin(10.0),
        exponent: 1.3,
        surplus: 1.0,
    }
}

fn needed(designed: Designed, outdoors: f64) -> f64 {
    supply_at(&designed, celsius(outdoors)).expect("sound").to(Unit::Celsius)
}

#[test]
fn half_the_load_takes_the_supply_of_the_hand() {
    // By hand: half of the load takes 0.5^(1/1.3) = 0.5867 of the excess of 50 K, and half of the drop.
    assert!((needed(designed(), 5.0) - (20.0 + 29.337 + 2.5)).abs() < 0.001);
    assert!((needed(designed(), -10.0) - 75.0).abs() < 1e-9);
    assert!((needed(designed(), 20.0) - 20.0).abs() < 1e-9);
    assert!((needed(designed(), 30.0) - 20.0).abs() < 1e-9);
    // Sun and people that carry the house down to 15 °C leave the same share at 2.5 °C.
    let gains = Designed { balance: celsius(15.0), ..designed() };
    assert!((needed(gains, 2.5) - needed(designed(), 5.0)).abs() < 1e-9);
    // Elements for twice the load do on the design day what the others do at half of it.
    let twice = Designed { surplus: 2.0, ..designed() };
    assert!((needed(twice, -10.0) - needed(designed(), 5.0)).abs() < 1e-9);
}

#[test]
fn the_trades_conversion_table_is_run_backwards() {
    // The trade's conversion from 215 °F water, from memory and rounded: 0.69 at 180, 0.53 at 160, 0.38
    // at 140, 0.24 at 120 °F. A load down to 0.38/0.69 wants water of 140 °F.
    let design = Designed {
        room: fahrenheit(65.0),
        balance: fahrenheit(65.0),
        outdoors: fahrenheit(0.0),
        supply: fahrenheit(180.0),
        drop: TemperatureDifference::ZERO,
        exponent: 1.4045,
        surplus: 1.0,
    };
    for (factor, water) in [(0.53, 160.0), (0.38, 140.0), (0.24, 120.0)] {
        let outdoors = fahrenheit(65.0 - 65.0 * factor / 0.69);
        let found = supply_at(&design, outdoors).expect("sound").to(Unit::Fahrenheit);
        assert!((found - water).abs() < 1.5, "{found} against {water}");
    }
}

/// What three elements in a row give air of 70 °F.
fn row_output(supply: Temperature, flow: MassFlow, exponent: f64) -> Power {
    let rating = Rating {
        output: LinearPower::of(600.0, Unit::BtuPerHourFoot),
        water: fahrenheit(180.0),
        air: fahrenheit(65.0),
        exponent,
        flow: MassFlow::of(500.0, Unit::PoundPerHour),
        effect: HeatingEffect::AsTyped,
    };
    let element = Element { rating, derate: 1.0 };
    let mut stream = Stream { fluid: Fluid::Water, flow, temperature: supply };
    let mut sum = Power::ZERO;
    for length in [20.0, 10.0, 15.0] {
        let cooling = cool(&element, stream, fahrenheit(70.0), Length::of(length, Unit::Foot));
        stream.temperature = cooling.outlet;
        sum += cooling.to_room;
    }
    sum
}

#[test]
fn the_mean_water_temperature_stands_for_a_series_to_a_twentieth_of_a_kelvin() {
    for exponent in [1.2, 1.4] {
        let supply = fahrenheit(180.0);
        let flow = MassFlow::of(1200.0, Unit::PoundPerHour);
        let load = row_output(supply, flow, exponent);
        let drop = load / (flow * Fluid::Water.specific_heat(fahrenheit(170.0)));
        assert!((18.0..21.0).contains(&drop.to(Unit::FahrenheitDegree)), "{drop:?}");
        let (room, outdoors) = (fahrenheit(70.0), fahrenheit(0.0));
        let design =
            Designed { room, outdoors, balance: room, supply, drop, exponent, surplus: 1.0 };
        for warmer in [0.0, 10.0, 20.0, 35.0, 50.0, 60.0] {
            let part = load * ((70.0 - warmer) / 70.0);
            let output = |supply| row_output(supply, flow, exponent);
            let exact = supply_for(part, room, fahrenheit(200.0), &output).expect("enough");
            let found = supply_at(&design, fahrenheit(warmer)).expect("sound");
            assert!((found - exact).abs().si() < 0.05, "{exponent} {warmer}: {found:?} {exact:?}");
        }
    }
}

#[test]
fn the_exact_supply_gives_the_load_or_is_not_there() {
    let flow = MassFlow::of(1200.0, Unit::PoundPerHour);
    let output = |supply| row_output(supply, flow, 1.4);
    let (room, most) = (fahrenheit(70.0), fahrenheit(180.0));
    let load = btu_per_hour(12_000.0);
    let found = supply_for(load, room, most, &output).expect("enough");
    assert!((output(found) / load - 1.0).abs() < 1e-6);
    assert_eq!(supply_for(Power::ZERO, room, most, &output), Some(room));
    assert_eq!(supply_for(btu_per_hour(50_000.0), room, most, &output), None);
    assert_eq!(supply_for(Power::from_si(f64::NAN), room, most, &output), None);
}

#[test]
fn a_design_of_wrong_numbers_is_refused() {
    let error = |designed: Designed| supply_at(&designed, celsius(0.0)).err();
    let design = designed();
    assert_eq!(error(design), None);
    for balance in [-10.0, -11.0, 21.0, f64::NAN] {
        let balance = celsius(balance);
        assert_eq!(error(Designed { balance, ..design }), Some(ResetError::Balance));
    }
    assert_eq!(error(Designed { supply: celsius(25.0), ..design }), Some(ResetError::Water));
    assert_eq!(error(Designed { supply: celsius(f64::NAN), ..design }), Some(ResetError::Water));
    assert_eq!(error(Designed { drop: kelvin(-1.0), ..design }), Some(ResetError::Water));
    assert_eq!(error(Designed { drop: kelvin(0.0), ..design }), None);
    assert_eq!(error(Designed { exponent: 0.4, ..design }), None);
    assert_eq!(error(Designed { surplus: 0.4, ..design }), None);
    for value in [0.0, -1.0, f64::NAN] {
        assert_eq!(error(Designed { exponent: value, ..design }), Some(ResetError::Element));
        assert_eq!(error(Designed { surplus: value, ..design }), Some(ResetError::Element));
    }
}

fn line(designed: &Designed, mildest: f64, count: usize) -> Vec<Point> {
    let supply = |outdoors| supply_at(designed, outdoors).ok();
    points(designed.outdoors, celsius(mildest), count, &supply).expect("sound")
}

/// How far a line of this slope must be above the need somewhere, if it is nowhere below.
fn excess_at(slope: f64, line: &[Point]) -> f64 {
    let over: Vec<f64> =
        line.iter().map(|p| (p.supply - kelvin(slope * (293.15 - p.outdoors.si()))).si()).collect();
    over.iter().fold(f64::MIN, |a, &b| a.max(b)) - over.iter().fold(f64::MAX, |a, &b| a.min(b))
}

#[test]
fn a_straight_need_is_met_exactly() {
    // With an exponent of one the need is straight: from 75 °C at -10 to 20 at 20 °C.
    let straight = Designed { exponent: 1.0, ..designed() };
    let line = line(&straight, 15.0, 6);
    assert_eq!(line.len(), 6);
    assert!((line[5].outdoors - celsius(15.0)).abs().si() < 1e-9);
    assert!((line[1].outdoors - celsius(-5.0)).abs().si() < 1e-9);
    let Setting { slope, shift, excess } = setting(celsius(20.0), &line).expect("a line");
    assert!(
        (slope - 55.0 / 30.0).abs() < 1e-9 && shift.abs().si() < 1e-9 && excess.abs().si() < 1e-9
    );
}

#[test]
fn one_day_is_no_line() {
    let one = Point { outdoors: celsius(0.0), supply: celsius(50.0) };
    assert_eq!(setting(celsius(20.0), &[]), None);
    assert_eq!(setting(celsius(20.0), &[one]), None);
    assert_eq!(setting(celsius(20.0), &[one, Point { supply: celsius(60.0), ..one }]), None);
    assert_eq!(points(celsius(0.0), celsius(9.0), 3, &|_| None), None);
    let two = points(celsius(0.0), celsius(9.0), 0, &Some).expect("two");
    assert_eq!(two.len(), 2);
}

proptest! {
    #[test]
    fn colder_days_want_warmer_water(
        exponent in 1.0..1.6, drop in 0.0..20.0, outdoors in -10.0..19.0, colder in 0.01..5.0,
    ) {
        let designed = Designed { exponent, drop: kelvin(drop), ..designed() };
        prop_assert!(needed(designed, outdoors - colder) > needed(designed, outdoors));
        let weaker = Designed { surplus: 0.9, ..designed };
        prop_assert!(needed(weaker, outdoors) > needed(designed, outdoors));
    }

    #[test]
    fn the_control_is_short_on_no_day_and_over_by_the_least(
        exponent in 1.05..1.6, drop in 0.0..20.0, mildest in 0.0..17.0, other in 0.0..4.0,
    ) {
        let designed = Designed { exponent, drop: kelvin(drop), ..designed() };
        let line = line(&designed, mildest, 40);
        let found = setting(celsius(20.0), &line).expect("a line");
        let mut most = 0.0_f64;
        for point in &line {
            let control = celsius(20.0) + found.shift + (celsius(20.0) - point.outdoors) * found.slope;
            let over = (control - point.supply).si();
            prop_assert!(over > -1e-9, "short by {over}");
            most = most.max(over);
        }
        prop_assert!((most - found.excess.si()).abs() < 1e-9);
        prop_assert!(excess_at(other, &line) >= found.excess.si() - 1e-9);
    }
}
