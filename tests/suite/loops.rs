//! What holds for the design of any job.

use crate::random_house::{full_houses, houses};
use crate::support::{FOUR_ROOMS, V2_FIXTURE, fields, holds_number, job_of, open, set, solve};
use finrun_engine::building::SurfaceId;
use finrun_engine::check::{Finding, Severity, Subject};
use finrun_engine::design::{Design, design};
use finrun_engine::fluid::{Fluid, Stream};
use finrun_engine::job::{AirBasis, CircuitField, Field, Flow, GroundMethod, Job};
use finrun_engine::network::{Equipment, Link, Passage, Place, Surface, Warms, pass};
use finrun_engine::quantity::{Length, MassFlow, Power, Temperature, TemperatureDifference};
use proptest::prelude::*;

/// Heat that water gives up between two temperatures, with its specific heat followed along the
/// way (Simpson's rule in steps of at most a kelvin).
fn enthalpy(flow: MassFlow, from: Temperature, to: Temperature) -> f64 {
    let steps = (2.0 * (from - to).abs().si().ceil()).max(2.0) as usize;
    let at = |i: usize| {
        let temperature = to + (from - to) * (i as f64 / steps as f64);
        Fluid::Water.specific_heat(temperature).si()
    };
    let sum: f64 = (0..=steps)
        .map(|i| {
            at(i)
                * if i == 0 || i == steps {
                    1.0
                } else if i % 2 == 1 {
                    4.0
                } else {
                    2.0
                }
        })
        .sum();
    flow.si() * sum * (from - to).si() / (3.0 * steps as f64)
}

/// Every number of the design that is none, by its path. JSON writes NaN and infinity as null; so
/// are the three values that may rightly be absent.
fn not_finite(design: &Design) -> Vec<String> {
    fn walk(value: &serde_json::Value, path: &str, out: &mut Vec<String>) {
        use serde_json::Value;
        match value {
            Value::Null => out.push(path.to_string()),
            Value::Array(items) => items.iter().for_each(|item| walk(item, path, out)),
            Value::Object(fields) => {
                for (key, field) in fields {
                    let absent = ["needed_m", "area_m2", "u_w_m2k"].contains(&key.as_str());
                    if !(absent && field.is_null()) {
                        walk(field, &format!("{path}.{key}"), out);
                    }
                }
            }
            Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
        }
    }
    let mut out = Vec::new();
    walk(&serde_json::to_value(design).expect("a design"), "", &mut out);
    out
}

fn is_element(passage: &Passage) -> bool {
    matches!(passage.place, Place::Element(_))
}

/// The water's way through the pieces of `design` at another flow: outputs of the elements.
fn outputs_at(job: &Job, design: &Design, flow: MassFlow) -> Vec<Power> {
    let mut temperature = design.piping.supply;
    let mut out = Vec::new();
    for passage in &design.piping.passages {
        let (surface, surroundings) = match passage.place {
            Place::Element(id) => {
                let room = job.house.rooms.iter().find(|room| room.id == id).expect("its room");
                let finned = design.room(id).expect("its room").element.choice.finned;
                let element = job.baseboard.element;
                (Surface::Finned { element, finned }, room.temperature)
            }
            _ => (
                Surface::Bare { film: job.circuit.pipe_film, cover: None, warms: Warms::Nothing },
                job.circuit.pipe_surroundings,
            ),
        };
        let link = Link {
            place: passage.place,
            tube: passage.tube,
            length: passage.length,
            surface,
            surroundings,
            fittings: Vec::new(),
            extra_k: 0.0,
            equipment: Equipment::None,
        };
        let next = pass(&link, Stream { fluid: Fluid::Water, flow, temperature });
        temperature = next.water_out;
        if is_element(passage) {
            out.push(next.to_room);
        }
    }
    out
}

fn nominals(design: &Design) -> Vec<Length> {
    design.rooms.iter().map(|room| room.element.choice.nominal).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_result_is_a_number(draft in full_houses()) {
        let (_, design) = solve(&draft);
        prop_assert_eq!(not_finite(&design), Vec::<String>::new());
    }

    /// What the boiler puts in is what elements and pipes give off, which is what the water loses.
    #[test]
    fn heat_is_in_balance(draft in houses()) {
        let (job, design) = solve(&draft);
        let circuit = &design.piping;
        let sum: Power = circuit.passages.iter().map(|p| p.heat).sum();
        let scale: Power = circuit.passages.iter().map(|p| p.heat.abs()).sum();
        prop_assert!((circuit.heat - sum).abs() <= scale * 1e-12);
        let elements: Power = circuit.passages.iter().filter(|p| is_element(p)).map(|p| p.heat).sum();
        prop_assert!((elements + circuit.pipe_loss - circuit.heat).abs() <= scale * 1e-12);
        // The water is handed on from stretch to stretch, from the supply to the return.
        let mut water = job.circuit.supply;
        for passage in &circuit.passages {
            prop_assert_eq!(passage.water_in, water);
            let drop = passage.water_in - passage.water_out;
            let mean = passage.water_out + drop * 0.5;
            let expected = circuit.mass_flow * Fluid::Water.specific_heat(mean) * drop;
            // A difference of two temperatures near 350 K is known to 1e-13 K.
            let known = circuit.mass_flow.si() * 4200.0 * 1e-12;
            prop_assert!(
                (passage.heat - expected).abs().si() <= 1e-9 * expected.abs().si() + known,
                "{:?} {:?}", passage, expected
            );
            // Specific heat at the stretch's own mean stands close to following it all the way; one
            // element that cools its water by more than 30 K at a stroke is further off.
            if drop.abs().si() <= 30.0 {
                let integrated = enthalpy(circuit.mass_flow, passage.water_in, passage.water_out);
                prop_assert!(
                    (passage.heat.si() - integrated).abs() <= 5e-4 * integrated.abs() + known,
                    "{:?} {}", passage, integrated
                );
            }
            water = passage.water_out;
        }
        prop_assert_eq!(water, circuit.back);
        // The room's credit and the water's loss differ by the heating effect alone.
        let effect = job.baseboard.element.rating.effect;
        let share = effect.room_share() / effect.water_share();
        for (room, passage) in design.rooms.iter().zip(circuit.passages.iter().filter(|p| is_element(p))) {
            prop_assert_eq!(room.element.output, passage.to_room);
            prop_assert!((passage.heat * share - passage.to_room).abs() <= passage.to_room.abs() * 1e-12);
        }
    }

    #[test]
    fn water_never_warms_along_the_loop(draft in houses()) {
        let (job, design) = solve(&draft);
        for passage in &design.piping.passages {
            let (entered, left) = (passage.water_in, passage.water_out);
            let around = match passage.place {
                Place::Element(id) => job.house.rooms.iter().find(|r| r.id == id).expect("its room").temperature,
                _ => job.circuit.pipe_surroundings,
            };
            // Towards the air around it and never past.
            if entered > around {
                prop_assert!(left <= entered && left >= around, "{:?}", passage);
            } else if is_element(passage) {
                prop_assert_eq!(left, entered);
            } else {
                prop_assert!(left >= entered && left <= around, "{:?}", passage);
            }
        }
    }

    /// Either a room gets its load, or a check that stops says why it does not.
    #[test]
    fn a_room_without_a_stop_gets_its_load(draft in full_houses()) {
        let (_, design) = solve(&draft);
        let mut all = true;
        for room in &design.rooms {
            let stopped = design.checks.iter().any(|check| {
                check.subject == Subject::Room(room.room) && check.severity == Severity::Stop
            });
            let given = room.element.output.si() >= room.load.total.si() * (1.0 - 2e-9);
            prop_assert_eq!(stopped, !given, "{:?} {:?}", room, design.checks);
            all &= given;
        }
        let praised = design.checks.iter().any(|c| matches!(c.finding, Finding::RoomsHeated { .. }));
        let loads = design.rooms.iter().any(|room| room.load.total > Power::ZERO);
        prop_assert_eq!(praised, all && loads);
    }

    #[test]
    fn pieces_are_in_stock_and_fit_their_runs(draft in houses()) {
        let (job, design) = solve(&draft);
        let baseboard = &job.baseboard;
        for (room, solved) in job.house.rooms.iter().zip(&design.rooms) {
            let choice = &solved.element.choice;
            let mut used: Vec<(SurfaceId, Length)> = Vec::new();
            for run in &choice.runs {
                let surface = room.surfaces.iter().find(|s| s.id == run.surface).expect("a wall");
                prop_assert!(surface.runs.contains(&run.run), "{:?} {:?}", run, surface);
                let place = (run.surface, run.run.start);
                prop_assert!(!used.contains(&place), "one run used twice");
                used.push(place);
                let taken: Length = run.pieces.iter().copied().sum();
                prop_assert!(taken.si() <= (run.run.length - baseboard.end_allowance).si() + 1e-6);
                prop_assert!(run.pieces.windows(2).all(|pair| pair[0] >= pair[1]));
                for piece in &run.pieces {
                    prop_assert!(baseboard.stock.iter().any(|l| (l.length - *piece).abs().si() < 1e-9));
                }
            }
            let nominal: Length = choice.pieces().sum();
            let bare = baseboard.bare_per_piece * choice.pieces().count() as f64;
            prop_assert!((choice.nominal - nominal).abs().si() < 1e-9);
            prop_assert!((choice.finned - (nominal - bare)).abs().si() < 1e-9);
        }
    }

    #[test]
    fn more_flow_through_given_pieces_never_lowers_an_output(draft in houses(), more in 1.001..3.0) {
        let (job, design) = solve(&draft);
        let flow = design.piping.mass_flow;
        let (slow, fast) = (outputs_at(&job, &design, flow), outputs_at(&job, &design, flow * more));
        let known: Vec<Power> = design.rooms.iter().map(|room| room.element.output).collect();
        for (slow, known) in slow.iter().zip(&known) {
            prop_assert!((*slow - *known).si().abs() <= 1e-9 * known.si().abs());
        }
        // Pipe that takes heat up from warmer air warms slow water more.
        prop_assume!(job.circuit.pipe_surroundings <= design.piping.back);
        for (slow, fast) in slow.iter().zip(&fast) {
            prop_assert!(*fast >= *slow * (1.0 - 1e-12), "{:?} {:?}", slow, fast);
        }
    }

    #[test]
    fn more_flow_never_adds_feet(draft in houses(), more in 1.001..3.0) {
        let job = job_of(&draft);
        let slow = design(&job);
        prop_assume!(job.circuit.pipe_surroundings <= slow.piping.back);
        let mut faster = job;
        faster.circuit.flow = Flow::Typed(slow.piping.flow * more);
        for (slow, fast) in nominals(&slow).into_iter().zip(nominals(&design(&faster))) {
            prop_assert!(fast <= slow, "{:?} {:?}", slow, fast);
        }
    }

    #[test]
    fn hotter_supply_never_adds_feet(draft in houses(), more in 0.1..30.0) {
        let job = job_of(&draft);
        let mut hotter = job.clone();
        hotter.circuit.supply = job.circuit.supply + TemperatureDifference::from_si(more);
        for (cool, hot) in nominals(&design(&job)).into_iter().zip(nominals(&design(&hotter))) {
            prop_assert!(hot <= cool, "{:?} {:?}", cool, hot);
        }
    }

    /// Head follows the flow, whatever else happens on the loop.
    #[test]
    fn pressures_add_up_to_the_head(draft in houses()) {
        let (_, design) = solve(&draft);
        let circuit = &design.piping;
        let sum: f64 = circuit.passages.iter().map(|p| p.pressure_drop().si()).sum();
        let head = sum / (Fluid::Water.density(circuit.supply).si() * 9.80665);
        prop_assert!((circuit.head.si() - head).abs() <= 1e-12 * head);
        let fastest = circuit.passages.iter().map(|p| p.velocity.si()).fold(0.0, f64::max);
        prop_assert_eq!(circuit.velocity.si(), fastest);
    }
}

/// At the ends of what the fields take, alone and together, there is a design without a false
/// number in it.
#[test]
fn the_ends_of_the_bounds_give_numbers() {
    let mut cases = 0;
    let full = open(V2_FIXTURE);
    let mut other_ways = full.clone();
    other_ways.ground.method = GroundMethod::FFactor;
    other_ways.air.basis = AirBasis::LeakageArea;
    let bases = [open(FOUR_ROOMS), full, other_ways];
    let all =
        bases.iter().flat_map(|base| fields(base).into_iter().map(move |field| (base, field)));
    for (base, field) in all.filter(|&(_, field)| holds_number(field)) {
        let spec = field.spec();
        let unit = base.box_unit(field);
        for si in [spec.least, spec.most] {
            let mut draft = base.clone();
            set(&mut draft, field, &format!("{:.9}", unit.from_si(si)));
            let reading = finrun_engine::job::read(&draft);
            let Some(job) = reading.job else { continue };
            let design = design(&job);
            assert_eq!(not_finite(&design), Vec::<String>::new(), "{field} at {si}");
            cases += 1;
        }
    }
    assert!(cases > 1000, "{cases}");
}

/// The loop that takes heat from its surroundings, and the one whose water stands still.
#[test]
fn loops_beyond_sense_still_give_numbers() {
    let supply = Field::Circuit(CircuitField::Supply);
    let around = Field::Circuit(CircuitField::PipeSurroundings);
    let film = Field::Circuit(CircuitField::PipeFilm);
    let cases: [&[(Field, &str)]; 3] = [
        &[(supply, "80"), (around, "100"), (film, "50 W/m²K")],
        &[(supply, "250"), (around, "-20"), (film, "50 W/m²K")],
        &[(supply, "80"), (around, "80"), (film, "0")],
    ];
    for fields in cases {
        let mut draft = open(FOUR_ROOMS);
        for &(field, text) in fields {
            set(&mut draft, field, text);
        }
        let (_, design) = solve(&draft);
        assert_eq!(not_finite(&design), Vec::<String>::new(), "{fields:?}");
    }
}
