//! Each derivative against a central difference of the whole calculation.
//!
//! What `certainty.rs` of the engine declares to be held is held here too: the leakage as so many air
//! changes when the outdoors moves; sizes as conductances alone.

use super::nudge::{as_gaps, held_air, nudged, surfaces};
use super::{half_w, houses, near};
use finrun_engine::building::{Behind, House, Known, Leaks, OpenFlue, RoomId, Subject, losses};
use finrun_engine::quantity::ChangeRate;

/// Every input of a house on its own, the measures of each room and space for themselves, with half
/// its range.
pub(super) fn inputs(house: &House) -> Vec<(Subject, f64)> {
    let effects = losses(house).certainty.effects;
    let rooms = house.rooms.iter().map(|room| room.id);
    let nodes = rooms.chain(house.spaces.iter().map(|space| space.id));
    effects
        .iter()
        .filter(|effect| effect.subject != Subject::Sizes)
        .map(|effect| (effect.subject, effect.range))
        .chain(nodes.map(|id| (Subject::Size(id), house.ranges.measured)))
        .collect()
}

/// What a whole change, or a kelvin, would do to each room's load at the slope here.
fn slopes(house: &House, subject: Subject) -> Vec<f64> {
    let house = match subject {
        Subject::Leakage => as_gaps(house),
        _ => house.clone(),
    };
    let step = 1e-4;
    let [more, less] = [step, -step].map(|change| losses(&nudged(&house, subject, change)).rooms);
    more.iter().zip(&less).map(|(m, l)| (m.total - l.total).si() / (2.0 * step)).collect()
}

#[test]
fn each_input_does_what_a_small_change_of_it_does() {
    let mut kinds: Vec<std::mem::Discriminant<Subject>> = Vec::new();
    for house in houses() {
        let certainty = losses(&house).certainty;
        let load: f64 = losses(&house).rooms.iter().map(|room| room.total.si()).sum();
        let mut rooms = vec![0.0; house.rooms.len()];
        let (mut whole, mut sizes) = (0.0, 0.0);
        for (subject, range) in inputs(&house) {
            let slopes = slopes(&house, subject);
            let of_house: f64 = slopes.iter().sum::<f64>() * range;
            match subject {
                Subject::Size(_) => sizes += of_house * of_house,
                _ => {
                    let effect = certainty.effects.iter().find(|e| e.subject == subject);
                    let alone = effect.expect("the effect").alone.si();
                    let off = (alone - of_house.abs()).abs();
                    // Next to nothing is lost in the rounding of the whole load.
                    assert!(
                        off <= 1e-5 * of_house.abs() + 1e-10 * load,
                        "{subject:?}: {alone} against {of_house}"
                    );
                    if alone > 1e-6 * load {
                        kinds.push(std::mem::discriminant(&subject));
                    }
                }
            }
            whole += of_house * of_house;
            for (sum, slope) in rooms.iter_mut().zip(slopes) {
                *sum += (slope * range) * (slope * range);
            }
        }
        let of_sizes = certainty.effects.iter().find(|e| e.subject == Subject::Sizes);
        near("sizes", of_sizes.expect("the sizes").alone.si(), sizes.sqrt(), 1e-5);
        near("the house", half_w(&certainty.house), whole.sqrt(), 1e-5);
        for (band, sum) in certainty.rooms.iter().zip(rooms) {
            near("a room", half_w(band), sum.sqrt(), 1e-5);
        }
    }
    // Outdoors, leakage, fans, soil, air of spaces, listed, own, typed U, guessed sizes and
    // temperatures: none that was not looked at.
    let mut seen: Vec<_> = Vec::new();
    for kind in kinds {
        if !seen.contains(&kind) {
            seen.push(kind);
        }
    }
    assert_eq!(seen.len(), 10);
}

/// In a house that nothing leaks into, off the ground, nothing is held: the measures of a room and
/// its guessed windows, changed for themselves, give what they give as conductances.
#[test]
fn sizes_are_conductances() {
    for mut house in houses() {
        house.air.leaks = Leaks::Changes(ChangeRate::ZERO);
        house.air.flue = OpenFlue::None;
        house.air.ventilation.supply = house.air.ventilation.exhaust;
        for (_, surface) in surfaces(&mut house) {
            if let Behind::Ground { .. } = surface.behind {
                surface.behind = Behind::Outdoors;
            }
        }
        let nodes: Vec<RoomId> = inputs(&house).iter().filter_map(|(s, _)| as_node(*s)).collect();
        for subject in nodes.into_iter().map(Subject::Size).chain([Subject::GuessedOpenings]) {
            let step = 1e-4;
            let rooms = |change| losses(&measured_anew(&house, subject, change)).rooms;
            let (more, less) = (rooms(step), rooms(-step));
            let expected = slopes(&house, subject);
            for ((more, less), expected) in more.iter().zip(&less).zip(expected) {
                let found = (more.total - less.total).si() / (2.0 * step);
                near(&format!("{subject:?}"), found, expected, 1e-5);
            }
        }
    }
}

fn as_node(subject: Subject) -> Option<RoomId> {
    match subject {
        Subject::Size(id) => Some(id),
        _ => None,
    }
}

/// The house with what was measured in one room, or what was guessed anywhere, so much larger.
pub(super) fn measured_anew(house: &House, subject: Subject, change: f64) -> House {
    let mut house = house.clone();
    let by = 1.0 + change;
    for (node, surface) in surfaces(&mut house) {
        let wanted = |size: Known| match subject {
            Subject::GuessedOpenings => size == Known::Assumed,
            _ => subject == Subject::Size(node) && size == Known::Typed,
        };
        if subject == Subject::Size(node) {
            // What is guessed keeps its size, and the rest of the wall grows.
            let guessed = surface.openings.iter().filter(|o| o.size == Known::Assumed);
            let guessed = guessed.map(|o| o.area()).sum();
            surface.gross_area = (surface.gross_area - guessed) * by + guessed;
            surface.along = surface.along * by;
        }
        for opening in surface.openings.iter_mut().filter(|o| wanted(o.size)) {
            opening.width = opening.width * by;
        }
    }
    house
}

/// The held air is the same air.
#[test]
fn held_air_carries_the_same_heat() {
    for house in houses() {
        let load =
            |house: &House| -> f64 { losses(house).rooms.iter().map(|room| room.total.si()).sum() };
        near("held", load(&held_air(&house)), load(&house), 1e-12);
        near("gaps", load(&as_gaps(&house)), load(&house), 1e-12);
    }
}
