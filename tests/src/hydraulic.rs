//! Kind e: how flow divides in closed networks.

use crate::tally::{Tally, Tolerance};
use finrun_engine::network::{
    Component, CurvePoint, Join, LinkId, Liquid, Network, NodeId, Pump, PumpCurve, Way, solve,
};
use finrun_engine::pipe::{Bore, STANDARD_GRAVITY};
use finrun_engine::quantity::{Density, Length, Pressure, Viscosity, VolumeFlow};
use serde::Deserialize;
use std::collections::BTreeMap;

const EXACT: Tolerance = Tolerance::Share(0.001);
const EPANET: Tolerance = Tolerance::Share(0.005);
/// Where a pipe lies between laminar and turbulent flow, its friction is a convention.
const MIXED: Tolerance = Tolerance::Share(0.05);
/// EPANET's own friction formula moves losses twice as far as flows.
const EPANET_LOSS: Tolerance = Tolerance::Share(0.01);

#[derive(Debug, Deserialize)]
struct File {
    cases: Vec<Raw>,
}

#[derive(Debug, Deserialize)]
struct Raw {
    id: String,
    fluid: RawFluid,
    ref_node: String,
    links: Vec<RawLink>,
    epanet: BTreeMap<String, State>,
    exact: BTreeMap<String, State>,
    #[serde(rename = "all_turbulent_or_laminar")]
    clear: bool,
}

#[derive(Debug, Deserialize)]
struct RawFluid {
    #[serde(rename = "rho_kg_m3")]
    density: Density,
    #[serde(rename = "mu_Pa_s")]
    viscosity: Viscosity,
}

#[derive(Debug, Deserialize)]
struct RawLink {
    id: String,
    from: String,
    to: String,
    #[serde(flatten)]
    kind: RawKind,
}

#[derive(Debug, Deserialize)]
#[serde(tag = "type", rename_all = "lowercase")]
enum RawKind {
    Pipe {
        #[serde(rename = "L_m")]
        length: Length,
        #[serde(rename = "D_m")]
        diameter: Length,
        #[serde(rename = "eps_m")]
        roughness: Length,
        #[serde(rename = "K")]
        k: f64,
    },
    Pump {
        curve: RawCurve,
    },
}

#[derive(Debug, Deserialize)]
struct RawCurve {
    kind: String,
    points: Vec<(f64, f64)>,
}

/// What a link does.
#[derive(Debug, Clone, Copy, Deserialize)]
pub struct State {
    #[serde(rename = "Q_m3_s")]
    pub flow_m3_s: f64,
    /// Head at the beginning less head at the end, of the flowing liquid.
    #[serde(rename = "dH_m")]
    pub loss_m: f64,
}

/// A network with its answers.
#[derive(Debug)]
pub struct Case {
    pub id: String,
    pub network: Network,
    pub density: Density,
    pub links: Vec<Link>,
    /// No pipe lies between laminar and turbulent flow.
    pub clear: bool,
}

/// A link's answers, by EPANET and by a Newton solution with Colebrook's formula.
#[derive(Debug)]
pub struct Link {
    pub id: LinkId,
    pub name: String,
    pub epanet: State,
    pub exact: State,
}

/// The networks in a file's text.
pub fn cases(text: &str) -> Result<Vec<Case>, String> {
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    file.cases.iter().map(case).collect()
}

fn case(raw: &Raw) -> Result<Case, String> {
    let mut network = Network::new();
    let mut nodes = BTreeMap::new();
    let liquid = Liquid { density: raw.fluid.density, viscosity: raw.fluid.viscosity };
    let mut links = Vec::new();
    for link in &raw.links {
        let from = node(&mut network, &mut nodes, &link.from);
        let to = node(&mut network, &mut nodes, &link.to);
        let component = match &link.kind {
            &RawKind::Pipe { length, diameter, roughness, k } => {
                Component::Pipe { length, bore: Bore { diameter, roughness }, k, liquid }
            }
            RawKind::Pump { curve } => Component::Pump(Pump::one(pump_curve(curve)?, liquid)),
        };
        let id = network.link(from, to, component, Way::Both);
        let answer = |answers: &BTreeMap<String, State>| {
            answers.get(&link.id).copied().ok_or(format!("{}: no answer for {}", raw.id, link.id))
        };
        let (epanet, exact) = (answer(&raw.epanet)?, answer(&raw.exact)?);
        links.push(Link { id, name: link.id.clone(), epanet, exact });
    }
    let tank = nodes.get(&raw.ref_node).ok_or(format!("{}: no {}", raw.id, raw.ref_node))?;
    network.fix(*tank, Pressure::ZERO);
    let (id, clear) = (raw.id.clone(), raw.clear);
    Ok(Case { id, network, density: raw.fluid.density, links, clear })
}

fn node(network: &mut Network, nodes: &mut BTreeMap<String, NodeId>, name: &str) -> NodeId {
    *nodes.entry(name.to_string()).or_insert_with(|| network.node())
}

fn pump_curve(raw: &RawCurve) -> Result<PumpCurve, String> {
    let join = match raw.kind.as_str() {
        "power" => Join::Smooth,
        "piecewise" => Join::Straight,
        other => return Err(format!("unknown pump curve {other}")),
    };
    let point = |&(flow, head): &(f64, f64)| CurvePoint {
        flow: VolumeFlow::from_si(flow),
        head: Length::from_si(head),
    };
    let points: Vec<CurvePoint> = raw.points.iter().map(point).collect();
    PumpCurve::through(&points, join).map_err(|error| format!("pump curve: {error:?}"))
}

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for case in cases(text)? {
        let solved = solve(&case.network).map_err(|why| format!("{}: {why:?}", case.id))?;
        for link in &case.links {
            let flow = solved.flow(link.id) / case.density;
            let (from, to) = case.network.ends(link.id).ok_or("a link without ends")?;
            let loss = solved.pressure(from) - solved.pressure(to);
            let loss = loss.si() / (case.density.si() * STANDARD_GRAVITY);
            let name = format!("{} {}", case.id, link.name);
            let (exact, epanet) = (link.exact, link.epanet);
            tally.compare("flow", EXACT, &name, flow.si(), exact.flow_m3_s);
            tally.compare("head loss", EXACT, &name, loss, exact.loss_m);
            if case.clear {
                tally.compare("flow to EPANET's", EPANET, &name, flow.si(), epanet.flow_m3_s);
                let what = "head loss to EPANET's";
                tally.compare(what, EPANET_LOSS, &name, loss, epanet.loss_m);
            } else {
                let what = "flow to EPANET's in mixed regime";
                tally.compare(what, MIXED, &name, flow.si(), epanet.flow_m3_s);
                let what = "head loss to EPANET's in mixed regime";
                tally.compare(what, MIXED, &name, loss, epanet.loss_m);
            }
        }
        tally.case();
    }
    Ok(tally)
}
