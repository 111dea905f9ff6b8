//! The water's temperature along a network, once its flow is known.

use super::link::{Link, Passage, pass};
use super::solver::Solved;
use super::topology::{LinkId, Network, NodeId};
use crate::fluid::{Fluid, Stream};
use crate::quantity::{MassFlow, Pressure, Temperature};

/// What the water does everywhere.
#[derive(Debug, Clone)]
pub struct Walked {
    /// In the order of the stretches.
    pub passages: Vec<Passage>,
    /// What comes back to the boiler.
    pub back: Temperature,
}

/// A stretch of tube, and the link of the network that it is.
#[derive(Debug, Clone)]
pub struct Stretch {
    pub link: Link,
    /// The first, where it takes more than one.
    pub id: LinkId,
}

/// Where the water comes from.
#[derive(Debug, Clone, Copy)]
pub struct Source {
    pub fluid: Fluid,
    /// Where it is warmed: what arrives there has the return's temperature, what leaves the supply's.
    pub boiler: NodeId,
    pub supply: Temperature,
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

/// Follows the water from the boiler round, each node mixed by mass flow. `prepare` sees each stretch,
/// by its place, with its stream before it is passed, and may change it.
///
/// Where nothing flows the water counts as passing without heat. Links that are no stretch pass it on
/// as it is.
pub fn walk(
    network: &Network,
    solved: Option<&Solved>,
    source: Source,
    stretches: &mut [Stretch],
    prepare: &mut dyn FnMut(usize, &mut Link, Stream),
) -> Walked {
    let Source { fluid, supply, .. } = source;
    let of_link = places(network, stretches);
    let mut passages: Vec<Option<Passage>> = vec![None; stretches.len()];
    let back = follow(network, solved, source, &mut |link, mass, water| {
        let Some(stretch) = stretches.get_mut(of_link[link]) else { return water };
        let stream = Stream { fluid, flow: MassFlow::from_si(mass.abs()), temperature: water };
        prepare(of_link[link], &mut stretch.link, stream);
        let passage = pass(&stretch.link, stream);
        let leaves = passage.water_out;
        let passage = if mass < 0.0 { turned(passage) } else { passage };
        let pressure_in =
            solved.map_or(Pressure::ZERO, |solved| solved.pressures[laid(network, link).0]);
        passages[of_link[link]] = Some(Passage { pressure_in, ..passage });
        leaves
    });
    // Water that turns in a circle without the boiler reaches no end: it is as the supply.
    let passages = passages.into_iter().zip(&*stretches).map(|(passage, stretch)| {
        let still = Stream { fluid, flow: MassFlow::ZERO, temperature: supply };
        passage.unwrap_or_else(|| pass(&stretch.link, still))
    });
    Walked { passages: passages.collect(), back }
}

/// The place of each link among the stretches; past their end where it is none.
pub(crate) fn places(network: &Network, stretches: &[Stretch]) -> Vec<usize> {
    let mut of_link = vec![usize::MAX; network.links().len()];
    for (index, stretch) in stretches.iter().enumerate() {
        // A stretch that the network does not have stands still.
        if let Some(of) = of_link.get_mut(stretch.id.index()) {
            *of = index;
        }
    }
    of_link
}

/// Follows the water through every link: `pass` takes the link, its mass flow in kg/s, below zero against
/// the way it was laid, and the water that enters it, and gives the water that leaves. Gives what comes
/// back to the boiler.
pub(crate) fn follow(
    network: &Network,
    solved: Option<&Solved>,
    source: Source,
    pass: &mut dyn FnMut(usize, f64, Temperature) -> Temperature,
) -> Temperature {
    let links = network.links().len();
    let supply = source.supply;
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
        let (from, to) = laid(network, link);
        if flow(link) < 0.0 { (to, from) } else { (from, to) }
    };
    let boiler = source.boiler.index();
    let mut arriving = vec![Arriving::default(); network.nodes()];
    // The links that leave each node, as a list of heads and followers.
    let mut head = vec![usize::MAX; network.nodes()];
    let mut next = vec![usize::MAX; links];
    for link in (0..links).rev() {
        let (from, to) = ends(link);
        arriving[to].awaited += 1;
        next[link] = head[from];
        head[from] = link;
    }
    let mut ready = vec![boiler];
    while let Some(node) = ready.pop() {
        let here = arriving[node];
        let water = if node == boiler { supply } else { here.mixed() };
        let mut link = head[node];
        while link != usize::MAX {
            let (_, to) = ends(link);
            let mass = flow(link);
            let leaves = pass(link, mass, water);
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
    if came.last_k > 0.0 { came.mixed() } else { supply }
}

/// Where a link was laid from, and to.
fn laid(network: &Network, link: usize) -> (usize, usize) {
    network.ends(LinkId::nth(link)).map_or((0, 0), |(from, to)| (from.index(), to.index()))
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
