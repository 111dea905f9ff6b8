//! What the rooms of a system that stands get, against solvers that are there already.

use super::faults::{Real, Run, read_all};
use super::seeded::stand;
use super::solved;
use crate::season::{one_bin, plain, run as run_season};
use crate::shipped::SHIPPED;
use crate::support::{FOUR_ROOMS, add_room, add_wall, cold_day, open};
use finrun_engine::design::{Design, design};
use finrun_engine::existing::{At, Limit, explain, gets};
use finrun_engine::job::{Arrangement, FlowBasis, Job, Ran, Standing};
use finrun_engine::quantity::{Temperature, TemperatureDifference, Unit};

/// A design of which the pieces are entered as what stands.
pub(super) fn standing(text: &str, share: impl Fn(usize) -> f64) -> (Job, Design, Design) {
    let (mut job, planned) = solved(&open(text));
    for room in 0..job.house.rooms.len() {
        let mut one = job.clone();
        stand(&mut one, &planned, Some((room, share(room))));
        let of = &one.house.rooms[room];
        job.house.rooms[room] = of.clone();
    }
    job.standing = Standing::Installed;
    let built = design(&job);
    (job, planned, built)
}

/// The same pieces, entered as what stands, are the same system: nothing is chosen beside them.
#[test]
fn what_was_planned_stands_as_planned() {
    for text in [SHIPPED[0], SHIPPED[1], SHIPPED[2], FOUR_ROOMS] {
        let (_, planned, built) = standing(text, |_| 1.0);
        for (planned, built) in planned.rooms.iter().zip(&built.rooms) {
            assert_eq!(planned.element.choice, built.element.choice);
            let off = planned.element.output - built.element.output;
            assert!(off.si().abs() < 1e-6 * planned.element.output.si(), "{off:?}");
        }
    }
}

/// Half of the pieces are half of the pieces: a room is left cold rather than given more.
#[test]
fn nothing_is_added_to_what_stands() {
    let (job, planned, built) = standing(FOUR_ROOMS, |room| if room == 1 { 0.5 } else { 1.0 });
    let (planned, built) = (&planned.rooms[1].element, &built.rooms[1].element);
    assert!((built.choice.nominal - planned.choice.nominal * 0.5).si().abs() < 1e-9);
    let found = gets(&job, &design(&job));
    assert_eq!(found[1].limit, Limit::Element);
    // And a room without any stands without any.
    let mut none = job.clone();
    none.house.rooms[1].surfaces.iter_mut().for_each(|surface| surface.fixed.clear());
    let bare = design(&none);
    assert_eq!(bare.rooms[1].element.choice.nominal.si(), 0.0);
    assert_eq!(gets(&none, &bare)[1].limit, Limit::Element);
}

/// Against the season's steady solver, which finds rest with thermostats by steps of its own: where every
/// zone calls throughout, each room comes to rest at the same temperature.
#[test]
fn rooms_come_to_rest_where_the_season_has_them() {
    let mut compared = 0;
    for text in [SHIPPED[0], SHIPPED[1], SHIPPED[2], FOUR_ROOMS] {
        let (job, _, built) = standing(text, |_| 0.6);
        let season = run_season(&job, &built, &one_bin(job.house.site.outdoors), &plain(&job));
        assert!(
            season.bins[0].zones_run.iter().all(|share| *share == 1.0),
            "it calls all the time"
        );
        for (found, expected) in gets(&job, &built).iter().zip(&season.bins[0].rooms) {
            let off = (found.reaches.expect("rest") - *expected).si();
            assert!(off.abs() < 1e-4, "{found:?} {expected:?}");
            compared += 1;
        }
    }
    assert!(compared >= 20);
}

/// Against `arrangement::run` and the house's balance, by the suite's own steps (see `faults`): everything
/// that is read of a system without a fault is what is calculated, to a twentieth of a degree.
#[test]
fn a_system_as_entered_reads_as_calculated() {
    let mut compared = 0;
    for text in [SHIPPED[0], SHIPPED[1], SHIPPED[2], FOUR_ROOMS] {
        for arrangement in [
            Arrangement::Series,
            Arrangement::DiverterTees,
            Arrangement::DirectReturn,
            Arrangement::HomeRun,
        ] {
            for ran in [Ran::AWhile, Ran::Throughout, Ran::ByThermostat] {
                let mut draft = open(text);
                let zone = draft.zones[0].id;
                draft.arrange(zone, arrangement);
                draft.flow_basis = FlowBasis::FromPump;
                let (job, design) = solved(&draft);
                let supply = Temperature::of(165.0, Unit::Fahrenheit);
                let outdoors = Temperature::of(18.0, Unit::Fahrenheit);
                let run = Run { supply, outdoors, ran };
                let measured = read_all(&Real::of(&job, &design), run);
                let explained = explain(&job, &design, &measured).expect("explained");
                for one in &explained.compared {
                    let off = (one.read - one.calculated).abs();
                    assert!(off < 0.05, "{arrangement:?} {ran:?} {one:?}");
                    compared += usize::from(one.at != At::BoilerSupply);
                }
            }
        }
    }
    assert!(compared > 400, "{compared}");
}

/// By hand: in a loop of four rooms the first element is short (cold water is no excuse there); with a
/// trickle of water the first room's own drop is too much, and the last has none left.
#[test]
fn what_limits_a_room_is_named() {
    let (mut job, _, _) = standing(FOUR_ROOMS, |_| 1.0);
    let enough = design(&job);
    assert!(gets(&job, &enough).iter().all(|room| room.limit == Limit::None));
    let trickle = enough.piping.flow * 0.25;
    job.circuit.flow = finrun_engine::job::Flow::Typed(trickle);
    let starved = gets(&job, &design(&job));
    assert_eq!(starved[0].limit, Limit::Flow, "{:?}", starved[0]);
    assert_eq!(starved[3].limit, Limit::Water, "{:?}", starved[3]);
    job.circuit.supply = job.circuit.supply - TemperatureDifference::from_si(30.0);
    assert_eq!(gets(&job, &design(&job))[0].limit, Limit::Element);
}

/// By hand: of three rooms alike the second takes from a trickle about as much warmth as the first did before
/// it, or a little less, which is more than half of what it takes itself: the water that comes is what it
/// lacks, and in the first room, where nothing came before, the flow.
#[test]
fn the_second_of_like_rooms_lacks_warm_water() {
    let mut draft = cold_day();
    for name in ["A", "B", "C"] {
        let room = add_room(&mut draft, name, "14", "12");
        add_wall(&mut draft, room, "14", "0.5");
    }
    let (mut job, planned) = solved(&draft);
    stand(&mut job, &planned, None);
    job.circuit.flow = finrun_engine::job::Flow::Typed(planned.piping.flow * 0.35);
    let starved = design(&job);
    let drop = |nth: usize| {
        let element = &starved.rooms[nth].element;
        (element.water_in - element.water_out).si()
    };
    assert!(drop(0) > 0.8 * drop(1) && drop(0) < 1.8 * drop(1), "{} {}", drop(0), drop(1));
    let limits: Vec<Limit> = gets(&job, &starved).iter().map(|room| room.limit).collect();
    assert_eq!(limits, [Limit::Flow, Limit::Water, Limit::Water]);
}
