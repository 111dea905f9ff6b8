//! Words of the report: where numbers come from, what was assumed, by which methods.

use super::{Book, one_of_each_field};
use crate::shipped::SHIPPED;
use crate::support::{V3_FIXTURE, open};
use finrun_engine::building::{Assembly, RoomId};
use finrun_engine::job::{AirBasis, Field, GroundMethod, HouseField, InputOrigin, RatingBasis};
use finrun_engine::network::Place;
use finrun_engine::quantity::{Length, System, Unit};
use finrun_engine::trace::Topic;
use finrun_text as text;

#[test]
fn words_of_the_report() {
    let mut book = Book::default();
    for (name, words) in text::REPORT_WORDS {
        book.add(name, words());
    }
    for origin in [
        InputOrigin::Measured,
        InputOrigin::Label,
        InputOrigin::Given,
        InputOrigin::Table,
        InputOrigin::Worked,
        InputOrigin::Assumed,
    ] {
        let (letter, word) = text::input_origin(origin);
        book.add(format!("{origin:?}"), format!("{letter} {word}"));
    }
    let two = ["Kitchen".to_string(), "2 in Hall".to_string()];
    let ways = ["A larger boiler".to_string(), "Less flow".to_string()];
    for (key, message) in [
        ("with origin", text::with_origin("12 ft", InputOrigin::Measured)),
        ("made by", text::made_by("0.1.0", 4, "1")),
        ("title", text::report_title("Our house")),
        ("assumption", text::assumption("Exponent", "1.4", &[])),
        ("assumption somewhere", text::assumption("Height", "8 ft", &two)),
        ("assumption without a number", text::assumption("Windows stand evenly", "", &two)),
        ("once", text::times_in(1, "Hall")),
        ("twice", text::times_in(2, "Hall")),
        ("left out", text::left_out(&["Kitchen".to_string(), "Hall".to_string()])),
        ("pieces", text::pieces_of(2, "8 ft")),
        ("wall", text::on_wall("North wall", "8 ft + 2 ft")),
        ("water", text::from_into("180 °F", "170 °F")),
        ("named", text::named("Circulator", "Upstairs")),
        ("kind", text::of_kind("Width", "Window")),
        ("inside", text::inside_of("Window 1")),
        ("stock", text::stock_feet("2, 4, 8")),
        ("headed", text::check_headed("look at this", "Loop: velocity 1.1 ft/s")),
        ("ways", text::ways_out(&ways)),
        ("holds", text::checks_hold_beside(3)),
        ("rough", text::rough_length(Length::of(1001.0, Unit::Foot).into(), System::Us)),
        ("rough in SI", text::rough_length(Length::of(1001.0, Unit::Foot).into(), System::Si)),
    ] {
        book.add(key, message);
    }
    insta::assert_snapshot!(book.text());
}

/// What heads a working, and labels that stand by themselves.
#[test]
fn titles_of_workings_and_whole_labels() {
    let mut book = Book::default();
    let (room, place) = (RoomId(1), Place::To(RoomId(1)));
    for topic in [
        Topic::HouseLoad,
        Topic::RoomLoad(room),
        Topic::PathLoss(room, finrun_engine::building::Path::Air),
        Topic::SpaceTemperature(room),
        Topic::HouseAir,
        Topic::Band,
        Topic::ListedU(Assembly::SlabBare),
        Topic::PerArea(room),
        Topic::Needed(room),
        Topic::Output(room),
        Topic::Over(room),
        Topic::Pieces(room),
        Topic::Element,
        Topic::RuleOfThumb(room),
        Topic::Flow,
        Topic::Pipe(place),
        Topic::Drop,
        Topic::Velocity,
        Topic::Pressure(place),
        Topic::Head,
        Topic::BoilerHeat,
        Topic::NeededOutput,
        Topic::SystemVolume,
        Topic::TankSize,
        Topic::FillPressure,
    ] {
        book.add(format!("{topic:?}"), text::worked_title(topic, "Hall"));
    }
    for (key, field) in one_of_each_field() {
        if text::whole_label(field) != text::field_label(field) {
            book.add(&key, text::whole_label(field));
        }
        if let Some(words) = text::without_number(field) {
            book.add(format!("{key} without number"), words);
        }
    }
    let draft = open(SHIPPED[0]);
    book.add("owned", text::owned_label(&draft, Field::House(HouseField::Margin)));
    insta::assert_snapshot!(book.text());
}

/// Each method that a job may choose says so, and no other.
#[test]
fn methods_of_the_jobs() {
    let mut book = Book::default();
    let mut say = |key: &str, draft: &finrun_engine::job::Draft| {
        for (nth, method) in text::methods(draft, System::Us).into_iter().enumerate() {
            book.add(format!("{key} {nth}"), method);
        }
    };
    let mut draft = open(SHIPPED[0]);
    say("bungalow", &draft);
    draft.air.basis = AirBasis::BlowerDoor;
    draft.ground.method = GroundMethod::FFactor;
    draft.element.rating_basis = RatingBasis::Table;
    crate::support::set(&mut draft, Field::House(HouseField::Margin), "10");
    say("changed", &draft);
    say("two storeys", &open(SHIPPED[1]));
    say("fixture", &open(V3_FIXTURE));
    insta::assert_snapshot!(book.text());
}
