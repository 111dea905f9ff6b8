//! Zones: alone, together, by valve and by circulator, and what is not connected.

use super::{ALL, at, from_pump, near, six_rooms, two_zones};
use crate::support::{set, solve};
use finrun_engine::arrangement::run;
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::check::{Finding, Severity};
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, CircuitField, Draft, Field, Job, PartField, PumpKind, ShutOff, Zoning,
};
use finrun_engine::network::{Passage, Place, TypicalPump};
use finrun_engine::quantity::Unit;

/// Six zones of one room each.
fn six_zones(zoning: Zoning) -> Draft {
    let mut draft = six_rooms(Arrangement::Series);
    draft.zoning = zoning;
    let ids: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    for &id in &ids[1..] {
        let zone = draft.add_zone();
        draft.room_mut(id).expect("its room").zone = zone;
    }
    for (at, pipe) in ["5", "40", "12", "25", "9", "60"].iter().enumerate() {
        super::type_room(&mut draft, at, finrun_engine::job::RoomField::PipeTo, pipe);
    }
    from_pump(&mut draft);
    draft
}

fn flow(passages: &[Passage], place: Place) -> f64 {
    passages.iter().find(|p| p.place == place).map_or(0.0, |p| p.mass_flow.si())
}

fn ids(job: &Job) -> Vec<ZoneId> {
    job.zones.iter().map(|zone| zone.id).collect()
}

/// Zones side by side take from one another: whatever the combination, a zone's flow lies between
/// that of all together and that of the zone alone. So these are all one has to look at.
#[test]
fn every_combination_lies_between_all_and_alone() {
    for zoning in [Zoning::Valves, Zoning::Circulators] {
        let (job, design) = solve(&six_zones(zoning));
        let zones = ids(&job);
        assert_eq!(design.piping.alone.len(), 6);
        let element = |at: usize| Place::Element(design.rooms[at].room);
        for combination in 1u32..64 {
            let on: Vec<ZoneId> =
                (0..6).filter(|at| combination >> at & 1 == 1).map(|at| zones[at]).collect();
            let ran = run(&job, &design, &on);
            assert_eq!(ran.not_solved, None);
            for (at, zone) in zones.iter().enumerate() {
                let flow = flow(&ran.passages, element(at));
                if !on.contains(zone) {
                    assert!(flow.abs() < 1e-9, "a zone that is off moves");
                    continue;
                }
                let all = design.rooms[at].element.flow.si();
                let alone = self::flow(&design.piping.alone[at].passages, element(at));
                assert!(flow > all * (1.0 - 1e-6) && flow < alone * (1.0 + 1e-6));
            }
        }
        // All at once are the design's own.
        let all = run(&job, &design, &zones);
        near(all.flow.si(), design.piping.flow.si(), 1e-7);
        near(all.back.si(), design.piping.back.si(), 1e-9);
    }
}

#[test]
fn a_zone_alone_is_as_if_there_were_no_other() {
    let (job, design) = solve(&two_zones(Arrangement::Series));
    let alone = &design.piping.alone[0];
    assert_eq!(alone.zones, [job.zones[0].id]);
    let valve = alone.passages.iter().find(|p| matches!(p.place, Place::ZoneValve(_)));
    near(valve.expect("a zone valve").mass_flow.si(), alone.mass_flow.si(), 1e-9);
    // With its flow given, the head is the sum of its own way.
    let open = |p: &&Passage| p.mass_flow.si() > 0.0;
    let sum: f64 = alone.passages.iter().filter(open).map(|p| p.pressure_drop().si()).sum();
    let density = job.circuit.fluid.density(job.circuit.supply).si();
    near(alone.head.si(), sum / density / 9.80665, 1e-4);
}

/// A zone that is off must not be fed backwards through its circulator.
#[test]
fn flow_checks_keep_zones_apart() {
    let mut draft = two_zones(Arrangement::Series);
    draft.zoning = Zoning::Circulators;
    from_pump(&mut draft);
    let (_, design) = solve(&draft);
    for (run, room) in [(0, 5), (1, 0)] {
        let passages = &design.piping.alone[run].passages;
        let off = flow(passages, Place::Element(design.rooms[room].room));
        assert!(off.abs() < 1e-9, "{off}");
        let on = flow(passages, Place::Element(design.rooms[5 - room].room));
        assert!(on > 0.01, "{on}");
    }
    assert_eq!(design.piping.pumps.len(), 2);
}

/// A zone of any kind beside a zone of any other.
#[test]
fn every_arrangement_stands_beside_every_other() {
    for first in ALL {
        for second in ALL {
            let mut draft = two_zones(first);
            let other = draft.zones[1].id;
            draft.arrange(other, second);
            let (_, design) = solve(&draft);
            assert_eq!(design.piping.not_solved, None, "{first:?} {second:?}");
            let short = design.rooms.iter().filter(|r| r.short().si() > 0.0).count();
            assert_eq!(short, 0, "{first:?} {second:?}");
        }
    }
}

fn found(design: &Design, finding: fn(&Finding) -> bool) -> Vec<Severity> {
    let checks = design.checks.iter().filter(|check| finding(&check.finding));
    checks.map(|check| check.severity).collect()
}

/// A shut valve cuts off its own room and no other.
#[test]
fn a_room_that_is_shut_off_gets_nothing_and_says_so() {
    for arrangement in ALL.into_iter().filter(|a| a.has_branches()) {
        let mut draft = six_rooms(arrangement);
        draft.rooms[2].shut_off = ShutOff::Shut;
        let (_, design) = solve(&draft);
        assert_eq!(design.piping.not_solved, None);
        for (at, room) in design.rooms.iter().enumerate() {
            assert_eq!(room.element.output.si() > 0.0, at != 2, "{arrangement:?} {at}");
        }
        let shut = found(&design, |f| matches!(f, Finding::ShutOff { .. }));
        assert_eq!(shut, [Severity::Watch]);
    }
}

/// Every valve shut: nothing flows, nothing hangs, and each room says why.
#[test]
fn all_rooms_shut_off_leave_the_water_still() {
    let mut draft = six_rooms(Arrangement::HomeRun);
    from_pump(&mut draft);
    for room in &mut draft.rooms {
        room.shut_off = ShutOff::Shut;
    }
    let (_, design) = solve(&draft);
    assert_eq!(design.piping.mass_flow.si(), 0.0);
    assert_eq!(found(&design, |f| matches!(f, Finding::ShutOff { .. })).len(), 6);
}

#[test]
fn a_zone_without_rooms_is_named_and_stops_nothing() {
    let mut draft = two_zones(Arrangement::Series);
    draft.add_zone();
    let (job, design) = solve(&draft);
    assert_eq!((job.zones.len(), job.empty_zones.len()), (2, 1));
    assert_eq!(found(&design, |f| *f == Finding::EmptyZone), [Severity::Watch]);
    assert!(design.piping.flow.si() > 0.0);
}

/// Definition of Cv, for the zone valve and the flow check that are typed: psi by the square of gallons
/// a minute over Cv.
#[test]
fn zone_valves_and_flow_checks_take_what_their_cv_says() {
    for (zoning, field) in
        [(Zoning::Valves, PartField::ZoneValveCv), (Zoning::Circulators, PartField::FlowCheckCv)]
    {
        let mut draft = two_zones(Arrangement::Series);
        draft.zoning = zoning;
        set(&mut draft, Field::Part(field), "2.9");
        let (_, design) = solve(&draft);
        let valves = design
            .piping
            .passages
            .iter()
            .filter(|p| matches!(p.place, Place::ZoneValve(_) | Place::FlowCheck(_)));
        let mut count = 0;
        for valve in valves {
            let gpm = (valve.mass_flow / valve.density).to(Unit::GallonPerMinute);
            let psi = valve.density.si() / 999.03 * (gpm / 2.9) * (gpm / 2.9);
            near(valve.pressure_drop().to(Unit::Psi), psi, 1e-9);
            count += 1;
        }
        assert_eq!(count, 2);
    }
}

/// A strong circulator beside a weak one presses its water back through the weak one's zone, were it not
/// for the check.
#[test]
fn a_flow_check_holds_against_a_stronger_circulator() {
    let mut draft = two_zones(Arrangement::Series);
    draft.zoning = Zoning::Circulators;
    from_pump(&mut draft);
    draft.zones[0].pump = PumpKind::Typical(TypicalPump::HighHead);
    set(&mut draft, Field::Circuit(CircuitField::EquipmentHead), "8");
    let (_, design) = solve(&draft);
    let zones: Vec<f64> = design.piping.zones.iter().map(|zone| zone.mass_flow.si()).collect();
    assert!(zones[0] > 0.05, "{zones:?}");
    assert!(zones[1].abs() < 1e-9, "{zones:?}");
    // Its circulator has less than what the other leaves between the headers.
    let boiler = at(&design, Place::BoilerRoom);
    let least = design.piping.pumps[1].head.si() * 9.80665 * 960.0;
    assert!(boiler.pressure_drop().si() > least, "{}", boiler.pressure_drop().si());
}
