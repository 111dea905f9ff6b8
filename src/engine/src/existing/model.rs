//! What would be read of a system in a given state, everywhere.

use super::explanation::Reordered;
use super::place::{At, first, places};
use crate::arrangement::{Heating, Seen, Tried};
use crate::building::{Day, Exchange};
use crate::design::Design;
use crate::job::{Job, Measured, Ran};
use crate::numeric::linear::factor;
use crate::numeric::{exp, ln};
use crate::quantity::Temperature;

/// A state of the system: what is as entered is zero. Shares are logarithms, so that half and double
/// are as far from the whole.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct State {
    pub(super) supply_k: f64,
    pub(super) outdoors_k: f64,
    /// By circuit.
    pub(super) flow: Vec<f64>,
    /// By room.
    pub(super) output: Vec<f64>,
    pub(super) loss: Vec<f64>,
    /// As entered, or by the other orders from one on.
    pub(super) order: usize,
}

/// What is read in a state.
#[derive(Debug, Clone)]
pub(super) struct Predicted {
    /// By place, as readings are compared.
    pub(super) values: Vec<f64>,
}

/// A designed system, with the flows of some states found already.
#[derive(Debug)]
pub(super) struct Model<'a> {
    pub(super) job: &'a Job,
    pub(super) design: &'a Design,
    pub(super) places: Vec<At>,
    exchange: Exchange<'a>,
    ran: Ran,
    /// By room, as far as measured.
    air_k: Vec<Option<f64>>,
    systems: Vec<Tried<'a>>,
    flows_kg_s: Vec<f64>,
    known: Vec<(usize, Vec<f64>, Heating)>,
    days: Vec<Day>,
    gains_w: Vec<f64>,
}

/// So many states' flows, and days, are kept.
const KEPT: usize = 12;

/// Rooms have come to rest when a step moves none by more, K.
const RESTS_K: f64 = 1e-6;
const MOST_STEPS: usize = 60;

/// Each time the water is followed its specific heat is nearer by a hundredfold.
const SETTLING: usize = 4;

impl<'a> Model<'a> {
    pub(super) fn of(
        job: &'a Job,
        design: &'a Design,
        orders: &'a [Reordered],
        measured: &Measured,
        ran: Ran,
    ) -> Model<'a> {
        let air = |id| measured.at(id).air.map(Temperature::si);
        let systems = std::iter::once(job).chain(orders.iter().map(|of| &of.job));
        let gains = job.house.rooms.iter().map(|room| room.other_heat.si());
        Model {
            job,
            design,
            places: places(job, design),
            exchange: Exchange::of(&job.house),
            ran,
            air_k: job.house.rooms.iter().map(|room| air(room.id)).collect(),
            systems: systems.map(|job| Tried::of(job, design)).collect(),
            flows_kg_s: design.piping.circuits.iter().map(|c| c.mass_flow.si().abs()).collect(),
            known: Vec::new(),
            days: Vec::new(),
            gains_w: gains.chain(job.house.spaces.iter().map(|_| 0.0)).collect(),
        }
    }

    /// As entered, with this water on such a day.
    pub(super) fn as_entered(&self, supply: Temperature, outdoors: Temperature) -> State {
        let rooms = self.job.house.rooms.len();
        State {
            supply_k: supply.si(),
            outdoors_k: outdoors.si(),
            flow: vec![0.0; self.flows_kg_s.len()],
            output: vec![0.0; rooms],
            loss: vec![0.0; rooms],
            order: 0,
        }
    }

    /// Whether the rooms' temperatures tell of their heat and loss.
    pub(super) fn rooms_tell(&self) -> bool {
        self.ran != Ran::AWhile
    }

    /// Whether all of them together do: a thermostat runs a house that loses more only longer.
    pub(super) fn house_tells(&self) -> bool {
        self.ran == Ran::Throughout
    }

    pub(super) fn predict(&mut self, state: &State) -> Option<Predicted> {
        let (seen, rooms_k) = self.come_to_rest(state)?;
        let circuit = |id| {
            let mut firsts = self.design.piping.circuits.iter().filter_map(first);
            firsts.position(|first| first == id)
        };
        let room = |id| self.job.house.rooms.iter().position(|room| room.id == id);
        let element = |id| seen.elements_k.get(room(id)?).copied().flatten();
        let value = |at: &At| match *at {
            At::BoilerSupply | At::Supply(_) => Some(state.supply_k),
            At::BoilerBack => Some(seen.given.back_k),
            At::Back(id) => seen.backs_k.get(circuit(id)?).copied(),
            At::Flow(id) => {
                let at = circuit(id)?;
                Some(ln(*self.flows_kg_s.get(at)?) + state.flow.get(at)?)
            }
            At::WaterIn(id) => element(id).map(|(enters, _)| enters),
            At::WaterOut(id) => element(id).map(|(_, leaves)| leaves),
            At::Air(id) => rooms_k.get(room(id)?).copied(),
        };
        let values: Vec<f64> = self.places.iter().map(value).collect::<Option<_>>()?;
        values.iter().all(|value| value.is_finite()).then_some(Predicted { values })
    }

    /// The rooms' temperatures in a state, in K.
    pub(super) fn rooms_k(&mut self, state: &State) -> Option<Vec<f64>> {
        self.come_to_rest(state).map(|(_, rooms_k)| rooms_k)
    }

    fn come_to_rest(&mut self, state: &State) -> Option<(Seen, Vec<f64>)> {
        let day = self.day(state.outdoors_k);
        let at = self.heating(state)?;
        let zones = self.job.zones.len();
        let wanted = |(room, air): (&crate::building::Room, &Option<f64>)| {
            air.unwrap_or_else(|| room.temperature.si())
        };
        let rooms_k: Vec<f64> = self.job.house.rooms.iter().zip(&self.air_k).map(wanted).collect();
        if self.ran == Ran::AWhile {
            let heating = &mut self.known[at].2;
            // The specific heat of the water follows its temperature of the last time, and with it comes to
            // rest at once.
            for _ in 0..SETTLING {
                heating.see(&rooms_k, zones);
            }
            return Some((heating.see(&rooms_k, zones), rooms_k));
        }
        let held = self.held();
        let heating = &mut self.known[at].2;
        let balance = Balance { day: &day, job: self.job, gains_w: &self.gains_w, state, held };
        balance.settle(heating, &rooms_k)
    }

    /// Of each zone, the rooms whose mean temperature the thermostat is known to hold, with that mean;
    /// none where it runs throughout.
    fn held(&self) -> Vec<Option<(Vec<usize>, f64)>> {
        let of_zone = |zone: &crate::job::Zone| {
            let rooms: Vec<usize> = zone.loops.iter().flatten().copied().collect();
            let read: Vec<usize> =
                rooms.iter().copied().filter(|r| self.air_k[*r].is_some()).collect();
            let meant = |room: usize| self.job.house.rooms[room].temperature.si();
            let own = if read.is_empty() { rooms[..rooms.len().min(1)].to_vec() } else { read };
            let sum: f64 =
                own.iter().map(|&room| self.air_k[room].unwrap_or_else(|| meant(room))).sum();
            let mean = sum / own.len() as f64;
            (self.ran == Ran::ByThermostat && !own.is_empty()).then_some((own, mean))
        };
        self.job.zones.iter().map(of_zone).collect()
    }

    fn day(&mut self, outdoors_k: f64) -> Day {
        if let Some(day) = self.days.iter().find(|day| day.outdoors.si() == outdoors_k) {
            return day.clone();
        }
        let day = self.exchange.day(Temperature::from_si(outdoors_k));
        if self.days.len() >= KEPT {
            self.days.remove(0);
        }
        self.days.push(day.clone());
        day
    }

    /// The place of a state's heating among those that are known, set to its water and its elements.
    fn heating(&mut self, state: &State) -> Option<usize> {
        let known = |of: &(usize, Vec<f64>, Heating)| of.0 == state.order && of.1 == state.flow;
        let at = match self.known.iter().position(known) {
            Some(at) => at,
            None => {
                let flows = self.flows_kg_s.iter().zip(&state.flow);
                let flows: Vec<f64> = flows.map(|(flow, share)| flow * exp(*share)).collect();
                let heating = self.systems.get_mut(state.order)?.at_flows(&flows)?;
                if self.known.len() >= KEPT {
                    self.known.remove(0);
                }
                self.known.push((state.order, state.flow.clone(), heating));
                self.known.len() - 1
            }
        };
        let shares: Vec<f64> = state.output.iter().map(|share| exp(*share)).collect();
        let heating = &mut self.known[at].2;
        heating.set_outputs(&shares);
        heating.set_supply(Temperature::from_si(state.supply_k));
        Some(at)
    }
}

/// The heat of all nodes on one day, with the state's losses.
struct Balance<'a> {
    day: &'a Day,
    job: &'a Job,
    gains_w: &'a [f64],
    state: &'a State,
    held: Vec<Option<(Vec<usize>, f64)>>,
}

impl Balance<'_> {
    /// Where every node loses what it gets, by Newton's steps; the share of the time that a zone runs is
    /// one unknown more where a thermostat holds rooms.
    fn settle(&self, heating: &mut Heating, guess_k: &[f64]) -> Option<(Seen, Vec<f64>)> {
        let (rooms, nodes, zones) = (guess_k.len(), self.day.nodes(), self.job.zones.len());
        let mean = guess_k.iter().sum::<f64>() / rooms.max(1) as f64;
        let mut at_k = guess_k.to_vec();
        at_k.resize(nodes, mean);
        for (at, held) in at_k.iter_mut().zip(&self.day.held_k) {
            *at = held.unwrap_or(*at);
        }
        let thermostat = |held: &Option<_>| if held.is_some() { 0.5 } else { 1.0 };
        let mut duty: Vec<f64> = self.held.iter().map(thermostat).collect();
        let mut zone_of = vec![None; rooms];
        for (zone, of) in self.job.zones.iter().enumerate() {
            for &room in of.loops.iter().flatten() {
                zone_of[room] = Some(zone);
            }
        }
        for _ in 0..MOST_STEPS {
            let seen = heating.see(&at_k[..rooms], zones);
            let step = self.step(&seen, &at_k, &duty, &zone_of)?;
            let (moves, turns) = step.split_at(nodes);
            let most = moves.iter().fold(0.0, |most: f64, k| most.max(k.abs()));
            for (at, by) in at_k.iter_mut().zip(moves) {
                *at += by;
            }
            for (share, by) in duty.iter_mut().zip(turns) {
                *share = (*share + by).clamp(0.0, 4.0);
            }
            if !at_k.iter().all(|k| k.is_finite()) {
                return None;
            }
            if most < RESTS_K {
                at_k.truncate(rooms);
                return Some((seen, at_k));
            }
        }
        None
    }

    /// By how much each node's temperature and each zone's share of the time have to move.
    fn step(
        &self,
        seen: &Seen,
        at_k: &[f64],
        duty: &[f64],
        zone_of: &[Option<usize>],
    ) -> Option<Vec<f64>> {
        let Balance { day, gains_w, state, .. } = self;
        let (nodes, size) = (at_k.len(), at_k.len() + duty.len());
        let mut matrix = vec![0.0; size * size];
        let mut right = gains_w.to_vec();
        right.resize(size, 0.0);
        for node in 0..nodes {
            let more = state.loss.get(node).map_or(1.0, |share| exp(*share));
            matrix[node * size + node] += more * day.own_w_k[node];
            right[node] -= more * (day.own_w_k[node] * at_k[node] - day.source_w[node]);
        }
        for &(a, b, g) in &day.between {
            for (near, far) in [(a, b), (b, a)] {
                matrix[near * size + near] += g;
                matrix[near * size + far] -= g;
                right[near] -= g * (at_k[near] - at_k[far]);
            }
        }
        for (room, zone) in zone_of.iter().enumerate() {
            let Some(zone) = *zone else { continue };
            let (heat, slope) = (seen.given.to_room_w[room], seen.given.slope_w_k[room]);
            right[room] += duty[zone] * heat;
            matrix[room * size + room] += duty[zone] * slope;
            matrix[room * size + nodes + zone] -= heat;
        }
        for (node, held) in day.held_k.iter().enumerate() {
            if held.is_some() {
                matrix[node * size..(node + 1) * size].fill(0.0);
                matrix[node * size + node] = 1.0;
                right[node] = 0.0;
            }
        }
        for (zone, held) in self.held.iter().enumerate() {
            let row = nodes + zone;
            match held {
                Some((rooms, mean_k)) => {
                    let share = 1.0 / rooms.len() as f64;
                    right[row] = *mean_k;
                    for &room in rooms {
                        matrix[row * size + room] += share;
                        right[row] -= share * at_k[room];
                    }
                }
                None => matrix[row * size + row] = 1.0,
            }
        }
        Some(factor(matrix, size)?.solve(&right))
    }
}
