//! The heating plant against worked examples and the trade's tables.

mod job;
mod reset;
mod tank;

use finrun_engine::fluid::Fluid;
use finrun_engine::pipe::{Material, Tube};
use finrun_engine::plant::boiler::{
    self, Cycle, CycleVerdict, Duty, IndirectTank, LEAST_ON_S, PartLoad, PartLoadError, Running,
    Size, needed_output, part_load, volume_for,
};
use finrun_engine::plant::contents::{Contents, system_volume, tube_volume};
use finrun_engine::plant::electric::{
    Coils, Draw, RELAY, Transformers, ZONE_VALVE_WITH_HEATED_ELEMENT, ZONE_VALVE_WITH_MOTOR,
    transformers,
};
use finrun_engine::plant::movement::movement;
use finrun_engine::plant::return_protection::{
    self, Advice, Boiler, GAS_DEW_POINT, LEAST_RETURN, Mixing, Supply, Verdict, mixing,
};
use finrun_engine::quantity::{Length, Power, Temperature, TemperatureDifference, Unit, Volume};
use proptest::prelude::*;

pub(crate) fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

pub(crate) fn feet(value: f64) -> Length {
    Length::of(value, Unit::Foot)
}

pub(crate) fn gallons(value: f64) -> Volume {
    Volume::of(value, Unit::Gallon)
}

pub(crate) fn btu_per_hour(value: f64) -> Power {
    Power::of(value, Unit::BtuPerHour)
}

/// Within a share of what is expected.
pub(crate) fn near(found: f64, expected: f64, share: f64) {
    assert!((found / expected - 1.0).abs() <= share, "{found} against {expected}");
}

// Boiler.

#[test]
fn a_boiler_gives_loads_pipes_and_tank_and_no_more() {
    let duty =
        |tank| Duty { loads: btu_per_hour(40_000.0), pipe_loss: btu_per_hour(2_000.0), tank };
    let needed = |tank| needed_output(&duty(tank)).to(Unit::BtuPerHour);
    near(needed(IndirectTank::None), 42_000.0, 1e-12);
    near(needed(IndirectTank::AtOnce(btu_per_hour(30_000.0))), 72_000.0, 1e-12);
    near(needed(IndirectTank::Priority(btu_per_hour(30_000.0))), 42_000.0, 1e-12);
    near(needed(IndirectTank::Priority(btu_per_hour(90_000.0))), 90_000.0, 1e-12);
}

#[test]
fn a_boiler_is_short_fits_or_is_oversized() {
    let judge = |output: f64| boiler::judge(btu_per_hour(output), btu_per_hour(50_000.0));
    let size = |output: f64| judge(output).expect("sound outputs").verdict;
    assert_eq!(size(49_999.0), Size::Short);
    assert_eq!(size(50_000.0), Size::Fits);
    assert_eq!(size(69_900.0), Size::Fits);
    assert_eq!(size(70_100.0), Size::Oversized);
    let just = boiler::judge(Power::from_si(7.0), Power::from_si(5.0));
    assert_eq!(just.map(|judged| judged.verdict), Some(Size::Fits));
    near(judge(60_000.0).expect("sound outputs").ratio, 1.2, 1e-12);
    for output in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(judge(output), None);
        assert_eq!(boiler::judge(btu_per_hour(50_000.0), Power::from_si(output)), None);
    }
}

fn small_zone() -> PartLoad {
    PartLoad {
        least_output: btu_per_hour(68_000.0),
        load: btu_per_hour(5_000.0),
        volume: gallons(63.0),
        fluid: Fluid::Water,
        differential: TemperatureDifference::of(20.0, Unit::FahrenheitDegree),
        water: fahrenheit(60.0),
    }
}

fn cycle(plant: &PartLoad) -> Cycle {
    match part_load(plant) {
        Ok(Running::Cycling(cycle)) => cycle,
        other => panic!("{other:?}"),
    }
}

#[test]
fn ten_minutes_take_the_trades_buffer_volume() {
    // The trade's V = t (P - Q)/(500 dT), whose 500 is for water at 60 °F: 10 min of 63,000 Btu/h over
    // 20 °F take 63 gal.
    let plant = small_zone();
    near(volume_for(&plant, LEAST_ON_S).expect("sound").to(Unit::Gallon), 63.0, 2e-3);
    near(cycle(&plant).on_s, 600.0, 2e-3);
    // Off for as long as 5,000 Btu/h take what 63,000 brought.
    near(cycle(&plant).off_s, 600.0 * 63.0 / 5.0, 2e-3);
    near(cycle(&plant).per_hour, 3600.0 / 8160.0, 2e-3);
    // Hot water holds 2 % less a gallon.
    let hot = PartLoad { water: fahrenheit(170.0), ..plant };
    near(cycle(&hot).on_s / cycle(&plant).on_s, 0.976, 3e-3);
}

#[test]
fn short_runs_are_told_and_a_taken_burner_runs_throughout() {
    let plant = small_zone();
    let verdict = |volume: f64| cycle(&PartLoad { volume: gallons(volume), ..plant }).verdict;
    assert_eq!(verdict(62.0), CycleVerdict::Short);
    assert_eq!(verdict(64.0), CycleVerdict::Long);
    for load in [68_000.0, 80_000.0] {
        let taken = PartLoad { load: btu_per_hour(load), ..plant };
        assert_eq!(part_load(&taken), Ok(Running::Throughout));
        assert_eq!(volume_for(&taken, LEAST_ON_S), Ok(Volume::ZERO));
    }
}

#[test]
fn a_part_load_of_wrong_numbers_is_refused() {
    let plant = small_zone();
    for value in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let (power, volume) = (Power::from_si(value), Volume::from_si(value));
        let differential = TemperatureDifference::from_si(value);
        for (plant, error) in [
            (PartLoad { least_output: power, ..plant }, PartLoadError::Output),
            (PartLoad { load: power, ..plant }, PartLoadError::Load),
            (PartLoad { volume, ..plant }, PartLoadError::Store),
            (PartLoad { differential, ..plant }, PartLoadError::Store),
        ] {
            assert_eq!(part_load(&plant), Err(error), "{value}");
        }
    }
    let both = Volume::from_si(-1.0);
    let differential = TemperatureDifference::from_si(-1.0);
    let plant = PartLoad { volume: both, differential, ..plant };
    assert_eq!(part_load(&plant), Err(PartLoadError::Store));
}

proptest! {
    #[test]
    fn what_the_burner_brings_the_load_takes(
        least in 5_000.0..100_000.0, share in 0.01..0.99, volume in 1.0..100.0,
    ) {
        let least_output = btu_per_hour(least);
        let at = |share: f64| {
            let load = least_output * share;
            cycle(&PartLoad { least_output, load, volume: gallons(volume), ..small_zone() })
        };
        let found = at(share);
        let load = least_output * share;
        // A whole cycle brings and takes the same heat.
        let brought = least_output.si() * found.on_s;
        prop_assert!((brought / (load.si() * (found.on_s + found.off_s)) - 1.0).abs() < 1e-9);
        // It starts most often at half of its output.
        prop_assert!(found.per_hour <= at(0.5).per_hour * (1.0 + 1e-12));
        let back = volume_for(
            &PartLoad { least_output, load, volume: gallons(1.0), ..small_zone() },
            found.on_s,
        );
        prop_assert!((back.expect("sound").to(Unit::Gallon) / volume - 1.0).abs() < 1e-9);
    }
}

// Contents and movement.

#[test]
fn tubes_hold_what_the_trades_tables_say() {
    // US gallons a foot, from memory, to four places.
    let tables = [
        (Tube::CopperLHalf, 0.0121),
        (Tube::CopperLThreeQuarter, 0.0251),
        (Tube::CopperLOne, 0.0429),
        (Tube::CopperLOneAndQuarter, 0.0655),
        (Tube::CopperMHalf, 0.0132),
        (Tube::CopperMThreeQuarter, 0.0269),
        (Tube::CopperMOne, 0.0454),
        (Tube::CopperMOneAndQuarter, 0.0682),
        (Tube::PexHalf, 0.0092),
        (Tube::PexThreeQuarter, 0.0184),
        (Tube::PexOne, 0.0303),
    ];
    for (tube, expected) in tables {
        near(tube_volume(tube, feet(1.0)).to(Unit::Gallon), expected, 0.005);
    }
}

#[test]
fn a_system_holds_its_parts() {
    let contents = Contents {
        tubes: &[(Tube::CopperMThreeQuarter, feet(100.0)), (Tube::PexHalf, feet(50.0))],
        elements: &[(Tube::CopperMThreeQuarter, feet(60.0))],
        boiler: gallons(3.0),
        tank: gallons(1.5),
    };
    let expected = 0.02683 * 160.0 + 0.00921 * 50.0 + 4.5;
    near(system_volume(&contents).to(Unit::Gallon), expected, 5e-4);
}

#[test]
fn copper_grows_by_the_handbooks_inches() {
    // CDA Copper Tube Handbook: 1.128 in for 100 ft and 100 °F.
    let rise = TemperatureDifference::of(100.0, Unit::FahrenheitDegree);
    for material in [Material::CopperL, Material::CopperM] {
        let found = movement(material, feet(100.0), rise);
        near(found.whole.to(Unit::Inch), 1.128, 5e-4);
        near(found.each_end.to(Unit::Inch), 0.564, 5e-4);
    }
    // PEX: 1.1 in for 100 ft and 10 °F, from memory.
    let rise = TemperatureDifference::of(10.0, Unit::FahrenheitDegree);
    near(movement(Material::Pex, feet(100.0), rise).whole.to(Unit::Inch), 1.1, 1e-3);
}

// Return.

#[test]
fn the_return_is_warmed_by_the_share_that_mixing_gives() {
    // By hand: five parts at 120 °F and one at 180 are six at 130.
    let (supply, back) = (fahrenheit(180.0), fahrenheit(120.0));
    let found = mixing(supply, back, fahrenheit(130.0)).expect("between them");
    near(found.supply_share, 1.0 / 6.0, 1e-9);
    near(found.boiler_flow, 1.2, 1e-9);
    assert_eq!(mixing(supply, back, supply), None);
    assert_eq!(mixing(supply, back, fahrenheit(119.0)), None);
    let none = Mixing { supply_share: 0.0, boiler_flow: 1.0 };
    assert_eq!(mixing(supply, back, back), Some(none));
    near(LEAST_RETURN.to(Unit::Fahrenheit), 130.0, 1e-5);
    near(GAS_DEW_POINT.to(Unit::Celsius), 57.0, 1e-9);
}

#[test]
fn the_return_is_judged_by_the_boiler_it_comes_to() {
    let gas = Boiler::NonCondensing { least: fahrenheit(130.0) };
    let judge = |boiler, supply: f64, back: f64, over| {
        return_protection::judge(boiler, fahrenheit(supply), fahrenheit(back), over)
    };
    let advice = |supply, back, over| match judge(gas, supply, back, over) {
        Some(Verdict::Cold { below, advice }) => {
            near(below.to(Unit::FahrenheitDegree), 130.0 - back, 1e-9);
            advice
        }
        other => panic!("{other:?}"),
    };
    assert!(matches!(advice(180.0, 120.0, Supply::Constant), Advice::Bypass(_)));
    assert!(matches!(advice(180.0, 120.0, Supply::Varying), Advice::MixingValve(_)));
    assert!(matches!(advice(140.0, 110.0, Supply::Constant), Advice::MixingValve(_)));
    // A bypass for up to half of the boiler's flow.
    assert!(matches!(advice(150.5, 110.0, Supply::Constant), Advice::Bypass(_)));
    assert!(matches!(advice(149.5, 110.0, Supply::Constant), Advice::MixingValve(_)));
    assert_eq!(advice(130.0, 110.0, Supply::Constant), Advice::HotterBoiler);
    assert_eq!(advice(120.0, 110.0, Supply::Varying), Advice::HotterBoiler);
    for (back, margin) in [(130.0, 0.0), (160.0, 30.0)] {
        match judge(gas, 180.0, back, Supply::Varying) {
            Some(Verdict::Protected { margin: found }) => {
                assert!((found.to(Unit::FahrenheitDegree) - margin).abs() < 1e-9);
            }
            other => panic!("{other:?}"),
        }
    }
    let none = judge(gas, 140.0, 140.0, Supply::Constant);
    assert!(matches!(none, Some(Verdict::Protected { .. })));
    let condensing = Boiler::Condensing { dew_point: fahrenheit(135.0) };
    assert!(matches!(
        judge(condensing, 150.0, 120.0, Supply::Varying),
        Some(Verdict::Condenses { below }) if (below.si() - 15.0 / 1.8).abs() < 1e-9
    ));
    assert!(matches!(
        judge(condensing, 180.0, 160.0, Supply::Varying),
        Some(Verdict::DoesNotCondense { above }) if (above.si() - 25.0 / 1.8).abs() < 1e-9
    ));
    assert!(matches!(
        judge(condensing, 150.0, 135.0, Supply::Varying),
        Some(Verdict::DoesNotCondense { .. })
    ));
    for (supply, back) in
        [(120.0, 121.0), (f64::NAN, 120.0), (180.0, f64::NAN), (f64::INFINITY, 1.0)]
    {
        assert_eq!(judge(gas, supply, back, Supply::Constant), None);
    }
}

// Electric.

fn feeding(count: u32, each: Draw) -> Option<(f64, f64, u32)> {
    transformers(&[Coils { count, each }])
        .map(|Transformers { load_va, each_va, count }| (load_va, each_va, count))
}

#[test]
fn coils_are_summed_and_get_the_next_transformer() {
    let coils = [
        Coils { count: 3, each: ZONE_VALVE_WITH_MOTOR },
        Coils { count: 1, each: RELAY },
        Coils { count: 2, each: Draw::VoltAmperes(3.5) },
    ];
    let found = transformers(&coils).expect("sound");
    near(found.load_va, 3.0 * 0.32 * 24.0 + 5.0 + 7.0, 1e-12);
    assert_eq!((found.each_va, found.count), (40.0, 1));
    assert_eq!(feeding(4, Draw::VoltAmperes(5.0)), Some((20.0, 20.0, 1)));
    assert_eq!(feeding(4, Draw::VoltAmperes(5.01)).map(|found| found.1), Some(40.0));
    // Four older valves of 0.9 A fill the largest, a fifth takes a second transformer.
    assert_eq!(feeding(4, ZONE_VALVE_WITH_HEATED_ELEMENT).map(|f| (f.1, f.2)), Some((100.0, 1)));
    assert_eq!(feeding(5, ZONE_VALVE_WITH_HEATED_ELEMENT).map(|f| (f.1, f.2)), Some((100.0, 2)));
    assert_eq!(feeding(10, Draw::VoltAmperes(20.0)).map(|f| (f.1, f.2)), Some((100.0, 2)));
    assert_eq!(feeding(100, Draw::VoltAmperes(100.0)).map(|f| f.2), Some(100));
    assert_eq!(feeding(3, Draw::VoltAmperes(0.0)), Some((0.0, 20.0, 1)));
    assert_eq!(feeding(3, Draw::VoltAmperes(0.25)), Some((0.75, 20.0, 1)));
    assert_eq!(transformers(&[]).map(|found| found.load_va), Some(0.0));
    assert_eq!(feeding(101, Draw::VoltAmperes(100.0)), None);
    for draw in [-1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(feeding(1, Draw::Amperes(draw)), None);
    }
}
