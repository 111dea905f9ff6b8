//! How job files stand to the draft: written to the byte as before, read with what may be lacking,
//! and refused with the place of the fault.

mod files;

use files::{FULL, LEAST, LEAST_WHOLE, NEEDED};
use finrun_engine::job::{File, Header};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// Without the line ends and the space before the lines.
fn joined(text: &str) -> String {
    text.lines().map(str::trim).collect()
}

fn full() -> Value {
    serde_json::from_str(FULL).expect("JSON")
}

fn read(file: &Value) -> Result<File, String> {
    serde_json::from_value(file.clone()).map_err(|error| error.to_string())
}

fn write(file: &File) -> String {
    serde_json::to_string(file).expect("a file")
}

/// Every value in `value`, as a JSON pointer (RFC 6901).
fn pointers(value: &Value) -> Vec<String> {
    let inside = |name: &dyn std::fmt::Display, value: &Value| {
        let deeper = pointers(value).into_iter();
        deeper.map(|rest| format!("/{name}{rest}")).collect::<Vec<String>>()
    };
    let mut out = vec![String::new()];
    match value {
        Value::Array(items) => {
            out.extend(items.iter().enumerate().flat_map(|(at, item)| inside(&at, item)));
        }
        Value::Object(fields) => {
            out.extend(fields.iter().flat_map(|(name, value)| inside(name, value)));
        }
        _ => {}
    }
    out
}

/// A pointer as errors write it: `/rooms/0/id` as `rooms[0].id`.
fn place(pointer: &str) -> String {
    place_with(pointer, |at| format!("[{at}]"))
}

/// The same without the numbers of items, as in [`NEEDED`].
fn kind(pointer: &str) -> String {
    place_with(pointer, |_| "[]".to_string())
}

fn place_with(pointer: &str, item: impl Fn(&str) -> String) -> String {
    let mut out = String::new();
    for part in pointer.split('/').skip(1) {
        let number = part.bytes().all(|byte| byte.is_ascii_digit());
        let dot = if number || out.is_empty() { "" } else { "." };
        out += dot;
        out += &if number { item(part) } else { part.to_string() };
    }
    out
}

fn said(place: &str, what: &str) -> String {
    if place.is_empty() { what.to_string() } else { format!("{place}: {what}") }
}

/// Whether the members there are the texts typed into fields.
fn is_entries(pointer: &str) -> bool {
    [
        "entries",
        "house",
        "certainty",
        "circuit",
        "part",
        "job.prices",
        "spare",
        "points[]",
        "measured",
    ]
    .iter()
    .any(|end| kind(pointer).ends_with(end))
}

/// Whether the one member there says which of several things it is.
fn is_choice(pointer: &str) -> bool {
    let zone_pump = pointer.contains("/zones/") && pointer.ends_with("/pump");
    zone_pump
        || ["behind", "u_value", "material", "mass", "holds", "whose", "build"]
            .iter()
            .any(|end| pointer.ends_with(end))
}

#[test]
fn files_are_written_to_the_byte_as_they_were() {
    let file: File = serde_json::from_str(FULL).expect("a file");
    assert_eq!(write(&file), joined(FULL));
    // Whatever the order in which its members come: serde_json's values sort them.
    assert_eq!(read(&full()).as_ref(), Ok(&file));
    let header: Header = serde_json::from_str(FULL).expect("a header");
    assert_eq!(serde_json::to_string(&header).expect("a header"), "{\"finrun\":5}");
}

#[test]
fn defaults_stand_for_what_a_file_lacks() {
    let file: File = serde_json::from_str(LEAST).expect("a file");
    assert_eq!(write(&file), joined(LEAST_WHOLE));
}

/// Takes each member out in turn: either a default stands for it, or the file is refused.
#[test]
fn a_file_that_lacks_what_it_needs_is_refused() {
    let needed: BTreeSet<&str> = NEEDED.split_whitespace().collect();
    let mut met = BTreeSet::new();
    for pointer in pointers(&full()) {
        let mut file = full();
        let Some((parent, name)) = pointer.rsplit_once('/') else { continue };
        let Some(Value::Object(members)) = file.pointer_mut(parent) else { continue };
        members.remove(name);
        let what =
            if is_choice(parent) { "missing choice" } else { &format!("missing field `{name}`") };
        let typed = is_entries(parent.rsplit_once('/').map_or("", |(before, _)| before));
        match read(&file) {
            Err(error) => {
                assert_eq!(error, said(&place(parent), what));
                if !typed && !is_choice(parent) {
                    met.insert(kind(&pointer));
                }
            }
            Ok(read) => {
                assert!(!typed && !is_choice(parent), "{pointer}");
                // All else is as it was.
                let mut written: Value = serde_json::from_str(&write(&read)).expect("JSON");
                let members = written.pointer_mut(parent).and_then(Value::as_object_mut);
                members.expect("its parent").remove(name);
                assert_eq!(written, file, "{pointer}");
            }
        }
    }
    assert_eq!(met.iter().map(String::as_str).collect::<BTreeSet<_>>(), needed);
}

#[test]
fn members_that_newer_files_may_have_are_passed_over_but_not_what_is_typed() {
    let plain = read(&full()).expect("a file");
    let mut typed = 0;
    for pointer in pointers(&full()) {
        let mut file = full();
        let Some(Value::Object(members)) = file.pointer_mut(&pointer) else { continue };
        members.insert("later".to_string(), json!({"a": [1, -2.5, {"b": null, "c": "d"}, true]}));
        if is_entries(&pointer) {
            let error = said(&place(&pointer), "unknown field `later`");
            assert_eq!(read(&file), Err(error));
            typed += 1;
        } else if is_choice(&pointer) {
            let error = read(&file).expect_err("two choices");
            assert!(error.starts_with(&place(&pointer)), "{error}");
        } else {
            assert_eq!(read(&file).as_ref(), Ok(&plain), "{pointer}");
        }
    }
    assert!(typed > 15, "{typed}");
}

#[test]
fn each_fault_is_told_with_its_place() {
    let cases = [
        ("", json!([]), "not fields by name"),
        ("/finrun", json!("2"), "finrun: not a whole number"),
        ("/finrun", json!(-1), "finrun: number out of range"),
        ("/job", json!(null), "job: not fields by name"),
        ("/job/name", json!(5), "job.name: not text"),
        ("/job/units", json!("imperial"), "job.units: unknown name `imperial`"),
        ("/job/units", json!({"us": 1}), "job.units: unknown name `us`"),
        ("/job/tube", json!(true), "job.tube: not a name"),
        ("/job/station/mean_f", json!(45.5), "job.station.mean_f: not a whole number"),
        ("/job/station/mean_f", json!(1_u64 << 31), "job.station.mean_f: number out of range"),
        ("/job/station", json!([]), "job.station: not fields by name"),
        ("/job/next_id", json!(u64::MAX), "job.next_id: number out of range"),
        ("/job/next_id", json!(1e300), "job.next_id: not a whole number"),
        ("/job/rooms", json!({}), "job.rooms: not a list"),
        ("/job/rooms/0", json!("x"), "job.rooms[0]: not fields by name"),
        (
            "/job/rooms/0/surfaces/1/kind",
            json!("roof"),
            "job.rooms[0].surfaces[1].kind: unknown name `roof`",
        ),
        (
            "/job/rooms/0/surfaces/0/behind",
            json!("room"),
            "job.rooms[0].surfaces[0].behind: unknown name `room`",
        ),
        (
            "/job/rooms/0/surfaces/0/behind",
            json!({"outdoors": 1}),
            "job.rooms[0].surfaces[0].behind: unknown name `outdoors`",
        ),
        (
            "/job/rooms/0/surfaces/0/u_value",
            json!({"listed": "partition", "own": 8}),
            "job.rooms[0].surfaces[0].u_value: second choice `own`",
        ),
        (
            "/job/rooms/0/surfaces/0/behind/room",
            json!("1"),
            "job.rooms[0].surfaces[0].behind.room: not a whole number",
        ),
        (
            "/job/rooms/0/surfaces/0/u_value/listed",
            json!("straw"),
            "job.rooms[0].surfaces[0].u_value.listed: unknown name `straw`",
        ),
        (
            "/job/rooms/0/surfaces/0/openings/1/entries/r/unit",
            json!("Furlong"),
            "job.rooms[0].surfaces[0].openings[1].entries.r.unit: unknown name `Furlong`",
        ),
        (
            "/job/element/points/0/water",
            json!("60"),
            "job.element.points[0].water: not fields by name",
        ),
        ("/job/element/stock_ft/1", json!(256), "job.element.stock_ft[1]: number out of range"),
        ("/job/element/stock_ft/1", json!(null), "job.element.stock_ft[1]: not a whole number"),
    ];
    for (pointer, wrong, error) in cases {
        let mut file = full();
        *file.pointer_mut(pointer).expect(pointer) = wrong;
        assert_eq!(read(&file), Err(error.to_string()), "{pointer}");
    }
}

/// As a field that is blank has no entry.
#[test]
fn a_text_of_spaces_is_none() {
    let mut file = full();
    file["job"]["house"]["indoors"] = json!({"text": " \t", "unit": "Celsius"});
    assert_eq!(read(&file), read(&full()));
}

/// What a [`Value`] cannot hold.
#[test]
fn faults_of_the_text_itself_are_told() {
    let error = |text: &str| serde_json::from_str::<File>(text).expect_err("a fault").to_string();
    let twice =
        |member: &str, more: &str| joined(FULL).replacen(member, &format!("{member}{more}"), 1);
    assert!(
        error(&twice("\"elevation_m\":-3,", "\"elevation_m\":-3,"))
            .starts_with("job.station: duplicate field `elevation_m` at line 1 column 2")
    );
    assert!(
        error(&twice("\"house\":{", "\"wind\":{\"text\":\"5\",\"unit\":\"WindMetrePerSecond\"},"))
            .starts_with("job.house: duplicate field `wind`")
    );
    assert!(
        error(&FULL.replacen("\"rooms\":[", "\"rooms\":[[", 1))
            .starts_with("job.rooms[0]: not fields")
    );
    // Deeper than serde_json goes, both where something is read and where it is passed over.
    let deep = "[".repeat(100_000);
    assert!(error(&format!("{{\"later\":{deep}")).starts_with("recursion limit exceeded"));
    assert!(error(&format!("{{\"job\":{{\"rooms\":{deep}")).starts_with("job.rooms[0]"));
}

/// Any JSON: words of the file among it, so that it comes further than the first name.
fn any_json() -> impl Strategy<Value = Value> {
    let words = select(
        &["room", "listed", "own", "text", "unit", "Foot", "wall", "outdoors", "id", "length", "u"]
            [..],
    );
    let text = prop_oneof![words.prop_map(str::to_string), any::<String>()];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        (0..12_u32).prop_map(Value::from),
        text.clone().prop_map(Value::from),
    ];
    leaf.prop_recursive(4, 24, 4, move |inner| {
        let members = proptest::collection::vec((text.clone(), inner.clone()), 0..4);
        prop_oneof![
            proptest::collection::vec(inner, 0..4).prop_map(Value::from),
            members.prop_map(|members| Value::Object(members.into_iter().collect())),
        ]
    })
}

/// A file that is read comes back the same from what is written of it.
fn check(outcome: Result<File, serde_json::Error>) -> Result<(), TestCaseError> {
    if let Ok(file) = outcome {
        let again: Result<File, _> = serde_json::from_str(&write(&file));
        prop_assert_eq!(again.map_err(|error| error.to_string()), Ok(file));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn any_json_anywhere_is_read_or_refused(wrong in any_json(), at in any::<Index>()) {
        let mut file = full();
        let pointers = pointers(&file);
        *file.pointer_mut(&pointers[at.index(pointers.len())]).expect("its place") = wrong;
        check(serde_json::from_value(file.clone()))?;
        check(serde_json::from_str(&file.to_string()))?;
    }

    #[test]
    fn any_text_anywhere_is_read_or_refused(
        text in "[\\PC\"{},:\\[\\]\\\\0-9a-z]{0,4}", at in any::<Index>(), cut in 0..4_usize,
    ) {
        let full: Vec<char> = joined(FULL).chars().collect();
        let at = at.index(full.len() - cut);
        let spliced = full[..at].iter().copied().chain(text.chars()).chain(full[at + cut..].iter().copied());
        check(serde_json::from_str(&spliced.collect::<String>()))?;
    }
}
