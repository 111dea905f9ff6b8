//! What may be the matter, and how strong it may be.

use super::model::{Model, State};
use super::place::first;
use crate::building::RoomId;
use crate::design::Design;
use crate::job::{Arrangement, Job};
use crate::numeric::ln;
use serde::Serialize;

/// What explains the readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Explanation {
    /// It works as calculated, and every room has enough.
    AsCalculated,
    /// It works as calculated, and this room, of those with too little element the coldest, is cold
    /// nevertheless.
    TooLittle { room: RoomId },
    /// Less water through all circuits: the circulator, a valve, dirt.
    LowFlow,
    /// Hardly any water through this circuit, which its first room stands for: air, or something shut.
    Air { first: RoomId },
    /// This room's element gives less than it should: fins blocked, cover shut, or less of it finned
    /// than entered.
    Blocked { room: RoomId },
    /// The water passes this loop in another order.
    WrongOrder { first: RoomId, order: Order },
    /// This room loses more than calculated.
    MoreLoss { room: RoomId },
    /// All rooms do.
    HouseLoss,
}

/// The order in which the water really passes a loop's rooms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Order {
    /// Supply and return are interchanged.
    Reversed,
    /// These neighbours are.
    Swapped { before: RoomId, behind: RoomId },
}

/// What an explanation's strength is a share of, as calculated or entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scale {
    Flow,
    Output,
    Loss,
}

/// A kind of explanation with its part of the chance before anything is read: common practice, no source.
/// That the system works as entered is the likeliest; what is only found by looking for it is the least.
const COMMON: f64 = 2.0;
const USUAL: f64 = 1.0;
const RARE: f64 = 0.5;

/// Swapped neighbours share this part of the chance of a wrong order; a reversed loop has the rest:
/// judgement.
const SWAPPED: f64 = 0.3;

/// One to be weighed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Candidate {
    pub(super) explanation: Explanation,
    pub(super) change: Change,
    /// Before anything is read; the sum over all is not one.
    pub(super) chance: f64,
}

/// The one thing that an explanation changes, by the place of circuit, room or order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Change {
    Nothing,
    Flow { circuit: Option<usize>, range: Range },
    Output { room: usize, range: Range },
    Order(usize),
    Loss { room: Option<usize>, range: Range },
}

/// Shares between which a strength is sought, each as likely as the next by its logarithm: judgement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Range {
    pub(super) low: f64,
    pub(super) high: f64,
}

const LOW_FLOW: Range = Range { low: 0.2, high: 0.85 };
/// An air lock leaves next to nothing of a lone loop's flow, or it would be swept on: judgement.
const AIR_ALONE: Range = Range { low: 0.02, high: 0.2 };
/// Of one circuit among several also what a valve left half shut leaves.
const AIR_BESIDE: Range = Range { low: 0.02, high: 0.75 };
const BLOCKED: Range = Range { low: 0.1, high: 0.85 };
const MORE_LOSS: Range = Range { low: 1.15, high: 4.0 };
const HOUSE_LOSS: Range = Range { low: 1.15, high: 2.5 };

impl Change {
    pub(super) fn range(self) -> Option<Range> {
        match self {
            Change::Nothing | Change::Order(_) => None,
            Change::Flow { range, .. }
            | Change::Output { range, .. }
            | Change::Loss { range, .. } => Some(range),
        }
    }

    pub(super) fn scale(self) -> Option<Scale> {
        match self {
            Change::Nothing | Change::Order(_) => None,
            Change::Flow { .. } => Some(Scale::Flow),
            Change::Output { .. } => Some(Scale::Output),
            Change::Loss { .. } => Some(Scale::Loss),
        }
    }

    /// The system with this change, its strength as a logarithm.
    pub(super) fn apply(self, state: &State, strength: f64) -> State {
        let mut state = state.clone();
        let add = |all: &mut Vec<f64>, one: Option<usize>| {
            for (at, value) in all.iter_mut().enumerate() {
                if one.is_none_or(|one| one == at) {
                    *value += strength;
                }
            }
        };
        match self {
            Change::Nothing => {}
            Change::Flow { circuit, .. } => add(&mut state.flow, circuit),
            Change::Output { room, .. } => add(&mut state.output, Some(room)),
            Change::Loss { room, .. } => add(&mut state.loss, room),
            Change::Order(order) => state.order = order,
        }
        state
    }
}

impl Range {
    /// The logarithms of its ends.
    pub(super) fn ends(self) -> (f64, f64) {
        (ln(self.low), ln(self.high))
    }
}

/// A loop with its rooms in another order.
#[derive(Debug)]
pub(super) struct Reordered {
    pub(super) first: RoomId,
    pub(super) order: Order,
    pub(super) job: Job,
}

/// The orders in which the water may really pass a loop.
pub(super) fn orders(job: &Job, design: &Design) -> Vec<Reordered> {
    let mut all = Vec::new();
    for (zone, of) in job.zones.iter().enumerate() {
        if !matches!(of.arrangement, Arrangement::Series | Arrangement::Split) {
            continue;
        }
        for (at, rooms) in of.loops.iter().enumerate() {
            let id = |room: usize| job.house.rooms.get(rooms[room]).map(|room| room.id);
            let of_loop =
                |first: &RoomId| rooms.iter().any(|&room| job.house.rooms[room].id == *first);
            let mut firsts = design.piping.circuits.iter().filter_map(first);
            let Some(first) = firsts.find(of_loop) else { continue };
            let mut add = |order: Order, change: &dyn Fn(&mut Vec<usize>)| {
                let mut job = job.clone();
                change(&mut job.zones[zone].loops[at]);
                all.push(Reordered { first, order, job });
            };
            if rooms.len() > 1 {
                add(Order::Reversed, &|rooms| rooms.reverse());
            }
            // Two rooms swapped are a loop of two reversed.
            for nth in 1..if rooms.len() > 2 { rooms.len() } else { 1 } {
                if let (Some(before), Some(behind)) = (id(nth - 1), id(nth)) {
                    let order = Order::Swapped { before, behind };
                    add(order, &|rooms| rooms.swap(nth - 1, nth));
                }
            }
        }
    }
    all
}

/// All that may explain what is read.
pub(super) fn candidates(
    model: &Model<'_>,
    orders: &[Reordered],
    short: Option<RoomId>,
) -> Vec<Candidate> {
    let works = short.map_or(Explanation::AsCalculated, |room| Explanation::TooLittle { room });
    let mut all = vec![Candidate { explanation: works, change: Change::Nothing, chance: COMMON }];
    let mut family = |chance: f64, members: Vec<(Explanation, Change)>| {
        let each = chance / members.len().max(1) as f64;
        let one = |(explanation, change)| Candidate { explanation, change, chance: each };
        all.extend(members.into_iter().map(one));
    };
    let (job, design) = (model.job, model.design);
    let circuits: Vec<(usize, RoomId)> = design
        .piping
        .circuits
        .iter()
        .enumerate()
        .filter_map(|(at, circuit)| Some((at, first(circuit)?)))
        .collect();
    let whole = Change::Flow { circuit: None, range: LOW_FLOW };
    family(USUAL, vec![(Explanation::LowFlow, whole)]);
    let range = if circuits.len() > 1 { AIR_BESIDE } else { AIR_ALONE };
    let air = |&(at, first): &(usize, RoomId)| {
        (Explanation::Air { first }, Change::Flow { circuit: Some(at), range })
    };
    family(USUAL, circuits.iter().map(air).collect());
    let id = |room: usize| job.house.rooms[room].id;
    let rooms = 0..job.house.rooms.len();
    let finned = |room: &usize| design.rooms[*room].element.choice.finned.si() > 0.0;
    let blocked = |room: usize| {
        let change = Change::Output { room, range: BLOCKED };
        (Explanation::Blocked { room: id(room) }, change)
    };
    family(USUAL, rooms.clone().filter(finned).map(blocked).collect());
    let of = |kind: bool, chance: f64| {
        let is = move |order: &Order| (*order == Order::Reversed) == kind;
        let members = orders.iter().enumerate().filter(|(_, of)| is(&of.order));
        let one = |(at, of): (usize, &Reordered)| {
            let explanation = Explanation::WrongOrder { first: of.first, order: of.order };
            (explanation, Change::Order(at + 1))
        };
        (chance, members.map(one).collect::<Vec<_>>())
    };
    for (chance, members) in [of(true, RARE * (1.0 - SWAPPED)), of(false, RARE * SWAPPED)] {
        family(chance, members);
    }
    if model.rooms_tell() {
        let change = |room| Change::Loss { room: Some(room), range: MORE_LOSS };
        let more = |room: usize| (Explanation::MoreLoss { room: id(room) }, change(room));
        family(USUAL, rooms.map(more).collect());
    }
    if model.house_tells() {
        let change = Change::Loss { room: None, range: HOUSE_LOSS };
        family(USUAL, vec![(Explanation::HouseLoss, change)]);
    }
    all
}
