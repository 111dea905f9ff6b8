//! Words of the site: phases, dangers, steps that no shipped house has, findings of the start.

use super::{Book, in_both};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::commission::{AtTop, Beside, By, CircuitFinding, FillingFinding, RoomFinding};
use finrun_engine::install::{Danger, Of, Step, Task};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{
    Power, Pressure, System, Temperature, TemperatureDifference, Unit, VolumeFlow,
};
use finrun_text as text;
use finrun_text::{DecimalMark, Language, speak};

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

fn degrees(value: f64) -> TemperatureDifference {
    TemperatureDifference::of(value, Unit::FahrenheitDegree)
}

fn psi(value: f64) -> Pressure {
    Pressure::of(value, Unit::Psi)
}

fn btu_h(value: f64) -> Power {
    Power::of(value, Unit::BtuPerHour)
}

/// Two rooms, for their names.
fn draft() -> Draft {
    let mut draft = Draft::new("", System::Us);
    draft.add_room("Kitchen");
    draft.add_room("Hall");
    draft
}

/// Each danger names what hurts or what keeps from it, and not that of another.
#[test]
fn each_danger_says_what_hurts() {
    let words = [
        (Danger::Scald, "scalds", "quema"),
        (Danger::Relief, "never shut, plugged", "nunca se cierra, se tapa"),
        (Danger::Fire, "extinguisher", "extintor"),
        (Danger::Gas, "Carbon monoxide", "monóxido de carbono"),
        (Danger::Mains, "tested to be off", "comprobado que"),
        (Danger::OldHouse, "Asbestos and lead", "Asbesto y plomo"),
        (Danger::Freezing, "freezes", "congela"),
        (Danger::Structure, "engineer", "ingeniero"),
        (Danger::DrinkingWater, "backflow preventer", "antirreflujo"),
        (Danger::Pressure, "water only", "solo agua"),
    ];
    for (danger, english, spanish) in words {
        for (language, word) in [(Language::Spanish, spanish), (Language::English, english)] {
            speak(language, DecimalMark::Point);
            let said = text::danger(danger);
            assert!(said.contains(word), "{danger:?}: {said}");
        }
    }
}

#[test]
fn dangers_care_and_rare_steps() {
    let tell = |book: &mut Book| {
        for danger in [
            Danger::Scald,
            Danger::Relief,
            Danger::Fire,
            Danger::Gas,
            Danger::Mains,
            Danger::OldHouse,
            Danger::Freezing,
            Danger::Structure,
            Danger::DrinkingWater,
            Danger::Pressure,
        ] {
            book.add(format!("{danger:?}"), text::danger(danger));
        }
        for (nth, (title, how)) in text::care_items().into_iter().enumerate() {
            book.add(format!("care {nth}"), format!("{title}. {how}"));
        }
        let draft = draft();
        let (room, zone) = (Of::Room(draft.rooms[0].id), Of::Zone(ZoneId(0)));
        let supply = fahrenheit(180.0);
        let short = finrun_engine::quantity::Length::of(0.13, Unit::Inch);
        let each = finrun_engine::quantity::Length::of(10.0, Unit::Foot);
        let glycol = finrun_engine::quantity::Volume::of(3.0, Unit::Gallon);
        let tasks = [
            (room, Task::Doorways { count: 2 }),
            (zone, Task::OxygenBarrier),
            (zone, Task::Transitions { count: 6, supply }),
            (Of::House, Task::PlasticMoves { each, growth: short }),
            (Of::House, Task::PressureTest { test: None, fill: psi(25.0), relief: psi(30.0) }),
            (Of::House, Task::Insulate),
            (Of::House, Task::Glycol { glycol, water: glycol }),
            (Of::House, Task::Fill { pressure: psi(12.0), volume: None }),
            (Of::House, Task::Wire { circulators: 2, zone_valves: 3, control: None }),
            (Of::Circuit(draft.rooms[0].id), Task::Balance { order: 1, cv: Some(1.25) }),
            (Of::Circuit(draft.rooms[1].id), Task::Balance { order: 2, cv: None }),
        ];
        for (of, task) in tasks {
            let step = Step { of, task };
            for system in [System::Us, System::Si] {
                let title = text::step_title(&draft, &step);
                let numbers = text::step_numbers(&draft, &step, system);
                let how = text::step_how(&step, system);
                book.add(
                    format!("{} {system:?}", step.id()),
                    format!("{title}. {numbers} {how}").replace("  ", " "),
                );
            }
        }
        book.add("photo", text::photo_number("17"));
        for count in [0, 1, 5] {
            book.add(format!("{count} readings"), text::readings(count));
        }
        book.add("done", text::steps_done(7, 23));
        book.add("expected", text::expected_back("158 °F"));
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn what_the_readings_tell() {
    let tell = |book: &mut Book| {
        let draft = draft();
        let (first, last): (RoomId, RoomId) = (draft.rooms[0].id, draft.rooms[1].id);
        let (supply, back) = (fahrenheit(171.0), fahrenheit(149.0));
        let (drop, expected) = (degrees(32.0), degrees(20.0));
        let by_drop = By::Drop { drop, expected };
        let flow = |gpm| VolumeFlow::of(gpm, Unit::GallonPerMinute);
        let by_meter = By::Meter { measured: flow(1.2), meant: flow(2.0) };
        let circuits = [
            CircuitFinding::HalfRead,
            CircuitFinding::TooCool { supply },
            CircuitFinding::Fits { drop, expected },
            CircuitFinding::FlowFits { measured: flow(2.1), meant: flow(2.0) },
            CircuitFinding::FlowLow { share: 0.58, by: by_drop },
            CircuitFinding::FlowLow { share: 0.6, by: by_meter },
            CircuitFinding::FlowHigh { share: 1.6, by: by_drop },
            CircuitFinding::Still { share: 0.1, by: by_drop },
            CircuitFinding::HardlyCools { drop: degrees(2.0), expected },
            CircuitFinding::Backward { supply: back, back: supply },
            CircuitFinding::LessHeat { share: 0.6 },
            CircuitFinding::MoreHeat { share: 1.6 },
            CircuitFinding::Reversed { first, last },
            CircuitFinding::ValveFits { set: 2.0 },
            CircuitFinding::ValveOff { set: 2.0, planned: 3.5 },
            CircuitFinding::ValveOff { set: 3.5, planned: 2.0 },
        ];
        let (air, wanted) = (fahrenheit(63.0), fahrenheit(70.0));
        let rooms = [
            RoomFinding::Fits { air: wanted, wanted },
            RoomFinding::Warm { air: fahrenheit(76.0), wanted },
            RoomFinding::NotJudged { air, wanted },
            RoomFinding::BehindCircuit { air, wanted, first },
            RoomFinding::Undersized { air, gives: btu_h(2500.0), loses: btu_h(3900.0) },
            RoomFinding::LosesMore { air, times: 1.34, beside: Beside::Others },
            RoomFinding::LosesMore { air, times: 1.34, beside: Beside::AllTheTime },
            RoomFinding::WithZone { air, wanted },
        ];
        let (measured, planned) = (psi(9.0), psi(12.0));
        let low = |at_top, air_comes_in| FillingFinding::FillLow {
            measured,
            planned,
            at_top,
            air_comes_in,
        };
        let filling = [
            FillingFinding::FillFits { measured: planned },
            low(psi(1.1), AtTop::TooLittle),
            low(psi(4.5), AtTop::Enough),
            FillingFinding::FillHigh { measured: psi(20.0), planned, relief: psi(30.0) },
            FillingFinding::ChargeFits { measured: planned },
            FillingFinding::ChargeLow { measured, planned },
            FillingFinding::ChargeHigh { measured: psi(20.0), planned },
            FillingFinding::ColderThanPlanned {
                measured: fahrenheit(-8.0),
                planned: fahrenheit(5.0),
            },
        ];
        for system in [System::Us, System::Si] {
            for (nth, finding) in circuits.iter().enumerate() {
                let how = text::circuit_finding(&draft, finding, system);
                let verdict = text::circuit_verdict(finding);
                book.add(format!("circuit {nth} {system:?}"), format!("{verdict}. {how}"));
            }
            for (nth, finding) in rooms.iter().enumerate() {
                let how = text::room_finding(&draft, finding, system);
                let verdict = text::room_verdict(finding);
                book.add(format!("room {nth} {system:?}"), format!("{verdict}. {how}"));
            }
            for finding in filling {
                book.add(format!("filling {system:?}"), text::filling_finding(finding, system));
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}
