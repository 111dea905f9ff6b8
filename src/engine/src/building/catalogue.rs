//! The starter list: typical assemblies to pick from, each with its U and where it comes from.

mod basis;

use super::assembly::Build;
use crate::named::{Named, stored_by_name};
use crate::quantity::{Transmittance, Unit};
use basis::{Basis, basis};
use serde::Serialize;

/// Where an assembly is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Used {
    Wall,
    /// A room's ceiling, with the roof where they are one.
    Ceiling,
    Floor,
    /// Also a skylight.
    Window,
    Door,
    GarageDoor,
    /// A floor on the ground, also of a basement.
    Slab,
    /// A wall against the ground.
    BasementWall,
    /// The roof over an unheated attic.
    Roof,
}

/// Where a listed value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum Origin {
    /// Built up from layers by ISO 6946, combined method.
    Layers,
    /// IECC default tables R303.1.3, as adopted in state law; read.
    IeccDefault,
    /// IECC default tables R303.1.3, from memory.
    IeccFromMemory,
    /// Washington Administrative Code 51-11, prescriptive maximum; read.
    StateCode,
    /// EN 12524:2000, read as an open library prints it.
    MaterialStandard,
    /// Spans printed on public pages, of which one names the U.S. Department of Energy; read.
    InsulationPages,
    /// Handbook tables, from memory.
    FromMemory,
    /// Common practice, no source.
    CommonPractice,
}

/// Declares the assemblies with their stored names, by where they are used.
macro_rules! assemblies {
    ($($used:ident: [$($name:ident = $text:literal),+ $(,)?]),+ $(,)?) => {
        /// A typical assembly.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Assembly { $($($name),+),+ }

        impl Named for Assembly {
            const ALL: &'static [Assembly] = &[$($(Assembly::$name),+),+];
            fn name(self) -> &'static str {
                match self { $($(Assembly::$name => $text),+),+ }
            }
        }
        stored_by_name!(Assembly);

        impl Assembly {
            pub fn used(self) -> Used {
                match self { $($(Assembly::$name)|+ => Used::$used),+ }
            }
        }
    };
}

assemblies! {
    Wall: [
        FrameWallEmpty = "frame-wall-empty",
        FrameWallR7 = "frame-wall-r7",
        FrameWallR11 = "frame-wall-r11",
        FrameWallBlown = "frame-wall-blown",
        FrameWallR13 = "frame-wall-r13",
        FrameWallR13R5 = "frame-wall-r13-r5",
        FrameWallR19 = "frame-wall-r19",
        FrameWallR19R5 = "frame-wall-r19-r5",
        FrameWallR21 = "frame-wall-r21",
        BrickVeneerR11 = "brick-veneer-r11",
        BrickWall = "brick-wall",
        BrickWall12 = "brick-wall-12",
        StoneWall18 = "stone-wall-18",
        BlockWall = "block-wall",
        LogWall8 = "log-wall-8",
        SipWall6 = "sip-wall-6",
        Partition = "partition",
        GarageWallR11 = "garage-wall-r11",
        StudWallBare = "stud-wall-bare",
    ],
    Ceiling: [
        AtticCeilingEmpty = "attic-ceiling-empty",
        AtticCeilingR11 = "attic-ceiling-r11",
        AtticCeilingR19 = "attic-ceiling-r19",
        AtticCeilingR30 = "attic-ceiling-r30",
        AtticCeilingR38 = "attic-ceiling-r38",
        AtticCeilingR49 = "attic-ceiling-r49",
        AtticCeilingR60 = "attic-ceiling-r60",
        CathedralEmpty = "cathedral-empty",
        CathedralR19 = "cathedral-r19",
        CathedralR30 = "cathedral-r30",
        FlatRoofR20 = "flat-roof-r20",
    ],
    Floor: [
        JoistFloorEmpty = "joist-floor-empty",
        JoistFloorR11 = "joist-floor-r11",
        JoistFloorR19 = "joist-floor-r19",
        JoistFloorR30 = "joist-floor-r30",
    ],
    Window: [
        WindowWoodSingle = "window-wood-single",
        WindowStorm = "window-storm",
        WindowWoodDouble = "window-wood-double",
        WindowMetalSingle = "window-metal-single",
        WindowMetalDouble = "window-metal-double",
        WindowMetalBreak = "window-metal-break",
        WindowLowE = "window-low-e",
        WindowTriple = "window-triple",
        WindowTripleLowE = "window-triple-low-e",
        GlassBlock = "glass-block",
        SkylightDouble = "skylight-double",
        SkylightMetalDouble = "skylight-metal-double",
        SkylightLowE = "skylight-low-e",
    ],
    Door: [
        DoorWood = "door-wood",
        DoorMetal = "door-metal",
        DoorMetalInsulated = "door-metal-insulated",
        DoorFiberglass = "door-fiberglass",
        DoorR5 = "door-r5",
        PatioDoorDouble = "patio-door-double",
        PatioDoorMetal = "patio-door-metal",
    ],
    GarageDoor: [
        GarageDoorMetal = "garage-door-metal",
        GarageDoorInsulated = "garage-door-insulated",
    ],
    Slab: [
        SlabBare = "slab-bare",
        SlabR5 = "slab-r5",
        SlabR10 = "slab-r10",
    ],
    BasementWall: [
        BasementConcrete = "basement-concrete",
        BasementConcreteR5 = "basement-concrete-r5",
        BasementConcreteR10 = "basement-concrete-r10",
        BasementConcreteR13 = "basement-concrete-r13",
        BasementBlock = "basement-block",
        BasementStone = "basement-stone",
    ],
    Roof: [
        RoofDeck = "roof-deck",
    ],
}

impl Assembly {
    /// Those used in one place, in the order of the list.
    pub fn used_in(used: Used) -> impl Iterator<Item = Assembly> {
        <Assembly as Named>::ALL.iter().copied().filter(move |a| a.used() == used)
    }

    /// U with its films: on both sides, also towards the ground.
    pub fn transmittance(self) -> Transmittance {
        match basis(self) {
            Basis::Layers(recipe) => recipe.build().transmittance(),
            Basis::Table(value, _) => Transmittance::of(value, Unit::UsU),
        }
    }

    /// The layers behind the U, where it is built up from them.
    pub fn build(self) -> Option<Build> {
        match basis(self) {
            Basis::Layers(recipe) => Some(recipe.build()),
            Basis::Table(..) => None,
        }
    }

    pub fn origin(self) -> Origin {
        match basis(self) {
            Basis::Layers(_) => Origin::Layers,
            Basis::Table(_, origin) => origin,
        }
    }
}
