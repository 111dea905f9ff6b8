//! The short form: two pages for the site. The first has what is built and set, the second the
//! schematic and what to heed.

use super::Seen;
use super::results::{circuits, joined, plant_rows};
use super::table::{Of, Row, table};
use crate::drawing::schematic_drawn;
use crate::markup::Markup;
use crate::parts::in_system;
use finrun_engine::install::Danger;
use finrun_engine::job::Choice;
use finrun_engine::quantity::{Length, Power};
use finrun_text as text;

/// All dangers, the nearest ones first.
const DANGERS: [Danger; 10] = [
    Danger::Scald,
    Danger::Relief,
    Danger::Fire,
    Danger::Gas,
    Danger::Mains,
    Danger::OldHouse,
    Danger::Pressure,
    Danger::Freezing,
    Danger::Structure,
    Danger::DrinkingWater,
];

pub(super) fn short(out: &mut Markup, seen: &Seen<'_>) {
    super::title(out, seen, &text::report_title(&seen.draft.name));
    out.leaf("p", &[], text::for_the_van());
    out.leaf("h3", &[], text::results_rooms());
    rooms(out, seen);
    out.open("div", &[("class", "beside-each-other")]);
    out.open("div", &[]);
    out.leaf("h3", &[], text::results_system());
    let heads = [text::column_input_of(), text::column_value()];
    table(out, Of::Words, text::results_system(), &heads, &plant_rows(seen));
    out.close("div");
    out.open("div", &[]);
    out.leaf("h3", &[], text::tube_and_pieces());
    let heads = [text::column_what(), text::column_value()];
    table(out, Of::Words, text::tube_and_pieces(), &heads, &bought(seen));
    out.leaf("h3", &[], text::results_circuits());
    circuits(out, seen);
    out.close("div");
    out.close("div");
    out.open("div", &[("class", "second-page beside-each-other")]);
    out.open("div", &[]);
    out.leaf("h3", &[], text::schematic_title());
    out.put(&schematic_drawn(seen.draft, seen.job, seen.design, seen.system));
    out.close("div");
    out.open("div", &[]);
    out.leaf("h3", &[], text::to_heed());
    out.leaf("p", &[], text::short_caution());
    out.open("ul", &[]);
    for danger in DANGERS {
        out.leaf("li", &[], text::danger(danger));
    }
    out.close("ul");
    out.close("div");
    out.close("div");
}

/// Tube and pieces of the whole house.
fn bought(seen: &Seen<'_>) -> Vec<Row> {
    let mut counts: Vec<(Length, usize)> = Vec::new();
    for piece in seen.design.rooms.iter().flat_map(|room| room.element.choice.pieces()) {
        match counts.iter_mut().find(|(length, _)| *length == piece) {
            Some((_, count)) => *count += 1,
            None => {
                let at = counts.partition_point(|(length, _)| *length > piece);
                counts.insert(at, (piece, 1));
            }
        }
    }
    let pieces: Vec<String> = counts
        .iter()
        .map(|&(length, count)| text::pieces_of(count, &in_system(length, seen.system)))
        .collect();
    vec![
        Row::plain(text::choice_label(Choice::Tube), vec![text::tube(seen.draft.tube).to_string()]),
        Row::plain(text::all_pieces(), vec![pieces.join(", ")]),
    ]
}

/// What stands on which wall of each room.
fn rooms(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, .. } = *seen;
    let mut rows = Vec::new();
    for (nth, room) in seen.in_order().filter_map(|at| design.rooms.get(at)).enumerate() {
        let element = &room.element;
        let walls: Vec<String> = element
            .choice
            .runs
            .iter()
            .map(|run| {
                let wall = text::surface_name(draft, room.room, run.surface);
                text::on_wall(&wall, &joined(&run.pieces, system))
            })
            .collect();
        let built = element.choice.nominal > Length::ZERO;
        let water = text::from_into(
            &in_system(element.water_in, system),
            &in_system(element.water_out, system),
        );
        let short = room.short();
        let load = in_system(room.load.total, system);
        let load = match short > Power::ZERO {
            true => format!("{load}, {} {}", text::column_short(), in_system(short, system)),
            false => load,
        };
        rows.push(Row::plain(
            format!("{}. {}", nth + 1, text::room_name(draft, room.room)),
            vec![
                match built {
                    true => walls.join("; "),
                    false => text::no_element().to_string(),
                },
                if built { water } else { String::new() },
                load,
            ],
        ));
    }
    let heads = [text::room(), text::column_wall(), text::column_water(), text::load()];
    table(out, Of::Words, text::results_rooms(), &heads, &rows);
}
