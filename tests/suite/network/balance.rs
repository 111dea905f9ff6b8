//! What holds for any network.

use super::{assert_balanced, circulation, curve, network, square, tube, water};
use finrun_engine::network::{
    Component, Join, LinkId, Network, NodeId, Pump, Solved, Way, solve, solve_from,
};
use finrun_engine::pipe::Cv;
use finrun_engine::quantity::MassFlow;
use proptest::prelude::*;

fn components() -> impl Strategy<Value = Component> {
    let density = water().density;
    prop_oneof![
        (0.1..40.0).prop_map(tube),
        (0.5..20.0).prop_map(move |cv| {
            Component::Valve { cv: Cv::new(cv).expect("positive"), density }
        }),
        (0.0..5.0).prop_map(move |head| square(head, 0.2, density)),
        (0.0..0.5).prop_map(circulation),
        Just(Component::Closed),
        (1.0..6.0, 0.2..1.0).prop_map(|(head, speed)| {
            let points = [(0.0, head), (0.2, 0.8 * head), (0.5, 0.4 * head), (0.7, 0.0)];
            let one = Pump::one(curve(&points, Join::Smooth), water());
            Component::Pump(Pump { speed, ..one })
        }),
    ]
}

fn ways() -> impl Strategy<Value = Way> {
    prop_oneof![Just(Way::Both), Just(Way::Forward)]
}

/// A ring of tubes, so that everything has a way round, and whatever else between its nodes.
fn networks() -> impl Strategy<Value = (Network, Vec<(LinkId, Way)>)> {
    let across =
        proptest::collection::vec((components(), ways(), 0..100_usize, 1..100_usize), 1..9);
    let ring = proptest::collection::vec(0.5..30.0_f64, 3..8);
    (ring, across).prop_map(|(ring, across)| {
        let (mut network, nodes) = network(ring.len());
        let node = |i: usize| -> NodeId { nodes[i % nodes.len()] };
        let mut links = Vec::new();
        for (i, length) in ring.iter().enumerate() {
            links.push((network.link(node(i), node(i + 1), tube(*length), Way::Both), Way::Both));
        }
        for (component, way, from, on) in across {
            let to = from + 1 + on % (nodes.len() - 1);
            links.push((network.link(node(from), node(to), component, way), way));
        }
        (network, links)
    })
}

/// Nothing flows back through a check, and nothing holds a shut one up.
fn assert_checks(network: &Network, links: &[(LinkId, Way)], solved: &Solved) {
    let most = solved.flows.iter().fold(0.0_f64, |most, flow| most.max(flow.si().abs()));
    let steepest = solved.pressures.iter().fold(0.0_f64, |most, p| most.max(p.si().abs()));
    for &(link, _) in links.iter().filter(|(_, way)| *way == Way::Forward) {
        let flow = solved.flow(link).si();
        assert!(flow >= -1e-8 * most - 1e-9, "{link:?} runs back: {flow}");
        let (from, to) = network.ends(link).expect("its link");
        let across = (solved.pressure(from) - solved.pressure(to)).si();
        let lift = match network.component(link) {
            Some(Component::Closed | Component::Circulation(_)) | None => continue,
            Some(Component::Pump(pump)) => pump.lift(MassFlow::ZERO).si(),
            Some(_) => 0.0,
        };
        let held_up = flow == 0.0 && across + lift > 1e-6 * steepest + 1e-3;
        assert!(!held_up, "{link:?} is shut under {across} and {lift} Pa");
    }
}

proptest! {
    #[test]
    fn what_flows_to_a_node_flows_from_it_and_checks_hold((network, links) in networks()) {
        let solved = solve(&network);
        prop_assert!(solved.is_ok(), "{solved:?}");
        let solved = solved.expect("just looked at");
        prop_assert!(solved.residual < 1e-6, "{}", solved.residual);
        assert_balanced(&network, &solved);
        assert_checks(&network, &links, &solved);

        // Begun elsewhere, it comes to the same.
        let mut changed = network.clone();
        *changed.component_mut(links[0].0).expect("its link") = tube(55.0);
        let other = solve(&changed).expect("it rests");
        let again = solve_from(&network, &other).expect("it rests");
        assert_balanced(&network, &again);
        let most = solved.flows.iter().fold(1e-3_f64, |most, flow| most.max(flow.si().abs()));
        for (one, two) in solved.flows.iter().zip(&again.flows) {
            prop_assert!((one.si() - two.si()).abs() < 1e-6 * most, "{one:?} and {two:?}");
        }
    }
}
