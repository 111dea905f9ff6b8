//! Names of things that are chosen from a list.

use finrun_engine::building::assembly::Position;
use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::{
    AirClass, Assembly, Framing, Material, OpenFlue, OpeningKind, Part, RoomUse, Shelter, Storeys,
    SurfaceKind,
};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Behind, Draft, FlowBasis, RatingBasis, UValue};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{System, Transmittance};

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
        Part::Ground => "ground",
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

/// How it is built, with the years in which that was usual where they help to choose (judgement).
pub fn assembly(assembly: Assembly) -> &'static str {
    use Assembly::*;
    match assembly {
        FrameWallEmpty => "Wood frame 2×4, no insulation (before 1950)",
        FrameWallR7 => "Wood frame 2×4, R-7 batt (1950s, 60s)",
        FrameWallR11 => "Wood frame 2×4, R-11 batt (1970s, 80s)",
        FrameWallBlown => "Wood frame 2×4, blown-in cellulose (old wall, filled later)",
        FrameWallR13 => "Wood frame 2×4, R-13 batt",
        FrameWallR13R5 => "Wood frame 2×4, R-13 batt, R-5 foam outside",
        FrameWallR19 => "Wood frame 2×6, R-19 batt",
        FrameWallR19R5 => "Wood frame 2×6, R-19 batt, R-5 foam outside",
        FrameWallR21 => "Wood frame 2×6, R-21 batt",
        BrickVeneerR11 => "Brick veneer on 2×4 frame, R-11 batt (1970s, 80s)",
        BrickWall => "Brick 8 in, air gap, plaster",
        BrickWall12 => "Brick 12 in, air gap, plaster (before 1930)",
        StoneWall18 => "Stone 18 in, plaster",
        BlockWall => "Hollow block 8 in, air gap, drywall",
        LogWall8 => "Log 8 in, bare",
        SipWall6 => "Foam-core panel (SIP) 6½ in",
        Partition => "Inside partition, drywall both sides",
        GarageWallR11 => "Wall to garage, 2×4 with R-11, drywall both sides",
        StudWallBare => "Siding on bare studs, no drywall (gable, garage, porch)",
        AtticCeilingEmpty => "Ceiling under attic, no insulation",
        AtticCeilingR11 => "Ceiling under attic, R-11",
        AtticCeilingR19 => "Ceiling under attic, R-19",
        AtticCeilingR30 => "Ceiling under attic, R-30",
        AtticCeilingR38 => "Ceiling under attic, R-38",
        AtticCeilingR49 => "Ceiling under attic, R-49",
        AtticCeilingR60 => "Ceiling under attic, R-60",
        CathedralEmpty => "Sloped ceiling under roof, no insulation (before 1950)",
        CathedralR19 => "Sloped (cathedral) ceiling, R-19",
        CathedralR30 => "Sloped (cathedral) ceiling, R-30",
        FlatRoofR20 => "Flat roof, R-20 board on the deck",
        JoistFloorEmpty => "Wood floor on joists, no insulation",
        JoistFloorR11 => "Wood floor on joists, R-11",
        JoistFloorR19 => "Wood floor on joists, R-19",
        JoistFloorR30 => "Wood floor on joists, R-30",
        WindowWoodSingle => "Single glass, wood or vinyl frame",
        WindowStorm => "Single glass with storm window, wood frame",
        WindowWoodDouble => "Double glass, wood or vinyl frame",
        WindowMetalSingle => "Single glass, metal frame",
        WindowMetalDouble => "Double glass, metal frame",
        WindowMetalBreak => "Double glass, metal frame with thermal break",
        WindowLowE => "Low-e double glass, code maximum",
        WindowTriple => "Triple glass, clear",
        WindowTripleLowE => "Triple glass, low-e",
        GlassBlock => "Glass block",
        SkylightDouble => "Skylight, double, wood or vinyl frame",
        SkylightMetalDouble => "Skylight, double, metal frame",
        SkylightLowE => "Skylight, low-e, code maximum",
        DoorWood => "Wood door",
        DoorMetal => "Metal door, no insulation",
        DoorMetalInsulated => "Insulated metal door",
        DoorFiberglass => "Insulated fiberglass or wood door",
        DoorR5 => "Insulated door, R-5",
        PatioDoorDouble => "Glass patio door, double, wood or vinyl frame",
        PatioDoorMetal => "Glass patio door, double, metal frame",
        GarageDoorMetal => "Garage door, no insulation",
        GarageDoorInsulated => "Garage door, insulated",
        SlabBare => "Concrete slab 4 in, no insulation",
        SlabR5 => "Concrete slab 4 in, R-5 under it",
        SlabR10 => "Concrete slab 4 in, R-10 under it",
        BasementConcrete => "Poured concrete 8 in, bare",
        BasementConcreteR5 => "Poured concrete 8 in, R-5 foam",
        BasementConcreteR10 => "Poured concrete 8 in, R-10 foam",
        BasementConcreteR13 => "Poured concrete 8 in, 2×4 studs with R-13, drywall",
        BasementBlock => "Hollow block 8 in, bare",
        BasementStone => "Stone 18 in, bare (before 1920)",
        RoofDeck => "Roof deck with shingles, no insulation",
    }
}

/// Where a listed value comes from.
pub fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Layers => {
            "built up from its layers by ISO 6946, combined method; conductivities EN 12524"
        }
        Origin::IeccDefault => "IECC default table R303.1.3",
        Origin::IeccFromMemory => "IECC default table R303.1.3, from memory",
        Origin::StateCode => "Washington Administrative Code 51-11, prescriptive maximum",
        Origin::MaterialStandard => "EN 12524:2000",
        Origin::InsulationPages => "usual R per inch, printed on public pages",
        Origin::FromMemory => "handbook tables, from memory",
        Origin::CommonPractice => "common practice, no source",
    }
}

pub fn material(material: Material) -> &'static str {
    use Material::*;
    match material {
        GypsumBoard => "Drywall (gypsum board)",
        GypsumPlaster => "Gypsum plaster",
        LimePlaster => "Lime plaster",
        Softwood => "Softwood (pine, spruce, fir)",
        Hardwood => "Hardwood (oak, maple)",
        Plywood => "Plywood",
        Osb => "OSB",
        Particleboard => "Particleboard",
        Fiberboard => "Fiberboard sheathing",
        Hardboard => "Hardboard",
        CementBoard => "Cement board",
        VinylSiding => "Vinyl or aluminum siding",
        Stucco => "Stucco",
        Brick => "Brick",
        HollowBlock8 => "Hollow concrete block, 8 in",
        HollowBlock12 => "Hollow concrete block, 12 in",
        Concrete => "Concrete",
        LightConcrete => "Lightweight concrete",
        Granite => "Granite or fieldstone",
        Limestone => "Limestone",
        Sandstone => "Sandstone",
        FiberglassBatt => "Fiberglass batt",
        FiberglassDenseBatt => "Fiberglass batt, high density",
        FiberglassLoose => "Fiberglass, loose fill",
        MineralWoolLoose => "Mineral (rock) wool, loose fill",
        Cellulose => "Cellulose, blown in",
        Vermiculite => "Vermiculite or perlite (old vermiculite may hold asbestos)",
        Eps => "Expanded polystyrene board (EPS, white)",
        Xps => "Extruded polystyrene board (XPS, blue or pink)",
        Polyiso => "Polyiso board",
        OpenCellFoam => "Spray foam, open cell",
        ClosedCellFoam => "Spray foam, closed cell",
        AirCavity => "Air space, 1 in or more",
        Carpet => "Carpet",
        CarpetPad => "Carpet pad",
        Linoleum => "Linoleum",
        VinylFloor => "Vinyl flooring",
        CeramicTile => "Ceramic tile",
        AsphaltShingles => "Asphalt shingles",
        RollRoofing => "Roll roofing or felt",
    }
}

/// How much of an assembly is wood.
pub fn framing(framing: Framing) -> &'static str {
    match framing {
        Framing::None => "No framing",
        Framing::StandardWall => "Studs 16 in on center",
        Framing::IntermediateWall => "Studs 16 in on center, insulated corners and headers",
        Framing::AdvancedWall => "Studs 24 in on center, insulated corners and headers",
        Framing::CeilingJoists => "Ceiling joists, insulation over them",
        Framing::FloorJoists => "Floor joists",
        Framing::RoofRafters => "Rafters",
    }
}

/// Where an assembly stands.
pub fn position(position: Position) -> &'static str {
    match position {
        Position::Wall => "Wall to outdoors",
        Position::Partition => "Wall to another space",
        Position::Ceiling => "Ceiling under an attic or a vented roof",
        Position::Roof => "Ceiling and roof in one",
        Position::Floor => "Floor over an unheated space",
        Position::Slab => "Floor on the ground",
        Position::GroundWall => "Wall against the ground",
    }
}

pub fn behind(draft: &Draft, behind: Behind) -> String {
    match behind {
        Behind::Outdoors => "Outdoors".to_string(),
        Behind::Ground => "Ground".to_string(),
        Behind::Unheated => "Unheated, temperature known or guessed".to_string(),
        Behind::SameTemperature => "Heated, same temperature".to_string(),
        Behind::Room(id) => match draft.room(id) {
            Some(room) if room.used == RoomUse::Heated => {
                format!("Room: {}", super::room_name(draft, id))
            }
            // A space by its name, and a room that is gone.
            _ => super::room_name(draft, id),
        },
    }
}

/// The ways to give a U that are no listed assembly.
pub fn u_value_basis(value: UValue) -> &'static str {
    match value {
        UValue::Listed(listed) => assembly(listed),
        UValue::Own(_) => "An assembly of your own",
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
        FlowBasis::FromPump => "By the circulator's curve",
        FlowBasis::Typed => "I know the flow",
    }
}

/// A listed assembly's U, its R and where they come from.
pub fn listed_u(assembly: Assembly, system: System) -> String {
    let u = assembly.transmittance();
    let r = crate::value(u.resistance(), system);
    format!("U {} · R {r} · {}", crate::value(u, system), origin(assembly.origin()))
}

/// The U and R of an assembly of the user's own.
pub fn own_u(u: Transmittance, system: System) -> String {
    format!("U {} · R {}", crate::value(u, system), crate::value(u.resistance(), system))
}
