//! Slopes by dual numbers against those by differences.

use finrun_engine::building::ground::{
    EdgeInsulation, Floor, Footprint, Ground, Placement, Shield, Underfloor, UnheatedBasement,
    edge_psi_w_mk, floor_u_w_m2k, periodic_basement_w_mk, periodic_slab_w_mk,
    periodic_suspended_w_k, periodic_unheated_basement_w_k, periodic_unheated_w_mk,
    suspended_ground_u_w_m2k, suspended_u_w_m2k, vented_u_w_m2k, wall_equivalent_m, wall_u_w_m2k,
};
use finrun_engine::numeric::dual::{Dual, Scalar};
use proptest::prelude::*;

/// The slope of `f` in its argument `which`, exactly and by a central difference.
fn slopes<const N: usize>(
    f: impl Fn([Dual; N]) -> Dual,
    g: impl Fn([f64; N]) -> f64,
    at: [f64; N],
    which: usize,
) -> (f64, f64) {
    let mut dual = at.map(Dual::from);
    dual[which] = Dual::variable(at[which]);
    let moved = |step: f64| {
        let mut point = at;
        point[which] += step;
        g(point)
    };
    let step = 1e-5 * at[which].abs().max(1e-2);
    (f(dual).slope, (moved(step) - moved(-step)) / (2.0 * step))
}

/// Every operation of a scalar, both ways round.
fn all_operations<S: Scalar>([x, y]: [S; 2]) -> S {
    let ratio = (x * y - x) / (y + 2.0) + -(y / x) * 0.5;
    let curved = (x * 0.3).exp() - (y * x).ln() / 3.0 + (x / y - 0.1).ln_1p();
    ratio * curved + (ratio - 1.5) / (x + S::from(4.0))
}

proptest! {
    #[test]
    fn a_dual_number_carries_value_and_slope(x in 0.2..5.0, y in 0.2..5.0, which in 0..2_usize) {
        let at = [x, y];
        let (exact, differences) = slopes(all_operations, all_operations, at, which);
        prop_assert!((exact - differences).abs() < 1e-6 * (1.0 + exact.abs()), "{exact} {differences}");
        let value = all_operations(at.map(Dual::from));
        prop_assert_eq!(value, Dual { value: all_operations(at), slope: 0.0 });
    }
}

/// What does not vary here.
#[derive(Debug, Clone, Copy)]
struct Shape {
    footprint: Footprint,
    periodic_depth_m: f64,
    placement: Placement,
    strip_m: f64,
}

const FUNCTIONS: usize = 16;

/// Every function of the ground, of: conductivity, and resistances of floor, wall and strip, and U
/// of the floor above and of walls above ground.
fn answers<S: Scalar>(
    shape: Shape,
    [lambda, floor_r, wall_r, strip_r, above_u, wall_u]: [S; 6],
) -> [S; FUNCTIONS] {
    let ground = Ground { conductivity_w_mk: lambda, periodic_depth_m: shape.periodic_depth_m };
    let footprint = shape.footprint;
    let floor = Floor { ground, footprint, resistance_m2k_w: floor_r };
    let slab = Floor { footprint: Footprint { depth_m: 0.0, ..footprint }, ..floor };
    let edge = EdgeInsulation {
        placement: shape.placement,
        depth_m: shape.strip_m,
        thickness_m: 0.05,
        resistance_m2k_w: strip_r,
    };
    let under = Underfloor {
        height_m: 0.3,
        wall_u_w_m2k: wall_u,
        vent_m2_m: 0.002,
        wind_m_s: 3.0,
        shield: Shield::Exposed,
    };
    let cellar = UnheatedBasement {
        floor_u_w_m2k: above_u,
        wall_height_m: 0.4,
        wall_u_w_m2k: wall_u,
        air_changes_per_h: 0.3,
        volume_m3: 150.0,
    };
    let vented = vented_u_w_m2k(&footprint, &under);
    let ground_u = suspended_ground_u_w_m2k(&floor);
    [
        floor.equivalent_m(),
        wall_equivalent_m(&ground, wall_r),
        floor_u_w_m2k(&slab, None),
        floor_u_w_m2k(&slab, Some(&edge)),
        floor_u_w_m2k(&floor, None),
        wall_u_w_m2k(&floor, footprint.depth_m, wall_r),
        edge_psi_w_mk(&slab, &edge),
        ground_u,
        vented,
        suspended_u_w_m2k(above_u, ground_u, vented),
        periodic_slab_w_mk(&slab, None),
        periodic_slab_w_mk(&slab, Some(&edge)),
        periodic_basement_w_mk(&floor, footprint.depth_m, wall_r),
        periodic_unheated_w_mk(&floor, footprint.depth_m),
        periodic_suspended_w_k(&floor, above_u, vented),
        periodic_unheated_basement_w_k(&floor, &cellar),
    ]
}

fn shapes() -> impl Strategy<Value = Shape> {
    let placements = prop_oneof![Just(Placement::Horizontal), Just(Placement::Vertical)];
    (20.0..300.0, 12.0..80.0, 0.1..0.6, 0.2..3.0, 2.0..4.5, placements, 0.2..1.5).prop_map(
        |(
            area_m2,
            perimeter_m,
            wall_thickness_m,
            depth_m,
            periodic_depth_m,
            placement,
            strip_m,
        )| {
            let footprint = Footprint { area_m2, perimeter_m, wall_thickness_m, depth_m };
            Shape { footprint, periodic_depth_m, placement, strip_m }
        },
    )
}

proptest! {
    #[test]
    fn every_function_has_its_exact_slope(
        shape in shapes(),
        lambda in 0.8..4.0, floor_r in 0.05..5.0, wall_r in 0.05..5.0, strip_r in 0.5..5.0,
        above_u in 0.15..3.0, wall_u in 0.2..3.0,
    ) {
        let at = [lambda, floor_r, wall_r, strip_r, above_u, wall_u];
        let values = answers(shape, at);
        // Where a formula changes, differences straddle two slopes.
        let (own, wall) = (values[0], values[1]);
        let b = shape.footprint.characteristic_m();
        let near = |x: f64, y: f64| (x - y).abs() < 1e-3 * y;
        prop_assume!(!near(own, b) && !near(own + shape.footprint.depth_m / 2.0, b));
        prop_assume!(!near(own, wall) && values[3] > 1e-3);
        for (function, value) in values.iter().enumerate() {
            for which in 0..at.len() {
                let (exact, differences) = slopes(
                    |point| answers(shape, point)[function],
                    |point| answers(shape, point)[function],
                    at,
                    which,
                );
                let tolerance = 1e-6 * (exact.abs() + value.abs());
                prop_assert!(
                    (exact - differences).abs() < tolerance,
                    "function {function}, variable {which}: {exact} {differences}"
                );
            }
        }
    }
}
