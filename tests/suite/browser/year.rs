//! The pages of the house in use: what they show against what `solve --season`, `--design-day` and
//! `--cooler` print.

mod figures;

use finrun_text as text;

use super::figures::compare;
use super::looks::Theme;
use super::page::View;
use super::piping::solve_saved;
use super::place::Place;
use super::visit;
use crate::support::FOUR_ROOMS;
use figures::found;
pub(super) use figures::{figures, printed};

const TWO_STOREY: &str = include_str!("../../../public/demo/two-storey.json");

const IN_USE: [Place; 3] = [Place::Season, Place::DesignDay, Place::Cooler];

#[test]
fn the_house_in_use_is_as_solve_has_it() {
    visit(View::Phone, |page| {
        page.open_job(TWO_STOREY, Place::Season);
        // In both units.
        for _ in 0..2 {
            let solved = solve_saved(page);
            for place in IN_USE {
                assert!(compare(page, &solved, place) > 20, "{place:?}");
                assert_eq!(page.sideways(), "");
            }
            page.press("Units");
        }
        // A night that is not there is said so, and a heavier house comes with other numbers.
        page.go(Place::DesignDay);
        page.choose(
            "How heavy the house is built",
            "Heavy: masonry or concrete inside the insulation",
        );
        compare(page, &solve_saved(page), Place::DesignDay);
        page.type_into("Turned down for the night by", "0");
        compare(page, &solve_saved(page), Place::DesignDay);
    });
}

#[test]
fn what_the_year_wants_is_said() {
    visit(View::Desk, |page| {
        page.open_job(FOUR_ROOMS, Place::Season);
        let solved = solve_saved(page);
        assert_eq!(solved.draft.station, None);
        for place in IN_USE {
            compare(page, &solved, place);
        }
        page.go(Place::DesignDay);
        page.type_into("For so many hours", "many");
        page.go(Place::Season);
        page.wait_for_text(text::season_cannot_read());
        // And nothing is offered to better what is not known.
        page.wait_until_gone(text::comfort_title());
        // The design stands meanwhile.
        page.go(Place::Loop);
        page.wait_for("[data-figure=head]");
    });
}

#[test]
fn a_change_that_helps_is_made_by_a_tap_and_undone() {
    visit(View::Phone, |page| {
        page.open_job(TWO_STOREY, Place::Season);
        let before = solve_saved(page);
        let (_, found) = found(&before);
        let relief = found.first().expect("something helps");
        compare(page, &before, Place::Season);
        let title = text::comfort_change(&before.draft, relief.change);
        page.press(&format!("{}: {title}", text::make_change()));
        page.settle();
        let after = solve_saved(page);
        assert_eq!(after.draft, relief.draft);
        assert_ne!(after.draft, before.draft);
        compare(page, &after, Place::Season);
        page.press("Undo");
        page.settle();
        assert_eq!(solve_saved(page).draft, before.draft);
        compare(page, &before, Place::Season);
    });
}

#[test]
fn the_charts_in_use_shut_nobody_out() {
    for (view, name) in [(View::Phone, "phone"), (View::Desk, "desk")] {
        visit(view, |page| {
            page.open_job(TWO_STOREY, Place::Season);
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                for place in IN_USE {
                    page.go(place);
                    page.wait_for("svg.chart");
                    let theme = format!("{theme:?}").to_lowercase();
                    page.picture_of_all(&format!("{}-{name}-{theme}", place.word()));
                }
            }
        });
    }
}
