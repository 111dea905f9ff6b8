//! What the water carries through the year, what moves it, and how often the burner starts: by hand from
//! the shares of the time that each zone runs.

use super::{bins, plain, run};
use crate::support::{FOUR_ROOMS, add_room, add_wall, cold_day, open, room, set, solve};
use finrun_engine::arrangement;
use finrun_engine::building::ZoneId;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Field, FlowBasis, Job, PlantField, RoomField, Zoning};
use finrun_engine::quantity::{Power, Unit};
use finrun_engine::season::{Controls, SeasonRun};

/// Four rooms on two zones of different length: three rooms, and one with a long way to it.
fn two_zones(zoning: Zoning) -> (Job, Design) {
    let mut draft = open(FOUR_ROOMS);
    draft.flow_basis = FlowBasis::FromPump;
    draft.zoning = zoning;
    let second = draft.add_zone();
    let last = draft.rooms[3].id;
    draft.room_mut(last).expect("its room").zone = second;
    room(&mut draft, last, RoomField::PipeTo, "300");
    let (job, design) = solve(&draft);
    assert_eq!(job.zones.len(), 2);
    (job, design)
}

/// Water at 160 °F holds 4.19 kJ/(kg K) (steam tables), and by less than 1 % more or less anywhere between
/// 100 and 200 °F.
const WATER_J_KG_K: f64 = 4190.0;

/// First law: the boiler's heat is what the water takes along, flow by specific heat by the drop between the
/// supply and the mixed return. Zones that call without regard to one another run alone a (1 - b) and
/// b (1 - a) of the time and together a b, each time with the flow of a run of just those zones.
#[test]
fn the_heat_of_a_bin_is_what_the_water_carries() {
    let (job, design) = two_zones(Zoning::Valves);
    let zones: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    let flow_kg_s = |zones: &[ZoneId]| arrangement::run(&job, &design, zones).mass_flow.si();
    let (first, second) = (flow_kg_s(&zones[..1]), flow_kg_s(&zones[1..]));
    let both = flow_kg_s(&zones);
    assert!(first < 0.95 * both && (first / second - 1.0).abs() > 0.1, "{first} {second} {both}");
    let found = run(&job, &design, &bins(), &Controls::usual(&job));
    let mut compared = 0;
    for bin in found.bins.iter().filter(|bin| bin.runs > 0.0) {
        let [a, b] = bin.zones_run[..] else { panic!("two zones") };
        let mean_kg_s = a * (1.0 - b) * first + b * (1.0 - a) * second + a * b * both;
        let drop = (bin.supply - bin.back.expect("a return")).si();
        let carried_w = mean_kg_s * WATER_J_KG_K * drop;
        assert!((bin.heat.si() / carried_w - 1.0).abs() < 0.015, "{bin:?}: {carried_w} W");
        // The pipes lose more than the check is off, so that they are in it.
        assert!(bin.pipe_loss.si() > 0.03 * carried_w, "{:?}", bin.pipe_loss);
        compared += usize::from(a < 1.0 && b < 1.0);
    }
    assert!(compared > 5, "{compared}");
}

fn mean_w(found: &SeasonRun, of: impl Fn(&[f64], f64) -> f64, full: Power) {
    for bin in &found.bins {
        let expected = of(&bin.zones_run, bin.runs) * full.si();
        assert!((bin.pumps.si() - expected).abs() < 1e-6, "{bin:?}: {expected} W");
    }
}

/// A circulator that all zones share runs while any of them calls; one of a zone's own only while that
/// zone does, so that two unlike ones take what a bin with one zone at rest and the whole tell.
#[test]
fn circulators_take_power_while_they_run() {
    let (job, design) = two_zones(Zoning::Valves);
    let zones: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    let all = |job: &Job, design: &Design| arrangement::run(job, design, &zones).electric;
    let found = run(&job, &design, &bins(), &Controls::usual(&job));
    mean_w(&found, |_, runs| runs, all(&job, &design));

    let (job, design) = two_zones(Zoning::Circulators);
    let found = run(&job, &design, &bins(), &Controls::usual(&job));
    let full_w = all(&job, &design).si();
    // Two bins give the two powers, all others and the whole have to agree.
    let running: Vec<_> = found.bins.iter().filter(|bin| bin.runs > 0.0).collect();
    let (one, other) = (running[0], running[running.len() / 2]);
    let [a, b] = one.zones_run[..] else { panic!("two zones") };
    let [c, d] = other.zones_run[..] else { panic!("two zones") };
    let twice = a * d - b * c;
    assert!(twice.abs() > 1e-3, "{twice}");
    let first_w = (one.pumps.si() * d - other.pumps.si() * b) / twice;
    let second_w = (other.pumps.si() * a - one.pumps.si() * c) / twice;
    assert!(first_w > 0.0 && second_w > 0.0, "{first_w} {second_w}");
    assert!((first_w + second_w - full_w).abs() < 1e-6, "{first_w} {second_w} {full_w}");
    for bin in &running {
        let expected = first_w * bin.zones_run[0] + second_w * bin.zones_run[1];
        assert!((bin.pumps.si() - expected).abs() < 1e-6, "{bin:?}: {expected}");
    }
}

/// By hand: a burner of P that is asked for Q while the water runs warms C of water by its differential dT
/// in C dT/(P - Q), and rests for C dT/Q: so many starts an hour of running, and none while it does not.
#[test]
fn the_burner_starts_as_often_as_the_water_lasts() {
    let mut draft: Draft = open(FOUR_ROOMS);
    set(&mut draft, Field::Plant(PlantField::Output), "60000");
    let (job, design) = solve(&draft);
    let full_w = 60_000.0 * 1_055.055_852_62 / 3600.0;
    let volume = design.plant.as_ref().and_then(|plant| plant.volume).expect("a volume");
    // Water near 170 °F weighs 975 kg/m3 (steam tables).
    let warms_j = volume.total.si() * 975.0 * WATER_J_KG_K * job.plant.differential.si();
    let found = run(&job, &design, &bins(), &Controls::usual(&job));
    let mut compared = 0;
    for bin in found.bins.iter().filter(|bin| bin.runs > 0.0) {
        let asked_w = bin.heat.si() / bin.runs;
        assert!(asked_w < full_w);
        let seconds = warms_j / (full_w - asked_w) + warms_j / asked_w;
        let expected = bin.runs * 3600.0 / seconds;
        let starts = bin.cycles_per_h.expect("starts");
        assert!((starts / expected - 1.0).abs() < 0.03, "{starts} instead of {expected}");
        compared += usize::from(bin.runs < 0.7);
    }
    assert!(compared > 5, "{compared}");
}

/// A room that sun and people warm is too warm only as far as it is heated nevertheless, counted here bin by
/// bin; and what it comes to while nothing heats it is not its warmest.
#[test]
fn warm_hours_are_those_with_heat() {
    let mut draft = open(FOUR_ROOMS);
    let first = draft.rooms[1].id;
    room(&mut draft, first, RoomField::OtherHeat, "2000");
    let (job, design) = solve(&draft);
    let found = run(&job, &design, &bins(), &plain(&job));
    let meant = job.house.rooms[1].temperature;
    let warm = |at: finrun_engine::quantity::Temperature| (at - meant).si() > 1.5;
    let (mut heated_h, mut unheated_h, mut warmest) = (0.0, 0.0, f64::NEG_INFINITY);
    for bin in &found.bins {
        let heated = bin.to_rooms[1].si() > 0.0;
        match (warm(bin.rooms[1]), heated) {
            (true, true) => heated_h += bin.hours,
            (true, false) => unheated_h += bin.hours,
            _ => {}
        }
        if heated {
            warmest = f64::max(warmest, bin.rooms[1].si());
        }
    }
    assert!(heated_h > 100.0 && unheated_h > 100.0, "{heated_h} {unheated_h}");
    assert!((found.rooms[1].warm_h - heated_h).abs() < 1e-9);
    assert_eq!(found.rooms[1].warmest.expect("heated").si(), warmest);
}

/// By hand: 480 ft2 of wall at 0.1 Btu/(h ft2 F) lose 240 Btu/h between 70 °F and a balance of 65 °F: so much
/// comes from sun and people. What a room has from elsewhere is of that, and counts by itself only where it
/// is more.
#[test]
fn gains_hold_what_rooms_have_anyway() {
    for (elsewhere, expected) in [("0", 240.0), ("100", 240.0), ("500", 500.0)] {
        let mut draft = cold_day();
        let id = add_room(&mut draft, "Room", "20", "10");
        add_wall(&mut draft, id, "60", "0.1");
        room(&mut draft, id, RoomField::OtherHeat, elsewhere);
        set(&mut draft, Field::Plant(PlantField::Balance), "65");
        let (job, design) = solve(&draft);
        let found = run(&job, &design, &bins(), &Controls::usual(&job));
        let gains = found.bins[0].gains[0].to(Unit::BtuPerHour);
        assert!((gains - expected).abs() < 1e-6, "{gains} for {elsewhere}");
    }
}
