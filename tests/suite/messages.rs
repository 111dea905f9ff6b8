//! Every message, kept word by word: a change of words shows as a change of a snapshot.
//!
//! The snapshots lie in `snapshots/`. After a change that is meant, `INSTA_UPDATE=always cargo test
//! -p finrun-tests messages` writes them anew; read the difference before it is committed.

pub(crate) mod book;
mod compare;
mod drawings;
mod examples;
mod existing;
mod glossary;
mod house;
mod install;
mod lists;
mod loops;
mod materials;
mod page;
mod piping;
mod plant;
mod price_list;
mod remedies;
mod report;
mod shop;
mod what_if;
mod working;
mod year;

use crate::findings::tag;
use crate::support::{
    FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE, fields,
    holds_number, open,
};
use book::{Book, in_both};
use examples::{findings, open_errors, problems, remedies};
use finrun_engine::bills::Fuel;
use finrun_engine::building::assembly::Position;
use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::{
    AirClass, Assembly, AssemblyId, Framing, Level, Material, OpenFlue, OpeningKind, Part, RoomId,
    RoomUse, Shelter, SlabEdge, Soil, Storeys, SurfaceKind,
};
use finrun_engine::check::{Check, Severity, Subject};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Behind, Blank, Field, FlowBasis, RatingBasis, UValue};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{System, Value};
use finrun_text as text;
use std::collections::BTreeMap;

/// One of each kind of field, by the end of its path; every room's wall has the same ones.
fn one_of_each_field() -> Vec<(String, Field)> {
    let mut out = BTreeMap::new();
    let all = [V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE].map(open);
    let all = all.iter().flat_map(fields).chain([Field::Stock]);
    for field in all {
        let path = field.to_string();
        let parts: Vec<&str> = path.split('.').collect();
        let key = match parts[..] {
            [first, last] => {
                format!("{}.{last}", first.trim_end_matches(|c: char| "-0123456789".contains(c)))
            }
            _ => {
                let owner = parts[parts.len() - 2];
                let owner = owner.trim_end_matches(|c: char| "-0123456789".contains(c));
                format!("{owner}.{}", parts[parts.len() - 1])
            }
        };
        out.entry(key).or_insert(field);
    }
    out.into_iter().collect()
}

#[test]
fn fields_labels_notes_and_bounds() {
    let tell = |book: &mut Book| {
        let all = one_of_each_field();
        // House 9, air 6, ground 5, certainty 7, assembly 2, layer 2, bills 3, bill 4, element 8, table 2,
        // stock 4, price 46, by size 14 for two sizes, spare 10, cut 1, circuit 12, control 3, room 20, surface 11,
        // opening 5, part 6, plant 13, zone 3, pump point 2, leg 1, measured 5 and 7, change 11, and of
        // a second and third room and zone the same again where their names end in another way.
        assert_eq!(all.len(), 236, "{all:?}");
        for (key, field) in all {
            book.add(&key, text::field_label(field));
            // Most labels leave nothing open.
            if !text::field_note(field).is_empty() {
                book.add(format!("{key} note"), text::field_note(field));
            }
            // A date or a choice has no bounds that anybody sees; pieces have.
            if !holds_number(field) && field != Field::Stock {
                continue;
            }
            for system in [System::Us, System::Si] {
                book.add(format!("{key} {system:?}"), text::bounds_hint(field, system));
            }
            let spec = field.spec();
            book.add(
                format!("{key} blank"),
                match spec.blank {
                    Blank::Required => "?".to_string(),
                    Blank::Follows => "=".to_string(),
                    Blank::Assumed(si) => text::value(Value::new(spec.kind, si), System::Us),
                },
            );
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn problems_with_what_is_typed() {
    let (rooms, all) = (open(FOUR_ROOMS), open(V2_FIXTURE));
    let changes = open(V6_FIXTURE);
    let tell = |book: &mut Book| {
        for (key, error) in problems() {
            // Only the fixture has assemblies and bills of its own.
            let draft = match error.field {
                Field::Assembly(..) | Field::Bill(..) => &all,
                Field::Change(..) => &changes,
                _ => &rooms,
            };
            for system in [System::Us, System::Si] {
                book.add(format!("{key} {system:?}"), text::problem_at(draft, &error, system));
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn problems_with_files() {
    let tell = |book: &mut Book| {
        for error in open_errors() {
            book.add(format!("{error:?}"), text::file_problem(&error));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn checks_and_what_they_say() {
    let draft = open(FOUR_ROOMS);
    let tell = |book: &mut Book| {
        for severity in [Severity::Holds, Severity::Watch, Severity::Stop] {
            book.add(format!("{severity:?}"), text::severity(severity));
        }
        for (key, severity, subject, finding) in findings() {
            let check = Check { severity, subject, finding, remedies: Vec::new() };
            for system in [System::Us, System::Si] {
                book.add(
                    format!("{key} {system:?} title"),
                    text::check_title(&check, &draft, system),
                );
                book.add(format!("{key} {system:?} detail"), text::check_detail(&check, system));
            }
        }
        // Every subject has a name.
        for subject in [Subject::House, Subject::Loop, Subject::Boiler, Subject::Room(RoomId(6))] {
            let finding = finrun_engine::check::Finding::NotFinite;
            let check = Check { severity: Severity::Stop, subject, finding, remedies: Vec::new() };
            book.add(format!("{subject:?}"), text::check_title(&check, &draft, System::Us));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn remedies_and_what_they_propose() {
    let tell = |book: &mut Book| {
        for remedy in remedies() {
            for system in [System::Us, System::Si] {
                book.add(format!("{} {system:?}", tag(remedy)), text::remedy(remedy, system));
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn names_of_choices() {
    let tell = |book: &mut Book| {
        for &tube in Tube::ALL.iter() {
            book.add(format!("{tube:?}"), text::tube(tube));
        }
        for &assembly in Assembly::ALL.iter() {
            book.add(format!("{assembly:?}"), text::assembly(assembly));
            book.add(format!("{assembly:?} Us"), text::listed_u(assembly, System::Us));
            book.add(format!("{assembly:?} Si"), text::listed_u(assembly, System::Si));
        }
        for origin in [
            Origin::Layers,
            Origin::IeccDefault,
            Origin::IeccFromMemory,
            Origin::StateCode,
            Origin::MaterialStandard,
            Origin::InsulationPages,
            Origin::FromMemory,
            Origin::CommonPractice,
        ] {
            book.add(format!("{origin:?}"), text::origin(origin));
        }
        for &material in Material::ALL {
            book.add(format!("{material:?}"), text::material(material));
        }
        for &framing in Framing::ALL {
            book.add(format!("{framing:?}"), text::framing(framing));
        }
        for &position in Position::ALL {
            book.add(format!("{position:?}"), text::position(position));
        }
        for &class in AirClass::ALL.iter() {
            book.add(format!("{class:?}"), text::air_class(class));
        }
        for &storeys in Storeys::ALL {
            book.add(format!("{storeys:?}"), text::storeys(storeys));
        }
        for &shelter in Shelter::ALL {
            book.add(format!("{shelter:?}"), text::shelter(shelter));
        }
        for &flue in OpenFlue::ALL {
            book.add(format!("{flue:?}"), text::open_flue(flue));
        }
        for kind in [SurfaceKind::Wall, SurfaceKind::Ceiling, SurfaceKind::Floor] {
            book.add(format!("{kind:?}"), text::surface_kind(kind));
        }
        for kind in [OpeningKind::Window, OpeningKind::Door] {
            book.add(format!("{kind:?}"), text::opening_kind(kind));
        }
        for &part in Part::ALL.iter() {
            book.add(format!("{part:?}"), text::part(part));
        }
        // What it is, and where.
        for &used in RoomUse::ALL {
            book.add(format!("{used:?}"), text::room_use(used));
        }
        for &level in Level::ALL {
            book.add(format!("{level:?}"), text::level(level));
        }
        for &soil in Soil::ALL {
            book.add(format!("{soil:?}"), text::soil(soil));
        }
        for &edge in SlabEdge::ALL {
            book.add(format!("{edge:?}"), text::slab_edge(edge));
        }
        for &fuel in Fuel::ALL {
            book.add(format!("{fuel:?}"), text::fuel(fuel));
        }
        let mut house = open(V2_FIXTURE);
        house.rooms[0].name = "Kitchen".to_string();
        for behind in [
            Behind::Outdoors,
            Behind::Ground,
            Behind::Unheated,
            Behind::SameTemperature,
            Behind::Room(house.rooms[0].id),
            // A space without a name by what it is.
            Behind::Room(house.spaces[0].id),
            Behind::Room(RoomId(9999)),
        ] {
            book.add(format!("{behind:?}"), text::behind(&house, behind));
        }
        let own = UValue::Own(AssemblyId(1));
        for value in [UValue::Listed(Assembly::FrameWallR11), own, UValue::TypedU, UValue::TypedR] {
            book.add(format!("{value:?}"), text::u_value_basis(value));
        }
        for effect in [
            HeatingEffect::AsTyped,
            HeatingEffect::CertifiedCredited,
            HeatingEffect::CertifiedStrict,
            HeatingEffect::Unknown,
        ] {
            book.add(format!("{effect:?}"), text::heating_effect(effect));
        }
        for basis in [RatingBasis::Single, RatingBasis::Table] {
            book.add(format!("{basis:?}"), text::rating_basis(basis));
        }
        for basis in [FlowBasis::FromDrop, FlowBasis::Typed] {
            book.add(format!("{basis:?}"), text::flow_basis(basis));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn names_of_things_without_a_name() {
    let tell = |book: &mut Book| {
        for text in [FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE] {
            let draft = open(text);
            for room in draft.all_rooms() {
                let name = text::room_name(&draft, room.id);
                match room.name.trim() {
                    "" => book.add(room.id.0, name),
                    typed => assert_eq!(name, typed),
                }
                for surface in &room.surfaces {
                    let name = text::surface_name(&draft, room.id, surface.id);
                    let key = format!("{} {}", room.id.0, surface.id.0);
                    // What says what it is stays as it was typed.
                    match name.eq_ignore_ascii_case(surface.name.trim()) {
                        true => assert!(name.to_lowercase().contains("wall"), "{name}"),
                        false => book.add(&key, name),
                    }
                    for opening in &surface.openings {
                        let name = text::opening_name(&draft, room.id, surface.id, opening.id);
                        book.add(format!("{key} {}", opening.id.0), name);
                    }
                }
            }
            let gone = AssemblyId(9999);
            for assembly in &draft.assemblies {
                let name = text::assembly_name(&draft, assembly.id);
                match assembly.name.trim() {
                    "" => book.add(format!("assembly {}", assembly.id.0), name),
                    typed => assert_eq!(name, typed),
                }
            }
            book.add("assembly gone", text::assembly_name(&draft, gone));
            book.add("gone", text::room_name(&draft, RoomId(9999)));
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn cautions_and_what_the_tool_is() {
    let tell = |book: &mut Book| {
        for (index, caution) in text::CAUTIONS.iter().enumerate() {
            book.add(format!("caution {index}"), caution.title());
            book.add(format!("caution {index}, its text"), caution.text());
        }
        for (index, paragraph) in text::about_paragraphs().iter().enumerate() {
            book.add(format!("about {index}"), paragraph);
        }
    };
    let all = in_both(tell);
    // What the safety page must not lose: the law first, and each of the trades that can kill.
    for (english, spanish) in [
        ("local codes", "códigos locales"),
        ("licensed", "licencia"),
        ("relief valve", "válvula de alivio"),
        ("carbon monoxide", "monóxido de carbono"),
        ("gas", "huele a gas"),
        ("solder", "soldar"),
        ("wired", "corriente cortada"),
        ("asbestos", "asbesto"),
        ("lead", "plomo"),
        ("joists", "vigas"),
        ("backflow", "antirreflujo"),
        // No valve and no plug in a relief valve's way: boiler and plumbing codes have it so (from memory).
        ("never plugged", "nunca tapada"),
        ("never with a shut-off before it", "nunca con una válvula de paso delante"),
        ("drain before you open", "vacíe antes de abrir"),
        ("tested to be off", "comprobado que"),
        ("extinguisher", "extintor"),
        ("monoxide alarms", "alarmas de monóxido"),
        ("engineer", "ingeniero"),
    ] {
        for word in [english, spanish] {
            assert!(all.to_lowercase().contains(word), "nothing is said of {word}");
        }
    }
    insta::assert_snapshot!(all);
}
