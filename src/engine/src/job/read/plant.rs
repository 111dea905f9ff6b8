//! Reading the plant, and what the loop is filled with.

use super::Reader;
use crate::fluid::Fluid;
use crate::job::field::{Field, PlantField};
use crate::job::plant::{Antifreeze, BoilerKind, Plant, TankHeating, fluid};
use crate::plant::boiler::IndirectTank;
use crate::plant::return_protection::LEAST_RETURN;
use crate::quantity::{Length, Power, Pressure, TemperatureDifference, Volume};

/// Notes a share of glycol that cannot be read.
pub(super) fn read_fluid(reader: &mut Reader<'_>) -> Option<Fluid> {
    if reader.draft.plant.antifreeze == Antifreeze::PropyleneGlycol {
        reader.si(Field::Plant(PlantField::GlycolShare));
    }
    fluid(reader.draft)
}

/// What is not known of the boiler stands in nobody's way; what is typed wrong does.
pub(super) fn read_plant(reader: &mut Reader<'_>) -> Option<Plant> {
    let draft = &reader.draft.plant;
    let known = |reader: &mut Reader<'_>, field| {
        let errors = reader.errors.len();
        let output = reader.si(Field::Plant(field)).map(Power::from_si);
        (reader.errors.len() == errors).then_some(output)
    };
    let output = known(reader, PlantField::Output);
    let least_output = known(reader, PlantField::LeastOutput);
    let mut si = |field| reader.si(Field::Plant(field));
    let boiler_volume = si(PlantField::BoilerVolume).map(Volume::from_si);
    let differential = si(PlantField::Differential).map(TemperatureDifference::from_si);
    let top_height = si(PlantField::TopHeight).map(Length::from_si);
    let fill = si(PlantField::Fill).map(Pressure::from_si);
    let relief = si(PlantField::Relief).map(Pressure::from_si);
    let other_volume = si(PlantField::OtherVolume).map(Volume::from_si);
    let cold = reader.temperature(Field::Plant(PlantField::ColdFill));
    let balance = reader.temperature(Field::Plant(PlantField::Balance));
    let least_return = match draft.boiler {
        BoilerKind::NonCondensing => reader.temperature(Field::Plant(PlantField::LeastReturn)),
        // It may be as cool as it likes.
        BoilerKind::Condensing => Some(LEAST_RETURN),
    };
    let mut tank = |heated: fn(Power) -> IndirectTank| {
        reader.si(Field::Plant(PlantField::TankOutput)).map(Power::from_si).map(heated)
    };
    let tank = match draft.tank {
        TankHeating::None => Some(IndirectTank::None),
        TankHeating::AtOnce => tank(IndirectTank::AtOnce),
        TankHeating::Priority => tank(IndirectTank::Priority),
    };
    Some(Plant {
        boiler: draft.boiler,
        output: output?,
        least_output: least_output?,
        boiler_volume: boiler_volume?,
        differential: differential?,
        least_return: least_return?,
        tank: tank?,
        metal: draft.metal,
        valve: draft.valve,
        top_height: top_height?,
        fill: fill?,
        relief: relief?,
        other_volume: other_volume?,
        cold: cold?,
        balance: balance?,
    })
}
