//! How far the year's swing of outdoor temperature reaches the house: ISO 13370, annex H, for
//! outdoor variation only, as rooms are held at their temperature.

use super::{EdgeInsulation, Floor, wall_equivalent_m};
use crate::numeric::dual::Scalar;
use crate::numeric::exp;
use crate::quantity::{LossCoefficient, Power, Temperature};

/// `Q = H_g (T_in - T_mean) + H_pe (T_mean - T_coldest month)`: the design day's loss to the
/// ground, from the sums of the steady and of the periodic parts.
///
/// No lag: the month that loses most is taken to be the coldest one.
pub fn design_day_loss(
    steady: LossCoefficient,
    periodic: LossCoefficient,
    inside: Temperature,
    year_mean: Temperature,
    coldest_month: Temperature,
) -> Power {
    steady * (inside - year_mean) + periodic * (year_mean - coldest_month)
}

/// The factor of every formula here (annex H).
const PER_METRE: f64 = 0.37;

/// Per metre of exposed perimeter of a slab, `0.37 lambda ln(delta / d_f + 1)`; with edge
/// insulation `0.37 lambda [(1 - e) ln(delta / (d_f + d') + 1) + e ln(delta / d_f + 1)]`, where
/// `e = exp(-D / delta)`, with `2 D` for a vertical strip.
pub fn periodic_slab_w_mk<S: Scalar>(floor: &Floor<S>, edge: Option<&EdgeInsulation<S>>) -> S {
    let own = floor.equivalent_m();
    let bare = swing(floor, own);
    let Some(edge) = edge else { return bare };
    let beyond = exp(-edge.reach_m() / floor.ground.periodic_depth_m);
    swing(floor, own + edge.added_m(&floor.ground)) * (1.0 - beyond) + bare * beyond
}

/// `0.37 lambda ln(delta / d + 1)`.
fn swing<S: Scalar>(floor: &Floor<S>, thickness_m: S) -> S {
    let depth = S::from(floor.ground.periodic_depth_m);
    floor.ground.conductivity_w_mk * PER_METRE * (depth / thickness_m).ln_1p()
}

/// Per metre of exposed perimeter of a heated basement, floor and wall together, on a stretch
/// whose wall is `depth_m` below ground:
/// `0.37 lambda [e ln(delta / d_f + 1) + 2 (1 - e) ln(delta / d_w + 1)]`, `e = exp(-z / delta)`.
pub fn periodic_basement_w_mk<S: Scalar>(
    floor: &Floor<S>,
    depth_m: f64,
    wall_resistance_m2k_w: S,
) -> S {
    let below = exp(-depth_m / floor.ground.periodic_depth_m);
    let wall = wall_equivalent_m(&floor.ground, wall_resistance_m2k_w);
    swing(floor, floor.equivalent_m()) * below + swing(floor, wall) * (2.0 * (1.0 - below))
}

/// Per metre of exposed perimeter, into an unheated space that is `depth_m` below ground:
/// `0.37 lambda (2 - e) ln(delta / d_f + 1)`, `e = exp(-z / delta)`. With depth 0 it is the part
/// of a crawl space, `d_f` then being the `d_g` of what lies on the ground.
///
/// The balance of that space takes it as a fixed loss of the difference between the two means.
pub fn periodic_unheated_w_mk<S: Scalar>(floor: &Floor<S>, depth_m: f64) -> S {
    let below = exp(-depth_m / floor.ground.periodic_depth_m);
    swing(floor, floor.equivalent_m()) * (2.0 - below)
}

/// From the room through a suspended floor, the crawl space's balance being solved:
/// `U_f [0.37 P lambda ln(delta / d_g + 1) + U_x A] / (lambda / delta + U_x + U_f)`.
///
/// Here `U_x` sees the month's mean, unlike in a balance at the design temperature.
pub fn periodic_suspended_w_k<S: Scalar>(
    floor: &Floor<S>,
    floor_u_w_m2k: S,
    vented_u_w_m2k: S,
) -> S {
    let footprint = &floor.footprint;
    let ground = periodic_unheated_w_mk(floor, 0.0) * footprint.perimeter_m;
    let inward = floor.ground.conductivity_w_mk / floor.ground.periodic_depth_m;
    floor_u_w_m2k * (ground + vented_u_w_m2k * footprint.area_m2)
        / (inward + vented_u_w_m2k + floor_u_w_m2k)
}

/// An unheated basement beyond its ground: the floor over it, its walls above ground, its air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnheatedBasement<S = f64> {
    /// Of the floor between the room and the basement, with both its films.
    pub floor_u_w_m2k: S,
    /// Of its walls above the ground outside.
    pub wall_height_m: f64,
    pub wall_u_w_m2k: S,
    pub air_changes_per_h: f64,
    pub volume_m3: f64,
}

/// Heat that a cubic metre of air carries, Wh/(m3 K), as the formula has it.
const AIR: f64 = 0.33;

/// From the room into an unheated basement, its balance being solved: `A U_f
/// [0.37 P lambda (2 - e) ln(delta / d_f + 1) + h P U_w + 0.33 n V] /
/// [(A + z P) lambda / delta + h P U_w + 0.33 n V + A U_f]`, with `z` the footprint's mean depth.
pub fn periodic_unheated_basement_w_k<S: Scalar>(
    floor: &Floor<S>,
    basement: &UnheatedBasement<S>,
) -> S {
    let footprint = &floor.footprint;
    let perimeter = footprint.perimeter_m;
    let above = basement.floor_u_w_m2k * footprint.area_m2;
    let outdoors = basement.wall_u_w_m2k * (basement.wall_height_m * perimeter)
        + AIR * basement.air_changes_per_h * basement.volume_m3;
    let ground = periodic_unheated_w_mk(floor, footprint.depth_m) * perimeter;
    let buried = footprint.area_m2 + footprint.depth_m * perimeter;
    let inward = floor.ground.conductivity_w_mk * (buried / floor.ground.periodic_depth_m);
    above * (ground + outdoors) / (inward + outdoors + above)
}
