//! Labels of lists to choose from, and the names of what is on them.

use super::{
    air_class, assembly_name, behind, existing, flow_basis, framing, material, open_flue, piping,
    plant, position, shelter, shop, storeys, tube, u_value_basis,
};
use finrun_engine::bills::Fuel;
use finrun_engine::building::{Level, Place, RoomUse, SlabEdge, Soil};
use finrun_engine::job::{
    AirBasis, Choice, DesignHours, Draft, EdgeBasis, GroundMethod, LayerMaterial, Pick, Shape,
    UValue,
};

/// The label over the list.
pub fn choice_label(choice: Choice) -> &'static str {
    match choice {
        Choice::DesignHours => "Design temperature",
        Choice::AirClass => "How tight is the house?",
        Choice::AirBasis => "What do you know of its leaks?",
        Choice::Storeys => "Storeys above the ground",
        Choice::Shelter => "Shelter from the wind",
        Choice::Flue => "Fireplace or open flue",
        Choice::Soil => "Soil",
        Choice::GroundMethod => "Heat loss of a slab by",
        Choice::Edge => "Edge insulation of a slab",
        Choice::SlabEdge => "Insulation of a slab, for its F-factor",
        Choice::Fuel => "Fuel",
        Choice::Tube => "Tube of the elements",
        Choice::Objective => "Choose the pieces for",
        Choice::Sticks => "Lengths of hard pipe in the shop",
        Choice::FlowBasis => "How is the flow fixed?",
        Choice::PipeCover => "Pipes outside the rooms",
        Choice::Zoning => "Zones are started by",
        Choice::Pump | Choice::ZonePump(_) => "Circulator",
        Choice::PumpSet => "How many push together",
        Choice::BoilerKind => "Boiler",
        Choice::TankHeating => "Indirect tank for tap water",
        Choice::Metal => "The system is mostly of",
        Choice::ValveKind => "Zone valves",
        Choice::Antifreeze => "Antifreeze",
        Choice::Standing => existing::standing_label(),
        Choice::Ran => existing::ran_label(),
        Choice::Arrangement(_) => "Arrangement",
        Choice::Main(_) => "Tube of main, trunk or manifold",
        Choice::Pipe(_) => "Tube of the rooms' own pipes",
        Choice::Balancing(_) => "Balancing valves",
        Choice::BackPath(_) => "The way back",
        Choice::Hung(_) => "Zone",
        Choice::Diverters(_) => "Diverter tees",
        Choice::ShutOff(_) => "Shut-off",
        Choice::Leg(..) => "Step",
        Choice::Level(_) => "Storey",
        Choice::Shape(_) => "Shape",
        Choice::Behind(..) => "Behind it",
        Choice::WallUse(..) => "Baseboard at this wall",
        Choice::SurfaceBuild(..) | Choice::OpeningBuild(..) => "Built like",
        Choice::Position(_) => "Used as",
        Choice::Framing(_) => "Framing",
        Choice::LayerMaterial(..) => "Material",
        Choice::LayerPlace(..) => "Placed",
    }
}

/// Something on a list.
pub fn pick(draft: &Draft, pick: Pick) -> String {
    match pick {
        Pick::Behind(p) => return behind(draft, p),
        Pick::Hung(p) => return piping::hung(draft, p),
        Pick::Build(UValue::Own(id)) => return assembly_name(draft, id),
        Pick::Build(p) => u_value_basis(p),
        Pick::DesignHours(p) => match p {
            DesignHours::P99 => "99 % of hours are warmer (usual)",
            DesignHours::P996 => "99.6 % of hours are warmer (stricter)",
        },
        Pick::AirClass(p) => air_class(p),
        Pick::AirBasis(p) => match p {
            AirBasis::Class => "How it feels, by class",
            AirBasis::BlowerDoor => "A blower door test",
            AirBasis::LeakageArea => "A leakage area, or what is usual for the floor area",
        },
        Pick::Storeys(p) => storeys(p),
        Pick::Shelter(p) => shelter(p),
        Pick::Flue(p) => open_flue(p),
        Pick::Soil(p) => soil(p),
        Pick::GroundMethod(p) => match p {
            GroundMethod::Iso => "ISO 13370, by area and edge",
            GroundMethod::FFactor => "F-factor of US codes, by edge alone",
        },
        Pick::Edge(p) => match p {
            EdgeBasis::None => "None",
            EdgeBasis::Horizontal => "Horizontal, under the slab or outside it",
            EdgeBasis::Vertical => "Vertical, along the foundation",
        },
        Pick::SlabEdge(p) => slab_edge(p),
        Pick::Fuel(p) => fuel(p),
        Pick::Tube(p) => tube(p),
        Pick::Objective(p) => shop::objective(p),
        Pick::Sticks(p) => shop::sticks(p),
        Pick::WallUse(p) => shop::wall_use(p),
        Pick::FlowBasis(p) => flow_basis(p),
        Pick::PipeCover(p) => piping::pipe_cover(p),
        Pick::Zoning(p) => piping::zoning(p),
        Pick::Pump(p) => piping::pump_kind(p),
        Pick::PumpSet(p) => piping::pump_set(p),
        Pick::BoilerKind(p) => plant::boiler_kind(p),
        Pick::TankHeating(p) => plant::tank_heating(p),
        Pick::Metal(p) => plant::metal(p),
        Pick::ValveKind(p) => plant::valve_kind(p),
        Pick::Antifreeze(p) => plant::antifreeze(p),
        Pick::Standing(p) => existing::standing(p),
        Pick::Ran(p) => existing::ran(p),
        Pick::Arrangement(p) => piping::arrangement(p),
        Pick::Balancing(p) => piping::balancing(p),
        Pick::BackPath(p) => piping::back_path(p),
        Pick::Diverters(p) => piping::diverters(p),
        Pick::ShutOff(p) => piping::shut_off(p),
        Pick::Leg(p) => piping::leg_kind(p),
        Pick::Level(p) => level(p),
        Pick::Shape(p) => match p {
            Shape::Rectangle => "Rectangle",
            Shape::LShape => "L: a rectangle with a corner cut out",
        },
        Pick::Position(p) => position(p),
        Pick::Framing(p) => framing(p),
        Pick::LayerMaterial(LayerMaterial::Listed(p)) => material(p),
        Pick::LayerMaterial(LayerMaterial::TypedR) => "I know its R-value",
        Pick::LayerPlace(p) => match p {
            Place::Through => "Over the whole area",
            Place::BetweenFraming => "Between studs, joists or rafters",
        },
    }
    .to_string()
}

pub fn room_use(used: RoomUse) -> &'static str {
    match used {
        RoomUse::Heated => "Heated room",
        RoomUse::Attic => "Attic",
        RoomUse::Garage => "Garage",
        RoomUse::CrawlSpace => "Crawl space",
        RoomUse::Basement => "Unheated basement",
        RoomUse::Other => "Unheated space",
    }
}

pub fn level(level: Level) -> &'static str {
    match level {
        Level::Basement => "Basement",
        Level::First => "First floor",
        Level::Second => "Second floor",
        Level::Third => "Third floor",
    }
}

pub fn soil(soil: Soil) -> &'static str {
    match soil {
        Soil::Clay => "Clay or silt",
        Soil::Sand => "Sand or gravel (also if you do not know)",
        Soil::Rock => "Rock",
    }
}

pub fn fuel(fuel: Fuel) -> &'static str {
    match fuel {
        Fuel::NaturalGasTherm => "Natural gas, therms",
        Fuel::NaturalGasCcf => "Natural gas, hundreds of cubic feet (CCF)",
        Fuel::HeatingOilGallon => "Heating oil, gallons",
        Fuel::PropaneGallon => "Propane, gallons",
        Fuel::ElectricityKwh => "Electricity, kWh",
    }
}

pub fn slab_edge(edge: SlabEdge) -> &'static str {
    match edge {
        SlabEdge::Uninsulated => "None",
        SlabEdge::Horizontal2FtR5 => "2 ft horizontal, R-5",
        SlabEdge::Horizontal2FtR10 => "2 ft horizontal, R-10",
        SlabEdge::Horizontal2FtR15 => "2 ft horizontal, R-15",
        SlabEdge::Horizontal4FtR5 => "4 ft horizontal, R-5",
        SlabEdge::Horizontal4FtR10 => "4 ft horizontal, R-10",
        SlabEdge::Horizontal4FtR15 => "4 ft horizontal, R-15",
        SlabEdge::Vertical2FtR5 => "2 ft vertical, R-5",
        SlabEdge::Vertical2FtR10 => "2 ft vertical, R-10",
        SlabEdge::Vertical2FtR15 => "2 ft vertical, R-15",
        SlabEdge::Vertical4FtR5 => "4 ft vertical, R-5",
        SlabEdge::Vertical4FtR10 => "4 ft vertical, R-10",
        SlabEdge::Vertical4FtR15 => "4 ft vertical, R-15",
        SlabEdge::WholeR10 => "Under the whole slab and at its edge, R-10",
        SlabEdge::WholeR15 => "Under the whole slab and at its edge, R-15",
        SlabEdge::WholeR20 => "Under the whole slab and at its edge, R-20",
        SlabEdge::WholeR30 => "Under the whole slab and at its edge, R-30",
    }
}
