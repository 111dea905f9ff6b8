//! Circulators still to be chosen, whose flow is given.

use super::{circulation, curve, head_m, network, rest, square, tube, water};
use finrun_engine::network::{
    Component, Join, Network, NotSolved, Pump, Way, notes, solve, solve_from,
};
use finrun_engine::pipe::STANDARD_GRAVITY;

/// Three tubes and, closing the ring, what moves the water. The mover is the last link.
fn ring(mover: Component) -> Network {
    let (mut network, nodes) = network(4);
    for (i, length) in [12.0, 30.0, 7.0].into_iter().enumerate() {
        network.link(nodes[i], nodes[i + 1], tube(length), Way::Both);
    }
    network.link(nodes[3], nodes[0], mover, Way::Forward);
    network
}

#[test]
fn a_ring_carries_what_is_given_and_the_rise_is_its_loss() {
    // Laminar, between, turbulent.
    for flow in [0.005, 0.02, 0.2] {
        let given = ring(circulation(flow));
        let solved = rest(&given);
        let links: Vec<_> = given.links().collect();
        for &link in &links {
            assert!((solved.flow(link).si() / flow - 1.0).abs() < 1e-9, "{link:?}");
        }
        let rise = |link| {
            let (from, to) = given.ends(link).expect("its link");
            (solved.pressure(to) - solved.pressure(from)).si()
        };
        let loss: f64 = links[..3].iter().map(|&link| -rise(link)).sum();
        assert!(loss > 0.0 && (rise(links[3]) / loss - 1.0).abs() < 1e-9);
        assert!(solved.residual < 1e-9, "{}", solved.residual);
        assert!(notes(&given, &solved).is_empty());

        // A pump that gives this head at this flow makes the same of the ring.
        let density = water().density;
        let (litres, head) = (flow / density.si() * 1000.0, head_m(rise(links[3]), density));
        let points = [(0.0, 1.5 * head), (litres, head), (2.0 * litres, 0.2 * head)];
        let pump = Pump::one(curve(&points, Join::Smooth), water());
        let pumped = rest(&ring(Component::Pump(pump)));
        for &link in &links {
            assert!((pumped.flow(link).si() / flow - 1.0).abs() < 1e-7, "{link:?}");
        }
    }
}

/// Two circulations between the same headers, with a loss and a check behind each, and what both
/// share.
#[test]
fn circulations_side_by_side_keep_their_flows() {
    let density = water().density;
    let (mut network, nodes) = network(4);
    let (back, supply) = (nodes[0], nodes[1]);
    let shared = network.link(back, supply, square(0.5, 0.3, density), Way::Both);
    let one = network.link(supply, nodes[2], circulation(0.1), Way::Forward);
    network.link(nodes[2], back, square(1.0, 0.1, density), Way::Forward);
    let two = network.link(supply, nodes[3], circulation(0.2), Way::Both);
    network.link(nodes[3], back, square(3.0, 0.1, density), Way::Forward);
    let solved = rest(&network);
    assert!((solved.flow(shared).si() - 0.3).abs() < 1e-9);
    // By hand: each lifts its own loss and the shared one; the second has twice the flow of its
    // mark, four times the head.
    for (link, flow, head) in [(one, 0.1, 1.0 + 0.5), (two, 0.2, 12.0 + 0.5)] {
        let (from, to) = network.ends(link).expect("its link");
        let rise = (solved.pressure(to) - solved.pressure(from)).si();
        assert_eq!(solved.flow(link).si(), flow);
        let expected = head * density.si() * STANDARD_GRAVITY;
        assert!((rise / expected - 1.0).abs() < 1e-6, "{rise} for {expected}");
    }
    assert!(notes(&network, &solved).is_empty());

    // Changed a little, and begun where it stood.
    *network.component_mut(one).expect("its link") = circulation(0.15);
    let again = solve_from(&network, &solved).expect("it rests");
    super::assert_balanced(&network, &again);
    assert!((again.flow(shared).si() - 0.35).abs() < 1e-9);
    assert!(again.iterations <= solved.iterations);
}

/// A branch with a pump of its own beside a given flow, and a check that the pump must not be let
/// back through.
#[test]
fn checks_shut_beside_a_circulation() {
    let density = water().density;
    let (mut network, nodes) = network(3);
    let (back, supply) = (nodes[0], nodes[1]);
    // The boiler takes next to nothing of the pump's head; the second zone's pump stands still.
    network.link(back, supply, square(0.8, 0.2, density), Way::Both);
    let moved = network.link(supply, nodes[2], circulation(0.2), Way::Both);
    network.link(nodes[2], back, square(2.0, 0.2, density), Way::Forward);
    let idle = network.link(supply, back, square(1.0, 0.1, density), Way::Forward);
    let solved = rest(&network);
    // Water would rather go backward through the idle zone than through the boiler.
    assert_eq!(solved.flow(idle).si(), 0.0);
    assert_eq!(solved.flow(moved).si(), 0.2);
    let by_the_boiler = (solved.pressure(back) - solved.pressure(supply)).si();
    assert!((by_the_boiler / (0.8 * density.si() * STANDARD_GRAVITY) - 1.0).abs() < 1e-6);
}

#[test]
fn without_a_way_round_there_is_no_circulation() {
    let (mut alone, nodes) = network(2);
    let stuck = alone.link(nodes[0], nodes[1], circulation(0.1), Way::Both);
    alone.link(nodes[1], nodes[0], Component::Closed, Way::Both);
    assert_eq!(solve(&alone), Err(NotSolved::PumpAgainstClosed(stuck)));

    // A check against it shuts, and leaves none either.
    let (mut checked, nodes) = network(2);
    let stuck = checked.link(nodes[0], nodes[1], circulation(0.1), Way::Both);
    checked.link(nodes[0], nodes[1], tube(5.0), Way::Forward);
    assert_eq!(solve(&checked), Err(NotSolved::PumpAgainstClosed(stuck)));

    // Nor is another circulation a way, not for a pump either.
    let (mut twice, nodes) = network(3);
    let first = twice.link(nodes[0], nodes[1], circulation(0.1), Way::Both);
    twice.link(nodes[1], nodes[2], circulation(0.1), Way::Both);
    twice.link(nodes[2], nodes[0], tube(5.0), Way::Both);
    assert_eq!(solve(&twice), Err(NotSolved::PumpAgainstClosed(first)));
    let pump = Pump::one(curve(&[(0.0, 3.0), (0.1, 2.0), (0.2, 1.0)], Join::Smooth), water());
    *twice.component_mut(first).expect("its link") = Component::Pump(pump);
    assert_eq!(solve(&twice), Err(NotSolved::PumpAgainstClosed(first)));
}

#[test]
fn no_flow_is_as_closed_and_a_number_without_meaning_is_named() {
    let none = rest(&ring(circulation(0.0)));
    assert!(none.flows.iter().all(|flow| flow.si() == 0.0));
    for wrong in [-0.1, f64::NAN, f64::INFINITY] {
        let network = ring(circulation(wrong));
        let mover = network.links().last().expect("four links");
        assert_eq!(solve(&network), Err(NotSolved::BadNumber(mover)));
    }
}
