//! The words of the page itself: headings, buttons, and sentences that count.

use super::Book;
use finrun_engine::quantity::{System, Transmittance, Unit};
use finrun_text as text;

#[test]
fn words_of_the_page() {
    let mut book = Book::default();
    for (name, words) in text::WORDS {
        book.add(name, words());
    }
    assert!(text::WORDS.len() > 100, "{}", text::WORDS.len());
    insta::assert_snapshot!(book.text());
}

/// Nothing, one, and several read as a person says them.
#[test]
fn sentences_that_count() {
    let mut book = Book::default();
    for count in [0, 1, 3] {
        book.add(format!("missing {count}"), text::missing_count(count));
        book.add(format!("rooms done {count} of 3"), text::rooms_done(count, 3));
        book.add(format!("checks to see {count}"), text::checks_to_see(count));
        book.add(format!("checks hold {count}"), text::checks_hold(count));
        book.add(format!("pieces {count}"), text::pieces(count));
        book.add(format!("rooms short {count}"), text::rooms_short(count));
    }
    book.add("rooms done of none", text::rooms_done(0, 0));
    insta::assert_snapshot!(book.text());
}

#[test]
fn sentences_with_names_in_them() {
    let mut book = Book::default();
    let all = [
        ("deleted", text::deleted("Our house")),
        ("brought back", text::brought_back("Our house")),
        ("copy", text::copy_name("Our house")),
        ("act", text::act_on("Remove", "Kitchen")),
        ("cannot save", text::cannot_save("")),
        ("cannot save, with a reason", text::cannot_save("quota")),
        ("bad file", text::bad_file("line 3")),
        ("us", text::units_name(System::Us).to_string()),
        ("si", text::units_name(System::Si).to_string()),
        ("spoken", text::spoken_result("10,731 Btu/h", "27 ft", "2 to see")),
        ("free", text::free_for_baseboard("9 ft")),
        ("wall", text::wall_picture("Wall north")),
        ("loop", text::loop_picture("180 °F", "160 °F")),
        ("bill", text::bill_name(0)),
        ("through the ground", text::through_ground("Floor")),
        ("swing", text::coldest_month_adds("North wall")),
        ("slab's edge", text::slab_edge_of("Floor")),
        ("back", text::back_to("Rooms")),
        ("short", text::short_by("420 Btu/h")),
        ("row", text::table_row(2)),
        ("remove row", text::table_row_remove(2)),
        ("pipe", text::pipe_to("Kitchen")),
        ("pressure", text::pressure_lost("Kitchen")),
        ("water", text::water_after("Kitchen")),
        ("assumed", text::assumed_value("8 ft")),
        ("title", text::title(&["Kitchen", "Our house", "Finrun"])),
        ("own assembly", text::own_u(Transmittance::of(0.05, Unit::UsU), System::Us)),
        ("own assembly in SI", text::own_u(Transmittance::of(0.05, Unit::UsU), System::Si)),
        ("fitted", text::fitted("600 Btu/h·ft", "180 °F", "1.38", "4 Btu/h·ft")),
    ];
    for (key, message) in all {
        book.add(key, message);
    }
    insta::assert_snapshot!(book.text());
}
