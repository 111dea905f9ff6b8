//! Every input with its value, its unit and where it comes from.

use super::Seen;
use super::rooms;
use super::table::{Of, Row, table};
use crate::markup::Markup;
use crate::parts::in_system;
use finrun_engine::job::{
    self, AirBasis, Behind, Choice, Draft, Field, Input, InputOrigin, UValue, ZoneDraft, Zoning,
};
use finrun_engine::quantity::{Kind, System, Value};
use finrun_text as text;

pub(super) fn inputs(out: &mut Markup, seen: &Seen<'_>) {
    let all = job::inputs(seen.draft);
    out.leaf("h2", &[], text::report_inputs());
    out.leaf("p", &[], text::report_inputs_note());
    out.open("div", &[("class", "halves")]);
    for group in GROUPS {
        let mut rows = picked(seen.draft, &(group.choices)(seen.draft));
        let own = all.iter().filter(|input| (group.holds)(input.field));
        rows.extend(own.map(|input| row(seen, input)));
        if (group.holds)(Field::Stock) {
            rows.push(stock(seen.draft));
        }
        let title = (group.title)();
        if !rows.is_empty() {
            out.leaf("h3", &[], title);
            let heads = [text::column_input(), text::column_value(), text::column_origin()];
            table(out, Of::Words, title, &heads, &rows);
        }
    }
    out.close("div");
    built(out, seen);
    rooms::rooms(out, seen, &all);
}

/// Inputs that belong together, with what was picked from lists for them.
struct Group {
    title: fn() -> &'static str,
    choices: fn(&Draft) -> Vec<Choice>,
    holds: fn(Field) -> bool,
}

const GROUPS: [Group; 6] = [
    Group {
        title: text::inputs_house,
        choices: |draft| match draft.station {
            Some(_) => vec![Choice::DesignHours],
            None => Vec::new(),
        },
        holds: |field| matches!(field, Field::House(_)),
    },
    Group {
        title: text::inputs_air,
        choices: |draft| match draft.air.basis {
            AirBasis::Class => vec![Choice::AirBasis, Choice::AirClass],
            _ => vec![Choice::AirBasis, Choice::Storeys, Choice::Shelter, Choice::Flue],
        },
        holds: |field| matches!(field, Field::Air(_)),
    },
    Group {
        title: text::inputs_ground,
        choices: |draft| {
            let mut surfaces = draft.all_rooms().flat_map(|room| &room.surfaces);
            match surfaces.any(|surface| surface.behind == Behind::Ground) {
                true => vec![Choice::Soil, Choice::GroundMethod, Choice::Edge],
                false => Vec::new(),
            }
        },
        holds: |field| matches!(field, Field::Ground(_)),
    },
    Group {
        title: text::inputs_element,
        choices: |_| vec![Choice::Tube, Choice::Objective],
        holds: |field| {
            matches!(
                field,
                Field::Element(_)
                    | Field::Point(..)
                    | Field::Stock
                    | Field::Stocked(..)
                    | Field::Price(_)
            )
        },
    },
    Group {
        title: text::inputs_water,
        choices: of_the_water,
        holds: |field| {
            matches!(
                field,
                Field::Circuit(_)
                    | Field::Part(_)
                    | Field::Plant(_)
                    | Field::Zone(..)
                    | Field::PumpPoint(..)
            )
        },
    },
    Group {
        title: text::inputs_ranges,
        choices: |_| Vec::new(),
        holds: |field| matches!(field, Field::Certainty(_)),
    },
];

fn of_the_water(draft: &Draft) -> Vec<Choice> {
    let several = draft.zones.len() > 1;
    let mut all = vec![Choice::FlowBasis];
    let own = several && draft.zoning == Zoning::Circulators;
    match own {
        true => all.push(Choice::Zoning),
        false if several => all.extend([Choice::Zoning, Choice::Pump, Choice::PumpSet]),
        false => all.extend([Choice::Pump, Choice::PumpSet]),
    }
    for zone in &draft.zones {
        all.extend(of_a_zone(zone, own));
    }
    all.extend([
        Choice::PipeCover,
        Choice::BoilerKind,
        Choice::TankHeating,
        Choice::Metal,
        Choice::Antifreeze,
    ]);
    if several && !own {
        all.push(Choice::ValveKind);
    }
    all
}

fn of_a_zone(zone: &ZoneDraft, own_pump: bool) -> Vec<Choice> {
    let id = zone.id;
    let mut all = vec![Choice::Arrangement(id), Choice::Pipe(id), Choice::Balancing(id)];
    if zone.arrangement.has_main() {
        all.push(Choice::Main(id));
    }
    match zone.arrangement.has_branches() {
        true => {}
        false => all.push(Choice::BackPath(id)),
    }
    if own_pump {
        all.push(Choice::ZonePump(id));
    }
    all
}

/// The pieces that the shop has.
fn stock(draft: &Draft) -> Row {
    let lengths: Vec<String> = draft.element.stock_ft.iter().map(u8::to_string).collect();
    let lengths = text::stock_feet(&lengths.join(", "));
    Row::plain(text::field_label(Field::Stock), vec![lengths, text::column_picked().to_string()])
}

/// What was picked from lists; a zone's under its name, where there are several.
fn picked(draft: &Draft, choices: &[Choice]) -> Vec<Row> {
    let several = draft.zones.len() > 1;
    let row = |&choice: &Choice| {
        let zone = match choice {
            Choice::Arrangement(zone)
            | Choice::Main(zone)
            | Choice::Pipe(zone)
            | Choice::Balancing(zone)
            | Choice::BackPath(zone)
            | Choice::ZonePump(zone) => Some(zone),
            _ => None,
        };
        let label = text::choice_label(choice);
        let name = match zone.filter(|_| several) {
            Some(zone) => format!("{}: {label}", text::zone_name(draft, zone)),
            None => label.to_string(),
        };
        let pick = text::pick(draft, draft.picked(choice)?);
        Some(Row::plain(name, vec![pick, text::column_picked().to_string()]))
    };
    choices.iter().filter_map(row).collect()
}

fn row(seen: &Seen<'_>, input: &Input) -> Row {
    let label = text::whole_label(input.field);
    let name = match input.field {
        Field::Zone(..) | Field::Point(..) | Field::PumpPoint(..) | Field::Stocked(..) => {
            format!("{}: {label}", text::field_owner(seen.draft, input.field))
        }
        _ => label.to_string(),
    };
    let origin = text::input_origin(input.origin).1.to_string();
    Row::plain(name, vec![shown(input.value, seen.system), origin])
}

/// A value; heights above the sea are nothing to say in inches.
pub(super) fn shown(value: Value, system: System) -> String {
    match value.kind {
        Kind::Length if value.si.abs() > 60.0 => text::rough_length(value, system),
        _ => in_system(value, system),
    }
}

/// The U of each way of building that the house has, and its source.
fn built(out: &mut Markup, seen: &Seen<'_>) {
    let mut all: Vec<UValue> = Vec::new();
    let surfaces = seen.draft.all_rooms().flat_map(|room| &room.surfaces);
    for surface in surfaces {
        let openings = surface.openings.iter().map(|opening| opening.u_value);
        for value in std::iter::once(surface.u_value).chain(openings) {
            if !all.contains(&value) {
                all.push(value);
            }
        }
    }
    let row = |value: UValue| match value {
        UValue::Listed(listed) => {
            Some(Row::plain(text::assembly(listed), vec![text::listed_u(listed, seen.system)]))
        }
        UValue::Own(id) => {
            let u = job::own_transmittance(seen.draft, id)?;
            Some(Row::plain(text::assembly_name(seen.draft, id), vec![text::own_u(u, seen.system)]))
        }
        UValue::TypedU | UValue::TypedR => None,
    };
    let rows: Vec<Row> = all.into_iter().filter_map(row).collect();
    if rows.is_empty() {
        return;
    }
    out.leaf("h3", &[], text::inputs_built());
    let heads = [text::column_assembly(), text::column_source()];
    table(out, Of::Words, text::inputs_built(), &heads, &rows);
}

/// The number of one field among the inputs, with the letter of where it comes from.
pub(super) fn lettered(all: &[Input], field: Field, system: System) -> Option<String> {
    let input = all.iter().find(|input| input.field == field)?;
    Some(text::with_origin(&shown(input.value, system), input.origin))
}

/// A U as the table's: listed, of the user's own, or typed.
pub(super) fn u_origin(value: UValue, typed: Option<&Input>) -> InputOrigin {
    match value {
        UValue::Listed(_) => InputOrigin::Table,
        UValue::Own(_) => InputOrigin::Worked,
        UValue::TypedU | UValue::TypedR => typed.map_or(InputOrigin::Label, |input| input.origin),
    }
}
