//! The network of a designed job, as plain data: for whoever wants to solve it with something else.

use super::lower::lower;
use super::pumping::Built;
use super::run::{rest, usual_drive};
use crate::design::Design;
use crate::job::Job;
use crate::network::{Component, Liquid};
use crate::quantity::Length;
use serde::Serialize;

/// A link between two numbered nodes, with the flow that the design found for it. In SI, but for Cv,
/// which is in US gallons a minute at one psi.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LoweredLink {
    pub from: usize,
    pub to: usize,
    pub mass_flow_kg_s: f64,
    #[serde(flatten)]
    pub part: LoweredPart,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum LoweredPart {
    Pipe {
        length_m: f64,
        diameter_m: f64,
        roughness_m: f64,
        k: f64,
        density_kg_m3: f64,
        viscosity_pa_s: f64,
    },
    Valve {
        cv: f64,
        density_kg_m3: f64,
    },
    Equipment {
        head_m: f64,
        at_m3_s: f64,
        density_kg_m3: f64,
    },
    /// Head against flow, from rest on; all its equals together.
    Pump {
        points_m3_s_m: Vec<(f64, f64)>,
        density_kg_m3: f64,
    },
    /// A circulator whose flow is given.
    Circulation,
    Closed,
}

/// The links of a designed job with all zones on, each at its own water's temperature; none where no
/// flows were found.
pub fn lowered(job: &Job, design: &Design) -> Vec<LoweredLink> {
    let built = Built::of(job, design);
    let on = vec![true; job.zones.len()];
    let plan = built.plan(&on, usual_drive(job));
    let network = lower(plan);
    let Ok(solved) = rest(&plan, &network, None) else { return Vec::new() };
    let network = network.network;
    let one = |id| {
        let (from, to) = network.ends(id)?;
        let part = part(network.component(id)?);
        let mass_flow_kg_s = solved.flow(id).si();
        Some(LoweredLink { from: from.index(), to: to.index(), mass_flow_kg_s, part })
    };
    network.links().filter_map(one).collect()
}

fn part(component: &Component) -> LoweredPart {
    match component {
        Component::Pipe { length, bore, k, liquid: Liquid { density, viscosity } } => {
            LoweredPart::Pipe {
                length_m: length.si(),
                diameter_m: bore.diameter.si(),
                roughness_m: bore.roughness.si(),
                k: *k,
                density_kg_m3: density.si(),
                viscosity_pa_s: viscosity.si(),
            }
        }
        Component::Valve { cv, density } => {
            LoweredPart::Valve { cv: cv.gallons_per_minute(), density_kg_m3: density.si() }
        }
        Component::Equipment { head, at, density } => LoweredPart::Equipment {
            head_m: head.si(),
            at_m3_s: at.si(),
            density_kg_m3: density.si(),
        },
        Component::Pump(pump) => {
            let (parallel, series) = (f64::from(pump.in_parallel), f64::from(pump.in_series));
            let points = (0..=20u32).map(|step| {
                let flow = pump.curve.end() * (f64::from(step) / 20.0);
                let head: Length = pump.curve.head(flow) * series;
                ((flow * parallel).si(), head.si())
            });
            LoweredPart::Pump { points_m3_s_m: points.collect(), density_kg_m3: pump.density.si() }
        }
        Component::Circulation(_) => LoweredPart::Circulation,
        Component::Closed => LoweredPart::Closed,
    }
}
