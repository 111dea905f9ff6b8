//! Where ground heat loss must rise or fall, whatever the floor.

use super::{apart, at_depth};
use finrun_engine::building::ground::{
    EdgeInsulation, Floor, Footprint, Ground, Placement, UnheatedBasement, edge_psi_w_mk,
    floor_u_w_m2k, periodic_basement_w_mk, periodic_slab_w_mk, periodic_suspended_w_k,
    periodic_unheated_basement_w_k, periodic_unheated_w_mk, suspended_ground_u_w_m2k, wall_u_w_m2k,
};
use proptest::prelude::*;

/// Any floor on any ground between peat and rock, on grade or to 3 m deep.
fn floors() -> impl Strategy<Value = Floor> {
    let depth = prop_oneof![Just(0.0_f64), 0.1..3.0];
    (0.5..4.0, 1.5..5.0, 3.0..20.0, 0.5..8.0, 0.1..0.6, depth, 0.0..8.0).prop_map(
        |(conductivity_w_mk, periodic_depth_m, side_m, shape, wall_thickness_m, depth_m, r)| {
            let ground = Ground { conductivity_w_mk, periodic_depth_m };
            let (area_m2, perimeter_m) = (side_m * side_m, shape * side_m);
            let footprint = Footprint { area_m2, perimeter_m, wall_thickness_m, depth_m };
            Floor { ground, footprint, resistance_m2k_w: r }
        },
    )
}

fn edges() -> impl Strategy<Value = EdgeInsulation> {
    let placements = prop_oneof![Just(Placement::Horizontal), Just(Placement::Vertical)];
    (placements, 0.1..2.0, 0.01..0.3, 0.0..8.0).prop_map(
        |(placement, depth_m, thickness_m, resistance_m2k_w)| EdgeInsulation {
            placement,
            depth_m,
            thickness_m,
            resistance_m2k_w,
        },
    )
}

/// The second formula of a floor starts 0.014 % above the end of the first.
const STEP: f64 = 1.0 + 1.4e-4;

proptest! {
    #[test]
    fn more_insulation_never_loses_more(
        floor in floors(), wall_r in 0.0..6.0, more in 0.01..3.0,
    ) {
        let depth = floor.footprint.depth_m;
        let better = Floor { resistance_m2k_w: floor.resistance_m2k_w + more, ..floor };
        prop_assert!(floor_u_w_m2k(&better, None) < floor_u_w_m2k(&floor, None) * STEP);
        prop_assert!(suspended_ground_u_w_m2k(&better) < suspended_ground_u_w_m2k(&floor));
        prop_assert!(periodic_slab_w_mk(&better, None) < periodic_slab_w_mk(&floor, None));
        prop_assert!(
            wall_u_w_m2k(&floor, depth, wall_r + more) < wall_u_w_m2k(&floor, depth, wall_r)
        );
        let periodic = |floor: &Floor, wall_r| periodic_basement_w_mk(floor, depth, wall_r);
        prop_assert!(periodic(&better, wall_r + more) < periodic(&floor, wall_r));
    }

    #[test]
    fn wetter_ground_loses_more(floor in floors(), wall_r in 0.0..6.0, more in 1.01..2.0) {
        let ground = Ground {
            conductivity_w_mk: floor.ground.conductivity_w_mk * more, ..floor.ground
        };
        // Without depth the wall's limit no longer holds any ground.
        let (wet, depth) = (Floor { ground, ..floor }, floor.footprint.depth_m.max(0.1));
        prop_assert!(floor_u_w_m2k(&wet, None) > floor_u_w_m2k(&floor, None));
        prop_assert!(wall_u_w_m2k(&wet, depth, wall_r) > wall_u_w_m2k(&floor, depth, wall_r));
        // The standard has no second formula under a suspended floor; beyond the first one's range
        // this does not hold.
        if wet.equivalent_m() < floor.footprint.characteristic_m() {
            prop_assert!(suspended_ground_u_w_m2k(&wet) > suspended_ground_u_w_m2k(&floor));
        }
        prop_assert!(
            periodic_basement_w_mk(&wet, depth, wall_r)
                > periodic_basement_w_mk(&floor, depth, wall_r)
        );
    }

    #[test]
    fn edge_insulation_never_loses_more(floor in floors(), edge in edges(), more in 1.01..2.0) {
        prop_assert!(edge_psi_w_mk(&floor, &edge) <= 0.0);
        let (bare, with) = (floor_u_w_m2k(&floor, None), floor_u_w_m2k(&floor, Some(&edge)));
        prop_assert!(with <= bare && with >= 0.0, "{with} {bare}");
        let periodic = |edge: &EdgeInsulation| periodic_slab_w_mk(&floor, Some(edge));
        // Two shares of the same number need not add to its last bit.
        prop_assert!(periodic(&edge) <= periodic_slab_w_mk(&floor, None) * (1.0 + 1e-15));
        let wider = EdgeInsulation { depth_m: edge.depth_m * more, ..edge };
        let thicker = EdgeInsulation { resistance_m2k_w: edge.resistance_m2k_w * more, ..edge };
        for better in [wider, thicker] {
            prop_assert!(edge_psi_w_mk(&floor, &better) <= edge_psi_w_mk(&floor, &edge));
            prop_assert!(periodic(&better) <= periodic(&edge) * (1.0 + 1e-15));
        }
    }

    #[test]
    fn deeper_floors_lose_less(floor in floors(), more in 0.01..2.0) {
        let deeper = at_depth(floor, floor.footprint.depth_m + more);
        prop_assert!(floor_u_w_m2k(&deeper, None) < floor_u_w_m2k(&floor, None) * STEP);
    }

    /// The balance of the space gives the same as its closed formula, which is that of one node
    /// between the room, outdoor air and the ground at `lambda / delta`.
    #[test]
    fn the_closed_formulas_are_a_balance(
        floor in floors(), above in 0.1..3.0, vented in 0.0..3.0, air_changes_per_h in 0.0..2.0,
    ) {
        let Footprint { area_m2, perimeter_m, depth_m, .. } = floor.footprint;
        let inward = floor.ground.conductivity_w_mk / floor.ground.periodic_depth_m;
        // Outdoors falls by one kelvin; the room and the deep ground do not.
        let falls = |to_room: f64, to_ground: f64, to_air: f64, drawn: f64| {
            (to_air + drawn) / (to_room + to_ground + to_air) * to_room
        };
        let drawn = periodic_unheated_w_mk(&floor, 0.0) * perimeter_m;
        let expected = falls(above * area_m2, inward * area_m2, vented * area_m2, drawn);
        prop_assert!(apart(periodic_suspended_w_k(&floor, above, vented), expected) < 1e-9);
        let cellar = UnheatedBasement {
            floor_u_w_m2k: above,
            wall_height_m: 0.4,
            wall_u_w_m2k: vented,
            air_changes_per_h,
            volume_m3: 2.0 * area_m2,
        };
        let drawn = periodic_unheated_w_mk(&floor, depth_m) * perimeter_m;
        let to_air = 0.4 * perimeter_m * vented + 0.33 * air_changes_per_h * 2.0 * area_m2;
        let buried = area_m2 + depth_m * perimeter_m;
        let expected = falls(above * area_m2, inward * buried, to_air, drawn);
        prop_assert!(apart(periodic_unheated_basement_w_k(&floor, &cellar), expected) < 1e-9);
    }
}
