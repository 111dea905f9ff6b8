//! What is said of the boiler room, in every state that its words tell apart.

use super::{Book, in_both};
use finrun_engine::building::ZoneId;
use finrun_engine::fluid::Charge;
use finrun_engine::plant::boiler::{Cycle, CycleVerdict, Judged, Running, Size};
use finrun_engine::plant::design::{Alone, Control, Fed, Filling, Reset, Volumes};
use finrun_engine::plant::electric::Transformers;
use finrun_engine::plant::expansion::{Tank, TankError};
use finrun_engine::plant::fill::{Boiling, BoilingVerdict, Relief, ReliefVerdict};
use finrun_engine::plant::reset::{Point, Setting};
use finrun_engine::plant::return_protection::{Advice, Mixing, Verdict};
use finrun_engine::quantity::{
    Power, Pressure, System, Temperature, TemperatureDifference, Unit, Volume,
};
use finrun_text as text;

fn psi(value: f64) -> Pressure {
    Pressure::of(value, Unit::Psi)
}

fn gallons(value: f64) -> Volume {
    Volume::of(value, Unit::Gallon)
}

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

fn degrees(value: f64) -> TemperatureDifference {
    TemperatureDifference::of(value, Unit::FahrenheitDegree)
}

#[test]
fn words_of_the_boiler_room() {
    let tell = |book: &mut Book| {
        for (index, caution) in text::plant_cautions().into_iter().enumerate() {
            book.add(format!("caution {index}"), caution);
        }
        for error in [
            TankError::Volume,
            TankError::Cold,
            TankError::Hot,
            TankError::NotWarmer,
            TankError::Fill,
            TankError::NotAboveFill,
        ] {
            book.add(format!("{error:?}"), text::no_tank(error));
        }
        for (feeds, coils, count) in [
            (Fed::ZoneValves, 3, 1),
            (Fed::ZoneValves, 9, 2),
            (Fed::Relays, 1, 1),
            (Fed::Relays, 4, 1),
        ] {
            let transformers = Transformers { load_va: 23.04, each_va: 40.0, count };
            let control = Control { coils, feeds, transformers };
            book.add(format!("{feeds:?} {coils}"), text::control_power(&control));
        }
        for system in [System::Us, System::Si] {
            boiler(book, system);
            filling(book, system);
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

fn boiler(book: &mut Book, system: System) {
    for verdict in [Size::Short, Size::Fits, Size::Oversized] {
        let judged = Judged { ratio: 1.25, verdict };
        book.add(format!("{verdict:?} {system:?}"), text::boiler_judged(judged, system));
    }
    let cycle = Cycle { on_s: 80.0, off_s: 1200.0, per_hour: 2.8, verdict: CycleVerdict::Short };
    let alone = |running, buffer| Alone {
        zone: ZoneId(0),
        load: Power::of(5000.0, Unit::BtuPerHour),
        least_output: Power::of(40_000.0, Unit::BtuPerHour),
        volume: gallons(4.0),
        running,
        buffer: gallons(buffer),
    };
    for (name, alone, zone) in [
        ("throughout", alone(Running::Throughout, 0.0), None),
        ("short", alone(Running::Cycling(cycle), 30.0), Some("Upstairs")),
        ("long", alone(Running::Cycling(Cycle { on_s: 900.0, ..cycle }), 0.0), None),
    ] {
        book.add(format!("{name} {system:?}"), text::burner_alone(&alone, zone, system));
    }
    let mixing = Mixing { supply_share: 0.2, boiler_flow: 1.25 };
    let cold = |advice| Verdict::Cold { below: degrees(12.0), advice };
    for (name, verdict) in [
        ("protected", Verdict::Protected { margin: degrees(25.0) }),
        ("bypass", cold(Advice::Bypass(mixing))),
        ("valve", cold(Advice::MixingValve(mixing))),
        ("hotter", cold(Advice::HotterBoiler)),
        ("condenses", Verdict::Condenses { below: degrees(15.0) }),
        ("does not condense", Verdict::DoesNotCondense { above: degrees(25.0) }),
    ] {
        book.add(format!("{name} {system:?}"), text::back_verdict(verdict, system));
    }
    let day = Point { outdoors: fahrenheit(0.0), supply: fahrenheit(170.0) };
    let setting = Setting { slope: 1.36, shift: degrees(10.4), excess: degrees(4.5) };
    for least in [None, Some(fahrenheit(135.0))] {
        let reset = Reset { points: vec![day], setting, least_supply: least };
        let key = format!("reset {} {system:?}", least.is_some());
        book.add(key, text::reset_line(&reset, fahrenheit(180.0), system));
    }
}

fn filling(book: &mut Book, system: System) {
    let volumes = Volumes {
        tubes: gallons(2.0),
        elements: gallons(1.5),
        boiler: gallons(10.0),
        other: gallons(0.0),
        total: gallons(13.5),
    };
    book.add(format!("volumes {system:?}"), text::volume_parts(&volumes, system));
    for usual in [Some(gallons(2.0)), None] {
        let tank = Tank {
            acceptance: gallons(0.4),
            acceptance_factor: 0.43,
            volume: gallons(0.9),
            usual,
            pre_charge: psi(12.0),
        };
        book.add(format!("tank {} {system:?}", usual.is_some()), text::tank_said(&tank, system));
    }
    let relief = Relief { margin: psi(12.0), verdict: ReliefVerdict::Clear };
    for hot in [Some(psi(18.0)), None] {
        let filling = Filling { cold: psi(12.0), at_top: psi(4.5), hot, relief };
        let key = format!("pressures {} {system:?}", hot.is_some());
        book.add(key, text::pressures_said(&filling, system));
    }
    for margin in [47.0, -6.0] {
        let boiling = Boiling {
            lowest: psi(19.8),
            vapour: psi(7.5),
            boils_at: fahrenheit(227.0),
            margin: degrees(margin),
            verdict: BoilingVerdict::Clear,
        };
        let key = format!("boiling {margin} {system:?}");
        book.add(key, text::boiling_margin(&boiling, system));
    }
    let charge = Charge { share: 0.35, glycol: gallons(4.0), water: gallons(7.5) };
    let said = text::glycol_charge(&charge, fahrenheit(1.0), system);
    book.add(format!("glycol {system:?}"), said);
}
