//! How sure a load is, against what the load does when an input is changed a little: the engine's
//! slopes are exact, so small differences of whole calculations must give them.

use crate::support::{V2_FIXTURE, job_of, open, set};
use finrun_engine::building::{
    Behind, Built, House, HouseLoss, Known, Leaks, OpenFlue, RoomId, Subject, Surface, losses,
};
use finrun_engine::job::{self, AirBasis, AirField, Draft, Field};
use finrun_engine::quantity::{ChangeRate, Temperature, Transmittance};

/// The second fixture, with a leakage that does not go with the temperature, which the slopes hold:
/// by air changes, without a flue, and with fans in balance.
fn draft() -> Draft {
    let mut draft = open(V2_FIXTURE);
    draft.air.basis = AirBasis::Class;
    draft.air.flue = OpenFlue::None;
    set(&mut draft, Field::Air(AirField::Exhaust), "60 cfm");
    draft
}

/// With what touches the ground in the open: a slab's shape is held too.
fn off_the_ground() -> House {
    let mut draft = draft();
    for room in draft.rooms.iter_mut().chain(&mut draft.spaces) {
        for surface in &mut room.surfaces {
            if surface.behind == job::Behind::Ground {
                surface.behind = job::Behind::Outdoors;
            }
        }
    }
    job_of(&draft).house
}

fn surfaces(house: &mut House) -> impl Iterator<Item = (RoomId, &mut Surface)> {
    let rooms = house.rooms.iter_mut().map(|room| (room.id, &mut room.surfaces));
    let spaces = house.spaces.iter_mut().map(|space| (space.id, &mut space.surfaces));
    rooms.chain(spaces).flat_map(|(id, surfaces)| surfaces.iter_mut().map(move |s| (id, s)))
}

/// Scales every U that `pick` points out, of a surface or of an opening with this certainty of size.
fn scale(
    house: &mut House,
    by: f64,
    pick: impl Fn(RoomId, Built, Transmittance, Option<Known>) -> bool,
) {
    for (room, surface) in surfaces(house) {
        if pick(room, surface.built, surface.transmittance, None) {
            surface.transmittance = surface.transmittance * by;
        }
        for opening in &mut surface.openings {
            if pick(room, opening.built, opening.transmittance, Some(opening.size)) {
                opening.transmittance = opening.transmittance * by;
            }
        }
    }
}

/// The house with one input changed: by a share of it, or in kelvins.
fn changed(house: &House, subject: Subject, change: f64) -> House {
    let mut house = house.clone();
    let by = 1.0 + change;
    match subject {
        Subject::Outdoors => {
            house.site.outdoors = Temperature::from_si(house.site.outdoors.si() + change);
        }
        Subject::Leakage => {
            if let Leaks::Changes(rate) = &mut house.air.leaks {
                *rate = *rate * by;
            }
            for room in &mut house.rooms {
                room.least_air = room.least_air.map(|rate: ChangeRate| rate * by);
            }
        }
        Subject::Ventilation => {
            house.air.ventilation.supply = house.air.ventilation.supply * by;
            house.air.ventilation.exhaust = house.air.ventilation.exhaust * by;
        }
        Subject::SpaceAir => {
            for space in &mut house.spaces {
                space.air_changes = space.air_changes * by;
                space.vent_area = space.vent_area * by;
            }
        }
        Subject::Listed(assembly) => {
            scale(&mut house, by, |_, built, _, _| built == Built::Listed(assembly));
        }
        Subject::Own(id) => scale(&mut house, by, |_, built, _, _| built == Built::Own(id)),
        Subject::TypedU(bits) => {
            scale(&mut house, by, |_, built, u, _| {
                built == Built::Typed && u.si().to_bits() == bits
            });
        }
        // Heat goes with an area as it goes with a U.
        Subject::Size(room) => {
            scale(&mut house, by, |of, _, _, size| of == room && size != Some(Known::Assumed));
        }
        Subject::GuessedOpenings => {
            scale(&mut house, by, |_, _, _, size| size == Some(Known::Assumed));
        }
        Subject::Soil | Subject::Sizes | Subject::GuessedTemperature => {
            unreachable!("{subject:?} has no one input")
        }
    }
    house
}

/// What each room's load changes for half of a subject's range, by a central difference.
fn differences(house: &House, subject: Subject, range: f64) -> Vec<f64> {
    let step = if subject == Subject::Outdoors { 1e-3 } else { 1e-4 };
    let [up, down] = [step, -step].map(|change| losses(&changed(house, subject, change)).rooms);
    let slopes = up.iter().zip(&down).map(|(a, b)| (a.total - b.total).si() / (2.0 * step));
    slopes.map(|slope| slope * range).collect()
}

fn near(what: &str, found: f64, expected: f64) {
    let off = (found - expected).abs();
    assert!(off < 1e-5 * expected.abs() + 1e-6, "{what}: {found} against {expected}");
}

/// By itself each input widens the house's load as much as it moves it.
#[test]
fn each_input_does_what_a_small_change_of_it_does() {
    let mut seen = 0;
    for house in [job_of(&draft()).house, off_the_ground()] {
        for effect in losses(&house).certainty.effects {
            if matches!(effect.subject, Subject::Soil | Subject::Sizes) {
                continue;
            }
            let total: f64 = differences(&house, effect.subject, effect.range).iter().sum();
            near(&format!("{:?}", effect.subject), effect.alone.si(), total.abs());
            seen += 1;
        }
    }
    assert!(seen > 50, "{seen}");
}

/// Half of a band is the root of the squares of what its inputs do; each room's measures are inputs
/// of their own.
#[test]
fn bands_add_what_is_independent() {
    let house = off_the_ground();
    let loss: HouseLoss = losses(&house);
    let effects = &loss.certainty.effects;
    let mut inputs: Vec<(Subject, f64)> =
        effects.iter().map(|e| (e.subject, e.range)).filter(|e| e.0 != Subject::Sizes).collect();
    let ids = house.rooms.iter().map(|r| r.id).chain(house.spaces.iter().map(|s| s.id));
    inputs.extend(ids.map(|id| (Subject::Size(id), house.ranges.measured)));
    assert!(house.rooms.iter().all(|room| {
        room.surfaces.iter().all(|surface| !matches!(surface.behind, Behind::Ground { .. }))
    }));
    let mut squares = vec![0.0; house.rooms.len()];
    let (mut house_square, mut sizes) = (0.0, 0.0);
    for (subject, range) in inputs {
        let moved = differences(&house, subject, range);
        let total: f64 = moved.iter().sum();
        house_square += total * total;
        if let Subject::Size(_) = subject {
            sizes += total * total;
        }
        for (square, moved) in squares.iter_mut().zip(moved) {
            *square += moved * moved;
        }
    }
    let half = |band: finrun_engine::building::Band| (band.high - band.low).si() / 2.0;
    near("house", half(loss.certainty.house), house_square.sqrt());
    for (band, square) in loss.certainty.rooms.iter().zip(squares) {
        near("room", half(*band), square.sqrt());
    }
    let found = effects.iter().find(|effect| effect.subject == Subject::Sizes);
    near("sizes", found.expect("the sizes").alone.si(), sizes.sqrt());
    // What to measure next comes first.
    assert!(effects.windows(2).all(|pair| pair[0].narrows >= pair[1].narrows));
    assert!(effects[0].narrows.si() > 0.0);
}
