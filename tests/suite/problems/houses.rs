//! Houses that cannot be: each is named at its field, with its limit and a way out, the rest of the
//! house is still worked, and what was typed stays.

use super::field;
use crate::support::{V2_FIXTURE, add_room, add_wall, cold_day, house, open, room, set};
use finrun_engine::building::{
    AssemblyId, Place, Position, RoomId, RoomUse, SurfaceId, SurfaceKind,
};
use finrun_engine::job::{
    Behind, Draft, Entry, Field, File, HouseField, LayerField, LayerMaterial, RoomField, Shape,
    SurfaceField, UValue, read,
};
use finrun_engine::quantity::System;
use finrun_text as text;

/// The errors of a draft, by field and in the words of the page; and how many rooms are left.
fn check(draft: &Draft, expected: &[(&str, &str)], rooms_left: usize) {
    let reading = read(draft);
    let found: Vec<(String, String)> = reading
        .errors
        .iter()
        .map(|error| {
            let words = text::problem(error, System::Us).replace('\u{a0}', " ");
            (error.field.to_string(), words)
        })
        .collect();
    let expected: Vec<(String, String)> =
        expected.iter().map(|&(path, words)| (path.to_string(), words.to_string())).collect();
    assert_eq!(found, expected);
    let left = reading.job.map_or(0, |job| job.house.rooms.len());
    assert_eq!(left, rooms_left, "{expected:?}");
    for error in &reading.errors {
        let typed = draft.entry(error.field).map(|entry| entry.text.clone()).unwrap_or_default();
        assert_eq!(error.typed, typed);
    }
    // A file keeps it as it is, wrong or not.
    let file = serde_json::to_string(&File::new(draft.clone())).expect("a file");
    assert_eq!(&open(&file), draft);
}

const FIRST: RoomId = RoomId(1);
const FIRST_WALL: SurfaceId = SurfaceId(2);
const SECOND: RoomId = RoomId(3);

/// Two rooms of 12 by 10 ft with one wall each: `room-1` with `surface-2`, `room-3` with `surface-4`.
fn two_rooms() -> Draft {
    let mut draft = cold_day();
    for name in ["First", "Second"] {
        let id = add_room(&mut draft, name, "12", "10");
        add_wall(&mut draft, id, "12", "0.1");
    }
    check(&draft, &[], 2);
    draft
}

/// The second fixture with these fields typed anew.
fn typed(changes: &[(&str, &str)]) -> Draft {
    let mut draft = open(V2_FIXTURE);
    for (path, text) in changes {
        let field = field(&draft, path);
        set(&mut draft, field, text);
    }
    draft
}

#[test]
fn negative_and_absurd_sizes() {
    let cases = [
        ("room-104.floor-length", "-15", "“-15” is less than 1 ft. It takes 1 ft to 200 ft."),
        ("room-104.floor-length", "1500", "“1500” is more than 200 ft. It takes 1 ft to 200 ft."),
        ("room-104.height", "0", "“0” is less than 1 ft. It takes 1 ft to 40 ft."),
        (
            "room-104.surface-25.length",
            "0' 3\"",
            "“0' 3\"” is less than 6 in. It takes 6 in to 200 ft.",
        ),
        (
            "room-104.surface-25.opening-24.width",
            "-3",
            "“-3” is less than 3 in. It takes 3 in to 60 ft.",
        ),
        ("room-104.temperature", "700", "“700” is more than 90 °F. It takes −60 °F to 90 °F."),
        (
            "room-104.air-changes",
            "-1",
            "“-1” is less than 0 per hour. It takes 0 per hour to 60 per hour.",
        ),
    ];
    for (path, slip, words) in cases {
        check(&typed(&[(path, slip)]), &[(path, words)], 3);
    }
    // What all rooms share stops the whole job.
    let cases = [
        ("air.blower-flow", "-1450", "“-1450” is less than 20 cfm. It takes 20 cfm to 20,000 cfm."),
        ("air.recovery", "170", "“170” is more than 95 %. It takes 0 % to 95 %."),
        ("ground.edge-thickness", "-2", "“-2” is less than 0.25 in. It takes 0.25 in to 24 in."),
        ("certainty.listed", "200", "“200” is more than 90 %. It takes 0 % to 90 %."),
        ("house.wind", "-5", "“-5” is less than 0 mph. It takes 0 mph to 60 mph."),
    ];
    for (path, slip, words) in cases {
        check(&typed(&[(path, slip)]), &[(path, words)], 0);
    }
    // A space that cannot be read is left out: the rooms beside it stand, as if it were as warm.
    let slip = [("room-106.floor-length", "-22")];
    let words = "“-22” is less than 1 ft. It takes 1 ft to 200 ft.";
    check(&typed(&slip), &[("room-106.floor-length", words)], 4);
}

#[test]
fn a_room_no_warmer_than_the_design_day() {
    let words = "The room must be warmer than the design day of 50 °F. Correct one of the two.";
    // Once for all rooms that have the house's temperature; none of them is worked.
    let mut draft = two_rooms();
    house(&mut draft, HouseField::Outdoors, "50");
    house(&mut draft, HouseField::Indoors, "45");
    check(&draft, &[("house.indoors", words)], 0);
    room(&mut draft, SECOND, RoomField::Temperature, "68");
    check(&draft, &[("house.indoors", words)], 1);
    // A room of its own temperature is told itself.
    house(&mut draft, HouseField::Indoors, "70");
    room(&mut draft, SECOND, RoomField::Temperature, "50");
    check(&draft, &[("room-3.temperature", words)], 1);
    room(&mut draft, SECOND, RoomField::Temperature, "50.1");
    check(&draft, &[], 2);
    // An unheated space may be as cold as it was measured.
    let mut draft = typed(&[("room-109.temperature", "-20")]);
    check(&draft, &[], 4);
    set(&mut draft, Field::House(HouseField::Outdoors), "-15");
    check(&draft, &[], 4);
}

#[test]
fn a_coldest_month_warmer_than_the_year() {
    let words =
        "The coldest month cannot be warmer than the year's mean of 47 °F. Correct one of the two.";
    let draft = typed(&[("house.coldest-month", "48")]);
    check(&draft, &[("house.coldest-month", words)], 0);
    check(&typed(&[("house.coldest-month", "47")]), &[], 4);
}

/// No list offers it; an edited file may have it.
#[test]
fn a_room_behind_its_own_wall() {
    let mut draft = two_rooms();
    draft.surface_mut(FIRST, FIRST_WALL).expect("its wall").behind = Behind::Room(FIRST);
    let words = "This leads to its own room. Choose what lies on the other side.";
    check(&draft, &[("room-1.surface-2.behind", words)], 1);
}

#[test]
fn a_wall_to_a_room_that_was_removed() {
    let mut draft = two_rooms();
    draft.surface_mut(FIRST, FIRST_WALL).expect("its wall").behind = Behind::Room(SECOND);
    check(&draft, &[], 2);
    let whole = draft.clone();
    draft.remove_room(SECOND);
    let words = "The room or space behind it is gone. Choose what lies there now, or undo.";
    check(&draft, &[("room-1.surface-2.behind", words)], 0);
    // What is there still leads to it.
    assert_eq!(draft.rooms[0], whole.rooms[0]);
    // A space likewise.
    let mut draft = open(V2_FIXTURE);
    draft.remove_room(RoomId(107));
    check(&draft, &[("room-102.surface-17.behind", words)], 3);
}

#[test]
fn a_basement_deeper_than_its_wall() {
    let mut draft = two_rooms();
    house(&mut draft, HouseField::MeanTemperature, "50");
    house(&mut draft, HouseField::ColdestMonth, "25");
    draft.set_behind(FIRST, FIRST_WALL, Behind::Ground);
    let depth = Field::Surface(FIRST, FIRST_WALL, SurfaceField::Depth);
    set(&mut draft, depth, "8");
    check(&draft, &[], 2);
    set(&mut draft, depth, "8' 1\"");
    let words = "It reaches deeper than its wall of 8 ft. Make the depth less, or the wall higher.";
    check(&draft, &[("room-1.surface-2.depth", words)], 1);
    // Held against a typed height as well, and below any wall there is a bound.
    set(&mut draft, Field::Surface(FIRST, FIRST_WALL, SurfaceField::Height), "9");
    check(&draft, &[], 2);
    set(&mut draft, depth, "31");
    let words = "“31” is more than 30 ft. It takes 0 ft to 30 ft.";
    check(&draft, &[("room-1.surface-2.depth", words)], 1);
    set(&mut draft, depth, "-1");
    let words = "“-1” is less than 0 ft. It takes 0 ft to 30 ft.";
    check(&draft, &[("room-1.surface-2.depth", words)], 1);
}

#[test]
fn a_corner_cut_out_that_leaves_nothing() {
    let mut draft = two_rooms();
    draft.room_mut(FIRST).expect("the room").shape = Shape::LShape;
    let cut = |draft: &mut Draft, length: &str, width: &str| {
        room(draft, FIRST, RoomField::CutLength, length);
        room(draft, FIRST, RoomField::CutWidth, width);
    };
    cut(&mut draft, "11' 11\"", "9' 11\"");
    check(&draft, &[], 2);
    let length = "The cut takes the room's whole 12 ft. Make the cut smaller, or the room larger.";
    let width = "The cut takes the room's whole 10 ft. Make the cut smaller, or the room larger.";
    // Longer than the room though its area is smaller.
    cut(&mut draft, "13", "2");
    check(&draft, &[("room-1.cut-length", length)], 1);
    cut(&mut draft, "2", "10");
    check(&draft, &[("room-1.cut-width", width)], 1);
    cut(&mut draft, "20", "20");
    check(&draft, &[("room-1.cut-length", length), ("room-1.cut-width", width)], 1);
    // A typed area stands for the whole shape, and a rectangle has no cut.
    room(&mut draft, FIRST, RoomField::FloorArea, "90");
    check(&draft, &[], 2);
    room(&mut draft, FIRST, RoomField::FloorArea, "");
    draft.room_mut(FIRST).expect("the room").shape = Shape::Rectangle;
    check(&draft, &[], 2);
}

/// Two rooms whose first wall is built of an assembly of the user's own.
fn own_wall(layers: usize) -> (Draft, AssemblyId) {
    let mut draft = two_rooms();
    let id = draft.add_assembly(Position::Wall, "Old wall");
    for _ in 0..layers {
        draft.add_layer(id);
    }
    draft.surface_mut(FIRST, FIRST_WALL).expect("its wall").u_value = UValue::Own(id);
    (draft, id)
}

#[test]
fn an_own_assembly_that_was_removed() {
    let (mut draft, id) = own_wall(1);
    set(&mut draft, Field::Layer(id, 0, LayerField::Thickness), "1/2");
    check(&draft, &[], 2);
    draft.remove_assembly(id);
    let words = "The assembly that it was built of is gone. Choose another, or undo.";
    check(&draft, &[("room-1.surface-2.u", words)], 1);
    let built = draft.surface(FIRST, FIRST_WALL).expect("its wall").u_value;
    assert_eq!(built, UValue::Own(id));
}

#[test]
fn an_own_assembly_without_layers() {
    let (mut draft, id) = own_wall(0);
    let words = "It has no layers yet. Add them, or type its U-value or R-value.";
    check(&draft, &[("assembly-5.u", words)], 1);
    // A layer that waits for its thickness, one of nonsense, one of a typed R without its R.
    draft.add_layer(id);
    let missing = "Missing. Type inches, or millimetres.";
    check(&draft, &[("assembly-5.layer-1.thickness", missing)], 1);
    set(&mut draft, Field::Layer(id, 0, LayerField::Thickness), "-1");
    let words = "“-1” is less than 0.01 in. It takes 0.01 in to 48 in.";
    check(&draft, &[("assembly-5.layer-1.thickness", words)], 1);
    set(&mut draft, Field::Layer(id, 0, LayerField::Thickness), "1/2");
    check(&draft, &[], 2);
    let layer = &mut draft.assembly_mut(id).expect("the assembly").layers[0];
    layer.material = LayerMaterial::TypedR;
    check(&draft, &[("assembly-5.layer-1.r", "Missing. Type a number.")], 1);
    draft.assembly_mut(id).expect("the assembly").layers[0].place = Place::BetweenFraming;
    set(&mut draft, Field::Layer(id, 0, LayerField::R), "11");
    set(&mut draft, Field::Layer(id, 0, LayerField::Thickness), "");
    check(&draft, &[("assembly-5.layer-1.thickness", missing)], 1);
    // A typed value makes the layers good.
    let typed = finrun_engine::job::AssemblyField::R;
    set(&mut draft, Field::Assembly(id, typed), "12");
    check(&draft, &[], 2);
}

/// Under a space of which nothing is known, the rooms' measures are asked for, not the space's.
#[test]
fn a_space_waits_for_the_rooms_beside_it() {
    let mut draft = two_rooms();
    let attic = draft.add_space(RoomUse::Attic, "");
    let missing = "Missing. Type feet and inches, or metres.";
    let asked = [("room-5.floor-length", missing), ("room-5.floor-width", missing)];
    check(&draft, &asked, 2);
    draft.add_surface_to(FIRST, SurfaceKind::Ceiling, Behind::Room(attic)).expect("a ceiling");
    check(&draft, &[], 2);
    assert_eq!(read(&draft).job.expect("a job").house.spaces.len(), 1);
    room(&mut draft, FIRST, RoomField::FloorWidth, "ten");
    let words = "“ten” cannot be read: “ten” is no number. Write 7' 6 1/2\", 7.5 ft or 2.3 m.";
    check(&draft, &[("room-1.floor-width", words)], 1);
    assert_eq!(read(&draft).job.expect("a job").house.spaces.len(), 0);
}

/// A number that no box can take still stands in its box, and in the file.
#[test]
fn what_is_typed_stays_whatever_it_is() {
    let mut draft = two_rooms();
    let field = Field::Surface(FIRST, FIRST_WALL, SurfaceField::Length);
    for text in ["🔥", "-1e9", "12 parsecs", "1,200", "\u{202e}21", "9".repeat(500).as_str()] {
        let unit = draft.box_unit(field);
        draft.set_entry(field, Entry { text: text.to_string(), unit });
        let error = read(&draft).errors.into_iter().next().expect("an error");
        assert_eq!((error.field, error.typed.as_str()), (field, text));
        assert_eq!(finrun_engine::job::box_text(&draft, field), text);
        let file = serde_json::to_string(&File::new(draft.clone())).expect("a file");
        assert_eq!(open(&file), draft);
    }
}
