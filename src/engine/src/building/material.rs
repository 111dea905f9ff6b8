//! What assemblies are made of, and how well each conducts heat.

use super::assembly::HeatFlow;
use super::catalogue::Origin;
use crate::named::names;
use crate::quantity::{Conductivity, Length, Resistance, Unit};

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    GypsumBoard,
    GypsumPlaster,
    LimePlaster,
    Softwood,
    Hardwood,
    Plywood,
    Osb,
    Particleboard,
    /// Soft sheathing board.
    Fiberboard,
    Hardboard,
    CementBoard,
    VinylSiding,
    Stucco,
    Brick,
    HollowBlock8,
    HollowBlock12,
    Concrete,
    LightConcrete,
    Granite,
    Limestone,
    Sandstone,
    FiberglassBatt,
    FiberglassDenseBatt,
    FiberglassLoose,
    MineralWoolLoose,
    Cellulose,
    Vermiculite,
    Eps,
    Xps,
    Polyiso,
    OpenCellFoam,
    ClosedCellFoam,
    /// Still air of an inch and more between two surfaces.
    AirCavity,
    Carpet,
    CarpetPad,
    Linoleum,
    VinylFloor,
    CeramicTile,
    AsphaltShingles,
    RollRoofing,
}

names!(Material {
    GypsumBoard = "gypsum-board",
    GypsumPlaster = "gypsum-plaster",
    LimePlaster = "lime-plaster",
    Softwood = "softwood",
    Hardwood = "hardwood",
    Plywood = "plywood",
    Osb = "osb",
    Particleboard = "particleboard",
    Fiberboard = "fiberboard",
    Hardboard = "hardboard",
    CementBoard = "cement-board",
    VinylSiding = "vinyl-siding",
    Stucco = "stucco",
    Brick = "brick",
    HollowBlock8 = "hollow-block-8",
    HollowBlock12 = "hollow-block-12",
    Concrete = "concrete",
    LightConcrete = "light-concrete",
    Granite = "granite",
    Limestone = "limestone",
    Sandstone = "sandstone",
    FiberglassBatt = "fiberglass-batt",
    FiberglassDenseBatt = "fiberglass-dense-batt",
    FiberglassLoose = "fiberglass-loose",
    MineralWoolLoose = "mineral-wool-loose",
    Cellulose = "cellulose",
    Vermiculite = "vermiculite",
    Eps = "eps",
    Xps = "xps",
    Polyiso = "polyiso",
    OpenCellFoam = "open-cell-foam",
    ClosedCellFoam = "closed-cell-foam",
    AirCavity = "air-cavity",
    Carpet = "carpet",
    CarpetPad = "carpet-pad",
    Linoleum = "linoleum",
    VinylFloor = "vinyl-floor",
    CeramicTile = "ceramic-tile",
    AsphaltShingles = "asphalt-shingles",
    RollRoofing = "roll-roofing",
});

/// How a material holds heat back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Heat {
    /// The more the thicker it is: `R = d / lambda`.
    Conductivity(Conductivity),
    /// As made, whatever its thickness.
    Fixed(Resistance),
}

/// Between which shares of a material's resistance nine pieces in ten lie: from the 10th to the
/// 90th in a hundred.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    pub low: f64,
    pub high: f64,
}

impl Material {
    /// What it does to heat that goes `flow`; only still air cares which way.
    pub fn heat(self, flow: HeatFlow) -> Heat {
        match self.known() {
            Standard(w_mk) | Remembered(w_mk) => Heat::Conductivity(Conductivity::from_si(w_mk)),
            PerInch { usual, .. } => {
                let inch = Length::of(1.0, Unit::Inch);
                Heat::Conductivity(inch / Resistance::of(usual, Unit::UsR))
            }
            AsMade(m2k_w) => Heat::Fixed(Resistance::from_si(m2k_w)),
            StillAir => Heat::Fixed(still_air(flow)),
        }
    }

    /// The resistance of so much of it.
    pub fn resistance(self, thickness: Length, flow: HeatFlow) -> Resistance {
        match self.heat(flow) {
            Heat::Conductivity(conductivity) => thickness / conductivity,
            Heat::Fixed(resistance) => resistance,
        }
    }

    /// How far its resistance spreads, where that was seen.
    pub fn range(self) -> Option<Range> {
        match self.known() {
            PerInch { low, usual, high } => Some(Range { low: low / usual, high: high / usual }),
            _ => None,
        }
    }

    pub fn origin(self) -> Origin {
        match self.known() {
            Standard(_) => Origin::MaterialStandard,
            PerInch { .. } => Origin::InsulationPages,
            Remembered(_) | AsMade(_) | StillAir => Origin::FromMemory,
        }
    }

    fn known(self) -> Known {
        use Material::*;
        match self {
            // EN 12524:2000 as an open library prints it; the number behind is the density in kg/m3.
            GypsumBoard => Standard(0.25),   // 900
            GypsumPlaster => Standard(0.40), // 1000
            LimePlaster => Standard(0.80),   // lime and sand, 1600
            Softwood => Standard(0.13),      // timber, 500
            Hardwood => Standard(0.18),      // timber, 700
            Plywood => Standard(0.13),       // 500
            Osb => Standard(0.13),           // 650
            Particleboard => Standard(0.14), // 600
            Fiberboard => Standard(0.07),    // 250
            Hardboard => Standard(0.18),     // fibreboard, 800
            CementBoard => Standard(0.23),   // cement-bonded particleboard, 1200
            Concrete => Standard(2.0),       // high density, 2400
            LightConcrete => Standard(1.15), // medium density, 1800
            Granite => Standard(2.8),        // 2600
            Limestone => Standard(1.7),      // hard, 2200
            Sandstone => Standard(2.3),      // 2600
            Carpet => Standard(0.06),        // 200
            CarpetPad => Standard(0.05),     // felt underlay, 120
            Linoleum => Standard(0.17),      // 1200
            VinylFloor => Standard(0.25),    // plastic, 1700
            CeramicTile => Standard(1.3),    // 2300
            RollRoofing => Standard(0.23),   // bitumen felt, 1100
            // The library has 0.8 for cement and sand, and 1.0 for gypsum and sand: as remembered,
            // the standard has it the other way round.
            Stucco => Remembered(1.0),
            Brick => Remembered(0.77),
            OpenCellFoam => Remembered(0.040), // an inch
            // ASHRAE Handbook of Fundamentals, from memory: blocks of 8 and 12 in of ordinary
            // concrete, shingles, siding that stands off the sheathing.
            HollowBlock8 => AsMade(0.20),
            HollowBlock12 => AsMade(0.225),
            AsphaltShingles => AsMade(0.077),
            VinylSiding => AsMade(0.107),
            AirCavity => StillAir,
            // Spans printed on two public pages, of which one names the U.S. Department of Energy.
            FiberglassBatt => PerInch { low: 2.9, usual: 3.2, high: 3.8 },
            FiberglassDenseBatt => PerInch { low: 3.7, usual: 3.8, high: 4.3 },
            FiberglassLoose => PerInch { low: 2.2, usual: 2.5, high: 3.0 },
            MineralWoolLoose => PerInch { low: 2.7, usual: 2.8, high: 3.0 },
            Cellulose => PerInch { low: 3.4, usual: 3.5, high: 3.7 },
            Vermiculite => PerInch { low: 2.4, usual: 2.7, high: 3.7 },
            Eps => PerInch { low: 3.6, usual: 3.8, high: 4.0 },
            Xps => PerInch { low: 4.5, usual: 4.8, high: 5.0 },
            Polyiso => PerInch { low: 5.6, usual: 5.8, high: 6.3 },
            ClosedCellFoam => PerInch { low: 5.6, usual: 5.9, high: 6.3 },
        }
    }
}

/// What is known of a material, and from where.
enum Known {
    /// W/m K from the standard.
    Standard(f64),
    /// W/m K from memory.
    Remembered(f64),
    /// m2 K/W from memory.
    AsMade(f64),
    StillAir,
    /// ft2 F h/Btu an inch; the usual value is a choice within the span.
    PerInch {
        low: f64,
        usual: f64,
        high: f64,
    },
}
use Known::*;

/// Not ventilated, 25 mm and more, downward 50 mm (ISO 6946, from memory).
fn still_air(flow: HeatFlow) -> Resistance {
    Resistance::from_si(match flow {
        HeatFlow::Horizontal => 0.18,
        HeatFlow::Upward => 0.16,
        HeatFlow::Downward => 0.21,
    })
}
