//! The US code's answer for a slab: heat lost a metre of its exposed edge for each kelvin between
//! the room and the design day outdoors, `Q = F P (T_in - T_out)`.
//!
//! It stands against the full design difference, and comes out well above ISO 13370's monthly
//! answer; a page that shows one should show the other too.

use super::Placement;
use crate::named::names;
use crate::quantity::{Length, LinearTransmittance, Resistance, Unit};

/// The unheated slabs of Washington Administrative Code 51-11C-61061, table A106.1. Its heated
/// slabs are left out: those have the heating in them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SlabEdge {
    Uninsulated,
    Horizontal2FtR5,
    Horizontal2FtR10,
    Horizontal2FtR15,
    Horizontal4FtR5,
    Horizontal4FtR10,
    Horizontal4FtR15,
    Vertical2FtR5,
    Vertical2FtR10,
    Vertical2FtR15,
    Vertical4FtR5,
    Vertical4FtR10,
    Vertical4FtR15,
    WholeR10,
    WholeR15,
    WholeR20,
    WholeR30,
}

names!(SlabEdge {
    Uninsulated = "uninsulated",
    Horizontal2FtR5 = "horizontal-2-ft-r5",
    Horizontal2FtR10 = "horizontal-2-ft-r10",
    Horizontal2FtR15 = "horizontal-2-ft-r15",
    Horizontal4FtR5 = "horizontal-4-ft-r5",
    Horizontal4FtR10 = "horizontal-4-ft-r10",
    Horizontal4FtR15 = "horizontal-4-ft-r15",
    Vertical2FtR5 = "vertical-2-ft-r5",
    Vertical2FtR10 = "vertical-2-ft-r10",
    Vertical2FtR15 = "vertical-2-ft-r15",
    Vertical4FtR5 = "vertical-4-ft-r5",
    Vertical4FtR10 = "vertical-4-ft-r10",
    Vertical4FtR15 = "vertical-4-ft-r15",
    WholeR10 = "whole-r10",
    WholeR15 = "whole-r15",
    WholeR20 = "whole-r20",
    WholeR30 = "whole-r30",
});

/// How far the insulation reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Extent {
    Uninsulated,
    /// A strip along the edge, of this width or depth; a horizontal one without a thermal break.
    Strip(Placement, Length),
    /// Under the whole slab, with R-10 at its edge.
    Whole,
}

/// How surely a row was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowOrigin {
    /// As it stands here.
    Seen,
    /// F was seen; its R was inferred from the order of the rows, as the column was lost in the
    /// text that could be read.
    InferredResistance,
}

impl SlabEdge {
    /// F in Btu/(h ft F), nominal R in h ft2 F/Btu, and extent.
    fn row(self) -> (f64, f64, Extent) {
        use SlabEdge::*;
        let strip = |placement, feet| Extent::Strip(placement, Length::of(feet, Unit::Foot));
        let across = |feet| strip(Placement::Horizontal, feet);
        let down = |feet| strip(Placement::Vertical, feet);
        match self {
            Uninsulated => (0.73, 0.0, Extent::Uninsulated),
            Horizontal2FtR5 => (0.70, 5.0, across(2.0)),
            Horizontal2FtR10 => (0.70, 10.0, across(2.0)),
            Horizontal2FtR15 => (0.69, 15.0, across(2.0)),
            Horizontal4FtR5 => (0.67, 5.0, across(4.0)),
            Horizontal4FtR10 => (0.64, 10.0, across(4.0)),
            Horizontal4FtR15 => (0.63, 15.0, across(4.0)),
            Vertical2FtR5 => (0.58, 5.0, down(2.0)),
            Vertical2FtR10 => (0.54, 10.0, down(2.0)),
            Vertical2FtR15 => (0.52, 15.0, down(2.0)),
            Vertical4FtR5 => (0.54, 5.0, down(4.0)),
            Vertical4FtR10 => (0.48, 10.0, down(4.0)),
            Vertical4FtR15 => (0.45, 15.0, down(4.0)),
            WholeR10 => (0.36, 10.0, Extent::Whole),
            WholeR15 => (0.31, 15.0, Extent::Whole),
            WholeR20 => (0.26, 20.0, Extent::Whole),
            WholeR30 => (0.21, 30.0, Extent::Whole),
        }
    }

    /// Heat lost a metre of exposed edge for each kelvin.
    pub fn f_factor(self) -> LinearTransmittance {
        LinearTransmittance::of(self.row().0, Unit::BtuPerHourFootFahrenheit)
    }

    /// Nominal resistance of the insulation; zero without any.
    pub fn resistance(self) -> Resistance {
        Resistance::of(self.row().1, Unit::UsR)
    }

    pub fn extent(self) -> Extent {
        self.row().2
    }

    /// The vertical R-10 of two feet also stands in WAC 51-11-0530, with its R.
    pub fn origin(self) -> RowOrigin {
        match self {
            SlabEdge::Uninsulated | SlabEdge::Vertical2FtR10 => RowOrigin::Seen,
            _ => RowOrigin::InferredResistance,
        }
    }
}
