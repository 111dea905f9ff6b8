//! How flow divides, beyond the reference networks.

mod balance;
mod circulation;
mod pumps;

use finrun_engine::fluid::Fluid;
use finrun_engine::network::{
    Component, CurvePoint, Join, Liquid, Network, NodeId, PumpCurve, Solved, solve,
};
use finrun_engine::pipe::{Bore, STANDARD_GRAVITY};
use finrun_engine::quantity::{Density, Length, MassFlow, Temperature, Unit, VolumeFlow};

/// Water at 160 °F.
fn water() -> Liquid {
    Liquid::at(Fluid::Water, Temperature::of(160.0, Unit::Fahrenheit))
}

/// Tube of 3/4 in copper's bore.
fn tube(length_m: f64) -> Component {
    let bore = Bore { diameter: Length::from_si(0.02), roughness: Length::from_si(1.5e-6) };
    Component::Pipe { length: Length::from_si(length_m), bore, k: 5.0, liquid: water() }
}

/// A loss that goes by the square: these metres at this flow.
fn square(head_m: f64, at_kg_s: f64, density: Density) -> Component {
    let at = MassFlow::from_si(at_kg_s) / density;
    Component::Equipment { head: Length::from_si(head_m), at, density }
}

fn circulation(kg_s: f64) -> Component {
    Component::Circulation(MassFlow::from_si(kg_s))
}

/// Metres at litres a second.
fn curve(points: &[(f64, f64)], join: Join) -> PumpCurve {
    let point = |&(flow, head): &(f64, f64)| CurvePoint {
        flow: VolumeFlow::from_si(flow / 1000.0),
        head: Length::from_si(head),
    };
    let points: Vec<CurvePoint> = points.iter().map(point).collect();
    PumpCurve::through(&points, join).expect("a curve")
}

/// A network of this many nodes that rests on the first.
fn network(nodes: usize) -> (Network, Vec<NodeId>) {
    let mut network = Network::new();
    let nodes: Vec<NodeId> = (0..nodes).map(|_| network.node()).collect();
    network.fix(nodes[0], finrun_engine::quantity::Pressure::ZERO);
    (network, nodes)
}

/// The rest of a network, having looked that what flows to each node flows from it.
fn rest(network: &Network) -> Solved {
    let solved = solve(network).expect("it rests");
    assert_balanced(network, &solved);
    solved
}

/// To a billionth of the greatest flow at each node.
fn assert_balanced(network: &Network, solved: &Solved) {
    let mut excess = vec![0.0; network.nodes()];
    let mut most = 0.0_f64;
    for link in network.links() {
        let (from, to) = network.ends(link).expect("its link");
        let flow = solved.flow(link).si();
        excess[from.index()] -= flow;
        excess[to.index()] += flow;
        most = most.max(flow.abs());
    }
    for (node, excess) in excess.iter().enumerate() {
        assert!(excess.abs() <= 1e-9 * most, "node {node} gains {excess} of {most} kg/s");
    }
}

fn head_m(pressure_pa: f64, density: Density) -> f64 {
    pressure_pa / (density.si() * STANDARD_GRAVITY)
}
