//! The steps of a job, in working order: only those that it needs.

use super::runs::{handy, measured_out, rise, straight_runs};
use super::task::Task;
use super::{Of, Step};
use crate::arrangement::{CircuitDesign, laid};
use crate::building::{RoomId, ZoneId};
use crate::design::{Design, RoomDesign};
use crate::fluid::Charge;
use crate::job::{Approach, Balancing, Job, PumpSet, Zoning};
use crate::network::Place;
use crate::order;
use crate::pipe::{Material, Tube};
use crate::plant::expansion::RELIEF_SHARE;
use crate::plant::movement::movement;
use crate::quantity::{Length, Pressure, Velocity};
use crate::takeoff::count::{count, transitions};
use crate::takeoff::spacing::{brackets, holes};

/// That carries air bubbles along, also downward, 2 ft/s: common practice, no source.
const PURGE_VELOCITY: Velocity = Velocity::from_si(2.0 * 0.3048);

/// What a test has to be above the fill pressure to tell anything, 5 psi: judgement.
const LEAST_RISE: Pressure = Pressure::from_si(34_473.79);

/// All steps of a design, in working order; none without rooms.
pub fn steps(job: &Job, design: &Design) -> Vec<Step> {
    let mut listing = Listing { job, design, steps: Vec::new() };
    if design.rooms.is_empty() {
        return Vec::new();
    }
    listing.house(Task::CheckOldHouse);
    listing.house(Task::ShutDown);
    listing.house(Task::Protect);
    listing.bore();
    for room in listing.with_elements() {
        listing.brackets(room);
    }
    for room in listing.with_elements() {
        listing.add(Of::Room(room.room), Task::DryFit(room.element.choice.runs.clone()));
    }
    listing.movement();
    listing.soldering();
    listing.doorways();
    listing.plastic();
    listing.test();
    listing.fill();
    listing.electrical();
    listing.boiler();
    listing.hand_over();
    listing.steps
}

struct Listing<'a> {
    job: &'a Job,
    design: &'a Design,
    steps: Vec<Step>,
}

impl<'a> Listing<'a> {
    fn add(&mut self, of: Of, task: Task) {
        self.steps.push(Step { of, task });
    }

    fn house(&mut self, task: Task) {
        self.add(Of::House, task);
    }

    /// The rooms that have an element.
    fn with_elements(&self) -> impl Iterator<Item = &'a RoomDesign> + use<'a> {
        let has = |room: &&RoomDesign| room.element.choice.nominal > Length::ZERO;
        self.design.rooms.iter().filter(has)
    }

    fn approaches(&self) -> impl Iterator<Item = (RoomId, &'a Approach)> + use<'a> {
        self.job.house.rooms.iter().map(|room| room.id).zip(&self.job.approaches)
    }

    /// The tube on the way to a room.
    fn tube_to(&self, room: RoomId) -> Tube {
        let passages = self.design.piping.passages.iter();
        let mut to = passages.filter(|passage| passage.place == Place::To(room));
        to.next().map_or(self.job.circuit.tube, |passage| passage.tube)
    }

    fn bore(&mut self) {
        // A riser moves with the end of its run.
        let gaps = straight_runs(self.job, self.design);
        for (room, way) in self.approaches() {
            let holes = holes(way);
            if way.outside.length == Length::ZERO || holes == Some(0) {
                continue;
            }
            let own = gaps.iter().filter(|run| run.room == room);
            let gap = own.fold(measured_out(Length::ZERO), |most, run| most.max(run.gap));
            let tube = self.tube_to(room);
            let wide = measured_out(tube.outside_diameter() + gap * 2.0);
            self.add(Of::Room(room), Task::Bore { holes, tube, wide });
        }
    }

    fn brackets(&mut self, room: &RoomDesign) {
        let brackets = brackets(&room.element.choice);
        let long = room.element.choice.nominal;
        self.add(Of::Room(room.room), Task::Brackets { long, brackets });
    }

    fn movement(&mut self) {
        for run in straight_runs(self.job, self.design) {
            let of = Of::Run(run.room, run.wall, run.run);
            let task = Task::LeaveRoom { long: run.long, growth: run.growth, gap: run.gap };
            self.add(of, task);
        }
        if self.has_pipe(is_copper) {
            let growth = self.growth_of_pipe(Material::CopperL);
            self.house(Task::PipeMoves { each: handy(), growth });
        }
    }

    /// Of ten feet of pipe outside the rooms.
    fn growth_of_pipe(&self, material: Material) -> Length {
        let rise = rise(self.job, self.job.circuit.pipe_surroundings);
        movement(material, handy(), rise).whole
    }

    /// Whether there is pipe of such tube between the elements.
    fn has_pipe(&self, of: fn(Tube) -> bool) -> bool {
        laid(self.job, self.design).iter().any(|pipe| of(pipe.tube))
    }

    fn soldering(&mut self) {
        if self.with_elements().next().is_none() {
            return;
        }
        self.house(Task::ReadyForFire);
        for room in self.with_elements() {
            let choice = &room.element.choice;
            // A run of k pieces has k + 1 joints.
            let joints = (choice.pieces().count() + choice.runs.len()) as u32;
            self.add(Of::Room(room.room), Task::Solder { joints });
        }
        self.house(Task::WatchFire);
    }

    fn doorways(&mut self) {
        for (room, way) in self.approaches() {
            if let Some(crossings) = way.crossings
                && crossings.doorways > 0
            {
                self.add(Of::Room(room), Task::Doorways { count: crossings.doorways });
            }
        }
    }

    fn plastic(&mut self) {
        let pipes = laid(self.job, self.design);
        if pipes.iter().all(|pipe| is_copper(pipe.tube)) {
            return;
        }
        let items = count(self.job, self.design);
        let (job, supply) = (self.job, self.job.circuit.supply);
        for zone in &job.zones {
            let rooms: Vec<RoomId> =
                zone.loops.iter().flatten().filter_map(|&at| room_at(job, at)).collect();
            let own = |place: Place| belongs(place, zone.id, &rooms);
            let plastic = |tube: Tube| !is_copper(tube);
            if !pipes.iter().any(|pipe| own(pipe.place) && plastic(pipe.tube)) {
                continue;
            }
            self.add(Of::Zone(zone.id), Task::OxygenBarrier);
            let count = transitions(&items, job, zone);
            self.add(Of::Zone(zone.id), Task::Transitions { count, supply });
        }
        let growth = self.growth_of_pipe(Material::Pex);
        self.house(Task::PlasticMoves { each: handy(), growth });
    }

    fn test(&mut self) {
        let (fill, relief) = (self.job.plant.fill, self.job.plant.relief);
        let most = relief * RELIEF_SHARE;
        let test = (most >= fill + LEAST_RISE).then_some(most);
        self.house(Task::PressureTest { test, fill, relief });
        if self.job.circuit.cover.is_some() {
            self.house(Task::Insulate);
        }
    }

    fn fill(&mut self) {
        let plant = self.design.plant.as_ref();
        self.house(Task::Flush);
        if let Some(tank) = plant.and_then(|plant| plant.tank) {
            self.house(Task::TankAir { pre_charge: tank.pre_charge });
        }
        if let Some(Charge { glycol, water, .. }) = plant.and_then(|plant| plant.glycol) {
            self.house(Task::Glycol { glycol, water });
        }
        let volume = plant.and_then(|plant| plant.volume).map(|volumes| volumes.total);
        self.house(Task::Fill { pressure: self.job.plant.fill, volume });
        for zone in &self.job.zones {
            let circuits = &self.design.piping.circuits;
            let own: Vec<&CircuitDesign> = circuits.iter().filter(|c| c.zone == zone.id).collect();
            for circuit in &own {
                let of = match (own.len(), circuit.rooms.first()) {
                    (2.., Some(&first)) => Of::Circuit(first),
                    _ => Of::Zone(zone.id),
                };
                let tube = self.widest(circuit);
                let flow = PURGE_VELOCITY * tube.flow_area();
                self.add(of, Task::Purge { tube, flow });
            }
        }
    }

    /// The widest tube that a circuit's water passes outside the boiler room.
    fn widest(&self, circuit: &CircuitDesign) -> Tube {
        let passages = circuit.path.iter().filter_map(|&at| self.design.piping.passages.get(at));
        let tubes = passages.filter(|p| p.place != Place::BoilerRoom).map(|p| p.tube);
        tubes.fold(self.job.circuit.tube, |most, tube| {
            if tube.flow_area() > most.flow_area() { tube } else { most }
        })
    }

    fn electrical(&mut self) {
        let (circuit, zones) = (&self.job.circuit, self.job.zones.len() as u32);
        let shared = match circuit.pumps {
            PumpSet::One => 1,
            PumpSet::TwoInSeries | PumpSet::TwoInParallel => 2,
        };
        let (circulators, zone_valves) = match (zones > 1, circuit.zoning) {
            (false, _) => (shared, 0),
            (true, Zoning::Circulators) => (zones, 0),
            (true, Zoning::Valves) => (shared, zones),
        };
        let control = self.design.plant.as_ref().and_then(|plant| plant.control);
        self.house(Task::Wire { circulators, zone_valves, control });
        for zone in &self.job.zones {
            self.add(Of::Zone(zone.id), Task::Thermostat);
        }
    }

    fn boiler(&mut self) {
        self.house(Task::Alarms);
        self.house(Task::ReliefPipe { setting: self.job.plant.relief });
        let circuit = &self.job.circuit;
        self.house(Task::Start { limit: circuit.boiler_limit, supply: circuit.supply });
        let reset = self.design.plant.as_ref().and_then(|plant| plant.reset.as_ref());
        if let Some(reset) = reset {
            self.house(Task::ResetControl(reset.setting));
        }
    }

    fn hand_over(&mut self) {
        self.house(Task::FirstHeat { supply: self.job.circuit.supply });
        let circuits = self.design.piping.circuits.iter();
        let mut fitted: Vec<&CircuitDesign> =
            circuits.filter(|c| c.valve.fitted == Balancing::Valves).collect();
        order::sort_by_key(&mut fitted, |circuit| circuit.valve.order);
        if fitted.len() > 1 {
            for circuit in fitted {
                if let Some(&first) = circuit.rooms.first() {
                    let (order, cv) = (circuit.valve.order, circuit.valve.cv);
                    self.add(Of::Circuit(first), Task::Balance { order, cv });
                }
            }
        }
        self.house(Task::Measure);
        self.house(Task::HandOver);
    }
}

fn room_at(job: &Job, at: usize) -> Option<RoomId> {
    job.house.rooms.get(at).map(|room| room.id)
}

fn is_copper(tube: Tube) -> bool {
    tube.material() != Material::Pex
}

/// Whether a stretch is of this zone, which has these rooms.
fn belongs(place: Place, zone: ZoneId, rooms: &[RoomId]) -> bool {
    use Place::*;
    match place {
        BoilerRoom => false,
        ZoneValve(of) | FlowCheck(of) | Trunk(of) | TrunkBack(of) => of == zone,
        To(room) | Inside(room) | Branch(room) | BranchBack(room) | Element(room)
        | Between(room) | ReturnMain(room) | Above(room) | Back(room) | Balance(room) => {
            rooms.contains(&room)
        }
    }
}
