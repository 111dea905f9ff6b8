//! What joins what: nodes, and the tubes, valves and pumps between them.

use super::pump::Pump;
use crate::fluid::Fluid;
use crate::pipe::{Bore, Cv};
use crate::quantity::{Density, Length, MassFlow, Pressure, Temperature, Viscosity, VolumeFlow};
use serde::Serialize;

/// A closed network filled with liquid, no water added or drawn.
///
/// Its unknowns are mass flows, which no change of temperature alters on the way, and pressures in
/// pascals, so that links of different density meet exactly. All nodes stand at one height: what a
/// pump moves goes round, so height cancels, but for the buoyancy of a hot riser against a cold one
/// (some 20 Pa a metre at 20 K), which is neglected.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Network {
    nodes: u32,
    links: Vec<Joined>,
    fixed: Option<(NodeId, Pressure)>,
}

/// A component with its place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Joined {
    pub(super) from: NodeId,
    pub(super) to: NodeId,
    pub(super) component: Component,
    pub(super) way: Way,
}

/// A junction, numbered in the order of adding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub(super) u32);

/// A link, numbered in the order of adding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct LinkId(pub(super) u32);

impl NodeId {
    /// The one that a network of its own gives out in this place.
    pub(crate) const fn nth(place: usize) -> NodeId {
        NodeId(place as u32)
    }

    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

impl LinkId {
    pub(crate) const fn nth(place: usize) -> LinkId {
        LinkId(place as u32)
    }

    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// Which way a link lets water through.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Way {
    #[default]
    Both,
    /// With a flow check in it, which closes against backward flow. What the check takes from the
    /// pressure when open belongs to the component.
    Forward,
}

/// What lies between two nodes.
#[derive(Debug, Clone, PartialEq)]
pub enum Component {
    /// Tube with its fittings; `k` is the sum of their loss coefficients. At no length it stands
    /// for a fitting alone.
    Pipe { length: Length, bore: Bore, k: f64, liquid: Liquid },
    /// Something whose flow coefficient is known.
    Valve { cv: Cv, density: Density },
    /// Something whose head is known at one flow; elsewhere it goes by the square.
    Equipment { head: Length, at: VolumeFlow, density: Density },
    /// A running pump, which lifts from `from` to `to`.
    Pump(Pump),
    /// A circulator still to be chosen: it moves exactly this flow from `from` to `to`, at whatever
    /// pressure that takes, which is the rise between its nodes. None at all is as `Closed`.
    Circulation(MassFlow),
    /// Lets nothing through: a shut valve, a stopped pump with its check.
    Closed,
}

/// What flows in a link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liquid {
    pub density: Density,
    pub viscosity: Viscosity,
}

impl Liquid {
    pub fn at(fluid: Fluid, temperature: Temperature) -> Liquid {
        Liquid { density: fluid.density(temperature), viscosity: fluid.viscosity(temperature) }
    }
}

impl Network {
    pub fn new() -> Network {
        Network::default()
    }

    pub fn node(&mut self) -> NodeId {
        self.nodes += 1;
        NodeId(self.nodes - 1)
    }

    /// Joins two nodes; flow counts positive from `from` to `to`.
    pub fn link(&mut self, from: NodeId, to: NodeId, component: Component, way: Way) -> LinkId {
        self.links.push(Joined { from, to, component, way });
        LinkId(self.links.len() as u32 - 1)
    }

    /// Says where the expansion tank holds the pressure.
    pub fn fix(&mut self, node: NodeId, pressure: Pressure) {
        self.fixed = Some((node, pressure));
    }

    pub fn fixed(&self) -> Option<(NodeId, Pressure)> {
        self.fixed
    }

    pub fn nodes(&self) -> usize {
        self.nodes as usize
    }

    pub fn links(&self) -> impl ExactSizeIterator<Item = LinkId> + use<> {
        (0..self.links.len() as u32).map(LinkId)
    }

    /// Where a link begins and ends.
    pub fn ends(&self, link: LinkId) -> Option<(NodeId, NodeId)> {
        self.links.get(link.index()).map(|joined| (joined.from, joined.to))
    }

    pub fn component(&self, link: LinkId) -> Option<&Component> {
        self.links.get(link.index()).map(|joined| &joined.component)
    }

    /// For water that has changed its temperature, or a valve that has been turned.
    pub fn component_mut(&mut self, link: LinkId) -> Option<&mut Component> {
        self.links.get_mut(link.index()).map(|joined| &mut joined.component)
    }

    pub(super) fn joined(&self) -> &[Joined] {
        &self.links
    }
}
