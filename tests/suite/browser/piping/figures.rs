//! What the pages of the piping say, worked out from the stored job.

use finrun_engine::arrangement::{self, CircuitDesign, RunDesign};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::check::practice_length;
use finrun_engine::job::{Arrangement, Balancing, way_to};
use finrun_engine::quantity::{Kind, Length, MassFlow, Value};
use finrun_text as text;

use crate::browser::place::Place;
use crate::browser::solved::{Figure, Solved};
use crate::browser::suggested;

pub(in crate::browser) fn figures(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    match place {
        Place::Room(id) => way(solved, id).into_iter().collect(),
        Place::Piping => {
            let mut all = zones(solved);
            all.extend(suggested::figures(solved));
            all
        }
        Place::Circulator => {
            let mut all = runs(solved);
            all.extend(balancing(solved));
            all.extend(circulators(solved));
            all.extend(practice(solved));
            all
        }
        _ => Vec::new(),
    }
}

fn number(value: impl Into<Value>) -> Figure {
    Figure::Number(value.into())
}

fn head(head: Length) -> Figure {
    number(Value::new(Kind::Head, head.si()))
}

fn flow(solved: &Solved, flow: MassFlow) -> Figure {
    let circuit = &solved.job.circuit;
    number(flow / circuit.fluid.density(circuit.supply))
}

fn way(solved: &Solved, room: u64) -> Option<(String, Figure)> {
    let way = way_to(&solved.draft, RoomId(room.try_into().ok()?))?;
    let words = text::way(way, solved.draft.units);
    Some((format!("room-{room}.way"), Figure::Words(words)))
}

fn element(solved: &Solved, element: Length, limited: bool) -> Figure {
    let most = limited.then(|| practice_length(solved.job.circuit.tube));
    Figure::Words(text::element_of_usual(element, most, solved.draft.units))
}

fn zones(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let mut all = Vec::new();
    for (zone, of) in design.piping.zones.iter().zip(&job.zones) {
        assert_eq!(zone.zone, of.id);
        let name = |end: &str| format!("zone-{}.{end}", zone.zone.0);
        let series = of.arrangement == Arrangement::Series;
        all.extend([
            (name("flow"), flow(solved, zone.mass_flow)),
            (name("drop"), number(job.circuit.supply - zone.back)),
            (name("head"), head(arrangement::zone_head(job, design, zone.zone))),
            (name("velocity"), number(zone.velocity)),
            (name("element"), element(solved, zone.element, series)),
        ]);
    }
    let split = |circuit: &&CircuitDesign| {
        let of = job.zones.iter().find(|zone| zone.id == circuit.zone);
        of.is_some_and(|zone| zone.arrangement == Arrangement::Split)
    };
    for circuit in design.piping.circuits.iter().filter(split) {
        let room = solved.draft.room(circuit.rooms[0]).expect("its first room");
        let name = |end: &str| format!("zone-{}-{}.{end}", circuit.zone.0, room.branch);
        all.extend([
            (name("flow"), flow(solved, circuit.mass_flow)),
            (name("drop"), number(job.circuit.supply - circuit.back)),
            (name("element"), element(solved, design.element_in(&circuit.rooms), true)),
        ]);
    }
    all
}

pub(super) fn run(key: &str, run: &RunDesign) -> Vec<(String, Figure)> {
    let name = |end: &str| format!("run-{key}.{end}");
    vec![
        (name("flow"), number(run.flow)),
        (name("head"), head(run.head)),
        (name("velocity"), number(run.velocity)),
        (name("back"), number(run.back)),
        (name("heat"), number(run.heat)),
        (name("watts"), Figure::Words(text::watts(run.electric))),
    ]
}

/// All zones together are worked out anew here: a system that runs as it is designed must give what
/// the design gives.
fn runs(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let every: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
    let mut all = run("all", &arrangement::run(job, design, &every));
    for alone in &design.piping.alone {
        all.extend(run(&alone.zones[0].0.to_string(), alone));
    }
    all
}

fn balancing(solved: &Solved) -> Vec<(String, Figure)> {
    let circuits = &solved.typed.piping.circuits;
    let mut all = Vec::new();
    for (at, circuit) in circuits.iter().enumerate().filter(|_| circuits.len() > 1) {
        let name = |end: &str| format!("circuit-{at}.{end}");
        let valve = &circuit.valve;
        let full = solved.job.circuit.parts.balancing.gallons_per_minute();
        let open = valve
            .cv
            .is_none_or(|cv| valve.fitted == Balancing::Valves && (cv / full - 1.0).abs() < 1e-5);
        let cv = valve.cv.map_or(Figure::Words(String::new()), |cv| number(Value::number(cv)));
        all.extend([
            (name("meant"), flow(solved, circuit.target)),
            (name("now"), flow(solved, circuit.mass_flow)),
            (name("valve"), number(valve.pressure)),
            (name("cv"), cv),
            (name("order"), Figure::Words(text::valve_order(valve.order, open))),
            (name("back"), number(circuit.back)),
        ]);
    }
    all
}

fn circulators(solved: &Solved) -> Vec<(String, Figure)> {
    let (job, design) = (&solved.job, &solved.typed);
    let mut all = Vec::new();
    let mut add = |key: String, does: Option<&arrangement::PumpDesign>| match does {
        Some(does) => all.extend([
            (format!("{key}.flow"), number(does.flow)),
            (format!("{key}.head"), head(does.head)),
            (format!("{key}.watts"), Figure::Words(text::watts(does.electric))),
        ]),
        None => all.push((format!("{key}.flow"), Figure::Words(text::no_rest().to_owned()))),
    };
    for (index, pump) in design.piping.pumps.iter().enumerate() {
        add(format!("pump-{index}"), Some(pump));
        let others = arrangement::alternatives(job, design, index);
        assert!(others.len() >= 3, "the three typical ones");
        for (nth, other) in others.iter().enumerate() {
            add(format!("pump-{index}-{nth}"), other.does.as_ref());
        }
    }
    all
}

fn practice(solved: &Solved) -> Vec<(String, Figure)> {
    let rules = arrangement::practice(&solved.job, &solved.typed);
    let both = rules.iter().enumerate().flat_map(|(at, rule)| {
        [
            (format!("rule-{at}.usual"), number(rule.usual)),
            (format!("rule-{at}.here"), number(rule.here)),
        ]
    });
    both.collect()
}
