//! Drafts with something wrong in them: the fields that are wrong are named, no others, and
//! nothing panics.

use crate::random_house::full_houses;
use crate::support::{V1_FIXTURE, V2_FIXTURE, fields, open, set};
use finrun_engine::building::{Material, Place, RoomId, RoomUse, SurfaceKind};
use finrun_engine::design::design;
use finrun_engine::job::{
    AirBasis, AirField, AssemblyField, Behind, BillField, BillsField, ChangeField, CircuitField,
    Draft, ElementField, Field, FlowBasis, HouseField, LayerDraft, LayerField, LayerMaterial,
    OpeningField, PointField, RatingBasis, RoomDraft, RoomField, Shape, SurfaceField, UValue, read,
    resolve,
};
use finrun_engine::job::{Antifreeze, BoilerKind, PlantField, PumpKind, TankHeating};
use proptest::prelude::*;
use proptest::sample::Index;
use std::collections::BTreeSet;

/// Texts that no field takes: unreadable, or beyond every bound.
const GARBAGE: [&str; 14] = [
    "abc",
    "--5",
    "NaN",
    "inf",
    "1/0",
    "1e99",
    "7 6 5",
    "🔥",
    "٧",
    "-",
    "12 parsecs",
    "1,2,3",
    "99999999",
    "-99999999",
];

/// Whether the reader looks at a field: not the U of a listed wall, not the drop of a typed flow.
fn is_read(draft: &Draft, field: Field) -> bool {
    let typed = |field| draft.entry(field).is_some();
    match field {
        Field::House(of) => house_is_read(draft, of),
        Field::Air(AirField::BlowerFlow | AirField::BlowerExponent) => {
            draft.air.basis == AirBasis::BlowerDoor
        }
        Field::Air(AirField::LeakageArea) => draft.air.basis == AirBasis::LeakageArea,
        Field::Air(AirField::Supply | AirField::Exhaust | AirField::Recovery) => true,
        Field::Ground(_) | Field::Certainty(_) => true,
        // A typed U wins over a typed R, and that over the layers.
        Field::Assembly(_, AssemblyField::U) => true,
        Field::Assembly(id, AssemblyField::R) => !typed(Field::Assembly(id, AssemblyField::U)),
        Field::Layer(id, row, of) => {
            let layer = &draft.assembly(id).expect("its assembly").layers[row];
            [AssemblyField::U, AssemblyField::R].iter().all(|&by| !typed(Field::Assembly(id, by)))
                && layer_needs(layer, of)
        }
        // Held against a finished design, and read there.
        Field::Bills(BillsField::Indoors) => !draft.bills.list.is_empty(),
        // The year counts with these without any bill.
        Field::Bills(_) => true,
        // Days hold no number.
        Field::Bill(_, BillField::From | BillField::To) => false,
        Field::Bill(..) => true,
        Field::Stock => false,
        Field::Stocked(feet, _) => draft.element.stock_ft.contains(&feet),
        Field::Price(_) | Field::Spare(_) | Field::Cut(_) => true,
        Field::SizedPrice(tube, _) => draft.sized_prices.iter().any(|of| of.tube == tube),
        Field::Measured(_) | Field::Spot(..) => true,
        Field::Change(_, ChangeField::Cost) => true,
        Field::Change(id, of) => draft.change(id).expect("its change").asked().contains(&of),
        Field::Element(ElementField::Output | ElementField::Water | ElementField::Exponent) => {
            draft.element.rating_basis == RatingBasis::Single
        }
        Field::Element(_) => true,
        Field::Point(..) => draft.element.rating_basis == RatingBasis::Table,
        Field::Circuit(CircuitField::Drop) => draft.flow_basis != FlowBasis::Typed,
        Field::Circuit(CircuitField::Flow) => draft.flow_basis == FlowBasis::Typed,
        Field::Circuit(_) | Field::Part(_) | Field::Zone(..) | Field::Leg(..) => true,
        Field::Plant(PlantField::LeastReturn) => draft.plant.boiler == BoilerKind::NonCondensing,
        Field::Plant(PlantField::TankOutput) => draft.plant.tank != TankHeating::None,
        Field::Plant(PlantField::GlycolShare) => draft.plant.antifreeze != Antifreeze::None,
        Field::Plant(_) | Field::Control(_) => true,
        // Counts while some circulator has the typed curve.
        Field::PumpPoint(..) => draft.pump.kind == PumpKind::Points,
        Field::Room(room, of) => room_is_read(draft, room, of),
        Field::Surface(room, id, of) => {
            let surface = draft.surface(room, id).expect("its surface");
            let on_ground = surface.behind == Behind::Ground;
            match of {
                SurfaceField::U => surface.u_value == UValue::TypedU,
                SurfaceField::R => surface.u_value == UValue::TypedR,
                SurfaceField::BehindTemperature => surface.behind == Behind::Unheated,
                SurfaceField::Length | SurfaceField::Height | SurfaceField::Free => {
                    surface.kind == SurfaceKind::Wall
                }
                SurfaceField::Area => true,
                SurfaceField::Depth => on_ground,
                SurfaceField::Perimeter => on_ground && surface.kind == SurfaceKind::Floor,
                // Chosen, not typed.
                SurfaceField::Behind | SurfaceField::Fixed => false,
            }
        }
        Field::Opening(room, surface, id, of) => {
            let opening = draft.opening(room, surface, id).expect("its opening");
            let surface = draft.surface(room, surface).expect("its surface");
            match of {
                OpeningField::U => opening.u_value == UValue::TypedU,
                OpeningField::R => opening.u_value == UValue::TypedR,
                OpeningField::FromLeft => surface.kind == SurfaceKind::Wall,
                OpeningField::Width | OpeningField::Height => true,
            }
        }
    }
}

fn house_is_read(draft: &Draft, field: HouseField) -> bool {
    match field {
        HouseField::AirChanges => draft.air.basis == AirBasis::Class,
        HouseField::MeanTemperature | HouseField::ColdestMonth => draft
            .all_rooms()
            .flat_map(|room| &room.surfaces)
            .any(|surface| surface.behind == Behind::Ground),
        _ => true,
    }
}

fn room_is_read(draft: &Draft, id: RoomId, field: RoomField) -> bool {
    let room = draft.room(id).expect("its room");
    let typed = |of| draft.entry(Field::Room(id, of)).is_some();
    let heated = room.used == RoomUse::Heated;
    // A space of which nothing is known is as large as what leads to it.
    let measured = !typed(RoomField::FloorArea)
        && (heated
            || typed(RoomField::FloorLength)
            || typed(RoomField::FloorWidth)
            || !something_leads_to(draft, id));
    match field {
        RoomField::FloorLength | RoomField::FloorWidth => measured,
        RoomField::CutLength | RoomField::CutWidth => measured && room.shape == Shape::LShape,
        RoomField::VentArea => room.used == RoomUse::CrawlSpace,
        // The water passes heated rooms only, and other heat counts there.
        RoomField::PipeTo
        | RoomField::Elbows
        | RoomField::PipeBack
        | RoomField::ElbowsBack
        | RoomField::BranchPipe
        | RoomField::BranchElbows
        | RoomField::TeeSpacing
        | RoomField::OtherHeat
        | RoomField::Damper => heated,
        _ => true,
    }
}

/// Whether a ceiling or floor of a heated room leads to this space.
fn something_leads_to(draft: &Draft, space: RoomId) -> bool {
    let surfaces = draft.rooms.iter().flat_map(|room| &room.surfaces);
    surfaces.into_iter().any(|s| s.behind == Behind::Room(space) && s.kind != SurfaceKind::Wall)
}

/// A thickness counts where heat crosses it or wood is as deep; a typed R has its own field.
fn layer_needs(layer: &LayerDraft, field: LayerField) -> bool {
    let fixed = match layer.material {
        LayerMaterial::TypedR => true,
        LayerMaterial::Listed(material) => matches!(
            material,
            // Blocks, shingles, siding and air spaces have one resistance each, as they are made.
            Material::HollowBlock8
                | Material::HollowBlock12
                | Material::AsphaltShingles
                | Material::VinylSiding
                | Material::AirCavity
        ),
    };
    match field {
        LayerField::R => layer.material == LayerMaterial::TypedR,
        LayerField::Thickness => !fixed || layer.place == Place::BetweenFraming,
    }
}

/// Types each garbage into its field and holds the reader to naming exactly those that it reads.
fn check(mut draft: Draft, slips: &[(Field, &str)]) -> Result<(), TestCaseError> {
    for &(field, text) in slips {
        set(&mut draft, field, text);
    }
    let reading = read(&draft);
    // In a blank row of the maker's table the other cell is now missing, and so is the other side
    // of a space that was as large as what leads to it.
    let blank = |field: &Field| draft.entry(*field).is_none();
    let other = |field: &Field| match *field {
        Field::Point(row, PointField::Water) => Some(Field::Point(row, PointField::Output)),
        Field::Point(row, PointField::Output) => Some(Field::Point(row, PointField::Water)),
        Field::Room(id, RoomField::FloorLength) => Some(Field::Room(id, RoomField::FloorWidth)),
        Field::Room(id, RoomField::FloorWidth) => Some(Field::Room(id, RoomField::FloorLength)),
        _ => None,
    };
    let slipped = slips.iter().map(|(field, _)| *field);
    let expected: BTreeSet<String> = slipped
        .clone()
        .chain(slipped.filter_map(|field| other(&field).filter(blank)))
        .filter(|&field| is_read(&draft, field))
        .map(|field| field.to_string())
        .collect();
    let found: BTreeSet<String> =
        reading.errors.iter().map(|error| error.field.to_string()).collect();
    prop_assert_eq!(&found, &expected, "{:?}", &reading.errors);
    prop_assert_eq!(reading.errors.len(), found.len(), "a field named twice");
    for error in &reading.errors {
        let typed = draft.entry(error.field).map(|entry| entry.text.clone()).unwrap_or_default();
        prop_assert_eq!(&error.typed, &typed);
    }
    // What is whole is still designed; what is not, is left out.
    if let Some(job) = reading.job {
        let wrong: Vec<Field> = reading.errors.iter().map(|error| error.field).collect();
        // A space may wait for the measures of the rooms that lead to it.
        let waits = |id| resolve(&draft, Field::Room(id, RoomField::FloorArea)).si().is_none();
        let whole =
            |room: &&RoomDraft| !wrong.iter().any(|&field| breaks(field, room)) && !waits(room.id);
        let heated: Vec<RoomId> = draft.rooms.iter().filter(whole).map(|room| room.id).collect();
        let spaces: Vec<RoomId> = draft.spaces.iter().filter(whole).map(|room| room.id).collect();
        let job_rooms: Vec<RoomId> = job.house.rooms.iter().map(|room| room.id).collect();
        let job_spaces: Vec<RoomId> = job.house.spaces.iter().map(|space| space.id).collect();
        prop_assert_eq!(&job_rooms, &heated);
        prop_assert_eq!(&job_spaces, &spaces);
        let design = design(&job);
        prop_assert_eq!(design.rooms.len(), heated.len());
        prop_assert_eq!(design.spaces.len(), spaces.len());
    }
    Ok(())
}

/// Whether a room cannot be whole while this field is wrong: its own, or of what it is built of.
fn breaks(field: Field, room: &RoomDraft) -> bool {
    match field {
        // How it is run through the year is read beside it.
        Field::Room(_, RoomField::Damper) => false,
        Field::Room(id, _) | Field::Surface(id, ..) | Field::Opening(id, ..) => id == room.id,
        Field::Assembly(id, _) | Field::Layer(id, ..) => {
            let own = UValue::Own(id);
            room.surfaces.iter().any(|s| {
                s.u_value == own || s.openings.iter().any(|opening| opening.u_value == own)
            })
        }
        _ => false,
    }
}

fn garbage() -> impl Strategy<Value = &'static str> {
    proptest::sample::select(&GARBAGE[..])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn fields_that_cannot_be_read_are_named(
        draft in full_houses(),
        slips in proptest::collection::vec((any::<Index>(), garbage()), 1..4),
    ) {
        let fields = fields(&draft);
        let slips: Vec<(Field, &str)> =
            slips.iter().map(|(index, text)| (fields[index.index(fields.len())], *text)).collect();
        check(draft, &slips)?;
    }

    /// Any text in any field, with any unit of any other kind beside it: never a panic, and a
    /// number that is none never gets in.
    #[test]
    fn no_text_in_any_field_panics(
        draft in full_houses(), index in any::<Index>(), text in any::<String>(), other in any::<Index>(),
    ) {
        let mut draft = draft;
        let fields = fields(&draft);
        let field = fields[index.index(fields.len())];
        let units = finrun_engine::quantity::Unit::ALL;
        let unit = units[other.index(units.len())];
        draft.set_entry(field, finrun_engine::job::Entry { text, unit });
        if let Some(job) = read(&draft).job {
            prop_assert_eq!(design(&job).rooms.len(), job.house.rooms.len());
        }
    }
}

/// The same, field by field, on the files that use every feature of their version.
#[test]
fn each_field_of_the_fixtures_is_named_when_it_is_wrong() {
    for (text, least) in [(V1_FIXTURE, 90), (V2_FIXTURE, 190)] {
        let draft = open(text);
        let mut read_fields = 0;
        for field in fields(&draft) {
            for text in GARBAGE {
                check(draft.clone(), &[(field, text)])
                    .unwrap_or_else(|e| panic!("{field} {text}: {e}"));
            }
            read_fields += usize::from(is_read(&draft, field));
        }
        assert!(read_fields > least, "{read_fields}");
    }
    // A blank row of the maker's table becomes a row with one cell missing.
    let draft = open(V1_FIXTURE);
    let blank = draft.element.points.iter().position(|p| p.get(PointField::Water).is_none());
    assert_eq!(blank, Some(2));
}
