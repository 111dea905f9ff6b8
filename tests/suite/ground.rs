//! Ground heat loss: against the formulas written out in Python, and at its limits.

mod properties;
mod published;
mod slopes;

use finrun_engine::building::ground::{
    EdgeInsulation, Floor, Footprint, Ground, Placement, Shield, Soil, Underfloor,
    UnheatedBasement, edge_psi_w_mk, floor_u_w_m2k, periodic_basement_w_mk, periodic_slab_w_mk,
    periodic_suspended_w_k, periodic_unheated_basement_w_k, periodic_unheated_w_mk,
    suspended_ground_u_w_m2k, suspended_u_w_m2k, vented_u_w_m2k, wall_equivalent_m, wall_u_w_m2k,
};
use finrun_engine::named::find;
use finrun_engine::numeric::ln;
use serde_json::Value;
use std::f64::consts::PI;

fn apart(found: f64, expected: f64) -> f64 {
    (found / expected - 1.0).abs()
}

/// What `tests/reference/scripts/i_ground_iso13370.py` wrote.
#[test]
fn every_formula_gives_what_it_gives_in_python() {
    let text = include_str!("../reference/i_ground_iso13370.json");
    let file: Value = serde_json::from_str(text).expect("a file");
    let cases = file["cases"].as_array().expect("cases");
    assert_eq!(cases.len(), 210);
    for case in cases {
        for (name, expected) in case["expected"].as_object().expect("answers") {
            let kind = case["kind"].as_str().expect("a kind");
            let found = answer(kind, name, &case["inputs"]);
            let expected = expected.as_f64().expect("a number");
            assert!(apart(found, expected) < 1e-9, "{} {name}: {found} {expected}", case["id"]);
        }
    }
}

fn answer(kind: &str, name: &str, inputs: &Value) -> f64 {
    let number = |name: &str| inputs[name].as_f64().expect(name);
    let word = |name: &str| inputs[name].as_str().expect(name);
    let ground: Ground = find::<Soil>(word("soil")).expect("a soil").ground();
    assert_eq!(ground.conductivity_w_mk, number("conductivity_w_mk"));
    assert_eq!(ground.periodic_depth_m, number("periodic_depth_m"));
    let footprint = Footprint {
        area_m2: number("area_m2"),
        perimeter_m: number("perimeter_m"),
        wall_thickness_m: number("wall_thickness_m"),
        depth_m: inputs["depth_m"].as_f64().unwrap_or(0.0),
    };
    let floor = Floor { ground, footprint, resistance_m2k_w: number("floor_resistance_m2k_w") };
    let perimeter = footprint.perimeter_m;
    let edge = || EdgeInsulation {
        placement: find(word("placement")).expect("a placement"),
        depth_m: number("edge_depth_m"),
        thickness_m: number("edge_thickness_m"),
        resistance_m2k_w: number("edge_resistance_m2k_w"),
    };
    let vented = || {
        let under = Underfloor {
            height_m: number("height_m"),
            wall_u_w_m2k: number("wall_u_w_m2k"),
            vent_m2_m: number("vent_m2_m"),
            wind_m_s: number("wind_m_s"),
            shield: find::<Shield>(word("shield")).expect("a shield"),
        };
        vented_u_w_m2k(&footprint, &under)
    };
    let wall_r = || number("wall_resistance_m2k_w");
    match (kind, name) {
        ("slab", "characteristic_m") => footprint.characteristic_m(),
        ("slab", "floor_thickness_m") => floor.equivalent_m(),
        ("slab", "periodic_w_k") => periodic_slab_w_mk(&floor, None) * perimeter,
        ("edge", "floor_u_w_m2k") => floor_u_w_m2k(&floor, Some(&edge())),
        ("edge", "psi_w_mk") => edge_psi_w_mk(&floor, &edge()),
        ("edge", "periodic_w_k") => periodic_slab_w_mk(&floor, Some(&edge())) * perimeter,
        ("basement", "wall_thickness_equivalent_m") => wall_equivalent_m(&ground, wall_r()),
        ("basement", "periodic_w_k") => {
            periodic_basement_w_mk(&floor, footprint.depth_m, wall_r()) * perimeter
        }
        ("basement" | "unheated", "wall_u_w_m2k") => {
            wall_u_w_m2k(&floor, footprint.depth_m, wall_r())
        }
        ("slab" | "basement" | "unheated", "floor_u_w_m2k") => floor_u_w_m2k(&floor, None),
        ("suspended", "ground_u_w_m2k") => suspended_ground_u_w_m2k(&floor),
        ("suspended", "vented_u_w_m2k") => vented(),
        ("suspended", "floor_u_w_m2k") => {
            let ground_u = suspended_ground_u_w_m2k(&floor);
            suspended_u_w_m2k(number("suspended_u_w_m2k"), ground_u, vented())
        }
        ("suspended", "ground_periodic_w_k") => periodic_unheated_w_mk(&floor, 0.0) * perimeter,
        ("suspended", "periodic_w_k") => {
            periodic_suspended_w_k(&floor, number("suspended_u_w_m2k"), vented())
        }
        ("unheated", "periodic_w_k") => {
            let basement = UnheatedBasement {
                floor_u_w_m2k: number("above_u_w_m2k"),
                wall_height_m: number("height_m"),
                wall_u_w_m2k: number("wall_u_w_m2k"),
                air_changes_per_h: number("air_changes_per_h"),
                volume_m3: number("volume_m3"),
            };
            periodic_unheated_basement_w_k(&floor, &basement)
        }
        _ => panic!("{kind} has no {name}"),
    }
}

/// A floor of `area_m2` and `perimeter_m` on sand, with walls of 0.3 m.
fn on_sand(area_m2: f64, perimeter_m: f64, resistance_m2k_w: f64) -> Floor {
    let footprint = Footprint { area_m2, perimeter_m, wall_thickness_m: 0.3, depth_m: 0.0 };
    Floor { ground: Soil::Sand.ground(), footprint, resistance_m2k_w }
}

fn at_depth(floor: Floor, depth_m: f64) -> Floor {
    Floor { footprint: Footprint { depth_m, ..floor.footprint }, ..floor }
}

fn strip(placement: Placement, depth_m: f64) -> EdgeInsulation {
    EdgeInsulation { placement, depth_m, thickness_m: 0.05, resistance_m2k_w: 1.76 }
}

#[test]
fn a_very_thick_floor_is_its_own_resistance() {
    assert!(apart(floor_u_w_m2k(&on_sand(100.0, 40.0, 1e5), None), 1e-5) < 1e-4);
    let wall = wall_u_w_m2k(&at_depth(on_sand(100.0, 40.0, 1e5), 2.0), 2.0, 1e5);
    // Both ways round the wall: the formula's factors 2 / pi and 1.5 stay, 5 % under 1 / R.
    assert!(apart(wall, 3.0 / PI * 1e-5) < 1e-4, "{wall}");
}

/// `(2 lambda / (pi B)) ln(pi B / d_f)`: falls to nothing, though not as fast as 1 / B.
#[test]
fn a_very_large_slab_loses_at_its_edge_alone() {
    let of_width = |b: f64| floor_u_w_m2k(&on_sand(b, 2.0, 0.0), None);
    let widths = [1.0, 2.0, 5.0, 10.0, 100.0, 1e4, 1e6, 1e8];
    assert!(widths.windows(2).all(|pair| of_width(pair[1]) < of_width(pair[0])));
    let thickness = 0.3 + 2.0 * 0.21;
    for b in [1e6_f64, 1e8] {
        let expected = 4.0 / (PI * b) * ln(PI * b / thickness);
        assert!(apart(of_width(b), expected) < 1e-6, "{b}");
    }
    assert!(of_width(1e8) < 1e-6);
}

#[test]
fn without_an_exposed_edge_nothing_flows() {
    let inner = on_sand(20.0, 0.0, 0.5);
    assert_eq!(floor_u_w_m2k(&inner, None), 0.0);
    assert_eq!(floor_u_w_m2k(&inner, Some(&strip(Placement::Vertical, 0.6))), 0.0);
    assert_eq!(suspended_ground_u_w_m2k(&inner), 0.0);
}

#[test]
fn a_basement_without_depth_is_a_slab() {
    let slab = on_sand(80.0, 36.0, 0.4);
    let shallow = at_depth(slab, 1e-9);
    assert!(apart(floor_u_w_m2k(&shallow, None), floor_u_w_m2k(&slab, None)) < 1e-8);
    let bare = periodic_slab_w_mk(&slab, None);
    assert_eq!(periodic_basement_w_mk(&slab, 0.0, 1.0), bare);
    assert_eq!(periodic_unheated_w_mk(&slab, 0.0), bare);
    // The wall's formula has the depth below its line: what it gives at none is its limit.
    for wall_r in [0.1, 2.0] {
        let (none, little) =
            (wall_u_w_m2k(&slab, 0.0, wall_r), wall_u_w_m2k(&shallow, 1e-7, wall_r));
        assert!(apart(none, little) < 1e-6, "{none} {little}");
    }
}

/// At `d_f = B` the standard changes its formula, and the two are not quite one: on a floor of any
/// size and any ground the second is 0.014 % higher.
#[test]
fn the_two_formulas_of_a_floor_meet_within_two_hundredths_of_a_percent() {
    for soil in [Soil::Clay, Soil::Sand, Soil::Rock] {
        for b in [1.0, 3.0, 20.0] {
            let ground: Ground = soil.ground();
            let footprint = Footprint { wall_thickness_m: 0.0, ..on_sand(b, 2.0, 0.0).footprint };
            let of_thickness = |thickness: f64| {
                let resistance_m2k_w = thickness / ground.conductivity_w_mk - 0.21;
                floor_u_w_m2k(&Floor { ground, footprint, resistance_m2k_w }, None)
            };
            let jump = of_thickness(b * (1.0 + 1e-9)) / of_thickness(b * (1.0 - 1e-9)) - 1.0;
            assert!((1.3e-4..1.4e-4).contains(&jump), "{soil:?} {b}: {jump}");
        }
    }
}

#[test]
fn the_wall_is_continuous_where_the_lesser_thickness_changes() {
    let floor = at_depth(on_sand(80.0, 36.0, 1.0), 2.0);
    let same = floor.equivalent_m() / 2.0 - 0.17;
    assert!(apart(wall_equivalent_m(&floor.ground, same), floor.equivalent_m()) < 1e-12);
    let at = |wall_r: f64| wall_u_w_m2k(&floor, 2.0, wall_r);
    assert!(apart(at(same - 1e-9), at(same + 1e-9)) < 1e-8);
    // The floor's insulation counts only while it is the lesser of the two.
    let better = Floor { resistance_m2k_w: 3.0, ..floor };
    assert!(wall_u_w_m2k(&better, 2.0, 4.0) > at(4.0));
    assert_eq!(wall_u_w_m2k(&better, 2.0, 0.2), at(0.2));
}

#[test]
fn edge_insulation_reaches_from_none_to_all() {
    let floor = on_sand(100.0, 40.0, 0.0);
    let added = 2.0 * 1.76 - 0.05;
    let whole = on_sand(100.0, 40.0, added / 2.0);
    for placement in [Placement::Horizontal, Placement::Vertical] {
        assert_eq!(edge_psi_w_mk(&floor, &strip(placement, 0.0)), 0.0);
        let bare = periodic_slab_w_mk(&floor, None);
        assert_eq!(periodic_slab_w_mk(&floor, Some(&strip(placement, 0.0))), bare);
        let far = strip(placement, 1e9);
        let expected = -(2.0 / PI) * ln(whole.equivalent_m() / floor.equivalent_m());
        assert!(apart(edge_psi_w_mk(&floor, &far), expected) < 1e-6);
        let (found, expected) =
            (periodic_slab_w_mk(&floor, Some(&far)), periodic_slab_w_mk(&whole, None));
        assert!(apart(found, expected) < 1e-12);
    }
    // A vertical strip counts twice its depth.
    assert_eq!(
        edge_psi_w_mk(&floor, &strip(Placement::Vertical, 0.6)),
        edge_psi_w_mk(&floor, &strip(Placement::Horizontal, 1.2))
    );
    // In a basement there is no such edge.
    let basement = at_depth(floor, 2.0);
    let edge = strip(Placement::Vertical, 0.6);
    assert_eq!(floor_u_w_m2k(&basement, Some(&edge)), floor_u_w_m2k(&basement, None));
}

#[test]
fn a_strip_worse_than_the_ground_it_replaces_is_none() {
    let floor = on_sand(100.0, 40.0, 0.0);
    let steel = EdgeInsulation { resistance_m2k_w: 0.0, ..strip(Placement::Vertical, 0.6) };
    assert_eq!(edge_psi_w_mk(&floor, &steel), 0.0);
    assert_eq!(periodic_slab_w_mk(&floor, Some(&steel)), periodic_slab_w_mk(&floor, None));
}

#[test]
fn no_floor_gains_heat_from_winter() {
    let passage = on_sand(3.0, 12.0, 0.0);
    let edge = EdgeInsulation { resistance_m2k_w: 5.0, ..strip(Placement::Vertical, 1.5) };
    let (bare, with_edge) = (floor_u_w_m2k(&passage, None), floor_u_w_m2k(&passage, Some(&edge)));
    assert!(bare + 2.0 * edge_psi_w_mk(&passage, &edge) / 0.5 < 0.0, "not narrow enough to tell");
    assert_eq!(with_edge, 0.0);
}

#[test]
fn unheated_spaces_open_or_closed_to_the_full() {
    let floor = at_depth(on_sand(60.0, 32.0, 0.2), 1.5);
    // So open that the space is outdoors: only the floor above resists, in either part.
    assert!(apart(suspended_u_w_m2k(0.4, 0.5, 1e9), 0.4) < 1e-8);
    assert!(apart(periodic_suspended_w_k(&floor, 0.4, 1e9), 0.4 * 60.0) < 1e-6);
    let cellar = UnheatedBasement {
        floor_u_w_m2k: 0.4,
        wall_height_m: 0.5,
        wall_u_w_m2k: 1.0,
        air_changes_per_h: 0.3,
        volume_m3: 120.0,
    };
    let open = UnheatedBasement { air_changes_per_h: 1e9, ..cellar };
    assert!(apart(periodic_unheated_basement_w_k(&floor, &open), 0.4 * 60.0) < 1e-6);
    // No floor above, and nothing to outdoors: what the ground lets through.
    assert!(apart(suspended_u_w_m2k(1e9, 0.5, 0.2), 0.7) < 1e-8);
    let bare = UnheatedBasement { floor_u_w_m2k: 1e12, wall_height_m: 0.0, ..cellar };
    let still = UnheatedBasement { air_changes_per_h: 0.0, ..bare };
    let ground = periodic_unheated_w_mk(&floor, 1.5) * 32.0;
    assert!(apart(periodic_unheated_basement_w_k(&floor, &still), ground) < 1e-6);
    let crawl = periodic_unheated_w_mk(&floor, 0.0) * 32.0;
    assert!(apart(periodic_suspended_w_k(&floor, 1e12, 0.0), crawl) < 1e-6);
}

#[test]
fn stored_names_do_not_change() {
    let names = [
        serde_json::to_string(&[Soil::Clay, Soil::Sand, Soil::Rock]),
        serde_json::to_string(&[Placement::Horizontal, Placement::Vertical]),
        serde_json::to_string(&[Shield::Sheltered, Shield::Average, Shield::Exposed]),
    ]
    .map(|names| names.expect("names"));
    let expected = [
        r#"["clay-or-silt","sand-or-gravel","rock"]"#,
        r#"["horizontal","vertical"]"#,
        r#"["sheltered","average","exposed"]"#,
    ];
    assert_eq!(names, expected);
}
