//! Glycol and boiling against the outside. The properties of water and glycol themselves are compared
//! with `tests/reference` by `published`.

use finrun_engine::fluid::{
    ChargeError, Fluid, MOST, boiling_point, charge, share_for, vapour_pressure,
};
use finrun_engine::quantity::{Pressure, Temperature, Unit, Volume};
use proptest::prelude::*;

fn celsius(value: f64) -> Temperature {
    Temperature::of(value, Unit::Celsius)
}

fn glycol(share: f64) -> Fluid {
    Fluid::PropyleneGlycol { share }
}

/// Percent of glycol by volume, freezing point in °C, specific gravity at 60 °F: Lange's Handbook of
/// Chemistry, 15th edition, table 5.13, as read in a copy. Its rows below 20 % do not go evenly on to
/// these (1.004, 1.006, 1.012), differ from [`BY_MASS`] by over 1 K, and are left out.
const HANDBOOK: [(f64, f64, f64); 7] = [
    (20.0, -6.7, 1.017),
    (25.0, -8.9, 1.020),
    (30.0, -12.8, 1.024),
    (35.0, -16.1, 1.028),
    (40.0, -20.6, 1.032),
    (45.0, -26.7, 1.037),
    (50.0, -33.3, 1.040),
];

/// Percent of glycol by mass and freezing point in °F: ASHRAE Handbook of Fundamentals, physical
/// properties of secondary coolants, from memory.
const BY_MASS: [(f64, f64); 10] = [
    (5.0, 29.1),
    (10.0, 26.1),
    (15.0, 22.9),
    (20.0, 19.2),
    (25.0, 14.7),
    (30.0, 9.2),
    (35.0, 2.4),
    (40.0, -6.0),
    (45.0, -16.1),
    (50.0, -28.3),
];

#[test]
fn another_tables_freezing_points_are_met() {
    for (percent, fahrenheit) in BY_MASS {
        let found = glycol(percent / 100.0).freezing_point();
        let apart = (found - Temperature::of(fahrenheit, Unit::Fahrenheit)).si();
        assert!(apart.abs() < if percent < 45.0 { 0.9 } else { 1.6 }, "{percent}: {apart} K");
    }
}

#[test]
fn the_handbooks_freezing_points_take_the_handbooks_glycol() {
    let system = Volume::of(100.0, Unit::Litre);
    for (percent, freezing, _) in HANDBOOK.into_iter().take(6) {
        let found = charge(system, celsius(freezing)).expect("less than half");
        let litres = found.glycol.to(Unit::Litre);
        assert!((litres - percent).abs() < 2.0, "{percent} % against {litres}");
        // What the parts weigh is what the mixture weighs.
        let parts_kg = found.glycol.si() * 1036.0 + found.water.si() * 998.2;
        let whole_kg = system.si() * glycol(found.share).density(celsius(20.0)).si();
        assert!((parts_kg / whole_kg - 1.0).abs() < 1e-4);
        let room = (found.glycol + found.water) / system;
        assert!((1.0..1.025).contains(&room), "{room}");
    }
}

#[test]
fn the_handbooks_specific_gravities_are_met() {
    let water = Fluid::Water.density(Temperature::of(60.0, Unit::Fahrenheit));
    for (percent, _, gravity) in HANDBOOK {
        // Pure glycol has 1.038 (from memory), so this is the share by mass.
        let share = percent / 100.0 * 1.038 / gravity;
        let found = glycol(share).density(Temperature::of(60.0, Unit::Fahrenheit)) / water;
        assert!((found - gravity).abs() < 0.004, "{percent}: {found} against {gravity}");
    }
}

#[test]
fn glycol_for_no_frost_is_none_and_for_too_much_is_refused() {
    let system = Volume::of(20.0, Unit::Gallon);
    let none = charge(system, celsius(2.0)).expect("water");
    assert_eq!((none.share, none.glycol), (0.0, Volume::ZERO));
    assert!((none.water / system - 1.0).abs() < 1e-12);
    assert_eq!(charge(system, celsius(-34.0)), Err(ChargeError::TooCold));
    assert_eq!(charge(system, Temperature::from_si(f64::NAN)), Err(ChargeError::TooCold));
    for volume in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let found = charge(Volume::from_si(volume), celsius(-10.0));
        assert_eq!(found, Err(ChargeError::Volume));
    }
}

/// The errors that the engine's comments state, with the last digit's rounding.
#[test]
fn glycol_is_as_near_to_its_data_as_is_said() {
    let text = include_str!("../reference/a2_propylene_glycol_properties.csv");
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let names = rows.headers().expect("names").clone();
    let mut count = 0;
    for row in rows.records() {
        let row = row.expect("a row");
        let of = |name: &str| -> f64 {
            let column = names.iter().position(|other| other == name).expect(name);
            row[column].parse().expect("a number")
        };
        let (fluid, t) = (glycol(of("mass_frac")), celsius(of("T_C")));
        for (name, found, most) in [
            ("rho_MPG", fluid.density(t).si(), 0.0010),
            ("cp_MPG", fluid.specific_heat(t).si(), 0.0021),
            ("mu_MPG", fluid.viscosity(t).si(), 0.021),
            ("k_MPG", fluid.conductivity(t).si(), 0.0052),
        ] {
            let error = found / of(name) - 1.0;
            assert!(error.abs() < most, "{name} {fluid:?} {t:?}: {error}");
        }
        let freezing = fluid.freezing_point().to(Unit::Celsius) - of("T_freeze_MPG_C");
        assert!(freezing.abs() < 0.22, "{fluid:?}: {freezing} K");
        count += 1;
    }
    assert_eq!(count, 44);
}

#[test]
fn no_glycol_is_water() {
    for tenths in 50..=1000 {
        let t = celsius(f64::from(tenths) / 10.0);
        assert_eq!(glycol(0.0).density(t), Fluid::Water.density(t));
        assert_eq!(glycol(0.0).specific_heat(t), Fluid::Water.specific_heat(t));
        assert_eq!(glycol(0.0).viscosity(t), Fluid::Water.viscosity(t));
        assert_eq!(glycol(0.0).conductivity(t), Fluid::Water.conductivity(t));
    }
    assert_eq!(glycol(0.0).freezing_point(), celsius(0.0));
}

#[test]
fn outside_its_ranges_glycol_is_that_at_the_nearer_end() {
    let t = celsius(40.0);
    assert_eq!(glycol(0.7).viscosity(t), glycol(MOST).viscosity(t));
    assert_eq!(glycol(-0.1).viscosity(t), Fluid::Water.viscosity(t));
    assert_eq!(glycol(0.3).density(celsius(-20.0)), glycol(0.3).density(celsius(0.0)));
    assert_eq!(glycol(0.3).density(celsius(104.0)), glycol(0.3).density(celsius(100.0)));
    assert!(glycol(0.3).density(celsius(104.0)) < glycol(0.3).density(celsius(99.0)));
    assert!(glycol(f64::NAN).density(t).si().is_nan());
    assert!(glycol(f64::NAN).freezing_point().si().is_nan());
    assert!(glycol(0.3).viscosity(Temperature::from_si(f64::NAN)).si().is_nan());
}

#[test]
fn stored_names_of_fluids_do_not_change() {
    for (fluid, text) in
        [(Fluid::Water, "\"water\""), (glycol(0.25), "{\"propylene-glycol\":{\"share\":0.25}}")]
    {
        assert_eq!(serde_json::to_string(&fluid).expect("text"), text);
        assert_eq!(serde_json::from_str::<Fluid>(text).expect("a fluid"), fluid);
    }
}

#[test]
fn the_saturation_line_gives_the_check_values_of_its_release() {
    // IAPWS-IF97, tables 35 and 36, from memory.
    for (kelvin, megapascal) in
        [(300.0, 0.353658941e-2), (500.0, 0.263889776e1), (600.0, 0.123443146e2)]
    {
        let found = vapour_pressure(Temperature::from_si(kelvin)).si() / 1e6;
        assert!((found / megapascal - 1.0).abs() < 2e-9, "{kelvin} K: {found}");
    }
    for (megapascal, kelvin) in [(0.1, 0.372755919e3), (1.0, 0.453035632e3), (10.0, 0.584149488e3)]
    {
        let found = boiling_point(Pressure::from_si(megapascal * 1e6)).si();
        assert!((found / kelvin - 1.0).abs() < 2e-9, "{megapascal} MPa: {found}");
    }
}

#[test]
fn the_steam_tables_of_the_trade_are_met() {
    // psia, from memory of older tables.
    for (fahrenheit, psia) in [(180.0, 7.511), (200.0, 11.526), (212.0, 14.696), (220.0, 17.186)] {
        let found = vapour_pressure(Temperature::of(fahrenheit, Unit::Fahrenheit)).to(Unit::Psi);
        assert!((found / psia - 1.0).abs() < 0.002, "{fahrenheit} °F: {found} against {psia}");
    }
}

#[test]
fn outside_the_saturation_line_holds_its_ends() {
    assert_eq!(boiling_point(Pressure::ZERO), boiling_point(Pressure::from_si(611.213)));
    assert_eq!(boiling_point(Pressure::from_si(-5.0)), boiling_point(Pressure::ZERO));
    assert!((boiling_point(Pressure::ZERO).si() - 273.15).abs() < 1e-4);
    assert!((vapour_pressure(celsius(-5.0)).si() - 611.213).abs() < 0.001);
    assert!((vapour_pressure(celsius(900.0)).si() / 22.064e6 - 1.0).abs() < 1e-4);
    assert!((boiling_point(Pressure::from_si(1e9)).si() - 647.096).abs() < 0.01);
    assert!(boiling_point(Pressure::from_si(f64::NAN)).si().is_nan());
    assert!(vapour_pressure(Temperature::from_si(f64::NAN)).si().is_nan());
}

proptest! {
    #[test]
    fn boiling_and_vapour_pressure_undo_each_other(kelvin in 273.2..640.0) {
        let back = boiling_point(vapour_pressure(Temperature::from_si(kelvin))).si();
        prop_assert!((back - kelvin).abs() < 1e-7, "{kelvin} {back}");
    }

    #[test]
    fn more_glycol_is_heavier_thicker_and_holds_and_carries_less_heat(
        share in 0.0..0.49, more in 0.001..0.01, degrees in 0.0..100.0,
    ) {
        let (thin, thick, t) = (glycol(share), glycol(share + more), celsius(degrees));
        prop_assert!(thick.density(t) > thin.density(t));
        prop_assert!(thick.viscosity(t) > thin.viscosity(t));
        prop_assert!(thick.specific_heat(t) < thin.specific_heat(t));
        prop_assert!(thick.conductivity(t) < thin.conductivity(t));
        prop_assert!(thick.freezing_point() < thin.freezing_point());
    }

    #[test]
    fn warmer_glycol_is_thinner_and_lighter(
        share in 0.1..0.5, degrees in 0.0..99.0, more in 0.01..1.0,
    ) {
        let (fluid, cold, warm) = (glycol(share), celsius(degrees), celsius(degrees + more));
        prop_assert!(fluid.viscosity(warm) < fluid.viscosity(cold));
        prop_assert!(fluid.density(warm) < fluid.density(cold));
    }

    #[test]
    fn the_share_for_a_freezing_point_freezes_there(share in 0.0..0.5) {
        let found = share_for(glycol(share).freezing_point()).expect("covered");
        prop_assert!((found - share).abs() < 1e-8);
    }
}
