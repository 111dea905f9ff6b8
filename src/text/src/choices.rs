//! Names of things that are chosen from a list.

use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::{
    AirClass, Assembly, OpenFlue, OpeningKind, Part, Shelter, Storeys, SurfaceKind,
};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Behind, Draft, FlowBasis, RatingBasis, UValue};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::System;

pub fn tube(tube: Tube) -> &'static str {
    match tube {
        Tube::CopperLHalf => "½ in copper, type L",
        Tube::CopperLThreeQuarter => "¾ in copper, type L",
        Tube::CopperLOne => "1 in copper, type L",
        Tube::CopperLOneAndQuarter => "1¼ in copper, type L",
        Tube::CopperMHalf => "½ in copper, type M",
        Tube::CopperMThreeQuarter => "¾ in copper, type M",
        Tube::CopperMOne => "1 in copper, type M",
        Tube::CopperMOneAndQuarter => "1¼ in copper, type M",
        Tube::PexHalf => "½ in PEX",
        Tube::PexThreeQuarter => "¾ in PEX",
        Tube::PexOne => "1 in PEX",
    }
}

pub fn surface_kind(kind: SurfaceKind) -> &'static str {
    match kind {
        SurfaceKind::Wall => "Wall",
        SurfaceKind::Ceiling => "Ceiling",
        SurfaceKind::Floor => "Floor",
    }
}

pub fn opening_kind(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::Window => "Window",
        OpeningKind::Door => "Door",
    }
}

pub fn part(part: Part) -> &'static str {
    match part {
        Part::Wall => "walls",
        Part::Window => "windows",
        Part::Door => "doors",
        Part::Ceiling => "ceiling",
        Part::Floor => "floor",
        Part::Air => "air",
    }
}

pub fn air_class(class: AirClass) -> &'static str {
    match class {
        AirClass::Tight => "Tight: new or carefully sealed, no draught felt in wind",
        AirClass::Average => "Average: fitted windows, some gaps",
        AirClass::Leaky => "Leaky: draughts near windows and baseboards in wind",
        AirClass::VeryLeaky => "Very leaky: curtains move when it blows",
    }
}

pub fn storeys(storeys: Storeys) -> &'static str {
    match storeys {
        Storeys::One => "One storey",
        Storeys::Two => "Two storeys",
        Storeys::Three => "Three storeys",
    }
}

/// What stands between the house and the wind.
pub fn shelter(shelter: Shelter) -> &'static str {
    match shelter {
        Shelter::Open => "Open: nothing around, such as a hilltop, a shore or plain fields",
        Shelter::Light => "Light: a house alone in the country, a few trees or sheds",
        Shelter::Moderate => "Moderate: other houses across the street",
        Shelter::Heavy => "Heavy: houses on every side, large lots in town",
        Shelter::VeryHeavy => "Very heavy: buildings right beside it, a row house or a dense block",
    }
}

pub fn open_flue(flue: OpenFlue) -> &'static str {
    match flue {
        OpenFlue::None => "No open chimney, or sealed combustion",
        OpenFlue::FireplaceDamperClosed => "Fireplace, damper kept closed",
        OpenFlue::FireplaceOpen => "Fireplace without a damper, or left open",
        OpenFlue::Flue => "Boiler or water heater with a draft hood in the heated space",
    }
}

pub fn assembly(assembly: Assembly) -> &'static str {
    use Assembly::*;
    match assembly {
        FrameWallEmpty => "Wood frame 2×4, no insulation",
        FrameWallR11 => "Wood frame 2×4, R-11 batt",
        FrameWallR13 => "Wood frame 2×4, R-13 batt",
        FrameWallR19 => "Wood frame 2×6, R-19 batt",
        FrameWallR21 => "Wood frame 2×6, R-21 batt",
        BrickWall => "Brick 8 in, air gap, plaster",
        BlockWall => "Hollow block 8 in, air gap, drywall",
        Partition => "Inside partition, drywall both sides",
        AtticCeilingEmpty => "Ceiling under attic, no insulation",
        AtticCeilingR11 => "Ceiling under attic, R-11",
        AtticCeilingR19 => "Ceiling under attic, R-19",
        AtticCeilingR30 => "Ceiling under attic, R-30",
        AtticCeilingR38 => "Ceiling under attic, R-38",
        AtticCeilingR49 => "Ceiling under attic, R-49",
        JoistFloorEmpty => "Wood floor on joists, no insulation",
        JoistFloorR11 => "Wood floor on joists, R-11",
        JoistFloorR19 => "Wood floor on joists, R-19",
        JoistFloorR30 => "Wood floor on joists, R-30",
        WindowWoodSingle => "Single glass, wood or vinyl frame",
        WindowWoodDouble => "Double glass, wood or vinyl frame",
        WindowMetalSingle => "Single glass, metal frame",
        WindowMetalDouble => "Double glass, metal frame",
        WindowLowE => "Low-e double glass, code maximum",
        DoorWood => "Wood door",
        DoorMetalInsulated => "Insulated metal door",
        DoorR5 => "Insulated door, R-5",
    }
}

/// Where a listed U comes from.
pub fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Layers => {
            "built up from its layers by ISO 6946, combined method; conductivities EN 12524"
        }
        Origin::IeccDefault => "IECC default table R303.1.3",
        Origin::IeccFromMemory => "IECC default table R303.1.3, from memory",
        Origin::StateCode => "Washington Administrative Code 51-11, prescriptive maximum",
    }
}

pub fn behind(draft: &Draft, behind: Behind) -> String {
    match behind {
        Behind::Outdoors => "Outdoors".to_string(),
        Behind::Unheated => "Unheated space or ground".to_string(),
        Behind::SameTemperature => "Heated, same temperature".to_string(),
        Behind::Room(id) => format!("Room: {}", super::room_name(draft, id)),
    }
}

/// The ways to give a U that are no listed assembly.
pub fn u_value_basis(value: UValue) -> &'static str {
    match value {
        UValue::Listed(listed) => assembly(listed),
        UValue::TypedU => "I know the U-value",
        UValue::TypedR => "I know the R-value",
    }
}

pub fn heating_effect(effect: HeatingEffect) -> &'static str {
    match effect {
        HeatingEffect::AsTyped => "Measured output, nothing added",
        HeatingEffect::CertifiedCredited => {
            "Certified, with 15 % heating effect: credit the room with it (usual)"
        }
        HeatingEffect::CertifiedStrict => {
            "Certified, with 15 % heating effect: take it off (stricter, 11 to 20 % longer)"
        }
        HeatingEffect::Unknown => "I don't know: taken as typed",
    }
}

pub fn rating_basis(basis: RatingBasis) -> &'static str {
    match basis {
        RatingBasis::Single => "One output, with an exponent",
        RatingBasis::Table => "A maker's table",
    }
}

pub fn flow_basis(basis: FlowBasis) -> &'static str {
    match basis {
        FlowBasis::FromDrop => "Follows from a chosen temperature drop",
        FlowBasis::Typed => "I know the flow",
    }
}

/// A listed assembly's U, its R and where they come from.
pub fn listed_u(assembly: Assembly, system: System) -> String {
    let u = assembly.transmittance();
    let r = crate::value(u.resistance(), system);
    format!("U {} · R {r} · {}", crate::value(u, system), origin(assembly.origin()))
}
