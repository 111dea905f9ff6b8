//! Tank, filling and boiling against worked examples and the steam tables.

use super::{fahrenheit, feet, gallons, near};
use finrun_engine::building::air::air_density;
use finrun_engine::fluid::Fluid;
use finrun_engine::plant::expansion::{
    Metal, Pressures, System, TankError, USUAL_GAL, growth, highest, hot_pressure, tank,
};
use finrun_engine::plant::fill::{
    BoilingVerdict, LEAST_AT_TOP, ReliefVerdict, Top, USUAL_AT_TOP, USUAL_RELIEF, boiling,
    fill_pressure, relief_margin,
};
use finrun_engine::plant::{atmosphere, static_pressure};
use finrun_engine::quantity::{Length, Pressure, Temperature, TemperatureDifference, Unit, Volume};
use proptest::prelude::*;

fn psi(value: f64) -> Pressure {
    Pressure::of(value, Unit::Psi)
}

const SEA_LEVEL: Pressure = Pressure::from_si(101_325.0);

// Air and liquid at rest.

#[test]
fn the_atmosphere_is_the_standards() {
    // U.S. Standard Atmosphere 1976, from memory: kPa at 0, 1000, 2000, 3000 m.
    for (metres, kilopascal) in
        [(0.0, 101.325), (1000.0, 89.875), (2000.0, 79.495), (3000.0, 70.109)]
    {
        near(atmosphere(Length::from_si(metres)).to(Unit::Kilopascal), kilopascal, 2e-4);
    }
    near(atmosphere(feet(5000.0)).to(Unit::Psi), 12.228, 2e-4);
    // The rooms' air stands under the same.
    let air = air_density(fahrenheit(70.0), feet(5000.0)).si() * 287.055 * fahrenheit(70.0).si();
    near(air, atmosphere(feet(5000.0)).si(), 1e-12);
}

#[test]
fn a_psi_is_2_31_feet_of_water() {
    // The trade's figure, for 60 to 62 °F.
    near(static_pressure(Fluid::Water, fahrenheit(60.0), feet(2.31)).to(Unit::Psi), 1.0, 1e-3);
}

// Expansion tank.

fn ashrae() -> (System, Pressures) {
    let system = System {
        fluid: Fluid::Water,
        volume: gallons(3000.0),
        cold: fahrenheit(40.0),
        hot: fahrenheit(220.0),
        metal: Metal::Steel,
    };
    let sea_level = psi(14.7);
    (system, Pressures { fill: psi(10.0), highest: psi(30.0), atmosphere: sea_level })
}

#[test]
fn ashraes_worked_tank_comes_out() {
    // ASHRAE Handbook, HVAC Systems and Equipment, "Hydronic heating and cooling system design": 290
    // gal for 24.7 and 44.7 psia. Its specific volumes have four digits, which leaves 1 % open.
    let (system, pressures) = ashrae();
    let found = tank(&system, &pressures).expect("a tank");
    near(found.volume.to(Unit::Gallon), 290.0, 0.006);
    near(found.acceptance_factor, 1.0 - 24.7 / 44.7, 1e-12);
    assert_eq!(found.usual, None);
    assert_eq!(found.pre_charge, psi(10.0));
}

#[test]
fn a_houses_tank_is_that_of_the_steam_tables() {
    // By hand, with 999.70 kg/m3 at 50 °F and 970.39 at 180 °F (from memory of the tables, 971.79 at 80
    // and 968.61 at 85 °C): 30 gal of water in copper grow by 30 (0.030204 - 0.003705) gal, and between
    // 26.70 and 41.70 psia that takes 2.210 gal.
    let (system, _) = ashrae();
    let (volume, cold, hot) = (gallons(30.0), fahrenheit(50.0), fahrenheit(180.0));
    let system = System { volume, cold, hot, metal: Metal::Copper, ..system };
    let highest = highest(USUAL_RELIEF, Pressure::ZERO);
    near(highest.to(Unit::Psi), 27.0, 1e-7);
    let found = tank(&system, &Pressures { fill: psi(12.0), highest, atmosphere: SEA_LEVEL });
    let found = found.expect("a tank");
    near(found.acceptance.to(Unit::Gallon), 0.7950, 0.002);
    near(found.volume.to(Unit::Gallon), 2.210, 0.002);
    assert_eq!(found.usual, Some(gallons(4.4)));
    // The tank bought comes to less than the highest pressure: p V of the gas stays.
    let bought = gallons(4.4);
    let hot = hot_pressure(bought, found.acceptance, psi(12.0), SEA_LEVEL).expect("it holds that");
    let gas = (bought - found.acceptance) / bought;
    near((hot + SEA_LEVEL).si() * gas, (psi(12.0) + SEA_LEVEL).si(), 1e-12);
    assert!(hot < highest);
    assert_eq!(hot_pressure(found.acceptance, found.acceptance, psi(12.0), SEA_LEVEL), None);
}

#[test]
fn a_valve_above_the_tank_lets_it_come_higher() {
    let above = static_pressure(Fluid::Water, fahrenheit(180.0), feet(10.0));
    near(highest(psi(30.0), above).si(), psi(27.0).si() + above.si(), 1e-12);
}

#[test]
fn a_tank_of_wrong_numbers_is_refused() {
    let (system, pressures) = ashrae();
    let nan = Temperature::from_si(f64::NAN);
    let of = |system: System| tank(&system, &pressures).err();
    for volume in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let volume = Volume::from_si(volume);
        assert_eq!(of(System { volume, ..system }), Some(TankError::Volume));
    }
    assert_eq!(of(System { cold: fahrenheit(31.0), ..system }), Some(TankError::Cold));
    assert_eq!(of(System { cold: nan, ..system }), Some(TankError::Cold));
    assert_eq!(of(System { cold: Temperature::from_si(273.15), ..system }), None);
    assert_eq!(of(System { hot: *Fluid::Water.range().end(), ..system }), None);
    assert_eq!(of(System { hot: fahrenheit(222.0), ..system }), Some(TankError::Hot));
    assert_eq!(of(System { hot: nan, ..system }), Some(TankError::Hot));
    let glycol = Fluid::PropyleneGlycol { share: 0.3 };
    assert_eq!(of(System { fluid: glycol, ..system }), Some(TankError::Hot));
    assert_eq!(of(System { hot: fahrenheit(40.0), ..system }), Some(TankError::NotWarmer));
    let at = |fill: f64, highest: f64, atmosphere: f64| {
        let pressures =
            Pressures { fill: psi(fill), highest: psi(highest), atmosphere: psi(atmosphere) };
        tank(&system, &pressures).err()
    };
    assert_eq!(at(-0.1, 30.0, 14.7), Some(TankError::Fill));
    assert_eq!(at(f64::NAN, 30.0, 14.7), Some(TankError::Fill));
    assert_eq!(at(0.0, 30.0, 14.7), None);
    for atmosphere in [0.0, f64::NAN, f64::INFINITY] {
        assert_eq!(at(10.0, 30.0, atmosphere), Some(TankError::Fill));
    }
    for highest in [10.0, 9.0, f64::NAN, f64::INFINITY] {
        assert_eq!(at(10.0, highest, 14.7), Some(TankError::NotAboveFill));
    }
}

#[test]
fn the_metal_takes_what_the_handbook_says() {
    // 9.5e-6 and 6.5e-6 a °F: in the ASHRAE chapter as quoted.
    for (metal, alpha) in [(Metal::Copper, 9.5e-6), (Metal::Steel, 6.5e-6)] {
        let system = System { metal, ..ashrae().0 };
        let liquid = Fluid::Water.density(system.cold) / Fluid::Water.density(system.hot) - 1.0;
        let found = liquid - growth(&system).expect("sound") / system.volume;
        near(found, 3.0 * alpha * 180.0, 1e-9);
    }
}

#[test]
fn the_usual_tank_is_the_next_larger() {
    let (system, pressures) = ashrae();
    let mut before = Volume::ZERO;
    for size in USUAL_GAL.map(gallons) {
        assert!(size > before);
        // A system that needs a little less than this size, and one that needs a little more.
        let of = |needed: Volume| {
            let whole = tank(&system, &pressures).expect("a tank").volume;
            let volume = system.volume * (needed / whole);
            tank(&System { volume, ..system }, &pressures).expect("a tank").usual
        };
        assert_eq!(of(size * 0.999), Some(size));
        assert!(of(size * 1.001).is_none_or(|next| next > size));
        before = size;
    }
}

#[test]
fn near_its_greatest_density_water_needs_no_tank() {
    let (system, pressures) = ashrae();
    let system = System { hot: fahrenheit(42.0), ..system };
    assert_eq!(growth(&system), Ok(Volume::ZERO));
    assert_eq!(tank(&system, &pressures).map(|tank| tank.usual), Ok(Some(gallons(2.0))));
}

proptest! {
    #[test]
    fn a_tank_grows_with_what_fills_it(
        volume in 5.0..500.0, hot in 120.0..210.0, fill in 5.0..20.0, above in 5.0..30.0,
        share in 0.0..0.45,
    ) {
        let fluid = Fluid::PropyleneGlycol { share };
        let system = System {
            fluid,
            volume: gallons(volume),
            cold: fahrenheit(50.0),
            hot: fahrenheit(hot),
            metal: Metal::Copper,
        };
        let at = Pressures { fill: psi(fill), highest: psi(fill + above), atmosphere: SEA_LEVEL };
        let of = |system: System, at: Pressures| tank(&system, &at).expect("a tank").volume;
        let found = tank(&system, &at).expect("a tank");
        let least = found.volume;
        let thicker = Fluid::PropyleneGlycol { share: share + 0.05 };
        let larger = [
            of(System { hot: fahrenheit(hot + 1.0), ..system }, at),
            of(System { metal: Metal::Steel, ..system }, at),
            of(System { fluid: thicker, ..system }, at),
            of(system, Pressures { fill: psi(fill + 1.0), ..at }),
        ];
        let smaller = [
            of(system, Pressures { highest: psi(fill + above + 1.0), ..at }),
            of(system, Pressures { atmosphere: psi(12.0), ..at }),
        ];
        for (index, volume) in larger.into_iter().enumerate() {
            prop_assert!(volume > least, "{index}");
        }
        for (index, volume) in smaller.into_iter().enumerate() {
            prop_assert!(volume < least, "{index}");
        }
        let twice = of(System { volume: gallons(2.0 * volume), ..system }, at);
        prop_assert!((twice / least - 2.0).abs() < 1e-9);
        let hot = hot_pressure(least, found.acceptance, at.fill, SEA_LEVEL).expect("it holds that");
        prop_assert!((hot / at.highest - 1.0).abs() < 1e-9);
    }
}

// Filling, relief, boiling.

#[test]
fn the_usual_fill_suits_a_house_of_two_storeys() {
    // 12 psi, as boilers come set, is for the highest element some 18 ft up (from memory).
    let at = |height, at_top| fill_pressure(Fluid::Water, fahrenheit(60.0), feet(height), at_top);
    near(at(18.0, LEAST_AT_TOP).to(Unit::Psi), 12.0, 0.02);
    near(at(18.0, USUAL_AT_TOP).to(Unit::Psi), 18.0 / 2.31 + 5.0, 1e-3);
    assert_eq!(at(-3.0, USUAL_AT_TOP), USUAL_AT_TOP);
    near(LEAST_AT_TOP.to(Unit::Psi), 4.0, 1e-6);
    near(USUAL_AT_TOP.to(Unit::Psi), 5.0, 1e-6);
    near(USUAL_RELIEF.to(Unit::Psi), 30.0, 1e-6);
}

#[test]
fn the_relief_valve_is_clear_near_or_open() {
    let verdict = |at: f64| relief_margin(psi(30.0), psi(at)).verdict;
    assert_eq!(verdict(26.9), ReliefVerdict::Clear);
    assert_eq!(
        relief_margin(psi(30.0), highest(psi(30.0), Pressure::ZERO)).verdict,
        ReliefVerdict::Clear
    );
    assert_eq!(verdict(27.1), ReliefVerdict::Near);
    assert_eq!(verdict(29.9), ReliefVerdict::Near);
    for at in [30.0, 31.0, f64::NAN] {
        assert_eq!(verdict(at), ReliefVerdict::Lifts);
    }
    near(relief_margin(psi(30.0), psi(12.0)).margin.to(Unit::Psi), 18.0, 1e-12);
}

fn two_storeys() -> Top {
    Top {
        fluid: Fluid::Water,
        supply: fahrenheit(180.0),
        height: feet(18.0),
        at_tank: psi(12.0),
        pump: Pressure::ZERO,
        atmosphere: SEA_LEVEL,
    }
}

#[test]
fn water_at_the_top_boils_where_the_steam_tables_say() {
    // By hand: 60.58 lb/ft3 at 180 °F leave 12 - 7.57 + 14.70 = 19.12 psia; steam at 19 and 20 psia is
    // at 225.2 and 228.0 °F (from memory).
    let found = boiling(&two_storeys());
    near(found.lowest.to(Unit::Psi), 19.12, 1e-3);
    near(found.vapour.to(Unit::Psi), 7.515, 2e-3);
    assert!((found.boils_at.to(Unit::Fahrenheit) - 225.6).abs() < 0.3);
    assert!((found.margin.to(Unit::FahrenheitDegree) - 45.6).abs() < 0.3);
    assert_eq!(found.verdict, BoilingVerdict::Clear);
}

#[test]
fn a_low_fill_a_pump_or_hot_water_bring_it_to_boil() {
    let verdict = |top: Top| boiling(&top).verdict;
    let top = two_storeys();
    assert_eq!(verdict(Top { supply: fahrenheit(218.0), ..top }), BoilingVerdict::Near);
    assert_eq!(verdict(Top { supply: fahrenheit(228.0), ..top }), BoilingVerdict::Boils);
    assert_eq!(verdict(Top { pump: psi(6.0), ..top }), BoilingVerdict::DrawsAir);
    assert_eq!(verdict(Top { pump: psi(13.0), ..top }), BoilingVerdict::Boils);
    assert_eq!(verdict(Top { height: feet(60.0), ..top }), BoilingVerdict::Boils);
    assert_eq!(verdict(Top { at_tank: Pressure::from_si(f64::NAN), ..top }), BoilingVerdict::Boils);
    // Open to the air, water boils at 212 °F, and at 5000 ft at 202.9 (from memory, 203).
    let open = Top { height: Length::ZERO, at_tank: Pressure::ZERO, ..top };
    assert!((boiling(&open).boils_at.to(Unit::Fahrenheit) - 211.95).abs() < 0.01);
    assert_eq!(verdict(open), BoilingVerdict::Clear);
    // 10 °F below the boiling point is as near as it should come.
    let boils_at = boiling(&open).boils_at;
    let below = |degrees: f64| {
        let supply = boils_at - TemperatureDifference::of(degrees, Unit::FahrenheitDegree);
        Top { supply, ..open }
    };
    assert_eq!(verdict(below(10.1)), BoilingVerdict::Clear);
    assert_eq!(verdict(below(9.9)), BoilingVerdict::Near);
    assert_eq!(verdict(below(0.0)), BoilingVerdict::Boils);
    let under = Top { at_tank: psi(-1.0), ..open };
    let supply = boiling(&under).boils_at;
    assert_eq!(verdict(Top { supply, ..under }), BoilingVerdict::Boils);
    let high = boiling(&Top { atmosphere: atmosphere(feet(5000.0)), ..open });
    assert!((high.boils_at.to(Unit::Fahrenheit) - 202.9).abs() < 0.2);
}
