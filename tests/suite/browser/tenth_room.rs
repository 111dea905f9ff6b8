//! The tenth room costs little: a copy with a new name and two other sizes.

use super::house::type_all;
use super::jobs::many_rooms;
use super::page::View;
use super::place::Place;
use super::solved::solve;
use super::visit;

/// Copy, open the copy, its name, its two sizes.
const STEPS: usize = 5;

/// F2.
#[test]
fn the_tenth_room_is_a_copy_with_a_name_and_two_sizes() {
    visit(View::Phone, |page| {
        page.open_job(&many_rooms(9), Place::Rooms);
        let load = page.text_of("[data-figure='plate.load']");
        let before = page.steps.get();
        page.press("Copy Room 9");
        page.press("Room 9, copy");
        page.type_into("Name", "Tenth");
        type_all(page, &[("Floor, length", "11"), ("Floor, width", "9' 6\"")]);
        assert_eq!(page.steps.get() - before, STEPS);

        page.wait_until_saved();
        let solved = solve(page);
        assert_eq!(solved.rooms().len(), 10);
        let at =
            solved.draft.rooms.iter().position(|room| room.name == "Room 9").expect("it is kept");
        let (ninth, tenth) = (&solved.draft.rooms[at], &solved.draft.rooms[at + 1]);
        assert_eq!(tenth.name, "Tenth", "it lies behind the one that it was copied from");
        assert_eq!(tenth.surfaces.len(), ninth.surfaces.len());
        assert_ne!(page.text_of("[data-figure='plate.load']"), load);
        // 11 ft by 9.5 ft, worked by hand.
        let area = solved.job.house.rooms[at + 1].floor_area.si();
        assert!((area - 104.5 * 0.3048 * 0.3048).abs() < 1e-9, "{area} m2");
    });
}
