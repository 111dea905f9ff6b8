//! The starter list: typical assemblies to pick from, each with its U and where it comes from.
//!
//! Opaque assemblies are built up by ISO 6946 from the layers below. Conductivities are those of
//! EN 12524:2000 (timber 0.13, plywood 0.13, gypsum plasterboard 0.25, plaster 0.40 W/m K; hollow
//! block and brick from memory). Batts take their label R. Framing shares: walls 23 % (studs,
//! plates and headers, Washington Administrative Code 51-11-1005), ceilings 7 % and floors 10 %
//! from memory.

use super::assembly::{HeatFlow, Layer, OUTSIDE_FILM, combined};
use crate::named::{Named, stored_by_name};
use crate::quantity::{Conductivity, Length, Resistance, Transmittance, Unit};
use serde::Serialize;

/// Where an assembly is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Used {
    Wall,
    Ceiling,
    Floor,
    Window,
    Door,
}

/// Where a listed U comes from.
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
}

/// Declares the assemblies with their stored names.
macro_rules! assemblies {
    ($($name:ident = $text:literal),+ $(,)?) => {
        /// A typical assembly.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Assembly { $($name),+ }

        impl Named for Assembly {
            const ALL: &'static [Assembly] = &[$(Assembly::$name),+];
            fn name(self) -> &'static str {
                match self { $(Assembly::$name => $text),+ }
            }
        }
        stored_by_name!(Assembly);
    };
}

assemblies! {
    FrameWallEmpty = "frame-wall-empty",
    FrameWallR11 = "frame-wall-r11",
    FrameWallR13 = "frame-wall-r13",
    FrameWallR19 = "frame-wall-r19",
    FrameWallR21 = "frame-wall-r21",
    BrickWall = "brick-wall",
    BlockWall = "block-wall",
    Partition = "partition",
    AtticCeilingEmpty = "attic-ceiling-empty",
    AtticCeilingR11 = "attic-ceiling-r11",
    AtticCeilingR19 = "attic-ceiling-r19",
    AtticCeilingR30 = "attic-ceiling-r30",
    AtticCeilingR38 = "attic-ceiling-r38",
    AtticCeilingR49 = "attic-ceiling-r49",
    JoistFloorEmpty = "joist-floor-empty",
    JoistFloorR11 = "joist-floor-r11",
    JoistFloorR19 = "joist-floor-r19",
    JoistFloorR30 = "joist-floor-r30",
    WindowWoodSingle = "window-wood-single",
    WindowWoodDouble = "window-wood-double",
    WindowMetalSingle = "window-metal-single",
    WindowMetalDouble = "window-metal-double",
    WindowLowE = "window-low-e",
    DoorWood = "door-wood",
    DoorMetalInsulated = "door-metal-insulated",
    DoorR5 = "door-r5",
}

impl Assembly {
    /// Those used in one place, in the order of the list.
    pub fn used_in(used: Used) -> impl Iterator<Item = Assembly> {
        <Assembly as Named>::ALL.iter().copied().filter(move |a| a.used() == used)
    }

    pub fn used(self) -> Used {
        use Assembly::*;
        match self {
            FrameWallEmpty | FrameWallR11 | FrameWallR13 | FrameWallR19 | FrameWallR21
            | BrickWall | BlockWall | Partition => Used::Wall,
            AtticCeilingEmpty | AtticCeilingR11 | AtticCeilingR19 | AtticCeilingR30
            | AtticCeilingR38 | AtticCeilingR49 => Used::Ceiling,
            JoistFloorEmpty | JoistFloorR11 | JoistFloorR19 | JoistFloorR30 => Used::Floor,
            WindowWoodSingle | WindowWoodDouble | WindowMetalSingle | WindowMetalDouble
            | WindowLowE => Used::Window,
            DoorWood | DoorMetalInsulated | DoorR5 => Used::Door,
        }
    }

    /// Air-to-air U with its films.
    pub fn transmittance(self) -> Transmittance {
        use Assembly::*;
        match self {
            FrameWallEmpty => frame_wall(STUD_4, AIR_SPACE),
            FrameWallR11 => frame_wall(STUD_4, label_r(11.0)),
            FrameWallR13 => frame_wall(STUD_4, label_r(13.0)),
            FrameWallR19 => frame_wall(STUD_6, label_r(19.0)),
            FrameWallR21 => frame_wall(STUD_6, label_r(21.0)),
            BrickWall => wall(&[solid(0.203, BRICK), AIR_GAP_LAYER, solid(0.019, PLASTER)]),
            BlockWall => wall(&[Layer::Even(HOLLOW_BLOCK), AIR_GAP_LAYER, GYPSUM]),
            Partition => combined(
                &[GYPSUM, framed(STUD_4, AIR_SPACE), GYPSUM],
                WALL_FRAMING,
                HeatFlow::Horizontal.inside_film(),
                HeatFlow::Horizontal.inside_film(),
            ),
            AtticCeilingEmpty => attic(0.0),
            AtticCeilingR11 => attic(11.0),
            AtticCeilingR19 => attic(19.0),
            AtticCeilingR30 => attic(30.0),
            AtticCeilingR38 => attic(38.0),
            AtticCeilingR49 => attic(49.0),
            JoistFloorEmpty => joist_floor(AIR_SPACE_DOWN),
            JoistFloorR11 => joist_floor(label_r(11.0)),
            JoistFloorR19 => joist_floor(label_r(19.0)),
            JoistFloorR30 => joist_floor(label_r(30.0)),
            WindowWoodSingle => us_u(0.95),
            WindowWoodDouble => us_u(0.55),
            WindowMetalSingle => us_u(1.20),
            WindowMetalDouble => us_u(0.80),
            WindowLowE => us_u(0.30),
            DoorWood => us_u(0.50),
            DoorMetalInsulated => us_u(0.60),
            DoorR5 => us_u(0.20),
        }
    }

    pub fn origin(self) -> Origin {
        use Assembly::*;
        match self {
            WindowWoodSingle | WindowWoodDouble | WindowMetalSingle | WindowMetalDouble => {
                Origin::IeccDefault
            }
            DoorWood | DoorMetalInsulated => Origin::IeccFromMemory,
            WindowLowE | DoorR5 => Origin::StateCode,
            _ => Origin::Layers,
        }
    }
}

const TIMBER: f64 = 0.13;
const BRICK: f64 = 0.77; // W/m K, from memory
const PLASTER: f64 = 0.40;
const STUD_4: f64 = 0.0889; // a 2 x 4 is 3 1/2 in deep
const STUD_6: f64 = 0.1397; // a 2 x 6 is 5 1/2 in deep
const JOIST: f64 = 0.235; // a 2 x 10 is 9 1/4 in deep
const WALL_FRAMING: f64 = 0.23;
const CEILING_FRAMING: f64 = 0.07;
const FLOOR_FRAMING: f64 = 0.10;

/// Unventilated air space of 25 mm and more (ISO 6946, from memory): horizontal and downward flow.
const AIR_SPACE: Resistance = Resistance::from_si(0.18);
const AIR_SPACE_DOWN: Resistance = Resistance::from_si(0.21);
const AIR_GAP_LAYER: Layer = Layer::Even(AIR_SPACE);
/// Plasterboard of half an inch.
const GYPSUM: Layer = Layer::Even(Resistance::from_si(0.0127 / 0.25));
/// Plywood sheathing of half an inch, and wood siding of the same.
const SHEATHING: Layer = Layer::Even(Resistance::from_si(0.0127 / TIMBER));
/// Hollow concrete block of 8 in, from memory.
const HOLLOW_BLOCK: Resistance = Resistance::from_si(0.20);

fn us_u(value: f64) -> Transmittance {
    Transmittance::of(value, Unit::UsU)
}

fn label_r(value: f64) -> Resistance {
    Resistance::of(value, Unit::UsR)
}

fn solid(thickness_m: f64, conductivity: f64) -> Layer {
    Layer::solid(Length::from_si(thickness_m), Conductivity::from_si(conductivity))
}

fn framed(depth_m: f64, cavity: Resistance) -> Layer {
    Layer::Framed { cavity, framing: Resistance::from_si(depth_m / TIMBER) }
}

fn wall(layers: &[Layer]) -> Transmittance {
    combined(layers, WALL_FRAMING, HeatFlow::Horizontal.inside_film(), OUTSIDE_FILM)
}

fn frame_wall(depth_m: f64, cavity: Resistance) -> Transmittance {
    wall(&[SHEATHING, SHEATHING, framed(depth_m, cavity), GYPSUM])
}

/// A plasterboard ceiling under a ventilated attic; insulation first fills between 2 x 6 joists,
/// then lies over them. An empty one still has the still air above it: the inside film twice.
fn attic(label: f64) -> Transmittance {
    let film = HeatFlow::Upward.inside_film();
    let between = label.min(19.0);
    let layers = [GYPSUM, framed(STUD_6, label_r(between)), Layer::Even(label_r(label - between))];
    match label > 0.0 {
        true => combined(&layers, CEILING_FRAMING, film, film),
        false => combined(&[GYPSUM], 0.0, film, film),
    }
}

/// Boards of 3/4 in and plywood of 1/2 in on joists, open below.
fn joist_floor(cavity: Resistance) -> Transmittance {
    let film = HeatFlow::Downward.inside_film();
    let boards = solid(0.019, TIMBER);
    combined(&[boards, SHEATHING, framed(JOIST, cavity)], FLOOR_FRAMING, film, film)
}
