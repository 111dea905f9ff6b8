//! The words of zones, ways to rooms, balancing and practice.

use super::{Book, in_both};
use crate::support::{DEMO, open};
use finrun_engine::arrangement::Rule;
use finrun_engine::building::RoomId;
use finrun_engine::job::{Arrangement, Draft, Way};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Length, Power, System, Unit};
use finrun_text as text;

fn feet(feet: f64) -> Length {
    Length::of(feet, Unit::Foot)
}

/// One zone as it is, and two, the second split.
fn drafts() -> (Draft, Draft) {
    let one = open(DEMO);
    let mut two = one.clone();
    let zone = two.add_zone();
    two.arrange(zone, Arrangement::Split);
    let last = two.rooms.last().map(|room| room.id).expect("a room");
    two.place_room(last, finrun_engine::job::Hung { zone, branch: 1 }, None);
    two.zones[0].name = "Upstairs".to_string();
    (one, two)
}

#[test]
fn words_of_the_piping() {
    let tell = |book: &mut Book| {
        for &arrangement in Arrangement::ALL {
            book.add(format!("{arrangement:?}"), text::arrangement(arrangement));
            book.add(format!("{arrangement:?} note"), text::arrangement_note(arrangement));
        }
        book.add("loop", text::loop_name(1));
        book.add("step", text::step_name(0));
        for (elbows, end_caps) in [(0, 2), (1, 1), (5, 0)] {
            let way = Way { length: feet(12.5), elbows, end_caps };
            book.add(format!("way {elbows} {end_caps}"), text::way(way, System::Us));
        }
        let way = Way { length: feet(12.5), elbows: 4, end_caps: 2 };
        book.add("way in SI", text::way(way, System::Si));
        book.add("element", text::element_of_usual(feet(30.0), None, System::Us));
        let most = Some(feet(66.0));
        book.add("element of usual", text::element_of_usual(feet(30.0), most, System::Us));
        book.add("watts", text::watts(Power::from_si(13.7)));
        book.add("throttled", text::valve_order(1, false));
        book.add("open", text::valve_order(3, true));
        book.add("pressure", text::above_tank(&text::in_units("1.8 psi")));
        book.add("alone", text::alone("Upstairs"));
        book.add(
            "point",
            text::operating_point(
                text::arrangement(Arrangement::Series),
                &text::in_units("5.4 gpm"),
                &text::in_units("6.1 ft"),
                false,
            ),
        );
        book.add(
            "point planned",
            text::operating_point(
                text::arrangement(Arrangement::Series),
                &text::in_units("5.4 gpm"),
                &text::in_units("6.1 ft"),
                true,
            ),
        );
        book.add("chart", text::pump_picture("Upstairs"));
        for (name, draft) in [("one", drafts().0), ("two", drafts().1)] {
            let (zone, room) = (draft.zones[0].id, draft.rooms[0].id);
            let last = draft.rooms.last().map(|room| room.id).expect("a room");
            let last_zone = draft.zones.last().map(|zone| zone.id).expect("a zone");
            book.add(format!("{name}: fact"), text::piping_fact(&draft));
            book.add(
                format!("{name}: room"),
                text::hung_line(&draft, room, &text::in_units("120 ft²")),
            );
            book.add(
                format!("{name}: last room"),
                text::hung_line(&draft, last, &text::in_units("120 ft²")),
            );
            let rules = [
                Rule::Element(zone, room),
                Rule::Element(last_zone, last),
                Rule::Drop,
                Rule::Flow,
                Rule::Head,
            ];
            for (at, rule) in rules.into_iter().enumerate() {
                book.add(format!("{name}: rule {at}"), text::rule(&draft, rule));
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

/// An unheated space hangs nowhere.
#[test]
fn a_space_has_no_zone_before_its_line() {
    let (_, draft) = drafts();
    assert_eq!(text::hung_line(&draft, RoomId(99_999), "50 °F"), "50 °F");
}
