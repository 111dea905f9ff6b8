//! The straight stretches of pipe: what is cut in one, hung in one, and coupled where it is longer than a
//! stick.

use crate::arrangement::{Laid, laid};
use crate::design::Design;
use crate::job::{Arrangement, Job, Leg, LegKind, Sticks, Zone};
use crate::network::Place;
use crate::pipe::{Material, Tube};
use crate::quantity::{Length, Unit};
use serde::Serialize;

/// Pipe in one line.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Straight {
    pub place: Place,
    pub tube: Tube,
    #[serde(rename = "length_m")]
    pub length: Length,
    /// The step of the way that it is; none where the stretch's whole length is taken as one line.
    #[serde(skip)]
    pub leg: Option<LegKind>,
}

impl Straight {
    /// Whether it lies in an enclosure, where brackets carry it and nothing covers it.
    pub fn is_inside(&self) -> bool {
        is_inside(self.place)
    }
}

pub(super) fn is_inside(place: Place) -> bool {
    matches!(place, Place::Inside(_) | Place::Above(_))
}

/// Every straight, in the order of flow, zone after zone. The pipe of the boiler room is not known.
pub fn straights(job: &Job, design: &Design) -> Vec<Straight> {
    of_laid(job, design, &laid(job, design))
}

pub(super) fn of_laid(job: &Job, design: &Design, laid: &[Laid]) -> Vec<Straight> {
    laid.iter().flat_map(|laid| parts(job, design, laid)).collect()
}

/// The legs of a stretch, each a straight, and what is left of it.
fn parts(job: &Job, design: &Design, laid: &Laid) -> Vec<Straight> {
    let straight = |length, leg| Straight { place: laid.place, tube: laid.tube, length, leg };
    let mut all: Vec<Straight> =
        legs(job, laid.place).map(|leg| straight(leg.length, Some(leg.kind))).collect();
    let mut left = laid.length - all.iter().map(|straight| straight.length).sum::<Length>();
    if let Place::Above(room) = laid.place {
        // The return above the pieces goes along each run.
        for run in design.room(room).iter().flat_map(|room| &room.element.choice.runs) {
            let long = run.pieces.iter().copied().sum::<Length>();
            all.push(straight(long, Some(LegKind::Along)));
            left = left - long;
        }
    }
    all.insert(0, straight(left, None));
    // What is left of a difference is rounding.
    all.retain(|straight| straight.length.si() > 1e-6);
    all
}

fn legs(job: &Job, place: Place) -> impl Iterator<Item = Leg> {
    let (room, inside) = match place {
        Place::To(room) => (Some(room), Some(false)),
        Place::Inside(room) | Place::Above(room) => (Some(room), Some(true)),
        // With reverse return the return main goes on beside the supply main.
        Place::ReturnMain(room) => (next_room(job, room), None),
        _ => (None, None),
    };
    let at = room.and_then(|room| job.house.rooms.iter().position(|of| of.id == room));
    let way = at.and_then(|at| job.approaches.get(at));
    let legs = way.map(|way| way.legs.clone()).unwrap_or_default();
    legs.into_iter().filter(move |leg| inside.is_none_or(|inside| leg.kind.is_inside() == inside))
}

/// The room to which a reverse return goes on from this one.
fn next_room(job: &Job, room: crate::building::RoomId) -> Option<crate::building::RoomId> {
    let id = |at: &usize| job.house.rooms.get(*at).map(|room| room.id);
    let reverse = |zone: &&Zone| zone.arrangement == Arrangement::ReverseReturn;
    let mut rooms = job.zones.iter().filter(reverse).map(|zone| zone.loops.iter().flatten());
    rooms.find_map(|rooms| rooms.skip_while(|at| id(at) != Some(room)).nth(1).and_then(id))
}

/// The lengths in which a tube is sold.
///
/// PEX comes in coils of 100, 300 or 500 ft (common practice, no source): the shortest that holds the
/// longest stretch, since a coil has no couplings in it.
pub fn sold_in(job: &Job, tube: Tube, longest: Length) -> Vec<Length> {
    let feet = |feet: &[f64]| feet.iter().map(|&feet| Length::of(feet, Unit::Foot)).collect();
    match (tube.material(), job.cutting.sticks) {
        (Material::Pex, _) => {
            let coil = COILS_FT.iter().find(|coil| longest.to(Unit::Foot) <= **coil + 1e-6);
            feet(&[*coil.unwrap_or(&COILS_FT[COILS_FT.len() - 1])])
        }
        (_, Sticks::TenAndTwenty) => feet(&[10.0, 20.0]),
        (_, Sticks::Twenty) => feet(&[20.0]),
        (_, Sticks::Ten) => feet(&[10.0]),
    }
}

const COILS_FT: [f64; 3] = [100.0, 300.0, 500.0];

/// Couplings in one straight of this length, when the longest that is sold is so long.
pub(super) fn couplings(straight: Length, longest_sold: Length) -> u32 {
    let parts = (straight.to(Unit::Foot) / longest_sold.to(Unit::Foot) - 1e-6).ceil();
    (parts.clamp(1.0, 1e4) - 1.0) as u32
}

/// The longest in which this tube is sold, for these straights.
pub(super) fn longest_sold(job: &Job, straights: &[Straight], tube: Tube) -> Length {
    let own = straights.iter().filter(|straight| straight.tube == tube);
    let longest = own.fold(Length::ZERO, |most, straight| most.max(straight.length));
    sold_in(job, tube, longest).into_iter().fold(Length::ZERO, Length::max)
}
