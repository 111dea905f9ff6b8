//! Words of the report: where numbers come from, what was assumed, by which methods.

use super::{Book, in_both, one_of_each_field};
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
    let tell = |book: &mut Book| {
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
        let spanish = text::language() == text::Language::Spanish;
        let either = |english: &'static str, spanish_words: &'static str| {
            if spanish { spanish_words } else { english }
        };
        let two = ["Kitchen".to_string(), text::times_in(2, "Hall")];
        let ways =
            [either("A larger boiler", "Una caldera mayor"), either("Less flow", "Menos caudal")]
                .map(str::to_string);
        for (key, message) in [
            ("with origin", text::with_origin(&text::in_units("12 ft"), InputOrigin::Measured)),
            ("made by", text::made_by("0.1.0", 4, "1")),
            ("title", text::report_title("Our house")),
            ("assumption", text::assumption(either("Exponent", "Exponente"), "1.4", &[])),
            (
                "assumption somewhere",
                text::assumption(either("Height", "Altura"), &text::in_units("8 ft"), &two),
            ),
            (
                "assumption without a number",
                text::assumption(either("Windows stand evenly", "Ventanas por igual"), "", &two),
            ),
            ("once", text::times_in(1, "Hall")),
            ("twice", text::times_in(2, "Hall")),
            ("left out", text::left_out(&["Kitchen".to_string(), "Hall".to_string()])),
            ("pieces", text::pieces_of(2, &text::in_units("8 ft"))),
            ("wall", text::on_wall("North wall", &text::in_units("8 ft + 2 ft"))),
            ("water", text::from_into(&text::in_units("180 °F"), &text::in_units("170 °F"))),
            ("named", text::named(either("Circulator", "Circulador"), "Upstairs")),
            ("kind", text::of_kind(either("Width", "Ancho"), either("Window", "Ventana"))),
            ("inside", text::inside_of(either("Window 1", "Ventana 1"))),
            ("stock", text::stock_feet("2, 4, 8")),
            (
                "headed",
                text::check_headed(
                    either("look at this", "vea esto"),
                    either("Loop: velocity 1.1 ft/s", "Circuito: velocidad 1.1 pie/s"),
                ),
            ),
            ("ways", text::ways_out(&ways)),
            ("holds", text::checks_hold_beside(3)),
            ("rough", text::rough_length(Length::of(1001.0, Unit::Foot).into(), System::Us)),
            ("rough in SI", text::rough_length(Length::of(1001.0, Unit::Foot).into(), System::Si)),
        ] {
            book.add(key, message);
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

/// What heads a working, and labels that stand by themselves.
#[test]
fn titles_of_workings_and_whole_labels() {
    let tell = |book: &mut Book| {
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
    };
    insta::assert_snapshot!(in_both(tell));
}

/// Each method that a job may choose says so, and no other.
#[test]
fn methods_of_the_jobs() {
    let tell = |book: &mut Book| {
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
    };
    insta::assert_snapshot!(in_both(tell));
}
