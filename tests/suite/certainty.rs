//! How sure a load is: derivatives against differences of the whole calculation, bands against a
//! sample of changed houses, and what to measure next against the band once it is measured.

mod nudge;
mod sample;
mod slopes;

use crate::shipped::SHIPPED;
use crate::support::{V2_FIXTURE, job_of, open};
use finrun_engine::building::{
    AssemblyId, Band, Behind, Built, Certainty, House, Known, Leaks, Ranges, SlabEdge, SlabMethod,
    Subject, losses,
};
use finrun_engine::quantity::{Power, TemperatureDifference};

/// The shipped houses; the fixture with every feature: heated basement, typed and guessed
/// temperatures and windows, fans out of balance, a flue; and the first on F-factors.
fn houses() -> Vec<House> {
    let job = |text: &str| job_of(&open(text)).house;
    let mut houses: Vec<House> = SHIPPED.into_iter().map(job).collect();
    let mut fixture = job(V2_FIXTURE);
    for (_, surface) in nudge::surfaces(&mut fixture) {
        if let Behind::Unheated(_, known) = &mut surface.behind {
            *known = Known::Assumed;
        }
    }
    houses.push(fixture);
    let mut by_factor = job(SHIPPED[0]);
    by_factor.ground.slab = SlabMethod::FFactor(SlabEdge::Vertical2FtR10.f_factor());
    houses.push(by_factor);
    houses
}

fn certainty(house: &House) -> Certainty {
    losses(house).certainty
}

fn half_w(band: &Band) -> f64 {
    (band.high - band.low).si() / 2.0
}

fn near(what: &str, found: f64, expected: f64, slack: f64) {
    let within = slack * expected.abs();
    assert!((found - expected).abs() <= within + 1e-9, "{what}: {found} against {expected}");
}

const NOTHING: Ranges = Ranges {
    measured: 0.0,
    label: 0.0,
    listed: 0.0,
    assumed: 0.0,
    air: 0.0,
    soil: 0.0,
    outdoors: TemperatureDifference::ZERO,
};

#[test]
fn without_ranges_there_is_no_band() {
    for mut house in houses() {
        house.ranges = NOTHING;
        let found = losses(&house);
        let load: Power = found.rooms.iter().map(|room| room.total).sum();
        assert_eq!(found.certainty.house, Band { low: load, high: load });
        for (room, band) in found.rooms.iter().zip(&found.certainty.rooms) {
            assert_eq!(*band, Band { low: room.total, high: room.total });
        }
        for effect in &found.certainty.effects {
            assert_eq!((effect.alone, effect.narrows), (Power::ZERO, Power::ZERO), "{effect:?}");
        }
    }
}

#[test]
fn bands_lie_evenly_about_the_loads() {
    for house in houses() {
        let found = losses(&house);
        let load: Power = found.rooms.iter().map(|room| room.total).sum();
        let Band { low, high } = found.certainty.house;
        near("middle", (low + high).si() / 2.0, load.si(), 1e-12);
        for (room, band) in found.rooms.iter().zip(&found.certainty.rooms) {
            near("middle", (band.low + band.high).si() / 2.0, room.total.si(), 1e-12);
            assert!(band.low < room.total);
        }
    }
}

/// Alone, a range gives a band in proportion to it; with the others, a wider one than they give.
#[test]
fn bands_grow_with_each_range() {
    type Set = fn(&mut Ranges, f64);
    let sets: [(&str, Set); 7] = [
        ("measured", |ranges, by| ranges.measured *= by),
        ("label", |ranges, by| ranges.label *= by),
        ("listed", |ranges, by| ranges.listed *= by),
        ("assumed", |ranges, by| ranges.assumed *= by),
        ("air", |ranges, by| ranges.air *= by),
        ("soil", |ranges, by| ranges.soil *= by),
        ("outdoors", |ranges, by| ranges.outdoors = ranges.outdoors * by),
    ];
    let half = |house: &House, ranges: Ranges| {
        half_w(&certainty(&House { ranges, ..house.clone() }).house)
    };
    let mut moved = [false; 7];
    // A measured leakage is as sure as what is listed, or as any leakage: two ranges in one.
    for house in houses().iter().map(nudge::as_gaps) {
        let whole = half(&house, house.ranges);
        for ((name, set), moved) in sets.iter().zip(&mut moved) {
            let mut without = house.ranges;
            set(&mut without, 0.0);
            let mut alone = house.ranges;
            for (other, set) in &sets {
                if other != name {
                    set(&mut alone, 0.0);
                }
            }
            let (rest, by_itself) = (half(&house, without), half(&house, alone));
            // Half bands add as squares, so each has its own part in the whole.
            near(name, whole * whole, rest * rest + by_itself * by_itself, 1e-9);
            let mut twice = alone;
            set(&mut twice, 2.0);
            near(name, half(&house, twice), 2.0 * by_itself, 1e-9);
            *moved |= by_itself > 0.0;
        }
    }
    assert_eq!(moved, [true; 7]);
}

/// The range that an input has once it is measured or read off a label, in a house that says so.
fn measured(house: &House, subject: Subject) -> Option<House> {
    let mut house = house.clone();
    let label = Built::Own(AssemblyId(9999));
    let matches = |built: Built| match subject {
        Subject::Listed(assembly) => built == Built::Listed(assembly),
        _ => false,
    };
    match subject {
        Subject::Listed(_) => {
            for surface in nudge::surfaces(&mut house).map(|(_, surface)| surface) {
                if matches(surface.built) {
                    surface.built = label;
                }
                for opening in surface.openings.iter_mut().filter(|o| matches(o.built)) {
                    opening.built = label;
                }
            }
        }
        // A blower door leaves what a list leaves: wind and stack are still a model's.
        Subject::Leakage => match house.air.leaks {
            Leaks::Changes(_) | Leaks::Estimated(_) => house.ranges.air = house.ranges.listed,
            Leaks::Measured(_) => {}
        },
        _ => return None,
    }
    Some(house)
}

#[test]
fn what_to_measure_next_is_what_narrows_the_band_most() {
    let mut measured_ones = 0;
    for house in houses() {
        let found = certainty(&house);
        let half = half_w(&found.house);
        let mut before: Option<f64> = None;
        for effect in &found.effects {
            let narrower = match (effect.subject, measured(&house, effect.subject)) {
                (_, Some(house)) => {
                    measured_ones += 1;
                    half_w(&certainty(&house).house)
                }
                // Measuring makes it as sure as other measures; by squares, as nothing else moves.
                (Subject::GuessedOpenings | Subject::GuessedTemperature, None) => {
                    let left = effect.alone.si() * house.ranges.measured / effect.range;
                    let alone = effect.alone.si();
                    (half * half - alone * alone + left * left).sqrt()
                }
                // Nothing better is to be had.
                _ => half,
            };
            near(&format!("{:?}", effect.subject), effect.narrows.si(), half - narrower, 1e-6);
            assert!(before.is_none_or(|before| before >= half - narrower - 1e-9), "{effect:?}");
            before = Some(half - narrower);
        }
    }
    assert!(measured_ones > 30, "{measured_ones}");
}
