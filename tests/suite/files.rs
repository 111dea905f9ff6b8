//! Job files: they come back as they were saved, old ones are read forever, damaged ones refused.

use crate::random_house::houses;
use crate::support::{DEMO, FOUR_ROOMS, V1_FIXTURE, fields, open, solve};
use finrun_engine::check::{Finding, Severity};
use finrun_engine::job::{Behind, CURRENT_VERSION, Draft, File, Header, OpenError, read};
use finrun_engine::quantity::Unit;
use proptest::prelude::*;
use serde_json::{Value, json};

fn write(draft: &Draft) -> String {
    serde_json::to_string(&File::new(draft.clone())).expect("a file")
}

#[test]
fn committed_files_read_solve_and_heat_every_room() {
    for text in [DEMO, FOUR_ROOMS, V1_FIXTURE] {
        let draft = open(text);
        let (job, design) = solve(&draft);
        assert_eq!(design.rooms.len(), draft.rooms.len(), "{}", draft.name);
        assert_eq!(job.house.rooms.len(), draft.rooms.len());
        let heated = Finding::RoomsHeated { rooms: draft.rooms.len() };
        assert!(design.checks.iter().any(|check| check.finding == heated), "{}", draft.name);
        let stops = design.checks.iter().filter(|check| check.severity == Severity::Stop);
        assert_eq!(stops.count(), 0, "{}", draft.name);
        assert!(draft.name.contains("invented") || draft.name.contains("demo"), "{}", draft.name);
    }
}

/// Nothing in a file is lost or changed on the way through the draft.
#[test]
fn committed_files_come_back_to_the_letter() {
    for text in [DEMO, FOUR_ROOMS, V1_FIXTURE] {
        let draft = open(text);
        assert_eq!(open(&write(&draft)), draft);
        let (before, after): (Value, Value) = (
            serde_json::from_str(text).expect("JSON"),
            serde_json::from_str(&write(&draft)).expect("JSON"),
        );
        assert_eq!(before, after, "{}", draft.name);
    }
}

/// The first version's fixture, by what it says: this file is never changed.
#[test]
fn the_first_version_is_read_forever() {
    let draft = open(V1_FIXTURE);
    let typed = |name: &str| {
        let field = fields(&draft).into_iter().find(|field| field.to_string() == name);
        let entry = draft.entry(field.expect(name)).expect(name);
        (entry.text.clone(), entry.unit)
    };
    let cases = [
        ("house.outdoors", "-12", Unit::Celsius),
        ("room-1.floor-length", "5,2", Unit::Metre),
        ("room-1.surface-2.u", "0.45", Unit::SiU),
        ("room-1.surface-5.r", "1.2", Unit::SiR),
        ("room-1.surface-6.length", "13' 1 1/2\"", Unit::Foot),
        ("room-1.surface-2.opening-4.width", "90 cm", Unit::Metre),
        ("room-11.surface-15.area", "130 sq ft", Unit::SquareFoot),
        ("element.point-5.output", "500 Btu/h/ft", Unit::WattPerMetre),
        ("circuit.flow", "6", Unit::LitrePerMinute),
    ];
    for (name, text, unit) in cases {
        assert_eq!(typed(name), (text.to_string(), unit), "{name}");
    }
    // Its house loses what it did on the day the version was frozen, in watts; a listed assembly
    // whose layers are corrected may move it, nothing else.
    let (_, design) = solve(&draft);
    assert!((design.load.si() - 1816.49).abs() < 0.01, "{:?}", design.load);
}

#[test]
fn files_of_other_versions_are_refused_by_name() {
    let header = |version: u32| -> Header {
        serde_json::from_value(json!({ "finrun": version, "anything": ["else"] }))
            .expect("a header")
    };
    assert_eq!(header(CURRENT_VERSION).check(), Ok(()));
    let newer = CURRENT_VERSION + 1;
    assert_eq!(header(newer).check(), Err(OpenError::Newer { version: newer }));
    assert_eq!(header(0).check(), Err(OpenError::UnknownVersion { version: 0 }));
    assert!(serde_json::from_str::<Header>("{\"job\": {}}").is_err());
}

/// What the fixture becomes when `damage` is done to it.
fn damaged(damage: impl Fn(&mut Value)) -> Result<Draft, OpenError> {
    let mut file: Value = serde_json::from_str(V1_FIXTURE).expect("JSON");
    damage(&mut file);
    serde_json::from_value::<File>(file).expect("the shape of a file").open()
}

type Damage<'a> = &'a dyn Fn(&mut Value);

#[test]
fn damaged_files_are_refused_by_name() {
    let repeat = |items: &Value, count: usize| Value::from(vec![items[0].clone(); count]);
    let cases: [(&str, Damage<'_>, OpenError); 6] = [
        ("version", &|file| file["finrun"] = json!(7), OpenError::Newer { version: 7 }),
        (
            "a room with the id of a surface",
            &|file| file["job"]["rooms"][1]["id"] = json!(2),
            OpenError::RepeatedId { id: 2 },
        ),
        (
            "an id still to be given out",
            &|file| file["job"]["next_id"] = json!(15),
            OpenError::RepeatedId { id: 15 },
        ),
        (
            "too many rooms",
            &|file| file["job"]["rooms"] = repeat(&file["job"]["rooms"], 201),
            OpenError::TooLarge { count: 201, most: 200 },
        ),
        (
            "too many surfaces",
            &|file| {
                let surfaces = repeat(&file["job"]["rooms"][0]["surfaces"], 101);
                file["job"]["rooms"][0]["surfaces"] = surfaces;
            },
            OpenError::TooLarge { count: 101, most: 100 },
        ),
        (
            "a piece of 11 ft",
            &|file| file["job"]["element"]["stock_ft"] = json!([2, 11]),
            OpenError::StockLength { feet: 11 },
        ),
    ];
    for (what, damage, error) in cases {
        assert_eq!(damaged(damage), Err(error), "{what}");
    }
    // A room that leads nowhere is mended as if that room had been removed.
    let mended = damaged(|file| {
        file["job"]["rooms"][0]["surfaces"][2]["behind"] = json!({ "room": 999 });
    });
    let mended = mended.expect("a sound job");
    assert_eq!(mended.rooms[0].surfaces[2].behind, Behind::SameTemperature);
    assert!(read(&mended).errors.is_empty());
}

proptest! {
    #[test]
    fn any_draft_comes_back_from_its_file(draft in houses(), name in any::<String>()) {
        let mut draft = draft;
        draft.name = name;
        prop_assert_eq!(open(&write(&draft)), draft);
    }
}
