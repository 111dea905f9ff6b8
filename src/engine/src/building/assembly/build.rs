//! An assembly as it is built: layers of materials, between framing or through.

use super::{HeatFlow, Layer, OUTSIDE_FILM, combined};
use crate::building::material::Material;
use crate::named::names;
use crate::quantity::{Length, Resistance, Transmittance};

/// Layers from one side to the other; their order changes nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct Build {
    pub position: Position,
    pub layers: Vec<BuildLayer>,
    /// Share of the area, 0 to 1, that is studs, joists or rafters.
    pub framing: f64,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BuildLayer {
    pub fill: Fill,
    /// Between framing this is also the depth of the wood; a typed R or a fixed one has no other
    /// use for it.
    pub thickness: Length,
    pub place: Place,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fill {
    Material(Material),
    /// A resistance that is known, such as a batt's label.
    Typed(Resistance),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Over the whole area.
    Through,
    /// Interrupted by wood of the same depth.
    BetweenFraming,
}

impl Build {
    /// U with its films.
    pub fn transmittance(&self) -> Transmittance {
        let (inside, outside) = self.position.films();
        combined(&self.resistances(), self.framing, inside, outside)
    }

    pub(crate) fn resistances(&self) -> Vec<Layer> {
        let flow = self.position.flow();
        self.layers.iter().map(|layer| layer.resist(flow)).collect()
    }
}

impl BuildLayer {
    fn resist(&self, flow: HeatFlow) -> Layer {
        let fill = match self.fill {
            Fill::Typed(resistance) => resistance,
            Fill::Material(material) => material.resistance(self.thickness, flow),
        };
        match self.place {
            Place::Through => Layer::Even(fill),
            Place::BetweenFraming => {
                let framing = Material::Softwood.resistance(self.thickness, flow);
                Layer::Framed { cavity: fill, framing }
            }
        }
    }
}

/// Where an assembly stands, which decides the films on its two sides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Position {
    /// A wall to outdoors.
    Wall,
    /// A wall between two spaces.
    Partition,
    /// A ceiling under still or slowly moving air: an attic, or a vented roof's air gap.
    Ceiling,
    /// A ceiling and roof in one, to outdoors.
    Roof,
    /// A floor over an unheated space.
    Floor,
    /// A floor on the ground.
    Slab,
    /// A wall against the ground.
    GroundWall,
}

names!(Position {
    Wall = "wall",
    Partition = "partition",
    Ceiling = "ceiling",
    Roof = "roof",
    Floor = "floor",
    Slab = "slab",
    GroundWall = "ground-wall",
});

impl Position {
    /// Which way the heat goes in winter.
    pub fn flow(self) -> HeatFlow {
        match self {
            Position::Wall | Position::Partition | Position::GroundWall => HeatFlow::Horizontal,
            Position::Ceiling | Position::Roof => HeatFlow::Upward,
            Position::Floor | Position::Slab => HeatFlow::Downward,
        }
    }

    /// Inside and outside film. Still air beyond counts as another inside film (ISO 6946); the
    /// ground has the outside film in front of it (ISO 13370).
    pub fn films(self) -> (Resistance, Resistance) {
        let inside = self.flow().inside_film();
        match self {
            Position::Partition | Position::Ceiling | Position::Floor => (inside, inside),
            Position::Wall | Position::Roof | Position::Slab | Position::GroundWall => {
                (inside, OUTSIDE_FILM)
            }
        }
    }
}

/// How much of an assembly is wood.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Framing {
    None,
    /// 16 in on center, double top plate, three-stud corners.
    StandardWall,
    /// 16 in on center, insulated corners and headers.
    IntermediateWall,
    /// 24 in on center, insulated corners and headers.
    AdvancedWall,
    CeilingJoists,
    FloorJoists,
    RoofRafters,
}

names!(Framing {
    None = "none",
    StandardWall = "standard-wall",
    IntermediateWall = "intermediate-wall",
    AdvancedWall = "advanced-wall",
    CeilingJoists = "ceiling-joists",
    FloorJoists = "floor-joists",
    RoofRafters = "roof-rafters",
});

impl Framing {
    /// Share of the area. Standard and intermediate walls: studs and plates 0.19 and 0.18 with
    /// headers 0.04 (Washington Administrative Code 51-11-1005). The others are from memory.
    pub const fn share(self) -> f64 {
        match self {
            Framing::None => 0.0,
            Framing::StandardWall => 0.23,
            Framing::IntermediateWall => 0.22,
            Framing::AdvancedWall => 0.17,
            Framing::CeilingJoists => 0.07,
            Framing::FloorJoists | Framing::RoofRafters => 0.10,
        }
    }
}
