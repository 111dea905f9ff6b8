//! Files that mean harm, or were damaged on their way: whatever stands in one, it is refused in words
//! or designed, without a panic and without a number that is none.
//!
//! `PROPTEST_CASES=1000000 cargo test --release -p finrun-tests hostile` is the long form.

use crate::support::{
    DEMO, FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE,
};
use finrun_engine::arrangement::Proof;
use finrun_engine::design::design;
use finrun_engine::job::{File, Header, read};
use finrun_engine::quantity::System;
use finrun_text as text;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use serde_json::{Value, json};

const FILES: [&str; 8] =
    [DEMO, FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE];

/// What is done to a file; places are shares of its length or of its values.
#[derive(Debug, Clone)]
enum Harm {
    /// One value is replaced, wherever it stands.
    Value(Index, Value),
    /// One member of an object or list is doubled or dropped.
    Member(Index, Index, bool),
    /// The value at one place is put to another.
    Moved(Index, Index),
}

fn texts() -> impl Strategy<Value = String> {
    prop_oneof![
        select(vec![
            "",
            " ",
            "0",
            "-0",
            "1e308",
            "-1e308",
            "1e-320",
            "NaN",
            "inf",
            "∞",
            "--5",
            "5'",
            "5' 13\"",
            "1/0",
            "0/0",
            "9999999999999999999999999",
            "1,234.5",
            "1.234,5",
            "٣٫٥",
            "ⅷ",
            "½",
            "<b>&\"'",
            "\u{202e}abc",
            "\u{0}",
            "🏠🏠",
            "=1+1",
            "70 F 80 F",
            "12 m³",
            "1e",
            "e5",
            "+",
            "'",
            "\"",
            "first",
            "outdoors",
            "us",
            "si",
        ])
        .prop_map(str::to_owned),
        "\\PC{0,12}",
        "[-+0-9.,eE/'\" a-z]{0,10}",
        Just("x".repeat(10_000)),
        (-1e6..1e6).prop_map(|number: f64| format!("{number}")),
        (0.0..200.0).prop_map(|number: f64| format!("{number:.1}")),
    ]
}

fn values() -> impl Strategy<Value = Value> {
    prop_oneof![
        4 => texts().prop_map(|text| json!({"text": text, "unit": "Foot"})),
        4 => texts().prop_map(Value::from),
        1 => Just(Value::Null),
        1 => any::<bool>().prop_map(Value::from),
        1 => any::<i64>().prop_map(Value::from),
        1 => any::<u32>().prop_map(Value::from),
        2 => (0_u32..120).prop_map(Value::from),
        1 => any::<f64>().prop_map(|number| json!(number)),
        1 => Just(json!([])),
        1 => Just(json!({})),
        1 => Just(json!([[[[[[[[{}]]]]]]]])),
        1 => texts().prop_map(|text| json!({ text: {} })),
    ]
}

fn harms() -> impl Strategy<Value = Harm> {
    prop_oneof![
        5 => (any::<Index>(), values()).prop_map(|(at, value)| Harm::Value(at, value)),
        2 => (any::<Index>(), any::<Index>(), any::<bool>())
            .prop_map(|(at, member, doubled)| Harm::Member(at, member, doubled)),
        2 => (any::<Index>(), any::<Index>()).prop_map(|(from, to)| Harm::Moved(from, to)),
    ]
}

/// The paths of all values, the whole among them.
fn paths(value: &Value, path: &str, out: &mut Vec<String>) {
    out.push(path.to_owned());
    match value {
        Value::Object(members) => members.iter().for_each(|(name, member)| {
            let name = name.replace('~', "~0").replace('/', "~1");
            paths(member, &format!("{path}/{name}"), out);
        }),
        Value::Array(members) => members
            .iter()
            .enumerate()
            .for_each(|(at, member)| paths(member, &format!("{path}/{at}"), out)),
        _ => {}
    }
}

fn harm(file: &mut Value, harm: &Harm) {
    let mut all = Vec::new();
    paths(file, "", &mut all);
    match harm {
        Harm::Value(at, value) => {
            if let Some(place) = file.pointer_mut(&all[at.index(all.len())]) {
                *place = value.clone();
            }
        }
        Harm::Moved(from, to) => {
            let value = file.pointer(&all[from.index(all.len())]).cloned();
            if let (Some(value), Some(place)) = (value, file.pointer_mut(&all[to.index(all.len())]))
            {
                *place = value;
            }
        }
        Harm::Member(at, member, doubled) => match file.pointer_mut(&all[at.index(all.len())]) {
            Some(Value::Array(members)) if !members.is_empty() => {
                let at = member.index(members.len());
                match doubled {
                    true => members.insert(at, members[at].clone()),
                    false => drop(members.remove(at)),
                }
            }
            Some(Value::Object(members)) if !members.is_empty() => {
                let name = members.keys().nth(member.index(members.len())).cloned();
                members.remove(&name.unwrap_or_default());
            }
            _ => {}
        },
    }
}

/// As the page opens a file, and all that it says of it.
fn open_and_say(text: &str) -> Result<(), String> {
    let header: Header = serde_json::from_str(text).map_err(|error| error.to_string())?;
    header.check().map_err(|error| text::file_problem(&error))?;
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let draft = file.open().map_err(|error| text::file_problem(&error))?;
    let again = serde_json::to_string(&File::new(draft.clone())).expect("a file");
    let again: File = serde_json::from_str(&again).expect("what was opened can be opened again");
    assert!(again.open().as_ref() == Ok(&draft), "it came back changed");
    let reading = read(&draft);
    for system in [System::Us, System::Si] {
        for error in &reading.errors {
            assert!(!text::problem_at(&draft, error, system).is_empty());
        }
    }
    if let Some(job) = reading.job {
        let mut design = design(&job);
        if design.together.proof == Proof::Unsettled {
            // What was not found has no value, and the page says that it was not found.
            design.together.value = 0.0;
        }
        let all = format!("{design:?}");
        let bad = all
            .split(|c: char| !c.is_ascii_alphanumeric())
            .find(|word| ["NaN", "inf"].contains(word));
        assert!(bad.is_none(), "{all}");
        for check in &design.checks {
            for system in [System::Us, System::Si] {
                let said =
                    text::check_title(check, &draft, system) + &text::check_detail(check, system);
                assert!(!said.contains("NaN") && !said.contains("inf "), "{said}");
                check.remedies.iter().for_each(|one| drop(text::remedy(*one, system)));
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { max_shrink_iters: 2000, ..ProptestConfig::default() })]

    #[test]
    fn a_harmed_file_is_refused_in_words_or_designed(
        file in select(FILES.to_vec()),
        list in prop::collection::vec(harms(), 1..6),
    ) {
        let mut file: Value = serde_json::from_str(file).expect("JSON");
        for one in &list {
            harm(&mut file, one);
        }
        if let Err(said) = open_and_say(&file.to_string()) {
            prop_assert!(!said.is_empty());
        }
    }

    #[test]
    fn a_file_with_letters_changed_is_refused_in_words_or_designed(
        file in select(FILES.to_vec()),
        list in prop::collection::vec((any::<Index>(), "\\PC{0,3}", any::<bool>()), 1..4),
        cut in prop::option::of(any::<Index>()),
    ) {
        let mut letters: Vec<char> = file.chars().collect();
        for (at, text, replace) in &list {
            let at = at.index(letters.len());
            letters.splice(at..at + usize::from(*replace), text.chars());
        }
        if let Some(cut) = cut {
            letters.truncate(cut.index(letters.len()));
        }
        let text: String = letters.into_iter().collect();
        if let Err(said) = open_and_say(&text) {
            prop_assert!(!said.is_empty());
        }
    }
}
