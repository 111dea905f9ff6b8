//! What the loops of a zone come to in a system that is solved as a whole, and what is wrong there.

use super::follow::{Facts, is_short};
use super::price;
use super::split::Score;
use crate::arrangement::{CircuitDesign, PumpDesign, Solved, zone_head_of};
use crate::building::{RoomId, RoomLoad};
use crate::check::{LEAST_VELOCITY, MOST_VELOCITY, PUMP_REACHES, most_carried, practice_length};
use crate::job::{Flow, Job, Zone};
use crate::network::{Passage, Place};
use crate::order;
use crate::quantity::{Length, MassFlow, Money, Power, Temperature, Velocity, VolumeFlow};

/// A zone's loops as they run.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    pub loops: Vec<LoopFigures>,
    pub short_rooms: usize,
    /// Nominal.
    pub element: Length,
    /// Soldered, at the elements: one more on each run of wall than it has pieces.
    pub joints: usize,
    /// At the supply temperature, as every flow here.
    pub flow: VolumeFlow,
    pub head: Length,
    pub back: Temperature,
    pub velocity: Velocity,
    /// Pieces, pipe and valves; none while a price is missing.
    pub cost: Option<Money>,
    /// The worst first.
    pub problems: Vec<Trouble>,
}

#[derive(Debug, Clone, PartialEq)]
pub struct LoopFigures {
    /// In the order of the water.
    pub rooms: Vec<RoomId>,
    pub element: Length,
    pub flow: VolumeFlow,
    pub back: Temperature,
    pub velocity: Velocity,
}

/// What is wrong with a zone's loops; a loop by its place among them, counted from zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Trouble {
    Short {
        room: RoomId,
        short: Power,
    },
    /// More element than the tube carries at the highest velocity and the planned drop.
    Carries {
        at: usize,
        element: Length,
        carries: Length,
    },
    Fast {
        at: usize,
        velocity: Velocity,
        most: Velocity,
    },
    /// The circulator moves less than is meant.
    PumpShort {
        meant: VolumeFlow,
        flow: VolumeFlow,
    },
    /// More element than is usual on such a tube: common practice, no source.
    Long {
        at: usize,
        element: Length,
        usual: Length,
    },
    /// Air may not be carried along. It does not decide between loops, since a flush cures it.
    Slow {
        at: usize,
        velocity: Velocity,
        least: Velocity,
    },
}

/// What a zone comes to, with its score. `bare_cost` is what its loops cost without elements.
pub(super) fn figures(
    job: &Job,
    loads: &[RoomLoad],
    zone: &Zone,
    solved: &Solved,
    bare_cost: Money,
) -> (Figures, Score) {
    let piping = &solved.piping;
    let density = job.circuit.fluid.density(job.circuit.supply);
    let mut figures = Figures {
        loops: Vec::new(),
        short_rooms: 0,
        element: Length::ZERO,
        joints: 0,
        flow: VolumeFlow::ZERO,
        head: zone_head_of(job, piping, zone.id),
        back: job.circuit.supply,
        velocity: Velocity::ZERO,
        cost: None,
        problems: Vec::new(),
    };
    if let Some(of) = piping.zones.iter().find(|of| of.zone == zone.id) {
        figures.flow = of.mass_flow / density;
        (figures.back, figures.velocity) = (of.back, of.velocity);
    }
    let mut score = Score::default();
    let mut cost = bare_cost;
    let mut of_loops = Vec::new();
    for (at, rooms) in zone.loops.iter().enumerate() {
        let (facts, flow) = facts(job, loads, rooms, solved, &mut figures);
        figures.element += facts.element;
        cost += facts.cost;
        score = score + Facts { cost: Money::ZERO, ..facts }.score(job);
        of_loops.extend(loop_troubles(job, at, &facts));
        figures.loops.push(LoopFigures {
            rooms: rooms.iter().filter_map(|&room| Some(job.house.rooms.get(room)?.id)).collect(),
            element: facts.element,
            flow: flow / density,
            back: facts.back,
            velocity: facts.velocity,
        });
    }
    figures.short_rooms = figures.problems.len();
    figures.problems.extend(of_loops);
    if let Some((trouble, ppm)) = pump_short(job, zone, solved) {
        score.over_ppm += ppm;
        figures.problems.push(trouble);
    }
    // What only disturbs stands last.
    order::sort_by_key(&mut figures.problems, |trouble| {
        2 * u8::from(matches!(trouble, Trouble::Slow { .. }))
            + u8::from(matches!(trouble, Trouble::Long { .. }))
    });
    score.cost_mils = (cost.si() * 1e3) as u64;
    figures.cost = price::is_known(job).then_some(cost);
    (figures, score)
}

/// Of a loop with its flow; its rooms that are short go to the list.
fn facts(
    job: &Job,
    loads: &[RoomLoad],
    rooms: &[usize],
    solved: &Solved,
    figures: &mut Figures,
) -> (Facts, MassFlow) {
    let mut facts = Facts::none(job);
    for &room in rooms {
        let (Some(load), Some(element)) = (loads.get(room), solved.elements.get(room)) else {
            continue;
        };
        let wanted = load.wanted().max(Power::ZERO);
        let short = wanted - element.output;
        if is_short(wanted, short) {
            facts.short_rooms += 1;
            facts.short += short;
            figures.problems.push(Trouble::Short { room: load.room, short });
        }
        facts.load += wanted;
        facts.element += element.choice.nominal;
        facts.cost += price::of_pieces(job, &element.choice);
        figures.joints += price::joints(&element.choice);
    }
    let heats = |circuit: &&CircuitDesign| {
        let first = circuit.rooms.first();
        rooms.iter().any(|&room| job.house.rooms.get(room).map(|room| &room.id) == first)
    };
    let Some(circuit) = solved.piping.circuits.iter().find(heats) else {
        return (facts, MassFlow::ZERO);
    };
    let way = circuit.path.iter().filter_map(|&at| solved.piping.passages.get(at));
    for passage in way.filter(|passage| is_own(passage)) {
        facts.given += passage.heat;
        facts.velocity = facts.velocity.max(passage.velocity.abs());
    }
    facts.back = circuit.back;
    (facts, circuit.mass_flow)
}

/// Whether a stretch is the loop's own, and not its zone's or the boiler's.
fn is_own(passage: &Passage) -> bool {
    !matches!(
        passage.place,
        Place::BoilerRoom
            | Place::ZoneValve(_)
            | Place::FlowCheck(_)
            | Place::Trunk(_)
            | Place::TrunkBack(_)
    )
}

fn loop_troubles(job: &Job, at: usize, facts: &Facts) -> Vec<Trouble> {
    let mut all = Vec::new();
    let Facts { element, velocity, .. } = *facts;
    let usual = practice_length(job.circuit.tube);
    let carried = most_carried(job, facts.back) / facts.given;
    if facts.given > Power::ZERO && carried < 1.0 {
        all.push(Trouble::Carries { at, element, carries: element * carried });
    } else if element > usual {
        all.push(Trouble::Long { at, element, usual });
    }
    if velocity > MOST_VELOCITY {
        all.push(Trouble::Fast { at, velocity, most: MOST_VELOCITY });
    }
    // A hair below would read as the limit itself.
    if velocity < LEAST_VELOCITY * 0.97 && velocity > Velocity::ZERO {
        all.push(Trouble::Slow { at, velocity, least: LEAST_VELOCITY });
    }
    all
}

/// What a circulator lacks that the zone's water passes, with how much of what is meant, in millionths.
fn pump_short(job: &Job, zone: &Zone, solved: &Solved) -> Option<(Trouble, u64)> {
    if job.circuit.flow != Flow::FromPump {
        return None;
    }
    let ours = |pump: &&PumpDesign| pump.zone.is_none_or(|of| of == zone.id);
    let pump = solved.piping.pumps.iter().find(ours)?;
    let circuits = solved.piping.circuits.iter();
    let fed = circuits.filter(|circuit| pump.zone.is_none_or(|of| of == circuit.zone));
    let meant: MassFlow = fed.map(|circuit| circuit.target).sum();
    let lacks = 1.0 - pump.mass_flow / (meant * PUMP_REACHES);
    let density = job.circuit.fluid.density(job.circuit.supply);
    let trouble = Trouble::PumpShort { meant: meant / density, flow: pump.flow };
    (lacks > 0.0).then_some((trouble, (lacks.min(1.0) * 1e6) as u64))
}
