//! Words of the drawings: keys, titles, what each shows for who cannot see it.

use super::Book;
use finrun_text as text;
use finrun_text::Mark;

#[test]
fn words_of_the_drawings() {
    let mut book = Book::default();
    for (key, sentence) in text::DRAWING_WORDS {
        book.add(key, sentence());
    }
    for &mark in Mark::ALL {
        book.add(format!("{mark:?}"), text::mark(mark));
    }
    book.add("elevation", text::elevation_title("Kitchen", "north wall"));
    for (windows, doors, pieces) in [(1, 0, "8 ft"), (2, 1, "8 ft, 3 ft")] {
        let said = text::elevation_picture("12 ft", "8 ft", windows, doors, pieces);
        book.add(format!("{windows} {doors}"), said);
    }
    book.add("plan", text::route_title("First floor"));
    book.add("plan said", text::route_picture("First floor", "Kitchen, Bath"));
    book.add("plan said, bare", text::route_picture("Third floor", ""));
    book.add("sides", text::by("12 ft", "8 ft 6 in"));
    let [one, other] = text::by_lines("12 ft", "8 ft 6 in");
    book.add("sides, above", one);
    book.add("sides, below", other);
    book.add("element", text::element_of("8 ft"));
    book.add("zone", text::zone_line("A", "Upstairs", "Series loop"));
    book.add("boiler room", text::boiler_room_picture(&[Mark::Circulator, Mark::Boiler]));
    book.add("boiler", text::must_give("40,000 Btu/h"));
    book.add("set", text::set_at("12.0 psi"));
    book.add("tank", text::tank_of("4.5 gal", "12.0 psi"));
    book.add("return", text::back_at_least("130 °F"));
    book.add("circulator", text::flow_at("4.0 gpm", "6.1 ft", false));
    book.add("circulators", text::flow_at("4.0 gpm", "6.1 ft", true));
    insta::assert_snapshot!(book.text());
}
