//! Mass at every tee, heat on every stretch and at every mixing, pressure along every way.

use super::{ALL, at, from_pump, near, six_rooms, two_zones, uneven};
use crate::support::{V3_FIXTURE, open, solve};
use finrun_engine::design::Design;
use finrun_engine::job::{Arrangement, Draft, Job};
use finrun_engine::network::{Passage, Place};
use finrun_engine::quantity::Unit;

/// What every stretch gives is what its water loses, and all of it is what the boiler gives.
fn heat_is_in_balance(job: &Job, design: &Design) {
    let mut sum = 0.0;
    for passage in &design.piping.passages {
        let c = job.circuit.fluid.specific_heat(passage.mean_water()).si();
        let lost = passage.mass_flow.si().abs() * c * (passage.water_in - passage.water_out).si();
        near(passage.heat.si(), lost, 1e-9);
        sum += passage.heat.si();
    }
    near(design.piping.heat.si(), sum, 1e-12);
    let c = job.circuit.fluid.specific_heat(design.piping.supply - design.piping.drop() / 2.0);
    // Of the whole with one specific heat: it bends by less than this between supply and return.
    near(sum, (design.piping.mass_flow * c * design.piping.drop()).si(), 5e-4);
    for circuit in &design.piping.circuits {
        assert!(circuit.back < design.piping.supply);
    }
}

/// Along each way a stretch begins where the one before it ends. What the network says of the
/// pressures meets what each stretch takes by its own friction.
fn pressure_is_in_balance(design: &Design) {
    let passages = &design.piping.passages;
    let most = passages.iter().map(|p| p.pressure_in.si().abs()).fold(0.0, f64::max);
    for circuit in &design.piping.circuits {
        for pair in circuit.path.windows(2) {
            let (before, after) = (&passages[pair[0]], &passages[pair[1]]);
            // The circulator stands between the boiler room and the rest.
            if before.place == Place::BoilerRoom {
                continue;
            }
            let end = before.pressure_in - before.pressure_drop();
            let off = (end - after.pressure_in).si().abs();
            // A joint without a valve takes a pascal a kg/s.
            assert!(off < 1e-6 * most + 1.0, "{:?} to {:?}: {off} Pa", before.place, after.place);
        }
    }
}

fn cases() -> Vec<Draft> {
    let mut out: Vec<Draft> = ALL.iter().map(|&arrangement| uneven(arrangement)).collect();
    out.extend(ALL.iter().map(|&arrangement| two_zones(arrangement)));
    for draft in out.clone() {
        let mut pumped = draft;
        from_pump(&mut pumped);
        out.push(pumped);
    }
    out.push(open(V3_FIXTURE));
    out
}

#[test]
fn heat_and_pressure_balance_in_every_arrangement() {
    for draft in cases() {
        let (job, design) = solve(&draft);
        assert_eq!(design.piping.not_solved, None);
        heat_is_in_balance(&job, &design);
        pressure_is_in_balance(&design);
    }
}

fn flow(passage: &Passage) -> f64 {
    passage.mass_flow.si()
}

/// What comes together mixes by mass.
fn mixes(parts: &[&Passage], out: &Passage) {
    let mass: f64 = parts.iter().map(|part| flow(part)).sum();
    near(flow(out), mass, 1e-9);
    let mean: f64 = parts.iter().map(|part| flow(part) * part.water_out.si()).sum::<f64>() / mass;
    near(out.water_in.si(), mean, 1e-9);
}

#[test]
fn mass_balances_at_the_tees_of_a_diverter_main() {
    let (_, design) = solve(&uneven(Arrangement::DiverterTees));
    let ids: Vec<_> = design.rooms.iter().map(|room| room.room).collect();
    for (nth, &id) in ids.iter().enumerate() {
        let (main, between) = (at(&design, Place::To(id)), at(&design, Place::Between(id)));
        let (out, back) = (at(&design, Place::Branch(id)), at(&design, Place::BranchBack(id)));
        near(flow(main), flow(between) + flow(out), 1e-9);
        near(flow(out), flow(back), 1e-9);
        // The branch takes some, and never all.
        assert!(flow(out) > 0.05 * flow(main) && flow(out) < 0.9 * flow(main), "{}", flow(out));
        let after = match ids.get(nth + 1) {
            Some(&next) => at(&design, Place::To(next)),
            None => at(&design, Place::Back(id)),
        };
        mixes(&[between, back], after);
    }
}

#[test]
fn mass_balances_along_both_mains() {
    for (arrangement, reverse) in
        [(Arrangement::DirectReturn, false), (Arrangement::ReverseReturn, true)]
    {
        let (_, design) = solve(&uneven(arrangement));
        let ids: Vec<_> = design.rooms.iter().map(|room| room.room).collect();
        for (nth, &id) in ids.iter().enumerate() {
            let (main, branch) = (at(&design, Place::To(id)), at(&design, Place::Branch(id)));
            let on = ids.get(nth + 1).map_or(0.0, |&next| flow(at(&design, Place::To(next))));
            near(flow(main), on + flow(branch), 1e-9);
            let before = if reverse { nth.checked_sub(1) } else { Some(nth + 1) };
            let before = before.and_then(|at| ids.get(at));
            let mut parts = vec![at(&design, Place::BranchBack(id))];
            parts.extend(before.map(|&id| at(&design, Place::ReturnMain(id))));
            mixes(&parts, at(&design, Place::ReturnMain(id)));
        }
    }
}

#[test]
fn a_manifold_shares_out_what_its_trunk_brings() {
    for arrangement in [Arrangement::HomeRun, Arrangement::Split] {
        let (_, design) = solve(&uneven(arrangement));
        let zone = design.piping.zones[0].zone;
        let circuits: f64 = design.piping.circuits.iter().map(|c| c.mass_flow.si()).sum();
        near(flow(at(&design, Place::Trunk(zone))), circuits, 1e-9);
        let valves: Vec<&Passage> = design
            .piping
            .passages
            .iter()
            .filter(|passage| matches!(passage.place, Place::Balance(_)))
            .collect();
        mixes(&valves, at(&design, Place::TrunkBack(zone)));
    }
}

/// Each room between two mains gets water as warm as the pipe lets it be, while a loop's last room
/// gets what the others leave.
#[test]
fn parallel_rooms_get_warmer_water_than_the_last_of_a_loop() {
    let last = |arrangement| {
        let (_, design) = solve(&six_rooms(arrangement));
        let rooms = &design.rooms;
        rooms.last().expect("rooms").element.water_in.to(Unit::Fahrenheit)
    };
    let series = last(Arrangement::Series);
    assert!(series < 166.0, "{series}");
    for arrangement in [Arrangement::DirectReturn, Arrangement::ReverseReturn, Arrangement::HomeRun]
    {
        assert!(last(arrangement) > series + 5.0, "{arrangement:?}");
    }
    let split = last(Arrangement::Split);
    assert!(split > series + 2.0, "{split}");
}
