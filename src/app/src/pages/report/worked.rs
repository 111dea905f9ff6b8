//! The calculations: one whole working of each kind with its numbers, and tables of all the others.

use super::Seen;
use super::results::joined;
use super::table::{Of, Row, table};
use crate::markup::Markup;
use crate::pages::heat_loss::path_name;
use crate::parts::{in_system, show_step};
use finrun_engine::building::{Part, PathLoss, RoomId};
use finrun_engine::job::UValue;
use finrun_engine::network::Place;
use finrun_engine::quantity::{Kind, Length, Power, Value};
use finrun_engine::trace::{self, Formula, Topic};
use finrun_text as text;

pub(super) fn calculations(out: &mut Markup, seen: &Seen<'_>) {
    out.leaf("h2", &[], text::report_worked());
    out.leaf("p", &[], text::worked_note());
    out.open("div", &[("class", "workings")]);
    let mut known = Vec::new();
    for (topic, name, shows) in topics(seen) {
        worked(out, seen, topic, &name, shows, &mut known);
    }
    out.close("div");
    parts(out, seen);
    paths(out, seen);
    elements(out, seen);
    stretches(out, seen);
}

/// Which workings are written out.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shows {
    Always,
    /// Where a formula in it was not written out before.
    New,
}

fn worked(
    out: &mut Markup,
    seen: &Seen<'_>,
    topic: Topic,
    name: &str,
    shows: Shows,
    known: &mut Vec<Formula>,
) {
    let steps = trace::working(seen.job, seen.design, topic);
    let new = steps.iter().any(|step| !known.contains(&step.formula));
    if steps.is_empty() || (shows == Shows::New && !new) {
        return;
    }
    out.leaf("h3", &[], &text::worked_title(topic, name));
    for step in &steps {
        show_step(out, step, seen.system);
        known.push(step.formula);
    }
}

/// All that can be worked out, with the name of what it is about, in the order of calculation.
fn topics(seen: &Seen<'_>) -> Vec<(Topic, String, Shows)> {
    let Seen { draft, design, .. } = *seen;
    let mut all = Vec::new();
    let mut add = |topic, name: String, shows| all.push((topic, name, shows));
    for listed in listed(seen) {
        add(Topic::ListedU(listed), text::assembly(listed).to_string(), Shows::New);
    }
    add(Topic::HouseAir, String::new(), Shows::Always);
    let name = |id| text::room_name(draft, id);
    let of =
        |room: RoomId, path: &PathLoss| format!("{}, {}", path_name(draft, room, path), name(room));
    for space in &design.spaces {
        for path in &space.paths {
            add(Topic::PathLoss(space.space, path.path), of(space.space, path), Shows::New);
        }
        add(Topic::SpaceTemperature(space.space), name(space.space), Shows::New);
    }
    for room in &design.rooms {
        for path in &room.load.paths {
            add(Topic::PathLoss(room.room, path.path), of(room.room, path), Shows::New);
        }
    }
    let worst = design.rooms.iter().max_by(|a, b| a.load.total.si().total_cmp(&b.load.total.si()));
    if let Some(room) = worst {
        add(Topic::RoomLoad(room.room), name(room.room), Shows::Always);
    }
    add(Topic::HouseLoad, String::new(), Shows::Always);
    add(Topic::Flow, String::new(), Shows::Always);
    for room in seen.in_order().filter_map(|at| design.rooms.get(at)) {
        add(Topic::Needed(room.room), name(room.room), Shows::New);
        add(Topic::Output(room.room), name(room.room), Shows::New);
        add(Topic::Over(room.room), name(room.room), Shows::New);
    }
    for passage in &design.piping.passages {
        let stretch = text::place(draft, passage.place);
        if passage.length > Length::ZERO && !matches!(passage.place, Place::Element(_)) {
            add(Topic::Pipe(passage.place), stretch.clone(), Shows::New);
        }
        add(Topic::Pressure(passage.place), stretch, Shows::New);
    }
    for topic in [
        Topic::Drop,
        Topic::Velocity,
        Topic::Head,
        Topic::NeededOutput,
        Topic::SystemVolume,
        Topic::FillPressure,
        Topic::TankSize,
    ] {
        add(topic, String::new(), Shows::Always);
    }
    all
}

/// The listed assemblies that the house is built of, each once.
fn listed(seen: &Seen<'_>) -> Vec<finrun_engine::building::Assembly> {
    let mut all = Vec::new();
    for surface in seen.draft.all_rooms().flat_map(|room| &room.surfaces) {
        if let UValue::Listed(listed) = surface.u_value
            && !all.contains(&listed)
        {
            all.push(listed);
        }
    }
    all
}

/// Each room's loss by part; the parts of a row add up to its load.
fn parts(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, .. } = *seen;
    let has = |part: Part| design.rooms.iter().any(|room| room.load.of(part) != Power::ZERO);
    let used: Vec<Part> = Part::ALL.into_iter().filter(|&part| has(part)).collect();
    let mut heads = vec![text::room()];
    heads.extend(used.iter().map(|&part| text::part(part)));
    heads.push(text::load());
    let shown = |power: Power| in_system(power, system);
    let mut rows: Vec<Row> = design
        .rooms
        .iter()
        .map(|room| {
            let mut cells: Vec<String> =
                used.iter().map(|&part| shown(room.load.of(part))).collect();
            cells.push(shown(room.load.total));
            Row::plain(text::room_name(draft, room.room), cells)
        })
        .collect();
    let mut totals: Vec<String> = used
        .iter()
        .map(|&part| shown(design.rooms.iter().map(|room| room.load.of(part)).sum()))
        .collect();
    totals.push(shown(design.load));
    rows.push(Row::plain(text::column_total(), totals));
    out.leaf("h3", &[], text::worked_rooms());
    table(out, Of::Numbers, text::worked_rooms(), &heads, &rows);
}

fn paths(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, .. } = *seen;
    let rooms = design.rooms.iter().map(|room| (room.room, &room.load.paths));
    let spaces = design.spaces.iter().map(|space| (space.space, &space.paths));
    let mut rows = Vec::new();
    for (room, paths) in rooms.chain(spaces) {
        for path in paths {
            let or_none =
                |value: Option<Value>| value.map(|v| in_system(v, system)).unwrap_or_default();
            let ends =
                text::from_into(&in_system(path.inside, system), &in_system(path.beyond, system));
            rows.push(Row::plain(
                format!("{}: {}", text::room_name(draft, room), path_name(draft, room, path)),
                vec![
                    or_none(path.area.map(Value::from)),
                    or_none(path.transmittance.map(Value::from)),
                    ends,
                    in_system(path.loss, system),
                ],
            ));
        }
    }
    let heads = [
        text::room(),
        text::column_area(),
        text::column_u(),
        text::column_difference(),
        text::heat(),
    ];
    out.leaf("h3", &[], text::worked_paths());
    table(out, Of::Numbers, text::worked_paths(), &heads, &rows);
}

fn elements(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, job, design, system, .. } = *seen;
    let shown = |value: Value| in_system(value, system);
    let mut rows = Vec::new();
    for room in seen.in_order().filter_map(|at| design.rooms.get(at)) {
        let element = &room.element;
        let flow = element.flow / job.circuit.fluid.density(element.water_in);
        let pieces: Vec<Length> = element.choice.pieces().collect();
        rows.push(Row::plain(
            text::room_name(draft, room.room),
            vec![
                shown(room.load.wanted().max(Power::ZERO).into()),
                shown(flow.into()),
                element.needed.map(|needed| shown(needed.into())).unwrap_or_default(),
                shown(element.choice.finned.into()),
                joined(&pieces, system),
                shown(element.water_in.into()),
                shown(element.water_out.into()),
                shown(element.output.into()),
            ],
        ));
    }
    let heads = [
        text::room(),
        text::column_needs(),
        text::flow(),
        text::column_needed(),
        text::column_finned(),
        text::column_pieces(),
        text::water_in(),
        text::water_out(),
        text::column_gives(),
    ];
    out.leaf("h3", &[], text::worked_elements());
    table(out, Of::Numbers, text::worked_elements(), &heads, &rows);
}

fn stretches(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, .. } = *seen;
    let shown = |value: Value| in_system(value, system);
    let plain = |number: f64| in_system(Value::number(number), system);
    let rows: Vec<Row> = design
        .piping
        .passages
        .iter()
        .map(|passage| {
            Row::plain(
                text::place(draft, passage.place),
                vec![
                    shown(passage.length.into()),
                    shown((passage.mass_flow / passage.density).into()),
                    shown(passage.velocity.into()),
                    in_system(Value::new(Kind::Count, passage.reynolds.round()), system),
                    plain(passage.friction_factor),
                    shown(passage.pressure_drop().into()),
                    shown(Value::new(Kind::Head, passage.head().si())),
                    shown(passage.water_out.into()),
                ],
            )
        })
        .collect();
    let heads = [
        text::stretch(),
        text::length_word(),
        text::flow(),
        text::velocity(),
        text::column_reynolds(),
        text::column_factor(),
        text::column_lost(),
        text::head_word(),
        text::water_out(),
    ];
    out.leaf("h3", &[], text::worked_stretches());
    table(out, Of::Numbers, text::worked_stretches(), &heads, &rows);
}
