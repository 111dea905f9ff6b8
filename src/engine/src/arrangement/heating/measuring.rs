//! The same system with flows that are given, and what the water would be measured to be on its way.

use super::super::balance::circuits;
use super::super::lower::{Drive, Plumbing};
use super::super::run::running_from;
use super::{Given, Heating, Surface, Through, Tried, heating_of};
use crate::network::Place;
use crate::quantity::{Length, MassFlow, Temperature};

/// Whatever the water does to the viscosity, a given flow is what it is: only the mixing in diverter
/// tees moves, and not by this share.
const CLOSE: f64 = 1e-4;

/// What water and rooms get, and where the water is how warm.
#[derive(Debug, Clone, Default)]
pub(crate) struct Seen {
    pub(crate) given: Given,
    /// Water that enters and leaves each room's element, in K; none where it has none.
    pub(crate) elements_k: Vec<Option<(f64, f64)>>,
    /// What comes back from each circuit before it joins others, in K.
    pub(crate) backs_k: Vec<f64>,
}

impl Tried<'_> {
    /// All zones calling, each circuit with the flow that it is given; none where that cannot be.
    pub(crate) fn at_flows(&mut self, flows_kg_s: &[f64]) -> Option<Heating> {
        let job = self.built.job;
        let mut circuits = circuits(job, &self.loads);
        for (circuit, flow) in circuits.iter_mut().zip(flows_kg_s) {
            circuit.target = MassFlow::from_si(*flow);
        }
        let on = vec![true; job.zones.len()];
        let mut plan = self.built.plan(&on, Drive::Targets);
        plan.circuits = &circuits;
        heating_of(job, running_from(plan, None, CLOSE), &self.dampers)
    }
}

impl Heating {
    /// Elements that give this share of what is entered, by room, from now on.
    pub(crate) fn set_outputs(&mut self, shares: &[f64]) {
        let Plumbing { stretches, tags, .. } = &self.plumbing;
        for ((pass, stretch), tag) in self.pass.iter_mut().zip(stretches).zip(tags) {
            if let (Through::Finned(_), Surface::Finned { finned, .. }, Some(room)) =
                (pass.through, stretch.link.surface, tag.element)
            {
                let share = shares.get(room).copied().unwrap_or(1.0);
                pass.length = Length::from_si(finned.si() * share);
            }
        }
    }

    /// With such water from the boiler, and nothing left of what was before: an answer depends on no
    /// other that was asked for sooner.
    pub(crate) fn set_supply(&mut self, supply: Temperature) {
        self.source.supply = supply;
        let specific_heat = self.source.fluid.specific_heat(supply);
        for pass in &mut self.pass {
            pass.specific_heat = specific_heat;
        }
    }

    /// What it gives to rooms as warm as this, in K, with the water on its way.
    pub(crate) fn see(&mut self, rooms_k: &[f64], zones: usize) -> Seen {
        let supply = self.source.supply;
        let mut water = vec![(supply, supply); self.pass.len()];
        let given = self.give_seen(rooms_k, zones, &mut |at, enters, leaves| {
            if let Some(of) = water.get_mut(at) {
                *of = (enters, leaves);
            }
        });
        let mut elements_k = vec![None; rooms_k.len()];
        let Plumbing { tags, stretches, circuits, .. } = &self.plumbing;
        for (tag, (enters, leaves)) in tags.iter().zip(&water) {
            if let Some(of) = tag.element.and_then(|room| elements_k.get_mut(room)) {
                *of = Some((enters.si(), leaves.si()));
            }
        }
        let shared = |place: Place| {
            matches!(place, Place::ReturnMain(_) | Place::TrunkBack(_) | Place::Balance(_))
        };
        let back = |path: &Vec<usize>| {
            let last = path.iter().rev().find(|&&at| !shared(stretches[at].link.place));
            last.map_or(supply, |&at| water[at].1).si()
        };
        let backs_k = circuits.iter().map(|links| back(&links.path)).collect();
        Seen { given, elements_k, backs_k }
    }
}
