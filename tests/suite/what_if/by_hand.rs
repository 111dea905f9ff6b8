//! The same changes made by hand: in the file, or with the buttons of the rooms' pages.

use crate::shipped::SHIPPED;
use crate::support::{open, room, set};
use finrun_engine::building::{Level, OpeningKind, RoomId, SurfaceKind};
use finrun_engine::design::design;
use finrun_engine::job::{
    AirBasis, Behind, ChangeField, ChangeKind, Draft, Field, File, OutsideWalls, RoomField, UValue,
    Whose, read,
};
use finrun_engine::what_if::apply;
use serde_json::{Value, json};

/// The draft as a file's JSON, with `edit` done to each wall, ceiling and floor: with its room, and whether
/// that is heated.
fn edited(draft: &Draft, edit: impl Fn(&Value, bool, &mut Value)) -> Draft {
    let mut file = serde_json::to_value(File::new(draft.clone())).expect("a file");
    for list in ["rooms", "spaces"] {
        for room in file["job"][list].as_array_mut().expect("a list") {
            let owner = room.clone();
            for surface in room["surfaces"].as_array_mut().expect("a list") {
                edit(&owner, list == "rooms", surface);
            }
        }
    }
    serde_json::from_value::<File>(file).expect("a file").open().expect("a job")
}

/// Whether what lies behind a surface is one of these rooms or spaces.
fn leads_to(surface: &Value, ids: &[u32]) -> bool {
    surface["behind"]["room"].as_u64().is_some_and(|id| ids.iter().any(|&i| u64::from(i) == id))
}

/// A kind of surface with the condition by which a user would find it.
type Found = fn(&Value, bool, &Value, &[u32], &[u32]) -> bool;

const SURFACES: [(ChangeKind, Found); 7] = [
    (ChangeKind::OutsideWalls, |_, heated, s, _, _| {
        heated && s["kind"] == "wall" && s["behind"] == "outdoors"
    }),
    (ChangeKind::WallsToUnheated, |_, heated, s, rooms, spaces| {
        let own = heated && (s["behind"] == "unheated" || leads_to(s, spaces));
        s["kind"] == "wall" && (own || (!heated && leads_to(s, rooms)))
    }),
    (ChangeKind::Ceilings, |_, heated, s, rooms, spaces| match heated {
        true => {
            let out = s["behind"] == "outdoors" || s["behind"] == "unheated";
            s["kind"] == "ceiling" && (out || leads_to(s, spaces))
        }
        false => s["kind"] == "floor" && leads_to(s, rooms),
    }),
    (ChangeKind::Roofs, |room, _, s, _, _| {
        room["used"] == "attic" && s["kind"] == "ceiling" && s["behind"] == "outdoors"
    }),
    (ChangeKind::Floors, |_, heated, s, rooms, spaces| match heated {
        true => {
            let out = s["behind"] == "outdoors" || s["behind"] == "unheated";
            s["kind"] == "floor" && (out || leads_to(s, spaces))
        }
        false => s["kind"] == "ceiling" && leads_to(s, rooms),
    }),
    (ChangeKind::Slabs, |_, heated, s, _, _| {
        heated && s["kind"] == "floor" && s["behind"] == "ground"
    }),
    (ChangeKind::GroundWalls, |_, _, s, _, _| s["kind"] == "wall" && s["behind"] == "ground"),
];

fn ids(draft: &Draft) -> (Vec<u32>, Vec<u32>) {
    let of = |rooms: &[finrun_engine::job::RoomDraft]| rooms.iter().map(|r| r.id.0).collect();
    (of(&draft.rooms), of(&draft.spaces))
}

/// The same draft, and so the same design.
fn alike(changed: &Draft, by_hand: &Draft) {
    let plain = |draft: &Draft| Draft { what_if: Vec::new(), next_id: 0, ..draft.clone() };
    assert_eq!(plain(changed), plain(by_hand));
    let job = |draft| read(draft).job.expect("a job");
    assert_eq!(design(&job(changed)), design(&job(by_hand)));
}

#[test]
fn surfaces_are_built_anew_as_by_hand() {
    let mut reached = Vec::new();
    for text in SHIPPED.into_iter().chain([crate::support::V2_FIXTURE]) {
        let plain = open(text);
        let (rooms, spaces) = ids(&plain);
        for (kind, found) in SURFACES {
            let mut draft = plain.clone();
            super::add_u(&mut draft, kind, "0.041");
            let by_hand = edited(&plain, |room, heated, surface| {
                if found(room, heated, surface, &rooms, &spaces) {
                    surface["u_value"] = json!("typed-u");
                    surface["entries"]["u"] = draft_entry(&draft);
                }
            });
            alike(&apply(&draft), &by_hand);
            if by_hand != plain {
                reached.push(kind);
            }
        }
    }
    // Every kind stands in some house.
    assert!(SURFACES.iter().all(|(kind, _)| reached.contains(kind)), "{reached:?}");
}

/// The typed U as it stands in the file.
fn draft_entry(draft: &Draft) -> Value {
    let file = serde_json::to_value(File::new(draft.clone())).expect("a file");
    file["job"]["what_if"][0]["entries"]["u"].clone()
}

/// In what keeps heat in, and in one room alone where that is chosen.
#[test]
fn openings_are_changed_as_by_hand() {
    for text in SHIPPED {
        let plain = open(text);
        let first = plain.rooms[0].id;
        let cases: [(ChangeKind, &str, &[&str]); 3] = [
            (ChangeKind::Windows, "window", &["wall"]),
            (ChangeKind::Skylights, "window", &["ceiling", "floor"]),
            (ChangeKind::Doors, "door", &["wall", "ceiling", "floor"]),
        ];
        let (rooms, _) = ids(&plain);
        for (kind, opening, within) in cases {
            for whose in [Whose::House, Whose::Room(first)] {
                let mut draft = plain.clone();
                let id = super::add_u(&mut draft, kind, "0.21");
                draft.change_mut(id).expect("it").whose = whose;
                let by_hand = edited(&plain, |room, heated, surface| {
                    let own = whose == Whose::House || room["id"] == json!(first.0);
                    let inner = surface["behind"] == "same-temperature"
                        || (heated && leads_to(surface, &rooms));
                    let shared = !heated
                        && match whose {
                            Whose::House => leads_to(surface, &rooms),
                            Whose::Room(id) => leads_to(surface, &[id.0]),
                        };
                    let kind = surface["kind"].as_str().expect("a kind").to_string();
                    if inner || !((own && heated) || shared) || !within.contains(&kind.as_str()) {
                        return;
                    }
                    for one in surface["openings"].as_array_mut().expect("a list") {
                        if one["kind"] == opening {
                            one["u_value"] = json!("typed-u");
                            one["entries"]["u"] = draft_entry(&draft);
                        }
                    }
                });
                alike(&apply(&draft), &by_hand);
            }
        }
    }
}

/// From the list as typed, and by R.
#[test]
fn a_listed_assembly_and_an_r_are_taken() {
    let plain = open(SHIPPED[0]);
    let mut draft = plain.clone();
    let id = draft.add_change(ChangeKind::Ceilings);
    let listed = draft.change(id).expect("it").build;
    let UValue::Listed(assembly) = listed else { panic!("{listed:?}") };
    let by_hand = |u_value: Value, r: Option<Value>| {
        edited(&plain, |_, heated, surface| {
            if heated && surface["kind"] == "ceiling" {
                surface["u_value"] = u_value.clone();
                if let Some(r) = &r {
                    surface["entries"]["r"] = r.clone();
                }
            }
        })
    };
    let name = finrun_engine::named::Named::name(assembly);
    alike(&apply(&draft), &by_hand(json!({ "listed": name }), None));
    draft.change_mut(id).expect("it").build = UValue::TypedR;
    set(&mut draft, Field::Change(id, ChangeField::R), "R-60");
    let r = json!({ "text": "R-60", "unit": "UsR" });
    alike(&apply(&draft), &by_hand(json!("typed-r"), Some(r)));
}

/// Windows by R, as their label may say it.
#[test]
fn windows_by_r_are_typed_as_r() {
    let plain = open(SHIPPED[0]);
    let mut draft = plain.clone();
    let id = draft.add_change(ChangeKind::Windows);
    draft.change_mut(id).expect("it").build = UValue::TypedR;
    set(&mut draft, Field::Change(id, ChangeField::R), "R-4");
    let by_hand = edited(&plain, |_, heated, surface| {
        if !heated || surface["kind"] != "wall" || surface["behind"] != "outdoors" {
            return;
        }
        for window in surface["openings"].as_array_mut().expect("a list") {
            if window["kind"] == "window" {
                window["u_value"] = json!("typed-r");
                window["entries"]["r"] = json!({ "text": "R-4", "unit": "UsR" });
            }
        }
    });
    assert_ne!(by_hand, plain);
    alike(&apply(&draft), &by_hand);
}

/// Each way to know the leaks, against the same typed and chosen on the page of air.
#[test]
fn air_is_tightened_as_by_hand() {
    for text in SHIPPED {
        let plain = open(text);
        for (leaks, field, typed) in [
            (AirBasis::Class, "", None),
            (AirBasis::Class, "air-changes", Some((ChangeField::AirChanges, "0.31", "PerHour"))),
            (
                AirBasis::BlowerDoor,
                "blower-flow",
                Some((ChangeField::BlowerFlow, "900", "AirCubicFootPerMinute")),
            ),
            (
                AirBasis::LeakageArea,
                "leakage-area",
                Some((ChangeField::LeakageArea, "60", "SquareInch")),
            ),
        ] {
            let mut draft = plain.clone();
            let id = draft.add_change(ChangeKind::Air);
            draft.change_mut(id).expect("it").leaks = leaks;
            if let Some((field, text, _)) = typed {
                set(&mut draft, Field::Change(id, field), text);
            }
            let mut file = serde_json::to_value(File::new(plain.clone())).expect("a file");
            let job = &mut file["job"];
            job["air"]["basis"] = json!(finrun_engine::named::Named::name(leaks));
            let typed = typed.map(|(_, text, unit)| json!({ "text": text, "unit": unit }));
            match leaks {
                AirBasis::Class => {
                    job["air_class"] = json!("tight");
                    let house = job["house"].as_object_mut().expect("fields");
                    house.remove("air-changes");
                    if let Some(typed) = typed {
                        house.insert(field.to_string(), typed);
                    }
                }
                _ => job["air"]["entries"][field] = typed.expect("a number"),
            }
            let by_hand = serde_json::from_value::<File>(file).expect("a file").open();
            alike(&apply(&draft), &by_hand.expect("a job"));
        }
    }
}

/// A copied room, as the button of the rooms' page makes it.
#[test]
fn a_room_like_another_is_its_copy() {
    for text in SHIPPED {
        let plain = open(text);
        let like = plain.rooms[1].id;
        let mut draft = plain.clone();
        let id = draft.add_change(ChangeKind::RoomLike);
        draft.change_mut(id).expect("it").whose = Whose::Room(like);
        let mut by_hand = plain.clone();
        // The change has the number that the copy would have had.
        by_hand.next_id = draft.next_id;
        by_hand.copy_room(like, &format!("{} 2", plain.rooms[1].name)).expect("a copy");
        alike(&apply(&draft), &by_hand);
        draft.change_mut(id).expect("it").name = "Den".to_string();
        assert_eq!(apply(&draft).rooms[2].name, "Den");
    }
}

/// Pieces that hang in a room are there once: a room like it has its own still to be bought.
#[test]
fn a_room_like_another_has_none_of_its_pieces() {
    let mut draft = open(SHIPPED[0]);
    let like = draft.rooms[0].id;
    let wall = walls_of(&draft, like)[0];
    draft.fix_pieces(like, wall, 0, vec![4, 3]);
    let id = draft.add_change(ChangeKind::RoomLike);
    draft.change_mut(id).expect("it").whose = Whose::Room(like);
    let changed = apply(&draft);
    let kept = |room: usize| changed.rooms[room].surfaces.iter().map(|s| s.fixed.len()).sum();
    let (own, copied): (usize, usize) = (kept(0), kept(1));
    assert_eq!((changed.rooms[0].id, own, copied), (like, 1, 0));
}

/// A room of typed size, as the rooms' page and the room's own make it.
#[test]
fn a_new_room_is_made_as_by_hand() {
    for text in SHIPPED {
        let plain = open(text);
        for (outside, walls) in [
            (OutsideWalls::One, 1),
            (OutsideWalls::Two, 2),
            (OutsideWalls::Three, 3),
            (OutsideWalls::Four, 4),
        ] {
            let mut draft = plain.clone();
            let id = draft.add_change(ChangeKind::NewRoom);
            let change = draft.change_mut(id).expect("it");
            (change.outside, change.name) = (outside, "Sewing room".to_string());
            change.level = Level::Third;
            for (field, text) in [
                (ChangeField::FloorLength, "14' 6\""),
                (ChangeField::FloorWidth, "11"),
                (ChangeField::Height, "7' 10\""),
                (ChangeField::Windows, "3"),
            ] {
                set(&mut draft, Field::Change(id, field), text);
            }
            let mut by_hand = plain.clone();
            by_hand.next_id = draft.next_id;
            let new = by_hand.add_room("Sewing room");
            by_hand.room_mut(new).expect("it").level = Level::Third;
            room(&mut by_hand, new, RoomField::FloorLength, "14' 6\"");
            room(&mut by_hand, new, RoomField::FloorWidth, "11");
            room(&mut by_hand, new, RoomField::Height, "7' 10\"");
            by_hand.add_shell(new);
            let all: Vec<_> = walls_of(&by_hand, new);
            for &wall in &all[walls..] {
                by_hand.set_behind(new, wall, Behind::SameTemperature);
            }
            for window in 0..3 {
                by_hand.add_opening(new, all[window % walls], OpeningKind::Window);
            }
            let changed = apply(&draft);
            alike(&changed, &by_hand);
            // 14.5 and 11 ft by turns.
            let outside: f64 = [14.5, 11.0, 14.5, 11.0][..walls].iter().sum();
            let job = read(&changed).job.expect("a job");
            let new = job.house.rooms.last().expect("the new room");
            let out = new.surfaces.iter().filter(|surface| {
                surface.kind == SurfaceKind::Wall
                    && surface.behind == finrun_engine::building::Behind::Outdoors
            });
            let found: f64 = out.map(|wall| wall.along.si()).sum();
            assert!((found - outside * 0.3048).abs() < 1e-9);
        }
    }
}

fn walls_of(draft: &Draft, id: RoomId) -> Vec<finrun_engine::building::SurfaceId> {
    let room = draft.room(id).expect("the room");
    let walls = room.surfaces.iter().filter(|surface| surface.kind == SurfaceKind::Wall);
    walls.map(|wall| wall.id).collect()
}

/// A ceiling that was entered as the attic's floor, a floor as the basement's ceiling: the room's all the
/// same, of the house and of that room; the attic's floor to the open air is nobody's.
#[test]
fn what_is_entered_on_the_other_side_is_the_rooms() {
    use crate::support::{add_room, cold_day};
    use finrun_engine::building::RoomUse;
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Room", "12", "10");
    let attic = draft.add_space(RoomUse::Attic, "");
    let basement = draft.add_space(RoomUse::Basement, "");
    let lid = draft.add_surface_to(attic, SurfaceKind::Floor, Behind::Room(room));
    let base = draft.add_surface_to(basement, SurfaceKind::Ceiling, Behind::Room(room));
    let eaves = draft.add_surface(attic, SurfaceKind::Floor);
    let changed = |kind, whose| {
        let mut draft = draft.clone();
        let id = super::add_u(&mut draft, kind, "0.03");
        draft.change_mut(id).expect("it").whose = whose;
        let changed = apply(&draft);
        [(attic, lid), (basement, base), (attic, eaves)].map(|(of, surface)| {
            let surface = changed.surface(of, surface.expect("added")).expect("there");
            surface.u_value == UValue::TypedU
        })
    };
    for whose in [Whose::House, Whose::Room(room)] {
        assert_eq!(changed(ChangeKind::Ceilings, whose), [true, false, false]);
        assert_eq!(changed(ChangeKind::Floors, whose), [false, true, false]);
    }
}
