//! The tubes a hot-water loop is built from.

use crate::named::names;
use crate::quantity::{Area, Length};
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// A tube by standard and nominal size. The serde names are stored in job files: they stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tube {
    CopperLHalf,
    CopperLThreeQuarter,
    CopperLOne,
    CopperLOneAndQuarter,
    CopperMHalf,
    CopperMThreeQuarter,
    CopperMOne,
    CopperMOneAndQuarter,
    PexHalf,
    PexThreeQuarter,
    PexOne,
}

names!(Tube {
    CopperLHalf = "copper-l-1/2",
    CopperLThreeQuarter = "copper-l-3/4",
    CopperLOne = "copper-l-1",
    CopperLOneAndQuarter = "copper-l-1-1/4",
    CopperMHalf = "copper-m-1/2",
    CopperMThreeQuarter = "copper-m-3/4",
    CopperMOne = "copper-m-1",
    CopperMOneAndQuarter = "copper-m-1-1/4",
    PexHalf = "pex-1/2",
    PexThreeQuarter = "pex-3/4",
    PexOne = "pex-1",
});

/// Nominal size, in inches: a name, not a dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Nominal {
    #[serde(rename = "1/2")]
    Half,
    #[serde(rename = "3/4")]
    ThreeQuarter,
    #[serde(rename = "1")]
    One,
    #[serde(rename = "1-1/4")]
    OneAndQuarter,
}

/// What the tube is made of and by which standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// ASTM B88, type L.
    CopperL,
    /// ASTM B88, type M.
    CopperM,
    /// Crosslinked polyethylene, ASTM F876, SDR-9.
    Pex,
}

/// The inside of a tube, as flowing water meets it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Bore {
    #[serde(rename = "diameter_m")]
    pub diameter: Length,
    /// Height of the equivalent sand grains.
    #[serde(rename = "roughness_m")]
    pub roughness: Length,
}

impl Bore {
    /// The open cross-section.
    pub fn area(self) -> Area {
        self.diameter * self.diameter * (PI / 4.0)
    }

    /// Roughness as a share of the diameter.
    pub fn relative_roughness(self) -> f64 {
        self.roughness / self.diameter
    }
}

impl Tube {
    /// Every tube, by material and then by size.
    pub const ALL: [Tube; 11] = [
        Tube::CopperLHalf,
        Tube::CopperLThreeQuarter,
        Tube::CopperLOne,
        Tube::CopperLOneAndQuarter,
        Tube::CopperMHalf,
        Tube::CopperMThreeQuarter,
        Tube::CopperMOne,
        Tube::CopperMOneAndQuarter,
        Tube::PexHalf,
        Tube::PexThreeQuarter,
        Tube::PexOne,
    ];

    pub const fn nominal(self) -> Nominal {
        match self {
            Tube::CopperLHalf | Tube::CopperMHalf | Tube::PexHalf => Nominal::Half,
            Tube::CopperLThreeQuarter | Tube::CopperMThreeQuarter | Tube::PexThreeQuarter => {
                Nominal::ThreeQuarter
            }
            Tube::CopperLOne | Tube::CopperMOne | Tube::PexOne => Nominal::One,
            Tube::CopperLOneAndQuarter | Tube::CopperMOneAndQuarter => Nominal::OneAndQuarter,
        }
    }

    pub const fn material(self) -> Material {
        match self {
            Tube::CopperLHalf
            | Tube::CopperLThreeQuarter
            | Tube::CopperLOne
            | Tube::CopperLOneAndQuarter => Material::CopperL,
            Tube::CopperMHalf
            | Tube::CopperMThreeQuarter
            | Tube::CopperMOne
            | Tube::CopperMOneAndQuarter => Material::CopperM,
            Tube::PexHalf | Tube::PexThreeQuarter | Tube::PexOne => Material::Pex,
        }
    }

    /// An eighth of an inch more than the nominal size: copper tube size, the same in ASTM B88 and
    /// F876.
    pub fn outside_diameter(self) -> Length {
        inches(match self.nominal() {
            Nominal::Half => 0.625,
            Nominal::ThreeQuarter => 0.875,
            Nominal::One => 1.125,
            Nominal::OneAndQuarter => 1.375,
        })
    }

    /// Wall thickness, from memory of the standards.
    ///
    /// Copper has the nominal wall of ASTM B88. ASTM F876 gives a least wall and a tolerance upward
    /// (0.070 + 0.010, 0.097 + 0.010, 0.125 + 0.013 in): the middle is taken.
    pub fn wall(self) -> Length {
        inches(match self {
            Tube::CopperLHalf => 0.040,
            Tube::CopperLThreeQuarter => 0.045,
            Tube::CopperLOne => 0.050,
            Tube::CopperLOneAndQuarter => 0.055,
            Tube::CopperMHalf => 0.028,
            Tube::CopperMThreeQuarter => 0.032,
            Tube::CopperMOne => 0.035,
            Tube::CopperMOneAndQuarter => 0.042,
            Tube::PexHalf => 0.075,
            Tube::PexThreeQuarter => 0.102,
            Tube::PexOne => 0.1315,
        })
    }

    pub fn inside_diameter(self) -> Length {
        self.outside_diameter() - self.wall() * 2.0
    }

    /// Of new tube; handbook values, from memory.
    pub fn roughness(self) -> Length {
        Length::from_si(match self.material() {
            Material::CopperL | Material::CopperM => 1.5e-6,
            Material::Pex => 7.0e-6,
        })
    }

    pub fn bore(self) -> Bore {
        Bore { diameter: self.inside_diameter(), roughness: self.roughness() }
    }

    /// The open cross-section.
    pub fn flow_area(self) -> Area {
        self.bore().area()
    }
}

fn inches(value: f64) -> Length {
    Length::of(value, crate::quantity::Unit::Inch)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;

    #[test]
    fn every_tube_stands_once_in_all() {
        for (index, tube) in Tube::ALL.iter().enumerate() {
            assert_eq!(Tube::ALL.iter().position(|t| t == tube), Some(index));
        }
    }

    #[test]
    fn inside_is_outside_less_two_walls() {
        let inch = |tube: Tube| tube.inside_diameter().to(Unit::Inch);
        assert!((inch(Tube::CopperMThreeQuarter) - 0.811).abs() < 1e-12);
        assert!((inch(Tube::CopperLHalf) - 0.545).abs() < 1e-12);
        assert!((inch(Tube::PexOne) - 0.862).abs() < 1e-12);
    }

    #[test]
    fn type_l_has_a_thicker_wall_than_type_m() {
        for (l, m) in Tube::ALL.iter().zip(Tube::ALL.iter().skip(4)).take(4) {
            assert_eq!(l.nominal(), m.nominal());
            assert!(l.wall() > m.wall() && l.flow_area() < m.flow_area(), "{l:?} {m:?}");
        }
    }
}
