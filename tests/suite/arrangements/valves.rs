//! Balancing valves, circulators and the operating point.

use super::{ALL, from_pump, near, six_rooms, type_room, uneven};
use crate::support::{set, solve};
use finrun_engine::arrangement::{Other, alternatives, curve_points, system_curve};
use finrun_engine::building::ZoneId;
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, Balancing, CircuitField, Draft, Field, PartField, PumpKind, PumpSet, RoomField,
};
use finrun_engine::network::TypicalPump;
use finrun_engine::quantity::{Length, Unit};

fn fitted(draft: &mut Draft, balancing: Balancing) {
    draft.zone_mut(ZoneId(0)).expect("its zone").balancing = balancing;
}

/// How far apart the shares are that circuits get of what they are meant to have.
fn spread(design: &Design) -> f64 {
    let shares = design.piping.circuits.iter().map(|c| c.mass_flow / c.target);
    let (least, most) = shares
        .fold((f64::INFINITY, 0.0), |(least, most): (f64, f64), s| (least.min(s), most.max(s)));
    most / least
}

/// Valves as calculated give each circuit its flow; the least throttled one is fully open.
#[test]
fn valves_give_every_circuit_its_flow() {
    for arrangement in [
        Arrangement::Split,
        Arrangement::DirectReturn,
        Arrangement::ReverseReturn,
        Arrangement::HomeRun,
    ] {
        let mut draft = uneven(arrangement);
        fitted(&mut draft, Balancing::None);
        let (_, without) = solve(&draft);
        fitted(&mut draft, Balancing::Valves);
        let (job, with) = solve(&draft);
        assert!(spread(&without) > 1.1, "{arrangement:?} is even by chance");
        for circuit in &with.piping.circuits {
            near(circuit.mass_flow.si(), circuit.target.si(), 1e-6);
        }
        let open = job.circuit.parts.balancing.gallons_per_minute();
        let widest = with.piping.circuits.iter().filter_map(|c| c.valve.cv).fold(0.0, f64::max);
        near(widest, open, 1e-9);
        // Set the most throttled first, the open one last.
        let mut circuits: Vec<_> = with.piping.circuits.iter().collect();
        circuits.sort_by_key(|circuit| circuit.valve.order);
        let orders: Vec<u32> = circuits.iter().map(|circuit| circuit.valve.order).collect();
        assert_eq!(orders, (1..=orders.len() as u32).collect::<Vec<_>>());
        for pair in circuits.windows(2) {
            assert!(pair[0].valve.pressure >= pair[1].valve.pressure);
        }
    }
}

/// Definition of Cv: what a valve takes at its flow, in psi, is the square of gallons a minute over
/// Cv, for water of specific gravity one.
#[test]
fn a_valves_cv_is_that_of_its_pressure() {
    let (job, design) = solve(&uneven(Arrangement::HomeRun));
    for circuit in &design.piping.circuits {
        let density = job.circuit.fluid.density(circuit.back);
        let gpm = (circuit.target / density).to(Unit::GallonPerMinute);
        let cv = circuit.valve.cv.expect("a valve");
        let psi = density.si() / 999.03 * (gpm / cv) * (gpm / cv);
        near(circuit.valve.pressure.to(Unit::Psi), psi, 1e-6);
    }
}

/// Without valves, the direct return favours the near rooms; the reverse return hardly any.
#[test]
fn reverse_return_is_more_even_than_direct() {
    let of = |arrangement| {
        let mut draft = six_rooms(arrangement);
        fitted(&mut draft, Balancing::None);
        set(&mut draft, Field::Circuit(CircuitField::ReturnPipe), "60");
        let (_, design) = solve(&draft);
        let flows: Vec<f64> = design.piping.circuits.iter().map(|c| c.mass_flow.si()).collect();
        (spread(&design), flows)
    };
    let (direct, flows) = of(Arrangement::DirectReturn);
    let (reverse, _) = of(Arrangement::ReverseReturn);
    assert!(direct > 1.15 && reverse < 1.0 + 0.5 * (direct - 1.0), "{direct} {reverse}");
    assert!(flows.windows(2).all(|pair| pair[0] > pair[1]), "{flows:?}");
}

/// Where the circulator's curve and the system's meet: the head lies on the curve, and is what the
/// way round takes.
#[test]
fn the_operating_point_lies_on_both_curves() {
    for arrangement in ALL {
        let mut draft = uneven(arrangement);
        from_pump(&mut draft);
        let (job, design) = solve(&draft);
        let [pump] = &design.piping.pumps[..] else { panic!("one circulator") };
        near(pump.head.si(), job.circuit.pump.head(pump.flow).si(), 1e-6);
        near(pump.head.si(), design.piping.head.si(), 1e-4);
        near(pump.hydraulic.si(), 9.80665 * pump.head.si() * pump.mass_flow.si(), 1e-9);
        near(pump.electric.si(), pump.hydraulic.si() / 0.2, 1e-12);
        // The system's curve passes there too: between its points it bends little.
        let zones = [ZoneId(0)];
        let meant: f64 = design.piping.circuits.iter().map(|c| c.target.si()).sum();
        let share = pump.mass_flow.si() / meant;
        let points = system_curve(&job, &design, &zones, 0, share);
        let &(flow, head) = points.last().expect("points");
        near(flow.si(), pump.flow.si(), 1e-6);
        near(head.si(), pump.head.si(), 1e-4);
    }
}

#[test]
fn curves_fall_and_systems_rise() {
    let (job, design) = solve(&uneven(Arrangement::DirectReturn));
    let curve = curve_points(&job, 0);
    assert!(curve.windows(2).all(|p| p[0].0 < p[1].0 && p[0].1 >= p[1].1), "{curve:?}");
    let system = system_curve(&job, &design, &[ZoneId(0)], 0, 1.5);
    assert!(system.windows(2).all(|p| p[0].0 < p[1].0 && p[0].1 < p[1].1), "{system:?}");
}

/// Two equal circulators: in series their heads add, in parallel their flows.
#[test]
fn two_circulators_add_head_or_flow() {
    let of = |set| {
        let mut draft = six_rooms(Arrangement::Series);
        from_pump(&mut draft);
        draft.pump.set = set;
        let (job, design) = solve(&draft);
        let pump = design.piping.pumps[0].clone();
        (job.circuit.pump, pump.flow, pump.head)
    };
    let (curve, flow, head) = of(PumpSet::One);
    near(head.si(), curve.head(flow).si(), 1e-6);
    let (curve, series_flow, head) = of(PumpSet::TwoInSeries);
    near(head.si(), 2.0 * curve.head(series_flow).si(), 1e-6);
    let (curve, parallel_flow, head) = of(PumpSet::TwoInParallel);
    near(head.si(), curve.head(parallel_flow / 2.0).si(), 1e-6);
    assert!(series_flow > flow && parallel_flow > flow);
}

/// The slowed circulator gives the flow that is meant, at less power than a whole one.
#[test]
fn a_slowed_circulator_gives_what_is_meant() {
    let mut draft = six_rooms(Arrangement::Series);
    from_pump(&mut draft);
    draft.pump.kind = PumpKind::Typical(TypicalPump::Medium);
    let (job, design) = solve(&draft);
    let meant = design.piping.circuits[0].target;
    assert!(design.piping.mass_flow > meant);
    let others = alternatives(&job, &design, 0);
    let slowed = others
        .iter()
        .find_map(|other| match other.pump {
            Other::Slowed(speed) => Some((speed, other.does.clone().expect("it runs"))),
            Other::Typical(_) => None,
        })
        .expect("a medium circulator is more than enough");
    near(slowed.1.mass_flow.si(), meant.si(), 1e-3);
    // Affinity laws on a way that goes nearly by the square: flow with the speed, power with its cube.
    let ratio = meant / design.piping.mass_flow;
    assert!((slowed.0 / ratio - 1.0).abs() < 0.1, "{} {ratio}", slowed.0);
    assert!(slowed.1.electric < design.piping.pumps[0].electric * (1.3 * ratio * ratio));
    let own = others.iter().find(|o| o.pump == Other::Typical(TypicalPump::Medium));
    let own = own.and_then(|other| other.does.clone()).expect("its own");
    near(own.flow.si(), design.piping.flow.si(), 1e-6);
}

/// More in the way between a room's tees drives more through its branch.
#[test]
fn a_second_diverter_drives_more_through_the_branch() {
    use finrun_engine::job::Diverters;
    let flow = |diverters, k: &str| {
        let mut draft = six_rooms(Arrangement::DiverterTees);
        draft.rooms[2].diverters = diverters;
        set(&mut draft, Field::Part(PartField::DiverterK), k);
        let (_, design) = solve(&draft);
        design.rooms[2].element.flow.si()
    };
    let one = flow(Diverters::One, "6");
    assert!(flow(Diverters::Two, "6") > 1.2 * one);
    assert!(flow(Diverters::One, "12") > 1.2 * one);
    // The plain tee that the second diverter takes the place of counts for little.
    near(flow(Diverters::Two, "6"), flow(Diverters::One, "11.5"), 0.02);
}

/// A longer way to a room takes its flow where nothing is balanced, and no valve can give it more
/// than it is meant to have where something is.
#[test]
fn the_farthest_room_decides_what_the_circulator_needs() {
    let head = |pipe: &str| {
        let mut draft = six_rooms(Arrangement::HomeRun);
        type_room(&mut draft, 3, RoomField::PipeTo, pipe);
        let (_, design) = solve(&draft);
        let open = design.piping.critical().expect("circuits").rooms[0];
        (design.piping.head, open == design.rooms[3].room)
    };
    let (near_by, _) = head("10");
    let (far, decides) = head("90");
    assert!(far > near_by && decides);
    assert!(far - near_by > Length::of(0.5, Unit::Foot));
}
