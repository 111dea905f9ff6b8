//! The words of the page itself: headings, buttons, and sentences that count.

use super::{Book, in_both};
use crate::support::{DEMO, open};
use finrun_engine::quantity::{System, Transmittance, Unit};
use finrun_text as text;

#[test]
fn words_of_the_page() {
    let tell = |book: &mut Book| {
        for (name, words) in text::WORDS {
            book.add(name, words());
        }
        assert!(text::WORDS.len() > 100, "{}", text::WORDS.len());
    };
    insta::assert_snapshot!(in_both(tell));
}

/// Nothing, one, and several read as a person says them.
#[test]
fn sentences_that_count() {
    let tell = |book: &mut Book| {
        for count in [0, 1, 3] {
            book.add(format!("missing {count}"), text::missing_count(count));
            book.add(format!("rooms done {count} of 3"), text::rooms_done(count, 3));
            book.add(format!("checks to see {count}"), text::checks_to_see(count));
            book.add(format!("checks hold {count}"), text::checks_hold(count));
            book.add(format!("pieces {count}"), text::pieces(count));
            book.add(format!("rooms short {count}"), text::rooms_short(count));
        }
        book.add("rooms done of none", text::rooms_done(0, 0));
    };
    insta::assert_snapshot!(in_both(tell));
}

/// Of each house to look around in, every name is there in each language.
#[test]
fn names_of_the_demo_houses() {
    let demos = [
        DEMO,
        include_str!("../../../public/demo/two-storey.json"),
        include_str!("../../../public/demo/cottage.json"),
    ];
    let mut names: Vec<String> = demos
        .into_iter()
        .flat_map(|demo| open(demo).names_mut().map(|name| name.clone()).collect::<Vec<_>>())
        .filter(|name| !name.is_empty())
        .collect();
    names.sort();
    names.dedup();
    let tell = |book: &mut Book| {
        for name in &names {
            book.add(name, text::demo_name(name).unwrap_or_else(|| panic!("{name} is not there")));
        }
    };
    insta::assert_snapshot!(in_both(tell));
    assert_eq!(text::demo_name("Our house"), None);
}

#[test]
fn sentences_with_names_in_them() {
    let tell = |book: &mut Book| {
        let unit = text::in_units;
        let spoken =
            text::spoken_result(&unit("10,731 Btu/h"), &unit("27 ft"), &text::checks_to_see(2));
        let fitted =
            text::fitted(&unit("600 Btu/h·ft"), "180 °F", &unit("1.38"), &unit("4 Btu/h·ft"));
        let all = [
            ("deleted", text::deleted("Our house")),
            ("brought back", text::brought_back("Our house")),
            ("copy", text::copy_name("Our house")),
            ("act", text::act_on(text::remove(), "Kitchen")),
            ("cannot save", text::cannot_save("")),
            ("cannot save, with a reason", text::cannot_save("quota")),
            ("bad file", text::bad_file("line 3")),
            ("file not kept", text::file_not_kept("quota")),
            ("us", text::units_name(System::Us).to_string()),
            ("si", text::units_name(System::Si).to_string()),
            ("spoken", spoken),
            ("free", text::free_for_baseboard(&unit("9 ft"))),
            ("wall", text::wall_picture("Garden side")),
            ("loop", text::loop_picture("180 °F", "160 °F")),
            ("bill", text::bill_name(0)),
            ("through the ground", text::through_ground("Floor")),
            ("swing", text::coldest_month_adds("Garden side")),
            ("slab's edge", text::slab_edge_of("Floor")),
            ("back", text::back_to("Rooms")),
            ("short", text::short_by("420 Btu/h")),
            ("row", text::table_row(2)),
            ("remove row", text::table_row_remove(2)),
            ("pipe", text::pipe_to("Kitchen")),
            ("pressure", text::pressure_lost("Kitchen")),
            ("water", text::water_after("Kitchen")),
            ("assumed", text::assumed_value(&unit("8 ft"))),
            ("title", text::title(&["Kitchen", text::new_job_name(), "Finrun"])),
            ("own assembly", text::own_u(Transmittance::of(0.05, Unit::UsU), System::Us)),
            ("own assembly in SI", text::own_u(Transmittance::of(0.05, Unit::UsU), System::Si)),
            ("fitted", fitted),
        ];
        for (key, message) in all {
            book.add(key, message);
        }
    };
    insta::assert_snapshot!(in_both(tell));
}
