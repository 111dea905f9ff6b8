//! The house as heat between nodes, on days other than the design day and with rooms at other
//! temperatures than they are meant to have.

use super::conductor::{Beyond, Conductor, Near, Nodes, conductors};
use super::flows::{flow_at, room_air};
use super::{House, Path, mean_temperature};
use crate::quantity::{Temperature, TemperatureDifference};
use serde::Serialize;

/// What of a house's heat exchange no day changes. Nodes are the rooms, then the unheated spaces,
/// each in the order of the house.
#[derive(Debug)]
pub struct Exchange<'a> {
    house: &'a House,
    names: Nodes,
    /// But for the outdoor air of the rooms.
    fabric: Vec<(usize, Conductor)>,
}

/// A house on a day of one outdoor temperature. Everything in it is linear: node `i` loses
/// `own[i] T[i] - source[i]`, and to each neighbour `g (T[i] - T[other])`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Day {
    #[serde(rename = "outdoors_k")]
    pub outdoors: Temperature,
    /// Nodes that are heated rooms; the others are spaces.
    pub rooms: usize,
    /// Conductances between two nodes, W/K.
    pub between: Vec<(usize, usize, f64)>,
    /// Of each node, to everything that is no node, W/K.
    pub own_w_k: Vec<f64>,
    /// Of each node, W: the sum of those conductances times the temperatures that they lead to, less
    /// losses that do not ask how warm the node is.
    pub source_w: Vec<f64>,
    /// Nodes whose temperature does not follow from their balance: measured spaces, and what no heat
    /// reaches. In K.
    pub held_k: Vec<Option<f64>>,
}

impl<'a> Exchange<'a> {
    pub fn of(house: &'a House) -> Exchange<'a> {
        let names = Nodes::of(house);
        let all = conductors(house, &names);
        let of_node =
            |(node, own): (usize, Vec<Conductor>)| own.into_iter().map(move |c| (node, c));
        let is_room_air = |node: usize, c: &Conductor| {
            node < house.rooms.len() && matches!(c.path, Path::Air | Path::Ventilation)
        };
        let fabric = all.into_iter().enumerate().flat_map(of_node);
        let fabric = fabric.filter(|(node, c)| !is_room_air(*node, c)).collect();
        Exchange { house, names, fabric }
    }

    /// The house on a day as cold as this.
    ///
    /// The air that leaks in follows the difference between indoors and outdoors, with the wind of the
    /// coldest month. A temperature that was typed or measured for the design day moves with the
    /// outdoors (the temperature reduction factor of ISO 13789), unless it lies beyond indoors or
    /// outdoors. What the coldest month adds to the ground's steady loss goes linearly with the
    /// outdoors, from all of it at that month's mean to nothing at the year's, and as far below
    /// nothing in summer: judgement.
    pub fn day(&self, outdoors: Temperature) -> Day {
        let house = self.house;
        let (rooms, nodes) = (house.rooms.len(), house.rooms.len() + house.spaces.len());
        let mut day = Day {
            outdoors,
            rooms,
            between: Vec::new(),
            own_w_k: vec![0.0; nodes],
            source_w: vec![0.0; nodes],
            held_k: vec![None; nodes],
        };
        for (node, conductor) in &self.fabric {
            self.add(*node, conductor, &mut day);
        }
        let air = room_air(house, &self.names, flow_at(house, outdoors));
        for (node, air) in air.iter().enumerate() {
            day.lead(node, (air.leaked + air.ventilated).si(), outdoors);
        }
        let indoors = mean_temperature(house);
        for (at, space) in house.spaces.iter().enumerate() {
            let moved = space.temperature.map(|typed| self.moved(typed, indoors, outdoors).si());
            day.held_k[rooms + at] = moved;
        }
        self.settle_cut_off(&mut day);
        day
    }

    fn add(&self, node: usize, conductor: &Conductor, day: &mut Day) {
        let g = conductor.conductance.si();
        match (conductor.near, conductor.beyond) {
            (Near::Node, Beyond::Outdoors) => day.lead(node, g, day.outdoors),
            (Near::Node, Beyond::At(beyond)) => {
                let beyond = match conductor.path {
                    Path::Ground(_) => beyond,
                    _ => self.moved(beyond, self.meant(node), day.outdoors),
                };
                day.lead(node, g, beyond);
            }
            (Near::Node, Beyond::Node(other)) => day.between.push((node, other, g)),
            (Near::At(near), Beyond::At(beyond)) => {
                let winter = self.winter(day.outdoors);
                day.source_w[node] -= g * (near - beyond).si() * winter;
            }
            _ => {}
        }
    }

    /// How warm a node is meant to be: a space has no say.
    fn meant(&self, node: usize) -> Temperature {
        let room = self.house.rooms.get(node).map(|room| room.temperature);
        room.unwrap_or_else(|| mean_temperature(self.house))
    }

    /// A temperature of the design day on another day.
    fn moved(
        &self,
        typed: Temperature,
        indoors: Temperature,
        outdoors: Temperature,
    ) -> Temperature {
        let design = self.house.site.outdoors;
        let span = indoors - design;
        let share = (indoors - typed) / span;
        match span > TemperatureDifference::ZERO && (0.0..=1.0).contains(&share) {
            true => typed + (outdoors - design) * share,
            false => typed,
        }
    }

    /// How much of the ground's swing a day has, from 1 in the coldest month to -1 in the warmest.
    fn winter(&self, outdoors: Temperature) -> f64 {
        let site = &self.house.site;
        let span = site.mean - site.coldest_month;
        match span > TemperatureDifference::ZERO {
            true => ((site.mean - outdoors) / span).clamp(-1.0, 1.0),
            false => 1.0,
        }
    }

    /// What no heat leads from to any temperature that is known keeps its own: a room that which it is
    /// meant to have, a space that of the outdoors.
    fn settle_cut_off(&self, day: &mut Day) {
        let mut reached: Vec<bool> = day
            .own_w_k
            .iter()
            .zip(&day.held_k)
            .map(|(g, held)| *g > 0.0 || held.is_some())
            .collect();
        // Each round reaches one node more at least, or was the last.
        loop {
            let mut more = false;
            for &(a, b, g) in &day.between {
                if g > 0.0 && reached[a] != reached[b] {
                    (reached[a], reached[b], more) = (true, true, true);
                }
            }
            if !more {
                break;
            }
        }
        for (node, reached) in reached.iter().enumerate() {
            if !reached {
                let kept = if node < day.rooms { self.meant(node) } else { day.outdoors };
                day.held_k[node] = Some(kept.si());
            }
        }
    }
}

impl Day {
    /// Leads heat from a node to something at a temperature.
    fn lead(&mut self, node: usize, w_k: f64, to: Temperature) {
        self.own_w_k[node] += w_k;
        self.source_w[node] += w_k * to.si();
    }

    /// What each node loses, W, while they are as warm as this, in K; to its neighbours too.
    pub fn losses_w(&self, at_k: &[f64]) -> Vec<f64> {
        let own = self.own_w_k.iter().zip(&self.source_w).zip(at_k);
        let mut losses: Vec<f64> = own.map(|((g, source), t)| g * t - source).collect();
        for &(a, b, g) in &self.between {
            let heat_w = g * (at_k[a] - at_k[b]);
            losses[a] += heat_w;
            losses[b] -= heat_w;
        }
        losses
    }

    /// Nodes, held ones too.
    pub fn nodes(&self) -> usize {
        self.own_w_k.len()
    }
}
