//! Readings made for a known fault, apart from what explains them: flows by the hydraulic solver with the
//! job's circulators, the water by `arrangement::run` (which follows each passage with its own specific
//! heat), rooms by steps towards the balance of `Exchange::day`. The module that explains solves flows as
//! given, follows the water by another way, and finds rooms by Newton's steps.

use finrun_engine::arrangement::{RunDesign, run};
use finrun_engine::building::{Day, Exchange, RoomId, ZoneId};
use finrun_engine::design::Design;
use finrun_engine::job::{Flow, Job, Measured, Ran, Spot};
use finrun_engine::network::Place;
use finrun_engine::quantity::Temperature;

/// A system, and the one thing that is wrong with it.
#[derive(Debug, Clone)]
pub(crate) struct Real {
    pub(crate) job: Job,
    pub(crate) design: Design,
    /// On the conductances of each room to what is no room.
    pub(crate) loss: Vec<f64>,
}

impl Real {
    pub(crate) fn of(job: &Job, design: &Design) -> Real {
        let loss = vec![1.0; job.house.rooms.len()];
        Real { job: job.clone(), design: design.clone(), loss }
    }

    /// All flows at this share.
    pub(crate) fn flow(mut self, share: f64) -> Real {
        let meant = self.design.piping.mass_flow * share;
        self.job.circuit.flow =
            Flow::Typed(meant / self.job.circuit.fluid.density(self.job.circuit.supply));
        self
    }

    /// So many elbows in the way to this circuit's first room that its flow is near this share.
    pub(crate) fn throttled(self, circuit: usize, share: f64) -> Real {
        let of = &self.design.piping.circuits[circuit];
        let room = self.job.house.rooms.iter().position(|room| of.rooms[0] == room.id).expect("it");
        let zones: Vec<ZoneId> = self.job.zones.iter().map(|zone| zone.id).collect();
        let with = |elbows: u32| {
            let mut real = self.clone();
            real.job.approaches[room].outside.elbows += elbows;
            let ran = run(&real.job, &real.design, &zones);
            let place = Place::Element(of.rooms[0]);
            let element = ran.passages.iter().find(|p| p.place == place).expect("its element");
            (element.mass_flow / of.mass_flow, real)
        };
        let (mut low, mut high) = (0.0_f64, 25.0_f64);
        for _ in 0..20 {
            let middle = 0.5 * (low + high);
            match with(middle.exp2() as u32).0 > share {
                true => low = middle,
                false => high = middle,
            }
        }
        with(high.exp2() as u32).1
    }

    /// An element that gives this share of its output, as one so much shorter does.
    pub(crate) fn output(mut self, room: usize, share: f64) -> Real {
        let choice = &mut self.design.rooms[room].element.choice;
        choice.finned = choice.finned * share;
        self
    }

    /// Of the first zone.
    pub(crate) fn reversed(mut self, nth: usize) -> Real {
        self.job.zones[0].loops[nth].reverse();
        self
    }

    pub(crate) fn losing(mut self, room: usize, times: f64) -> Real {
        self.loss[room] *= times;
        self
    }
}

/// How it is run while it is read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Run {
    pub(crate) supply: Temperature,
    pub(crate) outdoors: Temperature,
    pub(crate) ran: Ran,
}

/// The water of all circuits, with the rooms at rest: throughout, or for such a share of the time that the
/// first room of each zone is as warm as it is meant to be, which may be all of it; after a while, rooms as
/// they are meant to be.
pub(crate) fn rest(real: &Real, at: Run) -> (RunDesign, Vec<Temperature>, Ran) {
    let mut job = real.job.clone();
    job.circuit.supply = at.supply;
    let meant: Vec<f64> = job.house.rooms.iter().map(|room| room.temperature.si()).collect();
    let zones: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    if at.ran == Ran::AWhile {
        let rooms = job.house.rooms.iter().map(|room| room.temperature).collect();
        return (run(&job, &real.design, &zones), rooms, at.ran);
    }
    let day = Exchange::of(&real.job.house).day(at.outdoors);
    let mut at_k = meant.clone();
    at_k.resize(day.nodes(), 285.0);
    let mut duty = vec![1.0; zones.len()];
    for round in 0..400 {
        for (room, k) in job.house.rooms.iter_mut().zip(&at_k) {
            room.temperature = Temperature::from_si(*k);
        }
        let ran = run(&job, &real.design, &zones);
        let mut heat_w: Vec<f64> = vec![0.0; day.nodes()];
        for (zone, of) in job.zones.iter().enumerate() {
            for &room in of.loops.iter().flatten() {
                heat_w[room] = duty[zone] * given_w(&ran, job.house.rooms[room].id);
            }
        }
        for (heat, room) in heat_w.iter_mut().zip(&real.job.house.rooms) {
            *heat += room.other_heat.si();
        }
        // The house by itself comes to rest with that heat; of that, half, since warmer rooms get less.
        let rests = at_rest(real, &day, &heat_w, &at_k);
        let mut most: f64 = 0.0;
        for (k, rests) in at_k.iter_mut().zip(&rests) {
            most = most.max((rests - *k).abs());
            *k += 0.5 * (rests - *k);
        }
        if at.ran == Ran::ByThermostat {
            for (zone, of) in job.zones.iter().enumerate() {
                let first = of.loops[0][0];
                let over = |k: f64| k - at.outdoors.si();
                let before = duty[zone];
                let more = over(meant[first]) / over(at_k[first]).max(1.0);
                duty[zone] = (before * more).clamp(0.01, 1.0);
                most = most.max(100.0 * (duty[zone] - before).abs());
            }
        }
        if most < 1e-6 {
            let k = |k: &f64| Temperature::from_si(*k);
            let ran_so =
                if duty.iter().all(|share| *share == 1.0) { Ran::Throughout } else { at.ran };
            return (ran, at_k[..meant.len()].iter().map(k).collect(), ran_so);
        }
        assert!(round < 399, "no rest: {most}");
    }
    unreachable!("it came to rest or not")
}

/// Each node where its loss is its heat, by Gauss and Seidel.
fn at_rest(real: &Real, day: &Day, heat_w: &[f64], guess_k: &[f64]) -> Vec<f64> {
    let mut g: Vec<f64> = day.own_w_k.clone();
    let mut own_w: Vec<f64> = day.source_w.clone();
    for (room, times) in real.loss.iter().enumerate() {
        g[room] *= times;
        own_w[room] *= times;
    }
    for &(a, b, between) in &day.between {
        g[a] += between;
        g[b] += between;
    }
    let mut at_k = guess_k.to_vec();
    for _ in 0..3000 {
        let mut most: f64 = 0.0;
        for node in 0..at_k.len() {
            let mut q = own_w[node] + heat_w[node];
            for &(a, b, between) in &day.between {
                q += if a == node { between * at_k[b] } else { 0.0 };
                q += if b == node { between * at_k[a] } else { 0.0 };
            }
            let rests = day.held_k[node].unwrap_or(q / g[node]);
            most = most.max((rests - at_k[node]).abs());
            at_k[node] = rests;
        }
        if most < 1e-9 {
            break;
        }
    }
    at_k
}

fn given_w(ran: &RunDesign, room: RoomId) -> f64 {
    let own = ran.passages.iter().filter(|passage| {
        matches!(passage.place, Place::Element(id) | Place::Inside(id) | Place::Above(id) if id == room)
    });
    let heat = |passage: &finrun_engine::network::Passage| match passage.place {
        Place::Element(_) => passage.to_room.si(),
        _ => passage.heat.si(),
    };
    own.map(heat).sum()
}

/// Everything that can be read: both ends of the boiler, of each circuit and of each element, all rooms.
pub(crate) fn read_all(real: &Real, at: Run) -> Measured {
    let (ran, rooms, ran_so) = rest(real, at);
    let spot = |(room, air): (&finrun_engine::building::Room, &Temperature)| {
        let element = ran.passages.iter().find(|p| p.place == Place::Element(room.id));
        let some = element.filter(|element| element.length.si() > 0.0);
        let mut spot = Spot {
            air: Some(*air),
            water_in: some.map(|element| element.water_in),
            water_out: some.map(|element| element.water_out),
            ..Spot::default()
        };
        let circuits = &real.design.piping.circuits;
        let mut own = circuits.iter().filter(|c| c.rooms.first() == Some(&room.id));
        if let (true, Some(circuit)) = (circuits.len() > 1, own.next_back()) {
            let shared = |place: Place| {
                matches!(place, Place::ReturnMain(_) | Place::TrunkBack(_) | Place::Balance(_))
            };
            let mut path = circuit.path.iter().rev().map(|&at| &ran.passages[at]);
            spot.back = path.find(|passage| !shared(passage.place)).map(|last| last.water_out);
            spot.supply = Some(at.supply);
        }
        (room.id, spot)
    };
    Measured {
        outdoors: Some(at.outdoors),
        boiler_supply: Some(at.supply),
        boiler_back: Some(ran.back),
        ran: ran_so,
        spots: real.job.house.rooms.iter().zip(&rooms).map(spot).collect(),
        ..Measured::default()
    }
}

/// Each temperature off by what `noise` gives, in K.
pub(crate) fn noisy(mut measured: Measured, noise: &mut dyn FnMut() -> f64) -> Measured {
    let mut off = |of: &mut Option<Temperature>| {
        if let Some(value) = of {
            *value = Temperature::from_si(value.si() + noise());
        }
    };
    off(&mut measured.outdoors);
    off(&mut measured.boiler_supply);
    off(&mut measured.boiler_back);
    for (_, spot) in &mut measured.spots {
        for of in [&mut spot.supply, &mut spot.back, &mut spot.air] {
            off(of);
        }
        off(&mut spot.water_in);
        off(&mut spot.water_out);
    }
    measured
}
