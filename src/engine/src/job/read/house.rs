//! What the whole house shares: climate, air, ground, ranges of inputs.

use super::{Problem, Reader};
use crate::building::air::{Leakage, Ventilation};
use crate::building::{
    BlowerDoor, EdgeInsulation, Ground, HouseAir, Leaks, Ranges, RoomId, Site, SlabMethod,
};
use crate::job::draft::{AirBasis, Behind, GroundMethod};
use crate::job::field::{
    AirField, AssemblyField, CertaintyField, Field, GroundField, HouseField, RoomField,
};
use crate::job::own::layer_fields;
use crate::quantity::{
    Area, ChangeRate, Length, LinearTransmittance, Temperature, TemperatureDifference, Value,
    Velocity, VolumeFlow,
};

/// Everything of a house but its rooms.
pub(super) struct Around {
    pub site: Site,
    pub air: HouseAir,
    pub ground: Ground,
    pub ranges: Ranges,
    pub margin: f64,
}

pub(super) fn read_around(reader: &mut Reader<'_>) -> Option<Around> {
    let site = read_site(reader);
    let air = read_air(reader);
    let ground = read_ground(reader);
    let ranges = read_ranges(reader);
    let margin = reader.si(Field::House(HouseField::Margin));
    Some(Around { site: site?, air: air?, ground: ground?, ranges: ranges?, margin: margin? })
}

fn read_site(reader: &mut Reader<'_>) -> Option<Site> {
    let field = Field::House;
    let outdoors = reader.temperature(field(HouseField::Outdoors));
    let altitude = reader.length(field(HouseField::Altitude));
    let wind = reader.si(field(HouseField::Wind)).map(Velocity::from_si);
    // Read for their errors: the rooms take them when they have none of their own.
    let indoors = reader.si(field(HouseField::Indoors));
    let height = reader.si(field(HouseField::CeilingHeight));
    let (mean, coldest_month) = match on_ground(reader) {
        true => {
            let mean = reader.temperature(field(HouseField::MeanTemperature));
            let coldest = reader.temperature(field(HouseField::ColdestMonth));
            if let (Some(mean), Some(coldest)) = (mean, coldest)
                && coldest > mean
            {
                let mean = Value::from(mean);
                reader.fail(field(HouseField::ColdestMonth), Problem::ColdestAboveMean { mean });
                return None;
            }
            (mean, coldest)
        }
        false => (outdoors, outdoors),
    };
    indoors.and(height)?;
    Some(Site {
        outdoors: outdoors?,
        altitude: altitude?,
        wind: wind?,
        mean: mean?,
        coldest_month: coldest_month?,
    })
}

/// Whether anything touches the ground, so that the ground's temperatures are needed.
fn on_ground(reader: &Reader<'_>) -> bool {
    reader.draft.all_rooms().flat_map(|room| &room.surfaces).any(|s| s.behind == Behind::Ground)
}

/// A heated room must be warmer than the design day; else whoever gave its temperature is told.
pub(super) fn is_above_outdoors(
    reader: &mut Reader<'_>,
    room: RoomId,
    inside: Temperature,
) -> bool {
    let Some(outdoors) = reader.value_of(Field::House(HouseField::Outdoors)) else { return true };
    if inside.si() > outdoors.si {
        return true;
    }
    let own = Field::Room(room, RoomField::Temperature);
    let field = match reader.draft.entry(own) {
        Some(_) => own,
        None => Field::House(HouseField::Indoors),
    };
    reader.fail(field, Problem::NotAboveOutdoors { outdoors });
    false
}

fn read_air(reader: &mut Reader<'_>) -> Option<HouseAir> {
    let mut si = |field| reader.si(Field::Air(field));
    let flow = |si: f64| VolumeFlow::from_si(si);
    let supply = si(AirField::Supply).map(flow);
    let exhaust = si(AirField::Exhaust).map(flow);
    let recovery = si(AirField::Recovery);
    let air = &reader.draft.air;
    let leaks = match air.basis {
        AirBasis::Class => reader
            .si(Field::House(HouseField::AirChanges))
            .map(|si| Leaks::Changes(ChangeRate::from_si(si))),
        AirBasis::BlowerDoor => {
            let at_50 = reader.si(Field::Air(AirField::BlowerFlow)).map(flow);
            let exponent = reader.si(Field::Air(AirField::BlowerExponent));
            at_50
                .zip(exponent)
                .map(|(flow, exponent)| Leaks::Measured(BlowerDoor { flow, exponent }))
        }
        AirBasis::LeakageArea => {
            let area = reader.si(Field::Air(AirField::LeakageArea)).map(Area::from_si);
            area.map(|area| Leaks::Estimated(Leakage::of(area)))
        }
    };
    Some(HouseAir {
        leaks: leaks?,
        storeys: air.storeys,
        shelter: air.shelter,
        flue: air.flue,
        ventilation: Ventilation { supply: supply?, exhaust: exhaust?, recovery: recovery? },
    })
}

fn read_ground(reader: &mut Reader<'_>) -> Option<Ground> {
    let mut si = |field| reader.si(Field::Ground(field));
    let wall = si(GroundField::WallThickness).map(Length::from_si);
    let depth = si(GroundField::EdgeDepth);
    let resistance = si(GroundField::EdgeR);
    let thickness = si(GroundField::EdgeThickness);
    let factor = si(GroundField::FFactor);
    let ground = &reader.draft.ground;
    let factor = SlabMethod::FFactor(LinearTransmittance::from_si(factor?));
    let iso = SlabMethod::Iso(match ground.edge.placement() {
        None => None,
        Some(placement) => Some(EdgeInsulation {
            placement,
            depth_m: depth?,
            thickness_m: thickness?,
            resistance_m2k_w: resistance?,
        }),
    });
    let (slab, other) = match ground.method {
        GroundMethod::FFactor => (factor, iso),
        GroundMethod::Iso => (iso, factor),
    };
    Some(Ground { soil: ground.soil.ground(), wall_thickness: wall?, slab, other })
}

fn read_ranges(reader: &mut Reader<'_>) -> Option<Ranges> {
    let mut si = |field| reader.si(Field::Certainty(field));
    let measured = si(CertaintyField::Measured);
    let label = si(CertaintyField::Label);
    let listed = si(CertaintyField::Listed);
    let assumed = si(CertaintyField::Assumed);
    let air = si(CertaintyField::Air);
    let soil = si(CertaintyField::Soil);
    let outdoors = si(CertaintyField::Outdoors).map(TemperatureDifference::from_si);
    Some(Ranges {
        measured: measured?,
        label: label?,
        listed: listed?,
        assumed: assumed?,
        air: air?,
        soil: soil?,
        outdoors: outdoors?,
    })
}

/// The user's own assemblies, for their errors: what is built of them takes its U from there.
pub(super) fn read_assemblies(reader: &mut Reader<'_>) {
    for assembly in &reader.draft.assemblies {
        let typed = [AssemblyField::U, AssemblyField::R]
            .map(|field| Field::Assembly(assembly.id, field))
            .into_iter()
            .find(|&field| reader.draft.entry(field).is_some());
        if let Some(field) = typed {
            reader.si(field);
            continue;
        }
        if assembly.layers.is_empty() {
            reader.fail(Field::Assembly(assembly.id, AssemblyField::U), Problem::NoLayers);
        }
        for (row, layer) in assembly.layers.iter().enumerate() {
            for field in layer_fields(layer) {
                reader.si(Field::Layer(assembly.id, row, field));
            }
        }
    }
}
