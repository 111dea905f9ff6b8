//! What a job says that it was worked out from: every number that matters, no other, with its origin.

use crate::shipped::SHIPPED;
use crate::support::{
    FOUR_ROOMS, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, fields, holds_number, open, set,
};
use finrun_engine::design::design;
use finrun_engine::job::{
    AirField, Draft, ElementField, Entry, Field, HouseField, Input, InputOrigin, PlantField,
    RoomField, SurfaceField, inputs, read,
};
use finrun_engine::quantity::Unit;

fn houses() -> Vec<Draft> {
    SHIPPED.into_iter().chain([FOUR_ROOMS, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE]).map(open).collect()
}

/// What a design comes to, in numbers that between them depend on all of a job.
fn outcome(draft: &Draft) -> Option<Vec<f64>> {
    let reading = read(draft);
    let job = reading.job.filter(|_| reading.errors.is_empty())?;
    let design = design(&job);
    let plant = design.plant.as_ref()?;
    let sure = &design.certainty.house;
    let mut numbers = vec![
        design.load.si(),
        sure.high.si(),
        design.element_length().si(),
        design.piping.back.si(),
        design.piping.head.si(),
        design.piping.pumps.iter().map(|pump| pump.electric.si()).sum(),
        plant.needed.map_or(0.0, |needed| needed.output.si()),
        plant.filling.cold.si(),
        plant.tank.map_or(0.0, |tank| tank.volume.si()),
        plant.reset.as_ref().and_then(|reset| reset.points.last()).map_or(0.0, |p| p.supply.si()),
        plant.part_load.map_or(0.0, |alone| alone.buffer.si()),
    ];
    numbers.extend(design.piping.circuits.iter().map(|c| c.valve.cv.unwrap_or(0.0)));
    numbers.extend(design.spaces.iter().map(|space| space.temperature.si()));
    Some(numbers)
}

fn alike(a: &[f64], b: &[f64]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() <= 1e-6 * a.abs().max(1e-3))
}

/// Types a number in SI into a blank, to nine decimals.
fn type_si(draft: &mut Draft, field: Field, si: f64) {
    let unit = draft.box_unit(field);
    let text = format!("{:.9}", unit.from_si(si));
    // Feet and inches are read as they are typed; a plain number with its unit is exact.
    draft.set_entry(field, Entry { text, unit });
}

/// A blank's stated value, typed, changes nothing but its origin: so the job did take that value.
#[test]
fn what_stands_for_a_blank_is_what_the_job_takes() {
    let mut compared = 0;
    for draft in houses() {
        let before = outcome(&draft);
        for input in inputs(&draft) {
            // One free length typed stands for a whole stretch, whatever doors interrupt it; and an
            // edge, a guessed temperature or a guessed size that is typed is surer than one that is
            // not.
            let other = matches!(
                input.field,
                Field::Surface(
                    _,
                    _,
                    SurfaceField::Free | SurfaceField::Perimeter | SurfaceField::BehindTemperature
                ) | Field::Opening(..)
            );
            if draft.entry(input.field).is_some() || other {
                continue;
            }
            let mut typed = draft.clone();
            type_si(&mut typed, input.field, input.value.si);
            let after = outcome(&typed);
            match (&before, &after) {
                (Some(before), Some(after)) => {
                    assert!(
                        alike(before, after),
                        "{} {:?}: {before:?} {after:?}",
                        draft.name,
                        input
                    );
                    compared += 1;
                }
                (None, _) => {}
                _ => panic!("{}: {input:?} cannot be typed", draft.name),
            }
            let now = inputs(&typed).into_iter().find(|now| now.field == input.field);
            let now = now.expect("what is typed still matters").origin;
            assert!(
                matches!(now, InputOrigin::Measured | InputOrigin::Label | InputOrigin::Given),
                "{input:?} is {now:?}"
            );
        }
    }
    assert!(compared > 300, "{compared}");
}

/// A field that is not among the inputs may be typed as one likes: nothing follows from it.
#[test]
fn what_is_left_out_does_not_matter() {
    let mut compared = 0;
    for draft in houses() {
        let before = outcome(&draft);
        let listed: Vec<Field> = inputs(&draft).iter().map(|input| input.field).collect();
        for field in fields(&draft) {
            let overrules = matches!(
                field,
                // Typed, they stand above layers, sides and lists that are inputs themselves.
                Field::Assembly(..) | Field::Price(_) | Field::Stocked(..) | Field::Point(..)
                    | Field::PumpPoint(..) | Field::House(HouseField::AirChanges)
                    | Field::Surface(_, _, SurfaceField::Free | SurfaceField::Perimeter)
                    // Whether a pipe is typed or described, its elbows are counted.
                    | Field::Room(_, RoomField::PipeTo | RoomField::Elbows)
                    | Field::Zone(..)
                    // Blank they are not known, and then not judged.
                    | Field::Plant(PlantField::Output | PlantField::LeastOutput)
                    | Field::Room(_, RoomField::Temperature)
            );
            if listed.contains(&field) || overrules || !holds_number(field) {
                continue;
            }
            let spec = field.spec();
            let mut typed = draft.clone();
            type_si(&mut typed, field, spec.least + 0.4 * (spec.most - spec.least));
            if let (Some(before), Some(after)) = (&before, outcome(&typed)) {
                assert!(alike(before, &after), "{}: {field} {before:?} {after:?}", draft.name);
                compared += 1;
            }
        }
    }
    assert!(compared > 300, "{compared}");
}

/// Every number that was typed is among the inputs, but for bills, readings and what does not count
/// as the job's choices stand.
#[test]
fn what_is_typed_and_counts_is_listed_once() {
    for draft in houses() {
        let listed: Vec<Field> = inputs(&draft).iter().map(|input| input.field).collect();
        for (at, field) in listed.iter().enumerate() {
            assert!(!listed[..at].contains(field), "{}: {field} twice", draft.name);
        }
        for room in &draft.rooms {
            for field in [RoomField::FloorLength, RoomField::Height, RoomField::Temperature] {
                let field = Field::Room(room.id, field);
                assert!(listed.contains(&field), "{}: {field}", draft.name);
            }
        }
    }
}

#[test]
fn origins_of_the_bungalow() {
    use InputOrigin::{Assumed, Given, Label, Measured, Table, Worked};
    // As `tests/jobs/make_bungalow.py` types them, or leaves them blank.
    let mut draft = open(SHIPPED[0]);
    let room = draft.rooms[0].id;
    let wall = draft.rooms[0].surfaces[0].id;
    set(&mut draft, Field::Plant(PlantField::Output), "60000");
    set(&mut draft, Field::Air(AirField::Exhaust), "50");
    let all = inputs(&draft);
    let of = |field| -> Input {
        *all.iter().find(|input| input.field == field).unwrap_or_else(|| panic!("{field}"))
    };
    for (field, origin) in [
        (Field::House(HouseField::Outdoors), Table),
        (Field::House(HouseField::Indoors), Given),
        (Field::House(HouseField::AirChanges), Table),
        (Field::House(HouseField::Margin), Assumed),
        (Field::Element(ElementField::Output), Assumed),
        (Field::Plant(PlantField::Output), Label),
        (Field::Plant(PlantField::Fill), Worked),
        (Field::Air(AirField::Exhaust), Label),
        (Field::Room(room, RoomField::FloorLength), Measured),
        (Field::Room(room, RoomField::FloorArea), Worked),
        (Field::Surface(room, wall, SurfaceField::Length), Measured),
        (Field::Surface(room, wall, SurfaceField::Area), Worked),
    ] {
        assert_eq!(of(field).origin, origin, "{field}");
    }
    let boiler = of(Field::Plant(PlantField::Output)).value.si;
    assert!((Unit::BtuPerHour.from_si(boiler) - 60_000.0).abs() < 1e-6);
    assert!(all.iter().all(|input| !matches!(input.field, Field::Bill(..) | Field::Spot(..))));
}
