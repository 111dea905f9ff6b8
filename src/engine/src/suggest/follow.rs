//! One loop by itself: the water followed round it, each room's pieces chosen as it comes to it.

use super::price;
use super::route::{NONE, Ways, sum};
use super::split::Score;
use crate::arrangement::{bare, choose_for};
use crate::building::RoomLoad;
use crate::check::{MOST_VELOCITY, most_carried, practice_length};
use crate::emitter;
use crate::fluid::Stream;
use crate::job::{BackPath, Balancing, Job, PipeLeg};
use crate::network::{Link, Place, Surface, Warms, pass};
use crate::pipe::{Fitting, Tube};
use crate::quantity::{Length, MassFlow, Money, Power, Pressure, Temperature, Velocity};

/// What a loop comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Facts {
    pub(super) load: Power,
    /// What its water gives up.
    pub(super) given: Power,
    pub(super) short_rooms: usize,
    pub(super) short: Power,
    /// Nominal.
    pub(super) element: Length,
    pub(super) back: Temperature,
    pub(super) velocity: Velocity,
    /// Nothing while a price is missing.
    pub(super) cost: Money,
}

impl Facts {
    /// Of a loop on which nothing is yet.
    pub(super) fn none(job: &Job) -> Facts {
        Facts {
            load: Power::ZERO,
            given: Power::ZERO,
            short_rooms: 0,
            short: Power::ZERO,
            element: Length::ZERO,
            back: job.circuit.supply,
            velocity: Velocity::ZERO,
            cost: Money::ZERO,
        }
    }

    pub(super) fn score(&self, job: &Job) -> Score {
        let over = |is: f64| ((is - 1.0).clamp(0.0, 1e3) * 1e6) as u64;
        let carried = self.given / most_carried(job, self.back);
        let velocity = self.velocity / MOST_VELOCITY;
        let load = self.load.si();
        Score {
            short_rooms: self.short_rooms as u64,
            short_mw: (self.short.si() * 1e3) as u64,
            over_ppm: over(carried) + over(velocity),
            beyond_ppm: over(self.element / practice_length(job.circuit.tube)),
            cost_mils: (self.cost.si() * 1e3) as u64,
            loops: 1,
            element_um: (self.element.si() * 1e6) as u64,
            uneven_w2: (load * load) as u64,
        }
    }
}

/// How the loops of a zone hang: one from the boiler, or several from a trunk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hanging {
    /// Of the pipe between the rooms.
    pub(super) pipe: Tube,
    pub(super) trunk: PipeLeg,
    pub(super) main: Tube,
    pub(super) from: From,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum From {
    Boiler,
    /// Each with such a valve.
    Tees(Balancing),
}

/// Pieces that are the least for every length from one to another.
#[derive(Debug, Clone, Copy)]
struct Known {
    from: Length,
    finned: Length,
    nominal: Length,
    cost: Money,
}

/// What following loops needs, and what it has found of each room's pieces.
pub(super) struct Follower {
    /// Flow that a circuit is meant to have for its load, in kg/s a watt.
    flow_per_load: f64,
    /// Of the whole zone.
    zone_load: Power,
    back: BackPath,
    known: Vec<Vec<Known>>,
}

impl Follower {
    pub(super) fn new(job: &Job, back: BackPath, flow_per_load: f64, zone_load: Power) -> Follower {
        let known = vec![Vec::new(); job.house.rooms.len()];
        Follower { flow_per_load, zone_load, back, known }
    }

    /// The loop of these rooms, in the order of the water, with the pressure that it takes at its flow.
    pub(super) fn follow(
        &mut self,
        job: &Job,
        loads: &[RoomLoad],
        hanging: &Hanging,
        rooms: &[usize],
        ways: &Ways,
    ) -> (Facts, Pressure) {
        let wants = |room: usize| {
            loads.get(room).map_or(Power::ZERO, |load| load.wanted().max(Power::ZERO))
        };
        let load: Power = rooms.iter().map(|&room| wants(room)).sum();
        let mut water = Water {
            stream: Stream {
                fluid: job.circuit.fluid,
                flow: self.flow(self.zone_load),
                temperature: job.circuit.supply,
            },
            pressure: Pressure::ZERO,
            given: Power::ZERO,
            velocity: Velocity::ZERO,
        };
        let at_first = |room: Option<&usize>| room.and_then(|&room| job.house.rooms.get(room));
        let Some(first) = at_first(rooms.first()) else {
            return (Facts::none(job), Pressure::ZERO);
        };
        water.through(&bare(job, Place::To(first.id), hanging.main, hanging.trunk));
        // What the trunk's water does counts for the whole zone.
        let trunk = water.pressure;
        water = Water {
            stream: Stream { flow: self.flow(load), ..water.stream },
            pressure: trunk + trunk,
            given: Power::ZERO,
            velocity: Velocity::ZERO,
        };
        let mut facts = Facts { load, ..Facts::none(job) };
        let mut nominal = Vec::with_capacity(rooms.len());
        let mut pipe = NONE;
        for (nth, (&room, way)) in rooms.iter().zip(&ways.to).enumerate() {
            let Some(of) = job.house.rooms.get(room) else { continue };
            let mut link = bare(job, Place::To(of.id), hanging.pipe, way.outside);
            link.fittings.extend(tee(hanging).filter(|_| nth == 0));
            water.through(&link);
            water.through(&inside(job, way.room, hanging.pipe, way.inside));
            pipe = sum(pipe, way.all());
            let wanted = wants(room);
            let element = job.baseboard.element;
            let needed = emitter::length_for(&element, water.stream, of.temperature, wanted);
            let pieces = self.pieces(job, room, needed);
            let link = Link {
                place: Place::Element(of.id),
                length: pieces.nominal,
                surface: Surface::Finned { element, finned: pieces.finned },
                surroundings: of.temperature,
                ..bare(job, Place::Element(of.id), job.circuit.tube, NONE)
            };
            let short = wanted - water.through(&link);
            if is_short(wanted, short) {
                facts.short_rooms += 1;
                facts.short += short;
            }
            facts.element += pieces.nominal;
            facts.cost += pieces.cost;
            nominal.push(pieces.nominal);
        }
        if self.back == BackPath::InEnclosure {
            for ((&room, way), &nominal) in rooms.iter().zip(&ways.to).zip(&nominal).rev() {
                let over = PipeLeg { length: way.inside.length + nominal, ..way.inside };
                water.through(&inside(job, room, hanging.pipe, over));
            }
        }
        let mut link = bare(job, Place::Back(first.id), hanging.pipe, ways.back);
        link.fittings.extend(tee(hanging));
        water.through(&link);
        facts.cost += price::of_loop(job, sum(pipe, ways.back), hanging);
        facts.given = water.given;
        facts.velocity = water.velocity;
        facts.back = water.stream.temperature;
        (facts, water.pressure)
    }

    pub(super) fn flow(&self, load: Power) -> MassFlow {
        MassFlow::from_si(load.si() * self.flow_per_load)
    }

    /// The least that reaches a length, or all that the walls take.
    fn pieces(&mut self, job: &Job, room: usize, needed: Option<Length>) -> Known {
        let none = Known {
            from: Length::ZERO,
            finned: Length::ZERO,
            nominal: Length::ZERO,
            cost: Money::ZERO,
        };
        let (Some(known), Some(of)) = (self.known.get_mut(room), job.house.rooms.get(room)) else {
            return none;
        };
        let length = needed.unwrap_or(Length::from_si(1e4));
        // What was the least that reached less is the least, as long as it reaches this; and walls that
        // were full stay full.
        let serves = |known: &&Known| {
            known.from <= length && (length <= known.finned || known.finned < known.from)
        };
        if let Some(known) = known.iter().find(serves) {
            return *known;
        }
        let choice = choose_for(job, of, needed);
        let found = Known {
            from: length,
            finned: choice.finned,
            nominal: choice.nominal,
            cost: price::of_pieces(job, &choice),
        };
        known.push(found);
        found
    }
}

/// Water on its way, and what it has met.
struct Water {
    stream: Stream,
    pressure: Pressure,
    given: Power,
    velocity: Velocity,
}

impl Water {
    /// Passes a stretch, and gives what its room is credited with.
    fn through(&mut self, link: &Link) -> Power {
        if link.length <= Length::ZERO && link.k() <= 0.0 {
            return Power::ZERO;
        }
        let passage = pass(link, self.stream);
        self.stream.temperature = passage.water_out;
        self.pressure += passage.pressure_drop();
        self.given += passage.heat;
        self.velocity = self.velocity.max(passage.velocity.abs());
        passage.to_room
    }
}

/// A billionth of the load is rounding, not cold.
pub(super) fn is_short(wanted: Power, short: Power) -> bool {
    short.si() > 1e-9 * wanted.si()
}

fn tee(hanging: &Hanging) -> impl Iterator<Item = (Fitting, u32)> + use<> {
    let tees = matches!(hanging.from, From::Tees(_));
    tees.then_some((Fitting::TeeBranch, 1)).into_iter()
}

/// Pipe in the enclosure of a room.
fn inside(job: &Job, room: usize, tube: Tube, leg: PipeLeg) -> Link {
    let link = bare(job, Place::BoilerRoom, tube, leg);
    let Some(of) = job.house.rooms.get(room) else { return link };
    Link {
        place: Place::Inside(of.id),
        surface: Surface::Bare { film: job.circuit.pipe_film, cover: None, warms: Warms::Room },
        surroundings: of.temperature,
        ..link
    }
}
