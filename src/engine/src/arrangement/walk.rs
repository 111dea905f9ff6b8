//! The water's temperature along the network, once its flow is known.

use super::lower::{Plumbing, Stretch};
use crate::fluid::{Fluid, Stream};
use crate::network::{Passage, Solved, pass};
use crate::quantity::{MassFlow, Pressure, Temperature};

/// What the water does everywhere.
#[derive(Debug, Clone)]
pub(super) struct Walked {
    /// In the order of the stretches.
    pub(super) passages: Vec<Passage>,
    /// What comes back to the boiler.
    pub(super) back: Temperature,
}

/// Less than this share of the greatest flow is none.
const STILL: f64 = 1e-9;

/// Water arriving at a node.
#[derive(Debug, Clone, Copy, Default)]
struct Arriving {
    /// Links not yet walked that bring water here.
    awaited: u32,
    mass_kg_s: f64,
    /// Sum of mass flow and temperature.
    weighted: f64,
    /// How many bring any.
    flowing: u32,
    /// Of the last of those; of any that came, where nothing flows.
    last_k: f64,
}

impl Arriving {
    fn add(&mut self, mass_kg_s: f64, water: Temperature) {
        if mass_kg_s > 0.0 || self.flowing == 0 {
            self.last_k = water.si();
        }
        self.flowing += u32::from(mass_kg_s > 0.0);
        self.mass_kg_s += mass_kg_s;
        self.weighted += mass_kg_s * water.si();
    }

    /// The mixture. What comes by one way only is not mixed, and keeps its last digit.
    fn mixed(&self) -> Temperature {
        Temperature::from_si(match self.flowing {
            0 | 1 => self.last_k,
            _ => self.weighted / self.mass_kg_s,
        })
    }
}

/// Follows the water from the boiler round, each node mixed by mass flow. `prepare` sees each stretch
/// and its stream before it is passed, and may change the stretch.
///
/// Where nothing flows the water counts as passing without heat.
pub(super) fn walk(
    plumbing: &mut Plumbing,
    solved: Option<&Solved>,
    fluid: Fluid,
    supply: Temperature,
    prepare: &mut dyn FnMut(&mut Stretch, Stream),
) -> Walked {
    let links = plumbing.ends.len();
    let most = solved.map_or(0.0, |solved| {
        solved.flows.iter().fold(0.0, |most: f64, flow| most.max(flow.si().abs()))
    });
    // What rounding leaves of no flow would cool to its surroundings.
    let flow = |link: usize| {
        let flow = solved.map_or(0.0, |solved| solved.flows[link].si());
        if flow.abs() > STILL * most { flow } else { 0.0 }
    };
    // Backward flow walks from the end to the beginning.
    let ends = |link: usize| -> (usize, usize) {
        let (from, to) = plumbing.ends[link];
        if flow(link) < 0.0 { (to, from) } else { (from, to) }
    };
    let boiler = plumbing.boiler.index();
    let mut arriving = vec![Arriving::default(); plumbing.network.nodes()];
    // The links that leave each node, as a list of heads and followers.
    let mut head = vec![usize::MAX; plumbing.network.nodes()];
    let mut next = vec![usize::MAX; links];
    for link in (0..links).rev() {
        let (from, to) = ends(link);
        arriving[to].awaited += 1;
        next[link] = head[from];
        head[from] = link;
    }
    let mut passages: Vec<Option<Passage>> = vec![None; plumbing.stretches.len()];
    let mut ready = vec![boiler];
    while let Some(node) = ready.pop() {
        let here = arriving[node];
        let water = if node == boiler { supply } else { here.mixed() };
        let mut link = head[node];
        while link != usize::MAX {
            let (_, to) = ends(link);
            let mass = flow(link);
            let mut leaves = water;
            if let Some(index) = plumbing.of_link[link] {
                let stretch = &mut plumbing.stretches[index];
                let stream =
                    Stream { fluid, flow: MassFlow::from_si(mass.abs()), temperature: water };
                prepare(stretch, stream);
                let passage = pass(&stretch.link, stream);
                leaves = passage.water_out;
                let passage = if mass < 0.0 { turned(passage) } else { passage };
                let pressure_in =
                    solved.map_or(Pressure::ZERO, |solved| solved.pressures[plumbing.ends[link].0]);
                passages[index] = Some(Passage { pressure_in, ..passage });
            }
            let there = &mut arriving[to];
            there.awaited -= 1;
            there.add(mass.abs(), leaves);
            if there.awaited == 0 && to != boiler {
                ready.push(to);
            }
            link = next[link];
        }
    }
    let came = arriving[boiler];
    let back = if came.last_k > 0.0 { came.mixed() } else { supply };
    // Water that turns in a circle without the boiler reaches no end: it is as the supply.
    let passages = passages.into_iter().zip(&plumbing.stretches).map(|(passage, stretch)| {
        let still = Stream { fluid, flow: MassFlow::ZERO, temperature: supply };
        passage.unwrap_or_else(|| pass(&stretch.link, still))
    });
    Walked { passages: passages.collect(), back }
}

/// A passage against the direction in which its stretch was laid.
fn turned(passage: Passage) -> Passage {
    Passage {
        mass_flow: -passage.mass_flow,
        velocity: -passage.velocity,
        friction: -passage.friction,
        fittings: -passage.fittings,
        equipment: -passage.equipment,
        ..passage
    }
}
