//! What each control must do.

use super::{bins, fahrenheit, one_bin, plain, run};
use crate::support::{FOUR_ROOMS, open, room, solve};
use finrun_engine::bills::Fuel;
use finrun_engine::building::ZoneId;
use finrun_engine::job::{Arrangement, Draft, Field, FlowBasis, RoomField, ShutOff};
use finrun_engine::plant::reset::Setting;
use finrun_engine::quantity::{Temperature, TemperatureDifference, Unit};
use finrun_engine::season::{Burning, Controls, Holds, Supply, season};

fn four_rooms() -> Draft {
    open(FOUR_ROOMS)
}

fn by_home_run(mut draft: Draft) -> Draft {
    let zone = draft.zones[0].id;
    draft.zone_mut(zone).expect("the zone").arrangement = Arrangement::HomeRun;
    draft
}

fn valves(job: &finrun_engine::job::Job) -> Controls {
    let zones = job.zones.iter().map(|zone| (zone.id, Holds::RoomValves)).collect();
    Controls { zones, ..plain(job) }
}

/// A valve in each room holds each room at what it is meant to have, and its heat is then its load.
#[test]
fn room_valves_hold_every_room() {
    let (job, design) = solve(&by_home_run(four_rooms()));
    // On colder days no valve helps.
    let bins: Vec<_> =
        bins().into_iter().filter(|bin| bin.outdoors >= job.house.site.outdoors).collect();
    let found = run(&job, &design, &bins, &valves(&job));
    assert!(found.bins.len() > 10);
    for bin in &found.bins {
        for ((room, at), given) in job.house.rooms.iter().zip(&bin.rooms).zip(&bin.to_rooms) {
            let over = (*at - room.temperature).si();
            // A room with heat from elsewhere, or from a warmer neighbour, needs none on mild days.
            let free = given.si() == 0.0 && over > 0.0;
            assert!(over.abs() < 1e-8 || free, "{} {at:?} {given:?}", room.name);
        }
    }
    assert!(found.bins[0].to_rooms.iter().all(|given| given.si() > 0.0));
    assert!(found.rooms.iter().all(|room| room.cold_h == 0.0 && room.warm_h == 0.0));
    let design_day = run(&job, &design, &one_bin(job.house.site.outdoors), &valves(&job));
    for (room, given) in design.rooms.iter().zip(&design_day.bins[0].to_rooms) {
        let wanted = room.load.total - room.load.other;
        assert!((*given - wanted).si().abs() < 1e-5, "{given:?} {wanted:?}");
    }
    // One thermostat does not: the rooms' whole pieces give more than their loads here, less there.
    let one = run(&job, &design, &bins, &plain(&job));
    let coldest_day = one.bins.first().expect("a bin");
    let off = job.house.rooms.iter().zip(&coldest_day.rooms);
    assert!(off.map(|(room, at)| (*at - room.temperature).si().abs()).fold(0.0, f64::max) > 0.1);
}

/// In a loop without a way around a room a valve would stop the loop: one thermostat it is.
#[test]
fn a_series_loop_has_one_thermostat() {
    let (job, design) = solve(&four_rooms());
    let (one, each) = (plain(&job), valves(&job));
    let (one, each) = (run(&job, &design, &bins(), &one), run(&job, &design, &bins(), &each));
    assert_eq!(one, each);
}

/// The thermostat's room is as warm as it is meant to be, in whichever room it hangs; the others are not.
#[test]
fn the_thermostats_room_is_held() {
    let (job, design) = solve(&four_rooms());
    let zone = job.zones[0].id;
    for at in 0..job.house.rooms.len() {
        let id = job.house.rooms[at].id;
        let controls = Controls { zones: vec![(zone, Holds::Thermostat(id))], ..plain(&job) };
        let found = run(&job, &design, &bins(), &controls);
        for bin in found.bins.iter().filter(|bin| bin.zones_run[0] > 0.0 && bin.zones_run[0] < 1.0)
        {
            let off = bin.rooms[at] - job.house.rooms[at].temperature;
            assert!(off.si().abs() < 1e-8, "{off:?}");
        }
        // In no room of the zone, it hangs in the first.
        let nowhere = Holds::Thermostat(finrun_engine::building::RoomId(999_999));
        let controls = Controls { zones: vec![(zone, nowhere)], ..plain(&job) };
        assert_eq!(
            run(&job, &design, &bins(), &controls),
            run(&job, &design, &bins(), &plain(&job))
        );
    }
}

/// A thermostat's room that has far more element than it needs leaves the rest of its loop cold; the hours
/// are those of the bins in which it is more than 1.5 K.
#[test]
fn too_much_element_at_the_thermostat_leaves_the_others_cold() {
    let (job, mut design) = solve(&four_rooms());
    let before = run(&job, &design, &bins(), &plain(&job));
    assert!(before.rooms[1].cold_h == 0.0, "{:?}", before.rooms[1]);
    let choice = &mut design.rooms[0].element.choice;
    (choice.nominal, choice.finned) = (choice.nominal * 2.5, choice.finned * 2.5);
    let after = run(&job, &design, &bins(), &plain(&job));
    let cold: f64 = after
        .bins
        .iter()
        .filter(|bin| (job.house.rooms[1].temperature - bin.rooms[1]).si() > 1.5)
        .map(|bin| bin.hours)
        .sum();
    assert!(cold > 1000.0, "{cold}");
    assert!((after.rooms[1].cold_h - cold).abs() < 1e-9);
    assert!(after.running_h < before.running_h);
}

/// A thermostat in a room without an element would call for nothing that it feels: it hangs in the first room
/// that has one.
#[test]
fn the_thermostat_hangs_where_there_is_heat() {
    let mut draft = four_rooms();
    let first = draft.rooms[0].id;
    room(&mut draft, first, RoomField::OtherHeat, "99999");
    let (job, design) = solve(&draft);
    assert_eq!(design.rooms[0].element.output.si(), 0.0);
    let second = job.zones[0].loops[0].iter().copied().find(|&at| at != 0).expect("another");
    let found = run(&job, &design, &bins(), &plain(&job));
    let mut held = 0;
    for bin in found.bins.iter().filter(|bin| bin.runs > 0.0 && bin.runs < 1.0) {
        let off = (bin.rooms[second] - job.house.rooms[second].temperature).si();
        assert!(off.abs() < 1e-8, "{off}");
        held += 1;
    }
    assert!(held > 3, "{held}");
}

/// Cooler water runs longer for the same heat and comes back cooler; a line too low leaves rooms cold.
#[test]
fn a_reset_line_runs_longer_and_cooler() {
    let (job, design) = solve(&four_rooms());
    let fixed = run(&job, &design, &bins(), &plain(&job));
    let reset = design.plant.as_ref().and_then(|plant| plant.reset.as_ref()).expect("a line");
    let by = |setting: Setting, least: Option<Temperature>| {
        let controls = Controls { supply: Supply::Reset(setting, least), ..plain(&job) };
        run(&job, &design, &bins(), &controls)
    };
    let line = by(reset.setting, None);
    assert!(line.running_h > 1.2 * fixed.running_h, "{} {}", line.running_h, fixed.running_h);
    assert!(line.cold_return_h > 1000.0 && fixed.cold_return_h == 0.0);
    assert!((line.heat_j / fixed.heat_j - 1.0).abs() < 0.05);
    let least = fahrenheit(150.0);
    let held = by(reset.setting, Some(least));
    assert!(held.bins.iter().all(|bin| bin.supply >= least && bin.supply <= job.circuit.supply));
    let low = Setting {
        shift: reset.setting.shift - TemperatureDifference::from_si(15.0),
        ..reset.setting
    };
    let low = by(low, None);
    assert!(low.rooms[0].cold_h > 500.0, "{:?}", low.rooms[0]);
}

/// By hand: a return that runs h hours below 130 °F is h hours of condensing; at 120 °F of supply all of
/// them are.
#[test]
fn cool_water_condenses_all_the_time() {
    let (mut job, _) = solve(&four_rooms());
    job.circuit.supply = fahrenheit(120.0);
    let design = finrun_engine::design::design(&job);
    let found = run(&job, &design, &bins(), &plain(&job));
    assert!(found.running_h > 1000.0);
    assert!((found.cold_return_h - found.running_h).abs() < 1e-9);
}

/// Two zones that call without regard to one another: any runs but where neither does.
#[test]
fn zones_call_each_for_itself() {
    let mut draft = four_rooms();
    draft.flow_basis = FlowBasis::FromPump;
    let second = draft.add_zone();
    let moved: Vec<_> = draft.rooms.iter().skip(2).map(|room| room.id).collect();
    for id in moved {
        draft.room_mut(id).expect("its room").zone = second;
    }
    let (job, design) = solve(&draft);
    assert_eq!(job.zones.len(), 2);
    let found = run(&job, &design, &bins(), &plain(&job));
    for bin in &found.bins {
        let [a, b] = bin.zones_run[..] else { panic!("two zones") };
        assert!((bin.runs - (a + b - a * b)).abs() < 1e-12);
        for (share, room) in [(a, 0), (b, 2)].into_iter().filter(|(share, _)| *share < 1.0) {
            let off = (bin.rooms[room] - job.house.rooms[room].temperature).si();
            assert!(off.abs() < 1e-8 || (share == 0.0 && off > 0.0), "{off}");
        }
    }
    let by_zone: Vec<ZoneId> = found.zones.iter().map(|zone| zone.zone).collect();
    assert_eq!(by_zone, vec![ZoneId(0), second]);
    assert!(found.running_h > found.zones[0].running_h.max(found.zones[1].running_h));
}

/// A room shut off gets nothing, and is as warm as its neighbours leave it.
#[test]
fn a_room_shut_off_is_cold() {
    let mut draft = by_home_run(four_rooms());
    let id = draft.rooms[3].id;
    draft.room_mut(id).expect("its room").shut_off = ShutOff::Shut;
    let (job, design) = solve(&draft);
    for controls in [plain(&job), valves(&job)] {
        let found = run(&job, &design, &bins(), &controls);
        assert!(found.bins.iter().all(|bin| bin.to_rooms[3].si() == 0.0));
        assert!(found.rooms[3].cold_h > 4000.0, "{:?}", found.rooms[3]);
        assert!(found.rooms[3].heat_j == 0.0);
    }
}

/// By hand: 100 therms of 100,000 Btu at 80 % give 80 therms of heat.
#[test]
fn fuel_is_heat_over_efficiency() {
    let (job, design) = solve(&four_rooms());
    let burning = Burning { fuel: Fuel::NaturalGasTherm, efficiency: 0.8 };
    let found = season(&job, &design, &bins(), &plain(&job), Some(burning)).expect("a season");
    let therms = found.heat_j / (100_000.0 * 1_055.055_852_62);
    assert!((found.fuel.expect("fuel") - therms / 0.8).abs() < 1e-9 * therms);
    let none = Burning { efficiency: 0.0, ..burning };
    assert_eq!(
        season(&job, &design, &bins(), &plain(&job), Some(none)).expect("a season").fuel,
        None
    );
}

/// By hand: a burner of 60,000 Btu/h that gives 10,000 Btu/h on the average fires a sixth of the time, and
/// one of 5,000 Btu/h is asked for more than it has.
#[test]
fn the_burner_fires_for_the_heat() {
    let mut draft = four_rooms();
    let output = Field::Plant(finrun_engine::job::PlantField::Output);
    crate::support::set(&mut draft, output, "60000");
    let (job, design) = solve(&draft);
    let found = run(&job, &design, &bins(), &plain(&job));
    let full_w = 60_000.0 * 1_055.055_852_62 / 3600.0;
    let expected_h = found.heat_j / full_w / 3600.0;
    assert!((found.firing_h.expect("hours") / expected_h - 1.0).abs() < 1e-9);
    assert!(found.bins.iter().all(|bin| bin.beyond_boiler.si() == 0.0));
    assert!(found.bins[0].cycles_per_h.expect("cycles") > 0.0);
    crate::support::set(&mut draft, output, "5000");
    let (job, design) = solve(&draft);
    let found = run(&job, &design, &bins(), &plain(&job));
    let asked = found.bins[0].heat.to(Unit::BtuPerHour) - 5000.0;
    assert!(asked > 0.0);
    assert!((found.bins[0].beyond_boiler.to(Unit::BtuPerHour) - asked).abs() < 1e-6);
}

/// A warmer room is warmer in every bin, and the year's heat grows by the degree-hours that it adds.
#[test]
fn a_warmer_house_takes_more() {
    let mut draft = four_rooms();
    let (job, design) = solve(&draft);
    let before = run(&job, &design, &bins(), &plain(&job)).heat_j;
    let ids: Vec<_> = draft.rooms.iter().map(|room| room.id).collect();
    for id in ids {
        room(&mut draft, id, RoomField::Temperature, "75");
    }
    let (job, design) = solve(&draft);
    let after = run(&job, &design, &bins(), &plain(&job)).heat_j;
    assert!(after > 1.08 * before && after < 1.35 * before, "{before} {after}");
}
