//! Labels and hints of fields, and the names of the things they belong to.

use crate::{install, plant, shop};
use finrun_engine::building::{AssemblyId, OpeningId, RoomId, RoomUse, SurfaceId};
use finrun_engine::job::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, CircuitField, CutField, Draft,
    ElementField, Field, GroundField, HouseField, LayerField, LegField, OpeningField, PartField,
    PointField, PumpPointField, RoomField, SpotField, SurfaceField, ZoneField,
};
use finrun_engine::quantity::{System, Value, show};

/// A room's name, or its place on the loop while it has none; a space's name, or what it is.
pub fn room_name(draft: &Draft, id: RoomId) -> String {
    match draft.all_rooms().enumerate().find(|(_, room)| room.id == id) {
        Some((_, room)) if !room.name.trim().is_empty() => room.name.trim().to_string(),
        Some((_, space)) if space.used != RoomUse::Heated => {
            super::room_use(space.used).to_string()
        }
        Some((index, _)) => format!("Room {}", index + 1),
        None => super::removed_room().to_string(),
    }
}

/// The name of an assembly of the user's own, or its place among them.
pub fn assembly_name(draft: &Draft, id: AssemblyId) -> String {
    match draft.assemblies.iter().enumerate().find(|(_, assembly)| assembly.id == id) {
        Some((_, assembly)) if !assembly.name.trim().is_empty() => assembly.name.trim().to_string(),
        Some((index, _)) => format!("Own assembly {}", index + 1),
        None => super::removed_assembly().to_string(),
    }
}

/// A surface's name, such as "North wall" or "Wall 2".
pub fn surface_name(draft: &Draft, room: RoomId, id: SurfaceId) -> String {
    let Some(room) = draft.room(room) else { return String::new() };
    let Some(surface) = room.surfaces.iter().find(|surface| surface.id == id) else {
        return String::new();
    };
    let kind = super::surface_kind(surface.kind);
    let name = surface.name.trim();
    if !name.is_empty() {
        return named_surface(name, kind);
    }
    let alike: Vec<_> = room.surfaces.iter().filter(|s| s.kind == surface.kind).collect();
    match alike.iter().position(|s| s.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// "South wall" for a wall named "south"; a name that says what it is stays as it is.
fn named_surface(name: &str, kind: &str) -> String {
    let kind = kind.to_ascii_lowercase();
    let mut letters = name.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase()).into_iter();
    let name: String = first.chain(letters).collect();
    match name.to_ascii_lowercase().contains(&kind) {
        true => name,
        false => format!("{name} {kind}"),
    }
}

/// An opening's name, such as "Window 2".
pub fn opening_name(draft: &Draft, room: RoomId, surface: SurfaceId, id: OpeningId) -> String {
    let Some(surface) = draft.surface(room, surface) else { return String::new() };
    let Some(opening) = surface.openings.iter().find(|opening| opening.id == id) else {
        return String::new();
    };
    let kind = super::opening_kind(opening.kind);
    let alike: Vec<_> = surface.openings.iter().filter(|o| o.kind == opening.kind).collect();
    match alike.iter().position(|o| o.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// The label over the box.
pub fn field_label(field: Field) -> &'static str {
    match field {
        Field::House(field) => match field {
            HouseField::Outdoors => "Outdoor temperature on the design day",
            HouseField::Indoors => "Room temperature",
            HouseField::Altitude => "Height above sea level",
            HouseField::AirChanges => "Air changes",
            HouseField::CeilingHeight => "Usual ceiling height",
            HouseField::MeanTemperature => "Mean outdoor temperature of the year",
            HouseField::ColdestMonth => "Mean outdoor temperature of the coldest month",
            HouseField::Wind => "Mean wind in winter",
            HouseField::Margin => "Safety margin on every room",
        },
        Field::Air(field) => match field {
            AirField::BlowerFlow => "Blower door, flow at 50 Pa",
            AirField::BlowerExponent => "Flow exponent of the test",
            AirField::LeakageArea => "Effective leakage area at 4 Pa",
            AirField::Supply => "Fans bring in",
            AirField::Exhaust => "Fans blow out",
            AirField::Recovery => "Heat recovered",
        },
        Field::Ground(field) => match field {
            GroundField::WallThickness => "Thickness of the foundation wall",
            GroundField::EdgeDepth => "Width or depth of the edge insulation",
            GroundField::EdgeR => "R-value of the edge insulation",
            GroundField::EdgeThickness => "Thickness of the edge insulation",
            GroundField::FFactor => "F-factor",
        },
        Field::Certainty(field) => match field {
            CertaintyField::Measured => "What was measured",
            CertaintyField::Label => "What a label or data sheet says",
            CertaintyField::Listed => "What was picked from a list",
            CertaintyField::Assumed => "What was assumed",
            CertaintyField::Air => "Air leakage without a test",
            CertaintyField::Outdoors => "Design temperature of the place",
            CertaintyField::Soil => "Conductivity of the soil",
        },
        Field::Assembly(_, AssemblyField::U) => "U-value",
        Field::Assembly(_, AssemblyField::R) => "R-value",
        Field::Layer(_, _, LayerField::Thickness) => "Thickness",
        Field::Layer(_, _, LayerField::R) => "R-value of the layer",
        Field::Bills(BillsField::Efficiency) => "Efficiency of the present heating",
        Field::Bills(BillsField::Indoors) => "Indoor temperature in those months",
        Field::Bill(_, field) => match field {
            BillField::From => "From",
            BillField::To => "To",
            BillField::Amount => "Amount",
            BillField::DegreeDays => "Degree days, base 65 °F, if the bill has them",
        },
        Field::Element(field) => match field {
            ElementField::Output => "Rated output",
            ElementField::Water => "Rated at an average water temperature of",
            ElementField::Air => "Rated with entering air of",
            ElementField::Exponent => "Exponent",
            ElementField::RatingFlow => "Rated at a flow of",
            ElementField::Derate => "Share of the rating that counts",
            ElementField::BarePerPiece => "Tube without fins on each piece",
            ElementField::EndAllowance => "Wall taken by end caps and fittings, each run",
        },
        Field::Point(_, PointField::Water) => "Water",
        Field::Point(_, PointField::Output) => "Output",
        Field::Stock => "Stock lengths",
        Field::Circuit(field) => match field {
            CircuitField::Supply => "Supply water from the boiler",
            CircuitField::BoilerLimit => "Boiler's highest water temperature",
            CircuitField::Drop => "Temperature drop to plan for",
            CircuitField::Flow => "Flow",
            CircuitField::PipeSurroundings => "Air around the pipes",
            CircuitField::PipeFilm => "Heat passed by a bare pipe's surface",
            CircuitField::ReturnPipe => "Pipe from the last room to the boiler",
            CircuitField::ReturnElbows => "Elbows on it",
            CircuitField::BoilerElbows => "Elbows in the boiler room",
            CircuitField::BoilerTees => "Tees, straight through, in the boiler room",
            CircuitField::BoilerValves => "Ball valves in the boiler room",
            CircuitField::EquipmentHead => "Head lost in boiler and equipment",
        },
        Field::Stocked(_, field) => shop::stock_label(field),
        Field::Price(field) => shop::price_label(field),
        Field::SizedPrice(_, field) => shop::price_label(field.for_any_size()),
        Field::Spare(group) => shop::group(group),
        Field::Cut(CutField::Kerf) => "What a saw cut takes",
        Field::Part(field) => match field {
            PartField::ZoneValveCv => "Flow coefficient (Cv) of a zone valve",
            PartField::FlowCheckCv => "Flow coefficient (Cv) of a flow check",
            PartField::BalancingCv => "Flow coefficient (Cv) of a balancing valve, open",
            PartField::DiverterK => "Loss coefficient K of a diverter tee, along the main",
            PartField::PumpEfficiency => "Share of the circulator's power that moves water",
            PartField::InsulationThickness => "Thickness of the pipe insulation",
        },
        Field::Plant(field) => plant::label(field),
        Field::Zone(_, ZoneField::Trunk) => "Trunk, one way",
        Field::Zone(_, ZoneField::TrunkElbows) => "Elbows on it, one way",
        Field::Zone(_, ZoneField::Wire) => "Thermostat wire, one way",
        Field::PumpPoint(_, PumpPointField::Flow) => "Flow",
        Field::PumpPoint(_, PumpPointField::Head) => "Head",
        Field::Leg(_, _, LegField::Length) => "Pipe on this step",
        Field::Room(_, field) => match field {
            RoomField::FloorLength => "Floor, length",
            RoomField::FloorWidth => "Floor, width",
            RoomField::CutLength => "Cut out of a corner, length",
            RoomField::CutWidth => "Cut out of a corner, width",
            RoomField::FloorArea => "Floor area, if it has another shape",
            RoomField::Height => "Ceiling height",
            RoomField::Temperature => "Temperature of this room",
            RoomField::AirChanges => "Air changes of this room",
            RoomField::PipeTo => "Pipe from the room before, or the boiler",
            RoomField::Elbows => "Elbows on it",
            RoomField::PipeBack => "Pipe back from this room",
            RoomField::ElbowsBack => "Elbows on the way back",
            RoomField::BranchPipe => "Branch pipe, there and back together",
            RoomField::BranchElbows => "Elbows on the branch",
            RoomField::TeeSpacing => "Main between its two tees",
            RoomField::FromLeft => "On the plan, from the left",
            RoomField::FromFront => "On the plan, from the front",
            RoomField::VentArea => "Net free area of all vents",
            RoomField::OtherHeat => "Other heat on the design day",
        },
        Field::Surface(_, _, field) => match field {
            SurfaceField::Length => "Length",
            SurfaceField::Height => "Height",
            SurfaceField::Area => "Area",
            SurfaceField::Behind => "Behind it",
            SurfaceField::BehindTemperature => "Temperature behind it",
            SurfaceField::Depth => "Depth below the ground outside",
            SurfaceField::Perimeter => "Edge along outside walls",
            SurfaceField::U => "U-value",
            SurfaceField::R => "R-value",
            SurfaceField::Free => "Free for baseboard",
            SurfaceField::Fixed => "Pieces that stay",
        },
        Field::Opening(_, _, _, field) => match field {
            OpeningField::Width => "Width",
            OpeningField::Height => "Height",
            OpeningField::FromLeft => "From the left corner",
            OpeningField::U => "U-value",
            OpeningField::R => "R-value",
        },
        Field::Measured(field) => install::measured_label(field),
        Field::Spot(_, field) => install::spot_label(field),
    }
}

/// What the label leaves open, in one line; empty for most.
pub fn field_note(field: Field) -> &'static str {
    match field {
        Field::House(HouseField::Outdoors) => {
            "The temperature that 99 % of hours stay above. Your building department knows it."
        }
        Field::House(HouseField::AirChanges) => "Follows from the choice above; type to overrule.",
        Field::House(HouseField::MeanTemperature | HouseField::ColdestMonth) => {
            "Counts for what touches the ground."
        }
        Field::House(HouseField::Wind) => {
            "At a weather station: in the open, 33 ft (10 m) above the ground."
        }
        Field::House(HouseField::Margin) => {
            "Nothing is added in secret. Loads by this method need no margin: 0 is right unless you \
             have a reason."
        }
        Field::Air(AirField::BlowerFlow) => "CFM50 on the tester's report.",
        Field::Air(AirField::LeakageArea) => {
            "Of all gaps together. Blank: what is usual for the floor area."
        }
        Field::Air(AirField::Recovery) => {
            "By a heat-recovery unit; counts for air that comes in and goes out through it."
        }
        Field::Ground(GroundField::FFactor) => {
            "Heat through each foot of a slab's edge; follows from the choice above."
        }
        Field::Certainty(_) => "Four in five lie no farther off than this, up or down.",
        Field::Assembly(..) => "Of the whole assembly, air films included; wins over the layers.",
        Field::Bills(BillsField::Efficiency) => {
            "Heat that reaches the house, of the heat in the fuel, over a whole season."
        }
        Field::Room(_, RoomField::AirChanges) => {
            "A heated room takes its share of the house's air, and at least this. An unheated space \
             takes this."
        }
        Field::Room(_, RoomField::Temperature) => {
            "Blank: that of the house. An unheated space finds its own."
        }
        Field::Room(_, RoomField::FromLeft | RoomField::FromFront) => {
            "From the corner of the house. Blank: beside the other rooms."
        }
        Field::Surface(_, _, SurfaceField::Depth) => {
            "Of the floor, or of the wall's foot; 0 for a slab on the ground."
        }
        Field::Surface(_, _, SurfaceField::Perimeter) => {
            "Blank: the length of this room's outside walls."
        }
        Field::Element(ElementField::Output) => "Per foot or metre of finned length.",
        Field::Element(ElementField::Air) => {
            "Of the rating. Each room's own air is taken at its temperature; cooler air along the \
             floor would give up to 14 % more, and is not assumed."
        }
        Field::Element(ElementField::Exponent) => "1.3 to 1.45 for most fin-tube.",
        Field::Element(ElementField::RatingFlow) => "Ratings are printed at 1 or 4 gpm.",
        Field::Element(ElementField::Derate) => {
            "Less than 100 % for altitude, a damper, carpet under the inlet: your judgement."
        }
        Field::Circuit(CircuitField::EquipmentHead) => {
            "Boiler, air eliminator, flow check: from their data sheets."
        }
        Field::Plant(field) => plant::note(field),
        Field::Part(PartField::DiverterK) => {
            "What drives the branch. Makers print it, or a Cv; 6 is a judgement."
        }
        Field::Part(PartField::PumpEfficiency) => {
            "Small circulators turn 15 to 40 % of their power into moving water."
        }
        Field::Room(_, RoomField::PipeBack) => {
            "Counts for the last room of a loop, for a return main and for a home run."
        }
        Field::Surface(_, _, SurfaceField::U | SurfaceField::R)
        | Field::Opening(_, _, _, OpeningField::U | OpeningField::R) => {
            "Of the whole assembly, air films included."
        }
        Field::Surface(_, _, SurfaceField::Free) => {
            "Along the floor, in one stretch; 0 for none. Blank: all but the doors."
        }
        Field::Room(_, RoomField::OtherHeat) => {
            "From a stove or another emitter that runs whenever it is cold; the baseboard is sized for the rest."
        }
        Field::Opening(_, _, _, OpeningField::FromLeft) => "As you stand in the room.",
        _ => "",
    }
}

/// Which thing a field belongs to, for an error summary: "Kitchen, north wall, window".
pub fn field_owner(draft: &Draft, field: Field) -> String {
    match field {
        Field::House(_) => "House".to_string(),
        Field::Air(_) => "Air".to_string(),
        Field::Ground(_) => "Ground".to_string(),
        Field::Certainty(_) => "How sure".to_string(),
        Field::Assembly(id, _) => assembly_name(draft, id),
        Field::Layer(id, row, _) => format!("{}, layer {}", assembly_name(draft, id), row + 1),
        Field::Bills(_) => "Fuel bills".to_string(),
        Field::Bill(id, _) => {
            let index = draft.bills.list.iter().position(|bill| bill.id == id).unwrap_or(0);
            super::bill_name(index)
        }
        Field::Element(_) | Field::Stock => "Element".to_string(),
        Field::Stocked(feet, _) => format!("{feet} ft piece"),
        Field::Price(_) => "Prices".to_string(),
        Field::SizedPrice(tube, _) => format!("Prices, {}", super::tube(tube)),
        Field::Spare(_) => "To spare".to_string(),
        Field::Cut(_) => "Cutting".to_string(),
        Field::Point(row, _) => format!("Maker's table, row {}", row + 1),
        Field::Circuit(_) => "Loop".to_string(),
        Field::Part(_) => "Valves and tees".to_string(),
        Field::Plant(_) => "Boiler and fill".to_string(),
        Field::Zone(zone, _) => super::zone_name(draft, zone),
        Field::PumpPoint(row, _) => format!("Circulator's curve, point {}", row + 1),
        Field::Leg(room, row, _) => format!("{}, step {}", room_name(draft, room), row + 1),
        Field::Room(room, _) => room_name(draft, room),
        Field::Measured(_) => "Readings".to_string(),
        Field::Spot(room, SpotField::Air | SpotField::WaterIn | SpotField::WaterOut) => {
            room_name(draft, room)
        }
        Field::Spot(room, _) => install::circuit_at(draft, room),
        Field::Surface(room, surface, _) => {
            format!("{}, {}", room_name(draft, room), surface_name(draft, room, surface))
        }
        Field::Opening(room, surface, opening, _) => format!(
            "{}, {}, {}",
            room_name(draft, room),
            surface_name(draft, room, surface),
            opening_name(draft, room, surface, opening)
        ),
    }
}

/// The range that a field takes.
pub fn bounds_hint(field: Field, system: System) -> String {
    let spec = field.spec();
    let at = |si| limit(Value::new(spec.kind, si), system);
    format!("{} to {}", at(spec.least), at(spec.most))
}

/// A bound, which is a round number in one system at least: without zeros that say nothing.
pub(crate) fn limit(value: Value, system: System) -> String {
    let mut shown = show(value, system);
    if shown.number.contains('.') {
        shown.number = shown.number.trim_end_matches('0').trim_end_matches('.').to_string();
    }
    crate::unbroken(&shown)
}
