//! Pumps, alone and together, and the checks behind them.

use super::{curve, head_m, network, rest, square, water};
use finrun_engine::network::{
    Component, CurveError, CurvePoint, Join, LinkId, NodeId, Note, Pump, PumpCurve, Way, notes,
    solve,
};
use finrun_engine::quantity::{Length, VolumeFlow};
use proptest::prelude::*;

/// Three points that a power goes through, litres a second and metres.
const POINTS: [(f64, f64); 3] = [(0.0, 4.0), (0.3, 3.0), (0.6, 0.8)];

fn pump() -> Pump {
    Pump::one(curve(&POINTS, Join::Smooth), water())
}

/// The flow in kg/s and the head in metres of a pump on a loss of 2 m at 0.3 kg/s, by the square.
fn duty(pump: Pump) -> (f64, f64) {
    let density = water().density;
    let (mut network, nodes) = network(2);
    let moved = network.link(nodes[0], nodes[1], Component::Pump(pump), Way::Both);
    network.link(nodes[1], nodes[0], square(2.0, 0.3, density), Way::Both);
    let solved = rest(&network);
    let rise = solved.pressure(nodes[1]) - solved.pressure(nodes[0]);
    (solved.flow(moved).si(), head_m(rise.si(), density))
}

fn assert_same((flow, head): (f64, f64), (other_flow, other_head): (f64, f64)) {
    assert!((flow / other_flow - 1.0).abs() < 1e-7, "{flow} for {other_flow} kg/s");
    assert!((head / other_head - 1.0).abs() < 1e-7, "{head} for {other_head} m");
}

/// The affinity laws, from memory: on a loss by the square flow goes with the speed, head with its
/// square.
#[test]
fn at_half_the_speed_half_flows_under_a_quarter_of_the_head() {
    let (flow, head) = duty(pump());
    assert_same(duty(Pump { speed: 0.5, ..pump() }), (flow / 2.0, head / 4.0));
    assert!((0.1..0.6).contains(&flow));
}

#[test]
fn pumps_in_parallel_add_their_flows_and_in_series_their_heads() {
    let drawn = |flows: f64, heads: f64| {
        let points = POINTS.map(|(flow, head)| (flows * flow, heads * head));
        duty(Pump::one(curve(&points, Join::Smooth), water()))
    };
    let parallel = duty(Pump { in_parallel: 2, ..pump() });
    let series = duty(Pump { in_series: 2, ..pump() });
    assert_same(parallel, drawn(2.0, 1.0));
    assert_same(series, drawn(1.0, 2.0));
    assert_same(duty(Pump { in_parallel: 3, in_series: 2, ..pump() }), drawn(3.0, 2.0));

    // The same with every pump a link.
    let density = water().density;
    for (middle, expected) in [(false, parallel), (true, series)] {
        let (mut network, nodes) = network(3);
        let (back, supply, between) = (nodes[0], nodes[1], nodes[2]);
        if middle {
            network.link(back, between, Component::Pump(pump()), Way::Both);
            network.link(between, supply, Component::Pump(pump()), Way::Both);
        } else {
            network.link(back, supply, Component::Pump(pump()), Way::Both);
            network.link(back, supply, Component::Pump(pump()), Way::Forward);
        }
        let loss = network.link(supply, back, square(2.0, 0.3, density), Way::Both);
        let solved = rest(&network);
        let head = head_m((solved.pressure(supply) - solved.pressure(back)).si(), density);
        assert_same((solved.flow(loss).si(), head), expected);
    }
}

/// A zone with a strong pump beside one with a weak pump, and what both share.
fn two_zones(way: Way) -> (finrun_engine::network::Network, [LinkId; 3], [NodeId; 2]) {
    let density = water().density;
    let (mut network, nodes) = network(4);
    let (back, supply) = (nodes[0], nodes[1]);
    let shared = network.link(back, supply, square(2.0, 0.3, density), Way::Both);
    let weak = Pump::one(curve(&[(0.0, 0.5), (0.2, 0.3), (0.4, 0.1)], Join::Smooth), water());
    let strong = network.link(supply, nodes[2], Component::Pump(pump()), way);
    network.link(nodes[2], back, square(0.5, 0.3, density), Way::Both);
    let weak = network.link(supply, nodes[3], Component::Pump(weak), way);
    network.link(nodes[3], back, square(0.5, 0.3, density), Way::Both);
    (network, [shared, strong, weak], [back, supply])
}

#[test]
fn a_check_keeps_a_strong_pump_from_turning_a_weak_zone_back() {
    let (open, [shared, _, weak], _) = two_zones(Way::Both);
    let solved = rest(&open);
    assert!(solved.flow(weak).si() < -0.01 * solved.flow(shared).si());
    assert_eq!(notes(&open, &solved), [Note::PumpBackward(weak)]);

    let (checked, [shared, strong, weak], [back, supply]) = two_zones(Way::Forward);
    let solved = rest(&checked);
    assert_eq!(solved.flow(weak).si(), 0.0);
    assert_eq!(notes(&checked, &solved), [Note::PumpStalled(weak)]);
    // The strong zone is then alone, on both losses.
    let density = water().density;
    let (mut alone, nodes) = network(2);
    let moved = alone.link(nodes[0], nodes[1], Component::Pump(pump()), Way::Both);
    alone.link(nodes[1], nodes[0], square(2.5, 0.3, density), Way::Both);
    let expected = rest(&alone).flow(moved).si();
    for link in [shared, strong] {
        assert!((solved.flow(link).si() / expected - 1.0).abs() < 1e-7);
    }
    // The headers press harder on the shut check than the weak pump's half metre.
    let across = solved.pressure(back) - solved.pressure(supply);
    assert!(head_m(across.si(), density) > 0.5);
}

#[test]
fn a_curve_that_is_none_is_refused_with_the_point() {
    let through = |points: &[(f64, f64)]| {
        let point = |&(flow, head): &(f64, f64)| CurvePoint {
            flow: VolumeFlow::from_si(flow / 1000.0),
            head: Length::from_si(head),
        };
        let points: Vec<CurvePoint> = points.iter().map(point).collect();
        PumpCurve::through(&points, Join::Smooth).map(|_| ())
    };
    // In any order: the place is that of the list as given.
    assert_eq!(through(&[(0.4, 1.0), (0.0, 3.0), (0.2, 3.1)]), Err(CurveError::Rising(2)));
    assert_eq!(through(&[(0.4, 3.2), (0.0, 3.0), (0.2, 2.0)]), Err(CurveError::Rising(0)));
    assert_eq!(through(&[(0.0, 3.0), (0.2, 2.0), (0.2, 1.0)]), Err(CurveError::Repeated(2)));
    assert_eq!(through(&[(0.0, 3.0), (0.2, 2.0), (0.4, -1.0)]), Err(CurveError::Negative(2)));
    assert_eq!(through(&[(0.0, 3.0), (-0.2, 2.0), (0.4, 1.0)]), Err(CurveError::Negative(1)));
    let not = f64::NAN;
    assert_eq!(through(&[(0.0, not), (0.2, 2.0), (0.4, 1.0)]), Err(CurveError::NotFinite(0)));
    assert_eq!(through(&[(0.0, 3.0), (0.2, 2.0)]), Err(CurveError::TooFewPoints));
    assert_eq!(through(&[(0.0, 0.0), (0.2, 0.0), (0.4, 0.0)]), Err(CurveError::NoHead));
    assert_eq!(through(&[(0.4, 1.0), (0.0, 3.0), (0.2, 3.0)]), Ok(()));
}

proptest! {
    /// Points in steps of 0.2 to 1 l/s, level here and there.
    #[test]
    fn a_curve_through_many_points_meets_them_smoothly_and_never_rises(
        steps in proptest::collection::vec((0.2..1.0, prop_oneof![Just(0.0), 0.0..2.0]), 3..8),
        first in 0.0..0.3_f64,
    ) {
        let mut points = vec![(first, 1.0 + steps.iter().map(|step| step.1).sum::<f64>())];
        for (flow, head) in steps {
            let last = points[points.len() - 1];
            points.push((last.0 + flow, last.1 - head));
        }
        let curve = curve(&points, Join::Smooth);
        let head = |litres: f64| curve.head(VolumeFlow::from_si(litres / 1000.0)).si();
        let small = 1e-6;
        for &(flow, expected) in &points {
            prop_assert!((head(flow) - expected).abs() < 1e-9);
            let before = (head(flow) - head(flow - small)) / small;
            let after = (head(flow + small) - head(flow)) / small;
            prop_assert!((before - after).abs() < 0.01, "{before} and {after} at {flow}");
        }
        let end = points[points.len() - 1].0;
        let places = (-100..=1200).map(|i| head(end * f64::from(i) / 1000.0));
        let places: Vec<f64> = places.collect();
        for pair in places.windows(2) {
            prop_assert!(pair[1] <= pair[0] + 1e-12, "{} rises to {}", pair[0], pair[1]);
        }
    }
}

#[test]
fn a_pump_turned_off_by_a_number_is_named() {
    for wrong in [Pump { speed: 0.0, ..pump() }, Pump { in_parallel: 0, ..pump() }] {
        let (mut network, nodes) = network(2);
        let bad = network.link(nodes[0], nodes[1], Component::Pump(wrong), Way::Both);
        network.link(nodes[1], nodes[0], square(2.0, 0.3, water().density), Way::Both);
        assert_eq!(solve(&network), Err(finrun_engine::network::NotSolved::BadNumber(bad)));
    }
}
