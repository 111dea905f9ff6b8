//! The results: every room, then the water, the boiler and the fill, then each circuit.

use super::Seen;
use super::table::{Of, Row, table};
use crate::markup::Markup;
use crate::parts::in_system;
use finrun_engine::arrangement::CircuitDesign;
use finrun_engine::job::{Balancing, Job};
use finrun_engine::quantity::{Kind, Length, Power, System, Value};
use finrun_engine::sizing::Choice;
use finrun_text as text;

pub(super) fn results(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { design, system, .. } = *seen;
    out.leaf("h2", &[], text::report_results());
    let sure = text::load_and_band(design.load, design.certainty.house, system);
    out.leaf("p", &[], &sure);
    out.leaf("h3", &[], text::results_rooms());
    rooms(out, seen);
    out.leaf("h3", &[], text::results_system());
    plant(out, seen);
    if design.piping.circuits.len() > 1 {
        out.leaf("h3", &[], text::results_circuits());
        circuits(out, seen);
    }
}

fn rooms(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, .. } = *seen;
    let shown = |value: Value| in_system(value, system);
    let mut rows = Vec::new();
    for room in seen.in_order().filter_map(|at| design.rooms.get(at)) {
        let element = &room.element;
        let wanted = room.load.wanted().max(Power::ZERO);
        let short = room.short();
        let name = |what: &str| format!("room-{}.{what}", room.room.0);
        let verdict = match short > Power::ZERO {
            true => (name("short"), format!("{} {}", text::column_short(), shown(short.into()))),
            false if wanted > Power::ZERO => {
                let over = Value::share((element.output - wanted) / wanted);
                (name("over"), format!("+{}", shown(over)))
            }
            false => (String::new(), "–".to_string()),
        };
        let has_element = element.choice.nominal > Length::ZERO;
        let or_none = |key: &str, text: String| match has_element {
            true => (name(key), text),
            false => (String::new(), "–".to_string()),
        };
        let cells = vec![
            (name("load"), shown(room.load.total.into())),
            or_none("water-in", shown(element.water_in.into())),
            or_none("water-out", shown(element.water_out.into())),
            or_none("nominal", shown(element.choice.nominal.into())),
            or_none("pieces", pieces(&element.choice, system)),
            or_none("output", shown(element.output.into())),
            verdict,
        ];
        rows.push(Row { name: text::room_name(draft, room.room), cells });
    }
    let blank = || (String::new(), String::new());
    rows.push(Row {
        name: text::column_total().to_string(),
        cells: vec![
            ("load".to_string(), shown(design.load.into())),
            blank(),
            blank(),
            ("element".to_string(), shown(design.element_length().into())),
            (String::new(), text::pieces(design.piece_count())),
            blank(),
            blank(),
        ],
    });
    let heads = [
        text::room(),
        text::load(),
        text::water_in(),
        text::water_out(),
        text::column_element(),
        text::column_pieces(),
        text::column_gives(),
        text::column_beside(),
    ];
    table(out, Of::Numbers, text::results_rooms(), &heads, &rows);
}

/// Lengths of pieces in the order of their runs; several alike in a row are counted.
pub(super) fn pieces(choice: &Choice, system: System) -> String {
    let all: Vec<Length> = choice.pieces().collect();
    joined(&all, system)
}

pub(super) fn joined(pieces: &[Length], system: System) -> String {
    pieces.iter().map(|piece| in_system(*piece, system)).collect::<Vec<_>>().join(" + ")
}

/// Name and figure, each with its key.
pub(super) fn plant_rows(seen: &Seen<'_>) -> Vec<Row> {
    let Seen { draft, design, system, job, .. } = *seen;
    let circuit = &design.piping;
    let mut rows = Vec::new();
    let mut add = |name: &str, key: &str, value: Value| {
        let cells = vec![(key.to_string(), in_system(value, system))];
        rows.push(Row { name: name.to_string(), cells });
    };
    add(text::report_supply(), "", circuit.supply.into());
    add(text::return_word(), "", circuit.back.into());
    add(text::drop(), "drop", circuit.drop().into());
    add(text::flow(), "flow", circuit.flow.into());
    add(text::velocity(), "velocity", circuit.velocity.into());
    add(text::head(), "head", Value::new(Kind::Head, circuit.head.si()));
    add(text::boiler_gives(), "boiler-heat", circuit.heat.into());
    if let Some(plant) = &design.plant {
        if let Some(needed) = plant.needed {
            add(text::needed_output(), "plant.needed", needed.output.into());
        }
        if let Some(volume) = plant.volume {
            add(text::system_holds(), "plant.volume", Value::liquid(volume.total));
        }
        add(text::fill_cold(), "plant.fill", plant.filling.cold.into());
        if let Some(hot) = plant.filling.hot {
            add(text::hot_gauge(), "", hot.into());
        }
        add(text::relief_at(), "", job.plant.relief.into());
        if let Some(tank) = plant.tank {
            add(text::tank_least(), "plant.tank", Value::liquid(tank.volume));
            if let Some(usual) = tank.usual {
                add(text::tank_usual(), "", Value::liquid(usual));
            }
            add(text::pre_charge(), "", tank.pre_charge.into());
        }
    }
    for pump in &circuit.pumps {
        let name = match pump.zone {
            Some(zone) => text::named(text::circulator(), &text::zone_name(draft, zone)),
            None => text::circulator().to_string(),
        };
        let head = in_system(Value::new(Kind::Head, pump.head.si()), system);
        let at = text::flow_at(&in_system(pump.flow, system), &head, false);
        let draws = text::named(&text::watts(pump.electric), text::of_mains());
        rows.push(Row::plain(name, vec![format!("{at}; {draws}")]));
    }
    rows
}

fn plant(out: &mut Markup, seen: &Seen<'_>) {
    let heads = [text::column_input_of(), text::column_value()];
    out.open("div", &[("class", "narrow")]);
    table(out, Of::Words, text::results_system(), &heads, &plant_rows(seen));
    out.close("div");
    if let Some(plant) = &seen.design.plant {
        let said = [
            plant.size.map(|judged| text::boiler_judged(judged, seen.system)),
            plant.back.map(|verdict| text::back_verdict(verdict, seen.system)),
            plant.no_tank.map(|error| text::no_tank(error).to_string()),
            plant.glycol.map(|charge| text::glycol_charge(&charge, plant.freezes_at, seen.system)),
        ];
        for sentence in said.into_iter().flatten() {
            out.leaf("p", &[], &sentence);
        }
    }
}

pub(super) fn circuits(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, job, design, system, .. } = *seen;
    let flow = |flow| in_system(flow / job.circuit.fluid.density(job.circuit.supply), system);
    let row = |circuit: &CircuitDesign| {
        Row::plain(
            text::circuit_name(draft, circuit.zone, &circuit.rooms),
            vec![
                flow(circuit.target),
                flow(circuit.mass_flow),
                in_system(circuit.back, system),
                setting(job, circuit, system),
            ],
        )
    };
    let rows: Vec<Row> = design.piping.circuits.iter().map(row).collect();
    let heads = [
        text::circuit_word(),
        text::meant(),
        text::flow(),
        text::return_reads(),
        text::column_setting(),
    ];
    table(out, Of::Numbers, text::results_circuits(), &heads, &rows);
}

/// What the balancing valve is set to.
pub(super) fn setting(job: &Job, circuit: &CircuitDesign, system: System) -> String {
    let open = job.circuit.parts.balancing.gallons_per_minute();
    match (circuit.valve.fitted, circuit.valve.cv) {
        (Balancing::None, _) => "–".to_string(),
        (Balancing::Valves, Some(cv)) if cv < open => in_system(Value::number(cv), system),
        (Balancing::Valves, _) => text::valve_open().to_string(),
    }
}
