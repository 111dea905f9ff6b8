//! Heat through the ground: ISO 13370:2017, for slabs, suspended floors and basements.
//!
//! The steady part acts between the room and the year's mean outdoors ([`floor_u_w_m2k`],
//! [`wall_u_w_m2k`], [`suspended_u_w_m2k`]); the periodic part between that mean and the coldest
//! month's (`periodic_…`, annex H). [`design_day_loss`] adds the two.
//!
//! The formulas, annex H among them, were read in two public implementations numbered after the
//! standard, not in the standard itself. The steady ones give every value of the U-value tables
//! C1 to C5 that a building regulation printed from it, to their two places.
//!
//! Geometry is in plain numbers; conductivities, resistances and U-values are any [`Scalar`], so
//! that the same code gives slopes. What depends on a stretch of perimeter (edge insulation,
//! basement walls, the periodic part) is per metre or per area of it: sum stretches that differ.

mod f_factor;
mod periodic;
mod suspended;

pub use f_factor::{Extent, RowOrigin, SlabEdge};
pub use periodic::{
    UnheatedBasement, design_day_loss, periodic_basement_w_mk, periodic_slab_w_mk,
    periodic_suspended_w_k, periodic_unheated_basement_w_k, periodic_unheated_w_mk,
};
pub use suspended::{
    Shield, Underfloor, suspended_ground_u_w_m2k, suspended_u_w_m2k, vented_u_w_m2k,
};

use super::assembly::{HeatFlow, OUTSIDE_FILM};
use crate::named::names;
use crate::numeric::dual::Scalar;
use std::f64::consts::PI;

/// What the house stands on. ISO 13370, from memory, has sand's values where nothing is known; as
/// those also lose more than clay's, sand is the default (judgement).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Soil {
    Clay,
    #[default]
    Sand,
    Rock,
}

names!(Soil {
    Clay = "clay-or-silt",
    Sand = "sand-or-gravel",
    Rock = "rock",
});

impl Soil {
    /// Conductivity and periodic penetration depth: ISO 13370:2017, tables 7 and H.1, as read in
    /// the public implementations.
    pub fn ground<S: Scalar>(self) -> Ground<S> {
        let (conductivity_w_mk, periodic_depth_m) = match self {
            Soil::Clay => (1.5, 2.2),
            Soil::Sand => (2.0, 3.2),
            Soil::Rock => (3.5, 4.2),
        };
        Ground { conductivity_w_mk: S::from(conductivity_w_mk), periodic_depth_m }
    }
}

/// The ground as the formulas know it. How deep a year's swing of temperature reaches is held
/// apart from the conductivity: it also depends on the soil's heat capacity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground<S = f64> {
    pub conductivity_w_mk: S,
    pub periodic_depth_m: f64,
}

impl Ground {
    /// The same in numbers that carry slopes.
    pub fn ground<S: Scalar>(self) -> Ground<S> {
        Ground {
            conductivity_w_mk: S::from(self.conductivity_w_mk),
            periodic_depth_m: self.periodic_depth_m,
        }
    }
}

/// A floor's shape: that of the whole house, as rooms share the ground beneath.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Footprint {
    pub area_m2: f64,
    /// The exposed perimeter: along outdoors and unheated spaces, not along heated neighbours.
    pub perimeter_m: f64,
    /// Of the outside walls, all layers.
    pub wall_thickness_m: f64,
    /// Mean depth of the floor below the ground outside; 0 for a slab on grade.
    pub depth_m: f64,
}

impl Footprint {
    /// The characteristic dimension `B = A / (0.5 P)`; infinite where no perimeter is exposed.
    pub fn characteristic_m(&self) -> f64 {
        self.area_m2 / (0.5 * self.perimeter_m)
    }
}

/// A floor on the ground with what lies between: all layers of a slab or basement floor, or, under
/// a suspended floor, whatever insulates the ground itself. Films are added here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Floor<S = f64> {
    pub ground: Ground<S>,
    pub footprint: Footprint,
    pub resistance_m2k_w: S,
}

impl<S: Scalar> Floor<S> {
    /// The floor and its films as a thickness of ground: `d_f = w + lambda (R_si + R_f + R_se)`.
    pub fn equivalent_m(&self) -> S {
        let films = HeatFlow::Downward.inside_film() + OUTSIDE_FILM;
        self.ground.conductivity_w_mk * (self.resistance_m2k_w + films.si())
            + self.footprint.wall_thickness_m
    }
}

/// A basement wall and its films as a thickness of ground: `d_w = lambda (R_si + R_w + R_se)`.
pub fn wall_equivalent_m<S: Scalar>(ground: &Ground<S>, resistance_m2k_w: S) -> S {
    let films = HeatFlow::Horizontal.inside_film() + OUTSIDE_FILM;
    ground.conductivity_w_mk * (resistance_m2k_w + films.si())
}

/// U of a slab on grade or of a heated basement's floor.
///
/// The edge term `2 psi / B` takes `edge` as lying along the whole perimeter, and only on grade: a
/// basement has walls there. Where stretches differ, or a room has its own share, leave it out and
/// add [`edge_psi_w_mk`] times each length instead.
pub fn floor_u_w_m2k<S: Scalar>(floor: &Floor<S>, edge: Option<&EdgeInsulation<S>>) -> S {
    let footprint = &floor.footprint;
    let lambda = floor.ground.conductivity_w_mk;
    let b = footprint.characteristic_m();
    if !b.is_finite() {
        // No way out but downwards: in steady state nothing flows.
        return S::from(0.0);
    }
    let thickness = floor.equivalent_m() + 0.5 * footprint.depth_m;
    let bare = if thickness.value() < b {
        beneath(lambda, b, thickness)
    } else {
        lambda / (thickness + 0.457 * b)
    };
    let with_edge = match edge {
        Some(edge) if footprint.depth_m <= 0.0 => bare + edge_psi_w_mk(floor, edge) * (2.0 / b),
        _ => bare,
    };
    // On a floor narrower than its strip the edge term outgrows the rest; no floor gains heat.
    if with_edge.value() < 0.0 { S::from(0.0) } else { with_edge }
}

/// `2 lambda / (pi B + d) ln(pi B / d + 1)`.
fn beneath<S: Scalar>(lambda: S, characteristic_m: f64, thickness_m: S) -> S {
    let across = PI * characteristic_m;
    lambda * 2.0 / (thickness_m + across) * (S::from(across) / thickness_m).ln_1p()
}

/// U of a heated basement's wall, over the stretch of it that is `depth_m` below ground, from the
/// ground outside to the floor: `(2 lambda / (pi z)) (1 + 0.5 d / (d + z)) ln(z / d_w + 1)`.
///
/// `d` is the floor's `d_f`, or `d_w` when that is smaller.
pub fn wall_u_w_m2k<S: Scalar>(floor: &Floor<S>, depth_m: f64, wall_resistance_m2k_w: S) -> S {
    let lambda = floor.ground.conductivity_w_mk;
    let wall = wall_equivalent_m(&floor.ground, wall_resistance_m2k_w);
    if depth_m <= 0.0 {
        // What the formula tends to as the depth vanishes.
        return lambda * (3.0 / PI) / wall;
    }
    let own = floor.equivalent_m();
    let lesser = if wall.value() < own.value() { wall } else { own };
    lambda
        * (2.0 / (PI * depth_m))
        * (lesser * 0.5 / (lesser + depth_m) + 1.0)
        * (S::from(depth_m) / wall).ln_1p()
}

/// Which way a strip of edge insulation lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Placement {
    Horizontal,
    Vertical,
}

names!(Placement {
    Horizontal = "horizontal",
    Vertical = "vertical",
});

/// A strip of insulation along the edge of a slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeInsulation<S = f64> {
    pub placement: Placement,
    /// How far it reaches: a horizontal strip's width, a vertical one's depth below ground.
    pub depth_m: f64,
    pub thickness_m: f64,
    pub resistance_m2k_w: S,
}

impl<S: Scalar> EdgeInsulation<S> {
    /// The length that counts: a vertical strip makes heat go down and up again.
    fn reach_m(&self) -> f64 {
        match self.placement {
            Placement::Horizontal => self.depth_m,
            Placement::Vertical => 2.0 * self.depth_m,
        }
    }

    /// The ground that it is worth beyond the ground whose place it takes:
    /// `d' = lambda (R_n - d_n / lambda)`. A strip that resists less than that ground is none: it
    /// neither saves heat nor counts against the slab.
    fn added_m(&self, ground: &Ground<S>) -> S {
        let added = ground.conductivity_w_mk * self.resistance_m2k_w - self.thickness_m;
        if added.value() > 0.0 { added } else { S::from(0.0) }
    }
}

/// What a metre of edge insulation saves, as a negative linear transmittance:
/// `psi = -(lambda / pi) [ln(D / d_f + 1) - ln(D / (d_f + d') + 1)]`, with `2 D` when vertical.
///
/// Of two strips along the same edge, from memory of the standard, only the better one counts.
pub fn edge_psi_w_mk<S: Scalar>(floor: &Floor<S>, edge: &EdgeInsulation<S>) -> S {
    let reach = S::from(edge.reach_m());
    let own = floor.equivalent_m();
    let improved = own + edge.added_m(&floor.ground);
    -(floor.ground.conductivity_w_mk / PI) * ((reach / own).ln_1p() - (reach / improved).ln_1p())
}
