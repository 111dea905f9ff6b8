//! Words of the drawings: keys, titles, what each shows for who cannot see it.

use super::{Book, in_both};
use finrun_engine::job::Arrangement;
use finrun_text as text;
use finrun_text::Mark;

#[test]
fn words_of_the_drawings() {
    let tell = |book: &mut Book| {
        for (key, sentence) in text::DRAWING_WORDS {
            book.add(key, sentence());
        }
        for &mark in Mark::ALL {
            book.add(format!("{mark:?}"), text::mark(mark));
        }
        book.add("elevation", text::elevation_title("Kitchen", "north wall"));
        for (windows, doors, pieces) in [(1, 0, "8 ft"), (2, 1, "8 ft, 3 ft")] {
            let said = text::elevation_picture(
                &text::in_units("12 ft"),
                &text::in_units("8 ft"),
                windows,
                doors,
                &text::in_units(pieces),
            );
            book.add(format!("{windows} {doors}"), said);
        }
        book.add("plan", text::route_title("First floor"));
        book.add("plan said", text::route_picture("First floor", "Kitchen, Bath"));
        book.add("plan said, bare", text::route_picture("Third floor", ""));
        book.add("sides", text::by(&text::in_units("12 ft"), &text::in_units("8 ft 6 in")));
        let [one, other] = text::by_lines(&text::in_units("12 ft"), &text::in_units("8 ft 6 in"));
        book.add("sides, above", one);
        book.add("sides, below", other);
        book.add("element", text::element_of(&text::in_units("8 ft")));
        book.add("zone", text::zone_line("A", "Upstairs", text::arrangement(Arrangement::Series)));
        book.add("boiler room", text::boiler_room_picture(&[Mark::Circulator, Mark::Boiler]));
        book.add("boiler", text::must_give(&text::in_units("40,000 Btu/h")));
        book.add("set", text::set_at(&text::in_units("12.0 psi")));
        book.add("tank", text::tank_of(&text::in_units("4.5 gal"), &text::in_units("12.0 psi")));
        book.add("return", text::back_at_least(&text::in_units("130 °F")));
        book.add(
            "circulator",
            text::flow_at(&text::in_units("4.0 gpm"), &text::in_units("6.1 ft"), false),
        );
        book.add(
            "circulators",
            text::flow_at(&text::in_units("4.0 gpm"), &text::in_units("6.1 ft"), true),
        );
    };
    insta::assert_snapshot!(in_both(tell));
}
