//! What each listed assembly's U rests on: layers, or a table.
//!
//! Batts take their label R. Which layers are typical is judgement throughout.

use super::{Assembly, Origin};
use crate::building::assembly::{Build, BuildLayer, Fill, Framing, Place, Position};
use crate::building::material::Material::{self, *};
use crate::quantity::{Length, Resistance, Unit};

pub(super) enum Basis {
    Layers(Recipe),
    /// Btu/h ft2 F, and where it stands.
    Table(f64, Origin),
}

/// A [`Build`] as data.
pub(super) struct Recipe {
    position: Position,
    framing: f64,
    layers: &'static [Row],
}

enum Row {
    /// A material over the whole area, and its thickness in m.
    Of(Material, f64),
    /// A label R, in ft2 F h/Btu, over the whole area.
    Label(f64),
    /// A label R between framing of this depth in m.
    Batt(f64, f64),
    /// A material between framing of this depth in m.
    Between(Material, f64),
}
use Row::*;

impl Recipe {
    pub(super) fn build(&self) -> Build {
        let layers = self.layers.iter().map(Row::layer).collect();
        Build { position: self.position, layers, framing: self.framing }
    }
}

impl Row {
    fn layer(&self) -> BuildLayer {
        let label = |r| Fill::Typed(Resistance::of(r, Unit::UsR));
        let (fill, thickness_m, place) = match *self {
            Of(material, thickness_m) => (Fill::Material(material), thickness_m, Place::Through),
            Label(r) => (label(r), 0.0, Place::Through),
            Batt(r, depth_m) => (label(r), depth_m, Place::BetweenFraming),
            Between(material, depth_m) => {
                (Fill::Material(material), depth_m, Place::BetweenFraming)
            }
        };
        BuildLayer { fill, thickness: Length::from_si(thickness_m), place }
    }
}

const STUD_4: f64 = 0.0889; // a 2 x 4 is 3 1/2 in deep
const STUD_6: f64 = 0.1397; // a 2 x 6 is 5 1/2 in deep
const JOIST: f64 = 0.235; // a 2 x 10 is 9 1/4 in deep
const BATT_7: f64 = 0.0572; // an R-7 batt is 2 1/4 in thick, from memory
const BATT_19: f64 = 0.159; // an R-19 batt is 6 1/4 in thick, from memory
const BATT_30: f64 = 0.21; // a dense R-30 batt is 8 1/4 in thick, from memory

const DRYWALL: Row = Of(GypsumBoard, 0.0127);
/// Wood siding and plywood sheathing of half an inch each.
const SIDING: Row = Of(Softwood, 0.0127);
const SHEATHING: Row = Of(Plywood, 0.0127);
const AIR_GAP: Row = Of(AirCavity, 0.0254);
const SHINGLES: Row = Of(AsphaltShingles, 0.0);
/// Boards of 3/4 in.
const BOARDS: Row = Of(Softwood, 0.019);
const STONE: Row = Of(Limestone, 0.457);
const FOUNDATION: Row = Of(Concrete, 0.203);
const SLAB: Row = Of(Concrete, 0.102);

const fn framed(position: Position, framing: Framing, layers: &'static [Row]) -> Basis {
    Basis::Layers(Recipe { position, framing: framing.share(), layers })
}

const fn frame_wall(layers: &'static [Row]) -> Basis {
    framed(Position::Wall, Framing::StandardWall, layers)
}

const fn solid(position: Position, layers: &'static [Row]) -> Basis {
    framed(position, Framing::None, layers)
}

/// A plasterboard ceiling under a ventilated attic: insulation first fills between 2 x 6 joists,
/// then lies over them.
const fn attic(layers: &'static [Row]) -> Basis {
    framed(Position::Ceiling, Framing::CeilingJoists, layers)
}

/// A sloped ceiling with a vented gap over the batt: what is beyond moving air does not count (ISO
/// 6946, well ventilated).
const fn vented_rafters(layers: &'static [Row]) -> Basis {
    framed(Position::Ceiling, Framing::RoofRafters, layers)
}

/// Boards and plywood on joists, open below.
const fn joist_floor(layers: &'static [Row]) -> Basis {
    framed(Position::Floor, Framing::FloorJoists, layers)
}

pub(super) const fn basis(assembly: Assembly) -> Basis {
    use Assembly::*;
    use Basis::Table;
    match assembly {
        FrameWallEmpty => frame_wall(&[SIDING, SHEATHING, Between(AirCavity, STUD_4), DRYWALL]),
        // The batt is thinner than the studs: the rest is air.
        FrameWallR7 => frame_wall(&[
            SIDING,
            SHEATHING,
            Between(AirCavity, STUD_4 - BATT_7),
            Batt(7.0, BATT_7),
            DRYWALL,
        ]),
        FrameWallR11 => frame_wall(&[SIDING, SHEATHING, Batt(11.0, STUD_4), DRYWALL]),
        FrameWallBlown => frame_wall(&[SIDING, SHEATHING, Between(Cellulose, STUD_4), DRYWALL]),
        FrameWallR13 => frame_wall(&[SIDING, SHEATHING, Batt(13.0, STUD_4), DRYWALL]),
        FrameWallR13R5 => frame_wall(&[SIDING, Label(5.0), SHEATHING, Batt(13.0, STUD_4), DRYWALL]),
        FrameWallR19 => frame_wall(&[SIDING, SHEATHING, Batt(19.0, STUD_6), DRYWALL]),
        FrameWallR19R5 => frame_wall(&[SIDING, Label(5.0), SHEATHING, Batt(19.0, STUD_6), DRYWALL]),
        FrameWallR21 => frame_wall(&[SIDING, SHEATHING, Batt(21.0, STUD_6), DRYWALL]),
        BrickVeneerR11 => frame_wall(&[
            Of(Brick, 0.092),
            AIR_GAP,
            Of(Fiberboard, 0.0127),
            Batt(11.0, STUD_4),
            DRYWALL,
        ]),
        BrickWall => solid(Position::Wall, &[Of(Brick, 0.203), AIR_GAP, Of(GypsumPlaster, 0.019)]),
        BrickWall12 => {
            solid(Position::Wall, &[Of(Brick, 0.305), AIR_GAP, Of(GypsumPlaster, 0.019)])
        }
        StoneWall18 => solid(Position::Wall, &[STONE, Of(LimePlaster, 0.019)]),
        BlockWall => solid(Position::Wall, &[Of(HollowBlock8, 0.203), AIR_GAP, DRYWALL]),
        // A round log of 8 in is some 7 in thick in the mean (judgement).
        LogWall8 => solid(Position::Wall, &[Of(Softwood, 0.178)]),
        // Splines and plates are some 5 % of the area (judgement).
        SipWall6 => Basis::Layers(Recipe {
            position: Position::Wall,
            framing: 0.05,
            layers: &[SIDING, Of(Osb, 0.0111), Between(Eps, STUD_6), Of(Osb, 0.0111), DRYWALL],
        }),
        Partition => framed(
            Position::Partition,
            Framing::StandardWall,
            &[DRYWALL, Between(AirCavity, STUD_4), DRYWALL],
        ),
        GarageWallR11 => framed(
            Position::Partition,
            Framing::StandardWall,
            &[DRYWALL, Batt(11.0, STUD_4), DRYWALL],
        ),
        StudWallBare => solid(Position::Wall, &[SIDING, SHEATHING]),

        // An empty one still has the still air above it.
        AtticCeilingEmpty => solid(Position::Ceiling, &[DRYWALL]),
        AtticCeilingR11 => attic(&[DRYWALL, Batt(11.0, STUD_6)]),
        AtticCeilingR19 => attic(&[DRYWALL, Batt(19.0, STUD_6)]),
        AtticCeilingR30 => attic(&[DRYWALL, Batt(19.0, STUD_6), Label(11.0)]),
        AtticCeilingR38 => attic(&[DRYWALL, Batt(19.0, STUD_6), Label(19.0)]),
        AtticCeilingR49 => attic(&[DRYWALL, Batt(19.0, STUD_6), Label(30.0)]),
        AtticCeilingR60 => attic(&[DRYWALL, Batt(19.0, STUD_6), Label(41.0)]),
        CathedralEmpty => framed(
            Position::Roof,
            Framing::RoofRafters,
            &[DRYWALL, Between(AirCavity, STUD_6), SHEATHING, SHINGLES],
        ),
        CathedralR19 => vented_rafters(&[DRYWALL, Batt(19.0, BATT_19)]),
        CathedralR30 => vented_rafters(&[DRYWALL, Batt(30.0, BATT_30)]),
        // Rigid insulation on the deck.
        FlatRoofR20 => framed(
            Position::Roof,
            Framing::FloorJoists,
            &[DRYWALL, Between(AirCavity, JOIST), BOARDS, Label(20.0), Of(RollRoofing, 0.0095)],
        ),

        JoistFloorEmpty => joist_floor(&[BOARDS, SHEATHING, Between(AirCavity, JOIST)]),
        JoistFloorR11 => joist_floor(&[BOARDS, SHEATHING, Batt(11.0, JOIST)]),
        JoistFloorR19 => joist_floor(&[BOARDS, SHEATHING, Batt(19.0, JOIST)]),
        JoistFloorR30 => joist_floor(&[BOARDS, SHEATHING, Batt(30.0, JOIST)]),

        WindowWoodSingle => Table(0.95, Origin::IeccDefault),
        WindowStorm => Table(0.50, Origin::FromMemory),
        WindowWoodDouble => Table(0.55, Origin::IeccDefault),
        WindowMetalSingle => Table(1.20, Origin::IeccDefault),
        WindowMetalDouble => Table(0.80, Origin::IeccDefault),
        WindowMetalBreak => Table(0.65, Origin::IeccDefault),
        WindowLowE => Table(0.30, Origin::StateCode),
        WindowTriple => Table(0.38, Origin::FromMemory),
        WindowTripleLowE => Table(0.20, Origin::CommonPractice),
        GlassBlock => Table(0.60, Origin::IeccFromMemory),
        SkylightDouble => Table(1.05, Origin::IeccDefault),
        SkylightMetalDouble => Table(1.30, Origin::IeccDefault),
        SkylightLowE => Table(0.50, Origin::StateCode),

        DoorWood => Table(0.50, Origin::IeccFromMemory),
        DoorMetal => Table(1.20, Origin::IeccFromMemory),
        DoorMetalInsulated => Table(0.60, Origin::IeccFromMemory),
        DoorFiberglass => Table(0.35, Origin::IeccFromMemory),
        DoorR5 => Table(0.20, Origin::StateCode),
        // A door of glass counts as glazing.
        PatioDoorDouble => Table(0.55, Origin::IeccDefault),
        PatioDoorMetal => Table(0.80, Origin::IeccDefault),

        GarageDoorMetal => Table(1.20, Origin::IeccFromMemory),
        GarageDoorInsulated => Table(0.60, Origin::IeccFromMemory),

        SlabBare => solid(Position::Slab, &[SLAB]),
        SlabR5 => solid(Position::Slab, &[SLAB, Label(5.0)]),
        SlabR10 => solid(Position::Slab, &[SLAB, Label(10.0)]),

        BasementConcrete => solid(Position::GroundWall, &[FOUNDATION]),
        BasementConcreteR5 => solid(Position::GroundWall, &[FOUNDATION, Label(5.0)]),
        BasementConcreteR10 => solid(Position::GroundWall, &[FOUNDATION, Label(10.0)]),
        BasementConcreteR13 => framed(
            Position::GroundWall,
            Framing::StandardWall,
            &[FOUNDATION, Batt(13.0, STUD_4), DRYWALL],
        ),
        BasementBlock => solid(Position::GroundWall, &[Of(HollowBlock8, 0.203)]),
        BasementStone => solid(Position::GroundWall, &[STONE]),

        RoofDeck => solid(Position::Roof, &[SHEATHING, SHINGLES]),
    }
}
