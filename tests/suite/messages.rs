//! Every message, kept word by word: a change of words shows as a change of a snapshot.
//!
//! The snapshots lie in `snapshots/`. After a change that is meant, `INSTA_UPDATE=always cargo test
//! -p finrun-tests messages` writes them anew; read the difference before it is committed.

mod examples;
mod page;

use crate::findings::tag;
use crate::support::{FOUR_ROOMS, V1_FIXTURE, fields, open};
use examples::{findings, open_errors, problems, remedies};
use finrun_engine::building::assembly::Position;
use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::{
    AirClass, Assembly, Framing, Material, OpenFlue, OpeningKind, Part, RoomId, Shelter, Storeys,
    SurfaceKind,
};
use finrun_engine::check::{Check, Severity, Subject};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Behind, Blank, Field, FieldError, FlowBasis, RatingBasis, UValue};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{System, Value};
use finrun_engine::trace::{Formula, Source};
use finrun_text as text;
use std::collections::BTreeMap;

/// Messages by their key, in order.
#[derive(Default)]
struct Book(Vec<(String, String)>);

impl Book {
    fn add(&mut self, key: impl ToString, message: impl ToString) {
        let (key, message) = (key.to_string(), message.to_string());
        assert!(!message.is_empty(), "{key} says nothing");
        assert!(message.chars().count() <= 400, "{key} is too long to be read: {message}");
        assert!(!message.contains("TODO") && !message.contains("  "), "{key}: {message:?}");
        assert_eq!(message.trim(), message, "{key}");
        self.0.push((key, message));
    }

    /// As lines of key and message, in the order of adding.
    fn text(&self) -> String {
        self.0.iter().map(|(key, message)| format!("{key}\n    {message}\n")).collect()
    }
}

/// One of each kind of field, by the end of its path; every room's wall has the same ones.
fn one_of_each_field() -> Vec<(String, Field)> {
    let mut out = BTreeMap::new();
    for field in fields(&open(V1_FIXTURE)).into_iter().chain([Field::Stock]) {
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
    let mut book = Book::default();
    let all = one_of_each_field();
    // House 4, element 8, table 2, stock 1, circuit 12, room 8, surface 7, opening 5.
    assert_eq!(all.len(), 47, "{all:?}");
    for (key, field) in all {
        book.add(&key, text::field_label(field));
        // Most labels leave nothing open.
        if !text::field_note(field).is_empty() {
            book.add(format!("{key} note"), text::field_note(field));
        }
        for system in [System::Us, System::Si] {
            book.add(format!("{key} {system:?}"), text::bounds_hint(field, system));
        }
        let spec = field.spec();
        book.add(
            format!("{key} blank"),
            match spec.blank {
                Blank::Required => "is asked for".to_string(),
                Blank::Follows => "follows from others".to_string(),
                Blank::Assumed(si) => text::value(Value::new(spec.kind, si), System::Us),
            },
        );
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn problems_with_what_is_typed() {
    let draft = open(FOUR_ROOMS);
    let mut book = Book::default();
    for (key, FieldError { field, typed, problem }) in problems() {
        let error = FieldError { field, typed, problem };
        for system in [System::Us, System::Si] {
            book.add(format!("{key} {system:?}"), text::problem_at(&draft, &error, system));
        }
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn problems_with_files() {
    let mut book = Book::default();
    for error in open_errors() {
        book.add(format!("{error:?}"), text::file_problem(&error));
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn checks_and_what_they_say() {
    let draft = open(FOUR_ROOMS);
    let mut book = Book::default();
    for severity in [Severity::Holds, Severity::Watch, Severity::Stop] {
        book.add(format!("{severity:?}"), text::severity(severity));
    }
    for (key, severity, subject, finding) in findings() {
        let check = Check { severity, subject, finding, remedies: Vec::new() };
        for system in [System::Us, System::Si] {
            book.add(format!("{key} {system:?} title"), text::check_title(&check, &draft, system));
            book.add(format!("{key} {system:?} detail"), text::check_detail(&check, system));
        }
    }
    // Every subject has a name.
    for subject in [Subject::House, Subject::Loop, Subject::Boiler, Subject::Room(RoomId(6))] {
        let finding = finrun_engine::check::Finding::NotFinite;
        let check = Check { severity: Severity::Stop, subject, finding, remedies: Vec::new() };
        book.add(format!("{subject:?}"), text::check_title(&check, &draft, System::Us));
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn remedies_and_what_they_propose() {
    let mut book = Book::default();
    for remedy in remedies() {
        for system in [System::Us, System::Si] {
            book.add(format!("{} {system:?}", tag(remedy)), text::remedy(remedy, system));
        }
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn names_of_choices() {
    let draft = open(FOUR_ROOMS);
    let mut book = Book::default();
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
    let room = draft.rooms[0].id;
    for behind in [Behind::Outdoors, Behind::Unheated, Behind::SameTemperature, Behind::Room(room)]
    {
        book.add(format!("{behind:?}"), text::behind(&draft, behind));
    }
    for value in [UValue::Listed(Assembly::FrameWallR11), UValue::TypedU, UValue::TypedR] {
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
    insta::assert_snapshot!(book.text());
}

#[test]
fn workings_sources_and_symbols() {
    let mut book = Book::default();
    for formula in Formula::ALL {
        if *formula != Formula::Sum {
            book.add(format!("{formula:?}"), formula.text());
        }
        book.add(format!("{formula:?} source"), text::source(formula.source()));
    }
    // One that no formula names would be a message that nobody sees.
    let used: Vec<Source> = Formula::ALL.iter().map(|formula| formula.source()).collect();
    for source in [
        Source::Arithmetic,
        Source::Transmission,
        Source::StandardAtmosphere,
        Source::Ventilation,
        Source::EnergyBalance,
        Source::RatingPractice,
        Source::Integrated,
        Source::BarePipe,
        Source::Continuity,
        Source::Colebrook,
        Source::DarcyWeisbach,
        Source::Crane,
        Source::Hydrostatics,
        Source::CommonPractice,
    ] {
        assert!(used.contains(&source), "{source:?}");
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn names_of_things_without_a_name() {
    let mut book = Book::default();
    for text in [FOUR_ROOMS, V1_FIXTURE] {
        let draft = open(text);
        for room in &draft.rooms {
            book.add(room.id.0, text::room_name(&draft, room.id));
            for surface in &room.surfaces {
                let name = text::surface_name(&draft, room.id, surface.id);
                book.add(format!("{} {}", room.id.0, surface.id.0), name);
            }
        }
        book.add("gone", text::room_name(&draft, RoomId(9999)));
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn cautions_and_what_the_tool_is() {
    let mut book = Book::default();
    for caution in text::CAUTIONS {
        book.add(caution.title, caution.text);
    }
    for (index, paragraph) in text::ABOUT.iter().enumerate() {
        book.add(format!("about {index}"), paragraph);
    }
    // What the safety page must not lose: the law first, and each of the trades that can kill.
    let all = book.text().to_lowercase();
    for word in [
        "local codes",
        "licensed",
        "relief valve",
        "carbon monoxide",
        "gas",
        "solder",
        "wired",
        "asbestos",
        "lead",
        "joists",
        "backflow",
    ] {
        assert!(all.contains(word), "nothing is said of {word}");
    }
    insta::assert_snapshot!(book.text());
}
